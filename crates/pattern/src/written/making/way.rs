//! How rounds follow one another: the spiral and its step, joined rounds and their seam.

use super::{Job, rounds_of};
use crate::written::pattern::{Part, PartKind};
use hatwright_sizing::{Edge, Loops, RoundKind, Stitch, Way};

/// What holds for all rounds, said once.
pub(super) fn rounds(part: &Part, job: &Job<'_>) -> Vec<String> {
    let mut list = Vec::new();
    match job.spec.goes() {
        Way::Spiral => {
            let mut text = String::from("Go on in a spiral: never turn, and do not close the rounds. ");
            if !follows_rows(job) {
                text = "Work in a spiral: never turn, and do not close the rounds. ".into();
            }
            text.push_str("Put the marker in the first stitch of each round and move it up as you come to it.");
            list.push(text);
            list.extend(step_up(part, first_open_round(part, job), job));
        }
        Way::Joined => {
            let chain = part.fabric.row().chain.to_string();
            let mut text = [
                "Never turn. Each round begins with ch ",
                &chain,
                ", which is not counted as a stitch, and closes with a slip \
                             stitch in its first stitch (join). ",
            ]
            .concat();
            text.push_str("Its first stitch goes into the stitch that the slip stitch went into; its last into the last stitch of the round below, not into the slip stitch. ");
            text.push_str("Mark the first stitch of each round. The seam slants a little to one side as the rounds grow: that is usual; wear \
                           it at the back.");
            list.push(text);
        }
    }
    list
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
    let name = |stitch| job.words().name(stitch);
    let (single, half) = (name(Stitch::Single), name(Stitch::HalfDouble));
    let round = round.to_string();
    let mut text = String::from("So that the spiral begins without a step, work ");
    text.push_str(&match part.fabric.row().stitch {
        Stitch::Slip | Stitch::Single => return None,
        Stitch::HalfDouble => ["the first stitch of round ", &round, " lower, as a ", single].concat(),
        Stitch::Double => ["the first two stitches of round ", &round, " lower, as a ", single, " and a ", half].concat(),
    });
    text.push_str(match part.fabric.row().loops {
        Loops::Posts => ", around the posts",
        Loops::Both | Loops::Back | Loops::Front => "",
    });
    let one = part.fabric.row().stitch == Stitch::HalfDouble;
    text.push_str(if one { "; it counts like any other." } else { "; each counts like any other." });
    Some(text)
}

/// Where rounds go on in a taller fabric, or in one that begins with other chains.
pub(super) fn taller(part: &Part, job: &Job<'_>) -> Option<String> {
    let first = rounds_of(part).map_or(1, |(from, _)| from);
    let before = job.part_before(part).filter(|p| rounds_of(p).is_some());
    if job.spec.goes() == Way::Joined {
        let (own, before) = (part.fabric.row().chain, before?.fabric.row().chain);
        return (own != before).then(|| ["From here rounds begin with ch ", &own.to_string(), "."].concat());
    }
    let Some(before) = before else {
        return if part.kind == PartKind::Brim { step_up(part, first, job) } else { None };
    };
    let (own, other) = (part.fabric.row().stitch, before.fabric.row().stitch);
    if own <= other {
        return None;
    }
    let lower = if own == Stitch::Double { Stitch::HalfDouble } else { other };
    let mut text = ["The stitches are taller now: work the first stitch of round ", &first.to_string(), " as a "].concat();
    text.push_str(&[job.words().name(lower), ", so that it makes no step; it counts like any other."].concat());
    Some(text)
}

/// Where a spiral goes on in a lower fabric.
pub(super) fn lower(part: &Part, next: &Part, job: &Job<'_>) -> Option<String> {
    let (_, last) = rounds_of(part)?;
    rounds_of(next)?;
    let (own, other) = (part.fabric.row().stitch, next.fabric.row().stitch);
    if job.spec.goes() == Way::Joined || own <= other {
        return None;
    }
    let mut text = ["The stitches that follow are lower: work the last stitch of round ", &last.to_string(), " as a "].concat();
    text.push_str(&[job.words().name(other), ", so that they begin without a step."].concat());
    Some(text)
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
    let last = rounds_of(part).map_or(0, |(_, to)| to).to_string();
    let name = |stitch| job.words().name(stitch);
    let keep = job.pattern.parts.iter().any(|p| matches!(p.kind, PartKind::Band)) && job.begun_at_crown();
    let after = if keep {
        "fasten off: the band has a yarn of its own."
    } else {
        "fasten off, and weave the end in so that the edge runs on evenly."
    };
    match job.spec.goes() {
        Way::Joined => ["When round ", &last, " is joined, it is the last: ", after].concat(),
        Way::Spiral => {
            let mut text = String::from("At the end of the spiral ");
            match part.fabric.row().stitch {
                Stitch::Slip | Stitch::Single => {}
                Stitch::HalfDouble => text.push_str(
                    &["step down: work the last stitch of round ", &last, " as a ", name(Stitch::Single), ", "].concat(),
                ),
                Stitch::Double => text.push_str(
                    &[
                        "step down: work the last two stitches of round ",
                        &last,
                        " as a ",
                        name(Stitch::HalfDouble),
                        " and a ",
                        name(Stitch::Single),
                        ", ",
                    ]
                    .concat(),
                ),
            }
            text.push_str("slip stitch in the next stitch, then ");
            text.push_str(after);
            text
        }
    }
}
