//! Form 3: hats with a record of their yarn, before patterns had sizes and a designer's words. Frozen: `samples/v3` must open for ever.
//!
//! What form 4 changed stands here as it was; what lies below it unchanged is still the sizing crate's. When one of those changes, its
//! old shape moves in here, private, with a function to the new one. Nothing else in this module changes.

use super::v1::{Terms, Units};
use crate::{ColourName, Designer, Hand, Project, ProjectId, Rgb};
use hatwright_sizing::HatSpec;
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
    pub spec: HatSpec,
    pub changed_ms: u64,
}

#[derive(Serialize, Deserialize)]
pub(super) struct Colour {
    pub name: String,
    pub hex: Rgb,
    pub yarn: String,
    pub lot: String,
}

/// To form 4. Every hat of form 3 was worked by the right hand, as far as its pattern said, and in one size.
pub(super) fn migrate(document: Document) -> Project {
    let Document { id, revision, name, units, terms, colours, notes, spec, changed_ms } = document;
    let colour = |Colour { name, hex, yarn, lot }| ColourName { name, hex, yarn, lot };
    Project {
        id,
        revision,
        name,
        units: units.migrate(),
        terms: terms.migrate(),
        hand: Hand::Right,
        colours: colours.into_iter().map(colour).collect(),
        notes,
        designer: Designer::default(),
        sizes: Vec::new(),
        spec,
        changed_ms,
    }
}
