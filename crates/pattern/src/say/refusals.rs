//! Why there is no hat, and what would make one.

use super::out_of_range;
use crate::figures::{Units, length, length_down, length_up, lengths_apart, percent, plural, with_article};
use hatwright_sizing::{BandKind, Breach, HatSpec, Quantity, Refusal};

/// What stands beside the field of [`Refusal::field`].
pub fn refusal(r: &Refusal, units: Units) -> String {
    match *r {
        Refusal::Breach(Breach::OutOfRange(q, ticks)) => out_of_range(q, ticks, units),
        Refusal::Breach(Breach::WrongCount) => {
            let (colours, stripes) = (HatSpec::MOST_COLOURS.to_string(), HatSpec::MOST_STRIPES.to_string());
            ["A hat has 1 to ", &colours, " colours, and 1 to ", &stripes, " stripes in the band and in the body."].concat()
        }
        Refusal::Breach(Breach::NoSuchColour(colour)) => {
            let number = (u32::from(colour.0) + 1).to_string();
            ["A stripe or the pom-pom is in colour ", &number, ", which this hat does not have. Give it another."].concat()
        }
        Refusal::Breach(Breach::Dates) => {
            "These days do not make an age: the day of wearing comes before the day of birth, or more than 110 years after it. For a baby \
             born early, measure the head."
                .into()
        }
        Refusal::Breach(Breach::UnfitFabric) => {
            "This part cannot be worked in that fabric: rounds are not worked in slip stitches, and a rib around the posts is for a \
             band that is worked around. Choose another fabric for it."
                .into()
        }
        Refusal::Breach(Breach::KeptRounds) => {
            "The rounds that came with this hat cannot be worked: one has more than twice, or less than half, the stitches of the \
             one before it. Plan the hat anew."
                .into()
        }
        Refusal::TamTooSmall { across, least } => {
            let (wide, needed) = lengths_apart(across, least, units);
            let mut text = ["A tam's disc is wider than its band: ", &wide, " across is too small for this one"].concat();
            text.push_str(&[", which takes ", &needed, ". Make it ", &length_up(least, units), " or more."].concat());
            text
        }
        Refusal::TooLong { measure, most } => {
            let what = if measure == Quantity::Tail { "That tail" } else { "That" };
            [what, " has more rounds than a hat can be written in. At this gauge ", &length_down(most, units), " is the most."].concat()
        }
        Refusal::EaseBeyondStretch { zone, head, reach, most } => {
            let part = if zone == Quantity::BandStretch { "band" } else { "body" };
            let (head, reach) = lengths_apart(head, reach, units);
            let mut text = ["Made this much smaller than ", &*with_article(&head), " head, the ", part].concat();
            text.push_str(&[", stretched, reaches only ", &reach, ". "].concat());
            text.push_str(&["The most ease that its stretch allows is ", &percent(most), "."].concat());
            text
        }
        Refusal::StripesCannotClose { repeat, wanted, below, above } => {
            let mut text = ["These stripes close only every ", &plural(repeat.get(), "row")].concat();
            text.push_str(&["; this head wants about ", &wanted.to_string(), ". "].concat());
            if let Some((rows, girth)) = below {
                text.push_str(&[&plural(rows.get(), "row"), " would be ", &length(girth, units), " around, "].concat());
            }
            text.push_str(&[&plural(above.0.get(), "row"), " would be ", &length(above.1, units)].concat());
            text.push_str(if below.is_some() { "" } else { " around" });
            text.push_str(". Shorter stripes, or fewer to a repeat, close more often.");
            text
        }
        Refusal::NoCount { head, nearest } => {
            let mut text = ["No whole number of stitches fits ", &*with_article(&length(head, units)), " head at this gauge: "].concat();
            if nearest.ticks() > 0 {
                text.push_str(&[&length(nearest, units), " around is too tight, and the next too loose. "].concat());
            } else {
                text.push_str("the fewest that make a hat are too loose. ");
            }
            text.push_str(
                "Finer yarn or a tighter gauge brings the counts closer together; fabric that stretches more reaches farther.",
            );
            text
        }
        Refusal::FoldBeyondBand { fold, band } => {
            let (tall, folded) = lengths_apart(band, fold, units);
            [
                "The band is only ",
                &tall,
                " tall, so ",
                &folded,
                " of it cannot be folded up. Fold ",
                &length_down(band, units),
                " or less.",
            ]
            .concat()
        }
        Refusal::BandTooTall { band, left, fold, tallest } => {
            let mut text = if band == BandKind::None {
                ["There are only ", &length(left, units), " from edge to crown, too little for a crown to close. "].concat()
            } else if left.ticks() > 0 {
                ["This band leaves only ", &length(left, units), " above it, too little for a crown to close. "].concat()
            } else {
                "This band is as tall as the whole hat: nothing is left above it for a crown. ".into()
            };
            let folded = fold.map(|f| [&*length_up(f, units), " or more of it folded up"].concat());
            let tall = |t: u32| if band == BandKind::Around { plural(t, "round") } else { plural_stitches(t) };
            let shorter = tallest.map(|t| ["a band of at most ", &tall(t.get())].concat());
            text.push_str(&match (folded, shorter) {
                (Some(folded), Some(shorter)) => ["It works with ", &folded, ", or with ", &shorter, "."].concat(),
                (Some(one), None) | (None, Some(one)) => ["It works with ", &one, "."].concat(),
                (None, None) => "A hat that reaches farther down leaves more room.".into(),
            });
            text
        }
    }
}

/// `1 stitch`, `2 stitches`.
pub(crate) fn plural_stitches(count: u32) -> String {
    let mut text = count.to_string();
    text.push_str(if count == 1 { " stitch" } else { " stitches" });
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{Colour, Length, Ratio, Rows, Stitches};

    fn cm(r: &Refusal) -> String {
        refusal(r, Units::Centimetres)
    }

    #[test]
    fn each_refusal_names_its_numbers_and_a_way_out() {
        let head = Length::from_cm(57.0);
        assert_eq!(
            cm(&Refusal::EaseBeyondStretch {
                zone: Quantity::BodyStretch,
                head,
                reach: Length::from_cm(56.02),
                most: Ratio::from_ticks(740)
            }),
            "Made this much smaller than a 57.0 cm head, the body, stretched, reaches only 56.0 cm. \
             The most ease that its stretch allows is 7.4 %."
        );
        assert_eq!(
            cm(&Refusal::StripesCannotClose {
                repeat: Rows::new(40),
                wanted: Rows::new(56),
                below: Some((Rows::new(40), Length::from_cm(33.33))),
                above: (Rows::new(80), Length::from_cm(66.67)),
            }),
            "These stripes close only every 40 rows; this head wants about 56. 40 rows would be 33.3 cm around, \
             80 rows would be 66.7 cm. Shorter stripes, or fewer to a repeat, close more often."
        );
        assert_eq!(
            cm(&Refusal::FoldBeyondBand { fold: Length::from_cm(9.0), band: Length::from_cm(8.3) }),
            "The band is only 8.3 cm tall, so 9.0 cm of it cannot be folded up. Fold 8.3 cm or less."
        );
        assert_eq!(
            cm(&Refusal::FoldBeyondBand { fold: Length::from_cm(8.4), band: Length::from_cm(8.37) }),
            "The band is only 8.37 cm tall, so 8.40 cm of it cannot be folded up. Fold 8.3 cm or less."
        );
        assert_eq!(
            cm(&Refusal::NoCount { head, nearest: Length::from_cm(50.8) }),
            "No whole number of stitches fits a 57.0 cm head at this gauge: 50.8 cm around is too tight, and the next too loose. \
             Finer yarn or a tighter gauge brings the counts closer together; fabric that stretches more reaches farther."
        );
        assert_eq!(
            cm(&Refusal::BandTooTall {
                band: BandKind::Sideways,
                left: Length::from_cm(4.0),
                fold: Some(Length::from_cm(6.2)),
                tallest: Some(Stitches::new(14))
            }),
            "This band leaves only 4.0 cm above it, too little for a crown to close. \
             It works with 6.2 cm or more of it folded up, or with a band of at most 14 stitches."
        );
        for r in [
            Refusal::Breach(Breach::WrongCount),
            Refusal::Breach(Breach::NoSuchColour(Colour(7))),
            Refusal::Breach(Breach::OutOfRange(Quantity::Fold, -1)),
            Refusal::NoCount { head, nearest: Length::ZERO },
            Refusal::Breach(Breach::Dates),
            Refusal::Breach(Breach::UnfitFabric),
            Refusal::Breach(Breach::KeptRounds),
            Refusal::TamTooSmall { across: Length::from_cm(12.0), least: Length::from_cm(19.2) },
            Refusal::TooLong { measure: Quantity::Tail, most: Length::from_cm(1200.0) },
            Refusal::BandTooTall { band: BandKind::Around, left: Length::from_cm(-4.0), fold: None, tallest: None },
            Refusal::BandTooTall { band: BandKind::None, left: Length::from_cm(2.0), fold: None, tallest: None },
        ] {
            let text = cm(&r);
            assert!(text.ends_with('.') && !text.contains('−'), "{text}");
        }
    }
}
