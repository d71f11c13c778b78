//! The saved hat: document, versions, link, shelf.
//!
//! Pure: no browser, no clock, no chance. Identities and times are passed in, storage is a trait. Whatever comes from outside
//! becomes a valid [`Project`] here or an error that reads as a sentence.

mod breach;
mod checksum;
mod club;
mod document;
mod id;
mod json;
mod known;
mod pattern_text;
mod rgb;
mod versions;

pub mod link;
pub mod plan_json;
pub mod script;
pub mod shopping;
pub mod storage;
#[cfg(any(test, feature = "strategies"))]
pub mod strategies;
#[cfg(test)]
mod tests;
pub mod text;

pub use breach::SayBreach;
pub use club::{SAMPLES, dyes, example, samples};
pub use document::{ColourName, Designer, Hand, Project, SizeOf, Terms, Units};
pub use id::{BadId, ProjectId};
pub use json::{Unreadable, open, to_json};
pub use known::{KnownUse, known_uses};
pub use link::{BadLink, Linked, from_link, to_link};
pub use rgb::{BadRgb, Rgb};
pub use shopping::{Copies, ListLine, ShoppingList, shopping_list, shopping_list_of};
pub use storage::{Listing, Paper, Settings, Shelf, ShelfError, Store, StoreError, Summary};
