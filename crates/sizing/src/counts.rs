//! Which counts: rows of the band and stitches of the body that satisfy stripes, rib and wedges together, nearest the fit.

use crate::gauge::Cells;
use crate::{BandSpec, Chosen, Layout, Length, Quantity, Ratio, Refusal, Rows, Size, Stitches, Unsuited, gcd, lcm};

/// What the counts must satisfy.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Rules {
    /// Head, in cm.
    pub head: f64,
    /// Girth that the ease asks for, in cm.
    pub wanted: f64,
    /// Rows divide by this.
    pub repeat: u32,
    /// Wedges, where the crown has them.
    pub wedges: Option<u32>,
    pub cells: Cells,
}

/// Rows that one repeat of the stripes takes; 1 where a band of one colour has nothing to close.
pub(crate) fn stripe_repeat(band: &BandSpec) -> u32 {
    let solid = band.stripes.iter().all(|s| s.colour == band.stripes[0].colour);
    if solid { 1 } else { band.stripes.iter().map(|s| s.rows.get()).sum() }
}

/// A sideways rib comes in pairs of rows, so an odd repeat closes only when it is doubled.
pub(crate) fn closing_repeat(band: &BandSpec) -> u32 {
    lcm(stripe_repeat(band), 2)
}

pub(crate) fn wedges(layout: Layout) -> Option<u32> {
    match layout {
        Layout::Wedges(k) => Some(k),
        Layout::Spread => None,
    }
}

impl Rules {
    /// The size with so many rows, its stitches as the rule of equal girths says.
    fn at(&self, rows: u32) -> Size {
        self.pair(rows, self.stitches_for(rows))
    }

    /// A pair of counts with all that follows from it.
    fn pair(&self, rows: u32, stitches: u32) -> Size {
        let c = &self.cells;
        let (girth, band) = (f64::from(stitches) * c.w, f64::from(rows) * c.band_row);
        let reach = (girth * c.body_stretch).min(band * c.band_stretch);
        Size {
            rows: Rows::new(rows),
            stitches: Stitches::new(stitches),
            band_girth: Length::from_cm(band),
            girth: Length::from_cm(girth),
            ease: Ratio::of(1.0 - girth / self.head),
            reach: Length::from_cm(reach),
            reaches: Length::from_cm(reach) >= Length::from_cm(self.head),
            adjustment: Stitches::new(self.wedges.map_or(0, |k| stitches % k)),
        }
    }

    /// Where a row of the band is nearly as tall as a stitch of the body is wide, one stitch in each row end; otherwise the count whose
    /// girth agrees with the band's and with what was asked for, with a preference for a pick-up that is easily remembered, and for a
    /// body that reaches its wearer before one that does not.
    fn stitches_for(&self, rows: u32) -> u32 {
        let c = &self.cells;
        let apart = (c.band_row / c.w - 1.0).abs();
        if apart <= Quantity::EqualGirths.row().usual_value() {
            return rows;
        }
        let band = f64::from(rows) * c.band_row;
        let middle = libm::round(band / c.w) as u32;
        let spread = middle / 20 + 1;
        let cost = |n: u32| {
            let every = rows / gcd(n, rows).max(1);
            let adjust = self.wedges.is_some_and(|k| !n.is_multiple_of(k));
            let adjust = if adjust { Quantity::PriceAdjust.row().usual_value() } else { 0.0 };
            let girth = f64::from(n) * c.w;
            let misses = (girth - band).abs() + (girth - self.wanted).abs();
            let tight = girth * c.body_stretch < self.head;
            (tight, misses + f64::from(every) * Quantity::PricePickUp.row().usual_value() + adjust)
        };
        let least = middle.saturating_sub(spread).max(1);
        (least..=middle + spread)
            .min_by(|a, b| {
                let ((tight, a), (tight_too, b)) = (cost(*a), cost(*b));
                tight.cmp(&tight_too).then(a.total_cmp(&b))
            })
            .unwrap_or(middle.max(1))
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
        let adjust = if size.adjustment.get() > 0 { Quantity::PriceAdjust.row().usual_value() } else { 0.0 };
        let (body, band) = ((size.girth.cm() - self.wanted).abs(), (size.band_girth.cm() - self.wanted).abs());
        let equal = size.rows.get() == size.stitches.get();
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
        let size =
            self.sizes().filter(|s| s.reaches && self.close_enough(s)).min_by(|a, b| self.cost(a).total_cmp(&self.cost(b)));
        size.map(|size| (size, dropped)).ok_or_else(|| self.none_closes())
    }

    /// All sizes that close, up to well past the head: where row and stitch differ, girths follow the rows only to a few stitches.
    fn sizes(&self) -> impl Iterator<Item = Size> {
        const PAST: f64 = 1.2;
        let most = (self.head * PAST / self.cells.band_row.min(self.cells.w)) as u32 / self.repeat + 1;
        let least = Quantity::LeastStitches.row().usual.unsigned_abs();
        (1..=most).map(|k| self.at(k * self.repeat)).filter(move |size| size.stitches.get() >= least)
    }

    fn kept(&self, chosen: Chosen) -> Result<Size, Unsuited> {
        let (rows, stitches) = (chosen.rows.get(), chosen.stitches.get());
        if rows == 0 || !rows.is_multiple_of(self.repeat) {
            return Err(Unsuited::Repeat(Rows::new(self.repeat)));
        }
        if stitches < Quantity::LeastStitches.row().usual.unsigned_abs() {
            return Err(Unsuited::Few);
        }
        let size = self.pair(rows, stitches);
        let apart = (size.girth.cm() / size.band_girth.cm() - 1.0).abs();
        if apart > Quantity::UnlikeByHand.row().usual_value() {
            return Err(Unsuited::Unlike(size.band_girth));
        }
        if !size.reaches {
            return Err(Unsuited::Tight(size.reach));
        }
        if self.looser_by(&size, Quantity::LoosestByHand) > 0.0 { Err(Unsuited::Loose(size.girth)) } else { Ok(size) }
    }

    /// The count that would have been chosen if its wedges had no say, where that is another.
    pub fn without_wedges(&self, size: &Size) -> Option<Stitches> {
        let (spread, _) = Self { wedges: None, ..*self }.choose(None).ok()?;
        (self.wedges.is_some() && spread.stitches != size.stitches).then_some(spread.stitches)
    }

    fn none_closes(&self) -> Refusal {
        let wanted = libm::round(self.wanted / self.cells.band_row) as u32;
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
        let k = size.rows.get() / self.repeat;
        let near = k.saturating_sub(2).max(1)..=k + 2;
        let least = Quantity::LeastStitches.row().usual.unsigned_abs();
        near.filter(|i| *i != k).map(|i| self.at(i * self.repeat)).filter(|size| size.stitches.get() >= least).collect()
    }
}
