//! Every style, direction, band, way and fabric, laid out: the text keeps its form, and says what a maker asks.

use super::{About, Label, PartKind, Terms, lay_out, write};
use crate::figures::Units;
use hatwright_sizing::{
    BandKind, Begun, Edge, Fabric, Hat, HatSpec, Head, Length, Loops, SideTop, Stitch, Style, TopKind, Way, plan,
};
use hatwright_words::{Language, in_language};
use std::collections::HashSet;

/// Every hat that can be planned of these choices, on an adult's head.
fn every_hat(mut each: impl FnMut(&HatSpec, &Hat)) -> usize {
    let mut count = 0;
    for style in Style::ALL {
        for begun in [Begun::Band, Begun::Crown] {
            for kind in [BandKind::Sideways, BandKind::Around, BandKind::None] {
                for (i, fabric) in Fabric::ALL.iter().copied().enumerate() {
                    for way in [Way::Spiral, Way::Joined] {
                        let mut spec = HatSpec { style, begun, fabric, way, ..HatSpec::default() };
                        spec.head = Head::Measured(Length::from_cm(57.0));
                        spec.band.kind = kind;
                        // Other bands with other bodies, and each kind of edge in its turn.
                        spec.band.fabric = Fabric::ALL[(i * 5 + 1) % Fabric::ALL.len()];
                        spec.band.height = hatwright_sizing::Stitches::new(6);
                        spec.band.fold = Length::ZERO;
                        spec.band.edge = if i % 2 == 0 { Edge::Chainless } else { Edge::LooseChain };
                        spec.shape.side_top = if i % 2 == 0 { SideTop::Gathered } else { SideTop::ShortRows };
                        spec.shape.flap_tie = Length::from_cm(20.0);
                        if i % 3 == 0 {
                            spec.body_stripes.truncate(1);
                            spec.band.stripes.truncate(1);
                        }
                        if let Ok(hat) = plan(&spec) {
                            count += 1;
                            each(&spec, &hat);
                        }
                    }
                }
            }
        }
    }
    count
}

fn about(terms: Terms) -> About<'static> {
    About {
        title: "Rowing club cap",
        colour_names: &["indigo", "weld"],
        yarn_names: &[],
        terms,
        units: Units::Inches,
        version: "0.1.0",
        ..About::default()
    }
}

fn text(spec: &HatSpec, hat: &Hat, terms: Terms) -> String {
    lay_out(&write(hat, spec), hat, spec, &about(terms)).text()
}

#[test]
fn every_text_keeps_its_form() {
    let count = every_hat(|spec, hat| {
        for terms in [Terms::Us, Terms::Uk, Terms::Spanish] {
            let language = if terms == Terms::Spanish { Language::Spanish } else { Language::English };
            let text = in_language(language, || text(spec, hat, terms));
            let nouns = match language {
                Language::English => ["Row ", "Rows ", "Round ", "Rounds "],
                Language::Spanish => ["Hilera ", "Hileras ", "Vuelta ", "Vueltas "],
            };
            for line in text.lines() {
                let work = nouns.iter().any(|noun| line.starts_with(noun));
                assert!(!work || (line.contains(": ") && line.ends_with(')')), "{line}\n{text}");
                let clean = !line.contains("  ") && line.trim() == line && !line.contains("..") && !line.contains(" ,");
                assert!(clean && !line.contains(". ."), "{line:?}\n{text}");
            }
            let (us, uk) =
                (["skip", "yarn over", " sc2tog", " sc ", "hdc"], ["miss ", "yarn round hook", "tr2tog", " tr ", "htr"]);
            let foreign = match terms {
                Terms::Us => &uk[..],
                Terms::Uk => &us[..],
                // What is English there, whatever it says, has one of these.
                Terms::Spanish => &[" the ", " and ", " of ", " is ", " with ", " to ", " round "][..],
            };
            let heading = if language == Language::Spanish { "\nMedidas\n" } else { "\nAbbreviations\n" };
            let body = text.split_once(heading).unwrap().1;
            assert_eq!(foreign.iter().find(|word| body.contains(*word)), None, "{text}");
        }
    });
    assert!(count > 500, "{count}");
}

const ALL: [Stitch; 4] = [Stitch::Slip, Stitch::Single, Stitch::HalfDouble, Stitch::Double];

/// How a language tells what is abbreviated.
struct Told {
    language: Language,
    terms: Terms,
    heading: &'static str,
    chain: &'static str,
    stitch: [&'static str; 2],
    together: &'static str,
    posts: &'static [(&'static str, bool)],
    foundation: fn(&str) -> String,
    ring: &'static str,
    join: [&'static str; 2],
    loops: &'static [&'static str],
    loops_head: &'static str,
    row_end: [&'static str; 2],
}

const ENGLISH: Told = Told {
    language: Language::English,
    terms: Terms::Us,
    heading: "Abbreviations",
    chain: "ch",
    stitch: ["st", "sts"],
    together: "2tog",
    posts: &[("fp", true), ("bp", true)],
    foundation: |short| ["foundation ", short].concat(),
    ring: "adjustable ring",
    join: ["join", "join into a ring"],
    loops: &["back loop", "front loop"],
    loops_head: "back loop, front loop",
    row_end: ["row end", "row ends"],
};

const TOLD: [Told; 3] = [
    ENGLISH,
    Told { terms: Terms::Uk, ..ENGLISH },
    Told {
        language: Language::Spanish,
        terms: Terms::Spanish,
        heading: "Abreviaturas",
        chain: "cad",
        stitch: ["p", "ps"],
        together: "2jun",
        posts: &[("rd", false), ("rt", false)],
        foundation: |short| [short, " de base"].concat(),
        ring: "anillo ajustable",
        join: ["unir", "unir en anillo"],
        loops: &["hebra trasera", "hebra delantera", "hebras traseras", "hebras delanteras"],
        loops_head: "hebra trasera, hebra delantera",
        row_end: ["extremo de hilera", "extremos de hilera"],
    },
];

impl Told {
    /// The short forms that a text needs, in the order of the list. `work` is its lines, `prose` what stands around them, both without the list.
    fn needed(&self, work: &str, prose: &str) -> Vec<String> {
        let [join, into_a_ring] = self.join;
        let words = self.terms.words();
        let slip = words.short(Stitch::Slip);
        // "sl st" is one word, and closing a foundation no joining of rounds.
        let bare = work.replace(into_a_ring, "").replace(slip, "slip");
        let own: HashSet<&str> = bare.split(|c: char| !c.is_alphanumeric()).collect();
        let has = |word: &str| own.contains(word);
        let short = |stitch| if stitch == Stitch::Slip { "slip" } else { words.short(stitch) };
        let posts = |stitch| -> Vec<String> {
            let post = |(mark, first): &(&str, bool)| {
                if *first { [mark, short(stitch)].concat() } else { [short(stitch), mark].concat() }
            };
            self.posts.iter().map(post).collect()
        };
        let together = |stitch| [short(stitch), self.together].concat();
        let foundation = |stitch| (self.foundation)(short(stitch));
        // Their number comes before them.
        let begun = |stitch| bare.contains(&[" ", &foundation(stitch)].concat());
        // Longer names have shorter ones in them.
        let mut spoken = prose.to_owned();
        let mut named = [false; 4];
        for stitch in [Stitch::HalfDouble, Stitch::Double, Stitch::Single, Stitch::Slip] {
            named[stitch as usize] = spoken.contains(words.name(stitch));
            spoken = spoken.replace(words.name(stitch), "");
        }
        let both = [work, prose].concat();
        let mut list = Vec::new();
        let mut needs = |needed: bool, head: &str| list.extend(needed.then(|| head.to_owned()));
        let founded = ALL.iter().any(|stitch| begun(*stitch));
        needs(has(self.chain) || founded || work.contains(self.ring), self.chain);
        for stitch in ALL {
            let made = has(short(stitch)) || has(&together(stitch)) || posts(stitch).iter().any(|post| has(post));
            needs(made || named[stitch as usize], words.short(stitch));
        }
        for stitch in &ALL {
            needs(has(&together(*stitch)), &together(*stitch));
        }
        for stitch in &ALL {
            needs(posts(*stitch).iter().any(|post| has(post)), &posts(*stitch).join(", "));
        }
        for stitch in &ALL {
            needs(begun(*stitch), &foundation(*stitch));
        }
        needs(work.contains(self.ring), self.ring);
        needs(has(join), join);
        needs(self.loops.iter().any(|loops| both.contains(loops)), self.loops_head);
        needs(self.row_end.iter().any(|end| both.contains(end)), self.row_end[0]);
        needs(self.stitch.iter().any(|stitch| has(stitch)), &self.stitch.join(", "));
        needs(work.contains('['), "[ ] × 6");
        needs(true, "(56)");
        list
    }
}

/// The list has what the lines abbreviate, or the text speaks of, and nothing else: in all three systems of terms.
#[test]
fn abbreviations_are_those_that_are_used() {
    for told in &TOLD {
        let count = in_language(told.language, || {
            every_hat(|spec, hat| {
                let sheet = lay_out(&write(hat, spec), hat, spec, &about(told.terms));
                let (list, rest): (Vec<_>, Vec<_>) = sheet.sections.iter().partition(|s| s.heading == told.heading);
                let heads: Vec<&str> = list[0].before.iter().filter_map(|entry| entry.split(": ").next()).collect();
                let work: Vec<&str> = rest.iter().flat_map(|s| &s.lines).map(|line| &*line.text).collect();
                let prose: Vec<&str> = rest.iter().flat_map(|s| s.before.iter().chain(&s.after)).map(|text| &**text).collect();
                let needed = told.needed(&work.join("\n"), &prose.join("\n"));
                assert_eq!(heads, needed, "{}", sheet.text());
            })
        });
        assert!(count > 500, "{count}");
    }
}

#[test]
fn every_part_says_how_it_begins_and_the_last_how_it_ends() {
    every_hat(|spec, hat| {
        let pattern = write(hat, spec);
        let sheet = lay_out(&pattern, hat, spec, &about(Terms::Us));
        let text = sheet.text();
        let says = |what: &str| assert!(text.contains(what), "{what}\n{text}");
        let rounds = pattern.parts.iter().flat_map(|p| &p.lines).any(|line| matches!(line.label, Label::Round(..)));
        if rounds {
            says(if spec.goes() == Way::Joined {
                "closes with a slip stitch in its first stitch"
            } else {
                "in a spiral: never turn"
            });
        }
        if spec.begins() == Begun::Crown {
            says("in an adjustable ring");
            assert!(!text.contains("Last: "), "{text}");
        }
        let looped = matches!(spec.fabric.row().loops, hatwright_sizing::Loops::Back | hatwright_sizing::Loops::Front);
        if looped && spec.style.is_round() {
            says(" loop only.");
        }
        for part in &pattern.parts {
            match part.kind {
                PartKind::Flaps => says("free for the forehead"),
                PartKind::Brim => says("To keep it stiff"),
                PartKind::Joining => says("Turn the hat right side out"),
                PartKind::Seam => says("slip stitch the two together"),
                PartKind::Closing => says("Draw up"),
                PartKind::Band => says("The last row closes the ring"),
                _ => {}
            }
        }
        if spec.style == Style::Tam {
            says("over a plate");
        }
        if spec.style == Style::Slouch && hat.rounds.iter().any(|r| r.increases.get() > 0) && spec.begins() == Begun::Band {
            says("widens all at once");
        }
        let tall = spec.fabric.row().stitch > hatwright_sizing::Stitch::Single;
        if tall && spec.style.is_round() && spec.goes() == Way::Spiral {
            assert!(text.contains("counts like any other.") || hat.band == BandKind::Around, "{text}");
        }
        let open = pattern.parts.last().is_some_and(|part| part.kind != PartKind::Closing);
        let last_in_rounds = pattern.parts.last().is_some_and(|part| part.lines.iter().any(|line| line.kind.is_some()));
        if open && last_in_rounds {
            says("fasten off, and weave the end in so that the edge runs on evenly.");
        }
    });
}

/// What a part says around its lines, and what comes after the last: everything but the lists of the beginning.
fn prose(spec: &HatSpec, hat: &Hat, about: &About<'_>) -> Vec<String> {
    let sheet = lay_out(&write(hat, spec), hat, spec, about);
    let from = sheet.sections.iter().position(|section| section.part.is_some()).unwrap_or_default();
    sheet.sections.into_iter().skip(from).flat_map(|section| section.before.into_iter().chain(section.after)).collect()
}

/// Every paragraph is whole sentences in its own language; lengths in both units, so that the points of abbreviations are seen too.
#[test]
fn every_paragraph_is_whole_in_every_language() {
    let english = [
        " the ", " and ", " of ", " with ", " in ", "round", "stitch", "yarn", "hook", "loop", "Fasten", " row", "crown", "brim",
        " sc", "hdc", "dc ",
    ];
    let spanish =
        [" el ", " la ", " de ", " con ", " y ", "vuelta", "punto", "hilo", "aguja", "hebra", "hilera", "copa", " pb", "mpa"];
    for (language, terms, foreign) in [
        (Language::English, Terms::Us, &spanish[..]),
        (Language::English, Terms::Uk, &spanish),
        (Language::Spanish, Terms::Spanish, &english),
    ] {
        in_language(language, || {
            every_hat(|spec, hat| {
                let about = About { units: Units::Both, ..about(terms) };
                for text in prose(spec, hat, &about) {
                    assert!(text.ends_with(['.', '?']) && text.trim() == text, "{text:?}");
                    let torn = ["  ", "..", " .", " ,", ". .", ",,", "{", "}", "()"].into_iter().find(|torn| text.contains(torn));
                    assert_eq!(torn, None, "{text:?}");
                    assert_eq!(foreign.iter().find(|word| text.contains(*word)), None, "{text:?}");
                }
            });
        });
    }
}

#[test]
fn steps_are_numbered_in_working_order() {
    for (language, terms) in [(Language::English, Terms::Us), (Language::Spanish, Terms::Spanish)] {
        in_language(language, || {
            every_hat(|spec, hat| {
                let sheet = lay_out(&write(hat, spec), hat, spec, &about(terms));
                let topper = hat.topper.map(|topper| crate::say::part_of_topper(topper.kind));
                let numbered = |heading: &str| heading == hatwright_words::finish::heading() || Some(heading) == topper;
                let mut seen = 0;
                for section in &sheet.sections {
                    let list = if section.part == Some(PartKind::Closing) { &section.after } else { &section.before };
                    if section.part == Some(PartKind::Closing) || section.part.is_none() && numbered(section.heading) {
                        seen += 1;
                        for (n, step) in (1..).zip(list) {
                            assert!(step.starts_with(&format!("{n}. ")), "{step}");
                        }
                        assert!(list.len() > 1, "{list:?}");
                    }
                }
                assert_eq!(
                    seen,
                    1 + usize::from(topper.is_some()) + usize::from(hat.top.is_some_and(|t| t.kind != TopKind::Ring))
                );
            });
        });
    }
}

/// Nobody has to ask which hook, which loops, which side, where the marker goes, or how the hat is washed.
#[test]
fn a_stranger_is_told_what_strangers_ask() {
    every_hat(|spec, hat| {
        let mut spec = spec.clone();
        let told = |spec: &HatSpec| prose(spec, hat, &about(Terms::Us)).join("\n");
        let text = told(&spec);
        let rounds = !hat.rounds.is_empty();
        let looped = |fabric: Fabric| matches!(fabric.row().loops, Loops::Back | Loops::Front);
        if rounds {
            let marked =
                if spec.goes() == Way::Joined { "Mark the first stitch of each round" } else { "the round is done: take it out" };
            assert!(text.contains(marked), "{text}");
            assert!(text.contains("is the outside of the hat.") || text.contains("turn the work here, once"), "{text}");
        }
        if spec.style != Style::EarWarmer && !looped(spec.fabric) && spec.fabric.row().loops != Loops::Posts {
            assert!(text.contains("put the hook under both loops"), "{text}");
        }
        if hat.flaps.is_some() {
            assert!(text.contains("fasten off, and knot the end."), "{text}");
        }
        assert!(text.contains("Do not wring it: press the water out in a towel"), "{text}");
        // With two hooks, each part names its own, even where only one of them is known.
        let two = hat.band != BandKind::None && spec.style != Style::EarWarmer;
        for (body, band) in [(Some(5.0), Some(4.0)), (Some(5.0), None), (None, Some(4.0))] {
            (spec.hook, spec.band.hook) = (body.map(|mm| Length::from_cm(mm / 10.0)), band.map(|mm| Length::from_cm(mm / 10.0)));
            let text = told(&spec);
            let of = |known: bool, size: &str, part: &str| {
                if known {
                    ["with the ", size, " hook"].concat()
                } else {
                    ["with the hook that made the ", part, "'s swatch"].concat()
                }
            };
            if two {
                assert!(text.contains(&of(body.is_some(), "5 mm", "body")), "{text}");
                assert!(text.contains(&of(band.is_some(), "4 mm", "band")), "{text}");
            }
        }
    });
}
