//! A brim: rounds outward from the hat's edge.
//!
//! A flat one grows by the flat rate, 2π·h/w stitches a round, a constant number and never a percentage (geometry); one that flares
//! grows by a share of it.

use super::ground::Ground;
use super::solve;
use crate::crown::{Close, Task};
use crate::curve::Curve;
use core::f64::consts::TAU;

/// Rounds of the brim. Begun after the hat, its first is worked into the edge and does not widen, so that there must be another.
pub(super) fn rounds(ground: &Ground<'_>) -> u32 {
    let least = if ground.is_from_crown() { 1.0 } else { 2.0 };
    libm::round(ground.spec.shape.brim.cm() / ground.cells.h).max(least) as u32
}

/// The counts of all rounds, outward.
///
/// The outermost has what lies flat there, or the share of it that is asked for: 78 stitches at 14 × 16 to 10 cm grow in 10 rounds by
/// 10 · 2π · 14/16 = 55 to 133. Begun after the hat, the other nine rounds make up for the first.
pub(super) fn counts(ground: &Ground<'_>) -> Vec<u32> {
    let (n, q, h) = (ground.stitches(), rounds(ground), ground.cells.h);
    let wide = f64::from(q) * h;
    let outer = n + libm::round(ground.spec.shape.flare.value() * TAU * wide / ground.cells.w) as u32;
    let widening = if ground.is_from_crown() { q } else { q - 1 };
    // No round makes more than two stitches of one.
    let outer = outer.min(n.saturating_mul(1 << widening.min(8)));
    // The innermost of its counts is the hat's last round, or the brim's first.
    let first = if widening < q { vec![n] } else { Vec::new() };
    first.into_iter().chain(outward(ground, n, outer, widening)).collect()
}

/// The counts of so many rounds from one to another, evenly.
pub(super) fn outward(ground: &Ground<'_>, n: u32, outer: u32, rounds: u32) -> Vec<u32> {
    let at = ground.girth(n) / TAU;
    let arc = at + f64::from(rounds) * ground.cells.h;
    let task = Task {
        from_centre: true,
        close: Close::To { stitches: n, at },
        fewest: 4.min(outer - n).max(1),
        ruffle: false,
        ..ground.task(outer, Curve::cone(ground.girth(n), at, ground.girth(outer), arc), arc)
    };
    let planned = solve(&task).map(|found| found.counts).filter(|counts| counts.len() == rounds as usize + 1);
    let counts = planned.map_or_else(|| straight(n, outer, rounds), |counts| counts.into_iter().rev().collect());
    counts[1..].to_vec()
}

/// As even a growth as whole stitches allow.
fn straight(n: u32, outer: u32, rounds: u32) -> Vec<u32> {
    let mut counts = vec![n];
    for i in 1..=rounds {
        let wanted = n + (outer - n) * i / rounds;
        counts.push(wanted.min(2 * counts[i as usize - 1]));
    }
    counts
}
