//! A hat's rounds in the order in which they lie on it, from the outer edge to the crown, whichever end it was begun at.

use core::f64::consts::PI;
use hatwright_sizing::{Begun, Colour, Hat, Panel, Round, RoundKind, Zone};

/// A round as it lies on the hat, in relaxed fabric.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Strip {
    /// Radius of its edge away from the crown, in cm.
    pub outer: f64,
    /// Radius of its edge next to the crown, in cm.
    pub inner: f64,
    /// How tall it is, in cm.
    pub high: f64,
    /// Its yarn.
    pub colour: Colour,
    /// Its part of the hat.
    pub zone: Zone,
    /// Stitches that it leaves.
    pub stitches: u32,
    /// Its decreases or increases.
    pub shaped: u32,
    /// Stitches before the first of them.
    pub lead: u32,
    /// It stands for fabric that is left out of the picture.
    pub gap: bool,
}

/// All strips. Rows of a hat worked sideways make strips too: slices around it, as wide as the rows that reach them.
pub(super) fn strips(hat: &Hat) -> Vec<Strip> {
    if let Some(panel) = &hat.panel {
        return slices(hat, panel);
    }
    let size = Sizes::of(hat);
    match hat.begun {
        Begun::Crown => hat.rounds.iter().rev().map(|round| size.strip(round, false)).collect(),
        Begun::Band => {
            let brim = hat.rounds.iter().rev().filter(|r| r.zone == Zone::Brim).map(|round| size.strip(round, false));
            brim.chain(hat.rounds.iter().filter(|r| r.zone != Zone::Brim).map(|round| size.strip(round, true))).collect()
        }
    }
}

/// Centimetres of radius that a stitch adds, and the height of a round.
struct Sizes {
    body: (f64, f64),
    band: (f64, f64),
}

impl Sizes {
    fn of(hat: &Hat) -> Self {
        let body = (hat.gauge.stitch.cm() / (2.0 * PI), hat.gauge.round.cm().max(0.05));
        let bands = hat.rounds.iter().filter(|r| r.zone == Zone::Band).count();
        let high = if bands == 0 { body.1 } else { (hat.depth.band.cm() / bands as f64).max(0.05) };
        Self { body, band: (hat.gauge.band_stitch.cm() / (2.0 * PI), high) }
    }

    fn strip(&self, round: &Round, toward_crown: bool) -> Strip {
        let (wide, high) = if round.zone == Zone::Band { self.band } else { self.body };
        let after = round.after.get();
        let before = if matches!(round.kind, RoundKind::PickUp | RoundKind::Foundation) { after } else { round.before };
        let (outer, inner) = if toward_crown { (before, after) } else { (after, before) };
        Strip {
            outer: f64::from(outer) * wide,
            inner: f64::from(inner) * wide,
            high,
            colour: round.colour,
            zone: round.zone,
            stitches: after,
            shaped: round.decreases.get() + round.increases.get(),
            lead: round.lead.get(),
            gap: false,
        }
    }
}

/// Slices of a hat worked sideways: where only some rows reach, it is narrower.
fn slices(hat: &Hat, panel: &Panel) -> Vec<Strip> {
    let longest = panel.stitches.get().max(1);
    let (stitch, row) = (hat.gauge.stitch.cm(), hat.gauge.round.cm());
    // A slice is a stitch or more, so that there are never very many.
    let together = longest.div_ceil(60).max(1);
    let reaching = |stitch: u32| panel.rows.iter().filter(|r| r.stitches.get() > stitch).count();
    let colour = panel.rows.first().map_or(Colour(0), |r| r.colour);
    let slice = |k: u32| {
        let (from, to) = (k * together, ((k + 1) * together).min(longest));
        let radius = |stitch: u32| reaching(stitch.min(longest - 1)) as f64 * row / (2.0 * PI);
        Strip {
            outer: radius(from),
            inner: radius(to),
            high: f64::from(to - from) * stitch,
            colour,
            zone: Zone::Body,
            stitches: reaching(from) as u32,
            shaped: 0,
            lead: 0,
            gap: false,
        }
    };
    (0..longest.div_ceil(together)).map(slice).collect()
}
