//! Check-points: a piece laid flat, and what it should measure.

use super::{Job, edge, half, rounds_of, times};
use crate::written::pattern::{Part, PartKind};
use hatwright_sizing::{Length, Style, Zone};

pub(super) fn check(part: &Part, job: &Job<'_>) -> Vec<String> {
    let hat = job.hat;
    match part.kind {
        PartKind::Band => vec![band(job)],
        PartKind::BandAround if job.begun_at_crown() => Vec::new(),
        PartKind::BandAround => vec![laid(job, "the band", hat.size.band_girth, hat.depth.band, "", "tall")],
        PartKind::Body => vec![body(part, job)],
        PartKind::Under if !job.begun_at_crown() => vec![disc(part, job)],
        PartKind::Crown => vec![crown(part, job)],
        PartKind::Brim => {
            vec![["Check: the brim should be ", &job.length(times(hat.gauge.round, count(part))), " wide, all around."].concat()]
        }
        PartKind::Panel => vec![panel(job)],
        PartKind::Under | PartKind::Tail | PartKind::Joining | PartKind::Seam | PartKind::Flaps | PartKind::Closing => Vec::new(),
    }
}

fn count(part: &Part) -> u32 {
    rounds_of(part).map_or(0, |(from, to)| to + 1 - from)
}

fn stitches(part: &Part) -> u32 {
    part.lines.iter().rev().find(|line| line.kind.is_some()).map_or(0, |line| line.total)
}

fn band(job: &Job<'_>) -> String {
    let girth = job.hat.size.band_girth;
    ["Check: lay the ring flat, without pulling. It should be ", &job.length(half(girth)), " across, ", &job.length(girth)]
        .concat()
        + " around. If it is not, your rows are taller or shorter than planned: measure them and work the hat out again."
}

fn laid(job: &Job<'_>, what: &str, girth: Length, height: Length, above: &str, tall: &str) -> String {
    let mut text =
        ["Check: laid flat, ", what, " should be ", &job.length(half(girth)), " across, ", &job.length(girth)].concat();
    text.push_str(
        &[" around, and ", &job.length(height), " ", tall, above, ". If it is not, measure a stitch and a round in it"].concat(),
    );
    text.push_str(" and work the hat out again.");
    text
}

fn body(part: &Part, job: &Job<'_>) -> String {
    let hat = job.hat;
    let girth = times(hat.gauge.stitch, stitches(part));
    if job.begun_at_crown() {
        let (_, to) = rounds_of(part).unwrap_or_default();
        let mut text =
            ["Check: from ", middle(job), " to here, along the fabric, ", &job.length(times(hat.gauge.round, to))].concat();
        text.push_str(
            &[
                "; laid flat, ",
                &job.length(half(girth)),
                " across. If it is not, measure a stitch and a round in it and work the hat out again.",
            ]
            .concat(),
        );
        return text;
    }
    // Count times a rounded stitch would drift from the girth that is promised elsewhere.
    let girth = if stitches(part) == hat.size.stitches.get() && hat.style != Style::Slouch { hat.size.girth } else { girth };
    let above = if hat.band == hatwright_sizing::BandKind::None { "" } else { " above the band" };
    laid(job, "the body", girth, times(hat.gauge.round, count(part)), above, "high")
}

const fn middle(job: &Job<'_>) -> &'static str {
    match job.hat.style {
        Style::Stocking => "the tip",
        _ => "the middle of the crown",
    }
}

/// Across a flat disc of so many stitches around, or of the edge that a part reaches.
fn across(job: &Job<'_>, stitches: u32) -> Length {
    let girth = times(job.hat.gauge.stitch, stitches);
    Length::from_ticks((f64::from(girth.ticks()) / core::f64::consts::PI) as i32)
}

fn disc(part: &Part, job: &Job<'_>) -> String {
    [
        "Check: laid flat, the piece should be ",
        &job.length(across(job, stitches(part))),
        " across at its edge. If it ruffles or will not lie flat, \
      measure a stitch and a round in it and work the hat out again.",
    ]
    .concat()
}

fn crown(part: &Part, job: &Job<'_>) -> String {
    let hat = job.hat;
    if !job.begun_at_crown() {
        let tail: u32 = hat.rounds.iter().filter(|r| r.zone == Zone::Tail).count() as u32;
        let above = Length::from_ticks(hat.depth.above_band.ticks().saturating_sub(times(hat.gauge.round, tail).ticks()));
        let mut text = ["Check: from ", edge::from_where(job), " to "].concat();
        if tail > 0 {
            text.push_str(&["where the tail begins, along the fabric, ", &job.length(above), "."].concat());
        } else {
            let opening = hat.top.map_or(Length::ZERO, |top| top.opening);
            text.push_str(
                &[
                    "the top, along the fabric, ",
                    &job.length(above),
                    " when the top is closed. The opening that is left is about ",
                ]
                .concat(),
            );
            text.push_str(&[&job.length(opening), " across."].concat());
        }
        return text;
    }
    let (_, to) = rounds_of(part).unwrap_or_default();
    let deep = job.length(times(hat.gauge.round, to));
    if hat.style == Style::Tam {
        return [
            "Check: the disc should lie flat, ",
            &job.length(across(job, stitches(part))),
            " across. If it ruffles or cups, measure a stitch and a \
                 round in it and work the hat out again.",
        ]
        .concat();
    }
    let girth = times(hat.gauge.stitch, stitches(part));
    ["Check: from ", middle(job), " to here, along the fabric, ", &deep, "; around the edge, ", &job.length(girth), "."].concat()
}

fn panel(job: &Job<'_>) -> String {
    let hat = job.hat;
    let tall = hat.panel.as_ref().map_or(0, |panel| panel.stitches.get());
    let mut text =
        ["Check: laid flat, without pulling, the piece should be ", &job.length(hat.size.girth), " long at its lower edge and "]
            .concat();
    text.push_str(
        &[
            &job.length(times(hat.gauge.stitch, tall)),
            " from there to the crown. If it is not, measure your rows and work the hat out again.",
        ]
        .concat(),
    );
    text
}
