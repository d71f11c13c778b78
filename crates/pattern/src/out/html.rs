//! A page of HTML that needs nothing else: style, charts, photographs and code are in it.

use super::Publication;
use super::paper::{Markup, PaperSize, full_sheet, table};
use hatwright_words::{out as words, spoken};

/// The style of a pattern on paper, and of the page that stands alone.
pub const PAPER_CSS: &str = include_str!("paper.css");

/// The rules of a sheet's page: its size, and the number at its foot, in the language that is spoken. Browsers that know no boxes in the
/// margin (Firefox and Safari, at this time) number pages by their own header and footer.
///
/// ```
/// use hatwright_pattern::out::{PaperSize, page_css};
/// assert!(page_css(PaperSize::Letter).starts_with("@page{size:letter;margin:"));
/// ```
pub fn page_css(paper: PaperSize) -> String {
    let told = words::page_of("\u{1}", "\u{2}");
    let mut content = String::from("\"");
    for c in told.chars() {
        match c {
            '\u{1}' => content.push_str("\"counter(page)\""),
            '\u{2}' => content.push_str("\"counter(pages)\""),
            '"' | '\\' => {}
            c => content.push(c),
        }
    }
    content.push('"');
    [
        "@page{size:",
        paper.name(),
        ";margin:12mm 14mm 16mm;@bottom-center{content:",
        &content,
        ";font:9pt ui-sans-serif,system-ui,sans-serif;color:#333}}",
    ]
    .concat()
}

/// The whole pattern as one file.
pub fn html(all: &Publication, paper: PaperSize) -> String {
    let mut out = Markup::default();
    out.raw("<!doctype html>\n<html lang=\"");
    out.raw(spoken().tag());
    // A translation by the browser would alter terms and counts.
    out.raw("\" translate=\"no\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
    out.element("title", "", &all.graded.title);
    out.raw("<style>");
    out.raw(crate::picture::CLASSES);
    out.raw(PAPER_CSS);
    out.raw(&page_css(paper));
    out.raw("</style></head><body class=\"alone\"><main>");
    out.raw(&full_sheet(all));
    if !all.figures.is_empty() {
        out.raw("<section class=\"twins\">");
        for figure in &all.figures {
            out.raw("<details><summary>");
            out.text(&words::table_of(&figure.title));
            out.raw("</summary>");
            table(&mut out, &figure.table, "twin", None);
            out.raw("</details>");
        }
        out.raw("</section>");
    }
    if !all.link.is_empty() {
        out.raw("<p class=\"link\">");
        out.text(words::link_label());
        out.raw(" <a href=\"");
        out.text(&all.link);
        out.raw("\">");
        out.text(&all.link);
        out.raw("</a></p>");
    }
    out.raw("</main></body></html>\n");
    out.0
}
