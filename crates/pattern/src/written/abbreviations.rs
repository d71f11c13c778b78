//! What a pattern's lines abbreviate, and how each is made.

use super::about::Hand;
use super::ops::{Op, Place};
use super::terms::{Terms, Words};
use hatwright_sizing::{Loops, Stitch, Way};
use hatwright_words::lines as say;

/// A short form, or a word of the trade, that a line may use.
#[derive(Clone, Copy, PartialEq)]
enum Short {
    Chain,
    Plain(Stitch),
    Post(Stitch),
    Together(Stitch),
    Foundation(Stitch),
    Ring,
    Join,
    Loops,
    RowEnd,
    Stitch,
    Repeat,
    Total,
}

const TALLEST_LAST: [Stitch; 4] = [Stitch::Slip, Stitch::Single, Stitch::HalfDouble, Stitch::Double];

/// What is spoken of around the lines, and needs explaining as what they abbreviate does.
#[derive(Clone, Debug, Default)]
pub(super) struct Spoken {
    /// Stitches.
    pub stitches: Vec<Stitch>,
    /// The back or the front loop.
    pub loops: bool,
}

/// What a pattern's lines abbreviate, in reading order: each entry is a short form, what it means and how it is made.
///
/// `chain` is how many chains begin a joined round of the body; a spiral needs one to start its ring.
pub(super) fn abbreviations(lines: &[&[Op]], spoken: &Spoken, way: Way, chain: u32, (terms, hand): (Terms, Hand)) -> Vec<String> {
    let words = terms.words();
    let mut used = vec![Short::Total];
    used.extend(spoken.stitches.iter().copied().map(Short::Plain));
    used.extend(spoken.loops.then_some(Short::Loops));
    for ops in lines {
        find(ops, &mut used);
    }
    let mut order = vec![Short::Chain];
    order.extend(TALLEST_LAST.map(Short::Plain));
    order.extend(TALLEST_LAST.map(Short::Together));
    order.extend(TALLEST_LAST.map(Short::Post));
    order.extend(TALLEST_LAST.map(Short::Foundation));
    order.extend([Short::Ring, Short::Join, Short::Loops, Short::RowEnd, Short::Stitch, Short::Repeat, Short::Total]);
    let start = if way == Way::Joined { chain } else { 1 };
    order.iter().filter(|short| used.contains(short)).map(|short| meaning(*short, &words, start, hand)).collect()
}

/// The stitches that a pattern's lines use or that are spoken of besides, shortest first.
pub(super) fn stitches(lines: &[&[Op]], named: &[Stitch]) -> Vec<Stitch> {
    let mut used: Vec<Short> = named.iter().copied().map(Short::Plain).collect();
    for ops in lines {
        find(ops, &mut used);
    }
    let is = |stitch: Stitch| {
        [Short::Plain(stitch), Short::Post(stitch), Short::Together(stitch), Short::Foundation(stitch)]
            .iter()
            .any(|s| used.contains(s))
    };
    TALLEST_LAST.into_iter().filter(|stitch| is(*stitch)).collect()
}

fn meaning(short: Short, words: &Words, start: u32, hand: Hand) -> String {
    let over = words.yarn_over;
    let named = |stitch: Stitch| (words.short(stitch), words.name(stitch));
    match short {
        Short::Chain => say::meaning_chain().into(),
        Short::Plain(stitch) => {
            let told = match stitch {
                Stitch::Slip => say::meaning_slip,
                Stitch::Single => say::meaning_single,
                Stitch::HalfDouble => say::meaning_half,
                Stitch::Double => say::meaning_double,
            };
            let (short, name) = named(stitch);
            told(short, name, over)
        }
        Short::Post(stitch) => {
            let (short, name) = named(stitch);
            match hand {
                Hand::Right => say::meaning_post(short, name),
                Hand::Left => say::meaning_post_left(short, name),
            }
        }
        Short::Together(stitch) => {
            let told = match stitch {
                Stitch::Slip | Stitch::Single => say::meaning_together_single,
                Stitch::HalfDouble => say::meaning_together_half,
                Stitch::Double => say::meaning_together_double,
            };
            let (short, name) = named(stitch);
            told(short, name, over)
        }
        Short::Foundation(stitch) => {
            let told = match stitch {
                Stitch::Slip | Stitch::Single => say::meaning_foundation_single,
                Stitch::HalfDouble => say::meaning_foundation_half,
                Stitch::Double => say::meaning_foundation_double,
            };
            told(words.short(stitch), over)
        }
        Short::Ring => say::meaning_ring(start),
        Short::Join => say::meaning_join().into(),
        Short::Loops => say::meaning_loops().into(),
        Short::RowEnd => say::meaning_row_end().into(),
        Short::Stitch => say::meaning_stitch().into(),
        Short::Repeat => say::meaning_repeat().into(),
        Short::Total => say::meaning_total().into(),
    }
}

fn find(ops: &[Op], used: &mut Vec<Short>) {
    for op in ops {
        match op {
            Op::FoundationChain(_) | Op::Chain(_) | Op::LooseChain(_) => used.push(Short::Chain),
            // How these two begin is told with chains.
            Op::FoundationStitches { stitch, .. } => {
                used.extend([Short::Chain, Short::Foundation(*stitch), Short::Plain(*stitch)]);
            }
            Op::Ring { stitch, .. } => used.extend([Short::Chain, Short::Ring, Short::Plain(*stitch)]),
            Op::Join => used.push(Short::Join),
            Op::Gather(_) => used.push(Short::Stitch),
            Op::Work { stitch, place: Place::FrontPost | Place::BackPost, .. } => {
                used.extend([Short::Post(*stitch), Short::Plain(*stitch)]);
            }
            Op::Work { stitch, place: Place::Stitch, .. } => used.push(Short::Plain(*stitch)),
            Op::Work { stitch, place, .. } | Op::Several { stitch, place, .. } | Op::Every { stitch, place, .. } => {
                used.push(Short::Plain(*stitch));
                find_place(*place, used);
            }
            Op::Skip { place, .. } => find_place(*place, used),
            Op::GatherRowEnds(_) => used.push(Short::RowEnd),
            Op::Turn | Op::FastenOff | Op::JoinIntoRing | Op::LeaveRest(_) | Op::AsRows { .. } => {}
            Op::Together { stitch, .. } => used.extend([Short::Together(*stitch), Short::Plain(*stitch)]),
            Op::Repeat { ops, .. } => {
                used.push(Short::Repeat);
                find(ops, used);
            }
        }
    }
}

fn find_place(place: Place, used: &mut Vec<Short>) {
    match place {
        Place::ChainFrom(_) | Place::RingChain => used.push(Short::Chain),
        Place::RowEnd | Place::EdgeRowEnd => used.push(Short::RowEnd),
        Place::Row(loops) | Place::RowAndFoundation(loops) => {
            used.push(Short::Stitch);
            if matches!(loops, Loops::Back | Loops::Front) {
                used.push(Short::Loops);
            }
        }
        Place::Stitch | Place::FoundationEdge | Place::Edge | Place::FrontPost | Place::BackPost => used.push(Short::Stitch),
    }
}

#[cfg(test)]
mod tests {
    use super::super::lines::{decrease_line, increase_line};
    use super::super::terms::notice;
    use super::*;
    use hatwright_words::{Language, in_language};

    fn heads(lines: &[&[Op]], terms: Terms) -> Vec<String> {
        let list = abbreviations(lines, &Spoken::default(), Way::Joined, 2, (terms, Hand::Right));
        list.iter().filter_map(|entry| entry.split_once(':').map(|(short, _)| short.into())).collect()
    }

    #[test]
    fn only_what_is_used_is_explained() {
        let (plain, shaped) = (decrease_line(Stitch::Single, 56, 0, 0), decrease_line(Stitch::Single, 54, 6, 0));
        assert_eq!(heads(&[&plain], Terms::Uk), ["dc", "st, sts", "(56)"]);
        assert_eq!(heads(&[&shaped], Terms::Uk), ["dc", "dc2tog", "[ ] × 6", "(56)"]);
        let ring = [Op::Ring { stitch: Stitch::HalfDouble, count: 8 }, Op::Join];
        let wider = increase_line(Stitch::HalfDouble, 8, 8, 0);
        assert_eq!(heads(&[&ring, &wider], Terms::Us), ["ch", "hdc", "adjustable ring", "join", "st, sts", "(56)"]);
        let list = abbreviations(&[&ring], &Spoken::default(), Way::Joined, 2, (Terms::Us, Hand::Right));
        assert!(list[2].contains("ch 2, which is not counted"), "{}", list[2]);
    }

    #[test]
    fn every_stitch_says_how_it_is_made() {
        for stitch in TALLEST_LAST {
            let ops = [
                Op::Work { stitch, count: 2, place: Place::Stitch },
                Op::Together { stitch, of: 2 },
                Op::FoundationStitches { stitch, count: 9 },
                Op::Work { stitch, count: 1, place: Place::FrontPost },
            ];
            for terms in [Terms::Us, Terms::Uk] {
                let list = abbreviations(&[&ops], &Spoken::default(), Way::Spiral, 1, (terms, Hand::Right));
                assert_eq!(list.len(), 6);
                let other = if terms == Terms::Us { "yarn round hook" } else { "yarn over" };
                assert!(list.iter().all(|entry| !entry.contains(other) && !entry.contains("  ")), "{list:?}");
            }
        }
        let together = meaning(Short::Together(Stitch::HalfDouble), &Terms::Us.words(), 1, Hand::Right);
        assert!(together.starts_with("hdc2tog: half double crochet two together") && together.ends_with("all five loops"));
    }

    #[test]
    fn the_notice_names_the_stitches_that_are_used() {
        let tall = [Op::Work { stitch: Stitch::HalfDouble, count: 2, place: Place::Stitch }];
        assert_eq!(
            notice(&stitches(&[&tall], &[]), Terms::Us),
            "Written in US crochet terms: half double crochet (hdc) here is what UK patterns call half treble crochet (htr)."
        );
        assert_eq!(
            notice(&[Stitch::Slip, Stitch::Single, Stitch::Double], Terms::Uk),
            "Written in UK crochet terms: double crochet (dc) here is what US patterns call single crochet (sc), and treble crochet (tr) \
             here is what US patterns call double crochet (dc)."
        );
        assert_eq!(notice(&[Stitch::Slip], Terms::Us), "Written in US crochet terms: slip stitch (sl st) is the same in both.");
    }

    #[test]
    fn around_a_post_the_left_hand_goes_the_other_way() {
        let post = [Op::Work { stitch: Stitch::Double, count: 1, place: Place::FrontPost }];
        let told = |hand| abbreviations(&[&post], &Spoken::default(), Way::Spiral, 1, (Terms::Us, hand)).join("\n");
        let (right, left) = (told(Hand::Right), told(Hand::Left));
        assert!(right.contains("to the right of the post") && !right.contains("left"), "{right}");
        assert_eq!(right.replace("to the right of", "to the left of"), left);
    }

    #[test]
    fn spanish_explains_its_own_and_names_the_others() {
        in_language(Language::Spanish, || {
            let shaped = decrease_line(Stitch::Single, 54, 6, 0);
            assert_eq!(heads(&[&shaped], Terms::Spanish), ["pb", "pb2jun", "[ ] × 6", "(56)"]);
            assert_eq!(
                notice(&[Stitch::Slip, Stitch::Single], Terms::Spanish),
                "Escrito con los términos de ganchillo de España: punto raso (pr) es el slip stitch (sl st) de los patrones de Estados \
                 Unidos y del Reino Unido; punto bajo (pb) es lo que los patrones de Estados Unidos llaman single crochet (sc) y los del \
                 Reino Unido double crochet (dc). En varios países de América se usan otras palabras: punto deslizado por punto raso, medio \
                 punto por punto bajo (de memoria, sin fuente)."
            );
            assert_eq!(
                notice(&[Stitch::Double], Terms::Us),
                "Escrito con los términos de ganchillo de Estados Unidos: double crochet (dc) es aquí lo que en Reino Unido \
                 se llama treble crochet (tr)."
            );
        });
    }
}
