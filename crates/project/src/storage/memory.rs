//! A storage that lasts as long as the page.

use super::{Store, StoreError};
use core::cell::{Cell, RefCell};
use std::collections::BTreeMap;

/// A storage in memory, with as much room as one likes: for tests, and for a visit where the browser has none.
#[derive(Debug)]
pub struct Memory {
    texts: RefCell<BTreeMap<String, String>>,
    room: Cell<usize>,
}

impl Default for Memory {
    fn default() -> Self {
        Self::with_room(usize::MAX)
    }
}

impl Memory {
    /// An empty storage for so many bytes of keys and texts together.
    pub fn with_room(bytes: usize) -> Self {
        Self { texts: RefCell::default(), room: Cell::new(bytes) }
    }

    /// Changes the room. What is there stays, even where it no longer fits.
    pub fn set_room(&self, bytes: usize) {
        self.room.set(bytes);
    }

    /// Bytes of keys and texts.
    pub fn used(&self) -> usize {
        self.texts.borrow().iter().map(|(key, text)| key.len() + text.len()).sum()
    }
}

impl Store for Memory {
    fn get(&self, key: &str) -> Result<Option<String>, StoreError> {
        Ok(self.texts.borrow().get(key).cloned())
    }

    fn put(&self, key: &str, text: &str) -> Result<(), StoreError> {
        let before = self.texts.borrow().get(key).map_or(0, |text| key.len() + text.len());
        let after = self.used() - before + key.len() + text.len();
        // As browsers do: what grows past the room is refused, what shrinks never is.
        if after > self.room.get() && key.len() + text.len() > before {
            return Err(StoreError::Full);
        }
        self.texts.borrow_mut().insert(key.to_owned(), text.to_owned());
        Ok(())
    }

    fn remove(&self, key: &str) -> Result<(), StoreError> {
        self.texts.borrow_mut().remove(key);
        Ok(())
    }

    fn keys(&self) -> Result<Vec<String>, StoreError> {
        Ok(self.texts.borrow().keys().cloned().collect())
    }
}
