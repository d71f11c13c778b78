//! Reads the languages' files: which messages there are, what each is told, and what is amiss between two languages.
//!
//! The build script and the tests read by the same rules, so this file uses nothing of the crate.

/// A message of a language's file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Message {
    /// The part of the program that says it: the file's name.
    pub area: String,
    /// Its name within the area, which is also the name of its function.
    pub key: String,
    /// Its text, with placeholders.
    pub text: String,
}

/// What stands in place of something in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Piece<'a> {
    /// Words as they are.
    Words(&'a str),
    /// `{name}`: a text that is put in.
    Text(&'a str),
    /// `{#name}`: a whole number that is put in.
    Number(&'a str),
    /// `{name|stitch|stitches}`: the form that a whole number asks for; the number itself is not told by it.
    Form(&'a str, Vec<&'a str>),
}

/// Reads a file of an area: a message to a line, `key = text`; empty lines and lines that begin with `#` say nothing.
///
/// # Errors
/// A sentence that names the line that is no message, or the key that came before.
pub fn read(area: &str, file: &str) -> Result<Vec<Message>, String> {
    let mut all: Vec<Message> = Vec::new();
    for (at, line) in file.lines().enumerate() {
        let line = line.trim();
        if line.is_empty() || line.starts_with('#') {
            continue;
        }
        let place = format!("{area}, line {}", at + 1);
        let (key, text) = line.split_once('=').ok_or_else(|| format!("{place}: no “=” in “{line}”."))?;
        let (key, text) = (key.trim(), text.trim());
        let named = key.starts_with(|c: char| c.is_ascii_lowercase())
            && key.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_');
        if !named {
            return Err(format!("{place}: “{key}” is no key; write it like_this."));
        }
        if all.iter().any(|m| m.key == key) {
            return Err(format!("{place}: “{key}” is there already."));
        }
        // Quotes keep a space at an end.
        let text = text.strip_prefix('"').and_then(|t| t.strip_suffix('"')).filter(|_| text.len() > 1).unwrap_or(text);
        pieces(text).map_err(|why| format!("{place}: {why}"))?;
        all.push(Message { area: area.into(), key: key.into(), text: text.into() });
    }
    Ok(all)
}

/// A text's words and placeholders, in order.
///
/// # Errors
/// A sentence about the brace that does not close, or the name that is none.
pub fn pieces(text: &str) -> Result<Vec<Piece<'_>>, String> {
    let mut all = Vec::new();
    let mut rest = text;
    while let Some(open) = rest.find('{') {
        if open > 0 {
            all.push(Piece::Words(&rest[..open]));
        }
        let close = rest[open..].find('}').ok_or_else(|| format!("a brace does not close in “{text}”."))? + open;
        let inside = &rest[open + 1..close];
        let mut parts = inside.split('|');
        let name = parts.next().unwrap_or_default();
        let forms: Vec<_> = parts.collect();
        let bare = name.trim_start_matches('#');
        if bare.is_empty() || !bare.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_') {
            return Err(format!("“{inside}” is no placeholder in “{text}”."));
        }
        all.push(match (name.starts_with('#'), forms.is_empty()) {
            (true, true) => Piece::Number(bare),
            (false, true) => Piece::Text(name),
            (false, false) if forms.len() == 2 => Piece::Form(name, forms),
            _ => return Err(format!("“{inside}” needs a name and two forms in “{text}”.")),
        });
        rest = &rest[close + 1..];
    }
    if rest.contains('}') {
        return Err(format!("a brace does not open in “{text}”."));
    }
    if !rest.is_empty() {
        all.push(Piece::Words(rest));
    }
    Ok(all)
}

/// The placeholders of a text in the order in which they first come, and whether each is a number.
pub fn arguments(text: &str) -> Vec<(String, bool)> {
    let mut all: Vec<(String, bool)> = Vec::new();
    for piece in pieces(text).unwrap_or_default() {
        let (name, number) = match piece {
            Piece::Words(_) => continue,
            Piece::Text(name) => (name, false),
            Piece::Number(name) | Piece::Form(name, _) => (name, true),
        };
        match all.iter_mut().find(|(known, _)| known == name) {
            Some((_, known)) => *known |= number,
            None => all.push((name.into(), number)),
        }
    }
    all
}

/// What is amiss in a language beside the one that it translates: messages that it lacks or has alone, placeholders that differ.
pub fn amiss(own: &[Message], other: &[Message]) -> Vec<String> {
    let same = |a: &Message, b: &Message| a.area == b.area && a.key == b.key;
    let mut all = Vec::new();
    for message in own {
        let name = format!("{}.{}", message.area, message.key);
        let Some(told) = other.iter().find(|o| same(o, message)) else {
            all.push(format!("{name} is missing."));
            continue;
        };
        let (mine, theirs) = (arguments(&message.text), arguments(&told.text));
        for (argument, number) in &theirs {
            match mine.iter().find(|(known, _)| known == argument) {
                None => all.push(format!("{name} knows no {{{argument}}}.")),
                Some((_, known)) if known != number => all.push(format!("{name}: {{{argument}}} is a number in one only.")),
                Some(_) => {}
            }
        }
        for put_in in told_by(&message.text) {
            if !told_by(&told.text).contains(&put_in) {
                all.push(format!("{name} does not tell {{{put_in}}}."));
            }
        }
    }
    let alone = other.iter().filter(|o| !own.iter().any(|m| same(o, m)));
    all.extend(alone.map(|o| format!("{}.{} is in this language alone.", o.area, o.key)));
    all
}

/// The placeholders that a text prints, each once. A form tells its number only where the language needs it.
fn told_by(text: &str) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for piece in pieces(text).unwrap_or_default() {
        if let Piece::Text(name) | Piece::Number(name) = piece
            && !all.iter().any(|known| known == name)
        {
            all.push(name.into());
        }
    }
    all
}

/// A text as the program carries it: its placeholders numbered as the arguments of its function are.
pub fn numbered(text: &str, arguments: &[(String, bool)]) -> String {
    let place = |name: &str| arguments.iter().position(|(known, _)| known == name).unwrap_or_default().to_string();
    let told = |piece: Piece<'_>| match piece {
        Piece::Words(words) => words.to_owned(),
        Piece::Text(name) | Piece::Number(name) => format!("{{{}}}", place(name)),
        Piece::Form(name, forms) => format!("{{{}|{}}}", place(name), forms.join("|")),
    };
    pieces(text).unwrap_or_default().into_iter().map(told).collect()
}
