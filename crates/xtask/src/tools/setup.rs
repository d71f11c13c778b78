//! Brings whatever is missing, after saying what that is.
use std::env;
use std::ffi::OsString;
use std::path::PathBuf;
use std::process::Command;
use std::time::Instant;

use super::browser::Browser;
use super::cache::Cache;
use super::cached::{self, CachedTool};
use super::wasm_target;
use crate::outcome::{Failure, Outcome};
use crate::process::find;
use crate::repo::Repo;

/// What the tools are wanted for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Need {
    /// Enough to compile for wasm, without making a page.
    Check,
    /// Enough to build and serve the page.
    Build,
    /// Also what the tests use.
    Test,
}

/// The tools, ready.
#[derive(Debug)]
pub struct Tools {
    path: OsString,
    /// Version of binaryen, or nothing where it could not be had.
    pub wasm_opt: Option<String>,
    /// Where the compiler lies.
    pub sysroot: PathBuf,
    /// The accessibility rules' one script; only for [`Need::Test`].
    pub axe: Option<PathBuf>,
    /// Only for [`Need::Test`].
    pub browser: Option<Browser>,
}

impl Tools {
    /// Makes a command find these tools before any other of the same name.
    pub fn lend<'a>(&self, command: &'a mut Command) -> &'a mut Command {
        command.env("PATH", &self.path)
    }
}

/// Checks what is there and brings the rest. Says what is missing, how it is being got and how long that takes before
/// it begins.
pub fn setup(repo: &Repo, need: Need) -> Outcome<Tools> {
    let cache = Cache::locate()?;
    let sysroot = wasm_target::sysroot()?;
    let wanted: Vec<CachedTool> = cached::all(repo)?.into_iter().filter(|tool| tool.need <= need).collect();

    let missing = Missing {
        wasm_target: !wasm_target::is_installed()?,
        browser: need == Need::Test && Browser::find().is_none(),
        cached: wanted.iter().filter(|tool| !tool.is_there(&cache)).collect(),
    };
    missing.announce(&cache);
    missing.bring(&cache)?;

    let present: Vec<&CachedTool> = wanted.iter().filter(|tool| tool.is_there(&cache)).collect();
    let find_tool = |name: &str| present.iter().find(|tool| tool.name == name);
    // wasm-opt from npm is itself a script: it runs only where node does.
    let wasm_opt = find_tool("binaryen").filter(|_| find("node").is_some()).map(|tool| tool.version.clone());
    let programs = present.iter().map(|tool| tool.programs(&cache));
    let inherited = env::var_os("PATH").unwrap_or_default();
    let path = env::join_paths(programs.chain(env::split_paths(&inherited)))
        .map_err(|error| Failure::new(format!("the tools' folder cannot stand on the PATH: {error}")))?;
    Ok(Tools {
        path,
        wasm_opt,
        sysroot,
        axe: find_tool("axe-core").map(|tool| tool.folder(&cache).join("node_modules/axe-core/axe.min.js")),
        browser: (need == Need::Test).then(Browser::find).flatten(),
    })
}

struct Missing<'a> {
    wasm_target: bool,
    browser: bool,
    cached: Vec<&'a CachedTool>,
}

impl Missing<'_> {
    fn announce(&self, cache: &Cache) {
        if !self.wasm_target && !self.browser && self.cached.is_empty() {
            return;
        }
        println!("Missing, and being got now (once; kept in {} for every clone):", cache.root().display());
        if self.wasm_target {
            println!("  wasm32-unknown-unknown    added by rustup, about half a minute");
        }
        if self.browser {
            println!("  chromium, chromedriver    {}, about a minute", Browser::how());
        }
        for tool in &self.cached {
            let name = format!("{} {}", tool.name, tool.version);
            println!("  {name:<25} {}, {}", tool.how(), tool.takes);
        }
    }

    /// The quick ones first, so that what cannot be had is known before the long work.
    fn bring(&self, cache: &Cache) -> Outcome {
        if self.wasm_target {
            timed("wasm32-unknown-unknown", wasm_target::install)?;
        }
        if self.browser {
            timed("chromium", || Browser::install().map(drop))?;
        }
        if self.cached.is_empty() {
            return Ok(());
        }
        let lock = cache.lock()?;
        for tool in &self.cached {
            // Another clone may have brought it while this one waited for the lock.
            if tool.is_there(cache) {
                continue;
            }
            match timed(tool.name, || tool.install(cache, &lock)) {
                Err(failure) if tool.is_optional() => {
                    println!("Going on without it: {failure}");
                }
                other => other?,
            }
        }
        Ok(())
    }
}

fn timed(name: &str, work: impl FnOnce() -> Outcome) -> Outcome {
    println!("Getting {name} …");
    let begun = Instant::now();
    work()?;
    println!("  {name} is there after {:.0} s.", begun.elapsed().as_secs_f32());
    Ok(())
}
