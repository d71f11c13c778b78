//! Heads by percentile and by dates, what is measured besides, and the hat that leaves room to grow.

use hatwright_pattern::figures;
use hatwright_sizing::{Build, Day, Head, Length, Ratio, Sex, head_size, room_to_grow};
use serde_json::json;

use crate::expected::example;
use crate::page::{Page, Screen};
use crate::stage::on_page;

/// Picks a day, as a person's date field gives it.
fn pick_day(page: &Page, id: &str, day: &str) {
    let set = "const field = document.getElementById(arguments[0]);
               field.value = arguments[1]; field.dispatchEvent(new Event('change', { bubbles: true }))";
    page.js_with(set, vec![json!(id), json!(day)]);
}

fn day(text: &str) -> Day {
    figures::day(text).expect("a day")
}

#[test]
fn a_head_of_any_percentile_makes_a_hat() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.choose("build", 3);
        page.fill("percentile", "75");
        let mut hat = example();
        let Head::ByAge { age, sex, .. } = hat.spec.head else { panic!("the example's head is known by age") };
        hat.spec.head = Head::ByAge { age, sex, build: Build::Percentile(Ratio::of(0.75)) };
        page.shows(&hat);

        page.fill("percentile", "100");
        assert!(page.says("percentile").contains("1 to 99"), "{}", page.says("percentile"));
        page.choose("build", 2);
        page.until("the field to go", "!document.getElementById('percentile')");
        page.choose("build", 3);
        page.until_is("the percentile that was", "document.getElementById('percentile')?.value", &json!("75"));
        page.shows(&hat);
    });
}

#[test]
fn dates_make_an_age_and_stay_on_the_device() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.choose("head-way", 2);
        page.until("the days", "document.getElementById('born')?.type === 'date'");
        pick_day(page, "born", "2026-12-20");
        pick_day(page, "worn", "2027-06-20");
        let mut hat = example();
        let (born, worn) = (day("2026-12-20"), day("2027-06-20"));
        hat.spec.head = Head::ByDates { born, worn, sex: Sex::Unknown, build: Build::Average };
        page.fill("band-height", "8");
        hat.spec.band.height = hatwright_sizing::Stitches::new(8);
        page.shows(&hat);
        let told = page.text("#days-tell");
        assert!(told.contains("6 months") && told.contains("measure the head"), "{told}");

        // A day before the birth is refused beside the days, and leaves the hat in sight.
        pick_day(page, "worn", "2026-11-01");
        page.until("the sentence", "document.getElementById('days-say').textContent");
        assert_eq!(page.js("return document.getElementById('born').getAttribute('aria-invalid')"), json!("true"));
        assert!(page.text("#stuck-on").contains("day"), "{}", page.text("#stuck-on"));
        pick_day(page, "worn", "2027-06-20");
        page.shows(&hat);

        // Other ways of knowing keep their answers.
        page.choose("head-way", 1);
        page.choose("head-way", 2);
        page.until_is("the day of birth", "document.getElementById('born')?.value", &json!("2026-12-20"));
        page.is_saved();
        page.reload();
        page.shows(&hat);
        assert_eq!(page.value("worn"), "2027-06-20");

        // A link carries the girth and no day.
        page.click("#copy-link");
        page.until("the link", "document.getElementById('share-link').value.includes('#')");
        let link = page.value("share-link");
        let linked = hatwright_project::from_link(link.split_once('#').expect("a fragment").1).expect("a whole link");
        assert_eq!(linked.spec.head, Head::Measured(head_size(&hat.spec.head).girth));
    });
}

#[test]
fn what_lies_over_the_head_may_be_left_out_and_given() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();
        page.fill("over-top", "32");
        page.fill("lining", "0.5");
        page.fill("hook", "5.5");
        page.fill("strands", "2");
        hat.spec.over_top = Some(Length::from_cm(32.0));
        hat.spec.lining = Length::from_cm(0.5);
        hat.spec.hook = Some(Length::from_ticks(550));
        hat.spec.strands = 2;
        page.shows(&hat);
        page.fill("over-top", "x");
        assert!(page.says("over-top").contains("not a number"), "{}", page.says("over-top"));
        page.fill("over-top", "");
        page.fill("hook", "");
        (hat.spec.over_top, hat.spec.hook) = (None, None);
        page.shows(&hat);
        assert_eq!(page.says("over-top"), "", "nothing is an answer, too");
    });
}

#[test]
fn a_hat_with_room_to_grow_is_offered() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();
        // In stripes that close on fours the next count is too loose; a band of one colour has one between.
        assert_eq!(room_to_grow(&hat.spec), None);
        page.press("Remove stripe 2 of the band");
        hat.spec.band.stripes.truncate(1);
        let larger = room_to_grow(&hat.spec).expect("a larger cap for a child of four");
        page.until("the offer", "document.getElementById('growing')?.textContent");
        page.click("#take-growing");
        hat.spec.chosen = Some(larger.chosen);
        page.shows(&hat);
        page.until("the offer to go", "!document.getElementById('growing')");
        page.click("#free-count");
        hat.spec.chosen = None;
        page.shows(&hat);
        // A measured head has no age to grow from.
        page.choose("head-way", 1);
        page.until("the offer to go", "!document.getElementById('growing')");
    });
}

/// The picture of whom it fits has a table for those who do not see it.
#[test]
fn whom_it_fits_is_a_picture_and_a_table() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let hat = hatwright_sizing::plan(&example().spec).expect("the example");
        let rows =
            page.js("return [...document.querySelectorAll('#fits tbody tr')].map(r => [...r.children].map(c => c.textContent))");
        let expected: Vec<_> =
            hatwright_sizing::fit_table(hat.fit.least, hat.fit.most).iter().map(hatwright_pattern::say::fit_row).collect();
        assert_eq!(rows, json!(expected));
        assert_eq!(page.js("return document.querySelectorAll('#fits svg[role=img]').length"), json!(1));
        assert!(page.text("#labels").contains("US 6 1/4"), "{}", page.text("#labels"));
    });
}
