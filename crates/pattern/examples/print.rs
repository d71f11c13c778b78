//! Prints a few patterns to the terminal: every style, begun at the band or (with `crown`) at the crown.
//!
//! `cargo run -p hatwright-pattern --example print -- tam crown joined double uk`

use hatwright_pattern::figures::Units;
use hatwright_pattern::written::{About, Terms, print};
use hatwright_sizing::{Age, BandKind, Begun, Count, Edge, Fabric, HatSpec, Head, Length, Style, Way, plan};

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let says = |word: &str| words.iter().any(|w| w == word);
    let styles = ["fitted", "slouch", "stocking", "ear-warmer", "tam", "ear-flap", "brimmed", "sideways"];
    let style = styles.iter().position(|s| says(s)).map_or(Style::Fitted, |i| Style::ALL[i]);
    let mut spec = HatSpec { style, ..HatSpec::default() };
    if says("crown") {
        spec.begun = Begun::Crown;
    }
    if says("joined") {
        spec.way = Way::Joined;
    }
    if says("around") {
        spec.band.kind = BandKind::Around;
    }
    if says("none") {
        spec.band.kind = BandKind::None;
    }
    if says("loose") {
        spec.band.edge = Edge::LooseChain;
    }
    if says("plain") {
        spec.band.stripes.truncate(1);
        spec.body_stripes.truncate(1);
    }
    if says("adult") {
        spec.head = Head::Measured(Length::from_cm(57.0));
    }
    if says("baby") {
        let Head::ByAge { age, .. } = &mut spec.head else { return };
        *age = Age::Months(Count::whole(6));
    }
    if says("ties") {
        spec.shape.flap_tie = Length::from_cm(25.0);
    }
    if says("short-rows") {
        spec.shape.side_top = hatwright_sizing::SideTop::ShortRows;
    }
    if says("hooks") {
        (spec.hook, spec.band.hook, spec.strands) = (Some(Length::from_cm(0.5)), Some(Length::from_cm(0.45)), 2);
    }
    for fabric in Fabric::ALL {
        if says(fabric.row().key) {
            spec.fabric = *fabric;
        }
        if says(&["band-", fabric.row().key].concat()) {
            spec.band.fabric = *fabric;
        }
    }
    let terms = if says("uk") { Terms::Uk } else { Terms::Us };
    let about = About {
        title: "Rowing club cap",
        colour_names: &["indigo", "weld"],
        yarn_names: &["Boathouse wool"],
        terms,
        units: Units::Centimetres,
        version: "0.1.0",
        ..About::default()
    };
    match plan(&spec) {
        Ok(hat) => println!("{}", print(&hat, &spec, &about)),
        Err(refusal) => println!("{}", hatwright_pattern::say::refusal(&refusal, Units::Centimetres)),
    }
}
