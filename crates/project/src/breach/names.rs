//! What the numbers of a spec are called in a sentence.

use hatwright_sizing::Quantity;
use hatwright_words::document as words;

/// A number's name: `head girth`. What the planner weighs without asking anybody has no other name than its row's key.
pub(super) fn name(q: Quantity) -> &'static str {
    use Quantity as Q;
    match q {
        Q::HeadGirth => words::name_head_girth(),
        Q::AgeWeeks => words::name_age_weeks(),
        Q::AgeMonths => words::name_age_months(),
        Q::AgeYears => words::name_age_years(),
        Q::Percentile => words::name_percentile(),
        Q::OverTop => words::name_over_top(),
        Q::Lining => words::name_lining(),
        Q::Hook => words::name_hook(),
        Q::BandHook => words::name_band_hook(),
        Q::Strands => words::name_strands(),
        Q::BandRounds => words::name_band_rounds(),
        Q::SlouchWider => words::name_slouch_wider(),
        Q::SlouchLonger => words::name_slouch_longer(),
        Q::Tail => words::name_tail(),
        Q::Taper => words::name_taper(),
        Q::TailStitches => words::name_tail_stitches(),
        Q::TamAcross => words::name_tam_across(),
        Q::FlapLength => words::name_flap_length(),
        Q::FlapTie => words::name_flap_tie(),
        Q::Brim => words::name_brim(),
        Q::Flare => words::name_flare(),
        Q::SideWedges => words::name_side_wedges(),
        Q::SwatchStitches => words::name_swatch_stitches(),
        Q::SwatchWidth => words::name_swatch_width(),
        Q::SwatchRounds => words::name_swatch_rounds(),
        Q::SwatchHeight => words::name_swatch_height(),
        Q::BodyStretch => words::name_body_stretch(),
        Q::BandSwatchStitches => words::name_band_swatch_stitches(),
        Q::BandSwatchWidth => words::name_band_swatch_width(),
        Q::BandSwatchRows => words::name_band_swatch_rows(),
        Q::BandSwatchLength => words::name_band_swatch_length(),
        Q::BandStretch => words::name_band_stretch(),
        Q::Ease => words::name_ease(),
        Q::BandHeight => words::name_band_height(),
        Q::Fold => words::name_fold(),
        Q::StripeRows => words::name_stripe_rows(),
        Q::StripeRounds => words::name_stripe_rounds(),
        Q::Wedges => words::name_wedges(),
        Q::Gather => words::name_gather(),
        Q::PomPom => words::name_pom_pom(),
        Q::BallYarn => words::name_ball_yarn(),
        Q::Tassel => words::name_tassel(),
        Q::Fullness => words::name_fullness(),
        Q::BallGrams => words::name_ball_grams(),
        Q::BallsOwned => words::name_balls_owned(),
        Q::BallPrice => words::name_ball_price(),
        Q::Chance => words::name_chance(),
        Q::Margin => words::name_margin(),
        Q::WeighedStitches => words::name_weighed_stitches(),
        Q::WeighedGrams => words::name_weighed_grams(),
        Q::ScaleStep => words::name_scale_step(),
        Q::UnravelledStitches => words::name_unravelled_stitches(),
        Q::UnravelledLength => words::name_unravelled_length(),
        Q::KeptFactor => words::name_kept_factor(),
        Q::KeptDoubt => words::name_kept_doubt(),
        Q::HatGrams => words::name_hat_grams(),
        Q::InsteadYarn => words::name_instead_yarn(),
        Q::InsteadGrams => words::name_instead_grams(),
        Q::InsteadStitches => words::name_instead_stitches(),
        Q::InsteadWidth => words::name_instead_width(),
        Q::InsteadRounds => words::name_instead_rounds(),
        Q::InsteadHeight => words::name_instead_height(),
        Q::BodyStitch => words::name_body_stitch(),
        Q::BodyRound => words::name_body_round(),
        Q::BandStitch => words::name_band_stitch(),
        Q::BandRow => words::name_band_row(),
        other => other.row().key,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strategies::arb_spec;
    use hatwright_words::{Language, in_language};
    use proptest::prelude::*;
    use std::collections::HashSet;

    proptest! {
        /// Every number of any hat, in words, and in English as its row has it.
        #[test]
        fn every_number_has_its_name(spec in arb_spec()) {
            for (q, _) in spec.numbers() {
                prop_assert_eq!(name(q), q.row().key.replace('-', " "));
                let spanish = in_language(Language::Spanish, || name(q));
                prop_assert!(spanish != q.row().key && !spanish.contains('-'), "{q:?}: {spanish}");
            }
        }
    }

    #[test]
    fn no_two_numbers_have_one_name() {
        for language in Language::ALL {
            let names: HashSet<&str> = in_language(language, || Quantity::ALL.iter().map(|q| name(*q)).collect());
            assert_eq!(names.len(), Quantity::ALL.len(), "{language:?}");
        }
    }
}
