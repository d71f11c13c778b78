//! What is read and refused, in every language.

use super::*;
use hatwright_words::{Language, in_language};
use proptest::prelude::*;

const BOTH: [Units; 2] = [Units::Centimetres, Units::Inches];
const ALL: [Unit; 7] = [Unit::Length, Unit::Yarn, Unit::Count, Unit::Whole, Unit::Percent, Unit::Factor, Unit::Price];

#[test]
fn reads_what_people_type() {
    use Unit as U;
    use Units::{Centimetres as Cm, Inches as In};
    for (text, unit, units, ticks) in [
        ("52,5", U::Length, Cm, 52_500),
        ("  52.5\u{a0}", U::Length, Cm, 52_500),
        ("52 cm", U::Length, In, 52_000),
        ("20\"", U::Length, Cm, 50_800),
        ("20 IN", U::Length, In, 50_800),
        ("1.3 m", U::Length, In, 130_000),
        ("2 yd", U::Length, Cm, 182_880),
        ("8 mm", U::Length, Cm, 800),
        ("12½", U::Count, Cm, 1_250),
        ("12 ½", U::Count, Cm, 1_250),
        ("3 1/2", U::Length, In, 8_890),
        ("3/4", U::Length, In, 1_905),
        ("7 %", U::Percent, Cm, 700),
        ("7.5", U::Percent, Cm, 750),
        ("1.10", U::Factor, Cm, 11_000),
        ("10.0", U::Whole, Cm, 10),
        ("87.5", U::Yarn, In, 8_001),
        ("80 m", U::Yarn, In, 8_000),
        (".5", U::Length, Cm, 500),
        ("5,", U::Length, Cm, 5_000),
        ("0052.5000000000000", U::Length, Cm, 52_500),
        ("0.000000000", U::Length, Cm, 0),
    ] {
        assert_eq!(parse(text, unit, units), Ok(ticks), "{text}");
    }
}

/// Whichever language is spoken; an abbreviation may have its point, an accent may be left out.
#[test]
fn reads_units_and_nouns_of_every_language() {
    use Quantity as Q;
    for (q, text, ticks) in [
        (Q::HeadGirth, "52,5 centímetros", 52_500),
        (Q::HeadGirth, "525 MILÍMETROS", 52_500),
        (Q::HeadGirth, "20 pulg.", 50_800),
        (Q::HeadGirth, "20,5 Pulgadas", 52_070),
        (Q::HeadGirth, "20 in.", 50_800),
        (Q::Fold, "4 cm.", 4_000),
        (Q::BallYarn, "100 yardas", 9_144),
        (Q::BallYarn, "80 metros", 8_000),
        (Q::BallGrams, "1¾ onzas", 4_961),
        (Q::BallGrams, "50 gramos", 5_000),
        (Q::BallGrams, "1 libra", 45_359),
        (Q::AgeYears, "18 meses", 150),
        (Q::AgeYears, "1 AÑO", 100),
        (Q::AgeMonths, "2 años", 2_400),
        (Q::AgeWeeks, "10 días", 143),
        (Q::AgeWeeks, "10 dias", 143),
        (Q::AgeMonths, "1 mes", 100),
        (Q::AgeYears, "26 semanas", 50),
        (Q::SwatchStitches, "12½ puntos", 1_250),
        (Q::StripeRounds, "2 vueltas", 2),
        (Q::BandSwatchRows, "12 hileras", 1_200),
        (Q::Wedges, "8 gajos", 8),
        (Q::BallsOwned, "1,5 ovillos", 150),
        (Q::BodyStretch, "1,1 veces", 11_000),
    ] {
        for language in Language::ALL {
            let read = in_language(language, || parse_for(q, text, Units::Both));
            assert_eq!(read, Ok(ticks), "{q:?} {text}");
        }
    }
    for (q, text, why) in [
        (Q::BallYarn, "50 gramos", Misread::Weight),
        (Q::BallGrams, "80 metros", Misread::Length),
        (Q::BallYarn, "50 gramos = 80 metros", Misread::Both),
        (Q::SwatchStitches, "12 hileras", Misread::NotANumber),
        (Q::HeadGirth, ".", Misread::NotANumber),
        (Q::HeadGirth, "20 pulg..", Misread::NotANumber),
    ] {
        assert_eq!(parse_for(q, text, Units::Centimetres), Err(why), "{q:?} {text}");
    }
}

#[test]
fn reads_the_nouns_of_a_field() {
    use Quantity as Q;
    for (q, text, ticks) in [
        (Q::AgeYears, "18 months", 150),
        (Q::AgeYears, "1 Year", 100),
        (Q::AgeYears, "26 weeks", 50),
        (Q::AgeMonths, "2 years", 2_400),
        (Q::AgeMonths, "1½ years", 1_800),
        (Q::AgeMonths, "1 month", 100),
        (Q::AgeMonths, "61 days", 200),
        (Q::AgeWeeks, "1 week", 100),
        (Q::AgeWeeks, "10 days", 143),
        (Q::AgeWeeks, "1 day", 14),
        (Q::AgeWeeks, "6 months", 2_609),
        (Q::AgeWeeks, "6", 600),
        (Q::SwatchStitches, "12 ½ sts", 1_250),
        (Q::BandSwatchStitches, "12 stitches", 1_200),
        (Q::BandHeight, "1 st", 1),
        (Q::Gather, "56 stitch", 56),
        (Q::SwatchRounds, "15 rnds", 1_500),
        (Q::StripeRounds, "1 round", 1),
        (Q::BandSwatchRows, "12 rows", 1_200),
        (Q::StripeRows, "2 row", 2),
        (Q::Wedges, "8 wedges", 8),
        (Q::Wedges, "8 wedge", 8),
        (Q::Ease, "7 %", 700),
        (Q::BodyStretch, "1.1 times", 11_000),
        (Q::BandStretch, "1.35 x", 13_500),
        (Q::Fold, "42 mm", 4_200),
    ] {
        assert_eq!(parse_for(q, text, Units::Centimetres), Ok(ticks), "{q:?} {text}");
    }
}

/// Common practice of the trade, from memory: 57 cm is 7 1/8 in the US and 7 in the UK, 58 cm 7 1/4 and 7 1/8, 60 cm 7 1/2 and 7 3/8.
#[test]
fn reads_a_hat_size_as_a_girth() {
    for (text, ticks) in [
        ("7 1/8 us", 56_855),
        ("7 UK", 56_855),
        ("us 7¼", 57_852),
        ("US 7.25", 57_852),
        ("us7 1/4", 57_852),
        ("7 1/8 uk", 57_852),
        ("  Uk  7⅛ ", 57_852),
        ("7 1/2 US", 59_847),
        ("7 3/8 UK", 59_847),
        ("6 us", 47_878),
    ] {
        for units in BOTH {
            assert_eq!(parse_for(Quantity::HeadGirth, text, units), Ok(ticks), "{text}");
        }
    }
    let labels = |ticks| hatwright_sizing::hat_labels(hatwright_sizing::Length::from_ticks(ticks));
    for eighths in 40..72_u32 {
        let typed = [&*eighths.to_string(), "/8"].concat();
        let us = parse_for(Quantity::HeadGirth, &[&*typed, " us"].concat(), Units::Inches).unwrap();
        let uk = parse_for(Quantity::HeadGirth, &["uk ", &*typed].concat(), Units::Inches).unwrap();
        assert_eq!((labels(us).us_eighths, labels(uk).uk_eighths), (eighths, eighths));
    }
}

#[test]
fn a_number_without_us_or_uk_is_a_girth_as_before() {
    use Misread as M;
    let girth = |text: &str, units| parse_for(Quantity::HeadGirth, text, units);
    assert_eq!(girth("7 1/4", Units::Centimetres), Ok(7_250));
    assert_eq!(girth("22 7/8", Units::Inches), Ok(58_103));
    assert_eq!(girth("22½", Units::Inches), Ok(57_150));
    assert_eq!(girth("58", Units::Centimetres), Ok(58_000));
    assert_eq!(girth("22 in", Units::Centimetres), Ok(55_880));
    for (text, why) in [
        ("us", M::Empty),
        ("uk", M::Empty),
        ("u", M::NotANumber),
        ("7 1/4 eu", M::NotANumber),
        ("us 7 uk", M::NotANumber),
        ("7 in us", M::NotANumber),
        ("-7 us", M::Negative),
        ("us 7.1.4", M::TwoMarks),
        ("us 999", M::TooLong),
        ("½½", M::NotANumber),
        ("é", M::NotANumber),
    ] {
        assert_eq!(girth(text, Units::Centimetres), Err(why), "{text}");
    }
    assert_eq!(parse_for(Quantity::Fold, "7 us", Units::Centimetres), Err(M::NotANumber));
}

#[test]
fn refuses_the_nouns_of_another_field() {
    use Quantity as Q;
    for (q, text) in [
        (Q::AgeYears, "18 sts"),
        (Q::AgeYears, "18 monthss"),
        (Q::AgeYears, "s"),
        (Q::SwatchStitches, "12 rows"),
        (Q::SwatchRounds, "12 rows"),
        (Q::StripeRows, "2 rounds"),
        (Q::StripeRows, "2 weeks"),
        (Q::BandHeight, "8 cm"),
        (Q::Wedges, "8 years"),
        (Q::HeadGirth, "50 st"),
        (Q::Ease, "7 rows"),
    ] {
        assert_eq!(parse_for(q, text, Units::Centimetres), Err(Misread::NotANumber), "{q:?} {text}");
    }
    assert_eq!(parse("12 st", Unit::Whole, Units::Centimetres), Err(Misread::NotANumber));
    let long = parse_for(Q::AgeWeeks, "999999.999999999 years", Units::Centimetres);
    assert_eq!(long, Err(Misread::TooLong));
}

#[test]
fn says_why_it_cannot_read() {
    use Misread as M;
    for (text, unit, why) in [
        ("", Unit::Length, M::Empty),
        (" \t", Unit::Length, M::Empty),
        ("abc", Unit::Length, M::NotANumber),
        ("cm", Unit::Length, M::NotANumber),
        ("5 2", Unit::Length, M::NotANumber),
        ("52 kg", Unit::Length, M::NotANumber),
        ("1/0", Unit::Length, M::NotANumber),
        ("1/", Unit::Length, M::NotANumber),
        ("/", Unit::Length, M::NotANumber),
        (".", Unit::Length, M::NotANumber),
        ("NaN", Unit::Length, M::NotANumber),
        ("1e9", Unit::Length, M::NotANumber),
        ("1.234,5", Unit::Length, M::TwoMarks),
        ("1.2.3", Unit::Length, M::TwoMarks),
        ("-4", Unit::Length, M::Negative),
        ("−4 cm", Unit::Length, M::Negative),
        ("9999999", Unit::Length, M::TooLong),
        ("0.1234567891", Unit::Length, M::TooLong),
        ("999999 in", Unit::Length, M::TooLong),
        ("10.5", Unit::Whole, M::NotWhole),
        ("10½", Unit::Whole, M::NotWhole),
    ] {
        assert_eq!(parse(text, unit, Units::Centimetres), Err(why), "{text}");
    }
}

proptest! {
    #[test]
    fn any_text_is_read_or_refused(text in "\\PC{0,70}", unit in 0..7_usize) {
        for units in BOTH {
            let _ = parse(&text, ALL[unit], units);
        }
    }

    #[test]
    fn any_hat_size_is_read_or_refused(text in "(us|UK)?\\PC{0,20}(us|UK)?") {
        for units in BOTH {
            let _ = parse_for(Quantity::HeadGirth, &text, units);
        }
    }

    #[test]
    fn any_age_is_read_or_refused(number in "[0-9]{0,7}[.,]?[0-9]{0,10}", noun in "( ?(day|week|month|year)s?)?") {
        for q in [Quantity::AgeWeeks, Quantity::AgeMonths, Quantity::AgeYears] {
            let _ = parse_for(q, &[&*number, &noun].concat(), Units::Inches);
        }
    }

    #[test]
    fn any_near_number_is_read_or_refused(text in "[-−+]?[0-9./, ½⅓]{0,24}( ?cm| ?in|\"| ?%| ?yd)?", unit in 0..7_usize) {
        for units in BOTH {
            let _ = parse(&text, ALL[unit], units);
        }
    }
}
