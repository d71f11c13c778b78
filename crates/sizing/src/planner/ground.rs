//! What every style starts from: the head, how deep on it, the stitches.

use crate::counts::wedges;
use crate::crown::{Close, Prices, Task};
use crate::curve::Curve;
use crate::gauge::Cells;
use crate::{BandKind, Begun, Closing, Coverage, HatSpec, Length, Quantity, Size, Style};
use core::f64::consts::{PI, TAU};

/// The most stitches that a strand draws up into a closed top; more are gathered (practice).
const DRAWN: u32 = 12;

/// What every style starts from. Lengths in cm.
#[derive(Clone, Copy)]
pub(super) struct Ground<'a> {
    pub spec: &'a HatSpec,
    pub cells: Cells,
    /// The head with what lies between it and the hat: what is fitted.
    pub around: f64,
    /// From the crown's centre to the lower edge, on the head.
    pub depth: f64,
    pub size: Size,
}

impl Ground<'_> {
    /// Stitches around, next to the band.
    pub const fn stitches(&self) -> u32 {
        self.size.stitches.get()
    }

    /// The relaxed girth of so many stitches of the body.
    pub fn girth(&self, stitches: u32) -> f64 {
        f64::from(stitches) * self.cells.w
    }

    pub fn is_from_crown(&self) -> bool {
        self.spec.begins() == Begun::Crown
    }

    /// Whether the body has a round of its own next to the edge: picked up, begun on a foundation, or the last of a hat begun at the
    /// crown. A band worked around is that itself.
    pub fn has_edge_round(&self) -> bool {
        self.spec.band_kind() != BandKind::Around
    }

    /// Fabric above a band of this height, folded so far.
    pub fn above(&self, band: f64, fold: f64) -> f64 {
        self.depth + fold - band
    }

    /// The arc of a crown that is worked outward: a whole number of rounds, each at its own distance from the centre. What is left over is
    /// the edge's, where half a round is no matter; with few rounds it is.
    pub fn whole(&self, arc: f64) -> f64 {
        const MANY: f64 = 8.0;
        let rounds = libm::round(arc / self.cells.h);
        if self.is_from_crown() && rounds >= MANY { rounds * self.cells.h } else { arc }
    }

    /// A task that follows a curve to the centre, laid and closed as the hat is.
    pub fn task(&self, stitches: u32, curve: Curve, arc: f64) -> Task {
        let close = match (self.is_from_crown(), self.spec.closes()) {
            (true, _) => Close::Ring,
            (false, Closing::Drawn) => Close::Drawn,
            (false, Closing::Gathered(n)) => Close::Gathered(n),
        };
        Task {
            stitches,
            w: self.cells.w,
            h: self.cells.h,
            curve,
            arc,
            from_centre: self.is_from_crown(),
            wedges: wedges(self.spec.lays()),
            close,
            fewest: 4,
            ruffle: true,
            prices: Prices::of(self.spec.taste),
        }
    }

    /// Whether so many stitches at the top are gathered, not drawn up.
    pub fn gathers(&self, last: u32) -> bool {
        !self.is_from_crown() && (matches!(self.spec.closes(), Closing::Gathered(_)) || last > DRAWN)
    }

    /// Across the bundle of so many gathered stitches, each drawn in to half its width (practice, no source).
    pub fn bundle(&self, stitches: u32) -> f64 {
        self.cells.w * libm::sqrt(f64::from(stitches) / PI)
    }

    /// Arc that is left inside an innermost round of so many stitches: across what a strand draws up, or half the bundle that is
    /// gathered; nothing inside a ring, whose round begins at the centre.
    pub fn drawn(&self, last: u32) -> f64 {
        if self.is_from_crown() {
            0.0
        } else if self.gathers(last) {
            self.bundle(last) / 2.0
        } else {
            self.girth(last) / TAU
        }
    }
}

/// Crown's centre to the lower edge as worn, in cm, on a head of this girth with so much on it.
///
/// A share of the girth by coverage; or, where it was measured from ear canal to ear canal over the top, half of that in the place of
/// [`Quantity::CoverCanals`], other coverages keeping their difference from it. Hair or a lining makes the girth larger by 2π times its
/// thickness, and the half of the way over the top by a quarter of that.
pub(super) fn wanted_depth(spec: &HatSpec, around: f64) -> f64 {
    let ratio = |q: Quantity| q.row().usual_value();
    let wanted = match spec.style {
        // Ear flaps begin at the tops of the ears, whatever else they cover.
        Style::EarFlap => Quantity::CoverTops,
        _ => covers(spec.coverage),
    };
    match spec.over_top {
        None => around * ratio(wanted),
        Some(over) => over.cm() / 2.0 + spec.lining.cm() * PI / 2.0 + around * (ratio(wanted) - ratio(Quantity::CoverCanals)),
    }
}

const fn covers(coverage: Coverage) -> Quantity {
    match coverage {
        Coverage::EarTops => Quantity::CoverTops,
        Coverage::EarCanals => Quantity::CoverCanals,
        Coverage::EarLobes => Quantity::CoverLobes,
        Coverage::OverEars => Quantity::CoverEars,
    }
}

/// A head with hair or a lining around it, in cm: 2π times its thickness more.
pub(super) fn lined(head: Length, lining: Length) -> f64 {
    head.cm() + TAU * lining.cm()
}
