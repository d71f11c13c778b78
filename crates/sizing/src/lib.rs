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
mod instead;
mod kept;
mod matters;
mod normal;
mod only;
mod operations;
mod planner;
mod quantity;
mod replan;
mod shop;
mod spec;
mod strands;
mod style;
mod units;
mod walk;
mod walk_shrink;
mod walk_window;
mod yarn;
mod yarn_hint;
mod yarn_use;

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
    Depth, Fit, FlapRow, Flaps, Gauge, Hat, HeadBasis, HeadSize, PLANNER, Panel, PanelRow, PartYarn, Refusal, Remark, Round,
    RoundKind, Size, Top, TopKind, TopperPlan, Unsuited, YarnLength, YarnNeed, Zone,
};
pub use hat_sizes::{HatLabels, hat_labels, stand_in};
pub use head::{Heads, girth_below, head_size, heads_at, share_served};
pub use instead::{Swap, SwapBasis, Verdict, swap};
pub use normal::{normal_quantile, normal_share_below};
pub use only::{Offer, OfferKind, Only, only_this_much};
pub use operations::{Operation, Part, Worked, operations};
pub use planner::plan;
pub use quantity::{Quantity, Row, Unit};
pub use replan::{NoWayOn, NotHere, Progress, RealGauge, Replanned, Undo, UndoWhy, measurable, replan};
pub use shop::{Buy, Shop, buy, chance_of, shop};
pub use spec::{
    Age, Ball, BandSpec, BandSwatch, Breach, Build, Chosen, Closing, Colour, Coverage, Extra, HatSpec, Head, Instead, Layout,
    RoundStripe, RowStripe, Sex, Stretch, Swatch, Topper, TopperKind, YarnWeight,
};
pub use strands::{Change, Start, changes};
pub use style::{BandKind, Begun, Day, Edge, Kept, KeptRounds, Shape, SideTop, Style, Taste, Way};
pub use units::{Count, Length, Mass, Money, Ratio, Rounds, Rows, Stitches};
pub use yarn::{swatch_yarn, whole_balls};
pub use yarn_hint::{YarnHint, yarn_hint};
pub use yarn_use::{KeptUse, Unravelled, UseWay, WeighedSwatch, YarnRate, YarnUse, rate_of_hat, stitch_yarn, yarn_rates};
