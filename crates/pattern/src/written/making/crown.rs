//! Parts that are shaped: underside, crown, tail.

use super::{Job, rounds_of, times};
use crate::written::pattern::Part;
use hatwright_sizing::{Layout, RoundKind, Style};

/// A tam's underside.
pub(super) fn under(job: &Job<'_>) -> Vec<String> {
    let mut text = String::from(if job.begun_at_crown() {
        "The underside goes back inward, at the rate at which a flat ring narrows, until it is as wide as the band."
    } else {
        "The underside goes outward, at the rate at which a flat ring grows, until it is as wide as the disc."
    });
    text.push_str(" It lies flat, and the edge between it and the disc folds when the tam is worn.");
    vec![text]
}

/// The crown: decreases to the top, or increases from the ring.
pub(super) fn crown(part: &Part, job: &Job<'_>) -> Vec<String> {
    let mut list = Vec::new();
    let rounds = rounds_of(part);
    let own = || job.hat.rounds.iter().filter(move |r| rounds.is_some_and(|(from, to)| (from..=to).contains(&r.number)));
    if let Some(round) = own().find(|r| r.kind == RoundKind::Adjust) {
        let widens = round.increases.get() > 0;
        let where_it_is =
            if job.begun_at_crown() { "The adjustment is in round " } else { "The adjustment comes first, in round " };
        let mut text = [where_it_is, &round.number.to_string(), ": it takes the "].concat();
        text.push_str(&[&round.before.to_string(), " stitches to ", &round.after.to_string()].concat());
        if let Layout::Wedges(wedges) = job.hat.lays(job.spec) {
            text.push_str(&if widens {
                [", which the ", &wedges.to_string(), " wedges alone would not give"].concat()
            } else {
                [", which ", &wedges.to_string(), " wedges divide evenly"].concat()
            });
        }
        text.push('.');
        list.push(text);
    }
    let what = if job.begun_at_crown() { "Increases" } else { "Decreases" };
    let shaped = own().any(|r| r.decreases.get() + r.increases.get() > 0);
    if shaped {
        list.push(match job.hat.lays(job.spec) {
            Layout::Wedges(_) => [
                what,
                " stand above each other and draw a star. Where a round does not divide evenly, the groups differ by one \
                                  stitch: work them as written.",
            ]
            .concat(),
            Layout::Spread => [
                what,
                " are spread, for a smooth ",
                crown_name(job),
                ": some rounds begin with plain stitches so that they do not \
                                stand above each other. Groups in a round may differ by one stitch: work them as written.",
            ]
            .concat(),
        });
    }
    if part.lines.len() > 1 {
        list.push("Count each round against its total before you begin the next.".into());
    }
    list
}

const fn crown_name(job: &Job<'_>) -> &'static str {
    match job.hat.style {
        Style::Tam => "disc",
        Style::Stocking => "cone",
        _ => "crown",
    }
}

/// A beginning in an adjustable ring, with the hook where it is known.
pub(super) fn ring(job: &Job<'_>) -> String {
    let mut text = String::from(if job.hat.style == Style::Stocking {
        "Begin at the tip, in an adjustable ring"
    } else {
        "Begin at the middle of the crown, in an adjustable ring"
    });
    if let Some(hook) = Job::with_hook(job.spec.hook) {
        text.push_str(&[", ", &hook].concat());
    }
    text.push_str(". Pull it quite closed after a few rounds, and weave its end in around the middle, twice, the second time back the other way.");
    text
}

/// A stocking cap's straight tail.
pub(super) fn tail(part: &Part, job: &Job<'_>) -> Vec<String> {
    let mut list = Vec::new();
    let Some((from, to)) = rounds_of(part) else { return list };
    let stitches = part.lines.iter().map(|line| line.total).max().unwrap_or(0).to_string();
    let long = job.length(times(job.hat.gauge.round, to - from + 1));
    list.push(["The tail goes straight on, ", &stitches, " stitches around, for ", &long, " in all."].concat());
    list
}
