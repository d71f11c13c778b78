//! What is done to a built page before it may become `dist`.
mod check;
mod csp;
mod tags;

pub use check::{check, files};
pub use csp::insert_policy;
