//! How sure a hat's numbers are.

use super::why::counts_rows;
use crate::figures::{Units, amount, in_units, length_span, length_up, percent};
use hatwright_sizing::{Hat, Length, Unit, YarnLength};
use hatwright_words::doubt as words;

/// How sure girth, depth and yarn are, and what would make them surer: a sentence each, for a hat that rests on a swatch. For one that
/// rests on a yarn weight, one sentence.
///
/// `If the swatch was counted half a stitch and half a round too low or too high, the hat comes out 44.8 to 48.7 cm around and 18.9 to
/// 19.9 cm deep.`
pub fn doubt_sentences(hat: &Hat, units: Units) -> Vec<String> {
    let Some(doubt) = &hat.doubt else { return vec![words::estimate().into()] };
    let around = length_span(doubt.girth.0, doubt.girth.1, units);
    let deep = length_span(doubt.depth.0, doubt.depth.1, units);
    let rows = counts_rows(hat);
    let size = if rows { words::rows_off(&around, &deep) } else { words::rounds_off(&around, &deep) };

    let used = hat.yarn.iter().filter(|need| need.length > YarnLength::default());
    let within = used.map(|need| need.high.metres() / need.length.metres() - 1.0).fold(0.0, f64::max);
    let within = libm::round(within * 100.0) as i32;
    let yarn = words::yarn(&percent(doubt.yarn_share), &amount(within.saturating_mul(100), Unit::Percent, units));

    let told = |width: Length| match units {
        // Up to a whole inch, where those are read: a narrower swatch would not do.
        Units::Inches => amount((width.ticks() + 2_539) / 2_540 * 2_540, Unit::Length, units),
        _ => in_units(units, |units| match units {
            Units::Inches => length_up(width, units),
            _ => amount(width.ticks(), Unit::Length, units),
        }),
    };
    let wider = match doubt.swatch_width.map(told) {
        Some(tall) if rows => words::swatch_taller(&tall),
        Some(wide) => words::swatch_wider(&wide),
        None if rows => words::tall_enough().into(),
        None => words::wide_enough().into(),
    };
    vec![size, yarn, wider]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::written::sample;

    #[test]
    fn doubts_are_told_with_what_would_lessen_them() {
        let mut hat = sample::hat();
        assert_eq!(
            doubt_sentences(&hat, Units::Centimetres),
            [
                "If the swatch was counted half a stitch and half a round too low or too high, the hat comes out 44.8 to 48.7 cm around \
                 and 18.9 to 19.9 cm deep.",
                "The yarn moves with it, by up to 4.4 %. How much the stitches take is itself known to ± 25 %.",
                "A swatch 24 cm wide, counted all across, brings the girth to within one stitch."
            ]
        );
        assert!(doubt_sentences(&hat, Units::Inches)[2].starts_with("A swatch 10 in wide"));
        assert!(doubt_sentences(&hat, Units::Both)[2].starts_with("A swatch 24 cm (9.5 in) wide"));
        hat.doubt.as_mut().unwrap().swatch_width = None;
        assert_eq!(
            doubt_sentences(&hat, Units::Inches)[2],
            "The swatch is wide enough: it gives the girth to within one stitch."
        );
        hat.style = hatwright_sizing::Style::Sideways;
        assert!(
            doubt_sentences(&hat, Units::Inches)[0].starts_with("If the swatch was counted half a stitch and half a row too low")
        );
        assert_eq!(doubt_sentences(&hat, Units::Inches)[2], "The swatch is tall enough: it gives the girth to within one row.");
        hat.doubt = None;
        assert_eq!(doubt_sentences(&hat, Units::Inches).len(), 1);
    }
}
