//! Every check of the project, in the order in which they are quickest to fail.
use std::time::Instant;

use crate::agree;
use crate::build::build;
use crate::outcome::{Failure, Outcome};
use crate::process::{cargo, run};
use crate::repo::Repo;
use crate::size::size;
use crate::tools::Tools;

/// One step of `cargo xtask test`.
struct Step {
    name: &'static str,
    /// Left out by `--fast`: needs the built page.
    slow: bool,
    act: Act,
}

enum Act {
    /// Cargo with these words and, in front, settings of its environment.
    Cargo(&'static [(&'static str, &'static str)], &'static str),
    Own(fn(&Repo, &Tools) -> Outcome),
}

const STEPS: &[Step] = &[
    Step { name: "format", slow: false, act: Act::Cargo(&[], "fmt --all --check") },
    Step {
        name: "lints, native",
        slow: false,
        act: Act::Cargo(&[], "clippy --quiet --workspace --exclude hatwright-web --all-targets -- -D warnings"),
    },
    Step {
        name: "lints, browser tests",
        slow: true,
        act: Act::Cargo(&[], "clippy --quiet -p hatwright-tests --features browser --all-targets -- -D warnings"),
    },
    Step {
        name: "lints, wasm",
        slow: false,
        act: Act::Cargo(
            &[],
            "clippy --quiet --target wasm32-unknown-unknown -p hatwright-web -p hatwright-sizing -p hatwright-pattern \
             -p hatwright-project -p hatwright-words -- -D warnings",
        ),
    },
    Step {
        name: "unit, property, published tables, examples of the documentation",
        slow: false,
        act: Act::Cargo(&[], "test --quiet --workspace --exclude hatwright-web"),
    },
    Step { name: "units of the page", slow: false, act: Act::Cargo(&[], "test --quiet -p hatwright-web") },
    Step {
        name: "documentation",
        slow: false,
        act: Act::Cargo(&[("RUSTDOCFLAGS", "-D warnings")], "doc --quiet --no-deps --workspace --exclude hatwright-web"),
    },
    Step { name: "build", slow: true, act: Act::Own(build) },
    Step { name: "size", slow: true, act: Act::Own(|repo, _| size(repo)) },
    Step { name: "native against wasm", slow: true, act: Act::Own(agree::compare) },
    Step { name: "the page in a browser", slow: true, act: Act::Own(browser) },
];

/// Runs all steps, or with `fast` those that need no built page; the first failure ends it.
pub fn test(repo: &Repo, tools: &Tools, fast: bool) -> Outcome {
    let begun = Instant::now();
    for step in STEPS.iter().filter(|step| !(fast && step.slow)) {
        println!("\n== {} ==", step.name);
        let step_begun = Instant::now();
        let outcome = match &step.act {
            Act::Cargo(settings, words) => {
                run(cargo().args(words.split_whitespace()).envs(settings.iter().copied()).current_dir(repo.root()))
            }
            Act::Own(act) => act(repo, tools),
        };
        outcome.map_err(|failure| Failure::new(format!("the step \"{}\" failed: {failure}", step.name)))?;
        println!("-- {}: {:.0} s", step.name, step_begun.elapsed().as_secs_f32());
    }
    println!("\nEvery check passed, in {:.0} s.", begun.elapsed().as_secs_f32());
    Ok(())
}

fn browser(repo: &Repo, tools: &Tools) -> Outcome {
    let missing = |what: &str| Failure::new(format!("the browser tests need {what}"));
    let browser = tools.browser.as_ref().ok_or_else(|| missing("Chromium and chromedriver"))?;
    let axe = tools.axe.as_ref().ok_or_else(|| missing("axe-core"))?;
    let words = "test --quiet -p hatwright-tests --features browser --test browser -- --test-threads=2";
    let mut command = cargo();
    command.args(words.split_whitespace()).current_dir(repo.root());
    command.env("HATWRIGHT_DIST", repo.dist()).env("HATWRIGHT_AXE", axe);
    command.env("HATWRIGHT_CHROMIUM", &browser.chromium).env("HATWRIGHT_CHROMEDRIVER", &browser.driver);
    run(&mut command)
}
