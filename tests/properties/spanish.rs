//! What a maker is told about a hat, in Spanish: all of it, in whole sentences, with the numbers of the English ones.

use hatwright_pattern::figures::Units;
use hatwright_pattern::say;
use hatwright_project::{ProjectId, example, samples};
use hatwright_sizing::{Breach, Colour, Day, Hat, HatSpec, Length, Refusal, fit_table, head_size, plan, room_to_grow};
use hatwright_tests::random::{random_hats, random_spec};
use hatwright_words::{Language, in_language};

const CM: Units = Units::Centimetres;

fn planned(spec: &HatSpec) -> Hat {
    plan(spec).unwrap_or_else(|refusal| panic!("{refusal:?}"))
}

/// The club's hats and three hundred random ones, with their specs.
fn many_hats() -> impl Iterator<Item = (HatSpec, Hat)> {
    let id = ProjectId::from_bits;
    let club = samples([0, 1, 2, 3, 4, 5, 6, 7, 8, 9].map(|bits| id(bits + 1))).into_iter().chain([example(id(0))]);
    let club = club.map(|project| (project.spec.clone(), planned(&project.spec)));
    club.chain(random_hats(300).map(|(_, spec, hat)| (spec, hat)))
}

/// Every sentence about a hat that is not part of its pattern.
fn sentences(spec: &HatSpec, hat: &Hat, units: Units) -> Vec<String> {
    let mut all = say::reasons(hat, spec, units);
    all.extend([say::fit_sentence(hat, units), say::ribbed_sentence(hat)]);
    all.extend([say::hat_labels_sentence(hat.head.girth), say::stand_in_sentence(hat.head.girth, units)]);
    all.extend(say::percentile_sentence(&spec.head, &head_size(&spec.head), units));
    all.extend(hat.remarks.iter().map(|r| say::remark(r, hat, units)));
    all.extend(say::doubt_sentences(hat, units));
    all.extend(room_to_grow(spec).map(|larger| say::growing_sentence(&larger, hat, units)));
    all
}

/// The same for what is no sentence: lines of a list, cells of a table.
fn clauses(hat: &Hat, units: Units) -> Vec<String> {
    let lines = hat.neighbours.iter().flat_map(|size| [say::size_line(size, hat, units), say::size_effect(size, hat, units)]);
    let table = fit_table(hat.fit.least, hat.fit.most).map(|row| say::fit_row(&row));
    lines.chain(table.into_iter().flat_map(|(who, share)| [who, share])).collect()
}

/// Words that a Spanish sentence has only where somebody forgot to translate it.
const ENGLISH: [&str; 40] = [
    "stitch", "stitches", "round", "rounds", "row", "rows", "head", "heads", "the", "of", "with", "yarn", "band", "body", "hat",
    "crown", "swatch", "gauge", "wedge", "wedges", "and", "or", "from", "to", "is", "are", "it", "this", "that", "for", "not",
    "around", "larger", "smaller", "wide", "tall", "inches", "in", "year", "months",
];

/// The numbers of a text, in order of size, with a decimal point.
fn numbers(text: &str) -> Vec<String> {
    let text = text.replace(',', ".");
    let mut all: Vec<_> = text.split(|c: char| !c.is_ascii_digit() && c != '.').map(|n| n.trim_matches('.').to_owned()).collect();
    all.retain(|number| !number.is_empty());
    all.sort();
    all
}

fn check_spanish(spanish: &str, english: &str) {
    let words = || spanish.split(|c: char| !c.is_alphabetic()).map(str::to_lowercase);
    assert!(words().all(|word| !ENGLISH.contains(&&*word)), "{spanish}");
    for amiss in ["  ", "..", " .", " ,", "{", "}", "|", " :", "( ", " )"] {
        assert!(!spanish.contains(amiss), "{amiss:?} in {spanish}");
    }
    let point = spanish.as_bytes().windows(3).any(|w| w[0].is_ascii_digit() && w[1] == b'.' && w[2].is_ascii_digit());
    assert!(!point, "a decimal point in {spanish}");
    assert_eq!(spanish.matches('¿').count(), spanish.matches('?').count(), "{spanish}");
    assert!(spanish == spanish.trim() && !spanish.is_empty(), "{spanish:?}");
    assert_eq!(numbers(spanish), numbers(english), "{spanish} // {english}");
}

fn check_spanish_sentence(spanish: &str, english: &str) {
    check_spanish(spanish, english);
    assert!(spanish.ends_with('.'), "{spanish}");
    let first = spanish.chars().next().unwrap();
    assert!(first.is_uppercase() || first.is_ascii_digit() || first == '¿', "{spanish}");
    assert_ne!(spanish, english);
}

/// Says something in both languages, and gives each sentence's pair to a check.
fn in_both(say: impl Fn() -> Vec<String>, check: impl Fn(&str, &str)) -> usize {
    let (english, spanish) = (say(), in_language(Language::Spanish, &say));
    assert_eq!(english.len(), spanish.len());
    spanish.iter().zip(&english).for_each(|(spanish, english)| check(spanish, english));
    english.len()
}

#[test]
fn everything_about_a_hat_is_said_in_spanish() {
    let mut said = 0;
    for (spec, hat) in many_hats() {
        for units in [CM, Units::Inches, Units::Both] {
            said += in_both(|| sentences(&spec, &hat, units), check_spanish_sentence);
            in_both(|| clauses(&hat, units), check_spanish);
        }
    }
    assert!(said > 10_000, "{said}");
}

#[test]
fn every_refusal_is_said_in_spanish() {
    let refused = (0..).filter_map(|seed| plan(&random_spec(seed)).err());
    for refusal in refused.take(1_000) {
        for units in [CM, Units::Inches, Units::Both] {
            in_both(|| vec![say::refusal(&refusal, units)], check_spanish_sentence);
        }
    }
    // What a random hat never breaks.
    for breach in [Breach::WrongCount, Breach::NoSuchColour(Colour(7)), Breach::Dates, Breach::UnfitFabric, Breach::KeptRounds] {
        in_both(|| vec![say::refusal(&Refusal::Breach(breach), CM)], check_spanish_sentence);
    }
}

#[test]
fn every_day_of_wearing_is_said_in_spanish() {
    for days in (-40..12_000).chain([50_000]) {
        in_both(|| vec![say::dates_sentence(Day(0), Day(days))], check_spanish_sentence);
    }
}

/// The same sentences as the English ones elsewhere, read by eye. The trade's terms are from memory, no source.
#[test]
fn spanish_sentences_read_as_they_should() {
    let spec = example(ProjectId::from_bits(0)).spec;
    let hat = planned(&spec);
    in_language(Language::Spanish, || {
        assert_eq!(
            say::why_this_band(&hat, &spec, CM).unwrap(),
            "Un punto en cada uno de los 56 extremos de hilera de la banda: el contorno de la banda es de 46,7 cm; el del cuerpo, de \
             46,7 cm."
        );
        assert!(say::fit_sentence(&hat, CM).starts_with("Sirve para cabezas de 45,"), "{}", say::fit_sentence(&hat, CM));
        assert!(say::why_this_depth(&hat, &spec, CM).starts_with(
            "Para cubrir las orejas, un gorro baja desde el centro de la copa 0,395 veces el contorno de la cabeza (práctica habitual): "
        ));
        assert_eq!(say::dates_sentence(Day(0), Day(1_461)), "Ese día, quien lo lleve tendrá 4 años.");
        let refusal = Refusal::FoldBeyondBand { fold: Length::from_cm(9.0), band: Length::from_cm(8.3) };
        assert_eq!(
            say::refusal(&refusal, CM),
            "La banda solo mide 8,3 cm de alto, así que no se pueden doblar 9,0 cm. Dobla 8,3 cm o menos."
        );
    });
}
