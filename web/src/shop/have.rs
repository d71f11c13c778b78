//! How much of a colour is owned, however it is told: in balls, by length or by weight.

use hatwright_pattern::figures::{self, Misread, Units};
use hatwright_pattern::say;
use hatwright_sizing::{Ball, Count, Quantity, Unit};
use hatwright_words::shop as words;

/// Why what was typed is no amount of yarn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoAmount {
    /// It is no number, or one of a unit that yarn is not told in.
    Misread(Misread),
    /// More hundredths of a ball than anybody owns.
    TooMany(i32),
    /// Grams of a yarn whose ball was never weighed.
    NoGrams,
}

/// What balls are called, whichever language is spoken: the longer word before the one it ends in.
const BALLS: [&str; 4] = ["balls", "ball", "ovillos", "ovillo"];

/// Balls of a yarn from what was typed: a bare number is balls, `120 m` and `80 g` are turned into them, in hundredths of a ball and never
/// more than was typed. 120 m of balls of 80 m are 1.5 balls, 80 g of balls of 50 g are 1.6.
pub fn read(typed: &str, ball: &Ball, units: Units) -> Result<Count, NoAmount> {
    let text = typed.trim().to_lowercase();
    let bare = BALLS.iter().find_map(|noun| text.strip_suffix(noun)).unwrap_or(&text);
    let balls = figures::parse(bare, Unit::Count, units);
    let of = |amount: i32, whole: i32| i64::from(amount) * 100 / i64::from(whole.max(1));
    let ticks = match balls {
        Ok(ticks) => i64::from(ticks),
        Err(misread) => {
            // A number that cannot be is told as that, whatever its unit.
            let by = |unit| match figures::parse(&text, unit, units) {
                Err(Misread::NotANumber) => None,
                read => Some(read),
            };
            let whole = if misread == Misread::NotANumber { None } else { Some(Err(misread)) };
            let length = || by(Unit::Yarn).map(|read| read.map(|length| of(length, ball.yarn.ticks())));
            if let Some(read) = whole.or_else(length) {
                read.map_err(NoAmount::Misread)?
            } else {
                let mass = by(Unit::Mass).unwrap_or(Err(misread)).map_err(NoAmount::Misread)?;
                of(mass, ball.grams.ok_or(NoAmount::NoGrams)?.ticks())
            }
        }
    };
    let ticks = i32::try_from(ticks).unwrap_or(i32::MAX);
    if Quantity::BallsOwned.row().holds(ticks) { Ok(Count::from_ticks(ticks)) } else { Err(NoAmount::TooMany(ticks)) }
}

/// The sentence beside the field.
pub fn sentence(why: NoAmount, typed: &str, units: Units) -> String {
    match why {
        NoAmount::Misread(Misread::NotANumber) => {
            let typed = typed.trim();
            if units == Units::Inches { words::no_amount_inches(typed) } else { words::no_amount_metric(typed) }
        }
        NoAmount::Misread(misread) => say::misread(Quantity::BallsOwned, &misread, typed, units),
        NoAmount::TooMany(ticks) => say::out_of_range(Quantity::BallsOwned, ticks, units),
        NoAmount::NoGrams => words::no_grams().to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::Mass;
    use hatwright_words::{Language, in_language};

    const BALL: Ball = Ball { grams: Some(Mass::from_ticks(50_00)), ..Ball::of(Count::whole(80)) };

    #[test]
    fn balls_lengths_and_weights_are_read() {
        for (typed, ticks) in [
            ("0", 0),
            ("1.5", 150),
            (" 2 Balls ", 200),
            ("1 ball", 100),
            ("1½ balls", 150),
            ("1 ovillo", 100),
            ("2,5 ovillos", 250),
            ("120 m", 150),
            ("120m", 150),
            ("80 g", 160),
            ("80,5 g", 161),
            // 87.489 yd are 80 m.
            ("87.5 yd", 100),
            // 1.7637 oz are 50 g.
            ("1.764 oz", 100),
            ("100 m", 125),
        ] {
            assert_eq!(read(typed, &BALL, Units::Centimetres), Ok(Count::from_ticks(ticks)), "{typed:?}");
        }
        // Never more than was typed: 85 m of 80 are 1.0625 balls.
        assert_eq!(read("85 m", &BALL, Units::Inches), Ok(Count::from_ticks(106)));
    }

    #[test]
    fn what_is_no_amount_is_told_in_a_sentence() {
        let read = |typed| read(typed, &BALL, Units::Centimetres).unwrap_err();
        for typed in ["x", "12 cm", "two", "3 skeins", "m", "🧶", "<b>", "NaN"] {
            assert_eq!(read(typed), NoAmount::Misread(Misread::NotANumber), "{typed:?}");
        }
        for typed in ["", "-1", "-80 g", "-3 m", "1.2.3", "99999999999999999999999"] {
            assert!(matches!(read(typed), NoAmount::Misread(_)), "{typed:?}");
            assert!(!sentence(read(typed), typed, Units::Centimetres).is_empty());
        }
        assert!(matches!(read("100000"), NoAmount::TooMany(_)));
        assert!(matches!(read("99999999 m"), NoAmount::TooMany(_) | NoAmount::Misread(_)));
        let told = || sentence(read("x"), " x ", Units::Centimetres);
        assert_eq!(told(), "“x” is no amount of yarn. Type balls, a length or a weight: 1.5, 120 m or 80 g.");
        assert!(in_language(Language::Spanish, told).starts_with("«x» no es una cantidad de hilo. Escribe ovillos, "));
        let unknown = Ball { grams: None, ..BALL };
        assert_eq!(super::read("80 g", &unknown, Units::Centimetres), Err(NoAmount::NoGrams));
        assert_eq!(super::read("120 m", &unknown, Units::Centimetres), Ok(Count::from_ticks(150)));
    }
}
