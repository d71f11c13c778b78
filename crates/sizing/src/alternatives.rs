//! Good plans side by side.

use crate::{Hat, HatSpec, Taste, plan};

/// A plan, and what it is good for.
#[derive(Clone, Debug, PartialEq)]
pub struct Alternative {
    /// The tastes that lead to it, in their order: 1 or more.
    pub tastes: Vec<Taste>,
    /// The plan.
    pub hat: Hat,
}

impl Alternative {
    /// Rounds that shape it.
    pub fn shaped(&self) -> u32 {
        self.hat.rounds.iter().filter(|r| r.decreases.get() + r.increases.get() > 0).count() as u32
    }

    /// What there is to keep in mind: rounds whose number of decreases or increases is not that of the shaped round before, and rounds that
    /// do not divide by theirs.
    pub fn surprises(&self) -> u32 {
        let shaped = self.hat.rounds.iter().filter(|r| r.decreases.get() + r.increases.get() > 0);
        let told: Vec<(u32, u32)> = shaped.map(|r| (r.decreases.get() + r.increases.get(), r.before)).collect();
        let changes = told.windows(2).filter(|pair| pair[0].0 != pair[1].0).count();
        let uneven = told.iter().filter(|(many, before)| !before.is_multiple_of(*many)).count();
        (changes + uneven) as u32
    }

    /// The different numbers of decreases or increases that its rounds have, from the least.
    pub fn amounts(&self) -> Vec<u32> {
        let mut all: Vec<u32> =
            self.hat.rounds.iter().map(|r| r.decreases.get() + r.increases.get()).filter(|n| *n > 0).collect();
        all.sort_unstable();
        all.dedup();
        all
    }
}

/// The plans of every taste, alike ones together: up to four. None of a spec that is refused.
///
/// A count that was taken by hand is what all of them are for; a hat that is begun has its own plan alone.
///
/// ```
/// use hatwright_sizing::{HatSpec, Taste, alternatives};
/// let plans = alternatives(&HatSpec::default());
/// let of = |taste: Taste| plans.iter().find(|p| p.tastes.contains(&taste)).unwrap();
/// let (smooth, simple) = (of(Taste::Smooth), of(Taste::Simple));
/// assert!(smooth.hat.crown_miss <= simple.hat.crown_miss);
/// assert!(simple.surprises() < smooth.surprises());
/// ```
pub fn alternatives(spec: &HatSpec) -> Vec<Alternative> {
    let mut plans: Vec<Alternative> = Vec::new();
    for taste in [Taste::Balanced, Taste::Smooth, Taste::Simple, Taste::Nearest] {
        let Ok(hat) = plan(&HatSpec { taste, ..spec.clone() }) else { continue };
        let alike = |p: &Alternative| p.hat.size == hat.size && p.hat.rounds == hat.rounds && p.hat.panel == hat.panel;
        match plans.iter_mut().find(|p| alike(p)) {
            Some(same) => same.tastes.push(taste),
            None => plans.push(Alternative { tastes: vec![taste], hat }),
        }
    }
    plans
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{BandKind, Begun, Count, Head, Layout, Length, Style, Swatch};

    /// What each is called the best at, it is.
    #[test]
    fn each_plan_has_its_merit() {
        let (mut smoother, mut simpler, mut rougher, mut harder) = (0, 0, 0, 0);
        for style in Style::ALL {
            for (begun, head) in [(Begun::Band, 56.3), (Begun::Crown, 56.3), (Begun::Band, 54.9), (Begun::Crown, 57.4)] {
                for (stitches, layout) in
                    [(11, Layout::Spread), (14, Layout::Wedges(7)), (19, Layout::Wedges(9)), (26, Layout::Spread)]
                {
                    let ten = Length::from_cm(10.0);
                    let rounds = Count::whole(stitches * 6 / 5);
                    let swatch = Swatch::Counted { stitches: Count::whole(stitches), width: ten, rounds, height: ten };
                    let mut spec = HatSpec {
                        style,
                        begun,
                        swatch,
                        layout,
                        head: Head::Measured(Length::from_cm(head)),
                        ..HatSpec::default()
                    };
                    spec.shape.tam_across = Length::from_cm(27.0);
                    spec.band.kind = BandKind::None;
                    let plans = alternatives(&spec);
                    let Some(own) = plans.first() else { continue };
                    let of = |taste| plans.iter().find(|p| p.tastes.contains(&taste)).unwrap();
                    let off = |p: &Alternative| (p.hat.size.girth.ticks() - p.hat.wanted_girth.ticks()).abs();
                    assert!(off(of(Taste::Nearest)) <= off(own), "{style:?}");
                    // Of plans of one count, the smooth one is nearest its curve and the simple one the least to keep in mind.
                    let (smooth, simple) = (of(Taste::Smooth), of(Taste::Simple));
                    if smooth.hat.size == own.hat.size && simple.hat.size == own.hat.size {
                        smoother += u32::from(smooth.hat.crown_miss < own.hat.crown_miss);
                        simpler += u32::from(simple.surprises() < own.surprises());
                        rougher += u32::from(smooth.hat.crown_miss > own.hat.crown_miss);
                        harder += u32::from(simple.surprises() > own.surprises());
                    }
                }
            }
        }
        // The programme weighs the closing too, so that a rare plan gives way there.
        assert!(smoother > 5 * rougher.max(1) && simpler > 5 * harder.max(1), "{smoother} {rougher} {simpler} {harder}");
    }

    /// 69.4 stitches would be asked for: 70 go into seven wedges, 69 are nearer.
    #[test]
    fn the_nearest_plan_does_not_ask_the_wedges() {
        let ten = Length::from_cm(10.0);
        let (stitches, rounds) = (Count::whole(14), Count::whole(16));
        let mut spec = HatSpec {
            swatch: Swatch::Counted { stitches, width: ten, rounds, height: ten },
            head: Head::Measured(Length::from_cm(53.3)),
            layout: Layout::Wedges(7),
            ..HatSpec::default()
        };
        spec.band.kind = BandKind::None;
        spec.coverage = crate::Coverage::EarLobes;
        let plans = alternatives(&spec);
        let count = |taste| plans.iter().find(|p| p.tastes.contains(&taste)).map(|p| p.hat.size.stitches.get());
        assert_eq!((count(Taste::Balanced), count(Taste::Nearest)), (Some(70), Some(69)));
    }
}
