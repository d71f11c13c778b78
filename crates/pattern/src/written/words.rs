//! How a line of operations is told.

use super::ops::{Op, Place};
use super::terms::{Terms, Words};
use crate::figures::plural;
use hatwright_sizing::Loops;

/// A line's work in full, without its number or total: `[sc2tog, 5 sc] × 6, sc2tog, 6 sc`.
///
/// ```
/// use hatwright_pattern::written::{Terms, decrease_line, work_text};
/// use hatwright_sizing::Stitch;
/// assert_eq!(work_text(&decrease_line(Stitch::Single, 54, 6, 0), Terms::Uk), "[dc2tog, 7 dc] × 6");
/// assert_eq!(work_text(&decrease_line(Stitch::Double, 54, 6, 0), Terms::Uk), "[tr2tog, 7 tr] × 6");
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
        Op::LooseChain(count) => say(&["ch ", &count.to_string(), " with a larger hook"]),
        Op::FoundationStitches { stitch, count } => say(&[&count.to_string(), " foundation ", words.short(*stitch)]),
        Op::JoinIntoRing => say(&["join into a ring"]),
        Op::Ring { stitch, count } => say(&[&count.to_string(), " ", words.short(*stitch), " in an adjustable ring"]),
        Op::Turn => say(&["turn"]),
        Op::Join => say(&["join"]),
        Op::FastenOff => say(&["fasten off"]),
        Op::Gather(count) => say(&["gather ", &count.to_string(), " sts"]),
        Op::GatherRowEnds(count) => say(&["gather ", &count.to_string(), " row ends"]),
        Op::LeaveRest(_) => say(&["leave the rest"]),
        Op::AsRows { from, to } => say(&["as rows ", &from.to_string(), "–", &to.to_string(), ", over and over"]),
        Op::Together { stitch, of } => say(&[words.short(*stitch), &of.to_string(), "tog"]),
        Op::Work { stitch, count: 1, place: Place::FrontPost } => say(&["fp", words.short(*stitch)]),
        Op::Work { stitch, count: 1, place: Place::BackPost } => say(&["bp", words.short(*stitch)]),
        Op::Work { stitch, count: 1, place: Place::Stitch } => say(&[words.short(*stitch)]),
        Op::Work { stitch, count, place: Place::Stitch } => say(&[&count.to_string(), " ", words.short(*stitch)]),
        Op::Work { stitch, count, place } => say(&[words.short(*stitch), &next(*count, *place)]),
        Op::Several { stitch, each, count, place } => {
            say(&[&each.to_string(), " ", words.short(*stitch), &next(*count, *place)]);
        }
        Op::Skip { count, place } => say(&[words.skip, " ", &plural(*count, noun(*place))]),
        Op::Every { stitch, each, place, .. } => {
            if *each > 1 {
                say(&[&each.to_string(), " "]);
            }
            say(&[words.short(*stitch), &everywhere(*place, compact)]);
        }
        Op::Repeat { ops, times } => {
            text.push('[');
            push_line(text, ops, words, compact);
            text.push_str("] × ");
            text.push_str(&times.to_string());
        }
    }
}

/// ` in next row end`, ` in back loop of each of next 20 sts`.
fn next(count: u32, place: Place) -> String {
    let (before, after) = match place {
        Place::Row(Loops::Back) => ("back loop of ", ""),
        Place::Row(Loops::Front) => ("front loop of ", ""),
        Place::Edge | Place::EdgeRowEnd => ("", " of the edge"),
        _ => ("", ""),
    };
    if count == 1 {
        [" in ", before, "next ", noun(place), after].concat()
    } else {
        [" in ", before, "each of next ", &count.to_string(), " ", noun(place), "s", after].concat()
    }
}

const fn noun(place: Place) -> &'static str {
    match place {
        Place::RowEnd | Place::EdgeRowEnd => "row end",
        Place::ChainFrom(_) | Place::RingChain => "ch",
        Place::Stitch
        | Place::Row(_)
        | Place::RowAndFoundation(_)
        | Place::FoundationEdge
        | Place::Edge
        | Place::FrontPost
        | Place::BackPost => "st",
    }
}

fn everywhere(place: Place, compact: bool) -> String {
    let text = match (place, compact) {
        (Place::ChainFrom(first), _) => {
            let rest = if compact { " ch from hook and on across" } else { " ch from hook and in each ch across" };
            return [" in ", &ordinal(first), rest].concat();
        }
        (Place::Stitch, true) => " around",
        (Place::Stitch | Place::FrontPost | Place::BackPost, _) => " in each st around",
        (Place::RowEnd, true) => " in each row end",
        (Place::RowEnd, false) => " in each row end around",
        (Place::RingChain, _) => " in each ch around",
        (Place::FoundationEdge, true) => " in the foundation edge",
        (Place::FoundationEdge, false) => " in each st of the foundation edge around",
        (Place::Edge, _) => " in each st of the edge",
        (Place::EdgeRowEnd, _) => " in each row end of the edge",
        (Place::Row(Loops::Back), true) => " in back loops",
        (Place::Row(Loops::Front), true) => " in front loops",
        (Place::Row(_), true) => " across",
        (Place::Row(Loops::Back), false) => " in back loop of each st across",
        (Place::Row(Loops::Front), false) => " in front loop of each st across",
        (Place::Row(_), false) => " in each st across",
        (Place::RowAndFoundation(Loops::Back), true) => " through back loops and foundation edge",
        (Place::RowAndFoundation(Loops::Front), true) => " through front loops and foundation edge",
        (Place::RowAndFoundation(_), true) => " through stitches and foundation edge",
        (Place::RowAndFoundation(Loops::Back), false) => " through back loop of each st and the foundation edge together across",
        (Place::RowAndFoundation(Loops::Front), false) => {
            " through front loop of each st and the foundation edge together across"
        }
        (Place::RowAndFoundation(_), false) => " through each st and the foundation edge together across",
    };
    text.into()
}

/// `2nd`, `3rd`, `4th`: a turning chain and one more.
fn ordinal(number: u32) -> String {
    let end = match number {
        2 => "nd",
        3 => "rd",
        _ => "th",
    };
    [&number.to_string(), end].concat()
}

#[cfg(test)]
mod tests {
    use super::super::lines::{decrease_line, increase_line};
    use super::*;
    use hatwright_sizing::Stitch;

    #[test]
    fn small_screens_get_fewer_words() {
        assert_eq!(compact_text(&decrease_line(Stitch::Single, 56, 0, 0), Terms::Us), "sc around");
        assert_eq!(compact_text(&decrease_line(Stitch::Single, 54, 6, 0), Terms::Us), "[sc2tog, 7 sc] × 6");
        assert_eq!(compact_text(&increase_line(Stitch::HalfDouble, 8, 8, 0), Terms::Uk), "2 htr around");
    }

    #[test]
    fn places_are_told() {
        let every = |place| work_text(&[Op::Every { stitch: Stitch::Double, each: 1, count: 10, place }], Terms::Us);
        for (place, text) in [
            (Place::ChainFrom(4), "dc in 4th ch from hook and in each ch across"),
            (Place::ChainFrom(3), "dc in 3rd ch from hook and in each ch across"),
            (Place::Row(Loops::Both), "dc in each st across"),
            (Place::Row(Loops::Front), "dc in front loop of each st across"),
            (Place::RowAndFoundation(Loops::Both), "dc through each st and the foundation edge together across"),
            (Place::RingChain, "dc in each ch around"),
            (Place::FoundationEdge, "dc in each st of the foundation edge around"),
        ] {
            assert_eq!(every(place), text);
        }
        let some = |count, place| work_text(&[Op::Work { stitch: Stitch::Single, count, place }], Terms::Uk);
        assert_eq!(some(9, Place::Edge), "dc in each of next 9 sts of the edge");
        assert_eq!(some(9, Place::EdgeRowEnd), "dc in each of next 9 row ends of the edge");
        assert_eq!(some(20, Place::Row(Loops::Back)), "dc in back loop of each of next 20 sts");
        assert_eq!(some(1, Place::Row(Loops::Back)), "dc in back loop of next st");
        assert_eq!(some(20, Place::Row(Loops::Both)), "dc in each of next 20 sts");
        assert_eq!(some(1, Place::FrontPost), "fpdc");
        let ops = [Op::FoundationStitches { stitch: Stitch::HalfDouble, count: 80 }, Op::JoinIntoRing];
        assert_eq!(work_text(&ops, Terms::Uk), "80 foundation htr, join into a ring");
    }
}
