//! A planned hat: the planner's whole output. Numbers only; the words are made elsewhere.

use crate::{Colour, Length, Quantity, Ratio, Rounds, Rows, Stitches};

/// The planner's version: a change in any plan that it makes changes this number.
pub const PLANNER: u32 = 1;

/// A hat that can be made and worn.
#[derive(Clone, Debug, PartialEq)]
pub struct Hat {
    /// The head that it is for.
    pub head: HeadSize,
    /// The girth that the ease asks for.
    pub wanted_girth: Length,
    /// The gauges that the numbers rest on.
    pub gauge: Gauge,
    /// The counts taken, with their girths.
    pub size: Size,
    /// The nearest other counts that satisfy the same rules: up to two smaller, then up to two larger, in order of size.
    pub neighbours: Vec<Size>,
    /// Heights.
    pub depth: Depth,
    /// Every round above the band, from the pick-up round to the last before closing.
    pub rounds: Vec<Round>,
    /// How the top ends.
    pub top: Top,
    /// Rows of the band, in order, by colour: as long as the band has rows.
    pub band_rows: Vec<Colour>,
    /// Heads that it serves.
    pub fit: Fit,
    /// Finished girth if the swatch was counted half a stitch too low, and half too high; absent for an estimate.
    pub girth_range: Option<(Length, Length)>,
    /// Yarn by colour, in the order of the hat's colours.
    pub yarn: Vec<YarnNeed>,
    /// The pom-pom, where there is one.
    pub pom_pom: Option<PomPomPlan>,
    /// What a maker should be told about this hat.
    pub remarks: Vec<Remark>,
}

impl Hat {
    /// Stitches of the pick-up round: the hat's round count around the head.
    pub fn stitches(&self) -> Stitches {
        self.size.stitches
    }

    /// Rounds above the band.
    pub fn round_count(&self) -> Rounds {
        Rounds::new(self.rounds.len() as u32)
    }

    /// The first round that decreases, counted from 1; absent in a whole gathered tube.
    pub fn first_decrease(&self) -> Option<u32> {
        self.rounds.iter().find(|r| r.decreases.get() > 0).map(|r| r.number)
    }
}

/// A head's girth and where it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeadSize {
    /// Girth.
    pub girth: Length,
    /// Standard deviation of heads of that age, where the girth was looked up.
    pub spread: Option<Length>,
    /// Where the girth comes from.
    pub basis: HeadBasis,
}

/// Where a head's girth comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeadBasis {
    /// A tape.
    Measured,
    /// WHO Child Growth Standards, 2007: birth to 5 years.
    Who,
    /// Snyder et al. 1977, smoothed and joined to WHO: 5 to 18 years.
    Snyder,
    /// NIOSH 2003, civilian workers: 18 years and over.
    Niosh,
}

/// The sizes of single stitches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gauge {
    /// Width of a stitch of the body.
    pub stitch: Length,
    /// Height of a round of the body.
    pub round: Length,
    /// Width of a stitch of the band: the band's height by stitches.
    pub band_stitch: Length,
    /// Height of a row of the band: the band's girth by rows.
    pub band_row: Length,
    /// Stretch of the body.
    pub body_stretch: Ratio,
    /// Stretch of the band.
    pub band_stretch: Ratio,
    /// The body's gauge comes from a yarn-weight number, not a swatch.
    pub estimated: bool,
    /// The band has no swatch of its own: its row is taken to be as tall as the body's stitch is wide.
    pub band_assumed: bool,
}

/// A pair of counts, and what it does to the fit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// Rows of the band.
    pub rows: Rows,
    /// Stitches of the body.
    pub stitches: Stitches,
    /// Relaxed girth of the band.
    pub band_girth: Length,
    /// Relaxed girth of the body: the finished size.
    pub girth: Length,
    /// Ease that the body really has; negative where it is larger than the head.
    pub ease: Ratio,
    /// The largest head that the less able of body and band reaches when stretched.
    pub reach: Length,
    /// Whether it reaches its wearer.
    pub reaches: bool,
    /// Stitches to be lost in one adjustment round before the wedges; none where the count divides, or the crown is spread.
    pub adjustment: Stitches,
}

impl Size {
    /// The pick-up ratio in lowest terms: so many stitches in so many row ends.
    ///
    /// 56 stitches on 64 rows are 7 in every 8.
    pub fn pick_up(&self) -> (u32, u32) {
        let (n, r) = (self.stitches.get(), self.rows.get());
        let g = crate::arith::gcd(n, r).max(1);
        (n / g, r / g)
    }
}

/// Heights of a hat, from its crown's centre.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Depth {
    /// Asked for: crown's centre to the lower edge as worn.
    pub wanted: Length,
    /// What the written rounds give.
    pub promised: Length,
    /// The band, unfolded.
    pub band: Length,
    /// Of it, folded up.
    pub fold: Length,
    /// Fabric above the band that the written rounds give, the closed top included.
    pub above_band: Length,
    /// Straight rounds from the pick-up round to the last before the first decrease.
    pub straight: Rounds,
}

/// A round above the band.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Round {
    /// Counted from 1, the pick-up round.
    pub number: u32,
    /// Stitches of the round below; for the pick-up round, the band's row ends.
    pub before: u32,
    /// Stitches that it leaves.
    pub after: Stitches,
    /// Decreases, each of two stitches into one.
    pub decreases: Stitches,
    /// Plain stitches worked before the first decrease, so that decreases do not stack; 0 in wedges.
    pub lead: Stitches,
    /// What the round does.
    pub kind: RoundKind,
    /// Its colour.
    pub colour: Colour,
}

/// What a round does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RoundKind {
    /// Picks up along the band.
    PickUp,
    /// Every stitch plain.
    Plain,
    /// Brings the count to a multiple of the wedges.
    Adjust,
    /// Shapes the crown.
    Decrease,
}

/// How the top ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Top {
    /// Stitches drawn together.
    pub stitches: Stitches,
    /// Gathered from a wider opening, rather than drawn up from a few.
    pub gathered: bool,
    /// Across the opening before it is drawn up.
    pub opening: Length,
    /// Across the bundle that a gathered top leaves; small for a drawn one.
    pub bundle: Length,
}

/// Heads that a hat serves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// From this girth.
    pub least: Length,
    /// To this one.
    pub most: Length,
    /// Ages in years at which it serves 8 in 10 heads, sex unknown; absent where it never does.
    pub ages: Option<(f64, f64)>,
    /// The same for a hat of this girth in rib throughout.
    pub ribbed_ages: Option<(f64, f64)>,
}

/// Yarn of one colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct YarnNeed {
    /// The colour.
    pub colour: Colour,
    /// Estimated length.
    pub length: YarnLength,
    /// The low end of the 90 % range.
    pub low: YarnLength,
    /// The high end of the 90 % range.
    pub high: YarnLength,
    /// Whole balls to buy, with the margin.
    pub balls: u32,
}

/// A length of yarn in millimetres (a hat's yarn is too long for [`Length`]).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct YarnLength(i64);

impl YarnLength {
    /// A length in metres, to the nearest millimetre.
    pub fn from_metres(metres: f64) -> Self {
        Self(libm::round(metres * 1000.0) as i64)
    }

    /// Its metres.
    pub fn metres(self) -> f64 {
        self.0 as f64 / 1000.0
    }

    /// Its millimetres.
    pub const fn millimetres(self) -> i64 {
        self.0
    }
}

impl core::iter::Sum for YarnLength {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        Self(all.map(|y| y.0).sum())
    }
}

/// A pom-pom as it is wound.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PomPomPlan {
    /// Diameter when trimmed.
    pub diameter: Length,
    /// Wraps around a form as wide as the diameter.
    pub wraps: u32,
    /// Its colour; `None` for all in equal parts.
    pub colour: Option<Colour>,
}

/// What a maker should be told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Remark {
    /// The gauge is an estimate from a yarn weight.
    EstimatedGauge,
    /// The band's gauge is assumed.
    AssumedBand,
    /// The counts taken by hand do not satisfy the rules any more; the planner's own were used.
    ChosenDropped {
        /// Rows that had been taken.
        rows: Rows,
        /// Stitches that had been taken.
        stitches: Stitches,
    },
    /// The count is not the nearest to the wanted girth, because of the stripes (or the rib's even rows).
    StripesMoved {
        /// The count nearest the fit.
        nearest: Stitches,
        /// What the rows must divide by.
        repeat: Rows,
    },
    /// Larger than the head.
    LooserThanHead,
    /// The written rounds miss the wanted depth by this much (positive: deeper).
    DepthOff(Length),
    /// Stripes of an odd number of rows leave the yarn at the wrong end, to be cut: so many ends.
    OddStripes(u32),
    /// The rib was kept even and the stripes closed by doubling an odd repeat.
    EvenRib,
    /// A gathered top leaves a bundle this wide.
    Bulk(Length),
    /// The wearer is (or may be) a child under 3 years: pom-pom and small parts.
    SmallParts,
    /// The wearer is a baby under 12 months: sleep.
    BabySleep,
}

/// Why there is no hat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Refusal {
    /// The input breaks its rule.
    Breach(crate::Breach),
    /// The body may not have this ease: stretched, it reaches only so far.
    EaseBeyondStretch {
        /// Which stretch governs: [`Quantity::BodyStretch`] or [`Quantity::BandStretch`].
        zone: Quantity,
        /// The head.
        head: Length,
        /// What the wanted girth reaches.
        reach: Length,
        /// The most ease that the stretch allows, rounded down to a tenth of a per cent.
        most: Ratio,
    },
    /// No count that closes the stripes is near enough to this head.
    StripesCannotClose {
        /// Rows must divide by this.
        repeat: Rows,
        /// Rows wanted.
        wanted: Rows,
        /// The nearest closing rows below with their girth; absent at zero.
        below: Option<(Rows, Length)>,
        /// The nearest closing rows above with their girth.
        above: (Rows, Length),
    },
    /// The whole hat is looser than the head or too tight for any count.
    NoCount {
        /// The head.
        head: Length,
        /// Largest girth with a stitch less than wanted.
        nearest: Length,
    },
    /// More is folded up than there is band.
    FoldBeyondBand {
        /// The fold.
        fold: Length,
        /// The band's height.
        band: Length,
    },
    /// No crown fits above this band.
    BandTooTall {
        /// What is left above it; may be negative.
        left: Length,
        /// The smallest fold that works, where one does.
        fold: Option<Length>,
        /// The tallest band that works with this fold, in stitches, where one does.
        tallest: Option<Stitches>,
    },
}

impl Refusal {
    /// The field that the refusal belongs beside.
    pub fn field(&self) -> Quantity {
        match self {
            // The size of a stitch is not typed: it belongs beside the count that makes it.
            Self::Breach(crate::Breach::OutOfRange(q, _)) => match q {
                Quantity::BodyStitch => Quantity::SwatchStitches,
                Quantity::BodyRound => Quantity::SwatchRounds,
                Quantity::BandStitch => Quantity::BandSwatchStitches,
                Quantity::BandRow => Quantity::BandSwatchRows,
                typed => *typed,
            },
            Self::Breach(_) | Self::StripesCannotClose { .. } => Quantity::StripeRows,
            Self::EaseBeyondStretch { .. } | Self::NoCount { .. } => Quantity::Ease,
            Self::FoldBeyondBand { .. } => Quantity::Fold,
            Self::BandTooTall { .. } => Quantity::BandHeight,
        }
    }
}
