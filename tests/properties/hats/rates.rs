//! What a stitch takes: with a gauge twice as dense, with a measured use, and by the weight of the hat.

use crate::planned::{PLANNED, Planned, Sizes, sizes};
use hatwright_sizing::{
    BandKind, Count, Hat, HatSpec, KeptUse, Mass, PartYarn, Ratio, Stretch, Style, Swatch, Taste, UseWay, YarnUse, plan,
    rate_of_hat,
};
use hatwright_tests::practice::{is_worked, known};

/// A hat that weighs what its lengths say teaches the factor that it was reckoned with.
#[test]
fn a_weighed_hat_teaches_what_it_took() {
    let mut taught = 0;
    for Planned { spec, .. } in PLANNED.iter().take(3_000) {
        let mut spec = spec.clone();
        spec.yarn_use.swatch_kept = false;
        let hat = plan(&spec).expect("yarn refuses no hat");
        let weight = |part: &PartYarn| {
            let ball = &spec.balls[usize::from(part.colour.0)];
            ball.grams.map(|grams| part.length.metres() * grams.grams() / ball.yarn.value())
        };
        let Some(grams) = hat.yarn_parts.iter().map(weight).sum::<Option<f64>>() else {
            spec.yarn_use.hat = Some(Mass::from_grams(60.0));
            assert_eq!(rate_of_hat(&spec, &hat), None, "a colour's grams are not known");
            continue;
        };
        spec.yarn_use.hat = Some(Mass::from_grams(grams));
        let rate = rate_of_hat(&spec, &hat).expect("a hat of its own weight");
        let factor = known(&spec).factor;
        assert!((rate.factor / factor - 1.0).abs() < 0.01, "{} for {factor}, {grams} g", rate.factor);
        taught += 1;
    }
    assert!(taught > 500, "{taught}");
}

/// Twice the stitches and rounds to the same width: four times the stitches of half the width, so twice the yarn where it is worked, but
/// for what whole rounds and turns are off. A measured use of yarn multiplies the worked parts, and leaves what is cut and wound.
#[test]
fn a_gauge_twice_as_dense_takes_twice_the_yarn() {
    let worked = |hat: &Hat| hat.yarn_parts.iter().filter(|p| is_worked(p.part)).map(|p| p.length.metres()).sum::<f64>();
    let mut asked = 0;
    for Planned { spec, .. } in PLANNED.iter().filter(|p| p.spec.style == Style::Fitted).take(600) {
        let Swatch::Counted { stitches, width, rounds, height } = spec.swatch else { continue };
        let dense = Swatch::Counted {
            stitches: Count::from_ticks(stitches.ticks() * 2),
            width,
            rounds: Count::from_ticks(rounds.ticks() * 2),
            height,
        };
        let mut coarse =
            HatSpec { yarn_use: YarnUse::default(), body_stretch: Stretch::Usual, taste: Taste::default(), ..spec.clone() };
        coarse.band.kind = BandKind::None;
        let fine = HatSpec { swatch: dense, ..coarse.clone() };
        let (Ok(coarse_hat), Ok(fine_hat)) = (plan(&coarse), plan(&fine)) else { continue };
        // A stitch takes seven (or its fabric's) widths: a hat takes as much as its area, over the height of a round.
        let area = |hat: &Hat, spec: &HatSpec| {
            let Sizes { w, h, .. } = sizes(spec);
            hat.rounds.iter().map(|r| f64::from(r.after.get())).sum::<f64>() * w * h
        };
        let (before, after) = (area(&coarse_hat, &coarse), area(&fine_hat, &fine));
        assert!((0.75..1.3).contains(&(after / before)), "{before} {after}: {coarse:?}");
        // Decreases, turns and joins are a larger share of the coarse hat.
        let ratio = worked(&fine_hat) / worked(&coarse_hat) / (after / before);
        assert!((1.80..2.03).contains(&ratio), "{ratio}: {coarse:?}");
        let used = YarnUse {
            kept: Some(KeptUse { factor: Ratio::of(1.37), doubt: Ratio::of(0.05), way: UseWay::Hat }),
            ..YarnUse::default()
        };
        let measured = plan(&HatSpec { yarn_use: used, ..coarse }).expect("yarn refuses no hat");
        for (before, after) in coarse_hat.yarn_parts.iter().zip(&measured.yarn_parts) {
            let expected = before.length.metres() * if is_worked(before.part) { 1.37 } else { 1.0 };
            assert!((after.length.metres() - expected).abs() < 0.002, "{before:?} {after:?}");
        }
        asked += 1;
    }
    assert!(asked > 200, "{asked}");
}
