//! Rounds, told in the fewest lines.

use super::lines::{decrease_line, increase_line, pick_up_line, plain_line};
use super::ops::{Op, Place};
use super::pattern::{Label, Line};
use hatwright_sizing::{Colour, Edge, Fabric, HatSpec, Loops, Round, RoundKind, Way, Zone};

/// Plain rounds of more stripes than this, in a repeat, are not all written out: nothing but a long tail has so many.
const MOST_STRIPES_WRITTEN: usize = 24;

/// The lines of a part's rounds.
pub(super) fn round_lines(rounds: &[Round], fabric: Fabric, spec: &HatSpec) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    // Rounds up to this one, counted in the part, go on in the stripes of a line that is told.
    let mut told = 0;
    for (i, round) in rounds.iter().enumerate() {
        if i < told {
            continue;
        }
        let line = line_of(round, fabric, spec, &mut lines);
        let plain = round.kind == RoundKind::Plain;
        if plain && rounds.get(i.wrapping_sub(1)).is_none_or(|before| !alike(before, round)) {
            let run = rounds[i..].iter().take_while(|r| alike(r, round)).count();
            if let Some(repeat) = long_repeat(&rounds[i..i + run]) {
                for round in &rounds[i..i + repeat] {
                    push(&mut lines, line_of(round, fabric, spec, &mut Vec::new()));
                }
                let (first, last) = (rounds[i + repeat].number, rounds[i + run - 1].number);
                lines.push(Line { label: Label::Round(first, last), colour: None, ..line });
                told = i + run;
                continue;
            }
        }
        push(&mut lines, line);
    }
    lines
}

fn alike(a: &Round, b: &Round) -> bool {
    a.kind == RoundKind::Plain && b.kind == RoundKind::Plain && a.after == b.after
}

/// Adds a line, or widens the last where it says the same.
fn push(lines: &mut Vec<Line>, line: Line) {
    if let (Some(last), Label::Round(_, to)) = (lines.last_mut(), line.label)
        && let Label::Round(from, _) = last.label
        && line.kind == Some(RoundKind::Plain)
        && last.kind == line.kind
        && last.colour == line.colour
        && last.ops == line.ops
    {
        last.label = Label::Round(from, to);
        return;
    }
    lines.push(line);
}

/// Rounds after which the colours of a long run of stripes come again, at least once more in it.
fn long_repeat(run: &[Round]) -> Option<usize> {
    let colours: Vec<Colour> = run.iter().map(|r| r.colour).collect();
    if colours.chunk_by(|a, b| a == b).count() <= MOST_STRIPES_WRITTEN {
        return None;
    }
    (1..=colours.len() / 2).find(|len| colours.iter().zip(&colours[*len..]).all(|(a, b)| a == b))
}

/// A round's line. A foundation chain that comes before it is pushed at once.
fn line_of(round: &Round, fabric: Fabric, spec: &HatSpec, lines: &mut Vec<Line>) -> Line {
    let row = fabric.row();
    let stitch = row.stitch;
    let (before, total, lead) = (round.before, round.after.get(), round.lead.get());
    let every = |place| vec![Op::Every { stitch, each: 1, count: total, place }];
    let shaped = || match (round.decreases.get(), round.increases.get()) {
        (0, 0) => plain_line(stitch, total),
        (0, increases) => increase_line(stitch, before, increases, lead),
        (decreases, _) => decrease_line(stitch, before, decreases, lead),
    };
    // A foundation that is made in one, and a ring, begin with no chain of their own in front.
    let mut begins = false;
    let work = match round.kind {
        RoundKind::PickUp => pick_up_line(stitch, total, before),
        RoundKind::Ring => {
            begins = true;
            vec![Op::Ring { stitch, count: total }]
        }
        RoundKind::Foundation if spec.band.edge == Edge::LooseChain => {
            let ops = vec![Op::LooseChain(total), Op::JoinIntoRing];
            lines.push(Line::of(Label::Foundation, ops, total, Some(round.colour)));
            every(Place::RingChain)
        }
        RoundKind::Foundation => {
            let ops = vec![Op::FoundationStitches { stitch, count: total }, Op::JoinIntoRing];
            return of_round(round, ops);
        }
        RoundKind::Edge if total == before => every(Place::FoundationEdge),
        RoundKind::Plain if round.zone == Zone::Band && row.loops == Loops::Posts && total.is_multiple_of(2) => {
            let post = |place| Op::Work { stitch, count: 1, place };
            let pair = vec![post(Place::FrontPost), post(Place::BackPost)];
            if total == 2 { pair } else { vec![Op::Repeat { ops: pair, times: total / 2 }] }
        }
        _ => shaped(),
    };
    let ops = match spec.goes() {
        Way::Spiral => work,
        Way::Joined => {
            let mut ops = if begins { Vec::new() } else { vec![Op::Chain(row.chain)] };
            ops.extend(work);
            ops.push(Op::Join);
            ops
        }
    };
    of_round(round, ops)
}

fn of_round(round: &Round, ops: Vec<Op>) -> Line {
    Line {
        label: Label::Round(round.number, round.number),
        ops,
        total: round.after.get(),
        colour: Some(round.colour),
        decreases: round.decreases.get(),
        increases: round.increases.get(),
        kind: Some(round.kind),
    }
}
