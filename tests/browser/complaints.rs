//! What the browser logged while a test played: complaints, and requests.

use serde_json::Value;

use crate::page::Page;

impl Page {
    /// The test brings about what the browser will complain of in these words.
    pub fn expect_complaint(&mut self, words: &'static str) {
        self.expected.push(words);
    }

    /// Fails if the browser complained, or if anything was asked of an address that is not the page's.
    #[track_caller]
    pub fn has_no_complaint(&mut self) {
        self.listen();
        let told: Vec<&String> =
            self.complaints.iter().filter(|c| !self.expected.iter().any(|words| c.contains(words))).collect();
        assert!(told.is_empty(), "the browser complained:\n{told:#?}");
        for words in &self.expected {
            assert!(self.complaints.iter().any(|c| c.contains(words)), "the browser should have complained: {words}");
        }
        assert!(self.requests > 0, "the log of requests is empty, so it says nothing");
    }

    /// Takes over what the browser has logged. Its log ends with the browser.
    pub fn listen(&mut self) {
        let log = self.ask("the console", self.browser.get_log("browser"));
        let bad = log.into_iter().filter(|entry| ["WARNING", "SEVERE"].contains(&&*entry.level));
        self.complaints.extend(bad.map(|entry| format!("{}: {}", entry.level, entry.message)));
        for entry in self.ask("the requests", self.browser.get_log("performance")) {
            let entry: Value = serde_json::from_str(&entry.message).expect("an entry of the log");
            if entry["message"]["method"] != "Network.requestWillBeSent" {
                continue;
            }
            let asked = &entry["message"]["params"];
            let address = asked["request"]["url"].as_str().unwrap_or_default();
            // A new tab of the browser is a page of the browser's, with parts of its own.
            if asked["documentURL"].as_str().is_some_and(|page| page.starts_with("chrome:")) && address.starts_with("chrome:") {
                continue;
            }
            self.requests += 1;
            let own = address.starts_with(self.url()) || ["blob:", "data:", "about:"].iter().any(|own| address.starts_with(own));
            if !own {
                self.complaints.push(format!("a request to {address}"));
            }
        }
    }
}
