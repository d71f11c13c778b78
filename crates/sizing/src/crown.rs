//! Schedules: whole rounds of whole stitches that follow a curve as closely as a person would care to work.
//!
//! What is legal, and what it costs; [`crate::walk`] finds the schedule of least cost among all legal ones. The cost is the squared
//! distance from the curve in cm of girth, integrated over the arc, so that it does not depend on the yarn's thickness, plus prices for
//! what a person pays for: an uneven round, a change in the number of decreases, two decrease rounds running where one would do.

use crate::curve::Curve;
use crate::walk::search;
use crate::{Quantity, Stitches, Taste};
use core::f64::consts::{PI, TAU};

/// Counts that a strand draws up into a closed top (practice).
const DRAWN: core::ops::RangeInclusive<u32> = 6..=12;
/// The most that draws up without a hole (practice).
const TIGHT: u32 = 8;
/// Counts that are worked into a ring (practice).
const RING: core::ops::RangeInclusive<u32> = 4..=16;

/// What is asked of a schedule. Lengths in cm.
///
/// Rounds are counted from the wide end inward, whichever way they are worked: an increase read backwards is a decrease. The first
/// round has [`Task::stitches`]. What is worked inward has the total of round `j` at its inner edge, `arc - j·h` from the centre; what is
/// worked outward at its outer edge, `arc - (j - 1)·h`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Task {
    /// Stitches of the first round, at the wide end.
    pub stitches: u32,
    /// Width of a stitch.
    pub w: f64,
    /// Height of a round.
    pub h: f64,
    /// Girth that is wanted, by distance from the centre.
    pub curve: Curve,
    /// From the wide end to the centre.
    pub arc: f64,
    /// Worked from the centre outward.
    pub from_centre: bool,
    /// Wedges, or spread.
    pub wedges: Option<u32>,
    /// How it ends at the narrow end.
    pub close: Close,
    /// Fewest decreases of a round that decreases, except in an adjustment round and in wedges.
    pub fewest: u32,
    /// Whether a round may be no longer than a flat disc allows.
    pub ruffle: bool,
    /// What effort costs.
    pub prices: Prices,
}

/// The narrow end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Close {
    /// Drawn up by a strand.
    Drawn,
    /// Begun in a ring: the innermost round's outer edge is one round's height from the centre.
    Ring,
    /// Gathered at about so many stitches, or at all there are.
    Gathered(Stitches),
    /// Exactly so many stitches, whose total lies at this distance from the centre: an edge where something else goes on.
    To {
        /// The last round's stitches.
        stitches: u32,
        /// Distance of its total from the centre.
        at: f64,
    },
}

/// What effort costs, in cm³ of squared misses of girth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Prices {
    /// A decrease round whose count does not divide.
    pub uneven: f64,
    /// A change in the number of decreases.
    pub change: f64,
    /// A decrease round straight after another where one would do.
    pub running: f64,
    /// Each stitch that a strand would rather not draw up.
    pub opening: f64,
}

impl Prices {
    /// The table's prices, in the measure that a taste gives them.
    pub fn of(taste: Taste) -> Self {
        let times = match taste {
            Taste::Balanced | Taste::Nearest => 1.0,
            Taste::Smooth => 0.1,
            Taste::Simple => 5.0,
        };
        let price = |q: Quantity| q.row().usual_value() * times;
        Self {
            uneven: price(Quantity::PriceUneven),
            change: price(Quantity::PriceChange),
            running: price(Quantity::PriceRunning),
            // A hole is no effort: nobody wants one.
            opening: Quantity::PriceOpening.row().usual_value(),
        }
    }
}

/// A schedule: the count of every round from the wide end inward.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Schedule {
    pub counts: Vec<u32>,
    /// Arc that is left inside the innermost round: drawn up by the strand, or made of something else. All rounds' heights and this are the
    /// arc that there is.
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
    /// How far from the centre the total of a last round of so many stitches lies: across the opening that the strand draws together,
    /// or, for a gathered top, half of the bundle that is left, in which each stitch takes about a square of its width by its width.
    pub fn rest(&self, stitches: u32) -> f64 {
        match self.close {
            Close::Drawn => f64::from(stitches) * self.w / TAU,
            Close::Ring => self.h,
            Close::Gathered(_) => self.bundle(stitches) / 2.0,
            Close::To { at, .. } => at,
        }
    }

    /// Arc inside a last round of so many stitches.
    pub fn drawn_arc(&self, stitches: u32) -> f64 {
        self.rest(stitches) - if self.from_centre { self.h } else { 0.0 }
    }

    /// Across the bundle of so many gathered stitches, each drawn in to half its width (practice, no source).
    pub fn bundle(&self, stitches: u32) -> f64 {
        self.w * libm::sqrt(f64::from(stitches) / PI)
    }

    fn gathered(&self) -> Option<u32> {
        match self.close {
            Close::Gathered(n) => Some(n.get().min(self.stitches)),
            _ => None,
        }
    }

    /// How far a last count may lie from the one asked for in a gathered top, where wedges or whole decreases cannot hit it.
    fn slack(&self) -> u32 {
        if self.gathered() == Some(self.stitches) { 0 } else { self.wedges.unwrap_or(self.fewest).max(self.fewest) / 2 }
    }

    /// How many decreases a round may take from so many stitches, of those from `few` to `many`: the first of them, the step from one to the
    /// next, and the last or a little more. At most one for every two stitches; where wedges do not divide, only what makes them.
    pub fn steps(&self, before: u32, few: u32, many: u32) -> (u32, u32, u32) {
        let many = many.min(before / 2);
        match self.wedges {
            None => (few.max(self.fewest), 1, many),
            Some(k) => match before % k {
                0 => (few.max(1).next_multiple_of(k), k, many),
                over if (few..=many).contains(&over) => (over, k, over),
                _ => (1, 1, 0),
            },
        }
    }

    /// Whether a round that decreases from so many stitches is the adjustment round.
    pub fn adjusts(&self, before: u32) -> bool {
        self.wedges.is_some_and(|k| !before.is_multiple_of(k))
    }

    /// The best legal schedule; `None` where there is none.
    pub fn schedule(&self) -> Option<Schedule> {
        // A top that can only be closed a whole round too early or too late is better than none.
        let whole = || (self.near() < self.h).then(|| search(self, self.h)).flatten();
        search(self, self.near()).or_else(whole)
    }

    /// Whether there is any legal schedule: [`Task::schedule`] without the trouble of finding the best.
    pub fn possible(&self) -> bool {
        self.reach(&self.ends(self.h))
    }

    /// Whether there is a way to any of these ends.
    pub fn reach(&self, ends: &[End]) -> bool {
        // Those that ruffle alike need one walk for all.
        let mut ends = ends.to_vec();
        ends.sort_by(|a, b| a.miss.total_cmp(&b.miss));
        let ruffles = self.ruffles();
        ends.chunk_by(|a, b| !ruffles || a.miss.total_cmp(&b.miss).is_eq()).any(|ends| self.reaches(ends))
    }

    /// Whether there is a way to any of these ends, all of which ruffle alike.
    fn reaches(&self, ends: &[End]) -> bool {
        let Some(fewest) = ends.iter().map(|end| end.stitches).min() else { return false };
        let last = ends.iter().map(|end| end.rounds).max().unwrap_or(0);
        let mut now = vec![false; self.stitches as usize + 1];
        let mut next = now.clone();
        now[self.stitches as usize] = true;
        // Counts never grow: nothing lies above this.
        let mut highest = self.stitches;
        for round in 1..=last {
            if ends.iter().any(|end| end.rounds == round && now[end.stitches as usize]) {
                return true;
            }
            let smooth = (fewest..=highest).rev().find(|n| self.is_smooth(*n, &ends[0], round));
            let Some(most) = smooth.filter(|most| now[fewest as usize..=*most as usize].contains(&true)) else { return false };
            self.work(&now, fewest..=most, &mut next);
            highest = most;
            core::mem::swap(&mut now, &mut next);
        }
        false
    }

    /// Which counts a legal round may make of some of these counts.
    fn work(&self, now: &[bool], counts: core::ops::RangeInclusive<u32>, next: &mut [bool]) {
        let (fewest, most) = counts.into_inner();
        let least = self.wedges.unwrap_or(self.fewest).max(1);
        let whole = |n: u32| self.wedges.is_none_or(|k| n.is_multiple_of(k));
        // Of the counts from which so many decreases lead to one, or more, the nearest makes the fewest.
        let mut nearest = None;
        for n in (fewest..=most).rev() {
            let from = n + least;
            if from <= most && now[from as usize] && whole(from) {
                nearest = Some(from);
            }
            next[n as usize] = now[n as usize] || (whole(n) && nearest.is_some_and(|from| from <= 2 * n));
        }
        for n in (fewest..=most).filter(|n| now[*n as usize] && !whole(*n)) {
            let (first, _, last) = self.steps(n, 1, n - fewest);
            if first <= last {
                next[(n - first) as usize] = true;
            }
        }
    }

    /// The wanted girth at a distance from the centre.
    pub fn wanted(&self, s: f64) -> f64 {
        let floor = self.gathered().map_or(0.0, |n| f64::from(n) * self.w);
        self.curve.at(s).max(floor)
    }

    /// By how much the arc may be missed: half a round, or 2 % where that is more.
    pub fn near(&self) -> f64 {
        match self.close {
            // Nothing is drawn up inside a ring that could make up for a round.
            Close::Ring => self.h / 2.0,
            _ => (self.h / 2.0).max(self.arc * 0.02).min(self.h),
        }
    }

    /// Every way to end: at each count that may close, after each number of rounds that misses the arc by no more than that.
    pub fn ends(&self, miss: f64) -> Vec<End> {
        let counts = match self.close {
            Close::Drawn => DRAWN,
            Close::Ring => RING,
            Close::Gathered(n) => {
                let n = n.get().min(self.stitches);
                n.saturating_sub(self.slack()).max(1)..=n + self.slack()
            }
            Close::To { stitches, .. } => stitches..=stitches,
        };
        let mut ends = Vec::new();
        for stitches in counts {
            let rounds = (self.arc - self.drawn_arc(stitches)) / self.h;
            let least = (rounds - 1.0).max(1.0) as u32;
            ends.extend((least..=least + 3).filter_map(|rounds| self.end(stitches, rounds, miss)));
        }
        ends.sort_unstable_by(|a, b| a.price.total_cmp(&b.price));
        ends
    }

    /// Squared distance of a count from the wanted girth, over one round, in cm³.
    pub fn off(&self, stitches: u32, wanted: f64) -> f64 {
        let miss = f64::from(stitches) * self.w - wanted;
        miss * miss * self.h
    }

    /// How far from the centre a round's total lies.
    pub fn total_at(&self, round: u32) -> f64 {
        let worked = if self.from_centre { round.saturating_sub(1) } else { round };
        self.arc - f64::from(worked) * self.h
    }

    /// Whether rounds are held to what a flat disc allows. What is gathered lies in folds anyway.
    pub fn ruffles(&self) -> bool {
        self.ruffle && self.gathered().is_none()
    }

    /// The most girth that a round may have on its way to an end before it ruffles. Arcs are those of the rounds that will be written,
    /// not of those that were asked for.
    pub fn most_girth(&self, end: &End, round: u32) -> f64 {
        if self.ruffles() {
            Quantity::Ruffle.row().usual_value() * TAU * (self.total_at(round) - end.miss)
        } else {
            f64::INFINITY
        }
    }

    /// Whether a round of so many stitches lies smoothly on its way to an end.
    pub fn is_smooth(&self, stitches: u32, end: &End, round: u32) -> bool {
        f64::from(stitches) * self.w <= self.most_girth(end, round)
    }

    /// The most stitches that a round may have on its way to an end.
    pub fn most_stitches(&self, end: &End, round: u32) -> u32 {
        let most = self.most_girth(end, round);
        if !most.is_finite() {
            return u32::MAX;
        }
        let near = (most / self.w).max(0.0) as u32 + 1;
        (near.saturating_sub(2)..=near).rev().find(|n| self.is_smooth(*n, end, round)).unwrap_or(0)
    }

    /// Ending at so many stitches after so many rounds, where that may be.
    ///
    /// What it costs: the arc that is left against the arc that the strand draws up, as a miss of girth over one round, and stitches
    /// that a strand would rather not draw up, or that a gathered top was not asked to have.
    fn end(&self, stitches: u32, rounds: u32, most: f64) -> Option<End> {
        let miss = self.total_at(rounds) - self.rest(stitches);
        // What is half a round but for its last digit is half a round.
        if stitches > self.stitches || miss.abs() > most + 1e-9 {
            return None;
        }
        let left = match self.close {
            Close::Drawn => f64::from(stitches.saturating_sub(TIGHT)) * self.prices.opening,
            Close::Ring | Close::To { .. } => 0.0,
            Close::Gathered(n) => self.off(stitches, f64::from(n.get().min(self.stitches)) * self.w),
        };
        let end = End { stitches, rounds, miss, price: TAU * TAU * miss * miss * self.h + left };
        // The round before has as many stitches or more.
        (rounds < 2 || self.is_smooth(stitches, &end, rounds - 1)).then_some(end)
    }
}
