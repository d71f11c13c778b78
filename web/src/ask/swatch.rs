//! The swatch: counted, or guessed from a yarn weight.

use super::fabric::fabrics;
use crate::bench::Bench;
use crate::choice::{Choice, choice};
use crate::erase::{memo, part, part_if, words};
use crate::field::{labelled, number};
use crate::html::Html;
use crate::pick::{option, pick};
use hatwright_pattern::{figures, say, written};
use hatwright_sizing::{Count, HatSpec, Length, Quantity, Ratio, Remark, Stretch, Style, Swatch, YarnWeight};
use hatwright_words::ask;
use leptos::prelude::*;

const WAY: Choice = Choice {
    legend: ask::swatch_way,
    name: "swatch-way",
    options: &[ask::counted, ask::not_yet],
    get: |p| usize::from(matches!(p.spec.swatch, Swatch::YarnWeight(_))),
    set: |bench, i| {
        let now = bench.project.with_untracked(|p| p.spec.swatch);
        let guessed = matches!(now, Swatch::YarnWeight(_));
        if guessed == (i == 1) {
            return;
        }
        let other = bench.aside.with_value(|a| a.swatch);
        let ten = Length::from_cm(10.0);
        let fresh = if guessed {
            Swatch::Counted { stitches: Count::whole(12), width: ten, rounds: Count::whole(15), height: ten }
        } else {
            Swatch::YarnWeight(YarnWeight::new(4).unwrap_or_else(|_| unreachable!("4 is a yarn weight")))
        };
        bench.aside.update_value(|a| a.swatch = Some(now));
        bench.shape(|s| s.swatch = other.unwrap_or(fresh));
    },
};

/// Body or band: which stretch a choice is about.
fn measured(stretch: Stretch) -> usize {
    usize::from(matches!(stretch, Stretch::Measured(_)))
}

const STRETCH: Choice = Choice {
    legend: ask::stretch_way,
    name: "stretch-way",
    options: &[ask::as_usual, ask::measured_stretch],
    get: |p| measured(p.spec.body_stretch),
    set: |bench, i| set_stretch(bench, 0, i == 1),
};

const BAND_STRETCH: Choice = Choice {
    legend: ask::band_stretch_way,
    name: "band-stretch-way",
    options: &[ask::as_usual, ask::measured_stretch],
    get: |p| measured(p.spec.band.stretch),
    set: |bench, i| set_stretch(bench, 1, i == 1),
};

fn set_stretch(bench: Bench, zone: usize, measure: bool) {
    let q = [Quantity::BodyStretch, Quantity::BandStretch][zone];
    bench.forget(&[q]);
    let kept = bench.aside.with_value(|a| a.stretches[zone]);
    let usual = bench.project.with_untracked(|p| usual_stretch(&p.spec, zone));
    bench.shape(|s| {
        let stretch = if zone == 0 { &mut s.body_stretch } else { &mut s.band.stretch };
        let was = *stretch;
        *stretch = if measure { Stretch::Measured(kept.unwrap_or(usual)) } else { Stretch::Usual };
        if let Stretch::Measured(ratio) = was {
            bench.aside.update_value(|a| a.stretches[zone] = Some(ratio));
        }
    });
}

fn usual_stretch(spec: &HatSpec, zone: usize) -> Ratio {
    if zone == 0 { spec.usual_body_stretch() } else { spec.usual_band_stretch() }
}

/// How far body (0) or band (1) stretches: as usual for its fabric, or as it was measured.
pub fn stretch(bench: Bench, zone: usize) -> AnyView {
    let (question, q) = [(STRETCH, Quantity::BodyStretch), (BAND_STRETCH, Quantity::BandStretch)][zone];
    let own = memo(move || bench.project.with(|p| (question.get)(p)));
    view! {
        {choice(bench, question)}
        {part(move || if own.get() == 1 {
            number(bench, q, 0, ask::times())
        } else {
            view! { <p class="note">{words(move || {
                let ratio = bench.project.with(|p| usual_stretch(&p.spec, zone));
                ask::usual_stretch(&figures::factor(ratio))
            })}</p> }.into_any()
        })}
    }
    .into_any()
}

/// The section.
pub fn swatch(bench: Bench) -> AnyView {
    let guessed = memo(move || bench.project.with(|p| matches!(p.spec.swatch, Swatch::YarnWeight(_))));
    let bodied = memo(move || bench.project.with(|p| p.spec.style != Style::EarWarmer));
    let rows = memo(move || bench.project.with(|p| p.spec.style == Style::Sideways));
    view! {
        <section aria-labelledby="swatch-title">
            <h2 id="swatch-title">{ask::swatch_title()}</h2>
            {choice(bench, WAY)}
            {part_if(move || bodied.get(), move || fabrics(bench, false))}
            {part(move || if guessed.get() { by_weight(bench) } else { counted(bench, rows.get()) })}
            <p class="note" id="sureness">{words(move || sureness(bench))}</p>
            <p class="note hint" id="gauge-hint">{words(move || hint(bench))}</p>
            <details>
                <summary>{words(move || if bodied.get() { ask::hook_strands_stretch() } else { ask::hook_strands() }.to_owned())}</summary>
                <div class="pair">{number(bench, Quantity::Hook, 0, "")}{number(bench, Quantity::Strands, 0, "")}</div>
                {part_if(move || bodied.get(), move || stretch(bench, 0))}
            </details>
            <details>
                <summary>{ask::advice_title()}</summary>
                <ol inner_html=words(move || {
                    let mut html = Html::new();
                    let terms = bench.terms.get().written();
                    for step in bench.project.with(|p| written::swatch_advice(&p.spec, terms)) {
                        html.element("li", &step);
                    }
                    html.done()
                })></ol>
            </details>
        </section>
    }
    .into_any()
}

/// What is unusual about the gauge, as the planner remarks it.
fn hint(bench: Bench) -> String {
    let units = bench.figure_units();
    bench.shown.with(|s| {
        let odd = s.hat.remarks.iter().filter(|r| is_hint(r)).map(|r| say::remark(r, &s.hat, units));
        odd.collect::<Vec<_>>().join(" ")
    })
}

/// Whether a remark is about the swatch, and is made beside it.
pub fn is_hint(remark: &Remark) -> bool {
    matches!(remark, Remark::UnusualGauge | Remark::UnusualStitch(_))
}

fn counted(bench: Bench, rows: bool) -> AnyView {
    let (label, unit) = if rows { (ask::rows(), ask::rows_unit()) } else { (ask::rounds(), ask::rnd()) };
    view! {
        <div class="pair">
            {number(bench, Quantity::SwatchStitches, 0, ask::st())}
            {number(bench, Quantity::SwatchWidth, 0, "")}
            {labelled(bench, Quantity::SwatchRounds, 0, label.to_owned(), unit)}
            {number(bench, Quantity::SwatchHeight, 0, "")}
        </div>
    }
    .into_any()
}

/// Names of the yarn-weight numbers. Source: Craft Yarn Council's www.YarnStandards.com.
pub fn weights() -> [&'static str; 8] {
    [
        ask::weight_0(),
        ask::weight_1(),
        ask::weight_2(),
        ask::weight_3(),
        ask::weight_4(),
        ask::weight_5(),
        ask::weight_6(),
        ask::weight_7(),
    ]
}

fn by_weight(bench: Bench) -> AnyView {
    let weight = memo(move || {
        bench.project.with(|p| match p.spec.swatch {
            Swatch::YarnWeight(w) => usize::from(w.number()),
            Swatch::Counted { .. } => 4,
        })
    });
    let options = words(move || {
        let mut html = Html::new();
        for (i, name) in weights().into_iter().enumerate() {
            option(&mut html, &i.to_string(), name, i == weight.get());
        }
        html.done()
    });
    let set = move |picked: String| {
        if let Some(weight) = picked.parse::<u8>().ok().and_then(|n| YarnWeight::new(n).ok()) {
            bench.shape(|s| s.swatch = Swatch::YarnWeight(weight));
        }
    };
    view! {
        {pick("yarn-weight".to_owned(), ask::yarn_weight(), options, set)}
        <p class="note">{ask::weight_note()}</p>
    }
    .into_any()
}

/// What half a stitch in the swatch does to the hat, and what would make that less. What it does to the yarn stands beside the yarn.
fn sureness(bench: Bench) -> String {
    let units = bench.figure_units();
    let mut told = bench.shown.with(|s| say::doubt_sentences(&s.hat, units));
    if told.len() > 2 {
        told.remove(1);
    }
    told.join(" ")
}
