//! The page for those who hear it, strike keys, need large targets, or cannot bear motion.

use std::fs;

use serde_json::{Value, json};
use thirtyfour::Key;

use crate::driver::variable;
use crate::page::{Page, Screen};
use crate::stage::on_page;

/// Rules of axe-core: WCAG 2.0 to 2.2, A and AA, and its best practices.
const RULES: &str = r"
    const done = arguments[0];
    axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }).then(
      ({ violations, passes }) => done({
        passes: passes.length,
        violations: violations.map(v => `${v.id}: ${v.help}\n` + v.nodes.slice(0, 5).map(n => '  ' + n.target + '\n    ' + n.failureSummary).join('\n')
          + (v.nodes.length > 5 ? `\n  and ${v.nodes.length - 5} more` : '')),
      }),
      error => done({ passes: 0, violations: [String(error)] }),
    );";

/// What axe-core finds.
#[track_caller]
fn violations(page: &Page) -> Vec<String> {
    if page.js("return typeof axe") != json!("object") {
        let axe = fs::read_to_string(variable("HATWRIGHT_AXE")).expect("axe-core");
        page.js(&axe);
    }
    // Colours that are still on their way to others would be measured in between.
    page.until("every transition to end", "document.getAnimations().every(a => a.playState === 'finished')");
    let found = page.js_later(RULES);
    assert!(found["passes"].as_u64() > Some(20), "the rules were run: {found:#}");
    serde_json::from_value(found["violations"].clone()).expect("texts")
}

/// What axe-core finds in light and dark, on a phone and a desktop, in each of some states of the page.
#[derive(Default)]
pub struct Found(Vec<String>);

impl Found {
    /// Looks at the page in one more state.
    #[track_caller]
    pub fn look(&mut self, page: &mut Page, state: &str) {
        for scheme in ["light", "dark"] {
            page.media("screen", &[("prefers-color-scheme", scheme)]);
            for screen in [Screen::PHONE, Screen::DESK] {
                page.resize(screen);
                for violation in violations(page) {
                    // The first of its kind is told in full.
                    let kind = violation.lines().next().unwrap_or_default().to_owned();
                    let known = self.0.iter().any(|known| known.contains(&kind));
                    let told = if known { kind } else { violation };
                    self.0.push(format!("{state}, {scheme}, {} wide: {told}", screen.width));
                }
            }
        }
        page.resize(Screen::PHONE);
    }

    /// Fails if anything was found.
    #[track_caller]
    pub fn is_nothing(&self) {
        assert!(self.0.is_empty(), "axe-core finds:\n{}", self.0.join("\n"));
    }
}

/// Opens every part of the page that can be open.
fn unfold(page: &Page) {
    for group in ["stretch-way", "band-stretch-way", "band-swatch-way", "layout", "closing"] {
        page.choose(group, 1);
    }
    page.js("document.querySelectorAll('details').forEach(d => d.open = true)");
    for id in ["use-weighed", "use-unravelled", "swatch-kept"] {
        page.click(&format!("#{id}"));
    }
}

#[test]
fn the_page_is_accessible() {
    on_page(Screen::PHONE, |page| {
        let mut found = Found(Vec::new());
        page.open();
        found.look(page, "the first visit");
        unfold(page);
        page.click("[data-stitches='60']");
        found.look(page, "every part open");
        found.is_nothing();
    });
}

#[test]
fn every_style_is_accessible() {
    on_page(Screen::PHONE, |page| {
        let mut found = Found(Vec::new());
        page.open();
        for style in 0..8 {
            page.choose("style", style);
            page.js("document.querySelectorAll('details').forEach(d => d.open = true)");
            found.look(page, &format!("style {style}"));
        }
        page.choose("head-way", 2);
        page.choose("style", 0);
        page.click("#begin");
        found.look(page, "a hat that is begun, for a head by dates");
        found.is_nothing();
    });
}

#[test]
fn the_page_is_accessible_when_something_is_wrong() {
    on_page(Screen::PHONE, |page| {
        let mut found = Found(Vec::new());
        page.before_every_page("Storage.prototype.setItem = () => { throw new DOMException('no room', 'QuotaExceededError') }");
        page.open_at("#1broken");
        page.fill("swatch-stitches", "x");
        page.fill("stripe-rows", "20");
        page.fill("stripe-rows-1", "20");
        page.until("the storage's trouble", "!!document.getElementById('storage-trouble')");
        assert!(page.has("#notice"), "the link's trouble is said, too");
        found.look(page, "errors");
        found.is_nothing();
    });
}

#[test]
fn the_dialogs_are_accessible() {
    on_page(Screen::PHONE, |page| {
        let mut found = Found(Vec::new());
        page.open();
        page.fill("hat-name", "First cap");
        page.is_saved();
        page.click("#open-shelf");
        page.press("Copy First cap");
        page.press("Delete First cap, copy");
        page.click("#hats summary");
        found.look(page, "the shelf");
        page.press("Close");
        page.click("#copy-link");
        page.until("the dialog's word", "document.getElementById('share-said').textContent");
        found.look(page, "the link");
        found.is_nothing();
    });
}

#[test]
fn the_breakdown_is_accessible() {
    on_page(Screen::PHONE, |page| {
        let mut found = Found(Vec::new());
        page.expect_complaint("RuntimeError: unreachable");
        page.open();
        page.js("setTimeout(() => dispatchEvent(new Event('hatwright-drill')))");
        page.until("the page to say so", "document.querySelector('.broken')?.checkVisibility()");
        found.look(page, "the breakdown");
        found.is_nothing();
    });
}

/// What has the keyboard, and whether that can be seen: by an outline of its own, of its box or of its label.
const FOCUS: &str = "
    const e = document.activeElement;
    const marks = [e, e.closest('.box'), e.nextElementSibling].filter(Boolean);
    return {
      id: e === document.body ? 'nothing' : e.id || e.getAttribute('aria-label') || e.textContent.trim(),
      seen: marks.some(m => getComputedStyle(m).outlineStyle !== 'none' && parseFloat(getComputedStyle(m).outlineWidth) >= 2),
    }";

#[test]
fn a_hat_is_made_by_the_keyboard_alone() {
    on_page(Screen::DESK, |page| {
        page.open();
        let mut order = Vec::new();
        for _ in 0..260 {
            page.keys(Key::Tab);
            let focus = page.js(FOCUS);
            let id = focus["id"].as_str().unwrap_or_default().to_owned();
            if id == "nothing" || order.first() == Some(&id) {
                break;
            }
            assert_eq!(focus["seen"], json!(true), "whether a person sees that the keyboard is at {id}");
            order.push(id);
        }
        let expected = [
            "open-shelf",
            "copy-link",
            "print",
            "hat-name",
            "units-0",
            "head-way-0",
            "age-years",
            "age-unit",
            "coverage-0",
            "ease",
            "swatch-way-0",
            "fabric",
            "swatch-stitches",
            "style-0",
            "begun-0",
            "way-0",
            "band-kind-0",
            "band-fabric",
            "band-height",
            "fold",
            "layout-0",
            "closing-0",
            "pom-pom-way-1",
            "hex-0",
            "colour-name-0",
            "hex-text-0",
            "yarn-name-0",
            "ball-yarn",
            "add-colour",
            "same-yarn",
            "stripe-rows",
            "add-band-stripe",
            "stripe-rounds",
            "add-body-stripe",
            "begin",
            "open-shop",
            "extra-0",
            "chance",
            "terms-0",
            "copy-pattern",
        ];
        let places: Vec<Option<usize>> = expected.iter().map(|id| order.iter().position(|o| o == id)).collect();
        assert!(places.iter().all(Option::is_some), "{expected:?} should all be reached by Tab: {order:?}");
        assert!(places.is_sorted(), "they should come in the order of the page: {order:?}");

        // Arrow keys choose, and the keyboard stays where it is.
        page.js("document.getElementById('head-way-0').focus()");
        page.keys(Key::Right);
        page.until("the field for a measured head", "!!document.getElementById('head-girth')");
        assert_eq!(page.focused(), "head-way-1");
        page.keys(Key::Tab);
        assert_eq!(page.focused(), "head-girth");
        page.keys("57");
        page.until_is("the stitches", "document.getElementById('answer-stitches').textContent", &json!("64"));

        // A dialog takes the keyboard, and gives it back.
        page.js("document.getElementById('open-shelf').focus()");
        page.keys(Key::Enter);
        page.until("the shelf", "document.getElementById('shelf').open");
        page.until("the keyboard to be in the shelf", "document.getElementById('shelf').contains(document.activeElement)");
        page.keys(Key::Escape);
        page.until("the shelf to close", "!document.getElementById('shelf').open");
        assert_eq!(page.focused(), "open-shelf");
    });
}

/// Whoever goes by the keyboard goes on from where they were.
#[test]
fn the_keyboard_keeps_its_place() {
    on_page(Screen::DESK, |page| {
        page.open();
        page.fill("hat-name", "First cap");
        page.is_saved();
        let strike = |page: &Page, css: &str, happened: &str| {
            page.js_with("document.querySelector(arguments[0]).focus()", vec![json!(css)]);
            page.keys(" ");
            page.until(&format!("what {css} does"), happened);
            // What was drawn anew takes the keyboard back a moment after it is there.
            page.until(
                &format!("the keyboard to be at {css} still"),
                &format!("document.activeElement === document.querySelector({})", json!(css)),
            );
        };
        strike(page, "[data-stitches='60']", "document.getElementById('answer-stitches').textContent === '60'");
        strike(page, "#add-colour", "!!document.getElementById('hex-2')");
        strike(page, "#add-band-stripe", "!!document.getElementById('stripe-rows-2')");
        strike(page, "#add-body-stripe", "!!document.getElementById('stripe-rounds-2')");
        strike(page, "#terms-1", "document.getElementById('pattern-text').textContent.includes('dc2tog')");
        strike(page, "#units-1", "document.getElementById('answer-yarn').textContent.includes('yd')");
        page.is_saved();
        page.click("#open-shelf");
        strike(page, "[data-act=copy]", "document.querySelectorAll('#hats input').length === 2");
    });
}

/// Everything to be hit by a thumb, with the box that answers to it. Links within a sentence have the room of their line.
const TARGETS: &str = "
    const box = e => e.closest('.tag') ?? e.closest('.box') ?? e;
    return [...document.querySelectorAll('button, input, select, summary, .bar a, .bar button, .go')]
      .filter(e => e.checkVisibility({ visibilityProperty: true }) && !e.classList.contains('hidden'))
      .map(e => [e.id || e.getAttribute('aria-label') || e.textContent.trim(), box(e).getBoundingClientRect()])
      .filter(([, box]) => box.width < 43.9 || box.height < 43.9)
      .map(([name, box]) => `${name}: ${box.width.toFixed(1)} × ${box.height.toFixed(1)}`)";

#[test]
fn every_target_is_large_enough_for_a_thumb() {
    on_page(Screen::PHONE, |page| {
        let mut small: Vec<Value> = Vec::new();
        let mut look = |page: &Page| small.extend(page.js(TARGETS).as_array().expect("a list").iter().cloned());
        page.open_at("#1broken");
        look(page);
        unfold(page);
        page.click("[data-stitches='60']");
        for style in 0..8 {
            page.choose("style", style);
            look(page);
        }
        page.choose("style", 0);
        page.choose("head-way", 2);
        page.fill("swatch-stitches", "x");
        look(page);
        page.fill("swatch-stitches", "12");
        page.is_saved();
        page.click("#open-shelf");
        page.press("Copy Rowing club, junior cap");
        page.press("Delete Rowing club, junior cap, copy");
        page.click("#hats summary");
        look(page);
        page.press("Close");
        page.click("#copy-link");
        page.until("the dialog", "document.getElementById('share').open");
        look(page);
        small.dedup();
        assert!(small.is_empty(), "smaller than 44 × 44: {small:#?}");
    });
}

#[test]
fn nothing_moves_for_those_who_asked_for_less_motion() {
    on_page(Screen::PHONE, |page| {
        page.media("screen", &[("prefers-reduced-motion", "reduce")]);
        page.open();
        let moving = page.js("return [...document.querySelectorAll('*')].filter(e => {
               const style = getComputedStyle(e);
               return style.transitionDuration.split(',').some(t => parseFloat(t) > 0) || style.animationName !== 'none'
                 || style.scrollBehavior === 'smooth';
             }).map(e => e.outerHTML.slice(0, 80))");
        assert_eq!(moving, json!([]));
        page.choose("layout", 1);
        page.click("#open-shelf");
        assert_eq!(page.js("return document.getAnimations().length"), json!(0));
    });
}

/// What changes is told to those who cannot see it.
#[test]
fn news_is_told_politely() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let live = page.js(
            "return ['standing', 'stuck-on', 'share-said'].map(id => document.getElementById(id).closest('[role=status]') !== null)",
        );
        assert_eq!(live, json!([true, true, true]));
        let named = page.js(
            "return [...document.querySelectorAll('.number .box input')].filter(f => !f.labels.length || !f.getAttribute('aria-describedby')).map(f => f.id)",
        );
        assert_eq!(named, json!([]), "each field has a label, and a place for what is wrong with it");
    });
}
