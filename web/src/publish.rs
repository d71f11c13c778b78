//! The screen where a pattern is made ready for others: words, sizes, charts, paper, files. A dialog over all of the page.

mod charts;
mod files;
mod offer;
mod paper;
pub mod photos;
mod sizes;
mod texts;

use crate::bench::Bench;
use crate::dom;
use crate::erase::{flag, memo, part, part_if, words};
use crate::made::hexes;
use crate::see::stale;
use hatwright_pattern::out::{PaperSize, Publication, publish as put_together};
use hatwright_pattern::picture::CrownView;
use hatwright_pattern::{figures, say};
use hatwright_project::{self as project, Project};
use hatwright_words::publish as told;
use leptos::prelude::*;
use photos::Kept;
use std::sync::Arc;
use wasm_bindgen::JsCast;

pub use paper::print;

const ID: &str = "publish";
/// Asks the dialog to open: its buttons know nothing of it.
const OPEN: &str = "hatwright-publish";
/// Letters of a link that are put into a square code as they are: 85 modules across, 0.35 mm each on paper.
const MOST_CODED: usize = 600;
/// The views, in the order of their tabs.
const VIEWS: [fn() -> &'static str; 5] =
    [told::view_words, told::view_sizes, told::view_charts, told::view_paper, told::view_files];

/// The screen's state, one copyable handle.
#[derive(Clone, Copy)]
pub struct Desk {
    bench: Bench,
    /// Whether the dialog is open: nothing is worked out for it while it is not.
    open: RwSignal<bool>,
    view: RwSignal<usize>,
    /// The pattern in all its sizes.
    ready: Memo<Option<Ready>>,
    /// The size that is pointed out.
    highlight: RwSignal<Option<usize>>,
    /// The size whose charts are shown and whose pattern is printed alone; `None` for the hat's own, and for all sizes.
    one: RwSignal<Option<usize>>,
    photos: RwSignal<Vec<Kept>>,
    /// What there is to say about photographs.
    said: RwSignal<String>,
    options: RwSignal<Options>,
}

/// What is printed.
#[derive(Clone, Copy, PartialEq)]
struct Options {
    paper: PaperSize,
    working: bool,
    charts: bool,
    photos: bool,
    /// How much of a crown is shown.
    crown: CrownView,
    /// How much larger charts are shown, in quarters.
    zoom: u8,
}

/// A pattern, or the sentence why there is none.
#[derive(Clone)]
struct Ready(Arc<Result<Publication, String>>);

impl PartialEq for Ready {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0) || self.0 == other.0
    }
}

/// Listens for what the rest of the page asks for, once for as long as the page lives.
pub fn begin(desk: Desk) {
    dom::listen(&dom::window(), OPEN, move |_| desk.begin());
    paper::begin(desk);
}

/// Opens the dialog.
pub fn show() {
    if let Ok(event) = web_sys::Event::new(OPEN) {
        let _ = dom::window().dispatch_event(&event);
    }
}

fn dialog() -> Option<web_sys::HtmlDialogElement> {
    dom::element(ID)?.dyn_into().ok()
}

/// The state, made once for as long as the page lives.
pub fn desk(bench: Bench) -> Desk {
    let open = RwSignal::new(false);
    let ready = memo(move || open.get().then(|| Ready(Arc::new(whole(bench)))));
    let options = Options { paper: paper::kept(), working: false, charts: true, photos: true, crown: CrownView::Whole, zoom: 4 };
    Desk {
        bench,
        open,
        view: RwSignal::new(0),
        ready,
        highlight: RwSignal::new(None),
        one: RwSignal::new(None),
        photos: RwSignal::default(),
        said: RwSignal::default(),
        options: RwSignal::new(options),
    }
}

/// The document with the hat that is shown: while one on the page is refused, that is the last one that worked.
fn shown(bench: Bench) -> Project {
    let spec = bench.shown.with(|s| s.spec.clone());
    bench.project.with(|p| Project { spec, ..p.clone() })
}

/// The pattern in all its sizes.
fn whole(bench: Bench) -> Result<Publication, String> {
    let project = shown(bench);
    let mut made = project.published().map_err(|why| told::none(&say::refusal(&why, bench.figure_units())))?;
    (made.link, made.code) = links(bench);
    Ok(made)
}

/// The pattern of one of its sizes alone.
fn alone(bench: Bench, name: &str) -> Option<Publication> {
    let project = shown(bench);
    let size = project.every_size().into_iter().find(|size| size.name == name)?;
    let mut made = project.about(|about| put_together(&[size], about)).ok()?;
    (made.link, made.code) = links(bench);
    Some(made)
}

/// The link, and the one for the square code: a telephone reads no code of a thousand letters from paper, so a long introduction stays
/// out of that.
fn links(bench: Bench) -> (String, String) {
    let link = crate::share::address(bench);
    if link.len() <= MOST_CODED {
        return (link.clone(), link);
    }
    let short = crate::share::address_of(bench, |p| p.designer = project::Designer::default());
    (link, short)
}

impl Desk {
    /// The pattern, if one can be made.
    fn with<T>(self, of: impl FnOnce(&Publication) -> T) -> Option<T> {
        self.ready.with(|ready| ready.as_ref().and_then(|ready| ready.0.as_ref().as_ref().ok().map(of)))
    }

    /// Names of the sizes, in their order.
    fn names(self) -> Vec<String> {
        self.with(|all| all.graded.names.clone()).unwrap_or_default()
    }

    fn units(self) -> figures::Units {
        self.bench.figure_units()
    }

    fn hexes(self) -> Vec<String> {
        self.bench.project.with(hexes)
    }

    fn change(self, with: impl FnOnce(&mut Options)) {
        self.options.update(with);
    }

    fn begin(self) {
        photos::load(self);
        self.open.set(true);
        if let Some(dialog) = dialog().filter(|dialog| !dialog.open()) {
            let _ = dialog.show_modal();
        }
        if let Some(title) = dom::element("publish-title") {
            let _ = title.focus();
        }
    }
}

/// The dialog.
pub fn screen(desk: Desk) -> AnyView {
    let close = |_| {
        if let Some(dialog) = dialog() {
            dialog.close();
        }
    };
    let shown = memo(move || desk.open.get().then(|| desk.view.get()));
    let body = part(move || match shown.get() {
        Some(0) => texts::texts(desk),
        Some(1) => sizes::sizes(desk),
        Some(2) => charts::charts(desk),
        Some(3) => paper::paper(desk),
        Some(_) => files::files(desk),
        None => ().into_any(),
    });
    let trouble = memo(move || {
        let none = desk.ready.with(|ready| ready.as_ref().and_then(|ready| ready.0.as_ref().as_ref().err().cloned()));
        none.or_else(|| (desk.open.get() && stale(desk.bench)).then(|| told::stale().to_owned())).unwrap_or_default()
    });
    let tab = move |(i, name): (usize, &fn() -> &'static str)| {
        let id = ["publish-tab-", &i.to_string()].concat();
        view! {
            <span class="tag">
                <input type="radio" name="publish-tab" id=id.clone() prop:checked=flag(move || desk.view.get() == i) on:change=move |_| desk.view.set(i) />
                <label for=id>{name()}</label>
            </span>
        }
    };
    view! {
        <dialog id=ID aria-labelledby="publish-title" on:close=move |_| desk.open.set(false)>
            <header>
                <h2 id="publish-title" tabindex="-1">{told::title()}</h2>
                <button type="button" class="drop" id="publish-close" aria-label=told::close() on:click=close>"×"</button>
            </header>
            <fieldset class="choice publish-tabs">
                <legend class="hidden">{told::view_legend()}</legend>
                <div class="tags">{VIEWS.iter().enumerate().map(tab).collect_view()}</div>
            </fieldset>
            {part_if(move || trouble.with(|t| !t.is_empty()), move || view! { <p class="old" id="publish-trouble">{words(move || trouble.get())}</p> }.into_any())}
            <div class="publish-body">{body}</div>
        </dialog>
    }
    .into_any()
}
