//! The dynamic programme behind a crown's schedule.
//!
//! It goes round by round over (stitches, decreases last made, decreases of the round before), which is all that the price of the next
//! round depends on.

use crate::Quantity;
use crate::crown::{End, LEAST_DECREASES, Schedule, Task};
use crate::curve::Curve;
use crate::floor::Floor;

/// The best schedule of a task that costs no more than `bound`; with a `beam`, a good one that looks at so many nodes of a layer.
pub(crate) fn search(task: &Task, curve: &Curve, beam: Option<usize>, bound: f64) -> Option<Schedule> {
    let first = task.off(task.stitches, task.wanted(curve, task.inner_edge(1)));
    let start = Node { stitches: task.stitches, habit: 0, just: 0, cost: first, parent: 0 };
    let mut ends = task.ends();
    let floor = bound.is_finite().then(|| Floor::new(task, curve, &ends, 1, bound));
    let mut walk = Walk { task, curve, prices: Prices::table(), beam, bound, floor, best: None, layers: vec![vec![start]] };
    if walk.on(&ends, Ruffles::Agree) {
        // Ends of different arcs judge the same count differently from here on.
        let shared = walk.layers.len();
        ends.sort_by(|a, b| a.rounds.cmp(&b.rounds).then(a.miss.total_cmp(&b.miss)));
        let mut groups: Vec<&[End]> = ends.chunk_by(|a, b| a.rounds == b.rounds).collect();
        let cheapest = |group: &[End]| group.iter().map(|end| end.price).fold(f64::INFINITY, f64::min);
        groups.sort_by(|a, b| cheapest(b).total_cmp(&cheapest(a)));
        while let Some(group) = groups.pop() {
            if !walk.group(group, shared) {
                let (shorter, longer) = group.split_at(group.len() / 2);
                groups.extend([shorter, longer]);
            }
        }
    }
    let Best { cost, counts, .. } = walk.best?;
    Some(Schedule { drawn: task.drawn_arc(*counts.last()?), counts, cost })
}

#[derive(Clone, Copy, Debug)]
struct Node {
    stitches: u32,
    /// Decreases of the last round that decreased; 0 before any, and after the adjustment round, which sets no habit.
    habit: u32,
    /// Decreases of the round just worked.
    just: u32,
    cost: f64,
    parent: u32,
}

/// What all successors of a layer share.
struct Step {
    /// Nothing dearer can be part of the best schedule.
    bound: f64,
    /// Most decreases to try.
    most: u32,
    /// Wanted girth of the next round.
    wanted: f64,
}

/// The cheapest schedule so far.
struct Best {
    cost: f64,
    counts: Vec<u32>,
    end: End,
}

/// What to do where a count would ruffle on the way to one end and not on the way to another.
#[derive(Clone, Copy, PartialEq)]
enum Ruffles {
    /// Stop there.
    Agree,
    /// Go on as the most lenient end allows.
    Lenient,
}

/// The programme at work.
struct Walk<'a> {
    task: &'a Task,
    curve: &'a Curve,
    prices: Prices,
    /// So many nodes of a layer are kept, where not all are.
    beam: Option<usize>,
    /// Nothing dearer can be the best schedule.
    bound: f64,
    /// What must be paid from a count on, where there is a bound to begin with.
    floor: Option<Floor>,
    best: Option<Best>,
    layers: Vec<Vec<Node>>,
}

struct Prices {
    uneven: f64,
    change: f64,
    running: f64,
}

impl Prices {
    fn table() -> Self {
        Self {
            uneven: Quantity::PriceUneven.row().usual_value(),
            change: Quantity::PriceChange.row().usual_value(),
            running: Quantity::PriceRunning.row().usual_value(),
        }
    }
}

/// A layer in the making.
///
/// It drops every node that can never be part of the best schedule: whatever follows it can follow any other node of the same count
/// too, at the price of one change and, if that has just decreased, of one running round at the most.
struct Layer {
    nodes: Vec<Node>,
    /// By count, the most that a node may cost.
    ceiling: Vec<f64>,
    change: f64,
    running: f64,
}

impl Layer {
    fn push(&mut self, node: Node) {
        let Some(ceiling) = self.ceiling.get_mut(node.stitches as usize) else { return };
        if node.cost <= *ceiling {
            let running = if node.just > 0 { self.running } else { 0.0 };
            *ceiling = ceiling.min(node.cost + self.change + running);
            self.nodes.push(node);
        }
    }

    /// The nodes that are left, most stitches first, the cheapest of each count before the others.
    fn finish(self) -> Vec<Node> {
        let Self { mut nodes, ceiling, .. } = self;
        nodes.retain(|node| node.cost <= ceiling[node.stitches as usize]);
        nodes.sort_unstable_by(|a, b| b.stitches.cmp(&a.stitches).then(a.cost.total_cmp(&b.cost)));
        nodes
    }
}

impl Walk<'_> {
    /// Tries a group of ends from the layers that all share, each as lenient as the most lenient; whether that has settled them. It has
    /// where the cheapest schedule does not ruffle by its own end's rule either, for all others cost more, or where there is none.
    fn group(&mut self, ends: &[End], shared: usize) -> bool {
        self.layers.truncate(shared);
        self.floor = self.bound.is_finite().then(|| Floor::new(self.task, self.curve, ends, shared as u32, self.bound));
        if !self.is_hopeful() {
            return true;
        }
        let (bound, best) = (self.bound, self.best.take());
        self.on(ends, Ruffles::Lenient);
        let smooth = |found: &Best| {
            let mut inner = (1..).zip(&found.counts).take(found.counts.len() - 1);
            inner.all(|(round, n)| f64::from(*n) * self.task.w <= self.task.most_girth(&found.end, round))
        };
        match &self.best {
            // A single end is as lenient as itself.
            Some(found) if ends.len() < 2 || smooth(found) => true,
            found => {
                let settled = found.is_none();
                (self.bound, self.best) = (bound, best);
                settled
            }
        }
    }

    /// Goes on from the last layer to the last round of all these ends. Stops short, and says so, at a layer in which some count would
    /// ruffle on the way to one of them and not on the way to another, if they have to agree.
    fn on(&mut self, ends: &[End], ruffles: Ruffles) -> bool {
        loop {
            let round = self.layers.len() as u32;
            for end in ends.iter().filter(|end| end.rounds == round) {
                self.close(end);
            }
            let going = || ends.iter().filter(|end| end.rounds > round);
            let Some(cheapest) = going().map(|end| end.price).reduce(f64::min) else { return false };
            let least = going().map(|end| self.task.most_girth(end, round)).fold(f64::INFINITY, f64::min);
            let most = going().map(|end| self.task.most_girth(end, round)).fold(0.0, f64::max);
            let fewest = going().map(|end| end.stitches).fold(u32::MAX, u32::min);
            let girths = self.layers[self.layers.len() - 1].iter().map(|node| f64::from(node.stitches) * self.task.w);
            if ruffles == Ruffles::Agree && girths.into_iter().any(|girth| least < girth && girth <= most) {
                return true;
            }
            let next = self.next(most, fewest, self.bound - cheapest);
            if next.is_empty() {
                return false;
            }
            self.layers.push(next);
        }
    }

    /// Whether a node of the last layer may still lead to a schedule within the bound.
    fn is_hopeful(&self) -> bool {
        let round = self.layers.len() as u32;
        let paid = |node: &Node| node.cost + self.floor.as_ref().map_or(0.0, |floor| floor.at(round, node.stitches));
        self.layers[self.layers.len() - 1].iter().any(|node| paid(node) <= self.bound + 1e-9)
    }

    /// Closes with an end at the last layer, where that is the cheapest yet.
    fn close(&mut self, end: &End) {
        let layer = &self.layers[self.layers.len() - 1];
        let here = layer.iter().enumerate().filter(|(_, node)| node.stitches == end.stitches);
        let cheapest = here.map(|(i, node)| (i, node.cost + end.price)).min_by(|a, b| a.1.total_cmp(&b.1));
        if let Some((i, cost)) = cheapest
            && cost <= self.bound
            && self.best.as_ref().is_none_or(|best| cost < best.cost)
        {
            self.bound = cost;
            self.best = Some(Best { cost, counts: unwind(&self.layers, self.layers.len() - 1, i), end: *end });
        }
    }

    /// The layer after the last, from every count of it that does not ruffle, down to the fewest stitches of any end.
    fn next(&self, most_girth: f64, fewest: u32, bound: f64) -> Vec<Node> {
        let task = self.task;
        let layer = &self.layers[self.layers.len() - 1];
        let wanted = task.wanted(self.curve, task.inner_edge(self.layers.len() as u32 + 1));
        let round = self.layers.len() as u32 + 1;
        // Sums of the same prices in another order differ in their last digits.
        let ceiling = |floor: &Floor| (0..=task.stitches).map(|n| self.bound + 1e-9 - floor.at(round, n)).collect();
        let ceiling = self.floor.as_ref().map_or_else(|| vec![f64::INFINITY; task.stitches as usize + 1], ceiling);
        let Prices { change, running, .. } = self.prices;
        let mut next = Layer { nodes: Vec::new(), ceiling, change, running };
        let mut from = 0;
        while from < layer.len() {
            let n = layer[from].stitches;
            let to = from + layer[from..].iter().take_while(|node| node.stitches == n).count();
            if n >= fewest && f64::from(n) * task.w <= most_girth {
                // The narrow search need not try what lies far inside the curve.
                let far = (f64::from(n) - wanted / task.w).max(0.0) as u32 + 2 * task.wedges.unwrap_or(LEAST_DECREASES);
                let most = if self.beam.is_some() { far.min(n - fewest) } else { n - fewest };
                self.extend(&layer[from..to], from, &Step { bound, most, wanted }, &mut next);
            }
            from = to;
        }
        let mut nodes = next.finish();
        if let Some(width) = self.beam {
            narrow(&mut nodes, width);
        }
        nodes
    }

    /// All successors of the nodes of one count.
    fn extend(&self, group: &[Node], offset: usize, step: &Step, next: &mut Layer) {
        let Step { bound, .. } = *step;
        let prices = &self.prices;
        let off = |stitches: u32| self.task.off(stitches, step.wanted);
        let before = group[0].stitches;
        let adjusts = self.task.adjusts(before);
        let stay = off(before);
        for (i, node) in group.iter().enumerate() {
            let cost = node.cost + stay;
            let plain = Node { just: 0, cost, parent: (offset + i) as u32, ..*node };
            // Of two nodes that differ only in what was just worked, a plain round leaves one.
            let made = next.nodes.iter_mut().rev().take(group.len());
            let twin = made.take_while(|m| m.just == 0).find(|m| m.stitches == before && m.habit == node.habit);
            match twin {
                Some(twin) if twin.cost > cost => *twin = plain,
                None if cost <= bound => next.push(plain),
                _ => {}
            }
        }
        let least = group.iter().map(|node| node.cost).fold(f64::INFINITY, f64::min);
        for decreases in 1..=step.most.min(before / 2) {
            let after = before - decreases;
            let miss = off(after);
            if least + miss > bound {
                // Inside the curve, more decreases only lead farther from it.
                if f64::from(after) * self.task.w < step.wanted {
                    break;
                }
                continue;
            }
            if !self.task.legal(before, decreases) {
                continue;
            }
            let fixed = miss + if before.is_multiple_of(decreases) { 0.0 } else { prices.uneven };
            if least + fixed > bound.min(next.ceiling[after as usize]) {
                continue;
            }
            let price = |node: &Node| {
                let change = if node.habit == 0 || node.habit == decreases || adjusts { 0.0 } else { prices.change };
                let one_would_do = node.just > 0 && 2 * (node.just + decreases) <= before + node.just;
                node.cost + fixed + change + if one_would_do { prices.running } else { 0.0 }
            };
            let cheapest = group.iter().enumerate().map(|(i, node)| (i, price(node))).min_by(|a, b| a.1.total_cmp(&b.1));
            if let Some((i, cost)) = cheapest
                && cost <= bound
            {
                let habit = if adjusts { 0 } else { decreases };
                next.push(Node { stitches: after, habit, just: decreases, cost, parent: (offset + i) as u32 });
            }
        }
    }
}

/// Keeps the cheapest nodes, in their order.
fn narrow(nodes: &mut Vec<Node>, width: usize) {
    if nodes.len() <= width {
        return;
    }
    let mut costs: Vec<f64> = nodes.iter().map(|n| n.cost).collect();
    costs.sort_unstable_by(f64::total_cmp);
    let most = costs[width - 1];
    nodes.retain(|n| n.cost <= most);
}

fn unwind(layers: &[Vec<Node>], layer: usize, index: usize) -> Vec<u32> {
    let mut counts = vec![0; layer + 1];
    let mut at = index;
    for i in (0..=layer).rev() {
        let node = layers[i][at];
        counts[i] = node.stitches;
        at = node.parent as usize;
    }
    counts
}
