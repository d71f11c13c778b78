//! The trade's words in US and UK terms, and how a line of operations is told in them.

use super::ops::{Op, Place, Stitch};
use serde::{Deserialize, Serialize};

/// Whose terms a pattern is written in: a US single crochet is a UK double crochet, and a mix-up ruins a hat.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Terms {
    /// United States.
    #[default]
    Us,
    /// United Kingdom.
    Uk,
}

impl Terms {
    /// The words of these terms.
    pub const fn words(self) -> &'static Words {
        match self {
            Self::Us => &US,
            Self::Uk => &UK,
        }
    }
}

/// What the terms call things.
#[derive(Clone, Copy, Debug)]
pub struct Words {
    /// The slip stitch in full.
    pub slip_name: &'static str,
    /// The single (UK double) crochet in full.
    pub single_name: &'static str,
    /// The single (UK double) crochet, abbreviated.
    pub single: &'static str,
    /// To leave a stitch alone.
    pub skip: &'static str,
    /// Stitches and rounds to a length, as a heading.
    pub gauge: &'static str,
    /// Wrapping the hook.
    pub yarn_over: &'static str,
    /// The line that says whose terms these are.
    pub notice: &'static str,
}

const US: Words = Words {
    slip_name: "slip stitch",
    single_name: "single crochet",
    single: "sc",
    skip: "skip",
    gauge: "Gauge",
    yarn_over: "yarn over",
    notice: "Written in US crochet terms: single crochet (sc) here is what UK patterns call double crochet (dc).",
};

const UK: Words = Words {
    slip_name: "slip stitch",
    single_name: "double crochet",
    single: "dc",
    skip: "miss",
    gauge: "Tension",
    yarn_over: "yarn round hook",
    notice: "Written in UK crochet terms: double crochet (dc) here is what US patterns call single crochet (sc).",
};

impl Words {
    const fn abbreviation(&self, stitch: Stitch) -> &'static str {
        match stitch {
            Stitch::Single => self.single,
        }
    }
}

/// A line's work in full, without its number or total: `[sc2tog, 5 sc] × 6, sc2tog, 6 sc`.
///
/// ```
/// use hatwright_pattern::written::{Terms, decrease_line, work_text};
/// assert_eq!(work_text(&decrease_line(54, 6, 0), Terms::Uk), "[dc2tog, 7 dc] × 6");
/// ```
pub fn work_text(ops: &[Op], terms: Terms) -> String {
    let mut text = String::new();
    push_line(&mut text, ops, terms.words(), false);
    text
}

/// A line's work in the fewest words, for a small screen: `sc around`.
pub fn compact_text(ops: &[Op], terms: Terms) -> String {
    let mut text = String::new();
    push_line(&mut text, ops, terms.words(), true);
    text
}

fn push_line(text: &mut String, ops: &[Op], words: &Words, compact: bool) {
    for (i, op) in ops.iter().enumerate() {
        if i > 0 {
            text.push_str(", ");
        }
        push_op(text, op, words, compact);
    }
}

fn push_op(text: &mut String, op: &Op, words: &Words, compact: bool) {
    let mut say = |parts: &[&str]| text.push_str(&parts.concat());
    match op {
        Op::FoundationChain(count) | Op::Chain(count) => say(&["ch ", &count.to_string()]),
        Op::Turn => say(&["turn"]),
        Op::FastenOff => say(&["fasten off"]),
        Op::Gather(count) => say(&["gather ", &count.to_string(), " sts"]),
        Op::Together { stitch, of } => say(&[words.abbreviation(*stitch), &of.to_string(), "tog"]),
        Op::Work { stitch, count: 1, place: Place::BothLoops } => say(&[words.abbreviation(*stitch)]),
        Op::Work { stitch, count, place: Place::BothLoops } => say(&[&count.to_string(), " ", words.abbreviation(*stitch)]),
        Op::Work { stitch, count, place } => say(&[words.abbreviation(*stitch), &next(*count, *place)]),
        Op::Several { stitch, each, count, place } => {
            say(&[&each.to_string(), " ", words.abbreviation(*stitch), &next(*count, *place)]);
        }
        Op::Skip { count, place } => {
            say(&[words.skip, " ", &crate::figures::plural(*count, place_name(*place))]);
        }
        Op::Every { stitch, place, .. } => {
            say(&[words.abbreviation(*stitch), if compact { everywhere_short(*place) } else { everywhere(*place) }]);
        }
        Op::Repeat { ops, times } => {
            text.push('[');
            push_line(text, ops, words, compact);
            text.push_str("] × ");
            text.push_str(&times.to_string());
        }
    }
}

fn next(count: u32, place: Place) -> String {
    let name = place_name(place);
    if count == 1 { [" in next ", name].concat() } else { [" in each of next ", &count.to_string(), " ", name, "s"].concat() }
}

const fn place_name(place: Place) -> &'static str {
    match place {
        Place::BothLoops => "st",
        Place::BackLoop | Place::BackLoopAndFoundation => "back loop",
        Place::RowEnd => "row end",
        Place::FoundationChain => "ch",
    }
}

const fn everywhere(place: Place) -> &'static str {
    match place {
        Place::BothLoops => " in each st around",
        Place::BackLoop => " in back loop of each st across",
        Place::BackLoopAndFoundation => " through back loop of each st and the foundation edge together across",
        Place::RowEnd => " in each row end around",
        Place::FoundationChain => " in 2nd ch from hook and in each ch across",
    }
}

const fn everywhere_short(place: Place) -> &'static str {
    match place {
        Place::BothLoops => " around",
        Place::BackLoop => " in back loops",
        Place::BackLoopAndFoundation => " through back loops and foundation edge",
        Place::RowEnd => " in each row end",
        Place::FoundationChain => " in 2nd ch from hook and on across",
    }
}

/// What a pattern's lines abbreviate, in reading order: each entry is a short form and what it means.
pub(super) fn abbreviations(lines: &[&[Op]], terms: Terms) -> Vec<String> {
    let words = terms.words();
    let mut used = Vec::new();
    for ops in lines {
        find(ops, &mut used);
    }
    let order = [Short::Chain, Short::Single, Short::Together, Short::Stitch, Short::Repeat, Short::Total];
    used.push(Short::Total);
    order.iter().filter(|short| used.contains(short)).map(|short| meaning(*short, words)).collect()
}

/// A short form that a line may use.
#[derive(Clone, Copy, PartialEq)]
enum Short {
    Chain,
    Single,
    Together,
    Stitch,
    Repeat,
    Total,
}

fn meaning(short: Short, words: &Words) -> String {
    let over = words.yarn_over;
    match short {
        Short::Chain => "ch: chain".into(),
        Short::Single => [words.single, ": ", words.single_name].concat(),
        Short::Together => [
            words.single,
            "2tog: ",
            words.single_name,
            " two together, which makes one stitch of two: insert the hook in the next stitch, ",
            over,
            ", pull up a loop; the same in the stitch after it; ",
            over,
            ", pull through all three loops",
        ]
        .concat(),
        Short::Stitch => "st, sts: stitch, stitches".into(),
        Short::Repeat => "[ ] × 6: work what stands between the brackets 6 times in all".into(),
        Short::Total => "(56): the stitches that the row or round has when it is done".into(),
    }
}

fn find(ops: &[Op], used: &mut Vec<Short>) {
    for op in ops {
        match op {
            Op::FoundationChain(_) | Op::Chain(_) => used.push(Short::Chain),
            Op::Gather(_) | Op::Skip { place: Place::BothLoops, .. } => used.push(Short::Stitch),
            Op::Work { stitch, .. } | Op::Several { stitch, .. } => used.push(short_of(*stitch)),
            Op::Every { stitch, place, .. } => {
                used.push(short_of(*stitch));
                match place {
                    Place::FoundationChain => used.push(Short::Chain),
                    Place::RowEnd => {}
                    Place::BothLoops | Place::BackLoop | Place::BackLoopAndFoundation => used.push(Short::Stitch),
                }
            }
            Op::Turn | Op::FastenOff | Op::Skip { .. } => {}
            Op::Together { .. } => used.push(Short::Together),
            Op::Repeat { ops, .. } => {
                used.push(Short::Repeat);
                find(ops, used);
            }
        }
    }
}

const fn short_of(stitch: Stitch) -> Short {
    match stitch {
        Stitch::Single => Short::Single,
    }
}

#[cfg(test)]
mod tests {
    use super::super::decrease_line;
    use super::*;

    #[test]
    fn only_what_is_used_is_explained() {
        let (plain, shaped) = (decrease_line(56, 0, 0), decrease_line(54, 6, 0));
        let heads = |lines: &[&[Op]]| -> Vec<String> {
            abbreviations(lines, Terms::Uk)
                .iter()
                .filter_map(|entry| entry.split_once(':').map(|(short, _)| short.into()))
                .collect()
        };
        assert_eq!(heads(&[&plain]), ["dc", "st, sts", "(56)"]);
        assert_eq!(heads(&[&shaped]), ["dc", "dc2tog", "[ ] × 6", "(56)"]);
    }

    #[test]
    fn small_screens_get_fewer_words() {
        assert_eq!(compact_text(&decrease_line(56, 0, 0), Terms::Us), "sc around");
        assert_eq!(compact_text(&decrease_line(54, 6, 0), Terms::Us), "[sc2tog, 7 sc] × 6");
    }
}
