//! The crown's programme against exhaustive search: what it finds must cost what the best of all legal schedules costs.
//!
//! The search below shares no code with the programme. Its curve, rules and prices are written anew from what the doc comments of this
//! crate say.

use crate::crown::{Schedule, Task};
use crate::curve::Curve;
use crate::walk::search;
use crate::{Closing, Quantity, Stitches};
use core::f64::consts::{FRAC_PI_2, PI, TAU};

/// Small, deterministic and good enough to pick tasks: splitmix64.
struct Draw(u64);

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

    fn within(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.share()
    }

    fn whole(&mut self, least: u32, most: u32) -> u32 {
        least + (self.next() % u64::from(most - least + 1)) as u32
    }
}

/// Exhaustive search over all legal schedules of a task.
struct Search {
    task: Task,
    girth: f64,
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
    fn least_cost(task: Task) -> Option<f64> {
        let girth = f64::from(task.stitches) * task.w;
        if task.arc < girth / TAU {
            return None;
        }
        let mut search = Self { task, girth, best: f64::INFINITY, counts: Vec::new() };
        let paid = search.miss(task.stitches, 1);
        search.walk(Before { count: task.stitches, last_decreases: None, own: 0, round: 1, paid });
        search.best.is_finite().then_some(search.best)
    }

    /// Squared miss of girth × the height of one round, at the round's inner edge.
    fn miss(&self, count: u32, round: u32) -> f64 {
        let mut wanted = self.curve(self.left(round));
        if let Some(n) = self.gather() {
            wanted = wanted.max(f64::from(n) * self.task.w);
        }
        let off = f64::from(count) * self.task.w - wanted;
        off * off * self.task.h
    }

    fn left(&self, round: u32) -> f64 {
        self.task.arc - f64::from(round) * self.task.h
    }

    /// A hemisphere on the head; a quarter sine over a shorter arc; a disc with a rounded edge over one shorter still.
    fn curve(&self, s: f64) -> f64 {
        let (girth, arc, head) = (self.girth, self.task.arc, self.task.head.max(self.girth));
        if s <= 0.0 {
            return 0.0;
        }
        if arc >= girth / 4.0 {
            let quarter = arc.min(head / 4.0);
            return girth * libm::sin(FRAC_PI_2 * (s / quarter).min(1.0));
        }
        // A disc of radius a and a quarter circle of radius r: a + r is the tube's radius, a + rπ/2 the arc.
        let r = (arc - girth / TAU) / (FRAC_PI_2 - 1.0);
        let a = girth / TAU - r;
        if s <= a { TAU * s } else { TAU * (a + r * libm::sin(((s - a) / r).min(FRAC_PI_2))) }
    }

    fn gather(&self) -> Option<u32> {
        match self.task.closing {
            Closing::Drawn => None,
            Closing::Gathered(n) => Some(n.get().min(self.task.stitches)),
        }
    }

    /// Price of closing after a round; none where it may not close there.
    fn close(&self, count: u32, round: u32) -> Option<f64> {
        let Task { w, h, .. } = self.task;
        let (arc, price) = match self.gather() {
            None if (6..=12).contains(&count) => {
                let wide = f64::from(count.max(8) - 8) * price(Quantity::PriceOpening);
                (f64::from(count) * w / TAU, wide)
            }
            None => return None,
            Some(n) => {
                let slack = if n == self.task.stitches { 0 } else { self.task.wedges.unwrap_or(4) / 2 };
                if count.abs_diff(n) > slack {
                    return None;
                }
                let off = f64::from(count.abs_diff(n)) * w;
                (w * libm::sqrt(f64::from(count) / PI) / 2.0, off * off * h)
            }
        };
        let apart = self.left(round) - arc;
        (apart.abs() <= h).then_some(TAU * TAU * apart * apart * h + price)
    }

    /// Whether the fabric of these counts ruffles: the arc of each is what the last draws up and a round's height for every round
    /// after it. The last is drawn up, so it does not.
    fn ruffles(&self, counts: &[u32]) -> bool {
        let Task { w, h, .. } = self.task;
        let drawn = f64::from(counts[counts.len() - 1]) * w / TAU;
        let long = |(above, n): (usize, &u32)| f64::from(*n) * w > price(Quantity::Ruffle) * TAU * (drawn + above as f64 * h);
        self.gather().is_none() && counts.iter().rev().enumerate().skip(1).any(long)
    }

    fn walk(&mut self, at: Before) {
        self.counts.push(at.count);
        if let Some(closing) = self.close(at.count, at.round)
            && !self.ruffles(&self.counts)
        {
            self.best = self.best.min(at.paid + closing);
        }
        if self.left(at.round) >= 0.0 {
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
            None => decreases >= 4,
        };
        if !legal {
            return None;
        }
        if !at.count.is_multiple_of(decreases) {
            next.paid += price(Quantity::PriceUneven);
        }
        if over == 0 && at.last_decreases.is_some_and(|d| d != decreases) {
            next.paid += price(Quantity::PriceChange);
        }
        // One round would do where all the decreases of both fit into it, one for every two stitches.
        if at.own > 0 && at.own + decreases <= u32::midpoint(at.count, at.own) {
            next.paid += price(Quantity::PriceRunning);
        }
        next.last_decreases = if over > 0 { None } else { Some(decreases) };
        Some(next)
    }
}

fn price(q: Quantity) -> f64 {
    q.row().usual_value()
}

/// A task of at most 24 stitches and 9 rounds.
fn small_task(draw: &mut Draw) -> Task {
    let stitches = draw.whole(8, 24);
    let w = draw.within(0.3, 3.0);
    let girth = f64::from(stitches) * w;
    // From a hat with some ease to one that is a little larger than its head.
    let head = girth * draw.within(0.98, 1.12);
    let arc = girth * draw.within(0.15, 0.40);
    let h = (w * draw.within(0.6, 1.2)).max(arc / 8.99);
    let wedges = (draw.whole(0, 1) == 0).then(|| draw.whole(4, 12));
    let closing = if draw.whole(0, 2) == 0 { Closing::Gathered(Stitches::new(draw.whole(4, 28))) } else { Closing::Drawn };
    Task { stitches, w, h, head, arc, wedges, closing }
}

/// Cost of a schedule's own counts, priced round by round by the search's rules.
fn repriced(task: Task, schedule: &Schedule) -> f64 {
    let girth = f64::from(task.stitches) * task.w;
    let search = Search { task, girth, best: f64::INFINITY, counts: Vec::new() };
    assert!(!search.ruffles(&schedule.counts), "{task:?} ruffles: {:?}", schedule.counts);
    let paid = search.miss(task.stitches, 1);
    let mut at = Before { count: task.stitches, last_decreases: None, own: 0, round: 1, paid };
    for count in &schedule.counts[1..] {
        let next = search.work(at, at.count - count);
        at = next.unwrap_or_else(|| panic!("{task:?} is not legal in round {}: {:?}", at.round + 1, schedule.counts));
    }
    at.paid + search.close(at.count, at.round).unwrap_or_else(|| panic!("{task:?} may not close so: {:?}", schedule.counts))
}

#[test]
fn the_programme_finds_what_exhaustive_search_finds() {
    let mut draw = Draw(20);
    let (mut spread, mut wedges, mut gathered, mut refused) = (0, 0, 0, 0);
    for _ in 0..1500 {
        let task = small_task(&mut draw);
        let found = task.schedule();
        assert_eq!(task.possible(), found.is_some(), "{task:?}");
        match (Search::least_cost(task), &found) {
            (None, None) => refused += 1,
            (Some(least), Some(found)) => {
                assert!((found.cost - least).abs() <= 1e-9 * least.max(1.0), "{task:?}: {found:?}, but {least} is possible");
                let own = repriced(task, found);
                assert!((own - found.cost).abs() <= 1e-9 * own.max(1.0), "{task:?}: {found:?} costs {own}");
                match (task.closing, task.wedges) {
                    (Closing::Gathered(_), _) => gathered += 1,
                    (Closing::Drawn, Some(_)) => wedges += 1,
                    (Closing::Drawn, None) => spread += 1,
                }
            }
            (least, found) => panic!("{task:?}: search finds {least:?}, the programme {found:?}"),
        }
    }
    assert!(spread > 200 && wedges > 100 && gathered > 200 && refused > 50, "{spread} {wedges} {gathered} {refused}");
}

/// Larger hats cannot be searched through, but what the programme says it paid can be counted after it.
#[test]
fn whole_hats_cost_what_they_are_said_to_cost() {
    let mut draw = Draw(21);
    let mut made = 0;
    for _ in 0..400 {
        let task = whole_task(&mut draw);
        let found = task.schedule();
        assert_eq!(task.possible(), found.is_some(), "{task:?}");
        if let Some(schedule) = found {
            let own = repriced(task, &schedule);
            assert!((own - schedule.cost).abs() <= 1e-9 * own.max(1.0), "{task:?}: {schedule:?} costs {own}");
            made += 1;
        }
    }
    assert!(made > 250, "{made}");
}

/// What bounds and floors spare the programme would not have been the best: it finds the same without any.
#[test]
fn nothing_is_lost_by_what_is_spared() {
    let mut draw = Draw(22);
    let (mut made, mut tall) = (0, 0);
    for i in 0..240 {
        let mut task = whole_task(&mut draw);
        if i % 4 == 0 {
            // Rounds so tall that the crown has to leave its curve.
            task.h *= draw.within(3.0, 8.0);
        }
        let curve = Curve::new(f64::from(task.stitches) * task.w, task.head, task.arc);
        let plain = curve.and_then(|curve| search(&task, &curve, None, f64::INFINITY)).map(|schedule| schedule.cost);
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
fn whole_task(draw: &mut Draw) -> Task {
    let stitches = draw.whole(25, 160);
    let w = 48.0 / f64::from(stitches) * draw.within(0.7, 1.2);
    let girth = f64::from(stitches) * w;
    let (head, arc, h) = (girth * draw.within(1.0, 1.1), girth * draw.within(0.18, 0.40), w * draw.within(0.6, 1.2));
    let wedges = (draw.whole(0, 1) == 0).then(|| draw.whole(4, 12));
    let closing = if draw.whole(0, 2) == 0 { Closing::Gathered(Stitches::new(draw.whole(13, 80))) } else { Closing::Drawn };
    Task { stitches, w, h, head, arc, wedges, closing }
}
