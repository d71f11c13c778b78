//! What the trade says of stitches and their yarn, written down a second time: the checks reckon with it and ask no planner.

mod known;

pub use known::{Known, is_worked, known, root};

use hatwright_sizing::{BandKind, BandSwatch, Fabric, HatSpec, Loops, Stitch, Style, Swatch};

/// An end to weave in, in cm. Common practice, no source.
pub const END: f64 = 15.0;
/// Yarn in a chain, in stitch widths. Common practice, no source.
pub const CHAIN: f64 = 3.3;
/// Yarn in a slip stitch, in stitch widths. Common practice, no source.
pub const SLIP: f64 = 3.5;
/// Yarn in a decrease, in stitches. Common practice, no source.
pub const TOGETHER: f64 = 1.6;

/// Yarn in a stitch, in stitch widths: single crochet 7, half double 9.5, double 12.5. Common practice, no source.
pub fn tall(stitch: Stitch) -> f64 {
    match stitch {
        Stitch::Slip => SLIP,
        Stitch::Single => 7.0,
        Stitch::HalfDouble => 9.5,
        Stitch::Double => 12.5,
    }
}

/// The same of a fabric: a post stitch, which reaches around, takes 1 more. Common practice, no source.
pub fn stitch(fabric: Fabric) -> f64 {
    match fabric {
        Fabric::PostRib => tall(Stitch::Double) + 1.0,
        _ => tall(fabric.row().stitch),
    }
}

/// Chains of a turn: 1 for single crochet, 2 for half double and around posts, 3 for double. Common practice, no source.
pub fn turn(fabric: Fabric) -> f64 {
    match (fabric.row().stitch, fabric) {
        (Stitch::HalfDouble, _) | (_, Fabric::PostRib) => 2.0,
        (Stitch::Double, _) => 3.0,
        _ => 1.0,
    }
}

/// Stitch sizes in cm: body stitch and round (or row), band stitch and row (or round).
#[derive(Clone, Copy, Debug)]
pub struct Sizes {
    /// Width of a stitch of the body.
    pub w: f64,
    /// Height of a round, or row, of the body.
    pub h: f64,
    /// Width of a stitch of the band.
    pub band_w: f64,
    /// Height of a row, or round, of the band.
    pub band_row: f64,
}

/// Common practice, no source: height ÷ width of a round that is never turned, and of a turned row.
fn shape(fabric: Fabric) -> (f64, f64) {
    let row = fabric.row();
    match (row.stitch, row.loops) {
        (Stitch::Slip, _) => (0.5, 0.5),
        (Stitch::Single, Loops::Both) => (0.85, 1.0),
        (Stitch::Single, _) => (0.9, 1.0),
        (Stitch::HalfDouble, Loops::Both) => (1.3, 1.5),
        (Stitch::HalfDouble, _) => (1.35, 1.5),
        (Stitch::Double, Loops::Both) => (1.85, 2.0),
        (Stitch::Double, Loops::Posts) => (1.7, 2.0),
        (Stitch::Double, _) => (1.9, 2.0),
    }
}

/// Of a spec, from its swatches; where there is none, from what is usual.
pub fn sizes(spec: &HatSpec) -> Sizes {
    let (round, row) = shape(spec.fabric);
    let (w, h) = match spec.swatch {
        Swatch::Counted { stitches, width, rounds, height } => (width.cm() / stitches.value(), height.cm() / rounds.value()),
        Swatch::YarnWeight(weight) => {
            let w = 10.16 / weight.usual_stitches_in_4_inches().value();
            (w, w * if spec.style == Style::Sideways { row } else { round })
        }
    };
    let (band_round, band_turned) = shape(spec.band_fabric());
    let (band_w, band_row) = match (spec.band_kind(), spec.band.swatch) {
        (BandKind::None, _) => (w, h),
        (_, Some(BandSwatch { stitches, width, rows, length })) => (width.cm() / stitches.value(), length.cm() / rows.value()),
        (BandKind::Sideways, None) => (w, w * band_turned),
        (BandKind::Around, None) => (w, w * band_round),
    };
    Sizes { w, h, band_w, band_row }
}
