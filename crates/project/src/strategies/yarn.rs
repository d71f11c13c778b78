//! Random facts of yarn: balls, toppers, what is bought over the estimate, what was measured.

use super::{colour, count, length, ratio, ticks, whole};
use hatwright_sizing::{
    Ball, Extra, Instead, KeptUse, Mass, Money, Quantity, Stitches, Swatch, Topper, TopperKind, Unravelled, UseWay,
    WeighedSwatch, YarnUse, YarnWeight,
};
use proptest::option;
use proptest::prelude::*;

pub(super) fn topper(colours: usize) -> BoxedStrategy<Topper> {
    let sized = |kind: TopperKind| length(kind.quantity()).prop_map(move |size| (kind, size));
    let of = prop_oneof![sized(TopperKind::PomPom), sized(TopperKind::Tassel)];
    (of, ratio(Quantity::Fullness), option::of(colour(colours)))
        .prop_map(|((kind, size), fullness, colour)| Topper { kind, size, fullness, colour })
        .boxed()
}

fn mass(q: Quantity) -> BoxedStrategy<Mass> {
    ticks(q).prop_map(Mass::from_ticks).boxed()
}

fn weight() -> BoxedStrategy<YarnWeight> {
    (0..=7_u8).prop_map(|number| YarnWeight::new(number).unwrap_or_else(|_| unreachable!("0 to 7"))).boxed()
}

pub(super) fn ball() -> BoxedStrategy<Ball> {
    let price = ticks(Quantity::BallPrice).prop_map(|price| Money::from_ticks(price.into()));
    (
        count(Quantity::BallYarn),
        option::of(mass(Quantity::BallGrams)),
        option::of(weight()),
        count(Quantity::BallsOwned),
        option::of(price),
    )
        .prop_map(|(yarn, grams, weight, owned, price)| Ball { yarn, grams, weight, owned, price })
        .boxed()
}

pub(super) fn extra() -> BoxedStrategy<Extra> {
    prop_oneof![ratio(Quantity::Chance).prop_map(Extra::Chance), ratio(Quantity::Margin).prop_map(Extra::Share)].boxed()
}

pub(super) fn yarn_use(colours: usize) -> BoxedStrategy<YarnUse> {
    let stitches = |q| whole(q).prop_map(Stitches::new);
    let weighed = (colour(colours), any::<bool>(), stitches(Quantity::WeighedStitches), mass(Quantity::WeighedGrams))
        .prop_map(|(colour, band, stitches, grams)| WeighedSwatch { colour, band, stitches, grams });
    let unravelled = (any::<bool>(), stitches(Quantity::UnravelledStitches), length(Quantity::UnravelledLength))
        .prop_map(|(band, stitches, length)| Unravelled { band, stitches, length });
    let way = prop_oneof![Just(UseWay::Weighed), Just(UseWay::Unravelled), Just(UseWay::Hat)];
    let kept = (ratio(Quantity::KeptFactor), ratio(Quantity::KeptDoubt), way).prop_map(|(factor, doubt, way)| KeptUse {
        factor,
        doubt,
        way,
    });
    let rest = (option::of(mass(Quantity::HatGrams)), mass(Quantity::ScaleStep), any::<bool>());
    (option::of(weighed), option::of(unravelled), option::of(kept), rest)
        .prop_map(|(weighed, unravelled, kept, (hat, scale, swatch_kept))| YarnUse {
            weighed,
            unravelled,
            kept,
            hat,
            scale,
            swatch_kept,
        })
        .boxed()
}

pub(super) fn instead() -> BoxedStrategy<Instead> {
    let swatch = (
        count(Quantity::InsteadStitches),
        length(Quantity::InsteadWidth),
        count(Quantity::InsteadRounds),
        length(Quantity::InsteadHeight),
    )
        .prop_map(|(stitches, width, rounds, height)| Swatch::Counted { stitches, width, rounds, height });
    (count(Quantity::InsteadYarn), option::of(mass(Quantity::InsteadGrams)), option::of(weight()), option::of(swatch))
        .prop_map(|(yarn, grams, weight, swatch)| Instead { yarn, grams, weight, swatch })
        .boxed()
}
