//! The shaped rounds in crochet symbols, around their centre: the whole of them, or one wedge.

use super::super::pen::{At, Pen};
use super::super::shape::{Anchor, Paint, Picture, Shape};
use super::key::{self, Entry};
use super::polar::{Polar, Toward};
use super::rings::{Ring, rings};
use super::{Chart, Charted, span, whole};
use crate::picture::{colour_letter, fabric::put};
use crate::sizes::Table;
use crate::written::{Hand, PartKind, work_text};
use hatwright_sizing::{RoundKind, TopKind};
use hatwright_words::charts as words;

/// How much of a crown is drawn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum CrownView {
    /// All around.
    #[default]
    Whole,
    /// One of the equal wedges that its rounds are stacked in; all around where they are not.
    Wedge,
}

/// Free on every side, in user units; the arrow stands in it.
const MARGIN: f64 = 26.0;
/// The narrowest picture: a line of the key has to fit.
const NARROWEST: f64 = 320.0;
/// A number's width in the gap, for a letter.
const DIGIT: f64 = 6.0;
/// The most stitches that a picture holds. Of a finer crown the rounds next to the centre are drawn: they differ, and each stitch counts.
const MOST_STITCHES: u32 = 12_000;

/// The crown's rounds in the common crochet symbols, stitch by stitch: those that are shaped, those between them, and one plain round
/// before. Rounds worked alike are drawn once. A straight tail is left out.
///
/// The picture grows with the rounds, so that a symbol is always as large. Where a crown has more than 12,000 stitches, the rounds next to
/// the centre are drawn. Every round is a group of class `chart-round` titled with its number and total; in it each symbol is one element:
/// `sym-sc`, `sym-hdc-tog` (two worked together), `sym-dc-inc` (two in one place), with `sym-back` or `sym-front` for a single loop.
///
/// Absent where no round is shaped. Where the rounds are not stacked in two or more equal wedges, a wedge of them is the whole.
pub(super) fn crown(of: &Charted<'_>, view: CrownView) -> Option<Chart> {
    let rings = rings(of.pattern, &[PartKind::Crown]);
    if view == CrownView::Wedge
        && let Some((wedge, wedges)) = wedge(&rings)
    {
        return chart(of, "crown", words::crown_wedge(wedges), wedge, wedges);
    }
    chart(of, "crown", words::crown().to_owned(), rings, 1)
}

/// The rounds of a tam's underside; absent for other hats.
pub(super) fn underside(of: &Charted<'_>) -> Option<Chart> {
    chart(of, "underside", words::underside().to_owned(), rings(of.pattern, &[PartKind::Under]), 1)
}

/// The rounds of a brim; absent for hats without one.
pub(super) fn brim(of: &Charted<'_>) -> Option<Chart> {
    chart(of, "brim", words::brim().to_owned(), rings(of.pattern, &[PartKind::Brim]), 1)
}

/// The rings that are one wedge over and over, as that wedge, and how many there are.
fn wedge(rings: &[Ring]) -> Option<(Vec<Ring>, u32)> {
    let mut wedges = 0;
    for ring in rings.iter().filter(|ring| ring.shaped() && ring.kind != Some(RoundKind::Adjust)) {
        wedges = hatwright_sizing::gcd(wedges, ring.pieces());
    }
    if wedges < 2 {
        return None;
    }
    let fits = |ring: &Ring| ring.pieces().is_multiple_of(wedges);
    let first = rings.iter().position(fits)?;
    let last = rings.iter().rposition(fits)?;
    let wedge = &rings[first..=last];
    wedge.iter().all(fits).then(|| (wedge.iter().map(|ring| ring.piece(wedges)).collect(), wedges))
}

fn chart(of: &Charted<'_>, id: &'static str, title: String, rings: Vec<Ring>, wedges: u32) -> Option<Chart> {
    if !rings.iter().any(Ring::shaped) {
        return None;
    }
    let toward = if rings.last()?.total < rings.first()?.total { Toward::In } else { Toward::Out };
    let all = (rings.first()?.from, rings.last()?.to);
    let rings = enough(rings, toward);
    let picture = Drawing::new(of, &rings, toward, wedges).picture(title, all);
    let caption = picture.title.clone();
    Some(Chart { id, picture, table: Table { caption, ..table(of, &rings, wedges) } })
}

/// The rings next to the centre, as many as a picture holds.
fn enough(mut rings: Vec<Ring>, toward: Toward) -> Vec<Ring> {
    if toward == Toward::In {
        rings.reverse();
    }
    let mut stitches = 0;
    let most = rings.iter().take_while(|ring| {
        stitches += ring.total;
        stitches <= MOST_STITCHES
    });
    let most = most.count().max(1);
    rings.truncate(most);
    if toward == Toward::In {
        rings.reverse();
    }
    rings
}

fn table(of: &Charted<'_>, rings: &[Ring], wedges: u32) -> Table {
    let coloured = of.pattern.coloured;
    let mut head = vec![words::head_round().to_owned()];
    head.extend(coloured.then(|| words::head_colour().to_owned()));
    head.push(words::head_work().to_owned());
    head.push(if wedges > 1 { words::head_wedge_stitches() } else { words::head_stitches() }.to_owned());
    let row = |ring: &Ring| {
        let mut row = vec![span(ring.from, ring.to)];
        if coloured {
            let mut colours: Vec<String> = ring.colours.iter().map(|c| of.told_colour(*c)).collect();
            colours.dedup();
            row.push(colours.join(", "));
        }
        row.push(work_text(&ring.ops, of.terms));
        row.push(ring.total.to_string());
        row
    };
    Table { caption: String::new(), head, rows: rings.iter().map(row).collect() }
}

/// A chart as it is put together.
struct Drawing<'a> {
    of: &'a Charted<'a>,
    rings: &'a [Ring],
    polar: Polar,
    /// What each ring is called beside it.
    labels: Vec<String>,
    shapes: Vec<Shape>,
}

impl<'a> Drawing<'a> {
    fn new(of: &'a Charted<'a>, rings: &'a [Ring], toward: Toward, wedges: u32) -> Self {
        let labels: Vec<String> = rings.iter().map(|ring| label(ring, of.pattern.coloured)).collect();
        let letters = labels.iter().map(|l| l.chars().count()).max().unwrap_or(0);
        let joined = rings.iter().any(|r| r.joined || r.chains > 0);
        let gap = if wedges > 1 { 0.0 } else { letters as f64 * DIGIT + 9.0 + if joined { 17.0 } else { 0.0 } };
        let polar = Polar::new(rings, toward, -of.along(), gap, wedges);
        Self { of, rings, polar, labels, shapes: Vec::new() }
    }

    fn picture(mut self, title: String, all: (u32, u32)) -> Picture {
        let outer = self.polar.outer();
        let entries = self.entries();
        let reach = if self.polar.wedges > 1 { outer * libm::sin(self.polar.sweep(outer) / 2.0) } else { outer };
        // Numbers stand beside a wedge.
        let beside = if self.polar.wedges > 1 {
            self.labels.iter().map(|l| l.chars().count()).max().unwrap_or(0) as f64 * DIGIT
        } else {
            0.0
        };
        let wide = (2.0 * (reach + MARGIN + beside)).max(NARROWEST).max(f64::from(key::width(&entries) + 16));
        let width = libm::ceil(wide / 2.0) as i32 * 2;
        self.polar.centre = At::new(f64::from(width / 2), MARGIN + outer);
        let below = if self.polar.wedges > 1 { 24.0 } else { outer + 18.0 };
        self.grounds();
        self.rounds();
        self.marks();
        let foot = whole(self.polar.centre.y + below);
        let height = key::draw(&entries, 10, foot, width - 16, self.polar.side, &mut self.shapes) + 10;
        let description = self.description(all);
        Picture { width, height, title, description, shapes: self.shapes }
    }

    /// Every other ring on a tint, so that the eye keeps to its round; and what the innermost is worked into, or drawn up by.
    fn grounds(&mut self) {
        let mut tint = Pen::new();
        for i in (0..self.rings.len()).step_by(2) {
            let (head, foot) = self.polar.radii[i];
            self.polar.band(&mut tint, (head.min(foot) - 2.0).max(0.5), head.max(foot) + 2.0);
        }
        put(&mut self.shapes, tint, "chart-ring");
        let inner = self.polar.inner() - 3.0;
        if self.polar.wedges == 1 && inner > 2.0 {
            let mut circle = Pen::new();
            circle.ellipse(self.polar.centre, inner, inner, true);
            let class = self.middle().0;
            put(&mut self.shapes, circle, class);
        }
    }

    /// What stands in the middle, as a class, and what it means.
    fn middle(&self) -> (&'static str, &'static str) {
        match (self.polar.toward, self.rings.first().and_then(|r| r.kind)) {
            (Toward::Out, Some(RoundKind::Ring)) => ("sym-ring", words::ring()),
            (Toward::In, _) if self.is_top() => ("chart-gather", words::gather()),
            (Toward::Out, _) => ("chart-edge", words::edge()),
            (Toward::In, _) => ("chart-edge", words::edge_onward()),
        }
    }

    /// Whether the last of the rounds is the hat's last before it closes.
    fn is_top(&self) -> bool {
        let hat = self.of.hat;
        let last = self.rings.last().map_or(0, |r| r.to);
        let crown = hat.rounds.iter().filter(|r| r.zone != hatwright_sizing::Zone::Brim).map(|r| r.number).max();
        hat.top.is_some_and(|top| matches!(top.kind, TopKind::Drawn | TopKind::Gathered)) && crown == Some(last)
    }

    fn rounds(&mut self) {
        let mut below: Option<u32> = None;
        for (i, ring) in self.rings.iter().enumerate() {
            let title = if ring.to > ring.from {
                words::rounds_of(&span(ring.from, ring.to), ring.total)
            } else {
                words::round_of(ring.from, ring.total)
            };
            self.shapes.push(Shape::open(title, "chart-round"));
            self.polar.symbols(ring, i, below.filter(|b| *b == ring.uses()), &mut self.shapes);
            if self.polar.wedges == 1 {
                self.polar.closing(ring, i, &mut self.shapes);
            }
            self.shapes.push(Shape::close());
            below = Some(ring.total);
        }
    }

    /// Numbers along the beginning of the rounds, where they begin, which way they go, and the cuts of a wedge.
    fn marks(&mut self) {
        let polar = &self.polar;
        let (outer, turn) = (polar.outer(), polar.turn);
        let mut words_drawn = Vec::new();
        for ((head, foot), label) in polar.radii.iter().zip(&self.labels) {
            let middle = f64::midpoint(*head, *foot);
            let (at, anchor) = if polar.wedges > 1 {
                let edge = polar.at(middle, polar.begins(middle));
                let aside = polar.at(middle + 7.0, polar.begins(middle) - 7.0 / middle.max(7.0));
                let anchor = if turn > 0.0 { Anchor::End } else { Anchor::Start };
                (At::new(aside.x, edge.y), anchor)
            } else {
                (polar.at(middle, 0.0), Anchor::Middle)
            };
            words_drawn.push(Shape::text(whole(at.x), whole(at.y + 3.6), anchor, label.clone(), "chart-number"));
        }
        let mut begin = Pen::new();
        let mut way = Pen::new();
        let start = polar.begins(outer);
        let radius = outer + 9.0;
        let arc = 34.0 / radius;
        way.go(polar.at(radius, start));
        way.arc(radius, radius, turn > 0.0, polar.at(radius, start + arc));
        let tip = polar.at(radius, start + arc);
        way.go(polar.at(radius + 4.0, start + arc - 6.0 / radius));
        way.line(tip);
        way.line(polar.at(radius - 4.0, start + arc - 6.0 / radius));
        // The mark points the way that the rounds pile up.
        let (near, far) = if polar.toward == Toward::In { (outer + 5.0, outer + 14.0) } else { (outer + 14.0, outer + 5.0) };
        if polar.wedges == 1 {
            begin.polygon(&[polar.at(near, 0.0), polar.at(far, 5.0 / far), polar.at(far, -5.0 / far)]);
        } else {
            let mut cut = Pen::new();
            for angle in [start, start + polar.sweep(outer)] {
                cut.go(polar.centre);
                cut.line(polar.at(outer + 4.0, angle));
            }
            put(&mut self.shapes, cut, "chart-cut");
            let text = words::wedge_of(polar.wedges);
            let (x, y) = (whole(polar.centre.x), whole(polar.centre.y) + 16);
            words_drawn.push(Shape::text(x, y, Anchor::Middle, text, "chart-text"));
        }
        put(&mut self.shapes, begin, "chart-begin");
        self.shapes.push(Shape::path(way.finish(), Paint::Class("chart-way")));
        self.shapes.append(&mut words_drawn);
    }

    fn entries(&self) -> Vec<Entry> {
        let symbols = self.rings.iter().flat_map(|r| &r.steps).filter_map(|s| s.symbol);
        let mut all = key::stitches(symbols, self.of.terms);
        if self.polar.wedges == 1 {
            all.extend(self.rings.iter().any(|r| r.chains > 0).then(Entry::chain));
            all.extend(self.rings.iter().any(|r| r.joined).then(Entry::join));
            let (class, text) = self.middle();
            all.push(Entry::circle(class, text));
        }
        all
    }

    fn description(&self, all: (u32, u32)) -> String {
        let (Some(first), Some(last)) = (self.rings.first(), self.rings.last()) else { return String::new() };
        let mut told = vec![words::about_rounds(first.from, last.to, first.total, last.total)];
        let way = match (self.polar.toward, self.polar.turn > 0.0) {
            (Toward::In, true) => words::in_clockwise(),
            (Toward::In, false) => words::in_counter(),
            (Toward::Out, true) => words::out_clockwise(),
            (Toward::Out, false) => words::out_counter(),
        };
        told.push(way.to_owned());
        if self.of.hand == Hand::Left {
            told.push(words::left_hand().to_owned());
        }
        if (first.from, last.to) != all && self.polar.wedges == 1 {
            told.push(words::left_out(all.0, all.1));
        }
        told.join(" ")
    }
}

/// A ring's number, and the letters of its colours: `7`, `8–11 A`.
fn label(ring: &Ring, coloured: bool) -> String {
    let mut label = span(ring.from, ring.to);
    if coloured {
        let mut letters: Vec<char> = ring.colours.iter().map(|c| c.map_or('\u{2026}', colour_letter)).collect();
        letters.dedup();
        label.push(' ');
        match letters.as_slice() {
            [one] => label.push(*one),
            [one, two] => label.extend([*one, *two]),
            _ => label.push('\u{2026}'),
        }
    }
    label
}
