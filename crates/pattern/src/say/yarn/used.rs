//! What was measured of the yarn in stitches: whether it can be believed, what the finished hat teaches, what earlier hats have taught.

use super::chance::whole_percent;
use super::rates::{way, within};
use crate::figures::{Units, factor, length, mass, yarn};
use hatwright_sizing::{
    Ball, Hat, HatSpec, KeptUse, Length, Mass, Part, Quantity, UseWay, YarnLength, YarnRate, rate_of_hat, stitch_yarn,
    swatch_yarn, yarn_rates,
};

/// What stands beside a weighed swatch: that grams of a ball are missing, or that its stitches cannot be believed. `None` where all is
/// well, or nothing was weighed.
///
/// `That makes 31.0 cm a stitch, where about 5.8 cm is usual: count and weigh again.`
pub fn weighed_hint(spec: &HatSpec, units: Units) -> Option<String> {
    let weighed = spec.yarn_use.weighed?;
    let Some(per_gram) = spec.balls.get(usize::from(weighed.colour.0)).and_then(Ball::metres_per_gram) else {
        return Some("A weight tells a length only with the weight of a ball: fill it in from the ball's band.".into());
    };
    let all = weighed.grams.grams() * per_gram * 100.0;
    let each = all / f64::from(spec.strands.max(1)) / f64::from(weighed.stitches.get().max(1));
    unbelieved(spec, UseWay::Weighed, weighed.band, each, ": count and weigh again.", units)
}

/// The same beside unravelled stitches.
pub fn unravelled_hint(spec: &HatSpec, units: Units) -> Option<String> {
    let unravelled = spec.yarn_use.unravelled?;
    let each = unravelled.length.cm() / f64::from(unravelled.stitches.get().max(1));
    unbelieved(spec, UseWay::Unravelled, unravelled.band, each, ": count and measure again.", units)
}

/// What is said of so many centimetres a stitch where they are not among the ways that are known.
fn unbelieved(spec: &HatSpec, way: UseWay, band: bool, cm: f64, again: &str, units: Units) -> Option<String> {
    if yarn_rates(spec).iter().any(|rate| rate.way == way && !rate.kept) {
        return None;
    }
    let usual = length(stitch_yarn(spec, &estimate(band)), units);
    Some(["That makes ", &*length(Length::from_cm(cm), units), " a stitch, where about ", &usual, " is usual", again].concat())
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
                _ => ["colour ", &*(i + 1).to_string()].concat(),
            })
            .collect();
        return Some(if unknown.is_empty() {
            let usual = mass(reckoned_weight(spec, hat), units);
            [&*weight, " cannot be this hat, where about ", &usual, " is usual: look at the scale and at the balls' bands again."]
                .concat()
        } else {
            ["A weight tells a length only with the weight of a ball, which is missing for ", &*unknown.join(" and "), "."]
                .concat()
        });
    };
    let reckoned = yarn_rates(spec).first().map_or(1.0, |rate| rate.factor);
    let more = whole_percent(rate.factor / reckoned - 1.0);
    let against = match more {
        0 => ", just as reckoned.".into(),
        1.. => [", ", &*more.to_string(), " % more than reckoned."].concat(),
        _ => [", ", &*(-more).to_string(), " % less than reckoned."].concat(),
    };
    // A weight of one gram makes, too.
    Some([&*weight, " make ", &length(stitch_yarn(spec, &rate), units), " a stitch", &against].concat())
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
    let name = if hat.trim().is_empty() { "A hat without a name".into() } else { ["“", hat.trim(), "”"].concat() };
    [&*name, ": ", &factor(used.factor), " times the estimate, ", way(&rate), ", ", &within(&rate), "."].concat()
}

/// What a swatch takes, and whether it is bought.
///
/// `A swatch of 15 × 15 cm (6 × 6 in) takes 24 m. It is not bought: unravelled, it becomes part of the hat.`
pub fn swatch_sentence(spec: &HatSpec, units: Units) -> String {
    let takes = yarn(swatch_yarn(spec), units);
    let kept = if spec.yarn_use.swatch_kept {
        ". It is kept, so its yarn is bought besides."
    } else {
        ". It is not bought: unravelled, it becomes part of the hat."
    };
    ["A swatch of 15 × 15 cm (6 × 6 in) takes ", &*takes, kept].concat()
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{Colour, Ratio, Stitches, Unravelled, WeighedSwatch, plan};

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
}
