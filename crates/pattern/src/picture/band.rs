//! The sideways band, whose rows are upright ribs that wrap around the head, and the fold of any band.

use super::fabric::{Texture, put};
use super::pen::{At, Pen};
use super::profile::{Profile, head_radius};
use super::shape::{Paint, Shape};
use super::view::{Edge, View};
use core::f64::consts::{FRAC_PI_2, PI};
use hatwright_sizing::{BandKind, Begun, Colour, Hat, Loops, Style, Zone};

/// The most marks of single stitches; beyond it, a mark stands for several.
const MOST_MARKS: usize = 600;
/// The narrowest row that is drawn in a small picture, in user units, and how many rows stand for narrower ones.
const LEAST_ROW: f64 = 1.6;
const MELTED: usize = 48;
/// The most ribs of post stitches in a fold.
const MOST_RIBS: u32 = 90;

/// Paints what of a sideways band's single layer is not behind the fold.
pub(super) fn draw_layer(hat: &Hat, texture: Option<Texture>, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    let low = profile.fold;
    if hat.band != BandKind::Sideways || profile.band_top <= low || profile.band_top <= 0.0 {
        return;
    }
    let (middle, top) = match (hat.style, profile.edges.get(profile.sits)) {
        (Style::EarWarmer, _) | (_, None) => (on_head(profile, profile.band_top / 2.0), on_head(profile, profile.band_top)),
        (_, Some(edge)) => ((profile.band * 3.0 + edge.radius) / 4.0, edge.radius),
    };
    let sleeve = Sleeve { low: 0.0, high: profile.band_top, radii: [profile.band, middle, top], loose: false };
    sleeve.draw(
        &hat.band_rows,
        hat.gauge.band_stitch.cm(),
        ribbed(texture),
        texture.is_some(),
        view,
        hat.depth.band.cm(),
        profile.head,
        shapes,
    );
}

/// Paints the inside of the fold that shows behind a narrower crown.
pub(super) fn draw_behind(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    if profile.fold <= 0.0 {
        return;
    }
    let mut pen = Pen::new();
    view.ring(&mut pen, Edge::level(profile.cuff.1, profile.fold), false);
    let data = pen.finish();
    shapes.push(Shape::path(data.clone(), Paint::Yarn(edge_colour(hat))));
    shapes.push(Shape::path(data, Paint::Class("inside")));
}

/// Paints the inside of an ear warmer's far side.
pub(super) fn draw_inside(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    let height = profile.band_top.max(profile.top());
    let radius = match profile.edges.last() {
        Some(edge) => edge.radius,
        None => on_head(profile, height),
    };
    let mut pen = Pen::new();
    view.ring(&mut pen, Edge::level(radius, height), false);
    let data = pen.finish();
    shapes.push(Shape::path(data.clone(), Paint::Yarn(edge_colour(hat))));
    shapes.push(Shape::path(data, Paint::Class("inside")));
}

/// Radius of a sideways band on the head, at a height.
fn on_head(profile: &Profile, height: f64) -> f64 {
    head_radius(profile.head, profile.vertex, height) + (profile.band - profile.head / (2.0 * PI)).max(0.0)
}

/// The colour at the hat's edge.
fn edge_colour(hat: &Hat) -> Colour {
    let row = hat.band_rows.first().copied().or_else(|| hat.panel.as_ref().and_then(|p| p.rows.first()).map(|r| r.colour));
    let round = match hat.begun {
        Begun::Band => hat.rounds.first(),
        Begun::Crown => hat.rounds.last(),
    };
    row.or(round.map(|r| r.colour)).unwrap_or_default()
}

fn ribbed(texture: Option<Texture>) -> bool {
    texture.is_none_or(|t| t.band.row().loops != Loops::Both)
}

/// Paints the fold, with its shadow on the body.
pub(super) fn draw_fold(hat: &Hat, texture: Option<Texture>, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    if profile.fold <= 0.0 {
        return;
    }
    let (fold, cuff) = (profile.fold, profile.cuff);
    if texture.is_some() {
        let mut shadow = Pen::new();
        for depth in [0.012, 0.02, 0.028, 0.036] {
            let above = fold + depth * profile.head;
            let body = profile.edges.iter().rev().find(|e| e.height <= above).map_or(profile.band, |e| e.radius);
            view.strip(&mut shadow, Edge::level(body, fold - 0.02 * profile.head), Edge::level(body, above), FRAC_PI_2 * 0.98);
        }
        put(shapes, shadow, "shadow");
    }
    let middle = if cuff.1 < cuff.0 { cuff.0 * 0.75 + cuff.1 * 0.25 } else { cuff.0 };
    let sleeve = Sleeve { low: 0.0, high: fold, radii: [cuff.0 * 0.982, middle, cuff.1], loose: true };
    let fancy = texture.is_some();
    match &hat.panel {
        Some(panel) => {
            let rows: Vec<Colour> = panel.rows.iter().map(|r| r.colour).collect();
            let ribbed = texture.is_none_or(|t| t.body.row().loops != Loops::Both);
            sleeve.draw(&rows, hat.gauge.stitch.cm(), ribbed, fancy, view, fold, profile.head, shapes);
        }
        None if hat.band == BandKind::Around => sleeve.draw_rounds(hat, texture, view, profile.head, shapes),
        None => sleeve.draw(&hat.band_rows, hat.gauge.band_stitch.cm(), ribbed(texture), fancy, view, fold, profile.head, shapes),
    }
}

/// A layer of band, in cm.
struct Sleeve {
    low: f64,
    high: f64,
    /// Radii at the lower edge, half way and at the upper edge.
    radii: [f64; 3],
    /// Its upper edge lies free, on the body.
    loose: bool,
}

impl Sleeve {
    /// Rows as upright ribs, each `stitch` cm to a stitch; `fancy` with their relief.
    #[allow(clippy::too_many_arguments)]
    fn draw(
        &self,
        colours: &[Colour],
        stitch: f64,
        ribbed: bool,
        fancy: bool,
        view: &View,
        long: f64,
        head: f64,
        shapes: &mut Vec<Shape>,
    ) {
        // In a small picture, rows as fine as a hair melt into the first colour.
        let fine = !fancy && 2.0 * PI * self.radii[0] * view.unit < LEAST_ROW * colours.len() as f64;
        let melted = [colours.first().copied().unwrap_or_default(); MELTED];
        let colours = if fine { &melted[..] } else { colours };
        let rows = Rows { sleeve: self, view, count: colours.len().max(1), swell: if ribbed { 1.0 } else { 0.35 } };
        let (from, to) = rows.seen();

        let mut by_colour: Vec<(Colour, Pen)> = Vec::new();
        let mut row = from;
        while row < to {
            let colour = colours.get(row).copied().unwrap_or_default();
            let end = (row..to).find(|r| colours.get(*r).copied().unwrap_or_default() != colour).unwrap_or(to);
            rows.block(pen_of(&mut by_colour, colour), row, end);
            row = end;
        }
        for (colour, pen) in by_colour {
            shapes.push(Shape::path(pen.finish(), Paint::Yarn(colour)));
        }
        if !fancy {
            return;
        }

        let mut marks = Pen::new();
        rows.marks(&mut marks, (long / stitch.max(0.05)).max(1.0));
        put(shapes, marks, "rib-stitch");
        let (mut grooves, mut ridges) = (Pen::new(), Pen::new());
        for row in (from..=to).filter(|r| r % 2 == 0) {
            rows.sliver(&mut grooves, row as f64, 0.34);
            rows.sliver(&mut ridges, row as f64 + 0.8, 0.3);
        }
        if ribbed {
            put(shapes, ridges, "ridge");
        }
        put(shapes, grooves, if ribbed { "groove" } else { "rib-stitch" });

        let mut outline = Pen::new();
        rows.block(&mut outline, from, to);
        let mut rim = Pen::new();
        rim.go(rows.at(from, 1.0));
        rows.scallops(&mut rim, from, to, 1.0);
        self.finish(outline, rim, view, head, shapes);
    }

    /// Rounds of a band worked around, folded up: the edge that was lowest is uppermost.
    fn draw_rounds(&self, hat: &Hat, texture: Option<Texture>, view: &View, head: f64, shapes: &mut Vec<Shape>) {
        let mut rounds: Vec<(Colour, u32)> =
            hat.rounds.iter().filter(|r| r.zone == Zone::Band).map(|r| (r.colour, r.after.get())).collect();
        if hat.begun == Begun::Crown {
            rounds.reverse();
        }
        let high = (hat.depth.band.cm() / rounds.len().max(1) as f64).max(0.05);
        let shown = ((self.high / high) as usize + 1).min(rounds.len());
        let share = |k: usize| (1.0 - k as f64 * high / self.high).max(0.0);
        let edge = |up: f64| {
            let (radius, height) = self.level(up);
            Edge::level(radius, height)
        };
        let mut by_colour: Vec<(Colour, Pen)> = Vec::new();
        let mut lines = Pen::new();
        for (k, (colour, _)) in rounds.iter().take(shown).enumerate() {
            if share(k + 1) < share(k) {
                view.strip(pen_of(&mut by_colour, *colour), edge(share(k + 1)), edge(share(k)), FRAC_PI_2);
            }
            if k > 0 {
                lines.go(view.at(edge(share(k)), -FRAC_PI_2));
                view.sweep(&mut lines, edge(share(k)), -FRAC_PI_2, FRAC_PI_2);
            }
        }
        for (colour, pen) in by_colour {
            shapes.push(Shape::path(pen.finish(), Paint::Yarn(colour)));
        }
        let Some(texture) = texture else { return };
        let (mut grooves, mut ridges) = (Pen::new(), Pen::new());
        let posts = texture.band.row().loops == Loops::Posts;
        let stitches = rounds.first().map_or(2, |r| r.1);
        let pairs = if posts { (stitches / 2).clamp(1, 2 * MOST_RIBS) } else { stitches.clamp(1, 4 * MOST_RIBS) };
        let step = 2.0 * PI / f64::from(pairs);
        for k in 0..pairs {
            let turn = -PI + step * (f64::from(k) + 0.5);
            let wide = step * if posts { 0.32 } else { 0.16 };
            if turn.abs() < FRAC_PI_2 - wide {
                self.spindle(&mut grooves, view, turn, wide);
                self.spindle(&mut ridges, view, turn + step * 0.42, wide);
            }
        }
        put(shapes, ridges, "ridge");
        put(shapes, grooves, if posts { "groove" } else { "stitch-dark" });
        put(shapes, lines, if posts { "post-line" } else { "round-line" });

        let mut outline = Pen::new();
        view.strip(&mut outline, edge(0.0), edge(1.0), FRAC_PI_2);
        let mut rim = Pen::new();
        rim.go(view.at(edge(1.0), -FRAC_PI_2));
        view.sweep(&mut rim, edge(1.0), -FRAC_PI_2, FRAC_PI_2);
        self.finish(outline, rim, view, head, shapes);
    }

    /// A narrow upright spindle at a turn.
    fn spindle(&self, pen: &mut Pen, view: &View, turn: f64, wide: f64) {
        let place = |turn: f64, share: f64| {
            let (radius, height) = self.level(share);
            view.at(Edge::level(radius, height), turn)
        };
        pen.go(place(turn, 0.0));
        pen.curve(place(turn - wide, 0.5), place(turn, 1.0));
        pen.curve(place(turn + wide, 0.5), place(turn, 0.0));
        pen.close();
    }

    /// Light, the turned lower edge, and a loose upper edge.
    fn finish(&self, outline: Pen, rim: Pen, view: &View, head: f64, shapes: &mut Vec<Shape>) {
        shapes.push(Shape::path(outline.finish(), Paint::Gradient("hat-shade")));
        let mut turned = Pen::new();
        for rise in [0.006, 0.011, 0.016, 0.021, 0.026] {
            let (radius, height) = self.level((rise * head / (self.high - self.low)).min(0.4));
            view.strip(&mut turned, Edge::level(self.radii[0], self.low), Edge::level(radius, height), FRAC_PI_2);
        }
        put(shapes, turned, "shadow");
        if self.loose {
            put(shapes, rim, "rim");
        }
    }

    /// Radius of the quadratic curve's control point, half way up: the curve passes through all three radii.
    fn control(&self) -> f64 {
        let [low, middle, high] = self.radii;
        2.0 * middle - f64::midpoint(low, high)
    }

    /// Radius and height, so much of the way up.
    fn level(&self, share: f64) -> (f64, f64) {
        let [low, _, high] = self.radii;
        let rest = 1.0 - share;
        let radius = low * rest * rest + 2.0 * self.control() * rest * share + high * share * share;
        (radius, self.low + (self.high - self.low) * share)
    }
}

/// The pen that collects a colour's outlines.
fn pen_of(pens: &mut Vec<(Colour, Pen)>, colour: Colour) -> &mut Pen {
    let known = pens.iter().position(|p| p.0 == colour).unwrap_or_else(|| {
        pens.push((colour, Pen::new()));
        pens.len() - 1
    });
    &mut pens[known].1
}

/// Where the rows of a sleeve lie on the page. The first row begins behind, at the seam.
struct Rows<'a> {
    sleeve: &'a Sleeve,
    view: &'a View,
    count: usize,
    /// How much a ridge of two rows swells: 1 in a rib.
    swell: f64,
}

impl Rows<'_> {
    /// The rows that are seen, those at the sides in part.
    fn seen(&self) -> (usize, usize) {
        (self.count / 4, (self.count * 3).div_ceil(4))
    }

    fn turn(&self, row: f64) -> f64 {
        (2.0 * PI * row / self.count as f64 - PI).clamp(-FRAC_PI_2, FRAC_PI_2)
    }

    fn place(&self, row: f64, share: f64) -> At {
        let (radius, height) = self.sleeve.level(share);
        self.view.at(Edge::level(radius, height), self.turn(row))
    }

    fn at(&self, row: usize, share: f64) -> At {
        let ridge = row - row % 2;
        if row == ridge {
            return self.place(row as f64, share);
        }
        // The crest of the ridge's arch.
        let (a, b) = (self.place(ridge as f64, share), self.place(ridge as f64 + 2.0, share));
        self.crest(a, b, share).toward(a.toward(b, 0.5), 0.5)
    }

    /// The control point of a ridge's arch between its two grooves: two rows swell together.
    fn crest(&self, a: At, b: At, share: f64) -> At {
        let middle = a.toward(b, 0.5);
        let swell = ((b.x - a.x) * 0.26).min(self.view.unit * 0.45) * self.swell;
        At::new(middle.x, if share > 0.5 { middle.y - swell } else { middle.y + swell * 0.8 })
    }

    /// Along an edge from one row boundary to another, from the pen's place; either way.
    fn scallops(&self, pen: &mut Pen, from: usize, to: usize, share: f64) {
        let steps: Vec<usize> = if from < to { (from..to).collect() } else { (to..from).rev().collect() };
        for row in steps {
            let ridge = (row - row % 2) as f64;
            let (a, b) = (self.place(ridge, share), self.place(ridge + 2.0, share));
            let crest = self.crest(a, b, share);
            let control = if row % 2 == 0 { a.toward(crest, 0.5) } else { crest.toward(b, 0.5) };
            pen.curve(control, self.at(if from < to { row + 1 } else { row }, share));
        }
    }

    /// Upright side of a row, from the pen's place to the upper edge or to the lower.
    fn side(&self, pen: &mut Pen, row: usize, up: bool) {
        let middle = f64::midpoint(self.sleeve.low, self.sleeve.high);
        let control = self.view.at(Edge::level(self.sleeve.control(), middle), self.turn(row as f64));
        pen.curve(control, self.at(row, if up { 1.0 } else { 0.0 }));
    }

    /// The outline of some rows.
    fn block(&self, pen: &mut Pen, from: usize, to: usize) {
        pen.go(self.at(from, 0.0));
        self.side(pen, from, true);
        self.scallops(pen, from, to, 1.0);
        self.side(pen, to, false);
        self.scallops(pen, to, from, 0.0);
        pen.close();
    }

    /// A narrow upright spindle, `wide` rows across, on a row boundary.
    fn sliver(&self, pen: &mut Pen, row: f64, wide: f64) {
        pen.go(self.place(row, 0.0));
        pen.curve(self.place(row - wide, 0.5), self.place(row, 1.0));
        pen.curve(self.place(row + wide, 0.5), self.place(row, 0.0));
        pen.close();
    }

    /// Slanted stitches: the two rows of a ridge lean towards each other.
    fn marks(&self, pen: &mut Pen, stitches: f64) {
        let (from, to) = self.seen();
        let wanted = (to - from) * libm::ceil(stitches) as usize;
        let together = wanted.div_ceil(MOST_MARKS).max(1);
        let count = (libm::round(stitches) as usize / together).max(1);
        for row in from..to {
            let (outer, inner) =
                if row % 2 == 0 { (row as f64 + 0.2, row as f64 + 0.95) } else { (row as f64 + 0.8, row as f64 + 0.05) };
            let (a, b) = (self.place(outer, 0.5), self.place(inner, 0.5));
            if (a.x - b.x).abs() < 0.6 {
                continue;
            }
            for k in 0..count {
                let share = |up: f64| ((k as f64 + up) / count as f64).min(1.0);
                pen.polygon(&[
                    self.place(outer, share(0.55)),
                    self.place(inner, share(0.1)),
                    self.place(inner, share(0.38)),
                    self.place(outer, share(0.83)),
                ]);
            }
        }
    }
}
