//! What can go wrong on the shelf.

use super::StoreError;
use crate::Unreadable;
use core::fmt;

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
            Self::Absent => f.write_str("There is no such hat here any more."),
            Self::Unreadable(why) => why.fmt(f),
            Self::Conflict { kept, ours } => write!(
                f,
                "Another window saved this hat since (change {kept}, against {ours} here). Nothing was overwritten: keep yours as \
                 a copy, or open the other one."
            ),
            Self::WouldHarm(why) => write!(f, "Nothing was saved, because it would overwrite what this page cannot read. {why}"),
            Self::Deleted => f.write_str("This hat was deleted, perhaps in another window. Undo that, or keep yours as a copy."),
            Self::Taken => f.write_str("Another hat is kept under this identity. Nothing was overwritten."),
            Self::Unsound(why) => write!(f, "This hat was not saved, because it could not be opened again. {why}"),
            Self::NotKept => f.write_str(
                "The browser took the hat but does not hold it: its storage fails. The hat is on the screen; save it as a file.",
            ),
            Self::Adrift(_) => f.write_str(
                "The browser's storage failed while the hat was moved. Save it as a file now: it is kept nowhere else.",
            ),
        }
    }
}

impl core::error::Error for ShelfError {}
