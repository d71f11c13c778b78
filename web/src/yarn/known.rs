//! What the other hats on this device know of yarn.

use crate::bench::Bench;
use crate::keep::Browser;
use hatwright_project::{Project, Shelf};
use leptos::prelude::*;

/// The hats that are kept, but for the one on the bench.
pub fn others(bench: Bench) -> Vec<Project> {
    let here = bench.project.with_untracked(|p| p.id.clone());
    let shelf = Shelf::new(&Browser);
    let listed = shelf.list().map(|listing| listing.projects).unwrap_or_default();
    listed.iter().filter(|summary| summary.id != here).filter_map(|summary| shelf.load(&summary.id).ok()).collect()
}

/// What yarns are called in all hats, this one too, each once.
pub fn names(bench: Bench) -> Vec<String> {
    let here = bench.project.with_untracked(|p| p.colours.clone());
    let others = others(bench);
    let all = here.iter().chain(others.iter().flat_map(|p| &p.colours));
    let mut names: Vec<String> = all.map(|colour| colour.yarn.trim().to_owned()).filter(|name| !name.is_empty()).collect();
    names.sort();
    names.dedup();
    names
}
