//! The hats that every property is asked of, and their measures worked out anew from the spec.

use hatwright_sizing::{
    BandKind, BandSwatch, Begun, Coverage, Fabric, Hat, HatSpec, Loops, Quantity, Round, RoundKind, RowStripe, Stitch, Style,
    Swatch, Zone, head_size,
};
use hatwright_tests::random::random_hats;
use std::f64::consts::{PI, TAU};
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

/// The same of every hat with rounds from an edge to a centre.
pub fn every_round_hat(holds: impl Fn(&Planned) -> Result<(), String>) {
    every_hat(|p| if p.spec.style.is_round() { holds(p) } else { Ok(()) });
}

pub fn ensure(holds: bool, why: impl FnOnce() -> String) -> Result<(), String> {
    if holds { Ok(()) } else { Err(why()) }
}

/// Stitch sizes in cm: body stitch and round (or row), band stitch and row (or round).
pub struct Sizes {
    pub w: f64,
    pub h: f64,
    pub band_w: f64,
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

/// The band before folding, in cm.
pub fn band_tall(spec: &HatSpec) -> f64 {
    let Sizes { band_w, band_row, .. } = sizes(spec);
    match spec.band_kind() {
        BandKind::Sideways => f64::from(spec.band.height.get()) * band_w,
        BandKind::Around => f64::from(spec.band.rounds.get()) * band_row,
        BandKind::None => 0.0,
    }
}

/// The head's girth with hair or a lining around it, in cm: 2π times the thickness more.
pub fn around(spec: &HatSpec) -> f64 {
    head_size(&spec.head).girth.cm() + TAU * spec.lining.cm()
}

/// From the crown's centre to the edge as worn, in cm: DESIGN's ratios of the girth, or half of what was measured over the top in the
/// place of the one to the ear canals.
pub fn deep(spec: &HatSpec) -> f64 {
    let ratio = match (spec.style, spec.coverage) {
        (Style::EarFlap, _) | (_, Coverage::EarTops) => 0.26,
        (_, Coverage::EarCanals) => 0.308,
        (_, Coverage::EarLobes) => 0.367,
        (_, Coverage::OverEars) => 0.395,
    };
    match spec.over_top {
        Some(over) => over.cm() / 2.0 + spec.lining.cm() * PI / 2.0 + around(spec) * (ratio - 0.308),
        None => around(spec) * ratio,
    }
}

/// The rounds between band (or edge) and centre, from the edge inward, whichever way they were worked.
pub fn inward(hat: &Hat) -> Vec<Round> {
    let mut rounds: Vec<Round> = hat.rounds.iter().filter(|r| !matches!(r.zone, Zone::Band | Zone::Brim)).copied().collect();
    if hat.begun == Begun::Crown {
        rounds.reverse();
    }
    rounds
}

/// Arc that is left inside the innermost round: what a strand draws up, half a bundle, or nothing in a ring.
pub fn left_inside(spec: &HatSpec, hat: &Hat) -> f64 {
    use hatwright_sizing::TopKind;
    let w = sizes(spec).w;
    let Some(top) = hat.top else { return 0.0 };
    let n = f64::from(top.stitches.get());
    match top.kind {
        TopKind::Drawn => n * w / TAU,
        TopKind::Gathered => w * (n / PI).sqrt() / 2.0,
        TopKind::Ring => 0.0,
        TopKind::RowEnds => sizes(spec).h * (n / PI).sqrt() / 2.0,
    }
}

pub fn value(q: Quantity) -> f64 {
    q.row().usual_value()
}

pub fn near(a: f64, b: f64, tolerance: f64) -> bool {
    (a - b).abs() <= tolerance
}

/// Half a hundredth of a millimetre, twice: two lengths that were rounded on their own.
pub const TICK: f64 = 0.001;

pub fn counts(hat: &Hat) -> Vec<(Zone, RoundKind, u32)> {
    hat.rounds.iter().map(|r| (r.zone, r.kind, r.after.get())).collect()
}

/// Rows after which the stripes begin again; 1 for a band of one colour, or of rounds.
pub fn repeat(spec: &HatSpec) -> u32 {
    let of = |rows: Vec<(hatwright_sizing::Colour, u32)>| {
        if rows.iter().all(|(colour, _)| *colour == rows[0].0) { 1 } else { rows.iter().map(|(_, rows)| rows).sum() }
    };
    match (spec.style, spec.band_kind()) {
        (Style::Sideways, _) => of(spec.body_stripes.iter().map(|s| (s.colour, s.rounds.get())).collect()),
        (_, BandKind::Sideways) => of(spec.band.stripes.iter().map(|s: &RowStripe| (s.colour, s.rows.get())).collect()),
        _ => 1,
    }
}
