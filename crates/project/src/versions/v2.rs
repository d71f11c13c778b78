//! Form 2: hats of every style, before their yarn had a record of its own. Frozen: `samples/v2` must open for ever.
//!
//! What form 3 changed stands here as it was; what lies below it unchanged is still the sizing crate's. When one of those changes, its
//! old shape moves in here, private, with a function to the new one. Nothing else in this module changes.

pub(crate) mod spec;

use super::v1::{Terms, Units};
use super::v3;
use crate::{ProjectId, Rgb};
use serde::{Deserialize, Serialize};

/// The form's document.
#[derive(Serialize, Deserialize)]
pub(super) struct Document {
    pub id: ProjectId,
    pub revision: u64,
    pub name: String,
    pub units: Units,
    pub terms: Terms,
    pub colours: Vec<Colour>,
    pub notes: String,
    pub spec: spec::HatSpec,
    pub changed_ms: u64,
}

#[derive(Serialize, Deserialize)]
pub(super) struct Colour {
    pub name: String,
    pub hex: Rgb,
}

/// To form 3.
pub(super) fn migrate(document: Document) -> v3::Document {
    let Document { id, revision, name, units, terms, colours, notes, spec, changed_ms } = document;
    let colour = |Colour { name, hex }| v3::Colour { name, hex, yarn: String::new(), lot: String::new() };
    let colours = colours.into_iter().map(colour).collect();
    v3::Document { id, revision, name, units, terms, colours, notes, spec: spec.migrate(), changed_ms }
}
