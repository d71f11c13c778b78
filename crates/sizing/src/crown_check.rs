//! The crown's programme against exhaustive search: what it finds must cost what the best of all legal schedules costs.
//!
//! The search below shares no code with the programme. Its rules and prices are written anew from what the doc comments of this crate
//! say; only the curve is the task's own, which has checks of its own.

use crate::crown::{Close, Prices, Task};
use crate::curve::Curve;
use crate::walk::search_all;
use crate::{Quantity, Stitches, Taste};
use core::f64::consts::{PI, TAU};

/// Small, deterministic and good enough to pick tasks: splitmix64.
pub(crate) struct Draw(pub(crate) u64);

impl Draw {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub(crate) fn within(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.share()
    }

    pub(crate) fn whole(&mut self, least: u32, most: u32) -> u32 {
        least + (self.next() % u64::from(most - least + 1)) as u32
    }
}

/// Exhaustive search over all legal schedules of a task.
struct Search {
    task: Task,
    /// By how much the arc may be missed.
    miss: f64,
    best: f64,
    /// Counts of the rounds so far.
    counts: Vec<u32>,
}

/// What a round leaves behind for the price of the next.
#[derive(Clone, Copy)]
struct Before {
    count: u32,
    /// Decreases of the last round that decreased and was not the adjustment.
    last_decreases: Option<u32>,
    /// Decreases of the round itself.
    own: u32,
    round: u32,
    paid: f64,
}

impl Search {
    fn new(task: Task, miss: f64) -> Self {
        Self { task, miss, best: f64::INFINITY, counts: Vec::new() }
    }

    /// Half a round or 2 % of the arc may be missed; a whole round, where there is no other way.
    fn least_cost(task: Task) -> Option<f64> {
        let half = task.near();
        Self::least_within(task, half).or_else(|| Self::least_within(task, task.h))
    }

    fn least_within(task: Task, miss: f64) -> Option<f64> {
        let mut search = Self::new(task, miss);
        let start = search.start();
        search.walk(start);
        search.best.is_finite().then_some(search.best)
    }

    fn start(&self) -> Before {
        let count = self.task.stitches;
        Before { count, last_decreases: None, own: 0, round: 1, paid: self.miss(count, 1) }
    }

    /// Squared miss of girth × the height of one round, where the round's total lies.
    fn miss(&self, count: u32, round: u32) -> f64 {
        let mut wanted = self.task.curve.at(self.left(round));
        if let Some(n) = self.gather() {
            wanted = wanted.max(f64::from(n) * self.task.w);
        }
        let off = f64::from(count) * self.task.w - wanted;
        off * off * self.task.h
    }

    /// From the centre to a round's total: its inner edge where it is worked inward, its outer edge where it is worked outward.
    fn left(&self, round: u32) -> f64 {
        let edge = if self.task.from_centre { round - 1 } else { round };
        self.task.arc - f64::from(edge) * self.task.h
    }

    fn gather(&self) -> Option<u32> {
        match self.task.close {
            Close::Gathered(n) => Some(n.get().min(self.task.stitches)),
            _ => None,
        }
    }

    /// From the centre to the total of a last round, and the price of such a last round; none where it may not be the last.
    fn last(&self, count: u32) -> Option<(f64, f64)> {
        let Task { w, h, .. } = self.task;
        match self.task.close {
            Close::Drawn => {
                let wide = f64::from(count.max(8) - 8) * price(Quantity::PriceOpening);
                (6..=12).contains(&count).then_some((f64::from(count) * w / TAU, wide))
            }
            Close::Ring => (4..=16).contains(&count).then_some((h, 0.0)),
            Close::To { stitches, at } => (count == stitches).then_some((at, 0.0)),
            Close::Gathered(n) => {
                let n = n.get().min(self.task.stitches);
                let least = self.task.fewest.max(self.task.wedges.unwrap_or(0));
                let slack = if n == self.task.stitches { 0 } else { least / 2 };
                let off = f64::from(count.abs_diff(n)) * w;
                (count.abs_diff(n) <= slack).then_some((w * libm::sqrt(f64::from(count) / PI) / 2.0, off * off * h))
            }
        }
    }

    /// Price of closing after a round; none where it may not close there.
    fn close(&self, count: u32, round: u32) -> Option<f64> {
        let (at, price) = self.last(count)?;
        let (apart, h) = (self.left(round) - at, self.task.h);
        (apart.abs() <= self.miss + 1e-9).then_some(TAU * TAU * apart * apart * h + price)
    }

    /// Whether the fabric of these counts ruffles: the last lies where it closes, and each before it a round's height farther out. What
    /// is gathered does not ruffle, nor does the last of a fabric.
    fn ruffles(&self, counts: &[u32]) -> bool {
        let Task { w, h, ruffle, .. } = self.task;
        let Some((at, _)) = self.last(counts[counts.len() - 1]) else { return true };
        let long = |(above, n): (usize, &u32)| f64::from(*n) * w > price(Quantity::Ruffle) * TAU * (at + above as f64 * h);
        ruffle && self.gather().is_none() && counts.iter().rev().enumerate().skip(1).any(long)
    }

    fn walk(&mut self, at: Before) {
        self.counts.push(at.count);
        if let Some(closing) = self.close(at.count, at.round)
            && !self.ruffles(&self.counts)
        {
            self.best = self.best.min(at.paid + closing);
        }
        // Nothing that is paid is ever paid back.
        if self.left(at.round) >= -self.task.h && at.paid < self.best {
            for decreases in 0..=at.count / 2 {
                if let Some(next) = self.work(at, decreases) {
                    self.walk(next);
                }
            }
        }
        self.counts.pop();
    }

    fn work(&self, at: Before, decreases: u32) -> Option<Before> {
        let mut next = Before { count: at.count - decreases, own: decreases, round: at.round + 1, ..at };
        next.paid += self.miss(next.count, next.round);
        if decreases == 0 {
            return Some(next);
        }
        let over = self.task.wedges.map_or(0, |k| at.count % k);
        let legal = match self.task.wedges {
            Some(_) if over > 0 => decreases == over,
            Some(k) => decreases.is_multiple_of(k),
            None => decreases >= self.task.fewest,
        };
        if !legal {
            return None;
        }
        let prices = &self.task.prices;
        if !at.count.is_multiple_of(decreases) {
            next.paid += prices.uneven;
        }
        if over == 0 && at.last_decreases.is_some_and(|d| d != decreases) {
            next.paid += prices.change;
        }
        // One round would do where all the decreases of both fit into it, one for every two stitches.
        if at.own > 0 && at.own + decreases <= u32::midpoint(at.count, at.own) {
            next.paid += prices.running;
        }
        next.last_decreases = if over > 0 { None } else { Some(decreases) };
        Some(next)
    }
}

fn price(q: Quantity) -> f64 {
    q.row().usual_value()
}

/// Cost of a schedule's own counts, priced round by round by the search's rules.
pub(crate) fn repriced(task: Task, counts: &[u32]) -> f64 {
    let search = Search::new(task, task.h);
    assert!(!search.ruffles(counts), "{task:?} ruffles: {counts:?}");
    let mut at = search.start();
    assert_eq!(counts[0], task.stitches);
    for count in &counts[1..] {
        let next = search.work(at, at.count - count);
        at = next.unwrap_or_else(|| panic!("{task:?} is not legal in round {}: {counts:?}", at.round + 1));
    }
    at.paid + search.close(at.count, at.round).unwrap_or_else(|| panic!("{task:?} may not close so: {counts:?}"))
}

/// What a greedy walk makes of a task: every round the legal count that is nearest the curve, closed where that costs least.
pub(crate) fn greedy(task: Task) -> Option<(Vec<u32>, f64)> {
    let search = Search::new(task, task.near());
    let (mut at, mut counts, mut best) = (search.start(), vec![task.stitches], None::<(Vec<u32>, f64)>);
    while search.left(at.round) >= -task.h {
        if let Some(closing) = search.close(at.count, at.round)
            && !search.ruffles(&counts)
            && best.as_ref().is_none_or(|(_, cost)| at.paid + closing < *cost)
        {
            best = Some((counts.clone(), at.paid + closing));
        }
        let least = match task.close {
            Close::To { stitches, .. } => stitches,
            Close::Gathered(n) => n.get().min(task.stitches),
            Close::Drawn => 6,
            Close::Ring => 4,
        };
        let next = (0..=at.count / 2).filter(|d| at.count - d >= least).filter_map(|d| search.work(at, d));
        at = next.min_by(|a, b| search.miss(a.count, a.round).total_cmp(&search.miss(b.count, b.round)))?;
        counts.push(at.count);
    }
    best
}

fn tastes(draw: &mut Draw) -> Prices {
    Prices::of([Taste::Balanced, Taste::Smooth, Taste::Simple][draw.whole(0, 2) as usize])
}

/// A task of at most 24 stitches and 10 rounds.
fn small_task(draw: &mut Draw) -> Option<Task> {
    let stitches = draw.whole(8, 24);
    let w = draw.within(0.3, 3.0);
    let girth = f64::from(stitches) * w;
    // From a hat with some ease to one that is a little larger than its head.
    let head = girth * draw.within(0.98, 1.12);
    let shape = draw.whole(0, 4);
    let arc = girth * if shape == 0 { 1.0 / TAU } else { draw.within(0.15, 0.40) };
    let h = (w * draw.within(0.6, 1.2)).max(arc / 8.99);
    let curve = match shape {
        0 => Curve::flat(girth),
        1 => Curve::cone(girth * draw.within(0.0, 0.5), arc * draw.within(0.0, 0.3), girth, arc * draw.within(0.7, 1.0)),
        _ => Curve::new(girth, head, arc)?,
    };
    let wedges = (draw.whole(0, 1) == 0).then(|| draw.whole(4, 12));
    let close = match draw.whole(0, 5) {
        0 => Close::Gathered(Stitches::new(draw.whole(4, 28))),
        1 | 2 => Close::Ring,
        3 => {
            let at = arc * draw.within(0.2, 0.8);
            Close::To { stitches: draw.whole(4, stitches), at }
        }
        _ => Close::Drawn,
    };
    Some(Task {
        stitches,
        w,
        h,
        curve,
        arc,
        from_centre: close == Close::Ring || (draw.whole(0, 3) == 0 && matches!(close, Close::To { .. })),
        wedges,
        close,
        fewest: if draw.whole(0, 2) == 0 { 1 } else { 4 },
        ruffle: draw.whole(0, 4) > 0,
        prices: tastes(draw),
    })
}

#[test]
fn the_programme_finds_what_exhaustive_search_finds() {
    let mut draw = Draw(20);
    let (mut spread, mut wedges, mut single, mut refused, mut closes) = (0, 0, 0, 0, [0; 4]);
    for task in (0..3000).filter_map(|_| small_task(&mut draw)) {
        let found = task.schedule();
        assert_eq!(task.possible(), found.is_some(), "{task:?}");
        match (Search::least_cost(task), &found) {
            (None, None) => refused += 1,
            (Some(least), Some(found)) => {
                assert!((found.cost - least).abs() <= 1e-9 * least.max(1.0), "{task:?}: {found:?}, but {least} is possible");
                let own = repriced(task, &found.counts);
                assert!((own - found.cost).abs() <= 1e-9 * own.max(1.0), "{task:?}: {found:?} costs {own}");
                *if task.wedges.is_some() { &mut wedges } else { &mut spread } += 1;
                single += u32::from(task.fewest == 1);
                closes[match task.close {
                    Close::Drawn => 0,
                    Close::Ring => 1,
                    Close::Gathered(_) => 2,
                    Close::To { .. } => 3,
                }] += 1;
            }
            (least, found) => panic!("{task:?}: search finds {least:?}, the programme {found:?}"),
        }
    }
    let enough = spread > 500 && wedges > 300 && single > 300 && refused > 100 && closes.iter().all(|n| *n > 100);
    assert!(enough, "{spread} {wedges} {single} {refused} {closes:?}");
}

/// Larger hats cannot be searched through, but what the programme says it paid can be counted after it.
#[test]
fn whole_hats_cost_what_they_are_said_to_cost() {
    let mut draw = Draw(21);
    let mut made = 0;
    for task in (0..600).filter_map(|_| whole_task(&mut draw)) {
        let found = task.schedule();
        assert_eq!(task.possible(), found.is_some(), "{task:?}");
        if let Some(schedule) = found {
            let own = repriced(task, &schedule.counts);
            assert!((own - schedule.cost).abs() <= 1e-9 * own.max(1.0), "{task:?}: {schedule:?} costs {own}");
            let arc = schedule.counts.len() as f64 * task.h + schedule.drawn;
            assert!((arc - task.arc).abs() <= task.h, "{task:?}: {arc}");
            made += 1;
        }
    }
    assert!(made > 300, "{made}");
}

/// What bounds and floors spare the programme would not have been the best: it finds the same without any.
#[test]
fn nothing_is_lost_by_what_is_spared() {
    let mut draw = Draw(22);
    let (mut made, mut tall) = (0, 0);
    for i in 0..300 {
        let Some(mut task) = whole_task(&mut draw) else { continue };
        if i % 4 == 0 {
            // Rounds so tall that the crown has to leave its curve.
            task.h *= draw.within(3.0, 8.0);
        }
        let plain = search_all(&task, task.near()).or_else(|| search_all(&task, task.h)).map(|schedule| schedule.cost);
        let found = task.schedule().map(|schedule| schedule.cost);
        match (plain, found) {
            (Some(plain), Some(found)) => {
                assert!((plain - found).abs() <= 1e-9 * plain.max(1.0), "{task:?}: {found}, but {plain} is possible");
                made += 1;
                tall += u32::from(plain > 10.0);
            }
            (plain, found) => assert_eq!(plain, found, "{task:?}"),
        }
    }
    assert!(made > 150 && tall > 10, "{made} {tall}");
}

/// A task of 25 to 160 stitches.
pub(crate) fn whole_task(draw: &mut Draw) -> Option<Task> {
    let stitches = draw.whole(25, 160);
    let w = 48.0 / f64::from(stitches) * draw.within(0.7, 1.2);
    let girth = f64::from(stitches) * w;
    let (head, h) = (girth * draw.within(1.0, 1.1), w * draw.within(0.6, 1.2));
    let shape = draw.whole(0, 4);
    let arc = girth * if shape == 0 { 1.0 / TAU } else { draw.within(0.18, 0.40) };
    let wedges = (draw.whole(0, 1) == 0).then(|| draw.whole(4, 12));
    let close = match draw.whole(0, 5) {
        0 => Close::Gathered(Stitches::new(draw.whole(13, 80))),
        1 | 2 => Close::Ring,
        3 => {
            let share = draw.within(0.3, 0.9);
            Close::To { stitches: (f64::from(stitches) * share) as u32, at: arc * share * draw.within(0.8, 1.0) }
        }
        _ => Close::Drawn,
    };
    let curve = match shape {
        0 => Curve::flat(girth),
        1 => Curve::cone(girth * draw.within(0.0, 0.5), arc * draw.within(0.0, 0.3), girth, arc * draw.within(0.7, 1.0)),
        _ => Curve::new(girth, head, arc)?,
    };
    let from_centre = close == Close::Ring;
    let fewest = if draw.whole(0, 3) == 0 { 1 } else { 4 };
    Some(Task { stitches, w, h, curve, arc, from_centre, wedges, close, fewest, ruffle: true, prices: tastes(draw) })
}

/// A greedy walk beside the programme: never better, and most often dearer or lost.
#[test]
fn a_greedy_walk_pays_more() {
    let mut draw = Draw(23);
    let mut tally = [Tally::default(), Tally::default()];
    for task in (0..800).filter_map(|_| whole_task(&mut draw)) {
        let Some(best) = task.schedule() else { continue };
        let tally = &mut tally[usize::from(task.wedges.is_some())];
        match greedy(task) {
            None => tally.lost += 1,
            Some((counts, cost)) => {
                assert!(best.cost <= cost + 1e-9 * cost.max(1.0), "{task:?}: {counts:?} costs {cost}, {best:?}");
                *if best.cost < cost - 1e-9 { &mut tally.dearer } else { &mut tally.same } += 1;
                tally.paid += cost;
                tally.least += best.cost;
            }
        }
    }
    let [spread, wedges] = tally;
    println!("a greedy walk, spread: {spread:?}; in wedges: {wedges:?}");
    assert!(spread.dearer > 5 * spread.same && spread.paid > 1.5 * spread.least, "{spread:?}");
    // Wedges often leave but one count to take.
    assert!(wedges.dearer + wedges.lost > wedges.same && wedges.paid > 1.05 * wedges.least, "{wedges:?}");
}

/// How a greedy walk fares: how often it never closes, costs more, or the same, and what it pays in all where it closes.
#[derive(Debug, Default)]
struct Tally {
    lost: u32,
    dearer: u32,
    same: u32,
    paid: f64,
    least: f64,
}
