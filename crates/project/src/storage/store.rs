//! What the shelf needs of a storage.

use core::fmt;
use hatwright_words::document as words;

/// A storage of texts by key, such as the browser's.
///
/// A failed [`Store::put`] leaves what was there before.
pub trait Store {
    /// The text of a key, `None` where there is none.
    ///
    /// # Errors
    /// [`StoreError`] where the storage does not answer.
    fn get(&self, key: &str) -> Result<Option<String>, StoreError>;

    /// Puts a text in the place of any other.
    ///
    /// # Errors
    /// [`StoreError::Full`] where it does not fit, and others where the storage does not answer.
    fn put(&self, key: &str, text: &str) -> Result<(), StoreError>;

    /// Removes a key; there need not be one.
    ///
    /// # Errors
    /// [`StoreError`] where the storage does not answer.
    fn remove(&self, key: &str) -> Result<(), StoreError>;

    /// Every key, in any order, other programs' included.
    ///
    /// # Errors
    /// [`StoreError`] where the storage does not answer.
    fn keys(&self) -> Result<Vec<String>, StoreError>;
}

/// A storage that does not do what it was asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StoreError {
    /// There is no storage for this page.
    Absent,
    /// There is no room.
    Full,
    /// Anything else, in the storage's own words.
    Other(String),
}

impl fmt::Display for StoreError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Absent => f.write_str(words::store_absent()),
            Self::Full => f.write_str(words::store_full()),
            Self::Other(said) => f.write_str(&words::store_other(said)),
        }
    }
}

impl core::error::Error for StoreError {}
