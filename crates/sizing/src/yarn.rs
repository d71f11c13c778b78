//! Yarn by part and colour: every stitch, end, strand and wrap, with its doubt.

use crate::gauge::Cells;
use crate::strands::{Piece, pieces};
use crate::yarn_use::{YarnRate, surest};
use crate::{
    Begun, Change, Colour, Extra, Hat, HatSpec, Part, PartYarn, Quantity, Start, TopperPlan, YarnLength, YarnNeed, Zone,
    normal_quantile, operations,
};

/// Half-width of a normal 90 % range in standard deviations.
const NINETY: f64 = 1.644_853_626_951_472_7;

/// Metres by part and colour, and by colour.
pub(crate) fn reckon(spec: &HatSpec, cells: &Cells, hat: &Hat, changes: &[Change]) -> (Vec<PartYarn>, Vec<YarnNeed>) {
    let rate = surest(spec);
    let parts = parts(spec, cells, hat, changes, rate.factor);
    let needs = needs(spec, &parts, &rate);
    (parts, needs)
}

/// Metres by part and colour, in the order of telling. Strands held together multiply all of it.
fn parts(spec: &HatSpec, cells: &Cells, hat: &Hat, changes: &[Change], factor: f64) -> Vec<PartYarn> {
    let strands = f64::from(spec.strands);
    let mut all: Vec<(Part, Colour, bool, u64, f64)> = Vec::new();
    let mut add =
        |part, colour, band, count, cm: f64| match all.iter_mut().find(|(p, c, b, ..)| (*p, *c, *b) == (part, colour, band)) {
            Some((.., n, sum)) => {
                *n += count;
                *sum += cm;
            }
            None => all.push((part, colour, band, count, cm)),
        };
    for worked in operations(hat, spec) {
        let w = if worked.band { cells.band_w } else { cells.w };
        let cm = worked.count as f64 * worked.operation.yarn() * w * factor;
        add(worked.part, worked.colour, worked.band, worked.count, cm);
    }
    ends(hat, &mut |colour, cm| add(Part::Ends, colour, false, 0, cm));
    changed(cells, hat, changes, &mut |part, colour, cm| add(part, colour, false, 0, cm));
    if let Some(topper) = &hat.topper {
        wound(hat, topper, &mut |colour, cm| add(Part::Topper, colour, false, 0, cm));
    }
    if spec.yarn_use.swatch_kept {
        let (stitches, cm) = swatch(spec, cells);
        // What was weighed is of its own colour; otherwise a swatch is of the first that the hat uses.
        let first = || hat.colours().first().copied().unwrap_or_default();
        let colour = spec.yarn_use.weighed.map_or_else(first, |weighed| weighed.colour);
        add(Part::Swatch, colour, of_band(spec), stitches, cm * factor);
    }
    all.sort_by_key(|(part, colour, ..)| (*part, *colour));
    let told = |(part, colour, band, stitches, cm): (Part, Colour, bool, u64, f64)| {
        let length = YarnLength::from_metres(cm / 100.0 * strands);
        PartYarn { part, colour, band, stitches, length }
    };
    all.into_iter().map(told).filter(|part| part.length > YarnLength::default()).collect()
}

/// Yarn in metres by colour, with its 90 % range and the balls to use.
fn needs(spec: &HatSpec, parts: &[PartYarn], rate: &YarnRate) -> Vec<YarnNeed> {
    let deviations = match spec.extra {
        Extra::Share(_) => 0.0,
        Extra::Chance(chance) => normal_quantile(chance.value()),
    };
    let need = |(i, ball): (usize, &crate::Ball)| {
        let colour = Colour(i as u8);
        let mine = || parts.iter().filter(|part| part.colour == colour);
        let length: YarnLength = mine().map(|part| part.length).sum();
        let (metre, in_balls) = half_ranges(spec, rate, &mut mine());
        let deviation = in_balls / NINETY;
        let more = match spec.extra {
            Extra::Share(share) => length.metres() * share.value(),
            Extra::Chance(_) => deviation * deviations,
        };
        let safe = YarnLength::from_metres(length.metres() + more.max(0.0));
        YarnNeed {
            colour,
            length,
            low: YarnLength::from_metres((length.metres() - metre).max(0.0)),
            high: YarnLength::from_metres(length.metres() + metre),
            safe,
            deviation: YarnLength::from_metres(deviation),
            balls: whole_balls(safe, ball.yarn),
        }
    };
    spec.balls.iter().enumerate().map(need).collect()
}

/// Whole balls of so much that hold a length: never less than it.
///
/// ```
/// use hatwright_sizing::{Count, YarnLength, whole_balls};
/// let balls = |metres| whole_balls(YarnLength::from_metres(metres), Count::whole(80));
/// assert_eq!((balls(80.0), balls(80.001), balls(0.0)), (1, 2, 0));
/// ```
pub fn whole_balls(length: YarnLength, ball: crate::Count) -> u32 {
    // Hundredths of a metre are centimetres: exact in millimetres.
    let (need, ball) = (length.millimetres().max(0), i64::from(ball.ticks().max(1)) * 10);
    u32::try_from((need + ball - 1) / ball).unwrap_or(u32::MAX)
}

/// Half-widths of the 90 % range in metres, of the length and of what the balls must hold. The stitches share one error; what is cut or
/// wound has another.
fn half_ranges(spec: &HatSpec, rate: &YarnRate, parts: &mut dyn Iterator<Item = &PartYarn>) -> (f64, f64) {
    let (mut metre, mut in_balls, mut other) = (0.0, 0.0, 0.0);
    for part in parts {
        let length = part.length.metres();
        if part.part.is_worked() {
            let (of_metre, of_ball) = rate.doubts(spec, part.band);
            metre += length * of_metre;
            in_balls += length * of_ball;
        } else {
            other += length * Quantity::OtherDoubt.row().usual_value();
        }
    }
    (libm::sqrt(metre * metre + other * other), libm::sqrt(in_balls * in_balls + other * other))
}

/// Whether a swatch is of the band's fabric: an ear warmer has no other.
fn of_band(spec: &HatSpec) -> bool {
    spec.style == crate::Style::EarWarmer
}

/// Stitches of a square swatch in the fabric that the hat is of, and their yarn in cm by the estimate.
fn swatch(spec: &HatSpec, cells: &Cells) -> (u64, f64) {
    let side = Quantity::SwatchSide.row().usual_value();
    let (fabric, w, h) =
        if of_band(spec) { (spec.band_fabric(), cells.band_w, cells.band_row) } else { (spec.fabric, cells.w, cells.h) };
    let whole = |cell: f64| libm::ceil(side / cell - 1e-9);
    let stitches = whole(w) * whole(h);
    (stitches as u64, stitches * fabric.yarn() * w)
}

/// Yarn of a swatch of 15 × 15 cm, as the hat will be worked: 18 stitches and 23 rounds of single crochet at 12 × 15 take 24.2 m by the
/// estimate. A swatch that is unravelled gives it back.
///
/// ```
/// use hatwright_sizing::{HatSpec, swatch_yarn};
/// assert!((swatch_yarn(&HatSpec::default()).metres() - 24.15).abs() < 0.01);
/// ```
pub fn swatch_yarn(spec: &HatSpec) -> YarnLength {
    YarnLength::from_metres(swatch(spec, &Cells::of(spec)).1 * surest(spec).factor / 100.0 * f64::from(spec.strands))
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
fn changed(cells: &Cells, hat: &Hat, changes: &[Change], add: &mut impl FnMut(Part, Colour, f64)) {
    for change in changes {
        if !change.waits {
            add(Part::Ends, change.from, end());
        }
        match change.start {
            Start::First | Start::Anew => add(Part::Ends, change.to, end()),
            Start::Waited { rows, rounds } => {
                let to = change.after as usize;
                let past = hat.rounds.get(to.saturating_sub(rounds.get() as usize)..to).unwrap_or_default();
                let high = |zone| if zone == Zone::Band { cells.band_row } else { cells.h };
                let past: f64 = past.iter().filter(|_| !change.in_band).map(|round| high(round.zone)).sum();
                add(Part::Carried, change.to, f64::from(rows.get()) * cells.band_row + past);
            }
        }
    }
}

/// Wraps around a form as long as the topper, twice its length each, and a strand to tie.
fn wound(hat: &Hat, topper: &TopperPlan, add: &mut impl FnMut(Colour, f64)) {
    let wound = f64::from(topper.wraps) * 2.0 * topper.size.cm();
    let tie = 2.0 * end();
    let colours = topper.colour.map_or_else(|| hat.colours(), |colour| vec![colour]);
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
                assert!((many.length.metres() - f64::from(strands) * one.length.metres()).abs() < 0.03, "{strands}");
                assert!(many.balls >= one.balls);
            }
        }
    }

    /// All of it: what the hook works, an end for every beginning and every cut, the strand of the top, and the pom-pom.
    #[test]
    fn nothing_is_left_out_and_nothing_is_counted_twice() {
        let spec = HatSpec { topper: None, body_stretch: Stretch::Usual, ..HatSpec::default() };
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

    /// A colour's need is the sum of its parts to the millimetre, in the order of telling, and every colour of the hat is there.
    #[test]
    fn needs_are_the_sums_of_their_parts() {
        let mut seen = std::collections::BTreeSet::new();
        for style in crate::Style::ALL {
            for kind in [crate::BandKind::Sideways, crate::BandKind::Around] {
                for begun in [Begun::Band, Begun::Crown] {
                    let mut spec = HatSpec { style, begun, ..HatSpec::default() };
                    (spec.band.kind, spec.band.height, spec.band.fold) = (kind, crate::Stitches::new(4), crate::Length::ZERO);
                    (spec.shape.flap_tie, spec.yarn_use.swatch_kept) = (crate::Length::from_cm(30.0), true);
                    spec.band.edge = crate::Edge::LooseChain;
                    spec.balls.push(spec.balls[0]);
                    let hat = plan(&spec).unwrap();
                    assert!(hat.yarn_parts.is_sorted_by_key(|part| (part.part, part.colour)), "{style:?}");
                    for (i, need) in hat.yarn.iter().enumerate() {
                        let mine = hat.yarn_parts.iter().filter(|part| part.colour == need.colour);
                        assert_eq!(mine.map(|part| part.length).sum::<YarnLength>(), need.length, "{style:?}");
                        assert_eq!(usize::from(need.colour.0), i);
                    }
                    assert_eq!((hat.yarn[2].length, hat.yarn[2].balls), (YarnLength::default(), 0));
                    // Every stitch that is told is one that the hook does.
                    let told: u64 =
                        hat.yarn_parts.iter().filter(|part| part.part != Part::Swatch).map(|part| part.stitches).sum();
                    assert_eq!(told, operations(&hat, &spec).iter().map(|worked| worked.count).sum::<u64>(), "{style:?}");
                    seen.extend(hat.yarn_parts.iter().map(|part| part.part));
                }
            }
        }
        assert_eq!(seen.into_iter().collect::<Vec<_>>(), Part::ALL.to_vec());
    }

    /// Half as wide a stitch, as tall in proportion, and a hat of the same size: twice the stitches a round and twice the rounds, each of
    /// half the yarn. So metres double, but for ends and pom-pom.
    #[test]
    fn a_gauge_twice_as_dense_takes_twice_the_yarn() {
        let metres = |times: i32| {
            let mut spec = HatSpec { topper: None, ..HatSpec::default() };
            spec.set_number(Quantity::SwatchStitches, 0, 1_200 * times);
            spec.set_number(Quantity::SwatchRounds, 0, 1_500 * times);
            (spec.band.height, spec.band.fold) = (crate::Stitches::new(6 * times as u32), crate::Length::ZERO);
            let hat = plan(&spec).unwrap();
            let worked = |part: &&PartYarn| part.part.is_worked();
            hat.yarn_parts.iter().filter(worked).map(|part| part.length.metres()).sum::<f64>()
        };
        assert!((metres(2) / metres(1) - 2.0).abs() < 0.06, "{} {}", metres(1), metres(2));
    }

    #[test]
    fn whole_balls_are_never_short() {
        let ball = crate::Count::whole(80);
        let of = |metres: f64| whole_balls(YarnLength::from_metres(metres), ball);
        assert_eq!([0.0, -5.0, 0.001, 80.0, 80.001, 160.0].map(of), [0, 0, 1, 1, 2, 2]);
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
