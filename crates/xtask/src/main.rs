//! `cargo xtask <verb>`: every chore of the project. See [`xtask::run`].
use std::process::ExitCode;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    match xtask::run(&words) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            eprintln!("\nxtask: {failure}");
            ExitCode::FAILURE
        }
    }
}
