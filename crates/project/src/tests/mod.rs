mod club;
mod json;
mod link;
mod plan;
mod samples_v1;
mod samples_v2;
mod samples_v3;
mod samples_v4;
mod shelf;
mod shelf_model;
mod shopping;
mod spanish;

use crate::ProjectId;

fn id(text: &str) -> ProjectId {
    ProjectId::new(text).unwrap()
}
