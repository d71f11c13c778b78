//! Names of fields, and what is said beside one whose text cannot be used.

use crate::figures::{Misread, Units, amount, show, unit_label};
use hatwright_sizing::{Quantity, Unit};

/// The short name that stands beside a field.
pub const fn label(q: Quantity) -> &'static str {
    use Quantity as Q;
    match q {
        Q::HeadGirth => "Around the head",
        Q::Percentile => "Percentile",
        Q::OverTop => "Over the top, ear to ear",
        Q::Lining => "Hair or lining",
        Q::Hook => "Hook",
        Q::BandHook => "Hook of the band",
        Q::Strands => "Strands together",
        Q::BandRounds => "Rounds of the band",
        Q::SlouchWider => "Wider than the band",
        Q::SlouchLonger => "Longer than a fitted hat",
        Q::Tail => "Beyond the top of the head",
        Q::Taper => "Narrowing over at most",
        Q::TailStitches => "Stitches of the tail",
        Q::TamAcross => "Across, laid flat",
        Q::FlapLength => "Length of a flap",
        Q::FlapTie => "Length of a tie",
        Q::Brim => "Width of the brim",
        Q::Flare => "Flatness of the brim",
        Q::SideWedges => "Wedges of short rows",
        Q::AgeWeeks => "Age in weeks",
        Q::AgeMonths => "Age in months",
        Q::AgeYears => "Age in years",
        Q::SwatchStitches | Q::BandSwatchStitches => "Stitches",
        Q::SwatchWidth | Q::SwatchHeight | Q::BandSwatchWidth | Q::BandSwatchLength => "over",
        Q::SwatchRounds | Q::StripeRounds => "Rounds",
        Q::BandSwatchRows | Q::StripeRows => "Rows",
        Q::BodyStretch => "Stretch of the body",
        Q::BandStretch => "Stretch of the band",
        Q::Ease => "Ease",
        Q::BandHeight => "Band height",
        Q::Fold => "Folded up",
        Q::Wedges => "Wedges",
        Q::Gather => "Stitches gathered",
        Q::PomPom => "Pom-pom across",
        Q::BallYarn => "Yarn in a ball",
        Q::Margin => "Extra to buy",
        Q::BodyStitch => "Width of a stitch of the body",
        Q::BodyRound => "Height of a round of the body",
        Q::BandStitch => "Width of a stitch of the band",
        Q::BandRow => "Height of a row of the band",
        Q::LoosestFit => "How loose still fits",
        Q::LoosestByHand => "How loose a count taken by hand may be",
        Q::UnlikeByHand => "How unlike the girths of counts taken by hand may be",
        Q::LeastStitches => "Fewest stitches of a body",
        Q::FitShare => "Share of heads that fits an age",
        Q::CarryPast => "Rows and rounds past which yarn waits",
        Q::EqualGirths => "Girths taken as equal",
        Q::ShapeLeast => "Flattest stitch that is not asked about",
        Q::ShapeMost => "Tallest stitch that is not asked about",
        Q::HookSlack => "How far a hook may lie outside its range",
        Q::CoverEars => "Depth over the ears",
        Q::CoverLobes => "Depth to the ear lobes",
        Q::CoverCanals => "Depth to the ear canals",
        Q::CoverTops => "Depth to the tops of the ears",
        Q::PriceUneven => "Price of an uneven round",
        Q::PriceChange => "Price of a changed number of decreases",
        Q::PriceRunning => "Price of two decrease rounds running",
        Q::PriceAdjust => "Price of an adjustment round",
        Q::PriceOpening => "Price of an opening left at the top",
        Q::BandMiss => "Weight of a band that misses its girth",
        Q::PricePickUp => "Price of a pick-up that is not one to one",
        Q::PomPomWraps => "Wraps of a pom-pom to a stitch's width",
        Q::Ruffle => "Growth before fabric ruffles",
        Q::YarnChain => "Yarn in a chain",
        Q::YarnDecrease => "Yarn in a decrease",
        Q::YarnDoubt => "Doubt about estimated yarn",
        Q::YarnEnd => "Yarn left at an end",
    }
}

/// A sentence of help for a field that wants one.
pub const fn hint(q: Quantity) -> Option<&'static str> {
    use Quantity as Q;
    Some(match q {
        Q::HeadGirth => "Level, just above the eyebrows and over the widest part behind; snug, not tight.",
        Q::AgeWeeks | Q::AgeMonths | Q::AgeYears => "The age when the hat will be worn, not when it is made.",
        Q::Percentile => "Of 100 heads of this age, this many are smaller. 50 is the average.",
        Q::OverTop => "Over the crown from ear canal to ear canal. It sets the depth; leave it out if it was not measured.",
        Q::Lining => "The thickness between head and hat. It adds about six times as much to the girth.",
        Q::Hook | Q::BandHook => "In millimetres, as printed on it.",
        Q::Strands => "Yarns worked as one. They multiply the metres.",
        Q::BandRounds => "Worked around, like the body.",
        Q::SlouchWider => "How much more of it there is around than of the band. Usual: 10 to 25 % (practice).",
        Q::SlouchLonger => "Usual: 4 to 8 cm, or 1½ to 3 in (practice).",
        Q::Tail => "From the top of the head to the tip, along the fabric.",
        Q::Taper => "What is left of the length becomes a straight tail.",
        Q::TailStitches => "Around the straight tail, where there is one.",
        Q::TamAcross => "The width of the disc, about half the head's girth (practice).",
        Q::FlapLength => "From the hat's edge, at the tops of the ears, to the flap's tip.",
        Q::FlapTie => "A chain at each flap's tip; nothing for none. Best none for a small child.",
        Q::Brim => "From the hat's edge outward.",
        Q::Flare => "100 % lies flat; less turns down.",
        Q::SideWedges => "Each leaves out a wedge at the crown. Usual: 6 or 8.",
        Q::SwatchStitches => "Count in the middle of a wide, washed, relaxed swatch. Halves count: 12.5.",
        Q::SwatchRounds => "Count rounds that were worked without turning.",
        Q::BodyStretch => "Stretch the swatch as far as is comfortable, and divide that width by its relaxed width.",
        Q::BandStretch => "Stretch the band's swatch across its rows, and divide by its relaxed length.",
        Q::BandSwatchStitches => "They stand upright in the band: they make its height.",
        Q::BandSwatchRows => "They lie along the head: they make its girth.",
        Q::Ease => "How much smaller than the head the hat is. Usual: 5 to 9 %; 0 to 3 % for a bare or tender head.",
        Q::Fold => "Measured from the band's lower edge; nothing for a band worn flat.",
        Q::Gather => "More than the hat has means all of its stitches.",
        Q::BallYarn => "As printed on the ball's band.",
        Q::Margin => "Bought over the estimate, because the estimate may be a quarter out.",
        _ => return None,
    })
}

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
        Misread::NotWhole => {
            [&quoted, " is not whole. These are counted one by one: type a number such as ", &example, "."].concat()
        }
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
        (Q::BallYarn, _) => "The ball's band tells the length.",
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
        Q::SwatchStitches | Q::BandSwatchStitches | Q::BandHeight | Q::Gather | Q::TailStitches => " stitches",
        Q::SwatchRounds | Q::StripeRounds | Q::BandRounds => " rounds",
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
    // A tenth of the shown unit in hundredths of a tick; only inches and yards do not divide the table's ranges.
    let tenth = match (unit, units) {
        (Unit::Length, Units::Inches) => 25_400,
        (Unit::Yarn, Units::Inches) => 914,
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
}
