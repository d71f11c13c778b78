//! The finished hat, worn on a plain head form, to scale.

use super::dimension::{self, BELOW, CLEAR, LETTER};
use super::profile::Profile;
use super::shape::Picture;
use super::view::{COS, SIN, View};
use super::{band, body, head, pom_pom};
use hatwright_sizing::Hat;

/// The picture's box.
const WIDTH: i32 = 400;
const HEIGHT: i32 = 480;
/// Free on every side.
const MARGIN: f64 = 8.0;

/// What stands at the dimension lines, already in the reader's units.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HatLabels {
    /// The depth as worn, from the crown's centre over the fabric to the lower edge: "19.4 cm".
    pub depth: String,
    /// The girth, flat and around: "23.3 cm flat · 46.7 cm around".
    pub girth: String,
}

/// Draws a hat from its own numbers: the girth and height of every round, the rows of the band, the fold, the pom-pom.
///
/// The crown's outline follows from the counts (radius = stitches × width ÷ 2π, height from what is left of the round's own height);
/// a hat narrower than the head form is drawn as wide as the head stretches it. The box is always 400 × 480 units.
pub fn hat_picture(hat: &Hat, labels: &HatLabels) -> Picture {
    let profile = Profile::of(hat);
    let view = fit(hat, &profile, labels);
    let mut shapes = Vec::with_capacity(48);
    head::draw(&profile, &view, &mut shapes);
    band::draw_behind(hat, &profile, &view, &mut shapes);
    band::draw_layer(hat, &profile, &view, &mut shapes);
    body::draw(hat, &profile, &view, &mut shapes);
    let mut lines = Vec::new();
    dimension::draw(&profile, &view, &labels.depth, &labels.girth, &mut lines);
    let numbers = lines.split_off(1);
    // The tape runs from under the pom-pom, which stands behind a tall fold; the numbers lie over everything.
    shapes.append(&mut lines);
    pom_pom::draw(hat, &profile, &view, &mut shapes);
    band::draw_fold(hat, &profile, &view, &mut shapes);
    shapes.extend(numbers);
    Picture {
        width: WIDTH,
        height: HEIGHT,
        title: String::from("The hat, worn, to scale"),
        description: format!(
            "{} stitches around, {} rounds above a band of {} rows. Depth {}. Girth {}.",
            hat.stitches(),
            hat.round_count(),
            hat.size.rows,
            labels.depth,
            labels.girth
        ),
        shapes,
    }
}

/// The largest scale at which everything lies in the box.
fn fit(hat: &Hat, profile: &Profile, labels: &HatLabels) -> View {
    let (width, height) = (f64::from(WIDTH) - 2.0 * MARGIN, f64::from(HEIGHT) - 2.0 * MARGIN);
    let letters = |s: &str| s.chars().count() as f64 * LETTER;
    let half = profile.widest().max((super::profile::HEAD + head::EAR_OUT) * profile.head);
    let half = half.max(hat.pom_pom.map_or(0.0, |p| p.diameter.cm() / 2.0));
    let left_label = (letters(&labels.depth) + CLEAR + 8.0).min(width * 0.45);

    let rim = profile.fold * COS + profile.cuff.1 * SIN;
    let above = (pom_pom::top(hat, profile) * COS).max(profile.crest()).max(if profile.fold > 0.0 { rim } else { 0.0 });
    let foot = (head::FOOT * profile.head - head::vertex(profile)).max(0.0) * COS;
    // Either the form's foot or the girth's label is lowest; the label does not grow with the scale.
    let clear_above = if hat.pom_pom.is_some() { 2.0 } else { CLEAR + dimension::TICK + 2.0 };
    let by_foot = (height - clear_above) / (above + foot);
    let by_label = (height - clear_above - BELOW) / (above + profile.widest() * SIN);
    let by_width = (width - left_label) / (2.0 * half);
    let unit = by_foot.min(by_label).min(by_width).max(0.01);

    let drawn = unit * (above + foot.max(profile.widest() * SIN + BELOW / unit)) + clear_above;
    let x = (f64::from(WIDTH) / 2.0).max(MARGIN + left_label + half * unit);
    View { x, y: MARGIN + (height - drawn) / 2.0 + clear_above + unit * above, unit }
}

#[cfg(test)]
mod tests {
    use super::super::measure::{Extent, extent};
    use super::super::{Anchor, Paint, Shape, ShapeKind, round_chart, sample};
    use super::*;
    use hatwright_sizing::Colour;

    fn labels() -> HatLabels {
        HatLabels { depth: "19.4 cm".into(), girth: "23.3 cm flat · 46.7 cm around".into() }
    }

    /// A shape's box; of a text, with letters of 0.6 of their height, which is generous.
    fn boxed(shape: &Shape, size: f64) -> Extent {
        match &shape.kind {
            ShapeKind::Path(data) => extent(data),
            ShapeKind::Text { x, y, anchor, text } => {
                let (x, y, wide) = (f64::from(*x), f64::from(*y), text.chars().count() as f64 * size * 0.6);
                let left = match anchor {
                    Anchor::Start => x,
                    Anchor::Middle => x - wide / 2.0,
                    Anchor::End => x - wide,
                };
                Extent([left, y - size, left + wide, y + size * 0.3])
            }
        }
    }

    #[test]
    fn everything_lies_in_the_box_and_fills_it() {
        for (name, hat) in sample::hats() {
            for (picture, size) in [(hat_picture(&hat, &labels()), 14.0), (round_chart(&hat), 11.0)] {
                let mut all = Extent::NONE;
                for shape in &picture.shapes {
                    let one = boxed(shape, size);
                    assert!(
                        one.lies_in(picture.width, picture.height),
                        "{name}: {one:?} of {:?} {:.60?}",
                        shape.paint,
                        shape.kind
                    );
                    all = all.with(one);
                }
                let (wide, high) = (all.0[2] - all.0[0], all.0[3] - all.0[1]);
                assert!(
                    size < 12.0 || wide > f64::from(picture.width) * 0.85 || high > f64::from(picture.height) * 0.85,
                    "{name}: {all:?}"
                );
            }
        }
    }

    #[test]
    fn a_hat_is_few_elements_and_little_text() {
        for (name, hat) in sample::hats() {
            let picture = hat_picture(&hat, &labels());
            let bytes: usize = picture.shapes.iter().map(|s| if let ShapeKind::Path(d) = &s.kind { d.len() } else { 0 }).sum();
            assert!(picture.shapes.len() < 120, "{name}: {} shapes", picture.shapes.len());
            assert!(bytes < 250_000, "{name}: {bytes} bytes");
            assert!(
                name != "cap" || picture.shapes.len() <= 50 && bytes < 85_000,
                "{} shapes, {bytes} bytes",
                picture.shapes.len()
            );
        }
    }

    #[test]
    fn a_hat_is_drawn_the_same_every_time() {
        let hat = sample::Sample::CAP.hat();
        assert_eq!(hat_picture(&hat, &labels()), hat_picture(&hat, &labels()));
    }

    /// The box of all that is painted in a yarn.
    fn yarn(hat: &Hat, colour: Colour) -> Extent {
        let picture = hat_picture(hat, &labels());
        let painted = picture.shapes.iter().filter(|s| s.paint == Paint::Yarn(colour));
        painted.fold(Extent::NONE, |all, s| all.with(boxed(s, 14.0)))
    }

    fn plain() -> Hat {
        sample::Sample { stripes: (2, 2, 1), pom: None, ..sample::Sample::CAP }.hat()
    }

    #[test]
    fn a_round_of_another_colour_lies_at_its_own_height() {
        for index in [4, 9, 14] {
            let mut hat = plain();
            hat.rounds[index].colour = Colour(1);
            let Extent([left, top, right, bottom]) = yarn(&hat, Colour(1));
            let profile = Profile::of(&hat);
            let view = fit(&hat, &profile, &labels());
            let (lower, upper) = (profile.edges[index], profile.edges[index + 1]);
            assert!((bottom - (view.level(lower.height) + view.ring(lower.radius).1)).abs() < 0.3, "round {index}: {bottom}");
            // The sides of the upper edge are seen from its widest place to a little behind it.
            assert!((view.level(upper.height) - top).abs() < view.ring(upper.radius).1 * 0.5 + 0.3, "round {index}: {top}");
            assert!((right - left - 2.0 * view.ring(lower.radius).0).abs() < 0.6, "round {index}: {left} to {right}");
        }
    }

    #[test]
    fn a_row_of_the_band_stands_upright_and_as_wide_as_it_is() {
        let mut hat = plain();
        let front = hat.band_rows.len() / 2;
        hat.band_rows[front] = Colour(1);
        let Extent([left, top, right, bottom]) = yarn(&hat, Colour(1));
        let profile = Profile::of(&hat);
        let view = fit(&hat, &profile, &labels());
        let wide = 2.0 * core::f64::consts::PI * profile.cuff.0 * view.unit / hat.band_rows.len() as f64;
        assert!((left - view.x).abs() < 0.2 && ((right - left) / wide - 1.0).abs() < 0.05, "{left} to {right} for {wide}");
        let high = profile.fold * COS * view.unit;
        assert!(bottom - top > high && bottom - top < high * 1.3, "{top} to {bottom} for {high}");
    }

    #[test]
    fn a_pom_pom_is_as_large_as_it_is_trimmed() {
        let hat = sample::Sample { stripes: (2, 2, 1), ..sample::Sample::CAP }.hat();
        let mut hat = hat;
        hat.pom_pom = hat.pom_pom.map(|p| hatwright_sizing::PomPomPlan { colour: Some(Colour(1)), ..p });
        let Extent([left, _, right, _]) = yarn(&hat, Colour(1));
        let view = fit(&hat, &Profile::of(&hat), &labels());
        assert!(((right - left) / view.unit - 6.0).abs() < 0.6, "{} cm", (right - left) / view.unit);
    }
}
