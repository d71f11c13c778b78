//! Only this much: whether what is owned is enough, and the hats that can be made of it otherwise.

use super::parts::{self, Field};
use super::{Counter, Typed, have, this};
use crate::dom;
use crate::erase::{flag, memo, part, words};
use crate::html::Html;
use hatwright_pattern::picture::{hat_silhouette, to_markup};
use hatwright_pattern::{figures, say};
use hatwright_sizing::{Colour, HatSpec, Offer, Only, Unit, YarnLength, only_this_much, shop};
use hatwright_words::shop as words_of;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// How long after the last change the hats are looked for, in milliseconds: up to 400 are planned.
const MOMENT: i32 = 200;

/// The view.
pub fn only(counter: Counter) -> AnyView {
    let bench = counter.bench;
    let now = memo(move || bench.shown.with(|s| s.spec.clone()));
    // What is worked out follows what is typed a moment later. The view gone, nothing is.
    let asked: RwSignal<Option<HatSpec>> = RwSignal::new(None);
    Effect::new(move |timer: Option<Option<i32>>| {
        let spec = now.get();
        timer.flatten().into_iter().for_each(dom::cancel);
        let wait = if asked.with_untracked(Option::is_none) { 0 } else { MOMENT };
        dom::after(wait, move || {
            asked.try_set(Some(spec));
        })
    });
    let found: Memo<Option<Only>> = memo(move || asked.with(|spec| spec.as_ref().map(only_this_much)));
    let late = memo(move || asked.with(|spec| now.with(|now| spec.as_ref() != Some(now))));
    let used = memo(move || {
        let used = |s: &crate::bench::Shown| {
            s.hat.yarn.iter().filter(|need| need.length > YarnLength::default()).map(|n| n.colour).collect()
        };
        bench.shown.with(|s| -> Vec<Colour> { used(s) })
    });
    let fields = part(move || {
        let fields = used.get().into_iter().map(|colour| field(counter, usize::from(colour.0))).collect_view();
        view! { <div class="haves">{fields}</div> }.into_any()
    });
    let how = words(move || {
        let inches = bench.figure_units() == figures::Units::Inches;
        if inches { words_of::own_inches() } else { words_of::own_metric() }.to_owned()
    });
    let verdict = words(move || found.with(|only| verdict(counter, only.as_ref())));
    let offers = words(move || {
        let (units, hexes) = (bench.figure_units(), counter.hexes());
        found.with(|only| only.as_ref().map(|only| cards(counter, only, &hexes, units)).unwrap_or_default())
    });
    let take = move |event: web_sys::MouseEvent| {
        let target = event.target().and_then(|t| t.dyn_into::<web_sys::Element>().ok());
        let button = target.and_then(|e| e.closest("[data-offer]").ok().flatten());
        let which = button.and_then(|b| b.get_attribute("data-offer")).and_then(|n| n.parse::<usize>().ok());
        let offer = which.and_then(|i| found.with_untracked(|only| only.as_ref().and_then(|only| only.offers.get(i).cloned())));
        if let Some(offer) = offer.filter(|_| !late.get_untracked()) {
            let told = untrack(|| told(counter, &offer, bench.figure_units()));
            let colours = bench.project.with_untracked(|p| p.colours.clone());
            counter.take(words_of::taken(&told), offer.spec, colours);
        }
    };
    view! {
        <div class="shop-scroll" tabindex="-1">
            {parts::line("have-how", "note", how)}
            {fields}
            {parts::line("only-verdict", "verdict", verdict)}
            <div id="offers" class:late=flag(move || late.get()) inner_html=offers on:click=take></div>
        </div>
    }
    .into_any()
}

/// What is owned of a colour.
fn field(counter: Counter, i: usize) -> AnyView {
    let bench = counter.bench;
    let typed = memo(move || counter.have.with(|have| have.get(&i).cloned()));
    let text = words(move || {
        let owned = counter.owned(i);
        // What was typed stands for as long as it is what the document holds, or is wrong.
        let kept = typed.get().filter(|typed| typed.given.is_err() || typed.given == Ok(owned)).map(|typed| typed.text);
        kept.unwrap_or_else(|| figures::show(owned.ticks(), Unit::Count, bench.figure_units()))
    });
    let says = memo(move || {
        let units = bench.figure_units();
        typed
            .with(|typed| {
                let typed = typed.as_ref()?;
                typed.given.err().map(|why| have::sentence(why, &typed.text, units))
            })
            .unwrap_or_default()
    });
    let take = move |text: String| {
        let units = untrack(|| bench.figure_units());
        let Some(ball) = bench.project.with_untracked(|p| p.spec.balls.get(i).copied()) else { return };
        let given = have::read(&text, &ball, units);
        counter.have.update(|have| {
            have.insert(i, Typed { text, given });
        });
        if let Ok(owned) = given {
            counter.own(i, owned);
        }
    };
    let unit = words(move || {
        let plain = counter.have.with(|have| have.get(&i).is_none_or(|typed| !typed.text.contains(char::is_alphabetic)));
        if plain { words_of::balls_unit().to_owned() } else { String::new() }
    });
    parts::field(Field {
        id: ["have-", &i.to_string()].concat(),
        class: "number have",
        label: words(move || this::who(counter, i)),
        text,
        unit,
        says,
        data: String::new(),
        typed: Box::new(take),
    })
}

/// Whether it is enough, and what is short.
fn verdict(counter: Counter, only: Option<&Only>) -> String {
    let units = counter.bench.figure_units();
    let Some(only) = only else { return words_of::working().to_owned() };
    if only.enough {
        // Nothing is bought, so this is the chance of what is owned.
        let chance = counter.bench.shown.with(|s| shop(&s.hat, &s.spec).chance);
        return words_of::will_do(&say::chance(chance));
    }
    let name = |colour: &Colour| counter.name(usize::from(colour.0));
    let length = |(colour, lack): &(Colour, YarnLength)| words_of::length_of(&figures::yarn(*lack, units), &name(colour));
    let short = only.short.iter().map(length).reduce(|all, next| words_of::length_and(&all, &next));
    match (short, only.offers.is_empty()) {
        (None, _) => words_of::cannot_be().to_owned(),
        (Some(short), true) => words_of::short_none(&short),
        (Some(short), false) => words_of::short_offers(&short),
    }
}

/// What an offer is.
fn told(counter: Counter, offer: &Offer, units: figures::Units) -> String {
    let names = counter.bench.project.with(hatwright_project::Project::told_colours);
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    counter.bench.shown.with(|s| say::offer(offer, &s.hat, &names, units))
}

/// The hats that fit, each a button.
fn cards(counter: Counter, only: &Only, hexes: &[String], units: figures::Units) -> String {
    let hexes: Vec<&str> = hexes.iter().map(String::as_str).collect();
    let mut html = Html::new();
    for (i, offer) in only.offers.iter().enumerate() {
        let hat = &offer.hat;
        html.raw("<button type=\"button\" data-offer=\"").number(i as u32).raw("\">");
        html.raw("<span aria-hidden=\"true\" class=\"picture\">").raw(&to_markup(&hat_silhouette(hat), &hexes)).raw("</span>");
        html.raw("<span><b>").text(&told(counter, offer, units)).raw("</b> ");
        html.element("small", &say::offer_numbers(offer, units)).raw("</span></button>");
    }
    html.done()
}
