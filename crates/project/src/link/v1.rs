//! Links of version 1: those of form 1. Frozen, and never written any more; `samples/v1` must open for ever.

use super::Linked;
use crate::versions::v1::{Terms, Units, spec::HatSpec};
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
pub(super) struct Link {
    planner: u32,
    name: String,
    units: Units,
    terms: Terms,
    colours: Vec<(String, [u8; 3])>,
    spec: HatSpec,
}

impl Link {
    /// The hat as it is now.
    pub(super) fn migrate(self) -> Linked {
        let Self { planner, name, units, terms, colours, spec } = self;
        let words = (units.migrate(), terms.migrate());
        Linked::plain(planner, name, words, super::named(colours), spec.migrate().migrate())
    }
}
