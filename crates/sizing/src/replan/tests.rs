use super::*;
use crate::{BandKind, Fabric, Head, Layout, Stretch};
use proptest::prelude::*;

fn spec(style: Style, begun: Begun, band: BandKind, wedges: bool) -> HatSpec {
    let mut spec = HatSpec {
        style,
        begun,
        head: Head::Measured(Length::from_cm(56.0)),
        layout: if wedges { Layout::Wedges(8) } else { Layout::Spread },
        ..HatSpec::default()
    };
    spec.band.kind = band;
    if band == BandKind::Around {
        spec.band.fabric = Fabric::Single;
        spec.band.fold = Length::ZERO;
    }
    spec.shape.tam_across = Length::from_cm(27.0);
    if style == Style::EarFlap {
        spec.band.height = Stitches::new(4);
    }
    spec
}

/// The first rounds as they are worked: what part of the hat they are called may change with what comes after.
fn worked(hat: &Hat, rounds: u32) -> Vec<(u32, u32, u32, crate::Colour)> {
    hat.rounds[..rounds as usize].iter().map(|r| (r.before, r.after.get(), r.lead.get(), r.colour)).collect()
}

const STYLES: [Style; 6] = [Style::Fitted, Style::Slouch, Style::Stocking, Style::Tam, Style::EarFlap, Style::Brimmed];

fn every(mut check: impl FnMut(&HatSpec, &Hat)) {
    for style in STYLES {
        for begun in [Begun::Band, Begun::Crown] {
            for band in [BandKind::Sideways, BandKind::Around, BandKind::None] {
                for wedges in [false, true] {
                    let spec = spec(style, begun, band, wedges);
                    let hat = plan(&spec).unwrap_or_else(|refusal| panic!("{style:?} {begun:?} {band:?} {wedges}: {refusal:?}"));
                    check(&spec, &hat);
                }
            }
        }
    }
}

/// Nothing measured, nothing lost: the rest is as long as it was, and ends as it did.
#[test]
fn a_hat_that_goes_as_planned_goes_on_as_planned() {
    let (mut same, mut all) = (0, 0);
    every(|spec, hat| {
        for rounds in 1..hat.rounds.len() as u32 {
            let stitches = hat.rounds[rounds as usize - 1].after.get();
            let name = || format!("{:?} {:?} {:?} {:?} after {rounds}", spec.style, spec.begun, spec.band.kind, spec.layout);
            let on = replan(spec, hat, &Progress { rounds, stitches, width: None, height: None })
                .unwrap_or_else(|no| panic!("{}: {no:?}", name()));
            assert_eq!(on.hat.rounds[..rounds as usize], hat.rounds[..rounds as usize], "{}", name());
            assert!(
                on.hat.rounds.len().abs_diff(hat.rounds.len()) <= 1,
                "{}: {} rounds of {}",
                name(),
                on.hat.rounds.len(),
                hat.rounds.len()
            );
            all += 1;
            let counts = |hat: &Hat| hat.rounds.iter().map(|r| r.after.get()).collect::<Vec<_>>();
            same += u32::from(counts(&on.hat) == counts(hat));
        }
    });
    assert!(same * 10 > all * 8, "only {same} of {all} go on exactly as planned");
}

/// A piece that is exactly what its own gauge makes is planned as by that gauge, and comes out as deep and as wide.
#[test]
fn a_swatch_that_lied_is_mended() {
    let mut mended = 0;
    every(|spec, hat| {
        for share in [0.9, 0.95, 1.05, 1.12] {
            // Where the width may be measured, at the latest.
            let Some(rounds) = (1..hat.rounds.len() as u32).rev().find(|r| measurable(hat, *r).is_ok()) else { continue };
            let last = &hat.rounds[rounds as usize - 1];
            let body = hat.rounds[..rounds as usize].iter().filter(|r| r.zone != Zone::Band).count() as f64;
            let (w, h) = (hat.gauge.stitch.cm(), hat.gauge.round.cm() * share);
            let width = Some(Length::from_cm(f64::from(last.after.get()) * w / 2.0));
            let height = Some(Length::from_cm(body * h));
            let on = match replan(spec, hat, &Progress { rounds, stitches: last.after.get(), width, height }) {
                Ok(on) => on,
                Err(NoWayOn::Undo(undo)) => {
                    assert!(undo.rounds <= rounds && undo.why == UndoWhy::NoRoom, "{:?} {share}: {undo:?}", spec.style);
                    continue;
                }
                Err(no) => panic!("{:?} {:?} {share}: {no:?}", spec.style, spec.begun),
            };
            mended += 1;
            assert_eq!(worked(&on.hat, rounds), worked(hat, rounds));
            let off = on.hat.depth.promised.cm() - on.hat.depth.wanted.cm();
            assert!(
                off.abs() <= on.gauge.round.cm() + on.deeper.cm() + 0.01,
                "{:?} {:?} {:?} {share}: {off} of {:?}",
                spec.style,
                spec.begun,
                spec.band.kind,
                on.deeper
            );
            let was = (on.depth_as_planned.cm() - hat.depth.wanted.cm()).abs();
            assert!(off.abs() <= was + on.gauge.round.cm(), "{:?}: {off} is no better than {was}", spec.style);
        }
    });
    assert!(mended > 60, "{mended}");
}

/// 56 stitches to the swatch's 46.7 cm came out 40 cm: they reach no head of 49.8, and nothing that is still to come changes that.
#[test]
fn too_tight_a_body_is_undone() {
    let spec = HatSpec { body_stretch: Stretch::Measured(crate::Ratio::of(1.1)), ..HatSpec::default() };
    let hat = plan(&spec).unwrap();
    let rounds = hat.depth.straight.get();
    let width = Some(Length::from_cm(20.0));
    let no = replan(&spec, &hat, &Progress { rounds, stitches: hat.stitches().get(), width, height: None });
    let Err(NoWayOn::Undo(undo)) = no else { panic!("{no:?}") };
    assert_eq!(undo.rounds, rounds);
    assert!(matches!(undo.why, UndoWhy::Tight(reach) if reach < hat.head.girth), "{undo:?}");
}

/// Begun at the crown, a tube that is too tight is widened from here on: nothing is undone.
#[test]
fn a_tight_tube_from_the_crown_is_widened() {
    let spec = spec(Style::Fitted, Begun::Crown, BandKind::None, false);
    let hat = plan(&spec).unwrap();
    let rounds = (1..hat.rounds.len() as u32).find(|r| measurable(&hat, *r).is_ok()).unwrap();
    let stitches = hat.stitches().get();
    let width = Some(Length::from_cm(f64::from(stitches) * hat.gauge.stitch.cm() / 2.0 * 0.88));
    let on = replan(&spec, &hat, &Progress { rounds, stitches, width, height: None }).unwrap();
    let next = on.hat.rounds[rounds as usize];
    assert!(next.increases.get() > 0 && next.before == stitches, "{next:?}");
    assert!(on.reach > hat.head.girth && on.girth_off.cm().abs() < 1.5 * hat.gauge.stitch.cm() + 0.5, "{on:?}");
}

/// 54 on the hook instead of 56 would be too tight all around: the next round makes 56 of them again. Where 54 still reach, the crown
/// closes from there.
#[test]
fn a_lost_stitch_is_worked_on_from() {
    let spec = HatSpec::default();
    let hat = plan(&spec).unwrap();
    let rounds = hat.first_decrease().unwrap() - 1;
    let on = replan(&spec, &hat, &Progress { rounds, stitches: 54, width: None, height: None }).unwrap();
    let next = on.hat.rounds[rounds as usize];
    assert_eq!((next.before, next.after.get(), next.increases.get()), (54, 56, 2));
    let spec = HatSpec { body_stretch: Stretch::Measured(crate::Ratio::of(1.15)), ..spec };
    let hat = plan(&spec).unwrap();
    let on = replan(&spec, &hat, &Progress { rounds, stitches: 54, width: None, height: None }).unwrap();
    assert_eq!(on.hat.rounds[rounds as usize].before, 54);
    assert!(on.hat.rounds[rounds as usize..].iter().all(|r| r.after.get() <= 54));
    assert!((6..=12).contains(&on.hat.top.unwrap().stitches.get()));
    assert_eq!(on.from, rounds + 1);
}

#[test]
fn what_cannot_be_measured_here_is_said() {
    let spec = HatSpec::default();
    let hat = plan(&spec).unwrap();
    let progress = |rounds| Progress { rounds, stitches: 40, width: Some(Length::from_cm(20.0)), height: None };
    assert_eq!(replan(&spec, &hat, &progress(1)), Err(NoWayOn::NotHere(NotHere::NearBand(hat.depth.straight.get() - 1))));
    assert_eq!(replan(&spec, &hat, &progress(hat.first_decrease().unwrap() + 1)), Err(NoWayOn::NotHere(NotHere::Shaping)));
    assert_eq!(replan(&spec, &hat, &progress(hat.rounds.len() as u32)), Err(NoWayOn::Done));
    assert_eq!(replan(&spec, &hat, &progress(0)), Err(NoWayOn::NotBegun));
    assert_eq!(replan(&spec, &hat, &progress(4_000)), Err(NoWayOn::NotBegun));
}

/// "56 of them 22.0 cm across": see `real_gauge`.
#[test]
fn swatch_and_piece_are_weighed_by_how_sure_they_are() {
    let spec = HatSpec::default();
    let hat = plan(&spec).unwrap();
    let cells = Cells::of(&spec);
    let progress = Progress { rounds: 6, stitches: 56, width: Some(Length::from_cm(22.0)), height: None };
    let (w, h) = real_gauge(&spec, &hat, &cells, &progress);
    assert!((w - 0.789).abs() < 0.0005, "{w}");
    assert_eq!(h.to_bits(), cells.h.to_bits());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]
    /// Any progress and any measurement gives a hat that goes on from there, or a reason.
    #[test]
    fn no_measurement_is_too_strange(
        style in 0..6_usize, crown in any::<bool>(), band in 0..3_usize, wedges in any::<bool>(),
        done in 0.0..1.0_f64, lost in -4..5_i32, width in proptest::option::of(0.4..2.0_f64), height in proptest::option::of(0.3..2.5_f64),
    ) {
        let band = [BandKind::Sideways, BandKind::Around, BandKind::None][band];
        let spec = spec(STYLES[style], if crown { Begun::Crown } else { Begun::Band }, band, wedges);
        let hat = plan(&spec).unwrap();
        let rounds = 1 + (done * (hat.rounds.len() - 1) as f64) as u32;
        let planned = hat.rounds[rounds as usize - 1].after.get();
        let stitches = planned.saturating_add_signed(lost).max(1);
        let width = width.filter(|_| measurable(&hat, rounds).is_ok())
            .map(|share| Length::from_cm(f64::from(planned) * hat.gauge.stitch.cm() / 2.0 * share));
        let height = height.map(|share| Length::from_cm(f64::from(rounds) * hat.gauge.round.cm() * share));
        match replan(&spec, &hat, &Progress { rounds, stitches, width, height }) {
            Ok(on) => {
                prop_assert_eq!(worked(&on.hat, rounds - 1), worked(&hat, rounds - 1));
                prop_assert_eq!(on.hat.rounds[rounds as usize - 1].after.get(), stitches);
                prop_assert!(on.hat.rounds.len() > rounds as usize || on.hat.top.is_some());
                let again = plan(&on.spec);
                prop_assert_eq!(again.as_ref(), Ok(&on.hat));
            }
            Err(NoWayOn::Undo(undo)) => prop_assert!(undo.rounds >= 1 && undo.rounds <= rounds),
            Err(NoWayOn::Refused(_) | NoWayOn::Done) => {}
            Err(no) => prop_assert!(false, "{:?}", no),
        }
    }
}
