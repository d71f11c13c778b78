//! What stands on a hat's top, or hangs from it.

use super::profile::{Extent, Profile};
use super::shape::Shape;
use super::view::View;
use super::{pom_pom, tassel};
use hatwright_sizing::{Hat, Quantity, TopperKind};

/// Wraps about the usual ones.
pub(super) fn fullness(hat: &Hat) -> f64 {
    let Some(topper) = hat.topper else { return 1.0 };
    let stitch = hat.gauge.stitch.cm().max(0.01);
    let usual = match topper.kind {
        TopperKind::PomPom => Quantity::PomPomWraps.row().usual_value() * topper.size.cm() / stitch,
        TopperKind::Tassel => Quantity::TasselWraps.row().usual_value() / stitch,
    };
    f64::from(topper.wraps) / usual.max(1.0)
}

/// Takes in what it reaches over.
pub(super) fn reach(hat: &Hat, profile: &Profile, extent: &mut Extent) {
    if let Some((x, y, radius)) = pom_pom::ball(hat, profile) {
        extent.spot(x, y, radius * 1.06, radius * 1.06);
    }
    tassel::reach(hat, profile, extent);
}

/// Paints it.
pub(super) fn draw(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    match hat.topper.map(|topper| topper.kind) {
        Some(TopperKind::PomPom) => pom_pom::draw(hat, profile, view, shapes),
        Some(TopperKind::Tassel) => tassel::draw(hat, profile, view, shapes),
        None => {}
    }
}

/// Paints it in one colour and without strands, for small pictures.
pub(super) fn draw_plain(hat: &Hat, profile: &Profile, view: &View, shapes: &mut Vec<Shape>) {
    match hat.topper.map(|topper| topper.kind) {
        Some(TopperKind::PomPom) => pom_pom::draw_plain(hat, profile, view, shapes),
        Some(TopperKind::Tassel) => tassel::draw_plain(hat, profile, view, shapes),
        None => {}
    }
}
