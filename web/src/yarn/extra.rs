//! How much more than the estimate is bought: as often as it should be enough, or a share set by hand.

use crate::bench::Bench;
use crate::choice::{Choice, choice};
use crate::erase::{memo, part, words};
use crate::field::labelled;
use hatwright_pattern::say;
use hatwright_sizing::{Extra, Quantity, Ratio, YarnLength, chance_of};
use hatwright_words::shop as words_of;
use leptos::prelude::*;

const EXTRA: Choice = Choice {
    legend: words_of::extra,
    name: "extra",
    options: &[words_of::extra_chance, words_of::extra_share],
    get: |p| by_share(p.spec.extra),
    set: |bench, i| {
        let now = bench.project.with_untracked(|p| p.spec.extra);
        if by_share(now) == i {
            return;
        }
        bench.aside.update_value(|a| a.extras[by_share(now)] = Some(now));
        let usual = |q: Quantity| Ratio::from_ticks(q.row().usual);
        let fresh = [Extra::Chance(usual(Quantity::Chance)), Extra::Share(usual(Quantity::Margin))][i];
        let kept = bench.aside.with_value(|a| a.extras[i]);
        bench.shape(|s| s.extra = kept.unwrap_or(fresh));
    },
};

fn by_share(extra: Extra) -> usize {
    usize::from(matches!(extra, Extra::Share(_)))
}

/// The question, its number, and what that means for this hat.
pub fn extra(bench: Bench) -> AnyView {
    let shared = memo(move || bench.project.with(|p| by_share(p.spec.extra)));
    view! {
        <div class="extra">
            {choice(bench, EXTRA)}
            {part(move || match shared.get() {
                0 => labelled(bench, Quantity::Chance, 0, words_of::of_hundred().to_owned(), words_of::percent()),
                _ => labelled(bench, Quantity::Margin, 0, words_of::over_estimate().to_owned(), words_of::percent_more()),
            })}
            <p class="note" id="extra-means">{words(move || means(bench))}</p>
        </div>
    }
    .into_any()
}

/// How much more that is, and for a share how often it is enough.
fn means(bench: Bench) -> String {
    bench.shown.with(|s| {
        let told = say::margin_sentence(s.spec.extra, &s.hat);
        if by_share(s.spec.extra) == 0 {
            return told;
        }
        let used = s.hat.yarn.iter().filter(|need| need.length > YarnLength::default());
        let least = used.map(|need| chance_of(need, need.safe)).min().unwrap_or_default();
        [&told, " ", &*words_of::share_chance(&say::chance_full(least))].concat()
    })
}
