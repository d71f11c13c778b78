//! The relief of single crochet in rounds: a line between rounds, a V for each stitch, decreases, gathers.

use super::pen::{At, Pen};
use super::profile::{Cone, Edge, Profile};
use super::shape::{Paint, Shape};
use super::view::View;
use core::f64::consts::PI;
use hatwright_sizing::{Hat, Round};

/// The most V's that are drawn one by one; a finer fabric gets only the gaps between them.
const MOST_STITCHES: u32 = 900;
/// The most gaps; beyond it, one stands for several.
const MOST_GAPS: u32 = 2400;
/// Pleats of a gathered top.
const PLEATS: u32 = 22;

/// Draws the relief of all rounds.
pub(super) fn rounds(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    let rings: Vec<Ring<'_>> = hat.rounds.iter().enumerate().map(|(i, round)| Ring::new(i, round, profile)).collect();
    let seen: u32 = rings.iter().map(|r| (f64::from(r.round.after.get()) * r.cone.reach / PI) as u32).sum();

    let (mut light, mut dark) = (Pen::new(), Pen::new());
    let together = seen.div_ceil(MOST_GAPS).max(1);
    for ring in &rings {
        ring.gaps(view, together, &mut dark);
    }
    if seen <= MOST_STITCHES {
        for ring in &rings {
            ring.loops(view, &mut light, &mut dark);
        }
    }
    put(shapes, light, "stitch-light");
    put(shapes, dark, "stitch-dark");

    let mut lines = Pen::new();
    let close = hat.gauge.round.cm() * view.unit < 2.4;
    for ring in rings.iter().skip(usize::from(close)).step_by(if close { 2 } else { 1 }) {
        let (edge, reach) = (ring.cone.upper, ring.cone.reach.min(PI * 0.995));
        lines.go(view.at(edge.radius, -reach, edge.height));
        view.sweep(&mut lines, edge.radius, edge.height, -reach, reach);
    }
    put(shapes, lines, "round-line");

    let mut joined = Pen::new();
    for ring in &rings {
        ring.decreases(view, &mut joined);
    }
    put(shapes, joined, "decrease");

    let mut folds = Pen::new();
    gathers(hat, profile, view, &mut folds);
    put(shapes, folds, "gather");
}

/// Adds a path of a class, where there is anything to draw.
pub(super) fn put(shapes: &mut Vec<Shape>, pen: Pen, class: &'static str) {
    if !pen.is_empty() {
        shapes.push(Shape::path(pen.finish(), Paint::Class(class)));
    }
}

/// A round on the surface.
struct Ring<'a> {
    index: usize,
    round: &'a Round,
    profile: &'a Profile,
    cone: Cone,
}

impl<'a> Ring<'a> {
    fn new(index: usize, round: &'a Round, profile: &'a Profile) -> Self {
        Self { index, round, profile, cone: Cone::between(profile.edges[index], profile.edges[index + 1]) }
    }

    /// A place on the round, `share` of its height up.
    fn at(&self, view: &View, turn: f64, share: f64) -> At {
        let edge = self.level(share);
        view.at(edge.radius, turn, edge.height)
    }

    fn level(&self, share: f64) -> Edge {
        self.profile.level(self.index as f64 + share)
    }

    /// Centres of the stitches that are seen, and half the turn of one. Rounds begin behind, and a stitch stands a little to the
    /// side of the one below, as it does in a spiral.
    fn stitches(&self, together: u32) -> (impl Iterator<Item = f64> + use<>, f64) {
        let count = (self.round.after.get() / together).max(1);
        let turn = 2.0 * PI / f64::from(count);
        let lean = (self.index as f64 * 0.14) % 1.0;
        let reach = self.cone.reach.min(PI) - turn * 0.35;
        let turns = (0..count).map(move |k| -PI + turn * (f64::from(k) + lean)).filter(move |t| t.abs() < reach);
        (turns, turn / 2.0)
    }

    /// Drawn in to a point, stitches are too small to be seen.
    fn hidden(&self, view: &View, half: f64) -> bool {
        half * self.cone.upper.radius * view.unit < 0.7
    }

    /// The lit leg of each V and the hollow between its legs.
    fn loops(&self, view: &View, light: &mut Pen, dark: &mut Pen) {
        let (turns, half) = self.stitches(1);
        if self.hidden(view, half) {
            return;
        }
        for turn in turns {
            let corner = |across: f64, up: f64| self.at(view, turn + across * half, up);
            light.polygon(&[corner(-0.94, 0.84), corner(-0.56, 0.96), corner(-0.06, 0.3), corner(-0.14, 0.06)]);
            dark.polygon(&[corner(-0.4, 0.98), corner(0.4, 0.98), corner(0.0, 0.5)]);
        }
    }

    /// The gaps between the feet of neighbouring V's: one saw along the round.
    fn gaps(&self, view: &View, together: u32, pen: &mut Pen) {
        let (turns, half) = self.stitches(together);
        if self.hidden(view, half) {
            return;
        }
        let low = self.level(0.04);
        let turns: Vec<f64> = turns.collect();
        let (Some(first), Some(last)) = (turns.first(), turns.last()) else { return };
        pen.go(view.at(low.radius, *first, low.height));
        for turn in &turns {
            pen.line(self.at(view, turn + half, 0.74));
            pen.line(self.at(view, turn + 2.0 * half, 0.04));
        }
        view.sweep(pen, low.radius, low.height, last + 2.0 * half, *first);
        pen.close();
    }

    /// Marks where two stitches become one: evenly around, after the round's lead.
    fn decreases(&self, view: &View, pen: &mut Pen) {
        let (decreases, after) = (self.round.decreases.get(), self.round.after.get());
        if decreases == 0 || after == 0 {
            return;
        }
        let half = PI / f64::from(after);
        let lead = 2.0 * half * f64::from(self.round.lead.get());
        for k in 0..decreases {
            let turn = (2.0 * PI * f64::from(k) / f64::from(decreases) + lead) % (2.0 * PI) - PI + half;
            if turn.abs() < self.cone.reach - half * 0.7 {
                let corner = |across: f64, up: f64| self.at(view, turn + across * half, up);
                pen.polygon(&[
                    corner(-0.95, 0.02),
                    corner(-0.45, 0.02),
                    corner(0.0, 0.62),
                    corner(0.45, 0.02),
                    corner(0.95, 0.02),
                    corner(0.0, 0.98),
                ]);
            }
        }
    }
}

/// Folds running from the closed top: long where a wide opening is drawn up, a small star where a few stitches are.
fn gathers(hat: &Hat, profile: &Profile, view: &View, pen: &mut Pen) {
    let count = hat.rounds.len();
    let (pleats, long) = if hat.top.gathered {
        let opening = hat.top.opening.cm() / 2.0;
        (PLEATS.min(hat.top.stitches.get()), opening * 1.5 + hat.gauge.round.cm() * 2.0)
    } else {
        (hat.top.stitches.get().min(PLEATS), 0.0)
    };
    let down = ((long / hat.gauge.round.cm().max(0.05)) as usize).min(count);
    let cones = profile.cones(count - down, profile.edges.len() - 1, 6.0 / view.unit);
    for k in 0..pleats {
        let turn = 2.0 * PI * (f64::from(k) + 0.5) / f64::from(pleats) - PI;
        // Every other fold is shorter.
        let keep = if hat.top.gathered && k % 2 == 1 { cones.len() * 3 / 5 } else { cones.len() };
        let seen: Vec<&Cone> = cones.iter().rev().take(keep.max(1)).take_while(|c| turn.abs() < c.reach).collect();
        let Some(last) = seen.last() else { continue };
        let tip = view.at(last.lower.radius, turn, last.lower.height);
        let wide = PI / f64::from(pleats) * 0.34;
        let side = |sign: f64| {
            let all = seen.len() as f64;
            let along = seen.iter().enumerate().map(|(i, c)| {
                let share = 1.0 - (i as f64 + 1.0) / all;
                view.at(c.lower.radius, turn + sign * wide * share, c.lower.height)
            });
            along.collect::<Vec<At>>()
        };
        let mut corners = vec![view.at(0.0, 0.0, profile.top())];
        corners.extend(side(-1.0));
        corners.push(tip);
        let mut back = side(1.0);
        back.reverse();
        corners.extend(back);
        pen.polygon(&corners);
    }
}
