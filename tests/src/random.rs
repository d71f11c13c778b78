//! Random hats, the same on every platform: whole numbers from a seed, nothing else.

mod yarn;

use hatwright_sizing::{
    Age, BandKind, BandSpec, BandSwatch, Begun, Build, Closing, Colour, Count, Coverage, Day, Edge, Fabric, Hat, HatSpec, Head,
    Layout, Length, Quantity, Ratio, RoundStripe, Rounds, RowStripe, Rows, Sex, Shape, SideTop, Stitches, Stretch, Style, Swatch,
    Taste, Way, YarnUse, YarnWeight, plan, stitch_yarn, yarn_rates,
};

/// Whole numbers from a seed: splitmix64 (Steele, Lea and Flood 2014).
#[derive(Clone, Debug)]
pub struct Draw(u64);

impl Draw {
    /// A stream of its own for every seed.
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// The next 64 bits.
    pub const fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A whole number from `least` to `most`, both included; `least` where they are turned round.
    ///
    /// ```
    /// use hatwright_tests::random::Draw;
    /// let mut draw = Draw::new(7);
    /// assert!((0..100).all(|_| (4..=12).contains(&draw.whole(4, 12))));
    /// ```
    pub const fn whole(&mut self, least: i32, most: i32) -> i32 {
        if most <= least {
            return least;
        }
        let width = (most as i64 - least as i64 + 1) as u64;
        (least as i64 + (self.bits() % width) as i64) as i32
    }

    /// Once in `times`.
    pub const fn once_in(&mut self, times: i32) -> bool {
        self.whole(1, times) == 1
    }

    fn one_of<T: Copy>(&mut self, choices: &[T]) -> T {
        choices[self.whole(0, choices.len() as i32 - 1) as usize]
    }
}

/// A random hat that passes [`HatSpec::check`] and that most often can be made: of every style, begun at the band and at the crown, in a
/// spiral and in joined rounds, in every fabric; heads of 30–66 cm or of any age, gauges of 6–40 stitches to 10 cm with rounds about as
/// tall as the fabric's are, bands of every kind with and without a fold and a swatch of their own, stripes of 1–3 colours in odd and
/// even rows, spread crowns and 4–12 wedges, drawn and gathered tops, tails from none to 20 m; yarns of which more or less is known, measured within
/// 0.6–1.7 times of what a stitch should take, or beyond belief.
pub fn random_spec(seed: u64) -> HatSpec {
    // Seeds that follow one another must not give streams that do.
    let mut draw = Draw::new(Draw::new(seed).bits());
    let d = &mut draw;
    let colours = d.whole(1, 3) as usize;
    let style = style(d);
    let fabric = fabric(d, style);
    let swatch = swatch(d, style, fabric);
    let row = fabric.row();
    let usual = if style == Style::Sideways { row.stretch_across } else { row.stretch_along } as i32;
    let body_stretch = stretch(d, 10_300, usual.max(11_000) + 2_000);
    let head = head(d);
    let shape = shape(d, head);
    let band = band(d, colours, swatch);
    // An ear warmer has its band's stretch.
    let stretches = if style == Style::EarWarmer { (band.stretch, 11_000) } else { (body_stretch, usual) };
    let mut spec = HatSpec {
        head,
        over_top: over_top(d, head),
        lining: Length::from_ticks(if d.once_in(6) { d.whole(0, 600) } else { 0 }),
        style,
        shape,
        begun: if d.once_in(3) { Begun::Crown } else { Begun::Band },
        way: if d.once_in(3) { Way::Joined } else { Way::Spiral },
        fabric,
        hook: d.once_in(3).then(|| Length::from_ticks(d.whole(100, 1_200))),
        strands: if d.once_in(4) { d.whole(2, 4) as u32 } else { 1 },
        swatch,
        body_stretch,
        ease: ease(d, stretches),
        coverage: coverage(d),
        band,
        body_stripes: (0..d.whole(1, 4))
            .map(|_| RoundStripe { colour: colour(d, colours), rounds: Rounds::new(d.whole(1, 9) as u32) })
            .collect(),
        layout: if d.once_in(2) { Layout::Wedges(d.whole(4, 12) as u32) } else { Layout::Spread },
        closing: if d.once_in(4) { Closing::Gathered(Stitches::new(d.whole(13, 90) as u32)) } else { Closing::Drawn },
        topper: yarn::topper(d, colours),
        balls: (0..colours).map(|_| yarn::ball(d)).collect(),
        yarn_use: YarnUse::default(),
        extra: yarn::extra(d),
        instead: yarn::instead(d),
        chosen: None,
        taste: d.one_of(&[Taste::Balanced, Taste::Balanced, Taste::Balanced, Taste::Smooth, Taste::Simple, Taste::Nearest]),
        kept: None,
    };
    let usual = yarn_rates(&spec).first().map_or(1.0, |rate| stitch_yarn(&spec, rate).cm());
    spec.yarn_use = yarn::yarn_use(d, &spec.balls, usual);
    spec
}

fn style(d: &mut Draw) -> Style {
    match d.whole(0, 15) {
        0..=4 => Style::Fitted,
        5 | 6 => Style::Slouch,
        7 | 8 => Style::Stocking,
        9 => Style::EarWarmer,
        10 | 11 => Style::Tam,
        12 => Style::EarFlap,
        13 | 14 => Style::Brimmed,
        _ => Style::Sideways,
    }
}

/// Half of the bodies in single crochet, the others in anything that they may be of.
fn fabric(d: &mut Draw, style: Style) -> Fabric {
    let fit: Vec<Fabric> = Fabric::ALL.iter().copied().filter(|fabric| fabric.bodies(style)).collect();
    let any = d.one_of(&fit);
    if style != Style::Sideways && d.once_in(2) { Fabric::Single } else { any }
}

/// Over the top, as heads are: ANSUR's arc is about 0.62 of the girth.
fn over_top(d: &mut Draw, head: Head) -> Option<Length> {
    let share = d.whole(580, 660);
    match head {
        Head::Measured(girth) if d.once_in(6) => Some(Length::from_ticks(girth.ticks() / 1_000 * share)),
        _ => None,
    }
}

/// Measures of every style, whichever it is.
fn shape(d: &mut Draw, head: Head) -> Shape {
    let girth = if let Head::Measured(girth) = head { girth.ticks() } else { 48_000 };
    let length = |d: &mut Draw, q: Quantity, least: i32, most: i32| {
        let row = q.row();
        Length::from_ticks(d.whole(least, most).clamp(row.least, row.most))
    };
    let tail = match d.whole(0, 39) {
        0 => d.whole(150_000, 2_000_000),
        1..=4 => d.whole(0, 3_000),
        _ => d.whole(5_000, 90_000),
    };
    Shape {
        slouch_wider: Ratio::from_ticks(d.whole(0, 4_000)),
        slouch_longer: length(d, Quantity::SlouchLonger, 0, 15_000),
        tail: Length::from_ticks(tail),
        taper: length(d, Quantity::Taper, 0, 60_000),
        tail_stitches: Stitches::new(if d.once_in(4) { d.whole(6, 60) } else { d.whole(6, 16) } as u32),
        tam_across: length(d, Quantity::TamAcross, girth / 100 * 36, girth / 100 * 60),
        flap_length: length(d, Quantity::FlapLength, 2_000, 14_000),
        flap_tie: Length::from_ticks(if d.once_in(2) { 0 } else { d.whole(500, 45_000) }),
        brim: length(d, Quantity::Brim, 1_000, 12_000),
        flare: Ratio::from_ticks(if d.once_in(3) { 10_000 } else { d.whole(1_000, 10_000) }),
        side_wedges: d.whole(4, 12) as u32,
        side_top: if d.once_in(2) { SideTop::ShortRows } else { SideTop::Gathered },
    }
}

/// The first so many random hats that can be made, with their seeds and specs.
pub fn random_hats(count: usize) -> impl Iterator<Item = (u64, HatSpec, Hat)> {
    let made = |seed| {
        let spec = random_spec(seed);
        plan(&spec).ok().map(|hat| (seed, spec, hat))
    };
    (0..).filter_map(made).take(count)
}

fn colour(d: &mut Draw, colours: usize) -> Colour {
    Colour(d.whole(0, colours as i32 - 1) as u8)
}

fn head(d: &mut Draw) -> Head {
    let sex = d.one_of(&[Sex::Unknown, Sex::Female, Sex::Male]);
    let share = Build::Percentile(Ratio::from_ticks(d.whole(1, 99) * 100));
    let build = d.one_of(&[Build::Small, Build::Average, Build::Large, share]);
    let age = match d.whole(0, 9) {
        3 => {
            let born = d.whole(-20_000, 30_000);
            let most = if d.once_in(2) { 2_000 } else { 36_000 };
            let worn = born + d.whole(0, most);
            return Head::ByDates { born: Day(born), worn: Day(worn), sex, build };
        }
        0 => Age::Weeks(Count::from_ticks(d.whole(0, 10_400))),
        1 => Age::Months(Count::from_ticks(d.whole(0, 24_000))),
        2 => Age::Years(Count::from_ticks(d.whole(0, 11_000))),
        _ => return Head::Measured(Length::from_ticks(d.whole(30_000, 66_000))),
    };
    Head::ByAge { age, sex, build }
}

/// Rounds 0.75–1.25 times as tall as the fabric's usually are; rows too, of a hat worked sideways.
fn swatch(d: &mut Draw, style: Style, fabric: Fabric) -> Swatch {
    if d.once_in(8) {
        let weights: Vec<YarnWeight> = (0..=7).filter_map(|n| YarnWeight::new(n).ok()).collect();
        return Swatch::YarnWeight(d.one_of(&weights));
    }
    let stitches = d.whole(600, 4_000);
    let row = fabric.row();
    let usual = if style == Style::Sideways { row.pick_up } else { row.shape } as i32;
    let shape = usual / 1_000 * d.whole(75, 125);
    // Half of the swatches are counted in whole stitches, as people count.
    let stitches = if d.once_in(2) { stitches / 100 * 100 } else { stitches };
    let rounds = (stitches * 1_000 / shape).max(200);
    let rounds = if d.once_in(2) { (rounds + 50) / 100 * 100 } else { rounds };
    let over = if d.once_in(4) { 10_160 } else { 10_000 };
    Swatch::Counted {
        stitches: Count::from_ticks(stitches),
        width: Length::from_ticks(over),
        rounds: Count::from_ticks(rounds),
        height: Length::from_ticks(over),
    }
}

fn stretch(d: &mut Draw, least: i32, most: i32) -> Stretch {
    if d.once_in(2) { Stretch::Usual } else { Stretch::Measured(Ratio::from_ticks(d.whole(least, most))) }
}

/// Mostly what the stretch allows, now and then more.
fn ease(d: &mut Draw, (stretch, usual): (Stretch, i32)) -> Ratio {
    let ticks = match stretch {
        Stretch::Usual => usual,
        Stretch::Measured(ratio) => ratio.ticks(),
    };
    let most = (10_000 - 100_000_000 / ticks).min(2_500);
    Ratio::from_ticks(if d.once_in(12) { d.whole(0, 3_000) } else { d.whole(0, most * 4 / 5) })
}

fn coverage(d: &mut Draw) -> Coverage {
    d.one_of(&[Coverage::OverEars, Coverage::OverEars, Coverage::EarLobes, Coverage::EarCanals, Coverage::EarTops])
}

/// Bands of 2–30 stitches, or of 1–20 rounds, those of thick yarn kept to what a hat can carry, but for one in twelve.
fn band(d: &mut Draw, colours: usize, body: Swatch) -> BandSpec {
    let kind = match d.whole(0, 5) {
        0..=2 => BandKind::Sideways,
        3 | 4 => BandKind::Around,
        _ => BandKind::None,
    };
    let fit: Vec<Fabric> = Fabric::ALL.iter().copied().filter(|fabric| fabric.bands(kind)).collect();
    let any = d.one_of(&fit);
    let fabric = if d.once_in(2) { Fabric::usual_for(kind) } else { any };
    let (width, ticks) = match body {
        Swatch::Counted { stitches, width, .. } => (width.ticks(), stitches.ticks()),
        Swatch::YarnWeight(weight) => (10_160, weight.usual_stitches_in_4_inches().ticks()),
    };
    let tall = if kind == BandKind::Around { fabric.row().shape } else { fabric.row().pick_up } as i32;
    let own = (!d.once_in(3)).then(|| {
        let stitches = (ticks * d.whole(80, 130) / 100).max(400);
        // Rows are most often near what the fabric picks up, where the counts keep their usual ratio.
        let rows = stitches * if d.once_in(2) { d.whole(94, 106) } else { d.whole(65, 160) } / 100;
        let rows = (i64::from(rows) * 10_000 / i64::from(tall)) as i32;
        let over = Length::from_ticks(width);
        BandSwatch {
            stitches: Count::from_ticks(stitches),
            width: over,
            rows: Count::from_ticks(rows.clamp(200, 20_000)),
            length: over,
        }
    });
    let swatch = if d.once_in(2) { own } else { None };
    let (over, stitches) = swatch.map_or((width, ticks), |own| (own.width.ticks(), own.stitches.ticks()));
    let fits = (9_000 * (stitches / 100) / over).clamp(2, 30);
    let height = if d.once_in(12) { d.whole(2, 30) } else { d.whole(2, fits) };
    // A round of a band worked around, in ticks.
    let round = swatch.map_or_else(
        || i64::from(width) * 100 / i64::from(ticks) * i64::from(tall) / 10_000,
        |own| i64::from(own.length.ticks()) * 100 / i64::from(own.rows.ticks()),
    );
    let round = (round as i32).max(1);
    let most = (8_000 / round).clamp(1, 20);
    let rounds = if d.once_in(12) { d.whole(1, 20) } else { d.whole(1, most) };
    let tall = if kind == BandKind::Around { rounds * round } else { height * over / stitches * 100 };
    let fold = match d.whole(0, 7) {
        0..=2 => 0,
        3..=6 => d.whole(0, tall * 2 / 3),
        _ => d.whole(0, tall + 3_000),
    };
    let stripes = match colours {
        1 => 1,
        _ => d.whole(1, 3),
    };
    let even = d.once_in(2);
    let rows = |d: &mut Draw| if even { d.whole(1, 3) * 2 } else { d.whole(1, 6) };
    let stripes = (0..stripes).map(|_| RowStripe { colour: colour(d, colours), rows: Rows::new(rows(d) as u32) }).collect();
    BandSpec {
        kind,
        fabric,
        edge: if d.once_in(2) { Edge::LooseChain } else { Edge::Chainless },
        hook: d.once_in(3).then(|| Length::from_ticks(d.whole(100, 1_200))),
        rounds: Rounds::new(rounds as u32),
        height: Stitches::new(height as u32),
        fold: Length::from_ticks(fold.min(40_000)),
        swatch,
        stretch: stretch(d, 11_000, 16_000),
        stripes,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The first numbers of the published generator for seed 1234567.
    #[test]
    fn the_generator_is_the_published_one() {
        let mut draw = Draw::new(1_234_567);
        let first = [draw.bits(), draw.bits(), draw.bits()];
        assert_eq!(first, [6_457_827_717_110_365_317, 3_203_168_211_198_807_973, 9_817_491_932_198_370_423]);
    }

    #[test]
    fn every_random_hat_passes_its_check() {
        for seed in 0..5_000 {
            assert_eq!(random_spec(seed).check(), Ok(()), "seed {seed}");
        }
    }

    /// What the doc comment promises does occur.
    #[test]
    fn random_hats_cover_what_people_make() {
        type Holds<'a> = dyn Fn(&HatSpec) -> bool + 'a;
        let specs: Vec<HatSpec> = (0..2_000).map(random_spec).collect();
        let share = |holds: &Holds<'_>| specs.iter().filter(|s| holds(s)).count();
        let usual: [(&str, &Holds<'_>); 24] = [
            ("age", &|s| matches!(s.head, Head::ByAge { .. })),
            ("small head", &|s| matches!(s.head, Head::Measured(girth) if girth < Length::from_cm(35.0))),
            ("large head", &|s| matches!(s.head, Head::Measured(girth) if girth > Length::from_cm(61.0))),
            ("weight", &|s| matches!(s.swatch, Swatch::YarnWeight(_))),
            ("fine", &|s| matches!(s.swatch, Swatch::Counted { stitches, .. } if stitches > Count::whole(34))),
            ("thick", &|s| matches!(s.swatch, Swatch::Counted { stitches, .. } if stitches < Count::whole(9))),
            ("band swatch", &|s| s.band.swatch.is_some()),
            ("odd stripes", &|s| s.band.stripes.iter().any(|s| s.rows.get() % 2 == 1)),
            ("three colours", &|s| s.band.stripes.len() == 3),
            ("tall band", &|s| s.band.height.get() > 20),
            ("fold", &|s| s.band.fold > Length::from_cm(2.0)),
            ("dates", &|s| matches!(s.head, Head::ByDates { .. })),
            ("percentile", &|s| matches!(s.head, Head::ByAge { build: Build::Percentile(_), .. })),
            ("over the top", &|s| s.over_top.is_some()),
            ("lining", &|s| s.lining > Length::from_cm(0.1)),
            ("crown", &|s| s.begins() == Begun::Crown),
            ("joined", &|s| s.goes() == Way::Joined),
            ("around", &|s| s.band_kind() == BandKind::Around && s.band.edge == Edge::LooseChain),
            ("post rib", &|s| s.band_fabric() == Fabric::PostRib),
            ("slip rib", &|s| s.band_fabric() == Fabric::SlipRib),
            ("no band", &|s| s.band.kind == BandKind::None),
            ("simple", &|s| s.taste == Taste::Simple),
            ("strands", &|s| s.strands > 2),
            ("gathered", &|s| matches!(s.closing, Closing::Gathered(_)) && s.topper.is_some()),
        ];
        for (what, holds) in usual {
            assert!(share(holds) >= 60, "{what}: {} of 2000", share(holds));
        }
        for style in Style::ALL {
            assert!(share(&|s| s.style == style) >= 60, "{style:?}");
        }
        for fabric in Fabric::ALL.iter().filter(|fabric| fabric.bodies(Style::Fitted)) {
            assert!(share(&|s| s.fabric == *fabric) >= 60, "{fabric:?}");
        }
        let short = |s: &HatSpec| s.style == Style::Sideways && s.shape.side_top == SideTop::ShortRows;
        assert!(share(&short) >= 30 && share(&|s| s.style == Style::Stocking && s.shape.tail > Length::from_cm(200.0)) >= 2);
        for wedges in 4..=12 {
            assert!(share(&|s| s.layout == Layout::Wedges(wedges)) >= 60, "{wedges} wedges");
        }
    }
}
