//! Names are text, whatever is in them and wherever they are shown.

use hatwright_project::Project;
use serde_json::{Value, json};

use crate::expected::example;
use crate::page::Screen;
use crate::stage::on_page;

#[test]
fn names_are_text() {
    on_page(Screen::DESK, |page| {
        page.open();
        let markup = "<img src=x onerror=\"document.title='broken in'\">";
        page.fill("hat-name", markup);
        page.fill("colour-name-0", "<b>in&digo</b>");
        let mut hat = Project { name: markup.to_owned(), ..example() };
        hat.colours[0].name = "<b>in&digo</b>".to_owned();
        page.shows(&hat);
        page.is_saved();
        page.click("#open-shelf");
        let listed = page.js("return document.querySelector('#hats input').value");
        assert_eq!(listed, json!(markup));
        page.press(&format!("Copy {markup}"));
        page.until("the copy", "document.querySelectorAll('#hats input').length === 2");
        page.press(&format!("Delete {markup}, copy"));
        page.until("the copy to go", "!!document.querySelector('#hats summary')");
        page.press("Close");
        assert_eq!(page.js("return [document.images.length, document.title]"), json!([0, format!("{markup} · Hatwright")]));
        page.reload();
        page.shows(&hat);

        // Letters beyond the first plane, joined ones, and ones that turn the direction of reading.
        let typed = "Mütze 🧶👩🏽‍🌾 קבע";
        page.paste("hat-name", typed);
        page.keys(thirtyfour::Key::Tab);
        hat.name = typed.to_owned();
        page.shows(&hat);
        page.is_saved();
        page.reload();
        page.shows(&hat);

        page.paste("hat-name", "a\u{202e}b");
        page.keys(thirtyfour::Key::Tab);
        page.until_is("the name", "document.getElementById('hat-name').value", &json!("ab"));
        let title: Value = page.js("return document.querySelector('#pattern-text .title').textContent");
        assert_eq!(title, json!("ab"));
    });
}
