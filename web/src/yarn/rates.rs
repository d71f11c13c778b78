//! How much yarn a stitch takes: the way that is in use, all ways compared, and what can be measured.

use super::{measure, reuse, weigh};
use crate::bench::Bench;
use crate::erase::{memo, words};
use crate::html::Html;
use hatwright_pattern::say;
use hatwright_sizing::yarn_rates;
use hatwright_words::shop as words_of;
use leptos::prelude::*;

/// The part of the page.
pub fn rates(bench: Bench) -> AnyView {
    let told = memo(move || {
        let units = bench.figure_units();
        bench.shown.with(|s| say::rates_compared(&s.spec, units))
    });
    let why = words(move || bench.shown.with(|s| say::why_this_rate(&yarn_rates(&s.spec))));
    let looks = RwSignal::new(0);
    view! {
        <details id="stitch-yarn" on:toggle=move |_| looks.update(|n| *n += 1)>
            <summary>{words_of::rates_title()}</summary>
            <p id="rate-used">{words(move || told.with(|all| all.first().cloned().unwrap_or_default()))}</p>
            <p class="note">{why}</p>
            <ul id="rates" inner_html=words(move || told.with(|all| list(all)))></ul>
            {measure::measure(bench)}
            {weigh::weigh(bench)}
            {reuse::reuse(bench, looks)}
        </details>
    }
    .into_any()
}

/// The ways that are not in use, the surest first.
fn list(all: &[String]) -> String {
    let mut html = Html::new();
    for rate in all.iter().skip(1) {
        html.element("li", rate);
    }
    html.done()
}
