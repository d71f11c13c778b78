//! The finished hat in facts, and what its maker should be told.

use crate::ask::is_hint;
use crate::bench::{Bench, Shown};
use crate::erase::{flag, memo, words};
use crate::html::Html;
use crate::see::stale;
use hatwright_pattern::{figures, say};
use hatwright_sizing::{BandKind, Begun, Hat, Length, Ratio, Remark, Style, TopKind, Zone};
use hatwright_words::see;
use leptos::prelude::*;

/// The section.
pub fn facts(bench: Bench) -> AnyView {
    let told = memo(move || {
        let units = bench.figure_units();
        bench.shown.with(|s| told(s, units))
    });
    view! {
        <section class="facts card" aria-labelledby="facts-title" class:stale=flag(move || stale(bench))>
            <h2 id="facts-title">{see::facts_title()}</h2>
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
        html.raw("<div class=\"care\" role=\"note\">").element("h3", see::care_title()).raw("<ul>");
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
    let girth = l(hat.size.girth);
    let girth = if hat.size.ease.ticks() < 0 {
        see::girth_larger(&girth)
    } else {
        see::girth_smaller(&girth, &figures::percent(hat.size.ease))
    };
    let zone = |girth: Length, stretch: Ratio| l(Length::from_cm(girth.cm() * stretch.value()));
    let body = zone(hat.size.girth, hat.gauge.body_stretch);
    let band = zone(hat.size.band_girth, hat.gauge.band_stretch);
    let reach = l(hat.size.reach);
    let reach = match (hat.style, hat.band) {
        (Style::EarWarmer, _) | (_, BandKind::None) => see::reaches(&reach),
        _ => see::zones_reach(&body, &band, &reach),
    };
    let deep = if hat.top.is_some() { see::depth_told(&l(depth.promised), &l(depth.wanted)) } else { String::new() };
    [
        (see::girth(), girth),
        (see::stretched(), reach),
        (see::depth(), deep),
        (see::band(), band_of(shown, units)),
        (see::body(), body_of(hat, units)),
        (see::flaps(), flaps_of(hat, units)),
        (see::brim(), brim_of(hat)),
        (see::top(), top_of(hat)),
    ]
}

fn band_of(shown: &Shown, units: figures::Units) -> String {
    let (hat, depth) = (&shown.hat, &shown.hat.depth);
    let l = |x| figures::length(x, units);
    let (height, fold, folded) = (l(depth.band), l(depth.fold), depth.fold != Length::ZERO);
    let (rounds, stitches) = (shown.spec.band.rounds.get(), shown.spec.band.height.get());
    match (hat.band, folded) {
        (BandKind::None, false) => String::new(),
        (BandKind::None, true) => see::edge_folded(&fold),
        (BandKind::Around, false) => see::band_rounds(rounds, &height),
        (BandKind::Around, true) => see::band_rounds_folded(rounds, &height, &fold),
        (BandKind::Sideways, false) => rows_of(hat, &see::band_stitches(stitches, &height), units),
        (BandKind::Sideways, true) => rows_of(hat, &see::band_stitches_folded(stitches, &height, &fold), units),
    }
}

/// A band that is worked sideways, with its rows and how the body goes on from them.
fn rows_of(hat: &Hat, band: &str, units: figures::Units) -> String {
    let (rows, stitches, girth) = (hat.size.rows.get(), hat.size.stitches.get(), figures::length(hat.size.band_girth, units));
    match hat.size.pick_up() {
        _ if hat.rounds.is_empty() => see::band_rows(band, rows),
        (pick, every) if pick == every => see::band_rows_each(band, rows),
        (pick, every) if hat.begun == Begun::Crown => see::band_rows_joined(band, rows, &girth, stitches, pick, every),
        (pick, every) => see::band_rows_picked(band, rows, &girth, stitches, pick, every),
    }
}

fn body_of(hat: &Hat, units: figures::Units) -> String {
    if let Some(panel) = &hat.panel {
        return see::body_rows(panel.rows.len() as u32, panel.stitches.get());
    }
    if hat.top.is_none() {
        return String::new();
    }
    let count = |of: &dyn Fn(Zone) -> bool| hat.rounds.iter().filter(|r| of(r.zone)).count() as u32;
    let straight = hat.depth.straight.get();
    let tail = count(&|z| z == Zone::Tail);
    let shaped = count(&|z| !matches!(z, Zone::Band | Zone::Brim)).saturating_sub(straight + tail);
    let mut text = match (shaped, hat.begun) {
        (0, _) => see::straight(straight),
        (_, Begun::Crown) => see::straight_after(straight, shaped),
        (_, Begun::Band) => see::straight_then(straight, shaped),
    };
    if tail > 0 {
        text = see::with_tail(&text, tail);
    }
    let length = figures::length(hat.depth.above_band, units);
    if hat.band == BandKind::None { see::in_all(&text, &length) } else { see::above_band(&text, &length) }
}

fn flaps_of(hat: &Hat, units: figures::Units) -> String {
    let Some(flaps) = &hat.flaps else { return String::new() };
    let wide = flaps.rows.first().map_or(0, |r| r.before);
    let length = figures::length(flaps.length, units);
    if flaps.tie > Length::ZERO {
        see::flaps_tied(wide, &length, &figures::length(flaps.tie, units))
    } else {
        see::flaps_told(wide, &length)
    }
}

fn brim_of(hat: &Hat) -> String {
    let brim: Vec<u32> = hat.rounds.iter().filter(|r| r.zone == Zone::Brim).map(|r| r.after.get()).collect();
    let (Some(first), Some(last)) = (brim.first(), brim.last()) else { return String::new() };
    see::brim_told(brim.len() as u32, *first, *last)
}

fn top_of(hat: &Hat) -> String {
    let Some(top) = &hat.top else { return String::new() };
    let told = match top.kind {
        TopKind::Drawn => see::top_drawn,
        TopKind::Gathered => see::top_gathered,
        TopKind::Ring => see::top_ring,
        TopKind::RowEnds => see::top_row_ends,
    };
    told(top.stitches.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{HatSpec, Stitches, plan};
    use hatwright_words::{Language, in_language};

    fn facts(change: impl FnOnce(&mut HatSpec)) -> String {
        let mut spec = HatSpec::default();
        change(&mut spec);
        let hat = plan(&spec).unwrap_or_else(|why| panic!("{why:?}"));
        let shown = Shown { spec, hat, refusal: None };
        let told = || {
            let all = facts_of(&shown, figures::Units::Centimetres);
            all.into_iter().filter(|(_, text)| !text.is_empty()).map(|(term, text)| format!("{term}: {text}")).collect::<Vec<_>>()
        };
        [told().join("\n"), in_language(Language::Spanish, told).join("\n")].join("\n\n")
    }

    #[track_caller]
    fn told(told: &str, lines: &[&str]) {
        for line in lines {
            assert!(told.lines().any(|own| own == *line), "“{line}” is not in:\n{told}");
        }
    }

    #[test]
    fn facts_are_told_in_both_languages() {
        told(
            &facts(|_| {}),
            &[
                "Finished girth: 46.7 cm relaxed, 6.2 % smaller than the head",
                "Stretched: body 51.3 cm, band 63.0 cm: it reaches 51.3 cm",
                "Band: 10 stitches tall: 8.3 cm, 4.2 cm of it folded up; 56 rows, one stitch in each",
                "Body: 7 rounds straight, then 15 rounds to shape it; 15.5 cm above the band",
                "Contorno terminado: 46,7 cm sin estirar, un 6,2\u{a0}% menos que la cabeza",
                "Estirado: cuerpo 51,3 cm, banda 63,0 cm: llega a 51,3 cm",
                "Banda: 10 puntos de alto: 8,3 cm, con 4,2 cm doblados hacia arriba; 56 hileras, un punto en cada una",
                "Cuerpo: 7 vueltas rectas y después 15 vueltas para dar forma; 15,5 cm por encima de la banda",
                "Cierre superior: 6 puntos cerrados con el hilo",
            ],
        );
        told(
            &facts(|s| s.style = Style::Sideways),
            &[
                "Band: 4.2 cm of the edge folded up",
                "Body: 72 rows of 27 stitches, worked sideways and seamed",
                "Banda: 4,2 cm del borde doblados hacia arriba",
                "Cuerpo: 72 hileras de 27 puntos, tejido de lado y con costura",
                "Cierre superior: 72 extremos de hilera fruncidos",
            ],
        );
    }

    #[test]
    fn flaps_and_their_ties_are_told() {
        let flaps = |tie: f64| {
            facts(|s| {
                (s.style, s.band.height, s.band.fold) = (Style::EarFlap, Stitches::new(5), Length::ZERO);
                s.shape.flap_tie = Length::from_cm(tie);
            })
        };
        let bare = flaps(0.0);
        assert!(bare.contains("Flaps: two, ") && !bare.contains("ties"), "{bare}");
        assert!(bare.contains("Orejeras: dos, de ") && !bare.contains("cordones"), "{bare}");
        let tied = flaps(25.0);
        assert!(tied.contains(" long, ties of 25.0 cm") && tied.contains(" de largo, con cordones de 25,0 cm"), "{tied}");
    }
}
