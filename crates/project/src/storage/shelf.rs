//! The shelf: every hat that is kept.

use super::keys::{GONE, LIVE, SETTINGS_KEY, gone_key, id_of_gone_key, id_of_key, key};
use super::{Settings, ShelfError, Store, StoreError};
use crate::{Project, ProjectId, Unreadable, open, to_json};
use hatwright_words::document as words;

/// Hats in a storage.
///
/// Every call reads the storage anew, because other windows share it. Between the reading and the writing of one call, which both
/// happen without a pause, another window may still write, as a browser's storage has no compare-and-swap: the revision that is
/// checked first makes that a matter of microseconds, not of minutes.
#[derive(Clone, Copy)]
pub struct Shelf<'a> {
    store: &'a dyn Store,
}

/// What the shelf holds.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Listing {
    /// Hats, by name and then by identity.
    pub projects: Vec<Summary>,
    /// Deleted hats, in the same order.
    pub gone: Vec<Summary>,
    /// Keys whose texts cannot be read, and why. They stay untouched.
    pub set_aside: Vec<(String, Unreadable)>,
}

/// A line of the list.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Summary {
    /// The hat's name.
    pub name: String,
    /// Its identity.
    pub id: ProjectId,
    /// Its revision.
    pub revision: u64,
    /// When it was last changed, in milliseconds since 1970.
    pub changed_ms: u64,
}

impl<'a> Shelf<'a> {
    /// The shelf in a storage.
    pub fn new(store: &'a dyn Store) -> Self {
        Self { store }
    }

    /// Everything that is kept.
    ///
    /// # Errors
    /// Only of the storage: a text that cannot be read is part of the listing.
    pub fn list(&self) -> Result<Listing, ShelfError> {
        let mut listing = Listing::default();
        let mut keys = self.store.keys()?;
        keys.sort_unstable();
        for place in &keys {
            let gone = place.starts_with(GONE);
            if !gone && !place.starts_with(LIVE) {
                continue;
            }
            let Some(text) = self.store.get(place)? else { continue };
            match read(place, &text) {
                Ok(Project { id, revision, name, changed_ms, .. }) => {
                    let list = if gone { &mut listing.gone } else { &mut listing.projects };
                    list.push(Summary { name, id, revision, changed_ms });
                }
                Err(why) => listing.set_aside.push((place.clone(), why)),
            }
        }
        // Both places hold a hat only where a move was interrupted, and then the live one counts.
        listing.gone.retain(|gone| listing.projects.iter().all(|hat| hat.id != gone.id));
        listing.projects.sort_unstable();
        listing.gone.sort_unstable();
        Ok(listing)
    }

    /// A hat.
    ///
    /// # Errors
    /// [`ShelfError::Absent`], [`ShelfError::Unreadable`], or the storage's.
    pub fn load(&self, id: &ProjectId) -> Result<Project, ShelfError> {
        let place = key(id);
        let text = self.store.get(&place)?.ok_or(ShelfError::Absent)?;
        read(&place, &text).map_err(ShelfError::Unreadable)
    }

    /// Keeps a hat, old or new, and raises its revision; its texts are tidied.
    ///
    /// # Errors
    /// Any of [`ShelfError`] but [`ShelfError::Absent`] and [`ShelfError::Adrift`]; then `project` is as it was.
    pub fn save(&self, project: &mut Project) -> Result<(), ShelfError> {
        let place = key(&project.id);
        match self.store.get(&place)? {
            Some(text) => {
                let kept = read(&place, &text).map_err(ShelfError::WouldHarm)?.revision;
                if kept > project.revision {
                    return Err(ShelfError::Conflict { kept, ours: project.revision });
                }
            }
            None if self.store.get(&gone_key(&project.id))?.is_some() => return Err(ShelfError::Deleted),
            None => {}
        }
        let next = Project { revision: project.revision.saturating_add(1), ..project.clone() }.tidy();
        let text = to_json(&next);
        read(&place, &text).map_err(ShelfError::Unsound)?;
        self.put(&place, &text)?;
        *project = next;
        Ok(())
    }

    /// Keeps a hat that must not take any other's place, deleted ones included: one that came by file or link.
    ///
    /// # Errors
    /// [`ShelfError::Taken`], and those of [`Shelf::save`].
    pub fn add(&self, project: &mut Project) -> Result<(), ShelfError> {
        for place in [key(&project.id), gone_key(&project.id)] {
            if self.store.get(&place)?.is_some() {
                return Err(ShelfError::Taken);
            }
        }
        self.save(project)
    }

    /// Gives a hat that is kept another name.
    ///
    /// # Errors
    /// Those of [`Shelf::load`] and [`Shelf::save`].
    pub fn rename(&self, id: &ProjectId, name: &str, changed_ms: u64) -> Result<Project, ShelfError> {
        let mut project = Project { name: name.to_owned(), changed_ms, ..self.load(id)? };
        self.save(&mut project)?;
        Ok(project)
    }

    /// Keeps a second hat like one that is kept.
    ///
    /// # Errors
    /// Those of [`Shelf::load`] and [`Shelf::add`].
    pub fn copy(&self, id: &ProjectId, new_id: ProjectId, name: &str, changed_ms: u64) -> Result<Project, ShelfError> {
        let mut project = Project { name: name.to_owned(), ..self.load(id)?.renewed(new_id, changed_ms) };
        self.add(&mut project)?;
        Ok(project)
    }

    /// Puts a hat among the deleted, from where [`Shelf::restore`] brings it back.
    ///
    /// # Errors
    /// [`ShelfError::Absent`]; [`ShelfError::WouldHarm`] where either place holds what cannot be read;
    /// [`ShelfError::Conflict`] where a later revision is among the deleted already; the storage's.
    pub fn delete(&self, id: &ProjectId) -> Result<(), ShelfError> {
        let (from, to) = (key(id), gone_key(id));
        let text = self.store.get(&from)?.ok_or(ShelfError::Absent)?;
        let ours = read(&from, &text).map_err(ShelfError::WouldHarm)?.revision;
        if let Some(earlier) = self.store.get(&to)? {
            let kept = read(&to, &earlier).map_err(ShelfError::WouldHarm)?.revision;
            if kept > ours {
                return Err(ShelfError::Conflict { kept, ours });
            }
        }
        self.relocate(&from, &to, &text)
    }

    /// Brings a deleted hat back as it was.
    ///
    /// # Errors
    /// [`ShelfError::Absent`] where none was deleted; [`ShelfError::Taken`] where it is on the shelf already;
    /// [`ShelfError::WouldHarm`] where it cannot be read; the storage's.
    pub fn restore(&self, id: &ProjectId) -> Result<Project, ShelfError> {
        let (from, to) = (gone_key(id), key(id));
        let text = self.store.get(&from)?.ok_or(ShelfError::Absent)?;
        let project = read(&from, &text).map_err(ShelfError::WouldHarm)?;
        if self.store.get(&to)?.is_some_and(|live| live != text) {
            return Err(ShelfError::Taken);
        }
        self.relocate(&from, &to, &text)?;
        Ok(project)
    }

    /// Drops a deleted hat for good: only ever because a person asked for just that.
    ///
    /// # Errors
    /// [`ShelfError::Absent`] where none was deleted; [`ShelfError::WouldHarm`] where it cannot be read; the storage's.
    pub fn forget(&self, id: &ProjectId) -> Result<(), ShelfError> {
        let place = gone_key(id);
        let text = self.store.get(&place)?.ok_or(ShelfError::Absent)?;
        read(&place, &text).map_err(ShelfError::WouldHarm)?;
        Ok(self.store.remove(&place)?)
    }

    /// The settings, or those of a first visit.
    pub fn settings(&self) -> Settings {
        let text = self.store.get(SETTINGS_KEY).ok().flatten();
        text.map(|text| Settings::parse(&text)).unwrap_or_default()
    }

    /// Keeps the settings.
    ///
    /// # Errors
    /// The storage's.
    pub fn put_settings(&self, settings: &Settings) -> Result<(), ShelfError> {
        self.put(SETTINGS_KEY, &settings.to_json())
    }

    fn put(&self, place: &str, text: &str) -> Result<(), ShelfError> {
        self.store.put(place, text)?;
        if self.store.get(place)?.as_deref() == Some(text) { Ok(()) } else { Err(ShelfError::NotKept) }
    }

    /// Moves a text. In a full storage there is no room for it twice, so it is taken out first: else nobody could delete a hat in
    /// order to make room.
    fn relocate(&self, from: &str, to: &str, text: &str) -> Result<(), ShelfError> {
        match self.put(to, text) {
            Ok(()) => Ok(self.store.remove(from)?),
            Err(ShelfError::Store(StoreError::Full)) => {
                self.store.remove(from)?;
                self.put(to, text).map_err(|error| match self.put(from, text) {
                    Ok(()) => error,
                    Err(_) => ShelfError::Adrift(text.to_owned()),
                })
            }
            Err(error) => Err(error),
        }
    }
}

/// Reads what is kept at a place, and minds that it belongs there.
fn read(place: &str, text: &str) -> Result<Project, Unreadable> {
    let project = open(text)?;
    if id_of_key(place).or_else(|| id_of_gone_key(place)).as_ref() == Some(&project.id) {
        Ok(project)
    } else {
        Err(Unreadable::broken(words::other_place()))
    }
}
