//! This hat: a row for each colour with the balls to buy, and all of it in a line.

use super::paper::{self, Entry, Paper};
use super::{Counter, parts};
use crate::ask::letter;
use crate::erase::{flag, memo, part, words};
use crate::html::{Html, marked};
use hatwright_pattern::say::YarnName;
use hatwright_pattern::{figures, say};
use hatwright_sizing::{Ball, Buy, Count, HatSpec, Mass, Money, Quantity, Ratio, Shop, Unit, YarnLength, shop, yarn_rates};
use hatwright_words::{count, shop as words_of};
use leptos::prelude::*;

/// More colours than these stand in rows of two lines.
const ROOMY: usize = 3;

/// The view.
pub fn this(counter: Counter) -> AnyView {
    let counted = memo(move || counter.bench.shown.with(|s| shop(&s.hat, &s.spec)));
    // A row stays where it is while its numbers change, and the keyboard with it.
    let colours = memo(move || counted.with(|shop| shop.lines.iter().map(|line| usize::from(line.colour.0)).collect::<Vec<_>>()));
    let dense = memo(move || colours.with(|colours| colours.len() > ROOMY));
    let rows = part(move || {
        let rows = colours.get().into_iter().map(|i| row(counter, counted, i)).collect_view();
        view! { <ul id="shop-lines" class="buys" class:dense=flag(move || dense.get())>{rows}</ul> }.into_any()
    });
    let sum = memo(move || counted.with(sum));
    let foot = view! {
        <p id="shop-sum" class="shop-sum" role="status" inner_html=words(move || sum.get())></p>
        {parts::line("shop-known", "note", words(move || known(counter)))}
        {paper::acts(counter, "shop", move || list(counter))}
    };
    parts::view(rows.into_any(), foot.into_any())
}

/// One colour.
fn row(counter: Counter, counted: Memo<Shop>, i: usize) -> AnyView {
    let cells = memo(move || {
        let units = counter.bench.figure_units();
        counted.with(|shop| {
            let line = shop.lines.iter().find(|line| usize::from(line.colour.0) == i);
            line.map(|line| cells(counter, line, units)).unwrap_or_default()
        })
    });
    view! {
        <li data-colour=i.to_string()>
            <div class="cells" inner_html=words(move || cells.get())></div>
            {stepper(counter, i)}
        </li>
    }
    .into_any()
}

fn cells(counter: Counter, line: &Buy, units: figures::Units) -> String {
    let mut html = Html::new();
    html.raw("<span class=\"who\">").raw(&who(counter, usize::from(line.colour.0)));
    html.raw("</span><b class=\"balls\">").text(&count::balls(line.balls));
    html.raw("</b><span class=\"hidden\">").text(words_of::after_balls());
    html.raw("</span><span class=\"takes\"><span class=\"need\">").text(&need(line, units));
    html.raw("</span> <span class=\"left\">").text(&left(line, units)).raw("</span></span><span class=\"price\">");
    html.text(&line.price.filter(|_| line.balls > 0).map(figures::money).unwrap_or_default()).raw("</span>");
    html.done()
}

/// Chip, letter and name of a colour; what its yarn is called, and its lot.
pub fn who(counter: Counter, i: usize) -> String {
    let name = counter.name(i);
    counter.bench.project.with(|p| {
        let mut html = Html::new();
        let Some(colour) = p.colours.get(i) else { return String::new() };
        html.chip(&colour.hex.to_string())
            .raw("<span class=\"name\"><b>")
            .text(&letter(i).to_string())
            .raw("</b> ")
            .text(&name)
            .raw("</span>");
        let yarn = colour.yarn.trim();
        let lot = colour.lot.trim();
        let lot = if lot.is_empty() { String::new() } else { words_of::lot(lot) };
        let small: Vec<&str> = [yarn, &lot].into_iter().filter(|text| !text.is_empty()).collect();
        if !small.is_empty() {
            html.raw(" ").element("small", &small.join(" · "));
        }
        html.done()
    })
}

/// What is owned, a ball more or less at a tap.
fn stepper(counter: Counter, i: usize) -> AnyView {
    let most = Quantity::BallsOwned.row().most;
    let step = move |by: i32| {
        let now = untrack(|| counter.owned(i)).ticks();
        counter.own(i, Count::from_ticks((now + by * 100).clamp(0, most)));
        counter.have.update(|have| {
            have.remove(&i);
        });
    };
    let name = move |way: fn(&str) -> String| words(move || way(&counter.name(i)));
    let owned = words(move || figures::show(counter.owned(i).ticks(), Unit::Count, counter.bench.figure_units()));
    let at = move |end: i32| words(move || (counter.owned(i).ticks() == end).to_string());
    let id = |key: &str| [key, &i.to_string()].concat();
    view! {
        <span class="stepper" role="group" aria-label=words(move || words_of::balls_owned(&counter.name(i)))>
            <span class="step-name" aria-hidden="true">{words_of::owned()}</span>
            {parts::named(id("owned-less-"), "", "−", name(words_of::one_fewer), at(0), Box::new(move || step(-1)))}
            <output id=id("owned-") aria-live="off">{owned}</output>
            {parts::named(id("owned-more-"), "", "+", name(words_of::one_more), at(most), Box::new(move || step(1)))}
        </span>
    }
    .into_any()
}

/// `takes 79 m · 49 g`.
pub fn need(line: &Buy, units: figures::Units) -> String {
    words_of::takes(&amount(line.need.length, line.grams, units))
}

/// `81 m · 51 g left over`.
pub fn left(line: &Buy, units: figures::Units) -> String {
    let size = YarnLength::from_metres(line.left.metres().abs());
    let grams = line.left_grams.map(|grams| Mass::from_ticks(grams.ticks().abs()));
    let word = if line.left < YarnLength::default() { words_of::short } else { words_of::left_over };
    word(&amount(size, grams, units))
}

/// A length of yarn, and its weight where that is known.
fn amount(length: YarnLength, grams: Option<Mass>, units: figures::Units) -> String {
    let length = figures::yarn(length, units);
    match grams {
        Some(grams) => [&length, " · ", &figures::mass(grams, units)].concat(),
        None => length,
    }
}

/// All balls, what they cost, how often they are enough, and by how much they are more than the estimate.
fn sum(shop: &Shop) -> String {
    let balls = balls_of(shop);
    let mut html = Html::new();
    html.raw(&words_of::to_buy(&marked("b", "balls", &count::balls(balls)))).raw(" ");
    if balls > 0
        && let Some(price) = shop.price
    {
        html.raw("<b class=\"price\">").text(&figures::money(price)).raw("</b> ");
    }
    let chance = marked("span", "chance", &say::chance_full(shop.chance));
    let told = match margin(shop) {
        // Rounded down: it is what there is at the least.
        Some(margin) => {
            let share = words_of::share(&(margin.ticks() / 100).to_string());
            words_of::enough_margin(&chance, &marked("span", "margin", &share))
        }
        None => words_of::enough(&chance),
    };
    html.raw("<span class=\"odds\">").raw(&told).raw("</span>");
    html.done()
}

/// By how much what is owned and bought is more than the estimate, for the colour where that is least.
fn margin(shop: &Shop) -> Option<Ratio> {
    let over = |line: &Buy| Ratio::of(line.left.metres() / line.need.length.metres());
    shop.lines.iter().map(over).min()
}

/// The list to take along.
fn list(counter: Counter) -> Paper {
    let units = counter.bench.figure_units();
    counter.bench.project.with(|p| {
        let names = p.told_colours();
        counter.bench.shown.with(|s| {
            let shop = shop(&s.hat, &s.spec);
            let called: Vec<YarnName<'_>> =
                p.colours.iter().zip(&names).map(|(c, name)| YarnName { colour: name, yarn: &c.yarn, lot: &c.lot }).collect();
            let entry = |line: &Buy| {
                let i = usize::from(line.colour.0);
                Some(entry(line, s.spec.balls.get(i)?, letter(i), called.get(i)?, units))
            };
            let entries: Vec<Entry> = shop.lines.iter().filter_map(entry).collect();
            let name = p.name.trim();
            let title = if name.is_empty() { words_of::yarn_for_unnamed().to_owned() } else { words_of::yarn_for(name) };
            let text = say::shop_text(name, &shop, &called, &s.spec.balls, units);
            Paper::of(&title, &entries, &all_of(balls_of(&shop), shop.price, Some(shop.chance)), text)
        })
    })
}

fn entry(line: &Buy, ball: &Ball, letter: char, name: &YarnName<'_>, units: figures::Units) -> Entry {
    let mut more = vec![need(line, units), left(line, units)];
    if ball.owned.ticks() > 0 {
        more.push(words_of::amount_owned(&figures::show(ball.owned.ticks(), Unit::Count, units)));
    }
    let lot = name.lot.trim();
    let mut named = vec![letter.to_string(), name.colour.to_owned()];
    named.extend(Some(name.yarn.trim().to_owned()).filter(|yarn| !yarn.is_empty()));
    named.extend((!lot.is_empty()).then(|| words_of::lot(lot)));
    let mut notes = vec![more.join(" · ")];
    notes.extend(say::lot_advice(line, name.colour, &[lot]));
    Entry::of(line.balls, ball, line.price, named.join(" · "), notes, units)
}

fn balls_of(shop: &Shop) -> u32 {
    shop.lines.iter().map(|line| line.balls).sum()
}

/// What is said of a whole list: all its balls, their price, how often they are enough.
pub fn all_of(balls: u32, price: Option<Money>, chance: Option<Ratio>) -> [String; 2] {
    let price = price.filter(|_| balls > 0).map(figures::money);
    let all = match (chance.map(say::chance), price) {
        (None, None) => words_of::in_all(&count::balls(balls)),
        (Some(chance), None) => words_of::in_all_chance(&count::balls(balls), &chance),
        (None, Some(price)) => words_of::in_all_price(&count::balls(balls), &price),
        (Some(chance), Some(price)) => words_of::in_all_chance_price(&count::balls(balls), &chance, &price),
    };
    [all, say::one_lot().to_owned()]
}

/// How the yarn in a stitch is known, and what is worth knowing of dye lots.
fn known(counter: Counter) -> String {
    let units = counter.bench.figure_units();
    let lots = counter.bench.project.with(|p| {
        let owned = |i: usize| p.spec.balls.get(i).is_some_and(|ball| ball.owned.ticks() > 0);
        p.colours.iter().enumerate().any(|(i, colour)| owned(i) && !colour.lot.trim().is_empty())
    });
    let (rate, advice) = (rate(counter, units), lots.then(words_of::look_for_lots));
    [&*rate, say::one_lot()].into_iter().chain(advice).collect::<Vec<_>>().join(" ")
}

fn rate(counter: Counter, units: figures::Units) -> String {
    let told = |spec: &HatSpec| yarn_rates(spec).first().map(|rate| say::rate_of_strands(spec, rate, units));
    let told = counter.bench.shown.with(|s| told(&s.spec)).unwrap_or_default();
    words_of::reckoned(&told)
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::plan;

    #[test]
    fn the_margin_is_that_of_the_colour_with_the_least() {
        let spec = HatSpec::default();
        let shop = shop(&plan(&spec).unwrap(), &spec);
        let least = margin(&shop).unwrap();
        assert!(least > Ratio::of(0.0), "what is bought is never less than the estimate");
        for line in &shop.lines {
            let have = line.owned.metres() + f64::from(line.balls) * spec.balls[usize::from(line.colour.0)].metres();
            assert!(have >= line.need.length.metres() * (1.0 + least.value()) - 0.01);
        }
        assert_eq!(margin(&Shop { lines: Vec::new(), ..shop }), None);
    }
}
