//! Yarn by colour, from the estimate that rests on the gauge.

use crate::gauge::Cells;
use crate::strands::{Piece, pieces};
use crate::{Begun, Change, Colour, Hat, HatSpec, PomPomPlan, Quantity, Start, YarnLength, YarnNeed, Zone, operations};

/// Yarn in metres by colour, with its 90 % range and the balls to buy. Strands held together multiply all of it.
pub(crate) fn needs(spec: &HatSpec, cells: &Cells, hat: &Hat, changes: &[Change]) -> Vec<YarnNeed> {
    let mut metres = vec![0.0; spec.balls.len()];
    let strands = f64::from(spec.strands);
    let mut add = |colour: Colour, cm: f64| {
        if let Some(m) = metres.get_mut(usize::from(colour.0)) {
            *m += cm / 100.0 * strands;
        }
    };
    for worked in operations(hat, spec) {
        let w = if worked.band { cells.band_w } else { cells.w };
        add(worked.colour, worked.count as f64 * worked.operation.yarn() * w);
    }
    ends(hat, &mut add);
    changed(cells, hat, changes, &mut add);
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
    2.0 * f64::from(stitches) * w + 2.0 * end()
}

fn end() -> f64 {
    Quantity::YarnEnd.row().usual_value()
}

/// Ends where the pieces of the work begin and where they are fastened off, and the end that closes the top. Each flap is a piece.
fn ends(hat: &Hat, add: &mut impl FnMut(Colour, f64)) {
    let end = end();
    let mut closing = hat.top.map(|top| top.strand.cm());
    for Piece { rows, rounds } in pieces(hat) {
        let rounds = &hat.rounds[rounds];
        let all = || rows.iter().copied().chain(rounds.iter().map(|round| round.colour));
        let (Some(first), Some(last)) = (all().next(), rounds.last().map(|round| round.colour).or(rows.last().copied())) else {
            continue;
        };
        add(first, end);
        // The first piece has the top. Begun there, its beginning closes it and it ends at the edge with an end like any other.
        match (hat.begun, closing.take()) {
            (Begun::Band, Some(strand)) => add(last, strand),
            (Begun::Crown, Some(strand)) => {
                add(first, strand);
                add(last, end);
            }
            (_, None) => add(last, end),
        }
    }
    if let Some(flaps) = &hat.flaps {
        add(flaps.colour, 4.0 * end);
    }
}

/// An end wherever a colour begins or is cut at a change, and the strand of yarn that waits.
fn changed(cells: &Cells, hat: &Hat, changes: &[Change], add: &mut impl FnMut(Colour, f64)) {
    for change in changes {
        if !change.waits {
            add(change.from, end());
        }
        match change.start {
            Start::First | Start::Anew => add(change.to, end()),
            Start::Waited { rows, rounds } => {
                let to = change.after as usize;
                let past = hat.rounds.get(to.saturating_sub(rounds.get() as usize)..to).unwrap_or_default();
                let high = |zone| if zone == Zone::Band { cells.band_row } else { cells.h };
                let past: f64 = past.iter().filter(|_| !change.in_band).map(|round| high(round.zone)).sum();
                add(change.to, f64::from(rows.get()) * cells.band_row + past);
            }
        }
    }
}

/// Wraps around a form as wide as the diameter, twice its width each, and a strand to tie.
fn pom_pom(hat: &Hat, pom: &PomPomPlan, add: &mut impl FnMut(Colour, f64)) {
    let wound = f64::from(pom.wraps) * 2.0 * pom.diameter.cm();
    let tie = 2.0 * end();
    let colours = pom.colour.map_or_else(|| hat.colours(), |colour| vec![colour]);
    for colour in &colours {
        add(*colour, (wound + tie) / colours.len() as f64);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Stretch, plan};

    fn metres(hat: &Hat) -> f64 {
        hat.yarn.iter().map(|need| need.length.metres()).sum()
    }

    #[test]
    fn strands_multiply_every_metre() {
        let spec = HatSpec::default();
        let one = plan(&spec).unwrap();
        for strands in 2..=6 {
            let many = plan(&HatSpec { strands, ..spec.clone() }).unwrap();
            for (one, many) in one.yarn.iter().zip(&many.yarn) {
                assert!((many.length.metres() - f64::from(strands) * one.length.metres()).abs() < 0.004, "{strands}");
                assert!(many.balls >= one.balls);
            }
        }
    }

    /// All of it: what the hook works, an end for every beginning and every cut, the strand of the top, and the pom-pom.
    #[test]
    fn nothing_is_left_out_and_nothing_is_counted_twice() {
        let spec = HatSpec { pom_pom: None, body_stretch: Stretch::Usual, ..HatSpec::default() };
        let hat = plan(&spec).unwrap();
        let cells = Cells::of(&spec);
        let worked: f64 = operations(&hat, &spec)
            .iter()
            .map(|w| w.count as f64 * w.operation.yarn() * if w.band { cells.band_w } else { cells.w })
            .sum();
        let changes = hat.changes();
        let begun = changes.iter().filter(|c| !matches!(c.start, Start::Waited { .. })).count();
        let cut = changes.iter().filter(|c| !c.waits).count();
        let waited: f64 = changes
            .iter()
            .map(|c| match c.start {
                Start::Waited { rows, rounds } => f64::from(rows.get()) * cells.band_row + f64::from(rounds.get()) * cells.h,
                _ => 0.0,
            })
            .sum();
        let strand = hat.top.map_or(0.0, |top| top.strand.cm());
        let all = worked + (1 + begun + cut) as f64 * 15.0 + waited + strand;
        assert!((metres(&hat) - all / 100.0).abs() < 0.003, "{} m, recounted {} m", metres(&hat), all / 100.0);
    }

    #[test]
    fn a_taller_fabric_of_the_same_count_takes_its_own_yarn() {
        let spec = HatSpec::default();
        let hat = plan(&spec).unwrap();
        let worked = |fabric| {
            let spec = HatSpec { fabric, ..spec.clone() };
            operations(&hat, &spec).iter().filter(|w| !w.band).map(|w| w.count as f64 * w.operation.yarn()).sum::<f64>()
        };
        let (single, double) = (worked(crate::Fabric::Single), worked(crate::Fabric::Double));
        assert!((double / single - 12.5 / 7.0).abs() < 1e-9);
    }
}
