//! Sentences about an input that breaks its rule.

use core::fmt;
use hatwright_sizing::{Breach, HatSpec, Row, Unit};

/// Says a [`Breach`] as half a sentence, with the value and the sensible range in the metric unit.
///
/// ```
/// use hatwright_project::SayBreach;
/// use hatwright_sizing::{Breach, Quantity};
/// let breach = Breach::OutOfRange(Quantity::HeadGirth, 300_000);
/// assert_eq!(SayBreach(breach).to_string(), "its head girth is 300 cm, which should be 22 to 75 cm");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SayBreach(pub Breach);

impl fmt::Display for SayBreach {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            Breach::OutOfRange(quantity, ticks) => {
                let row = quantity.row();
                f.write_str("its ")?;
                for (i, word) in row.key.split('-').enumerate() {
                    write!(f, "{}{word}", if i == 0 { "" } else { " " })?;
                }
                let (value, least, most) = (Plain(&row, ticks), Plain(&row, row.least), Plain(&row, row.most));
                let unit = unit(&row);
                write!(f, " is {value}{unit}, which should be {least} to {most}{unit}")
            }
            Breach::WrongCount => write!(
                f,
                "a hat has 1 to {} colours, and 1 to {} stripes in its band and in its body",
                HatSpec::MOST_COLOURS,
                HatSpec::MOST_STRIPES
            ),
            Breach::NoSuchColour(colour) => {
                write!(f, "it uses colour number {}, which it does not have", u16::from(colour.0) + 1)
            }
            Breach::Dates => f.write_str("it is worn before its wearer is born, or more than 110 years after"),
            Breach::UnfitFabric => f.write_str(
                "a part of it is of a fabric that it cannot be worked in: a post-stitch rib is worked around and makes no body, and a \
                 slip-stitch rib is worked sideways",
            ),
            Breach::KeptRounds => f.write_str("the rounds that it was begun with cannot be worked one upon the other"),
        }
    }
}

fn unit(row: &Row) -> &'static str {
    match row.unit {
        Unit::Length => " cm",
        Unit::Hook => " mm",
        Unit::Yarn => " m",
        Unit::Mass => " g",
        Unit::Percent => " %",
        Unit::Count | Unit::Whole | Unit::Factor | Unit::Price | Unit::Money => "",
    }
}

/// Ticks as a decimal number. Whole arithmetic: formatting floats would cost the page several kilobytes.
struct Plain<'a>(&'a Row, i32);

impl fmt::Display for Plain<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let scale: u32 = match self.0.unit {
            Unit::Length | Unit::Price => 1000,
            Unit::Yarn | Unit::Mass | Unit::Money | Unit::Count | Unit::Percent | Unit::Hook => 100,
            Unit::Whole => 1,
            Unit::Factor => 10_000,
        };
        let size = self.1.unsigned_abs();
        write!(f, "{}{}", if self.1 < 0 { "−" } else { "" }, size / scale)?;
        let (mut rest, mut place) = (size % scale, scale / 10);
        if rest > 0 {
            f.write_str(".")?;
        }
        while rest > 0 {
            write!(f, "{}", rest / place)?;
            rest %= place;
            place /= 10;
        }
        Ok(())
    }
}
