//! A choice of one among a few, as radio buttons that look like tags.

use crate::bench::Bench;
use crate::erase::{flag, memo};
use hatwright_project::Project;
use leptos::prelude::*;

/// What a choice reads and writes.
#[derive(Clone, Copy)]
pub struct Choice {
    /// What is chosen, as a person reads it.
    pub legend: fn() -> &'static str,
    /// A name for the group, unique on the page.
    pub name: &'static str,
    /// What there is to choose.
    pub options: &'static [fn() -> &'static str],
    /// Which one is chosen now; past the end for none.
    pub get: fn(&Project) -> usize,
    /// Chooses another.
    pub set: fn(Bench, usize),
}

/// The choice on the page.
pub fn choice(bench: Bench, choice: Choice) -> AnyView {
    let Choice { legend, name, options, get, set } = choice;
    let chosen = memo(move || bench.project.with(get));
    let tags = options.iter().enumerate().map(move |(i, option)| {
        let id = format!("{name}-{i}");
        view! {
            <span class="tag">
                <input
                    type="radio"
                    id=id.clone()
                    name=name
                    prop:checked=flag(move || chosen.get() == i)
                    on:change=move |_| set(bench, i)
                />
                <label for=id>{option()}</label>
            </span>
        }
    });
    view! {
        <fieldset class="choice" id=name>
            <legend>{legend()}</legend>
            <div class="tags">{tags.collect_view()}</div>
        </fieldset>
    }
    .into_any()
}
