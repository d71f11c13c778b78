//! Hats for the tests, put together by hand: extremes that no planner would choose belong to them.

use crate::written::sample as written;
use core::f64::consts::PI;
use hatwright_sizing::{
    BandKind, BandSpec, Begun, Colour, Count, Depth, Fabric, Gauge, Hat, HatSpec, Head, HeadSize, Length, Ratio, Round,
    RoundKind, Rounds, Rows, Shape, SideTop, Size, Stitches, Style, Swatch, Top, TopKind, Topper, TopperKind, TopperPlan,
    YarnNeed, Zone, plan,
};

/// What a sample differs in.
#[derive(Clone, Debug)]
pub(super) struct Sample {
    pub head: f64,
    pub ease: f64,
    /// Stitches and rounds in 10 cm.
    pub gauge: (f64, f64),
    pub depth: f64,
    /// Stitches of the band's height, and centimetres folded.
    pub band: (u32, f64),
    /// Rows and rounds of a stripe; colours in turn.
    pub stripes: (usize, usize, u8),
    pub gathered: bool,
    pub pom: Option<(f64, Option<u8>)>,
}

impl Sample {
    pub const CAP: Self = Self {
        head: 49.8,
        ease: 0.07,
        gauge: (12.0, 15.0),
        depth: 0.395,
        band: (10, 4.2),
        stripes: (2, 2, 2),
        gathered: false,
        pom: Some((6.0, None)),
    };

    pub fn hat(&self) -> Hat {
        let cm = Length::from_cm;
        let (w, h) = (10.0 / self.gauge.0, 10.0 / self.gauge.1);
        let wanted = self.head * (1.0 - self.ease);
        let n = ((wanted / w / 4.0).round() as u32 * 4).max(8);
        let girth = f64::from(n) * w;
        let band = f64::from(self.band.0) * w;
        let above = self.depth * self.head + self.band.1 - band;
        let colour = |i: usize, run: usize| Colour(((i / run.max(1)) % usize::from(self.stripes.2)) as u8);

        let mut counts = Vec::new();
        let mut arc = 0.0;
        if self.gathered {
            counts = vec![n; (above / h).round().max(3.0) as usize];
        } else {
            // From the centre outward along the hemisphere (or the flatter crown that there is room for).
            let quarter = above.min(self.head / 4.0);
            arc += 8.0 * w / (2.0 * PI);
            while arc < above {
                let full = girth / w * (PI / 2.0 * (arc / quarter).min(1.0)).sin();
                counts.push((full.min(1.05 * 2.0 * PI * arc / w).round() as u32).clamp(8, n));
                arc += h;
            }
            counts.reverse();
            if counts.is_empty() {
                counts.push(n);
            }
            counts[0] = n;
        }
        let mut before = n;
        let rounds: Vec<Round> = counts
            .iter()
            .enumerate()
            .map(|(i, after)| {
                let decreases = before.saturating_sub(*after);
                let kind = match (i, decreases) {
                    (0, _) => RoundKind::PickUp,
                    (_, 0) => RoundKind::Plain,
                    _ => RoundKind::Decrease,
                };
                let round = Round {
                    number: i as u32 + 1,
                    before,
                    after: Stitches::new(*after),
                    decreases: Stitches::new(decreases),
                    increases: Stitches::new(0),
                    zone: if decreases > 0 || counts[..i].iter().any(|c| *c < n) { Zone::Crown } else { Zone::Body },
                    lead: Stitches::new(0),
                    kind,
                    colour: colour(i + self.stripes.1, self.stripes.1),
                };
                before = *after;
                round
            })
            .collect();
        let opening = f64::from(before) * w / PI;
        // A gathered tube is drawn in to its centre; a few stitches leave their opening's radius.
        let above = rounds.len() as f64 * h + if self.gathered { 0.0 } else { opening / 2.0 };
        let rows = n + n % 2;
        let base = written::hat();
        Hat {
            head: HeadSize { girth: cm(self.head), ..base.head },
            wanted_girth: cm(wanted),
            gauge: Gauge { stitch: cm(w), round: cm(h), band_stitch: cm(w), band_row: cm(w), ..base.gauge },
            size: Size { rows: Rows::new(rows), girth: cm(girth), band_girth: cm(f64::from(rows) * w), ..written::size(n) },
            depth: Depth {
                wanted: cm(self.depth * self.head),
                promised: cm(above + band - self.band.1),
                band: cm(band),
                fold: cm(self.band.1),
                above_band: cm(above),
                straight: Rounds::new(1),
            },
            rounds,
            top: Some(Top {
                stitches: Stitches::new(before),
                kind: if self.gathered { TopKind::Gathered } else { TopKind::Drawn },
                opening: cm(opening),
                bundle: cm(if self.gathered { 3.0 } else { 1.0 }),
                strand: cm(45.0),
            }),
            band_rows: (0..rows as usize).map(|i| colour(i, self.stripes.0)).collect(),
            yarn: (0..self.stripes.2).map(|c| YarnNeed { colour: Colour(c), ..base.yarn[0] }).collect(),
            topper: self.pom.map(|(d, c)| TopperPlan { kind: TopperKind::PomPom, size: cm(d), wraps: 90, colour: c.map(Colour) }),
            ..base
        }
    }
}

/// Hats from a preterm baby's to the largest head, low and high, striped by the round, folded, unfolded and gathered.
pub(super) fn hats() -> Vec<(String, Hat)> {
    let cap = Sample::CAP;
    let all = [
        ("cap", cap.clone()),
        ("preterm", Sample { head: 22.0, gauge: (24.0, 28.0), band: (6, 0.0), pom: None, ..cap.clone() }),
        ("newborn", Sample { head: 33.0, gauge: (20.0, 24.0), band: (12, 3.0), pom: Some((4.0, Some(1))), ..cap.clone() }),
        ("largest", Sample { head: 75.0, gauge: (10.0, 11.0), band: (12, 12.0), ..cap.clone() }),
        ("thread", Sample { head: 75.0, gauge: (80.0, 90.0), band: (60, 3.0), stripes: (1, 1, 6), ..cap.clone() }),
        ("sock", Sample { head: 57.0, gauge: (27.0, 31.0), band: (28, 5.0), stripes: (2, 5, 3), ..cap.clone() }),
        ("bulky", Sample { head: 57.0, gauge: (5.0, 5.5), band: (3, 0.0), ..cap.clone() }),
        ("low", Sample { head: 56.0, depth: 0.26, band: (9, 0.0), pom: None, ..cap.clone() }),
        ("all band", Sample { head: 56.0, depth: 0.395, band: (16, 0.0), ..cap.clone() }),
        ("folded away", Sample { head: 56.0, band: (30, 25.0), ..cap.clone() }),
        ("deep fold", Sample { head: 50.0, band: (16, 12.0), ..cap.clone() }),
        ("gathered", Sample { gathered: true, pom: Some((8.0, None)), ..cap.clone() }),
        ("gathered, bare", Sample { gathered: true, pom: None, stripes: (4, 3, 3), ..cap.clone() }),
        ("tight", Sample { ease: 0.3, ..cap.clone() }),
        ("loose", Sample { ease: -0.2, depth: 0.7, ..cap.clone() }),
        ("all pom-pom", Sample { head: 30.0, pom: Some((20.0, None)), ..cap.clone() }),
        ("one round", Sample { depth: 0.14, band: (2, 0.0), gauge: (4.0, 2.5), pom: None, ..cap }),
    ];
    all.into_iter().map(|(name, sample)| (name.to_owned(), sample.hat())).collect()
}

/// Hats of the planner's, of every style, begun at either end, with every kind of band, and odd ones.
pub(super) fn planned() -> Vec<(String, HatSpec, Hat)> {
    let usual = HatSpec::default();
    let around = |fabric: Fabric, fold: f64| BandSpec {
        kind: BandKind::Around,
        fabric,
        rounds: Rounds::new(8),
        fold: Length::from_cm(fold),
        ..usual.band.clone()
    };
    let none = BandSpec { kind: BandKind::None, ..usual.band.clone() };
    let low = BandSpec { height: Stitches::new(3), fold: Length::ZERO, ..usual.band.clone() };
    let mut specs: Vec<(String, HatSpec)> = Vec::new();
    for style in Style::ALL {
        for begun in [Begun::Band, Begun::Crown].into_iter().filter(|b| *b == Begun::Band || style.is_round()) {
            let spec = HatSpec { style, begun, band: low.clone(), ..usual.clone() };
            specs.push((format!("{style:?} {begun:?} rounds"), HatSpec { band: around(Fabric::Single, 0.0), ..spec.clone() }));
            specs.push((format!("{style:?} {begun:?} posts"), HatSpec { band: around(Fabric::PostRib, 3.0), ..spec.clone() }));
            specs.push((format!("{style:?} {begun:?} bare"), HatSpec { band: none.clone(), ..spec.clone() }));
            specs.push((
                format!("{style:?} {begun:?} large"),
                HatSpec { head: Head::Measured(Length::from_cm(66.0)), ..spec.clone() },
            ));
            specs.push((
                format!("{style:?} {begun:?} baby"),
                HatSpec { head: Head::Measured(Length::from_cm(35.0)), ..spec.clone() },
            ));
            specs.push((format!("{style:?} {begun:?}"), spec));
        }
    }
    let tail = Shape { tail: Length::from_cm(500.0), ..Shape::default() };
    specs.push(("long tail".into(), HatSpec { style: Style::Stocking, shape: tail, ..usual.clone() }));
    let side = HatSpec { style: Style::Sideways, fabric: Fabric::SingleBack, ..usual.clone() };
    specs.push((
        "folded sideways".into(),
        HatSpec { band: BandSpec { fold: Length::from_cm(6.0), ..low.clone() }, ..side.clone() },
    ));
    let short = Shape { side_top: SideTop::ShortRows, ..Shape::default() };
    specs.push(("short rows".into(), HatSpec { shape: short, ..side }));
    let ties = Shape { flap_tie: Length::from_cm(40.0), ..Shape::default() };
    specs.push(("ties".into(), HatSpec { style: Style::EarFlap, shape: ties, band: low.clone(), ..usual.clone() }));
    let tassel =
        |cm: f64| Some(Topper { fullness: Ratio::of(2.0), ..Topper::usual(TopperKind::Tassel).sized(Length::from_cm(cm)) });
    for (style, cm) in
        [(Style::Fitted, 10.0), (Style::Stocking, 12.0), (Style::Tam, 3.0), (Style::Sideways, 40.0), (Style::Slouch, 25.0)]
    {
        specs.push((format!("{style:?} tassel"), HatSpec { style, topper: tassel(cm), band: low.clone(), ..usual.clone() }));
    }
    // Not every combination can be made: a band may leave no room for a crown.
    let made: Vec<_> = specs.into_iter().filter_map(|(name, spec)| plan(&spec).ok().map(|hat| (name, spec, hat))).collect();
    assert!(Style::ALL.iter().all(|style| made.iter().filter(|m| m.1.style == *style).count() > 3));
    made
}

/// The hats by hand and those of the planner.
pub(super) fn all() -> Vec<(String, HatSpec, Hat)> {
    let by_hand = hats().into_iter().map(|(name, hat)| (name, HatSpec::default(), hat));
    by_hand.chain(planned()).collect()
}

/// A stocking cap whose tail goes on for thousands of rounds.
pub(super) fn tail_of(rounds: u32) -> (HatSpec, Hat) {
    let gauge = |count: i32| (Count::whole(count), Length::from_cm(10.0));
    let ((stitches, width), (rounds_high, height)) = (gauge(24), gauge(28));
    let spec = HatSpec {
        style: Style::Stocking,
        swatch: Swatch::Counted { stitches, width, rounds: rounds_high, height },
        band: BandSpec { fold: Length::ZERO, ..HatSpec::default().band },
        shape: Shape { tail: Length::from_cm(f64::from(rounds) * 10.0 / 28.0), ..Shape::default() },
        ..HatSpec::default()
    };
    let hat = plan(&spec).expect("a long tail can be made");
    (spec, hat)
}
