//! A hat worked sideways: rows from the edge to the crown and back, the last seamed to the first.

use super::ground::Ground;
use super::rounds::{stripe, stripes_of_body};
use crate::counts::Rules;
use crate::curve::Curve;
use crate::{Chosen, HatSpec, Length, Panel, PanelRow, Quantity, Refusal, Rows, SideTop, Size, Stitches, Style, Unsuited, lcm};
use core::f64::consts::{PI, TAU};

/// Price, in cm of girth, of each wedge more or less than was asked for (practice, no source).
const WEDGE: f64 = 1.0;

/// Parts of a pair of rows over which its length is averaged.
const PARTS: u32 = 8;

/// A panel, and what closes it.
pub(super) struct Sideways {
    pub panel: Panel,
    /// Row ends that are gathered at the top.
    pub ends: u32,
    /// Across the bundle that they leave.
    pub bundle: f64,
    /// From the edge to the centre, along the fabric.
    pub arc: f64,
}

/// Wedges, and the rows that they divide.
pub(super) struct Wedged {
    pub rules: Rules,
    pub size: Size,
    pub dropped: Option<(Chosen, Unsuited)>,
    pub wedges: u32,
}

/// Whether a hat has wedges of short rows.
pub(super) fn is_wedged(spec: &HatSpec) -> bool {
    spec.style == Style::Sideways && spec.shape.side_top == SideTop::ShortRows
}

/// The rows of a hat with wedges of short rows: all wedges alike, each an even number of rows.
///
/// So many rows that as many wedges as were asked for divide them, or one or two more or fewer where that comes much nearer to the girth: each
/// counts as a centimetre of it. Rows that were taken by hand are divided by the nearest number of wedges that divides them.
pub(super) fn wedged(rules: &Rules, spec: &HatSpec, chosen: Option<Chosen>) -> Result<Wedged, Refusal> {
    let asked = spec.shape.side_wedges;
    let row = Quantity::SideWedges.row();
    let possible = row.least.unsigned_abs()..=row.most.unsigned_abs();
    let (size, mut dropped) = rules.choose(chosen)?;
    if chosen.is_some() && dropped.is_none() {
        let divides = possible.clone().filter(|k| size.rows.get().is_multiple_of(2 * k) && narrows(&size, *k));
        if let Some(wedges) = divides.min_by_key(|k| k.abs_diff(asked)) {
            let rules = Rules { repeat: lcm(rules.repeat, 2 * wedges), ..*rules };
            return Ok(Wedged { rules, size, dropped: None, wedges });
        }
        dropped = chosen.map(|chosen| (chosen, Unsuited::Repeat(Rows::new(lcm(rules.repeat, 2 * asked)))));
    }
    let mut best: Option<(f64, Wedged)> = None;
    for wedges in possible {
        let rules = Rules { repeat: lcm(rules.repeat, 2 * wedges), ..*rules };
        let Ok((size, _)) = rules.choose(None) else { continue };
        if !narrows(&size, wedges) {
            continue;
        }
        let cost = (size.girth.cm() - rules.wanted).abs() + f64::from(wedges.abs_diff(asked)) * WEDGE;
        if best.as_ref().is_none_or(|(least, _)| cost < *least) {
            best = Some((cost, Wedged { rules, size, dropped, wedges }));
        }
    }
    match best {
        Some((_, found)) => Ok(found),
        None => Err(Rules { repeat: lcm(rules.repeat, 2 * asked), ..*rules }
            .choose(None)
            .err()
            .unwrap_or(Refusal::NoCount { head: Length::from_cm(rules.head), nearest: Length::ZERO })),
    }
}

/// Whether wedges have a short pair of rows beside the one that runs to the crown.
fn narrows(size: &Size, wedges: u32) -> bool {
    size.rows.get() >= 4 * wedges
}

/// The rows of the panel; `None` where they are too short to close.
///
/// A row is the fabric from the edge to where row ends are gathered, half of whose bundle makes up the rest. With short rows the number of rows
/// that reach a distance from the centre is the girth there of a fitted crown, by the height of a row; the longest of each wedge are gathered.
pub(super) fn panel(ground: &Ground<'_>, wedges: Option<u32>, arc: f64) -> Option<Sideways> {
    let (rows, w, h) = (ground.size.rows.get(), ground.cells.w, ground.cells.h);
    let girth = f64::from(rows) * h;
    let curve = Curve::new(girth, ground.around, arc)?;
    let (repeat, ends, top) = match wedges {
        None => (2, rows, SideTop::Gathered),
        Some(k) => (rows / k, 2 * k, SideTop::ShortRows),
    };
    let bundle = |ends: u32| h * libm::sqrt(f64::from(ends) / PI);
    let longest = libm::round((arc - bundle(ends) / 2.0) / w).max(1.0) as u32;
    let of_pair = |pair: u32| {
        if wedges.is_none() || pair == 0 {
            return longest;
        }
        // What this pair of rows of every wedge adds to the girth lies so far out, on the average.
        let each = 2.0 * f64::from(ends / 2) * h;
        let out = |i: u32| distance(&curve, arc, each * (f64::from(pair) + (f64::from(i) + 0.5) / f64::from(PARTS)));
        let mean = (0..PARTS).map(out).sum::<f64>() / f64::from(PARTS);
        (libm::round((arc - mean) / w).max(1.0) as u32).min(longest)
    };
    let stripes = stripes_of_body(ground.spec);
    let of_row = |row: u32| PanelRow { stitches: Stitches::new(of_pair(row % repeat / 2)), colour: stripe(&stripes, row) };
    let rows: Vec<PanelRow> = (0..rows).map(of_row).collect();
    let ends = rows.iter().filter(|row| row.stitches.get() == longest).count() as u32;
    let panel = Panel { rows, stitches: Stitches::new(longest), wedge: Rows::new(repeat), top };
    let bundle = bundle(ends);
    Some(Sideways { panel, ends, bundle, arc: f64::from(longest) * w + bundle / 2.0 })
}

/// How far from the centre a curve has a girth: between 0 and the arc, to a ten-thousandth of it.
fn distance(curve: &Curve, arc: f64, girth: f64) -> f64 {
    let (mut near, mut far) = (0.0, arc);
    for _ in 0..16 {
        let middle = f64::midpoint(near, far);
        if curve.at(middle) < girth {
            near = middle;
        } else {
            far = middle;
        }
    }
    f64::midpoint(near, far)
}

/// The least fabric from edge to centre that so many rows close with: a flat disc's radius.
pub(super) fn least_arc(ground: &Ground<'_>) -> f64 {
    f64::from(ground.size.rows.get()) * ground.cells.h / TAU
}
