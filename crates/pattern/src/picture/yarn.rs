//! Where the yarn goes: a bar for each part, a piece of it for each colour; and the same as rows of a table.

use super::fabric::put;
use super::pen::{At, Pen};
use super::rounds::colour_letter;
use super::shape::{Anchor, Paint, Picture, Shape};
use crate::figures::{Units, yarn, yarn_fine};
use crate::say;
use hatwright_sizing::{Colour, Hat, Part, YarnLength, YarnNeed};
use hatwright_words::pictures as words;

/// As wide as a small phone's column, so that letters are drawn there at their own size.
const WIDTH: i32 = 350;
const MARGIN: i32 = 8;
/// From one part's name to the next.
const LINE: i32 = 40;
/// From the top of a part's line to the foot of its name, and to its bar.
const NAME: i32 = 14;
const BAR: i32 = 19;
const THICK: f64 = 15.0;
/// The longest bar: what is left holds its length and the letters of five pieces too narrow for them.
const LONGEST: f64 = 218.0;
/// The narrowest piece with a letter of its own on it.
const LETTERED: f64 = 17.0;
/// From one colour's name to the next, and above the first.
const KEY: i32 = 22;
const KEY_GAP: i32 = 6;
/// The most letters of a colour's name.
const MOST_LETTERS: usize = 26;

/// A row of the table: a part's yarn of one colour.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct YarnRow {
    /// The part.
    pub part: Part,
    /// What it is called.
    pub part_name: &'static str,
    /// The colour.
    pub colour: Colour,
    /// What it is called.
    pub colour_name: String,
    /// Stitches, chains and joins; absent for what is cut or wound.
    pub stitches: Option<u64>,
    /// Its yarn.
    pub length: YarnLength,
}

/// The yarn of a hat by part and colour, in the order of telling: what [`yarn_picture`] draws. The lengths of a colour add up to its need.
///
/// ```
/// use hatwright_pattern::picture::yarn_table;
/// use hatwright_sizing::{Colour, HatSpec, YarnLength, plan};
/// let hat = plan(&HatSpec::default()).unwrap();
/// let rows = yarn_table(&hat, &["Indigo", "Weld"]);
/// assert_eq!((rows[0].part_name, &*rows[0].colour_name), ("Foundation chain", "Indigo"));
/// let indigo = rows.iter().filter(|row| row.colour == Colour(0));
/// assert_eq!(indigo.map(|row| row.length).sum::<YarnLength>(), hat.yarn[0].length);
/// ```
pub fn yarn_table(hat: &Hat, names: &[&str]) -> Vec<YarnRow> {
    let mut rows: Vec<YarnRow> = Vec::new();
    for part in &hat.yarn_parts {
        // A seam may be of the band and of the body.
        match rows.iter_mut().find(|row| (row.part, row.colour) == (part.part, part.colour)) {
            Some(row) => {
                row.stitches = row.stitches.map(|n| n + part.stitches);
                row.length = [row.length, part.length].into_iter().sum();
            }
            None => rows.push(YarnRow {
                part: part.part,
                part_name: say::part(part.part, hat),
                colour: part.colour,
                colour_name: name(part.colour, names),
                stitches: part.part.is_worked().then_some(part.stitches),
                length: part.length,
            }),
        }
    }
    rows
}

/// Draws where the yarn goes: for each part, in the order of telling, a bar as long as its yarn, a piece for each colour with the colour's
/// letter, and its length at the end; under them the colours by name with what they take in all. `names` are those of the hat's colours.
///
/// A piece too narrow for its letter has it behind the length: `3.2 m · B`. The box is 350 units wide.
pub fn yarn_picture(hat: &Hat, names: &[&str], units: Units) -> Picture {
    let rows = yarn_table(hat, names);
    let parts: Vec<&[YarnRow]> = rows.chunk_by(|a, b| a.part == b.part).collect();
    let metres = |rows: &[YarnRow]| rows.iter().map(|row| row.length.metres()).sum::<f64>();
    let most = parts.iter().map(|rows| metres(rows)).fold(0.001, f64::max);
    let mut drawn = Drawn::default();
    let mut top = MARGIN;
    let mut told = Vec::with_capacity(parts.len());
    for rows in &parts {
        drawn.part(rows, LONGEST / most, top, units);
        let all: YarnLength = rows.iter().map(|row| row.length).sum();
        told.push(words::yarn_part(rows[0].part_name, &yarn_fine(all, units)));
        top += LINE;
    }
    top += KEY_GAP;
    let used: Vec<&YarnNeed> = hat.yarn.iter().filter(|need| need.length > YarnLength::default()).collect();
    let mut colours = Vec::with_capacity(used.len());
    for need in &used {
        drawn.key(need, &name(need.colour, names), top, units);
        let letter = colour_letter(need.colour).to_string();
        colours.push(words::yarn_colour(&letter, &name(need.colour, names), &yarn(need.length, units)));
        top += KEY;
    }
    let description = words::yarn_about(&told.join(", "), &colours.join("; "));
    Picture { width: WIDTH, height: top + MARGIN, title: words::yarn().to_owned(), description, shapes: drawn.shapes() }
}

/// Shapes of one paint together, the words over all of them.
#[derive(Default)]
struct Drawn {
    yarns: Vec<(Colour, Pen)>,
    edges: Pen,
    plates: Pen,
    words: Vec<Shape>,
}

impl Drawn {
    fn part(&mut self, rows: &[YarnRow], unit: f64, top: i32, units: Units) {
        let (bar, left) = (f64::from(top + BAR), f64::from(MARGIN));
        self.words.push(Shape::text(MARGIN, top + NAME, Anchor::Start, rows[0].part_name.into(), "label"));
        let mut at = left;
        let mut behind = String::new();
        for row in rows {
            let wide = row.length.metres() * unit;
            rectangle(self.yarn(row.colour), at, bar, wide, THICK);
            rectangle(&mut self.edges, at, bar, wide, THICK);
            let letter = colour_letter(row.colour);
            if wide >= LETTERED {
                // The letter stands on paper: its yarn may be of any shade.
                let middle = at + wide / 2.0;
                rectangle(&mut self.plates, middle - 6.0, bar + 1.5, 12.0, THICK - 3.0);
                let (x, y) = (whole(middle), whole(bar + THICK - 3.5));
                self.words.push(Shape::text(x, y, Anchor::Middle, letter.to_string(), "chart-letter"));
            } else {
                behind.push_str(if behind.is_empty() { " · " } else { "" });
                behind.push(letter);
            }
            at += wide;
        }
        let all: YarnLength = rows.iter().map(|row| row.length).sum();
        let (x, y) = (whole(at) + 6, whole(bar + THICK - 3.0));
        self.words.push(Shape::text(x, y, Anchor::Start, [&*yarn_fine(all, units), &behind].concat(), "label"));
    }

    /// A colour's letter, name and length.
    fn key(&mut self, need: &YarnNeed, name: &str, top: i32, units: Units) {
        let (left, high) = (f64::from(MARGIN), f64::from(top) + 2.0);
        rectangle(self.yarn(need.colour), left, high, 14.0, 14.0);
        rectangle(&mut self.edges, left, high, 14.0, 14.0);
        let mut text = [&*colour_letter(need.colour).to_string(), " "].concat();
        text.extend(name.chars().take(MOST_LETTERS));
        if name.chars().nth(MOST_LETTERS).is_some() {
            text.push('…');
        }
        self.words.push(Shape::text(MARGIN + 21, top + 14, Anchor::Start, text, "label"));
        self.words.push(Shape::text(WIDTH - MARGIN, top + 14, Anchor::End, yarn(need.length, units), "label"));
    }

    fn yarn(&mut self, colour: Colour) -> &mut Pen {
        let at = self.yarns.iter().position(|(known, _)| *known == colour).unwrap_or_else(|| {
            self.yarns.push((colour, Pen::new()));
            self.yarns.len() - 1
        });
        &mut self.yarns[at].1
    }

    fn shapes(self) -> Vec<Shape> {
        let mut shapes: Vec<Shape> =
            self.yarns.into_iter().map(|(colour, pen)| Shape::path(pen.finish(), Paint::Yarn(colour))).collect();
        // A yarn may be as pale, or as dark, as the page.
        put(&mut shapes, self.edges, "bar-edge");
        put(&mut shapes, self.plates, "notch");
        shapes.extend(self.words);
        shapes
    }
}

fn rectangle(pen: &mut Pen, left: f64, top: f64, wide: f64, high: f64) {
    let (right, foot) = (left + wide, top + high);
    pen.polygon(&[At::new(left, top), At::new(right, top), At::new(right, foot), At::new(left, foot)]);
}

fn whole(value: f64) -> i32 {
    libm::round(value) as i32
}

fn name(colour: Colour, names: &[&str]) -> String {
    match names.get(usize::from(colour.0)).map(|name| name.trim()) {
        Some(name) if !name.is_empty() => name.to_owned(),
        _ => words::colour(u32::from(colour.0) + 1),
    }
}

#[cfg(test)]
mod tests {
    use super::super::measure::extent;
    use super::super::{ShapeKind, sample, to_svg};
    use super::*;

    const NAMES: [&str; 3] = ["Indigo", "<Weld> & a name that is longer than any card of colours", ""];

    #[test]
    fn the_rows_are_the_hats_yarn() {
        for (name, _, hat) in sample::planned() {
            let rows = yarn_table(&hat, &NAMES);
            for need in &hat.yarn {
                let mine = rows.iter().filter(|row| row.colour == need.colour);
                assert_eq!(mine.map(|row| row.length).sum::<YarnLength>(), need.length, "{name}");
            }
            let stitches: u64 = rows.iter().filter_map(|row| row.stitches).sum();
            assert_eq!(stitches, hat.yarn_parts.iter().map(|part| part.stitches).sum::<u64>(), "{name}");
            let mut keys: Vec<_> = rows.iter().map(|row| (row.part, row.colour)).collect();
            keys.dedup();
            assert_eq!(keys.len(), rows.len(), "{name}");
        }
    }

    /// What is painted in a colour is as wide, all together, as the longest bar's scale makes its length; key and rounding apart.
    #[test]
    fn bars_are_as_long_as_their_yarn() {
        for (name, _, hat) in sample::planned() {
            let rows = yarn_table(&hat, &NAMES);
            let longest = rows
                .chunk_by(|a, b| a.part == b.part)
                .map(|of| of.iter().map(|row| row.length.metres()).sum::<f64>())
                .fold(0.0, f64::max);
            let picture = yarn_picture(&hat, &NAMES, Units::Centimetres);
            for need in hat.yarn.iter().filter(|need| need.length > YarnLength::default()) {
                let drawn =
                    picture.shapes.iter().find(|shape| shape.paint == Paint::Yarn(need.colour)).expect("a colour is drawn");
                let ShapeKind::Path(data) = &drawn.kind else { panic!("{name}") };
                let pieces: Vec<f64> = data
                    .split_inclusive('z')
                    .map(|piece| {
                        let [left, _, right, _] = extent(piece).0;
                        right - left
                    })
                    .collect();
                // The last is the key's.
                let wide: f64 = pieces[..pieces.len() - 1].iter().sum();
                let should = need.length.metres() / longest * LONGEST;
                assert!((wide - should).abs() < 0.11 * pieces.len() as f64, "{name}: {wide} for {should}");
            }
        }
    }

    #[test]
    fn everything_lies_in_the_box_and_is_xml() {
        for (name, _, hat) in sample::all() {
            for units in [Units::Centimetres, Units::Inches] {
                let picture = yarn_picture(&hat, &NAMES, units);
                let svg = to_svg(&picture, &["#34516f", "#c79a2b"]);
                let document = roxmltree::Document::parse(&svg).unwrap_or_else(|e| panic!("{name}: {e}"));
                let texts: Vec<&str> =
                    document.descendants().filter(|n| n.has_tag_name("text")).filter_map(|n| n.text()).collect();
                assert!(
                    texts.contains(&"A Indigo") && texts.contains(&"Band") != hat.yarn_parts.iter().all(|p| p.part != Part::Band)
                );
                for shape in &picture.shapes {
                    match &shape.kind {
                        ShapeKind::Path(data) => assert!(extent(data).lies_in(picture.width, picture.height), "{name}"),
                        ShapeKind::Text { x, y, anchor, text } => {
                            let wide = text.chars().count() as f64 * 7.8;
                            let right = f64::from(*x) + if *anchor == Anchor::End { 0.0 } else { wide };
                            assert!(right <= f64::from(WIDTH) && *y < picture.height, "{name}: {text}");
                        }
                        ShapeKind::Open(_) | ShapeKind::Close => panic!("{name}: no groups"),
                    }
                    if let Paint::Class(class) = shape.paint {
                        assert!(super::super::CLASSES.contains(&[".", class].concat()), "{name}: {class}");
                    }
                }
                assert!(picture.description.contains("A, Indigo, ") && !picture.title.is_empty(), "{name}");
            }
        }
    }

    /// Every piece has its letter, on it or behind its length.
    #[test]
    fn every_piece_has_its_letter() {
        for (name, _, hat) in sample::planned() {
            let picture = yarn_picture(&hat, &NAMES, Units::Centimetres);
            let letters: usize = picture
                .shapes
                .iter()
                .map(|shape| match (&shape.kind, shape.paint) {
                    (ShapeKind::Text { .. }, Paint::Class("chart-letter")) => 1,
                    (ShapeKind::Text { text, .. }, _) => text.split_once(" · ").map_or(0, |(_, letters)| letters.chars().count()),
                    _ => 0,
                })
                .sum();
            assert_eq!(letters, yarn_table(&hat, &NAMES).len(), "{name}");
        }
    }
}
