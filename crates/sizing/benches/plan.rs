//! How long a plan takes: it has to be ready in the frame of the keystroke that changed it.

use divan::{Bencher, black_box};
use hatwright_sizing::{Begun, Closing, Count, Coverage, HatSpec, Head, Layout, Length, Stitches, Style, Swatch, plan};

fn main() {
    divan::main();
}

fn spec(head: f64, stitches: i32, rounds: i32) -> HatSpec {
    let over = Length::from_cm(10.0);
    // A band about 8 cm tall, half folded.
    let mut band = HatSpec::default().band;
    band.height = Stitches::new(stitches as u32 * 8 / 10);
    band.fold = Length::from_cm(4.0);
    HatSpec {
        band,
        head: Head::Measured(Length::from_cm(head)),
        swatch: Swatch::Counted { stitches: Count::whole(stitches), width: over, rounds: Count::whole(rounds), height: over },
        ..HatSpec::default()
    }
}

fn run(bencher: Bencher<'_, '_>, spec: &HatSpec) {
    assert!(plan(spec).is_ok());
    bencher.bench_local(|| plan(black_box(spec)));
}

/// A 4-year-old's cap at 12 stitches and 15 rounds to 10 cm.
#[divan::bench]
fn childs_cap(bencher: Bencher<'_, '_>) {
    run(bencher, &spec(49.8, 12, 15));
}

/// The same in eight wedges.
#[divan::bench]
fn childs_wedges(bencher: Bencher<'_, '_>) {
    run(bencher, &HatSpec { layout: Layout::Wedges(8), ..spec(49.8, 12, 15) });
}

/// An adult's cap in fine yarn: 32 stitches and 38 rounds to 10 cm.
#[divan::bench]
fn adults_fine_yarn(bencher: Bencher<'_, '_>) {
    run(bencher, &spec(57.0, 32, 38));
}

/// The same in seven wedges, which take an adjustment round.
#[divan::bench]
fn adults_fine_wedges(bencher: Bencher<'_, '_>) {
    run(bencher, &HatSpec { layout: Layout::Wedges(7), ..spec(57.0, 32, 38) });
}

/// The same gathered at 60 stitches.
#[divan::bench]
fn adults_fine_gathered(bencher: Bencher<'_, '_>) {
    run(bencher, &HatSpec { closing: Closing::Gathered(Stitches::new(60)), ..spec(57.0, 32, 38) });
}

/// The same begun at the crown.
#[divan::bench]
fn adults_fine_from_the_crown(bencher: Bencher<'_, '_>) {
    run(bencher, &HatSpec { begun: Begun::Crown, ..spec(57.0, 32, 38) });
}

/// An adult's stocking cap in the same yarn with a tail of 40 cm.
fn stocking(head: f64) -> HatSpec {
    let mut spec = HatSpec { style: Style::Stocking, ..spec(head, 32, 38) };
    spec.shape.tail = Length::from_cm(40.0);
    spec
}

#[divan::bench]
fn adults_fine_stocking(bencher: Bencher<'_, '_>) {
    run(bencher, &stocking(57.0));
}

/// Eleven sizes of it, 42 to 62 cm.
#[divan::bench]
fn eleven_stockings(bencher: Bencher<'_, '_>) {
    let sizes: Vec<HatSpec> = (0..11).map(|i| stocking(42.0 + 2.0 * f64::from(i))).collect();
    assert!(sizes.iter().all(|spec| plan(spec).is_ok()));
    bencher.bench_local(|| sizes.iter().filter(|spec| plan(black_box(spec)).is_ok()).count());
}

/// A tam: two discs and no more.
#[divan::bench]
fn adults_fine_tam(bencher: Bencher<'_, '_>) {
    run(bencher, &HatSpec { style: Style::Tam, ..spec(57.0, 32, 38) });
}

/// Almost the most stitches that a hat of this kind has: 40 to 10 cm on a head of 66 cm.
#[divan::bench]
fn most_stitches(bencher: Bencher<'_, '_>) {
    run(bencher, &spec(66.0, 40, 48));
}

/// The dearest that was found: the finest thread that is accepted, in tall stitches, on the largest head, down to the tops of the ears.
#[divan::bench]
fn finest_thread(bencher: Bencher<'_, '_>) {
    let mut spec = HatSpec { coverage: Coverage::EarTops, ..spec(75.0, 83, 50) };
    spec.band.height = Stitches::new(50);
    spec.band.fold = Length::ZERO;
    run(bencher, &spec);
}

/// A refusal that names the smallest fold and the tallest band that work: many crowns are tried.
#[divan::bench]
fn band_too_tall(bencher: Bencher<'_, '_>) {
    let mut spec = spec(57.0, 32, 38);
    spec.band.height = Stitches::new(64);
    spec.band.fold = Length::ZERO;
    assert!(plan(&spec).is_err());
    bencher.bench_local(|| plan(black_box(&spec)));
}
