//! Lengths of fabric and heads, to a tenth of a centimetre or of an inch.

use super::{Units, decimal, in_units, rounded, signed, tenths, unit_label, with_unit};
use hatwright_sizing::{Length, Unit};
use hatwright_words::figures as words;

/// A length to a tenth, with its unit: `46.7 cm` or `18.4 in`.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, length};
/// use hatwright_sizing::Length;
/// assert_eq!(length(Length::from_ticks(46_667), Centimetres), "46.7 cm");
/// assert_eq!(length(Length::from_ticks(46_667), Inches), "18.4 in");
/// assert_eq!(length(Length::from_ticks(46_667), Both), "46.7 cm (18.4 in)");
/// ```
pub fn length(l: Length, units: Units) -> String {
    in_units(units, |units| with_unit(length_bare(l, units), unit_label(Unit::Length, units)))
}

/// A length to a tenth, without its unit; in centimetres where both are told.
fn length_bare(l: Length, units: Units) -> String {
    tenths(l.ticks().into(), if units == Units::Inches { 2540 } else { 1000 })
}

/// A length to a tenth that is no longer than it, with its unit: 8.38 cm is `8.3 cm`.
pub fn length_down(l: Length, units: Units) -> String {
    in_units(units, |units| {
        let tenth = tenth(units);
        length(Length::from_ticks(l.ticks().div_euclid(tenth) * tenth), units)
    })
}

/// A length to a tenth that is no shorter than it, with its unit: 7.81 cm is `7.9 cm`.
pub fn length_up(l: Length, units: Units) -> String {
    in_units(units, |units| {
        let tenth = tenth(units);
        let short = i32::from(l.ticks().rem_euclid(tenth) > 0);
        length(Length::from_ticks((l.ticks().div_euclid(tenth) + short) * tenth), units)
    })
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
/// let told = |units| lengths_apart(Length::from_cm(49.8), Length::from_cm(49.78), units);
/// assert_eq!(told(Centimetres), ("49.80 cm".into(), "49.78 cm".into()));
/// assert_eq!(told(Both), ("49.80 cm (19.61 in)".into(), "49.78 cm (19.60 in)".into()));
/// ```
pub fn lengths_apart(a: Length, b: Length, units: Units) -> (String, String) {
    let told = |l: Length, decimals: u32, units: Units| {
        let size = u64::from(l.ticks().unsigned_abs()) * 10_u64.pow(decimals);
        let below = tenth(units).unsigned_abs() * 10;
        let text = signed(l.ticks() < 0, decimal(rounded(size, below.into()), decimals));
        with_unit(text, unit_label(Unit::Length, units))
    };
    let enough = |units: Units| (1..3).find(|decimals| told(a, *decimals, units) != told(b, *decimals, units)).unwrap_or(3);
    (in_units(units, |units| told(a, enough(units), units)), in_units(units, |units| told(b, enough(units), units)))
}

/// Two lengths with one unit: `44.8 to 48.7 cm`.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, length_span};
/// use hatwright_sizing::Length;
/// let told = |units| length_span(Length::from_cm(45.7), Length::from_cm(51.3), units);
/// assert_eq!(told(Centimetres), "45.7 to 51.3 cm");
/// assert_eq!(told(Both), "45.7 to 51.3 cm (18.0 to 20.2 in)");
/// ```
pub fn length_span(from: Length, to: Length, units: Units) -> String {
    in_units(units, |units| words::span(&length_bare(from, units), &length(to, units)))
}
