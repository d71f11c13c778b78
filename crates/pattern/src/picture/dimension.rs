//! Dimension lines: the depth as a tape over the fabric, as it is measured, and the girth under the edge.

use super::fabric::put;
use super::pen::{At, Pen};
use super::profile::Profile;
use super::shape::{Anchor, Shape};
use super::view::{COS, SIN, View};
use core::f64::consts::FRAC_PI_2;

/// How far the lines keep from the hat, in user units.
pub(super) const CLEAR: f64 = 15.0;
/// Half a tick.
pub(super) const TICK: f64 = 4.0;
/// From the lower front of the edge to the foot of the girth's label.
pub(super) const BELOW: f64 = 33.0;
/// Width of a letter of a label, generously.
pub(super) const LETTER: f64 = 7.8;

/// Columns in which the outline of the top is found.
const COLUMNS: u32 = 24;

/// Draws both lines with their labels.
pub(super) fn draw(profile: &Profile, view: &View, depth: &str, girth: &str, shapes: &mut Vec<Shape>) {
    let wide = profile.widest();
    let side = view.x - wide * view.unit - CLEAR;
    let mut pen = Pen::new();
    tape(&mut pen, profile, view);
    pen.go(At::new(side - TICK, view.y));
    pen.line(At::new(side + TICK, view.y));

    let level = view.y + wide * view.unit * SIN + 13.0;
    let (left, right) = (view.x - wide * view.unit, view.x + wide * view.unit);
    pen.go(At::new(left, level));
    pen.line(At::new(right, level));
    for end in [left, right] {
        pen.go(At::new(end, level - TICK));
        pen.line(At::new(end, level + TICK));
    }
    put(shapes, pen, "dimension");

    let middle = f64::midpoint(view.y, view.level(profile.top()));
    let depth_at = (libm::round(side - 8.0) as i32, libm::round(middle + view.unit * wide * 0.2) as i32);
    shapes.push(Shape::text(depth_at.0, depth_at.1, Anchor::End, depth.to_owned(), "label"));
    let x = libm::round(view.x) as i32;
    shapes.push(Shape::text(x, libm::round(level + 17.0) as i32, Anchor::Middle, girth.to_owned(), "label"));
}

/// From the crown's centre down the left, at an even distance from the outline.
fn tape(pen: &mut Pen, profile: &Profile, view: &View) {
    // As wide as the fold is, where there is one: the tape lies over it.
    let body = profile.edges.iter().map(|e| e.radius).fold(0.01, f64::max);
    let scale = profile.widest() / body;
    // The outline of the top is the highest of all rings, column by column.
    let column = |k: u32| {
        let aside = body * libm::sin(f64::from(k) / f64::from(COLUMNS) * FRAC_PI_2) * 0.999;
        let rings = profile.edges.iter().filter(|e| e.radius > aside || k == 0);
        let top = rings.map(|e| e.height * COS + libm::sqrt(e.radius * e.radius - aside * aside) * SIN).fold(0.0, f64::max);
        At::new(view.x - aside * scale * view.unit, view.y - top * view.unit)
    };
    let mut outline: Vec<At> = (0..=COLUMNS).map(column).collect();
    outline.push(At::new(view.x - profile.widest() * view.unit, view.y));
    for _ in 0..2 {
        let before = outline.clone();
        for (to, around) in outline[1..].iter_mut().zip(before.windows(3)) {
            *to = around[0].toward(around[2], 0.5).toward(around[1], 0.5);
        }
    }

    let start = At::new(outline[0].x, outline[0].y - CLEAR);
    pen.go(At::new(start.x, start.y - TICK));
    pen.line(At::new(start.x, start.y + TICK));
    pen.go(start);
    for (i, pair) in outline.windows(2).enumerate() {
        let (a, b) = (pair[0], pair[1]);
        let long = libm::hypot(b.x - a.x, b.y - a.y);
        if long < 0.5 {
            continue;
        }
        // Outward of the way down the left.
        let (nx, ny) = ((a.y - b.y) / long * CLEAR, (b.x - a.x) / long * CLEAR);
        let middle = a.toward(b, 0.5);
        let to = At::new(middle.x + nx, middle.y + ny);
        if i == 0 {
            pen.line(to);
        } else {
            pen.curve(At::new(a.x + nx, a.y + ny), to);
        }
    }
    let end = outline[outline.len() - 1];
    pen.line(At::new(end.x - CLEAR, end.y));
}
