//! Worked examples: geometry, or common practice without a source where it says so.

use hatwright_pattern::figures::Units;
use hatwright_pattern::written::{About, Terms, decrease_line, print, work_text};
use hatwright_sizing::{
    Age, Ball, Begun, Breach, Build, Colour, Count, Coverage, Extra, Fabric, Hat, HatSpec, Head, Length, Quantity, Ratio,
    Refusal, RoundStripe, Rounds, Rows, Sex, Stitches, Stretch, Style, Swatch, Topper, TopperKind, YarnLength, YarnWeight, Zone,
    chance_of, plan,
};
use hatwright_tests::interpreter::{Below, Step, Vocabulary, work, work_round};
use hatwright_words::{Language, in_language};
use std::f64::consts::TAU;

const MAIN: Colour = Colour(0);
const SECOND: Colour = Colour(1);

/// Head 49.8 cm, ease 7 %, 12 stitches and 15 rounds to 10 cm, a band of 10 stitches in two-row stripes of two colours.
fn example() -> HatSpec {
    HatSpec { head: Head::Measured(Length::from_cm(49.8)), swatch: counted(12, 15), ..HatSpec::default() }
}

fn counted(stitches: i32, rounds: i32) -> Swatch {
    let over = Length::from_cm(10.0);
    Swatch::Counted { stitches: Count::whole(stitches), width: over, rounds: Count::whole(rounds), height: over }
}

fn planned(spec: &HatSpec) -> Hat {
    plan(spec).unwrap_or_else(|refusal| panic!("{refusal:?}"))
}

fn tenths(cm: f64) -> String {
    format!("{cm:.1}")
}

/// Geometry: 49.8 × 0.93 is 46.3 cm, 55.6 stitches; the stripes close on 56, and a stripe's repeat to either side on 52 and 60.
#[test]
fn a_head_of_49_8_takes_56_stitches() {
    let hat = planned(&example());
    assert_eq!((hat.size.rows, hat.size.stitches), (Rows::new(56), Stitches::new(56)));
    assert_eq!(tenths(hat.wanted_girth.cm()), "46.3");
    assert_eq!(tenths(hat.size.girth.cm()), "46.7");
    assert_eq!(tenths(hat.size.ease.value() * 100.0), "6.3");
    let beside: Vec<(u32, String)> = hat.neighbours.iter().map(|n| (n.stitches.get(), tenths(n.girth.cm()))).collect();
    let expected = [(48, "40.0"), (52, "43.3"), (60, "50.0"), (64, "53.3")].map(|(n, cm)| (n, cm.to_owned()));
    assert_eq!(beside, expected);
    // 52 stitches reach 43.3 × 1.10 = 47.7 cm, so they are shown and not called a fit.
    let reaches: Vec<bool> = hat.neighbours.iter().map(|n| n.reaches).collect();
    assert_eq!(reaches, [false, false, true, true]);
}

/// The same hat for a 4-year-old: WHO's girls and boys of 4 years, 49.33 and 50.21 cm.
#[test]
fn a_four_year_old_takes_the_same() {
    let head = Head::ByAge { age: Age::Years(Count::whole(4)), sex: Sex::Unknown, build: Build::Average };
    let hat = planned(&HatSpec { head, ..example() });
    assert_eq!((tenths(hat.head.girth.cm()), hat.size.rows.get(), hat.stitches().get()), ("49.8".into(), 56, 56));
}

/// Common practice, no source: a band 10 stitches tall and 56 rows long gives 56 stitches around, one in each row end.
#[test]
fn a_band_of_56_rows_gives_56_stitches() {
    let hat = planned(&example());
    assert_eq!(example().band.height, Stitches::new(10));
    assert_eq!((hat.band_rows.len(), hat.stitches().get(), hat.size.pick_up()), (56, 56, (1, 1)));
    let first = hat.rounds[0];
    assert_eq!((first.before, first.after.get(), first.decreases.get()), (56, 56, 0));
}

/// Common practice, no source: two-row stripes in two colours need rows divisible by 4. Any head, any gauge.
#[test]
fn two_row_stripes_in_two_colours_close_on_fours() {
    let mut counts = Vec::new();
    for head in 36..62 {
        for stitches in 9..25 {
            let spec = HatSpec { head: Head::Measured(Length::from_cm(f64::from(head))), ..example() };
            let mut spec = HatSpec { swatch: counted(stitches, stitches * 5 / 4), ..spec };
            spec.band.height = Stitches::new(stitches as u32 * 8 / 10);
            spec.band.fold = Length::from_cm(3.0);
            if let Ok(hat) = plan(&spec) {
                let rows = hat.size.rows.get();
                assert!(rows.is_multiple_of(4), "{head} cm, {stitches} stitches: {rows} rows");
                assert_eq!((hat.band_rows[0], hat.band_rows[rows as usize - 1]), (MAIN, SECOND));
                counts.push(rows);
            }
        }
    }
    counts.sort_unstable();
    counts.dedup();
    assert!(counts.len() > 15, "{counts:?}");
}

/// Geometry: a swatch of 12 stitches counted to ± half a stitch reads 46.7 cm as 44.8 to 48.7; one of 24 in twice the width as
/// 45.7 to 47.7.
#[test]
fn a_wider_swatch_is_surer() {
    let range = |spec: &HatSpec| {
        let (low, high) = planned(spec).girth_range.expect("a counted swatch");
        (tenths(low.cm()), tenths(high.cm()))
    };
    assert_eq!(range(&example()), ("44.8".into(), "48.7".into()));
    let over = Length::from_cm(20.0);
    let swatch = Swatch::Counted { stitches: Count::whole(24), width: over, rounds: Count::whole(30), height: over };
    assert_eq!(range(&HatSpec { swatch, ..example() }), ("45.7".into(), "47.7".into()));
}

/// Geometry: 57 × 0.91 × 1.08 is 56.0 cm, which does not reach; 1 − 1/1.08 is 7.4 %.
#[test]
fn a_hat_that_does_not_reach_is_refused() {
    let spec = HatSpec {
        head: Head::Measured(Length::from_cm(57.0)),
        ease: Ratio::of(0.09),
        body_stretch: Stretch::Measured(Ratio::of(1.08)),
        ..example()
    };
    let Err(Refusal::EaseBeyondStretch { zone, head, reach, most }) = plan(&spec) else { panic!("{:?}", plan(&spec)) };
    assert_eq!((zone, head), (Quantity::BodyStretch, Length::from_cm(57.0)));
    assert_eq!(tenths(reach.cm()), "56.0");
    assert_eq!(most, Ratio::of(0.074));
    assert!(planned(&HatSpec { ease: most, ..spec }).size.reaches);
}

/// Geometry: a fitted crown from 56 stitches at 12 × 15 whose arc is a quarter of the head keeps the hemisphere's area and arc to 2 %,
/// takes 16–18 rounds, none of 1–3 decreases, and closes on 6–12 stitches.
#[test]
fn a_fitted_crown_of_56_is_a_hemisphere() {
    let (w, h, head) = (10.0 / 12.0, 10.0 / 15.0, 49.8);
    let mut spec = example();
    // Depth 19.671 and fold 1.112 less the band's 8.333 leave 12.45 cm.
    spec.band.fold = Length::from_ticks(1_112);
    let hat = planned(&spec);
    let counts: Vec<u32> = hat.rounds.iter().map(|r| r.after.get()).collect();
    let last = hat.top.expect("a top").stitches.get();
    let arc = head / 4.0;
    assert!((hat.depth.wanted.cm() + 1.112 - hat.depth.band.cm() - arc).abs() < 0.002);

    // The integral of girth · sin(2πs / head) over the quarter arc. A round's count is the girth of its inner edge, so its strip
    // narrows from the count before it; the closing is a small flat disc.
    let target = 56.0 * w * head / TAU;
    let strip = |outer: u32, inner: u32| f64::from(outer + inner) / 2.0 * w * h;
    let strips = strip(56, counts[0]) + counts.windows(2).map(|pair| strip(pair[0], pair[1])).sum::<f64>();
    let drawn = f64::from(last) * w / TAU;
    let area = strips + f64::from(last) * w * drawn / 2.0;
    assert!((area / target - 1.0).abs() < 0.02, "area {area}, target {target}: {counts:?}");
    assert!((hat.depth.above_band.cm() / arc - 1.0).abs() < 0.02, "arc {:?}, target {arc}", hat.depth.above_band);

    assert!((16..=18).contains(&counts.len()), "{counts:?}");
    assert!((6..=12).contains(&last), "{counts:?}");
    let few = hat.rounds.iter().filter(|r| (1..=3).contains(&r.decreases.get()));
    assert_eq!(few.count(), 0, "{counts:?}");
}

/// Lines whose text is given, worked from that text.
#[test]
fn the_writers_lines_are_exact() {
    for (before, after, text) in [
        (50, 43, "[sc2tog, 5 sc] × 6, sc2tog, 6 sc"),
        (54, 48, "[sc2tog, 7 sc] × 6"),
        (65, 52, "[sc2tog, 3 sc] × 13"),
        (56, 45, "[sc2tog, 3 sc] × 10, sc2tog, 4 sc"),
    ] {
        let ops = decrease_line(hatwright_sizing::Stitch::Single, before, before - after, 0);
        assert_eq!(work_text(&ops, Terms::Us), text);
        let us = work_round(text, Vocabulary::US, Below::Stitches(before)).unwrap();
        assert_eq!(us.len(), after as usize);
        let uk = work_round(&work_text(&ops, Terms::Uk), Vocabulary::UK, Below::Stitches(before));
        assert_eq!(uk.as_ref(), Ok(&us));
        let spanish = in_language(Language::Spanish, || work_text(&ops, Terms::Spanish));
        assert_eq!(work_round(&spanish, Vocabulary::SPAIN, Below::Stitches(before)), Ok(us));
    }
}

/// Common practice, no source: (single crochet two together, then three) around 56 leaves one stitch over, and 45 remain.
#[test]
fn decreasing_around_56_leaves_one_over() {
    let around = |text| work_round(text, Vocabulary::US, Below::Stitches(56));
    assert_eq!(around("[sc2tog, 3 sc] × 11"), Err("uses 55 of 56".into()));
    let steps = around("[sc2tog, 3 sc] × 11, sc").unwrap();
    assert_eq!(steps.len(), 45);
    assert_eq!(steps.iter().filter(|step| **step == Step::Decrease).count(), 11);
}

/// A child's hat at the gauge of a 4 mm hook: 17 stitches and 20 rounds to 10 cm, a band of 14 stitches half folded, a pom-pom of
/// 6 cm in the colours given.
fn child(body: &[(Colour, u32)], pom: Option<Colour>) -> Hat {
    planned(&child_spec(body, pom))
}

fn child_spec(body: &[(Colour, u32)], pom: Option<Colour>) -> HatSpec {
    let mut spec = HatSpec { swatch: counted(17, 20), ..example() };
    spec.band.height = Stitches::new(14);
    spec.body_stripes =
        body.iter().map(|(colour, rounds)| RoundStripe { colour: *colour, rounds: Rounds::new(*rounds) }).collect();
    spec.topper = Some(Topper { colour: pom, ..Topper::usual(TopperKind::PomPom) });
    spec
}

/// Common practice, no source: about 200 yards of a main colour and 50 of a second are ample for a child's hat at a 4 mm hook, pom-pom
/// included, and 70 m in all would not be enough.
///
/// With the second colour in the band's stripes and in up to half of the pom-pom, both lengths hold to the high end of our estimate.
/// With a pom-pom all of the second colour, 50 yards are what we expect, but not to the high end. With every fourth pair of
/// the body's rounds in the second colour as well, 50 yards are too few: we make that about 55.
#[test]
fn a_childs_hat_takes_the_yarn_that_practice_says() {
    const YARD: f64 = 0.9144;
    let (main_enough, second_enough) = (200.0 * YARD, 50.0 * YARD);
    let plain = [(MAIN, 1)];
    for pom in [Some(MAIN), None] {
        let [main, second] = child(&plain, pom).yarn[..] else { panic!("two colours") };
        assert!(main.high.metres() < main_enough, "{main:?}");
        assert!(second.high.metres() < second_enough, "{second:?}");
    }
    let [main, second] = child(&plain, Some(SECOND)).yarn[..] else { panic!("two colours") };
    assert!(main.high.metres() < main_enough && second.length.metres() < second_enough, "{main:?} {second:?}");
    assert!(second.high.metres() > second_enough, "{second:?}");
    let [main, second] = child(&[(MAIN, 6), (SECOND, 2)], None).yarn[..] else { panic!("two colours") };
    assert!(main.high.metres() < main_enough, "{main:?}");
    assert!((50.0..60.0).contains(&(second.length.metres() / YARD)), "{second:?}");

    // What comes of it: 107 and 34 m, a pom-pom's 13 m and its tie in equal parts among them; and however more is bought than the estimate,
    // the two lengths hold it.
    let [main, second] = child(&plain, None).yarn[..] else { panic!("two colours") };
    assert_eq!([main, second].map(|need| need.length.metres().round() as u32), [107, 34]);
    for extra in [Extra::Chance(Ratio::of(0.95)), Extra::Share(Ratio::of(0.25))] {
        let [main, second] = planned(&HatSpec { extra, ..child_spec(&plain, None) }).yarn[..] else { panic!("two colours") };
        assert!(main.safe.metres() < main_enough && second.safe.metres() < second_enough, "{main:?} {second:?}");
        assert!(main.safe > main.length && second.safe > second.length);
    }

    // Not even at the low end would 70 m do, at this gauge or at those of a 4 mm hook's usual yarns, light and medium.
    let all = |hat: &Hat| hat.yarn.iter().map(|need| need.low.metres()).sum::<f64>();
    assert!(all(&child(&plain, None)) > 100.0);
    for weight in [3, 4] {
        let swatch = Swatch::YarnWeight(YarnWeight::new(weight).unwrap());
        let hat = planned(&HatSpec { swatch, ..example() });
        assert!(all(&hat) > 70.0, "weight {weight}: {}", all(&hat));
    }
}

/// Common practice, no source: a cap for four years in a yarn of 12 stitches to 10 cm takes about 100 m in all, its band striped two and
/// two rows, its pom-pom of both colours; 70 m are not enough. A striped body takes as much, more of it in the second colour.
#[test]
fn a_cap_for_four_years_takes_about_100_m() {
    let four = |stripes: &[(Colour, u32)]| {
        let body_stripes =
            stripes.iter().map(|(colour, rounds)| RoundStripe { colour: *colour, rounds: Rounds::new(*rounds) }).collect();
        let head = Head::ByAge { age: Age::Years(Count::whole(4)), sex: Sex::Unknown, build: Build::Average };
        HatSpec { head, body_stripes, ..example() }
    };
    for (stripes, metres) in [(&[(MAIN, 1)][..], [79.0, 24.0]), (&[(MAIN, 6), (SECOND, 2)], [68.0, 35.0])] {
        let mut spec = four(stripes);
        let hat = planned(&spec);
        assert_eq!(hat.yarn.iter().map(|need| need.length.metres().round()).collect::<Vec<_>>(), metres);
        let all: f64 = hat.yarn.iter().map(|need| need.length.metres()).sum();
        assert!((95.0..=105.0).contains(&all), "{all}");
        // 70 m in all, shared as the hat shares them: enough once in fifty hats at the most.
        for (ball, need) in spec.balls.iter_mut().zip(&hat.yarn) {
            *ball = Ball::of(Count::from_ticks((need.length.metres() / all * 7_000.0) as i32));
        }
        for (ball, need) in spec.balls.iter().zip(&planned(&spec).yarn) {
            let chance = chance_of(need, YarnLength::from_metres(ball.metres()));
            assert!(chance < Ratio::of(0.02) && need.balls == 2, "{chance:?} {need:?}");
        }
    }
}

/// Common practice, no source: hats of this kind are offered for 1 to 10 years. By our tables a plain body of 46.7 cm serves 8 in 10
/// children only from 19 months to 4 years and 5 months, because it reaches 51.3 cm. Ribbed throughout, the same girth reaches
/// 63.0 cm: from 19 months on, with no upper end. Neither serves a child of one year so well: the hat hangs more than 2 % loose on
/// more than 2 in 10 of them.
#[test]
fn one_to_ten_years_is_more_than_a_plain_body_serves() {
    let hat = planned(&example());
    let months = |ages: Option<(f64, f64)>| ages.map(|(from, to)| ((from * 12.0).round() as u32, (to * 12.0).round() as u32));
    assert_eq!((tenths(hat.fit.least.cm()), tenths(hat.fit.most.cm())), ("45.7".into(), "51.3".into()));
    assert_eq!(months(hat.fit.ages), Some((19, 53)));
    assert_eq!(months(hat.fit.ribbed_ages), Some((19, 110 * 12)));
}

/// Stripes of 20 and 20 rows close on 40 or 80 rows, 33.3 or 66.7 cm, and this head wants 56.
#[test]
fn stripes_that_cannot_close_are_refused() {
    let mut spec = example();
    spec.band.stripes.iter_mut().for_each(|stripe| stripe.rows = Rows::new(20));
    let expected = Refusal::StripesCannotClose {
        repeat: Rows::new(40),
        wanted: Rows::new(56),
        below: Some((Rows::new(40), Length::from_cm(33.333))),
        above: (Rows::new(80), Length::from_cm(66.667)),
    };
    assert_eq!(plan(&spec), Err(expected));
}

/// A band of 24 stitches is 20 cm tall: with 4.2 cm of it folded up, 3.9 cm are left of a hat that needs 7.4 for a flat disc. Folding
/// 7.8 cm works, and a millimetre or two less does not; so does a band of 19 stitches, and not one of 20.
#[test]
fn a_band_too_tall_is_told_what_works() {
    let tall = |stitches: u32, fold: f64| {
        let mut spec = example();
        spec.band.height = Stitches::new(stitches);
        spec.band.fold = Length::from_cm(fold);
        plan(&spec)
    };
    let Err(Refusal::BandTooTall { left, fold, tallest, .. }) = tall(24, 4.2) else { panic!("{:?}", tall(24, 4.2)) };
    assert_eq!((tenths(left.cm()), tallest), ("3.9".into(), Some(Stitches::new(19))));
    let fold = fold.expect("a fold that works").cm();
    assert_eq!(tenths(fold), "7.8");
    assert!(tall(24, fold).is_ok() && tall(19, 4.2).is_ok());
    for less in [0.1, 0.2] {
        assert!(matches!(tall(24, fold - less), Err(Refusal::BandTooTall { .. })), "{less}");
    }
    assert!(matches!(tall(20, 4.2), Err(Refusal::BandTooTall { .. })));
}

/// Absurd numbers are refused with the field that they stand in.
#[test]
fn absurd_numbers_are_refused() {
    let head = |cm: f64| HatSpec { head: Head::Measured(Length::from_cm(cm)), ..example() };
    let aged = |age| HatSpec { head: Head::ByAge { age, sex: Sex::Unknown, build: Build::Average }, ..example() };
    let swatch = |hundredths: i32, cm: f64| {
        let (width, height, rounds) = (Length::from_cm(cm), Length::from_cm(10.0), Count::whole(15));
        HatSpec { swatch: Swatch::Counted { stitches: Count::from_ticks(hundredths), width, rounds, height }, ..example() }
    };
    let band = |height: u32, rows: u32| {
        let mut spec = example();
        spec.band.height = Stitches::new(height);
        spec.band.stripes[0].rows = Rows::new(rows);
        spec
    };
    for (spec, field, ticks) in [
        (head(300.0), Quantity::HeadGirth, 300_000),
        (head(0.0), Quantity::HeadGirth, 0),
        (head(-50.0), Quantity::HeadGirth, -50_000),
        (aged(Age::Years(Count::whole(111))), Quantity::AgeYears, 11_100),
        (aged(Age::Months(Count::whole(-1))), Quantity::AgeMonths, -100),
        (swatch(10, 10.0), Quantity::SwatchStitches, 10),
        (swatch(399, 10.0), Quantity::SwatchStitches, 399),
        (swatch(1_200, 0.0), Quantity::SwatchWidth, 0),
        (band(1, 2), Quantity::BandHeight, 1),
        (band(10, 0), Quantity::StripeRows, 0),
        (HatSpec { ease: Ratio::of(0.31), ..example() }, Quantity::Ease, 3_100),
    ] {
        let breach = Breach::OutOfRange(field, ticks);
        assert_eq!(spec.check(), Err(breach));
        assert_eq!(plan(&spec), Err(Refusal::Breach(breach)));
        assert_eq!(Refusal::Breach(breach).field(), field);
    }
    let none = HatSpec { balls: Vec::new(), ..example() };
    assert_eq!(none.check(), Err(Breach::WrongCount));
    let third = HatSpec { body_stripes: vec![RoundStripe { colour: Colour(2), rounds: Rounds::new(2) }], ..example() };
    assert_eq!(third.check(), Err(Breach::NoSuchColour(Colour(2))));
}

/// A band with a gauge of its own: 10.5 rows to 10 cm on a head of 49.8 cm. 48 rows (45.7 cm) with 56 stitches (46.7 cm, reaching
/// 51.3 cm) are nearer what was asked for than 52 rows with 60 stitches, which would be larger than the head.
#[test]
fn a_band_of_another_gauge_and_its_body_are_both_near_the_fit() {
    let mut spec = HatSpec { head: Head::Measured(Length::from_cm(49.8)), ..HatSpec::default() };
    let ten = Length::from_cm(10.0);
    spec.band.swatch = Some(hatwright_sizing::BandSwatch {
        stitches: Count::whole(12),
        width: ten,
        rows: Count::from_ticks(10_50),
        length: ten,
    });
    let hat = plan(&spec).unwrap();
    assert_eq!((hat.size.rows.get(), hat.size.stitches.get()), (48, 56));
    assert_eq!(hat.size.pick_up(), (7, 6));
    assert!(hat.size.reaches);
}

/// Single crochet is about 0.85 times as tall as wide (common practice, no source): 60 rounds beside 12 stitches are asked about.
#[test]
fn a_swatch_of_an_unusual_shape_is_asked_about() {
    let asked = |rounds| {
        let hat = plan(&HatSpec { swatch: counted(12, rounds), ..example() }).unwrap();
        hat.remarks.iter().any(|r| matches!(r, hatwright_sizing::Remark::UnusualStitch(_)))
    };
    assert!(!asked(15) && asked(60) && asked(8));
}

/// A band of 26 stitches, 21.7 cm, all folded up on a hat 19.7 cm deep stands 2 cm above it.
#[test]
fn a_cuff_above_the_crown_is_told() {
    let mut spec = example();
    spec.band.height = Stitches::new(26);
    spec.band.fold = hatwright_sizing::band_height(&spec);
    let hat = plan(&spec).unwrap();
    let above = spec.band.fold.cm() - hat.depth.promised.cm();
    assert!((1.5..2.5).contains(&above), "{above}");
    assert!(hat.remarks.contains(&hatwright_sizing::Remark::FoldAboveCrown(Length::from_cm(above))));
}

/// Practice and geometry: a flat brim at 14 × 16 to 10 cm from 78 stitches has 133 ± 2 after 10 rounds, 5.5 more in each; begun from the
/// crown or from the edge.
#[test]
fn a_flat_brim_of_78_grows_to_133() {
    for begun in [Begun::Band, Begun::Crown] {
        let mut spec = HatSpec {
            style: Style::Brimmed,
            begun,
            head: Head::Measured(Length::from_cm(56.2)),
            swatch: counted(14, 16),
            ease: Ratio::of(0.01),
            coverage: Coverage::EarTops,
            ..HatSpec::default()
        };
        spec.shape.brim = Length::from_cm(6.25);
        spec.shape.flare = Ratio::of(1.0);
        let hat = planned(&spec);
        assert_eq!(hat.stitches().get(), 78);
        let brim: Vec<u32> = hat.rounds.iter().filter(|r| r.zone == Zone::Brim).map(|r| r.after.get()).collect();
        assert_eq!(brim.len(), 10);
        assert!(brim[9].abs_diff(133) <= 2, "{brim:?}");
        // A constant number a round, never a percentage: what the last rounds grow by is what the first do.
        let grown = |from: usize, to: usize| brim[to] - brim[from];
        assert!(grown(1, 5).abs_diff(grown(5, 9)) <= 12, "{brim:?}");
    }
}

/// Common practice, no source: flat discs grow by 6 in single, 8 in half double, 12 in double crochet. Out of the geometry at 14 × 16,
/// 13 × 10 and 13 × 7 to 10 cm come 5.5, 8.2 and 11.7, which is what a tam's disc grows by.
#[test]
fn a_tams_disc_grows_by_the_rule_of_thumb() {
    for (fabric, across, up, rate, rule) in
        [(Fabric::Single, 14, 16, 5.5, 6.0), (Fabric::HalfDouble, 13, 10, 8.2, 8.0), (Fabric::Double, 13, 7, 11.7, 12.0_f64)]
    {
        for begun in [Begun::Band, Begun::Crown] {
            let head = Head::Measured(Length::from_cm(56.0));
            let hat =
                planned(&HatSpec { style: Style::Tam, begun, fabric, swatch: counted(across, up), head, ..HatSpec::default() });
            let disc: Vec<u32> = hat.rounds.iter().filter(|r| r.zone == Zone::Crown).map(|r| r.after.get()).collect();
            let grown = f64::from(disc[0].abs_diff(disc[disc.len() - 1])) / (disc.len() - 1) as f64;
            assert!((grown - rate).abs() < 0.6 && (grown - rule).abs() < 0.9, "{fabric:?} {begun:?}: {grown} in {disc:?}");
        }
    }
}

/// Geometry: 20 m of tail at 15 rounds to 10 cm are 3000 rounds, told in one line.
#[test]
fn a_tail_of_twenty_metres_is_one_line() {
    let mut spec = HatSpec { style: Style::Stocking, ..example() };
    spec.body_stripes = vec![RoundStripe { colour: MAIN, rounds: Rounds::new(2) }];
    spec.shape.tail = Length::from_cm(2_000.0);
    let hat = planned(&spec);
    let tail = hat.rounds.iter().filter(|r| r.zone == Zone::Tail).count();
    assert!((2_900..=3_000).contains(&tail), "{tail}");
    let about = About {
        title: "Cap",
        colour_names: &["indigo", "weld"],
        yarn_names: &[],
        terms: Terms::Us,
        units: Units::Centimetres,
        version: "0.1.0",
        ..About::default()
    };
    let text = print(&hat, &spec, &about);
    let long: Vec<&str> = text.lines().filter(|line| line.starts_with("Rounds ") && line.ends_with("(10)")).collect();
    assert_eq!(long.len(), 1, "{long:?}");
    let made = work(&text).expect("a pattern that can be worked");
    assert_eq!(made.rounds.len(), hat.rounds.len());
}
