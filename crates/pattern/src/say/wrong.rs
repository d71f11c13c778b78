//! What is said beside a field whose text cannot be used.

use crate::figures::{self, Misread, Units, amount, length, show, unit_label, weight_and_length, with_unit};
use hatwright_sizing::{Length, Quantity, Unit};
use hatwright_words::wrong as words;

/// What is wrong with a typed text that is no number. Long texts are quoted in part.
pub fn misread(q: Quantity, why: &Misread, typed: &str, units: Units) -> String {
    let units = units.typed();
    let row = q.row();
    let example = show(row.usual, row.unit, units);
    let quoted = quote(typed);
    match why {
        Misread::Empty => words::empty(&example),
        Misread::NotANumber => words::no_number(&quoted, &example),
        Misread::TwoMarks => words::two_marks(&quoted),
        Misread::TooLong => words::too_long(&quoted, &range(q, units)),
        Misread::Negative => words::negative(&quoted, &range(q, units)),
        Misread::Weight => elsewhere(words::weight(&quoted, wants(q), &example_of(q, units)), q),
        Misread::Length => elsewhere(words::length(&quoted, wants(q), &example_of(q, units)), q),
        Misread::Both => both(q, typed, &quoted, units),
        Misread::NotWhole => words::not_whole(&quoted, &example),
    }
}

/// What belongs into a field that a weight or a length was typed into.
fn wants(q: Quantity) -> &'static str {
    use Quantity as Q;
    match q {
        Q::BallYarn | Q::InsteadYarn => words::wants_ball_yarn(),
        Q::BallGrams | Q::InsteadGrams => words::wants_ball_grams(),
        Q::BallPrice => words::wants_ball_price(),
        Q::UnravelledLength => words::wants_unravelled_length(),
        Q::WeighedGrams => words::wants_weighed_grams(),
        Q::ScaleStep => words::wants_scale_step(),
        Q::HatGrams => words::wants_hat_grams(),
        _ => words::wants_another(),
    }
}

/// Adds where the other half of a ball's band goes.
fn elsewhere(text: String, q: Quantity) -> String {
    use Quantity as Q;
    let other = match q {
        Q::BallYarn | Q::InsteadYarn => words::weight_elsewhere(),
        Q::BallGrams | Q::InsteadGrams => words::length_elsewhere(),
        _ => return text,
    };
    [&*text, " ", other].concat()
}

fn example_of(q: Quantity, units: Units) -> String {
    let row = q.row();
    // 87.5 yd and 1.76 oz would be odd examples.
    match (row.unit, units) {
        (Unit::Yarn, Units::Inches) => with_unit("90".into(), unit_label(Unit::Yarn, units)),
        (Unit::Mass, Units::Inches) => with_unit("2".into(), unit_label(Unit::Mass, units)),
        (Unit::Length, _) => length(Length::from_ticks(row.usual), units),
        _ => amount(row.usual, row.unit, units),
    }
}

/// Which part of a ball's band goes where.
fn both(q: Quantity, typed: &str, quoted: &str, units: Units) -> String {
    match (weight_and_length(typed), q.row().unit) {
        (Some((weight, length)), Unit::Yarn) => words::both_length_here(quoted, length, weight),
        (Some((weight, length)), Unit::Mass) if matches!(q, Quantity::BallGrams | Quantity::InsteadGrams) => {
            words::both_weight_here(quoted, weight, length)
        }
        _ => words::both(quoted, wants(q), &example_of(q, units)),
    }
}

/// What is wrong with a number outside its range, and what is sensible.
///
/// ```
/// use hatwright_pattern::{figures::Units, say::out_of_range};
/// use hatwright_sizing::Quantity;
/// assert_eq!(
///     out_of_range(Quantity::HeadGirth, 300_000, Units::Centimetres),
///     "300 cm is no head: heads are 22 to 75 cm around; most adults 52 to 62 cm."
/// );
/// ```
pub fn out_of_range(q: Quantity, ticks: i32, units: Units) -> String {
    use Quantity as Q;
    let units = units.typed();
    let row = q.row();
    let typed = named(q, &amount(ticks, row.unit, units));
    let usual = span(row.least, row.most, row.unit, units);
    match q {
        Q::HeadGirth => words::no_head(&typed, &usual, &span(52_000, 62_000, row.unit, units)),
        Q::BallYarn | Q::InsteadYarn if ticks == 0 => words::no_yarn(&typed, &usual),
        Q::BallGrams | Q::InsteadGrams if ticks == 0 => words::no_weight(&typed, &usual),
        Q::BodyStitch | Q::BandStitch => words::odd_stitch(&typed, &usual),
        Q::BodyRound => words::odd_round(&typed, &usual),
        Q::BandRow => words::odd_row(&typed, &usual),
        _ => {
            let low = ticks < row.least;
            let range = range(q, units);
            let text = if low { words::too_little(&typed, &range) } else { words::too_much(&typed, &range) };
            match advice(q, low) {
                Some(advice) => [&*text, " ", advice].concat(),
                None => text,
            }
        }
    }
}

fn advice(q: Quantity, low: bool) -> Option<&'static str> {
    use Quantity as Q;
    Some(match (q, low) {
        (Q::AgeWeeks, false) => words::advice_age_weeks_high(),
        (Q::AgeMonths, false) => words::advice_age_months_high(),
        (Q::AgeYears, false) => words::advice_age_years_high(),
        (Q::SwatchStitches | Q::BandSwatchStitches, true) => words::advice_few_stitches(),
        (Q::SwatchRounds | Q::BandSwatchRows, true) => words::advice_few_rounds(),
        (Q::SwatchWidth | Q::SwatchHeight | Q::BandSwatchWidth | Q::BandSwatchLength, true) => words::advice_narrow(),
        (Q::BodyStretch | Q::BandStretch, true) => words::advice_body_stretch_low(),
        (Q::BodyStretch, false) => words::advice_body_stretch_high(),
        (Q::BandStretch, false) => words::advice_band_stretch_high(),
        (Q::Ease, _) => words::advice_ease(),
        (Q::BandHeight, _) => words::advice_band_height(),
        (Q::Wedges | Q::SideWedges, _) => words::advice_wedges(),
        (Q::Gather, true) => words::advice_gather_low(),
        (Q::Percentile, _) => words::advice_percentile(),
        (Q::OverTop, _) => words::advice_over_top(),
        (Q::Lining, false) => words::advice_lining_high(),
        (Q::Hook | Q::BandHook, _) => words::advice_hook(),
        (Q::Strands, _) => words::advice_strands(),
        (Q::BandRounds, _) => words::advice_band_rounds(),
        (Q::SlouchWider, _) => words::advice_slouch_wider(),
        (Q::TamAcross, _) => words::advice_tam_across(),
        (Q::TailStitches, _) => words::advice_tail_stitches(),
        (Q::FlapLength, _) => words::advice_flap_length(),
        (Q::Flare, _) => words::advice_flare(),
        (Q::PomPom | Q::Brim, _) => words::advice_pom_pom(),
        (Q::Tassel, _) => words::advice_tassel(),
        (Q::Fullness, _) => words::advice_fullness(),
        (Q::BallYarn | Q::InsteadYarn, _) => words::advice_ball_yarn(),
        (Q::BallGrams | Q::InsteadGrams, _) => words::advice_ball_grams(),
        (Q::Chance, false) => words::advice_chance_high(),
        (Q::Chance, true) => words::advice_chance_low(),
        (Q::Margin, _) => words::advice_margin(),
        (Q::WeighedStitches, true) => words::advice_weighed_stitches_low(),
        (Q::WeighedGrams, true) => words::advice_weighed_grams_low(),
        (Q::WeighedGrams, false) => words::advice_weighed_grams_high(),
        (Q::ScaleStep, _) => words::advice_scale_step(),
        (Q::UnravelledStitches, _) => words::advice_unravelled_stitches(),
        (Q::UnravelledLength, _) => words::advice_unravelled_length(),
        (Q::HatGrams, _) => words::advice_hat_grams(),
        (Q::KeptFactor, _) => words::advice_kept_factor(),
        _ => return None,
    })
}

/// `It takes 4 to 200 stitches.`
fn range(q: Quantity, units: Units) -> String {
    let row = q.row();
    words::range(&named(q, &span(row.least, row.most, row.unit, units)))
}

/// Puts the name of what is counted after a bare number.
fn named(q: Quantity, figure: &str) -> String {
    use Quantity as Q;
    let tell = match q {
        Q::AgeWeeks => words::weeks,
        Q::AgeMonths => words::months,
        Q::AgeYears => words::years,
        Q::SwatchStitches
        | Q::BandSwatchStitches
        | Q::InsteadStitches
        | Q::WeighedStitches
        | Q::UnravelledStitches
        | Q::BandHeight
        | Q::Gather
        | Q::TailStitches => words::stitches,
        Q::SwatchRounds | Q::InsteadRounds | Q::StripeRounds | Q::BandRounds => words::rounds,
        Q::BallsOwned => words::balls,
        Q::BandSwatchRows | Q::StripeRows => words::rows,
        Q::Wedges | Q::SideWedges => words::wedges,
        Q::Strands => words::strands,
        _ => return figure.to_owned(),
    };
    tell(figure, if figure == "1" { 1 } else { 2 })
}

/// A range with one unit, each end rounded to a tenth that still lies inside.
fn span(least: i32, most: i32, unit: Unit, units: Units) -> String {
    let most = with_unit(inside(most, unit, units, false), unit_label(unit, units));
    figures::span(&inside(least, unit, units, true), &most)
}

fn inside(ticks: i32, unit: Unit, units: Units, up: bool) -> String {
    // A tenth of the shown unit in hundredths of a tick; only inches, yards and ounces do not divide the table's ranges.
    let tenth = match (unit, units) {
        (Unit::Length, Units::Inches) => 25_400,
        (Unit::Yarn, Units::Inches) => 914,
        (Unit::Mass, Units::Inches) => 28_350,
        _ => return show(ticks, unit, units),
    };
    let fine = i64::from(ticks) * 100;
    let tenths = if up { (fine + tenth - 1) / tenth } else { fine / tenth };
    let nearest = ((tenths * tenth + 50) / 100) as i32;
    show(nearest, unit, units)
}

fn quote(typed: &str) -> String {
    const MOST: usize = 24;
    let typed = typed.trim();
    let mut text: String = typed.chars().take(MOST).collect();
    if typed.chars().nth(MOST).is_some() {
        text.push('…');
    }
    words::quoted(&text)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::parse;
    use hatwright_words::{Language, in_language};

    const BOTH: [Units; 2] = [Units::Centimetres, Units::Inches];

    #[test]
    fn the_ranges_that_are_named_are_accepted() {
        for q in Quantity::ALL {
            let row = q.row();
            for units in BOTH {
                for text in [inside(row.least, row.unit, units, true), inside(row.most, row.unit, units, false)] {
                    let ticks = parse(&text, row.unit, units).unwrap();
                    assert!(row.holds(ticks), "{q:?} {text} {units:?}");
                    assert!(text.split_once('.').is_none_or(|(_, d)| d.len() <= 4), "{text}");
                }
            }
        }
    }

    #[test]
    fn every_refusal_is_a_sentence_with_the_range() {
        for q in Quantity::ALL {
            let row = q.row();
            for ticks in [i32::MIN, row.least - 1, row.most + 1, i32::MAX] {
                for units in BOTH {
                    let text = out_of_range(*q, ticks, units);
                    assert!(text.ends_with('.') && text.contains(" to "), "{text}");
                }
            }
        }
    }

    #[test]
    fn sentences_read_well() {
        let cm = Units::Centimetres;
        assert_eq!(
            out_of_range(Quantity::SwatchStitches, 10, cm),
            "0.1 stitches is too little here. It takes 4 to 200 stitches. So few stitches tell nothing of the fabric: count 12 or more."
        );
        assert_eq!(
            out_of_range(Quantity::BandHeight, 1, cm),
            "1 stitch is too little here. It takes 2 to 80 stitches. Usual is 6 to 12 stitches, twice that where half is folded up."
        );
        assert_eq!(
            out_of_range(Quantity::HeadGirth, 254_000, Units::Inches),
            "100 in is no head: heads are 8.7 to 29.5 in around; most adults 20.5 to 24.4 in."
        );
        assert_eq!(
            misread(Quantity::HeadGirth, &Misread::NotANumber, " big ", cm),
            "“big” is not a number for this field. Type one such as 49.8."
        );
        assert_eq!(misread(Quantity::Fold, &Misread::Negative, "-4", cm), "“-4” is less than nothing. It takes 0 to 40 cm.");
        assert!(misread(Quantity::Fold, &Misread::TooLong, &"9".repeat(90), cm).chars().count() < 90);
    }

    /// Told in the field of a ball's length, of its weight, and of its price: which part belongs where.
    #[test]
    fn a_weight_for_a_length_is_answered_with_what_belongs_there() {
        use crate::figures::parse_for;
        let told = |q, text: &str, units| misread(q, &parse_for(q, text, units).unwrap_err(), text, units);
        let (cm, inches) = (Units::Centimetres, Units::Inches);
        for (q, text, units, says) in [
            (
                Quantity::BallYarn,
                "50 g",
                cm,
                "“50 g” is a weight; here goes the length of the yarn in a ball, such as 80 m. The weight has a field of its own.",
            ),
            (
                Quantity::BallGrams,
                "87 yd",
                inches,
                "“87 yd” is a length; here goes what a ball weighs, such as 2 oz. The length has a field of its own.",
            ),
            (
                Quantity::InsteadYarn,
                "50 g / 80 m",
                cm,
                "“50 g / 80 m” is a weight and a length. Here goes the length, 80 m; the weight, 50 g, has a field of its own.",
            ),
            (
                Quantity::BallGrams,
                "80m=50g",
                cm,
                "“80m=50g” is a weight and a length. Here goes the weight, 50g; the length, 80m, has a field of its own.",
            ),
            (Quantity::BallPrice, "50 g", cm, "“50 g” is a weight; here goes what a ball costs, such as 4.50."),
            (
                Quantity::UnravelledLength,
                "2 oz",
                inches,
                "“2 oz” is a weight; here goes the length of the unravelled yarn, such as 45.7 in.",
            ),
            (
                Quantity::HatGrams,
                "60 g of 100 m",
                cm,
                "“60 g of 100 m” is a weight and a length. Here goes what the hat weighs, such as 60 g.",
            ),
        ] {
            assert_eq!(told(q, text, units), says);
        }
    }

    #[test]
    fn a_ball_of_nothing_is_told_as_that() {
        assert_eq!(
            out_of_range(Quantity::BallYarn, 0, Units::Centimetres),
            "A ball of 0 m has no yarn, so no number of balls is enough. Its band tells the length: 5 to 2000 m."
        );
        assert_eq!(
            out_of_range(Quantity::BallGrams, 0, Units::Inches),
            "A ball of 0 oz has nothing in it. Its band tells the weight; leave this empty if it does not: 0.1 to 176.3 oz."
        );
        assert_eq!(
            out_of_range(Quantity::BallPrice, 10_000_001, Units::Centimetres),
            "100000.01 is too much here. It takes 0.00 to 100000.00."
        );
        assert!(out_of_range(Quantity::Chance, 10_000, Units::Centimetres).ends_with("cannot be bought again."));
    }

    #[test]
    fn what_is_wrong_is_said_in_spanish() {
        in_language(Language::Spanish, || {
            let cm = Units::Centimetres;
            assert_eq!(
                out_of_range(Quantity::HeadGirth, 254_000, Units::Inches),
                "100 pulg. no es una cabeza: las cabezas miden de 8,7 a 29,5 pulg. de contorno, y las de la mayoría de los adultos, de \
                 20,5 a 24,4 pulg."
            );
            assert_eq!(
                out_of_range(Quantity::BandHeight, 1, cm),
                "1 punto es demasiado poco. Aquí va de 2 a 80 puntos. Lo usual es de 6 a 12 puntos, y el doble si la mitad va doblada."
            );
            assert_eq!(
                misread(Quantity::BallYarn, &Misread::Weight, "50 g", cm),
                "«50 g» es un peso; aquí va el largo del hilo de un ovillo, por ejemplo 80 m. El peso tiene su propio campo."
            );
            assert_eq!(
                misread(Quantity::HeadGirth, &Misread::NotANumber, "grande", Units::Both),
                "«grande» no es un número para este campo. Escribe uno como 49,8."
            );
        });
    }

    /// Nothing of one language is left in the other, whatever is wrong.
    #[test]
    fn every_refusal_has_its_words_in_every_language() {
        for q in Quantity::ALL {
            for ticks in [i32::MIN, 0, i32::MAX] {
                let told = |language| in_language(language, || out_of_range(*q, ticks, Units::Both));
                let spanish = told(Language::Spanish);
                assert_ne!(told(Language::English), spanish);
                assert!(spanish.ends_with('.') && spanish.contains(" a ") && !spanish.contains(" to "), "{spanish}");
            }
        }
    }

    /// The range that is told reads back inside of it in Spanish too.
    #[test]
    fn the_ranges_that_are_named_in_spanish_are_accepted() {
        in_language(Language::Spanish, || {
            for q in Quantity::ALL {
                let row = q.row();
                for units in BOTH {
                    for text in [inside(row.least, row.unit, units, true), inside(row.most, row.unit, units, false)] {
                        assert!(parse(&text, row.unit, units).is_ok_and(|ticks| row.holds(ticks)), "{q:?} {text}");
                    }
                }
            }
        });
    }
}
