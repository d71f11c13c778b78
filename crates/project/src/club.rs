//! Hats to begin with: a rowing club's winter caps, and the colours of natural dyes.

mod styles;

use crate::{ColourName, Designer, Hand, Project, ProjectId, Rgb, Terms, Units};
use hatwright_sizing::{
    Age, Ball, BandSpec, BandSwatch, Build, Closing, Colour, Count, Coverage, HatSpec, Head, Layout, Length, Mass, Ratio,
    RoundStripe, Rounds, RowStripe, Rows, Sex, Stitches, Stretch, Swatch, Topper, TopperKind, YarnWeight,
};
use hatwright_words::document as words;

/// How many [`dyes`] there are.
const DYES: usize = HatSpec::MOST_COLOURS;

/// Natural dyes by their names in the language that is spoken, with the colours that they give wool as a screen shows them: names for
/// new colours.
///
/// ```
/// use hatwright_project::dyes;
/// use hatwright_words::{Language, in_language};
/// assert_eq!(dyes()[1].0, "Weld");
/// assert_eq!(in_language(Language::Spanish, dyes)[1], ("Gualda", dyes()[1].1));
/// ```
pub fn dyes() -> [(&'static str, Rgb); DYES] {
    [
        (words::dye_indigo(), Rgb::new(0x34, 0x51, 0x6f)),
        (words::dye_weld(), Rgb::new(0xc7, 0x9a, 0x2b)),
        (words::dye_madder(), Rgb::new(0xa4, 0x40, 0x2f)),
        (words::dye_walnut(), Rgb::new(0x6b, 0x4a, 0x2f)),
        (words::dye_undyed(), Rgb::new(0xe9, 0xdf, 0xc9)),
        (words::dye_logwood(), Rgb::new(0x51, 0x43, 0x5c)),
    ]
}

const INDIGO: usize = 0;
const WELD: usize = 1;
const MADDER: usize = 2;
const WALNUT: usize = 3;
const UNDYED: usize = 4;
const LOGWOOD: usize = 5;

/// The hat of a first visit, named in the language that is spoken: a cap for four years, in two colours, at 12 stitches and 15 rounds to 10 cm.
pub fn example(id: ProjectId) -> Project {
    let spec = HatSpec {
        head: by_age(Age::Years(Count::whole(4))),
        swatch: counted(12, 15, Length::from_ticks(10_000)),
        body_stretch: Stretch::Usual,
        ease: percent(7),
        coverage: Coverage::OverEars,
        band: band(10, Length::from_ticks(4_200), None, &[(0, 2), (1, 2)]),
        body_stripes: rounds(&[(0, 6), (1, 2)]),
        layout: Layout::Spread,
        closing: Closing::Drawn,
        topper: Some(Topper::usual(TopperKind::PomPom).sized(Length::from_ticks(6_000))),
        balls: balls(2, 80, 50, 4),
        ..HatSpec::default()
    };
    cap(id, words::cap_junior(), Units::Centimetres, Terms::Us, &[INDIGO, WELD], WOOL, spec)
}

/// How many [`samples`] there are.
pub const SAMPLES: usize = 10;

/// More of the club's hats, all of which can be made, by their names in the language that is spoken. First three caps: a grown-up's in three colours with a starred crown, in UK terms; a
/// baby's in fine yarn without a swatch or a pom-pom; and a gathered one in inches, with its band's own swatch. Then a hat of every
/// other style: slouch, stocking cap, tam, a child's with ear flaps, ear warmer, brimmed, and worked sideways in rib.
pub fn samples(ids: [ProjectId; SAMPLES]) -> [Project; SAMPLES] {
    let [crew, baby, coach, slouch, stocking, tam, flaps, warmer, brimmed, sideways] = ids;
    [
        crew_cap(crew),
        baby_cap(baby),
        coach_cap(coach),
        styles::slouch(slouch),
        styles::stocking_cap(stocking),
        styles::tam(tam),
        styles::ear_flaps(flaps),
        styles::ear_warmer(warmer),
        styles::brimmed(brimmed),
        styles::sideways(sideways),
    ]
}

fn crew_cap(id: ProjectId) -> Project {
    let spec = HatSpec {
        head: Head::Measured(Length::from_ticks(57_000)),
        swatch: counted(14, 16, Length::from_ticks(10_000)),
        body_stretch: Stretch::Usual,
        ease: percent(6),
        coverage: Coverage::OverEars,
        band: band(12, Length::from_ticks(4_000), None, &[(0, 2), (1, 2)]),
        body_stripes: rounds(&[(0, 8), (1, 2), (2, 2)]),
        layout: Layout::Wedges(8),
        closing: Closing::Drawn,
        topper: Some(Topper::usual(TopperKind::PomPom).sized(Length::from_ticks(7_000)).coloured(Colour(1))),
        balls: balls(3, 120, 50, 4),
        ..HatSpec::default()
    };
    cap(id, words::cap_crew(), Units::Centimetres, Terms::Uk, &[MADDER, UNDYED, WALNUT], "Slipway worsted", spec)
}

fn baby_cap(id: ProjectId) -> Project {
    let spec = HatSpec {
        head: by_age(Age::Months(Count::whole(3))),
        swatch: Swatch::YarnWeight(FINE),
        body_stretch: Stretch::Usual,
        ease: percent(2),
        coverage: Coverage::OverEars,
        band: band(8, Length::ZERO, None, &[(0, 2), (1, 2)]),
        body_stripes: rounds(&[(0, 4), (1, 2)]),
        layout: Layout::Spread,
        closing: Closing::Drawn,
        topper: None,
        balls: balls(2, 210, 50, 1),
        ..HatSpec::default()
    };
    cap(id, words::cap_baby(), Units::Centimetres, Terms::Us, &[UNDYED, WELD], "Reed fine", spec)
}

fn coach_cap(id: ProjectId) -> Project {
    let four_inches = Length::from_ticks(4 * 2_540);
    let own = BandSwatch { stitches: Count::whole(15), width: four_inches, rows: Count::whole(15), length: four_inches };
    let spec = HatSpec {
        head: Head::Measured(Length::from_ticks(57_150)),
        swatch: counted(14, 16, four_inches),
        body_stretch: Stretch::Measured(Ratio::from_ticks(11_500)),
        ease: percent(5),
        coverage: Coverage::EarLobes,
        band: band(12, Length::from_ticks(3_810), Some(own), &[(0, 2), (1, 2)]),
        body_stripes: rounds(&[(0, 1)]),
        layout: Layout::Spread,
        closing: Closing::Gathered(Stitches::new(56)),
        topper: Some(Topper::usual(TopperKind::PomPom).sized(Length::from_ticks(6_985))),
        balls: balls(2, 100, 50, 4),
        ..HatSpec::default()
    };
    cap(id, words::cap_coach(), Units::Inches, Terms::Us, &[WALNUT, WELD], "Stake-boat tweed", spec)
}

/// Super fine, the yarn of baby clothes.
const FINE: YarnWeight = match YarnWeight::new(1) {
    Ok(weight) => weight,
    Err(_) => panic!("a yarn weight is 0 to 7"),
};

/// What the example's wool is called. All the club's yarns are invented.
const WOOL: &str = "Boathouse wool";

fn cap(id: ProjectId, name: &str, units: Units, terms: Terms, chosen: &[usize], yarn: &str, spec: HatSpec) -> Project {
    let known = self::dyes();
    let colour = |&dye: &usize| ColourName::new(known[dye].0.to_owned(), known[dye].1).of_yarn(yarn);
    let colours = chosen.iter().map(colour).collect();
    let (name, hand, notes) = (name.to_owned(), Hand::Right, String::new());
    let (designer, sizes) = (Designer::default(), Vec::new());
    Project { id, revision: 0, name, units, terms, hand, colours, notes, designer, sizes, spec, changed_ms: 0 }
}

fn by_age(age: Age) -> Head {
    Head::ByAge { age, sex: Sex::Unknown, build: Build::Average }
}

fn counted(stitches: i32, rounds: i32, over: Length) -> Swatch {
    Swatch::Counted { stitches: Count::whole(stitches), width: over, rounds: Count::whole(rounds), height: over }
}

fn band(height: u32, fold: Length, swatch: Option<BandSwatch>, stripes: &[(u8, u32)]) -> BandSpec {
    let stripes = stripes.iter().map(|&(colour, rows)| RowStripe { colour: Colour(colour), rows: Rows::new(rows) }).collect();
    BandSpec { height: Stitches::new(height), fold, swatch, stripes, ..HatSpec::default().band }
}

fn rounds(stripes: &[(u8, u32)]) -> Vec<RoundStripe> {
    stripes.iter().map(|&(colour, rounds)| RoundStripe { colour: Colour(colour), rounds: Rounds::new(rounds) }).collect()
}

/// Balls of one yarn: so many metres of so many grams, of a yarn-weight number.
fn balls(colours: usize, metres: i32, grams: i32, weight: u8) -> Vec<Ball> {
    let grams = Some(Mass::from_ticks(grams * 100));
    vec![Ball { grams, weight: YarnWeight::new(weight).ok(), ..Ball::of(Count::whole(metres)) }; colours]
}

const fn percent(share: i32) -> Ratio {
    Ratio::from_ticks(share * 100)
}
