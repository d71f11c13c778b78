//! The words and pictures of a planned hat. No browser, no storage: structs in, text and geometry out.

pub mod figures;
pub mod hooks;
pub mod out;
pub mod picture;
pub mod say;
pub mod sizes;
pub mod written;
