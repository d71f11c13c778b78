//! The language of the page: as it was chosen on this device, or the first of the browser's languages that is spoken.

use crate::bench::Bench;
use crate::dom;
use crate::erase::flag;
use crate::keep::Browser;
use hatwright_project::{Settings, Shelf};
use hatwright_words::{Language, choose, speak, spoken};
use leptos::prelude::*;
use web_sys::Element;

/// Speaks the language of this device and its browser. Comes before anything is drawn.
pub fn begin() {
    let chosen = Shelf::new(&Browser).settings().language;
    let chosen = chosen.as_deref().and_then(Language::of_tag);
    take(chosen.unwrap_or_else(|| {
        let tags: Vec<String> = dom::window().navigator().languages().iter().filter_map(|tag| tag.as_string()).collect();
        Language::of_tags(tags.iter().map(String::as_str))
    }));
}

/// Speaks a language, and says so to the browser, to readers of screens and to those who list pages.
fn take(language: Language) {
    speak(language);
    let Some(document) = dom::window().document() else { return };
    if let Some(root) = document.document_element() {
        let _ = root.set_attribute("lang", language.tag());
    }
    if let Ok(Some(told)) = document.query_selector("meta[name=description]") {
        let _ = told.set_attribute("content", choose::description());
    }
}

/// The choice by hand. Each language is named in itself.
pub fn choice(bench: Bench) -> AnyView {
    let tags = Language::ALL.iter().enumerate().map(move |(i, &language)| {
        let id = format!("language-{i}");
        view! {
            <span class="tag">
                <input
                    type="radio"
                    id=id.clone()
                    name="language"
                    prop:checked=flag(move || bench.language.get() == language)
                    on:change=move |_| change(bench, language)
                />
                <label for=id lang=language.tag()>{language.name()}</label>
            </span>
        }
    });
    view! {
        <fieldset class="choice" id="language">
            <legend>{choose::language()}</legend>
            <div class="tags">{tags.collect_view()}</div>
        </fieldset>
    }
    .into_any()
}

/// Draws the page anew in another language, and remembers that on this device. The hat and all that was typed stay.
fn change(bench: Bench, language: Language) {
    if spoken() == language {
        return;
    }
    let shelf = Shelf::new(&Browser);
    // A browser that keeps nothing speaks it until the page is left.
    let _ = shelf.put_settings(&Settings { language: Some(language.tag().to_owned()), ..shelf.settings() });
    let unfolded: Vec<bool> = folds().iter().map(|fold| fold.has_attribute("open")).collect();
    take(language);
    bench.reread();
    bench.language.set(language);
    dom::after(0, move || {
        let folds = folds();
        // What was unfolded is read on.
        if folds.len() == unfolded.len() {
            for (fold, _) in folds.iter().zip(unfolded).filter(|(_, open)| *open) {
                let _ = fold.set_attribute("open", "");
            }
        }
    });
    dom::refocus(&format!("#language-{}", language as usize));
}

/// All that can be folded away, in the page's order.
fn folds() -> Vec<Element> {
    let found = dom::window().document().map(|document| document.get_elements_by_tag_name("details"));
    found.map(|all| (0..all.length()).filter_map(|i| all.item(i)).collect()).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use hatwright_project::storage::SETTINGS_KEY;
    use hatwright_words::{Language, ask, in_language, page, see};

    /// The first screen comes before the program, so its script has words of its own: they have to be the page's.
    #[test]
    fn the_first_screen_says_what_the_page_says() {
        let script = include_str!("../boot/words.js");
        let said: [fn() -> &'static str; 15] = [
            page::hats,
            page::copy_link,
            page::print,
            see::stitches_around,
            see::rounds_above,
            see::two_colours,
            see::age,
            see::band,
            ask::head_title,
            ask::head_way,
            ask::counted_in,
            ask::swatch_title,
            ask::rounds,
            ask::hat_title,
            ask::colours_title,
        ];
        for say in said {
            let pair = format!("'{}': '{}'", say(), in_language(Language::Spanish, say));
            assert!(script.contains(&pair), "{pair}");
        }
        assert!(script.contains(page::purpose()) && script.contains(in_language(Language::Spanish, page::purpose)));
        let watch = include_str!("../boot/watch.js");
        assert!(watch.contains(&format!("localStorage.getItem('{SETTINGS_KEY}')")));
    }
}
