//! What every compilation for wasm has in common: its own target folder, the shipped profile, no machine paths.
use std::env;
use std::fs;
use std::path::PathBuf;
use std::process::Command;

use crate::outcome::{At, Outcome};
use crate::process::{cargo, run};
use crate::repo::Repo;
use crate::tools::Tools;

/// The profile that is shipped; see the workspace's Cargo.toml.
pub const PROFILE: &str = "wasm-release";

/// Fetches what the lock file names, so that everything after this works offline and all registry folders exist.
pub fn fetch(repo: &Repo) -> Outcome {
    run(cargo().args(["fetch", "--quiet", "--locked"]).current_dir(repo.root()))
}

/// Prepares a command that compiles for wasm: tools on the PATH, the wasm target folder, paths rewritten.
pub fn prepare(command: &mut Command, repo: &Repo, tools: &Tools) -> Outcome {
    // The encoded form survives spaces in folder names. It takes the place of any RUSTFLAGS of the caller, which must
    // not leak into what is shipped.
    let flags: Vec<String> = renamed_folders(repo, tools)?
        .iter()
        .map(|(folder, name)| format!("--remap-path-prefix={}={name}", folder.display()))
        .collect();
    tools.lend(command).current_dir(repo.root());
    command.env("CARGO_ENCODED_RUSTFLAGS", flags.join("\u{1f}")).env("CARGO_TARGET_DIR", repo.web_target());
    command.env_remove("RUSTFLAGS");
    Ok(())
}

/// Folders of this machine and what they are called in panic messages instead. The compiler takes the last that fits,
/// so the wider ones come first.
fn renamed_folders(repo: &Repo, tools: &Tools) -> Outcome<Vec<(PathBuf, &'static str)>> {
    let cargo_home = cargo_home();
    let mut folders =
        vec![(cargo_home.clone(), "/cargo"), (repo.root().to_owned(), "/hatwright"), (tools.sysroot.clone(), "/rust")];
    // One folder a registry, named after its host.
    let sources = cargo_home.join("registry").join("src");
    if sources.is_dir() {
        for entry in fs::read_dir(&sources).at("listing", &sources)?.flatten() {
            folders.push((entry.path(), "/crates"));
        }
    }
    Ok(folders)
}

/// Folders whose names must not be found in what is shipped.
pub fn machine_paths(repo: &Repo, tools: &Tools) -> Vec<PathBuf> {
    let known = [repo.root().to_owned(), cargo_home(), tools.sysroot.clone(), env::temp_dir()];
    known.into_iter().chain(env::home_dir()).collect()
}

fn cargo_home() -> PathBuf {
    let given = env::var_os("CARGO_HOME").filter(|value| !value.is_empty()).map(PathBuf::from);
    given.unwrap_or_else(|| env::home_dir().unwrap_or_default().join(".cargo"))
}
