//! Keeping two runs of this program from working in the same folder at once.
use std::fs::{self, File, TryLockError};
use std::path::Path;

use crate::outcome::{At, Outcome};

/// While this lives, every other run that wants the folder waits. The operating system drops it with the process.
#[derive(Debug)]
pub struct FolderLock {
    _file: File,
}

impl FolderLock {
    /// Waits until no other run holds the folder, saying so.
    pub fn take(folder: &Path) -> Outcome<Self> {
        fs::create_dir_all(folder).at("creating", folder)?;
        let path = folder.join("lock");
        let file = File::create(&path).at("creating", &path)?;
        match file.try_lock() {
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => {
                println!("Another run is at work in {}; waiting for it.", folder.display());
                file.lock().at("locking", &path)?;
            }
            Err(TryLockError::Error(error)) => return Err(error).at("locking", &path),
        }
        Ok(Self { _file: file })
    }
}

#[cfg(test)]
mod tests {
    use std::{env, process};

    use super::*;

    #[test]
    fn the_lock_keeps_a_second_run_out_until_it_is_dropped() {
        let folder = env::temp_dir().join(format!("xtask-lock-{}", process::id()));
        let lock = FolderLock::take(&folder).unwrap();
        let second = File::create(folder.join("lock")).unwrap();
        assert!(matches!(second.try_lock(), Err(TryLockError::WouldBlock)));
        drop(lock);
        second.try_lock().unwrap();
        fs::remove_dir_all(&folder).unwrap();
    }
}
