//! The numbers that answer the question, whatever the kind of hat.

use crate::bench::Shown;
use hatwright_sizing::{BandKind, Style};
use hatwright_words::see;

/// One number, with what it counts: in words, and as short as a phone's bar has room for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Figure {
    /// How many.
    pub count: u32,
    /// Of what.
    pub words: &'static str,
    /// The same in short.
    pub short: &'static str,
}

/// What lies around the head, and what lies between edge and crown.
pub fn headline(shown: &Shown) -> [Figure; 2] {
    let hat = &shown.hat;
    let figure = |count, words, short| Figure { count, words, short };
    match (&hat.panel, hat.style, hat.band) {
        (Some(panel), ..) => [
            figure(panel.rows.len() as u32, see::rows_around(), see::rows()),
            figure(panel.stitches.get(), see::edge_to_crown(), see::st()),
        ],
        (None, Style::EarWarmer, BandKind::Sideways) => [
            figure(hat.size.rows.get(), see::rows_around(), see::rows()),
            figure(shown.spec.band.height.get(), see::stitches_tall(), see::st()),
        ],
        (None, _, band) => [
            figure(hat.stitches().get(), see::stitches_around(), see::st()),
            figure(
                hat.round_count().get(),
                match (hat.style, band) {
                    (Style::EarWarmer, _) => see::rounds_tall(),
                    (_, BandKind::Sideways) => see::rounds_above(),
                    _ => see::rounds_in_all(),
                },
                see::rnd(),
            ),
        ],
    }
}
