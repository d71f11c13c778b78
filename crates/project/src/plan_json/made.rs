//! A planned hat's numbers and lines, as they stand in a file.

use super::ops::{PlanOp, told};
use hatwright_pattern::written::{Label, Line, Part, Pattern};
use hatwright_sizing::{Fabric, Hat, Length, Ratio, Round, Top, TopperKind, TopperPlan, YarnLength, YarnNeed};
use serde::{Deserialize, Serialize};

/// A hat of one size.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanHat {
    /// Stitches of the body next to the band; of what has rows alone, its row ends.
    pub stitches: u32,
    /// Rows of a sideways band, or of a hat worked sideways; 0 where there are none.
    pub rows: u32,
    /// Relaxed girth of the body: the finished size.
    pub girth_mm: f64,
    /// Relaxed girth of the band; where there is none, of the body.
    pub band_girth_mm: f64,
    /// Crown's centre to the lower edge as worn.
    pub depth_mm: f64,
    /// The band, unfolded.
    pub band_mm: f64,
    /// Of it, folded up.
    pub fold_mm: f64,
    /// How much smaller than the head it is; negative where it is larger.
    pub ease: f64,
    /// What heads it fits.
    pub fit: PlanFit,
    /// The gauges that its numbers rest on.
    pub gauge: PlanGauge,
    /// What is worked, in order.
    pub parts: Vec<PlanPart>,
    /// Every round, in working order; none where the hat has none.
    pub rounds: Vec<PlanRound>,
    /// How the top ends, or begins.
    pub top: Option<PlanTop>,
    /// The pom-pom or the tassel.
    pub topper: Option<PlanTopper>,
    /// Yarn by colour, of those that it uses.
    pub yarn: Vec<PlanYarn>,
}

/// Heads that a hat fits.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanFit {
    /// From this girth.
    pub least_mm: f64,
    /// To this one.
    pub most_mm: f64,
    /// Ages at which it fits 8 in 10 heads, from and to.
    pub ages: Option<[f64; 2]>,
    /// Whether it reaches the head that it is for.
    pub reaches: bool,
}

/// Sizes of single stitches.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanGauge {
    /// Width of a stitch of the body.
    pub stitch_mm: f64,
    /// Height of a round of the body.
    pub round_mm: f64,
    /// Width of a stitch of the band.
    pub band_stitch_mm: f64,
    /// Height of a row of the band.
    pub band_row_mm: f64,
    /// Whether they come from a yarn-weight number, not from a swatch.
    pub estimated: bool,
}

/// A part of the hat.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanPart {
    /// Which: `Band`, `BandAround`, `Joining`, `Body`, `Under`, `Crown`, `Tail`, `Brim`, `Panel` (a hat worked sideways), `Seam`,
    /// `Flaps` or `Closing`.
    pub kind: String,
    /// What it is worked in.
    pub fabric: Fabric,
    /// Its lines, in order.
    pub lines: Vec<PlanLine>,
}

/// A line of work: one row or round, or several that are worked alike.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanLine {
    /// `Row`, `Round`, `Foundation`, `Join`, `Seam`, `Tie` or `Closing`.
    pub label: String,
    /// The first row or round; `null` where the line has no number.
    pub first: Option<u32>,
    /// The last one.
    pub last: Option<u32>,
    /// Its colour; `null` where its rows or rounds go on in the same stripes.
    pub colour: Option<u8>,
    /// What is done.
    pub ops: Vec<PlanOp>,
    /// Stitches when it is done: for a foundation its chains, for a seam and a closing 0.
    pub total: u32,
    /// Decreases in it.
    pub decreases: u32,
    /// Increases in it.
    pub increases: u32,
}

/// A round.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlanRound {
    /// Counted from 1, in working order.
    pub number: u32,
    /// Stitches, or row ends, that it uses up.
    pub before: u32,
    /// Stitches that it leaves.
    pub after: u32,
    /// Decreases, each of two stitches into one.
    pub decreases: u32,
    /// Increases, each of two stitches in one.
    pub increases: u32,
    /// Plain stitches before the first of them.
    pub lead: u32,
    /// `PickUp`, `Foundation`, `Ring`, `Edge`, `Plain`, `Adjust`, `Decrease` or `Increase`.
    pub kind: String,
    /// `Band`, `Body`, `Under`, `Crown`, `Tail` or `Brim`.
    pub zone: String,
    /// Its colour.
    pub colour: u8,
}

/// How the top ends, or begins.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanTop {
    /// `Drawn`, `Gathered`, `Ring` or `RowEnds`.
    pub kind: String,
    /// Stitches, or row ends, drawn together; of a ring, those worked into it.
    pub stitches: u32,
    /// The end to leave for drawing up.
    pub strand_mm: f64,
}

/// A pom-pom or a tassel.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanTopper {
    /// Which.
    pub kind: TopperKind,
    /// Across a pom-pom, or along a tassel.
    pub size_mm: f64,
    /// Wraps around the form.
    pub wraps: u32,
    /// Its colour; `null` for all that the hat uses.
    pub colour: Option<u8>,
}

/// Yarn of one colour.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanYarn {
    /// The colour.
    pub colour: u8,
    /// Estimated length.
    pub length_m: f64,
    /// The low end of its 90 % range.
    pub low_m: f64,
    /// The high end.
    pub high_m: f64,
    /// The length with what is bought over it.
    pub safe_m: f64,
    /// Whole balls that hold it, whatever is owned.
    pub balls: u32,
}

/// Millimetres, to the hundredth: exactly what the planner counts in.
pub(super) fn millimetres(length: Length) -> f64 {
    f64::from(length.ticks()) / 100.0
}

fn metres(yarn: YarnLength) -> f64 {
    hundredths(yarn.metres())
}

fn hundredths(number: f64) -> f64 {
    (number * 100.0).round() / 100.0
}

fn share(ratio: Ratio) -> f64 {
    f64::from(ratio.ticks()) / 10_000.0
}

/// The name of a choice, which is its name in the code too.
fn word(choice: impl core::fmt::Debug) -> String {
    format!("{choice:?}")
}

impl PlanHat {
    /// A planned hat with its lines.
    pub(super) fn of(hat: &Hat, written: &Pattern) -> Self {
        let (size, fit, gauge, depth) = (&hat.size, &hat.fit, &hat.gauge, &hat.depth);
        Self {
            stitches: size.stitches.get(),
            rows: size.rows.get(),
            girth_mm: millimetres(size.girth),
            band_girth_mm: millimetres(size.band_girth),
            depth_mm: millimetres(depth.promised),
            band_mm: millimetres(depth.band),
            fold_mm: millimetres(depth.fold),
            ease: share(size.ease),
            fit: PlanFit {
                least_mm: millimetres(fit.least),
                most_mm: millimetres(fit.most),
                ages: fit.ages.map(|(from, to)| [hundredths(from), hundredths(to)]),
                reaches: size.reaches,
            },
            gauge: PlanGauge {
                stitch_mm: millimetres(gauge.stitch),
                round_mm: millimetres(gauge.round),
                band_stitch_mm: millimetres(gauge.band_stitch),
                band_row_mm: millimetres(gauge.band_row),
                estimated: gauge.estimated,
            },
            parts: written.parts.iter().map(part).collect(),
            rounds: hat.rounds.iter().map(round).collect(),
            top: hat.top.as_ref().map(top),
            topper: hat.topper.as_ref().map(topper),
            yarn: hat.yarn.iter().filter(|need| need.length > YarnLength::default()).map(yarn).collect(),
        }
    }
}

fn part(part: &Part) -> PlanPart {
    PlanPart { kind: word(part.kind), fabric: part.fabric, lines: part.lines.iter().map(line).collect() }
}

fn line(line: &Line) -> PlanLine {
    let (label, numbers) = match line.label {
        Label::Row(first, last) => ("Row", Some((first, last))),
        Label::Round(first, last) => ("Round", Some((first, last))),
        Label::Foundation => ("Foundation", None),
        Label::Join => ("Join", None),
        Label::Seam => ("Seam", None),
        Label::Tie => ("Tie", None),
        Label::Closing => ("Closing", None),
    };
    PlanLine {
        label: label.to_owned(),
        first: numbers.map(|(first, _)| first),
        last: numbers.map(|(_, last)| last),
        colour: line.colour.map(|colour| colour.0),
        ops: told(&line.ops),
        total: line.total,
        decreases: line.decreases,
        increases: line.increases,
    }
}

fn round(round: &Round) -> PlanRound {
    PlanRound {
        number: round.number,
        before: round.before,
        after: round.after.get(),
        decreases: round.decreases.get(),
        increases: round.increases.get(),
        lead: round.lead.get(),
        kind: word(round.kind),
        zone: word(round.zone),
        colour: round.colour.0,
    }
}

fn top(top: &Top) -> PlanTop {
    PlanTop { kind: word(top.kind), stitches: top.stitches.get(), strand_mm: millimetres(top.strand) }
}

fn topper(topper: &TopperPlan) -> PlanTopper {
    let TopperPlan { kind, size, wraps, colour } = *topper;
    PlanTopper { kind, size_mm: millimetres(size), wraps, colour: colour.map(|colour| colour.0) }
}

fn yarn(need: &YarnNeed) -> PlanYarn {
    PlanYarn {
        colour: need.colour.0,
        length_m: metres(need.length),
        low_m: metres(need.low),
        high_m: metres(need.high),
        safe_m: metres(need.safe),
        balls: need.balls,
    }
}
