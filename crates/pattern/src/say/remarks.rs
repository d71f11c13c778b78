//! What a maker should be told about a hat that can be made.

use super::fit::why_this_count;
use super::refusals::plural_stitches;
use crate::figures::{Units, length, plural};
use hatwright_sizing::{Hat, Length, Remark};

/// One remark, in a sentence or two.
pub fn remark(r: &Remark, hat: &Hat, units: Units) -> String {
    match *r {
        Remark::EstimatedGauge => {
            "The gauge is the middle of what is usual for this yarn weight, not your own, so everything here is an \
             estimate. The hat may come out a size off: make a swatch before you begin."
                .into()
        }
        Remark::AssumedBand => {
            let ten = Length::from_ticks(hat.gauge.band_row.ticks().saturating_mul(10));
            let mut text = String::from(
                "There is no swatch of the band: its rows are taken to be as tall as the body's stitches are wide. ",
            );
            text.push_str(&["When 10 rows are made, lay them flat: they should take ", &length(ten, units), "."].concat());
            text
        }
        Remark::ChosenDropped { rows, stitches } => {
            let (rows, stitches) = (plural(rows.get(), "row"), plural_stitches(stitches.get()));
            ["The counts that were chosen by hand, ", &stitches, " on ", &rows, ", no longer suit this hat. Its own are used."]
                .concat()
        }
        Remark::StripesMoved { .. } => why_this_count(hat, units),
        Remark::LooserThanHead => "This hat is larger than the head: it sits loosely, and may slip.".into(),
        Remark::DepthOff(by) => {
            let size = Length::from_ticks(by.ticks().saturating_abs());
            let way = if by.ticks() < 0 { " shallower" } else { " deeper" };
            ["In whole rounds the hat comes out ", &length(size, units), way, " than asked for."].concat()
        }
        Remark::OddStripes(ends) => {
            let ends = plural(ends, "end");
            [
                "A stripe of an odd number of rows leaves its yarn at the wrong edge, where it is cut: ",
                &ends,
                " to weave in. ",
                EVEN,
            ]
            .concat()
        }
        Remark::EvenRib => {
            "A sideways rib has an even number of rows. These stripes have an odd number to a repeat, so they close \
             only after every second repeat."
                .into()
        }
        Remark::Bulk(bundle) => [
            "The gathered top leaves a bundle about ",
            &length(bundle, units),
            " across inside. A pom-pom wider than that hides it.",
        ]
        .concat(),
        Remark::SmallParts => "This hat may be worn by a child under 3: leave off what could come loose and be swallowed.".into(),
        Remark::BabySleep => "Babies sleep with the head bare: take the hat off for sleep.".into(),
    }
}

const EVEN: &str = "Stripes of even rows need no cutting.";

#[cfg(test)]
mod tests {
    use super::*;
    use crate::written::sample;
    use hatwright_sizing::{Rows, Stitches};

    #[test]
    fn every_remark_is_a_sentence() {
        let hat = sample::hat();
        for r in [
            Remark::EstimatedGauge,
            Remark::AssumedBand,
            Remark::ChosenDropped { rows: Rows::new(64), stitches: Stitches::new(56) },
            Remark::StripesMoved { nearest: Stitches::new(55), repeat: Rows::new(4) },
            Remark::LooserThanHead,
            Remark::DepthOff(Length::from_cm(-0.6)),
            Remark::OddStripes(12),
            Remark::EvenRib,
            Remark::Bulk(Length::from_cm(3.1)),
            Remark::SmallParts,
            Remark::BabySleep,
        ] {
            let text = remark(&r, &hat, Units::Centimetres);
            assert!(text.ends_with('.') && !text.contains("  "), "{text}");
        }
        let text = remark(&Remark::AssumedBand, &hat, Units::Centimetres);
        assert!(text.ends_with("When 10 rows are made, lay them flat: they should take 8.3 cm."), "{text}");
        let text = remark(&Remark::DepthOff(Length::from_cm(-0.6)), &hat, Units::Centimetres);
        assert_eq!(text, "In whole rounds the hat comes out 0.6 cm shallower than asked for.");
    }
}
