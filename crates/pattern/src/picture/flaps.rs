//! Ear flaps: one over the near ear, the other seen behind the jaw, with their ties.

use super::fabric::put;
use super::pen::{At, Pen};
use super::profile::Profile;
use super::shape::{Paint, Shape};
use super::view::{Edge, SIN, View};
use core::f64::consts::{FRAC_PI_2, PI};
use hatwright_sizing::{Flaps, Hat};

/// The head is turned so far that the middle of one flap comes this near to the viewer's side.
const NEAR: f64 = 1.02;
/// A tie hangs no lower than this below the head's vertex, as a share of the girth.
const FLOOR: f64 = 0.555;
/// Half the width of a tie, in widths of a stitch.
const CORD: f64 = 0.42;

/// How far a flap hangs below the hat's edge, in cm.
pub(super) fn hang(hat: &Hat) -> f64 {
    hat.flaps.as_ref().map_or(0.0, |f| f.length.cm())
}

/// How far flaps and ties, as they are drawn, reach below the hat's edge on the page, in cm.
pub(super) fn reach(hat: &Hat, profile: &Profile) -> f64 {
    let Some(flaps) = &hat.flaps else { return 0.0 };
    let (hang, front) = (hang(hat), profile.band * SIN * libm::cos(NEAR));
    if flaps.tie.ticks() == 0 {
        return hang + front;
    }
    let knot = hat.gauge.stitch.cm() * CORD * 2.0;
    let floor = FLOOR * profile.head - profile.vertex;
    hang + front + knot + flaps.tie.cm().min((floor - hang - front - knot).max(1.0))
}

/// Paints the far flap, behind the head.
pub(super) fn draw_far(hat: &Hat, flaps: &Flaps, fancy: bool, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    let flap = Flap::of(hat, flaps, profile, view, false);
    let mut pen = Pen::new();
    flap.outline(&mut pen);
    flap.cord(&mut pen);
    let data = pen.finish();
    shapes.push(Shape::path(data.clone(), Paint::Yarn(flaps.colour)));
    if fancy {
        shapes.push(Shape::path(data, Paint::Class("inside")));
    }
}

/// Paints the near flap, over the ear.
pub(super) fn draw_near(hat: &Hat, flaps: &Flaps, fancy: bool, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    let flap = Flap::of(hat, flaps, profile, view, true);
    if fancy {
        let mut shadow = Pen::new();
        for depth in [0.25, 0.5, 0.8] {
            let moved =
                Flap { view: View { x: view.x - depth * view.unit * 0.5, y: view.y + depth * view.unit * 0.5, ..*view }, ..flap };
            moved.outline(&mut shadow);
        }
        put(shapes, shadow, "head-shadow");
    }
    let mut pen = Pen::new();
    flap.outline(&mut pen);
    flap.cord(&mut pen);
    shapes.push(Shape::path(pen.finish(), Paint::Yarn(flaps.colour)));
    if !fancy {
        return;
    }
    let (mut lines, mut dark) = (Pen::new(), Pen::new());
    let rows = flaps.rows.len();
    let apart = libm::ceil(2.4 / (flap.high * view.unit).max(0.01)).max(1.0) as usize;
    for row in (0..rows).step_by(apart) {
        flap.row(&mut lines, row);
        if flap.high * view.unit > 3.0 {
            flap.stitches(&mut dark, row);
        }
    }
    put(shapes, dark, "stitch-dark");
    put(shapes, lines, "round-line");
    for from in [0.55, 0.95, 1.25] {
        let mut shade = Pen::new();
        flap.shade(&mut shade, from);
        put(shapes, shade, "tube-shade");
    }
    let mut edge = Pen::new();
    flap.front_edge(&mut edge);
    put(shapes, edge, "flap-edge");
    let mut twists = Pen::new();
    flap.twists(&mut twists);
    put(shapes, twists, "stitch-dark");
}

/// A flap on the page.
#[derive(Clone, Copy)]
struct Flap<'a> {
    flaps: &'a Flaps,
    view: View,
    /// Radius around the head, and the height of a row, in cm.
    radius: f64,
    high: f64,
    /// Stitches of the hat's edge.
    around: f64,
    /// Turn of its middle.
    middle: f64,
    near: bool,
    /// Width of a stitch.
    stitch: f64,
    /// Lowest place of a tie, in cm below the hat's edge.
    floor: f64,
}

impl<'a> Flap<'a> {
    fn of(hat: &Hat, flaps: &'a Flaps, profile: &Profile, view: &View, near: bool) -> Self {
        let first = flaps.rows.first().map_or(1, |r| r.before);
        let around = f64::from((flaps.back.get() + flaps.front.get() + 2 * first).max(1));
        let middle = PI * (f64::from(flaps.front.get()) + f64::from(first)) / around;
        Self {
            flaps,
            view: *view,
            radius: profile.band * 0.99,
            high: flaps.length.cm() / flaps.rows.len().max(1) as f64,
            around,
            middle: if near { NEAR } else { NEAR - 2.0 * middle },
            near,
            stitch: hat.gauge.stitch.cm(),
            floor: FLOOR * profile.head - profile.vertex,
        }
    }

    /// Half the turn that the fabric above `row` takes: even, where rows with and without decreases alternate.
    fn half(&self, row: usize) -> f64 {
        let rows = &self.flaps.rows;
        let own = |row: usize| f64::from(if row == 0 { rows.first().map_or(0, |r| r.before) } else { rows[row - 1].after.get() });
        let mean = if row == 0 || row >= rows.len() { own(row) } else { (own(row - 1) + 2.0 * own(row) + own(row + 1)) / 4.0 };
        PI * mean / self.around
    }

    /// A place on the flap; the near one is not seen past the side of the head.
    fn at(&self, turn: f64, row: f64) -> At {
        let turn = if self.near { turn.min(FRAC_PI_2) } else { turn };
        // It lies on the cheek, a little in.
        let radius = self.radius * (1.0 - 0.05 * (row / self.flaps.rows.len().max(1) as f64));
        self.view.at(Edge::level(radius, 0.4 - row * self.high), turn)
    }

    fn outline(&self, pen: &mut Pen) {
        let rows = self.flaps.rows.len();
        let side = |sign: f64| (0..=rows).map(move |k| self.at(self.middle + sign * self.half(k), k as f64));
        let mut corners: Vec<At> = side(-1.0).collect();
        // The last row bends over, as fabric does.
        let (a, b) = (self.middle - self.half(rows), self.middle + self.half(rows));
        corners.extend((1..6).map(|k| {
            let part = f64::from(k) / 6.0;
            self.at(a + (b - a) * part, rows as f64 + libm::sin(part * PI) * 0.35)
        }));
        corners.extend(side(1.0).collect::<Vec<_>>().into_iter().rev());
        pen.polygon(&corners);
    }

    fn row(&self, pen: &mut Pen, row: usize) {
        let (a, b) = (self.middle - self.half(row + 1), self.middle + self.half(row + 1));
        pen.go(self.at(a, row as f64 + 1.0));
        for k in 1..=6 {
            pen.line(self.at(a + (b - a) * f64::from(k) / 6.0, row as f64 + 1.0));
        }
    }

    fn stitches(&self, pen: &mut Pen, row: usize) {
        let stitches = self.flaps.rows[row].after.get();
        let step = 2.0 * PI / self.around;
        let from = self.middle - self.half(row + 1);
        for k in 1..stitches {
            let turn = from + step * f64::from(k);
            if turn < FRAC_PI_2 - step {
                let at = |across: f64, down: f64| self.at(turn + across * step, row as f64 + down);
                pen.polygon(&[at(-0.2, 0.95), at(0.0, 0.2), at(0.2, 0.95)]);
            }
        }
    }

    fn shade(&self, pen: &mut Pen, from: f64) {
        let rows = self.flaps.rows.len();
        let left = |k: usize| (self.middle - self.half(k)).max(from);
        let right = |k: usize| (self.middle + self.half(k)).max(from);
        let mut corners: Vec<At> = (0..=rows).map(|k| self.at(left(k), k as f64)).collect();
        corners.extend((0..=rows).rev().map(|k| self.at(right(k), k as f64)));
        pen.polygon(&corners);
    }

    fn front_edge(&self, pen: &mut Pen) {
        for k in 0..=self.flaps.rows.len() {
            let at = self.at(self.middle - self.half(k), k as f64);
            if k == 0 { pen.go(at) } else { pen.line(at) }
        }
    }

    /// Where a tie begins, how wide it is, and how long it is drawn.
    fn tie(&self) -> Option<(At, f64, f64)> {
        let tie = self.flaps.tie.cm();
        if tie <= 0.0 {
            return None;
        }
        let rows = self.flaps.rows.len();
        let start = self.at(self.middle, rows as f64);
        // The knot lies on the floor, and the front of the head is lower on the page than its side.
        let front = self.radius * SIN * libm::cos(self.middle).max(0.0) + self.stitch * CORD * 2.0;
        let room = (self.floor - self.flaps.length.cm() - front).max(1.0);
        Some((start, (self.stitch * CORD * self.view.unit).max(0.8), tie.min(room) * self.view.unit))
    }

    /// A tie with its knot; one that is longer than the picture is broken before its end.
    fn cord(&self, pen: &mut Pen) {
        let Some((start, half, long)) = self.tie() else { return };
        let cut = self.flaps.tie.cm() * self.view.unit > long + 0.5;
        let piece = |pen: &mut Pen, from: f64, to: f64| {
            let side = |down: f64, sign: f64| At::new(self.sway(start, down, long) + sign * half, start.y + down);
            let steps = 8;
            let down = |k: i32| from + (to - from) * f64::from(k) / f64::from(steps);
            let mut corners: Vec<At> = (0..=steps).map(|k| side(down(k), -1.0)).collect();
            corners.extend((0..=steps).rev().map(|k| side(down(k), 1.0)));
            pen.polygon(&corners);
        };
        if cut && long > 24.0 {
            piece(pen, -2.0, long - 18.0);
            piece(pen, long - 13.0, long);
        } else {
            piece(pen, -2.0, long);
        }
        pen.ellipse(At::new(self.sway(start, long, long), start.y + long), half * 1.7, half * 1.9, false);
    }

    fn sway(&self, start: At, down: f64, long: f64) -> f64 {
        start.x + libm::sin(down / long.max(1.0) * PI * 1.1) * self.view.unit * 0.35 * if self.near { 1.0 } else { -1.0 }
    }

    fn twists(&self, pen: &mut Pen) {
        let Some((start, half, long)) = self.tie() else { return };
        let step = (half * 2.4).max(3.0);
        let count = ((long - 4.0) / step).clamp(0.0, 80.0) as u32;
        for k in 0..count {
            let down = f64::from(k) * step + 2.0;
            let x = self.sway(start, down, long);
            let y = start.y + down;
            pen.polygon(&[
                At::new(x - half, y),
                At::new(x + half, y + half),
                At::new(x + half, y + half * 1.6),
                At::new(x - half, y + half * 0.6),
            ]);
        }
    }
}
