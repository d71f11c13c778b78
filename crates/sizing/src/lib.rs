//! The numbers of a crocheted hat: head, swatch, fit, band, crown, yarn.
//!
//! Pure: no words for people, no clock, no chance, no input or output. The same [`HatSpec`] gives the same [`Hat`] on every
//! platform, bit for bit, because every transcendental function comes from the `libm` crate.

mod ages;
mod arith;
mod counts;
mod crown;
#[cfg(test)]
mod crown_check;
mod curve;
mod floor;
mod gauge;
mod hat;
mod head;
mod normal;
mod planner;
mod quantity;
mod spec;
mod strands;
mod units;
mod walk;
mod yarn;

pub use ages::ages_served;
pub use arith::{gcd, lcm};
pub use gauge::band_height;
pub use hat::{
    Depth, Fit, Gauge, Hat, HeadBasis, HeadSize, PLANNER, PomPomPlan, Refusal, Remark, Round, RoundKind, Size, Top, Unsuited,
    YarnLength, YarnNeed,
};
pub use head::{Heads, head_size, heads_at, share_served};
pub use normal::{normal_quantile, normal_share_below};
pub use planner::plan;
pub use quantity::{Quantity, Row, Unit};
pub use spec::{
    Age, Ball, BandSpec, BandSwatch, Breach, Build, Chosen, Closing, Colour, Coverage, HatSpec, Head, Layout, PomPom,
    RoundStripe, RowStripe, Sex, Stretch, Swatch, YarnWeight,
};
pub use strands::{Change, Start, changes};
pub use units::{Count, Length, Ratio, Rounds, Rows, Stitches};
