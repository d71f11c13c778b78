use super::*;
use crate::{BandSwatch, Chosen, Count, Head, Kept, RoundStripe, Rounds, RowStripe, Rows, Topper, TopperKind, band_height};
use crate::{Extra, Quantity as Q, Ratio};

/// The usual cap of a measured head, with so many hundredths of a ball of each colour.
fn owning(owned: [i32; 2]) -> HatSpec {
    let mut spec = HatSpec { head: Head::Measured(Length::from_cm(49.8)), ..HatSpec::default() };
    own(&mut spec, owned);
    spec
}

fn own(spec: &mut HatSpec, owned: [i32; 2]) {
    for (ball, owned) in spec.balls.iter_mut().zip(owned) {
        ball.owned = Count::from_ticks(owned);
    }
}

/// Counted again from the hat's own needs, in whole millimetres.
fn fits(spec: &HatSpec) -> Option<Hat> {
    let hat = plan(spec).ok()?;
    let has = |need: &crate::YarnNeed| {
        let ball = spec.balls[usize::from(need.colour.0)];
        need.length.millimetres() == 0
            || need.safe.millimetres() * 10 <= i64::from(ball.owned.ticks()) * i64::from(ball.yarn.ticks())
    };
    hat.yarn.iter().all(has).then_some(hat)
}

fn of(only: &Only, is: impl Fn(OfferKind) -> bool) -> Option<&Offer> {
    only.offers.iter().find(|offer| is(offer.kind))
}

/// Every style, either band, from nothing to plenty: what is offered fits, differs, and is what its spec plans.
#[test]
fn every_offer_fits_and_is_a_hat_of_its_own() {
    let (mut offers, mut dearest, mut kinds) = (0, 0, std::collections::BTreeSet::new());
    for style in Style::ALL {
        for kind in [BandKind::Sideways, BandKind::Around, BandKind::None] {
            for owned in [[0, 0], [20, 30], [60, 60], [100, 100], [130, 400], [400, 40], [900, 900]] {
                let mut spec = HatSpec { style, ..owning(owned) };
                spec.band.kind = kind;
                spec.topper = Some(Topper::usual(TopperKind::PomPom));
                let Ok(hat) = plan(&spec) else { continue };
                let (only, plans) = search(&spec, hat.clone());
                dearest = dearest.max(plans);
                assert_eq!(only, only_this_much(&spec));
                assert_eq!(only.enough, fits(&spec).is_some(), "{style:?} {kind:?} {owned:?}");
                assert_eq!(only.enough, only.short.is_empty());
                for (i, offer) in only.offers.iter().enumerate() {
                    assert_eq!(fits(&offer.spec).as_ref(), Some(&offer.hat), "{style:?} {kind:?} {owned:?} {:?}", offer.kind);
                    assert_eq!(offer.spec.check(), Ok(()));
                    assert_ne!(offer.hat.yarn_parts, hat.yarn_parts);
                    assert!(only.offers[..i].iter().all(|other| other.kind != offer.kind));
                    kinds.insert(format!("{:?}", core::mem::discriminant(&offer.kind)));
                    offers += 1;
                }
            }
        }
    }
    assert!(dearest <= 400 && offers > 150 && kinds.len() == 7, "{dearest} plans, {offers} offers, {kinds:?}");
}

#[test]
fn what_is_short_is_what_is_safe_less_what_is_owned() {
    let spec = owning([100, 25]);
    let (hat, only) = (plan(&spec).unwrap(), only_this_much(&spec));
    let lacks = |i: usize, owned: f64| YarnLength::from_metres(hat.yarn[i].safe.metres() - owned);
    assert_eq!(only.short, [(Colour(0), lacks(0, 80.0)), (Colour(1), lacks(1, 20.0))]);
    // Exactly what is safe is enough, a centimetre less is not.
    let mut exact = spec.clone();
    for (ball, need) in exact.balls.iter_mut().zip(&hat.yarn) {
        let centimetres = (need.safe.millimetres() + 9) / 10;
        (ball.yarn, ball.owned) = (Count::from_ticks(centimetres as i32), Count::whole(1));
    }
    assert!(only_this_much(&exact).enough);
    exact.balls[1].yarn = Count::from_ticks(exact.balls[1].yarn.ticks() - 1);
    assert_eq!(only_this_much(&exact).short.len(), 1);
}

#[test]
fn the_largest_head_is_the_largest_of_all_half_centimetres() {
    for (owned, style) in
        [([80, 80], Style::Fitted), ([200, 200], Style::Slouch), ([110, 300], Style::Tam), ([95, 70], Style::EarFlap)]
    {
        let mut spec = HatSpec { style, ..owning(owned) };
        (spec.shape.tam_across, spec.band.height) = (Length::from_cm(24.5), Stitches::new(6));
        spec.band.fold = Length::ZERO;
        let only = only_this_much(&spec);
        let head = |girth: Length| {
            let shape = spec.shape.followed(Length::from_cm(49.8), girth);
            HatSpec { head: Head::Measured(girth), shape, ..spec.clone() }
        };
        let mut halves = (44..=150).rev().map(|halves| Length::from_ticks(halves * 500));
        let most =
            halves.find(|girth| fits(&head(*girth)).is_some()).filter(|girth| (*girth > Length::from_cm(49.8)) == only.enough);
        let offered = of(&only, |kind| matches!(kind, OfferKind::LargestHead { .. }));
        assert_eq!(offered.map(|offer| offer.hat.head.girth), most, "{style:?}");
        assert!(most.is_some() && offered.is_some_and(|offer| offer.spec == head(most.unwrap())), "{style:?}");
    }
}

/// A way over the top that was measured goes with the head in proportion: 31.0 × 45/49.8 = 28.0; counts taken by hand do not.
#[test]
fn what_was_for_the_head_follows_it() {
    let mut spec = owning([80, 80]);
    let own = plan(&spec).unwrap();
    spec.over_top = Some(Length::from_cm(31.0));
    spec.chosen = Some(Chosen { rows: own.size.rows, stitches: own.size.stitches });
    let only = only_this_much(&spec);
    let smaller = of(&only, |kind| matches!(kind, OfferKind::LargestHead { .. })).unwrap();
    let (girth, over) = (smaller.hat.head.girth.cm(), smaller.spec.over_top.unwrap().cm());
    assert!(girth < 49.8 && (over - 31.0 * girth / 49.8).abs() <= 0.051, "{girth} {over}");
    assert_eq!(smaller.spec.chosen, None);
}

#[test]
fn the_longest_tail_is_the_longest() {
    for (owned, longer) in [([130, 130], false), ([300, 300], true), ([1_000, 1_000], true)] {
        let mut spec = HatSpec { style: Style::Stocking, topper: None, ..owning(owned) };
        spec.shape.tail = Length::from_cm(40.5);
        let only = only_this_much(&spec);
        let Some(OfferKind::LongestTail { tail }) =
            of(&only, |kind| matches!(kind, OfferKind::LongestTail { .. })).map(|offer| offer.kind)
        else {
            panic!("{owned:?}")
        };
        assert_eq!((tail > spec.shape.tail, tail.ticks() % 1000), (longer, 0), "{tail:?}");
        let most = if longer { tail.ticks() + 40_000 } else { 40_000 };
        let further = (tail.ticks() + 1000..=most).step_by(1000).map(|ticks| {
            let mut spec = spec.clone();
            spec.shape.tail = Length::from_ticks(ticks);
            spec
        });
        assert!(further.clone().count() > 3 && further.filter(|spec| fits(spec).is_some()).count() == 0, "{owned:?} {tail:?}");
    }
}

/// Whatever lengths on the way have no hat, the longest that fits is found.
#[test]
fn what_is_refused_hides_nothing_longer() {
    let hat = plan(&HatSpec::default()).unwrap();
    let mut found = 0;
    for limit in -1..=14 {
        for refused in 0..1_u32 << 12 {
            let of = |at: i32| {
                let mut spec = HatSpec::default();
                spec.shape.tail = Length::from_ticks(at);
                match refused >> at.min(31) & 1 {
                    _ if at > limit => Tried::TooMuch,
                    1 => Tried::Refused,
                    _ => Tried::Fits(Box::new((spec, hat.clone()))),
                }
            };
            let longest = (0..=limit).rev().find(|at| refused >> at & 1 == 0);
            let offered = most_that_fits(0, 20, NEAR, of).map(|(spec, _)| spec.shape.tail.ticks());
            assert_eq!(offered, longest, "up to {limit}, but for {refused:b}");
            found += u32::from(offered.is_some());
        }
    }
    assert!(found > 40_000, "{found}");
}

#[test]
fn stripes_of_what_is_short_are_narrower_and_of_what_is_spare_wider() {
    // Six rounds of the first and two of the second, in a band of one colour of its own.
    let mut spec = owning([70, 300]);
    spec.topper = None;
    spec.band.stripes = vec![RowStripe { colour: Colour(1), rows: Rows::new(2) }];
    spec.body_stripes[0].rounds = Rounds::new(16);
    let width = |spec: &HatSpec| (spec.body_stripes[0].rounds.get(), spec.body_stripes[1].rounds.get());
    let only = only_this_much(&spec);
    assert_eq!(only.short.iter().map(|(colour, _)| *colour).collect::<Vec<_>>(), [Colour(0)]);
    let narrow = of(&only, |kind| kind == OfferKind::WidestStripes { colour: Colour(0) }).unwrap();
    let (first, second) = width(&narrow.spec);
    assert!((1..16).contains(&first) && second == 2, "{first}");
    for rounds in first + 1..16 {
        let mut wider = spec.clone();
        wider.body_stripes[0].rounds = Rounds::new(rounds);
        assert_eq!(fits(&wider), None, "{rounds}");
    }
    // With plenty, the other's are wider, and the first keeps a stripe.
    own(&mut spec, [200, 900]);
    let only = only_this_much(&spec);
    assert!(only.enough);
    let wide = of(&only, |kind| matches!(kind, OfferKind::WidestStripes { .. })).unwrap();
    assert_eq!(wide.kind, OfferKind::WidestStripes { colour: Colour(1) });
    assert!(width(&wide.spec).1 > 2 && width(&wide.spec).0 == 16);
    assert_eq!(wide.hat.colours(), [Colour(0), Colour(1)]);
}

/// Two rows and two rows of a sideways band stay pairs, so that yarn waits at the right edge.
#[test]
fn pairs_of_rows_stay_pairs() {
    let mut spec = owning([0, 0]);
    spec.band.stripes[0].rows = Rows::new(8);
    let stripes = Stripes::of(&spec, Colour(0));
    for width in stripes.widths(false).into_iter().chain(stripes.widths(true)) {
        let Some(scaled) = stripes.scaled(&spec, width) else { continue };
        assert!(scaled.band.stripes[0].rows.get() % 2 == 0 && scaled.band.stripes[1].rows == Rows::new(2), "{width}");
        assert!(scaled.body_stripes[0].rounds.get() >= 1);
        assert_eq!(scaled.check(), Ok(()), "{width}");
    }
    // Where there is no band, its stripes are left as they are.
    spec.style = Style::Brimmed;
    let stripes = Stripes::of(&spec, Colour(0));
    assert_eq!(
        stripes.scaled(&spec, 3).map(|scaled| (scaled.band.stripes, scaled.body_stripes[0].rounds.get())),
        Some((spec.band.stripes.clone(), 3))
    );
    // Two hundred rounds are looked at in thirty steps, the widest first.
    spec.body_stripes[0] = RoundStripe { colour: Colour(0), rounds: Rounds::new(200) };
    let widths = Stripes::of(&spec, Colour(0)).widths(false);
    assert!(widths.len() == 30 && widths[0] == 199 && widths.is_sorted_by(|a, b| a > b) && widths[29] >= 1, "{widths:?}");
}

#[test]
fn the_largest_pom_pom_is_offered_beside_none() {
    let mut spec = owning([300, 0]);
    spec.topper = Some(Topper::usual(TopperKind::PomPom).sized(Length::from_cm(12.0)).coloured(Colour(1)));
    // The second colour has what the hat without it is safe with, and six metres for the pom-pom.
    let without = plan(&HatSpec { topper: None, ..spec.clone() }).unwrap();
    let metres = without.yarn[1].safe.metres() + 6.0;
    (spec.balls[1].yarn, spec.balls[1].owned) = (Count::from_ticks((metres * 100.0) as i32), Count::whole(1));
    let only = only_this_much(&spec);
    assert_eq!(of(&only, |kind| kind == OfferKind::NoTopper).map(|offer| &offer.hat.yarn), Some(&without.yarn));
    let smaller = of(&only, |kind| matches!(kind, OfferKind::SmallerTopper { .. })).unwrap();
    let topper = smaller.spec.topper.unwrap();
    assert_eq!((smaller.kind, topper.colour), (OfferKind::SmallerTopper { size: topper.size }, Some(Colour(1))));
    let next = topper.sized(Length::from_ticks(topper.size.ticks() + 500));
    assert!(topper.size.ticks() % 500 == 0 && topper.size < Length::from_cm(12.0));
    assert_eq!(fits(&HatSpec { topper: Some(next), ..spec.clone() }), None);
}

/// All of the band is folded up, or half of it: so it is of the lower one.
#[test]
fn a_lower_band_is_folded_in_proportion() {
    let mut spec = owning([0, 0]);
    spec.band.fold = band_height(&spec);
    let lower = lower_band(&spec, 10, 7);
    assert_eq!((lower.band.height, lower.band.fold), (Stitches::new(7), band_height(&lower)));
    spec.band.fold = Length::from_cm(4.2);
    assert_eq!(lower_band(&spec, 10, 7).band.fold, Length::from_cm(2.9));
    (spec.band.kind, spec.band.fold) = (BandKind::Around, Length::ZERO);
    let lower = lower_band(&spec, 6, 5);
    assert_eq!((lower.band.rounds, lower.band.fold, lower.band.height), (Rounds::new(5), Length::ZERO, spec.band.height));
    // A folded band is two layers: with a little less than is safe, a stitch or two less are enough, and no fewer.
    let mut spec = owning([0, 0]);
    spec.band.fold = band_height(&spec);
    let hat = plan(&spec).unwrap();
    for (ball, need) in spec.balls.iter_mut().zip(&hat.yarn) {
        let metres = need.safe.metres() * 0.97;
        (ball.yarn, ball.owned) = (Count::from_ticks((metres * 100.0) as i32), Count::whole(1));
    }
    let only = only_this_much(&spec);
    let Some(OfferKind::LowerBand { stitches }) = of(&only, |kind| matches!(kind, OfferKind::LowerBand { .. })).map(|o| o.kind)
    else {
        panic!()
    };
    assert!((5..10).contains(&stitches.get()), "{stitches}");
    assert!((stitches.get() + 1..10).all(|more| fits(&lower_band(&spec, 10, more)).is_none()));
}

/// Nothing is tried in vain: of a colour that is not there, no stripe is made.
#[test]
fn without_a_colour_only_another_will_do() {
    let spec = owning([0, 400]);
    let (only, plans) = search(&spec, plan(&spec).unwrap());
    assert_eq!(only.offers.iter().map(|offer| offer.kind).collect::<Vec<_>>(), [OfferKind::OneColour { colour: Colour(1) }]);
    assert!(plans <= 3, "{plans}");
}

#[test]
fn one_colour_is_the_one_of_which_most_is_owned() {
    let spec = owning([20, 300]);
    let only = only_this_much(&spec);
    let plain = of(&only, |kind| matches!(kind, OfferKind::OneColour { .. })).unwrap();
    assert_eq!((plain.kind, plain.hat.colours()), (OfferKind::OneColour { colour: Colour(1) }, vec![Colour(1)]));
    assert_eq!(plain.hat.yarn[0].length, YarnLength::default());
    // A topper of its own colour goes with it.
    let spec = HatSpec { topper: spec.topper.map(|topper| topper.coloured(Colour(0))), ..spec };
    let only = only_this_much(&spec);
    let plain = of(&only, |kind| matches!(kind, OfferKind::OneColour { .. })).unwrap();
    assert_eq!(plain.spec.topper.and_then(|topper| topper.colour), Some(Colour(1)));
}

#[test]
fn of_a_hat_that_is_begun_no_round_is_changed() {
    let mut spec = owning([100, 100]);
    let hat = plan(&spec).unwrap();
    spec.kept = Some(Kept::of(&hat));
    let need = hat.yarn[0].safe.metres() - 3.0;
    (spec.balls[0].yarn, spec.balls[0].owned) = (Count::from_ticks((need * 100.0) as i32), Count::whole(1));
    let only = only_this_much(&spec);
    assert!(!only.enough && !only.offers.is_empty());
    for offer in &only.offers {
        assert!(matches!(offer.kind, OfferKind::NoTopper | OfferKind::SmallerTopper { .. }), "{:?}", offer.kind);
        assert_eq!((&offer.hat.rounds, &offer.hat.band_rows), (&hat.rounds, &hat.band_rows));
    }
    own(&mut spec, [900, 900]);
    assert_eq!(only_this_much(&spec), Only { enough: true, short: Vec::new(), offers: Vec::new() });
}

#[test]
fn a_hat_that_is_refused_is_neither_enough_nor_offered() {
    let spec = HatSpec { ease: Ratio::of(0.3), ..owning([900, 900]) };
    assert!(plan(&spec).is_err());
    assert_eq!(only_this_much(&spec), Only { enough: false, short: Vec::new(), offers: Vec::new() });
}

/// Surer is dearer: what is enough nine times in ten is not always enough 999 times in 1,000.
#[test]
fn the_stated_chance_decides() {
    let at = |chance: f64| {
        let mut spec = HatSpec { extra: Extra::Chance(Ratio::of(chance)), ..owning([100, 100]) };
        spec.topper = None;
        only_this_much(&spec).enough
    };
    assert!(at(0.5) && at(0.8) && !at(0.999));
}

/// Counts taken by hand that do not close other stripes are not kept for them.
#[test]
fn counts_that_do_not_hold_are_not_kept() {
    let mut spec = owning([60, 300]);
    spec.topper = None;
    let own = plan(&spec).unwrap();
    spec.chosen = Some(Chosen { rows: own.size.rows, stitches: own.size.stitches });
    spec.band.swatch = Some(BandSwatch {
        stitches: Count::whole(12),
        width: Length::from_cm(10.0),
        rows: Count::whole(12),
        length: Length::from_cm(10.0),
    });
    for offer in only_this_much(&spec).offers {
        let dropped = offer.hat.remarks.iter().any(|remark| matches!(remark, crate::Remark::ChosenDropped { .. }));
        assert!(!dropped, "{:?}", offer.kind);
    }
}

/// The bound, at its worst: six colours that are short in a hat of the widest stripes.
#[test]
fn no_more_than_four_hundred_hats_are_planned() {
    let mut spec = HatSpec { style: Style::Stocking, ..owning([0, 0]) };
    let ball = crate::Ball { owned: Count::from_ticks(1), ..crate::Ball::of(Count::whole(80)) };
    spec.balls = vec![ball; HatSpec::MOST_COLOURS];
    let all = (0..6).map(Colour);
    spec.band.stripes = all.clone().map(|colour| RowStripe { colour, rows: Rows::new(2) }).collect();
    spec.body_stripes = all.map(|colour| RoundStripe { colour, rounds: Rounds::new(2) }).collect();
    for stripe in &mut spec.body_stripes {
        stripe.rounds = Rounds::new(40);
    }
    spec.shape.tail = Length::from_ticks(Q::Tail.row().most);
    spec.band.height = Stitches::new(6);
    for yarn in [80, 2_000] {
        for ball in &mut spec.balls {
            ball.yarn = Count::whole(yarn);
        }
        let hat = plan(&spec).unwrap();
        let (_, plans) = search(&spec, hat);
        assert!((150..=400).contains(&plans), "{plans}");
    }
}
