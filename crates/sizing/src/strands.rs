//! Where yarn waits and where it is cut: one rule for the yarn sum, the remarks and the written pattern.
//!
//! A row of the band is turned at its end, so even rows end at the edge on which the body is worked, odd ones at the other. Yarn may
//! wait at the first, where the body covers it, and after it on the inside of the body; a change after an odd row cuts it. The rows of a
//! hat worked sideways end at its edge in the same way. Yarn waits past at most [`Quantity::CarryPast`] rows and rounds: a longer
//! strand draws in, or hangs loose to be caught (practice, no source).
//!
//! It never waits from one piece of the work to another: a band made apart, a brim and the flaps begin with yarn of their own.

use crate::{Begun, Colour, Hat, Quantity, RoundKind, Rounds, Rows};
use core::ops::Range;

/// A change of colour, between two rows, two rounds, or the band and the body worked on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Change {
    /// Whether the new colour begins in a row of a sideways band, or of a hat worked sideways; otherwise in a round.
    pub in_band: bool,
    /// Rows that are done, or rounds, of all the hat's: 0 rounds is the change from the band to the pick-up round.
    pub after: u32,
    /// The colour that is left.
    pub from: Colour,
    /// The colour that begins.
    pub to: Colour,
    /// Whether the yarn that is left waits for its next stripe; otherwise it is cut.
    pub waits: bool,
    /// Where the yarn of the colour that begins comes from.
    pub start: Start,
}

impl Change {
    /// Whether the yarn that is left is at the wrong edge to wait: the change follows an odd row.
    pub const fn is_odd(&self) -> bool {
        self.in_band && !self.after.is_multiple_of(2)
    }
}

/// Where the yarn of a stripe comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Start {
    /// The colour begins for the first time.
    First,
    /// It was cut, and begins anew.
    Anew,
    /// It has waited, and is led up past so much of the other colours.
    Waited {
        /// Rows of the band.
        rows: Rows,
        /// Rounds above it.
        rounds: Rounds,
    },
}

/// A piece of the work: what is worked without a break, rows first. It begins with an end of its own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Piece {
    /// Colours of its rows.
    pub rows: Vec<Colour>,
    /// Its rounds, of the hat's.
    pub rounds: Range<usize>,
}

/// The pieces of a hat, in order. Flaps are none of them: they are of one colour.
pub(crate) fn pieces(hat: &Hat) -> Vec<Piece> {
    let end = hat.rounds.len();
    let edge = hat.rounds.iter().position(|round| round.kind == RoundKind::Edge).unwrap_or(end);
    let panel = hat.panel.iter().flat_map(|panel| &panel.rows).map(|row| row.colour);
    let rows: Vec<Colour> = hat.band_rows.iter().copied().chain(panel).collect();
    let all = if hat.begun == Begun::Crown {
        [Piece { rows: Vec::new(), rounds: 0..end }, Piece { rows, rounds: end..end }]
    } else {
        [Piece { rows, rounds: 0..edge }, Piece { rows: Vec::new(), rounds: edge..end }]
    };
    all.into_iter().filter(|piece| !piece.rows.is_empty() || !piece.rounds.is_empty()).collect()
}

/// Every change of colour of a hat, in working order: within its pieces, never between them.
pub(crate) fn changes_of(hat: &Hat) -> Vec<Change> {
    let colours: Vec<Colour> = hat.rounds.iter().map(|round| round.colour).collect();
    let mut list = Vec::new();
    for Piece { rows, rounds } in pieces(hat) {
        let first = rounds.start as u32;
        list.extend(changes(&rows, &colours[rounds]).into_iter().map(|mut change| {
            change.after += if change.in_band { 0 } else { first };
            change
        }));
    }
    list
}

/// Every change of colour of one piece, in order: rows, and the rounds that are worked on them.
///
/// Two-row stripes of two colours wait for each other. With one row, one row and two of A, A and B, nothing is odd; with three and
/// three, every first change is, and both yarns are cut there.
///
/// ```
/// use hatwright_sizing::{Colour, Start, changes};
/// let (a, b) = (Colour(0), Colour(1));
/// let even = changes(&[a, a, b, b, a, a, b, b], &[]);
/// assert!(matches!(even[1].start, Start::Waited { rows, .. } if rows.get() == 2));
/// assert!(!even.iter().any(|change| change.is_odd()));
/// let odd = changes(&[a, a, a, b, b, b], &[a]);
/// assert!(odd[0].is_odd() && !odd[0].waits && odd[1].start == Start::Anew);
/// ```
pub fn changes(rows: &[Colour], rounds: &[Colour]) -> Vec<Change> {
    let band = rows.len();
    let all: Vec<Colour> = rows.iter().chain(rounds).copied().collect();
    let most = Quantity::CarryPast.row().usual as usize;
    let waits_at = |done: usize| done >= band || done.is_multiple_of(2);
    let waits = |left: usize, again: usize| waits_at(left) && waits_at(again) && again - left <= most;
    let mut left_at: Vec<(Colour, usize)> = Vec::new();
    let mut list = Vec::new();
    for done in 1..all.len() {
        let (from, to) = (all[done - 1], all[done]);
        if from == to {
            continue;
        }
        let again = all.iter().enumerate().skip(done + 1).take(most).find(|(_, c)| **c == from).map(|(i, _)| i);
        let left = left_at.iter().find(|(c, _)| *c == to).map(|(_, at)| *at);
        let start = match left {
            None => Start::First,
            Some(left) if waits(left, done) => {
                let below = done.min(band) - left.min(band);
                Start::Waited { rows: Rows::new(below as u32), rounds: Rounds::new((done - left - below) as u32) }
            }
            Some(_) => Start::Anew,
        };
        let in_band = done < band;
        list.push(Change {
            in_band,
            after: (if in_band { done } else { done - band }) as u32,
            from,
            to,
            waits: again.is_some_and(|again| waits(done, again)),
            start,
        });
        match left_at.iter_mut().find(|(c, _)| *c == from) {
            Some((_, at)) => *at = done,
            None => left_at.push((from, done)),
        }
    }
    list
}

#[cfg(test)]
mod tests {
    use super::*;

    fn colours(text: &str) -> Vec<Colour> {
        text.bytes().map(|b| Colour(b - b'A')).collect()
    }

    fn told(rows: &str, rounds: &str) -> Vec<(bool, Start)> {
        changes(&colours(rows), &colours(rounds)).iter().map(|c| (c.waits, c.start)).collect()
    }

    const fn waited(rows: u32, rounds: u32) -> Start {
        Start::Waited { rows: Rows::new(rows), rounds: Rounds::new(rounds) }
    }

    #[test]
    fn yarn_waits_at_the_edge_of_the_body_and_nowhere_else() {
        // Two stripes of A that meet are one stripe: nothing is odd.
        assert_eq!(told("AABBAABB", ""), [(true, Start::First), (true, waited(2, 0)), (false, waited(2, 0))]);
        // Single rows: every other change follows an odd row, and no yarn is ever where it is needed.
        let single = changes(&colours("ABABAB"), &[]);
        assert!(single.iter().all(|c| !c.waits && c.is_odd() == (c.after % 2 == 1)));
        assert_eq!(single[4].start, Start::Anew);
    }

    #[test]
    fn yarn_waits_from_the_band_into_the_body() {
        assert_eq!(told("AABB", "ABB"), [(true, Start::First), (true, waited(2, 0)), (false, waited(0, 1))]);
        assert_eq!(told("AABB", "BBAA"), [(true, Start::First), (false, waited(2, 2))]);
    }

    #[test]
    fn yarn_waits_past_six_rounds_and_no_more() {
        assert_eq!(told("", "ABBBBBBA"), [(true, Start::First), (false, waited(0, 6))]);
        assert_eq!(told("", "ABBBBBBBA"), [(false, Start::First), (false, Start::Anew)]);
    }

    fn hat() -> Hat {
        crate::plan(&crate::HatSpec::default()).unwrap()
    }

    #[test]
    fn a_brim_begins_with_its_own_yarn() {
        let mut hat = hat();
        let before = changes_of(&hat);
        assert_eq!(before, changes(&hat.band_rows, &hat.rounds.iter().map(|r| r.colour).collect::<Vec<_>>()));
        let crown = hat.rounds.len() as u32;
        let brim = crate::Round { kind: RoundKind::Edge, zone: crate::Zone::Brim, colour: Colour(1), ..hat.rounds[0] };
        hat.rounds.extend([brim, crate::Round { kind: RoundKind::Increase, colour: Colour(0), ..brim }]);
        assert_eq!(pieces(&hat).len(), 2);
        let after = changes_of(&hat);
        assert_eq!(after[..before.len()], before[..]);
        // No change as the brim begins, whatever colour the crown ended in; one within it, of a colour that begins there anew.
        let [last] = after[before.len()..] else { panic!("{after:?}") };
        assert_eq!((last.in_band, last.after, last.from, last.start), (false, crown + 1, Colour(1), Start::First));
    }

    #[test]
    fn a_band_made_apart_comes_last_and_by_itself() {
        let mut hat = hat();
        hat.begun = Begun::Crown;
        let list = changes_of(&hat);
        let in_rounds = list.iter().take_while(|change| !change.in_band).count();
        assert!(in_rounds > 0 && list[in_rounds..].iter().all(|change| change.in_band));
        assert_eq!(list[in_rounds..], changes(&hat.band_rows, &[]));
    }

    #[test]
    fn rows_of_a_whole_hat_wait_at_even_ends_only() {
        let mut hat = hat();
        let row = |colour| crate::PanelRow { stitches: crate::Stitches::new(20), colour: Colour(colour) };
        let rows: Vec<crate::PanelRow> = [0, 0, 1, 1, 0, 1, 0, 0].map(row).to_vec();
        let (stitches, wedge) = (crate::Stitches::new(20), Rows::new(8));
        hat.panel = Some(crate::Panel { rows, stitches, wedge, top: crate::SideTop::Gathered });
        (hat.rounds, hat.band_rows) = (Vec::new(), Vec::new());
        let list = changes_of(&hat);
        assert!(list.iter().all(|change| change.in_band && (change.after % 2 == 0 || !change.waits)));
        assert_eq!(list.iter().filter(|change| change.is_odd()).count(), 1);
    }

    #[test]
    fn what_waits_is_taken_up_and_what_is_cut_is_not() {
        for code in 0..3_u32.pow(9) {
            let all: Vec<Colour> = (0..9).map(|i| Colour((code / 3_u32.pow(i) % 3) as u8)).collect();
            let list = changes(&all[..6], &all[6..]);
            let waiting = list.iter().filter(|c| c.waits).count();
            let taken = list.iter().filter(|c| matches!(c.start, Start::Waited { .. })).count();
            assert_eq!(waiting, taken, "{all:?}");
        }
    }
}
