//! The pattern in words: sections of paragraphs and numbered lines.

use super::abbreviations::stitches;
use super::about::{About, Hand, paragraphs, single_line};
use super::finishing;
use super::making::{self, Job, named};
use super::pattern::{Label, Line, Part, PartKind, Pattern, write};
use super::start::{self, capital};
use super::terms::{brief, notice};
use super::words::{compact_text, work_text};
use hatwright_sizing::{Colour, Hat, HatSpec, PLANNER, RoundKind};
use hatwright_words::lines as say;

/// A whole pattern in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// The hat's name.
    pub title: String,
    /// Whose terms it is written in.
    pub terms: String,
    /// The same, and for which hand if for the left, in few words: for the top of every page.
    pub brief: String,
    /// That it is for the left hand, and what that changes; absent for the right one.
    pub hand: Option<String>,
    /// Who designed it, its edition and its date, as far as they are told; and the versions that made it.
    pub version: String,
    /// Its sections, in order.
    pub sections: Vec<Section>,
}

/// A section of a sheet.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Section {
    /// Its heading, in the language that was spoken.
    pub heading: &'static str,
    /// Which part of the hat is worked in it, whatever the language; absent where nothing is.
    pub part: Option<PartKind>,
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
        part: Some(part.kind),
        before: making::before(part, &job),
        lines: part.lines.iter().map(|line| written(line, part, pattern.coloured, about)).collect(),
        after: making::after(part, &job),
    }));
    sections.extend(finishing::sections(&job));
    let tested = paragraphs(about.designer.tested);
    if !tested.is_empty() {
        sections.push(Section { heading: say::heading_tested(), before: tested, ..Section::default() });
    }
    let lines: Vec<_> = pattern.parts.iter().flat_map(|part| &part.lines).map(|line| &*line.ops).collect();
    let used = stitches(&lines, &named(&job));
    let mut brief = brief(&used, about.terms);
    if about.hand == Hand::Left {
        brief.push_str(&["; ", say::brief_left()].concat());
    }
    Sheet {
        title: single_line(about.title),
        terms: notice(&used, about.terms),
        brief,
        hand: (about.hand == Hand::Left).then(|| say::left_handed().into()),
        version: version(about),
        sections,
    }
}

/// `By the rowing club; edition 2; 3 May 2026. Made with Hatwright 0.1.0, planner 3.`
fn version(about: &About<'_>) -> String {
    let designer = &about.designer;
    let own = |text: &str| Some(single_line(text.trim().trim_end_matches('.'))).filter(|text| !text.is_empty());
    let told = [
        own(designer.credit).map(|credit| say::by(&credit)),
        own(designer.edition).map(|edition| say::edition(&edition)),
        own(designer.date),
    ];
    let told: Vec<String> = told.into_iter().flatten().collect();
    let made = say::version(about.version, &PLANNER.to_string());
    if told.is_empty() { made } else { [&*capital(&told.join("; ")), ". ", &made].concat() }
}

/// A hat's whole pattern as plain text.
pub fn print(hat: &Hat, spec: &HatSpec, about: &About<'_>) -> String {
    lay_out(&write(hat, spec), hat, spec, about).text()
}

impl Sheet {
    /// What stands at the top of every page: whose terms these are, and that it is for the left hand where it is.
    pub fn notices(&self) -> Vec<String> {
        [Some(&self.terms), self.hand.as_ref()].into_iter().flatten().cloned().collect()
    }

    /// The sheet as plain text, one paragraph or line of work to a line.
    pub fn text(&self) -> String {
        let mut text = [&*self.title, &self.notices().join("\n"), &self.version].join("\n");
        text.push('\n');
        for section in &self.sections {
            let rule = "-".repeat(section.heading.chars().count());
            text.push_str(&["\n", section.heading, "\n", &rule, "\n"].concat());
            let lines = section.lines.iter().map(WrittenLine::text_line);
            for paragraph in section.before.iter().cloned().chain(lines).chain(section.after.iter().cloned()) {
                text.push_str(&paragraph);
                text.push('\n');
            }
        }
        text
    }
}

fn heading(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Band | PartKind::BandAround => say::heading_band(),
        PartKind::Joining => say::heading_joining(),
        PartKind::Body => say::heading_body(),
        PartKind::Under => say::heading_under(),
        PartKind::Crown => say::heading_crown(),
        PartKind::Tail => say::heading_tail(),
        PartKind::Brim => say::heading_brim(),
        PartKind::Panel => say::heading_hat(),
        PartKind::Seam => say::heading_seam(),
        PartKind::Flaps => say::heading_flaps(),
        PartKind::Closing => say::heading_closing(),
    }
}

fn written(line: &Line, part: &Part, coloured: bool, about: &About<'_>) -> WrittenLine {
    let counted = matches!(line.label, Label::Row(..) | Label::Round(..) | Label::Join);
    let named = coloured && part.kind != PartKind::Closing;
    WrittenLine {
        numbers: line.label,
        label: label_text(line.label),
        colour_name: named.then(|| line.colour.map_or_else(|| say::same_stripes().into(), |c| about.colour(c))),
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
    match label {
        Label::Foundation => say::foundation().into(),
        Label::Closing => say::last().into(),
        Label::Join => say::join_label().into(),
        Label::Seam => say::seam().into(),
        Label::Tie => say::tie().into(),
        Label::Row(from, to) if from == to => say::row(from),
        Label::Row(from, to) => say::rows(from, to),
        Label::Round(from, to) if from == to => say::round(from),
        Label::Round(from, to) => say::rounds(from, to),
    }
}

#[cfg(test)]
mod tests;
