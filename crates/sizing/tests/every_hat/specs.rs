//! Specs of every style: any of what the table allows, and those that a person would ask for.

use hatwright_sizing::{
    Age, BandKind, BandSwatch, Begun, Build, Closing, Colour, Count, Coverage, Day, Edge, Fabric, HatSpec, Head, Layout, Length,
    Quantity, Ratio, RoundStripe, Rounds, RowStripe, Rows, Sex, SideTop, Stitches, Stretch, Style, Swatch, Taste, Way,
    YarnWeight,
};
use proptest::prelude::*;
use proptest::sample::select;

/// A spec that shows itself in one line.
#[derive(Clone)]
pub struct Asked(pub HatSpec);

impl core::fmt::Debug for Asked {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(&format!("{:?}", self.0))
    }
}

fn ticks(q: Quantity) -> impl Strategy<Value = i32> {
    let row = q.row();
    // The ends of a range are where things break.
    prop_oneof![1 => Just(row.least), 1 => Just(row.most), 6 => row.least..=row.most]
}

fn length(q: Quantity) -> impl Strategy<Value = Length> {
    ticks(q).prop_map(Length::from_ticks)
}

fn ratio(q: Quantity) -> impl Strategy<Value = Ratio> {
    ticks(q).prop_map(Ratio::from_ticks)
}

fn whole(q: Quantity) -> impl Strategy<Value = u32> {
    ticks(q).prop_map(i32::unsigned_abs)
}

fn head() -> impl Strategy<Value = Head> {
    let sex = || select(vec![Sex::Unknown, Sex::Female, Sex::Male]);
    let build = || {
        prop_oneof![
            select(vec![Build::Small, Build::Average, Build::Large]),
            ratio(Quantity::Percentile).prop_map(Build::Percentile)
        ]
    };
    prop_oneof![
        length(Quantity::HeadGirth).prop_map(Head::Measured),
        (ticks(Quantity::AgeYears), sex(), build()).prop_map(|(years, sex, build)| Head::ByAge {
            age: Age::Years(Count::from_ticks(years)),
            sex,
            build
        }),
        (0..40_000_i32, sex(), build()).prop_map(|(days, sex, build)| Head::ByDates {
            born: Day(-5_000),
            worn: Day(days - 5_000),
            sex,
            build
        }),
    ]
}

/// A swatch of stitches so wide and rounds so tall, in hundredths of a millimetre, counted over ten of each.
fn counted(w: i32, h: i32) -> Swatch {
    let ten = |each: i32| Length::from_ticks((each * 10).clamp(2_000, 60_000));
    let count = |each: i32| Count::from_ticks(ten(each).ticks() * 100 / each);
    Swatch::Counted { stitches: count(w), width: ten(w), rounds: count(h), height: ten(h) }
}

fn swatch(sane: bool) -> BoxedStrategy<Swatch> {
    if sane {
        // From fine to bulky yarn, single to double crochet.
        return (250..1_200_i32, 0.75..2.0_f64).prop_map(|(w, shape)| counted(w, (f64::from(w) * shape) as i32)).boxed();
    }
    let any = (125..6_000_i32, 105..10_000_i32).prop_map(|(w, h)| counted(w, h));
    prop_oneof![4 => any, 1 => (0..=7_u8).prop_map(|n| Swatch::YarnWeight(YarnWeight::new(n).unwrap()))].boxed()
}

fn stretch(q: Quantity) -> impl Strategy<Value = Stretch> {
    prop_oneof![Just(Stretch::Usual), ratio(q).prop_map(Stretch::Measured)]
}

/// Shapes and layouts: a change to a spec that is made of a few numbers.
fn shaped() -> impl Strategy<Value = HatSpec> {
    use Quantity as Q;
    let measures = (
        (ratio(Q::SlouchWider), length(Q::SlouchLonger), length(Q::Tail), length(Q::Taper), whole(Q::TailStitches)),
        (length(Q::TamAcross), length(Q::FlapLength), length(Q::FlapTie), length(Q::Brim), ratio(Q::Flare), whole(Q::SideWedges)),
        select(vec![SideTop::Gathered, SideTop::ShortRows]),
    );
    measures.prop_map(|(a, b, side_top)| {
        let mut spec = HatSpec::default();
        (spec.shape.slouch_wider, spec.shape.slouch_longer, spec.shape.tail, spec.shape.taper) = (a.0, a.1, a.2, a.3);
        spec.shape.tail_stitches = Stitches::new(a.4);
        (spec.shape.tam_across, spec.shape.flap_length, spec.shape.flap_tie, spec.shape.brim, spec.shape.flare) =
            (b.0, b.1, b.2, b.3, b.4);
        (spec.shape.side_wedges, spec.shape.side_top) = (b.5, side_top);
        spec
    })
}

/// Whatever the table allows.
pub fn any_spec() -> impl Strategy<Value = Asked> {
    anything().prop_map(Asked)
}

fn anything() -> impl Strategy<Value = HatSpec> {
    use Quantity as Q;
    let ways = (
        select(Style::ALL.to_vec()),
        select(vec![Begun::Band, Begun::Crown]),
        select(vec![Way::Spiral, Way::Joined]),
        select(vec![Coverage::EarTops, Coverage::EarCanals, Coverage::EarLobes, Coverage::OverEars]),
        select(vec![Taste::Balanced, Taste::Smooth, Taste::Simple, Taste::Nearest]),
        prop_oneof![Just(Layout::Spread), whole(Q::Wedges).prop_map(Layout::Wedges)],
        prop_oneof![Just(Closing::Drawn), whole(Q::Gather).prop_map(|n| Closing::Gathered(Stitches::new(n)))],
    );
    let body = (
        swatch(false),
        stretch(Q::BodyStretch),
        prop_oneof![3 => (0..800_i32).prop_map(Ratio::from_ticks), 1 => ratio(Q::Ease)],
        length(Q::Lining),
        prop::option::weighted(0.3, length(Q::OverTop)),
        select(Fabric::ALL.to_vec()),
    );
    let band = (
        select(vec![BandKind::Sideways, BandKind::Around, BandKind::None]),
        select(Fabric::ALL.to_vec()),
        prop_oneof![3 => 2..12_u32, 1 => whole(Q::BandHeight)],
        prop_oneof![3 => 1..8_u32, 1 => whole(Q::BandRounds)],
        prop_oneof![3 => Just(0), 1 => ticks(Q::Fold)],
        stretch(Q::BandStretch),
        prop::collection::vec((0..2_u8, 1..=6_u32), 1..4),
    );
    (head(), shaped(), ways, body, band).prop_map(|(head, mut spec, ways, body, band)| {
        spec.head = head;
        (spec.style, spec.begun, spec.way, spec.coverage, spec.taste, spec.layout, spec.closing) = ways;
        (spec.swatch, spec.body_stretch, spec.ease, spec.lining, spec.over_top, spec.fabric) = body;
        (spec.band.kind, spec.band.fabric) = (band.0, band.1);
        (spec.band.height, spec.band.rounds, spec.band.fold) =
            (Stitches::new(band.2), Rounds::new(band.3), Length::from_ticks(band.4));
        (spec.band.stretch, spec.band.edge) = (band.5, Edge::Chainless);
        spec.band.stripes = band.6.iter().map(|(c, rows)| RowStripe { colour: Colour(*c), rows: Rows::new(*rows) }).collect();
        spec.body_stripes =
            band.6.iter().map(|(c, rounds)| RoundStripe { colour: Colour(*c), rounds: Rounds::new(*rounds) }).collect();
        if !spec.band.fabric.bands(spec.band.kind) {
            spec.band.fabric = Fabric::SingleBack;
        }
        if !spec.fabric.bodies(spec.style) {
            spec.fabric = Fabric::Single;
        }
        spec
    })
}

/// What a person would ask for: heads from a baby's to a large man's, ordinary gauges, bands that leave room for a hat.
pub fn sane_spec() -> impl Strategy<Value = Asked> {
    sane().prop_map(Asked)
}

fn sane() -> impl Strategy<Value = HatSpec> {
    (anything(), 34_000..62_000_i32, swatch(true), 0..700_i32, 0..3_000_i32).prop_map(|(mut spec, girth, swatch, ease, fold)| {
        spec.head = Head::Measured(Length::from_ticks(girth));
        (spec.swatch, spec.ease, spec.over_top, spec.lining) = (swatch, Ratio::from_ticks(ease), None, Length::ZERO);
        (spec.body_stretch, spec.band.stretch) = (Stretch::Measured(Ratio::of(1.2)), Stretch::Measured(Ratio::of(1.3)));
        spec.coverage = Coverage::OverEars;
        let Swatch::Counted { width, stitches, height, rounds } = spec.swatch else { return spec };
        let (w, h) = (width.cm() / stitches.value(), height.cm() / rounds.value());
        // A band of 4 cm or a little more; above flaps, which begin at the tops of the ears, a narrow one.
        let tall = if spec.style == Style::EarFlap { 1.0 } else { 4.0 };
        spec.band.height = Stitches::new((tall / w).ceil().max(2.0) as u32);
        spec.band.rounds = Rounds::new((tall / h).round().max(1.0) as u32);
        let rows = Count::whole(10);
        spec.band.swatch = Some(BandSwatch {
            stitches: rows,
            width: Length::from_cm(w * 10.0),
            rows,
            length: Length::from_cm((if spec.band.kind == BandKind::Around { h } else { w }) * 10.0),
        });
        spec.band.fold = Length::from_ticks(fold);
        spec.shape.tam_across = Length::from_cm(f64::from(girth) / 1000.0 * 0.48);
        spec.shape.tail = Length::from_cm(spec.shape.tail.cm() % 60.0);
        spec.shape.taper = Length::from_cm(spec.shape.taper.cm() % 50.0);
        spec
    })
}
