//! The shop screen: on a phone, with one hand, in the sun, without a network.

mod hand;
mod have;
mod several;
mod swap;

use hatwright_pattern::figures::{self, Units};
use hatwright_pattern::say::{self, YarnName};
use hatwright_project::{ColourName, Project, Rgb, to_link};
use hatwright_sizing::{
    Ball, Buy, Colour, Count, Hat, Mass, Money, Ratio, RoundStripe, Rounds, Shop, Unit, YarnLength, plan, shop, yarn_rates,
};
use serde_json::{Value, json};

use crate::expected::{example, units};
use crate::page::{Page, Screen};
use crate::stage::on_page;

/// A cap in two colours, of which all is known that a ball's band tells.
fn cap() -> Project {
    let mut cap = example();
    for (i, (lot, owned)) in [("2214 b", 0), ("", 150)].into_iter().enumerate() {
        let ball = &mut cap.spec.balls[i];
        ball.grams = Some(Mass::from_grams(50.0));
        ball.price = Some(Money::from_ticks(450));
        ball.owned = Count::from_ticks(owned);
        "Boathouse worsted".clone_into(&mut cap.colours[i].yarn);
        lot.clone_into(&mut cap.colours[i].lot);
    }
    cap
}

/// A cap in so many colours, each in a stripe of the body.
fn striped(count: usize) -> Project {
    let mut cap = cap();
    let names = ["Indigo", "Weld", "Madder", "Undyed oatmeal", "Walnut", "Lichen"];
    let ball = Ball { owned: Count::from_ticks(0), ..cap.spec.balls[0] };
    cap.spec.balls = vec![ball; count];
    let named = |name: &&str| ColourName {
        name: (*name).to_owned(),
        hex: Rgb::new(0x34, 0x51, 0x6f),
        yarn: "Boathouse worsted".to_owned(),
        lot: String::new(),
    };
    cap.colours = names[..count].iter().map(named).collect();
    let band = cap.spec.band.stripes.iter_mut().zip(0..);
    band.for_each(|(stripe, i)| stripe.colour = Colour(i % count as u8));
    cap.spec.body_stripes = (0..count).map(|i| RoundStripe { colour: Colour(i as u8), rounds: Rounds::new(2) }).collect();
    cap
}

fn hat_of(project: &Project) -> Hat {
    plan(&project.spec).expect("a hat that can be made")
}

fn shop_of(project: &Project) -> Shop {
    shop(&hat_of(project), &project.spec)
}

/// Opens the page with a hat from a link, and the shop on one of its views.
#[track_caller]
fn shop_for(page: &Page, project: &Project, view: usize) {
    page.open_at(&format!("#{}", to_link(project)));
    enter(page, view);
}

#[track_caller]
fn enter(page: &Page, view: usize) {
    let opener = if page.js("return innerWidth < 761") == json!(true) { "#bar-shop" } else { "#open-shop" };
    page.click(opener);
    page.until("the shop", "document.getElementById('shop').open");
    turn(page, view);
}

#[track_caller]
fn turn(page: &Page, view: usize) {
    page.click(&format!("#shop-tab-{view}"));
    let mark = ["#shop-lines", "#offers", "#instead-begin, #swap", "#several"][view];
    page.until("the view", &format!("!!document.querySelector('{mark}')"));
}

/// The hat on the bench, as it is kept.
#[track_caller]
fn kept(page: &Page) -> Project {
    page.is_saved();
    page.kept_hats().into_iter().next().expect("a hat that is kept")
}

/// Lets the page copy, and gives what a click put on the clipboard.
#[track_caller]
fn copied(page: &Page, css: &str) -> String {
    let permissions = json!({ "origin": page.origin(), "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"] });
    page.command("Browser.grantPermissions", permissions);
    page.click(css);
    let said = format!("document.getElementById('{}-copied').textContent", css.trim_start_matches('#').trim_end_matches("-copy"));
    page.until_is("what is said of copying", &said, &json!("Copied."));
    let text = page.js_later("navigator.clipboard.readText().then(arguments[0], e => arguments[0](String(e)))");
    text.as_str().unwrap_or_default().to_owned()
}

/// The rows that are shown, cell by cell.
const ROWS: &str = "return [...document.querySelectorAll('#shop-lines > li')].map(row => [row.dataset.colour,
    ...['.name', 'small', '.balls', '.need', '.left', '.price', 'output'].map(css => row.querySelector(css)?.textContent ?? '')])";

/// The rows that there should be.
fn rows(project: &Project) -> Value {
    let units = units(project);
    shop_of(project).lines.iter().map(|line| row(project, line, units)).collect()
}

fn row(project: &Project, line: &Buy, units: Units) -> Value {
    let i = usize::from(line.colour.0);
    let (colour, ball) = (&project.colours[i], &project.spec.balls[i]);
    let amount = |length: YarnLength, grams: Option<Mass>| {
        let grams = grams.map(|g| format!(" · {}", figures::mass(Mass::from_ticks(g.ticks().abs()), units))).unwrap_or_default();
        format!("{}{grams}", figures::yarn(YarnLength::from_metres(length.metres().abs()), units))
    };
    let lot = if colour.lot.is_empty() { String::new() } else { format!(" · lot {}", colour.lot) };
    let word = if line.left < YarnLength::default() { "short" } else { "left over" };
    json!([
        i.to_string(),
        format!("{} {}", char::from(b'A' + line.colour.0), colour.name),
        format!("{}{lot}", colour.yarn),
        hatwright_words::count::balls(line.balls),
        format!("takes {}", amount(line.need.length, line.grams)),
        format!("{} {word}", amount(line.left, line.left_grams)),
        line.price.filter(|_| line.balls > 0).map(figures::money).unwrap_or_default(),
        figures::show(ball.owned.ticks(), Unit::Count, units),
    ])
}

/// Waits until the view of this hat shows what is reckoned natively.
#[track_caller]
fn shows(page: &Page, project: &Project) {
    let shop = shop_of(project);
    page.until_is("the rows", &ROWS["return ".len()..], &rows(project));
    let balls: u32 = shop.lines.iter().map(|line| line.balls).sum();
    let over = shop.lines.iter().map(|line| Ratio::of(line.left.metres() / line.need.length.metres())).min().expect("a colour");
    let price = shop.price.filter(|_| balls > 0).map(|price| format!("{} ", figures::money(price))).unwrap_or_default();
    let chance = say::chance_full(shop.chance);
    let sum = format!(
        "{} to buy {price}{chance}, {} % more than the estimate.",
        hatwright_words::count::balls(balls),
        over.ticks() / 100
    );
    page.until_is("the sum", "document.getElementById('shop-sum').textContent", &json!(sum));
}

#[test]
fn numbers_are_the_planners() {
    on_page(Screen::PHONE, |page| {
        for mut cap in [cap(), example(), striped(6)] {
            for units in [hatwright_project::Units::Centimetres, hatwright_project::Units::Inches] {
                cap.units = units;
                shop_for(page, &cap, 0);
                shows(page, &cap);
            }
        }
        let (known, cap) = (page.text("#shop-known"), striped(6));
        let rate = say::rate_of_strands(&cap.spec, &yarn_rates(&cap.spec)[0], Units::Inches);
        assert!(known.contains(&rate) && known.contains(say::one_lot()), "{known}");
    });
}

/// A link carries its yarn: a phone that has never seen the page shows what to buy.
#[test]
fn a_link_opens_in_the_shop() {
    on_page(Screen::PHONE, |page| {
        let cap = cap();
        shop_for(page, &cap, 0);
        shows(page, &cap);
        assert_eq!(page.kept(), [], "looking at it keeps nothing");
    });
}

#[test]
fn balls_that_are_owned_are_stepped_and_kept() {
    on_page(Screen::PHONE, |page| {
        let mut cap = cap();
        shop_for(page, &cap, 0);
        let mut step = |page: &Page, css: &str, i: usize, owned: i32| {
            page.click(css);
            cap.spec.balls[i].owned = Count::from_ticks(owned);
            shows(page, &cap);
            assert_eq!(page.focused(), css.trim_start_matches('#'), "the keyboard stays at its button");
        };
        step(page, "#owned-less-0", 0, 0);
        step(page, "#owned-more-0", 0, 100);
        step(page, "#owned-more-0", 0, 200);
        step(page, "#owned-less-0", 0, 100);
        step(page, "#owned-less-1", 1, 50);
        step(page, "#owned-less-1", 1, 0);
        let names = page.js("return [...document.querySelectorAll('.stepper button')].map(b => b.ariaLabel)");
        let of = |colour: &str| [format!("One ball of {colour} fewer owned"), format!("One ball of {colour} more owned")];
        assert_eq!(names, json!([of("Indigo"), of("Weld")].concat()));
        let kept = kept(page);
        assert_eq!(kept.spec.balls, cap.spec.balls);
        page.reload();
        enter(page, 0);
        shows(page, &cap);
    });
}

#[test]
fn the_list_is_copied_as_text() {
    on_page(Screen::PHONE, |page| {
        let cap = cap();
        shop_for(page, &cap, 0);
        let called = |c: &'static ColourName| YarnName { colour: &c.name, yarn: &c.yarn, lot: &c.lot };
        let colours: &'static [ColourName] = Vec::leak(cap.colours.clone());
        let names: Vec<YarnName<'_>> = colours.iter().map(called).collect();
        let text = say::shop_text(&cap.name, &shop_of(&cap), &names, &cap.spec.balls, Units::Centimetres);
        assert_eq!(copied(page, "#shop-copy"), text);
    });
}

/// What there is to be seen on paper.
const ON_PAPER: &str = "return [...document.body.querySelectorAll('*')]
    .filter(e => e.checkVisibility() && [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()))
    .map(e => e.closest('#shop-paper') ? 'list' : e.outerHTML.slice(0, 80))";

#[test]
fn only_the_list_is_printed() {
    on_page(Screen::PHONE, |page| {
        shop_for(page, &striped(6), 0);
        page.js("window.print = () => { window.printed = document.documentElement.className }");
        page.click("#shop-print");
        page.until("the printer to be asked", "window.printed?.includes('shop-printing')");
        page.media("print", &[]);
        let seen: Vec<String> = serde_json::from_value(page.js(ON_PAPER)).expect("texts");
        assert!(seen.len() > 12 && seen.iter().all(|part| part == "list"), "{seen:#?}");
        assert_eq!(page.js("return document.querySelectorAll('#shop-paper li').length"), json!(6));
        page.media("screen", &[]);
        page.js("dispatchEvent(new Event('afterprint'))");
        page.until("the page to be itself again", "!document.documentElement.classList.contains('shop-printing')");
        assert_eq!(page.text("#shop-paper"), "");
        // Without it, the page prints its pattern as ever.
        page.media("print", &[]);
        let seen = page.js("return document.getElementById('shop').checkVisibility()");
        assert_eq!(seen, json!(false));
    });
}
