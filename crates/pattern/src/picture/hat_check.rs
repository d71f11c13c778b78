//! Pictures of hats: that everything lies in its box, how much is drawn, and that what is drawn is as large as it is made.

use super::super::measure::{Extent, extent};
use super::super::sample::{self, Sample};
use super::super::{Anchor, Paint, Shape, ShapeKind, hat_silhouette, round_chart, round_wheel};
use super::*;
use hatwright_sizing::Colour;

fn labels() -> HatLabels {
    HatLabels { depth: "19.4 cm".into(), girth: "23.3 cm flat · 46.7 cm around".into(), part: None }
}

fn view_of(hat: &Hat, profile: &Profile) -> View {
    let labels = labels();
    fit(hat, profile, &labels.depth, &[&labels.girth])
}

fn picture(hat: &Hat) -> Picture {
    hat_picture(hat, &HatSpec::default(), &labels())
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
        ShapeKind::Open(_) | ShapeKind::Close => unreachable!("a hat has no groups"),
    }
}

fn bytes(picture: &Picture) -> usize {
    picture.shapes.iter().map(|s| if let ShapeKind::Path(d) = &s.kind { d.len() } else { 20 }).sum()
}

#[test]
fn everything_lies_in_the_box_and_fills_it() {
    for (name, spec, hat) in sample::all() {
        let labels = HatLabels::of(&hat, &spec, Units::Centimetres);
        let drawn = [
            ("worn", hat_picture(&hat, &spec, &labels), 14.0),
            ("chart", round_chart(&hat), 11.0),
            ("wheel", round_wheel(&hat), 11.0),
            ("small", hat_silhouette(&hat), 0.0),
        ];
        for (what, picture, size) in drawn {
            let mut all = Extent::NONE;
            for shape in &picture.shapes {
                let one = boxed(shape, size);
                assert!(
                    one.lies_in(picture.width, picture.height),
                    "{name} {what}: {one:?} of {:?} {:.60?}",
                    shape.paint,
                    shape.kind
                );
                all = all.with(one);
            }
            let (wide, high) = (all.0[2] - all.0[0], all.0[3] - all.0[1]);
            let full = wide > f64::from(picture.width) * 0.85 || high > f64::from(picture.height) * 0.85;
            assert!(what == "chart" || full, "{name} {what}: {all:?}");
        }
    }
}

#[test]
fn a_hat_is_few_elements_and_little_text() {
    for (name, spec, hat) in sample::all() {
        let picture = hat_picture(&hat, &spec, &labels());
        let bytes = bytes(&picture);
        assert!(picture.shapes.len() < 140, "{name}: {} shapes", picture.shapes.len());
        assert!(bytes < 215_000, "{name}: {bytes} bytes");
        assert!(name != "cap" || picture.shapes.len() <= 50 && bytes < 85_000, "{} shapes, {bytes} bytes", picture.shapes.len());
        let small = hat_silhouette(&hat);
        assert!(
            small.shapes.len() <= 30 && self::bytes(&small) < 45_000,
            "{name}: {} shapes, {} bytes",
            small.shapes.len(),
            self::bytes(&small)
        );
    }
}

#[test]
fn a_tail_of_thousands_of_rounds_is_drawn_with_a_gap() {
    let (spec, hat) = sample::tail_of(5_000);
    assert!(hat.rounds.len() > 5_000, "{} rounds", hat.rounds.len());
    let labels = HatLabels::of(&hat, &spec, Units::Centimetres);
    let picture = hat_picture(&hat, &spec, &labels);
    assert!(
        picture.shapes.len() < 100 && bytes(&picture) < 130_000,
        "{} shapes, {} bytes",
        picture.shapes.len(),
        bytes(&picture)
    );
    assert!(picture.shapes.iter().any(|s| s.paint == Paint::Class("break")));
    assert!(picture.shapes.iter().any(|s| s.paint == Paint::Class("head")));
    assert!(picture.description.contains("shorter"), "{}", picture.description);
    let small = hat_silhouette(&hat);
    assert!(small.shapes.len() < 30 && bytes(&small) < 30_000, "{} shapes, {} bytes", small.shapes.len(), bytes(&small));
    let chart = round_chart(&hat);
    assert!(chart.shapes.len() < 700, "{} shapes", chart.shapes.len());
    let wheel = round_wheel(&hat);
    assert!(wheel.shapes.len() < 12 && bytes(&wheel) < 60_000, "{} shapes, {} bytes", wheel.shapes.len(), bytes(&wheel));
}

#[test]
fn a_hat_is_drawn_the_same_every_time() {
    let hat = Sample::CAP.hat();
    assert_eq!(picture(&hat), picture(&hat));
}

#[test]
fn the_words_name_the_style_and_its_measures() {
    for (name, spec, hat) in sample::planned() {
        let labels = HatLabels::of(&hat, &spec, Units::Inches);
        let picture = hat_picture(&hat, &spec, &labels);
        assert!(picture.title.ends_with("worn, to scale"), "{name}");
        for said in [&labels.depth, &labels.girth] {
            assert!(picture.description.contains(said.as_str()) && said.contains('"') | said.contains("in"), "{name}: {said}");
        }
    }
}

#[test]
fn every_style_has_its_own_icon() {
    let icons: Vec<Picture> = Style::ALL.iter().map(|style| super::super::style_icon(*style)).collect();
    for (i, icon) in icons.iter().enumerate() {
        assert!((1..12).contains(&icon.shapes.len()) && bytes(icon) < 12_000, "{i}: {} bytes", bytes(icon));
        assert!(icon.shapes.iter().all(|s| boxed(s, 0.0).lies_in(icon.width, icon.height)), "{i}: {:?}", icon.shapes);
        assert!(icons[..i].iter().all(|other| other.shapes != icon.shapes), "{i}");
    }
}

/// The box of all that is painted in a yarn.
fn yarn(hat: &Hat, colour: Colour) -> Extent {
    let picture = picture(hat);
    let painted = picture.shapes.iter().filter(|s| s.paint == Paint::Yarn(colour));
    painted.fold(Extent::NONE, |all, s| all.with(boxed(s, 14.0)))
}

fn plain() -> Hat {
    Sample { stripes: (2, 2, 1), pom: None, ..Sample::CAP }.hat()
}

#[test]
fn a_round_of_another_colour_lies_at_its_own_height() {
    for index in [4, 9, 14] {
        let mut hat = plain();
        hat.rounds[index].colour = Colour(1);
        let Extent([left, top, right, bottom]) = yarn(&hat, Colour(1));
        let profile = Profile::of(&hat);
        let view = view_of(&hat, &profile);
        let (lower, upper) = (profile.edges[index], profile.edges[index + 1]);
        let deep = |ring: super::super::view::Edge| ring.radius * view.unit * SIN;
        assert!((bottom - (view.level(lower.height) + deep(lower))).abs() < 0.3, "round {index}: {bottom}");
        // The sides of the upper edge are seen from its widest place to a little behind it.
        assert!((view.level(upper.height) - top).abs() < deep(upper) * 0.5 + 0.3, "round {index}: {top}");
        assert!((right - left - 2.0 * lower.radius * view.unit).abs() < 0.6, "round {index}: {left} to {right}");
    }
}

#[test]
fn a_row_of_the_band_stands_upright_and_as_wide_as_it_is() {
    let mut hat = plain();
    let front = hat.band_rows.len() / 2;
    hat.band_rows[front] = Colour(1);
    let Extent([left, top, right, bottom]) = yarn(&hat, Colour(1));
    let profile = Profile::of(&hat);
    let view = view_of(&hat, &profile);
    let wide = 2.0 * PI * profile.cuff.0 * view.unit / hat.band_rows.len() as f64;
    assert!((left - view.x).abs() < 0.2 && ((right - left) / wide - 1.0).abs() < 0.05, "{left} to {right} for {wide}");
    let high = profile.fold * COS * view.unit;
    assert!(bottom - top > high && bottom - top < high * 1.3, "{top} to {bottom} for {high}");
}

#[test]
fn a_pom_pom_is_as_large_as_it_is_trimmed() {
    let mut hat = Sample { stripes: (2, 2, 1), ..Sample::CAP }.hat();
    hat.topper = hat.topper.map(|p| hatwright_sizing::TopperPlan { colour: Some(Colour(1)), ..p });
    let Extent([left, _, right, _]) = yarn(&hat, Colour(1));
    let view = view_of(&hat, &Profile::of(&hat));
    assert!(((right - left) / view.unit - 6.0).abs() < 0.6, "{} cm", (right - left) / view.unit);
}

/// A tassel hangs from a tail straight down, and lies over a crown: as long as it is cut, either way.
#[test]
fn a_tassel_is_as_long_as_it_is_cut() {
    for cm in [4.0, 10.0, 30.0] {
        let mut hat = sample::tail_of(100).1;
        let plan = hatwright_sizing::TopperPlan {
            kind: hatwright_sizing::TopperKind::Tassel,
            size: Length::from_cm(cm),
            wraps: 36,
            colour: Some(Colour(1)),
        };
        hat.topper = Some(plan);
        for round in &mut hat.rounds {
            round.colour = Colour(0);
        }
        hat.band_rows.iter_mut().for_each(|colour| *colour = Colour(0));
        let Extent([left, top, right, bottom]) = yarn(&hat, Colour(1));
        let profile = Profile::of(&hat);
        let unit = view_of(&hat, &profile).unit;
        assert!(((bottom - top) / unit / cm - 1.0).abs() < 0.04, "{cm}: {}", (bottom - top) / unit);
        assert!((right - left) / unit < cm, "{cm}");
        assert_eq!(picture(&hat), picture(&hat));

        let mut hat = plain();
        hat.topper = Some(plan);
        let Extent([left, top, right, bottom]) = yarn(&hat, Colour(1));
        let unit = view_of(&hat, &Profile::of(&hat)).unit;
        let (wide, high) = ((right - left) / unit, (bottom - top) / unit);
        // Along a bend it is longer than its chord and shorter than both sides together.
        assert!(wide.hypot(high) < 1.4 * cm && wide + high > cm, "{cm}: {wide} by {high}");
        assert!(cm < 15.0 || high > wide, "{cm}: {wide} by {high}");
    }
}

#[test]
fn pictures_speak_spanish() {
    hatwright_words::in_language(hatwright_words::Language::Spanish, || {
        let (spec, hat) = (HatSpec::default(), plain());
        let labels = HatLabels::of(&hat, &spec, Units::Centimetres);
        let picture = hat_picture(&hat, &spec, &labels);
        assert_eq!(picture.title, "Gorro ajustado, puesto, a escala");
        assert!(labels.girth.ends_with(" cm de contorno") && labels.girth.contains(" cm en plano \u{b7} "), "{}", labels.girth);
        assert!(picture.description.contains("puntos de contorno") && picture.description.contains("Profundidad: "));
        assert_eq!(hat_silhouette(&hat).title, "Gorro ajustado");
        assert!(round_chart(&hat).description.contains("Las letras indican los colores"));
        assert!(round_wheel(&hat).description.contains("Desde fuera: "));
        for (name, spec, hat) in sample::planned() {
            let labels = HatLabels::of(&hat, &spec, Units::Centimetres);
            let (worn, small, wheel) = (hat_picture(&hat, &spec, &labels), hat_silhouette(&hat), round_wheel(&hat));
            for text in [worn.title, worn.description, small.title, small.description, wheel.title, wheel.description] {
                for word in ["ound", "stitch", " rows", "brim", "flap", "crown", "Depth", "{"] {
                    assert!(!text.contains(word), "{name}: {text}");
                }
            }
        }
    });
}
