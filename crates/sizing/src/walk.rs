//! The dynamic programme behind a crown's schedule.
//!
//! It goes round by round over (stitches, decreases last made, decreases of the round before), which is all that the price of the next
//! round depends on. Read backwards, decreases are increases of the same price: one programme serves what is begun at either end. Four
//! things keep it small, and none of them can lose the best schedule:
//!
//! - [`Windows`]: counts too far from the curve for what a schedule may cost are not looked at;
//! - [`Floor`]: nor is one that costs too much together with what it must still pay;
//! - of one count, nothing is kept that costs more than another and whatever their pasts could ever make up;
//! - ends are gone to together: a node knows which of them would still let its rounds pass without a ruffle.
//!
//! What it costs, measured (`benches/scheduler.rs`, whole plans): time grows with the rounds that are shaped × the counts in a window × the
//! numbers of decreases between two windows; with the height of a round in proportion to its width, less than with the square of the
//! stitches: an adult's spread crown takes 38 µs with 8 stitches to 10 cm, 60 with 18, 140 with 26, 180 with 32, 350 with 38. Rounds on
//! a slant as even as a cone's are cheaper than a dome's, because their windows are narrow (a cone of 150 rounds takes 100 µs), and a
//! tube's are nearly free. Dear effort widens the windows: cheap, it takes half the time. Wedges leave few counts and take a third.

use crate::crown::{End, Schedule, Task};
use crate::floor::{Divisors, Floor, Ground, Row};
use crate::walk_shrink::shrink;
use crate::walk_window::Windows;

/// The best schedule of a task that misses its arc by no more than `miss`.
pub(crate) fn search(task: &Task, miss: f64) -> Option<Schedule> {
    let walk = Walk::new(task, miss)?;
    // Near the curve first: whatever is found there bounds all else from above.
    let near = Windows::near(task, &walk.wanted, &walk.ends, (walk.stride() * 3).div_ceil(4).max(2));
    if let Some(found) = Pass::new(&walk, near.clone()).rising(f64::INFINITY) {
        let best = walk.within(found.cost, Some(&near));
        return Some(walk.schedule(best.unwrap_or(found)));
    }
    // Rounds so tall that a crown has to leave its curve to close. A bound that turns out too low finds nothing, and soon.
    let bounds = if task.reach(&walk.ends) { [30.0, 100.0, 300.0, 1000.0, f64::INFINITY] } else { return None };
    bounds.into_iter().find_map(|bound| walk.within(bound, None)).map(|found| walk.schedule(found))
}

/// The same without any bound to begin with: what [`search`] spares itself is looked at here.
#[cfg(test)]
pub(crate) fn search_all(task: &Task, miss: f64) -> Option<Schedule> {
    let walk = Walk::new(task, miss)?;
    let windows = Windows::within(task, &walk.wanted, &walk.ends, f64::INFINITY);
    Pass::new(&walk, windows).best(f64::INFINITY, usize::MAX).ok().flatten().map(|found| walk.schedule(found))
}

/// A round of so many nodes is no trouble.
const ROOM: usize = 16;

#[derive(Clone, Copy, Debug)]
struct Node {
    stitches: u32,
    /// Decreases of the last round that decreased; 0 before any, and after the adjustment round, which sets no habit.
    habit: u32,
    /// Decreases of the round just worked.
    just: u32,
    /// To how many of the ways to end, the most lenient first, no round so far ruffles.
    free: u32,
    parent: u32,
    cost: f64,
}

/// A schedule and its cost.
struct Found {
    cost: f64,
    counts: Vec<u32>,
}

/// What all passes over a task share.
struct Walk<'a> {
    task: &'a Task,
    /// Girth that is wanted, by round; the first is no round.
    wanted: Vec<f64>,
    /// The most lenient first.
    ends: Vec<End>,
    divisors: Divisors,
}

impl<'a> Walk<'a> {
    fn new(task: &'a Task, miss: f64) -> Option<Self> {
        let mut ends = task.ends(miss);
        let last = ends.iter().map(|end| end.rounds).max()?;
        // The less arc is missed, the farther out lies a round.
        ends.sort_by(|a, b| a.miss.total_cmp(&b.miss).then(a.rounds.cmp(&b.rounds)));
        let wanted = (0..=last).map(|round| task.wanted(task.total_at(round))).collect();
        Some(Self { task, wanted, ends, divisors: Divisors::new(task.stitches) })
    }

    /// The most stitches by which one round has to narrow, on the curve or by rule.
    fn stride(&self) -> u32 {
        let drop = |pair: &[f64]| (pair[0] - pair[1]) / self.task.w;
        let drop = self.wanted[1..].windows(2).map(drop).fold(0.0, f64::max);
        self.task.fewest.max(self.task.wedges.unwrap_or(0)).max(drop as u32 + 1)
    }

    fn schedule(&self, found: Found) -> Schedule {
        let Found { cost, counts } = found;
        Schedule { drawn: self.task.drawn_arc(counts.last().copied().unwrap_or(0)), counts, cost }
    }

    /// The most stitches that go on from a round to any end without a ruffle.
    fn cap(&self, round: u32) -> u32 {
        self.ends.iter().find(|end| end.rounds > round).map_or(0, |end| self.task.most_stitches(end, round))
    }

    /// The best schedule that costs no more than `bound`, unless it lies within windows that were looked at before.
    fn within(&self, bound: f64, known: Option<&Windows>) -> Option<Found> {
        let rough = Pass::with(self, Windows::within(self.task, &self.wanted, &self.ends, bound), Floor::rough);
        rough.least().filter(|least| *least <= with_margin(bound))?;
        // A rough floor is soon worked out and mostly good enough; where it is not, it still narrows the windows for a good one.
        if let Ok(found) = rough.best(bound, ROOM * self.wanted.len()) {
            return found;
        }
        let Self { task, wanted, divisors, .. } = self;
        let ground = Ground { task, wanted, windows: &rough.windows, divisors };
        let windows = shrink(&ground, &rough.floor, with_margin(bound), |round| self.cap(round));
        if known.is_some_and(|known| known.hold(&windows)) {
            return None;
        }
        Pass::new(self, windows).rising(bound)
    }

    /// Takes from windows what ruffles on the way to every end.
    fn cut(&self, windows: &mut Windows) {
        let first = self.ends.iter().map(|end| end.rounds).min().unwrap_or(0);
        (1..first).for_each(|round| windows.cut(round, self.cap(round)));
    }
}

/// Sums of the same prices in another order differ in their last digits.
fn with_margin(bound: f64) -> f64 {
    bound + 1e-9 * bound.max(1.0)
}

/// How a floor is worked out.
type Make = fn(&Ground<'_>, &[End], &dyn Fn(u32) -> u32) -> Floor;

/// One pass: windows, and the floor that follows from them.
struct Pass<'a> {
    walk: &'a Walk<'a>,
    windows: Windows,
    floor: Floor,
}

impl<'a> Pass<'a> {
    fn new(walk: &'a Walk<'a>, windows: Windows) -> Self {
        Self::with(walk, windows, Floor::new)
    }

    fn with(walk: &'a Walk<'a>, mut windows: Windows, floor: Make) -> Self {
        walk.cut(&mut windows);
        let Walk { task, wanted, ends, divisors } = walk;
        let floor = floor(&Ground { task, wanted, windows: &windows, divisors }, ends, &|round| walk.cap(round));
        Self { walk, windows, floor }
    }

    fn start(&self) -> Node {
        let stitches = self.walk.task.stitches;
        let cost = self.walk.task.off(stitches, self.walk.wanted[1]);
        Node { stitches, habit: 0, just: 0, free: self.walk.ends.len() as u32, parent: 0, cost }
    }

    /// The least that any schedule of these windows pays; none where there is no schedule.
    fn least(&self) -> Option<f64> {
        let start = self.start();
        let open = self.windows.at(1) == (start.stitches, start.stitches);
        open.then(|| start.cost + self.floor.row(1).at(start.stitches, 0, false)).filter(|least| least.is_finite())
    }

    /// The best schedule that costs no more than `bound`, by bounds that rise from the floor, which mostly lies close below it. Without a
    /// bound, none where it lies high above.
    fn rising(&self, bound: f64) -> Option<Found> {
        let least = self.least().filter(|least| *least <= with_margin(bound))?;
        let prices = &self.walk.task.prices;
        let slack = 0.1 * (prices.change + prices.running).max(0.1);
        let rising = (0..8).map(|times| least + slack * f64::from(1 << times)).take_while(|rising| *rising < bound);
        let last = bound.is_finite().then_some(bound);
        rising.chain(last).find_map(|bound| self.best(bound, usize::MAX).ok().flatten())
    }

    /// The best schedule that costs no more than `bound`; an error where that needs more than so many nodes.
    fn best(&self, bound: f64, room: usize) -> Result<Option<Found>, Full> {
        let mut layers =
            Layers { pass: self, nodes: vec![self.start()], starts: vec![0], bound, best: None, ceilings: Vec::new() };
        for round in 1.. {
            layers.close(round);
            if !layers.advance(round) {
                break;
            }
            if layers.nodes.len() > room {
                return Err(Full);
            }
        }
        Ok(layers.best)
    }
}

/// More nodes than there is room for.
struct Full;

/// The rounds so far, and the best way to close.
struct Layers<'a> {
    pass: &'a Pass<'a>,
    /// The nodes of all rounds, those of one after those of another; of a round, those with most stitches first, of a count those that
    /// are freest, and of these the cheapest.
    nodes: Vec<Node>,
    /// Where each round's nodes begin.
    starts: Vec<usize>,
    /// Nothing dearer can be the best schedule.
    bound: f64,
    best: Option<Found>,
    /// By count of the round in the making, and by how free a node is, the most that it may cost.
    ceilings: Vec<f64>,
}

impl Layers<'_> {
    fn last(&self) -> &[Node] {
        &self.nodes[self.starts.last().copied().unwrap_or(0)..]
    }

    /// Closes after the last round, where that is the cheapest yet.
    fn close(&mut self, round: u32) {
        for (rank, end) in self.pass.walk.ends.iter().enumerate().filter(|(_, end)| end.rounds == round) {
            let here =
                self.last().iter().enumerate().filter(|(_, node)| node.stitches == end.stitches && node.free as usize > rank);
            let cheapest = here.map(|(i, node)| (i, node.cost + end.price)).min_by(|a, b| a.1.total_cmp(&b.1));
            if let Some((at, cost)) = cheapest
                && cost <= with_margin(self.bound)
                && self.best.as_ref().is_none_or(|best| cost < best.cost)
            {
                self.bound = self.bound.min(cost);
                self.best = Some(Found { cost, counts: self.unwind(at) });
            }
        }
    }

    /// The counts of all rounds that lead to a node of the last.
    fn unwind(&self, mut at: usize) -> Vec<u32> {
        let mut counts = vec![0; self.starts.len()];
        for (count, start) in counts.iter_mut().zip(&self.starts).rev() {
            let node = self.nodes[start + at];
            *count = node.stitches;
            at = node.parent as usize;
        }
        counts
    }

    /// Works out the round after `round`; whether there is anything in it.
    fn advance(&mut self, round: u32) -> bool {
        let Pass { walk, windows, floor } = self.pass;
        let task = walk.task;
        let after = floor.row(round + 1);
        if after.is_empty() {
            return false;
        }
        let (least, most) = windows.at(round + 1);
        let wanted = walk.wanted[round as usize + 1];
        self.ceilings.clear();
        self.ceilings.resize((most + 1 - least) as usize * walk.ends.len(), f64::INFINITY);
        let (from, to) = (self.starts.last().copied().unwrap_or(0), self.nodes.len());
        let bound = with_margin(self.bound);
        let making = Making { task, divisors: &walk.divisors, ends: walk.ends.len(), least, most, wanted, after, bound };
        let mut i = from;
        while i < to {
            let Node { stitches, free, .. } = self.nodes[i];
            let alike = |node: &&Node| node.stitches == stitches && node.free == free;
            let group = i..i + self.nodes[i..to].iter().take_while(alike).count();
            let free = free
                - walk.ends[..free as usize].iter().rev().take_while(|end| !task.is_smooth(stitches, end, round)).count() as u32;
            if free > 0 {
                making.plain(i - from, free, group.clone(), &mut self.nodes, &mut self.ceilings);
                making.decrease(i - from, free, group.clone(), &mut self.nodes, &mut self.ceilings);
            }
            i = group.end;
        }
        let mut kept = to;
        for i in to..self.nodes.len() {
            let node = self.nodes[i];
            if node.cost <= making.ceiling(node.stitches, node.free, &self.ceilings) {
                self.nodes[kept] = node;
                kept += 1;
            }
        }
        self.nodes.truncate(kept);
        self.nodes[to..].sort_unstable_by(|a, b| {
            let groups = b.stitches.cmp(&a.stitches).then(b.free.cmp(&a.free)).then(a.cost.total_cmp(&b.cost));
            groups.then(a.habit.cmp(&b.habit)).then(a.just.cmp(&b.just)).then(a.parent.cmp(&b.parent))
        });
        self.starts.push(to);
        kept > to
    }
}

/// A round in the making.
struct Making<'a> {
    task: &'a Task,
    divisors: &'a Divisors,
    /// How many ends there are.
    ends: usize,
    /// The window of the round.
    least: u32,
    most: u32,
    /// Girth that is wanted of it.
    wanted: f64,
    /// What is still to pay after it.
    after: Row<'a>,
    /// Nothing dearer can be part of the best schedule.
    bound: f64,
}

impl Making<'_> {
    /// Adds a node, unless it can never be part of the best schedule: whatever follows it can follow any other node of the same count
    /// too, at the price of one change and, if that has just decreased, of one running round at the most.
    fn push(&self, node: Node, nodes: &mut Vec<Node>, ceilings: &mut [f64]) {
        let at = (node.stitches - self.least) as usize;
        let decreased = node.just > 0;
        let beyond = node.cost + self.after.at(node.stitches, node.habit, decreased) > self.bound;
        if beyond || node.cost > self.ceiling(node.stitches, node.free, ceilings) {
            return;
        }
        let prices = &self.task.prices;
        let ceiling = &mut ceilings[at * self.ends + node.free as usize - 1];
        *ceiling = ceiling.min(node.cost + prices.change + if decreased { prices.running } else { 0.0 });
        nodes.push(node);
    }

    /// The most that a node may cost, by others of its count that are as free or freer.
    fn ceiling(&self, stitches: u32, free: u32, ceilings: &[f64]) -> f64 {
        let at = (stitches - self.least) as usize * self.ends;
        ceilings[at + free as usize - 1..at + self.ends].iter().copied().fold(f64::INFINITY, f64::min)
    }

    /// The nodes of one count after a plain round.
    fn plain(&self, offset: usize, free: u32, group: core::ops::Range<usize>, nodes: &mut Vec<Node>, ceilings: &mut [f64]) {
        let n = nodes[group.start].stitches;
        if n < self.least || n > self.most {
            return;
        }
        let stay = self.task.off(n, self.wanted);
        let made = nodes.len();
        for (i, at) in group.enumerate() {
            let node = Node { just: 0, free, cost: nodes[at].cost + stay, parent: (offset + i) as u32, ..nodes[at] };
            // Of two nodes that differ only in what was just worked, a plain round leaves one: the first is the cheaper.
            if nodes[made..].iter().all(|twin| twin.habit != node.habit) {
                self.push(node, nodes, ceilings);
            }
        }
    }

    /// The nodes of one count after a round that decreases.
    fn decrease(&self, offset: usize, free: u32, group: core::ops::Range<usize>, nodes: &mut Vec<Node>, ceilings: &mut [f64]) {
        let before = nodes[group.start].stitches;
        if before < self.least {
            return;
        }
        let (mut d, step, last) = self.task.steps(before, before.saturating_sub(self.most).max(1), before - self.least);
        while d <= last {
            self.by(d, offset, free, &group, nodes, ceilings);
            d += step;
        }
    }

    /// The cheapest node after so many decreases.
    fn by(&self, d: u32, offset: usize, free: u32, group: &core::ops::Range<usize>, nodes: &mut Vec<Node>, ceilings: &mut [f64]) {
        let prices = &self.task.prices;
        let cheapest = nodes[group.start];
        let before = cheapest.stitches;
        let stitches = before - d;
        let uneven = if self.divisors.divides(d, before) { 0.0 } else { prices.uneven };
        let fixed = self.task.off(stitches, self.wanted) + uneven;
        let adjusts = self.task.adjusts(before);
        let habit = if adjusts { 0 } else { d };
        let kept = adjusts || nodes[group.clone()].iter().any(|node| node.habit == 0 || node.habit == d);
        let least = cheapest.cost + fixed + if kept { 0.0 } else { prices.change };
        if least + self.after.at(stitches, habit, true) > self.bound || least > self.ceiling(stitches, free, ceilings) {
            return;
        }
        let (mut parent, mut cost) = (0, f64::INFINITY);
        for (i, node) in nodes[group.clone()].iter().enumerate() {
            let change = if adjusts || node.habit == 0 || node.habit == d { 0.0 } else { prices.change };
            let one_would_do = node.just > 0 && 2 * (node.just + d) <= before + node.just;
            let paid = node.cost + fixed + change + if one_would_do { prices.running } else { 0.0 };
            if paid < cost {
                (parent, cost) = ((offset + i) as u32, paid);
            }
        }
        self.push(Node { stitches, habit, just: d, free, parent, cost }, nodes, ceilings);
    }
}
