//! Lengths of yarn, in metres or yards.

use super::{Units, in_units, rounded, tenths, unit_label, with_unit};
use hatwright_sizing::{Unit, YarnLength};
use hatwright_words::figures as words;

/// A length of yarn in whole metres or yards: `95 m` or `104 yd`.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, yarn};
/// use hatwright_sizing::YarnLength;
/// assert_eq!(yarn(YarnLength::from_metres(95.2), Inches), "104 yd");
/// assert_eq!(yarn(YarnLength::from_metres(79.0), Both), "79 m (86 yd)");
/// ```
pub fn yarn(y: YarnLength, units: Units) -> String {
    in_units(units, |units| with_unit(yarn_bare(y, units), unit_label(Unit::Yarn, units)))
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
    let size = i64::try_from(y.millimetres().unsigned_abs().min(u64::from(u32::MAX))).unwrap_or(0);
    in_units(units, |units| {
        let (above, below) = scale(units);
        // What would read 10.0 is told in whole ones.
        if size * above * 20 < below * 199 {
            with_unit(tenths(size * above, below as u64), unit_label(Unit::Yarn, units))
        } else {
            yarn(y, units)
        }
    })
}

/// A length of yarn in whole metres or yards, without its unit; in metres where both are told.
pub fn yarn_bare(y: YarnLength, units: Units) -> String {
    let (above, below) = scale(units);
    let size = y.millimetres().unsigned_abs().min(u64::from(u32::MAX));
    rounded(size * above as u64, below as u64).to_string()
}

/// Two lengths of yarn with one unit: `59 to 98 m`.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, yarn_span};
/// use hatwright_sizing::YarnLength;
/// let told = |units| yarn_span(YarnLength::from_metres(59.0), YarnLength::from_metres(98.0), units);
/// assert_eq!((&*told(Inches), &*told(Both)), ("65 to 107 yd", "59 to 98 m (65 to 107 yd)"));
/// ```
pub fn yarn_span(low: YarnLength, high: YarnLength, units: Units) -> String {
    in_units(units, |units| words::span(&yarn_bare(low, units), &yarn(high, units)))
}

/// A length of yarn and the range in which it lies: `79 m (59 to 98)`.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, yarn_about};
/// use hatwright_sizing::YarnLength;
/// let [about, low, high] = [79.0, 59.0, 98.0].map(YarnLength::from_metres);
/// assert_eq!(yarn_about(about, low, high, Centimetres), "79 m (59 to 98)");
/// assert_eq!(yarn_about(about, low, high, Both), "79 m (59 to 98), 86 yd (65 to 107)");
/// ```
pub fn yarn_about(about: YarnLength, low: YarnLength, high: YarnLength, units: Units) -> String {
    let told = |units| words::beside(&yarn(about, units), &words::span(&yarn_bare(low, units), &yarn_bare(high, units)));
    match units {
        Units::Both => [&*told(Units::Centimetres), ", ", &told(Units::Inches)].concat(),
        _ => told(units),
    }
}

/// What a millimetre of yarn is multiplied and divided by.
const fn scale(units: Units) -> (i64, i64) {
    match units {
        Units::Centimetres | Units::Both => (1, 1000),
        Units::Inches => (10, 9144),
    }
}
