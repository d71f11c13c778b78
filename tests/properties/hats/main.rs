//! What every planned hat keeps, over 10,000 random hats. Gauges, arcs and yarn are worked out anew from the spec and the rounds.

mod crown;
mod fit;
mod planned;
mod yarn;

use hatwright_sizing::{Refusal, plan};
use hatwright_tests::random::random_spec;
use planned::{HATS, PLANNED, Planned, ensure, every_hat};
use std::collections::{BTreeMap, BTreeSet};

#[test]
fn hats_are_made_and_refused() {
    let last = PLANNED.last().map_or(0, |p| p.seed) as usize;
    let share = HATS as f64 / last as f64;
    assert!(share > 0.5, "only {share} of random specs have a hat");
    let mut kinds: BTreeMap<&str, u32> = BTreeMap::new();
    let made: BTreeSet<u64> = PLANNED.iter().map(|p| p.seed).collect();
    for seed in (0..last as u64).filter(|seed| !made.contains(seed)) {
        if let Err(refusal) = plan(&random_spec(seed)) {
            let kind = match refusal {
                Refusal::Breach(_) => "breach",
                Refusal::EaseBeyondStretch { .. } => "ease",
                Refusal::StripesCannotClose { .. } => "stripes",
                Refusal::NoCount { .. } => "count",
                Refusal::FoldBeyondBand { .. } => "fold",
                Refusal::BandTooTall { .. } => "band",
            };
            *kinds.entry(kind).or_default() += 1;
        }
    }
    println!("{share} of specs have a hat; refusals {kinds:?}");
    assert!(!kinds.contains_key("breach"));
    for kind in ["ease", "stripes", "fold", "band"] {
        assert!(kinds.get(kind).is_some_and(|n| *n >= 20), "{kind}: {kinds:?}");
    }
}

/// The same spec gives the same hat.
#[test]
fn a_plan_has_no_memory() {
    for p in PLANNED.iter().step_by(20) {
        assert_eq!(plan(&p.spec).as_ref(), Ok(&p.hat), "seed {}", p.seed);
    }
}

#[test]
fn colours_follow_the_stripes() {
    every_hat(|Planned { hat, spec, .. }| {
        let mut rows = spec.band.stripes.iter().flat_map(|s| vec![s.colour; s.rows.get() as usize]).cycle();
        ensure(hat.band_rows.len() == hat.size.rows.get() as usize, || format!("{} rows", hat.band_rows.len()))?;
        ensure(hat.band_rows.iter().all(|c| Some(*c) == rows.next()), || format!("{:?}", hat.band_rows))?;
        let mut rounds = spec.body_stripes.iter().flat_map(|s| vec![s.colour; s.rounds.get() as usize]).cycle();
        ensure(hat.rounds.iter().all(|r| Some(r.colour) == rounds.next()), || format!("{:?}", hat.rounds))
    });
}
