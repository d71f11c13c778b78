//! The compiler's own library for wasm.
use std::path::PathBuf;
use std::process::Command;

use crate::outcome::{Failure, Outcome};
use crate::process::{find, read, run};

const TARGET: &str = "wasm32-unknown-unknown";

/// Whether `rustc` can compile for wasm.
pub fn is_installed() -> Outcome<bool> {
    let folder = sysroot()?.join("lib").join("rustlib").join(TARGET);
    Ok(folder.is_dir())
}

/// Where the compiler lies.
pub fn sysroot() -> Outcome<PathBuf> {
    let said = read(Command::new("rustc").args(["--print", "sysroot"]));
    said.map(PathBuf::from).map_err(|failure| {
        Failure::new(format!("{failure}\nInstall Rust 1.95 or newer with rustup (rustup.rs), then start this again."))
    })
}

/// Adds it by rustup, which keeps it beside the compiler.
pub fn install() -> Outcome {
    if find("rustup").is_none() {
        return Err(Failure::new(format!(
            "this Rust has no standard library for {TARGET} and there is no rustup to add it.\n\
             Install it with the package manager that Rust came from (Debian: libstd-rust-dev-wasm32), or use rustup."
        )));
    }
    run(Command::new("rustup").args(["target", "add", TARGET]))
}
