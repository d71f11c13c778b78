//! What the shelf needs of a storage.

use core::fmt;

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
            Self::Absent => f.write_str(
                "This browser keeps nothing for this page: storage is switched off, or the window is a private one. The hat is \
                 only on the screen; save it as a file, or copy its link.",
            ),
            Self::Full => f.write_str(
                "The browser has no more room for this page. The hat is only on the screen; save it as a file, then remove \
                 hats that were deleted.",
            ),
            Self::Other(said) => {
                write!(f, "The browser could not reach its storage ({said}). The hat is on the screen; save it as a file.")
            }
        }
    }
}

impl core::error::Error for StoreError {}
