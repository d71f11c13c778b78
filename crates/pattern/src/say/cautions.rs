//! Cautions for babies and small children, each with its source. They inform; local rules decide.

use hatwright_sizing::{Hat, HeadBasis, Length, Remark, Style, TopperKind};
use hatwright_words::cautions as say;

/// A caution and where it comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Caution {
    /// What to do.
    pub text: String,
    /// Who says so.
    pub source: &'static str,
}

/// The cautions that go with a hat, as its remarks say; none for a hat that no small child is likely to wear.
/// `has_topper` tells whether a pom-pom or a tassel is wanted.
pub fn cautions(hat: &Hat, has_topper: bool) -> Vec<Caution> {
    let has = |wanted: Remark| hat.remarks.contains(&wanted);
    let told = |text: &str, source| Caution { text: text.into(), source };
    let mut list = Vec::new();
    if has(Remark::BabySleep) {
        let text = if hat.head.basis == HeadBasis::Measured { say::sleep_unknown() } else { say::sleep() };
        list.push(told(text, say::sleep_source()));
    }
    if has(Remark::SmallParts) {
        let tasselled = hat.topper.is_some_and(|topper| topper.kind == TopperKind::Tassel);
        let text = match (has_topper, tasselled) {
            (false, _) => say::small_parts(),
            (true, false) => say::pompom(),
            (true, true) => say::tassel(),
        };
        list.push(told(text, say::parts_source()));
    }
    if has(Remark::LongParts) {
        let tied = hat.flaps.as_ref().is_none_or(|flaps| flaps.tie > Length::ZERO);
        let tassel = hat.topper.is_some_and(|topper| topper.kind == TopperKind::Tassel && topper.size >= LONG_TASSEL);
        let which = [
            (hat.style == Style::Stocking, say::tail()),
            (hat.style == Style::EarFlap && tied, say::ties()),
            (tassel, say::long_tassel()),
        ];
        list.extend(which.into_iter().filter(|(is, _)| *is).map(|(_, text)| told(text, say::long_source())));
    }
    list
}

/// A tassel from this length on is a string (practice, no source: the planner's own limit for tails).
const LONG_TASSEL: Length = Length::from_ticks(15_000);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::written::sample;
    use hatwright_sizing::TopperPlan;
    use hatwright_words::{Language, in_language};

    #[test]
    fn cautions_follow_the_wearer() {
        let mut hat = sample::hat();
        hat.remarks.clear();
        assert!(cautions(&hat, true).is_empty());

        hat.remarks = vec![Remark::SmallParts];
        let list = cautions(&hat, true);
        assert_eq!(list.len(), 1);
        assert!(list[0].text.contains("leave the pom-pom off"));
        assert!(!cautions(&hat, false)[0].text.contains("pom-pom"));

        hat.remarks = vec![Remark::SmallParts, Remark::BabySleep];
        let list = cautions(&hat, false);
        assert_eq!(list.len(), 2);
        assert!(list.iter().all(|c| c.text.ends_with("Follow your local rules and advice.")));
    }

    #[test]
    fn ties_and_tails_are_cautioned_apart() {
        let mut hat = sample::hat();
        hat.remarks = vec![Remark::LongParts];
        hat.style = Style::EarFlap;
        assert!(cautions(&hat, false)[0].text.starts_with("Ties can catch"));
        hat.style = Style::Stocking;
        let list = cautions(&hat, false);
        assert_eq!(list.len(), 1);
        assert!(list[0].text.starts_with("A long tail can catch") && list[0].source.contains("EN 14682"));
    }

    /// A tassel comes off as a pom-pom does, and a long one is a string as well.
    #[test]
    fn tassels_are_cautioned_as_what_they_are() {
        let mut hat = sample::hat();
        hat.remarks = vec![Remark::SmallParts, Remark::LongParts];
        let mut told = |kind, cm| {
            hat.topper = hat.topper.map(|t| TopperPlan { kind, size: Length::from_cm(cm), ..t });
            cautions(&hat, true).into_iter().map(|caution| caution.text).collect::<Vec<_>>()
        };
        let short = told(TopperKind::Tassel, 10.0);
        assert!(short.len() == 1 && short[0].contains("leave the tassel off") && !short[0].contains("pom-pom"), "{short:?}");
        let long = told(TopperKind::Tassel, 20.0);
        assert!(long.len() == 2 && long[1].starts_with("The strands of a long tassel can catch"), "{long:?}");
        assert_eq!(told(TopperKind::PomPom, 20.0).len(), 1);
    }

    #[test]
    fn a_measured_head_is_cautioned_as_its_remarks_say() {
        let mut hat = sample::hat();
        hat.head.basis = HeadBasis::Measured;
        hat.size.girth = Length::from_cm(40.0);
        hat.remarks.clear();
        assert!(cautions(&hat, false).is_empty(), "the girth has no say of its own");
        hat.remarks = vec![Remark::SmallParts, Remark::BabySleep];
        assert!(cautions(&hat, false)[0].text.starts_with("A hat this small may be a baby's."));
        hat.head.basis = HeadBasis::Who;
        assert!(cautions(&hat, false)[0].text.starts_with("For being awake"));
    }
    /// In every language each caution says whose rules hold, and its source is named as those look for it who want to read it.
    #[test]
    fn every_language_cautions_alike() {
        let mut hat = sample::hat();
        hat.style = Style::Stocking;
        hat.remarks = vec![Remark::SmallParts, Remark::BabySleep, Remark::LongParts];
        let english = cautions(&hat, true);
        let spanish = in_language(Language::Spanish, || cautions(&hat, true));
        assert_eq!(english.len(), spanish.len());
        for (own, other) in english.iter().zip(&spanish) {
            assert!(own.text.ends_with("Follow your local rules and advice."), "{own:?}");
            assert!(other.text.ends_with("Sigue las normas y consejos de tu país."), "{other:?}");
            for name in ["NHS", "AAP 2022, doi:10.1542/peds.2022-057990", "CPSC", "Tukes", "SFS-EN 14682", "26", "1985"] {
                assert_eq!(own.source.contains(name), other.source.contains(name), "{name}");
            }
        }
        assert!(spanish[1].text.starts_with("Para un niño menor de 3 años, mejor no pongas el pompón"), "{spanish:?}");
    }
}
