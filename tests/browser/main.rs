//! The built page in a real browser, by typing and clicking.
//!
//! `cargo xtask test` builds the page and runs these tests. Each has a browser, a profile and a server of its own; after each,
//! the browser must not have complained of anything, nor asked anything of another host.

mod complaints;
mod driver;
mod expected;
mod hands;
mod page;
mod server;
mod stage;

mod access;
mod bad_input;
mod breakdown;
mod heads;
mod keep;
mod language;
mod layout;
mod link;
mod names;
mod publish;
mod shop;
mod start;
mod storage;
mod styles;
mod whole_job;
mod yarn;
