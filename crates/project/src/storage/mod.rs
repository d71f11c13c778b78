//! Where hats are kept between visits: names of places, the list, and what may be overwritten.
//!
//! The rules: a text that cannot be read is never overwritten, moved or removed; a hat is never overwritten by an older one;
//! a deleted hat is moved, not dropped; what was put is read back and compared.

mod error;
mod keys;
mod memory;
mod settings;
mod shelf;
mod store;

pub use error::ShelfError;
pub use keys::{SETTINGS_KEY, gone_key, id_of_gone_key, id_of_key, key};
pub use memory::Memory;
pub use settings::{Paper, Settings};
pub use shelf::{Listing, Shelf, Summary};
pub use store::{Store, StoreError};
