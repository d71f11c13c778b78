//! The sizes that are offered by a tap.

use hatwright_sizing::{Age, Build, Count, Head, Sex};
use hatwright_words::publish as told;

/// A group of offers.
pub struct Group {
    /// Its name.
    pub name: fn() -> &'static str,
    /// A key for ids.
    pub key: &'static str,
    /// Whose heads.
    pub heads: Vec<Head>,
}

/// Babies by months, children by years, grown-ups by S, M and L (10th, 50th and 90th percentile of both sexes together).
pub fn groups() -> [Group; 3] {
    let (sex, build) = (Sex::Unknown, Build::Average);
    let months = |months| Head::ByAge { age: Age::Months(Count::whole(months)), sex, build };
    let years = |years| Head::ByAge { age: Age::Years(Count::whole(years)), sex, build };
    let grown = |build| Head::ByAge { age: Age::Years(Count::whole(30)), sex, build };
    [
        Group { name: told::sizes_babies, key: "baby", heads: [3, 6, 12, 18].map(months).to_vec() },
        Group { name: told::sizes_children, key: "child", heads: [2, 4, 6, 8, 10, 14].map(years).to_vec() },
        Group { name: told::sizes_adults, key: "adult", heads: [Build::Small, Build::Average, Build::Large].map(grown).to_vec() },
    ]
}
