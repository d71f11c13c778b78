//! Which counts of a round are worth a look.
//!
//! Counts never grow from one round to the next. So a count that lies outside the curve has been outside it, or farther, since the curve
//! was last as wide, and one that lies inside it stays so until the curve is as narrow. What that costs at the least, against what a
//! schedule may cost, leaves a few counts to a round: the fewer, the longer the curve runs level.

use crate::crown::{End, Task};

/// Least and most stitches of each round, both included. A round without any has none that are worth a look.
#[derive(Clone, Debug, Default)]
pub(crate) struct Windows {
    /// By round; the first is no round.
    rounds: Vec<(u32, u32)>,
}

impl Windows {
    /// Windows of that many rounds, all empty.
    pub fn none(rounds: usize) -> Self {
        Self { rounds: vec![(1, 0); rounds] }
    }

    /// Makes a round's window reach to a count that is more than all of it.
    pub fn add(&mut self, round: u32, stitches: u32) {
        if let Some(window) = self.rounds.get_mut(round as usize) {
            *window = if window.0 > window.1 { (stitches, stitches) } else { (window.0, stitches) };
        }
    }

    /// Counts within so many stitches of the curve, and all ends.
    pub fn near(task: &Task, wanted: &[f64], ends: &[End], apart: u32) -> Self {
        let first = ends.iter().map(|end| end.rounds).min().unwrap_or(0) as usize;
        let counts = || ends.iter().map(|end| end.stitches);
        let (fewest, widest) = (counts().min().unwrap_or(0), counts().max().unwrap_or(0));
        let mut rounds = vec![(0, 0)];
        for (round, wanted) in wanted.iter().enumerate().skip(1) {
            let middle = libm::round(wanted / task.w) as u32;
            let (mut least, mut most) = (middle.saturating_sub(apart), middle + apart);
            if round >= first {
                (least, most) = (least.min(fewest), most.max(widest));
            }
            rounds.push((least.clamp(fewest, task.stitches), most.clamp(fewest, task.stitches)));
        }
        if let Some(start) = rounds.get_mut(1) {
            *start = (task.stitches, task.stitches);
        }
        Self { rounds }
    }

    /// Counts that may be part of a schedule that costs no more than `bound`.
    pub fn within(task: &Task, wanted: &[f64], ends: &[End], bound: f64) -> Self {
        let fewest = ends.iter().map(|end| end.stitches).min().unwrap_or(0);
        let first = ends.iter().map(|end| end.rounds).min().unwrap_or(0) as usize;
        let mut rounds = vec![(fewest, task.stitches); wanted.len()];
        if bound.is_finite() {
            let off = |n: u32, wanted: f64| task.off(n, wanted);
            let girth = |n: u32| f64::from(n) * task.w;
            // Sums of the same prices in another order differ in their last digits.
            let bound = bound + 1e-9 * bound.max(1.0);
            let mut most = task.stitches;
            for round in 1..wanted.len() {
                let outside = |n: u32| {
                    let since = wanted[1..=round].iter().rev().take_while(|wanted| **wanted < girth(n));
                    exceeds(since.map(|wanted| off(n, *wanted)), bound)
                };
                while most > fewest && outside(most) {
                    most -= 1;
                }
                rounds[round].1 = most;
            }
            let mut least = fewest;
            for round in (1..wanted.len()).rev() {
                let inside = |n: u32| {
                    let until = wanted[round..=first.max(round)].iter().take_while(|wanted| **wanted > girth(n));
                    exceeds(until.map(|wanted| off(n, *wanted)), bound)
                };
                while least < task.stitches && inside(least) {
                    least += 1;
                }
                rounds[round].0 = least;
            }
        }
        if let Some(start) = rounds.get_mut(1) {
            start.0 = task.stitches;
        }
        Self { rounds }
    }

    /// The window of a round; empty where there is no such round.
    pub fn at(&self, round: u32) -> (u32, u32) {
        self.rounds.get(round as usize).copied().unwrap_or((1, 0))
    }

    /// Takes from a round what is more than `most`.
    pub fn cut(&mut self, round: u32, most: u32) {
        if let Some(window) = self.rounds.get_mut(round as usize) {
            window.1 = window.1.min(most);
        }
    }

    /// Whether all counts of the other windows are in these too.
    pub fn hold(&self, other: &Self) -> bool {
        self.rounds.iter().zip(&other.rounds).skip(1).all(|(a, b)| b.0 > b.1 || (a.0 <= b.0 && b.1 <= a.1))
    }
}

/// Whether a sum is more than a bound.
fn exceeds(costs: impl Iterator<Item = f64>, bound: f64) -> bool {
    let mut sum = 0.0;
    for cost in costs {
        sum += cost;
        if sum > bound {
            return true;
        }
    }
    false
}
