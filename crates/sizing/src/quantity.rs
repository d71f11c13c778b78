//! The one table of quantities: every number that a person types or that the planner weighs, with its unit, range and default.
//!
//! Forms, validation, messages and documentation read it; nothing else repeats a range.

// 12_00 is twelve: the last two digits are the hundredths.
#![allow(clippy::inconsistent_digit_grouping)]

/// How a quantity's whole ticks are to be read and shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// A length: ticks are hundredths of a millimetre; shown in centimetres or inches.
    Length,
    /// A length of yarn: ticks are hundredths of a metre; shown in metres or yards.
    Yarn,
    /// A weight: ticks are hundredths of a gram; shown in grams or ounces.
    Mass,
    /// An amount of money: ticks are hundredths.
    Money,
    /// A count that may be averaged: ticks are hundredths.
    Count,
    /// A whole count: ticks are ones.
    Whole,
    /// A share: ticks are hundredths of a per cent.
    Percent,
    /// A factor: ticks are ten-thousandths.
    Factor,
    /// A hook's size: ticks are hundredths of a millimetre; shown in millimetres whatever the units.
    Hook,
    /// A price in the planner's cost, ticks are thousandths of cm³ (squared girth error over an arc).
    Price,
}

macro_rules! quantities {
    ($($(#[$doc:meta])* $name:ident $key:literal $unit:ident $least:literal .. $most:literal, $usual:literal;)*) => {
        /// A quantity's place in the table.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Quantity {
            $($(#[$doc])* $name,)*
        }

        impl Quantity {
            /// Every quantity, in the table's order.
            pub const ALL: &'static [Quantity] = &[$(Quantity::$name,)*];

            /// The quantity's row of the table.
            pub const fn row(self) -> Row {
                match self {
                    $(Quantity::$name => Row { key: $key, unit: Unit::$unit, least: $least, most: $most, usual: $usual },)*
                }
            }
        }
    };
}

/// A row of the table. All numbers are ticks of the row's unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Row {
    /// A stable identifier, for element ids and for the documentation.
    pub key: &'static str,
    /// How ticks are read.
    pub unit: Unit,
    /// The least that is accepted.
    pub least: i32,
    /// The most that is accepted.
    pub most: i32,
    /// What a new hat starts with, or the planner uses.
    pub usual: i32,
}

impl Row {
    /// Whether a number of ticks lies in the row's range.
    pub const fn holds(&self, ticks: i32) -> bool {
        self.least <= ticks && ticks <= self.most
    }

    /// The default as a plain number of the unit that the planner calculates in: cm, metres, ones, shares or prices.
    pub fn usual_value(&self) -> f64 {
        let scale = match self.unit {
            Unit::Length | Unit::Hook | Unit::Price => 1000.0,
            Unit::Yarn | Unit::Mass | Unit::Money | Unit::Count => 100.0,
            Unit::Whole => 1.0,
            Unit::Percent | Unit::Factor => 10_000.0,
        };
        f64::from(self.usual) / scale
    }
}

quantities! {
    /// Girth of the head, level, above the brows and over the widest part behind. From preterm (22 cm) to past the largest of
    /// NIOSH 2003 (65.4 cm), with hair.
    HeadGirth "head-girth" Length 22_000 .. 75_000, 49_800;
    /// Age when the hat is worn, in weeks.
    AgeWeeks "age-weeks" Count 0 .. 104_00, 6_00;
    /// Age when the hat is worn, in months.
    AgeMonths "age-months" Count 0 .. 240_00, 12_00;
    /// Age when the hat is worn, in years; from 18 on, an adult.
    AgeYears "age-years" Count 0 .. 110_00, 4_00;
    /// Percentile of the head among heads of its age and sex.
    Percentile "percentile" Percent 1_00 .. 99_00, 50_00;
    /// Over the crown from ear canal to ear canal: ANSUR's bitragion coronal arc is about 0.62 of the girth.
    OverTop "over-top" Length 12_000 .. 55_000, 31_000;
    /// Thickness of hair or lining (practice, no source: up to 2 cm of hair under a hat).
    Lining "lining" Length 0 .. 2_000, 0;
    /// Hook of the body. ISO-like ranges of the trade go from 0.5 mm steel to 25 mm (common practice, no source).
    Hook "hook" Hook 50 .. 2_500, 500;
    /// Hook of the band: often 0.5 to 1 mm smaller (practice).
    BandHook "band-hook" Hook 50 .. 2_500, 450;
    /// Strands held together.
    Strands "strands" Whole 1 .. 6, 1;
    /// Rounds of a band that is worked around.
    BandRounds "band-rounds" Whole 1 .. 80, 6;
    /// How much wider than the band the body of a slouch hat is (practice, no source).
    SlouchWider "slouch-wider" Percent 0 .. 60_00, 15_00;
    /// How much deeper than a fitted hat a slouch hat is (practice, no source: 4 to 8 cm).
    SlouchLonger "slouch-longer" Length 0 .. 30_000, 5_000;
    /// Length of a stocking cap beyond the top of the head, to its tip.
    Tail "tail" Length 0 .. 2_000_000, 30_000;
    /// How much of that length narrows, at the most; the rest is a straight tail (practice, no source).
    Taper "taper" Length 0 .. 100_000, 30_000;
    /// Stitches of the straight tail (practice, no source).
    TailStitches "tail-stitches" Whole 6 .. 60, 10;
    /// Across the disc of a tam, laid flat (practice, no source: 25 to 28 cm for adults, about half the head's girth).
    TamAcross "tam-across" Length 12_000 .. 50_000, 24_500;
    /// Length of an ear flap (practice, no source: from the tops of the ears to below the lobes).
    FlapLength "flap-length" Length 2_000 .. 20_000, 8_000;
    /// Length of each tie; none where it is 0.
    FlapTie "flap-tie" Length 0 .. 60_000, 0;
    /// Width of a brim.
    Brim "brim" Length 1_000 .. 20_000, 6_000;
    /// How much of the flat rate a brim grows by: 100 % lies flat, less flares down.
    Flare "flare" Percent 10_00 .. 100_00, 100_00;
    /// Wedges of a sideways hat's short-row crown.
    SideWedges "side-wedges" Whole 4 .. 12, 6;
    /// Stitches counted in the swatch, along a round. Fewer than 4 tell nothing.
    SwatchStitches "swatch-stitches" Count 4_00 .. 200_00, 12_00;
    /// Width over which the swatch's stitches were counted.
    SwatchWidth "swatch-width" Length 2_000 .. 60_000, 10_000;
    /// Rounds counted in the swatch.
    SwatchRounds "swatch-rounds" Count 2_00 .. 200_00, 15_00;
    /// Height over which the swatch's rounds were counted.
    SwatchHeight "swatch-height" Length 2_000 .. 60_000, 10_000;
    /// Stretched ÷ relaxed girth of plain single crochet in the round (practice, from memory: 1.10).
    BodyStretch "body-stretch" Factor 10_000 .. 20_000, 11_000;
    /// Stitches counted in the band's swatch, along a row: they stand upright in the band.
    BandSwatchStitches "band-swatch-stitches" Count 4_00 .. 200_00, 12_00;
    /// Width over which the band swatch's stitches were counted.
    BandSwatchWidth "band-swatch-width" Length 2_000 .. 60_000, 10_000;
    /// Rows counted in the band's swatch: they lie along the girth.
    BandSwatchRows "band-swatch-rows" Count 2_00 .. 200_00, 12_00;
    /// Length over which the band swatch's rows were counted.
    BandSwatchLength "band-swatch-length" Length 2_000 .. 60_000, 10_000;
    /// Stretched ÷ relaxed girth of sideways single-crochet rib (practice, from memory: 1.35).
    BandStretch "band-stretch" Factor 10_000 .. 30_000, 13_500;
    /// How much smaller than the head the hat is.
    Ease "ease" Percent 0 .. 3_000, 700;
    /// Height of the band in stitches, before folding.
    BandHeight "band-height" Whole 2 .. 80, 10;
    /// How much of the band is folded up, from its lower edge.
    Fold "fold" Length 0 .. 40_000, 4_200;
    /// Rows of one stripe of the band.
    StripeRows "stripe-rows" Whole 1 .. 60, 2;
    /// Rounds of one stripe of the body.
    StripeRounds "stripe-rounds" Whole 1 .. 200, 2;
    /// Wedges of the crown. Four is the least that a decrease round may take; more than 12 leaves no stitches between.
    Wedges "wedges" Whole 4 .. 12, 8;
    /// Stitches left for a gathered top; more than the hat has means the whole tube (practice under a pom-pom: 50–80).
    Gather "gather" Whole 13 .. 400, 56;
    /// Diameter of the trimmed pom-pom.
    PomPom "pom-pom" Length 2_000 .. 20_000, 6_000;
    /// Metres of yarn in a ball, from its band.
    BallYarn "ball-yarn" Yarn 5_00 .. 2_000_00, 80_00;
    /// Length of a tassel (practice, no source: 8 to 15 cm).
    Tassel "tassel" Length 3_000 .. 40_000, 10_000;
    /// How full a pom-pom or a tassel is, as a share of the usual wraps.
    Fullness "fullness" Percent 4_000 .. 25_000, 10_000;
    /// What a ball weighs, from its band.
    BallGrams "ball-grams" Mass 1_00 .. 5_000_00, 50_00;
    /// Balls that are owned already.
    BallsOwned "balls-owned" Count 0 .. 999_00, 0;
    /// Price of a ball.
    BallPrice "ball-price" Money 0 .. 100_000_00, 4_50;
    /// How often the balls should be enough.
    Chance "chance" Percent 50_00 .. 99_90, 95_00;
    /// Extra yarn bought over the estimate, where a person sets it by hand.
    Margin "margin" Percent 0 .. 10_000, 2_500;
    /// Stitches of the swatch that is weighed: all of them, edges too.
    WeighedStitches "weighed-stitches" Whole 10 .. 100_000, 180;
    /// What it weighs.
    WeighedGrams "weighed-grams" Mass 10 .. 1_000_00, 10_00;
    /// The smallest step that the scale shows.
    ScaleStep "scale-step" Mass 1 .. 50_00, 1_00;
    /// Stitches that are unravelled to measure their yarn.
    UnravelledStitches "unravelled-stitches" Whole 1 .. 2_000, 20;
    /// The yarn that they give.
    UnravelledLength "unravelled-length" Length 1_000 .. 5_000_000, 116_000;
    /// Yarn in a stitch as it was found earlier, about the estimate: less than a fifth or more than five times is a miscount.
    KeptFactor "kept-factor" Factor 2_000 .. 50_000, 10_000;
    /// Half-width of its 90 % range, as a share.
    KeptDoubt "kept-doubt" Percent 0 .. 100_00, 10_00;
    /// What a finished hat weighs, pom-pom and all.
    HatGrams "hat-grams" Mass 1_00 .. 5_000_00, 60_00;
    /// Metres in a ball of another yarn that might take this one's place.
    InsteadYarn "instead-yarn" Yarn 5_00 .. 2_000_00, 80_00;
    /// What such a ball weighs.
    InsteadGrams "instead-grams" Mass 1_00 .. 5_000_00, 50_00;
    /// Stitches counted in that yarn's swatch.
    InsteadStitches "instead-stitches" Count 4_00 .. 200_00, 12_00;
    /// Width over which they were counted.
    InsteadWidth "instead-width" Length 2_000 .. 60_000, 10_000;
    /// Rounds counted in it.
    InsteadRounds "instead-rounds" Count 2_00 .. 200_00, 15_00;
    /// Height over which they were counted.
    InsteadHeight "instead-height" Length 2_000 .. 60_000, 10_000;

    /// Width of a stitch of the body, from its swatch. The finest thread crochet goes to about 1.5 mm (practice, no source).
    BodyStitch "body-stitch" Length 120 .. 6_000, 833;
    /// Height of a round of the body, from its swatch.
    BodyRound "body-round" Length 100 .. 12_000, 667;
    /// Width of a stitch of the band, from its swatch.
    BandStitch "band-stitch" Length 120 .. 6_000, 833;
    /// Height of a row of the band, from its swatch.
    BandRow "band-row" Length 100 .. 12_000, 833;
    /// How loose still fits, as a share of the hat's girth: of two heads that a hat of 50 cm fits, the smaller has 49. The planner's
    /// own counts are no looser than this share of the head's girth either (practice, no source: what hangs looser is too big).
    LoosestFit "loosest-fit" Percent 0 .. 1_000, 200;
    /// How loose a count taken by hand may be, as a share of the head's girth: on a head of 50 cm, 55 cm (practice, no source).
    LoosestByHand "loosest-by-hand" Percent 0 .. 5_000, 1_000;
    /// How far the two girths of a pair of counts taken by hand may differ, as a share of the band's (practice, no source: more than
    /// this ruffles at the pick-up).
    UnlikeByHand "unlike-by-hand" Percent 0 .. 5_000, 2_500;
    /// Fewest stitches of a body: what a strand draws up without a hole (practice, no source).
    LeastStitches "least-stitches" Whole 4 .. 60, 8;
    /// Share of heads of an age that a hat must fit to be said to fit that age: the sentences say "8 in 10".
    FitShare "fit-share" Percent 5_000 .. 9_500, 8_000;
    /// How far a band's girth may differ from the body's before the two counts part (practice, no source).
    EqualGirths "equal-girths" Percent 0 .. 3_000, 800;
    /// How flat a swatch's stitch may be, as a share of its fabric's own height ÷ width, before it is asked about (practice, no source).
    ShapeLeast "shape-least" Percent 10_00 .. 100_00, 70_00;
    /// How tall it may be (practice, no source): single crochet, 0.85 times as tall as wide, from 0.6 to 1.2.
    ShapeMost "shape-most" Percent 100_00 .. 300_00, 140_00;
    /// How far a hook may lie outside the published range of the yarn weights that its stitch suits, as a share, before it is asked
    /// about (practice, no source: the published ranges are for plain swatches, and hats are worked tighter and looser).
    HookSlack "hook-slack" Percent 0 .. 100_00, 25_00;
    /// Depth from the crown's centre to the edge that covers the ears, as a share of the girth. Practice is 0.38–0.41; 0.395 comes
    /// nearest the trade's whole depths from newborn to man (tests/published).
    CoverEars "cover-ears" Factor 3_000 .. 5_000, 3_950;
    /// The same to the ear lobes: ANSUR I 1988, means of men 0.3690 and women 0.3648.
    CoverLobes "cover-lobes" Factor 3_000 .. 5_000, 3_670;
    /// The same to the ear canals: ANSUR I 1988 and NIOSH 2003, means of both sexes 0.3045–0.3112.
    CoverCanals "cover-canals" Factor 2_500 .. 5_000, 3_080;
    /// The same to the tops of the ears (practice, no source).
    CoverTops "cover-tops" Factor 2_000 .. 5_000, 2_600;
    /// Price of a decrease round whose count does not divide.
    PriceUneven "price-uneven" Price 0 .. 100_000, 350;
    /// Price of a change in the number of decreases.
    PriceChange "price-change" Price 0 .. 100_000, 500;
    /// Price of a decrease round straight after another where one would do.
    PriceRunning "price-running" Price 0 .. 100_000, 150;
    /// Price of each stitch over 8 that the strand must draw up: a wider ring closes less tightly.
    PriceOpening "price-opening" Price 0 .. 100_000, 150;
    /// Price, in cm of girth, of a count that needs an adjustment round before its wedges.
    PriceAdjust "price-adjust" Price 0 .. 100_000, 400;
    /// How much it counts that a band's girth misses what was asked for by more than the body's does (practice, no source: half as
    /// much, because a rib gives).
    BandMiss "band-miss" Percent 0 .. 10_000, 5_000;
    /// Price, in cm of girth, of each row end in the shortest repeat of a pick-up (practice, no source: 7 in 8 beats 53 in 61).
    PricePickUp "price-pick-up" Price 0 .. 100_000, 20;
    /// Most that a round may exceed the flat disc of its radius before the fabric ruffles.
    Ruffle "ruffle" Factor 10_000 .. 12_000, 10_500;
    /// Yarn in a chain, in stitch widths (practice, from memory).
    YarnChain "yarn-chain" Factor 1 .. 300_000, 33_000;
    /// Yarn in a decrease, in stitches of its fabric (practice, from memory).
    YarnDecrease "yarn-decrease" Factor 1 .. 300_000, 16_000;
    /// Half-width of the 90 % range of an estimated yarn length; one error, shared by all stitches (practice, from memory).
    YarnDoubt "yarn-doubt" Percent 0 .. 10_000, 2_500;
    /// Wraps of a pom-pom for each stitch width of its diameter (practice, from memory: about 110 for 6 cm in a bulky yarn).
    PomPomWraps "pom-pom-wraps" Whole 1 .. 60, 15;
    /// Wraps of a tassel, times the stitch width in cm: 36 in stitches of 0.833 cm (practice, from memory: 30 to 50).
    TasselWraps "tassel-wraps" Whole 1 .. 200, 30;
    /// Half-width of the 90 % range of yarn that is cut or wound, not worked: ends, strands, pom-pom (practice, no source).
    OtherDoubt "other-doubt" Percent 0 .. 10_000, 1_000;
    /// Half-width of the 90 % range of the metres in a ball, or to a gram, about what its band says (practice, no source).
    BandDoubt "band-doubt" Percent 0 .. 5_000, 300;
    /// The same of a hat's stitches about those of the swatch that was weighed: a hand is looser on one day than on another
    /// (practice, no source).
    HandDoubt "hand-doubt" Percent 0 .. 5_000, 500;
    /// How far off the tape is on unravelled yarn, which is crinkled and gives (practice, no source).
    UnravelDoubt "unravel-doubt" Percent 0 .. 5_000, 400;
    /// How far the yarn of one stitch is from that of the next, as a share: so few are unravelled that it matters (practice, no
    /// source).
    StitchDoubt "stitch-doubt" Percent 0 .. 10_000, 1_500;
    /// Half-width of the 90 % range of one fabric's yarn reckoned from another's (practice, no source).
    FabricDoubt "fabric-doubt" Percent 0 .. 10_000, 1_000;
    /// Side of the square swatch that is reckoned with where it is kept.
    SwatchSide "swatch-side" Length 5_000 .. 40_000, 15_000;
    /// Rows and rounds past which a colour's yarn waits to be taken up again; past more, it is cut (practice, no source).
    CarryPast "carry-past" Whole 0 .. 40, 6;
    /// Yarn left at an end that is woven in (practice, no source).
    YarnEnd "yarn-end" Length 5_000 .. 40_000, 15_000;
}
