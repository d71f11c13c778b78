//! From the hat's own space (centimetres) to the page: rings about an axis that stands, leans or bends, seen a little from above.

use super::pen::{At, Pen};
use core::f64::consts::{FRAC_PI_2, PI};

/// Sine of the angle from which the hat is looked down on, 11.5°: enough to see that it is round.
pub(super) const SIN: f64 = 0.2;
/// Its cosine.
pub(super) const COS: f64 = 0.979_8;

/// A ring of fabric around the hat's axis, in cm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Edge {
    pub radius: f64,
    /// Its centre, to the right of where the hat stands.
    pub x: f64,
    /// Its centre above the hat's lower edge.
    pub height: f64,
    /// How far the axis leans to the right there: 0 stands, π hangs.
    pub tilt: f64,
}

impl Edge {
    /// A level ring about the upright axis.
    pub const fn level(radius: f64, height: f64) -> Self {
        Self { radius, x: 0.0, height, tilt: 0.0 }
    }

    /// A ring between this one and another.
    pub fn toward(self, to: Self, share: f64) -> Self {
        let part = |a: f64, b: f64| a + (b - a) * share;
        Self {
            radius: part(self.radius, to.radius),
            x: part(self.x, to.x),
            height: part(self.height, to.height),
            tilt: part(self.tilt, to.tilt),
        }
    }
}

/// Where the axis stands and how large a centimetre is drawn.
#[derive(Clone, Copy, Debug)]
pub(super) struct View {
    /// The upright axis, across.
    pub x: f64,
    /// Height zero (the hat's lower edge) on the axis.
    pub y: f64,
    /// User units to a centimetre.
    pub unit: f64,
}

impl View {
    /// The place on a ring, a turn from the front (positive to the right).
    ///
    /// The ring's plane holds the line towards the viewer and the line across the axis; the latter rises and falls as the axis leans.
    pub fn at(&self, ring: Edge, turn: f64) -> At {
        let (sin, cos) = libm::sincos(turn);
        let (lean, upright) = libm::sincos(ring.tilt);
        let across = ring.radius * sin;
        At::new(
            self.x + self.unit * (ring.x + across * upright),
            self.level(ring.height - across * lean) + self.unit * ring.radius * SIN * cos,
        )
    }

    /// The upright axis at a height.
    pub fn level(&self, height: f64) -> f64 {
        self.y - self.unit * COS * height
    }

    /// A ring's centre.
    pub fn centre(&self, ring: Edge) -> At {
        At::new(self.x + self.unit * ring.x, self.level(ring.height))
    }

    /// Draws along a ring from the pen's place, which must be on it, to another turn at most a whole turn away.
    pub fn sweep(&self, pen: &mut Pen, ring: Edge, from: f64, to: f64) {
        let (rx, ry, turn) = self.ellipse(ring);
        // Rightward along the front is against the clock as seen, while the axis points upward.
        let clockwise = (to < from) == (libm::cos(ring.tilt) >= 0.0);
        // Arcs near a half turn or more are ambiguous once rounded.
        let pieces = (((to - from).abs() / (FRAC_PI_2 * 1.8)) as u32).min(2) + 1;
        for i in 1..=pieces {
            let place = self.at(ring, from + (to - from) * f64::from(i) / f64::from(pieces));
            if ry < 0.3 {
                pen.line(place);
            } else {
                pen.turned_arc(rx, ry, turn, clockwise, place);
            }
        }
    }

    /// A whole ring as a closed figure.
    pub fn ring(&self, pen: &mut Pen, ring: Edge, clockwise: bool) {
        let (from, to) = if clockwise { (PI, -PI) } else { (-PI, PI) };
        pen.go(self.at(ring, from));
        self.sweep(pen, ring, from, to);
        pen.close();
    }

    /// Half-axes of the ellipse that a ring makes, the longer first, and how far that is turned clockwise, in tenths of a degree.
    fn ellipse(&self, ring: Edge) -> (f64, f64, i32) {
        let long = self.unit * ring.radius;
        if ring.tilt == 0.0 {
            return (long, long * SIN, 0);
        }
        // Two conjugate half-diameters, (a, b) and (0, c); the axes are the singular values of their matrix.
        let (lean, upright) = libm::sincos(ring.tilt);
        let (a, b, c) = (long * upright, long * COS * lean, long * SIN);
        let (xx, xy, yy) = (a * a, a * b, b * b + c * c);
        let middle = f64::midpoint(xx, yy);
        let off = libm::hypot((xx - yy) / 2.0, xy);
        let turn = libm::atan2(2.0 * xy, xx - yy) / 2.0;
        (libm::sqrt(middle + off), libm::sqrt((middle - off).max(0.0)), libm::round(turn.to_degrees() * 10.0) as i32)
    }

    /// A strip along the front between two level rings, from one turn to another.
    pub fn strip(&self, pen: &mut Pen, lower: Edge, upper: Edge, reach: f64) {
        pen.go(self.at(lower, -reach));
        self.sweep(pen, lower, -reach, reach);
        pen.line(self.at(upper, reach));
        self.sweep(pen, upper, reach, -reach);
        pen.close();
    }
}

/// Which part of a cone between two rings is seen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Seen {
    /// The turn that faces the viewer: in the middle of what is seen.
    pub middle: f64,
    /// How far to both sides of it the surface is seen: π all around, 0 nowhere.
    pub reach: f64,
}

impl Seen {
    /// What is seen of a cone whose axis leans by `tilt`, and which rises by `rise` along it while its radius grows by `growth`.
    ///
    /// The outward normal faces the viewer where cos(turn + lean) ≥ growth/rise · what the tilt leaves of the view from above.
    pub fn of(growth: f64, rise: f64, tilt: f64) -> Self {
        let (lean, upright) = libm::sincos(tilt);
        let facing = libm::hypot(COS, SIN * lean);
        let slope = growth * SIN * upright;
        let bound = rise.max(0.0) * facing;
        let reach = if slope.abs() >= bound * 0.985 { if slope <= 0.0 { PI } else { 0.0 } } else { libm::acos(slope / bound) };
        Self { middle: -libm::atan2(SIN * lean, COS), reach }
    }

    /// The leftmost turn that is seen.
    pub fn from(self) -> f64 {
        self.middle - self.reach
    }

    /// The rightmost turn that is seen.
    pub fn to(self) -> f64 {
        self.middle + self.reach
    }

    /// Whether it is seen from all sides.
    pub fn around(self) -> bool {
        self.reach >= PI
    }

    /// Whether a turn is seen, at least so far inside.
    pub fn holds(self, turn: f64, inside: f64) -> bool {
        (turn - self.middle).abs() < self.reach - inside
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cylinder_shows_half_and_a_flat_top_all() {
        assert!((Seen::of(0.0, 1.0, 0.0).reach - FRAC_PI_2).abs() < 1e-12);
        assert!((Seen::of(-1.0, 0.0, 0.0).reach - PI).abs() < 1e-12);
        assert!(Seen::of(1.0, 0.0, 0.0).reach.abs() < 1e-12);
        // A hanging disc turns its face down.
        assert!(Seen::of(-1.0, 0.0, PI).reach.abs() < 1e-12);
    }

    #[test]
    fn the_tilt_is_one_angle() {
        assert!((SIN * SIN + COS * COS - 1.0).abs() < 1e-4);
    }

    #[test]
    fn an_arc_passes_through_the_ring_that_it_draws() {
        let view = View { x: 200.0, y: 200.0, unit: 10.0 };
        for tilt in [0.0, 0.3, 1.2, 2.0, PI] {
            let ring = Edge { radius: 8.0, x: 1.0, height: 4.0, tilt };
            let (rx, ry, turn) = view.ellipse(ring);
            let centre = view.centre(ring);
            for k in 0..12 {
                let at = view.at(ring, f64::from(k) * 0.5);
                let (sin, cos) = (f64::from(turn) / 10.0).to_radians().sin_cos();
                let (dx, dy) = (at.x - centre.x, at.y - centre.y);
                let off = ((dx * cos + dy * sin) / rx).hypot((dy * cos - dx * sin) / ry);
                assert!((off - 1.0).abs() < 0.02, "{tilt} {k}: {off}");
            }
        }
    }
}
