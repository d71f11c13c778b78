//! A stocking cap: a tube, a cone, a straight tail of any length, and its tip.

use super::ground::Ground;
use crate::Quantity;
use crate::crown::{Close, Schedule, Task};
use crate::curve::Curve;
use core::f64::consts::TAU;

/// The most stitches that an adjustable ring holds (practice).
const RING: u32 = 16;

/// The measures of a stocking cap along its fabric, in cm.
pub(super) struct Cap {
    /// From the band to the tip.
    arc: f64,
    /// From the tip to where the tail ends and the cone begins.
    tail: f64,
    /// Stitches of the tail.
    narrow: u32,
    /// Of it, what the tip takes: see [`tip`].
    tip: f64,
    /// Length of the cone.
    cone: f64,
}

/// Fabric from the band to the tip.
pub(super) fn above(ground: &Ground<'_>, band: f64, fold: f64) -> f64 {
    ground.above(band, fold) + ground.spec.shape.tail.cm()
}

/// Stitches of the tail: no more than the hat has.
pub(super) fn narrow(ground: &Ground<'_>) -> u32 {
    ground.spec.shape.tail_stitches.get().min(ground.stitches())
}

/// Where the total of the innermost round of the tail lies: what a strand draws up or gathers; begun there, one round's height, or the
/// radius of the small disc that is worked where the tail has more stitches than a ring holds.
fn tip(ground: &Ground<'_>, narrow: u32) -> f64 {
    match (ground.is_from_crown(), narrow > RING) {
        (false, _) => ground.drawn(narrow),
        (true, false) => ground.cells.h,
        (true, true) => disc(ground, narrow).arc,
    }
}

/// The disc of a tip, in whole rounds: as many as lie flat, and enough that none takes more than two stitches to one or ruffles.
fn disc(ground: &Ground<'_>, narrow: u32) -> Task {
    let (girth, h) = (ground.girth(narrow), ground.cells.h);
    let lies = |rounds: f64| (Quantity::Ruffle.row().usual_value() * TAU * rounds * h / ground.cells.w) as u32;
    let (mut rounds, mut most) = (1.0, RING);
    while most < narrow || rounds + 0.5 < girth / TAU / h {
        rounds += 1.0;
        most = (2 * most).min(lies(rounds).max(most));
    }
    ground.task(narrow, Curve::flat(girth), rounds * h)
}

/// The measures, where the cone is not shorter than a flat ring would be; what its own length lacks is taken from the tail.
///
/// The cone begins where a fitted crown would, a quarter of the head's girth from the top of the head, and ends so far out along the tail
/// as the taper goes.
fn cap(ground: &Ground<'_>, band: f64, fold: f64) -> Option<Cap> {
    let (n, narrow) = (ground.stitches(), narrow(ground));
    let hat = ground.above(band, fold);
    if hat <= 0.0 {
        return None;
    }
    let tail = ground.spec.shape.tail.cm();
    let taper = tail.min(ground.spec.shape.taper.cm());
    let crown = hat.min(ground.around.max(ground.girth(n)) / 4.0);
    let whole = |cm: f64| libm::round(cm / ground.cells.h) * ground.cells.h;
    let (mut arc, tip) = (hat + tail, tip(ground, narrow));
    if ground.is_from_crown() {
        // Tip, tail and cone come in whole rounds from the centre on.
        arc = whole(arc);
    }
    let flat = ground.girth(n - narrow) / TAU;
    let wide = crown + tail;
    let from = (tail - taper).min(wide - flat).max(tip);
    let tail = if ground.is_from_crown() { whole(from) } else { arc - whole(arc - from) };
    let cone = (wide - tail).max(flat);
    (arc - tail >= cone - ground.cells.h / 2.0).then_some(Cap { arc, tail, narrow, tip, cone })
}

/// The tube and the cone; and, begun at a tip that no ring holds, the tip.
pub(super) fn tasks(ground: &Ground<'_>, band: f64, fold: f64) -> Option<Vec<Task>> {
    let n = ground.stitches();
    let Cap { arc, tail, narrow, cone, .. } = cap(ground, band, fold)?;
    let mut tasks = Vec::new();
    if narrow < n {
        let curve = Curve::cone(ground.girth(narrow), tail, ground.girth(n), tail + cone);
        let close = Close::To { stitches: narrow, at: tail };
        tasks.push(Task { close, fewest: 1, ..ground.task(n, curve, arc) });
    }
    if ground.is_from_crown() && narrow > RING {
        tasks.push(disc(ground, narrow));
    }
    Some(tasks)
}

/// All rounds from the band to the tip.
pub(super) fn join(ground: &Ground<'_>, band: f64, fold: f64, schedules: &[Schedule]) -> Option<Vec<u32>> {
    let Cap { arc, narrow, tip, .. } = cap(ground, band, fold)?;
    let h = ground.cells.h;
    let cone = if narrow < ground.stitches() { schedules.first() } else { None };
    let disc = if ground.is_from_crown() && narrow > RING { schedules.last() } else { None };
    let mut counts = cone.map_or_else(Vec::new, |cone| cone.counts.clone());
    let mut end: &[u32] = disc.map_or(&[], |disc| &disc.counts);
    let inside = match (ground.is_from_crown(), disc) {
        (false, _) => tip,
        (true, None) => 0.0,
        (true, Some(disc)) => disc.counts.len() as f64 * h,
    };
    let left = libm::round((arc - counts.len() as f64 * h - inside) / h);
    if left < 0.0 && !counts.is_empty() && !end.is_empty() {
        // The last round of the cone is the first of the tip.
        end = &end[1..];
    }
    let straight = if counts.is_empty() && end.is_empty() { left.max(1.0) } else { left.max(0.0) };
    counts.extend(core::iter::repeat_n(narrow, straight as usize));
    counts.extend(end);
    Some(counts)
}

/// The rounds that are left from so many stitches at this distance from the tip, in working order; the first of them is the next.
pub(super) fn rest(ground: &Ground<'_>, band: f64, fold: f64, stitches: u32, s: f64) -> Option<Vec<u32>> {
    let Cap { arc, tail, narrow, tip, cone } = cap(ground, band, fold)?;
    let (n, h) = (ground.stitches(), ground.cells.h);
    let plain = |from: f64, to: f64| libm::round((from - to) / h).max(0.0) as usize;
    let curve = Curve::cone(ground.girth(narrow), tail, ground.girth(n), tail + cone);
    if ground.is_from_crown() {
        let mut counts = Vec::new();
        let at = |counts: &Vec<u32>| s + counts.len() as f64 * h;
        if stitches < narrow && narrow > RING {
            // Still in the small disc of the tip.
            let girth = ground.girth(narrow);
            let close = Close::To { stitches, at: s };
            let disc = super::solve(&Task { close, ..ground.task(narrow, Curve::flat(girth), girth / TAU) })?;
            counts.extend(disc.counts.into_iter().rev().skip(1));
        }
        let now = counts.last().copied().unwrap_or(stitches);
        if now <= narrow {
            let straight = plain(tail, at(&counts));
            counts.extend(core::iter::repeat_n(now, straight));
        }
        if now == n {
            let straight = plain(arc, at(&counts));
            counts.extend(core::iter::repeat_n(n, straight));
            return Some(counts);
        }
        let close = Close::To { stitches: now, at: at(&counts) };
        let found = super::solve(&Task { close, fewest: 1, ..ground.task(n, curve, arc) })?;
        counts.extend(found.counts.into_iter().rev().skip(1));
        return Some(counts);
    }
    let mut counts = Vec::new();
    let mut at = s;
    if stitches > narrow {
        // Where the cone comes late, the tail begins later.
        let ends = tail.min(s - ground.girth(stitches - narrow) / TAU);
        let close = Close::To { stitches: narrow, at: ends };
        let found = super::solve(&Task { close, fewest: 1, ..ground.task(stitches, curve, s + h) })?;
        counts.extend(&found.counts[1..]);
        at -= counts.len() as f64 * h;
    }
    counts.extend(core::iter::repeat_n(stitches.min(narrow), plain(at, tip)));
    Some(counts)
}
