//! The designer's own words, their photographs, and for which hand the pattern is.

use super::{Desk, photos};
use crate::choice::{Choice, choice};
use crate::dom;
use crate::erase::{memo, words};
use hatwright_project::text::{CARE, CREDIT, DATE, EDITION, INTRODUCTION, TESTED, TextRule};
use hatwright_project::{Designer, Hand};
use hatwright_words::publish as told;
use leptos::prelude::*;

const HAND: Choice = Choice {
    legend: told::hand,
    name: "hand",
    options: &[told::hand_right, told::hand_left],
    get: |p| usize::from(p.hand == Hand::Left),
    set: |bench, i| bench.change(|p| p.hand = [Hand::Right, Hand::Left][i]),
};

/// One of the designer's texts.
#[derive(Clone, Copy)]
struct Text {
    id: &'static str,
    label: fn() -> &'static str,
    hint: Option<fn() -> &'static str>,
    rule: TextRule,
    of: fn(&mut Designer) -> &mut String,
}

const TEXTS: [Text; 6] = [
    Text {
        id: "introduction",
        label: told::introduction,
        hint: Some(told::introduction_hint),
        rule: INTRODUCTION,
        of: |d| &mut d.introduction,
    },
    Text { id: "credit", label: told::credit, hint: None, rule: CREDIT, of: |d| &mut d.credit },
    Text { id: "edition", label: told::edition, hint: None, rule: EDITION, of: |d| &mut d.edition },
    Text { id: "date", label: told::date, hint: None, rule: DATE, of: |d| &mut d.date },
    Text { id: "tested", label: told::tested, hint: Some(told::tested_hint), rule: TESTED, of: |d| &mut d.tested },
    Text { id: "care", label: told::care, hint: Some(told::care_hint), rule: CARE, of: |d| &mut d.care },
];

/// How long after the last keystroke a text goes into the pattern, in milliseconds.
const MOMENT: i32 = 500;

/// The view.
pub fn texts(desk: Desk) -> AnyView {
    view! {
        <p class="note">{told::words_intro()}</p>
        <div class="publish-texts">{TEXTS.map(|text| field(desk, text)).collect_view()}</div>
        {choice(desk.bench, HAND)}
        {photos::photos(desk)}
    }
    .into_any()
}

fn field(desk: Desk, text: Text) -> AnyView {
    let Text { id, label, hint, rule, of } = text;
    let bench = desk.bench;
    let id = ["publish-", id].concat();
    let said = [&id, "-hint"].concat();
    // Only another text is written into the field: one that is written again, as after every saving, would take what is being typed.
    let told = memo(move || bench.project.with(|p| of(&mut p.designer.clone()).clone()));
    let now = words(move || told.get());
    let timer = StoredValue::new(None::<i32>);
    let put = move |typed: &str| {
        let typed = rule.tidy(typed);
        // The screen may be closed by now: the document is not.
        if bench.project.with_untracked(|p| *of(&mut p.designer.clone()) != typed) {
            bench.change(|p| *of(&mut p.designer) = typed);
        }
    };
    let pause = move || {
        if let Some(waiting) = timer.try_get_value().flatten() {
            dom::cancel(waiting);
        }
    };
    // Every size is written anew with it: while a person types, that waits.
    let typing = move |event: web_sys::Event| {
        let typed = event_target_value(&event);
        pause();
        let _ = timer.try_set_value(dom::after(MOMENT, move || put(&typed)));
    };
    let take = move |event: web_sys::Event| {
        pause();
        put(&event_target_value(&event));
    };
    let described = hint.map(|_| said.clone());
    let most = rule.most.to_string();
    let box_of = if rule.lines {
        view! { <textarea class="box" id=id.clone() rows="3" maxlength=most aria-describedby=described prop:value=now on:input=typing on:change=take></textarea> }.into_any()
    } else {
        view! { <input class="box" id=id.clone() type="text" autocomplete="off" maxlength=most aria-describedby=described prop:value=now on:input=typing on:change=take /> }.into_any()
    };
    view! {
        <div class="number" class:wide=rule.lines>
            <label for=id>{label()}</label>
            {box_of}
            {hint.map(|hint| view! { <p class="note" id=said>{hint()}</p> })}
        </div>
    }
    .into_any()
}
