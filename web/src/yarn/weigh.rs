//! After the hat: weighed, it tells how much yarn its stitches took, which is worth keeping for the next.

use crate::bench::{Bench, Shown};
use crate::dom;
use crate::erase::{memo, part_if, words};
use crate::field::number;
use hatwright_pattern::say;
use hatwright_sizing::{Quantity, YarnRate, rate_of_hat, yarn_rates};
use hatwright_words::shop as words_of;
use leptos::prelude::*;

/// The part of the page.
pub fn weigh(bench: Bench) -> AnyView {
    let found = memo(move || bench.shown.with(|s| s.refusal.is_none() && rate(s).is_some_and(|rate| is_news(s, &rate))));
    let keep = move |_| {
        let rate = bench.shown.with_untracked(rate);
        if let Some(rate) = rate {
            bench.shape(|s| s.yarn_use.kept = Some(rate.keep()));
            dom::refocus("#drop-use");
        }
    };
    view! {
        <details class="weigh">
            <summary id="weigh-hat">{words_of::weigh_title()}</summary>
            <div class="inset">
                {number(bench, Quantity::HatGrams, 0, "")}
                <p class="note" id="hat-means" role="status">{words(move || means(bench))}</p>
                {part_if(move || found.get(), move || view! {
                    <div class="quick">
                        <button type="button" id="keep-use" on:click=keep>{words_of::keep_use()}</button>
                    </div>
                }.into_any())}
            </div>
        </details>
        {kept(bench)}
    }
    .into_any()
}

fn rate(shown: &Shown) -> Option<YarnRate> {
    rate_of_hat(&shown.spec, &shown.hat)
}

/// Whether it is not kept yet.
fn is_news(shown: &Shown, rate: &YarnRate) -> bool {
    shown.spec.yarn_use.kept != Some(rate.keep())
}

/// What the weight makes of a stitch, or why it makes nothing.
fn means(bench: Bench) -> String {
    let units = bench.figure_units();
    let names = bench.project.with(hatwright_project::Project::told_colours);
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    bench.shown.with(|s| {
        let told = say::hat_weight_sentence(&s.spec, &s.hat, &names, units);
        told.unwrap_or_else(|| words_of::weigh_how().to_owned())
    })
}

/// A use that is kept, with a way to be rid of it.
fn kept(bench: Bench) -> AnyView {
    let kept = memo(move || bench.project.with(|p| p.spec.yarn_use.kept.is_some()));
    let drop = move |_| {
        bench.shape(|s| s.yarn_use.kept = None);
        dom::refocus("#weigh-hat");
    };
    part_if(
        move || kept.get(),
        move || {
            view! {
                <div class="kept" id="kept-use">
                    <p>{words(move || known(bench))}</p>
                    <button type="button" id="drop-use" on:click=drop>{words_of::forget_use()}</button>
                </div>
            }
            .into_any()
        },
    )
    .into_any()
}

fn known(bench: Bench) -> String {
    let units = bench.figure_units();
    bench.project.with(|p| {
        let rates = yarn_rates(&p.spec);
        let rate = rates.iter().find(|rate| rate.kept);
        rate.map(|rate| words_of::kept_use(&say::rate_of_strands(&p.spec, rate, units))).unwrap_or_default()
    })
}
