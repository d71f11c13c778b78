//! What each colour takes, and what of it there is to buy.

use crate::ask::letter;
use crate::bench::Bench;
use crate::html::{Html, marked};
use hatwright_pattern::{figures, say};
use hatwright_project::ColourName;
use hatwright_sizing::{Ball, Buy, Mass, Unit, YarnLength, shop};
use hatwright_words::{count, shop as words_of};
use leptos::prelude::*;

/// A row for each colour that is used: a colour that is in no stripe takes no yarn.
pub fn rows(bench: Bench) -> String {
    let units = bench.figure_units();
    let colours = bench.project.with(|p| p.colours.clone());
    bench.shown.with(|s| {
        let mut html = Html::new();
        for line in &shop(&s.hat, &s.spec).lines {
            let i = usize::from(line.colour.0);
            if let Some(ball) = s.spec.balls.get(i) {
                row(&mut html, line, ball, colours.get(i), units);
            }
        }
        html.done()
    })
}

fn row(html: &mut Html, line: &Buy, ball: &Ball, colour: Option<&ColourName>, units: figures::Units) {
    let i = usize::from(line.colour.0);
    html.raw("<tr><th scope=\"row\"><span class=\"of\">");
    if let Some(colour) = colour {
        html.chip(&colour.hex.to_string()).raw("<span>").text(&[&letter(i).to_string(), " · ", &colour.name].concat());
        if !colour.yarn.trim().is_empty() {
            html.raw(" ").element("small", colour.yarn.trim());
        }
        html.raw("</span>");
    }
    html.raw("</span></th><td>");
    part(html, "b", "length", &figures::yarn(line.need.length, units));
    part(html, "small", "grams", &line.grams.map(|grams| figures::mass(grams, units)).unwrap_or_default());
    let (low, high) = (line.need.low, line.need.high);
    let range = match units {
        figures::Units::Both => figures::yarn_span(low, high, units),
        _ => [&figures::yarn_bare(low, units), "–", &figures::yarn(high, units)].concat(),
    };
    part(html, "small", "range", &range);
    html.raw("</td><td>");
    let holds = figures::yarn(YarnLength::from_metres(ball.metres()), units);
    part(html, "b", "balls", &count::balls(line.balls));
    part(html, "small", "holds", &words_of::of_ball(&holds));
    if line.owned > YarnLength::default() {
        let owned = figures::show(ball.owned.ticks(), Unit::Count, units);
        part(html, "small", "owned", &words_of::beside_owned(&owned));
    }
    // What there is nothing of to buy costs nothing.
    part(html, "b", "price", &line.price.filter(|_| line.balls > 0).map(figures::money).unwrap_or_default());
    html.raw("</td><td>");
    part(html, "b", "left", &left(line, units));
    part(html, "small", "left-grams", &line.left_grams.map(|grams| figures::mass(size(grams), units)).unwrap_or_default());
    part(html, "small", "chance", &say::chance(line.chance));
    html.raw("</td></tr>");
}

/// A part of a cell; one without words is left out.
fn part(html: &mut Html, tag: &str, class: &str, text: &str) {
    if !text.is_empty() {
        html.raw("<").raw(tag).raw(" class=\"").raw(class).raw("\">").text(text).raw("</").raw(tag).raw("> ");
    }
}

/// What is left over by the estimate, or what is short.
fn left(line: &Buy, units: figures::Units) -> String {
    let length = figures::yarn(YarnLength::from_metres(line.left.metres().abs()), units);
    if line.left < YarnLength::default() { words_of::short(&length) } else { length }
}

fn size(grams: Mass) -> Mass {
    Mass::from_ticks(grams.ticks().abs())
}

/// All of it in a line: how often it is enough, and what it costs.
pub fn sum(bench: Bench) -> String {
    bench.shown.with(|s| {
        let shop = shop(&s.hat, &s.spec);
        let mut html = Html::new();
        let balls = marked("b", "balls", &count::balls(shop.lines.iter().map(|line| line.balls).sum()));
        html.raw(&words_of::together(&balls, &marked("span", "chance", &say::chance(shop.chance)))).raw(" ");
        part(&mut html, "span", "price", &shop.price.map(figures::money).unwrap_or_default());
        html.done()
    })
}
