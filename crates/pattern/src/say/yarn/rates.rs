//! How much yarn a stitch takes, by every way in which that is known.

use super::chance::{told_percent, whole_percent};
use super::lots::and;
use crate::figures::{Units, length};
use hatwright_sizing::{HatSpec, Length, UseWay, YarnRate, stitch_yarn, yarn_rates};
use hatwright_words::yarn as words;

/// How the yarn of a stitch is known, and how surely: no full stop, so that it can stand inside a sentence.
///
/// `6.4 cm of yarn a stitch, from unravelled stitches, right to 7 % either way, 9 times in 10`
///
/// `each` is [`stitch_yarn`], one strand of it.
pub fn rate_sentence(rate: &YarnRate, each: Length, units: Units) -> String {
    let tell = if rate.band { words::rate_band } else { words::rate };
    tell(&length(each, units), way(rate), &within(rate))
}

/// The same for a hat of several strands: `6.4 cm of each of 2 strands a stitch, …`.
pub fn rate_of_strands(spec: &HatSpec, rate: &YarnRate, units: Units) -> String {
    let each = stitch_yarn(spec, rate);
    match spec.strands {
        0 | 1 => rate_sentence(rate, each, units),
        strands => {
            let tell = if rate.band { words::rate_strands_band } else { words::rate_strands };
            tell(&length(each, units), strands, way(rate), &within(rate))
        }
    }
}

/// `right to 7 % either way`
pub(super) fn within(rate: &YarnRate) -> String {
    words::within(&share(rate))
}

fn share(rate: &YarnRate) -> String {
    told_percent(whole_percent(rate.doubt))
}

/// How it was measured.
pub(super) fn way(rate: &YarnRate) -> &'static str {
    match (rate.way, rate.kept) {
        (UseWay::Estimated, false) => words::way_estimated(),
        (UseWay::Estimated, true) => words::way_estimated_kept(),
        (UseWay::Weighed, false) => words::way_weighed(),
        (UseWay::Weighed, true) => words::way_weighed_kept(),
        (UseWay::Unravelled, false) => words::way_unravelled(),
        (UseWay::Unravelled, true) => words::way_unravelled_kept(),
        (UseWay::Hat, false) => words::way_hat(),
        (UseWay::Hat, true) => words::way_hat_kept(),
    }
}

/// Why the first of all ways is used: the surest is.
///
/// `Used because it is the surest of the 3 ways that are known: right to 7 %, where the others are right to 11 % and 25 %.`
pub fn why_this_rate(rates: &[YarnRate]) -> String {
    match rates {
        [] => String::new(),
        [only] if only.way == UseWay::Estimated => words::not_measured().into(),
        [_] => words::only_way().into(),
        [first, other] => words::surest_of_two(&share(first), &share(other)),
        [first, others @ ..] => {
            let shares: Vec<String> = others.iter().map(share).collect();
            words::surest_of(rates.len() as u32, &share(first), &and(&shares))
        }
    }
}

/// All ways compared, the surest first: a line each, with a full stop.
pub fn rates_compared(spec: &HatSpec, units: Units) -> Vec<String> {
    yarn_rates(spec).iter().map(|rate| [&*rate_of_strands(spec, rate, units), "."].concat()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{Colour, KeptUse, Mass, Ratio, Stitches, Unravelled, WeighedSwatch};
    use hatwright_words::{Language, in_language};

    const CM: Units = Units::Centimetres;

    fn spec() -> HatSpec {
        let mut spec = HatSpec::default();
        spec.yarn_use.unravelled = Some(Unravelled { band: false, stitches: Stitches::new(20), length: Length::from_cm(128.0) });
        spec
    }

    /// Twenty stitches that gave 128 cm: 6.4 cm each.
    #[test]
    fn the_surest_way_is_told_with_its_range() {
        let rates = yarn_rates(&spec());
        assert_eq!(
            rate_of_strands(&spec(), &rates[0], CM),
            "6.4 cm of yarn a stitch, from unravelled stitches, right to 7 % either way, 9 times in 10"
        );
        assert_eq!(
            rate_sentence(&rates[1], stitch_yarn(&spec(), &rates[1]), Units::Inches),
            "2.3 in of yarn a stitch, estimated from the width of a stitch, right to 25 % either way, 9 times in 10"
        );
        assert_eq!(
            why_this_rate(&rates),
            "Used because it is the surest of the 2 ways that are known: right to 7 %, where the other is right to 25 %."
        );
        assert!(why_this_rate(&rates[1..]).starts_with("Nothing of it was measured yet."));
        assert_eq!(why_this_rate(&[]), "");
    }

    #[test]
    fn strands_and_bands_are_named() {
        let mut spec = spec();
        spec.strands = 2;
        spec.yarn_use.unravelled.as_mut().unwrap().band = true;
        assert_eq!(
            rates_compared(&spec, CM)[0],
            "6.4 cm of each of 2 strands a stitch of the band, from unravelled stitches, right to 7 % either way, 9 times in 10."
        );
    }

    #[test]
    fn all_ways_are_compared() {
        let mut spec = spec();
        spec.balls[0].grams = Some(Mass::from_grams(50.0));
        spec.yarn_use.weighed =
            Some(WeighedSwatch { colour: Colour(0), band: false, stitches: Stitches::new(180), grams: Mass::from_grams(7.0) });
        let mut told = Vec::new();
        for way in [UseWay::Hat, UseWay::Weighed, UseWay::Unravelled, UseWay::Estimated] {
            spec.yarn_use.kept = Some(KeptUse { factor: Ratio::of(1.05), doubt: Ratio::of(0.06), way });
            let rates = yarn_rates(&spec);
            assert_eq!(rates.len(), 4);
            assert!(why_this_rate(&rates).contains("the others are right to "));
            told.extend(rates_compared(&spec, CM));
        }
        assert!(told.iter().all(|text| text.ends_with("9 times in 10.") && !text.contains("  ")));
        told.sort();
        told.dedup();
        assert_eq!(told.len(), 3 + 4, "{told:?}");
    }

    #[test]
    fn rates_are_told_in_spanish() {
        let rates = yarn_rates(&spec());
        in_language(Language::Spanish, || {
            assert_eq!(
                rate_of_strands(&spec(), &rates[0], CM),
                "6,4 cm de hilo por punto, según puntos deshechos, con un margen del 7\u{a0}% arriba o abajo, 9 de cada 10 veces"
            );
            assert_eq!(
                why_this_rate(&rates),
                "Se usa porque es la más segura de las 2 maneras conocidas: con un margen del 7\u{a0}%, y la otra, del 25\u{a0}%."
            );
        });
    }
}
