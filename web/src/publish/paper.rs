//! Paper: what is printed, on which sheet. Nothing else of the page is ever printed but this and the shop's list.

use super::{Desk, alone, charts, photos};
use crate::bench::Bench;
use crate::dom;
use crate::erase::{flag, memo, part, part_if, words};
use crate::html::Html;
use crate::keep::Browser;
use crate::pick::{option, pick};
use hatwright_pattern::out::{PAPER_CSS, PaperSize, Publication, full_sheet, page_css, qr_svg, working_sheet};
use hatwright_pattern::picture::CLASSES;
use hatwright_project::{Paper, Settings, Shelf};
use hatwright_words::publish as told;
use leptos::prelude::*;
use wasm_bindgen::JsValue;
use web_sys::js_sys::{Array, Reflect};

/// Where what is printed stands, beside the page itself.
const SHEET: &str = "sheet";

/// The kind of sheet that this device last printed on; at first the one that its region uses.
pub fn kept() -> PaperSize {
    match Shelf::new(&Browser).settings().paper {
        Some(Paper::A4) => PaperSize::A4,
        Some(Paper::Letter) => PaperSize::Letter,
        // The United States, Canada, Mexico and the Philippines print on Letter (common practice, no source).
        None => {
            let language = dom::window().navigator().language().unwrap_or_default();
            let region = language.rsplit('-').next().unwrap_or_default().to_ascii_uppercase();
            if ["US", "CA", "MX", "PH"].contains(&&*region) { PaperSize::Letter } else { PaperSize::A4 }
        }
    }
}

fn keep(paper: PaperSize) {
    let shelf = Shelf::new(&Browser);
    let paper = Some(match paper {
        PaperSize::A4 => Paper::A4,
        PaperSize::Letter => Paper::Letter,
    });
    // A browser that keeps nothing asks again next time.
    let _ = shelf.put_settings(&Settings { paper, ..shelf.settings() });
}

/// What makes the sheet ready whenever the browser prints, by whichever of its ways.
pub fn begin(desk: Desk) {
    if let Some(document) = dom::window().document()
        && dom::element(SHEET).is_none()
        && let Ok(sheet) = document.create_element("div")
        && let Some(body) = document.body()
    {
        sheet.set_id(SHEET);
        let _ = body.append_child(&sheet);
    }
    let window = dom::window();
    dom::listen(&window, "beforeprint", move |_| {
        if dom::element(SHEET).is_some_and(|sheet| sheet.inner_html().is_empty()) {
            fill(desk, false);
        }
    });
    dom::listen(&window, "afterprint", move |_| {
        if let Some(sheet) = dom::element(SHEET) {
            sheet.set_inner_html("");
        }
    });
    style(desk);
}

/// Prints: the hat's whole pattern, or what was chosen in the dialog.
pub fn print(desk: Desk, chosen: bool) {
    fill(desk, chosen);
    // The sheet has to stand in the page, its pictures read, before it is printed.
    dom::after(60, || {
        let _ = dom::window().print();
    });
}

/// Puts what is printed into the page.
pub fn fill(desk: Desk, chosen: bool) {
    let html = untrack(|| sheet(desk, chosen));
    style(desk);
    if let Some(sheet) = dom::element(SHEET) {
        sheet.set_inner_html(&html);
    }
}

/// The markup of what is printed.
fn sheet(desk: Desk, chosen: bool) -> String {
    let options = desk.options.get();
    let size = if chosen { desk.one.get() } else { None };
    let mut own = Html::new();
    if crate::see::stale(desk.bench) {
        own.raw("<p class=\"old\">").text(hatwright_words::made::old()).raw("</p>");
    }
    let Some(mut all) = printed(desk.bench, size) else { return own.done() };
    if chosen && options.working {
        own.raw(&working_sheet(&all, 0));
        return own.done();
    }
    all.highlight = if size.is_none() && all.several() { desk.highlight.get() } else { None };
    if !chosen || options.charts {
        all.figures = charts::figures(desk, size.or(all.highlight));
    }
    if !chosen || options.photos {
        all.photos = desk.photos.with(|photos| photos.iter().map(photos::Kept::photo).collect());
    }
    own.raw(&full_sheet(&all));
    own.done()
}

/// The pattern in all sizes, or in one alone.
fn printed(bench: Bench, size: Option<usize>) -> Option<Publication> {
    let whole = super::whole(bench).ok()?;
    match size.and_then(|size| whole.graded.names.get(size)) {
        Some(name) => alone(bench, name),
        None => Some(whole),
    }
}

/// The style of sheets and charts, as a sheet of styles of its own: the page's policy allows no style in markup.
fn style(desk: Desk) {
    let css = [&page_css(desk.options.get_untracked().paper), PAPER_CSS, &scoped(".paper", CLASSES), &scoped(".chart", CLASSES)]
        .concat();
    let Some(document) = dom::window().document() else { return };
    let key = JsValue::from_str("adoptedStyleSheets");
    if let Ok(styles) = web_sys::CssStyleSheet::new() {
        let _ = styles.replace_sync(&css);
        let _ = Reflect::set(&document, &key, &Array::of1(&styles));
    }
}

/// Rules that hold only inside of something.
fn scoped(within: &str, css: &str) -> String {
    let mut out = String::with_capacity(css.len() * 2);
    for rule in css.split_inclusive('}') {
        let Some((selectors, rest)) = rule.split_once('{') else { continue };
        let own: Vec<String> = selectors.split(',').map(|one| [within, " ", one.trim()].concat()).collect();
        out.push_str(&own.join(","));
        out.push('{');
        out.push_str(rest);
    }
    out
}

/// The view.
pub fn paper(desk: Desk) -> AnyView {
    let radio = move |group: &'static str,
                      i: usize,
                      label: &'static str,
                      on: fn(&super::Options) -> bool,
                      set: fn(&mut super::Options)| {
        let id = [group, "-", &i.to_string()].concat();
        let change = move |_| {
            desk.change(set);
            style(desk);
            keep(desk.options.get_untracked().paper);
        };
        view! {
            <span class="tag">
                <input type="radio" name=group id=id.clone() prop:checked=flag(move || desk.options.with(on)) on:change=change />
                <label for=id>{label}</label>
            </span>
        }
    };
    let tick = move |id: &'static str,
                     label: &'static str,
                     on: fn(&super::Options) -> bool,
                     set: fn(&mut super::Options, bool)| {
        view! {
            <span class="tag tick">
                <input type="checkbox" id=id prop:checked=flag(move || desk.options.with(on)) on:change=move |event| { let on = event_target_checked(&event); desk.change(|o| set(o, on)); } />
                <label for=id>{label}</label>
            </span>
        }
    };
    let several = memo(move || desk.names().len() > 1);
    let full = memo(move || desk.options.with(|o| !o.working));
    let preview = memo(move || {
        // Whatever the pattern is made of draws it anew.
        desk.ready.track();
        desk.photos.track();
        desk.highlight.track();
        sheet(desk, true)
    });
    let coded = memo(move || desk.with(|all| qr_svg(&all.code).is_some()).unwrap_or(true));
    view! {
        <fieldset class="choice" id="paper-size">
            <legend>{told::paper_size()}</legend>
            <div class="tags">
                {radio("paper-size", 0, told::paper_a4(), |o| o.paper == PaperSize::A4, |o| o.paper = PaperSize::A4)}
                {radio("paper-size", 1, told::paper_letter(), |o| o.paper == PaperSize::Letter, |o| o.paper = PaperSize::Letter)}
            </div>
        </fieldset>
        <fieldset class="choice" id="paper-what">
            <legend>{told::paper_what()}</legend>
            <div class="tags">
                {radio("paper-what", 0, told::paper_full(), |o| !o.working, |o| o.working = false)}
                {radio("paper-what", 1, told::paper_working(), |o| o.working, |o| o.working = true)}
            </div>
        </fieldset>
        {part(move || if several.get() { which(desk) } else { ().into_any() })}
        {part_if(move || full.get(), move || view! {
            <div class="tags">
                {tick("with-charts", told::with_charts(), |o| o.charts, |o, on| o.charts = on)}
                {tick("with-photos", told::with_photos(), |o| o.photos, |o, on| o.photos = on)}
            </div>
        }.into_any())}
        {part_if(move || !coded.get(), || view! { <p class="note">{told::no_code()}</p> }.into_any())}
        {part_if(|| !numbers_pages(), || view! { <p class="note" id="no-numbers">{told::no_numbers()}</p> }.into_any())}
        <p><button type="button" id="publish-print" class="go" on:click=move |_| print(desk, true)>{told::print()}</button></p>
        <figure class="preview">
            <figcaption class="note">{told::preview()}</figcaption>
            <div class="preview-sheet" tabindex="0" role="region" aria-label=told::preview() inner_html=words(move || preview.get())></div>
        </figure>
    }
    .into_any()
}

/// Which size: all, or one alone.
fn which(desk: Desk) -> AnyView {
    let options = words(move || {
        let mut html = Html::new();
        let all = desk.options.with(|o| !o.working);
        if all {
            option(&mut html, "", told::paper_all(), desk.one.get().is_none());
        }
        for (i, name) in desk.names().iter().enumerate() {
            option(&mut html, &i.to_string(), name, desk.one.get() == Some(i) || (!all && i == 0 && desk.one.get().is_none()));
        }
        html.done()
    });
    pick("paper-for".to_owned(), told::paper_for(), options, move |value| desk.one.set(value.parse().ok()))
}

/// Whether the browser draws boxes in a page's margin, where its number stands: those of Chromium do since version 131.
fn numbers_pages() -> bool {
    let agent = dom::window().navigator().user_agent().unwrap_or_default();
    let version =
        agent.split_once("Chrome/").and_then(|(_, rest)| rest.split('.').next()).and_then(|number| number.parse::<u32>().ok());
    version.is_some_and(|version| version >= 131)
}
