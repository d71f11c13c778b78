//! From a specification to a hat.

use crate::counts::{Rules, closing_repeat, stripe_repeat, wedges};
use crate::crown::{Schedule, Task};
use crate::gauge::Cells;
use crate::{
    Age, Change, Chosen, Closing, Colour, Coverage, Depth, Fit, Hat, HatSpec, Head, HeadSize, Layout, Length, PomPomPlan,
    Quantity, Ratio, Refusal, Remark, Round, RoundKind, Rounds, Rows, Sex, Size, Start, Stitches, Top, Unsuited, ages_served,
    band_height, head_size, heads_at, yarn,
};

/// Standard deviations above the mean at which 97 in 100 heads are smaller: the standard normal quantile of 0.97
/// (Abramowitz and Stegun 1964, table 26.5), the outermost line of WHO's charts of head circumference.
const NINETY_SEVENTH: f64 = 1.881;
/// Wraps of a pom-pom that a tie still holds together.
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
    spec.check().map_err(Refusal::Breach)?;
    let head = head_size(&spec.head);
    let cells = Cells::of(spec);
    cells.check().map_err(Refusal::Breach)?;
    let wanted = head.girth.cm() * (1.0 - spec.ease.value());
    ease_is_possible(head.girth, wanted, spec.ease, &cells)?;

    let repeat = closing_repeat(&spec.band);
    let rules = Rules { head: head.girth.cm(), wanted, repeat, wedges: wedges(spec.layout), cells };
    let (size, dropped) = rules.choose(spec.chosen)?;
    let band = cells.band(spec);
    let fold = spec.band.fold.cm();
    if fold > band + 1e-9 {
        return Err(Refusal::FoldBeyondBand { fold: spec.band.fold, band: band_height(spec) });
    }
    let depth = wanted_depth(head.girth, spec.coverage);
    let crown = Crown { spec, cells, head: head.girth.cm(), stitches: size.stitches.get(), depth };
    let schedule = crown.schedule(band, fold).ok_or_else(|| crown.too_tall(band, fold))?;

    let rounds = rounds(spec, &size, &schedule);
    let band_rows = band_rows(spec, size.rows);
    let last = schedule.counts.last().copied().unwrap_or(0);
    let above = schedule.counts.len() as f64 * cells.h + schedule.drawn;
    let promised = above + band - fold;
    let straight = rounds.iter().take_while(|r| r.decreases.get() == 0).count();
    let gathered = matches!(spec.closing, Closing::Gathered(_));
    let task = crown.task(band, fold);
    let top = Top {
        stitches: Stitches::new(last),
        gathered,
        opening: Length::from_cm(f64::from(last) * cells.w / core::f64::consts::PI),
        bundle: Length::from_cm(task.bundle(last)),
        strand: Length::from_cm(yarn::closing_strand(last, cells.w)),
    };
    let pom_pom = spec.pom_pom.map(|p| PomPomPlan {
        diameter: p.diameter,
        wraps: libm::ceil(Quantity::PomPomWraps.row().usual_value() * p.diameter.cm() / cells.w).clamp(1.0, MOST_WRAPS) as u32,
        colour: p.colour,
    });
    let mut hat = Hat {
        head,
        wanted_girth: Length::from_cm(wanted),
        gauge: cells.gauge(spec),
        neighbours: rules.neighbours(&size),
        size,
        depth: Depth {
            wanted: Length::from_cm(depth),
            promised: Length::from_cm(promised),
            band: Length::from_cm(band),
            fold: spec.band.fold,
            above_band: Length::from_cm(above),
            straight: Rounds::new(straight as u32),
        },
        rounds,
        top,
        band_rows,
        fit: fit(&size, &cells),
        girth_range: girth_range(spec, size.stitches, &cells),
        yarn: Vec::new(),
        pom_pom,
        remarks: Vec::new(),
    };
    let changes = hat.changes();
    hat.yarn = yarn::needs(spec, &cells, &hat, &changes);
    hat.remarks = remarks(spec, &hat, &rules, dropped, &changes);
    Ok(hat)
}

/// Crown's centre to the lower edge as worn, in cm.
pub(crate) fn wanted_depth(head: Length, coverage: Coverage) -> f64 {
    let ratio = match coverage {
        Coverage::EarTops => Quantity::CoverTops,
        Coverage::EarCanals => Quantity::CoverCanals,
        Coverage::EarLobes => Quantity::CoverLobes,
        Coverage::OverEars => Quantity::CoverEars,
    };
    head.cm() * ratio.row().usual_value()
}

/// The least able zone governs what ease a hat may have. Half a tenth of a per cent more is let pass: as little is no matter in
/// wool, and less would be told in figures that look the same.
fn ease_is_possible(head: Length, wanted: f64, ease: Ratio, cells: &Cells) -> Result<(), Refusal> {
    let body = (Quantity::BodyStretch, cells.body_stretch);
    let band = (Quantity::BandStretch, cells.band_stretch);
    let (zone, stretch) = if band.1 < body.1 { band } else { body };
    let most = 1.0 - 1.0 / stretch + 0.0005;
    if ease.value() <= most + 1e-9 {
        return Ok(());
    }
    let tenths = libm::floor(most * 1000.0 + 1e-6) / 1000.0;
    Err(Refusal::EaseBeyondStretch { zone, head, reach: Length::from_cm(wanted * stretch), most: Ratio::of(tenths) })
}

struct Crown<'a> {
    spec: &'a HatSpec,
    cells: Cells,
    head: f64,
    stitches: u32,
    depth: f64,
}

impl Crown<'_> {
    fn task(&self, band: f64, fold: f64) -> Task {
        Task {
            stitches: self.stitches,
            w: self.cells.w,
            h: self.cells.h,
            head: self.head,
            arc: self.depth + fold - band,
            wedges: wedges(self.spec.layout),
            closing: self.spec.closing,
        }
    }

    fn schedule(&self, band: f64, fold: f64) -> Option<Schedule> {
        self.task(band, fold).schedule()
    }

    /// The refusal, with the smallest fold in millimetres and the tallest band in stitches that do work.
    fn too_tall(&self, band: f64, fold: f64) -> Refusal {
        let most = (libm::floor(band * 10.0) as i32).min(Quantity::Fold.row().most / 100);
        let mut low = libm::ceil(fold * 10.0) as i32;
        // A flat disc needs this much, so nothing below it is worth trying.
        let disc = f64::from(self.stitches) * self.cells.w / core::f64::consts::TAU;
        low = low.max(libm::ceil((disc - self.depth + band) * 10.0) as i32);
        let fold_works = |tenths: i32| self.task(band, f64::from(tenths) / 10.0).possible();
        let works = (low..=most).take(120).find(|t| fold_works(*t));
        let tallest = (2..self.spec.band.height.get()).rev().find(|b| {
            let height = f64::from(*b) * self.cells.band_w;
            height + 1e-9 >= fold && self.depth + fold - height >= disc && self.task(height, fold).possible()
        });
        Refusal::BandTooTall {
            left: Length::from_cm(self.depth + fold - band),
            fold: works.map(|t| Length::from_ticks(t * 100)),
            tallest: tallest.map(Stitches::new),
        }
    }
}

/// The schedule as rounds: colours by the body's stripes, decreases of a spread crown each offset from the last.
fn rounds(spec: &HatSpec, size: &Size, schedule: &Schedule) -> Vec<Round> {
    let mut shaped = 0;
    let mut before = size.rows.get();
    let mut out = Vec::with_capacity(schedule.counts.len());
    for (i, after) in schedule.counts.iter().enumerate() {
        let decreases = if i == 0 { 0 } else { before - after };
        let kind = match (i, decreases, spec.layout) {
            (0, ..) => RoundKind::PickUp,
            (_, 0, _) => RoundKind::Plain,
            (_, _, Layout::Wedges(k)) if !before.is_multiple_of(k) => RoundKind::Adjust,
            _ => RoundKind::Decrease,
        };
        let lead = if spec.layout == Layout::Spread && decreases > 0 {
            shaped += 1;
            offset(shaped - 1, before, decreases)
        } else {
            0
        };
        out.push(Round {
            number: i as u32 + 1,
            before,
            after: Stitches::new(*after),
            decreases: Stitches::new(decreases),
            lead: Stitches::new(lead),
            kind,
            colour: round_colour(spec, i as u32),
        });
        before = *after;
    }
    out
}

/// Plain stitches before the first decrease: none, half, a quarter, three quarters of the gap between two, over and over.
fn offset(shaped: u32, before: u32, decreases: u32) -> u32 {
    let gap = (before - 2 * decreases) / decreases;
    let quarters = [0, 2, 1, 3][shaped as usize % 4];
    quarters * (gap + 1) / 4
}

fn round_colour(spec: &HatSpec, index: u32) -> Colour {
    let repeat: u32 = spec.body_stripes.iter().map(|s| s.rounds.get()).sum();
    let mut at = index % repeat.max(1);
    for stripe in &spec.body_stripes {
        if at < stripe.rounds.get() {
            return stripe.colour;
        }
        at -= stripe.rounds.get();
    }
    Colour(0)
}

fn band_rows(spec: &HatSpec, rows: Rows) -> Vec<Colour> {
    let stripe = spec.band.stripes.iter().flat_map(|s| core::iter::repeat_n(s.colour, s.rows.get() as usize));
    stripe.cycle().take(rows.get() as usize).collect()
}

fn fit(size: &Size, cells: &Cells) -> Fit {
    let least = Length::from_cm(size.girth.cm() * (1.0 - Quantity::LoosestFit.row().usual_value()));
    let share = Quantity::FitShare.row().usual_value();
    let rib = if cells.band_stretch > 1.0 { cells.band_stretch } else { Quantity::BandStretch.row().usual_value() };
    Fit {
        least,
        most: size.reach,
        ages: ages_served(least, size.reach, share),
        ribbed_ages: ages_served(least, Length::from_cm(size.girth.cm() * rib), share),
    }
}

/// Half a stitch in the swatch, carried into the girth: 56 stitches at 12 to 10 cm, 46.7 cm, read 44.8 to 48.7.
fn girth_range(spec: &HatSpec, stitches: Stitches, cells: &Cells) -> Option<(Length, Length)> {
    let crate::Swatch::Counted { stitches: counted, .. } = spec.swatch else { return None };
    let (n, girth) = (counted.value(), f64::from(stitches.get()) * cells.w);
    Some((Length::from_cm(girth * n / (n + 0.5)), Length::from_cm(girth * n / (n - 0.5))))
}

fn remarks(spec: &HatSpec, hat: &Hat, rules: &Rules, dropped: Option<(Chosen, Unsuited)>, changes: &[Change]) -> Vec<Remark> {
    let mut out = Vec::new();
    if let Some((Chosen { rows, stitches }, why)) = dropped {
        out.push(Remark::ChosenDropped { rows, stitches, why });
    }
    if hat.gauge.estimated {
        out.push(Remark::EstimatedGauge);
    }
    if hat.gauge.band_assumed {
        out.push(Remark::AssumedBand);
    }
    if spec.chosen.is_none() || dropped.is_some() {
        let nearest = libm::round(rules.wanted / rules.cells.w) as u32;
        if hat.size.rows.get() == hat.size.stitches.get() && !nearest.is_multiple_of(rules.repeat) {
            out.push(Remark::StripesMoved { nearest: Stitches::new(nearest), repeat: Rows::new(rules.repeat) });
        }
        if let (Layout::Wedges(wedges), Some(nearest)) = (spec.layout, rules.without_wedges(&hat.size)) {
            out.push(Remark::WedgesMoved { nearest, wedges });
        }
    }
    if hat.size.girth > hat.head.girth {
        out.push(Remark::LooserThanHead);
    }
    let off = hat.depth.promised.ticks() - hat.depth.wanted.ticks();
    if off.abs() > Length::from_cm(rules.cells.h / 2.0).ticks() {
        out.push(Remark::DepthOff(Length::from_ticks(off)));
    }
    let above = hat.depth.fold.ticks() - hat.depth.promised.ticks();
    if above > 0 {
        out.push(Remark::FoldAboveCrown(Length::from_ticks(above)));
    }
    let shape = Ratio::of(rules.cells.h / rules.cells.w);
    if !Quantity::SingleShape.row().holds(shape.ticks()) {
        out.push(Remark::UnusualStitch(shape));
    }
    if changes.iter().any(Change::is_odd) {
        out.push(Remark::OddStripes(ends_in_band(changes)));
    }
    let repeat = stripe_repeat(&spec.band);
    if repeat > 1 && !repeat.is_multiple_of(2) {
        out.push(Remark::EvenRib);
    }
    if hat.top.gathered {
        out.push(Remark::Bulk(hat.top.bundle));
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
    match spec.head {
        Head::ByAge { age, .. } => Age::years(age) < years,
        Head::Measured(_) => {
            let heads = heads_at(years, Sex::Unknown);
            head.girth.cm() <= heads.mean_cm + NINETY_SEVENTH * heads.sd_cm
        }
    }
}
