//! The hat as it will be: its numbers and its picture.

use crate::bench::{Bench, Shown};
use crate::erase::{flag, memo, words};
use crate::field::field_id;
use crate::headline::{Figure, headline};
use crate::html::Html;
use hatwright_pattern::picture::{HatLabels, hat_picture, to_markup};
use hatwright_pattern::{figures, say};
use hatwright_sizing::YarnLength;
use hatwright_words::see as told;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The three numbers that answer the question, and whom the hat fits.
pub fn answer(bench: Bench) -> AnyView {
    let yarn = words(move || yarn(bench));
    let colours = words(move || {
        let used = bench.shown.with(|s| s.hat.yarn.iter().filter(|y| y.balls > 0).count());
        let told = [
            told::no_colours,
            told::one_colour,
            told::two_colours,
            told::three_colours,
            told::four_colours,
            told::five_colours,
            told::six_colours,
        ];
        told[used.min(6)]().to_owned()
    });
    let wearer = words(move || {
        let units = bench.figure_units().typed();
        told::wearer(&figures::with_article(&figures::length(bench.shown.with(|s| s.hat.head.girth), units)))
    });
    let others = words(move || {
        let units = bench.figure_units().typed();
        let fit = bench.shown.with(|s| s.hat.fit);
        let span = figures::length_span(fit.least, fit.most, units);
        match fit.ages {
            Some((from, _)) if from >= 18.0 => told::heads_adult(&span),
            Some((from, to)) => told::heads_at(&span, &figures::age_range(from, to)),
            None => told::heads(&span),
        }
    });
    view! {
        <div class="answer" class:stale=flag(move || stale(bench)) id="answer" tabindex="-1" role="group" aria-label=told::answer()>
            <div><b id="answer-stitches">{words(move || figure(bench, 0).count.to_string())}</b><small>{words(move || figure(bench, 0).words.to_owned())}</small></div>
            <div><b id="answer-rounds">{words(move || figure(bench, 1).count.to_string())}</b><small>{words(move || figure(bench, 1).words.to_owned())}</small></div>
            <div><b id="answer-yarn">{yarn}</b><small>{colours}</small></div>
            <div class="fit"><b id="answer-head">{wearer}</b><small id="answer-ages">{others}</small></div>
        </div>
    }
    .into_any()
}

/// Whether what is shown is not the hat of the numbers on the page.
pub fn stale(bench: Bench) -> bool {
    bench.shown.with(|s| s.refusal.is_some()) || bench.typed.with(|all| all.values().any(|t| t.error.is_some()))
}

/// The first or the second number of the answer.
pub fn figure(bench: Bench, which: usize) -> Figure {
    bench.shown.with(|s| headline(s)[which])
}

/// All the yarn, in figures.
pub fn yarn(bench: Bench) -> String {
    let units = bench.figure_units().typed();
    bench.shown.with(|s| figures::yarn(total(s), units))
}

fn total(shown: &Shown) -> YarnLength {
    shown.hat.yarn.iter().map(|y| y.length).sum()
}

/// A banner while the hat shown is not the hat of the numbers on the page.
pub fn last_good(bench: Bench) -> AnyView {
    let banner = words(move || {
        let mut html = Html::new();
        let mut line = |id: &str, why: &str| {
            html.raw("<li><a href=\"#").raw(id).raw("\">").text(why).raw("</a></li>");
        };
        bench.typed.with(|all| {
            for (place, typed) in all {
                if let Some(error) = &typed.error {
                    line(&field_id(*place), error);
                }
            }
        });
        if let Some((seat, why)) = bench.refused() {
            line(seat.id(), &why);
        }
        match html.done() {
            lines if lines.is_empty() => lines,
            lines => {
                let mut html = Html::new();
                html.element("p", told::last_good()).raw("<ul>").raw(&lines).raw("</ul>");
                html.done()
            }
        }
    });
    // A link to a field should put the cursor there, and leave the address alone.
    let go = move |event: web_sys::MouseEvent| {
        let link = event.target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()).and_then(|e| e.get_attribute("href"));
        if let Some(field) = link.and_then(|href| crate::dom::element(href.trim_start_matches('#'))) {
            event.prevent_default();
            // What is folded away cannot be gone to.
            while let Ok(Some(folded)) = field.closest("details:not([open])") {
                let _ = folded.set_attribute("open", "");
            }
            let _ = field.focus();
        }
    };
    view! { <div class="stuck-on" role="status" id="stuck-on" tabindex="-1" inner_html=banner on:click=go></div> }.into_any()
}

/// The picture of the hat.
pub fn picture(bench: Bench) -> AnyView {
    let drawn = memo(move || {
        let units = bench.figure_units();
        let hexes = bench.project.with(|p| p.colours.iter().map(|c| c.hex.to_string()).collect::<Vec<_>>());
        bench.shown.with(|s| {
            let labels = HatLabels::of(&s.hat, &s.spec, units);
            to_markup(&hat_picture(&s.hat, &s.spec, &labels), &hexes.iter().map(String::as_str).collect::<Vec<_>>())
        })
    });
    view! {
        <figure class="hat" class:stale=flag(move || stale(bench))>
            <div class="picture" inner_html=words(move || drawn.get())></div>
            <figcaption>{words(move || {
                let units = bench.figure_units();
                bench.shown.with(|s| if s.refusal.is_none() { say::why_this_count(&s.hat, units) } else { String::new() })
            })}</figcaption>
        </figure>
    }
    .into_any()
}
