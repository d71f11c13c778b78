//! What a pattern's lines abbreviate, and how each is made.

use super::ops::{Op, Place};
use super::terms::{Terms, Words};
use hatwright_sizing::{Loops, Stitch, Way};

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

/// What a pattern's lines abbreviate, in reading order: each entry is a short form, what it means and how it is made.
///
/// `named` are stitches that are spoken of besides; `chain` is how many chains begin a joined round of the body; a spiral needs one to start its ring.
pub(super) fn abbreviations(lines: &[&[Op]], named: &[Stitch], way: Way, chain: u32, terms: Terms) -> Vec<String> {
    let words = terms.words();
    let mut used = vec![Short::Total];
    used.extend(named.iter().copied().map(Short::Plain));
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
    order.iter().filter(|short| used.contains(short)).map(|short| meaning(*short, words, start)).collect()
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

fn meaning(short: Short, words: &Words, start: u32) -> String {
    let over = words.yarn_over;
    match short {
        Short::Chain => "ch: chain".into(),
        Short::Plain(stitch) => {
            [words.short(stitch), ": ", words.name(stitch), ": ", &opening(stitch, over), &closing(stitch, over)].concat()
        }
        Short::Post(stitch) => {
            let (st, name) = (words.short(stitch), words.name(stitch));
            let mut text = [
                "fp",
                st,
                ", bp",
                st,
                ": front post and back post ",
                name,
                ": the same stitch, but with the hook around the \
                             post of the stitch below, not in its top. ",
            ]
            .concat();
            text.push_str(
                "From the front: in from the front to the right of the post, behind it, and out to the front again. From the \
                           back: in from the back, in front of it, and out to the back",
            );
            text
        }
        Short::Together(stitch) => together(stitch, words),
        Short::Foundation(stitch) => foundation(stitch, words),
        Short::Ring => {
            let chains = start.to_string();
            ["adjustable ring: lay the yarn into a loop around two fingers, the end behind; draw up a loop through it and ch ", &chains,
                ", which is not counted; work the stitches over the loop and the end together, then pull the end until the ring is closed"]
            .concat()
        }
        Short::Join => "join: slip stitch in the first stitch of the round, not in the chain before it; it is not counted".into(),
        Short::Loops => {
            "back loop, front loop: of the two loops at the top of a stitch, the one farther from you, and the one nearer to you"
                .into()
        }
        Short::RowEnd => "row end: the side of a row's last or first stitch, at the edge".into(),
        Short::Stitch => "st, sts: stitch, stitches".into(),
        Short::Repeat => "[ ] × 6: work what stands between the brackets 6 times in all".into(),
        Short::Total => "(56): the stitches that the row or round has when it is done".into(),
    }
}

/// Up to the loops that the last wrap closes.
fn opening(stitch: Stitch, over: &str) -> String {
    match stitch {
        Stitch::Slip => ["insert the hook, ", over].concat(),
        Stitch::Single => ["insert the hook, ", over, ", pull up a loop"].concat(),
        Stitch::HalfDouble | Stitch::Double => [over, ", insert the hook, ", over, ", pull up a loop"].concat(),
    }
}

fn closing(stitch: Stitch, over: &str) -> String {
    match stitch {
        Stitch::Slip => ", pull through the work and the loop on the hook at once".into(),
        Stitch::Single => ["; ", over, ", pull through both loops"].concat(),
        Stitch::HalfDouble => ["; ", over, ", pull through all three loops"].concat(),
        Stitch::Double => ["; ", over, ", pull through two loops, twice"].concat(),
    }
}

fn together(stitch: Stitch, words: &Words) -> String {
    let over = words.yarn_over;
    let mut text = [words.short(stitch), "2tog: ", words.name(stitch), " two together, which makes one stitch of two: "].concat();
    let (each, last) = match stitch {
        Stitch::Slip | Stitch::Single => (["insert the hook in the next stitch, ", over, ", pull up a loop"].concat(), "three"),
        Stitch::HalfDouble => ([over, ", insert the hook in the next stitch, ", over, ", pull up a loop"].concat(), "five"),
        Stitch::Double => (
            [over, ", insert the hook in the next stitch, ", over, ", pull up a loop, ", over, ", pull through two loops"]
                .concat(),
            "three",
        ),
    };
    text.push_str(&[&each, "; the same in the stitch after it; ", over, ", pull through all ", last, " loops"].concat());
    text
}

fn foundation(stitch: Stitch, words: &Words) -> String {
    let over = words.yarn_over;
    let name = words.short(stitch);
    let chains = if stitch == Stitch::Double { "3" } else { "2" };
    let wrap = if stitch <= Stitch::Single { String::new() } else { [over, ", "].concat() };
    let mut text =
        ["foundation ", name, ": the first stitch and the chain at its foot in one, so that the edge stretches: ch "].concat();
    text.push_str(
        &[chains, "; ", &wrap, "insert the hook in the first of these chains, ", over, ", pull up a loop; ", over].concat(),
    );
    text.push_str(", pull through one loop: that is the chain at the foot; then close the ");
    text.push_str(&[name, " as usual (", closing(stitch, over).trim_start_matches("; "), "). "].concat());
    text.push_str(
        &["Each next one: ", &wrap, "insert the hook in the chain at the foot of the one before, under two of its threads, and "]
            .concat(),
    );
    text.push_str("go on in the same way");
    text
}

fn find(ops: &[Op], used: &mut Vec<Short>) {
    for op in ops {
        match op {
            Op::FoundationChain(_) | Op::Chain(_) | Op::LooseChain(_) => used.push(Short::Chain),
            Op::FoundationStitches { stitch, .. } => used.extend([Short::Foundation(*stitch), Short::Plain(*stitch)]),
            Op::Ring { stitch, .. } => used.extend([Short::Ring, Short::Plain(*stitch)]),
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

    fn heads(lines: &[&[Op]], terms: Terms) -> Vec<String> {
        let list = abbreviations(lines, &[], Way::Joined, 2, terms);
        list.iter().filter_map(|entry| entry.split_once(':').map(|(short, _)| short.into())).collect()
    }

    #[test]
    fn only_what_is_used_is_explained() {
        let (plain, shaped) = (decrease_line(Stitch::Single, 56, 0, 0), decrease_line(Stitch::Single, 54, 6, 0));
        assert_eq!(heads(&[&plain], Terms::Uk), ["dc", "st, sts", "(56)"]);
        assert_eq!(heads(&[&shaped], Terms::Uk), ["dc", "dc2tog", "[ ] × 6", "(56)"]);
        let ring = [Op::Ring { stitch: Stitch::HalfDouble, count: 8 }, Op::Join];
        let wider = increase_line(Stitch::HalfDouble, 8, 8, 0);
        assert_eq!(heads(&[&ring, &wider], Terms::Us), ["hdc", "adjustable ring", "join", "st, sts", "(56)"]);
        let list = abbreviations(&[&ring], &[], Way::Joined, 2, Terms::Us);
        assert!(list[1].contains("ch 2, which is not counted"), "{}", list[1]);
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
                let list = abbreviations(&[&ops], &[], Way::Spiral, 1, terms);
                assert_eq!(list.len(), 5);
                let other = if terms == Terms::Us { "yarn round hook" } else { "yarn over" };
                assert!(list.iter().all(|entry| !entry.contains(other) && !entry.contains("  ")), "{list:?}");
            }
        }
        let together = together(Stitch::HalfDouble, Terms::Us.words());
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
}
