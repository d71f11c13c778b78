//! The hat as it will be: its numbers, its picture, whom it fits, and the sizes beside it.

use crate::bench::{Bench, Place, Shown};
use crate::erase::{flag, memo, part_if, words};
use crate::field::field_id;
use crate::html::Html;
use hatwright_pattern::picture::{HatLabels, hat_picture, to_markup};
use hatwright_pattern::{figures, say};
use hatwright_sizing::{Chosen, Hat, Length, Quantity, Ratio, Remark, Rows, Size, Stitches, YarnLength};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The three numbers that answer the question, and whom the hat fits.
pub fn answer(bench: Bench) -> AnyView {
    let yarn = words(move || yarn(bench));
    let colours = words(move || {
        let used = bench.shown.with(|s| s.hat.yarn.iter().filter(|y| y.balls > 0).count());
        match used {
            1 => "of yarn in one colour".to_owned(),
            n => ["of yarn in ", ["no", "one", "two", "three", "four", "five", "six"][n.min(6)], " colours"].concat(),
        }
    });
    let wearer = words(move || {
        let units = bench.figure_units();
        ["fits a ", &figures::length(bench.shown.with(|s| s.hat.head.girth), units), " head"].concat()
    });
    let others = words(move || {
        let units = bench.figure_units();
        let fit = bench.shown.with(|s| s.hat.fit);
        let heads = ["heads ", &figures::length_span(fit.least, fit.most, units)].concat();
        match fit.ages {
            Some((from, _)) if from >= 18.0 => [&heads, "; 8 in 10 adults"].concat(),
            Some((from, to)) => [&heads, "; 8 in 10 at ", &figures::age_range(from, to)].concat(),
            None => heads,
        }
    });
    view! {
        <div class="answer" class:stale=flag(move || stale(bench)) id="answer" tabindex="-1" role="group" aria-label="The hat in numbers">
            <div><b id="answer-stitches">{words(move || stitches(bench))}</b><small>"stitches around"</small></div>
            <div><b id="answer-rounds">{words(move || rounds(bench))}</b><small>"rounds above the band"</small></div>
            <div><b id="answer-yarn">{yarn}</b><small>{colours}</small></div>
            <div class="fit"><b id="answer-head">{wearer}</b><small id="answer-ages">{others}</small></div>
        </div>
    }
    .into_any()
}

/// Whether what is shown is not the hat of the numbers on the page.
pub fn stale(bench: Bench) -> bool {
    bench.shown.with(|s| s.refusal.is_some()) || bench.typed.with(|all| all.values().any(|t| t.error.is_some()))
}

/// Stitches around, in figures.
pub fn stitches(bench: Bench) -> String {
    bench.shown.with(|s| s.hat.stitches().to_string())
}

/// Rounds above the band, in figures.
pub fn rounds(bench: Bench) -> String {
    bench.shown.with(|s| s.hat.round_count().to_string())
}

/// All the yarn, in figures.
pub fn yarn(bench: Bench) -> String {
    let units = bench.figure_units();
    bench.shown.with(|s| figures::yarn(total(s), units))
}

fn total(shown: &Shown) -> YarnLength {
    shown.hat.yarn.iter().map(|y| y.length).sum()
}

/// A banner while the hat shown is not the hat of the numbers on the page.
pub fn last_good(bench: Bench) -> AnyView {
    let banner = words(move || {
        let mut html = Html::new();
        let mut line = |place: Place, why: &str| {
            html.raw("<li><a href=\"#").raw(&field_id(place)).raw("\">").text(why).raw("</a></li>");
        };
        bench.typed.with(|all| {
            for (place, typed) in all {
                if let Some(error) = &typed.error {
                    line(*place, error);
                }
            }
        });
        let units = bench.figure_units();
        if let Some(refusal) = bench.shown.with(|s| s.refusal) {
            line((refusal.field(), 0), &say::refusal(&refusal, units));
        }
        match html.done() {
            lines if lines.is_empty() => lines,
            lines => ["<p>This is the last hat that worked. What stands in its way:</p><ul>", &lines, "</ul>"].concat(),
        }
    });
    // A link to a field should put the cursor there, and leave the address alone.
    let go = move |event: web_sys::MouseEvent| {
        let link = event.target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()).and_then(|e| e.get_attribute("href"));
        if let Some(field) = link.and_then(|href| crate::dom::element(href.trim_start_matches('#'))) {
            event.prevent_default();
            let _ = field.focus();
        }
    };
    view! { <div class="stuck-on" role="status" id="stuck-on" tabindex="-1" inner_html=banner on:click=go></div> }.into_any()
}

/// The picture of the hat.
pub fn picture(bench: Bench) -> AnyView {
    let drawn = memo(move || {
        let units = bench.figure_units();
        let hexes = bench.project.with(|p| p.colours.iter().map(|c| c.hex.to_string()).collect::<Vec<_>>());
        bench.shown.with(|s| {
            let girth = s.hat.size.girth;
            let flat = hatwright_sizing::Length::from_ticks(girth.ticks() / 2);
            let labels = HatLabels {
                depth: figures::length(s.hat.depth.promised, units),
                girth: format!("{} flat · {} around", figures::length(flat, units), figures::length(girth, units)),
            };
            to_markup(&hat_picture(&s.hat, &labels), &hexes.iter().map(String::as_str).collect::<Vec<_>>())
        })
    });
    view! {
        <figure class="hat" class:stale=flag(move || stale(bench))>
            <div class="picture" inner_html=words(move || drawn.get())></div>
            <figcaption>{words(move || {
                let units = bench.figure_units();
                bench.shown.with(|s| if s.refusal.is_none() { say::why_this_count(&s.hat, units) } else { String::new() })
            })}</figcaption>
            {sizes(bench)}
        </figure>
    }
    .into_any()
}

/// The count that was taken and its neighbours; a click takes one.
fn sizes(bench: Bench) -> AnyView {
    let row = words(move || {
        let units = bench.figure_units();
        bench.shown.with(|s| {
            let hat = &s.hat;
            let mut all: Vec<Size> = hat.neighbours.clone();
            let at = all.iter().position(|n| n.rows > hat.size.rows).unwrap_or(all.len());
            all.insert(at, hat.size);
            let mut html = Html::new();
            for size in all {
                tag(&mut html, &size, hat, units);
            }
            html.done()
        })
    });
    let take = move |event: web_sys::MouseEvent| {
        let button =
            event.target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()).and_then(|e| e.closest("button").ok().flatten());
        let count = |name: &str| button.as_ref().and_then(|b| b.get_attribute(name)).and_then(|n| n.parse::<u32>().ok());
        if let (Some(rows), Some(stitches)) = (count("data-rows"), count("data-stitches")) {
            bench.shape(|s| s.chosen = Some(Chosen { rows: Rows::new(rows), stitches: Stitches::new(stitches) }));
            crate::dom::refocus(&format!("[data-stitches=\"{stitches}\"]"));
        }
    };
    let by_hand = memo(move || {
        bench.shown.with(|s| s.spec.chosen == Some(Chosen { rows: s.hat.size.rows, stitches: s.hat.size.stitches }))
    });
    let free = move || {
        view! {
            <p class="note">"This count was taken by hand. "
                <button type="button" class="plain" id="free-count" on:click=move |_| bench.shape(|s| s.chosen = None)>
                    "Let the fit decide again"
                </button>
            </p>
        }
        .into_any()
    };
    view! {
        <div class="sizes">
            <h3 id="sizes-title">"Other counts"</h3>
            <div class="row" role="group" aria-labelledby="sizes-title" inner_html=row on:click=take></div>
            {part_if(move || by_hand.get(), free)}
        </div>
    }
    .into_any()
}

fn tag(html: &mut Html, size: &Size, hat: &Hat, units: figures::Units) {
    let taken = *size == hat.size;
    let line = say::size_line(size, hat, units);
    html.raw("<button type=\"button\" class=\"size").raw(if taken { " taken" } else { "" });
    html.raw("\" aria-pressed=\"").raw(if taken { "true" } else { "false" });
    html.raw("\" data-rows=\"").number(size.rows.get()).raw("\" data-stitches=\"").number(size.stitches.get());
    html.raw("\" title=\"").text(&line).raw("\"");
    let loosest = hat.head.girth.cm() * (1.0 + Quantity::LoosestByHand.row().usual_value());
    let wearable = size.reaches && size.girth.cm() <= loosest;
    html.raw(if wearable { ">" } else { " disabled>" });
    html.raw("<b>").number(size.stitches.get()).raw("</b>").element("span", &figures::length(size.girth, units));
    if size.rows.get() != size.stitches.get() {
        html.raw("<span>").number(size.rows.get()).raw(" rows</span>");
    }
    let verdict = say::size_effect(size, hat, units);
    html.element("small", &verdict).raw("</button>");
}

/// Finished size, depth, whom it fits, and what a maker should be told.
pub fn facts(bench: Bench) -> AnyView {
    let told = memo(move || {
        let units = bench.figure_units();
        bench.shown.with(|s| told(s, units))
    });
    view! {
        <section class="facts card" aria-labelledby="facts-title" class:stale=flag(move || stale(bench))>
            <h2 id="facts-title">"The finished hat"</h2>
            <div id="facts" inner_html=words(move || told.get())></div>
        </section>
    }
    .into_any()
}

fn told(shown: &Shown, units: figures::Units) -> String {
    let (hat, depth) = (&shown.hat, &shown.hat.depth);
    let l = |x| figures::length(x, units);
    let mut html = Html::new();
    html.raw("<dl>");
    let mut fact = |term: &str, text: &str| {
        html.raw("<div>").element("dt", term).element("dd", text).raw("</div>");
    };
    let ease = if hat.size.ease.ticks() < 0 {
        "larger than the head".to_owned()
    } else {
        [&figures::percent(hat.size.ease), " smaller than the head"].concat()
    };
    fact("Finished girth", &[&l(hat.size.girth), " relaxed, ", &ease].concat());
    let zone = |girth: Length, stretch: Ratio| l(Length::from_cm(girth.cm() * stretch.value()));
    let (body, band) = (zone(hat.size.girth, hat.gauge.body_stretch), zone(hat.size.band_girth, hat.gauge.band_stretch));
    fact("Stretched", &["body ", &body, ", band ", &band, ": it reaches ", &l(hat.size.reach)].concat());
    fact("Depth", &[&l(depth.promised), " from the crown to the edge; ", &l(depth.wanted), " wanted"].concat());
    let fold = if depth.fold.ticks() == 0 { String::new() } else { [", ", &l(depth.fold), " of it folded up"].concat() };
    let (pick, every) = hat.size.pick_up();
    let joined = if pick == every {
        [&hat.size.rows.to_string(), " rows, one stitch in each"].concat()
    } else {
        let counts = [hat.size.rows.get(), hat.size.stitches.get(), pick, every].map(|n| n.to_string());
        let [rows, stitches, pick, every] = &counts;
        [rows, " rows (", &l(hat.size.band_girth), " around); ", stitches, " stitches picked up, ", pick, " in every ", every]
            .concat()
    };
    let tall = shown.spec.band.height.to_string();
    fact("Band", &[&tall, " stitches tall: ", &l(depth.band), &fold, "; ", &joined].concat());
    let straight = depth.straight.get();
    let shaped = (hat.round_count().get() - straight).to_string();
    let body = if hat.first_decrease().is_some() {
        [
            &straight.to_string(),
            " rounds straight, then ",
            &shaped,
            " to shape the crown; ",
            &l(depth.above_band),
            " above the band",
        ]
        .concat()
    } else {
        [&straight.to_string(), " rounds straight; ", &l(depth.above_band), " above the band"].concat()
    };
    fact("Body", &body);
    let last = hat.top.stitches.to_string();
    fact("Top", &[last.as_str(), if hat.top.gathered { " stitches gathered" } else { " stitches drawn up" }].concat());
    html.raw("</dl><p id=\"fit-sentence\">").text(&say::fit_sentence(hat, units)).raw("</p><p class=\"note\">");
    html.text(&say::ribbed_sentence(hat)).raw("</p><ul class=\"told\">");
    // What stands under the picture or among the cautions is not said again.
    let elsewhere = |r: &&Remark| matches!(r, Remark::StripesMoved { .. } | Remark::SmallParts | Remark::BabySleep);
    for remark in hat.remarks.iter().filter(|r| !elsewhere(r)) {
        let text = say::remark(remark, hat, units);
        if !text.is_empty() {
            html.element("li", &text);
        }
    }
    html.raw("</ul>");
    let cautions = say::cautions(hat, shown.spec.pom_pom.is_some());
    if !cautions.is_empty() {
        html.raw("<div class=\"care\" role=\"note\"><h3>Keep the wearer safe</h3><ul>");
        for caution in &cautions {
            html.raw("<li>").text(&caution.text).raw(" ").element("small", caution.source).raw("</li>");
        }
        html.raw("</ul></div>");
    }
    html.done()
}
