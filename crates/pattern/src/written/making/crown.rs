//! Parts that are shaped: underside, crown, tail.

use super::{Job, rounds_of, times};
use crate::written::pattern::Part;
use hatwright_sizing::{Layout, Round, RoundKind, Style};
use hatwright_words::making as say;

/// A tam's underside.
pub(super) fn under(job: &Job<'_>) -> Vec<String> {
    vec![if job.begun_at_crown() { say::under_inward() } else { say::under_outward() }.into()]
}

/// The crown: decreases to the top, or increases from the ring.
pub(super) fn crown(part: &Part, job: &Job<'_>) -> Vec<String> {
    let rounds = rounds_of(part);
    let own = || job.hat.rounds.iter().filter(move |r| rounds.is_some_and(|(from, to)| (from..=to).contains(&r.number)));
    let mut list: Vec<String> =
        own().find(|r| r.kind == RoundKind::Adjust).map(|round| adjustment(round, job)).into_iter().collect();
    if own().any(|r| r.decreases.get() + r.increases.get() > 0) {
        list.push(match (job.hat.lays(job.spec), job.begun_at_crown()) {
            (Layout::Wedges(_), true) => say::increases_star().into(),
            (Layout::Wedges(_), false) => say::decreases_star().into(),
            (Layout::Spread, true) => say::increases_spread(smooth(job)),
            (Layout::Spread, false) => say::decreases_spread(smooth(job)),
        });
    }
    if part.lines.len() > 1 {
        list.push(say::count_each().into());
    }
    list
}

/// The one round that makes the count fit what follows.
fn adjustment(round: &Round, job: &Job<'_>) -> String {
    let (number, before, after) = (round.number, round.before, round.after.get());
    let down = job.begun_at_crown();
    let Layout::Wedges(wedges) = job.hat.lays(job.spec) else {
        return if down { say::adjust(number, before, after) } else { say::adjust_first(number, before, after) };
    };
    let told = match (down, round.increases.get() > 0) {
        (true, true) => say::adjust_wedges_more,
        (true, false) => say::adjust_wedges_even,
        (false, true) => say::adjust_first_wedges_more,
        (false, false) => say::adjust_first_wedges_even,
    };
    told(number, before, after, wedges)
}

fn smooth(job: &Job<'_>) -> &'static str {
    match job.hat.style {
        Style::Tam => say::smooth_disc(),
        Style::Stocking => say::smooth_cone(),
        _ => say::smooth_crown(),
    }
}

/// A beginning in an adjustable ring, with the hook where it is known.
pub(super) fn ring(job: &Job<'_>) -> String {
    let text = match (job.hat.style, job.body_hook()) {
        (Style::Stocking, None) => say::ring_tip().into(),
        (Style::Stocking, Some(with)) => say::ring_tip_with(&with),
        (_, None) => say::ring_middle().into(),
        (_, Some(with)) => say::ring_middle_with(&with),
    };
    [&*text, " ", say::ring_close()].concat()
}

/// A stocking cap's straight tail.
pub(super) fn tail(part: &Part, job: &Job<'_>) -> Option<String> {
    let (from, to) = rounds_of(part)?;
    let stitches = part.lines.iter().map(|line| line.total).max().unwrap_or(0);
    Some(say::tail(stitches, &job.length(times(job.hat.gauge.round, to - from + 1))))
}
