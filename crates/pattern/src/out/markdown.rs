//! Markdown, in its common dialect with tables.

use super::Publication;
use super::flow::{Item, flow};
use crate::sizes::Table;
use hatwright_words::out as words;

/// A pattern as Markdown: headings, lines of work as a list, tables for sizes and charts. Marks that a text has by chance are escaped.
pub fn markdown(all: &Publication) -> String {
    let graded = &all.graded;
    let mut out = ["# ", &escaped(&graded.title), "\n"].concat();
    for notice in &graded.notices {
        out.push_str(&["\n*", &escaped(notice), "*\n"].concat());
    }
    let mut listed = false;
    for item in flow(all) {
        let lists = matches!(item, Item::Line(..));
        // A list begins and ends with an empty line.
        if !lists || !listed {
            out.push('\n');
        }
        listed = lists;
        match item {
            Item::Heading(heading) => out.push_str(&["## ", &escaped(&heading), "\n"].concat()),
            Item::Part(part) => out.push_str(&["### ", &escaped(&part), "\n"].concat()),
            Item::Paragraph(words) => out.push_str(&[&*escaped(&words.text(graded)), "\n"].concat()),
            Item::Line(line, _) => {
                let text = line.text_line();
                let (label, work) = text.split_once(": ").unwrap_or((&text, ""));
                out.push_str(&["- **", &escaped(label), ":** ", &escaped(work), "\n"].concat());
            }
            Item::Sizes(sizes) => table(&mut out, sizes),
        }
    }
    for figure in &all.figures {
        out.push_str(&["\n## ", &escaped(&figure.title), "\n\n"].concat());
        table(&mut out, &figure.table);
    }
    out.push_str(&["\n", &escaped(&graded.version), "\n"].concat());
    if !all.link.is_empty() {
        out.push_str(&["\n", words::link_label(), " <", &all.link, ">\n"].concat());
    }
    out
}

fn table(out: &mut String, table: &Table) {
    if !table.caption.is_empty() {
        out.push_str(&["*", &escaped(&table.caption), "*\n\n"].concat());
    }
    let mut row = |cells: &[String]| {
        let cells: Vec<String> = cells.iter().map(|cell| escaped(cell)).collect();
        out.push_str(&["| ", &cells.join(" | "), " |\n"].concat());
    };
    row(&table.head);
    out_rule(&mut row, table.head.len());
    table.rows.iter().for_each(|cells| row(cells));
}

/// The rule under a table's head: dashes are no mark that is escaped.
fn out_rule(row: &mut impl FnMut(&[String]), columns: usize) {
    row(&vec!["---".to_owned(); columns]);
}

/// A text in which nothing is a mark.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 8);
    for (at, c) in text.char_indices() {
        let first = at == 0;
        let mark = matches!(c, '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '|' | '#' | '~' | '&');
        let leads = first && matches!(c, '-' | '+' | '=' | '!') && text != "---";
        if mark || leads {
            out.push('\\');
        }
        out.push(c);
        // `1.` at the beginning would be a list.
        if c.is_ascii_digit() && text[..at].chars().all(|c| c.is_ascii_digit()) && text[at + 1..].starts_with(['.', ')']) {
            out.push('\\');
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::escaped;

    #[test]
    fn marks_are_escaped() {
        assert_eq!(escaped("[sc2tog, 5 sc] × 6"), "\\[sc2tog, 5 sc\\] × 6");
        assert_eq!(escaped("1. Weave in"), "1\\. Weave in");
        assert_eq!(escaped("- <b>"), "\\- \\<b\\>");
        assert_eq!(escaped("10 to 1.5"), "10 to 1.5");
    }
}
