//! The swatch: counted, or guessed from a yarn weight.

use crate::bench::Bench;
use crate::choice::{Choice, choice};
use crate::erase::{memo, part, part_if, words};
use crate::field::number;
use crate::html::Html;
use crate::made::written_terms;
use crate::pick::{option, pick};
use hatwright_pattern::{figures, written};
use hatwright_sizing::{Count, Length, Quantity, Ratio, Stretch, Swatch, YarnWeight};
use leptos::prelude::*;

const WAY: Choice = Choice {
    legend: "Is there a swatch?",
    name: "swatch-way",
    options: &["Counted", "Not yet"],
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
    legend: "How far it stretches around",
    name: "stretch-way",
    options: &["Usual, 1.10", "Measured"],
    get: |p| measured(p.spec.body_stretch),
    set: |bench, i| set_stretch(bench, 0, i == 1),
};

/// The band's stretch, shown with the band.
pub const BAND_STRETCH: Choice = Choice {
    legend: "How far the rib stretches around",
    name: "band-stretch-way",
    options: &["Usual, 1.35", "Measured"],
    get: |p| measured(p.spec.band.stretch),
    set: |bench, i| set_stretch(bench, 1, i == 1),
};

fn set_stretch(bench: Bench, zone: usize, measure: bool) {
    let q = [Quantity::BodyStretch, Quantity::BandStretch][zone];
    bench.forget(&[q]);
    let kept = bench.aside.with_value(|a| a.stretches[zone]);
    bench.shape(|s| {
        let stretch = if zone == 0 { &mut s.body_stretch } else { &mut s.band.stretch };
        let was = *stretch;
        *stretch = if measure { Stretch::Measured(kept.unwrap_or(Ratio::from_ticks(q.row().usual))) } else { Stretch::Usual };
        if let Stretch::Measured(ratio) = was {
            bench.aside.update_value(|a| a.stretches[zone] = Some(ratio));
        }
    });
}

/// The section.
pub fn swatch(bench: Bench) -> AnyView {
    let guessed = memo(move || bench.project.with(|p| matches!(p.spec.swatch, Swatch::YarnWeight(_))));
    let stretched = memo(move || bench.project.with(|p| measured(p.spec.body_stretch)));
    view! {
        <section aria-labelledby="swatch-title">
            <h2 id="swatch-title">"Swatch"</h2>
            {choice(bench, WAY)}
            {part(move || if guessed.get() { by_weight(bench) } else { counted(bench) })}
            <p class="note">{words(move || sureness(bench))}</p>
            <details>
                <summary>"A swatch that tells the truth"</summary>
                <ol inner_html=words(move || {
                    let mut html = Html::new();
                    for step in written::swatch_advice(written_terms(bench.terms.get())) {
                        html.element("li", &step);
                    }
                    html.done()
                })></ol>
            </details>
            {choice(bench, STRETCH)}
            {part_if(move || stretched.get() == 1, move || number(bench, Quantity::BodyStretch, 0, "times"))}
        </section>
    }
    .into_any()
}

fn counted(bench: Bench) -> AnyView {
    view! {
        <div class="pair">
            {number(bench, Quantity::SwatchStitches, 0, "st")}
            {number(bench, Quantity::SwatchWidth, 0, "")}
            {number(bench, Quantity::SwatchRounds, 0, "rnd")}
            {number(bench, Quantity::SwatchHeight, 0, "")}
        </div>
    }
    .into_any()
}

/// Names of the yarn-weight numbers. Source: Craft Yarn Council's www.YarnStandards.com.
const WEIGHTS: [&str; 8] = [
    "0 · Lace",
    "1 · Super Fine: sock, fingering, baby",
    "2 · Fine: sport, baby",
    "3 · Light: DK, light worsted",
    "4 · Medium: worsted, afghan, aran",
    "5 · Bulky: chunky, craft, rug",
    "6 · Super Bulky: roving",
    "7 · Jumbo: roving",
];

fn by_weight(bench: Bench) -> AnyView {
    let weight = memo(move || {
        bench.project.with(|p| match p.spec.swatch {
            Swatch::YarnWeight(w) => usize::from(w.number()),
            Swatch::Counted { .. } => 4,
        })
    });
    let options = words(move || {
        let mut html = Html::new();
        for (i, name) in WEIGHTS.iter().enumerate() {
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
        {pick("yarn-weight".to_owned(), "Yarn weight, from the ball band", options, set)}
        <p class="note">
            "An estimate from the published range for this weight; a swatch of your own replaces it. "
            "Source: Craft Yarn Council’s www.YarnStandards.com."
        </p>
    }
    .into_any()
}

/// What half a stitch in the swatch does to the hat.
fn sureness(bench: Bench) -> String {
    let units = bench.figure_units();
    bench.shown.with(|shown| {
        let stitches = match shown.spec.swatch {
            Swatch::Counted { stitches, .. } => stitches,
            Swatch::YarnWeight(_) => {
                return "Every number of this hat is an estimate until there is a swatch.".to_owned();
            }
        };
        let Some((low, high)) = shown.hat.girth_range else { return String::new() };
        let counted = figures::show(stitches.ticks(), hatwright_sizing::Unit::Count, units);
        format!(
            "If the count is half a stitch off in {counted}, the hat is {}. Twice the width halves that.",
            figures::length_span(low, high, units)
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_stretches_are_the_tables() {
        for (choice, q) in [(STRETCH, Quantity::BodyStretch), (BAND_STRETCH, Quantity::BandStretch)] {
            let hundredths = q.row().usual / 100;
            assert_eq!(choice.options[0], format!("Usual, {}.{:02}", hundredths / 100, hundredths % 100));
        }
    }
}
