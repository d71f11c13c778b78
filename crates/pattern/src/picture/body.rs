//! The rounds of a hat, in their colours: part after part, so that fabric that hangs over other fabric hides it.

use super::fabric::{self, Texture};
use super::pen::{At, Pen};
use super::profile::{Cone, Profile, stripes};
use super::shape::{Paint, Shape};
use super::view::{Edge, View};
use core::f64::consts::{FRAC_PI_2, PI};
use core::ops::Range;
use hatwright_sizing::{Colour, Hat, Style, Zone};

/// Longest side of the cones that the outline is drawn with, in user units.
const SMOOTHNESS: f64 = 5.0;

/// Paints a part: colours first, then the fabric's relief, then the light on the whole.
pub(super) fn draw(
    hat: &Hat,
    texture: Option<Texture>,
    profile: &Profile,
    part: &Range<usize>,
    view: &View,
    shapes: &mut Vec<Shape>,
) {
    let step = SMOOTHNESS / view.unit;
    // What bends reaches a round further, under the part that follows, so that no background shines through between them.
    let more = usize::from(hat.style == Style::Stocking && profile.parts.iter().any(|p| p.start == part.end));
    let whole = profile.cones(part.start, part.end + more, step);
    if whole.is_empty() {
        return;
    }
    let mut outline = Pen::new();
    // An open top shows the head, not its own far side.
    trace(&mut outline, view, &whole, hat.top.is_none());
    let outline = outline.finish();

    // The commonest colour lies under everything, so that no background shines through between two colours.
    let stripes = stripes(profile, part);
    let ground = ground(&stripes);
    shapes.push(Shape::path(outline.clone(), Paint::Yarn(ground.0)));
    for colour in &ground.1 {
        let mut pen = Pen::new();
        for (_, from, to) in stripes.iter().filter(|s| s.0 == *colour) {
            trace(&mut pen, view, &profile.cones(*from, *to, step), true);
        }
        if !pen.is_empty() {
            shapes.push(Shape::path(pen.finish(), Paint::Yarn(*colour)));
        }
    }
    let Some(texture) = texture else { return };
    fabric::rounds(hat, texture, profile, part, view, shapes);
    shade(hat, profile, part, &whole, outline, view, shapes);
}

/// The colour that most of the stripes have, and the others.
fn ground(stripes: &[(Colour, usize, usize)]) -> (Colour, Vec<Colour>) {
    let mut colours: Vec<(Colour, usize)> = Vec::new();
    for (colour, from, to) in stripes {
        match colours.iter_mut().find(|c| c.0 == *colour) {
            Some(known) => known.1 += to - from,
            None => colours.push((*colour, to - from)),
        }
    }
    let ground = colours.iter().max_by_key(|c| c.1).map_or(Colour(0), |c| c.0);
    (ground, colours.into_iter().map(|c| c.0).filter(|c| *c != ground).collect())
}

/// Light from the upper left: one gradient over what stands, strips along what bends.
fn shade(
    hat: &Hat,
    profile: &Profile,
    part: &Range<usize>,
    cones: &[Cone],
    outline: String,
    view: &View,
    shapes: &mut Vec<Shape>,
) {
    let zone = profile.strips.get(part.start).map(|s| s.zone);
    if zone == Some(Zone::Under) {
        shapes.push(Shape::path(outline, Paint::Class("underside")));
    } else if zone == Some(Zone::Brim) {
        shapes.push(Shape::path(outline, Paint::Gradient("brim-shade")));
    } else if hat.style == Style::Stocking {
        for half in [0.5, 0.32, 0.16] {
            let mut light = Pen::new();
            along(&mut light, cones, view, -half, half);
            fabric::put(shapes, light, "tube-light");
        }
        for from in [0.7, 0.92, 1.14, 1.36, 1.58, 1.8] {
            let mut dark = Pen::new();
            along(&mut dark, cones, view, from, PI);
            fabric::put(shapes, dark, "tube-shade");
        }
    } else {
        shapes.push(Shape::path(outline, Paint::Gradient("hat-shade")));
    }
}

/// A strip along the surface, between two turns counted from the side that faces the light, away from it.
fn along(pen: &mut Pen, cones: &[Cone], view: &View, from: f64, to: f64) {
    let edges = cones.iter().map(|c| (c.lower, c)).chain(cones.last().map(|c| (c.upper, c)));
    let turns = |edge: Edge, cone: &Cone| {
        let (lean, upright) = libm::sincos(edge.tilt);
        let side = -0.62 * upright - 0.5 * lean;
        let bright = libm::atan2(side, 0.6);
        // Away from the light is to the right on the page.
        let away = if side <= 0.0 { 1.0 } else { -1.0 };
        let seen = |turn: f64| turn.clamp(cone.seen.from().max(-FRAC_PI_2 * 1.2), cone.seen.to().min(FRAC_PI_2 * 1.2));
        (seen(bright + away * from), seen(bright + away * to))
    };
    let both: Vec<(At, At)> = edges
        .map(|(edge, cone)| {
            let (a, b) = turns(edge, cone);
            (view.at(edge, a), view.at(edge, b))
        })
        .collect();
    let mut corners: Vec<At> = both.iter().map(|p| p.0).collect();
    corners.extend(both.iter().rev().map(|p| p.1));
    pen.polygon(&corners);
}

/// Outlines what is seen of a piece of surface; `hollow` leaves out what lies above it.
pub(super) fn trace(pen: &mut Pen, view: &View, cones: &[Cone], hollow: bool) {
    let mut rest = cones;
    while let Some(first) = rest.first() {
        let kind = |c: &Cone| (c.seen.around(), c.seen.reach <= 0.0);
        let same = rest.iter().take_while(|c| kind(c) == kind(first)).count();
        let (run, later) = rest.split_at(same);
        rest = later;
        let last = run[same - 1];
        match kind(first) {
            (true, _) => {
                view.ring(pen, first.lower, false);
                if hollow && last.upper.radius * view.unit >= 0.1 {
                    view.ring(pen, last.upper, true);
                }
            }
            (_, true) => {}
            _ => side(pen, view, run, hollow),
        }
    }
}

/// Cones of which only the front is seen.
fn side(pen: &mut Pen, view: &View, run: &[Cone], hollow: bool) {
    let (Some(first), Some(last)) = (run.first(), run.last()) else { return };
    pen.go(view.at(first.lower, first.seen.from()));
    view.sweep(pen, first.lower, first.seen.from(), first.seen.to());
    for cone in run {
        pen.line(view.at(cone.lower, cone.seen.to()));
        pen.line(view.at(cone.upper, cone.seen.to()));
    }
    // An outline reaches across under what lies above it: two pieces that only touch would let a hair of background through. Of a
    // part that is cut off, or that something else will lie on, the farther side of the end is its outline.
    if hollow || libm::cos(last.upper.tilt) < 0.0 {
        view.sweep(pen, last.upper, last.seen.to(), last.seen.from());
    } else {
        view.sweep(pen, last.upper, last.seen.to(), 2.0 * PI + last.seen.from());
    }
    for cone in run.iter().rev() {
        pen.line(view.at(cone.upper, cone.seen.from()));
        pen.line(view.at(cone.lower, cone.seen.from()));
    }
    pen.close();
}
