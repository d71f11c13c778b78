//! The ages that a range of girths serves.

use crate::{Length, Sex, share_served};

/// Months to which the table has a row for each.
const MONTHLY_TO: u32 = 5 * 12;

/// Months from which a head is an adult's and changes no more.
const ADULT: u32 = 18 * 12;

/// Months that stand for "no upper end".
const OLDEST: u32 = 110 * 12;

/// The ages in years from which and to which at least a share of heads, sex unknown, has a girth from `least` to `most`.
///
/// `share` is 0 to 1, usually 0.8. Ages are whole months. The lower end is 0 where it serves from birth; the upper end is 110
/// where it serves adults. None where no age is served so well.
///
/// Where several spans apart are served (heads step up at 18 years, see [`heads_at`](crate::heads_at)) it is the longest,
/// and the earliest of equals. Months are tried one by one to 5 years and three by three from there, the ends then narrowed to the
/// month: a span of less than three months after 5 years can go unseen.
///
/// A hat of 46.7 cm that reaches 51.4 cm serves 8 in 10 from 2 years and 3 months to 4 years and 5 months:
///
/// ```
/// use hatwright_sizing::{Length, ages_served};
/// let (from, to) = ages_served(Length::from_cm(46.7), Length::from_cm(51.4), 0.8).unwrap();
/// assert_eq!((from * 12.0, to * 12.0), (27.0, 53.0));
/// assert_eq!(ages_served(Length::from_cm(49.0), Length::from_cm(49.5), 0.8), None);
/// ```
pub fn ages_served(least: Length, most: Length, share: f64) -> Option<(f64, f64)> {
    let serves = |month: u32| share_served(years(month), Sex::Unknown, least, most) >= share;
    let mut longest: Option<(u32, u32)> = None;
    let mut keep = |from: u32, to: u32| {
        if longest.is_none_or(|(a, b)| to - from > b - a) {
            longest = Some((from, to));
        }
    };
    let mut begun = None;
    let mut before = 0;
    for month in (0..MONTHLY_TO).chain((MONTHLY_TO..=ADULT).step_by(3)) {
        match (begun, serves(month)) {
            (None, true) if month == 0 => begun = Some(0),
            (None, true) => begun = Some(edge(month, before, serves)),
            (Some(from), false) => {
                keep(from, edge(before, month, serves));
                begun = None;
            }
            (None, false) | (Some(_), true) => {}
        }
        before = month;
    }
    if let Some(from) = begun {
        keep(from, OLDEST);
    }
    longest.map(|(from, to)| (years(from), years(to)))
}

fn years(month: u32) -> f64 {
    f64::from(month) / 12.0
}

/// The last month that still serves on the way from one that serves to one that does not, in either direction.
fn edge(mut serving: u32, mut failing: u32, serves: impl Fn(u32) -> bool) -> u32 {
    while serving.abs_diff(failing) > 1 {
        let middle = u32::midpoint(serving, failing);
        if serves(middle) {
            serving = middle;
        } else {
            failing = middle;
        }
    }
    serving
}

#[cfg(test)]
mod tests {
    use super::*;

    fn months(least: f64, most: f64, share: f64) -> Option<(u32, u32)> {
        let month = |years: f64| libm::round(years * 12.0) as u32;
        ages_served(Length::from_cm(least), Length::from_cm(most), share).map(|(from, to)| (month(from), month(to)))
    }

    /// The longest run of months, found by looking at every one of them.
    fn every_month(least: f64, most: f64, share: f64) -> Option<(u32, u32)> {
        let (least, most) = (Length::from_cm(least), Length::from_cm(most));
        let good: Vec<u32> =
            (0..=OLDEST).filter(|m| share_served(f64::from(*m) / 12.0, Sex::Unknown, least, most) >= share).collect();
        let runs = good.chunk_by(|a, b| a + 1 == *b).map(|run| (run[0], run[run.len() - 1]));
        runs.rev().max_by_key(|(from, to)| to - from)
    }

    #[test]
    fn ends_are_exact_to_the_month() {
        let mut found = 0;
        for least in 60..125 {
            for width in 2..30 {
                let (least, most) = (f64::from(least) / 2.0, f64::from(least + width) / 2.0);
                let all = every_month(least, most, 0.8);
                assert_eq!(months(least, most, 0.8), all, "{least} to {most} cm");
                found += u32::from(all.is_some());
            }
        }
        assert!(found > 500, "only {found} ranges serve anyone");
    }

    #[test]
    fn open_ends_are_birth_and_old_age() {
        assert_eq!(months(30.0, 51.0, 0.8), Some((0, 47)));
        assert_eq!(months(46.0, 75.0, 0.8), Some((21, OLDEST)));
        assert_eq!(months(0.0, 75.0, 0.8), Some((0, OLDEST)));
    }

    #[test]
    fn the_step_at_eighteen_parts_spans_and_the_longest_counts() {
        let serves = |years| share_served(years, Sex::Unknown, Length::from_cm(53.6), Length::from_cm(59.2)) >= 0.8;
        assert!(serves(16.5) && !serves(17.5) && serves(18.0));
        assert_eq!(months(53.6, 59.2, 0.8), Some((ADULT, OLDEST)));
    }

    #[test]
    fn a_range_that_serves_nobody_well_has_no_ages() {
        assert_eq!(months(49.0, 49.5, 0.8), None);
        assert_eq!(months(51.4, 46.7, 0.8), None);
        assert_eq!(months(46.7, 51.4, 1.1), None);
        assert_eq!(months(46.7, 51.4, f64::NAN), None);
    }

    #[test]
    fn a_wider_range_never_serves_fewer_months() {
        let length = |most| months(46.0, most, 0.8).map_or(0, |(from, to)| to - from);
        for tenth in 470..650 {
            assert!(length(f64::from(tenth + 1) / 10.0) >= length(f64::from(tenth) / 10.0), "{tenth}");
        }
    }
}
