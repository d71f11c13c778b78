//! The pattern in words: sections of paragraphs and numbered lines.

use super::abbreviations::stitches;
use super::about::{About, single_line};
use super::making::{self, Job, named};
use super::pattern::{Label, Line, Part, PartKind, Pattern, write};
use super::terms::notice;
use super::words::{compact_text, work_text};
use super::{finishing, start};
use hatwright_sizing::{Colour, Hat, HatSpec, PLANNER, RoundKind};

/// A whole pattern in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// The hat's name.
    pub title: String,
    /// Whose terms it is written in.
    pub terms: String,
    /// The versions that made it.
    pub version: String,
    /// Its sections, in order.
    pub sections: Vec<Section>,
}

/// A section of a sheet.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Section {
    /// Its heading.
    pub heading: &'static str,
    /// Paragraphs before its lines.
    pub before: Vec<String>,
    /// Its numbered lines.
    pub lines: Vec<WrittenLine>,
    /// Paragraphs after its lines.
    pub after: Vec<String>,
}

/// A line in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WrittenLine {
    /// Which rows or rounds, as numbers.
    pub numbers: Label,
    /// The same in words: `Rounds 2–5`.
    pub label: String,
    /// The colour's name, or that the stripes go on; absent in a hat of one colour.
    pub colour_name: Option<String>,
    /// The colour, where the line has one.
    pub colour: Option<Colour>,
    /// The work in full.
    pub text: String,
    /// The work in the fewest words.
    pub compact: String,
    /// Stitches when it is done; absent where nothing is counted.
    pub total: Option<u32>,
    /// Decreases in it.
    pub decreases: u32,
    /// Increases in it.
    pub increases: u32,
    /// What the round does; absent for everything that is no round.
    pub kind: Option<RoundKind>,
}

impl WrittenLine {
    /// The line as it is printed: `Round 6, weld: [sc2tog, 5 sc] × 6, sc2tog, 6 sc. (43)`.
    pub fn text_line(&self) -> String {
        let mut text = self.label.clone();
        if let Some(colour) = &self.colour_name {
            text.push_str(", ");
            text.push_str(colour);
        }
        text.push_str(": ");
        text.push_str(&self.text);
        text.push('.');
        if let Some(total) = self.total {
            text.push_str(&[" (", &total.to_string(), ")"].concat());
        }
        text
    }
}

/// Puts a pattern in words.
pub fn lay_out(pattern: &Pattern, hat: &Hat, spec: &HatSpec, about: &About<'_>) -> Sheet {
    let job = Job { pattern, hat, spec, about };
    let mut sections = start::sections(&job);
    sections.extend(pattern.parts.iter().map(|part| Section {
        heading: heading(part.kind),
        before: making::before(part, &job),
        lines: part.lines.iter().map(|line| written(line, part, pattern.coloured, about)).collect(),
        after: making::after(part, &job),
    }));
    sections.extend(finishing::sections(&job));
    let lines: Vec<_> = pattern.parts.iter().flat_map(|part| &part.lines).map(|line| &*line.ops).collect();
    Sheet {
        title: single_line(about.title),
        terms: notice(&stitches(&lines, &named(&job)), about.terms),
        version: ["Made with Hatwright ", about.version, ", planner ", &PLANNER.to_string(), "."].concat(),
        sections,
    }
}

/// A hat's whole pattern as plain text.
pub fn print(hat: &Hat, spec: &HatSpec, about: &About<'_>) -> String {
    lay_out(&write(hat, spec), hat, spec, about).text()
}

impl Sheet {
    /// What stands at the top of every page: whose terms these are.
    pub fn notices(&self) -> Vec<String> {
        vec![self.terms.clone()]
    }

    /// The sheet as plain text, one paragraph or line of work to a line.
    pub fn text(&self) -> String {
        let mut text = [&*self.title, &*self.terms, &self.version].join("\n");
        text.push('\n');
        for section in &self.sections {
            text.push_str(&["\n", section.heading, "\n", &"-".repeat(section.heading.len()), "\n"].concat());
            let lines = section.lines.iter().map(WrittenLine::text_line);
            for paragraph in section.before.iter().cloned().chain(lines).chain(section.after.iter().cloned()) {
                text.push_str(&paragraph);
                text.push('\n');
            }
        }
        text
    }
}

const fn heading(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Band | PartKind::BandAround => "Band",
        PartKind::Joining => "Joining the band",
        PartKind::Body => "Body",
        PartKind::Under => "Underside",
        PartKind::Crown => "Crown",
        PartKind::Tail => "Tail",
        PartKind::Brim => "Brim",
        PartKind::Panel => "Hat",
        PartKind::Seam => "Seam",
        PartKind::Flaps => "Ear flaps",
        PartKind::Closing => "Closing the top",
    }
}

fn written(line: &Line, part: &Part, coloured: bool, about: &About<'_>) -> WrittenLine {
    let counted = matches!(line.label, Label::Row(..) | Label::Round(..) | Label::Join);
    let named = coloured && part.kind != PartKind::Closing;
    WrittenLine {
        numbers: line.label,
        label: label_text(line.label),
        colour_name: named.then(|| line.colour.map_or_else(|| "in the same stripes".into(), |c| about.colour(c))),
        colour: line.colour,
        text: work_text(&line.ops, about.terms),
        compact: compact_text(&line.ops, about.terms),
        total: counted.then_some(line.total),
        decreases: line.decreases,
        increases: line.increases,
        kind: line.kind,
    }
}

fn label_text(label: Label) -> String {
    let (noun, from, to) = match label {
        Label::Foundation => return "Foundation".into(),
        Label::Closing => return "Last".into(),
        Label::Join => return "Join".into(),
        Label::Seam => return "Seam".into(),
        Label::Tie => return "Tie".into(),
        Label::Row(from, to) => ("Row", from, to),
        Label::Round(from, to) => ("Round", from, to),
    };
    if from == to {
        [noun, " ", &from.to_string()].concat()
    } else {
        [noun, "s ", &from.to_string(), "–", &to.to_string()].concat()
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample;
    use super::super::terms::Terms;
    use super::*;
    use crate::figures::Units;
    use hatwright_sizing::{Length, Mass, TopperKind, TopperPlan, YarnWeight};

    pub(super) fn about(terms: Terms, units: Units) -> About<'static> {
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
                "\nTassel\n------\nWind 36 wraps around a stiff card or form 10.0 cm wide, 18 of each colour: indigo, weld. Pass a strand of 30 cm",
                "cut the loops at the other edge. Wind one end of the tie twice around all strands a fifth of the way down",
                "a stiff card or form 10.0 cm wide for the tassel.",
                "the tassel is tied through it.",
                "best leave the tassel off:",
            ] {
                assert!(text.contains(says), "{says}\n\n{text}");
            }
            assert!(!text.to_lowercase().contains("pom-pom"), "{text}");
        }
    }
}
