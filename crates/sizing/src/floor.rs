//! What a schedule must still pay from a count on, at the least: it spares the programme most of its nodes.
//!
//! Worked out from the last round back, without the prices that depend on earlier rounds (a change in the number of decreases, two
//! decrease rounds running), and with the rule against ruffling of the end that is most lenient. That only leaves out what is paid and
//! lets in schedules that are not legal, so nothing that could be part of the best schedule is lost.

use crate::Quantity;
use crate::crown::{End, Task};
use crate::curve::Curve;

/// The least to pay, by round and count.
pub(crate) struct Floor {
    /// By round: the least count that is looked at, and what is still to pay from it and each count above it.
    rounds: Vec<(u32, Vec<f64>)>,
}

impl Floor {
    /// The floor, from round `first` on, for schedules that cost no more than a finite `bound`: no count of theirs misses the curve by
    /// more than that alone.
    pub fn new(task: &Task, curve: &Curve, ends: &[End], first: u32, bound: f64) -> Self {
        let uneven = Quantity::PriceUneven.row().usual_value();
        let last = ends.iter().map(|end| end.rounds).max().unwrap_or(0);
        let fewest = ends.iter().map(|end| end.stitches).min().unwrap_or(0);
        let apart = libm::sqrt(bound / task.h) / task.w + 1.0;
        let wanted = |round: u32| task.wanted(curve, task.inner_edge(round));
        let window = |round: u32| {
            let middle = wanted(round) / task.w;
            let least = (middle - apart).max(f64::from(fewest)) as u32;
            let smooth = |end: &End| match end.rounds.cmp(&round) {
                core::cmp::Ordering::Less => 0,
                core::cmp::Ordering::Equal => end.stitches,
                core::cmp::Ordering::Greater => (task.most_girth(end, round) / task.w + 1.0) as u32,
            };
            let smooth = ends.iter().map(smooth).max().unwrap_or(0);
            (least, task.stitches.min(smooth).min((middle + apart) as u32))
        };
        let mut rounds: Vec<(u32, Vec<f64>)> = vec![(0, Vec::new()); last as usize + 1];
        for round in (first..=last).rev() {
            let (least, most) = window(round);
            let after = rounds.get(round as usize + 1).map_or((0, &[][..]), |(least, costs)| (*least, &costs[..]));
            let next = wanted(round + 1);
            let misses: Vec<f64> = (after.0..).zip(after.1).map(|(n, cost)| task.off(n, next) + cost).collect();
            let from = |before: u32| {
                let closed = ends.iter().filter(|end| end.rounds == round && end.stitches == before).map(|end| end.price);
                let lowest = after.0.max(before.div_ceil(2));
                let worked = (lowest..=before).filter(|n| task.legal(before, before - n)).filter_map(|n| {
                    let decreases = before - n;
                    let price = if decreases == 0 || before.is_multiple_of(decreases) { 0.0 } else { uneven };
                    misses.get((n - after.0) as usize).map(|cost| cost + price)
                });
                closed.chain(worked).fold(f64::INFINITY, f64::min)
            };
            rounds[round as usize] = (least, (least..=most).map(from).collect());
        }
        Self { rounds }
    }

    /// The least that a schedule with so many stitches after a round still pays; infinite where none can be worked.
    pub fn at(&self, round: u32, stitches: u32) -> f64 {
        let Some((least, costs)) = self.rounds.get(round as usize) else { return f64::INFINITY };
        stitches.checked_sub(*least).and_then(|i| costs.get(i as usize)).copied().unwrap_or(f64::INFINITY)
    }
}
