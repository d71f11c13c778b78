//! When the program breaks down: the last edit is not lost, and the page says what happened.

use hatwright_project::Project;
use serde_json::json;

use crate::expected::{BY_LEAVING_ONLY, example, measured};
use crate::page::{Page, Screen};
use crate::stage::on_page;

/// Edits, and breaks the program down before the edit is saved by itself.
fn break_down(page: &mut Page) -> Project {
    // What the browser says of a program that ends by a trap.
    page.expect_complaint("RuntimeError: unreachable");
    page.before_every_page(BY_LEAVING_ONLY);
    page.open();
    page.choose("head-way", 1);
    page.fill("head-girth", "54.5");
    let mut hat = example();
    measured(&mut hat, 54_500);
    page.shows(&hat);
    assert_eq!(page.kept(), [], "nothing is kept yet, or the breakdown proves nothing");
    page.js("setTimeout(() => dispatchEvent(new Event('hatwright-drill')))");
    page.until("the page to say so", "document.querySelector('.broken')?.checkVisibility()");
    assert_eq!(page.js("return document.querySelector('.broken').getAttribute('role')"), json!("alertdialog"));
    hat
}

#[test]
fn the_last_edit_is_saved() {
    on_page(Screen::PHONE, |page| {
        let hat = break_down(page);
        let said = page.text(".broken");
        assert!(said.contains("Hatwright has stopped") && said.contains("Your hat was saved."), "{said}");
        assert!(said.contains(&format!("Hatwright {}", env!("CARGO_PKG_VERSION"))), "the version is said: {said}");
        let file = page.download("hat.json", || page.press("Save the hat as a file"));
        assert_eq!(hatwright_project::open(&file).expect("the file of a hat").spec, hat.spec);

        page.press("Reload the page");
        page.until("the page to be back", "!document.querySelector('.broken')");
        page.has_started();
        page.shows(&hat);
        page.is_saved();
    });
}

#[test]
fn an_edit_that_cannot_be_saved_is_offered_as_a_file() {
    on_page(Screen::PHONE, |page| {
        page.before_every_page("Storage.prototype.setItem = () => { throw new DOMException('no room', 'QuotaExceededError') }");
        let hat = break_down(page);
        let said = page.text(".broken");
        assert!(said.contains("Your hat could not be saved: keep it as a file now."), "{said}");
        let file = page.download("hat.json", || page.press("Save the hat as a file"));
        assert_eq!(hatwright_project::open(&file).expect("the file of a hat").spec, hat.spec);
    });
}
