//! What the signs of a chart mean, under it.

use super::super::pen::{At, Pen};
use super::super::shape::{Anchor, Paint, Shape};
use super::polar::sample;
use super::symbol::{Form, Hold, Symbol, chain};
use crate::written::{Op, Place, Terms, work_text};
use hatwright_sizing::Stitch;
use hatwright_words::charts as words;

/// From one line to the next.
const LINE: i32 = 26;
/// Room for a sign.
const SIGN: i32 = 34;
/// A letter's width, generously.
const LETTER: f64 = 6.8;

/// A line: shapes drawn about a place, and what they mean.
pub(super) struct Entry {
    draw: Sign,
    text: String,
}

enum Sign {
    Stitch(Symbol),
    Chain,
    Join,
    Circle(&'static str),
    Cell(hatwright_sizing::Colour),
}

impl Entry {
    /// A stitch, in the terms in use.
    pub fn stitch(symbol: Symbol, terms: Terms) -> Self {
        Self { draw: Sign::Stitch(symbol), text: meaning(symbol, terms) }
    }

    /// A chain at a round's beginning.
    pub fn chain() -> Self {
        Self { draw: Sign::Chain, text: words::chain().to_owned() }
    }

    /// The slip stitch that closes a round.
    pub fn join() -> Self {
        Self { draw: Sign::Join, text: words::join().to_owned() }
    }

    /// A circle of a class.
    pub fn circle(class: &'static str, text: &str) -> Self {
        Self { draw: Sign::Circle(class), text: text.to_owned() }
    }

    /// A cell in a colour.
    pub fn cell(colour: hatwright_sizing::Colour, text: String) -> Self {
        Self { draw: Sign::Cell(colour), text }
    }
}

/// What a symbol means: `sc2tog, in the back loop`.
fn meaning(symbol: Symbol, terms: Terms) -> String {
    let Symbol { stitch, form, hold } = symbol;
    let place = match hold {
        Hold::FrontPost => Place::FrontPost,
        Hold::BackPost => Place::BackPost,
        Hold::Both | Hold::Back | Hold::Front => Place::Stitch,
    };
    let op = match form {
        Form::One => Op::Work { stitch, count: 1, place },
        Form::Together => Op::Together { stitch, of: 2 },
        Form::Two => Op::Several { stitch, each: 2, count: 1, place: Place::Stitch },
    };
    let short = work_text(&[op], terms);
    let name = terms.words().name(stitch);
    let text = match (form, hold) {
        (Form::One, Hold::FrontPost) => words::front_post(&short, name),
        (Form::One, Hold::BackPost) => words::back_post(&short, name),
        (Form::One, _) => words::stitch(&short, name),
        (Form::Together, _) => words::together(&short),
        (Form::Two, _) => words::two(&short),
    };
    match hold {
        Hold::Back => words::in_back(&text),
        Hold::Front => words::in_front(&text),
        Hold::Both | Hold::FrontPost | Hold::BackPost => text,
    }
}

/// How wide the widest entry is.
pub(super) fn width(entries: &[Entry]) -> i32 {
    let letters = entries.iter().map(|e| e.text.chars().count()).max().unwrap_or(0);
    SIGN + (letters as f64 * LETTER) as i32 + 16
}

/// Draws the entries from a height down, in as many columns as there is room for; gives the height below them.
pub(super) fn draw(entries: &[Entry], left: i32, top: i32, room: i32, side: f64, shapes: &mut Vec<Shape>) -> i32 {
    let wide = width(entries);
    let columns = (room / wide.max(1)).clamp(1, 3) as usize;
    let lines = entries.len().div_ceil(columns);
    shapes.push(Shape::open(words::key().to_owned(), "chart-key"));
    for (i, entry) in entries.iter().enumerate() {
        let (column, line) = ((i / lines.max(1)) as i32, (i % lines.max(1)) as i32);
        let (x, y) = (left + column * wide, top + line * LINE + LINE / 2);
        let centre = At::new(f64::from(x + SIGN / 2 - 4), f64::from(y));
        sign(&entry.draw, centre, side, shapes);
        shapes.push(Shape::text(x + SIGN, y + 4, Anchor::Start, entry.text.clone(), "chart-text"));
    }
    shapes.push(Shape::close());
    top + lines as i32 * LINE
}

fn sign(sign: &Sign, centre: At, side: f64, shapes: &mut Vec<Shape>) {
    let mut pen = Pen::new();
    match sign {
        Sign::Stitch(symbol) => {
            shapes.push(sample(*symbol, centre, side));
        }
        Sign::Chain => {
            chain(&mut pen, At::new(centre.x, centre.y + 6.0), At::new(centre.x, centre.y - 6.0));
            shapes.push(Shape::path(pen.finish(), Paint::Class("sym-ch")));
        }
        Sign::Join => {
            pen.ellipse(centre, 2.2, 2.2, true);
            shapes.push(Shape::path(pen.finish(), Paint::Class("sym-join")));
        }
        Sign::Circle(class) => {
            pen.ellipse(centre, 7.0, 7.0, true);
            shapes.push(Shape::path(pen.finish(), Paint::Class(class)));
        }
        Sign::Cell(colour) => {
            super::grid::cell(*colour, At::new(centre.x - 9.0, centre.y - 8.0), shapes);
        }
    }
}

/// The stitches that occur among these, each once, in order of height and form.
pub(super) fn stitches(symbols: impl Iterator<Item = Symbol>, terms: Terms) -> Vec<Entry> {
    let mut all: Vec<Symbol> = symbols.collect();
    all.sort_unstable_by_key(|s| (s.stitch as u8, s.form, s.hold));
    all.dedup();
    all.into_iter().filter(|s| s.stitch != Stitch::Slip || s.form == Form::One).map(|s| Entry::stitch(s, terms)).collect()
}
