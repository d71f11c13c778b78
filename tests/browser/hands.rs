//! What a person does with the page: typing, clicking, giving and taking files; and what the page has kept of it.

use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

use serde_json::json;
use thirtyfour::error::WebDriverErrorInner;
use thirtyfour::{By, Key, WebElement};

use crate::driver::Folder;
use crate::page::Page;

/// How long a page may take to scroll to its old place.
const SCROLL: Duration = Duration::from_millis(200);

impl Page {
    /// The element that an expression gives, in the middle of the screen and not moving. What it is folded away in is unfolded.
    #[track_caller]
    fn there(&self, what: &str, expression: &str) -> WebElement {
        let script = format!(
            "const e = {expression}; let folded = e?.closest('summary') ? e.closest('details').parentElement : e;
             while (folded = folded?.closest('details:not([open])')) folded.open = true;
             e?.scrollIntoView({{ block: 'center', behavior: 'instant' }}); return e"
        );
        let begun = Instant::now();
        loop {
            let found = self.ask(what, self.browser.execute(&*script, Vec::new()));
            if !found.json().is_null() {
                return self.ask(what, async { found.element() });
            }
            self.pause(begun, || format!("there is no {what} on the page"));
        }
    }

    #[track_caller]
    fn one(&self, css: &str) -> WebElement {
        self.there(css, &format!("document.querySelector({})", json!(css)))
    }

    /// Clicks.
    #[track_caller]
    pub fn click(&self, css: &str) {
        self.hit(&format!("clicking {css}"), &self.one(css));
    }

    /// Clicks where something is: once more where the page was still scrolling, as it does to its old place after a reload. What stays
    /// covered stays a failure.
    #[track_caller]
    fn hit(&self, what: &str, element: &WebElement) {
        let click = async {
            for _ in 0..4 {
                match element.click().await {
                    Err(error) if matches!(error.as_inner(), WebDriverErrorInner::ElementClickIntercepted(_)) => {
                        tokio::time::sleep(SCROLL).await;
                    }
                    done => return done,
                }
            }
            element.click().await
        };
        self.ask(what, click);
    }

    /// Clicks a button or a way to another place by its words.
    #[track_caller]
    pub fn press(&self, words: &str) {
        let find = format!(
            "[...document.querySelectorAll('button, a')].find(e => \
             e.checkVisibility() && (e.getAttribute('aria-label') ?? e.textContent.trim()) === {})",
            json!(words)
        );
        let button = self.there(&format!("button “{words}”"), &find);
        self.hit(&format!("pressing “{words}”"), &button);
    }

    /// Types over whatever stands in a field. The field keeps the keyboard.
    #[track_caller]
    pub fn type_into(&self, id: &str, text: &str) {
        let field = self.one(&format!("#{id}"));
        self.hit(&format!("clicking {id}"), &field);
        let whole = Key::Control + "a" + Key::Null;
        let keys = if text.is_empty() { whole + Key::Delete } else { whole + text };
        self.ask(&format!("typing into {id}"), field.send_keys(keys));
    }

    /// Pastes a text over whatever stands in a field: it comes at once, not key by key.
    #[track_caller]
    pub fn paste(&self, id: &str, text: &str) {
        self.one(&format!("#{id}"));
        let mark = "const field = document.getElementById(arguments[0]); field.focus(); field.select()";
        self.js_with(mark, vec![json!(id)]);
        self.command("Input.insertText", json!({ "text": text }));
    }

    /// Types over whatever stands in a field, and goes on to the next.
    #[track_caller]
    pub fn fill(&self, id: &str, text: &str) {
        self.type_into(id, text);
        self.keys(Key::Tab);
    }

    /// Strikes keys, wherever the keyboard is.
    #[track_caller]
    pub fn keys(&self, keys: impl Into<thirtyfour::TypingData>) {
        let keys = keys.into();
        self.ask("striking keys", async {
            let chain = self.browser.action_chain().send_keys(keys);
            chain.perform().await
        });
    }

    /// Takes the `which`-th of a group of choices.
    #[track_caller]
    pub fn choose(&self, group: &str, which: usize) {
        self.click(&format!("#{group}-{which}"));
    }

    /// Takes an option of a list by its value.
    #[track_caller]
    pub fn select(&self, id: &str, value: &str) {
        self.click(&format!("#{id} option[value={}]", json!(value)));
    }

    /// Gives a hat on the shelf another name.
    #[track_caller]
    pub fn rename_listed(&self, name: &str, to: &str) {
        let id = "return document.querySelector(`#hats input[aria-label=${JSON.stringify(arguments[0])}]`)?.dataset.id";
        let id = self.js_with(id, vec![json!(format!("Name of {name}"))]);
        let id = id.as_str().unwrap_or_else(|| panic!("there is no hat named {name} on the shelf")).to_owned();
        let field = self.one(&format!("#hats input[data-id='{id}']"));
        let whole = Key::Control + "a" + Key::Null;
        self.ask("renaming", field.send_keys(whole + to + Key::Tab));
        let now = format!("document.querySelector('#hats input[data-id=\"{id}\"]')?.ariaLabel");
        self.until_is("the name on the shelf", &now, &json!(format!("Name of {to}")));
    }

    /// Gives a file to a field for files.
    #[track_caller]
    pub fn give_file(&self, id: &str, path: &Path) {
        let field = self.ask(id, self.browser.find(By::Id(id)));
        self.ask("giving a file", field.send_keys(path.display().to_string()));
    }

    /// What a click downloads under a name.
    #[track_caller]
    pub fn download(&self, name: &str, click: impl FnOnce()) -> String {
        let folder = Folder::new("downloads");
        let behaviour = json!({ "behavior": "allow", "downloadPath": folder.path() });
        self.command("Browser.setDownloadBehavior", behaviour);
        click();
        let begun = Instant::now();
        loop {
            // The browser gives a file its name when it has all of it.
            if let Ok(text) = fs::read_to_string(folder.path().join(name))
                && !text.is_empty()
            {
                return text;
            }
            self.pause(begun, || format!("the file {name} was not downloaded"));
        }
    }

    /// Waits until the hat is kept.
    #[track_caller]
    pub fn is_saved(&self) {
        self.until_is("the hat's standing", "document.getElementById('standing').textContent", &json!("Saved on this device"));
    }

    /// The texts that the page keeps, by key.
    pub fn kept(&self) -> Vec<(String, String)> {
        let kept = self.js("return Object.entries(localStorage).filter(([key]) => key.startsWith('hatwright.')).sort()");
        serde_json::from_value(kept).expect("pairs of texts")
    }

    /// The hats that the page keeps.
    pub fn kept_hats(&self) -> Vec<hatwright_project::Project> {
        let hats = self.kept().into_iter().filter(|(key, _)| key.starts_with("hatwright.project."));
        hats.map(|(key, text)| hatwright_project::open(&text).unwrap_or_else(|why| panic!("{key} cannot be read: {why}")))
            .collect()
    }
}
