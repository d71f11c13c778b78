//! The designer's own words, their photographs, and for which hand the pattern is.

use super::{Desk, photos};
use crate::choice::{Choice, choice};
use crate::erase::words;
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
    let now = words(move || bench.project.with(|p| of(&mut p.designer.clone()).clone()));
    let take = move |event: web_sys::Event| {
        let typed = rule.tidy(&event_target_value(&event));
        bench.change(|p| *of(&mut p.designer) = typed);
    };
    let described = hint.map(|_| said.clone());
    let most = rule.most.to_string();
    let box_of = if rule.lines {
        view! { <textarea class="box" id=id.clone() rows="3" maxlength=most aria-describedby=described prop:value=now on:change=take></textarea> }.into_any()
    } else {
        view! { <input class="box" id=id.clone() type="text" autocomplete="off" maxlength=most aria-describedby=described prop:value=now on:change=take /> }.into_any()
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
