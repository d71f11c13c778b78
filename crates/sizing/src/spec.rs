//! What a person decides about a hat: the planner's whole input.

use crate::{
    BandKind, Begun, Count, Day, Edge, Fabric, Kept, Length, Mass, Money, Quantity, Ratio, Rounds, Rows, Shape, Stitches, Style,
    Taste, Way, YarnUse,
};
use serde::{Deserialize, Serialize};

/// Everything that determines a hat's numbers. Ranges are those of the table, [`Quantity::row`]; [`HatSpec::check`] holds to them.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct HatSpec {
    /// The head: 22 to 75 cm around, or an age.
    pub head: Head,
    /// Over the crown from ear canal to ear canal, 18 to 55 cm, where it was measured: half of it takes the place of 0.308 of the
    /// girth in the depth.
    pub over_top: Option<Length>,
    /// Thickness of hair or of a lining between head and hat, 0 to 20 mm: adds 2π times itself to the girth.
    pub lining: Length,
    /// The kind of hat.
    pub style: Style,
    /// The measures that a style asks for. Those of other styles are kept, so that going back to one loses nothing.
    pub shape: Shape,
    /// Where the work begins.
    pub begun: Begun,
    /// How rounds follow one another.
    pub way: Way,
    /// The body's fabric.
    pub fabric: Fabric,
    /// The body's gauge.
    pub swatch: Swatch,
    /// The hook of the body, where it is known: 0.5 to 25 mm.
    pub hook: Option<Length>,
    /// Strands of yarn held together, 1 to 6: they multiply the metres.
    pub strands: u32,
    /// Stretched ÷ relaxed girth of the body, 1 to 2: plain single crochet has about 1.10.
    pub body_stretch: Stretch,
    /// How much smaller than the head the hat is, as a share of the head's girth, 0 to 30 %: 7 % of 49.8 cm asks for 46.3 cm around.
    pub ease: Ratio,
    /// How far down the head the hat reaches.
    pub coverage: Coverage,
    /// The band.
    pub band: BandSpec,
    /// Stripes of the body, from the pick-up round upward, over and over. One to [`HatSpec::MOST_STRIPES`], of 1 to 200 rounds.
    pub body_stripes: Vec<RoundStripe>,
    /// How decreases lie in the crown.
    pub layout: Layout,
    /// How the top is closed.
    pub closing: Closing,
    /// A pom-pom or a tassel, where there is one.
    pub topper: Option<Topper>,
    /// Yarn of each colour, from a ball's band. As many as there are colours, 1 to [`HatSpec::MOST_COLOURS`].
    pub balls: Vec<Ball>,
    /// How much more than the estimate is bought.
    pub extra: Extra,
    /// What was measured of the yarn that a stitch takes.
    pub yarn_use: YarnUse,
    /// Another yarn that is weighed up against the first colour's.
    pub instead: Option<Instead>,
    /// Counts that a person took instead of the planner's choice.
    pub chosen: Option<Chosen>,
    /// What the planner gives more weight to.
    pub taste: Taste,
    /// The rounds of a hat that is begun: no later planner changes them.
    pub kept: Option<Kept>,
}

/// A head, measured or looked up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Head {
    /// Girth by tape.
    Measured(Length),
    /// Girth from the tables of heads by age.
    ByAge {
        /// Age when the hat is worn.
        age: Age,
        /// Sex, where known.
        sex: Sex,
        /// Small, average or large for that age.
        build: Build,
    },
    /// Girth from the tables for the age on a day: a gift is sized for the day of wearing. The days stay on the device; a link carries
    /// the girth.
    ByDates {
        /// Born, or due.
        born: Day,
        /// Worn from.
        worn: Day,
        /// Sex, where known.
        sex: Sex,
        /// Small, average or large for that age.
        build: Build,
    },
}

/// An age as it was typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Age {
    /// In weeks.
    Weeks(Count),
    /// In months.
    Months(Count),
    /// In years.
    Years(Count),
}

impl Age {
    /// The age in years of 365.25 days.
    ///
    /// ```
    /// use hatwright_sizing::{Age, Count};
    /// assert_eq!(Age::Months(Count::whole(18)).years(), 1.5);
    /// ```
    pub fn years(self) -> f64 {
        match self {
            Self::Weeks(n) => n.value() * 7.0 / 365.25,
            Self::Months(n) => n.value() / 12.0,
            Self::Years(n) => n.value(),
        }
    }
}

/// Sex, as the published tables divide heads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Sex {
    /// Not known: an equal mixture.
    Unknown,
    /// Girl or woman.
    Female,
    /// Boy or man.
    Male,
}

/// Size for the age, as a percentile of the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Build {
    /// 10th percentile.
    Small,
    /// 50th percentile.
    Average,
    /// 90th percentile.
    Large,
    /// This percentile, 1 to 99 %.
    Percentile(Ratio),
}

impl Build {
    /// The percentile as a share: 0.1, 0.5, 0.9, or its own.
    pub fn share(self) -> f64 {
        match self {
            Self::Small => 0.1,
            Self::Average => 0.5,
            Self::Large => 0.9,
            Self::Percentile(share) => share.value(),
        }
    }
}

/// The body's gauge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Swatch {
    /// Counted in a swatch.
    Counted {
        /// Stitches along a round.
        stitches: Count,
        /// Over this width.
        width: Length,
        /// Rounds.
        rounds: Count,
        /// Over this height.
        height: Length,
    },
    /// No swatch yet: the middle of the published range for a yarn-weight number, an estimate.
    YarnWeight(YarnWeight),
}

/// A yarn-weight number, 0 (lace) to 7 (jumbo). Source: Craft Yarn Council's www.YarnStandards.com.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "u8", into = "u8")]
pub struct YarnWeight(u8);

impl YarnWeight {
    /// A weight number.
    ///
    /// # Errors
    /// Gives the number back where it is more than 7.
    pub const fn new(number: u8) -> Result<Self, u8> {
        if number <= 7 { Ok(Self(number)) } else { Err(number) }
    }

    /// The number, 0 to 7.
    pub const fn number(self) -> u8 {
        self.0
    }
}

impl TryFrom<u8> for YarnWeight {
    type Error = &'static str;

    fn try_from(number: u8) -> Result<Self, Self::Error> {
        Self::new(number).map_err(|_| "a yarn weight is 0 to 7")
    }
}

impl From<YarnWeight> for u8 {
    fn from(weight: YarnWeight) -> u8 {
        weight.0
    }
}

/// Stretched ÷ relaxed girth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Stretch {
    /// The table's default: an estimate.
    Usual,
    /// Measured on the maker's own swatch.
    Measured(Ratio),
}

/// How far down the head the edge comes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Coverage {
    /// The tops of the ears stay free.
    EarTops,
    /// To the ear canals.
    EarCanals,
    /// To the ear lobes.
    EarLobes,
    /// Over the ears.
    OverEars,
}

/// The band.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct BandSpec {
    /// How it is worked, if there is one.
    pub kind: BandKind,
    /// Its fabric.
    pub fabric: Fabric,
    /// How the edge begins where it is worked around, first.
    pub edge: Edge,
    /// The hook of the band, where it is known.
    pub hook: Option<Length>,
    /// Rounds of a band that is worked around, 1 to 80.
    pub rounds: Rounds,
    /// Stitches of a row of a sideways band, 2 to 80: its height before folding. Ten at 12 to 10 cm are 8.3 cm ([`band_height`](crate::band_height)).
    pub height: Stitches,
    /// How much is folded up, from the lower edge: nothing to all of the band. All of it puts the fold on the pick-up line.
    pub fold: Length,
    /// The band's own swatch, where there is one; otherwise a row is taken to be as tall as a stitch of the body is wide.
    pub swatch: Option<BandSwatch>,
    /// Stretched ÷ relaxed girth of the rib, 1 to 3: sideways single crochet has about 1.35.
    pub stretch: Stretch,
    /// Stripes, in order, over and over: one to [`HatSpec::MOST_STRIPES`], of 1 to 60 rows, or rounds of a band worked around. Two and
    /// two rows close on multiples of 4.
    pub stripes: Vec<RowStripe>,
}

/// The band's gauge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct BandSwatch {
    /// Stitches along a row.
    pub stitches: Count,
    /// Over this width.
    pub width: Length,
    /// Rows.
    pub rows: Count,
    /// Over this length.
    pub length: Length,
}

/// An index into the hat's colours.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Colour(pub u8);

/// A stripe of the band.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct RowStripe {
    /// Its colour.
    pub colour: Colour,
    /// Its rows.
    pub rows: Rows,
}

/// A stripe of the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct RoundStripe {
    /// Its colour.
    pub colour: Colour,
    /// Its rounds.
    pub rounds: Rounds,
}

/// How decreases lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Layout {
    /// Stacked, so many to a round: a visible star.
    Wedges(u32),
    /// Offset from round to round: a smooth crown.
    Spread,
}

/// How the top is closed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Closing {
    /// 6 to 12 stitches on a strand.
    Drawn,
    /// Gathered at so many stitches, at most the whole tube.
    Gathered(Stitches),
}

/// What is sewn to the top.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Topper {
    /// Which.
    pub kind: TopperKind,
    /// Diameter of a pom-pom when trimmed, 2 to 20 cm, or length of a tassel, 3 to 40 cm.
    pub size: Length,
    /// How full it is, as a share of the usual wraps, 40 to 250 %.
    pub fullness: Ratio,
    /// Its colour; `None` for all the hat's colours in equal parts.
    pub colour: Option<Colour>,
}

/// What can be sewn to a top.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum TopperKind {
    /// A pom-pom.
    PomPom,
    /// A tassel.
    Tassel,
}

impl TopperKind {
    /// The row of its size.
    pub const fn quantity(self) -> Quantity {
        match self {
            Self::PomPom => Quantity::PomPom,
            Self::Tassel => Quantity::Tassel,
        }
    }
}

impl Topper {
    /// A topper as it usually is, in all the hat's colours.
    ///
    /// ```
    /// use hatwright_sizing::{Length, Topper, TopperKind};
    /// assert_eq!(Topper::usual(TopperKind::PomPom).size, Length::from_cm(6.0));
    /// ```
    pub const fn usual(kind: TopperKind) -> Self {
        let fullness = Ratio::from_ticks(Quantity::Fullness.row().usual);
        Self { kind, size: Length::from_ticks(kind.quantity().row().usual), fullness, colour: None }
    }

    /// The same in another size.
    #[must_use]
    pub const fn sized(self, size: Length) -> Self {
        Self { size, ..self }
    }

    /// The same in one colour.
    #[must_use]
    pub const fn coloured(self, colour: Colour) -> Self {
        Self { colour: Some(colour), ..self }
    }
}

/// The yarn of one colour: a ball as its band says, and what of it there is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Ball {
    /// Hundredths of a metre in a ball.
    pub yarn: Count,
    /// What a ball weighs, where that is known: 1 to 5,000 g.
    pub grams: Option<Mass>,
    /// Its yarn-weight number, where that is known.
    pub weight: Option<YarnWeight>,
    /// Balls that are owned already, 0 to 999, parts of balls too.
    pub owned: Count,
    /// Price of a ball, where that matters.
    pub price: Option<Money>,
}

impl Ball {
    /// A ball of so much yarn, of which nothing else is known and none is owned.
    ///
    /// ```
    /// use hatwright_sizing::{Ball, Count};
    /// assert_eq!(Ball::of(Count::whole(80)).metres(), 80.0);
    /// ```
    pub const fn of(yarn: Count) -> Self {
        Self { yarn, grams: None, weight: None, owned: Count::from_ticks(0), price: None }
    }

    /// Metres in a ball.
    pub fn metres(&self) -> f64 {
        self.yarn.value()
    }

    /// Metres to a gram, where the weight is known: 80 m of 50 g are 1.6.
    pub fn metres_per_gram(&self) -> Option<f64> {
        self.grams.map(|grams| self.metres() / grams.grams())
    }
}

/// How much more than the estimate is bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Extra {
    /// As much as makes it enough this often, 50 to 99.9 %: follows how sure the estimate is.
    Chance(Ratio),
    /// This share of the estimate, 0 to 100 %, set by hand.
    Share(Ratio),
}

/// Another yarn that might take this one's place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Instead {
    /// Hundredths of a metre in a ball.
    pub yarn: Count,
    /// What a ball weighs, where that is known.
    pub grams: Option<Mass>,
    /// Its yarn-weight number, where that is known.
    pub weight: Option<YarnWeight>,
    /// Its swatch, where there is one: [`Swatch::Counted`].
    pub swatch: Option<Swatch>,
}

/// Counts taken by hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Chosen {
    /// Rows of the band.
    pub rows: Rows,
    /// Stitches of the body.
    pub stitches: Stitches,
}

/// Where an input breaks its rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Breach {
    /// A number outside its row of the table.
    OutOfRange(Quantity, i32),
    /// Too many or too few colours, or stripes.
    WrongCount,
    /// A stripe, a topper or a weighed swatch of a colour that the hat does not have.
    NoSuchColour(Colour),
    /// Worn before it is born, or more than 110 years after.
    Dates,
    /// A fabric that cannot be worked so: a post-stitch rib is never worked sideways.
    UnfitFabric,
    /// Kept rounds that no hook can make of one another.
    KeptRounds,
}

impl Instead {
    fn set_number(&mut self, q: Quantity, ticks: i32) {
        let (number, measure) = (Count::from_ticks(ticks), Length::from_ticks(ticks));
        match (q, &mut self.swatch) {
            (Quantity::InsteadYarn, _) => self.yarn = number,
            (Quantity::InsteadGrams, _) => self.grams = Some(Mass::from_ticks(ticks)),
            (_, Some(Swatch::Counted { stitches, width, rounds, height })) => match q {
                Quantity::InsteadStitches => *stitches = number,
                Quantity::InsteadWidth => *width = measure,
                Quantity::InsteadRounds => *rounds = number,
                _ => *height = measure,
            },
            _ => {}
        }
    }
}

impl HatSpec {
    /// The most colours of a hat.
    pub const MOST_COLOURS: usize = 6;
    /// The most stripes of one repeat.
    pub const MOST_STRIPES: usize = 12;

    /// Every number of the input with its row of the table, for checking and for documentation.
    pub fn numbers(&self) -> Vec<(Quantity, i32)> {
        use Quantity as Q;
        let mut all = Vec::with_capacity(64);
        all.extend([
            (Q::Ease, self.ease.ticks()),
            (Q::BandHeight, self.band.height.get() as i32),
            (Q::BandRounds, self.band.rounds.get() as i32),
            (Q::Fold, self.band.fold.ticks()),
            match self.extra {
                Extra::Chance(chance) => (Q::Chance, chance.ticks()),
                Extra::Share(share) => (Q::Margin, share.ticks()),
            },
            (Q::Lining, self.lining.ticks()),
            (Q::Strands, self.strands as i32),
        ]);
        all.extend(self.shape.numbers());
        all.extend(self.over_top.map(|over| (Q::OverTop, over.ticks())));
        all.extend(self.hook.map(|hook| (Q::Hook, hook.ticks())));
        all.extend(self.band.hook.map(|hook| (Q::BandHook, hook.ticks())));
        if let Head::ByAge { build: Build::Percentile(share), .. } | Head::ByDates { build: Build::Percentile(share), .. } =
            self.head
        {
            all.push((Q::Percentile, share.ticks()));
        }
        all.extend(match self.head {
            Head::Measured(girth) => Some((Q::HeadGirth, girth.ticks())),
            Head::ByAge { age: Age::Weeks(n), .. } => Some((Q::AgeWeeks, n.ticks())),
            Head::ByAge { age: Age::Months(n), .. } => Some((Q::AgeMonths, n.ticks())),
            Head::ByAge { age: Age::Years(n), .. } => Some((Q::AgeYears, n.ticks())),
            Head::ByDates { .. } => None,
        });
        if let Swatch::Counted { stitches, width, rounds, height } = self.swatch {
            all.extend([
                (Q::SwatchStitches, stitches.ticks()),
                (Q::SwatchWidth, width.ticks()),
                (Q::SwatchRounds, rounds.ticks()),
                (Q::SwatchHeight, height.ticks()),
            ]);
        }
        if let Some(band) = self.band.swatch {
            all.extend([
                (Q::BandSwatchStitches, band.stitches.ticks()),
                (Q::BandSwatchWidth, band.width.ticks()),
                (Q::BandSwatchRows, band.rows.ticks()),
                (Q::BandSwatchLength, band.length.ticks()),
            ]);
        }
        if let Stretch::Measured(ratio) = self.body_stretch {
            all.push((Q::BodyStretch, ratio.ticks()));
        }
        if let Stretch::Measured(ratio) = self.band.stretch {
            all.push((Q::BandStretch, ratio.ticks()));
        }
        all.extend(self.band.stripes.iter().map(|s| (Q::StripeRows, s.rows.get() as i32)));
        all.extend(self.body_stripes.iter().map(|s| (Q::StripeRounds, s.rounds.get() as i32)));
        if let Layout::Wedges(wedges) = self.layout {
            all.push((Q::Wedges, wedges as i32));
        }
        if let Closing::Gathered(stitches) = self.closing {
            all.push((Q::Gather, stitches.get() as i32));
        }
        if let Some(topper) = self.topper {
            all.extend([(topper.kind.quantity(), topper.size.ticks()), (Q::Fullness, topper.fullness.ticks())]);
        }
        for ball in &self.balls {
            all.extend([(Q::BallYarn, ball.yarn.ticks()), (Q::BallsOwned, ball.owned.ticks())]);
            all.extend(ball.grams.map(|grams| (Q::BallGrams, grams.ticks())));
            all.extend(ball.price.map(|price| (Q::BallPrice, i32::try_from(price.ticks()).unwrap_or(i32::MAX))));
        }
        all.extend(self.yarn_use.numbers());
        if let Some(instead) = self.instead {
            all.push((Q::InsteadYarn, instead.yarn.ticks()));
            all.extend(instead.grams.map(|grams| (Q::InsteadGrams, grams.ticks())));
            if let Some(Swatch::Counted { stitches, width, rounds, height }) = instead.swatch {
                all.extend([
                    (Q::InsteadStitches, stitches.ticks()),
                    (Q::InsteadWidth, width.ticks()),
                    (Q::InsteadRounds, rounds.ticks()),
                    (Q::InsteadHeight, height.ticks()),
                ]);
            }
        }
        all
    }

    /// The `index`-th number of a quantity (stripes and balls have several); `None` where this hat has no such number.
    ///
    /// ```
    /// use hatwright_sizing::{HatSpec, Quantity};
    /// assert_eq!(HatSpec::default().number(Quantity::StripeRows, 1), Some(2));
    /// assert_eq!(HatSpec::default().number(Quantity::HeadGirth, 0), None);
    /// ```
    pub fn number(&self, q: Quantity, index: usize) -> Option<i32> {
        // Not every ball has these: the index is the ball's.
        match q {
            Quantity::BallGrams => return self.balls.get(index)?.grams.map(Mass::ticks),
            Quantity::BallPrice => return self.balls.get(index)?.price.and_then(|price| price.ticks().try_into().ok()),
            _ => {}
        }
        self.numbers().into_iter().filter(|(of, _)| *of == q).nth(index).map(|(_, ticks)| ticks)
    }

    /// Puts a number in its place, if it is in its range and this hat has that place.
    ///
    /// Whether it did: a number out of range changes nothing.
    pub fn set_number(&mut self, q: Quantity, index: usize, ticks: i32) -> bool {
        use Quantity as Q;
        if !q.row().holds(ticks) || self.number(q, index).is_none() {
            return false;
        }
        let (length, count, ratio, whole) =
            (Length::from_ticks(ticks), Count::from_ticks(ticks), Ratio::from_ticks(ticks), ticks.unsigned_abs());
        match q {
            Q::Ease => self.ease = ratio,
            Q::BandHeight => self.band.height = Stitches::new(whole),
            Q::BandRounds => self.band.rounds = Rounds::new(whole),
            Q::Lining => self.lining = length,
            Q::Strands => self.strands = whole,
            Q::OverTop => self.over_top = Some(length),
            Q::Hook => self.hook = Some(length),
            Q::BandHook => self.band.hook = Some(length),
            Q::Percentile => self.set_build(Build::Percentile(ratio)),
            Q::Fold => self.band.fold = length,
            Q::Margin => self.extra = Extra::Share(ratio),
            Q::Chance => self.extra = Extra::Chance(ratio),
            Q::HeadGirth => self.head = Head::Measured(length),
            Q::AgeWeeks => self.set_age(Age::Weeks(count)),
            Q::AgeMonths => self.set_age(Age::Months(count)),
            Q::AgeYears => self.set_age(Age::Years(count)),
            Q::SwatchStitches | Q::SwatchWidth | Q::SwatchRounds | Q::SwatchHeight => {
                if let Swatch::Counted { stitches, width, rounds, height } = &mut self.swatch {
                    match q {
                        Q::SwatchStitches => *stitches = count,
                        Q::SwatchWidth => *width = length,
                        Q::SwatchRounds => *rounds = count,
                        _ => *height = length,
                    }
                }
            }
            Q::BandSwatchStitches | Q::BandSwatchWidth | Q::BandSwatchRows | Q::BandSwatchLength => {
                if let Some(band) = &mut self.band.swatch {
                    match q {
                        Q::BandSwatchStitches => band.stitches = count,
                        Q::BandSwatchWidth => band.width = length,
                        Q::BandSwatchRows => band.rows = count,
                        _ => band.length = length,
                    }
                }
            }
            Q::BodyStretch => self.body_stretch = Stretch::Measured(ratio),
            Q::BandStretch => self.band.stretch = Stretch::Measured(ratio),
            Q::StripeRows => self.band.stripes[index].rows = Rows::new(whole),
            Q::StripeRounds => self.body_stripes[index].rounds = Rounds::new(whole),
            Q::Wedges => self.layout = Layout::Wedges(whole),
            Q::Gather => self.closing = Closing::Gathered(Stitches::new(whole)),
            Q::PomPom | Q::Tassel | Q::Fullness => {
                if let Some(topper) = &mut self.topper {
                    if q == Q::Fullness { topper.fullness = ratio } else { topper.size = length }
                }
            }
            Q::BallYarn | Q::BallsOwned | Q::BallGrams | Q::BallPrice => {
                if let Some(ball) = self.balls.get_mut(index) {
                    match q {
                        Q::BallYarn => ball.yarn = count,
                        Q::BallsOwned => ball.owned = count,
                        Q::BallGrams => ball.grams = Some(Mass::from_ticks(ticks)),
                        _ => ball.price = Some(Money::from_ticks(ticks.into())),
                    }
                }
            }
            Q::InsteadYarn | Q::InsteadGrams | Q::InsteadStitches | Q::InsteadWidth | Q::InsteadRounds | Q::InsteadHeight => {
                if let Some(instead) = &mut self.instead {
                    instead.set_number(q, ticks);
                }
            }
            _ => return self.yarn_use.set_number(q, ticks) || self.shape.set_number(q, ticks),
        }
        true
    }

    fn set_build(&mut self, to: Build) {
        if let Head::ByAge { build, .. } | Head::ByDates { build, .. } = &mut self.head {
            *build = to;
        }
    }

    fn set_age(&mut self, to: Age) {
        if let Head::ByAge { age, .. } = &mut self.head {
            *age = to;
        }
    }

    /// Checks what came from outside: every number in its range, every colour there.
    ///
    /// # Errors
    /// The first breach, in the order of [`HatSpec::numbers`] and then counts and colours.
    pub fn check(&self) -> Result<(), Breach> {
        if let Some((q, ticks)) = self.numbers().into_iter().find(|(q, ticks)| !q.row().holds(*ticks)) {
            return Err(Breach::OutOfRange(q, ticks));
        }
        let stripes = 1..=Self::MOST_STRIPES;
        let fits = (1..=Self::MOST_COLOURS).contains(&self.balls.len())
            && stripes.contains(&self.band.stripes.len())
            && stripes.contains(&self.body_stripes.len());
        if !fits {
            return Err(Breach::WrongCount);
        }
        let used = self.band.stripes.iter().map(|s| s.colour).chain(self.body_stripes.iter().map(|s| s.colour));
        let mut used = used.chain(self.topper.and_then(|p| p.colour)).chain(self.yarn_use.weighed.map(|w| w.colour));
        if let Some(missing) = used.find(|c| usize::from(c.0) >= self.balls.len()) {
            return Err(Breach::NoSuchColour(missing));
        }
        if let Head::ByDates { born, worn, .. } = self.head
            && born.years_to(worn).is_none()
        {
            return Err(Breach::Dates);
        }
        if !self.band.fabric.bands(self.band.kind) || !self.fabric.bodies(self.style) {
            return Err(Breach::UnfitFabric);
        }
        self.kept.as_ref().map_or(Ok(()), Kept::check)
    }
}

impl Default for HatSpec {
    /// A four-year-old's cap at 12 stitches and 15 rounds to 10 cm, its band half folded, striped two rows and two rows.
    fn default() -> Self {
        let usual = |q: Quantity| q.row().usual;
        let (first, second) = (Colour(0), Colour(1));
        let rows = Rows::new(usual(Quantity::StripeRows) as u32);
        let round_stripe = |colour, rounds| RoundStripe { colour, rounds: Rounds::new(rounds) };
        Self {
            head: Head::ByAge {
                age: Age::Years(Count::from_ticks(usual(Quantity::AgeYears))),
                sex: Sex::Unknown,
                build: Build::Average,
            },
            over_top: None,
            lining: Length::ZERO,
            style: Style::Fitted,
            shape: Shape::default(),
            begun: Begun::Band,
            way: Way::Spiral,
            fabric: Fabric::Single,
            hook: None,
            strands: 1,
            swatch: Swatch::Counted {
                stitches: Count::from_ticks(usual(Quantity::SwatchStitches)),
                width: Length::from_ticks(usual(Quantity::SwatchWidth)),
                rounds: Count::from_ticks(usual(Quantity::SwatchRounds)),
                height: Length::from_ticks(usual(Quantity::SwatchHeight)),
            },
            body_stretch: Stretch::Usual,
            ease: Ratio::from_ticks(usual(Quantity::Ease)),
            coverage: Coverage::OverEars,
            band: BandSpec {
                kind: BandKind::Sideways,
                fabric: Fabric::SingleBack,
                edge: Edge::Chainless,
                hook: None,
                rounds: Rounds::new(usual(Quantity::BandRounds) as u32),
                height: Stitches::new(usual(Quantity::BandHeight) as u32),
                fold: Length::from_ticks(usual(Quantity::Fold)),
                swatch: None,
                stretch: Stretch::Usual,
                stripes: vec![RowStripe { colour: first, rows }, RowStripe { colour: second, rows }],
            },
            body_stripes: vec![round_stripe(first, 6), round_stripe(second, 2)],
            layout: Layout::Spread,
            closing: Closing::Drawn,
            topper: Some(Topper::usual(TopperKind::PomPom)),
            balls: vec![Ball::of(Count::from_ticks(usual(Quantity::BallYarn))); 2],
            extra: Extra::Chance(Ratio::from_ticks(usual(Quantity::Chance))),
            yarn_use: YarnUse::default(),
            instead: None,
            chosen: None,
            taste: Taste::Balanced,
            kept: None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_number_of_a_hat_can_be_set_and_read_back() {
        let mut measured = HatSpec {
            head: Head::Measured(Length::from_cm(52.0)),
            body_stretch: Stretch::Measured(Ratio::of(1.2)),
            layout: Layout::Wedges(6),
            closing: Closing::Gathered(Stitches::new(40)),
            ..HatSpec::default()
        };
        measured.band.stretch = Stretch::Measured(Ratio::of(1.4));
        let rows = Count::whole(12);
        measured.band.swatch =
            Some(BandSwatch { stitches: rows, width: Length::from_cm(10.0), rows, length: Length::from_cm(10.0) });
        for mut spec in [HatSpec::default(), measured, yarn_measured()] {
            let mut seen = std::collections::BTreeMap::new();
            for (q, ticks) in spec.numbers() {
                let index = seen.entry(q).and_modify(|i| *i += 1).or_insert(0_usize);
                assert_eq!(spec.number(q, *index), Some(ticks), "{q:?} {index}");
                for ticks in [q.row().least, q.row().most] {
                    assert!(spec.set_number(q, *index, ticks));
                    assert_eq!(spec.number(q, *index), Some(ticks), "{q:?} {index}");
                }
                assert!(!spec.set_number(q, *index, q.row().most + 1));
                assert_eq!(spec.number(q, *index), Some(q.row().most));
            }
            assert_eq!(spec.check(), Ok(()));
        }
    }

    /// A hat of which all is known of its yarn, and of another in its place.
    fn yarn_measured() -> HatSpec {
        let (grams, stitches, colour) = (Mass::from_grams(50.0), Stitches::new(200), Colour(1));
        let ten = Length::from_cm(10.0);
        let yarn_use = YarnUse {
            weighed: Some(crate::WeighedSwatch { colour, band: true, stitches, grams }),
            unravelled: Some(crate::Unravelled { band: false, stitches, length: ten }),
            kept: Some(crate::KeptUse { factor: Ratio::of(1.1), doubt: Ratio::of(0.06), way: crate::UseWay::Hat }),
            hat: Some(grams),
            ..YarnUse::default()
        };
        let (twelve, weight) = (Count::whole(12), YarnWeight::new(4).ok());
        let swatch = Some(Swatch::Counted { stitches: twelve, width: ten, rounds: twelve, height: ten });
        let price = Some(Money::from_ticks(450));
        HatSpec {
            topper: Some(Topper::usual(TopperKind::Tassel).coloured(colour)),
            balls: vec![Ball { grams: Some(grams), price, ..Ball::of(Count::whole(80)) }; 2],
            extra: Extra::Share(Ratio::of(0.2)),
            yarn_use,
            instead: Some(Instead { yarn: Count::whole(65), grams: Some(grams), weight, swatch }),
            ..HatSpec::default()
        }
    }

    /// Every quantity that a person types is a number of one of these hats.
    #[test]
    fn what_is_typed_of_yarn_is_in_the_table() {
        use Quantity as Q;
        let numbers: Vec<Quantity> =
            [HatSpec::default(), yarn_measured()].iter().flat_map(HatSpec::numbers).map(|(q, _)| q).collect();
        for q in Q::ALL.iter().filter(|q| (Q::PomPom..=Q::InsteadHeight).contains(q)) {
            assert!(numbers.contains(q), "{q:?}");
        }
    }

    /// A number has its place before it is typed, but for those that may be blank: they are put there, and never by accident.
    #[test]
    fn what_is_absent_is_not_set() {
        use Quantity as Q;
        let mut spec = HatSpec { topper: None, ..HatSpec::default() };
        for q in [
            Q::BallGrams,
            Q::BallPrice,
            Q::HatGrams,
            Q::KeptFactor,
            Q::KeptDoubt,
            Q::WeighedStitches,
            Q::WeighedGrams,
            Q::UnravelledStitches,
            Q::UnravelledLength,
            Q::InsteadYarn,
            Q::InsteadGrams,
            Q::InsteadStitches,
            Q::Fullness,
            Q::Tassel,
            Q::Margin,
        ] {
            assert!(spec.number(q, 0).is_none() && !spec.set_number(q, 0, q.row().usual), "{q:?}");
        }
        assert_eq!(spec, HatSpec { topper: None, ..HatSpec::default() });
        // A ball's own: the second's grams are the second ball's, whether the first's are known or not.
        spec.balls[1].grams = Some(Mass::from_grams(50.0));
        assert!(spec.set_number(Q::BallGrams, 1, 10_000) && !spec.set_number(Q::BallGrams, 0, 10_000));
        assert_eq!((spec.balls[0].grams, spec.balls[1].grams), (None, Some(Mass::from_grams(100.0))));
    }

    #[test]
    fn every_number_of_yarn_is_held_to_its_range() {
        type Change = fn(&mut HatSpec);
        let odd: [(Quantity, Change); 9] = [
            (Quantity::BallYarn, |spec| spec.balls[0].yarn = Count::whole(0)),
            (Quantity::BallGrams, |spec| spec.balls[1].grams = Some(Mass::from_grams(0.0))),
            (Quantity::BallsOwned, |spec| spec.balls[1].owned = Count::from_ticks(-1)),
            (Quantity::BallPrice, |spec| spec.balls[0].price = Some(Money::from_ticks(i64::MAX))),
            (Quantity::Chance, |spec| spec.extra = Extra::Chance(Ratio::of(1.0))),
            (Quantity::ScaleStep, |spec| spec.yarn_use.scale = Mass::from_grams(0.0)),
            (Quantity::HatGrams, |spec| spec.yarn_use.hat = Some(Mass::from_grams(-1.0))),
            (Quantity::KeptFactor, |spec| spec.yarn_use.kept.as_mut().unwrap().factor = Ratio::of(0.1)),
            (Quantity::InsteadYarn, |spec| spec.instead.as_mut().unwrap().yarn = Count::whole(0)),
        ];
        for (q, change) in odd {
            let mut spec = yarn_measured();
            change(&mut spec);
            assert!(matches!(spec.check(), Err(Breach::OutOfRange(of, _)) if of == q), "{q:?}: {:?}", spec.check());
        }
        let mut spec = yarn_measured();
        spec.yarn_use.weighed.as_mut().unwrap().colour = Colour(2);
        assert_eq!(spec.check(), Err(Breach::NoSuchColour(Colour(2))));
    }

    #[test]
    fn a_breach_is_found() {
        let spec = HatSpec { ease: Ratio::from_ticks(-1), ..HatSpec::default() };
        assert_eq!(spec.check(), Err(Breach::OutOfRange(Quantity::Ease, -1)));
        let mut spec = HatSpec::default();
        spec.band.stripes[0].colour = Colour(7);
        assert_eq!(spec.check(), Err(Breach::NoSuchColour(Colour(7))));
        spec.band.stripes.clear();
        assert_eq!(spec.check(), Err(Breach::WrongCount));
    }
}
