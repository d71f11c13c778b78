//! One hat, whatever the words: its pattern in US terms, in UK terms and in Spanish, worked from its print by the interpreter.

use hatwright_pattern::figures::Units;
use hatwright_pattern::written::{About, Terms, print};
use hatwright_sizing::{Hat, HatSpec, plan};
use hatwright_tests::interpreter::{self, Step, Worked, work};
use hatwright_tests::random::random_hats;
use hatwright_words::{Language, in_language};

const NAMES: [&str; 3] = ["índigo", "gualda", "cruda, lavada dos veces"];

/// A hat's printed pattern in one language and its terms.
fn printed(spec: &HatSpec, hat: &Hat, (language, terms): (Language, Terms), units: Units) -> String {
    let about = About { title: "Vuelta 3, gorro", colour_names: &NAMES, terms, units, version: "0.1.0", ..About::default() };
    in_language(language, || print(hat, spec, &about))
}

/// What a hat's patterns make, in US terms, UK terms and Spanish: one and the same hat, of the planned counts.
fn made_in_all_terms(name: &str, spec: &HatSpec, hat: &Hat) -> Worked {
    let all = [
        ((Language::English, Terms::Us), Units::Centimetres),
        ((Language::English, Terms::Uk), Units::Both),
        ((Language::Spanish, Terms::Spanish), Units::Centimetres),
        ((Language::Spanish, Terms::Spanish), Units::Both),
    ];
    let [us, uk, spanish, both] = all.map(|(told, units)| {
        let text = printed(spec, hat, told, units);
        work(&text).unwrap_or_else(|fault| panic!("{name}, {told:?}: {fault}\n{spec:?}\n{text}"))
    });
    assert!(us == uk && us == spanish && us == both, "{name}: three systems of terms make different hats\n{spec:?}");
    let counts: Vec<u32> = us.rounds.iter().map(interpreter::Round::stitches).collect();
    let planned: Vec<u32> = hat.rounds.iter().map(|round| round.after.get()).collect();
    assert_eq!(counts, planned, "{name}: {spec:?}");
    us
}

/// Every sample of the club is worked from its print in US terms, UK terms and Spanish.
#[test]
fn the_clubs_hats_are_the_same_in_all_terms() {
    let id = hatwright_project::ProjectId::from_bits;
    let samples = hatwright_project::samples(core::array::from_fn(|i| id(i as u64 + 1)));
    let mut count = 0;
    for project in [hatwright_project::example(id(0))].into_iter().chain(samples) {
        made_in_all_terms(&project.name, &project.spec, &plan(&project.spec).expect("the club's hats can be made"));
        count += 1;
    }
    assert_eq!(count, 11);
}

/// So are random hats, among them all that the grammar has words for.
#[test]
fn random_hats_are_the_same_in_all_terms() {
    const HATS: usize = 1_200;
    let (mut flaps, mut joins, mut seams, mut posts, mut loops, mut ties) = (0, 0, 0, 0, 0, 0);
    let mut count = 0;
    for (seed, spec, hat) in random_hats(HATS) {
        let made = made_in_all_terms(&format!("seed {seed}"), &spec, &hat);
        flaps += u32::from(!made.flap.is_empty());
        ties += u32::from(made.tie > 0);
        joins += u32::from(made.band_join.is_some());
        seams += u32::from(made.seamed);
        posts += u32::from(made.rounds.iter().any(|round| round.steps.contains(&Step::FrontPost)));
        loops += u32::from(made.rounds.iter().any(|round| round.loops != interpreter::Loops::Both));
        count += 1;
    }
    assert_eq!(count, HATS);
    for seen in [flaps, ties, joins, seams, posts, loops] {
        assert!(seen >= 10, "{flaps} {ties} {joins} {seams} {posts} {loops}");
    }
}
