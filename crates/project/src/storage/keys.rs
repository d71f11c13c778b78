//! Names of places in the storage: one for each hat.

use crate::ProjectId;

pub(super) const LIVE: &str = "hatwright.project.";
pub(super) const GONE: &str = "hatwright.gone.";
/// Where the settings are kept.
pub const SETTINGS_KEY: &str = "hatwright.settings";

/// Where a hat is kept.
///
/// ```
/// use hatwright_project::{ProjectId, storage::{id_of_key, key}};
/// let id = ProjectId::new("clubcap01").unwrap();
/// assert_eq!(key(&id), "hatwright.project.clubcap01");
/// assert_eq!(id_of_key(&key(&id)), Some(id));
/// ```
pub fn key(id: &ProjectId) -> String {
    [LIVE, id.as_str()].concat()
}

/// Where a deleted hat is kept.
pub fn gone_key(id: &ProjectId) -> String {
    [GONE, id.as_str()].concat()
}

/// Whose place this is; `None` for anything but a hat's place.
pub fn id_of_key(key: &str) -> Option<ProjectId> {
    key.strip_prefix(LIVE).and_then(|id| ProjectId::new(id).ok())
}

/// Whose place among the deleted this is.
pub fn id_of_gone_key(key: &str) -> Option<ProjectId> {
    key.strip_prefix(GONE).and_then(|id| ProjectId::new(id).ok())
}
