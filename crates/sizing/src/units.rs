//! Lengths, counts and ratios: a type for each, so that a row is never taken for a round nor a stitch for a centimetre.

use core::fmt;
use serde::{Deserialize, Serialize};

/// A length in hundredths of a millimetre, so that one centimetre (1000) and one inch (2540) are both whole.
///
/// ```
/// use hatwright_sizing::Length;
/// assert_eq!(Length::from_inches(19.5).ticks(), 49_530);
/// assert!((Length::from_cm(49.8).inches() - 19.606).abs() < 0.001);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Length(i32);

impl Length {
    /// No length.
    pub const ZERO: Self = Self(0);

    /// A length from its hundredths of a millimetre.
    pub const fn from_ticks(ticks: i32) -> Self {
        Self(ticks)
    }

    /// The length in hundredths of a millimetre.
    pub const fn ticks(self) -> i32 {
        self.0
    }

    /// The nearest length to so many centimetres; a value beyond ± 21 km is held at that.
    pub fn from_cm(cm: f64) -> Self {
        Self(libm::round(cm * 1000.0) as i32)
    }

    /// The nearest length to so many inches of 2.54 cm.
    pub fn from_inches(inches: f64) -> Self {
        Self(libm::round(inches * 2540.0) as i32)
    }

    /// The length in centimetres.
    pub fn cm(self) -> f64 {
        f64::from(self.0) / 1000.0
    }

    /// The length in inches.
    pub fn inches(self) -> f64 {
        f64::from(self.0) / 2540.0
    }
}

/// A ratio in ten-thousandths: an ease of 7 % is 700, a stretch of 1.10 is 11 000.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Ratio(i32);

impl Ratio {
    /// A ratio from its ten-thousandths.
    pub const fn from_ticks(ticks: i32) -> Self {
        Self(ticks)
    }

    /// The ratio in ten-thousandths.
    pub const fn ticks(self) -> i32 {
        self.0
    }

    /// The nearest ratio to a plain number: 0.074 is 7.4 %.
    pub fn of(value: f64) -> Self {
        Self(libm::round(value * 10_000.0) as i32)
    }

    /// The ratio as a plain number.
    pub fn value(self) -> f64 {
        f64::from(self.0) / 10_000.0
    }
}

/// A counted or averaged number in hundredths: 12.5 stitches of a swatch is 1250.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Count(i32);

impl Count {
    /// A count from its hundredths.
    pub const fn from_ticks(ticks: i32) -> Self {
        Self(ticks)
    }

    /// A whole count.
    pub const fn whole(count: i32) -> Self {
        Self(count * 100)
    }

    /// The count in hundredths.
    pub const fn ticks(self) -> i32 {
        self.0
    }

    /// The count as a plain number.
    pub fn value(self) -> f64 {
        f64::from(self.0) / 100.0
    }
}

/// A weight in hundredths of a gram.
///
/// ```
/// use hatwright_sizing::Mass;
/// assert_eq!(Mass::from_grams(49.6).ticks(), 4_960);
/// assert!((Mass::from_grams(100.0).ounces() - 3.527).abs() < 0.001);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Mass(i32);

impl Mass {
    /// A weight from its hundredths of a gram.
    pub const fn from_ticks(ticks: i32) -> Self {
        Self(ticks)
    }

    /// The weight in hundredths of a gram.
    pub const fn ticks(self) -> i32 {
        self.0
    }

    /// The nearest weight to so many grams; a value beyond ± 21 tonnes is held at that.
    pub fn from_grams(grams: f64) -> Self {
        Self(libm::round(grams * 100.0) as i32)
    }

    /// The weight in grams.
    pub fn grams(self) -> f64 {
        f64::from(self.0) / 100.0
    }

    /// The weight in avoirdupois ounces of 28.349523125 g.
    pub fn ounces(self) -> f64 {
        self.grams() / 28.349_523_125
    }
}

/// An amount of money in hundredths of whatever the buyer pays with.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Money(i64);

impl Money {
    /// An amount from its hundredths.
    pub const fn from_ticks(ticks: i64) -> Self {
        Self(ticks)
    }

    /// The amount in hundredths.
    pub const fn ticks(self) -> i64 {
        self.0
    }

    /// So many times the amount.
    ///
    /// ```
    /// use hatwright_sizing::Money;
    /// assert_eq!(Money::from_ticks(450).times(3), Money::from_ticks(1_350));
    /// ```
    #[must_use]
    pub const fn times(self, count: u32) -> Self {
        Self(self.0.saturating_mul(count as i64))
    }
}

impl core::iter::Sum for Money {
    /// Held at the most that there is, as [`Money::times`] is.
    ///
    /// ```
    /// use hatwright_sizing::Money;
    /// let all = [Money::from_ticks(450), Money::from_ticks(600)];
    /// assert_eq!(all.into_iter().sum::<Money>(), Money::from_ticks(1_050));
    /// let most = Money::from_ticks(i64::MAX);
    /// assert_eq!(([most, all[0]].into_iter().sum::<Money>(), most.times(2)), (most, most));
    /// ```
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        Self(all.fold(0, |sum, money| sum.saturating_add(money.0)))
    }
}

macro_rules! whole_number {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(u32);

        impl $name {
            /// So many of them.
            pub const fn new(count: u32) -> Self {
                Self(count)
            }

            /// How many.
            pub const fn get(self) -> u32 {
                self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }
    };
}

whole_number! {
    /// Stitches, side by side.
    Stitches
}
whole_number! {
    /// Rounds of the body, one above the other. Never turned.
    Rounds
}
whole_number! {
    /// Rows of the band, worked back and forth and lying along the head's girth.
    Rows
}
