//! From the address to a page that works, or to a sentence that says why not.

use serde_json::{Value, json};

use crate::page::{Page, Screen};
use crate::server::Site;
use crate::stage::{on_page, on_site};

/// The sentence of `css`, if a person can see it.
fn seen(page: &Page, css: &str) -> String {
    let text = format!("(e => e?.checkVisibility() && e.innerText.trim())(document.querySelector({}))", json!(css));
    page.until(css, &text).as_str().expect("a text").to_owned()
}

/// Counts the layout's shifts from the first paint on, and notes when the program started.
const WATCH: &str = "
    window.shifts = [];
    new PerformanceObserver(list => shifts.push(...list.getEntries().map(entry => [
      entry.value, entry.sources.map(s => s.node?.className || s.node?.nodeName || '').join(' '),
    ]))).observe({ type: 'layout-shift', buffered: true });
    addEventListener('TrunkApplicationStarted', () => { window.startedAt = performance.now() });
    // Where the first screen has what the page will have: the last look before the program takes its place.
    window.places = list => Object.fromEntries(list.map(([name, css]) => {
      const box = document.querySelector(css)?.getBoundingClientRect();
      return [name, box && [box.left, box.top].map(Math.round)];
    }));
    const sketch = SKETCH;
    const look = () => {
      if (window.startedAt) return;
      if (document.querySelector('.sketch')) window.before = places(sketch);
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);";

/// The parts of the first screen, and the parts of the page in whose places they stand.
const PARTS: [(&str, &str, &str); 10] = [
    ("name", ".top .name", ".top .name"),
    ("purpose", ".top .purpose", ".top .purpose"),
    ("buttons", ".top .acts > *", ".top .acts > *"),
    ("title", ".sketch-title", ".plan > .title"),
    ("stitches", ".sketch-answer b", ".answer b"),
    ("fit", ".sketch-answer .fit b", ".answer .fit b"),
    ("picture", ".sketch-hat svg", ".hat svg"),
    ("head", ".sketch-ask h2", ".ask h2"),
    ("first field", ".sketch-pills", ".ask .tags"),
    ("rounds", ".sketch-card h2", ".rounds h2"),
];

#[test]
fn without_scripts_the_page_says_what_it_needs() {
    on_page(Screen::PHONE, |page| {
        page.command("Emulation.setScriptExecutionDisabled", json!({ "value": true }));
        page.go(page.url());
        let said = seen(page, "noscript p");
        assert!(said.contains("JavaScript and WebAssembly") && said.contains("Chrome or Edge 104"), "{said}");
        assert_eq!(seen(page, "h1"), "Hatwright");
        assert!(!page.has("#answer-stitches"), "no script has run");
        let waiting =
            page.js("return [...document.querySelectorAll('.wait')].some(e => e.checkVisibility({ visibilityProperty: true }))");
        assert_eq!(waiting, json!(false), "the page does not promise what cannot come");
    });
}

#[test]
fn without_its_program_the_page_says_so() {
    let site = Site::without_wasm();
    on_site(&site, Screen::PHONE, |page| {
        page.expect_complaint("404");
        page.go(page.url());
        let said = seen(page, "#trouble");
        assert!(said.starts_with("Hatwright could not start"), "{said}");
        assert!(said.contains("Chrome or Edge 104, Firefox 102 or Safari 16.4"), "{said}");
        assert_eq!(page.js("return document.getElementById('trouble').getAttribute('role')"), json!("alert"));
    });
}

#[test]
fn a_browser_without_webassembly_is_said_to_be_too_old() {
    on_page(Screen::PHONE, |page| {
        page.expect_complaint("WebAssembly is not defined");
        page.before_every_page("delete window.WebAssembly");
        page.go(page.url());
        let said = seen(page, "#trouble");
        assert!(said.starts_with("This browser is too old for Hatwright."), "{said}");
    });
}

/// The minimum browsers are said where scripts are switched off, where the program cannot start, and at the foot of the page.
#[test]
fn the_page_names_the_same_browsers_everywhere() {
    on_page(Screen::DESK, |page| {
        page.open();
        let foot = page.text(".foot");
        let whole = page.js_later("fetch('').then(answer => answer.text()).then(arguments[0])");
        let whole = whole.as_str().expect("the page's own text");
        let (_, without_scripts) = whole.split_once("<noscript>").expect("a sentence for a browser without scripts");
        let without_scripts = without_scripts.split_once("</noscript>").expect("its end").0;
        for name in ["Edge ", "Firefox ", "Safari "] {
            let version = |text: &str| {
                let (_, after) = text.split_once(name).unwrap_or_else(|| panic!("{name} is not named in {text}"));
                after.split([',', ' ']).next().unwrap_or_default().trim_end_matches('.').to_owned()
            };
            assert_eq!(version(&foot), version(without_scripts), "{name}at the foot of the page, and without scripts");
        }
        assert!(foot.contains(&format!("Hatwright {}", env!("CARGO_PKG_VERSION"))), "the version is on the page: {foot}");
    });
}

/// The first screen is the page's own HTML: it is there before the program, and the program takes its place without a jump.
#[test]
fn the_first_screen_stays_where_it_is() {
    let mut wrong: Vec<String> = Vec::new();
    for screen in [Screen::PHONE, Screen { width: 820, height: 1180 }, Screen::DESK] {
        on_page(screen, |page| {
            // As slow as a phone's network, so that the first screen is painted long before the program has come.
            let slow = json!({ "offline": false, "latency": 40, "downloadThroughput": 400_000, "uploadThroughput": 100_000 });
            page.command("Network.enable", json!({}));
            page.command("Network.emulateNetworkConditions", slow);
            let sketch: Vec<(&str, &str)> = PARTS.iter().map(|(name, first, _)| (*name, *first)).collect();
            page.before_every_page(&WATCH.replace("SKETCH", &json!(sketch).to_string()));
            page.open();
            // Two frames, for a shift is known when it has been painted.
            page.js_later("requestAnimationFrame(() => requestAnimationFrame(arguments[0]))");
            let painted = page.until("a paint", "performance.getEntriesByName('first-contentful-paint')[0]?.startTime");
            let started = page.until("the start", "window.startedAt");
            assert!(painted.as_f64() < started.as_f64(), "painted at {painted} ms, before the program started at {started} ms");
            let shifts = page.js("return shifts");
            let sum = page.js("return shifts.reduce((sum, [value]) => sum + value, 0)").as_f64().expect("a number");
            assert!(sum < 0.02, "at {screen:?} the page jumps by {sum}: {shifts:#}");

            // Parts that are exchanged are no shift to the browser, but to the eye they are.
            let parts: Vec<(&str, &str)> = PARTS.iter().map(|(name, _, then)| (*name, *then)).collect();
            let (before, after) = (page.js("return window.before"), page.js(&format!("return places({})", json!(parts))));
            let mut jumps = Vec::new();
            for (part, ..) in PARTS {
                let at =
                    |places: &Value, axis: usize| places[part][axis].as_i64().unwrap_or_else(|| panic!("{part} in {places}"));
                let (from, to) = (&before, &after);
                // The upper two thirds, where the eye rests while the page comes.
                let in_sight = at(from, 1) * 3 < i64::from(screen.height) * 2;
                let sideways = ["name", "purpose", "buttons"].contains(&part) && at(from, 0).abs_diff(at(to, 0)) > 4;
                if in_sight && (sideways || at(from, 1).abs_diff(at(to, 1)) > 4) {
                    jumps.push(format!("{part} from {} to {}", from[part], to[part]));
                }
            }
            wrong.extend((!jumps.is_empty()).then(|| format!("{screen:?}: {}", jumps.join("; "))));
        });
    }
    assert!(wrong.is_empty(), "parts of the first screen jump when the program takes its place:\n{}", wrong.join("\n"));
}

#[test]
fn the_first_screen_has_the_title_before_the_program() {
    let site = Site::without_wasm();
    on_site(&site, Screen::PHONE, |page| {
        page.expect_complaint("404");
        page.before_every_page("addEventListener('DOMContentLoaded', () => { window.first = document.body.innerText })");
        page.go(page.url());
        let first = page.until("the text of the first screen", "window.first");
        let first = first.as_str().expect("a text");
        for words in ["Hatwright", "From a head and a crochet swatch to a hat that fits", "Head", "Swatch", "Colours"] {
            assert!(first.contains(words), "{words} should be in the first screen:\n{first}");
        }
        let fields = page.js("return document.querySelectorAll('input, button, select').length");
        assert_eq!(fields, json!(0), "nothing can be typed that would be lost when the program starts");
    });
}

/// Every request is checked after every test; these are the page's own promises.
#[test]
fn the_page_promises_to_ask_no_other_host() {
    on_page(Screen::DESK, |page| {
        page.open();
        assert!(page.url().contains("/some/folder/"), "the page is served from below a folder");
        let metas = page
            .js("return [...document.querySelectorAll('meta[http-equiv=\"Content-Security-Policy\" i]')].map(m => m.content)");
        let metas: Vec<String> = serde_json::from_value(metas).expect("texts");
        assert_eq!(metas.len(), 1, "one policy: {metas:?}");
        let policy = &metas[0];
        assert!(policy.contains("default-src 'none'") || policy.contains("default-src 'self'"), "{policy}");
        assert!(policy.contains("'wasm-unsafe-eval'"), "{policy}");
        for wide in ["'unsafe-inline'", "'unsafe-eval'", "http:", "https:", "*"] {
            assert!(!policy.contains(wide), "{wide} in {policy}");
        }
        let loaded = page.js("return performance.getEntriesByType('resource').map(e => e.name)");
        let loaded: Vec<String> = serde_json::from_value(loaded).expect("addresses");
        assert!(loaded.iter().any(|address| address.contains("_bg.wasm")), "{loaded:?}");
        for address in &loaded {
            assert!(address.starts_with(page.url()), "{address} is not below {}", page.url());
        }
        // The policy is not only written but kept: a script from elsewhere is refused before it is asked for.
        let refused = page.js_later(
            "const done = arguments[0];
             addEventListener('securitypolicyviolation', event => done(event.effectiveDirective), { once: true });
             const script = document.createElement('script');
             script.textContent = 'window.intruder = 1';
             document.head.append(script);",
        );
        assert_eq!(refused, json!("script-src-elem"));
        assert_eq!(page.js("return window.intruder ?? null"), json!(null));
        page.expect_complaint("script-src");
    });
}
