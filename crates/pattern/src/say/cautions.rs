//! Cautions for babies and small children, each with its source. They inform; local rules decide.

use super::yarn::topper_name;
use hatwright_sizing::{Hat, HeadBasis, Length, Remark, Style, TopperKind};

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
    let mut list = Vec::new();
    if has(Remark::BabySleep) {
        let text = if hat.head.basis == HeadBasis::Measured { SLEEP_UNKNOWN } else { SLEEP };
        list.push(Caution { text: [text, LOCAL].concat(), source: SLEEP_SOURCE });
    }
    if has(Remark::SmallParts) {
        let text = if has_topper {
            let name = hat.topper.map_or("pom-pom", |topper| topper_name(topper.kind));
            ["For a child under 3, best leave the ", name, TOPPER, LOCAL].concat()
        } else {
            [SMALL_PARTS, LOCAL].concat()
        };
        list.push(Caution { text, source: PARTS_SOURCE });
    }
    if has(Remark::LongParts) {
        let tied = hat.flaps.as_ref().is_none_or(|flaps| flaps.tie > Length::ZERO);
        let tassel = hat.topper.is_some_and(|topper| topper.kind == TopperKind::Tassel && topper.size >= LONG_TASSEL);
        let which = [(hat.style == Style::Stocking, TAIL), (hat.style == Style::EarFlap && tied, TIES), (tassel, TASSEL)];
        for (_, text) in which.into_iter().filter(|(is, _)| *is) {
            list.push(Caution { text: [text, LOCAL].concat(), source: LONG_SOURCE });
        }
    }
    list
}

const SLEEP: &str = "For being awake and out of doors: take the hat off for sleep, and indoors. A baby's head should be uncovered in \
     sleep, and babies overheat easily. ";
const SLEEP_UNKNOWN: &str = "A hat this small may be a baby's. If it is, it is for being awake and out of doors: take it off for \
     sleep, and indoors. A baby's head should be uncovered in sleep, and babies overheat easily. ";
const SLEEP_SOURCE: &str = "NHS, Reduce the risk of SIDS (head uncovered in sleep); Leeds Safeguarding Children Partnership (no hats \
     indoors); AAP 2022, doi:10.1542/peds.2022-057990 (overheating)";
/// A tassel from this length on is a string (practice, no source: the planner's own limit for tails).
const LONG_TASSEL: Length = Length::from_ticks(15_000);
const TOPPER: &str = " off: strands and small parts that come loose can choke. If it is \
     wanted, sew it firmly through the hat with the strands of its tie, knot them inside, and tug hard; tug again after every \
     wash. ";
const SMALL_PARTS: &str = "For a child under 3, add no buttons, beads or other small parts: what comes loose can choke. Weave in \
     every end well, and tug at it. ";
const PARTS_SOURCE: &str = "CPSC recall of infant caps, 2017 (a button on top came off); sewing and tugging: common practice";
const TIES: &str = "Ties can catch on play equipment, doors and cots, and tighten around the neck. For a child up to 7, best leave them off; \
     never tie them around the neck, and never leave a child in them asleep or alone. ";
const TAIL: &str = "A long tail can catch on play equipment, doors and cots, or wind around the neck. For a child up to 7, best make it no \
     longer than to the shoulder; never wind it around the neck, and never leave a child in it asleep or alone. ";
const TASSEL: &str = "The strands of a long tassel can catch on play equipment, doors and cots, or wind around a neck or a finger. For a child up \
     to 7, best leave it off or cut it short; never leave a child in it asleep or alone. ";
const LONG_SOURCE: &str = "Tukes, Finnish Safety and Chemicals Agency, on SFS-EN 14682 (garments for children up to 7: no cords at head and \
     neck; its scope leaves hats out, so a rule of thumb here); CPSC FAQ on drawstrings (26 deaths, 1985 to 2019); how long and how \
     watched: common practice";
const LOCAL: &str = "Follow your local rules and advice.";

#[cfg(test)]
mod tests {
    use super::*;
    use crate::written::sample;
    use hatwright_sizing::TopperPlan;

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
}
