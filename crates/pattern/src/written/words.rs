//! How a line of operations is told.

use super::ops::{Op, Place};
use super::terms::{Terms, Words};
use hatwright_sizing::{Loops, Stitch};
use hatwright_words::lines as say;

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
    push_line(&mut text, ops, &terms.words(), false);
    text
}

/// A line's work in the fewest words, for a small screen: `sc around`.
pub fn compact_text(ops: &[Op], terms: Terms) -> String {
    let mut text = String::new();
    push_line(&mut text, ops, &terms.words(), true);
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
    let short = |stitch: &Stitch| words.short(*stitch);
    let told = match op {
        Op::FoundationChain(count) | Op::Chain(count) => say::chain(*count),
        Op::LooseChain(count) => say::loose_chain(*count),
        Op::FoundationStitches { stitch, count } => say::foundation_stitches(*count, short(stitch)),
        Op::Ring { stitch, count } => say::ring(*count, short(stitch)),
        Op::JoinIntoRing => return text.push_str(say::join_into_ring()),
        Op::Turn => return text.push_str(say::turn()),
        Op::Join => return text.push_str(say::join()),
        Op::FastenOff => return text.push_str(say::fasten_off()),
        Op::LeaveRest(_) => return text.push_str(say::leave_rest()),
        Op::Gather(count) => say::gather(*count),
        Op::GatherRowEnds(count) => say::gather_row_ends(*count),
        Op::AsRows { from, to } => say::as_rows(*from, *to),
        Op::Together { stitch, of } => say::together(short(stitch), *of),
        Op::Work { stitch, count: 1, place: Place::FrontPost } => say::front_post(short(stitch)),
        Op::Work { stitch, count: 1, place: Place::BackPost } => say::back_post(short(stitch)),
        Op::Work { stitch, count: 1, place: Place::Stitch } => return text.push_str(short(stitch)),
        Op::Work { stitch, count, place: Place::Stitch } => say::several(*count, short(stitch)),
        Op::Work { stitch, count, place } => next(short(stitch), *count, *place),
        Op::Several { stitch, each, count, place } => next(&say::several(*each, short(stitch)), *count, *place),
        Op::Skip { count, place } => skip(words.skip, *count, *place),
        Op::Every { stitch, each: 1, place, .. } => everywhere(short(stitch), *place, compact),
        Op::Every { stitch, each, place, .. } => everywhere(&say::several(*each, short(stitch)), *place, compact),
        Op::Repeat { ops, times } => {
            text.push('[');
            push_line(text, ops, words, compact);
            text.push_str("] × ");
            times.to_string()
        }
    };
    text.push_str(&told);
}

fn skip(skip: &str, count: u32, place: Place) -> String {
    match place {
        Place::RowEnd | Place::EdgeRowEnd => say::skip_row_ends(skip, count),
        Place::ChainFrom(_) | Place::RingChain => say::skip_chains(skip, count),
        _ => say::skip_sts(skip, count),
    }
}

/// `sc in next row end`, `sc in back loop of each of next 20 sts`.
fn next(work: &str, count: u32, place: Place) -> String {
    let one = count == 1;
    match place {
        Place::RowEnd if one => say::next_row_end(work),
        Place::RowEnd => say::next_row_ends(work, count),
        Place::ChainFrom(_) | Place::RingChain if one => say::next_ch(work),
        Place::ChainFrom(_) | Place::RingChain => say::next_chs(work, count),
        Place::Edge if one => say::next_edge_st(work),
        Place::Edge => say::next_edge_sts(work, count),
        Place::EdgeRowEnd if one => say::next_edge_row_end(work),
        Place::EdgeRowEnd => say::next_edge_row_ends(work, count),
        Place::Row(Loops::Back) if one => say::next_back(work),
        Place::Row(Loops::Back) => say::next_backs(work, count),
        Place::Row(Loops::Front) if one => say::next_front(work),
        Place::Row(Loops::Front) => say::next_fronts(work, count),
        _ if one => say::next_st(work),
        _ => say::next_sts(work, count),
    }
}

fn everywhere(work: &str, place: Place, compact: bool) -> String {
    let told = match (place, compact) {
        (Place::ChainFrom(first), false) => return say::from_chain(work, &ordinal(first)),
        (Place::ChainFrom(first), true) => return say::from_chain_short(work, &ordinal(first)),
        (Place::Stitch, true) => say::around_short,
        (Place::Stitch | Place::FrontPost | Place::BackPost, _) => say::around,
        (Place::RowEnd, true) => say::row_ends_short,
        (Place::RowEnd, false) => say::row_ends,
        (Place::RingChain, _) => say::ring_chain,
        (Place::FoundationEdge, true) => say::foundation_edge_short,
        (Place::FoundationEdge, false) => say::foundation_edge,
        (Place::Edge, _) => say::edge,
        (Place::EdgeRowEnd, _) => say::edge_row_ends,
        (Place::Row(Loops::Back), true) => say::across_back_short,
        (Place::Row(Loops::Back), false) => say::across_back,
        (Place::Row(Loops::Front), true) => say::across_front_short,
        (Place::Row(Loops::Front), false) => say::across_front,
        (Place::Row(_), true) => say::across_short,
        (Place::Row(_), false) => say::across,
        (Place::RowAndFoundation(Loops::Back), true) => say::closing_back_short,
        (Place::RowAndFoundation(Loops::Back), false) => say::closing_back,
        (Place::RowAndFoundation(Loops::Front), true) => say::closing_front_short,
        (Place::RowAndFoundation(Loops::Front), false) => say::closing_front,
        (Place::RowAndFoundation(_), true) => say::closing_short,
        (Place::RowAndFoundation(_), false) => say::closing,
    };
    told(work)
}

/// `2nd`, `3rd`, `4th`: a turning chain and one more.
fn ordinal(number: u32) -> String {
    match number {
        2 => say::nth_2().into(),
        3 => say::nth_3().into(),
        _ => say::nth(number),
    }
}

#[cfg(test)]
mod tests {
    use super::super::lines::{decrease_line, increase_line};
    use super::*;
    use hatwright_words::{Language, in_language};

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

    #[test]
    fn spanish_lines_read_as_its_patterns_do() {
        in_language(Language::Spanish, || {
            let told = |ops: &[Op]| work_text(ops, Terms::Spanish);
            assert_eq!(told(&decrease_line(Stitch::Single, 50, 7, 0)), "[pb2jun, 5 pb] × 6, pb2jun, 6 pb");
            assert_eq!(told(&increase_line(Stitch::HalfDouble, 36, 6, 0)), "[2 mpa en el p siguiente, 5 mpa] × 6");
            assert_eq!(told(&increase_line(Stitch::Double, 6, 6, 0)), "2 pa en cada p alrededor");
            assert_eq!(compact_text(&increase_line(Stitch::Double, 6, 6, 0), Terms::Spanish), "2 pa alrededor");
            let every = |stitch, place| told(&[Op::Every { stitch, each: 1, count: 10, place }]);
            let across = "a través de la hebra trasera de cada p y del borde de la base a la vez hasta el final";
            for (stitch, place, text) in [
                (Stitch::Single, Place::ChainFrom(2), "pb en la 2.ª cad desde la aguja y en cada cad hasta el final"),
                (Stitch::Double, Place::ChainFrom(4), "pa en la 4.ª cad desde la aguja y en cada cad hasta el final"),
                (Stitch::Slip, Place::RowAndFoundation(Loops::Back), &["pr ", across].concat()),
                (Stitch::Single, Place::RingChain, "pb en cada cad alrededor"),
                (Stitch::Single, Place::FoundationEdge, "pb en cada p del borde de la base alrededor"),
            ] {
                assert_eq!(every(stitch, place), text);
            }
            let some = |count, place| told(&[Op::Work { stitch: Stitch::Single, count, place }]);
            assert_eq!(some(9, Place::EdgeRowEnd), "pb en cada uno de los 9 extremos de hilera siguientes del borde");
            assert_eq!(some(1, Place::Row(Loops::Back)), "pb en la hebra trasera del p siguiente");
            assert_eq!(some(1, Place::BackPost), "pbrt");
            let skip = |count| told(&[Op::Skip { count, place: Place::RowEnd }]);
            assert_eq!((skip(1), skip(2)), ("saltar 1 extremo de hilera".into(), "saltar 2 extremos de hilera".into()));
            assert_eq!(told(&[Op::FastenOff, Op::Gather(9)]), "cortar el hilo y rematar, fruncir 9 ps");
            assert_eq!(told(&[Op::Chain(1), Op::Turn]), "1 cad, girar");
            assert_eq!(told(&[Op::LooseChain(80), Op::JoinIntoRing]), "80 cad con una aguja más gruesa, unir en anillo");
        });
    }
}
