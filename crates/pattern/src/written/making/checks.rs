//! Check-points: a piece laid flat, and what it should measure.

use super::{Job, edge, half, rounds_of, times};
use crate::written::pattern::{Part, PartKind};
use hatwright_sizing::{BandKind, Length, Style, Zone};
use hatwright_words::making as say;

pub(super) fn check(part: &Part, job: &Job<'_>) -> Option<String> {
    let hat = job.hat;
    match part.kind {
        PartKind::Band => {
            let girth = hat.size.band_girth;
            Some(say::check_ring(&job.length(half(girth)), &job.length(girth)))
        }
        PartKind::BandAround if job.begun_at_crown() => None,
        PartKind::BandAround => Some(laid(job, say::check_band, hat.size.band_girth, hat.depth.band)),
        PartKind::Body => Some(body(part, job)),
        PartKind::Under if !job.begun_at_crown() => Some(say::check_disc(&job.length(across(job, stitches(part))))),
        PartKind::Crown => Some(crown(part, job)),
        PartKind::Brim => Some(say::check_brim(&job.length(times(hat.gauge.round, count(part))))),
        PartKind::Panel => {
            let tall = hat.panel.as_ref().map_or(0, |panel| panel.stitches.get());
            Some(say::check_panel(&job.length(hat.size.girth), &job.length(times(hat.gauge.stitch, tall))))
        }
        PartKind::Under | PartKind::Tail | PartKind::Joining | PartKind::Seam | PartKind::Flaps | PartKind::Closing => None,
    }
}

fn count(part: &Part) -> u32 {
    rounds_of(part).map_or(0, |(from, to)| to + 1 - from)
}

fn stitches(part: &Part) -> u32 {
    part.lines.iter().rev().find(|line| line.kind.is_some()).map_or(0, |line| line.total)
}

/// A tube laid flat: half its girth across, its girth around, and its height.
fn laid(job: &Job<'_>, told: fn(&str, &str, &str) -> String, girth: Length, height: Length) -> String {
    told(&job.length(half(girth)), &job.length(girth), &job.length(height))
}

fn body(part: &Part, job: &Job<'_>) -> String {
    let hat = job.hat;
    let girth = times(hat.gauge.stitch, stitches(part));
    if job.begun_at_crown() {
        let (_, to) = rounds_of(part).unwrap_or_default();
        let deep = job.length(times(hat.gauge.round, to));
        return say::check_body_down(middle(job), &deep, &job.length(half(girth)));
    }
    // Count times a rounded stitch would drift from the girth that is promised elsewhere.
    let girth = if stitches(part) == hat.size.stitches.get() && hat.style != Style::Slouch { hat.size.girth } else { girth };
    let told = if hat.band == BandKind::None { say::check_body } else { say::check_body_above };
    laid(job, told, girth, times(hat.gauge.round, count(part)))
}

fn middle(job: &Job<'_>) -> &'static str {
    match job.hat.style {
        Style::Stocking => say::the_tip(),
        _ => say::the_middle(),
    }
}

/// Across a flat disc of so many stitches around, or of the edge that a part reaches.
fn across(job: &Job<'_>, stitches: u32) -> Length {
    let girth = times(job.hat.gauge.stitch, stitches);
    Length::from_ticks((f64::from(girth.ticks()) / core::f64::consts::PI) as i32)
}

fn crown(part: &Part, job: &Job<'_>) -> String {
    let hat = job.hat;
    if !job.begun_at_crown() {
        let tail: u32 = hat.rounds.iter().filter(|r| r.zone == Zone::Tail).count() as u32;
        let above = Length::from_ticks(hat.depth.above_band.ticks().saturating_sub(times(hat.gauge.round, tail).ticks()));
        let above = job.length(above);
        if tail > 0 {
            return say::check_to_tail(edge::from_where(job), &above);
        }
        let opening = hat.top.map_or(Length::ZERO, |top| top.opening);
        return say::check_to_top(edge::from_where(job), &above, &job.length(opening));
    }
    if hat.style == Style::Tam {
        return say::check_tam(&job.length(across(job, stitches(part))));
    }
    let (_, to) = rounds_of(part).unwrap_or_default();
    let girth = times(hat.gauge.stitch, stitches(part));
    say::check_crown_down(middle(job), &job.length(times(hat.gauge.round, to)), &job.length(girth))
}
