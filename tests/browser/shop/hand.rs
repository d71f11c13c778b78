//! One hand, the sun, the keyboard, no network.

use serde_json::{Value, json};
use thirtyfour::Key;

use super::{cap, enter, shop_for, shows, striped, turn};
use crate::access::Found;
use crate::page::{Page, Screen};
use crate::stage::on_page;

/// What has to be scrolled, or is not on the screen.
const HIDDEN: &str = "
    const inside = e => { const b = e.getBoundingClientRect(); return b.top >= 0 && b.left >= 0 && b.right <= innerWidth && b.bottom <= innerHeight };
    const all = [...document.querySelectorAll('#shop, #shop *')].filter(e => e.checkVisibility() && !e.closest('.hidden'));
    const scrolled = all.filter(e => getComputedStyle(e).overflowY !== 'visible' && e.clientHeight > 0
      && getComputedStyle(e).overflowY !== 'hidden' && (e.scrollHeight > e.clientHeight || e.scrollWidth > e.clientWidth));
    const outside = all.filter(e => !inside(e));
    const cut = all.filter(e => e.matches('.name, .balls, .need, .left, .price') && e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0);
    const hidden = all.filter(e => {
      if (!e.matches('#shop-lines .name')) return false;
      const [name, room] = [e, e.parentElement].map(e => e.getBoundingClientRect());
      return name.top < room.top - 1 || name.bottom > room.bottom + 1;
    });
    return [...scrolled, ...outside, ...cut, ...hidden].map(e => e.outerHTML.slice(0, 100))";

#[test]
fn everything_is_on_one_screen() {
    on_page(Screen::PHONE, |page| {
        for count in 1..=6 {
            shop_for(page, &striped(count), 0);
            page.until_is("the rows", "document.querySelectorAll('#shop-lines > li').length", &json!(count));
            assert_eq!(page.js(HIDDEN), json!([]), "{count} colours");
        }
    });
}

/// Narrow and wide screens are never scrolled sideways.
#[test]
fn no_view_is_scrolled_sideways() {
    on_page(Screen::PHONE, |page| {
        shop_for(page, &striped(6), 0);
        page.click("#shop-tab-2");
        page.click("#instead-begin");
        page.click("#instead-swatch");
        for (width, height) in [(320, 640), (390, 664), (844, 390), (820, 1180), (1440, 900)] {
            page.resize(Screen { width, height });
            for view in 0..4 {
                turn(page, view);
                let wide = page.js("return [...document.querySelectorAll('#shop, .shop-body, .shop-scroll')]
                       .filter(e => e.scrollWidth > e.clientWidth).map(e => e.id || e.className)");
                assert_eq!(wide, json!([]), "view {view} at {width}");
            }
        }
    });
}

/// Everything that can be hit, with its box.
const SMALL: &str = "
    const box = e => (e.closest('.tag') ?? e.closest('.box') ?? e).getBoundingClientRect();
    return [...document.querySelectorAll('#shop :is(button, input, select, summary)')].filter(e => e.checkVisibility())
      .map(e => [e.id || e.textContent, box(e)]).filter(([, b]) => b.width < 44 || b.height < 44)
      .map(([name, b]) => `${name}: ${b.width.toFixed(1)} × ${b.height.toFixed(1)}`)";

/// Texts of less contrast than 7 : 1 to what is under them (WCAG 2.2, 1.4.6).
const PALE: &str = r"
    const parts = c => c.match(/[\d.]+/g).map(Number);
    const light = c => { const [r, g, b] = parts(c).map(v => v / 255).map(v => v <= .04045 ? v / 12.92 : ((v + .055) / 1.055) ** 2.4);
      return .2126 * r + .7152 * g + .0722 * b };
    const under = e => { for (; e; e = e.parentElement) { const c = getComputedStyle(e).backgroundColor; if ((parts(c)[3] ?? 1) === 1) return c } return 'rgb(255, 255, 255)' };
    return [...document.querySelectorAll('#shop *')]
      .filter(e => e.checkVisibility({ opacityProperty: true }) && !e.closest('svg') && (e.matches('input, select') || [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim())))
      .map(e => { const [a, b] = [light(getComputedStyle(e).color), light(under(e))].sort((a, b) => b - a); return [e, (a + .05) / (b + .05)] })
      .filter(([, ratio]) => ratio < 7).map(([e, ratio]) => `${ratio.toFixed(1)}: ${e.outerHTML.slice(0, 90)}`)";

/// Goes through all views, with all that can be open in them and with something wrong.
fn through(page: &mut Page, look: &mut dyn FnMut(&mut Page, &str)) {
    shop_for(page, &cap(), 0);
    look(page, "this hat");
    turn(page, 1);
    page.fill("have-0", "80 g");
    page.until("an offer", "!!document.querySelector('[data-offer]') && !document.querySelector('.late')");
    look(page, "only this much");
    page.click("[data-offer]");
    page.until("the way back", "!!document.getElementById('undo-offer')");
    page.fill("have-1", "much");
    look(page, "an offer that was taken");
    turn(page, 2);
    look(page, "no other yarn");
    page.click("#instead-begin");
    page.click("#instead-swatch");
    page.fill("instead-stitches", "x");
    look(page, "another yarn");
    turn(page, 3);
    page.click("#several input[type=checkbox]");
    let copies = page.js("return document.querySelector('[data-copies]').id");
    page.fill(copies.as_str().expect("a field of copies"), "0");
    look(page, "several hats");
}

#[test]
fn every_target_is_large_enough_and_every_text_dark_enough() {
    on_page(Screen::PHONE, |page| {
        let mut wrong: Vec<String> = Vec::new();
        through(page, &mut |page, state| {
            for scheme in ["light", "dark"] {
                page.media("screen", &[("prefers-color-scheme", scheme)]);
                page.until("every transition to end", "document.getAnimations().every(a => a.playState === 'finished')");
                for script in [SMALL, PALE] {
                    let found: Vec<String> = serde_json::from_value(page.js(script)).expect("texts");
                    wrong.extend(found.into_iter().map(|found| format!("{state}, {scheme}: {found}")));
                }
                let paper = page.js("return getComputedStyle(document.getElementById('shop')).backgroundColor");
                assert_eq!(paper, json!("rgb(255, 255, 255)"), "{scheme}");
            }
        });
        assert!(wrong.is_empty(), "{wrong:#?}");
    });
}

#[test]
fn the_shop_is_accessible() {
    on_page(Screen::PHONE, |page| {
        let mut found = Found::default();
        through(page, &mut |page, state| found.look(page, &format!("the shop, {state}")));
        found.is_nothing();
    });
}

/// Only the sum is told, politely.
#[test]
fn the_shop_does_not_chatter() {
    on_page(Screen::PHONE, |page| {
        shop_for(page, &cap(), 0);
        let live = "return [...document.querySelectorAll('#shop :is([role=status], [role=alert], [aria-live], output)')]
            .filter(e => e.getAttribute('aria-live') !== 'off').map(e => e.id)";
        assert_eq!(page.js(live), json!(["shop-sum"]));
        for (view, told) in [(1, json!([])), (2, json!([])), (3, json!([]))] {
            turn(page, view);
            assert_eq!(page.js(live), told, "view {view}");
        }
    });
}

#[test]
fn the_shop_is_kept_by_the_keyboard_alone() {
    on_page(Screen::DESK, |page| {
        page.open_at(&format!("#{}", hatwright_project::to_link(&cap())));
        page.js("document.getElementById('open-shop').focus()");
        page.keys(Key::Enter);
        page.until("the shop", "document.getElementById('shop').open");
        assert_eq!(page.focused(), "shop-title", "the heading is read first");
        let mut order = Vec::new();
        for _ in 0..12 {
            page.keys(Key::Tab);
            order.push(page.focused());
        }
        let expected = [
            "shop-close",
            "owned-less-0",
            "owned-more-0",
            "owned-less-1",
            "owned-more-1",
            "shop-copy",
            "shop-print",
            "shop-tab-0",
        ];
        let places: Vec<Option<usize>> = expected.iter().map(|id| order.iter().position(|o| o == id)).collect();
        assert!(places.iter().all(Option::is_some) && places.is_sorted(), "{expected:?} in {order:?}");

        page.js("document.getElementById('owned-more-0').focus()");
        page.keys(" ");
        let mut hat = cap();
        hat.spec.balls[0].owned = hatwright_sizing::Count::whole(1);
        shows(page, &hat);

        page.js("document.getElementById('shop-tab-0').focus()");
        page.keys(Key::Right);
        page.until("the second view", "!!document.getElementById('offers')");
        assert_eq!(page.focused(), "shop-tab-1");
        page.js("document.getElementById('have-0').focus()");
        page.keys(Key::Control + "a" + Key::Null);
        page.keys("80 g");
        page.until("an offer", "!!document.querySelector('[data-offer]') && !document.querySelector('.late')");
        page.js("document.querySelector('[data-offer]').focus()");
        page.keys(Key::Enter);
        page.until_is("the keyboard", "document.activeElement.id", &json!("undo-offer"));
        page.keys(" ");
        page.until_is("the keyboard", "document.activeElement.id", &json!("shop-title"));

        page.keys(Key::Escape);
        page.until("the shop to close", "!document.getElementById('shop').open");
        assert_eq!(page.focused(), "open-shop", "what opened it has the keyboard back");
        page.keys(Key::Enter);
        page.until("the shop", "document.getElementById('shop').open");
        page.click("#shop-close");
        page.until("the shop to close", "!document.getElementById('shop').open");
        assert_eq!(page.focused(), "open-shop");
    });
}

/// Nothing is worked out for the shop while it is closed.
#[test]
fn a_closed_shop_is_empty() {
    on_page(Screen::PHONE, |page| {
        shop_for(page, &cap(), 1);
        page.click("#shop-close");
        page.until_is("the shop", "document.querySelector('.shop-body').childElementCount", &json!(0));
        enter(page, 0);
        shows(page, &cap());
    });
}

#[test]
fn the_shop_works_without_a_network() {
    on_page(Screen::PHONE, |page| {
        page.open_at(&format!("#{}", hatwright_project::to_link(&cap())));
        page.listen();
        let before = page.requests;
        page.command("Network.enable", json!({}));
        let cut = json!({ "offline": true, "latency": 0, "downloadThroughput": 0, "uploadThroughput": 0 });
        page.command("Network.emulateNetworkConditions", cut);
        page.expect_complaint("ERR_INTERNET_DISCONNECTED");
        let there = page
            .js_later("fetch(location.pathname + '?' + Math.random()).then(() => arguments[0](true), () => arguments[0](false))");
        assert_eq!(there, Value::Bool(false), "there is no network");

        enter(page, 0);
        page.click("#owned-more-0");
        let mut hat = cap();
        hat.spec.balls[0].owned = hatwright_sizing::Count::whole(1);
        shows(page, &hat);
        turn(page, 1);
        page.fill("have-0", "70 m");
        page.until("an offer", "!!document.querySelector('[data-offer]') && !document.querySelector('.late')");
        turn(page, 2);
        page.click("#instead-begin");
        page.fill("instead-yarn", "65");
        page.until("the comparison", "document.querySelectorAll('#swap tbody tr').length > 5");
        turn(page, 3);
        page.click("#several input[type=checkbox]");
        page.until("the list", "document.querySelectorAll('#list li').length === 2");
        page.click("#shop-close");
        page.is_saved();
        page.listen();
        assert_eq!(page.requests - before, 1, "nothing was asked of anyone, but for the test's own try");
    });
}
