//! From the hat's own space (radius, turn, height in cm) to the page: an upright solid of revolution seen a little from above.

use super::pen::{At, Pen};
use core::f64::consts::{FRAC_PI_2, PI};

/// Sine of the angle from which the hat is looked down on, 11.5°: enough to see that it is round.
pub(super) const SIN: f64 = 0.2;
/// Its cosine.
pub(super) const COS: f64 = 0.979_8;

/// Where the axis stands and how large a centimetre is drawn.
#[derive(Clone, Copy, Debug)]
pub(super) struct View {
    /// The axis, across.
    pub x: f64,
    /// Height zero (the hat's lower edge) on the axis.
    pub y: f64,
    /// User units to a centimetre.
    pub unit: f64,
}

impl View {
    /// The place at a radius, a turn from the front (positive to the right) and a height.
    pub fn at(&self, radius: f64, turn: f64, height: f64) -> At {
        let (sin, cos) = libm::sincos(turn);
        At::new(self.x + self.unit * radius * sin, self.level(height) + self.unit * radius * SIN * cos)
    }

    /// The axis at a height.
    pub fn level(&self, height: f64) -> f64 {
        self.y - self.unit * COS * height
    }

    /// Half-axes of the ellipse that a level ring makes.
    pub fn ring(&self, radius: f64) -> (f64, f64) {
        (self.unit * radius, self.unit * radius * SIN)
    }

    /// Draws along a level ring from the pen's place, which must be on it, to another turn less than a whole turn away.
    pub fn sweep(&self, pen: &mut Pen, radius: f64, height: f64, from: f64, to: f64) {
        let (rx, ry) = self.ring(radius);
        // Rightward along the front is against the clock as seen. Arcs near a half turn or more are ambiguous once rounded.
        let pieces = (((to - from).abs() / (FRAC_PI_2 * 1.8)) as u32).min(2) + 1;
        for i in 1..=pieces {
            let turn = from + (to - from) * f64::from(i) / f64::from(pieces);
            pen.arc(rx, ry, to < from, self.at(radius, turn, height));
        }
    }

    /// A strip along the front between two rings, from one turn to another.
    pub fn strip(&self, pen: &mut Pen, lower: (f64, f64), upper: (f64, f64), reach: f64) {
        pen.go(self.at(lower.0, -reach, lower.1));
        self.sweep(pen, lower.0, lower.1, -reach, reach);
        pen.line(self.at(upper.0, reach, upper.1));
        self.sweep(pen, upper.0, upper.1, reach, -reach);
        pen.close();
    }
}

/// How far from the front a cone's side is seen that rises by `rise` while its radius grows by `growth`: π all around, 0 nowhere.
///
/// The outward normal faces the viewer where cos(turn) ≥ growth/rise · tan(tilt).
pub(super) fn reach(growth: f64, rise: f64) -> f64 {
    let slope = growth * SIN;
    let bound = rise.max(0.0) * COS;
    if slope.abs() >= bound * 0.985 {
        return if growth <= 0.0 { PI } else { 0.0 };
    }
    libm::acos(slope / bound)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cylinder_shows_half_and_a_flat_top_all() {
        assert!((reach(0.0, 1.0) - FRAC_PI_2).abs() < 1e-12);
        assert!((reach(-1.0, 0.0) - PI).abs() < 1e-12);
        assert!(reach(1.0, 0.0).abs() < 1e-12);
    }

    #[test]
    fn the_tilt_is_one_angle() {
        assert!((SIN * SIN + COS * COS - 1.0).abs() < 1e-4);
    }
}
