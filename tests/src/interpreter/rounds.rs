//! Lines of rounds, and joining a band to them.

use super::hands::{Hands, Label, Place};
use super::steps::{Below, Step, steps};
use super::tongue::{Tongue, gap, gaps};
use super::words::count;
use super::{Into, Part, Round, Stitch};
use std::sync::Arc;

impl Hands {
    /// One line of rounds.
    pub(super) fn rounds(&mut self, part: Part, label: &Label<'_>, work: &str, total: u32) -> Result<(), String> {
        let done = self.worked.rounds.len() as u32;
        if label.from != done + 1 {
            return Err(format!("round {} after round {done}", label.from));
        }
        let (chain, inner, joined) = unwrapped(work, self.words.tongue)?;
        let (into, stitch, made) = self.made(part, inner)?;
        self.check_wrapping(part, into, stitch, chain, joined)?;
        self.section.stitch = Some(stitch);
        if part != Part::Band {
            self.body_stitch = Some(stitch);
        }
        let left: u32 = made.iter().map(|step| step.makes()).sum();
        if left != total {
            return Err(format!("leaves {left}"));
        }
        // Alike rounds are worked one upon the other: none but a plain one can be.
        let plain =
            into == Into::Round && made.iter().all(|step| matches!(step, Step::Stitch | Step::FrontPost | Step::BackPost));
        if label.to > label.from && !plain {
            return Err("only plain rounds are alike".into());
        }
        let steps: Arc<[Step]> = made.into();
        for number in label.from..=label.to {
            let colour = self.round_colour(label, number)?;
            // What is said of the body goes for all that follows it: its crown, its tail, its brim.
            let said = self.section.loops.or(if part == Part::Band { None } else { self.body_loops });
            let loops = said.unwrap_or_default();
            let chain = chain.unwrap_or(0);
            self.worked.rounds.push(Round { part, colour, stitch, loops, chain, into, steps: Arc::clone(&steps) });
        }
        Ok(())
    }

    /// What the first round of a line is worked into, with what, and its steps.
    fn made(&mut self, part: Part, work: &str) -> Result<(Into, Stitch, Vec<Step>), String> {
        let words = self.words;
        let first = self.worked.rounds.is_empty();
        // One stitch in a section, and one in all of the hat but its band.
        let known = self.section.stitch.or(if part == Part::Band { None } else { self.body_stitch });
        if let Some(begun) = gap(work, words.tongue.ring) {
            let (number, stitch) = numbered(begun, words)?;
            return if first {
                Ok((Into::Ring, stitch, vec![Step::Stitch; number as usize]))
            } else {
                Err("a ring in the middle of a hat".into())
            };
        }
        if let Some((number, name)) = gaps(work, words.tongue.foundation_round) {
            let stitch = Stitch::ALL.into_iter().find(|s| words.name(*s) == name).ok_or("no such stitch")?;
            let alone = first && self.chain.is_none() && self.ring_of_chain.is_none();
            return if alone {
                Ok((Into::Foundation, stitch, vec![Step::Stitch; count(number)? as usize]))
            } else {
                Err("a second beginning".into())
            };
        }
        let (into, below) = self.below(part)?;
        steps(work, words, known, below).map(|(stitch, steps)| (into, stitch, steps))
    }

    fn below(&mut self, part: Part) -> Result<(Into, Below), String> {
        if self.worked.rounds.is_empty() {
            if let Some(chains) = self.ring_of_chain {
                return Ok((Into::Chain, Below::Chains(chains)));
            }
            if !self.band_is_ring {
                return Err("a round on nothing, or on a band that is no ring".into());
            }
            return Ok((Into::RowEnds, Below::RowEnds(self.worked.rows.len() as u32)));
        }
        if self.worked.gathered.is_some() {
            // The top is closed: only the edge at which the hat was begun is left, and only once.
            let brim = self.worked.rounds.iter().any(|round| round.into == Into::Edge);
            let begun = &self.worked.rounds[0];
            return match (part, brim, begun.into) {
                (Part::Brim, true, _) => Ok((Into::Round, Below::Stitches(self.left()))),
                (Part::Brim, false, Into::Foundation | Into::Chain) => Ok((Into::Edge, Below::Edge(begun.stitches()))),
                _ => Err("a round on a hat that is closed".into()),
            };
        }
        Ok((Into::Round, Below::Stitches(self.left())))
    }

    /// Chains and joins are there in joined rounds, in all of them, and nowhere else.
    fn check_wrapping(&mut self, part: Part, into: Into, stitch: Stitch, chain: Option<u32>, joined: bool) -> Result<(), String> {
        if into == Into::Foundation {
            return if joined || chain.is_some() { Err("a foundation is joined already".into()) } else { Ok(()) };
        }
        if *self.worked.joined.get_or_insert(joined) != joined {
            return Err("rounds are joined, or they are not".into());
        }
        if chain.is_some() != (joined && into != Into::Ring) {
            return Err("a chain where none belongs, or none where one does".into());
        }
        let Some(chain) = chain else { return Ok(()) };
        // Around the posts the fabric is lower, and two chains reach.
        let reaches = chain == stitch.chains() || (part == Part::Band && stitch == Stitch::Double && chain == 2);
        if !reaches || *self.section.chain.get_or_insert(chain) != chain {
            return Err(format!("ch {chain} does not reach the height of {stitch:?}"));
        }
        Ok(())
    }

    fn round_colour(&self, label: &Label<'_>, number: u32) -> Result<Option<Arc<str>>, String> {
        if label.colour != Some(self.words.tongue.same_stripes) {
            return Ok(label.named());
        }
        let (a, b, z) = self.section.stripes.ok_or("stripes of no section")?;
        if !(a <= b && b < label.from && number <= z) {
            return Err(format!("stripes of rounds {a}–{b} to {z}"));
        }
        let as_round = a + (number - a) % (b - a + 1);
        Ok(self.worked.rounds[as_round as usize - 1].colour.clone())
    }

    /// A band that was made apart, slip stitched to the last round.
    pub(super) fn join(&mut self, (work, total): &(&str, u32)) -> Result<(), String> {
        if self.section.place != Some(Place::Joining)
            || !self.band_is_ring
            || !self.begun_in_a_ring()
            || self.worked.band_join.is_some()
        {
            return Err("not in its place".into());
        }
        let ends = Below::RowEnds(self.worked.rows.len() as u32);
        let (_, made) = steps(work, self.words, Some(Stitch::Slip), ends)?;
        let stitches: u32 = made.iter().map(|step| step.makes()).sum();
        if stitches != *total || stitches != self.left() {
            return Err(format!("joins {stitches} to a round of {}", self.left()));
        }
        self.worked.band_join = Some(made);
        Ok(())
    }
}

/// A round's chain, its work, and whether it is joined.
fn unwrapped<'a>(work: &'a str, tongue: &Tongue) -> Result<(Option<u32>, &'a str, bool), String> {
    // A chain is told by its number, which in some languages comes first, as that of a step does.
    let (chain, work) = match gaps(work, tongue.begun).filter(|(chain, _)| count(chain).is_ok()) {
        Some((chain, rest)) => (Some(count(chain)?), rest),
        None => (None, work),
    };
    Ok(gap(work, tongue.joined).map_or((chain, work, false), |work| (chain, work, true)))
}

/// "8 hdc".
fn numbered(text: &str, words: super::Vocabulary) -> Result<(u32, Stitch), String> {
    let (number, name) = text.split_once(' ').ok_or("no number of stitches")?;
    let stitch = Stitch::ALL.into_iter().find(|s| words.name(*s) == name).ok_or("no such stitch")?;
    Ok((count(number)?, stitch))
}
