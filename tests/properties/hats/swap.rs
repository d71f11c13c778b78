//! Another yarn in its place: what its gauge rests on, reckoned anew, and whether the pattern stays.

use crate::planned::{PLANNED, Planned, near, sizes};
use hatwright_sizing::{Ball, Hat, HatSpec, Instead, Swap, SwapBasis, Swatch, Verdict, plan, swap};
use hatwright_tests::random::random_spec;
use std::collections::BTreeMap;

/// Geometry: a yarn of a density is as thick as the square root of its grams a metre.
fn thickness(old: &Ball, new: &Instead) -> Option<f64> {
    let per_metre = |grams: Option<hatwright_sizing::Mass>, metres: f64| grams.map(|grams| grams.grams() / metres);
    let (old, new) = (per_metre(old.grams, old.yarn.value())?, per_metre(new.grams, new.yarn.value())?);
    Some((new / old).sqrt())
}

/// What a maker counts: rows, rounds, flaps, each with its stitches and its colour.
fn counts(hat: &Hat) -> Vec<(u32, u32, u32, u8)> {
    let rows = hat.band_rows.iter().map(|colour| (0, 0, 0, colour.0));
    let panel = hat.panel.iter().flat_map(|panel| &panel.rows).map(|row| (row.stitches.get(), 0, 0, row.colour.0));
    let rounds = hat.rounds.iter().map(|r| (r.after.get(), r.decreases.get(), r.increases.get(), r.colour.0));
    let flaps = hat.flaps.iter().flat_map(|f| f.rows.iter().map(|row| (row.after.get(), row.decreases.get(), 0, f.colour.0)));
    let ties = hat.flaps.iter().map(|f| (f.tie_chains.get(), 0, 0, 0));
    rows.chain(panel).chain(rounds).chain(flaps).chain(ties).collect()
}

/// Asks of a swap what every swap keeps.
fn check(spec: &HatSpec, instead: &Instead, found: &Swap) -> Result<(), String> {
    let hold = |holds: bool, what: &str| if holds { Ok(()) } else { Err(format!("{what}: {found:?}")) };
    hold(plan(&found.spec) == found.hat, "not the hat of its spec")?;
    let ball = Ball { grams: instead.grams, weight: instead.weight, ..Ball::of(instead.yarn) };
    hold(found.spec.instead.is_none() && found.spec.balls == vec![ball; spec.balls.len()], "other balls")?;
    let used = &found.spec.yarn_use;
    hold((used.weighed, used.unravelled, used.kept, used.hat) == (None, None, None, None), "measured of another yarn")?;

    let thick = thickness(&spec.balls[0], instead);
    hold(found.thickness.is_some() == thick.is_some(), "thickness")?;
    hold(found.thickness.is_none_or(|told| near(told.value(), thick.unwrap_or(0.0), 0.000_06)), "thickness")?;
    let (was, is) = (sizes(spec), sizes(&found.spec));
    let counted = matches!(spec.swatch, Swatch::Counted { .. });
    // Alike within 3 % is alike (practice, no source).
    let alike = thick.is_some_and(|thick| (thick - 1.0).abs() <= 0.03);
    let expected = match (instead.swatch, thick, instead.weight) {
        (Some(_), ..) => SwapBasis::Swatch,
        (None, Some(_), _) if alike => SwapBasis::AsIs,
        (None, Some(_), weight) if counted || weight.is_none() => SwapBasis::Thickness,
        (None, _, Some(_)) => SwapBasis::Weight,
        (None, ..) => SwapBasis::AsIs,
    };
    hold(found.basis == expected, "rests on something else")?;
    match found.basis {
        SwapBasis::Swatch => hold(Some(found.spec.swatch) == instead.swatch, "another swatch")?,
        SwapBasis::AsIs => hold(found.spec.swatch == spec.swatch, "another gauge")?,
        SwapBasis::Weight => hold(instead.weight.map(Swatch::YarnWeight) == Some(found.spec.swatch), "another number")?,
        SwapBasis::Thickness => {
            let thick = thick.unwrap_or(0.0);
            // A count is told in hundredths: of four stitches, an eighth of a per cent.
            let proportion = near(is.w / was.w / thick, 1.0, 0.002) && near(is.h / was.h / thick, 1.0, 0.004);
            hold(proportion, "not in proportion")?;
        }
    }

    let same = match (plan(spec), &found.hat) {
        (Ok(before), Ok(after)) => Some(counts(&before) == counts(after)),
        _ => None,
    };
    let wider = thick.unwrap_or(is.w / was.w);
    let another_kind = !(0.6..=1.6).contains(&wider);
    match found.verdict {
        Verdict::SamePattern => {
            hold(same == Some(true) && expected == SwapBasis::Swatch && !another_kind, "not the same pattern")
        }
        Verdict::OtherCounts => hold(same != Some(true) && expected == SwapBasis::Swatch && !another_kind, "the same pattern"),
        Verdict::SwatchFirst => hold(found.hat.is_ok() && expected != SwapBasis::Swatch && !another_kind, "no swatch first"),
        Verdict::WillNot => hold(found.hat.is_err() || another_kind, "would do"),
    }
}

/// Any yarn for any hat, those that are refused among them.
#[test]
fn a_swap_is_what_its_yarn_makes_of_the_hat() {
    let mut seen: BTreeMap<String, u32> = BTreeMap::new();
    for seed in 0..6_000 {
        let spec = random_spec(seed);
        let Some(instead) = spec.instead else {
            assert_eq!(swap(&spec), None, "seed {seed}");
            continue;
        };
        let found = swap(&spec).expect("a yarn to weigh up");
        check(&spec, &instead, &found).unwrap_or_else(|why| panic!("seed {seed}: {why}\n  {spec:?}"));
        for what in [format!("{:?}", found.verdict), format!("{:?}", found.basis)] {
            *seen.entry(what).or_default() += 1;
        }
    }
    let all = ["OtherCounts", "SwatchFirst", "WillNot", "Swatch", "Thickness", "Weight", "AsIs"];
    assert!(all.iter().all(|what| seen.get(*what).is_some_and(|n| *n >= 20)), "{seen:?}");
}

/// A swatch like the hat's own leaves the pattern as it is; one of half as many stitches again does not.
#[test]
fn the_same_swatch_is_the_same_pattern() {
    let (mut kept, mut changed) = (0, 0);
    for Planned { seed, spec, .. } in PLANNED.iter().step_by(7) {
        let Swatch::Counted { stitches, width, rounds, height } = spec.swatch else { continue };
        let instead =
            |swatch| Instead { yarn: spec.balls[0].yarn, grams: spec.balls[0].grams, weight: None, swatch: Some(swatch) };
        let of = |swatch| {
            let instead = instead(swatch);
            let spec = HatSpec { instead: Some(instead), ..spec.clone() };
            let found = swap(&spec).expect("a yarn to weigh up");
            check(&spec, &instead, &found).unwrap_or_else(|why| panic!("seed {seed}: {why}\n  {spec:?}"));
            found.verdict
        };
        assert_eq!(of(spec.swatch), Verdict::SamePattern, "seed {seed}: {spec:?}");
        kept += 1;
        let half_more = hatwright_sizing::Count::from_ticks((stitches.ticks() * 3 / 2).min(20_000));
        let verdict = of(Swatch::Counted { stitches: half_more, width, rounds, height });
        assert_ne!(verdict, Verdict::SamePattern, "seed {seed}");
        changed += u32::from(verdict == Verdict::OtherCounts);
    }
    assert!(kept > 1_000 && changed > 400, "{kept} {changed}");
}
