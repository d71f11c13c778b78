//! Sentences about an input that breaks its rule.

mod names;

use core::fmt;
use hatwright_sizing::{Breach, HatSpec, Row, Unit};
use hatwright_words::{document as words, figures};
use names::name;

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
                let [value, least, most] = [ticks, row.least, row.most].map(|ticks| Plain(&row, ticks).to_string());
                let [value, most] = [value, most].map(|number| [&number, unit(&row)].concat());
                f.write_str(&words::breach_range(name(quantity), &value, &least, &most))
            }
            Breach::WrongCount => f.write_str(&words::breach_count(HatSpec::MOST_COLOURS as u32, HatSpec::MOST_STRIPES as u32)),
            Breach::NoSuchColour(colour) => f.write_str(&words::breach_colour(u32::from(colour.0) + 1)),
            Breach::Dates => f.write_str(words::breach_dates()),
            Breach::UnfitFabric => f.write_str(words::breach_fabric()),
            Breach::KeptRounds => f.write_str(words::breach_kept()),
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
            f.write_str(figures::mark())?;
        }
        while rest > 0 {
            write!(f, "{}", rest / place)?;
            rest %= place;
            place /= 10;
        }
        Ok(())
    }
}
