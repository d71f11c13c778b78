//! Figures as people type and read them: one parser and one formatter for the whole program, in whole ticks.
//!
//! No float is ever printed or parsed: a typed number becomes a fraction of integers, then ticks of the quantity's [`Unit`],
//! rounded half away from zero.

mod ages;
mod days;
mod measures;
mod money;
mod read;

pub use ages::{age, age_range, age_span};
pub use days::{date, day};
pub use measures::{ball, mass, weight_and_length};
pub use money::money;
pub use read::{Misread, parse, parse_for};

use hatwright_sizing::{Length, Money, Ratio, Unit, YarnLength};
use read::unit_scale;
use serde::{Deserialize, Serialize};

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

/// What stands after a number of this unit; empty for counts.
pub const fn unit_label(unit: Unit, units: Units) -> &'static str {
    match (unit, units) {
        (Unit::Length, Units::Centimetres | Units::Both) => "cm",
        (Unit::Length, Units::Inches) => "in",
        (Unit::Yarn, Units::Centimetres | Units::Both) => "m",
        (Unit::Yarn, Units::Inches) => "yd",
        (Unit::Percent, _) => "%",
        (Unit::Factor, _) => "×",
        (Unit::Hook, _) => "mm",
        (Unit::Mass, Units::Centimetres | Units::Both) => "g",
        (Unit::Mass, Units::Inches) => "oz",
        (Unit::Count | Unit::Whole | Unit::Price | Unit::Money, _) => "",
    }
}

/// A length to a tenth, with its unit: `46.7 cm` or `18.4 in`.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, length};
/// use hatwright_sizing::Length;
/// assert_eq!(length(Length::from_ticks(46_667), Centimetres), "46.7 cm");
/// assert_eq!(length(Length::from_ticks(46_667), Inches), "18.4 in");
/// ```
pub fn length(l: Length, units: Units) -> String {
    with_unit(length_bare(l, units), unit_label(Unit::Length, units))
}

/// A length to a tenth, without its unit.
pub fn length_bare(l: Length, units: Units) -> String {
    tenths(l.ticks().into(), if units == Units::Inches { 2540 } else { 1000 })
}

/// A length to a tenth that is no longer than it, with its unit: 8.38 cm is `8.3 cm`.
pub fn length_down(l: Length, units: Units) -> String {
    let tenth = tenth(units);
    length(Length::from_ticks(l.ticks().div_euclid(tenth) * tenth), units)
}

/// A length to a tenth that is no shorter than it, with its unit: 7.81 cm is `7.9 cm`.
pub fn length_up(l: Length, units: Units) -> String {
    let tenth = tenth(units);
    let short = i32::from(l.ticks().rem_euclid(tenth) > 0);
    length(Length::from_ticks((l.ticks().div_euclid(tenth) + short) * tenth), units)
}

const fn tenth(units: Units) -> i32 {
    match units {
        Units::Centimetres | Units::Both => 100,
        Units::Inches => 254,
    }
}

/// Two unlike lengths with their units, in the fewest decimals, 1 to 3, that do not make them look alike.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, lengths_apart};
/// use hatwright_sizing::Length;
/// let (head, reach) = lengths_apart(Length::from_cm(49.8), Length::from_cm(49.78), Centimetres);
/// assert_eq!((&*head, &*reach), ("49.80 cm", "49.78 cm"));
/// ```
pub fn lengths_apart(a: Length, b: Length, units: Units) -> (String, String) {
    let told = |l: Length, decimals: u32| {
        let size = u64::from(l.ticks().unsigned_abs()) * 10_u64.pow(decimals);
        let below = tenth(units).unsigned_abs() * 10;
        let text = signed(l.ticks() < 0, decimal(rounded(size, below.into()), decimals));
        with_unit(text, unit_label(Unit::Length, units))
    };
    let enough = (1..3).find(|decimals| told(a, *decimals) != told(b, *decimals)).unwrap_or(3);
    (told(a, enough), told(b, enough))
}

/// Two lengths with one unit: `44.8 to 48.7 cm`.
pub fn length_span(from: Length, to: Length, units: Units) -> String {
    let mut text = length_bare(from, units);
    text.push_str(" to ");
    text.push_str(&length(to, units));
    text
}

/// A length of yarn in whole metres or yards: `95 m` or `104 yd`.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, yarn};
/// use hatwright_sizing::YarnLength;
/// assert_eq!(yarn(YarnLength::from_metres(95.2), Inches), "104 yd");
/// ```
pub fn yarn(y: YarnLength, units: Units) -> String {
    with_unit(yarn_bare(y, units), unit_label(Unit::Yarn, units))
}

/// The same, in tenths below 10: `0.3 m`, so that small parts have a length at all.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, yarn_fine};
/// use hatwright_sizing::YarnLength;
/// let of = |metres| yarn_fine(YarnLength::from_metres(metres), Centimetres);
/// assert_eq!((&*of(0.34), &*of(9.94), &*of(9.96)), ("0.3 m", "9.9 m", "10 m"));
/// ```
pub fn yarn_fine(y: YarnLength, units: Units) -> String {
    let (above, below) = if units == Units::Inches { (10, 9144) } else { (1, 1000) };
    let size = i64::try_from(y.millimetres().unsigned_abs().min(u64::from(u32::MAX))).unwrap_or(0);
    // What would read 10.0 is told in whole ones.
    if size * above * 20 < below * 199 {
        with_unit(tenths(size * above, below as u64), unit_label(Unit::Yarn, units))
    } else {
        yarn(y, units)
    }
}

/// A length of yarn in whole metres or yards, without its unit.
pub fn yarn_bare(y: YarnLength, units: Units) -> String {
    let (above, below) = if units == Units::Inches { (10, 9144) } else { (1, 1000) };
    let size = y.millimetres().unsigned_abs().min(u64::from(u32::MAX));
    rounded(size * above, below).to_string()
}

/// A share to a tenth of a per cent: `6.3 %`.
pub fn percent(ratio: Ratio) -> String {
    with_unit(tenths(ratio.ticks().into(), 100), "%")
}

/// A factor, exact: `1.08`.
pub fn factor(ratio: Ratio) -> String {
    show(ratio.ticks(), Unit::Factor, Units::Centimetres)
}

/// A number of ticks with its unit, exact where two decimals can be: `52.5 cm`, `7 %`, `12.5`.
pub fn amount(ticks: i32, unit: Unit, units: Units) -> String {
    with_unit(show(ticks, unit, units), unit_label(unit, units))
}

/// `1 row`, `2 rows`.
pub fn plural(count: u32, noun: &str) -> String {
    let mut text = with_unit(count.to_string(), noun);
    if count != 1 {
        text.push('s');
    }
    text
}

/// A number with its article, as it is read: `a 49.8 cm`, `an 8.5 in`, `an 18.5 in`.
///
/// ```
/// use hatwright_pattern::figures::with_article;
/// assert_eq!(["7.9 in", "8 mm", "11.5 mm", "18.5 in", "80 cm"].map(with_article).join(", "), "a 7.9 in, an 8 mm, an 11.5 mm, an 18.5 in, an 80 cm");
/// assert_eq!((with_article("1.8 oz"), with_article("118 cm")), ("a 1.8 oz".into(), "a 118 cm".into()));
/// ```
pub fn with_article(number: &str) -> String {
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
        text.push('.');
        let part = (value % power).to_string();
        text.extend(core::iter::repeat_n('0', decimals as usize - part.len()));
        text.push_str(&part);
    }
    text
}

fn signed(negative: bool, text: String) -> String {
    if negative && text.bytes().any(|b| matches!(b, b'1'..=b'9')) { ["−", &text].concat() } else { text }
}

fn with_unit(mut text: String, unit: &str) -> String {
    if !unit.is_empty() {
        text.push(' ');
        text.push_str(unit);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;
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

    proptest! {
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
