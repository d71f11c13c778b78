//! Days as dates of the calendar, in the form that date fields and files use.

use hatwright_sizing::Day;

/// Reads a date of the Gregorian calendar as year, month and day: `2026-11-25` (ISO 8601, calendar date, extended format).
///
/// None for another form, for a day that its month does not have, and for a year before 1800 or after 2999.
///
/// ```
/// use hatwright_pattern::figures::{day, date};
/// use hatwright_sizing::Day;
/// assert_eq!(day("1970-01-01"), Some(Day(0)));
/// assert_eq!(day("2024-02-29"), Some(Day(19_782)));
/// assert_eq!(day("2023-02-29"), None);
/// assert_eq!(date(Day(19_782)), "2024-02-29");
/// ```
pub fn day(text: &str) -> Option<Day> {
    let mut parts = text.trim().split('-');
    let mut number = |digits: usize| {
        let part = parts.next().filter(|p| p.len() == digits && p.bytes().all(|b| b.is_ascii_digit()))?;
        Some(part.bytes().fold(0_i32, |n, b| n * 10 + i32::from(b - b'0')))
    };
    let (year, month, of_month) = (number(4)?, number(2)?, number(2)?);
    let known = parts.next().is_none() && (1800..3000).contains(&year) && (1..=12).contains(&month);
    (known && (1..=month_length(year, month)).contains(&of_month)).then(|| Day(day_number(year, month, of_month)))
}

/// Writes a day as the date that [`day`] reads; a day outside those years as nothing.
pub fn date(day: Day) -> String {
    let (first, last) = (day_number(1800, 1, 1), day_number(2999, 12, 31));
    if !(first..=last).contains(&day.0) {
        return String::new();
    }
    // A year has at least 365 days, so that this is late by no more than the leap days since 1800, less than a year of them.
    let mut year = 1800 + (day.0 - first) / 366;
    while day_number(year + 1, 1, 1) <= day.0 {
        year += 1;
    }
    let mut month = 1;
    while month < 12 && day_number(year, month + 1, 1) <= day.0 {
        month += 1;
    }
    let of_month = day.0 - day_number(year, month, 1) + 1;
    let two = |n: i32| [if n < 10 { "0" } else { "" }, &n.to_string()].concat();
    [&year.to_string(), "-", &two(month), "-", &two(of_month)].concat()
}

const fn is_leap(year: i32) -> bool {
    year % 4 == 0 && (year % 100 != 0 || year % 400 == 0)
}

const fn month_length(year: i32, month: i32) -> i32 {
    match month {
        4 | 6 | 9 | 11 => 30,
        2 if is_leap(year) => 29,
        2 => 28,
        _ => 31,
    }
}

/// Days from 1 January 1970.
fn day_number(year: i32, month: i32, of_month: i32) -> i32 {
    /// Days before 1 January 1970 in the proleptic calendar, from 1 January of year 1.
    const EPOCH: i32 = 719_162;
    let past = year - 1;
    let years = past * 365 + past / 4 - past / 100 + past / 400;
    let months: i32 = (1..month).map(|m| month_length(year, m)).sum();
    years + months + of_month - 1 - EPOCH
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Days since 1970 of dates that are published beside their Unix time, or follow from the length of 400 years, 146,097 days.
    #[test]
    fn known_days_have_their_numbers() {
        for (text, number) in
            [("2000-01-01", 10_957), ("2001-09-09", 11_574), ("2038-01-19", 24_855), ("1969-12-31", -1), ("2370-01-01", 146_097)]
        {
            assert_eq!(day(text), Some(Day(number)), "{text}");
        }
    }

    #[test]
    fn every_day_comes_back() {
        let (first, last) = (day("1800-01-01").unwrap(), day("2999-12-31").unwrap());
        let mut texts = std::collections::BTreeSet::new();
        for number in (first.0..=last.0).step_by(3) {
            let text = date(Day(number));
            assert_eq!(day(&text), Some(Day(number)), "{text}");
            texts.insert(text);
        }
        assert!(texts.iter().is_sorted() && texts.len() > 140_000);
        assert_eq!((date(Day(first.0 - 1)), date(Day(last.0 + 1))), (String::new(), String::new()));
        assert_eq!(date(Day(i32::MIN)), "");
    }

    #[test]
    fn what_is_no_date_is_none() {
        for text in [
            "",
            "2026",
            "2026-11",
            "2026-11-31",
            "2026-13-01",
            "2026-00-10",
            "2026-01-00",
            "1799-12-31",
            "3000-01-01",
            "26-11-25",
            "2026-1-5",
            "2026-11-25-1",
            "25.11.2026",
            "２026-11-25",
        ] {
            assert_eq!(day(text), None, "{text}");
        }
    }
}
