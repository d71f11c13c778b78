//! The planner's input as form 2 and links of version 2 hold it. Frozen: see [`super`].

use hatwright_sizing as now;
use now::{
    BandSpec, Begun, Chosen, Closing, Count, Coverage, Fabric, Head, Kept, Layout, Length, Ratio, RoundStripe, Shape, Stretch,
    Style, Swatch, Taste, Way,
};
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
pub(crate) struct HatSpec {
    pub head: Head,
    pub over_top: Option<Length>,
    pub lining: Length,
    pub style: Style,
    pub shape: Shape,
    pub begun: Begun,
    pub way: Way,
    pub fabric: Fabric,
    pub swatch: Swatch,
    pub hook: Option<Length>,
    pub strands: u32,
    pub body_stretch: Stretch,
    pub ease: Ratio,
    pub coverage: Coverage,
    pub band: BandSpec,
    pub body_stripes: Vec<RoundStripe>,
    pub layout: Layout,
    pub closing: Closing,
    pub pom_pom: Option<PomPom>,
    pub balls: Vec<Ball>,
    pub margin: Ratio,
    pub chosen: Option<Chosen>,
    pub taste: Taste,
    pub kept: Option<Kept>,
}

#[derive(Serialize, Deserialize)]
pub(crate) struct PomPom {
    pub diameter: Length,
    pub colour: Option<now::Colour>,
}

#[derive(Serialize, Deserialize)]
pub(crate) struct Ball {
    pub yarn: Count,
}

impl HatSpec {
    /// To form 3. What was bought over the estimate was a share set by hand, and stays one.
    pub(crate) fn migrate(self) -> now::HatSpec {
        now::HatSpec {
            head: self.head,
            over_top: self.over_top,
            lining: self.lining,
            style: self.style,
            shape: self.shape,
            begun: self.begun,
            way: self.way,
            fabric: self.fabric,
            swatch: self.swatch,
            hook: self.hook,
            strands: self.strands,
            body_stretch: self.body_stretch,
            ease: self.ease,
            coverage: self.coverage,
            band: self.band,
            body_stripes: self.body_stripes,
            layout: self.layout,
            closing: self.closing,
            topper: self.pom_pom.map(PomPom::migrate),
            balls: self.balls.into_iter().map(|ball| now::Ball::of(ball.yarn)).collect(),
            extra: now::Extra::Share(self.margin),
            yarn_use: now::YarnUse::default(),
            instead: None,
            chosen: self.chosen,
            taste: self.taste,
            kept: self.kept,
        }
    }
}

impl PomPom {
    fn migrate(self) -> now::Topper {
        let Self { diameter, colour } = self;
        // As full as all pom-poms were. Frozen: another default of the table changes nothing here.
        now::Topper { kind: now::TopperKind::PomPom, size: diameter, fullness: Ratio::from_ticks(10_000), colour }
    }
}
