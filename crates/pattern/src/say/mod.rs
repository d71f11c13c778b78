//! Sentences for a person: plain values in, text out. A second language replaces these files and nothing else.

mod cautions;
mod fields;
mod fit;
mod refusals;
mod remarks;

pub use cautions::{Caution, cautions};
pub use fields::{hint, label, misread, out_of_range};
pub use fit::{fit_sentence, ribbed_sentence, size_effect, size_line, why_this_count};
pub use refusals::refusal;
pub use remarks::remark;
