//! What a sheet says besides the hat's numbers.

use super::terms::Terms;
use crate::figures::Units;
use hatwright_sizing::Colour;
use hatwright_words::lines as say;

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

/// Which hand holds the hook: left-handed work runs the other way, and so do its charts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Hand {
    /// The right one: work runs from right to left.
    #[default]
    Right,
    /// The left one: from left to right.
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
            _ => say::colour(u32::from(colour.0) + 1),
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

/// A person's text as paragraphs, one to each of its lines that says anything. One that would be taken for a line of work, or for the rule
/// under a heading, is led by a dash.
pub(super) fn paragraphs(text: &str) -> Vec<String> {
    let clean = |line: &str| -> String { line.chars().map(|c| if c.is_control() { ' ' } else { c }).collect() };
    let lines = text.split(['\n', '\r', '\u{85}', '\u{2028}', '\u{2029}']).map(|line| clean(line).trim().to_owned());
    lines.filter(|line| !line.is_empty()).map(|line| if collides(&line) { ["— ", &line].concat() } else { line }).collect()
}

/// Whether a paragraph begins as a line of the pattern does, in the language that is spoken: with the word of a label, or as a rule.
fn collides(line: &str) -> bool {
    let labels = [say::foundation(), say::join_label(), say::seam(), say::tie(), say::last()];
    let numbered = [say::row(1), say::rows(1, 2), say::round(1), say::rounds(1, 2)];
    let nouns = numbered.iter().filter_map(|label| label.split(' ').next());
    // `Row 3: ` and `Base, indigo: `, however they are written; a word that only begins so, `Rowing`, is none.
    let word = line.split(|c: char| !c.is_alphabetic()).next().unwrap_or_default();
    let labelled = nouns.chain(labels).any(|label| word.to_lowercase() == label.to_lowercase());
    labelled || line.chars().all(|c| c == '-')
}

#[cfg(test)]
mod tests {
    use super::paragraphs;
    use hatwright_words::{Language, in_language};

    #[test]
    fn what_a_person_typed_is_never_a_line_of_work() {
        let typed = "  For cold mornings.\r\n\n\tRow 3: a joke.\nRowing is fun.\n----\nseam, weld: none";
        let told = ["For cold mornings.", "— Row 3: a joke.", "Rowing is fun.", "— ----", "— seam, weld: none"];
        assert_eq!(paragraphs(typed), told);
        assert_eq!(paragraphs(" \n"), Vec::<String>::new());
        in_language(Language::Spanish, || {
            let told = ["— Vueltas 2–5: nada.", "Row 3: a joke.", "— Cordón: ninguno."];
            assert_eq!(paragraphs("Vueltas 2–5: nada.\nRow 3: a joke.\nCordón: ninguno."), told);
        });
    }
}
