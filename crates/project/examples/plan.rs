//! Prints a saved hat's pattern as text, or its plan as JSON.
//!
//! ```sh
//! cargo run -p hatwright-project --example plan -- FILE.json [--json] [--size N] [--language en|es] [--terms us|uk]
//! ```
//!
//! The file is one that the page saves. What the JSON holds is told by the module `plan_json`. The exit code is 1 where the file is no
//! hat that can be made, and 2 where the words are not understood.

use hatwright_project::script::Ask;
use std::io::Write;
use std::process::ExitCode;

fn main() -> ExitCode {
    // Words that are not Unicode name files that are not there; the sentence about them shows what could be read.
    let words: Vec<String> = std::env::args_os().skip(1).map(|word| word.to_string_lossy().into_owned()).collect();
    let ask = match Ask::read(words.iter().map(String::as_str)) {
        Ok(ask) => ask,
        Err(said) => return failed(&said, 2),
    };
    let read = std::fs::read(&ask.file).map_err(|why| ask.unread(&why.to_string()));
    match read.and_then(|bytes| ask.answer(&String::from_utf8_lossy(&bytes))) {
        // A reader that has seen enough, such as `head`, is no failure.
        Ok(text) => {
            let _ = std::io::stdout().write_all(text.as_bytes());
            ExitCode::SUCCESS
        }
        Err(said) => failed(&said, 1),
    }
}

fn failed(said: &str, code: u8) -> ExitCode {
    let _ = writeln!(std::io::stderr(), "{said}");
    ExitCode::from(code)
}
