//! The rest of a hat that turns out other than planned, worked out again from exactly the stitches that are on the hook.

mod measure;
#[cfg(test)]
mod tests;

pub use measure::{NotHere, Progress, RealGauge, measurable};

use crate::gauge::Cells;
use crate::planner::{Here, Left, left};
use crate::{
    Begun, Chosen, Count, Hat, HatSpec, Kept, KeptRounds, Length, PLANNER, Quantity, Refusal, Remark, Stitches, Style, Swatch,
    Zone, plan,
};
use measure::real_gauge;

/// How much deeper than planned a hat may become before rounds had better be undone, in cm (practice, no source: as much is folded up).
const DEEPER: f64 = 1.5;

/// A hat that goes on from where it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Replanned {
    /// The hat's spec with the gauge that the piece shows and with the rounds that are done and to come, kept.
    pub spec: HatSpec,
    /// The hat that it plans: its first rounds are those that are done.
    pub hat: Hat,
    /// The gauge that swatch and piece lead to together.
    pub gauge: RealGauge,
    /// The hat around, relaxed, of the stitches that it has.
    pub girth: Length,
    /// By how much that is more than was asked for; negative where it is less.
    pub girth_off: Length,
    /// The largest head that it reaches when stretched.
    pub reach: Length,
    /// The depth that the old plan's rounds would have come to at this gauge.
    pub depth_as_planned: Length,
    /// How much more fabric than asked for the new rest needs to close: fold so much more up, or wear it deeper. 0 as a rule.
    pub deeper: Length,
    /// The first round that is new.
    pub from: u32,
}

/// Why the work cannot simply go on.
#[derive(Clone, Debug, PartialEq)]
pub enum NoWayOn {
    /// The hat has no rounds, or none is done, or more than there are, or no stitch is on the hook.
    NotBegun,
    /// The rounds are all done.
    Done,
    /// A width that was measured where it tells nothing.
    NotHere(NotHere),
    /// A gauge that no hook makes: a wrong measure or count.
    Refused(Refusal),
    /// So many rounds have to be undone.
    Undo(Undo),
}

/// What has to be undone, and why.
#[derive(Clone, Debug, PartialEq)]
pub struct Undo {
    /// Rounds to undo: as few as can be.
    pub rounds: u32,
    /// Why.
    pub why: UndoWhy,
    /// The hat from there.
    pub then: Option<Box<Replanned>>,
}

/// Why rounds have to be undone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UndoWhy {
    /// Stretched, the part that is done reaches only this head.
    Tight(Length),
    /// The part that is done is this much around: too loose to be called a fit.
    Loose(Length),
    /// What is left above the head is too little to close a crown in.
    NoRoom,
}

/// Plans the rest of a hat.
///
/// `hat` is the plan of `spec` that was followed. What is done is never rewritten; nothing is to be undone unless nothing else fits.
///
/// A cap of 56 stitches whose body came out 22.8 cm across instead of 23.3, in rounds of 0.55 cm instead of 0.67: it still reaches its
/// head, and the rounds to come are planned at the gauge that swatch and piece lead to together.
///
/// ```
/// use hatwright_sizing::{HatSpec, Length, Progress, plan, replan};
/// let spec = HatSpec::default();
/// let hat = plan(&spec).unwrap();
/// let straight = hat.depth.straight.get();
/// let (width, height) = (Some(Length::from_cm(22.8)), Some(Length::from_cm(0.55 * f64::from(straight))));
/// let on = replan(&spec, &hat, &Progress { rounds: straight, stitches: 56, width, height }).unwrap();
/// assert_eq!(on.hat.rounds[..straight as usize], hat.rounds[..straight as usize]);
/// // Four centimetres by the tape are less sure than fifteen rounds of a swatch, but they count.
/// assert!(on.gauge.round < hat.gauge.round && on.hat.rounds.len() >= hat.rounds.len());
/// assert!(on.girth_off < Length::ZERO && on.reach > hat.head.girth);
/// ```
///
/// # Errors
/// [`NoWayOn`].
pub fn replan(spec: &HatSpec, hat: &Hat, progress: &Progress) -> Result<Replanned, NoWayOn> {
    let done = progress.rounds as usize;
    if done == 0 || done > hat.rounds.len() || progress.stitches == 0 {
        return Err(NoWayOn::NotBegun);
    }
    if done == hat.rounds.len() {
        return Err(NoWayOn::Done);
    }
    if progress.width.is_some() {
        measurable(hat, progress.rounds).map_err(NoWayOn::NotHere)?;
    }
    let real = with_real_gauge(spec, hat, progress);
    let piece = Piece { spec: &real, hat, planned: spec };
    piece.go_on(progress.rounds, progress.stitches)
}

/// The spec with the gauge that the piece shows.
fn with_real_gauge(spec: &HatSpec, hat: &Hat, progress: &Progress) -> HatSpec {
    let cells = Cells::of(spec);
    let (w, h) = real_gauge(spec, hat, &cells, progress);
    // As a swatch so wide that its half stitch is about what is not known.
    let count = |each: f64, sure: bool| libm::round(if sure { 40.0 } else { 10.0 } / each).clamp(4.0, 200.0);
    let (stitches, rounds) = (count(w, progress.width.is_some()), count(h, progress.height.is_some()));
    let swatch = Swatch::Counted {
        stitches: Count::whole(stitches as i32),
        width: Length::from_cm(stitches * w),
        rounds: Count::whole(rounds as i32),
        height: Length::from_cm(rounds * h),
    };
    HatSpec { swatch, chosen: None, kept: None, ..spec.clone() }
}

/// The piece on the hook.
struct Piece<'a> {
    /// At the real gauge.
    spec: &'a HatSpec,
    hat: &'a Hat,
    planned: &'a HatSpec,
}

impl Piece<'_> {
    /// Where the work stands after so many rounds with so many stitches.
    fn here(&self, rounds: u32, stitches: u32) -> Option<Here> {
        let done = self.hat.rounds.get(..rounds as usize)?;
        let zone = done.last()?.zone;
        let outside = done.iter().filter(|r| matches!(r.zone, Zone::Band | Zone::Brim)).count() as u32;
        let here = done.iter().filter(|r| r.zone == zone).count() as u32;
        // A straight part that lost or gained a stitch is a tube of what it has now.
        let straight = zone == Zone::Body && done.last()?.decreases.get() == 0 && done.last()?.increases.get() == 0;
        let widest = done.iter().filter(|r| r.zone != Zone::Brim).map(|r| r.after.get()).max()?;
        Some(Here {
            stitches,
            zone,
            body: rounds - outside,
            outside: if matches!(zone, Zone::Band | Zone::Brim) { here } else { outside },
            tube: if straight { stitches } else { widest },
        })
    }

    fn go_on(&self, rounds: u32, stitches: u32) -> Result<Replanned, NoWayOn> {
        let here = self.here(rounds, stitches).ok_or(NoWayOn::NotBegun)?;
        let counts = self.counts(&here);
        let at = |deeper: f64| left(self.spec, counts, here, deeper).map_err(NoWayOn::Refused);
        let Left { size, around, rest } = at(0.0)?;
        let loose = size.girth.cm() > around * (1.0 + Quantity::LoosestByHand.row().usual_value());
        if counts.is_some() && (!size.reaches || loose) {
            if let Some(on) = self.count_restored(rounds, stitches, here) {
                return Ok(on);
            }
            let why = if loose { UndoWhy::Loose(size.girth) } else { UndoWhy::Tight(size.reach) };
            return Err(NoWayOn::Undo(Undo { rounds, why, then: None }));
        }
        let spare = (Cells::of(self.spec).band_height(self.spec) - self.spec.fold().cm()).max(DEEPER);
        let steps = libm::ceil(spare * 4.0) as u32;
        let found = match rest {
            Some(rest) => Some((0.0, rest)),
            None => (1..=steps).map(|i| f64::from(i) / 4.0).find_map(|deeper| Some((deeper, at(deeper).ok()?.rest?))),
        };
        let Some((deeper, rest)) = found else { return Err(NoWayOn::Undo(self.undo(rounds))) };
        let counts = Chosen { rows: size.rows, stitches: size.stitches };
        self.put_together(rounds, stitches, counts, &rest.counts, deeper).ok_or_else(|| NoWayOn::Undo(self.undo(rounds)))
    }

    /// The hat whose next round brings a wrong count back to the planned one, where that one still fits.
    fn count_restored(&self, rounds: u32, stitches: u32, here: Here) -> Option<Replanned> {
        let planned = self.hat.rounds.get(rounds as usize - 1)?.after.get();
        if planned == stitches || here.zone != Zone::Body {
            return None;
        }
        let counts = Chosen { rows: self.hat.size.rows, stitches: self.hat.size.stitches };
        let after = Here { stitches: planned, tube: planned, body: here.body + 1, ..here };
        let Left { size, around, rest } = left(self.spec, Some(counts), after, 0.0).ok()?;
        let loose = size.girth.cm() > around * (1.0 + Quantity::LoosestByHand.row().usual_value());
        let rest: Vec<u32> = core::iter::once(planned).chain(rest?.counts).collect();
        (size.reaches && !loose).then(|| self.put_together(rounds, stitches, counts, &rest, 0.0)).flatten()
    }

    /// The counts around, where they are not free any more: a hat begun at its band has them from its first round on, one begun at the
    /// crown only when its tube is worked, and then it may still be made wider or narrower.
    fn counts(&self, here: &Here) -> Option<Chosen> {
        let rows = self.hat.size.rows;
        match (self.hat.begun, here.zone) {
            (Begun::Band, Zone::Body)
                if matches!(self.hat.style, Style::Fitted | Style::Stocking | Style::EarFlap | Style::Brimmed) =>
            {
                Some(Chosen { rows, stitches: Stitches::new(here.tube) })
            }
            (Begun::Band, _) | (Begun::Crown, Zone::Band | Zone::Brim) => Some(Chosen { rows, stitches: self.hat.size.stitches }),
            (Begun::Crown, zone) => {
                let straight = zone == Zone::Body && self.hat.style != Style::Slouch;
                let stitches = if straight { here.stitches } else { self.hat.size.stitches.get() };
                let planned = Chosen { rows, stitches: Stitches::new(stitches) };
                self.holds(planned).then_some(planned)
            }
        }
    }

    /// Whether these counts are still about what was asked for: within a stitch and a half, and not too tight.
    fn holds(&self, counts: Chosen) -> bool {
        let still = HatSpec { chosen: Some(counts), ..self.spec.clone() };
        let dropped = |remark: &Remark| matches!(remark, Remark::ChosenDropped { .. });
        plan(&still).is_ok_and(|hat| {
            let off = (hat.size.girth.cm() - hat.wanted_girth.cm()).abs();
            !hat.remarks.iter().any(dropped) && off <= (1.5 * hat.gauge.stitch.cm()).max(self.off_as_planned() + 0.1)
        })
    }

    fn off_as_planned(&self) -> f64 {
        (self.hat.size.girth.cm() - self.hat.wanted_girth.cm()).abs()
    }

    /// The fewest rounds whose undoing lets the hat go on.
    fn undo(&self, rounds: u32) -> Undo {
        let then = (1..rounds).find_map(|back| {
            let to = rounds - back;
            let stitches = self.hat.rounds.get(to as usize - 1)?.after.get();
            Some((back, self.go_on_exactly(to, stitches)?))
        });
        match then {
            Some((rounds, then)) => Undo { rounds, why: UndoWhy::NoRoom, then: Some(Box::new(then)) },
            None => Undo { rounds, why: UndoWhy::NoRoom, then: None },
        }
    }

    fn go_on_exactly(&self, rounds: u32, stitches: u32) -> Option<Replanned> {
        let here = self.here(rounds, stitches)?;
        let Left { size, rest, .. } = left(self.spec, self.counts(&here), here, 0.0).ok()?;
        let counts = Chosen { rows: size.rows, stitches: size.stitches };
        self.put_together(rounds, stitches, counts, &rest?.counts, 0.0)
    }

    /// The hat of the rounds that are done and those to come.
    fn put_together(&self, rounds: u32, stitches: u32, counts: Chosen, rest: &[u32], deeper: f64) -> Option<Replanned> {
        let done = self.hat.rounds.get(..rounds as usize)?;
        let first = done.iter().find(|r| r.zone != Zone::Band || self.hat.begun == Begun::Band)?;
        let around = if self.hat.begun == Begun::Band { first.after } else { counts.stitches };
        let mut kept: Vec<KeptRounds> = Vec::new();
        let mut keep = |after: u32, lead: u32| match kept.last_mut() {
            Some(last) if (last.after, last.lead) == (after, lead) => last.times += 1,
            _ => kept.push(KeptRounds { after, lead, times: 1 }),
        };
        for round in &done[..done.len() - 1] {
            keep(round.after.get(), round.lead.get());
        }
        let last = done.last()?;
        keep(stitches, if last.after.get() == stitches { last.lead.get() } else { 0 });
        for (after, lead) in rest.iter().zip(self.leads(done, stitches, rest)) {
            keep(*after, lead);
        }
        let kept = Kept { planner: PLANNER, rows: counts.rows, stitches: around, rounds: kept };
        let spec = HatSpec { kept: Some(kept), ..self.spec.clone() };
        let hat = plan(&spec).ok().filter(|hat| hat.remarks.iter().any(|r| matches!(r, Remark::PlanKept(_))))?;
        let (w, h) = (Cells::of(&spec).w, Cells::of(&spec).h);
        let planned_body = self.hat.depth.above_band.cm() * h / Cells::of(self.planned).h;
        let band = hat.depth.band.cm() - hat.depth.fold.cm();
        let girth = Length::from_cm(f64::from(counts.stitches.get()) * w);
        Some(Replanned {
            gauge: RealGauge { stitch: Length::from_cm(w), round: Length::from_cm(h) },
            girth,
            girth_off: Length::from_ticks(girth.ticks() - hat.wanted_girth.ticks()),
            reach: hat.size.reach,
            depth_as_planned: Length::from_cm(planned_body + band),
            deeper: Length::from_cm(deeper),
            from: rounds + 1,
            spec,
            hat,
        })
    }

    /// Plain stitches before the first decrease or increase of each round to come: the offsets of a spread crown go on.
    fn leads(&self, done: &[crate::Round], stitches: u32, rest: &[u32]) -> Vec<u32> {
        let shaped = done.iter().filter(|r| r.decreases.get() + r.increases.get() > 0 && r.zone != Zone::Body).count() as u32;
        crate::planner::leads(self.spec, shaped, stitches, rest)
    }
}
