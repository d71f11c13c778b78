//! The list on paper or on the clipboard.

use super::{Counter, parts};
use crate::dom;
use crate::erase::words;
use crate::html::Html;
use hatwright_pattern::figures::{self, Units};
use hatwright_sizing::{Ball, Money};
use hatwright_words::{count, shop as say};
use leptos::prelude::*;
use std::rc::Rc;

/// On the root of the page while the list is printed: nothing else is.
const PRINTING: &str = "shop-printing";

/// A list to take along.
#[derive(Clone, Default)]
pub struct Paper {
    /// As text for a message.
    pub text: String,
    /// As markup for the printer.
    pub html: String,
}

/// The buttons that copy and print a list, which is made when one of them is pressed.
pub fn acts(counter: Counter, key: &'static str, list: impl Fn() -> Paper + Copy + 'static) -> AnyView {
    boxed(counter, key, Rc::new(list))
}

fn boxed(counter: Counter, key: &'static str, list: Rc<dyn Fn() -> Paper>) -> AnyView {
    let printed = list.clone();
    let copy = move || {
        dom::copy(&untrack(|| list()).text, move |done| {
            counter.copied.set(if done { say::copied() } else { say::not_copied() });
        });
    };
    let id = |end: &str| [key, end].concat();
    view! {
        <div class="quick">
            {parts::button(&id("-copy"), "", say::copy_list(), copy)}
            {parts::button(&id("-print"), "", say::print_list(), move || print(counter, &untrack(|| printed())))}
            <span id=id("-copied")>{words(move || counter.copied.get().to_owned())}</span>
        </div>
    }
    .into_any()
}

fn print(counter: Counter, paper: &Paper) {
    counter.paper.set(paper.html.clone());
    mark(true);
    // The list has to stand in the page before it is printed.
    dom::after(0, || {
        let _ = dom::window().print();
    });
}

/// Printed, or not: the page is itself again.
pub fn put_away(counter: Counter) {
    mark(false);
    counter.paper.set(String::new());
}

fn mark(on: bool) {
    if let Some(root) = dom::window().document().and_then(|d| d.document_element()) {
        let _ = root.class_list().toggle_with_force(PRINTING, on);
    }
}

/// One thing to buy.
pub struct Entry {
    /// How many balls of which, and their price.
    balls: String,
    /// Which yarn and colour.
    name: String,
    /// What else is worth knowing, a line each.
    notes: Vec<String>,
}

impl Entry {
    /// So many balls of a yarn.
    pub fn of(balls: u32, ball: &Ball, price: Option<Money>, name: String, notes: Vec<String>, units: Units) -> Self {
        let (all, ball) = (count::balls(balls), figures::ball(ball, units));
        let balls = match price.filter(|_| balls > 0) {
            Some(price) => say::balls_of_price(&all, &ball, &figures::money(price)),
            None => say::balls_of(&all, &ball),
        };
        Self { balls, name, notes }
    }
}

impl Paper {
    /// A list with a box to tick for each thing to buy, and what is to be said of all; and the same as text.
    pub fn of(title: &str, entries: &[Entry], after: &[String], text: String) -> Self {
        let mut html = Html::new();
        html.element("h2", title).raw("<ul>");
        for entry in entries {
            html.raw("<li><div><p>").element("strong", &entry.name).raw("</p>").element("p", &entry.balls);
            for line in &entry.notes {
                html.raw("<p class=\"small\">").text(line).raw("</p>");
            }
            html.raw("</div></li>");
        }
        html.raw("</ul>");
        for line in after {
            html.element("p", line);
        }
        Self { text, html: html.done() }
    }
}
