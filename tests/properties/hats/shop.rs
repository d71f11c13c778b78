//! In the shop: balls enough and not one too many, how often they are, and ranges that hold what they say.

use crate::planned::{PLANNED, Planned, ensure, every_hat, near};
use hatwright_sizing::{Colour, Extra, Money, PartYarn, chance_of, shop};
use hatwright_tests::practice::{is_worked, known};
use std::f64::consts::TAU;

/// The share of a standard normal distribution below so many deviations, by Simpson's rule over its density.
fn below(z: f64) -> f64 {
    let z = z.clamp(-9.0, 9.0);
    let (steps, from) = (2_000, -9.0);
    let width = (z - from) / f64::from(steps);
    let density = |i: i32| {
        let x = from + width * f64::from(i);
        (-x * x / 2.0).exp() / TAU.sqrt()
    };
    let sum: f64 = (1..steps).map(|i| density(i) * if i % 2 == 0 { 2.0 } else { 4.0 }).sum();
    (density(0) + sum + density(steps)) * width / 3.0
}

/// What is owned and bought holds what was asked for, and not a ball more; how often that is enough is recomputed from the density.
#[test]
fn balls_are_enough_and_not_one_too_many() {
    every_hat(|Planned { hat, spec, .. }| {
        let shop = shop(hat, spec);
        let used = hat.yarn.iter().filter(|need| need.length.millimetres() > 0).count();
        ensure(shop.lines.len() == used, || format!("{} lines for {used} colours", shop.lines.len()))?;
        for line in &shop.lines {
            let (need, ball) = (&line.need, &spec.balls[usize::from(line.colour.0)]);
            let at = || format!("{line:?} of {ball:?}");
            let (length, deviation) = (need.length.metres(), need.deviation.metres());
            let one = ball.yarn.value();
            let owned = ball.owned.value() * one;
            let have = owned + f64::from(line.balls) * one;
            // A need is rounded to the millimetre, the balls are not.
            let wanted = match spec.extra {
                Extra::Share(share) => length * (1.0 + share.value()),
                Extra::Chance(_) => need.safe.metres(),
            };
            ensure(near(need.safe.metres(), wanted, 0.001), at)?;
            ensure(have >= wanted - 0.001, at)?;
            ensure(line.balls == 0 || have - one < wanted + 0.001, at)?;
            ensure(near(f64::from(need.balls), (wanted / one).ceil(), 1.0), at)?;
            let chance = below((have - length) / deviation);
            ensure(near(line.chance.value(), chance, 0.001), || format!("{chance}: {}", at()))?;
            if let Extra::Chance(stated) = spec.extra {
                ensure(line.chance.value() >= stated.value() - 0.0003, at)?;
            }
            ensure(near(line.left.metres(), have - length, 0.002), at)?;
            let grams = ball.grams.map(|grams| grams.grams() * length / one);
            ensure(line.grams.is_some() == grams.is_some(), at)?;
            ensure(line.grams.is_none_or(|told| near(told.grams(), grams.unwrap_or(0.0), 0.011)), at)?;
            ensure(line.price.map(Money::ticks) == ball.price.map(|p| p.ticks() * i64::from(line.balls)), at)?;
        }
        let least = shop.lines.iter().map(|line| line.chance).min();
        ensure(least.is_none_or(|least| least == shop.chance), || format!("{shop:?}"))?;
        let bought = || shop.lines.iter().filter(|line| line.balls > 0);
        let price = bought().map(|line| line.price.map(Money::ticks)).sum::<Option<i64>>();
        ensure(price == shop.price.map(Money::ticks), || format!("{shop:?}"))
    });
}

/// Pairs of independent standard normal numbers, spread evenly: the additive recurrence on the plastic number, by Box and Muller.
fn normal_pairs(count: u32) -> impl Iterator<Item = (f64, f64)> {
    const PLASTIC: f64 = 1.324_717_957_244_746;
    (1..=count).map(|i| {
        let part = |step: f64| (0.5 + f64::from(i) * step).fract();
        let (u, v) = (part(1.0 / PLASTIC), part(1.0 / (PLASTIC * PLASTIC)));
        let far = (-2.0 * (1.0 - u).ln()).sqrt();
        (far * (TAU * v).cos(), far * (TAU * v).sin())
    })
}

#[test]
fn the_pairs_are_normal_and_independent() {
    let pairs: Vec<(f64, f64)> = normal_pairs(DRAWS).collect();
    let mean = |of: &dyn Fn(&(f64, f64)) -> f64| pairs.iter().map(of).sum::<f64>() / f64::from(DRAWS);
    for (moment, expected) in [
        (mean(&|p| p.0), 0.0),
        (mean(&|p| p.1), 0.0),
        (mean(&|p| p.0 * p.0), 1.0),
        (mean(&|p| p.1 * p.1), 1.0),
        (mean(&|p| p.0 * p.1), 0.0),
    ] {
        assert!(near(moment, expected, 0.02), "{moment}, not {expected}");
    }
    for z in [-1.5, -0.5, 0.0, 1.0, 2.0] {
        let share = mean(&|p| f64::from(p.0 < z));
        assert!(near(share, below(z), 0.004), "{share} below {z}");
    }
}

const DRAWS: u32 = 2_000;

/// Hats are made over and over: their stitches are all off by one share, what is cut and wound by another. Nine in ten take a length in the
/// range that is told; as many as the chance says find enough in what is owned and bought; and all colours are enough together no more
/// often than the least sure of them, and nearly as often.
#[test]
fn ranges_hold_nine_in_ten_and_chances_are_kept() {
    let draws: Vec<(f64, f64)> = normal_pairs(DRAWS).collect();
    let share = |of: &dyn Fn((f64, f64)) -> bool| draws.iter().filter(|draw| of(**draw)).count() as f64 / f64::from(DRAWS);
    let (mut ranges, mut unsure) = (0, 0);
    for Planned { seed, spec, hat } in PLANNED.iter().step_by(25) {
        let (known, shop) = (known(spec), shop(hat, spec));
        let made = |colour: Colour, doubts: [f64; 2], (stitches, other): (f64, f64)| {
            let parts = hat.yarn_parts.iter().filter(|part| part.colour == colour);
            let off =
                |part: &PartYarn| if is_worked(part.part) { doubts[usize::from(part.band)] * stitches } else { 0.10 * other };
            parts.map(|part| part.length.metres() * (1.0 + off(part) / DEVIATIONS)).sum::<f64>()
        };
        for line in &shop.lines {
            let need = &line.need;
            // A range that would reach below nothing begins there.
            if need.low.millimetres() == 0 {
                continue;
            }
            let range = need.low.metres()..=need.high.metres();
            let within = share(&|draw| range.contains(&made(need.colour, known.metres, draw)));
            assert!(near(within, 0.9, 0.01), "seed {seed}: {within} within {need:?}");
            let have = need.length.metres() + line.left.metres();
            for (have, told) in [(have, line.chance), (need.safe.metres(), chance_of(need, need.safe))] {
                let enough = share(&|draw| made(need.colour, known.balls, draw) <= have);
                assert!(near(enough, told.value(), 0.01), "seed {seed}: {have} m enough {enough}, told {told:?} of {line:?}");
                unsure += u32::from(told.value() < 0.99);
            }
            ranges += 1;
        }
        let all = share(&|draw| {
            shop.lines.iter().all(|line| made(line.colour, known.balls, draw) <= line.need.length.metres() + line.left.metres())
        });
        let told = shop.chance.value();
        assert!(all <= told + 0.01 && all >= told - 0.04, "seed {seed}: all enough {all}, told {told}");
    }
    assert!(ranges > 400 && unsure > 300, "{ranges} {unsure}");
}

/// A normal distribution has 90 % within so many standard deviations.
const DEVIATIONS: f64 = 1.644_854;
