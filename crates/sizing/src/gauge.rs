//! From swatches to the sizes of single stitches.

use crate::{
    BandKind, BandSwatch, Breach, Count, Fabric, Gauge, HatSpec, Length, Quantity, Ratio, Stretch, Style, Swatch, YarnWeight,
};

/// Stitches in 4 inches of single crochet for each yarn-weight number: the middle of the published range; of "5 or fewer" for
/// jumbo, 5; lace is published in double crochet, whose stitch is taken to be as wide.
///
/// Source: Craft Yarn Council's www.YarnStandards.com, Standard Yarn Weight System.
pub(crate) const STITCHES_IN_4_INCHES: [Count; 8] = [
    Count::from_ticks(37_00),
    Count::from_ticks(26_50),
    Count::from_ticks(18_00),
    Count::from_ticks(14_50),
    Count::from_ticks(12_50),
    Count::from_ticks(9_50),
    Count::from_ticks(7_50),
    Count::from_ticks(5_00),
];

impl YarnWeight {
    /// The swatch that the published table leads one to expect: an estimate, never a measurement.
    ///
    /// Medium (4) is 11 to 14 stitches in 4 in, so 12.5 in 10.16 cm: a stitch 0.813 cm wide; the table has no rounds, so a round is
    /// taken to be 0.85 of that (practice).
    ///
    /// ```
    /// use hatwright_sizing::{Length, YarnWeight};
    /// let (stitch, round) = YarnWeight::new(4).unwrap().usual_stitch();
    /// assert_eq!((stitch, round), (Length::from_cm(0.813), Length::from_cm(0.691)));
    /// ```
    pub fn usual_stitch(self) -> (Length, Length) {
        let stitches = STITCHES_IN_4_INCHES[usize::from(self.number()) % STITCHES_IN_4_INCHES.len()];
        let width = 10.16 / stitches.value();
        (Length::from_cm(width), Length::from_cm(width * f64::from(Fabric::Single.row().shape) / 10_000.0))
    }

    /// The published stitch count in 4 inches that the estimate rests on.
    pub fn usual_stitches_in_4_inches(self) -> Count {
        STITCHES_IN_4_INCHES[usize::from(self.number()) % STITCHES_IN_4_INCHES.len()]
    }
}

impl Stretch {
    /// The ratio: measured, or the fabric's usual one.
    ///
    /// ```
    /// use hatwright_sizing::{Ratio, Stretch};
    /// assert_eq!(Stretch::Usual.or(Ratio::of(1.35)), Ratio::of(1.35));
    /// assert_eq!(Stretch::Measured(Ratio::of(1.2)).or(Ratio::of(1.35)), Ratio::of(1.2));
    /// ```
    #[must_use]
    pub const fn or(self, usual: Ratio) -> Ratio {
        match self {
            Self::Usual => usual,
            Self::Measured(ratio) => ratio,
        }
    }
}

impl HatSpec {
    /// What the body's fabric usually stretches around the head: along its rounds, or across the rows of a hat worked sideways
    /// (practice, no source: the table of fabrics).
    ///
    /// ```
    /// use hatwright_sizing::{Fabric, HatSpec, Ratio, Style};
    /// assert_eq!(HatSpec::default().usual_body_stretch(), Ratio::of(1.1));
    /// let rib = HatSpec { style: Style::Sideways, fabric: Fabric::SlipRib, ..HatSpec::default() };
    /// assert_eq!(rib.usual_body_stretch(), Ratio::of(1.5));
    /// ```
    pub const fn usual_body_stretch(&self) -> Ratio {
        let row = self.fabric.row();
        Ratio::from_ticks(if matches!(self.style, Style::Sideways) { row.stretch_across } else { row.stretch_along } as i32)
    }

    /// What the band's fabric usually stretches around the head: across its rows where it is worked sideways, along its rounds where
    /// it is worked around; without a band, what the body does.
    ///
    /// ```
    /// use hatwright_sizing::{HatSpec, Ratio};
    /// assert_eq!(HatSpec::default().usual_band_stretch(), Ratio::of(1.35));
    /// ```
    pub const fn usual_band_stretch(&self) -> Ratio {
        let row = self.band_fabric().row();
        match self.band_kind() {
            BandKind::Sideways => Ratio::from_ticks(row.stretch_across as i32),
            BandKind::Around => Ratio::from_ticks(row.stretch_along as i32),
            BandKind::None => self.usual_body_stretch(),
        }
    }
}

/// How tall a band is before folding: the stitches of a sideways row, or the rounds of one worked around; nothing where there is none.
///
/// Rounded down to a hundredth of a millimetre, so that exactly this much can always be folded up.
///
/// Ten stitches at 12 to 10 cm are 8.3333… cm:
///
/// ```
/// use hatwright_sizing::{HatSpec, Length, band_height};
/// assert_eq!(band_height(&HatSpec::default()), Length::from_cm(8.333));
/// ```
pub fn band_height(spec: &HatSpec) -> Length {
    // Half of the millionth of a tick by which a fold may exceed the band, so that 12 × 0.7 cm is 8.4 and not 8.399.
    Length::from_ticks(libm::floor(Cells::of(spec).band_height(spec) * 1000.0 + 5e-7) as i32)
}

/// Stitch sizes in cm, unrounded: a twelfth of 10 cm is not a whole number of ticks, and 56 of them must not drift.
///
/// | | `w` | `h` | `band_w` | `band_row` |
/// |---|---|---|---|---|
/// | band worked sideways | girth of a stitch | height of a round | height of the band for each stitch | girth of a row |
/// | band worked around | girth of a stitch | height of a round | girth of a stitch | height of a round |
/// | no band | girth of a stitch | height of a round | as `w` | as `h` |
/// | hat worked sideways | height of the hat for each stitch | girth of a row | as `w` | as `h` |
#[derive(Clone, Copy, Debug)]
pub(crate) struct Cells {
    /// Width of a stitch of the body, along its round or row.
    pub w: f64,
    /// Height of a round, or row, of the body.
    pub h: f64,
    /// Width of a stitch of the band, along its round or row.
    pub band_w: f64,
    /// Height of a row, or round, of the band.
    pub band_row: f64,
    /// Stretch of the body around the head.
    pub body_stretch: f64,
    /// Stretch of the band around the head; without a band, the body's.
    pub band_stretch: f64,
    /// Girth that each counted stitch of the finished size takes: a row's where the whole hat is worked sideways.
    pub around: f64,
}

impl Cells {
    pub fn of(spec: &HatSpec) -> Self {
        let fabric = spec.fabric.row();
        let (w, h) = match spec.swatch {
            Swatch::Counted { stitches, width, rounds, height } => (width.cm() / stitches.value(), height.cm() / rounds.value()),
            Swatch::YarnWeight(weight) => {
                let w = 10.16 / weight.usual_stitches_in_4_inches().value();
                (w, w * f64::from(if spec.style == Style::Sideways { fabric.pick_up } else { fabric.shape }) / 10_000.0)
            }
        };
        let kind = spec.band_kind();
        let band = spec.band_fabric().row();
        let (band_w, band_row) = match (kind, spec.band.swatch) {
            (BandKind::None, _) => (w, h),
            (_, Some(BandSwatch { stitches, width, rows, length })) => {
                (width.cm() / stitches.value(), length.cm() / rows.value())
            }
            // The band's smaller hook draws its stitches in a little; how much, only its own swatch tells.
            (BandKind::Sideways, None) => (w, w * f64::from(band.pick_up) / 10_000.0),
            (BandKind::Around, None) => (w, w * f64::from(band.shape) / 10_000.0),
        };
        let around = match (spec.style, kind) {
            (Style::Sideways, _) => h,
            (Style::EarWarmer, BandKind::Sideways) => band_row,
            (Style::EarWarmer, _) => band_w,
            _ => w,
        };
        let body_stretch = spec.body_stretch.or(spec.usual_body_stretch()).value();
        let band_stretch = match kind {
            BandKind::None => body_stretch,
            _ => spec.band.stretch.or(spec.usual_band_stretch()).value(),
        };
        Self { w, h, band_w, band_row, body_stretch, band_stretch, around }
    }

    /// Height of the band before folding; 0 where there is none.
    pub fn band_height(&self, spec: &HatSpec) -> f64 {
        match spec.band_kind() {
            BandKind::Sideways => f64::from(spec.band.height.get()) * self.band_w,
            BandKind::Around => f64::from(spec.band.rounds.get()) * self.band_row,
            BandKind::None => 0.0,
        }
    }

    /// Finished girth in so many of the stitches that [`Size`](crate::Size) counts: of a hat worked sideways, and of an ear warmer, so
    /// many rows.
    pub fn girth(&self, stitches: u32) -> f64 {
        f64::from(stitches) * self.around
    }

    /// Which zone stretches least, and how far: the body, or the band; an ear warmer has no body.
    pub fn least_stretch(&self, spec: &HatSpec) -> (Quantity, f64) {
        if spec.style == Style::EarWarmer || self.band_stretch < self.body_stretch {
            (Quantity::BandStretch, self.band_stretch)
        } else {
            (Quantity::BodyStretch, self.body_stretch)
        }
    }

    /// Whether stitches, rounds and rows are of a size that can be crocheted.
    pub fn check(&self) -> Result<(), Breach> {
        use Quantity as Q;
        let sizes = [(Q::BodyStitch, self.w), (Q::BodyRound, self.h), (Q::BandStitch, self.band_w), (Q::BandRow, self.band_row)];
        let odd = sizes.into_iter().map(|(q, cm)| (q, Length::from_cm(cm).ticks())).find(|(q, ticks)| !q.row().holds(*ticks));
        odd.map_or(Ok(()), |(q, ticks)| Err(Breach::OutOfRange(q, ticks)))
    }

    pub fn gauge(&self, spec: &HatSpec) -> Gauge {
        Gauge {
            stitch: Length::from_cm(self.w),
            round: Length::from_cm(self.h),
            band_stitch: Length::from_cm(self.band_w),
            band_row: Length::from_cm(self.band_row),
            body_stretch: Ratio::of(self.body_stretch),
            band_stretch: Ratio::of(self.band_stretch),
            estimated: matches!(spec.swatch, Swatch::YarnWeight(_)),
            band_assumed: spec.band.swatch.is_none() && spec.band_kind() != BandKind::None,
        }
    }
}
