//! The stripes of band and body.

use super::colours::colour_options;
use crate::bench::Bench;
use crate::erase::{memo, part, part_if, words};
use crate::field::labelled;
use crate::html::Html;
use crate::pick::pick;
use hatwright_sizing::{Colour, HatSpec, Quantity, RoundStripe, Rounds, RowStripe, Rows};
use hatwright_words::ask;
use leptos::prelude::*;

/// What is said of the stripes of one zone.
struct Words {
    title: fn() -> &'static str,
    add: fn() -> &'static str,
    unit: fn() -> &'static str,
    of: fn(u32) -> String,
    remove: fn(u32) -> String,
}

/// Where stripes lie.
#[derive(Clone, Copy, PartialEq)]
pub enum Zone {
    /// In the band, or all rows of a hat worked sideways.
    Band,
    /// In the body.
    Body,
}

impl Zone {
    fn quantity(self) -> Quantity {
        if self == Self::Band { Quantity::StripeRows } else { Quantity::StripeRounds }
    }

    fn colours(self, spec: &HatSpec) -> Vec<Colour> {
        match self {
            Self::Band => spec.band.stripes.iter().map(|s| s.colour).collect(),
            Self::Body => spec.body_stripes.iter().map(|s| s.colour).collect(),
        }
    }

    fn paint(self, spec: &mut HatSpec, i: usize, colour: Colour) {
        match self {
            Self::Band => spec.band.stripes.iter_mut().skip(i).take(1).for_each(|s| s.colour = colour),
            Self::Body => spec.body_stripes.iter_mut().skip(i).take(1).for_each(|s| s.colour = colour),
        }
    }

    /// Adds a stripe in the colour after the last one's.
    fn add(self, spec: &mut HatSpec) {
        let colours = spec.balls.len();
        let last = self.colours(spec).last().map_or(0, |c| usize::from(c.0));
        let colour = Colour(((last + 1) % colours) as u8);
        let usual = self.quantity().row().usual.unsigned_abs();
        match self {
            Self::Band => spec.band.stripes.push(RowStripe { colour, rows: Rows::new(usual) }),
            Self::Body => spec.body_stripes.push(RoundStripe { colour, rounds: Rounds::new(usual) }),
        }
    }

    fn remove(self, spec: &mut HatSpec, i: usize) {
        let count = self.colours(spec).len();
        if i >= count || count == 1 {
            return;
        }
        match self {
            Self::Band => drop(spec.band.stripes.remove(i)),
            Self::Body => drop(spec.body_stripes.remove(i)),
        }
    }

    /// What its elements are told by, in any language.
    fn key(self) -> &'static str {
        if self == Self::Band { "band" } else { "body" }
    }

    fn words(self) -> Words {
        match self {
            Self::Band => Words {
                title: ask::band_stripes,
                add: ask::add_band_stripe,
                unit: ask::rows,
                of: ask::band_stripe,
                remove: ask::remove_band_stripe,
            },
            Self::Body => Words {
                title: ask::body_stripes,
                add: ask::add_body_stripe,
                unit: ask::rounds,
                of: ask::body_stripe,
                remove: ask::remove_body_stripe,
            },
        }
    }
}

/// The stripes of one zone, which are worked over and over.
pub fn stripes(bench: Bench, zone: Zone) -> AnyView {
    let count = memo(move || bench.project.with(|p| zone.colours(&p.spec).len()));
    let (key, told) = (zone.key(), zone.words());
    let rows = part(move || (0..count.get()).map(|i| stripe(bench, zone, i, count.get())).collect_view().into_any());
    view! {
        <fieldset class="stripes">
            <legend>{(told.title)()}</legend>
            {rows}
            {part_if(move || count.get() < HatSpec::MOST_STRIPES, move || view! {
                <div class="quick">
                    <button type="button" id=format!("add-{key}-stripe") on:click=move |_| {
                        bench.shape(|s| zone.add(s));
                    }>{(told.add)()}</button>
                </div>
            }.into_any())}
        </fieldset>
    }
    .into_any()
}

fn stripe(bench: Bench, zone: Zone, i: usize, count: usize) -> AnyView {
    let (key, told, n) = (zone.key(), zone.words(), i as u32 + 1);
    let colour = memo(move || bench.project.with(|p| zone.colours(&p.spec).get(i).map_or(0, |c| usize::from(c.0))));
    let options = words(move || {
        bench.project.with(|p| {
            let mut html = Html::new();
            colour_options(&mut html, p, Some(Colour(colour.get() as u8)));
            html.done()
        })
    });
    let chip = words(move || {
        let mut html = Html::new();
        html.chip(&bench.project.with(|p| p.colours.get(colour.get()).map(|c| c.hex.to_string()).unwrap_or_default()));
        html.done()
    });
    let set = move |picked: String| {
        if let Ok(chosen) = picked.parse::<u8>() {
            bench.shape(|s| {
                if usize::from(chosen) < s.balls.len() {
                    zone.paint(s, i, Colour(chosen));
                }
            });
        }
    };
    view! {
        <div class="stripe" role="group" aria-label=(told.of)(n)>
            <span class="patch" inner_html=chip></span>
            {pick(format!("{key}-colour-{i}"), &ask::stripe(n), options, set)}
            {labelled(bench, zone.quantity(), i, (told.unit)().to_owned(), " ")}
            {(count > 1).then(|| view! {
                <button type="button" class="drop" aria-label=(told.remove)(n) on:click=move |_| {
                    bench.forget(&[zone.quantity()]);
                    bench.shape(|s| zone.remove(s, i));
                }>"×"</button>
            })}
        </div>
    }
    .into_any()
}
