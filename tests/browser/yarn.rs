//! Yarn: the record of a ball, how much of it a stitch takes, where it goes, and what there is to buy.

use hatwright_pattern::figures::{self, Units};
use hatwright_pattern::say;
use hatwright_project::{Project, Rgb};
use hatwright_sizing::{
    Colour, Count, Extra, Hat, Length, Mass, Money, Part, Quantity, Ratio, Stitches, Topper, TopperKind, Unit, Unravelled,
    UseWay, WeighedSwatch, YarnLength, YarnWeight, plan, rate_of_hat, yarn_hint, yarn_rates,
};
use serde_json::json;

use crate::expected::example;
use crate::page::{Page, Screen};
use crate::stage::on_page;

fn hat_of(project: &Project) -> Hat {
    plan(&project.spec).expect("a hat that can be made")
}

fn metres(project: &Project) -> f64 {
    hat_of(project).yarn.iter().map(|need| need.length.metres()).sum()
}

/// The advice beside a field.
fn advised(page: &Page, id: &str) -> String {
    page.text(&format!("#{id}-hint"))
}

/// Types the whole band of the first colour, and gives the hat that this makes.
fn with_grams(page: &Page) -> Project {
    let mut hat = example();
    for (i, suffix) in ["", "-1"].iter().enumerate() {
        page.fill(&format!("ball-yarn{suffix}"), "80");
        page.fill(&format!("ball-grams{suffix}"), "50");
        page.fill(&format!("yarn-name-{i}"), "Club worsted");
        hat.spec.balls[i].yarn = Count::whole(80);
        hat.spec.balls[i].grams = Some(Mass::from_grams(50.0));
        "Club worsted".clone_into(&mut hat.colours[i].yarn);
    }
    page.shows(&hat);
    hat
}

#[test]
fn the_record_of_a_ball_is_kept_whole() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = with_grams(page);
        page.select("ball-weight-0", "4");
        page.fill("lot-0", "2214 b");
        page.fill("balls-owned", "1,5");
        page.fill("ball-price", "4.50");
        let ball = &mut hat.spec.balls[0];
        ball.weight = YarnWeight::new(4).ok();
        ball.owned = Count::from_ticks(150);
        ball.price = Some(Money::from_ticks(450));
        hat.colours[0].lot = "2214 b".to_owned();
        page.shows(&hat);
        page.is_saved();
        let kept = page.kept_hats();
        assert_eq!((&kept[0].spec, &kept[0].colours), (&hat.spec, &hat.colours));
        page.reload();
        page.shows(&hat);
        assert_eq!(page.value("lot-0"), "2214 b");

        // Ounces and yards are the same ball.
        page.fill("ball-grams", "1.75 oz");
        page.fill("ball-yarn", "87 yd");
        hat.spec.balls[0].grams =
            Some(Mass::from_ticks(figures::parse("1.75 oz", Unit::Mass, Units::Centimetres).expect("ounces")));
        hat.spec.balls[0].yarn = Count::from_ticks(figures::parse("87 yd", Unit::Yarn, Units::Centimetres).expect("yards"));
        assert_eq!((hat.spec.balls[0].grams, hat.spec.balls[0].yarn), (Some(Mass::from_ticks(4_961)), Count::from_ticks(7_955)));
        page.shows(&hat);

        // What is not known is left blank, which is no mistake.
        page.fill("ball-price", "");
        page.fill("ball-grams", "");
        (hat.spec.balls[0].price, hat.spec.balls[0].grams) = (None, None);
        page.shows(&hat);
        assert_eq!((page.says("ball-price"), page.says("ball-grams")), (String::new(), String::new()));
    });
}

#[test]
fn one_yarn_is_given_to_all_colours() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();
        page.fill("yarn-name-0", "Club worsted");
        page.fill("ball-yarn", "105");
        page.fill("ball-grams", "50");
        page.fill("ball-price", "3");
        page.select("ball-weight-0", "4");
        page.fill("balls-owned", "2");
        page.fill("balls-owned-1", "1");
        page.fill("lot-1", "7");
        page.fill("ball-yarn-1", "x");
        page.click("#same-yarn");
        for (i, owned) in [2, 1].into_iter().enumerate() {
            let ball = &mut hat.spec.balls[i];
            ball.yarn = Count::whole(105);
            ball.grams = Some(Mass::from_grams(50.0));
            ball.price = Some(Money::from_ticks(300));
            ball.weight = YarnWeight::new(4).ok();
            ball.owned = Count::whole(owned);
            "Club worsted".clone_into(&mut hat.colours[i].yarn);
        }
        hat.colours[1].lot = "7".to_owned();
        page.shows(&hat);
        assert_eq!((page.value("ball-yarn-1"), page.value("lot-1")), ("105".to_owned(), "7".to_owned()));
    });
}

/// A ball of 0 m, grams without metres, mixed units, a weight that contradicts its number: a sentence beside the field.
#[test]
fn a_ball_that_cannot_be_is_told_beside_its_field() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = with_grams(page);
        let before = page.shown();
        page.paste("ball-yarn", "0");
        assert_eq!(page.says("ball-yarn"), say::out_of_range(Quantity::BallYarn, 0, Units::Centimetres));
        for typed in ["", "50 g", "50 oz", "80 st"] {
            page.fill("ball-yarn", typed);
            let why = figures::parse_for(Quantity::BallYarn, typed, Units::Centimetres).expect_err("no length of yarn");
            assert_eq!(page.says("ball-yarn"), say::misread(Quantity::BallYarn, &why, typed, Units::Centimetres), "{typed:?}");
            assert!(advised(page, "ball-yarn").starts_with("Grams alone do not tell the length"), "{typed:?}");
            assert_eq!(page.value("ball-yarn"), typed, "what was typed stays");
            assert_eq!(page.shown()["yarns"], before["yarns"], "the last good hat stays");
        }
        page.fill("ball-yarn", "80");
        assert_eq!((page.says("ball-yarn"), advised(page, "ball-yarn")), (String::new(), String::new()));
        page.shows(&hat);

        for typed in ["50 m", "fifty", "0", "-3"] {
            page.fill("ball-grams", typed);
            assert_ne!(page.says("ball-grams"), "", "{typed:?} is no weight");
            assert_eq!(page.value("ball-grams"), typed);
        }
        page.fill("ball-grams", "50");
        page.shows(&hat);

        // 80 m of 50 g are no lace.
        page.select("ball-weight-0", "0");
        hat.spec.balls[0].weight = YarnWeight::new(0).ok();
        page.shows(&hat);
        let ball = hat.spec.balls[0];
        let hint = yarn_hint(&ball).expect("no lace is as thick");
        assert_eq!(advised(page, "ball-yarn"), say::yarn_hint(&hint, &ball, Units::Centimetres));
        page.select("ball-weight-0", "4");
        hat.spec.balls[0].weight = YarnWeight::new(4).ok();
        assert_eq!(yarn_hint(&hat.spec.balls[0]), None);
        page.until_is("the advice", "document.getElementById('ball-yarn-hint').textContent", &json!(""));
        page.shows(&hat);

        for (id, typed) in [("balls-owned", "-1"), ("balls-owned", "many"), ("ball-price", "cheap"), ("ball-price", "-2")] {
            page.fill(id, typed);
            assert_ne!(page.says(id), "", "{typed} in {id}");
            page.fill(id, if id == "ball-price" { "" } else { "0" });
            assert_eq!(page.says(id), "");
        }
        page.shows(&hat);
    });
}

#[test]
fn a_colour_is_chosen_by_its_number() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();
        page.fill("hex-text-0", "#fa0");
        hat.colours[0].hex = Rgb::new(0xff, 0xaa, 0);
        page.shows(&hat);
        assert_eq!((page.value("hex-0"), page.value("hex-text-0")), ("#ffaa00".to_owned(), "#ffaa00".to_owned()));

        for typed in ["", "#12", "blue", "#gggggg", "#12345"] {
            page.type_into("hex-text-0", typed);
            assert!(page.text("#hex-text-0-says").starts_with("A colour is # and three or six"), "{typed:?}");
            page.keys(thirtyfour::Key::Tab);
            assert_eq!((page.value("hex-text-0"), page.value("hex-0")), (typed.to_owned(), "#ffaa00".to_owned()), "{typed:?}");
            let invalid = page.js("return document.getElementById('hex-text-0').getAttribute('aria-invalid')");
            assert_eq!(invalid, json!("true"), "{typed:?}");
        }
        // A colour chosen by eye is the colour, whatever was typed before.
        page.js("const eye = document.getElementById('hex-0'); eye.value = '#102030'; eye.dispatchEvent(new Event('input', { bubbles: true }))");
        hat.colours[0].hex = Rgb::new(0x10, 0x20, 0x30);
        page.shows(&hat);
        assert_eq!((page.value("hex-text-0"), page.text("#hex-text-0-says")), ("#102030".to_owned(), String::new()));
    });
}

#[test]
fn each_way_of_measuring_changes_the_metres() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = with_grams(page);
        let estimated = metres(&hat);

        // Half a measurement changes nothing.
        page.click("#use-unravelled");
        page.fill("unravelled-stitches", "20");
        page.shows(&hat);
        assert_eq!(page.value("unravelled-stitches"), "20", "it waits for its other half");
        page.fill("unravelled-length", "128");
        let unravelled = Unravelled { band: false, stitches: Stitches::new(20), length: Length::from_cm(128.0) };
        hat.spec.yarn_use.unravelled = Some(unravelled);
        page.shows(&hat);
        assert!(metres(&hat) > estimated * 1.05, "6.4 cm a stitch are more than the estimate's 5.8");
        in_use(page, &hat, UseWay::Unravelled);

        // As the band, which is worked more loosely or not: another factor.
        page.select("unravelled-band", "band");
        hat.spec.yarn_use.unravelled = Some(Unravelled { band: true, ..unravelled });
        page.shows(&hat);
        page.select("unravelled-band", "body");
        hat.spec.yarn_use.unravelled = Some(unravelled);
        page.shows(&hat);

        page.click("#use-weighed");
        page.fill("weighed-stitches", "400");
        page.fill("weighed-grams", "16");
        page.fill("scale-step", "0.1");
        hat.spec.yarn_use.weighed =
            Some(WeighedSwatch { colour: Colour(0), band: false, stitches: Stitches::new(400), grams: Mass::from_grams(16.0) });
        hat.spec.yarn_use.scale = Mass::from_grams(0.1);
        page.shows(&hat);
        let rates = yarn_rates(&hat.spec);
        assert_eq!(rates.len(), 3, "three ways are compared");
        in_use(page, &hat, rates[0].way);
        page.is_saved();
        page.reload();
        page.shows(&hat);

        // Put aside and taken again.
        for id in ["#use-unravelled", "#use-weighed"] {
            page.click(id);
        }
        let used = hat.spec.yarn_use;
        (hat.spec.yarn_use.weighed, hat.spec.yarn_use.unravelled) = (None, None);
        page.shows(&hat);
        assert!((metres(&hat) - estimated).abs() < 0.01);
        page.click("#use-weighed");
        hat.spec.yarn_use.weighed = used.weighed;
        page.shows(&hat);
        assert_eq!(page.value("weighed-stitches"), "400");

        page.click("#swatch-kept");
        hat.spec.yarn_use.swatch_kept = true;
        page.shows(&hat);
    });
}

/// The sentence of the way that is in use, and those of the others.
#[track_caller]
fn in_use(page: &Page, hat: &Project, way: UseWay) {
    let rates = yarn_rates(&hat.spec);
    assert_eq!(rates[0].way, way, "the surest");
    let told = say::rates_compared(&hat.spec, Units::Centimetres);
    assert_eq!(page.text("#rate-used"), told[0]);
    let others = page.js("return [...document.querySelectorAll('#rates li')].map(li => li.textContent)");
    assert_eq!(others, json!(told[1..]));
}

#[test]
fn a_measurement_that_nobody_can_believe_is_left_out_and_told() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = with_grams(page);
        page.click("#use-unravelled");
        page.fill("unravelled-stitches", "20");
        page.fill("unravelled-length", "4000");
        hat.spec.yarn_use.unravelled =
            Some(Unravelled { band: false, stitches: Stitches::new(20), length: Length::from_cm(4_000.0) });
        page.shows(&hat);
        assert_eq!(yarn_rates(&hat.spec).len(), 1, "the estimate alone");
        let why = say::unravelled_hint(&hat.spec, Units::Centimetres).expect("nobody takes 2 m a stitch");
        assert_eq!(page.text("#unravelled-means"), why);

        page.click("#use-weighed");
        page.fill("ball-grams", "");
        page.fill("weighed-stitches", "180");
        page.fill("weighed-grams", "10");
        hat.spec.balls[0].grams = None;
        hat.spec.yarn_use.weighed =
            Some(WeighedSwatch { colour: Colour(0), band: false, stitches: Stitches::new(180), grams: Mass::from_grams(10.0) });
        page.shows(&hat);
        let why = say::weighed_hint(&hat.spec, Units::Centimetres).expect("grams are missing");
        assert_eq!(page.text("#weighed-means"), why);
        for (id, typed) in [("weighed-stitches", "5"), ("weighed-grams", "0"), ("unravelled-stitches", "x"), ("scale-step", "0")]
        {
            page.paste(id, typed);
            assert_ne!(page.says(id), "", "{typed} in {id}");
            assert_eq!(page.value(id), typed);
        }
        // What is wrong goes with its fields.
        page.click("#use-weighed");
        page.click("#use-unravelled");
        page.fill("scale-step", "1");
        (hat.spec.yarn_use.weighed, hat.spec.yarn_use.unravelled) = (None, None);
        page.shows(&hat);
    });
}

#[test]
fn what_a_finished_hat_weighs_is_kept_and_used_again() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = with_grams(page);
        page.click("#stitch-yarn > summary");
        page.click("#weigh-hat");
        page.fill("hat-grams", "72");
        hat.spec.yarn_use.hat = Some(Mass::from_grams(72.0));
        page.shows(&hat);
        let rate = rate_of_hat(&hat.spec, &hat_of(&hat)).expect("a hat that was weighed");
        assert_eq!(page.text("#hat-means"), weighs(&hat));

        page.click("#keep-use");
        hat.spec.yarn_use.kept = Some(rate.keep());
        page.shows(&hat);
        page.until("the use that is kept", "!!document.getElementById('kept-use')");
        assert!(!page.has("#keep-use"), "it is kept once");
        page.fill("hat-name", "First cap");
        page.is_saved();

        // The next hat of the same yarn, after a reload.
        page.click("#open-shelf");
        page.click("#new-baby");
        page.fill("hat-name", "Second cap");
        page.is_saved();
        page.reload();
        page.click("#stitch-yarn > summary");
        page.until_is("nothing of another yarn", "document.getElementById('reuse').textContent", &json!(""));
        page.fill("yarn-name-0", "Club worsted");
        page.until("the use that is known", "!!document.querySelector('#reuse button')");
        assert!(page.text("#reuse").contains("First cap"), "{}", page.text("#reuse"));
        let before = page.text("#answer-yarn");
        page.click("#reuse button");
        page.until("the use to be taken", "!!document.getElementById('drop-use')");
        assert_ne!(page.text("#answer-yarn"), before, "it changes the metres");
        page.is_saved();
        let kept = page.kept_hats().into_iter().find(|p| p.name == "Second cap").expect("the second cap");
        assert_eq!(kept.spec.yarn_use.kept, Some(rate.keep()));
        page.shows(&kept);

        page.click("#drop-use");
        page.until_is("the metres of before", "document.getElementById('answer-yarn').textContent", &json!(before));
    });
}

/// What a finished hat's weight makes of its stitches, or why it makes nothing.
fn weighs(hat: &Project) -> String {
    let names: Vec<&str> = hat.colours.iter().map(|c| &*c.name).collect();
    say::hat_weight_sentence(&hat.spec, &hat_of(hat), &names, Units::Centimetres).expect("a hat that was weighed")
}

#[test]
fn a_weight_that_no_hat_has_is_told() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = with_grams(page);
        page.fill("hat-grams", "4000");
        hat.spec.yarn_use.hat = Some(Mass::from_grams(4_000.0));
        page.shows(&hat);
        assert_eq!(page.text("#hat-means"), weighs(&hat));
        assert!(!page.has("#keep-use"));
        page.fill("hat-grams", "72");
        page.fill("ball-grams-1", "");
        hat.spec.yarn_use.hat = Some(Mass::from_grams(72.0));
        hat.spec.balls[1].grams = None;
        page.shows(&hat);
        assert_eq!(page.text("#hat-means"), weighs(&hat));
        assert!(weighs(&hat).contains("missing for Weld"), "{}", weighs(&hat));
        page.fill("hat-grams", "");
        hat.spec.yarn_use.hat = None;
        page.shows(&hat);
    });
}

/// The table under the picture against the planner's own parts.
#[test]
fn the_breakdown_is_the_sum_of_its_parts() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.choose("style", 5);
        page.fill("band-height", "5");
        page.click("#swatch-kept");
        page.click("#breakdown > summary");
        page.is_saved();
        let hat = page.kept_hats().remove(0);
        page.shows(&hat);
        let plan = hat_of(&hat);
        let mut wanted: Vec<(Part, Colour, u64, i64)> = Vec::new();
        for part in &plan.yarn_parts {
            match wanted.iter_mut().find(|(p, c, ..)| (*p, *c) == (part.part, part.colour)) {
                Some((.., stitches, length)) => {
                    *stitches += part.stitches;
                    *length += part.length.millimetres();
                }
                None => wanted.push((part.part, part.colour, part.stitches, part.length.millimetres())),
            }
        }
        assert!(
            [Part::Flaps, Part::Band, Part::Crown, Part::Topper, Part::Swatch, Part::Ends]
                .iter()
                .all(|p| wanted.iter().any(|w| w.0 == *p))
        );
        let rows = page.js("return [...document.querySelectorAll('#breakdown tr')].filter(row => row.querySelector('td')).map(row => {
               const of = row.querySelector('.of > span').textContent, cells = [...row.querySelectorAll('td')].map(td => td.textContent);
               return [of[0], ...cells];
             })");
        let tenths = |mm: i64| figures::yarn_fine(YarnLength::from_metres(mm as f64 / 1000.0), Units::Centimetres);
        let letter = |colour: Colour| char::from(b'A' + colour.0).to_string();
        let mut lines: Vec<[String; 3]> = wanted
            .iter()
            .map(|(part, colour, stitches, length)| {
                let count = if part.is_worked() { stitches.to_string() } else { "–".to_owned() };
                [letter(*colour), count, tenths(*length)]
            })
            .collect();
        for need in plan.yarn.iter().filter(|need| need.length > YarnLength::default()) {
            let stitches: u64 = wanted.iter().filter(|w| w.1 == need.colour).map(|w| w.2).sum();
            lines.push([letter(need.colour), stitches.to_string(), tenths(need.length.millimetres())]);
        }
        assert_eq!(rows, json!(lines));
        assert!(page.has("#breakdown svg"), "a picture shows the same");
    });
}

/// What is bought over the estimate: by chance, or by share; each comes back as it was.
#[test]
fn extra_is_a_chance_or_a_share() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();
        page.fill("chance", "99.5");
        hat.spec.extra = Extra::Chance(Ratio::from_ticks(9_950));
        page.shows(&hat);
        page.choose("extra", 1);
        page.fill("margin", "12");
        hat.spec.extra = Extra::Share(Ratio::from_ticks(1_200));
        page.shows(&hat);
        let means = page.text("#extra-means");
        let least = hat_of(&hat).yarn.iter().map(|need| hatwright_sizing::chance_of(need, need.safe)).min().expect("a colour");
        assert!(means.starts_with(&say::margin_sentence(hat.spec.extra, &hat_of(&hat))), "{means}");
        assert!(means.ends_with(&format!("that is {}.", say::chance_full(least))), "{means}");
        page.choose("extra", 0);
        hat.spec.extra = Extra::Chance(Ratio::from_ticks(9_950));
        page.shows(&hat);
        page.choose("extra", 1);
        hat.spec.extra = Extra::Share(Ratio::from_ticks(1_200));
        page.shows(&hat);
        for (group, id, typed) in [(1, "margin", "200"), (0, "chance", "100"), (0, "chance", "20")] {
            page.choose("extra", group);
            page.paste(id, typed);
            assert_ne!(page.says(id), "", "{typed} in {id}");
        }
    });
}

#[test]
fn balls_that_are_owned_are_not_bought() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();
        let needed = hat_of(&hat).yarn[0].balls;
        assert!(needed > 0);
        page.fill("balls-owned", &needed.to_string());
        hat.spec.balls[0].owned = Count::whole(needed as i32);
        page.shows(&hat);
        assert_eq!(page.text("#yarn-rows .balls"), "0 balls");
    });
}

/// A tassel is wound, and a colour that goes takes its places with it.
#[test]
fn a_colour_that_is_removed_leaves_nothing_behind() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = with_grams(page);
        page.choose("pom-pom-way", 2);
        page.select("pom-pom-colour", "1");
        page.click("#use-weighed");
        page.select("weighed-colour", "1");
        page.fill("weighed-stitches", "180");
        page.fill("weighed-grams", "10");
        hat.spec.topper = Some(Topper::usual(TopperKind::Tassel).coloured(Colour(1)));
        let weighed =
            WeighedSwatch { colour: Colour(1), band: false, stitches: Stitches::new(180), grams: Mass::from_grams(10.0) };
        hat.spec.yarn_use.weighed = Some(weighed);
        page.shows(&hat);
        let wraps = hat_of(&hat).topper.expect("a tassel").wraps;
        assert!(page.text("#winding").starts_with(&format!("Wind {wraps} times around a form 10.0 cm long")));

        page.press("Remove colour A");
        hat.colours.remove(0);
        hat.spec.balls.remove(0);
        hat.spec.topper = hat.spec.topper.map(|topper| topper.coloured(Colour(0)));
        hat.spec.yarn_use.weighed = Some(WeighedSwatch { colour: Colour(0), ..weighed });
        hat.spec.band.stripes.iter_mut().for_each(|stripe| stripe.colour = Colour(0));
        hat.spec.body_stripes.iter_mut().for_each(|stripe| stripe.colour = Colour(0));
        page.shows(&hat);
    });
}
