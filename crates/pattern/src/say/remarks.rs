//! What a maker should be told about a hat that can be made.

use super::refusals::plural_stitches;
use super::why::{wedges_moved, why_this_count};
use crate::figures::{Units, factor, length, lengths_apart, plural};
use hatwright_sizing::{BandKind, Hat, Length, Remark, Unsuited};

/// One remark, in a sentence or two.
pub fn remark(r: &Remark, hat: &Hat, units: Units) -> String {
    match *r {
        Remark::EstimatedGauge => {
            "The gauge is the middle of what is usual for this yarn weight, not your own, so everything here is an \
             estimate. The hat may come out a size off: make a swatch before you begin."
                .into()
        }
        Remark::AssumedBand => {
            let gauge = &hat.gauge;
            let ten = length(Length::from_ticks(gauge.band_row.ticks().saturating_mul(10)), units);
            if hat.band == BandKind::Around {
                return [
                    "There is no swatch of the band: its stitches are taken to be as wide as the body's, and its rounds as tall as is usual \
                     beside such a body (practice): ",
                    &ten,
                    " for 10. Measure it when it is done.",
                ]
                .concat();
            }
            let mut text = String::from(if gauge.band_row == gauge.stitch {
                "There is no swatch of the band: its rows are taken to be as tall as the body's stitches are wide. "
            } else {
                "There is no swatch of the band: its rows are taken to be as tall as is usual beside such a body (practice). "
            });
            text.push_str(&["When 10 rows are made, lay them flat: they should take ", &ten, "."].concat());
            text
        }
        Remark::ChosenDropped { rows, stitches, why } => {
            let (rows, stitches) = (plural(rows.get(), "row"), plural_stitches(stitches.get()));
            let why = unsuited(why, hat, units);
            [
                "The counts that were chosen by hand, ",
                &stitches,
                " on ",
                &rows,
                ", no longer suit this hat: ",
                &why,
                ". Its own are used.",
            ]
            .concat()
        }
        Remark::WedgesMoved { nearest, wedges } => {
            [&plural_stitches(hat.size.stitches.get()), " rather than ", &nearest.to_string(), &wedges_moved(wedges, hat)]
                .concat()
        }
        Remark::StripesMoved { .. } => why_this_count(hat, units),
        Remark::FoldAboveCrown(by) => {
            ["So much of the band is folded up that its edge stands ", &length(by, units), " above the crown."].concat()
        }
        Remark::UnusualStitch(shape) => [
            "In this swatch stitches are ",
            &factor(shape),
            " times as tall as wide, which is unusual for its fabric (practice). Are both counts of one swatch, worked as the hat will be?",
        ]
        .concat(),
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
        Remark::PlanKept(planner) => [
            "This hat is begun: its rounds are kept as planner ",
            &planner.to_string(),
            " made them. A newer planner changes nothing in it.",
        ]
        .concat(),
        Remark::WedgesDropped(wedges) => [
            &*wedges.to_string(),
            " wedges do not go into this crown: at its centre they would ruffle, or there are too few rounds for them. It is spread instead; \
             fewer wedges may go.",
        ]
        .concat(),
        Remark::KeptDropped => {
            "The rounds that were kept from when this hat was begun do not make the hat that is asked for now, so it is planned anew."
                .into()
        }
        Remark::LongParts => {
            "A small child may wear this hat: ties, long tails and long tassels can catch, and tighten around the neck. Best make it without.".into()
        }
        Remark::UnusualGauge => {
            "This gauge is unusual for such yarn or such a fabric. It may be right: count the swatch once more, and look whether the \
             stitch is the one that is named."
                .into()
        }
        Remark::SmallParts => "A child under 3 may wear this hat: leave off what could come loose and be swallowed.".into(),
        Remark::BabySleep => "A baby may wear this hat. Babies sleep with the head bare: take it off for sleep.".into(),
    }
}

fn unsuited(why: Unsuited, hat: &Hat, units: Units) -> String {
    match why {
        Unsuited::Repeat(repeat) if repeat.get() == 2 => "a sideways band needs an even number of rows".into(),
        Unsuited::Repeat(repeat) => ["the stripes close only on multiples of ", &plural(repeat.get(), "row")].concat(),
        Unsuited::Few => "they are too few for any hat".into(),
        Unsuited::Tight(reach) => {
            let (head, reach) = lengths_apart(hat.head.girth, reach, units);
            ["stretched, it would reach only ", &reach, " of the ", &head, " head"].concat()
        }
        Unsuited::Loose(girth) => {
            ["at ", &length(girth, units), " it would be too loose for a head of ", &length(hat.head.girth, units)].concat()
        }
        Unsuited::Unlike(band) => ["the band would be ", &length(band, units), " around, too unlike the body"].concat(),
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
            Remark::ChosenDropped { rows: Rows::new(64), stitches: Stitches::new(56), why: Unsuited::Few },
            Remark::StripesMoved { nearest: Stitches::new(55), repeat: Rows::new(4) },
            Remark::WedgesMoved { nearest: Stitches::new(54), wedges: 8 },
            Remark::LooserThanHead,
            Remark::DepthOff(Length::from_cm(-0.6)),
            Remark::OddStripes(12),
            Remark::EvenRib,
            Remark::Bulk(Length::from_cm(3.1)),
            Remark::FoldAboveCrown(Length::from_cm(2.0)),
            Remark::SmallParts,
            Remark::BabySleep,
            Remark::PlanKept(1),
            Remark::WedgesDropped(11),
            Remark::KeptDropped,
            Remark::LongParts,
            Remark::UnusualGauge,
        ] {
            let text = remark(&r, &hat, Units::Centimetres);
            assert!(text.ends_with('.') && !text.contains("  "), "{text}");
        }
        let dropped = |why| {
            let (rows, stitches) = (Rows::new(60), Stitches::new(60));
            remark(&Remark::ChosenDropped { rows, stitches, why }, &hat, Units::Centimetres)
        };
        assert_eq!(
            dropped(Unsuited::Tight(Length::from_cm(49.77))),
            "The counts that were chosen by hand, 60 stitches on 60 rows, no longer suit this hat: stretched, it would reach only \
             49.77 cm of the 49.80 cm head. Its own are used."
        );
        let reasons = [
            Unsuited::Repeat(Rows::new(2)),
            Unsuited::Repeat(Rows::new(8)),
            Unsuited::Few,
            Unsuited::Loose(Length::from_cm(57.0)),
            Unsuited::Unlike(Length::from_cm(70.0)),
        ];
        assert!(reasons.map(dropped).iter().all(|text| text.ends_with(". Its own are used.")));
        let text = remark(&Remark::WedgesMoved { nearest: Stitches::new(54), wedges: 8 }, &hat, Units::Centimetres);
        assert_eq!(text, "56 stitches rather than 54: 8 wedges divide them evenly, without an adjustment round.");
        let text = remark(&Remark::AssumedBand, &hat, Units::Centimetres);
        assert!(text.ends_with("When 10 rows are made, lay them flat: they should take 8.3 cm."), "{text}");
        let text = remark(&Remark::DepthOff(Length::from_cm(-0.6)), &hat, Units::Centimetres);
        assert_eq!(text, "In whole rounds the hat comes out 0.6 cm shallower than asked for.");
    }
}
