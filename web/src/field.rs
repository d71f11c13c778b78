//! A field for one number of the table of quantities.

use crate::bench::{Bench, Place};
use crate::erase::{flag, memo, words};
use hatwright_pattern::{figures, say};
use hatwright_sizing::{Quantity, Unit};
use leptos::prelude::*;

/// The element id of a field.
pub fn field_id((q, index): Place) -> String {
    let key = q.row().key;
    if index == 0 { key.to_owned() } else { format!("{key}-{index}") }
}

/// A number with its label, its unit and the sentence beside it. `suffix` says what the number counts where the unit does not.
pub fn number(bench: Bench, q: Quantity, index: usize, suffix: &'static str) -> AnyView {
    labelled(bench, q, index, say::label(q).to_owned(), suffix)
}

/// The same with a label of its own, for numbers that come several times.
pub fn labelled(bench: Bench, q: Quantity, index: usize, label: String, suffix: &'static str) -> AnyView {
    let place = (q, index);
    let id = field_id(place);
    let said = format!("{id}-says");
    let unit = words(move || {
        let unit = if suffix.is_empty() { figures::unit_label(q.row().unit, bench.figure_units()) } else { suffix };
        unit.to_owned()
    });
    let mode = if q.row().unit == Unit::Whole { "numeric" } else { "decimal" };
    let trouble = memo(move || bench.trouble(place).unwrap_or_default());
    let wrong = move || trouble.with(|t| !t.is_empty());
    view! {
        <div class="number" class:wrong=flag(wrong)>
            <label for=id.clone()>{label}</label>
            <span class="box">
                <input
                    id=id
                    type="text"
                    inputmode=mode
                    autocomplete="off"
                    aria-describedby=said.clone()
                    aria-invalid=words(move || wrong().to_string())
                    prop:value=words(move || bench.text(place))
                    on:input=move |event| bench.take(place, event_target_value(&event))
                    on:change=move |_| bench.settle(place)
                    on:blur=move |_| bench.settle(place)
                />
                <span class="unit">{unit}</span>
            </span>
            <p class="says" id=said>{words(move || trouble.get())}</p>
        </div>
    }
    .into_any()
}
