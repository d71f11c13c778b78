//! Running other programs and finding them on the PATH.
use std::env;
use std::ffi::OsStr;
use std::path::PathBuf;
use std::process::{Command, Stdio};

use crate::outcome::{Failure, Outcome};

/// Cargo of the toolchain that runs this program, so that nested calls use the same one.
pub fn cargo() -> Command {
    Command::new(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
}

/// Runs to the end with the terminal's input and output; any exit but success is a failure.
pub fn run(command: &mut Command) -> Outcome {
    let status = command.status().map_err(|error| could_not_start(command, &error))?;
    if status.success() { Ok(()) } else { Err(Failure::new(format!("`{}` failed ({status})", show(command)))) }
}

/// Runs to the end and returns what was printed, without the trailing line end.
pub fn read(command: &mut Command) -> Outcome<String> {
    let output = command.stderr(Stdio::inherit()).output().map_err(|error| could_not_start(command, &error))?;
    if !output.status.success() {
        return Err(Failure::new(format!("`{}` failed ({})", show(command), output.status)));
    }
    Ok(String::from_utf8_lossy(&output.stdout).trim_end().to_owned())
}

/// The first program of this name on the PATH.
pub fn find(program: &str) -> Option<PathBuf> {
    let name = format!("{program}{}", env::consts::EXE_SUFFIX);
    env::split_paths(&env::var_os("PATH")?).map(|folder| folder.join(&name)).find(|path| path.is_file())
}

/// The command as a person would type it.
pub fn show(command: &Command) -> String {
    let program = PathBuf::from(command.get_program());
    let program = program.file_name().unwrap_or(command.get_program());
    std::iter::once(program).chain(command.get_args()).map(OsStr::to_string_lossy).collect::<Vec<_>>().join(" ")
}

fn could_not_start(command: &Command, error: &std::io::Error) -> Failure {
    Failure::new(format!("`{}` could not be started: {error}", show(command)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_failing_program_is_named_with_its_arguments() {
        let failure = run(cargo().arg("no-such-verb-at-all").stderr(Stdio::null())).unwrap_err().to_string();
        assert!(failure.contains("cargo no-such-verb-at-all"), "{failure}");
    }

    #[test]
    fn a_program_that_is_not_there_is_not_found() {
        assert_eq!(find("a-program-that-nobody-has"), None);
    }
}
