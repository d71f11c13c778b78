//! The worn hat's outline, from its rounds: how wide it is at what height, and how its axis leans.

use super::drape;
use super::strips::{Strip, strips};
use super::view::{COS, Edge, SIN, Seen};
use core::f64::consts::{FRAC_PI_2, PI};
use core::ops::Range;
use hatwright_sizing::{BandKind, Colour, Hat, Style, TopKind, Zone};

/// Half the breadth of the head form, as a share of the head's girth: a round form, a little narrower than the girth's circle.
pub(super) const HEAD: f64 = 0.150;

/// A worn hat's measures, in cm.
#[derive(Clone, Debug)]
pub(super) struct Profile {
    /// The rounds from the outermost edge to the crown; those in the fold left out.
    pub strips: Vec<Strip>,
    /// Lower edges of the strips, then the last strip's upper edge, then the closed top to its centre.
    pub edges: Vec<Edge>,
    /// Runs of edges in the order in which they are painted: where fabric hangs over fabric, it is painted later.
    pub parts: Vec<Range<usize>>,
    /// The edge at which the hat sits on the head: the first, but for a brim.
    pub sits: usize,
    /// Radius of the band around the head.
    pub band: f64,
    /// How far up the single layer of a sideways band goes.
    pub band_top: f64,
    /// How far up the fold goes; zero without one.
    pub fold: f64,
    /// Radius of the fold's outside at its lower half, and at its free edge, which leans in with the crown.
    pub cuff: (f64, f64),
    /// The head's girth.
    pub head: f64,
    /// The head's vertex above the hat's lower edge.
    pub vertex: f64,
    /// Fabric of a tail that the picture leaves out.
    pub left_out: f64,
}

impl Profile {
    pub fn of(hat: &Hat) -> Self {
        let head = hat.head.girth.cm();
        let fold = hat.depth.fold.cm().max(0.0);
        let mut all = strips(hat);
        let around = hat.band == BandKind::Sideways;
        let band_top = if around { (hat.depth.band.cm() - fold).max(0.0) } else { 0.0 };
        // Worn, a hat with ease is as wide as the head: only so stretched is its crown as round as the head that it was shaped for.
        let worn = |girth: f64| girth.max(head) / (2.0 * PI);
        let band = worn(hat.size.band_girth.cm());
        let brim = all.iter().take_while(|s| s.zone == Zone::Brim).count();
        if !around {
            hide_folded(&mut all, brim, fold);
        }
        let brim_edges = brim_edges(&all[..brim], head);
        let body = all.split_off(brim);
        let (radii, arcs) = outline(hat, &body, head);
        let vertex = vertex(hat, head, band_top + arcs.first().copied().unwrap_or(0.0));
        let mut edges = brim_edges;
        let sits = edges.len();
        match hat.style {
            Style::EarWarmer => edges.extend(on_head(&radii, &arcs, head, vertex)),
            Style::Tam => edges.extend(drape::tam(&body, &radii, &arcs, band_top)),
            _ => edges.extend(standing(&radii, &arcs, band_top)),
        }
        all.extend(body);
        let wide = edges.get(sits).map_or(band, |e| e.radius);
        let mut profile = Self {
            strips: all,
            edges,
            parts: Vec::new(),
            sits,
            band,
            band_top,
            fold,
            cuff: (0.0, 0.0),
            head,
            vertex,
            left_out: 0.0,
        };
        if hat.band != BandKind::Sideways {
            profile.band = wide;
        }
        if hat.style == Style::Tam {
            profile.vertex = (profile.edges.last().map_or(vertex, |e| e.height) - head * 0.01).max(0.2 * head / PI);
        }
        drape::lean(hat.style, &mut profile);
        profile.parts = drape::parts(hat.style, &profile);
        profile.cuff = profile.cuff_radii(hat);
        profile
    }

    /// Radii of the fold's outside.
    fn cuff_radii(&self, hat: &Hat) -> (f64, f64) {
        let row = if hat.panel.is_some() { hat.gauge.round.cm() } else { hat.gauge.band_row.cm() };
        let thick = (self.head * 0.008).max((row * 0.35).min(self.head * 0.02));
        let first = self.edges.get(self.sits).map_or(self.band, |e| e.radius);
        let wide = self.band.max(first) + thick;
        let beside = self.edges.iter().rev().find(|e| e.height <= self.fold).map_or(self.band, |e| e.radius);
        (wide, (beside + thick * 1.3).clamp(wide * 0.86, wide))
    }

    /// The crown's centre, or the tip of a tail; the upper edge of an ear warmer.
    pub fn tip(&self) -> Edge {
        self.edges.last().copied().unwrap_or(Edge::level(self.band, self.band_top))
    }

    /// Height of the highest fabric.
    pub fn top(&self) -> f64 {
        self.edges.iter().map(|e| e.height).fold(self.band_top, f64::max)
    }

    /// The ring at the hat's edge.
    pub fn rim(&self) -> f64 {
        if self.fold > 0.0 { self.cuff.0 } else { self.band }
    }

    /// What the hat takes up, in cm on the page.
    pub fn extent(&self) -> Extent {
        let mut all = self.crown_extent();
        self.edges.iter().take(self.sits).for_each(|e| all.ring(*e));
        all
    }

    /// The same without a brim.
    pub fn crown_extent(&self) -> Extent {
        let mut all = Extent::default();
        all.ring(Edge::level(self.rim(), 0.0));
        all.ring(Edge::level(self.band, self.band_top));
        if self.fold > 0.0 {
            all.ring(Edge::level(self.cuff.1, self.fold));
        }
        self.edges.iter().skip(self.sits).for_each(|e| all.ring(*e));
        all
    }

    /// The surface from one edge to another in narrow cones, each at most `step` cm high.
    pub fn cones(&self, from: usize, to: usize, step: f64) -> Vec<Cone> {
        let mut cones = Vec::new();
        for i in from..to {
            let (a, b) = (self.edges[i], self.edges[i + 1]);
            let long = libm::hypot(b.radius - a.radius, libm::hypot(b.height - a.height, b.x - a.x))
                .max((b.tilt - a.tilt).abs() * a.radius);
            let pieces = (libm::ceil(long / step) as usize).clamp(1, 6);
            for k in 0..pieces {
                let at = |k: usize| self.level(i as f64 + k as f64 / pieces as f64);
                cones.push(Cone::between(at(k), at(k + 1)));
            }
        }
        cones
    }

    /// The ring so many strips above the outermost edge, on a smooth curve through the edges.
    pub fn level(&self, strips: f64) -> Edge {
        let last = self.edges.len() - 1;
        let i = (strips.max(0.0) as usize).min(last.saturating_sub(1));
        let t = (strips - i as f64).clamp(0.0, 1.0);
        let (b, c) = (self.edges[i], self.edges[(i + 1).min(last)]);
        let corner = |k: usize| k == self.sits && self.sits > 0 || self.strips.get(k).is_some_and(|s| s.gap);
        let a = if corner(i) { b } else { self.edges[i.saturating_sub(1)] };
        // Past the centre the outline comes down on the other side.
        let beyond = if b.radius > 1e-9 && c.radius < 1e-9 { Edge { radius: -b.radius, ..b } } else { c };
        let d = if corner(i + 1) { c } else { self.edges.get(i + 2).copied().unwrap_or(beyond) };
        let through = |of: fn(&Edge) -> f64| through(of(&a), of(&b), of(&c), of(&d), t);
        Edge {
            radius: through(|e| e.radius).max(0.0),
            x: through(|e| e.x),
            height: through(|e| e.height),
            tilt: through(|e| e.tilt),
        }
    }
}

/// What something takes up on the page, in cm from the hat's standing place; all four positive outward.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Extent {
    pub left: f64,
    pub right: f64,
    pub above: f64,
    pub below: f64,
}

impl Extent {
    /// Takes a ring in.
    pub fn ring(&mut self, ring: Edge) {
        let (lean, upright) = libm::sincos(ring.tilt);
        let across = (ring.radius * upright).abs();
        let high = ring.radius * libm::hypot(SIN, COS * lean);
        self.spot(ring.x, ring.height * COS, across, high);
    }

    /// Takes in what reaches so far to both sides, and up and down, of a spot.
    pub fn spot(&mut self, x: f64, y: f64, across: f64, high: f64) {
        self.left = self.left.max(across - x);
        self.right = self.right.max(across + x);
        self.above = self.above.max(y + high);
        self.below = self.below.max(high - y);
    }
}

/// A narrow piece of the surface.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cone {
    pub lower: Edge,
    pub upper: Edge,
    /// What is seen of it.
    pub seen: Seen,
}

impl Cone {
    pub fn between(lower: Edge, upper: Edge) -> Self {
        let tilt = f64::midpoint(lower.tilt, upper.tilt);
        let (lean, upright) = libm::sincos(tilt);
        let rise = (upper.height - lower.height) * upright + (upper.x - lower.x) * lean;
        Self { lower, upper, seen: Seen::of(upper.radius - lower.radius, rise, tilt) }
    }
}

/// Consecutive strips of one colour within a run of edges: the colour and the edges below and above.
pub(super) fn stripes(profile: &Profile, part: &Range<usize>) -> Vec<(Colour, usize, usize)> {
    let mut runs: Vec<(Colour, usize, usize)> = Vec::new();
    let strips = profile.strips.len();
    for i in part.start..part.end.min(strips) {
        let colour = profile.strips[i].colour;
        match runs.last_mut() {
            Some(run) if run.0 == colour => run.2 = i + 1,
            _ => runs.push((colour, i, i + 1)),
        }
    }
    // The strand that closes the top draws the last round over it.
    if let Some(run) = runs.last_mut()
        && part.end > strips
    {
        run.2 = part.end;
    }
    runs
}

/// Whether the top is drawn together from a wide opening.
pub(super) fn is_gathered(hat: &Hat) -> bool {
    hat.top.is_some_and(|top| matches!(top.kind, TopKind::Gathered | TopKind::RowEnds))
}

/// How far along an edge lies across it.
pub(super) fn rise(along: f64, across: f64) -> f64 {
    libm::sqrt((along * along - across * across).max(0.0))
}

/// Height of the head's vertex above the hat's lower edge: the hat lies along the scalp.
fn vertex(hat: &Hat, head: f64, fabric: f64) -> f64 {
    let radius = head / (2.0 * PI);
    let promised = hat.depth.promised.cm().max(0.1);
    let arc = match hat.style {
        // Worn over the ears, with the crown of the head free.
        Style::EarWarmer => hat.depth.wanted.cm().max(promised + 0.12 * head).max(0.36 * head),
        // What hangs over is beyond the depth that the head takes.
        Style::Slouch | Style::Stocking => hat.depth.wanted.cm().min(promised).min(0.395 * head).min(fabric.max(0.1)),
        _ => promised,
    };
    let below = if arc < head / 4.0 { radius * (1.0 - libm::cos(arc / radius)) } else { radius + arc - head / 4.0 };
    below.min(0.36 * head)
}

/// Leaves out what is folded up: the outermost fabric.
fn hide_folded(strips: &mut Vec<Strip>, brim: usize, fold: f64) {
    let mut left = fold;
    while left > 1e-9 && strips.len() > brim + 1 {
        let high = strips[brim].high;
        if high > left {
            strips[brim].high -= left;
            break;
        }
        left -= high;
        strips.remove(brim);
    }
}

/// Edges of a brim, from its rim inward, around a head as wide as the hat's worn edge.
fn brim_edges(brim: &[Strip], head: f64) -> Vec<Edge> {
    let Some(last) = brim.last() else { return Vec::new() };
    let stretched = last.inner.max(head / (2.0 * PI)) - last.inner;
    let mut radii: Vec<f64> = brim.iter().map(|s| s.outer + stretched).collect();
    radii.push(last.inner + stretched);
    smooth(&mut radii);
    let mut height = 0.0;
    let mut edges: Vec<Edge> = Vec::with_capacity(brim.len());
    for i in (0..brim.len()).rev() {
        height -= rise(brim[i].high, radii[i] - radii[i + 1]);
        edges.push(Edge::level(radii[i], height));
    }
    edges.reverse();
    edges
}

/// Worn radii of all edges of the body with the closed top, and how much fabric lies between each and the crown's centre.
fn outline(hat: &Hat, body: &[Strip], head: f64) -> (Vec<f64>, Vec<f64>) {
    if body.is_empty() {
        return (Vec::new(), Vec::new());
    }
    let around = head / (2.0 * PI);
    let own = hat.size.girth.cm().min(hat.size.band_girth.cm()).max(0.1) / (2.0 * PI);
    let stretch = (around / own).max(1.0);
    // Only what is narrower than the head is stretched by it.
    let worn = |radius: f64| if radius * stretch <= around { radius * stretch } else { radius.max(around) };
    let count = body.len();
    let mut radii = Vec::with_capacity(count + 12);
    radii.push(worn(body[0].outer));
    radii.extend((1..count).map(|i| worn(f64::midpoint(body[i - 1].inner, body[i].outer))));
    radii.push(worn(body[count - 1].inner));
    let gathered = is_gathered(hat);
    let closing = match hat.top {
        None => 0.0,
        Some(top) if top.kind == TopKind::Drawn => (top.opening.cm() / 2.0).max(0.05),
        Some(_) => 0.05,
    };
    // A corner at the rim of a tam stays a corner.
    let corner = body.iter().rposition(|s| s.zone == Zone::Under).map_or(0, |i| i + 1);
    if !gathered {
        smooth(&mut radii[..=corner]);
        smooth(&mut radii[corner..]);
    }
    let mut arcs = vec![closing; count + 1];
    for i in (0..count).rev() {
        arcs[i] = arcs[i + 1] + body[i].high;
    }
    let dome = arcs[0].clamp(0.1, around.max(radii[0]) * FRAC_PI_2);
    let first = radii[0];
    // Fabric cannot reach further out than it is long from the centre; a gathered top lies on the head like a dome.
    if hat.top.is_some() {
        for (radius, left) in radii.iter_mut().zip(&arcs) {
            if gathered {
                *radius = radius.min(first * libm::sin((left / dome).min(1.0) * FRAC_PI_2));
            }
            *radius = radius.min(*left);
        }
        let last = radii[count];
        let steps = (libm::ceil(closing / hat.gauge.round.cm().max(0.05)) as usize).clamp(1, 40);
        for k in (0..steps).rev() {
            let share = k as f64 / steps as f64;
            radii.push((last * share).min(closing * share));
            arcs.push(closing * share);
        }
    }
    (radii, arcs)
}

/// The hat upright: each edge as high as what its fabric does not spend on growing narrower.
fn standing(radii: &[f64], arcs: &[f64], from: f64) -> Vec<Edge> {
    let mut height = from;
    let mut edges: Vec<Edge> = Vec::with_capacity(radii.len());
    for (i, radius) in radii.iter().enumerate() {
        if i > 0 {
            height += rise(arcs[i - 1] - arcs[i], radius - radii[i - 1]);
        }
        edges.push(Edge::level(*radius, height));
    }
    round_off(&mut edges);
    edges
}

/// A band on the head: as wide as the head at each height.
fn on_head(radii: &[f64], arcs: &[f64], head: f64, vertex: f64) -> Vec<Edge> {
    let mut height = 0.0;
    let mut edges: Vec<Edge> = Vec::with_capacity(radii.len());
    for (i, radius) in radii.iter().enumerate() {
        let high = if i > 0 { arcs[i - 1] - arcs[i] } else { 0.0 };
        let wide = head_radius(head, vertex, height + high) + (radius - head / (2.0 * PI)).max(0.0);
        height += rise(high, edges.last().map_or(0.0, |e| wide - e.radius));
        edges.push(Edge::level(wide, height));
    }
    edges
}

/// The head's radius at a height above the hat's edge: a sphere above its widest place.
pub(super) fn head_radius(head: f64, vertex: f64, height: f64) -> f64 {
    let radius = head / (2.0 * PI);
    let over = (height - (vertex - radius)).clamp(0.0, radius);
    rise(radius, over)
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
pub(super) fn round_off(edges: &mut [Edge]) {
    for _ in 0..2 {
        let before = edges.to_vec();
        for i in 1..before.len().saturating_sub(1) {
            edges[i] = before[i].toward(before[i - 1].toward(before[i + 1], 0.5), 0.5);
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
#[path = "profile_check.rs"]
mod tests;
