//! Other hats that would do as well: other counts, and plans that are smoother, simpler or nearer.

use crate::bench::Bench;
use crate::erase::{memo, part_if, words};
use crate::html::Html;
use hatwright_pattern::picture::{hat_silhouette, to_markup};
use hatwright_pattern::{figures, say};
use hatwright_sizing::{Alternative, Chosen, Hat, Quantity, Rows, Size, Stitches, Taste, alternatives};
use hatwright_words::{choose, count};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The button that was clicked, by its attributes.
fn clicked(event: &web_sys::MouseEvent) -> impl Fn(&str) -> Option<u32> + use<> {
    let target = event.target().and_then(|t| t.dyn_into::<web_sys::Element>().ok());
    let button = target.and_then(|e| e.closest("button").ok().flatten());
    move |name: &str| button.as_ref()?.get_attribute(name)?.parse().ok()
}

/// The counts and the plans that can be chosen.
pub fn choose(bench: Bench) -> AnyView {
    // A hat that is begun keeps its rounds: there is nothing to choose but to plan anew.
    let open = memo(move || bench.project.with(|p| p.spec.kept.is_none()));
    view! {
        <div class="choose">
            {part_if(move || open.get(), move || sizes(bench))}
            {part_if(move || open.get(), move || plans(bench))}
        </div>
    }
    .into_any()
}

/// The count that was taken and its neighbours; a click takes one.
fn sizes(bench: Bench) -> AnyView {
    let row = words(move || {
        let units = bench.figure_units();
        bench.shown.with(|s| {
            let hat = &s.hat;
            let mut all: Vec<Size> = hat.neighbours.clone();
            let at = all.iter().position(|n| n.girth > hat.size.girth).unwrap_or(all.len());
            all.insert(at, hat.size);
            let mut html = Html::new();
            for size in all {
                tag(&mut html, &size, hat, units);
            }
            html.done()
        })
    });
    let take = move |event: web_sys::MouseEvent| {
        let count = clicked(&event);
        if let (Some(rows), Some(stitches)) = (count("data-rows"), count("data-stitches")) {
            bench.shape(|s| s.chosen = Some(Chosen { rows: Rows::new(rows), stitches: Stitches::new(stitches) }));
            crate::dom::refocus(&["[data-stitches=\"", &stitches.to_string(), "\"]"].concat());
        }
    };
    let by_hand = memo(move || {
        bench.shown.with(|s| s.spec.chosen == Some(Chosen { rows: s.hat.size.rows, stitches: s.hat.size.stitches }))
    });
    let free = move || {
        view! {
            <p class="note">{choose::by_hand()}
                <button type="button" class="plain" id="free-count" on:click=move |_| bench.shape(|s| s.chosen = None)>
                    {choose::free()}
                </button>
            </p>
        }
        .into_any()
    };
    view! {
        <div class="sizes">
            <h3 id="sizes-title">{choose::counts_title()}</h3>
            <div class="row" role="group" aria-labelledby="sizes-title" inner_html=row on:click=take></div>
            {part_if(move || by_hand.get(), free)}
        </div>
    }
    .into_any()
}

fn tag(html: &mut Html, size: &Size, hat: &Hat, units: figures::Units) {
    let taken = *size == hat.size;
    let line = say::size_line(size, hat, units);
    html.raw("<button type=\"button\" class=\"size").raw(if taken { " taken" } else { "" });
    html.raw("\" aria-pressed=\"").raw(if taken { "true" } else { "false" });
    html.raw("\" data-rows=\"").number(size.rows.get()).raw("\" data-stitches=\"").number(size.stitches.get());
    html.raw("\" title=\"").text(&line).raw("\"");
    let loosest = hat.head.girth.cm() * (1.0 + Quantity::LoosestByHand.row().usual_value());
    let wearable = size.reaches && size.girth.cm() <= loosest;
    html.raw(if wearable { ">" } else { " disabled>" });
    html.raw("<b>").number(size.stitches.get()).raw("</b>").element("span", &figures::length(size.girth, units));
    let banded = hat.panel.is_none() && !hat.band_rows.is_empty() && !hat.rounds.is_empty();
    if banded && size.rows.get() != size.stitches.get() {
        html.element("span", &count::rows(size.rows.get()));
    }
    let verdict = say::size_effect(size, hat, units);
    html.element("small", &verdict).raw("</button>");
}

/// Plans side by side; a click takes one.
fn plans(bench: Bench) -> AnyView {
    let spec = memo(move || bench.shown.with(|s| s.spec.clone()));
    let hexes = memo(move || bench.project.with(|p| p.colours.iter().map(|c| c.hex.to_string()).collect::<Vec<_>>()));
    let cards = memo(move || {
        let units = bench.figure_units();
        spec.with(|spec| {
            let plans = alternatives(spec);
            let mut html = Html::new();
            if plans.len() > 1 {
                for plan in &plans {
                    card(&mut html, plan, spec.taste, units, &hexes.get());
                }
            }
            html.done()
        })
    });
    let take = move |event: web_sys::MouseEvent| {
        let tastes = [Taste::Balanced, Taste::Smooth, Taste::Simple, Taste::Nearest];
        if let Some((i, taste)) = clicked(&event)("data-taste").and_then(|i| tastes.get(i as usize).map(|t| (i, *t))) {
            bench.shape(|s| s.taste = taste);
            crate::dom::refocus(&["[data-taste=\"", &i.to_string(), "\"]"].concat());
        }
    };
    let there = memo(move || cards.with(|c| !c.is_empty()));
    part_if(move || there.get(), move || {
        view! {
            <div class="plans">
                <h3 id="plans-title">{choose::plans_title()}</h3>
                <div class="row" role="group" aria-labelledby="plans-title" inner_html=words(move || cards.get()) on:click=take></div>
            </div>
        }
        .into_any()
    })
    .into_any()
}

fn card(html: &mut Html, plan: &Alternative, taste: Taste, units: figures::Units, hexes: &[String]) {
    let hat = &plan.hat;
    let taken = plan.tastes.contains(&taste);
    // A plan stands for what it was chosen for; otherwise for its own first merit.
    let stands_for = if taken { taste } else { plan.tastes[0] };
    html.raw("<button type=\"button\" class=\"size").raw(if taken { " taken" } else { "" });
    html.raw("\" aria-pressed=\"").raw(if taken { "true" } else { "false" });
    html.raw("\" data-taste=\"").number(stands_for as u32).raw("\">");
    let merits: Vec<&str> = plan.tastes.iter().filter_map(|t| merit(*t)).collect();
    let told = if merits.is_empty() { choose::balanced().to_owned() } else { merits.join(", ") };
    let hexes: Vec<&str> = hexes.iter().map(String::as_str).collect();
    html.raw("<span aria-hidden=\"true\" class=\"picture\">").raw(&to_markup(&hat_silhouette(hat), &hexes)).raw("</span>");
    html.element("em", &told);
    html.element("span", &choose::plan_size(hat.size.stitches.get(), &figures::length(hat.size.girth, units)));
    html.element("small", &shaping(hat));
    if let Some(miss) = hat.crown_miss {
        html.element("small", &choose::within(&figures::length(miss, units)));
    }
    html.raw("</button>");
}

/// What a plan is the best at.
fn merit(taste: Taste) -> Option<&'static str> {
    match taste {
        Taste::Balanced => None,
        Taste::Smooth => Some(choose::smoothest()),
        Taste::Simple => Some(choose::simplest()),
        Taste::Nearest => Some(choose::nearest()),
    }
}

/// How many rounds shape the hat, and by how many stitches: `14 rounds shape it, by 4 or 6`.
fn shaping(hat: &Hat) -> String {
    let mut by: Vec<u32> = hat.rounds.iter().map(|r| r.decreases.get() + r.increases.get()).filter(|n| *n > 0).collect();
    if by.is_empty() {
        return choose::no_shaping().to_owned();
    }
    let rounds = by.len() as u32;
    by.sort_unstable();
    by.dedup();
    match by.as_slice() {
        [one] => choose::shaping_one(rounds, *one),
        [one, other] => choose::shaping_two(rounds, *one, *other),
        all => choose::shaping_many(rounds, all[0], all[all.len() - 1], all.len() as u32),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{HatSpec, plan};
    use hatwright_words::{Language, in_language};

    #[test]
    fn shaping_is_told_by_its_numbers() {
        let mut hat = plan(&HatSpec::default()).unwrap();
        let shapes = hat.rounds.iter().filter(|r| r.decreases.get() > 0).count();
        assert!(shaping(&hat).starts_with(&format!("{shapes} rounds shape it, by ")), "{}", shaping(&hat));
        let spanish = |hat: &Hat| in_language(Language::Spanish, || shaping(hat));
        assert!(spanish(&hat).starts_with(&format!("{shapes} vueltas dan la forma, de ")), "{}", spanish(&hat));
        hat.rounds.clear();
        assert_eq!([shaping(&hat), spanish(&hat)], ["no shaping", "sin disminuciones ni aumentos"]);
    }
}
