//! That a hook can make the rounds of a hat, one upon the other.

use hatwright_sizing::{BandKind, Begun, Hat, HatSpec, Kept, Remark, Round, RoundKind, Style, TopKind, Zone, plan};

fn ensure(holds: bool, say: impl FnOnce() -> String) -> Result<(), String> {
    if holds { Ok(()) } else { Err(say()) }
}

/// Everything that must hold of any planned hat.
pub fn can_be_made(spec: &HatSpec, hat: &Hat) -> Result<(), String> {
    chained(spec, hat)?;
    for round in &hat.rounds {
        legal(round)?;
    }
    depth(spec, hat)?;
    rows(spec, hat)?;
    parts(spec, hat)?;
    planned_again(spec, hat)
}

/// Each round is worked into what there is of the one before, and the first into what it says.
fn chained(spec: &HatSpec, hat: &Hat) -> Result<(), String> {
    let n = hat.stitches().get();
    for (i, round) in hat.rounds.iter().enumerate() {
        ensure(round.number == i as u32 + 1, || format!("{round:?}"))?;
        let (before, count) = match round.kind {
            RoundKind::PickUp => (hat.size.rows.get(), i == 0 && hat.begun == Begun::Band && hat.band == BandKind::Sideways),
            RoundKind::Foundation => (round.after.get(), i == 0 && hat.begun == Begun::Band && hat.band != BandKind::Sideways),
            RoundKind::Ring => (0, i == 0 && hat.begun == Begun::Crown),
            RoundKind::Edge => (n, i > 0 && round.zone == Zone::Brim && hat.begun == Begun::Band),
            _ => (i.checked_sub(1).map_or(u32::MAX, |i| hat.rounds[i].after.get()), i > 0),
        };
        ensure(count && round.before == before, || format!("{round:?} after {:?}", i.checked_sub(1).map(|i| hat.rounds[i])))?;
    }
    if let Some(last) = hat.rounds.last().filter(|_| hat.begun == Begun::Crown && spec.style != Style::Brimmed) {
        ensure(last.after.get() == n, || format!("ends with {last:?}, not {n}"))?;
    }
    if let Some(first) = hat.rounds.first().filter(|_| hat.begun == Begun::Band) {
        ensure(first.after.get() == n, || format!("begins with {first:?}, not {n}"))?;
    }
    Ok(())
}

fn legal(round: &Round) -> Result<(), String> {
    let (before, after) = (round.before, round.after.get());
    let (fewer, more, lead) = (round.decreases.get(), round.increases.get(), round.lead.get());
    let into_something = !matches!(round.kind, RoundKind::PickUp | RoundKind::Ring);
    let adds_up = !into_something || before + more == after + fewer;
    let one_kind = fewer == 0 || more == 0;
    let halved_or_doubled = !into_something || (2 * fewer <= before && more <= before);
    let named = match round.kind {
        RoundKind::Decrease => fewer > 0,
        RoundKind::Increase => more > 0,
        RoundKind::Adjust => fewer + more > 0,
        _ => fewer + more == 0,
    };
    let leads = fewer + more == 0 && lead == 0 || fewer + more > 0 && lead * (fewer + more) + 2 * fewer + more <= before;
    ensure(after > 0 && adds_up && one_kind && halved_or_doubled && named && leads, || format!("{round:?}"))
}

/// The depth that is promised is that of the rounds that are written, and within a round of what is wanted, or else said to be off.
fn depth(spec: &HatSpec, hat: &Hat) -> Result<(), String> {
    let d = &hat.depth;
    let off = (d.promised.cm() - d.wanted.cm()).abs();
    let step = if spec.style == Style::Sideways { hat.gauge.stitch } else { hat.gauge.round }.cm();
    // A tam's disc and its underside come in whole rounds each, and so do a cone and what is beyond its tip.
    // A crown that is worked outward has a whole number of rounds before any is given up to close it.
    let sections = match (spec.style, hat.begun) {
        (Style::Tam | Style::Stocking, _) => 2.0,
        (_, Begun::Crown) => 1.5,
        _ => 1.0,
    };
    ensure(off <= (1.01 * step * sections + 0.01).max(0.03 * d.wanted.cm()), || {
        format!("{d:?} at rounds of {step}: {:?}", hat.rounds)
    })?;
    let told = hat.remarks.iter().any(|remark| matches!(remark, Remark::DepthOff(_)));
    ensure(told == (off > step / 2.0) || (off - step / 2.0).abs() < 0.01, || format!("{told} {d:?} {step}"))?;
    let above = hat.rounds.iter().filter(|r| !matches!(r.zone, Zone::Band | Zone::Brim)).count() as f64 * hat.gauge.round.cm();
    if let Some(top) = hat.top.filter(|_| spec.style.is_round()) {
        let inside = match top.kind {
            TopKind::Drawn => f64::from(top.stitches.get()) * hat.gauge.stitch.cm() / core::f64::consts::TAU,
            TopKind::Gathered => top.bundle.cm() / 2.0,
            TopKind::Ring | TopKind::RowEnds => 0.0,
        };
        // Gauges are rounded to a tick.
        let slack = 0.01 + hat.rounds.len() as f64 * 0.0006;
        ensure((above + inside - d.above_band.cm()).abs() < slack, || format!("{above} {inside} {d:?}"))?;
    }
    Ok(())
}

fn rows(spec: &HatSpec, hat: &Hat) -> Result<(), String> {
    let sideways = hat.band == BandKind::Sideways;
    let (rows, in_band) = (hat.size.rows.get(), hat.band_rows.len() as u32);
    ensure(in_band == if sideways { rows } else { 0 }, || format!("{rows} {in_band}"))?;
    ensure(rows.is_multiple_of(2), || format!("{rows} rows"))?;
    ensure(hat.panel.is_some() == (spec.style == Style::Sideways), || "a panel is a hat worked sideways".into())?;
    let Some(panel) = &hat.panel else { return Ok(()) };
    let lengths: Vec<u32> = panel.rows.iter().map(|row| row.stitches.get()).collect();
    let wedge = panel.wedge.get() as usize;
    let pairs =
        lengths.chunks(2).all(|pair| pair.len() == 2 && pair[0] == pair[1] && (1..=panel.stitches.get()).contains(&pair[0]));
    let again = lengths.chunks(wedge).all(|one| one == &lengths[..wedge]);
    ensure(pairs && again && lengths[0] == panel.stitches.get() && lengths.len() as u32 == rows, || format!("{panel:?}"))
}

fn parts(spec: &HatSpec, hat: &Hat) -> Result<(), String> {
    ensure(hat.flaps.is_some() == (spec.style == Style::EarFlap), || "flaps are an ear-flap hat's".into())?;
    if let Some(flaps) = &hat.flaps {
        let wide = flaps.rows[0].before;
        let edge = if hat.band == BandKind::Sideways { hat.size.rows.get() } else { hat.stitches().get() };
        ensure(2 * wide + flaps.back.get() + flaps.front.get() == edge, || format!("{flaps:?} {edge}"))?;
        let chained = flaps.rows.windows(2).all(|pair| pair[1].before == pair[0].after.get());
        let fair = flaps.rows.iter().all(|row| row.decreases.get() <= 2 && row.before == row.after.get() + row.decreases.get());
        ensure(chained && fair && flaps.rows.iter().all(|row| row.after.get() > 0), || format!("{flaps:?}"))?;
    }
    Ok(())
}

/// Begun, the hat is planned again as it was.
fn planned_again(spec: &HatSpec, hat: &Hat) -> Result<(), String> {
    let kept = Kept::of(hat);
    let again =
        plan(&HatSpec { kept: Some(kept.clone()), ..spec.clone() }).map_err(|refusal| format!("{refusal:?} with {kept:?}"))?;
    ensure(again.remarks.contains(&Remark::PlanKept(kept.planner)), || format!("{:?} with {kept:?}", again.remarks))?;
    let same = again.rounds == hat.rounds
        && again.panel == hat.panel
        && again.size == hat.size
        && again.depth == hat.depth
        && again.yarn == hat.yarn
        && again.lays(spec) == hat.lays(spec);
    let other = again.rounds.iter().zip(&hat.rounds).find(|(a, b)| a != b);
    let told = |hat: &Hat| format!("{} rounds {:?} {:?} {:?}", hat.rounds.len(), hat.size, hat.depth, hat.remarks);
    ensure(same, || format!("{other:?} {} not {}", told(&again), told(hat)))
}
