//! What a sheet says, in both languages.

use super::super::about::Designer;
use super::super::sample;
use super::super::terms::Terms;
use super::*;
use crate::figures::Units;
use hatwright_sizing::{Length, Mass, TopperKind, TopperPlan, YarnWeight};
use hatwright_words::{Language, in_language};

fn about(terms: Terms, units: Units) -> About<'static> {
    About {
        title: "Rowing club cap",
        colour_names: &["indigo", "weld"],
        yarn_names: &["Boathouse wool", ""],
        terms,
        units,
        version: "0.1.0",
        ..About::default()
    }
}

fn text(terms: Terms, units: Units) -> String {
    print(&sample::hat(), &sample::spec(), &about(terms, units))
}

#[test]
fn the_lines_stand_in_the_text() {
    let text = text(Terms::Us, Units::Centimetres);
    for line in [
        "Rowing club cap",
        "Written in US crochet terms: single crochet (sc) here is what UK patterns call double crochet (dc).",
        "Foundation, indigo: ch 11.",
        "Row 1, indigo: sc in 2nd ch from hook and in each ch across. (10)",
        "Row 2, indigo: ch 1, turn, sc in back loop of each st across. (10)",
        "Rows 3–4, weld: ch 1, turn, sc in back loop of each st across. (10)",
        "Rows 5–55, in the same stripes: ch 1, turn, sc in back loop of each st across. (10)",
        "Row 56, weld: ch 1, turn, sc through back loop of each st and the foundation edge together across. (10)",
        "Round 1, indigo: sc in each row end around. (56)",
        "Round 2, indigo: sc in each st around. (56)",
        "Rounds 3–4, weld: sc in each st around. (56)",
        "Round 12, weld: 2 sc, [sc2tog, 5 sc] × 6, sc2tog, 4 sc. (43)",
        "Last: fasten off, gather 9 sts.",
    ] {
        assert!(text.lines().any(|l| l == line), "{line}\n\n{text}");
    }
}

#[test]
fn uk_text_has_no_us_word() {
    let text = text(Terms::Uk, Units::Inches);
    let body = text.split_once("Size").unwrap().1;
    // Lengths that are no part of the hat are told in both units.
    let body =
        ["15 cm (6 in)", "30 cm (12 in)", "40 cm (16 in)"].iter().fold(body.to_owned(), |text, both| text.replace(both, ""));
    for us in ["sc2tog", "sc ", "single crochet", "skip", "auge", "yarn over", " cm", " m "] {
        assert!(!body.contains(us), "{us}: {text}");
    }
    for uk in ["dc2tog", "double crochet", "Tension", "yarn round hook", " in ", " yd"] {
        assert!(body.contains(uk), "{uk}: {text}");
    }
}

#[test]
fn only_lines_of_work_begin_as_such() {
    for terms in [Terms::Us, Terms::Uk] {
        for line in text(terms, Units::Centimetres).lines() {
            if line.starts_with("Row ") || line.starts_with("Rows ") || line.starts_with("Round") {
                assert!(line.contains(": ") && line.ends_with(')'), "{line}");
            }
            assert!(!line.contains("  ") && line.trim() == line, "{line:?}");
        }
    }
}

#[test]
fn a_hat_of_one_colour_names_none() {
    let (mut hat, mut spec) = (sample::hat(), sample::spec());
    hat.band_rows.iter_mut().for_each(|c| *c = Colour(0));
    hat.rounds.iter_mut().for_each(|r| r.colour = Colour(0));
    spec.topper = None;
    hat.topper = None;
    let text = print(&hat, &spec, &about(Terms::Us, Units::Centimetres));
    assert!(text.contains("\nRows 2–55: ch 1, turn, sc in back loop of each st across. (10)\n"), "{text}");
    assert!(text.contains("\nRounds 2–9: sc in each st around. (56)\n"), "{text}");
    assert!(!text.contains("weld:"), "{text}");
}

#[test]
fn names_cannot_break_a_line() {
    let names = ["in\ndigo: x", ""];
    let about = About { colour_names: &names, ..about(Terms::Us, Units::Centimetres) };
    assert_eq!(about.colour(Colour(0)), "in digo  x");
    assert_eq!(about.colour(Colour(1)), "colour 2");
    assert_eq!(about.colour(Colour(5)), "colour 6");
}

/// A colour's line has what its ball band says, as far as that is known, and the lengths say what they rest on.
#[test]
fn materials_name_the_yarn_and_how_it_is_known() {
    let (hat, mut spec) = (sample::hat(), sample::spec());
    let told = |spec: &HatSpec, units| print(&hat, spec, &about(Terms::Us, units));
    let usual = told(&spec, Units::Centimetres);
    for line in [
        "Indigo: about 71 m (54 to 89); 2 balls of Boathouse wool, 80 m.",
        "Weld: about 60 m (45 to 75); 1 ball of 80 m.",
        "The lengths rest on 5.8 cm of yarn a stitch, estimated from the width of a stitch, right to 25 % either way, 9 times in 10; \
         ends and joins are in them.",
        "The balls hold at least 20 % more than the estimate, to be enough 19 times in 20. Buy each colour in one dye lot.",
    ] {
        assert!(usual.lines().any(|l| l == line), "{line}\n\n{usual}");
    }
    spec.balls[0].grams = Some(Mass::from_grams(50.0));
    spec.balls[0].weight = YarnWeight::new(5).ok();
    spec.yarn_use.swatch_kept = true;
    let known = told(&spec, Units::Centimetres);
    assert!(
        known.contains("\nIndigo: about 71 m (54 to 89), 45 g; 2 balls of Boathouse wool, weight 5, 50 g = 80 m.\n"),
        "{known}"
    );
    assert!(known.contains("; ends and joins are in them, and a swatch.\n"), "{known}");
    let inches = told(&spec, Units::Inches);
    assert!(
        inches.contains("\nIndigo: about 78 yd (59 to 98), 1.6 oz; 2 balls of Boathouse wool, weight 5, 1.8 oz = 87 yd.\n"),
        "{inches}"
    );
}

#[test]
fn a_tassel_is_made_as_a_tassel() {
    let (mut hat, spec) = (sample::hat(), sample::spec());
    hat.topper = Some(TopperPlan { kind: TopperKind::Tassel, size: Length::from_cm(10.0), wraps: 36, colour: None });
    for terms in [Terms::Us, Terms::Uk] {
        let text = print(&hat, &spec, &about(terms, Units::Centimetres));
        for says in [
            "\nTassel\n------\n1. Wind 36 wraps around a stiff card or form 10.0 cm wide, 18 of each colour: indigo, weld.\n2. Pass a strand of 30 cm",
            "cut the loops at the other edge.\n3. Wind one end of the tie twice around all strands a fifth of the way down",
            "a stiff card or form 10.0 cm wide for the tassel.",
            "the tassel is tied through it.",
            "best leave the tassel off:",
        ] {
            assert!(text.contains(says), "{says}\n\n{text}");
        }
        assert!(!text.to_lowercase().contains("pom-pom"), "{text}");
    }
}

/// What a designer adds stands where it belongs, and what they leave empty is not told.
#[test]
fn the_designers_words_are_told() {
    let (hat, spec) = (sample::hat(), sample::spec());
    let designer = Designer {
        introduction: "For cold mornings.\r\n\r\nRow 1: of the boat, too.",
        credit: "the rowing club.",
        edition: "2",
        date: " 3 May 2026 ",
        tested: "Two made it.\nBoth fit.",
        ..Designer::default()
    };
    let about = About { designer, ..about(Terms::Us, Units::Centimetres) };
    let sheet = lay_out(&write(&hat, &spec), &hat, &spec, &about);
    assert_eq!(sheet.version, "By the rowing club; edition 2; 3 May 2026. Made with Hatwright 0.1.0, planner 3.");
    let (first, last) = (&sheet.sections[0], &sheet.sections[sheet.sections.len() - 1]);
    assert_eq!(
        (first.heading, &first.before[..]),
        ("Introduction", &["For cold mornings.".into(), "— Row 1: of the boat, too.".into()][..])
    );
    assert_eq!((last.heading, &last.before[..]), ("Tested", &["Two made it.".into(), "Both fit.".into()][..]));
    let dated = About { designer: Designer { date: "3 May 2026", ..Designer::default() }, ..about };
    let sheet = lay_out(&write(&hat, &spec), &hat, &spec, &dated);
    assert_eq!(sheet.version, "3 May 2026. Made with Hatwright 0.1.0, planner 3.");
    assert_eq!((sheet.sections[0].heading, sheet.hand), ("Size", None));
    in_language(Language::Spanish, || {
        let sheet = lay_out(&write(&hat, &spec), &hat, &spec, &about);
        assert_eq!(sheet.version, "Por the rowing club; edición 2; 3 May 2026. Hecho con Hatwright 0.1.0, planificador 3.");
        assert_eq!(sheet.sections[0].before[1], "Row 1: of the boat, too.", "no line of a Spanish pattern");
    });
}

#[test]
fn a_left_handed_sheet_says_so_at_its_top() {
    let (hat, spec) = (sample::hat(), sample::spec());
    let about = About { hand: Hand::Left, ..about(Terms::Us, Units::Centimetres) };
    let sheet = lay_out(&write(&hat, &spec), &hat, &spec, &about);
    assert_eq!(sheet.notices(), [sheet.terms.clone(), sheet.hand.clone().unwrap()]);
    let third = sheet.text().lines().nth(2).unwrap().to_owned();
    assert!(third.starts_with("Written for left-handed work: ") && third.contains(" from left to right. "), "{third}");
    assert!(sheet.brief.starts_with("US crochet terms: sc = UK dc") && sheet.brief.ends_with("; left-handed"), "{}", sheet.brief);
}

#[test]
fn hooks_are_told_with_their_labels_and_what_they_are_for() {
    let (hat, mut spec) = (sample::hat(), sample::spec());
    let hook = |mm: f64| Some(Length::from_cm(mm / 10.0));
    for (body, band, told, which) in [
        (None, None, "The hook that made the swatch, a stitch marker", None),
        (hook(5.0), hook(5.0), "A 5 mm hook (US H-8, old UK 6), a stitch marker", None),
        (
            hook(5.0),
            hook(4.0),
            "A 5 mm hook (US H-8, old UK 6) for the body, a 4 mm hook (US G-6, old UK 8) for the band, a stitch marker",
            Some("Which hook: 4 mm for the band, 5 mm from the first round of the body on."),
        ),
        (hook(5.5), None, "A 5.5 mm hook (US I-9, old UK 5) for the body, the hook that made the other part's swatch, a", None),
        (hook(7.0), hook(7.0), "A 7 mm hook (old UK 2), a stitch marker", None),
        (hook(3.75), hook(3.75), "A 3.75 mm hook (US F-5), a stitch marker", None),
        (hook(8.1), hook(8.1), "An 8.1 mm hook, a stitch marker", None),
    ] {
        (spec.hook, spec.band.hook) = (body, band);
        let text = print(&hat, &spec, &about(Terms::Us, Units::Inches));
        assert!(text.lines().any(|line| line.starts_with(told)), "{told}\n\n{text}");
        assert_eq!(text.lines().find(|line| line.starts_with("Which hook: ")), which);
    }
    in_language(Language::Spanish, || {
        (spec.hook, spec.band.hook) = (hook(5.5), hook(5.5));
        let text = print(&hat, &spec, &about(Terms::Spanish, Units::Centimetres));
        let told = "\nUna aguja de ganchillo de 5,5 mm (EE. UU. I-9, n.º 5 británico antiguo), un marcador de puntos, ";
        assert!(text.contains(told), "{text}");
    });
}

#[test]
fn both_units_are_told_where_both_are_asked_for() {
    let (hat, spec) = (sample::hat(), sample::spec());
    let text = print(&hat, &spec, &about(Terms::Us, Units::Both));
    for line in [
        "Around, relaxed: 46.7 cm (18.4 in) (6.3 % smaller than the 49.8 cm / 19.6 in head). Stretched, it reaches a head of 51.3 cm \
         (20.2 in).",
        "Indigo: about 71 m (54 to 89), 78 yd (59 to 98); 2 balls of Boathouse wool, 80 m (87 yd).",
        "Body: 12 stitches and 15 rounds to 10 cm (4 in) in single crochet, worked in the round.",
    ] {
        assert!(text.lines().any(|l| l == line), "{line}\n\n{text}");
    }
}

/// The sections and lines of a Spanish sheet are those of the English one, part by part.
#[test]
fn a_spanish_sheet_is_the_same_in_spanish() {
    let (hat, spec) = (sample::hat(), sample::spec());
    let laid = |terms| lay_out(&write(&hat, &spec), &hat, &spec, &about(terms, Units::Centimetres));
    let (english, spanish) = (laid(Terms::Us), in_language(Language::Spanish, || laid(Terms::Spanish)));
    let parts = |sheet: &Sheet| -> Vec<_> { sheet.sections.iter().map(|s| (s.part, s.lines.len())).collect() };
    assert_eq!(parts(&english), parts(&spanish));
    let text = spanish.text();
    for line in [
        "Base, indigo: 11 cad.",
        "Hilera 1, indigo: pb en la 2.ª cad desde la aguja y en cada cad hasta el final. (10)",
        "Hileras 5–55, con las mismas rayas: 1 cad, girar, pb en la hebra trasera de cada p hasta el final. (10)",
        "Vuelta 1, indigo: pb en cada extremo de hilera alrededor. (56)",
        "Vuelta 12, weld: 2 pb, [pb2jun, 5 pb] × 6, pb2jun, 4 pb. (43)",
        "Final: cortar el hilo y rematar, fruncir 9 ps.",
        "Cuerpo: 12 puntos y 15 vueltas en 10 cm, en punto bajo, tejiendo en redondo.",
        "Indigo: unos 71 m (54 a 89); 2 ovillos de Boathouse wool, 80 m.",
    ] {
        assert!(text.lines().any(|l| l == line), "{line}\n\n{text}");
    }
}
