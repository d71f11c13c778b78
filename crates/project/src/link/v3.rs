//! Links of version 3: those of form 3. Frozen, and never written any more; `samples/v3` must open for ever. Version 4 is the same with
//! more at its end.
//!
//! A link holds what is its hat's, and what a phone in the yarn shop has to know of its yarn: names, lots, balls, what is owned. Days of
//! birth become the girth that they give; the kept rounds of a hat in progress, the weight of a finished one and a yarn that is only
//! weighed up stay at home. Measures of the shape and facts of the yarn are listed only where there is something to tell: that costs
//! two characters for most hats, in place of fifty.

use super::v2::{Girth, listed, shape};
use super::{Linked, named};
use crate::ColourName;
use crate::text::{LOT, YARN};
use crate::versions::v1::{Terms, Units};
use hatwright_sizing::{
    Ball, BandSpec, Begun, Chosen, Closing, Count, Coverage, Extra, Fabric, HatSpec, Head, KeptUse, Layout, Length, Mass, Money,
    Ratio, RoundStripe, Stretch, Style, Swatch, Taste, Topper, TopperKind, Unravelled, Way, WeighedSwatch, YarnUse, YarnWeight,
    head_size,
};
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
pub(super) struct Link {
    planner: u32,
    name: String,
    units: Units,
    terms: Terms,
    colours: Vec<(String, [u8; 3])>,
    spec: Spec,
    facts: Vec<(u8, Fact)>,
}

/// [`HatSpec`] without what stays at home.
#[derive(Serialize, Deserialize)]
pub(super) struct Spec {
    head: Girth,
    over_top: Option<Length>,
    lining: Length,
    style: Style,
    shape: Vec<(u8, i32)>,
    begun: Begun,
    way: Way,
    fabric: Fabric,
    swatch: Swatch,
    hook: Option<Length>,
    strands: u32,
    body_stretch: Stretch,
    ease: Ratio,
    coverage: Coverage,
    band: BandSpec,
    body_stripes: Vec<RoundStripe>,
    layout: Layout,
    closing: Closing,
    topper: Option<Top>,
    balls: Vec<Count>,
    extra: Extra,
    measured: Option<Measured>,
    chosen: Option<Chosen>,
    taste: Taste,
}

/// A topper, whose fullness is told where it is not the usual one.
#[derive(Serialize, Deserialize)]
struct Top {
    kind: TopperKind,
    size: Length,
    fullness: Option<Ratio>,
    colour: Option<hatwright_sizing::Colour>,
}

/// What is known of a colour's yarn beside the length of a ball.
#[derive(PartialEq, Serialize, Deserialize)]
pub(super) enum Fact {
    Yarn(String),
    Lot(String),
    Grams(Mass),
    Weight(YarnWeight),
    Owned(Count),
    Price(Money),
}

/// What was measured of the yarn in a stitch.
#[derive(Serialize, Deserialize)]
struct Measured {
    weighed: Option<WeighedSwatch>,
    unravelled: Option<Unravelled>,
    kept: Option<KeptUse>,
    scale: Mass,
    swatch_kept: bool,
}

/// As full as a topper usually is. Frozen: another default of the table changes nothing here.
const FULL: Ratio = Ratio::from_ticks(10_000);
/// Nothing measured. Frozen like it.
const UNMEASURED: YarnUse =
    YarnUse { weighed: None, unravelled: None, kept: None, hat: None, scale: Mass::from_ticks(100), swatch_kept: false };

impl Link {
    /// The hat as it is now; `None` where a measure of its shape or a fact of its yarn stands in no place, twice, or without need.
    pub(super) fn migrate(self) -> Option<Linked> {
        let Self { planner, name, units, terms, colours, spec, facts } = self;
        let (colours, spec) = known(named(colours), hat(spec)?, &facts)?;
        Some(Linked::plain(planner, name, (units.migrate(), terms.migrate()), colours, spec))
    }
}

/// Colours and spec with what is told of their yarns.
pub(super) fn known(mut colours: Vec<ColourName>, mut spec: HatSpec, facts: &[(u8, Fact)]) -> Option<(Vec<ColourName>, HatSpec)> {
    for (i, fact) in facts {
        let of = if *i == EVERY { 0..colours.len() } else { usize::from(*i)..usize::from(*i) + 1 };
        let (colours, balls) = (colours.get_mut(of.clone())?, spec.balls.get_mut(of)?);
        for (colour, ball) in colours.iter_mut().zip(balls) {
            match fact {
                Fact::Yarn(yarn) => colour.yarn.clone_from(yarn),
                Fact::Lot(lot) => colour.lot.clone_from(lot),
                Fact::Grams(grams) => ball.grams = Some(*grams),
                Fact::Weight(weight) => ball.weight = Some(*weight),
                Fact::Owned(owned) => ball.owned = *owned,
                Fact::Price(price) => ball.price = Some(*price),
            }
        }
    }
    // One hat has one link.
    (self::facts(&colours, &spec.balls) == facts).then_some((colours, spec))
}

/// In place of a colour's number: every colour's, of two or more.
const EVERY: u8 = u8::MAX;

/// What is known of the yarns, kind by kind.
pub(super) fn facts(colours: &[ColourName], balls: &[Ball]) -> Vec<(u8, Fact)> {
    let mut all = Vec::new();
    let mut add = |of: &dyn Fn(&ColourName, &Ball) -> Option<Fact>| {
        let each: Vec<Option<Fact>> = colours.iter().zip(balls).map(|(colour, ball)| of(colour, ball)).collect();
        let one = each.len() > 1 && each.iter().all(|fact| *fact == each[0]);
        let told = if one { 1 } else { each.len() };
        let numbered = (0_u8..).zip(each.into_iter().take(told));
        all.extend(numbered.filter_map(|(i, fact)| Some((if one { EVERY } else { i }, fact?))));
    };
    add(&|colour, _| Some(YARN.tidy(&colour.yarn)).filter(|yarn| !yarn.is_empty()).map(Fact::Yarn));
    add(&|colour, _| Some(LOT.tidy(&colour.lot)).filter(|lot| !lot.is_empty()).map(Fact::Lot));
    add(&|_, ball| ball.grams.map(Fact::Grams));
    add(&|_, ball| ball.weight.map(Fact::Weight));
    add(&|_, ball| (ball.owned.ticks() != 0).then_some(Fact::Owned(ball.owned)));
    add(&|_, ball| ball.price.map(Fact::Price));
    all
}

fn told(topper: &Topper) -> Top {
    let Topper { kind, size, fullness, colour } = *topper;
    Top { kind, size, fullness: (fullness != FULL).then_some(fullness), colour }
}

/// `None` where the usual fullness is told without need.
fn topper(top: &Top) -> Option<Topper> {
    let Top { kind, size, fullness, colour } = *top;
    (fullness != Some(FULL)).then_some(Topper { kind, size, fullness: fullness.unwrap_or(FULL), colour })
}

fn measured(used: &YarnUse) -> Option<Measured> {
    let YarnUse { weighed, unravelled, kept, hat: _, scale, swatch_kept } = *used;
    let here = YarnUse { hat: None, ..*used };
    (here != UNMEASURED).then_some(Measured { weighed, unravelled, kept, scale, swatch_kept })
}

/// `None` where nothing is told at length.
fn yarn_use(told: Option<&Measured>) -> Option<YarnUse> {
    let Some(&Measured { weighed, unravelled, kept, scale, swatch_kept }) = told else { return Some(UNMEASURED) };
    let used = YarnUse { weighed, unravelled, kept, hat: None, scale, swatch_kept };
    (used != UNMEASURED).then_some(used)
}

/// A head without anyone's birthday.
pub(super) fn girth(head: &Head) -> Girth {
    match *head {
        Head::Measured(girth) => Girth::Measured(girth),
        Head::ByAge { age, sex, build } => Girth::ByAge { age, sex, build },
        Head::ByDates { .. } => Girth::Measured(head_size(head).girth),
    }
}

pub(super) fn spec(spec: &HatSpec) -> Spec {
    let HatSpec { over_top, lining, style, shape, begun, way, fabric, swatch, hook, strands, body_stretch, ease, .. } = *spec;
    let HatSpec { coverage, layout, closing, extra, chosen, taste, .. } = *spec;
    let HatSpec { band, body_stripes, .. } = spec.clone();
    Spec {
        head: girth(&spec.head),
        over_top,
        lining,
        style,
        shape: listed(&shape),
        begun,
        way,
        fabric,
        swatch,
        hook,
        strands,
        body_stretch,
        ease,
        coverage,
        band,
        body_stripes,
        layout,
        closing,
        topper: spec.topper.as_ref().map(told),
        balls: spec.balls.iter().map(|ball| ball.yarn).collect(),
        extra,
        measured: measured(&spec.yarn_use),
        chosen,
        taste,
    }
}

pub(super) fn hat(spec: Spec) -> Option<HatSpec> {
    Some(HatSpec {
        head: spec.head.head(),
        over_top: spec.over_top,
        lining: spec.lining,
        style: spec.style,
        shape: shape(&spec.shape)?,
        begun: spec.begun,
        way: spec.way,
        fabric: spec.fabric,
        swatch: spec.swatch,
        hook: spec.hook,
        strands: spec.strands,
        body_stretch: spec.body_stretch,
        ease: spec.ease,
        coverage: spec.coverage,
        band: spec.band,
        body_stripes: spec.body_stripes,
        layout: spec.layout,
        closing: spec.closing,
        topper: match &spec.topper {
            Some(top) => Some(topper(top)?),
            None => None,
        },
        balls: spec.balls.into_iter().map(Ball::of).collect(),
        extra: spec.extra,
        yarn_use: yarn_use(spec.measured.as_ref())?,
        instead: None,
        chosen: spec.chosen,
        taste: spec.taste,
        kept: None,
    })
}
