//! Every row and round as the table shows it: alike ones together, part by part of the hat.

use core::cmp::Ordering;
use hatwright_pattern::written::{Label, PartKind, Sheet};
use hatwright_sizing::{Colour, Hat, RoundKind, Style, Zone};
use hatwright_words::{lines, made};

/// A part of the hat, in working order.
#[derive(Debug)]
pub struct Part {
    /// Which.
    pub kind: PartKind,
    /// Its name.
    pub name: &'static str,
    /// Its rows or rounds.
    pub lines: Vec<Line>,
}

/// Rows or rounds that are worked alike, whatever their colours.
#[derive(Debug)]
pub struct Line {
    /// The first.
    pub from: u32,
    /// The last.
    pub to: u32,
    /// What lies across: stitches that each leaves.
    pub stitches: u32,
    /// Stitches that each gains; negative where it loses some.
    pub change: i32,
    /// Their colours, in runs.
    pub colours: Vec<(Colour, u32)>,
    /// Whether they are rows, which stand side by side around the head.
    pub rows: bool,
    /// What there is to say besides the work.
    pub note: &'static str,
}

impl Line {
    /// How many there are.
    pub const fn count(&self) -> u32 {
        self.to - self.from + 1
    }

    fn add(&mut self, colour: Colour) {
        match self.colours.last_mut() {
            Some((last, n)) if *last == colour => *n += 1,
            _ => self.colours.push((colour, 1)),
        }
    }

    /// The work in the fewest words, from the written pattern.
    pub fn work(&self, part: &Part, sheet: &Sheet) -> String {
        let here = |label: Label| match label {
            Label::Round(from, to) => !self.rows && (from..=to).contains(&self.from),
            // The first row of a band is worked into chains; what the others are is told by the second.
            Label::Row(from, to) => self.rows && (from..=to).contains(&self.to.min(self.from.max(2))),
            _ => false,
        };
        let sections = sheet.sections.iter().filter(|s| !self.rows || s.part == Some(part.kind));
        let line = sections.flat_map(|s| &s.lines).find(|l| here(l.numbers));
        line.map(|l| l.compact.clone()).unwrap_or_default()
    }
}

/// The parts of a hat, as they are worked.
pub fn parts(hat: &Hat) -> Vec<Part> {
    let mut parts = Vec::new();
    let band =
        (!hat.band_rows.is_empty()).then(|| Part { kind: PartKind::Band, name: lines::heading_band(), lines: vec![band(hat)] });
    let crown_first = hat.begun == hatwright_sizing::Begun::Crown;
    let (before, after) = if crown_first { (None, band) } else { (band, None) };
    parts.extend(before);
    if let Some(panel) = &hat.panel {
        let mut lines: Vec<Line> = Vec::new();
        let short = panel.rows.iter().any(|r| r.stitches != panel.stitches);
        let wedge = if short { panel.wedge.get() } else { u32::MAX };
        for (number, row) in (1..).zip(&panel.rows) {
            let same = match number.cmp(&wedge.saturating_add(1)) {
                Ordering::Less => lines.last().is_some_and(|l| l.stitches == row.stitches.get()),
                Ordering::Equal => false,
                Ordering::Greater => true,
            };
            push(&mut lines, same, Line { rows: true, ..line(number, row.stitches.get(), row.colour) });
        }
        if let Some(again) = lines.last_mut().filter(|l| l.from > wedge) {
            again.stitches = panel.stitches.get();
            again.note = made::same_wedge();
        }
        parts.push(Part { kind: PartKind::Panel, name: lines::heading_hat(), lines });
    }
    let mut work = None;
    for round in &hat.rounds {
        let (kind, name) = zone(round.zone, hat.style);
        if parts.last().is_none_or(|p: &Part| p.kind != kind) {
            parts.push(Part { kind, name, lines: Vec::new() });
            work = None;
        }
        let Some(part) = parts.last_mut() else { continue };
        let change = round.increases.get() as i32 - round.decreases.get() as i32;
        let same =
            part.lines.last().is_some_and(|l| (l.stitches, l.change) == (round.after.get(), change)) && work == Some(round.kind);
        work = Some(round.kind);
        let note = if round.kind == RoundKind::Adjust { made::adjusts() } else { "" };
        push(&mut part.lines, same, Line { change, note, ..line(round.number, round.after.get(), round.colour) });
    }
    parts.extend(after);
    if let Some(flaps) = &hat.flaps {
        let mut lines: Vec<Line> = Vec::new();
        for (number, row) in (1..).zip(&flaps.rows) {
            let change = -(row.decreases.get() as i32);
            let same = number > 2 && lines.last().is_some_and(|l| (l.stitches, l.change) == (row.after.get(), change));
            push(&mut lines, same, Line { rows: true, change, ..line(number, row.after.get(), flaps.colour) });
        }
        parts.push(Part { kind: PartKind::Flaps, name: lines::heading_flaps(), lines });
    }
    parts
}

fn line(number: u32, stitches: u32, colour: Colour) -> Line {
    Line { from: number, to: number, stitches, change: 0, colours: vec![(colour, 1)], rows: false, note: "" }
}

fn push(lines: &mut Vec<Line>, same: bool, next: Line) {
    match lines.last_mut() {
        Some(last) if same => {
            last.to = next.to;
            last.add(next.colours[0].0);
        }
        _ => lines.push(next),
    }
}

/// A sideways band: all of its rows are alike.
fn band(hat: &Hat) -> Line {
    // A plan has the band's height as a length; its own gauge makes stitches of it.
    let stitches = f64::from(hat.depth.band.ticks()) / f64::from(hat.gauge.band_stitch.ticks().max(1));
    let mut all = Line { rows: true, ..line(1, (stitches + 0.5) as u32, hat.band_rows[0]) };
    for colour in &hat.band_rows[1..] {
        all.to += 1;
        all.add(*colour);
    }
    all
}

fn zone(zone: Zone, style: Style) -> (PartKind, &'static str) {
    match (zone, style) {
        (Zone::Band, _) => (PartKind::BandAround, lines::heading_band()),
        (Zone::Body, _) => (PartKind::Body, lines::heading_body()),
        (Zone::Under, _) => (PartKind::Under, lines::heading_under()),
        (Zone::Crown, Style::Tam) => (PartKind::Crown, made::disc()),
        (Zone::Crown, _) => (PartKind::Crown, lines::heading_crown()),
        (Zone::Tail, _) => (PartKind::Tail, lines::heading_tail()),
        (Zone::Brim, _) => (PartKind::Brim, lines::heading_brim()),
    }
}

/// Stitches of the widest line, for the lengths of bars: of all rounds, or of a part's rows.
pub fn widest<'a>(lines: impl Iterator<Item = &'a Line>, rows: bool) -> u32 {
    lines.filter(|l| l.rows == rows).map(|l| l.stitches).max().unwrap_or(1).max(1)
}

/// Colours in words: `5 × A, 2 × B`, or for many stripes the letters alone.
pub fn runs(colours: &[(Colour, u32)], letter: impl Fn(Colour) -> char) -> String {
    const MOST: usize = 5;
    if let [(colour, 1)] = colours {
        return letter(*colour).to_string();
    }
    if colours.len() > MOST {
        let mut used: Vec<Colour> = colours.iter().map(|(c, _)| *c).collect();
        used.sort_unstable();
        used.dedup();
        let letters: Vec<String> = used.iter().map(|c| letter(*c).to_string()).collect();
        return made::stripes(&letters.join(", "));
    }
    let each = colours.iter().map(|(c, n)| [&n.to_string(), "\u{a0}×\u{a0}", &letter(*c).to_string()].concat());
    each.collect::<Vec<_>>().join(", ")
}

/// A line's numbers: `1–5`.
pub fn label(line: &Line) -> String {
    if line.from == line.to { line.from.to_string() } else { [&line.from.to_string(), "–", &line.to.to_string()].concat() }
}

/// A change with its sign: `−6`, `+6`.
pub fn signed(change: i32) -> String {
    [if change < 0 { "−" } else { "+" }, &change.unsigned_abs().to_string()].concat()
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{HatSpec, Length, Stitches, plan};
    use hatwright_words::{Language, in_language};

    /// Each style with what it is usually asked for.
    fn hats() -> Vec<Hat> {
        let hat = |style| plan(&spec(style)).unwrap_or_else(|why| panic!("{style:?}: {why:?}"));
        Style::ALL.map(hat).into()
    }

    fn spec(style: Style) -> HatSpec {
        let mut spec = HatSpec { style, ..HatSpec::default() };
        // Low enough for flaps, which hang from the tops of the ears.
        (spec.band.height, spec.band.fold) = (Stitches::new(5), Length::ZERO);
        spec
    }

    #[test]
    fn every_row_and_round_is_in_one_line() {
        for hat in hats() {
            let parts = parts(&hat);
            let lines = || parts.iter().flat_map(|p| &p.lines);
            let counted: u32 = lines().filter(|l| !l.rows).map(Line::count).sum();
            assert_eq!(counted, hat.round_count().get(), "{:?}", hat.style);
            let rows: u32 = lines().filter(|l| l.rows).map(Line::count).sum();
            let flaps = hat.flaps.as_ref().map_or(0, |f| f.rows.len());
            let panel = hat.panel.as_ref().map_or(0, |p| p.rows.len());
            assert_eq!(rows as usize, hat.band_rows.len() + flaps + panel, "{:?}", hat.style);
            for line in lines() {
                assert_eq!(line.colours.iter().map(|(_, n)| n).sum::<u32>(), line.count());
            }
        }
    }

    #[test]
    fn a_band_is_as_tall_as_it_was_asked_for() {
        let hat = plan(&HatSpec::default()).unwrap();
        let parts = parts(&hat);
        assert_eq!((parts[0].name, parts[0].lines[0].stitches, parts[0].lines[0].count()), ("Band", 10, 56));
    }

    /// Whatever is spoken, each line finds its work in the written pattern.
    #[test]
    fn every_line_has_its_work_in_every_language() {
        use hatwright_pattern::written::{self, About, Terms};
        for (language, terms, name) in [(Language::English, Terms::Uk, "Band"), (Language::Spanish, Terms::Spanish, "Banda")] {
            in_language(language, || {
                for style in Style::ALL {
                    let spec = spec(style);
                    let hat = plan(&spec).unwrap();
                    let about = About { terms, ..About::default() };
                    let sheet = written::lay_out(&written::write(&hat, &spec), &hat, &spec, &about);
                    let parts = parts(&hat);
                    for part in &parts {
                        for line in &part.lines {
                            assert!(!line.work(part, &sheet).is_empty(), "{style:?}: {} {}", part.name, label(line));
                        }
                    }
                    let band = parts.iter().find(|p| matches!(p.kind, PartKind::Band | PartKind::BandAround));
                    assert!(band.is_none_or(|p| p.name == name), "{style:?}");
                }
            });
        }
    }

    #[test]
    fn many_stripes_are_told_by_their_letters() {
        let stripes = [(Colour(0), 1), (Colour(1), 1)].repeat(3);
        let told = || runs(&stripes, |c| char::from(b'A' + c.0));
        assert_eq!(told(), "A, B in stripes");
        assert_eq!(in_language(Language::Spanish, told), "A, B a rayas");
    }

    #[test]
    fn changes_have_their_sign() {
        assert_eq!((&*signed(-6), &*signed(12)), ("−6", "+12"));
    }
}
