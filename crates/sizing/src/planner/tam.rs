//! A tam: a flat disc, and a flat underside down to the band.
//!
//! Both grow and shrink by the trade's rule, 2π·h/w a round: laid flat, disc and underside cover each other.

use super::ground::Ground;
use crate::counts::wedges;
use crate::crown::{Close, Schedule, Task};
use crate::curve::Curve;
use crate::{Length, Quantity, Refusal};
use core::f64::consts::TAU;

/// Stitches at the disc's edge: nearest its girth, with the wedges' preference for one that they divide. 24.5 cm across are 77.0 cm
/// around, 92 stitches of 0.833 cm.
fn edge(ground: &Ground<'_>, radius: f64) -> u32 {
    let wanted = radius * TAU / ground.cells.w;
    let middle = libm::round(wanted) as u32;
    let adjust = Quantity::PriceAdjust.row().usual_value();
    let price = |m: u32| {
        let over = wedges(ground.spec.lays()).is_some_and(|k| !m.is_multiple_of(k));
        (f64::from(m) - wanted).abs() * ground.cells.w + if over { adjust } else { 0.0 }
    };
    (middle.saturating_sub(6).max(1)..=middle + 6).min_by(|a, b| price(*a).total_cmp(&price(*b))).unwrap_or(middle)
}

/// Along the fabric from the centre of a disc so far across to the band: over its edge and back along the underside.
pub(super) fn above(ground: &Ground<'_>, across: f64) -> f64 {
    let edge_round = if ground.has_edge_round() { ground.cells.h } else { 0.0 };
    across - ground.girth(ground.stitches()) / TAU + edge_round
}

/// The underside and the disc. Each counts the edge's round; the one that is worked first makes it.
pub(super) fn tasks(ground: &Ground<'_>, across: f64) -> Option<Vec<Task>> {
    let (n, h, radius) = (ground.stitches(), ground.cells.h, across / 2.0);
    let m = edge(ground, radius);
    let inner = ground.girth(n) / TAU;
    if m <= n || radius <= inner {
        return None;
    }
    let flat = Curve::flat(ground.girth(m));
    // What is worked inward has its totals at inner edges: the edge's round lies one round's height outside of them.
    let (outward, inward) = (radius, radius + h);
    let (disc, under) = if ground.is_from_crown() { (outward, inward) } else { (inward, outward) };
    let close = Close::To { stitches: n, at: inner };
    let under = Task { from_centre: !ground.is_from_crown(), close, ruffle: false, ..ground.task(m, flat, under) };
    Some(vec![under, ground.task(m, flat, disc)])
}

/// All rounds from the band to the centre.
pub(super) fn join(ground: &Ground<'_>, schedules: &[Schedule]) -> Option<Vec<u32>> {
    let [under, disc] = schedules else { return None };
    let mut counts: Vec<u32> = under.counts.iter().rev().copied().collect();
    if ground.is_from_crown() {
        // The edge's round is the disc's, and under all comes one plain round, as the picked-up one of a hat begun at its band.
        counts.pop();
        if ground.has_edge_round() {
            counts.insert(0, ground.stitches());
        }
        counts.extend(&disc.counts);
    } else {
        if !ground.has_edge_round() {
            counts.remove(0);
        }
        counts.extend(&disc.counts[1..]);
    }
    Some(counts)
}

/// The refusal, with the least width in millimetres that does work.
pub(super) fn too_small(ground: &Ground<'_>, possible: impl Fn(f64) -> bool) -> Refusal {
    let across = ground.spec.shape.tam_across;
    let narrowest = libm::ceil(ground.girth(ground.stitches()) / TAU * 20.0) as i32;
    let first = narrowest.max(across.ticks() / 100 + 1);
    // No wider one can be asked for, and some work at no width.
    let works = |tenths: i32| tenths * 100 <= Quantity::TamAcross.row().most && possible(f64::from(tenths) / 10.0);
    // Outward in doubling steps to a width that works, then back to the least that does beside one that does not.
    // Wider than a tam may be asked for is not looked at.
    let most = (Quantity::TamAcross.row().most / 100).max(first + 1);
    let steps = (0..12).map(|power| 1 << power).take_while(|step| first + step - 1 <= most);
    let step = steps.into_iter().find(|step| works(first + step - 1)).unwrap_or(most + 1 - first);
    let (mut too_small, mut least) = (first + step / 2 - 1, first + step - 1);
    while least - too_small > 1 {
        let middle = i32::midpoint(too_small, least);
        if works(middle) {
            least = middle;
        } else {
            too_small = middle;
        }
    }
    Refusal::TamTooSmall { across, least: Length::from_ticks(least * 100) }
}
