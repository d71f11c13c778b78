//! Sentences for a person: plain values in, text out. A second language replaces these files and nothing else.

mod cautions;
mod doubt;
mod fields;
mod fit;
mod heads;
mod refusals;
mod remarks;
mod why;

pub use cautions::{Caution, cautions};
pub use doubt::doubt_sentences;
pub use fields::{hint, label, misread, out_of_range};
pub use fit::{fit_row, fit_sentence, growing_sentence, in_ten, ribbed_sentence, size_effect, size_line, who_is_served};
pub use heads::{dates_sentence, hat_labels_sentence, hat_size, percentile_sentence, stand_in_sentence};
pub(crate) use refusals::plural_stitches;
pub use refusals::refusal;
pub use remarks::remark;
pub use why::{reasons, why_not_others, why_this_band, why_this_count, why_this_depth, why_this_shaping};
