use super::*;
use crate::figures::Units;
use crate::written::{About, Sheet, WrittenLine, lay_out, write};
use hatwright_sizing::{Hat, HatSpec, Head, Layout, Length, Shape, plan};

fn spec(cm: f64, layout: Layout) -> HatSpec {
    let head = Length::from_cm(cm);
    HatSpec { head: Head::Measured(head), shape: Shape::for_head(head), layout, ..HatSpec::default() }
}

fn graded(heads: &[f64], layout: Layout) -> (Graded, Vec<Sheet>, Vec<Hat>) {
    let names: Vec<String> = heads.iter().map(|cm| format!("head {cm}")).collect();
    let about =
        About { title: "Rowing club cap", colour_names: &["indigo", "weld"], units: Units::Centimetres, ..About::default() };
    let specs: Vec<HatSpec> = heads.iter().map(|cm| spec(*cm, layout)).collect();
    let hats: Vec<Hat> = specs.iter().map(|spec| plan(spec).unwrap()).collect();
    let sheets: Vec<Sheet> = specs.iter().zip(&hats).map(|(spec, hat)| lay_out(&write(hat, spec), hat, spec, &about)).collect();
    (grade(&names, &sheets), sheets, hats)
}

/// The text of a sheet's section again, as the merged one gives it for a size.
fn own_texts(graded: &Graded, size: usize) -> Vec<String> {
    let mut all = Vec::new();
    for block in graded.sections.iter().flat_map(|section| &section.blocks) {
        let Some(at) = block.sizes.iter().position(|one| *one == size) else { continue };
        all.extend(block.before.iter().filter_map(|told| told.own(at)));
        all.extend(block.lines.iter().filter_map(|line| line.own[at].as_ref()).map(WrittenLine::text_line));
        all.extend(block.after.iter().filter_map(|told| told.own(at)));
    }
    all
}

#[test]
fn every_size_is_in_it_word_for_word() {
    for layout in [Layout::Spread, Layout::Wedges(6)] {
        let (graded, sheets, _) = graded(&[48.0, 51.0, 54.0, 57.0, 60.0], layout);
        for (size, sheet) in sheets.iter().enumerate() {
            let own: Vec<String> = sheet
                .sections
                .iter()
                .flat_map(|s| {
                    s.before.iter().cloned().chain(s.lines.iter().map(WrittenLine::text_line)).chain(s.after.iter().cloned())
                })
                .collect();
            assert_eq!(own_texts(&graded, size), own);
        }
    }
}

#[test]
fn one_size_is_told_as_it_is() {
    let (graded, sheets, _) = graded(&[57.0], Layout::Spread);
    let lines: Vec<String> = sheets[0].sections.iter().flat_map(|s| s.lines.iter().map(WrittenLine::text_line)).collect();
    let merged: Vec<String> =
        graded.sections.iter().flat_map(|s| &s.blocks).flat_map(|b| b.lines.iter().map(GradedLine::text_line)).collect();
    assert_eq!(merged, lines);
    assert!(graded.sections.iter().all(|section| section.blocks.len() == 1));
}

#[test]
fn sizes_share_the_band() {
    let (graded, ..) = graded(&[48.0, 52.0, 56.0], Layout::Wedges(6));
    let band = graded.sections.iter().find(|s| s.heading == "Band").unwrap();
    assert_eq!(band.blocks.len(), 1);
    assert!(band.blocks[0].lines.iter().all(|line| Graded::for_all(&line.label)), "{band:?}");
    let (shared, all) = graded.shared_lines();
    assert!(shared >= band.blocks[0].lines.len() as u32 && shared <= all);
}

#[test]
fn the_table_has_a_column_a_size() {
    let (graded, _, hats) = graded(&[48.0, 56.0], Layout::Spread);
    let about = About { colour_names: &["indigo", "weld"], ..About::default() };
    let table = size_table(&graded, &hats.iter().collect::<Vec<_>>(), &about);
    assert!(table.rows.iter().all(|row| row.len() == 3) && table.head.len() == 3);
    assert_eq!(table.rows[0], ["Head", "48.0 cm", "56.0 cm"]);
    let stitches = table.rows.iter().find(|row| row[0] == "Around, in stitches").unwrap();
    assert_eq!(stitches[1..], hats.iter().map(|hat| hat.size.stitches.to_string()).collect::<Vec<_>>());
}
