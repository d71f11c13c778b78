//! What a head's girth means: its size as hats are labelled, something to try the hat on, and the age on a day.

use crate::figures::{Units, age, length, percent, plural};
use hatwright_sizing::{Day, Head, HeadSize, Length, Quantity, Ratio, Sex, hat_labels, stand_in};

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
    let (us, uk) = (hat_size(labels.us_eighths), hat_size(labels.uk_eighths));
    let cm = labels.cm.to_string();
    ["Labelled as a hat: ", &cm, " cm, US ", &us, ", UK ", &uk, " (common practice; makers differ by an eighth)."].concat()
}

/// Something of the same girth to try the hat on.
///
/// `No head at hand? A bowl, a pot or a foam form 15.9 cm across is as large around: try the hat on it, and dry it there.`
pub fn stand_in_sentence(girth: Length, units: Units) -> String {
    let across = length(stand_in(girth), units);
    [
        "No head at hand? A bowl, a pot or a foam form ",
        &across,
        " across is as large around: try the hat on it, and dry it there.",
    ]
    .concat()
}

/// How a head that was looked up stands among others of its age; nothing for a measured one.
///
/// `51.7 cm: of 100 children of 4 years, 90 have smaller heads.`
pub fn percentile_sentence(head: &Head, size: &HeadSize, units: Units) -> Option<String> {
    let (Head::ByAge { build, .. } | Head::ByDates { build, .. }) = head else { return None };
    let years = head.age_years()?;
    let who = match (head.sex(), years >= 18.0) {
        (Sex::Unknown, true) => "adults",
        (Sex::Female, true) => "women",
        (Sex::Male, true) => "men",
        (Sex::Unknown, false) => "children",
        (Sex::Female, false) => "girls",
        (Sex::Male, false) => "boys",
    };
    let who = match years {
        18.0.. => who.into(),
        _ if age(years) == "newborn" => [who, " at birth"].concat(),
        _ => [who, " of ", &age(years)].concat(),
    };
    let share = Ratio::of(build.share());
    let smaller = percent(share);
    let smaller = smaller.trim_end_matches(" %").trim_end_matches(".0");
    Some([&length(size.girth, units), ": of 100 ", &who, ", ", smaller, " have smaller heads."].concat())
}

/// The age that two days make, or what to do where they make none.
///
/// The tables begin at a birth at term. A baby who is born early, or who wears the hat before the day it was due, is to be measured:
/// no corrected age is offered, because none of the tables has such heads.
pub fn dates_sentence(born: Day, worn: Day) -> String {
    match born.years_to(worn) {
        Some(years) => {
            let told = age(years);
            let told = match &*told {
                "newborn" | "adult" => told,
                _ => [&*told, " old"].concat(),
            };
            let mut text = ["On that day the wearer is ", if told == "adult" { "an " } else { "" }, &told, "."].concat();
            if years < EARLY {
                text.push(' ');
                text.push_str(BORN_EARLY);
            }
            text
        }
        None if worn < born => {
            let days = born.0.abs_diff(worn.0);
            let early = if days < 14 { plural(days, "day") } else { plural(days / 7, "week") };
            ["That is ", &early, " before the day of birth. ", BORN_EARLY].concat()
        }
        None => {
            let most = (Quantity::AgeYears.row().most / 100).to_string();
            ["That is more than ", &most, " years after the day of birth."].concat()
        }
    }
}

/// Years below which it matters whether a baby came early (practice, no source: an early baby's head has mostly caught up by two).
const EARLY: f64 = 2.0;

const BORN_EARLY: &str = "The tables are of babies born at term; for one born early, measure the head.";

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
