//! The hats that every property is asked of, and their measures worked out anew from the spec.

use hatwright_sizing::{BandKind, Begun, Coverage, Hat, HatSpec, Quantity, Round, RoundKind, RowStripe, Style, Zone, head_size};
pub use hatwright_tests::practice::{Sizes, sizes};
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
