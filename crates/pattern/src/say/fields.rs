//! Names of fields, and help for those that want it.

use hatwright_sizing::Quantity;
use hatwright_words::fields as words;

/// The short name that stands beside a field.
pub fn label(q: Quantity) -> &'static str {
    use Quantity as Q;
    match q {
        Q::HeadGirth => words::label_head_girth(),
        Q::Percentile => words::label_percentile(),
        Q::OverTop => words::label_over_top(),
        Q::Lining => words::label_lining(),
        Q::Hook => words::label_hook(),
        Q::BandHook => words::label_band_hook(),
        Q::Strands => words::label_strands(),
        Q::BandRounds => words::label_band_rounds(),
        Q::SlouchWider => words::label_slouch_wider(),
        Q::SlouchLonger => words::label_slouch_longer(),
        Q::Tail => words::label_tail(),
        Q::Taper => words::label_taper(),
        Q::TailStitches => words::label_tail_stitches(),
        Q::TamAcross => words::label_tam_across(),
        Q::FlapLength => words::label_flap_length(),
        Q::FlapTie => words::label_flap_tie(),
        Q::Brim => words::label_brim(),
        Q::Flare => words::label_flare(),
        Q::SideWedges => words::label_side_wedges(),
        Q::AgeWeeks => words::label_age_weeks(),
        Q::AgeMonths => words::label_age_months(),
        Q::AgeYears => words::label_age_years(),
        Q::SwatchStitches | Q::BandSwatchStitches | Q::InsteadStitches => words::label_stitches(),
        Q::SwatchWidth | Q::SwatchHeight | Q::BandSwatchWidth | Q::BandSwatchLength | Q::InsteadWidth | Q::InsteadHeight => {
            words::label_over()
        }
        Q::SwatchRounds | Q::StripeRounds | Q::InsteadRounds => words::label_rounds(),
        Q::BandSwatchRows | Q::StripeRows => words::label_rows(),
        Q::BodyStretch => words::label_body_stretch(),
        Q::BandStretch => words::label_band_stretch(),
        Q::Ease => words::label_ease(),
        Q::BandHeight => words::label_band_height(),
        Q::Fold => words::label_fold(),
        Q::Wedges => words::label_wedges(),
        Q::Gather => words::label_gather(),
        Q::PomPom => words::label_pom_pom(),
        Q::Tassel => words::label_tassel(),
        Q::Fullness => words::label_fullness(),
        Q::BallYarn | Q::InsteadYarn => words::label_ball_yarn(),
        Q::BallGrams | Q::InsteadGrams => words::label_ball_grams(),
        Q::BallsOwned => words::label_balls_owned(),
        Q::BallPrice => words::label_ball_price(),
        Q::Chance => words::label_chance(),
        Q::Margin => words::label_margin(),
        Q::WeighedStitches => words::label_weighed_stitches(),
        Q::WeighedGrams => words::label_weighed_grams(),
        Q::ScaleStep => words::label_scale_step(),
        Q::UnravelledStitches => words::label_unravelled_stitches(),
        Q::UnravelledLength => words::label_unravelled_length(),
        Q::KeptFactor => words::label_kept_factor(),
        Q::KeptDoubt => words::label_kept_doubt(),
        Q::HatGrams => words::label_hat_grams(),
        Q::BodyStitch => words::label_body_stitch(),
        Q::BodyRound => words::label_body_round(),
        Q::BandStitch => words::label_band_stitch(),
        Q::BandRow => words::label_band_row(),
        Q::LoosestFit => words::label_loosest_fit(),
        Q::LoosestByHand => words::label_loosest_by_hand(),
        Q::UnlikeByHand => words::label_unlike_by_hand(),
        Q::LeastStitches => words::label_least_stitches(),
        Q::FitShare => words::label_fit_share(),
        Q::CarryPast => words::label_carry_past(),
        Q::EqualGirths => words::label_equal_girths(),
        Q::ShapeLeast => words::label_shape_least(),
        Q::ShapeMost => words::label_shape_most(),
        Q::HookSlack => words::label_hook_slack(),
        Q::CoverEars => words::label_cover_ears(),
        Q::CoverLobes => words::label_cover_lobes(),
        Q::CoverCanals => words::label_cover_canals(),
        Q::CoverTops => words::label_cover_tops(),
        Q::PriceUneven => words::label_price_uneven(),
        Q::PriceChange => words::label_price_change(),
        Q::PriceRunning => words::label_price_running(),
        Q::PriceAdjust => words::label_price_adjust(),
        Q::PriceOpening => words::label_price_opening(),
        Q::BandMiss => words::label_band_miss(),
        Q::PricePickUp => words::label_price_pick_up(),
        Q::PomPomWraps => words::label_pom_pom_wraps(),
        Q::TasselWraps => words::label_tassel_wraps(),
        Q::OtherDoubt => words::label_other_doubt(),
        Q::BandDoubt => words::label_band_doubt(),
        Q::HandDoubt => words::label_hand_doubt(),
        Q::UnravelDoubt => words::label_unravel_doubt(),
        Q::StitchDoubt => words::label_stitch_doubt(),
        Q::FabricDoubt => words::label_fabric_doubt(),
        Q::SwatchSide => words::label_swatch_side(),
        Q::Ruffle => words::label_ruffle(),
        Q::YarnChain => words::label_yarn_chain(),
        Q::YarnDecrease => words::label_yarn_decrease(),
        Q::YarnDoubt => words::label_yarn_doubt(),
        Q::YarnEnd => words::label_yarn_end(),
    }
}

/// A sentence of help for a field that wants one.
pub fn hint(q: Quantity) -> Option<&'static str> {
    use Quantity as Q;
    Some(match q {
        Q::HeadGirth => words::hint_head_girth(),
        Q::AgeWeeks | Q::AgeMonths | Q::AgeYears => words::hint_age(),
        Q::Percentile => words::hint_percentile(),
        Q::OverTop => words::hint_over_top(),
        Q::Lining => words::hint_lining(),
        Q::Hook | Q::BandHook => words::hint_hook(),
        Q::Strands => words::hint_strands(),
        Q::BandRounds => words::hint_band_rounds(),
        Q::SlouchWider => words::hint_slouch_wider(),
        Q::SlouchLonger => words::hint_slouch_longer(),
        Q::Tail => words::hint_tail(),
        Q::Taper => words::hint_taper(),
        Q::TailStitches => words::hint_tail_stitches(),
        Q::TamAcross => words::hint_tam_across(),
        Q::FlapLength => words::hint_flap_length(),
        Q::FlapTie => words::hint_flap_tie(),
        Q::Brim => words::hint_brim(),
        Q::Flare => words::hint_flare(),
        Q::SideWedges => words::hint_side_wedges(),
        Q::SwatchStitches => words::hint_swatch_stitches(),
        Q::SwatchRounds => words::hint_swatch_rounds(),
        Q::BodyStretch => words::hint_body_stretch(),
        Q::BandStretch => words::hint_band_stretch(),
        Q::BandSwatchStitches => words::hint_band_swatch_stitches(),
        Q::BandSwatchRows => words::hint_band_swatch_rows(),
        Q::Ease => words::hint_ease(),
        Q::Fold => words::hint_fold(),
        Q::Gather => words::hint_gather(),
        Q::Tassel => words::hint_tassel(),
        Q::Fullness => words::hint_fullness(),
        Q::BallYarn | Q::InsteadYarn | Q::BallGrams | Q::InsteadGrams => words::hint_ball(),
        Q::BallsOwned => words::hint_balls_owned(),
        Q::BallPrice => words::hint_ball_price(),
        Q::Chance => words::hint_chance(),
        Q::Margin => words::hint_margin(),
        Q::WeighedStitches => words::hint_weighed_stitches(),
        Q::WeighedGrams => words::hint_weighed_grams(),
        Q::ScaleStep => words::hint_scale_step(),
        Q::UnravelledStitches => words::hint_unravelled_stitches(),
        Q::UnravelledLength => words::hint_unravelled_length(),
        Q::HatGrams => words::hint_hat_grams(),
        Q::InsteadStitches => words::hint_instead_stitches(),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_words::{Language, in_language};

    #[test]
    fn fields_are_named_and_helped_in_spanish() {
        in_language(Language::Spanish, || {
            assert_eq!(label(Quantity::HeadGirth), "Contorno de la cabeza");
            assert_eq!(label(Quantity::BandHook), "Aguja de ganchillo de la banda");
            assert_eq!(
                hint(Quantity::Ease).unwrap(),
                "Cuánto más pequeño que la cabeza es el gorro. Lo usual: del 5 al 9\u{a0}%; del 0 al 3\u{a0}% para una cabeza sin pelo o delicada."
            );
        });
    }

    /// What is told in one language is told in the other, and in other words.
    #[test]
    fn every_field_has_its_words_in_every_language() {
        for q in Quantity::ALL {
            let told = |language| in_language(language, || (label(*q), hint(*q)));
            let (english, spanish) = (told(Language::English), told(Language::Spanish));
            assert!(!english.0.is_empty() && english.0 != spanish.0, "{q:?}");
            assert_eq!(english.1.is_some(), spanish.1.is_some());
            assert!(english.1.is_none() || english.1 != spanish.1, "{q:?}");
        }
    }
}
