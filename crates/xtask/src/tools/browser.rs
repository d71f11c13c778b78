//! Chromium and its driver, for the tests only. They come from the system, not from the cache.
use std::env;
use std::path::PathBuf;
use std::process::Command;

use crate::outcome::{Failure, Outcome};
use crate::process::{find, read, run};

/// A browser and the driver that steers it.
#[derive(Debug, Clone)]
pub struct Browser {
    pub chromium: PathBuf,
    pub driver: PathBuf,
}

impl Browser {
    /// `$HATWRIGHT_CHROMIUM` and `$HATWRIGHT_CHROMEDRIVER`, or what the PATH offers.
    pub fn find() -> Option<Self> {
        let named = |variable: &str| env::var_os(variable).map(PathBuf::from).filter(|path| path.is_file());
        let chromium = named("HATWRIGHT_CHROMIUM").or_else(|| {
            ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"].iter().find_map(|name| find(name))
        })?;
        let driver = named("HATWRIGHT_CHROMEDRIVER").or_else(|| find("chromedriver"))?;
        Some(Self { chromium, driver })
    }

    /// How it will be got on this machine, or the failure that says how to get it by hand.
    pub fn how() -> &'static str {
        if can_use_apt() { "installed by apt-get" } else { "to be installed by you" }
    }

    /// Brings both where that can be done without asking for a password.
    pub fn install() -> Outcome<Self> {
        if can_use_apt() {
            let apt = || {
                let mut command = Command::new("apt-get");
                command.env("DEBIAN_FRONTEND", "noninteractive");
                command
            };
            run(apt().args(["update", "-qq"]))?;
            run(apt().args(["install", "-qq", "-y", "--no-install-recommends", "chromium", "chromium-driver"]))?;
        }
        Self::find().ok_or_else(|| {
            Failure::new(
                "the browser tests need Chromium and chromedriver of the same version.\n\
                 Debian, Ubuntu: sudo apt-get install chromium chromium-driver\n\
                 Fedora: sudo dnf install chromium chromedriver\n\
                 macOS: brew install --cask chromium chromedriver\n\
                 Elsewhere set HATWRIGHT_CHROMIUM and HATWRIGHT_CHROMEDRIVER to their paths.\n\
                 Without them, `cargo xtask test --fast` checks everything but the page.",
            )
        })
    }
}

fn can_use_apt() -> bool {
    find("apt-get").is_some() && read(Command::new("id").arg("-u")).is_ok_and(|user| user == "0")
}
