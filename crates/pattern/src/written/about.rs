//! What a sheet says besides the hat's numbers.

use super::terms::Terms;
use crate::figures::Units;
use hatwright_sizing::Colour;

/// What a sheet says besides the hat's numbers.
#[derive(Clone, Copy, Debug, Default)]
pub struct About<'a> {
    /// The hat's name.
    pub title: &'a str,
    /// Names of the hat's colours, in order; one that is missing is called by its number.
    pub colour_names: &'a [&'a str],
    /// Names of the colours' yarns, in order; one that is missing or empty is not told.
    pub yarn_names: &'a [&'a str],
    /// Whose terms.
    pub terms: Terms,
    /// Which units.
    pub units: Units,
    /// The program's version.
    pub version: &'a str,
    /// Which hand holds the hook.
    pub hand: Hand,
    /// What its designer says of it.
    pub designer: Designer<'a>,
}

/// Which hand holds the hook: a left-handed round runs the other way, and so do its charts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Hand {
    /// The right one: work runs from right to left, a round counter-clockwise seen from outside.
    #[default]
    Right,
    /// The left one: from left to right, and clockwise.
    Left,
}

/// What a designer adds to a pattern: texts as they were typed; an empty one is not told.
#[derive(Clone, Copy, Debug, Default)]
pub struct Designer<'a> {
    /// Their introduction, on any number of lines.
    pub introduction: &'a str,
    /// Whose pattern it is.
    pub credit: &'a str,
    /// Which edition: `2`, `second, corrected`.
    pub edition: &'a str,
    /// Its date, as they write it.
    pub date: &'a str,
    /// What those who tested it found, on any number of lines.
    pub tested: &'a str,
    /// How the hat is washed; the usual advice where it is empty.
    pub care: &'a str,
}

impl About<'_> {
    /// A colour's name.
    pub fn colour(&self, colour: Colour) -> String {
        match self.colour_names.get(usize::from(colour.0)).map(|name| name.trim()) {
            Some(name) if !name.is_empty() => single_line(name),
            _ => ["colour ", &(u32::from(colour.0) + 1).to_string()].concat(),
        }
    }

    /// What a colour's yarn is called, if it has a name.
    pub fn yarn(&self, colour: Colour) -> Option<String> {
        let name = self.yarn_names.get(usize::from(colour.0))?.trim();
        (!name.is_empty()).then(|| single_line(name))
    }
}

/// A name that a person typed, fit to stand inside a line of work: no line break, and no colon that would end a label early.
pub(super) fn single_line(name: &str) -> String {
    name.chars().map(|c| if c.is_control() || c == ':' { ' ' } else { c }).collect()
}
