//! The yarn of every hat: what is bought is enough, what is offered fits, what is swapped is planned.

use crate::{cases, specs};
use hatwright_sizing::{
    Ball, Count, Extra, HatSpec, Instead, Mass, Quantity, Ratio, UseWay, YarnLength, YarnWeight, only_this_much, plan, shop,
    swap, yarn_hint, yarn_rates,
};
use proptest::prelude::*;

fn ticks(q: Quantity) -> impl Strategy<Value = i32> {
    let row = q.row();
    prop_oneof![1 => Just(row.least), 1 => Just(row.most), 6 => row.least..=row.most]
}

fn ball() -> impl Strategy<Value = Ball> {
    let grams = prop::option::of(ticks(Quantity::BallGrams).prop_map(Mass::from_ticks));
    let weight = prop::option::of((0..=7_u8).prop_map(|number| YarnWeight::new(number).unwrap()));
    (ticks(Quantity::BallYarn), grams, weight, prop_oneof![Just(0), 0..600_i32]).prop_map(|(yarn, grams, weight, owned)| Ball {
        grams,
        weight,
        owned: Count::from_ticks(owned),
        ..Ball::of(Count::from_ticks(yarn))
    })
}

fn extra() -> impl Strategy<Value = Extra> {
    prop_oneof![
        ticks(Quantity::Chance).prop_map(|chance| Extra::Chance(Ratio::from_ticks(chance))),
        ticks(Quantity::Margin).prop_map(|share| Extra::Share(Ratio::from_ticks(share))),
    ]
}

fn with_yarn() -> impl Strategy<Value = (HatSpec, Ball)> {
    (specs::sane_spec(), prop::collection::vec(ball(), 2..=3), extra(), 1..=3_u32, ball())
        .prop_map(|(specs::Asked(spec), balls, extra, strands, other)| (HatSpec { balls, extra, strands, ..spec }, other))
}

proptest! {
    #![proptest_config(cases(300))]

    #[test]
    fn what_is_bought_is_enough((spec, _) in with_yarn()) {
        let Ok(hat) = plan(&spec) else { return Ok(()) };
        let shop = shop(&hat, &spec);
        prop_assert_eq!(shop.lines.len(), hat.yarn.iter().filter(|need| need.length > YarnLength::default()).count());
        for line in shop.lines {
            let has = line.owned.millimetres() + i64::from(line.balls) * i64::from(spec.balls[usize::from(line.colour.0)].yarn.ticks()) * 10;
            prop_assert!(has >= line.need.safe.millimetres() && line.need.safe >= line.need.length);
            prop_assert!(line.need.low <= line.need.length && line.need.length <= line.need.high);
            let parts = hat.yarn_parts.iter().filter(|part| part.colour == line.colour).map(|part| part.length);
            prop_assert_eq!(parts.sum::<YarnLength>(), line.need.length);
        }
    }

    #[test]
    fn what_is_swapped_is_planned((spec, other) in with_yarn()) {
        let instead = Instead { yarn: other.yarn, grams: other.grams, weight: other.weight, swatch: None };
        let spec = HatSpec { instead: Some(instead), ..spec };
        let found = swap(&spec).unwrap();
        prop_assert_eq!(&found.hat, &plan(&found.spec));
        prop_assert!(found.spec.instead.is_none() && found.spec.balls.iter().all(|ball| *ball == instead.ball()));
        // A ball is odd or it is not, whatever is known of it.
        prop_assert!(other.grams.is_some() || yarn_hint(&other).is_none());
        prop_assert!(yarn_rates(&found.spec).iter().all(|rate| rate.way == UseWay::Estimated));
    }
}

proptest! {
    #![proptest_config(cases(60))]

    #[test]
    fn what_is_offered_fits((spec, _) in with_yarn()) {
        let only = only_this_much(&spec);
        let Ok(hat) = plan(&spec) else {
            prop_assert!(!only.enough && only.offers.is_empty());
            return Ok(());
        };
        let bought: u32 = shop(&hat, &spec).lines.iter().map(|line| line.balls).sum();
        prop_assert_eq!(only.enough, bought == 0);
        for offer in only.offers {
            prop_assert_eq!(&Ok(offer.hat.clone()), &plan(&offer.spec));
            let short = shop(&offer.hat, &offer.spec).lines.iter().any(|line| line.balls > 0);
            prop_assert!(!short, "{:?}", offer.kind);
        }
    }
}
