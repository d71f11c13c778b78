//! Ages as people say them.

use super::{plural, with_unit};

/// An age as people say it.
///
/// ```
/// use hatwright_pattern::figures::age;
/// assert_eq!(age(1.6667), "20 months");
/// assert_eq!(age(2.5), "2 years 6 months");
/// assert_eq!(age(7.5), "7½ years");
/// ```
pub fn age(years: f64) -> String {
    let days = (years * 365.25 + 0.5) as u32;
    let months = (years * 12.0 + 0.5) as u32;
    let halves = (years * 2.0 + 0.5) as u32;
    match (days, months) {
        (..7, _) => "newborn".into(),
        (..91, _) => plural((days + 3) / 7, "week"),
        (_, ..24) => plural(months, "month"),
        (_, ..60) if months.is_multiple_of(12) => plural(months / 12, "year"),
        (_, ..60) => {
            let mut text = plural(months / 12, "year");
            text.push(' ');
            text.push_str(&plural(months % 12, "month"));
            text
        }
        _ if years >= 18.0 => "adult".into(),
        _ if !halves.is_multiple_of(2) => with_unit((halves / 2).to_string() + "½", "years"),
        _ => plural(halves / 2, "year"),
    }
}

/// A span of ages: `from 20 months to 3 years`, `from 4 to 8 years`; an end of 18 years or more means no upper end.
pub fn age_span(from: f64, to: f64) -> String {
    let (young, old) = (age(from), age(to));
    if from >= 18.0 {
        "adults".into()
    } else if to >= 18.0 && from < 0.02 {
        "at every age".into()
    } else if to >= 18.0 {
        ["from ", &young, " up"].concat()
    } else if young == old {
        ["at ", if young == "newborn" { "birth" } else { &young }].concat()
    } else if young == "newborn" {
        ["from birth to ", &old].concat()
    } else {
        ["from ", without_unit(&young, &old), " to ", &old].concat()
    }
}

/// An age without its unit, where another that follows has the same and no second one: `4 years` before `8 years`.
fn without_unit<'a>(young: &'a str, old: &str) -> &'a str {
    match (young.split_once(' '), old.split_once(' ')) {
        (Some((number, unit)), Some((_, after))) if unit == after && !unit.contains(' ') => number,
        _ => young,
    }
}

/// The same for a headline: `20 months – 3 years`.
///
/// ```
/// use hatwright_pattern::figures::age_range;
/// assert_eq!(age_range(1.6667, 3.0), "20 months – 3 years");
/// assert_eq!(age_range(1.0, 110.0), "12 months and up");
/// ```
pub fn age_range(from: f64, to: f64) -> String {
    let (young, old) = (age(from), age(to));
    if from >= 18.0 || young == old {
        young
    } else if to >= 18.0 {
        [&young, " and up"].concat()
    } else {
        [&young, " – ", &old].concat()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ages_read_as_people_say_them() {
        for (years, text) in [
            (0.0, "newborn"),
            (-1.0, "newborn"),
            (6.0 * 7.0 / 365.25, "6 weeks"),
            (0.25, "3 months"),
            (1.0, "12 months"),
            (1.99, "2 years"),
            (2.08, "2 years 1 month"),
            (4.98, "5 years"),
            (5.2, "5 years"),
            (8.0, "8 years"),
            (17.9, "18 years"),
            (18.0, "adult"),
        ] {
            assert_eq!(age(years), text);
        }
        assert_eq!(age_span(1.6667, 3.0), "from 20 months to 3 years");
        assert_eq!(age_span(4.0, 8.0), "from 4 to 8 years");
        assert_eq!(age_span(7.5, 8.5), "from 7½ to 8½ years");
        assert_eq!(age_span(0.75, 1.5), "from 9 to 18 months");
        assert_eq!(age_span(4.0, 4.5), "from 4 years to 4 years 6 months");
        assert_eq!(age_span(2.5, 4.5), "from 2 years 6 months to 4 years 6 months");
        assert_eq!(age_span(0.0, 0.5), "from birth to 6 months");
        assert_eq!(age_span(8.0, 110.0), "from 8 years up");
        assert_eq!(age_span(18.0, 110.0), "adults");
        assert_eq!(age_span(0.0, 110.0), "at every age");
        assert_eq!(age_span(3.0, 3.01), "at 3 years");
    }
}
