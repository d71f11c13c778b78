//! "I have only this much": what is owned in any unit, the offers, and the way back.

use hatwright_pattern::figures::Units;
use hatwright_pattern::say;
use hatwright_project::Project;
use hatwright_sizing::{Count, Offer, only_this_much};
use serde_json::{Value, json};

use super::{cap, hat_of, kept, shop_for, shop_of, turn};
use crate::page::{Page, Screen};
use crate::stage::on_page;

/// The offers that are shown, each by its words and numbers.
const OFFERS: &str = "document.querySelector('#offers.late') ? 'not yet' :
    [...document.querySelectorAll('#offers > [data-offer]')].map(b => [b.querySelector('b').textContent, b.querySelector('small').textContent])";

fn told(project: &Project, offer: &Offer) -> Value {
    let names: Vec<&str> = project.colours.iter().map(|c| c.name.as_str()).collect();
    json!([say::offer(offer, &hat_of(project), &names, Units::Centimetres), say::offer_numbers(offer, Units::Centimetres)])
}

/// Waits until the view offers what is found natively, and gives it.
#[track_caller]
fn offers(page: &Page, project: &Project) -> Vec<Offer> {
    let only = only_this_much(&project.spec);
    let told: Vec<Value> = only.offers.iter().map(|offer| told(project, offer)).collect();
    page.until_is("the offers", OFFERS, &json!(told));
    let verdict = page.text("#only-verdict");
    if only.enough {
        assert!(verdict.contains(&say::chance(shop_of(project).chance)), "{verdict}");
    }
    for (colour, lack) in &only.short {
        let lack = hatwright_pattern::figures::yarn(*lack, Units::Centimetres);
        let name = &project.colours[usize::from(colour.0)].name;
        assert!(verdict.contains(&format!("{lack} of {name}")), "{verdict}");
    }
    only.offers
}

fn own(project: &mut Project, i: usize, hundredths: i32) {
    project.spec.balls[i].owned = Count::from_ticks(hundredths);
}

/// 80 g of balls of 50 g are 1.6 balls, 50 m of balls of 80 m are 0.62.
#[test]
fn what_is_owned_is_told_in_any_unit() {
    on_page(Screen::PHONE, |page| {
        let mut cap = cap();
        shop_for(page, &cap, 1);
        offers(page, &cap);
        assert_eq!(page.value("have-1"), "1.5");
        let mut seen = 0;
        for (i, typed, hundredths) in [
            (0, "80 g", 160),
            (1, "50 m", 62),
            (1, "0", 0),
            (0, "120 m", 150),
            (0, "2 balls", 200),
            (1, "1,5", 150),
            (1, "87.5 yd", 100),
            (1, "1 oz", 56),
        ] {
            page.fill(&format!("have-{i}"), typed);
            own(&mut cap, i, hundredths);
            seen += offers(page, &cap).len();
            assert_eq!(page.value(&format!("have-{i}")), typed, "what was typed stays as it was typed");
            assert_eq!(page.text(&format!("#have-{i}-says")), "");
        }
        assert!(seen > 4, "some of it is enough for some hats");
        assert_eq!(kept(page).spec.balls, cap.spec.balls);
        // A ball more at the stepper is another amount than what was typed.
        turn(page, 0);
        page.click("#owned-more-1");
        turn(page, 1);
        assert_eq!((page.value("have-0"), page.value("have-1")), ("2 balls".to_owned(), "1.56".to_owned()));
    });
}

#[test]
fn an_offer_is_taken_and_taken_back() {
    on_page(Screen::PHONE, |page| {
        let mut cap = cap();
        shop_for(page, &cap, 1);
        page.fill("have-0", "80 g");
        own(&mut cap, 0, 160);
        page.fill("have-1", "28 m");
        own(&mut cap, 1, 35);
        let offers = offers(page, &cap);
        assert!(offers.len() > 1, "the caller's yarn is too little, and there are ways out");
        assert!(!page.has("#undo-offer"));
        for (i, offer) in offers.iter().enumerate() {
            page.click(&format!("[data-offer='{i}']"));
            page.until_is("the keyboard", "document.activeElement.id", &json!("undo-offer"));
            let said = page.text("#shop-said");
            assert!(said.starts_with(told(&cap, offer)[0].as_str().expect("a text")), "{said}");
            assert_eq!(kept(page).spec, offer.spec, "{:?}", offer.kind);
            page.until("what there is to do for that hat", "!document.querySelector('#offers.late')");
            page.click("#undo-offer");
            page.until("the way back to be gone", "!document.getElementById('undo-offer')");
            assert_eq!(kept(page).spec, cap.spec, "exactly what was");
            self::offers(page, &cap);
        }
        // After another change there is no way back that would undo that, too.
        page.click("[data-offer='0']");
        page.until("the way back", "!!document.getElementById('undo-offer')");
        page.fill("have-0", "1");
        page.until("the way back to be gone", "!document.getElementById('undo-offer')");
    });
}

#[test]
fn what_is_no_amount_is_told_and_stays() {
    on_page(Screen::PHONE, |page| {
        let cap = cap();
        shop_for(page, &cap, 1);
        offers(page, &cap);
        for typed in
            ["", "x", "-1", "-80 g", "12 cm", "1.2.3", "1000000000000", "99999", "80 g 50", "<b>1</b>", "½½", "🧶", "NaN", "1e3"]
        {
            for id in ["have-0", "have-1"] {
                page.paste(id, "0.5");
                if typed.is_empty() {
                    page.fill(id, "");
                } else {
                    page.paste(id, typed);
                }
                assert_ne!(page.text(&format!("#{id}-says")), "", "{typed:?} in {id}");
                assert_eq!(page.value(id), typed);
                let invalid = page.js(&format!("return document.getElementById('{id}').ariaInvalid"));
                assert_eq!(invalid, json!("true"), "{typed:?}");
            }
        }
        // The last amounts that could be read are reckoned with.
        let mut half = cap.clone();
        own(&mut half, 0, 50);
        own(&mut half, 1, 50);
        offers(page, &half);
        turn(page, 0);
        turn(page, 1);
        assert_eq!(page.value("have-0"), "1e3", "another view does not tidy it away");
        page.paste("have-0", "1");
        assert_eq!(page.text("#have-0-says"), "");
    });
}

/// Grams of a ball that was never weighed tell no length.
#[test]
fn grams_need_a_ball_of_grams() {
    on_page(Screen::PHONE, |page| {
        let mut cap = cap();
        cap.spec.balls[0].grams = None;
        shop_for(page, &cap, 1);
        page.paste("have-0", "80 g");
        assert!(page.text("#have-0-says").contains("a weight tells no length"), "{}", page.text("#have-0-says"));
        offers(page, &cap);
    });
}
