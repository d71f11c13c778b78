mod club;
mod json;
mod link;
mod samples_v1;
mod samples_v2;
mod samples_v3;
mod shelf;
mod shelf_model;
mod shopping;

use crate::ProjectId;

fn id(text: &str) -> ProjectId {
    ProjectId::new(text).unwrap()
}
