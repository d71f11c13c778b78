//! When the program breaks down: keep what can be kept, say so, offer the hat as a file.

use crate::dom;
use hatwright_words::page as say;
use std::cell::RefCell;
use std::panic::PanicHookInfo;

/// The hat on the bench as it would be kept, so that it can be saved without any part of the program that may be broken.
#[derive(Clone)]
pub struct Rescue {
    /// Its key in the storage.
    pub key: String,
    /// Its document.
    pub text: String,
    /// What the storage held under that key when it was last ours: anything else there is another window's, and stays.
    pub expected: Option<String>,
    /// Key and text of the settings that open it.
    pub settings: (String, String),
    /// It has changes that are not kept.
    pub waiting: bool,
}

thread_local! {
    static LATEST: RefCell<Option<Rescue>> = const { RefCell::new(None) };
}

/// Remembers the hat on the bench.
pub fn remember(rescue: Rescue) {
    LATEST.with(|latest| *latest.borrow_mut() = Some(rescue));
}

/// Installs the hook. A drill for the tests: the event `hatwright-drill` on the window breaks the program down on purpose.
pub fn install() {
    std::panic::set_hook(Box::new(broken));
    dom::listen(&dom::window(), "hatwright-drill", |_| panic!("a drill"));
}

/// Saves the hat, unless another window's would be overwritten.
fn save(rescue: &Rescue) -> bool {
    let Ok(Some(storage)) = dom::window().local_storage() else { return false };
    let there = storage.get_item(&rescue.key).ok().flatten();
    if there != rescue.expected || storage.set_item(&rescue.key, &rescue.text).is_err() {
        return false;
    }
    // Not being able to note which hat is open loses nothing.
    let _ = storage.set_item(&rescue.settings.0, &rescue.settings.1);
    true
}

fn broken(info: &PanicHookInfo<'_>) {
    let latest = LATEST.with(|latest| latest.try_borrow().ok().and_then(|l| l.clone()));
    let said = match &latest {
        Some(rescue) if rescue.waiting => {
            if save(rescue) {
                say::broken_saved_now()
            } else {
                say::broken_not_saved()
            }
        }
        Some(rescue) if rescue.expected.is_some() => say::broken_saved(),
        _ => say::broken_fresh(),
    };
    let Some(document) = dom::window().document() else { return };
    if document.query_selector(".broken").ok().flatten().is_some() {
        return;
    }
    let Some(body) = document.body() else { return };
    let Ok(sheet) = document.create_element("div") else { return };
    sheet.set_class_name("broken");
    let _ = sheet.set_attribute("role", "alertdialog");
    let _ = sheet.set_attribute("aria-label", say::broken_title());
    let line = |tag: &str, text: &str| {
        let made = document.create_element(tag).ok()?;
        made.set_text_content(Some(text));
        sheet.append_child(&made).ok().map(|_| made)
    };
    line("h2", say::broken_title());
    line("p", &say::broken(said));
    if let Some(again) = line("a", say::reload()) {
        let _ = again.set_attribute("href", "");
        let _ = again.set_attribute("class", "go");
    }
    let address = latest.and_then(|rescue| dom::text_address(&rescue.text, "application/json"));
    if let Some((file, address)) = address.and_then(|a| Some((line("a", say::save_file())?, a))) {
        let _ = file.set_attribute("href", &address);
        let _ = file.set_attribute("download", "hat.json");
    }
    line("small", &format!("Hatwright {}: {info}", env!("CARGO_PKG_VERSION")));
    let _ = body.append_child(&sheet);
}
