//! The relief of the fabric in rounds: a line between rounds, a V for each stitch, ribs, decreases, gathers.

use super::pen::{At, Pen};
use super::profile::{Cone, Profile, is_gathered};
use super::shape::{Paint, Shape};
use super::strips::Strip;
use super::view::{Edge, View};
use core::f64::consts::PI;
use core::ops::Range;
use hatwright_sizing::{Fabric, Hat, HatSpec, Loops, Zone};

/// The most V's that are drawn one by one; a finer fabric gets only the gaps between them.
const MOST_STITCHES: u32 = 1000;
/// The most gaps; beyond it, one stands for several.
const MOST_GAPS: u32 = 2000;
/// The most grooves of a rib.
const MOST_RIBS: u32 = 90;
/// Pleats of a gathered top.
const PLEATS: u32 = 22;

/// What hat and band are made of.
#[derive(Clone, Copy, Debug)]
pub(super) struct Texture {
    pub body: Fabric,
    pub band: Fabric,
    /// Stitches in rounds that are seen, all over the hat.
    seen: u32,
}

impl Texture {
    pub fn of(spec: &HatSpec, profile: &Profile) -> Self {
        let mut texture = Self { body: spec.fabric, band: spec.band_fabric(), seen: 0 };
        for part in &profile.parts {
            let rings = (part.start..part.end.min(profile.strips.len())).map(|i| Ring::new(i, profile));
            texture.seen += rings
                .filter(|r| texture.loops(r.strip.zone) != Loops::Posts)
                .map(|r| (f64::from(r.strip.stitches) * r.cone.seen.reach / PI) as u32)
                .sum::<u32>();
        }
        texture
    }

    fn loops(self, zone: Zone) -> Loops {
        if zone == Zone::Band { self.band.row().loops } else { self.body.row().loops }
    }
}

/// Draws the relief of the rounds of a part.
pub(super) fn rounds(hat: &Hat, texture: Texture, profile: &Profile, part: &Range<usize>, view: &View, shapes: &mut Vec<Shape>) {
    let strips = part.start..part.end.min(profile.strips.len());
    let rings: Vec<Ring<'_>> = strips.map(|i| Ring::new(i, profile)).filter(|r| r.cone.seen.reach > 0.0).collect();
    let (ribbed, plain): (Vec<&Ring<'_>>, Vec<&Ring<'_>>) =
        rings.iter().partition(|r| texture.loops(r.strip.zone) == Loops::Posts);
    let (mut light, mut dark) = (Pen::new(), Pen::new());
    let together = texture.seen.div_ceil(MOST_GAPS).max(1);
    for ring in &plain {
        ring.gaps(view, together, &mut dark);
    }
    if texture.seen <= MOST_STITCHES {
        for ring in &plain {
            ring.loops(view, &mut light, &mut dark);
        }
    }
    put(shapes, light, "stitch-light");
    put(shapes, dark, "stitch-dark");

    let (mut lines, mut bars) = (Pen::new(), Pen::new());
    let apart = libm::ceil(2.4 / (hat.gauge.round.cm().max(0.01) * view.unit)).max(1.0) as usize;
    for ring in plain.iter().skip(apart - 1).step_by(apart) {
        ring.line(view, 1.0, &mut lines);
        // A round worked in one loop leaves the other as a bar across the foot of each stitch.
        if matches!(texture.loops(ring.strip.zone), Loops::Back | Loops::Front) {
            ring.line(view, 0.12, &mut bars);
        }
    }
    put(shapes, lines, "round-line");
    put(shapes, bars, "loop-line");
    ribs(&ribbed, view, shapes);

    let mut joined = Pen::new();
    for ring in &plain {
        ring.shaped(view, &mut joined);
    }
    put(shapes, joined, "decrease");

    if part.end + 1 == profile.edges.len() {
        let mut folds = Pen::new();
        gathers(hat, profile, part, view, &mut folds);
        put(shapes, folds, "gather");
    }
}

/// Upright ribs of post stitches, running through all their rounds.
fn ribs(rings: &[&Ring<'_>], view: &View, shapes: &mut Vec<Shape>) {
    let (Some(first), Some(last)) = (rings.first(), rings.last()) else { return };
    let pairs = (first.strip.stitches / 2).clamp(1, 2 * MOST_RIBS);
    let (foot, top) = (first.cone.lower, last.cone.upper);
    let middle = foot.toward(top, 0.5);
    let reach = first.cone.seen.reach;
    let (mut grooves, mut ridges) = (Pen::new(), Pen::new());
    let step = 2.0 * PI / f64::from(pairs);
    for k in 0..pairs {
        let turn = -PI + step * (f64::from(k) + 0.5);
        let spindle = |pen: &mut Pen, turn: f64, wide: f64| {
            if turn.abs() < reach - wide * 0.4 {
                pen.go(view.at(foot, turn));
                pen.curve(view.at(middle, turn - wide), view.at(top, turn));
                pen.curve(view.at(middle, turn + wide), view.at(foot, turn));
                pen.close();
            }
        };
        spindle(&mut grooves, turn, step * 0.32);
        spindle(&mut ridges, turn + step * 0.42, step * 0.3);
    }
    put(shapes, ridges, "ridge");
    put(shapes, grooves, "groove");
    let mut lines = Pen::new();
    for ring in rings.iter().take(rings.len() - 1) {
        ring.line(view, 1.0, &mut lines);
    }
    put(shapes, lines, "post-line");
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
    strip: &'a Strip,
    profile: &'a Profile,
    cone: Cone,
    /// How much of its height the V of a stitch takes: all of a single crochet, the head of a taller stitch.
    head: f64,
}

impl<'a> Ring<'a> {
    fn new(index: usize, profile: &'a Profile) -> Self {
        let strip = &profile.strips[index];
        let cone = Cone::between(profile.edges[index], profile.edges[index + 1]);
        let wide = 2.0 * PI * strip.outer.max(strip.inner) / f64::from(strip.stitches.max(1));
        let head = (1.05 * wide / strip.high.max(0.01)).clamp(0.3, 1.0);
        Self { index, strip, profile, cone, head }
    }

    /// A place on the round, `share` of its height up.
    fn at(&self, view: &View, turn: f64, share: f64) -> At {
        view.at(self.level(share), turn)
    }

    fn level(&self, share: f64) -> Edge {
        self.profile.level(self.index as f64 + share)
    }

    /// A line along the round, so much of its height up.
    fn line(&self, view: &View, share: f64, pen: &mut Pen) {
        let edge = if share < 1.0 { self.level(share) } else { self.cone.upper };
        let (middle, reach) = (self.cone.seen.middle, self.cone.seen.reach.min(PI * 0.995));
        pen.go(view.at(edge, middle - reach));
        view.sweep(pen, edge, middle - reach, middle + reach);
    }

    /// Centres of the stitches that are seen, and half the turn of one. Rounds begin behind, and a stitch stands a little to the
    /// side of the one below, as it does in a spiral.
    fn stitches(&self, together: u32) -> (impl Iterator<Item = f64> + use<>, f64) {
        let count = (self.strip.stitches / together).max(1);
        let turn = 2.0 * PI / f64::from(count);
        let lean = (self.index as f64 * 0.14) % 1.0;
        let seen = self.cone.seen;
        let turns = (0..count).map(move |k| -PI + turn * (f64::from(k) + lean)).filter(move |t| seen.holds(*t, turn * 0.35));
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
        let foot = 1.0 - self.head;
        for turn in turns {
            let corner = |across: f64, up: f64| self.at(view, turn + across * half, foot + up * self.head);
            light.polygon(&[corner(-0.94, 0.84), corner(-0.56, 0.96), corner(-0.06, 0.3), corner(-0.14, 0.06)]);
            dark.polygon(&[corner(-0.4, 0.98), corner(0.4, 0.98), corner(0.0, 0.5)]);
            if foot > 0.15 {
                let post = |across: f64, up: f64| self.at(view, turn + across * half, up * foot);
                light.polygon(&[post(-0.5, 0.08), post(-0.12, 0.08), post(-0.12, 1.1), post(-0.42, 1.1)]);
            }
        }
    }

    /// The gaps between the feet of neighbouring V's, or between posts: one saw along the round.
    fn gaps(&self, view: &View, together: u32, pen: &mut Pen) {
        let (turns, half) = self.stitches(together);
        if self.hidden(view, half) {
            return;
        }
        let low = self.level(0.04);
        let turns: Vec<f64> = turns.collect();
        let (Some(first), Some(last)) = (turns.first(), turns.last()) else { return };
        let tall = self.head < 0.85;
        pen.go(view.at(low, *first));
        for turn in &turns {
            if tall {
                pen.line(self.at(view, turn + half * 0.62, 0.04));
                pen.line(self.at(view, turn + half, 1.0 - self.head * 0.4));
                pen.line(self.at(view, turn + half * 1.38, 0.04));
            } else {
                pen.line(self.at(view, turn + half, 0.74));
                pen.line(self.at(view, turn + 2.0 * half, 0.04));
            }
        }
        let end = last + half * if tall { 1.38 } else { 2.0 };
        view.sweep(pen, low, end, *first);
        pen.close();
    }

    /// Marks where two stitches become one, or one becomes two: evenly around, after the round's lead.
    fn shaped(&self, view: &View, pen: &mut Pen) {
        let (shaped, stitches) = (self.strip.shaped, self.strip.stitches);
        if shaped == 0 || stitches == 0 || shaped > stitches {
            return;
        }
        let half = PI / f64::from(stitches);
        if self.hidden(view, half * 0.6) {
            return;
        }
        let lead = 2.0 * half * f64::from(self.strip.lead);
        for k in 0..shaped {
            let turn = (2.0 * PI * f64::from(k) / f64::from(shaped) + lead) % (2.0 * PI) - PI + half;
            if self.cone.seen.holds(turn, half * 0.7) {
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
pub(super) fn gathers(hat: &Hat, profile: &Profile, part: &Range<usize>, view: &View, pen: &mut Pen) {
    let Some(top) = hat.top else { return };
    let count = profile.strips.len();
    let gathered = is_gathered(hat);
    let (pleats, long) = if gathered {
        let opening = top.opening.cm() / 2.0;
        (PLEATS.min(top.stitches.get()), opening * 1.5 + hat.gauge.round.cm() * 2.0)
    } else {
        (top.stitches.get().min(PLEATS), 0.0)
    };
    let down = profile
        .strips
        .iter()
        .rev()
        .scan(0.0, |sum, s| {
            *sum += s.high;
            Some(*sum)
        })
        .take_while(|sum| *sum < long)
        .count();
    let cones = profile.cones((count - down).max(part.start), profile.edges.len() - 1, 6.0 / view.unit);
    for k in 0..pleats {
        let turn = 2.0 * PI * (f64::from(k) + 0.5) / f64::from(pleats) - PI;
        // Every other fold is shorter.
        let keep = if gathered && k % 2 == 1 { cones.len() * 3 / 5 } else { cones.len() };
        let seen: Vec<&Cone> = cones.iter().rev().take(keep.max(1)).take_while(|c| c.seen.holds(turn, 0.0)).collect();
        let Some(last) = seen.last() else { continue };
        let tip = view.at(last.lower, turn);
        let wide = PI / f64::from(pleats) * 0.34;
        let side = |sign: f64| {
            let all = seen.len() as f64;
            let along = seen.iter().enumerate().map(|(i, c)| {
                let share = 1.0 - (i as f64 + 1.0) / all;
                view.at(c.lower, turn + sign * wide * share)
            });
            along.collect::<Vec<At>>()
        };
        let mut corners = vec![view.centre(profile.tip())];
        corners.extend(side(-1.0));
        corners.push(tip);
        let mut back = side(1.0);
        back.reverse();
        corners.extend(back);
        pen.polygon(&corners);
    }
}
