//! What can go wrong on the shelf.

use super::StoreError;
use crate::Unreadable;
use core::fmt;
use hatwright_words::document as words;

/// Why the shelf did not do what it was asked. What was kept before is still kept, but for two failures of the storage itself:
/// [`ShelfError::NotKept`], where the caller holds the hat, and [`ShelfError::Adrift`], which hands it over.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ShelfError {
    /// The storage failed.
    Store(StoreError),
    /// No such hat is kept.
    Absent,
    /// The hat is kept but cannot be read.
    Unreadable(Unreadable),
    /// Another window saved a later revision.
    Conflict {
        /// The revision that is kept.
        kept: u64,
        /// The revision that was to take its place.
        ours: u64,
    },
    /// What is kept there cannot be read, so it must not be overwritten or moved.
    WouldHarm(Unreadable),
    /// The hat was deleted, perhaps in another window.
    Deleted,
    /// Another hat has this identity.
    Taken,
    /// The hat could not be opened again if it were saved.
    Unsound(Unreadable),
    /// The storage took the hat but does not hold it.
    NotKept,
    /// The storage failed halfway through a move, and then again when the hat was put back: the hat's text, to be saved as a file.
    Adrift(String),
}

impl From<StoreError> for ShelfError {
    fn from(error: StoreError) -> Self {
        Self::Store(error)
    }
}

impl fmt::Display for ShelfError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Store(error) => error.fmt(f),
            Self::Absent => f.write_str(words::shelf_absent()),
            Self::Unreadable(why) => why.fmt(f),
            Self::Conflict { kept, ours } => f.write_str(&words::shelf_conflict(&kept.to_string(), &ours.to_string())),
            Self::WouldHarm(why) => f.write_str(&words::shelf_would_harm(&why.to_string())),
            Self::Deleted => f.write_str(words::shelf_deleted()),
            Self::Taken => f.write_str(words::shelf_taken()),
            Self::Unsound(why) => f.write_str(&words::shelf_unsound(&why.to_string())),
            Self::NotKept => f.write_str(words::shelf_not_kept()),
            Self::Adrift(_) => f.write_str(words::shelf_adrift()),
        }
    }
}

impl core::error::Error for ShelfError {}
