//! A hat of the club's for every style but the fitted one.

use super::{INDIGO, LOGWOOD, MADDER, UNDYED, WALNUT, WELD, balls, band, by_age, cap, counted, percent, rounds};
use crate::{Project, ProjectId, Terms, Units};
use hatwright_sizing::{
    Age, Ball, BandKind, BandSpec, Begun, Closing, Colour, Count, Coverage, Fabric, HatSpec, Head, Layout, Length, Money, Rounds,
    Shape, SideTop, Style, Topper, TopperKind, Way,
};
use hatwright_words::document as words;

const TEN: Length = Length::from_ticks(10_000);

/// Half double crochet in joined rounds, with a post-stitch rib.
pub(super) fn slouch(id: ProjectId) -> Project {
    let spec = HatSpec {
        head: Head::Measured(Length::from_ticks(56_000)),
        style: Style::Slouch,
        way: Way::Joined,
        fabric: Fabric::HalfDouble,
        swatch: counted(13, 10, TEN),
        ease: percent(6),
        band: around(Fabric::PostRib, 5, &[(0, 5)]),
        body_stripes: rounds(&[(0, 9), (1, 1)]),
        topper: None,
        balls: balls(2, 110, 50, 4),
        ..HatSpec::default()
    };
    cap(id, words::cap_slouch(), Units::Centimetres, Terms::Us, &[LOGWOOD, UNDYED], "Mist brushed", spec)
}

/// Begun at the tip, in rings of the club's colours.
pub(super) fn stocking_cap(id: ProjectId) -> Project {
    let spec = HatSpec {
        head: Head::Measured(Length::from_ticks(57_000)),
        style: Style::Stocking,
        shape: Shape { tail: Length::from_ticks(45_000), ..Shape::default() },
        begun: Begun::Crown,
        swatch: counted(18, 20, TEN),
        ease: percent(6),
        band: band(12, Length::ZERO, None, &[(0, 2), (1, 2)]),
        body_stripes: rounds(&[(0, 6), (1, 6), (2, 6)]),
        topper: Some(Topper::usual(TopperKind::Tassel).sized(Length::from_ticks(9_000)).coloured(Colour(1))),
        balls: balls(3, 160, 50, 3),
        ..HatSpec::default()
    };
    cap(id, words::cap_stocking(), Units::Centimetres, Terms::Uk, &[INDIGO, WELD, UNDYED], "Regatta sport", spec)
}

/// With a back-loop band and an eight-pointed star.
pub(super) fn tam(id: ProjectId) -> Project {
    let spec = HatSpec {
        head: Head::Measured(Length::from_ticks(55_000)),
        style: Style::Tam,
        shape: Shape { tam_across: Length::from_ticks(26_000), ..Shape::default() },
        swatch: counted(16, 18, TEN),
        ease: percent(5),
        band: around(Fabric::SingleBack, 5, &[(0, 5)]),
        body_stripes: rounds(&[(1, 4), (0, 2)]),
        layout: Layout::Wedges(8),
        topper: Some(Topper::usual(TopperKind::PomPom).sized(Length::from_ticks(4_000)).coloured(Colour(0))),
        balls: balls(2, 125, 50, 3),
        ..HatSpec::default()
    };
    cap(id, words::cap_tam(), Units::Centimetres, Terms::Us, &[MADDER, WELD], "Slipway worsted", spec)
}

/// A two-year-old's, begun at the crown. No ties: at that age they strangle.
pub(super) fn ear_flaps(id: ProjectId) -> Project {
    let spec = HatSpec {
        head: by_age(Age::Years(Count::whole(2))),
        style: Style::EarFlap,
        shape: Shape { flap_length: Length::from_ticks(7_000), ..Shape::default() },
        begun: Begun::Crown,
        fabric: Fabric::HalfDouble,
        swatch: counted(14, 11, TEN),
        ease: percent(4),
        coverage: Coverage::EarTops,
        band: BandSpec { kind: BandKind::None, ..band(8, Length::ZERO, None, &[(0, 2)]) },
        body_stripes: rounds(&[(0, 2), (1, 2)]),
        topper: None,
        balls: balls(2, 80, 50, 4),
        ..HatSpec::default()
    };
    cap(id, words::cap_flaps(), Units::Centimetres, Terms::Us, &[WELD, INDIGO], "Boathouse wool", spec)
}

/// Half double crochet rib, worked sideways and joined.
pub(super) fn ear_warmer(id: ProjectId) -> Project {
    let rib = band(12, Length::ZERO, None, &[(0, 4), (1, 2)]);
    let spec = HatSpec {
        head: Head::Measured(Length::from_ticks(56_000)),
        style: Style::EarWarmer,
        swatch: counted(14, 16, TEN),
        ease: percent(8),
        band: BandSpec { fabric: Fabric::HalfDoubleBack, ..rib },
        body_stripes: rounds(&[(0, 1)]),
        topper: None,
        balls: balls(2, 90, 50, 4),
        ..HatSpec::default()
    };
    cap(id, words::cap_warmer(), Units::Centimetres, Terms::Us, &[WALNUT, UNDYED], "Stake-boat tweed", spec)
}

/// Cotton, begun at the crown, for watching races in the sun.
pub(super) fn brimmed(id: ProjectId) -> Project {
    let spec = HatSpec {
        head: Head::Measured(Length::from_ticks(56_500)),
        style: Style::Brimmed,
        shape: Shape { brim: Length::from_ticks(7_000), flare: percent(85), ..Shape::default() },
        begun: Begun::Crown,
        swatch: counted(18, 20, TEN),
        ease: percent(1),
        coverage: Coverage::EarTops,
        body_stripes: rounds(&[(0, 18), (1, 3)]),
        topper: None,
        balls: priced(balls(2, 125, 50, 3), 380),
        ..HatSpec::default()
    };
    cap(id, words::cap_brimmed(), Units::Centimetres, Terms::Uk, &[UNDYED, INDIGO], "Pontoon cotton", spec)
}

/// Half double crochet in the back loops, with a short-row crown.
pub(super) fn sideways(id: ProjectId) -> Project {
    let spec = HatSpec {
        head: Head::Measured(Length::from_ticks(57_000)),
        style: Style::Sideways,
        shape: Shape { side_top: SideTop::ShortRows, ..Shape::default() },
        fabric: Fabric::HalfDoubleBack,
        swatch: counted(14, 10, TEN),
        ease: percent(10),
        band: band(10, Length::from_ticks(5_000), None, &[(0, 2)]),
        body_stripes: rounds(&[(0, 4), (1, 4)]),
        closing: Closing::Drawn,
        topper: Some(Topper::usual(TopperKind::PomPom).sized(Length::from_ticks(7_000)).coloured(Colour(1))),
        balls: balls(2, 110, 50, 4),
        ..HatSpec::default()
    };
    cap(id, words::cap_sideways(), Units::Centimetres, Terms::Us, &[INDIGO, WELD], "Slipway worsted", spec)
}

/// A band worked around.
fn around(fabric: Fabric, rows: u32, stripes: &[(u8, u32)]) -> BandSpec {
    BandSpec { kind: BandKind::Around, fabric, rounds: Rounds::new(rows), ..band(8, Length::ZERO, None, stripes) }
}

/// Balls with a price, in hundredths.
fn priced(balls: Vec<Ball>, price: i64) -> Vec<Ball> {
    balls.into_iter().map(|ball| Ball { price: Some(Money::from_ticks(price)), ..ball }).collect()
}
