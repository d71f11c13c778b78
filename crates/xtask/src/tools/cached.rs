//! Tools of an exact version that are built or fetched into the cache.
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use super::cache::Cache;
use super::setup::Need;
use crate::lock::FolderLock;
use crate::outcome::{At, Failure, Outcome};
use crate::process::{cargo, find, run};
use crate::repo::Repo;

/// Trunk is not a dependency of the workspace, so its version stands here.
const TRUNK: &str = "0.21.14";

/// A tool that one of the package managers can bring.
#[derive(Debug)]
pub struct CachedTool {
    pub name: &'static str,
    pub version: String,
    pub need: Need,
    /// How long it takes on two cores, in words.
    pub takes: &'static str,
    source: Source,
}

#[derive(Debug)]
enum Source {
    /// Compiled from the crate of the same name.
    Crate { locked: bool },
    /// `npm ci` on the manifest and lock file in `crates/xtask/tools/<name>`.
    Npm { manifest: PathBuf },
}

/// All of them, in the order in which they are brought.
pub fn all(repo: &Repo) -> Outcome<Vec<CachedTool>> {
    let npm = |name: &'static str, need, takes| -> Outcome<CachedTool> {
        let manifest = repo.root().join("crates/xtask/tools").join(name);
        let path = manifest.join("package.json");
        let text = fs::read_to_string(&path).at("reading", &path)?;
        let version = pinned(&text, name)
            .ok_or_else(|| Failure::new(format!("{} does not pin {name} to one version", path.display())))?
            .to_owned();
        Ok(CachedTool { name, version, need, takes, source: Source::Npm { manifest } })
    };
    Ok(vec![
        npm("binaryen", Need::Build, "about half a minute")?,
        npm("axe-core", Need::Test, "a few seconds")?,
        CachedTool {
            // The glue that this writes must match the library that the page links, to the digit. Its own lock file
            // is left out: it lags behind the library's.
            name: "wasm-bindgen-cli",
            version: repo.locked_version("wasm-bindgen")?,
            need: Need::Build,
            takes: "about 2 minutes",
            source: Source::Crate { locked: false },
        },
        CachedTool {
            name: "trunk",
            version: TRUNK.to_owned(),
            need: Need::Build,
            takes: "about 6 minutes",
            source: Source::Crate { locked: true },
        },
    ])
}

impl CachedTool {
    /// Where it lies when it is there.
    pub fn folder(&self, cache: &Cache) -> PathBuf {
        cache.folder(self.name, &self.version)
    }

    /// The folder to put on the PATH for it.
    pub fn programs(&self, cache: &Cache) -> PathBuf {
        let folder = self.folder(cache);
        match self.source {
            Source::Crate { .. } => folder.join("bin"),
            Source::Npm { .. } => folder.join("node_modules").join(".bin"),
        }
    }

    /// Whether the cache holds this very version.
    pub fn is_there(&self, cache: &Cache) -> bool {
        self.folder(cache).is_dir()
    }

    /// How it will be got, as an answer to "where does this come from?".
    pub fn how(&self) -> &'static str {
        match self.source {
            Source::Crate { .. } => "compiled by cargo install",
            Source::Npm { .. } => "fetched by npm",
        }
    }

    /// Whether a build can go on without it.
    pub fn is_optional(&self) -> bool {
        self.name == "binaryen"
    }

    /// Brings it into the cache.
    pub fn install(&self, cache: &Cache, lock: &FolderLock) -> Outcome {
        cache.install(lock, self.name, &self.version, |part| match &self.source {
            Source::Crate { locked } => self.install_crate(cache, part, *locked),
            Source::Npm { manifest } => self.install_npm(part, manifest),
        })
    }

    fn install_crate(&self, cache: &Cache, part: &Path, locked: bool) -> Outcome {
        // Kept between attempts, so that an interrupted compilation resumes; removed once it is done.
        let objects = cache.root().join(format!("objects-{}-{}", self.name, self.version));
        let mut command = cargo();
        command.args(["install", "--quiet", "--no-track", self.name, "--version", &format!("={}", self.version)]);
        command.arg("--root").arg(part).env("CARGO_TARGET_DIR", &objects).current_dir(cache.root());
        if locked {
            command.arg("--locked");
        }
        // The page's own flags do not belong in a native tool.
        command.env_remove("RUSTFLAGS").env_remove("CARGO_ENCODED_RUSTFLAGS");
        run(&mut command)?;
        fs::remove_dir_all(&objects).at("removing", &objects)
    }

    fn install_npm(&self, part: &Path, manifest: &Path) -> Outcome {
        if find("npm").is_none() {
            return Err(Failure::new(format!(
                "{} comes from npm, which is not on the PATH: install Node 18 or newer (Debian: apt-get install npm)",
                self.name
            )));
        }
        for file in ["package.json", "package-lock.json"] {
            let from = manifest.join(file);
            fs::copy(&from, part.join(file)).at("copying", &from)?;
        }
        let mut command = Command::new("npm");
        command.args(["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--silent"]).current_dir(part);
        run(&mut command)
    }
}

/// The version that an npm manifest pins a dependency to; nothing for a range.
fn pinned<'a>(manifest: &'a str, name: &str) -> Option<&'a str> {
    let (_, rest) = manifest.split_once(&format!("\"{name}\": \""))?;
    let (version, _) = rest.split_once('"')?;
    version.starts_with(|first: char| first.is_ascii_digit()).then_some(version)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_exact_version_is_read_and_a_range_is_refused() {
        assert_eq!(pinned("{\"dependencies\": {\"binaryen\": \"132.0.0\"}}", "binaryen"), Some("132.0.0"));
        assert_eq!(pinned("{\"dependencies\": {\"binaryen\": \"^132.0.0\"}}", "binaryen"), None);
        assert_eq!(pinned("{\"dependencies\": {}}", "binaryen"), None);
    }
}
