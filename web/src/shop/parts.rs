//! What all views of the shop are made of: one compiled copy of each, whatever it does.

use crate::erase::{Flag, Words, words};
use leptos::prelude::*;

/// What a button does.
pub type Act = Box<dyn FnMut()>;

/// A button with a word on it.
pub fn button(id: &str, class: &'static str, label: &'static str, act: impl FnMut() + 'static) -> AnyView {
    named(id.to_owned(), class, label, Box::new(String::new), Box::new(|| "false".to_owned()), Box::new(act))
}

/// A button whose sign needs a name for those who hear it; `off` is `true` while it would do nothing.
pub fn named(id: String, class: &'static str, sign: &'static str, name: Words, off: Words, mut act: Act) -> AnyView {
    let mut name = name;
    let name = move || Some(name()).filter(|name| !name.is_empty());
    let mut off = off;
    let off = move || Some(off()).filter(|off| off == "true");
    view! { <button type="button" id=id class=class aria-label=name aria-disabled=off on:click=move |_| act()>{sign}</button> }
        .into_any()
}

/// A box to tick, or with a group one of several to choose from. `data` is whose it is.
pub fn tick(
    id: String,
    group: &'static str,
    data: String,
    label: String,
    checked: Flag,
    mut set: Box<dyn FnMut(bool)>,
) -> AnyView {
    let kind = if group.is_empty() { "checkbox" } else { "radio" };
    let class = if group.is_empty() { "tag tick" } else { "tag" };
    view! {
        <span class=class>
            <input type=kind id=id.clone() name=kept(group.to_owned()) data-id=kept(data) prop:checked=checked on:change=move |event| set(event_target_checked(&event)) />
            <label for=id inner_html=label></label>
        </span>
    }
    .into_any()
}

/// A field that keeps what was typed, with the sentence beside it.
pub struct Field {
    /// Its id.
    pub id: String,
    /// What it is one of.
    pub class: &'static str,
    /// Markup of its label.
    pub label: Words,
    /// What stands in it.
    pub text: Words,
    /// What it counts, if it is a bare number.
    pub unit: Words,
    /// What is wrong with it.
    pub says: Memo<String>,
    /// Whose it is.
    pub data: String,
    /// Takes what is typed.
    pub typed: Box<dyn FnMut(String)>,
}

/// The field on the page.
pub fn field(field: Field) -> AnyView {
    let Field { id, class, label, text, unit, says, data, mut typed } = field;
    let place = [&id, "-says"].concat();
    let wrong = words(move || says.with(|says| !says.is_empty()).to_string());
    view! {
        <div class=class>
            <label for=id.clone() inner_html=label></label>
            <span class="box">
                <input
                    id=id
                    type="text"
                    autocomplete="off"
                    maxlength="60"
                    data-copies=kept(data)
                    aria-describedby=place.clone()
                    aria-invalid=wrong
                    prop:value=text
                    on:input=move |event| typed(event_target_value(&event))
                />
                <span class="unit">{unit}</span>
            </span>
            <p class="says" id=place>{words(move || says.get())}</p>
        </div>
    }
    .into_any()
}

/// A view: what can be scrolled, and below it what is always in sight.
pub fn view(body: AnyView, foot: AnyView) -> AnyView {
    view! { <div class="shop-scroll" tabindex="-1">{body}</div><div class="shop-foot">{foot}</div> }.into_any()
}

/// A paragraph that follows what it reads.
pub fn line(id: &'static str, class: &'static str, text: Words) -> AnyView {
    view! { <p id=id class=class>{text}</p> }.into_any()
}

/// Markup that follows what it reads.
pub fn markup(id: &'static str, class: &'static str, html: Memo<String>) -> AnyView {
    view! { <div id=id class=class inner_html=words(move || html.get())></div> }.into_any()
}

/// An attribute that is left out where it says nothing.
fn kept(text: String) -> Option<String> {
    Some(text).filter(|text| !text.is_empty())
}
