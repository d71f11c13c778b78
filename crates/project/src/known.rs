//! What other hats of the same yarn have taught about the yarn in a stitch.

use crate::Project;
use hatwright_sizing::{KeptUse, Length, UseWay, YarnRate, stitch_yarn, yarn_rates};

/// A measurement of a yarn in a saved hat.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KnownUse<'a> {
    /// The hat.
    pub project: &'a Project,
    /// What was measured, ready to be kept in another hat.
    pub used: KeptUse,
    /// What a stitch took there. It goes with that hat's gauge: what is kept is the factor.
    pub stitch: Length,
}

/// A name without differences of case and space.
pub(crate) fn plain(name: &str) -> String {
    name.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}

/// What the hats have measured of a yarn, the surest first; of equals, the one that was changed last. None of a yarn without a name.
///
/// ```
/// use hatwright_project::{ProjectId, example, known_uses};
/// use hatwright_sizing::{Length, Stitches, Unravelled, UseWay};
/// let mut hat = example(ProjectId::from_bits(1));
/// assert!(known_uses(&[hat.clone()], "boathouse wool").is_empty());
/// let length = Length::from_cm(128.0);
/// hat.spec.yarn_use.unravelled = Some(Unravelled { band: false, stitches: Stitches::new(20), length });
/// assert_eq!(known_uses(&[hat], "boathouse  Wool")[0].used.way, UseWay::Unravelled);
/// ```
pub fn known_uses<'a>(hats: &'a [Project], yarn: &str) -> Vec<KnownUse<'a>> {
    let yarn = plain(yarn);
    if yarn.is_empty() {
        return Vec::new();
    }
    let of_it = hats.iter().filter(|hat| hat.colours.iter().any(|colour| plain(&colour.yarn) == yarn));
    let measured = |project: &'a Project| {
        let rates = yarn_rates(&project.spec);
        let surest = rates.iter().find(|rate| rate.way != UseWay::Estimated && tells_of(project, rate, &yarn))?;
        Some(KnownUse { project, used: surest.keep(), stitch: stitch_yarn(&project.spec, surest) })
    };
    let mut all: Vec<KnownUse<'a>> = of_it.filter_map(measured).collect();
    all.sort_by_key(|known| (known.used.doubt, core::cmp::Reverse(known.project.changed_ms)));
    all
}

/// Whether a measurement may be of this yarn: a swatch on the scale is of one colour, and so of its yarn alone. Of stitches and of whole
/// hats nobody says which colour's they were.
fn tells_of(project: &Project, rate: &YarnRate, yarn: &str) -> bool {
    let weighed = project.spec.yarn_use.weighed.filter(|_| rate.way == UseWay::Weighed && !rate.kept);
    weighed.is_none_or(|swatch| project.colours.get(usize::from(swatch.colour.0)).is_some_and(|of| plain(&of.yarn) == yarn))
}
