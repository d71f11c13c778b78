//! How long it takes to find what can be made of the yarn that is owned: at most 400 plans, while a dialog opens.

use divan::{Bencher, black_box};
use hatwright_sizing::{
    Ball, Colour, Count, HatSpec, Head, Instead, Length, Mass, RoundStripe, Rounds, RowStripe, Rows, Stitches, Style, Swatch,
    only_this_much, swap,
};

fn main() {
    divan::main();
}

/// A head of so many centimetres, and so many balls of each colour.
fn owning(head: f64, stitches: i32, rounds: i32, balls: i32) -> HatSpec {
    let over = Length::from_cm(10.0);
    let mut spec = HatSpec {
        head: Head::Measured(Length::from_cm(head)),
        swatch: Swatch::Counted { stitches: Count::whole(stitches), width: over, rounds: Count::whole(rounds), height: over },
        ..HatSpec::default()
    };
    spec.band.height = Stitches::new(stitches as u32 * 8 / 10);
    spec.band.fold = Length::from_cm(4.0);
    for ball in &mut spec.balls {
        ball.owned = Count::whole(balls);
    }
    spec
}

fn run(bencher: Bencher<'_, '_>, spec: &HatSpec) {
    bencher.bench_local(|| only_this_much(black_box(spec)));
}

/// A 4-year-old's cap that is short of one colour.
#[divan::bench]
fn childs_cap_short(bencher: Bencher<'_, '_>) {
    run(bencher, &owning(49.8, 12, 15, 1));
}

/// The same with a ball to spare.
#[divan::bench]
fn childs_cap_enough(bencher: Bencher<'_, '_>) {
    run(bencher, &owning(49.8, 12, 15, 2));
}

/// The same with next to nothing: all is tried, and nothing fits.
#[divan::bench]
fn childs_cap_scraps(bencher: Bencher<'_, '_>) {
    let mut spec = owning(49.8, 12, 15, 0);
    for ball in &mut spec.balls {
        ball.owned = Count::from_ticks(1);
    }
    run(bencher, &spec);
}

/// An adult's cap in fine yarn, short of both colours.
#[divan::bench]
fn adults_fine_yarn_short(bencher: Bencher<'_, '_>) {
    run(bencher, &owning(57.0, 32, 38, 1));
}

/// A stocking cap in fine yarn of six colours, all of them short, with a tail of 20 m: the dearest that was found.
#[divan::bench]
fn six_colours_short(bencher: Bencher<'_, '_>) {
    let mut spec = HatSpec { style: Style::Stocking, ..owning(57.0, 32, 38, 0) };
    spec.shape.tail = Length::from_cm(2_000.0);
    spec.balls = vec![Ball { owned: Count::from_ticks(1), ..Ball::of(Count::whole(80)) }; HatSpec::MOST_COLOURS];
    spec.band.stripes = (0..6).map(|i| RowStripe { colour: Colour(i), rows: Rows::new(2) }).collect();
    spec.body_stripes = (0..6).map(|i| RoundStripe { colour: Colour(i), rounds: Rounds::new(40) }).collect();
    run(bencher, &spec);
}

/// Another yarn weighed up: two plans.
#[divan::bench]
fn another_yarn(bencher: Bencher<'_, '_>) {
    let mut spec = owning(57.0, 32, 38, 1);
    let grams = Some(Mass::from_grams(50.0));
    spec.balls[0].grams = grams;
    spec.instead = Some(Instead { yarn: Count::whole(65), grams, weight: None, swatch: None });
    bencher.bench_local(|| swap(black_box(&spec)));
}
