//! A pattern as markup for a sheet of paper: the full pattern, and a working sheet of one page.

use super::Publication;
use super::flow::{Item, Words, flow};
use super::qr::qr_svg;
use crate::sizes::{Block, GradedLine, Piece, Table, Told};
use crate::written::{Label, WrittenLine};
use hatwright_words::out as words;

/// A sheet of paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum PaperSize {
    /// 210 × 297 mm (ISO 216).
    #[default]
    A4,
    /// 8½ × 11 in.
    Letter,
}

impl PaperSize {
    /// Its name in a style sheet.
    pub const fn name(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "letter",
        }
    }
}

/// Boxes to tick that a line has at most; a longer one has a box for ten rounds.
const MOST_BOXES: u32 = 60;

/// The whole pattern: an element for a page whose style sheet has [`PAPER_CSS`](super::PAPER_CSS). The table around it is there
/// because its head comes again on every page.
pub fn full_sheet(all: &Publication) -> String {
    let mut out = Markup::default();
    running_head(&mut out, all, "full");
    title(&mut out, all);
    photos(&mut out, all);
    let mut open = false;
    let mut listed = false;
    for item in flow(all) {
        let lists = matches!(item, Item::Line(..));
        if listed && !lists {
            out.raw("</ol>");
        }
        if lists && !listed {
            out.raw("<ol class=\"work\">");
        }
        listed = lists;
        match item {
            Item::Heading(heading) => {
                out.raw(if open { "</section><section>" } else { "<section>" });
                open = true;
                out.element("h2", "", &heading);
            }
            Item::Part(part) => out.element("h3", "", &part),
            Item::Paragraph(text) => {
                out.raw("<p>");
                match &text {
                    Words::Sized(told, block) if all.graded.whose(told, block).is_none() => out.told(told, block, all.highlight),
                    other => out.text(&other.text(&all.graded)),
                }
                out.raw("</p>");
            }
            Item::Line(line, block) => work(&mut out, line, block, all.highlight),
            Item::Sizes(sizes) => {
                let mine = all.highlight.map(|size| if sizes.is_wide() { Mine::Row(size) } else { Mine::Column(size + 1) });
                table(&mut out, &sizes.fitted(), "all-sizes", mine);
            }
        }
    }
    if listed {
        out.raw("</ol>");
    }
    if open {
        out.raw("</section>");
    }
    figures(&mut out, all);
    out.element("p", "version", &all.graded.version);
    out.raw("</td></tr></tbody></table>");
    out.0
}

/// The lines of work of one size alone, small enough for one page: to be ticked off, in two columns.
pub fn working_sheet(all: &Publication, size: usize) -> String {
    let mut out = Markup::default();
    // Smaller letters for more lines, so that they stay on one page.
    let dense = match all.graded.own_lines(size).len() {
        0..=36 => "one wide",
        37..=60 => "one",
        61..=90 => "one small",
        _ => "one least",
    };
    running_head(&mut out, all, dense);
    out.raw("<div class=\"head\"><div>");
    out.element("h1", "", &all.graded.title);
    let name = all.graded.names.get(size).filter(|_| all.several());
    let kind = name.map_or_else(|| words::working().to_owned(), |name| [words::working(), ", ", name].concat());
    out.element("p", "kind", &kind);
    let measures = all.measures.rows.iter().filter_map(|row| Some([row.first()?, ": ", row.get(size + 1)?].concat()));
    out.element("p", "measures", &measures.collect::<Vec<_>>().join(" · "));
    out.element("p", "note", words::working_note());
    out.raw("</div>");
    code(&mut out, all);
    out.raw("</div><div class=\"columns\">");
    for section in &all.graded.sections {
        for block in &section.blocks {
            let Some(at) = block.sizes.iter().position(|one| *one == size) else { continue };
            let own: Vec<&WrittenLine> = block.lines.iter().filter_map(|line| line.own[at].as_ref()).collect();
            if own.is_empty() {
                continue;
            }
            out.element("h2", "", &section.heading);
            out.raw("<ol class=\"work\">");
            for line in own {
                out.raw("<li>");
                out.element("b", "", &line.label);
                if let Some(colour) = &line.colour_name {
                    out.text(", ");
                    out.text(colour);
                }
                out.text(": ");
                out.text(&line.text);
                if let Some(total) = line.total {
                    out.raw(" <b>(");
                    out.text(&total.to_string());
                    out.raw(")</b>");
                }
                boxes(&mut out, line.numbers);
                out.raw("</li>");
            }
            out.raw("</ol>");
        }
    }
    out.raw("</div></td></tr></tbody></table>");
    out.0
}

fn running_head(out: &mut Markup, all: &Publication, kind: &str) {
    out.raw("<table class=\"paper ");
    out.raw(kind);
    out.raw("\" role=\"presentation\"><thead><tr><td><p class=\"running\">");
    out.element("b", "", &all.graded.title);
    out.text(" ");
    out.text(&all.graded.brief);
    out.raw("</p></td></tr></thead><tbody><tr><td>");
}

fn title(out: &mut Markup, all: &Publication) {
    out.raw("<div class=\"head\"><div>");
    out.element("h1", "", &all.graded.title);
    for notice in &all.graded.notices {
        out.element("p", "usage", notice);
    }
    out.raw("</div>");
    code(out, all);
    out.raw("</div>");
}

fn code(out: &mut Markup, all: &Publication) {
    let Some(code) = qr_svg(&all.code) else { return };
    out.raw("<figure class=\"code\">");
    out.raw(&code);
    out.element("figcaption", "", words::scan());
    out.raw("</figure>");
}

fn photos(out: &mut Markup, all: &Publication) {
    if all.photos.is_empty() {
        return;
    }
    out.raw("<div class=\"photos\">");
    for photo in &all.photos {
        out.raw("<img src=\"");
        out.text(&photo.source);
        out.raw("\" alt=\"");
        out.text(&photo.shows);
        out.raw("\">");
    }
    out.raw("</div>");
}

fn figures(out: &mut Markup, all: &Publication) {
    if all.figures.is_empty() {
        return;
    }
    out.raw("<section class=\"charts\">");
    out.element("h2", "", words::charts());
    for figure in &all.figures {
        out.raw("<figure id=\"paper-");
        out.raw(figure.id);
        out.raw("\">");
        out.element("figcaption", "", &figure.title);
        out.raw(&figure.markup);
        out.raw("</figure>");
    }
    out.raw("</section>");
}

fn work(out: &mut Markup, line: &GradedLine, block: &Block, highlight: Option<usize>) {
    out.raw("<li><b>");
    out.told(&line.label, block, highlight);
    out.raw("</b>");
    if let Some(colour) = &line.colour_name {
        out.text(", ");
        out.text(colour);
    }
    out.text(": ");
    out.told(&line.work, block, highlight);
    if let Some(total) = &line.total {
        out.raw(" <b>");
        out.told(total, block, highlight);
        out.raw("</b>");
    }
    // A box a round where there is one size; of several, a box a line.
    match &line.own[..] {
        [Some(only)] => boxes(out, only.numbers),
        _ => out.raw("<span class=\"boxes\"><i></i></span>"),
    }
    out.raw("</li>");
}

/// Boxes to tick: one a row or round, parted after every tenth.
fn boxes(out: &mut Markup, label: Label) {
    let count = match label {
        Label::Row(first, last) | Label::Round(first, last) => last + 1 - first.min(last),
        _ => 1,
    };
    let (count, each) = if count > MOST_BOXES { (count.div_ceil(10), 10) } else { (count, 1) };
    out.raw(if each == 10 {
        "<span class=\"boxes tens\" aria-hidden=\"true\">"
    } else {
        "<span class=\"boxes\" aria-hidden=\"true\">"
    });
    for tick in 0..count.min(400) {
        out.raw(if tick % 10 == 9 { "<i class=\"tenth\"></i>" } else { "<i></i>" });
    }
    if each == 10 {
        out.raw("<small>× 10</small>");
    }
    out.raw("</span>");
}

/// What is pointed out of a table.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Mine {
    Column(usize),
    Row(usize),
}

/// A table as markup, turned where it would be wider than a sheet: in a page, the twin of a chart or the measures of all sizes.
pub fn table_markup(of: &Table) -> String {
    let mut out = Markup::default();
    table(&mut out, &of.fitted(), "twin", None);
    out.0
}

pub(super) fn table(out: &mut Markup, table: &Table, class: &str, pointed: Option<Mine>) {
    out.raw("<table class=\"");
    out.raw(class);
    out.raw("\">");
    if !table.caption.is_empty() {
        out.element("caption", "", &table.caption);
    }
    out.raw("<thead><tr>");
    let mine = |row: Option<usize>, at: usize| {
        let here = pointed == Some(Mine::Column(at)) || row.is_some_and(|row| pointed == Some(Mine::Row(row)));
        if here { " class=\"mine\"" } else { "" }
    };
    for (at, cell) in table.head.iter().enumerate() {
        out.raw("<th scope=\"col\"");
        out.raw(mine(None, at));
        out.raw(">");
        out.text(cell);
        out.raw("</th>");
    }
    out.raw("</tr></thead><tbody>");
    for (number, row) in table.rows.iter().enumerate() {
        out.raw("<tr>");
        for (at, cell) in row.iter().enumerate() {
            out.raw(if at == 0 { "<th scope=\"row\"" } else { "<td" });
            out.raw(mine(Some(number), at));
            out.raw(">");
            out.text(cell);
            out.raw(if at == 0 { "</th>" } else { "</td>" });
        }
        out.raw("</tr>");
    }
    out.raw("</tbody></table>");
}

/// Markup in the making: every text is escaped.
#[derive(Default)]
pub(super) struct Markup(pub(super) String);

impl Markup {
    pub(super) fn raw(&mut self, markup: &str) {
        self.0.push_str(markup);
    }

    pub(super) fn text(&mut self, text: &str) {
        for c in text.chars() {
            match c {
                '&' => self.0.push_str("&amp;"),
                '<' => self.0.push_str("&lt;"),
                '>' => self.0.push_str("&gt;"),
                '"' => self.0.push_str("&quot;"),
                '\'' => self.0.push_str("&#39;"),
                c => self.0.push(c),
            }
        }
    }

    pub(super) fn element(&mut self, name: &str, class: &str, text: &str) {
        self.raw("<");
        self.raw(name);
        if !class.is_empty() {
            self.raw(" class=\"");
            self.raw(class);
            self.raw("\"");
        }
        self.raw(">");
        self.text(text);
        self.raw("</");
        self.raw(name);
        self.raw(">");
    }

    /// A text in brackets; the number of the size that is pointed out stands apart.
    fn told(&mut self, told: &Told, block: &Block, highlight: Option<usize>) {
        let mine = highlight.and_then(|size| block.sizes.iter().position(|one| *one == size));
        let separator = hatwright_words::sizes::separator();
        for piece in &told.0 {
            match piece {
                Piece::Words(words) => self.text(words),
                Piece::Numbers(numbers) => {
                    for (i, number) in numbers.iter().enumerate() {
                        self.text(["", " ("].get(i).copied().unwrap_or(separator));
                        let number = number.as_deref().unwrap_or(crate::sizes::NOT_THIS);
                        if Some(i) == mine {
                            self.element("mark", "", number);
                        } else {
                            self.text(number);
                        }
                    }
                    if numbers.len() > 1 {
                        self.text(")");
                    }
                }
            }
        }
    }
}
