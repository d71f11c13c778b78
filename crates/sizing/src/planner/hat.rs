//! A plan, put together.

use super::ground::{Ground, lined, wanted_depth};
use super::miss::crown_miss;
use super::panel::{Sideways, is_wedged, least_arc, panel, wedged};
use super::remarks::{Choice, remarks};
use super::rest::{Here, Rest, rest};
use super::rounds::{Counts, is_stacked, rounds, stripe, stripes_of_band};
use super::{body, brim, flaps, refuse, slouch, stocking, tam};
use crate::counts::Rules;
use crate::gauge::Cells;
use crate::{
    BandKind, Begun, Chosen, Colour, Depth, Doubt, Fit, Flaps, Hat, HatSpec, Kept, Layout, Length, Panel, Quantity, Refusal,
    Remark, Round, RoundKind, Rounds, Size, Stitches, Style, Top, TopKind, Topper, TopperKind, TopperPlan, Unsuited, Zone,
    ages_served, band_height, head_size, yarn,
};

/// How a topper is wound.
fn wind(topper: &Topper, cells: &Cells) -> TopperPlan {
    let usual = match topper.kind {
        TopperKind::PomPom => Quantity::PomPomWraps.row().usual_value() * topper.size.cm() / cells.w,
        TopperKind::Tassel => Quantity::TasselWraps.row().usual_value() / cells.w,
    };
    let wraps = libm::ceil(usual * topper.fullness.value() - 1e-9).clamp(1.0, MOST_WRAPS) as u32;
    TopperPlan { kind: topper.kind, size: topper.size, wraps, colour: topper.colour }
}

/// Wraps of a topper that a tie still holds together.
const MOST_WRAPS: f64 = 2_000.0;

/// Plans a hat.
///
/// A head of 49.8 cm at 7 % ease wants 46.3 cm; at 12 stitches to 10 cm that is 55.6 stitches, and two-row stripes in two colours close
/// on 56: 46.7 cm.
///
/// ```
/// use hatwright_sizing::{HatSpec, Head, Length, plan};
/// let hat = plan(&HatSpec { head: Head::Measured(Length::from_cm(49.8)), ..HatSpec::default() }).unwrap();
/// assert_eq!((hat.stitches().get(), hat.size.girth), (56, Length::from_cm(46.667)));
/// ```
///
/// # Errors
/// A [`Refusal`] where the input has no hat that can be made and worn.
pub fn plan(spec: &HatSpec) -> Result<Hat, Refusal> {
    let Layout::Wedges(wedges) = spec.lays() else { return plan_as_laid(spec) };
    let spread = || {
        plan_as_laid(&HatSpec { layout: Layout::Spread, ..spec.clone() }).map(|mut hat| {
            hat.remarks.push(Remark::WedgesDropped(wedges));
            hat
        })
    };
    // More wedges than a centre takes, or than go into the rounds that there are: without them is better than no hat.
    match plan_as_laid(spec) {
        Err(refusal @ (Refusal::TamTooSmall { .. } | Refusal::BandTooTall { .. })) => {
            spread().map_err(|without| refuse::nearer(refusal, without))
        }
        // Rounds that are kept from a plan that gave its wedges up, or had none.
        Ok(hat) if !hat.rounds.iter().filter(|round| round.zone == Zone::Crown).all(|round| is_stacked(spec, round)) => spread(),
        // The same where no round is shaped, so that the rounds do not tell.
        Ok(hat) if spec.kept.is_some() && is_plain(&hat) && gave_up(spec) => spread(),
        planned => planned,
    }
}

fn is_plain(hat: &Hat) -> bool {
    hat.rounds
        .iter()
        .all(|round| round.kind == RoundKind::Ring || round.before == round.after.get() || round.kind == RoundKind::PickUp)
}

/// Whether wedges are given up where this hat is planned anew.
fn gave_up(spec: &HatSpec) -> bool {
    let anew = plan_as_laid(&HatSpec { kept: None, ..spec.clone() });
    matches!(anew, Err(Refusal::TamTooSmall { .. } | Refusal::BandTooTall { .. }))
}

fn plan_as_laid(spec: &HatSpec) -> Result<Hat, Refusal> {
    spec.check().map_err(Refusal::Breach)?;
    let head = head_size(&spec.head);
    let cells = Cells::of(spec);
    cells.check().map_err(Refusal::Breach)?;
    let around = lined(head.girth, spec.lining);
    let wanted = around * (1.0 - spec.ease.value());
    refuse::ease_is_possible(spec, around, &cells)?;

    let base = Rules::of(spec, &cells, around, wanted);
    let ground = |size| Ground { spec, cells, around, depth: wanted_depth(spec, around), size };
    let (girth, made) = if let Some(begun) = keep(spec, &base, ground) {
        begun
    } else {
        let girth = girth(spec, spec.chosen, &base)?;
        let mut made = make(&ground(girth.size), girth.wedges, None)?;
        made.kept = spec.kept.as_ref().map(|_| Remark::KeptDropped);
        (girth, made)
    };
    let Girth { rules, size, dropped, moved, .. } = girth;
    let ground = ground(size);

    let fits = fit(spec, &size, &cells);
    let mut hat = Hat {
        style: spec.style,
        begun: spec.begins(),
        band: spec.band_kind(),
        head,
        wanted_girth: Length::from_cm(wanted),
        gauge: cells.gauge(spec),
        neighbours: rules.neighbours(&size),
        size,
        depth: made.depth,
        crown_miss: made.crown_miss,
        top: made.top,
        band_rows: band_rows(&ground),
        flaps: made.flaps,
        panel: made.panel,
        rounds: made.rounds,
        fit: fits,
        girth_range: None,
        doubt: None,
        yarn: Vec::new(),
        yarn_parts: Vec::new(),
        topper: spec.wears().map(|topper| wind(&topper, &cells)),
        remarks: Vec::new(),
    };
    hat.doubt = Doubt::of(spec, &hat);
    hat.girth_range = hat.doubt.map(|doubt| doubt.girth);
    let changes = hat.changes();
    (hat.yarn_parts, hat.yarn) = yarn::reckon(spec, &cells, &hat, &changes);
    hat.remarks = remarks(&ground, &hat, Choice { rules: &rules, dropped, moved, kept: made.kept }, &changes);
    Ok(hat)
}

/// The counts around, and how they came about.
struct Girth {
    rules: Rules,
    size: Size,
    dropped: Option<(Chosen, Unsuited)>,
    /// Wedges of short rows, where there are any.
    wedges: Option<u32>,
    moved: Vec<Remark>,
}

/// A hat that is begun, as it was planned; `None` where there is none, or its rounds are not those of the hat that is asked for now.
fn keep<'a>(spec: &HatSpec, base: &Rules, ground: impl Fn(Size) -> Ground<'a>) -> Option<(Girth, Made)> {
    let kept = spec.kept.as_ref()?;
    let girth = girth(spec, Some(kept.chosen()), base).ok().filter(|girth| girth.dropped.is_none())?;
    let ground = ground(girth.size);
    let (band, brim) = outside(&ground);
    let same = (girth.size.rows, girth.size.stitches) == (kept.rows, kept.stitches);
    let tube = if spec.style == Style::Slouch { slouch::tube(&ground) } else { ground.stitches() };
    if !same || !kept.suits(spec, band, brim, Stitches::new(tube)) {
        return None;
    }
    let mut made = make(&ground, girth.wedges, Some(kept)).ok()?;
    made.kept = Some(Remark::PlanKept(kept.planner));
    Some((girth, made))
}

fn girth(spec: &HatSpec, chosen: Option<Chosen>, base: &Rules) -> Result<Girth, Refusal> {
    let own = |dropped: &Option<_>| chosen.is_none() || dropped.is_some();
    if !is_wedged(spec) {
        let (size, dropped) = base.choose(chosen)?;
        let moved = if own(&dropped) { base.moved(&size) } else { Vec::new() };
        return Ok(Girth { rules: *base, size, dropped, wedges: None, moved });
    }
    let found = wedged(base, spec, chosen)?;
    let mut moved = Vec::new();
    if own(&found.dropped)
        && let Ok((free, _)) = base.choose(None)
    {
        moved = base.moved(&free);
        if free.rows != found.size.rows {
            moved.push(Remark::WedgesMoved { nearest: free.stitches, wedges: found.wedges });
        }
    }
    Ok(Girth { rules: found.rules, size: found.size, dropped: found.dropped, wedges: Some(found.wedges), moved })
}

/// What a hat that is begun comes to, at the gauge of the spec: the rounds that are left of one of these counts.
pub(crate) struct Left {
    /// The counts that the rest was worked out for.
    pub size: Size,
    /// The head, with what lies between it and the hat, in cm.
    pub around: f64,
    /// What is left, where anything can be made of it.
    pub rest: Option<Rest>,
}

/// The rest of a hat that is begun. `counts` are those that it has around; where they may still be chosen, none.
pub(crate) fn left(spec: &HatSpec, counts: Option<Chosen>, here: Here, deeper: f64) -> Result<Left, Refusal> {
    let head = head_size(&spec.head);
    let cells = Cells::of(spec);
    cells.check().map_err(Refusal::Breach)?;
    let around = lined(head.girth, spec.lining);
    let rules = Rules::of(spec, &cells, around, around * (1.0 - spec.ease.value()));
    let size = match counts {
        Some(Chosen { rows, stitches }) => rules.pair(rows.get(), stitches.get()),
        None => rules.choose(None)?.0,
    };
    let ground = Ground { spec, cells, around, depth: wanted_depth(spec, around), size };
    Ok(Left { size, around, rest: rest(&ground, here, deeper) })
}

/// What is worked.
struct Made {
    depth: Depth,
    rounds: Vec<Round>,
    top: Option<Top>,
    crown_miss: Option<Length>,
    flaps: Option<Flaps>,
    panel: Option<Panel>,
    kept: Option<Remark>,
}

fn make(ground: &Ground<'_>, wedges: Option<u32>, kept: Option<&Kept>) -> Result<Made, Refusal> {
    match ground.spec.style {
        Style::EarWarmer => Ok(ear_warmer(ground)),
        Style::Sideways => sideways(ground, wedges),
        _ => in_rounds(ground, kept),
    }
}

/// The band alone.
fn ear_warmer(ground: &Ground<'_>) -> Made {
    let spec = ground.spec;
    let band = band_height(spec);
    let around = spec.band_kind() == BandKind::Around;
    let all = if around { vec![ground.stitches(); spec.band.rounds.get() as usize] } else { Vec::new() };
    let counts = Counts { band: all.len(), all, brim: 0, narrow: 0 };
    Made {
        depth: Depth {
            wanted: band,
            promised: band,
            band,
            fold: Length::ZERO,
            above_band: Length::ZERO,
            straight: Rounds::new(counts.all.len() as u32),
        },
        rounds: rounds(spec, ground.size.rows, ground.stitches(), &counts, None),
        top: None,
        crown_miss: None,
        flaps: None,
        panel: None,
        kept: None,
    }
}

fn sideways(ground: &Ground<'_>, wedges: Option<u32>) -> Result<Made, Refusal> {
    let fold = ground.spec.fold();
    let arc = ground.depth + fold.cm();
    let refuse = || Refusal::BandTooTall {
        band: BandKind::None,
        left: Length::from_cm(arc),
        fold: Some(Length::from_cm(libm::ceil((least_arc(ground) - ground.depth) * 10.0) / 10.0)),
        tallest: None,
    };
    let Sideways { panel, ends, bundle, arc } = panel(ground, wedges, arc).ok_or_else(refuse)?;
    let top = Top {
        stitches: Stitches::new(ends),
        kind: TopKind::RowEnds,
        opening: Length::from_cm(f64::from(ends) * ground.cells.h / core::f64::consts::PI),
        bundle: Length::from_cm(bundle),
        strand: Length::from_cm(yarn::closing_strand(ends, ground.cells.h)),
    };
    Ok(Made {
        depth: Depth {
            wanted: Length::from_cm(ground.depth),
            promised: Length::from_cm(arc - fold.cm()),
            band: Length::ZERO,
            fold,
            above_band: Length::from_cm(arc),
            straight: Rounds::new(0),
        },
        rounds: Vec::new(),
        top: Some(top),
        crown_miss: None,
        flaps: None,
        panel: Some(panel),
        kept: None,
    })
}

/// A hat with a crown in rounds.
fn in_rounds(ground: &Ground<'_>, kept: Option<&Kept>) -> Result<Made, Refusal> {
    let spec = ground.spec;
    let (band, fold) = (ground.cells.band_height(spec), spec.fold().cm());
    if fold > band + 1e-9 {
        return Err(Refusal::FoldBeyondBand { fold: spec.fold(), band: band_height(spec) });
    }
    let begun = spec.begins();
    let (counts, leads) = match kept {
        Some(kept) => {
            let (all, leads) = kept.every();
            let (band, brim) = outside(ground);
            (Counts { all, band, brim, narrow: stocking::narrow(ground) }, Some(leads))
        }
        None => (fresh(ground, band, fold)?, None),
    };
    if counts.all.len() > Kept::MOST_ROUNDS as usize {
        let past = (counts.all.len() - Kept::MOST_ROUNDS as usize) as f64 * ground.cells.h;
        let most = Length::from_cm((spec.shape.tail.cm() - past).max(0.0));
        return Err(Refusal::TooLong { measure: Quantity::Tail, most });
    }
    let rounds = rounds(spec, ground.size.rows, ground.stitches(), &counts, leads.as_deref());
    let here = &counts.all[counts.body(begun)];
    let innermost = match begun {
        Begun::Band => here.last(),
        Begun::Crown => here.first(),
    };
    let last = innermost.copied().unwrap_or(0);
    let above = here.len() as f64 * ground.cells.h + ground.drawn(last);
    let straight = |r: &&Round| r.zone == Zone::Body && r.before.abs_diff(r.after.get()) == 0 || r.kind == RoundKind::PickUp;
    let depth = Depth {
        wanted: Length::from_cm(body::above(ground, band, fold) + band - fold),
        promised: Length::from_cm(above + band - fold),
        band: Length::from_cm(band),
        fold: spec.fold(),
        above_band: Length::from_cm(above),
        straight: Rounds::new(rounds.iter().filter(straight).count() as u32),
    };
    let flaps = (spec.style == Style::EarFlap).then(|| {
        let (edge, colour) = edge(ground, &rounds);
        flaps::flaps(spec, &ground.cells, edge, colour)
    });
    let inward: Vec<u32> = if begun == Begun::Crown { here.iter().rev().copied().collect() } else { here.to_vec() };
    let crown_miss = crown_miss(ground, &inward, band, fold).map(Length::from_cm);
    Ok(Made { depth, top: Some(top(ground, last)), crown_miss, rounds, flaps, panel: None, kept: None })
}

/// The best counts of all rounds, in working order.
fn fresh(ground: &Ground<'_>, band: f64, fold: f64) -> Result<Counts, Refusal> {
    let spec = ground.spec;
    let refuse = || match spec.style {
        Style::Tam => tam::too_small(ground, |across| body::tam_possible(ground, across)),
        _ => refuse::too_tall(ground, band, fold),
    };
    let mut all = body::counts(ground, band, fold).ok_or_else(refuse)?;
    let (around, _) = outside(ground);
    // The band's rounds are next to the edge, whichever end is begun at.
    all.splice(0..0, core::iter::repeat_n(ground.stitches(), around));
    if spec.begins() == Begun::Crown {
        all.reverse();
    }
    let brim = if spec.style == Style::Brimmed { brim::counts(ground) } else { Vec::new() };
    all.extend(&brim);
    Ok(Counts { all, band: around, brim: brim.len(), narrow: stocking::narrow(ground) })
}

/// Rounds of a band worked around, and of a brim.
fn outside(ground: &Ground<'_>) -> (usize, usize) {
    let spec = ground.spec;
    let band = if spec.band_kind() == BandKind::Around { spec.band.rounds.get() } else { 0 };
    let brim = if spec.style == Style::Brimmed { brim::rounds(ground) } else { 0 };
    (band as usize, brim as usize)
}

/// The edge that flaps are joined to: its stitches, or row ends, and its colour.
fn edge(ground: &Ground<'_>, rounds: &[Round]) -> (u32, Colour) {
    if ground.spec.band_kind() == BandKind::Sideways {
        return (ground.size.rows.get(), stripe(&stripes_of_band(ground.spec), 0));
    }
    let outermost = match ground.spec.begins() {
        Begun::Band => rounds.first(),
        Begun::Crown => rounds.last(),
    };
    (ground.stitches(), outermost.map_or(Colour::default(), |round| round.colour))
}

fn top(ground: &Ground<'_>, last: u32) -> Top {
    let kind = match (ground.is_from_crown(), ground.gathers(last)) {
        (true, _) => TopKind::Ring,
        (false, true) => TopKind::Gathered,
        (false, false) => TopKind::Drawn,
    };
    let w = ground.cells.w;
    // A ring is drawn together by the end that it was begun with.
    let strand = if kind == TopKind::Ring { Quantity::YarnEnd.row().usual_value() } else { yarn::closing_strand(last, w) };
    Top {
        stitches: Stitches::new(last),
        kind,
        opening: Length::from_cm(ground.girth(last) / core::f64::consts::PI),
        bundle: Length::from_cm(ground.bundle(last)),
        strand: Length::from_cm(strand),
    }
}

fn band_rows(ground: &Ground<'_>) -> Vec<Colour> {
    if ground.spec.band_kind() != BandKind::Sideways {
        return Vec::new();
    }
    let stripes = stripes_of_band(ground.spec);
    (0..ground.size.rows.get()).map(|row| stripe(&stripes, row)).collect()
}

/// Heads that a hat serves: those that it fits with what lies between, less that.
fn fit(spec: &HatSpec, size: &Size, cells: &Cells) -> Fit {
    let bare = |cm: f64| Length::from_cm((cm - core::f64::consts::TAU * spec.lining.cm()).max(0.0));
    let least = bare(size.girth.cm() * (1.0 - Quantity::LoosestFit.row().usual_value()));
    let most = bare(size.reach.cm());
    let share = Quantity::FitShare.row().usual_value();
    let rib = if cells.band_stretch > 1.0 { cells.band_stretch } else { Quantity::BandStretch.row().usual_value() };
    Fit {
        least,
        most,
        ages: ages_served(least, most, share),
        ribbed_ages: ages_served(least, bare(size.girth.cm() * rib), share),
    }
}
