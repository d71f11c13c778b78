//! The few things that the page asks of the browser itself.

use hatwright_words::{Language, spoken};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;
use web_sys::js_sys;

/// The window. A page always has one.
pub fn window() -> web_sys::Window {
    leptos::prelude::window()
}

/// Milliseconds since 1970 by the device's clock.
pub fn now_ms() -> u64 {
    js_sys::Date::now() as u64
}

/// The day here and now.
pub fn today() -> hatwright_sizing::Day {
    let now = js_sys::Date::new_0();
    let here_ms = now.get_time() - now.get_timezone_offset() * 60_000.0;
    hatwright_sizing::Day((here_ms / 86_400_000.0).floor() as i32)
}

/// A day as people here write it; as those of its language do where another than English is spoken.
pub fn day(ms: u64) -> String {
    let locale = if spoken() == Language::English { "default" } else { spoken().tag() };
    js_sys::Date::new(&JsValue::from_f64(ms as f64)).to_locale_date_string(locale, &JsValue::UNDEFINED).into()
}

/// 64 random bits, from the browser's generator or, in a browser that withholds it, from the clock.
pub fn random_bits() -> u64 {
    let mut bytes = [0_u8; 8];
    let drawn = window().crypto().and_then(|c| c.get_random_values_with_u8_array(&mut bytes));
    match drawn {
        Ok(_) => u64::from_le_bytes(bytes),
        Err(_) => now_ms() << 20 ^ (js_sys::Math::random() * 1e9) as u64,
    }
}

/// Runs something once, after so many milliseconds; gives the timer's number.
pub fn after(ms: i32, run: impl FnOnce() + 'static) -> Option<i32> {
    let run = Closure::once_into_js(run);
    window().set_timeout_with_callback_and_timeout_and_arguments_0(run.unchecked_ref(), ms).ok()
}

/// Forgets a timer.
pub fn cancel(timer: i32) {
    window().clear_timeout_with_handle(timer);
}

/// Listens to an event for as long as the page lives.
pub fn listen(target: &web_sys::EventTarget, event: &str, run: impl FnMut(web_sys::Event) + 'static) {
    let run = Closure::<dyn FnMut(web_sys::Event)>::new(run);
    let listening = target.add_event_listener_with_callback(event, run.as_ref().unchecked_ref());
    debug_assert!(listening.is_ok());
    run.forget();
}

/// The element with an id.
pub fn element(id: &str) -> Option<web_sys::HtmlElement> {
    window().document()?.get_element_by_id(id)?.dyn_into().ok()
}

/// Puts the focus on an element once the page was redrawn: the one that had it may have been replaced by its like.
pub fn refocus(selector: &str) {
    let selector = selector.to_owned();
    after(0, move || {
        let found = window().document().and_then(|d| d.query_selector(&selector).ok().flatten());
        if let Some(element) = found.and_then(|e| e.dyn_into::<web_sys::HtmlElement>().ok()) {
            let _ = element.focus();
        }
    });
}

/// An address from which a text can be downloaded.
pub fn text_address(text: &str, kind: &str) -> Option<String> {
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let options = web_sys::BlobPropertyBag::new();
    options.set_type(kind);
    let blob = web_sys::Blob::new_with_str_sequence_and_options(&parts, &options).ok()?;
    web_sys::Url::create_object_url_with_blob(&blob).ok()
}

/// Gives the person a text as a file.
pub fn download(name: &str, text: &str, kind: &str) {
    let Some(address) = text_address(text, kind) else { return };
    offer(name, &address);
    after(10_000, move || {
        let _ = web_sys::Url::revoke_object_url(&address);
    });
}

/// Gives the person what is at an address as a file.
pub fn offer(name: &str, address: &str) {
    let link = window().document().and_then(|d| d.create_element("a").ok());
    let Some(link) = link.and_then(|l| l.dyn_into::<web_sys::HtmlAnchorElement>().ok()) else { return };
    link.set_href(address);
    link.set_download(name);
    link.click();
}

/// Puts a text on the clipboard and says whether that worked.
pub fn copy(text: &str, done: impl FnOnce(bool) + 'static) {
    let navigator = window().navigator();
    // An insecure page has no clipboard at all, whatever the bindings promise.
    let there = js_sys::Reflect::get(&navigator, &JsValue::from_str("clipboard")).is_ok_and(|c| !c.is_undefined());
    if !there {
        done(false);
        return;
    }
    let promise = navigator.clipboard().write_text(text);
    leptos::task::spawn_local(async move {
        done(wasm_bindgen_futures::JsFuture::from(promise).await.is_ok());
    });
}
