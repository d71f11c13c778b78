//! Another yarn in a yarn's place: what changes, and whether it will do.

use super::chance::{told_percent, whole_percent};
use crate::figures::{Units, length, mass, yarn};
use crate::say::refusal;
use crate::say::why::{counted, counts_rows};
use hatwright_sizing::{Hat, HatSpec, Mass, Swap, SwapBasis, Verdict, YarnLength, shop};
use hatwright_words::yarn as words;

/// Whether another yarn will do, in two or three sentences; where no swatch of it stands behind them, they say so.
///
/// `Will do with other counts: 60 stitches around, 18 rounds. They rest on its own swatch.`
pub fn swap(swap: &Swap, units: Units) -> String {
    let hat = match &swap.hat {
        Ok(hat) => hat,
        Err(why) => return with_basis(words::swap_refused(&refusal(why, units)), swap),
    };
    match swap.verdict {
        Verdict::SamePattern => words::swap_same().into(),
        Verdict::OtherCounts => words::swap_counts(&counts(hat)),
        Verdict::SwatchFirst => [&*with_basis(words::swap_may(&counts(hat)), swap), " ", words::swap_swatch()].concat(),
        Verdict::WillNot => with_basis(if is_thicker(swap) { words::swap_coarser() } else { words::swap_finer() }.into(), swap),
    }
}

fn is_thicker(swap: &Swap) -> bool {
    swap.thickness.map_or_else(|| swap.hat.as_ref().is_ok_and(|hat| hat.gauge.stitch.cm() > 1.0), |thick| thick.value() > 1.0)
}

/// `56 stitches around, 16 rounds`
fn counts(hat: &Hat) -> String {
    let count = counted(&hat.size, hat);
    if hat.rounds.is_empty() { words::around(&count) } else { words::around_rounds(&count, hat.round_count().get()) }
}

/// Adds what the comparison rests on, where that is no swatch.
fn with_basis(text: String, swap: &Swap) -> String {
    let basis = basis(swap);
    if basis.is_empty() { text } else { [&*text, " ", &basis].concat() }
}

fn basis(swap: &Swap) -> String {
    let thick = swap.thickness.map(|thick| whole_percent(thick.value() - 1.0));
    match (swap.basis, thick) {
        (SwapBasis::Swatch, _) => String::new(),
        (SwapBasis::Thickness, Some(less @ ..0)) => words::by_thinner(&told_percent(less.saturating_neg())),
        (SwapBasis::Thickness, Some(more)) => words::by_thicker(&told_percent(more)),
        (SwapBasis::Thickness, None) => words::by_thickness().into(),
        (SwapBasis::Weight, _) => words::by_weight().into(),
        (SwapBasis::AsIs, Some(_)) => words::as_thick().into(),
        (SwapBasis::AsIs, None) => words::thickness_unknown().into(),
    }
}

/// A line of the comparison.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SwapRow {
    /// What is compared.
    pub term: &'static str,
    /// In the hat as it is.
    pub now: String,
    /// With the other yarn; absent where no hat can be made of it.
    pub then: Option<String>,
}

impl SwapRow {
    /// Whether the other yarn changes it.
    pub fn changes(&self) -> bool {
        self.then.as_ref().is_some_and(|then| *then != self.now)
    }
}

/// The hat as it is beside the hat in the other yarn: counts, measures, yarn and balls.
pub fn swap_rows(now: &Hat, spec: &HatSpec, swap: &Swap, units: Units) -> Vec<SwapRow> {
    let then = swap.hat.as_ref().ok();
    let mut all = Vec::with_capacity(8);
    let mut row = |term, of: &dyn Fn(&Hat, &HatSpec) -> String| {
        all.push(SwapRow { term, now: of(now, spec), then: then.map(|hat| of(hat, &swap.spec)) });
    };
    if counts_rows(now) {
        row(words::row_rows(), &|hat, _| hat.size.rows.to_string());
    } else {
        row(words::row_stitches(), &|hat, _| hat.stitches().to_string());
    }
    if !now.rounds.is_empty() {
        row(words::row_rounds(), &|hat, _| hat.round_count().to_string());
    }
    row(words::row_girth(), &|hat, _| length(hat.size.girth, units));
    row(words::row_depth(), &|hat, _| length(hat.depth.promised, units));
    row(words::row_yarn(), &|hat, _| yarn(hat.yarn.iter().map(|need| need.length).sum(), units));
    row(words::row_weight(), &|hat, spec| {
        weight(hat, spec).map_or_else(|| words::weight_unknown().into(), |grams| mass(grams, units))
    });
    row(words::row_balls(), &|hat, spec| shop(hat, spec).lines.iter().map(|line| line.balls).sum::<u32>().to_string());
    all
}

/// What the yarn of a hat weighs, where the weights of all its balls are known.
fn weight(hat: &Hat, spec: &HatSpec) -> Option<Mass> {
    let mut grams = 0.0;
    for need in hat.yarn.iter().filter(|need| need.length > YarnLength::default()) {
        grams += need.length.metres() / spec.balls.get(usize::from(need.colour.0))?.metres_per_gram()?;
    }
    Some(Mass::from_grams(grams))
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{Count, Instead, Length, Style, Swatch, YarnWeight, plan};
    use hatwright_words::{Language, in_language};

    const CM: Units = Units::Centimetres;

    fn spec(metres: i32, grams: Option<f64>, weight: Option<u8>, swatch: Option<(i32, i32)>) -> HatSpec {
        let mut spec = HatSpec::default();
        spec.balls.iter_mut().for_each(|ball| ball.grams = Some(Mass::from_grams(50.0)));
        let cm = Length::from_cm(10.0);
        spec.instead = Some(Instead {
            yarn: Count::whole(metres),
            grams: grams.map(Mass::from_grams),
            weight: weight.and_then(|n| YarnWeight::new(n).ok()),
            swatch: swatch.map(|(stitches, rounds)| Swatch::Counted {
                stitches: Count::whole(stitches),
                width: cm,
                rounds: Count::whole(rounds),
                height: cm,
            }),
        });
        spec
    }

    fn refused() -> hatwright_sizing::Refusal {
        hatwright_sizing::Refusal::TooLong { measure: hatwright_sizing::Quantity::Tail, most: Length::from_cm(9.0) }
    }

    fn told(spec: &HatSpec) -> String {
        swap(&hatwright_sizing::swap(spec).unwrap(), CM)
    }

    #[test]
    fn what_rests_on_a_swatch_is_told_as_that() {
        assert!(told(&spec(80, Some(50.0), None, Some((12, 15)))).starts_with("Will do: its swatch gives the same"));
        let other = told(&spec(80, Some(50.0), None, Some((13, 16))));
        assert!(other.starts_with("Will do with other counts: 60 stitches around, "), "{other}");
        assert!(other.ends_with(" rounds. They rest on its own swatch."), "{other}");
    }

    #[test]
    fn what_rests_on_no_swatch_says_so() {
        for (spec, says) in [
            (
                spec(65, Some(50.0), None, None),
                "by its metres and grams it is 11 % thicker, and a stitch is taken to be as much wider",
            ),
            (
                spec(100, Some(50.0), None, None),
                "by its metres and grams it is 11 % thinner, and a stitch is taken to be as much narrower",
            ),
            (spec(80, Some(50.0), None, None), "it is as thick as this one, to within 3 %."),
            (spec(80, None, None, None), "its thickness is not known"),
            (spec(80, None, Some(5), None), "its stitch is the middle of what is usual for its weight number"),
        ] {
            let text = told(&spec);
            assert!(text.starts_with("May do, with about ") && text.contains(says), "{text}");
            assert!(text.contains(" No swatch") && text.ends_with("before you buy for all of the hat."), "{text}");
        }
    }

    #[test]
    fn what_will_not_do_is_told_with_why() {
        let coarse = told(&spec(20, Some(50.0), None, None));
        assert!(coarse.starts_with("Will not do"), "{coarse}");
        let fine = told(&spec(250, Some(50.0), None, None));
        assert!(fine.starts_with("Will not do for this hat: its stitches are so much finer"), "{fine}");
        let mut none = hatwright_sizing::swap(&spec(80, Some(50.0), None, Some((12, 15)))).unwrap();
        none.hat = Err(refused());
        none.verdict = Verdict::WillNot;
        assert!(swap(&none, CM).starts_with("Will not do as the hat is. "));
    }

    #[test]
    fn the_comparison_is_of_both_hats() {
        let spec = spec(80, Some(50.0), None, Some((13, 16)));
        let (now, other) = (plan(&spec).unwrap(), hatwright_sizing::swap(&spec).unwrap());
        let rows = swap_rows(&now, &spec, &other, CM);
        assert_eq!(rows.len(), 7);
        assert_eq!((rows[0].term, &*rows[0].now, rows[0].then.as_deref()), ("Stitches around", "56", Some("60")));
        assert!(rows[0].changes() && rows.iter().all(|row| !row.now.is_empty()));
        let refused = Swap { hat: Err(refused()), ..other };
        assert!(swap_rows(&now, &spec, &refused, CM).iter().all(|row| row.then.is_none() && !row.changes()));
        let warmer = HatSpec { style: Style::EarWarmer, ..spec };
        let now = plan(&warmer).unwrap();
        let rows = swap_rows(&now, &warmer, &hatwright_sizing::swap(&warmer).unwrap(), CM);
        assert_eq!((rows[0].term, rows.iter().any(|row| row.term == "Rounds")), ("Rows around", false));
    }

    #[test]
    fn another_yarn_is_judged_in_spanish() {
        in_language(Language::Spanish, || {
            let other = told(&spec(80, Some(50.0), None, Some((13, 16))));
            assert!(other.starts_with("Sirve con otros números: 60 puntos de contorno, "), "{other}");
            assert!(other.ends_with(" vueltas. Parten de su propia muestra."), "{other}");
            let thicker = told(&spec(65, Some(50.0), None, None));
            assert!(thicker.contains(". Sin muestra: por sus metros y gramos es un 11\u{a0}% más grueso, "), "{thicker}");
            assert!(thicker.ends_with(" Teje una muestra antes de comprar para todo el gorro."), "{thicker}");
        });
    }
}
