//! The pattern as files.

use super::{Desk, charts, photos};
use crate::dom;
use crate::erase::words;
use hatwright_pattern::out::{Publication, html, markdown, rounds_csv, text};
use hatwright_pattern::written;
use hatwright_words::publish as told;
use leptos::prelude::*;

/// A form that the pattern can be saved in.
#[derive(Clone, Copy)]
struct Form {
    id: &'static str,
    name: fn() -> &'static str,
    note: fn() -> &'static str,
    file: &'static str,
    kind: &'static str,
    of: fn(Desk, &Publication) -> String,
}

const FORMS: [Form; 5] = [
    Form {
        id: "save-text",
        name: told::save_text,
        note: told::text_note,
        file: "hat-pattern.txt",
        kind: "text/plain;charset=utf-8",
        of: |_, all| text(all),
    },
    Form {
        id: "save-markdown",
        name: told::save_markdown,
        note: told::markdown_note,
        file: "hat-pattern.md",
        kind: "text/markdown;charset=utf-8",
        of: |_, all| markdown(all),
    },
    Form {
        id: "save-html",
        name: told::save_html,
        note: told::html_note,
        file: "hat-pattern.html",
        kind: "text/html;charset=utf-8",
        of: |desk, all| html(all, desk.options.get_untracked().paper),
    },
    Form {
        id: "save-csv",
        name: told::save_csv,
        note: told::csv_note,
        file: "hat-rounds.csv",
        kind: "text/csv;charset=utf-8",
        of: |_, all| rounds_csv(all),
    },
    Form {
        id: "save-json",
        name: told::save_json,
        note: told::json_note,
        file: "hat-plan.json",
        kind: "application/json",
        of: |desk, _| plan(desk),
    },
];

/// The view.
pub fn files(desk: Desk) -> AnyView {
    let copied = RwSignal::new("");
    let copy = move |_| {
        let Some(all) = whole(desk) else { return };
        dom::copy(&text(&all), move |done| copied.set(if done { told::copied() } else { told::not_copied() }));
    };
    let row = move |form: Form| {
        let save = move |_| {
            if let Some(all) = whole(desk) {
                dom::download(form.file, &(form.of)(desk, &all), form.kind);
            }
        };
        view! { <li><button type="button" id=form.id on:click=save>{(form.name)()}</button><span class="note">{(form.note)()}</span></li> }
    };
    view! {
        <p class="note">{told::files_intro()}</p>
        <div class="quick">
            <button type="button" id="publish-copy" on:click=copy>{told::copy_text()}</button>
            <span role="status">{words(move || copied.get().to_owned())}</span>
        </div>
        <ul class="file-list">{FORMS.map(row).collect_view()}</ul>
    }
    .into_any()
}

/// The pattern in all its sizes with charts and photographs.
fn whole(desk: Desk) -> Option<Publication> {
    untrack(|| {
        let mut all = desk.with(Publication::clone)?;
        all.highlight = desk.highlight.get();
        all.figures = charts::figures(desk, desk.highlight.get());
        all.photos = desk.photos.with(|photos| photos.iter().map(photos::Kept::photo).collect());
        Some(all)
    })
}

/// The plan of the hat's own size.
fn plan(desk: Desk) -> String {
    let (hat, spec) = desk.bench.shown.with_untracked(|s| (s.hat.clone(), s.spec.clone()));
    let mut project = desk.bench.project.get_untracked();
    let pattern = written::write(&hat, &spec);
    project.spec = spec;
    hatwright_project::plan_json::plan_json(&project, &hat, &pattern)
}
