//! The rounds above the band, in their colours.

use super::fabric;
use super::pen::Pen;
use super::profile::{Cone, Profile, stripes};
use super::shape::{Paint, Shape};
use super::view::View;
use core::f64::consts::PI;
use hatwright_sizing::{Colour, Hat};

/// Longest side of the cones that the outline is drawn with, in user units.
const SMOOTHNESS: f64 = 5.0;

/// Paints the body: colours first, then the fabric's relief, then the light on the whole.
pub(super) fn draw(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    let step = SMOOTHNESS / view.unit;
    let whole = profile.cones(0, profile.edges.len() - 1, step);
    let mut outline = Pen::new();
    trace(&mut outline, view, &whole, false);
    let outline = outline.finish();

    // The commonest colour lies under everything, so that no background shines through between two colours.
    let stripes = stripes(hat, profile);
    let mut colours: Vec<(Colour, usize)> = Vec::new();
    for (colour, from, to) in &stripes {
        match colours.iter_mut().find(|c| c.0 == *colour) {
            Some(known) => known.1 += to - from,
            None => colours.push((*colour, to - from)),
        }
    }
    let ground = colours.iter().max_by_key(|c| c.1).map_or(Colour(0), |c| c.0);
    shapes.push(Shape::path(outline.clone(), Paint::Yarn(ground)));
    for (colour, _) in colours.iter().filter(|c| c.0 != ground) {
        let mut pen = Pen::new();
        for (_, from, to) in stripes.iter().filter(|s| s.0 == *colour) {
            trace(&mut pen, view, &profile.cones(*from, *to, step), true);
        }
        shapes.push(Shape::path(pen.finish(), Paint::Yarn(*colour)));
    }
    fabric::rounds(hat, profile, view, shapes);
    shapes.push(Shape::path(outline, Paint::Gradient("hat-shade")));
}

/// Outlines what is seen of a piece of surface; `hollow` leaves out what lies above it.
fn trace(pen: &mut Pen, view: &View, cones: &[Cone], hollow: bool) {
    let mut rest = cones;
    while let Some(first) = rest.first() {
        let around = first.reach >= PI;
        let same = rest.iter().take_while(|c| (c.reach >= PI) == around).count();
        let (run, later) = rest.split_at(same);
        let last = run[same - 1];
        if around {
            let centre = |height: f64| super::pen::At::new(view.x, view.level(height));
            let (rx, ry) = view.ring(first.lower.radius);
            pen.ellipse(centre(first.lower.height), rx, ry, false);
            let (rx, ry) = view.ring(last.upper.radius);
            if hollow && rx >= 0.1 {
                pen.ellipse(centre(last.upper.height), rx, ry, true);
            }
        } else {
            side(pen, view, run, hollow);
        }
        rest = later;
    }
}

/// Cones of which only the front is seen.
fn side(pen: &mut Pen, view: &View, run: &[Cone], hollow: bool) {
    let (Some(first), Some(last)) = (run.first(), run.last()) else { return };
    pen.go(view.at(first.lower.radius, -first.reach, first.lower.height));
    view.sweep(pen, first.lower.radius, first.lower.height, -first.reach, first.reach);
    for cone in run {
        pen.line(view.at(cone.lower.radius, cone.reach, cone.lower.height));
        pen.line(view.at(cone.upper.radius, cone.reach, cone.upper.height));
    }
    // An outline reaches across under what lies above it: two pieces that only touch would let a hair of background through.
    if hollow {
        view.sweep(pen, last.upper.radius, last.upper.height, last.reach, -last.reach);
    }
    for cone in run.iter().rev() {
        pen.line(view.at(cone.upper.radius, -cone.reach, cone.upper.height));
        pen.line(view.at(cone.lower.radius, -cone.reach, cone.lower.height));
    }
    pen.close();
}
