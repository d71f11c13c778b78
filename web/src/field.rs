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
    field(bench, (q, index), label, suffix, None)
}

/// The same with a word of advice beside it: about a number that can be used, but is hardly meant.
pub fn advised(bench: Bench, q: Quantity, index: usize, label: String, advice: Memo<String>) -> AnyView {
    field(bench, (q, index), label, "", Some(advice))
}

fn field(bench: Bench, place: Place, label: String, suffix: &'static str, advice: Option<Memo<String>>) -> AnyView {
    let (q, _) = place;
    let id = field_id(place);
    let said = format!("{id}-says");
    let hint = format!("{id}-hint");
    let described = if advice.is_some() { [&said, " ", &hint].concat() } else { said.clone() };
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
                    aria-describedby=described
                    aria-invalid=words(move || wrong().to_string())
                    prop:value=words(move || bench.text(place))
                    on:input=move |event| bench.take(place, event_target_value(&event))
                    on:change=move |_| bench.settle(place)
                    on:blur=move |_| bench.settle(place)
                />
                <span class="unit">{unit}</span>
            </span>
            <p class="says" id=said>{words(move || trouble.get())}</p>
            {advice.map(|advice| view! { <p class="note hint" id=hint role="status">{words(move || advice.get())}</p> })}
        </div>
    }
    .into_any()
}
