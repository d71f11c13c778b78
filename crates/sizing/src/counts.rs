//! Which counts: rows of the band and stitches of the body that satisfy stripes, rib and wedges together, nearest the fit.
//!
//! What is counted depends on the hat. On a sideways band, rows of the band and stitches of the body are two numbers. A sideways ear
//! warmer, and a whole hat worked sideways, have rows alone: their stitches are the row ends of their edge, as many. A hat with a band
//! worked around, or none, has stitches alone, and no rows.

use crate::gauge::Cells;
use crate::{
    BandKind, Chosen, Colour, HatSpec, Layout, Length, Loops, Quantity, Ratio, Refusal, Remark, Rows, Size, Stitches, Style,
    Taste, Unsuited, gcd, lcm,
};

/// What is counted around the head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Counted {
    /// Rows of a sideways band, and stitches of the body above it.
    Pair,
    /// Rows alone.
    Rows,
    /// Stitches alone.
    Stitches,
}

impl Counted {
    pub const fn of(spec: &HatSpec) -> Self {
        match (spec.style, spec.band_kind()) {
            (Style::Sideways, _) | (Style::EarWarmer, BandKind::Sideways) => Self::Rows,
            (_, BandKind::Sideways) => Self::Pair,
            _ => Self::Stitches,
        }
    }
}

/// What the counts must satisfy.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Rules {
    /// Head, in cm.
    pub head: f64,
    /// Girth that the ease asks for, in cm.
    pub wanted: f64,
    /// Rows divide by this; where there are none, stitches do.
    pub repeat: u32,
    /// Wedges, where the crown begins at this count and has them.
    pub wedges: Option<u32>,
    pub cells: Cells,
    /// What is counted.
    pub counted: Counted,
    /// Whether there is a body, whose stretch matters: an ear warmer has none.
    pub body: bool,
    /// Stitches usually picked up in a row end of the band.
    pub pick_up: f64,
    /// What weighs more.
    pub taste: Taste,
}

/// Rows that one repeat of the stripes takes; 1 where they have nothing to close, being of one colour or of rounds.
pub(crate) fn stripe_repeat(spec: &HatSpec) -> u32 {
    if Counted::of(spec) == Counted::Stitches {
        return 1;
    }
    if spec.style == Style::Sideways {
        return repeat_of(spec.body_stripes.iter().map(|s| (s.colour, s.rounds.get())));
    }
    repeat_of(spec.band.stripes.iter().map(|s| (s.colour, s.rows.get())))
}

fn repeat_of(stripes: impl Iterator<Item = (Colour, u32)> + Clone) -> u32 {
    let first = stripes.clone().next().map(|(colour, _)| colour);
    let solid = stripes.clone().all(|(colour, _)| Some(colour) == first);
    if solid { 1 } else { stripes.map(|(_, rows)| rows).sum() }
}

/// A sideways rib comes in pairs of rows, so an odd repeat closes only when it is doubled; a post-stitch rib in pairs of stitches;
/// anything else that is worked around closes on every count.
pub(crate) fn closing_repeat(spec: &HatSpec) -> u32 {
    match (Counted::of(spec), spec.band_kind(), spec.band_fabric().row().loops) {
        (Counted::Stitches, BandKind::Around, Loops::Posts) => 2,
        (Counted::Stitches, ..) => 1,
        _ => lcm(stripe_repeat(spec), 2),
    }
}

pub(crate) const fn wedges(layout: Layout) -> Option<u32> {
    match layout {
        Layout::Wedges(k) => Some(k),
        Layout::Spread => None,
    }
}

/// Wedges that the hat's own count may be chosen to suit: the crown of a slouch hat or a tam begins at another one.
const fn wedges_at_band(spec: &HatSpec) -> Option<u32> {
    match spec.style {
        Style::Slouch | Style::Tam | Style::EarWarmer | Style::Sideways => None,
        _ => wedges(spec.lays()),
    }
}

impl Rules {
    /// The rules of a hat for a head and a girth, both in cm.
    pub fn of(spec: &HatSpec, cells: &Cells, head: f64, wanted: f64) -> Self {
        Self {
            head,
            wanted,
            repeat: closing_repeat(spec),
            wedges: wedges_at_band(spec),
            cells: *cells,
            counted: Counted::of(spec),
            body: spec.style != Style::EarWarmer,
            pick_up: f64::from(spec.band_fabric().row().pick_up) / 10_000.0,
            taste: spec.taste,
        }
    }

    /// The size with so many of what divides by the repeat: rows, with their stitches as the rule of equal girths says; or stitches.
    fn at(&self, count: u32) -> Size {
        match self.counted {
            Counted::Pair => self.pair(count, self.stitches_for(count)),
            Counted::Rows => self.pair(count, count),
            Counted::Stitches => self.pair(0, count),
        }
    }

    /// The same count of a size that exists.
    const fn count(&self, size: &Size) -> u32 {
        match self.counted {
            Counted::Stitches => size.stitches.get(),
            _ => size.rows.get(),
        }
    }

    /// Girth that each of what [`Rules::at`] counts gives the hat, nearly.
    fn step(&self) -> f64 {
        match self.counted {
            Counted::Pair => self.cells.band_row,
            _ => self.cells.around,
        }
    }

    /// A pair of counts with all that follows from it.
    pub fn pair(&self, rows: u32, stitches: u32) -> Size {
        let c = &self.cells;
        let girth = c.girth(stitches);
        let band = match self.counted {
            Counted::Pair => f64::from(rows) * c.band_row,
            Counted::Rows => girth,
            Counted::Stitches => f64::from(stitches) * c.band_w,
        };
        let body = if self.body { girth * c.body_stretch } else { f64::INFINITY };
        let reach = Length::from_cm(body.min(band * c.band_stretch));
        Size {
            rows: Rows::new(rows),
            stitches: Stitches::new(stitches),
            band_girth: Length::from_cm(band),
            girth: Length::from_cm(girth),
            ease: Ratio::of(1.0 - girth / self.head),
            reach,
            reaches: reach >= Length::from_cm(self.head),
            adjustment: Stitches::new(self.wedges.map_or(0, |k| stitches % k)),
        }
    }

    /// The stitches that the fabric's usual pick-up makes of so many rows, where its girths agree to 8 % and they are whole.
    fn usual_stitches(&self, rows: u32) -> Option<u32> {
        let c = &self.cells;
        let apart = (c.band_row / (c.w * self.pick_up) - 1.0).abs();
        let n = f64::from(rows) * self.pick_up;
        let whole = (n - libm::round(n)).abs() < 1e-9;
        (whole && apart <= Quantity::EqualGirths.row().usual_value()).then(|| libm::round(n) as u32)
    }

    /// Where a row of the band is about as tall as its fabric's usual pick-up supposes, that pick-up: one single crochet in each row
    /// end. Otherwise the count whose girth agrees with the band's and with what was asked for, with a preference for a pick-up that is
    /// easily remembered, and for a body that reaches its wearer before one that does not.
    fn stitches_for(&self, rows: u32) -> u32 {
        if let Some(usual) = self.usual_stitches(rows) {
            return usual;
        }
        let c = &self.cells;
        let band = f64::from(rows) * c.band_row;
        let middle = libm::round(band / c.w) as u32;
        let spread = middle / 20 + 1;
        let (adjust, pick_up) = self.niceties();
        let mut best = (true, f64::INFINITY, middle.max(1));
        for n in middle.saturating_sub(spread).max(1)..=middle + spread {
            let girth = f64::from(n) * c.w;
            let tight = girth * c.body_stretch < self.head;
            let (from_band, from_wanted) = ((girth - band).abs(), (girth - self.wanted).abs());
            let misses = if self.taste == Taste::Nearest { from_wanted + from_band * TIE } else { from_wanted + from_band };
            let misses = misses + if self.wedges.is_some_and(|k| !n.is_multiple_of(k)) { adjust } else { 0.0 };
            let better = |cost: f64| (!tight && best.0) || (tight == best.0 && cost < best.1);
            // The shortest repeat is one row end or more, so most counts need not be reduced to lowest terms.
            if better(misses + pick_up) {
                let cost = misses + pick_up * f64::from(rows / gcd(n, rows).max(1));
                if better(cost) {
                    best = (tight, cost, n);
                }
            }
        }
        best.2
    }

    /// Prices of what is easier to work: an adjustment round, and a row end in the repeat of a pick-up. Nothing where the girth alone
    /// counts.
    fn niceties(&self) -> (f64, f64) {
        if self.taste == Taste::Nearest {
            return (0.0, 0.0);
        }
        (Quantity::PriceAdjust.row().usual_value(), Quantity::PricePickUp.row().usual_value())
    }

    /// Not so loose that it would not be called a fit.
    fn close_enough(&self, size: &Size) -> bool {
        self.looser_by(size, Quantity::LoosestFit) <= 0.0
    }

    /// By how much a size is looser than the head and a share of it more, in cm.
    fn looser_by(&self, size: &Size, share: Quantity) -> f64 {
        size.girth.cm() - self.head * (1.0 + share.row().usual_value())
    }

    fn cost(&self, size: &Size) -> f64 {
        let adjust = if size.adjustment.get() > 0 { self.niceties().0 } else { 0.0 };
        let (body, band) = ((size.girth.cm() - self.wanted).abs(), (size.band_girth.cm() - self.wanted).abs());
        if self.taste == Taste::Nearest {
            return body + band * TIE;
        }
        let equal = match self.counted {
            Counted::Pair => self.usual_stitches(size.rows.get()) == Some(size.stitches.get()),
            Counted::Rows => true,
            Counted::Stitches => false,
        };
        let beyond = if equal { 0.0 } else { (band - body).max(0.0) };
        body + beyond * Quantity::BandMiss.row().usual_value() + adjust
    }

    /// The counts nearest the fit, or those that were taken by hand where they still hold.
    ///
    /// The second value is what had been taken and why it does not hold.
    pub fn choose(&self, chosen: Option<Chosen>) -> Result<(Size, Option<(Chosen, Unsuited)>), Refusal> {
        let dropped = match chosen.map(|c| (c, self.kept(c))) {
            Some((_, Ok(size))) => return Ok((size, None)),
            Some((chosen, Err(why))) => Some((chosen, why)),
            None => None,
        };
        self.nearest().map(|size| (size, dropped)).ok_or_else(|| self.none_closes())
    }

    /// The size of least cost among those that reach the wearer and are close enough; of equal ones the smaller.
    ///
    /// Tried from the girth that is asked for outward, and no farther than where no size can cost less: what a size costs is at least
    /// its girth's miss, and on a sideways band its girth follows the rows to a twentieth and a stitch.
    fn nearest(&self) -> Option<Size> {
        let step = self.step() * f64::from(self.repeat);
        let most = self.most();
        let middle = (libm::round(self.wanted / step) as u32).clamp(1, most.max(1));
        let mut best: Option<(f64, Size)> = None;
        let consider = |k: u32, best: &mut Option<(f64, Size)>| {
            let around = f64::from(k) * step;
            let slack = match self.counted {
                Counted::Pair => around * 0.09 + 2.0 * self.cells.w,
                _ => 1e-3,
            };
            let miss = (around - self.wanted).abs() - slack;
            if best.as_ref().is_some_and(|(cost, _)| miss > *cost) {
                return false;
            }
            let size = self.at(k * self.repeat);
            if size.reaches && self.close_enough(&size) && size.stitches.get() >= least_stitches() {
                let cost = self.cost(&size);
                let smaller = |than: &Size| self.count(&size) < self.count(than);
                if best.as_ref().is_none_or(|(least, than)| cost < *least || (cost <= *least && smaller(than))) {
                    *best = Some((cost, size));
                }
            }
            true
        };
        let _ = (middle..=most).all(|k| consider(k, &mut best));
        let _ = (1..middle).rev().all(|k| consider(k, &mut best));
        best.map(|(_, size)| size)
    }

    /// The most repeats that are ever of use, up to well past the head: where row and stitch differ, girths follow the rows only to a
    /// few stitches.
    fn most(&self) -> u32 {
        const PAST: f64 = 1.2;
        let least = match self.counted {
            Counted::Pair => self.cells.band_row.min(self.cells.w * self.pick_up),
            _ => self.cells.around,
        };
        (self.head * PAST / least) as u32 / self.repeat + 1
    }

    /// All sizes that close.
    fn sizes(&self) -> impl Iterator<Item = Size> {
        (1..=self.most()).map(|k| self.at(k * self.repeat)).filter(|size| size.stitches.get() >= least_stitches())
    }

    fn kept(&self, chosen: Chosen) -> Result<Size, Unsuited> {
        let (rows, stitches) = match self.counted {
            Counted::Pair => (chosen.rows.get(), chosen.stitches.get()),
            Counted::Rows => (chosen.rows.get(), chosen.rows.get()),
            Counted::Stitches => (0, chosen.stitches.get()),
        };
        let count = if self.counted == Counted::Stitches { stitches } else { rows };
        if count == 0 || !count.is_multiple_of(self.repeat) {
            return Err(Unsuited::Repeat(Rows::new(self.repeat)));
        }
        if stitches < least_stitches() {
            return Err(Unsuited::Few);
        }
        let size = self.pair(rows, stitches);
        let apart = (size.girth.cm() / size.band_girth.cm() - 1.0).abs();
        // The two girths of a band worked around are one count in two gauges: no other count would bring them nearer.
        if self.counted == Counted::Pair && apart > Quantity::UnlikeByHand.row().usual_value() {
            return Err(Unsuited::Unlike(size.band_girth));
        }
        if !size.reaches {
            return Err(Unsuited::Tight(size.reach));
        }
        if self.looser_by(&size, Quantity::LoosestByHand) > 0.0 { Err(Unsuited::Loose(size.girth)) } else { Ok(size) }
    }

    /// Why the planner's own size is not the count nearest the girth: what must divide moved it, or the wedges did.
    pub fn moved(&self, size: &Size) -> Vec<Remark> {
        let mut out = Vec::new();
        let per = match self.counted {
            Counted::Pair => self.pick_up,
            _ => 1.0,
        };
        let nearest = libm::round(self.wanted / (self.cells.around * per)) as u32;
        let usual = self.counted != Counted::Pair || self.usual_stitches(size.rows.get()) == Some(size.stitches.get());
        if usual && !nearest.is_multiple_of(self.repeat) {
            let nearest = Stitches::new(libm::round(f64::from(nearest) * per) as u32);
            if nearest != size.stitches {
                out.push(Remark::StripesMoved { nearest, repeat: Rows::new(self.repeat) });
            }
        }
        if let (Some(wedges), Some(nearest)) = (self.wedges, self.without_wedges(size)) {
            out.push(Remark::WedgesMoved { nearest, wedges });
        }
        out
    }

    /// The count that would have been chosen if its wedges had no say, where that is another.
    fn without_wedges(&self, size: &Size) -> Option<Stitches> {
        if self.wedges.is_none() || self.taste == Taste::Nearest {
            return None;
        }
        let spread = Self { wedges: None, ..*self }.nearest()?;
        (spread.stitches != size.stitches).then_some(spread.stitches)
    }

    fn none_closes(&self) -> Refusal {
        let wanted = libm::round(self.wanted / self.step()) as u32;
        let below = wanted / self.repeat * self.repeat;
        let above = below + self.repeat;
        let girth = |rows: u32| self.at(rows).girth;
        if self.repeat > 2 {
            return Refusal::StripesCannotClose {
                repeat: Rows::new(self.repeat),
                wanted: Rows::new(wanted),
                below: (below > 0).then(|| (Rows::new(below), girth(below))),
                above: (Rows::new(above), girth(above)),
            };
        }
        let tight = self.sizes().take_while(|size| !size.reaches).last();
        Refusal::NoCount { head: Length::from_cm(self.head), nearest: tight.map_or(Length::ZERO, |size| size.girth) }
    }

    /// The neighbours of a size: up to two smaller and two larger.
    pub fn neighbours(&self, size: &Size) -> Vec<Size> {
        let k = self.count(size) / self.repeat;
        let near = k.saturating_sub(2).max(1)..=k + 2;
        near.filter(|i| *i != k)
            .map(|i| self.at(i * self.repeat))
            .filter(|size| size.stitches.get() >= least_stitches())
            .collect()
    }
}

/// So little that it decides only between what is otherwise equal.
const TIE: f64 = 1e-6;

const fn least_stitches() -> u32 {
    Quantity::LeastStitches.row().usual.unsigned_abs()
}

#[cfg(test)]
mod tests;
