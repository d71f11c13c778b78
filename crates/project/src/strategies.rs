//! Random documents, for property tests here and in other crates (feature `strategies`).
//!
//! Parts are boxed: as one type of nested tuples they would overflow a test thread's stack.

mod pattern;
mod yarn;

use crate::{ColourName, Project, ProjectId, Rgb};
use hatwright_sizing::{
    Age, BandKind, BandSpec, BandSwatch, Begun, Build, Chosen, Closing, Colour, Count, Coverage, Day, Edge, Fabric, HatSpec,
    Head, Kept, KeptRounds, Layout, Length, Quantity, Ratio, RoundStripe, Rounds, RowStripe, Rows, Sex, Shape, SideTop, Stitches,
    Stretch, Style, Swatch, Taste, Way, YarnWeight,
};
use pattern::{designer, hand, sizes, terms, units};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use yarn::{ball, extra, instead, topper, yarn_use};

/// Any spec that passes its check, to the ends of every range. Most of them have no hat.
pub fn arb_spec() -> BoxedStrategy<HatSpec> {
    (1..=HatSpec::MOST_COLOURS)
        .prop_flat_map(|colours| {
            let body = (head(), lengths(), swatch(), stretch(Quantity::BodyStretch), ratio(Quantity::Ease), coverage());
            let stripes = vec(round_stripe(colours, whole(Quantity::StripeRounds)), 1..=HatSpec::MOST_STRIPES);
            let top = (layout(), closing(), option::of(topper(colours)));
            let balls = (vec(ball(), colours), yarn_use(colours), option::of(instead()));
            let said = (extra(), option::of((any::<u32>(), any::<u32>())), taste(), option::weighted(0.2, kept()));
            (kind(), body, band(colours), stripes, top, balls, said)
        })
        .prop_map(|(kind, body, band, body_stripes, top, balls, said)| {
            let (style, shape, begun, way, fabric) = kind;
            let (head, (over_top, lining, hook, strands), swatch, body_stretch, ease, coverage) = body;
            let (layout, closing, topper) = top;
            let (extra, chosen, taste, kept) = said;
            let (balls, yarn_use, instead) = balls;
            let chosen = chosen.map(|(rows, stitches)| Chosen { rows: Rows::new(rows), stitches: Stitches::new(stitches) });
            HatSpec {
                head,
                over_top,
                lining,
                style,
                shape,
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
                topper,
                balls,
                extra,
                yarn_use,
                instead,
                chosen,
                taste,
                kept,
            }
        })
        .boxed()
}

/// Specs such as people would ask for: heads from newborn to large adult, gauges from fine to bulky with rounds to suit, small
/// even stripes, bands that leave room for a crown; of any style and any fabric. Most of them have a hat.
pub fn arb_usual_spec() -> BoxedStrategy<HatSpec> {
    let gauge = (32_000..=62_000_i32, 800..=2_600_i32, 90..=135_i32);
    let stripe_counts = (1..=3_usize, 1..=4_usize);
    (gauge, stripe_counts, arb_spec())
        .prop_flat_map(|((girth, stitches, shape), (rows, rounds), wild)| {
            let colours = wild.balls.len();
            let swatch = Swatch::Counted {
                stitches: Count::from_ticks(stitches),
                width: Length::from_ticks(10_000),
                rounds: Count::from_ticks(stitches * shape / 100),
                height: Length::from_ticks(10_000),
            };
            let fits = (0..=800_i32, 2..=6_u32, 0..=3_000_i32);
            let band_stripes = vec(row_stripe(colours, Just(2_u32)), rows);
            let body_stripes = vec(round_stripe(colours, 1..=8_u32), rounds);
            (fits, band_stripes, body_stripes).prop_map(move |((ease, band_cm, fold), band_stripes, body_stripes)| {
                let height = (f64::from(band_cm) * f64::from(stitches) / 1000.0) as u32;
                let fold = Length::from_ticks(fold.min(band_cm as i32 * 500));
                HatSpec {
                    head: Head::Measured(Length::from_ticks(girth)),
                    swatch,
                    body_stretch: Stretch::Usual,
                    ease: Ratio::from_ticks(ease),
                    band: BandSpec {
                        height: Stitches::new(height.max(2)),
                        rounds: Rounds::new((f64::from(band_cm) * f64::from(stitches * shape / 100) / 1000.0).max(1.0) as u32),
                        fold,
                        swatch: None,
                        stretch: Stretch::Usual,
                        stripes: band_stripes,
                        ..wild.band
                    },
                    body_stripes,
                    chosen: None,
                    kept: None,
                    ..wild.clone()
                }
            })
        })
        .boxed()
}

/// Any project that passes its check, in all its texts too.
pub fn arb_project() -> BoxedStrategy<Project> {
    let head = (arb_id(), 0..Project::MOST_REVISIONS, any::<u64>());
    (head, text(80), text(120), (units(), terms(), hand(), designer(), sizes()), arb_spec())
        .prop_flat_map(|((id, revision, changed_ms), name, notes, (units, terms, hand, designer, sizes), spec)| {
            vec(((text(40), text(60), text(24)), any::<[u8; 3]>()), spec.balls.len()).prop_map(move |colours| {
                let colour = |((name, yarn, lot), [r, g, b]): ((String, String, String), [u8; 3])| ColourName {
                    name,
                    hex: Rgb::new(r, g, b),
                    yarn,
                    lot,
                };
                let project = Project {
                    id: id.clone(),
                    revision,
                    name: name.clone(),
                    units,
                    terms,
                    hand,
                    colours: colours.into_iter().map(colour).collect(),
                    notes: notes.clone(),
                    designer: designer.clone(),
                    sizes: sizes.clone(),
                    spec: spec.clone(),
                    changed_ms,
                };
                project.tidy()
            })
        })
        .boxed()
}

/// Any identity.
pub fn arb_id() -> BoxedStrategy<ProjectId> {
    any::<u64>().prop_map(ProjectId::from_bits).boxed()
}

fn text(most: usize) -> impl Strategy<Value = String> {
    vec(any::<u32>(), 0..=most).prop_map(|numbers| numbers.into_iter().map(letter).collect())
}

/// Mostly plain letters and signs, sometimes a line end, sometimes anything: one number each, as a choice of strategies for every
/// letter would take most of a test's time.
fn letter(number: u32) -> char {
    let (kind, rest) = (number % 8, number / 8);
    match kind {
        0 => char::from_u32(rest % 0x11_0000).unwrap_or('ß'),
        1 if rest % 4 == 0 => '\n',
        _ => char::from(b' ' + (rest % 95) as u8),
    }
}

fn ticks(quantity: Quantity) -> BoxedStrategy<i32> {
    let row = quantity.row();
    prop_oneof![8 => row.least..=row.most, 1 => Just(row.least), 1 => Just(row.most), 2 => Just(row.usual)].boxed()
}

fn whole(quantity: Quantity) -> impl Strategy<Value = u32> {
    ticks(quantity).prop_map(|n| n as u32)
}

fn length(quantity: Quantity) -> impl Strategy<Value = Length> {
    ticks(quantity).prop_map(Length::from_ticks)
}

fn count(quantity: Quantity) -> impl Strategy<Value = Count> {
    ticks(quantity).prop_map(Count::from_ticks)
}

fn ratio(quantity: Quantity) -> impl Strategy<Value = Ratio> {
    ticks(quantity).prop_map(Ratio::from_ticks)
}

fn head() -> BoxedStrategy<Head> {
    let age = prop_oneof![
        count(Quantity::AgeWeeks).prop_map(Age::Weeks),
        count(Quantity::AgeMonths).prop_map(Age::Months),
        count(Quantity::AgeYears).prop_map(Age::Years),
    ];
    let sex = prop_oneof![Just(Sex::Unknown), Just(Sex::Female), Just(Sex::Male)];
    let build = prop_oneof![
        Just(Build::Small),
        Just(Build::Average),
        Just(Build::Large),
        ratio(Quantity::Percentile).prop_map(Build::Percentile)
    ];
    // Any day on which somebody may have been born, and 110 years of 365.25 days after it.
    let days = (-40_000..=100_000_i32, 0..=40_177_i32);
    prop_oneof![
        length(Quantity::HeadGirth).prop_map(Head::Measured),
        (age, sex.clone(), build.clone()).prop_map(|(age, sex, build)| Head::ByAge { age, sex, build }),
        (days, sex, build).prop_map(|((born, lived), sex, build)| Head::ByDates {
            born: Day(born),
            worn: Day(born + lived),
            sex,
            build
        }),
    ]
    .boxed()
}

type Lengths = (Option<Length>, Length, Option<Length>, u32);

/// Over the top, lining, hook, strands.
fn lengths() -> BoxedStrategy<Lengths> {
    let over_top = option::of(length(Quantity::OverTop));
    (over_top, length(Quantity::Lining), option::of(length(Quantity::Hook)), whole(Quantity::Strands)).boxed()
}

type Kind = (Style, Shape, Begun, Way, Fabric);

/// A style with its measures, its direction, its way and a fabric that its body may be of.
fn kind() -> BoxedStrategy<Kind> {
    let begun = prop_oneof![Just(Begun::Band), Just(Begun::Crown)];
    let way = prop_oneof![Just(Way::Spiral), Just(Way::Joined)];
    (prop::sample::select(&Style::ALL[..]), shape(), begun, way)
        .prop_flat_map(|(style, shape, begun, way)| {
            let fit: Vec<Fabric> = Fabric::ALL.iter().copied().filter(|fabric| fabric.bodies(style)).collect();
            (Just(style), Just(shape), Just(begun), Just(way), prop::sample::select(fit))
        })
        .boxed()
}

fn shape() -> BoxedStrategy<Shape> {
    use Quantity as Q;
    let side_top = prop_oneof![Just(SideTop::Gathered), Just(SideTop::ShortRows)];
    let loose = (ratio(Q::SlouchWider), length(Q::SlouchLonger), length(Q::Tail), length(Q::Taper), whole(Q::TailStitches));
    let parts = (length(Q::TamAcross), length(Q::FlapLength), length(Q::FlapTie), length(Q::Brim), ratio(Q::Flare));
    (loose, parts, whole(Q::SideWedges), side_top)
        .prop_map(|(loose, parts, side_wedges, side_top)| {
            let (slouch_wider, slouch_longer, tail, taper, tail_stitches) = loose;
            let (tam_across, flap_length, flap_tie, brim, flare) = parts;
            Shape {
                slouch_wider,
                slouch_longer,
                tail,
                taper,
                tail_stitches: Stitches::new(tail_stitches),
                tam_across,
                flap_length,
                flap_tie,
                brim,
                flare,
                side_wedges,
                side_top,
            }
        })
        .boxed()
}

fn taste() -> BoxedStrategy<Taste> {
    prop_oneof![Just(Taste::Balanced), Just(Taste::Smooth), Just(Taste::Simple), Just(Taste::Nearest)].boxed()
}

/// Rounds that a hook can make of one another, up and down.
fn kept() -> BoxedStrategy<Kept> {
    let step = (any::<bool>(), 0..=1_000_u32, 0..=1_000_u32, prop_oneof![9 => 1..=20_u32, 1 => 1..=2_000_u32]);
    ((any::<u32>(), any::<u32>(), any::<u32>()), 4..=4_000_u32, vec(step, 0..12))
        .prop_map(|((planner, rows, stitches), first, steps)| {
            let mut after = first;
            let rounds = steps.into_iter().map(|(narrower, change, lead, times)| {
                after = if narrower { after - after * change / 2_000 } else { (after + after * change / 1_000).min(4_000) };
                KeptRounds { after, lead: lead.min(after), times }
            });
            Kept { planner, rows: Rows::new(rows), stitches: Stitches::new(stitches), rounds: rounds.collect() }
        })
        .boxed()
}

fn swatch() -> BoxedStrategy<Swatch> {
    let counted = (
        count(Quantity::SwatchStitches),
        length(Quantity::SwatchWidth),
        count(Quantity::SwatchRounds),
        length(Quantity::SwatchHeight),
    );
    prop_oneof![
        4 => counted.prop_map(|(stitches, width, rounds, height)| Swatch::Counted { stitches, width, rounds, height }),
        1 => (0..=7_u8).prop_filter_map("weights are 0 to 7", |n| YarnWeight::new(n).ok().map(Swatch::YarnWeight)),
    ]
    .boxed()
}

fn stretch(quantity: Quantity) -> BoxedStrategy<Stretch> {
    prop_oneof![Just(Stretch::Usual), ratio(quantity).prop_map(Stretch::Measured)].boxed()
}

fn coverage() -> BoxedStrategy<Coverage> {
    prop_oneof![Just(Coverage::EarTops), Just(Coverage::EarCanals), Just(Coverage::EarLobes), Just(Coverage::OverEars)].boxed()
}

fn band(colours: usize) -> BoxedStrategy<BandSpec> {
    let own = (
        count(Quantity::BandSwatchStitches),
        length(Quantity::BandSwatchWidth),
        count(Quantity::BandSwatchRows),
        length(Quantity::BandSwatchLength),
    );
    let own = own.prop_map(|(stitches, width, rows, length)| BandSwatch { stitches, width, rows, length });
    let stripes = vec(row_stripe(colours, whole(Quantity::StripeRows)), 1..=HatSpec::MOST_STRIPES);
    let measures = (
        whole(Quantity::BandHeight),
        whole(Quantity::BandRounds),
        length(Quantity::Fold),
        option::of(length(Quantity::BandHook)),
    );
    (band_kind(), measures, option::of(own), stretch(Quantity::BandStretch), stripes)
        .prop_map(|((kind, fabric, edge), (height, rounds, fold, hook), swatch, stretch, stripes)| BandSpec {
            kind,
            fabric,
            edge,
            hook,
            rounds: Rounds::new(rounds),
            height: Stitches::new(height),
            fold,
            swatch,
            stretch,
            stripes,
        })
        .boxed()
}

/// A kind of band, a fabric that it may be of, and how its edge begins.
fn band_kind() -> BoxedStrategy<(BandKind, Fabric, Edge)> {
    let edge = prop_oneof![Just(Edge::Chainless), Just(Edge::LooseChain)];
    (prop_oneof![Just(BandKind::Sideways), Just(BandKind::Around), Just(BandKind::None)], edge)
        .prop_flat_map(|(kind, edge)| {
            let fit: Vec<Fabric> = Fabric::ALL.iter().copied().filter(|fabric| fabric.bands(kind)).collect();
            (Just(kind), prop::sample::select(fit), Just(edge))
        })
        .boxed()
}

fn colour(colours: usize) -> BoxedStrategy<Colour> {
    (0..colours as u8).prop_map(Colour).boxed()
}

fn row_stripe(colours: usize, rows: impl Strategy<Value = u32> + 'static) -> BoxedStrategy<RowStripe> {
    (colour(colours), rows).prop_map(|(colour, rows)| RowStripe { colour, rows: Rows::new(rows) }).boxed()
}

fn round_stripe(colours: usize, rounds: impl Strategy<Value = u32> + 'static) -> BoxedStrategy<RoundStripe> {
    (colour(colours), rounds).prop_map(|(colour, rounds)| RoundStripe { colour, rounds: Rounds::new(rounds) }).boxed()
}

fn layout() -> BoxedStrategy<Layout> {
    prop_oneof![Just(Layout::Spread), whole(Quantity::Wedges).prop_map(Layout::Wedges)].boxed()
}

fn closing() -> BoxedStrategy<Closing> {
    prop_oneof![Just(Closing::Drawn), whole(Quantity::Gather).prop_map(|n| Closing::Gathered(Stitches::new(n)))].boxed()
}
