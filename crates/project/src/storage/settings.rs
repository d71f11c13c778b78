//! What the page remembers besides hats.

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
        Self { open: field(&value, "open"), units: field(&value, "units"), terms: field(&value, "terms") }
    }
}

fn field<T: Default + DeserializeOwned>(value: &Value, name: &str) -> T {
    serde_json::from_value(value[name].clone()).unwrap_or_default()
}
