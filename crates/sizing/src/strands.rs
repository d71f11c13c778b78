//! Where yarn waits and where it is cut: one rule for the yarn sum, the remarks and the written pattern.
//!
//! A row of the band is turned at its end, so even rows end at the edge on which the body is worked, odd ones at the other. Yarn may
//! wait at the first, where the body covers it, and after it on the inside of the body; a change after an odd row cuts it. It waits
//! past at most [`Quantity::CarryPast`] rows and rounds: a longer strand draws in, or hangs loose to be caught (practice, no source).

use crate::{Colour, Quantity, Rounds, Rows};

/// A change of colour, between two rows, two rounds, or the band and the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Change {
    /// Whether the new colour begins in a row of the band; otherwise in a round above it.
    pub in_band: bool,
    /// Rows of the band that are done, or rounds above it: 0 rounds is the change from the band to the pick-up round.
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
    /// Whether the yarn that is left is at the wrong edge to wait: the change follows an odd row of the band.
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

/// Every change of colour, in order.
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
