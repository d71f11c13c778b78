//! How much yarn a stitch takes: estimated from the gauge, or measured in one of three ways, each with its doubt.
//!
//! All ways give one factor about the estimate: a stitch that should take 5.83 cm and takes 6.40 has the factor 1.097. The factor goes
//! with the yarn and the hand, not with the gauge, so that it can be kept for the next hat of the same yarn. Its error is one error,
//! shared by all stitches: it does not average out.

use crate::gauge::Cells;
use crate::{Colour, Hat, HatSpec, Length, Mass, Quantity, Ratio, Stitches, YarnLength};
use serde::{Deserialize, Serialize};

/// What was measured of the yarn in stitches.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct YarnUse {
    /// A swatch that was weighed.
    pub weighed: Option<WeighedSwatch>,
    /// Stitches that were unravelled.
    pub unravelled: Option<Unravelled>,
    /// What an earlier hat of this yarn has taught, or this one.
    pub kept: Option<KeptUse>,
    /// What the finished hat weighs. It changes nothing until it is kept.
    pub hat: Option<Mass>,
    /// The smallest step that the scale shows, 0.01 to 50 g.
    pub scale: Mass,
    /// Whether the swatch is kept as it is, so that its yarn is bought too; otherwise it is unravelled and used.
    pub swatch_kept: bool,
}

impl Default for YarnUse {
    /// Nothing measured, with a kitchen scale of whole grams.
    fn default() -> Self {
        let scale = Mass::from_ticks(Quantity::ScaleStep.row().usual);
        Self { weighed: None, unravelled: None, kept: None, hat: None, scale, swatch_kept: false }
    }
}

/// A swatch on the scale.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct WeighedSwatch {
    /// The colour whose yarn it is of.
    pub colour: Colour,
    /// Whether it is of the band's fabric; otherwise of the body's.
    pub band: bool,
    /// All its stitches, 10 to 100,000.
    pub stitches: Stitches,
    /// Its weight, 0.1 to 1,000 g.
    pub grams: Mass,
}

/// Stitches whose yarn was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Unravelled {
    /// Whether they are of the band's fabric; otherwise of the body's.
    pub band: bool,
    /// How many, 1 to 2,000.
    pub stitches: Stitches,
    /// Their yarn, one strand of it: 1 cm to 50 m.
    pub length: Length,
}

/// A use of yarn that was kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct KeptUse {
    /// About the estimate, 0.2 to 5.
    pub factor: Ratio,
    /// Half-width of its 90 % range, as a share, 0 to 100 %.
    pub doubt: Ratio,
    /// How it was measured.
    pub way: UseWay,
}

/// How the yarn in a stitch is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum UseWay {
    /// From the gauge.
    Estimated,
    /// A swatch was weighed.
    Weighed,
    /// Stitches were unravelled and measured.
    Unravelled,
    /// A finished hat was weighed.
    Hat,
}

/// The yarn in a stitch by one way of knowing it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YarnRate {
    /// The way.
    pub way: UseWay,
    /// Whether it comes from an earlier measurement that was kept.
    pub kept: bool,
    /// About the estimate: 1 for the estimate itself.
    pub factor: f64,
    /// Half-width of the 90 % range, as a share of the length of the stitches.
    pub doubt: f64,
    /// The same as a share of the balls: what a scale tells in grams is bought in grams, without the metres that the band claims.
    pub ball_doubt: f64,
    /// Whether the band's fabric was measured; otherwise the body's, or none in particular.
    pub band: bool,
}

/// Within what a factor about the estimate can be believed.
fn believable(factor: f64) -> bool {
    let row = Quantity::KeptFactor.row();
    factor.is_finite() && row.holds(Ratio::of(factor).ticks())
}

fn share(q: Quantity) -> f64 {
    q.row().usual_value()
}

fn together(doubts: &[f64]) -> f64 {
    libm::sqrt(doubts.iter().map(|d| d * d).sum())
}

impl YarnUse {
    pub(crate) fn numbers(&self) -> Vec<(Quantity, i32)> {
        use Quantity as Q;
        let mut all = vec![(Q::ScaleStep, self.scale.ticks())];
        if let Some(weighed) = self.weighed {
            let stitches = i32::try_from(weighed.stitches.get()).unwrap_or(i32::MAX);
            all.extend([(Q::WeighedStitches, stitches), (Q::WeighedGrams, weighed.grams.ticks())]);
        }
        if let Some(unravelled) = self.unravelled {
            let stitches = i32::try_from(unravelled.stitches.get()).unwrap_or(i32::MAX);
            all.extend([(Q::UnravelledStitches, stitches), (Q::UnravelledLength, unravelled.length.ticks())]);
        }
        if let Some(kept) = self.kept {
            all.extend([(Q::KeptFactor, kept.factor.ticks()), (Q::KeptDoubt, kept.doubt.ticks())]);
        }
        all.extend(self.hat.map(|grams| (Q::HatGrams, grams.ticks())));
        all
    }

    pub(crate) fn set_number(&mut self, q: Quantity, ticks: i32) -> bool {
        use Quantity as Q;
        let (mass, stitches) = (Mass::from_ticks(ticks), Stitches::new(ticks.unsigned_abs()));
        match (q, &mut self.weighed, &mut self.unravelled, &mut self.kept) {
            (Q::ScaleStep, ..) => self.scale = mass,
            (Q::HatGrams, ..) => self.hat = Some(mass),
            (Q::WeighedStitches, Some(weighed), ..) => weighed.stitches = stitches,
            (Q::WeighedGrams, Some(weighed), ..) => weighed.grams = mass,
            (Q::UnravelledStitches, _, Some(unravelled), _) => unravelled.stitches = stitches,
            (Q::UnravelledLength, _, Some(unravelled), _) => unravelled.length = Length::from_ticks(ticks),
            (Q::KeptFactor, _, _, Some(kept)) => kept.factor = Ratio::from_ticks(ticks),
            (Q::KeptDoubt, _, _, Some(kept)) => kept.doubt = Ratio::from_ticks(ticks),
            _ => return false,
        }
        true
    }
}

/// Every way in which the yarn of this hat's stitches is known, the surest first; the estimate is always among them.
///
/// A measurement that cannot be believed (a factor below 0.2 or above 5) is not among them.
///
/// Twenty stitches of single crochet, 0.833 cm wide, that gave 128 cm took 6.4 cm each, where 7 × 0.833 = 5.83 cm were to be expected:
///
/// ```
/// use hatwright_sizing::{HatSpec, Length, Stitches, Unravelled, UseWay, yarn_rates};
/// let mut spec = HatSpec::default();
/// assert_eq!((yarn_rates(&spec)[0].way, yarn_rates(&spec)[0].doubt), (UseWay::Estimated, 0.25));
/// let length = Length::from_cm(128.0);
/// spec.yarn_use.unravelled = Some(Unravelled { band: false, stitches: Stitches::new(20), length });
/// let surest = yarn_rates(&spec)[0];
/// assert_eq!(surest.way, UseWay::Unravelled);
/// assert!((surest.factor - 1.097).abs() < 0.001 && surest.doubt < 0.08);
/// ```
pub fn yarn_rates(spec: &HatSpec) -> Vec<YarnRate> {
    let (used, cells) = (&spec.yarn_use, Cells::of(spec));
    let mut all = vec![YarnRate::estimated()];
    all.extend(used.weighed.and_then(|weighed| rate_weighed(spec, &cells, weighed)));
    all.extend(used.unravelled.map(|unravelled| rate_unravelled(spec, &cells, unravelled)));
    all.extend(used.kept.map(|kept| {
        let doubt = kept.doubt.value();
        // What was weighed is known in balls as well as in metres, or better.
        let more = if kept.way == UseWay::Unravelled { share(Quantity::BandDoubt) } else { 0.0 };
        YarnRate {
            way: kept.way,
            kept: true,
            factor: kept.factor.value(),
            doubt,
            ball_doubt: together(&[doubt, more]),
            band: false,
        }
    }));
    all.retain(|rate| believable(rate.factor));
    all.sort_by(|a, b| a.doubt.total_cmp(&b.doubt));
    all
}

/// The surest of [`yarn_rates`].
pub(crate) fn surest(spec: &HatSpec) -> YarnRate {
    yarn_rates(spec).first().copied().unwrap_or_else(YarnRate::estimated)
}

/// The yarn that a stitch of the measured fabric takes by a rate: 5.83 cm estimated for single crochet 0.833 cm wide.
pub fn stitch_yarn(spec: &HatSpec, rate: &YarnRate) -> Length {
    Length::from_cm(rate.factor * expected(spec, &Cells::of(spec), rate.band))
}

/// Centimetres that a stitch should take.
fn expected(spec: &HatSpec, cells: &Cells, band: bool) -> f64 {
    if band { spec.band_fabric().yarn() * cells.band_w } else { spec.fabric.yarn() * cells.w }
}

fn rate_weighed(spec: &HatSpec, cells: &Cells, weighed: WeighedSwatch) -> Option<YarnRate> {
    let metres_per_gram = spec.balls.get(usize::from(weighed.colour.0))?.metres_per_gram()?;
    let all = weighed.grams.grams() * metres_per_gram * 100.0 / f64::from(spec.strands.max(1));
    let scale = 0.5 * spec.yarn_use.scale.grams() / weighed.grams.grams().max(0.01);
    let ball_doubt = together(&[scale, share(Quantity::HandDoubt)]);
    Some(YarnRate {
        way: UseWay::Weighed,
        kept: false,
        factor: all / f64::from(weighed.stitches.get().max(1)) / expected(spec, cells, weighed.band),
        doubt: together(&[ball_doubt, share(Quantity::BandDoubt)]),
        ball_doubt,
        band: weighed.band,
    })
}

fn rate_unravelled(spec: &HatSpec, cells: &Cells, unravelled: Unravelled) -> YarnRate {
    let stitches = f64::from(unravelled.stitches.get().max(1));
    let few = share(Quantity::StitchDoubt) / libm::sqrt(stitches);
    let doubt = together(&[share(Quantity::UnravelDoubt), few, share(Quantity::HandDoubt)]);
    YarnRate {
        way: UseWay::Unravelled,
        kept: false,
        factor: unravelled.length.cm() / stitches / expected(spec, cells, unravelled.band),
        doubt,
        ball_doubt: together(&[doubt, share(Quantity::BandDoubt)]),
        band: unravelled.band,
    }
}

/// What the weight of the finished hat makes of the yarn in its stitches; `None` where it was not weighed, or a colour's grams are
/// unknown, or nothing is left for the stitches.
///
/// Ends and pom-pom are taken as reckoned: the rest of the weight is the stitches'.
pub fn rate_of_hat(spec: &HatSpec, hat: &Hat) -> Option<YarnRate> {
    let grams = spec.yarn_use.hat?.grams();
    let (mut stitches, mut other) = (0.0, 0.0);
    let rate = surest(spec).factor;
    for part in hat.yarn_parts.iter().filter(|part| part.part != crate::Part::Swatch && part.length > YarnLength::default()) {
        let per_gram = spec.balls.get(usize::from(part.colour.0))?.metres_per_gram()?;
        let weight = part.length.metres() / per_gram;
        if part.part.is_worked() {
            stitches += weight / rate;
        } else {
            other += weight;
        }
    }
    let factor = (grams - other) / stitches;
    let scale = 0.5 * spec.yarn_use.scale.grams() / grams.max(0.01);
    let rest = share(Quantity::OtherDoubt) * other / (grams - other).max(0.01);
    let ball_doubt = together(&[scale, rest, share(Quantity::HandDoubt)]);
    (grams > other && believable(factor)).then(|| YarnRate {
        way: UseWay::Hat,
        kept: false,
        factor,
        doubt: together(&[ball_doubt, share(Quantity::BandDoubt)]),
        ball_doubt,
        band: false,
    })
}

impl YarnRate {
    /// What the gauge leads one to expect.
    fn estimated() -> Self {
        let doubt = share(Quantity::YarnDoubt);
        Self { way: UseWay::Estimated, kept: false, factor: 1.0, doubt, ball_doubt: doubt, band: false }
    }

    /// What is kept of it for the next hat of the same yarn.
    pub fn keep(&self) -> KeptUse {
        KeptUse { factor: Ratio::of(self.factor), doubt: Ratio::of(self.doubt), way: self.way }
    }

    /// The doubts about the stitches of band or body, of their lengths and of their balls: one fabric's yarn reckoned from another's is
    /// less sure. What is kept of a swatch, or of stitches, is taken to be the body's.
    pub(crate) fn doubts(&self, spec: &HatSpec, band: bool) -> (f64, f64) {
        let one_fabric = matches!(self.way, UseWay::Weighed | UseWay::Unravelled);
        if one_fabric && band != self.band && spec.band_fabric() != spec.fabric {
            let more = share(Quantity::FabricDoubt);
            (together(&[self.doubt, more]), together(&[self.ball_doubt, more]))
        } else {
            (self.doubt, self.ball_doubt)
        }
    }
}

#[cfg(test)]
mod tests;
