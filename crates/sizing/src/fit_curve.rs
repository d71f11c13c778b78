//! Whom a range of girths serves, age by age: as a curve, and as the few rows of a table.

use crate::{Length, Sex, share_served};

/// Months to which the curve has a point for each.
const MONTHLY_TO: u32 = 5 * 12;

/// Months from which a head is an adult's and changes no more.
const ADULT: u32 = 18 * 12;

/// A point of the curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FitPoint {
    /// Age in years; 18 stands for all adults.
    pub years: f64,
    /// Share of heads of that age, sex unknown, that are served: 0 to 1.
    pub share: f64,
}

/// The share of heads that girths from `least` to `most` serve, sex unknown: by month from birth to 5 years, then by quarter, and
/// adults as one last point at 18 years: 113 points.
///
/// A hat of 46.7 cm that reaches 51.4 cm serves hardly a newborn, 88 in 100 of 3 years, and hardly an adult:
///
/// ```
/// use hatwright_sizing::{Length, fit_curve};
/// let curve = fit_curve(Length::from_cm(46.7), Length::from_cm(51.4));
/// let share = |years: f64| curve.iter().find(|p| p.years == years).unwrap().share;
/// assert!(share(0.0) < 0.001 && (share(3.0) - 0.88).abs() < 0.01 && share(18.0) < 0.05);
/// assert_eq!(curve.len(), 113);
/// ```
pub fn fit_curve(least: Length, most: Length) -> Vec<FitPoint> {
    let months = (0..MONTHLY_TO).chain((MONTHLY_TO..=ADULT).step_by(3));
    let point = |years: f64| FitPoint { years, share: share_served(years, Sex::Unknown, least, most) };
    months.map(|month| point(f64::from(month) / 12.0)).collect()
}

/// A row of the table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FitRow {
    /// Age in years; 18 stands for all adults.
    pub years: f64,
    /// Whose heads: of both sexes alike for children, of each for adults.
    pub sex: Sex,
    /// Share of them that is served: 0 to 1.
    pub share: f64,
}

/// Months of the table's rows below the adults'.
const ROWS: [u32; 12] = [0, 3, 6, 12, 24, 36, 48, 72, 96, 120, 156, 192];

/// The same for a table: at birth, 3 and 6 months, 1, 2, 3, 4, 6, 8, 10, 13 and 16 years, then women and men.
///
/// ```
/// use hatwright_sizing::{Length, Sex, fit_table};
/// let table = fit_table(Length::from_cm(52.0), Length::from_cm(58.0));
/// assert_eq!((table[12].sex, table[13].sex), (Sex::Female, Sex::Male));
/// // Women's heads are 55.87 ± 2.065 cm, men's 57.61 ± 1.755 cm.
/// assert!((table[12].share - 0.818).abs() < 0.001 && (table[13].share - 0.587).abs() < 0.001);
/// ```
pub fn fit_table(least: Length, most: Length) -> [FitRow; 14] {
    core::array::from_fn(|i| {
        let (months, sex) = match ROWS.get(i) {
            Some(months) => (*months, Sex::Unknown),
            None if i == ROWS.len() => (ADULT, Sex::Female),
            None => (ADULT, Sex::Male),
        };
        let years = f64::from(months) / 12.0;
        FitRow { years, sex, share: share_served(years, sex, least, most) }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ages_served;

    /// The curve, the table and the sentence of ages are one and the same model.
    #[test]
    fn curve_table_and_ages_agree() {
        for (least, most) in [(32.0, 38.0), (45.7, 51.3), (52.0, 58.0), (54.5, 75.0)] {
            let (least, most) = (Length::from_cm(least), Length::from_cm(most));
            let curve = fit_curve(least, most);
            assert!(curve.windows(2).all(|p| p[0].years < p[1].years));
            assert!(curve.iter().all(|p| (0.0..=1.0).contains(&p.share)));
            for row in &fit_table(least, most)[..12] {
                let point = curve.iter().find(|p| (p.years - row.years).abs() < 1e-9).expect("every age of the table is a point");
                assert_eq!(point.share.to_bits(), row.share.to_bits());
            }
            let (from, to) = ages_served(least, most, 0.8).unwrap();
            let inside = |p: &&FitPoint| (from..=to).contains(&p.years);
            assert!(curve.iter().filter(inside).all(|p| p.share >= 0.8), "{from} {to}");
            assert!(curve.iter().any(|p| inside(&p)), "{from} {to}");
        }
    }

    #[test]
    fn adults_are_half_women_and_half_men() {
        let (least, most) = (Length::from_cm(52.0), Length::from_cm(58.0));
        let (curve, table) = (fit_curve(least, most), fit_table(least, most));
        let both = f64::midpoint(table[12].share, table[13].share);
        assert!((curve[curve.len() - 1].share - both).abs() < 1e-12);
    }

    #[test]
    fn a_range_turned_round_serves_nobody() {
        let curve = fit_curve(Length::from_cm(52.0), Length::from_cm(48.0));
        assert!(curve.iter().all(|p| p.share == 0.0));
    }
}
