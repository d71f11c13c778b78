//! The operations of a pattern: small trees that know how many stitches they use up and how many they make.

/// A stitch. Its names in US and UK terms are in [`super::Words`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stitch {
    /// A US single crochet, a UK double crochet.
    Single,
}

/// Where the hook goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Under both loops of a stitch of the round below.
    BothLoops,
    /// Under the loop of the row below that is farther from the maker.
    BackLoop,
    /// Under the back loop of the row below and through the foundation edge, both at once: this closes a band into a ring.
    BackLoopAndFoundation,
    /// Into the end of a row.
    RowEnd,
    /// Into the foundation chain, from the second chain on.
    FoundationChain,
}

/// A step of a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Op {
    /// So many chains to start from, a turning chain included.
    FoundationChain(u32),
    /// So many chains, which are not counted as stitches.
    Chain(u32),
    /// Turn the work.
    Turn,
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
    /// The same stitch in every place of the row or round, of which there are `count`.
    Every {
        /// The stitch.
        stitch: Stitch,
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
    /// Draw the last `0` stitches together on the tail.
    Gather(u32),
}

impl Op {
    /// Places of the row or round below that this step uses up.
    pub fn uses(&self) -> u32 {
        match self {
            Self::Work { count, .. } | Self::Several { count, .. } | Self::Skip { count, .. } | Self::Every { count, .. } => {
                *count
            }
            Self::Together { of, .. } => *of,
            Self::Repeat { ops, times } => uses(ops) * times,
            Self::Gather(count) => *count,
            Self::FoundationChain(_) | Self::Chain(_) | Self::Turn | Self::FastenOff => 0,
        }
    }

    /// Stitches that this step makes. Chains are not counted.
    pub fn makes(&self) -> u32 {
        match self {
            Self::Work { count, .. } | Self::Every { count, .. } => *count,
            Self::Several { each, count, .. } => each * count,
            Self::Together { .. } => 1,
            Self::Repeat { ops, times } => makes(ops) * times,
            Self::FoundationChain(_) | Self::Chain(_) | Self::Turn | Self::Skip { .. } | Self::FastenOff | Self::Gather(_) => 0,
        }
    }
}

/// Places that a line uses up.
///
/// ```
/// use hatwright_pattern::written::{decrease_line, makes, uses};
/// let line = decrease_line(56, 11, 0);
/// assert_eq!((uses(&line), makes(&line)), (56, 45));
/// ```
pub fn uses(ops: &[Op]) -> u32 {
    ops.iter().map(Op::uses).sum()
}

/// Stitches that a line makes.
pub fn makes(ops: &[Op]) -> u32 {
    ops.iter().map(Op::makes).sum()
}
