//! Whom the hat fits: a curve over the ages, its table, and the hat that leaves room to grow.

use crate::bench::{Bench, Shown};
use crate::dom;
use crate::erase::{flag, memo, part, words};
use crate::html::Html;
use crate::see::stale;
use hatwright_pattern::picture::{fit_curve, to_markup};
use hatwright_pattern::{figures, say};
use hatwright_sizing::{Growing, fit_table, room_to_grow};
use hatwright_words::see as told;
use leptos::prelude::*;

/// How long the numbers must rest before the larger hats are tried, in milliseconds: that takes a hundred plans.
const REST: i32 = 150;

/// The section.
pub fn fits(bench: Bench) -> AnyView {
    let curve = memo(move || bench.shown.with(|s| to_markup(&fit_curve(&s.hat.fit, s.spec.head.age_years()), &[])));
    let told = memo(move || {
        let units = bench.figure_units();
        bench.shown.with(|s| sentences(s, units))
    });
    let rows = memo(move || {
        let fit = bench.shown.with(|s| s.hat.fit);
        let mut html = Html::new();
        for row in fit_table(fit.least, fit.most) {
            let (who, share) = say::fit_row(&row);
            html.raw("<tr><th scope=\"row\">").text(&who).raw("</th><td>").text(&share).raw("</td></tr>");
        }
        html.done()
    });
    view! {
        <section class="fits card" aria-labelledby="fits-title" id="fits" class:stale=flag(move || stale(bench))>
            <h2 id="fits-title">{told::fits_title()}</h2>
            <div class="curve picture" inner_html=words(move || curve.get())></div>
            <div inner_html=words(move || told.get())></div>
            {growing(bench)}
            <details>
                <summary>{told::as_table()}</summary>
                <table>
                    <thead><tr><th scope="col">{told::age()}</th><th scope="col">{told::heads_fit()}</th></tr></thead>
                    <tbody inner_html=words(move || rows.get())></tbody>
                </table>
            </details>
        </section>
    }
    .into_any()
}

fn sentences(shown: &Shown, units: figures::Units) -> String {
    let mut html = Html::new();
    html.raw("<p id=\"fit-sentence\">").text(&say::fit_sentence(&shown.hat, units)).raw("</p><p class=\"note\">");
    html.text(&say::ribbed_sentence(&shown.hat)).raw("</p><p class=\"note\" id=\"labels\">");
    html.text(&say::hat_labels_sentence(shown.hat.head.girth)).raw("</p>");
    html.done()
}

/// The offer of a hat that serves a child for longer.
fn growing(bench: Bench) -> AnyView {
    let offer = RwSignal::new(None::<Growing>);
    let timer = StoredValue::new(None::<i32>);
    let spec = memo(move || bench.shown.with(|s| s.spec.clone()));
    Effect::new(move |_| {
        let spec = spec.get();
        if let Some(running) = timer.get_value() {
            dom::cancel(running);
        }
        // A hat that is begun does not grow.
        let found = move || if spec.kept.is_some() { None } else { room_to_grow(&spec) };
        timer.set_value(dom::after(REST, move || offer.set(found())));
    });
    part(move || {
        let units = bench.figure_units();
        let taken =
            |g: &Growing| bench.shown.with(|s| s.hat.size.stitches == g.chosen.stitches && s.hat.size.rows == g.chosen.rows);
        let Some(found) = offer.get().filter(|g| !taken(g)) else { return ().into_any() };
        view! {
            <div class="offer" id="growing">
                <p>{bench.shown.with(|s| say::growing_sentence(&found, &s.hat, units))}</p>
                <button type="button" id="take-growing" on:click=move |_| bench.shape(|s| s.chosen = Some(found.chosen))>
                    {told::take(found.chosen.stitches.get())}
                </button>
            </div>
        }
        .into_any()
    })
    .into_any()
}
