//! What is odd about a ball's band.

use crate::figures::{self, Units, yarn, yarn_bare};
use hatwright_sizing::{Ball, YarnHint, YarnWeight};

/// A hint beside a ball's band, in two or three sentences; never a refusal.
///
/// `50 g = 80 m is 160 m to 100 g; yarns of weight 0 have 400 to 6000 m (practice). Such metres are usual for weights 3 to 5.`
pub fn yarn_hint(hint: &YarnHint, ball: &Ball, units: Units) -> String {
    let band = figures::ball(ball, units);
    let span = |(least, most), units| [&*yarn_bare(least, units), " to ", &yarn(most, units)].concat();
    match hint {
        YarnHint::NoYarn { to_100_g, any } => [
            &*band,
            " is ",
            &yarn(*to_100_g, units),
            " to 100 g, and yarns have ",
            &span(*any, units),
            ". Were length and weight mixed up, or their units?",
        ]
        .concat(),
        YarnHint::OtherWeight { to_100_g, weight, usual, suits } => [
            &*band,
            " is ",
            &yarn(*to_100_g, units),
            " to 100 g; yarns of weight ",
            &weight.number().to_string(),
            " have ",
            &span(*usual, units),
            " (practice). Such a length is usual for ",
            &weights(*suits),
            ". Look at the band again; a heavy or a fluffy fibre may still be right.",
        ]
        .concat(),
    }
}

fn weights((finest, heaviest): (YarnWeight, YarnWeight)) -> String {
    let (from, to) = (finest.number().to_string(), heaviest.number().to_string());
    if from == to { ["weight ", &from].concat() } else { ["weights ", &from, " to ", &to].concat() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{Count, Mass};

    #[test]
    fn odd_balls_are_asked_about() {
        let told = |metres, grams, weight: u8, units| {
            let (grams, weight) = (Some(Mass::from_grams(grams)), YarnWeight::new(weight).ok());
            let ball = Ball { grams, weight, ..Ball::of(Count::whole(metres)) };
            hatwright_sizing::yarn_hint(&ball).map(|hint| yarn_hint(&hint, &ball, units))
        };
        assert_eq!(told(80, 50.0, 4, Units::Centimetres), None);
        assert_eq!(
            told(80, 50.0, 0, Units::Centimetres).unwrap(),
            "50 g = 80 m is 160 m to 100 g; yarns of weight 0 have 400 to 6000 m (practice). Such a length is usual for weights 3 to 5. \
             Look at the band again; a heavy or a fluffy fibre may still be right."
        );
        assert_eq!(
            told(80, 1.0, 4, Units::Centimetres).unwrap(),
            "1.0 g = 80 m is 8000 m to 100 g, and yarns have 10 to 6000 m. Were length and weight mixed up, or their units?"
        );
        let inches = told(300, 50.0, 4, Units::Inches).unwrap();
        assert!(inches.starts_with("1.8 oz = 328 yd is 656 yd to 100 g; yarns of weight 4 have 120 to 328 yd"), "{inches}");
    }
}
