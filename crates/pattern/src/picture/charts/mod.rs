//! Charts to publish with a pattern, each with the same numbers as a table: rounds in crochet symbols, a band stitch by stitch, the hat
//! laid flat with its measures, and every round as a bar.
//!
//! A chart is drawn from the written lines ([`Pattern`]), so that what a maker sees and what a maker reads cannot differ.

mod bars;
mod crown;
mod grid;
mod key;
mod polar;
mod rings;
mod schematic;
mod symbol;

#[cfg(test)]
mod tests;

pub use crown::CrownView;

use super::shape::Picture;
use crate::figures::Units;
use crate::sizes::Table;
use crate::written::{Hand, Pattern, Terms};
use hatwright_sizing::{Colour, Hat, HatSpec};
use hatwright_words::charts as words;

/// What charts are drawn from: a hat, its written pattern, and who reads them.
#[derive(Clone, Copy, Debug)]
pub struct Charted<'a> {
    /// The hat.
    pub hat: &'a Hat,
    /// What it was planned from.
    pub spec: &'a HatSpec,
    /// Its pattern, as [`write`](crate::written::write) gives it.
    pub pattern: &'a Pattern,
    /// Names of the hat's colours, in order; one that is missing or empty is called by its number.
    pub colours: &'a [String],
    /// Which hand holds the hook: for the left one a chart is its mirror image, letters and numbers apart.
    pub hand: Hand,
    /// Whose terms the symbols are explained in.
    pub terms: Terms,
    /// Units of lengths.
    pub units: Units,
}

/// A chart and its table twin.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Chart {
    /// A stable name, fit for a file or an element: `flat`, `rows`, `crown`, `underside`, `brim`, `rounds`.
    pub id: &'static str,
    /// The picture.
    pub picture: Picture,
    /// The same numbers as a table.
    pub table: Table,
}

/// Every chart that a hat has, in the order of a pattern: measures, band, crown, underside, brim, and all rounds. One that has nothing to
/// show is left out.
///
/// ```
/// use hatwright_pattern::figures::Units;
/// use hatwright_pattern::picture::{Charted, CrownView, charts};
/// use hatwright_pattern::written::{Hand, Terms, write};
/// use hatwright_sizing::{HatSpec, plan};
/// let spec = HatSpec::default();
/// let hat = plan(&spec).unwrap();
/// let (pattern, colours) = (write(&hat, &spec), ["indigo", "weld"].map(str::to_owned));
/// let (hand, terms, units) = (Hand::Right, Terms::Us, Units::Centimetres);
/// let of = Charted { hat: &hat, spec: &spec, pattern: &pattern, colours: &colours, hand, terms, units };
/// let ids: Vec<_> = charts(&of, CrownView::Whole).iter().map(|chart| chart.id).collect();
/// assert_eq!(ids, ["flat", "rows", "crown", "rounds"]);
/// ```
pub fn charts(of: &Charted<'_>, view: CrownView) -> Vec<Chart> {
    let all = [
        Some(schematic::schematic(of)),
        grid::grid(of),
        crown::crown(of, view),
        crown::underside(of),
        crown::brim(of),
        bars::bars(of),
    ];
    all.into_iter().flatten().collect()
}

impl Charted<'_> {
    /// A colour's name.
    fn colour(&self, colour: Colour) -> String {
        match self.colours.get(usize::from(colour.0)).map(|name| name.trim()) {
            Some(name) if !name.is_empty() => name.to_owned(),
            _ => hatwright_words::pictures::colour(u32::from(colour.0) + 1),
        }
    }

    /// A colour's letter and name, or that a line goes on in its stripes.
    fn told_colour(&self, colour: Option<Colour>) -> String {
        match colour {
            Some(colour) => words::lettered(&super::colour_letter(colour).to_string(), &self.colour(colour)),
            None => words::stripes().to_owned(),
        }
    }

    /// 1 where a row runs from left to right of the picture as worked with the left hand, −1 where from right to left.
    const fn along(&self) -> f64 {
        match self.hand {
            Hand::Right => -1.0,
            Hand::Left => 1.0,
        }
    }
}

/// `7`, or `7–9` for several.
fn span(from: u32, to: u32) -> String {
    if to > from { [&*from.to_string(), "\u{2013}", &to.to_string()].concat() } else { from.to_string() }
}

fn whole(value: f64) -> i32 {
    libm::round(value) as i32
}
