//! The hats that every property is asked of, and their measures worked out anew from the spec.

use hatwright_sizing::{BandSwatch, Hat, HatSpec, Quantity, RowStripe, Swatch};
use hatwright_tests::random::random_hats;
use std::sync::LazyLock;

pub const HATS: usize = 10_000;

pub struct Planned {
    pub seed: u64,
    pub spec: HatSpec,
    pub hat: Hat,
}

pub static PLANNED: LazyLock<Vec<Planned>> =
    LazyLock::new(|| random_hats(HATS).map(|(seed, spec, hat)| Planned { seed, spec, hat }).collect());

/// Asks something of every hat; shows the first few that fail, with their seeds.
pub fn every_hat(holds: impl Fn(&Planned) -> Result<(), String>) {
    let failures: Vec<String> =
        PLANNED.iter().filter_map(|p| holds(p).err().map(|why| format!("seed {}: {why}\n  {:?}", p.seed, p.spec))).collect();
    let shown = failures.iter().take(3).cloned().collect::<Vec<_>>().join("\n");
    assert!(failures.is_empty(), "{} of {HATS} hats fail:\n{shown}", failures.len());
}

pub fn ensure(holds: bool, why: impl FnOnce() -> String) -> Result<(), String> {
    if holds { Ok(()) } else { Err(why()) }
}

/// Stitch sizes in cm: body stitch and round, band stitch and row.
pub struct Sizes {
    pub w: f64,
    pub h: f64,
    pub band_w: f64,
    pub band_row: f64,
}

pub fn sizes(spec: &HatSpec) -> Sizes {
    let (w, h) = match spec.swatch {
        Swatch::Counted { stitches, width, rounds, height } => (width.cm() / stitches.value(), height.cm() / rounds.value()),
        // Common practice, no source: a single crochet is 0.85 as tall as it is wide.
        Swatch::YarnWeight(weight) => {
            let w = 10.16 / weight.usual_stitches_in_4_inches().value();
            (w, 0.85 * w)
        }
    };
    let (band_w, band_row) = match spec.band.swatch {
        Some(BandSwatch { stitches, width, rows, length }) => (width.cm() / stitches.value(), length.cm() / rows.value()),
        None => (w, w),
    };
    Sizes { w, h, band_w, band_row }
}

pub fn value(q: Quantity) -> f64 {
    q.row().usual_value()
}

pub fn near(a: f64, b: f64, tolerance: f64) -> bool {
    (a - b).abs() <= tolerance
}

/// Half a hundredth of a millimetre, twice: two lengths that were rounded on their own.
pub const TICK: f64 = 0.001;

pub fn counts(hat: &Hat) -> Vec<u32> {
    hat.rounds.iter().map(|r| r.after.get()).collect()
}

/// Rows after which the stripes begin again; 1 for a band of one colour.
pub fn repeat(stripes: &[RowStripe]) -> u32 {
    let mut rows = stripes.iter().flat_map(|s| std::iter::repeat_n(s.colour, s.rows.get() as usize));
    let first = rows.next();
    if rows.all(|c| Some(c) == first) { 1 } else { stripes.iter().map(|s| s.rows.get()).sum() }
}
