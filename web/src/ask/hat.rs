//! The hat: its kind, where it begins, its band, its crown, its top.

use super::band::band;
use super::heard;
use super::style::styles;
use super::topper::topper;
use crate::bench::Bench;
use crate::choice::{Choice, choice};
use crate::erase::{memo, part_if};
use crate::field::number;
use hatwright_sizing::{Begun, Closing, HatSpec, Layout, Quantity, Stitches, Topper, TopperKind, Way};
use hatwright_words::ask;
use leptos::prelude::*;

const BEGUN: Choice = Choice {
    legend: ask::begun,
    name: "begun",
    options: &[ask::begun_band, ask::begun_crown],
    get: |p| p.spec.begun as usize,
    set: |bench, i| bench.shape(|s| s.begun = [Begun::Band, Begun::Crown][i]),
};

const ROUNDS: Choice = Choice {
    legend: ask::way,
    name: "way",
    options: &[ask::spiral, ask::joined],
    get: |p| p.spec.way as usize,
    set: |bench, i| bench.shape(|s| s.way = [Way::Spiral, Way::Joined][i]),
};

const LAYOUT: Choice = Choice {
    legend: ask::layout,
    name: "layout",
    options: &[ask::spread, ask::wedges],
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
    legend: ask::closing,
    name: "closing",
    options: &[ask::drawn, ask::gathered],
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

/// The section.
pub fn hat(bench: Bench) -> AnyView {
    let asks = |answers: [fn(&mut HatSpec); 2], of: fn(&HatSpec) -> usize| {
        memo(move || bench.project.with(|p| heard(&p.spec, answers, of)))
    };
    let begins = asks([|s| s.begun = Begun::Band, |s| s.begun = Begun::Crown], |s| s.begins() as usize);
    let goes = asks([|s| s.way = Way::Spiral, |s| s.way = Way::Joined], |s| s.goes() as usize);
    let lays = asks([|s| s.layout = Layout::Spread, |s| s.layout = Layout::Wedges(8)], |s| {
        usize::from(s.style.is_round() && s.lays() == Layout::Spread)
    });
    let closes = asks([|s| s.closing = Closing::Drawn, |s| s.closing = Closing::Gathered(Stitches::new(56))], |s| {
        usize::from(s.style.is_round() && s.closes() == Closing::Drawn)
    });
    let wears =
        asks([|s| s.topper = None, |s| s.topper = Some(Topper::usual(TopperKind::PomPom))], |s| usize::from(s.wears().is_some()));
    let asked = |q: Quantity| memo(move || bench.project.with(|p| p.spec.asks(q) && p.spec.number(q, 0).is_some()));
    let (wedges, gathered) = (asked(Quantity::Wedges), asked(Quantity::Gather));
    view! {
        <section aria-labelledby="hat-title">
            <h2 id="hat-title">{ask::hat_title()}</h2>
            {styles(bench)}
            {part_if(move || begins.get(), move || choice(bench, BEGUN))}
            {part_if(move || goes.get(), move || choice(bench, ROUNDS))}
            {band(bench)}
            {part_if(move || lays.get(), move || choice(bench, LAYOUT))}
            {part_if(move || wedges.get(), move || number(bench, Quantity::Wedges, 0, ask::wedges_unit()))}
            {part_if(move || closes.get(), move || choice(bench, CLOSING))}
            {part_if(move || gathered.get(), move || number(bench, Quantity::Gather, 0, ask::st()))}
            {part_if(move || wears.get(), move || topper(bench))}
        </section>
    }
    .into_any()
}
