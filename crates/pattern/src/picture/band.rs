//! The sideways band: its rows are upright ribs that wrap around the head.

use super::fabric::put;
use super::pen::{At, Pen};
use super::profile::Profile;
use super::shape::{Paint, Shape};
use super::view::View;
use core::f64::consts::{FRAC_PI_2, PI};
use hatwright_sizing::{Colour, Hat};

/// The most marks of single stitches; beyond it, a mark stands for several.
const MOST_MARKS: usize = 600;

/// Paints what of the band's single layer is not behind the fold.
pub(super) fn draw_layer(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    if profile.band_top <= profile.fold || profile.band_top <= 0.0 {
        return;
    }
    let top = profile.edges[0].radius;
    let middle = (profile.band * 3.0 + top) / 4.0;
    let sleeve = Sleeve { low: 0.0, high: profile.band_top, radii: [profile.band, middle, top], loose: false };
    sleeve.draw(hat, view, hat.depth.band.cm(), shapes);
}

/// Paints the inside of the fold that shows behind a narrower crown.
pub(super) fn draw_behind(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    if profile.fold <= 0.0 {
        return;
    }
    let mut pen = Pen::new();
    let (rx, ry) = view.ring(profile.cuff.1);
    pen.ellipse(At::new(view.x, view.level(profile.fold)), rx, ry, false);
    let data = pen.finish();
    let colour = hat.band_rows.first().copied().unwrap_or_default();
    shapes.push(Shape::path(data.clone(), Paint::Yarn(colour)));
    shapes.push(Shape::path(data, Paint::Class("inside")));
}

/// Paints the fold, with its shadow on the body.
pub(super) fn draw_fold(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    if profile.fold <= 0.0 {
        return;
    }
    let (fold, cuff) = (profile.fold, profile.cuff);
    let mut shadow = Pen::new();
    for depth in [0.012, 0.02, 0.028, 0.036] {
        let above = fold + depth * profile.head;
        let body = profile.edges.iter().rev().find(|e| e.height <= above).map_or(profile.band, |e| e.radius);
        view.strip(&mut shadow, (body, fold - 0.02 * profile.head), (body, above), FRAC_PI_2 * 0.98);
    }
    put(shapes, shadow, "shadow");
    let middle = if cuff.1 < cuff.0 { cuff.0 * 0.75 + cuff.1 * 0.25 } else { cuff.0 };
    let sleeve = Sleeve { low: 0.0, high: fold, radii: [cuff.0 * 0.982, middle, cuff.1], loose: true };
    sleeve.draw(hat, view, fold, shapes);
}

/// A layer of band, in cm.
struct Sleeve {
    low: f64,
    high: f64,
    /// Radii at the lower edge, half way and at the upper edge.
    radii: [f64; 3],
    /// Its upper edge lies free, on the body.
    loose: bool,
}

impl Sleeve {
    fn draw(&self, hat: &Hat, view: &View, long: f64, shapes: &mut Vec<Shape>) {
        let rows = Rows { sleeve: self, view, count: hat.band_rows.len().max(1) };
        let (from, to) = rows.seen();

        let mut by_colour: Vec<(Colour, Pen)> = Vec::new();
        let mut row = from;
        while row < to {
            let colour = hat.band_rows.get(row).copied().unwrap_or_default();
            let end = (row..to).find(|r| hat.band_rows.get(*r).copied().unwrap_or_default() != colour).unwrap_or(to);
            let known = by_colour.iter().position(|c| c.0 == colour).unwrap_or_else(|| {
                by_colour.push((colour, Pen::new()));
                by_colour.len() - 1
            });
            rows.block(&mut by_colour[known].1, row, end);
            row = end;
        }
        for (colour, pen) in by_colour {
            shapes.push(Shape::path(pen.finish(), Paint::Yarn(colour)));
        }

        let stitches = (long / hat.gauge.band_stitch.cm().max(0.05)).max(1.0);
        let mut marks = Pen::new();
        rows.marks(&mut marks, stitches);
        put(shapes, marks, "rib-stitch");
        let (mut grooves, mut ridges) = (Pen::new(), Pen::new());
        for row in (from..=to).filter(|r| r % 2 == 0) {
            rows.sliver(&mut grooves, row as f64, 0.34);
            rows.sliver(&mut ridges, row as f64 + 0.8, 0.3);
        }
        put(shapes, ridges, "ridge");
        put(shapes, grooves, "groove");

        let mut outline = Pen::new();
        rows.block(&mut outline, from, to);
        shapes.push(Shape::path(outline.finish(), Paint::Gradient("hat-shade")));
        let mut turned = Pen::new();
        for rise in [0.006, 0.011, 0.016, 0.021, 0.026] {
            let (radius, height) = self.level((rise * hat.head.girth.cm() / (self.high - self.low)).min(0.4));
            view.strip(&mut turned, (self.radii[0], self.low), (radius, height), FRAC_PI_2);
        }
        put(shapes, turned, "shadow");
        if self.loose {
            let mut rim = Pen::new();
            rim.go(rows.at(from, 1.0));
            rows.scallops(&mut rim, from, to, 1.0);
            put(shapes, rim, "rim");
        }
    }

    /// Radius of the quadratic curve's control point, half way up: the curve passes through all three radii.
    fn control(&self) -> f64 {
        let [low, middle, high] = self.radii;
        2.0 * middle - f64::midpoint(low, high)
    }

    /// Radius and height, so much of the way up.
    fn level(&self, share: f64) -> (f64, f64) {
        let [low, _, high] = self.radii;
        let rest = 1.0 - share;
        let radius = low * rest * rest + 2.0 * self.control() * rest * share + high * share * share;
        (radius, self.low + (self.high - self.low) * share)
    }
}

/// Where the rows of a sleeve lie on the page. The first row begins behind, at the seam.
struct Rows<'a> {
    sleeve: &'a Sleeve,
    view: &'a View,
    count: usize,
}

impl Rows<'_> {
    /// The rows that are seen, those at the sides in part.
    fn seen(&self) -> (usize, usize) {
        (self.count / 4, (self.count * 3).div_ceil(4))
    }

    fn turn(&self, row: f64) -> f64 {
        (2.0 * PI * row / self.count as f64 - PI).clamp(-FRAC_PI_2, FRAC_PI_2)
    }

    fn place(&self, row: f64, share: f64) -> At {
        let (radius, height) = self.sleeve.level(share);
        self.view.at(radius, self.turn(row), height)
    }

    fn at(&self, row: usize, share: f64) -> At {
        let ridge = row - row % 2;
        if row == ridge {
            return self.place(row as f64, share);
        }
        // The crest of the ridge's arch.
        let (a, b) = (self.place(ridge as f64, share), self.place(ridge as f64 + 2.0, share));
        self.crest(a, b, share).toward(a.toward(b, 0.5), 0.5)
    }

    /// The control point of a ridge's arch between its two grooves: two rows swell together.
    fn crest(&self, a: At, b: At, share: f64) -> At {
        let middle = a.toward(b, 0.5);
        let swell = ((b.x - a.x) * 0.26).min(self.view.unit * 0.45);
        At::new(middle.x, if share > 0.5 { middle.y - swell } else { middle.y + swell * 0.8 })
    }

    /// Along an edge from one row boundary to another, from the pen's place; either way.
    fn scallops(&self, pen: &mut Pen, from: usize, to: usize, share: f64) {
        let steps: Vec<usize> = if from < to { (from..to).collect() } else { (to..from).rev().collect() };
        for row in steps {
            let ridge = (row - row % 2) as f64;
            let (a, b) = (self.place(ridge, share), self.place(ridge + 2.0, share));
            let crest = self.crest(a, b, share);
            let control = if row % 2 == 0 { a.toward(crest, 0.5) } else { crest.toward(b, 0.5) };
            pen.curve(control, self.at(if from < to { row + 1 } else { row }, share));
        }
    }

    /// Upright side of a row, from the pen's place to the upper edge or to the lower.
    fn side(&self, pen: &mut Pen, row: usize, up: bool) {
        let middle = f64::midpoint(self.sleeve.low, self.sleeve.high);
        let control = self.view.at(self.sleeve.control(), self.turn(row as f64), middle);
        pen.curve(control, self.at(row, if up { 1.0 } else { 0.0 }));
    }

    /// The outline of some rows.
    fn block(&self, pen: &mut Pen, from: usize, to: usize) {
        pen.go(self.at(from, 0.0));
        self.side(pen, from, true);
        self.scallops(pen, from, to, 1.0);
        self.side(pen, to, false);
        self.scallops(pen, to, from, 0.0);
        pen.close();
    }

    /// A narrow upright spindle, `wide` rows across, on a row boundary.
    fn sliver(&self, pen: &mut Pen, row: f64, wide: f64) {
        pen.go(self.place(row, 0.0));
        pen.curve(self.place(row - wide, 0.5), self.place(row, 1.0));
        pen.curve(self.place(row + wide, 0.5), self.place(row, 0.0));
        pen.close();
    }

    /// Slanted stitches: the two rows of a ridge lean towards each other.
    fn marks(&self, pen: &mut Pen, stitches: f64) {
        let (from, to) = self.seen();
        let wanted = (to - from) * libm::ceil(stitches) as usize;
        let together = wanted.div_ceil(MOST_MARKS).max(1);
        let count = (libm::round(stitches) as usize / together).max(1);
        for row in from..to {
            let (outer, inner) =
                if row % 2 == 0 { (row as f64 + 0.2, row as f64 + 0.95) } else { (row as f64 + 0.8, row as f64 + 0.05) };
            let (a, b) = (self.place(outer, 0.5), self.place(inner, 0.5));
            if (a.x - b.x).abs() < 0.6 {
                continue;
            }
            for k in 0..count {
                let share = |up: f64| ((k as f64 + up) / count as f64).min(1.0);
                pen.polygon(&[
                    self.place(outer, share(0.55)),
                    self.place(inner, share(0.1)),
                    self.place(inner, share(0.38)),
                    self.place(outer, share(0.83)),
                ]);
            }
        }
    }
}
