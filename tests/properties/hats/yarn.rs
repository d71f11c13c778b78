//! Yarn: every stitch and end of it, and balls enough.

use crate::planned::{Planned, Sizes, ensure, every_hat, near, sizes};
use hatwright_sizing::{Colour, Hat, HatSpec};

/// Yarn in cm by colour, stitch by stitch: common practice, no source, for what each takes in stitch widths (chain 3.3, single 7, a
/// decrease 1.6 singles), 15 cm for every end.
fn yarn(spec: &HatSpec, hat: &Hat) -> Vec<f64> {
    const END: f64 = 15.0;
    let Sizes { w, h, band_w, band_row } = sizes(spec);
    let mut cm = vec![0.0; spec.balls.len()];
    let b = f64::from(spec.band.height.get());
    let rows = &hat.band_rows;
    cm[usize::from(rows[0].0)] += (b + 1.0) * 3.3 * band_w;
    for colour in rows {
        cm[usize::from(colour.0)] += (7.0 * b + 3.3) * band_w;
    }
    let rounds: Vec<Colour> = hat.rounds.iter().map(|round| round.colour).collect();
    for (colour, cm) in cm.iter_mut().enumerate() {
        let (cut, rows_past, rounds_past) = strands(Colour(colour as u8), rows, &rounds);
        *cm += END * cut as f64 + rows_past as f64 * band_row + rounds_past as f64 * h;
    }
    for round in &hat.rounds {
        let d = f64::from(round.decreases.get());
        let plain = f64::from(round.after.get()) - d;
        let at = &mut cm[usize::from(round.colour.0)];
        *at += (plain + 1.6 * d) * 7.0 * w;
    }
    if let Some(last) = hat.rounds.last() {
        // In place of the last end, the one that closes the top.
        cm[usize::from(last.colour.0)] += 2.0 * f64::from(last.after.get()) * w + END;
    }
    if let Some(pom) = spec.pom_pom {
        let wraps = (15.0 * pom.diameter.cm() / w).ceil().clamp(1.0, 2_000.0);
        let wound = wraps * 2.0 * pom.diameter.cm() + 2.0 * END;
        if let Some(colour) = pom.colour {
            cm[usize::from(colour.0)] += wound;
        } else {
            let used: Vec<&mut f64> = cm.iter_mut().filter(|cm| **cm > 0.0).collect();
            let each = wound / used.len() as f64;
            for cm in used {
                *cm += each;
            }
        }
    }
    cm
}

/// Ends of a colour's yarn, and the rows and rounds that it waits past. Common practice, no source: it waits past at most six, at the
/// edge where even rows end and on the inside of the body; otherwise it is cut.
fn strands(colour: Colour, rows: &[Colour], rounds: &[Colour]) -> (usize, usize, usize) {
    let all: Vec<Colour> = rows.iter().chain(rounds).copied().collect();
    let at: Vec<usize> = (0..all.len()).filter(|i| all[*i] == colour).collect();
    let (mut ends, mut rows_past, mut rounds_past) = (if at.is_empty() { 0 } else { 2 }, 0, 0);
    for pair in at.windows(2) {
        let between = pair[0] + 1..pair[1];
        let edge = |i: usize| i >= rows.len() || i.is_multiple_of(2);
        if between.is_empty() {
            continue;
        }
        if between.len() <= 6 && edge(between.start) && edge(between.end) {
            rows_past += between.clone().filter(|i| *i < rows.len()).count();
            rounds_past += between.filter(|i| *i >= rows.len()).count();
        } else {
            ends += 2;
        }
    }
    (ends, rows_past, rounds_past)
}

#[test]
fn yarn_is_every_stitch_and_end() {
    every_hat(|Planned { hat, spec, .. }| {
        let ours = yarn(spec, hat);
        ensure(hat.yarn.len() == ours.len(), || format!("{:?}", hat.yarn))?;
        for (need, cm) in hat.yarn.iter().zip(ours) {
            let at = || format!("{need:?}, recounted {} m", cm / 100.0);
            ensure(near(need.length.metres(), cm / 100.0, 0.001), at)?;
            let (low, high) = (need.low.metres(), need.high.metres());
            ensure(near(low, 0.75 * cm / 100.0, 0.001) && near(high, 1.25 * cm / 100.0, 0.001), at)?;
        }
        Ok(())
    });
}

#[test]
fn balls_are_enough_and_not_one_too_many() {
    every_hat(|Planned { hat, spec, .. }| {
        for (need, ball) in hat.yarn.iter().zip(&spec.balls) {
            let at = || format!("{need:?} in balls of {} m", ball.yarn.value());
            ensure(need.length.millimetres() >= 0, at)?;
            // A need is rounded to the millimetre, the balls are not.
            let (wanted, doubt) = (need.length.metres() * (1.0 + spec.margin.value()), 0.001);
            let balls = f64::from(need.balls);
            ensure(balls * ball.yarn.value() >= wanted - doubt, at)?;
            ensure(need.balls == 0 || (balls - 1.0) * ball.yarn.value() < wanted + doubt, at)?;
        }
        Ok(())
    });
}
