//! The band: how it is worked, how tall it is, what of it is folded up.

use super::fabric::{fabrics, take_band};
use super::heard;
use super::swatch::stretch;
use crate::bench::Bench;
use crate::choice::{Choice, choice};
use crate::erase::{memo, part, part_if, words};
use crate::field::{labelled, number};
use hatwright_pattern::figures;
use hatwright_project::Project;
use hatwright_sizing::{BandKind, BandSwatch, Begun, Count, Edge, HatSpec, Length, Quantity, Style, band_height};
use hatwright_words::ask;
use leptos::prelude::*;

const KINDS: [BandKind; 3] = [BandKind::Sideways, BandKind::Around, BandKind::None];

const KIND: Choice = Choice {
    legend: ask::band_kind,
    name: "band-kind",
    options: &[ask::sideways_rib, ask::worked_around, ask::no_band],
    get: |p| p.spec.band_kind() as usize,
    set: |bench, i| take_band(bench, KINDS[i]),
};

/// An ear warmer is a band.
const WARMER: Choice = Choice { legend: ask::warmer_kind, options: &[ask::warmer_sideways, ask::warmer_around], ..KIND };

const EDGE: Choice = Choice {
    legend: ask::edge,
    name: "edge",
    options: &[ask::chainless, ask::loose_chain],
    get: |p| p.spec.band.edge as usize,
    set: |bench, i| bench.shape(|s| s.band.edge = [Edge::Chainless, Edge::LooseChain][i]),
};

const BAND_SWATCH: Choice = Choice {
    legend: ask::band_swatch_way,
    name: "band-swatch-way",
    options: &[ask::no_swatch, ask::counted_band],
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

/// Whether there is an edge that is begun around and has to stretch.
fn begins_around(p: &Project) -> bool {
    p.spec.begins() == Begun::Band && p.spec.style != Style::Sideways && p.spec.band_kind() != BandKind::Sideways
}

/// The questions about the band.
pub fn band(bench: Bench) -> AnyView {
    // A style that has no band, or is nothing else, is not asked whether it has one.
    let asked = memo(move || {
        let kinds: [fn(&mut HatSpec); 2] = [|s| s.band.kind = BandKind::Sideways, |s| s.band.kind = BandKind::Around];
        bench.project.with(|p| heard(&p.spec, kinds, HatSpec::band_kind))
    });
    let warmer = memo(move || bench.project.with(|p| p.spec.style == Style::EarWarmer));
    let kind = memo(move || bench.project.with(|p| p.spec.band_kind()));
    let folds = memo(move || bench.project.with(|p| p.spec.asks(Quantity::Fold)));
    let edged = memo(move || bench.project.with(begins_around));
    view! {
        {part_if(move || asked.get(), move || choice(bench, if warmer.get() { WARMER } else { KIND }))}
        {part(move || match kind.get() {
            BandKind::None => ().into_any(),
            kind => made(bench, kind),
        })}
        {part_if(move || folds.get(), move || folded(bench))}
        {part_if(move || edged.get(), move || choice(bench, EDGE))}
        {part_if(move || kind.get() != BandKind::None, move || finer(bench))}
    }
    .into_any()
}

fn made(bench: Bench, kind: BandKind) -> AnyView {
    let height = if kind == BandKind::Around {
        number(bench, Quantity::BandRounds, 0, ask::rnd())
    } else {
        number(bench, Quantity::BandHeight, 0, ask::st())
    };
    view! {
        {fabrics(bench, true)}
        <div class="pair">{height}<p class="note beside" id="band-note">{words(move || note(bench))}</p></div>
    }
    .into_any()
}

fn folded(bench: Bench) -> AnyView {
    // The edge of a hat worked sideways has no height of its own to take a part of.
    let banded = memo(move || bench.project.with(|p| p.spec.band_kind() != BandKind::None));
    view! {
        <div class="pair fold">
            {number(bench, Quantity::Fold, 0, "")}
            {part_if(move || banded.get(), move || view! {
                <div class="quick" role="group" aria-label=ask::fold_quick()>
                    <button type="button" on:click=move |_| fold(bench, 0)>{ask::fold_none()}</button>
                    <button type="button" on:click=move |_| fold(bench, 1)>{ask::fold_half()}</button>
                    <button type="button" on:click=move |_| fold(bench, 2)>{ask::fold_all()}</button>
                </div>
            }.into_any())}
        </div>
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

fn note(bench: Bench) -> String {
    let units = bench.figure_units();
    let (height, fold) = bench.project.with(|p| (band_height(&p.spec), p.spec.fold()));
    let tall = figures::length(height, units);
    if fold == Length::ZERO {
        return ask::band_flat(&tall);
    }
    let seen = Length::from_ticks((height.ticks() - fold.ticks()).max(0));
    ask::band_folded(&tall, &figures::length(seen, units))
}

/// What most bands do without: a swatch, a hook and a stretch of their own.
fn finer(bench: Bench) -> AnyView {
    let own = memo(move || bench.project.with(|p| p.spec.band.swatch.is_some()));
    let around = memo(move || bench.project.with(|p| p.spec.band_kind() == BandKind::Around));
    view! {
        <details>
            <summary>{ask::band_own()}</summary>
            {choice(bench, BAND_SWATCH)}
            {part(move || if own.get() { counted(bench, around.get()) } else { assumed(around.get()) })}
            {number(bench, Quantity::BandHook, 0, "")}
            {stretch(bench, 1)}
        </details>
    }
    .into_any()
}

fn counted(bench: Bench, around: bool) -> AnyView {
    let (label, unit) = if around { (ask::rounds(), ask::rnd()) } else { (ask::rows(), ask::rows_unit()) };
    view! {
        <div class="pair">
            {number(bench, Quantity::BandSwatchStitches, 0, ask::st())}
            {number(bench, Quantity::BandSwatchWidth, 0, "")}
            {labelled(bench, Quantity::BandSwatchRows, 0, label.to_owned(), unit)}
            {number(bench, Quantity::BandSwatchLength, 0, "")}
        </div>
    }
    .into_any()
}

fn assumed(around: bool) -> AnyView {
    let text = if around { ask::assumed_around() } else { ask::assumed_rows() };
    view! { <p class="note">{text}</p> }.into_any()
}
