//! The page in a browser: going there, and reading it.

use std::fs;
use std::path::Path;
use std::rc::Rc;
use std::time::{Duration, Instant};

use serde_json::{Value, json};
use thirtyfour::WebDriver;
use thirtyfour::error::WebDriverResult;
use tokio::runtime::Runtime;

use crate::driver::{Driver, Folder};

/// How long anything may take before it is taken not to happen.
const PATIENCE: Duration = Duration::from_secs(15);
/// How often it is looked for.
const LOOK: Duration = Duration::from_millis(15);

/// A screen, in CSS pixels.
#[derive(Clone, Copy, Debug)]
pub struct Screen {
    /// Its width.
    pub width: u32,
    /// Its height.
    pub height: u32,
}

impl Screen {
    /// A phone held upright.
    pub const PHONE: Self = Self { width: 390, height: 844 };
    /// A desktop.
    pub const DESK: Self = Self { width: 1440, height: 900 };

    /// Phones and tablets have no scroll bars that take room, and heed the page's own word about its width.
    fn is_mobile(self) -> bool {
        self.width < 1000
    }
}

/// The page in a browser.
pub struct Page {
    runtime: Rc<Runtime>,
    driver: Rc<Driver>,
    /// The session with the driver.
    pub browser: WebDriver,
    profile: Folder,
    url: String,
    screen: Screen,
    /// What the browser complained of.
    pub complaints: Vec<String>,
    /// What it may complain of.
    pub expected: Vec<&'static str>,
    /// How many requests were seen.
    pub requests: usize,
}

impl Page {
    /// A browser that has not gone anywhere yet.
    pub fn new(runtime: &Rc<Runtime>, driver: &Rc<Driver>, url: String, screen: Screen) -> Self {
        let profile = Folder::new("profile");
        let browser = runtime.block_on(driver.open(&profile));
        let mut page = Self {
            runtime: Rc::clone(runtime),
            driver: Rc::clone(driver),
            browser,
            profile,
            url,
            screen,
            complaints: Vec::new(),
            expected: Vec::new(),
            requests: 0,
        };
        page.resize(screen);
        page
    }

    /// Does something with the browser and waits for its answer.
    #[track_caller]
    pub fn ask<T>(&self, what: &str, question: impl Future<Output = WebDriverResult<T>>) -> T {
        match self.runtime.block_on(question) {
            Ok(answer) => answer,
            Err(error) => panic!("{what}: {error}"),
        }
    }

    // The browser.

    /// Sends a command of the browser's own protocol.
    #[track_caller]
    pub fn command(&self, method: &str, parameters: Value) -> Value {
        self.ask(method, self.browser.cdp().send_raw(method, parameters))
    }

    /// Takes another screen.
    pub fn resize(&mut self, screen: Screen) {
        self.screen = screen;
        let Screen { width, height } = screen;
        let metrics = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": screen.is_mobile() });
        self.command("Emulation.setDeviceMetricsOverride", metrics);
    }

    /// Sets features of media queries, such as `prefers-color-scheme`; the medium is `screen` or `print`.
    pub fn media(&self, medium: &str, features: &[(&str, &str)]) {
        let features: Vec<Value> = features.iter().map(|(name, value)| json!({ "name": name, "value": value })).collect();
        self.command("Emulation.setEmulatedMedia", json!({ "media": medium, "features": features }));
    }

    /// Runs a script in every document from now on, before any script of its own.
    pub fn before_every_page(&self, script: &str) {
        self.command("Page.addScriptToEvaluateOnNewDocument", json!({ "source": script }));
    }

    /// Ends the browser as a person does, and begins again with the same profile.
    pub fn restart(&mut self) {
        self.listen();
        let old = self.browser.clone();
        self.ask("closing the browser", old.quit());
        self.browser = self.runtime.block_on(self.driver.open(&self.profile));
        self.resize(self.screen);
    }

    /// Ends the browser.
    pub fn close(self) {
        // A browser that does not end when asked is ended with its driver.
        let _ = self.runtime.block_on(self.browser.quit());
    }

    // Going places.

    /// The page's address.
    pub fn url(&self) -> &str {
        &self.url
    }

    /// The page's host, as permissions and storage know it.
    pub fn origin(&self) -> String {
        self.url.splitn(4, '/').take(3).collect::<Vec<_>>().join("/")
    }

    /// Goes to an address, whatever is there.
    #[track_caller]
    pub fn go(&self, address: &str) {
        self.ask("going to an address", self.browser.goto(address));
    }

    /// Opens the page and waits until its program has started.
    #[track_caller]
    pub fn open(&self) {
        self.open_at("");
    }

    /// Opens the page with a fragment, such as `#yarn`, in a document of its own.
    #[track_caller]
    pub fn open_at(&self, fragment: &str) {
        // An address that differs by its fragment only would not be loaded anew.
        self.go("about:blank");
        self.go(&format!("{}{fragment}", self.url));
        self.has_started();
    }

    /// Reloads, and waits until the program has started.
    #[track_caller]
    pub fn reload(&self) {
        self.ask("reloading", self.browser.refresh());
        self.has_started();
    }

    /// Waits until the program has started, on a screen as wide as was asked for.
    #[track_caller]
    pub fn has_started(&self) {
        self.until("the program to start", "document.querySelector('#answer-stitches')?.textContent");
        let width = self.js("return innerWidth");
        assert_eq!(width, json!(self.screen.width), "the page lays itself out for a width that is not the screen's");
    }

    /// The tab that is shown.
    pub fn tab(&self) -> String {
        self.ask("the tab", self.browser.window()).to_string()
    }

    /// Opens another tab and goes there; the handle of the one before.
    pub fn new_tab(&mut self) -> String {
        let before = self.tab();
        let tab = self.ask("opening a tab", self.browser.new_tab());
        self.ask("going to a tab", self.browser.switch_to_window(tab));
        self.resize(self.screen);
        before
    }

    /// Goes to another tab.
    pub fn switch_to(&self, tab: &str) {
        self.ask("going to a tab", self.browser.switch_to_window(tab.to_owned().into()));
    }

    /// Closes the tab that is shown, as a person does, and goes to another.
    pub fn close_tab(&mut self, next: &str) {
        self.listen();
        self.ask("closing a tab", self.browser.close_window());
        self.switch_to(next);
    }

    // Reading.

    /// Runs a script in the page.
    #[track_caller]
    pub fn js(&self, script: &str) -> Value {
        self.js_with(script, Vec::new())
    }

    /// Runs a script in the page on some values.
    #[track_caller]
    pub fn js_with(&self, script: &str, values: Vec<Value>) -> Value {
        self.ask("running a script in the page", self.browser.execute(script, values)).json().clone()
    }

    /// Runs a script that calls back when it has its result.
    #[track_caller]
    pub fn js_later(&self, script: &str) -> Value {
        self.ask("running a script in the page", self.browser.execute_async(script, Vec::new())).json().clone()
    }

    /// Waits until an expression is true (or anything but nothing), and gives its value.
    #[track_caller]
    pub fn until(&self, what: &str, expression: &str) -> Value {
        let script = format!("return {expression}");
        let begun = Instant::now();
        loop {
            let value = self.js(&script);
            if !matches!(&value, Value::Null | Value::Bool(false)) && value != json!("") && value != json!(0) {
                return value;
            }
            self.pause(begun, || format!("waited in vain for {what}: {expression} is {value}"));
        }
    }

    /// Waits until an expression has a value.
    #[track_caller]
    pub fn until_is(&self, what: &str, expression: &str, expected: &Value) {
        let script = format!("return {expression}");
        let begun = Instant::now();
        loop {
            let value = self.js(&script);
            if value == *expected {
                return;
            }
            self.pause(begun, || format!("{what} should be {expected}, but is {value}"));
        }
    }

    /// A moment's wait before looking again; fails after too many.
    #[track_caller]
    pub fn pause(&self, begun: Instant, why: impl FnOnce() -> String) {
        assert!(begun.elapsed() < PATIENCE, "{}", why());
        self.runtime.block_on(async { tokio::time::sleep(LOOK).await });
    }

    /// Whether there is such an element.
    pub fn has(&self, css: &str) -> bool {
        self.js_with("return !!document.querySelector(arguments[0])", vec![json!(css)]) == json!(true)
    }

    /// The text of an element, or what is missing.
    #[track_caller]
    pub fn text(&self, css: &str) -> String {
        let text = self.js_with("return document.querySelector(arguments[0])?.textContent", vec![json!(css)]);
        text.as_str().unwrap_or_else(|| panic!("there is no {css} on the page")).to_owned()
    }

    /// What stands in a field.
    #[track_caller]
    pub fn value(&self, id: &str) -> String {
        let value = self.js_with("return document.getElementById(arguments[0])?.value", vec![json!(id)]);
        value.as_str().unwrap_or_else(|| panic!("there is no field {id} on the page")).to_owned()
    }

    /// The sentence beside a field.
    #[track_caller]
    pub fn says(&self, id: &str) -> String {
        self.text(&format!("#{id}-says"))
    }

    /// The element that has the keyboard: its id, or its text.
    pub fn focused(&self) -> String {
        let focused = self.js("const e = document.activeElement; return e.id || e.textContent.trim()");
        focused.as_str().unwrap_or_default().to_owned()
    }

    /// Saves a picture of the page where a person finds it after a failure.
    pub fn picture(&self, name: &str) {
        let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).with_file_name("browser-failures");
        let saved =
            fs::create_dir_all(&folder).is_ok() && self.runtime.block_on(self.browser.screenshot(&folder.join(name))).is_ok();
        if saved {
            eprintln!("a picture of the page is in {}", folder.join(name).display());
        }
    }
}
