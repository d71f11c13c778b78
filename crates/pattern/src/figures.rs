//! Figures as people type and read them: one parser and one formatter for the whole program, in whole ticks.
//!
//! No float is ever printed or parsed: a typed number becomes a fraction of integers, then ticks of the quantity's [`Unit`],
//! rounded half away from zero.

mod ages;
mod days;
mod lengths;
mod measures;
mod money;
mod read;
mod suffix;
mod yarns;

pub use ages::{age, age_range, age_span};
pub use days::{date, day};
pub use lengths::{length, length_down, length_span, length_up, lengths_apart};
pub use measures::{ball, mass, weight_and_length, yarn_and_mass};
pub use money::money;
pub use read::{Misread, parse, parse_for};
pub use yarns::{yarn, yarn_about, yarn_bare, yarn_fine, yarn_span};

use hatwright_sizing::{Money, Ratio, Unit};
use hatwright_words::{Language, figures as words, spoken};
use serde::{Deserialize, Serialize};
use suffix::unit_scale;

/// The units of length and weight that a person reads and types.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Units {
    /// Centimetres, metres of yarn, and grams.
    #[default]
    Centimetres,
    /// Inches, yards of yarn, and ounces.
    Inches,
    /// Centimetres, metres and grams, with inches, yards and ounces in parentheses where something is told; typed as centimetres.
    Both,
}

impl Units {
    /// The units that fields are typed in.
    #[must_use]
    pub const fn typed(self) -> Self {
        match self {
            Self::Centimetres | Self::Both => Self::Centimetres,
            Self::Inches => Self::Inches,
        }
    }
}

/// The shortest text that reads back as the same ticks, to at most 2 decimals (4 for a factor); money always has 2.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, show};
/// use hatwright_sizing::Unit;
/// assert_eq!(show(52_500, Unit::Length, Centimetres), "52.5");
/// assert_eq!(show(52_070, Unit::Length, Inches), "20.5");
/// assert_eq!(show(550, Unit::Hook, Inches), "5.5");
/// ```
pub fn show(ticks: i32, unit: Unit, units: Units) -> String {
    if unit == Unit::Money {
        return money(Money::from_ticks(ticks.into()));
    }
    let Some(scale) = unit_scale(unit, units, "") else { return String::new() };
    let size = u64::from(ticks.unsigned_abs());
    let most = match unit {
        Unit::Whole => 0,
        Unit::Price => 3,
        Unit::Factor => 4,
        _ => 2,
    };
    let (mut value, mut decimals, mut power) = (0, 0, 1);
    while decimals <= most {
        value = rounded(size * scale.below * power, scale.above);
        if rounded(value * scale.above, scale.below * power) == size {
            break;
        }
        (decimals, power) = (decimals + 1, power * 10);
    }
    if decimals > most {
        decimals = most;
        while decimals > 0 && value % 10 == 0 {
            (value, decimals) = (value / 10, decimals - 1);
        }
    }
    signed(ticks < 0, decimal(value, decimals))
}

/// What stands after a number of this unit; empty for counts. Where both units are told, the one that is typed.
pub fn unit_label(unit: Unit, units: Units) -> &'static str {
    match (unit, units) {
        (Unit::Length, Units::Centimetres | Units::Both) => words::centimetres(),
        (Unit::Length, Units::Inches) => words::inches(),
        (Unit::Yarn, Units::Centimetres | Units::Both) => words::metres(),
        (Unit::Yarn, Units::Inches) => words::yards(),
        (Unit::Percent, _) => "%",
        (Unit::Factor, _) => "×",
        (Unit::Hook, _) => words::millimetres(),
        (Unit::Mass, Units::Centimetres | Units::Both) => words::grams(),
        (Unit::Mass, Units::Inches) => words::ounces(),
        (Unit::Count | Unit::Whole | Unit::Price | Unit::Money, _) => "",
    }
}

/// Something told in the units that are asked for; where both are, with the other in parentheses: `46.7 cm (18.4 in)`.
///
/// `tell` is never asked for both.
pub fn in_units(units: Units, tell: impl Fn(Units) -> String) -> String {
    match units {
        Units::Both => words::beside(&tell(Units::Centimetres), &tell(Units::Inches)),
        _ => tell(units),
    }
}

/// The same for a place that stands in parentheses already: `46.7 cm / 18.4 in`.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, either, length};
/// use hatwright_sizing::Length;
/// let head = Length::from_cm(49.8);
/// assert_eq!(either(Both, |units| length(head, units)), "49.8 cm / 19.6 in");
/// assert_eq!(either(Inches, |units| length(head, units)), "19.6 in");
/// ```
pub fn either(units: Units, tell: impl Fn(Units) -> String) -> String {
    match units {
        Units::Both => [&*tell(Units::Centimetres), " / ", &tell(Units::Inches)].concat(),
        _ => tell(units),
    }
}

/// From one figure to another: `59 to 98`, `45.7 to 51.3 cm`.
pub fn span(from: &str, to: &str) -> String {
    words::span(from, to)
}

/// A share to a tenth of a per cent: `6.3 %`.
pub fn percent(ratio: Ratio) -> String {
    with_unit(tenths(ratio.ticks().into(), 100), "%")
}

/// A factor, exact: `1.08`.
pub fn factor(ratio: Ratio) -> String {
    show(ratio.ticks(), Unit::Factor, Units::Centimetres)
}

/// A number of ticks with its unit, exact where two decimals can be: `52.5 cm`, `7 %`, `12.5`. As [`show`] does, it tells one unit, the
/// one that is typed.
pub fn amount(ticks: i32, unit: Unit, units: Units) -> String {
    with_unit(show(ticks, unit, units), unit_label(unit, units))
}

/// A number with its article, as it is read: `a 49.8 cm`, `an 8.5 in`, `an 18.5 in`; in Spanish, whose articles do not follow numbers, the
/// number alone.
///
/// ```
/// use hatwright_pattern::figures::with_article;
/// assert_eq!(["7.9 in", "8 mm", "11.5 mm", "18.5 in", "80 cm"].map(with_article).join(", "), "a 7.9 in, an 8 mm, an 11.5 mm, an 18.5 in, an 80 cm");
/// assert_eq!((with_article("1.8 oz"), with_article("118 cm")), ("a 1.8 oz".into(), "a 118 cm".into()));
/// ```
pub fn with_article(number: &str) -> String {
    if spoken() != Language::English {
        return number.to_owned();
    }
    let whole = number.split(|c: char| !c.is_ascii_digit()).next().unwrap_or_default();
    let eight = whole.starts_with('8') || whole == "11" || whole == "18";
    [if eight { "an " } else { "a " }, number].concat()
}

fn rounded(above: u64, below: u64) -> u64 {
    (above + below / 2) / below
}

fn tenths(above: i64, below: u64) -> String {
    signed(above < 0, decimal(rounded(above.unsigned_abs() * 10, below), 1))
}

fn decimal(value: u64, decimals: u32) -> String {
    let power = 10_u64.pow(decimals);
    let mut text = (value / power).to_string();
    if decimals > 0 {
        text.push_str(words::mark());
        let part = (value % power).to_string();
        text.extend(core::iter::repeat_n('0', decimals as usize - part.len()));
        text.push_str(&part);
    }
    text
}

fn signed(negative: bool, text: String) -> String {
    if negative && text.bytes().any(|b| matches!(b, b'1'..=b'9')) { ["−", &text].concat() } else { text }
}

/// A figure and what stands after it, if anything.
pub(crate) fn with_unit(figure: String, unit: &str) -> String {
    match unit {
        "" => figure,
        "%" => words::percent(&figure),
        _ => [&*figure, " ", unit].concat(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{Length, Mass, YarnLength};
    use hatwright_words::in_language;
    use proptest::prelude::*;

    const BOTH: [Units; 2] = [Units::Centimetres, Units::Inches];
    const ALL: [Unit; 10] = [
        Unit::Length,
        Unit::Yarn,
        Unit::Count,
        Unit::Whole,
        Unit::Percent,
        Unit::Factor,
        Unit::Price,
        Unit::Hook,
        Unit::Mass,
        Unit::Money,
    ];

    #[test]
    fn limits_are_rounded_to_the_safe_side() {
        let l = Length::from_ticks;
        for (ticks, units, down, up) in [
            (8_380, Units::Centimetres, "8.3 cm", "8.4 cm"),
            (8_300, Units::Centimetres, "8.3 cm", "8.3 cm"),
            (8_333, Units::Inches, "3.2 in", "3.3 in"),
            (2_540, Units::Inches, "1.0 in", "1.0 in"),
        ] {
            assert_eq!((&*length_down(l(ticks), units), &*length_up(l(ticks), units)), (down, up));
        }
        assert_eq!(lengths_apart(l(49_800), l(49_785), Units::Inches), ("19.61 in".into(), "19.60 in".into()));
        assert_eq!(lengths_apart(l(50_000), l(47_700), Units::Inches), ("19.7 in".into(), "18.8 in".into()));
    }

    #[test]
    fn signs_and_small_things() {
        assert_eq!(percent(Ratio::from_ticks(-44)), "−0.4 %");
        assert_eq!(percent(Ratio::from_ticks(-4)), "0.0 %");
        assert_eq!(length(Length::from_ticks(-1_250), Units::Centimetres), "−1.3 cm");
        assert_eq!(show(i32::MIN, Unit::Length, Units::Inches), "−845466");
        assert_eq!(show(10_825, Unit::Factor, Units::Inches), "1.0825");
        assert_eq!(show(52_996, Unit::Length, Units::Centimetres), "53");
    }

    #[test]
    fn spanish_has_a_decimal_comma_and_its_own_units() {
        in_language(Language::Spanish, || {
            let l = Length::from_ticks;
            assert_eq!(length(l(46_667), Units::Centimetres), "46,7 cm");
            assert_eq!(length(l(-46_667), Units::Both), "−46,7 cm (−18,4 pulg.)");
            assert_eq!(length_span(l(45_700), l(51_300), Units::Inches), "18,0 a 20,2 pulg.");
            assert_eq!(lengths_apart(l(49_800), l(49_785), Units::Inches), ("19,61 pulg.".into(), "19,60 pulg.".into()));
            assert_eq!(percent(Ratio::from_ticks(634)), "6,3\u{a0}%");
            assert_eq!(amount(700, Unit::Percent, Units::Centimetres), "7\u{a0}%");
            assert_eq!(factor(Ratio::of(1.08)), "1,08");
            assert_eq!(money(Money::from_ticks(450)), "4,50");
            assert_eq!(mass(Mass::from_grams(50.0), Units::Inches), "1,8 oz");
            assert_eq!(yarn_fine(YarnLength::from_metres(0.34), Units::Both), "0,3 m (0,4 yd)");
            let [about, low, high] = [79.0, 59.0, 98.0].map(YarnLength::from_metres);
            assert_eq!(yarn_about(about, low, high, Units::Both), "79 m (59 a 98), 86 yd (65 a 107)");
            assert_eq!((show(52_500, Unit::Length, Units::Both), unit_label(Unit::Length, Units::Both)), ("52,5".into(), "cm"));
        });
    }

    #[test]
    fn both_units_are_each_rounded_to_the_safe_side() {
        let l = Length::from_ticks(8_380);
        assert_eq!((&*length_down(l, Units::Both), &*length_up(l, Units::Both)), ("8.3 cm (3.2 in)", "8.4 cm (3.3 in)"));
    }

    proptest! {
        /// What is told in a language reads back, in it and in the other, as what the other tells.
        #[test]
        fn what_is_told_in_spanish_reads_back(ticks in 0..i32::MAX, unit in 0..10_usize) {
            let unit = ALL[unit];
            for units in [Units::Centimetres, Units::Inches, Units::Both] {
                let english = amount(ticks, unit, units);
                let ours = parse(&english, unit, units);
                let (spanish, theirs) = in_language(Language::Spanish, || {
                    let told = amount(ticks, unit, units);
                    let read = parse(&told, unit, units);
                    (told, read)
                });
                prop_assert_eq!(theirs, ours, "{} {}", &spanish, &english);
                prop_assert_eq!(parse(&spanish, unit, units), ours, "{}", &spanish);
                prop_assert_eq!(in_language(Language::Spanish, || parse(&english, unit, units)), ours, "{}", &english);
                // Only digits and units of more than any field holds are not read.
                prop_assert!(ours.is_ok() || ours == Err(Misread::TooLong), "{} {:?}", &english, ours);
                prop_assert!(!spanish.contains('.') || spanish.ends_with("pulg."), "{}", &spanish);
            }
        }

        #[test]
        fn typed_hundredths_come_back(hundredths in 0..200_000_u32, unit in 0..10_usize) {
            let unit = ALL[unit];
            let typed = decimal(hundredths.into(), 2);
            for units in BOTH {
                if let Ok(ticks) = parse(&typed, unit, units) {
                    prop_assert_eq!(parse(&show(ticks, unit, units), unit, units), Ok(ticks));
                }
            }
        }

        #[test]
        fn typed_thousandths_of_a_factor_come_back(thousandths in 0..100_000_u32) {
            let ticks = parse(&decimal(thousandths.into(), 3), Unit::Factor, Units::Inches).unwrap();
            prop_assert_eq!(ticks, thousandths as i32 * 10);
            prop_assert_eq!(parse(&show(ticks, Unit::Factor, Units::Inches), Unit::Factor, Units::Inches), Ok(ticks));
        }

        #[test]
        fn everything_shown_is_within_half_a_hundredth(ticks in 0..i32::MAX, unit in 0..10_usize) {
            let unit = ALL[unit];
            for units in BOTH {
                let Ok(back) = parse(&show(ticks, unit, units), unit, units) else { continue };
                let coarse = match unit {
                    Unit::Length => 13,
                    // Half a hundredth of an ounce is 14.2 ticks.
                    Unit::Mass => 15,
                    _ => 6,
                };
                prop_assert!((i64::from(back) - i64::from(ticks)).abs() <= coarse, "{} {}", back, ticks);
            }
        }
    }
}
