//! The document as text.

use super::id;
use crate::checksum::checksum;
use crate::json::canonical;
use crate::strategies::{arb_project, arb_usual_spec};
use crate::text::{CARE, INTRODUCTION, NAME, NOTES};
use crate::{Designer, Hand, Project, ProjectId, Rgb, SizeOf, Units, Unreadable, example, open, to_json};
use hatwright_sizing::{Head, Kept, KeptRounds, Length, Rows, Stitches};
use proptest::prelude::*;
use serde_json::{Value, json};

proptest! {
    #![proptest_config(ProptestConfig::with_cases(10_000))]

    #[test]
    fn saved_then_opened_is_equal(project in arb_project()) {
        prop_assert_eq!(project.check(), Ok(()));
        prop_assert_eq!(open(&to_json(&project)), Ok(project));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1_000))]

    /// Any hat of form 3 still opens, and is what it was.
    #[test]
    fn a_hat_of_form_3_opens(project in arb_project()) {
        let units = if project.units == Units::Both { Units::Centimetres } else { project.units };
        let then = Project { units, hand: Hand::Right, designer: Designer::default(), sizes: Vec::new(), ..project };
        prop_assert_eq!(open(&sealed(3, &then, form_3)), Ok(then));
    }
}

proptest! {
    #[test]
    fn usual_specs_pass_their_check(spec in arb_usual_spec()) {
        prop_assert_eq!(spec.check(), Ok(()));
    }

    #[test]
    fn any_text_is_a_hat_or_an_error(text in any::<String>()) {
        prop_assert!(open(&text).is_err());
    }

    #[test]
    fn any_change_of_a_byte_is_an_error_or_no_change(project in arb_project(), at in any::<prop::sample::Index>(), byte in 0x20..0x7f_u8) {
        let text = to_json(&project);
        let mut bytes = text.clone().into_bytes();
        let at = at.index(bytes.len());
        bytes[at] = byte;
        if let Ok(changed) = String::from_utf8(bytes) {
            prop_assert!(changed == text || open(&changed).is_err());
        }
    }

    #[test]
    fn texts_are_tidied_once_and_for_all(text in any::<String>()) {
        for rule in [NAME, NOTES] {
            let tidied = rule.tidy(&text);
            prop_assert!(rule.holds(&tidied));
            prop_assert_eq!(rule.tidy(&tidied), tidied.clone());
            prop_assert_eq!(rule.holds(&text), tidied == text);
        }
    }
}

/// What form 3 could hold, as it was written then.
#[test]
fn form_3_knows_no_more_than_it_did() {
    let whole = resealed(3, form_3);
    assert_eq!(open(&whole), Ok(hat()));
    let both = resealed(3, |p| {
        form_3(p);
        p["units"] = json!("Both");
    });
    assert!(matches!(open(&both), Err(Unreadable::Broken { what }) if what.contains("unknown variant")));
    let left = resealed(3, |p| {
        form_3(p);
        p["hand"] = json!("Left");
    });
    assert!(matches!(open(&left), Err(Unreadable::Broken { what }) if what.contains("does not have")));
}

/// Takes away what form 4 brought.
fn form_3(project: &mut Value) {
    let fields = project.as_object_mut().unwrap();
    for new in ["hand", "designer", "sizes"] {
        assert!(fields.remove(new).is_some());
    }
    if fields["units"] == "Both" {
        fields.insert("units".to_owned(), json!("Centimetres"));
    }
}

#[test]
fn every_truncation_is_found() {
    let text = to_json(&hat());
    for end in (0..text.len()).filter(|&end| text.is_char_boundary(end)) {
        assert_eq!(open(&text[..end]), Err(Unreadable::NotJson), "cut at {end}");
    }
}

#[test]
fn every_single_changed_character_is_found() {
    let text = to_json(&hat());
    for at in 0..text.len() {
        for byte in [b'0', b'7', b'a', b'"', b'{', b' '] {
            let mut bytes = text.clone().into_bytes();
            bytes[at] = byte;
            let Ok(changed) = String::from_utf8(bytes) else { continue };
            assert!(changed == text || open(&changed).is_err(), "{changed}");
        }
    }
}

#[test]
fn spaces_and_the_order_of_keys_do_not_matter() {
    let value: Value = serde_json::from_str(&to_json(&hat())).unwrap();
    let indented = format!("\u{feff}\r\n{}\n", serde_json::to_string_pretty(&value).unwrap());
    assert_eq!(open(&indented), Ok(hat()));
    let turned = format!(
        r#"{{"project":{},"check":{},"schema":4,"hatwright":"hat"}}"#,
        serde_json::to_string(&value["project"]).unwrap(),
        value["check"]
    );
    assert_eq!(open(&turned), Ok(hat()));
}

#[test]
fn other_files_are_named_for_what_they_are() {
    assert_eq!(open(""), Err(Unreadable::NotJson));
    assert_eq!(open("{\"hatwright\":\"hat\""), Err(Unreadable::NotJson));
    for other in ["null", "[]", "7", "\"hat\"", "{}", "{\"schema\":1}", "{\"hatwright\":\"scarf\",\"schema\":1}"] {
        assert_eq!(open(other), Err(Unreadable::NotOurs), "{other}");
    }
    assert_eq!(open(&" ".repeat(3_000_000)), Err(Unreadable::NotOurs));
    assert_eq!(open(&"[".repeat(100_000)), Err(Unreadable::NotJson), "nesting does not overflow the stack");
    assert_eq!(open(r#"{"hatwright":"hat","schema":5,"anything":[]}"#), Err(Unreadable::Newer { schema: 5 }));
    for schema in ["0", "-1", "1.5", "null", "\"1\""] {
        let text = format!(r#"{{"hatwright":"hat","schema":{schema},"check":"","project":{{}}}}"#);
        assert!(matches!(open(&text), Err(Unreadable::Broken { .. })), "{schema}");
    }
    for (schema, why) in [(1, "form 1 has no styles"), (2, "form 2 no toppers"), (3, "form 3 no sizes")] {
        assert!(matches!(open(&resealed(schema, |_| ())), Err(Unreadable::Broken { .. })), "{why}");
    }
    let zero = resealed(0, |_| ());
    assert!(matches!(open(&zero), Err(Unreadable::Broken { what }) if what.contains("never")));
}

/// Whole documents, checksum and all, that this form does not have.
#[test]
fn whole_documents_are_still_checked() {
    type Change = fn(&mut Value);
    let changes: [(&str, Change); 25] = [
        ("head girth is 300 cm, which should be 22 to 75 cm", |p| p["spec"]["head"] = json!({"Measured": 300_000})),
        ("1 to 6 colours", |p| p["colours"] = json!([])),
        ("colour number 3", |p| p["spec"]["body_stripes"][0]["colour"] = json!(2)),
        ("does not have", |p| p["brim"] = json!(null)),
        ("does not have", |p| p["spec"]["brim"] = json!(4)),
        ("lacks", |p| drop(p["spec"].as_object_mut().unwrap().remove("chosen"))),
        ("missing field", |p| drop(p.as_object_mut().unwrap().remove("terms"))),
        ("id has", |p| p["id"] = json!("Cap")),
        ("colour is written", |p| p["colours"][0]["hex"] = json!("indigo")),
        ("too long", |p| p["name"] = json!("m".repeat(81))),
        ("do not print", |p| p["notes"] = json!("bell \u{7}")),
        ("before its wearer is born", |p| {
            p["spec"]["head"] = json!({"ByDates": {"born": 20_000, "worn": 19_999, "sex": "Unknown", "build": "Average"}});
        }),
        ("post-stitch rib", |p| p["spec"]["band"]["fabric"] = json!("PostRib")),
        ("hook is 26 mm, which should be 0.5 to 25 mm", |p| p["spec"]["hook"] = json!(2_600)),
        ("one upon the other", |p| {
            let rounds = json!([{"after": 60, "lead": 0, "times": 1}, {"after": 20, "lead": 0, "times": 1}]);
            p["spec"]["kept"] = json!({"planner": 2, "rows": 60, "stitches": 60, "rounds": rounds});
        }),
        ("unknown variant", |p| p["spec"]["style"] = json!("Cloche")),
        ("unknown variant", |p| p["units"] = json!("Feet")),
        ("unknown variant", |p| p["hand"] = json!("Both")),
        ("missing field", |p| drop(p["designer"].as_object_mut().unwrap().remove("care"))),
        ("does not have", |p| p["designer"]["photograph"] = json!("data:image/png;base64,")),
        ("too long", |p| p["designer"]["introduction"] = json!("m".repeat(2_001))),
        ("do not print", |p| p["designer"]["credit"] = json!("The rowing\nclub")),
        ("more sizes than 12", |p| p["sizes"] = json!(vec![json!({"name": "", "head": {"Measured": 50_000}}); 13])),
        ("head girth is 300 cm, which should be 22 to 75 cm", |p| {
            p["sizes"] = json!([{"name": "", "head": {"Measured": 300_000}}]);
        }),
        ("absurd", |p| p["revision"] = json!(u64::MAX)),
    ];
    assert_eq!(open(&resealed(4, |_| ())), Ok(hat()));
    for (expected, change) in changes {
        let error = open(&resealed(4, change)).unwrap_err();
        assert!(error.to_string().contains(expected), "{expected:?} in {error}");
        assert!(error.to_string().starts_with("This hat is damaged: "), "{error}");
    }
}

#[test]
fn writing_holds_texts_to_their_rule() {
    let untidy = Project { name: format!("Cap\u{202e}\n{}", "m".repeat(100)), notes: "\u{0}a\r\nb".to_owned(), ..hat() };
    let opened = open(&to_json(&untidy)).unwrap();
    assert_eq!(opened.name, format!("Cap {}", "m".repeat(76)));
    assert_eq!(opened.notes, "a\nb");
    let mut wordy = hat();
    wordy.designer.introduction = "One\r\n\ttwo\n".repeat(500);
    wordy.designer.care = "m".repeat(400);
    let size = SizeOf { name: "Bow\nseat".to_owned(), head: Head::Measured(Length::from_cm(57.0)) };
    wordy.sizes = vec![size; Project::MOST_SIZES + 3];
    let opened = open(&to_json(&wordy)).unwrap();
    assert!(opened.designer.introduction.starts_with("One\n two\nOne\n"));
    assert_eq!(opened.designer.introduction.chars().count(), INTRODUCTION.most);
    assert_eq!(opened.designer.care, "m".repeat(CARE.most));
    assert_eq!((opened.sizes.len(), opened.sizes[0].name.as_str()), (Project::MOST_SIZES, "Bow seat"));
}

#[test]
fn a_hat_that_breaks_a_rule_does_not_open() {
    let mut absurd = hat();
    absurd.spec.band.fold = Length::from_cm(-1.0);
    let error = open(&to_json(&absurd)).unwrap_err();
    assert_eq!(
        error.to_string(),
        "This hat is damaged: its fold is −1 cm, which should be 0 to 40 cm. It stays as it is, and nothing was taken from it."
    );
}

/// A tail of 20 m in rounds that are all different, each a line of its own: the longest document.
#[test]
fn the_longest_document_opens() {
    let mut long = hat();
    long.notes = "🧶".repeat(NOTES.most);
    long.designer.introduction = "🧶".repeat(INTRODUCTION.most);
    long.designer.tested = long.designer.introduction.clone();
    let rounds = (0..Kept::MOST_ROUNDS).map(|i| KeptRounds { after: 4_000 - i % 2, lead: 3_999, times: 1 });
    long.spec.kept = Some(Kept { planner: 2, rows: Rows::new(400), stitches: Stitches::new(400), rounds: rounds.collect() });
    let text = to_json(&long);
    assert!(text.len() > 900_000, "{}", text.len());
    assert_eq!(open(&text), Ok(long));
}

#[test]
fn ids_and_colours_refuse_what_they_are_not() {
    for bad in ["", "cap", "clubcap", "Clubcap01", "club-cap", "clubcäp01", "a23456789012345678901234567"] {
        assert!(ProjectId::new(bad).is_err(), "{bad}");
    }
    for good in ["clubcap1", "a2345678901234567890123456"] {
        assert_eq!(ProjectId::new(good).unwrap().as_str(), good);
    }
    assert_eq!(ProjectId::new(ProjectId::from_bits(1 << 63).as_str()), Ok(ProjectId::from_bits(1 << 63)));
    for bad in ["", "#", "#12345", "#1234567", "#12345g", "#+12345", "#é1234", "red", "#fff"] {
        assert!(Rgb::parse(bad).is_err(), "{bad}");
    }
}

fn hat() -> Project {
    Project { notes: "Blocked over a bowl, ⌀ 16 cm".to_owned(), revision: 3, ..example(id("rowingclub01")) }
}

/// The hat's document with a change, and a checksum that agrees with it.
fn resealed(schema: u64, change: impl FnOnce(&mut Value)) -> String {
    sealed(schema, &hat(), change)
}

fn sealed(schema: u64, project: &Project, change: impl FnOnce(&mut Value)) -> String {
    let mut project = serde_json::to_value(project).unwrap();
    change(&mut project);
    let check = format!("{:08x}", checksum(&[canonical(project.clone()).as_bytes()]));
    json!({"hatwright": "hat", "schema": schema, "check": check, "project": project}).to_string()
}
