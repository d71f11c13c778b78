//! The list of fabrics, for body and band.

use crate::bench::{Bench, Seat};
use crate::erase::{memo, words};
use crate::html::Html;
use crate::pick::{option, pick};
use hatwright_project::Terms;
use hatwright_sizing::{BandKind, Fabric, HatSpec, Loops};
use hatwright_words::ask;
use leptos::prelude::*;

/// What a fabric is called: by its stitch and where that goes.
pub fn name(fabric: Fabric, terms: Terms) -> String {
    let row = fabric.row();
    let stitch = terms.written().words().name(row.stitch);
    match (fabric, row.loops) {
        (Fabric::SlipRib, _) => ask::slip_rib().to_owned(),
        (_, Loops::Posts) => ask::post_rib().to_owned(),
        (_, Loops::Both) => capital(stitch.to_owned()),
        (_, Loops::Back) => capital(ask::back_loops(stitch)),
        (_, Loops::Front) => capital(ask::front_loops(stitch)),
    }
}

fn capital(mut text: String) -> String {
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    text
}

/// The list for the body, or for the band.
pub fn fabrics(bench: Bench, band: bool) -> AnyView {
    let fits = move |s: &HatSpec, fabric: Fabric| if band { fabric.bands(s.band_kind()) } else { fabric.bodies(s.style) };
    let list = memo(move || {
        let terms = bench.terms.get();
        bench.project.with(|p| {
            let mut html = Html::new();
            let chosen = if band { p.spec.band_fabric() } else { p.spec.fabric };
            for fabric in Fabric::ALL.iter().filter(|f| fits(&p.spec, **f)) {
                option(&mut html, fabric.row().key, &name(*fabric, terms), *fabric == chosen);
            }
            html.done()
        })
    });
    let set = move |picked: String| {
        if let Some(fabric) = Fabric::ALL.iter().find(|f| f.row().key == picked) {
            bench.shape(|s| *(if band { &mut s.band.fabric } else { &mut s.fabric }) = *fabric);
        }
    };
    let wrong = words(move || match bench.refused() {
        Some((Seat::Fabric, why)) if !band => why,
        _ => String::new(),
    });
    let (id, label) = if band { ("band-fabric", ask::band_fabric()) } else { ("fabric", ask::body_fabric()) };
    view! {
        <div class="fabric">
            {pick(id.to_owned(), label, words(move || list.get()), set)}
            <p class="says">{wrong}</p>
        </div>
    }
    .into_any()
}

/// Works the band in another way, which may have a fabric of its own.
pub fn take_band(bench: Bench, kind: BandKind) {
    let place = |kind: BandKind| usize::from(kind == BandKind::Around);
    let (was, now) = bench.project.with_untracked(|p| (p.spec.band_kind(), p.spec.band_fabric()));
    if was != BandKind::None {
        bench.aside.update_value(|a| a.band_fabrics[place(was)] = Some(now));
    }
    let usual = [Fabric::SingleBack, Fabric::PostRib][place(kind)];
    let fabric = bench.aside.with_value(|a| a.band_fabrics[place(kind)]).unwrap_or(usual);
    bench.shape(|s| {
        s.band.kind = kind;
        if kind != BandKind::None {
            s.band.fabric = fabric;
        }
    });
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::Style;

    #[test]
    fn every_fabric_has_a_name_of_its_own() {
        for terms in [Terms::Us, Terms::Uk] {
            let mut names: Vec<String> = Fabric::ALL.iter().map(|f| name(*f, terms)).collect();
            assert!(names.iter().all(|n| n.starts_with(char::is_uppercase)), "{names:?}");
            names.sort();
            names.dedup();
            assert_eq!(names.len(), Fabric::ALL.len());
        }
        assert_eq!(name(Fabric::HalfDoubleBack, Terms::Uk), "Half treble crochet, back loops");
    }

    #[test]
    fn the_usual_fabrics_suit() {
        assert!(Fabric::Single.bodies(Style::Fitted) && Fabric::SingleBack.bodies(Style::Sideways));
        assert!(Fabric::SingleBack.bands(BandKind::Sideways) && Fabric::PostRib.bands(BandKind::Around));
    }
}
