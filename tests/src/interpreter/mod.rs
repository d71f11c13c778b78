//! Executes a printed pattern, stitch by stitch, as a person with a hook would: from the text alone, sharing no code with its writer.
//!
//! [`work`] takes a whole printed pattern in US, UK or Spanish terms and does its lines of work in order, section by section. A line must use up
//! exactly what is there to be worked into, keep to its section's stitch, and leave exactly the total that it states; anything else, a
//! word that the grammar does not have included, is a [`Fault`] that quotes the line. At the end nothing may be left undone: a band
//! that is not joined, a seam or a top that is open.

mod flaps;
mod hands;
mod rounds;
mod rows;
mod steps;
#[cfg(test)]
mod tests;
mod tongue;
mod words;

use std::fmt;
use std::sync::Arc;

pub use steps::{Below, Step, work_round};
pub use words::{Stitch, Vocabulary};

/// What a pattern's work comes to.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Worked {
    /// Rows of the band, or of a hat worked sideways, in order.
    pub rows: Vec<Row>,
    /// Rounds, in order.
    pub rounds: Vec<Round>,
    /// Whether rounds are closed, each with a slip stitch; absent where no line of a round says.
    pub joined: Option<bool>,
    /// A band that was made apart: what was done in each of its row ends, to join it to the last round.
    pub band_join: Option<Vec<Step>>,
    /// A hat worked sideways is seamed.
    pub seamed: bool,
    /// Rows of one flap.
    pub flap: Vec<FlapRow>,
    /// Stitches, or row ends, of the edge between the flaps: at the back, and at the front.
    pub between: Option<(u32, u32)>,
    /// Chains of a tie.
    pub tie: u32,
    /// What is drawn up at the end.
    pub gathered: Option<Gathered>,
    /// The colours of what is neither row of the piece nor round.
    pub colours: Colours,
}

/// Colours by their labels' names; absent in a hat of one colour, or where there is no such line.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Colours {
    /// Of a foundation chain.
    pub foundation: Option<Arc<str>>,
    /// Of the slip stitches that join a band made apart.
    pub join: Option<Arc<str>>,
    /// Of the seam.
    pub seam: Option<Arc<str>>,
    /// Of both flaps.
    pub flaps: Option<Arc<str>>,
    /// Of both ties.
    pub tie: Option<Arc<str>>,
}

/// What is drawn up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gathered {
    /// Stitches of the last round.
    Stitches(u32),
    /// Ends of rows at the crown.
    RowEnds(u32),
}

/// Which part of the stitch below a section's stitches go into.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Loops {
    /// Both loops.
    #[default]
    Both,
    /// The back loop.
    Back,
    /// The front loop.
    Front,
}

/// A row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// Its colour's name; absent in a hat of one colour.
    pub colour: Option<Arc<str>>,
    /// Its stitch.
    pub stitch: Stitch,
    /// Where that goes; both loops in a row that goes into a chain.
    pub loops: Loops,
    /// Chains of its turn; in the first row, the chains that are passed over.
    pub chain: u32,
    /// Its stitches.
    pub stitches: u32,
}

/// A part of a hat that is worked in rounds, by its heading.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Part {
    /// `Band`.
    Band,
    /// `Body`.
    Body,
    /// `Underside`.
    Underside,
    /// `Crown`.
    Crown,
    /// `Tail`.
    Tail,
    /// `Brim`.
    Brim,
}

/// What a round is worked into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Into {
    /// An adjustable ring.
    Ring,
    /// Nothing: foundation and round in one.
    Foundation,
    /// A ring of chain.
    Chain,
    /// The ends of the band's rows.
    RowEnds,
    /// The edge at which the hat was begun.
    Edge,
    /// The round below.
    Round,
}

/// A round.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Round {
    /// The section that it stands in.
    pub part: Part,
    /// Its colour's name; absent in a hat of one colour.
    pub colour: Option<Arc<str>>,
    /// Its stitch.
    pub stitch: Stitch,
    /// Where that goes, by the section's introduction.
    pub loops: Loops,
    /// Chains that it begins with.
    pub chain: u32,
    /// What it is worked into.
    pub into: Into,
    /// What was done, in order.
    pub steps: Arc<[Step]>,
}

impl Round {
    /// Stitches that it leaves.
    pub fn stitches(&self) -> u32 {
        self.steps.iter().map(|step| step.makes()).sum()
    }

    /// Stitches, or row ends or chains, that it is worked into; none for a ring and a foundation.
    pub fn used(&self) -> u32 {
        match self.into {
            Into::Ring | Into::Foundation => 0,
            _ => self.steps.iter().map(|step| step.uses()).sum(),
        }
    }

    /// Decreases in it.
    pub fn decreases(&self) -> u32 {
        self.steps.iter().filter(|step| **step == Step::Decrease).count() as u32
    }

    /// Increases in it.
    pub fn increases(&self) -> u32 {
        self.steps.iter().filter(|step| **step == Step::Increase).count() as u32
    }
}

/// A row of a flap.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FlapRow {
    /// What it is worked into: stitches or row ends of the hat's edge, then the row before.
    pub used: u32,
    /// Stitches that it leaves.
    pub stitches: u32,
    /// Decreases in it.
    pub decreases: u32,
}

/// A line that cannot be worked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The line as it is printed.
    pub line: String,
    /// What is wrong with it.
    pub why: String,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {:?}", self.why, self.line)
    }
}

impl std::error::Error for Fault {}

/// Does all the work of a printed pattern.
///
/// # Errors
/// The first line that cannot be worked as it stands, or the last one where something is left undone.
pub fn work(text: &str) -> Result<Worked, Fault> {
    let mut hands = hands::Hands::new(Vocabulary::of(text)?);
    let mut before = "";
    // A hat may be called whatever its maker likes.
    for line in text.lines().skip(1) {
        hands.line(line, before).map_err(|why| Fault { line: line.into(), why })?;
        before = line;
    }
    hands.finish().map_err(|why| Fault { line: before.into(), why })
}
