//! Several sizes in one pattern: what is printed in brackets, read back by a reader of its own, is every size's own pattern.

use hatwright_pattern::figures::Units;
use hatwright_pattern::out::{OneSize, publish, text};
use hatwright_pattern::written::{About, Terms, print};
use hatwright_project::{ProjectId, example, samples};
use hatwright_sizing::{HatSpec, Head, Layout, Length, plan};
use hatwright_tests::random::random_spec;
use hatwright_words::{Language, in_language};

/// Beginnings of lines of work in English and Spanish; the latter's as `written/mod.rs` lists them.
const LABELS: [&str; 18] = [
    "Row ",
    "Rows ",
    "Round ",
    "Rounds ",
    "Foundation",
    "Join",
    "Seam",
    "Tie",
    "Last",
    "Hilera ",
    "Hileras ",
    "Vuelta ",
    "Vueltas ",
    "Base",
    "Unión",
    "Costura",
    "Cordón",
    "Final",
];
/// A noun for one and for several.
const NOUNS: [(&str, &str); 4] = [("Row ", "Rows "), ("Round ", "Rounds "), ("Hilera ", "Hileras "), ("Vuelta ", "Vueltas ")];

fn about(terms: Terms) -> About<'static> {
    About {
        title: "Rowing club caps",
        colour_names: &["indigo", "weld", "madder", "walnut", "undyed", "logwood"],
        terms,
        units: Units::Centimetres,
        version: "0.1.0",
        ..About::default()
    }
}

fn is_work(line: &str) -> bool {
    let label = line.split_once(':').map_or("", |(label, _)| label);
    // `Final: …` is work, `Finalmente …` would be none.
    LABELS.iter().any(|noun| {
        label.strip_prefix(noun).is_some_and(|rest| noun.ends_with(' ') || rest.is_empty() || rest.starts_with([',', ' ']))
    })
}

/// Reads a number, or a span of them, or the tick or dash of a size that has the line or has it not, at the beginning of a text.
fn number(text: &str) -> Option<(&str, &str)> {
    let end = text.find(|c: char| !(c.is_ascii_digit() || c == '–' || c == '✓')).unwrap_or(text.len());
    (end > 0).then(|| text.split_at(end))
}

/// What a line in brackets is for the size at a place of some; `None` where it has a dash for it.
fn own(line: &str, place: usize, of: usize) -> Option<String> {
    let mut out = String::new();
    let mut rest = line;
    while let Some(c) = rest.chars().next() {
        let after_letter = out.ends_with(char::is_alphanumeric);
        let Some((first, after)) = number(rest).filter(|_| !after_letter) else {
            out.push(c);
            rest = &rest[c.len_utf8()..];
            continue;
        };
        let listed = after.strip_prefix(" (").and_then(|list| list.split_once(')')).and_then(|(list, after)| {
            let all: Vec<&str> = list.split([',', ';']).map(str::trim).collect();
            let numbers = all.iter().all(|one| number(one).is_some_and(|(_, rest)| rest.is_empty()));
            (of > 1 && numbers && all.len() == of - 1).then_some((all, after))
        });
        let (number, after) = match &listed {
            Some((all, after)) => (if place == 0 { first } else { all[place - 1] }, *after),
            None => (first, after),
        };
        if number == "–" && listed.is_some() {
            return None;
        }
        out.push_str(number);
        rest = after;
    }
    // `Rounds 9 (9–10)` is one round for the first, `Join ✓ (–)` its joining.
    let out = out.replacen(" ✓", "", 1);
    let (label, work) = out.split_once([',', ':'])?;
    let mark = &out[label.len()..=label.len()];
    let single = label.split_once(' ').is_some_and(|(_, span)| !span.contains('–'));
    let noun = NOUNS.iter().find(|(one, several)| label.starts_with(one) || label.starts_with(several));
    let label = match noun {
        Some((one, several)) => {
            let span = label.rsplit_once(' ').map_or("", |(_, span)| span);
            [if single { one } else { several }, span].concat()
        }
        None => label.to_owned(),
    };
    let unnumbered = !label.contains(' ');
    Some([if unnumbered { label.trim_end_matches('s') } else { &label }, mark, work].concat())
}

/// The names of a list.
fn parts(list: &str) -> impl Iterator<Item = &str> {
    list.split(", ").flat_map(|part| part.split(" and ")).flat_map(|part| part.split(" y "))
}

/// The lines of work of a size, from the text for several.
fn lines_of(text: &str, names: &[String], size: usize) -> Vec<String> {
    let mut sizes: Vec<usize> = (0..names.len()).collect();
    let mut all = Vec::new();
    let lines: Vec<&str> = text.lines().collect();
    for (at, line) in lines.iter().enumerate() {
        if lines.get(at + 1).is_some_and(|under| !under.is_empty() && under.chars().all(|c| c == '-')) {
            sizes = (0..names.len()).collect();
        } else if let Some(list) = line.strip_prefix("For ").or_else(|| line.strip_prefix("Para "))
            && parts(list).all(|name| names.iter().any(|known| known == name))
        {
            let list: Vec<&str> = parts(list).collect();
            sizes = (0..names.len()).filter(|size| list.contains(&&*names[*size])).collect();
        } else if is_work(line)
            && let Some(place) = sizes.iter().position(|one| *one == size)
        {
            all.extend(own(line, place, sizes.len()));
        }
    }
    all
}

/// Publishes a hat for some heads and compares; how many sizes there were, and lines shared by all of all.
fn check(spec: &HatSpec, heads: &[f64], terms: Terms) -> Option<(usize, (u32, u32))> {
    let sizes: Vec<OneSize> = heads
        .iter()
        .map(|cm| {
            let head = Length::from_cm(*cm);
            let shape = spec.shape;
            let spec = HatSpec { head: Head::Measured(head), shape, chosen: None, kept: None, ..spec.clone() };
            OneSize { name: format!("head {cm}"), spec }
        })
        .collect();
    let all = publish(&sizes, &about(terms)).ok()?;
    let text = text(&all);
    for (size, name) in all.graded.names.iter().enumerate() {
        let spec = &sizes.iter().find(|one| one.name == *name).unwrap().spec;
        let alone = print(&plan(spec).unwrap(), spec, &about(terms));
        let alone: Vec<&str> = alone.lines().filter(|line| is_work(line)).collect();
        assert_eq!(lines_of(&text, &all.graded.names, size), alone, "{name}\n{text}");
    }
    Some((all.graded.names.len(), all.graded.shared_lines()))
}

#[test]
fn the_clubs_hats_in_many_sizes_read_back() {
    let id = ProjectId::from_bits;
    let rest = samples([0, 1, 2, 3, 4, 5, 6, 7, 8, 9].map(|bits| id(bits + 1)));
    for project in [example(id(0))].into_iter().chain(rest) {
        for terms in [Terms::Us, Terms::Uk] {
            for layout in [project.spec.layout, Layout::Wedges(6)] {
                let spec = HatSpec { layout, ..project.spec.clone() };
                let (sizes, _) = check(&spec, &[46.0, 48.5, 51.0, 54.0, 57.0, 60.0], terms).expect("some size can be made");
                assert!(sizes >= 2, "{}", project.name);
            }
        }
    }
}

#[test]
fn spanish_hats_in_many_sizes_read_back() {
    in_language(Language::Spanish, || {
        let id = ProjectId::from_bits;
        let rest = samples([0, 1, 2, 3, 4, 5, 6, 7, 8, 9].map(|bits| id(bits + 1)));
        for project in [example(id(0))].into_iter().chain(rest) {
            let (sizes, _) = check(&project.spec, &[46.0, 51.0, 54.0, 57.0], Terms::Spanish).expect("some size can be made");
            assert!(sizes >= 2, "{}", project.name);
        }
    });
}

#[test]
fn random_hats_in_many_sizes_read_back() {
    let (mut several, mut shared, mut lines) = (0, 0, 0);
    for seed in 0..400 {
        let spec = random_spec(seed);
        let heads = [[47.0, 49.0, 58.0], [52.0, 54.0, 56.0], [35.0, 44.0, 61.0]][seed as usize % 3];
        if let Some((sizes, (own, all))) = check(&spec, &heads, Terms::Us) {
            several += u32::from(sizes > 1);
            shared += own;
            lines += all;
        }
    }
    assert!(several > 200, "{several}");
    // Not an empty promise: a good part of the lines is told once for all.
    assert!(shared * 10 > lines, "{shared} of {lines}");
}
