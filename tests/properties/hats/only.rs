//! "I have only this much": every offer fits what is owned, is one change away, and is the largest of its kind.

use crate::planned::{PLANNED, Planned};
use hatwright_sizing::{
    BandKind, Colour, Count, Hat, HatSpec, Head, Length, Offer, OfferKind, Part, Quantity, Rounds, Stitches, Style, band_height,
    only_this_much, plan,
};
use hatwright_tests::random::Draw;
use std::collections::BTreeMap;

/// Tenths of a millimetre that are owned of a colour: hundredths of a metre times hundredths of a ball.
fn owned(spec: &HatSpec, colour: Colour) -> i64 {
    let ball = &spec.balls[usize::from(colour.0)];
    i64::from(ball.yarn.ticks()) * i64::from(ball.owned.ticks())
}

/// Whether a hat's safe lengths are owned, to the millimetre.
fn fits(spec: &HatSpec, hat: &Hat) -> bool {
    hat.yarn.iter().all(|need| need.length.millimetres() == 0 || need.safe.millimetres() <= (owned(spec, need.colour) + 5) / 10)
}

fn planned_and_fits(spec: &HatSpec) -> bool {
    plan(spec).is_ok_and(|hat| fits(spec, &hat))
}

/// A hat and some of its yarn, a third to nearly twice of what is safe of each colour.
fn owning(spec: &HatSpec, hat: &Hat, draw: &mut Draw) -> HatSpec {
    let mut spec = spec.clone();
    for (ball, need) in spec.balls.iter_mut().zip(&hat.yarn) {
        let balls = need.safe.metres() / ball.metres() * f64::from(draw.whole(30, 180));
        // Even hundredths: no half of a millimetre is left to be rounded one way or the other.
        ball.owned = Count::from_ticks((balls as i32).min(Quantity::BallsOwned.row().most) / 2 * 2);
    }
    spec
}

fn millimetre(cm: f64) -> Length {
    Length::from_cm((cm * 10.0).round() / 10.0)
}

/// The same hat for another head: what was measured of it in proportion, to the millimetre.
fn for_head(spec: &HatSpec, from: Length, girth: Length) -> HatSpec {
    let row = Quantity::OverTop.row();
    let over =
        |over: Length| Length::from_ticks(millimetre(over.cm() * girth.cm() / from.cm()).ticks().clamp(row.least, row.most));
    let shape = spec.shape.followed(from, girth);
    HatSpec { head: Head::Measured(girth), over_top: spec.over_top.map(over), shape, ..spec.clone() }
}

/// The same hat with another band, folded up in proportion.
fn with_band(spec: &HatSpec, count: u32) -> HatSpec {
    let mut other = spec.clone();
    let now = if spec.band_kind() == BandKind::Around {
        other.band.rounds = Rounds::new(count);
        spec.band.rounds.get()
    } else {
        other.band.height = Stitches::new(count);
        spec.band.height.get()
    };
    let all = band_height(&other);
    let part = millimetre(spec.band.fold.cm() * f64::from(count) / f64::from(now));
    other.band.fold = if spec.band.fold == band_height(spec) { all } else { part.min(all) };
    other
}

fn of_band(spec: &HatSpec) -> u32 {
    if spec.band_kind() == BandKind::Around { spec.band.rounds.get() } else { spec.band.height.get() }
}

/// The offer's spec with its one change taken back.
fn taken_back(offer: &Offer, spec: &HatSpec) -> HatSpec {
    let mut back = offer.spec.clone();
    match offer.kind {
        OfferKind::LargestHead { .. } => (back.head, back.over_top, back.shape) = (spec.head, spec.over_top, spec.shape),
        OfferKind::LongestTail { .. } => back.shape.tail = spec.shape.tail,
        OfferKind::NoTopper | OfferKind::SmallerTopper { .. } => back.topper = spec.topper,
        OfferKind::LowerBand { .. } => {
            (back.band.height, back.band.rounds, back.band.fold) = (spec.band.height, spec.band.rounds, spec.band.fold);
        }
        OfferKind::WidestStripes { colour } => {
            for (stripe, old) in back.band.stripes.iter_mut().zip(&spec.band.stripes).filter(|(_, old)| old.colour == colour) {
                stripe.rows = old.rows;
            }
            for (stripe, old) in back.body_stripes.iter_mut().zip(&spec.body_stripes).filter(|(_, old)| old.colour == colour) {
                stripe.rounds = old.rounds;
            }
        }
        OfferKind::OneColour { .. } => {
            (back.band.stripes, back.body_stripes) = (spec.band.stripes.clone(), spec.body_stripes.clone());
            back.topper = spec.topper;
        }
    }
    back
}

/// Larger ones of an offer's kind, the next first: up to the hat as it is where that is too much, otherwise up to what may be typed.
fn larger(offer: &Offer, spec: &HatSpec, hat: &Hat, enough: bool) -> Vec<HatSpec> {
    let steps = |now: i32, from: i32, row: Quantity, step: i32, many: usize| {
        let most = if enough { row.row().most } else { now - 1 };
        (1..).map(move |i| from + i * step).take_while(move |ticks| *ticks <= most).take(many)
    };
    match offer.kind {
        OfferKind::LargestHead { girth } => {
            let from = hat.head.girth;
            steps(from.ticks(), girth.ticks(), Quantity::HeadGirth, 500, 12)
                .map(|ticks| for_head(spec, from, Length::from_ticks(ticks)))
                .collect()
        }
        // Of tails longer than a person not every one is looked at.
        OfferKind::LongestTail { tail } if tail > Length::from_cm(200.0) => Vec::new(),
        OfferKind::LongestTail { tail } => steps(spec.shape.tail.ticks(), tail.ticks(), Quantity::Tail, 1_000, 10)
            .map(|ticks| {
                let mut longer = spec.clone();
                longer.shape.tail = Length::from_ticks(ticks);
                longer
            })
            .collect(),
        OfferKind::SmallerTopper { size } => {
            let topper = spec.topper.expect("a smaller one of something");
            steps(topper.size.ticks(), size.ticks(), topper.kind.quantity(), 500, 3)
                .map(|ticks| HatSpec { topper: Some(topper.sized(Length::from_ticks(ticks))), ..spec.clone() })
                .collect()
        }
        OfferKind::LowerBand { stitches } => (stitches.get() + 1..of_band(spec)).map(|count| with_band(spec, count)).collect(),
        // Where only one stripe is of the colour, there is one width to vary.
        OfferKind::WidestStripes { colour } if spec.band_kind() == BandKind::None && spec.style != Style::Sideways => {
            let mine: Vec<usize> = (0..spec.body_stripes.len()).filter(|i| spec.body_stripes[*i].colour == colour).collect();
            let &[i] = &mine[..] else { return Vec::new() };
            let (now, then) = (spec.body_stripes[i].rounds.get(), offer.spec.body_stripes[i].rounds.get());
            let most = if enough { now + 30 } else { now - 1 };
            let wider = |rounds| {
                let mut wider = spec.clone();
                wider.body_stripes[i].rounds = Rounds::new(rounds);
                wider
            };
            // Where no colour would be left without its last stripe.
            let whole = |spec: &HatSpec| plan(spec).is_ok_and(|other| other.colours() == hat.colours());
            (then + 1..=most.min(200)).map(wider).filter(whole).collect()
        }
        _ => Vec::new(),
    }
}

#[test]
fn every_offer_fits_and_the_next_larger_does_not() {
    let mut offers: BTreeMap<String, u32> = BTreeMap::new();
    let (mut beside, mut asked) = (0, [0_u32; 2]);
    let hats = PLANNED.iter().filter(|p| p.spec.shape.tail < Length::from_cm(150.0) || p.spec.style != Style::Stocking);
    for Planned { seed, spec, hat } in hats.step_by(24) {
        let spec = owning(spec, hat, &mut Draw::new(*seed));
        let only = only_this_much(&spec);
        let at = |what: &dyn std::fmt::Debug| format!("seed {seed}: {what:?}\n  {spec:?}");
        assert_eq!(only.enough, fits(&spec, hat), "{}", at(&only.short));
        asked[usize::from(only.enough)] += 1;
        // What is short is what is safe less what is owned.
        let short: Vec<(Colour, i64)> = only.short.iter().map(|(colour, lack)| (*colour, lack.millimetres())).collect();
        let lacking = hat.yarn.iter().filter(|need| need.length.millimetres() > 0);
        let lacking = lacking.map(|need| (need.colour, need.safe.millimetres() - (owned(&spec, need.colour) + 5) / 10));
        assert_eq!(short, lacking.filter(|(_, lack)| *lack > 0).collect::<Vec<_>>(), "{}", at(&only.short));
        for offer in &only.offers {
            let at = || at(&offer.kind);
            assert_eq!(plan(&offer.spec).as_ref(), Ok(&offer.hat), "{}", at());
            assert!(fits(&offer.spec, &offer.hat), "{}", at());
            assert_ne!(offer.hat.yarn_parts, hat.yarn_parts, "{}", at());
            assert_eq!(taken_back(offer, &spec), spec, "{}", at());
            for other in larger(offer, &spec, hat, only.enough) {
                assert!(!planned_and_fits(&other), "{}, but a larger one fits as well", at());
                beside += 1;
            }
            if let OfferKind::OneColour { colour } = offer.kind {
                // A swatch that was weighed and is kept stays in its own.
                let mut used = offer.hat.yarn_parts.iter().filter(|part| part.part != Part::Swatch);
                assert!(used.all(|part| part.colour == colour), "{}", at());
            }
            let name = format!("{:?}", offer.kind);
            let name = name.split(' ').next().unwrap_or_default().to_owned();
            *offers.entry(name).or_default() += 1;
        }
        // One of a kind, and what plainly fits is not forgotten.
        let is = |kind: fn(&OfferKind) -> bool| only.offers.iter().filter(|offer| kind(&offer.kind)).count();
        assert!(is(|kind| matches!(kind, OfferKind::LargestHead { .. })) <= 1, "{}", at(&only.offers.len()));
        if !only.enough && spec.wears().is_some() {
            let bare = planned_and_fits(&HatSpec { topper: None, ..spec.clone() });
            assert_eq!(is(|kind| *kind == OfferKind::NoTopper), usize::from(bare), "{}", at(&"without a topper"));
        }
        if !only.enough && spec.band_kind() != BandKind::None && of_band(&spec) > 2 {
            let lower = planned_and_fits(&with_band(&spec, of_band(&spec) - 1));
            assert!(!lower || is(|kind| matches!(kind, OfferKind::LowerBand { .. })) == 1, "{}", at(&"with a lower band"));
        }
    }
    let kinds = ["LargestHead", "LongestTail", "WidestStripes", "NoTopper", "SmallerTopper", "LowerBand", "OneColour"];
    assert!(kinds.iter().all(|kind| offers.get(*kind).is_some_and(|n| *n >= 6)), "{offers:?}");
    assert!(beside > 500 && asked.iter().all(|n| *n > 60), "{beside} {asked:?}");
}

/// Whatever is typed, there is an answer: of a hat that is refused nothing is enough, short or offered.
#[test]
fn a_refused_hat_is_offered_nothing() {
    let mut refused = 0;
    for seed in 0..400 {
        let spec = hatwright_tests::random::random_spec(seed);
        if plan(&spec).is_err() {
            let only = only_this_much(&spec);
            assert!(!only.enough && only.short.is_empty() && only.offers.is_empty(), "seed {seed}");
            refused += 1;
        }
    }
    assert!(refused > 60, "{refused}");
}
