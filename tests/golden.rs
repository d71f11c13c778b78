//! Sample patterns as they are printed, word for word, so that no change of a word passes unseen.
//!
//! `cargo xtask golden` writes the files of `golden/` anew from what the program prints now; what changed is then read in the diff.

use hatwright_pattern::figures::Units;
use hatwright_pattern::out::{markdown, rounds_csv, text};
use hatwright_pattern::written::{About, Designer, Hand, Terms, print};
use hatwright_project::{Project, ProjectId, SizeOf, example, samples};
use hatwright_sizing::{Age, BandKind, Build, Count, Fabric, Head, Length, Sex, plan};
use hatwright_words::{Language, in_language};
use std::path::PathBuf;
use std::{env, fs};

/// Every hat of the club, with a short name for its files.
fn hats() -> Vec<(&'static str, Project)> {
    let id = ProjectId::from_bits;
    let names = ["crew", "baby", "coach", "slouch", "stocking", "tam", "flaps", "warmer", "brimmed", "sideways"];
    let rest = samples([0, 1, 2, 3, 4, 5, 6, 7, 8, 9].map(|bits| id(bits + 1)));
    [("junior", example(id(0)))].into_iter().chain(names.into_iter().zip(rest)).collect()
}

/// A printed pattern; `change` is what the sheet says besides.
fn printed(project: &Project, change: impl Fn(About<'_>) -> About<'_>) -> String {
    let hat = plan(&project.spec).expect("the club's hats can be made");
    let colours: Vec<&str> = project.colours.iter().map(|c| &*c.name).collect();
    let yarns: Vec<&str> = project.colours.iter().map(|c| &*c.yarn).collect();
    let about = change(About {
        title: &project.name,
        colour_names: &colours,
        yarn_names: &yarns,
        version: env!("CARGO_PKG_VERSION"),
        ..About::default()
    });
    print(&hat, &project.spec, &about)
}

/// Compares with the file, or writes it where the chore asks for that.
fn agree(name: &str, text: &str) -> Option<String> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("golden").join(name);
    if env::var_os("HATWRIGHT_GOLDEN").is_some() {
        fs::write(&path, text).expect("the folder of golden files can be written");
        return None;
    }
    let kept = fs::read_to_string(&path).unwrap_or_default();
    if kept == text {
        return None;
    }
    let differs = kept.lines().zip(text.lines()).find(|(a, b)| a != b);
    let (was, is) = differs.unwrap_or(("(its length)", "(another length)"));
    Some(format!("{name}\n  was: {was}\n  is:  {is}"))
}

#[test]
fn patterns_read_as_they_did() {
    let mut differing = Vec::new();
    for (name, project) in hats() {
        for (language, terms, units, end) in [
            (Language::English, Terms::Us, Units::Centimetres, "us"),
            (Language::English, Terms::Uk, Units::Inches, "uk"),
            (Language::Spanish, Terms::Spanish, Units::Centimetres, "es"),
        ] {
            let text = in_language(language, || printed(&project, |about| About { terms, units, ..about }));
            differing.extend(agree(&format!("{name}.{end}.txt"), &text));
        }
    }
    for (language, terms, end) in [(Language::English, Terms::Us, "us"), (Language::Spanish, Terms::Spanish, "es")] {
        let text = in_language(language, || published(terms));
        differing.extend(agree(&format!("published.{end}.txt"), &text));
        let (_, junior) = hats().swap_remove(0);
        let text = in_language(language, || printed(&junior, |about| About { terms, units: Units::Both, ..about }));
        differing.extend(agree(&format!("both.{end}.txt"), &text));
    }
    for (name, language, end) in [
        ("junior", Language::English, "us"),
        ("tam", Language::English, "us"),
        ("sideways", Language::English, "us"),
        ("junior", Language::Spanish, "es"),
    ] {
        let (_, mut project) = hats().into_iter().find(|hat| hat.0 == name).expect("a hat of the club");
        project.sizes = sizes();
        let all = in_language(language, || project.published().map(|all| (text(&all), markdown(&all), rounds_csv(&all))));
        let (text, markdown, csv) = all.expect("the club's hats can be made");
        differing.extend(agree(&format!("{name}.sizes.{end}.txt"), &text));
        if name == "junior" {
            differing.extend(agree(&format!("{name}.sizes.{end}.md"), &markdown));
            differing.extend(agree(&format!("{name}.sizes.{end}.csv"), &csv));
        }
    }
    assert!(differing.is_empty(), "`cargo xtask golden` writes them anew:\n{}", differing.join("\n"));
}

/// Two years, ten years, and a grown-up's M.
fn sizes() -> Vec<SizeOf> {
    let head = |years| Head::ByAge { age: Age::Years(Count::whole(years)), sex: Sex::Unknown, build: Build::Average };
    [2, 10, 30].map(|years| SizeOf { name: String::new(), head: head(years) }).to_vec()
}

/// The crew cap with a post rib around, as somebody left-handed publishes it: with all that a designer adds, and two hooks.
fn published(terms: Terms) -> String {
    let (_, mut crew) = hats().swap_remove(1);
    crew.spec.band.kind = BandKind::Around;
    crew.spec.band.fabric = Fabric::PostRib;
    crew.spec.hook = Some(Length::from_cm(0.5));
    crew.spec.band.hook = Some(Length::from_cm(0.375));
    let designer = match terms {
        Terms::Spanish => Designer {
            introduction: "Hecho para el cobertizo, donde hace más frío que en el agua.\nVuelta 3: ahí está casi toda la tripulación, \
                           pero no es una línea de este patrón.\n",
            credit: "el club de remo",
            edition: "2, con la banda más ancha",
            date: "3 de mayo de 2026",
            tested: "Lo hicieron dos de la tripulación: 4 tardes cada uno.\n\nLos dos sirven.",
            care: "A mano, en frío. Secar en plano.",
        },
        _ => Designer {
            introduction: "Made for the boathouse, where it is colder than on the water.\nRound 3: that is where most of the crew is, \
                           but no line of this pattern.\n",
            credit: "the rowing club",
            edition: "2, with a wider band",
            date: "3 May 2026",
            tested: "Two of the crew made it: 4 evenings each.\n\nBoth fit.",
            care: "By hand, cold. Dry it flat.",
        },
    };
    printed(&crew, |about| About { terms, hand: Hand::Left, designer, ..about })
}
