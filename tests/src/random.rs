//! Random hats, the same on every platform: whole numbers from a seed, nothing else.

use hatwright_sizing::{
    Age, Ball, BandSpec, BandSwatch, Build, Closing, Colour, Count, Coverage, Hat, HatSpec, Head, Layout, Length, PomPom, Ratio,
    RoundStripe, Rounds, RowStripe, Rows, Sex, Stitches, Stretch, Swatch, YarnWeight, plan,
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

/// A random hat that passes [`HatSpec::check`] and that most often can be made: heads of 30–66 cm or of any age, gauges of 6–40
/// stitches to 10 cm with rounds 0.6–1.2 times as tall as a stitch is wide, bands of 2–30 stitches with and without a fold and a
/// swatch of their own, stripes of 1–3 colours in odd and even rows, spread crowns and 4–12 wedges, drawn and gathered tops.
pub fn random_spec(seed: u64) -> HatSpec {
    // Seeds that follow one another must not give streams that do.
    let mut draw = Draw::new(Draw::new(seed).bits());
    let d = &mut draw;
    let colours = d.whole(1, 3) as usize;
    let body_stretch = stretch(d, 10_300, 13_000);
    let swatch = swatch(d);
    let band = band(d, colours, swatch);
    HatSpec {
        head: head(d),
        swatch,
        body_stretch,
        ease: ease(d, body_stretch),
        coverage: coverage(d),
        band,
        body_stripes: (0..d.whole(1, 4))
            .map(|_| RoundStripe { colour: colour(d, colours), rounds: Rounds::new(d.whole(1, 9) as u32) })
            .collect(),
        layout: if d.once_in(2) { Layout::Wedges(d.whole(4, 12) as u32) } else { Layout::Spread },
        closing: if d.once_in(4) { Closing::Gathered(Stitches::new(d.whole(13, 90) as u32)) } else { Closing::Drawn },
        pom_pom: pom_pom(d, colours),
        balls: (0..colours).map(|_| Ball { yarn: Count::from_ticks(d.whole(2_000, 45_000)) }).collect(),
        margin: Ratio::from_ticks(d.whole(0, 50) * 100),
        chosen: None,
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
    let build = d.one_of(&[Build::Small, Build::Average, Build::Large]);
    let age = match d.whole(0, 9) {
        0 => Age::Weeks(Count::from_ticks(d.whole(0, 10_400))),
        1 => Age::Months(Count::from_ticks(d.whole(0, 24_000))),
        2 => Age::Years(Count::from_ticks(d.whole(0, 11_000))),
        _ => return Head::Measured(Length::from_ticks(d.whole(30_000, 66_000))),
    };
    Head::ByAge { age, sex, build }
}

/// Rounds 0.6–1.2 times as tall as a stitch is wide, so 0.83–1.67 of them to each stitch.
fn swatch(d: &mut Draw) -> Swatch {
    if d.once_in(8) {
        let weights: Vec<YarnWeight> = (0..=7).filter_map(|n| YarnWeight::new(n).ok()).collect();
        return Swatch::YarnWeight(d.one_of(&weights));
    }
    let stitches = d.whole(600, 4_000);
    let shape = d.whole(600, 1_200);
    // Half of the swatches are counted in whole stitches, as people count.
    let stitches = if d.once_in(2) { stitches / 100 * 100 } else { stitches };
    let rounds = stitches * 1_000 / shape;
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
fn ease(d: &mut Draw, body: Stretch) -> Ratio {
    let ticks = match body {
        Stretch::Usual => 11_000,
        Stretch::Measured(ratio) => ratio.ticks(),
    };
    let most = 10_000 - 100_000_000 / ticks;
    Ratio::from_ticks(if d.once_in(12) { d.whole(0, 3_000) } else { d.whole(0, most * 4 / 5) })
}

fn coverage(d: &mut Draw) -> Coverage {
    d.one_of(&[Coverage::OverEars, Coverage::OverEars, Coverage::EarLobes, Coverage::EarCanals, Coverage::EarTops])
}

/// Bands of 2–30 stitches, those of thick yarn kept to what a hat can carry, but for one in twelve.
fn band(d: &mut Draw, colours: usize, body: Swatch) -> BandSpec {
    let (width, ticks) = match body {
        Swatch::Counted { stitches, width, .. } => (width.ticks(), stitches.ticks()),
        Swatch::YarnWeight(weight) => (10_160, weight.usual_stitches_in_4_inches().ticks()),
    };
    let own = (!d.once_in(3)).then(|| {
        let stitches = ticks * d.whole(80, 130) / 100;
        // Rows are most often near the body's stitches, where the two counts may be equal.
        let rows = ticks * if d.once_in(2) { d.whole(94, 106) } else { d.whole(65, 160) } / 100;
        let over = Length::from_ticks(width);
        BandSwatch { stitches: Count::from_ticks(stitches.max(400)), width: over, rows: Count::from_ticks(rows), length: over }
    });
    let swatch = if d.once_in(2) { own } else { None };
    let (over, stitches) = swatch.map_or((width, ticks), |own| (own.width.ticks(), own.stitches.ticks()));
    let fits = (9_000 * (stitches / 100) / over).clamp(2, 30);
    let height = if d.once_in(12) { d.whole(2, 30) } else { d.whole(2, fits) };
    let tall = height * over / stitches * 100;
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
        height: Stitches::new(height as u32),
        fold: Length::from_ticks(fold.min(40_000)),
        swatch,
        stretch: stretch(d, 11_000, 16_000),
        stripes,
    }
}

fn pom_pom(d: &mut Draw, colours: usize) -> Option<PomPom> {
    let diameter = Length::from_ticks(d.whole(2_000, 12_000));
    let colour = colour(d, colours);
    match d.whole(0, 3) {
        0 => Some(PomPom { diameter, colour: None }),
        1 => Some(PomPom { diameter, colour: Some(colour) }),
        _ => None,
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
        let usual: [(&str, &Holds<'_>); 12] = [
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
            ("gathered", &|s| matches!(s.closing, Closing::Gathered(_)) && s.pom_pom.is_some()),
        ];
        for (what, holds) in usual {
            assert!(share(holds) >= 60, "{what}: {} of 2000", share(holds));
        }
        for wedges in 4..=12 {
            assert!(share(&|s| s.layout == Layout::Wedges(wedges)) >= 60, "{wedges} wedges");
        }
    }
}
