//! Dimension lines: the depth as a tape over the fabric, as it is measured, and the girth under the edge.

use super::fabric::put;
use super::pen::{At, Pen};
use super::profile::Profile;
use super::shape::{Anchor, Shape};
use super::view::{Edge, SIN, Seen, View};
use super::{flaps, tassel};
use core::f64::consts::PI;
use hatwright_sizing::{Hat, Style};

/// How far the lines keep from the hat, in user units.
pub(super) const CLEAR: f64 = 15.0;
/// Half a tick.
pub(super) const TICK: f64 = 4.0;
/// From the lower front of the edge to the foot of the girth's label.
pub(super) const BELOW: f64 = 33.0;
/// From one label to the next below it.
pub(super) const LINE: f64 = 18.0;
/// Width of a letter of a label, generously.
pub(super) const LETTER: f64 = 7.8;

/// Turns at which rings are looked at, to find the outline.
const AROUND: u32 = 24;

/// What is lowest of the hat, in cm below its standing place on the page: the front of its edge, of a brim or of a flap, or the end of a tassel.
pub(super) fn lowest(hat: &Hat, profile: &Profile) -> f64 {
    let edge = profile.rim() * SIN;
    let brim = profile.edges.iter().take(profile.sits).map(|e| e.radius * SIN - e.height).fold(0.0, f64::max);
    edge.max(brim).max(flaps::hang(hat) + 0.8 * flaps::hang(hat).min(1.0)).max(tassel::below(hat, profile))
}

/// Draws both lines with their labels; the lines come first.
pub(super) fn draw(hat: &Hat, profile: &Profile, view: &View, depth: &str, under: &[&str], shapes: &mut Vec<Shape>) {
    let mut pen = Pen::new();
    let place = tape(&mut pen, hat, profile, view);
    let level = view.y + lowest(hat, profile) * view.unit + 13.0;
    let wide = profile.rim() * view.unit;
    let (left, right) = (view.x - wide, view.x + wide);
    pen.go(At::new(left, level));
    pen.line(At::new(right, level));
    for end in [left, right] {
        pen.go(At::new(end, level - TICK));
        pen.line(At::new(end, level + TICK));
    }
    put(shapes, pen, "dimension");

    let whole = |n: f64| libm::round(n) as i32;
    shapes.push(Shape::text(whole(place.x - 8.0), whole(place.y), Anchor::End, depth.to_owned(), "label"));
    // A hanging tail leaves no room on its side.
    let (x, anchor) = if profile.tip().tilt > 1.0 { (right, Anchor::End) } else { (view.x, Anchor::Middle) };
    for (i, text) in under.iter().enumerate() {
        let foot = level + 17.0 + LINE * i as f64;
        shapes.push(Shape::text(whole(x), whole(foot), anchor, (*text).to_owned(), "label"));
    }
}

/// From the crown's centre down the left, at an even distance from the outline; gives a place for the label.
fn tape(pen: &mut Pen, hat: &Hat, profile: &Profile, view: &View) -> At {
    let outline = match hat.style {
        Style::EarWarmer => band_outline(profile, view),
        Style::Stocking => tail_outline(profile, view),
        _ => left_outline(hat, profile, view),
    };
    let start = outline[0];
    let mut offset: Vec<At> = Vec::new();
    for (i, pair) in outline.windows(2).enumerate() {
        let (a, b) = (pair[0], pair[1]);
        let long = libm::hypot(b.x - a.x, b.y - a.y);
        if long < 0.2 {
            continue;
        }
        // Outward of the way down the left.
        let (nx, ny) = ((a.y - b.y) / long * CLEAR, (b.x - a.x) / long * CLEAR);
        if i == 0 {
            offset.push(At::new(a.x + nx, a.y + ny));
        }
        offset.push(At::new(f64::midpoint(a.x, b.x) + nx, f64::midpoint(a.y, b.y) + ny));
        if i + 2 == outline.len() {
            offset.push(At::new(b.x + nx, b.y + ny));
        }
    }
    let (Some(first), Some(last)) = (offset.first().copied(), offset.last().copied()) else { return start };
    // Ticks stand across the line's ends.
    pen.go(At::new(first.x, first.y - TICK));
    pen.line(At::new(first.x, first.y + TICK));
    pen.go(first);
    for i in 1..offset.len() {
        if i + 1 < offset.len() {
            pen.curve(offset[i], offset[i].toward(offset[i + 1], 0.5));
        } else {
            pen.line(offset[i]);
        }
    }
    pen.go(At::new(last.x - TICK, last.y));
    pen.line(At::new(last.x + TICK, last.y));
    // The label stands beside the lower third, where the line is farthest out.
    let highest = offset.iter().map(|o| o.y).fold(first.y, f64::min);
    let at = highest + (last.y - highest) * 0.62;
    let left = offset.iter().skip(offset.len() / 2);
    let out = left.min_by(|a, b| (a.y - at).abs().total_cmp(&(b.y - at).abs())).copied().unwrap_or(last);
    let least = offset.iter().map(|o| o.x).fold(out.x, f64::min);
    At::new(least, at)
}

/// Up the left side of a band.
fn band_outline(profile: &Profile, view: &View) -> Vec<At> {
    let x = view.x - profile.band * view.unit;
    vec![At::new(x, view.level(profile.band_top.max(profile.top()))), At::new(x, view.y)]
}

/// From the tip of a stocking cap along its outer side to the edge.
fn tail_outline(profile: &Profile, view: &View) -> Vec<At> {
    let mut places: Vec<At> =
        profile.edges.iter().rev().skip(1).map(|e| view.at(*e, Seen::of(0.0, 1.0, e.tilt).from())).collect();
    let wide = profile.rim() * view.unit;
    places.retain(|p| p.y < view.y - 2.0 || p.x > view.x);
    places.push(At::new(view.x - wide, view.level(profile.fold)));
    places.push(At::new(view.x - wide, view.y));
    let mut apart: Vec<At> = Vec::new();
    for place in places {
        if apart.last().is_none_or(|last| libm::hypot(last.x - place.x, last.y - place.y) > 6.0) {
            apart.push(place);
        }
    }
    let foot = At::new(view.x - wide, view.y);
    apart.retain(|p| p.y < foot.y - 6.0 || p.x > view.x);
    apart.push(foot);
    apart
}

/// The left half of what is seen of the hat without a brim, as a hull from its top down to the hat's edge.
fn left_outline(hat: &Hat, profile: &Profile, view: &View) -> Vec<At> {
    let mut rings: Vec<Edge> = profile.edges.iter().skip(profile.sits).filter(|e| e.tilt < PI / 3.0).copied().collect();
    if hat.style == Style::EarWarmer {
        rings.push(Edge::level(profile.band, profile.band_top));
    }
    if profile.fold > 0.0 {
        rings.push(Edge::level(profile.cuff.0, 0.0));
        rings.push(Edge::level(profile.cuff.1.max(profile.rim() * 0.99), profile.fold));
    } else {
        rings.push(Edge::level(profile.band, 0.0));
    }
    let foot = At::new(view.x - profile.rim() * view.unit, view.y);
    let mut top = rings.last().map_or(foot, |e| view.centre(*e));
    let mut points: Vec<At> = Vec::new();
    for ring in &rings {
        for k in 0..=AROUND {
            let at = view.at(*ring, -PI * f64::from(k) / f64::from(AROUND));
            if at.y < foot.y {
                points.push(at);
            }
            if at.y < top.y {
                top = at;
            }
        }
    }
    let centre = profile.tip();
    let crown = hat.top.is_some() && centre.tilt < PI / 3.0;
    if crown {
        let tip = view.centre(centre);
        // The tape begins over the crown's centre, or over the back of a flat top.
        top = At::new(tip.x, points.iter().filter(|p| (p.x - tip.x).abs() < view.unit).map(|p| p.y).fold(tip.y, f64::min));
    }
    points.retain(|p| p.x <= top.x + 0.01);
    points.push(top);
    points.push(foot);
    hull(points, top, foot)
}

/// The upper left hull from one place to another.
fn hull(mut points: Vec<At>, top: At, foot: At) -> Vec<At> {
    points.sort_by(|a, b| b.x.total_cmp(&a.x).then(a.y.total_cmp(&b.y)));
    let mut hull: Vec<At> = vec![top];
    for point in points {
        if point.x >= top.x - 0.01 && point.y >= top.y {
            continue;
        }
        while hull.len() > 1 {
            let (a, b) = (hull[hull.len() - 2], hull[hull.len() - 1]);
            let inward = (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x) >= 0.0;
            if !inward {
                break;
            }
            hull.pop();
        }
        hull.push(point);
    }
    // Past the leftmost place it comes straight down to the edge.
    while hull.last().is_some_and(|p| p.y > foot.y - 0.5) && hull.len() > 1 {
        hull.pop();
    }
    let left = hull.iter().map(|p| p.x).fold(foot.x, f64::min);
    let cut = hull.iter().position(|p| p.x <= left + 0.5).unwrap_or(hull.len() - 1);
    hull.truncate(cut + 1);
    hull.push(At::new(left.min(foot.x), foot.y));
    hull
}
