//! The rounds of a part, stitch by stitch, from the written lines.

use super::symbol::{Form, Hold, Symbol};
use crate::written::{Label, Line, Op, Part, PartKind, Pattern, Place};
use hatwright_sizing::{Colour, Fabric, Loops, RoundKind, Stitch};

/// A round as it is drawn, or several that are worked alike.
#[derive(Clone, Debug)]
pub(super) struct Ring {
    /// The first round.
    pub from: u32,
    /// The last.
    pub to: u32,
    /// Its stitches, in order.
    pub steps: Vec<Step>,
    /// Chains at its beginning, which are not counted.
    pub chains: u32,
    /// Whether a slip stitch closes it.
    pub joined: bool,
    /// Its total.
    pub total: u32,
    /// What the round does.
    pub kind: Option<RoundKind>,
    /// Its work, as it is written.
    pub ops: Vec<Op>,
    /// Its colours in order; nothing for stripes that go on.
    pub colours: Vec<Option<Colour>>,
}

/// What the hook does at one place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Step {
    /// What is drawn; nothing where a place is left alone.
    pub symbol: Option<Symbol>,
    /// Places of the round below.
    pub uses: u32,
    /// Stitches made.
    pub makes: u32,
}

impl Ring {
    /// Places of the round below.
    pub fn uses(&self) -> u32 {
        self.steps.iter().map(|s| s.uses).sum()
    }

    /// Whether it narrows or widens.
    pub fn shaped(&self) -> bool {
        self.steps.iter().any(|s| s.symbol.is_some_and(|symbol| symbol.form != Form::One))
    }

    /// How often the round is one and the same piece over and over: 7 in `[sc2tog, 6 sc] × 7`, its stitches in a plain round.
    pub fn pieces(&self) -> u32 {
        let all = self.steps.len();
        let repeats = |len: usize| all.is_multiple_of(len) && self.steps.iter().zip(&self.steps[len..]).all(|(a, b)| a == b);
        (1..=all).find(|len| repeats(*len)).map_or(1, |len| (all / len) as u32)
    }

    /// The first of so many equal pieces.
    pub fn piece(&self, of: u32) -> Self {
        let mut piece = self.clone();
        piece.steps.truncate(self.steps.len() / of.max(1) as usize);
        piece.total = piece.steps.iter().map(|s| s.makes).sum();
        (piece.chains, piece.joined) = (0, false);
        piece
    }
}

/// The rounds of all parts of some kinds, and the round before the first of them, if it is plain and they are worked into it. Rounds worked alike are one ring,
/// whatever their colours.
pub(super) fn rings(pattern: &Pattern, kinds: &[PartKind]) -> Vec<Ring> {
    let mut rings: Vec<Ring> = Vec::new();
    let mut last: Option<Ring> = None;
    for part in &pattern.parts {
        let wanted = kinds.contains(&part.kind);
        for ring in part.lines.iter().filter_map(|line| ring(part, line)) {
            if !wanted {
                last = Some(ring);
                continue;
            }
            if let Some(plain) = last.take().filter(|plain| rings.is_empty() && leads(plain, &ring)) {
                rings.push(only_last(plain));
            }
            match rings.last_mut() {
                Some(same) if same.steps == ring.steps && !ring.shaped() && same.kind == ring.kind => {
                    same.to = ring.to;
                    same.colours.extend(ring.colours);
                }
                _ => rings.push(ring),
            }
        }
    }
    rings
}

/// Whether a plain round is what another is worked into. A round of a new yarn along an edge is not.
fn leads(plain: &Ring, ring: &Ring) -> bool {
    plain.to + 1 == ring.from
        && !plain.shaped()
        && !matches!(ring.kind, Some(RoundKind::Edge | RoundKind::Ring | RoundKind::Foundation))
}

/// Of rounds before the first that is wanted, the last.
fn only_last(mut plain: Ring) -> Ring {
    plain.from = plain.to;
    plain
}

fn ring(part: &Part, line: &Line) -> Option<Ring> {
    let Label::Round(from, to) = line.label else { return None };
    let mut ring = Ring {
        from,
        to,
        steps: Vec::new(),
        chains: 0,
        joined: false,
        total: line.total,
        kind: line.kind,
        ops: line.ops.clone(),
        colours: vec![line.colour],
    };
    expand(&line.ops, part.fabric, &mut ring);
    Some(ring)
}

fn expand(ops: &[Op], fabric: Fabric, ring: &mut Ring) {
    for op in ops {
        match op {
            Op::Chain(count) => ring.chains += count,
            Op::Join => ring.joined = true,
            Op::Work { stitch, count, place } => several(ring, fabric, (*stitch, 1), *count, *place),
            Op::Several { stitch, each, count, place } | Op::Every { stitch, each, count, place } => {
                several(ring, fabric, (*stitch, *each), *count, *place);
            }
            Op::Together { stitch, of } => {
                let symbol = Symbol { stitch: *stitch, form: Form::Together, hold: hold(fabric, Place::Stitch) };
                ring.steps.push(Step { symbol: Some(symbol), uses: *of, makes: 1 });
            }
            Op::Skip { count, .. } | Op::LeaveRest(count) => {
                ring.steps.extend((0..*count).map(|_| Step { symbol: None, uses: 1, makes: 0 }));
            }
            Op::Ring { stitch, count } | Op::FoundationStitches { stitch, count } => {
                let symbol = Symbol { stitch: *stitch, form: Form::One, hold: Hold::Both };
                ring.steps.extend((0..*count).map(|_| Step { symbol: Some(symbol), uses: 0, makes: 1 }));
            }
            Op::Repeat { ops, times } => (0..*times).for_each(|_| expand(ops, fabric, ring)),
            Op::FoundationChain(_)
            | Op::LooseChain(_)
            | Op::JoinIntoRing
            | Op::Turn
            | Op::AsRows { .. }
            | Op::FastenOff
            | Op::Gather(_)
            | Op::GatherRowEnds(_) => {}
        }
    }
}

/// `each` stitches in each of so many places: two share a foot; more are drawn one by one.
fn several(ring: &mut Ring, fabric: Fabric, (stitch, each): (Stitch, u32), count: u32, place: Place) {
    let form = if each == 2 { Form::Two } else { Form::One };
    let symbol = Symbol { stitch, form, hold: hold(fabric, place) };
    for _ in 0..count {
        match each {
            0 => ring.steps.push(Step { symbol: None, uses: 1, makes: 0 }),
            1 | 2 => ring.steps.push(Step { symbol: Some(symbol), uses: 1, makes: each }),
            _ => ring.steps.extend((0..each).map(|k| Step { symbol: Some(symbol), uses: u32::from(k == 0), makes: 1 })),
        }
    }
}

/// What the hook takes at a place.
pub(super) fn hold(fabric: Fabric, place: Place) -> Hold {
    match place {
        Place::FrontPost => Hold::FrontPost,
        Place::BackPost => Hold::BackPost,
        Place::Stitch => loops(fabric.row().loops),
        Place::Row(of) | Place::RowAndFoundation(of) => loops(of),
        Place::RowEnd | Place::ChainFrom(_) | Place::RingChain | Place::FoundationEdge | Place::Edge | Place::EdgeRowEnd => {
            Hold::Both
        }
    }
}

const fn loops(loops: Loops) -> Hold {
    match loops {
        Loops::Back => Hold::Back,
        Loops::Front => Hold::Front,
        Loops::Both | Loops::Posts => Hold::Both,
    }
}
