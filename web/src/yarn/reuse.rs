//! What other hats of the same yarn have measured, to take over.

use super::known;
use crate::bench::Bench;
use crate::dom;
use crate::erase::{memo, words};
use crate::html::Html;
use hatwright_pattern::say;
use hatwright_project::known_uses;
use hatwright_sizing::KeptUse;
use hatwright_words::shop as words_of;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// A use of the same yarn in another hat.
#[derive(Clone, PartialEq)]
struct Known {
    hat: String,
    yarn: String,
    used: KeptUse,
}

/// The list. `looks` counts how often the other hats should be read anew.
pub fn reuse(bench: Bench, looks: RwSignal<u32>) -> AnyView {
    let yarns = memo(move || {
        let mut yarns: Vec<String> = bench.project.with(|p| p.colours.iter().map(|c| c.yarn.trim().to_owned()).collect());
        yarns.retain(|yarn| !yarn.is_empty());
        yarns.dedup();
        yarns
    });
    let all = memo(move || {
        // Nothing is read while the part is folded.
        if looks.get() == 0 { Vec::new() } else { yarns.with(|yarns| found(bench, yarns)) }
    });
    let list = words(move || {
        let now = bench.project.with(|p| p.spec.yarn_use.kept);
        all.with(|all| lines(all, now))
    });
    let take = move |event: web_sys::MouseEvent| {
        let button = event.target().and_then(|t| t.dyn_into::<web_sys::Element>().ok());
        let which = button.and_then(|b| b.closest("button").ok().flatten()).and_then(|b| b.get_attribute("data-use"));
        let used = which.and_then(|n| n.parse::<usize>().ok()).and_then(|i| all.with_untracked(|all| all.get(i).map(|k| k.used)));
        if used.is_some() {
            bench.shape(|s| s.yarn_use.kept = used);
            dom::refocus("#drop-use");
        }
    };
    view! { <div id="reuse" inner_html=list on:click=take></div> }.into_any()
}

fn found(bench: Bench, yarns: &[String]) -> Vec<Known> {
    let others = known::others(bench);
    let mut all: Vec<Known> = Vec::new();
    for yarn in yarns {
        for of in known_uses(&others, yarn) {
            let known = Known { hat: of.project.name.trim().to_owned(), yarn: yarn.clone(), used: of.used };
            if !all.contains(&known) {
                all.push(known);
            }
        }
    }
    all
}

fn lines(all: &[Known], now: Option<KeptUse>) -> String {
    let mut html = Html::new();
    let news: Vec<(usize, &Known)> = all.iter().enumerate().filter(|(_, known)| now != Some(known.used)).collect();
    if news.is_empty() {
        return String::new();
    }
    html.element("h3", words_of::reuse_title()).raw("<ul class=\"uses\">");
    for (i, known) in news {
        let text = words_of::reuse(&known.yarn, &say::known_use(&known.hat, &known.used));
        html.raw("<li>").element("span", &text).raw("<button type=\"button\" data-use=\"").number(i as u32);
        html.raw("\" aria-label=\"").text(&words_of::use_this_here(&text)).raw("\">");
        html.text(words_of::use_here()).raw("</button></li>");
    }
    html.raw("</ul>");
    html.done()
}
