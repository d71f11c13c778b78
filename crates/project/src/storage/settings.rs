//! What the page remembers besides hats.

use crate::shopping::MOST_COPIES;
use crate::{ProjectId, Terms, Units};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// Settings of this device. Nothing here is worth an error: what cannot be read is as on the first visit.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Settings {
    /// The hat that was open last.
    pub open: Option<ProjectId>,
    /// Units of a new hat.
    pub units: Units,
    /// Terms of a new hat.
    pub terms: Terms,
    /// Hats on the list for several, each once, with its copies, 1 to [`MOST_COPIES`]. Settings of before there were lists have none.
    pub list: Vec<(ProjectId, u32)>,
    /// The tag (BCP 47) of the language that was chosen by hand: at most 16 ASCII letters, digits and hyphens. Anything else is as if
    /// none was chosen.
    pub language: Option<String>,
    /// What patterns are printed on, once that was chosen by hand.
    pub paper: Option<Paper>,
}

/// A sheet of paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Paper {
    /// A4 (ISO 216): 210 mm × 297 mm.
    #[default]
    A4,
    /// Letter (ANSI Y14.1, size A): 8½ in × 11 in.
    Letter,
}

impl Settings {
    /// The settings as text.
    pub fn to_json(&self) -> String {
        serde_json::to_string(self).unwrap_or_default()
    }

    /// Reads settings, each by itself: one that is missing or makes no sense does not take the others with it.
    ///
    /// ```
    /// use hatwright_project::{Settings, Units};
    /// let read = Settings::parse(r#"{"open": "?", "units": "Inches", "loudness": 11}"#);
    /// assert_eq!(read, Settings { units: Units::Inches, ..Settings::default() });
    /// ```
    pub fn parse(text: &str) -> Self {
        let value: Value = serde_json::from_str(text).unwrap_or_default();
        Self {
            open: field(&value, "open"),
            units: field(&value, "units"),
            terms: field(&value, "terms"),
            list: ticked(&value["list"]),
            language: field::<Option<String>>(&value, "language").filter(|tag| is_tag(tag)),
            paper: field(&value, "paper"),
        }
    }
}

fn field<T: Default + DeserializeOwned>(value: &Value, name: &str) -> T {
    serde_json::from_value(value[name].clone()).unwrap_or_default()
}

fn is_tag(text: &str) -> bool {
    (1..=16).contains(&text.len()) && text.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-')
}

/// The hats on the list, each entry by itself.
fn ticked(value: &Value) -> Vec<(ProjectId, u32)> {
    let mut list: Vec<(ProjectId, u32)> = Vec::new();
    for entry in value.as_array().into_iter().flatten() {
        match serde_json::from_value::<(ProjectId, u32)>(entry.clone()) {
            Ok((id, copies)) if !list.iter().any(|(known, _)| *known == id) => list.push((id, copies.clamp(1, MOST_COPIES))),
            _ => {}
        }
    }
    list
}
