//! Several sizes in one pattern, in the trade's bracket form: `56 (60, 64)`.
//!
//! Every size is planned and written by itself; then the sheets are laid over each other. What they share is told once, and every
//! number in it once where all sizes agree. So a size's own pattern can always be read back, word for word, and the program knows
//! where sizes do not share one structure, and says so.

mod align;
mod grade;
mod names;
mod table;
#[cfg(test)]
mod tests;
mod told;

pub use grade::{Block, Graded, GradedLine, GradedSection, grade};
pub use names::size_name;
pub use table::{Table, size_table};
pub use told::{NOT_THIS, Piece, Told};
