//! A refusal names a way out: what it names works when it is tried, and what lies just short of it does not.

use hatwright_pattern::figures::Units;
use hatwright_pattern::written::{About, Terms, print};
use hatwright_project::strategies::{arb_spec, arb_usual_spec};
use hatwright_sizing::{
    BandKind, Breach, Colour, Count, HatSpec, Head, Length, Quantity, Ratio, Refusal, Rounds, Stitches, Style, Swatch, plan,
};
use hatwright_tests::random::random_spec;
use proptest::prelude::*;
use std::sync::LazyLock;

/// The first so many refusals of random specs, with their seeds.
static REFUSED: LazyLock<Vec<(u64, HatSpec, Refusal)>> = LazyLock::new(|| {
    let refused = |seed| {
        let spec = random_spec(seed);
        plan(&spec).err().map(|refusal| (seed, spec, refusal))
    };
    (0..).filter_map(refused).take(3_000).collect()
});

fn too_tall(spec: &HatSpec) -> bool {
    matches!(plan(spec), Err(Refusal::BandTooTall { .. }))
}

#[test]
fn a_band_too_tall_is_told_the_smallest_fold_and_the_tallest_band() {
    let (mut folds, mut bands) = (0, 0);
    for (seed, spec, refusal) in REFUSED.iter() {
        let Refusal::BandTooTall { left, fold, tallest, .. } = *refusal else { continue };
        let at = || format!("seed {seed}: {refusal:?}");
        assert!(left.cm() < 30.0 + spec.shape.slouch_longer.cm(), "{}", at());
        if let Some(fold) = fold {
            let with = |ticks: i32| {
                let mut spec = spec.clone();
                spec.band.fold = Length::from_ticks(ticks);
                spec
            };
            assert!(fold > spec.band.fold, "{}", at());
            assert!(plan(&with(fold.ticks())).is_ok(), "{}", at());
            for less in [100, 200] {
                let ticks = fold.ticks() - less;
                assert!(ticks <= spec.band.fold.ticks() || too_tall(&with(ticks)), "{less} less: {}", at());
            }
            folds += 1;
        }
        if let Some(tallest) = tallest {
            // Stitches of a row, or rounds.
            let rounds = spec.band_kind() == BandKind::Around;
            let with = |height: u32| {
                let mut spec = spec.clone();
                if rounds {
                    spec.band.rounds = Rounds::new(height);
                } else {
                    spec.band.height = Stitches::new(height);
                }
                spec
            };
            assert!(tallest.get() < if rounds { spec.band.rounds.get() } else { spec.band.height.get() }, "{}", at());
            assert!(plan(&with(tallest.get())).is_ok(), "{}", at());
            assert!(too_tall(&with(tallest.get() + 1)), "{}", at());
            bands += 1;
        }
    }
    println!("{folds} folds, {bands} bands");
    assert!(folds > 100 && bands > 100, "{folds} folds, {bands} bands");
}

#[test]
fn too_much_ease_is_told_how_much_there_may_be() {
    let mut told = 0;
    for (seed, spec, refusal) in REFUSED.iter() {
        let Refusal::EaseBeyondStretch { head, reach, most, zone } = *refusal else { continue };
        let at = || format!("seed {seed}: {refusal:?}");
        assert!(reach < head && most < spec.ease, "{}", at());
        assert!(matches!(zone, Quantity::BodyStretch | Quantity::BandStretch), "{}", at());
        let with = |ease: Ratio| plan(&HatSpec { ease, ..spec.clone() });
        let refused = |ease| matches!(with(ease), Err(Refusal::EaseBeyondStretch { .. }));
        assert!(!refused(most), "{}", at());
        assert!(refused(Ratio::from_ticks(most.ticks() + 10)), "a tenth of a per cent more: {}", at());
        told += 1;
    }
    assert!(told > 200, "{told}");
}

#[test]
fn stripes_that_cannot_close_are_told_what_does() {
    let mut told = 0;
    for (seed, spec, refusal) in REFUSED.iter() {
        let Refusal::StripesCannotClose { repeat, wanted, below, above } = *refusal else { continue };
        let at = || format!("seed {seed}: {refusal:?}");
        let k = repeat.get();
        assert!(k > 2 && k.is_multiple_of(2), "{}", at());
        let band: u32 = spec.band.stripes.iter().map(|s| s.rows.get()).sum();
        let body: u32 = spec.body_stripes.iter().map(|s| s.rounds.get()).sum();
        let solid = |mut colours: Vec<Colour>| {
            colours.dedup();
            colours.len() == 1
        };
        let (stripe, plain) = match spec.style {
            Style::Sideways => (body, solid(spec.body_stripes.iter().map(|s| s.colour).collect())),
            _ => (band, solid(spec.band.stripes.iter().map(|s| s.colour).collect())),
        };
        assert!(k.is_multiple_of(if plain { 2 } else { stripe }), "{}", at());
        assert!(above.0.get().is_multiple_of(k) && above.0.get() > wanted.get(), "{}", at());
        if let Some((rows, girth)) = below {
            assert!(rows.get() + k == above.0.get() && rows.get() <= wanted.get() && girth < above.1, "{}", at());
        } else {
            assert_eq!(above.0.get(), k, "{}", at());
        }
        told += 1;
    }
    assert!(told > 20, "{told}");
}

/// What is named as the nearest below is below, and too tight.
#[test]
fn a_head_that_no_count_fits_is_told_the_nearest_below() {
    let thick = |head: i32, hundredths: i32| HatSpec {
        head: Head::Measured(Length::from_ticks(head)),
        swatch: Swatch::Counted {
            stitches: Count::whole(4),
            width: Length::from_ticks(hundredths * 4),
            rounds: Count::whole(4),
            height: Length::from_ticks(hundredths * 4),
        },
        ..HatSpec::default()
    };
    let mut told = 0;
    for head in 30..60 {
        for width in 20..60 {
            let spec = thick(head * 1_000, width * 100);
            let Err(Refusal::NoCount { head, nearest }) = plan(&solid(spec)) else { continue };
            assert!(
                nearest.cm() <= 0.93 * head.cm() + f64::from(width) / 20.0 && nearest.cm() * 1.1 < head.cm(),
                "{head:?} {nearest:?}"
            );
            // The next pair of rows, or the least hat of 8 stitches, is too loose: 2 % at the most.
            let more = if nearest == Length::ZERO { 8.0 } else { 2.0 };
            let next = nearest.cm() + more * f64::from(width) / 10.0;
            assert!(next * 1.1 >= head.cm() && next > 1.02 * head.cm(), "{head:?} {nearest:?} {next}");
            told += 1;
        }
    }
    assert!(told > 20, "{told}");
}

/// With a band of one colour, whose rows need only be even.
fn solid(mut spec: HatSpec) -> HatSpec {
    spec.band.stripes.truncate(1);
    spec
}

#[test]
fn a_fold_beyond_the_band_is_told_the_band() {
    let mut told = 0;
    for (seed, spec, refusal) in REFUSED.iter() {
        let Refusal::FoldBeyondBand { fold, band } = *refusal else { continue };
        assert!(fold == spec.band.fold && fold > band, "seed {seed}: {refusal:?}");
        let mut folded = spec.clone();
        folded.band.fold = Length::from_ticks(band.ticks() - 1);
        assert!(!matches!(plan(&folded), Err(Refusal::FoldBeyondBand { .. })), "seed {seed}: {refusal:?}");
        told += 1;
    }
    assert!(told > 20, "{told}");
}

/// What is named as the least width of a tam works, and a millimetre less does not.
#[test]
fn a_tam_too_small_is_told_the_least_that_works() {
    let mut told = 0;
    for (seed, spec, refusal) in REFUSED.iter() {
        let Refusal::TamTooSmall { across, least } = *refusal else { continue };
        let with = |ticks: i32| {
            let mut spec = spec.clone();
            spec.shape.tam_across = Length::from_ticks(ticks);
            plan(&spec)
        };
        assert!(across == spec.shape.tam_across && across < least, "seed {seed}: {refusal:?}");
        assert!(with(least.ticks()).is_ok(), "seed {seed}: {refusal:?}");
        let less = least.ticks() - 100;
        assert!(less <= across.ticks() || matches!(with(less), Err(Refusal::TamTooSmall { .. })), "seed {seed}: {refusal:?}");
        told += 1;
    }
    assert!(told > 20, "{told}");
}

/// Twenty metres of tail, in thread whose rounds are a millimetre tall, are 20,000 rounds: a long winter, but no reason to refuse.
#[test]
fn a_tail_of_twenty_metres_in_thread_is_planned() {
    let thread = Swatch::Counted {
        stitches: Count::whole(70),
        width: Length::from_cm(10.0),
        rounds: Count::whole(100),
        height: Length::from_cm(10.0),
    };
    let mut spec = HatSpec { style: Style::Stocking, swatch: thread, ..HatSpec::default() };
    spec.band.height = Stitches::new(50);
    spec.shape.tail = Length::from_cm(2_000.0);
    let hat = plan(&spec).expect("a hat");
    assert!((19_900..=20_500).contains(&hat.rounds.len()), "{}", hat.rounds.len());
}

/// The only breach that a checked spec may still make: stitches of a size that nobody crochets, which follow from two numbers.
fn is_about_stitch_sizes(breach: Breach) -> bool {
    use Quantity as Q;
    matches!(breach, Breach::OutOfRange(Q::BodyStitch | Q::BodyRound | Q::BandStitch | Q::BandRow, _))
}

/// 200 stitches over 5 cm are 0.25 mm each: refused beside the count, and at once.
#[test]
fn thread_that_nobody_crochets_is_refused_beside_its_count() {
    let fine = Swatch::Counted {
        stitches: Count::whole(200),
        width: Length::from_cm(5.0),
        rounds: Count::whole(15),
        height: Length::from_cm(10.0),
    };
    let refusal = plan(&HatSpec { swatch: fine, ..HatSpec::default() }).unwrap_err();
    assert_eq!(refusal, Refusal::Breach(Breach::OutOfRange(Quantity::BodyStitch, 25)));
    assert_eq!(refusal.field(), Quantity::SwatchStitches);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 3_000, failure_persistence: None, ..ProptestConfig::default() })]

    /// To the ends of every range, most of which make no hat: a plan or a refusal, never a panic.
    #[test]
    fn no_plan_panics(spec in arb_spec()) {
        match plan(&spec) {
            Ok(hat) => {
                // Rounds, or rows alone.
                prop_assert!(hat.size.reaches && !(hat.rounds.is_empty() && hat.band_rows.is_empty() && hat.panel.is_none()));
                // Whatever can be planned can be printed.
                let about = About {
                    title: "Rowing club cap",
                    colour_names: &["indigo", "weld", "madder", "walnut", "undyed", "logwood"],
                    yarn_names: &[],
                    terms: Terms::Uk,
                    units: Units::Inches,
                    version: "0.1.0", ..About::default() };
                prop_assert!(print(&hat, &spec, &about).lines().count() > 10);
            }
            Err(Refusal::Breach(breach)) => prop_assert!(is_about_stitch_sizes(breach), "{breach:?}"),
            Err(_) => {}
        }
    }

    #[test]
    fn most_usual_hats_can_be_made_and_none_panics(spec in arb_usual_spec()) {
        if let Ok(hat) = plan(&spec) {
            prop_assert!(hat.size.reach >= hat.head.girth);
        }
    }
}
