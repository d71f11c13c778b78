//! Support for the checks: reading the published tables, executing a pattern.

pub mod digest;
pub mod interpreter;
pub mod practice;
pub mod random;
pub mod table;
