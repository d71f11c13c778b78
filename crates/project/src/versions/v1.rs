//! Form 1: fitted hats begun at a sideways band. Frozen: `samples/v1` must open for ever, and nothing here changes.
//!
//! A hat's identity and its colours' values are texts with rules of their own, and are read by the crate's types.

pub(crate) mod spec;

use crate::{ProjectId, Rgb};
use serde::{Deserialize, Serialize};

/// The form's document.
#[derive(Serialize, Deserialize)]
pub(super) struct Document {
    id: ProjectId,
    revision: u64,
    name: String,
    units: Units,
    terms: Terms,
    colours: Vec<ColourName>,
    notes: String,
    spec: spec::HatSpec,
    changed_ms: u64,
}

#[derive(Serialize, Deserialize)]
pub(crate) enum Units {
    Centimetres,
    Inches,
}

#[derive(Serialize, Deserialize)]
pub(crate) enum Terms {
    Us,
    Uk,
}

#[derive(Serialize, Deserialize)]
struct ColourName {
    name: String,
    hex: Rgb,
}

impl Units {
    pub(crate) const fn migrate(self) -> crate::Units {
        match self {
            Self::Centimetres => crate::Units::Centimetres,
            Self::Inches => crate::Units::Inches,
        }
    }
}

impl Terms {
    pub(crate) const fn migrate(self) -> crate::Terms {
        match self {
            Self::Us => crate::Terms::Us,
            Self::Uk => crate::Terms::Uk,
        }
    }
}

/// To form 2.
pub(super) fn migrate(document: Document) -> super::v2::Document {
    let Document { id, revision, name, units, terms, colours, notes, spec, changed_ms } = document;
    super::v2::Document {
        id,
        revision,
        name,
        units,
        terms,
        colours: colours.into_iter().map(|ColourName { name, hex }| super::v2::Colour { name, hex }).collect(),
        notes,
        spec: spec.migrate(),
        changed_ms,
    }
}
