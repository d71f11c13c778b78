//! The colours: a record of each one's yarn, and the stripes that are worked in it.

use super::ball::ball;
use super::hex;
use super::stripes::{Zone, stripes};
use crate::bench::Bench;
use crate::erase::{memo, part, part_if, words};
use crate::html::Html;
use crate::pick::option;
use crate::yarn::known;
use hatwright_pattern::picture::colour_letter;
use hatwright_project::{ColourName, Project, dyes, text};
use hatwright_sizing::{Ball, Colour, Count, HatSpec, Quantity};
use hatwright_words::{Language, ask, in_language};
use leptos::prelude::*;
use std::collections::BTreeMap;

/// The list of yarns that other hats are made of.
const KNOWN: &str = "known-yarns";

/// The section.
pub fn colours(bench: Bench) -> AnyView {
    let count = memo(move || bench.project.with(|p| p.colours.len()));
    let banded = memo(move || bench.project.with(|p| p.spec.asks(Quantity::StripeRows)));
    let bodied = memo(move || bench.project.with(|p| p.spec.asks(Quantity::StripeRounds)));
    let names = RwSignal::new(String::new());
    view! {
        <section aria-labelledby="colours-title">
            <h2 id="colours-title">{ask::colours_title()}</h2>
            <datalist id=KNOWN inner_html=words(move || names.get())></datalist>
            {part(move || (0..count.get()).map(|i| yarn(bench, i, count.get(), names)).collect_view().into_any())}
            <div class="quick">
                {part_if(move || count.get() < HatSpec::MOST_COLOURS, move || view! {
                    <button type="button" id="add-colour" on:click=move |_| add_colour(bench)>{ask::add_colour()}</button>
                }.into_any())}
                {part_if(move || count.get() > 1, move || view! {
                    <button type="button" id="same-yarn" on:click=move |_| same_yarn(bench)>{ask::same_yarn()}</button>
                }.into_any())}
            </div>
            {part_if(move || banded.get(), move || stripes(bench, Zone::Band))}
            {part_if(move || bodied.get(), move || stripes(bench, Zone::Body))}
        </section>
    }
    .into_any()
}

/// One colour and its yarn, as on a ball's band.
fn yarn(bench: Bench, i: usize, count: usize, names: RwSignal<String>) -> AnyView {
    let name = memo(move || bench.project.with(|p| p.colours.get(i).map(|c| c.name.clone()).unwrap_or_default()));
    let yarn = memo(move || bench.project.with(|p| p.colours.get(i).map(|c| c.yarn.clone()).unwrap_or_default()));
    let set = move |event, rule: text::TextRule, into: fn(&mut ColourName) -> &mut String| {
        let typed = rule.tidy(&event_target_value(&event));
        bench.change(|p| {
            if let Some(colour) = p.colours.get_mut(i) {
                into(colour).clone_from(&typed);
            }
        });
    };
    // Other hats are read only when there is something to offer them for.
    let offer = move |_| names.set(offered(bench));
    let called = letter(i).to_string();
    view! {
        <div class="yarn" role="group" aria-label=ask::colour_of(&called)>
            <span class="letter" aria-hidden="true">{letter(i)}</span>
            {hex::by_eye(bench, i)}
            <span class="number name">
                <label for=format!("colour-name-{i}")>{ask::colour()}</label>
                <input
                    class="box"
                    type="text"
                    id=format!("colour-name-{i}")
                    maxlength="40"
                    autocomplete="off"
                    prop:value=name
                    on:input=move |event| set(event, text::COLOUR, |c| &mut c.name)
                />
            </span>
            {hex::by_hex(bench, i)}
            {if count > 1 {
                view! {
                    <button type="button" class="drop" aria-label=ask::remove_colour(&called) on:click=move |_| remove_colour(bench, i)>"×"</button>
                }.into_any()
            } else {
                ().into_any()
            }}
            <span class="number called">
                <label for=format!("yarn-name-{i}")>{ask::yarn_name()}</label>
                <input
                    class="box"
                    type="text"
                    id=format!("yarn-name-{i}")
                    list=KNOWN
                    maxlength="60"
                    autocomplete="off"
                    prop:value=yarn
                    on:focus=offer
                    on:input=move |event| set(event, text::YARN, |c| &mut c.yarn)
                />
            </span>
            {ball(bench, i)}
        </div>
    }
    .into_any()
}

fn offered(bench: Bench) -> String {
    let mut html = Html::new();
    for name in known::names(bench) {
        html.raw("<option value=\"").text(&name).raw("\"></option>");
    }
    html.done()
}

/// A, B, C …: colours are told apart by more than colour.
pub fn letter(i: usize) -> char {
    colour_letter(Colour(i as u8))
}

/// Another colour, of the last one's yarn.
fn add_colour(bench: Bench) {
    bench.change(|p| {
        // A hat that was begun in another language has its names.
        let known = Language::ALL.map(|language| in_language(language, dyes));
        let used = |i: &usize| known.iter().any(|dyes| p.colours.iter().any(|c| c.name == dyes[*i].0));
        let new = (0..dyes().len()).find(|i| !used(i)).unwrap_or_default();
        let (name, hex) = dyes()[new];
        let yarn = p.colours.last().map(|c| c.yarn.clone()).unwrap_or_default();
        p.colours.push(ColourName::new(name.to_owned(), hex).of_yarn(&yarn));
        let usual = Ball::of(Count::from_ticks(Quantity::BallYarn.row().usual));
        let last = p.spec.balls.last().copied().unwrap_or(usual);
        p.spec.balls.push(Ball { owned: Count::default(), ..last });
    });
}

/// Gives all colours the yarn of the first; what there is of each, and its lot, stays.
fn same_yarn(bench: Bench) {
    bench.forget(&[Quantity::BallYarn, Quantity::BallGrams, Quantity::BallPrice]);
    bench.change(|p| {
        if let Some((first, rest)) = p.colours.split_first_mut() {
            for colour in rest {
                colour.yarn.clone_from(&first.yarn);
            }
        }
        if let Some((first, rest)) = p.spec.balls.split_first_mut() {
            for ball in rest {
                *ball = Ball { owned: ball.owned, ..*first };
            }
        }
    });
}

/// Takes a colour away; what was worked in it goes to the first colour that is left.
fn remove_colour(bench: Bench, gone: usize) {
    bench.forget(&[Quantity::BallYarn, Quantity::BallGrams, Quantity::BallsOwned, Quantity::BallPrice]);
    bench.hexes.update(BTreeMap::clear);
    let moved = move |c: Colour| match usize::from(c.0) {
        i if i == gone => Colour(0),
        i if i > gone => Colour(c.0 - 1),
        _ => c,
    };
    bench.change(|p| {
        if gone >= p.colours.len() || p.colours.len() == 1 {
            return;
        }
        p.colours.remove(gone);
        p.spec.balls.remove(gone);
        p.spec.band.stripes.iter_mut().for_each(|s| s.colour = moved(s.colour));
        p.spec.body_stripes.iter_mut().for_each(|s| s.colour = moved(s.colour));
        if let Some(topper) = &mut p.spec.topper {
            topper.colour = topper.colour.map(moved);
        }
        if let Some(weighed) = &mut p.spec.yarn_use.weighed {
            weighed.colour = moved(weighed.colour);
        }
    });
    bench.drafts.update(|drafts| drafts[0].colour = moved(drafts[0].colour));
    // A tassel that is put aside has a colour, too.
    bench.aside.update_value(|aside| {
        for topper in aside.toppers.iter_mut().flatten() {
            topper.colour = topper.colour.map(moved);
        }
    });
}

/// The hat's colours as options of a list.
pub fn colour_options(html: &mut Html, project: &Project, chosen: Option<Colour>) {
    for (i, colour) in project.colours.iter().enumerate() {
        let label = format!("{} · {}", letter(i), colour.name);
        option(html, &i.to_string(), &label, chosen == Some(Colour(i as u8)));
    }
}
