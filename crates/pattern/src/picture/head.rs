//! The head form under the hat: plain, faceless, with ears at their measured heights so that the coverage can be seen.

use super::fabric::put;
use super::pen::{At, Pen};
use super::profile::{HEAD, Profile, head_radius};
use super::shape::Shape;
use super::view::{COS, SIN, View};
use core::f64::consts::PI;
use hatwright_sizing::{Hat, Style};

/// Heights below the vertex as shares of the girth. An ear reaches from 0.26 to 0.367 of the girth along the scalp (the hat's
/// coverages), which on a sphere of that girth is this far below its top; jaw, chin and neck are a drawing.
const EAR: (f64, f64) = (0.169, 0.276);
const JAW: f64 = 0.38;
const CHIN: f64 = 0.485;
/// The form ends here.
pub(super) const FOOT: f64 = 0.565;
/// How far an ear stands out from the form.
pub(super) const EAR_OUT: f64 = 0.022;

/// Paints the form from the hat's edge down; under an ear warmer, the whole of it.
pub(super) fn draw(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    let c = profile.head;
    let vertex = profile.vertex;
    let at = |side: f64, wide: f64, below: f64| {
        At::new(view.x + side * wide * c * view.unit, view.level(0.0) + (below * c - vertex) * COS * view.unit)
    };
    let edge = (vertex / c).max(0.1);
    let own = profile.edges.get(profile.sits).map_or(profile.band, |e| e.radius);
    let half = (HEAD * c).min(own.min(profile.band) * 0.985) / c;
    if hat.style == Style::EarWarmer {
        hair(profile, view, half * c, shapes);
    }

    let (mut ears, mut folds) = (Pen::new(), Pen::new());
    let top = EAR.0.max(edge - 0.012);
    if top < EAR.1 - 0.01 && hat.flaps.is_none() {
        for side in [-1.0, 1.0] {
            ears.go(at(side, half * 0.9, top));
            for k in 0..=14 {
                let t = f64::from(k) / 14.0;
                let below = top + (EAR.1 - top) * t;
                let down = (below - EAR.0) / (EAR.1 - EAR.0);
                let base = half - 0.008 * down * down;
                ears.line(at(side, base + EAR_OUT * ear(down, (below - top) / 0.03), below));
            }
            ears.curve(at(side, half - 0.004, EAR.1 + 0.008), at(side, half * 0.86, EAR.1 - 0.002));
            ears.close();
            if top < EAR.0 + 0.02 {
                folds.go(at(side, half + EAR_OUT * 0.2, EAR.0 + 0.028));
                folds.curve(at(side, half + EAR_OUT * 0.95, EAR.0 + 0.026), at(side, half + EAR_OUT * 0.3, EAR.0 + 0.075));
            }
        }
    }
    put(shapes, ears, "ear");

    let start = (edge - 0.02).min(JAW - 0.03);
    let mut form = Pen::new();
    form.go(at(-1.0, half, start));
    let cheek = start.max(0.2) + 0.55 * (JAW - start.max(0.2));
    form.curve(at(-1.0, half * 1.005, cheek), at(-1.0, half * 0.80, JAW));
    form.curve(at(-1.0, half * 0.64, 0.452), at(-1.0, 0.062, CHIN - 0.014));
    form.curve(at(-1.0, 0.058, 0.525), at(-1.0, 0.074, FOOT - 0.012));
    form.curve(at(-1.0, 0.078, FOOT), at(-1.0, 0.066, FOOT));
    form.line(at(1.0, 0.066, FOOT));
    form.curve(at(1.0, 0.078, FOOT), at(1.0, 0.074, FOOT - 0.012));
    form.curve(at(1.0, 0.058, 0.525), at(1.0, 0.062, CHIN - 0.014));
    form.curve(at(1.0, half * 0.64, 0.452), at(1.0, half * 0.80, JAW));
    form.curve(at(1.0, half * 1.005, cheek), at(1.0, half, start));
    form.close();
    put(shapes, form, "head");
    put(shapes, folds, "ear-line");

    // Under the chin, and under the hat's edge.
    let mut shadow = Pen::new();
    shadow.go(at(-1.0, 0.062, CHIN - 0.014));
    shadow.curve(at(0.0, 0.0, CHIN + 0.024), at(1.0, 0.062, CHIN - 0.014));
    shadow.curve(at(0.0, 0.0, CHIN + 0.062), at(-1.0, 0.062, CHIN - 0.014));
    shadow.close();
    let rx = half * c * view.unit;
    let brim = profile.edges.first().filter(|_| profile.sits > 0).map_or(0.0, |e| (e.radius - own) * SIN - e.height * COS);
    let drop = profile.rim() * SIN * view.unit + (brim * view.unit).max(0.0);
    for more in [0.014, 0.03] {
        shadow.go(at(-1.0, half, edge));
        shadow.arc(rx, drop + more * c * view.unit, false, at(1.0, half, edge));
        shadow.close();
    }
    put(shapes, shadow, "head-shadow");
}

/// The free crown of the head, with its hair combed from a parting.
fn hair(profile: &Profile, view: &View, half: f64, shapes: &mut Vec<Shape>) {
    let (vertex, wide) = (profile.vertex, profile.head / (2.0 * PI));
    let foot = profile.band_top.max(profile.top()) * 0.4;
    let at = |share: f64, height: f64| {
        let radius = head_radius(profile.head, vertex, height) * half / wide;
        At::new(view.x + share * radius * view.unit, view.level(height))
    };
    let steps = 16;
    let mut form = Pen::new();
    let height = |k: i32| {
        let share = f64::from(k) / f64::from(steps);
        foot + (vertex - foot) * libm::sin(share * PI / 2.0)
    };
    form.go(at(-1.0, foot));
    (1..=steps).for_each(|k| form.line(at(-1.0, height(k))));
    (0..steps).rev().for_each(|k| form.line(at(1.0, height(k))));
    form.close();
    put(shapes, form, "hair");
    let mut strands = Pen::new();
    for k in -4..=4 {
        let share = f64::from(k) / 5.0;
        strands.go(at(share, foot));
        strands.curve(at(share * 1.02, f64::midpoint(foot, vertex)), at(share * 0.6 + 0.06, vertex - wide * 0.03));
    }
    put(shapes, strands, "hair-line");
}

/// How far an ear stands out, so much of the way down: widest a third down, narrow at the lobe, and pressed close where the hat's
/// edge lies on it.
fn ear(down: f64, under_edge: f64) -> f64 {
    let down = down.clamp(0.0, 1.0);
    let round = if down < 0.35 { 1.0 - down / 0.35 } else { (down - 0.35) / 0.65 };
    let shape = libm::sqrt((1.0 - round * round * if down < 0.35 { 0.8 } else { 0.88 }).max(0.0));
    let pressed = under_edge.clamp(0.0, 1.0);
    shape * (0.3 + 0.7 * pressed * (2.0 - pressed))
}
