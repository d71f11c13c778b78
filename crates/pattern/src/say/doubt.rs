//! How sure a hat's numbers are.

use super::why::counts_rows;
use crate::figures::{Units, length_span, percent, show, unit_label};
use hatwright_sizing::{Hat, Unit, YarnLength};

/// How sure girth, depth and yarn are, and what would make them surer: a sentence each, for a hat that rests on a swatch. For one that
/// rests on a yarn weight, one sentence.
///
/// `If the swatch was counted half a stitch and half a round too low or too high, the hat comes out 44.8 to 48.7 cm around and 18.9 to
/// 19.9 cm deep.`
pub fn doubt_sentences(hat: &Hat, units: Units) -> Vec<String> {
    let Some(doubt) = &hat.doubt else {
        return vec!["Every number of this hat is an estimate until there is a swatch.".into()];
    };
    let around = length_span(doubt.girth.0, doubt.girth.1, units);
    let deep = length_span(doubt.depth.0, doubt.depth.1, units);
    let rows = counts_rows(hat);
    let across = if rows { "row" } else { "round" };
    let mut size =
        ["If the swatch was counted half a stitch and half a ", across, " too low or too high, the hat comes out "].concat();
    size.push_str(&[&*around, " around and ", &deep, " deep."].concat());

    let mut yarn = ["The yarn moves with it, by up to ", &percent(doubt.yarn_share)].concat();
    let used = hat.yarn.iter().filter(|need| need.length > YarnLength::default());
    let within = used.map(|need| need.high.metres() / need.length.metres() - 1.0).fold(0.0, f64::max);
    let within = libm::round(within * 100.0) as u32;
    yarn.push_str(&[". How much the stitches take is itself known to ± ", &*within.to_string(), " %."].concat());

    let wider = match doubt.swatch_width {
        Some(width) => {
            // Up to a whole inch, where those are read: a narrower swatch would not do.
            let told = match units {
                Units::Centimetres | Units::Both => show(width.ticks(), Unit::Length, units),
                Units::Inches => ((width.ticks() + 2_539) / 2_540).to_string(),
            };
            let way = if rows { TALL } else { WIDE };
            ["A swatch ", &*told, " ", unit_label(Unit::Length, units), way].concat()
        }
        None if rows => "The swatch is tall enough: it gives the girth to within one row.".into(),
        None => "The swatch is wide enough: it gives the girth to within one stitch.".into(),
    };
    vec![size, yarn, wider]
}

const WIDE: &str = " wide, counted all across, brings the girth to within one stitch.";
const TALL: &str = " tall, its rows counted all the way, brings the girth to within one row.";

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
