//! One folder of tools for all clones, safe against two set-ups at once and against being interrupted.
use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process;

use crate::lock::FolderLock;
use crate::outcome::{At, Failure, Outcome};

/// The folder that holds each tool under `name-version`.
#[derive(Debug, Clone)]
pub struct Cache {
    root: PathBuf,
}

impl Cache {
    /// `$HATWRIGHT_TOOLS`, or `hatwright-tools` in the user's cache folder.
    pub fn locate() -> Outcome<Self> {
        let folder = |name: &str| env::var_os(name).filter(|value| !value.is_empty()).map(PathBuf::from);
        let root = folder("HATWRIGHT_TOOLS")
            .or_else(|| folder("XDG_CACHE_HOME").map(|cache| cache.join("hatwright-tools")))
            .or_else(|| env::home_dir().map(|home| home.join(".cache").join("hatwright-tools")))
            .ok_or_else(|| Failure::new("no home folder: set HATWRIGHT_TOOLS to a folder for the tools"))?;
        Ok(Self { root: std::path::absolute(&root).at("resolving", &root)? })
    }

    /// The cache's own folder.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// Where a finished tool lies, whether or not it is there yet.
    pub fn folder(&self, name: &str, version: &str) -> PathBuf {
        self.root.join(format!("{name}-{version}"))
    }

    /// Waits until no other set-up is at work.
    pub fn lock(&self) -> Outcome<FolderLock> {
        FolderLock::take(&self.root)
    }

    /// Fills a tool's folder: `fill` works in a temporary one that is renamed when it is complete, so a folder that
    /// exists is a tool that works. The lock is asked for so that it cannot be forgotten.
    pub fn install(&self, _lock: &FolderLock, name: &str, version: &str, fill: impl FnOnce(&Path) -> Outcome) -> Outcome {
        let part = self.root.join(format!("part-{name}-{version}-{}", process::id()));
        self.remove_parts(name)?;
        fs::create_dir_all(&part).at("creating", &part)?;
        let filled = fill(&part).and_then(|()| {
            let place = self.folder(name, version);
            fs::rename(&part, &place).at("moving a finished tool to", &place)
        });
        if filled.is_err() {
            // The reason is already on its way up; a leftover folder is removed by the next set-up.
            let _ = fs::remove_dir_all(&part);
        }
        filled
    }

    /// What an interrupted set-up left behind. The lock is held, so nobody is writing there.
    fn remove_parts(&self, name: &str) -> Outcome {
        let prefix = format!("part-{name}-");
        for entry in fs::read_dir(&self.root).at("listing", &self.root)?.flatten() {
            if entry.file_name().to_string_lossy().starts_with(&prefix) {
                fs::remove_dir_all(entry.path()).at("removing", &entry.path())?;
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn scratch(name: &str) -> Cache {
        let root = env::temp_dir().join(format!("xtask-cache-{name}-{}", process::id()));
        let _ = fs::remove_dir_all(&root);
        Cache { root }
    }

    #[test]
    fn only_a_complete_tool_gets_its_folder() {
        let cache = scratch("complete");
        let lock = cache.lock().unwrap();
        let failed = cache.install(&lock, "saw", "1.0", |part| {
            fs::write(part.join("half"), "x").at("writing", part)?;
            Err(Failure::new("no network"))
        });
        assert_eq!(failed.unwrap_err().to_string(), "no network");
        assert!(!cache.folder("saw", "1.0").exists());
        assert_eq!(fs::read_dir(cache.root()).unwrap().count(), 1, "only the lock is left");

        cache.install(&lock, "saw", "1.0", |part| fs::write(part.join("saw"), "x").at("writing", part)).unwrap();
        assert!(cache.folder("saw", "1.0").join("saw").is_file());
        fs::remove_dir_all(cache.root()).unwrap();
    }

    #[test]
    fn an_interrupted_set_up_leaves_nothing_in_the_way() {
        let cache = scratch("interrupted");
        let lock = cache.lock().unwrap();
        let stale = cache.root().join("part-saw-1.0-1");
        fs::create_dir_all(&stale).unwrap();
        cache.install(&lock, "saw", "1.0", |_| Ok(())).unwrap();
        assert!(!stale.exists());
        fs::remove_dir_all(cache.root()).unwrap();
    }
}
