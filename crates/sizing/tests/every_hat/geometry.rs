//! Hats measured again from their stitch counts, against the targets of their styles: geometry, written here anew.

// A platform's own sine is a second opinion, and the last bit is no matter here.
#![allow(clippy::disallowed_methods)]

use core::f64::consts::{PI, TAU};
use hatwright_sizing::{Begun, Closing, Fabric, Hat, HatSpec, SideTop, Style, Swatch, TopKind, Zone};

/// Width of a stitch and height of a round, in cm.
pub fn cells(spec: &HatSpec) -> (f64, f64) {
    let Swatch::Counted { stitches, width, rounds, height } = spec.swatch else { panic!("{:?}", spec.swatch) };
    (width.cm() / stitches.value(), height.cm() / rounds.value())
}

/// What is measured, or wanted, of the fabric above the band: cm², cm.
#[derive(Clone, Copy, Debug)]
pub struct Fabrics {
    pub area: f64,
    pub arc: f64,
}

/// As the rounds are written: between its two edges a round's girth runs evenly, and inside the last is a disc, or what a bundle takes.
pub fn measured(spec: &HatSpec, hat: &Hat) -> Fabrics {
    let (w, h) = cells(spec);
    let body: Vec<u32> =
        hat.rounds.iter().filter(|r| !matches!(r.zone, Zone::Band | Zone::Brim)).map(|r| r.after.get()).collect();
    let start = if hat.begun == Begun::Crown { 0 } else { hat.stitches().get() };
    let below = core::iter::once(start).chain(body.iter().copied());
    let rounds: f64 = below.zip(&body).map(|(below, after)| f64::midpoint(f64::from(below), f64::from(*after)) * w * h).sum();
    let top = hat.top.expect("a crown has a top");
    let girth = f64::from(top.stitches.get()) * w;
    let (area, inside) = match top.kind {
        TopKind::Drawn => (girth * girth / TAU / 2.0, girth / TAU),
        TopKind::Gathered => (girth * top.bundle.cm() / 2.0, top.bundle.cm() / 2.0),
        TopKind::Ring | TopKind::RowEnds => (0.0, 0.0),
    };
    Fabrics { area: rounds + area, arc: body.len() as f64 * h + inside }
}

/// What the style asks for, over the arc that was made: whole rounds are judged by the arc, and stitches by the area.
pub fn target(spec: &HatSpec, hat: &Hat, made: f64) -> Fabrics {
    let (w, h) = cells(spec);
    let head = hat.head.girth.cm();
    let n = f64::from(hat.stitches().get()) * w;
    let depth = if spec.style == Style::EarFlap { 0.26 } else { 0.395 } * head;
    let arc = depth + hat.depth.fold.cm() - hat.depth.band.cm();
    let own = hat.band != hatwright_sizing::BandKind::Around;
    let widest = hat.rounds.iter().filter(|r| r.zone != Zone::Brim).map(|r| r.after.get()).max().unwrap_or(0);
    let wide = f64::from(widest) * w;
    let (arc, girth): (f64, Box<dyn Fn(f64) -> f64>) = match spec.style {
        Style::Slouch => {
            let arc = arc + spec.shape.slouch_longer.cm();
            let radius = wide / TAU;
            // The first round, of a hat begun at the crown the last two, are no wider than the band.
            let narrow = if widest == hat.stitches().get() {
                0.0
            } else if own {
                1.5 * h
            } else {
                0.5 * h
            };
            let edge = ((arc - narrow - radius) / (PI / 2.0 - 1.0)).min(radius / 3.0).max(0.0);
            let flat = radius - edge;
            let end = arc - narrow;
            (
                arc,
                Box::new(move |s| {
                    if s > end {
                        n
                    } else if s < flat {
                        TAU * s
                    } else {
                        TAU * (flat + edge * ((s - flat) / edge).min(PI / 2.0).sin())
                    }
                }),
            )
        }
        Style::Tam => {
            let (across, inner) = (spec.shape.tam_across.cm(), n / TAU);
            let arc = across - inner + if own { h } else { 0.0 };
            (arc, Box::new(move |s| if s < across / 2.0 { TAU * s } else { (TAU * (across - s)).max(n) }))
        }
        Style::Stocking => {
            let narrow = (f64::from(spec.shape.tail_stitches.get()) * w).min(n);
            let (tail, taper) = (spec.shape.tail.cm(), spec.shape.taper.cm().min(spec.shape.tail.cm()));
            let crown = (head.max(n) / 4.0).min(arc);
            // A tip that is drawn up, or begun in a ring, is a small disc, at most to where the cone begins.
            let last = hat.top.map_or(0, |top| top.stitches.get());
            let tip = if hat.top.is_some_and(|top| top.kind == TopKind::Gathered) { 0.0 } else { f64::from(last) * w / TAU };
            let tip = if hat.begun == Begun::Crown && narrow > 16.5 * w { narrow / TAU } else { tip };
            let (from, to) = ((tail - taper).max(tip), tail + crown);
            let flat = if hat.top.is_some_and(|top| top.kind == TopKind::Gathered) { f64::INFINITY } else { TAU };
            (arc + tail, Box::new(move |s| (narrow + (n - narrow) * ((s - from) / (to - from)).clamp(0.0, 1.0)).min(flat * s)))
        }
        _ => {
            let quarter = head.max(n) / 4.0;
            let dome = quarter.min(arc).max(n / 4.0);
            let radius = n / TAU;
            let edge = (arc - radius) / (PI / 2.0 - 1.0);
            let disc = arc < n / 4.0;
            (
                arc,
                Box::new(move |s| {
                    if disc {
                        let flat = radius - edge;
                        if s < flat { TAU * s } else { TAU * (flat + edge * ((s - flat) / edge).min(PI / 2.0).sin()) }
                    } else {
                        n * (PI / 2.0 * (s / dome).min(1.0)).sin()
                    }
                }),
            )
        }
    };
    // What is gathered is no narrower than that.
    let gathered = match (hat.begun, spec.style, spec.closing) {
        (Begun::Band, Style::Fitted | Style::Slouch | Style::EarFlap, Closing::Gathered(many)) => {
            (f64::from(many.get()) * w).min(wide)
        }
        _ => 0.0,
    };
    let gathers = hat.top.is_some_and(|top| top.kind == TopKind::Gathered);
    let steps = 4000;
    // What a bundle takes up of the arc is no fabric of its own.
    let from = if gathers { hat.top.map_or(0.0, |top| top.bundle.cm() / 2.0) } else { 0.0 };
    let ds = (arc - from) / f64::from(steps);
    let area: f64 = (0..steps).map(|i| girth(from + (f64::from(i) + 0.5) * ds).max(gathered) * ds).sum();
    let inside = if gathers { hat.top.map_or(0.0, |top| f64::from(top.stitches.get()) * w * top.bundle.cm() / 2.0) } else { 0.0 };
    // Rounds that the arc has more or less of are at its wide end.
    Fabrics { area: area + inside + (made - arc) * n, arc }
}

/// Half a round, or 2 %: a tam's disc and its underside come in whole rounds each.
pub fn arc_allowed(spec: &HatSpec, target: Fabrics) -> f64 {
    let sections = if spec.style == Style::Tam { 2.0 } else { 1.0 };
    (sections * cells(spec).1 / 2.0 + 1e-6).max(0.02 * target.arc)
}

/// The least area that a miss of half a round, or of one stitch all the way, is.
pub fn allowed(spec: &HatSpec, hat: &Hat, target: Fabrics) -> f64 {
    let (w, h) = cells(spec);
    let widest = hat.rounds.iter().map(|r| r.after.get()).max().unwrap_or(0);
    (0.02 * target.area).max(f64::from(widest) * w * h / 2.0).max(w * target.arc)
}

/// Area of a hat worked sideways, and of the rotation body that it is to be.
pub fn sideways(spec: &HatSpec, hat: &Hat) -> (f64, f64) {
    let (w, h) = cells(spec);
    let panel = hat.panel.as_ref().expect("a panel");
    let cells: u32 = panel.rows.iter().map(|row| row.stitches.get()).sum();
    let girth = panel.rows.len() as f64 * h;
    let head = hat.head.girth.cm();
    let arc = 0.395 * head + hat.depth.fold.cm();
    let top = hat.top.expect("row ends").bundle.cm() / 2.0;
    let steps = 4000;
    let ds = arc / f64::from(steps);
    let dome = head.max(girth) / 4.0;
    let wanted = |s: f64| match panel.top {
        SideTop::Gathered => {
            if s < top {
                0.0
            } else {
                girth
            }
        }
        SideTop::ShortRows => girth * (PI / 2.0 * (s / dome).min(1.0)).sin(),
    };
    (f64::from(cells) * w * h, (0..steps).map(|i| wanted((f64::from(i) + 0.5) * ds) * ds).sum())
}

/// Whether a hat's fabric is one that rounds are made of: a sideways rib has its own measures.
pub fn in_rounds(spec: &HatSpec) -> bool {
    spec.style.is_round() && spec.fabric != Fabric::SlipRib
}
