//! The link: everything that determines the hat, in the address itself.

use crate::bench::Bench;
use crate::dom;
use hatwright_project::{Project, to_link};
use hatwright_words::page as say;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

const ID: &str = "share";

/// The whole address of the hat on the bench, its counts fixed as they are shown.
pub fn address(bench: Bench) -> String {
    address_of(bench, |_| {})
}

/// The same of a hat that is changed for it.
pub fn address_of(bench: Bench, change: impl FnOnce(&mut Project)) -> String {
    let location = dom::window().location();
    let part = |p: Result<String, wasm_bindgen::JsValue>| p.unwrap_or_default();
    let project = bench.project.with_untracked(|p| {
        let mut p = p.clone();
        let counts = bench.shown.with_untracked(|s| s.refusal.is_none().then_some(s.hat.size));
        // Another version of the planner might choose otherwise; the link carries what this one chose.
        if let Some(size) = counts {
            p.spec.chosen = Some(hatwright_sizing::Chosen { rows: size.rows, stitches: size.stitches });
        }
        change(&mut p);
        p
    });
    format!("{}{}{}#{}", part(location.origin()), part(location.pathname()), part(location.search()), to_link(&project))
}

/// Copies the link, and shows it for those whose browser does not let the page copy.
pub fn share(bench: Bench, link: RwSignal<String>, said: RwSignal<&'static str>) {
    let address = address(bench);
    link.set(address.clone());
    said.set("");
    if let Some(dialog) = dialog() {
        let _ = dialog.show_modal();
    }
    dom::copy(&address, move |done| {
        said.set(if done { say::link_copied() } else { say::link_here() });
    });
}

fn dialog() -> Option<web_sys::HtmlDialogElement> {
    dom::element(ID)?.dyn_into().ok()
}

/// The dialog.
pub fn sheet(link: RwSignal<String>, said: RwSignal<&'static str>) -> AnyView {
    let close = |_| {
        if let Some(dialog) = dialog() {
            dialog.close();
        }
    };
    let select = |event: web_sys::FocusEvent| {
        if let Some(field) = event.target().and_then(|t| t.dyn_into::<web_sys::HtmlInputElement>().ok()) {
            field.select();
        }
    };
    view! {
        <dialog id=ID aria-labelledby="share-title">
            <header><h2 id="share-title">{say::link_title()}</h2><button type="button" class="drop" aria-label=say::close() on:click=close>"×"</button></header>
            <p>{say::link_note()}</p>
            <p role="status" id="share-said">{move || said.get()}</p>
            <input class="box" id="share-link" type="text" readonly aria-label=say::link() prop:value=move || link.get() on:focus=select />
        </dialog>
    }
    .into_any()
}
