//! What a piece of the hat tells of the real gauge.

use crate::gauge::Cells;
use crate::{Hat, HatSpec, Length, Round, RoundKind, Swatch, Zone};

/// How far above the band a width is true: nearer, the band draws it in (practice, no source).
pub(crate) const CLEAR_OF_BAND: f64 = 5.0;
/// How well a tape lies on a relaxed piece, in cm: half a centimetre from one end of the 90 % range to the other (practice, no source).
const TAPE: f64 = 0.25;
/// By how much a swatch of an estimate may be off, as a share: the published ranges of stitches are about ± 15 % wide.
const ESTIMATE: f64 = 0.15;

/// How far the work is, and what was measured in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// Rounds that are done, of the plan's, in working order: 1 or more.
    pub rounds: u32,
    /// Stitches of the last of them, as they are on the hook: perhaps not those that were planned.
    pub stitches: u32,
    /// Across the piece, laid flat and relaxed: half of its girth there. Only where [`measurable`] allows it.
    pub width: Option<Length>,
    /// Along the fabric of the rounds that are done: above the band, or from the centre of a crown that was begun there.
    pub height: Option<Length>,
}

/// Why a width would tell nothing here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotHere {
    /// Too near the band, which draws the fabric in: after so many rounds more.
    NearBand(u32),
    /// The round is being shaped: no two rounds have one girth.
    Shaping,
}

/// Whether a width tells the gauge after so many rounds.
///
/// It does after 5 cm of straight rounds next to the band, or after the last straight one where there are fewer.
///
/// # Errors
/// [`NotHere`].
///
/// ```
/// use hatwright_sizing::{HatSpec, measurable, plan, NotHere};
/// let hat = plan(&HatSpec::default()).unwrap();
/// assert_eq!(measurable(&hat, 1), Err(NotHere::NearBand(hat.depth.straight.get() - 1)));
/// assert_eq!(measurable(&hat, hat.depth.straight.get()), Ok(()));
/// assert_eq!(measurable(&hat, hat.round_count().get()), Err(NotHere::Shaping));
/// ```
pub fn measurable(hat: &Hat, rounds: u32) -> Result<(), NotHere> {
    let done = hat.rounds.iter().take(rounds as usize);
    let Some(last) = done.clone().next_back().filter(|last| last.zone == Zone::Body && !shapes(last)) else {
        return Err(NotHere::Shaping);
    };
    let straight = |round: &&Round| round.zone == Zone::Body && !shapes(round) && round.after == last.after;
    let here = done.rev().take_while(straight).count() as u32;
    if hat.begun == crate::Begun::Crown {
        // The band is not there yet, but the last round of increases is as near.
        return if here >= 2 { Ok(()) } else { Err(NotHere::Shaping) };
    }
    let needed = libm::ceil(CLEAR_OF_BAND / hat.gauge.round.cm()) as u32;
    let to_come = hat.rounds.iter().skip(rounds as usize).take_while(straight).count() as u32;
    let more = needed.saturating_sub(here).min(to_come);
    if more == 0 { Ok(()) } else { Err(NotHere::NearBand(more)) }
}

fn shapes(round: &Round) -> bool {
    !matches!(round.kind, RoundKind::PickUp | RoundKind::Foundation | RoundKind::Edge | RoundKind::Plain)
}

/// The gauge as the piece shows it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RealGauge {
    /// Width of a stitch.
    pub stitch: Length,
    /// Height of a round.
    pub round: Length,
}

/// The gauge that swatch and piece lead to together, in cm: stitch, round.
///
/// Each is weighed by how sure it is (the inverse of its variance, in logarithms): a swatch counted to half a stitch, a piece measured to
/// a quarter of a centimetre. Twelve stitches to 10 cm and 56 of them 22.0 cm across: the swatch says 0.833 ± 4.2 %, the piece
/// 0.786 ± 1.1 %, both together 0.789 cm.
pub(crate) fn real_gauge(spec: &HatSpec, hat: &Hat, cells: &Cells, progress: &Progress) -> (f64, f64) {
    let (along, up) = match spec.swatch {
        Swatch::Counted { stitches, rounds, .. } => (0.5 / stitches.value(), 0.5 / rounds.value()),
        Swatch::YarnWeight(_) => (ESTIMATE, ESTIMATE),
    };
    let body = hat.rounds.iter().take(progress.rounds as usize).filter(|r| !matches!(r.zone, Zone::Band | Zone::Brim)).count();
    let width = progress.width.map(|flat| (2.0 * flat.cm() / f64::from(progress.stitches.max(1)), TAPE / flat.cm()));
    let height = progress.height.map(|high| (high.cm() / body.max(1) as f64, TAPE / high.cm()));
    (weighed(cells.w, along, width), weighed(cells.h, up, height))
}

fn weighed(swatch: f64, doubt: f64, piece: Option<(f64, f64)>) -> f64 {
    let Some((piece, unsure)) = piece.filter(|(size, unsure)| *size > 0.0 && unsure.is_finite()) else { return swatch };
    let (a, b) = (1.0 / (doubt * doubt), 1.0 / (unsure * unsure));
    libm::exp((a * libm::log(swatch) + b * libm::log(piece)) / (a + b))
}
