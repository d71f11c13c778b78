//! A hat's charts, ready for a pattern.

use super::Figure;
use crate::picture::{Charted, CrownView, charts, to_markup, to_svg};
use crate::written::{About, write};
use hatwright_sizing::{Colour, Hat, HatSpec};

/// The charts of a hat with their tables. `yarn` holds the colours' values, in the order of their indices.
pub fn chart_figures(hat: &Hat, spec: &HatSpec, about: &About<'_>, yarn: &[&str], view: CrownView) -> Vec<Figure> {
    let pattern = write(hat, spec);
    let colours: Vec<String> = (0..spec.balls.len()).map(|at| about.colour(Colour(at as u8))).collect();
    let of =
        Charted { hat, spec, pattern: &pattern, colours: &colours, hand: about.hand, terms: about.terms, units: about.units };
    let figure = |chart: crate::picture::Chart| Figure {
        id: chart.id,
        title: chart.picture.title.clone(),
        svg: to_svg(&chart.picture, yarn),
        markup: to_markup(&chart.picture, yarn),
        table: chart.table,
    };
    charts(&of, view).into_iter().map(figure).collect()
}
