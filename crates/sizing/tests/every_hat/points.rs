//! Single hats whose numbers can be worked out by hand.

use core::f64::consts::TAU;
use hatwright_sizing::{
    BandKind, Begun, Chosen, Colour, Count, Coverage, Hat, HatSpec, Head, Kept, Length, Quantity, Ratio, Refusal, Remark,
    RoundKind, Rounds, Rows, SideTop, Stitches, Style, Swatch, Topper, TopperKind, Zone, plan,
};

fn spec(style: Style, begun: Begun) -> HatSpec {
    let mut spec = HatSpec { head: Head::Measured(Length::from_cm(56.0)), style, begun, ..HatSpec::default() };
    spec.band.fold = Length::ZERO;
    spec
}

fn at_gauge(mut spec: HatSpec, across: i32, up: i32) -> HatSpec {
    let cm = Length::from_cm(10.0);
    spec.swatch = Swatch::Counted { stitches: Count::whole(across), width: cm, rounds: Count::whole(up), height: cm };
    spec
}

fn zone(hat: &Hat, zone: Zone) -> Vec<u32> {
    hat.rounds.iter().filter(|round| round.zone == zone).map(|round| round.after.get()).collect()
}

/// Geometry and practice: a flat brim at 14 × 16 to 10 cm grows from 78 stitches in 10 rounds by 10 · 2π · 14/16 = 55.
#[test]
fn a_flat_brim_grows_by_the_flat_rate() {
    for begun in [Begun::Band, Begun::Crown] {
        let mut spec = at_gauge(spec(Style::Brimmed, begun), 14, 16);
        spec.chosen = Some(Chosen { rows: Rows::new(0), stitches: Stitches::new(78) });
        spec.shape.brim = Length::from_cm(6.25);
        let hat = plan(&spec).unwrap();
        let brim = zone(&hat, Zone::Brim);
        assert_eq!((hat.stitches().get(), brim.len()), (78, 10), "{begun:?}");
        assert!(brim[9].abs_diff(133) <= 2, "{begun:?} {brim:?}");
        // A constant number a round, to a stitch: not a share of what there is.
        let grown: Vec<u32> =
            hat.rounds.iter().filter(|r| r.increases.get() > 0 && r.zone == Zone::Brim).map(|r| r.increases.get()).collect();
        assert!(grown.iter().max().unwrap() - grown.iter().min().unwrap() <= 2, "{begun:?} {grown:?}");
        spec.shape.flare = Ratio::of(0.5);
        let half = zone(&plan(&spec).unwrap(), Zone::Brim);
        assert!(half[9].abs_diff(78 + 55 / 2) <= 2, "{half:?}");
    }
}

/// Geometry: a flat disc grows by 2π·h/w a round, and its underside shrinks by as much.
#[test]
fn a_tam_is_flat_on_both_sides() {
    for begun in [Begun::Band, Begun::Crown] {
        for (across, up) in [(14, 16), (13, 10), (13, 7)] {
            let spec = at_gauge(
                HatSpec {
                    shape: hatwright_sizing::Shape { tam_across: Length::from_cm(27.0), ..HatSpec::default().shape },
                    ..spec(Style::Tam, begun)
                },
                across,
                up,
            );
            let hat = plan(&spec).unwrap();
            let rate = TAU * f64::from(across) / f64::from(up);
            for (part, counts) in [("disc", zone(&hat, Zone::Crown)), ("underside", zone(&hat, Zone::Under))] {
                let straight = counts.iter().filter(|n| **n == hat.stitches().get()).count().saturating_sub(1);
                let (least, most) = (*counts.iter().min().unwrap(), *counts.iter().max().unwrap());
                let grown = f64::from(most - least) / (counts.len() - 1 - straight) as f64;
                // Whole rounds: half a round more or less in so many.
                let rounding = (rate * 0.5 / (counts.len() - 1 - straight) as f64).max(0.5) + 0.1;
                assert!((grown - rate).abs() <= rounding, "{begun:?} {part} {across} × {up}: {grown}, not {rate}: {counts:?}");
            }
        }
    }
}

#[test]
fn a_tail_may_be_as_long_as_anyone_likes() {
    for begun in [Begun::Band, Begun::Crown] {
        let mut spec = at_gauge(spec(Style::Stocking, begun), 32, 38);
        spec.shape.tail = Length::from_cm(2_000.0);
        spec.shape.tail_stitches = Stitches::new(10);
        let hat = plan(&spec).unwrap();
        let tail = zone(&hat, Zone::Tail);
        assert!(tail.len() > 7_000 && tail.iter().all(|n| *n == 10), "{begun:?} {}", tail.len());
        assert!((hat.depth.promised.cm() - hat.depth.wanted.cm()).abs() <= hat.gauge.round.cm());
        // The rest of it narrows by a stitch at a time, from the tube to the tail.
        assert!(
            hat.rounds.iter().filter(|r| r.zone == Zone::Crown && r.before > 0).all(|r| r.before.abs_diff(r.after.get()) <= 4)
        );
        assert!(Kept::of(&hat).rounds.len() < 600);
    }
}

#[test]
fn a_slouch_widens_once_and_is_longer() {
    let fitted = plan(&spec(Style::Fitted, Begun::Band)).unwrap();
    for begun in [Begun::Band, Begun::Crown] {
        let hat = plan(&spec(Style::Slouch, begun)).unwrap();
        let kind = if begun == Begun::Band { RoundKind::Increase } else { RoundKind::Decrease };
        let once: Vec<_> = hat
            .rounds
            .iter()
            .filter(|r| r.zone == Zone::Body && r.before != r.after.get() && r.kind != RoundKind::PickUp)
            .collect();
        assert!(once.len() == 1 && once[0].kind == kind, "{begun:?} {once:?}");
        let wide = f64::from(once[0].before.max(once[0].after.get())) / f64::from(hat.stitches().get());
        assert!((wide - 1.15).abs() < 0.03, "{wide}");
        assert_eq!(hat.depth.wanted.ticks() - fitted.depth.wanted.ticks(), 5_000);
    }
}

/// Practice: a fifth of the edge for each flap, a sixth between them at the back; the gaps are whole stitches.
#[test]
fn flaps_divide_the_edge() {
    let mut spec = spec(Style::EarFlap, Begun::Crown);
    spec.band.kind = BandKind::None;
    spec.head = Head::Measured(Length::from_cm(54.0));
    spec.chosen = Some(Chosen { rows: Rows::new(0), stitches: Stitches::new(60) });
    spec.shape.flap_tie = Length::from_cm(25.0);
    // A head of 54 cm is no small child's, and ties are no matter.
    let hat = plan(&spec).unwrap();
    let flaps = hat.flaps.clone().unwrap();
    let counts: Vec<u32> = flaps.rows.iter().map(|row| row.after.get()).collect();
    assert_eq!((flaps.rows[0].before, flaps.back.get(), flaps.front.get(), flaps.tie_chains.get()), (12, 10, 26, 30));
    assert_eq!(counts, [12, 12, 12, 12, 12, 10, 10, 8, 8, 6, 6, 4]);
    assert!(!hat.remarks.contains(&Remark::LongParts));
    spec.head = Head::Measured(Length::from_cm(48.0));
    spec.chosen = None;
    assert!(plan(&spec).unwrap().remarks.contains(&Remark::LongParts));
}

/// A tassel of 15 cm or more is a string as well; a pom-pom never is, and on a tail a short tassel counts with it.
#[test]
fn a_long_tassel_is_a_long_part() {
    let hangs = |style, kind, cm: f64, tail: f64| {
        let topper = Some(Topper::usual(kind).sized(Length::from_cm(cm)));
        let mut spec = HatSpec { head: Head::Measured(Length::from_cm(48.0)), topper, ..spec(style, Begun::Band) };
        spec.shape.tail = Length::from_cm(tail);
        plan(&spec).unwrap().remarks.contains(&Remark::LongParts)
    };
    let fitted = |kind, cm| hangs(Style::Fitted, kind, cm, 30.0);
    assert_eq!([10.0, 14.5, 15.0, 40.0].map(|cm| fitted(TopperKind::Tassel, cm)), [false, false, true, true]);
    assert!(!fitted(TopperKind::PomPom, 20.0));
    assert_eq!([TopperKind::PomPom, TopperKind::Tassel].map(|kind| hangs(Style::Stocking, kind, 10.0, 8.0)), [false, true]);
}

#[test]
fn stripes_run_in_working_order() {
    let mut spec = spec(Style::Fitted, Begun::Crown);
    spec.band.kind = BandKind::Around;
    spec.band.rounds = Rounds::new(5);
    let hat = plan(&spec).unwrap();
    let colour = |i: usize| hat.rounds[i].colour;
    // Six and two of the body from the ring on; two and two of the band after it.
    assert!((0..8).all(|i| colour(i) == Colour(u8::from(i >= 6))));
    let band: Vec<u8> = hat.rounds.iter().filter(|r| r.zone == Zone::Band).map(|r| r.colour.0).collect();
    assert_eq!(band, [0, 0, 1, 1, 0]);
}

/// Half of what was measured over the top takes the place of 0.308 of the girth; other coverages keep their difference from it.
#[test]
fn the_way_over_the_top_replaces_its_ratio() {
    let with = |over: Option<f64>, coverage, lining| {
        let spec = HatSpec {
            over_top: over.map(Length::from_cm),
            coverage,
            lining: Length::from_cm(lining),
            ..spec(Style::Fitted, Begun::Band)
        };
        plan(&spec).unwrap()
    };
    let wanted = |over, coverage| with(over, coverage, 0.0).depth.wanted.cm();
    assert!((wanted(Some(36.0), Coverage::EarCanals) - 18.0).abs() < 0.001);
    let apart = wanted(None, Coverage::OverEars) - wanted(None, Coverage::EarCanals);
    assert!((wanted(Some(36.0), Coverage::OverEars) - 18.0 - apart).abs() < 0.002);
    // A lining of 5 mm is 3.1 cm around.
    let (bare, lined) = (with(None, Coverage::OverEars, 0.0), with(None, Coverage::OverEars, 0.5));
    assert!((lined.wanted_girth.cm() - bare.wanted_girth.cm() - TAU * 0.5 * 0.93).abs() < 0.002);
    assert_eq!(lined.head.girth, bare.head.girth);
    assert!(lined.fit.most.cm() + TAU * 0.5 - lined.size.reach.cm() < 0.002);
}

#[test]
fn a_hat_worked_sideways_has_rows_for_its_depth_and_its_girth() {
    let mut spec = spec(Style::Sideways, Begun::Band);
    spec.band.fold = Length::from_cm(4.0);
    let gathered = plan(&spec).unwrap();
    let panel = gathered.panel.clone().unwrap();
    assert!(panel.rows.iter().all(|row| row.stitches == panel.stitches) && gathered.rounds.is_empty());
    spec.shape.side_top = SideTop::ShortRows;
    let hat = plan(&spec).unwrap();
    let short = hat.panel.clone().unwrap();
    assert!(short.rows.len() as u32 / short.wedge.get() >= 4 && (short.rows.len() as u32).is_multiple_of(short.wedge.get()));
    assert!(hat.top.unwrap().stitches < gathered.top.unwrap().stitches);
    assert!(short.rows.iter().any(|row| row.stitches < short.stitches));
}

#[test]
fn a_refusal_names_what_works() {
    let mut tam = spec(Style::Tam, Begun::Band);
    tam.shape.tam_across = Length::from_cm(14.0);
    let Err(Refusal::TamTooSmall { least, .. }) = plan(&tam) else { panic!("{:?}", plan(&tam)) };
    tam.shape.tam_across = Length::from_ticks(least.ticks() - 100);
    assert!(matches!(plan(&tam), Err(Refusal::TamTooSmall { .. })));
    tam.shape.tam_across = least;
    assert!(plan(&tam).is_ok());

    let mut flaps = spec(Style::EarFlap, Begun::Crown);
    (flaps.band.kind, flaps.band.rounds) = (BandKind::Around, Rounds::new(40));
    let Err(refusal @ Refusal::BandTooTall { tallest: Some(tallest), .. }) = plan(&flaps) else { panic!("{:?}", plan(&flaps)) };
    assert_eq!(refusal.field(), Quantity::BandRounds);
    flaps.band.rounds = Rounds::new(tallest.get() + 1);
    assert!(plan(&flaps).is_err());
    flaps.band.rounds = Rounds::new(tallest.get());
    assert!(plan(&flaps).is_ok());
}

#[test]
fn kept_rounds_of_another_hat_are_dropped() {
    let kept = |style, begun| Some(Kept::of(&plan(&spec(style, begun)).unwrap()));
    for (style, begun, of, from) in [
        (Style::Fitted, Begun::Crown, Style::Fitted, Begun::Band),
        (Style::Tam, Begun::Band, Style::Slouch, Begun::Crown),
        (Style::Fitted, Begun::Band, Style::Slouch, Begun::Band),
        (Style::EarWarmer, Begun::Band, Style::Fitted, Begun::Band),
        (Style::Brimmed, Begun::Band, Style::Fitted, Begun::Band),
    ] {
        let asked = HatSpec { kept: kept(of, from), ..spec(style, begun) };
        let hat = plan(&asked).unwrap();
        assert!(hat.remarks.contains(&Remark::KeptDropped), "{style:?} {begun:?} from {of:?} {from:?}");
        assert_eq!(hat.rounds, plan(&spec(style, begun)).unwrap().rounds);
    }
}
