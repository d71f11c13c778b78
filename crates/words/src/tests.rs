use super::catalogue::{Message, amiss, arguments, numbered, pieces, read};
use super::*;

fn message(text: &str) -> Message {
    Message { area: "fit".into(), key: "heads".into(), text: text.into() }
}

/// All messages of a language, as its files have them.
fn language(tag: &str) -> Vec<Message> {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("text").join(tag);
    let mut all = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let area = path.file_stem().unwrap().to_string_lossy().into_owned();
        all.extend(read(&area, &std::fs::read_to_string(&path).unwrap()).unwrap());
    }
    all
}

#[test]
fn every_language_says_everything() {
    let english = language("en");
    assert!(!english.is_empty());
    for tag in Language::ALL.map(Language::tag) {
        assert_eq!(amiss(&english, &language(tag)), Vec::<String>::new(), "{tag}");
    }
}

#[test]
fn what_is_amiss_is_named() {
    let own = [message("Fits {#n} {n|head|heads} of {size}.")];
    let told = |text: &str| amiss(&own, &[message(text)]);
    assert_eq!(told("De {size}: {#n} {n|cabeza|cabezas}."), Vec::<String>::new());
    assert_eq!(told("{#n} de {size}"), Vec::<String>::new());
    assert_eq!(told("De {size}: {n|cabeza|cabezas}."), ["fit.heads does not tell {n}."]);
    assert_eq!(told("{#n}, {size}, {other}"), ["fit.heads knows no {other}."]);
    assert_eq!(told("{n}, {size}"), ["fit.heads: {n} is a number in one only."]);
    assert_eq!(amiss(&own, &[]), ["fit.heads is missing."]);
    assert_eq!(amiss(&[], &own), ["fit.heads is in this language alone."]);
}

#[test]
fn bad_files_are_refused() {
    for (file, why) in [
        ("heads Fits", "fit, line 1: no “=” in “heads Fits”."),
        ("# so\nHeads = Fits", "fit, line 2: “Heads” is no key; write it like_this."),
        ("a = 1\na = 2", "fit, line 2: “a” is there already."),
        ("a = {n", "fit, line 1: a brace does not close in “{n”."),
        ("a = n}", "fit, line 1: a brace does not open in “n}”."),
        ("a = {N}", "fit, line 1: “N” is no placeholder in “{N}”."),
        ("a = {n|one}", "fit, line 1: “n|one” needs a name and two forms in “{n|one}”."),
    ] {
        assert_eq!(read("fit", file), Err(why.to_owned()));
    }
    assert_eq!(read("fit", "a = \" of \"").unwrap()[0].text, " of ");
}

#[test]
fn placeholders_are_numbered_as_the_first_language_has_them() {
    let english = arguments("Fits {#n} {n|head|heads} of {size}.");
    assert_eq!(english, [("n".to_owned(), true), ("size".to_owned(), false)]);
    assert_eq!(numbered("De {size}: {#n} {n|cabeza|cabezas}.", &english), "De {1}: {0} {0|cabeza|cabezas}.");
    assert_eq!(pieces("plain").unwrap().len(), 1);
}

#[test]
fn a_message_is_put_together_in_the_language_that_is_spoken() {
    assert_eq!(count::stitches(1), "1 stitch");
    assert_eq!(count::stitches(56), "56 stitches");
    in_language(Language::Spanish, || assert_eq!(count::stitches(56), "56 puntos"));
    assert_eq!(count::stitches(2), "2 stitches");
}

#[test]
fn speech_comes_back_after_a_panic() {
    let thrown = std::panic::catch_unwind(|| in_language(Language::Spanish, || panic!("on purpose")));
    assert!(thrown.is_err());
    assert_eq!(spoken(), Language::English);
}

#[test]
fn an_abbreviation_before_a_full_stop_has_one_point() {
    in_language(Language::Spanish, || assert!(wrong::range("2 a 3 pulg.").ends_with("2 a 3 pulg.")));
    assert_eq!(wrong::range("2 to 3 in"), "It takes 2 to 3 in.");
}

/// A number and its sign are not torn apart at the end of a line. A sign alone stands after a field.
#[test]
fn spanish_has_no_break_space_before_a_per_cent_sign() {
    for message in language("es") {
        let torn = message.text.match_indices('%').find(|(at, _)| *at > 0 && !message.text[..*at].ends_with('\u{a0}'));
        assert_eq!(torn, None, "{}.{}: {}", message.area, message.key, message.text);
    }
}

/// What nothing says any more is translated for nothing.
#[test]
fn every_message_is_said_somewhere() {
    fn read_all(folder: &std::path::Path, text: &mut String) {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                read_all(&path, text);
            } else if path.extension().is_some_and(|end| end == "rs") {
                text.push_str(&std::fs::read_to_string(&path).unwrap());
            }
        }
    }
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let mut sources = String::new();
    for folder in ["crates/pattern/src", "crates/project/src", "crates/project/examples", "web/src"] {
        read_all(&root.join(folder), &mut sources);
    }
    let said: std::collections::HashSet<&str> = sources
        .split("::")
        .skip(1)
        .map(|after| after.split(|c: char| !c.is_ascii_alphanumeric() && c != '_').next().unwrap_or_default())
        .collect();
    let unsaid: Vec<String> =
        language("en").into_iter().filter(|m| !said.contains(&*m.key)).map(|m| [m.area, m.key].join(".")).collect();
    assert_eq!(unsaid, Vec::<String>::new());
}
