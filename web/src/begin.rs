//! A hat that is begun: its rounds stay as they are.

use crate::bench::Bench;
use crate::dom;
use crate::erase::{memo, part};
use hatwright_sizing::{Kept, Remark};
use hatwright_words::choose;
use leptos::prelude::*;

/// How a hat stands between planning and making.
#[derive(Clone, Copy, PartialEq)]
enum Stage {
    /// Being planned.
    Planned,
    /// Begun, and made as it was planned then.
    Begun,
    /// Begun, but what is asked for now is another hat.
    Changed,
}

/// A quiet way to begin, or what it means that the hat is begun.
pub fn begin(bench: Bench) -> AnyView {
    let stage = memo(move || {
        let begun = bench.project.with(|p| p.spec.kept.is_some());
        let dropped = bench.shown.with(|s| s.hat.remarks.iter().any(|r| matches!(r, Remark::KeptDropped)));
        match (begun, dropped) {
            (false, _) => Stage::Planned,
            (true, false) => Stage::Begun,
            (true, true) => Stage::Changed,
        }
    });
    let keep = move |_| {
        let kept = bench.shown.with_untracked(|s| s.refusal.is_none().then(|| Kept::of(&s.hat)));
        if kept.is_some() {
            bench.shape(|s| s.kept = kept);
            dom::refocus("#plan-anew");
        }
    };
    let anew = move |_| {
        bench.shape(|s| s.kept = None);
        dom::refocus("#begin");
    };
    part(move || match stage.get() {
        Stage::Planned => view! {
            <div class="begin">
                <button type="button" id="begin" on:click=keep>{choose::begin()}</button>
                <p class="note">{choose::begin_note()}</p>
            </div>
        }
        .into_any(),
        Stage::Begun => view! {
            <div class="begin" id="begun">
                <p class="note">{choose::begun()}
                    <button type="button" class="plain" id="plan-anew" on:click=anew>{choose::plan_anew()}</button>
                </p>
            </div>
        }
        .into_any(),
        Stage::Changed => view! {
            <div class="begin care" id="begun">
                <p>{choose::changed()}</p>
                <div class="quick">
                    <button type="button" id="begin" on:click=keep>{choose::begin_instead()}</button>
                    <button type="button" id="plan-anew" on:click=anew>{choose::go_on()}</button>
                </div>
            </div>
        }
        .into_any(),
    })
    .into_any()
}
