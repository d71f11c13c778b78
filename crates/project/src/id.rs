//! A hat's identity on one device.

use core::fmt;
use hatwright_words::document as words;
use serde::{Deserialize, Serialize};

/// Tells one saved hat from another: 8 to 26 of the characters a–z and 0–9. It never travels in a link.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct ProjectId(String);

impl ProjectId {
    /// An identity from its text.
    ///
    /// # Errors
    /// [`BadId`] for any other length or character.
    pub fn new(text: &str) -> Result<Self, BadId> {
        let short = (8..=26).contains(&text.len());
        let plain = text.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit());
        if short && plain { Ok(Self(text.to_owned())) } else { Err(BadId) }
    }

    /// An identity of 13 characters from 64 random bits, which the caller draws: this crate knows no chance.
    ///
    /// ```
    /// use hatwright_project::ProjectId;
    /// assert_eq!(ProjectId::from_bits(0).as_str(), "0000000000000");
    /// assert_eq!(ProjectId::from_bits(u64::MAX).as_str(), "fvvvvvvvvvvvv");
    /// ```
    pub fn from_bits(bits: u64) -> Self {
        const DIGITS: &[u8; 32] = b"0123456789abcdefghijklmnopqrstuv";
        Self((0..13).rev().map(|place| char::from(DIGITS[(bits >> (5 * place) & 31) as usize])).collect())
    }

    /// The text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for ProjectId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl TryFrom<String> for ProjectId {
    type Error = BadId;

    fn try_from(text: String) -> Result<Self, BadId> {
        Self::new(&text)
    }
}

impl From<ProjectId> for String {
    fn from(id: ProjectId) -> Self {
        id.0
    }
}

/// Not an identity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BadId;

impl fmt::Display for BadId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(words::bad_id())
    }
}

impl core::error::Error for BadId {}
