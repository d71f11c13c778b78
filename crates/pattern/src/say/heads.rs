//! What a head's girth means: its size as hats are labelled, something to try the hat on, and the age on a day.

use crate::figures::{Units, age, length, show};
use hatwright_sizing::{Day, Head, HeadSize, Length, Quantity, Ratio, Sex, Unit, hat_labels, stand_in};
use hatwright_words::heads as words;

/// A hat size, told in eighths as it is printed: 58 is `7 1/4`, 56 is `7`.
///
/// ```
/// use hatwright_pattern::say::hat_size;
/// assert_eq!((&*hat_size(57), &*hat_size(58), &*hat_size(56)), ("7 1/8", "7 1/4", "7"));
/// ```
pub fn hat_size(eighths: u32) -> String {
    let (whole, part) = (eighths / 8, eighths % 8);
    let part = match part {
        0 => return whole.to_string(),
        2 => "1/4",
        4 => "1/2",
        6 => "3/4",
        1 => "1/8",
        3 => "3/8",
        5 => "5/8",
        _ => "7/8",
    };
    [&*whole.to_string(), " ", part].concat()
}

/// A head's size as hats are labelled.
///
/// `Labelled as a hat: 58 cm, US 7 1/4, UK 7 1/8 (common practice; makers differ by an eighth).`
pub fn hat_labels_sentence(girth: Length) -> String {
    let labels = hat_labels(girth);
    words::labels(labels.cm, &hat_size(labels.us_eighths), &hat_size(labels.uk_eighths))
}

/// Something of the same girth to try the hat on.
///
/// `No head at hand? A bowl, a pot or a foam form 15.9 cm across is as large around: try the hat on it, and dry it there.`
pub fn stand_in_sentence(girth: Length, units: Units) -> String {
    words::stand_in(&length(stand_in(girth), units))
}

/// How a head that was looked up stands among others of its age; nothing for a measured one.
///
/// `51.7 cm: of 100 children of 4 years, 90 have smaller heads.`
pub fn percentile_sentence(head: &Head, size: &HeadSize, units: Units) -> Option<String> {
    let (Head::ByAge { build, .. } | Head::ByDates { build, .. }) = head else { return None };
    let years = head.age_years()?;
    let who = who(years, head.sex());
    // To a tenth, and no further than it goes: 90, 2.5.
    let tenths = (Ratio::of(build.share()).ticks() + 5) / 10 * 10;
    Some(words::percentile(&length(size.girth, units), &who, &show(tenths, Unit::Percent, units)))
}

fn who(years: f64, sex: Sex) -> String {
    let told = match (sex, is_adult(years), is_newborn(years)) {
        (Sex::Unknown, true, _) => words::adults(),
        (Sex::Female, true, _) => words::women(),
        (Sex::Male, true, _) => words::men(),
        (Sex::Unknown, _, true) => words::newborns(),
        (Sex::Female, _, true) => words::newborn_girls(),
        (Sex::Male, _, true) => words::newborn_boys(),
        (Sex::Unknown, ..) => return words::children(&age(years)),
        (Sex::Female, ..) => return words::girls(&age(years)),
        (Sex::Male, ..) => return words::boys(&age(years)),
    };
    told.into()
}

fn is_adult(years: f64) -> bool {
    years >= 18.0
}

/// Whether an age is told without a number, as that of a birth is.
fn is_newborn(years: f64) -> bool {
    age(years) == age(0.0)
}

/// The age that two days make, or what to do where they make none.
///
/// The tables begin at a birth at term. A baby who is born early, or who wears the hat before the day it was due, is to be measured:
/// no corrected age is offered, because none of the tables has such heads.
pub fn dates_sentence(born: Day, worn: Day) -> String {
    match born.years_to(worn) {
        Some(years) => {
            let told = match years {
                _ if is_newborn(years) => words::newborn_then().into(),
                _ if is_adult(years) => words::adult_then().into(),
                _ => words::age_then(&age(years)),
            };
            if years < EARLY { [&*told, " ", words::born_early()].concat() } else { told }
        }
        None if worn < born => {
            let days = born.0.abs_diff(worn.0);
            let early = if days < 14 { words::days_early(days) } else { words::weeks_early(days / 7) };
            [&*early, " ", words::born_early()].concat()
        }
        None => words::too_late(Quantity::AgeYears.row().most.unsigned_abs() / 100),
    }
}

/// Years below which it matters whether a baby came early (practice, no source: an early baby's head has mostly caught up by two).
const EARLY: f64 = 2.0;

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{Age, Build, Count, head_size};

    /// Common practice of the trade, from memory.
    #[test]
    fn hat_sizes_read_as_they_are_printed() {
        for (cm, text) in
            [(57.0, "57 cm, US 7 1/8, UK 7 "), (58.0, "58 cm, US 7 1/4, UK 7 1/8 "), (60.0, "60 cm, US 7 1/2, UK 7 3/8 ")]
        {
            assert!(hat_labels_sentence(Length::from_cm(cm)).starts_with(&["Labelled as a hat: ", text].concat()), "{cm}");
        }
        let all: Vec<String> = (48..=56).map(hat_size).collect();
        assert_eq!(all, ["6", "6 1/8", "6 1/4", "6 3/8", "6 1/2", "6 5/8", "6 3/4", "6 7/8", "7"]);
    }

    #[test]
    fn a_head_has_its_place_among_others() {
        let told = |years, sex, build| {
            let head = Head::ByAge { age: Age::Years(Count::from_ticks(years)), sex, build };
            percentile_sentence(&head, &head_size(&head), Units::Centimetres).unwrap()
        };
        assert_eq!(told(400, Sex::Unknown, Build::Large), "51.7 cm: of 100 children of 4 years, 90 have smaller heads.");
        assert_eq!(told(0, Sex::Female, Build::Average), "33.9 cm: of 100 girls at birth, 50 have smaller heads.");
        let third = Build::Percentile(Ratio::of(0.025));
        assert_eq!(told(3_000, Sex::Male, third), "54.2 cm: of 100 men, 2.5 have smaller heads.");
        let taped = Head::Measured(Length::from_cm(50.0));
        assert_eq!(percentile_sentence(&taped, &head_size(&taped), Units::Centimetres), None);
    }

    #[test]
    fn days_make_an_age_or_a_word_about_it() {
        assert_eq!(dates_sentence(Day(0), Day(1_461)), "On that day the wearer is 4 years old.");
        assert_eq!(dates_sentence(Day(0), Day(10_000)), "On that day the wearer is an adult.");
        assert_eq!(
            dates_sentence(Day(0), Day(42)),
            "On that day the wearer is 6 weeks old. The tables are of babies born at term; for one born early, measure the head."
        );
        assert_eq!(dates_sentence(Day(0), Day(0)).split(". ").next(), Some("On that day the wearer is newborn"));
        assert_eq!(
            dates_sentence(Day(100), Day(72)),
            "That is 4 weeks before the day of birth. The tables are of babies born at term; for one born early, measure the head."
        );
        assert!(dates_sentence(Day(100), Day(99)).starts_with("That is 1 day before"));
        assert_eq!(dates_sentence(Day(0), Day(50_000)), "That is more than 110 years after the day of birth.");
        assert!(dates_sentence(Day(i32::MAX), Day(i32::MIN)).contains("weeks before"));
    }

    #[test]
    fn a_stand_in_is_as_large_around() {
        assert!(stand_in_sentence(Length::from_cm(49.8), Units::Centimetres).contains(" 15.9 cm across "));
        assert!(stand_in_sentence(Length::from_cm(49.8), Units::Inches).contains(" 6.2 in across "));
    }
}
