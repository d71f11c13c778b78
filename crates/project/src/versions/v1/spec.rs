//! The planner's input as form 1 and links of version 1 hold it. Frozen: see [`super`].
//!
//! Lengths are hundredths of a millimetre, counts of a swatch hundredths, shares and stretches ten-thousandths; stitches, rows and
//! rounds are ones. The order of fields and variants is what a link's bytes rest on.

use crate::versions::v2::spec as then;
use hatwright_sizing as now;
use now::{Count, Length, Ratio, Rounds, Rows, Stitches};
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
pub(crate) struct HatSpec {
    head: Head,
    swatch: Swatch,
    body_stretch: Stretch,
    ease: i32,
    coverage: Coverage,
    band: BandSpec,
    body_stripes: Vec<RoundStripe>,
    layout: Layout,
    closing: Closing,
    pom_pom: Option<PomPom>,
    balls: Vec<Ball>,
    margin: i32,
    chosen: Option<Chosen>,
}

#[derive(Serialize, Deserialize)]
enum Head {
    Measured(i32),
    ByAge { age: Age, sex: Sex, build: Build },
}

#[derive(Serialize, Deserialize)]
enum Age {
    Weeks(i32),
    Months(i32),
    Years(i32),
}

#[derive(Serialize, Deserialize)]
enum Sex {
    Unknown,
    Female,
    Male,
}

#[derive(Serialize, Deserialize)]
enum Build {
    Small,
    Average,
    Large,
}

#[derive(Serialize, Deserialize)]
enum Swatch {
    Counted { stitches: i32, width: i32, rounds: i32, height: i32 },
    YarnWeight(YarnWeight),
}

#[derive(Serialize, Deserialize)]
#[serde(try_from = "u8", into = "u8")]
struct YarnWeight(now::YarnWeight);

impl TryFrom<u8> for YarnWeight {
    type Error = &'static str;

    fn try_from(number: u8) -> Result<Self, Self::Error> {
        now::YarnWeight::new(number).map(Self).map_err(|_| "a yarn weight is 0 to 7")
    }
}

impl From<YarnWeight> for u8 {
    fn from(weight: YarnWeight) -> u8 {
        weight.0.number()
    }
}

// `serde(into)` asks for it.
impl Clone for YarnWeight {
    fn clone(&self) -> Self {
        Self(self.0)
    }
}

#[derive(Serialize, Deserialize)]
enum Stretch {
    Usual,
    Measured(i32),
}

#[derive(Serialize, Deserialize)]
enum Coverage {
    EarTops,
    EarCanals,
    EarLobes,
    OverEars,
}

#[derive(Serialize, Deserialize)]
struct BandSpec {
    height: u32,
    fold: i32,
    swatch: Option<BandSwatch>,
    stretch: Stretch,
    stripes: Vec<RowStripe>,
}

#[derive(Serialize, Deserialize)]
struct BandSwatch {
    stitches: i32,
    width: i32,
    rows: i32,
    length: i32,
}

#[derive(Serialize, Deserialize)]
struct RowStripe {
    colour: u8,
    rows: u32,
}

#[derive(Serialize, Deserialize)]
struct RoundStripe {
    colour: u8,
    rounds: u32,
}

#[derive(Serialize, Deserialize)]
enum Layout {
    Wedges(u32),
    Spread,
}

#[derive(Serialize, Deserialize)]
enum Closing {
    Drawn,
    Gathered(u32),
}

#[derive(Serialize, Deserialize)]
struct PomPom {
    diameter: i32,
    colour: Option<u8>,
}

#[derive(Serialize, Deserialize)]
struct Ball {
    yarn: i32,
}

#[derive(Serialize, Deserialize)]
struct Chosen {
    rows: u32,
    stitches: u32,
}

impl HatSpec {
    /// To form 2. All hats of form 1 are fitted, begun at a band of single crochet worked sideways in the back loops, and go on in a
    /// spiral of single crochet.
    pub(crate) fn migrate(self) -> then::HatSpec {
        then::HatSpec {
            head: head(self.head),
            over_top: None,
            lining: Length::ZERO,
            style: now::Style::Fitted,
            shape: now::Shape::default(),
            begun: now::Begun::Band,
            way: now::Way::Spiral,
            fabric: now::Fabric::Single,
            swatch: swatch(self.swatch),
            hook: None,
            strands: 1,
            body_stretch: stretch(&self.body_stretch),
            ease: Ratio::from_ticks(self.ease),
            coverage: match self.coverage {
                Coverage::EarTops => now::Coverage::EarTops,
                Coverage::EarCanals => now::Coverage::EarCanals,
                Coverage::EarLobes => now::Coverage::EarLobes,
                Coverage::OverEars => now::Coverage::OverEars,
            },
            band: band(self.band),
            body_stripes: self.body_stripes.iter().map(round_stripe).collect(),
            layout: match self.layout {
                Layout::Wedges(wedges) => now::Layout::Wedges(wedges),
                Layout::Spread => now::Layout::Spread,
            },
            closing: match self.closing {
                Closing::Drawn => now::Closing::Drawn,
                Closing::Gathered(stitches) => now::Closing::Gathered(Stitches::new(stitches)),
            },
            pom_pom: self.pom_pom.map(|PomPom { diameter, colour }| then::PomPom {
                diameter: Length::from_ticks(diameter),
                colour: colour.map(now::Colour),
            }),
            balls: self.balls.into_iter().map(|ball| then::Ball { yarn: Count::from_ticks(ball.yarn) }).collect(),
            margin: Ratio::from_ticks(self.margin),
            chosen: self
                .chosen
                .map(|Chosen { rows, stitches }| now::Chosen { rows: Rows::new(rows), stitches: Stitches::new(stitches) }),
            taste: now::Taste::Balanced,
            kept: None,
        }
    }
}

fn head(head: Head) -> now::Head {
    match head {
        Head::Measured(girth) => now::Head::Measured(Length::from_ticks(girth)),
        Head::ByAge { age, sex, build } => now::Head::ByAge {
            age: match age {
                Age::Weeks(n) => now::Age::Weeks(Count::from_ticks(n)),
                Age::Months(n) => now::Age::Months(Count::from_ticks(n)),
                Age::Years(n) => now::Age::Years(Count::from_ticks(n)),
            },
            sex: match sex {
                Sex::Unknown => now::Sex::Unknown,
                Sex::Female => now::Sex::Female,
                Sex::Male => now::Sex::Male,
            },
            build: match build {
                Build::Small => now::Build::Small,
                Build::Average => now::Build::Average,
                Build::Large => now::Build::Large,
            },
        },
    }
}

fn swatch(swatch: Swatch) -> now::Swatch {
    match swatch {
        Swatch::Counted { stitches, width, rounds, height } => now::Swatch::Counted {
            stitches: Count::from_ticks(stitches),
            width: Length::from_ticks(width),
            rounds: Count::from_ticks(rounds),
            height: Length::from_ticks(height),
        },
        Swatch::YarnWeight(weight) => now::Swatch::YarnWeight(weight.0),
    }
}

fn stretch(stretch: &Stretch) -> now::Stretch {
    match *stretch {
        Stretch::Usual => now::Stretch::Usual,
        Stretch::Measured(ratio) => now::Stretch::Measured(Ratio::from_ticks(ratio)),
    }
}

fn band(band: BandSpec) -> now::BandSpec {
    let swatch = |own: BandSwatch| now::BandSwatch {
        stitches: Count::from_ticks(own.stitches),
        width: Length::from_ticks(own.width),
        rows: Count::from_ticks(own.rows),
        length: Length::from_ticks(own.length),
    };
    let stripe = |stripe: RowStripe| now::RowStripe { colour: now::Colour(stripe.colour), rows: Rows::new(stripe.rows) };
    now::BandSpec {
        kind: now::BandKind::Sideways,
        fabric: now::Fabric::SingleBack,
        edge: now::Edge::Chainless,
        hook: None,
        rounds: Rounds::new(6),
        height: Stitches::new(band.height),
        fold: Length::from_ticks(band.fold),
        swatch: band.swatch.map(swatch),
        stretch: stretch(&band.stretch),
        stripes: band.stripes.into_iter().map(stripe).collect(),
    }
}

fn round_stripe(stripe: &RoundStripe) -> now::RoundStripe {
    now::RoundStripe { colour: now::Colour(stripe.colour), rounds: Rounds::new(stripe.rounds) }
}
