//! Windows made narrower, by what it costs to come to a count and to go on from it.
//!
//! Both are worked out without regard to the decreases last made, so that neither says too much; a count whose two costs together are
//! more than a bound is in no schedule that costs less.

use crate::floor::{Floor, Ground};
use crate::walk_window::Windows;

/// The windows that are left of those of a ground, for schedules that cost no more than `bound`; `cap` gives the most stitches that go on
/// from a round.
pub(crate) fn shrink(ground: &Ground<'_>, floor: &Floor, bound: f64, cap: impl Fn(u32) -> u32) -> Windows {
    let Ground { task, wanted, windows, divisors } = ground;
    let mut left = Windows::none(wanted.len());
    let start = task.off(task.stitches, wanted[1]);
    // What it costs to come to each count of a round's window, by a plain round and by one that decreases.
    let mut now = vec![[start, f64::INFINITY]];
    let mut next = Vec::new();
    let mut before = 0;
    for round in 1..wanted.len() as u32 {
        let (least, most) = windows.at(round);
        let row = floor.row(round);
        if row.is_empty() {
            break;
        }
        let (to_least, to_most) = windows.at(round + 1);
        let girth = wanted.get(round as usize + 1).copied().unwrap_or(0.0);
        next.clear();
        next.resize((to_most + 1).saturating_sub(to_least) as usize, [f64::INFINITY; 2]);
        let mut highest = 0;
        for (n, come) in (least..=most).zip(&now) {
            if (come[0] + row.at(n, 0, false)).min(come[1] + row.at(n, 0, true)) > bound {
                continue;
            }
            left.add(round, n);
            highest = n;
            if n > cap(round) || n < to_least || next.is_empty() {
                continue;
            }
            let any = come[0].min(come[1]);
            if n <= to_most {
                let plain = &mut next[(n - to_least) as usize][0];
                *plain = plain.min(any);
            }
            let just = if round > 1 { n.min(before - n) } else { 0 };
            // Where one round would have done for both, whatever the round before has decreased by.
            let running = n.saturating_sub(just) / 2;
            let come = [any, come[0].min(come[1] + task.prices.running)];
            let (mut d, step, last) = task.steps(n, n.saturating_sub(to_most).max(1), n - to_least);
            while d <= last {
                let uneven = if divisors.divides(d, n) { 0.0 } else { task.prices.uneven };
                let come = come[usize::from(d <= running)] + uneven;
                let least = &mut next[(n - d - to_least) as usize][1];
                if come < *least {
                    *least = come;
                }
                d += step;
            }
        }
        for (n, come) in (to_least..).zip(&mut next) {
            let off = task.off(n, girth);
            *come = [come[0] + off, come[1] + off];
        }
        core::mem::swap(&mut now, &mut next);
        before = highest;
    }
    left
}
