//! A slouch hat: wider above the band, longer, and closed flat.

use super::ground::Ground;
use crate::counts::wedges;
use crate::crown::{Schedule, Task};
use crate::curve::Curve;
use crate::{BandKind, Quantity};

/// Fabric above the band: that of a fitted hat, and what the hat is longer by.
pub(super) fn above(ground: &Ground<'_>, band: f64, fold: f64) -> f64 {
    ground.above(band, fold) + ground.spec.shape.slouch_longer.cm()
}

/// Stitches of the tube.
///
/// Nearest the girth that is asked for, with the preferences of other counts: for one that the wedges divide, and for one that the round
/// of increases makes without a remainder. 56 stitches 15 % wider are 64.4; 64 take one increase in every 7.
pub(super) fn tube(ground: &Ground<'_>) -> u32 {
    let n = ground.stitches();
    let wanted = f64::from(n) * (1.0 + ground.spec.shape.slouch_wider.value());
    let middle = libm::round(wanted) as u32;
    let adjust = Quantity::PriceAdjust.row().usual_value();
    let price = |m: u32| {
        let uneven = m > n && !n.is_multiple_of(m - n);
        let over = wedges(ground.spec.lays()).is_some_and(|k| !m.is_multiple_of(k));
        let miss = (f64::from(m) - wanted).abs() * ground.cells.w;
        miss + if uneven { adjust } else { 0.0 } + if over { adjust } else { 0.0 }
    };
    // Of a band worked around in a rib, as of any other, one round takes a stitch to two at the most.
    (middle.saturating_sub(6).max(n)..=(middle + 6).min(2 * n)).min_by(|a, b| price(*a).total_cmp(&price(*b))).unwrap_or(n)
}

/// Rounds between the edge and the tube: the one that is picked up, or begun; begun at the crown, the one that narrows, too.
pub(super) fn below(ground: &Ground<'_>) -> u32 {
    if tube(ground) == ground.stitches() {
        return 0;
    }
    u32::from(ground.spec.band_kind() != BandKind::Around) + u32::from(ground.is_from_crown())
}

/// The tube and its closing.
pub(super) fn task(ground: &Ground<'_>, band: f64, fold: f64) -> Option<Task> {
    let m = tube(ground);
    let arc = ground.whole(above(ground, band, fold) - f64::from(below(ground)) * ground.cells.h);
    Some(ground.task(m, Curve::slouch(ground.girth(m), arc)?, arc))
}

/// All rounds from the band to the centre.
pub(super) fn join(ground: &Ground<'_>, tube: &Schedule) -> Vec<u32> {
    let mut counts = vec![ground.stitches(); below(ground) as usize];
    counts.extend(&tube.counts);
    counts
}
