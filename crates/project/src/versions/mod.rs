//! Every form that a saved hat ever had, and the way from each to the current one.
//!
//! To add form 5: see the module of form 4.

pub(crate) mod v1;
pub(crate) mod v2;
mod v3;
mod v4;

use crate::document::texts_hold;
use crate::text::NOTES;
use crate::{Project, Unreadable};
use hatwright_words::document as words;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;

/// The form that this version writes.
pub(crate) const SCHEMA: u64 = 4;

/// Reads a document of one form, brings it to the current one, and checks it as anything from outside is checked.
pub(crate) fn read(schema: u64, payload: &Value) -> Result<Project, Unreadable> {
    let project = match schema {
        1 => v4::migrate(v3::migrate(v2::migrate(v1::migrate(parse(payload)?)))),
        2 => v4::migrate(v3::migrate(v2::migrate(parse(payload)?))),
        3 => v4::migrate(v3::migrate(parse(payload)?)),
        4 => v4::migrate(parse(payload)?),
        _ => return Err(Unreadable::broken(words::never_form())),
    };
    checked(project)
}

/// Reads a form's own structs. A field that the form does not have is an error: no document of that form was ever written with
/// one, and to drop it at the next save would be to lose it.
fn parse<T: DeserializeOwned + Serialize>(payload: &Value) -> Result<T, Unreadable> {
    let document: T = T::deserialize(payload).map_err(|why| Unreadable::broken(words::not_of_form(&why.to_string())))?;
    if serde_json::to_value(&document).is_ok_and(|again| again == *payload) {
        Ok(document)
    } else {
        Err(Unreadable::broken(words::unlike_form()))
    }
}

fn checked(project: Project) -> Result<Project, Unreadable> {
    project.check()?;
    if project.revision > Project::MOST_REVISIONS {
        return Err(Unreadable::broken(words::absurd_revision()));
    }
    let Project { name, colours, sizes, designer, .. } = &project;
    if sizes.len() > Project::MOST_SIZES {
        return Err(Unreadable::broken(words::too_many_sizes(Project::MOST_SIZES as u32)));
    }
    let texts = NOTES.holds(&project.notes) && texts_hold(name, colours, sizes, designer);
    if texts { Ok(project) } else { Err(Unreadable::broken(words::untidy_texts())) }
}
