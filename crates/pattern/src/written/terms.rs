//! The trade's words in US and UK terms.

use hatwright_sizing::Stitch;
use serde::{Deserialize, Serialize};

/// Whose terms a pattern is written in: a US single crochet is a UK double crochet, and a mix-up ruins a hat.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Terms {
    /// United States.
    #[default]
    Us,
    /// United Kingdom.
    Uk,
    /// The Spanish language's own: `punto bajo` is a US single crochet.
    Spanish,
}

impl Terms {
    /// The words of these terms.
    pub const fn words(self) -> &'static Words {
        match self {
            Self::Us => &US,
            Self::Uk => &UK,
            Self::Spanish => &SPANISH,
        }
    }

    const fn other(self) -> Self {
        match self {
            Self::Us => Self::Uk,
            Self::Uk | Self::Spanish => Self::Us,
        }
    }
}

/// What the terms call things.
#[derive(Clone, Copy, Debug)]
pub struct Words {
    /// Whose: `US`.
    pub system: &'static str,
    /// Stitches in full, from the slip stitch to the US double crochet.
    names: [&'static str; 4],
    /// The same, abbreviated.
    shorts: [&'static str; 4],
    /// To leave a stitch alone.
    pub skip: &'static str,
    /// Stitches and rounds to a length, as a heading.
    pub gauge: &'static str,
    /// Wrapping the hook.
    pub yarn_over: &'static str,
}

const US: Words = Words {
    system: "US",
    names: ["slip stitch", "single crochet", "half double crochet", "double crochet"],
    shorts: ["sl st", "sc", "hdc", "dc"],
    skip: "skip",
    gauge: "Gauge",
    yarn_over: "yarn over",
};

const UK: Words = Words {
    system: "UK",
    names: ["slip stitch", "double crochet", "half treble crochet", "treble crochet"],
    shorts: ["sl st", "dc", "htr", "tr"],
    skip: "miss",
    gauge: "Tension",
    yarn_over: "yarn round hook",
};

/// From memory, no source: what Spain's trade says.
const SPANISH: Words = Words {
    system: "ES",
    names: ["punto raso", "punto bajo", "medio punto alto", "punto alto"],
    shorts: ["pr", "pb", "mpa", "pa"],
    skip: "saltar",
    gauge: "Muestra",
    yarn_over: "echar hebra",
};

impl Words {
    /// A stitch in full: `half double crochet`.
    ///
    /// ```
    /// use hatwright_pattern::written::Terms;
    /// use hatwright_sizing::Stitch;
    /// assert_eq!(Terms::Uk.words().name(Stitch::Double), "treble crochet");
    /// assert_eq!(Terms::Uk.words().short(Stitch::Single), Terms::Us.words().short(Stitch::Double));
    /// ```
    pub const fn name(&self, stitch: Stitch) -> &'static str {
        self.names[stitch as usize]
    }

    /// A stitch, abbreviated: `hdc`.
    pub const fn short(&self, stitch: Stitch) -> &'static str {
        self.shorts[stitch as usize]
    }
}

/// The line that says whose terms these are, by the stitches that are really used, in order of height.
pub(super) fn notice(stitches: &[Stitch], terms: Terms) -> String {
    let (own, other) = (terms.words(), terms.other().words());
    let called: Vec<String> = stitches
        .iter()
        .filter(|stitch| **stitch != Stitch::Slip)
        .map(|stitch| {
            [
                own.name(*stitch),
                " (",
                own.short(*stitch),
                ") here is what ",
                other.system,
                " patterns call ",
                other.name(*stitch),
                " (",
                other.short(*stitch),
                ")",
            ]
            .concat()
        })
        .collect();
    let mut text = ["Written in ", own.system, " crochet terms: "].concat();
    if called.is_empty() {
        text.push_str("slip stitch (sl st) is the same in both.");
    } else {
        text.push_str(&called.join(", and "));
        text.push('.');
    }
    text
}
