//! The pattern as numbers and operation trees, before any words.

use super::flaps::flap_lines;
use super::lines::pick_up_line;
use super::ops::{Op, Place};
use super::rounds::round_lines;
use super::rows::{band_lines, panel_lines};
use hatwright_sizing::{BandKind, Begun, Colour, Fabric, Hat, HatSpec, Round, RoundKind, Stitch, TopKind, Zone};

/// A hat's pattern: what is worked, in order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pattern {
    /// The parts that are worked, in order.
    pub parts: Vec<Part>,
    /// Rows of the band, or of a hat worked sideways, after which the stripes begin again; as many as there are where they never do.
    pub stripe_rows: u32,
    /// Whether the hat uses more than one colour, so that every line names its own.
    pub coloured: bool,
}

/// A part of the hat.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// Which.
    pub kind: PartKind,
    /// What it is worked in.
    pub fabric: Fabric,
    /// Its lines, in order.
    pub lines: Vec<Line>,
}

/// Which part of a hat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PartKind {
    /// A band of rows back and forth, joined into a ring.
    Band,
    /// A band worked in rounds.
    BandAround,
    /// Joining a band that was made apart.
    Joining,
    /// Rounds that go around the head.
    Body,
    /// The underside of a tam.
    Under,
    /// The rounds that are shaped to close.
    Crown,
    /// A straight tail.
    Tail,
    /// A brim.
    Brim,
    /// The whole hat in rows.
    Panel,
    /// Seaming a hat that is worked sideways.
    Seam,
    /// A pair of ear flaps.
    Flaps,
    /// Drawing up the top.
    Closing,
}

/// A line of the pattern: one row or round, or several that are worked alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// Which rows or rounds.
    pub label: Label,
    /// What is done.
    pub ops: Vec<Op>,
    /// Stitches when it is done. For a foundation, its chains; for a joining, the stitches joined; for seam and closing, nothing.
    pub total: u32,
    /// Its colour; `None` where the rows or rounds of the line go on in the same stripes.
    pub colour: Option<Colour>,
    /// Decreases in it.
    pub decreases: u32,
    /// Increases in it.
    pub increases: u32,
    /// What the round does; absent for everything that is no round.
    pub kind: Option<RoundKind>,
}

impl Line {
    /// A line that is no round.
    pub(super) const fn of(label: Label, ops: Vec<Op>, total: u32, colour: Option<Colour>) -> Self {
        Self { label, ops, total, colour, decreases: 0, increases: 0, kind: None }
    }
}

/// What a line is called. Numbers count from 1, first and last included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Label {
    /// The chain that something begins with.
    Foundation,
    /// Rows of a band, of a hat worked sideways, or of a flap.
    Row(u32, u32),
    /// Rounds of the hat.
    Round(u32, u32),
    /// Slip stitches that join a band to the hat.
    Join,
    /// Slip stitches that seam the last row to the first.
    Seam,
    /// The tie of a flap.
    Tie,
    /// After the last round.
    Closing,
}

/// Writes a hat's pattern.
///
/// Consecutive rows or rounds that are worked alike in one colour become one line. A band of many stripes is written out for its first
/// repeat; the rows after it, up to the last, become one line. So do the rounds of a very long tail in stripes, and the wedges of a hat
/// worked sideways.
pub fn write(hat: &Hat, spec: &HatSpec) -> Pattern {
    let mut parts = Vec::new();
    let mut stripe_rows = repeat_length(&hat.band_rows);
    if let Some(panel) = &hat.panel {
        let fabric = spec.fabric;
        stripe_rows = repeat_length(&panel.rows.iter().map(|row| row.colour).collect::<Vec<_>>());
        parts.push(Part { kind: PartKind::Panel, fabric, lines: panel_lines(panel, fabric, stripe_rows) });
        let colour = panel.rows.last().map(|row| row.colour);
        let place = Place::RowAndFoundation(fabric.row().loops);
        let ops = vec![Op::Turn, Op::Every { stitch: Stitch::Slip, each: 1, count: panel.stitches.get(), place }];
        parts.push(Part { kind: PartKind::Seam, fabric, lines: vec![Line::of(Label::Seam, ops, 0, colour)] });
    }
    let band = (hat.band == BandKind::Sideways && !hat.band_rows.is_empty()).then(|| Part {
        kind: PartKind::Band,
        fabric: spec.band_fabric(),
        lines: band_lines(&hat.band_rows, stripe_rows, spec),
    });
    let brim = hat.rounds.iter().position(|r| r.zone == Zone::Brim).unwrap_or(hat.rounds.len());
    let (hat_rounds, brim_rounds) = hat.rounds.split_at(brim);
    match hat.begun {
        Begun::Band => {
            parts.extend(band);
            push_zones(&mut parts, hat_rounds, spec);
            parts.extend(closing(hat, hat_rounds, spec));
            push_zones(&mut parts, brim_rounds, spec);
        }
        Begun::Crown => {
            push_zones(&mut parts, hat_rounds, spec);
            push_zones(&mut parts, brim_rounds, spec);
            if let Some(band) = band {
                let fabric = band.fabric;
                parts.push(band);
                let (stitches, rows) = (hat.rounds.last().map_or(0, |r| r.after.get()), hat.band_rows.len() as u32);
                let ops = pick_up_line(Stitch::Slip, stitches, rows);
                let line = Line::of(Label::Join, ops, stitches, hat.band_rows.last().copied());
                parts.push(Part { kind: PartKind::Joining, fabric, lines: vec![line] });
            }
        }
    }
    if let Some(flaps) = &hat.flaps {
        let on_rows = hat.band == BandKind::Sideways;
        parts.push(Part { kind: PartKind::Flaps, fabric: spec.fabric, lines: flap_lines(flaps, spec.fabric, on_rows) });
    }
    Pattern { parts, stripe_rows, coloured: hat.colours().len() > 1 }
}

/// Rounds, parted where the zone changes.
fn push_zones(parts: &mut Vec<Part>, rounds: &[Round], spec: &HatSpec) {
    for rounds in rounds.chunk_by(|a, b| a.zone == b.zone) {
        let zone = rounds[0].zone;
        let (kind, fabric) = match zone {
            Zone::Band => (PartKind::BandAround, spec.band_fabric()),
            Zone::Body => (PartKind::Body, spec.fabric),
            Zone::Under => (PartKind::Under, spec.fabric),
            Zone::Crown => (PartKind::Crown, spec.fabric),
            Zone::Tail => (PartKind::Tail, spec.fabric),
            Zone::Brim => (PartKind::Brim, spec.fabric),
        };
        parts.push(Part { kind, fabric, lines: round_lines(rounds, fabric, spec) });
    }
}

fn closing(hat: &Hat, rounds: &[Round], spec: &HatSpec) -> Option<Part> {
    let top = hat.top?;
    let gather = match top.kind {
        TopKind::Ring => return None,
        TopKind::RowEnds => Op::GatherRowEnds(top.stitches.get()),
        TopKind::Drawn | TopKind::Gathered => Op::Gather(top.stitches.get()),
    };
    let last_row = hat.panel.as_ref().and_then(|panel| panel.rows.last()).map(|row| row.colour);
    let colour = rounds.last().map(|r| r.colour).or(last_row);
    let line = Line::of(Label::Closing, vec![Op::FastenOff, gather], 0, colour);
    Some(Part { kind: PartKind::Closing, fabric: spec.fabric, lines: vec![line] })
}

/// The fewest rows after which the colours begin again and which divide the whole.
fn repeat_length(rows: &[Colour]) -> u32 {
    let whole = rows.len();
    let repeats = |len: usize| whole.is_multiple_of(len) && rows.iter().zip(&rows[len..]).all(|(a, b)| a == b);
    (1..whole).find(|len| repeats(*len)).unwrap_or(whole) as u32
}

#[cfg(test)]
mod tests;
