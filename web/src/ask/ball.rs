//! A ball of yarn, as its band says: metres always in sight, the rest folded away.

use crate::bench::Bench;
use crate::erase::{memo, words};
use crate::field::{advised, labelled};
use crate::html::Html;
use crate::pick::{option, pick};
use hatwright_pattern::{figures, say};
use hatwright_project::text;
use hatwright_sizing::{Quantity, Unit, YarnWeight, yarn_hint};
use hatwright_words::ask;
use leptos::prelude::*;

/// The fields of one colour's ball.
pub fn ball(bench: Bench, i: usize) -> AnyView {
    let advice = memo(move || advice(bench, i));
    let band = memo(move || band(bench, i));
    view! {
        <div class="metres">{advised(bench, Quantity::BallYarn, i, ask::ball_holds().to_owned(), advice)}</div>
        <details class="ball-band">
            <summary><span>{ask::ball_band()}</span><small>{words(move || band.get())}</small></summary>
            <div class="pair">
                {labelled(bench, Quantity::BallGrams, i, ask::ball_weighs().to_owned(), "")}
                {labelled(bench, Quantity::BallsOwned, i, ask::owned().to_owned(), ask::balls_unit())}
                <div class="weight">{weight(bench, i)}</div>
                {labelled(bench, Quantity::BallPrice, i, ask::ball_price().to_owned(), "")}
                {lot(bench, i)}
            </div>
        </details>
    }
    .into_any()
}

/// What is known from the band, in short.
fn band(bench: Bench, i: usize) -> String {
    let units = bench.figure_units();
    bench.project.with(|p| {
        let Some(ball) = p.spec.balls.get(i) else { return String::new() };
        let mut told: Vec<String> = Vec::new();
        told.extend(ball.grams.map(|grams| figures::mass(grams, units)));
        told.extend(ball.weight.map(|weight| ask::told_weight(weight.number().into())));
        if ball.owned.ticks() > 0 {
            told.push(ask::told_owned(&figures::show(ball.owned.ticks(), Unit::Count, units)));
        }
        told.extend(ball.price.map(|price| ask::told_price(&figures::money(price))));
        if told.is_empty() { ask::told_nothing().to_owned() } else { told.join(" · ") }
    })
}

/// What stands beside the metres: grams that tell no length, or a ball that contradicts itself.
fn advice(bench: Bench, i: usize) -> String {
    let units = bench.figure_units();
    let wrong = bench.typed.with(|all| all.get(&(Quantity::BallYarn, i)).is_some_and(|t| t.error.is_some()));
    let Some(ball) = bench.project.with(|p| p.spec.balls.get(i).copied()) else { return String::new() };
    if wrong && ball.grams.is_some() {
        return ask::grams_alone().to_owned();
    }
    if wrong { String::new() } else { yarn_hint(&ball).map(|hint| say::yarn_hint(&hint, &ball, units)).unwrap_or_default() }
}

/// The number of the yarn's weight.
fn weight(bench: Bench, i: usize) -> AnyView {
    let now = memo(move || bench.project.with(|p| p.spec.balls.get(i).and_then(|b| b.weight).map(YarnWeight::number)));
    let options = words(move || {
        let mut html = Html::new();
        option(&mut html, "", ask::weight_unknown(), now.get().is_none());
        for (number, name) in (0_u8..).zip(super::swatch::weights()) {
            option(&mut html, &number.to_string(), name, now.get() == Some(number));
        }
        html.done()
    });
    let set = move |picked: String| {
        let weight = picked.parse::<u8>().ok().and_then(|n| YarnWeight::new(n).ok());
        bench.shape(|s| {
            if let Some(ball) = s.balls.get_mut(i) {
                ball.weight = weight;
            }
        });
    };
    pick(format!("ball-weight-{i}"), ask::weight_number(), options, set)
}

fn lot(bench: Bench, i: usize) -> AnyView {
    let lot = memo(move || bench.project.with(|p| p.colours.get(i).map(|c| c.lot.clone()).unwrap_or_default()));
    let set = move |event| {
        let typed = text::LOT.tidy(&event_target_value(&event));
        bench.change(|p| {
            if let Some(colour) = p.colours.get_mut(i) {
                colour.lot = typed;
            }
        });
    };
    view! {
        <span class="number name">
            <label for=format!("lot-{i}")>{ask::lot()}</label>
            <input class="box" type="text" id=format!("lot-{i}") maxlength="24" autocomplete="off" prop:value=lot on:input=set />
        </span>
    }
    .into_any()
}
