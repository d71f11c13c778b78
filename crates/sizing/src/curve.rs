//! The curve that a crown follows: girth of the fabric against the distance from the crown's centre.

use core::f64::consts::{PI, TAU};

/// Girth against arc, all in cm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Curve {
    /// Girth of the tube below the crown.
    girth: f64,
    shape: Shape,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Shape {
    /// A sine over the quarter arc of that length.
    Dome { quarter: f64 },
    /// A flat disc whose edge is rounded with this radius.
    Disc { edge: f64 },
    /// A girth of `narrow` up to `from`, then straight to the full girth at `to`.
    Cone { narrow: f64, from: f64, to: f64 },
}

/// Radius of the rounded edge of a slouch hat's flat closing, as a share of its disc's radius (practice, no source: a third is
/// 3 cm on an adult's hat).
const SLOUCH_EDGE: f64 = 1.0 / 3.0;

impl Curve {
    /// The curve for fabric of `arc` cm above the band on a head of girth `head`; `None` where even a flat disc would not close.
    ///
    /// Where the arc allows it, a hemisphere whose quarter arc is a quarter of the head; with less, the same curve over the arc
    /// that there is; with less still, a disc with a rounded edge. The three meet without a step.
    pub fn new(girth: f64, head: f64, arc: f64) -> Option<Self> {
        // A hat looser than its head is a dome of its own size: anything steeper would ruffle.
        let quarter = head.max(girth) / 4.0;
        let radius = girth / TAU;
        let shape = if arc >= quarter {
            Shape::Dome { quarter }
        } else if arc >= girth / 4.0 {
            Shape::Dome { quarter: arc }
        } else if arc >= radius {
            Shape::Disc { edge: (arc - radius) / (PI / 2.0 - 1.0) }
        } else {
            return None;
        };
        Some(Self { girth, shape })
    }

    /// A flat closing on a tube: a disc whose edge is rounded with a third of its radius, or with less where the arc is short. `None`
    /// where even a disc without a rounded edge would not close.
    ///
    /// A tube of 61 cm is a disc of 9.7 cm radius: flat to 6.5 cm, then rounded with 3.2 cm until the tube begins, 11.6 cm out.
    pub fn slouch(girth: f64, arc: f64) -> Option<Self> {
        let radius = girth / TAU;
        let edge = ((arc - radius) / (PI / 2.0 - 1.0)).min(radius * SLOUCH_EDGE);
        (edge >= 0.0).then_some(Self { girth, shape: Shape::Disc { edge } })
    }

    /// A flat disc of this girth: 2π a centimetre.
    pub const fn flat(girth: f64) -> Self {
        Self { girth, shape: Shape::Disc { edge: 0.0 } }
    }

    /// From one girth, up to a distance from the centre, to another, from a distance on, in a straight line between.
    pub const fn cone(narrow: f64, from: f64, girth: f64, to: f64) -> Self {
        Self { girth, shape: Shape::Cone { narrow, from, to } }
    }

    /// Girth at a distance from the centre; 0 at and before the centre.
    pub fn at(&self, s: f64) -> f64 {
        if s <= 0.0 {
            return 0.0;
        }
        match self.shape {
            Shape::Dome { quarter } if s < quarter => self.girth * libm::sin(PI / 2.0 * s / quarter),
            Shape::Disc { edge } => {
                let flat = self.girth / TAU - edge;
                let past = s - flat;
                if past <= 0.0 {
                    TAU * s
                } else if past < edge * PI / 2.0 {
                    TAU * (flat + edge * libm::sin(past / edge))
                } else {
                    self.girth
                }
            }
            Shape::Cone { narrow, from, to } if s < to => {
                narrow + (self.girth - narrow) * ((s - from) / (to - from).max(f64::MIN_POSITIVE)).max(0.0)
            }
            Shape::Dome { .. } | Shape::Cone { .. } => self.girth,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hemisphere_has_the_area_of_a_hemisphere() {
        let (head, girth) = (49.8, 49.8);
        let curve = Curve::new(girth, head, 20.0).unwrap();
        let steps = 10_000;
        let ds = head / 4.0 / f64::from(steps);
        let area: f64 = (0..steps).map(|i| curve.at((f64::from(i) + 0.5) * ds) * ds).sum();
        let radius = girth / TAU;
        assert!((area / (TAU * radius * radius) - 1.0).abs() < 1e-6);
    }

    #[test]
    fn the_regimes_meet_and_reach_the_tube() {
        let (head, girth) = (50.0, 46.0);
        for (above, below) in [(head / 4.0, head / 4.0 - 1e-9), (girth / 4.0, girth / 4.0 - 1e-9)] {
            let (a, b) = (Curve::new(girth, head, above).unwrap(), Curve::new(girth, head, below).unwrap());
            for i in 0..=100 {
                let s = above * f64::from(i) / 100.0;
                assert!((a.at(s) - b.at(s)).abs() < 1e-4, "at {s}");
            }
            assert!((b.at(below) - girth).abs() < 1e-6);
        }
        assert!(Curve::new(girth, head, girth / TAU - 0.01).is_none());
    }

    /// The trade's rule of thumb, "6, 8, 12 a round" for single, half double and double crochet (common practice, no source), out of
    /// the flat disc: gauges 14 × 16, 13 × 10 and 13 × 7 to 10 cm give 5.5, 8.2 and 11.7.
    #[test]
    fn a_flat_disc_grows_by_the_rule_of_thumb() {
        for (across, up, want, rule) in [(14.0, 16.0, 5.5, 6.0), (13.0, 10.0, 8.2, 8.0), (13.0, 7.0, 11.7, 12.0_f64)] {
            let (w, h): (f64, f64) = (10.0 / across, 10.0 / up);
            let disc = Curve::new(60.0, 60.0, 60.0 / TAU).unwrap();
            let grown = (disc.at(4.0 * h) - disc.at(3.0 * h)) / w;
            assert!((grown - want).abs() < 0.05, "{grown}");
            assert!((grown - rule).abs() <= 0.55);
        }
    }

    /// A slouch hat's closing is a disc whose edge is rounded with a third of its radius, where the arc allows it.
    #[test]
    fn a_slouch_closes_flat() {
        let (girth, radius) = (61.0, 61.0 / TAU);
        let curve = Curve::slouch(girth, 25.0).unwrap();
        let begins = radius * (2.0 / 3.0 + PI / 6.0);
        assert!((curve.at(radius / 2.0) - girth / 2.0).abs() < 1e-9);
        assert!((curve.at(begins) - girth).abs() < 1e-6 && curve.at(begins - 0.5) < girth - 0.1);
        assert!(Curve::slouch(girth, radius + 0.01).is_some() && Curve::slouch(girth, radius - 0.01).is_none());
    }

    #[test]
    fn a_cone_is_straight_between_two_tubes() {
        let curve = Curve::cone(8.0, 10.0, 48.0, 30.0);
        for (s, girth) in [(5.0, 8.0), (10.0, 8.0), (20.0, 28.0), (30.0, 48.0), (40.0, 48.0)] {
            assert!((curve.at(s) - girth).abs() < 1e-9, "at {s}");
        }
    }
}
