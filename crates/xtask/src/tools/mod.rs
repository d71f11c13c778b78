//! The programs that the build and the tests need beyond the Rust toolchain.
mod browser;
mod cache;
mod cached;
mod setup;
mod wasm_target;

pub use setup::{Need, Tools, setup};
