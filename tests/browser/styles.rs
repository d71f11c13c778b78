//! Every kind of hat: its own questions and no other, its own answer, and what is kept of it.

use hatwright_project::Project;
use hatwright_sizing::{
    BandKind, Begun, Edge, Fabric, HatSpec, Kept, Length, Quantity, Rounds, Shape, SideTop, Stitches, Style, Taste, Way,
    head_size, plan,
};
use serde_json::json;

use crate::expected::example;
use crate::page::{Page, Screen};
use crate::stage::{on_page, on_two};

/// The measures that some styles ask for.
const MEASURES: [Quantity; 10] = [
    Quantity::SlouchWider,
    Quantity::SlouchLonger,
    Quantity::Tail,
    Quantity::Taper,
    Quantity::TailStitches,
    Quantity::TamAcross,
    Quantity::FlapLength,
    Quantity::FlapTie,
    Quantity::Brim,
    Quantity::Flare,
];

/// The example as another style, as the page makes it from the example.
fn styled(style: Style) -> Project {
    let mut hat = example();
    hat.spec.style = style;
    hat.spec.shape = Shape::for_head(head_size(&hat.spec.head).girth);
    match style {
        // Of ten stitches that were half folded, five lie on the head.
        Style::Tam | Style::EarFlap => (hat.spec.band.height, hat.spec.band.rounds) = (Stitches::new(5), Rounds::new(3)),
        Style::Sideways => hat.spec.fabric = Fabric::SingleBack,
        _ => {}
    }
    hat
}

fn take(page: &Page, style: Style) {
    page.choose("style", Style::ALL.iter().position(|s| *s == style).expect("a style"));
}

fn there(page: &Page, id: &str) -> bool {
    page.has(&format!("#{id}"))
}

#[test]
fn every_style_can_be_chosen_and_asks_only_what_matters() {
    on_page(Screen::DESK, |page| {
        page.open();
        for style in Style::ALL {
            take(page, style);
            let hat = styled(style);
            page.shows(&hat);
            let spec = &hat.spec;
            for q in MEASURES.into_iter().chain([Quantity::BandHeight, Quantity::BandRounds, Quantity::Fold]) {
                assert_eq!(there(page, q.row().key), spec.asks(q), "{style:?}: {}", q.row().key);
            }
            let questions = [
                ("begun", style.is_round()),
                ("way", spec.goes() != HatSpec { way: Way::Joined, ..spec.clone() }.goes()),
                ("band-kind", !matches!(style, Style::Brimmed | Style::Sideways)),
                ("layout", style.is_round() && style != Style::Stocking),
                ("closing", matches!(style, Style::Fitted | Style::Slouch | Style::EarFlap)),
                ("pom-pom-way", !matches!(style, Style::EarWarmer | Style::Brimmed)),
                ("edge", style == Style::Brimmed),
                ("fabric", style != Style::EarWarmer),
                ("stripe-rows", !matches!(style, Style::Brimmed | Style::Sideways)),
                ("stripe-rounds", style != Style::EarWarmer),
                ("coverage", !matches!(style, Style::EarWarmer | Style::Tam | Style::EarFlap)),
            ];
            for (id, asked) in questions {
                assert_eq!(there(page, id), asked, "{style:?}: {id}");
            }
        }
        take(page, Style::Fitted);
        page.shows(&example());
    });
}

#[test]
fn what_was_typed_for_one_style_is_there_when_it_is_taken_again() {
    on_page(Screen::PHONE, |page| {
        page.open();
        take(page, Style::Tam);
        page.fill("tam-across", "27");
        page.fill("band-height", "4");
        take(page, Style::Slouch);
        page.fill("slouch-wider", "20");
        page.until_is("the band of a hat that folds", "document.getElementById('band-height').value", &json!("10"));
        take(page, Style::Tam);
        assert_eq!((page.value("tam-across"), page.value("band-height")), ("27".to_owned(), "4".to_owned()));
        take(page, Style::Slouch);
        assert_eq!(page.value("slouch-wider"), "20");

        // Usual measures follow the head, others stay.
        page.choose("head-way", 1);
        page.fill("head-girth", "57");
        take(page, Style::Tam);
        assert_eq!(page.value("tam-across"), "27");
        take(page, Style::Brimmed);
        let usual = Shape::for_head(Length::from_cm(57.0)).brim;
        assert_eq!(
            page.value("brim"),
            hatwright_pattern::figures::show(
                usual.ticks(),
                hatwright_sizing::Unit::Length,
                hatwright_pattern::figures::Units::Centimetres
            )
        );

        // A hat worked sideways has a fabric of its own.
        take(page, Style::Sideways);
        page.select("fabric", "slip-rib");
        take(page, Style::Fitted);
        assert_eq!(page.js("return document.getElementById('fabric').value"), json!("single"));
        take(page, Style::Sideways);
        assert_eq!(page.js("return document.getElementById('fabric').value"), json!("slip-rib"));
    });
}

#[test]
fn a_hat_is_begun_at_the_crown_and_its_band_worked_around() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let mut hat = example();
        page.choose("begun", 1);
        hat.spec.begun = Begun::Crown;
        page.shows(&hat);
        page.choose("way", 1);
        hat.spec.way = Way::Joined;
        page.shows(&hat);
        page.choose("band-kind", 1);
        (hat.spec.band.kind, hat.spec.band.fabric) = (BandKind::Around, Fabric::PostRib);
        page.fill("fold", "3");
        hat.spec.band.fold = Length::from_cm(3.0);
        page.fill("band-rounds", "7");
        hat.spec.band.rounds = Rounds::new(7);
        page.shows(&hat);
        assert!(!there(page, "edge"), "an edge that comes last begins with nothing");
        page.choose("begun", 0);
        hat.spec.begun = Begun::Band;
        page.choose("edge", 1);
        hat.spec.band.edge = Edge::LooseChain;
        page.shows(&hat);
        page.choose("band-kind", 2);
        hat.spec.band.kind = BandKind::None;
        page.shows(&hat);
        assert!(!there(page, "fold") && !there(page, "stripe-rows"));
        page.choose("band-kind", 0);
        (hat.spec.band.kind, hat.spec.band.fabric) = (BandKind::Sideways, Fabric::SingleBack);
        page.shows(&hat);
    });
}

#[test]
fn fabrics_are_those_that_can_be_worked_so() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let options =
            |page: &Page, id: &str| page.js(&format!("return [...document.querySelectorAll('#{id} option')].map(o => o.value)"));
        let keys = |fits: &dyn Fn(Fabric) -> bool| -> Vec<&str> {
            Fabric::ALL.iter().filter(|f| fits(**f)).map(|f| f.row().key).collect()
        };
        assert_eq!(options(page, "fabric"), json!(keys(&|f| f.bodies(Style::Fitted))));
        assert_eq!(options(page, "band-fabric"), json!(keys(&|f| f.bands(BandKind::Sideways))));
        page.choose("band-kind", 1);
        page.until_is(
            "the bands worked around",
            "[...document.querySelectorAll('#band-fabric option')].map(o => o.value)",
            &json!(keys(&|f| f.bands(BandKind::Around))),
        );
        page.choose("band-kind", 0);
        page.select("fabric", "half-double");
        let mut hat = example();
        hat.spec.fabric = Fabric::HalfDouble;
        page.shows(&hat);
        // Fifteen rounds to twelve stitches are low for half double crochet: a hint beside the swatch, and no refusal.
        page.until("the hint", "document.getElementById('gauge-hint').textContent");
        page.choose("terms", 1);
        page.until_is(
            "UK terms in the list",
            "document.querySelector('#fabric option:checked').textContent",
            &json!("Half treble crochet"),
        );
    });
}

#[test]
fn a_refusal_stands_beside_the_measure_it_is_about() {
    on_page(Screen::PHONE, |page| {
        page.open();
        take(page, Style::Tam);
        page.fill("tam-across", "14");
        let mut hat = styled(Style::Tam);
        hat.spec.shape.tam_across = Length::from_cm(14.0);
        let why = hatwright_pattern::say::refusal(
            &plan(&hat.spec).expect_err("a tam narrower than its band"),
            hatwright_pattern::figures::Units::Centimetres,
        );
        page.until_is("the sentence", "document.getElementById('tam-across-says').textContent", &json!(why));
        assert_eq!(page.text("#stuck-on li"), why);
        page.fill("tam-across", "26");
        hat.spec.shape.tam_across = Length::from_cm(26.0);
        page.shows(&hat);

        take(page, Style::EarFlap);
        page.fill("flap-length", "x");
        assert!(page.says("flap-length").contains("not a number"));
        // What is wrong with a field goes with the field.
        take(page, Style::Fitted);
        page.until_is("the banner", "document.getElementById('stuck-on').textContent", &json!(""));

        take(page, Style::EarFlap);
        page.fill("band-height", "30");
        page.until("the sentence", "document.getElementById('band-height-says').textContent");
    });
}

#[test]
fn plans_stand_side_by_side() {
    on_page(Screen::DESK, |page| {
        page.open();
        let hat = plan(&example().spec).expect("the example");
        let tastes = [Taste::Balanced, Taste::Smooth, Taste::Simple, Taste::Nearest];
        let planned = tastes.map(|taste| plan(&HatSpec { taste, ..example().spec }).expect("a hat"));
        let cards = page.js("return [...document.querySelectorAll('.plans .size')].map(c => c.dataset.taste)");
        let mut apart: Vec<&hatwright_sizing::Hat> = Vec::new();
        for hat in &planned {
            if apart.iter().all(|a| (&a.size, &a.rounds) != (&hat.size, &hat.rounds)) {
                apart.push(hat);
            }
        }
        assert_eq!(
            cards.as_array().map(Vec::len),
            Some(if apart.len() > 1 { apart.len() } else { 0 }),
            "plans that are alike are one"
        );
        let other = tastes.iter().zip(&planned).find(|(_, p)| p.rounds != hat.rounds).expect("a plan that differs");
        page.click(&format!(".plans [data-taste='{}']", *other.0 as usize));
        let mut wanted = example();
        wanted.spec.taste = *other.0;
        page.shows(&wanted);
        assert_eq!(page.js("return document.querySelectorAll('.plans .taken').length"), json!(1));
    });
}

#[test]
fn a_hat_that_is_begun_keeps_its_rounds() {
    on_page(Screen::PHONE, |page| {
        page.open();
        let before = page.shown();
        page.click("#begin");
        let mut hat = example();
        hat.spec.kept = Some(Kept::of(&plan(&hat.spec).expect("the example")));
        page.until("the word about it", "document.getElementById('begun')?.textContent");
        let now = page.shown();
        for key in ["stitches", "rounds", "table", "yarn"] {
            assert_eq!(now[key], before[key], "{key}");
        }
        assert!(!page.has(".choose button"), "there is nothing to choose any more");
        page.is_saved();
        assert_eq!(page.kept_hats()[0].spec.kept, hat.spec.kept);
        page.reload();
        assert_eq!(page.shown()["table"], before["table"]);

        // Another hat is asked for: it is said, and can be begun in the first one's place.
        take(page, Style::Sideways);
        page.until("the warning", "document.getElementById('begun')?.classList.contains('care')");
        take(page, Style::Fitted);
        page.until("the old rounds", "!document.getElementById('begun').classList.contains('care')");
        page.click("#plan-anew");
        page.until("the way to begin", "!!document.getElementById('begin')");
        page.shows(&example());
    });
}

#[test]
fn a_link_and_a_reload_keep_a_tam() {
    on_two(Screen::PHONE, |mine, theirs| {
        mine.open();
        take(mine, Style::Tam);
        mine.fill("tam-across", "26.5");
        mine.choose("begun", 1);
        let mut hat = styled(Style::Tam);
        hat.spec.shape.tam_across = Length::from_cm(26.5);
        hat.spec.begun = Begun::Crown;
        mine.shows(&hat);
        mine.is_saved();
        mine.click("#copy-link");
        mine.until("the link", "document.getElementById('share-link').value.includes('#')");
        let link = mine.value("share-link");
        mine.reload();
        mine.shows(&hat);
        theirs.go(&link);
        theirs.has_started();
        theirs.shows(&hat);
        assert_eq!(theirs.value("tam-across"), "26.5");
    });
}

#[test]
fn a_hat_worked_sideways_closes_in_two_ways() {
    on_page(Screen::PHONE, |page| {
        page.open();
        take(page, Style::Sideways);
        page.choose("side-top", 1);
        let mut hat = styled(Style::Sideways);
        hat.spec.shape.side_top = SideTop::ShortRows;
        page.fill("side-wedges", "8");
        hat.spec.shape.side_wedges = 8;
        let planned = plan(&hat.spec).expect("a hat in short rows");
        page.until_is(
            "the rows",
            "document.getElementById('answer-stitches').textContent",
            &json!(planned.panel.expect("rows").rows.len().to_string()),
        );
        page.choose("side-top", 0);
        page.until("the field to go", "!document.getElementById('side-wedges')");
    });
}

/// A tail of many hundred rounds is a line or two, and the page stays quick and narrow.
#[test]
fn a_long_tail_is_told_in_short() {
    on_page(Screen::PHONE, |page| {
        page.open();
        take(page, Style::Stocking);
        page.fill("tail", "900");
        let mut hat = styled(Style::Stocking);
        hat.spec.shape.tail = Length::from_cm(900.0);
        page.shows(&hat);
        let rounds = plan(&hat.spec).expect("a long cap").round_count().get();
        assert!(rounds > 1_000, "{rounds}");
        let lines = page.js("return document.querySelectorAll('#rounds tr').length").as_u64().expect("a number");
        let drawn = page.js("return document.querySelectorAll('#rounds rect').length").as_u64().expect("a number");
        assert!(lines < 150 && drawn < 600, "{lines} lines, {drawn} bars");
        let wide = page.js("return document.documentElement.scrollWidth - document.documentElement.clientWidth");
        assert_eq!(wide, json!(0));
    });
}
