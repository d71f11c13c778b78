//! Chromium and its driver: started for one test, always stopped, never with anything kept from another test.

use std::env;
use std::fs;
use std::io::{BufRead, BufReader, Read, Write, copy, sink};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::thread;
use std::time::{Duration, Instant};

use serde_json::json;
use thirtyfour::{Capabilities, WebDriver};

/// A setting that `cargo xtask test` makes.
pub fn variable(name: &str) -> String {
    env::var(name).unwrap_or_else(|_| panic!("{name} is not set: run the browser tests by `cargo xtask test`"))
}

/// A folder of the build that is removed in the end.
pub struct Folder(PathBuf);

impl Folder {
    /// A new, empty one.
    pub fn new(purpose: &str) -> Self {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let count = COUNT.fetch_add(1, Ordering::Relaxed);
        let name = format!("browser-{purpose}-{}-{count}", std::process::id());
        let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
        fs::create_dir_all(&path).expect("making a folder for a test");
        Self(path)
    }

    /// Where it is.
    pub fn path(&self) -> &Path {
        &self.0
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        // A browser that is just ending may still write its profile.
        let begun = Instant::now();
        while fs::remove_dir_all(&self.0).is_err() && begun.elapsed() < Duration::from_secs(5) {
            thread::sleep(Duration::from_millis(20));
        }
    }
}

/// A running driver.
pub struct Driver {
    process: Child,
    port: u16,
}

impl Driver {
    /// Starts one on a port that the system chooses: on a busy machine another program may take it first, so more than once.
    pub fn start() -> Self {
        (0..5).find_map(|_| Self::try_start()).expect("a driver that says on which port it listens")
    }

    fn try_start() -> Option<Self> {
        let mut process = Command::new(variable("HATWRIGHT_CHROMEDRIVER"))
            .arg("--port=0")
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("starting the driver");
        let mut out = BufReader::new(process.stdout.take().expect("the driver's output"));
        let port = port_in(&mut out);
        // A driver that cannot write stands still.
        thread::spawn(move || copy(&mut out, &mut sink()));
        let Some(port) = port else {
            let _ = process.kill();
            let _ = process.wait();
            return None;
        };
        Some(Self { process, port })
    }

    /// Opens a browser on a profile.
    pub async fn open(&self, profile: &Folder) -> WebDriver {
        let mut wanted = Capabilities::new();
        let options = json!({
            "binary": variable("HATWRIGHT_CHROMIUM"),
            "args": [
                "--headless=new",
                // Containers and root have no sandbox; the only page that is opened is our own.
                "--no-sandbox",
                "--disable-dev-shm-usage",
                "--disable-gpu",
                "--no-first-run",
                "--no-default-browser-check",
                "--no-proxy-server",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-default-apps",
                "--disable-extensions",
                "--disable-sync",
                "--force-color-profile=srgb",
                "--lang=en",
                "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1",
                format!("--user-data-dir={}", profile.path().display()),
            ],
            "perfLoggingPrefs": { "enableNetwork": true, "enablePage": false },
        });
        let settings = [
            ("browserName", json!("chrome")),
            ("goog:chromeOptions", options),
            ("goog:loggingPrefs", json!({ "browser": "ALL", "performance": "ALL" })),
            // A page that is being left asks nothing.
            ("unhandledPromptBehavior", json!("accept")),
        ];
        for (name, value) in settings {
            wanted.set(name, value).expect("a setting of the browser");
        }
        WebDriver::new(format!("http://127.0.0.1:{}", self.port), wanted).await.expect("opening a browser")
    }
}

/// The port in the line in which the driver says that it has started.
fn port_in(out: &mut impl BufRead) -> Option<u16> {
    for line in out.lines() {
        let line = line.ok()?;
        if let Some((_, port)) = line.split_once("started successfully on port ") {
            return port.trim().trim_end_matches('.').parse().ok();
        }
    }
    None
}

impl Drop for Driver {
    fn drop(&mut self) {
        // Asked to, the driver ends its browsers before itself; killed, it would leave them behind.
        if let Ok(mut asked) = TcpStream::connect(("127.0.0.1", self.port)) {
            let _ = asked.set_read_timeout(Some(Duration::from_secs(5)));
            let _ = write!(asked, "GET /shutdown HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nConnection: close\r\n\r\n", self.port);
            let _ = asked.read(&mut [0; 256]);
        }
        let begun = Instant::now();
        while matches!(self.process.try_wait(), Ok(None)) {
            if begun.elapsed() > Duration::from_secs(5) {
                let _ = self.process.kill();
                let _ = self.process.wait();
            } else {
                thread::sleep(Duration::from_millis(10));
            }
        }
    }
}
