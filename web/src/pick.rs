//! A list to pick one thing from.

use crate::erase::Words;
use crate::html::Html;
use leptos::prelude::*;

/// A select box. `options` is its markup, by [`option`], and is written anew whenever it changes; `set` gets the value picked.
pub fn pick(id: String, label: &str, options: Words, set: impl Fn(String) + 'static) -> AnyView {
    boxed(id, label.to_owned(), options, Box::new(set))
}

fn boxed(id: String, label: String, options: Words, set: Box<dyn Fn(String)>) -> AnyView {
    view! {
        <span class="number">
            <label for=id.clone()>{label}</label>
            <select class="box" id=id inner_html=options on:change=move |event| set(event_target_value(&event))></select>
        </span>
    }
    .into_any()
}

/// One option.
pub fn option(html: &mut Html, value: &str, label: &str, chosen: bool) {
    html.raw("<option value=\"").text(value).raw(if chosen { "\" selected>" } else { "\">" }).text(label).raw("</option>");
}
