//! Why there is no hat, with what would make one.

use super::body::possible;
use super::ground::Ground;
use crate::gauge::Cells;
use crate::{BandKind, HatSpec, Length, Quantity, Ratio, Refusal, Stitches};
use core::f64::consts::TAU;

/// The least able zone governs what ease a hat may have. Half a tenth of a per cent more is let pass: as little is no matter in
/// wool, and less would be told in figures that look the same.
pub(super) fn ease_is_possible(spec: &HatSpec, around: f64, cells: &Cells) -> Result<(), Refusal> {
    let (zone, stretch) = cells.least_stretch(spec);
    let most = 1.0 - 1.0 / stretch + 0.0005;
    if spec.ease.value() <= most + 1e-9 {
        return Ok(());
    }
    let tenths = libm::floor(most * 1000.0 + 1e-6) / 1000.0;
    let reach = Length::from_cm(around * (1.0 - spec.ease.value()) * stretch);
    Err(Refusal::EaseBeyondStretch { zone, head: Length::from_cm(around), reach, most: Ratio::of(tenths) })
}

/// No crown fits above this band: the smallest fold in millimetres, and the tallest band in stitches, or rounds, that do work.
pub(super) fn too_tall(ground: &Ground<'_>, band: f64, fold: f64) -> Refusal {
    let spec = ground.spec;
    let most = (libm::floor(band * 10.0) as i32).min(Quantity::Fold.row().most / 100);
    // A flat disc needs this much, so nothing below it is worth trying.
    let disc = ground.girth(ground.stitches()) / TAU;
    // Begun at the crown, up to half a round is added.
    let needs = disc - super::body::above(ground, 0.0, 0.0) - ground.cells.h / 2.0;
    let low = libm::ceil(fold * 10.0).max(libm::ceil((needs + band) * 10.0)) as i32;
    let folds = spec.asks(Quantity::Fold);
    let works = (low..=most).take(120).find(|t| folds && possible(ground, band, f64::from(*t) / 10.0));
    let (tall, each) = match spec.band_kind() {
        BandKind::Sideways => (2..spec.band.height.get(), ground.cells.band_w),
        BandKind::Around => (1..spec.band.rounds.get(), ground.cells.band_row),
        BandKind::None => (0..0, 0.0),
    };
    let tallest = tall.rev().find(|b| {
        let height = f64::from(*b) * each;
        height + 1e-9 >= fold && fold - height >= needs && possible(ground, height, fold)
    });
    Refusal::BandTooTall {
        band: spec.band_kind(),
        // The tail of a stocking cap is no room for its crown.
        left: Length::from_cm(match spec.style {
            crate::Style::Stocking => ground.above(band, fold),
            _ => super::body::above(ground, band, fold),
        }),
        fold: works.map(|t| Length::from_ticks(t * 100)),
        tallest: tallest.map(Stitches::new),
    }
}

/// Of a hat that closes neither in wedges nor spread, the nearer way out.
pub(super) fn nearer(wedged: Refusal, spread: Refusal) -> Refusal {
    match (wedged, spread) {
        (Refusal::TamTooSmall { across, least }, Refusal::TamTooSmall { least: other, .. }) => {
            Refusal::TamTooSmall { across, least: least.min(other) }
        }
        (Refusal::BandTooTall { band, left, fold, tallest }, Refusal::BandTooTall { fold: other, tallest: taller, .. }) => {
            let fold = match (fold, other) {
                (Some(a), Some(b)) => Some(a.min(b)),
                (a, b) => a.or(b),
            };
            Refusal::BandTooTall { band, left, fold, tallest: tallest.max(taller) }
        }
        (_, spread) => spread,
    }
}
