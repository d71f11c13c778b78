//! When the program breaks down: keep what can be kept, say so, offer the hat as a file.

use crate::dom;
use std::cell::RefCell;
use std::panic::PanicHookInfo;

thread_local! {
    /// The document as it would be saved, and the settings that open it: keys and texts.
    static LATEST: RefCell<Option<[(String, String); 2]>> = const { RefCell::new(None) };
}

/// Remembers the document, so that it can be saved without any part of the program that may be broken.
pub fn remember(document: (String, String), settings: (String, String)) {
    LATEST.with(|latest| *latest.borrow_mut() = Some([document, settings]));
}

/// The document is kept: there is nothing left to save.
pub fn forget() {
    LATEST.with(|latest| *latest.borrow_mut() = None);
}

/// Installs the hook. A drill for the tests: the event `hatwright-drill` on the window breaks the program down on purpose.
pub fn install() {
    std::panic::set_hook(Box::new(broken));
    dom::listen(&dom::window(), "hatwright-drill", |_| panic!("a drill"));
}

fn broken(info: &PanicHookInfo<'_>) {
    let latest = LATEST.with(|latest| latest.try_borrow().ok().and_then(|l| l.clone()));
    let kept = latest.as_ref().is_none_or(|[(key, text), (settings, open)]| {
        let storage = dom::window().local_storage().ok().flatten();
        storage.is_some_and(|s| {
            let kept = s.set_item(key, text).is_ok();
            let _ = s.set_item(settings, open);
            kept
        })
    });
    let said = if kept { "Your hat was saved." } else { "Your hat could not be saved: keep it as a file now." };
    let Some(document) = dom::window().document() else { return };
    let Some(body) = document.body() else { return };
    let Ok(sheet) = document.create_element("div") else { return };
    sheet.set_class_name("broken");
    let _ = sheet.set_attribute("role", "alertdialog");
    let _ = sheet.set_attribute("aria-label", "Hatwright has stopped");
    let line = |tag: &str, text: &str| {
        let made = document.create_element(tag).ok()?;
        made.set_text_content(Some(text));
        sheet.append_child(&made).ok().map(|_| made)
    };
    line("h2", "Hatwright has stopped");
    line("p", &format!("Something in the program went wrong. {said} Reload the page to go on."));
    if let Some(again) = line("a", "Reload the page") {
        let _ = again.set_attribute("href", "");
        let _ = again.set_attribute("class", "go");
    }
    let address = latest.and_then(|[(_, text), _]| dom::text_address(&text, "application/json"));
    if let Some((file, address)) = address.and_then(|a| Some((line("a", "Save the hat as a file")?, a))) {
        let _ = file.set_attribute("href", &address);
        let _ = file.set_attribute("download", "hat.json");
    }
    line("small", &format!("Hatwright {}: {info}", env!("CARGO_PKG_VERSION")));
    let _ = body.append_child(&sheet);
}
