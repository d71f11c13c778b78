//! Links of version 2: those of form 2. Frozen, and never written any more; `samples/v2` must open for ever.
//!
//! A link held what is its hat's and no more. Days of birth become the girth that they give, and the kept rounds of a hat in
//! progress stay at home. Measures of the shape are listed only where they differ from what they were when this version was made:
//! that costs one character for most hats, in place of thirty.

use super::{Linked, named};
use crate::versions::v1::{Terms, Units};
use crate::versions::v2::spec::{Ball, HatSpec, PomPom};
use hatwright_sizing::{
    Age, BandSpec, Begun, Build, Chosen, Closing, Coverage, Fabric, Head, Layout, Length, Ratio, RoundStripe, Sex, Shape,
    SideTop, Stitches, Stretch, Style, Swatch, Taste, Way,
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
}

/// [`HatSpec`] without what stays at home.
#[derive(Serialize, Deserialize)]
struct Spec {
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
    pom_pom: Option<PomPom>,
    balls: Vec<Ball>,
    margin: Ratio,
    chosen: Option<Chosen>,
    taste: Taste,
}

/// A head that says nothing of anyone's birthday.
#[derive(Clone, Copy, PartialEq, Serialize, Deserialize)]
pub(super) enum Girth {
    Measured(Length),
    ByAge { age: Age, sex: Sex, build: Build },
}

impl Girth {
    pub(super) const fn head(self) -> Head {
        match self {
            Self::Measured(girth) => Head::Measured(girth),
            Self::ByAge { age, sex, build } => Head::ByAge { age, sex, build },
        }
    }
}

impl Link {
    /// The hat as it is now; `None` where a measure of its shape stands in no place, twice, or without need.
    pub(super) fn migrate(self) -> Option<Linked> {
        let Self { planner, name, units, terms, colours, spec } = self;
        Some(Linked::plain(planner, name, (units.migrate(), terms.migrate()), named(colours), hat(spec)?.migrate()))
    }
}

fn hat(spec: Spec) -> Option<HatSpec> {
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
        pom_pom: spec.pom_pom,
        balls: spec.balls,
        margin: spec.margin,
        chosen: spec.chosen,
        taste: spec.taste,
        kept: None,
    })
}

/// The measures in their places, as they are where a link does not list them. Frozen: another default of the table changes nothing here.
const UNLISTED: [i32; 12] = [1_500, 5_000, 30_000, 30_000, 10, 24_500, 8_000, 0, 6_000, 10_000, 6, 0];

fn measures(shape: &Shape) -> [i32; 12] {
    [
        shape.slouch_wider.ticks(),
        shape.slouch_longer.ticks(),
        shape.tail.ticks(),
        shape.taper.ticks(),
        shape.tail_stitches.get() as i32,
        shape.tam_across.ticks(),
        shape.flap_length.ticks(),
        shape.flap_tie.ticks(),
        shape.brim.ticks(),
        shape.flare.ticks(),
        shape.side_wedges as i32,
        match shape.side_top {
            SideTop::Gathered => 0,
            SideTop::ShortRows => 1,
        },
    ]
}

pub(super) fn listed(shape: &Shape) -> Vec<(u8, i32)> {
    let places = (0..).zip(measures(shape)).zip(UNLISTED);
    places.filter(|((_, measure), unlisted)| measure != unlisted).map(|(listed, _)| listed).collect()
}

pub(super) fn shape(listed: &[(u8, i32)]) -> Option<Shape> {
    let mut all = UNLISTED;
    for (place, measure) in listed {
        *all.get_mut(usize::from(*place))? = *measure;
    }
    let [wider, longer, tail, taper, tail_stitches, across, flap, tie, brim, flare, wedges, top] = all;
    let shape = Shape {
        slouch_wider: Ratio::from_ticks(wider),
        slouch_longer: Length::from_ticks(longer),
        tail: Length::from_ticks(tail),
        taper: Length::from_ticks(taper),
        tail_stitches: Stitches::new(tail_stitches.try_into().ok()?),
        tam_across: Length::from_ticks(across),
        flap_length: Length::from_ticks(flap),
        flap_tie: Length::from_ticks(tie),
        brim: Length::from_ticks(brim),
        flare: Ratio::from_ticks(flare),
        side_wedges: wedges.try_into().ok()?,
        side_top: match top {
            0 => SideTop::Gathered,
            1 => SideTop::ShortRows,
            _ => return None,
        },
    };
    // One hat has one link.
    (self::listed(&shape) == listed).then_some(shape)
}
