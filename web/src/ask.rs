//! The questions: head, swatch, hat, colours.

mod ball;
mod band;
mod colours;
mod fabric;
mod hat;
mod head;
mod hex;
mod stripes;
mod style;
mod swatch;
mod topper;

pub use colours::{colour_options, letter};
pub use swatch::{is_hint, weights};

use crate::bench::Bench;
use hatwright_sizing::HatSpec;
use leptos::prelude::*;

/// Whether a question matters: whether the hat heeds the one answer otherwise than the other.
fn heard<T: PartialEq>(spec: &HatSpec, answers: [fn(&mut HatSpec); 2], of: fn(&HatSpec) -> T) -> bool {
    let [one, other] = answers.map(|answer| {
        let mut told = spec.clone();
        answer(&mut told);
        of(&told)
    });
    one != other
}

/// The column of questions.
pub fn ask(bench: Bench) -> AnyView {
    view! {
        <div class="ask">
            {head::head(bench)}
            {swatch::swatch(bench)}
            {hat::hat(bench)}
            {colours::colours(bench)}
        </div>
    }
    .into_any()
}
