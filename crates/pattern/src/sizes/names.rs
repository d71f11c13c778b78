//! What a size is called where its designer gave it no name.

use crate::figures::{Units, age, length};
use hatwright_sizing::{Build, Head, Sex, head_size};
use hatwright_words::sizes as words;

/// A size's name by its head: an age, a grown-up's S, M or L, or the girth.
///
/// ```
/// use hatwright_pattern::figures::Units::Centimetres;
/// use hatwright_pattern::sizes::size_name;
/// use hatwright_sizing::{Age, Build, Count, Head, Length, Sex};
/// let by_age = |years, build| Head::ByAge { age: Age::Years(Count::whole(years)), sex: Sex::Unknown, build };
/// assert_eq!(size_name(&by_age(4, Build::Average), Centimetres), "4 years");
/// assert_eq!(size_name(&by_age(4, Build::Large), Centimetres), "4 years, large head");
/// assert_eq!(size_name(&by_age(30, Build::Small), Centimetres), "adult S");
/// assert_eq!(size_name(&Head::Measured(Length::from_cm(57.0)), Centimetres), "head 57.0 cm");
/// ```
pub fn size_name(head: &Head, units: Units) -> String {
    let girth = || words::of_girth(&length(head_size(head).girth, units));
    let (years, sex, build) = match *head {
        Head::Measured(_) => return girth(),
        Head::ByAge { age, sex, build } => (age.years(), sex, build),
        Head::ByDates { born, worn, sex, build } => (born.years_to(worn).unwrap_or(0.0), sex, build),
    };
    if years >= 18.0 {
        let label = match build {
            Build::Small => words::small(),
            Build::Average => words::medium(),
            Build::Large => words::large(),
            Build::Percentile(_) => return girth(),
        };
        return match sex {
            Sex::Unknown => words::adult(label),
            Sex::Female => words::woman(label),
            Sex::Male => words::man(label),
        };
    }
    match build {
        Build::Small => words::small_head(&age(years)),
        Build::Average => age(years),
        Build::Large => words::large_head(&age(years)),
        Build::Percentile(_) => girth(),
    }
}
