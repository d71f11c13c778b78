//! A tassel: strands that hang from the tip, over the crown where there is one under it.

use super::chance::Chance;
use super::fabric::put;
use super::pen::{At, Pen};
use super::profile::{Extent, Profile};
use super::shape::{Paint, Shape};
use super::topper::fullness;
use super::view::{COS, View};
use core::f64::consts::{FRAC_PI_2, PI};
use hatwright_sizing::{Hat, TopperKind};

/// Places along it at which it is drawn.
const STEPS: usize = 24;
/// A tip that leans more than this hangs, and what is tied to it hangs straight down.
const HANGS: f64 = 0.6;
/// How far down the strand lies that is wound around all others, as a share of the length.
const NECK: f64 = 0.2;
/// Strands that are drawn of a tassel of the usual fullness: there are more of them, one behind the other.
const STRANDS: f64 = 26.0;

/// The line down its middle in cm on the page, from the tip, and the direction from the right across it.
struct Axis {
    places: Vec<(At, f64)>,
    length: f64,
    /// Half as wide as its neck.
    neck: f64,
}

impl Axis {
    fn of(hat: &Hat, profile: &Profile) -> Option<Self> {
        let topper = hat.topper.filter(|topper| topper.kind == TopperKind::Tassel)?;
        let (tip, length) = (profile.tip(), topper.size.cm());
        let widest = profile.edges.iter().map(|edge| edge.radius).fold(profile.rim(), f64::max);
        // On a crown it lies over the fabric, level at first, and then falls.
        let (mut tilt, turn) =
            if tip.tilt > HANGS { (tip.tilt.min(PI), length * 0.25) } else { (FRAC_PI_2, widest.min(length * 0.6)) };
        let step = length / STEPS as f64;
        let mut at = At::new(tip.x, tip.height * COS);
        let mut places = Vec::with_capacity(STEPS + 1);
        places.push((at, tilt));
        for _ in 0..STEPS {
            let middle = (tilt + step / turn.max(0.1) / 2.0).min(PI);
            let (lean, upright) = libm::sincos(middle);
            at = At::new(at.x + step * lean, at.y + step * upright);
            tilt = (tilt + step / turn.max(0.1)).min(PI);
            places.push((at, tilt));
        }
        // As thick as its strands side by side in a round, drawn tight.
        let neck = 0.08 * hat.gauge.stitch.cm() * libm::sqrt(2.0 * f64::from(topper.wraps));
        Some(Self { places, length, neck: neck.clamp(0.01 * length, 0.12 * length) })
    }

    /// Half as wide as it is there, for a share of its length: a head, the neck, and the strands that spread.
    fn half(&self, share: f64) -> f64 {
        let skirt = 1.0 + 1.1 * libm::sqrt(((share - NECK) / (1.0 - NECK)).max(0.0));
        let head = 0.35 + 1.0 * libm::sin((share / NECK).min(1.0) * PI * 0.8);
        self.neck * if share < NECK { head } else { skirt }
    }

    /// A place beside the line, for a share of the length, so many halves of the width to the side.
    fn beside(&self, share: f64, across: f64, view: &View) -> At {
        let along = share.clamp(0.0, 1.0) * STEPS as f64;
        let i = (along as usize).min(STEPS - 1);
        let (a, b) = (self.places[i], self.places[i + 1]);
        let part = along - i as f64;
        let (at, tilt) = (a.0.toward(b.0, part), a.1 + (b.1 - a.1) * part);
        let (lean, upright) = libm::sincos(tilt);
        let out = self.half(share) * across;
        At::new(view.x + (at.x - upright * out) * view.unit, view.y - (at.y + lean * out) * view.unit)
    }

    fn outline(&self, view: &View) -> Pen {
        let mut pen = Pen::new();
        let shares = (0..=STEPS).map(|i| i as f64 / STEPS as f64);
        let mut corners: Vec<At> = shares.clone().map(|share| self.beside(share, -1.0, view)).collect();
        corners.extend(shares.rev().map(|share| self.beside(share, 1.0, view)));
        pen.polygon(&corners);
        pen
    }

    /// A strand between two shares of the length, so thick in cm.
    fn strand(&self, pen: &mut Pen, across: f64, from: f64, to: f64, thick: f64, view: &View) {
        let steps = 8;
        let shares = (0..=steps).map(|i| from + (to - from) * f64::from(i) / f64::from(steps));
        let side = |share: f64, way: f64| self.beside(share, across + way * thick / 2.0 / self.half(share).max(0.01), view);
        let mut corners: Vec<At> = shares.clone().map(|share| side(share, -1.0)).collect();
        corners.extend(shares.rev().map(|share| side(share, 1.0)));
        pen.polygon(&corners);
    }
}

/// Takes in what it reaches over.
pub(super) fn reach(hat: &Hat, profile: &Profile, extent: &mut Extent) {
    let Some(axis) = Axis::of(hat, profile) else { return };
    for (i, (at, _)) in axis.places.iter().enumerate() {
        let half = axis.half(i as f64 / STEPS as f64) * 1.05;
        extent.spot(at.x, at.y, half, half);
    }
}

/// How far one that lies on a crown reaches below the hat's edge, in cm on the page.
pub(super) fn below(hat: &Hat, profile: &Profile) -> f64 {
    if profile.tip().tilt > HANGS {
        return 0.0;
    }
    let mut extent = Extent::default();
    reach(hat, profile, &mut extent);
    extent.below
}

/// Paints it in one colour, for small pictures.
pub(super) fn draw_plain(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    let (Some(topper), Some(axis)) = (hat.topper, Axis::of(hat, profile)) else { return };
    let colour = topper.colour.or_else(|| hat.colours().last().copied()).unwrap_or_default();
    shapes.push(Shape::path(axis.outline(view).finish(), Paint::Yarn(colour)));
}

/// Paints it.
pub(super) fn draw(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    let (Some(topper), Some(axis)) = (hat.topper, Axis::of(hat, profile)) else { return };
    let colours = topper.colour.map_or_else(|| hat.colours(), |colour| vec![colour]);
    let Some(first) = colours.first().copied() else { return };
    shapes.push(Shape::path(axis.outline(view).finish(), Paint::Yarn(first)));

    let count = (STRANDS * libm::sqrt(fullness(hat)).clamp(0.6, 1.5)) as u32;
    let thick = 2.6 * axis.neck * 2.1 / f64::from(count);
    let mut chance = Chance(0x9e37_79b9);
    let mut by_colour: Vec<Pen> = colours.iter().map(|_| Pen::new()).collect();
    let (mut shade, mut light) = (Pen::new(), Pen::new());
    for k in 0..count {
        let across = (2.0 * (f64::from(k) + 0.5) / f64::from(count) - 1.0) * 0.96;
        let end = 1.0 - 0.07 * chance.next();
        // Colours in turn, shifted about, as they were wound.
        let which = (k as usize + usize::from(chance.next() > 0.7)) % colours.len();
        axis.strand(&mut by_colour[which], across, 0.01, end, thick, view);
        let aside = across + 0.5 / f64::from(count);
        if chance.next() < 0.3 + 0.3 * across.abs() {
            axis.strand(&mut shade, aside, 0.03, end - 0.02, thick * 0.3, view);
        } else if chance.next() < 0.35 {
            axis.strand(&mut light, aside, 0.05, end - 0.1, thick * 0.25, view);
        }
    }
    for (pen, colour) in by_colour.into_iter().zip(&colours) {
        if !pen.is_empty() {
            shapes.push(Shape::path(pen.finish(), Paint::Yarn(*colour)));
        }
    }
    put(shapes, shade, "strand-shade");
    put(shapes, light, "strand-light");

    let mut tie = Pen::new();
    let wide = 0.035_f64.max(0.25 / axis.length);
    let corner = |share: f64, across: f64| axis.beside(share, across, view);
    tie.go(corner(NECK, -1.0));
    tie.curve(corner(NECK + wide, 0.0), corner(NECK, 1.0));
    tie.line(corner(NECK + wide, 1.0));
    tie.curve(corner(NECK + 2.0 * wide, 0.0), corner(NECK + wide, -1.0));
    tie.close();
    shapes.push(Shape::path(tie.finish(), Paint::Yarn(colours[colours.len() - 1])));
}
