//! The rounds as a table for a spreadsheet.

use super::Publication;
use crate::written::{Label, WrittenLine};
use hatwright_words::out as words;

/// Every line of work of every size as CSV (RFC 4180): size, section, first and last number, label, colour, work, total, decreases, increases.
///
/// A cell that a spreadsheet would take for a formula begins with an apostrophe.
pub fn rounds_csv(all: &Publication) -> String {
    let head = [
        words::csv_size(),
        words::csv_section(),
        words::csv_first(),
        words::csv_last(),
        words::csv_label(),
        words::csv_colour(),
        words::csv_work(),
        words::csv_total(),
        words::csv_fewer(),
        words::csv_more(),
    ];
    let mut out = String::new();
    row(&mut out, &head.map(str::to_owned));
    for (size, name) in all.graded.names.iter().enumerate() {
        for section in &all.graded.sections {
            for block in &section.blocks {
                let Some(at) = block.sizes.iter().position(|one| *one == size) else { continue };
                for line in block.lines.iter().filter_map(|line| line.own[at].as_ref()) {
                    row(&mut out, &cells(name, &section.heading, line));
                }
            }
        }
    }
    out
}

fn cells(size: &str, section: &str, line: &WrittenLine) -> [String; 10] {
    let (first, last) = match line.numbers {
        Label::Row(first, last) | Label::Round(first, last) => (first.to_string(), last.to_string()),
        _ => (String::new(), String::new()),
    };
    [
        size.to_owned(),
        section.to_owned(),
        first,
        last,
        line.label.clone(),
        line.colour_name.clone().unwrap_or_default(),
        line.text.clone(),
        line.total.map_or_else(String::new, |total| total.to_string()),
        line.decreases.to_string(),
        line.increases.to_string(),
    ]
}

fn row(out: &mut String, cells: &[String; 10]) {
    for (i, cell) in cells.iter().enumerate() {
        if i > 0 {
            out.push(',');
        }
        let formula = cell.starts_with(['=', '+', '-', '@', '\t', '\r']);
        let cell = if formula { ["'", cell].concat() } else { cell.clone() };
        if cell.contains([',', '"', '\n', '\r']) {
            out.push_str(&["\"", &cell.replace('"', "\"\""), "\""].concat());
        } else {
            out.push_str(&cell);
        }
    }
    out.push_str("\r\n");
}
