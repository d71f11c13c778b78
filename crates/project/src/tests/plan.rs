//! Plans as JSON and patterns as text, for people who script.

use super::id;
use crate::plan_json::{PlanFile, PlanHat, PlanOp, plan_file, plan_json};
use crate::script::Ask;
use crate::{Hand, Project, ProjectId, SAMPLES, SizeOf, Terms, example, open, samples, to_json};
use hatwright_pattern::written::write;
use hatwright_sizing::{Age, Build, Count, Head, Length, Sex, plan};
use hatwright_words::{Language, in_language};

const SAVED: [&str; 13] = [
    include_str!("../../samples/v1/club-cap.json"),
    include_str!("../../samples/v1/starred-weeks.json"),
    include_str!("../../samples/v1/gathered-inches.json"),
    include_str!("../../samples/v1/baby-yarn-weight.json"),
    include_str!("../../samples/v2/club-cap.json"),
    include_str!("../../samples/v2/stocking-begun.json"),
    include_str!("../../samples/v2/tam-uk.json"),
    include_str!("../../samples/v2/sideways-inches.json"),
    include_str!("../../samples/v3/club-cap.json"),
    include_str!("../../samples/v3/weighed-tassel.json"),
    include_str!("../../samples/v3/instead-inches.json"),
    include_str!("../../samples/v4/club-cap.json"),
    include_str!("../../samples/v4/published.json"),
];

fn club() -> Vec<Project> {
    let ids: [ProjectId; SAMPLES] = core::array::from_fn(|i| ProjectId::from_bits(i as u64));
    [vec![example(id("rowingclub01"))], samples(ids).to_vec()].concat()
}

fn all() -> Vec<Project> {
    SAVED.iter().map(|text| open(text).unwrap()).chain(club()).collect()
}

/// Stitches that steps make: what the file's own description says of them.
fn makes(ops: &[PlanOp]) -> u32 {
    let one = |op: &PlanOp| match op {
        PlanOp::FoundationStitches { count, .. } | PlanOp::Ring { count, .. } | PlanOp::Work { count, .. } => *count,
        PlanOp::Several { each, count, .. } | PlanOp::Every { each, count, .. } => each * count,
        PlanOp::Together { .. } => 1,
        PlanOp::Repeat { ops, times } => makes(ops) * times,
        _ => 0,
    };
    ops.iter().map(one).sum()
}

/// The lines of rounds tell every round once, and each as the list of rounds has it.
fn check(hat: &PlanHat) {
    let mut told = 0;
    for line in hat.parts.iter().flat_map(|part| &part.lines) {
        if let (Some(first), Some(last)) = (line.first, line.last) {
            assert!(first <= last, "{line:?}");
            if line.label == "Round" {
                assert_eq!((first, makes(&line.ops)), (told + 1, line.total), "{line:?}");
                told = last;
                for round in &hat.rounds[first as usize - 1..last as usize] {
                    assert_eq!((round.after, round.decreases, round.increases), (line.total, line.decreases, line.increases));
                    assert!(line.colour.is_none_or(|colour| colour == round.colour), "{line:?}");
                }
            }
        } else {
            assert!(!["Row", "Round"].contains(&&*line.label), "{line:?}");
        }
    }
    assert_eq!(told as usize, hat.rounds.len());
    assert!(hat.rounds.windows(2).all(|pair| pair[1].number == pair[0].number + 1));
    assert!(hat.yarn.iter().all(|yarn| 0.0 < yarn.low_m && yarn.low_m <= yarn.length_m && yarn.length_m <= yarn.high_m));
}

#[test]
fn a_plan_reads_back_as_it_was() {
    for project in all() {
        let hat = plan(&project.spec).unwrap();
        let written = write(&hat, &project.spec);
        let text = plan_json(&project, &hat, &written);
        let read: PlanFile = serde_json::from_str(&text).unwrap();
        assert_eq!(read, plan_file(&project, &hat, &written), "{}", project.name);
        assert_eq!((read.hatwright.as_str(), read.form, read.sizes.len()), ("plan", 1, project.sizes.len() + 1));
        assert_eq!((&read.name, read.hand, &read.colours), (&project.name, project.hand, &project.colours));
        for size in &read.sizes {
            assert_ne!(size.hat.is_some(), size.refused.is_some(), "{}", size.name);
            size.hat.iter().for_each(check);
        }
        let own = read.sizes[0].hat.as_ref().unwrap();
        assert_eq!((own.stitches, own.rows, own.rounds.len()), (hat.size.stitches.get(), hat.size.rows.get(), hat.rounds.len()));
        assert_eq!(
            own.parts.iter().map(|part| part.lines.len()).sum::<usize>(),
            written.parts.iter().map(|part| part.lines.len()).sum::<usize>()
        );
    }
}

/// A script rests on these words.
#[test]
fn the_words_of_a_plan_stay() {
    let project = example(id("rowingclub01"));
    let hat = plan(&project.spec).unwrap();
    let value = serde_json::to_value(plan_file(&project, &hat, &write(&hat, &project.spec))).unwrap();
    let own = &value["sizes"][0]["hat"];
    assert_eq!(value["sizes"][0]["name"], "4 years");
    assert_eq!(
        (&value["style"], &value["begun"], &value["way"], &value["hand"]),
        (&"Fitted".into(), &"Band".into(), &"Spiral".into(), &"Right".into())
    );
    assert_eq!(
        own["parts"].as_array().unwrap().iter().map(|p| &p["kind"]).collect::<Vec<_>>(),
        ["Band", "Body", "Crown", "Closing"]
    );
    let first = &own["parts"][0]["lines"][1];
    assert_eq!(
        (&first["label"], &first["first"], &first["last"], &first["total"]),
        (&"Row".into(), &1.into(), &1.into(), &10.into())
    );
    let step = serde_json::json!({"op": "Every", "stitch": "Single", "each": 1, "count": 10, "at": {"ChainFrom": 2}});
    assert_eq!(first["ops"], serde_json::json!([step]));
    assert_eq!((&own["rounds"][0]["kind"], &own["rounds"][0]["zone"]), (&"PickUp".into(), &"Body".into()));
    assert_eq!(own["girth_mm"], f64::from(hat.size.girth.ticks()) / 100.0);
    // Spanish changes no key and no word of it but what is said to people.
    let spanish =
        in_language(Language::Spanish, || serde_json::to_value(plan_file(&project, &hat, &write(&hat, &project.spec))).unwrap());
    assert_eq!(&spanish["sizes"][0]["hat"], own);
    assert_eq!(spanish["sizes"][0]["name"], "4 años");
}

fn ask(words: &[&str]) -> Ask {
    Ask::read(words.iter().copied()).unwrap()
}

#[test]
fn every_saved_hat_is_printed() {
    for text in SAVED.map(str::to_owned).into_iter().chain(club().iter().map(to_json)) {
        let project = open(&text).unwrap();
        let json: PlanFile = serde_json::from_str(&ask(&["f", "--json"]).answer(&text).unwrap()).unwrap();
        assert_eq!(json.sizes.len(), project.sizes.len() + 1);
        let (us, uk) = (ask(&["f", "--terms", "us"]).answer(&text).unwrap(), ask(&["f", "--terms", "uk"]).answer(&text).unwrap());
        let spanish = ask(&["f", "--language", "es"]).answer(&text).unwrap();
        for (printed, crochet) in [(&us, "Written in US crochet terms"), (&uk, "Written in UK crochet terms")] {
            assert!(printed.starts_with(&project.name) && printed.contains(crochet), "{printed}");
        }
        assert!(spanish.starts_with(&project.name) && spanish != us, "{spanish}");
        let own = if project.terms == Terms::Uk { &uk } else { &us };
        assert_eq!(&ask(&["f"]).answer(&text).unwrap(), own);
        assert_eq!(project.pattern_text().as_ref(), Ok(own));
    }
}

#[test]
fn a_size_is_printed_alone() {
    let mut cap = example(id("rowingclub01"));
    cap.hand = Hand::Left;
    cap.designer.credit = "The club’s workshop".to_owned();
    let baby = Head::ByAge { age: Age::Months(Count::whole(6)), sex: Sex::Unknown, build: Build::Average };
    let size = |name: &str, head| SizeOf { name: name.to_owned(), head };
    cap.sizes = vec![size("", baby), size("Crew", Head::Measured(Length::from_cm(57.0)))];
    let text = to_json(&cap);
    let names = |words: &[&str]| {
        let read: PlanFile = serde_json::from_str(&ask(words).answer(&text).unwrap()).unwrap();
        read.sizes.into_iter().map(|size| (size.name, size.hat.unwrap().stitches)).collect::<Vec<_>>()
    };
    let all = names(&["f", "--json"]);
    assert_eq!(all.iter().map(|(name, _)| &**name).collect::<Vec<_>>(), ["4 years", "6 months", "Crew"]);
    assert!(all[1].1 < all[0].1 && all[0].1 < all[2].1, "{all:?}");
    assert_eq!(names(&["f", "--json", "--size", "1"]), all[..1]);
    // Alone it is called by its head, as the hat's own size is.
    assert_eq!(names(&["f", "--json", "--size", "3"]), [("head 57.0 cm".to_owned(), all[2].1)]);
    let (printed, alone) = (ask(&["f"]).answer(&text).unwrap(), ask(&["f", "--size", "2"]).answer(&text).unwrap());
    assert!(printed.contains("6 months (4 years, Crew)"), "{printed}");
    assert!(printed.contains("The club’s workshop"), "{printed}");
    assert!(!alone.contains("Crew") && alone.contains(&format!("({})", all[1].1)), "{alone}");
    let no = ask(&["f", "--size", "4"]).answer(&text).unwrap_err();
    assert_eq!(no, "This pattern has no size 4: its sizes are numbered from 1 to 3.");
    let no = ask(&["--size", "4", "--language", "es", "f"]).answer(&text).unwrap_err();
    assert_eq!(no, "Este patrón no tiene la talla 4: sus tallas van numeradas de la 1 a la 3.");
}

#[test]
fn bad_files_and_words_are_told() {
    let said = |words: &[&str], text: &str| ask(words).answer(text).unwrap_err();
    assert_eq!(said(&["f"], "{}"), "This file is whole, but Hatwright did not write it.");
    assert_eq!(said(&["f", "--language", "es"], "{}"), "Este archivo está entero, pero no lo escribió Hatwright.");
    let mut tiny = example(id("rowingclub01"));
    tiny.spec.head = Head::Measured(Length::from_cm(22.0));
    tiny.spec.band.height = hatwright_sizing::Stitches::new(80);
    for words in [&["f"][..], &["f", "--json"]] {
        let why = said(words, &to_json(&tiny));
        assert!(why.starts_with(char::is_uppercase) && why.ends_with('.'), "{why}");
    }
    let usage = |words: &[&str]| Ask::read(words.iter().copied()).unwrap_err();
    for (words, word) in [
        (&["f", "--jsn"][..], "--jsn"),
        (&["f", "g"], "g"),
        (&["f", "--size"], "--size"),
        (&["f", "--size", "0"], "--size 0"),
        (&["f", "--size", "two"], "--size two"),
        (&["f", "--language", "xx"], "--language xx"),
        (&["f", "--terms", "es"], "--terms es"),
    ] {
        let told = usage(words);
        assert!(
            told.starts_with(&format!("“{word}” is not understood here.\ncargo run -p hatwright-project --example plan -- ")),
            "{told}"
        );
    }
    assert!(usage(&["--language", "es"]).starts_with("No se ha nombrado ningún archivo.\n"));
    assert!(usage(&["--jsn", "--language", "es"]).starts_with("Aquí no se entiende «--jsn».\n"));
    assert_eq!(ask(&["cap.json"]).unread("no such file"), "The file cap.json could not be read: no such file.");
}

/// Colours without a name, and two of one name.
#[test]
fn colours_are_told_apart() {
    let mut cap = example(id("rowingclub01"));
    cap.colours[0].name = String::new();
    assert_eq!(cap.told_colours(), ["colour A", "Weld"]);
    cap.colours[0].name = " Weld".to_owned();
    assert_eq!(cap.told_colours(), ["Weld A", "Weld B"]);
    cap.name = " ".to_owned();
    assert!(cap.pattern_text().unwrap().starts_with("A hat\n"));
}
