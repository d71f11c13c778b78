//! Keeping hats in the browser's storage: by themselves, a moment after the last keystroke and at once when the page is left.

use crate::bench::Bench;
use crate::crash::{self, Rescue};
use crate::dom;
use gloo_storage::{LocalStorage, Storage as _};
use hatwright_project::{Project, ProjectId, Settings, Shelf, ShelfError, Store, StoreError, storage, to_json};
use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};

/// How long after the last keystroke a hat is saved, in milliseconds.
const MOMENT: i32 = 400;

/// The browser's storage.
pub struct Browser;

impl Browser {
    fn there() -> Result<web_sys::Storage, StoreError> {
        // gloo-storage takes it for granted that there is a storage; a browser may refuse even the asking.
        match dom::window().local_storage() {
            Ok(Some(_)) => Ok(LocalStorage::raw()),
            _ => Err(StoreError::Absent),
        }
    }
}

impl Store for Browser {
    fn get(&self, key: &str) -> Result<Option<String>, StoreError> {
        Self::there()?.get_item(key).map_err(|e| refused(&e))
    }

    fn put(&self, key: &str, text: &str) -> Result<(), StoreError> {
        Self::there()?.set_item(key, text).map_err(|e| refused(&e))
    }

    fn remove(&self, key: &str) -> Result<(), StoreError> {
        Self::there()?.remove_item(key).map_err(|e| refused(&e))
    }

    fn keys(&self) -> Result<Vec<String>, StoreError> {
        let storage = Self::there()?;
        let count = storage.length().map_err(|e| refused(&e))?;
        Ok((0..count).filter_map(|i| storage.key(i).ok().flatten()).collect())
    }
}

fn refused(error: &JsValue) -> StoreError {
    let name = error.dyn_ref::<web_sys::js_sys::Error>().map(|e| String::from(e.name())).unwrap_or_default();
    let name = if name.is_empty() {
        let field = web_sys::js_sys::Reflect::get(error, &JsValue::from_str("name"));
        field.ok().and_then(|n| n.as_string()).unwrap_or_default()
    } else {
        name
    };
    if name == "QuotaExceededError" || name == "NS_ERROR_DOM_QUOTA_REACHED" { StoreError::Full } else { StoreError::Other(name) }
}

/// Where the hat on the bench stands with the storage.
#[derive(Clone, Debug, PartialEq)]
pub enum Standing {
    /// An example or a hat from a link: kept as soon as something is changed.
    Fresh,
    /// Changed, about to be saved.
    Waiting,
    /// Saved.
    Kept,
    /// Not saved, and why.
    Trouble(ShelfError),
}

/// Keeps the hat on the bench.
#[derive(Clone, Copy)]
pub struct Keeper {
    bench: Bench,
    /// Where it stands.
    pub standing: RwSignal<Standing>,
    timer: StoredValue<Option<i32>>,
    /// The address carries a hat that is not kept yet.
    from_link: StoredValue<bool>,
    /// What the storage held for this hat when it was last read or written here.
    held: StoredValue<Option<String>>,
    /// The person was told that going on loses what could not be kept.
    warned: StoredValue<bool>,
}

/// How a hat comes onto the bench.
#[derive(Clone, Copy, PartialEq)]
pub enum Coming {
    /// Out of the storage.
    Kept,
    /// An example, a copy or a file: kept as soon as something is changed.
    Fresh,
    /// Out of a link, which stays in the address until the hat is kept.
    ByLink,
}

impl Keeper {
    /// Watches a bench from now on.
    pub fn new(bench: Bench, coming: Coming) -> Self {
        let keeper = Self {
            bench,
            standing: RwSignal::new(Standing::Fresh),
            timer: StoredValue::new(None),
            from_link: StoredValue::new(false),
            held: StoredValue::new(None),
            warned: StoredValue::new(false),
        };
        keeper.arrived(coming);
        Effect::new(move |_| {
            if bench.edits.get() > 0 {
                keeper.wait();
            }
        });
        dom::listen(&dom::window(), "pagehide", move |_| keeper.flush());
        dom::listen(&dom::window(), "beforeunload", move |event| {
            keeper.flush();
            // The browser asks whether to leave: what is on the screen is kept nowhere.
            if matches!(keeper.standing.get_untracked(), Standing::Trouble(_)) {
                event.prevent_default();
            }
        });
        if let Some(document) = dom::window().document() {
            let hidden = document.clone();
            dom::listen(&document, "visibilitychange", move |_| {
                if hidden.visibility_state() == web_sys::VisibilityState::Hidden {
                    keeper.flush();
                }
            });
        }
        keeper
    }

    /// A hat is on the bench that nobody changed yet.
    fn arrived(self, coming: Coming) {
        let kept = coming == Coming::Kept;
        let key = self.bench.project.with_untracked(|p| storage::key(&p.id));
        self.held.set_value(if kept { Browser.get(&key).ok().flatten() } else { None });
        self.warned.set_value(false);
        self.standing.set(if kept { Standing::Kept } else { Standing::Fresh });
        if coming == Coming::ByLink {
            self.from_link.set_value(true);
        } else {
            self.drop_link();
        }
        self.remember(false);
    }

    /// Hands the hat to the part of the program that saves it in a breakdown.
    fn remember(self, waiting: bool) {
        self.bench.project.with_untracked(|p| {
            let revised = Project { revision: p.revision + u64::from(waiting), ..p.clone() };
            crash::remember(Rescue {
                key: storage::key(&p.id),
                text: to_json(&revised),
                expected: self.held.get_value(),
                settings: (storage::SETTINGS_KEY.to_owned(), settings(p).to_json()),
                waiting,
            });
        });
    }

    /// Saves a moment from now, counted anew with every change.
    fn wait(self) {
        self.remember(true);
        self.warned.set_value(false);
        self.standing.set(Standing::Waiting);
        if let Some(timer) = self.timer.get_value() {
            dom::cancel(timer);
        }
        self.timer.set_value(dom::after(MOMENT, move || self.flush()));
    }

    /// Saves now, if there is something to save.
    pub fn flush(self) {
        if self.standing.get_untracked() == Standing::Waiting {
            self.save();
        }
    }

    /// Saves the hat, changed or not.
    pub fn save(self) {
        if let Some(timer) = self.timer.get_value() {
            dom::cancel(timer);
        }
        let mut project = self.bench.project.get_untracked();
        project.changed_ms = dom::now_ms();
        let shelf = Shelf::new(&Browser);
        let first = project.revision == 0;
        match if first { shelf.add(&mut project) } else { shelf.save(&mut project) } {
            Ok(()) => {
                // The settings only say what to open next: not being able to keep them loses nothing.
                let _ = shelf.put_settings(&settings(&project));
                // The revision is the shelf's business: no edit.
                self.bench.project.update(|p| p.revision = project.revision);
                self.held.set_value(Browser.get(&storage::key(&project.id)).ok().flatten());
                self.standing.set(Standing::Kept);
                self.drop_link();
                self.remember(false);
            }
            Err(error) => self.standing.set(Standing::Trouble(error)),
        }
    }

    /// Keeps the hat on the bench as another one, beside whatever else is kept.
    pub fn save_as_copy(self) {
        let id = fresh_id();
        self.bench.project.update(|p| *p = p.clone().renewed(id, dom::now_ms()));
        self.held.set_value(None);
        self.save();
    }

    /// Puts another hat on the bench, after saving the one that is there.
    ///
    /// # Errors
    /// A sentence where the one that is there could not be saved. Asked again, the other hat is opened all the same.
    pub fn open(self, project: Project, coming: Coming) -> Result<(), &'static str> {
        if matches!(self.standing.get_untracked(), Standing::Waiting | Standing::Trouble(_)) {
            self.save();
        }
        if matches!(self.standing.get_untracked(), Standing::Trouble(_)) && !self.warned.get_value() {
            self.warned.set_value(true);
            return Err(hatwright_words::page::would_lose());
        }
        self.replace(project, coming);
        Ok(())
    }

    /// Puts another hat in the place of one that was deleted.
    pub fn replace(self, project: Project, coming: Coming) {
        self.bench.open(project);
        self.arrived(coming);
        if coming == Coming::Kept {
            let opened = self.bench.project.with_untracked(settings);
            let _ = Shelf::new(&Browser).put_settings(&opened);
        }
    }

    /// Whether the hat on the bench came by a link and is not kept yet.
    pub fn is_from_link(self) -> bool {
        self.from_link.get_value()
    }

    /// A kept hat needs no link in the address any more: a reload opens what is kept.
    fn drop_link(self) {
        if !self.from_link.get_value() {
            return;
        }
        self.from_link.set_value(false);
        let window = dom::window();
        let path = window.location().pathname().unwrap_or_default() + &window.location().search().unwrap_or_default();
        if let Ok(history) = window.history() {
            let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(&path));
        }
    }
}

/// What the page should open next, and how a new hat begins.
fn settings(project: &Project) -> Settings {
    // What is on the list for several hats is no business of this one, nor is the page's language or the paper.
    let kept = Shelf::new(&Browser).settings();
    Settings { open: Some(project.id.clone()), units: project.units, terms: project.terms, ..kept }
}

/// An identity for a new hat.
pub fn fresh_id() -> ProjectId {
    ProjectId::from_bits(dom::random_bits())
}
