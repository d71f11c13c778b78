//! The yarn-weight estimate against the published table.
//!
//! Source: Craft Yarn Council's www.YarnStandards.com, Standard Yarn Weight System.

use hatwright_sizing::{Count, HatSpec, Length, Remark, Swatch, YarnWeight, gauge_hint, plan, weights_suited};
use hatwright_tests::table::Table;

/// The estimate is the middle of the published range of stitches in 4 inches; "5 or fewer" (jumbo) is taken as 5.
#[test]
fn the_estimate_is_the_middle_of_the_published_range() {
    let table = Table::published("yarn_weights.csv");
    let mut seen = 0;
    for row in table.rows() {
        let weight = YarnWeight::new(row.text("number").parse().unwrap()).unwrap();
        let most: f64 = row.text("sts_per_4in_max").parse().unwrap();
        let least: f64 = row.text("sts_per_4in_min").parse().unwrap_or(most);
        let middle = f64::midpoint(least, most);
        assert!((weight.usual_stitches_in_4_inches().value() - middle).abs() < 0.005, "{}", row.text("name"));
        let (stitch, round) = weight.usual_stitch();
        assert!((stitch.cm() * middle - 10.16).abs() < 0.02 * middle, "4 inches are 10.16 cm");
        // Common practice, no source: a round of single crochet is 0.85 of a stitch's width.
        assert!((round.cm() / stitch.cm() - 0.85).abs() < 0.01);
        seen += 1;
    }
    assert_eq!(seen, 8);
}

/// Every weight makes a hat for the same head, smaller counts in thicker yarn, each marked as an estimate.
#[test]
fn thicker_yarn_takes_fewer_stitches_and_says_that_it_guesses() {
    let mut last = u32::MAX;
    for number in 0..=7 {
        let mut spec = HatSpec { swatch: Swatch::YarnWeight(YarnWeight::new(number).unwrap()), ..HatSpec::default() };
        spec.band.fold = hatwright_sizing::Length::ZERO;
        spec.band.height = hatwright_sizing::Stitches::new(4);
        let hat = plan(&spec).unwrap();
        assert!(hat.remarks.contains(&Remark::EstimatedGauge));
        assert!(hat.stitches().get() < last, "weight {number}");
        last = hat.stitches().get();
    }
}

/// A swatch at either end of a published range suits that weight, and a hook at either end of its hooks is not asked about.
#[test]
fn a_swatch_within_a_published_range_suits_its_weight() {
    let table = Table::published("yarn_weights.csv");
    let mut seen = 0;
    for row in table.rows() {
        let number: u8 = row.text("number").parse().unwrap();
        let most: f64 = row.text("sts_per_4in_max").parse().unwrap();
        let least: f64 = row.text("sts_per_4in_min").parse().unwrap_or(4.0);
        for stitches in [least, most] {
            let (counted, over) = (Count::from_ticks((stitches * 100.0).round() as i32), Length::from_cm(10.16));
            let rounds = Count::from_ticks((stitches * 116.0).round() as i32);
            let mut spec = HatSpec {
                swatch: Swatch::Counted { stitches: counted, width: over, rounds, height: over },
                ..HatSpec::default()
            };
            let (fine, heavy) = weights_suited(&spec).unwrap();
            assert!((fine.number()..=heavy.number()).contains(&number), "{number}: {stitches}");
            for hook in ["hook_mm_min", "hook_mm_max"] {
                let Ok(millimetres) = row.text(hook).parse::<f64>() else { continue };
                spec.hook = Some(Length::from_cm(millimetres / 10.0));
                assert_eq!(gauge_hint(&spec), None, "{number}: {stitches} with {millimetres} mm");
            }
            seen += 1;
        }
    }
    assert_eq!(seen, 16);
}
