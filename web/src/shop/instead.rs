//! Another yarn in the place of this one: what its ball band and its swatch make of the hat.

use super::{Counter, parts};
use crate::bench::Shown;
use crate::dom;
use crate::erase::{flag, memo, part, part_if, words};
use crate::field::{advised, labelled};
use crate::html::Html;
use crate::pick::{option, pick};
use hatwright_pattern::{figures, say};
use hatwright_project::text;
use hatwright_sizing::{Ball, Count, HatSpec, Instead, Length, Quantity, Swap, Swatch, YarnWeight, swap, yarn_hint};
use hatwright_words::shop as words_of;
use leptos::prelude::*;

/// The numbers of its swatch.
const SWATCH: [Quantity; 4] =
    [Quantity::InsteadStitches, Quantity::InsteadWidth, Quantity::InsteadRounds, Quantity::InsteadHeight];

/// The view.
pub fn instead(counter: Counter) -> AnyView {
    let begun = memo(move || counter.bench.project.with(|p| p.spec.instead.is_some()));
    part(move || if begun.get() { compared(counter) } else { unbegun(counter) }).into_any()
}

/// Before there is another yarn.
fn unbegun(counter: Counter) -> AnyView {
    let begin = move || {
        counter.bench.shape(|spec| {
            // Begun from the ball that is there: what differs is typed over it.
            let first = spec.balls.first().copied().unwrap_or(Ball::of(Count::from_ticks(Quantity::InsteadYarn.row().usual)));
            spec.instead = Some(Instead { yarn: first.yarn, grams: first.grams, weight: first.weight, swatch: None });
        });
        dom::refocus("#instead-name");
    };
    let foot = parts::button("instead-begin", "go", words_of::compare(), begin);
    parts::view(parts::line("instead-why", "", words(|| words_of::compare_why().to_owned())), foot)
}

fn compared(counter: Counter) -> AnyView {
    let bench = counter.bench;
    // The comparison follows the hat that is shown, and the other yarn as it is typed.
    let compared = memo(move || {
        let instead = bench.project.with(|p| p.spec.instead);
        bench.shown.with(|s| {
            let spec = HatSpec { instead, ..s.spec.clone() };
            swap(&spec).map(|swap| (s.clone(), swap))
        })
    });
    let table = memo(move || {
        let units = bench.figure_units();
        compared.with(|all| all.as_ref().map(|(now, swap)| table(now, swap, units)).unwrap_or_default())
    });
    // Whether it will do stands with the buttons; what that rests on, below the numbers.
    let verdict = memo(move || {
        let units = bench.figure_units();
        let told = compared.with(|all| all.as_ref().map(|(_, swap)| say::swap(swap, units)).unwrap_or_default());
        let (first, rest) = told.split_once(". ").unwrap_or((told.trim_end_matches('.'), ""));
        ([first, "."].concat(), rest.to_owned())
    });
    let can_take = memo(move || compared.with(|all| all.as_ref().is_some_and(|(_, swap)| swap.hat.is_ok())));
    let take = move || {
        let Some(spec) =
            compared.with_untracked(|all| all.as_ref().filter(|all| all.1.hat.is_ok()).map(|all| all.1.spec.clone()))
        else {
            return;
        };
        let name = text::YARN.tidy(&counter.other_name.get_untracked()).trim().to_owned();
        let mut colours = bench.project.with_untracked(|p| p.colours.clone());
        for colour in &mut colours {
            // The name and the lot were those of the yarn that goes.
            colour.yarn.clone_from(&name);
            colour.lot.clear();
        }
        counter.have.update(std::collections::BTreeMap::clear);
        let said = if name.is_empty() { words_of::taken_yarn_unnamed().to_owned() } else { words_of::taken_yarn(&name) };
        counter.take(said, spec, colours);
    };
    let drop = move || {
        bench.forget(&[Quantity::InsteadYarn, Quantity::InsteadGrams]);
        bench.forget(&SWATCH);
        bench.shape(|spec| spec.instead = None);
        dom::refocus("#instead-begin");
    };
    let body = view! {
        {fields(counter)}
        <table id="swap" inner_html=words(move || table.get())></table>
        {parts::line("swap-why", "", words(move || verdict.with(|told| told.1.clone())))}
    };
    let foot = view! {
        {parts::line("swap-verdict", "verdict", words(move || verdict.with(|told| told.0.clone())))}
        <div class="quick">
            {part_if(move || can_take.get(), move || parts::button("take-instead", "go", words_of::take_yarn(), take))}
            {parts::button("drop-instead", "", words_of::drop_yarn(), drop)}
        </div>
    };
    parts::view(body.into_any(), foot.into_any())
}

/// What is known of the other yarn.
fn fields(counter: Counter) -> AnyView {
    let bench = counter.bench;
    let instead = move || bench.project.with(|p| p.spec.instead);
    let advice = memo(move || {
        let ball = instead().map(|instead| instead.ball());
        let units = bench.figure_units();
        ball.and_then(|ball| yarn_hint(&ball).map(|hint| say::yarn_hint(&hint, &ball, units))).unwrap_or_default()
    });
    let weight = memo(move || instead().and_then(|instead| instead.weight).map(YarnWeight::number));
    let weights = words(move || {
        let mut html = Html::new();
        option(&mut html, "", words_of::not_known(), weight.get().is_none());
        for (number, name) in (0_u8..).zip(crate::ask::weights()) {
            option(&mut html, &number.to_string(), name, weight.get() == Some(number));
        }
        html.done()
    });
    let set_weight = move |picked: String| {
        let weight = picked.parse::<u8>().ok().and_then(|n| YarnWeight::new(n).ok());
        bench.shape(|spec| {
            if let Some(instead) = &mut spec.instead {
                instead.weight = weight;
            }
        });
    };
    let swatched = memo(move || instead().is_some_and(|instead| instead.swatch.is_some()));
    let set_swatch = move |on: bool| {
        bench.forget(&SWATCH);
        bench.shape(|spec| {
            let fresh = fresh_swatch(spec.swatch);
            if let Some(instead) = &mut spec.instead {
                instead.swatch = on.then_some(fresh);
            }
        });
    };
    let named = counter.other_name;
    view! {
        <div class="pair">
            <span class="number">
                <label for="instead-name">{words_of::other_yarn()}</label>
                <input
                    class="box" type="text" id="instead-name" maxlength="60" autocomplete="off" placeholder=words_of::its_name()
                    prop:value=words(move || named.get())
                    on:input=move |event| named.set(event_target_value(&event))
                />
            </span>
            {pick("instead-weight".to_owned(), words_of::weight_number(), weights, set_weight)}
            {advised(bench, Quantity::InsteadYarn, 0, words_of::ball_holds().to_owned(), advice)}
            {labelled(bench, Quantity::InsteadGrams, 0, words_of::ball_weighs().to_owned(), "")}
        </div>
        {parts::tick(
            "instead-swatch".to_owned(), "", String::new(), words_of::have_swatch().to_owned(), flag(move || swatched.get()),
            Box::new(set_swatch),
        )}
        {part_if(move || swatched.get(), move || view! {
            <div class="pair">
                {labelled(bench, Quantity::InsteadStitches, 0, words_of::swatch_stitches().to_owned(), words_of::st())}
                {labelled(bench, Quantity::InsteadWidth, 0, words_of::swatch_across().to_owned(), "")}
                {labelled(bench, Quantity::InsteadRounds, 0, words_of::swatch_rounds().to_owned(), words_of::rnd())}
                {labelled(bench, Quantity::InsteadHeight, 0, words_of::swatch_high().to_owned(), "")}
            </div>
        }.into_any())}
    }
    .into_any()
}

/// A swatch to be typed over: that of the hat's own yarn, or the usual one.
fn fresh_swatch(own: Swatch) -> Swatch {
    let usual = |q: Quantity| q.row().usual;
    match own {
        Swatch::Counted { .. } => own,
        Swatch::YarnWeight(_) => Swatch::Counted {
            stitches: Count::from_ticks(usual(Quantity::InsteadStitches)),
            width: Length::from_ticks(usual(Quantity::InsteadWidth)),
            rounds: Count::from_ticks(usual(Quantity::InsteadRounds)),
            height: Length::from_ticks(usual(Quantity::InsteadHeight)),
        },
    }
}

/// The hat in both yarns, number by number.
fn table(now: &Shown, swap: &Swap, units: figures::Units) -> String {
    let mut html = Html::new();
    html.raw("<thead><tr><td></td><th scope=\"col\">").text(words_of::column_now()).raw("</th><th scope=\"col\">");
    html.text(words_of::column_other()).raw("</th></tr></thead><tbody>");
    for row in say::swap_rows(&now.hat, &now.spec, swap, units) {
        html.raw("<tr><th scope=\"row\">").text(row.term).raw("</th><td>").text(&row.now).raw("</td><td>");
        html.element(if row.changes() { "b" } else { "span" }, row.then.as_deref().unwrap_or("–")).raw("</td></tr>");
    }
    html.raw("</tbody>");
    html.done()
}
