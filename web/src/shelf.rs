//! The shelf: hats that are kept, to open, rename, copy, delete, bring back; hats in files; the club's caps to begin with.

use crate::bench::Bench;
use crate::dom;
use crate::erase::{memo, part_if, words};
use crate::html::Html;
use crate::keep::{Browser, Coming, Keeper, Standing, fresh_id};
use hatwright_project::{Listing, Project, ProjectId, Shelf, ShelfError, Store, open as read, samples, to_json};
use hatwright_words::{page, shelf as say};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;

const ID: &str = "shelf";

/// What is said in the dialog, and the deletion that can be undone from it.
#[derive(Clone, Default)]
struct Said {
    text: String,
    undo: Option<ProjectId>,
}

/// Opens the dialog.
pub fn show(looks: RwSignal<u32>) {
    looks.update(|n| *n += 1);
    if let Some(dialog) = dialog() {
        let _ = dialog.show_modal();
    }
}

fn dialog() -> Option<web_sys::HtmlDialogElement> {
    dom::element(ID)?.dyn_into().ok()
}

fn hide() {
    if let Some(dialog) = dialog() {
        dialog.close();
    }
}

/// The dialog. `looks` counts how often the list should be read anew.
pub fn shelf(bench: Bench, keeper: Keeper, looks: RwSignal<u32>) -> AnyView {
    let said = RwSignal::new(Said::default());
    let list = memo(move || {
        looks.track();
        keeper.standing.track();
        let here = bench.project.with(|p| p.id.clone());
        match Shelf::new(&Browser).list() {
            Ok(listing) => lines(&listing, &here),
            Err(why) => {
                let mut html = Html::new();
                html.raw("<p class=\"wrong\">").text(&why.to_string()).raw("</p>");
                html.done()
            }
        }
    });
    let act = Acts { bench, keeper, looks, said };
    let status = words(move || said.with(|s| s.text.clone()));
    let undo = move || {
        let id = said.with(|s| s.undo.clone());
        let undo = move |_| {
            if let Some(id) = &id {
                act.restore(id);
            }
        };
        view! { <button type="button" id="undo-delete" on:click=undo>{say::undo()}</button> }.into_any()
    };
    let begin = |which: usize, id: &'static str, name: &'static str| {
        view! { <button type="button" id=id on:click=move |_| act.begin(which)>{name}</button> }
    };
    view! {
        <dialog id=ID aria-labelledby="shelf-title">
            <header><h2 id="shelf-title">{say::title()}</h2><button type="button" class="drop" aria-label=page::close() on:click=move |_| hide()>"×"</button></header>
            <div class="said"><p role="status">{status}</p>{part_if(move || said.with(|s| s.undo.is_some()), undo)}</div>
            <div
                id="hats"
                inner_html=words(move || list.get())
                on:click=move |event| act.clicked(&event)
                on:change=move |event| act.renamed(&event)
            ></div>
            <h3>{say::begin()}</h3>
            <div class="quick">
                {begin(0, "new-hat", say::like_this())}
                {begin(1, "new-crew", say::crew())}
                {begin(2, "new-baby", say::baby())}
                {begin(3, "new-coach", say::coach())}
                {begin(4, "new-slouch", say::slouch())}
                {begin(5, "new-stocking", say::stocking())}
                {begin(6, "new-tam", say::tam())}
                {begin(7, "new-flaps", say::flaps())}
                {begin(8, "new-warmer", say::warmer())}
                {begin(9, "new-brimmed", say::brimmed())}
                {begin(10, "new-sideways", say::sideways())}
            </div>
            <h3>{say::files()}</h3>
            <div class="quick">
                <button type="button" id="save-file" on:click=move |_| save_file(bench)>{say::save_file()}</button>
                <button type="button" on:click=|_| if let Some(input) = dom::element("open-file") { input.click() }>{say::open_file()}</button>
                <input type="file" id="open-file" class="hidden" tabindex="-1" aria-label=say::file() accept=".json,application/json" on:change=move |event| act.open_file(&event) />
            </div>
        </dialog>
    }
    .into_any()
}

/// The lists of kept, deleted and unreadable hats. What a button does stands in its `data-act`, and to which hat in its `data-id`.
fn lines(listing: &Listing, here: &ProjectId) -> String {
    let mut html = Html::new();
    if listing.projects.is_empty() {
        html.raw("<p class=\"note\">").text(say::empty()).raw("</p>");
    }
    html.raw("<ul class=\"hats\">");
    for summary in &listing.projects {
        let (id, name) = (summary.id.as_str(), named(&summary.name));
        html.raw(if summary.id == *here { "<li class=\"here\">" } else { "<li>" });
        html.raw("<input class=\"box\" type=\"text\" maxlength=\"80\" data-id=\"")
            .raw(id)
            .raw("\" aria-label=\"")
            .text(&say::name_of(&name));
        html.raw("\" value=\"").text(&summary.name).raw("\">");
        button(&mut html, "open", id, say::open(), &say::open_hat(&name));
        button(&mut html, "copy", id, say::copy(), &say::copy_hat(&name));
        button(&mut html, "delete", id, say::delete(), &say::delete_hat(&name));
        let day = dom::day(summary.changed_ms);
        let changed = if summary.id == *here { say::here_changed(&day) } else { say::changed(&day) };
        html.element("small", &changed).raw("</li>");
    }
    html.raw("</ul>");
    if !listing.gone.is_empty() {
        html.raw("<details>").element("summary", say::deleted_hats()).raw("<ul class=\"hats\">");
        for summary in &listing.gone {
            let name = named(&summary.name);
            html.raw("<li>").element("span", &name);
            button(&mut html, "restore", summary.id.as_str(), say::restore(), &say::restore_hat(&name));
            button(&mut html, "forget", summary.id.as_str(), say::remove(), &say::remove_hat(&name));
            html.raw("</li>");
        }
        html.raw("</ul></details>");
    }
    if !listing.set_aside.is_empty() {
        html.element("h3", say::aside()).raw("<ul class=\"hats\">");
        for (key, why) in &listing.set_aside {
            html.raw("<li>").element("span", &why.to_string());
            button(&mut html, "aside", key, say::save_aside(), say::save_aside_unread());
            html.raw("</li>");
        }
        html.raw("</ul>");
    }
    html.done()
}

/// A button with a word on it, and the whole for those who hear it.
fn button(html: &mut Html, act: &str, id: &str, word: &str, whole: &str) {
    html.raw("<button type=\"button\" data-act=\"").raw(act).raw("\" data-id=\"").text(id).raw("\" aria-label=\"");
    html.text(whole).raw("\">").text(word).raw("</button>");
}

fn named(name: &str) -> String {
    if name.trim().is_empty() { say::unnamed().to_owned() } else { name.to_owned() }
}

fn save_file(bench: Bench) {
    let (name, text) = bench.project.with_untracked(|p| (file_name(&p.name), to_json(p)));
    dom::download(&name, &text, "application/json");
}

/// Saves the hat on the bench as a file, for when it cannot be kept otherwise.
pub fn rescue(bench: Bench) {
    save_file(bench);
}

fn file_name(name: &str) -> String {
    let plain: String = name.chars().map(|c| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' }).collect();
    let plain = plain.trim_matches('-');
    if plain.is_empty() { "hat.json".to_owned() } else { format!("{plain}.json") }
}

/// What the dialog can do.
#[derive(Clone, Copy)]
struct Acts {
    bench: Bench,
    keeper: Keeper,
    looks: RwSignal<u32>,
    said: RwSignal<Said>,
}

impl Acts {
    /// A button of the lists was clicked.
    fn clicked(self, event: &web_sys::MouseEvent) {
        let target = event.target().and_then(|t| t.dyn_into::<web_sys::Element>().ok());
        let Some(button) = target.and_then(|t| t.closest("[data-act]").ok().flatten()) else { return };
        let (act, id) =
            (button.get_attribute("data-act").unwrap_or_default(), button.get_attribute("data-id").unwrap_or_default());
        if act == "aside" {
            if let Ok(Some(text)) = Browser.get(&id) {
                dom::download("set-aside.json", &text, "application/json");
            }
            return;
        }
        let Ok(id) = ProjectId::new(&id) else { return };
        dom::refocus(&format!("[data-act=\"{act}\"][data-id=\"{id}\"]"));
        match act.as_str() {
            "open" => self.open(&id),
            "copy" => self.copy(&id),
            "delete" => self.delete(&id),
            "forget" => self.forget(&id),
            _ => self.restore(&id),
        }
    }

    /// A name in the list was changed.
    fn renamed(self, event: &web_sys::Event) {
        let input = event.target().and_then(|t| t.dyn_into::<web_sys::HtmlInputElement>().ok());
        let id = input.as_ref().and_then(|i| i.get_attribute("data-id")).and_then(|id| ProjectId::new(&id).ok());
        if let (Some(input), Some(id)) = (input, id) {
            self.rename(&id, &input.value());
        }
    }

    /// Says how something went and reads the list anew.
    fn done(self, outcome: Result<String, ShelfError>, undo: Option<ProjectId>) {
        let said = match outcome {
            Ok(text) => Said { text, undo },
            Err(why) => {
                // The error carries the only copy that is left.
                if let ShelfError::Adrift(text) = &why {
                    dom::download("hat.json", text, "application/json");
                }
                Said { text: why.to_string(), undo: None }
            }
        };
        self.said.set(said);
        self.looks.update(|n| *n += 1);
    }

    /// Says a sentence that is nobody's fault.
    fn say(self, text: &str) {
        self.said.set(Said { text: text.to_owned(), undo: None });
        self.looks.update(|n| *n += 1);
    }

    /// Puts a hat on the bench and closes the dialog, or says why not.
    fn put_on_bench(self, project: Project, coming: Coming) -> bool {
        match self.keeper.open(project, coming) {
            Ok(()) => {
                self.said.set(Said::default());
                hide();
                true
            }
            Err(why) => {
                self.say(why);
                false
            }
        }
    }

    fn open(self, id: &ProjectId) {
        self.keeper.flush();
        match Shelf::new(&Browser).load(id) {
            Ok(project) => {
                self.put_on_bench(project, Coming::Kept);
            }
            Err(why) => self.done(Err(why), None),
        }
    }

    fn rename(self, id: &ProjectId, name: &str) {
        if self.bench.project.with_untracked(|p| p.id == *id) {
            let name = hatwright_project::text::NAME.tidy(name);
            self.bench.change(|p| p.name = name);
            self.keeper.save();
            return self.done(Ok(say::renamed().to_owned()), None);
        }
        let renamed = Shelf::new(&Browser).rename(id, name, dom::now_ms());
        self.done(renamed.map(|_| say::renamed().to_owned()), None);
    }

    fn copy(self, id: &ProjectId) {
        self.keeper.flush();
        let shelf = Shelf::new(&Browser);
        let copied = shelf.load(id).and_then(|p| shelf.copy(id, fresh_id(), &say::copy_name(&named(&p.name)), dom::now_ms()));
        self.done(copied.map(|p| say::copied(&p.name)), None);
    }

    fn delete(self, id: &ProjectId) {
        self.keeper.flush();
        let deleted = Shelf::new(&Browser).delete(id);
        let here = self.bench.project.with_untracked(|p| p.id == *id);
        if deleted.is_ok() && here {
            self.put_next_on_bench();
        }
        self.done(deleted.map(|()| say::deleted().to_owned()), Some(id.clone()));
    }

    /// After the hat on the bench was deleted: the latest that is left, or a fresh example.
    fn put_next_on_bench(self) {
        match latest() {
            Some(next) => self.keeper.replace(next, Coming::Kept),
            None => self.keeper.replace(hatwright_project::example(fresh_id()), Coming::Fresh),
        }
    }

    /// Removes a deleted hat, which nothing brings back: asked for once more.
    fn forget(self, id: &ProjectId) {
        let sure = dom::window().confirm_with_message(say::sure());
        if sure.unwrap_or(false) {
            let removed = Shelf::new(&Browser).forget(id);
            self.done(removed.map(|()| say::removed().to_owned()), None);
        }
    }

    fn restore(self, id: &ProjectId) {
        let restored = Shelf::new(&Browser).restore(id);
        // Where the deletion left only an example on the bench, the hat goes back to its place.
        if let Ok(project) = &restored
            && self.keeper.standing.get_untracked() == Standing::Fresh
            && !self.keeper.is_from_link()
        {
            self.keeper.replace(project.clone(), Coming::Kept);
        }
        self.done(restored.map(|p| say::back(&named(&p.name))), None);
    }

    fn begin(self, which: usize) {
        let like_this = || {
            let p = self.bench.project.get_untracked();
            Project { name: String::new(), notes: String::new(), ..p.renewed(fresh_id(), dom::now_ms()) }
        };
        let sample = which.checked_sub(1).and_then(|i| samples(core::array::from_fn(|_| fresh_id())).into_iter().nth(i));
        self.put_on_bench(sample.unwrap_or_else(like_this), Coming::Fresh);
    }

    fn open_file(self, event: &web_sys::Event) {
        let input = event.target().and_then(|t| t.dyn_into::<web_sys::HtmlInputElement>().ok());
        let Some(file) = input.as_ref().and_then(web_sys::HtmlInputElement::files).and_then(|f| f.get(0)) else { return };
        let Ok(reader) = web_sys::FileReader::new() else { return };
        let finished = reader.clone();
        let load = Closure::once_into_js(move || {
            let text = finished.result().ok().and_then(|r| r.as_string()).unwrap_or_default();
            match read(&text) {
                Ok(project) => {
                    let name = named(&project.name);
                    if self.put_on_bench(project.renewed(fresh_id(), dom::now_ms()), Coming::Fresh) {
                        self.keeper.save();
                        if self.keeper.standing.get_untracked() == Standing::Kept {
                            self.say(&say::opened(&name));
                        }
                    }
                }
                Err(why) => {
                    self.said.set(Said { text: why.to_string(), undo: None });
                }
            }
        });
        reader.set_onloadend(Some(load.unchecked_ref()));
        let _ = reader.read_as_text(&file);
        // The same file can be chosen again.
        if let Some(input) = input {
            input.set_value("");
        }
    }
}

/// The hat that was changed last, by the device's clock: only to have something on the bench.
pub fn latest() -> Option<Project> {
    let shelf = Shelf::new(&Browser);
    let listing = shelf.list().ok()?;
    let last = listing.projects.into_iter().max_by_key(|s| s.changed_ms)?;
    shelf.load(&last.id).ok()
}
