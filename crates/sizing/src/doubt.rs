//! How sure a hat is: half a stitch in the swatch, carried into girth, depth and yarn.

use crate::{BandKind, BandSwatch, Count, Hat, HatSpec, Length, Ratio, Style, Swatch};

/// What half a stitch, or half a round, miscounted in the swatch does to a hat whose written counts are kept.
///
/// A swatch of `N` stitches counted to ± ½ has stitches of `N/(N + ½)` to `N/(N − ½)` of the width that was reckoned with. The example
/// in the fields is [`HatSpec::default`]: 56 stitches at 12 stitches and 15 rounds to 10 cm.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Doubt {
    /// Finished girth, least and most: 46.7 cm reads 44.8 to 48.7.
    pub girth: (Length, Length),
    /// Depth as worn, least and most: half a round in 15 moves what is worked in rounds by 3 %. Fold and sideways band stay.
    pub depth: (Length, Length),
    /// By how much it moves the yarn of the stitches, at the most, as a share: ½ ÷ 11½ = 4.3 %. A stitch takes a fixed number of its
    /// widths; ends and pom-pom do not move. The doubt about that number comes on top.
    pub yarn_share: Ratio,
    /// The width of swatch that brings the doubt about the girth down to one stitch, in whole cm; absent where the swatch is that wide.
    ///
    /// `n·½/N ≤ 1` asks for `N ≥ n/2` stitches: half the hat. Half of 56 stitches of 0.833 cm are 23.3 cm, so 24 cm.
    pub swatch_width: Option<Length>,
}

/// The counts of the swatches that a hat's measures rest on.
struct Counts {
    /// Along the girth.
    girth: f64,
    /// What is worked in the body's fabric, along the depth.
    body: f64,
    /// The band's height.
    band: Option<f64>,
    /// Stitches, whose width measures the yarn.
    stitches: f64,
}

impl Doubt {
    /// The doubt about a planned hat; none for an estimate from a yarn weight, which is no measurement.
    pub(crate) fn of(spec: &HatSpec, hat: &Hat) -> Option<Self> {
        let counts = Counts::of(spec)?;
        let girth = hat.size.girth.cm();
        let body = hat.depth.above_band.cm();
        let kept = hat.depth.promised.cm() - body;
        let band = hat.depth.band.cm();
        let depth = |half: f64| {
            let moved = counts.band.map_or(0.0, |n| band * n / (n + half) - band);
            Length::from_cm(kept + body * counts.body / (counts.body + half) + moved)
        };
        let wide = |half: f64| Length::from_cm(girth * counts.girth / (counts.girth + half));
        let cells = match (spec.style, spec.band_kind()) {
            (Style::Sideways, _) => hat.gauge.round,
            (Style::EarWarmer, BandKind::Sideways) => hat.gauge.band_row,
            (Style::EarWarmer, _) => hat.gauge.band_stitch,
            _ => hat.gauge.stitch,
        };
        let around = girth / cells.cm().max(0.001);
        // A count of the very half must not fail by the rounding of a stitch to a tick.
        let enough = counts.girth + 0.01 >= around / 2.0;
        Some(Self {
            girth: (wide(0.5), wide(-0.5)),
            depth: (depth(0.5), depth(-0.5)),
            yarn_share: Ratio::of(0.5 / (counts.stitches - 0.5)),
            swatch_width: (!enough).then(|| Length::from_cm(libm::ceil(girth / 2.0 - 0.001))),
        })
    }
}

impl Counts {
    fn of(spec: &HatSpec) -> Option<Self> {
        let Swatch::Counted { stitches, rounds, .. } = spec.swatch else { return None };
        // No fewer than the table lets a swatch have, so that half a stitch less is still some.
        let held = |count: Count, least: f64| count.value().max(least);
        let (stitches, rounds) = (held(stitches, 4.0), held(rounds, 2.0));
        // Without a swatch of its own the band is reckoned from the width of the body's stitch, its rows and rounds too.
        let own = spec.band.swatch.map(|BandSwatch { stitches, rows, .. }| (held(stitches, 4.0), held(rows, 2.0)));
        let (band_stitches, band_rows) = own.unwrap_or((stitches, stitches));
        let usual = Self { girth: stitches, body: rounds, band: None, stitches };
        Some(match (spec.style, spec.band_kind()) {
            (Style::Sideways, _) => Self { girth: rounds, body: stitches, ..usual },
            (Style::EarWarmer, BandKind::Sideways) => {
                Self { girth: band_rows, band: Some(band_stitches), stitches: band_stitches, ..usual }
            }
            (Style::EarWarmer, _) => Self { girth: band_stitches, band: Some(band_rows), stitches: band_stitches, ..usual },
            (_, BandKind::Around) => Self { band: Some(band_rows), ..usual },
            _ => usual,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Begun, Head, Stitches, YarnWeight, plan};

    fn counted(stitches: i32, rounds: i32, cm: f64) -> HatSpec {
        let swatch = Swatch::Counted {
            stitches: Count::whole(stitches),
            width: Length::from_cm(cm),
            rounds: Count::whole(rounds),
            height: Length::from_cm(cm),
        };
        HatSpec { head: Head::Measured(Length::from_cm(49.8)), swatch, ..HatSpec::default() }
    }

    fn doubt(spec: &HatSpec) -> Doubt {
        Doubt::of(spec, &plan(spec).unwrap()).unwrap()
    }

    #[test]
    fn half_a_stitch_in_twelve_is_two_centimetres() {
        let sure = doubt(&counted(12, 15, 10.0));
        // 56 stitches of 10/12.5 and 10/11.5 cm.
        assert_eq!(sure.girth, (Length::from_cm(44.8), Length::from_cm(48.696)));
        assert_eq!(sure.yarn_share, Ratio::of(0.0435));
        assert_eq!(sure.swatch_width, Some(Length::from_cm(24.0)));
    }

    #[test]
    fn half_a_round_moves_only_what_is_worked_in_rounds() {
        let spec = counted(12, 15, 10.0);
        let hat = plan(&spec).unwrap();
        let (low, high) = doubt(&spec).depth;
        let body = hat.depth.above_band.cm();
        assert!((hat.depth.promised.cm() - low.cm() - body * 0.5 / 15.5).abs() < 0.002, "{low:?}");
        assert!((high.cm() - hat.depth.promised.cm() - body * 0.5 / 14.5).abs() < 0.002, "{high:?}");
    }

    /// The width that is suggested is enough, and a centimetre and a stitch less is not.
    #[test]
    fn the_width_suggested_brings_it_under_a_stitch() {
        for (stitches, head) in [(12, 49.8), (14, 57.0), (20, 36.0), (27, 60.0)] {
            let mut spec = counted(stitches, stitches + 3, 10.0);
            spec.head = Head::Measured(Length::from_cm(head));
            spec.band.fold = Length::ZERO;
            let n = f64::from(plan(&spec).unwrap().size.stitches.get());
            let wide = doubt(&spec).swatch_width.expect("10 cm are not enough").cm();
            let off = |cm: f64| n * 0.5 / (f64::from(stitches) * cm / 10.0);
            assert!(off(wide) <= 1.0 && off(wide - 1.0) > 1.0, "{stitches} {head}: {wide}");
        }
        let wide = counted(29, 36, 24.0);
        assert_eq!(doubt(&wide).swatch_width, None);
    }

    /// In every style, with every band and both beginnings, the doubt lies around the hat's own numbers.
    #[test]
    fn the_hat_itself_is_within_its_doubt() {
        let mut seen = 0;
        for style in Style::ALL {
            for kind in [BandKind::Sideways, BandKind::Around, BandKind::None] {
                for begun in [Begun::Band, Begun::Crown] {
                    let mut spec = HatSpec { style, begun, ..counted(14, 17, 10.0) };
                    (spec.band.kind, spec.band.fold, spec.band.height) = (kind, Length::ZERO, Stitches::new(4));
                    let (rows, length) = (Count::whole(15), Length::from_cm(10.0));
                    spec.band.swatch = Some(BandSwatch { stitches: Count::whole(13), width: length, rows, length });
                    let Ok(hat) = plan(&spec) else { continue };
                    let Doubt { girth, depth, yarn_share, swatch_width } = hat.doubt.expect("a counted swatch");
                    assert!(girth.0 < hat.size.girth && hat.size.girth < girth.1, "{style:?} {kind:?} {begun:?}");
                    assert!(depth.0 < hat.depth.promised && hat.depth.promised < depth.1, "{style:?} {kind:?} {begun:?}");
                    assert!(yarn_share > Ratio::of(0.0) && swatch_width.is_some());
                    // The girth misses by what the count along it says: ½ ÷ (N − ½).
                    let n = match (style, hat.band) {
                        (Style::Sideways, _) => 17.0,
                        (Style::EarWarmer, BandKind::Sideways) => 15.0,
                        (Style::EarWarmer, _) => 13.0,
                        _ => 14.0,
                    };
                    assert!((girth.1.cm() / hat.size.girth.cm() - n / (n - 0.5)).abs() < 1e-4, "{style:?} {kind:?}");
                    seen += 1;
                }
            }
        }
        assert!(seen > 35, "{seen}");
    }

    #[test]
    fn a_weight_is_no_measurement() {
        let weight = Swatch::YarnWeight(YarnWeight::new(4).unwrap());
        let spec = HatSpec { swatch: weight, ..HatSpec::default() };
        assert_eq!(Doubt::of(&spec, &plan(&spec).unwrap()), None);
    }
}
