//! What is sewn to the top: nothing, a pom-pom, a tassel.

use super::colours::colour_options;
use crate::bench::Bench;
use crate::choice::{Choice, choice};
use crate::erase::{memo, part, words};
use crate::field::number;
use crate::html::Html;
use crate::pick::{option, pick};
use hatwright_pattern::figures;
use hatwright_sizing::{Colour, Quantity, Topper, TopperKind};
use hatwright_words::ask;
use leptos::prelude::*;

const KINDS: [TopperKind; 2] = [TopperKind::PomPom, TopperKind::Tassel];

const TOPPER: Choice = Choice {
    legend: ask::topper,
    name: "pom-pom-way",
    options: &[ask::nothing, ask::pom_pom, ask::tassel],
    get: |p| p.spec.topper.map_or(0, |topper| topper.kind as usize + 1),
    set: |bench, i| {
        if let Some(now) = bench.project.with_untracked(|p| p.spec.topper) {
            bench.aside.update_value(|a| a.toppers[now.kind as usize] = Some(now));
        }
        let wanted = i.checked_sub(1);
        let kept = wanted.and_then(|which| bench.aside.with_value(|a| a.toppers[which]));
        bench.shape(|s| s.topper = wanted.map(|which| kept.unwrap_or(Topper::usual(KINDS[which]))));
    },
};

/// The question, and what belongs to its answer.
pub fn topper(bench: Bench) -> AnyView {
    let kind = memo(move || bench.project.with(|p| p.spec.wears().map(|topper| topper.kind)));
    view! {
        {choice(bench, TOPPER)}
        {part(move || match kind.get() {
            None => ().into_any(),
            Some(kind) => finer(bench, kind.quantity()),
        })}
    }
    .into_any()
}

fn finer(bench: Bench, size: Quantity) -> AnyView {
    let options = words(move || {
        bench.project.with(|p| {
            let chosen = p.spec.topper.and_then(|topper| topper.colour);
            let mut html = Html::new();
            option(&mut html, "all", ask::all_colours(), chosen.is_none());
            colour_options(&mut html, p, chosen);
            html.done()
        })
    });
    let set = move |picked: String| {
        let colour = picked.parse::<u8>().ok().map(Colour);
        bench.shape(|s| {
            if let Some(topper) = &mut s.topper {
                topper.colour = colour.filter(|c| usize::from(c.0) < s.balls.len());
            }
        });
    };
    view! {
        <div class="pair">
            {number(bench, size, 0, "")}
            {number(bench, Quantity::Fullness, 0, ask::percent())}
            {pick("pom-pom-colour".to_owned(), ask::topper_in(), options, set)}
        </div>
        <p class="note" id="winding">{words(move || winding(bench))}</p>
    }
    .into_any()
}

/// How it is wound, as a maker does it.
fn winding(bench: Bench) -> String {
    let units = bench.figure_units();
    bench.shown.with(|s| {
        let Some(topper) = s.hat.topper else { return String::new() };
        let (wraps, size) = (topper.wraps.to_string(), figures::length(topper.size, units));
        let wound = figures::yarn(topper.wound(), units);
        match topper.kind {
            TopperKind::PomPom => ask::wind_pom_pom(&wraps, &size, &wound),
            TopperKind::Tassel => ask::wind_tassel(&wraps, &size, &wound),
        }
    })
}
