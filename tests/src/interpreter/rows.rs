//! Lines of rows: a sideways band, a hat worked sideways and its seam.

use super::hands::{Hands, Label, Place};
use super::tongue::{Tongue, gap, gaps};
use super::words::count;
use super::{Loops, Row, Stitch};
use std::borrow::Cow;
use std::sync::Arc;

/// What a row does, whatever its length.
enum Kind {
    /// Goes into the foundation chain.
    First,
    /// Goes over all that is there.
    Across,
    /// Stops after so many stitches and leaves the rest.
    Short(u32),
    /// Takes the foundation edge with it.
    Closing,
}

impl Hands {
    pub(super) fn rows(&mut self, label: &Label<'_>, work: &str, total: u32) -> Result<(), String> {
        let done = self.worked.rows.len() as u32;
        if label.from != done + 1 || self.band_is_ring || self.worked.seamed {
            return Err(format!("row {} after row {done}", label.from));
        }
        if let Some(again) = gap(work, self.words.tongue.again) {
            return self.rows_again(label, count(again)?, total);
        }
        let chains = self.chain.ok_or("rows on nothing")?;
        let (kind, stitch, loops, chain) = self.read_row(work)?;
        if *self.section.stitch.get_or_insert(stitch) != stitch || chain != stitch.chains() {
            return Err(format!("ch {chain} and {stitch:?} in rows of {:?}", self.section.stitch));
        }
        let first = matches!(kind, Kind::First);
        if !first && *self.section.loops.get_or_insert(loops) != loops {
            return Err("rows in other loops".into());
        }
        let all = chains.checked_sub(chain).filter(|all| *all > 0).ok_or("no stitches")?;
        let hat = self.section.place == Some(Place::Hat);
        for number in label.from..=label.to {
            let below = self.worked.rows.last().map_or(0, |row| row.stitches);
            if first != (number == 1) {
                return Err("only the first row goes into the chain".into());
            }
            let stitches = match kind {
                // From the edge a row may run on over stitches that shorter rows left; back it goes over the row before.
                Kind::Across if number.is_multiple_of(2) => below,
                Kind::First | Kind::Across => all,
                Kind::Short(stitches) if hat && !number.is_multiple_of(2) && stitches < all => stitches,
                Kind::Short(_) => return Err("a row that may not be short".into()),
                Kind::Closing if !hat && below == all && label.from == label.to => all,
                Kind::Closing => return Err(format!("{below} stitches do not close on an edge of {all}")),
            };
            if stitches != total {
                return Err(format!("leaves {stitches}"));
            }
            let colour = self.row_colour(label, number, done)?;
            self.worked.rows.push(Row { colour, stitch, loops, chain, stitches });
        }
        self.band_is_ring = matches!(kind, Kind::Closing);
        Ok(())
    }

    /// Rows that are as rows 2 to `last`, over and over.
    fn rows_again(&mut self, label: &Label<'_>, last: u32, total: u32) -> Result<(), String> {
        if self.section.place != Some(Place::Hat) || last < 2 || last >= label.from {
            return Err("rows that were not worked".into());
        }
        for number in label.from..=label.to {
            let as_row = 2 + (number - label.from) % (last - 1);
            let like = self.worked.rows[as_row as usize - 1].clone();
            let before = self.worked.rows.last().map_or(0, |row| row.stitches);
            if (number - as_row) % 2 == 1 || (number.is_multiple_of(2) && like.stitches != before) {
                return Err(format!("row {number} is not as row {as_row}"));
            }
            let colour = if label.colour == Some(self.words.tongue.same_stripes) { like.colour.clone() } else { label.named() };
            self.worked.rows.push(Row { colour, ..like });
        }
        let left = self.worked.rows.last().map_or(0, |row| row.stitches);
        if left == total { Ok(()) } else { Err(format!("leaves {left}")) }
    }

    fn row_colour(&self, label: &Label<'_>, number: u32, done: u32) -> Result<Option<Arc<str>>, String> {
        if label.colour != Some(self.words.tongue.same_stripes) {
            return Ok(label.named());
        }
        // The rows told so far are one repeat.
        let again = self.worked.rows.get(((number - 1) % done.max(1)) as usize);
        Ok(again.ok_or("stripes that were never begun")?.colour.clone())
    }

    fn read_row(&self, work: &str) -> Result<(Kind, Stitch, Loops, u32), String> {
        let tongue = self.words.tongue;
        let Some((chain, rest)) = gaps(work, tongue.turned) else {
            let (stitch, rest) = self.stitch(work)?;
            let nth = gap(rest, tongue.first_row).ok_or("no such row, or one that is not turned")?;
            let passed = tongue.nths.iter().position(|known| *known == nth).ok_or("no such chain")?;
            return Ok((Kind::First, stitch, Loops::Both, passed as u32 + 1));
        };
        let (chain, (stitch, rest)) = (count(chain)?, self.stitch(rest)?);
        let (into, through) = (gap(rest, tongue.into), gap(rest, tongue.through));
        let (loops, rest) = looped(into.or(through).ok_or("no such row")?, tongue);
        let kind = match through.is_some() {
            true if rest == tongue.closing => Kind::Closing,
            false if rest == tongue.across => Kind::Across,
            true => return Err("no such row".into()),
            false => {
                let some = gap(&rest, tongue.leave).and_then(|some| tongue.next(some, tongue.stitch)).ok_or("no such row")?;
                Kind::Short(some?)
            }
        };
        Ok((kind, stitch, loops, chain))
    }

    /// The stitch that a work begins with, and what follows.
    pub(super) fn stitch<'a>(&self, work: &'a str) -> Result<(Stitch, &'a str), String> {
        let named = |stitch: Stitch| Some((stitch, work.strip_prefix(self.words.name(stitch))?));
        let found = Stitch::ALL.into_iter().filter_map(named).find(|(_, rest)| rest.starts_with(' '));
        found.ok_or_else(|| format!("no such stitch: {work:?}"))
    }

    pub(super) fn seam(&mut self, work: &str) -> Result<(), String> {
        let tongue = self.words.tongue;
        let rest = gap(work, tongue.seam).ok_or("a seam is begun by turning")?;
        let (stitch, rest) = self.stitch(rest)?;
        let (loops, rest) = looped(gap(rest, tongue.through).ok_or("no such seam")?, tongue);
        let (Some(row), Some(chains)) = (self.worked.rows.last(), self.chain) else { return Err("nothing to seam".into()) };
        let sound = self.section.place == Some(Place::Seam)
            && stitch == Stitch::Slip
            && rest == tongue.closing
            && (loops == row.loops || self.worked.rows.len() == 1);
        if !sound || self.band_is_ring || self.worked.seamed {
            return Err("no such seam".into());
        }
        // The seam is begun where the last row ended, at the lower edge, and takes all of both edges: like a row that runs to the crown,
        // it goes on over stitches that shorter rows left.
        let longest = self.worked.rows.iter().map(|row| row.stitches).max().unwrap_or(0);
        if !self.worked.rows.len().is_multiple_of(2) || longest + row.chain != chains {
            return Err(format!("{longest} stitches and an edge of {}", chains - row.chain));
        }
        self.worked.seamed = true;
        Ok(())
    }

    /// Row ends at the crown: those of rows that run all the way, two at each turn there.
    pub(super) fn ends_at_the_crown(&self) -> u32 {
        let all = self.worked.rows.iter().map(|row| row.stitches).max().unwrap_or(0);
        self.worked.rows.iter().filter(|row| row.stitches == all).count() as u32
    }
}

/// The loops that a place is led by, and the place.
fn looped<'a>(text: &'a str, tongue: &Tongue) -> (Loops, Cow<'a, str>) {
    for (loops, words, begun) in tongue.loops {
        if let Some(rest) = text.strip_prefix(words) {
            return (*loops, if begun.is_empty() { rest.into() } else { [begun, rest].concat().into() });
        }
    }
    (Loops::Both, text.into())
}
