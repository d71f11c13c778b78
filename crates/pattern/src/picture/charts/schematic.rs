//! The hat laid flat, as it is worn, to scale, with its measures.

use super::super::pen::{At, Pen};
use super::super::shape::{Anchor, Picture, Shape};
use super::super::strips::strips;
use super::{Chart, Charted, whole};
use crate::figures;
use crate::picture::{fabric::put, wheel::zone_name};
use crate::sizes::Table;
use core::f64::consts::PI;
use hatwright_sizing::{BandKind, Flaps, Hat, Length, Style, TopKind, Zone};
use hatwright_words::charts as words;

/// The picture's width, and where the hat's middle stands: measures on the right need more room.
const WIDTH: i32 = 680;
const MIDDLE: f64 = 300.0;
const TOP: f64 = 18.0;
/// Room for the hat itself.
const ROOM: f64 = 250.0;
const TALL: f64 = 400.0;
/// A tail is drawn at most so many times as long as all the rest.
const LONGEST_TAIL: f64 = 1.3;
/// Lines of letters stand so far apart at least.
const LINE: f64 = 18.0;
/// A letter's width, generously.
const LETTER: f64 = 7.8;

/// A level piece of the flat hat: half its width at its foot and at its head, and how tall it is, in cm.
#[derive(Clone, Copy)]
struct Piece {
    part: &'static str,
    zone: Option<Zone>,
    low: f64,
    high: f64,
    tall: f64,
    /// How tall it is drawn.
    drawn: f64,
}

/// From one height to another, in cm above the lower edge as worn.
struct Level {
    part: &'static str,
    from: f64,
    to: f64,
    tall: f64,
}

/// The chart. A tam is drawn from above, as its disc lies; every other hat flat, with its band folded as it is worn, and brim and flaps.
pub(super) fn schematic(of: &Charted<'_>) -> Chart {
    let table = table(of);
    let (mut shapes, height) = if of.hat.style == Style::Tam { disc(of) } else { flat(of) };
    let (lines, texts): (Vec<Shape>, Vec<Shape>) =
        shapes.drain(..).partition(|shape| matches!(shape.kind, super::super::shape::ShapeKind::Path(_)));
    shapes.extend(lines.into_iter().chain(texts));
    let told: Vec<String> = table.rows.iter().map(|row| words::listed(&row[0], &row[1])).collect();
    let description = [words::flat_about(), &told.join("; ")].join(" ") + ".";
    Chart { id: "flat", picture: Picture { width: WIDTH, height, title: words::flat().to_owned(), description, shapes }, table }
}

fn table(of: &Charted<'_>) -> Table {
    let hat = of.hat;
    let length = |length: Length| figures::length(length, of.units);
    let girth = girth(hat);
    let mut rows = vec![
        vec![words::around().to_owned(), length(girth)],
        vec![words::across_flat().to_owned(), length(Length::from_ticks(girth.ticks() / 2))],
        vec![words::depth().to_owned(), length(hat.depth.promised)],
    ];
    let mut row = |name: String, length: String| rows.push(vec![name, length]);
    for level in levels(&pieces(hat), 0.0) {
        row(words::height_of(level.part), length(Length::from_cm(level.tall)));
    }
    if hat.depth.fold > Length::ZERO {
        row(words::folded().to_owned(), length(hat.depth.fold));
    }
    if hat.style == Style::Tam {
        row(words::disc().to_owned(), length(Length::from_cm(2.0 * widest(hat))));
    }
    let brim = brim(hat);
    if brim > 0.0 {
        row(words::brim_wide().to_owned(), length(Length::from_cm(brim)));
    }
    if let Some(flaps) = &hat.flaps {
        row(words::flap().to_owned(), length(flaps.length));
        if flaps.tie > Length::ZERO {
            row(words::tie().to_owned(), length(flaps.tie));
        }
    }
    let head = [words::measure(), words::size()].map(str::to_owned).to_vec();
    Table { caption: words::flat().to_owned(), head, rows }
}

/// Around the edge.
fn girth(hat: &Hat) -> Length {
    if hat.style == Style::EarWarmer || hat.rounds.is_empty() && hat.panel.is_none() {
        hat.size.band_girth
    } else {
        hat.size.girth
    }
}

/// The widest radius above the band, in cm.
fn widest(hat: &Hat) -> f64 {
    strips(hat).iter().filter(|s| s.zone != Zone::Band && s.zone != Zone::Brim).map(|s| s.outer.max(s.inner)).fold(0.0, f64::max)
}

/// How wide a brim is, in cm.
fn brim(hat: &Hat) -> f64 {
    hat.rounds.iter().filter(|r| r.zone == Zone::Brim).count() as f64 * hat.gauge.round.cm()
}

/// From the lower edge up. Half a flat width is a quarter of a girth.
fn pieces(hat: &Hat) -> Vec<Piece> {
    let mut all = Vec::new();
    if hat.panel.is_none() && hat.band == BandKind::Sideways && !hat.band_rows.is_empty() {
        let (half, tall) = (hat.size.band_girth.cm() / 4.0, hat.depth.band.cm());
        all.push(Piece { part: zone_name(Zone::Band), zone: Some(Zone::Band), low: half, high: half, tall, drawn: tall });
    }
    for strip in strips(hat).into_iter().filter(|s| s.zone != Zone::Brim) {
        let zone = hat.panel.is_none().then_some(strip.zone);
        let part = zone.map_or(words::part_hat(), zone_name);
        let half = |radius: f64| PI * radius / 2.0;
        all.push(Piece { part, zone, low: half(strip.outer), high: half(strip.inner), tall: strip.high, drawn: strip.high });
    }
    let of_tail = |p: &Piece| p.zone == Some(Zone::Tail);
    let tail: f64 = all.iter().filter(|p| of_tail(p)).map(|p| p.tall).sum();
    let rest: f64 = all.iter().filter(|p| !of_tail(p)).map(|p| p.tall).sum();
    if tail > rest * LONGEST_TAIL {
        all.iter_mut().filter(|p| of_tail(p)).for_each(|p| p.drawn *= rest * LONGEST_TAIL / tail);
    }
    all
}

/// Pieces of one part together, from a height up.
fn levels(pieces: &[Piece], from: f64) -> Vec<Level> {
    let mut all: Vec<Level> = Vec::new();
    let mut at = from;
    for piece in pieces {
        match all.last_mut() {
            Some(level) if level.part == piece.part => {
                level.to += piece.drawn;
                level.tall += piece.tall;
            }
            _ => all.push(Level { part: piece.part, from: at, to: at + piece.drawn, tall: piece.tall }),
        }
        at += piece.drawn;
    }
    all
}

/// Where centimetres stand on the page.
#[derive(Clone, Copy)]
struct Scale {
    unit: f64,
    foot: f64,
}

impl Scale {
    fn at(self, x: f64, height: f64) -> At {
        At::new(MIDDLE + x * self.unit, self.foot - height * self.unit)
    }
}

fn flat(of: &Charted<'_>) -> (Vec<Shape>, i32) {
    let hat = of.hat;
    let fold = hat.depth.fold.cm();
    let pieces = pieces(hat);
    let corners = corners(&pieces, fold);
    let edge = corners.first().map_or(girth(hat).cm() / 4.0, |c| c.0);
    let open = hat.top.is_none_or(|top| matches!(top.kind, TopKind::Gathered | TopKind::RowEnds));
    let (last, mut top) = corners.last().copied().unwrap_or((edge, fold));
    top = top.max(fold);
    let peak = if open { top } else { top + last * 2.0 / PI };
    let brim = brim(hat);
    let wide = corners.iter().map(|c| c.0).fold(edge, f64::max).max(edge + brim * 0.8).max(0.5);
    let below = (brim * 0.75).max(hat.flaps.as_ref().map_or(0.0, |f| f.length.cm() + hang(f)));
    let unit = (ROOM / (2.0 * wide)).min(TALL / (peak + below).max(0.5));
    let scale = Scale { unit, foot: TOP + peak * unit };
    let mut shapes = Vec::new();
    if let Some(flaps) = &hat.flaps {
        draw_flaps(hat, flaps, edge, scale, &mut shapes);
    }
    outline(&corners, (edge, last, top, peak), scale, &mut shapes);
    if fold > 0.0 {
        let mut cuff = Pen::new();
        let half = edge * 1.02;
        cuff.polygon(&[scale.at(-half, 0.0), scale.at(half, 0.0), scale.at(half, fold), scale.at(-half, fold)]);
        put(&mut shapes, cuff, "flat-hat");
        if let Some(text) = folded_inside(of, half * 2.0 * unit, fold * unit) {
            let middle = scale.at(0.0, fold / 2.0);
            shapes.push(Shape::text(whole(middle.x), whole(middle.y) + 5, Anchor::Middle, text, "label"));
        }
    }
    if brim > 0.0 {
        draw_brim(edge, brim, scale, &mut shapes);
    }
    let foot = measures(of, &levels(&pieces, -fold), &corners, (edge, wide, peak), scale, below, &mut shapes);
    (shapes, whole(foot) + 14)
}

/// Half widths and heights up one side, from the lower edge as worn: what is folded up lies below it, as worked. Where rounds with and
/// without decreases alternate, they make one slope: the mean of a few.
fn corners(pieces: &[Piece], fold: f64) -> Vec<(f64, f64)> {
    const NEAR: usize = 4;
    let mut edges: Vec<(f64, f64)> = Vec::with_capacity(pieces.len() + 1);
    let mut at = -fold;
    let shaped = |p: &Piece| matches!(p.zone, Some(Zone::Crown | Zone::Under));
    for (i, piece) in pieces.iter().enumerate() {
        let mean = |from: usize, to: usize| pieces[from..to].iter().map(|p| p.low).sum::<f64>() / (to - from) as f64;
        let before = pieces[..i].iter().rev().take(NEAR).take_while(|p| shaped(p)).count();
        let after = pieces[i..].iter().take(NEAR + 1).take_while(|p| shaped(p)).count();
        let near = before.min(after.saturating_sub(1));
        edges.push((if shaped(piece) { mean(i - near, i + near + 1) } else { piece.low }, at));
        at += piece.drawn;
    }
    edges.extend(pieces.last().map(|p| (p.high, at)));
    let hidden = edges.iter().take_while(|e| e.1 < 0.0).count();
    if hidden > 0 && hidden < edges.len() {
        let ((low, from), (high, to)) = (edges[hidden - 1], edges[hidden]);
        edges[hidden - 1] = (low + (high - low) * (-from / (to - from).max(1e-6)), 0.0);
        edges.drain(..hidden - 1);
    } else {
        edges.drain(..hidden);
    }
    edges
}

/// Half the width at a height.
fn half_at(corners: &[(f64, f64)], height: f64) -> f64 {
    corners.iter().min_by(|a, b| (a.1 - height).abs().total_cmp(&(b.1 - height).abs())).map_or(0.0, |c| c.0)
}

/// How much is folded up, where a fold so large on the page has room for the words.
fn folded_inside(of: &Charted<'_>, wide: f64, high: f64) -> Option<String> {
    let text = words::folded_by(&figures::length(of.hat.depth.fold, of.units));
    (text.chars().count() as f64 * LETTER < wide && high > LINE).then_some(text)
}

/// How far a flap's tie is drawn below it, in cm.
fn hang(flaps: &Flaps) -> f64 {
    flaps.tie.cm().min(flaps.length.cm() * 1.5)
}

/// Both sides up and over the top.
fn outline(corners: &[(f64, f64)], (edge, last, top, peak): (f64, f64, f64, f64), scale: Scale, shapes: &mut Vec<Shape>) {
    let mut pen = Pen::new();
    pen.go(scale.at(-edge, 0.0));
    for (half, height) in corners {
        pen.line(scale.at(-half, *height));
    }
    if peak > top {
        pen.curve(scale.at(-last * 0.5, peak), scale.at(0.0, peak));
        pen.curve(scale.at(last * 0.5, peak), scale.at(last, top));
    }
    for (half, height) in corners.iter().rev() {
        pen.line(scale.at(*half, *height));
    }
    pen.line(scale.at(edge, 0.0));
    pen.close();
    put(shapes, pen, "flat-hat");
}

fn draw_brim(edge: f64, brim: f64, scale: Scale, shapes: &mut Vec<Shape>) {
    let (out, down) = (edge + brim * 0.8, -brim * 0.5);
    let mut pen = Pen::new();
    pen.go(scale.at(-edge, 0.0));
    pen.line(scale.at(-out, down));
    pen.curve(scale.at(0.0, down * 1.9), scale.at(out, down));
    pen.line(scale.at(edge, 0.0));
    pen.close();
    put(shapes, pen, "flat-hat");
}

/// A flap on either side, as far from the front's middle as it is worked, or to the side.
fn draw_flaps(hat: &Hat, flaps: &Flaps, edge: f64, scale: Scale, shapes: &mut Vec<Shape>) {
    let stitch = hat.gauge.stitch.cm();
    let wide = flaps.rows.first().map_or(0.0, |r| f64::from(r.after.get()) * stitch).min(edge * 0.95);
    let tip = flaps.rows.last().map_or(0.0, |r| f64::from(r.after.get()) * stitch).min(wide);
    let inner = (f64::from(flaps.front.get()) * stitch / 2.0).min(edge - wide).max(0.0);
    let long = flaps.length.cm();
    for side in [-1.0, 1.0] {
        let middle = side * (inner + wide / 2.0);
        if flaps.tie > Length::ZERO {
            let mut tie = Pen::new();
            tie.go(scale.at(middle, -long));
            tie.line(scale.at(middle, -long - hang(flaps)));
            put(shapes, tie, "flat-line");
        }
        let mut pen = Pen::new();
        pen.go(scale.at(middle - wide / 2.0, 0.0));
        pen.curve(scale.at(middle - wide / 2.0, -long * 0.55), scale.at(middle - tip / 2.0, -long));
        pen.line(scale.at(middle + tip / 2.0, -long));
        pen.curve(scale.at(middle + wide / 2.0, -long * 0.55), scale.at(middle + wide / 2.0, 0.0));
        pen.close();
        put(shapes, pen, "flat-hat");
    }
}

/// The depth on the left, parts on the right, the width below; gives the height below all.
fn measures(
    of: &Charted<'_>,
    levels: &[Level],
    corners: &[(f64, f64)],
    (edge, wide, peak): (f64, f64, f64),
    scale: Scale,
    below: f64,
    shapes: &mut Vec<Shape>,
) -> f64 {
    let hat = of.hat;
    let length = |length: Length| figures::length(length, of.units);
    let (mut lines, mut parted) = (Pen::new(), Pen::new());
    let (left, right) = (scale.at(-wide, 0.0).x - 16.0, scale.at(wide, 0.0).x + 16.0);
    let (foot, top) = (scale.foot, scale.at(0.0, peak).y);
    bracket(&mut lines, left, foot, top);
    let middle = f64::midpoint(foot, top);
    shapes.push(Shape::text(whole(left) - 8, whole(middle) + 5, Anchor::End, length(hat.depth.promised), "label"));
    let mut room = f64::INFINITY;
    for (i, level) in levels.iter().enumerate() {
        let from = level.from.max(0.0);
        if level.to - from < 0.2 {
            continue;
        }
        let last = i + 1 == levels.len();
        let (low, high) = (scale.at(0.0, from).y, scale.at(0.0, if last { peak } else { level.to }).y);
        bracket(&mut lines, right, low, high);
        if from > hat.depth.fold.cm() && i > 0 {
            let half = half_at(corners, from);
            parted.go(scale.at(-half, from));
            parted.line(scale.at(half, from));
        }
        let text = words::measured(level.part, &length(Length::from_cm(level.tall)));
        let at = f64::midpoint(low, high).min(room - LINE);
        room = at;
        shapes.push(Shape::text(whole(right) + 8, whole(at) + 5, Anchor::Start, text, "label"));
    }
    put(shapes, parted, "flat-part");
    let mut under = foot + below * scale.unit + 14.0;
    let mut told = Vec::new();
    if let Some(flaps) = &hat.flaps {
        told.push(words::measured(words::flap(), &length(flaps.length)));
        if flaps.tie > Length::ZERO {
            told.push(words::measured(words::tie(), &length(flaps.tie)));
        }
    }
    if brim(hat) > 0.0 {
        told.push(words::measured(words::brim_wide(), &length(Length::from_cm(brim(hat)))));
    }
    level_line(&mut lines, edge, under, scale);
    put(shapes, lines, "dimension");
    let girth = girth(hat);
    told.insert(0, words::flat_and_around(&length(Length::from_ticks(girth.ticks() / 2)), &length(girth)));
    let fold = hat.depth.fold;
    if fold > Length::ZERO && folded_inside(of, edge * 2.04 * scale.unit, fold.cm() * scale.unit).is_none() {
        told.push(words::folded_by(&length(fold)));
    }
    if levels.iter().any(|l| l.to - l.from < l.tall * 0.99) {
        told.push(words::cut_short().to_owned());
    }
    for text in told {
        under += LINE;
        shapes.push(Shape::text(whole(MIDDLE), whole(under), Anchor::Middle, text, "label"));
    }
    under
}

fn level_line(lines: &mut Pen, half: f64, y: f64, scale: Scale) {
    let (from, to) = (scale.at(-half, 0.0).x, scale.at(half, 0.0).x);
    lines.go(At::new(from, y));
    lines.line(At::new(to, y));
    for x in [from, to] {
        lines.go(At::new(x, y - 4.0));
        lines.line(At::new(x, y + 4.0));
    }
}

fn bracket(lines: &mut Pen, x: f64, low: f64, high: f64) {
    lines.go(At::new(x, low));
    lines.line(At::new(x, high));
    for y in [low, high] {
        lines.go(At::new(x - 4.0, y));
        lines.line(At::new(x + 4.0, y));
    }
}

/// A tam from above: its disc, and the opening under it.
fn disc(of: &Charted<'_>) -> (Vec<Shape>, i32) {
    let hat = of.hat;
    let length = |length: Length| figures::length(length, of.units);
    let (outer, inner) = (widest(hat).max(0.1), girth(hat).cm() / (2.0 * PI));
    let scale = Scale { unit: ROOM / (2.0 * outer), foot: TOP + ROOM / 2.0 };
    let mut shapes = Vec::new();
    for (radius, class) in [(outer, "flat-hat"), (inner.min(outer), "flat-part")] {
        let mut pen = Pen::new();
        pen.ellipse(scale.at(0.0, 0.0), radius * scale.unit, radius * scale.unit, true);
        put(&mut shapes, pen, class);
    }
    let mut lines = Pen::new();
    let mut under = TOP + ROOM + 14.0;
    level_line(&mut lines, outer, under, scale);
    put(&mut shapes, lines, "dimension");
    let middle = scale.at(0.0, 0.0);
    let opening = words::measured(words::around(), &length(girth(hat)));
    shapes.push(Shape::text(whole(middle.x), whole(middle.y) + 5, Anchor::Middle, opening, "label"));
    let mut told = vec![words::measured(words::disc(), &length(Length::from_cm(2.0 * outer)))];
    for level in levels(&pieces(hat), 0.0) {
        told.push(words::measured(&words::height_of(level.part), &length(Length::from_cm(level.tall))));
    }
    for text in told {
        under += LINE;
        shapes.push(Shape::text(whole(MIDDLE), whole(under), Anchor::Middle, text, "label"));
    }
    (shapes, whole(under) + 14)
}
