//! The finished hat in facts, and what its maker should be told.

use crate::ask::is_hint;
use crate::bench::{Bench, Shown};
use crate::erase::{flag, memo, words};
use crate::html::Html;
use crate::see::stale;
use hatwright_pattern::{figures, say};
use hatwright_sizing::{BandKind, Begun, Hat, Length, Ratio, Remark, Style, TopKind, Zone};
use leptos::prelude::*;

/// The section.
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
    let hat = &shown.hat;
    let mut html = Html::new();
    html.raw("<dl>");
    for (term, text) in facts_of(shown, units) {
        if !text.is_empty() {
            html.raw("<div>").element("dt", term).element("dd", &text).raw("</div>");
        }
    }
    html.raw("</dl><ul class=\"told\">");
    // What stands under the picture, beside the swatch, by the rounds or among the cautions is not said again.
    let elsewhere = |r: &&Remark| {
        matches!(
            r,
            Remark::StripesMoved { .. }
                | Remark::SmallParts
                | Remark::BabySleep
                | Remark::LongParts
                | Remark::PlanKept(_)
                | Remark::KeptDropped
        ) || is_hint(r)
    };
    for remark in hat.remarks.iter().filter(|r| !elsewhere(r)) {
        let text = say::remark(remark, hat, units);
        if !text.is_empty() {
            html.element("li", &text);
        }
    }
    html.raw("</ul>");
    let cautions = say::cautions(hat, shown.spec.wears().is_some());
    if !cautions.is_empty() {
        html.raw("<div class=\"care\" role=\"note\"><h3>Keep the wearer safe</h3><ul>");
        for caution in &cautions {
            html.raw("<li>").text(&caution.text).raw(" ").element("small", caution.source).raw("</li>");
        }
        html.raw("</ul></div>");
    }
    html.done()
}

/// Each fact under its name; one without words does not concern this hat.
fn facts_of(shown: &Shown, units: figures::Units) -> [(&'static str, String); 8] {
    let (hat, depth) = (&shown.hat, &shown.hat.depth);
    let l = |x| figures::length(x, units);
    let ease = if hat.size.ease.ticks() < 0 {
        "larger than the head".to_owned()
    } else {
        [&figures::percent(hat.size.ease), " smaller than the head"].concat()
    };
    let zone = |girth: Length, stretch: Ratio| l(Length::from_cm(girth.cm() * stretch.value()));
    let body = zone(hat.size.girth, hat.gauge.body_stretch);
    let band = zone(hat.size.band_girth, hat.gauge.band_stretch);
    let reach = ["it reaches ", &l(hat.size.reach)].concat();
    let reach = match (hat.style, hat.band) {
        (Style::EarWarmer, _) | (_, BandKind::None) => reach,
        _ => ["body ", &body, ", band ", &band, ": ", &reach].concat(),
    };
    let deep = if hat.top.is_some() {
        [&l(depth.promised), " from the crown to the edge; ", &l(depth.wanted), " wanted"].concat()
    } else {
        String::new()
    };
    [
        ("Finished girth", [&l(hat.size.girth), " relaxed, ", &ease].concat()),
        ("Stretched", reach),
        ("Depth", deep),
        ("Band", band_of(shown, units)),
        ("Body", body_of(hat, units)),
        ("Flaps", flaps_of(hat, units)),
        ("Brim", brim_of(hat)),
        ("Top", top_of(hat)),
    ]
}

fn band_of(shown: &Shown, units: figures::Units) -> String {
    let (hat, depth) = (&shown.hat, &shown.hat.depth);
    let l = |x| figures::length(x, units);
    let fold = if depth.fold == Length::ZERO { String::new() } else { [", ", &l(depth.fold), " of it folded up"].concat() };
    match hat.band {
        BandKind::None if fold.is_empty() => String::new(),
        BandKind::None => [&l(depth.fold), " of the edge folded up"].concat(),
        BandKind::Around => [&figures::plural(shown.spec.band.rounds.get(), "round"), " tall: ", &l(depth.band), &fold].concat(),
        BandKind::Sideways => {
            let tall = shown.spec.band.height.to_string();
            let rows = hat.size.rows.to_string();
            let (pick, every) = hat.size.pick_up();
            let joined = if hat.rounds.is_empty() {
                [&*rows, " rows around"].concat()
            } else if pick == every {
                [&*rows, " rows, one stitch in each"].concat()
            } else {
                let [stitches, pick, every] = [hat.size.stitches.get(), pick, every].map(|n| n.to_string());
                let verb = if hat.begun == Begun::Crown { " joined on, " } else { " stitches picked up, " };
                [&*rows, " rows (", &l(hat.size.band_girth), " around); ", &stitches, verb, &pick, " in every ", &every].concat()
            };
            [&tall, " stitches tall: ", &l(depth.band), &fold, "; ", &joined].concat()
        }
    }
}

fn body_of(hat: &Hat, units: figures::Units) -> String {
    if let Some(panel) = &hat.panel {
        let rows = figures::plural(panel.rows.len() as u32, "row");
        return [&rows, " of ", &panel.stitches.to_string(), " stitches, worked sideways and seamed"].concat();
    }
    if hat.top.is_none() {
        return String::new();
    }
    let count = |of: &dyn Fn(Zone) -> bool| hat.rounds.iter().filter(|r| of(r.zone)).count() as u32;
    let straight = hat.depth.straight.get();
    let tail = count(&|z| z == Zone::Tail);
    let above = count(&|z| !matches!(z, Zone::Band | Zone::Brim)).saturating_sub(straight + tail);
    let order = if hat.begun == Begun::Crown { "straight, after " } else { "straight, then " };
    let mut text = [&figures::plural(straight, "round"), " "].concat();
    if above > 0 {
        text.push_str(&[order, &figures::plural(above, "round"), " to shape it"].concat());
    } else {
        text.push_str("straight");
    }
    if tail > 0 {
        text.push_str(&[", and ", &figures::plural(tail, "round"), " of tail"].concat());
    }
    let foot = if hat.band == BandKind::None { " in all" } else { " above the band" };
    text.push_str(&["; ", &figures::length(hat.depth.above_band, units), foot].concat());
    text
}

fn flaps_of(hat: &Hat, units: figures::Units) -> String {
    let Some(flaps) = &hat.flaps else { return String::new() };
    let wide = flaps.rows.first().map_or(0, |r| r.before).to_string();
    let mut text = ["two, ", &wide, " stitches wide and ", &figures::length(flaps.length, units), " long"].concat();
    if flaps.tie > Length::ZERO {
        text.push_str(&[", ties of ", &figures::length(flaps.tie, units)].concat());
    }
    text
}

fn brim_of(hat: &Hat) -> String {
    let brim: Vec<u32> = hat.rounds.iter().filter(|r| r.zone == Zone::Brim).map(|r| r.after.get()).collect();
    let (Some(first), Some(last)) = (brim.first(), brim.last()) else { return String::new() };
    [&figures::plural(brim.len() as u32, "round"), ", from ", &first.to_string(), " to ", &last.to_string(), " stitches"].concat()
}

fn top_of(hat: &Hat) -> String {
    let Some(top) = &hat.top else { return String::new() };
    let count = top.stitches.to_string();
    let how = match top.kind {
        TopKind::Drawn => " stitches drawn up",
        TopKind::Gathered => " stitches gathered",
        TopKind::Ring => " stitches in an adjustable ring",
        TopKind::RowEnds => " row ends gathered",
    };
    [&count, how].concat()
}
