//! A pom-pom: a ball of strand ends, the same every time it is drawn.

use super::chance::Chance;
use super::fabric::put;
use super::pen::{At, Pen};
use super::profile::Profile;
use super::shape::{Paint, Shape};
use super::topper::fullness;
use super::view::{COS, View};
use core::f64::consts::PI;
use hatwright_sizing::{Hat, TopperKind};

/// Strands from the rim of the ball to its middle, ring by ring: how far out their ends lie, and how many there are.
const RINGS: [(f64, u32); 6] = [(1.0, 70), (0.92, 60), (0.77, 46), (0.58, 32), (0.36, 18), (0.14, 6)];
/// How far the ball sinks into the top, in radii.
const SUNK: f64 = 0.14;

/// The ball's centre, in cm from where the hat stands: across, and up on the page; and its radius.
pub(super) fn ball(hat: &Hat, profile: &Profile) -> Option<(f64, f64, f64)> {
    let topper = hat.topper.filter(|topper| topper.kind == TopperKind::PomPom)?;
    let radius = topper.size.cm() / 2.0;
    let tip = profile.tip();
    let (lean, upright) = libm::sincos(tip.tilt);
    let out = radius * (1.0 - SUNK);
    Some((tip.x + out * lean, tip.height * COS + out * upright, radius))
}

/// Paints the ball as one round, for small pictures.
pub(super) fn draw_plain(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    let (Some(pom), Some((x, y, radius))) = (hat.topper, ball(hat, profile)) else { return };
    let colour = pom.colour.or_else(|| hat.colours().last().copied()).unwrap_or_default();
    let mut pen = Pen::new();
    let radius = radius * view.unit;
    pen.ellipse(At::new(view.x + x * view.unit, view.y - y * view.unit), radius, radius, false);
    shapes.push(Shape::path(pen.finish(), Paint::Yarn(colour)));
}

/// Paints the ball.
pub(super) fn draw(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    let (Some(pom), Some((x, y, radius))) = (hat.topper, ball(hat, profile)) else { return };
    let radius = radius * view.unit;
    let centre = At::new(view.x + x * view.unit, view.y - y * view.unit);
    let colours = match pom.colour {
        Some(colour) => vec![colour],
        None => hat.colours(),
    };
    let Some(first) = colours.first().copied() else { return };
    let thick = (hat.gauge.stitch.cm() * view.unit * 0.2).clamp(radius * 0.06, radius * 0.12);
    let more = (radius * 0.1 / thick).clamp(1.0, 1.35) * fullness(hat).clamp(0.5, 1.5);
    let mut chance = Chance(0x9e37_79b9);

    let mut core = Pen::new();
    core.ellipse(centre, radius * 0.8, radius * 0.8, false);
    shapes.push(Shape::path(core.finish(), Paint::Yarn(first)));
    let mut deep = Pen::new();
    core_shadow(&mut deep, centre, radius);
    put(shapes, deep, "strand-shade");

    for (out, count) in RINGS {
        let count = (f64::from(count) * more) as u32;
        let mut by_colour: Vec<Pen> = colours.iter().map(|_| Pen::new()).collect();
        let (mut shade, mut light) = (Pen::new(), Pen::new());
        for k in 0..count {
            let turn = 2.0 * PI * (f64::from(k) + chance.next() * 0.9) / f64::from(count);
            let end = (out * (0.94 + 0.08 * chance.next())).min(1.0) * radius;
            let begin = end - radius * (0.06 + 0.36 * out) * (0.8 + 0.3 * chance.next());
            let strand =
                Strand { centre, turn, lean: turn + (chance.next() - 0.5) * 0.2 / out.max(0.2), begin: begin.max(0.0), end };
            let which = chance.next() * colours.len() as f64;
            strand.draw(&mut by_colour[(which as usize).min(colours.len() - 1)], thick, 0.0);
            // Light comes from the upper left.
            let lit = -(libm::sin(turn) + libm::cos(turn)) * 0.7;
            if lit < chance.next() * 1.2 - 0.75 {
                strand.draw(&mut shade, thick * 0.5, thick * 0.5);
            } else if lit > 0.2 + chance.next() * 0.7 {
                strand.draw(&mut light, thick * 0.4, -thick * 0.2);
            }
        }
        for (pen, colour) in by_colour.into_iter().zip(&colours) {
            if !pen.is_empty() {
                shapes.push(Shape::path(pen.finish(), Paint::Yarn(*colour)));
            }
        }
        put(shapes, shade, "strand-shade");
        put(shapes, light, "strand-light");
    }
}

/// The ball is darker towards the lower right.
fn core_shadow(pen: &mut Pen, centre: At, radius: f64) {
    pen.ellipse(At::new(centre.x + radius * 0.1, centre.y + radius * 0.12), radius * 0.66, radius * 0.64, false);
}

struct Strand {
    centre: At,
    turn: f64,
    lean: f64,
    begin: f64,
    end: f64,
}

impl Strand {
    /// A strand, widest and round at its end; `aside` moves it across its own direction.
    fn draw(&self, pen: &mut Pen, thick: f64, aside: f64) {
        let (sin, cos) = libm::sincos(self.turn);
        let place = |far: f64, across: f64| {
            At::new(self.centre.x + cos * far - sin * (across + aside), self.centre.y + sin * far + cos * (across + aside))
        };
        let (lean_sin, lean_cos) = libm::sincos(self.lean);
        let far = self.end + (self.end - self.begin) * 0.1;
        let tip = At::new(self.centre.x + lean_cos * far - sin * aside, self.centre.y + lean_sin * far + cos * aside);
        let belly = self.begin + (self.end - self.begin) * 0.84;
        pen.go(place(self.begin, thick * 0.25));
        pen.line(place(self.begin, -thick * 0.25));
        pen.line(place(belly, -thick / 2.0));
        pen.curve(tip, place(belly, thick / 2.0));
        pen.close();
    }
}
