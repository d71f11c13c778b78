//! The numbers that answer the question, whatever the kind of hat.

use crate::bench::Shown;
use hatwright_sizing::{BandKind, Style};

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
            figure(panel.rows.len() as u32, "rows around", "rows"),
            figure(panel.stitches.get(), "stitches from edge to crown", "st"),
        ],
        (None, Style::EarWarmer, BandKind::Sideways) => {
            [figure(hat.size.rows.get(), "rows around", "rows"), figure(shown.spec.band.height.get(), "stitches tall", "st")]
        }
        (None, _, band) => [
            figure(hat.stitches().get(), "stitches around", "st"),
            figure(
                hat.round_count().get(),
                match (hat.style, band) {
                    (Style::EarWarmer, _) => "rounds tall",
                    (_, BandKind::Sideways) => "rounds above the band",
                    _ => "rounds in all",
                },
                "rnd",
            ),
        ],
    }
}
