//! The worn hat's outline, from its rounds: how wide it is at what height.

use super::view;
use core::f64::consts::{FRAC_PI_2, PI};
use hatwright_sizing::{Colour, Hat};

/// Half the breadth of the head form, as a share of the head's girth: a round form, a little narrower than the girth's circle.
pub(super) const HEAD: f64 = 0.150;

/// A level of the hat: its radius and its height above the lower edge, in cm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Edge {
    pub radius: f64,
    pub height: f64,
}

/// A worn hat's measures, in cm.
#[derive(Clone, Debug)]
pub(super) struct Profile {
    /// Lower edges of the rounds from the pick-up round, then the last round's upper edge, then the closed top to its centre.
    pub edges: Vec<Edge>,
    /// Radius of the band around the head.
    pub band: f64,
    /// How far up the single layer of the band goes.
    pub band_top: f64,
    /// How far up the fold goes; zero without one.
    pub fold: f64,
    /// Radius of the fold's outside at its lower half, and at its free edge, which leans in with the crown.
    pub cuff: (f64, f64),
    /// The head's girth.
    pub head: f64,
    /// From the crown's centre over the fabric to the lower edge.
    pub arc: f64,
}

impl Profile {
    pub fn of(hat: &Hat) -> Self {
        let head = hat.head.girth.cm();
        let round = hat.gauge.round.cm();
        let fold = hat.depth.fold.cm().max(0.0);
        let band_top = (hat.depth.band.cm() - fold).max(0.0);
        // Worn, a hat with ease is as wide as the head: only so stretched is its crown as round as the head that it was shaped for.
        let worn = |girth: f64| girth.max(head) / (2.0 * PI);
        let (body, band) = (worn(hat.size.girth.cm()), worn(hat.size.band_girth.cm()));
        let relaxed = (hat.size.girth.cm() / (2.0 * PI)).max(0.01);
        let stitch = hat.gauge.stitch.cm() / (2.0 * PI) * (body / relaxed);

        let count = hat.rounds.len();
        let closing = (hat.depth.above_band.cm() - round * count as f64).max(0.05);
        let first = hat.rounds.first().map_or(body, |r| f64::from(r.after.get()) * stitch);
        let mut radii = Vec::with_capacity(count + 2);
        radii.push(first);
        radii.extend(hat.rounds.iter().map(|r| f64::from(r.after.get()) * stitch));
        smooth(&mut radii);
        let last = radii[count];
        let steps = (libm::ceil(closing / round.max(0.05)) as usize).clamp(1, 40);
        let dome = (closing + round * count as f64).clamp(0.1, first * FRAC_PI_2);
        // Fabric cannot reach further out than it is long from the centre; a gathered top lies on the head like a dome.
        let held = |radius: f64, left: f64| {
            let radius =
                if hat.top.gathered { radius.min(first * libm::sin((left / dome).min(1.0) * FRAC_PI_2)) } else { radius };
            radius.min(left)
        };
        let mut height = band_top;
        let mut edges: Vec<Edge> = Vec::with_capacity(count + steps + 1);
        let mut add = |radius: f64, along: f64| {
            height += edges.last().map_or(0.0, |e| rise(along, radius - e.radius));
            edges.push(Edge { radius, height });
        };
        for (i, radius) in radii.iter().enumerate() {
            add(held(*radius, closing + round * (count - i) as f64), round);
        }
        for k in (0..steps).rev() {
            let share = k as f64 / steps as f64;
            let flat = if hat.top.gathered { last } else { last * share };
            add(held(flat, closing * share), closing / steps as f64);
        }
        round_off(&mut edges);
        let thick = (head * 0.008).max(hat.gauge.band_row.cm() * 0.35);
        let wide = band.max(first) + thick;
        let beside = edges.iter().rev().find(|e| e.height <= fold).map_or(band, |e| e.radius);
        let cuff = (wide, (beside + thick * 1.3).clamp(wide * 0.86, wide));
        Self { edges, band, band_top, fold, cuff, head, arc: hat.depth.promised.cm().max(0.1) }
    }

    /// Height of the crown's centre.
    pub fn top(&self) -> f64 {
        self.edges.last().map_or(0.0, |e| e.height)
    }

    /// How far above height zero the outline reaches as it is seen, in cm on the page: the far side of a flat top lies above its
    /// centre.
    pub fn crest(&self) -> f64 {
        self.edges.iter().map(|e| e.height * view::COS + e.radius * view::SIN).fold(0.0, f64::max)
    }

    /// The widest radius of hat and band.
    pub fn widest(&self) -> f64 {
        let body = self.edges.iter().map(|e| e.radius).fold(self.band, f64::max);
        if self.fold > 0.0 { body.max(self.cuff.0) } else { body }
    }

    /// The level so many rounds above the pick-up edge, on a smooth curve through the edges.
    pub fn level(&self, rounds: f64) -> Edge {
        let last = self.edges.len() - 1;
        let i = (rounds.max(0.0) as usize).min(last - 1);
        let t = (rounds - i as f64).clamp(0.0, 1.0);
        let (b, c) = (self.edges[i], self.edges[i + 1]);
        let a = self.edges[i.saturating_sub(1)];
        // Past the centre the outline comes down on the other side.
        let d = self.edges.get(i + 2).copied().unwrap_or(Edge { radius: -b.radius, height: b.height });
        Edge {
            radius: through(a.radius, b.radius, c.radius, d.radius, t).max(0.0),
            height: through(a.height, b.height, c.height, d.height, t),
        }
    }

    /// The surface from one edge to another in narrow cones, each at most `step` cm high.
    pub fn cones(&self, from: usize, to: usize, step: f64) -> Vec<Cone> {
        let mut cones = Vec::new();
        for i in from..to {
            let (a, b) = (self.edges[i], self.edges[i + 1]);
            let long = libm::hypot(b.radius - a.radius, b.height - a.height);
            let pieces = (libm::ceil(long / step) as usize).clamp(1, 6);
            for k in 0..pieces {
                let at = |k: usize| self.level(i as f64 + k as f64 / pieces as f64);
                cones.push(Cone::between(at(k), at(k + 1)));
            }
        }
        cones
    }
}

/// A narrow piece of the surface.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cone {
    pub lower: Edge,
    pub upper: Edge,
    /// How far from the front it is seen.
    pub reach: f64,
}

impl Cone {
    pub fn between(lower: Edge, upper: Edge) -> Self {
        Self { lower, upper, reach: view::reach(upper.radius - lower.radius, upper.height - lower.height) }
    }
}

/// Consecutive rounds of one colour: the colour and the edges below and above.
pub(super) fn stripes(hat: &Hat, profile: &Profile) -> Vec<(Colour, usize, usize)> {
    let mut runs: Vec<(Colour, usize, usize)> = Vec::new();
    for (i, round) in hat.rounds.iter().enumerate() {
        match runs.last_mut() {
            Some(run) if run.0 == round.colour => run.2 = i + 1,
            _ => runs.push((round.colour, i, i + 1)),
        }
    }
    // The strand that closes the top draws the last round over it.
    if let Some(run) = runs.last_mut() {
        run.2 = profile.edges.len() - 1;
    }
    runs
}

fn rise(along: f64, across: f64) -> f64 {
    libm::sqrt((along * along - across * across).max(0.0))
}

/// Plain and decrease rounds alternate; fabric does not follow every step.
fn smooth(radii: &mut [f64]) {
    for _ in 0..3 {
        let before = radii.to_vec();
        for i in 1..before.len().saturating_sub(1) {
            radii[i] = (before[i - 1] + 2.0 * before[i] + before[i + 1]) / 4.0;
        }
    }
}

/// Fabric bends, it has no corners.
fn round_off(edges: &mut [Edge]) {
    for _ in 0..2 {
        let before = edges.to_vec();
        for i in 1..before.len().saturating_sub(1) {
            let blend = |of: fn(&Edge) -> f64| (of(&before[i - 1]) + 2.0 * of(&before[i]) + of(&before[i + 1])) / 4.0;
            edges[i] = Edge { radius: blend(|e| e.radius), height: blend(|e| e.height) };
        }
    }
}

/// A cubic through b and c with the slopes of their neighbours.
fn through(a: f64, b: f64, c: f64, d: f64, t: f64) -> f64 {
    let (m0, m1) = ((c - a) / 2.0, (d - b) / 2.0);
    let (t2, t3) = (t * t, t * t * t);
    (2.0 * t3 - 3.0 * t2 + 1.0) * b + (t3 - 2.0 * t2 + t) * m0 + (3.0 * t2 - 2.0 * t3) * c + (t3 - t2) * m1
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, Sample};
    use super::*;

    #[test]
    fn a_fitted_crown_is_as_round_as_the_head() {
        for gauge in [(12.0, 15.0), (20.0, 24.0), (27.0, 31.0)] {
            let profile = Profile::of(&Sample { gauge, ..Sample::CAP }.hat());
            let radius = 49.8 / (2.0 * PI);
            let centre = profile.top() - radius;
            for edge in profile.edges.iter().filter(|e| e.height > centre) {
                let far = libm::hypot(edge.radius, edge.height - centre);
                assert!((far / radius - 1.0).abs() < 0.06, "{gauge:?}: {edge:?} lies {far} from the centre, not {radius}");
            }
        }
    }

    #[test]
    fn the_outline_closes_and_never_goes_down() {
        for (name, hat) in sample::hats() {
            let profile = Profile::of(&hat);
            assert!(profile.edges.windows(2).all(|e| e[1].height >= e[0].height - 1e-9), "{name}");
            assert!(profile.edges.last().is_some_and(|e| e.radius.abs() < 1e-9), "{name}");
            assert!(profile.edges.len() > hat.rounds.len() + 1, "{name}");
        }
    }

    #[test]
    fn fabric_is_never_longer_than_it_was_made() {
        for (name, hat) in sample::hats() {
            let profile = Profile::of(&hat);
            let along: f64 =
                profile.edges.windows(2).map(|e| libm::hypot(e[1].radius - e[0].radius, e[1].height - e[0].height)).sum();
            let above = hat.depth.above_band.cm();
            assert!(along < above * 1.12 + 0.1, "{name}: {along} of {above} cm");
        }
    }
}
