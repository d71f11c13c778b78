//! Where things lie in this clone.
use std::env;
use std::fs;
use std::path::{Path, PathBuf};

use crate::outcome::{At, Failure, Outcome};

/// One clone of the repository.
#[derive(Debug, Clone)]
pub struct Repo {
    root: PathBuf,
}

impl Repo {
    /// The clone that `cargo xtask` was started in.
    pub fn find() -> Outcome<Self> {
        let start = env::var_os("CARGO_MANIFEST_DIR").map_or_else(env::current_dir, |path| Ok(PathBuf::from(path)));
        let start = start.at("looking at", Path::new("."))?;
        let root = start.ancestors().find(|folder| folder.join("Trunk.toml").is_file());
        let root = root.ok_or_else(|| Failure::new("start this inside a clone: no Trunk.toml was found upwards from here"))?;
        Ok(Self { root: root.to_owned() })
    }

    /// The top level.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The finished page: only ever a checked build.
    pub fn dist(&self) -> PathBuf {
        self.root.join("dist")
    }

    /// Everything that is built for wasm. Its own folder, so that its flags never rebuild native code.
    pub fn web_target(&self) -> PathBuf {
        self.root.join("target").join("web")
    }

    /// The exact version of a package in Cargo.lock.
    pub fn locked_version(&self, package: &str) -> Outcome<String> {
        let path = self.root.join("Cargo.lock");
        let lock = fs::read_to_string(&path).at("reading", &path)?;
        locked_version(&lock, package)
            .map(str::to_owned)
            .ok_or_else(|| Failure::new(format!("Cargo.lock does not name {package}")))
    }
}

fn locked_version<'a>(lock: &'a str, package: &str) -> Option<&'a str> {
    let name = format!("name = \"{package}\"");
    let mut lines = lock.lines().skip_while(|line| *line != name);
    lines.nth(1)?.strip_prefix("version = \"")?.strip_suffix('"')
}

#[cfg(test)]
mod tests {
    use super::*;

    const LOCK: &str = "[[package]]\nname = \"wasm-bindgen-macro\"\nversion = \"1.0.0\"\n\n\
                        [[package]]\nname = \"wasm-bindgen\"\nversion = \"0.2.130\"\n";

    #[test]
    fn the_version_is_that_of_the_whole_name() {
        assert_eq!(locked_version(LOCK, "wasm-bindgen"), Some("0.2.130"));
        assert_eq!(locked_version(LOCK, "wasm"), None);
    }
}
