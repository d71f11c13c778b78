//! Every word that a person reads, in every language that the program speaks.
//!
//! A language is a folder of plain text files, `text/en`, `text/es`: one file an area of the program, one message a line.
//!
//! ```text
//! # A line for translators begins with a hash.
//! fits_heads = Fits heads of {least} to {most}.
//! stitches = {#n} {n|stitch|stitches}
//! ```
//!
//! The build makes a function of each message, so that a message that is not there, or is told the wrong things, does not compile:
//! `words::fit::fits_heads("45.7 cm", "51.3 cm")`, `words::count::stitches(56)`. `{name}` puts in a text, `{#name}` a whole number, and
//! `{name|one|more}` the form that the number asks for. Another language may put them in another order.
//!
//! What is said is said in the language [`spoken`] on this thread: English, until [`speak`] or [`in_language`] says otherwise. Passing it
//! through some two thousand calls would say the same at greater length.

#[cfg(test)]
mod catalogue;
mod language;

pub use language::{Language, in_language, speak, spoken};

/// A message that is put together.
enum Put<'a> {
    Text(&'a str),
    Number(u32),
}

#[allow(clippy::doc_markdown, clippy::needless_pass_by_value, clippy::too_many_arguments)]
mod messages {
    include!(concat!(env!("OUT_DIR"), "/messages.rs"));
}

pub use messages::*;

/// The message at a place of the tables, in the language that is spoken.
fn text(at: usize) -> &'static str {
    match spoken() {
        Language::English => messages::ENGLISH[at],
        Language::Spanish => messages::SPANISH[at],
    }
}

/// The same, with what is put in.
fn render(at: usize, put: &[Put<'_>]) -> String {
    let mut rest = text(at);
    let mut told = String::with_capacity(rest.len() + 16);
    while let Some((before, after)) = rest.split_once('{') {
        push_words(&mut told, before);
        let (inside, after) = after.split_once('}').unwrap_or((after, ""));
        let mut forms = inside.split('|');
        let put = forms.next().and_then(|place| place.parse::<usize>().ok()).and_then(|place| put.get(place));
        match (put, forms.next(), forms.next()) {
            (Some(Put::Text(text)), None, _) => told.push_str(text),
            (Some(Put::Number(number)), None, _) => told.push_str(&number.to_string()),
            (Some(Put::Number(1)), Some(form), _) | (_, _, Some(form)) => told.push_str(form),
            _ => {}
        }
        rest = after;
    }
    push_words(&mut told, rest);
    told
}

/// Adds a message's own words; a full stop after an abbreviation's point is that point: `20 pulg.`
fn push_words(told: &mut String, words: &str) {
    told.push_str(words.strip_prefix('.').filter(|_| told.ends_with('.')).unwrap_or(words));
}

#[cfg(test)]
mod tests;
