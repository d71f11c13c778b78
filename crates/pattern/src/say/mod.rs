//! Sentences for a person: plain values in, text out. Their words are the catalogue's, in the language that is spoken.

mod cautions;
mod doubt;
mod fields;
mod fit;
mod heads;
mod refusals;
mod remarks;
mod why;
mod wrong;
mod yarn;

pub use cautions::{Caution, cautions};
pub use doubt::doubt_sentences;
pub use fields::{hint, label};
pub use fit::{fit_row, fit_sentence, growing_sentence, in_ten, ribbed_sentence, size_effect, size_line, who_is_served};
pub use heads::{dates_sentence, hat_labels_sentence, hat_size, percentile_sentence, stand_in_sentence};
pub use refusals::refusal;
pub use remarks::remark;
pub use why::{reasons, why_not_others, why_this_band, why_this_count, why_this_depth, why_this_shaping};
pub use wrong::{misread, out_of_range};
pub use yarn::{
    ListedYarn, SwapRow, YarnName, chance, chance_full, hat_weight_sentence, known_use, list_text, lot_advice, margin_sentence,
    offer, offer_numbers, one_lot, part, part_of_topper, rate_of_strands, rate_sentence, rates_compared, shop_text, swap,
    swap_rows, swatch_sentence, unravelled_hint, weighed_hint, why_this_rate, yarn_hint,
};
