use super::super::measure::{extent, nodes};
use super::super::sample;
use super::super::svg::{CLASSES, to_markup, to_svg};
use super::*;
use crate::picture::{Paint, Shape, ShapeKind};
use crate::written::write;
use hatwright_sizing::{Head, Layout, Length, Round, Zone, plan};
use hatwright_words::{Language, in_language};
use proptest::prelude::*;

const BOTH: [(Hand, CrownView); 2] = [(Hand::Right, CrownView::Whole), (Hand::Left, CrownView::Wedge)];
const VIEWS: [CrownView; 2] = [CrownView::Whole, CrownView::Wedge];

fn names() -> Vec<String> {
    ["indigo", "weld & <madder>", "", "walnut", "undyed", "logwood"].map(str::to_owned).to_vec()
}

/// Calls with the charts of a hat.
fn with<R>(spec: &HatSpec, hat: &Hat, hand: Hand, view: CrownView, then: impl FnOnce(&Charted<'_>, Vec<Chart>) -> R) -> R {
    let (colours, pattern) = (names(), write(hat, spec));
    let terms = if hatwright_words::spoken() == Language::Spanish { Terms::Spanish } else { Terms::Uk };
    let of = Charted { hat, spec, pattern: &pattern, colours: &colours, hand, terms, units: Units::Centimetres };
    then(&of, charts(&of, view))
}

/// What every chart of every hat keeps to.
fn holds(name: &str, spec: &HatSpec, hat: &Hat, each: &[(Hand, CrownView)]) -> u32 {
    let mut rounds = 0;
    for (hand, view) in each.iter().copied() {
        with(spec, hat, hand, view, |of, all| {
            assert!(all.iter().any(|c| c.id == "flat"), "{name}");
            for chart in &all {
                is_sound(name, chart);
                match chart.id {
                    "rows" => grid_holds(name, of, chart),
                    "crown" | "underside" | "brim" => rounds += symbols_hold(name, of, chart),
                    _ => {}
                }
            }
        });
    }
    rounds
}

/// XML on its own and in a page, of known classes, nothing styled in place, inside its box, told, with a table of even rows.
fn is_sound(name: &str, chart: &Chart) {
    let (picture, table) = (&chart.picture, &chart.table);
    for text in [to_svg(picture, &["#34516f"]), to_markup(picture, &[])] {
        let document = roxmltree::Document::parse(&text).unwrap_or_else(|why| panic!("{name} {}: {why}", chart.id));
        assert!(!text.contains("style="), "{name} {}", chart.id);
        let referred = document.descendants().filter_map(|n| n.attribute("fill")).filter_map(|f| f.strip_prefix("url(#"));
        for id in referred {
            let id = id.trim_end_matches(')');
            assert!(document.descendants().any(|n| n.attribute("id") == Some(id)), "{name} {}: {id}", chart.id);
        }
    }
    assert!(
        !picture.title.is_empty() && !picture.description.is_empty() && table.caption == picture.title,
        "{name} {}",
        chart.id
    );
    assert!(!table.rows.is_empty() && table.rows.iter().all(|row| row.len() == table.head.len()), "{name} {}", chart.id);
    for shape in &picture.shapes {
        if let (Paint::Class(class), false) = (shape.paint, shape.kind == ShapeKind::Close) {
            let class = class.split(' ').next().unwrap_or_default();
            let known = [",", "{"].iter().any(|end| CLASSES.contains(&format!(".{class}{end}")));
            assert!(known, "{name} {}: {class}", chart.id);
        }
        if let ShapeKind::Path(data) = &shape.kind {
            let inside = extent(data).lies_in(picture.width, picture.height);
            assert!(inside, "{name} {}: {:?} {data:.60}", chart.id, shape.paint);
        }
    }
}

/// Stitches that each round's symbols make, as the SVG has them.
fn counted(chart: &Chart) -> Vec<(String, u32)> {
    let svg = to_svg(&chart.picture, &[]);
    let document = roxmltree::Document::parse(&svg).unwrap();
    let of = |class: &str| match class.split(' ').next().unwrap_or_default() {
        "sym-ch" | "sym-join" => 0,
        one if one.ends_with("-inc") => 2,
        one if one.starts_with("sym-") || one == "hatch" => 1,
        other => panic!("{other}"),
    };
    let groups = document.descendants().filter(|n| n.attribute("class") == Some("chart-round"));
    groups
        .map(|group| {
            let title = group.first_element_child().and_then(|t| t.text()).unwrap_or_default().to_owned();
            (title, group.children().filter_map(|n| n.attribute("class")).map(of).sum())
        })
        .collect()
}

/// The rounds that a cell of the table names, with their totals.
fn named<'a>(hat: &'a Hat, cell: &str) -> Vec<&'a Round> {
    let (from, to) = cell.split_once('\u{2013}').unwrap_or((cell, cell));
    let (from, to): (u32, u32) = (from.parse().unwrap(), to.parse().unwrap());
    hat.rounds.iter().filter(|r| (from..=to).contains(&r.number)).collect()
}

/// Every round's symbols make its total, of which a wedge has its share; and picture, title and table say the same.
fn symbols_hold(name: &str, of: &Charted<'_>, chart: &Chart) -> u32 {
    let counts = counted(chart);
    assert_eq!(counts.len(), chart.table.rows.len(), "{name}");
    let last = chart.table.head.len() - 1;
    let mut wedges = None;
    for ((title, count), row) in counts.iter().zip(&chart.table.rows) {
        let rounds = named(of.hat, &row[0]);
        assert!(!rounds.is_empty() && rounds.iter().all(|r| r.after == rounds[0].after), "{name} {row:?}");
        assert_eq!(row[last], count.to_string(), "{name} {row:?}");
        let numbers: Vec<u32> = title.split(|c: char| !c.is_ascii_digit()).filter_map(|n| n.parse().ok()).collect();
        assert_eq!((numbers[0], numbers.last()), (rounds[0].number, Some(count)), "{name} {title}");
        let total = rounds[0].after.get();
        assert!(*count > 0 && total.is_multiple_of(*count), "{name} {row:?}: {count} of {total}");
        assert_eq!(*wedges.get_or_insert(total / count), total / count, "{name} {row:?}");
    }
    counts.len() as u32
}

fn grid_holds(name: &str, of: &Charted<'_>, chart: &Chart) {
    let counts = counted(chart);
    assert!(!counts.is_empty(), "{name}");
    let mut all: Vec<u32> = Vec::new();
    for row in &chart.table.rows {
        let (from, to) = row[0].split_once('\u{2013}').unwrap_or((&row[0], &row[0]));
        let many = to.parse::<u32>().unwrap() + 1 - from.parse::<u32>().unwrap();
        all.extend(std::iter::repeat_n(row[2].parse::<u32>().unwrap(), many as usize));
    }
    let own: Vec<u32> = match &of.hat.panel {
        Some(panel) => panel.rows.iter().map(|r| r.stitches.get()).collect(),
        None if !of.hat.band_rows.is_empty() => vec![of.spec.band.height.get(); of.hat.band_rows.len()],
        None => of.hat.rounds.iter().filter(|r| r.zone == Zone::Band).map(|r| r.after.get()).collect(),
    };
    assert_eq!(all, own, "{name}");
    let around = of.hat.panel.is_none() && of.hat.band_rows.is_empty();
    for ((_, cells), row) in counts.iter().zip(&own) {
        assert!(if around { cells <= row } else { *cells == (*row).min(120) }, "{name}: {cells} of {row}");
    }
}

#[test]
fn charts_of_every_sample_hold() {
    let rounds: u32 = sample::planned().iter().map(|(name, spec, hat)| holds(name, spec, hat, &BOTH)).sum();
    assert!(rounds > 2000, "{rounds}");
    in_language(Language::Spanish, || {
        sample::planned().iter().step_by(5).for_each(|(name, spec, hat)| _ = holds(name, spec, hat, &BOTH));
    });
}

#[test]
fn a_round_is_counted_by_hand() {
    let spec = HatSpec::default();
    let hat = plan(&spec).unwrap();
    with(&spec, &hat, Hand::Right, CrownView::Whole, |_, all| {
        let crown = all.iter().find(|c| c.id == "crown").unwrap();
        let last = counted(crown).pop().unwrap();
        let top = hat.rounds.last().unwrap();
        assert_eq!(last, (format!("Round {}: {} stitches", top.number, top.after), top.after.get()));
        let together = crown.picture.shapes.iter().filter(|s| s.paint == Paint::Class("sym-sc-tog")).count();
        // One more stands in the key.
        let decreases: u32 = hat.rounds.iter().map(|r| r.decreases.get()).sum();
        assert_eq!(together as u32, decreases + 1);
    });
}

#[test]
fn thousands_of_rounds_of_a_tail_are_not_drawn() {
    let (spec, hat) = sample::tail_of(3000);
    with(&spec, &hat, Hand::Right, CrownView::Whole, |_, all| {
        for chart in all {
            let long = to_svg(&chart.picture, &[]).len();
            assert!(long < 2_000_000, "{}: {long} bytes", chart.id);
        }
    });
}

#[test]
fn stacked_crowns_have_a_wedge() {
    for (wedges, cm) in [(6, 49.8), (7, 57.0), (8, 56.0)] {
        let spec = HatSpec { head: Head::Measured(Length::from_cm(cm)), layout: Layout::Wedges(wedges), ..HatSpec::default() };
        let hat = plan(&spec).unwrap();
        let crown = |view| with(&spec, &hat, Hand::Right, view, |_, all| all.into_iter().find(|c| c.id == "crown").unwrap());
        let (whole, part) = (crown(CrownView::Whole), crown(CrownView::Wedge));
        assert!(part.picture.title.contains(&wedges.to_string()), "{}", part.picture.title);
        for (title, stitches) in counted(&part) {
            let number = title.split(':').next().unwrap();
            let all = counted(&whole).into_iter().find(|(other, _)| other.split(':').next() == Some(number)).unwrap();
            assert_eq!(stitches * wedges, all.1, "{number}");
        }
    }
}

/// Paths of the chart proper; the key stays as it is read.
fn drawn(chart: &Chart) -> Vec<&Shape> {
    let end = chart.picture.shapes.iter().position(|s| s.paint == Paint::Class("chart-key")).unwrap();
    chart.picture.shapes[..end].iter().collect()
}

#[test]
fn the_left_hands_chart_is_the_exact_mirror_of_the_rights() {
    let mut compared = 0;
    for (name, spec, hat) in sample::planned() {
        for view in VIEWS {
            let right = with(&spec, &hat, Hand::Right, view, |_, all| all);
            let left = with(&spec, &hat, Hand::Left, view, |_, all| all);
            for (right, left) in right.iter().zip(&left).filter(|(r, _)| matches!(r.id, "crown" | "underside" | "brim")) {
                assert_eq!((right.id, &right.table, right.picture.width), (left.id, &left.table, left.picture.width), "{name}");
                let axis = f64::from(right.picture.width);
                let (r, l) = (drawn(right), drawn(left));
                assert_eq!(r.len(), l.len(), "{name}");
                for (shape, l) in r.iter().zip(&l) {
                    assert_eq!(shape.paint, l.paint, "{name}");
                    match (&shape.kind, &l.kind) {
                        (ShapeKind::Path(r), ShapeKind::Path(l)) => {
                            let (r, l) = (nodes(r), nodes(l));
                            assert_eq!(r.len(), l.len(), "{name}");
                            // Each place has its image; a bar may be drawn from its other end.
                            let image =
                                |a: &(f64, f64)| l.iter().any(|b| (a.0 + b.0 - axis).abs() < 0.25 && (a.1 - b.1).abs() < 0.15);
                            assert!(r.iter().all(image), "{name}: {:?} {r:?} {l:?}", shape.paint);
                            compared += r.len();
                        }
                        (ShapeKind::Text { x, y, text, .. }, ShapeKind::Text { x: other, y: same, text: told, .. }) => {
                            assert!(
                                (*x + *other - right.picture.width).abs() <= 1 && y == same && text == told,
                                "{name}: {text} {told}"
                            );
                        }
                        _ => {}
                    }
                }
            }
        }
    }
    assert!(compared > 50_000, "{compared}");
}

#[test]
fn rounds_toward_the_middle_run_clockwise_for_the_right_hand() {
    // Seen with the heads up, the right hand's next stitch is to the left: inward that is clockwise, outward the other way.
    for (begun, hand, way) in [
        (hatwright_sizing::Begun::Band, Hand::Right, "run clockwise"),
        (hatwright_sizing::Begun::Band, Hand::Left, "run counter-clockwise"),
        (hatwright_sizing::Begun::Crown, Hand::Right, "run counter-clockwise"),
        (hatwright_sizing::Begun::Crown, Hand::Left, "run clockwise"),
    ] {
        let spec = HatSpec { begun, ..HatSpec::default() };
        let hat = plan(&spec).unwrap();
        with(&spec, &hat, hand, CrownView::Whole, |_, all| {
            let crown = all.iter().find(|c| c.id == "crown").unwrap();
            assert!(crown.picture.description.contains(way), "{}", crown.picture.description);
        });
    }
}

#[test]
fn charts_speak_spanish() {
    in_language(Language::Spanish, || {
        for (name, spec, hat) in sample::planned() {
            let all = with(&spec, &hat, Hand::Left, CrownView::Wedge, |_, all| all);
            for chart in all {
                let mut said = vec![chart.picture.title, chart.picture.description, chart.table.caption];
                said.extend(chart.table.head);
                said.extend(chart.table.rows.into_iter().flatten());
                said.extend(chart.picture.shapes.into_iter().filter_map(|s| match s.kind {
                    ShapeKind::Text { text, .. } | ShapeKind::Open(text) => Some(text),
                    _ => None,
                }));
                for text in said {
                    for word in ["ound", "stitch", "Row", "row ", "crown", " in ", "{", "flat", "around"] {
                        assert!(!text.contains(word), "{name}: {word}: {text}");
                    }
                }
            }
        }
    });
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    /// Any head, fabric, style, direction, way and layout.
    #[test]
    fn charts_of_random_hats_hold(
        cm in 30.0..66.0_f64,
        style in proptest::sample::select(hatwright_sizing::Style::ALL.to_vec()),
        fabric in proptest::sample::select(hatwright_sizing::Fabric::ALL.to_vec()),
        crown in any::<bool>(),
        joined in any::<bool>(),
        wedges in 0..10_u32,
        colours in 1..=2_usize,
        left in any::<bool>(),
    ) {
        let head = Length::from_cm(cm);
        let mut spec = HatSpec { style, fabric, head: Head::Measured(head), ..HatSpec::default() };
        spec.shape = hatwright_sizing::Shape::for_head(head);
        spec.begun = if crown { hatwright_sizing::Begun::Crown } else { hatwright_sizing::Begun::Band };
        spec.way = if joined { hatwright_sizing::Way::Joined } else { hatwright_sizing::Way::Spiral };
        spec.layout = if wedges < 4 { Layout::Spread } else { Layout::Wedges(wedges) };
        spec.body_stripes.truncate(colours);
        if let Ok(hat) = plan(&spec) {
            holds(&format!("{spec:?}"), &spec, &hat, &BOTH[usize::from(left)..][..1]);
        }
    }
}
