//! The promises of a finished page: one policy, nothing that the policy forbids, relative addresses, no other host,
//! no path of the machine that built it.
use std::fs;
use std::path::{Path, PathBuf};

use super::csp::count_policies;
use super::tags::tags;
use crate::outcome::{At, Failure, Outcome};

/// Checks a whole built page. `machine_paths` are folders whose names must not be found in any file.
pub fn check(folder: &Path, machine_paths: &[PathBuf]) -> Outcome {
    let needles: Vec<String> = machine_paths.iter().filter_map(|path| needle(path)).collect();
    let mut faults = Vec::new();
    for name in files(folder)? {
        let path = folder.join(&name);
        let bytes = fs::read(&path).at("reading", &path)?;
        let mut report = |fault: String| faults.push(format!("{name}: {fault}"));
        if let Some(found) = needles.iter().find(|needle| contains(&bytes, needle.as_bytes())) {
            report(format!("holds {found}, a path of this machine"));
        }
        let Ok(text) = str::from_utf8(&bytes) else { continue };
        other_hosts(text).into_iter().for_each(&mut report);
        if name == "index.html" {
            page_faults(text).into_iter().for_each(&mut report);
            missing_files(text, folder).into_iter().for_each(&mut report);
        }
    }
    if faults.is_empty() { Ok(()) } else { Err(Failure::new(format!("the built page is refused:\n  {}", faults.join("\n  ")))) }
}

/// Every file below a folder, as names with forward slashes, sorted.
pub fn files(folder: &Path) -> Outcome<Vec<String>> {
    let mut names = Vec::new();
    let mut open = vec![String::new()];
    while let Some(prefix) = open.pop() {
        let here = folder.join(&prefix);
        for entry in fs::read_dir(&here).at("listing", &here)? {
            let entry = entry.at("listing", &here)?;
            let name = format!("{prefix}{}", entry.file_name().to_string_lossy());
            if entry.path().is_dir() {
                open.push(format!("{name}/"));
            } else {
                names.push(name);
            }
        }
    }
    names.sort();
    Ok(names)
}

/// The folder as it would stand in a file; nothing for one so short that it would match by accident.
fn needle(path: &Path) -> Option<String> {
    let text = path.to_string_lossy();
    let text = text.trim_end_matches(['/', '\\']);
    let separator = if text.contains('\\') { '\\' } else { '/' };
    (text.len() > 2).then(|| format!("{text}{separator}"))
}

fn contains(bytes: &[u8], needle: &[u8]) -> bool {
    bytes.windows(needle.len()).any(|window| window == needle)
}

/// Absolute addresses that a text file could fetch: those that begin a string, an attribute's value or a `url()`. The
/// glue script mentions others in its comments, and a name of an XML vocabulary looks like an address but is none.
fn other_hosts(text: &str) -> Vec<String> {
    let vocabularies = ["http://www.w3.org/2000/svg", "http://www.w3.org/1999/xlink", "http://www.w3.org/1998/Math/MathML"];
    let mentions = text.match_indices("http://").chain(text.match_indices("https://"));
    let begins = mentions.filter(|(at, _)| text[..*at].trim_end().ends_with(['"', '\'', '`', '(', '=']));
    let addresses = begins.map(|(at, _)| &text[at..]).filter(|rest| !vocabularies.iter().any(|known| rest.starts_with(known)));
    addresses.map(|rest| format!("names another host: {}", rest.chars().take(60).collect::<String>())).collect()
}

fn page_faults(html: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let policies = count_policies(html);
    if policies != 1 {
        faults.push(format!("has {policies} content security policies instead of one"));
    }
    for tag in tags(html) {
        for (name, value) in &tag.attributes {
            let name = name.to_ascii_lowercase();
            if name == "style" {
                faults.push(format!("<{}> has a style attribute, which the policy forbids", tag.name));
            }
            if name.starts_with("on") {
                faults.push(format!("<{}> has {name}=, which the policy forbids", tag.name));
            }
            if ["href", "src", "srcset", "action", "poster", "data"].contains(&name.as_str()) && !is_relative(value) {
                faults.push(format!("<{}> points to {value}, which fails in a sub-folder", tag.name));
            }
        }
    }
    faults
}

/// Files that the page asks for by itself and that are not there. The script's own imports are among its preloads.
fn missing_files(html: &str, folder: &Path) -> Vec<String> {
    let tags = tags(html);
    let links = tags.iter().filter(|tag| tag.name == "link").filter_map(|tag| tag.attribute("href"));
    let sources = tags.iter().filter_map(|tag| tag.attribute("src"));
    let files = links.chain(sources).filter(|address| is_relative(address) && !address.starts_with("data:"));
    files.filter(|file| !folder.join(file).is_file()).map(|file| format!("asks for {file}, which is not there")).collect()
}

fn is_relative(address: &str) -> bool {
    let has_scheme = address.split(['/', '?', '#']).next().is_some_and(|first| first.contains(':'));
    !address.starts_with('/') && (!has_scheme || address.starts_with("data:"))
}

#[cfg(test)]
mod tests {
    use std::{env, process};

    use super::*;

    fn checked(name: &str, contents: &[(&str, &[u8])]) -> Result<(), String> {
        let folder = env::temp_dir().join(format!("xtask-check-{name}-{}", process::id()));
        fs::create_dir_all(&folder).unwrap();
        for (file, bytes) in contents {
            fs::write(folder.join(file), bytes).unwrap();
        }
        let result = check(&folder, &[PathBuf::from("/some/body"), PathBuf::from("/")]);
        fs::remove_dir_all(&folder).unwrap();
        result.map_err(|failure| failure.to_string())
    }

    const GOOD: &str = "<meta charset=utf-8><meta http-equiv=Content-Security-Policy content=x><a href=./b#c>\
                        <img src='data:image/gif;base64,'><svg xmlns=http://www.w3.org/2000/svg></svg>";

    #[test]
    fn a_good_page_passes() {
        let script = b"// see https://host/manual\nlet name = 'a.wasm';";
        checked("good", &[("index.html", GOOD.as_bytes()), ("a.wasm", b"\0\xff/rustc/abc"), ("a.js", script)]).unwrap();
    }

    #[test]
    fn a_machine_path_is_found_in_binary_files_too() {
        let failure = checked("path", &[("a.wasm", b"\0\xff/some/body/x\xfe")]).unwrap_err();
        assert!(failure.contains("a.wasm: holds /some/body/"), "{failure}");
    }

    #[test]
    fn each_broken_promise_is_named() {
        for (extra, why) in [
            ("<p style=x>", "<p> has a style attribute"),
            ("<p onclick=x>", "<p> has onclick="),
            ("<a href=/x>", "points to /x"),
            ("<img src=https:x>", "points to https:x"),
            ("<script src=\"//host/x\"></script>", "points to //host/x"),
            ("<script>fetch('https://host/x')</script>", "names another host: https://host/x"),
            ("<link rel=modulepreload href=./none.js>", "asks for ./none.js, which is not there"),
            ("<meta http-equiv=content-security-policy content=y>", "2 content security policies"),
        ] {
            let failure = checked("broken", &[("index.html", format!("{GOOD}{extra}").as_bytes())]).unwrap_err();
            assert!(failure.contains(why), "{extra}: {failure}");
        }
    }

    #[test]
    fn a_colon_after_the_first_slash_is_no_scheme() {
        assert!(is_relative("./a:b") && is_relative("#a:b") && !is_relative("javascript:0"));
    }
}
