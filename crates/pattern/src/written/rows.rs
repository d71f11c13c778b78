//! Rows of a sideways band, and of a hat worked sideways.

use super::ops::{Op, Place};
use super::pattern::{Label, Line};
use hatwright_sizing::{Colour, Fabric, HatSpec, Panel, SideTop};

/// More stripes than this are not written out one by one where they repeat.
const MOST_STRIPES_WRITTEN: usize = 6;

/// A row that all of its stitches are worked in, after its turn.
struct Rows {
    fabric: Fabric,
    width: u32,
}

impl Rows {
    fn every(&self, place: Place) -> Op {
        Op::Every { stitch: self.fabric.row().stitch, each: 1, count: self.width, place }
    }

    fn foundation(&self, colour: Option<Colour>) -> Line {
        let chains = self.width + self.fabric.row().chain;
        Line::of(Label::Foundation, vec![Op::FoundationChain(chains)], chains, colour)
    }

    fn first(&self, colour: Option<Colour>) -> Line {
        let place = Place::ChainFrom(self.fabric.row().chain + 1);
        Line::of(Label::Row(1, 1), vec![self.every(place)], self.width, colour)
    }

    fn turned(&self, work: Vec<Op>) -> Vec<Op> {
        let mut ops = vec![Op::Chain(self.fabric.row().chain), Op::Turn];
        ops.extend(work);
        ops
    }

    fn full(&self, from: u32, to: u32, colour: Option<Colour>) -> Line {
        let place = Place::Row(self.fabric.row().loops);
        Line::of(Label::Row(from, to), self.turned(vec![self.every(place)]), self.width, colour)
    }
}

/// A band: foundation, rows, and the last one, which closes the ring.
pub(super) fn band_lines(colours: &[Colour], repeat: u32, spec: &HatSpec) -> Vec<Line> {
    let rows = Rows { fabric: spec.band_fabric(), width: spec.band.height.get() };
    let (Some(first), Some(join)) = (colours.first().copied(), colours.last().copied()) else { return Vec::new() };
    let last = colours.len() as u32;
    let mut lines = vec![rows.foundation(Some(first)), rows.first(Some(first))];
    striped(&mut lines, &rows, colours, repeat, last);
    if last > 1 {
        let place = Place::RowAndFoundation(rows.fabric.row().loops);
        lines.push(Line::of(Label::Row(last, last), rows.turned(vec![rows.every(place)]), rows.width, Some(join)));
    }
    lines
}

/// Rows from the second to the one before `end`, in their stripes.
fn striped(lines: &mut Vec<Line>, rows: &Rows, colours: &[Colour], repeat: u32, end: u32) {
    let mut stripes: Vec<(u32, u32, Colour)> = Vec::new();
    for (number, colour) in (2..end).zip(colours.iter().skip(1)) {
        match stripes.last_mut() {
            Some((_, to, same)) if same == colour => *to = number,
            _ => stripes.push((number, number, *colour)),
        }
    }
    let told = if stripes.len() > MOST_STRIPES_WRITTEN && repeat < end { repeat } else { end };
    for (from, to, colour) in stripes {
        if from <= told {
            lines.push(rows.full(from, to.min(told), Some(colour)));
        }
    }
    if told + 1 < end {
        lines.push(rows.full(told + 1, end - 1, None));
    }
}

/// A hat worked sideways: its foundation and all of its rows. Wedges of short rows are written out once and a row more.
pub(super) fn panel_lines(panel: &Panel, fabric: Fabric, repeat: u32) -> Vec<Line> {
    let rows = Rows { fabric, width: panel.stitches.get() };
    let colours: Vec<Colour> = panel.rows.iter().map(|row| row.colour).collect();
    let Some(first) = colours.first().copied() else { return Vec::new() };
    let mut lines = vec![rows.foundation(Some(first)), rows.first(Some(first))];
    let count = panel.rows.len() as u32;
    if panel.top == SideTop::Gathered {
        striped(&mut lines, &rows, &colours, repeat, count + 1);
        return lines;
    }
    let wedge = panel.wedge.get().max(1);
    // Row 1 goes into the chain, and stands for no other row; the first of the next wedge does.
    let again = panel.rows.iter().zip(panel.rows.iter().skip(wedge as usize)).all(|(a, b)| a.stitches == b.stitches);
    let striped = colours.iter().zip(colours.iter().skip(wedge as usize)).all(|(a, b)| a == b);
    let told = if again && striped && wedge + 1 < count { wedge + 1 } else { count };
    for (number, row) in (2..=told).zip(panel.rows.iter().skip(1)) {
        let below = panel.rows[number as usize - 2].stitches.get();
        lines.push(short_row(&rows, number, row.stitches.get(), below, row.colour));
    }
    if told < count {
        let colour = colours.iter().all(|c| *c == first).then_some(first);
        let total = panel.rows.last().map_or(0, |row| row.stitches.get());
        let ops = vec![Op::AsRows { from: 2, to: told }];
        lines.push(Line::of(Label::Row(told + 1, count), ops, total, colour));
    }
    lines
}

/// Odd rows run to the crown, over whatever shorter rows left; even rows go back over the row before.
fn short_row(rows: &Rows, number: u32, stitches: u32, below: u32, colour: Colour) -> Line {
    let place = Place::Row(rows.fabric.row().loops);
    let stitch = rows.fabric.row().stitch;
    let whole = if number.is_multiple_of(2) { below } else { rows.width };
    let work = if stitches >= whole {
        vec![Op::Every { stitch, each: 1, count: stitches, place }]
    } else {
        vec![Op::Work { stitch, count: stitches, place }, Op::LeaveRest(whole - stitches)]
    };
    Line::of(Label::Row(number, number), rows.turned(work), stitches, Some(colour))
}
