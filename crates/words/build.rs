//! Turns the languages' files into a function for each message and a table of texts for each language.

#![allow(missing_docs)]

#[path = "src/catalogue.rs"]
mod catalogue;

use catalogue::{Message, amiss, arguments, numbered, read};
use std::path::{Path, PathBuf};
use std::{env, fs};

fn main() {
    let root = PathBuf::from(env::var("CARGO_MANIFEST_DIR").expect("cargo tells the folder")).join("text");
    println!("cargo::rerun-if-changed={}", root.display());
    let english = language(&root.join("en"));
    let spanish = language(&root.join("es"));
    for problem in amiss(&english, &spanish) {
        println!("cargo::warning=Spanish: {problem}");
    }
    let out = PathBuf::from(env::var("OUT_DIR").expect("cargo tells the folder")).join("messages.rs");
    fs::write(out, program(&english, &[("ENGLISH", &english), ("SPANISH", &spanish)])).expect("the build can write");
}

fn language(folder: &Path) -> Vec<Message> {
    let mut files: Vec<_> = fs::read_dir(folder)
        .unwrap_or_else(|why| panic!("{}: {why}", folder.display()))
        .map(|entry| entry.expect("a folder lists its files").path())
        .filter(|path| path.extension().is_some_and(|end| end == "txt"))
        .collect();
    files.sort();
    let mut all = Vec::new();
    for path in files {
        let area = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        let file = fs::read_to_string(&path).unwrap_or_else(|why| panic!("{}: {why}", path.display()));
        all.extend(read(&area, &file).unwrap_or_else(|why| panic!("{why}")));
    }
    all
}

fn program(messages: &[Message], tables: &[(&str, &[Message])]) -> String {
    let mut text = String::new();
    for group in messages.chunk_by(|a, b| a.area == b.area) {
        text.extend([format!("/// What is said in the area `{0}`.\npub mod {0} {{\n", group[0].area)]);
        for message in group {
            let at = messages.iter().position(|m| m == message).unwrap_or_default();
            text.push_str(&function(message, at));
        }
        text.push_str("}\n");
    }
    for (name, table) in tables {
        text.extend([format!("pub(crate) static {name}: [&str; {}] = [\n", messages.len())]);
        for message in messages {
            let told = table.iter().find(|m| m.area == message.area && m.key == message.key).unwrap_or(message);
            text.extend([format!("{:?},\n", numbered(&told.text, &arguments(&message.text)))]);
        }
        text.push_str("];\n");
    }
    text
}

fn function(message: &Message, at: usize) -> String {
    let all = arguments(&message.text);
    let doc = format!("/// `{}`\n", message.text.replace('`', "'"));
    if all.is_empty() {
        return format!("{doc}pub fn {}() -> &'static str {{ crate::text({at}) }}\n", message.key);
    }
    let declared: Vec<_> = all.iter().map(|(name, number)| format!("{name}: {}", if *number { "u32" } else { "&str" })).collect();
    let given: Vec<_> =
        all.iter().map(|(name, number)| format!("crate::Put::{}({name})", if *number { "Number" } else { "Text" })).collect();
    let (declared, given) = (declared.join(", "), given.join(", "));
    format!("{doc}pub fn {}({declared}) -> String {{ crate::render({at}, &[{given}]) }}\n", message.key)
}
