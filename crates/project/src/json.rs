//! The document as text: what storage and files hold.
//!
//! ```json
//! {"hatwright":"hat","schema":4,"check":"9f60a12b","project":{"colours":[…],"id":"…",…}}
//! ```
//!
//! `check` is the CRC-32 of `project` written without spaces and with its keys in order, so that a file stays whole when it is
//! indented or its keys change places, and is found out when anything else changes.

use crate::checksum::checksum;
use crate::versions::{self, SCHEMA};
use crate::{Project, SayBreach};
use core::fmt;
use hatwright_sizing::Breach;
use hatwright_words::document as words;
use serde_json::Value;

const MARK: &str = "hat";
/// Above the longest document: 80 000 bytes, and 930 000 more where the kept rounds of a tail of 20 m are all different. What is longer
/// is something else, and is not even parsed.
const LONGEST: usize = 1 << 21;

/// Writes a hat as text, in the current schema, with its texts tidied.
///
/// [`open`] gives the same hat back if it passes [`Project::check`].
pub fn to_json(project: &Project) -> String {
    let project = canonical(serde_json::to_value(project.clone().tidy()).unwrap_or_default());
    let check = checksum(&[project.as_bytes()]);
    format!(r#"{{"hatwright":"{MARK}","schema":{SCHEMA},"check":"{check:08x}","project":{project}}}"#)
}

/// Reads a hat from the text of a file or of the storage, whatever version wrote it.
///
/// # Errors
/// [`Unreadable`], and then the text must be kept as it is: a newer version of the page may read it.
pub fn open(text: &str) -> Result<Project, Unreadable> {
    if text.len() > LONGEST {
        return Err(Unreadable::NotOurs);
    }
    // Some editors put a byte order mark before what they save.
    let value: Value = serde_json::from_str(text.trim_start_matches('\u{feff}')).map_err(|_| Unreadable::NotJson)?;
    if value["hatwright"] != MARK {
        return Err(Unreadable::NotOurs);
    }
    let schema = value["schema"].as_u64().ok_or_else(|| Unreadable::broken(words::no_form()))?;
    if schema > SCHEMA {
        return Err(Unreadable::Newer { schema });
    }
    let Value::Object(mut envelope) = value else { return Err(Unreadable::NotOurs) };
    let payload = envelope.remove("project").unwrap_or_default();
    let check = envelope.remove("check").unwrap_or_default();
    let sum = checksum(&[canonical(payload.clone()).as_bytes()]);
    if check != format!("{sum:08x}") {
        return Err(Unreadable::broken(words::changed_since()));
    }
    if envelope.len() != 2 {
        return Err(Unreadable::broken(words::more_than_form()));
    }
    versions::read(schema, &payload)
}

/// JSON without spaces and with every object's keys in order, whichever order the map type keeps.
pub(crate) fn canonical(mut value: Value) -> String {
    value.sort_all_objects();
    value.to_string()
}

/// Why a text is not a hat that can be opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unreadable {
    /// Not JSON, or only a part of it.
    NotJson,
    /// JSON of another kind.
    NotOurs,
    /// A form that only a newer version knows.
    Newer {
        /// The form's number.
        schema: u64,
    },
    /// A known form that does not hold what it should.
    Broken {
        /// Half a sentence on what is wrong, in the language that was spoken when it was found.
        what: String,
    },
}

impl Unreadable {
    pub(crate) fn broken(what: impl fmt::Display) -> Self {
        Self::Broken { what: what.to_string() }
    }
}

impl From<Breach> for Unreadable {
    fn from(breach: Breach) -> Self {
        Self::broken(SayBreach(breach))
    }
}

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotJson => f.write_str(words::not_json()),
            Self::NotOurs => f.write_str(words::not_ours()),
            Self::Newer { schema } => f.write_str(&words::newer_form(&schema.to_string(), &SCHEMA.to_string())),
            Self::Broken { what } => f.write_str(&words::broken(what)),
        }
    }
}

impl core::error::Error for Unreadable {}
