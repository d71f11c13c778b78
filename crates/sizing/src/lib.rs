//! The numbers of a crocheted hat: head, swatch, fit, band, crown, yarn.
//!
//! Pure: no words for people, no clock, no chance, no input or output. The same [`HatSpec`] gives the same [`Hat`] on every
//! platform, bit for bit, because every transcendental function comes from the `libm` crate.

mod ages;
mod alternatives;
mod arith;
mod counts;
mod crown;
#[cfg(test)]
mod crown_check;
#[cfg(test)]
mod crown_geometry;
mod curve;
mod doubt;
mod fabric;
mod fit_curve;
mod floor;
mod gauge;
mod gauge_hint;
mod growing;
mod hat;
mod hat_sizes;
mod head;
mod kept;
mod matters;
mod normal;
mod operations;
mod planner;
mod quantity;
mod replan;
mod spec;
mod strands;
mod style;
mod units;
mod walk;
mod walk_shrink;
mod walk_window;
mod yarn;

pub use ages::ages_served;
pub use alternatives::{Alternative, alternatives};
pub use arith::{gcd, lcm};
pub use doubt::Doubt;
pub use fabric::{Fabric, FabricRow, Loops, Stitch};
pub use fit_curve::{FitPoint, FitRow, fit_curve, fit_table};
pub use gauge::band_height;
pub use gauge_hint::{GaugeHint, gauge_hint, weights_suited};
pub use growing::{Growing, room_to_grow};
pub use hat::{
    Depth, Fit, FlapRow, Flaps, Gauge, Hat, HeadBasis, HeadSize, PLANNER, Panel, PanelRow, PomPomPlan, Refusal, Remark, Round,
    RoundKind, Size, Top, TopKind, Unsuited, YarnLength, YarnNeed, Zone,
};
pub use hat_sizes::{HatLabels, hat_labels, stand_in};
pub use head::{Heads, girth_below, head_size, heads_at, share_served};
pub use normal::{normal_quantile, normal_share_below};
pub use operations::{Operation, Worked, operations};
pub use planner::plan;
pub use quantity::{Quantity, Row, Unit};
pub use replan::{NoWayOn, NotHere, Progress, RealGauge, Replanned, Undo, UndoWhy, measurable, replan};
pub use spec::{
    Age, Ball, BandSpec, BandSwatch, Breach, Build, Chosen, Closing, Colour, Coverage, HatSpec, Head, Layout, PomPom,
    RoundStripe, RowStripe, Sex, Stretch, Swatch, YarnWeight,
};
pub use strands::{Change, Start, changes};
pub use style::{BandKind, Begun, Day, Edge, Kept, KeptRounds, Shape, SideTop, Style, Taste, Way};
pub use units::{Count, Length, Ratio, Rounds, Rows, Stitches};
