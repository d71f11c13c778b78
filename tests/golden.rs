//! Sample patterns as they are printed, word for word, so that no change of a word passes unseen.
//!
//! `cargo xtask golden` writes the files of `golden/` anew from what the program prints now; what changed is then read in the diff.

use hatwright_pattern::figures::Units;
use hatwright_pattern::written::{About, Terms, print};
use hatwright_project::{Project, ProjectId, example, samples};
use hatwright_sizing::plan;
use std::path::PathBuf;
use std::{env, fs};

/// Every hat of the club, with a short name for its files.
fn hats() -> Vec<(&'static str, Project)> {
    let id = ProjectId::from_bits;
    let names = ["crew", "baby", "coach", "slouch", "stocking", "tam", "flaps", "warmer", "brimmed", "sideways"];
    let rest = samples([0, 1, 2, 3, 4, 5, 6, 7, 8, 9].map(|bits| id(bits + 1)));
    [("junior", example(id(0)))].into_iter().chain(names.into_iter().zip(rest)).collect()
}

fn printed(project: &Project, terms: Terms, units: Units) -> String {
    let hat = plan(&project.spec).expect("the club's hats can be made");
    let colours: Vec<&str> = project.colours.iter().map(|c| &*c.name).collect();
    let yarns: Vec<&str> = project.colours.iter().map(|c| &*c.yarn).collect();
    let about = About {
        title: &project.name,
        colour_names: &colours,
        yarn_names: &yarns,
        terms,
        units,
        version: env!("CARGO_PKG_VERSION"),
        ..About::default()
    };
    print(&hat, &project.spec, &about)
}

/// Compares with the file, or writes it where the chore asks for that.
fn agree(name: &str, text: &str) -> Option<String> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("golden").join(name);
    if env::var_os("HATWRIGHT_GOLDEN").is_some() {
        fs::write(&path, text).expect("the folder of golden files can be written");
        return None;
    }
    let kept = fs::read_to_string(&path).unwrap_or_default();
    if kept == text {
        return None;
    }
    let differs = kept.lines().zip(text.lines()).find(|(a, b)| a != b);
    let (was, is) = differs.unwrap_or(("(its length)", "(another length)"));
    Some(format!("{name}\n  was: {was}\n  is:  {is}"))
}

#[test]
fn patterns_read_as_they_did() {
    let mut differing = Vec::new();
    for (name, project) in hats() {
        for (terms, units, end) in [(Terms::Us, Units::Centimetres, "us"), (Terms::Uk, Units::Inches, "uk")] {
            differing.extend(agree(&format!("{name}.{end}.txt"), &printed(&project, terms, units)));
        }
    }
    assert!(differing.is_empty(), "`cargo xtask golden` writes them anew:\n{}", differing.join("\n"));
}
