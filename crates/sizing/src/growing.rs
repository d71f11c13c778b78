//! Room to grow: the hat that serves a child for the longest time from a given age.

use crate::{Chosen, Fit, Hat, HatSpec, Length, Quantity, Sex, Size, plan, share_served};

/// Months from which a head is an adult's and changes no more.
const ADULT: u32 = 18 * 12;
/// Years that stand for "no upper end".
const OLDEST: f64 = 110.0;
/// Counts that are looked at on each side. Past a dozen, a hat is too loose or too tight in any gauge but thread's.
const MOST: u32 = 48;

/// A hat that a child grows into.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Growing {
    /// Its counts.
    pub chosen: Chosen,
    /// Its relaxed girth.
    pub girth: Length,
    /// Ages in years from which and to which it serves 8 in 10 heads throughout ([`Quantity::FitShare`]); 110 where it serves adults.
    pub ages: (f64, f64),
    /// The age to which the planner's own hat does; absent where that does not serve 8 in 10 at the given age.
    pub instead_to: Option<f64>,
}

/// The counts which, of all that this hat may have, serve from the wearer's age on for the longest time.
///
/// They close the stripes as the planner's own do, and are no looser on the given head than a count taken by hand may be. A hat serves
/// an age where it fits at least [`Quantity::FitShare`] of heads of that age, sex unknown: the same as the sentence of ages says. Of
/// equal spans, the one nearest the head's own.
///
/// None for a measured head or an adult's, where there is no hat, and where none serves longer than the planner's own.
///
/// The usual four-year-old's cap has 56 stitches, 46.7 cm, and fits 8 in 10 to 4 years 5 months. With a band of one colour, 58 stitches,
/// 48.3 cm, fit as many from 4 years to 8. In two-row stripes of two colours the next count is 60, 50.0 cm: too loose for 3 in 10
/// at 4 years, so there is none.
///
/// ```
/// use hatwright_sizing::{HatSpec, Length, Stitches, room_to_grow};
/// let striped = HatSpec::default();
/// let mut plain = striped.clone();
/// plain.band.stripes.truncate(1);
/// let larger = room_to_grow(&plain).unwrap();
/// assert_eq!((larger.chosen.stitches, larger.girth), (Stitches::new(58), Length::from_cm(48.333)));
/// assert_eq!((larger.ages, larger.instead_to.unwrap() * 12.0), ((4.0, 8.0), 53.0));
/// assert_eq!(room_to_grow(&striped), None);
/// ```
pub fn room_to_grow(spec: &HatSpec) -> Option<Growing> {
    let from = spec.head.age_years().filter(|years| *years < f64::from(ADULT / 12))?;
    let mut spec = HatSpec { chosen: None, kept: None, ..spec.clone() };
    let own = plan(&spec).ok()?;
    let instead_to = serves_to(&own.fit, from);
    let mut best: Option<Growing> = None;
    for larger in [true, false] {
        let mut at = own.clone();
        for _ in 0..MOST {
            let Some(next) = neighbour(&at, larger) else { break };
            let chosen = Chosen { rows: next.rows, stitches: next.stitches };
            spec.chosen = Some(chosen);
            let Ok(hat) = plan(&spec) else { break };
            if (hat.size.rows, hat.size.stitches) != (chosen.rows, chosen.stitches) {
                break;
            }
            if let Some(to) = serves_to(&hat.fit, from)
                && best.is_none_or(|b| to > b.ages.1)
            {
                best = Some(Growing { chosen, girth: hat.size.girth, ages: (from, to), instead_to });
            }
            at = hat;
        }
    }
    best.filter(|b| instead_to.is_none_or(|own| b.ages.1 > own))
}

/// The nearest neighbour that is larger, or smaller.
fn neighbour(hat: &Hat, larger: bool) -> Option<&Size> {
    let girth = hat.size.girth;
    if larger { hat.neighbours.iter().find(|n| n.girth > girth) } else { hat.neighbours.iter().rev().find(|n| n.girth < girth) }
}

/// To which age, in years, a hat serves without a gap from a given one on, by whole months of age; none where it does not serve that.
fn serves_to(fit: &Fit, from: f64) -> Option<f64> {
    let share = Quantity::FitShare.row().usual_value();
    let serves = |years: f64| share_served(years, Sex::Unknown, fit.least, fit.most) >= share;
    if !serves(from) {
        return None;
    }
    let mut to = from;
    for month in libm::floor(from * 12.0) as u32 + 1..=ADULT {
        let years = f64::from(month) / 12.0;
        if !serves(years) {
            return Some(to);
        }
        to = years;
    }
    Some(OLDEST)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Age, Build, Count, Day, Head};

    fn child(months: i32, build: Build) -> HatSpec {
        let head = Head::ByAge { age: Age::Months(Count::whole(months)), sex: Sex::Unknown, build };
        let mut spec = HatSpec { head, topper: None, ..HatSpec::default() };
        spec.band.stripes.truncate(1);
        spec
    }

    /// What is offered serves longer than the planner's own, and no count that could be taken by hand serves longer still.
    #[test]
    fn it_is_the_longest_of_all_counts() {
        let mut offered = 0;
        for months in [0, 2, 6, 9, 14, 24, 40, 48, 75, 100, 150] {
            for build in [Build::Small, Build::Average, Build::Large] {
                let spec = child(months, build);
                let years = f64::from(months) / 12.0;
                let Ok(own) = plan(&spec) else { continue };
                let mut longest = serves_to(&own.fit, years);
                for count in (8..=200).step_by(2) {
                    let chosen = Chosen { rows: crate::Rows::new(count), stitches: crate::Stitches::new(count) };
                    if let Ok(hat) = plan(&HatSpec { chosen: Some(chosen), ..spec.clone() })
                        && hat.size.stitches == chosen.stitches
                    {
                        let to = serves_to(&hat.fit, years);
                        longest = if to.unwrap_or(-1.0) > longest.unwrap_or(-1.0) { to } else { longest };
                    }
                }
                let found = room_to_grow(&spec);
                assert_eq!(found.map_or(serves_to(&own.fit, years), |g| Some(g.ages.1)), longest, "{months} months, {build:?}");
                offered += u32::from(found.is_some());
            }
        }
        assert!(offered > 10, "{offered}");
    }

    #[test]
    fn the_grown_and_the_measured_have_no_room_to_grow() {
        for head in [
            Head::Measured(Length::from_cm(49.8)),
            Head::ByAge { age: Age::Years(Count::whole(18)), sex: Sex::Female, build: Build::Average },
            Head::ByDates { born: Day(10), worn: Day(0), sex: Sex::Unknown, build: Build::Average },
        ] {
            assert_eq!(room_to_grow(&HatSpec { head, ..HatSpec::default() }), None);
        }
    }

    #[test]
    fn counts_taken_before_have_no_say() {
        let spec = child(48, Build::Average);
        let larger = room_to_grow(&spec).unwrap();
        assert_eq!(room_to_grow(&HatSpec { chosen: Some(larger.chosen), ..spec }), Some(larger));
    }
}
