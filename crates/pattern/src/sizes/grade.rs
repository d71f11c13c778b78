//! The sheets of several sizes made into one.

use super::align::{Column, align};
use super::told::{Piece, Told, skeleton};
use crate::written::{Section, Sheet, WrittenLine};
use hatwright_sizing::Colour;

/// One pattern for one or several sizes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Graded {
    /// The hat's name.
    pub title: String,
    /// Whose terms it is written in, and for which hand: paragraphs for its beginning.
    pub notices: Vec<String>,
    /// The same in few words.
    pub brief: String,
    /// Who made it, and which versions.
    pub version: String,
    /// What the sizes are called, in order; one for a pattern of one size.
    pub names: Vec<String>,
    /// Its sections, in order.
    pub sections: Vec<GradedSection>,
}

/// A section of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GradedSection {
    /// Its heading.
    pub heading: String,
    /// Its text: one block where all sizes share it, otherwise a block for each set of sizes that do.
    pub blocks: Vec<Block>,
}

/// What some sizes share of a section. The numbers of its texts are those of `sizes`, in order.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Block {
    /// For which sizes, by their place in the pattern.
    pub sizes: Vec<usize>,
    /// Paragraphs before its lines.
    pub before: Vec<Told>,
    /// Lines of work.
    pub lines: Vec<GradedLine>,
    /// Paragraphs after its lines.
    pub after: Vec<Told>,
}

/// A line of work for the sizes of its block.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GradedLine {
    /// Label: `Rounds 2–7 (2–9)`.
    pub label: Told,
    /// The colour's name, or that the stripes go on, as the line names it; absent in a hat of one colour.
    pub colour_name: Option<String>,
    /// The colour.
    pub colour: Option<Colour>,
    /// The work, with the stop at its end.
    pub work: Told,
    /// Stitches when it is done, in their parentheses; absent where nothing is counted.
    pub total: Option<Told>,
    /// Each size's own line.
    pub own: Vec<Option<WrittenLine>>,
}

impl GradedLine {
    /// The line as it is printed.
    pub fn text_line(&self) -> String {
        let mut text = self.label.text();
        if let Some(colour) = &self.colour_name {
            text.push_str(&[", ", colour].concat());
        }
        text.push_str(": ");
        text.push_str(&self.work.text());
        if let Some(total) = &self.total {
            text.push_str(&[" ", &total.text()].concat());
        }
        text
    }
}

/// Makes one pattern of the sheets of some sizes, which are told in one language, one system of terms and one unit.
///
/// Sections, paragraphs and lines that differ in nothing but numbers are told once, with the numbers of every size. Where sizes differ in
/// more than that, lines of some sizes stand between those of all; where that is most of a section, it is told for each such set
/// of sizes by itself. [`Told::own`] gives every size its own text again, word for word.
pub fn grade(names: &[String], sheets: &[Sheet]) -> Graded {
    let headings: Vec<Vec<String>> =
        sheets.iter().map(|s| s.sections.iter().map(|section| section.heading.to_string()).collect()).collect();
    let sections = align(&headings).into_iter().map(|column| {
        let own: Vec<(usize, &Section)> =
            column.iter().enumerate().filter_map(|(size, at)| at.map(|at| (size, &sheets[size].sections[at]))).collect();
        let heading = own.first().map(|(_, section)| section.heading.to_string()).unwrap_or_default();
        GradedSection { heading, blocks: blocks(&own) }
    });
    let first = sheets.first();
    let mut notices: Vec<String> = Vec::new();
    for notice in sheets.iter().flat_map(Sheet::notices) {
        if !notices.contains(&notice) {
            notices.push(notice);
        }
    }
    Graded {
        title: first.map(|sheet| sheet.title.clone()).unwrap_or_default(),
        notices,
        brief: sheets.iter().map(|sheet| &sheet.brief).max_by_key(|brief| brief.len()).cloned().unwrap_or_default(),
        version: first.map(|sheet| sheet.version.clone()).unwrap_or_default(),
        names: names.to_vec(),
        sections: sections.collect(),
    }
}

/// Sets of sizes that share most of a section, each as a block.
fn blocks(own: &[(usize, &Section)]) -> Vec<Block> {
    let mut sets: Vec<Vec<(usize, &Section)>> = Vec::new();
    for one in own {
        match sets.iter_mut().find(|set| share_most(set, one.1)) {
            Some(set) => set.push(*one),
            None => sets.push(vec![*one]),
        }
    }
    sets.into_iter().map(|set| block(&set)).collect()
}

/// Whether a size's lines of work are, but for numbers, those of a set: of four lines together, at most one is not for all, or of a short
/// section two. Lines that are for some sizes only are hard to follow; where there are more of them, every size had better have its own.
fn share_most(set: &[(usize, &Section)], section: &Section) -> bool {
    let mut all: Vec<_> = set.iter().map(|(_, section)| keys(section)).collect();
    all.push(keys(section));
    let columns = align(&all);
    let apart = columns.iter().filter(|column| column.iter().any(Option::is_none)).count();
    4 * apart <= columns.len().max(8)
}

fn keys(section: &Section) -> Vec<String> {
    section.lines.iter().map(line_key).collect()
}

/// What a line is but for its numbers, whether it is one round or several.
fn line_key(line: &WrittenLine) -> String {
    let (noun, _) = label_parts(&line.label);
    let total = if line.total.is_some() { "\u{2}" } else { "" };
    // `Row` and `Rows` are one noun here: the first letters, which the plural keeps.
    let noun: String = noun.chars().take(3).collect();
    let kind = format!("{:?}", core::mem::discriminant(&line.numbers));
    [&kind, "\u{3}", &noun, "\u{3}", line.colour_name.as_deref().unwrap_or_default(), "\u{3}", &skeleton(&line.text), total]
        .concat()
}

/// `Rounds` and `2–5`.
fn label_parts(label: &str) -> (&str, &str) {
    label.rsplit_once(' ').filter(|(_, span)| span.starts_with(|c: char| c.is_ascii_digit())).unwrap_or((label, ""))
}

fn block(set: &[(usize, &Section)]) -> Block {
    let paragraphs = |of: &dyn Fn(&Section) -> &Vec<String>| -> Vec<Told> {
        let own: Vec<&Vec<String>> = set.iter().map(|(_, section)| of(section)).collect();
        let keys: Vec<Vec<String>> = own.iter().map(|all| all.iter().map(|text| skeleton(text)).collect()).collect();
        align(&keys).iter().filter_map(|column| told(column, &own)).collect()
    };
    let lines: Vec<&Vec<WrittenLine>> = set.iter().map(|(_, section)| &section.lines).collect();
    let keys: Vec<Vec<String>> = set.iter().map(|(_, section)| keys(section)).collect();
    Block {
        sizes: set.iter().map(|(size, _)| *size).collect(),
        before: paragraphs(&|section| &section.before),
        lines: align(&keys).iter().map(|column| line(column, &lines)).collect(),
        after: paragraphs(&|section| &section.after),
    }
}

/// A paragraph of a column. One that is not for every size is led by a number of no width, which says whose it is.
fn told(column: &Column, own: &[&Vec<String>]) -> Option<Told> {
    let texts: Vec<Option<String>> = column.iter().enumerate().map(|(size, at)| at.map(|at| own[size][at].clone())).collect();
    let mut told = shared(&texts);
    if texts.iter().any(Option::is_none) {
        told.0.insert(0, Piece::Numbers(texts.iter().map(|text| text.as_ref().map(|_| String::new())).collect()));
    }
    (!told.0.is_empty()).then_some(told)
}

fn line(column: &Column, lines: &[&Vec<WrittenLine>]) -> GradedLine {
    let own: Vec<Option<WrittenLine>> =
        column.iter().enumerate().map(|(size, at)| at.map(|at| lines[size][at].clone())).collect();
    let first = own.iter().flatten().next();
    let of = |text: &dyn Fn(&WrittenLine) -> String| -> Told {
        let texts: Vec<Option<String>> = own.iter().map(|line| line.as_ref().map(text)).collect();
        shared(&texts)
    };
    GradedLine {
        label: label(&own),
        colour_name: first.and_then(|line| line.colour_name.clone()),
        colour: first.and_then(|line| line.colour),
        work: of(&|line| [&*line.text, "."].concat()),
        total: first
            .and_then(|line| line.total)
            .map(|_| of(&|line| line.total.map_or_else(String::new, |total| ["(", &total.to_string(), ")"].concat()))),
        own,
    }
}

/// The numbers of the sizes that a line is for; the label alone says which those are.
fn shared(texts: &[Option<String>]) -> Told {
    let present: Vec<Option<&str>> = texts.iter().flatten().map(|text| Some(&**text)).collect();
    let mut told = Told::merged(&present).unwrap_or_default();
    for piece in &mut told.0 {
        if let Piece::Numbers(numbers) = piece {
            let mut own = core::mem::take(numbers).into_iter();
            *numbers = texts.iter().map(|text| text.as_ref().and_then(|_| own.next().flatten())).collect();
        }
    }
    told
}

/// `Round 9 (9–10, –)`: the noun for several where any size has several.
fn label(own: &[Option<WrittenLine>]) -> Told {
    let parts: Vec<Option<(&str, &str)>> = own.iter().map(|line| line.as_ref().map(|line| label_parts(&line.label))).collect();
    let noun = parts.iter().flatten().map(|(noun, _)| *noun).max_by_key(|noun| noun.chars().count()).unwrap_or_default();
    let spans: Vec<Option<String>> = parts.iter().map(|part| part.map(|(_, span)| span.to_owned())).collect();
    let first = spans.iter().flatten().next().cloned().unwrap_or_default();
    if spans.iter().all(|span| span.as_ref() == Some(&first)) {
        return Told::of(if first.is_empty() { noun.to_owned() } else { [noun, " ", &first].concat() });
    }
    let words = [noun, " "].concat();
    if first.is_empty() {
        // A line without a number, such as a seam, shows by words alone whose it is.
        return Told(vec![
            Piece::Words(words),
            Piece::Numbers(spans.into_iter().map(|span| span.map(|_| "✓".to_owned())).collect()),
        ]);
    }
    Told(vec![Piece::Words(words), Piece::Numbers(spans)])
}

impl Graded {
    /// Whether a paragraph or line is for every size of its block.
    pub fn for_all(told: &Told) -> bool {
        !told.0.iter().any(|piece| matches!(piece, Piece::Numbers(numbers) if numbers.iter().any(Option::is_none)))
    }

    /// The names of some sizes as a list: `4 years, 6 years and M`.
    pub fn names_of(&self, sizes: &[usize]) -> String {
        let names: Vec<&str> = sizes.iter().filter_map(|size| self.names.get(*size)).map(String::as_str).collect();
        match &names[..] {
            [] => String::new(),
            [one] => (*one).to_owned(),
            [rest @ .., last] => hatwright_words::sizes::list_last(&rest.join(", "), last),
        }
    }

    /// The names of the sizes that a paragraph is for, where it is not for all of its block.
    pub fn whose(&self, told: &Told, block: &Block) -> Option<String> {
        let Some(Piece::Numbers(numbers)) = told.0.first() else { return None };
        if !numbers.iter().flatten().all(String::is_empty) {
            return None;
        }
        let sizes: Vec<usize> =
            block.sizes.iter().zip(numbers).filter(|(_, number)| number.is_some()).map(|(size, _)| *size).collect();
        Some(self.names_of(&sizes))
    }

    /// A paragraph as it is printed: in brackets, led by the names of the sizes where it is not for all of its block.
    pub fn paragraph(&self, told: &Told, block: &Block) -> String {
        match self.whose(told, block) {
            None => told.text(),
            Some(names) => hatwright_words::sizes::only(&names, &told.of_those().text()),
        }
    }

    /// How many lines of work there are, and how many of them are for every size.
    pub fn shared_lines(&self) -> (u32, u32) {
        let (mut shared, mut all) = (0, 0);
        for block in self.sections.iter().flat_map(|section| &section.blocks) {
            for line in &block.lines {
                all += 1;
                shared += u32::from(block.sizes.len() == self.names.len() && Self::for_all(&line.label));
            }
        }
        (shared, all)
    }

    /// What a block is for, where it is not for every size: a heading of its own.
    pub fn block_heading(&self, block: &Block) -> Option<String> {
        (block.sizes.len() < self.names.len()).then(|| hatwright_words::sizes::for_sizes(&self.names_of(&block.sizes)))
    }

    /// A size's own lines of work again, as its own pattern prints them.
    pub fn own_lines(&self, size: usize) -> Vec<String> {
        let mut all = Vec::new();
        for block in self.sections.iter().flat_map(|section| &section.blocks) {
            let Some(at) = block.sizes.iter().position(|one| *one == size) else { continue };
            all.extend(block.lines.iter().filter_map(|line| line.own[at].as_ref()).map(WrittenLine::text_line));
        }
        all
    }
}
