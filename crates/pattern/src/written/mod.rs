//! The written pattern: operation trees, their lines in US or UK terms, and the whole sheet as text.
//!
//! [`write()`] makes a [`Pattern`] of numbers and operation trees; [`lay_out`] puts it in words, section by section, as a
//! [`Sheet`] for the page; [`Sheet::text`] is the same as plain text, and [`print()`] does all of it at once.
//!
//! # How a line is written
//!
//! A printed line is a label, the colour where the hat has more than one, the work, and the total in parentheses:
//!
//! ```text
//! Row 1, indigo: sc in 2nd ch from hook and in each ch across. (10)
//! Rounds 2–5, weld: sc in each st around. (56)
//! Round 6: [sc2tog, 5 sc] × 6, sc2tog, 6 sc. (43)
//! ```
//!
//! Only such lines begin with `Row`, `Rows`, `Round` or `Rounds`. The work of a round, in US terms, is made of:
//!
//! ```text
//! work    := item (", " item)*
//! item    := step | "[" step (", " step)* "] × " N | "sc in each st around" | "sc in each row end around"
//! step    := "sc" | N " sc" | "sc2tog"
//!          | "sc in next row end"    | "sc in each of next " N " row ends"
//!          | N " sc in next row end" | N " sc in each of next " N " row ends"
//!          | "skip 1 row end"        | "skip " N " row ends"
//! ```
//!
//! Repeats are never nested, `× N` means N times in all (2 or more), and `sc` alone is one stitch. A line uses up exactly the
//! stitches (in the pick-up round, the row ends) of the one below. In UK terms `sc` is `dc`, `sc2tog` is `dc2tog` and `skip` is
//! `miss`; nothing else differs. A row of the band is `ch 1, turn, ` and `sc in back loop of each st across`, or in the last row
//! `sc through back loop of each st and the foundation edge together across`. A line of rows without a colour of its own is
//! labelled `in the same stripes`.

mod finishing;
mod groups;
mod lines;
mod making;
mod ops;
mod pattern;
#[cfg(test)]
pub(crate) mod sample;
mod sheet;
mod start;
mod words;

pub use lines::{decrease_line, pick_up_line};
pub use ops::{Op, Place, Stitch, makes, uses};
pub use pattern::{Label, Line, Part, PartKind, Pattern, write};
pub use sheet::{About, Section, Sheet, WrittenLine, lay_out, print};
pub use start::swatch_advice;
pub use words::{Terms, Words, compact_text, work_text};
