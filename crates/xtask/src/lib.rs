//! The project's chores: set-up, build, serve, test, size. `cargo xtask` runs them; the browser tests borrow [`Server`].
mod agree;
mod budget;
mod build;
mod lock;
mod outcome;
mod page;
mod process;
mod repo;
mod serve;
mod server;
mod size;
mod test;
mod tools;
mod wasm;

pub use outcome::{Failure, Outcome};
use repo::Repo;
pub use server::Server;
use tools::{Need, setup};

const USAGE: &str = "\
cargo xtask setup              get every tool that is missing
cargo xtask build              build the page into dist/
cargo xtask serve [--port N] [--no-build]
                               build and serve it on 127.0.0.1
cargo xtask test [--fast]      run every check; --fast leaves out those that need the built page
cargo xtask agree              compare the plans of native code and of wasm
cargo xtask golden             write the sample patterns of tests/golden anew
cargo xtask size               hold the built page against its byte budgets";

/// Does one chore. `words` is the command line without the program's name.
///
/// # Errors
/// The chore could not be done, or a check failed; the failure reads as a sentence. Unknown words are answered with the
/// list of chores.
pub fn run(words: &[String]) -> Outcome {
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    match words[..] {
        ["setup"] => {
            setup(&Repo::find()?, Need::Test)?;
            println!("Everything is there.");
            Ok(())
        }
        ["build"] => {
            let repo = Repo::find()?;
            build::build(&repo, &setup(&repo, Need::Build)?)
        }
        ["serve", ref options @ ..] => {
            let (port, builds) = serve_options(options)?;
            let repo = Repo::find()?;
            if builds {
                build::build(&repo, &setup(&repo, Need::Build)?)?;
            }
            serve::serve(&repo, port)
        }
        ["test", ref options @ ..] if matches!(options, [] | ["--fast"]) => {
            let fast = !options.is_empty();
            let repo = Repo::find()?;
            let need = if fast { Need::Check } else { Need::Test };
            test::test(&repo, &setup(&repo, need)?, fast)
        }
        ["agree"] => {
            let repo = Repo::find()?;
            agree::compare(&repo, &setup(&repo, Need::Build)?)
        }
        ["golden"] => {
            let words = "test --quiet -p hatwright-tests --test golden";
            let repo = Repo::find()?;
            let mut command = process::cargo();
            process::run(command.args(words.split_whitespace()).env("HATWRIGHT_GOLDEN", "1").current_dir(repo.root()))
        }
        ["size"] => size::size(&Repo::find()?),
        _ => Err(Failure::new(format!("these are the chores:\n{USAGE}"))),
    }
}

/// The port, and whether to build first.
fn serve_options(options: &[&str]) -> Outcome<(u16, bool)> {
    match options {
        [] => Ok((serve::PORT, true)),
        ["--no-build", rest @ ..] => Ok((serve_options(rest)?.0, false)),
        ["--port", number, rest @ ..] => {
            let port = number.parse().map_err(|_| Failure::new(format!("{number} is no port: 1 to 65535, or 0 for any")))?;
            Ok((port, serve_options(rest)?.1))
        }
        [other, ..] => Err(Failure::new(format!("serve does not know {other}:\n{USAGE}"))),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn options_of_serve_come_in_any_order() {
        assert_eq!(serve_options(&[]).unwrap(), (8717, true));
        assert_eq!(serve_options(&["--no-build", "--port", "9000"]).unwrap(), (9000, false));
        assert_eq!(serve_options(&["--port", "9000", "--no-build"]).unwrap(), (9000, false));
        assert!(serve_options(&["--port"]).is_err() && serve_options(&["--port", "70000"]).is_err());
    }

    #[test]
    fn an_unknown_chore_is_answered_with_the_list() {
        let failure = run(&["polish".to_owned()]).unwrap_err().to_string();
        assert!(failure.contains("cargo xtask serve"), "{failure}");
    }
}
