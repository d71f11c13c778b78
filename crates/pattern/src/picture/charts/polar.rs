//! Where the stitches of rounds stand around a centre: rings about it, each stitch over those that it is worked into.

use super::super::pen::{At, Pen};
use super::rings::Ring;
use super::symbol::{Form, Symbol, draw, height};
use super::{super::shape::Shape, symbol};
use core::f64::consts::PI;
use hatwright_sizing::Stitch;

/// The least room for a stitch along its round, in user units: a crossbar and as much between two as makes them two.
const PITCH: f64 = 12.0;
/// Between the heads of a round and the feet of the next.
const CLEAR: f64 = 4.0;
/// How much a stitch may be taller than usual, to reach the round below.
const TALLEST: f64 = 1.7;
/// How far a foot may stand aside, in user units: more would tip the symbol over.
const ASIDE: f64 = 1.6;
/// How far legs stand apart from their middle at most.
const APART: f64 = 6.2;

/// Which way the rounds go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Toward {
    /// To the centre.
    In,
    /// Away from it.
    Out,
}

/// Rings about a centre, all around but for a gap where rounds begin, or a wedge of them.
pub(super) struct Polar {
    pub centre: At,
    pub toward: Toward,
    /// 1 where rounds run clockwise, −1 where against the clock.
    pub turn: f64,
    /// 1, or −1 for the left hand.
    pub side: f64,
    /// Between the end and the beginning of a round, in user units; 0 in a wedge.
    pub gap: f64,
    /// How many equal wedges; 1 for all around.
    pub wedges: u32,
    /// Each ring's radius at its heads, and at its feet.
    pub radii: Vec<(f64, f64)>,
}

impl Polar {
    /// Lays rings out about 0, 0; `turn` as seen with the outside up.
    pub fn new(rings: &[Ring], toward: Toward, side: f64, gap: f64, wedges: u32) -> Self {
        // With heads up the next stitch of the right hand stands to the left.
        let turn = if toward == Toward::In { side } else { -side };
        Self { centre: At::new(0.0, 0.0), toward, turn, side, gap, wedges, radii: radii(rings, toward, gap, wedges) }
    }

    /// The outermost radius.
    pub fn outer(&self) -> f64 {
        self.radii.iter().map(|(head, foot)| head.max(*foot)).fold(0.0, f64::max)
    }

    /// The innermost.
    pub fn inner(&self) -> f64 {
        self.radii.iter().map(|(head, foot)| head.min(*foot)).fold(f64::INFINITY, f64::min)
    }

    /// The angle at which stitches begin, in the sense of the work, from straight up.
    pub fn begins(&self, radius: f64) -> f64 {
        if self.wedges > 1 {
            return -PI / f64::from(self.wedges);
        }
        libm::asin((self.gap / 2.0 / radius.max(1.0)).min(0.95))
    }

    /// The angle from the first stitch of a round to the end of its last.
    pub fn sweep(&self, radius: f64) -> f64 {
        if self.wedges > 1 { 2.0 * PI / f64::from(self.wedges) } else { 2.0 * (PI - self.begins(radius)) }
    }

    /// A place by radius and angle.
    pub fn at(&self, radius: f64, angle: f64) -> At {
        let (sin, cos) = libm::sincos(angle);
        At::new(self.centre.x + self.turn * radius * sin, self.centre.y - radius * cos)
    }

    /// The symbols of a ring, by what it is worked into: as many stitches as `below`, if these are drawn.
    pub fn symbols(&self, ring: &Ring, index: usize, below: Option<u32>, shapes: &mut Vec<Shape>) {
        let (head, foot) = self.radii[index];
        let along = |radius: f64, at: f64, of: u32| self.begins(radius) + self.sweep(radius) * at / f64::from(of.max(1));
        let (mut made, mut used) = (0, 0);
        for step in &ring.steps {
            if let Some(symbol) = step.symbol {
                let own = along(head, f64::from(made) + f64::from(step.makes) / 2.0, ring.total);
                let under = match below {
                    Some(below) => along(foot, f64::from(used) + f64::from(step.uses) / 2.0, below),
                    None => own,
                };
                let base = own + (under - own).clamp(-ASIDE / foot, ASIDE / foot);
                let heads = match symbol.form {
                    Form::Two => {
                        let half = (self.sweep(head) / f64::from(ring.total.max(1)) / 2.0).min(APART / head);
                        vec![self.at(head, own - half), self.at(head, own + half)]
                    }
                    _ => vec![self.at(head, own)],
                };
                let feet = match symbol.form {
                    Form::Together => {
                        let apart =
                            (self.sweep(foot) / f64::from(below.unwrap_or(ring.total * 2).max(1))).min(2.0 * APART / foot);
                        let middle = f64::from(step.uses.saturating_sub(1)) / 2.0;
                        (0..step.uses).map(|k| self.at(foot, base + (f64::from(k) - middle) * apart)).collect()
                    }
                    _ => vec![self.at(foot, base)],
                };
                shapes.push(draw(symbol, &feet, &heads, self.side));
            }
            made += step.makes;
            used += step.uses;
        }
    }

    /// The chains that begin a round and the slip stitch that closes it, on either side of the gap.
    pub fn closing(&self, ring: &Ring, index: usize, shapes: &mut Vec<Shape>) {
        let (head, foot) = self.radii[index];
        let edge = self.gap / 2.0 - 4.0;
        let beside = |radius: f64, sideways: f64| {
            let angle = libm::asin((sideways / radius.max(1.0)).clamp(-0.95, 0.95));
            self.at(radius, angle)
        };
        if ring.chains > 0 {
            let part = |k: u32| foot + (head - foot) * f64::from(k) / f64::from(ring.chains);
            for k in 0..ring.chains {
                let mut pen = Pen::new();
                symbol::chain(&mut pen, beside(part(k), edge), beside(part(k + 1), edge));
                shapes.push(Shape::path(pen.finish(), super::super::shape::Paint::Class("sym-ch")));
            }
        }
        if ring.joined {
            let middle = beside(f64::midpoint(head, foot), -edge);
            let mut pen = Pen::new();
            pen.ellipse(middle, 2.2, 2.2, true);
            shapes.push(Shape::path(pen.finish(), super::super::shape::Paint::Class("sym-join")));
        }
    }

    /// The outline of the room of a ring, as two circles or as a piece of them.
    pub fn band(&self, pen: &mut Pen, inner: f64, outer: f64) {
        if self.wedges == 1 {
            pen.ellipse(self.centre, outer, outer, true);
            pen.ellipse(self.centre, inner, inner, false);
            return;
        }
        let (from, to) = (self.begins(outer), self.begins(outer) + self.sweep(outer));
        pen.go(self.at(inner, from));
        pen.line(self.at(outer, from));
        pen.arc(outer, outer, self.turn > 0.0, self.at(outer, to));
        pen.line(self.at(inner, to));
        pen.arc(inner, inner, self.turn < 0.0, self.at(inner, from));
        pen.close();
    }
}

/// Radii from the innermost ring outward: far enough apart for their stitches, and wide enough for their counts.
fn radii(rings: &[Ring], toward: Toward, gap: f64, wedges: u32) -> Vec<(f64, f64)> {
    let tall =
        |ring: &Ring| ring.steps.iter().filter_map(|s| s.symbol).map(|s| height(s.stitch)).fold(height(Stitch::Slip), f64::max);
    let wide = |count: u32| (f64::from(count * wedges) * PITCH + gap) / (2.0 * PI);
    let order: Vec<usize> = match toward {
        Toward::In => (0..rings.len()).rev().collect(),
        Toward::Out => (0..rings.len()).collect(),
    };
    let mut radii = vec![(0.0, 0.0); rings.len()];
    // Where the next ring inward ends, on its outer side.
    let mut edge: Option<f64> = None;
    for i in order {
        let ring = &rings[i];
        let high = tall(ring);
        let count = ring.total.max(1);
        // From the centre outward, and the stitches' heads or feet first.
        let least = edge.map_or(0.0, |e| e + CLEAR);
        radii[i] = match toward {
            Toward::Out => {
                let head = wide(count).max(least + high).max(high + 8.0);
                let foot = (head - high * TALLEST).max(least);
                (head, if edge.is_none() { head - high } else { foot })
            }
            Toward::In => {
                let head = wide(count).max(least).max(high);
                (head, head + high)
            }
        };
        edge = Some(radii[i].0.max(radii[i].1));
    }
    if toward == Toward::In {
        // A foot reaches out to the heads of the round below, where these are far.
        for i in 1..rings.len() {
            let room = radii[i - 1].0 - CLEAR;
            let most = radii[i].0 + tall(&rings[i]) * TALLEST;
            radii[i].1 = room.min(most).max(radii[i].1);
        }
    }
    radii
}

/// The symbol of a form, for a key.
pub(super) fn sample(symbol: Symbol, centre: At, side: f64) -> Shape {
    let high = height(symbol.stitch) / 2.0;
    let place = |x: f64, y: f64| At::new(centre.x + x, centre.y + y);
    match symbol.form {
        Form::One => draw(symbol, &[place(0.0, high)], &[place(0.0, -high)], side),
        Form::Together => draw(symbol, &[place(-6.0, high), place(6.0, high)], &[place(0.0, -high)], side),
        Form::Two => draw(symbol, &[place(0.0, high)], &[place(-6.0, -high), place(6.0, -high)], side),
    }
}
