//! Yarn by colour, from the estimate that rests on the gauge.

use crate::gauge::Cells;
use crate::{Colour, HatSpec, PomPomPlan, Quantity, Round, RoundKind, YarnLength, YarnNeed};

/// Yarn in metres by colour, with its 90 % range and the balls to buy.
pub(crate) fn needs(
    spec: &HatSpec,
    cells: &Cells,
    band_rows: &[Colour],
    rounds: &[Round],
    top: u32,
    pom: Option<&PomPomPlan>,
) -> Vec<YarnNeed> {
    let mut metres = vec![0.0; spec.balls.len()];
    let mut add = |colour: Colour, cm: f64| {
        if let Some(m) = metres.get_mut(usize::from(colour.0)) {
            *m += cm / 100.0;
        }
    };
    band(spec, cells, band_rows, &mut add);
    body(cells, rounds, &mut add);
    // The strand that closes the top goes twice through every stitch left and keeps an end on both sides.
    if let Some(last) = rounds.last() {
        add(last.colour, 2.0 * f64::from(top) * cells.w + 2.0 * Quantity::YarnEnd.row().usual_value());
    }
    if let Some(pom) = pom {
        pom_pom(spec, pom, &mut add);
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

fn per_stitch(q: Quantity) -> f64 {
    q.row().usual_value()
}

/// Chain, rows and carried strands of the band, and an end at the start and end of each colour, or of each stripe where the yarn is cut.
fn band(spec: &HatSpec, cells: &Cells, rows: &[Colour], add: &mut impl FnMut(Colour, f64)) {
    let height = f64::from(spec.band.height.get());
    let (chain, single) = (per_stitch(Quantity::YarnChain) * cells.band_w, per_stitch(Quantity::YarnSingle) * cells.band_w);
    let end = Quantity::YarnEnd.row().usual_value();
    let Some(first) = rows.first() else { return };
    add(*first, (height + 1.0) * chain);
    for colour in rows {
        add(*colour, height * single + chain);
    }
    let cut = odd_stripes(spec);
    let mut used: Vec<Colour> = Vec::new();
    for (i, colour) in rows.iter().enumerate() {
        let begins = i == 0 || rows[i - 1] != *colour;
        if begins && (cut || !used.contains(colour)) {
            used.push(*colour);
            add(*colour, 2.0 * end);
        }
    }
    if !cut {
        for colour in &used {
            let waiting = rows.iter().filter(|c| *c != colour).count() as f64;
            add(*colour, waiting * cells.band_row);
        }
    }
}

/// Rounds of the body: plain stitches, decreases, and an end at both sides of each stripe, cut and woven in.
fn body(cells: &Cells, rounds: &[Round], add: &mut impl FnMut(Colour, f64)) {
    let single = per_stitch(Quantity::YarnSingle) * cells.w;
    let decrease = per_stitch(Quantity::YarnDecrease) * single;
    let end = Quantity::YarnEnd.row().usual_value();
    for (i, round) in rounds.iter().enumerate() {
        let decreases = f64::from(round.decreases.get());
        let plain = match round.kind {
            RoundKind::PickUp => f64::from(round.after.get()),
            _ => f64::from(round.before) - 2.0 * decreases,
        };
        add(round.colour, plain * single + decreases * decrease);
        if i == 0 || rounds[i - 1].colour != round.colour {
            add(round.colour, 2.0 * end);
        }
    }
}

/// Wraps around a form as wide as the diameter, twice its width each, and a strand to tie.
fn pom_pom(spec: &HatSpec, pom: &PomPomPlan, add: &mut impl FnMut(Colour, f64)) {
    let wound = f64::from(pom.wraps) * 2.0 * pom.diameter.cm();
    let tie = 2.0 * Quantity::YarnEnd.row().usual_value();
    if let Some(colour) = pom.colour {
        add(colour, wound + tie);
        return;
    }
    let colours = spec.balls.len();
    for i in 0..colours {
        add(Colour(i as u8), (wound + tie) / colours as f64);
    }
}

/// Whether a stripe of the band has an odd number of rows, which leaves the yarn at the edge that is not picked up.
pub(crate) fn odd_stripes(spec: &HatSpec) -> bool {
    let many = spec.band.stripes.iter().any(|s| s.colour != spec.band.stripes[0].colour);
    many && spec.band.stripes.iter().any(|s| !s.rows.get().is_multiple_of(2))
}
