//! What stands in a pattern from its top to its end, whatever form it takes.

use super::Publication;
use crate::sizes::{Block, Graded, GradedLine, Piece, Table, Told};
use hatwright_words::sizes as words;

/// A piece of a pattern.
pub(super) enum Item<'a> {
    /// A section begins.
    Heading(String),
    /// A part of a section that is for some sizes only.
    Part(String),
    /// A paragraph.
    Paragraph(Words<'a>),
    /// A line of work.
    Line(&'a GradedLine, &'a Block),
    /// The table of sizes.
    Sizes(&'a Table),
}

/// A paragraph's words.
pub(super) enum Words<'a> {
    /// The same for all.
    Plain(String),
    /// With numbers for the sizes of a block.
    Sized(&'a Told, &'a Block),
}

impl Words<'_> {
    /// In brackets.
    pub(super) fn text(&self, graded: &Graded) -> String {
        match self {
            Self::Plain(text) => text.clone(),
            Self::Sized(told, block) => graded.paragraph(told, block),
        }
    }
}

/// All of a pattern's text, in order.
pub(super) fn flow(all: &Publication) -> Vec<Item<'_>> {
    let mut items = Vec::new();
    let graded = &all.graded;
    if all.several() {
        items.push(Item::Heading(words::heading().into()));
        items.push(Item::Paragraph(Words::Plain(how_to_read(graded))));
        items.push(Item::Sizes(&all.measures));
        let (shared, lines) = graded.shared_lines();
        items.push(Item::Paragraph(Words::Plain(words::all_in_all(&shared.to_string(), &lines.to_string()))));
    }
    if !all.refused.is_empty() {
        items.push(Item::Paragraph(Words::Plain(words::refused_intro().into())));
        items.extend(all.refused.iter().map(|(name, why)| Item::Paragraph(Words::Plain(words::refused(name, why)))));
    }
    for section in &graded.sections {
        items.push(Item::Heading(section.heading.clone()));
        if section.blocks.len() > 1 && section.blocks.iter().any(|block| !block.lines.is_empty()) {
            items.push(Item::Paragraph(Words::Plain(words::apart().into())));
        }
        for block in &section.blocks {
            items.extend(graded.block_heading(block).map(Item::Part));
            items.extend(block.before.iter().map(|told| Item::Paragraph(Words::Sized(told, block))));
            items.extend(block.lines.iter().map(|line| Item::Line(line, block)));
            items.extend(block.after.iter().map(|told| Item::Paragraph(Words::Sized(told, block))));
        }
    }
    items
}

/// What the brackets mean, by the names of the sizes.
fn how_to_read(graded: &Graded) -> String {
    let [first, others @ ..] = &graded.names[..] else { return String::new() };
    words::how_to_read(graded.names.len() as u32, first, &others.join(words::separator()))
}

/// A row of a table as one line: `Around, relaxed: 46.7 (48.3) cm`.
pub(super) fn row_line(row: &[String]) -> String {
    let [name, cells @ ..] = row else { return String::new() };
    let texts: Vec<Option<&str>> = cells.iter().map(|cell| Some(&**cell)).collect();
    let told = Told::merged(&texts).unwrap_or_else(|| Told(vec![Piece::Numbers(cells.iter().cloned().map(Some).collect())]));
    [name, ": ", &told.text()].concat()
}
