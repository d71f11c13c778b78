//! Another yarn in the place of this one.

use hatwright_pattern::figures::Units;
use hatwright_pattern::say;
use hatwright_project::Project;
use hatwright_sizing::{Count, Instead, Length, Mass, Swap, Swatch, Verdict, YarnWeight, swap};
use serde_json::json;

use super::{cap, hat_of, kept, shop_for};
use crate::page::{Page, Screen};
use crate::stage::on_page;

const CM: Units = Units::Centimetres;

/// The hat on the page with another yarn beside it, begun from its own.
fn begun(page: &Page) -> Project {
    let mut cap = cap();
    shop_for(page, &cap, 2);
    assert!(!page.has("#swap"), "nothing is compared yet");
    page.click("#instead-begin");
    page.until_is("the keyboard", "document.activeElement.id", &json!("instead-name"));
    let ball = cap.spec.balls[0];
    cap.spec.instead = Some(Instead { yarn: ball.yarn, grams: ball.grams, weight: ball.weight, swatch: None });
    cap
}

fn instead(project: &mut Project) -> &mut Instead {
    project.spec.instead.as_mut().expect("another yarn")
}

/// Waits until the comparison is what is found natively, and gives it.
#[track_caller]
fn compares(page: &Page, project: &Project) -> Swap {
    let swap = swap(&project.spec).expect("another yarn");
    let rows: Vec<_> = say::swap_rows(&hat_of(project), &project.spec, &swap, CM)
        .into_iter()
        .map(|row| json!([row.term, row.now, row.then.unwrap_or_else(|| "–".to_owned())]))
        .collect();
    let shown = "[...document.querySelectorAll('#swap tbody tr')].map(row => [...row.children].map(cell => cell.textContent))";
    page.until_is("the comparison", shown, &json!(rows));
    let verdict =
        "[document.getElementById('swap-verdict').textContent, document.getElementById('swap-why').textContent].join(' ').trim()";
    page.until_is("the verdict", verdict, &json!(say::swap(&swap, CM)));
    swap
}

#[test]
fn the_verdict_follows_what_is_known() {
    on_page(Screen::PHONE, |page| {
        let mut cap = begun(page);
        assert_eq!(compares(page, &cap).verdict, Verdict::SwatchFirst);
        page.fill("instead-yarn", "65");
        instead(&mut cap).yarn = Count::whole(65);
        compares(page, &cap);
        page.select("instead-weight", "5");
        instead(&mut cap).weight = YarnWeight::new(5).ok();
        compares(page, &cap);
        page.fill("instead-grams", "");
        instead(&mut cap).grams = None;
        compares(page, &cap);
        assert_eq!(page.says("instead-grams"), "", "that it is not known is no mistake");
        page.fill("instead-grams", "1.75 oz");
        instead(&mut cap).grams = Some(Mass::from_ticks(4_961));
        compares(page, &cap);

        page.click("#instead-swatch");
        let ten = Length::from_cm(10.0);
        let mut of = |page: &Page, stitches: i32, rounds: i32| {
            page.fill("instead-stitches", &stitches.to_string());
            page.fill("instead-rounds", &rounds.to_string());
            let (stitches, rounds) = (Count::whole(stitches), Count::whole(rounds));
            instead(&mut cap).swatch = Some(Swatch::Counted { stitches, width: ten, rounds, height: ten });
            compares(page, &cap).verdict
        };
        assert_eq!(of(page, 12, 15), Verdict::SamePattern);
        assert_eq!(of(page, 14, 17), Verdict::OtherCounts);
        page.fill("instead-yarn", "400");
        instead(&mut cap).yarn = Count::whole(400);
        assert_eq!(compares(page, &cap).verdict, Verdict::WillNot);
        assert_eq!(kept(page).spec, cap.spec, "it stays in the document");
    });
}

#[test]
fn another_yarn_is_taken_and_taken_back() {
    on_page(Screen::PHONE, |page| {
        let mut cap = begun(page);
        page.fill("instead-name", "Harbour aran");
        page.fill("instead-yarn", "65");
        instead(&mut cap).yarn = Count::whole(65);
        let swap = compares(page, &cap);
        page.click("#take-instead");
        page.until_is("the keyboard", "document.activeElement.id", &json!("undo-offer"));
        assert!(page.text("#shop-said").starts_with("Harbour aran"), "{}", page.text("#shop-said"));
        let taken = kept(page);
        assert_eq!(taken.spec, swap.spec);
        let named: Vec<_> = taken.colours.iter().map(|c| (&*c.name, &*c.yarn, &*c.lot)).collect();
        assert_eq!(named, [("Indigo", "Harbour aran", ""), ("Weld", "Harbour aran", "")]);

        page.click("#undo-offer");
        page.until("the comparison to be back", "!!document.getElementById('swap')");
        let back = kept(page);
        assert_eq!((&back.spec, &back.colours), (&cap.spec, &cap.colours), "exactly what was");
        compares(page, &cap);

        page.click("#drop-instead");
        page.until_is("the keyboard", "document.activeElement.id", &json!("instead-begin"));
        cap.spec.instead = None;
        assert_eq!(kept(page).spec, cap.spec);
    });
}

#[test]
fn what_cannot_be_a_yarn_is_told_and_stays() {
    on_page(Screen::PHONE, |page| {
        let cap = begun(page);
        page.click("#instead-swatch");
        let before = compares_with_swatch(page, cap);
        for id in ["instead-yarn", "instead-grams", "instead-stitches", "instead-width", "instead-rounds", "instead-height"] {
            for typed in ["x", "0", "-3", "1.2.3", "999999", "12 kg of it", "<i>9</i>"] {
                page.paste(id, typed);
                assert_ne!(page.says(id), "", "{typed:?} in {id}");
                assert_eq!(page.value(id), typed);
            }
            assert_eq!(page.text("#swap"), before, "{id}: the last numbers that could be read are compared");
        }
        // What is wrong goes with its fields.
        page.click("#instead-swatch");
        page.click("#drop-instead");
        page.until("nothing to stand in the way", "!document.querySelector('#shop > .old')");
    });
}

fn compares_with_swatch(page: &Page, mut cap: Project) -> String {
    cap.spec.instead.as_mut().expect("another yarn").swatch = Some(cap.spec.swatch);
    compares(page, &cap);
    page.text("#swap")
}
