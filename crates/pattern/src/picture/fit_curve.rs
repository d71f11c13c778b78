//! Whom a hat fits, as a curve over the ages: how many of ten heads, where it is 8, and where the wearer stands.

use super::fabric::put;
use super::pen::{At, Pen};
use super::shape::{Anchor, Picture, Shape};
use crate::figures::age;
use crate::say::{in_ten, who_is_served};
use hatwright_sizing::{Fit, FitPoint, Quantity, Sex, fit_curve as points, share_served};
use hatwright_words::pictures as words;

const WIDTH: i32 = 400;
const HEIGHT: i32 = 214;
/// The plot: children from birth to 18 years, then, past a gap, all adults as one step.
const LEFT: f64 = 62.0;
const RIGHT: f64 = 394.0;
const CHILDREN_TO: f64 = 342.0;
const ADULTS_FROM: f64 = 350.0;
/// All of ten heads, and none.
const TOP: f64 = 30.0;
const FOOT: f64 = 176.0;
const ADULT: f64 = 18.0;

/// Ages that are written under the curve, in years. Eighteen ends the children's part.
const MARKS: [u32; 6] = [0, 1, 2, 4, 7, 12];

/// Across, for an age in years. Heads grow fastest at first: by the square root of the age, the first year is as wide as those from 9
/// to 16.
fn across(years: f64) -> f64 {
    LEFT + (CHILDREN_TO - LEFT) * libm::sqrt(years.clamp(0.0, ADULT) / ADULT)
}

/// Down, for a share of heads.
fn down(share: f64) -> f64 {
    FOOT - (FOOT - TOP) * share.clamp(0.0, 1.0)
}

fn whole(value: f64) -> i32 {
    libm::round(value) as i32
}

/// The share of heads, sex unknown, that a hat fits, from birth to adult: an area under a curve, a dashed line at the share that counts
/// as fitting an age (8 in 10), a bar under the ages that reach it, and a mark at the wearer's age in years, where that is known.
///
/// Its table twin is [`fit_table`](hatwright_sizing::fit_table), told by [`fit_row`](crate::say::fit_row).
pub fn fit_curve(fit: &Fit, wearer: Option<f64>) -> Picture {
    let all = points(fit.least, fit.most);
    let (children, adults) = all.split_at(all.len().saturating_sub(1));
    let grown = adults.first().map_or(0.0, |p| p.share);
    let mut shapes = Vec::with_capacity(24);
    curve(children, grown, &mut shapes);
    frame(&mut shapes);
    span(fit.ages, &mut shapes);

    let nobody = || words::fit_about_nobody().to_owned();
    let mut description = fit.ages.map_or_else(nobody, |ages| words::fit_about(&who_is_served(ages)));
    if let Some(years) = wearer {
        let share = share_served(years, Sex::Unknown, fit.least, fit.most);
        let (age, share_told) = (age(years), in_ten(share));
        description.push(' ');
        description.push_str(&words::fit_wearer(&age, &share_told));
        mark(years, share, words::fit_mark(&age, &share_told), &mut shapes);
    }
    Picture { width: WIDTH, height: HEIGHT, title: words::fit().to_owned(), description, shapes }
}

/// Area and outline: the children's curve and the adults' step.
fn curve(children: &[FitPoint], grown: f64, shapes: &mut Vec<Shape>) {
    let (mut area, mut line) = (Pen::new(), Pen::new());
    area.go(At::new(LEFT, FOOT));
    for (i, point) in children.iter().enumerate() {
        let at = At::new(across(point.years), down(point.share));
        area.line(at);
        if i == 0 { line.go(at) } else { line.line(at) }
    }
    let last = At::new(CHILDREN_TO, down(children.last().map_or(0.0, |p| p.share)));
    area.line(last);
    line.line(last);
    area.line(At::new(CHILDREN_TO, FOOT));
    area.close();
    let (from, to) = (At::new(ADULTS_FROM, down(grown)), At::new(RIGHT, down(grown)));
    area.polygon(&[At::new(ADULTS_FROM, FOOT), from, to, At::new(RIGHT, FOOT)]);
    line.go(from);
    line.line(to);
    put(shapes, area, "fit-area");
    put(shapes, line, "fit-line");
}

/// Base line, ticks, the line of 8 in 10, and their words.
fn frame(shapes: &mut Vec<Shape>) {
    let (mut axis, mut limit) = (Pen::new(), Pen::new());
    for (from, to) in [(LEFT, CHILDREN_TO), (ADULTS_FROM, RIGHT)] {
        axis.go(At::new(from, FOOT));
        axis.line(At::new(to, FOOT));
        limit.go(At::new(from, down(Quantity::FitShare.row().usual_value())));
        limit.line(At::new(to, down(Quantity::FitShare.row().usual_value())));
    }
    for years in MARKS {
        axis.go(At::new(across(years.into()), FOOT));
        axis.line(At::new(across(years.into()), FOOT + 9.0));
    }
    put(shapes, axis, "fit-axis");
    put(shapes, limit, "fit-limit");
    let shares = [
        (1.0, words::fit_all()),
        (Quantity::FitShare.row().usual_value(), words::fit_eight()),
        (0.5, words::fit_half()),
        (0.0, words::fit_none()),
    ];
    for (share, text) in shares {
        shapes.push(Shape::text(whole(LEFT) - 8, whole(down(share)) + 5, Anchor::End, text.into(), "label"));
    }
    for (i, years) in MARKS.into_iter().enumerate() {
        let text = match i {
            0 => words::fit_birth().to_owned(),
            5 => words::fit_years(years),
            _ => years.to_string(),
        };
        shapes.push(Shape::text(whole(across(years.into())), whole(FOOT) + 25, Anchor::Middle, text, "label"));
    }
    let middle = whole(f64::midpoint(ADULTS_FROM, RIGHT));
    shapes.push(Shape::text(middle, whole(FOOT) + 25, Anchor::Middle, words::fit_adults().to_owned(), "label"));
}

/// A bar on the base line under the ages of which 8 in 10 are fitted.
fn span(ages: Option<(f64, f64)>, shapes: &mut Vec<Shape>) {
    let Some((from, to)) = ages else { return };
    let mut pen = Pen::new();
    let level = FOOT + 2.0;
    if from < ADULT {
        // A single month is a bar still.
        let end = across(to).max(across(from) + 3.0);
        pen.go(At::new(across(from), level));
        pen.line(At::new(end, level));
    }
    if to >= ADULT {
        pen.go(At::new(ADULTS_FROM, level));
        pen.line(At::new(RIGHT, level));
    }
    put(shapes, pen, "fit-span");
}

/// The wearer: a line from the words down to the base, and a dot on the curve.
fn mark(years: f64, share: f64, told: String, shapes: &mut Vec<Shape>) {
    let x = if years >= ADULT { f64::midpoint(ADULTS_FROM, RIGHT) } else { across(years) };
    let (mut line, mut dot) = (Pen::new(), Pen::new());
    line.go(At::new(x, 20.0));
    line.line(At::new(x, FOOT));
    dot.ellipse(At::new(x, down(share)), 4.5, 4.5, true);
    put(shapes, line, "fit-wearer");
    put(shapes, dot, "fit-dot");
    // Half of a long text fits on both sides of the middle only.
    let (at, anchor) = match x {
        ..140.0 => (x - 4.0, Anchor::Start),
        300.0.. => (RIGHT - 8.0, Anchor::End),
        _ => (x, Anchor::Middle),
    };
    shapes.push(Shape::text(whole(at), 14, anchor, told, "label"));
}

#[cfg(test)]
mod tests {
    use super::super::shape::{Paint, ShapeKind};
    use super::super::{CLASSES, to_svg};
    use super::*;
    use hatwright_sizing::{Length, ages_served};
    use hatwright_words::{Language, in_language};

    fn fit(least: f64, most: f64) -> Fit {
        let (least, most) = (Length::from_cm(least), Length::from_cm(most));
        Fit { least, most, ages: ages_served(least, most, 0.8), ribbed_ages: None }
    }

    fn all() -> Vec<(Fit, Option<f64>)> {
        let fits = [(45.7, 51.3), (30.0, 38.0), (54.5, 75.0), (22.0, 75.0), (49.0, 49.2), (60.0, 50.0)];
        let wearers = [None, Some(0.0), Some(0.1), Some(1.0), Some(4.0), Some(9.5), Some(17.9), Some(18.0), Some(110.0)];
        fits.into_iter().flat_map(|(a, b)| wearers.into_iter().map(move |w| (fit(a, b), w))).collect()
    }

    fn texts(picture: &Picture) -> Vec<(i32, i32, Anchor, &str)> {
        fn text(shape: &Shape) -> Option<(i32, i32, Anchor, &str)> {
            match &shape.kind {
                ShapeKind::Text { x, y, anchor, text } => Some((*x, *y, *anchor, text)),
                ShapeKind::Path(_) | ShapeKind::Open(_) | ShapeKind::Close => None,
            }
        }
        picture.shapes.iter().filter_map(text).collect()
    }

    #[test]
    fn every_picture_is_xml_of_known_classes_inside_its_box() {
        for (fit, wearer) in all() {
            let picture = fit_curve(&fit, wearer);
            let svg = to_svg(&picture, &[]);
            roxmltree::Document::parse(&svg).unwrap_or_else(|e| panic!("{fit:?} {wearer:?}: {e}"));
            assert!(!svg.contains("style=") && !svg.contains("NaN"));
            for shape in &picture.shapes {
                let Paint::Class(class) = shape.paint else { panic!("{shape:?}") };
                assert!([",", "{"].iter().any(|end| CLASSES.contains(&format!(".{class}{end}"))), "{class}");
            }
            for (x, y, anchor, text) in texts(&picture) {
                // 14 px letters of the fonts named are at most 7.8 wide on the average.
                let wide = 7.8 * text.chars().count() as f64;
                let left = f64::from(x)
                    - wide
                        * match anchor {
                            Anchor::Start => 0.0,
                            Anchor::Middle => 0.5,
                            Anchor::End => 1.0,
                        };
                assert!(left >= -4.0 && left + wide <= f64::from(WIDTH) + 4.0, "{text}: {left}, {wide}");
                assert!((12..HEIGHT).contains(&y));
            }
        }
    }

    #[test]
    fn words_under_the_curve_stand_apart() {
        for language in [Language::English, Language::Spanish] {
            in_language(language, stand_apart);
        }
    }

    fn stand_apart() {
        let picture = fit_curve(&fit(45.7, 51.3), Some(4.0));
        let foot: Vec<_> = texts(&picture).into_iter().filter(|t| t.1 > whole(FOOT) + 10).collect();
        assert_eq!(foot.len(), 7);
        for pair in foot.windows(2) {
            let half = |t: &str| 7.8 * t.chars().count() as f64 / 2.0;
            let (end, begin) = (f64::from(pair[0].0) + half(pair[0].3), f64::from(pair[1].0) - half(pair[1].3));
            assert!(begin - end > 2.0, "{} and {}", pair[0].3, pair[1].3);
        }
    }

    #[test]
    fn it_says_what_it_shows() {
        let picture = fit_curve(&fit(45.7, 51.3), Some(4.0));
        assert_eq!(
            picture.description,
            "Share of heads of each age, boys and girls alike, that the hat fits. It fits 8 in 10 children from 19 months to 4 years 4 \
             months. The wearer's age is marked, 4 years: 8 in 10."
        );
        assert!(texts(&picture).iter().any(|t| t.3 == "4 years: 8 in 10"));
        let none = fit_curve(&fit(49.0, 49.2), None);
        assert!(none.description.ends_with("It fits no age as well as 8 in 10."));
        let drawn = |p: &Picture, class| p.shapes.iter().filter(|s| s.paint == Paint::Class(class)).count();
        assert_eq!((drawn(&none, "fit-span"), drawn(&none, "fit-dot")), (0, 0));
        assert_eq!((drawn(&picture, "fit-span"), drawn(&picture, "fit-dot")), (1, 1));
    }

    #[test]
    fn more_heads_are_drawn_higher() {
        assert!((down(1.0) - TOP).abs() < 1e-9 && (down(0.0) - FOOT).abs() < 1e-9);
        assert!(down(0.8) < down(0.7) && across(4.0) < across(4.1));
        assert!((across(18.0) - CHILDREN_TO).abs() < 1e-9 && across(0.0) >= LEFT);
    }
}
