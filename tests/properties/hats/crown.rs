//! Rounds: one upon the other, without stray decreases or ruffles, closed, and as deep as promised.

use crate::planned::{Planned, Sizes, TICK, counts, ensure, every_hat, near, sizes};
use hatwright_sizing::{Closing, Layout, Remark, Round, RoundKind};
use std::f64::consts::{PI, TAU};

#[test]
fn rounds_follow_one_another() {
    every_hat(|Planned { hat, spec, .. }| {
        let mut below = hat.size.rows.get();
        for (i, round) in hat.rounds.iter().enumerate() {
            let Round { number, before, after, decreases, lead, kind, .. } = *round;
            let at = || format!("round {number} of {:?}", counts(hat));
            ensure(number as usize == i + 1 && before == below, at)?;
            ensure((kind == RoundKind::PickUp) == (i == 0), at)?;
            if i == 0 {
                ensure(after == hat.size.stitches && decreases.get() == 0, at)?;
            } else {
                ensure(after.get() + decreases.get() == before, at)?;
                ensure(decreases.get() <= before / 2, at)?;
                ensure((kind == RoundKind::Plain) == (decreases.get() == 0), at)?;
            }
            // The lead-in comes before the first decrease and is no longer than the stitches between two.
            let gap = (before - 2 * decreases.get().min(before / 2)).checked_div(decreases.get()).unwrap_or(0);
            ensure(lead.get() <= gap && (spec.layout == Layout::Spread || lead.get() == 0), at)?;
            below = after.get();
        }
        ensure(below == hat.top.stitches.get(), || format!("closes on {} of {below}", hat.top.stitches))
    });
}

#[test]
fn a_crown_never_grows_and_has_no_stray_decreases() {
    every_hat(|Planned { hat, spec, .. }| {
        let counts = counts(hat);
        ensure(counts.is_sorted_by(|a, b| a >= b), || format!("{counts:?}"))?;
        let few: Vec<&Round> = hat.rounds.iter().filter(|r| (1..=3).contains(&r.decreases.get())).collect();
        match spec.layout {
            Layout::Spread => ensure(few.is_empty(), || format!("{few:?}")),
            Layout::Wedges(_) => ensure(few.iter().all(|r| r.kind == RoundKind::Adjust), || format!("{few:?}")),
        }
    });
}

#[test]
fn wedges_divide_every_round_after_the_adjustment() {
    every_hat(|Planned { hat, spec, .. }| {
        let Layout::Wedges(k) = spec.layout else {
            return ensure(hat.rounds.iter().all(|r| r.kind != RoundKind::Adjust), || format!("{:?}", counts(hat)));
        };
        let adjusted: Vec<&Round> = hat.rounds.iter().filter(|r| r.kind == RoundKind::Adjust).collect();
        let over = hat.size.stitches.get() % k;
        ensure(hat.size.adjustment.get() == over, || format!("{:?}", hat.size))?;
        ensure(adjusted.len() <= usize::from(over > 0), || format!("{adjusted:?}"))?;
        let mut shaped = hat.rounds.iter().filter(|r| r.decreases.get() > 0);
        if over > 0
            && let Some(first) = shaped.next()
        {
            ensure(first.kind == RoundKind::Adjust && first.decreases.get() == over, || format!("{first:?}"))?;
        }
        ensure(shaped.all(|r| r.after.get() % k == 0 && r.decreases.get() % k == 0), || format!("{k} in {:?}", counts(hat)))
    });
}

/// From the centre outward, no round but the last may be much longer than a flat disc's, or the fabric ruffles. Arcs are those of
/// the written rounds: what the closing draws up, then a round's height for every round below it.
#[test]
fn no_crown_ruffles() {
    every_hat(|Planned { hat, spec, .. }| {
        if spec.closing != Closing::Drawn {
            return Ok(());
        }
        let Sizes { w, h, .. } = sizes(spec);
        let counts = counts(hat);
        let drawn = f64::from(hat.top.stitches.get()) * w / TAU;
        for (above, n) in counts.iter().rev().enumerate().skip(1) {
            let s = drawn + above as f64 * h;
            let (girth, most) = (f64::from(*n) * w, 1.05 * TAU * s);
            ensure(girth <= most + 1e-9, || format!("{girth} cm at {s} cm, at most {most}: {counts:?}"))?;
        }
        Ok(())
    });
}

#[test]
fn tops_close() {
    every_hat(|Planned { hat, spec, .. }| {
        let Sizes { w, .. } = sizes(spec);
        let (top, n) = (&hat.top, hat.top.stitches.get());
        ensure(near(top.opening.cm(), f64::from(n) * w / PI, TICK), || format!("{top:?}"))?;
        match spec.closing {
            Closing::Drawn => ensure((6..=12).contains(&n) && !top.gathered, || format!("{top:?}")),
            Closing::Gathered(wanted) => {
                let wanted = wanted.get().min(hat.size.stitches.get());
                let slack = match spec.layout {
                    _ if wanted == hat.size.stitches.get() => 0,
                    Layout::Wedges(k) => k / 2,
                    Layout::Spread => 2,
                };
                ensure(n.abs_diff(wanted) <= slack && top.gathered, || format!("{wanted} wanted: {top:?}"))
            }
        }
    });
}

#[test]
fn the_promised_depth_is_the_written_rounds() {
    every_hat(|Planned { hat, spec, .. }| {
        let Sizes { w, h, band_w, .. } = sizes(spec);
        let n = f64::from(hat.top.stitches.get());
        let drawn = match spec.closing {
            Closing::Drawn => n * w / TAU,
            Closing::Gathered(_) => w * (n / PI).sqrt() / 2.0,
        };
        let above = hat.rounds.len() as f64 * h + drawn;
        let band = f64::from(spec.band.height.get()) * band_w;
        let d = &hat.depth;
        let at = || format!("{d:?}, above {above}, band {band}, round {h}");
        ensure(near(d.above_band.cm(), above, TICK) && near(d.band.cm(), band, TICK) && d.fold == spec.band.fold, at)?;
        ensure(near(d.promised.cm(), above + band - spec.band.fold.cm(), TICK), at)?;
        // Rounds are whole: no hat misses by more than one of them.
        ensure(near(d.promised.cm(), d.wanted.cm(), h + TICK), at)?;
        let off = hat.remarks.iter().any(|r| matches!(r, Remark::DepthOff(_)));
        let miss = (d.promised.cm() - d.wanted.cm()).abs();
        ensure(near(miss, h / 2.0, 2.0 * TICK) || off == (miss > h / 2.0), at)?;
        let plain = hat.rounds.iter().take_while(|r| r.decreases.get() == 0).count();
        ensure(d.straight.get() as usize == plain, at)
    });
}
