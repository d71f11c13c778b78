//! A hat as it is kept.

mod designer;
pub(crate) mod sizes;

pub use designer::Designer;
pub use sizes::SizeOf;

use crate::text::{COLOUR, LOT, NAME, NOTES, YARN};
use crate::{ProjectId, Rgb};
use hatwright_sizing::{Breach, HatSpec};
use serde::{Deserialize, Serialize};

/// A saved hat: everything that a person decided, named or noted. Plans are never saved, they are worked out again.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Project {
    /// Which hat of this device.
    pub id: ProjectId,
    /// How often it was saved: 0 for a hat that never was.
    pub revision: u64,
    /// Its name, by the rule [`NAME`].
    pub name: String,
    /// The units that its lengths are shown and typed in.
    pub units: Units,
    /// The words of its pattern.
    pub terms: Terms,
    /// Which hand holds its hook.
    pub hand: Hand,
    /// Its colours, one for each of the spec's balls.
    pub colours: Vec<ColourName>,
    /// Notes, by the rule [`NOTES`].
    pub notes: String,
    /// What its designer says to those who read the pattern.
    pub designer: Designer,
    /// The other sizes that its pattern is written in, at most [`Project::MOST_SIZES`]; none where it is written for the hat alone.
    pub sizes: Vec<SizeOf>,
    /// The hat itself.
    pub spec: HatSpec,
    /// When it was last changed, in milliseconds since 1970 by the device's clock. For people, and to find the hat
    /// to open where the settings do not tell; which of two changes is the later one goes by the revision.
    pub changed_ms: u64,
}

/// Units of length on screen. Documents hold hundredths of a millimetre either way.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Units {
    /// Centimetres, and metres of yarn.
    #[default]
    Centimetres,
    /// Inches, and yards of yarn.
    Inches,
    /// Both, in a pattern: 46.7 cm (18.4 in). Fields are in centimetres.
    Both,
}

/// Which hand holds the hook.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Hand {
    /// The right one.
    #[default]
    Right,
    /// The left one: its rounds run the other way, and so do their charts.
    Left,
}

/// The trade's two sets of words: single crochet in US terms is double crochet in UK terms.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Terms {
    /// US terms.
    #[default]
    Us,
    /// UK terms.
    Uk,
}

/// A colour of a hat.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ColourName {
    /// What the colour is called, by the rule [`COLOUR`].
    pub name: String,
    /// How the screen shows it.
    pub hex: Rgb,
    /// What its yarn is called, by the rule [`YARN`]; empty where nobody named it.
    pub yarn: String,
    /// The dye lot, by the rule [`LOT`]; empty where it is not known.
    pub lot: String,
}

impl ColourName {
    /// A colour of a yarn that nobody has named yet.
    pub const fn new(name: String, hex: Rgb) -> Self {
        Self { name, hex, yarn: String::new(), lot: String::new() }
    }

    /// The same of a yarn.
    #[must_use]
    pub fn of_yarn(self, yarn: &str) -> Self {
        Self { yarn: yarn.to_owned(), ..self }
    }
}

impl Project {
    /// The largest revision: what every reader of JSON can hold exactly, 2⁵³ − 1.
    pub const MOST_REVISIONS: u64 = (1 << 53) - 1;

    /// The same hat with every text held to its rule, and of too many sizes the first.
    #[must_use]
    pub fn tidy(mut self) -> Self {
        self.name = NAME.tidy(&self.name);
        self.notes = NOTES.tidy(&self.notes);
        for colour in &mut self.colours {
            colour.name = COLOUR.tidy(&colour.name);
            colour.yarn = YARN.tidy(&colour.yarn);
            colour.lot = LOT.tidy(&colour.lot);
        }
        self.designer = self.designer.tidy();
        self.sizes = sizes::tidy(self.sizes);
        self
    }

    /// The same hat under another identity, never saved yet: for a hat that came from a file or is copied.
    #[must_use]
    pub fn renewed(self, id: ProjectId, changed_ms: u64) -> Self {
        Self { id, revision: 0, changed_ms, ..self }
    }

    /// Whether numbers and colours are such as a hat can be planned from, in all its sizes.
    ///
    /// # Errors
    /// The first [`Breach`]; [`Breach::WrongCount`] also where colours and balls are not equally many.
    pub fn check(&self) -> Result<(), Breach> {
        check(&self.spec, self.colours.len(), &self.sizes)
    }
}

/// The check of a spec with so many named colours in these sizes.
pub(crate) fn check(spec: &HatSpec, colours: usize, sizes: &[SizeOf]) -> Result<(), Breach> {
    spec.check()?;
    if spec.balls.len() != colours {
        return Err(Breach::WrongCount);
    }
    // A head is checked by what checks the hat's own: in a hat that has nothing else to find fault with.
    let mut plain = HatSpec::default();
    sizes.iter().try_for_each(|SizeOf { name: _, head }| {
        plain.head = *head;
        plain.check()
    })
}

/// Whether names, colours and the designer's words are as [`Project::tidy`] leaves them.
pub(crate) fn texts_hold(name: &str, colours: &[ColourName], sizes: &[SizeOf], designer: &Designer) -> bool {
    let named = |c: &ColourName| COLOUR.holds(&c.name) && YARN.holds(&c.yarn) && LOT.holds(&c.lot);
    NAME.holds(name) && colours.iter().all(named) && sizes::hold(sizes) && designer.holds()
}
