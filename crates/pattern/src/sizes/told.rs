//! A text for several sizes at once: words that they share, and a number for each where the sizes differ.

/// A text for one or several sizes.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Told(pub Vec<Piece>);

/// A piece of such a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Piece {
    /// What all sizes have in common.
    Words(String),
    /// A number for each size, or a span of them as in `2–5`; none for a size that this text is not for.
    Numbers(Vec<Option<String>>),
}

/// Stands for the number of a size that a line is not for.
pub const NOT_THIS: &str = "–";

impl Told {
    /// A text that is the same for every size.
    pub fn of(text: impl Into<String>) -> Self {
        Self(vec![Piece::Words(text.into())])
    }

    /// The texts of some sizes as one, if they differ in nothing but numbers. `None` for a size without such a text.
    ///
    /// ```
    /// use hatwright_pattern::sizes::Told;
    /// let merged = Told::merged(&[Some("[sc2tog, 5 sc] × 6. (36)"), Some("[sc2tog, 6 sc] × 6. (42)")]).unwrap();
    /// assert_eq!(merged.text(), "[sc2tog, 5 (6) sc] × 6. (36 (42))");
    /// assert_eq!(merged.own(1).as_deref(), Some("[sc2tog, 6 sc] × 6. (42)"));
    /// ```
    pub fn merged(texts: &[Option<&str>]) -> Option<Self> {
        let parsed: Vec<_> = texts.iter().map(|text| text.map(tokens)).collect();
        let first = parsed.iter().flatten().next()?;
        if parsed.iter().flatten().any(|other| !alike(first, other)) {
            return None;
        }
        // A line that is not for every size shows so at its first number, and at every number that its sizes do not share.
        let absent = parsed.iter().any(Option::is_none);
        let mut pieces: Vec<Piece> = Vec::new();
        let mut shown = false;
        for (at, token) in first.iter().enumerate() {
            let numbers: Vec<Option<String>> =
                parsed.iter().map(|one| one.as_ref().map(|one| one[at].text().to_owned())).collect();
            let differ = numbers.iter().flatten().any(|number| number != token.text());
            if token.is_number() && (differ || (absent && !shown)) {
                pieces.push(Piece::Numbers(numbers));
                shown = true;
            } else if let Some(Piece::Words(words)) = pieces.last_mut() {
                words.push_str(token.text());
            } else {
                pieces.push(Piece::Words(token.text().to_owned()));
            }
        }
        (shown || !absent).then_some(Self(pieces))
    }

    /// The text in the trade's bracket form: `56 (60, –)`. `separator` stands between the numbers in the brackets.
    pub fn bracketed(&self, separator: &str) -> String {
        let mut text = String::new();
        for piece in &self.0 {
            match piece {
                Piece::Words(words) => text.push_str(words),
                Piece::Numbers(numbers) => {
                    for (i, number) in numbers.iter().enumerate() {
                        text.push_str(["", " ("].get(i).copied().unwrap_or(separator));
                        text.push_str(number.as_deref().unwrap_or(NOT_THIS));
                    }
                    text.push_str(if numbers.len() > 1 { ")" } else { "" });
                }
            }
        }
        text
    }

    /// The text in the bracket form, as the language that is spoken parts numbers.
    pub fn text(&self) -> String {
        self.bracketed(hatwright_words::sizes::separator())
    }

    /// The same for those sizes alone that it is for.
    pub(crate) fn of_those(&self) -> Self {
        let those = |piece: &Piece| match piece {
            Piece::Numbers(numbers) => {
                let present: Vec<Option<String>> = numbers.iter().filter(|number| number.is_some()).cloned().collect();
                match &present[..] {
                    [Some(first), rest @ ..] if rest.iter().all(|other| other.as_ref() == Some(first)) => {
                        Piece::Words(first.clone())
                    }
                    _ => Piece::Numbers(present),
                }
            }
            words @ Piece::Words(_) => words.clone(),
        };
        Self(self.0.iter().map(those).collect())
    }

    /// The text of one of its sizes; `None` where it is not for that size.
    pub fn own(&self, size: usize) -> Option<String> {
        let mut text = String::new();
        for piece in &self.0 {
            match piece {
                Piece::Words(words) => text.push_str(words),
                Piece::Numbers(numbers) => text.push_str(numbers.get(size)?.as_deref()?),
            }
        }
        Some(text)
    }
}

/// What a text without its numbers is: texts alike in this can be merged.
pub(super) fn skeleton(text: &str) -> String {
    tokens(text).iter().map(|token| if token.is_number() { "\u{1}" } else { token.text() }).collect()
}

enum Token<'a> {
    Words(&'a str),
    Number(&'a str),
}

impl<'a> Token<'a> {
    const fn text(&self) -> &'a str {
        match self {
            Self::Words(text) | Self::Number(text) => text,
        }
    }

    const fn is_number(&self) -> bool {
        matches!(self, Self::Number(_))
    }
}

fn alike(a: &[Token<'_>], b: &[Token<'_>]) -> bool {
    a.len() == b.len()
        && a.iter().zip(b).all(|(a, b)| match (a, b) {
            (Token::Number(_), Token::Number(_)) => true,
            (Token::Words(a), Token::Words(b)) => a == b,
            _ => false,
        })
}

/// Words and numbers in turn. A number may have decimals by point or comma, or a fraction's sign; `2–5` is one number.
fn tokens(text: &str) -> Vec<Token<'_>> {
    let mut all = Vec::new();
    let mut rest = text;
    while !rest.is_empty() {
        let Some(start) = rest.find(|c: char| c.is_ascii_digit()) else {
            all.push(Token::Words(rest));
            break;
        };
        // Digits in a word, as in `sc2tog`, are part of it.
        let joined = rest[..start].chars().next_back().is_some_and(char::is_alphabetic);
        let (number, after) = rest.split_at(start + number_length(&rest[start..]));
        let lettered = joined || after.chars().next().is_some_and(char::is_alphabetic);
        if lettered {
            // The word goes on up to its end; it is told as it is.
            let end = after.find(|c: char| !c.is_alphanumeric()).map_or(rest.len(), |end| number.len() + end);
            push_words(&mut all, text, rest, end);
            rest = &rest[end..];
        } else {
            push_words(&mut all, text, rest, start);
            all.push(Token::Number(&number[start..]));
            rest = after;
        }
    }
    all
}

/// Adds words, as one token with the words before them.
fn push_words<'a>(all: &mut Vec<Token<'a>>, text: &'a str, rest: &'a str, end: usize) {
    let here = text.len() - rest.len();
    if let Some(Token::Words(before)) = all.last_mut() {
        let from = here - before.len();
        *before = &text[from..here + end];
    } else if end > 0 {
        all.push(Token::Words(&rest[..end]));
    }
}

fn number_length(text: &str) -> usize {
    let plain = |text: &str| text.bytes().take_while(u8::is_ascii_digit).count();
    let one = |text: &str| {
        let mut length = plain(text);
        if let Some(after) = text[length..].strip_prefix(['.', ',']) {
            let decimals = plain(after);
            length += if decimals > 0 { 1 + decimals } else { 0 };
        }
        let fraction = text[length..].chars().next().filter(|c| "¼½¾⅓⅔⅛⅜⅝⅞".contains(*c));
        length + fraction.map_or(0, char::len_utf8)
    };
    let length = one(text);
    match text[length..].strip_prefix('–') {
        Some(after) if plain(after) > 0 => length + '–'.len_utf8() + one(after),
        _ => length,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn merged(texts: &[&str]) -> Option<String> {
        Told::merged(&texts.iter().map(|text| Some(*text)).collect::<Vec<_>>()).map(|told| told.bracketed(", "))
    }

    #[test]
    fn equal_numbers_are_told_once() {
        assert_eq!(merged(&["Row 1. (10)", "Row 1. (10)"]).unwrap(), "Row 1. (10)");
        assert_eq!(merged(&["6 sc. (56)", "6 sc. (60)", "6 sc. (64)"]).unwrap(), "6 sc. (56 (60, 64))");
        assert_eq!(merged(&["46.7 cm", "48,5 cm"]).unwrap(), "46.7 (48,5) cm");
        assert_eq!(merged(&["Rounds 2–7: sc", "Rounds 2–9: sc"]).unwrap(), "Rounds 2–7 (2–9): sc");
        assert_eq!(merged(&["from 12½ to 18", "from 13 to 18"]).unwrap(), "from 12½ (13) to 18");
    }

    #[test]
    fn words_that_differ_are_not_merged() {
        assert_eq!(merged(&["5 sc", "5 hdc"]), None);
        assert_eq!(merged(&["1 stitch", "2 stitches"]), None);
        assert_eq!(merged(&["sc2tog", "sc3tog"]), None);
        assert_eq!(merged(&["2nd ch", "3rd ch"]), None);
    }

    #[test]
    fn a_size_that_a_line_is_not_for_has_a_dash() {
        let told = Told::merged(&[None, Some("Round 9: sc. (40)"), Some("Round 9: sc. (44)")]).unwrap();
        assert_eq!(told.bracketed(", "), "Round – (9, 9): sc. (– (40, 44))");
        assert_eq!(told.own(0), None);
        assert_eq!(told.own(2).unwrap(), "Round 9: sc. (44)");
        // A text without a number cannot show whom it is for.
        assert_eq!(Told::merged(&[None, Some("turn")]), None);
    }

    #[test]
    fn numbers_in_words_are_words() {
        assert_eq!(skeleton("Round 6: [sc2tog, 5 sc] × 6"), "Round \u{1}: [sc2tog, \u{1} sc] × \u{1}");
        assert_eq!(skeleton("2.ª cad, 10 cm"), "\u{1}.ª cad, \u{1} cm");
        for text in ["", "a", "1", "a1", "1a", "1 1", "x1y2 3", "é5 ½", "3–", "2–5–9", "1.", "1,2,3", "ж9"] {
            let told = Told::merged(&[Some(text)]).unwrap();
            assert_eq!((told.bracketed(", "), told.own(0).unwrap()), (text.to_owned(), text.to_owned()));
        }
    }
}
