//! How much yarn a stitch takes, by the surest of what was measured, and how sure that is.

use super::{Sizes, sizes, stitch};
use hatwright_sizing::{HatSpec, Part, UseWay};

/// The yarn in a stitch about the estimate, and half of its 90 % range: of lengths and of balls, for body and band.
#[derive(Clone, Copy, Debug)]
pub struct Known {
    /// About the estimate.
    pub factor: f64,
    /// Half-widths of lengths, as shares: of the body, of the band.
    pub metres: [f64; 2],
    /// The same of balls.
    pub balls: [f64; 2],
}

/// The root of the sum of squares.
pub fn root(of: &[f64]) -> f64 {
    of.iter().map(|d| d * d).sum::<f64>().sqrt()
}

/// The surest of what is known. Common practice, no source, for every share: an estimate is right to 25 %; a hand to 5 %, a ball band to
/// 3 %, the tape on unravelled yarn to 4 %, a stitch about the next to 15 %, one fabric from another to 10 %. A scale is right to half of
/// its step.
pub fn known(spec: &HatSpec) -> Known {
    let Sizes { w, band_w, .. } = sizes(spec);
    let used = &spec.yarn_use;
    let usual = |band: bool| if band { stitch(spec.band_fabric()) * band_w } else { stitch(spec.fabric) * w };
    // Factor, doubt of lengths, doubt of balls, and the fabric that was measured.
    let mut all = vec![(1.0, 0.25, 0.25, None)];
    if let Some(weighed) = used.weighed
        && let Some(grams) = spec.balls[usize::from(weighed.colour.0)].grams
    {
        let ball = &spec.balls[usize::from(weighed.colour.0)];
        let cm = weighed.grams.grams() / grams.grams() * ball.yarn.value() * 100.0 / f64::from(spec.strands);
        let scale = used.scale.grams() / 2.0 / weighed.grams.grams();
        let factor = cm / f64::from(weighed.stitches.get()) / usual(weighed.band);
        all.push((factor, root(&[scale, 0.05, 0.03]), root(&[scale, 0.05]), Some(weighed.band)));
    }
    if let Some(unravelled) = used.unravelled {
        let k = f64::from(unravelled.stitches.get());
        let few = 0.15 / k.sqrt();
        let factor = unravelled.length.cm() / k / usual(unravelled.band);
        all.push((factor, root(&[0.04, few, 0.05]), root(&[0.04, few, 0.05, 0.03]), Some(unravelled.band)));
    }
    if let Some(kept) = used.kept {
        let doubt = kept.doubt.value();
        let balls = if kept.way == UseWay::Unravelled { root(&[doubt, 0.03]) } else { doubt };
        // What a whole hat has taught is of every fabric.
        all.push((kept.factor.value(), doubt, balls, (kept.way != UseWay::Hat).then_some(false)));
    }
    all.retain(|(factor, ..)| (0.199_95..5.000_05).contains(factor));
    let surest = all.into_iter().min_by(|a, b| a.1.total_cmp(&b.1));
    let (factor, metres, balls, of) = surest.unwrap_or((1.0, 0.25, 0.25, None));
    let another = |band: bool| of.is_some_and(|of| of != band && spec.band_fabric() != spec.fabric);
    let each = |doubt: f64| [false, true].map(|band| if another(band) { root(&[doubt, 0.10]) } else { doubt });
    Known { factor, metres: each(metres), balls: each(balls) }
}

/// Whether a part is made of stitches; otherwise its yarn is cut or wound.
pub fn is_worked(part: Part) -> bool {
    !matches!(part, Part::Ends | Part::Carried | Part::Topper)
}
