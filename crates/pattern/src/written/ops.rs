//! The operations of a pattern: small trees that know how many stitches they use up and how many they make.

use hatwright_sizing::{Loops, Stitch};

/// Where the hook goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// A stitch of the round below, in the loops that the part's fabric takes: its introduction names them once.
    Stitch,
    /// A stitch of the row below, in these loops.
    Row(Loops),
    /// These loops of the row below and the foundation edge, both at once: this closes rows into a ring.
    RowAndFoundation(Loops),
    /// The end of a row.
    RowEnd,
    /// A foundation chain worked in rows, from this chain from the hook on.
    ChainFrom(u32),
    /// A foundation chain that is joined into a ring.
    RingChain,
    /// The edge at which a hat was begun, all around.
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

/// A step of a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Op {
    /// So many chains to start rows from, a turning chain included.
    FoundationChain(u32),
    /// So many chains of a ring, made with a larger hook so that the edge stretches.
    LooseChain(u32),
    /// So many foundation stitches, each with the chain at its foot, and no chain below them.
    FoundationStitches {
        /// The stitch.
        stitch: Stitch,
        /// How many.
        count: u32,
    },
    /// Join the ends of a foundation.
    JoinIntoRing,
    /// So many stitches in an adjustable ring.
    Ring {
        /// The stitch.
        stitch: Stitch,
        /// How many.
        count: u32,
    },
    /// So many chains, which are not counted as stitches.
    Chain(u32),
    /// Turn the work.
    Turn,
    /// Close a joined round: a slip stitch in its first stitch, which is not counted.
    Join,
    /// One stitch in each of the next `count` places.
    Work {
        /// The stitch.
        stitch: Stitch,
        /// How many, each in its own place.
        count: u32,
        /// Where.
        place: Place,
    },
    /// `each` stitches in each of the next `count` places.
    Several {
        /// The stitch.
        stitch: Stitch,
        /// Stitches in one place.
        each: u32,
        /// Places.
        count: u32,
        /// Where.
        place: Place,
    },
    /// `of` stitches of the round below worked together into one.
    Together {
        /// The stitch.
        stitch: Stitch,
        /// How many become one.
        of: u32,
    },
    /// The next `count` places are left alone.
    Skip {
        /// How many.
        count: u32,
        /// What.
        place: Place,
    },
    /// The stitches that a short row does not reach: so many.
    LeaveRest(u32),
    /// Rows that were told before, over and over: the row after the last of them is as the first.
    AsRows {
        /// The first of them.
        from: u32,
        /// The last of them.
        to: u32,
    },
    /// The same in every place of the row or round, of which there are `count`.
    Every {
        /// The stitch.
        stitch: Stitch,
        /// Stitches in one place: 1, or 2 where a round doubles.
        each: u32,
        /// How many places there are.
        count: u32,
        /// Where.
        place: Place,
    },
    /// The steps, so many times in all.
    Repeat {
        /// The steps; no repeat among them.
        ops: Vec<Op>,
        /// How many times in all, 2 or more.
        times: u32,
    },
    /// Cut the yarn and draw it through.
    FastenOff,
    /// Draw so many stitches together on the tail.
    Gather(u32),
    /// Draw so many row ends together on the tail.
    GatherRowEnds(u32),
}

impl Op {
    /// Places of the row or round below that this step uses up. Foundations and rings begin, and use up nothing.
    pub fn uses(&self) -> u32 {
        match self {
            Self::Work { count, .. }
            | Self::Several { count, .. }
            | Self::Skip { count, .. }
            | Self::LeaveRest(count)
            | Self::Every { count, .. }
            | Self::Gather(count)
            | Self::GatherRowEnds(count) => *count,
            Self::Together { of, .. } => *of,
            Self::Repeat { ops, times } => uses(ops) * times,
            Self::FoundationChain(_)
            | Self::LooseChain(_)
            | Self::FoundationStitches { .. }
            | Self::Ring { .. }
            | Self::JoinIntoRing
            | Self::Chain(_)
            | Self::Turn
            | Self::Join
            | Self::AsRows { .. }
            | Self::FastenOff => 0,
        }
    }

    /// Stitches that this step makes. Chains, and the slip stitch that closes a round, are not counted.
    pub fn makes(&self) -> u32 {
        match self {
            Self::Work { count, .. } | Self::FoundationStitches { count, .. } | Self::Ring { count, .. } => *count,
            Self::Several { each, count, .. } | Self::Every { each, count, .. } => each * count,
            Self::Together { .. } => 1,
            Self::Repeat { ops, times } => makes(ops) * times,
            Self::FoundationChain(_)
            | Self::LooseChain(_)
            | Self::JoinIntoRing
            | Self::Chain(_)
            | Self::Turn
            | Self::Join
            | Self::Skip { .. }
            | Self::LeaveRest(_)
            | Self::AsRows { .. }
            | Self::FastenOff
            | Self::Gather(_)
            | Self::GatherRowEnds(_) => 0,
        }
    }
}

/// Places that a line uses up.
///
/// ```
/// use hatwright_pattern::written::{decrease_line, makes, uses};
/// use hatwright_sizing::Stitch;
/// let line = decrease_line(Stitch::Single, 56, 11, 0);
/// assert_eq!((uses(&line), makes(&line)), (56, 45));
/// ```
pub fn uses(ops: &[Op]) -> u32 {
    ops.iter().map(Op::uses).sum()
}

/// Stitches that a line makes.
pub fn makes(ops: &[Op]) -> u32 {
    ops.iter().map(Op::makes).sum()
}
