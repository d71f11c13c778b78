//! What is said beside a field whose text cannot be used.

use crate::figures::{Misread, Units, amount, length, show, unit_label, weight_and_length};
use hatwright_sizing::{Length, Quantity, Unit};

/// What is wrong with a typed text that is no number. Long texts are quoted in part.
pub fn misread(q: Quantity, why: &Misread, typed: &str, units: Units) -> String {
    let row = q.row();
    let example = show(row.usual, row.unit, units);
    let quoted = quote(typed);
    match why {
        Misread::Empty => ["Nothing is typed here yet. A number such as ", &example, " belongs here."].concat(),
        Misread::NotANumber => [&quoted, " is not a number for this field. Type one such as ", &example, "."].concat(),
        Misread::TwoMarks => {
            [&quoted, " has more than one decimal mark. Keep only the one before the decimals, as in 52.5 or 52,5."].concat()
        }
        Misread::TooLong => [&quoted, " has more digits than any hat. ", &range(q, units)].concat(),
        Misread::Negative => [&quoted, " is less than nothing. ", &range(q, units)].concat(),
        Misread::Weight => {
            [&quoted, " is a weight; here goes ", wants(q), ", such as ", &example_of(q, units), elsewhere(q)].concat()
        }
        Misread::Length => {
            [&quoted, " is a length; here goes ", wants(q), ", such as ", &example_of(q, units), elsewhere(q)].concat()
        }
        Misread::Both => both(q, typed, &quoted, units),
        Misread::NotWhole => {
            [&quoted, " is not whole. These are counted one by one: type a number such as ", &example, "."].concat()
        }
    }
}

/// What belongs into a field that a weight or a length was typed into.
const fn wants(q: Quantity) -> &'static str {
    use Quantity as Q;
    match q {
        Q::BallYarn | Q::InsteadYarn => "the length of the yarn in a ball",
        Q::BallGrams | Q::InsteadGrams => "what a ball weighs",
        Q::BallPrice => "what a ball costs",
        Q::UnravelledLength => "the length of the unravelled yarn",
        Q::WeighedGrams => "what the swatch weighs",
        Q::ScaleStep => "the least weight that the scale tells apart",
        Q::HatGrams => "what the hat weighs",
        _ => "another number",
    }
}

/// Where the other half of a ball's band goes.
const fn elsewhere(q: Quantity) -> &'static str {
    use Quantity as Q;
    match q {
        Q::BallYarn | Q::InsteadYarn => ". The weight has a field of its own.",
        Q::BallGrams | Q::InsteadGrams => ". The length has a field of its own.",
        _ => ".",
    }
}

fn example_of(q: Quantity, units: Units) -> String {
    let row = q.row();
    // 87.5 yd and 1.76 oz would be odd examples.
    match (row.unit, units) {
        (Unit::Yarn, Units::Inches) => "90 yd".into(),
        (Unit::Mass, Units::Inches) => "2 oz".into(),
        (Unit::Length, _) => length(Length::from_ticks(row.usual), units),
        _ => amount(row.usual, row.unit, units),
    }
}

/// Which part of a ball's band goes where.
fn both(q: Quantity, typed: &str, quoted: &str, units: Units) -> String {
    let start = [quoted, " is a weight and a length. "].concat();
    match (weight_and_length(typed), q.row().unit) {
        (Some((weight, length)), Unit::Yarn) => {
            [&*start, "Here goes the length, ", length, "; the weight, ", weight, ", has a field of its own."].concat()
        }
        (Some((weight, length)), Unit::Mass) if matches!(q, Quantity::BallGrams | Quantity::InsteadGrams) => {
            [&*start, "Here goes the weight, ", weight, "; the length, ", length, ", has a field of its own."].concat()
        }
        _ => [&*start, "Here goes ", wants(q), ", such as ", &example_of(q, units), "."].concat(),
    }
}

/// What is wrong with a number outside its range, and what is sensible.
///
/// ```
/// use hatwright_pattern::{figures::Units, say::out_of_range};
/// use hatwright_sizing::Quantity;
/// assert_eq!(
///     out_of_range(Quantity::HeadGirth, 300_000, Units::Centimetres),
///     "300 cm is no head: heads are 22 to 75 cm around; most adults 52 to 62 cm."
/// );
/// ```
pub fn out_of_range(q: Quantity, ticks: i32, units: Units) -> String {
    let row = q.row();
    let typed = named(q, &amount(ticks, row.unit, units));
    if q == Quantity::HeadGirth {
        let heads = span(row.least, row.most, row.unit, units);
        let adults = span(52_000, 62_000, row.unit, units);
        return [&typed, " is no head: heads are ", &heads, " around; most adults ", &adults, "."].concat();
    }
    if ticks == 0
        && let Some(empty) = empty_ball(q)
    {
        let range = span(row.least, row.most, row.unit, units);
        return ["A ball of ", &typed, empty, &range, "."].concat();
    }
    let made = match q {
        Quantity::BodyStitch | Quantity::BandStitch => "That makes a stitch ",
        Quantity::BodyRound => "That makes a round ",
        Quantity::BandRow => "That makes a row ",
        _ => "",
    };
    if !made.is_empty() {
        let across = if matches!(q, Quantity::BodyStitch | Quantity::BandStitch) { " wide" } else { " tall" };
        let usual = span(row.least, row.most, row.unit, units);
        return [made, &typed, across, ", and crochet has ", &usual, ". Check the count, and over what it was counted."].concat();
    }
    let fault = if ticks < row.least { " is too little here. " } else { " is too much here. " };
    let mut text = [&typed, fault, &range(q, units)].concat();
    if let Some(advice) = advice(q, ticks < row.least) {
        text.push(' ');
        text.push_str(advice);
    }
    text
}

/// What is said of a ball of nothing.
const fn empty_ball(q: Quantity) -> Option<&'static str> {
    match q {
        Quantity::BallYarn | Quantity::InsteadYarn => {
            Some(" has no yarn, so no number of balls is enough. Its band tells the length: ")
        }
        Quantity::BallGrams | Quantity::InsteadGrams => {
            Some(" has nothing in it. Its band tells the weight; leave this empty if it does not: ")
        }
        _ => None,
    }
}

const fn advice(q: Quantity, low: bool) -> Option<&'static str> {
    use Quantity as Q;
    Some(match (q, low) {
        (Q::AgeWeeks, false) => "Give the age in months or years.",
        (Q::AgeMonths, false) => "Give the age in years.",
        (Q::AgeYears, false) => "From 18 on, an adult's head is used.",
        (Q::SwatchStitches | Q::BandSwatchStitches, true) => "So few stitches tell nothing of the fabric: count 12 or more.",
        (Q::SwatchRounds | Q::BandSwatchRows, true) => "So few tell nothing of the fabric: count 12 or more.",
        (Q::SwatchWidth | Q::SwatchHeight | Q::BandSwatchWidth | Q::BandSwatchLength, true) => {
            "Measure at least 10 cm (4 in) if the swatch allows it."
        }
        (Q::BodyStretch | Q::BandStretch, true) => "A factor of 1 is a fabric that does not stretch; plain fabric has about 1.1.",
        (Q::BodyStretch, false) => "Plain fabric has about 1.1.",
        (Q::BandStretch, false) => "A sideways rib has about 1.35.",
        (Q::Ease, _) => "Usual is 5 to 9 %, and 0 to 3 % for a bare or tender head.",
        (Q::BandHeight, _) => "Usual is 6 to 12 stitches, twice that where half is folded up.",
        (Q::Wedges | Q::SideWedges, _) => "Usual is 6 or 8.",
        (Q::Gather, true) => "For fewer, choose a top that is drawn up.",
        (Q::Percentile, _) => "50 is the average.",
        (Q::OverTop, _) => "It is about six tenths of the girth.",
        (Q::Lining, false) => "Give the thickness of one layer, not what it adds around.",
        (Q::Hook | Q::BandHook, _) => "Hooks are told in millimetres: 5 or 5.5, for example.",
        (Q::Strands, _) => "One strand is usual.",
        (Q::BandRounds, _) => "Usual is 4 to 10 rounds.",
        (Q::SlouchWider, _) => "Usual is 10 to 25 %.",
        (Q::TamAcross, _) => "Usual is 25 to 28 cm (10 to 11 in) for an adult.",
        (Q::TailStitches, _) => "Usual is 8 to 12.",
        (Q::FlapLength, _) => "Usual is 7 to 12 cm (3 to 5 in).",
        (Q::Flare, _) => "100 % lies flat.",
        (Q::PomPom | Q::Brim, _) => "Usual is 5 to 8 cm (2 to 3 in).",
        (Q::Tassel, _) => "Usual is 8 to 15 cm (3 to 6 in).",
        (Q::Fullness, _) => "100 % has the usual wraps.",
        (Q::BallYarn | Q::InsteadYarn, _) => "The ball's band tells the length.",
        (Q::BallGrams | Q::InsteadGrams, _) => "The ball's band tells the weight; most balls have 25 to 200 g (1 to 7 oz).",
        (Q::Chance, false) => "No yarn is certain: 95 % is usual, and 99 % for a lot that cannot be bought again.",
        (Q::Chance, true) => "50 % is as likely too little as enough; 95 % is usual.",
        (Q::Margin, _) => "A quarter more, 25 %, is usual over an estimate.",
        (Q::WeighedStitches, true) => "So few weigh too little to tell: weigh a whole swatch.",
        (Q::WeighedGrams, true) => "So little tells nothing on a scale: weigh a larger swatch.",
        (Q::WeighedGrams, false) => "No swatch weighs so much: check the unit.",
        (Q::ScaleStep, _) => "Most kitchen scales show whole grams.",
        (Q::UnravelledStitches, _) => "Twenty or so are enough.",
        (Q::UnravelledLength, _) => "A stitch of common yarn takes 3 to 8 cm (1 to 3 in).",
        (Q::HatGrams, _) => "Most hats weigh 30 to 200 g (1 to 7 oz).",
        (Q::KeptFactor, _) => "So far from the estimate, count and weigh again.",
        _ => return None,
    })
}

/// `It takes 4 to 200 stitches.`
fn range(q: Quantity, units: Units) -> String {
    let row = q.row();
    ["It takes ", &named(q, &span(row.least, row.most, row.unit, units)), "."].concat()
}

/// Puts the name of what is counted after a bare number.
fn named(q: Quantity, figure: &str) -> String {
    use Quantity as Q;
    let noun = match q {
        Q::AgeWeeks => " weeks",
        Q::AgeMonths => " months",
        Q::AgeYears => " years",
        Q::SwatchStitches
        | Q::BandSwatchStitches
        | Q::InsteadStitches
        | Q::WeighedStitches
        | Q::UnravelledStitches
        | Q::BandHeight
        | Q::Gather
        | Q::TailStitches => " stitches",
        Q::SwatchRounds | Q::InsteadRounds | Q::StripeRounds | Q::BandRounds => " rounds",
        Q::BallsOwned => " balls",
        Q::BandSwatchRows | Q::StripeRows => " rows",
        Q::Wedges | Q::SideWedges => " wedges",
        Q::Strands => " strands",
        _ => "",
    };
    let one = figure == "1";
    [figure, if one && noun == " stitches" { " stitch" } else { noun.strip_suffix('s').filter(|_| one).unwrap_or(noun) }].concat()
}

/// A range with one unit, each end rounded to a tenth that still lies inside.
fn span(least: i32, most: i32, unit: Unit, units: Units) -> String {
    let unit_text = unit_label(unit, units);
    let space = if unit_text.is_empty() { "" } else { " " };
    [&inside(least, unit, units, true), " to ", &inside(most, unit, units, false), space, unit_text].concat()
}

fn inside(ticks: i32, unit: Unit, units: Units, up: bool) -> String {
    // A tenth of the shown unit in hundredths of a tick; only inches, yards and ounces do not divide the table's ranges.
    let tenth = match (unit, units) {
        (Unit::Length, Units::Inches) => 25_400,
        (Unit::Yarn, Units::Inches) => 914,
        (Unit::Mass, Units::Inches) => 28_350,
        _ => return show(ticks, unit, units),
    };
    let fine = i64::from(ticks) * 100;
    let tenths = if up { (fine + tenth - 1) / tenth } else { fine / tenth };
    let nearest = ((tenths * tenth + 50) / 100) as i32;
    show(nearest, unit, units)
}

fn quote(typed: &str) -> String {
    const MOST: usize = 24;
    let typed = typed.trim();
    let mut text = String::from("“");
    text.extend(typed.chars().take(MOST));
    if typed.chars().nth(MOST).is_some() {
        text.push('…');
    }
    text.push('”');
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::parse;

    const BOTH: [Units; 2] = [Units::Centimetres, Units::Inches];

    #[test]
    fn the_ranges_that_are_named_are_accepted() {
        for q in Quantity::ALL {
            let row = q.row();
            for units in BOTH {
                for text in [inside(row.least, row.unit, units, true), inside(row.most, row.unit, units, false)] {
                    let ticks = parse(&text, row.unit, units).unwrap();
                    assert!(row.holds(ticks), "{q:?} {text} {units:?}");
                    assert!(text.split_once('.').is_none_or(|(_, d)| d.len() <= 4), "{text}");
                }
            }
        }
    }

    #[test]
    fn every_refusal_is_a_sentence_with_the_range() {
        for q in Quantity::ALL {
            let row = q.row();
            for ticks in [i32::MIN, row.least - 1, row.most + 1, i32::MAX] {
                for units in BOTH {
                    let text = out_of_range(*q, ticks, units);
                    assert!(text.ends_with('.') && text.contains(" to "), "{text}");
                }
            }
        }
    }

    #[test]
    fn sentences_read_well() {
        let cm = Units::Centimetres;
        assert_eq!(
            out_of_range(Quantity::SwatchStitches, 10, cm),
            "0.1 stitches is too little here. It takes 4 to 200 stitches. So few stitches tell nothing of the fabric: count 12 or more."
        );
        assert_eq!(
            out_of_range(Quantity::BandHeight, 1, cm),
            "1 stitch is too little here. It takes 2 to 80 stitches. Usual is 6 to 12 stitches, twice that where half is folded up."
        );
        assert_eq!(
            out_of_range(Quantity::HeadGirth, 254_000, Units::Inches),
            "100 in is no head: heads are 8.7 to 29.5 in around; most adults 20.5 to 24.4 in."
        );
        assert_eq!(
            misread(Quantity::HeadGirth, &Misread::NotANumber, " big ", cm),
            "“big” is not a number for this field. Type one such as 49.8."
        );
        assert_eq!(misread(Quantity::Fold, &Misread::Negative, "-4", cm), "“-4” is less than nothing. It takes 0 to 40 cm.");
        assert!(misread(Quantity::Fold, &Misread::TooLong, &"9".repeat(90), cm).chars().count() < 90);
    }

    /// Told in the field of a ball's length, of its weight, and of its price: which part belongs where.
    #[test]
    fn a_weight_for_a_length_is_answered_with_what_belongs_there() {
        use crate::figures::parse_for;
        let told = |q, text: &str, units| misread(q, &parse_for(q, text, units).unwrap_err(), text, units);
        let (cm, inches) = (Units::Centimetres, Units::Inches);
        for (q, text, units, says) in [
            (
                Quantity::BallYarn,
                "50 g",
                cm,
                "“50 g” is a weight; here goes the length of the yarn in a ball, such as 80 m. The weight has a field of its own.",
            ),
            (
                Quantity::BallGrams,
                "87 yd",
                inches,
                "“87 yd” is a length; here goes what a ball weighs, such as 2 oz. The length has a field of its own.",
            ),
            (
                Quantity::InsteadYarn,
                "50 g / 80 m",
                cm,
                "“50 g / 80 m” is a weight and a length. Here goes the length, 80 m; the weight, 50 g, has a field of its own.",
            ),
            (
                Quantity::BallGrams,
                "80m=50g",
                cm,
                "“80m=50g” is a weight and a length. Here goes the weight, 50g; the length, 80m, has a field of its own.",
            ),
            (Quantity::BallPrice, "50 g", cm, "“50 g” is a weight; here goes what a ball costs, such as 4.50."),
            (
                Quantity::UnravelledLength,
                "2 oz",
                inches,
                "“2 oz” is a weight; here goes the length of the unravelled yarn, such as 45.7 in.",
            ),
            (
                Quantity::HatGrams,
                "60 g of 100 m",
                cm,
                "“60 g of 100 m” is a weight and a length. Here goes what the hat weighs, such as 60 g.",
            ),
        ] {
            assert_eq!(told(q, text, units), says);
        }
    }

    #[test]
    fn a_ball_of_nothing_is_told_as_that() {
        assert_eq!(
            out_of_range(Quantity::BallYarn, 0, Units::Centimetres),
            "A ball of 0 m has no yarn, so no number of balls is enough. Its band tells the length: 5 to 2000 m."
        );
        assert_eq!(
            out_of_range(Quantity::BallGrams, 0, Units::Inches),
            "A ball of 0 oz has nothing in it. Its band tells the weight; leave this empty if it does not: 0.1 to 176.3 oz."
        );
        assert_eq!(
            out_of_range(Quantity::BallPrice, 10_000_001, Units::Centimetres),
            "100000.01 is too much here. It takes 0.00 to 100000.00."
        );
        assert!(out_of_range(Quantity::Chance, 10_000, Units::Centimetres).ends_with("cannot be bought again."));
    }
}
