//! The hat: its band, its crown, its top.

use super::colours::colour_options;
use super::swatch::BAND_STRETCH;
use crate::bench::Bench;
use crate::choice::{Choice, choice};
use crate::erase::{memo, part, part_if, words};
use crate::field::number;
use crate::html::Html;
use crate::pick::{option, pick};
use hatwright_pattern::figures;
use hatwright_sizing::{BandSwatch, Closing, Colour, Count, Layout, Length, PomPom, Quantity, Stitches, Stretch, band_height};
use leptos::prelude::*;

const BAND_SWATCH: Choice = Choice {
    legend: "A swatch of the band’s rib?",
    name: "band-swatch-way",
    options: &["None", "Counted"],
    get: |p| usize::from(p.spec.band.swatch.is_some()),
    set: |bench, i| {
        let now = bench.project.with_untracked(|p| p.spec.band.swatch);
        bench.aside.update_value(|a| a.band_swatch = now.or(a.band_swatch));
        let kept = bench.aside.with_value(|a| a.band_swatch);
        let usual = |q: Quantity| q.row().usual;
        let fresh = BandSwatch {
            stitches: Count::from_ticks(usual(Quantity::BandSwatchStitches)),
            width: Length::from_ticks(usual(Quantity::BandSwatchWidth)),
            rows: Count::from_ticks(usual(Quantity::BandSwatchRows)),
            length: Length::from_ticks(usual(Quantity::BandSwatchLength)),
        };
        bench.shape(|s| s.band.swatch = (i == 1).then(|| kept.unwrap_or(fresh)));
    },
};

const LAYOUT: Choice = Choice {
    legend: "Decreases lie",
    name: "layout",
    options: &["spread, smooth", "in wedges, a star"],
    get: |p| usize::from(matches!(p.spec.layout, Layout::Wedges(_))),
    set: |bench, i| {
        if let Layout::Wedges(k) = bench.project.with_untracked(|p| p.spec.layout) {
            bench.aside.update_value(|a| a.wedges = Some(k));
        }
        let kept = bench.aside.with_value(|a| a.wedges).unwrap_or(Quantity::Wedges.row().usual.unsigned_abs());
        bench.shape(|s| s.layout = if i == 1 { Layout::Wedges(kept) } else { Layout::Spread });
    },
};

const CLOSING: Choice = Choice {
    legend: "The top is",
    name: "closing",
    options: &["drawn up from a few", "gathered from many"],
    get: |p| usize::from(matches!(p.spec.closing, Closing::Gathered(_))),
    set: |bench, i| {
        if let Closing::Gathered(n) = bench.project.with_untracked(|p| p.spec.closing) {
            bench.aside.update_value(|a| a.gathered = Some(n));
        }
        let usual = Stitches::new(Quantity::Gather.row().usual.unsigned_abs());
        let kept = bench.aside.with_value(|a| a.gathered).unwrap_or(usual);
        bench.shape(|s| s.closing = if i == 1 { Closing::Gathered(kept) } else { Closing::Drawn });
    },
};

const POM_POM: Choice = Choice {
    legend: "Pom-pom",
    name: "pom-pom-way",
    options: &["None", "One on top"],
    get: |p| usize::from(p.spec.pom_pom.is_some()),
    set: |bench, i| {
        let now = bench.project.with_untracked(|p| p.spec.pom_pom);
        bench.aside.update_value(|a| a.pom_pom = now.or(a.pom_pom));
        let kept = bench.aside.with_value(|a| a.pom_pom);
        let fresh = PomPom { diameter: Length::from_ticks(Quantity::PomPom.row().usual), colour: None };
        bench.shape(|s| s.pom_pom = (i == 1).then(|| kept.unwrap_or(fresh)));
    },
};

/// The section.
pub fn hat(bench: Bench) -> AnyView {
    let own_band = memo(move || bench.project.with(|p| p.spec.band.swatch.is_some()));
    let rib = memo(move || bench.project.with(|p| matches!(p.spec.band.stretch, Stretch::Measured(_))));
    let wedges = memo(move || bench.project.with(|p| matches!(p.spec.layout, Layout::Wedges(_))));
    let gathered = memo(move || bench.project.with(|p| matches!(p.spec.closing, Closing::Gathered(_))));
    let pom = memo(move || bench.project.with(|p| p.spec.pom_pom.is_some()));
    view! {
        <section aria-labelledby="hat-title">
            <h2 id="hat-title">"Hat"</h2>
            <div class="pair">
                {number(bench, Quantity::BandHeight, 0, "st")}
                {number(bench, Quantity::Fold, 0, "")}
            </div>
            <div class="quick">
                <button type="button" on:click=move |_| fold(bench, 0)>"Not folded"</button>
                <button type="button" on:click=move |_| fold(bench, 1)>"Half folded"</button>
                <button type="button" on:click=move |_| fold(bench, 2)>"Folded to the pick-up"</button>
            </div>
            <p class="note">{words(move || band_note(bench))}</p>
            {choice(bench, BAND_SWATCH)}
            {part(move || if own_band.get() { band_swatch(bench) } else { no_band_swatch() })}
            {choice(bench, BAND_STRETCH)}
            {part_if(move || rib.get(), move || number(bench, Quantity::BandStretch, 0, "times"))}
            {choice(bench, LAYOUT)}
            {part_if(move || wedges.get(), move || number(bench, Quantity::Wedges, 0, "wedges"))}
            {choice(bench, CLOSING)}
            {part_if(move || gathered.get(), move || number(bench, Quantity::Gather, 0, "st"))}
            {choice(bench, POM_POM)}
            {part_if(move || pom.get(), move || pom_pom(bench))}
        </section>
    }
    .into_any()
}

/// Folds none, half or all of the band.
fn fold(bench: Bench, halves: i32) {
    let height = bench.project.with_untracked(|p| band_height(&p.spec)).ticks();
    bench.forget(&[Quantity::Fold]);
    let ticks = (height * halves / 2).min(Quantity::Fold.row().most);
    bench.shape(|s| s.band.fold = Length::from_ticks(ticks));
}

fn band_note(bench: Bench) -> String {
    let units = bench.figure_units();
    let height = bench.project.with(|p| band_height(&p.spec));
    let fold = bench.project.with(|p| p.spec.band.fold);
    let seen = Length::from_ticks((height.ticks() - fold.ticks()).max(0));
    if fold == Length::ZERO {
        return format!("The band is {} tall, worn flat.", figures::length(height, units));
    }
    format!(
        "The band is {} tall; folded, {} of it lies on the head.",
        figures::length(height, units),
        figures::length(seen, units)
    )
}

fn band_swatch(bench: Bench) -> AnyView {
    view! {
        <div class="pair">
            {number(bench, Quantity::BandSwatchStitches, 0, "st")}
            {number(bench, Quantity::BandSwatchWidth, 0, "")}
            {number(bench, Quantity::BandSwatchRows, 0, "rows")}
            {number(bench, Quantity::BandSwatchLength, 0, "")}
        </div>
    }
    .into_any()
}

fn no_band_swatch() -> AnyView {
    view! {
        <p class="note">
            "Then its rows are taken to be as tall as the body’s stitches are wide: the trade’s one stitch in each row end."
        </p>
    }
    .into_any()
}

fn pom_pom(bench: Bench) -> AnyView {
    let options = words(move || {
        bench.project.with(|p| {
            let chosen = p.spec.pom_pom.and_then(|pom| pom.colour);
            let mut html = Html::new();
            option(&mut html, "all", "all colours", chosen.is_none());
            colour_options(&mut html, p, chosen);
            html.done()
        })
    });
    let set = move |picked: String| {
        let colour = picked.parse::<u8>().ok().map(Colour);
        bench.shape(|s| {
            if let Some(pom) = &mut s.pom_pom {
                pom.colour = colour.filter(|c| usize::from(c.0) < s.balls.len());
            }
        });
    };
    view! {
        <div class="pair">{number(bench, Quantity::PomPom, 0, "")}{pick("pom-pom-colour".to_owned(), "in", options, set)}</div>
    }
    .into_any()
}
