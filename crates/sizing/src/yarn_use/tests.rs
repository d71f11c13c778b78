use super::*;
use crate::{Fabric, Head, Part, Style, plan};

fn spec() -> HatSpec {
    let mut spec = HatSpec { head: Head::Measured(Length::from_cm(49.8)), ..HatSpec::default() };
    for ball in &mut spec.balls {
        ball.grams = Some(Mass::from_grams(50.0));
    }
    spec
}

fn weigh(spec: &mut HatSpec, stitches: u32, grams: f64) {
    let stitches = Stitches::new(stitches);
    spec.yarn_use.weighed = Some(WeighedSwatch { colour: Colour(0), band: false, stitches, grams: Mass::from_grams(grams) });
}

fn unravel(spec: &mut HatSpec, stitches: u32, cm: f64) {
    let (stitches, length) = (Stitches::new(stitches), Length::from_cm(cm));
    spec.yarn_use.unravelled = Some(Unravelled { band: false, stitches, length });
}

fn by(spec: &HatSpec, way: UseWay) -> YarnRate {
    yarn_rates(spec).into_iter().find(|rate| rate.way == way).unwrap()
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-6
}

/// By hand: 10 g at 1.6 m to the gram are 1,600 cm; of 250 stitches, 6.4 cm each, where 7 × 10/12 = 5.83 cm are estimated.
#[test]
fn a_weighed_swatch_is_grams_times_metres_by_stitches() {
    let mut spec = spec();
    weigh(&mut spec, 250, 10.0);
    let rate = by(&spec, UseWay::Weighed);
    assert!(near(rate.factor, 6.4 / (7.0 * 10.0 / 12.0)), "{rate:?}");
    assert_eq!(stitch_yarn(&spec, &rate), Length::from_cm(6.4));
    // Two strands held together weigh twice as much: a stitch takes as much of each.
    spec.strands = 2;
    weigh(&mut spec, 250, 20.0);
    assert!(near(by(&spec, UseWay::Weighed).factor, rate.factor));
    // Without the grams of that colour's ball there are no metres to a gram.
    spec.balls[0].grams = None;
    assert!(yarn_rates(&spec).iter().all(|rate| rate.way == UseWay::Estimated));
}

/// DESIGN §2: a 1 g scale on a 5 g swatch errs by 10 %. A finer scale errs by less.
#[test]
fn the_scale_s_step_is_its_error() {
    let mut spec = spec();
    weigh(&mut spec, 120, 5.0);
    let ball = by(&spec, UseWay::Weighed).ball_doubt;
    // With the hand's own 5 %; in metres also with the band's 3 %.
    assert!(near(ball, libm::sqrt(0.10 * 0.10 + 0.05 * 0.05)), "{ball}");
    assert!(near(by(&spec, UseWay::Weighed).doubt, libm::sqrt(ball * ball + 0.03 * 0.03)));
    spec.yarn_use.scale = Mass::from_grams(0.1);
    assert!(near(by(&spec, UseWay::Weighed).ball_doubt, libm::sqrt(0.01 * 0.01 + 0.05 * 0.05)));
}

/// Few stitches tell less than many: 4 % of the tape, 15 % ÷ √n of the stitches, 5 % of the hand.
#[test]
fn few_stitches_tell_less() {
    let doubt = |stitches: u32| {
        let mut spec = spec();
        unravel(&mut spec, stitches, 6.4 * f64::from(stitches));
        by(&spec, UseWay::Unravelled)
    };
    assert!(near(doubt(25).doubt, libm::sqrt(0.04 * 0.04 + 0.03 * 0.03 + 0.05 * 0.05)));
    let rate = doubt(25);
    assert!(near(rate.ball_doubt, libm::sqrt(rate.doubt * rate.doubt + 0.03 * 0.03)));
    let all: Vec<f64> = [1, 4, 20, 100, 2_000].map(|n| doubt(n).doubt).to_vec();
    assert!(all.is_sorted_by(|a, b| a > b) && all[0] < 0.25, "{all:?}");
}

#[test]
fn the_least_uncertain_is_used_for_every_length() {
    let mut spec = spec();
    let length = |spec: &HatSpec| plan(spec).unwrap().yarn[0].length.metres();
    let estimated = length(&spec);
    // A light swatch on a coarse scale is less sure than twenty stitches, and surer than no measurement.
    weigh(&mut spec, 120, 5.0);
    assert_eq!(yarn_rates(&spec)[0].way, UseWay::Weighed);
    unravel(&mut spec, 20, 128.0);
    assert_eq!(
        yarn_rates(&spec).iter().map(|rate| rate.way).collect::<Vec<_>>(),
        [UseWay::Unravelled, UseWay::Weighed, UseWay::Estimated]
    );
    assert!((1.05..1.097).contains(&(length(&spec) / estimated)), "ends and pom-pom are no stitches");
    // A tenth of a gram in thirty is surer still.
    (spec.yarn_use.scale, spec.yarn_use.weighed) = (Mass::from_grams(0.1), None);
    weigh(&mut spec, 700, 30.0);
    assert_eq!(yarn_rates(&spec)[0].way, UseWay::Weighed);
    // So coarse a scale that the estimate is surer.
    spec.yarn_use = YarnUse { scale: Mass::from_grams(50.0), ..YarnUse::default() };
    weigh(&mut spec, 700, 30.0);
    assert_eq!((yarn_rates(&spec)[0].way, length(&spec)), (UseWay::Estimated, estimated));
}

/// Less than a fifth of the estimate, or more than five times it, is a miscount.
#[test]
fn what_cannot_be_believed_is_not_used() {
    let ways = |cm: f64| {
        let mut spec = spec();
        unravel(&mut spec, 20, cm * 20.0);
        yarn_rates(&spec).len()
    };
    // 5.83 cm ÷ 5 = 1.17, × 5 = 29.2.
    assert_eq!([1.1, 1.2, 29.0, 29.3].map(ways), [1, 2, 2, 1]);
}

#[test]
fn what_is_kept_comes_back_as_it_was() {
    let mut spec = spec();
    unravel(&mut spec, 20, 128.0);
    let measured = by(&spec, UseWay::Unravelled);
    let kept = measured.keep();
    let next = HatSpec { yarn_use: YarnUse { kept: Some(kept), ..YarnUse::default() }, ..spec.clone() };
    let rate = by(&next, UseWay::Unravelled);
    assert!(rate.kept && (rate.factor - measured.factor).abs() <= 5e-5 && (rate.doubt - measured.doubt).abs() <= 5e-5);
    assert!((rate.ball_doubt - measured.ball_doubt).abs() <= 1e-4);
    assert_eq!((rate.keep(), next.check()), (kept, Ok(())));
    // The factor is the yarn's and the hand's, not the gauge's: at another gauge a stitch takes more in proportion.
    let mut wide = next.clone();
    wide.set_number(Quantity::SwatchStitches, 0, 10_00);
    let ratio = stitch_yarn(&wide, &by(&wide, UseWay::Unravelled)).cm() / stitch_yarn(&next, &rate).cm();
    assert!((ratio - 1.2).abs() < 1e-3, "{ratio}");
}

/// A hat that is exactly as heavy as a known factor makes it gives that factor back, with a topper and two strands, whatever factor is in
/// use, and whether the swatch's yarn is bought with it or not.
#[test]
fn the_hat_s_weight_gives_its_factor_back() {
    for factor in [0.5, 0.8, 1.0, 1.137, 2.0] {
        for (strands, swatch_kept) in [(1, false), (2, true)] {
            let mut spec = HatSpec { strands, ..spec() };
            (spec.balls[1].grams, spec.yarn_use.swatch_kept) = (Some(Mass::from_grams(40.0)), swatch_kept);
            let kept = KeptUse { factor: Ratio::of(factor), doubt: Ratio::of(0.01), way: UseWay::Weighed };
            let known = HatSpec { yarn_use: YarnUse { kept: Some(kept), ..spec.yarn_use }, ..spec.clone() };
            let weigh = |hat: &Hat| -> f64 {
                let on = |part: &&crate::PartYarn| part.part != Part::Swatch;
                let grams = |part: &crate::PartYarn| {
                    part.length.metres() / spec.balls[usize::from(part.colour.0)].metres_per_gram().unwrap()
                };
                hat.yarn_parts.iter().filter(on).map(grams).sum()
            };
            let grams = Mass::from_grams(weigh(&plan(&known).unwrap()));
            for mut asked in [spec.clone(), known] {
                asked.yarn_use.hat = Some(grams);
                let rate = rate_of_hat(&asked, &plan(&asked).unwrap()).unwrap();
                assert!((rate.factor / factor - 1.0).abs() < 0.001, "{factor} {strands}: {}", rate.factor);
                assert_eq!((rate.way, rate.kept), (UseWay::Hat, false));
                // A gram on a hat is a per cent or two: surer than a small swatch.
                assert!(rate.doubt < 0.10, "{}", rate.doubt);
            }
        }
    }
}

#[test]
fn a_weight_that_no_hat_has_tells_nothing() {
    let mut spec = spec();
    let hat = plan(&spec).unwrap();
    assert_eq!(rate_of_hat(&spec, &hat), None);
    // Lighter than its pom-pom and its ends, and heavier than five hats.
    for grams in [5.0, 1_000.0] {
        spec.yarn_use.hat = Some(Mass::from_grams(grams));
        assert_eq!(rate_of_hat(&spec, &hat), None, "{grams}");
    }
    spec.yarn_use.hat = Some(Mass::from_grams(60.0));
    assert!(rate_of_hat(&spec, &hat).is_some());
    spec.balls[1].grams = None;
    assert_eq!(rate_of_hat(&spec, &hat), None);
}

/// One error, shared by all stitches: a hat of four times the stitches is as unsure in proportion. Independent errors would halve it.
#[test]
fn a_shared_error_does_not_average_out() {
    let share = |cm: f64| {
        let spec = HatSpec { head: Head::Measured(Length::from_cm(cm)), topper: None, ..spec() };
        let mut spec = HatSpec { yarn_use: YarnUse::default(), ..spec };
        (spec.band.height, spec.band.fold) = (Stitches::new(3), Length::ZERO);
        let hat = plan(&spec).unwrap();
        let worked: f64 = hat.yarn_parts.iter().filter(|p| p.part.is_worked()).map(|p| p.length.metres()).sum();
        let wide: f64 = hat.yarn.iter().map(|n| n.high.metres() - n.length.metres()).sum();
        (worked, wide / worked)
    };
    let ((small, of_small), (big, of_big)) = (share(34.0), share(64.0));
    assert!(big > 3.0 * small, "{small} {big}");
    // A quarter of the stitches, and hardly more for the ends.
    assert!((0.25..0.253).contains(&of_small) && (0.25..0.253).contains(&of_big), "{of_small} {of_big}");
}

/// The body's rate is less sure of a band of another fabric: √(d² + 10 %²). Of the same fabric, and of a weighed hat, it is as sure.
#[test]
fn one_fabric_is_less_sure_of_another() {
    let mut spec = spec();
    unravel(&mut spec, 100, 640.0);
    let rate = yarn_rates(&spec)[0];
    let (body, band) = (rate.doubts(&spec, false), rate.doubts(&spec, true));
    assert_eq!(body, (rate.doubt, rate.ball_doubt));
    assert!(near(band.0, libm::sqrt(body.0 * body.0 + 0.01)) && near(band.1, libm::sqrt(body.1 * body.1 + 0.01)));
    let mut same = spec.clone();
    (same.fabric, same.band.fabric) = (Fabric::SingleBack, Fabric::SingleBack);
    assert_eq!(rate.doubts(&same, true), body);
    // Measured on the band, it is the body's that is less sure; kept, it is taken to be the body's.
    spec.yarn_use.unravelled = spec.yarn_use.unravelled.map(|unravelled| Unravelled { band: true, ..unravelled });
    let of_band = yarn_rates(&spec)[0];
    assert!(of_band.doubts(&spec, true) == body && of_band.doubts(&spec, false) == band);
    spec.yarn_use = YarnUse { kept: Some(rate.keep()), ..YarnUse::default() };
    let kept = yarn_rates(&spec)[0];
    assert!(kept.kept && kept.doubts(&spec, true).0 > kept.doubts(&spec, false).0 + 0.03);
    spec.yarn_use.kept = Some(KeptUse { way: UseWay::Hat, ..rate.keep() });
    let hat = yarn_rates(&spec)[0];
    assert_eq!(hat.doubts(&spec, true), hat.doubts(&spec, false));
}

/// Measured on the band, a stitch is told of the band: 7 × 10/11 × f.
#[test]
fn a_measurement_of_the_band_is_of_its_stitch() {
    let mut spec = spec();
    spec.band.swatch = Some(crate::BandSwatch {
        stitches: crate::Count::whole(11),
        width: Length::from_cm(10.0),
        rows: crate::Count::whole(12),
        length: Length::from_cm(10.0),
    });
    unravel(&mut spec, 20, 140.0);
    spec.yarn_use.unravelled = spec.yarn_use.unravelled.map(|unravelled| Unravelled { band: true, ..unravelled });
    let rate = by(&spec, UseWay::Unravelled);
    assert!(rate.band && near(rate.factor, 7.0 / (7.0 * 10.0 / 11.0)), "{rate:?}");
    assert_eq!(stitch_yarn(&spec, &rate), Length::from_cm(7.0));
}

/// A swatch that is kept is bought, in its own colour, in the fabric that the hat is of; a hat without one is as it was.
#[test]
fn a_swatch_that_is_kept_is_bought() {
    for style in Style::ALL {
        for kind in [crate::BandKind::Sideways, crate::BandKind::Around] {
            let mut spec = HatSpec { style, topper: None, ..spec() };
            (spec.band.kind, spec.band.height, spec.band.fold) = (kind, Stitches::new(5), Length::ZERO);
            let Ok(without) = plan(&spec) else { continue };
            let part = |hat: &Hat| hat.yarn_parts.iter().find(|part| part.part == Part::Swatch).copied();
            assert_eq!(part(&without), None);
            spec.yarn_use.swatch_kept = true;
            let with = plan(&spec).unwrap();
            let swatch = part(&with).unwrap();
            assert_eq!((swatch.length, swatch.colour), (crate::swatch_yarn(&spec), without.colours()[0]));
            assert_eq!(swatch.band, style == Style::EarWarmer, "{style:?} {kind:?}");
            let more = with.yarn[0].length.millimetres() - without.yarn[0].length.millimetres();
            assert_eq!((more, &with.rounds), (swatch.length.millimetres(), &without.rounds));
            weigh(&mut spec, 250, 10.0);
            spec.yarn_use.weighed = spec.yarn_use.weighed.map(|weighed| WeighedSwatch { colour: Colour(1), ..weighed });
            assert_eq!(part(&plan(&spec).unwrap()).unwrap().colour, Colour(1));
        }
    }
}

/// 36 wraps of 10 cm, twice each, and 30 cm to tie: 7.5 m; twice as full, 14.7; of all colours in equal parts.
#[test]
fn a_tassel_is_wound_as_long_as_it_hangs() {
    let tassel = crate::Topper::usual(crate::TopperKind::Tassel);
    let topper = |topper: crate::Topper| {
        let hat = plan(&HatSpec { topper: Some(topper), ..spec() }).unwrap();
        let mine = hat.yarn_parts.iter().filter(|part| part.part == Part::Topper);
        (hat.topper.unwrap().wraps, mine.map(|part| (part.colour, part.length.metres())).collect::<Vec<_>>())
    };
    let blue = tassel.coloured(Colour(1));
    assert_eq!(topper(blue), (36, vec![(Colour(1), 7.5)]));
    assert_eq!(topper(crate::Topper { fullness: Ratio::of(2.0), ..blue }), (72, vec![(Colour(1), 14.7)]));
    assert_eq!(topper(blue.sized(Length::from_cm(20.0))), (36, vec![(Colour(1), 14.7)]));
    assert_eq!(topper(tassel), (36, vec![(Colour(0), 3.75), (Colour(1), 3.75)]));
}
