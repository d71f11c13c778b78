//! One type for all reactive pieces of a kind.
//!
//! Leptos compiles a reactive text, flag or part anew for every closure type. Boxed, they share one copy each: 282 KB of wasm in
//! brotli became 252.

use leptos::prelude::*;

/// A reactive text.
pub type Words = Box<dyn FnMut() -> String + Send>;
/// A reactive yes or no.
pub type Flag = Box<dyn FnMut() -> bool + Send>;
/// A reactive part of the page.
pub type Part = Box<dyn FnMut() -> AnyView + Send>;

/// A text that follows what it reads.
pub fn words(of: impl FnMut() -> String + Send + 'static) -> Words {
    Box::new(of)
}

/// A yes or no that follows what it reads.
pub fn flag(of: impl FnMut() -> bool + Send + 'static) -> Flag {
    Box::new(of)
}

/// A part of the page that follows what it reads.
pub fn part(of: impl FnMut() -> AnyView + Send + 'static) -> Part {
    Box::new(of)
}

/// A part that is there only sometimes.
pub fn part_if(mut there: impl FnMut() -> bool + Send + 'static, mut of: impl FnMut() -> AnyView + Send + 'static) -> Part {
    Box::new(move || if there() { of() } else { ().into_any() })
}

/// A value that is worked out again only when what it reads changes.
pub fn memo<T: PartialEq + Send + Sync + 'static>(of: impl Fn() -> T + Send + Sync + 'static) -> Memo<T> {
    boxed(Box::new(of))
}

fn boxed<T: PartialEq + Send + Sync + 'static>(of: Box<dyn Fn() -> T + Send + Sync>) -> Memo<T> {
    Memo::new(move |_| of())
}
