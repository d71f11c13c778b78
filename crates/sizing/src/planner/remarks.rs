//! What a maker should be told about a hat.

use super::ground::Ground;
use crate::counts::{Rules, stripe_repeat};
use crate::{
    Change, Chosen, Hat, HatSpec, HeadSize, Length, Remark, Sex, Start, Style, TopKind, TopperKind, Unsuited, gauge_hint,
    heads_at,
};

/// Standard deviations above the mean at which 97 in 100 heads are smaller: the standard normal quantile of 0.97
/// (Abramowitz and Stegun 1964, table 26.5), the outermost line of WHO's charts of head circumference.
const NINETY_SEVENTH: f64 = 1.881;
/// From this length in cm on, a tail or a tassel can be caught, or lie around a neck (practice, no source: hats are out of the scope of EN 14682,
/// whose principle for children under 7 is that nothing hangs loose about the neck).
const LONG_TAIL: f64 = 15.0;

/// How the counts came about.
pub(super) struct Choice<'a> {
    pub rules: &'a Rules,
    pub dropped: Option<(Chosen, Unsuited)>,
    /// What the planner's own counts would be told to have been moved by; nothing for counts taken by hand.
    pub moved: Vec<Remark>,
    /// What became of rounds kept from an older plan.
    pub kept: Option<Remark>,
}

pub(super) fn remarks(ground: &Ground<'_>, hat: &Hat, choice: Choice<'_>, changes: &[Change]) -> Vec<Remark> {
    let spec = ground.spec;
    let mut out = Vec::new();
    out.extend(choice.kept);
    if let Some((Chosen { rows, stitches }, why)) = choice.dropped {
        out.push(Remark::ChosenDropped { rows, stitches, why });
    }
    if hat.gauge.estimated {
        out.push(Remark::EstimatedGauge);
    }
    if hat.gauge.band_assumed {
        out.push(Remark::AssumedBand);
    }
    out.extend(choice.moved);
    if hat.size.girth.cm() > ground.around + 1e-9 {
        out.push(Remark::LooserThanHead);
    }
    let off = hat.depth.promised.ticks() - hat.depth.wanted.ticks();
    // Rounds come whole, and so do the stitches of a hat worked sideways.
    let step = if spec.style == Style::Sideways { choice.rules.cells.w } else { choice.rules.cells.h };
    if off.abs() > Length::from_cm(step / 2.0).ticks() {
        out.push(Remark::DepthOff(Length::from_ticks(off)));
    }
    let above = hat.depth.fold.ticks() - hat.depth.promised.ticks();
    if above > 0 {
        out.push(Remark::FoldAboveCrown(Length::from_ticks(above)));
    }
    if let Some(hint) = gauge_hint(spec) {
        out.extend(hint.remarks());
    }
    let has_rows = !hat.band_rows.is_empty() || hat.panel.is_some();
    if has_rows && changes.iter().any(Change::is_odd) {
        out.push(Remark::OddStripes(ends_in_band(changes)));
    }
    let repeat = stripe_repeat(spec);
    if repeat > 1 && !repeat.is_multiple_of(2) {
        out.push(Remark::EvenRib);
    }
    if let Some(top) = hat.top.filter(|top| matches!(top.kind, TopKind::Gathered | TopKind::RowEnds)) {
        out.push(Remark::Bulk(top.bundle));
    }
    let tassel = spec.wears().filter(|topper| topper.kind == TopperKind::Tassel).map_or(0.0, |topper| topper.size.cm());
    let hangs = match spec.style {
        Style::EarFlap => spec.shape.flap_tie > Length::ZERO || tassel >= LONG_TAIL,
        Style::Stocking => spec.shape.tail.cm() + tassel >= LONG_TAIL,
        _ => tassel >= LONG_TAIL,
    };
    if hangs && may_be_younger(spec, &hat.head, 3.0) {
        out.push(Remark::LongParts);
    }
    if may_be_younger(spec, &hat.head, 3.0) {
        out.push(Remark::SmallParts);
    }
    if may_be_younger(spec, &hat.head, 1.0) {
        out.push(Remark::BabySleep);
    }
    out
}

/// The end of the foundation, those of yarn that begins in the band, and those of yarn that is cut in it or as the body begins.
fn ends_in_band(changes: &[Change]) -> u32 {
    let begun = changes.iter().filter(|c| c.in_band && !matches!(c.start, Start::Waited { .. })).count();
    let cut = changes.iter().filter(|c| (c.in_band || c.after == 0) && !c.waits).count();
    (1 + begun + cut) as u32
}

/// Whether the wearer is, or by the girth may be, younger than so many years: a measured head is taken to be so up to the 97th
/// percentile of that age.
fn may_be_younger(spec: &HatSpec, head: &HeadSize, years: f64) -> bool {
    spec.head.age_years().map_or_else(
        || {
            let heads = heads_at(years, Sex::Unknown);
            head.girth.cm() <= heads.mean_cm + NINETY_SEVENTH * heads.sd_cm
        },
        |age| age < years,
    )
}
