//! Plain text.

use super::Publication;
use super::flow::{Item, flow, row_line};

/// A pattern as plain text, one paragraph or line of work to a line; the numbers of several sizes stand in brackets.
///
/// Of one size it is the same, letter for letter, as [`Sheet::text`](crate::written::Sheet::text).
pub fn text(all: &Publication) -> String {
    let graded = &all.graded;
    let mut lines = vec![graded.title.clone()];
    lines.extend(graded.notices.iter().cloned());
    lines.push(graded.version.clone());
    for item in flow(all) {
        match item {
            Item::Heading(heading) => {
                let rule = "-".repeat(heading.chars().count());
                lines.extend([String::new(), heading, rule]);
            }
            Item::Part(part) => lines.push(part),
            Item::Paragraph(words) => lines.push(words.text(graded)),
            Item::Line(line, _) => lines.push(line.text_line()),
            Item::Sizes(table) => {
                lines.extend(table.rows.iter().map(|row| row_line(row)));
            }
        }
    }
    if !all.link.is_empty() {
        lines.extend([String::new(), hatwright_words::out::link(&all.link)]);
    }
    lines.push(String::new());
    lines.join("\n")
}
