//! How the fabric of each style falls: a tam's disc, a slouch's lean, a stocking cap's hanging tail.

use super::profile::{Profile, rise, round_off};
use super::strips::Strip;
use super::view::Edge;
use core::f64::consts::{FRAC_PI_2, PI};
use core::ops::Range;
use hatwright_sizing::{Style, Zone};

/// How much of a flat tam's overhang stays when the head lifts its middle.
const SPREAD: f64 = 0.9;
/// How far a tam leans.
const TAM_LEAN: f64 = 0.13;
/// How far the top of a slouch leans.
const SLOUCH_LEAN: f64 = 0.55;
/// How much of its height it loses in folds.
const SAG: f64 = 0.12;
/// The tip of a long tail hangs so far below the head's vertex, as a share of the head's girth.
const HANGS: f64 = 0.50;
/// Of a tail that is cut short, so much of its end is shown, as a share of the head's girth.
const END: f64 = 0.09;
/// The gap in it, likewise.
const GAP: f64 = 0.022;

/// A disc that lies on the head, its rim hanging over, its underside coming back to the band.
pub(super) fn tam(body: &[Strip], radii: &[f64], arcs: &[f64], band_top: f64) -> Vec<Edge> {
    let band = body.iter().take_while(|s| s.zone == Zone::Band || s.zone == Zone::Body).count();
    let rim = body.iter().rposition(|s| s.zone == Zone::Under).map_or(band, |i| i + 1);
    let foot = band_top + arcs[0] - arcs[band];
    let (within, full) = (radii[band], radii[rim]);
    let (under, disc) = (arcs[band] - arcs[rim], arcs[rim]);
    let wide = within + (full - within).max(0.0) * SPREAD;
    let lifted = foot + rise(under, wide - within);
    let crest = lifted + rise(disc * 0.985, wide);
    let mut edges: Vec<Edge> = (0..band).map(|i| Edge::level(radii[i], band_top + arcs[0] - arcs[i])).collect();
    for i in band..=rim {
        let share = if under > 0.0 { (arcs[band] - arcs[i]) / under } else { 1.0 };
        let bulge = libm::sin(share * PI) * (lifted - foot) * 0.12;
        edges.push(Edge::level(within + (wide - within) * share, foot + (lifted - foot) * share - bulge));
    }
    for radius in radii.iter().skip(rim + 1) {
        let radius = radius * wide / full.max(0.1);
        let share = (radius / wide).min(1.0);
        edges.push(Edge::level(radius, lifted + (crest - lifted) * (1.0 - share * share)));
    }
    round_off(&mut edges[band..]);
    for edge in edges.iter_mut().skip(band) {
        let share = ((edge.height - foot) / (lifted - foot).max(0.1)).clamp(0.0, 1.0);
        edge.tilt = TAM_LEAN * share;
        edge.x = libm::sin(TAM_LEAN) * (edge.height - foot).max(0.0);
    }
    edges
}

/// Bends the axis of a standing hat as its style falls.
pub(super) fn lean(style: Style, profile: &mut Profile) {
    match style {
        Style::Slouch => slouch(profile),
        Style::Stocking => tail(profile),
        _ => {}
    }
}

/// The runs in which edges are painted.
pub(super) fn parts(style: Style, profile: &Profile) -> Vec<Range<usize>> {
    let last = profile.edges.len().saturating_sub(1);
    let mut cuts = vec![0];
    if profile.sits > 0 {
        cuts.push(profile.sits);
    }
    if style == Style::Tam {
        cuts.extend(profile.strips.iter().position(|s| s.zone == Zone::Under));
        cuts.extend(profile.strips.iter().rposition(|s| s.zone == Zone::Under).map(|i| i + 1));
    }
    for turn in [0.7, 2.3] {
        cuts.extend(profile.edges.iter().position(|e| e.tilt > turn).filter(|_| style == Style::Stocking));
    }
    let gap = profile.strips.iter().position(|s| s.gap);
    cuts.extend(gap);
    cuts.extend(gap.map(|i| i + 1));
    cuts.push(last);
    cuts.sort_unstable();
    cuts.dedup();
    cuts.windows(2).map(|c| c[0]..c[1]).filter(|part| gap != Some(part.start)).collect()
}

/// Bends the axis from one edge on; `curve` gives the bend in a centimetre, from the ring there and how far the axis leans already.
fn bend(edges: &mut [Edge], from: usize, curve: impl Fn(Edge) -> f64) {
    let straight = edges.to_vec();
    for i in from.max(1)..edges.len() {
        let along = straight[i].height - straight[i - 1].height;
        let before = edges[i - 1];
        let tilt = before.tilt + curve(Edge { radius: f64::midpoint(straight[i].radius, before.radius), ..before }) * along;
        let (sin, cos) = libm::sincos(f64::midpoint(tilt, before.tilt));
        edges[i] = Edge { radius: straight[i].radius, x: before.x + along * sin, height: before.height + along * cos, tilt };
    }
}

/// The soft top of a slouch sags a little and falls over to one side, most where nothing holds it.
fn slouch(profile: &mut Profile) {
    let foot = profile.edges.first().map_or(0.0, |e| e.height) + 0.02 * profile.head;
    let Some(from) = profile.edges.iter().position(|e| e.height > foot) else { return };
    for _ in 0..2 {
        round_off(&mut profile.edges[from..]);
    }
    let long = (profile.top() - foot).max(0.5);
    for edge in &mut profile.edges[from..] {
        let up = (edge.height - foot) / long;
        edge.height = foot + long * up * (1.0 - SAG * up);
        // What is lost in height goes into folds, and out.
        edge.radius *= 1.0 + 0.05 * libm::sin(up.clamp(0.0, 1.0) * PI);
    }
    let long = long * (1.0 - SAG);
    bend(&mut profile.edges, from, |e| SLOUCH_LEAN * 1.7 * libm::sqrt(((e.height - foot) / long).clamp(0.05, 1.0)) / long);
}

/// A cone leans over once it is past the head, as tightly as its width allows, and hangs; what hangs too low is left out.
fn tail(profile: &mut Profile) {
    let (head, vertex) = (profile.head, profile.vertex);
    let top = profile.top();
    let start = vertex * 0.86;
    let free = top - start;
    let Some(from) = profile.edges.iter().position(|e| e.height > start) else { return };
    let wide = profile.edges[from].radius;
    let turn = PI * (free / (2.6 * wide)).clamp(0.0, 1.0);
    bend(&mut profile.edges, from, |e| {
        let left = turn - e.tilt;
        if left <= 1e-6 { 0.0 } else { (1.0 / (e.radius * 1.06 + 0.01 * head)).min(left * 1.5) }
    });
    let floor = vertex - HANGS * head;
    cut(profile, floor);
}

/// Leaves out the middle of a tail that hangs below the floor.
fn cut(profile: &mut Profile, floor: f64) {
    let head = profile.head;
    let tip = profile.tip();
    if tip.height >= floor || tip.tilt < FRAC_PI_2 {
        return;
    }
    let strips = profile.strips.len();
    // So much of the end is shown, hanging to the floor, under the gap.
    let end = profile.edges.iter().position(|e| e.tilt > FRAC_PI_2 && e.height < tip.height + END * head);
    let above = floor + (END + GAP) * head;
    let begin = profile.edges.iter().position(|e| e.tilt > FRAC_PI_2 && e.height < above);
    let (Some(begin), Some(end)) = (begin, end) else { return };
    if begin < 2 || end <= begin + 1 || end >= strips {
        return;
    }
    let lift = floor - tip.height;
    let x = profile.edges[begin].x;
    profile.left_out = profile.edges[begin].height - profile.edges[end].height;
    let gap = Strip { gap: true, ..profile.strips[begin] };
    profile.strips.splice(begin..end, [gap]);
    let mut rest = profile.edges.split_off(end);
    for edge in &mut rest {
        edge.height += lift;
        edge.x = x;
    }
    profile.edges.truncate(begin + 1);
    profile.edges.append(&mut rest);
}
