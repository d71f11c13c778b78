//! A hat for tests, written out by hand: a rowing club's winter cap in indigo and weld.

use hatwright_sizing::{
    BandKind, Begun, Colour, Depth, Doubt, Fit, Gauge, Hat, HatSpec, HeadBasis, HeadSize, Length, Part, PartYarn, Ratio, Remark,
    Round, RoundKind, Rounds, Rows, Size, Stitches, Style, Top, TopKind, TopperKind, TopperPlan, YarnLength, YarnNeed, Zone,
};

/// The usual cap, but for its body, which has two-round stripes as well.
pub(crate) fn spec() -> HatSpec {
    let mut spec = HatSpec::default();
    spec.body_stripes.iter_mut().for_each(|stripe| stripe.rounds = Rounds::new(2));
    spec
}

pub(crate) fn size(stitches: u32) -> Size {
    let girth = Length::from_cm(f64::from(stitches) / 1.2);
    let reach = Length::from_cm(f64::from(stitches) / 1.2 * 1.1);
    Size {
        rows: Rows::new(stitches),
        stitches: Stitches::new(stitches),
        band_girth: girth,
        girth,
        ease: Ratio::of(1.0 - girth.cm() / 49.8),
        reach,
        reaches: reach.cm() >= 49.8,
        adjustment: Stitches::new(0),
    }
}

/// Part, colour, stitches and metres: the sums are what the colours need.
const PARTS: [(Part, u8, u64, f64); 11] = [
    (Part::Foundation, 0, 11, 0.3),
    (Part::Band, 0, 308, 17.1),
    (Part::Band, 1, 307, 16.8),
    (Part::Body, 0, 280, 16.3),
    (Part::Body, 1, 224, 13.1),
    (Part::Crown, 0, 104, 29.2),
    (Part::Crown, 1, 128, 22.6),
    (Part::Ends, 0, 0, 1.1),
    (Part::Ends, 1, 0, 0.3),
    (Part::Topper, 0, 0, 7.4),
    (Part::Topper, 1, 0, 7.4),
];

pub(crate) fn hat() -> Hat {
    let stripe = |number: u32| Colour(((number - 1) / 2 % 2) as u8);
    let mut rounds = Vec::new();
    let mut before = 56;
    let plan = [(0, 0); 9].into_iter().chain([(6, 0), (0, 0), (7, 2), (8, 0), (9, 1), (9, 0), (8, 0)]);
    for (number, (decreases, lead)) in (1..).zip(plan) {
        let kind = match (number, decreases) {
            (1, _) => RoundKind::PickUp,
            (_, 0) => RoundKind::Plain,
            _ => RoundKind::Decrease,
        };
        rounds.push(Round {
            number,
            before,
            after: Stitches::new(before - decreases),
            decreases: Stitches::new(decreases),
            increases: Stitches::new(0),
            zone: if number <= 9 { Zone::Body } else { Zone::Crown },
            lead: Stitches::new(lead),
            kind,
            colour: stripe(number),
        });
        before -= decreases;
    }
    let need = |colour: u8, metres: f64, balls| YarnNeed {
        colour: Colour(colour),
        length: YarnLength::from_metres(metres),
        low: YarnLength::from_metres(metres * 0.75),
        high: YarnLength::from_metres(metres * 1.25),
        safe: YarnLength::from_metres(metres * 1.2),
        deviation: YarnLength::from_metres(metres * 0.25 / 1.645),
        balls,
    };
    let part = |(part, colour, stitches, metres): (Part, u8, u64, f64)| PartYarn {
        part,
        colour: Colour(colour),
        band: matches!(part, Part::Foundation | Part::Band),
        stitches,
        length: YarnLength::from_metres(metres),
    };
    Hat {
        style: Style::Fitted,
        begun: Begun::Band,
        band: BandKind::Sideways,
        head: HeadSize { girth: Length::from_cm(49.8), spread: Some(Length::from_cm(1.4)), basis: HeadBasis::Who },
        wanted_girth: Length::from_cm(46.314),
        gauge: Gauge {
            stitch: Length::from_ticks(833),
            round: Length::from_ticks(667),
            band_stitch: Length::from_ticks(833),
            band_row: Length::from_ticks(833),
            body_stretch: Ratio::from_ticks(11_000),
            band_stretch: Ratio::from_ticks(13_500),
            estimated: false,
            band_assumed: true,
        },
        size: size(56),
        neighbours: [48, 52, 60, 64].map(size).to_vec(),
        depth: Depth {
            wanted: Length::from_cm(19.7),
            promised: Length::from_cm(19.4),
            band: Length::from_cm(8.3),
            fold: Length::from_cm(4.2),
            above_band: Length::from_cm(15.3),
            straight: Rounds::new(9),
        },
        rounds,
        crown_miss: Some(Length::from_cm(0.6)),
        top: Some(Top {
            stitches: Stitches::new(before),
            kind: TopKind::Drawn,
            opening: Length::from_cm(2.1),
            bundle: Length::from_cm(0.9),
            strand: Length::from_cm(45.0),
        }),
        flaps: None,
        panel: None,
        band_rows: (1..=56).map(stripe).collect(),
        fit: Fit {
            least: Length::from_cm(45.7),
            most: Length::from_cm(51.3),
            ages: Some((1.6667, 4.5)),
            ribbed_ages: Some((1.6667, 110.0)),
        },
        girth_range: Some((Length::from_cm(44.8), Length::from_cm(48.7))),
        doubt: Some(Doubt {
            girth: (Length::from_cm(44.8), Length::from_cm(48.7)),
            depth: (Length::from_cm(18.9), Length::from_cm(19.9)),
            yarn_share: Ratio::of(0.0435),
            swatch_width: Some(Length::from_cm(24.0)),
        }),
        yarn: vec![need(0, 71.4, 2), need(1, 60.2, 1)],
        yarn_parts: PARTS.map(part).to_vec(),
        topper: Some(TopperPlan { kind: TopperKind::PomPom, size: Length::from_cm(6.0), wraps: 120, colour: None }),
        remarks: vec![
            Remark::AssumedBand,
            Remark::StripesMoved { nearest: Stitches::new(55), repeat: Rows::new(4) },
            Remark::SmallParts,
        ],
    }
}
