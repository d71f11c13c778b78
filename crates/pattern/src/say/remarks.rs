//! What a maker should be told about a hat that can be made.

use super::why::{wedges_moved, why_this_count};
use crate::figures::{Units, factor, length, lengths_apart};
use hatwright_sizing::{BandKind, Hat, Length, Remark, Unsuited};
use hatwright_words::{count, remarks as words, why};

/// One remark, in a sentence or two.
pub fn remark(r: &Remark, hat: &Hat, units: Units) -> String {
    let told = match *r {
        Remark::EstimatedGauge => words::estimated_gauge(),
        Remark::AssumedBand => return assumed_band(hat, units),
        Remark::ChosenDropped { rows, stitches, why } => {
            return words::chosen_dropped(stitches.get(), rows.get(), &unsuited(why, hat, units));
        }
        Remark::WedgesMoved { nearest, wedges } => {
            return why::moved(&count::stitches(hat.size.stitches.get()), nearest.get(), &wedges_moved(wedges, hat));
        }
        Remark::StripesMoved { .. } => return why_this_count(hat, units),
        Remark::FoldAboveCrown(by) => return words::fold_above(&length(by, units)),
        Remark::UnusualStitch(shape) => return words::unusual_stitch(&factor(shape)),
        Remark::LooserThanHead => words::looser(),
        Remark::DepthOff(by) => {
            let off = length(Length::from_ticks(by.ticks().saturating_abs()), units);
            return if by.ticks() < 0 { words::shallower(&off) } else { words::deeper(&off) };
        }
        Remark::OddStripes(ends) => return words::odd_stripes(ends),
        Remark::EvenRib => words::even_rib(),
        Remark::Bulk(bundle) => return words::bulk(&length(bundle, units)),
        Remark::PlanKept(planner) => return words::plan_kept(planner),
        Remark::WedgesDropped(wedges) => return words::wedges_dropped(wedges),
        Remark::KeptDropped => words::kept_dropped(),
        Remark::LongParts => words::long_parts(),
        Remark::UnusualGauge => words::unusual_gauge(),
        Remark::SmallParts => words::small_parts(),
        Remark::BabySleep => words::baby_sleep(),
    };
    told.into()
}

fn assumed_band(hat: &Hat, units: Units) -> String {
    let gauge = &hat.gauge;
    let ten = length(Length::from_ticks(gauge.band_row.ticks().saturating_mul(10)), units);
    if hat.band == BandKind::Around {
        return words::band_as_wide(&ten);
    }
    let assumed = if gauge.band_row == gauge.stitch { words::rows_as_wide() } else { words::rows_as_usual() };
    [assumed, " ", &words::ten_rows(&ten)].concat()
}

/// A clause about counts that were chosen by hand.
fn unsuited(unsuited: Unsuited, hat: &Hat, units: Units) -> String {
    match unsuited {
        Unsuited::Repeat(repeat) if repeat.get() == 2 => why::band_rows().into(),
        Unsuited::Repeat(repeat) => words::multiples(repeat.get()),
        Unsuited::Few => words::too_few().into(),
        Unsuited::Tight(reach) => {
            let (head, reach) = lengths_apart(hat.head.girth, reach, units);
            words::too_tight(&reach, &head)
        }
        Unsuited::Loose(girth) => words::too_loose(&length(girth, units), &length(hat.head.girth, units)),
        Unsuited::Unlike(band) => words::unlike(&length(band, units)),
    }
}

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
