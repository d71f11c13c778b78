//! Several hats, one list.

use std::time::{Duration, Instant};

use hatwright_pattern::figures::{self, Units};
use hatwright_pattern::say::{self, ListedYarn};
use hatwright_project::{Copies, Project, ProjectId, SAMPLES, ShoppingList, samples, shopping_list, storage, to_json};
use hatwright_sizing::{Length, Stitches, plan};
use serde_json::{Value, json};

use super::{copied, enter, turn};
use crate::page::{Page, Screen};
use crate::stage::on_page;

/// Puts hats on the shelf of a page that is open, and opens it anew with the first of them on the bench.
fn shelve(page: &Page, hats: &[Project]) {
    page.open();
    for hat in hats {
        let kept = json!([storage::key(&hat.id), to_json(hat)]);
        page.js_with("localStorage.setItem(...arguments[0])", vec![kept]);
    }
    let open = json!({ "open": hats[0].id.as_str() }).to_string();
    page.js_with("localStorage.setItem(...arguments[0])", vec![json!([storage::SETTINGS_KEY, open])]);
    page.reload();
    assert_eq!(page.value("hat-name"), hats[0].name);
}

/// The club's hats as they are kept, in the order of their names.
fn club() -> Vec<Project> {
    let ids = std::array::from_fn::<_, SAMPLES, _>(|i| ProjectId::from_bits(i as u64 + 1));
    let mut hats: Vec<Project> = samples(ids).into_iter().map(|hat| Project { revision: 1, changed_ms: 5, ..hat }).collect();
    hats.sort_by(|a, b| a.name.cmp(&b.name));
    hats
}

fn tick(page: &Page, hat: &Project) {
    page.click(&format!("#several input[data-id='{}']", hat.id));
}

fn list_of(picked: &[(&Project, u32)]) -> ShoppingList {
    shopping_list(&picked.iter().map(|(hat, copies)| Copies { project: (*hat).clone(), copies: *copies }).collect::<Vec<_>>())
}

/// Waits until the page shows the list of some hats.
#[track_caller]
fn lists(page: &Page, picked: &[(&Project, u32)]) -> ShoppingList {
    let list = list_of(picked);
    let lines: Vec<Value> = list
        .lines
        .iter()
        .map(|line| {
            let price = line.buy.price.filter(|_| line.buy.balls > 0).map(figures::money).unwrap_or_default();
            json!([line.colour, line.yarn, hatwright_words::count::balls(line.buy.balls), price])
        })
        .collect();
    let shown = "[...document.querySelectorAll('#list li')].map(li => ['.name', '.who small', '.balls', '.price'].map(css => li.querySelector(css)?.textContent ?? ''))";
    page.until_is("the list", shown, &json!(lines));
    let text = page.text("#list");
    for line in &list.lines {
        assert!(text.contains(&format!("takes {}", figures::yarn(line.buy.need.length, Units::Centimetres))), "{text}");
        for (name, copies, length) in &line.hats {
            let times = if *copies == 1 { String::new() } else { format!(" × {copies}") };
            let hat = format!("{name}{times} ({})", figures::yarn(*length, Units::Centimetres));
            assert!(text.contains(&hat), "{hat} in {text}");
        }
    }
    for (_, name) in &list.left_out {
        assert!(text.contains(name), "{name} in {text}");
    }
    list
}

#[test]
fn one_list_for_several_hats() {
    on_page(Screen::PHONE, |page| {
        let mut hats = club();
        // A band that is taller than its hat cannot be made.
        hats[2].spec.band.height = Stitches::new(60);
        hats[2].spec.band.fold = Length::ZERO;
        assert!(plan(&hats[2].spec).is_err(), "{}", hats[2].name);
        shelve(page, &hats);
        enter(page, 3);
        assert!(!page.has("#list li"), "nothing is ticked on a first visit");
        tick(page, &hats[0]);
        lists(page, &[(&hats[0], 1)]);
        tick(page, &hats[3]);
        tick(page, &hats[2]);
        page.fill(&format!("copies-{}", hats[3].id), "3");
        let picked = [(&hats[0], 1), (&hats[2], 1), (&hats[3], 3)];
        let list = lists(page, &picked);
        assert_eq!(list.left_out.len(), 1);

        let named: Vec<(&str, u32)> = picked.iter().map(|(hat, copies)| (hat.name.as_str(), *copies)).collect();
        let lines: Vec<ListedYarn<'_>> = list
            .lines
            .iter()
            .map(|line| ListedYarn {
                colour: &line.colour,
                yarn: &line.yarn,
                lots: line.lots.iter().map(String::as_str).collect(),
                ball: line.ball,
                buy: line.buy,
                hats: line.hats.iter().map(|(name, copies, length)| (name.as_str(), *copies, *length)).collect(),
            })
            .collect();
        let text = say::list_text(&named, &lines, &[&hats[2].name], list.chance, list.price, Units::Centimetres);
        assert_eq!(copied(page, "#list-copy"), text);

        // What was ticked is remembered.
        page.reload();
        enter(page, 3);
        lists(page, &picked);
        assert_eq!(page.value(&format!("copies-{}", hats[3].id)), "3");
        tick(page, &hats[2]);
        lists(page, &[(&hats[0], 1), (&hats[3], 3)]);
    });
}

/// What was changed a moment ago is on the list.
#[test]
fn the_hat_on_the_bench_is_listed_as_it_is() {
    on_page(Screen::PHONE, |page| {
        let mut hats = club();
        shelve(page, &hats);
        enter(page, 0);
        page.click("#owned-more-0");
        hats[0].spec.balls[0].owned = hatwright_sizing::Count::whole(1);
        turn(page, 3);
        tick(page, &hats[0]);
        // Which hat was changed last decides how names are spelled, not what there is to buy.
        let list = lists(page, &[(&hats[0], 1)]);
        assert!(list.lines.iter().any(|line| line.ball.owned == hatwright_sizing::Count::whole(1)));
        assert!(page.text("#list").contains("1 owned"), "{}", page.text("#list"));
        page.is_saved();
    });
}

#[test]
fn copies_are_whole_numbers() {
    on_page(Screen::PHONE, |page| {
        let hats = club();
        shelve(page, &hats);
        enter(page, 3);
        tick(page, &hats[0]);
        let field = format!("copies-{}", hats[0].id);
        page.fill(&field, "99");
        lists(page, &[(&hats[0], 99)]);
        page.fill(&field, "4");
        for typed in ["0", "100", "-1", "1.5", "x", "<b>", "1e2"] {
            page.paste(&field, typed);
            assert_ne!(page.says(&field), "", "{typed:?}");
            assert_eq!(page.value(&field), typed);
            lists(page, &[(&hats[0], 4)]);
        }
        page.fill(&field, "");
        assert_ne!(page.says(&field), "");
        page.fill(&field, "2");
        assert_eq!(page.says(&field), "");
        lists(page, &[(&hats[0], 2)]);
    });
}

/// Names that somebody else chose are text.
#[test]
fn names_on_the_list_are_text() {
    on_page(Screen::PHONE, |page| {
        let mut hats = club();
        hats[0].name = "<img src=x onerror=\"document.title='broken in'\">".to_owned();
        hats[0].colours[0].name = "<b>in&digo</b>".to_owned();
        hats[0].colours[0].yarn = "<i>wool</i>".to_owned();
        hats[0].colours[0].lot = "<u>7</u>".to_owned();
        shelve(page, &hats);
        enter(page, 0);
        assert!(page.text("#shop-lines").contains("<b>in&digo</b>") && page.text("#shop-lines").contains("lot <u>7</u>"));
        turn(page, 3);
        tick(page, &hats[0]);
        lists(page, &[(&hats[0], 1)]);
        page.js("window.print = () => {}");
        page.click("#list-print");
        page.until("the list on paper", "!!document.querySelector('#shop-paper li')");
        assert!(page.text("#shop-paper").contains("<i>wool</i>"));
        assert_eq!(page.js("return document.querySelectorAll('#shop :is(img, i, u)').length"), json!(0));
        page.js("dispatchEvent(new Event('afterprint'))");
    });
}

#[test]
fn forty_hats_are_quick() {
    on_page(Screen::PHONE, |page| {
        let one = club();
        let hats: Vec<Project> = (0..40_u64)
            .map(|i| Project {
                id: ProjectId::from_bits(100 + i),
                name: format!("Cap {i:02}"),
                ..one[i as usize % one.len()].clone()
            })
            .collect();
        shelve(page, &hats);
        enter(page, 3);
        page.js("document.querySelectorAll('#several input[type=checkbox]').forEach(box => box.click())");
        let picked: Vec<(&Project, u32)> = hats.iter().map(|hat| (hat, 1)).collect();
        lists(page, &picked);
        let begun = Instant::now();
        page.paste(&format!("copies-{}", hats[7].id), "5");
        let mut more = picked.clone();
        more[7].1 = 5;
        lists(page, &more);
        // Planned once, all forty are not planned again for one more copy of one.
        assert!(begun.elapsed() < Duration::from_secs(3), "{:?}", begun.elapsed());
    });
}
