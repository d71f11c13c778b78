//! Rows as a grid of stitches in their colours: a band, or a hat worked sideways. For a print in black and white every colour is a hatching
//! and a letter too.

use super::super::pen::{At, Pen};
use super::super::shape::{Anchor, Paint, Picture, Shape};
use super::key::{self, Entry};
use super::symbol::{self, Form, Hold, Symbol};
use super::{Chart, Charted, span, whole};
use crate::picture::{colour_letter, fabric::put};
use crate::sizes::Table;
use crate::written::Hand;
use hatwright_sizing::{BandKind, Colour, Loops, RoundKind, Zone};
use hatwright_words::charts as words;

/// A cell, in user units.
const WIDE: i32 = 18;
const HIGH: i32 = 16;
/// Free for the numbers on either side, and above.
const SIDE: i32 = 40;
const TOP: i32 = 14;
/// The narrowest picture: what is told under the grid has to fit.
const NARROWEST: i32 = 400;
/// At least so many rows are drawn, if whole repeats of that many divide all of them; and at most so many.
const FEW_ROWS: usize = 4;
const MOST_ROWS: usize = 60;
/// The most stitches of a row.
const MOST_STITCHES: u32 = 120;
/// Of a round, about so many.
const AROUND: core::ops::RangeInclusive<u32> = 10..=20;

/// A row, or a round.
#[derive(Clone, Copy, PartialEq, Eq)]
struct Row {
    colour: Colour,
    stitches: u32,
    /// Whether its stitches go around posts, from the front and from the back in turn.
    posts: bool,
}

/// Rows, and how they are told.
struct Rows {
    all: Vec<Row>,
    title: &'static str,
    /// The number of the first.
    first: u32,
    /// Whether they go around.
    around: bool,
}

/// The chart: stitches as cells, the first row lowest, each row numbered where it begins. Of a long band one repeat is drawn, of a round a
/// part that divides it. Every row is a group of class `chart-round`; in it a stitch is one element of class `hatch`.
///
/// Absent for a hat without a band that is not worked sideways.
pub(super) fn grid(of: &Charted<'_>) -> Option<Chart> {
    let rows = rows(of)?;
    let repeat = repeat(&rows.all);
    let drawn = drawn_rows(rows.all.len(), repeat);
    let longest = rows.all.iter().map(|row| row.stitches).max()?;
    let across = if rows.around { drawn_around(longest, rows.all.iter().any(|r| r.posts)) } else { longest.min(MOST_STITCHES) };
    let told = if rows.around {
        words::grid_rounds(rows.all.len() as u32, longest)
    } else {
        words::grid_rows(rows.all.len() as u32, longest)
    };
    let mut told = vec![told];
    let mut notes = Vec::new();
    let times = rows.all.len() / drawn;
    match (times, drawn < rows.all.len() && !rows.all.len().is_multiple_of(drawn) || drawn < repeat) {
        (_, true) => notes.push(words::grid_cut(drawn as u32, rows.all.len() as u32)),
        (2.., false) => notes.push(words::grid_times(drawn as u32, times as u32)),
        _ => {}
    }
    if across < longest {
        let even = rows.around && longest.is_multiple_of(across);
        notes.push(if even { words::grid_around(across, longest / across) } else { words::grid_part(across, longest) });
    }
    let (mut shapes, width, foot) = draw(of, &rows, drawn, across);
    let mut at = foot + 20;
    for note in &notes {
        shapes.push(Shape::text(12, at, Anchor::Start, note.clone(), "chart-text"));
        at += 17;
    }
    let height = key::draw(&entries(of, &rows), 8, at - 4, width - 8, -of.along(), &mut shapes) + 8;
    told.extend(notes);
    let picture = Picture { width, height, title: rows.title.to_owned(), description: told.join(" "), shapes };
    Some(Chart { id: "rows", picture, table: table(of, &rows) })
}

fn rows(of: &Charted<'_>) -> Option<Rows> {
    let hat = of.hat;
    if let Some(panel) = &hat.panel {
        let all = panel.rows.iter().map(|row| Row { colour: row.colour, stitches: row.stitches.get(), posts: false }).collect();
        return Some(Rows { all, title: words::panel(), first: 1, around: false });
    }
    if hat.band == BandKind::Sideways && !hat.band_rows.is_empty() {
        let stitches = of.spec.band.height.get();
        let all = hat.band_rows.iter().map(|colour| Row { colour: *colour, stitches, posts: false }).collect();
        return Some(Rows { all, title: words::band(), first: 1, around: false });
    }
    let ribbed = of.spec.band_fabric().row().loops == Loops::Posts;
    let band: Vec<_> = hat.rounds.iter().filter(|r| r.zone == Zone::Band).collect();
    let posts = |r: &hatwright_sizing::Round| ribbed && r.kind == RoundKind::Plain && r.after.get().is_multiple_of(2);
    let all = band.iter().map(|r| Row { colour: r.colour, stitches: r.after.get(), posts: posts(r) }).collect();
    Some(Rows { all, title: words::band_around(), first: band.first()?.number, around: true })
}

/// The fewest rows after which colours and lengths begin again.
fn repeat(rows: &[Row]) -> usize {
    let whole = rows.len();
    let repeats = |long: usize| whole.is_multiple_of(long) && rows.iter().zip(&rows[long..]).all(|(a, b)| a == b);
    (1..whole).find(|long| repeats(*long)).unwrap_or(whole)
}

/// Whole repeats that divide the rows, a few at least; no more than a picture holds.
fn drawn_rows(all: usize, repeat: usize) -> usize {
    let even = |least: usize| (1..=all / repeat).map(|k| k * repeat).find(|rows| *rows >= least && all.is_multiple_of(*rows));
    let few = even(FEW_ROWS).filter(|rows| *rows <= 4 * FEW_ROWS.max(repeat));
    // Of rows that do not divide, a pair, there and back.
    few.or_else(|| even(2).filter(|rows| *rows == 2)).unwrap_or(repeat).min(MOST_ROWS)
}

/// Stitches of a round that divide it, in pairs for a rib; or as many as are enough.
fn drawn_around(all: u32, pairs: bool) -> u32 {
    if all <= *AROUND.end() {
        return all;
    }
    let suits = |n: &u32| all.is_multiple_of(*n) && (!pairs || n.is_multiple_of(2));
    AROUND.rev().find(suits).unwrap_or(*AROUND.start() + 2)
}

/// The grid; also the picture's width, and how far down it reaches.
fn draw(of: &Charted<'_>, rows: &Rows, drawn: usize, across: u32) -> (Vec<Shape>, i32, i32) {
    let wide = WIDE * across as i32;
    let width = (wide + 2 * SIDE).max(NARROWEST).max(key::width(&entries(of, rows)) + 16);
    let (left, foot) = ((width - wide) / 2, TOP + HIGH * drawn as i32);
    // The first stitch of the first row stands at the right for the right hand.
    let x =
        |stitch: u32| if of.hand == Hand::Right { left + wide - WIDE * (stitch as i32 + 1) } else { left + WIDE * stitch as i32 };
    let mut shapes = Vec::new();
    let mut yarns: Vec<(Colour, Pen)> = Vec::new();
    let (mut veil, mut lines, mut plates) = (Pen::new(), Pen::new(), Pen::new());
    let (mut groups, mut letters) = (Vec::new(), Vec::new());
    for (i, row) in rows.all.iter().take(drawn).enumerate() {
        let (number, top) = (rows.first + i as u32, foot - HIGH * (i as i32 + 1));
        let own = row.stitches.min(across);
        let title = if rows.around { words::round_of(number, row.stitches) } else { words::row_of(number, row.stitches) };
        groups.push(Shape::open(title, "chart-round"));
        let known = yarns.iter().position(|y| y.0 == row.colour).unwrap_or_else(|| {
            yarns.push((row.colour, Pen::new()));
            yarns.len() - 1
        });
        for stitch in 0..own {
            let corner = At::new(f64::from(x(stitch)), f64::from(top));
            for pen in [&mut yarns[known].1, &mut veil, &mut lines] {
                rectangle(pen, corner);
            }
            groups.push(hatched(row.colour, corner));
            let middle = At::new(corner.x + f64::from(WIDE) / 2.0, corner.y + f64::from(HIGH) / 2.0);
            plate(&mut plates, middle);
            if row.posts {
                letters.push(post(of, stitch, middle));
            } else {
                let letter = colour_letter(row.colour).to_string();
                letters.push(Shape::text(whole(middle.x), whole(middle.y) + 4, Anchor::Middle, letter, "chart-cell"));
            }
        }
        groups.push(Shape::close());
        letters.extend(numbers(of, rows, (i, row, number), top, (x(0), x(own.max(1) - 1))));
    }
    shapes.extend(yarns.into_iter().map(|(colour, pen)| Shape::path(pen.finish(), Paint::Yarn(colour))));
    put(&mut shapes, veil, "chart-veil");
    shapes.extend(groups);
    put(&mut shapes, lines, "chart-grid");
    put(&mut shapes, plates, "chart-plate");
    shapes.extend(letters);
    for stitch in (0..across).filter(|stitch| *stitch == 0 || (stitch + 1).is_multiple_of(5)) {
        let middle = x(stitch) + WIDE / 2;
        shapes.push(Shape::text(middle, foot + 13, Anchor::Middle, (stitch + 1).to_string(), "chart-number"));
    }
    (shapes, width, foot + 14)
}

/// A row's number where it begins, and its letter at the other end where its cells have none. Rows that are turned begin at either side.
fn numbers(
    of: &Charted<'_>,
    rows: &Rows,
    (index, row, number): (usize, &Row, u32),
    top: i32,
    (first, last): (i32, i32),
) -> Vec<Shape> {
    let back = !rows.around && !index.is_multiple_of(2);
    let beside = |x: i32, rightmost: bool, text: String| {
        let (at, anchor) = if rightmost { (x + WIDE + 6, Anchor::Start) } else { (x - 6, Anchor::End) };
        Shape::text(at, top + 12, anchor, text, "chart-number")
    };
    let right = of.hand == Hand::Right;
    let (begin, end) = if back { ((last, !right), (first, right)) } else { ((first, right), (last, !right)) };
    let mut all = vec![beside(begin.0, begin.1, number.to_string())];
    if row.posts {
        all.push(beside(end.0, end.1, colour_letter(row.colour).to_string()));
    }
    all
}

/// A stitch around a post, in its cell.
fn post(of: &Charted<'_>, stitch: u32, middle: At) -> Shape {
    let hold = if stitch.is_multiple_of(2) { Hold::FrontPost } else { Hold::BackPost };
    let symbol = Symbol { stitch: of.spec.band_fabric().row().stitch, form: Form::One, hold };
    symbol::draw(symbol, &[At::new(middle.x, middle.y + 2.6)], &[At::new(middle.x, middle.y - 5.6)], -of.along())
}

fn entries(of: &Charted<'_>, rows: &Rows) -> Vec<Entry> {
    let mut colours: Vec<Colour> = rows.all.iter().map(|row| row.colour).collect();
    colours.sort_unstable();
    colours.dedup();
    let mut all: Vec<Entry> = colours.into_iter().map(|c| Entry::cell(c, of.told_colour(Some(c)))).collect();
    if rows.all.iter().any(|row| row.posts) {
        let stitch = of.spec.band_fabric().row().stitch;
        let post = |hold| Symbol { stitch, form: Form::One, hold };
        all.extend([Hold::FrontPost, Hold::BackPost].map(|hold| Entry::stitch(post(hold), of.terms)));
    }
    all
}

/// A cell of a key: yarn, hatching and letter.
pub(super) fn cell(colour: Colour, corner: At, shapes: &mut Vec<Shape>) {
    let outline = || {
        let mut pen = Pen::new();
        rectangle(&mut pen, corner);
        pen
    };
    shapes.push(Shape::path(outline().finish(), Paint::Yarn(colour)));
    put(shapes, outline(), "chart-veil");
    shapes.push(hatched(colour, corner));
    put(shapes, outline(), "chart-grid");
    let middle = At::new(corner.x + f64::from(WIDE) / 2.0, corner.y + f64::from(HIGH) / 2.0);
    let mut pen = Pen::new();
    plate(&mut pen, middle);
    put(shapes, pen, "chart-plate");
    let letter = colour_letter(colour).to_string();
    shapes.push(Shape::text(whole(middle.x), whole(middle.y) + 4, Anchor::Middle, letter, "chart-cell"));
}

fn hatched(colour: Colour, corner: At) -> Shape {
    let mut pen = Pen::new();
    rectangle(&mut pen, corner);
    Shape::path(pen.finish(), Paint::Hatch(colour))
}

fn rectangle(pen: &mut Pen, corner: At) {
    let (right, foot) = (corner.x + f64::from(WIDE), corner.y + f64::from(HIGH));
    pen.polygon(&[corner, At::new(right, corner.y), At::new(right, foot), At::new(corner.x, foot)]);
}

/// Paper under a letter: its yarn may be of any shade.
fn plate(pen: &mut Pen, middle: At) {
    pen.ellipse(middle, 5.4, 6.2, true);
}

/// Runs of rows alike: numbers, colour, stitches.
fn table(of: &Charted<'_>, rows: &Rows) -> Table {
    let mut told = Vec::new();
    let mut at = rows.first;
    for run in rows.all.chunk_by(|a, b| (a.colour, a.stitches) == (b.colour, b.stitches)) {
        let next = at + run.len() as u32;
        told.push(vec![span(at, next - 1), of.told_colour(Some(run[0].colour)), run[0].stitches.to_string()]);
        at = next;
    }
    let first = if rows.around { words::head_round() } else { words::head_row() };
    let head = [first, words::head_colour(), words::head_stitches()].map(str::to_owned).to_vec();
    Table { caption: rows.title.to_owned(), head, rows: told }
}
