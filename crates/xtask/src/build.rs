//! The release build: Trunk into a staging folder, then the policy and the checks, and only then `dist`.
use std::fs;
use std::path::Path;
use std::process::Command;
use std::time::Instant;

use crate::lock::FolderLock;
use crate::outcome::{At, Failure, Outcome};
use crate::page;
use crate::process::run;
use crate::repo::Repo;
use crate::tools::Tools;
use crate::wasm;

/// What is known about the build that lies in `dist`.
#[derive(Debug, PartialEq, Eq)]
pub struct BuildRecord {
    /// Version of binaryen; nothing for a build without wasm-opt.
    pub wasm_opt: Option<String>,
}

/// Builds the page into `dist`, which is replaced only by a page that has passed every check.
pub fn build(repo: &Repo, tools: &Tools) -> Outcome {
    let _lock = FolderLock::take(&repo.web_target())?;
    let begun = Instant::now();
    let stage = repo.web_target().join("site");
    wasm::fetch(repo)?;
    // Files of earlier builds would be taken along.
    remove(&repo.web_target().join("wasm-bindgen"))?;
    remove(&stage)?;
    trunk(repo, tools, &stage)?;

    let index = stage.join("index.html");
    let html = fs::read_to_string(&index).at("reading", &index)?;
    fs::write(&index, page::insert_policy(&html)?).at("writing", &index)?;
    page::check(&stage, &wasm::machine_paths(repo, tools))?;

    let dist = repo.dist();
    remove(&dist)?;
    fs::rename(&stage, &dist).at("moving the finished page to", &dist)?;
    BuildRecord { wasm_opt: tools.wasm_opt.clone() }.write(repo)?;
    println!("Built into dist/ in {:.0} s.", begun.elapsed().as_secs_f32());
    Ok(())
}

fn trunk(repo: &Repo, tools: &Tools, stage: &Path) -> Outcome {
    let web = repo.root().join("web");
    let plain = web.join(".index-without-wasm-opt.html");
    let target = if tools.wasm_opt.is_some() {
        web.join("index.html")
    } else {
        println!("wasm-opt is not here: the page will work, but be larger, and its size cannot be judged.");
        let index = web.join("index.html");
        let html = fs::read_to_string(&index).at("reading", &index)?;
        fs::write(&plain, without_wasm_opt(&html)?).at("writing", &plain)?;
        plain.clone()
    };
    let mut command = Command::new("trunk");
    command.arg("build").arg(&target).args(["--offline", "true", "--skip-version-check", "--cargo-profile", wasm::PROFILE]);
    command.arg("--dist").arg(stage);
    wasm::prepare(&mut command, repo, tools)?;
    // Trunk reads this variable as true or false and refuses the customary "1".
    command.env_remove("NO_COLOR").env("RUST_BACKTRACE", "0");
    let built = run(&mut command);
    if tools.wasm_opt.is_none() {
        fs::remove_file(&plain).at("removing", &plain)?;
    }
    built
}

/// The source page with wasm-opt turned off, which Trunk would otherwise try to download.
fn without_wasm_opt(html: &str) -> Outcome<String> {
    let name = "data-wasm-opt=\"";
    let missing = || Failure::new("web/index.html names no level for wasm-opt");
    let (before, rest) = html.split_once(name).ok_or_else(missing)?;
    let (_, after) = rest.split_once('"').ok_or_else(missing)?;
    Ok(format!("{before}{name}0\"{after}"))
}

fn remove(folder: &Path) -> Outcome {
    if folder.exists() { fs::remove_dir_all(folder).at("removing", folder) } else { Ok(()) }
}

impl BuildRecord {
    /// The record of the page in `dist`.
    pub fn of(repo: &Repo) -> Outcome<Self> {
        let path = repo.web_target().join("build-record");
        let known = fs::read_to_string(&path).unwrap_or_default();
        let page = index_of(repo)?;
        let (tool, recorded) = known.split_once('\n').unwrap_or_default();
        if recorded != page {
            return Err(Failure::new("dist/ is not what `cargo xtask build` left there last: build again"));
        }
        Ok(Self { wasm_opt: Some(tool.to_owned()).filter(|tool| !tool.is_empty()) })
    }

    /// Kept outside of `dist`, which holds only what is served. The page itself, which names every other file by its
    /// hash, ties the record to its build.
    fn write(&self, repo: &Repo) -> Outcome {
        let path = repo.web_target().join("build-record");
        let tool = self.wasm_opt.as_deref().unwrap_or_default();
        fs::write(&path, format!("{tool}\n{}", index_of(repo)?)).at("writing", &path)
    }
}

fn index_of(repo: &Repo) -> Outcome<String> {
    let path = repo.dist().join("index.html");
    if !path.is_file() {
        return Err(Failure::new("there is no page in dist/ yet: `cargo xtask build` makes it"));
    }
    fs::read_to_string(&path).at("reading", &path)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_level_of_wasm_opt_is_changed() {
        let html = "<link data-trunk rel=\"rust\" data-wasm-opt=\"s\" data-wasm-opt-params=\"--x\">";
        assert_eq!(without_wasm_opt(html).unwrap(), html.replace("=\"s\"", "=\"0\""));
        assert!(without_wasm_opt("<link>").is_err());
    }
}
