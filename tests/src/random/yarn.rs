//! Random yarns: balls, what was measured of them, what is sewn to the top.

use super::Draw;
use hatwright_sizing::{
    Ball, Colour, Count, Extra, Instead, KeptUse, Length, Mass, Money, Ratio, Stitches, Swatch, Topper, TopperKind, Unravelled,
    UseWay, WeighedSwatch, YarnUse, YarnWeight,
};

pub(super) fn topper(d: &mut Draw, colours: usize) -> Option<Topper> {
    let kind = if d.once_in(3) { TopperKind::Tassel } else { TopperKind::PomPom };
    let size = match kind {
        TopperKind::PomPom => d.whole(2_000, 12_000),
        TopperKind::Tassel => d.whole(3_000, 25_000),
    };
    let fullness = if d.once_in(2) { Ratio::of(1.0) } else { Ratio::from_ticks(d.whole(40, 250) * 100) };
    let colour = Colour(d.whole(0, colours as i32 - 1) as u8);
    let topper = |colour| Topper { kind, size: Length::from_ticks(size), fullness, colour };
    match d.whole(0, 3) {
        0 => Some(topper(None)),
        1 => Some(topper(Some(colour))),
        _ => None,
    }
}

pub(super) fn ball(d: &mut Draw) -> Ball {
    let yarn = Count::from_ticks(d.whole(2_000, 45_000));
    Ball {
        grams: (!d.once_in(3)).then(|| Mass::from_ticks(d.whole(25, 200) * 100)),
        weight: if d.once_in(2) { YarnWeight::new(d.whole(0, 7) as u8).ok() } else { None },
        owned: Count::from_ticks(if d.once_in(3) { d.whole(0, 400) } else { 0 }),
        price: d.once_in(2).then(|| Money::from_ticks(d.whole(100, 2_000).into())),
        ..Ball::of(yarn)
    }
}

pub(super) fn extra(d: &mut Draw) -> Extra {
    if d.once_in(2) {
        Extra::Chance(Ratio::from_ticks(d.whole(50_00, 99_90)))
    } else {
        Extra::Share(Ratio::from_ticks(d.whole(0, 50) * 100))
    }
}

/// Measurements near what a stitch of about `cm` should take, and now and then one that nobody can believe.
pub(super) fn yarn_use(d: &mut Draw, balls: &[Ball], cm: f64) -> YarnUse {
    let off = |d: &mut Draw| if d.once_in(10) { 20.0 } else { f64::from(d.whole(60, 170)) / 100.0 };
    let mut used = YarnUse { scale: Mass::from_ticks(d.one_of(&[1, 10, 100, 200])), ..YarnUse::default() };
    if d.once_in(4) {
        let colour = d.whole(0, balls.len() as i32 - 1) as u8;
        let stitches = d.whole(60, 900);
        let metres = f64::from(stitches) * cm * off(d) / 100.0;
        let per_gram = balls[usize::from(colour)].metres_per_gram().unwrap_or(2.0);
        let grams = Mass::from_grams((metres / per_gram).clamp(0.1, 1_000.0));
        let stitches = Stitches::new(stitches.unsigned_abs());
        used.weighed = Some(WeighedSwatch { colour: Colour(colour), band: d.once_in(3), stitches, grams });
    }
    if d.once_in(4) {
        let stitches = d.whole(4, 60);
        let length = Length::from_cm((f64::from(stitches) * cm * off(d)).clamp(1.0, 5_000.0));
        used.unravelled = Some(Unravelled { band: d.once_in(3), stitches: Stitches::new(stitches.unsigned_abs()), length });
    }
    if d.once_in(5) {
        let way = d.one_of(&[UseWay::Weighed, UseWay::Unravelled, UseWay::Hat]);
        let (factor, doubt) = (Ratio::from_ticks(d.whole(6_000, 17_000)), Ratio::from_ticks(d.whole(300, 3_000)));
        used.kept = Some(KeptUse { factor, doubt, way });
    }
    used.hat = d.once_in(5).then(|| Mass::from_ticks(d.whole(20, 300) * 100));
    used.swatch_kept = d.once_in(4);
    used
}

pub(super) fn instead(d: &mut Draw) -> Option<Instead> {
    let ten = Length::from_cm(10.0);
    let ball = ball(d);
    let (stitches, rounds) = (Count::whole(d.whole(8, 30)), Count::whole(d.whole(6, 36)));
    let swatch = d.once_in(2).then_some(Swatch::Counted { stitches, width: ten, rounds, height: ten });
    d.once_in(3).then_some(Instead { yarn: ball.yarn, grams: ball.grams, weight: ball.weight, swatch })
}

#[cfg(test)]
mod tests {
    use super::super::random_spec;
    use super::*;
    use hatwright_sizing::{HatSpec, yarn_rates};

    #[test]
    fn random_yarns_cover_what_people_know_of_them() {
        type Holds<'a> = dyn Fn(&HatSpec) -> bool + 'a;
        let specs: Vec<HatSpec> = (0..2_000).map(random_spec).collect();
        let all: [(&str, &Holds<'_>); 16] = [
            ("pom-pom", &|s| s.topper.is_some_and(|t| t.kind == TopperKind::PomPom && t.colour.is_none())),
            ("tassel", &|s| s.topper.is_some_and(|t| t.kind == TopperKind::Tassel && t.colour.is_some())),
            ("full", &|s| s.topper.is_some_and(|t| t.fullness > Ratio::of(1.5))),
            ("thin", &|s| s.topper.is_some_and(|t| t.fullness < Ratio::of(0.8))),
            ("grams", &|s| s.balls.iter().all(|b| b.grams.is_some())),
            ("no grams", &|s| s.balls.iter().any(|b| b.grams.is_none())),
            ("owned", &|s| s.balls.iter().any(|b| b.owned.ticks() % 100 != 0)),
            ("price", &|s| s.balls.iter().all(|b| b.price.is_some())),
            ("chance", &|s| matches!(s.extra, Extra::Chance(_))),
            ("share", &|s| matches!(s.extra, Extra::Share(_))),
            ("another yarn", &|s| s.instead.is_some_and(|other| other.swatch.is_some())),
            ("weighed", &|s| yarn_rates(s)[0].way == UseWay::Weighed),
            ("unravelled", &|s| yarn_rates(s)[0].way == UseWay::Unravelled),
            ("kept", &|s| yarn_rates(s)[0].kept),
            ("hat", &|s| s.yarn_use.hat.is_some()),
            ("swatch kept", &|s| s.yarn_use.swatch_kept),
        ];
        for (what, holds) in all {
            let share = specs.iter().filter(|s| holds(s)).count();
            assert!(share >= 60, "{what}: {share} of 2000");
        }
        // What nobody can believe is measured now and then, and is not gone by.
        let measured = |s: &HatSpec| usize::from(s.yarn_use.unravelled.is_some());
        let odd = specs.iter().filter(|s| {
            let told = yarn_rates(s).iter().filter(|rate| rate.way == UseWay::Unravelled && !rate.kept).count();
            told < measured(s)
        });
        assert!(odd.count() >= 20);
    }
}
