//! Rounds: one upon the other, without stray decreases or ruffles, closed, and as deep as promised.

use crate::planned::{
    Planned, Sizes, TICK, band_tall, counts, deep, ensure, every_hat, every_round_hat, inward, left_inside, near, sizes,
};
use hatwright_sizing::{
    BandKind, Begun, Closing, Hat, HatSpec, Layout, Quantity, Remark, Round, RoundKind, Size, Style, TopKind, Zone,
};
use std::f64::consts::{PI, TAU};

#[test]
fn rounds_follow_one_another() {
    every_hat(|Planned { hat, spec, .. }| {
        let mut last: Option<Round> = None;
        for (i, round) in hat.rounds.iter().enumerate() {
            let Round { number, before, after, decreases, increases, lead, kind, .. } = *round;
            let (down, up, after) = (decreases.get(), increases.get(), after.get());
            let at = || format!("round {number} of {:?}", counts(hat));
            ensure(number as usize == i + 1 && (down == 0 || up == 0) && down <= before / 2, at)?;
            let first = match (hat.begun, hat.band) {
                (Begun::Crown, _) => RoundKind::Ring,
                (_, BandKind::Sideways) => RoundKind::PickUp,
                _ => RoundKind::Foundation,
            };
            let edge = round.zone == Zone::Brim && hat.begun == Begun::Band && last.is_some_and(|r| r.zone != Zone::Brim);
            let expected = match (last, edge) {
                (None, _) => Some(first),
                (_, true) => Some(RoundKind::Edge),
                _ => None,
            };
            ensure(expected.is_none_or(|expected| kind == expected), at)?;
            match kind {
                RoundKind::PickUp => ensure(before == hat.size.rows.get() && after == hat.size.stitches.get(), at)?,
                RoundKind::Ring => ensure(before == 0 && (4..=16).contains(&after), at)?,
                RoundKind::Foundation => ensure(before == after && after == hat.size.stitches.get(), at)?,
                RoundKind::Edge => ensure(before == hat.size.stitches.get() && before == after, at)?,
                _ => {
                    ensure(
                        last.is_some_and(|last| last.after.get() == before) && after + down == before + up && up <= before,
                        at,
                    )?;
                    let what = match kind {
                        RoundKind::Plain => down + up == 0,
                        RoundKind::Decrease => down > 0,
                        RoundKind::Increase => up > 0,
                        _ => down + up > 0,
                    };
                    ensure(what, at)?;
                }
            }
            let shapes = |kind| !matches!(kind, RoundKind::PickUp | RoundKind::Ring | RoundKind::Foundation | RoundKind::Edge);
            if shapes(kind) {
                // The lead-in comes before the first change and is no longer than the stitches between two.
                let gap = (before.saturating_sub(2 * down + up)).checked_div(down + up).unwrap_or(0);
                ensure(lead.get() <= gap, at)?;
            } else {
                ensure(down + up + lead.get() == 0, at)?;
            }
            ensure((kind == RoundKind::Adjust) <= matches!(spec.lays(), Layout::Wedges(_)), at)?;
            last = Some(*round);
        }
        let innermost = inward(hat).last().map(|r| r.after);
        ensure(hat.rounds.is_empty() || !spec.style.is_round() || innermost == hat.top.map(|top| top.stitches), || {
            format!("{:?}", hat.top)
        })
    });
}

/// From the edge inward no round grows, but for the slouch's one and a tam's underside; each part stands where it belongs.
#[test]
fn a_crown_never_grows_and_its_parts_are_in_order() {
    every_round_hat(|Planned { hat, spec, .. }| {
        let rounds = inward(hat);
        let at = || format!("{:?}", counts(hat));
        let rank = |zone: Zone| match zone {
            Zone::Band | Zone::Body | Zone::Brim => 0,
            Zone::Under => 1,
            Zone::Crown => 2,
            Zone::Tail => 3,
        };
        ensure(rounds.windows(2).all(|pair| rank(pair[0].zone) <= rank(pair[1].zone)), at)?;
        let grows = rounds.windows(2).filter(|pair| pair[1].after > pair[0].after);
        let grown = grows.clone().count();
        match spec.style {
            // Begun around, the first of the body may be the one that widens.
            Style::Slouch => ensure(grown <= 1, at)?,
            Style::Tam => ensure(grows.clone().all(|pair| matches!(pair[1].zone, Zone::Under | Zone::Crown)), at)?,
            _ => ensure(grown == 0, at)?,
        }
        let brim: Vec<u32> = hat.rounds.iter().filter(|r| r.zone == Zone::Brim).map(|r| r.after.get()).collect();
        ensure(brim.is_sorted() && brim.is_empty() == (spec.style != Style::Brimmed), at)?;
        let band = hat.rounds.iter().filter(|r| r.zone == Zone::Band).count() as u32;
        let expected = if spec.band_kind() == BandKind::Around { spec.band.rounds.get() } else { 0 };
        ensure(band == expected, at)?;
        let tail = rounds
            .iter()
            .filter(|r| r.zone == Zone::Tail)
            .all(|r| r.decreases.get() + r.increases.get() == 0 || r.kind != RoundKind::Plain);
        ensure(tail && rounds.iter().any(|r| r.zone == Zone::Tail) <= (spec.style == Style::Stocking), at)
    });
}

/// A round of a crown with one to three decreases looks like a mistake: none has them, but to bring its count to the wedges, in a slow cone,
/// and in the one round that a slouch hat widens by.
#[test]
fn no_crown_has_stray_decreases() {
    every_round_hat(|Planned { hat, spec, .. }| {
        if spec.style == Style::Stocking {
            return Ok(());
        }
        let few = |r: &&Round| (1..=3).contains(&(r.decreases.get() + r.increases.get())) && r.kind != RoundKind::Adjust;
        let crown: Vec<&Round> = hat.rounds.iter().filter(|r| r.zone == Zone::Crown).filter(few).collect();
        ensure(crown.is_empty(), || format!("{crown:?} in {:?}", counts(hat)))
    });
}

#[test]
fn wedges_divide_every_round_of_the_crown_after_the_adjustment() {
    every_round_hat(|Planned { hat, spec, .. }| {
        let Layout::Wedges(k) = hat.lays(spec) else { return Ok(()) };
        let crown: Vec<Round> = inward(hat).into_iter().filter(|r| r.zone == Zone::Crown).collect();
        let shaped: Vec<&Round> = crown.iter().filter(|r| r.decreases.get() + r.increases.get() > 0).collect();
        let at = || format!("{k} in {:?}", counts(hat));
        let adjusted = shaped.iter().filter(|r| r.kind == RoundKind::Adjust).count();
        ensure(adjusted <= 1, at)?;
        // Seen from the edge, the adjustment comes first.
        let wedged = |r: &&&Round| r.kind != RoundKind::Adjust;
        ensure(shaped.iter().skip(1).all(|r| r.kind != RoundKind::Adjust), at)?;
        ensure(shaped.iter().filter(wedged).all(|r| (r.decreases.get() + r.increases.get()).is_multiple_of(k)), at)?;
        ensure(shaped.iter().filter(wedged).all(|r| r.after.get().is_multiple_of(k) && r.before.is_multiple_of(k)), at)
    });
}

/// From the centre outward, no round but the innermost may be much longer than a flat disc's, or the fabric ruffles. Arcs are those of
/// the written rounds: what the closing draws up, then a round's height for every round below it. A tam's underside and a brim are flat
/// of their own kind.
#[test]
fn no_crown_ruffles() {
    every_round_hat(|Planned { hat, spec, .. }| {
        if hat.top.is_some_and(|top| top.kind == TopKind::Gathered) {
            return Ok(());
        }
        let Sizes { w, h, .. } = sizes(spec);
        let rounds = inward(hat);
        let inside = left_inside(spec, hat);
        // Begun at the crown, a round's total lies at its outer edge.
        let outer = if hat.begun == Begun::Crown { h } else { 0.0 };
        // A tail is a tube: only the small disc that it may begin with is flat.
        let tip = rounds
            .iter()
            .rev()
            .skip_while(|r| r.increases.get() == 0)
            .filter(|r| r.zone == Zone::Tail && r.increases.get() > 0)
            .count();
        let flat =
            |r: &Round| if spec.style == Style::Stocking { r.zone == Zone::Tail && tip > 0 } else { r.zone != Zone::Under };
        for (above, round) in rounds.iter().rev().enumerate().skip(1).take_while(|(_, r)| flat(r)) {
            let s = inside + above as f64 * h + outer;
            let (girth, most) = (f64::from(round.after.get()) * w, 1.05 * TAU * s);
            ensure(girth <= most + 1e-9, || format!("{girth} cm at {s} cm, at most {most}: {:?}", counts(hat)))?;
        }
        Ok(())
    });
}

#[test]
fn tops_close() {
    every_round_hat(|Planned { hat, spec, .. }| {
        let Sizes { w, .. } = sizes(spec);
        let Some(top) = hat.top else { return Err("no top".into()) };
        let n = top.stitches.get();
        ensure(near(top.opening.cm(), f64::from(n) * w / PI, TICK), || format!("{top:?}"))?;
        let tip = if spec.style == Style::Stocking { spec.shape.tail_stitches.get().min(hat.size.stitches.get()) } else { 0 };
        match (hat.begun, spec.closes()) {
            (Begun::Crown, _) => ensure(top.kind == TopKind::Ring && (4..=16).contains(&n), || format!("{top:?}")),
            (_, Closing::Drawn) if tip > 12 => ensure(top.kind == TopKind::Gathered && n == tip, || format!("{top:?}")),
            (_, Closing::Drawn) => ensure((6..=12).contains(&n) && top.kind == TopKind::Drawn, || format!("{top:?}")),
            (_, Closing::Gathered(wanted)) => {
                let whole = hat.rounds.iter().map(|r| r.after.get()).max().unwrap_or(0);
                let wanted = wanted.get().min(whole);
                let slack = match spec.lays() {
                    _ if wanted == whole => 0,
                    Layout::Wedges(k) => k / 2,
                    Layout::Spread => 2,
                };
                ensure(n.abs_diff(wanted) <= slack && top.kind == TopKind::Gathered, || format!("{wanted} wanted: {top:?}"))
            }
        }
    });
}

/// What is asked for above the band, in cm, by style.
pub fn asked_above(spec: &HatSpec, hat: &Hat) -> f64 {
    let Sizes { w, h, .. } = sizes(spec);
    let head = deep(spec) + spec.fold().cm() - band_tall(spec);
    match spec.style {
        Style::Slouch => head + spec.shape.slouch_longer.cm(),
        Style::Stocking => head + spec.shape.tail.cm(),
        Style::Tam => {
            // Over the disc's edge and back to the band, and a plain round where the body has one of its own next to it.
            let plain = if spec.band_kind() == BandKind::Around { 0.0 } else { h };
            spec.shape.tam_across.cm() - f64::from(hat.size.stitches.get()) * w / TAU + plain
        }
        _ => head,
    }
}

#[test]
fn the_promised_depth_is_the_written_rounds() {
    every_round_hat(|Planned { hat, spec, .. }| {
        let Sizes { h, .. } = sizes(spec);
        let rounds = inward(hat);
        let (above, band, fold) = (rounds.len() as f64 * h + left_inside(spec, hat), band_tall(spec), spec.fold().cm());
        let d = &hat.depth;
        let at = || format!("{d:?}, above {above}, asked {}, band {band}, round {h}", asked_above(spec, hat));
        ensure(near(d.above_band.cm(), above, TICK) && near(d.band.cm(), band, TICK) && d.fold == spec.fold(), at)?;
        ensure(near(d.promised.cm(), above + band - fold, TICK), at)?;
        ensure(near(d.wanted.cm(), asked_above(spec, hat) + band - fold, 2.0 * TICK), at)?;
        let miss = (d.promised.cm() - d.wanted.cm()).abs();
        // Rounds are whole: no hat misses by more than one of them; a tam and a tail have an edge more to meet.
        let rounds = if matches!(spec.style, Style::Tam | Style::Stocking | Style::Slouch) { 1.5 } else { 1.0 };
        ensure(miss <= rounds * h + 2.0 * TICK, at)?;
        let off = hat.remarks.iter().any(|r| matches!(r, Remark::DepthOff(_)));
        ensure(near(miss, h / 2.0, 2.0 * TICK) || off == (miss > h / 2.0), at)
    });
}

/// A brim grows by the flat rate, or the share of it that is asked for, within the rounding; a flat one by the trade's constant number a
/// round, 2π·h/w.
#[test]
fn brims_grow_by_their_share_of_the_flat_rate() {
    every_round_hat(|Planned { hat, spec, .. }| {
        if spec.style != Style::Brimmed {
            return Ok(());
        }
        let Sizes { w, h, .. } = sizes(spec);
        let brim: Vec<&Round> = hat.rounds.iter().filter(|r| r.zone == Zone::Brim).collect();
        let n = hat.size.stitches.get();
        let rounds = (spec.shape.brim.cm() / h).round().max(if hat.begun == Begun::Crown { 1.0 } else { 2.0 });
        let at = || format!("{:?}", counts(hat));
        ensure(brim.len() == rounds as usize, at)?;
        let outer = f64::from(n) + spec.shape.flare.value() * TAU * rounds * h / w;
        let widening = brim.iter().filter(|r| r.kind != RoundKind::Edge).count() as u32;
        let most = f64::from(n) * 2.0_f64.powi(widening.min(30) as i32);
        let made = f64::from(brim.last().map_or(n, |r| r.after.get()));
        ensure(near(made, outer.min(most), 0.51), || format!("{made} for {outer}: {}", at()))
    });
}

/// What a kept hat's rounds come to when it is planned again: themselves.
#[test]
fn what_is_kept_is_not_planned_anew() {
    use hatwright_sizing::{Kept, KeptRounds, PLANNER, plan};
    let mut kept_all = 0;
    for Planned { seed, spec, hat } in crate::planned::PLANNED.iter().filter(|p| p.spec.style.is_round()) {
        let mut rounds: Vec<KeptRounds> = Vec::new();
        for round in &hat.rounds {
            let (after, lead) = (round.after.get(), round.lead.get());
            match rounds.last_mut() {
                Some(last) if (last.after, last.lead) == (after, lead) => last.times += 1,
                _ => rounds.push(KeptRounds { after, lead, times: 1 }),
            }
        }
        let kept = Kept { planner: PLANNER - 1, rows: hat.size.rows, stitches: hat.size.stitches, rounds };
        // A taste that would have planned otherwise changes nothing.
        let taste = hatwright_sizing::Taste::Simple;
        let again = plan(&HatSpec { kept: Some(kept), taste, ..spec.clone() }).unwrap_or_else(|r| panic!("seed {seed}: {r:?}"));
        assert_eq!(again.rounds, hat.rounds, "seed {seed}: {spec:?}");
        // Wedges that had to be given up are not asked about again.
        let size = Size { adjustment: hat.size.adjustment, ..again.size };
        assert_eq!((size, again.depth, again.top), (hat.size, hat.depth, hat.top), "seed {seed}");
        assert!(again.remarks.contains(&Remark::PlanKept(PLANNER - 1)), "seed {seed}");
        kept_all += 1;
    }
    assert!(kept_all > 5_000, "{kept_all}");
}

/// The ruffle price stands in the table.
#[test]
fn a_crown_may_exceed_a_flat_disc_by_a_twentieth() {
    assert!(near(Quantity::Ruffle.row().usual_value(), 1.05, 1e-9));
}
