//! A body that follows the head: of a fitted hat, one with ear flaps, one with a brim.

use super::ground::Ground;
use crate::crown::Task;
use crate::curve::Curve;

/// The one task of the body, from its edge to the centre.
pub(super) fn task(ground: &Ground<'_>, band: f64, fold: f64) -> Option<Task> {
    let (n, arc) = (ground.stitches(), ground.whole(ground.above(band, fold)));
    Some(ground.task(n, Curve::new(ground.girth(n), ground.around, arc)?, arc))
}
