//! Native code and wasm must plan the same hats to the last bit: both print a digest of many, and the digests are
//! compared.
use std::process::Command;

use crate::lock::FolderLock;
use crate::outcome::{At, Failure, Outcome};
use crate::process::{cargo, find, read, run};
use crate::repo::Repo;
use crate::tools::Tools;
use crate::wasm;

/// How many hats are digested.
const HATS: &str = "1000";

/// Builds the program `digest` of the tests both ways, runs it natively and in Node, and compares.
pub fn compare(repo: &Repo, tools: &Tools) -> Outcome {
    if find("node").is_none() {
        return Err(Failure::new("wasm is run in Node, which is not on the PATH: install Node 18 or newer"));
    }
    let chosen = ["--package", "hatwright-tests", "--bin", "digest"];
    let native = read(cargo().args(["run", "--quiet"]).args(chosen).args(["--", HATS]).current_dir(repo.root()))?;

    let _lock = FolderLock::take(&repo.web_target())?;
    wasm::fetch(repo)?;
    // The profile and the flags of the page, so that what is compared is what is shipped.
    let mut build = cargo();
    build.args(["build", "--quiet", "--target", "wasm32-unknown-unknown", "--profile", wasm::PROFILE]).args(chosen);
    wasm::prepare(&mut build, repo, tools)?;
    run(&mut build)?;
    let made = repo.web_target().join("wasm32-unknown-unknown").join(wasm::PROFILE).join("digest.wasm");
    let glue = repo.web_target().join("digest");
    std::fs::create_dir_all(&glue).at("creating", &glue)?;
    let mut bindgen = Command::new("wasm-bindgen");
    bindgen.args(["--target", "nodejs", "--no-typescript", "--out-dir"]).arg(&glue).arg(&made);
    run(tools.lend(&mut bindgen))?;
    let script = format!("console.log(require('./digest.js').digest({HATS}))");
    let wasm = read(Command::new("node").arg("--eval").arg(script).current_dir(&glue))?;

    if native != wasm {
        return Err(Failure::new(format!("native code and wasm disagree:\n  native {native}\n  wasm   {wasm}")));
    }
    println!("Native code and wasm agree on {HATS} hats: {native}");
    Ok(())
}
