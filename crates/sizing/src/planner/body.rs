//! The rounds of each style's body, from its edge to its centre.

use super::ground::Ground;
use super::{fitted, is_possible, slouch, solve, stocking, tam};
use crate::Style;
use crate::crown::{Schedule, Task};

/// What has to be scheduled for a band of this height, folded so far; `None` where nothing can close above it.
pub(super) fn tasks(ground: &Ground<'_>, band: f64, fold: f64) -> Option<Vec<Task>> {
    match ground.spec.style {
        Style::Slouch => Some(vec![slouch::task(ground, band, fold)?]),
        Style::Stocking => stocking::tasks(ground, band, fold),
        Style::Tam => tam::tasks(ground, ground.spec.shape.tam_across.cm()),
        _ => Some(vec![fitted::task(ground, band, fold)?]),
    }
}

/// The counts of all rounds from the edge to the centre; `None` where nothing can be scheduled.
pub(super) fn counts(ground: &Ground<'_>, band: f64, fold: f64) -> Option<Vec<u32>> {
    let found: Option<Vec<Schedule>> = tasks(ground, band, fold)?.iter().map(solve).collect();
    let mut found = found?;
    match ground.spec.style {
        Style::Slouch => Some(slouch::join(ground, &found[0])),
        Style::Stocking => stocking::join(ground, band, fold, &found),
        Style::Tam => tam::join(ground, &found),
        _ => found.pop().map(|found| found.counts),
    }
}

/// Whether anything can be scheduled, without the trouble of finding the best.
pub(super) fn possible(ground: &Ground<'_>, band: f64, fold: f64) -> bool {
    tasks(ground, band, fold).is_some_and(|tasks| tasks.iter().all(is_possible))
}

/// The same for a tam so far across.
pub(super) fn tam_possible(ground: &Ground<'_>, across: f64) -> bool {
    tam::tasks(ground, across).is_some_and(|tasks| tasks.iter().all(is_possible))
}

/// Fabric from the band to the centre that is asked for, in cm.
pub(super) fn above(ground: &Ground<'_>, band: f64, fold: f64) -> f64 {
    match ground.spec.style {
        Style::Slouch => slouch::above(ground, band, fold),
        Style::Stocking => stocking::above(ground, band, fold),
        Style::Tam => tam::above(ground, ground.spec.shape.tam_across.cm()),
        _ => ground.above(band, fold),
    }
}
