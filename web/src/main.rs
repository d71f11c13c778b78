//! The Hatwright page: the only part of the program that knows the browser.

mod app;
mod ask;
mod begin;
mod bench;
mod choice;
mod choose;
mod crash;
mod dom;
mod erase;
mod facts;
mod field;
mod fits;
mod headline;
mod html;
mod keep;
mod language;
mod made;
mod made_rows;
mod pick;
mod publish;
mod see;
mod share;
mod shelf;
mod shop;
mod yarn;

fn main() {
    crash::install();
    language::begin();
    let Some(root) = dom::element("app") else { return };
    // The static first screen goes and the page comes in one task, so that nothing is painted between.
    root.set_inner_html("");
    leptos::mount::mount_to(root, app::app).forget();
}
