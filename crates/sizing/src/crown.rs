//! The crown's schedule: whole rounds of whole stitches that follow the curve as closely as a person would care to work.
//!
//! What is legal, and what it costs; [`crate::walk`] finds the schedule of least cost among all legal ones. The cost is the squared distance from the curve in cm of girth, integrated over the arc, so that it does
//! not depend on the yarn's thickness, plus prices from the table of quantities for what a person pays for: an uneven round, a change
//! in the number of decreases, two decrease rounds running where one would do.

use crate::curve::Curve;
use crate::walk::search;
use crate::{Closing, Quantity};
use core::f64::consts::{PI, TAU};

/// Fewest decreases of a round that decreases, except in an adjustment round.
pub(crate) const LEAST_DECREASES: u32 = 4;
/// Counts that a strand draws up into a closed top (practice).
const DRAWN: core::ops::RangeInclusive<u32> = 6..=12;
/// The most that draws up without a hole (practice).
const TIGHT: u32 = 8;

/// What is asked of a schedule. Lengths in cm.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Task {
    /// Stitches of the tube.
    pub stitches: u32,
    /// Width of a stitch.
    pub w: f64,
    /// Height of a round.
    pub h: f64,
    /// Head.
    pub head: f64,
    /// Fabric above the band, to the crown's centre.
    pub arc: f64,
    /// Wedges, or spread.
    pub wedges: Option<u32>,
    pub closing: Closing,
}

/// A schedule: the count after every round, the pick-up round first.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Schedule {
    pub counts: Vec<u32>,
    /// Arc from the last round to the centre, drawn up by the strand.
    pub drawn: f64,
    /// What the programme paid.
    pub cost: f64,
}

/// A way to end.
#[derive(Clone, Copy, Debug)]
pub(crate) struct End {
    pub stitches: u32,
    pub rounds: u32,
    /// By how much the arc that was asked for is longer than what these rounds and the closing give.
    pub miss: f64,
    pub price: f64,
}

impl Task {
    /// Arc from a top of so many stitches to the centre: across the opening that the strand draws together, or, for a gathered top,
    /// half of the bundle that is left, in which each stitch takes about a square of its width by its width.
    pub fn drawn_arc(&self, stitches: u32) -> f64 {
        match self.closing {
            Closing::Drawn => f64::from(stitches) * self.w / TAU,
            Closing::Gathered(_) => self.bundle(stitches) / 2.0,
        }
    }

    /// Across the bundle of so many gathered stitches, each drawn in to half its width (practice, no source).
    pub fn bundle(&self, stitches: u32) -> f64 {
        self.w * libm::sqrt(f64::from(stitches) / PI)
    }

    fn gathered(&self) -> Option<u32> {
        match self.closing {
            Closing::Drawn => None,
            Closing::Gathered(n) => Some(n.get().min(self.stitches)),
        }
    }

    /// How far a last count may lie from the one asked for in a gathered top, where wedges or whole decreases cannot hit it.
    fn slack(&self) -> u32 {
        if self.gathered() == Some(self.stitches) { 0 } else { self.wedges.unwrap_or(LEAST_DECREASES).max(LEAST_DECREASES) / 2 }
    }

    /// Whether a round may take so many decreases from so many stitches.
    pub fn legal(&self, before: u32, decreases: u32) -> bool {
        if decreases == 0 {
            return true;
        }
        if 2 * decreases > before {
            return false;
        }
        match self.wedges {
            None => decreases >= LEAST_DECREASES,
            Some(k) => match before % k {
                0 => decreases.is_multiple_of(k),
                over => decreases == over,
            },
        }
    }

    pub fn adjusts(&self, before: u32) -> bool {
        self.wedges.is_some_and(|k| !before.is_multiple_of(k))
    }

    /// The best legal schedule; `None` where there is none.
    pub fn schedule(&self) -> Option<Schedule> {
        let curve = Curve::new(f64::from(self.stitches) * self.w, self.head, self.arc)?;
        // A narrow search first: whatever it finds bounds the exact one from above.
        if let Some(narrow) = search(self, &curve, Some(12), f64::INFINITY) {
            return search(self, &curve, None, narrow.cost + 1e-9);
        }
        // Rounds so tall that a crown has to leave its curve to close. A bound that turns out too low finds nothing, and soon.
        let bounds = [10.0, 30.0, 100.0, 300.0, f64::INFINITY];
        bounds.into_iter().find_map(|bound| search(self, &curve, None, bound))
    }

    /// Whether there is any legal schedule: [`Task::schedule`] without the trouble of finding the best.
    pub fn possible(&self) -> bool {
        let curve = Curve::new(f64::from(self.stitches) * self.w, self.head, self.arc);
        let ends = self.ends();
        curve.is_some()
            && match self.closing {
                // They ruffle nowhere, so that one walk does for all.
                Closing::Gathered(_) => self.reaches(&ends),
                Closing::Drawn => ends.chunks(1).any(|end| self.reaches(end)),
            }
    }

    /// Whether there is a way to any of these ends, all of which ruffle alike.
    fn reaches(&self, ends: &[End]) -> bool {
        let Some(fewest) = ends.iter().map(|end| end.stitches).min() else { return false };
        let last = ends.iter().map(|end| end.rounds).max().unwrap_or(0);
        let mut now = vec![false; self.stitches as usize + 1];
        if let Some(tube) = now.last_mut() {
            *tube = true;
        }
        for round in 1..=last {
            if ends.iter().any(|end| end.rounds == round && now[end.stitches as usize]) {
                return true;
            }
            let most = self.most_girth(&ends[0], round);
            let mut next = vec![false; now.len()];
            for n in fewest..=self.stitches {
                if now[n as usize] && f64::from(n) * self.w <= most {
                    self.mark(n, fewest, &mut next);
                }
            }
            now = next;
        }
        false
    }

    /// Marks what a legal round may make of a count, down to the fewest.
    fn mark(&self, before: u32, fewest: u32, next: &mut [bool]) {
        next[before as usize] = true;
        let most = (before - fewest).min(before / 2);
        match self.wedges {
            None if most >= LEAST_DECREASES => next[(before - most) as usize..=(before - LEAST_DECREASES) as usize].fill(true),
            Some(k) if before.is_multiple_of(k) => {
                (k..=most).step_by(k as usize).for_each(|d| next[(before - d) as usize] = true);
            }
            Some(k) if before % k <= most => next[(before - before % k) as usize] = true,
            None | Some(_) => {}
        }
    }

    /// The wanted girth at a round's inner edge.
    pub fn wanted(&self, curve: &Curve, s: f64) -> f64 {
        let floor = self.gathered().map_or(0.0, |n| f64::from(n) * self.w);
        curve.at(s).max(floor)
    }

    /// Every way to end: at each count that may close, after each number of rounds that comes within one round's height of the arc.
    pub fn ends(&self) -> Vec<End> {
        let counts = match self.gathered() {
            None => DRAWN,
            Some(n) => n.saturating_sub(self.slack()).max(1)..=n + self.slack(),
        };
        let mut ends = Vec::new();
        for stitches in counts {
            let rounds = (self.arc - self.drawn_arc(stitches)) / self.h;
            let least = (rounds - 1.0).max(1.0) as u32;
            ends.extend((least..=least + 3).filter_map(|rounds| self.end(stitches, rounds)));
        }
        ends.sort_unstable_by(|a, b| a.price.total_cmp(&b.price));
        ends
    }

    /// Squared distance of a count from the wanted girth, over one round, in cm³.
    pub fn off(&self, stitches: u32, wanted: f64) -> f64 {
        let miss = f64::from(stitches) * self.w - wanted;
        miss * miss * self.h
    }

    /// Arc from the centre to a round's inner edge.
    pub fn inner_edge(&self, round: u32) -> f64 {
        self.arc - f64::from(round) * self.h
    }

    /// The most girth that a round may have on its way to an end before it ruffles. Arcs are those of the rounds that will be written,
    /// not of those that were asked for.
    pub fn most_girth(&self, end: &End, round: u32) -> f64 {
        match self.closing {
            Closing::Drawn => Quantity::Ruffle.row().usual_value() * TAU * (self.inner_edge(round) - end.miss),
            Closing::Gathered(_) => f64::INFINITY,
        }
    }

    /// Ending at so many stitches after so many rounds, where that may be.
    ///
    /// What it costs: the arc that is left against the arc that the strand draws up, as a miss of girth over one round, and stitches
    /// that a strand would rather not draw up, or that a gathered top was not asked to have.
    fn end(&self, stitches: u32, rounds: u32) -> Option<End> {
        let miss = self.inner_edge(rounds) - self.drawn_arc(stitches);
        if stitches > self.stitches || miss.abs() > self.h {
            return None;
        }
        let left = match self.gathered() {
            None => f64::from(stitches.saturating_sub(TIGHT)) * Quantity::PriceOpening.row().usual_value(),
            Some(n) => {
                let count = f64::from(stitches.abs_diff(n)) * self.w;
                count * count * self.h
            }
        };
        Some(End { stitches, rounds, miss, price: TAU * TAU * miss * miss * self.h + left })
    }
}
