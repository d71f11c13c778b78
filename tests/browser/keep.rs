//! Hats are kept by themselves: after a moment, when the page is left, and beside each other.

use hatwright_project::Project;
use hatwright_sizing::{Count, Head, Length, Swatch};
use serde_json::json;

use crate::driver::Folder;
use crate::expected::{BY_LEAVING_ONLY, example};
use crate::page::{Page, Screen};
use crate::stage::on_page;

/// The example for another head.
fn measured(ticks: i32) -> Project {
    let mut hat = example();
    crate::expected::measured(&mut hat, ticks);
    hat
}

fn named(name: &str, hat: Project) -> Project {
    Project { name: name.to_owned(), ..hat }
}

/// The names on the shelf, which is opened for it.
fn listed(page: &Page) -> Vec<String> {
    if !page.has("#shelf[open]") {
        page.click("#open-shelf");
    }
    let names =
        page.js("return [...document.querySelectorAll('#hats > ul:first-of-type input')].map(input => input.value).sort()");
    serde_json::from_value(names).expect("texts")
}

#[test]
fn an_edit_is_kept_and_survives_a_reload() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.choose("head-way", 1);
        page.fill("head-girth", "54.2");
        page.fill("hat-name", "Cox's cap");
        page.is_saved();
        let hat = named("Cox's cap", measured(54_200));
        let kept = page.kept_hats();
        assert_eq!(kept.len(), 1, "one hat is kept");
        assert_eq!((&kept[0].spec, &kept[0].name), (&hat.spec, &hat.name), "it is the one on the screen");

        page.reload();
        page.shows(&hat);
        page.is_saved();
        page.restart();
        page.open();
        page.shows(&hat);
    });
}

#[test]
fn units_and_terms_are_kept() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.choose("units", 1);
        page.choose("terms", 1);
        page.is_saved();
        page.reload();
        let mut hat = example();
        hat.units = hatwright_project::Units::Inches;
        hat.terms = hatwright_project::Terms::Uk;
        page.shows(&hat);
    });
}

#[test]
fn a_page_that_is_left_saves_at_once() {
    on_page(Screen::PHONE, |page| {
        page.before_every_page(BY_LEAVING_ONLY);
        page.open();
        page.choose("head-way", 1);
        page.type_into("head-girth", "53.1");
        page.shows(&measured(53_100));
        assert_eq!(page.text("#standing"), "Saving …");
        assert_eq!(page.kept(), [], "nothing is kept yet, or leaving proves nothing");
        page.open();
        page.shows(&measured(53_100));
        page.is_saved();

        page.type_into("head-girth", "53.2");
        page.shows(&measured(53_200));
        page.reload();
        page.shows(&measured(53_200));
    });
}

#[test]
fn a_page_that_is_closed_or_hidden_saves_at_once() {
    on_page(Screen::PHONE, |page| {
        page.before_every_page(BY_LEAVING_ONLY);
        page.open();
        page.choose("head-way", 1);
        page.type_into("head-girth", "53.1");
        page.shows(&measured(53_100));
        // The other tab hides this one.
        let first = page.new_tab();
        page.open();
        page.shows(&measured(53_100));

        page.before_every_page(BY_LEAVING_ONLY);
        page.open();
        page.type_into("head-girth", "53.3");
        page.shows(&measured(53_300));
        page.close_tab(&first);
        page.open();
        page.shows(&measured(53_300));
    });
}

#[test]
fn several_hats_are_kept_beside_each_other() {
    on_page(Screen::DESK, |page| {
        page.open();
        page.fill("hat-name", "First cap");
        page.is_saved();
        assert_eq!(listed(page), ["First cap"]);

        page.click("#new-hat");
        page.fill("hat-name", "Second cap");
        page.choose("head-way", 1);
        page.fill("head-girth", "58");
        page.is_saved();
        assert_eq!(listed(page), ["First cap", "Second cap"]);

        page.press("Open First cap");
        page.shows(&named("First cap", example()));
        assert!(!page.has("#shelf[open]"), "the shelf closes over the hat that was opened");
        page.reload();
        page.shows(&named("First cap", example()));

        page.click("#open-shelf");
        page.press("Open Second cap");
        page.shows(&named("Second cap", measured(58_000)));
        page.reload();
        page.shows(&named("Second cap", measured(58_000)));
    });
}

#[test]
fn hats_are_renamed_and_copied_on_the_shelf() {
    on_page(Screen::DESK, |page| {
        page.open();
        page.fill("hat-name", "First cap");
        page.is_saved();
        page.click("#open-shelf");
        page.press("Copy First cap");
        page.until_is("the shelf's word", "document.querySelector('.said p').textContent", &json!("Copied: “First cap, copy”."));
        assert_eq!(listed(page), ["First cap", "First cap, copy"]);

        // The copy is not the hat on the bench, the first one is.
        page.rename_listed("First cap, copy", "Stroke's cap");
        assert_eq!(listed(page), ["First cap", "Stroke's cap"]);
        page.rename_listed("First cap", "Bow's cap");
        assert_eq!(listed(page), ["Bow's cap", "Stroke's cap"]);
        page.press("Close");
        page.shows(&named("Bow's cap", example()));
        page.is_saved();

        page.reload();
        page.shows(&named("Bow's cap", example()));
        assert_eq!(listed(page), ["Bow's cap", "Stroke's cap"]);
        page.press("Open Stroke's cap");
        page.shows(&named("Stroke's cap", example()));
    });
}

#[test]
fn a_deleted_hat_comes_back() {
    on_page(Screen::DESK, |page| {
        page.open();
        page.fill("hat-name", "First cap");
        page.is_saved();
        page.click("#open-shelf");
        page.press("Copy First cap");
        page.press("Delete First cap, copy");
        page.until("the way back", "!!document.getElementById('undo-delete')");
        assert_eq!(listed(page), ["First cap"]);
        page.click("#undo-delete");
        page.until("the copy to be back", "document.querySelectorAll('#hats > ul:first-of-type input').length === 2");
        assert_eq!(listed(page), ["First cap", "First cap, copy"]);

        page.press("Delete First cap, copy");
        page.until("one hat to be left", "document.querySelectorAll('#hats > ul:first-of-type input').length === 1");
        // The way back is still there on another day.
        page.reload();
        assert_eq!(listed(page), ["First cap"]);
        page.click("#hats summary");
        page.press("Bring back First cap, copy");
        page.until("the copy to be back", "document.querySelectorAll('#hats > ul:first-of-type input').length === 2");
        assert_eq!(listed(page), ["First cap", "First cap, copy"]);
    });
}

#[test]
fn the_last_hat_is_deleted_and_comes_back() {
    on_page(Screen::DESK, |page| {
        page.open();
        page.fill("hat-name", "Only cap");
        page.choose("head-way", 1);
        page.fill("head-girth", "58");
        page.is_saved();
        page.click("#open-shelf");
        page.press("Delete Only cap");
        page.shows(&example());
        assert_eq!(page.kept_hats(), [], "no hat is kept");
        page.click("#undo-delete");
        page.shows(&named("Only cap", measured(58_000)));
        assert_eq!(listed(page), ["Only cap"]);
        page.press("Close");
        page.is_saved();
    });
}

#[test]
fn the_clubs_caps_are_there_to_begin_with() {
    on_page(Screen::DESK, |page| {
        page.open();
        let ids = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map(hatwright_project::ProjectId::from_bits);
        let buttons = "crew baby coach slouch stocking tam flaps warmer brimmed sideways".split(' ');
        for (button, sample) in buttons.zip(hatwright_project::samples(ids)) {
            page.click("#open-shelf");
            page.click(&format!("#new-{button}"));
            page.shows(&sample);
            assert_eq!(page.text("#standing"), "Kept once you change something");
        }
    });
}

#[test]
fn a_hat_goes_into_a_file_and_comes_back_beside_the_others() {
    on_page(Screen::DESK, |page| {
        page.open();
        page.fill("hat-name", "Crew cap");
        page.fill("swatch-stitches", "13");
        page.is_saved();
        page.click("#open-shelf");
        let text = page.download("crew-cap.json", || page.click("#save-file"));
        let saved = hatwright_project::open(&text).expect("the file of a hat");
        assert_eq!(saved.spec, page.kept_hats()[0].spec);

        let folder = Folder::new("files");
        let path = folder.path().join("crew-cap.json");
        std::fs::write(&path, &text).expect("writing a file");
        page.give_file("open-file", &path);
        page.until("the file's hat", "document.querySelector('.said p').textContent.includes('from the file')");
        assert_eq!(listed(page), ["Crew cap", "Crew cap"], "the file's hat is kept beside the one that was there");
        page.press("Close");
        let mut hat = named("Crew cap", example());
        if let Swatch::Counted { stitches, .. } = &mut hat.spec.swatch {
            *stitches = Count::whole(13);
        }
        page.shows(&hat);

        std::fs::write(&path, "{ this is no hat").expect("writing a file");
        page.click("#open-shelf");
        page.give_file("open-file", &path);
        let why = hatwright_project::open("{ this is no hat").expect_err("no hat").to_string();
        page.until_is("the shelf's word", "document.querySelector('.said p').textContent", &json!(why));
        assert_eq!(page.kept_hats().len(), 2);
    });
}

#[test]
fn two_windows_do_not_overwrite_each_other() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.choose("head-way", 1);
        page.fill("head-girth", "51");
        page.is_saved();
        let first = page.new_tab();
        page.open();
        page.shows(&measured(51_000));
        page.fill("head-girth", "52");
        page.is_saved();

        let second = page.tab();
        page.switch_to(&first);
        page.fill("head-girth", "53");
        page.until("the page to say so", "!!document.getElementById('storage-trouble')");
        assert!(
            page.text("#storage-trouble").contains("Another window saved this hat since"),
            "{}",
            page.text("#storage-trouble")
        );
        assert_eq!(page.text("#standing"), "Not saved");
        page.shows(&measured(53_000));
        assert_eq!(page.kept_hats()[0].spec, measured(52_000).spec, "the other window's hat is untouched");

        page.press("Keep mine as a copy");
        page.is_saved();
        assert!(!page.has("#storage-trouble"), "nothing is wrong any more");
        let mut heads: Vec<Head> = page.kept_hats().into_iter().map(|hat| hat.spec.head).collect();
        heads.sort_by_key(|head| if let Head::Measured(girth) = head { girth.ticks() } else { 0 });
        assert_eq!(heads, [52_000, 53_000].map(|t| Head::Measured(Length::from_ticks(t))), "both hats are kept");
        page.switch_to(&second);
    });
}
