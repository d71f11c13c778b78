//! Ages as people say them.

use hatwright_words::figures as words;

/// An age as it is told: to the week, the month, the half year or the year.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Told {
    Newborn,
    Weeks(u32),
    Months(u32),
    Years(u32),
    YearsMonths(u32, u32),
    /// So many years and a half.
    Half(u32),
    Adult,
}

impl Told {
    fn of(years: f64) -> Self {
        let days = (years * 365.25 + 0.5) as u32;
        let months = (years * 12.0 + 0.5) as u32;
        let halves = (years * 2.0 + 0.5) as u32;
        match (days, months) {
            (..7, _) => Self::Newborn,
            (..91, _) => Self::Weeks((days + 3) / 7),
            (_, ..24) => Self::Months(months),
            (_, ..60) if months.is_multiple_of(12) => Self::Years(months / 12),
            (_, ..60) => Self::YearsMonths(months / 12, months % 12),
            _ if years >= 18.0 => Self::Adult,
            _ if !halves.is_multiple_of(2) => Self::Half(halves / 2),
            _ => Self::Years(halves / 2),
        }
    }

    fn text(self) -> String {
        match self {
            Self::Newborn => words::newborn().into(),
            Self::Weeks(weeks) => words::weeks(weeks),
            Self::Months(months) => words::months(months),
            Self::Years(years) => words::years(years),
            Self::YearsMonths(years, months) => words::years_and_months(&words::years(years), &words::months(months)),
            Self::Half(years) => words::half_years(years),
            Self::Adult => words::adult().into(),
        }
    }

    /// Its text before one that follows it; without its unit, where the other has the same: `4` before `8 years`.
    fn before(self, other: Self) -> String {
        match (self, other) {
            (Self::Weeks(n @ 2..), Self::Weeks(_))
            | (Self::Months(n), Self::Months(_))
            | (Self::Years(n), Self::Years(_) | Self::Half(_)) => n.to_string(),
            (Self::Half(n), Self::Years(_) | Self::Half(_)) => [&*n.to_string(), "½"].concat(),
            _ => self.text(),
        }
    }
}

/// An age as people say it.
///
/// ```
/// use hatwright_pattern::figures::age;
/// assert_eq!(age(1.6667), "20 months");
/// assert_eq!(age(2.5), "2 years 6 months");
/// assert_eq!(age(7.5), "7½ years");
/// ```
pub fn age(years: f64) -> String {
    Told::of(years).text()
}

/// A span of ages: `from 20 months to 3 years`, `from 4 to 8 years`; an end of 18 years or more means no upper end.
pub fn age_span(from: f64, to: f64) -> String {
    let (young, old) = (Told::of(from), Told::of(to));
    if from >= 18.0 {
        words::adults().into()
    } else if to >= 18.0 && from < 0.02 {
        words::at_every_age().into()
    } else if to >= 18.0 {
        words::from_up(&young.text())
    } else if young == old {
        if young == Told::Newborn { words::at_birth().into() } else { words::at(&young.text()) }
    } else if young == Told::Newborn {
        words::from_birth(&old.text())
    } else {
        words::from_to(&young.before(old), &old.text())
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
        words::and_up(&young)
    } else {
        [&young, " – ", &old].concat()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_words::{Language, in_language};

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

    #[test]
    fn ages_are_told_in_spanish() {
        in_language(Language::Spanish, || {
            for (years, text) in [
                (0.0, "recién nacido"),
                (6.0 * 7.0 / 365.25, "6 semanas"),
                (0.25, "3 meses"),
                (2.08, "2 años y 1 mes"),
                (7.5, "7½ años"),
                (18.0, "adulto"),
            ] {
                assert_eq!(age(years), text);
            }
            assert_eq!(age_span(1.6667, 3.0), "de 20 meses a 3 años");
            assert_eq!(age_span(4.0, 8.0), "de 4 a 8 años");
            assert_eq!(age_span(2.5, 4.5), "de 2 años y 6 meses a 4 años y 6 meses");
            assert_eq!(age_span(0.0, 0.5), "desde el nacimiento hasta 6 meses");
            assert_eq!(age_span(8.0, 110.0), "de 8 años en adelante");
            assert_eq!(age_range(1.0, 110.0), "12 meses en adelante");
        });
    }
}
