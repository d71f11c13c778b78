//! What follows a typed number: a unit or a noun, in every language that the program speaks, and what one of it is worth.

use super::Units;
use hatwright_sizing::{Quantity, Unit};

/// A positive fraction.
pub(super) struct Fraction {
    pub above: u64,
    pub below: u64,
}

/// Hundredths of a gram in an avoirdupois ounce, a sixteenth of a pound of exactly 453.592 37 g (international yard and pound
/// agreement, 1959): 2834.952 312 5.
pub(super) const OUNCE: (u64, u64) = (45_359_237, 16_000);

/// A unit of measure, whatever it is called.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Measure {
    Millimetre,
    Centimetre,
    Metre,
    Inch,
    Yard,
    Gram,
    Kilogram,
    Ounce,
    Pound,
    /// One that a person may type, though no field reads it.
    OtherLength,
}

/// Names of measures, in small letters; accents may be left out.
const MEASURES: [(Measure, &[&str]); 10] = [
    (Measure::Millimetre, &["mm", "milímetro", "milímetros", "milimetro", "milimetros"]),
    (Measure::Centimetre, &["cm", "centímetro", "centímetros", "centimetro", "centimetros"]),
    (Measure::Metre, &["m", "metre", "metres", "meter", "meters", "metro", "metros"]),
    (Measure::Inch, &["in", "inch", "inches", "\"", "″", "”", "''", "pulg", "pulgada", "pulgadas"]),
    (Measure::Yard, &["yd", "yds", "yard", "yards", "yarda", "yardas"]),
    (Measure::Gram, &["g", "gr", "gram", "grams", "gramme", "grammes", "gramo", "gramos"]),
    (Measure::Kilogram, &["kg", "kgs", "kilo", "kilos"]),
    (Measure::Ounce, &["oz", "ozs", "ounce", "ounces", "onza", "onzas"]),
    (Measure::Pound, &["lb", "lbs", "pound", "pounds", "libra", "libras"]),
    (Measure::OtherLength, &["km", "ft", "foot", "feet"]),
];

impl Measure {
    /// The measure of a name in small letters.
    pub(super) fn of(name: &str) -> Option<Self> {
        MEASURES.into_iter().find(|(_, names)| names.contains(&name)).map(|(measure, _)| measure)
    }

    /// Whether it measures how heavy something is, not how long.
    pub(super) const fn is_weight(self) -> bool {
        matches!(self, Self::Gram | Self::Kilogram | Self::Ounce | Self::Pound)
    }
}

/// What one of the typed unit is worth in ticks; `None` where the unit does not belong to the field.
pub(super) fn unit_scale(unit: Unit, units: Units, suffix: &str) -> Option<Fraction> {
    let inches = units == Units::Inches;
    let measure = match (unit, suffix) {
        (Unit::Length, "") => Some(if inches { Measure::Inch } else { Measure::Centimetre }),
        (Unit::Yarn, "") => Some(if inches { Measure::Yard } else { Measure::Metre }),
        (Unit::Mass, "") => Some(if inches { Measure::Ounce } else { Measure::Gram }),
        // A hook is told in millimetres whatever the units.
        (Unit::Hook, "") => Some(Measure::Millimetre),
        _ => Measure::of(suffix),
    };
    let (above, below) = match (unit, measure) {
        (Unit::Length, Some(Measure::Centimetre)) => (1000, 1),
        (Unit::Length, Some(Measure::Metre)) | (Unit::Mass, Some(Measure::Kilogram)) => (100_000, 1),
        (Unit::Length, Some(Measure::Inch)) => (2540, 1),
        (Unit::Length, Some(Measure::Yard)) => (91_440, 1),
        (Unit::Length | Unit::Hook, Some(Measure::Millimetre))
        | (Unit::Yarn, Some(Measure::Metre))
        | (Unit::Mass, Some(Measure::Gram)) => (100, 1),
        (Unit::Yarn, Some(Measure::Yard)) => (9144, 100),
        (Unit::Mass, Some(Measure::Ounce)) => OUNCE,
        (Unit::Mass, Some(Measure::Pound)) => (16 * OUNCE.0, OUNCE.1),
        _ => match (unit, suffix) {
            (Unit::Price, "") => (1000, 1),
            (Unit::Percent, "" | "%") | (Unit::Count | Unit::Money, "") => (100, 1),
            (Unit::Factor, "" | "x" | "×" | "times" | "veces") => (10_000, 1),
            (Unit::Whole, "") => (1, 1),
            _ => return None,
        },
    };
    Some(Fraction { above, below })
}

/// What one of a noun is worth in ticks of the quantity; `None` where the quantity does not count such things.
pub(super) fn noun_scale(q: Quantity, noun: &str) -> Option<Fraction> {
    use Quantity as Q;
    let nouns: &[&str] = match q {
        Q::AgeWeeks | Q::AgeMonths | Q::AgeYears => return age_scale(q, noun),
        Q::SwatchStitches
        | Q::BandSwatchStitches
        | Q::InsteadStitches
        | Q::WeighedStitches
        | Q::UnravelledStitches
        | Q::BandHeight
        | Q::Gather
        | Q::TailStitches => &["st", "sts", "stitch", "stitches", "p", "ps", "punto", "puntos"],
        Q::SwatchRounds | Q::InsteadRounds | Q::StripeRounds | Q::BandRounds => {
            &["rnd", "rnds", "round", "rounds", "vuelta", "vueltas"]
        }
        Q::BandSwatchRows | Q::StripeRows => &["row", "rows", "hilera", "hileras"],
        Q::Wedges | Q::SideWedges => &["wedge", "wedges", "gajo", "gajos"],
        Q::Strands => &["strand", "strands", "hilo", "hilos", "hebra", "hebras"],
        Q::BallsOwned => &["ball", "balls", "ovillo", "ovillos"],
        _ => &[],
    };
    let each = if q.row().unit == Unit::Count { 100 } else { 1 };
    nouns.contains(&noun).then_some(Fraction { above: each, below: 1 })
}

/// Hundredths of the field's weeks, months or years in what was typed: a year is 365.25 days, 1461 quarters of one.
fn age_scale(q: Quantity, noun: &str) -> Option<Fraction> {
    // Twelfths of a quarter of a day, in which a month is whole as well.
    const DAY: u64 = 48;
    const YEAR: u64 = 1461 * 12;
    let own = match q {
        Quantity::AgeWeeks => 7 * DAY,
        Quantity::AgeMonths => YEAR / 12,
        _ => YEAR,
    };
    let typed = match noun {
        "day" | "days" | "día" | "días" | "dia" | "dias" => DAY,
        "week" | "weeks" | "semana" | "semanas" => 7 * DAY,
        "month" | "months" | "mes" | "meses" => YEAR / 12,
        "year" | "years" | "año" | "años" => YEAR,
        _ => return None,
    };
    let common = u64::from(hatwright_sizing::gcd(typed as u32, own as u32));
    let hundred = u64::from(hatwright_sizing::gcd(100, (own / common) as u32));
    Some(Fraction { above: 100 / hundred * (typed / common), below: own / common / hundred })
}
