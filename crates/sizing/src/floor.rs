//! What a schedule must still pay at the least, by round, stitches and the decreases last made: it spares the programme nearly all of its
//! nodes.
//!
//! This is the programme worked from the last round back, and all but exact: two decrease rounds running are priced only where they must
//! be, and the rule against ruffling is that of the end that is most lenient. That only leaves out what is paid and lets in what is not
//! legal, so nothing that could be part of the best schedule is lost. A count costs as many steps as there are numbers of decreases.

use crate::crown::{End, Task};
use crate::walk_window::Windows;

/// Floors larger than this forget the decreases last made, and say less.
const MOST_COSTS: usize = 1 << 20;

/// For each count, which numbers of decreases under 64 divide it: one bit for each.
pub(crate) struct Divisors(Vec<u64>);

impl Divisors {
    /// Of all counts up to `most`.
    pub fn new(most: u32) -> Self {
        let mut masks = vec![0_u64; most as usize + 1];
        for d in 1..64 {
            masks.iter_mut().step_by(d).for_each(|mask| *mask |= 1 << d);
        }
        Self(masks)
    }

    /// Those of a count from `least` to `most`.
    fn of(&self, count: u32, least: u32, most: u32) -> impl Iterator<Item = u32> {
        let below = |d: u32| if d < 64 { (1_u64 << d) - 1 } else { u64::MAX };
        let mut bits = self.0[count as usize] & below(most.saturating_add(1)) & !below(least);
        let small = core::iter::from_fn(move || {
            let d = bits.trailing_zeros();
            bits &= bits.wrapping_sub(1);
            (d < 64).then_some(d)
        });
        let large = (2..=count / 64).filter(move |q| count.is_multiple_of(*q)).map(move |q| count / q);
        small.chain(large.filter(move |d| *d >= 64 && (least..=most).contains(d)))
    }

    pub fn divides(&self, decreases: u32, count: u32) -> bool {
        if decreases < 64 { self.0[count as usize] >> decreases & 1 == 1 } else { count.is_multiple_of(decreases) }
    }
}

/// What is the same for all floors of a search.
pub(crate) struct Ground<'a> {
    pub task: &'a Task,
    /// Girth that is wanted, by round.
    pub wanted: &'a [f64],
    pub windows: &'a Windows,
    pub divisors: &'a Divisors,
}

/// The least to pay after each round of a schedule.
#[derive(Debug)]
pub(crate) struct Floor {
    /// By round; the first is no round.
    rounds: Vec<Shelf>,
    /// By round, stitches and habit: after a plain round, and after one that decreased.
    costs: Vec<[f64; 2]>,
    habits: Habits,
}

/// Where a round's costs lie.
#[derive(Clone, Copy, Debug, Default)]
struct Shelf {
    start: usize,
    /// The least of its counts, and how many there are.
    least: u32,
    counts: usize,
    /// Costs for each count: one for no habit, and one for each number of decreases that can have been made.
    width: usize,
}

/// How numbers of decreases are told apart.
#[derive(Clone, Copy, Debug)]
enum Habits {
    /// Not at all.
    Forgotten,
    /// From the fewest on.
    From(u32),
    /// By how often each wedge decreases.
    Wedges(u32),
}

impl Habits {
    fn place(self, decreases: u32) -> usize {
        match self {
            Self::Forgotten => 0,
            Self::From(fewest) => (decreases + 1).saturating_sub(fewest) as usize,
            Self::Wedges(k) => (decreases / k) as usize,
        }
    }
}

/// One round's costs.
#[derive(Clone, Copy)]
pub(crate) struct Row<'a> {
    costs: &'a [[f64; 2]],
    least: u32,
    width: usize,
    habits: Habits,
}

impl Row<'_> {
    pub fn is_empty(&self) -> bool {
        self.costs.is_empty()
    }

    /// The least to pay from so many stitches, after so many decreases, just made or not.
    pub fn at(&self, stitches: u32, habit: u32, decreased: bool) -> f64 {
        self.costs[(stitches - self.least) as usize * self.width + self.habits.place(habit)][usize::from(decreased)]
    }
}

impl Floor {
    /// The floor to these ends; `cap` gives the most stitches that go on from a round to any of them.
    pub fn new(ground: &Ground<'_>, ends: &[End], cap: &dyn Fn(u32) -> u32) -> Self {
        let habits = ground.task.wedges.map_or(Habits::From(ground.task.fewest), Habits::Wedges);
        Self::with(ground, ends, cap, habits)
    }

    /// A lower floor, which forgets the decreases last made and is sooner worked out.
    pub fn rough(ground: &Ground<'_>, ends: &[End], cap: &dyn Fn(u32) -> u32) -> Self {
        Self::with(ground, ends, cap, Habits::Forgotten)
    }

    fn with(ground: &Ground<'_>, ends: &[End], cap: &dyn Fn(u32) -> u32, mut habits: Habits) -> Self {
        let last = ground.wanted.len() as u32 - 1;
        let (mut rounds, mut size) = Self::shelves(ground, last, habits);
        if size > MOST_COSTS {
            habits = Habits::Forgotten;
            (rounds, size) = Self::shelves(ground, last, habits);
        }
        let mut floor = Self { rounds, costs: vec![[f64::INFINITY; 2]; size], habits };
        let mut scratch = Scratch::default();
        for round in (1..=last).rev() {
            floor.fill(ground, round, cap(round), ends, &mut scratch);
        }
        floor
    }

    fn shelves(ground: &Ground<'_>, last: u32, habits: Habits) -> (Vec<Shelf>, usize) {
        let mut shelves = vec![Shelf::default()];
        let (mut start, mut most_decreases) = (0, 0);
        for round in 1..=last {
            let (least, most) = ground.windows.at(round);
            let before = if round > 1 { ground.windows.at(round - 1).1 } else { 0 };
            most_decreases = most_decreases.max(before.saturating_sub(least).min(before / 2));
            let (counts, width) = ((most + 1).saturating_sub(least) as usize, habits.place(most_decreases) + 1);
            shelves.push(Shelf { start, least, counts, width });
            start += counts * width;
        }
        (shelves, start)
    }

    /// What is to pay after a round.
    pub fn row(&self, round: u32) -> Row<'_> {
        let Shelf { start, least, counts, width } = self.rounds.get(round as usize).copied().unwrap_or_default();
        Row { costs: &self.costs[start..start + counts * width], least, width, habits: self.habits }
    }

    fn fill(&mut self, ground: &Ground<'_>, round: u32, cap: u32, ends: &[End], scratch: &mut Scratch) {
        let Ground { task, wanted, windows, divisors } = ground;
        let habits = self.habits;
        let Shelf { start, least: first, counts, width } = self.rounds[round as usize];
        let next = self.rounds.get(round as usize + 1).copied().unwrap_or_default();
        let (costs, later) = self.costs.split_at_mut(start + counts * width);
        let later = &later[..next.counts * next.width];
        let girth = wanted.get(round as usize + 1).copied().unwrap_or(0.0);
        let Scratch { off, after, now } = scratch;
        off.clear();
        off.extend((next.least..).take(next.counts).map(|n| task.off(n, girth)));
        // Without habits, the costs of a run of counts lie side by side.
        let one_by_one = matches!(habits, Habits::Forgotten) && task.wedges.is_none();
        after.clear();
        if one_by_one {
            after.extend(off.iter().zip(later).map(|(off, cost)| off + cost[1]));
        }
        now.clear();
        now.resize(next.width.max(width).max(1), f64::INFINITY);
        let closes = ends.iter().any(|end| end.rounds == round);
        let before = if round > 1 { windows.at(round - 1).1 } else { 0 };
        for (n, row) in (first..).zip(costs[start..].chunks_exact_mut(width)) {
            let mut closed = f64::INFINITY;
            if closes {
                let here = ends.iter().filter(|end| end.rounds == round && end.stitches == n);
                closed = here.map(|end| end.price).fold(closed, f64::min);
            }
            row.fill([closed; 2]);
            if n > cap || later.is_empty() || n < next.least {
                continue;
            }
            let reach = n - next.least;
            // A plain round.
            if (reach as usize) < next.counts {
                let (stay, after) = (off[reach as usize], &later[reach as usize * next.width..]);
                for (cost, after) in row.iter_mut().zip(after) {
                    *cost = [least(closed, stay + after[0]); 2];
                }
            }
            // The most that the round before can have decreased by, and up to how few decreases one round would have done for both.
            let just = before.saturating_sub(n).min(n);
            let running = n.saturating_sub(just) / 2;
            let (few, many) = (n.saturating_sub(next.least + next.counts as u32 - 1).max(1), reach);
            now.fill(f64::INFINITY);
            // The least of what follows so few to so many decreases.
            let mut decrease = |few: u32, many: u32, step: u32, adjusts: bool| {
                let mut best = f64::INFINITY;
                if one_by_one && few <= many {
                    let (from, to) = ((reach - many) as usize, (reach - few) as usize);
                    let uneven = after[from..=to].iter().fold(f64::INFINITY, |a, b| least(a, *b)) + task.prices.uneven;
                    return divisors.of(n, few, many).fold(uneven, |best, d| least(best, after[(reach - d) as usize]));
                }
                let mut d = few;
                while d <= many {
                    let (at, habit) = ((reach - d) as usize, if adjusts { 0 } else { habits.place(d) });
                    let uneven = if divisors.divides(d, n) { 0.0 } else { task.prices.uneven };
                    let cost = later[at * next.width + habit][1] + off[at] + uneven;
                    now[habit] = cost;
                    best = least(best, cost);
                    d += step;
                }
                best
            };
            let (first, step, last) = task.steps(n, few, many);
            let adjusts = task.adjusts(n);
            let split = if running < first { first } else { first + ((running.min(last.max(first)) - first) / step + 1) * step };
            let (run, apart) = (decrease(first, last.min(running), step, adjusts), decrease(split, last, step, adjusts));
            let any = [least(run, apart), least(apart, run + task.prices.running)];
            let change = if adjusts { 0.0 } else { task.prices.change };
            let (open, habitual) = row.split_at_mut(1);
            open[0] = [least(open[0][0], any[0]), least(open[0][1], any[1])];
            let any = [any[0] + change, any[1] + change];
            // One round would have done for two that both decrease by as many up to a third of the stitches.
            let both = habits.place(n / 3).min(habitual.len());
            let now = &now[1..];
            for (cost, same) in habitual.iter_mut().zip(now).take(both) {
                *cost = [least(least(cost[0], *same), any[0]), least(least(cost[1], *same + task.prices.running), any[1])];
            }
            for (cost, same) in habitual.iter_mut().zip(now).skip(both) {
                *cost = [least(least(cost[0], *same), any[0]), least(least(cost[1], *same), any[1])];
            }
        }
    }
}

/// The smaller of two numbers, neither of which is without a value.
fn least(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}

/// Room for one count's work.
#[derive(Default)]
struct Scratch {
    /// What each count of the next round misses the curve by.
    off: Vec<f64>,
    /// That, and what follows a round that decreases to each of them.
    after: Vec<f64>,
    /// By habit, what it costs to decrease by as many now.
    now: Vec<f64>,
}
