//! Documents and links of form 1 as they were first written. The files are frozen: a hat that opened before still opens.

use super::id;
use crate::{ColourName, Designer, Hand, Linked, Project, Rgb, Terms, Units, from_link, open, to_json};
use hatwright_sizing::{
    Age, Ball, BandKind, BandSpec, BandSwatch, Begun, Build, Chosen, Closing, Colour, Count, Coverage, Edge, Extra, Fabric,
    HatSpec, Head, Layout, Length, Ratio, RoundStripe, Rounds, RowStripe, Rows, Sex, Shape, Stitches, Stretch, Style, Swatch,
    Taste, Topper, TopperKind, Way, YarnWeight,
};

macro_rules! sample {
    ($name:literal) => {
        (include_str!(concat!("../../samples/v1/", $name, ".json")), include_str!(concat!("../../samples/v1/", $name, ".link")))
    };
}

/// The file opens to just this hat, which is written back in the current form, and its link holds the same hat.
fn check((json, link): (&str, &str), expected: &Project) {
    assert_eq!(&open(json).unwrap(), expected);
    assert_eq!(open(&to_json(expected)).as_ref(), Ok(expected));
    let Project { name, units, terms, colours, spec, .. } = expected.clone();
    let (hand, designer, sizes) = (Hand::Right, Designer::default(), Vec::new());
    assert_eq!(from_link(link), Ok(Linked { planner: 1, name, units, terms, hand, colours, designer, sizes, spec }));
}

#[test]
fn club_cap() {
    let spec = HatSpec {
        head: Head::ByAge { age: Age::Years(Count::whole(4)), sex: Sex::Unknown, build: Build::Average },
        swatch: Swatch::Counted {
            stitches: Count::whole(12),
            width: Length::from_cm(10.0),
            rounds: Count::whole(15),
            height: Length::from_cm(10.0),
        },
        body_stretch: Stretch::Usual,
        ease: Ratio::of(0.07),
        coverage: Coverage::OverEars,
        band: BandSpec {
            height: Stitches::new(10),
            fold: Length::from_cm(4.2),
            swatch: None,
            stretch: Stretch::Usual,
            stripes: rows(&[(0, 2), (1, 2)]),
            ..form_1().band
        },
        body_stripes: rounds(&[(0, 6), (1, 2)]),
        layout: Layout::Spread,
        closing: Closing::Drawn,
        topper: Some(Topper::usual(TopperKind::PomPom).sized(Length::from_cm(6.0))),
        balls: vec![Ball::of(Count::whole(80)); 2],
        extra: Extra::Share(Ratio::of(0.25)),
        chosen: None,
        ..form_1()
    };
    let project = Project {
        id: id("rowingclub01"),
        revision: 12,
        name: "Rowing club, junior cap".to_owned(),
        units: Units::Centimetres,
        terms: Terms::Us,
        hand: Hand::Right,
        designer: Designer::default(),
        sizes: Vec::new(),
        colours: vec![colour("Indigo", "#34516f"), colour("Weld", "#c79a2b")],
        notes: "4 mm hook.\nWashed at 30 °C, dried flat.".to_owned(),
        spec,
        changed_ms: 1_760_000_000_000,
    };
    check(sample!("club-cap"), &project);
}

#[test]
fn gathered_in_inches_with_a_band_swatch_and_chosen_counts() {
    let four = Length::from_inches(4.0);
    let spec = HatSpec {
        head: Head::Measured(Length::from_inches(22.5)),
        swatch: Swatch::Counted { stitches: Count::whole(14), width: four, rounds: Count::whole(16), height: four },
        body_stretch: Stretch::Measured(Ratio::of(1.15)),
        ease: Ratio::of(0.05),
        coverage: Coverage::EarLobes,
        band: BandSpec {
            height: Stitches::new(12),
            fold: Length::from_inches(1.5),
            swatch: Some(BandSwatch { stitches: Count::whole(15), width: four, rows: Count::whole(15), length: four }),
            stretch: Stretch::Usual,
            stripes: rows(&[(0, 4), (1, 2), (0, 2)]),
            ..form_1().band
        },
        body_stripes: rounds(&[(0, 1)]),
        layout: Layout::Spread,
        closing: Closing::Gathered(Stitches::new(56)),
        topper: Some(Topper::usual(TopperKind::PomPom).sized(Length::from_inches(2.75))),
        balls: vec![Ball::of(Count::whole(100)); 2],
        extra: Extra::Share(Ratio::of(0.25)),
        chosen: Some(Chosen { rows: Rows::new(80), stitches: Stitches::new(76) }),
        ..form_1()
    };
    let project = Project {
        id: id("rowingclub04"),
        revision: 3,
        name: "Rowing club, coach's cap".to_owned(),
        units: Units::Inches,
        terms: Terms::Us,
        hand: Hand::Right,
        designer: Designer::default(),
        sizes: Vec::new(),
        colours: vec![colour("Walnut", "#6b4a2f"), colour("Weld", "#c79a2b")],
        notes: String::new(),
        spec,
        changed_ms: 1_760_000_100_000,
    };
    check(sample!("gathered-inches"), &project);
}

#[test]
fn baby_from_a_yarn_weight() {
    let spec = HatSpec {
        head: Head::ByAge { age: Age::Months(Count::whole(3)), sex: Sex::Unknown, build: Build::Average },
        swatch: Swatch::YarnWeight(YarnWeight::new(1).unwrap()),
        body_stretch: Stretch::Usual,
        ease: Ratio::of(0.02),
        coverage: Coverage::OverEars,
        band: BandSpec {
            height: Stitches::new(8),
            fold: Length::ZERO,
            swatch: None,
            stretch: Stretch::Usual,
            stripes: rows(&[(0, 2), (1, 2)]),
            ..form_1().band
        },
        body_stripes: rounds(&[(0, 4), (1, 2)]),
        layout: Layout::Spread,
        closing: Closing::Drawn,
        topper: None,
        balls: vec![Ball::of(Count::whole(210)); 2],
        extra: Extra::Share(Ratio::of(0.25)),
        chosen: None,
        ..form_1()
    };
    let project = Project {
        id: id("rowingclub03"),
        revision: 1,
        name: "Rowing club, baby cap".to_owned(),
        units: Units::Centimetres,
        terms: Terms::Us,
        hand: Hand::Right,
        designer: Designer::default(),
        sizes: Vec::new(),
        colours: vec![colour("Undyed", "#e9dfc9"), colour("Weld", "#c79a2b")],
        notes: String::new(),
        spec,
        changed_ms: 1_760_000_200_000,
    };
    check(sample!("baby-yarn-weight"), &project);
}

#[test]
fn starred_for_an_age_in_weeks_in_uk_terms() {
    let ten = Length::from_cm(10.0);
    let spec = HatSpec {
        head: Head::ByAge { age: Age::Weeks(Count::from_ticks(10_50)), sex: Sex::Female, build: Build::Large },
        swatch: Swatch::Counted { stitches: Count::whole(14), width: ten, rounds: Count::whole(16), height: ten },
        body_stretch: Stretch::Usual,
        ease: Ratio::of(0.06),
        coverage: Coverage::EarTops,
        band: BandSpec {
            height: Stitches::new(12),
            fold: Length::from_cm(4.0),
            swatch: None,
            stretch: Stretch::Measured(Ratio::of(1.42)),
            stripes: rows(&[(0, 2), (1, 2)]),
            ..form_1().band
        },
        body_stripes: rounds(&[(0, 8), (1, 2), (2, 2)]),
        layout: Layout::Wedges(8),
        closing: Closing::Drawn,
        topper: Some(Topper::usual(TopperKind::PomPom).sized(Length::from_cm(7.0)).coloured(Colour(1))),
        balls: vec![Ball::of(Count::whole(120)); 3],
        extra: Extra::Share(Ratio::of(0.2)),
        chosen: None,
        ..form_1()
    };
    let project = Project {
        id: id("rowingclub02"),
        revision: 40,
        name: "Crew “A”, 艇\u{2009}🚣".to_owned(),
        units: Units::Centimetres,
        terms: Terms::Uk,
        hand: Hand::Right,
        designer: Designer::default(),
        sizes: Vec::new(),
        colours: vec![colour("Madder, 2nd bath", "#a4402f"), colour("Undyed", "#e9dfc9"), colour("Walnut", "#6b4a2f")],
        notes: String::new(),
        spec,
        changed_ms: 1_760_000_300_000,
    };
    check(sample!("starred-weeks"), &project);
}

/// What form 1 does not say: all its hats are alike in this.
fn form_1() -> HatSpec {
    let base = HatSpec::default();
    HatSpec {
        over_top: None,
        lining: Length::ZERO,
        style: Style::Fitted,
        shape: Shape::default(),
        begun: Begun::Band,
        way: Way::Spiral,
        fabric: Fabric::Single,
        hook: None,
        strands: 1,
        band: BandSpec {
            kind: BandKind::Sideways,
            fabric: Fabric::SingleBack,
            edge: Edge::Chainless,
            hook: None,
            rounds: Rounds::new(6),
            ..base.band
        },
        taste: Taste::Balanced,
        kept: None,
        ..base
    }
}

fn colour(name: &str, hex: &str) -> ColourName {
    ColourName::new(name.to_owned(), Rgb::parse(hex).unwrap())
}

fn rows(stripes: &[(u8, u32)]) -> Vec<RowStripe> {
    stripes.iter().map(|&(colour, rows)| RowStripe { colour: Colour(colour), rows: Rows::new(rows) }).collect()
}

fn rounds(stripes: &[(u8, u32)]) -> Vec<RoundStripe> {
    stripes.iter().map(|&(colour, rounds)| RoundStripe { colour: Colour(colour), rounds: Rounds::new(rounds) }).collect()
}
