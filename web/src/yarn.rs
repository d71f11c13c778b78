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
use crate::made::yarn_names;
use crate::see::stale;
use hatwright_pattern::say;
use hatwright_sizing::shop;
use leptos::prelude::*;

/// The section.
pub fn yarn(bench: Bench) -> AnyView {
    let rows = memo(move || need::rows(bench));
    let sum = memo(move || need::sum(bench));
    view! {
        <section class="yarns card" aria-labelledby="yarn-title" id="yarn" tabindex="-1" class:stale=flag(move || stale(bench))>
            <header>
                <h2 id="yarn-title">"Yarn"</h2>
                <button type="button" id="open-shop" class="go" on:click=|_| crate::shop::show()>"In the shop"</button>
            </header>
            <table>
                <thead>
                    <tr>
                        <th scope="col">"Colour"</th>
                        <th scope="col">"Takes"</th>
                        <th scope="col">"To buy"</th>
                        <th scope="col">"Left over"</th>
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
        (yarn_names(&p.colours), lots)
    });
    bench.shown.with(|s| {
        let told = say::doubt_sentences(&s.hat, units);
        let swatch = if told.len() > 2 { told[1].as_str() } else { "" };
        let counted = "Every stitch of every part is counted, and topper, closing strand and ends; 9 times in 10 it takes what stands \
                       below the length.";
        let mut all = vec![counted.to_owned(), swatch.to_owned(), say::ONE_LOT.to_owned()];
        for line in &shop(&s.hat, &s.spec).lines {
            let of = |texts: &[String]| texts.get(usize::from(line.colour.0)).cloned().unwrap_or_default();
            all.extend(say::lot_advice(line, &of(&names), &[&of(&lots)]));
        }
        all.retain(|text| !text.is_empty());
        all.join(" ")
    })
}
