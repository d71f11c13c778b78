//! What is odd about a ball's band.

use crate::figures::{self, Units, yarn, yarn_span};
use hatwright_sizing::{Ball, YarnHint, YarnWeight};
use hatwright_words::yarn as words;

/// A hint beside a ball's band, in two or three sentences; never a refusal.
///
/// `50 g = 80 m is 160 m to 100 g; yarns of weight 0 have 400 to 6000 m (practice). Such metres are usual for weights 3 to 5.`
pub fn yarn_hint(hint: &YarnHint, ball: &Ball, units: Units) -> String {
    // It stands beside what is typed.
    let units = units.typed();
    let band = figures::ball(ball, units);
    match hint {
        YarnHint::NoYarn { to_100_g, any } => words::no_yarn_has(&band, &yarn(*to_100_g, units), &yarn_span(any.0, any.1, units)),
        YarnHint::OtherWeight { to_100_g, weight, usual, suits } => {
            let number = |weight: YarnWeight| weight.number().to_string();
            let (to_100_g, usual) = (yarn(*to_100_g, units), yarn_span(usual.0, usual.1, units));
            let (from, to) = (number(suits.0), number(suits.1));
            if from == to {
                words::other_weight(&band, &to_100_g, &number(*weight), &usual, &from)
            } else {
                words::other_weights(&band, &to_100_g, &number(*weight), &usual, &from, &to)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{Count, Mass};
    use hatwright_words::{Language, in_language};

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

    #[test]
    fn odd_balls_are_asked_about_in_spanish() {
        let ball = Ball { grams: Some(Mass::from_grams(50.0)), weight: YarnWeight::new(0).ok(), ..Ball::of(Count::whole(80)) };
        let told = |units| yarn_hint(&hatwright_sizing::yarn_hint(&ball).unwrap(), &ball, units);
        in_language(Language::Spanish, || {
            assert_eq!(
                told(Units::Both),
                "50 g = 80 m son 160 m por 100 g; los hilos de grosor 0 tienen de 400 a 6000 m (práctica). Un largo así es lo usual en \
                 los grosores 3 a 5. Vuelve a mirar la etiqueta; con una fibra pesada o esponjosa puede estar bien."
            );
        });
    }
}
