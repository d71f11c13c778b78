//! The yarn-weight estimate against the published table.
//!
//! Source: Craft Yarn Council's www.YarnStandards.com, Standard Yarn Weight System.

use hatwright_sizing::{HatSpec, Remark, Swatch, YarnWeight, plan};
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
