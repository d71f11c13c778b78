//! Whether a gauge is one that is usual for such yarn, such a stitch and such a hook. Unusual is a hint, never a refusal.

use crate::gauge::{Cells, STITCHES_IN_4_INCHES};
use crate::{HatSpec, Length, Quantity, Ratio, Remark, Style, Swatch, YarnWeight};

/// A row of the published table: stitches of single crochet in 4 inches, fewest and most (lace: of double crochet), and hooks in
/// hundredths of a millimetre, smallest and largest.
struct Published {
    stitches: (f64, f64),
    hooks: (i32, i32),
}

/// The published ranges, by yarn-weight number. Jumbo is published as 5 stitches or fewer and hooks of 16 mm and larger: there is no
/// other end to either.
///
/// Source: Craft Yarn Council's www.YarnStandards.com, Standard Yarn Weight System.
const PUBLISHED: [Published; STITCHES_IN_4_INCHES.len()] = [
    Published { stitches: (32.0, 42.0), hooks: (140, 225) },
    Published { stitches: (21.0, 32.0), hooks: (225, 350) },
    Published { stitches: (16.0, 20.0), hooks: (350, 450) },
    Published { stitches: (12.0, 17.0), hooks: (450, 550) },
    Published { stitches: (11.0, 14.0), hooks: (550, 650) },
    Published { stitches: (8.0, 11.0), hooks: (650, 900) },
    Published { stitches: (6.0, 9.0), hooks: (900, 1_600) },
    Published { stitches: (0.0, 5.0), hooks: (1_600, i32::MAX) },
];

/// Stitches in 4 inches by which a count may lie outside a published range: half a stitch, as a swatch is counted, so that nothing
/// falls between two ranges that are printed in whole stitches.
const HALF: f64 = 0.5;

/// The yarn weights whose published range holds a stitch of the body, finest and heaviest; `None` where none does: a stitch finer than
/// lace. The table is of single crochet; other stitches are taken to be as wide. An estimate suits the weight that it is made from.
///
/// Twelve to 10 cm are 12.2 in 4 inches: light (12 to 17) and medium (11 to 14).
///
/// ```
/// use hatwright_sizing::{HatSpec, YarnWeight, weights_suited};
/// let weight = |number| YarnWeight::new(number).unwrap();
/// assert_eq!(weights_suited(&HatSpec::default()), Some((weight(3), weight(4))));
/// ```
pub fn weights_suited(spec: &HatSpec) -> Option<(YarnWeight, YarnWeight)> {
    if let Swatch::YarnWeight(weight) = spec.swatch {
        return Some((weight, weight));
    }
    let stitches = 10.16 / Cells::of(spec).w;
    let suits = |row: &Published| row.stitches.0 - HALF <= stitches && stitches <= row.stitches.1 + HALF;
    let weight = |number: usize| u8::try_from(number).ok().and_then(|n| YarnWeight::new(n).ok());
    Some((weight(PUBLISHED.iter().position(suits)?)?, weight(PUBLISHED.iter().rposition(suits)?)?))
}

/// What is unusual about a gauge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct GaugeHint {
    /// The yarn weights that the stitch suits, finest and heaviest; where none does, it is finer than any published.
    pub suits: Option<(YarnWeight, YarnWeight)>,
    /// Height ÷ width of the stitch, where that is unusual for its fabric: outside 0.7 to 1.4 times the fabric's own.
    pub shape: Option<Ratio>,
    /// The hooks that are usual for those weights, where the hook that is given is not: more than a quarter beyond the published range.
    /// The larger end is absent for jumbo, which has none.
    pub hooks: Option<(Length, Option<Length>)>,
}

impl GaugeHint {
    /// The remarks that a planned hat carries for it.
    pub(crate) fn remarks(&self) -> impl Iterator<Item = Remark> {
        let unusual = self.suits.is_none() || self.hooks.is_some();
        self.shape.map(Remark::UnusualStitch).into_iter().chain(unusual.then_some(Remark::UnusualGauge))
    }
}

/// What is unusual about the body's gauge: the width of its stitch for any yarn weight, its height for its fabric, or its hook for its
/// width. `None` where nothing is.
///
/// An estimate has the fabric's own shape; only its hook can be unusual. Eight rounds to 12 stitches make a single crochet 1.5 times as
/// tall as wide, where 0.85 is usual:
///
/// ```
/// use hatwright_sizing::{Count, HatSpec, Quantity, Ratio, gauge_hint};
/// let mut spec = HatSpec::default();
/// assert_eq!(gauge_hint(&spec), None);
/// spec.set_number(Quantity::SwatchRounds, 0, 8_00);
/// assert_eq!(gauge_hint(&spec).unwrap().shape, Some(Ratio::of(1.5)));
/// ```
pub fn gauge_hint(spec: &HatSpec) -> Option<GaugeHint> {
    let cells = Cells::of(spec);
    let suits = weights_suited(spec);
    let row = spec.fabric.row();
    let usual = f64::from(if spec.style == Style::Sideways { row.pick_up } else { row.shape }) / 10_000.0;
    let shape = cells.h / cells.w;
    let (least, most) = (Quantity::ShapeLeast.row().usual_value(), Quantity::ShapeMost.row().usual_value());
    let counted = matches!(spec.swatch, Swatch::Counted { .. });
    let odd = counted && !(usual * least - 1e-9..=usual * most + 1e-9).contains(&shape);
    let hint = GaugeHint { suits, shape: odd.then(|| Ratio::of(shape)), hooks: unusual_hook(spec.hook, suits) };
    (hint.suits.is_none() || hint.shape.is_some() || hint.hooks.is_some()).then_some(hint)
}

/// The published hooks of the weights from the finest to the heaviest, where this one lies more than the slack beyond them.
fn unusual_hook(hook: Option<Length>, suits: Option<(YarnWeight, YarnWeight)>) -> Option<(Length, Option<Length>)> {
    let (hook, (fine, heavy)) = (f64::from(hook?.ticks()), suits?);
    let hooks = |weight: YarnWeight| PUBLISHED[usize::from(weight.number()) % PUBLISHED.len()].hooks;
    let (least, most) = (hooks(fine).0, hooks(heavy).1);
    let slack = 1.0 + Quantity::HookSlack.row().usual_value();
    let usual = f64::from(least) / slack <= hook && hook <= f64::from(most) * slack;
    (!usual).then(|| (Length::from_ticks(least), (most < i32::MAX).then(|| Length::from_ticks(most))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Count, Fabric};

    fn spec(stitches: i32, rounds: i32, hook: Option<i32>) -> HatSpec {
        let over = Length::from_cm(10.16);
        let swatch = Swatch::Counted {
            stitches: Count::from_ticks(stitches),
            width: over,
            rounds: Count::from_ticks(rounds),
            height: over,
        };
        HatSpec { swatch, hook: hook.map(Length::from_ticks), ..HatSpec::default() }
    }

    fn numbers(stitches: i32) -> Option<(u8, u8)> {
        weights_suited(&spec(stitches, stitches, None)).map(|(a, b)| (a.number(), b.number()))
    }

    /// The ranges of the published table, and between two that do not meet the nearer.
    #[test]
    fn a_stitch_suits_the_weights_whose_range_holds_it() {
        assert_eq!(numbers(36_00), Some((0, 0)));
        assert_eq!(numbers(32_00), Some((0, 1)));
        assert_eq!(numbers(20_50), Some((1, 2)));
        assert_eq!(numbers(12_00), Some((3, 4)));
        assert_eq!(numbers(10_00), Some((5, 5)));
        assert_eq!(numbers(4_00), Some((7, 7)));
        assert_eq!(numbers(45_00), None);
        for tenth in 40..=425 {
            assert!(numbers(tenth * 10).is_some(), "{tenth}");
        }
        assert!(gauge_hint(&spec(45_00, 53_00, None)).is_some_and(|hint| hint.suits.is_none() && hint.shape.is_none()));
    }

    #[test]
    fn the_middle_of_every_published_range_lies_in_it() {
        for (row, middle) in PUBLISHED.iter().zip(STITCHES_IN_4_INCHES) {
            let (least, most) = row.stitches;
            assert!((least..=most).contains(&middle.value()), "{middle:?}");
        }
    }

    #[test]
    fn a_shape_is_asked_about_by_its_own_fabric() {
        let tall = spec(12_00, 6_50, None);
        assert_eq!(gauge_hint(&tall).and_then(|hint| hint.shape), Some(Ratio::of(12.0 / 6.5)));
        assert_eq!(gauge_hint(&HatSpec { fabric: Fabric::Double, ..tall.clone() }), None);
        let flat = spec(12_00, 14_00, None);
        assert_eq!(gauge_hint(&flat), None);
        assert!(gauge_hint(&HatSpec { fabric: Fabric::Double, ..flat }).is_some());
        // Nothing is asked of an estimate.
        for fabric in Fabric::ALL {
            for number in 0..=7 {
                let swatch = Swatch::YarnWeight(YarnWeight::new(number).unwrap());
                assert_eq!(gauge_hint(&HatSpec { swatch, fabric: *fabric, ..HatSpec::default() }), None, "{fabric:?} {number}");
            }
        }
    }

    /// Light and medium yarn: 4.5 to 6.5 mm are published.
    #[test]
    fn a_hook_is_asked_about_a_quarter_beyond_its_range() {
        let hooks = |hook| gauge_hint(&spec(12_20, 15_00, Some(hook))).and_then(|hint| hint.hooks);
        assert_eq!((hooks(360), hooks(500), hooks(812)), (None, None, None));
        let range = Some((Length::from_ticks(450), Some(Length::from_ticks(650))));
        assert_eq!((hooks(355), hooks(820)), (range, range));
        let jumbo = gauge_hint(&spec(4_00, 4_50, Some(500))).and_then(|hint| hint.hooks);
        assert_eq!(jumbo, Some((Length::from_ticks(1_600), None)));
        assert_eq!(gauge_hint(&spec(4_00, 4_50, Some(2_500))), None);
    }
}
