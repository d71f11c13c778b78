//! Edges: foundations that stretch, the body that begins or follows there, and the brim.

use super::band::{TURN_FOR_FOLD, hides_its_outside};
use super::{Job, colours, crown, rounds_of};
use crate::figures::{percent, plural};
use crate::written::pattern::{Part, PartKind};
use hatwright_sizing::{BandKind, Edge, Loops, RoundKind, Stitch, Style};

/// How a round is begun that has nothing below it.
pub(super) fn foundation(part: &Part, job: &Job<'_>) -> String {
    match job.spec.band.edge {
        Edge::Chainless => ["Begin with foundation stitches: each makes the chain at its own foot, so that the edge stretches with the hat, \
                            where a plain chain would bind. Lay them flat, without a twist, and slip stitch into the first ", job.words().name(part.fabric.row().stitch),
                            " to make a ring. The gap that is left at its foot is closed with the yarn's end."].concat(),
        Edge::LooseChain => "Make the chain with a hook one or two sizes larger, so that the edge stretches; a chain as tight as the hat would \
                             bind. Lay it flat, without a twist, slip stitch into its first chain to make a ring, and change to the usual hook."
            .into(),
    }
}

/// What comes before the first round of a part of the hat: along a sideways band, on a foundation, or after a band of rounds.
pub(super) fn opening(part: &Part, job: &Job<'_>) -> Vec<String> {
    let mut list = Vec::new();
    let hat = job.hat;
    let first = hat.rounds.iter().find(|r| rounds_of(part).is_some_and(|(from, _)| r.number == from));
    let hook = Job::with_hook(job.spec.hook);
    match first.map(|r| r.kind) {
        Some(RoundKind::PickUp) => pick_up(job, hook.as_deref(), &mut list),
        Some(RoundKind::Foundation) => {
            let mut text = hook.map_or_else(String::new, |hook| ["Work ", &hook, ". "].concat());
            text.push_str(&foundation(part, job));
            list.push(text);
        }
        Some(RoundKind::Ring) => list.push(crown::ring(job)),
        _ if job.part_before(part).is_some_and(|p| p.kind == PartKind::BandAround) => {
            let name = job.words().name(part.fabric.row().stitch);
            let hook = hook.filter(|_| job.spec.band.hook != job.spec.hook).map_or_else(String::new, |h| [" ", &*h].concat());
            list.push(["Go on from the band", &hook, ", in ", name, "."].concat());
            if hides_its_outside(hat) && job.spec.band_fabric().row().loops != Loops::Posts {
                list.push(TURN_FOR_FOLD.into());
            }
        }
        _ => {}
    }
    list
}

/// The body.
pub(super) fn body(part: &Part, job: &Job<'_>) -> Vec<String> {
    widened(part, job).into_iter().collect()
}

fn pick_up(job: &Job<'_>, hook: Option<&str>, list: &mut Vec<String>) {
    let hat = job.hat;
    let flat = matches!(job.spec.band_fabric().row().stitch, Stitch::HalfDouble | Stitch::Double);
    let ridge = if flat { "the side of the join that you like less" } else { "the ridge of the join" };
    if hides_its_outside(hat) {
        let mut text = [
            "Do not fasten off, and leave the ring with ",
            ridge,
            " on the outside, towards you: folding the band up hides it. ",
        ]
        .concat();
        text.push_str("Work along the edge where the yarn is.");
        list.push(text);
    } else {
        let mut text = [
            "Do not fasten off. Turn the ring so that ",
            ridge,
            " is inside, and work along the edge where the yarn is, with the \
                        outside towards you.",
        ]
        .concat();
        if hat.depth.fold.ticks() > 0 {
            text.push_str(" Less than half of the band is folded up: the inside of the join shows only on that part.");
        }
        list.push(text);
    }
    let first = hat.rounds.first().map_or(0, |r| r.after.get());
    let rows = hat.band_rows.len() as u32;
    let common = hatwright_sizing::gcd(first, rows).max(1);
    let differs = job.spec.band.hook != job.spec.hook;
    let mut text = match hook {
        Some(hook) if job.spec.band.hook.is_some() && differs => ["Change to the body's hook, and go on ", hook, ". "].concat(),
        Some(hook) if differs => ["Go on ", hook, ". "].concat(),
        _ => String::new(),
    };
    if first == rows {
        text.push_str("Pick up one stitch in the end of each row.");
    } else {
        text.push_str(
            &[
                "Pick up ",
                &(first / common).to_string(),
                " stitches in every ",
                &plural(rows / common, "row end"),
                ", spread as written.",
            ]
            .concat(),
        );
    }
    list.push(text);
    list.extend(colours::after_band(job));
}

/// A slouch: its one widening round, or narrowing one where it was begun at the crown.
fn widened(part: &Part, job: &Job<'_>) -> Option<String> {
    if job.hat.style != Style::Slouch {
        return None;
    }
    let line = part.lines.iter().find(|line| line.increases + line.decreases > 0)?;
    let round =
        job.hat.rounds.iter().find(|r| matches!(line.label, crate::written::Label::Round(from, _) if from == r.number))?;
    let (before, after) = (round.before.to_string(), round.after.to_string());
    let number = round.number.to_string();
    Some(if line.increases > 0 {
        ["In round ", &number, " the body widens all at once, from ", &before, " to ", &after, " stitches: that is the slouch."]
            .concat()
    } else {
        ["In round ", &number, " the slouch is drawn in, from ", &before, " to ", &after, " stitches, to the width of the band."]
            .concat()
    })
}

/// A brim.
pub(super) fn brim(part: &Part, job: &Job<'_>) -> Vec<String> {
    let mut list = Vec::new();
    let mut text = if job.begun_at_crown() {
        String::from("Go on outward from the body without cutting.")
    } else {
        String::from(
            "With the outside of the hat towards you, join the yarn with a slip stitch to the edge that the hat was begun at, at the middle of the \
             back, and work outward from it. ",
        ) + foot(job)
    };
    let flare = job.spec.shape.flare;
    let per_round: Vec<u32> = part.lines.iter().map(|line| line.increases).filter(|n| *n > 0).collect();
    if let (Some(least), Some(most)) = (per_round.iter().min(), per_round.iter().max()) {
        let many = if least == most { most.to_string() } else { [&least.to_string(), " or ", &most.to_string()].concat() };
        text.push_str(&[" It grows by ", &many, " stitches in a round that widens"].concat());
        text.push_str(&if flare.ticks() >= 10_000 {
            ": that is the rate at which a flat disc grows, so it lies flat.".into()
        } else {
            [", ", &percent(flare), " of the rate at which it would lie flat: so it turns down."].concat()
        });
    }
    list.push(text);
    let small = hat_for_small(job);
    let mut stiff = String::from(
        "To keep it stiff, lay a thin cord along the edge and work the last round over it, or starch the brim when it is done (common practice).",
    );
    if small {
        stiff.push_str(" No wire in a child's hat.");
    }
    list.push(stiff);
    list
}

/// Where the stitches of an edge are that the hat was begun at.
pub(super) const fn foot(job: &Job<'_>) -> &'static str {
    match job.spec.band.edge {
        Edge::Chainless => "Each foundation stitch has a chain at its foot: that is the edge's stitch.",
        Edge::LooseChain => "Each chain of the foundation is one stitch of the edge.",
    }
}

fn hat_for_small(job: &Job<'_>) -> bool {
    job.hat.remarks.iter().any(|r| matches!(r, hatwright_sizing::Remark::SmallParts))
}

/// What the hat's length is measured from.
pub(super) const fn from_where(job: &Job<'_>) -> &'static str {
    match job.hat.band {
        BandKind::None => "the edge",
        BandKind::Sideways | BandKind::Around => "the band",
    }
}
