//! The trade's words in US, UK and Spanish terms.
//!
//! Each system's words stand in the catalogue, in every language alike: `single crochet` is what US patterns say, whatever language speaks
//! of them. The words of Spain's trade, and those of America that the notice names, are from memory, no source.

use hatwright_sizing::Stitch;
use hatwright_words::lines as say;
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
    pub fn words(self) -> Words {
        match self {
            Self::Us => Words {
                system: say::us_system(),
                names: [say::us_slip(), say::us_single(), say::us_half(), say::us_double()],
                shorts: [say::us_slip_short(), say::us_single_short(), say::us_half_short(), say::us_double_short()],
                skip: say::us_skip(),
                gauge: say::us_gauge(),
                yarn_over: say::us_over(),
            },
            Self::Uk => Words {
                system: say::uk_system(),
                names: [say::uk_slip(), say::uk_single(), say::uk_half(), say::uk_double()],
                shorts: [say::uk_slip_short(), say::uk_single_short(), say::uk_half_short(), say::uk_double_short()],
                skip: say::uk_skip(),
                gauge: say::uk_gauge(),
                yarn_over: say::uk_over(),
            },
            Self::Spanish => Words {
                system: say::es_system(),
                names: [say::es_slip(), say::es_single(), say::es_half(), say::es_double()],
                shorts: [say::es_slip_short(), say::es_single_short(), say::es_half_short(), say::es_double_short()],
                skip: say::es_skip(),
                gauge: say::es_gauge(),
                yarn_over: say::es_over(),
            },
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

impl Words {
    /// A stitch in full: `half double crochet`.
    ///
    /// ```
    /// use hatwright_pattern::written::Terms;
    /// use hatwright_sizing::Stitch;
    /// assert_eq!(Terms::Uk.words().name(Stitch::Double), "treble crochet");
    /// assert_eq!(Terms::Uk.words().short(Stitch::Single), Terms::Us.words().short(Stitch::Double));
    /// assert_eq!(Terms::Spanish.words().name(Stitch::Single), "punto bajo");
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
    let own = terms.words();
    let other = match terms {
        Terms::Us => Terms::Uk.words(),
        Terms::Uk => Terms::Us.words(),
        Terms::Spanish => return notice_of_spain(stitches),
    };
    let called: Vec<String> = stitches
        .iter()
        .filter(|stitch| **stitch != Stitch::Slip)
        .map(|stitch| say::called(own.name(*stitch), own.short(*stitch), other.system, other.name(*stitch), other.short(*stitch)))
        .collect();
    if called.is_empty() {
        say::terms_alike(own.system, own.name(Stitch::Slip), own.short(Stitch::Slip))
    } else {
        say::terms(own.system, &called.join(say::called_and()))
    }
}

/// The same in few words, for the top of every page: `US terms: sc = UK dc`.
pub(super) fn brief(stitches: &[Stitch], terms: Terms) -> String {
    let (own, us, uk) = (terms.words(), Terms::Us.words(), Terms::Uk.words());
    let equals = |stitch: &Stitch| match terms {
        Terms::Us => say::brief_one(own.short(*stitch), uk.system, uk.short(*stitch)),
        Terms::Uk => say::brief_one(own.short(*stitch), us.system, us.short(*stitch)),
        Terms::Spanish => say::brief_two(own.short(*stitch), us.short(*stitch), uk.short(*stitch)),
    };
    let all: Vec<String> = stitches.iter().filter(|stitch| **stitch != Stitch::Slip).map(equals).collect();
    let named = if terms == Terms::Spanish { say::brief_spain().to_owned() } else { say::brief_terms(own.system) };
    if all.is_empty() { named } else { [&named, ": ", &all.join(", ")].concat() }
}

fn notice_of_spain(stitches: &[Stitch]) -> String {
    let (own, us, uk) = (Terms::Spanish.words(), Terms::Us.words(), Terms::Uk.words());
    let called = |stitch: &Stitch| match stitch {
        Stitch::Slip => say::called_spain_slip(own.name(*stitch), own.short(*stitch)),
        _ => say::called_spain(
            own.name(*stitch),
            own.short(*stitch),
            us.name(*stitch),
            us.short(*stitch),
            uk.name(*stitch),
            uk.short(*stitch),
        ),
    };
    let elsewhere = |stitch: &Stitch| match stitch {
        Stitch::Slip => say::elsewhere_slip(),
        Stitch::Single => say::elsewhere_single(),
        Stitch::HalfDouble => say::elsewhere_half(),
        Stitch::Double => say::elsewhere_double(),
    };
    let called: Vec<String> = stitches.iter().map(called).collect();
    let elsewhere: Vec<&str> = stitches.iter().map(elsewhere).collect();
    say::terms_spain(&called.join(say::called_and()), &elsewhere.join(say::elsewhere_and()))
}
