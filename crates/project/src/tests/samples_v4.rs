//! Documents and links of form 4 as they were first written. The files are frozen: see `versions/v4.rs` before touching one.

use super::id;
use crate::{ColourName, Designer, Hand, Linked, Project, Rgb, SizeOf, Terms, Units, example, from_link, open, to_json};
use hatwright_sizing::{
    Age, Ball, BandKind, BandSpec, Begun, Build, Closing, Colour, Count, Coverage, Day, Edge, Extra, Fabric, HatSpec, Head,
    Layout, Length, Mass, Ratio, RoundStripe, Rounds, RowStripe, Rows, Sex, Shape, SideTop, Stitches, Stretch, Style, Swatch,
    Taste, Way, YarnUse, YarnWeight, head_size,
};
use serde_json::Value;

macro_rules! sample {
    ($name:literal) => {
        (include_str!(concat!("../../samples/v4/", $name, ".json")), include_str!(concat!("../../samples/v4/", $name, ".link")))
    };
}

/// The file opens to just this hat, is written back with the same meaning, and its link holds the same hat but for what stays at home.
fn check((json, link): (&str, &str), expected: &Project) {
    assert_eq!(&open(json).unwrap(), expected);
    let values: [Value; 2] = [json, &to_json(expected)].map(|text| serde_json::from_str(text).unwrap());
    assert_eq!(values[0], values[1]);
    let Project { name, units, terms, hand, colours, designer, mut sizes, mut spec, .. } = expected.clone();
    for head in sizes.iter_mut().map(|size| &mut size.head).chain([&mut spec.head]) {
        if let Head::ByDates { .. } = head {
            *head = Head::Measured(head_size(head).girth);
        }
    }
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
            slouch_longer: Length::from_cm(5.5),
            tail: Length::from_cm(33.5),
            taper: Length::from_cm(33.5),
            tail_stitches: Stitches::new(10),
            tam_across: Length::from_cm(27.5),
            flap_length: Length::from_cm(9.0),
            flap_tie: Length::ZERO,
            brim: Length::from_cm(6.5),
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
        balls: vec![
            Ball {
                yarn: Count::whole(120),
                grams: Some(Mass::from_grams(50.0)),
                weight: YarnWeight::new(4).ok(),
                owned: Count::from_ticks(0),
                price: None,
            };
            2
        ],
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

fn size(name: &str, head: Head) -> SizeOf {
    SizeOf { name: name.to_owned(), head }
}

fn by_age(age: Age) -> Head {
    Head::ByAge { age, sex: Sex::Unknown, build: Build::Average }
}

fn project(number: u8, name: &str, terms: Terms, designer: Designer, sizes: Vec<SizeOf>) -> Project {
    let colour = |name: &str, hex: &str| ColourName {
        name: name.to_owned(),
        hex: Rgb::parse(hex).unwrap(),
        yarn: "Slipway worsted".to_owned(),
        lot: String::new(),
    };
    Project {
        id: id(&format!("rowingclub{number:02}")),
        revision: number.into(),
        name: name.to_owned(),
        units: Units::Both,
        terms,
        hand: Hand::Left,
        colours: vec![colour("Madder", "#9c3b2e"), colour("Undyed", "#e8dfcc")],
        notes: String::new(),
        designer,
        sizes,
        spec: plain(),
        changed_ms: 1_795_700_000_000,
    }
}

#[test]
fn club_cap() {
    let project = Project { revision: 1, changed_ms: 1_795_700_000_000, ..example(id("rowingclub01")) };
    check(sample!("club-cap"), &project);
}

/// Everything that a designer can say, and sizes of every kind of head.
#[test]
fn published_cap() {
    let designer = Designer {
        introduction: "For the bow seat: warm, and out of the way of the oar.\n\nMade for a whole crew.".to_owned(),
        credit: "The rowing club’s winter workshop".to_owned(),
        edition: "2, corrected".to_owned(),
        date: "November 2026".to_owned(),
        tested: "Four of the second eight made it.\nAll four fit.".to_owned(),
        care: "Cool, by hand.\nDry it flat.".to_owned(),
    };
    let born = Head::ByDates { born: Day(19_000), worn: Day(20_461), sex: Sex::Female, build: Build::Large };
    let sizes = vec![
        size("Baby", by_age(Age::Weeks(Count::whole(20)))),
        size("18 months", by_age(Age::Months(Count::whole(18)))),
        size("", by_age(Age::Years(Count::whole(8)))),
        size("The cox’s daughter", born),
        size("Crew, L", Head::Measured(Length::from_inches(23.5))),
        size("", Head::ByAge { age: Age::Years(Count::whole(40)), sex: Sex::Male, build: Build::Percentile(Ratio::of(0.97)) }),
    ];
    check(sample!("published"), &project(21, "Rowing club, bow cap", Terms::Uk, designer, sizes));
}

/// A few words, no sizes.
#[test]
fn credited_cap() {
    let designer = Designer { credit: "Boathouse".to_owned(), edition: "1".to_owned(), ..Designer::default() };
    let mut project = project(22, "Rowing club, stroke cap", Terms::Us, designer, Vec::new());
    project.hand = Hand::Right;
    check(sample!("credited"), &project);
}

/// What a document calls a choice, and by which number a link does.
#[test]
fn choices_keep_their_names_and_numbers() {
    fn told<T: serde::Serialize>(choice: T, name: &str, number: u8) {
        assert_eq!(serde_json::to_value(&choice).unwrap(), name);
        assert_eq!(postcard::to_allocvec(&choice).unwrap(), [number], "{name}");
    }
    told(Units::Centimetres, "Centimetres", 0);
    told(Units::Inches, "Inches", 1);
    told(Units::Both, "Both", 2);
    told(Terms::Us, "Us", 0);
    told(Terms::Uk, "Uk", 1);
    assert_eq!([Hand::Right, Hand::Left].map(|hand| serde_json::to_value(hand).unwrap()), ["Right", "Left"]);
}
