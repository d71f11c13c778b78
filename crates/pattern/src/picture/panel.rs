//! A hat worked sideways: its rows are ribs that run from the edge to the crown.

use super::body;
use super::fabric::{self, Texture, put};
use super::pen::{At, Pen};
use super::profile::{Cone, Profile};
use super::shape::{Paint, Shape};
use super::view::{Edge, View};
use core::f64::consts::PI;
use hatwright_sizing::{Colour, Hat, Loops, Panel};

/// The most marks of single stitches; beyond it, there are none.
const MOST_MARKS: usize = 2200;

/// Paints the rows, their relief and the light.
pub(super) fn draw(hat: &Hat, panel: &Panel, texture: Option<Texture>, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    let last = profile.edges.len().saturating_sub(1);
    let cones = profile.cones(0, last, f64::MAX);
    if cones.is_empty() || panel.rows.is_empty() {
        return;
    }
    let mut outline = Pen::new();
    body::trace(&mut outline, view, &profile.cones(0, last, 5.0 / view.unit), false);
    let outline = outline.finish();
    let columns = Columns { panel, view, cones: &cones, turns: turns(hat, panel, profile) };

    let ground = panel.rows[0].colour;
    shapes.push(Shape::path(outline.clone(), Paint::Yarn(ground)));
    let mut pens: Vec<(Colour, Pen)> = Vec::new();
    let count = panel.rows.len();
    let mut row = 0;
    while row < count {
        let colour = panel.rows[row].colour;
        let end = (row..count).find(|r| panel.rows[*r].colour != colour).unwrap_or(count);
        if colour != ground {
            let known = pens.iter().position(|p| p.0 == colour).unwrap_or_else(|| {
                pens.push((colour, Pen::new()));
                pens.len() - 1
            });
            columns.block(&mut pens[known].1, row, end);
        }
        row = end;
    }
    for (colour, pen) in pens {
        if !pen.is_empty() {
            shapes.push(Shape::path(pen.finish(), Paint::Yarn(colour)));
        }
    }
    let Some(texture) = texture else { return };

    let ribbed = texture.body.row().loops != Loops::Both;
    let (mut grooves, mut ridges, mut marks) = (Pen::new(), Pen::new(), Pen::new());
    let apart = (count / 160 + 1) * 2;
    for row in (0..count).step_by(apart) {
        columns.groove(&mut grooves, row as f64, 0.17 * apart as f64);
        if ribbed {
            columns.groove(&mut ridges, row as f64 + 0.42 * apart as f64, 0.13 * apart as f64);
        }
    }
    columns.marks(&mut marks, profile);
    put(shapes, marks, "rib-stitch");
    put(shapes, ridges, "ridge");
    put(shapes, grooves, if ribbed { "groove" } else { "rib-stitch" });
    let mut folds = Pen::new();
    fabric::gathers(hat, profile, &(0..last), view, &mut folds);
    put(shapes, folds, "gather");
    shapes.push(Shape::path(outline, Paint::Gradient("hat-shade")));
}

/// For each edge, how much of the girth lies before each row, in rows, and all of it: shorter rows leave wedges out. A row does not end
/// at once but tapers, as fabric does.
fn turns(hat: &Hat, panel: &Panel, profile: &Profile) -> Vec<Vec<f64>> {
    let stitch = hat.gauge.stitch.cm().max(0.01);
    let longest = f64::from(panel.stitches.get());
    let mut lengths: Vec<u32> = panel.rows.iter().map(|r| r.stitches.get()).collect();
    lengths.sort_unstable();
    lengths.dedup();
    let spread = f64::from(lengths.last().copied().unwrap_or(0) - lengths.first().copied().unwrap_or(0));
    let taper = (spread / (lengths.len() as f64 - 1.0).max(1.0)).max(1.0);
    let mut along = profile.fold.max(0.0);
    let mut all = Vec::with_capacity(profile.edges.len());
    for i in 0..profile.edges.len() {
        let reach = (along / stitch).min(longest - 0.5);
        let mut before = Vec::with_capacity(panel.rows.len() + 1);
        let mut sum = 0.0;
        for row in &panel.rows {
            before.push(sum);
            let own = f64::from(row.stitches.get());
            // Rows of full length stay whole up to the crown.
            sum += if own >= longest { 1.0 } else { ((own - reach) / taper + 0.5).clamp(0.0, 1.0) };
        }
        before.push(sum);
        all.push(before);
        along += profile.strips.get(i).map_or(0.0, |s| s.high);
    }
    all
}

/// Rows on the surface.
struct Columns<'a> {
    panel: &'a Panel,
    view: &'a View,
    cones: &'a [Cone],
    turns: Vec<Vec<f64>>,
}

impl Columns<'_> {
    fn edge(&self, i: usize) -> Edge {
        if i < self.cones.len() { self.cones[i].lower } else { self.cones[self.cones.len() - 1].upper }
    }

    /// Where a row's boundary lies at an edge, as a turn from the front: the first row begins behind.
    fn turn(&self, row: f64, edge: usize) -> f64 {
        let before = &self.turns[edge.min(self.turns.len() - 1)];
        let (whole, part) = (row as usize, row - libm::floor(row));
        let (a, b) = (before[whole.min(before.len() - 1)], before[(whole + 1).min(before.len() - 1)]);
        let all = before[before.len() - 1].max(0.5);
        2.0 * PI * (a + (b - a) * part) / all - PI
    }

    /// The turn, drawn in to what is seen there.
    fn held(&self, row: f64, edge: usize) -> f64 {
        let seen = self.cones[edge.min(self.cones.len() - 1)].seen;
        let below = self.cones[edge.saturating_sub(1).min(self.cones.len() - 1)].seen;
        let reach = seen.reach.max(below.reach).min(PI);
        self.turn(row, edge).clamp(-reach, reach)
    }

    fn place(&self, row: f64, edge: usize) -> At {
        self.view.at(self.edge(edge), self.held(row, edge))
    }

    /// The outline of some rows.
    fn block(&self, pen: &mut Pen, from: usize, to: usize) {
        let edges = self.cones.len();
        let (a, b) = (from as f64, to as f64);
        let seen = (0..=edges).any(|i| self.held(b, i) - self.held(a, i) > 1e-6);
        if !seen {
            return;
        }
        pen.go(self.place(a, 0));
        self.view.sweep(pen, self.edge(0), self.held(a, 0), self.held(b, 0));
        for i in 1..=edges {
            pen.line(self.place(b, i));
        }
        for i in (0..=edges).rev() {
            pen.line(self.place(a, i));
        }
        pen.close();
    }

    /// A narrow strip along a row's boundary, where that is seen; it ends where its row ends.
    fn groove(&self, pen: &mut Pen, row: f64, wide: f64) {
        let edges = self.cones.len();
        let shown = |i: usize| {
            let seen = self.cones[i.min(edges - 1)].seen;
            let row = row.min(self.panel.rows.len() as f64 - 1.0);
            let here = self.turn(libm::floor(row) + 1.0, i) > self.turn(libm::floor(row), i) + 0.01;
            here && seen.holds(self.turn(row, i), 0.01)
        };
        let run: Vec<usize> = (0..=edges).skip_while(|i| !shown(*i)).take_while(|i| shown(*i)).collect();
        if run.len() < 2 {
            return;
        }
        let last = run.len() - 1;
        let half = |k: usize| wide * libm::sin(PI * (k as f64 / last as f64).clamp(0.06, 0.94)).min(0.8) / 2.0;
        let at = |k: usize, side: f64| {
            let i = run[k];
            let step = 2.0 * PI / self.turns[i.min(self.turns.len() - 1)].last().copied().unwrap_or(1.0).max(0.5);
            self.view.at(self.edge(i), self.turn(row, i) + side * half(k) * step)
        };
        let mut corners: Vec<At> = (0..run.len()).map(|k| at(k, -1.0)).collect();
        corners.extend((0..run.len()).rev().map(|k| at(k, 1.0)));
        pen.polygon(&corners);
    }

    /// Slanted stitches: the two rows of a ridge lean towards each other.
    fn marks(&self, pen: &mut Pen, profile: &Profile) {
        let rows = self.panel.rows.len();
        let slices = profile.strips.len();
        if rows * slices / 2 > MOST_MARKS {
            return;
        }
        for row in 0..rows {
            let (outer, inner) = if row % 2 == 0 { (0.2, 0.95) } else { (0.8, 0.05) };
            for i in 0..slices.min(self.cones.len()) {
                let turn = |part: f64, edge: usize| self.turn(row as f64 + part, edge);
                let seen = self.cones[i].seen;
                let there = turn(0.9, i) > turn(0.1, i) + 0.02 && turn(0.9, i + 1) > turn(0.1, i + 1) + 0.02;
                if !there || !seen.holds(turn(0.5, i), 0.06) {
                    continue;
                }
                let (low, high) = (self.edge(i), self.edge(i + 1));
                let at = |part: f64, up: f64| {
                    let (a, b) = (turn(part, i), turn(part, i + 1));
                    self.view.at(low.toward(high, up), a + (b - a) * up)
                };
                if (at(0.2, 0.5).x - at(0.95, 0.5).x).abs() < 0.6 {
                    continue;
                }
                pen.polygon(&[at(outer, 0.55), at(inner, 0.1), at(inner, 0.38), at(outer, 0.83)]);
            }
        }
    }
}
