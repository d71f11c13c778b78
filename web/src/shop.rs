//! The shop screen: what to buy, read at arm's length in the sun, with one hand. A dialog over all of the page with four views.

mod have;
mod instead;
mod only;
mod paper;
mod parts;
mod several;
mod this;

use crate::bench::Bench;
use crate::dom;
use crate::erase::{flag, memo, part, part_if, words};
use crate::keep::Keeper;
use crate::made::hexes;
use crate::see::stale;
use hatwright_project::{ColourName, ProjectId};
use hatwright_sizing::{Count, HatSpec};
use hatwright_words::shop as say;
use leptos::prelude::*;
use std::collections::BTreeMap;
use wasm_bindgen::JsCast;

const ID: &str = "shop";
/// Asks the dialog to open: its buttons stand all over the page and know nothing of it.
const OPEN: &str = "hatwright-shop";
/// The buttons that open it: the phone's and the section's.
const OPENERS: [&str; 2] = ["bar-shop", "open-shop"];
/// What the views are called, in the order of their tabs.
const VIEWS: [fn() -> &'static str; 4] = [say::tab_this, say::tab_only, say::tab_instead, say::tab_several];

/// What was typed into a field of owned yarn, while the document's number is what that gave.
#[derive(Clone, PartialEq)]
struct Typed {
    text: String,
    given: Result<Count, have::NoAmount>,
}

/// A decision that was taken in the shop and can be taken back.
#[derive(Clone, PartialEq)]
struct Taken {
    said: String,
    id: ProjectId,
    before: (HatSpec, Vec<ColourName>),
    after: HatSpec,
}

/// The shop's state, one copyable handle.
#[derive(Clone, Copy)]
pub struct Counter {
    bench: Bench,
    keeper: StoredValue<Keeper>,
    /// Whether the dialog is open: nothing is worked out for it while it is not.
    open: RwSignal<bool>,
    view: RwSignal<usize>,
    have: RwSignal<BTreeMap<usize, Typed>>,
    taken: RwSignal<Option<Taken>>,
    /// What the other yarn is called: the document keeps its numbers only.
    other_name: RwSignal<String>,
    /// How copying went.
    copied: RwSignal<&'static str>,
    /// What is being printed.
    paper: RwSignal<String>,
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

fn close() {
    if let Some(dialog) = dialog() {
        dialog.close();
    }
}

/// The dialog.
pub fn shop(counter: Counter) -> AnyView {
    let bench = counter.bench;
    let name = words(move || {
        let name = bench.project.with(|p| p.name.trim().to_owned());
        if name.is_empty() { say::unnamed_hat().to_owned() } else { name }
    });
    let shown = memo(move || counter.open.get().then(|| counter.view.get()));
    let body = part(move || match shown.get() {
        Some(0) => this::this(counter),
        Some(1) => only::only(counter),
        Some(2) => instead::instead(counter),
        Some(_) => several::several(counter),
        None => ().into_any(),
    });
    let old = memo(move || shown.get().is_some_and(|view| view < 3) && stale(bench));
    view! {
        <dialog id=ID aria-labelledby="shop-title" on:close=move |_| counter.end()>
            <header>
                <h2 id="shop-title" tabindex="-1">{say::in_the_shop()}" "<small>{name}</small></h2>
                {parts::named(
                    "shop-close".to_owned(), "drop", "×", words(|| say::close().to_owned()), words(String::new), Box::new(close),
                )}
            </header>
            {part_if(move || old.get(), || parts::line("shop-old", "old", words(|| say::old().to_owned())))}
            {undo(counter)}
            <div class="shop-body" tabindex="-1">{body}</div>
            {tabs(counter)}
            <div id="shop-paper" aria-hidden="true" inner_html=words(move || counter.paper.get())></div>
        </dialog>
    }
    .into_any()
}

/// The views, where a thumb reaches them.
fn tabs(counter: Counter) -> AnyView {
    let view = counter.view;
    let tab = move |(i, name): (usize, &fn() -> &'static str)| {
        let checked = flag(move || view.get() == i);
        let id = ["shop-tab-", &i.to_string()].concat();
        parts::tick(id, "shop-tab", String::new(), name().to_owned(), checked, Box::new(move |_| counter.turn(i)))
    };
    view! {
        <fieldset class="shop-tabs">
            <legend class="hidden">{say::tabs()}</legend>
            {VIEWS.iter().enumerate().map(tab).collect_view()}
        </fieldset>
    }
    .into_any()
}

/// What was taken, with a way back for as long as nothing else was changed.
fn undo(counter: Counter) -> AnyView {
    let there = memo(move || {
        let taken = counter.taken.get();
        taken.filter(|taken| counter.bench.project.with(|p| p.id == taken.id && p.spec == taken.after)).map(|taken| taken.said)
    });
    part_if(
        move || there.with(Option::is_some),
        move || {
            view! {
                <div class="said shop-said" role="group" aria-labelledby="shop-said">
                    {parts::line("shop-said", "", words(move || there.get().unwrap_or_default()))}
                    {parts::button("undo-offer", "", say::undo(), move || counter.undo())}
                </div>
            }
            .into_any()
        },
    )
    .into_any()
}

impl Counter {
    /// A shop that was not gone to yet.
    pub fn new(bench: Bench, keeper: Keeper) -> Self {
        let counter = Self {
            bench,
            keeper: StoredValue::new(keeper),
            open: RwSignal::new(false),
            view: RwSignal::new(0),
            have: RwSignal::default(),
            taken: RwSignal::new(None),
            other_name: RwSignal::default(),
            copied: RwSignal::new(""),
            paper: RwSignal::default(),
        };
        dom::listen(&dom::window(), OPEN, move |_| counter.begin());
        dom::listen(&dom::window(), "afterprint", move |_| paper::put_away(counter));
        counter
    }

    /// Opens the dialog, on the view that was seen last.
    fn begin(self) {
        // What has the keyboard now gets it back; a browser whose buttons do not take it by a tap has nothing to give back.
        let has_none = || dom::window().document().and_then(|d| d.active_element()).is_none_or(|e| e.tag_name() == "BODY");
        for opener in OPENERS.into_iter().filter_map(dom::element) {
            if has_none() {
                let _ = opener.focus();
            }
        }
        self.copied.set("");
        self.open.set(true);
        if let Some(dialog) = dialog().filter(|dialog| !dialog.open()) {
            let _ = dialog.show_modal();
        }
        if let Some(title) = dom::element("shop-title") {
            let _ = title.focus();
        }
    }

    /// The dialog was closed, by whatever means.
    fn end(self) {
        self.open.set(false);
        self.have.update(|have| have.retain(|_, typed| typed.given.is_ok()));
    }

    fn turn(self, view: usize) {
        self.copied.set("");
        self.view.set(view);
    }

    /// Puts other decisions on the bench, with a way back.
    fn take(self, said: String, spec: HatSpec, colours: Vec<ColourName>) {
        let (id, before) = self.bench.project.with_untracked(|p| (p.id.clone(), (p.spec.clone(), p.colours.clone())));
        self.put(spec.clone(), colours);
        self.taken.set(Some(Taken { said, id, before, after: spec }));
        dom::refocus("#undo-offer");
    }

    fn undo(self) {
        let Some(Taken { before: (spec, colours), .. }) = self.taken.get_untracked() else { return };
        self.put(spec, colours);
        self.taken.set(None);
        dom::refocus("#shop-title");
    }

    /// Puts decisions on the bench exactly as they are: those of another head have its usual measures already.
    fn put(self, spec: HatSpec, colours: Vec<ColourName>) {
        self.bench.project.update(|p| (p.spec, p.colours) = (spec, colours));
        self.bench.change(|_| {});
    }

    /// Owned of a colour, in balls.
    fn owned(self, i: usize) -> Count {
        self.bench.project.with(|p| p.spec.balls.get(i).map(|ball| ball.owned).unwrap_or_default())
    }

    /// Sets what is owned of a colour; whatever stood in the page's own field of it goes.
    fn own(self, i: usize, owned: Count) {
        use hatwright_sizing::Quantity::BallsOwned;
        self.bench.typed.update(|all| {
            all.remove(&(BallsOwned, i));
        });
        if untrack(|| self.owned(i)) != owned {
            self.bench.shape(|spec| {
                if let Some(ball) = spec.balls.get_mut(i) {
                    ball.owned = owned;
                }
            });
        }
    }

    /// What a colour is called, apart from all others.
    fn name(self, i: usize) -> String {
        self.bench.project.with(|p| p.told_colours().into_iter().nth(i).unwrap_or_default())
    }

    fn hexes(self) -> Vec<String> {
        self.bench.project.with(hexes)
    }
}
