//! Which counts: rows of the band and stitches of the body that satisfy stripes, rib and wedges together, nearest the fit.

use crate::gauge::Cells;
use crate::{BandSpec, Chosen, Layout, Length, Quantity, Ratio, Refusal, Rows, Size, Stitches, gcd, lcm};

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
    /// girth agrees with the band's, with a preference for a pick-up that is easily remembered.
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
            (f64::from(n) * c.w - band).abs() + f64::from(every) * Quantity::PricePickUp.row().usual_value() + adjust
        };
        let least = middle.saturating_sub(spread).max(1);
        (least..=middle + spread).min_by(|a, b| cost(*a).total_cmp(&cost(*b))).unwrap_or(middle.max(1))
    }

    /// Not so loose that it would not be called a fit.
    fn close_enough(&self, size: &Size) -> bool {
        size.girth.cm() <= self.head * (1.0 + Quantity::LoosestFit.row().usual_value())
    }

    fn cost(&self, size: &Size) -> f64 {
        let adjust = if size.adjustment.get() > 0 { Quantity::PriceAdjust.row().usual_value() } else { 0.0 };
        (size.girth.cm() - self.wanted).abs() + adjust
    }

    /// The counts nearest the fit, or those that were taken by hand where they still hold.
    ///
    /// The second value is what had been taken and does not hold.
    pub fn choose(&self, chosen: Option<Chosen>) -> Result<(Size, Option<Chosen>), Refusal> {
        let kept = chosen.and_then(|c| self.kept(c));
        let dropped = if kept.is_none() { chosen } else { None };
        if let Some(size) = kept {
            return Ok((size, None));
        }
        let most = (self.head * 1.2 / self.cells.band_row.min(self.cells.w)) as u32 / self.repeat + 1;
        let sizes = (1..=most).map(|k| self.at(k * self.repeat)).filter(|s| s.reaches && self.close_enough(s));
        match sizes.min_by(|a, b| self.cost(a).total_cmp(&self.cost(b))) {
            Some(size) => Ok((size, dropped)),
            None => Err(self.none_closes()),
        }
    }

    fn kept(&self, chosen: Chosen) -> Option<Size> {
        let (rows, stitches) = (chosen.rows.get(), chosen.stitches.get());
        if rows == 0 || !rows.is_multiple_of(self.repeat) || rows > 4_000 || !(8..=4_000).contains(&stitches) {
            return None;
        }
        let size = self.pair(rows, stitches);
        let unlike = (size.girth.cm() / size.band_girth.cm() - 1.0).abs() > 0.25;
        let apart = size.girth.cm() > self.head * 1.5;
        (size.reaches && !apart && !unlike).then_some(size)
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
        Refusal::NoCount { head: Length::from_cm(self.head), nearest: if below > 0 { girth(below) } else { Length::ZERO } }
    }

    /// The neighbours of a size: up to two smaller and two larger.
    pub fn neighbours(&self, size: &Size) -> Vec<Size> {
        let k = size.rows.get() / self.repeat;
        let near = k.saturating_sub(2).max(1)..=k + 2;
        near.filter(|i| *i != k).map(|i| self.at(i * self.repeat)).filter(|s| s.stitches.get() >= 8).collect()
    }
}
