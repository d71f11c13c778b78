//! Yarn by colour, from the estimate that rests on the gauge.

use crate::gauge::Cells;
use crate::{Change, Colour, Hat, HatSpec, PomPomPlan, Quantity, RoundKind, Start, YarnLength, YarnNeed};

/// Yarn in metres by colour, with its 90 % range and the balls to buy.
pub(crate) fn needs(spec: &HatSpec, cells: &Cells, hat: &Hat, changes: &[Change]) -> Vec<YarnNeed> {
    let mut metres = vec![0.0; spec.balls.len()];
    let mut add = |colour: Colour, cm: f64| {
        if let Some(m) = metres.get_mut(usize::from(colour.0)) {
            *m += cm / 100.0;
        }
    };
    band(spec, cells, &hat.band_rows, &mut add);
    body(cells, hat, &mut add);
    ends(cells, hat, changes, &mut add);
    if let Some(pom) = &hat.pom_pom {
        pom_pom(hat, pom, &mut add);
    }
    let doubt = Quantity::YarnDoubt.row().usual_value();
    let margin = 1.0 + spec.margin.value();
    let need = |(i, m): (usize, f64)| {
        let ball = spec.balls[i].yarn.value();
        YarnNeed {
            colour: Colour(i as u8),
            length: YarnLength::from_metres(m),
            low: YarnLength::from_metres(m * (1.0 - doubt)),
            high: YarnLength::from_metres(m * (1.0 + doubt)),
            balls: libm::ceil(m * margin / ball) as u32,
        }
    };
    metres.into_iter().enumerate().map(need).collect()
}

/// The end that closes the top, in cm: twice through every stitch left, and two ends more to sew across and fasten with.
pub(crate) fn closing_strand(stitches: u32, w: f64) -> f64 {
    2.0 * f64::from(stitches) * w + 2.0 * Quantity::YarnEnd.row().usual_value()
}

fn per_stitch(q: Quantity) -> f64 {
    q.row().usual_value()
}

/// Chain and rows of the band.
fn band(spec: &HatSpec, cells: &Cells, rows: &[Colour], add: &mut impl FnMut(Colour, f64)) {
    let height = f64::from(spec.band.height.get());
    let (chain, single) = (per_stitch(Quantity::YarnChain) * cells.band_w, per_stitch(Quantity::YarnSingle) * cells.band_w);
    let Some(first) = rows.first() else { return };
    add(*first, (height + 1.0) * chain);
    for colour in rows {
        add(*colour, height * single + chain);
    }
}

/// Rounds of the body: plain stitches and decreases.
fn body(cells: &Cells, hat: &Hat, add: &mut impl FnMut(Colour, f64)) {
    let single = per_stitch(Quantity::YarnSingle) * cells.w;
    let decrease = per_stitch(Quantity::YarnDecrease) * single;
    for round in &hat.rounds {
        let decreases = f64::from(round.decreases.get());
        let plain = match round.kind {
            RoundKind::PickUp => f64::from(round.after.get()),
            _ => f64::from(round.before) - 2.0 * decreases,
        };
        add(round.colour, plain * single + decreases * decrease);
    }
}

/// An end wherever yarn begins or is cut, the strand of yarn that waits, and the end that closes the top.
fn ends(cells: &Cells, hat: &Hat, changes: &[Change], add: &mut impl FnMut(Colour, f64)) {
    let end = Quantity::YarnEnd.row().usual_value();
    if let Some(first) = hat.band_rows.first() {
        add(*first, end);
    }
    for change in changes {
        if !change.waits {
            add(change.from, end);
        }
        match change.start {
            Start::First | Start::Anew => add(change.to, end),
            Start::Waited { rows, rounds } => {
                add(change.to, f64::from(rows.get()) * cells.band_row + f64::from(rounds.get()) * cells.h);
            }
        }
    }
    if let Some(last) = hat.rounds.last() {
        add(last.colour, closing_strand(last.after.get(), cells.w));
    }
}

/// Wraps around a form as wide as the diameter, twice its width each, and a strand to tie.
fn pom_pom(hat: &Hat, pom: &PomPomPlan, add: &mut impl FnMut(Colour, f64)) {
    let wound = f64::from(pom.wraps) * 2.0 * pom.diameter.cm();
    let tie = 2.0 * Quantity::YarnEnd.row().usual_value();
    let colours = pom.colour.map_or_else(|| hat.colours(), |colour| vec![colour]);
    for colour in &colours {
        add(*colour, (wound + tie) / colours.len() as f64);
    }
}
