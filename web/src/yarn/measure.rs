//! Measuring before the hat: a swatch on the scale, stitches unravelled. Nothing is taken for measured before all of it is typed.

use crate::ask::colour_options;
use crate::bench::{Bench, Draft};
use crate::erase::{Flag, flag, memo, part_if, words};
use crate::field::number;
use crate::html::Html;
use crate::pick::{option, pick};
use hatwright_pattern::say;
use hatwright_sizing::{BandKind, Colour, HatSpec, Quantity, Style, UseWay, yarn_rates};
use hatwright_words::shop as words_of;
use leptos::prelude::*;

/// The questions.
pub fn measure(bench: Bench) -> AnyView {
    let open = |which: usize| memo(move || is_open(bench, which));
    let (weighed, unravelled) = (open(0), open(1));
    let kept = memo(move || bench.project.with(|p| p.spec.yarn_use.swatch_kept));
    view! {
        <fieldset class="measure">
            <legend>{words_of::measure()}</legend>
            <div class="scale">{number(bench, Quantity::ScaleStep, 0, "")}</div>
            {tick("use-weighed", words_of::was_weighed(), flag(move || weighed.get()), move |on| set_open(bench, 0, on))}
            {part_if(move || weighed.get(), move || by_weight(bench))}
            {tick("use-unravelled", words_of::was_unravelled(), flag(move || unravelled.get()), move |on| set_open(bench, 1, on))}
            {part_if(move || unravelled.get(), move || by_tape(bench))}
            {tick("swatch-kept", words_of::swatch_kept(), flag(move || kept.get()), move |on| {
                bench.shape(|s| s.yarn_use.swatch_kept = on);
            })}
            <p class="note" id="swatch-kept-means">{words(move || {
                let units = bench.figure_units();
                bench.shown.with(|s| say::swatch_sentence(&s.spec, units))
            })}</p>
        </fieldset>
    }
    .into_any()
}

/// A box to tick.
fn tick(id: &'static str, label: &'static str, checked: Flag, set: impl Fn(bool) + 'static) -> AnyView {
    boxed(id, label, checked, Box::new(set))
}

fn boxed(id: &'static str, label: &'static str, checked: Flag, set: Box<dyn Fn(bool)>) -> AnyView {
    view! {
        <span class="tag tick">
            <input type="checkbox" id=id prop:checked=checked on:change=move |event| set(event_target_checked(&event)) />
            <label for=id>{label}</label>
        </span>
    }
    .into_any()
}

fn is_open(bench: Bench, which: usize) -> bool {
    let measured = bench.project.with(|p| match which {
        0 => p.spec.yarn_use.weighed.is_some(),
        _ => p.spec.yarn_use.unravelled.is_some(),
    });
    measured || bench.drafts.with(|drafts| drafts[which].open)
}

/// Opens the fields of a measurement, with what stood in them if they were open before; or puts it aside.
fn set_open(bench: Bench, which: usize, on: bool) {
    let spec = bench.project.with_untracked(|p| p.spec.clone());
    bench.drafts.update(|drafts| {
        drafts[which].open = on;
        drafts[which].band |= spec.style == Style::EarWarmer;
    });
    if on {
        let (weighed, unravelled) = bench.aside.with_value(|a| (a.weighed, a.unravelled));
        bench.shape(|s| match which {
            0 => s.yarn_use.weighed = weighed.filter(|w| usize::from(w.colour.0) < s.balls.len()),
            _ => s.yarn_use.unravelled = unravelled,
        });
        return;
    }
    bench.aside.update_value(|a| match which {
        0 => a.weighed = spec.yarn_use.weighed,
        _ => a.unravelled = spec.yarn_use.unravelled,
    });
    bench.forget(
        &[[Quantity::WeighedStitches, Quantity::WeighedGrams], [Quantity::UnravelledStitches, Quantity::UnravelledLength]][which],
    );
    bench.shape(|s| match which {
        0 => s.yarn_use.weighed = None,
        _ => s.yarn_use.unravelled = None,
    });
}

fn by_weight(bench: Bench) -> AnyView {
    let colours = words(move || {
        let chosen = draft(bench, 0).colour;
        bench.project.with(|p| {
            let mut html = Html::new();
            colour_options(&mut html, p, Some(chosen));
            html.done()
        })
    });
    let paint = move |picked: String| {
        if let Ok(colour) = picked.parse::<u8>() {
            set_draft(bench, 0, move |draft| draft.colour = Colour(colour));
        }
    };
    view! {
        <div class="inset" role="group" aria-label=words_of::weighed()>
            <div class="pair">
                {number(bench, Quantity::WeighedStitches, 0, words_of::st())}
                {number(bench, Quantity::WeighedGrams, 0, "")}
                {pick("weighed-colour".to_owned(), words_of::its_yarn(), colours, paint)}
                {fabric(bench, 0, "weighed-band")}
            </div>
            <p class="note" id="weighed-means" role="status">{words(move || means(bench, 0))}</p>
        </div>
    }
    .into_any()
}

fn by_tape(bench: Bench) -> AnyView {
    view! {
        <div class="inset" role="group" aria-label=words_of::unravelled()>
            <div class="pair">
                {number(bench, Quantity::UnravelledStitches, 0, words_of::st())}
                {number(bench, Quantity::UnravelledLength, 0, "")}
                {fabric(bench, 1, "unravelled-band")}
            </div>
            <p class="note" id="unravelled-means" role="status">{words(move || means(bench, 1))}</p>
        </div>
    }
    .into_any()
}

/// What was measured, or what of it is decided before it is.
fn draft(bench: Bench, which: usize) -> Draft {
    let draft = bench.drafts.with(|drafts| drafts[which]);
    bench.project.with(|p| match (which, p.spec.yarn_use.weighed, p.spec.yarn_use.unravelled) {
        (0, Some(weighed), _) => Draft { colour: weighed.colour, band: weighed.band, ..draft },
        (1, _, Some(unravelled)) => Draft { band: unravelled.band, ..draft },
        _ => draft,
    })
}

fn set_draft(bench: Bench, which: usize, change: impl Fn(&mut Draft)) {
    let mut now = untrack(|| draft(bench, which));
    change(&mut now);
    bench.drafts.update(|drafts| drafts[which] = now);
    bench.shape(|s| match (which, &mut s.yarn_use.weighed, &mut s.yarn_use.unravelled) {
        (0, Some(weighed), _) if usize::from(now.colour.0) < s.balls.len() => {
            (weighed.colour, weighed.band) = (now.colour, now.band);
        }
        (1, _, Some(unravelled)) => unravelled.band = now.band,
        _ => {}
    });
}

/// Whether body and band may have different yarn in their stitches.
fn both(spec: &HatSpec) -> bool {
    spec.style != Style::EarWarmer && spec.band_kind() != BandKind::None
}

/// Of which fabric it is, where the hat has two.
fn fabric(bench: Bench, which: usize, id: &'static str) -> AnyView {
    let asked = memo(move || bench.project.with(|p| both(&p.spec)));
    part_if(
        move || asked.get(),
        move || {
            let options = words(move || {
                let band = draft(bench, which).band;
                let mut html = Html::new();
                option(&mut html, "body", words_of::as_body(), !band);
                option(&mut html, "band", words_of::as_band(), band);
                html.done()
            });
            pick(id.to_owned(), words_of::worked(), options, move |picked: String| {
                set_draft(bench, which, |draft| draft.band = picked == "band");
            })
        },
    )
    .into_any()
}

/// What the measurement makes of a stitch, why it makes nothing, or how it is taken.
fn means(bench: Bench, which: usize) -> String {
    let units = bench.figure_units();
    let way = [UseWay::Weighed, UseWay::Unravelled][which];
    bench.project.with(|p| {
        let used = p.spec.yarn_use;
        if [used.weighed.is_none(), used.unravelled.is_none()][which] {
            return [words_of::how_weighed, words_of::how_unravelled][which]().to_owned();
        }
        if let Some(why) = [say::weighed_hint, say::unravelled_hint][which](&p.spec, units) {
            return why;
        }
        let rates = yarn_rates(&p.spec);
        let rate = rates.iter().find(|rate| rate.way == way && !rate.kept);
        rate.map(|rate| words_of::makes(&say::rate_of_strands(&p.spec, rate, units))).unwrap_or_default()
    })
}
