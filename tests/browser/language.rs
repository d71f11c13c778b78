//! The page in Spanish: by the browser's own languages, by hand, and back.

use std::collections::BTreeSet;

use serde_json::{Value, json};

use crate::access::Found;
use crate::page::{Page, Screen};
use crate::stage::on_page;

/// Makes the browser's person one who reads Spanish before English.
const READS_SPANISH: &str = "Object.defineProperty(Navigator.prototype, 'languages', { get: () => ['ca', 'es-ES', 'en'] })";

/// What a person reads or hears: texts, options, and the words of attributes. What stands in fields is the person's own.
const TEXTS: &str = "
    const all = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      if (!walker.currentNode.parentElement.closest('script, noscript, #trouble, style')) all.push(walker.currentNode.data);
    }
    for (const name of ['aria-label', 'placeholder', 'title', 'alt']) {
      for (const e of document.querySelectorAll(`[${name}]`)) all.push(e.getAttribute(name));
    }
    return all.map(text => text.trim()).filter(text => text)";

/// What is the same in every language: names of programs, of those who are credited, of hats and yarns.
const NAMES: [&str; 5] = ["Hatwright", "Chrome", "Boathouse wool", "Rowing club, junior cap", "YarnStandards"];

/// The page's texts of at least two words.
fn texts(page: &Page) -> BTreeSet<String> {
    let texts: Vec<String> = serde_json::from_value(page.js(TEXTS)).expect("texts");
    let word = |word: &&str| word.chars().filter(|c| c.is_alphabetic()).count() > 2;
    texts.into_iter().filter(|text| text.split_whitespace().filter(word).count() > 1).collect()
}

#[track_caller]
fn speaks(page: &Page, tag: &str) {
    page.until_is("the page's language", "document.documentElement.lang", &json!(tag));
    let heading = if tag == "es" { "Cabeza" } else { "Head" };
    page.until_is("a heading", "document.getElementById('head-title')?.textContent", &json!(heading));
    let checked = if tag == "es" { "language-1" } else { "language-0" };
    page.until_is("the choice", "document.querySelector('[name=language]:checked')?.id", &json!(checked));
}

/// Takes a language by hand.
#[track_caller]
fn speak(page: &Page, tag: &str) {
    page.choose("language", usize::from(tag == "es"));
    speaks(page, tag);
}

#[test]
fn a_browser_that_reads_spanish_gets_spanish() {
    on_page(Screen::PHONE, |page| {
        page.before_every_page(READS_SPANISH);
        page.open();
        speaks(page, "es");
        assert!(page.text("#fit-sentence").contains("cabeza"), "{}", page.text("#fit-sentence"));
        assert!(page.text("#answer-head").starts_with("cabeza de "), "{}", page.text("#answer-head"));
        assert!(page.text("#answer-head").contains(','), "a decimal comma: {}", page.text("#answer-head"));
        let told = page.js("return document.querySelector('meta[name=description]').content");
        assert!(told.as_str().is_some_and(|told| told.contains("ganchillo")), "{told}");
        let own = page.js("return [...document.querySelectorAll('#language label')].map(e => [e.lang, e.textContent])");
        assert_eq!(own, json!([["en", "English"], ["es", "Español"]]), "each language is named in itself");
    });
}

/// The words of the first screen are those of the page, so that nothing changes under the eye.
#[test]
fn the_first_screen_is_spanish_already() {
    on_page(Screen::PHONE, |page| {
        page.before_every_page(READS_SPANISH);
        page.before_every_page(
            "const words = () => ['.top .purpose', '.top .acts', '[class*=ask] h2', '[class*=ask] section:nth-of-type(2) h2']
               .map(css => document.querySelector(css)?.textContent.replace(/\\s+/g, ' ').trim());
             window.words = words;
             const look = () => {
               if (document.querySelector('.sketch')) window.first = [document.documentElement.lang, words()];
               else if (window.first) return;
               requestAnimationFrame(look);
             };
             requestAnimationFrame(look)",
        );
        let slow = json!({ "offline": false, "latency": 40, "downloadThroughput": 400_000, "uploadThroughput": 100_000 });
        page.command("Network.enable", json!({}));
        page.command("Network.emulateNetworkConditions", slow);
        page.open();
        let first = page.until("the first screen", "window.first");
        assert_eq!(first, json!(["es", page.js("return words()")]));
    });
}

#[test]
fn another_language_loses_nothing() {
    on_page(Screen::DESK, |page| {
        page.open();
        speaks(page, "en");
        page.fill("hat-name", "Cox’s cap");
        page.fill("swatch-width", "11");
        page.fill("swatch-stitches", "a dozen");
        page.fill("hex-text-0", "indigo");
        page.click("[data-stitches='60']");
        let says = [page.says("swatch-stitches"), page.says("hex-text-0")];
        let stitches = page.text("#answer-stitches");
        assert!(says.iter().all(|said| !said.is_empty()), "{says:?}");
        page.js("document.querySelector('.ball-band').open = true");

        let same = |page: &Page| {
            for (id, value) in
                [("hat-name", "Cox’s cap"), ("swatch-width", "11"), ("swatch-stitches", "a dozen"), ("hex-text-0", "indigo")]
            {
                assert_eq!(page.value(id), value, "{id}");
            }
            assert_eq!(page.text("#answer-stitches"), stitches);
            page.until_is("what was unfolded", "document.querySelector('.ball-band').open", &json!(true));
        };
        speak(page, "es");
        page.until_is("the keyboard", "document.activeElement.id", &json!("language-1"));
        same(page);
        let spanish = [page.says("swatch-stitches"), page.says("hex-text-0")];
        assert!(spanish[0].contains("no es un número"), "{spanish:?}");
        assert!(spanish[1].starts_with("Un color es"), "{spanish:?}");
        assert!(page.text("#stuck-on").contains(&spanish[0]), "{}", page.text("#stuck-on"));

        speak(page, "en");
        page.until_is("the keyboard", "document.activeElement.id", &json!("language-0"));
        same(page);
        assert_eq!([page.says("swatch-stitches"), page.says("hex-text-0")], says);
        // The page that was drawn anew works as before.
        page.fill("swatch-stitches", "13");
        assert_eq!(page.says("swatch-stitches"), "");
        page.until("another count", &format!("document.getElementById('answer-stitches').textContent !== '{stitches}'"));
    });
}

/// Whatever is asked or told: no text of the English page is left on the Spanish one.
#[test]
fn nothing_english_is_left() {
    on_page(Screen::DESK, |page| {
        page.open();
        let mut left: BTreeSet<(String, String)> = BTreeSet::new();
        let mut look = |page: &Page, state: &str| {
            let english = texts(page);
            speak(page, "es");
            let spanish = texts(page);
            assert!(spanish.len() > 100, "{state}: {} texts", spanish.len());
            for text in english.intersection(&spanish).filter(|text| !NAMES.iter().any(|name| text.contains(name))) {
                left.insert((text.clone(), state.to_owned()));
            }
            speak(page, "en");
        };
        for style in 0..8 {
            page.choose("style", style);
            look(page, &format!("style {style}"));
        }
        page.choose("style", 0);
        for (group, which) in [
            ("head-way", 1),
            ("head-way", 2),
            ("way", 1),
            ("layout", 1),
            ("closing", 1),
            ("pom-pom-way", 2),
            ("swatch-way", 1),
            ("stretch-way", 1),
            ("band-kind", 1),
            ("begun", 1),
        ] {
            page.choose(group, which);
            look(page, &format!("{group} {which}"));
        }
        page.fill("ease", "x");
        page.fill("fold", "40");
        look(page, "what cannot be");
        assert!(left.is_empty(), "left in English: {left:#?}");
    });
}

#[test]
fn the_spanish_page_is_accessible() {
    on_page(Screen::PHONE, |page| {
        let mut found = Found::default();
        page.before_every_page(READS_SPANISH);
        page.open();
        found.look(page, "in Spanish");
        page.js("document.querySelectorAll('details').forEach(d => d.open = true)");
        page.fill("swatch-stitches", "x");
        found.look(page, "in Spanish, every part open, with an error");
        found.is_nothing();
    });
}

#[test]
fn the_spanish_page_is_not_scrolled_sideways() {
    on_page(Screen::PHONE, |page| {
        page.before_every_page(READS_SPANISH);
        page.open();
        page.js("document.querySelectorAll('details').forEach(d => d.open = true)");
        let mut wrong: Vec<Value> = Vec::new();
        for style in 0..8 {
            page.choose("style", style);
            for width in [320, 390, 820, 1440] {
                page.resize(Screen { width, height: 844 });
                page.js_later("requestAnimationFrame(() => requestAnimationFrame(arguments[0]))");
                let wide = page.js("const room = document.documentElement.clientWidth;
                     if (document.documentElement.scrollWidth <= room) return null;
                     return [...document.body.querySelectorAll('*')]
                       .filter(e => e.getBoundingClientRect().right > room + 1).slice(0, 3).map(e => e.outerHTML.slice(0, 120))");
                wrong.extend((!wide.is_null()).then(|| json!([style, width, wide])));
            }
            page.resize(Screen::PHONE);
        }
        assert!(wrong.is_empty(), "{wrong:#?}");
    });
}

#[test]
fn the_choice_is_remembered() {
    on_page(Screen::PHONE, |page| {
        page.open();
        speak(page, "es");
        page.reload();
        speaks(page, "es");
        // A hat that is saved keeps the choice.
        page.fill("swatch-stitches", "13");
        page.until("the hat to be saved", "Object.keys(localStorage).length > 1");
        page.restart();
        page.open();
        speaks(page, "es");
        assert_eq!(page.value("swatch-stitches"), "13");

        // By hand comes before the browser's own.
        page.before_every_page(READS_SPANISH);
        speak(page, "en");
        page.reload();
        speaks(page, "en");
    });
}
