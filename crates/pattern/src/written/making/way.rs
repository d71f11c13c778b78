//! How rounds follow one another: the spiral and its step, joined rounds and their seam.

use super::band::hides_its_outside;
use super::{Job, rounds_of};
use crate::written::pattern::{Part, PartKind};
use hatwright_sizing::{BandKind, Edge, Loops, RoundKind, Stitch, Way};
use hatwright_words::making as say;

/// What holds for all rounds, said once.
pub(super) fn rounds(part: &Part, job: &Job<'_>) -> Vec<String> {
    // A band of rounds that is turned for its fold is worked from the other side than the rest, and says so.
    let band = job.spec.band_fabric().row().loops;
    let turned = job.hat.band == BandKind::Around && hides_its_outside(job.hat) && band != Loops::Posts;
    let face: &[&str] = if turned { &[] } else { &[say::face()] };
    match job.spec.goes() {
        Way::Spiral => {
            let spiral = if follows_rows(job) { say::spiral_go_on() } else { say::spiral() };
            let mut list = vec![[&[spiral, say::marker()], face].concat().join(" ")];
            list.extend(step_up(part, first_open_round(part, job), job));
            list
        }
        Way::Joined => vec![[&[&*say::joined(part.fabric.row().chain), say::joined_mark()], face].concat().join(" ")],
    }
}

fn follows_rows(job: &Job<'_>) -> bool {
    job.pattern.parts.first().is_some_and(|part| part.kind == PartKind::Band)
}

/// The round in which the spiral leaves the level: after a foundation that was joined, the second.
fn first_open_round(part: &Part, job: &Job<'_>) -> u32 {
    let first = rounds_of(part).map_or(1, |(from, _)| from);
    let joined = job.hat.rounds.first().is_some_and(|r| r.kind == RoundKind::Foundation) && job.spec.band.edge == Edge::Chainless;
    first + u32::from(joined)
}

/// How the first stitches of a spiral climb where the stitch is tall.
fn step_up(part: &Part, round: u32, job: &Job<'_>) -> Option<String> {
    let words = job.words();
    let (single, half) = (words.name(Stitch::Single), words.name(Stitch::HalfDouble));
    let row = part.fabric.row();
    match (row.stitch, row.loops == Loops::Posts) {
        (Stitch::Slip | Stitch::Single, _) => None,
        (Stitch::HalfDouble, false) => Some(say::step_up_half(round, single)),
        (Stitch::HalfDouble, true) => Some(say::step_up_half_posts(round, single)),
        (Stitch::Double, false) => Some(say::step_up_double(round, single, half)),
        (Stitch::Double, true) => Some(say::step_up_double_posts(round, single, half)),
    }
}

/// Where rounds go on in a taller fabric, or in one that begins with other chains.
pub(super) fn taller(part: &Part, job: &Job<'_>) -> Option<String> {
    let first = rounds_of(part).map_or(1, |(from, _)| from);
    let before = job.part_before(part).filter(|p| rounds_of(p).is_some());
    if job.spec.goes() == Way::Joined {
        let (own, before) = (part.fabric.row().chain, before?.fabric.row().chain);
        return (own != before).then(|| say::chain_from_here(own));
    }
    let Some(before) = before else {
        return if part.kind == PartKind::Brim { step_up(part, first, job) } else { None };
    };
    let (own, other) = (part.fabric.row().stitch, before.fabric.row().stitch);
    if own <= other {
        return None;
    }
    let lower = if own == Stitch::Double { Stitch::HalfDouble } else { other };
    Some(say::taller(first, job.words().name(lower)))
}

/// Where a spiral goes on in a lower fabric.
pub(super) fn lower(part: &Part, next: &Part, job: &Job<'_>) -> Option<String> {
    let (_, last) = rounds_of(part)?;
    rounds_of(next)?;
    let (own, other) = (part.fabric.row().stitch, next.fabric.row().stitch);
    if job.spec.goes() == Way::Joined || own <= other {
        return None;
    }
    let stitch = job.words().name(other);
    let posts = part.fabric.row().loops == Loops::Posts;
    Some(if posts { say::lower_post(last, stitch) } else { say::lower(last, stitch) })
}

/// Stitches that are named in what is said of the rounds, and that lines need not have.
pub(in crate::written) fn named(job: &Job<'_>) -> Vec<Stitch> {
    let in_rounds = || job.pattern.parts.iter().filter(|part| rounds_of(part).is_some());
    let mut list = Vec::new();
    let drawn_up = job.pattern.parts.last().is_some_and(|part| part.kind == PartKind::Closing);
    let joined = job.spec.goes() == Way::Joined;
    let begun = job.hat.rounds.iter().any(|r| r.kind == RoundKind::Foundation);
    if in_rounds().next().is_some() && (joined || begun || !drawn_up || job.pattern.coloured) {
        list.push(Stitch::Slip);
    }
    if !joined {
        let tallest = in_rounds().map(|part| part.fabric.row().stitch).max();
        list.extend(
            [Stitch::Single, Stitch::HalfDouble].into_iter().filter(|stitch| tallest.is_some_and(|tallest| *stitch < tallest)),
        );
    }
    list
}

/// How the last round ends, where nothing is drawn up after it.
pub(super) fn end(part: &Part, job: &Job<'_>) -> String {
    let last = rounds_of(part).map_or(0, |(_, to)| to);
    let words = job.words();
    let (single, half) = (words.name(Stitch::Single), words.name(Stitch::HalfDouble));
    let apart = job.pattern.parts.iter().any(|p| matches!(p.kind, PartKind::Band)) && job.begun_at_crown();
    let finish = if apart { say::finish_band_apart() } else { say::finish_edge() };
    let posts = part.fabric.row().loops == Loops::Posts;
    match (job.spec.goes(), part.fabric.row().stitch) {
        (Way::Joined, _) => say::end_joined(last, finish),
        (Way::Spiral, Stitch::Slip | Stitch::Single) => say::end_spiral(finish),
        (Way::Spiral, Stitch::HalfDouble) if posts => say::end_spiral_half_post(last, single, finish),
        (Way::Spiral, Stitch::Double) if posts => say::end_spiral_double_post(last, half, single, finish),
        (Way::Spiral, Stitch::HalfDouble) => say::end_spiral_half(last, single, finish),
        (Way::Spiral, Stitch::Double) => say::end_spiral_double(last, half, single, finish),
    }
}
