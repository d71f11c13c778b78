//! Every round as a ring, as the hat lies on a table with its crown up: where it narrows or widens, and where its parts begin.

use super::fabric::put;
use super::pen::{At, Pen};
use super::shape::{Anchor, Paint, Picture, Shape};
use super::strips::{Strip, strips};
use core::f64::consts::PI;
use hatwright_sizing::{BandKind, Colour, Hat, Style, Zone};
use hatwright_words::pictures as words;

/// The picture's box, and its wheel.
const SIDE: i32 = 400;
const CENTRE: f64 = 200.0;
const RADIUS: f64 = 176.0;
/// Of like rounds that follow one another, so many are drawn.
const ALIKE: usize = 6;
/// The most marks of single decreases or increases.
const MOST_MARKS: u32 = 1200;

/// All rounds as rings about the crown, the same distance apart, with a mark at each decrease or increase, a line where a part of the
/// hat ends, and an arrow where rounds begin. Of many like rounds a few are drawn. The box is always 400 × 420 units.
pub fn round_wheel(hat: &Hat) -> Picture {
    let rings = rings(hat);
    let rows: Vec<Colour> = match &hat.panel {
        Some(panel) => panel.rows.iter().map(|r| r.colour).collect(),
        None if hat.band == BandKind::Sideways => hat.band_rows.clone(),
        None => Vec::new(),
    };
    // Rows of a sideways band lie outside the rounds, as wide as some of them; those of a hat worked sideways reach the crown.
    let whole = hat.panel.is_some() || hat.style == Style::EarWarmer && rings.is_empty();
    let band = if rows.is_empty() { 0.0 } else { 3.0 };
    let free = if rings.is_empty() { 0.0 } else { 0.6 };
    let step = RADIUS / (rings.len() as f64 + band + free).max(1.0);
    let mut shapes = Vec::new();
    let edge = if whole { RADIUS } else { step * (rings.len() as f64 + free) };
    if !rows.is_empty() {
        wedges(&rows, if whole { RADIUS * 0.12 } else { edge }, RADIUS, &mut shapes);
    }
    let mut zones = Pen::new();
    if !rings.is_empty() {
        colours(&rings, edge, step, &mut shapes);
        let (mut lines, mut marks) = (Pen::new(), Pen::new());
        let all: u32 = rings.iter().map(|r| r.shaped).sum();
        for (i, ring) in rings.iter().enumerate() {
            let outer = edge - step * i as f64;
            circle(&mut lines, outer, false);
            if i > 0 && rings[i - 1].zone != ring.zone {
                circle(&mut zones, outer, false);
            }
            if all <= MOST_MARKS {
                shaped(ring, outer - step / 2.0, (step * 0.3).clamp(0.8, 4.0), &mut marks);
            }
        }
        put(&mut shapes, lines, "wheel-line");
        put(&mut shapes, marks, "wheel-mark");
    }
    circle(&mut zones, RADIUS, false);
    if band > 0.0 && !whole {
        circle(&mut zones, edge, false);
    }
    put(&mut shapes, zones, "wheel-zone");
    let mut start = Pen::new();
    start.polygon(&[
        At::new(CENTRE, CENTRE - RADIUS - 2.0),
        At::new(CENTRE - 6.0, CENTRE - RADIUS - 14.0),
        At::new(CENTRE + 6.0, CENTRE - RADIUS - 14.0),
    ]);
    put(&mut shapes, start, "wheel-start");
    let names = names(hat, &rings);
    let parts = if names.is_empty() { words::wheel_rows().to_owned() } else { words::wheel_parts(&names) };
    shapes.push(Shape::text(SIDE / 2, SIDE + 12, Anchor::Middle, parts.clone(), "chart-number"));
    let shaping = hat.rounds.iter().filter(|r| r.decreases.get() + r.increases.get() > 0).count();
    Picture {
        width: SIDE,
        height: SIDE + 20,
        title: words::wheel().to_owned(),
        description: words::wheel_about(hat.round_count().get(), shaping as u32, &parts),
        shapes,
    }
}

/// From the outer edge to the crown, few of many like ones.
fn rings(hat: &Hat) -> Vec<Strip> {
    if hat.panel.is_some() {
        return Vec::new();
    }
    let mut rings: Vec<Strip> = Vec::new();
    let mut alike = 0;
    for strip in strips(hat) {
        let same = rings.last().is_some_and(|r| (r.stitches, r.shaped, r.zone) == (strip.stitches, strip.shaped, strip.zone));
        alike = if same { alike + 1 } else { 0 };
        if alike < ALIKE {
            rings.push(strip);
        }
    }
    rings
}

/// Discs of the colours, from the outside in: each hides the middle of the one before.
fn colours(rings: &[Strip], edge: f64, step: f64, shapes: &mut Vec<Shape>) {
    let mut pens: Vec<(Colour, Pen)> = Vec::new();
    let mut i = 0;
    while i < rings.len() {
        let colour = rings[i].colour;
        let end = (i..rings.len()).find(|k| rings[*k].colour != colour).unwrap_or(rings.len());
        let known = pens.iter().position(|p| p.0 == colour).unwrap_or_else(|| {
            pens.push((colour, Pen::new()));
            pens.len() - 1
        });
        circle(&mut pens[known].1, edge - step * i as f64, false);
        if end < rings.len() {
            circle(&mut pens[known].1, edge - step * end as f64, true);
        }
        i = end;
    }
    shapes.extend(pens.into_iter().map(|(colour, pen)| Shape::path(pen.finish(), Paint::Yarn(colour))));
}

fn circle(pen: &mut Pen, radius: f64, clockwise: bool) {
    pen.ellipse(At::new(CENTRE, CENTRE), radius, radius, clockwise);
}

/// A place on a ring, a share of the way around from its beginning, which is uppermost.
fn at(radius: f64, share: f64) -> At {
    let (sin, cos) = libm::sincos(2.0 * PI * share);
    At::new(CENTRE + radius * sin, CENTRE - radius * cos)
}

fn wedges(rows: &[Colour], inner: f64, outer: f64, shapes: &mut Vec<Shape>) {
    let mut pens: Vec<(Colour, Pen)> = Vec::new();
    let all = rows.len() as f64;
    let mut i = 0;
    while i < rows.len() {
        let end = (i..rows.len()).find(|k| rows[*k] != rows[i]).unwrap_or(rows.len()).min(i + rows.len().div_ceil(4));
        let known = pens.iter().position(|p| p.0 == rows[i]).unwrap_or_else(|| {
            pens.push((rows[i], Pen::new()));
            pens.len() - 1
        });
        let (a, b) = (i as f64 / all, end as f64 / all);
        let pen = &mut pens[known].1;
        pen.go(at(inner, a));
        pen.line(at(outer, a));
        pen.arc(outer, outer, true, at(outer, b));
        pen.line(at(inner, b));
        pen.arc(inner, inner, false, at(inner, a));
        pen.close();
        i = end;
    }
    shapes.extend(pens.into_iter().map(|(colour, pen)| Shape::path(pen.finish(), Paint::Yarn(colour))));
    let mut lines = Pen::new();
    for row in (0..rows.len()).step_by(if rows.len() > 240 { 4 } else { 2 }) {
        let share = row as f64 / all;
        lines.go(at(inner, share));
        lines.line(at(outer, share));
    }
    put(shapes, lines, "wheel-line");
}

/// A dot at each decrease or increase: evenly around, after the round's lead.
fn shaped(ring: &Strip, radius: f64, size: f64, pen: &mut Pen) {
    let stitches = f64::from(ring.stitches.max(1));
    for k in 0..ring.shaped {
        let share = (f64::from(ring.lead) + 0.5) / stitches + f64::from(k) / f64::from(ring.shaped);
        pen.ellipse(at(radius, share % 1.0), size, size, false);
    }
}

/// The parts' names, from the outside in, under the wheel.
fn names(hat: &Hat, rings: &[Strip]) -> String {
    let sideways = (hat.band == BandKind::Sideways).then(words::band);
    let mut names: Vec<&str> = sideways.into_iter().collect();
    for ring in rings {
        let name = zone_name(ring.zone);
        if names.last() != Some(&name) {
            names.push(name);
        }
    }
    names.join(" \u{b7} ")
}

/// What a part of a hat is called.
pub(super) fn zone_name(zone: Zone) -> &'static str {
    match zone {
        Zone::Band => words::band(),
        Zone::Body => words::body(),
        Zone::Under => words::underside(),
        Zone::Crown => words::crown(),
        Zone::Tail => words::tail(),
        Zone::Brim => words::brim(),
    }
}
