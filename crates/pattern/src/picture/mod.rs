//! Pictures of a planned hat as plain geometry: the page turns them into elements, the tests and the export into SVG text.
//!
//! A shape names a yarn colour or a style class, never a colour value, so that one picture serves light, dark and print. Shapes of
//! one paint are one path wherever nothing has to lie between them: a hat is a few dozen elements, however many stitches it has.

mod band;
mod body;
mod chance;
mod charts;
mod dimension;
mod drape;
mod fabric;
mod fit_curve;
mod flaps;
mod hat;
mod head;
mod panel;
mod pen;
mod pom_pom;
mod profile;
mod rounds;
mod shape;
mod silhouette;
mod strips;
mod svg;
mod tassel;
mod topper;
mod view;
mod wheel;
mod yarn;

#[cfg(test)]
mod measure;
#[cfg(test)]
mod sample;

pub use charts::{Chart, Charted, CrownView, charts};
pub use fit_curve::fit_curve;
pub use hat::{HatLabels, hat_picture};
pub use rounds::{Bar, BarGroup, bars, colour_letter, grouped, round_chart};
pub use shape::{Anchor, Paint, Picture, Shape, ShapeKind};
pub use silhouette::{hat_silhouette, style_icon};
pub use svg::{CLASSES, GRADIENTS, HATCHES, to_markup, to_svg};
pub use wheel::round_wheel;
pub use yarn::{YarnRow, yarn_picture, yarn_table};
