//! The shopping list as plain text, for copying and printing: of one hat, or of several.

use super::chance::chance;
use super::lots::{ONE_LOT, lot_advice};
use crate::figures::{self, Units, mass, money, plural, show, yarn};
use hatwright_sizing::{Ball, Buy, Mass, Money, Ratio, Shop, Unit, YarnLength};

/// What a colour of a hat is called.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct YarnName<'a> {
    /// The colour.
    pub colour: &'a str,
    /// The yarn; empty where it has no name.
    pub yarn: &'a str,
    /// The dye lot of what is owned; empty where it is not known.
    pub lot: &'a str,
}

/// A line of a list.
#[derive(Clone, Debug, PartialEq)]
pub struct ListedYarn<'a> {
    /// What the colour is called.
    pub colour: &'a str,
    /// What the yarn is called; empty where it has no name.
    pub yarn: &'a str,
    /// Dye lots of what is owned.
    pub lots: Vec<&'a str>,
    /// A ball.
    pub ball: Ball,
    /// What to buy.
    pub buy: Buy,
    /// For which hats: name, copies, and what all its copies take.
    pub hats: Vec<(&'a str, u32, YarnLength)>,
}

/// What to buy for one hat, as text. `names` and `balls` are those of the hat's colours, in their order.
///
/// ```text
/// Yarn for Rowing club cap
///
/// Indigo, Boathouse wool: 1 ball of 50 g = 80 m
///   takes 68 m (43 g), 1 ball of lot 4711 owned, 92 m (58 g) left over; 4.50
/// Weld: 1 ball of 80 m
///   takes 55 m, 25 m left over
///
/// 2 balls in all, enough 19 times in 20.
/// Take all balls of a colour from one dye lot.
/// ```
pub fn shop_text(title: &str, shop: &Shop, names: &[YarnName<'_>], balls: &[Ball], units: Units) -> String {
    let lines: Vec<ListedYarn<'_>> = shop
        .lines
        .iter()
        .filter_map(|buy| {
            let i = usize::from(buy.colour.0);
            let YarnName { colour, yarn, lot } = names.get(i).copied().unwrap_or_default();
            let lots = if lot.trim().is_empty() { Vec::new() } else { vec![lot] };
            Some(ListedYarn { colour, yarn, lots, ball: *balls.get(i)?, buy: *buy, hats: Vec::new() })
        })
        .collect();
    let title = line_of(title);
    let head = ["Yarn for ", if title.is_empty() { "a hat" } else { &title }, "\n"].concat();
    body(head, &lines, Some(shop.chance), shop.price, units)
}

/// What to buy for several hats, as text: `hats` are their names and copies, `left_out` the names of those that cannot be planned.
pub fn list_text(
    hats: &[(&str, u32)],
    lines: &[ListedYarn<'_>],
    left_out: &[&str],
    chance: Option<Ratio>,
    price: Option<Money>,
    units: Units,
) -> String {
    let count = hats.iter().map(|(_, copies)| copies).sum();
    let mut head = ["Yarn for ", &*plural(count, "hat"), "\n"].concat();
    for (name, copies) in hats {
        head.push_str(&["- ", &*copied(name, *copies), "\n"].concat());
    }
    for name in left_out {
        head.push_str(&["- not on the list, because it cannot be made as it is: ", &*hat_name(name), "\n"].concat());
    }
    body(head, lines, chance, price, units)
}

fn body(mut text: String, lines: &[ListedYarn<'_>], chance_of: Option<Ratio>, price: Option<Money>, units: Units) -> String {
    text.push('\n');
    for line in lines {
        entry(&mut text, line, units);
    }
    let balls = lines.iter().fold(0_u32, |sum, line| sum.saturating_add(line.buy.balls));
    text.push('\n');
    text.push_str(&plural(balls, "ball"));
    text.push_str(" in all");
    if let Some(share) = chance_of {
        text.push_str(&[", ", &*chance(share)].concat());
    }
    match price {
        Some(price) if balls > 0 => text.push_str(&["; together ", &*money(price), ".\n"].concat()),
        _ => text.push_str(".\n"),
    }
    if balls > 0 {
        text.push_str(ONE_LOT);
        text.push('\n');
    }
    for line in lines {
        if let Some(advice) = lot_advice(&line.buy, &colour_name(line), &line.lots) {
            text.push_str(&line_of(&advice));
            text.push('\n');
        }
    }
    text
}

/// A yarn and colour: what to buy in the first line, what that is made of in the next ones.
fn entry(text: &mut String, line: &ListedYarn<'_>, units: Units) {
    let ListedYarn { ball, buy, .. } = line;
    text.push_str(&colour_name(line));
    let yarn_name = line_of(line.yarn);
    if !yarn_name.is_empty() {
        text.push_str(&[", ", &*yarn_name].concat());
    }
    match buy.balls {
        0 => text.push_str(": none to buy\n"),
        balls => text.push_str(&[": ", &*plural(balls, "ball"), " of ", &figures::ball(ball, units), "\n"].concat()),
    }
    text.push_str(&["  takes ", &*amount(buy.need.length, buy.grams, units)].concat());
    if ball.owned.ticks() > 0 {
        let noun = if ball.owned.ticks() == 100 { " ball" } else { " balls" };
        text.push_str(&[", ", &*show(ball.owned.ticks(), Unit::Count, units), noun].concat());
        let lots: Vec<String> = line.lots.iter().map(|lot| line_of(lot)).filter(|lot| !lot.is_empty()).collect();
        if !lots.is_empty() {
            text.push_str(&[if lots.len() == 1 { " of lot " } else { " of lots " }, &lots.join(" and ")].concat());
        }
        text.push_str(" owned");
    }
    let short = buy.left < YarnLength::default();
    let left = YarnLength::from_metres(buy.left.metres().abs());
    let grams = buy.left_grams.map(|grams| Mass::from_ticks(grams.ticks().saturating_abs()));
    text.push_str(&[", ", &*amount(left, grams, units), if short { " short" } else { " left over" }].concat());
    if let Some(price) = buy.price.filter(|_| buy.balls > 0) {
        text.push_str(&["; ", &*money(price)].concat());
    }
    text.push('\n');
    for (name, copies, length) in &line.hats {
        text.push_str(&["  for ", &*copied(name, *copies), ": ", &yarn(*length, units), "\n"].concat());
    }
}

fn amount(length: YarnLength, grams: Option<Mass>, units: Units) -> String {
    let length = yarn(length, units);
    match grams {
        Some(grams) => [&*length, " (", &mass(grams, units), ")"].concat(),
        None => length,
    }
}

fn copied(name: &str, copies: u32) -> String {
    let name = hat_name(name);
    if copies == 1 { name } else { [&*copies.to_string(), " × ", &name].concat() }
}

fn hat_name(name: &str) -> String {
    let name = line_of(name);
    if name.is_empty() { "a hat without a name".into() } else { name }
}

fn colour_name(line: &ListedYarn<'_>) -> String {
    let name = line_of(line.colour);
    if name.is_empty() { ["Colour ", &*(u32::from(line.buy.colour.0) + 1).to_string()].concat() } else { name }
}

/// A name that a person typed, on one line.
fn line_of(name: &str) -> String {
    let one: String = name.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    one.trim().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{Count, Extra, HatSpec, plan, shop};

    const CM: Units = Units::Centimetres;
    const NAMES: [YarnName<'_>; 2] =
        [YarnName { colour: "Indigo", yarn: "Boathouse wool", lot: "4711" }, YarnName { colour: "Weld", yarn: "", lot: "" }];

    fn spec() -> HatSpec {
        let mut spec = HatSpec::default();
        let ball = &mut spec.balls[0];
        (ball.grams, ball.owned) = (Some(Mass::from_grams(50.0)), Count::whole(1));
        spec.balls.iter_mut().for_each(|ball| ball.price = Some(Money::from_ticks(450)));
        spec
    }

    #[test]
    fn one_hat_is_listed_with_all_its_numbers() {
        let spec = spec();
        let hat = plan(&spec).unwrap();
        let shop = shop(&hat, &spec);
        let text = shop_text("Rowing club\ncap", &shop, &NAMES, &spec.balls, CM);
        let lines: Vec<&str> = text.lines().collect();
        assert_eq!(lines[..3], ["Yarn for Rowing club cap", "", "Indigo, Boathouse wool: 1 ball of 50 g = 80 m"]);
        let (takes, left) = (figures::yarn(shop.lines[0].need.length, CM), figures::yarn(shop.lines[0].left, CM));
        let (grams, left_grams) = (mass(shop.lines[0].grams.unwrap(), CM), mass(shop.lines[0].left_grams.unwrap(), CM));
        assert_eq!(
            lines[3],
            format!("  takes {takes} ({grams}), 1 ball of lot 4711 owned, {left} ({left_grams}) left over; 4.50")
        );
        assert_eq!(lines[4], "Weld: 1 ball of 80 m");
        assert_eq!(lines[6], "");
        let all = format!("2 balls in all, {}; together 9.00.", chance(shop.chance));
        assert_eq!(lines[7..9], [&*all, ONE_LOT]);
        assert!(lines[9].starts_with("Indigo: look for lot 4711, which you own."), "{text}");
        assert_eq!(lines.len(), 10, "{text}");
    }

    #[test]
    fn nothing_to_buy_is_said() {
        let mut spec = HatSpec { extra: Extra::Share(Ratio::of(0.0)), ..HatSpec::default() };
        spec.balls.iter_mut().for_each(|ball| ball.owned = Count::from_ticks(250));
        let text = shop_text("", &shop(&plan(&spec).unwrap(), &spec), &[], &spec.balls, Units::Inches);
        assert!(text.starts_with("Yarn for a hat\n\nColour 1: none to buy\n  takes "), "{text}");
        assert!(text.contains(", 2.5 balls owned, ") && text.ends_with("0 balls in all, practically always enough.\n"), "{text}");
    }

    #[test]
    fn several_hats_are_one_list() {
        let spec = spec();
        let shop = shop(&plan(&spec).unwrap(), &spec);
        let line = |i: usize, lots: Vec<&'static str>| ListedYarn {
            colour: NAMES[i].colour,
            yarn: NAMES[i].yarn,
            lots,
            ball: spec.balls[i],
            buy: shop.lines[i],
            hats: vec![("Junior cap", 2, YarnLength::from_metres(40.0)), ("", 1, YarnLength::from_metres(20.4))],
        };
        let lines = [line(0, vec!["4711", "4712"]), line(1, Vec::new())];
        let text = list_text(&[("Junior cap", 2), ("", 1)], &lines, &["Cox\u{7}"], Some(shop.chance), None, CM);
        for says in [
            "Yarn for 3 hats\n- 2 × Junior cap\n- a hat without a name\n- not on the list, because it cannot be made as it is: Cox\n\n",
            "\n  for 2 × Junior cap: 40 m\n  for a hat without a name: 20 m\n",
            "1 ball of lots 4711 and 4712 owned",
            "\nIndigo: your balls are of lots 4711 and 4712, which may differ in shade.",
        ] {
            assert!(text.contains(says), "{says}\n\n{text}");
        }
        assert!(list_text(&[], &[], &[], None, None, CM).ends_with("0 balls in all.\n"));
    }
}
