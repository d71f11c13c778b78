//! The digest of many plans, natively as a program and in WebAssembly as a function: `cargo xtask test` compares the two.

/// For native code: prints the digest of as many hats as the first argument says.
#[cfg(not(target_arch = "wasm32"))]
fn main() {
    let count = std::env::args().nth(1).and_then(|count| count.parse().ok());
    println!("{}", hatwright_tests::digest::digest(count.expect("the first argument is how many hats to digest")));
}

#[cfg(target_arch = "wasm32")]
fn main() {}

/// For WebAssembly: the same, for a caller that passes the number.
#[cfg(target_arch = "wasm32")]
#[wasm_bindgen::prelude::wasm_bindgen]
pub fn digest(count: u32) -> String {
    hatwright_tests::digest::digest(count)
}
