//! Small pictures: a hat's outline in its own stripes, and the icon of a style.

use super::hat::{paint, worn_extent};
use super::profile::Profile;
use super::shape::{Paint, Picture, Shape, ShapeKind};
use super::view::View;
use hatwright_sizing::{
    BandSpec, Colour, Fabric, Hat, HatSpec, Length, RoundStripe, Rounds, RowStripe, Rows, Stitches, Style, Topper, plan,
};
use hatwright_words::pictures as words;

/// Side of the box of a silhouette.
const SIDE: i32 = 96;
/// Free on every side.
const MARGIN: f64 = 4.0;
/// The narrowest round that still makes a stripe, in user units.
const LEAST_STRIPE: f64 = 0.6;

/// Draws a hat small: its outline, from its own rounds, and its stripes, without the head and without texture. The box is always
/// 96 × 96 units. Several of them, drawn for alternatives, are to the same scale only where the hats are as large as one another.
pub fn hat_silhouette(hat: &Hat) -> Picture {
    let profile = Profile::of(hat);
    let view = fit(hat, &profile);
    let mut painted = Vec::with_capacity(12);
    if hat.gauge.round.cm() * view.unit < LEAST_STRIPE {
        let plain = one_colour(hat);
        paint(&plain, None, &Profile::of(&plain), &view, None, &mut painted);
    } else {
        paint(hat, None, &profile, &view, None, &mut painted);
    }
    // A yarn may be as pale, or as dark, as the page: an edge of the ink shows from under it.
    let mut shapes = vec![Shape::path(outline(&painted), Paint::Class("small-edge"))];
    shapes.append(&mut painted);
    Picture {
        width: SIDE,
        height: SIDE,
        title: name(hat.style).to_owned(),
        description: words::silhouette(hat.stitches().get(), hat.round_count().get()),
        shapes,
    }
}

/// What a kind of hat is called.
fn name(style: Style) -> &'static str {
    match style {
        Style::Fitted => words::fitted(),
        Style::Slouch => words::slouch(),
        Style::Stocking => words::stocking(),
        Style::EarWarmer => words::ear_warmer(),
        Style::Tam => words::tam(),
        Style::EarFlap => words::ear_flap(),
        Style::Brimmed => words::brimmed(),
        Style::Sideways => words::sideways(),
    }
}

/// Stripes that are finer than a hair melt into the hat's main colour.
fn one_colour(hat: &Hat) -> Hat {
    let mut hat = hat.clone();
    let main = hat.rounds.first().map(|r| r.colour).unwrap_or_default();
    hat.rounds.iter_mut().for_each(|r| r.colour = main);
    hat
}

/// All outlines as one path.
fn outline(shapes: &[Shape]) -> String {
    shapes.iter().filter_map(|s| if let ShapeKind::Path(data) = &s.kind { Some(data.as_str()) } else { None }).collect()
}

/// The largest scale at which the hat lies in the box, in its middle.
fn fit(hat: &Hat, profile: &Profile) -> View {
    let room = f64::from(SIDE) - 2.0 * MARGIN;
    let extent = worn_extent(hat, profile);
    let (wide, high) = (extent.left + extent.right, extent.above + extent.below);
    let unit = (room / wide.max(high)).max(0.01);
    let x = (f64::from(SIDE) - wide * unit) / 2.0 + extent.left * unit;
    let y = (f64::from(SIDE) - high * unit) / 2.0 + extent.above * unit;
    View { x, y, unit }
}

/// The icon of a style: the silhouette of its usual hat, in the text's own colour. The box is always 96 × 96 units.
///
/// ```
/// use hatwright_pattern::picture::style_icon;
/// use hatwright_sizing::Style;
/// assert!(Style::ALL.iter().all(|style| !style_icon(*style).shapes.is_empty()));
/// ```
pub fn style_icon(style: Style) -> Picture {
    let mut shapes = Vec::new();
    if let Ok(hat) = plan(&usual(style)) {
        let profile = Profile::of(&hat);
        let mut painted = Vec::new();
        paint(&hat, None, &profile, &fit(&hat, &profile), None, &mut painted);
        for shape in painted {
            // The band is lighter than the body; the inside of an open hat is darker than its band.
            let class = if matches!(shape.paint, Paint::Yarn(Colour(1))) { "icon-light" } else { "icon" };
            shapes.push(Shape { kind: shape.kind, paint: Paint::Class(class) });
        }
    }
    Picture { width: SIDE, height: SIDE, title: name(style).to_owned(), description: String::new(), shapes }
}

/// The usual hat of a style: plain, with a band of the second colour; worked sideways, in stripes of both.
fn usual(style: Style) -> HatSpec {
    let spec = HatSpec::default();
    let round = |colour: u8| RoundStripe { colour: Colour(colour), rounds: Rounds::new(2) };
    HatSpec {
        style,
        fabric: if style == Style::Sideways { Fabric::SingleBack } else { Fabric::Single },
        topper: spec.topper.filter(|_| style == Style::Stocking).map(|p| Topper { colour: Some(Colour(1)), ..p }),
        band: BandSpec {
            height: Stitches::new(if style == Style::EarWarmer { 8 } else { 4 }),
            fold: Length::ZERO,
            stripes: vec![RowStripe { colour: Colour(1), rows: Rows::new(2) }],
            ..spec.band.clone()
        },
        body_stripes: if style == Style::Sideways { vec![round(0), round(1)] } else { vec![round(0)] },
        ..spec
    }
}
