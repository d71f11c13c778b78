//! The finished hat, worn on a plain head form, to scale.

use super::dimension::{self, BELOW, CLEAR, LETTER, LINE};
use super::fabric::{Texture, put};
use super::pen::{At, Pen};
use super::profile::{Extent, HEAD, Profile};
use super::shape::{Picture, Shape};
use super::view::{COS, SIN, View};
use super::{band, body, flaps, head, panel, topper};
use crate::figures::{self, Units};
use core::f64::consts::PI;
use hatwright_sizing::{Hat, HatSpec, Length, Style, Zone};
use hatwright_words::pictures as words;

/// The picture's box.
const WIDTH: i32 = 400;
const HEIGHT: i32 = 480;
/// Free on every side.
const MARGIN: f64 = 8.0;

/// What stands at the dimension lines, already in the reader's units.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HatLabels {
    /// The depth as worn, from the crown's centre over the fabric to the lower edge: "19.4 cm".
    pub depth: String,
    /// The girth, flat and around: "23.3 cm flat · 46.7 cm around".
    pub girth: String,
    /// What else the style is measured by: "brim 6.0 cm".
    pub part: Option<String>,
}

impl HatLabels {
    /// The labels of a hat, in a reader's units.
    pub fn of(hat: &Hat, spec: &HatSpec, units: Units) -> Self {
        let girth = if hat.style == Style::EarWarmer { hat.size.band_girth } else { hat.size.girth };
        let length = |length: Length| figures::length(length, units);
        let flat = length(Length::from_ticks(girth.ticks() / 2));
        let part = match hat.style {
            Style::Tam => Some(words::disc(&length(across(hat)))),
            Style::Stocking => Some(words::tail_long(&length(spec.shape.tail))),
            Style::Brimmed => {
                let rounds = hat.rounds.iter().filter(|r| r.zone == Zone::Brim).count();
                Some(words::brim_wide(&length(Length::from_ticks(hat.gauge.round.ticks() * rounds as i32))))
            }
            Style::EarFlap => hat.flaps.as_ref().map(|f| match f.tie.ticks() {
                0 => words::flaps_long(&length(f.length)),
                _ => words::flaps_and_ties(&length(f.length), &length(f.tie)),
            }),
            Style::Fitted | Style::Slouch | Style::EarWarmer | Style::Sideways => None,
        };
        Self { depth: length(hat.depth.promised), girth: words::girth(&flat, &length(girth)), part }
    }
}

/// Across the widest round above the band.
fn across(hat: &Hat) -> Length {
    let widest = hat.rounds.iter().filter(|r| r.zone != Zone::Band).map(|r| r.after.get()).max().unwrap_or(0);
    Length::from_cm(f64::from(widest) * hat.gauge.stitch.cm() / PI)
}

/// Draws a hat from its own numbers: the girth and height of every round, the rows of the band, the fold, flaps, brim, pom-pom and tassel.
///
/// The outline follows from the counts (radius = stitches × width ÷ 2π, height from what is left of the round's own height); what is
/// narrower than the head form is drawn as wide as the head stretches it. A tail that would hang far below the head is drawn with a
/// gap. The box is always 400 × 480 units.
pub fn hat_picture(hat: &Hat, spec: &HatSpec, labels: &HatLabels) -> Picture {
    let profile = Profile::of(hat);
    let cut = profile.left_out > 0.0;
    let mut under: Vec<&str> = vec![&labels.girth];
    under.extend(labels.part.as_deref());
    under.extend(cut.then(words::cut_short));
    let view = fit(hat, &profile, &labels.depth, &under);
    let mut shapes = Vec::with_capacity(64);
    let texture = Texture::of(spec, &profile);
    paint(hat, Some(texture), &profile, &view, Some((&labels.depth, &under)), &mut shapes);
    Picture {
        width: WIDTH,
        height: HEIGHT,
        title: title(hat.style).to_owned(),
        description: description(hat, labels, cut),
        shapes,
    }
}

/// Paints all of a hat from the back to the front; with a texture and labels, on a head.
pub(super) fn paint(
    hat: &Hat,
    texture: Option<Texture>,
    profile: &Profile,
    view: &View,
    labels: Option<(&str, &[&str])>,
    shapes: &mut Vec<Shape>,
) {
    let fancy = texture.is_some();
    if let Some(sides) = &hat.flaps {
        flaps::draw_far(hat, sides, fancy, profile, view, shapes);
    }
    if hat.style == Style::EarWarmer {
        band::draw_inside(hat, profile, view, shapes);
    }
    if fancy {
        head::draw(hat, profile, view, shapes);
    }
    if let Some(sides) = &hat.flaps {
        flaps::draw_near(hat, sides, fancy, profile, view, shapes);
    }
    // What hangs beside the head lies over the fold as well.
    let hangs = |i: usize| profile.edges[i].tilt > 0.6;
    let (standing, hanging): (Vec<_>, Vec<_>) = profile.parts.iter().partition(|part| !hangs(part.start));
    for (i, part) in standing.iter().enumerate() {
        // A brim lies behind the crown and the band, and everything else behind its own layers.
        if i == usize::from(profile.sits > 0) || profile.sits == 0 && i == 0 {
            band::draw_behind(hat, profile, view, shapes);
            band::draw_layer(hat, texture, profile, view, shapes);
        }
        match &hat.panel {
            Some(rows) => panel::draw(hat, rows, texture, profile, view, shapes),
            None => body::draw(hat, texture, profile, part, view, shapes),
        }
    }
    if standing.is_empty() {
        band::draw_layer(hat, texture, profile, view, shapes);
    }
    let mut lines = Vec::new();
    if let Some((depth, under)) = labels {
        dimension::draw(hat, profile, view, depth, under, &mut lines);
    }
    let numbers = lines.split_off(lines.len().min(1));
    // The tape runs from under the pom-pom, which stands behind a tall fold; the numbers lie over everything.
    shapes.append(&mut lines);
    let ball = |shapes: &mut Vec<Shape>| {
        if fancy { topper::draw(hat, profile, view, shapes) } else { topper::draw_plain(hat, profile, view, shapes) }
    };
    if hanging.is_empty() {
        ball(shapes);
    }
    band::draw_fold(hat, texture, profile, view, shapes);
    for part in &hanging {
        body::draw(hat, texture, profile, part, view, shapes);
    }
    if fancy {
        break_marks(profile, view, shapes);
    }
    if !hanging.is_empty() {
        ball(shapes);
    }
    shapes.extend(numbers);
}

/// A wave across each end of a tail where it is cut short.
fn break_marks(profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    let Some(gap) = profile.strips.iter().position(|s| s.gap) else { return };
    let mut pen = Pen::new();
    for edge in [profile.edges[gap], profile.edges[gap + 1]] {
        let centre = view.centre(edge);
        let half = edge.radius * view.unit + 7.0;
        let rise = half.min(9.0) * 0.55;
        pen.go(At::new(centre.x - half, centre.y));
        pen.curve(At::new(centre.x - half / 2.0, centre.y - 2.0 * rise), centre);
        pen.curve(At::new(centre.x + half / 2.0, centre.y + 2.0 * rise), At::new(centre.x + half, centre.y));
    }
    put(shapes, pen, "break");
}

/// The name of a kind of hat's picture.
pub(super) fn title(style: Style) -> &'static str {
    match style {
        Style::Fitted => words::fitted_worn(),
        Style::Slouch => words::slouch_worn(),
        Style::Stocking => words::stocking_worn(),
        Style::EarWarmer => words::ear_warmer_worn(),
        Style::Tam => words::tam_worn(),
        Style::EarFlap => words::ear_flap_worn(),
        Style::Brimmed => words::brimmed_worn(),
        Style::Sideways => words::sideways_worn(),
    }
}

fn description(hat: &Hat, labels: &HatLabels, cut: bool) -> String {
    let (depth, girth, rows) = (&*labels.depth, &*labels.girth, hat.size.rows.get());
    let (stitches, rounds) = (hat.stitches().get(), hat.round_count().get());
    let mut text = match (&hat.panel, hat.style) {
        (Some(panel), _) => words::made_sideways(panel.rows.len() as u32, panel.stitches.get(), depth, girth),
        (None, Style::EarWarmer) if hat.rounds.is_empty() => words::made_of_rows(rows, depth, girth),
        (None, _) if !hat.band_rows.is_empty() => words::made_with_band(stitches, rounds, rows, depth, girth),
        (None, _) => words::made_in_rounds(stitches, rounds, depth, girth),
    };
    if let Some(part) = &labels.part {
        let mut letters = part.chars();
        text.push(' ');
        text.extend(letters.next().map(|c| c.to_ascii_uppercase()));
        text.push_str(letters.as_str());
        text.push('.');
    }
    if cut {
        text.push(' ');
        text.push_str(words::cut_short_sentence());
    }
    text
}

/// The largest scale at which everything lies in the box.
fn fit(hat: &Hat, profile: &Profile, depth: &str, under: &[&str]) -> View {
    let (width, height) = (f64::from(WIDTH) - 2.0 * MARGIN, f64::from(HEIGHT) - 2.0 * MARGIN);
    let letters = |s: &str| s.chars().count() as f64 * LETTER;
    let mut extent = worn_extent(hat, profile);
    let ears = (HEAD + head::EAR_OUT) * profile.head;
    extent.left = extent.left.max(ears);
    extent.right = extent.right.max(ears);
    let left_label = (letters(depth) + CLEAR + 8.0).min(width * 0.45);

    let foot = (head::FOOT * profile.head - profile.vertex).max(0.0) * COS;
    let lowest = dimension::lowest(hat, profile);
    let labels = BELOW + LINE * (under.len() as f64 - 1.0);
    // Either the form's foot or the girth's label is lowest; the label does not grow with the scale.
    // The tape's end stands over what is highest, unless a pom-pom does.
    let ball = extent.above > profile.extent().above + 0.06 * profile.head;
    let clear_above = if ball { 2.0 } else { CLEAR + dimension::TICK + 2.0 };
    let foot = foot.max(extent.below - 0.01);
    let by_foot = (height - clear_above) / (extent.above + foot);
    let by_label = (height - clear_above - labels) / (extent.above + lowest);
    // A hanging tail has the tape on its other side.
    let right = if profile.tip().tilt > 1.0 { CLEAR + dimension::TICK } else { 0.0 };
    // The tape runs beside the crown, over the brim.
    let crown = profile.crown_extent().left.max(ears);
    let by_width = ((width - right) / (extent.left + extent.right)).min((width - left_label - right) / (crown + extent.right));
    let unit = by_foot.min(by_label).min(by_width).max(0.01);

    let drawn = unit * (extent.above + foot.max(lowest + labels / unit)) + clear_above;
    // In the middle where there is room, or as near to it.
    let least = MARGIN + (left_label + crown * unit).max(extent.left * unit);
    let most = f64::from(WIDTH) - MARGIN - right - extent.right * unit;
    let x = (f64::from(WIDTH) / 2.0).min(most).max(least);
    View { x, y: MARGIN + (height - drawn) / 2.0 + clear_above + unit * extent.above, unit }
}

/// What the hat takes up with what is on its top.
pub(super) fn worn_extent(hat: &Hat, profile: &Profile) -> Extent {
    let mut extent = profile.extent();
    topper::reach(hat, profile, &mut extent);
    if hat.style == Style::EarWarmer {
        extent.above = extent.above.max(profile.vertex * COS + 0.5 * SIN);
    }
    extent.below = extent.below.max(flaps::reach(hat, profile));
    extent
}

#[cfg(test)]
#[path = "hat_check.rs"]
mod tests;
