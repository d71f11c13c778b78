//! What a plan's time grows with: stitches, rounds, and how the crown is to be shaped.
//!
//! Whole plans are timed, because nothing less is public; what is not the scheduler's is the same few microseconds in all.

use divan::{Bencher, black_box};
use hatwright_sizing::{Begun, Closing, Count, HatSpec, Head, Layout, Length, Stitches, Style, Swatch, Taste, plan};

fn main() {
    divan::main();
}

/// An adult's hat at so many stitches to 10 cm, and rounds in proportion.
fn adult(stitches: i32) -> HatSpec {
    let over = Length::from_cm(10.0);
    let mut band = HatSpec::default().band;
    band.height = Stitches::new(stitches as u32 * 8 / 10);
    band.fold = Length::from_cm(4.0);
    HatSpec {
        band,
        head: Head::Measured(Length::from_cm(57.0)),
        swatch: Swatch::Counted {
            stitches: Count::whole(stitches),
            width: over,
            rounds: Count::whole(stitches * 38 / 32),
            height: over,
        },
        ..HatSpec::default()
    }
}

fn run(bencher: Bencher<'_, '_>, spec: &HatSpec) {
    assert!(plan(spec).is_ok());
    bencher.bench_local(|| plan(black_box(spec)));
}

/// Stitches to 10 cm: rounds and stitches both grow with them.
const GAUGES: [i32; 5] = [8, 12, 18, 26, 38];

#[divan::bench(args = GAUGES)]
fn spread(bencher: Bencher<'_, '_>, stitches: i32) {
    run(bencher, &adult(stitches));
}

#[divan::bench(args = GAUGES)]
fn wedges(bencher: Bencher<'_, '_>, stitches: i32) {
    run(bencher, &HatSpec { layout: Layout::Wedges(8), ..adult(stitches) });
}

#[divan::bench(args = GAUGES)]
fn from_the_crown(bencher: Bencher<'_, '_>, stitches: i32) {
    run(bencher, &HatSpec { begun: Begun::Crown, ..adult(stitches) });
}

/// About a quarter of the stitches gathered.
#[divan::bench(args = GAUGES)]
fn gathered(bencher: Bencher<'_, '_>, stitches: i32) {
    run(bencher, &HatSpec { closing: Closing::Gathered(Stitches::new((stitches as u32 * 3 / 2).max(16))), ..adult(stitches) });
}

/// The dearer effort is, the farther from the curve a crown may go.
#[divan::bench(args = [Taste::Smooth, Taste::Balanced, Taste::Simple])]
fn tastes(bencher: Bencher<'_, '_>, taste: Taste) {
    run(bencher, &HatSpec { taste, ..adult(32) });
}

/// A stocking cap's tail, in cm: only rounds grow with it.
#[divan::bench(args = [20, 40, 80, 160, 320])]
fn tail(bencher: Bencher<'_, '_>, cm: i32) {
    let mut spec = HatSpec { style: Style::Stocking, ..adult(32) };
    spec.shape.tail = Length::from_cm(f64::from(cm));
    run(bencher, &spec);
}
