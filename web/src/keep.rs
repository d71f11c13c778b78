//! Keeping hats in the browser's storage: by themselves, a moment after the last keystroke and at once when the page is left.

use crate::bench::Bench;
use crate::{crash, dom};
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
}

impl Keeper {
    /// Watches a bench from now on.
    pub fn new(bench: Bench, fresh: bool, from_link: bool) -> Self {
        let standing = RwSignal::new(if fresh { Standing::Fresh } else { Standing::Kept });
        let keeper = Self { bench, standing, timer: StoredValue::new(None), from_link: StoredValue::new(from_link) };
        Effect::new(move |_| {
            if bench.edits.get() > 0 {
                keeper.wait();
            }
        });
        for event in ["pagehide", "beforeunload"] {
            dom::listen(&dom::window(), event, move |_| keeper.flush());
        }
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

    /// Saves a moment from now, counted anew with every change.
    fn wait(self) {
        self.bench.project.with_untracked(|p| {
            let revised = Project { revision: p.revision + 1, changed_ms: dom::now_ms(), ..p.clone() };
            let document = (storage::key(&p.id), to_json(&revised));
            crash::remember(document, (storage::SETTINGS_KEY.to_owned(), settings(p).to_json()));
        });
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
                crash::forget();
                // The settings only say what to open next: not being able to keep them loses nothing.
                let _ = shelf.put_settings(&settings(&project));
                // The revision is the shelf's business: no edit.
                self.bench.project.update(|p| p.revision = project.revision);
                self.standing.set(Standing::Kept);
                self.drop_link();
            }
            Err(error) => self.standing.set(Standing::Trouble(error)),
        }
    }

    /// Keeps the hat on the bench as another one, beside whatever else is kept.
    pub fn save_as_copy(self) {
        let id = fresh_id();
        self.bench.project.update(|p| *p = p.clone().renewed(id, dom::now_ms()));
        self.save();
    }

    /// Puts another hat on the bench, after saving the one that is there.
    pub fn open(self, project: Project, fresh: bool) {
        self.flush();
        crash::forget();
        let opened = settings(&project);
        self.bench.open(project);
        self.standing.set(if fresh { Standing::Fresh } else { Standing::Kept });
        self.drop_link();
        if !fresh {
            let _ = Shelf::new(&Browser).put_settings(&opened);
        }
    }

    /// Marks the address as carrying a hat.
    pub fn came_by_link(self) {
        self.from_link.set_value(true);
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
    Settings { open: Some(project.id.clone()), units: project.units, terms: project.terms }
}

/// An identity for a new hat.
pub fn fresh_id() -> ProjectId {
    ProjectId::from_bits(dom::random_bits())
}
