use super::*;
use crate::{BandSwatch, Chosen, Fabric, Head, Kept, Mass, Money, Rows, Stitches, Unravelled, YarnWeight};

/// The usual cap in 80 m of 50 g, against a yarn of so many metres of 50 g.
fn against(metres: f64) -> HatSpec {
    let mut spec = HatSpec { head: Head::Measured(Length::from_cm(49.8)), ..HatSpec::default() };
    let grams = Some(Mass::from_grams(50.0));
    for ball in &mut spec.balls {
        (ball.grams, ball.owned, ball.price) = (grams, Count::whole(2), Some(Money::from_ticks(450)));
    }
    spec.instead = Some(Instead { yarn: Count::from_ticks((metres * 100.0) as i32), grams, weight: None, swatch: None });
    spec
}

fn counted(stitches: i32, rounds: i32) -> Swatch {
    let ten = Length::from_cm(10.0);
    let (stitches, rounds) = (Count::from_ticks(stitches), Count::from_ticks(rounds));
    Swatch::Counted { stitches, width: ten, rounds, height: ten }
}

fn with(spec: &HatSpec, change: impl FnOnce(&mut Instead)) -> HatSpec {
    let mut spec = spec.clone();
    change(spec.instead.as_mut().unwrap());
    spec
}

#[test]
fn a_yarn_as_thick_changes_nothing_but_the_balls() {
    let mut spec = against(80.0);
    let hat = plan(&spec).unwrap();
    spec.kept = Some(Kept::of(&hat));
    spec.chosen = Some(Chosen { rows: hat.size.rows, stitches: hat.size.stitches });
    for metres in [80.0, 77.0, 84.0] {
        // Within 3 %: √(80/77) = 1.019, √(80/84) = 0.976.
        let spec = with(&spec, |instead| instead.yarn = Count::from_ticks((metres * 100.0) as i32));
        let found = swap(&spec).unwrap();
        assert_eq!((found.basis, found.verdict), (SwapBasis::AsIs, Verdict::SwatchFirst), "{metres}");
        assert_eq!((&found.spec.swatch, &found.spec.kept, found.spec.chosen), (&spec.swatch, &spec.kept, spec.chosen));
        assert_eq!(found.hat.unwrap().rounds, hat.rounds);
        assert!(found.spec.balls.iter().all(|ball| ball.yarn == Count::from_ticks((metres * 100.0) as i32)));
    }
    // √(80/75) = 1.033.
    let thicker = swap(&with(&spec, |instead| instead.yarn = Count::whole(75))).unwrap();
    assert_eq!((thicker.basis, thicker.spec.kept, thicker.spec.chosen), (SwapBasis::Thickness, None, None));
}

#[test]
fn what_belongs_to_the_yarn_that_was_is_dropped() {
    let mut spec = against(65.0);
    let (stitches, length) = (Stitches::new(20), Length::from_cm(128.0));
    spec.yarn_use.unravelled = Some(Unravelled { band: false, stitches, length });
    (spec.yarn_use.hat, spec.yarn_use.scale, spec.yarn_use.swatch_kept) =
        (Some(Mass::from_grams(60.0)), Mass::from_grams(0.1), true);
    let (twelve, ten) = (Count::whole(12), Length::from_cm(10.0));
    spec.band.swatch = Some(BandSwatch { stitches: twelve, width: ten, rows: twelve, length: ten });
    spec.hook = Some(Length::from_ticks(500));
    let found = swap(&spec).unwrap();
    let dropped = YarnUse { scale: Mass::from_grams(0.1), swatch_kept: true, ..YarnUse::default() };
    assert_eq!((found.spec.yarn_use, found.spec.band.swatch, found.spec.hook), (dropped, None, spec.hook));
    let ball = Ball { grams: spec.balls[0].grams, ..Ball::of(Count::whole(65)) };
    assert_eq!((found.spec.balls, found.spec.instead), (vec![ball; 2], None));
    // The band's swatch is still good where the stitch is the same.
    assert_eq!(swap(&with(&spec, |instead| instead.yarn = Count::whole(80))).unwrap().spec.band.swatch, spec.band.swatch);
}

/// Stitches and rounds are as much larger as the yarn is thicker, whatever the fabric, and also where the count is at its range's end.
#[test]
fn the_stitch_is_as_much_larger_as_the_yarn_is_thicker() {
    for (stitches, rounds) in [(12_00, 15_00), (27_00, 33_00), (4_20, 4_90), (80_00, 95_00)] {
        for fabric in [Fabric::Single, Fabric::Double] {
            for metres in [45.0, 60.0, 130.0, 200.0] {
                let mut spec = against(metres);
                (spec.fabric, spec.swatch) = (fabric, counted(stitches, rounds));
                let Swap { spec: then, thickness, basis, .. } = swap(&spec).unwrap();
                let (was, is, thick) = (Cells::of(&spec), Cells::of(&then), libm::sqrt(80.0 / metres));
                assert_eq!((basis, thickness), (SwapBasis::Thickness, Some(Ratio::of(thick))));
                assert!((is.w / was.w / thick - 1.0).abs() < 0.002 && (is.h / was.h / thick - 1.0).abs() < 0.002);
                let all = then.numbers();
                assert!(all.iter().all(|(q, ticks)| q.row().holds(*ticks)), "{stitches} {metres}");
            }
        }
    }
}

/// A stitch of thinner yarn takes less of it, and there are more: length goes as width × count, so a hat of the same size takes about as
/// many metres more as its stitches are narrower.
#[test]
fn thinner_yarn_takes_more_metres() {
    let spec = HatSpec { topper: None, ..against(125.0) };
    let metres = |hat: &Hat| hat.yarn.iter().map(|need| need.length.metres()).sum::<f64>();
    let (was, is) = (metres(&plan(&spec).unwrap()), metres(&swap(&spec).unwrap().hat.unwrap()));
    // √(80/125) = 0.8: 1.25 times the metres, and a few ends that are no longer than they were.
    assert!((is / was - 1.25).abs() < 0.08, "{was} {is}");
}

#[test]
fn its_swatch_says_whether_the_pattern_stays() {
    let spec = against(65.0);
    let found = swap(&with(&spec, |instead| instead.swatch = Some(counted(12_00, 15_00)))).unwrap();
    assert_eq!((found.basis, found.verdict, found.thickness), (SwapBasis::Swatch, Verdict::SamePattern, Some(Ratio::of(1.1094))));
    // A tenth of a stitch is another girth and the same counts.
    let found = swap(&with(&spec, |instead| instead.swatch = Some(counted(12_10, 15_00)))).unwrap();
    assert_eq!(found.verdict, Verdict::SamePattern);
    assert_ne!(found.hat.unwrap().size.girth, plan(&spec).unwrap().size.girth);
    for (stitches, rounds) in [(14_00, 15_00), (12_00, 18_00)] {
        let found = swap(&with(&spec, |instead| instead.swatch = Some(counted(stitches, rounds)))).unwrap();
        assert_eq!((found.basis, found.verdict), (SwapBasis::Swatch, Verdict::OtherCounts), "{stitches} {rounds}");
    }
}

#[test]
fn a_number_gives_the_published_gauge() {
    let five = YarnWeight::new(5).unwrap();
    let mut spec = with(&against(65.0), |instead| (instead.grams, instead.weight) = (None, Some(five)));
    spec.band.stripes.truncate(1);
    let found = swap(&spec).unwrap();
    assert_eq!((found.basis, found.thickness, found.spec.swatch), (SwapBasis::Weight, None, Swatch::YarnWeight(five)));
    assert_eq!((found.verdict, found.hat.unwrap().gauge.stitch), (Verdict::SwatchFirst, five.usual_stitch().0));
    // An estimate by number stays one by number, and only without a number is it scaled.
    let four = YarnWeight::new(4).unwrap();
    let mut estimated = with(&against(40.0), |instead| instead.weight = Some(five));
    estimated.swatch = Swatch::YarnWeight(four);
    assert_eq!(swap(&estimated).unwrap().basis, SwapBasis::Weight);
    let scaled = swap(&with(&estimated, |instead| instead.weight = None)).unwrap();
    let wider = Cells::of(&scaled.spec).w / four.usual_stitch().0.cm();
    assert!(scaled.basis == SwapBasis::Thickness && (wider - core::f64::consts::SQRT_2).abs() < 0.002, "{wider}");
    // Nothing known: nothing changes.
    let found = swap(&with(&spec, |instead| instead.weight = None)).unwrap();
    assert_eq!((found.basis, found.verdict, found.spec.swatch), (SwapBasis::AsIs, Verdict::SwatchFirst, spec.swatch));
}

#[test]
fn another_kind_of_hat_will_not_do() {
    // √(80/20) = 2, √(80/320) = 0.5, √(80/32) = 1.58.
    assert_eq!(
        [20.0, 320.0, 32.0].map(|metres| swap(&HatSpec { topper: None, ..plain(metres) }).unwrap().verdict),
        [Verdict::WillNot, Verdict::WillNot, Verdict::SwatchFirst]
    );
    // Lace for medium, by their numbers alone: 0.275 cm for 0.833.
    let lace = with(&plain(80.0), |instead| (instead.grams, instead.weight) = (None, YarnWeight::new(0).ok()));
    assert_eq!(swap(&lace).unwrap().verdict, Verdict::WillNot);
    // A swatch of which no hat can be made.
    let refused = swap(&with(&plain(80.0), |instead| {
        let far = Length::from_cm(60.0);
        instead.swatch = Some(Swatch::Counted { stitches: Count::whole(4), width: far, rounds: Count::whole(4), height: far });
    }))
    .unwrap();
    assert!(refused.hat.is_err() && refused.verdict == Verdict::WillNot);
}

fn plain(metres: f64) -> HatSpec {
    let mut spec = against(metres);
    spec.band.stripes.truncate(1);
    spec.band.fold = Length::ZERO;
    spec.band.height = Stitches::new(5);
    spec
}

/// What the planner would not take by hand is not kept for it, even where the stitch is nearly as wide.
#[test]
fn counts_taken_by_hand_stay_only_while_they_hold() {
    let mut spec = with(&plain(80.0), |instead| instead.swatch = Some(counted(12_10, 15_00)));
    spec.chosen = Some(Chosen { rows: Rows::new(58), stitches: Stitches::new(58) });
    assert_eq!(swap(&spec).unwrap().spec.chosen, spec.chosen);
    spec.chosen = Some(Chosen { rows: Rows::new(66), stitches: Stitches::new(66) });
    assert!(is_dropped(&plan(&HatSpec { swatch: counted(11_80, 15_00), ..spec.clone() })));
    let dropped = swap(&with(&spec, |instead| instead.swatch = Some(counted(11_80, 15_00)))).unwrap();
    assert_eq!((dropped.spec.chosen, is_dropped(&dropped.hat)), (None, false));
}
