use super::*;
use crate::figures::Units;
use crate::sizes::Told;
use crate::written::{About, print};
use hatwright_sizing::{HatSpec, Head, Length, Shape, plan};

fn about() -> About<'static> {
    About { title: "Caps <club> & \"crew\"", colour_names: &["indigo", "=weld"], units: Units::Centimetres, ..About::default() }
}

fn size(cm: f64) -> OneSize {
    let head = Length::from_cm(cm);
    let spec = HatSpec { head: Head::Measured(head), shape: Shape::for_head(head), ..HatSpec::default() };
    OneSize { name: format!("{cm} cm"), spec }
}

fn published(heads: &[f64]) -> Publication {
    let sizes: Vec<OneSize> = heads.iter().map(|cm| size(*cm)).collect();
    publish(&sizes, &about()).unwrap()
}

#[test]
fn one_size_as_text_is_the_printed_pattern() {
    let one = published(&[57.0]);
    let spec = size(57.0).spec;
    assert_eq!(text(&one), print(&plan(&spec).unwrap(), &spec, &about()));
}

#[test]
fn sizes_are_told_smallest_first() {
    let three = published(&[57.0, 48.0, 52.0]);
    assert_eq!(three.graded.names, ["48 cm", "52 cm", "57 cm"]);
    let text = text(&three);
    assert!(text.contains("Written for 3 sizes: 48 cm (52 cm, 57 cm)."), "{text}");
    assert!(text.contains("Head: 48.0 (52.0, 57.0) cm"), "{text}");
    let stitches = three.hats.iter().map(|hat| hat.size.stitches.to_string()).collect::<Vec<_>>();
    assert!(text.contains(&format!("Around, in stitches: {} ({}, {})", stitches[0], stitches[1], stitches[2])), "{text}");
}

#[test]
fn a_size_that_cannot_be_made_is_told() {
    let mut tiny = size(52.0);
    tiny.name = "doll".into();
    tiny.spec.head = Head::Measured(Length::from_cm(2.0));
    let both = publish(&[size(52.0), tiny.clone()], &about()).unwrap();
    assert_eq!(both.graded.names, ["52 cm"]);
    assert_eq!(both.refused.len(), 1);
    assert!(text(&both).contains("\ndoll: "));
    assert!(publish(&[tiny], &about()).is_err());
}

#[test]
fn markup_is_escaped_and_well_formed() {
    for heads in [&[57.0][..], &[48.0, 52.0, 57.0]] {
        let mut all = published(heads);
        all.link = "https://hat.example/#4abc".into();
        all.code = all.link.clone();
        all.highlight = (heads.len() > 1).then_some(1);
        for sheet in [full_sheet(&all), working_sheet(&all, 0)] {
            let document = roxmltree::Document::parse(&sheet).unwrap_or_else(|why| panic!("{why}\n{sheet}"));
            assert_eq!(document.descendants().filter(|node| node.has_tag_name("club")).count(), 0);
            let title = document.descendants().find(|node| node.has_tag_name("h1")).unwrap();
            assert_eq!(title.text(), Some("Caps <club> & \"crew\""));
            assert!(sheet.contains("class=\"qr\""));
        }
        let page = html(&all, PaperSize::A4);
        assert!(page.starts_with("<!doctype html>\n<html lang=\"en\"") && page.contains("@page{size:A4;"));
        assert!(!page.contains("<club>") && !page.contains("src=\"http"), "nothing is fetched");
    }
}

#[test]
fn a_size_can_be_pointed_out() {
    let mut all = published(&[48.0, 52.0, 57.0]);
    assert!(!full_sheet(&all).contains("<mark>"));
    all.highlight = Some(2);
    let stitches = all.hats[2].size.stitches.to_string();
    assert!(full_sheet(&all).contains(&["<mark>", &stitches, "</mark>"].concat()));
}

#[test]
fn every_round_has_its_box() {
    let all = published(&[57.0]);
    let rows_and_rounds = all.hats[0].rounds.len() + all.hats[0].band_rows.len();
    let others = full_sheet(&all).matches("<li>").count() - working_sheet(&all, 0).matches("<li>").count();
    assert_eq!(others, 0);
    let sheet = working_sheet(&all, 0);
    let boxes = sheet.matches("<i>").count() + sheet.matches("<i class").count();
    // A foundation and the gathering have a box too.
    let unnumbered = all.graded.sections.iter().flat_map(|s| &s.blocks).flat_map(|b| &b.lines);
    let unnumbered = unnumbered.filter(|line| line.total.is_none()).count();
    assert_eq!(boxes, rows_and_rounds + unnumbered);
}

#[test]
fn a_spreadsheet_takes_no_cell_for_a_formula() {
    let all = published(&[48.0, 57.0]);
    let table = rounds_csv(&all);
    assert!(table.lines().all(|line| !line.contains(",=")), "{table}");
    assert!(table.contains("'=weld"));
    let last = all.hats[1].rounds.last().unwrap().after.to_string();
    assert!(table.lines().any(|line| line.starts_with("57 cm,Crown,") && line.split(',').any(|cell| cell == last)), "{table}");
    // As many lines of a size as its pattern has.
    for (size, name) in all.graded.names.iter().enumerate() {
        let lines = table.lines().filter(|line| line.starts_with(&format!("{name},"))).count();
        assert_eq!(lines, all.graded.own_lines(size).len());
    }
}

#[test]
fn markdown_has_tables_and_lists() {
    let text = markdown(&published(&[48.0, 57.0]));
    assert!(text.starts_with("# Caps \\<club\\> \\& \"crew\"\n"), "{text}");
    assert!(text.contains("\n| Size | 48 cm | 57 cm |\n| --- | --- | --- |\n"), "{text}");
    assert!(text.contains("\n- **Foundation, indigo:** ch "), "{text}");
}

#[test]
fn merged_texts_are_told_apart_again() {
    let told = Told::merged(&[Some("a 1"), Some("a 2")]).unwrap();
    assert_eq!((told.own(0).unwrap(), told.own(1).unwrap()), ("a 1".into(), "a 2".into()));
}
