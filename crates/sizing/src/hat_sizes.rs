//! What follows from a head's girth by rule: size labels, a stand-in for fitting, and the measures that a style is proportioned by.

use crate::{Length, Quantity, Shape};
use core::f64::consts::PI;

/// A head's girth as hats are labelled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HatLabels {
    /// Whole centimetres of girth.
    pub cm: u32,
    /// US size in eighths: 57 is 7 1/8.
    pub us_eighths: u32,
    /// UK size in eighths: one less than the US size.
    pub uk_eighths: u32,
}

/// The labels of hats for a head, or of a girth's hat.
///
/// A US hat size is the head's diameter in inches to the nearest eighth; a UK size is an eighth less (common practice of the trade, no
/// source, from memory; makers differ by an eighth).
///
/// 58 cm are 22.83 in around and 7.27 in across: 7 1/4 in the US, 7 1/8 in the UK.
///
/// ```
/// use hatwright_sizing::{HatLabels, Length, hat_labels};
/// assert_eq!(hat_labels(Length::from_cm(58.0)), HatLabels { cm: 58, us_eighths: 58, uk_eighths: 57 });
/// ```
pub fn hat_labels(girth: Length) -> HatLabels {
    let us_eighths = libm::round((girth.inches() / PI * 8.0).max(0.0)) as u32;
    HatLabels { cm: libm::round(girth.cm().max(0.0)) as u32, us_eighths, uk_eighths: us_eighths.saturating_sub(1) }
}

/// Across a bowl, pot or foam form of the same girth, on which a hat can be tried or dried: girth ÷ π (geometry).
///
/// ```
/// use hatwright_sizing::{Length, stand_in};
/// assert_eq!(stand_in(Length::from_cm(49.8)), Length::from_cm(15.852));
/// ```
pub fn stand_in(girth: Length) -> Length {
    Length::from_cm(girth.cm() / PI)
}

impl Shape {
    /// The usual measures of every style for a head: the table's lengths, which suit a head of 49.8 cm, in proportion to the girth,
    /// rounded to half a centimetre and held to their ranges. Shares and counts stay as they are (practice, no source).
    ///
    /// A man's tam is 24.5 × 57.6/49.8 = 28.3, so 28.5 cm across, his flaps 9.5 cm long; a newborn's flaps are 5.5 cm.
    ///
    /// ```
    /// use hatwright_sizing::{Length, Shape};
    /// let man = Shape::for_head(Length::from_cm(57.6));
    /// assert_eq!((man.tam_across, man.flap_length), (Length::from_cm(28.5), Length::from_cm(9.5)));
    /// assert_eq!(Shape::for_head(Length::from_cm(34.2)).flap_length, Length::from_cm(5.5));
    /// assert_eq!(Shape::for_head(Length::from_cm(49.8)), Shape::default());
    /// ```
    pub fn for_head(girth: Length) -> Self {
        let usual = Self::default();
        let scale = girth.cm() / Quantity::HeadGirth.row().usual_value();
        let length = |q: Quantity, of: Length| {
            let halves = libm::round(of.cm() * scale * 2.0);
            Length::from_ticks(Length::from_cm(halves / 2.0).ticks().clamp(q.row().least, q.row().most))
        };
        Self {
            slouch_longer: length(Quantity::SlouchLonger, usual.slouch_longer),
            tail: length(Quantity::Tail, usual.tail),
            taper: length(Quantity::Taper, usual.taper),
            tam_across: length(Quantity::TamAcross, usual.tam_across),
            flap_length: length(Quantity::FlapLength, usual.flap_length),
            flap_tie: length(Quantity::FlapTie, usual.flap_tie),
            brim: length(Quantity::Brim, usual.brim),
            ..usual
        }
    }

    /// The measures for another head: those that are the usual ones of the head that was become the usual ones of the other; what was
    /// chosen otherwise stays.
    ///
    /// ```
    /// use hatwright_sizing::{Length, Shape};
    /// let (child, grown) = (Length::from_cm(49.8), Length::from_cm(57.0));
    /// let shape = Shape { brim: Length::from_cm(7.7), ..Shape::default() }.followed(child, grown);
    /// assert_eq!((shape.tam_across, shape.brim), (Length::from_cm(28.0), Length::from_cm(7.7)));
    /// ```
    #[must_use]
    pub fn followed(mut self, from: Length, to: Length) -> Self {
        let (mut old, mut new) = (Self::for_head(from), Self::for_head(to));
        let measures: [fn(&mut Self) -> &mut Length; 7] = [
            |s| &mut s.slouch_longer,
            |s| &mut s.tail,
            |s| &mut s.taper,
            |s| &mut s.tam_across,
            |s| &mut s.flap_length,
            |s| &mut s.flap_tie,
            |s| &mut s.brim,
        ];
        for measure in measures {
            if *measure(&mut self) == *measure(&mut old) {
                *measure(&mut self) = *measure(&mut new);
            }
        }
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 24.5 cm is the usual tam of a head of 49.8 cm, 28 cm that of 57 cm (proportion).
    #[test]
    fn usual_measures_follow_the_head_and_others_stay() {
        let (child, grown) = (Length::from_cm(49.8), Length::from_cm(57.0));
        let chosen = Shape { brim: Length::from_cm(7.7), ..Shape::default() };
        let shape = chosen.followed(child, grown);
        assert_eq!((shape.tam_across, shape.brim), (Length::from_cm(28.0), Length::from_cm(7.7)));
        assert_eq!((shape.followed(grown, child), chosen.followed(grown, grown)), (chosen, chosen));
    }

    #[test]
    fn every_head_has_measures_in_their_ranges() {
        for ticks in (Quantity::HeadGirth.row().least..=Quantity::HeadGirth.row().most).step_by(500) {
            let shape = Shape::for_head(Length::from_ticks(ticks));
            for (q, value) in shape.numbers() {
                assert!(q.row().holds(value), "{ticks}: {q:?} {value}");
            }
            assert_eq!(shape.tam_across.ticks() % 500, 0);
        }
    }

    #[test]
    fn a_larger_head_never_has_smaller_measures() {
        let heads: Vec<_> = (22..=75).map(|cm| Shape::for_head(Length::from_cm(f64::from(cm)))).collect();
        for pair in heads.windows(2) {
            let (small, large) = (pair[0].numbers(), pair[1].numbers());
            assert!(small.iter().zip(&large).all(|(a, b)| a.1 <= b.1));
        }
    }

    #[test]
    fn no_girth_has_no_label_below_nothing() {
        assert_eq!(hat_labels(Length::from_cm(-5.0)), HatLabels { cm: 0, us_eighths: 0, uk_eighths: 0 });
    }
}
