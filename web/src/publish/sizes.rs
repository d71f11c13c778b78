//! Which sizes the pattern is written in.

use super::Desk;
use super::offer::groups;
use crate::dom;
use crate::erase::{flag, memo, part, words};
use crate::html::Html;
use crate::pick::{option, pick};
use hatwright_pattern::figures::parse_for;
use hatwright_pattern::{say, sizes::size_name};
use hatwright_project::{Project, SizeOf, text::SIZE};
use hatwright_sizing::{Head, Length, Quantity};
use hatwright_words::publish as told;
use leptos::prelude::*;

/// The view.
pub fn sizes(desk: Desk) -> AnyView {
    let own = words(move || desk.bench.shown.with(|s| told::sizes_own(&size_name(&s.spec.head, desk.units()))));
    let found = memo(move || desk.with(measures).unwrap_or_default());
    let several = memo(move || desk.names().len() > 1);
    view! {
        <p class="note">{told::sizes_intro()}</p>
        <p id="size-own"><b>{own}</b></p>
        {groups().into_iter().map(|group| offers(desk, &group)).collect_view()}
        {others(desk)}
        {another(desk)}
        <div id="size-table" inner_html=words(move || found.get())></div>
        {part(move || if several.get() { point_out(desk) } else { ().into_any() })}
    }
    .into_any()
}

/// The table of measurements, what is refused and what is shared.
fn measures(all: &hatwright_pattern::out::Publication) -> String {
    let mut html = Html::new();
    if all.several() {
        html.raw(&hatwright_pattern::out::table_markup(&all.measures));
        let (shared, lines) = all.graded.shared_lines();
        html.raw("<p class=\"note\">").text(&told::shared(&shared.to_string(), &lines.to_string())).raw("</p>");
    }
    for (name, why) in &all.refused {
        html.raw("<p class=\"says\">").text(&hatwright_words::sizes::refused(name, why)).raw("</p>");
    }
    html.done()
}

fn offers(desk: Desk, group: &super::offer::Group) -> AnyView {
    let key = group.key;
    let tags = group.heads.clone().into_iter().enumerate().map(move |(i, head)| {
        let id = ["size-", key, "-", &i.to_string()].concat();
        let there = flag(move || desk.bench.project.with(|p| p.sizes.iter().any(|size| size.head == head)));
        let own = words(move || desk.bench.shown.with(|s| s.spec.head == head).to_string());
        view! {
            <span class="tag tick">
                <input type="checkbox" id=id.clone() prop:checked=there aria-disabled=own on:change=move |event| toggle(desk, head, event_target_checked(&event)) />
                <label for=id>{size_name(&head, desk.units())}</label>
            </span>
        }
    });
    view! {
        <fieldset class="choice">
            <legend>{(group.name)()}</legend>
            <div class="tags">{tags.collect_view()}</div>
        </fieldset>
    }
    .into_any()
}

fn toggle(desk: Desk, head: Head, on: bool) {
    if !on {
        desk.bench.change(|p| p.sizes.retain(|size| size.head != head));
    } else if let Err(why) = add(desk, head, String::new()) {
        desk.said.set(why);
        // The box is drawn as the document has it.
        desk.bench.project.update(|_| {});
    }
}

/// Adds a size, or says why not.
fn add(desk: Desk, head: Head, name: String) -> Result<(), String> {
    let (there, count) = desk.bench.project.with_untracked(|p| (p.sizes.iter().any(|size| size.head == head), p.sizes.len()));
    let own = desk.bench.shown.with_untracked(|s| s.spec.head == head);
    if there || own {
        return Err(told::sizes_known().to_owned());
    }
    if count >= Project::MOST_SIZES {
        return Err(told::sizes_full(Project::MOST_SIZES as u32));
    }
    desk.said.set(String::new());
    desk.bench.change(|p| p.sizes.push(SizeOf { name, head }));
    Ok(())
}

/// Sizes that are none of the offers: each can be taken out again.
fn others(desk: Desk) -> AnyView {
    let offered: Vec<Head> = groups().into_iter().flat_map(|group| group.heads).collect();
    let list = memo(move || {
        desk.bench.project.with(|p| p.sizes.iter().filter(|size| !offered.contains(&size.head)).cloned().collect::<Vec<_>>())
    });
    let row = move |size: SizeOf| {
        let name = if size.name.is_empty() { size_name(&size.head, desk.units()) } else { size.name.clone() };
        let shown =
            if size.name.is_empty() { name.clone() } else { [&*name, ", ", &size_name(&size.head, desk.units())].concat() };
        let drop = move |_| {
            desk.bench.change(|p| p.sizes.retain(|one| *one != size));
            dom::refocus("#size-girth");
        };
        view! { <li><span>{shown}</span><button type="button" class="drop" aria-label=told::sizes_remove(&name) on:click=drop>"×"</button></li> }
    };
    view! { <ul class="size-list">{part(move || list.get().into_iter().map(row).collect_view().into_any())}</ul> }.into_any()
}

/// A head by its girth, with a name.
fn another(desk: Desk) -> AnyView {
    let girth = RwSignal::new(String::new());
    let name = RwSignal::new(String::new());
    let take = move || {
        let (text, units) = (girth.get_untracked(), desk.bench.figure_units());
        let q = Quantity::HeadGirth;
        let head = match parse_for(q, &text, units) {
            Err(misread) => Err(say::misread(q, &misread, &text, units)),
            Ok(ticks) if !q.row().holds(ticks) => Err(say::out_of_range(q, ticks, units)),
            Ok(ticks) => Ok(Head::Measured(Length::from_ticks(ticks))),
        };
        match head.and_then(|head| add(desk, head, SIZE.tidy(name.get_untracked().trim()))) {
            Ok(()) => {
                girth.set(String::new());
                name.set(String::new());
            }
            Err(why) => desk.said.set(why),
        }
        dom::refocus("#size-girth");
    };
    let wrong = words(move || (!girth.with(String::is_empty) && desk.said.with(|s| !s.is_empty())).to_string());
    let unit = words(move || hatwright_pattern::figures::unit_label(hatwright_sizing::Unit::Length, desk.units()).to_owned());
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        untrack(take);
    };
    view! {
        <form class="size-other" novalidate on:submit=submit>
            <div class="number">
                <label for="size-girth">{told::sizes_other()}</label>
                <span class="box">
                    <input id="size-girth" type="text" inputmode="decimal" autocomplete="off" aria-describedby="size-says" aria-invalid=wrong
                        prop:value=words(move || girth.get()) on:input=move |event| { desk.said.set(String::new()); girth.set(event_target_value(&event)); } />
                    <span class="unit">{unit}</span>
                </span>
            </div>
            <div class="number">
                <label for="size-name">{told::sizes_name()}</label>
                <input class="box" id="size-name" type="text" autocomplete="off" maxlength=SIZE.most.to_string()
                    prop:value=words(move || name.get()) on:input=move |event| name.set(event_target_value(&event)) />
            </div>
            <button type="submit" id="size-add">{told::sizes_add()}</button>
        </form>
        <p class="says" id="size-says" role="status">{words(move || desk.said.get())}</p>
    }
    .into_any()
}

/// Which size is pointed out on paper and in pages.
fn point_out(desk: Desk) -> AnyView {
    let options = words(move || {
        let mut html = Html::new();
        option(&mut html, "", told::point_none(), desk.highlight.get().is_none());
        for (i, name) in desk.names().iter().enumerate() {
            option(&mut html, &i.to_string(), name, desk.highlight.get() == Some(i));
        }
        html.done()
    });
    pick("point-out".to_owned(), told::point_out(), options, move |value| desk.highlight.set(value.parse().ok()))
}
