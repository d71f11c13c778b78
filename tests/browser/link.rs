//! A hat in a link: the same for whoever opens it, and nobody's hats are touched.

use hatwright_project::Project;
use hatwright_sizing::{Chosen, Rows, Stitches};
use serde_json::json;

use crate::expected::{example, measured};
use crate::page::{Page, Screen};
use crate::stage::{on_page, on_two};

/// The link to the hat on the page, read from the dialog.
fn link(page: &Page) -> String {
    page.click("#copy-link");
    page.until("the link", "document.getElementById('share-link').value.includes('#')");
    let link = page.value("share-link");
    page.press("Close");
    assert!(link.starts_with(&format!("{}#", page.url())), "{link}");
    link
}

#[test]
fn a_link_shows_the_same_hat_to_someone_else() {
    on_two(Screen::PHONE, |mine, theirs| {
        mine.open();
        mine.fill("hat-name", "Crew cap & scarf <8+>");
        mine.choose("head-way", 1);
        mine.fill("head-girth", "55.5");
        mine.choose("terms", 1);
        let mut hat = Project { name: "Crew cap & scarf <8+>".to_owned(), ..example() };
        measured(&mut hat, 55_500);
        hat.terms = hatwright_project::Terms::Uk;
        mine.shows(&hat);
        let address = link(mine);

        theirs.go(&address);
        theirs.has_started();
        theirs.shows(&hat);
        assert!(theirs.text("#notice").contains("This hat came by a link"), "{}", theirs.text("#notice"));
        assert_eq!(theirs.kept(), [], "nothing is kept until something is changed");

        theirs.click("#keep-now");
        theirs.is_saved();
        assert_eq!(theirs.kept_hats()[0].spec, hat.spec);
        assert!(!theirs.has("#notice"), "there is nothing more to say");
        assert_eq!(theirs.js("return location.hash"), json!(""), "a kept hat needs no link in the address");
        theirs.reload();
        theirs.shows(&hat);
        theirs.is_saved();
    });
}

#[test]
fn the_link_is_on_the_clipboard() {
    on_page(Screen::DESK, |page| {
        page.open();
        let permissions = json!({ "origin": page.origin(), "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"] });
        page.command("Browser.grantPermissions", permissions);
        page.click("#copy-link");
        let said = json!("The link is on the clipboard.");
        page.until_is("the dialog's word", "document.getElementById('share-said').textContent", &said);
        let copied = page.js_later("navigator.clipboard.readText().then(arguments[0], e => arguments[0](String(e)))");
        assert_eq!(copied, json!(page.value("share-link")));
    });
}

#[test]
fn a_link_is_kept_as_soon_as_something_is_changed() {
    on_two(Screen::PHONE, |mine, theirs| {
        mine.open();
        mine.fill("swatch-stitches", "13");
        let address = link(mine);
        theirs.go(&address);
        theirs.has_started();
        theirs.fill("hat-name", "Changed cap");
        theirs.is_saved();
        let kept = theirs.kept_hats();
        assert_eq!(kept.len(), 1);
        assert_eq!(kept[0].name, "Changed cap");
        theirs.reload();
        assert_eq!(theirs.value("hat-name"), "Changed cap", "a reload shows what is kept, not the link");
    });
}

#[test]
fn a_link_overwrites_nothing() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let address = link(page);
        page.fill("hat-name", "Mine");
        page.fill("swatch-stitches", "13");
        page.is_saved();
        let before = page.kept();

        page.go("about:blank");
        page.go(&address);
        page.has_started();
        page.shows(&example());
        assert_eq!(page.kept(), before, "what is kept stays as it is");

        // The same link in a page that is open.
        page.open();
        assert_eq!(page.value("hat-name"), "Mine");
        page.go(&address);
        page.shows(&example());
        page.click("#keep-now");
        page.is_saved();
        let after = page.kept();
        let mine = before.iter().find(|(key, _)| key.starts_with("hatwright.project.")).expect("my hat");
        assert!(after.contains(mine), "my hat is as it was");
        assert_eq!(page.kept_hats().len(), 2);
    });
}

#[test]
fn a_link_carries_a_count_that_was_taken_by_hand() {
    on_two(Screen::PHONE, |mine, theirs| {
        mine.open();
        mine.click("[data-stitches='60']");
        let address = link(mine);
        theirs.go(&address);
        theirs.has_started();
        let mut hat = example();
        hat.spec.chosen = Some(Chosen { rows: Rows::new(60), stitches: Stitches::new(60) });
        theirs.shows(&hat);
    });
}

#[test]
fn a_damaged_link_is_said_to_be_so() {
    on_page(Screen::PHONE, |page| {
        let whole = hatwright_project::to_link(&example());
        let (cut, swapped) = (&whole[..whole.len() - 3], whole.replacen('A', "B", 1));
        assert_ne!(whole, swapped);
        for fragment in [cut, &swapped, "1", "9AAAAAAAA", "hello", "1%00%ff", "<img src=x onerror=alert(1)>", &"1A".repeat(9_000)]
        {
            page.open_at(&format!("#{fragment}"));
            // The browser may escape what it is given; the page must read what the browser says.
            let escaped = page.js("return location.hash.slice(1)");
            let why = hatwright_project::from_link(escaped.as_str().expect("a text")).expect_err(fragment).to_string();
            assert_eq!(page.text("#notice p"), why, "{fragment:.40}");
            page.shows(&example());
            assert_eq!(page.kept(), []);
        }
        // The page works on.
        page.press("Understood");
        assert!(!page.has("#notice"));
        page.choose("head-way", 1);
        page.fill("head-girth", "54");
        page.is_saved();
        page.reload();
        let mut hat = example();
        measured(&mut hat, 54_000);
        page.shows(&hat);
    });
}

#[test]
fn a_place_in_the_page_is_no_hat() {
    on_page(Screen::PHONE, |page| {
        for place in ["#pattern", "#yarn", "#answer", "#"] {
            page.open_at(place);
            page.shows(&example());
            assert!(!page.has("#notice"), "{place}: {}", page.text("#notice"));
        }
        page.press("Pattern");
        page.until("the pattern on the screen", "document.getElementById('pattern').getBoundingClientRect().top < innerHeight");
        assert!(!page.has("#notice"), "going to the pattern is no link to a hat");
        page.shows(&example());
    });
}
