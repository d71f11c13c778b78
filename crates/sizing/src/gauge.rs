//! From swatches to the sizes of single stitches.

use crate::{BandSwatch, Breach, Count, Gauge, HatSpec, Length, Quantity, Ratio, Stretch, Swatch, YarnWeight};

/// Stitches in 4 inches of single crochet for each yarn-weight number: the middle of the published range; of "5 or fewer" for
/// jumbo, 5; lace is published in double crochet, whose stitch is taken to be as wide.
///
/// Source: Craft Yarn Council's www.YarnStandards.com, Standard Yarn Weight System.
const STITCHES_IN_4_INCHES: [Count; 8] = [
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
        (Length::from_cm(width), Length::from_cm(width * Quantity::SingleShape.row().usual_value()))
    }

    /// The published stitch count in 4 inches that the estimate rests on.
    pub fn usual_stitches_in_4_inches(self) -> Count {
        STITCHES_IN_4_INCHES[usize::from(self.number()) % STITCHES_IN_4_INCHES.len()]
    }
}

impl Stretch {
    /// The ratio: measured, or the table's default for the zone.
    pub const fn ratio(self, zone: Quantity) -> Ratio {
        match self {
            Self::Usual => Ratio::from_ticks(zone.row().usual),
            Self::Measured(ratio) => ratio,
        }
    }
}

/// How tall a band is before folding: its stitches in its own swatch, or the body's where it has none.
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
    Length::from_ticks(libm::floor(Cells::of(spec).band(spec) * 1000.0 + 5e-7) as i32)
}

/// Stitch sizes in cm, unrounded: a twelfth of 10 cm is not a whole number of ticks, and 56 of them must not drift.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Cells {
    pub w: f64,
    pub h: f64,
    pub band_w: f64,
    pub band_row: f64,
    pub body_stretch: f64,
    pub band_stretch: f64,
}

impl Cells {
    pub fn of(spec: &HatSpec) -> Self {
        let (w, h) = match spec.swatch {
            Swatch::Counted { stitches, width, rounds, height } => (width.cm() / stitches.value(), height.cm() / rounds.value()),
            Swatch::YarnWeight(weight) => {
                let w = 10.16 / weight.usual_stitches_in_4_inches().value();
                (w, w * Quantity::SingleShape.row().usual_value())
            }
        };
        let (band_w, band_row) = match spec.band.swatch {
            Some(BandSwatch { stitches, width, rows, length }) => (width.cm() / stitches.value(), length.cm() / rows.value()),
            None => (w, w),
        };
        Self {
            w,
            h,
            band_w,
            band_row,
            body_stretch: spec.body_stretch.ratio(Quantity::BodyStretch).value(),
            band_stretch: spec.band.stretch.ratio(Quantity::BandStretch).value(),
        }
    }

    /// Height of the band.
    pub fn band(&self, spec: &HatSpec) -> f64 {
        f64::from(spec.band.height.get()) * self.band_w
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
            band_assumed: spec.band.swatch.is_none(),
        }
    }
}
