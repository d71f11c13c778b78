//! One list for several hats.

use super::id;
use crate::strategies::arb_usual_spec;
use crate::{ColourName, Copies, Project, ProjectId, Rgb, Terms, Units, example, known_uses, samples, shopping_list};
use hatwright_sizing::{
    Ball, Colour, Count, Extra, HatSpec, Length, Mass, Money, Ratio, Stitches, Style, TopperKind, Unravelled, UseWay,
    WeighedSwatch, YarnLength, YarnUse, chance_of, plan, stitch_yarn, whole_balls, yarn_hint, yarn_rates,
};
use proptest::prelude::*;

/// A hat whose colours are some of three, of one of two yarns, in one of two balls: lists of such hats have lines in common.
fn arb_club_hat() -> impl Strategy<Value = Project> {
    (arb_usual_spec(), any::<u64>(), prop::collection::vec((0..3_usize, 0..2_usize, 0..2_i32, 0..400_i32), HatSpec::MOST_COLOURS))
        .prop_map(|(mut spec, bits, yarns)| {
            // Six colours of these may coincide: two colours of one hat can well be one yarn.
            let names = [("Indigo", "indigo "), ("Weld", "Weld"), ("", "")];
            let of = |&(colour, yarn, _, _): &(usize, usize, i32, i32)| ColourName {
                name: if yarn == 0 { names[colour].0 } else { names[colour].1 }.to_owned(),
                hex: Rgb::new(colour as u8, 0, 0),
                yarn: ["Boathouse wool", "boathouse  Wool"][yarn].to_owned(),
                lot: String::new(),
            };
            let count = spec.balls.len();
            let colours = yarns.iter().take(count).map(of).collect();
            spec.balls = yarns
                .iter()
                .take(count)
                .map(|(_, _, ball, owned)| Ball { owned: Count::from_ticks(*owned), ..Ball::of(Count::whole(80 + 20 * ball)) })
                .collect();
            spec.yarn_use = YarnUse::default();
            Project {
                id: ProjectId::from_bits(bits),
                units: Units::Centimetres,
                terms: Terms::Us,
                colours,
                spec,
                ..example(id("rowingclub01"))
            }
        })
}

fn arb_list() -> impl Strategy<Value = Vec<Copies>> {
    prop::collection::vec((arb_club_hat(), 1..6_u32).prop_map(|(project, copies)| Copies { project, copies }), 1..5)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// Before rounding it is the sum of its parts, to the millimetre; after it, never more balls than apart, and never too few.
    #[test]
    fn a_list_is_the_sum_of_its_hats(list in arb_list()) {
        let all = shopping_list(&list);
        let (mut alone, mut doubts) = (YarnLength::default(), YarnLength::default());
        let mut balls = 0;
        for Copies { project, copies } in &list {
            let Ok(hat) = plan(&project.spec) else {
                prop_assert!(all.left_out.iter().any(|(id, _)| *id == project.id));
                continue;
            };
            for (need, ball) in hat.yarn.iter().zip(&project.spec.balls) {
                for _ in 0..*copies {
                    alone = [alone, need.length].into_iter().sum();
                    // One hand, one error: it adds up, and does not average out.
                    doubts = [doubts, if need.length > YarnLength::default() { need.deviation } else { YarnLength::default() }].into_iter().sum();
                    balls += whole_balls(need.safe, ball.yarn);
                }
            }
        }
        let together: YarnLength = all.lines.iter().map(|line| line.buy.need.length).sum();
        prop_assert_eq!(together, alone);
        prop_assert_eq!(all.lines.iter().map(|line| line.buy.need.deviation).sum::<YarnLength>(), doubts);
        prop_assert!(all.lines.iter().map(|line| line.buy.need.balls).sum::<u32>() <= balls);
        for line in &all.lines {
            let has = line.buy.owned.millimetres() + i64::from(line.buy.balls) * i64::from(line.ball.yarn.ticks()) * 10;
            prop_assert!(has >= line.buy.need.safe.millimetres());
            prop_assert_eq!(line.hats.iter().map(|(_, _, length)| *length).sum::<YarnLength>(), line.buy.need.length);
            prop_assert!(line.buy.chance >= least_chance(&list), "{:?}", line.buy.chance);
        }
    }

    /// Whoever ticks them in which order.
    #[test]
    fn the_order_of_hats_does_not_matter(list in arb_list().prop_flat_map(|list| (Just(list.clone()), Just(list).prop_shuffle()))) {
        let (list, shuffled) = list;
        prop_assert_eq!(shopping_list(&shuffled), shopping_list(&list));
    }

    /// A hat forty times is forty times the hat, and as often enough.
    #[test]
    fn forty_copies_are_forty_times_the_need(hat in arb_club_hat()) {
        let of = |copies| shopping_list(&[Copies { project: hat.clone(), copies }]);
        let (one, forty) = (of(1), of(40));
        prop_assert_eq!(one.lines.len(), forty.lines.len());
        for (one, forty) in one.lines.iter().zip(&forty.lines) {
            let (one, forty) = (one.buy.need, forty.buy.need);
            let pairs = [
                (one.length, forty.length),
                (one.low, forty.low),
                (one.high, forty.high),
                (one.safe, forty.safe),
                (one.deviation, forty.deviation),
            ];
            for (one, forty) in pairs {
                prop_assert_eq!(forty.millimetres(), 40 * one.millimetres());
            }
            prop_assert!(forty.balls <= 40 * one.balls);
            let chances = [one, forty].map(|need| chance_of(&need, need.safe).ticks());
            prop_assert!(chances[0].abs_diff(chances[1]) <= 1, "{:?}", chances);
        }
    }
}

/// The least chance that any hat of a list asks for; a share by hand is not less often enough than the estimate. Lengths in whole
/// millimetres leave a hundredth.
fn least_chance(list: &[Copies]) -> Ratio {
    let asked = list.iter().map(|of| match of.project.spec.extra {
        Extra::Chance(chance) => chance.value(),
        Extra::Share(_) => 0.5,
    });
    Ratio::of(asked.fold(1.0, f64::min) - 0.01)
}

/// Twelve junior caps of a rowing club: twelve times two balls of indigo apart, far fewer together, since each leaves half of one over.
#[test]
fn a_club_buys_once() {
    let cap = example(id("rowingclub01"));
    let hat = plan(&cap.spec).unwrap();
    let list = shopping_list(&[Copies { project: cap.clone(), copies: 12 }]);
    assert_eq!(list.lines.len(), 2);
    let indigo = list.lines.iter().find(|line| line.colour == "Indigo").unwrap();
    assert_eq!(indigo.buy.need.length.millimetres(), 12 * hat.yarn[0].length.millimetres());
    assert_eq!(indigo.buy.balls, whole_balls([hat.yarn[0].safe; 12].into_iter().sum(), cap.spec.balls[0].yarn));
    assert!(indigo.buy.balls < 12 * hat.yarn[0].balls);
    assert_eq!(indigo.hats, [("Rowing club, junior cap".to_owned(), 12, indigo.buy.need.length)]);
    assert!(list.left_out.is_empty() && list.price.is_none());
    assert!(list.chance.is_some_and(|chance| chance >= Ratio::of(0.95)));
}

/// Eight junior caps and four tams in the club's madder: the junior caps' wool is a list of its own; priced, the sum is that of the lines.
#[test]
fn twelve_caps_of_two_kinds() {
    let all = samples(core::array::from_fn(|i| ProjectId::from_bits(i as u64)));
    let tam = all.iter().find(|hat| hat.spec.style == Style::Tam).unwrap().clone();
    let crew = all.iter().find(|hat| hat.colours[0].name == "Madder" && hat.spec.style == Style::Fitted).unwrap().clone();
    // One yarn, in unlike balls: two lines of madder.
    let apart = shopping_list(&[Copies { project: crew.clone(), copies: 8 }, Copies { project: tam.clone(), copies: 4 }]);
    assert_eq!(apart.lines.iter().filter(|line| line.colour == "Madder").count(), 2);
    // In the same balls, one.
    let mut same = tam;
    for ball in &mut same.spec.balls {
        *ball = Ball { price: Some(Money::from_ticks(520)), ..crew.spec.balls[0] };
    }
    let list = shopping_list(&[Copies { project: crew.clone(), copies: 8 }, Copies { project: same.clone(), copies: 4 }]);
    let madder: Vec<_> = list.lines.iter().filter(|line| line.colour == "Madder").collect();
    let needs = [&crew, &same].map(|hat| plan(&hat.spec).unwrap().yarn[0]);
    assert_eq!(madder.len(), 1);
    let sum =
        |of: fn(&hatwright_sizing::YarnNeed) -> YarnLength| 8 * of(&needs[0]).millimetres() + 4 * of(&needs[1]).millimetres();
    assert_eq!(madder[0].buy.need.length.millimetres(), sum(|need| need.length));
    assert_eq!(madder[0].buy.need.safe.millimetres(), sum(|need| need.safe));
    assert_eq!(madder[0].buy.balls, whole_balls(madder[0].buy.need.safe, crew.spec.balls[0].yarn));
    assert_eq!(madder[0].buy.price, Some(Money::from_ticks(520).times(madder[0].buy.balls)));
    let grams = madder[0].buy.need.length.metres() * 50.0 / 120.0;
    assert_eq!(madder[0].buy.grams, Some(Mass::from_grams(grams)));
    // The crew's undyed and walnut have no price, so neither has the list; with one, it is the sum of its lines.
    assert_eq!(list.price, None);
    let priced = Project { spec: HatSpec { balls: vec![same.spec.balls[0]; 3], ..crew.spec.clone() }, ..crew };
    let list = shopping_list(&[Copies { project: priced, copies: 8 }, Copies { project: same, copies: 4 }]);
    let balls: u32 = list.lines.iter().map(|line| line.buy.balls).sum();
    assert_eq!(list.price, Some(Money::from_ticks(520).times(balls)));
}

/// Without a name, a colour is what it looks like.
#[test]
fn colours_without_a_name_are_told_apart_by_eye() {
    let mut cap = example(id("rowingclub01"));
    for colour in &mut cap.colours {
        (colour.name, colour.yarn) = (" ".to_owned(), String::new());
    }
    let mut other = Project { id: id("rowingclub02"), ..cap.clone() };
    other.colours[1].hex = Rgb::new(1, 2, 3);
    let list = |hats: &[&Project]| {
        let copies: Vec<Copies> = hats.iter().map(|&project| Copies { project: project.clone(), copies: 1 }).collect();
        shopping_list(&copies).lines.len()
    };
    assert_eq!((list(&[&cap]), list(&[&cap, &cap]), list(&[&cap, &other])), (2, 2, 3));
}

#[test]
fn copies_are_held_to_their_range() {
    let cap = example(id("rowingclub01"));
    let of = |copies| shopping_list(&[Copies { project: cap.clone(), copies }]);
    assert_eq!((of(0), of(u32::MAX)), (of(1), of(99)));
    assert_eq!(shopping_list(&[]), crate::ShoppingList { price: Some(Money::from_ticks(0)), ..crate::ShoppingList::default() });
}

#[test]
fn owned_balls_are_counted_once_and_lots_are_listed() {
    let mut one = example(id("rowingclub01"));
    one.spec.balls[0].owned = Count::whole(1);
    one.colours[0].lot = "7".to_owned();
    let mut two = Project { id: id("rowingclub02"), ..one.clone() };
    two.spec.balls[0].owned = Count::whole(3);
    two.colours[0].lot = "4".to_owned();
    let mut three = Project { id: id("rowingclub03"), ..one.clone() };
    three.spec.balls[0].owned = Count::from_ticks(250);
    let list = shopping_list(&[one, two, three].map(|project| Copies { project, copies: 1 }));
    let indigo = list.lines.iter().find(|line| line.colour == "Indigo").unwrap();
    assert_eq!((indigo.ball.owned, indigo.lots.clone()), (Count::whole(3), vec!["4".to_owned(), "7".to_owned()]));
    assert_eq!(indigo.hats.len(), 3);
    let missing = YarnLength::from_metres(indigo.buy.need.safe.metres() - 240.0);
    assert_eq!((indigo.buy.owned.metres(), indigo.buy.balls), (240.0, whole_balls(missing, Count::whole(80))));
}

#[test]
fn what_cannot_be_made_is_named() {
    let mut cap = example(id("rowingclub01"));
    cap.spec.band.height = Stitches::new(80);
    let list = shopping_list(&[Copies { project: cap.clone(), copies: 1 }]);
    assert_eq!(list.left_out, [(cap.id, cap.name)]);
    assert!(list.lines.is_empty() && list.chance.is_none());
}

/// Balls of other metres or grams are another yarn to buy, whatever their names.
#[test]
fn other_balls_are_other_lines() {
    let cap = example(id("rowingclub01"));
    let mut other = cap.clone();
    other.spec.balls[0].grams = Some(Mass::from_grams(100.0));
    let both = [cap, other].map(|project| Copies { project, copies: 1 });
    assert_eq!(shopping_list(&both).lines.len(), 3);
}

#[test]
fn the_surest_use_of_a_yarn_comes_first() {
    let mut few = example(id("rowingclub01"));
    let unravelled =
        |stitches, cm| Some(Unravelled { band: false, stitches: Stitches::new(stitches), length: Length::from_cm(cm) });
    few.spec.yarn_use.unravelled = unravelled(4, 26.0);
    let mut many = Project { id: id("rowingclub02"), ..few.clone() };
    many.spec.yarn_use.unravelled = unravelled(60, 372.0);
    let mut other = Project { id: id("rowingclub03"), ..few.clone() };
    other.colours.iter_mut().for_each(|colour| "Pontoon cotton".clone_into(&mut colour.yarn));
    let hats = [few, many, other];
    let known = known_uses(&hats, " BOATHOUSE wool");
    assert_eq!(known.iter().map(|known| known.project.id.as_str()).collect::<Vec<_>>(), ["rowingclub02", "rowingclub01"]);
    assert!(known.iter().all(|known| known.used.way == UseWay::Unravelled));
    assert!((known[0].used.factor.value() - 6.2 / 5.8333).abs() < 1e-3);
    assert!(known_uses(&hats, " ").is_empty());
    assert_eq!(known[0].stitch, stitch_yarn(&hats[1].spec, &yarn_rates(&hats[1].spec)[0]));
    assert!((known[0].stitch.cm() - 6.2).abs() < 0.01, "372 cm of 60 stitches");
}

/// Of two that are as sure, the later.
#[test]
fn the_later_of_equals_comes_first() {
    let mut old = example(id("rowingclub01"));
    old.spec.yarn_use.unravelled = Some(Unravelled { band: false, stitches: Stitches::new(20), length: Length::from_cm(128.0) });
    let new = Project { id: id("rowingclub02"), changed_ms: 7, ..old.clone() };
    let hats = [old, new];
    let ids: Vec<&str> = known_uses(&hats, "boathouse wool").iter().map(|known| known.project.id.as_str()).collect();
    assert_eq!(ids, ["rowingclub02", "rowingclub01"]);
}

/// In a hat of two yarns, a swatch on the scale tells of the one that it was made of.
#[test]
fn a_weighed_swatch_tells_of_its_own_yarn() {
    let mut hat = example(id("rowingclub01"));
    "Pontoon cotton".clone_into(&mut hat.colours[1].yarn);
    let (stitches, grams) = (Stitches::new(200), Mass::from_grams(8.0));
    hat.spec.yarn_use.weighed = Some(WeighedSwatch { colour: Colour(1), band: false, stitches, grams });
    let hats = [hat];
    assert_eq!(known_uses(&hats, "Pontoon cotton").len(), 1);
    assert!(known_uses(&hats, "Boathouse wool").is_empty());
    assert_eq!(yarn_rates(&hats[0].spec)[0].way, UseWay::Weighed);
}

/// The club's yarns are invented, but such yarns could be: their metres, grams and weight numbers agree.
#[test]
fn the_clubs_yarns_could_be() {
    let mut hats = samples(core::array::from_fn(|i| ProjectId::from_bits(i as u64))).to_vec();
    hats.push(example(id("rowingclub01")));
    for hat in hats {
        assert!(hat.spec.balls.iter().all(|ball| ball.grams.is_some() && ball.weight.is_some()), "{}", hat.name);
        assert!(hat.spec.balls.iter().all(|ball| yarn_hint(ball).is_none()), "{}", hat.name);
        assert!(hat.colours.iter().all(|colour| !colour.yarn.is_empty()), "{}", hat.name);
        assert_eq!(hat.spec.extra, Extra::Chance(Ratio::of(0.95)), "{}", hat.name);
        let tassel = hat.spec.topper.is_some_and(|topper| topper.kind == TopperKind::Tassel);
        assert_eq!(tassel, hat.spec.style == Style::Stocking, "{}", hat.name);
        // One hat shows prices, and no other.
        let priced = hat.spec.balls.iter().filter(|ball| ball.price.is_some()).count();
        assert_eq!(priced, if hat.spec.style == Style::Brimmed { 2 } else { 0 }, "{}", hat.name);
    }
}
