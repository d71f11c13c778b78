mod json;
mod link;
mod samples;
mod shelf;
mod shelf_model;

use crate::ProjectId;

fn id(text: &str) -> ProjectId {
    ProjectId::new(text).unwrap()
}
