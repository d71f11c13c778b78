//! The yarn: what to buy of each colour, how much more than the estimate, where it goes, and how much of it a stitch takes.

mod breakdown;
mod extra;
pub mod known;
mod measure;
mod need;
mod rates;
mod reuse;
mod weigh;

use crate::bench::Bench;
use crate::erase::{flag, memo, words};
use crate::see::stale;
use hatwright_pattern::say;
use hatwright_sizing::shop;
use hatwright_words::shop as words_of;
use leptos::prelude::*;

/// The section.
pub fn yarn(bench: Bench) -> AnyView {
    let rows = memo(move || need::rows(bench));
    let sum = memo(move || need::sum(bench));
    view! {
        <section class="yarns card" aria-labelledby="yarn-title" id="yarn" tabindex="-1" class:stale=flag(move || stale(bench))>
            <header>
                <h2 id="yarn-title">{words_of::yarn_title()}</h2>
                <button type="button" id="open-shop" class="go" on:click=|_| crate::shop::show()>{words_of::in_the_shop()}</button>
            </header>
            <table>
                <thead>
                    <tr>
                        <th scope="col">{words_of::column_colour()}</th>
                        <th scope="col">{words_of::column_takes()}</th>
                        <th scope="col">{words_of::column_buy()}</th>
                        <th scope="col">{words_of::column_left()}</th>
                    </tr>
                </thead>
                <tbody id="yarn-rows" inner_html=words(move || rows.get())></tbody>
            </table>
            <p id="yarn-sum" inner_html=words(move || sum.get())></p>
            <p class="note">{words(move || surely(bench))}</p>
            {extra::extra(bench)}
            {breakdown::breakdown(bench)}
            {rates::rates(bench)}
        </section>
    }
    .into_any()
}

/// What is counted, how sure the swatch makes it, and what there is to know about dye lots.
fn surely(bench: Bench) -> String {
    let units = bench.figure_units();
    let (names, lots) = bench.project.with(|p| {
        let lots: Vec<String> = p.colours.iter().map(|c| c.lot.clone()).collect();
        (p.told_colours(), lots)
    });
    bench.shown.with(|s| {
        let told = say::doubt_sentences(&s.hat, units);
        let swatch = if told.len() > 2 { told[1].as_str() } else { "" };
        let mut all = vec![words_of::counted().to_owned(), swatch.to_owned(), say::one_lot().to_owned()];
        for line in &shop(&s.hat, &s.spec).lines {
            let of = |texts: &[String]| texts.get(usize::from(line.colour.0)).cloned().unwrap_or_default();
            all.extend(say::lot_advice(line, &of(&names), &[&of(&lots)]));
        }
        all.retain(|text| !text.is_empty());
        all.join(" ")
    })
}
