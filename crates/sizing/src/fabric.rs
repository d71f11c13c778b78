//! The one table of fabrics: adding a stitch is adding a row.

use crate::{BandKind, Style};
use serde::{Deserialize, Serialize};

/// A stitch. Its names in US and UK terms are the pattern crate's.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Stitch {
    /// Slip stitch.
    Slip,
    /// US single crochet, UK double crochet.
    Single,
    /// US half double crochet, UK half treble crochet.
    HalfDouble,
    /// US double crochet, UK treble crochet.
    Double,
}

/// Which part of the stitch below the hook takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Loops {
    /// Both loops.
    Both,
    /// The back loop.
    Back,
    /// The front loop.
    Front,
    /// Around the post, from the front and from the back in turn: a rib.
    Posts,
}

/// A fabric's numbers. Ratios are ten-thousandths; all are common practice without a published source, written from memory, and stand
/// in only until there is a swatch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FabricRow {
    /// A stable identifier.
    pub key: &'static str,
    /// Its stitch.
    pub stitch: Stitch,
    /// Where that goes.
    pub loops: Loops,
    /// Height ÷ width of a stitch in rounds that are never turned: single 0.85, half double 1.3, double 1.85. A flat disc grows by 2π times
    /// as much a round: 5.3, 8.2 and 11.6, where the trade's rule says 6, 8 and 12. In one loop a stitch stands a little taller;
    /// around the posts, which hang in front of and behind each other, a double crochet stands lower.
    pub shape: u32,
    /// Stretched ÷ relaxed along a round: plain fabric and single loops 1.1, a post-stitch rib, whose columns open, 1.3.
    pub stretch_along: u32,
    /// Stretched ÷ relaxed across turned rows, around a head that they stand upright on: plain 1.1, back loops 1.35 (the ridges fold and
    /// open; in double crochet, with fewer ridges, a little less), front loops a little less, slip stitches 1.5.
    pub stretch_across: u32,
    /// Yarn in a stitch, in stitch widths: slip 3.5, single 7, half double 9.5, double 12.5; a loop more or less makes no difference that
    /// could be measured, and a post stitch takes 1 more, to reach around.
    pub yarn: u32,
    /// Chains of the turn, or of the start of a joined round; never counted as a stitch.
    pub chain: u32,
    /// Stitches picked up in the end of each row: single 1, half double 3 in 2 rows, double 2, slip stitch 1 in 2 rows. They are as
    /// wide as the row is tall, so this is also the height of a turned row in stitch widths where there is no swatch.
    pub pick_up: u32,
    /// Whether a sideways band or hat may be made of it.
    pub sideways: bool,
    /// Whether a body or a band may be worked around in it.
    pub around: bool,
}

macro_rules! fabrics {
    ($($(#[$doc:meta])* $name:ident $key:literal $stitch:ident $loops:ident shape $shape:literal along $along:literal
        across $across:literal yarn $yarn:literal chain $chain:literal pick_up $pick:literal sideways $side:literal around $around:literal;)*) => {
        /// A fabric's place in the table.
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
        pub enum Fabric {
            $($(#[$doc])* $name,)*
        }

        impl Fabric {
            /// Every fabric, in the table's order.
            pub const ALL: &'static [Self] = &[$(Self::$name,)*];

            /// The fabric's row of the table.
            pub const fn row(self) -> FabricRow {
                match self {
                    $(Self::$name => FabricRow {
                        key: $key, stitch: Stitch::$stitch, loops: Loops::$loops, shape: $shape, stretch_along: $along,
                        stretch_across: $across, yarn: $yarn, chain: $chain, pick_up: $pick, sideways: $side, around: $around,
                    },)*
                }
            }
        }
    };
}

fabrics! {
    /// Single crochet in both loops: the usual body.
    #[default]
    Single "single" Single Both shape 8_500 along 11_000 across 11_000 yarn 70_000 chain 1 pick_up 10_000 sideways true around true;
    /// Single crochet in the back loops: sideways, the usual rib.
    SingleBack "single-back" Single Back shape 9_000 along 11_000 across 13_500 yarn 70_000 chain 1 pick_up 10_000 sideways true around true;
    /// Single crochet in the front loops.
    SingleFront "single-front" Single Front shape 9_000 along 11_000 across 12_500 yarn 70_000 chain 1 pick_up 10_000 sideways true around true;
    /// Half double crochet in both loops.
    HalfDouble "half-double" HalfDouble Both shape 13_000 along 11_000 across 11_000 yarn 95_000 chain 2 pick_up 15_000 sideways true around true;
    /// Half double crochet in the back loops.
    HalfDoubleBack "half-double-back" HalfDouble Back shape 13_500 along 11_000 across 13_500 yarn 95_000 chain 2 pick_up 15_000 sideways true around true;
    /// Half double crochet in the front loops.
    HalfDoubleFront "half-double-front" HalfDouble Front shape 13_500 along 11_000 across 12_500 yarn 95_000 chain 2 pick_up 15_000 sideways true around true;
    /// Double crochet in both loops.
    Double "double" Double Both shape 18_500 along 11_000 across 11_000 yarn 125_000 chain 3 pick_up 20_000 sideways true around true;
    /// Double crochet in the back loops.
    DoubleBack "double-back" Double Back shape 19_000 along 11_000 across 13_000 yarn 125_000 chain 3 pick_up 20_000 sideways true around true;
    /// Double crochet in the front loops.
    DoubleFront "double-front" Double Front shape 19_000 along 11_000 across 12_500 yarn 125_000 chain 3 pick_up 20_000 sideways true around true;
    /// Slip stitches in the back loops, sideways: the rib that stretches most.
    SlipRib "slip-rib" Slip Back shape 5_000 along 11_000 across 15_000 yarn 35_000 chain 1 pick_up 5_000 sideways true around false;
    /// Double crochet around the posts, from the front and from the back in turn.
    PostRib "post-rib" Double Posts shape 17_000 along 13_000 across 11_000 yarn 135_000 chain 2 pick_up 20_000 sideways false around true;
}

impl Fabric {
    /// What such a band is usually made of: single crochet in the back loops sideways, a post-stitch rib around (practice, no source).
    ///
    /// ```
    /// use hatwright_sizing::{BandKind, Fabric};
    /// assert_eq!(Fabric::usual_for(BandKind::Sideways), Fabric::SingleBack);
    /// assert!(Fabric::usual_for(BandKind::Around).bands(BandKind::Around));
    /// ```
    #[must_use]
    pub const fn usual_for(kind: BandKind) -> Self {
        match kind {
            BandKind::Sideways => Self::SingleBack,
            BandKind::Around => Self::PostRib,
            BandKind::None => Self::Single,
        }
    }

    /// Yarn in one of its stitches, in stitch widths: 7 for single crochet.
    ///
    /// ```
    /// use hatwright_sizing::Fabric;
    /// assert_eq!(Fabric::Single.yarn(), 7.0);
    /// ```
    pub fn yarn(self) -> f64 {
        f64::from(self.row().yarn) / 10_000.0
    }

    /// Whether a band may be made of it in this way.
    pub const fn bands(self, kind: BandKind) -> bool {
        match kind {
            BandKind::Sideways => self.row().sideways,
            BandKind::Around => self.row().around,
            BandKind::None => true,
        }
    }

    /// Whether the body of such a hat may be made of it. A post-stitch rib needs a plain round to begin on, and does not shape.
    pub const fn bodies(self, style: Style) -> bool {
        match style {
            Style::Sideways => self.row().sideways,
            _ => self.row().around && !matches!(self.row().loops, Loops::Posts),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_sane() {
        let mut keys: Vec<&str> = Fabric::ALL.iter().map(|fabric| fabric.row().key).collect();
        keys.sort_unstable();
        keys.dedup();
        assert_eq!(keys.len(), Fabric::ALL.len());
        for fabric in Fabric::ALL {
            let row = fabric.row();
            assert!((4_000..=25_000).contains(&row.shape), "{fabric:?}");
            for stretch in [row.stretch_along, row.stretch_across] {
                assert!(crate::Quantity::BodyStretch.row().holds(stretch as i32), "{fabric:?}");
            }
            assert!((30_000..=150_000).contains(&row.yarn) && (1..=3).contains(&row.chain), "{fabric:?}");
            assert!(row.sideways || row.around, "{fabric:?}");
            // A row end takes as many stitches as are as wide as the row is tall. Turned rows lie a little taller than rounds.
            let factor = f64::from(row.pick_up) / f64::from(row.shape);
            assert!((0.9..=1.25).contains(&factor), "{fabric:?}: {factor}");
            // Rows come in pairs, and a pair of row ends takes whole stitches.
            assert!((2 * row.pick_up).is_multiple_of(10_000), "{fabric:?}");
        }
    }

    /// The trade's rule of thumb for a flat disc (common practice, no source): 6, 8 and 12 more a round. Single crochet at 0.85 grows by
    /// 5.3: the rule rounds up, and a swatch of 14 × 16 to 10 cm has 5.5.
    #[test]
    fn a_flat_disc_grows_as_the_trade_says() {
        for (fabric, rule) in [(Fabric::Single, 6.0), (Fabric::HalfDouble, 8.0), (Fabric::Double, 12.0)] {
            let growth = core::f64::consts::TAU * f64::from(fabric.row().shape) / 10_000.0;
            assert!((growth - rule).abs() <= 0.7, "{fabric:?}: {growth}");
        }
    }

    /// Taller stitches take more yarn and longer turning chains, in whichever loop.
    #[test]
    fn taller_stitches_take_more() {
        for pair in Fabric::ALL.iter().flat_map(|a| Fabric::ALL.iter().map(move |b| (a.row(), b.row()))) {
            if pair.0.stitch < pair.1.stitch {
                assert!(pair.0.yarn < pair.1.yarn && pair.0.chain <= pair.1.chain && pair.0.shape < pair.1.shape, "{pair:?}");
            }
        }
    }

    #[test]
    fn there_is_a_fabric_for_every_hat() {
        for style in Style::ALL {
            assert!(Fabric::ALL.iter().any(|fabric| fabric.bodies(style)), "{style:?}");
            for kind in [BandKind::Sideways, BandKind::Around, BandKind::None] {
                assert!(Fabric::ALL.iter().any(|fabric| fabric.bands(kind)), "{style:?} {kind:?}");
                assert!(Fabric::usual_for(kind).bands(kind));
                let band = crate::BandSpec { kind, fabric: Fabric::usual_for(kind), ..crate::HatSpec::default().band };
                let spec = crate::HatSpec { style, band, ..crate::HatSpec::default() };
                assert_eq!(spec.check(), Ok(()), "{style:?} {kind:?}");
                assert!(spec.band_fabric().bands(spec.band_kind()), "{style:?} {kind:?}");
            }
        }
    }
}
