//! A colour on the screen: by eye, and by its number.

use super::colours::letter;
use crate::bench::{Bench, TypedHex};
use crate::erase::{flag, memo, words};
use hatwright_project::Rgb;
use hatwright_words::ask;
use leptos::prelude::*;

fn put(bench: Bench, i: usize, rgb: Rgb) {
    if bench.project.with_untracked(|p| p.colours.get(i).is_none_or(|c| c.hex == rgb)) {
        return;
    }
    bench.change(|p| {
        if let Some(colour) = p.colours.get_mut(i) {
            colour.hex = rgb;
        }
    });
}

fn told(bench: Bench, i: usize) -> Memo<String> {
    memo(move || bench.project.with(|p| p.colours.get(i).map(|c| c.hex.to_string()).unwrap_or_default()))
}

/// The field for the eye.
pub fn by_eye(bench: Bench, i: usize) -> AnyView {
    let hex = told(bench, i);
    let set = move |event| {
        if let Ok(rgb) = Rgb::parse(&event_target_value(&event)) {
            put(bench, i, rgb);
        }
    };
    let label = ask::colour_on_screen(&letter(i).to_string());
    view! {
        <input type="color" id=format!("hex-{i}") aria-label=label prop:value=hex on:input=set />
    }
    .into_any()
}

/// The field for the number. What is no colour stays in it, with a sentence.
pub fn by_hex(bench: Bench, i: usize) -> AnyView {
    let hex = told(bench, i);
    let typed = bench.hexes;
    let standing = memo(move || typed.with(|t| t.get(&i).filter(|t| t.then == hex.get()).map(|t| t.text.clone())));
    let wrong = move || standing.with(|text| text.as_ref().is_some_and(|text| read(text).is_none()));
    let take = move |event| {
        let text = event_target_value(&event);
        let now = hex.get_untracked();
        let before = typed.with_untracked(|t| t.get(&i).filter(|t| t.then == now).map_or(now, |t| t.before.clone()));
        // `#123` is a colour on the way to `#12345`, which is none: nobody meant it.
        if let Some(rgb) = read(&text).or_else(|| Rgb::parse(&before).ok()) {
            put(bench, i, rgb);
        }
        typed.update(|t| {
            t.insert(i, TypedHex { text, then: hex.get_untracked(), before });
        });
    };
    let settle = move |_| {
        if !untrack(wrong) {
            typed.update(|t| {
                t.remove(&i);
            });
        }
    };
    let (id, said) = (format!("hex-text-{i}"), format!("hex-text-{i}-says"));
    view! {
        <span class="number hex" class:wrong=flag(wrong)>
            <label for=id.clone()>{ask::hex()}</label>
            <input
                class="box"
                type="text"
                id=id
                maxlength="24"
                autocomplete="off"
                spellcheck="false"
                aria-describedby=said.clone()
                aria-invalid=words(move || wrong().to_string())
                prop:value=words(move || standing.get().unwrap_or_else(|| hex.get()))
                on:input=take
                on:blur=settle
            />
            <span class="says" id=said>{words(move || if wrong() { ask::hex_wrong().to_owned() } else { String::new() })}</span>
        </span>
    }
    .into_any()
}

/// A colour as people type it: `#rgb` or `#rrggbb`, in either case, the mark left out or not.
fn read(text: &str) -> Option<Rgb> {
    let text = text.trim();
    let digits = text.strip_prefix('#').unwrap_or(text);
    match digits.len() {
        3 => Rgb::parse(&["#", &digits.chars().flat_map(|c| [c, c]).collect::<String>()].concat()).ok(),
        _ => Rgb::parse(&["#", digits].concat()).ok(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_digits_are_six_and_the_mark_may_be_missing() {
        let indigo = Rgb::new(0x34, 0x51, 0x6f);
        for text in ["#34516f", "34516F", " #34516F "] {
            assert_eq!(read(text), Some(indigo), "{text}");
        }
        assert_eq!(read("#fa0"), Some(Rgb::new(0xff, 0xaa, 0)));
        for text in ["", "#", "#12", "#1234", "#12345", "##34516f", "#34516g", "blue", "ää", "#ää", "€"] {
            assert_eq!(read(text), None, "{text}");
        }
    }
}
