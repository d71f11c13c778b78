//! What cannot be used stays where it was typed, with a sentence beside it, and the last good hat stays in sight.

use hatwright_pattern::figures::{self, Units};
use hatwright_pattern::say;
use hatwright_project::Project;
use hatwright_sizing::{Extra, HatSpec, Head, Length, Quantity, Ratio, Stretch, Unit, plan};
use serde_json::json;

use crate::expected::example;
use crate::page::{Page, Screen};
use crate::stage::on_page;

/// A field as a person and a screen reader find it, and what the page makes of it.
const FIELD: &str = "
    const field = document.getElementById(arguments[0]);
    const said = document.getElementById(field.getAttribute('aria-describedby').split(' ')[0]);
    return {
      typed: field.value,
      invalid: field.getAttribute('aria-invalid'),
      sentence: said.textContent,
      seen: said.checkVisibility(),
      banner: [...document.querySelectorAll('#stuck-on li')].map(li => li.textContent),
      marked: ['.answer', '.hat', '.rounds', '.yarns', '.facts', '.pattern', '.bar'].filter(css => document.querySelector(css + '.stale')),
      stitches: document.getElementById('answer-stitches').textContent,
    }";

impl Page {
    /// A field holds what cannot be used: it says why, the text stays, and the last good hat stays and is marked.
    #[track_caller]
    fn refuses(&self, id: &str, typed: &str, sentence: &str) {
        let mut field = self.js_with(FIELD, vec![json!(id)]);
        let shown = field["stitches"].take();
        assert!(shown.as_str().is_some_and(|n| n.parse::<u32>().is_ok()), "a hat stays in sight: {shown}");
        let expected = json!({
            "typed": typed,
            "invalid": "true",
            "sentence": sentence,
            "seen": true,
            "banner": [sentence],
            "marked": [".answer", ".hat", ".rounds", ".yarns", ".facts", ".pattern", ".bar"],
            "stitches": null,
        });
        assert_eq!(field, expected, "{typed:?} in {id}\n found {field:#}\nwanted {expected:#}");
    }

    /// A field holds a number that was taken, and nothing else is wrong.
    #[track_caller]
    fn takes(&self, id: &str) {
        let field = self.js_with(FIELD, vec![json!(id)]);
        for (key, wanted) in [("invalid", json!("false")), ("sentence", json!("")), ("banner", json!([])), ("marked", json!([]))]
        {
            assert_eq!(field[key], wanted, "{key} of {id} with {}", field["typed"]);
        }
    }
}

/// What belongs beside a field in which a text was typed that is not its number.
fn sentence(q: Quantity, typed: &str) -> String {
    match figures::parse(typed, q.row().unit, Units::Centimetres) {
        Err(misread) => say::misread(q, &misread, typed, Units::Centimetres),
        Ok(ticks) => {
            assert!(!q.row().holds(ticks), "{typed} is a good number for {}", q.row().key);
            say::out_of_range(q, ticks, Units::Centimetres)
        }
    }
}

/// Puts what cannot be used into each of some fields, then what stood there before. Pasted, for what is typed key by key passes
/// through good numbers on its way: `300` is 30 before it is 300.
fn try_all(page: &Page, fields: &[Quantity]) {
    for &q in fields {
        let id = q.row().key;
        let good = page.value(id);
        let mut texts = vec!["-3", "1.234,5", "9999"];
        texts.extend((!q.row().holds(0)).then_some("0"));
        for typed in texts {
            page.paste(id, typed);
            page.refuses(id, typed, &sentence(q, typed));
            assert_eq!(page.text("#answer-stitches"), "56", "the last good hat stays while {id} holds {typed}");
        }
        // By hand, and the field is left with what cannot be used in it.
        for typed in ["", "x"] {
            page.fill(id, typed);
            page.refuses(id, typed, &sentence(q, typed));
        }
        page.fill(id, &good);
        page.takes(id);
        assert_eq!(page.value(id), good);
    }
}

#[test]
fn every_field_of_the_example_says_what_is_wrong() {
    on_page(Screen::PHONE, |page| {
        use Quantity as Q;
        page.open();
        try_all(
            page,
            &[
                Q::AgeYears,
                Q::Ease,
                Q::SwatchStitches,
                Q::SwatchWidth,
                Q::SwatchRounds,
                Q::SwatchHeight,
                Q::BandHeight,
                Q::Fold,
                Q::PomPom,
                Q::Fullness,
                Q::BallYarn,
                Q::BallsOwned,
                Q::StripeRows,
                Q::StripeRounds,
                Q::Chance,
                Q::ScaleStep,
            ],
        );
        page.shows(&example());
    });
}

#[test]
fn every_other_field_says_what_is_wrong() {
    on_page(Screen::PHONE, |page| {
        use Quantity as Q;
        page.open();
        for (group, q) in [
            ("stretch-way", Q::BodyStretch),
            ("band-stretch-way", Q::BandStretch),
            ("band-swatch-way", Q::BandSwatchStitches),
            ("layout", Q::Wedges),
            ("closing", Q::Gather),
            ("extra", Q::Margin),
        ] {
            page.choose(group, 1);
            page.until(q.row().key, &format!("!!document.getElementById('{}')", q.row().key));
        }
        assert_eq!(page.text("#answer-stitches"), "56", "what is shown while nothing is wrong");
        try_all(
            page,
            &[
                Q::BodyStretch,
                Q::BandStretch,
                Q::BandSwatchStitches,
                Q::BandSwatchWidth,
                Q::BandSwatchRows,
                Q::BandSwatchLength,
                Q::Wedges,
                Q::Gather,
                Q::Margin,
            ],
        );
    });
}

#[test]
fn heads_that_nobody_has_are_refused() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.choose("head-way", 1);
        page.type_into("head-girth", "300");
        page.refuses("head-girth", "300", "300 cm is no head: heads are 22 to 75 cm around; most adults 52 to 62 cm.");
        page.type_into("head-girth", "0");
        page.refuses("head-girth", "0", "0 cm is no head: heads are 22 to 75 cm around; most adults 52 to 62 cm.");
        page.type_into("head-girth", "-52");
        page.refuses("head-girth", "-52", "“-52” is less than nothing. It takes 22 to 75 cm.");
        page.type_into("head-girth", "52,5");
        page.takes("head-girth");
        let mut hat = example();
        hat.spec.head = Head::Measured(Length::from_ticks(52_500));
        page.shows(&hat);
    });
}

/// 300 is 30 before it is 300. Nobody meant 30: neither the screen nor the storage may hold a hat for such a head, with nothing
/// to tell it from a hat that was decided.
#[test]
fn half_a_number_is_not_taken_for_the_whole() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.choose("head-way", 1);
        page.fill("head-girth", "52.5");
        page.is_saved();
        let mut hat = example();
        hat.spec.head = Head::Measured(Length::from_ticks(52_500));
        page.shows(&hat);
        let before = page.shown();
        page.type_into("head-girth", "300");
        let why = "300 cm is no head: heads are 22 to 75 cm around; most adults 52 to 62 cm.";
        page.refuses("head-girth", "300", why);
        for key in ["stitches", "rounds", "yarn", "girth"] {
            assert_eq!(page.shown()[key], before[key], "the last good hat was for 52.5 cm: its {key}");
        }
        page.is_saved();
        page.reload();
        page.shows(&hat);
    });
}

#[test]
fn ages_that_nobody_has_are_refused() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.paste("age-years", "300");
        page.refuses("age-years", "300", &sentence(Quantity::AgeYears, "300"));
        page.fill("age-years", "4");
        page.select("age-unit", "months");
        page.paste("age-months", "400");
        page.refuses("age-months", "400", &sentence(Quantity::AgeMonths, "400"));
        // Another unit is a way out as well.
        page.select("age-unit", "years");
        page.takes("age-years");
        page.shows(&example());
    });
}

#[test]
fn a_swatch_that_tells_nothing_is_refused() {
    on_page(Screen::PHONE, |page| {
        page.open();
        for typed in ["3", "0.1"] {
            page.type_into("swatch-stitches", typed);
            let wanted = format!(
                "{typed} stitches is too little here. It takes 4 to 200 stitches. \
                 So few stitches tell nothing of the fabric: count 12 or more."
            );
            page.refuses("swatch-stitches", typed, &wanted);
        }
        page.fill("swatch-stitches", "12");
        page.takes("swatch-stitches");
        page.shows(&example());
    });
}

/// What the planner says of a hat that cannot be made.
fn refusal(spec: &HatSpec) -> String {
    say::refusal(&plan(spec).expect_err("a hat that cannot be made"), Units::Centimetres)
}

fn changed(change: impl FnOnce(&mut HatSpec)) -> Project {
    let mut hat = example();
    change(&mut hat.spec);
    hat
}

#[test]
fn stripes_that_cannot_close_are_refused() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.fill("stripe-rows", "20");
        page.fill("stripe-rows-1", "20");
        let hat = changed(|s| s.band.stripes.iter_mut().for_each(|stripe| stripe.rows = hatwright_sizing::Rows::new(20)));
        let why = refusal(&hat.spec);
        assert!(why.contains("40 rows") && why.contains("80 rows"), "the counts that do close are named: {why}");
        page.refuses("stripe-rows", "20", &why);

        // It is a hat all the same: it is kept as it was decided, and is still refused after a reload.
        page.is_saved();
        page.reload();
        page.refuses("stripe-rows", "20", &why);

        page.fill("stripe-rows", "2");
        page.fill("stripe-rows-1", "2");
        page.takes("stripe-rows");
        page.shows(&example());
    });
}

#[test]
fn a_band_too_tall_names_the_fold_that_heals_it() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.fill("fold", "1");
        page.type_into("band-height", "30");
        let mut hat = changed(|s| {
            s.band.fold = Length::from_ticks(1_000);
            s.band.height = hatwright_sizing::Stitches::new(30);
        });
        let why = refusal(&hat.spec);
        page.refuses("band-height", "30", &why);

        let (_, fold) = why.split_once("It works with ").expect("a way out");
        let (fold, _) = fold.split_once(" cm or more of it folded up").expect("a fold that works");
        page.fill("fold", fold);
        page.takes("band-height");
        hat.spec.band.fold = Length::from_ticks(figures::parse(fold, Unit::Length, Units::Centimetres).expect("a length"));
        page.shows(&hat);

        // It is the smallest: a millimetre less does not do.
        hat.spec.band.fold = Length::from_ticks(hat.spec.band.fold.ticks() - 100);
        assert!(plan(&hat.spec).is_err(), "{fold} cm is said to be the smallest fold");
    });
}

#[test]
fn more_ease_than_the_stretch_allows_is_refused() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.choose("stretch-way", 1);
        page.fill("body-stretch", "1.08");
        page.choose("head-way", 1);
        page.fill("head-girth", "57");
        let mut hat = changed(|s| {
            s.head = Head::Measured(Length::from_ticks(57_000));
            s.body_stretch = Stretch::Measured(Ratio::from_ticks(10_800));
        });
        page.shows(&hat);
        let shown = page.shown();

        page.type_into("ease", "9");
        // Worked example of the design (geometry): 57 × 0.91 × 1.08 = 56.0, and 1 − 1 ÷ 1.08 = 7.4 %.
        let says = page.says("ease");
        assert!(says.contains("56.0 cm") && says.contains("7.4 %"), "{says}");
        assert_eq!(page.value("ease"), "9");
        let now = page.shown();
        for key in ["stitches", "rounds", "yarn", "table", "pattern"] {
            assert_eq!(now[key], shown[key], "the last hat that worked stays: its {key}");
        }
        assert_ne!(now["stale"], json!([]), "it is marked");

        page.fill("ease", "7.4");
        page.takes("ease");
        hat.spec.ease = Ratio::from_ticks(740);
        page.shows(&hat);
    });
}

#[test]
fn the_banner_leads_to_each_field_that_is_wrong() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.fill("swatch-stitches", "x");
        page.fill("band-height", "");
        let words = [sentence(Quantity::SwatchStitches, "x"), sentence(Quantity::BandHeight, "")];
        let banner = page.js("return [...document.querySelectorAll('#stuck-on li')].map(li => li.textContent)");
        let mut banner: Vec<String> = serde_json::from_value(banner).expect("texts");
        banner.sort();
        let mut expected = words.to_vec();
        expected.sort();
        assert_eq!(banner, expected);
        page.until(
            "the banner to unfold",
            "document.getElementById('stuck-on').getAnimations().every(a => a.playState === 'finished')",
        );
        page.press(&words[1]);
        assert_eq!(page.focused(), "band-height");
        page.keys("10");
        page.press(&words[0]);
        assert_eq!(page.focused(), "swatch-stitches");
        page.fill("swatch-stitches", "12");
        page.shows(&example());
    });
}

#[test]
fn what_is_wrong_in_one_field_does_not_stop_the_others() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.fill("swatch-stitches", "x");
        page.fill("chance", "80");
        page.refuses("swatch-stitches", "x", &sentence(Quantity::SwatchStitches, "x"));
        page.fill("swatch-stitches", "12");
        page.shows(&changed(|s| s.extra = Extra::Chance(Ratio::from_ticks(8_000))));
    });
}

/// Makes a field go away.
type Way = fn(&Page);

/// A sentence beside a field that is not on the page any more would mark the hat for ever, with no way out.
#[test]
fn what_is_wrong_with_a_field_goes_with_the_field() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let ways: [(&str, Way); 10] = [
            ("age-years", |page| page.choose("head-way", 1)),
            ("swatch-stitches", |page| page.choose("swatch-way", 1)),
            ("body-stretch", |page| page.choose("stretch-way", 0)),
            ("band-stretch", |page| page.choose("band-stretch-way", 0)),
            ("band-swatch-rows", |page| page.choose("band-swatch-way", 0)),
            ("wedges", |page| page.choose("layout", 0)),
            ("gather", |page| page.choose("closing", 0)),
            ("pom-pom", |page| page.choose("pom-pom-way", 0)),
            ("stripe-rows-1", |page| page.press("Remove stripe 2 of the band")),
            ("ball-yarn-1", |page| page.press("Remove colour B")),
        ];
        for group in ["stretch-way", "band-stretch-way", "band-swatch-way", "layout", "closing"] {
            page.choose(group, 1);
        }
        let mut left = Vec::new();
        for (id, take_away) in ways {
            page.fill(id, "x");
            take_away(page);
            page.until("the field to go", &format!("!document.getElementById('{id}')"));
            let banner = page.text("#stuck-on");
            if !banner.is_empty() {
                left.push(id);
                // Only a reload helps: nothing that is wrong with a field is kept.
                page.is_saved();
                page.reload();
            }
        }
        assert_eq!(left, [""; 0], "these fields are gone, but what was wrong with them still marks the hat");
    });
}

#[test]
fn another_hat_brings_nothing_wrong_along() {
    on_page(Screen::PHONE, |page| {
        page.open();
        page.fill("band-height", "x");
        page.click("#open-shelf");
        page.click("#new-crew");
        page.until_is("the banner", "document.getElementById('stuck-on').textContent", &json!(""));
        page.takes("band-height");
    });
}
