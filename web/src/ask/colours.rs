//! The colours: yarns, and the stripes of band and body.

use crate::bench::Bench;
use crate::erase::{memo, part, part_if, words};
use crate::field::labelled;
use crate::html::Html;
use crate::pick::{option, pick};
use hatwright_pattern::picture::colour_letter;
use hatwright_project::{ColourName, DYES, Project, Rgb, text};
use hatwright_sizing::{Ball, Colour, Count, HatSpec, Quantity, RoundStripe, Rounds, RowStripe, Rows};
use leptos::prelude::*;

/// The section.
pub fn colours(bench: Bench) -> AnyView {
    let count = memo(move || bench.project.with(|p| p.colours.len()));
    let banded = memo(move || bench.project.with(|p| p.spec.asks(Quantity::StripeRows)));
    let bodied = memo(move || bench.project.with(|p| p.spec.asks(Quantity::StripeRounds)));
    view! {
        <section aria-labelledby="colours-title">
            <h2 id="colours-title">"Colours"</h2>
            {part(move || (0..count.get()).map(|i| yarn(bench, i, count.get())).collect_view().into_any())}
            {part_if(move || count.get() < HatSpec::MOST_COLOURS, move || view! {
                <div class="quick"><button type="button" id="add-colour" on:click=move |_| add_colour(bench)>"Add a colour"</button></div>
            }.into_any())}
            {part_if(move || banded.get(), move || stripes(bench, Zone::Band))}
            {part_if(move || bodied.get(), move || stripes(bench, Zone::Body))}
        </section>
    }
    .into_any()
}

/// One yarn: its colour, its name, what a ball holds.
fn yarn(bench: Bench, i: usize, count: usize) -> AnyView {
    let hex = memo(move || bench.project.with(|p| p.colours.get(i).map(|c| c.hex.to_string()).unwrap_or_default()));
    let name = memo(move || bench.project.with(|p| p.colours.get(i).map(|c| c.name.clone()).unwrap_or_default()));
    let set_hex = move |event| {
        if let Ok(rgb) = Rgb::parse(&event_target_value(&event)) {
            bench.change(|p| p.colours.iter_mut().skip(i).take(1).for_each(|c| c.hex = rgb));
        }
    };
    let set_name = move |event| {
        let typed = text::COLOUR.tidy(&event_target_value(&event));
        bench.change(|p| p.colours.iter_mut().skip(i).take(1).for_each(|c| c.name.clone_from(&typed)));
    };
    view! {
        <div class="yarn" role="group" aria-label=format!("Colour {}", letter(i))>
            <span class="letter" aria-hidden="true">{letter(i)}</span>
            <input type="color" id=format!("hex-{i}") aria-label=format!("Colour {} on the screen", letter(i)) prop:value=hex on:input=set_hex />
            <span class="number name">
                <label for=format!("colour-name-{i}")>"Name"</label>
                <input class="box" type="text" id=format!("colour-name-{i}") maxlength="40" autocomplete="off" prop:value=name on:input=set_name />
            </span>
            {labelled(bench, Quantity::BallYarn, i, "A ball holds".to_owned(), "")}
            {(count > 1).then(|| view! {
                <button type="button" class="drop" aria-label=format!("Remove colour {}", letter(i)) on:click=move |_| remove_colour(bench, i)>"×"</button>
            })}
        </div>
    }
    .into_any()
}

/// A, B, C …: colours are told apart by more than colour.
pub fn letter(i: usize) -> char {
    colour_letter(Colour(i as u8))
}

fn add_colour(bench: Bench) {
    bench.change(|p| {
        let unused = DYES.iter().find(|(name, _)| p.colours.iter().all(|c| c.name != *name));
        let (name, hex) = unused.unwrap_or(&DYES[0]);
        p.colours.push(ColourName { name: (*name).to_owned(), hex: *hex });
        let ball = p.spec.balls.last().copied();
        let usual = Ball { yarn: Count::from_ticks(Quantity::BallYarn.row().usual) };
        p.spec.balls.push(ball.unwrap_or(usual));
    });
}

/// Takes a colour away; what was worked in it goes to the first colour that is left.
fn remove_colour(bench: Bench, gone: usize) {
    bench.forget(&[Quantity::BallYarn]);
    let moved = move |c: Colour| match usize::from(c.0) {
        i if i == gone => Colour(0),
        i if i > gone => Colour(c.0 - 1),
        _ => c,
    };
    bench.change(|p| {
        if gone >= p.colours.len() || p.colours.len() == 1 {
            return;
        }
        p.colours.remove(gone);
        p.spec.balls.remove(gone);
        p.spec.band.stripes.iter_mut().for_each(|s| s.colour = moved(s.colour));
        p.spec.body_stripes.iter_mut().for_each(|s| s.colour = moved(s.colour));
        if let Some(pom) = &mut p.spec.pom_pom {
            pom.colour = pom.colour.map(moved);
        }
    });
}

/// The hat's colours as options of a list.
pub fn colour_options(html: &mut Html, project: &Project, chosen: Option<Colour>) {
    for (i, colour) in project.colours.iter().enumerate() {
        let label = format!("{} · {}", letter(i), colour.name);
        option(html, &i.to_string(), &label, chosen == Some(Colour(i as u8)));
    }
}

/// Where stripes lie.
#[derive(Clone, Copy, PartialEq)]
enum Zone {
    Band,
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

    fn words(self) -> (&'static str, &'static str, &'static str) {
        match self {
            Self::Band => ("band", "Stripes of the band, over and over", "Rows"),
            Self::Body => ("body", "Stripes of the body, over and over", "Rounds"),
        }
    }
}

fn stripes(bench: Bench, zone: Zone) -> AnyView {
    let count = memo(move || bench.project.with(|p| zone.colours(&p.spec).len()));
    let (key, title, unit) = zone.words();
    let rows = part(move || (0..count.get()).map(|i| stripe(bench, zone, i, count.get(), unit)).collect_view().into_any());
    view! {
        <fieldset class="stripes">
            <legend>{title}</legend>
            {rows}
            {part_if(move || count.get() < HatSpec::MOST_STRIPES, move || view! {
                <div class="quick">
                    <button type="button" id=format!("add-{key}-stripe") on:click=move |_| {
                        bench.shape(|s| zone.add(s));
                    }>{format!("Add a {key} stripe")}</button>
                </div>
            }.into_any())}
        </fieldset>
    }
    .into_any()
}

fn stripe(bench: Bench, zone: Zone, i: usize, count: usize, unit: &'static str) -> AnyView {
    let (key, ..) = zone.words();
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
        <div class="stripe" role="group" aria-label=format!("Stripe {} of the {key}", i + 1)>
            <span class="patch" inner_html=chip></span>
            {pick(format!("{key}-colour-{i}"), &format!("Stripe {}", i + 1), options, set)}
            {labelled(bench, zone.quantity(), i, unit.to_owned(), " ")}
            {(count > 1).then(|| view! {
                <button type="button" class="drop" aria-label=format!("Remove stripe {} of the {key}", i + 1) on:click=move |_| {
                    bench.forget(&[zone.quantity()]);
                    bench.shape(|s| zone.remove(s, i));
                }>"×"</button>
            })}
        </div>
    }
    .into_any()
}
