//! From a head and a swatch to a hat: every number that the page shows, against the planner run natively.

use hatwright_project::{ColourName, Project, Terms, Units, dyes};
use hatwright_sizing::{
    Age, BandSwatch, Build, Chosen, Closing, Colour, Count, Coverage, Extra, Head, Layout, Length, Ratio, RoundStripe, Rounds,
    RowStripe, Rows, Sex, Stitches, Stretch, Swatch, Topper, TopperKind, YarnWeight,
};
use serde_json::json;

use crate::expected::{example, pattern};
use crate::page::Screen;
use crate::stage::on_page;

fn age(hat: &mut Project, age: Age, sex: Sex, build: Build) {
    hat.spec.head = Head::ByAge { age, sex, build };
}

#[test]
fn the_first_visit_shows_a_finished_hat() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.shows(&example());
        assert_eq!(page.text("#answer-stitches"), "56", "a cap for four years at 12 stitches to 10 cm");
        assert_eq!(page.text("#standing"), "Kept once you change something");
        assert_eq!(page.kept(), [], "nothing is kept before anything is changed");
    });
}

#[test]
fn a_measured_head_and_a_swatch_make_a_hat() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();

        page.choose("head-way", 1);
        page.fill("head-girth", "52,5");
        hat.spec.head = Head::Measured(Length::from_ticks(52_500));
        page.shows(&hat);
        assert_eq!(page.value("head-girth"), "52.5", "a field that was left shows the number as it was taken");

        page.fill("swatch-stitches", "14");
        page.fill("swatch-rounds", "16");
        let ten = Length::from_ticks(10_000);
        hat.spec.swatch = Swatch::Counted { stitches: Count::whole(14), width: ten, rounds: Count::whole(16), height: ten };
        page.shows(&hat);

        page.fill("ease", "5.5");
        page.fill("band-height", "12 st");
        page.fill("fold", "40 mm");
        page.fill("chance", "90 %");
        hat.spec.ease = Ratio::from_ticks(550);
        hat.spec.band.height = Stitches::new(12);
        hat.spec.band.fold = Length::from_ticks(4_000);
        hat.spec.extra = Extra::Chance(Ratio::from_ticks(9_000));
        page.shows(&hat);

        page.choose("extra", 1);
        page.fill("margin", "10 %");
        hat.spec.extra = Extra::Share(Ratio::from_ticks(1_000));
        page.shows(&hat);
        page.choose("extra", 0);
        hat.spec.extra = Extra::Chance(Ratio::from_ticks(9_000));
        page.shows(&hat);

        page.choose("coverage", 1);
        hat.spec.coverage = Coverage::EarLobes;
        page.shows(&hat);
    });
}

/// The counts of the example's swatch for heads known by age alone.
#[test]
fn an_age_makes_a_hat() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();

        page.select("age-unit", "months");
        page.fill("age-months", "30");
        age(&mut hat, Age::Months(Count::whole(30)), Sex::Unknown, Build::Average);
        page.shows(&hat);

        page.select("age-unit", "weeks");
        page.fill("age-weeks", "0");
        age(&mut hat, Age::Weeks(Count::whole(0)), Sex::Unknown, Build::Average);
        // A newborn's hat is shallow: the example's band would leave no crown.
        page.fill("band-height", "8");
        hat.spec.band.height = Stitches::new(8);
        page.shows(&hat);

        page.choose("sex", 1);
        page.choose("build", 0);
        age(&mut hat, Age::Weeks(Count::whole(0)), Sex::Female, Build::Small);
        page.shows(&hat);

        page.select("age-unit", "years");
        page.fill("age-years", "40");
        page.choose("sex", 2);
        page.choose("build", 2);
        age(&mut hat, Age::Years(Count::whole(40)), Sex::Male, Build::Large);
        page.shows(&hat);

        page.fill("age-years", "4");
        page.choose("sex", 0);
        page.choose("build", 1);
        page.fill("band-height", "10");
        page.shows(&example());
        assert_eq!(page.text("#answer-stitches"), "56");
    });
}

#[test]
fn the_first_and_the_last_age_are_one_click() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();
        page.click("#adult");
        age(&mut hat, Age::Years(Count::whole(18)), Sex::Unknown, Build::Average);
        page.shows(&hat);
        assert_eq!(page.value("age-years"), "18");

        page.fill("band-height", "8");
        page.click("#newborn");
        hat.spec.band.height = Stitches::new(8);
        age(&mut hat, Age::Weeks(Count::whole(0)), Sex::Unknown, Build::Average);
        page.shows(&hat);
        assert_eq!(page.value("age-weeks"), "0");
    });
}

#[test]
fn going_back_finds_the_other_answer_again() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.choose("head-way", 1);
        page.fill("head-girth", "57");
        page.choose("head-way", 0);
        page.shows(&example());
        page.choose("head-way", 1);
        let mut hat = example();
        hat.spec.head = Head::Measured(Length::from_ticks(57_000));
        page.shows(&hat);
        assert_eq!(page.value("head-girth"), "57");
    });
}

#[test]
fn colours_and_stripes_are_added_and_taken_away() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();

        page.click("#add-colour");
        let (name, hex) = dyes()[2];
        let yarn = hat.colours[1].yarn.clone();
        hat.colours.push(ColourName { name: name.to_owned(), hex, yarn, lot: String::new() });
        hat.spec.balls.push(hat.spec.balls[1]);
        assert_eq!(hat.spec.balls[1].owned, Count::default());
        page.shows(&hat);
        page.fill("colour-name-2", "Brick red");
        page.fill("ball-yarn-2", "120");
        hat.colours[2].name = "Brick red".to_owned();
        hat.spec.balls[2].yarn = Count::whole(120);
        page.shows(&hat);

        page.click("#add-band-stripe");
        page.select("band-colour-2", "2");
        page.fill("stripe-rows-2", "4");
        hat.spec.band.stripes.push(RowStripe { colour: Colour(2), rows: Rows::new(4) });
        page.shows(&hat);

        page.click("#add-body-stripe");
        page.select("body-colour-2", "2");
        page.fill("stripe-rounds-2", "3");
        page.fill("stripe-rounds", "5");
        hat.spec.body_stripes.push(RoundStripe { colour: Colour(2), rounds: Rounds::new(3) });
        hat.spec.body_stripes[0].rounds = Rounds::new(5);
        page.shows(&hat);

        page.press("Remove stripe 2 of the band");
        hat.spec.band.stripes.remove(1);
        page.shows(&hat);

        // What was worked in a colour that is gone is worked in the first.
        page.press("Remove colour B");
        hat.colours.remove(1);
        hat.spec.balls.remove(1);
        hat.spec.band.stripes[1].colour = Colour(1);
        hat.spec.body_stripes[1].colour = Colour(0);
        hat.spec.body_stripes[2].colour = Colour(1);
        page.shows(&hat);
    });
}

#[test]
fn uk_terms_and_inches_change_words_and_figures() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();
        page.choose("terms", 1);
        hat.terms = Terms::Uk;
        page.shows(&hat);
        assert!(page.text("#pattern-text").contains("dc2tog"), "UK terms");

        page.choose("units", 1);
        hat.units = Units::Inches;
        page.shows(&hat);
        assert_eq!(page.value("swatch-width"), "3.94", "10 cm in inches");

        page.fill("swatch-width", "4");
        page.fill("swatch-height", "4\"");
        let four = Length::from_inches(4.0);
        hat.spec.swatch = Swatch::Counted { stitches: Count::whole(12), width: four, rounds: Count::whole(15), height: four };
        page.shows(&hat);
        page.choose("head-way", 1);
        page.fill("head-girth", "20 1/2");
        hat.spec.head = Head::Measured(Length::from_ticks(52_070));
        page.shows(&hat);
    });
}

#[test]
fn a_neighbouring_count_is_taken_by_one_click() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.click("[data-stitches='60']");
        let mut hat = example();
        hat.spec.chosen = Some(Chosen { rows: Rows::new(60), stitches: Stitches::new(60) });
        page.shows(&hat);
        assert_eq!(page.text("#answer-stitches"), "60");
        page.click("#free-count");
        page.shows(&example());
        assert!(!page.has("#free-count"), "nothing is left to free");
    });
}

#[test]
fn every_other_question_is_heeded() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();

        page.choose("layout", 1);
        page.fill("wedges", "6");
        hat.spec.layout = Layout::Wedges(6);
        page.shows(&hat);

        page.choose("closing", 1);
        page.fill("gather", "30");
        hat.spec.closing = Closing::Gathered(Stitches::new(30));
        page.shows(&hat);

        page.fill("pom-pom", "7");
        page.select("pom-pom-colour", "1");
        let pom_pom = Topper::usual(TopperKind::PomPom).sized(Length::from_ticks(7_000)).coloured(Colour(1));
        hat.spec.topper = Some(pom_pom);
        page.shows(&hat);
        page.fill("fullness", "150");
        let pom_pom = Topper { fullness: Ratio::from_ticks(15_000), ..pom_pom };
        hat.spec.topper = Some(pom_pom);
        page.shows(&hat);
        page.choose("pom-pom-way", 2);
        page.fill("tassel", "12");
        hat.spec.topper = Some(Topper::usual(TopperKind::Tassel).sized(Length::from_ticks(12_000)));
        page.shows(&hat);
        page.choose("pom-pom-way", 1);
        hat.spec.topper = Some(pom_pom);
        page.shows(&hat);
        page.choose("pom-pom-way", 0);
        hat.spec.topper = None;
        page.shows(&hat);

        page.choose("stretch-way", 1);
        page.fill("body-stretch", "1,2");
        page.choose("band-stretch-way", 1);
        page.fill("band-stretch", "1.4");
        hat.spec.body_stretch = Stretch::Measured(Ratio::from_ticks(12_000));
        hat.spec.band.stretch = Stretch::Measured(Ratio::from_ticks(14_000));
        page.shows(&hat);

        page.choose("band-swatch-way", 1);
        page.fill("band-swatch-stitches", "13");
        page.fill("band-swatch-rows", "14½");
        let ten = Length::from_ticks(10_000);
        let (stitches, rows) = (Count::whole(13), Count::from_ticks(1_450));
        hat.spec.band.swatch = Some(BandSwatch { stitches, width: ten, rows, length: ten });
        page.shows(&hat);

        page.choose("swatch-way", 1);
        page.select("yarn-weight", "3");
        hat.spec.swatch = Swatch::YarnWeight(YarnWeight::new(3).expect("a yarn weight"));
        page.shows(&hat);

        page.choose("sits", 2);
        hat.spec.ease = Ratio::from_ticks(500);
        page.shows(&hat);
        assert_eq!(page.value("ease"), "5");
    });
}

#[test]
fn the_fold_follows_the_band_by_one_click() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();
        // Ten stitches at 12 to 10 cm are 8.33 cm.
        for (button, ticks, field) in [("Half", 4_166, "4.17"), ("All", 8_333, "8.33"), ("None", 0, "0")] {
            page.press(button);
            hat.spec.band.fold = Length::from_ticks(ticks);
            page.shows(&hat);
            assert_eq!(page.value("fold"), field);
        }
    });
}

#[test]
fn the_pattern_leaves_the_page_as_text() {
    on_page(Screen::DESK, |page| {
        page.open();
        let permissions = json!({ "origin": page.origin(), "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"] });
        page.command("Browser.grantPermissions", permissions);
        let hat = example();
        let plan = hatwright_sizing::plan(&hat.spec).expect("the example");
        let expected = pattern(&hat, &plan);

        page.click("#copy-pattern");
        page.until("the page to say so", "document.querySelector('.pattern header').textContent.includes('Copied.')");
        let copied = page.js_later("navigator.clipboard.readText().then(arguments[0], e => arguments[0](String(e)))");
        assert_eq!(copied, json!(expected), "the clipboard");

        let file = page.download("hat-pattern.txt", || page.press("Save as text"));
        assert_eq!(file, expected, "the file");
    });
}
