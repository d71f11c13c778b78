//! Hats that differ from another in one thing.

use crate::{
    BandKind, Colour, HatSpec, Head, Length, Quantity, RoundStripe, Rounds, RowStripe, Rows, Stitches, Style, band_height,
};

/// How many widths of a colour's stripes are looked at, at the most.
const MOST_WIDTHS: u32 = 30;

/// The hat for a head of another girth.
pub(super) fn for_head(spec: &HatSpec, from: Length, girth: Length) -> HatSpec {
    let row = Quantity::OverTop.row();
    let over = |over: Length| {
        let millimetres = libm::round(over.cm() * girth.cm() / from.cm() * 10.0);
        Length::from_ticks(Length::from_cm(millimetres / 10.0).ticks().clamp(row.least, row.most))
    };
    HatSpec {
        head: Head::Measured(girth),
        over_top: spec.over_top.map(over),
        shape: spec.shape.followed(from, girth),
        chosen: None,
        ..spec.clone()
    }
}

/// The hat with a band of fewer stitches or rounds, folded up in proportion to the millimetre.
pub(super) fn lower_band(spec: &HatSpec, now: u32, count: u32) -> HatSpec {
    let mut lower = spec.clone();
    match spec.band_kind() {
        BandKind::Around => lower.band.rounds = Rounds::new(count),
        _ => lower.band.height = Stitches::new(count),
    }
    let (old, new) = (band_height(spec), band_height(&lower));
    lower.band.fold = if spec.band.fold == old {
        new
    } else {
        let millimetres = libm::round(spec.band.fold.cm() * f64::from(count) / f64::from(now) * 10.0);
        Length::from_cm(millimetres / 10.0).min(new)
    };
    lower
}

/// The hat in one colour, pom-pom and all.
pub(super) fn all_in(spec: &HatSpec, colour: Colour) -> HatSpec {
    let mut plain = spec.clone();
    plain.band.stripes = spec.band.stripes.iter().take(1).map(|stripe| RowStripe { colour, ..*stripe }).collect();
    plain.body_stripes = spec.body_stripes.iter().take(1).map(|stripe| RoundStripe { colour, ..*stripe }).collect();
    plain.topper = spec.topper.map(|topper| if topper.colour.is_some() { topper.coloured(colour) } else { topper });
    plain
}

/// The stripes of one colour, where they are seen.
pub(super) struct Stripes {
    colour: Colour,
    /// Whether there is a band, and whether its stripes are of rows.
    band: Option<bool>,
    /// Whether there is a body, and whether its stripes are of rows.
    body: Option<bool>,
    /// The widest of them.
    widest: u32,
}

impl Stripes {
    pub fn of(spec: &HatSpec, colour: Colour) -> Self {
        let kind = spec.band_kind();
        let band = (kind != BandKind::None).then_some(kind == BandKind::Sideways);
        let body = (spec.style != Style::EarWarmer).then_some(spec.style == Style::Sideways);
        let rows = spec.band.stripes.iter().filter(|s| s.colour == colour && band.is_some()).map(|s| s.rows.get());
        let rounds = spec.body_stripes.iter().filter(|s| s.colour == colour && body.is_some()).map(|s| s.rounds.get());
        let widest = rows.chain(rounds).max().unwrap_or(0);
        Self { colour, band, body, widest }
    }

    /// Widths of the widest stripe to be tried, the widest first: at most [`MOST_WIDTHS`], evenly where there are more.
    pub fn widths(&self, wider: bool) -> Vec<u32> {
        let (widest, most) = (self.widest, MOST_WIDTHS);
        if widest == 0 {
            return Vec::new();
        }
        if wider {
            return (widest + 1..=widest + most).rev().collect();
        }
        let steps = most.min(widest - 1);
        (1..=steps).rev().map(|i| (widest - 1) * i / steps).collect()
    }

    /// The hat with all stripes of the colour in proportion, the widest of them so wide; `None` where none changes.
    pub fn scaled(&self, spec: &HatSpec, width: u32) -> Option<HatSpec> {
        let scale = f64::from(width) / f64::from(self.widest.max(1));
        let to = |count: u32, rows: bool, q: Quantity| {
            let (unit, most) = (if rows && count.is_multiple_of(2) { 2 } else { 1 }, q.row().most.unsigned_abs());
            let units = libm::round(f64::from(count) * scale / f64::from(unit)).max(1.0) as u32;
            (units * unit).min(most)
        };
        let mut scaled = spec.clone();
        if let Some(rows) = self.band {
            for stripe in scaled.band.stripes.iter_mut().filter(|stripe| stripe.colour == self.colour) {
                stripe.rows = Rows::new(to(stripe.rows.get(), rows, Quantity::StripeRows));
            }
        }
        if let Some(rows) = self.body {
            for stripe in scaled.body_stripes.iter_mut().filter(|stripe| stripe.colour == self.colour) {
                stripe.rounds = Rounds::new(to(stripe.rounds.get(), rows, Quantity::StripeRounds));
            }
        }
        ((&scaled.band.stripes, &scaled.body_stripes) != (&spec.band.stripes, &spec.body_stripes)).then_some(scaled)
    }
}
