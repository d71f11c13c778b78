//! How near a crown comes to its curve.

use super::ground::Ground;
use super::{body, slouch};
use crate::Style;
use crate::crown::Close;

/// The root of the mean square distance of the shaped rounds' girths from the curve, in cm; `None` where nothing is shaped. `here` are the
/// body's counts from its edge to its centre.
pub(super) fn crown_miss(ground: &Ground<'_>, here: &[u32], band: f64, fold: f64) -> Option<f64> {
    let tasks = body::tasks(ground, band, fold)?;
    let (task, from) = match ground.spec.style {
        // The disc begins with the edge's round, the widest.
        Style::Tam => (tasks.get(1)?, here.iter().position(|n| Some(n) == here.iter().max())?),
        Style::Slouch => (tasks.first()?, slouch::below(ground) as usize),
        _ => (tasks.first()?, 0),
    };
    let inner = match task.close {
        Close::To { at, .. } => at,
        _ => 0.0,
    };
    let tube = ground.girth(task.stitches);
    let shaped = (1..).zip(here.get(from..)?).filter_map(|(round, n)| {
        let s = task.total_at(round);
        let wanted = task.wanted(s);
        let curved = s > inner && (wanted < tube - 1e-9 || *n < task.stitches);
        let miss = ground.girth(*n) - wanted;
        curved.then_some(miss * miss)
    });
    let (count, sum) = shaped.fold((0_u32, 0.0), |(count, sum), square| (count + 1, sum + square));
    (count > 0).then(|| libm::sqrt(sum / f64::from(count)))
}
