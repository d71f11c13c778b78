//! Another yarn in the first colour's place: what it changes, and whether it will do.

use crate::gauge::Cells;
use crate::{Ball, Count, Hat, HatSpec, Instead, Length, Quantity, Ratio, Refusal, Remark, Swatch, YarnUse, plan};

/// A yarn is as thick as another where it differs by no more than this share (practice, no source: less than a swatch tells).
const ALIKE: f64 = 0.03;

/// Between these a yarn may take another's place; beyond, stitches are so much finer or coarser that it is another kind of hat
/// (practice, no source).
const SAME_KIND: core::ops::RangeInclusive<f64> = 0.6..=1.6;

/// A hat in another yarn, beside the hat as it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Swap {
    /// The hat's decisions for the other yarn: what is taken if it is taken.
    pub spec: HatSpec,
    /// The hat that they make.
    pub hat: Result<Hat, Refusal>,
    /// What its gauge rests on.
    pub basis: SwapBasis,
    /// Thickness of the other yarn about the first colour's, where the grams of both are known: the square root of grams per metre,
    /// new ÷ old. 80 m and 65 m of 50 g: √(80/65) = 1.109.
    pub thickness: Option<Ratio>,
    /// Whether it will do.
    pub verdict: Verdict,
}

/// What the gauge of another yarn rests on, the surest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SwapBasis {
    /// Its own swatch.
    Swatch,
    /// The stitch of the hat's own yarn, as much wider and taller as the other yarn is thicker.
    Thickness,
    /// The published gauge of its yarn-weight number.
    Weight,
    /// The gauge as it is: the yarns are as thick as each other, within 3 %, or nothing is known of the other.
    AsIs,
}

/// Whether another yarn will do.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// Its swatch gives the same stitches and rounds: the pattern stays.
    SamePattern,
    /// Its swatch gives another count of stitches or rounds, and they make a hat.
    OtherCounts,
    /// It has no swatch: what is compared is an estimate, and less sure the further the thickness is from 1.
    SwatchFirst,
    /// There is no such hat; or stitches would be less than 0.6 or more than 1.6 times as wide: another kind of hat.
    WillNot,
}

impl Instead {
    /// A ball of it, of which none is owned.
    ///
    /// ```
    /// use hatwright_sizing::{Count, Instead};
    /// let instead = Instead { yarn: Count::whole(65), grams: None, weight: None, swatch: None };
    /// assert_eq!((instead.ball().metres(), instead.ball().owned), (65.0, Count::whole(0)));
    /// ```
    pub const fn ball(&self) -> Ball {
        Ball { grams: self.grams, weight: self.weight, ..Ball::of(self.yarn) }
    }
}

/// The hat in the yarn that is weighed up against the first colour's; `None` where there is none.
///
/// The gauge rests on the other yarn's swatch; without one, on its thickness, where the grams of both are known: fibres are taken to be
/// equally dense, so that a yarn of so many grams a metre is as thick as their square root (practice, no source), and a stitch as wide and
/// as tall in proportion. Otherwise it rests on its yarn-weight number, as it does where the hat's own gauge is such an estimate and the
/// other yarn has a number. A yarn that nothing is known of changes nothing but the metres of a ball.
///
/// Every colour gets the other yarn: a hat of two thicknesses is none. What belongs to the yarn that was is dropped: balls owned and their
/// price, and what was measured of its use; where the stitch changes, also the band's swatch and the rounds of a hat that is begun. Counts
/// taken by hand stay while the stitch is as wide within 3 % and the planner still takes them. The hook and measured stretches stay.
///
/// A yarn of 65 m to 50 g is 1.109 times as thick as one of 80 m. Twelve stitches to 10 cm become 10.82, and 56 around the
/// head 52 (two-row stripes close on multiples of 4):
///
/// ```
/// use hatwright_sizing::{Count, HatSpec, Instead, Mass, Ratio, Swap, SwapBasis, Verdict, swap};
/// let mut spec = HatSpec::default();
/// assert_eq!(swap(&spec), None);
/// let grams = Some(Mass::from_grams(50.0));
/// spec.balls[0].grams = grams;
/// spec.instead = Some(Instead { yarn: Count::whole(65), grams, weight: None, swatch: None });
/// let Swap { hat, basis, thickness, verdict, .. } = swap(&spec).unwrap();
/// assert_eq!((thickness, basis, verdict), (Some(Ratio::of(1.1094)), SwapBasis::Thickness, Verdict::SwatchFirst));
/// assert_eq!(hat.unwrap().stitches().get(), 52);
/// ```
pub fn swap(spec: &HatSpec) -> Option<Swap> {
    let instead = spec.instead?;
    let ball = instead.ball();
    let thickness = spec.balls.first().and_then(|old| thickness(old, &ball));
    let (basis, swatch) = gauge(spec, &instead, thickness);
    let mut spec_then = HatSpec { swatch, instead: None, ..spec.clone() };
    spec_then.balls.fill(ball);
    spec_then.yarn_use = YarnUse { weighed: None, unravelled: None, kept: None, hat: None, ..spec.yarn_use };
    let (was, is) = (Cells::of(spec), Cells::of(&spec_then));
    if (was.w, was.h).ne(&(is.w, is.h)) {
        (spec_then.band.swatch, spec_then.kept) = (None, None);
    }
    let wider = is.w / was.w;
    if (1.0 - wider).abs() > ALIKE {
        spec_then.chosen = None;
    }
    let mut hat = plan(&spec_then);
    if is_dropped(&hat) {
        spec_then.chosen = None;
        hat = plan(&spec_then);
    }
    let verdict = match &hat {
        Err(_) => Verdict::WillNot,
        Ok(_) if !SAME_KIND.contains(&thickness.unwrap_or(wider)) => Verdict::WillNot,
        Ok(_) if basis != SwapBasis::Swatch => Verdict::SwatchFirst,
        Ok(hat) if plan(spec).is_ok_and(|was| is_same_work(&was, hat)) => Verdict::SamePattern,
        Ok(_) => Verdict::OtherCounts,
    };
    Some(Swap { spec: spec_then, hat, basis, thickness: thickness.map(Ratio::of), verdict })
}

/// How thick a yarn is about another: the square root of the grams of a metre.
fn thickness(old: &Ball, new: &Ball) -> Option<f64> {
    Some(libm::sqrt(old.metres_per_gram()? / new.metres_per_gram()?)).filter(|thickness| thickness.is_finite())
}

/// What the gauge rests on, and the swatch that stands for it.
fn gauge(spec: &HatSpec, instead: &Instead, thickness: Option<f64>) -> (SwapBasis, Swatch) {
    if let Some(swatch) = instead.swatch {
        let counted = matches!(swatch, Swatch::Counted { .. });
        return (if counted { SwapBasis::Swatch } else { SwapBasis::Weight }, swatch);
    }
    // An estimate by number stays one, and is told as one.
    let estimated = matches!(spec.swatch, Swatch::YarnWeight(_));
    match (thickness, instead.weight) {
        (Some(thickness), _) if (1.0 - thickness).abs() <= ALIKE => (SwapBasis::AsIs, spec.swatch),
        (Some(thickness), number) if !estimated || number.is_none() => (SwapBasis::Thickness, scaled(spec, thickness)),
        (_, Some(number)) => (SwapBasis::Weight, Swatch::YarnWeight(number)),
        _ => (SwapBasis::AsIs, spec.swatch),
    }
}

/// The swatch of stitches so many times as wide and as tall, over the same width and height.
fn scaled(spec: &HatSpec, by: f64) -> Swatch {
    let ten = Length::from_cm(10.0);
    let (stitches, width, rounds, height) = match spec.swatch {
        Swatch::Counted { stitches, width, rounds, height } => (stitches.value(), width, rounds.value(), height),
        Swatch::YarnWeight(_) => {
            let cells = Cells::of(spec);
            (10.0 / cells.w, ten, 10.0 / cells.h, ten)
        }
    };
    let (stitches, width) = fewer(Quantity::SwatchStitches, stitches / by, Quantity::SwatchWidth, width);
    let (rounds, height) = fewer(Quantity::SwatchRounds, rounds / by, Quantity::SwatchHeight, height);
    Swatch::Counted { stitches, width, rounds, height }
}

/// A count over a length, over half or twice of it where the count is out of its range.
fn fewer(counted: Quantity, mut count: f64, over: Quantity, mut length: Length) -> (Count, Length) {
    let (row, over) = (counted.row(), over.row());
    let ticks = |count: f64| libm::round(count * 100.0) as i32;
    while ticks(count) < row.least && over.holds(length.ticks() * 2) {
        (count, length) = (count * 2.0, Length::from_ticks(length.ticks() * 2));
    }
    while ticks(count) > row.most && length.ticks() % 2 == 0 && over.holds(length.ticks() / 2) {
        (count, length) = (count / 2.0, Length::from_ticks(length.ticks() / 2));
    }
    (Count::from_ticks(ticks(count)), length)
}

/// Whether counts taken by hand do not hold in it.
pub(crate) fn is_dropped(hat: &Result<Hat, Refusal>) -> bool {
    hat.as_ref().is_ok_and(|hat| hat.remarks.iter().any(|remark| matches!(remark, Remark::ChosenDropped { .. })))
}

/// Whether both are the same stitches, rows and rounds.
fn is_same_work(a: &Hat, b: &Hat) -> bool {
    let flaps = |hat: &Hat| hat.flaps.as_ref().map(|flaps| (flaps.rows.clone(), flaps.tie_chains));
    (a.size.rows, a.size.stitches) == (b.size.rows, b.size.stitches)
        && (&a.rounds, &a.panel, &a.band_rows) == (&b.rounds, &b.panel, &b.band_rows)
        && flaps(a) == flaps(b)
}

#[cfg(test)]
mod tests;
