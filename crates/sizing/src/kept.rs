//! The rounds of a hat that is begun, kept from the planner that planned them.

use crate::{Begun, Hat, HatSpec, Kept, KeptRounds, PLANNER, Stitches, Style};

/// So many stitches more than the plan has are a mistake that was worked on from, not another shape.
const MISCOUNT: u32 = 3;

/// The most stitches of a round that is worked into a ring (practice).
const RING: u32 = 16;

impl Kept {
    /// What is kept of a hat when it is begun: planned with it again, the hat has the same rounds.
    ///
    /// ```
    /// use hatwright_sizing::{HatSpec, Kept, plan};
    /// let hat = plan(&HatSpec::default()).unwrap();
    /// let begun = HatSpec { kept: Some(Kept::of(&hat)), ..HatSpec::default() };
    /// assert_eq!(plan(&begun).unwrap().rounds, hat.rounds);
    /// ```
    pub fn of(hat: &Hat) -> Self {
        let alike = |a: &crate::Round, b: &crate::Round| (a.after, a.lead) == (b.after, b.lead);
        let group = |group: &[crate::Round]| KeptRounds {
            after: group[0].after.get(),
            lead: group[0].lead.get(),
            times: group.len() as u32,
        };
        Self {
            planner: PLANNER,
            rows: hat.size.rows,
            stitches: hat.size.stitches,
            rounds: hat.rounds.chunk_by(alike).map(group).collect(),
        }
    }

    /// Stitches and lead of every round, in working order.
    pub(crate) fn every(&self) -> (Vec<u32>, Vec<u32>) {
        let rounds = || self.rounds.iter().flat_map(|r| core::iter::repeat_n(r, r.times as usize));
        (rounds().map(|r| r.after).collect(), rounds().map(|r| r.lead).collect())
    }

    /// Whether these rounds make a hat of this style, begun where it is, with a band and a brim of so many rounds, and a slouch's tube of
    /// so many stitches.
    pub(crate) fn suits(&self, spec: &HatSpec, band: usize, brim: usize, tube: Stitches) -> bool {
        let (all, leads) = self.every();
        let n = self.stitches.get();
        if spec.style == Style::Sideways || spec.style == Style::EarWarmer {
            return all.len() == band && all.iter().all(|count| *count == n) && leads.iter().all(|lead| *lead == 0);
        }
        if all.len() <= band + brim || !leads_fit(&all, &leads) {
            return false;
        }
        // From the hat's edge inward, whichever end is begun at, the band's rounds first.
        let (mut hat, outward) = (all[..all.len() - brim].to_vec(), &all[all.len() - brim..]);
        if spec.begins() == Begun::Crown {
            hat.reverse();
        }
        let made = |pair: &[u32]| pair[0] <= 2 * pair[1] && pair[1] <= 2 * pair[0];
        let edge = hat[..band.max(1)].iter().all(|count| *count == n);
        let brim_widens = outward.windows(2).all(|pair| pair[0] <= pair[1] && made(pair))
            && outward.first().is_none_or(|first| match spec.begins() {
                Begun::Band => *first == n,
                Begun::Crown => (n..=2 * n).contains(first),
            });
        let ring = spec.begins() == Begun::Band || hat.last().is_some_and(|count| *count <= RING);
        // Another style's rounds may be of the same make, but not these: a slouch widens above its band.
        let slouches = spec.style != Style::Slouch
            || spec.shape.slouch_wider.value() < 0.05
            || tube.get() <= n
            || hat.iter().any(|count| *count > n);
        edge && slouches && brim_widens && ring && hat.windows(2).all(made) && is_shaped(spec.style, &hat)
    }

    /// Stitches of the hat that is kept.
    pub(crate) const fn chosen(&self) -> crate::Chosen {
        crate::Chosen { rows: self.rows, stitches: Stitches::new(self.stitches.get()) }
    }
}

/// Whether a lead is no longer than the plain stitches between two decreases, or increases.
fn leads_fit(all: &[u32], leads: &[u32]) -> bool {
    let fits = |(i, lead): (usize, &u32)| {
        let before = if i == 0 { all[0] } else { all[i - 1] };
        let (fewer, more) = (before.saturating_sub(all[i]), all[i].saturating_sub(before));
        let plain = before.saturating_sub(2 * fewer + more);
        plain.checked_div(fewer + more).map_or(*lead == 0, |gap| *lead <= gap)
    };
    leads.iter().enumerate().all(fits)
}

/// Whether counts, from the edge inward, go as those of a style do.
fn is_shaped(style: Style, hat: &[u32]) -> bool {
    // A few stitches more by mistake are no shape.
    let widens = |pair: &[u32]| pair[1] > pair[0] + MISCOUNT;
    let first_narrower = hat.windows(2).position(|pair| pair[1] < pair[0]).unwrap_or(hat.len());
    let mut widening = hat.windows(2).enumerate().filter(|(_, pair)| widens(pair)).map(|(i, _)| i);
    match style {
        Style::Tam => widening.all(|i| i < first_narrower),
        Style::Slouch => widening.next().is_none_or(|i| i < first_narrower) && widening.next().is_none(),
        _ => widening.next().is_none(),
    }
}
