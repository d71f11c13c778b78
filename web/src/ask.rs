//! The questions: head, swatch, hat, colours.

mod colours;
mod hat;
mod head;
mod swatch;

pub use colours::letter;

use crate::bench::Bench;
use leptos::prelude::*;

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
