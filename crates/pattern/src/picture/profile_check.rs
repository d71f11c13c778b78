//! Outlines against the hats that they are made from.

use super::super::sample::{self, Sample};
use super::*;
use hatwright_sizing::{Begun, HatSpec, SideTop, plan};

#[test]
fn a_fitted_crown_is_as_round_as_the_head() {
    for gauge in [(12.0, 15.0), (20.0, 24.0), (27.0, 31.0)] {
        let profile = Profile::of(&Sample { gauge, ..Sample::CAP }.hat());
        let radius = 49.8 / (2.0 * PI);
        let centre = profile.top() - radius;
        for edge in profile.edges.iter().filter(|e| e.height > centre) {
            let far = libm::hypot(edge.radius, edge.height - centre);
            assert!((far / radius - 1.0).abs() < 0.06, "{gauge:?}: {edge:?} lies {far} from the centre, not {radius}");
        }
    }
}

#[test]
fn the_outline_closes_and_only_what_hangs_goes_down() {
    for (name, _, hat) in sample::all() {
        let profile = Profile::of(&hat);
        if profile.edges.is_empty() {
            assert_eq!(hat.style, Style::EarWarmer, "{name}");
            continue;
        }
        let falls = matches!(hat.style, Style::Stocking | Style::Slouch);
        assert!(falls || profile.edges.windows(2).all(|e| e[1].height >= e[0].height - 1e-9), "{name}");
        let closed = profile.edges.last().is_some_and(|e| e.radius.abs() < 1e-9);
        assert_eq!(closed, hat.top.is_some(), "{name}");
        assert!(profile.edges.len() > profile.strips.len(), "{name}");
        assert!(profile.parts.iter().all(|p| p.start < p.end && p.end < profile.edges.len()), "{name}: {:?}", profile.parts);
    }
}

/// Along the fabric between two edges.
fn along(profile: &Profile, from: usize, to: usize) -> f64 {
    let step = |e: &[Edge]| {
        let axis = libm::hypot(e[1].height - e[0].height, e[1].x - e[0].x);
        libm::hypot(e[1].radius - e[0].radius, axis)
    };
    profile.edges[from..=to].windows(2).map(step).sum()
}

#[test]
fn fabric_is_never_longer_than_it_was_made() {
    for (name, _, hat) in sample::all() {
        let profile = Profile::of(&hat);
        let last = profile.edges.len().saturating_sub(1);
        if last == 0 {
            continue;
        }
        let made: f64 = profile.strips.iter().filter(|s| !s.gap).map(|s| s.high).sum();
        let closing = hat.top.map_or(0.0, |t| t.opening.cm() / 2.0);
        let gap = profile.strips.iter().position(|s| s.gap).map_or(0.0, |i| along(&profile, i, i + 1));
        let long = along(&profile, 0, last) - gap;
        assert!(long < (made + closing) * 1.12 + 0.2, "{name}: {long} of {made} cm");
        // The fabric of a gathered top lies in pleats.
        assert!(is_gathered(&hat) || long > (made + closing) * 0.8 - 0.5, "{name}: {long} of {made} cm");
    }
}

#[test]
fn a_hat_is_as_wide_at_the_edge_as_the_head_stretches_it() {
    for (name, _, hat) in sample::planned() {
        let profile = Profile::of(&hat);
        let wanted = hat.size.band_girth.max(hat.head.girth).cm() / (2.0 * PI);
        assert!((profile.band / wanted - 1.0).abs() < 0.03, "{name}: {} for {wanted}", profile.band);
    }
}

#[test]
fn a_tam_a_brim_and_a_slouch_are_as_wide_as_they_are_made() {
    for (name, spec, hat) in sample::planned() {
        let profile = Profile::of(&hat);
        let widest = profile.edges.iter().map(|e| e.radius).fold(0.0, f64::max);
        let head = hat.head.girth.cm() / (2.0 * PI);
        match hat.style {
            Style::Tam => {
                let across = spec.shape.tam_across.cm();
                assert!(2.0 * widest > across * 0.86 && 2.0 * widest < across * 1.03, "{name}: {} for {across}", 2.0 * widest);
            }
            Style::Brimmed => {
                let brim = spec.shape.brim.cm() * spec.shape.flare.value();
                let out = widest - profile.edges[profile.sits].radius;
                assert!((out - brim).abs() < 0.12 * brim + hat.gauge.round.cm() * 0.5, "{name}: {out} for {brim}");
            }
            Style::Slouch => {
                let body = hat.rounds.iter().map(|r| r.after.get()).max().map_or(0.0, f64::from) * hat.gauge.stitch.cm();
                let wanted = (body / (2.0 * PI)).max(head);
                assert!((widest / wanted - 1.0).abs() < 0.07, "{name}: {widest} for {wanted}");
            }
            _ => {}
        }
    }
}

#[test]
fn a_hat_is_as_high_as_its_rounds_make_it() {
    for (name, _, hat) in sample::planned() {
        let profile = Profile::of(&hat);
        if !matches!(hat.style, Style::Fitted | Style::EarFlap) {
            continue;
        }
        // A hemisphere of the head's girth over a tube: as high as the depth less what the quarter arc loses.
        let (c, depth) = (hat.head.girth.cm(), hat.depth.promised.cm());
        if depth > 0.3 * c {
            let wanted = depth - c / 4.0 + c / (2.0 * PI);
            assert!((profile.top() - wanted).abs() < 0.06 * c, "{name}: {} for {wanted}", profile.top());
        }
    }
}

#[test]
fn begun_at_either_end_a_hat_looks_the_same() {
    for style in [Style::Fitted, Style::Slouch, Style::Tam, Style::Brimmed] {
        let hat = |begun| plan(&HatSpec { style, begun, ..HatSpec::default() }).unwrap_or_else(|e| panic!("{style:?}: {e:?}"));
        let (up, down) = (Profile::of(&hat(Begun::Band)), Profile::of(&hat(Begun::Crown)));
        assert!((up.top() - down.top()).abs() < 0.05 * up.head, "{style:?}: {} and {}", up.top(), down.top());
        let wide = |p: &Profile| p.edges.iter().map(|e| e.radius).fold(0.0, f64::max);
        assert!((wide(&up) / wide(&down) - 1.0).abs() < 0.03, "{style:?}: {} and {}", wide(&up), wide(&down));
    }
}

#[test]
fn a_long_tail_hangs_no_lower_than_the_head_and_keeps_its_tip() {
    let (_, hat) = sample::tail_of(4_000);
    let profile = Profile::of(&hat);
    assert!(profile.left_out > 1_000.0, "{} cm", profile.left_out);
    assert!(profile.strips.len() < 200 && profile.edges.len() > profile.strips.len(), "{}", profile.strips.len());
    assert!(profile.tip().height > profile.vertex - 0.6 * profile.head && profile.tip().height < 0.0);
    assert!((profile.tip().tilt - PI).abs() < 0.05, "{}", profile.tip().tilt);
}

#[test]
fn short_rows_narrow_the_crown_before_it_is_gathered() {
    let spec = |top| {
        let spec = HatSpec { style: Style::Sideways, ..HatSpec::default() };
        HatSpec { shape: hatwright_sizing::Shape { side_top: top, ..spec.shape }, ..spec }
    };
    let narrow = |top| {
        let hat = plan(&spec(top)).unwrap_or_else(|e| panic!("{e:?}"));
        let strips = strips(&hat);
        strips.last().map_or(1.0, |s| s.inner) / strips[0].outer
    };
    assert!((narrow(SideTop::Gathered) - 1.0).abs() < 1e-9);
    assert!(narrow(SideTop::ShortRows) < 0.6);
}
