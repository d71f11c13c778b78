//! Ear flaps: where they stand on the edge, their rows, and their ties.

use super::hands::{Hands, Label, Place};
use super::steps::{Step, read_items};
use super::tongue::{gap, gaps};
use super::words::count;
use super::{FlapRow, Into, Stitch};

impl Hands {
    /// The edge that flaps are worked from: row ends of a sideways band, or stitches. `None` where the hat has none to work from yet.
    fn edge(&self) -> Option<(bool, u32)> {
        if self.band_is_ring {
            return Some((true, self.worked.rows.len() as u32));
        }
        let begun = self.worked.rounds.first()?;
        let stitches = if begun.into == Into::Ring { self.left() } else { begun.stitches() };
        Some((false, stitches))
    }

    /// The sentence that parts the edge: so many free, a flap, so many free, a flap, so many free.
    pub(super) fn between(&mut self, line: &str) -> Result<(), String> {
        let (_, told) = line.split_once(": ").ok_or("no measures of the edge")?;
        let numbers: Vec<u32> = told
            .split(|c: char| !c.is_ascii_digit())
            .filter(|digits| !digits.is_empty())
            .map(|digits| digits.parse().unwrap_or(0))
            .collect();
        let [first, flap, front, second, last] = numbers[..] else { return Err("an edge is parted by five numbers".into()) };
        let (_, edge) = self.edge().ok_or("flaps on no edge")?;
        if flap != second || first.abs_diff(last) > 1 || first + flap + front + second + last != edge {
            return Err(format!("{numbers:?} of an edge of {edge}"));
        }
        self.worked.between = Some((first + last, front));
        Ok(())
    }

    pub(super) fn flap(&mut self, label: &Label<'_>, work: &str, total: u32) -> Result<(), String> {
        let done = self.worked.flap.len() as u32;
        if label.from != done + 1 || self.worked.tie > 0 {
            return Err(format!("row {} after row {done}", label.from));
        }
        if label.from == 1 {
            if label.to > 1 {
                return Err("only one row goes into the edge".into());
            }
            self.worked.colours.flaps = label.named();
            let row = self.first_flap_row(work)?;
            self.worked.flap.push(row);
        } else {
            if label.named() != self.worked.colours.flaps {
                return Err("flaps of two colours".into());
            }
            for _ in label.from..=label.to {
                let row = self.later_flap_row(work)?;
                self.worked.flap.push(row);
            }
        }
        let left = self.worked.flap.last().map_or(0, |row| row.stitches);
        if left == total { Ok(()) } else { Err(format!("leaves {left}")) }
    }

    fn first_flap_row(&mut self, work: &str) -> Result<FlapRow, String> {
        let (rows, edge) = self.edge().ok_or("flaps on no edge")?;
        let tongue = self.words.tongue;
        let noun = if rows { tongue.row_end } else { tongue.stitch };
        let known = self.body_stitch;
        let plain = self.stitch(work).ok().and_then(|(stitch, rest)| {
            let along = gap(gap(rest, tongue.into)?, tongue.of_edge)?;
            Some((stitch, tongue.next(along, noun)?))
        });
        let (stitch, row) = if let Some((stitch, stitches)) = plain {
            let stitches = stitches?;
            (stitch, FlapRow { used: stitches, stitches, decreases: 0 })
        } else if rows {
            let stitch = known.ok_or("no stitch is known")?;
            let mut steps = Vec::new();
            read_items(work, self.words, stitch, &mut steps)?;
            if steps.iter().any(|step| !matches!(step, Step::RowEnd(_))) {
                return Err("not worked into row ends".into());
            }
            (stitch, FlapRow { used: steps.len() as u32, stitches: steps.iter().map(|step| step.makes()).sum(), decreases: 0 })
        } else {
            return Err("no such row".into());
        };
        self.flap_stitch(stitch)?;
        let placed = self.worked.between.map(|(back, front)| (edge - back - front) / 2);
        if placed.is_some_and(|placed| placed != row.used) || 2 * row.used > edge {
            return Err(format!("a flap on {} of {edge}, placed on {placed:?}", row.used));
        }
        Ok(row)
    }

    fn flap_stitch(&mut self, stitch: Stitch) -> Result<(), String> {
        let same = self.body_stitch.is_none_or(|known| known == stitch) && *self.section.stitch.get_or_insert(stitch) == stitch;
        if same { Ok(()) } else { Err("another stitch".into()) }
    }

    fn later_flap_row(&mut self, work: &str) -> Result<FlapRow, String> {
        let stitch = self.section.stitch.ok_or("no row before")?;
        let used = self.worked.flap.last().map_or(0, |row| row.stitches);
        let tongue = self.words.tongue;
        let (chain, rest) = gaps(work, tongue.turned).ok_or("a row that is not turned")?;
        if count(chain)? != stitch.chains() {
            return Err("not the chain of this stitch".into());
        }
        let into = rest.strip_prefix(self.words.name(stitch)).and_then(|rest| gap(rest, tongue.into));
        if into == Some(tongue.across) {
            return Ok(FlapRow { used, stitches: used, decreases: 0 });
        }
        let mut steps = Vec::new();
        read_items(rest, self.words, stitch, &mut steps)?;
        let decreases = steps.iter().filter(|step| **step == Step::Decrease).count() as u32;
        let inside = steps.iter().skip(1).rev().skip(1).all(|step| *step == Step::Stitch);
        let at_the_ends = inside && steps.iter().all(|step| matches!(step, Step::Stitch | Step::Decrease)) && decreases > 0;
        let needs: u32 = steps.iter().map(|step| step.uses()).sum();
        if !at_the_ends || needs != used {
            return Err(format!("uses {needs} of {used}"));
        }
        Ok(FlapRow { used, stitches: steps.iter().map(|step| step.makes()).sum(), decreases })
    }

    pub(super) fn tie(&mut self, work: &str) -> Result<(), String> {
        let chains = gap(work, self.words.tongue.tie).ok_or("no such tie")?;
        if self.section.place != Some(Place::Flaps) || self.worked.flap.is_empty() || self.worked.tie > 0 {
            return Err("not in its place".into());
        }
        self.worked.tie = count(chains)?;
        Ok(())
    }
}
