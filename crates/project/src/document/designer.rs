//! What a designer adds to a pattern that others are to read.

use crate::text::{CARE, CREDIT, DATE, EDITION, INTRODUCTION, TESTED, TextRule};
use serde::{Deserialize, Serialize};

/// The designer's own words. An empty one is not told. There are no photographs here: those stay on the device, outside of every hat.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Designer {
    /// Their introduction, by the rule [`INTRODUCTION`].
    pub introduction: String,
    /// Whose pattern it is, by the rule [`CREDIT`].
    pub credit: String,
    /// Which edition, by the rule [`EDITION`].
    pub edition: String,
    /// Its date as they write it, by the rule [`DATE`].
    pub date: String,
    /// What those who tested it found, by the rule [`TESTED`].
    pub tested: String,
    /// How the hat is washed, by the rule [`CARE`]; the usual advice where it is empty.
    pub care: String,
}

impl Designer {
    /// Every text with its rule.
    pub(crate) const fn texts(&mut self) -> [(&mut String, TextRule); 6] {
        let Self { introduction, credit, edition, date, tested, care } = self;
        [(introduction, INTRODUCTION), (credit, CREDIT), (edition, EDITION), (date, DATE), (tested, TESTED), (care, CARE)]
    }

    /// The same with every text held to its rule.
    ///
    /// ```
    /// use hatwright_project::Designer;
    /// let typed = Designer { credit: "Rowing club\nhat makers".to_owned(), ..Designer::default() };
    /// assert_eq!(typed.tidy().credit, "Rowing club hat makers");
    /// ```
    #[must_use]
    pub fn tidy(mut self) -> Self {
        for (text, rule) in self.texts() {
            *text = rule.tidy(text);
        }
        self
    }

    /// Whether every text holds to its rule.
    pub(crate) fn holds(&self) -> bool {
        self.clone().texts().iter().all(|(text, rule)| rule.holds(text))
    }
}
