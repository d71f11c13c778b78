//! Edges: foundations that stretch, the body that begins or follows there, and the brim.

use super::band::hides_its_outside;
use super::{Job, colours, crown, rounds_of};
use crate::figures::percent;
use crate::written::Label;
use crate::written::pattern::{Part, PartKind};
use hatwright_sizing::{BandKind, Edge, Loops, Remark, RoundKind, Stitch, Style, gcd};
use hatwright_words::making as say;

/// How a round is begun that has nothing below it.
pub(super) fn foundation(part: &Part, job: &Job<'_>) -> String {
    match job.spec.band.edge {
        Edge::Chainless => say::foundation_chainless(job.words().name(part.fabric.row().stitch)),
        Edge::LooseChain => say::foundation_loose().into(),
    }
}

/// What comes before the first round of a part of the hat: along a sideways band, on a foundation, or after a band of rounds.
pub(super) fn opening(part: &Part, job: &Job<'_>) -> Vec<String> {
    let mut list = Vec::new();
    let hat = job.hat;
    let first = hat.rounds.iter().find(|r| rounds_of(part).is_some_and(|(from, _)| r.number == from));
    let hook = job.body_hook();
    match first.map(|r| r.kind) {
        Some(RoundKind::PickUp) => pick_up(job, hook.as_deref(), &mut list),
        Some(RoundKind::Foundation) => {
            let work = hook.map(|with| say::work_with(&with));
            list.push(work.into_iter().chain([foundation(part, job)]).collect::<Vec<_>>().join(" "));
        }
        Some(RoundKind::Ring) => list.push(crown::ring(job)),
        _ if job.part_before(part).is_some_and(|p| p.kind == PartKind::BandAround) => {
            let name = job.words().name(part.fabric.row().stitch);
            list.push(match hook.filter(|_| job.band_hook() != job.body_hook()) {
                Some(with) => say::go_on_from_band_with(&with, name),
                None => say::go_on_from_band(name),
            });
            if hides_its_outside(hat) && job.spec.band_fabric().row().loops != Loops::Posts {
                list.push(say::turn_for_fold().into());
            }
        }
        _ => {}
    }
    list
}

fn pick_up(job: &Job<'_>, hook: Option<&str>, list: &mut Vec<String>) {
    let hat = job.hat;
    let flat = matches!(job.spec.band_fabric().row().stitch, Stitch::HalfDouble | Stitch::Double);
    let ridge = if flat { say::the_worse_side() } else { say::the_ridge() };
    list.push(if hides_its_outside(hat) {
        say::pick_up_outside(ridge)
    } else if hat.depth.fold.ticks() > 0 {
        [&*say::pick_up_inside(ridge), " ", say::part_folded()].concat()
    } else {
        say::pick_up_inside(ridge)
    });
    let first = hat.rounds.first().map_or(0, |r| r.after.get());
    let rows = hat.band_rows.len() as u32;
    let common = gcd(first, rows).max(1);
    let change = hook.filter(|_| job.band_hook() != job.body_hook()).map(say::change_hook);
    let picked = if first == rows { say::pick_up_each().into() } else { say::pick_up_every(first / common, rows / common) };
    list.push(change.into_iter().chain([picked]).collect::<Vec<_>>().join(" "));
    list.extend(colours::after_band(job));
}

/// A slouch: its one widening round, or narrowing one where it was begun at the crown.
pub(super) fn widened(part: &Part, job: &Job<'_>) -> Option<String> {
    if job.hat.style != Style::Slouch {
        return None;
    }
    let line = part.lines.iter().find(|line| line.increases + line.decreases > 0)?;
    let round = job.hat.rounds.iter().find(|r| matches!(line.label, Label::Round(from, _) if from == r.number))?;
    let told = if line.increases > 0 { say::slouch_widens } else { say::slouch_drawn_in };
    Some(told(round.number, round.before, round.after.get()))
}

/// A brim.
pub(super) fn brim(part: &Part, job: &Job<'_>) -> Vec<String> {
    let mut text: Vec<String> =
        if job.begun_at_crown() { vec![say::brim_go_on().into()] } else { vec![say::brim_join().into(), foot(job).into()] };
    let flare = job.spec.shape.flare;
    let per_round = || part.lines.iter().map(|line| line.increases).filter(|n| *n > 0);
    if let (Some(least), Some(most)) = (per_round().min(), per_round().max()) {
        let many = if least == most { most.to_string() } else { say::one_or_other(least, most) };
        text.push(if flare.ticks() >= 10_000 { say::brim_flat(&many) } else { say::brim_flared(&many, &percent(flare)) });
    }
    let stiff = say::brim_stiff();
    let stiff = if hat_for_small(job) { [stiff, " ", say::no_wire()].concat() } else { stiff.into() };
    vec![text.join(" "), stiff]
}

/// Where the stitches of an edge are that the hat was begun at.
pub(super) fn foot(job: &Job<'_>) -> &'static str {
    match job.spec.band.edge {
        Edge::Chainless => say::foot_chainless(),
        Edge::LooseChain => say::foot_loose(),
    }
}

fn hat_for_small(job: &Job<'_>) -> bool {
    job.hat.remarks.iter().any(|r| matches!(r, Remark::SmallParts))
}

/// What the hat's length is measured from.
pub(super) fn from_where(job: &Job<'_>) -> &'static str {
    match job.hat.band {
        BandKind::None => say::the_edge(),
        BandKind::Sideways | BandKind::Around => say::the_band(),
    }
}
