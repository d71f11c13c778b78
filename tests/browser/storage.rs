//! A browser that keeps nothing, or has no more room: the page says so, and nothing on the screen is lost.

use hatwright_project::{Project, StoreError};
use serde_json::json;

use crate::expected::{example, measured};
use crate::page::{Page, Screen};
use crate::stage::on_page;

const NO_STORAGE: &str = "
    Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('refused', 'SecurityError') } });";

/// Full until the test says otherwise.
const FULL: &str = "
    const put = Storage.prototype.setItem;
    Storage.prototype.setItem = function (key, text) {
      if (window.roomAgain) return put.call(this, key, text);
      throw new DOMException('no room', 'QuotaExceededError');
    };";

/// Decides on a hat that cannot be kept, and checks what the page says of that.
fn decide(page: &Page, trouble: &StoreError) -> Project {
    page.open();
    page.shows(&example());
    page.choose("head-way", 1);
    page.fill("head-girth", "54.5");
    page.fill("hat-name", "Race-day cap");
    let mut hat = Project { name: "Race-day cap".to_owned(), ..example() };
    measured(&mut hat, 54_500);
    page.until("the page to say so", "!!document.getElementById('storage-trouble')");
    page.until_is("the hat's standing", "document.getElementById('standing').textContent", &json!("Not saved"));
    assert_eq!(page.text("#storage-trouble p"), trouble.to_string());
    page.shows(&hat);
    hat
}

/// The hat can be had as a file, and the file holds it.
fn rescue(page: &Page, hat: &Project) {
    let text = page.download("race-day-cap.json", || page.press("Save the hat as a file"));
    let saved = hatwright_project::open(&text).expect("the file of a hat");
    assert_eq!((&saved.spec, &saved.name, &saved.colours), (&hat.spec, &hat.name, &hat.colours));
}

#[test]
fn a_browser_without_storage_is_said_to_be_so() {
    on_page(Screen::PHONE, |page| {
        page.before_every_page(NO_STORAGE);
        let hat = decide(page, &StoreError::Absent);
        rescue(page, &hat);
        // The shelf has nothing to show, and says why.
        page.click("#open-shelf");
        page.until_is("the shelf's word", "document.getElementById('hats').textContent", &json!(StoreError::Absent.to_string()));
        page.press("Close");
        page.shows(&hat);
    });
}

#[test]
fn a_full_storage_is_said_to_be_so_and_tried_again() {
    on_page(Screen::PHONE, |page| {
        page.before_every_page(FULL);
        let hat = decide(page, &StoreError::Full);
        rescue(page, &hat);
        assert_eq!(page.kept(), []);

        page.press("Try again");
        assert_eq!(page.text("#standing"), "Not saved", "there still is no room");
        page.js("window.roomAgain = true");
        page.press("Try again");
        page.is_saved();
        assert!(!page.has("#storage-trouble"), "nothing is wrong any more");
        assert_eq!(page.kept_hats()[0].spec, hat.spec);
    });
}

#[test]
fn what_cannot_be_read_is_set_aside_untouched() {
    on_page(Screen::DESK, |page| {
        page.open();
        page.fill("hat-name", "Good cap");
        page.is_saved();
        let damaged = "{ \"format\": \"half of a hat";
        page.js(&format!("localStorage.setItem('hatwright.project.damaged1', {})", json!(damaged)));
        page.reload();
        assert_eq!(page.value("hat-name"), "Good cap");
        page.click("#open-shelf");
        let file = page.download("set-aside.json", || page.click("#hats [data-act=aside]"));
        assert_eq!(file, damaged);
        page.press("Close");
        page.fill("hat-name", "Better cap");
        page.is_saved();
        let kept = page.kept();
        let aside = kept.iter().find(|(key, _)| key.ends_with("damaged1")).expect("what could not be read");
        assert_eq!(aside.1, damaged, "it stays as it was");
    });
}

#[test]
fn a_hat_on_the_bench_that_cannot_be_read_any_more_is_said() {
    on_page(Screen::DESK, |page| {
        page.open();
        page.fill("hat-name", "Good cap");
        page.is_saved();
        let key = page.kept().into_iter().find(|(key, _)| key.starts_with("hatwright.project.")).expect("the hat").0;
        page.js(&format!("localStorage.setItem({}, 'half of a hat')", json!(key)));
        page.reload();
        let why = hatwright_project::open("half of a hat").expect_err("no hat").to_string();
        assert_eq!(page.text("#notice p"), why);
        page.shows(&example());
        // Going on to work overwrites nothing.
        page.fill("hat-name", "Next cap");
        page.is_saved();
        assert!(page.kept().contains(&(key, "half of a hat".to_owned())), "what could not be read is still there");
    });
}
