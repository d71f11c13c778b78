use super::*;
use crate::{BandSwatch, Count, Fabric, Rounds, RowStripe};

fn hat(style: Style, kind: BandKind) -> HatSpec {
    let mut spec = HatSpec { style, ..HatSpec::default() };
    (spec.band.kind, spec.band.fabric) = (kind, Fabric::usual_for(kind));
    spec
}

fn rules(spec: &HatSpec) -> Rules {
    Rules::of(spec, &Cells::of(spec), 50.0, 46.5)
}

fn own_band(spec: &mut HatSpec, rows: i32) {
    let (stitches, ten) = (Count::whole(12), Length::from_cm(10.0));
    spec.band.swatch = Some(BandSwatch { stitches, width: ten, rows: Count::from_ticks(rows), length: ten });
}

fn chosen(rules: &Rules) -> Size {
    rules.choose(None).unwrap().0
}

/// Every pair (style, band) has counts, in what it counts, and neighbours by the same rules.
#[test]
fn every_hat_is_counted_in_what_it_has() {
    for style in Style::ALL {
        for kind in [BandKind::Sideways, BandKind::Around, BandKind::None] {
            let mut spec = hat(style, kind);
            if style == Style::Sideways {
                spec.fabric = Fabric::SingleBack;
            }
            let rules = rules(&spec);
            let size = chosen(&rules);
            let (rows, stitches) = (size.rows.get(), size.stitches.get());
            let at = || format!("{style:?} {kind:?} {size:?}");
            match rules.counted {
                Counted::Pair => assert!(rows > 0 && rows.is_multiple_of(4), "{}", at()),
                Counted::Rows => assert!(rows == stitches && rows.is_multiple_of(2) && size.girth == size.band_girth, "{}", at()),
                Counted::Stitches => assert_eq!(rows, 0, "{}", at()),
            }
            assert!(size.reaches && size.girth.cm() <= 51.0 && size.reach.cm() >= 50.0, "{}", at());
            let all = rules.neighbours(&size);
            assert!(!all.is_empty() && all.len() <= 4 && all.is_sorted_by(|a, b| a.stitches < b.stitches), "{}", at());
            for other in all {
                assert!(rules.count(&other).is_multiple_of(rules.repeat) && other != size, "{}", at());
                // Taken by hand, a neighbour holds or is dropped with a reason.
                let by_hand = Chosen { rows: other.rows, stitches: other.stitches };
                let (taken, dropped) = rules.choose(Some(by_hand)).unwrap();
                assert_eq!(taken == other, dropped.is_none(), "{}", at());
                assert_eq!(
                    other.reaches && rules.looser_by(&other, Quantity::LoosestByHand) <= 0.0,
                    dropped.is_none(),
                    "{}",
                    at()
                );
            }
        }
    }
}

#[test]
fn a_post_rib_comes_in_pairs_and_plain_rounds_close_on_any_count() {
    let mut spec = hat(Style::Fitted, BandKind::Around);
    spec.layout = Layout::Spread;
    let post = rules(&spec);
    assert_eq!((post.repeat, chosen(&post).stitches), (2, Stitches::new(56)));
    let odd = Chosen { rows: Rows::new(0), stitches: Stitches::new(57) };
    assert_eq!(post.choose(Some(odd)).unwrap().1, Some((odd, Unsuited::Repeat(Rows::new(2)))));
    spec.band.fabric = Fabric::SingleBack;
    let plain = rules(&spec);
    assert_eq!(plain.repeat, 1);
    let (size, dropped) = plain.choose(Some(odd)).unwrap();
    assert_eq!((size.stitches.get(), size.rows.get(), dropped), (57, 0, None));
    // 46.5 cm are 55.8 stitches of 0.833 cm; 45.5 cm are 54.6, and 55 is odd.
    let moved = |wanted| {
        let rules = Rules { wanted, ..post };
        rules.moved(&chosen(&rules))
    };
    assert_eq!(moved(46.5), []);
    assert_eq!(moved(45.5), [Remark::StripesMoved { nearest: Stitches::new(55), repeat: Rows::new(2) }]);
}

/// Practice, no source: single 1 a row, half double 3 in 2 rows, double 2 a row.
#[test]
fn the_usual_pick_up_goes_with_the_fabric() {
    for (fabric, picked, rows) in
        [(Fabric::SingleBack, 1, 1), (Fabric::HalfDoubleBack, 3, 2), (Fabric::DoubleBack, 2, 1), (Fabric::SlipRib, 1, 2)]
    {
        let mut spec = hat(Style::Fitted, BandKind::Sideways);
        spec.band.fabric = fabric;
        let size = chosen(&rules(&spec));
        assert_eq!(size.pick_up(), (picked, rows), "{fabric:?}");
        assert!(size.girth.ticks().abs_diff(size.band_girth.ticks()) <= 1, "{fabric:?}");
    }
}

#[test]
fn a_hat_worked_sideways_closes_its_stripes_by_rows() {
    let mut spec = hat(Style::Sideways, BandKind::None);
    spec.fabric = Fabric::SlipRib;
    for (stripes, repeat) in [([2, 2], 4), ([3, 2], 10), ([1, 1], 2)] {
        for (stripe, rounds) in spec.body_stripes.iter_mut().zip(stripes) {
            stripe.rounds = Rounds::new(rounds);
        }
        assert_eq!(closing_repeat(&spec), repeat);
        assert!(chosen(&rules(&spec)).rows.get().is_multiple_of(repeat));
    }
    // Its rows lie along the girth: 15 to 10 cm.
    let size = chosen(&rules(&spec));
    assert_eq!(size.girth, Length::from_cm(f64::from(size.rows.get()) / 1.5));
    // What a band would have is no matter.
    spec.band.stripes =
        vec![RowStripe { colour: Colour(0), rows: Rows::new(7) }, RowStripe { colour: Colour(1), rows: Rows::new(6) }];
    assert_eq!(closing_repeat(&spec), 2);
}

/// An ear warmer has no body: however stiff that would be, the band reaches as far as it stretches.
#[test]
fn the_least_able_of_the_zones_that_exist_governs() {
    for kind in [BandKind::Sideways, BandKind::Around] {
        let mut spec = hat(Style::EarWarmer, kind);
        let reach = chosen(&rules(&spec)).reach;
        spec.body_stretch = crate::Stretch::Measured(Ratio::of(1.0));
        let size = chosen(&rules(&spec));
        assert_eq!(size.reach, reach, "{kind:?}");
        let stretch = Cells::of(&spec).band_stretch;
        assert!((size.reach.cm() - size.band_girth.cm() * stretch).abs() < 0.002, "{kind:?}");
    }
    let mut stiff = hat(Style::Fitted, BandKind::Around);
    stiff.band.stretch = crate::Stretch::Measured(Ratio::of(1.05));
    assert_eq!(chosen(&rules(&stiff)).reach, Length::from_cm(chosen(&rules(&stiff)).band_girth.cm() * 1.05));
}

/// The girth nearest to what was asked for, whatever it costs in wedges and in row ends to be remembered.
#[test]
fn the_nearest_taste_is_never_farther() {
    let mut nearer = 0;
    for rows in [9_00, 10_50, 13_70, 16_00, 21_30] {
        for layout in [Layout::Spread, Layout::Wedges(7), Layout::Wedges(9)] {
            for wanted in 0..40 {
                for kind in [BandKind::Sideways, BandKind::Around, BandKind::None] {
                    let mut spec = HatSpec { layout, ..hat(Style::Fitted, kind) };
                    own_band(&mut spec, rows);
                    let balanced = Rules { wanted: 46.0 + f64::from(wanted) / 10.0, ..rules(&spec) };
                    let nearest = Rules { taste: Taste::Nearest, ..balanced };
                    let miss = |rules: &Rules| rules.choose(None).ok().map(|(size, _)| (size.girth.cm() - rules.wanted).abs());
                    let (Some(usual), Some(least)) = (miss(&balanced), miss(&nearest)) else { continue };
                    assert!(least <= usual + 0.0011, "{rows} {layout:?} {wanted} {kind:?}: {least} {usual}");
                    nearer += u32::from(least < usual - 0.1);
                }
            }
        }
    }
    assert!(nearer > 20, "{nearer}");
}

/// The search that goes outward and stops finds what trying every size finds.
#[test]
fn the_search_misses_nothing() {
    for rows in [6_00, 9_40, 11_90, 14_00, 18_80, 25_00] {
        for layout in [Layout::Spread, Layout::Wedges(8)] {
            for taste in [Taste::Balanced, Taste::Nearest] {
                for fabric in [Fabric::SingleBack, Fabric::HalfDouble, Fabric::Double, Fabric::SlipRib] {
                    for wanted in 0..30 {
                        let mut spec = HatSpec { layout, taste, ..hat(Style::Fitted, BandKind::Sideways) };
                        spec.band.fabric = fabric;
                        own_band(&mut spec, rows);
                        let rules = Rules { wanted: 45.6 + f64::from(wanted) / 6.0, ..rules(&spec) };
                        let all = rules.sizes().filter(|s| s.reaches && rules.close_enough(s));
                        let best = all.min_by(|a, b| rules.cost(a).total_cmp(&rules.cost(b)));
                        assert_eq!(rules.nearest(), best, "{rows} {layout:?} {taste:?} {fabric:?} {wanted}");
                    }
                }
            }
        }
    }
}
