//! Every style, direction, band, way and fabric, laid out: the text keeps its form, and says what a maker asks.

use super::{About, Label, PartKind, Terms, lay_out, write};
use crate::figures::Units;
use hatwright_sizing::{BandKind, Begun, Edge, Fabric, Hat, HatSpec, Head, Length, SideTop, Style, Way, plan};

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
        for terms in [Terms::Us, Terms::Uk] {
            let text = text(spec, hat, terms);
            for line in text.lines() {
                let work = ["Row ", "Rows ", "Round ", "Rounds "].iter().any(|noun| line.starts_with(noun));
                assert!(!work || (line.contains(": ") && line.ends_with(')')), "{line}\n{text}");
                let clean = !line.contains("  ") && line.trim() == line && !line.contains("..") && !line.contains(" ,");
                assert!(clean && !line.contains(". ."), "{line:?}\n{text}");
            }
            let (us, uk) =
                (["skip", "yarn over", " sc2tog", " sc ", "hdc"], ["miss ", "yarn round hook", "tr2tog", " tr ", "htr"]);
            let foreign = if terms == Terms::Us { uk } else { us };
            let body = text.split_once("\nAbbreviations\n").unwrap().1;
            assert_eq!(foreign.iter().find(|word| body.contains(*word)), None, "{text}");
        }
    });
    assert!(count > 500, "{count}");
}

/// A word that is abbreviated in a line is explained.
#[test]
fn every_abbreviation_is_explained() {
    every_hat(|spec, hat| {
        let text = text(spec, hat, Terms::Us);
        let told = text.split_once("\nAbbreviations\n").unwrap().1.split_once("\n\n").unwrap().0;
        let told = ["\n", told].concat();
        let pattern = write(hat, spec);
        let lines: Vec<String> =
            pattern.parts.iter().flat_map(|p| &p.lines).map(|line| super::work_text(&line.ops, Terms::Us)).collect();
        for short in
            ["sc", "hdc", "dc", "sl st", "sc2tog", "hdc2tog", "dc2tog", "ch", "join", "fpdc", "adjustable ring", "row end"]
        {
            let used = lines.iter().any(|line| {
                line.split([',', '[', ']']).any(|step| {
                    let step = step.trim().trim_start_matches(|c: char| c.is_ascii_digit() || c == ' ');
                    let told = step.strip_prefix(short).filter(|rest| *rest != " into a ring");
                    told.is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
                })
            });
            assert!(!used || told.contains(&[short, ":"].concat()) || told.contains(&[short, ", "].concat()), "{short}\n{text}");
        }
        // What is only spoken of is explained too: the lower stitches of a spiral's beginning, the slip stitch of its end.
        let making = text.split_once("\nAbbreviations\n").unwrap().1.split_once("\n\n").unwrap().1;
        for (name, short) in [("slip stitch", "sl st"), (" single crochet", "\nsc"), ("half double crochet", "hdc")] {
            assert!(!making.contains(name) || told.contains(&[short, ": "].concat()), "{name}\n{text}");
        }
    });
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
