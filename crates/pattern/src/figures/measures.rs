//! Weights, and telling a weight from a length where a person types one for the other.

use super::read::{Misread, begins_number};
use super::suffix::{Measure, OUNCE};
use super::{Units, amount, either, in_units, rounded, signed, tenths, unit_label, with_unit, yarn};
use hatwright_sizing::{Ball, Mass, Quantity, Unit, YarnLength};
use hatwright_words::figures as words;

/// A weight with its unit: whole grams from 10 g on, otherwise tenths, and tenths of an ounce.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, mass};
/// use hatwright_sizing::Mass;
/// assert_eq!(mass(Mass::from_grams(49.6), Centimetres), "50 g");
/// assert_eq!(mass(Mass::from_grams(2.34), Centimetres), "2.3 g");
/// assert_eq!(mass(Mass::from_grams(50.0), Inches), "1.8 oz");
/// assert_eq!(mass(Mass::from_grams(50.0), Both), "50 g (1.8 oz)");
/// ```
pub fn mass(mass: Mass, units: Units) -> String {
    let ticks = i64::from(mass.ticks());
    in_units(units, |units| {
        let text = match units {
            Units::Inches => tenths(ticks * OUNCE.1 as i64, OUNCE.0),
            // What is told in tenths never reads 10.0.
            _ if ticks.abs() < 995 => tenths(ticks, 100),
            _ => signed(ticks < 0, rounded(ticks.unsigned_abs(), 100).to_string()),
        };
        with_unit(text, unit_label(Unit::Mass, units))
    })
}

/// A length of yarn with what it weighs, where that is known.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, yarn_and_mass};
/// use hatwright_sizing::{Mass, YarnLength};
/// let told = |grams, units| yarn_and_mass(YarnLength::from_metres(68.2), grams, units);
/// assert_eq!(told(None, Centimetres), "68 m");
/// assert_eq!(told(Some(Mass::from_grams(43.0)), Centimetres), "68 m (43 g)");
/// assert_eq!(told(Some(Mass::from_grams(43.0)), Both), "68 m / 75 yd (43 g / 1.5 oz)");
/// ```
pub fn yarn_and_mass(length: YarnLength, grams: Option<Mass>, units: Units) -> String {
    match grams {
        Some(grams) => words::beside(&either(units, |units| yarn(length, units)), &either(units, |units| mass(grams, units))),
        None => yarn(length, units),
    }
}

/// A ball as its band tells it: `50 g = 80 m`, or its length alone.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, ball};
/// use hatwright_sizing::{Ball, Count, Mass};
/// let wool = Ball { grams: Some(Mass::from_grams(50.0)), ..Ball::of(Count::whole(80)) };
/// assert_eq!((&*ball(&wool, Centimetres), &*ball(&wool, Inches)), ("50 g = 80 m", "1.8 oz = 87 yd"));
/// assert_eq!(ball(&wool, Both), "50 g = 80 m (1.8 oz = 87 yd)");
/// ```
pub fn ball(ball: &Ball, units: Units) -> String {
    in_units(units, |units| {
        // A ball of 80 m is no round number of yards: 87 yd says enough.
        let length = match units {
            Units::Inches => yarn(YarnLength::from_metres(ball.metres()), units),
            _ => amount(ball.yarn.ticks(), Unit::Yarn, units),
        };
        match ball.grams {
            Some(grams) => [&*mass(grams, units), " = ", &length].concat(),
            None => length,
        }
    })
}

/// What a unit measures.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Weight,
    Length,
}

fn kind(unit: &str) -> Option<Kind> {
    let name = unit.to_ascii_lowercase();
    // A pound may be a currency.
    let measure = Measure::of(&name).filter(|_| !["pound", "pounds", "libra", "libras"].contains(&&*name))?;
    Some(if measure.is_weight() { Kind::Weight } else { Kind::Length })
}

/// The first number with a unit of each kind: weight and length.
fn found(text: &str) -> (Option<&str>, Option<&str>) {
    let (mut weight, mut length) = (None, None);
    let (mut from, mut rest) = (0, text);
    while let Some(start) = rest.find(|c: char| c.is_ascii_alphabetic()) {
        let after = &rest[start..];
        let letters = after.find(|c: char| !c.is_ascii_alphabetic()).unwrap_or(after.len());
        let (unit, end) = (&after[..letters], text.len() - after.len() + letters);
        let number = text[from..end].trim_start_matches(|c: char| !begins_number(c));
        let numbered = number.len() > unit.len() && !number.starts_with(unit);
        match kind(unit).filter(|_| numbered) {
            Some(Kind::Weight) if weight.is_none() => weight = Some(number),
            Some(Kind::Length) if length.is_none() => length = Some(number),
            _ => {}
        }
        (from, rest) = (end, &text[end..]);
    }
    (weight, length)
}

/// The weight and the length of a text that has both, as a ball's band tells them.
///
/// ```
/// use hatwright_pattern::figures::weight_and_length;
/// assert_eq!(weight_and_length("50 g / 80 m"), Some(("50 g", "80 m")));
/// assert_eq!(weight_and_length("87 yd = 1¾ oz"), Some(("1¾ oz", "87 yd")));
/// assert_eq!(weight_and_length("50 g"), None);
/// ```
pub fn weight_and_length(text: &str) -> Option<(&str, &str)> {
    let (weight, length) = found(text);
    weight.zip(length)
}

/// Whether a text that is no number for its field is a weight, a length or both, where they are told apart: in fields of yarn, of weights
/// and of money.
pub(super) fn of_another_kind(q: Quantity, text: &str) -> Option<Misread> {
    let own = match (q, q.row().unit) {
        (Quantity::UnravelledLength, _) | (_, Unit::Yarn) => Some(Kind::Length),
        (_, Unit::Mass) => Some(Kind::Weight),
        (_, Unit::Money) => None,
        _ => return None,
    };
    match found(text) {
        (Some(_), Some(_)) => Some(Misread::Both),
        (Some(_), None) if own != Some(Kind::Weight) => Some(Misread::Weight),
        (None, Some(_)) if own != Some(Kind::Length) => Some(Misread::Length),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::{parse, parse_for};
    use hatwright_sizing::Quantity as Q;
    use proptest::prelude::*;

    /// 1 oz = 28.349 523 125 g, a sixteenth of the pound of 453.592 37 g (international yard and pound agreement, 1959).
    #[test]
    fn weights_are_read() {
        use Units::{Centimetres as Cm, Inches as In};
        for (text, units, ticks) in [
            ("50", Cm, 50_00),
            ("50 g", In, 50_00),
            ("50g", Cm, 50_00),
            ("49,5 grams", Cm, 49_50),
            ("1 gram", In, 1_00),
            ("0.1 kg", Cm, 10_000),
            ("1.2 kilo", In, 120_000),
            ("1", In, 28_35),
            ("1 oz", Cm, 28_35),
            ("1¾ oz", Cm, 49_61),
            ("3.5 Ounces", Cm, 99_22),
            ("1 lb", Cm, 45_359),
            ("2 pounds", In, 90_718),
            ("16 ounce", Cm, 45_359),
            ("100 oz", Cm, 283_495),
        ] {
            assert_eq!(parse(text, Unit::Mass, units), Ok(ticks), "{text}");
        }
        for text in ["50 m", "50 cm", "1 stone", "50 gs", "1 g 2", "999999 lb"] {
            assert!(parse(text, Unit::Mass, Cm).is_err(), "{text}");
        }
    }

    #[test]
    fn a_weight_for_a_length_is_told_as_that() {
        use Misread as M;
        let cm = |q, text: &str| parse_for(q, text, Units::Centimetres);
        for (q, text, why) in [
            (Q::BallYarn, "50 g", M::Weight),
            (Q::BallYarn, "1¾ oz", M::Weight),
            (Q::BallYarn, "½ oz", M::Weight),
            (Q::InsteadYarn, "0.1kg", M::Weight),
            (Q::UnravelledLength, "2 g", M::Weight),
            (Q::BallGrams, "80 m", M::Length),
            (Q::InsteadGrams, "87 yards", M::Length),
            (Q::HatGrams, "20 cm", M::Length),
            (Q::ScaleStep, "1 mm", M::Length),
            (Q::BallYarn, "50 g / 80 m", M::Both),
            (Q::BallYarn, "50g=80m", M::Both),
            (Q::BallYarn, "50 g · 80 m", M::Both),
            (Q::BallGrams, "80 m to 50 g", M::Both),
            (Q::BallPrice, "50 g, 80 m", M::Both),
            // A wrong length in a field of lengths is only that.
            (Q::BallYarn, "80 cm", M::NotANumber),
            (Q::BallYarn, "g", M::NotANumber),
            (Q::BallYarn, "big", M::NotANumber),
            (Q::BallGrams, "50 m!", M::Length),
            (Q::HeadGirth, "50 g", M::NotANumber),
            (Q::BallYarn, "", M::Empty),
            (Q::BallYarn, "1.2.3", M::TwoMarks),
        ] {
            assert_eq!(cm(q, text), Err(why), "{q:?} {text}");
        }
        assert_eq!((cm(Q::BallYarn, "80 m"), cm(Q::BallsOwned, "2 balls")), (Ok(80_00), Ok(2_00)));
    }

    #[test]
    fn weights_are_told_without_a_stray_decimal() {
        use Units::{Centimetres as Cm, Inches as In};
        for (ticks, units, text) in [
            (0, Cm, "0.0 g"),
            (994, Cm, "9.9 g"),
            (995, Cm, "10 g"),
            (5_049, Cm, "50 g"),
            (-5_050, Cm, "−51 g"),
            (2_835, In, "1.0 oz"),
            (i32::MAX, In, "757502.6 oz"),
        ] {
            assert_eq!(mass(Mass::from_ticks(ticks), units), text);
        }
    }

    proptest! {
        #[test]
        fn any_text_is_looked_through(text in "\\PC{0,40}") {
            for q in [Q::BallYarn, Q::BallGrams, Q::BallPrice, Q::UnravelledLength] {
                let _ = parse_for(q, &text, Units::Inches);
            }
        }

        #[test]
        fn near_amounts_are_looked_through(text in "[0-9.,/ ½€$=g mozyd-]{0,24}") {
            if let Some((weight, length)) = weight_and_length(&text) {
                prop_assert!(text.contains(weight) && text.contains(length));
            }
            for q in [Q::BallYarn, Q::BallGrams, Q::BallPrice] {
                let _ = parse_for(q, &text, Units::Centimetres);
            }
        }
    }
}
