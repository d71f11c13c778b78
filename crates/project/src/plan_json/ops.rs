//! The operations of a line, as they stand in a file.

use hatwright_pattern::written::{Op, Place};
use hatwright_sizing::{Loops, Stitch};
use serde::{Deserialize, Serialize};

/// A step of a line: `{"op": "Work", "stitch": "Single", "count": 5, "at": "Stitch"}`.
///
/// Stitches are `Slip`, `Single`, `HalfDouble` and `Double` (US terms; UK: slip stitch, double, half treble, treble).
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "op")]
pub enum PlanOp {
    /// Chains to start rows from, a turning chain included.
    FoundationChain {
        /// How many.
        count: u32,
    },
    /// Chains of a ring, made with a larger hook.
    LooseChain {
        /// How many.
        count: u32,
    },
    /// Foundation stitches, each with the chain at its foot.
    FoundationStitches {
        /// The stitch.
        stitch: String,
        /// How many.
        count: u32,
    },
    /// Join the ends of a foundation.
    JoinIntoRing,
    /// Stitches in an adjustable ring.
    Ring {
        /// The stitch.
        stitch: String,
        /// How many.
        count: u32,
    },
    /// Chains that are not counted as stitches.
    Chain {
        /// How many.
        count: u32,
    },
    /// Turn the work.
    Turn,
    /// Close a joined round with a slip stitch that is not counted.
    Join,
    /// One stitch in each of the next places.
    Work {
        /// The stitch.
        stitch: String,
        /// How many.
        count: u32,
        /// Where.
        at: PlanAt,
    },
    /// Several stitches in each of the next places.
    Several {
        /// The stitch.
        stitch: String,
        /// Stitches in one place.
        each: u32,
        /// Places.
        count: u32,
        /// Where.
        at: PlanAt,
    },
    /// Stitches of the round below worked together into one.
    Together {
        /// The stitch.
        stitch: String,
        /// How many become one.
        of: u32,
    },
    /// The next places are left alone.
    Skip {
        /// How many.
        count: u32,
        /// What.
        at: PlanAt,
    },
    /// The stitches that a short row does not reach.
    LeaveRest {
        /// How many.
        count: u32,
    },
    /// Rows that were told before, over and over.
    AsRows {
        /// The first of them.
        from: u32,
        /// The last of them.
        to: u32,
    },
    /// The same in every place of the row or round.
    Every {
        /// The stitch.
        stitch: String,
        /// Stitches in one place.
        each: u32,
        /// How many places there are.
        count: u32,
        /// Where.
        at: PlanAt,
    },
    /// Steps, so many times in all.
    Repeat {
        /// The steps; no repeat among them.
        ops: Vec<PlanOp>,
        /// How many times.
        times: u32,
    },
    /// Cut the yarn and draw it through.
    FastenOff,
    /// Draw stitches together on the tail.
    Gather {
        /// How many.
        count: u32,
    },
    /// Draw row ends together on the tail.
    GatherRowEnds {
        /// How many.
        count: u32,
    },
}

/// Where the hook goes: `"Stitch"`, `{"Row": "Back"}`, `{"ChainFrom": 2}`. Loops are `Both`, `Back`, `Front` and `Posts`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum PlanAt {
    /// A stitch of the round below, in the loops that the part's fabric takes.
    Stitch,
    /// A stitch of the row below, in these loops.
    Row(String),
    /// These loops of the row below and the foundation edge, both at once.
    RowAndFoundation(String),
    /// The end of a row.
    RowEnd,
    /// A foundation chain, from this chain from the hook on.
    ChainFrom(u32),
    /// A foundation chain that is joined into a ring.
    RingChain,
    /// The edge at which a hat was begun.
    FoundationEdge,
    /// A stitch of a hat's edge, from which a flap is worked.
    Edge,
    /// A row end at a hat's edge, from which a flap is worked.
    EdgeRowEnd,
    /// Around the post of the stitch below, from the front.
    FrontPost,
    /// Around the post of the stitch below, from the back.
    BackPost,
}

/// A line's steps.
pub(super) fn told(ops: &[Op]) -> Vec<PlanOp> {
    ops.iter().map(op).collect()
}

fn op(op: &Op) -> PlanOp {
    match *op {
        Op::FoundationChain(count) => PlanOp::FoundationChain { count },
        Op::LooseChain(count) => PlanOp::LooseChain { count },
        Op::FoundationStitches { stitch, count } => PlanOp::FoundationStitches { stitch: word(stitch), count },
        Op::JoinIntoRing => PlanOp::JoinIntoRing,
        Op::Ring { stitch, count } => PlanOp::Ring { stitch: word(stitch), count },
        Op::Chain(count) => PlanOp::Chain { count },
        Op::Turn => PlanOp::Turn,
        Op::Join => PlanOp::Join,
        Op::Work { stitch, count, place } => PlanOp::Work { stitch: word(stitch), count, at: at(place) },
        Op::Several { stitch, each, count, place } => PlanOp::Several { stitch: word(stitch), each, count, at: at(place) },
        Op::Together { stitch, of } => PlanOp::Together { stitch: word(stitch), of },
        Op::Skip { count, place } => PlanOp::Skip { count, at: at(place) },
        Op::LeaveRest(count) => PlanOp::LeaveRest { count },
        Op::AsRows { from, to } => PlanOp::AsRows { from, to },
        Op::Every { stitch, each, count, place } => PlanOp::Every { stitch: word(stitch), each, count, at: at(place) },
        Op::Repeat { ref ops, times } => PlanOp::Repeat { ops: told(ops), times },
        Op::FastenOff => PlanOp::FastenOff,
        Op::Gather(count) => PlanOp::Gather { count },
        Op::GatherRowEnds(count) => PlanOp::GatherRowEnds { count },
    }
}

fn at(place: Place) -> PlanAt {
    match place {
        Place::Stitch => PlanAt::Stitch,
        Place::Row(loops) => PlanAt::Row(side(loops)),
        Place::RowAndFoundation(loops) => PlanAt::RowAndFoundation(side(loops)),
        Place::RowEnd => PlanAt::RowEnd,
        Place::ChainFrom(chain) => PlanAt::ChainFrom(chain),
        Place::RingChain => PlanAt::RingChain,
        Place::FoundationEdge => PlanAt::FoundationEdge,
        Place::Edge => PlanAt::Edge,
        Place::EdgeRowEnd => PlanAt::EdgeRowEnd,
        Place::FrontPost => PlanAt::FrontPost,
        Place::BackPost => PlanAt::BackPost,
    }
}

fn word(stitch: Stitch) -> String {
    format!("{stitch:?}")
}

fn side(loops: Loops) -> String {
    format!("{loops:?}")
}
