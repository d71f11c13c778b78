//! A planned hat: the planner's whole output. Numbers only; the words are made elsewhere.

use crate::{BandKind, Begun, Change, Colour, Length, Part, Quantity, Ratio, Rounds, Rows, SideTop, Stitches, Style, TopperKind};

/// The planner's version: a change in any plan that it makes changes this number.
pub const PLANNER: u32 = 3;

/// A hat that can be made and worn.
///
/// The example in its fields is [`HatSpec::default`](crate::HatSpec): a head of 49.8 cm at 7 % ease, 12 stitches and 15 rounds to
/// 10 cm, a band of 10 stitches with 4.2 cm of it folded up, two-row stripes.
#[derive(Clone, Debug, PartialEq)]
pub struct Hat {
    /// Which kind of hat.
    pub style: Style,
    /// Where the work begins: always at the band where there is no crown in rounds.
    pub begun: Begun,
    /// How the band is worked, if there is one.
    pub band: BandKind,
    /// The head that it is for.
    pub head: HeadSize,
    /// The girth that the ease asks for: 46.3 cm.
    pub wanted_girth: Length,
    /// The gauges that the numbers rest on.
    pub gauge: Gauge,
    /// The counts taken, with their girths: 56 stitches on 56 rows, 46.7 cm.
    pub size: Size,
    /// The nearest other counts that satisfy the same rules: up to two smaller, then up to two larger, in order of size. Some may be
    /// too tight for the head, or too loose to be taken by hand. 48, 52, 60 and 64 stitches.
    pub neighbours: Vec<Size>,
    /// Heights.
    pub depth: Depth,
    /// Every round, in working order: with a sideways band those above it (or, begun at the crown, those before it); rounds of a band
    /// worked around, of a tail and of a brim among them. None where the hat has no rounds.
    pub rounds: Vec<Round>,
    /// How far the crown's rounds are from its curve, as the root of the mean square of the girths' misses; absent where nothing is shaped.
    pub crown_miss: Option<Length>,
    /// How the top ends, or begins; absent where there is none.
    pub top: Option<Top>,
    /// Rows of a sideways band, in order, by colour: as long as the band has rows.
    pub band_rows: Vec<Colour>,
    /// Ear flaps, where it has them.
    pub flaps: Option<Flaps>,
    /// The whole hat as rows, where it is worked sideways.
    pub panel: Option<Panel>,
    /// Heads that it serves.
    pub fit: Fit,
    /// Finished girth if the swatch was counted half a stitch too low, and half too high; absent for an estimate.
    pub girth_range: Option<(Length, Length)>,
    /// The same carried into girth, depth and yarn; absent for an estimate.
    pub doubt: Option<crate::Doubt>,
    /// Yarn by colour, in the order of the hat's colours; nothing and no ball of a colour that the hat does not use.
    pub yarn: Vec<YarnNeed>,
    /// The same by part and colour, in the order of telling: a colour's need is the exact sum of its parts.
    pub yarn_parts: Vec<PartYarn>,
    /// The pom-pom or tassel, where there is one.
    pub topper: Option<TopperPlan>,
    /// What a maker should be told about this hat.
    pub remarks: Vec<Remark>,
}

impl Hat {
    /// The hat's round count around the head, next to the band.
    pub fn stitches(&self) -> Stitches {
        self.size.stitches
    }

    /// Rounds in all.
    pub fn round_count(&self) -> Rounds {
        Rounds::new(self.rounds.len() as u32)
    }

    /// The colours that rows and rounds use, in the order of the hat's colours. A pom-pom may add one.
    pub fn colours(&self) -> Vec<Colour> {
        let mut used: Vec<Colour> = self.band_rows.iter().copied().chain(self.rounds.iter().map(|r| r.colour)).collect();
        used.extend(self.panel.iter().flat_map(|p| &p.rows).map(|r| r.colour));
        used.extend(self.flaps.as_ref().map(|f| f.colour));
        used.sort_unstable();
        used.dedup();
        used
    }

    /// Every change of colour, in working order: within a piece of the work, never from one to another ([`changes`](crate::changes)).
    pub fn changes(&self) -> Vec<Change> {
        crate::strands::changes_of(self)
    }

    /// How decreases and increases lie in this hat: as its spec asks for, unless the wedges had to be given up.
    pub fn lays(&self, spec: &crate::HatSpec) -> crate::Layout {
        let dropped = self.remarks.iter().any(|r| matches!(r, Remark::WedgesDropped(_)));
        if dropped { crate::Layout::Spread } else { spec.lays() }
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
    /// Width of a stitch of the body: its girth by stitches; of a hat worked sideways, its height.
    pub stitch: Length,
    /// Height of a round of the body: its height by rounds; of a row of a hat worked sideways, its girth by rows.
    pub round: Length,
    /// Width of a stitch of the band: of a sideways band its height by stitches, of one worked around its girth. Without a band, as of the
    /// body.
    pub band_stitch: Length,
    /// Height of a row of the band: of a sideways band its girth by rows, of one worked around its height by rounds. Without a band, as
    /// of the body.
    pub band_row: Length,
    /// Stretch of the body around the head; without a swatch of its own, its fabric's. An ear warmer has no body, and it says nothing.
    pub body_stretch: Ratio,
    /// Stretch of the band around the head; without a band, the body's.
    pub band_stretch: Ratio,
    /// The body's gauge comes from a yarn-weight number, not a swatch.
    pub estimated: bool,
    /// There is a band, and it has no swatch of its own: its stitches are taken to be as wide as the body's, and as tall as its fabric's
    /// usual pick-up, or in the round its shape, makes them. A smaller hook draws a band in a little; only a swatch tells how much.
    pub band_assumed: bool,
}

/// A pair of counts, and what it does to the fit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// Rows of a sideways band, or of a hat worked sideways; 0 where there are none.
    pub rows: Rows,
    /// Stitches of the body next to the band. Of what has rows alone, its row ends: as many as rows.
    pub stitches: Stitches,
    /// Relaxed girth of the band; where there is none, of the body.
    pub band_girth: Length,
    /// Relaxed girth of the body: the finished size.
    pub girth: Length,
    /// Ease that the body really has; negative where it is larger than the head.
    pub ease: Ratio,
    /// The largest head that the less able of body and band reaches when stretched; an ear warmer has no body.
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

/// Heights of a hat, from its crown's centre. The numbers are those of [`Hat`]'s example.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Depth {
    /// Asked for: crown's centre to the lower edge as worn, along the fabric. 0.395 × 49.8 = 19.7 cm. A slouch hat has what it is longer
    /// by in it, a stocking cap its tail to the tip, a tam the way over its disc's edge and back along the underside; a brim is no part of it,
    /// and an ear warmer's is its band.
    pub wanted: Length,
    /// What the written rounds give: `above_band` + `band` − `fold`, at most about half a round from `wanted`.
    pub promised: Length,
    /// The band, unfolded: 10 stitches of 0.833 cm are 8.3 cm.
    pub band: Length,
    /// Of it, folded up: nothing to all of it. 4.2 cm.
    pub fold: Length,
    /// Fabric above the band that the written rounds give, the closed top included.
    pub above_band: Length,
    /// Straight rounds around the head: next to the edge, up to the first decrease, or from the last increase of a hat begun at the
    /// crown on. None in a tam, or a hat worked sideways.
    pub straight: Rounds,
}

/// A round.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Round {
    /// Counted from 1, in working order.
    pub number: u32,
    /// Stitches of the round below; for a pick-up round, the band's row ends; for a foundation, its own stitches; in a ring, 0.
    pub before: u32,
    /// Stitches that it leaves.
    pub after: Stitches,
    /// Decreases, each of two stitches into one.
    pub decreases: Stitches,
    /// Increases, each of two stitches in one. No round has both.
    pub increases: Stitches,
    /// Plain stitches worked before the first decrease or increase, so that they do not stack; 0 in wedges.
    pub lead: Stitches,
    /// What the round does.
    pub kind: RoundKind,
    /// Which part of the hat it belongs to.
    pub zone: Zone,
    /// Its colour.
    pub colour: Colour,
}

/// A part of a hat that is worked in rounds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Zone {
    /// A band worked around, in the band's fabric. All other zones are in the body's.
    Band,
    /// Around the head: up to the first decrease of the crown, or from its last increase on.
    Body,
    /// The underside of a tam, from the band to the edge of its disc.
    Under,
    /// The part that is shaped to close: a crown, a disc, the cone of a stocking cap.
    Crown,
    /// The straight tail of a stocking cap.
    Tail,
    /// A brim, worked outward from the edge.
    Brim,
}

/// A pair of ear flaps, worked in rows outward from the hat's edge.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Flaps {
    /// Rows of one flap, in order.
    pub rows: Vec<FlapRow>,
    /// Stitches of the edge between the flaps, at the back.
    pub back: Stitches,
    /// Stitches of the edge between the flaps, at the front.
    pub front: Stitches,
    /// Length as worked, from the edge.
    pub length: Length,
    /// Length of a tie; 0 where there is none.
    pub tie: Length,
    /// Chains of a tie; 0 where there is none.
    pub tie_chains: Stitches,
    /// Their colour.
    pub colour: Colour,
}

/// A row of a flap.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FlapRow {
    /// Stitches of the row below; for the first, stitches (or row ends) of the hat's edge.
    pub before: u32,
    /// Stitches that it leaves.
    pub after: Stitches,
    /// Decreases, at most one at each end of the row.
    pub decreases: Stitches,
}

/// A hat worked sideways: rows from edge to crown, the last seamed to the first.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Panel {
    /// Every row, in working order. Odd rows run to the crown, even rows back to the edge.
    pub rows: Vec<PanelRow>,
    /// Stitches of the foundation: of the longest row.
    pub stitches: Stitches,
    /// Rows of one wedge, after which lengths begin again; as many as a whole repeat of two where no row is short.
    pub wedge: Rows,
    /// How the crown closes.
    pub top: SideTop,
}

/// A row of a hat worked sideways.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PanelRow {
    /// Stitches worked.
    pub stitches: Stitches,
    /// Its colour.
    pub colour: Colour,
}

/// What a round does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RoundKind {
    /// Picks up along the ends of a sideways band's rows.
    PickUp,
    /// The foundation and first round of a hat begun at its edge.
    Foundation,
    /// Works into an adjustable ring.
    Ring,
    /// Joins the yarn to the edge that the hat was begun at, and works into it.
    Edge,
    /// Every stitch plain.
    Plain,
    /// Brings the count to a multiple of the wedges.
    Adjust,
    /// Narrows.
    Decrease,
    /// Widens.
    Increase,
}

/// What a top is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TopKind {
    /// A few stitches drawn up.
    Drawn,
    /// Gathered from a wider opening.
    Gathered,
    /// Begun in an adjustable ring.
    Ring,
    /// The ends of a sideways hat's rows, gathered.
    RowEnds,
}

/// How the top ends, or begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Top {
    /// Stitches, or row ends, drawn together; of a ring, those worked into it.
    pub stitches: Stitches,
    /// What it is.
    pub kind: TopKind,
    /// Across the opening before it is drawn up.
    pub opening: Length,
    /// Across the bundle that a gathered top leaves; small for a drawn one.
    pub bundle: Length,
    /// The end to leave for drawing up: twice through every stitch, and two ends more to sew across and fasten with. 56 stitches of
    /// 0.833 cm take 2 × 46.7 + 2 × 15 = 123.3 cm.
    pub strand: Length,
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
    /// The length with what is bought over it.
    pub safe: YarnLength,
    /// Standard deviation of what the balls must hold, for the chance that they are enough.
    pub deviation: YarnLength,
    /// Whole balls that hold `safe`, whatever is owned.
    pub balls: u32,
}

/// Yarn of one colour in one part of a hat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PartYarn {
    /// The part.
    pub part: Part,
    /// The colour.
    pub colour: Colour,
    /// Whether it is worked in the band's fabric.
    pub band: bool,
    /// Stitches, chains and joins, a decrease as one; 0 for what is cut or wound.
    pub stitches: u64,
    /// Its yarn, all strands of it.
    pub length: YarnLength,
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

/// A pom-pom or a tassel as it is wound.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TopperPlan {
    /// Which.
    pub kind: TopperKind,
    /// Diameter of a pom-pom when trimmed, or length of a tassel: the form that it is wound on is as wide.
    pub size: Length,
    /// Wraps around the form, 1 to 2,000. A pom-pom takes [`Quantity::PomPomWraps`] for each stitch width of its diameter: 108 for 6 cm
    /// in stitches of 0.833 cm. A tassel takes [`Quantity::TasselWraps`] ÷ the stitch width in cm, however long: 36. More than 2,000, of
    /// thread on the largest forms, go under no tie (practice, no source).
    pub wraps: u32,
    /// Its colour; `None` for all that band and body use, in equal parts.
    pub colour: Option<Colour>,
}

impl TopperPlan {
    /// The yarn that is wound, without the strand that ties it: wraps × twice the form. 108 wraps on 6 cm are 12.96 m.
    pub fn wound(&self) -> YarnLength {
        YarnLength::from_metres(f64::from(self.wraps) * 2.0 * self.size.cm() / 100.0)
    }
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
        /// Why they do not hold.
        why: Unsuited,
    },
    /// The count nearest to the wanted girth does not close the stripes, or the even rows of a sideways rib, or the pairs of stitches of a
    /// post-stitch rib worked around (then the repeat is 2, and there are no rows).
    StripesMoved {
        /// The count nearest the fit.
        nearest: Stitches,
        /// What the rows must divide by.
        repeat: Rows,
    },
    /// Another count would be nearer, and the wedges do not divide it: it would take an adjustment round.
    WedgesMoved {
        /// The count that would have been taken for a spread crown.
        nearest: Stitches,
        /// Wedges of the crown.
        wedges: u32,
    },
    /// Larger than the head.
    LooserThanHead,
    /// The written rounds miss the wanted depth by this much (positive: deeper).
    DepthOff(Length),
    /// A change of colour after an odd row of the band leaves the yarn at the wrong edge, to be cut: so many ends in the band, the
    /// first one and those of other cuts included.
    OddStripes(u32),
    /// The rib was kept even and the stripes closed by doubling an odd repeat.
    EvenRib,
    /// The fold is deeper than the hat: the cuff's edge stands this far above the crown.
    FoldAboveCrown(Length),
    /// The body's round is this tall for the width of its stitch, outside the range of its fabric ([`gauge_hint`](crate::gauge_hint)): perhaps the two
    /// counts are not of one swatch.
    UnusualStitch(Ratio),
    /// A gathered top leaves a bundle this wide.
    Bulk(Length),
    /// The rounds are those of a hat that is begun, as this planner planned them.
    PlanKept(u32),
    /// The rounds of a hat that is begun do not make the hat that is asked for now; it was planned anew.
    KeptDropped,
    /// So many wedges do not go into this crown: its decreases or increases are spread.
    WedgesDropped(u32),
    /// Ties, a long tail or a long tassel, and the wearer is a small child, or may be: strangling.
    LongParts,
    /// The gauge is unusual for this yarn weight, or this fabric: a hint, never a refusal.
    UnusualGauge,
    /// The wearer is a child under 3 years, or may be: a measured head is up to the 97th percentile of that age. Pom-pom and small
    /// parts.
    SmallParts,
    /// The same for a baby under 12 months: sleep.
    BabySleep,
}

/// Why counts taken by hand do not hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unsuited {
    /// The rows do not divide by this; without rows, the stitches of a post-stitch rib do not, which come in pairs.
    Repeat(Rows),
    /// Fewer stitches than [`Quantity::LeastStitches`].
    Few,
    /// Stretched, the hat reaches only this head.
    Tight(Length),
    /// The hat is this much around: looser than [`Quantity::LoosestByHand`] allows.
    Loose(Length),
    /// The band's girth, which the body's is too unlike.
    Unlike(Length),
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
        /// The most ease that is accepted, in whole tenths of a per cent: what the stretch allows, within half a tenth.
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
    /// Every count is either too tight for the head or too loose: the stitches are too wide for it.
    NoCount {
        /// The head.
        head: Length,
        /// Girth of the largest count that is too tight; the next, a pair of rows more, is too loose. Zero where the least count is.
        nearest: Length,
    },
    /// More is folded up than there is band.
    FoldBeyondBand {
        /// The fold.
        fold: Length,
        /// The band's height, rounded down: so much can be folded up.
        band: Length,
    },
    /// A disc this wide cannot have this girth at its underside: it must be wider than the band.
    TamTooSmall {
        /// Across the disc.
        across: Length,
        /// The least that works.
        least: Length,
    },
    /// The hat would have more rounds than can be counted, or the row ends of a sideways hat cannot be gathered.
    TooLong {
        /// Which measure.
        measure: Quantity,
        /// The most that works.
        most: Length,
    },
    /// No crown fits above this band, or, without one, on this depth.
    BandTooTall {
        /// How the band is worked, if there is one.
        band: BandKind,
        /// What is left above it; may be negative.
        left: Length,
        /// The smallest fold that works, where one does.
        fold: Option<Length>,
        /// The tallest band that works with this fold, where one does: in stitches, or in rounds of a band worked around.
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
            Self::TamTooSmall { .. } => Quantity::TamAcross,
            Self::TooLong { measure, .. } => *measure,
            Self::Breach(_) | Self::StripesCannotClose { .. } => Quantity::StripeRows,
            Self::EaseBeyondStretch { .. } | Self::NoCount { .. } => Quantity::Ease,
            Self::FoldBeyondBand { .. } => Quantity::Fold,
            Self::BandTooTall { band: BandKind::Sideways, .. } => Quantity::BandHeight,
            Self::BandTooTall { band: BandKind::Around, .. } => Quantity::BandRounds,
            Self::BandTooTall { band: BandKind::None, .. } => Quantity::OverTop,
        }
    }
}
