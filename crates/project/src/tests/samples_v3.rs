//! Documents and links of form 3 as they were first written. The files are frozen: see `versions/v3.rs` before touching one.

use super::id;
use crate::{ColourName, Designer, Hand, Linked, Project, Rgb, Terms, Units, example, from_link, open, to_json};
use hatwright_sizing::{
    Ball, BandKind, BandSpec, Begun, Closing, Colour, Count, Coverage, Edge, Extra, Fabric, HatSpec, Head, Instead, KeptUse,
    Layout, Length, Mass, Money, Ratio, RoundStripe, Rounds, RowStripe, Rows, Shape, SideTop, Stitches, Stretch, Style, Swatch,
    Taste, Topper, TopperKind, Unravelled, UseWay, Way, WeighedSwatch, YarnUse, YarnWeight,
};

macro_rules! sample {
    ($name:literal) => {
        (include_str!(concat!("../../samples/v3/", $name, ".json")), include_str!(concat!("../../samples/v3/", $name, ".link")))
    };
}

/// The file opens to just this hat, which is written back in the current form, and its link holds the same hat but for what stays at
/// home.
fn check((json, link): (&str, &str), expected: &Project) {
    assert_eq!(&open(json).unwrap(), expected);
    assert_eq!(open(&to_json(expected)).as_ref(), Ok(expected));
    let Project { name, units, terms, colours, mut spec, .. } = expected.clone();
    (spec.instead, spec.yarn_use.hat) = (None, None);
    let (hand, designer, sizes) = (Hand::Right, Designer::default(), Vec::new());
    assert_eq!(from_link(link), Ok(Linked { planner: 3, name, units, terms, hand, colours, designer, sizes, spec }));
}

/// A plain hat of the time, every field of it.
fn plain() -> HatSpec {
    let ten = Length::from_cm(10.0);
    HatSpec {
        head: Head::Measured(Length::from_cm(56.0)),
        over_top: None,
        lining: Length::ZERO,
        style: Style::Fitted,
        shape: Shape {
            slouch_wider: Ratio::of(0.15),
            slouch_longer: Length::from_cm(5.0),
            tail: Length::from_cm(45.0),
            taper: Length::from_cm(30.0),
            tail_stitches: Stitches::new(10),
            tam_across: Length::from_cm(24.5),
            flap_length: Length::from_cm(8.0),
            flap_tie: Length::ZERO,
            brim: Length::from_cm(6.0),
            flare: Ratio::of(1.0),
            side_wedges: 6,
            side_top: SideTop::Gathered,
        },
        begun: Begun::Band,
        way: Way::Spiral,
        fabric: Fabric::Single,
        swatch: Swatch::Counted { stitches: Count::whole(14), width: ten, rounds: Count::whole(16), height: ten },
        hook: Some(Length::from_ticks(500)),
        strands: 1,
        body_stretch: Stretch::Usual,
        ease: Ratio::of(0.07),
        coverage: Coverage::OverEars,
        band: BandSpec {
            kind: BandKind::Sideways,
            fabric: Fabric::SingleBack,
            edge: Edge::Chainless,
            hook: None,
            rounds: Rounds::new(6),
            height: Stitches::new(10),
            fold: Length::ZERO,
            swatch: None,
            stretch: Stretch::Usual,
            stripes: vec![
                RowStripe { colour: Colour(0), rows: Rows::new(2) },
                RowStripe { colour: Colour(1), rows: Rows::new(2) },
            ],
        },
        body_stripes: vec![RoundStripe { colour: Colour(0), rounds: Rounds::new(6) }],
        layout: Layout::Spread,
        closing: Closing::Drawn,
        topper: None,
        balls: vec![Ball::of(Count::whole(120)); 2],
        extra: Extra::Chance(Ratio::of(0.95)),
        yarn_use: YarnUse {
            weighed: None,
            unravelled: None,
            kept: None,
            hat: None,
            scale: Mass::from_grams(1.0),
            swatch_kept: false,
        },
        instead: None,
        chosen: None,
        taste: Taste::Balanced,
        kept: None,
    }
}

fn colour(name: &str, hex: &str, yarn: &str, lot: &str) -> ColourName {
    let hex = Rgb::parse(hex).unwrap();
    ColourName { name: name.to_owned(), hex, yarn: yarn.to_owned(), lot: lot.to_owned() }
}

fn project(number: u8, name: &str, units: Units, colours: Vec<ColourName>, spec: HatSpec) -> Project {
    Project {
        id: id(&format!("rowingclub{number:02}")),
        revision: number.into(),
        name: name.to_owned(),
        units,
        terms: Terms::Us,
        hand: Hand::Right,
        designer: Designer::default(),
        sizes: Vec::new(),
        colours,
        notes: String::new(),
        spec,
        changed_ms: 1_795_000_000_000,
    }
}

#[test]
fn club_cap() {
    let project = Project { revision: 1, changed_ms: 1_795_000_000_000, ..example(id("rowingclub01")) };
    check(sample!("club-cap"), &project);
}

#[test]
fn weighed_stocking_cap_with_a_tassel() {
    let weight = YarnWeight::new(3).ok();
    let ball = |owned| Ball {
        grams: Some(Mass::from_grams(50.0)),
        weight,
        owned: Count::from_ticks(owned),
        price: Some(Money::from_ticks(450)),
        ..Ball::of(Count::from_ticks(16_050))
    };
    let mut spec = HatSpec {
        style: Style::Stocking,
        topper: Some(Topper {
            kind: TopperKind::Tassel,
            size: Length::from_cm(9.0),
            fullness: Ratio::of(1.5),
            colour: Some(Colour(1)),
        }),
        balls: vec![ball(150), ball(0)],
        extra: Extra::Chance(Ratio::of(0.99)),
        ..plain()
    };
    let (stitches, grams) = (Stitches::new(400), Mass::from_ticks(715));
    spec.yarn_use.weighed = Some(WeighedSwatch { colour: Colour(1), band: true, stitches, grams });
    spec.yarn_use.kept = Some(KeptUse { factor: Ratio::of(1.08), doubt: Ratio::of(0.09), way: UseWay::Hat });
    spec.yarn_use.scale = Mass::from_ticks(10);
    let colours = vec![colour("Indigo", "#34516f", "Regatta sport", "B7 0412"), colour("Weld", "#c79a2b", "Regatta sport", "")];
    let project = project(11, "Rowing club, tasselled stocking cap", Units::Centimetres, colours, spec);
    check(sample!("weighed-tassel"), &project);
}

#[test]
fn unravelled_and_weighed_up_against_another_yarn_in_inches() {
    let four = Length::from_inches(4.0);
    let mut spec = HatSpec {
        topper: Some(Topper { kind: TopperKind::PomPom, size: Length::from_inches(2.5), fullness: Ratio::of(1.0), colour: None }),
        balls: vec![Ball::of(Count::whole(110)), Ball { owned: Count::whole(2), ..Ball::of(Count::whole(90)) }],
        extra: Extra::Share(Ratio::of(0.1)),
        instead: Some(Instead {
            yarn: Count::from_ticks(9_600),
            grams: Some(Mass::from_ticks(5_670)),
            weight: YarnWeight::new(5).ok(),
            swatch: Some(Swatch::Counted { stitches: Count::whole(13), width: four, rounds: Count::whole(15), height: four }),
        }),
        ..plain()
    };
    spec.yarn_use.unravelled = Some(Unravelled { band: false, stitches: Stitches::new(24), length: Length::from_cm(131.5) });
    spec.yarn_use.hat = Some(Mass::from_ticks(6_850));
    spec.yarn_use.swatch_kept = true;
    let colours = vec![colour("Madder", "#9c3b2e", "Slipway worsted", "12"), colour("", "#e8dfcc", "Stake-boat tweed", "")];
    let project = project(12, "Rowing club, bow cap", Units::Inches, colours, spec);
    check(sample!("instead-inches"), &project);
}

/// What a document calls a choice, and by which number a link does.
#[test]
fn choices_keep_their_names_and_numbers() {
    fn told<T: serde::Serialize>(choice: T, name: &str, number: u8) {
        assert_eq!(serde_json::to_value(&choice).unwrap(), name);
        assert_eq!(postcard::to_allocvec(&choice).unwrap(), [number], "{name}");
    }
    told(TopperKind::PomPom, "PomPom", 0);
    told(TopperKind::Tassel, "Tassel", 1);
    for (number, (way, name)) in
        [(UseWay::Estimated, "Estimated"), (UseWay::Weighed, "Weighed"), (UseWay::Unravelled, "Unravelled"), (UseWay::Hat, "Hat")]
            .into_iter()
            .enumerate()
    {
        told(way, name, number as u8);
    }
}
