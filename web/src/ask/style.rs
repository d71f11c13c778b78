//! The kind of hat, and the measures that it asks for.

use crate::bench::Bench;
use crate::choice::{Choice, choice};
use crate::erase::{flag, memo, part, part_if};
use crate::field::labelled;
use hatwright_pattern::picture::{style_icon, to_markup};
use hatwright_pattern::say;
use hatwright_sizing::{Fabric, HatSpec, Length, Quantity, Rounds, SideTop, Stitches, Style, band_height, head_size};
use hatwright_words::ask;
use leptos::prelude::*;

/// What the trade calls a kind of hat.
pub fn name(style: Style) -> &'static str {
    match style {
        Style::Fitted => ask::fitted(),
        Style::Slouch => ask::slouch(),
        Style::Stocking => ask::stocking(),
        Style::EarWarmer => ask::ear_warmer(),
        Style::Tam => ask::tam(),
        Style::EarFlap => ask::ear_flaps(),
        Style::Brimmed => ask::brimmed(),
        Style::Sideways => ask::sideways(),
    }
}

/// The kinds of hat, each with its small picture.
pub fn styles(bench: Bench) -> AnyView {
    let chosen = memo(move || bench.project.with(|p| p.spec.style));
    let tiles = Style::ALL.iter().enumerate().map(move |(i, &style)| {
        let id = ["style-", &i.to_string()].concat();
        view! {
            <span class="tag">
                <input
                    type="radio"
                    id=id.clone()
                    name="style"
                    prop:checked=flag(move || chosen.get() == style)
                    on:change=move |_| take_style(bench, style)
                />
                <label for=id><span class="picture" aria-hidden="true" inner_html=to_markup(&style_icon(style), &[])></span>{name(style)}</label>
            </span>
        }
    });
    view! {
        <fieldset class="choice styles" id="style">
            <legend>{ask::style()}</legend>
            <div class="tags">{tiles.collect_view()}</div>
        </fieldset>
        {part(move || measures(bench, chosen.get()))}
    }
    .into_any()
}

/// Takes another style, with what is its own: a fabric where it is worked sideways, a low band where none of it is folded up, and its
/// usual measures. What another style had is put aside until that is taken again.
fn take_style(bench: Bench, style: Style) {
    let sideways = |style: Style| usize::from(style == Style::Sideways);
    let low = |style: Style| usize::from(matches!(style, Style::Tam | Style::EarFlap));
    let (was, fabric, band) = bench.project.with_untracked(|p| (p.spec.style, p.spec.fabric, band_size(&p.spec)));
    bench.aside.update_value(|a| {
        a.fabrics[sideways(was)] = Some(fabric);
        a.bands[low(was)] = Some(band);
    });
    let usual = [Fabric::Single, Fabric::SingleBack][sideways(style)];
    let (fabric, other) = bench.aside.with_value(|a| (a.fabrics[sideways(style)].unwrap_or(usual), a.bands[low(style)]));
    bench.shape(|s| {
        if low(was) != low(style) {
            let (height, rounds) = other.unwrap_or_else(|| if low(style) == 1 { on_the_head(s) } else { band });
            (s.band.height, s.band.rounds) = (height, rounds);
        }
        s.style = style;
        if sideways(was) != sideways(style) {
            s.fabric = fabric;
        }
        // Measures that nobody has changed yet are those of the table's own head.
        let table = Length::from_ticks(Quantity::HeadGirth.row().usual);
        s.shape = s.shape.followed(table, head_size(&s.head).girth);
    });
}

fn band_size(spec: &HatSpec) -> (Stitches, Rounds) {
    (spec.band.height, spec.band.rounds)
}

/// What of a band lies on the head when some of it is folded up.
fn on_the_head(spec: &HatSpec) -> (Stitches, Rounds) {
    let all = band_height(spec).ticks().max(1);
    let seen = (all - spec.band.fold.ticks()).clamp(0, all);
    let part = |count: u32, least: u32| ((count as i32 * seen + all / 2) / all).unsigned_abs().max(least);
    (Stitches::new(part(spec.band.height.get(), 2)), Rounds::new(part(spec.band.rounds.get(), 1)))
}

const SIDE_TOP: Choice = Choice {
    legend: ask::side_top,
    name: "side-top",
    options: &[ask::gathered_crown, ask::short_rows],
    get: |p| p.spec.shape.side_top as usize,
    set: |bench, i| {
        bench.forget(&[Quantity::SideWedges]);
        bench.shape(|s| s.shape.side_top = [SideTop::Gathered, SideTop::ShortRows][i]);
    },
};

/// The measures of one kind of hat, and what is usual for them.
fn measures(bench: Bench, style: Style) -> AnyView {
    use Quantity as Q;
    let asked: &[Q] = match style {
        Style::Slouch => &[Q::SlouchWider, Q::SlouchLonger],
        Style::Stocking => &[Q::Tail, Q::Taper, Q::TailStitches],
        Style::Tam => &[Q::TamAcross],
        Style::EarFlap => &[Q::FlapLength, Q::FlapTie],
        Style::Brimmed => &[Q::Brim, Q::Flare],
        Style::Sideways => {
            let short = memo(move || bench.project.with(|p| p.spec.shape.side_top == SideTop::ShortRows));
            return view! {
                {choice(bench, SIDE_TOP)}
                {part_if(move || short.get(), move || shown(bench, &[Q::SideWedges]))}
            }
            .into_any();
        }
        Style::Fitted | Style::EarWarmer => return ().into_any(),
    };
    shown(bench, asked)
}

fn shown(bench: Bench, asked: &'static [Quantity]) -> AnyView {
    let unit = |q: Quantity| match q {
        Quantity::TailStitches => ask::st(),
        Quantity::SlouchWider => ask::percent_wider(),
        Quantity::Flare => ask::percent_flat(),
        Quantity::SideWedges => ask::wedges_unit(),
        _ => "",
    };
    // Two labels stand side by side: neither may be longer than its field.
    let short = |q: Quantity| match q {
        Quantity::SlouchLonger => ask::slouch_longer(),
        Quantity::Tail => ask::beyond_head(),
        Quantity::Taper => ask::narrowing(),
        q => say::label(q),
    };
    let help: Vec<&str> = asked.iter().filter_map(|q| say::hint(*q)).collect();
    view! {
        <div class="pair">{asked.iter().map(|q| labelled(bench, *q, 0, short(*q).to_owned(), unit(*q))).collect_view()}</div>
        <p class="note">{help.join(" ")}</p>
    }
    .into_any()
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_pattern::picture::{HatLabels, Paint, Picture, fit_curve, hat_picture, hat_silhouette};
    use hatwright_sizing::plan;

    /// Every measure that a style's plan heeds is asked for, and no other.
    #[test]
    fn styles_ask_for_what_matters_to_them() {
        use Quantity as Q;
        let measures = [
            Q::SlouchWider,
            Q::SlouchLonger,
            Q::Tail,
            Q::Taper,
            Q::TailStitches,
            Q::TamAcross,
            Q::FlapLength,
            Q::FlapTie,
            Q::Brim,
            Q::Flare,
        ];
        let count = |style| measures.iter().filter(|q| HatSpec { style, ..HatSpec::default() }.asks(**q)).count();
        let counts = Style::ALL.map(count);
        assert_eq!(counts, [0, 2, 3, 0, 1, 2, 2, 0]);
    }

    /// Of ten stitches, 8.3 cm, 4.2 cm are folded up: 4.1 cm are left: five stitches.
    #[test]
    fn a_band_that_is_not_folded_is_as_tall_as_it_was_seen() {
        let spec = HatSpec::default();
        assert_eq!(on_the_head(&spec), (Stitches::new(5), Rounds::new(3)));
        let mut flat = spec.clone();
        flat.band.fold = Length::ZERO;
        assert_eq!(on_the_head(&flat), band_size(&spec));
    }

    /// A shape of a class that the page does not know is black.
    #[test]
    fn every_class_of_a_picture_has_its_look_on_the_page() {
        let sheet = include_str!("../../style.css");
        for style in Style::ALL {
            let mut spec = HatSpec { style, ..HatSpec::default() };
            (spec.band.height, spec.shape.flap_tie) = (Stitches::new(6), Length::from_cm(20.0));
            spec.band.fold = Length::from_cm(2.0);
            let hat = plan(&spec).unwrap_or_else(|why| panic!("{style:?}: {why:?}"));
            let labels = HatLabels::of(&hat, &spec, hatwright_pattern::figures::Units::Centimetres);
            let pictures: [Picture; 4] =
                [hat_picture(&hat, &spec, &labels), hat_silhouette(&hat), style_icon(style), fit_curve(&hat.fit, Some(4.0))];
            for shape in pictures.iter().flat_map(|p| &p.shapes) {
                if let Paint::Class(class) = shape.paint {
                    assert!(
                        class == "label"
                            || sheet.contains(&format!(".picture .{class} "))
                            || sheet.contains(&format!(".picture .{class},")),
                        "{style:?}: {class}"
                    );
                }
            }
        }
    }
}
