//! Heads by age and sex: mean girth and spread from birth to old age.
//!
//! Three sources follow one another:
//! - to 5 years, WHO Child Growth Standards: head circumference-for-age, 2007 (copyright WHO; no endorsement is claimed);
//! - to 18 years, Snyder et al. 1977, UM-HSRI-77-17, smoothed. It runs 0.50 cm (boys) and 0.28 cm (girls) above WHO at 5 years; the
//!   difference is taken off there and tapers to nothing at 10 years;
//! - from 18 years, NIOSH 2003, civilian workers aged 18–66.
//!
//! At 18 the last two do not meet: men step up by 0.47 cm, women by 1.33 cm, sex unknown by 0.90 cm. The step is left in, not
//! smoothed away: each side of it is what its survey found.
//!
//! Girths of one age and sex are taken to be normally distributed, which WHO's own table is (its L is 1 throughout).

use crate::{Head, HeadBasis, HeadSize, Length, Sex, normal_quantile, normal_share_below};

/// Years from which a head is an adult's.
const ADULT: f64 = 18.0;

/// Years at which the rows by month end and those by half-year begin.
const MONTHLY_TO: f64 = 5.0;

/// The oldest age that the tables are asked for: adults do not change.
const OLDEST: f64 = 110.0;

/// Heads of one age.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heads {
    /// Mean girth in cm; of one sex, the median too.
    pub mean_cm: f64,
    /// Standard deviation in cm.
    pub sd_cm: f64,
    /// The source.
    pub basis: HeadBasis,
}

impl Heads {
    /// The girth in cm that lies so many standard deviations above the mean.
    fn at(self, z: f64) -> f64 {
        self.mean_cm + z * self.sd_cm
    }

    /// Share of these heads that are smaller than a girth in cm, 0 to 1.
    fn below(self, girth: f64) -> f64 {
        normal_share_below((girth - self.mean_cm) / self.sd_cm)
    }

    /// Share of these heads with a girth in a range, 0 to 1; none where the range is turned round.
    fn share_within(self, least: Length, most: Length) -> f64 {
        if most < least { 0.0 } else { self.below(most.cm()) - self.below(least.cm()) }
    }
}

/// Heads at an age in years, held to 0–110 (what is not a number counts as 0).
///
/// Between rows of the table, mean and deviation are linear in age. Sex unknown is an equal mixture of the two: mean of the means;
/// variance = mean of the variances + (half the difference of the means)².
///
/// A 4-year-old: girls 49.33 cm, boys 50.21 cm, sex unknown 49.77 ± 1.51 cm.
///
/// ```
/// use hatwright_sizing::{HeadBasis, Sex, heads_at};
/// let four = heads_at(4.0, Sex::Unknown);
/// assert!((four.mean_cm - 49.77).abs() < 1e-9);
/// assert!((four.sd_cm - 1.506).abs() < 0.001);
/// assert_eq!(four.basis, HeadBasis::Who);
/// assert!((heads_at(30.0, Sex::Male).mean_cm - 57.61).abs() < 1e-9);
/// ```
pub fn heads_at(years: f64, sex: Sex) -> Heads {
    match sex {
        Sex::Female => FEMALE.at(years),
        Sex::Male => MALE.at(years),
        Sex::Unknown => {
            let (f, m) = (FEMALE.at(years), MALE.at(years));
            let apart = (m.mean_cm - f.mean_cm) / 2.0;
            let variance = f64::midpoint(f.sd_cm * f.sd_cm, m.sd_cm * m.sd_cm) + apart * apart;
            Heads { mean_cm: f64::midpoint(f.mean_cm, m.mean_cm), sd_cm: libm::sqrt(variance), basis: f.basis }
        }
    }
}

/// The girth to plan for: the tape's, or a percentile of the table.
///
/// A small, average or large head is the 10th, 50th or 90th percentile, or any from the 1st to the 99th is asked for. Where the sex is
/// unknown it is the percentile of the mixture itself, not of a normal curve in its place ([`girth_below`]).
///
/// A large 4-year-old girl: 49.33 + 1.2816 × 1.42 = 51.15 cm; of unknown sex, 51.71 cm.
///
/// ```
/// use hatwright_sizing::{Age, Build, Count, Head, HeadBasis, Length, Sex, head_size};
/// let age = Age::Years(Count::whole(4));
/// let large = head_size(&Head::ByAge { age, sex: Sex::Unknown, build: Build::Large });
/// assert_eq!(large.girth, Length::from_cm(51.706));
/// assert_eq!(large.spread, Some(Length::from_cm(1.506)));
///
/// let taped = head_size(&Head::Measured(Length::from_cm(49.8)));
/// assert_eq!((taped.girth, taped.spread, taped.basis), (Length::from_cm(49.8), None, HeadBasis::Measured));
/// ```
pub fn head_size(head: &Head) -> HeadSize {
    match *head {
        Head::Measured(girth) => HeadSize { girth, spread: None, basis: HeadBasis::Measured },
        Head::ByAge { age, sex, build } => of_age(age.years(), sex, build.share()),
        // Days that make no age are a breach of the spec, found before any head is looked up.
        Head::ByDates { born, worn, sex, build } => of_age(born.years_to(worn).unwrap_or(0.0), sex, build.share()),
    }
}

fn of_age(years: f64, sex: Sex, share: f64) -> HeadSize {
    let Heads { sd_cm, basis, .. } = heads_at(years, sex);
    HeadSize { girth: Length::from_cm(girth_below(years, sex, share)), spread: Some(Length::from_cm(sd_cm)), basis }
}

/// The girth in cm below which a share of heads of an age lies: `share` is above 0 and below 1, the 50th percentile 0.5.
///
/// Of one sex it is the normal curve's own. Sex unknown is an equal mixture of the two, whose percentile lies between theirs; it is
/// found there by halving the interval, exact to a ten-millionth of their distance (at most 3 cm at any age: better than a
/// thousandth of a tick).
///
/// The median of 4-year-olds: girls 49.33 cm, boys 50.21 cm, sex unknown 49.76 cm, where the mean of the two means is 49.77 cm.
///
/// ```
/// use hatwright_sizing::{Sex, girth_below};
/// assert!((girth_below(4.0, Sex::Female, 0.9) - 51.150).abs() < 0.001);
/// assert!((girth_below(4.0, Sex::Unknown, 0.5) - 49.764).abs() < 0.001);
/// ```
pub fn girth_below(years: f64, sex: Sex, share: f64) -> f64 {
    const HALVINGS: u32 = 24;
    let z = normal_quantile(share);
    let (f, m) = (FEMALE.at(years), MALE.at(years));
    match sex {
        Sex::Female => f.at(z),
        Sex::Male => m.at(z),
        Sex::Unknown => {
            let (mut low, mut high) = (f.at(z).min(m.at(z)), f.at(z).max(m.at(z)));
            // Outside 0 to 1 there is no such girth but the infinite one, which cannot be halved towards.
            if !(high - low).is_finite() {
                return low;
            }
            for _ in 0..HALVINGS {
                let middle = f64::midpoint(low, high);
                if f64::midpoint(f.below(middle), m.below(middle)) < share {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            f64::midpoint(low, high)
        }
    }
}

impl Head {
    /// The wearer's age in years when the hat is worn; none for a measured head, or for days that make no age.
    ///
    /// Due on 1 January 1970, worn on 1 January 1974, 1461 days later:
    ///
    /// ```
    /// use hatwright_sizing::{Age, Build, Count, Day, Head, Length, Sex};
    /// let (sex, build) = (Sex::Unknown, Build::Average);
    /// let age = Head::ByDates { born: Day(0), worn: Day(1461), sex, build }.age_years();
    /// assert_eq!(age, Some(4.0));
    /// assert_eq!(Head::ByAge { age: Age::Months(Count::whole(18)), sex, build }.age_years(), Some(1.5));
    /// assert_eq!(Head::Measured(Length::from_cm(52.0)).age_years(), None);
    /// assert_eq!(Head::ByDates { born: Day(1), worn: Day(0), sex, build }.age_years(), None);
    /// ```
    pub fn age_years(&self) -> Option<f64> {
        match *self {
            Self::Measured(_) => None,
            Self::ByAge { age, .. } => Some(age.years()),
            Self::ByDates { born, worn, .. } => born.years_to(worn),
        }
    }

    /// The wearer's sex; unknown for a measured head.
    pub const fn sex(&self) -> Sex {
        match *self {
            Self::Measured(_) => Sex::Unknown,
            Self::ByAge { sex, .. } | Self::ByDates { sex, .. } => sex,
        }
    }
}

/// Share of heads of an age, in years as for [`heads_at`], with a girth from `least` to `most`: 0 to 1. None where `most < least`.
///
/// For unknown sex it is the mean of the two sexes' shares: the mixture itself, not a normal curve in its place.
///
/// One standard deviation to each side, of girls of 4 years (49.33 ± 1.42 cm), is 68.3 %:
///
/// ```
/// use hatwright_sizing::{Length, Sex, share_served};
/// let share = share_served(4.0, Sex::Female, Length::from_cm(47.91), Length::from_cm(50.75));
/// assert!((share - 0.6827).abs() < 1e-4);
/// ```
pub fn share_served(years: f64, sex: Sex, least: Length, most: Length) -> f64 {
    let share = |table: &Table| table.at(years).share_within(least, most);
    match sex {
        Sex::Female => share(&FEMALE),
        Sex::Male => share(&MALE),
        Sex::Unknown => f64::midpoint(share(&FEMALE), share(&MALE)),
    }
}

/// Rows by month from birth to 5 years, then by half-year to 18.
const ROWS: usize = 61 + 26;

/// One sex: hundredths of a cm by row, and adults in cm.
struct Table {
    mean: [u16; ROWS],
    sd: [u8; ROWS],
    adult: (f64, f64),
}

impl Table {
    fn at(&self, years: f64) -> Heads {
        let years = if years.is_nan() { 0.0 } else { years.clamp(0.0, OLDEST) };
        if years >= ADULT {
            return Heads { mean_cm: self.adult.0, sd_cm: self.adult.1, basis: HeadBasis::Niosh };
        }
        let (place, basis) = if years <= MONTHLY_TO {
            (years * 12.0, HeadBasis::Who)
        } else {
            (MONTHLY_TO * 12.0 + (years - MONTHLY_TO) * 2.0, HeadBasis::Snyder)
        };
        let row = (place as usize).min(ROWS - 2);
        let between = |a: f64, b: f64| (a + (b - a) * (place - row as f64)) / 100.0;
        Heads {
            mean_cm: between(f64::from(self.mean[row]), f64::from(self.mean[row + 1])),
            sd_cm: between(f64::from(self.sd[row]), f64::from(self.sd[row + 1])),
            basis,
        }
    }
}

static FEMALE: Table = Table {
    mean: [
        3388, 3655, 3825, 3953, 4058, 4146, 4220, 4283, 4337, 4383, 4423, 4458, 4490, 4518, 4543, 4566, 4586, 4606, 4624, 4642,
        4658, 4674, 4689, 4704, 4718, 4732, 4745, 4758, 4770, 4782, 4793, 4804, 4814, 4824, 4833, 4842, 4851, 4859, 4867, 4875,
        4882, 4889, 4896, 4903, 4909, 4916, 4922, 4928, 4933, 4939, 4944, 4949, 4955, 4960, 4965, 4969, 4974, 4979, 4983, 4988,
        4992, 5019, 5045, 5071, 5096, 5123, 5149, 5176, 5201, 5226, 5251, 5272, 5292, 5311, 5329, 5347, 5364, 5380, 5396, 5412,
        5426, 5438, 5447, 5453, 5454, 5454, 5454,
    ],
    sd: [
        118, 117, 121, 124, 127, 129, 130, 132, 133, 134, 135, 135, 136, 136, 137, 137, 138, 138, 138, 138, 139, 139, 139, 139,
        140, 140, 140, 140, 140, 140, 141, 141, 141, 141, 141, 141, 141, 141, 141, 142, 142, 142, 142, 142, 142, 142, 142, 142,
        142, 142, 142, 142, 142, 142, 142, 142, 142, 142, 142, 142, 142, 154, 154, 155, 155, 156, 156, 156, 157, 157, 158, 158,
        158, 159, 159, 160, 160, 160, 161, 161, 162, 162, 162, 163, 163, 164, 164,
    ],
    adult: (55.87, 2.065),
};

static MALE: Table = Table {
    mean: [
        3446, 3728, 3913, 4051, 4163, 4256, 4333, 4398, 4453, 4500, 4541, 4576, 4607, 4634, 4658, 4681, 4701, 4720, 4737, 4754,
        4769, 4784, 4798, 4812, 4825, 4838, 4850, 4862, 4873, 4883, 4894, 4903, 4913, 4922, 4930, 4938, 4946, 4954, 4961, 4968,
        4975, 4981, 4987, 4994, 4999, 5005, 5011, 5016, 5021, 5026, 5031, 5036, 5040, 5045, 5049, 5054, 5058, 5062, 5066, 5070,
        5074, 5098, 5121, 5144, 5167, 5190, 5213, 5237, 5260, 5283, 5305, 5323, 5341, 5360, 5380, 5402, 5426, 5453, 5483, 5516,
        5552, 5587, 5622, 5654, 5681, 5701, 5714,
    ],
    sd: [
        127, 117, 117, 118, 119, 121, 122, 123, 125, 126, 127, 128, 128, 129, 130, 131, 131, 132, 133, 133, 134, 134, 135, 136,
        136, 137, 137, 138, 138, 139, 139, 140, 140, 141, 141, 142, 142, 142, 143, 143, 144, 144, 144, 145, 145, 145, 146, 146,
        146, 147, 147, 147, 147, 148, 148, 148, 148, 149, 149, 149, 149, 146, 147, 148, 149, 151, 152, 153, 155, 156, 157, 159,
        160, 161, 163, 164, 165, 166, 168, 169, 170, 172, 173, 174, 176, 177, 178,
    ],
    adult: (57.61, 1.755),
};
