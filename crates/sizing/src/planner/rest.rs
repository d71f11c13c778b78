//! The rounds that are left of a hat that is begun, from exactly the stitches that are on the hook.

use super::ground::Ground;
use super::{body, brim, slouch, solve, stocking, tam};
use crate::crown::{Close, Task};
use crate::curve::Curve;
use crate::{BandKind, Style, Zone};
use core::f64::consts::TAU;

/// Where the work stands.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Here {
    /// Stitches of the last round, as they are.
    pub stitches: u32,
    /// Which part that round belongs to.
    pub zone: Zone,
    /// Rounds of the body that are done: those of a band worked around, and of a brim, not among them.
    pub body: u32,
    /// Rounds of a band worked around, and of a brim, that are done.
    pub outside: u32,
    /// Stitches of the hat's widest straight round: of its tube.
    pub tube: u32,
}

/// What is left.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Rest {
    /// Counts of all rounds to come, in working order.
    pub counts: Vec<u32>,
    /// Of them, rounds of the body.
    pub body: u32,
}

/// The best rest; `None` where nothing can close from here. `deeper` is how much more fabric than planned the hat may take, in cm.
pub(crate) fn rest(ground: &Ground<'_>, here: Here, deeper: f64) -> Option<Rest> {
    let (band, fold) = (ground.cells.band_height(ground.spec), ground.spec.fold().cm());
    let body = if here.zone == Zone::Brim {
        Vec::new()
    } else if ground.is_from_crown() {
        if here.zone == Zone::Band { Vec::new() } else { outward(ground, here, band, fold, deeper)? }
    } else {
        inward(ground, here, band, fold, deeper)?
    };
    let rounds = body.len() as u32;
    let mut counts = body;
    if ground.spec.band_kind() == BandKind::Around {
        let left = ground.spec.band.rounds.get().saturating_sub(here.outside);
        let rounds = core::iter::repeat_n(ground.stitches(), left as usize);
        match (ground.is_from_crown(), here.zone) {
            (true, _) => counts.extend(rounds),
            (false, Zone::Band) => {
                counts.splice(0..0, rounds);
            }
            (false, _) => {}
        }
    }
    if ground.spec.style == Style::Brimmed {
        counts.extend(brim_left(ground, here));
    }
    Some(Rest { counts, body: rounds })
}

/// Where the body's last total lies, from the centre.
fn at(ground: &Ground<'_>, here: Here, above: f64, deeper: f64) -> f64 {
    let done = f64::from(here.body) * ground.cells.h;
    if ground.is_from_crown() { done } else { above + deeper - done }
}

/// From the edge to the centre.
fn inward(ground: &Ground<'_>, here: Here, band: f64, fold: f64, deeper: f64) -> Option<Vec<u32>> {
    if here.body == 0 {
        return body::counts(ground, band, fold);
    }
    let (style, h) = (ground.spec.style, ground.cells.h);
    let above = body::above(ground, band, fold);
    let s = at(ground, here, above, deeper);
    let from = |curve: Curve| {
        let task = Task { fewest: fewest(style), ..ground.task(here.stitches, curve, s + h) };
        // The first of its rounds is the one that is done.
        solve(&task).map(|found| found.counts[1..].to_vec())
    };
    let tube = ground.girth(here.tube);
    match style {
        Style::Stocking => stocking::rest(ground, band, fold, here.stitches, s),
        Style::Slouch if here.body < slouch::below(ground) || here.tube <= ground.stitches() && here.body == 1 => {
            let counts = body::counts(ground, band, fold)?;
            Some(counts[here.body as usize..].to_vec())
        }
        Style::Slouch => from(Curve::slouch(tube, above + deeper - f64::from(slouch::below(ground)) * h)?),
        Style::Tam if here.zone == Zone::Under => {
            let tasks = tam::tasks(ground, ground.spec.shape.tam_across.cm())?;
            let [under, disc] = tasks.as_slice() else { return None };
            // Along the underside the way from the centre of the disc leads over its edge.
            let close = Close::To { stitches: here.stitches, at: 2.0 * under.arc - s };
            let (out, disc) = (solve(&Task { close, ..*under })?, solve(disc)?);
            let mut counts: Vec<u32> = out.counts.iter().rev().skip(1).copied().collect();
            counts.extend(&disc.counts[1..]);
            Some(counts)
        }
        Style::Tam => from(Curve::flat(tube)),
        _ => from(Curve::new(tube, ground.around, above + deeper)?),
    }
}

/// From the centre to the edge.
fn outward(ground: &Ground<'_>, here: Here, band: f64, fold: f64, deeper: f64) -> Option<Vec<u32>> {
    let (style, h, n) = (ground.spec.style, ground.cells.h, ground.stitches());
    let above = body::above(ground, band, fold) + deeper;
    let s = at(ground, here, above, 0.0);
    if here.zone == Zone::Body {
        let narrows = u32::from(style == Style::Slouch && here.stitches > n) * slouch::below(ground);
        if s + f64::from(narrows) * h > above + h / 2.0 {
            // More is done than there should be.
            return None;
        }
        let left = libm::round((above - s) / h).max(f64::from(narrows)) as u32;
        let straight = if style == Style::Slouch { here.stitches } else { n };
        let mut counts = vec![straight; (left - narrows) as usize];
        counts.extend(core::iter::repeat_n(n, narrows as usize));
        return Some(counts);
    }
    let here_at = Close::To { stitches: here.stitches, at: s };
    let out = |task: Task| -> Option<Vec<u32>> {
        if task.stitches == here.stitches {
            let left = libm::round((task.arc - s) / h).max(0.0);
            return Some(vec![task.stitches; left as usize]);
        }
        let found = solve(&Task { close: here_at, ..task })?;
        Some(found.counts.iter().rev().skip(1).copied().collect())
    };
    match style {
        Style::Stocking => stocking::rest(ground, band, fold, here.stitches, s),
        Style::Slouch => {
            let m = slouch::tube(ground);
            let below = slouch::below(ground);
            let arc = above - f64::from(below) * h;
            let mut counts = out(ground.task(m, Curve::slouch(ground.girth(m), arc)?, arc))?;
            counts.extend(core::iter::repeat_n(n, below as usize));
            Some(counts)
        }
        Style::Tam => {
            let tasks = tam::tasks(ground, ground.spec.shape.tam_across.cm())?;
            let [under, disc] = tasks.as_slice() else { return None };
            let edge = if ground.has_edge_round() { vec![n] } else { Vec::new() };
            if here.zone == Zone::Under {
                let inner = ground.girth(n) / TAU;
                // What is left of the underside, along which the way leads back towards the band.
                let arc = 2.0 * disc.arc - s + h;
                let task = Task { stitches: here.stitches, arc, close: Close::To { stitches: n, at: inner }, ..*under };
                let under = if here.stitches == n { vec![n] } else { solve(&task)?.counts };
                return Some(under[1..].iter().copied().chain(edge).collect());
            }
            let (mut counts, under) = (out(*disc)?, solve(under)?);
            counts.extend(&under.counts[1..]);
            counts.extend(edge);
            Some(counts)
        }
        _ => out(ground.task(n, Curve::new(ground.girth(n), ground.around, above)?, above)),
    }
}

/// Rounds of the brim that are left.
fn brim_left(ground: &Ground<'_>, here: Here) -> Vec<u32> {
    let whole = brim::counts(ground);
    if here.zone != Zone::Brim {
        return whole;
    }
    let left = whole.len().saturating_sub(here.outside as usize) as u32;
    if left == 0 {
        return Vec::new();
    }
    let most = here.stitches.saturating_mul(1 << left.min(8));
    let outer = whole.last().copied().unwrap_or(here.stitches).clamp(here.stitches, most);
    brim::outward(ground, here.stitches, outer, left)
}

/// Fewest decreases of a round.
const fn fewest(style: Style) -> u32 {
    if matches!(style, Style::Stocking) { 1 } else { 4 }
}
