//! What was measured of the yarn in stitches: whether it can be believed, what the finished hat teaches, what earlier hats have taught.

use super::chance::{told_percent, whole_percent};
use super::lots::and;
use super::rates::{way, within};
use crate::figures::{Units, factor, length, mass, yarn};
use hatwright_sizing::{
    Ball, Hat, HatSpec, KeptUse, Length, Mass, Part, Quantity, UseWay, YarnLength, YarnRate, rate_of_hat, stitch_yarn,
    swatch_yarn, yarn_rates,
};
use hatwright_words::yarn as words;

/// What stands beside a weighed swatch: that grams of a ball are missing, or that its stitches cannot be believed. `None` where all is
/// well, or nothing was weighed.
///
/// `That makes 31.0 cm a stitch, where about 5.8 cm is usual: count and weigh again.`
pub fn weighed_hint(spec: &HatSpec, units: Units) -> Option<String> {
    let weighed = spec.yarn_use.weighed?;
    let Some(per_gram) = spec.balls.get(usize::from(weighed.colour.0)).and_then(Ball::metres_per_gram) else {
        return Some(words::needs_ball_weight().into());
    };
    let all = weighed.grams.grams() * per_gram * 100.0;
    let each = all / f64::from(spec.strands.max(1)) / f64::from(weighed.stitches.get().max(1));
    let (each, usual) = unbelieved(spec, UseWay::Weighed, weighed.band, each, units)?;
    Some(words::odd_weighed(&each, &usual))
}

/// The same beside unravelled stitches.
pub fn unravelled_hint(spec: &HatSpec, units: Units) -> Option<String> {
    let unravelled = spec.yarn_use.unravelled?;
    let each = unravelled.length.cm() / f64::from(unravelled.stitches.get().max(1));
    let (each, usual) = unbelieved(spec, UseWay::Unravelled, unravelled.band, each, units)?;
    Some(words::odd_unravelled(&each, &usual))
}

/// So many centimetres a stitch, and what is usual, where they are not among the ways that are known.
fn unbelieved(spec: &HatSpec, way: UseWay, band: bool, cm: f64, units: Units) -> Option<(String, String)> {
    if yarn_rates(spec).iter().any(|rate| rate.way == way && !rate.kept) {
        return None;
    }
    Some((length(Length::from_cm(cm), units), length(stitch_yarn(spec, &estimate(band)), units)))
}

/// What a stitch of body or band should take.
fn estimate(band: bool) -> YarnRate {
    let doubt = Quantity::YarnDoubt.row().usual_value();
    YarnRate { way: UseWay::Estimated, kept: false, factor: 1.0, doubt, ball_doubt: doubt, band }
}

/// What the finished hat's weight makes of its stitches, against what was reckoned with; or why it makes nothing. `names` are those of the
/// colours. `None` where it was not weighed.
///
/// `60 g make 6.1 cm a stitch, 5 % more than reckoned.`
pub fn hat_weight_sentence(spec: &HatSpec, hat: &Hat, names: &[&str], units: Units) -> Option<String> {
    let weight = mass(spec.yarn_use.hat?, units);
    let Some(rate) = rate_of_hat(spec, hat) else {
        let used = |i: &usize| hat.yarn.get(*i).is_some_and(|need| need.length > YarnLength::default());
        let unknown: Vec<String> = (0..spec.balls.len())
            .filter(used)
            .filter(|i| spec.balls[*i].grams.is_none())
            .map(|i| match names.get(i).map(|name| name.trim()) {
                Some(name) if !name.is_empty() => name.to_owned(),
                _ => words::colour(i as u32 + 1),
            })
            .collect();
        return Some(if unknown.is_empty() {
            words::odd_hat(&weight, &mass(reckoned_weight(spec, hat), units))
        } else {
            words::weight_missing(&and(&unknown))
        });
    };
    let reckoned = yarn_rates(spec).first().map_or(1.0, |rate| rate.factor);
    let each = length(stitch_yarn(spec, &rate), units);
    Some(match whole_percent(rate.factor / reckoned - 1.0) {
        0 => words::hat_as_reckoned(&weight, &each),
        more @ 1.. => words::hat_more(&weight, &each, &told_percent(more)),
        less => words::hat_less(&weight, &each, &told_percent(less.saturating_neg())),
    })
}

/// What the hat should weigh; only where the weights of all its balls are known.
fn reckoned_weight(spec: &HatSpec, hat: &Hat) -> Mass {
    let parts = hat.yarn_parts.iter().filter(|part| part.part != Part::Swatch);
    let grams = parts.filter_map(|part| {
        let per_gram = spec.balls.get(usize::from(part.colour.0))?.metres_per_gram()?;
        Some(part.length.metres() / per_gram)
    });
    Mass::from_grams(grams.sum())
}

/// A use of the same yarn that another hat has measured, to be offered.
///
/// `“Junior cap”: 1.05 times the estimate, kept from a finished hat that was weighed, right to 6 % either way.`
pub fn known_use(hat: &str, used: &KeptUse) -> String {
    let doubt = used.doubt.value();
    let rate = YarnRate { way: used.way, kept: true, factor: used.factor.value(), doubt, ball_doubt: doubt, band: false };
    let name = if hat.trim().is_empty() { words::unnamed_hat_heading().into() } else { words::hat_quoted(hat.trim()) };
    words::known_use(&name, &factor(used.factor), way(&rate), &within(&rate))
}

/// What a swatch takes, and whether it is bought.
///
/// `A swatch of 15 × 15 cm (6 × 6 in) takes 24 m. It is not bought: unravelled, it becomes part of the hat.`
pub fn swatch_sentence(spec: &HatSpec, units: Units) -> String {
    let takes = yarn(swatch_yarn(spec), units);
    if spec.yarn_use.swatch_kept { words::swatch_kept(&takes) } else { words::swatch_unravelled(&takes) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{Colour, Ratio, Stitches, Unravelled, WeighedSwatch, plan};
    use hatwright_words::{Language, in_language};

    const CM: Units = Units::Centimetres;
    const NAMES: [&str; 2] = ["Indigo", ""];

    fn weighed(grams: f64) -> HatSpec {
        let mut spec = HatSpec::default();
        spec.balls.iter_mut().for_each(|ball| ball.grams = Some(Mass::from_grams(50.0)));
        let grams = Mass::from_grams(grams);
        spec.yarn_use.weighed = Some(WeighedSwatch { colour: Colour(0), band: false, stitches: Stitches::new(180), grams });
        spec
    }

    /// 80 m of 50 g are 1.6 m a gram: 35 g of 180 stitches are 56 m, 31.1 cm each, where 7 × 0.833 cm are 5.8.
    #[test]
    fn what_cannot_be_believed_is_asked_about() {
        assert_eq!(weighed_hint(&HatSpec::default(), CM), None);
        assert_eq!(weighed_hint(&weighed(7.0), CM), None);
        assert_eq!(
            weighed_hint(&weighed(35.0), CM).unwrap(),
            "That makes 31.1 cm a stitch, where about 5.8 cm is usual: count and weigh again."
        );
        let mut spec = weighed(7.0);
        spec.balls[0].grams = None;
        assert!(weighed_hint(&spec, CM).unwrap().ends_with("fill it in from the ball's band."));
    }

    #[test]
    fn unravelled_stitches_that_cannot_be_are_asked_about() {
        let told = |cm| {
            let mut spec = HatSpec::default();
            let length = Length::from_cm(cm);
            spec.yarn_use.unravelled = Some(Unravelled { band: false, stitches: Stitches::new(20), length });
            unravelled_hint(&spec, CM)
        };
        assert_eq!(told(128.0), None);
        assert_eq!(told(8.0).unwrap(), "That makes 0.4 cm a stitch, where about 5.8 cm is usual: count and measure again.");
    }

    /// A hat that weighs what its yarn weighs takes what was reckoned; heavier, its stitches take more.
    #[test]
    fn the_weight_of_the_hat_is_set_against_what_was_reckoned() {
        let mut spec = weighed(7.0);
        spec.yarn_use.weighed = None;
        let hat = plan(&spec).unwrap();
        assert_eq!(hat_weight_sentence(&spec, &hat, &NAMES, CM), None);
        let weight = reckoned_weight(&spec, &hat);
        spec.yarn_use.hat = Some(weight);
        let told = hat_weight_sentence(&spec, &hat, &NAMES, CM).unwrap();
        assert_eq!(told, [&*mass(weight, CM), " make 5.8 cm a stitch, just as reckoned."].concat());

        let grams = |worked: bool| {
            let mine = hat.yarn_parts.iter().filter(|part| part.part.is_worked() == worked);
            mine.map(|part| part.length.metres() / 1.6).sum::<f64>()
        };
        let tenth_more = grams(false) + 1.1 * grams(true);
        spec.yarn_use.hat = Some(Mass::from_grams(tenth_more));
        let told = hat_weight_sentence(&spec, &hat, &NAMES, CM).unwrap();
        assert!(told.ends_with(" make 6.4 cm a stitch, 10 % more than reckoned."), "{told}");

        spec.yarn_use.hat = Some(Mass::from_grams(5_000.0));
        let told = hat_weight_sentence(&spec, &hat, &NAMES, CM).unwrap();
        assert!(told.starts_with("5000 g cannot be this hat, where about "), "{told}");
        spec.balls.iter_mut().for_each(|ball| ball.grams = None);
        assert_eq!(
            hat_weight_sentence(&spec, &hat, &NAMES, CM).unwrap(),
            "A weight tells a length only with the weight of a ball, which is missing for Indigo and colour 2."
        );
    }

    #[test]
    fn earlier_uses_and_the_swatch_are_told() {
        let used = KeptUse { factor: Ratio::of(1.05), doubt: Ratio::of(0.06), way: UseWay::Hat };
        assert_eq!(
            known_use("Junior cap", &used),
            "“Junior cap”: 1.05 times the estimate, kept from a finished hat that was weighed, right to 6 % either way."
        );
        assert!(known_use(" ", &used).starts_with("A hat without a name: "));
        let mut spec = HatSpec::default();
        assert!(swatch_sentence(&spec, CM).starts_with("A swatch of 15 × 15 cm (6 × 6 in) takes 24 m. It is not bought"));
        spec.yarn_use.swatch_kept = true;
        assert!(swatch_sentence(&spec, CM).ends_with("bought besides."));
    }

    #[test]
    fn uses_are_told_in_spanish() {
        let used = KeptUse { factor: Ratio::of(1.05), doubt: Ratio::of(0.06), way: UseWay::Hat };
        in_language(Language::Spanish, || {
            assert_eq!(
                known_use("Junior cap", &used),
                "«Junior cap»: 1,05 veces lo estimado, guardado de un gorro terminado que se pesó, con un margen del 6\u{a0}% arriba o abajo."
            );
            assert_eq!(
                weighed_hint(&weighed(35.0), CM).unwrap(),
                "Eso da 31,1 cm por punto, cuando lo usual son unos 5,8 cm: vuelve a contar y a pesar."
            );
            assert!(swatch_sentence(&HatSpec::default(), Units::Both).contains(" lleva 24 m (26 yd). No se compra: deshecha, "));
        });
    }
}
