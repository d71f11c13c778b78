//! A pattern as something to publish: plain text, Markdown, a page of HTML, a table of its rounds.

mod charted;
mod csv;
mod flow;
mod html;
mod markdown;
mod paper;
mod publication;
mod qr;
#[cfg(test)]
mod tests;
mod text;

pub use charted::chart_figures;
pub use csv::rounds_csv;
pub use html::{PAPER_CSS, html, page_css};
pub use markdown::markdown;
pub use paper::{PaperSize, full_sheet, table_markup, working_sheet};
pub use publication::{Figure, OneSize, Photo, Publication, publish};
pub use qr::qr_svg;
pub use text::text;
