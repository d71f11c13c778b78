//! Yarn in words: how much of it a stitch takes and how that is known, how often it is enough, where it goes, what to buy.

mod chance;
mod hints;
mod list;
mod lots;
mod offers;
mod parts;
mod rates;
mod swap;
mod used;

pub use chance::{chance, chance_full, margin_sentence};
pub use hints::yarn_hint;
pub use list::{ListedYarn, YarnName, list_text, shop_text};
pub use lots::{lot_advice, one_lot};
pub use offers::{offer, offer_numbers};
pub use parts::{part, part_of_topper};
pub use rates::{rate_of_strands, rate_sentence, rates_compared, why_this_rate};
pub use swap::{SwapRow, swap, swap_rows};
pub use used::{hat_weight_sentence, known_use, swatch_sentence, unravelled_hint, weighed_hint};
