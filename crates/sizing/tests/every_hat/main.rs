//! Every hat that can be asked for: it is planned or refused, and what is planned can be made.

mod geometry;
mod points;
mod specs;
mod worked;
mod yarn;

use hatwright_sizing::{Begun, Closing, Fabric, HatSpec, Refusal, Style, plan};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use std::time::{Duration, Instant};

/// Cases of a property: more with `PROPTEST_CASES`.
pub fn cases(usual: u32) -> ProptestConfig {
    let many = std::env::var("PROPTEST_CASES").ok().and_then(|n| n.parse().ok()).unwrap_or(usual);
    ProptestConfig {
        failure_persistence: None,
        max_global_rejects: 1_000_000,
        max_shrink_time: 10_000,
        ..ProptestConfig::with_cases(many)
    }
}

proptest! {
    #![proptest_config(cases(1500))]

    #[test]
    fn every_spec_is_planned_or_refused_in_time(specs::Asked(spec) in specs::any_spec()) {
        let before = Instant::now();
        let planned = plan(&spec);
        let took = before.elapsed();
        prop_assert!(took < Duration::from_secs(4), "{took:?}");
        match planned {
            Ok(hat) => worked::can_be_made(&spec, &hat).map_err(TestCaseError::fail)?,
            Err(Refusal::Breach(breach)) => prop_assert!(matches!(breach, hatwright_sizing::Breach::OutOfRange(..)), "{breach:?}"),
            Err(_) => {}
        }
    }
}

proptest! {
    #![proptest_config(cases(600))]

    /// The same hat begun at either end is the same hat: half a round or one stitch, each way.
    #[test]
    fn both_ends_make_the_same_hat(specs::Asked(spec) in specs::sane_spec()) {
        // A tip of more stitches than a strand draws up is gathered, or begun as a small disc: those are not alike.
        prop_assume!(geometry::in_rounds(&spec) && (spec.style != Style::Stocking || spec.shape.tail_stitches.get() <= 12));
        let begun = |begun| HatSpec { begun, closing: Closing::Drawn, ..spec.clone() };
        let (Ok(up), Ok(down)) = (plan(&begun(Begun::Band)), plan(&begun(Begun::Crown))) else { return Ok(()) };
        // Many wedges may go together at one end and not begin at the other.
        prop_assume!(up.lays(&spec) == down.lays(&spec));
        prop_assert_eq!((up.size.rows, up.size.stitches), (down.size.rows, down.size.stitches));
        prop_assert_eq!((up.depth.wanted, up.depth.band), (down.depth.wanted, down.depth.band));
        let (a, b) = (geometry::measured(&begun(Begun::Band), &up), geometry::measured(&begun(Begun::Crown), &down));
        let (w, h) = geometry::cells(&spec);
        let counts = |hat: &hatwright_sizing::Hat| hat.rounds.iter().map(|round| round.after.get()).collect::<Vec<_>>();
        prop_assert!((a.arc - b.arc).abs() <= (2.0 * h).max(w), "{a:?} {b:?} {:?} {:?}", counts(&up), counts(&down));
        let even = (a.arc - b.arc) * f64::from(up.stitches().get()) * w;
        let allowed = 2.0 * geometry::allowed(&spec, &up, a);
        prop_assert!((a.area - b.area - even).abs() <= allowed * 1.25, "{a:?} {b:?} {even} {allowed} {:?} {:?}", counts(&up), counts(&down));
    }

    #[test]
    fn a_panel_has_the_area_of_its_target(specs::Asked(spec) in specs::sane_spec()) {
        let spec = HatSpec { style: Style::Sideways, fabric: Fabric::SingleBack, ..spec };
        let Ok(hat) = plan(&spec) else { return Ok(()) };
        let (measured, wanted) = geometry::sideways(&spec, &hat);
        let (w, h) = geometry::cells(&spec);
        let rows = f64::from(hat.size.rows.get());
        let allowed = (0.02 * wanted).max(rows * h * w).max(2.0 * h * hat.depth.above_band.cm());
        prop_assert!((measured - wanted).abs() <= allowed, "{measured} {wanted} {allowed} {:?}", hat.panel);
    }
}

/// Area and arc of the fabric, measured again from the counts, are those of the style's target: to 2 %, or to half a round or one stitch
/// where that is more. A few hats of few thick rounds, or where a flat disc would ruffle, come no nearer than a quarter more than that.
#[test]
fn a_hat_has_the_area_and_the_arc_of_its_target() {
    let mut runner = TestRunner::deterministic();
    let (mut made, mut beyond) = (0, Vec::new());
    while made < 1500 {
        let specs::Asked(spec) = specs::sane_spec().new_tree(&mut runner).unwrap().current();
        let Some(hat) = Some(&spec).filter(|spec| geometry::in_rounds(spec)).and_then(|spec| plan(spec).ok()) else { continue };
        let measured = geometry::measured(&spec, &hat);
        let target = geometry::target(&spec, &hat, measured.arc);
        let arc = (measured.arc - target.arc).abs() / geometry::arc_allowed(&spec, target);
        let area = (measured.area - target.area).abs() / geometry::allowed(&spec, &hat, target);
        made += 1;
        if arc.max(area) > 1.0 {
            let counts: Vec<u32> = hat.rounds.iter().map(|round| round.after.get()).collect();
            beyond.push((
                arc.max(area),
                format!(
                    "{arc:.2} {area:.2} {:?} {:?} {:?} {measured:?} {target:?} {counts:?}",
                    spec.style, spec.begun, spec.taste
                ),
            ));
        }
    }
    beyond.sort_by(|a, b| b.0.total_cmp(&a.0));
    let shown: Vec<&String> = beyond.iter().map(|(_, text)| text).take(5).collect();
    assert!(beyond.len() * 50 <= made && beyond.iter().all(|(by, _)| *by <= 2.0), "{} of {made}: {shown:#?}", beyond.len());
}
