//! What a person may write into a hat: how long, and which characters.

/// The rule of one text: its length in characters, and whether it may have several lines.
///
/// Forms tidy what is typed, documents and links are refused where they do not hold to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TextRule {
    /// The most characters (Unicode scalar values).
    pub most: usize,
    /// Whether line ends are kept.
    pub lines: bool,
}

/// A hat's name: one line of at most 80 characters.
pub const NAME: TextRule = TextRule { most: 80, lines: false };
/// A colour's name: one line of at most 40 characters.
pub const COLOUR: TextRule = TextRule { most: 40, lines: false };
/// A yarn's name: one line of at most 60 characters.
pub const YARN: TextRule = TextRule { most: 60, lines: false };
/// A dye lot: one line of at most 24 characters.
pub const LOT: TextRule = TextRule { most: 24, lines: false };
/// Notes: at most 10 000 characters on any number of lines.
pub const NOTES: TextRule = TextRule { most: 10_000, lines: true };
/// A designer's introduction: at most 2 000 characters on any number of lines.
pub const INTRODUCTION: TextRule = TextRule { most: 2_000, lines: true };
/// Whose pattern it is: one line of at most 80 characters.
pub const CREDIT: TextRule = TextRule { most: 80, lines: false };
/// A pattern's edition: one line of at most 24 characters.
pub const EDITION: TextRule = TextRule { most: 24, lines: false };
/// A pattern's date, as its designer writes it: one line of at most 24 characters.
pub const DATE: TextRule = TextRule { most: 24, lines: false };
/// What testers found: at most 2 000 characters on any number of lines.
pub const TESTED: TextRule = TextRule { most: 2_000, lines: true };
/// How a hat is washed: at most 300 characters on any number of lines.
pub const CARE: TextRule = TextRule { most: 300, lines: true };
/// The name of a size: one line of at most 24 characters.
pub const SIZE: TextRule = TextRule { most: 24, lines: false };

impl TextRule {
    /// The nearest text that holds to the rule: tabs (and, in a single line, line ends) become spaces, other control characters
    /// and marks that turn the reading direction of the page around are removed, and what is too long is cut.
    ///
    /// ```
    /// use hatwright_project::text::{NAME, NOTES};
    /// assert_eq!(NAME.tidy("Club\ncap\u{7}"), "Club cap");
    /// assert_eq!(NOTES.tidy("4 mm hook\r\nwashed"), "4 mm hook\nwashed");
    /// ```
    pub fn tidy(self, text: &str) -> String {
        text.chars().filter_map(|c| self.kept(c)).take(self.most).collect()
    }

    /// Whether the text is as [`TextRule::tidy`] would leave it.
    pub fn holds(self, text: &str) -> bool {
        text.chars().all(|c| self.kept(c) == Some(c)) && text.chars().count() <= self.most
    }

    fn kept(self, c: char) -> Option<char> {
        match c {
            '\n' if self.lines => Some('\n'),
            '\n' | '\t' | '\u{2028}' | '\u{2029}' => Some(' '),
            // A hat that comes by link must not be able to reverse the sentences around its name.
            '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => None,
            c if c.is_control() => None,
            c => Some(c),
        }
    }
}
