//! What every planned hat keeps, over 10,000 random hats. Gauges, arcs and yarn are worked out anew from the spec and the rounds.

mod crown;
mod fit;
mod geometry;
mod only;
mod planned;
mod rates;
mod shop;
mod swap;
mod yarn;

use hatwright_sizing::{BandKind, Breach, Colour, Quantity as Q, Refusal, Zone, plan};
use hatwright_tests::random::random_spec;
use planned::{HATS, PLANNED, Planned, ensure, every_hat};
use std::collections::{BTreeMap, BTreeSet};

#[test]
fn hats_are_made_and_refused() {
    let last = PLANNED.last().map_or(0, |p| p.seed) as usize;
    let share = HATS as f64 / last as f64;
    assert!(share > 0.45, "only {share} of random specs have a hat");
    let mut kinds: BTreeMap<&str, u32> = BTreeMap::new();
    let made: BTreeSet<u64> = PLANNED.iter().map(|p| p.seed).collect();
    for seed in (0..last as u64).filter(|seed| !made.contains(seed)) {
        if let Err(refusal) = plan(&random_spec(seed)) {
            let kind = match refusal {
                Refusal::Breach(Breach::OutOfRange(Q::BodyStitch | Q::BodyRound | Q::BandStitch | Q::BandRow, _)) => "size",
                Refusal::Breach(_) => "breach",
                Refusal::EaseBeyondStretch { .. } => "ease",
                Refusal::StripesCannotClose { .. } => "stripes",
                Refusal::NoCount { .. } => "count",
                Refusal::FoldBeyondBand { .. } => "fold",
                Refusal::BandTooTall { .. } => "band",
                Refusal::TamTooSmall { .. } => "tam",
                Refusal::TooLong { .. } => "long",
            };
            *kinds.entry(kind).or_default() += 1;
        }
    }
    println!("{share} of specs have a hat; refusals {kinds:?}");
    assert!(!kinds.contains_key("breach"));
    for kind in ["ease", "stripes", "fold", "band", "tam"] {
        assert!(kinds.get(kind).is_some_and(|n| *n >= 10), "{kind}: {kinds:?}");
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
        let rows = || spec.band.stripes.iter().flat_map(|s| vec![s.colour; s.rows.get() as usize]).cycle();
        let rounds = || spec.body_stripes.iter().flat_map(|s| vec![s.colour; s.rounds.get() as usize]).cycle();
        let many = if hat.band == BandKind::Sideways { hat.size.rows.get() as usize } else { 0 };
        ensure(hat.band_rows.len() == many, || format!("{} rows", hat.band_rows.len()))?;
        ensure(hat.band_rows.iter().copied().eq(rows().take(many)), || format!("{:?}", hat.band_rows))?;
        let (band, body): (Vec<_>, Vec<_>) =
            hat.rounds.iter().map(|r| (r.zone, r.colour)).partition(|(zone, _)| *zone == Zone::Band);
        let follow = |made: &[(Zone, Colour)], stripes: &mut dyn Iterator<Item = Colour>| {
            made.iter().all(|(_, c)| Some(*c) == stripes.next())
        };
        ensure(follow(&band, &mut rows()) && follow(&body, &mut rounds()), || format!("{:?}", hat.rounds))?;
        let panel = hat.panel.as_ref().map_or(&[][..], |panel| &panel.rows);
        ensure(panel.iter().map(|r| r.colour).eq(rounds().take(panel.len())), || format!("{panel:?}"))
    });
}
