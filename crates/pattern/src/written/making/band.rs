//! Bands: sideways, around, and made apart.

use super::colours::{rows_change, rows_stripes};
use super::{Job, edge};
use crate::written::pattern::Part;
use core::cmp::Ordering;
use hatwright_sizing::{Hat, Loops, RoundKind, Stitch, Style};
use hatwright_words::making as say;

/// Whether the fold hides all of the band's outer face: that of the part that is folded up lies against the rest, and covers it.
pub(in crate::written) fn hides_its_outside(hat: &Hat) -> bool {
    // Nobody folds to the millimetre: half of 8.33 cm, typed or rounded down, is half.
    const MILLIMETRE: i32 = 100;
    hat.depth.fold.ticks() > 0 && 2 * hat.depth.fold.ticks() + MILLIMETRE >= hat.depth.band.ticks()
}

/// A band of rows: how they lie, their stripes, and how the last one closes the ring.
pub(super) fn sideways(part: &Part, job: &Job<'_>) -> Vec<String> {
    let (hat, row) = (job.hat, part.fabric.row());
    let rows = hat.band_rows.len() as u32;
    let mut text: Vec<String> = Vec::new();
    if job.begun_at_crown() {
        text.push(say::band_apart().into());
    }
    text.extend(job.band_hook().map(|with| say::work_it_with(&with)));
    let (stitches, tall) = (job.spec.band.height.get(), job.length(hat.depth.band));
    text.push(if row.loops == Loops::Both { say::sideways_plain(stitches) } else { say::sideways_ribs(stitches) });
    text.push(if hat.depth.fold.ticks() > 0 { say::rows_tall_folded(rows, &tall) } else { say::rows_tall(rows, &tall) });
    text.push(turning(row.chain).into());
    if row.loops == Loops::Both {
        text.push(say::loops_both().into());
    }
    let mut list = vec![text.join(" ")];
    if row.stitch == Stitch::Slip {
        list.push(say::slip_loops().into());
    }
    if hat.band_rows.windows(2).any(|pair| pair[0] != pair[1]) {
        list.push(rows_stripes(&hat.band_rows, job));
        list.push(rows_change(job));
    }
    list.push(last_row(part, rows, job));
    list
}

pub(super) fn turning(chain: u32) -> &'static str {
    if chain == 1 { say::turning_one() } else { say::turning_more() }
}

fn last_row(part: &Part, rows: u32, job: &Job<'_>) -> String {
    let below = rows.saturating_sub(1);
    let row = part.fabric.row();
    let over = job.words().yarn_over;
    let place = match row.loops {
        Loops::Back => say::row_back_loop(below),
        Loops::Front => say::row_front_loop(below),
        Loops::Both | Loops::Posts => say::row_itself(below),
    };
    // A tall stitch put through both edges at its foot would stand up as a fin, and add nothing to the girth.
    match row.stitch {
        Stitch::Slip | Stitch::Single => say::last_row_low(below, &place, rows),
        Stitch::HalfDouble => say::last_row_half(below, &place, over, rows),
        Stitch::Double => say::last_row_double(below, &place, over, rows),
    }
}

/// A band of rounds.
pub(super) fn around(part: &Part, job: &Job<'_>) -> Vec<String> {
    let (hat, row) = (job.hat, part.fabric.row());
    let opens = job.opens_rounds(part);
    let tall = job.length(hat.depth.band);
    let mut text: Vec<String> = job.band_hook().map(|with| say::work_band_with(&with)).into_iter().collect();
    text.push(if hat.depth.fold.ticks() > 0 { say::around_tall_folded(&tall) } else { say::around_tall(&tall) });
    if !opens {
        text.push(say::go_on_uncut().into());
    }
    let mut list = vec![text.join(" ")];
    if !opens && hides_its_outside(hat) && row.loops != Loops::Posts {
        list.push(say::turn_for_fold().into());
    }
    if hat.rounds.iter().any(|r| r.kind == RoundKind::Foundation) {
        list.push(edge::foundation(part, job));
    }
    if row.loops == Loops::Posts {
        let first = if opens { Some(say::posts_plain_first()) } else { None };
        let text: Vec<_> = [Some(say::posts_rib()), first, Some(say::posts_go_on())].into_iter().flatten().collect();
        list.push(text.join(" "));
    }
    list
}

/// Joining a band that was made apart to the last round of the body.
pub(super) fn joining(job: &Job<'_>) -> Vec<String> {
    let hat = job.hat;
    let (picked, of) = hat.size.pick_up();
    let ring = if hides_its_outside(hat) { say::join_ring_towards() } else { say::join_ring_away() };
    let how = match picked.cmp(&of) {
        Ordering::Equal => say::join_even().into(),
        Ordering::Less => say::join_leaving(picked, of),
        Ordering::Greater => say::join_doubling(picked, of),
    };
    let mut list = vec![[ring, " ", &*how].concat()];
    if hat.style == Style::EarFlap {
        list.push(say::flaps_other_edge().into());
    }
    list
}
