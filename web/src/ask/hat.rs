//! The hat: its kind, where it begins, its band, its crown, its top.

use super::band::band;
use super::colours::colour_options;
use super::heard;
use super::style::styles;
use crate::bench::Bench;
use crate::choice::{Choice, choice};
use crate::erase::{memo, part_if, words};
use crate::field::number;
use crate::html::Html;
use crate::pick::{option, pick};
use hatwright_sizing::{Begun, Closing, Colour, HatSpec, Layout, Length, PomPom, Quantity, Stitches, Way};
use leptos::prelude::*;

const BEGUN: Choice = Choice {
    legend: "Begun at",
    name: "begun",
    options: &["the band or edge", "the crown"],
    get: |p| p.spec.begun as usize,
    set: |bench, i| bench.shape(|s| s.begun = [Begun::Band, Begun::Crown][i]),
};

const ROUNDS: Choice = Choice {
    legend: "Rounds go",
    name: "way",
    options: &["in a spiral", "joined"],
    get: |p| p.spec.way as usize,
    set: |bench, i| bench.shape(|s| s.way = [Way::Spiral, Way::Joined][i]),
};

const LAYOUT: Choice = Choice {
    legend: "Shaping lies",
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
    let wears = asks([|s| s.pom_pom = None, |s| s.pom_pom = Some(PomPom { diameter: Length::ZERO, colour: None })], |s| {
        usize::from(s.wears().is_some())
    });
    let asked = |q: Quantity| memo(move || bench.project.with(|p| p.spec.asks(q) && p.spec.number(q, 0).is_some()));
    let (wedges, gathered, pom) = (asked(Quantity::Wedges), asked(Quantity::Gather), asked(Quantity::PomPom));
    view! {
        <section aria-labelledby="hat-title">
            <h2 id="hat-title">"Hat"</h2>
            {styles(bench)}
            {part_if(move || begins.get(), move || choice(bench, BEGUN))}
            {part_if(move || goes.get(), move || choice(bench, ROUNDS))}
            {band(bench)}
            {part_if(move || lays.get(), move || choice(bench, LAYOUT))}
            {part_if(move || wedges.get(), move || number(bench, Quantity::Wedges, 0, "wedges"))}
            {part_if(move || closes.get(), move || choice(bench, CLOSING))}
            {part_if(move || gathered.get(), move || number(bench, Quantity::Gather, 0, "st"))}
            {part_if(move || wears.get(), move || choice(bench, POM_POM))}
            {part_if(move || pom.get(), move || pom_pom(bench))}
        </section>
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
