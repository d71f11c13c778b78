//! Reading what a person types into a field.

use super::Units;
use super::measures::of_another_kind;
use super::money::without_currency;
use super::suffix::{Fraction, noun_scale, unit_scale};
use hatwright_sizing::{Quantity, Unit};

/// Why a typed text is not a number for its field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Misread {
    /// Nothing was typed.
    Empty,
    /// Letters, signs or a unit that does not belong here.
    NotANumber,
    /// More than one decimal mark, as in `1.234,5`: which one is meant cannot be told.
    TwoMarks,
    /// More digits than any hat has.
    TooLong,
    /// Less than zero.
    Negative,
    /// A fraction where only whole things can be counted.
    NotWhole,
    /// A weight where something else is asked for, as in `50 g` of metres.
    Weight,
    /// A length where something else is asked for, as in `80 m` of grams.
    Length,
    /// A weight and a length at once, as a ball's band tells them: `50 g / 80 m`.
    Both,
}

/// Reads what is typed into a quantity's field, into ticks of its row.
///
/// As [`parse`] does; the girth of a head may be told as a hat size, `7 1/4 US` or `UK 7⅛`: a number without either is a girth. A noun
/// that the quantity counts may follow too: `12 sts` in a field of stitches, `18 months` in any of the three
/// fields of an age, whatever that field counts in. Years have 365.25 days and 12 months.
///
/// An amount of money may have a sign or a code of up to three letters on either side, which is passed over: `€ 4.50`, `4,50 kr`.
///
/// # Errors
/// A [`Misread`]; [`Misread::NotANumber`] for any other noun. A weight in a field of yarn, a length in a field of weights, and both at once
/// are told as that. Ranges are not checked here.
///
/// ```
/// use hatwright_pattern::figures::{Misread, Units::*, parse_for};
/// use hatwright_sizing::Quantity::*;
/// assert_eq!(parse_for(AgeYears, "18 months", Centimetres), Ok(1_50));
/// assert_eq!(parse_for(AgeMonths, "2 years", Centimetres), Ok(24_00));
/// assert_eq!(parse_for(BandHeight, "1 stitch", Centimetres), Ok(1));
/// assert_eq!(parse_for(BandHeight, "4 rows", Centimetres), Err(Misread::NotANumber));
/// assert_eq!(parse_for(HeadGirth, "7 1/4 US", Centimetres), Ok(57_852));
/// assert_eq!(parse_for(BallGrams, "1¾ oz", Centimetres), Ok(49_61));
/// assert_eq!(parse_for(BallPrice, "€ 4,50", Centimetres), Ok(4_50));
/// assert_eq!(parse_for(BallYarn, "50 g", Centimetres), Err(Misread::Weight));
/// ```
pub fn parse_for(q: Quantity, text: &str, units: Units) -> Result<i32, Misread> {
    if q == Quantity::HeadGirth
        && let Some((size, eighths)) = hat_size(text)
    {
        return hat_size_girth(size, eighths);
    }
    let unit = q.row().unit;
    let mut bare = text;
    if unit == Unit::Money {
        // Letters may be a currency's, but not those of another measure.
        if let Some(why) = of_another_kind(q, text) {
            return Err(why);
        }
        bare = without_currency(text);
    }
    read(bare, unit, &|suffix| unit_scale(unit, units, suffix).or_else(|| noun_scale(q, suffix)))
        .map_err(|why| of_another_kind(q, text).filter(|_| why == Misread::NotANumber).unwrap_or(why))
}

/// Reads a typed number into ticks of `unit`.
///
/// A point or a comma is the decimal mark; `12½`, `3 1/2` and `3/4` are read; a unit may follow and then counts, whatever
/// `units` says: `52 cm` in a field of inches is 52 cm. Units are read in every language, whichever is spoken.
///
/// # Errors
/// A [`Misread`]. Ranges are not checked here.
///
/// ```
/// use hatwright_pattern::figures::{Units::*, parse};
/// use hatwright_sizing::Unit;
/// assert_eq!(parse(" 52,5 ", Unit::Length, Centimetres), Ok(52_500));
/// assert_eq!(parse("20 1/2", Unit::Length, Inches), Ok(52_070));
/// ```
pub fn parse(text: &str, unit: Unit, units: Units) -> Result<i32, Misread> {
    read(text, unit, &|suffix| unit_scale(unit, units, suffix))
}

/// What stands before or after `us` or `uk`, and by how many eighths such a size is short of the diameter in inches.
fn hat_size(text: &str) -> Option<(&str, u64)> {
    let text = text.trim();
    // Slicing by bytes is refused where a letter of more than one begins or ends there.
    let ends = |part: Option<&str>| match part {
        Some(p) if p.eq_ignore_ascii_case("us") => Some(0),
        Some(p) if p.eq_ignore_ascii_case("uk") => Some(1),
        _ => None,
    };
    if let Some(eighths) = ends(text.get(..2)) {
        return Some((&text[2..], eighths));
    }
    let at = text.len().checked_sub(2)?;
    ends(text.get(at..)).map(|eighths| (&text[..at], eighths))
}

/// Girth in ticks of a hat size, its diameter in inches (common practice of the trade, no source): π × 2540 ticks to the inch.
fn hat_size_girth(size: &str, eighths: u64) -> Result<i32, Misread> {
    /// Thousandths of a tick around an inch of diameter.
    const AROUND: u64 = 7_979_645;
    let scale = |suffix: &str| suffix.is_empty().then_some(Fraction { above: AROUND, below: 1 });
    let thousandths = i64::from(read(size, Unit::Length, &scale)?) + (AROUND * eighths / 8) as i64;
    i32::try_from((thousandths + 500) / 1000).map_err(|_| Misread::TooLong)
}

fn read(text: &str, unit: Unit, scale: &dyn Fn(&str) -> Option<Fraction>) -> Result<i32, Misread> {
    let text = text.trim();
    // An abbreviation may end in a point of its own: `20 pulg.`
    let text = text.strip_suffix('.').filter(|bare| bare.ends_with(char::is_alphabetic)).unwrap_or(text);
    if text.is_empty() {
        return Err(Misread::Empty);
    }
    if text.len() > 60 {
        return Err(Misread::TooLong);
    }
    let negative = text.starts_with(['-', '−']);
    let text = text.trim_start_matches(['-', '−', '+']).trim_start();
    let end = text.char_indices().filter(|(_, c)| belongs_to_number(*c)).map(|(i, c)| i + c.len_utf8()).next_back();
    let (number, suffix) = text.split_at(end.unwrap_or(0));
    let scale = scale(&lower(suffix.trim())).ok_or(Misread::NotANumber)?;
    let value = read_number(number.trim())?;
    if negative {
        return Err(Misread::Negative);
    }
    // Only an age of many digits, told in another unit than its field's, can be too much for this.
    let above = value.above.checked_mul(scale.above).ok_or(Misread::TooLong)?;
    let below = value.below * scale.below;
    if unit == Unit::Whole && above % below != 0 {
        return Err(Misread::NotWhole);
    }
    i32::try_from(above / below + u64::from(above % below >= below.div_ceil(2))).map_err(|_| Misread::TooLong)
}

/// In small letters, of those that the units have; the tables for all the others weigh more than they are worth.
fn lower(text: &str) -> String {
    let small = |c: char| match c {
        'Ñ' => 'ñ',
        'Í' => 'í',
        c => c.to_ascii_lowercase(),
    };
    text.chars().map(small).collect()
}

const VULGAR: [(char, u64, u64); 9] =
    [('½', 1, 2), ('¼', 1, 4), ('¾', 3, 4), ('⅓', 1, 3), ('⅔', 2, 3), ('⅛', 1, 8), ('⅜', 3, 8), ('⅝', 5, 8), ('⅞', 7, 8)];

fn belongs_to_number(c: char) -> bool {
    begins_number(c) || matches!(c, '.' | ',' | '/')
}

pub(super) fn begins_number(c: char) -> bool {
    c.is_ascii_digit() || VULGAR.iter().any(|v| v.0 == c)
}

/// At most 6 digits before the mark and 9 after it, so that no product leaves 64 bits.
fn read_number(text: &str) -> Result<Fraction, Misread> {
    let last = text.chars().last().ok_or(Misread::NotANumber)?;
    if let Some(&(_, above, below)) = VULGAR.iter().find(|v| v.0 == last) {
        return mixed(text[..text.len() - last.len_utf8()].trim_end(), above, below);
    }
    if let Some((left, below)) = text.split_once('/') {
        let (whole, above) = left.rsplit_once(char::is_whitespace).unwrap_or(("", left));
        if above.is_empty() || below.is_empty() {
            return Err(Misread::NotANumber);
        }
        return mixed(whole.trim_end(), whole_number(above, 3)?, whole_number(below, 3)?);
    }
    if text.chars().any(|c| !c.is_ascii_digit() && c != '.' && c != ',') || !text.chars().any(|c| c.is_ascii_digit()) {
        return Err(Misread::NotANumber);
    }
    let (whole, part) = text.split_once(['.', ',']).unwrap_or((text, ""));
    if part.contains(['.', ',']) {
        return Err(Misread::TwoMarks);
    }
    let part = part.trim_end_matches('0');
    let below = 10_u64.pow(part.len().min(9) as u32);
    Ok(Fraction { above: whole_number(whole, 6)? * below + digits(part, 9)?, below })
}

fn mixed(whole: &str, above: u64, below: u64) -> Result<Fraction, Misread> {
    if below == 0 {
        return Err(Misread::NotANumber);
    }
    Ok(Fraction { above: whole_number(whole, 6)? * below + above, below })
}

/// A run of at most so many digits, zeros before them left out of the count; nothing is zero.
fn whole_number(text: &str, most: usize) -> Result<u64, Misread> {
    digits(text.trim_start_matches('0'), most)
}

/// A run of at most so many digits; nothing is zero.
fn digits(text: &str, most: usize) -> Result<u64, Misread> {
    if text.bytes().any(|b| !b.is_ascii_digit()) {
        return Err(Misread::NotANumber);
    }
    if text.len() > most {
        return Err(Misread::TooLong);
    }
    Ok(text.bytes().fold(0, |n, b| n * 10 + u64::from(b - b'0')))
}

#[cfg(test)]
mod tests;
