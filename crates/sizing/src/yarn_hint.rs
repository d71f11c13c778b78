//! Whether a ball's metres, grams and yarn-weight number can all be true. What cannot is a hint, never a refusal.

use crate::{Ball, YarnLength, YarnWeight};

/// Metres to 100 g by yarn-weight number, fewest and most, with a generous overlap: cotton and silk are heavy for their thickness,
/// and blown or brushed yarns light.
///
/// Practice, from memory, no source: the published table of weight numbers has no metres.
const METRES_TO_100_G: [(u32, u32); 8] =
    [(400, 6_000), (280, 750), (220, 500), (160, 380), (110, 300), (60, 190), (25, 125), (10, 70)];

/// Metres to 100 g that no yarn has: fewer than a rope's, more than a sewing thread's (practice, from memory, no source).
const ANY_YARN: (u32, u32) = (10, 6_000);

/// What is odd about a ball.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum YarnHint {
    /// No yarn has so many, or so few, metres to 100 g: perhaps metres and grams were mixed up, or their units.
    NoYarn {
        /// Metres to 100 g.
        to_100_g: YarnLength,
        /// What any yarn has: 10 to 6,000 m.
        any: (YarnLength, YarnLength),
    },
    /// So many metres to 100 g are not usual for the number.
    OtherWeight {
        /// Metres to 100 g.
        to_100_g: YarnLength,
        /// The number.
        weight: YarnWeight,
        /// What is usual for the number.
        usual: (YarnLength, YarnLength),
        /// The numbers, finest and heaviest, for which these metres are usual.
        suits: (YarnWeight, YarnWeight),
    },
}

/// What is odd about a ball: metres and grams that no yarn has, or that are not usual for its yarn-weight number. `None` where nothing
/// is, and where too little is known to say.
///
/// 80 m of 50 g are 160 m to 100 g: medium (4) has 110 to 300, lace (0) at least 400.
///
/// ```
/// use hatwright_sizing::{Ball, Count, Mass, YarnHint, YarnLength, YarnWeight, yarn_hint};
/// let weight = |number| YarnWeight::new(number).unwrap();
/// let mut ball = Ball { grams: Some(Mass::from_grams(50.0)), weight: Some(weight(4)), ..Ball::of(Count::whole(80)) };
/// assert_eq!(yarn_hint(&ball), None);
/// ball.weight = Some(weight(0));
/// let Some(YarnHint::OtherWeight { to_100_g, suits, .. }) = yarn_hint(&ball) else { panic!() };
/// assert_eq!((to_100_g, suits), (YarnLength::from_metres(160.0), (weight(3), weight(5))));
/// // One gram for fifty: 8,000 m to 100 g.
/// ball = Ball { grams: Some(Mass::from_grams(1.0)), ..ball };
/// assert!(matches!(yarn_hint(&ball), Some(YarnHint::NoYarn { .. })));
/// ```
pub fn yarn_hint(ball: &Ball) -> Option<YarnHint> {
    let metres = 100.0 * ball.metres_per_gram()?;
    let holds = |(least, most): (u32, u32)| f64::from(least) <= metres + 1e-9 && metres <= f64::from(most) + 1e-9;
    let lengths =
        |(least, most): (u32, u32)| (YarnLength::from_metres(f64::from(least)), YarnLength::from_metres(f64::from(most)));
    let to_100_g = YarnLength::from_metres(metres);
    if !holds(ANY_YARN) {
        return Some(YarnHint::NoYarn { to_100_g, any: lengths(ANY_YARN) });
    }
    let weight = ball.weight?;
    let usual = METRES_TO_100_G[usize::from(weight.number()) % METRES_TO_100_G.len()];
    if holds(usual) {
        return None;
    }
    let number = |at: Option<usize>| u8::try_from(at?).ok().and_then(|n| YarnWeight::new(n).ok());
    let finest = number(METRES_TO_100_G.iter().position(|row| holds(*row)))?;
    let heaviest = number(METRES_TO_100_G.iter().rposition(|row| holds(*row)))?;
    Some(YarnHint::OtherWeight { to_100_g, weight, usual: lengths(usual), suits: (finest, heaviest) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Count, Mass};

    fn ball(metres: f64, grams: Option<f64>, weight: Option<u8>) -> Ball {
        let weight = weight.map(|number| YarnWeight::new(number).unwrap());
        Ball { grams: grams.map(Mass::from_grams), weight, ..Ball::of(Count::from_ticks((metres * 100.0) as i32)) }
    }

    /// Ranges overlap their neighbours', fall from one number to the next, and leave no gap from end to end.
    #[test]
    fn the_ranges_overlap_and_fall() {
        for pair in METRES_TO_100_G.windows(2) {
            assert!(pair[1].1 > pair[0].0 && pair[1].0 < pair[0].0 && pair[1].1 < pair[0].1, "{pair:?}");
        }
        assert_eq!((METRES_TO_100_G[7].0, METRES_TO_100_G[0].1), ANY_YARN);
    }

    /// Ordinary yarns (common practice, no source): metres to 50 or 100 g of each number draw no hint.
    #[test]
    fn ordinary_yarns_are_not_asked_about() {
        for (metres, grams, number) in [
            (400.0, 50.0, 0),
            (420.0, 100.0, 1),
            (165.0, 50.0, 2),
            (120.0, 50.0, 3),
            (80.0, 50.0, 4),
            (200.0, 100.0, 4),
            (125.0, 100.0, 5),
            (80.0, 100.0, 6),
            (30.0, 100.0, 7),
        ] {
            assert_eq!(yarn_hint(&ball(metres, Some(grams), Some(number))), None, "{number}");
        }
    }

    #[test]
    fn a_number_that_the_metres_contradict_is_asked_about() {
        let hint = |number| yarn_hint(&ball(40.0, Some(50.0), Some(number)));
        let weight = |number| YarnWeight::new(number).unwrap();
        for number in [0, 1, 2, 3, 4] {
            let Some(YarnHint::OtherWeight { to_100_g, weight: of, usual, suits }) = hint(number) else { panic!("{number}") };
            assert_eq!((to_100_g.metres(), of, suits), (80.0, weight(number), (weight(5), weight(6))));
            assert!(usual.0 > to_100_g && usual.0 < usual.1);
        }
        assert_eq!((hint(5), hint(6)), (None, None));
        assert!(
            hint(7).is_some_and(
                |hint| matches!(hint, YarnHint::OtherWeight { usual, .. } if usual.1 == YarnLength::from_metres(70.0))
            )
        );
    }

    #[test]
    fn what_is_not_known_is_not_asked_about() {
        assert_eq!(yarn_hint(&ball(80.0, None, Some(0))), None);
        assert_eq!(yarn_hint(&ball(80.0, Some(50.0), None)), None);
    }

    /// A tenth of a metre to a gram, and sixty, are the ends, and still yarn.
    #[test]
    fn no_yarn_has_so_few_or_so_many_metres() {
        let odd = |metres, grams| matches!(yarn_hint(&ball(metres, Some(grams), None)), Some(YarnHint::NoYarn { .. }));
        assert!(!odd(10.0, 100.0) && !odd(60.0, 1.0));
        assert!(odd(9.9, 100.0) && odd(60.1, 1.0));
        // Grams without their metres: the table's least metres of a kilogram.
        assert!(odd(5.0, 1_000.0));
    }
}
