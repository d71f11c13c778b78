//! What is on the hook, from line to line.

use super::tongue::{gap, gaps};
use super::words::{count, plural};
use super::{Gathered, Into, Loops, Part, Stitch, Vocabulary, Worked};
use std::sync::Arc;

/// Sections with work in them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Place {
    Rounds(Part),
    Joining,
    Hat,
    Seam,
    Closing,
    Flaps,
}

/// What holds for one section.
#[derive(Clone, Debug, Default)]
pub(super) struct Section {
    pub place: Option<Place>,
    pub stitch: Option<Stitch>,
    pub loops: Option<Loops>,
    pub chain: Option<u32>,
    /// Rounds A to B give the colours of those to Z.
    pub stripes: Option<(u32, u32, u32)>,
}

/// A line's label.
#[derive(Clone, Copy)]
pub(super) struct Label<'a> {
    pub from: u32,
    pub to: u32,
    pub colour: Option<&'a str>,
}

impl Label<'_> {
    /// The colour, where it is named.
    pub fn named(&self) -> Option<Arc<str>> {
        self.colour.map(Arc::from)
    }
}

pub(super) struct Hands {
    pub words: Vocabulary,
    pub section: Section,
    /// Chains of a foundation for rows, those of the first turn included.
    pub chain: Option<u32>,
    /// Chains of a foundation that was joined into a ring, not yet worked into.
    pub ring_of_chain: Option<u32>,
    /// The piece of rows is a ring.
    pub band_is_ring: bool,
    /// The stitch of everything but a band.
    pub body_stitch: Option<Stitch>,
    /// The loops of everything but a band, once they are told.
    pub body_loops: Option<Loops>,
    pub worked: Worked,
}

impl Hands {
    pub fn new(words: Vocabulary) -> Self {
        Self {
            words,
            section: Section::default(),
            chain: None,
            ring_of_chain: None,
            band_is_ring: false,
            body_stitch: None,
            body_loops: None,
            worked: Worked::default(),
        }
    }

    /// Does a line, if it is a line of work.
    pub fn line(&mut self, line: &str, before: &str) -> Result<(), String> {
        let tongue = self.words.tongue;
        if line.len() > 2 && line.bytes().all(|b| b == b'-') {
            let place = tongue.headings.iter().find(|(heading, _)| *heading == before).map(|(_, place)| *place);
            self.section = Section { place, ..Section::default() };
            return Ok(());
        }
        if self.section.place.is_some() {
            self.introduction(line)?;
        }
        let nouns = [tongue.row, tongue.round].concat();
        let Some((label, work)) = line.split_once(": ") else {
            let numbered = |noun: &str| line.strip_prefix(noun).is_some_and(|rest| rest.starts_with(' '));
            let work = nouns.iter().any(|noun| numbered(noun));
            return if work { Err("a line of work without any".into()) } else { Ok(()) };
        };
        let (place, colour) = label.split_once(", ").map_or((label, None), |(place, colour)| (place, Some(colour)));
        let unnumbered = work.strip_suffix('.').ok_or("no full stop");
        let named = || colour.map(Arc::from);
        if place == tongue.foundation {
            self.worked.colours.foundation = named();
            return self.foundation(unnumbered?);
        } else if place == tongue.join_label {
            self.worked.colours.join = named();
            return self.join(&total(work)?);
        } else if place == tongue.seam_label {
            self.worked.colours.seam = named();
            return self.seam(unnumbered?);
        } else if place == tongue.tie_label {
            self.worked.colours.tie = named();
            return self.tie(unnumbered?);
        } else if place == tongue.last {
            return self.last(unnumbered?);
        }
        let Some((noun, numbers)) = place.split_once(' ').filter(|(noun, _)| nouns.contains(noun)) else { return Ok(()) };
        let many = [tongue.row[1], tongue.round[1]].contains(&noun);
        let (from, to) = if many { numbers.split_once('–').ok_or("no range")? } else { (numbers, numbers) };
        let label = Label { from: count(from)?, to: count(to)?, colour };
        if many && label.to <= label.from {
            return Err("no range".into());
        }
        let (work, total) = total(work)?;
        match (self.section.place, tongue.row.contains(&noun)) {
            (Some(Place::Rounds(Part::Band) | Place::Hat), true) => self.rows(&label, work, total),
            (Some(Place::Flaps), true) => self.flap(&label, work, total),
            (Some(Place::Rounds(part)), false) => self.rounds(part, &label, work, total),
            (place, _) => Err(format!("not in its place: {place:?}")),
        }
    }

    /// What a section says of all its lines.
    fn introduction(&mut self, line: &str) -> Result<(), String> {
        let tongue = self.words.tongue;
        if line.starts_with(tongue.every_stitch) {
            let told: Vec<Loops> =
                tongue.loop_only.iter().filter(|(_, only)| line.contains(only)).map(|(loops, _)| *loops).collect();
            let [loops] = told[..] else { return Err("which loop?".into()) };
            self.section.loops = Some(loops);
            if self.section.place != Some(Place::Rounds(Part::Band)) {
                self.body_loops = self.section.loops;
            }
        }
        if let Some((first, rest)) = gaps(line, tongue.stripes) {
            let (end, last) = gaps(rest, tongue.stripes_to).ok_or("no such stripes")?;
            self.section.stripes = Some((count(first)?, count(end)?, count(last)?));
        }
        if self.section.place == Some(Place::Flaps) && line.contains(tongue.first_flap) {
            self.between(line)?;
        }
        Ok(())
    }

    fn foundation(&mut self, work: &str) -> Result<(), String> {
        if self.chain.is_some() || self.ring_of_chain.is_some() {
            return Err("a second foundation".into());
        }
        let tongue = self.words.tongue;
        match (self.section.place, gap(work, tongue.loose_ring)) {
            (Some(Place::Rounds(_)), Some(chains)) if self.worked.rounds.is_empty() => self.ring_of_chain = Some(count(chains)?),
            (Some(Place::Rounds(Part::Band) | Place::Hat), None) => {
                self.chain = Some(count(gap(work, tongue.chain).ok_or("no foundation chain")?)?);
            }
            _ => return Err("a foundation that is not in its place".into()),
        }
        Ok(())
    }

    fn last(&mut self, work: &str) -> Result<(), String> {
        if self.section.place != Some(Place::Closing) || self.worked.gathered.is_some() {
            return Err("not in its place".into());
        }
        let tongue = self.words.tongue;
        let what = gap(work, tongue.gather).ok_or("no such closing")?;
        let gathered = if self.worked.rounds.is_empty() {
            let ends = plural(what, tongue.row_end)?;
            let left = self.ends_at_the_crown();
            if !self.worked.seamed || ends != left {
                return Err(format!("{left} row ends reach the crown, seamed: {}", self.worked.seamed));
            }
            Gathered::RowEnds(ends)
        } else {
            let stitches = plural(what, tongue.stitch)?;
            let left = self.left();
            if self.begun_in_a_ring() || stitches != left {
                return Err(format!("{left} are left"));
            }
            Gathered::Stitches(stitches)
        };
        self.worked.gathered = Some(gathered);
        Ok(())
    }

    /// Stitches of the last round.
    pub fn left(&self) -> u32 {
        self.worked.rounds.last().map_or(0, super::Round::stitches)
    }

    pub fn begun_in_a_ring(&self) -> bool {
        self.worked.rounds.first().is_some_and(|round| round.into == Into::Ring)
    }

    /// What may not be left undone.
    pub fn finish(self) -> Result<Worked, String> {
        let worked = &self.worked;
        if worked.rows.is_empty() && worked.rounds.is_empty() {
            return Err("nothing was worked".into());
        }
        if self.chain.is_some() && !(self.band_is_ring || worked.seamed) {
            return Err("the piece of rows is never closed".into());
        }
        let picked_up = worked.rounds.iter().any(|round| round.into == Into::RowEnds);
        if self.band_is_ring && !worked.rounds.is_empty() && !picked_up && worked.band_join.is_none() {
            return Err("the band is never joined to the hat".into());
        }
        // A hat that is no more than a band is open above, and one begun in a ring is closed already.
        let topped = worked.seamed || worked.rounds.iter().any(|round| round.part != Part::Band);
        if topped && !self.begun_in_a_ring() && worked.gathered.is_none() {
            return Err("the top is never gathered".into());
        }
        if self.section.place == Some(Place::Flaps) || !worked.flap.is_empty() || worked.between.is_none() {
            return Ok(self.worked);
        }
        Err("flaps that are placed and not worked".into())
    }
}

/// A line's work and the total that it states.
fn total(work: &str) -> Result<(&str, u32), String> {
    let (work, total) = work.rsplit_once(". (").ok_or("no total")?;
    Ok((work, count(total.strip_suffix(')').ok_or("no total")?)?))
}
