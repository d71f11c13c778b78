//! Why there is no hat, and what would make one.

use super::out_of_range;
use crate::figures::{Units, length, length_down, length_up, lengths_apart, percent, with_article};
use hatwright_sizing::{BandKind, Breach, HatSpec, Length, Quantity, Refusal, Stitches};
use hatwright_words::refusals as words;

/// What stands beside the field of [`Refusal::field`].
pub fn refusal(r: &Refusal, units: Units) -> String {
    match *r {
        Refusal::Breach(breach) => broken(breach, units),
        Refusal::TamTooSmall { across, least } => {
            let (wide, needed) = lengths_apart(across, least, units);
            words::tam_too_small(&wide, &needed, &length_up(least, units))
        }
        Refusal::TooLong { measure: Quantity::Tail, most } => words::tail_too_long(&length_down(most, units)),
        Refusal::TooLong { most, .. } => words::too_long(&length_down(most, units)),
        Refusal::EaseBeyondStretch { zone, head, reach, most } => {
            let (head, reach) = lengths_apart(head, reach, units);
            let told = if zone == Quantity::BandStretch { words::band_ease } else { words::body_ease };
            told(&with_article(&head), &reach, &percent(most))
        }
        Refusal::StripesCannotClose { repeat, wanted, below, above } => {
            let (repeat, wanted, wide) = (repeat.get(), wanted.get(), length(above.1, units));
            match below {
                Some((rows, girth)) => {
                    words::stripes_between(repeat, wanted, rows.get(), &length(girth, units), above.0.get(), &wide)
                }
                None => words::stripes_above(repeat, wanted, above.0.get(), &wide),
            }
        }
        Refusal::NoCount { head, nearest } => {
            let head = with_article(&length(head, units));
            match nearest.ticks() {
                1.. => words::no_count_between(&head, &length(nearest, units)),
                _ => words::no_count_so_few(&head),
            }
        }
        Refusal::FoldBeyondBand { fold, band } => {
            let (tall, folded) = lengths_apart(band, fold, units);
            words::fold_beyond_band(&tall, &folded, &length_down(band, units))
        }
        Refusal::BandTooTall { band, left, fold, tallest } => {
            [&*no_room(band, left, units), " ", &room_with(band, fold, tallest, units)].concat()
        }
    }
}

fn broken(breach: Breach, units: Units) -> String {
    match breach {
        Breach::OutOfRange(q, ticks) => out_of_range(q, ticks, units),
        Breach::WrongCount => words::wrong_count(HatSpec::MOST_COLOURS as u32, HatSpec::MOST_STRIPES as u32),
        Breach::NoSuchColour(colour) => words::no_such_colour(u32::from(colour.0) + 1),
        Breach::Dates => words::dates().into(),
        Breach::UnfitFabric => words::unfit_fabric().into(),
        Breach::KeptRounds => words::kept_rounds().into(),
    }
}

/// Why no crown closes above a band, or above the edge of a hat without one.
fn no_room(band: BandKind, left: Length, units: Units) -> String {
    match (band, left.ticks() > 0) {
        (BandKind::None, _) => words::low_hat(&length(left, units)),
        (_, true) => words::band_leaves(&length(left, units)),
        (_, false) => words::band_takes_all().into(),
    }
}

/// What would give the crown room.
fn room_with(band: BandKind, fold: Option<Length>, tallest: Option<Stitches>, units: Units) -> String {
    let around = band == BandKind::Around;
    match (fold.map(|fold| length_up(fold, units)), tallest.map(Stitches::get)) {
        (Some(fold), Some(n)) if around => words::fold_or_rounds_work(&fold, n),
        (Some(fold), Some(n)) => words::fold_or_stitches_work(&fold, n),
        (Some(fold), None) => words::fold_works(&fold),
        (None, Some(n)) if around => words::rounds_work(n),
        (None, Some(n)) => words::stitches_work(n),
        (None, None) => words::deeper_works().into(),
    }
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
