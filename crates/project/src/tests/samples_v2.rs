//! Documents and links of form 2 as they were first written. The files are frozen: see `versions/v2.rs` before touching one.

use super::id;
use crate::{ColourName, Designer, Hand, Linked, Project, Rgb, Terms, Units, example, from_link, open, to_json};
use hatwright_sizing::{
    Age, Ball, BandKind, BandSpec, Begun, Build, Chosen, Closing, Colour, Count, Coverage, Day, Edge, Extra, Fabric, HatSpec,
    Head, Kept, KeptRounds, Layout, Length, Ratio, RoundStripe, Rounds, RowStripe, Rows, Sex, Shape, SideTop, Stitches, Stretch,
    Style, Swatch, Taste, Topper, TopperKind, Way, YarnUse, YarnWeight, head_size,
};
use serde::Serialize;

macro_rules! sample {
    ($name:literal) => {
        (include_str!(concat!("../../samples/v2/", $name, ".json")), include_str!(concat!("../../samples/v2/", $name, ".link")))
    };
}

/// The file opens to just this hat, which is written back in the current form, and its link holds the same hat but for what stays at
/// home.
fn check((json, link): (&str, &str), expected: &Project) {
    assert_eq!(&open(json).unwrap(), expected);
    assert_eq!(open(&to_json(expected)).as_ref(), Ok(expected));
    let Project { name, units, terms, colours, mut spec, .. } = expected.clone();
    if let Head::ByDates { .. } = spec.head {
        spec.head = Head::Measured(head_size(&spec.head).girth);
    }
    spec.kept = None;
    let (hand, designer, sizes) = (Hand::Right, Designer::default(), Vec::new());
    assert_eq!(from_link(link), Ok(Linked { planner: 2, name, units, terms, hand, colours, designer, sizes, spec }));
}

fn ten() -> Length {
    Length::from_cm(10.0)
}

fn counted(stitches: i32, rounds: i32) -> Swatch {
    Swatch::Counted { stitches: Count::whole(stitches), width: ten(), rounds: Count::whole(rounds), height: ten() }
}

fn usual_shape() -> Shape {
    Shape {
        slouch_wider: Ratio::of(0.15),
        slouch_longer: Length::from_cm(5.0),
        tail: Length::from_cm(30.0),
        taper: Length::from_cm(30.0),
        tail_stitches: Stitches::new(10),
        tam_across: Length::from_cm(24.5),
        flap_length: Length::from_cm(8.0),
        flap_tie: Length::ZERO,
        brim: Length::from_cm(6.0),
        flare: Ratio::of(1.0),
        side_wedges: 6,
        side_top: SideTop::Gathered,
    }
}

#[test]
fn club_cap() {
    let mut project = Project { revision: 1, changed_ms: 1_764_000_000_000, ..example(id("rowingclub01")) };
    // A hat of that time knew no more of its yarn than the metres of a ball.
    project.spec.balls = vec![Ball::of(Count::whole(80)); 2];
    project.spec.extra = Extra::Share(Ratio::of(0.25));
    project.colours.iter_mut().for_each(|colour| colour.yarn.clear());
    check(sample!("club-cap"), &project);
}

#[test]
fn begun_stocking_cap_for_a_birthday() {
    let spec = HatSpec {
        head: Head::ByDates { born: Day(20_000), worn: Day(21_000), sex: Sex::Male, build: Build::Percentile(Ratio::of(0.75)) },
        over_top: Some(Length::from_cm(30.5)),
        lining: Length::from_ticks(300),
        style: Style::Stocking,
        shape: Shape {
            tail: Length::from_cm(120.0),
            taper: Length::from_cm(25.0),
            tail_stitches: Stitches::new(12),
            ..usual_shape()
        },
        begun: Begun::Crown,
        way: Way::Joined,
        fabric: Fabric::HalfDouble,
        hook: Some(Length::from_ticks(450)),
        strands: 2,
        swatch: counted(16, 12),
        body_stretch: Stretch::Usual,
        ease: Ratio::of(0.05),
        coverage: Coverage::OverEars,
        band: BandSpec {
            kind: BandKind::Sideways,
            fabric: Fabric::HalfDoubleBack,
            edge: Edge::LooseChain,
            hook: Some(Length::from_ticks(400)),
            rounds: Rounds::new(7),
            height: Stitches::new(11),
            fold: Length::ZERO,
            swatch: None,
            stretch: Stretch::Measured(Ratio::of(1.4)),
            stripes: rows(&[(0, 2), (1, 2)]),
        },
        body_stripes: rounds(&[(0, 4), (1, 4)]),
        layout: Layout::Spread,
        closing: Closing::Drawn,
        topper: Some(Topper::usual(TopperKind::PomPom).sized(Length::from_cm(5.0)).coloured(Colour(1))),
        balls: vec![Ball::of(Count::whole(125)); 2],
        extra: Extra::Share(Ratio::of(0.3)),
        chosen: Some(Chosen { rows: Rows::new(72), stitches: Stitches::new(72) }),
        yarn_use: YarnUse::default(),
        instead: None,
        taste: Taste::Simple,
        kept: Some(Kept {
            planner: 2,
            rows: Rows::new(72),
            stitches: Stitches::new(72),
            rounds: kept(&[(6, 0, 1), (12, 0, 140), (18, 1, 2), (36, 0, 1), (72, 0, 12)]),
        }),
    };
    let project = Project {
        id: id("rowingclub05"),
        revision: 9,
        name: "Rowing club, cox’s stocking cap".to_owned(),
        units: Units::Centimetres,
        terms: Terms::Us,
        hand: Hand::Right,
        designer: Designer::default(),
        sizes: Vec::new(),
        colours: vec![colour("Indigo", "#34516f"), colour("Weld", "#c79a2b")],
        notes: "Two strands.".to_owned(),
        spec,
        changed_ms: 1_764_000_100_000,
    };
    check(sample!("stocking-begun"), &project);
}

#[test]
fn tam_with_a_post_rib_in_uk_terms() {
    let spec = HatSpec {
        head: Head::ByAge { age: Age::Years(Count::whole(30)), sex: Sex::Female, build: Build::Large },
        over_top: None,
        lining: Length::ZERO,
        style: Style::Tam,
        shape: Shape { tam_across: Length::from_cm(27.0), ..usual_shape() },
        begun: Begun::Band,
        way: Way::Spiral,
        fabric: Fabric::SingleFront,
        hook: None,
        strands: 1,
        swatch: Swatch::YarnWeight(YarnWeight::new(4).unwrap()),
        body_stretch: Stretch::Measured(Ratio::of(1.12)),
        ease: Ratio::of(0.04),
        coverage: Coverage::EarTops,
        band: BandSpec {
            kind: BandKind::Around,
            fabric: Fabric::PostRib,
            edge: Edge::LooseChain,
            hook: None,
            rounds: Rounds::new(5),
            height: Stitches::new(10),
            fold: Length::ZERO,
            swatch: None,
            stretch: Stretch::Usual,
            stripes: rows(&[(0, 5)]),
        },
        body_stripes: rounds(&[(1, 3), (2, 1)]),
        layout: Layout::Wedges(8),
        closing: Closing::Drawn,
        topper: None,
        balls: vec![Ball::of(Count::whole(200)); 3],
        extra: Extra::Share(Ratio::of(0.25)),
        chosen: None,
        yarn_use: YarnUse::default(),
        instead: None,
        taste: Taste::Smooth,
        kept: None,
    };
    let project = Project {
        id: id("rowingclub06"),
        revision: 2,
        name: "Rowing club, boathouse tam".to_owned(),
        units: Units::Centimetres,
        terms: Terms::Uk,
        hand: Hand::Right,
        designer: Designer::default(),
        sizes: Vec::new(),
        colours: vec![colour("Madder", "#a4402f"), colour("Undyed", "#e9dfc9"), colour("Walnut", "#6b4a2f")],
        notes: String::new(),
        spec,
        changed_ms: 1_764_000_200_000,
    };
    check(sample!("tam-uk"), &project);
}

#[test]
fn sideways_slip_stitch_rib_in_inches() {
    let four = Length::from_inches(4.0);
    let spec = HatSpec {
        head: Head::Measured(Length::from_inches(22.0)),
        over_top: None,
        lining: Length::ZERO,
        style: Style::Sideways,
        shape: Shape { side_wedges: 8, side_top: SideTop::ShortRows, brim: Length::from_cm(9.0), ..usual_shape() },
        begun: Begun::Band,
        way: Way::Spiral,
        fabric: Fabric::SlipRib,
        hook: Some(Length::from_ticks(600)),
        strands: 1,
        swatch: Swatch::Counted { stitches: Count::whole(16), width: four, rounds: Count::whole(32), height: four },
        body_stretch: Stretch::Usual,
        ease: Ratio::of(0.1),
        coverage: Coverage::EarLobes,
        band: BandSpec {
            kind: BandKind::None,
            fabric: Fabric::Single,
            edge: Edge::Chainless,
            hook: None,
            rounds: Rounds::new(6),
            height: Stitches::new(10),
            fold: Length::from_inches(2.0),
            swatch: None,
            stretch: Stretch::Usual,
            stripes: rows(&[(0, 2)]),
        },
        body_stripes: rounds(&[(0, 4), (1, 2)]),
        layout: Layout::Spread,
        closing: Closing::Gathered(Stitches::new(56)),
        topper: Some(Topper::usual(TopperKind::PomPom).sized(Length::from_inches(3.0))),
        balls: vec![Ball::of(Count::whole(150)); 2],
        extra: Extra::Share(Ratio::of(0.25)),
        chosen: None,
        yarn_use: YarnUse::default(),
        instead: None,
        taste: Taste::Nearest,
        kept: None,
    };
    let project = Project {
        id: id("rowingclub07"),
        revision: 4,
        name: "Rowing club, winter-training rib hat".to_owned(),
        units: Units::Inches,
        terms: Terms::Us,
        hand: Hand::Right,
        designer: Designer::default(),
        sizes: Vec::new(),
        colours: vec![colour("Logwood", "#51435c"), colour("Weld", "#c79a2b")],
        notes: String::new(),
        spec,
        changed_ms: 1_764_000_300_000,
    };
    check(sample!("sideways-inches"), &project);
}

/// What a document calls a choice, and by which number a link does.
#[test]
fn choices_keep_their_names_and_numbers() {
    fn names<T: Serialize>(choices: &[T], names: &str) {
        assert_eq!(choices.len(), names.split(' ').count());
        for (number, (choice, name)) in choices.iter().zip(names.split(' ')).enumerate() {
            assert_eq!(serde_json::to_value(choice).unwrap(), name);
            assert_eq!(postcard::to_allocvec(choice).unwrap(), [number as u8], "{name}");
        }
    }
    names(&Style::ALL, "Fitted Slouch Stocking EarWarmer Tam EarFlap Brimmed Sideways");
    names(
        Fabric::ALL,
        "Single SingleBack SingleFront HalfDouble HalfDoubleBack HalfDoubleFront Double DoubleBack DoubleFront SlipRib PostRib",
    );
    names(&[Begun::Band, Begun::Crown], "Band Crown");
    names(&[Way::Spiral, Way::Joined], "Spiral Joined");
    names(&[BandKind::Sideways, BandKind::Around, BandKind::None], "Sideways Around None");
    names(&[Edge::Chainless, Edge::LooseChain], "Chainless LooseChain");
    names(&[SideTop::Gathered, SideTop::ShortRows], "Gathered ShortRows");
    names(&[Taste::Balanced, Taste::Smooth, Taste::Simple, Taste::Nearest], "Balanced Smooth Simple Nearest");
    names(
        &[Coverage::EarTops, Coverage::EarCanals, Coverage::EarLobes, Coverage::OverEars],
        "EarTops EarCanals EarLobes OverEars",
    );
    names(&[Sex::Unknown, Sex::Female, Sex::Male], "Unknown Female Male");
    names(&[Build::Small, Build::Average, Build::Large], "Small Average Large");
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

fn kept(rounds: &[(u32, u32, u32)]) -> Vec<KeptRounds> {
    rounds.iter().map(|&(after, lead, times)| KeptRounds { after, lead, times }).collect()
}
