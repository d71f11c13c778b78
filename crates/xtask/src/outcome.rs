//! The one way a chore fails: a sentence for the person at the terminal.
use std::fmt;
use std::io;
use std::path::Path;

/// Why a chore stopped, in words that say what to do about it where that is known.
#[derive(Debug)]
pub struct Failure(String);

/// What a chore returns.
pub type Outcome<T = ()> = Result<T, Failure>;

impl Failure {
    /// A failure that reads as `sentence`.
    pub fn new(sentence: impl Into<String>) -> Self {
        Self(sentence.into())
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0)
    }
}

impl std::error::Error for Failure {}

/// Adds to an I/O error what was being done, and to which file.
pub trait At<T> {
    /// For example `fs::read(path).at("reading", path)`.
    fn at(self, doing: &str, path: &Path) -> Outcome<T>;
}

impl<T> At<T> for io::Result<T> {
    fn at(self, doing: &str, path: &Path) -> Outcome<T> {
        self.map_err(|error| Failure(format!("{doing} {}: {error}", path.display())))
    }
}
