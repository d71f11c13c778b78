//! The shopping list as plain text, for copying and printing: of one hat, or of several.

use super::chance::chance;
use super::lots::{and, lot_advice, one_lot};
use crate::figures::{self, Units, money, show, yarn, yarn_and_mass};
use hatwright_sizing::{Ball, Buy, Mass, Money, Ratio, Shop, Unit, YarnLength};
use hatwright_words::yarn as words;

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
    let mut head = words::for_a_hat(if title.is_empty() { words::a_hat() } else { &title });
    head.push('\n');
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
    let mut head = words::for_hats(count);
    head.push('\n');
    for (name, copies) in hats {
        head.push_str(&["- ", &*copied(name, *copies), "\n"].concat());
    }
    for name in left_out {
        head.push_str(&["- ", &*words::left_out(&hat_name(name)), "\n"].concat());
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
    let enough = chance_of.map(chance);
    let price = price.filter(|_| balls > 0).map(money);
    text.push_str(&match (&enough, &price) {
        (None, None) => words::in_all(balls),
        (Some(enough), None) => words::in_all_enough(balls, enough),
        (None, Some(price)) => words::in_all_price(balls, price),
        (Some(enough), Some(price)) => words::in_all_enough_price(balls, enough, price),
    });
    text.push('\n');
    if balls > 0 {
        text.push_str(one_lot());
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
    let (colour, yarn_name) = (colour_name(line), line_of(line.yarn));
    let name = if yarn_name.is_empty() { colour } else { [&*colour, ", ", &*yarn_name].concat() };
    text.push_str(&match buy.balls {
        0 => words::none_to_buy(&name),
        balls => words::to_buy(&name, balls, &figures::ball(ball, units)),
    });
    text.push_str("\n  ");
    text.push_str(&made_of(line, units).join(", "));
    if let Some(price) = buy.price.filter(|_| buy.balls > 0) {
        text.push_str(&["; ", &*money(price)].concat());
    }
    text.push('\n');
    for (name, copies, length) in &line.hats {
        text.push_str(&["  ", &*words::takes_of(&copied(name, *copies), &yarn(*length, units)), "\n"].concat());
    }
}

/// What is taken, what is owned of it, and what is left over or short.
fn made_of(line: &ListedYarn<'_>, units: Units) -> Vec<String> {
    let ListedYarn { ball, buy, .. } = line;
    let mut clauses = vec![words::takes(&yarn_and_mass(buy.need.length, buy.grams, units))];
    let owned = ball.owned.ticks();
    if owned > 0 {
        let (figure, form) = (show(owned, Unit::Count, units), if owned == 100 { 1 } else { 2 });
        let lots: Vec<String> = line.lots.iter().map(|lot| line_of(lot)).filter(|lot| !lot.is_empty()).collect();
        clauses.push(match &*lots {
            [] => words::owned(&figure, form),
            [lot] => words::owned_lot(&figure, form, lot),
            _ => words::owned_lots(&figure, form, &and(&lots)),
        });
    }
    let grams = buy.left_grams.map(|grams| Mass::from_ticks(grams.ticks().saturating_abs()));
    let left = yarn_and_mass(YarnLength::from_metres(buy.left.metres().abs()), grams, units);
    clauses.push(if buy.left < YarnLength::default() { words::short(&left) } else { words::left_over(&left) });
    clauses
}

fn copied(name: &str, copies: u32) -> String {
    let name = hat_name(name);
    if copies == 1 { name } else { [&*copies.to_string(), " × ", &name].concat() }
}

fn hat_name(name: &str) -> String {
    let name = line_of(name);
    if name.is_empty() { words::unnamed_hat().into() } else { name }
}

fn colour_name(line: &ListedYarn<'_>) -> String {
    let name = line_of(line.colour);
    if name.is_empty() { words::colour_heading(u32::from(line.buy.colour.0) + 1) } else { name }
}

/// A name that a person typed, on one line.
fn line_of(name: &str) -> String {
    let one: String = name.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    one.trim().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::mass;
    use hatwright_sizing::{Count, Extra, HatSpec, plan, shop};
    use hatwright_words::{Language, in_language};

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
        assert_eq!(lines[7..9], [&*all, one_lot()]);
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

    #[test]
    fn a_hat_is_listed_in_spanish() {
        let spec = spec();
        let hat = plan(&spec).unwrap();
        let shop = shop(&hat, &spec);
        let text = in_language(Language::Spanish, || shop_text("Gorra", &shop, &NAMES, &spec.balls, CM));
        for says in [
            "Hilo para Gorra\n\nIndigo, Boathouse wool: 1 ovillo de 50 g = 80 m\n  lleva ",
            ", ya tienes 1 ovillo del lote 4711, sobran ",
            "; 4,50\nWeld: 1 ovillo de 80 m\n",
            "\n2 ovillos en total: alcanza ",
            "; suman 9,00.\nCompra todos los ovillos de un color del mismo baño de tinte.\n",
        ] {
            assert!(text.contains(says), "{says}\n\n{text}");
        }
        let both = shop_text("Cap", &shop, &NAMES, &spec.balls, Units::Both);
        assert!(both.contains(": 1 ball of 50 g = 80 m (1.8 oz = 87 yd)\n  takes ") && !both.contains("))"), "{both}");
    }
}
