//! Ear flaps: rows outward from the hat's edge.
//!
//! Practice, no source: each flap is a fifth of the edge wide, the gap at the back a sixth, the front has the rest; straight for a third of
//! its length, then a decrease at each end of every other row down to 3 to 5 stitches.

use crate::gauge::Cells;
use crate::{Colour, FlapRow, Flaps, HatSpec, Length, Stitches};

/// Stitches that a flap narrows to: the fewest.
const TIP: u32 = 3;

/// The flaps of a hat whose edge has so many stitches, or row ends.
///
/// An edge of 60: two flaps of 12, 10 between them at the back and 26 at the front. A flap of 12 stitches and 8 cm at 15 rounds to 10 cm
/// has 12 rows, 5 of them straight, then 10, 8, 6 and 4 stitches.
pub(super) fn flaps(spec: &HatSpec, cells: &Cells, edge: u32, colour: Colour) -> Flaps {
    let wide = (libm::round(f64::from(edge) / 5.0) as u32).max(2).min(edge / 2);
    let back = (libm::round(f64::from(edge) / 6.0) as u32).min(edge - 2 * wide);
    // Both gaps are symmetric to the flaps only if back and front are what they are: whole stitches, all of them used.
    let front = edge - 2 * wide - back;
    let count = libm::round(spec.shape.flap_length.cm() / cells.h).max(1.0) as u32;
    let mut now = wide;
    let mut rows = Vec::with_capacity(count as usize);
    let narrowing = wide.saturating_sub(TIP) / 2;
    for row in 1..=count {
        let decreases = if narrows(row, count, narrowing) { 2 } else { 0 };
        rows.push(FlapRow { before: now, after: Stitches::new(now - decreases), decreases: Stitches::new(decreases) });
        now -= decreases;
    }
    let tie = spec.shape.flap_tie;
    Flaps {
        rows,
        back: Stitches::new(back),
        front: Stitches::new(front),
        length: Length::from_cm(f64::from(count) * cells.h),
        tie,
        tie_chains: Stitches::new(if tie == Length::ZERO { 0 } else { libm::round(tie.cm() / cells.w).max(1.0) as u32 }),
        colour,
    }
}

/// Whether a row of so many decreases at both ends, so that so many of them do.
///
/// The first third is straight, and more of it where fewer rows are enough; where there are too few for every other, decreases are as
/// even as the rows allow; and where there are too few rows at all, each decreases.
fn narrows(row: u32, count: u32, narrowing: u32) -> bool {
    let straight = count.div_ceil(3).max(1);
    if row <= straight || narrowing == 0 {
        return false;
    }
    let rows = count - straight;
    if 2 * narrowing - 1 <= rows {
        // Every other row, the last of them at the end.
        let left = count - row;
        return left.is_multiple_of(2) && left / 2 < narrowing;
    }
    let (at, all) = (row - straight, narrowing.min(rows));
    all * at / rows > all * (at - 1) / rows
}
