//! The kinds of hat, and the measures that each asks for.

use crate::{Breach, Length, Quantity, Ratio, Rows, Stitches};
use serde::{Deserialize, Serialize};

/// A kind of hat.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Style {
    /// Follows the head.
    #[default]
    Fitted,
    /// Wider above the band, longer, closed flat.
    Slouch,
    /// Narrows slowly into a tip, or into a straight tail of any length.
    Stocking,
    /// The band alone.
    EarWarmer,
    /// A disc and its underside.
    Tam,
    /// A fitted hat to the tops of the ears, and two flaps.
    EarFlap,
    /// Crown, side and brim.
    Brimmed,
    /// Rib worked sideways from edge to crown, and seamed.
    Sideways,
}

impl Style {
    /// Every style.
    pub const ALL: [Self; 8] =
        [Self::Fitted, Self::Slouch, Self::Stocking, Self::EarWarmer, Self::Tam, Self::EarFlap, Self::Brimmed, Self::Sideways];

    /// Whether it has a crown worked in rounds, which may be begun at either end.
    pub const fn is_round(self) -> bool {
        !matches!(self, Self::EarWarmer | Self::Sideways)
    }
}

/// Where the work begins.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Begun {
    /// At the band, or the edge: bottom-up, with decreases.
    #[default]
    Band,
    /// At the crown, in an adjustable ring: top-down, with increases; the band comes last.
    Crown,
}

/// How rounds follow one another.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Way {
    /// In a spiral, without a join: stripes show a jog.
    #[default]
    Spiral,
    /// Each round closed with a slip stitch and begun with a turning chain: the seam drifts.
    Joined,
}

/// How a band is worked.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum BandKind {
    /// Short rows, back and forth, joined into a ring; the body is worked along their ends.
    #[default]
    Sideways,
    /// In rounds, like the body.
    Around,
    /// No band: the body begins or ends at the edge.
    None,
}

/// How an edge begins that is worked around and has to stretch.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Edge {
    /// Foundation and first round in one, without a chain.
    #[default]
    Chainless,
    /// A chain, made with a hook one or two sizes larger.
    LooseChain,
}

/// How a sideways hat's crown is closed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum SideTop {
    /// Every row runs to the crown; the row ends are gathered.
    #[default]
    Gathered,
    /// Short rows leave wedges out, so that little is left to gather.
    ShortRows,
}

/// What the planner gives more weight to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Taste {
    /// The table's own prices.
    #[default]
    Balanced,
    /// The crown nearest its curve, however the rounds read.
    Smooth,
    /// Rounds that are easy to remember.
    Simple,
    /// The girth nearest to what was asked for.
    Nearest,
}

/// Measures of all styles: each has its row of the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Shape {
    /// [`Quantity::SlouchWider`].
    pub slouch_wider: Ratio,
    /// [`Quantity::SlouchLonger`].
    pub slouch_longer: Length,
    /// [`Quantity::Tail`].
    pub tail: Length,
    /// [`Quantity::Taper`].
    pub taper: Length,
    /// [`Quantity::TailStitches`].
    pub tail_stitches: Stitches,
    /// [`Quantity::TamAcross`].
    pub tam_across: Length,
    /// [`Quantity::FlapLength`].
    pub flap_length: Length,
    /// [`Quantity::FlapTie`].
    pub flap_tie: Length,
    /// [`Quantity::Brim`].
    pub brim: Length,
    /// [`Quantity::Flare`].
    pub flare: Ratio,
    /// [`Quantity::SideWedges`].
    pub side_wedges: u32,
    /// How a sideways hat closes.
    pub side_top: SideTop,
}

impl Default for Shape {
    fn default() -> Self {
        let usual = |q: Quantity| q.row().usual;
        Self {
            slouch_wider: Ratio::from_ticks(usual(Quantity::SlouchWider)),
            slouch_longer: Length::from_ticks(usual(Quantity::SlouchLonger)),
            tail: Length::from_ticks(usual(Quantity::Tail)),
            taper: Length::from_ticks(usual(Quantity::Taper)),
            tail_stitches: Stitches::new(usual(Quantity::TailStitches) as u32),
            tam_across: Length::from_ticks(usual(Quantity::TamAcross)),
            flap_length: Length::from_ticks(usual(Quantity::FlapLength)),
            flap_tie: Length::from_ticks(usual(Quantity::FlapTie)),
            brim: Length::from_ticks(usual(Quantity::Brim)),
            flare: Ratio::from_ticks(usual(Quantity::Flare)),
            side_wedges: usual(Quantity::SideWedges) as u32,
            side_top: SideTop::Gathered,
        }
    }
}

impl Shape {
    /// Every number with its row of the table.
    pub(crate) fn numbers(&self) -> [(Quantity, i32); 11] {
        use Quantity as Q;
        [
            (Q::SlouchWider, self.slouch_wider.ticks()),
            (Q::SlouchLonger, self.slouch_longer.ticks()),
            (Q::Tail, self.tail.ticks()),
            (Q::Taper, self.taper.ticks()),
            (Q::TailStitches, self.tail_stitches.get() as i32),
            (Q::TamAcross, self.tam_across.ticks()),
            (Q::FlapLength, self.flap_length.ticks()),
            (Q::FlapTie, self.flap_tie.ticks()),
            (Q::Brim, self.brim.ticks()),
            (Q::Flare, self.flare.ticks()),
            (Q::SideWedges, self.side_wedges as i32),
        ]
    }

    /// Puts a number in its place; whether there is one.
    pub(crate) fn set_number(&mut self, q: Quantity, ticks: i32) -> bool {
        use Quantity as Q;
        let (length, ratio, whole) = (Length::from_ticks(ticks), Ratio::from_ticks(ticks), ticks.unsigned_abs());
        match q {
            Q::SlouchWider => self.slouch_wider = ratio,
            Q::SlouchLonger => self.slouch_longer = length,
            Q::Tail => self.tail = length,
            Q::Taper => self.taper = length,
            Q::TailStitches => self.tail_stitches = Stitches::new(whole),
            Q::TamAcross => self.tam_across = length,
            Q::FlapLength => self.flap_length = length,
            Q::FlapTie => self.flap_tie = length,
            Q::Brim => self.brim = length,
            Q::Flare => self.flare = ratio,
            Q::SideWedges => self.side_wedges = whole,
            _ => return false,
        }
        true
    }
}

/// A day, counted from 1 January 1970.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Day(pub i32);

impl Day {
    /// Years of 365.25 days to a later day; `None` where that is earlier, or more than 110 years later.
    ///
    /// ```
    /// use hatwright_sizing::Day;
    /// assert_eq!(Day(0).years_to(Day(1461)), Some(4.0));
    /// assert_eq!(Day(1).years_to(Day(0)), None);
    /// ```
    pub fn years_to(self, later: Self) -> Option<f64> {
        let years = (f64::from(later.0) - f64::from(self.0)) / 365.25;
        (0.0..=110.0).contains(&years).then_some(years)
    }
}

/// The rounds of a hat that is begun, as they were planned.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Kept {
    /// The planner that planned them.
    pub planner: u32,
    /// Rows of the band.
    pub rows: Rows,
    /// Stitches of the body.
    pub stitches: Stitches,
    /// Every round of the hat in working order, alike ones together.
    pub rounds: Vec<KeptRounds>,
}

/// Rounds that are alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct KeptRounds {
    /// Stitches that each leaves.
    pub after: u32,
    /// Plain stitches before its first decrease or increase.
    pub lead: u32,
    /// How many, 1 or more.
    pub times: u32,
}

impl Kept {
    /// The most rounds that a hat may have: a tail of 20 m in rounds of 1 mm, and its hat.
    pub const MOST_ROUNDS: u32 = 25_000;

    /// Whether a hook can make these rounds of one another: each has at most twice, and at least half, the stitches of the one before;
    /// or as many as the hat's edge, into which a brim is begun.
    ///
    /// # Errors
    /// [`Breach::KeptRounds`].
    pub(crate) fn check(&self) -> Result<(), Breach> {
        let made = |pair: &[KeptRounds]| {
            let (a, b) = (pair[0].after, pair[1].after);
            (b <= 2 * a && a <= 2 * b) || b == self.stitches.get()
        };
        let rounds = self.rounds.iter().try_fold(0_u32, |sum, r| sum.checked_add(r.times));
        let whole = self.rounds.iter().all(|r| (1..=4_000).contains(&r.after) && r.times > 0 && r.lead <= r.after)
            && rounds.is_some_and(|n| n <= Self::MOST_ROUNDS)
            && self.rounds.windows(2).all(made);
        if whole { Ok(()) } else { Err(Breach::KeptRounds) }
    }
}
