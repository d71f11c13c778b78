//! The link: everything that determines the hat, in the address itself.

use crate::bench::Bench;
use crate::dom;
use hatwright_project::to_link;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

const ID: &str = "share";

/// The whole address of the hat on the bench, its counts fixed as they are shown.
pub fn address(bench: Bench) -> String {
    let location = dom::window().location();
    let part = |p: Result<String, wasm_bindgen::JsValue>| p.unwrap_or_default();
    let project = bench.project.with_untracked(|p| {
        let mut p = p.clone();
        let counts = bench.shown.with_untracked(|s| s.refusal.is_none().then_some(s.hat.size));
        // Another version of the planner might choose otherwise; the link carries what this one chose.
        if let Some(size) = counts {
            p.spec.chosen = Some(hatwright_sizing::Chosen { rows: size.rows, stitches: size.stitches });
        }
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
        said.set(if done { "The link is on the clipboard." } else { "Copy the link from here:" });
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
            <header><h2 id="share-title">"A link to this hat"</h2><button type="button" class="drop" aria-label="Close" on:click=close>"×"</button></header>
            <p>"Whoever opens it sees this hat with these counts; nothing of theirs is overwritten. Your notes stay here."</p>
            <p role="status" id="share-said">{move || said.get()}</p>
            <input class="box" id="share-link" type="text" readonly aria-label="The link" prop:value=move || link.get() on:focus=select />
        </dialog>
    }
    .into_any()
}
