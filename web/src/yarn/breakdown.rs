//! Where the yarn goes: a picture, and the same as a table of parts and colours.

use crate::ask::letter;
use crate::bench::{Bench, Shown};
use crate::erase::{memo, words};
use crate::html::Html;
use crate::made::hexes;
use hatwright_pattern::figures;
use hatwright_pattern::picture::{to_markup, yarn_picture, yarn_table};
use hatwright_sizing::{Colour, YarnLength};
use hatwright_words::shop as words_of;
use leptos::prelude::*;

/// The part of the page.
pub fn breakdown(bench: Bench) -> AnyView {
    let drawn = memo(move || with(bench, |s, names, hexes, units| to_markup(&yarn_picture(&s.hat, names, units), hexes)));
    let table = memo(move || with(bench, table));
    view! {
        <details id="breakdown">
            <summary>{words_of::where_title()}</summary>
            <figure class="picture" inner_html=words(move || drawn.get())></figure>
            <table class="parts" inner_html=words(move || table.get())></table>
        </details>
    }
    .into_any()
}

/// The hat that is shown, with its colours as the document names and shows them.
fn with(bench: Bench, of: impl FnOnce(&Shown, &[&str], &[&str], figures::Units) -> String) -> String {
    let (names, hexes) = bench.project.with(|p| (p.told_colours(), hexes(p)));
    let units = bench.figure_units();
    let [names, hexes] = [&names, &hexes].map(|all| all.iter().map(String::as_str).collect::<Vec<_>>());
    bench.shown.with(|s| of(s, &names, &hexes, units))
}

fn table(shown: &Shown, names: &[&str], hexes: &[&str], units: figures::Units) -> String {
    let rows = yarn_table(&shown.hat, names);
    let mut html = Html::new();
    html.raw("<thead><tr><th scope=\"col\">").text(words_of::column_part());
    html.raw("</th><th scope=\"col\">").text(words_of::column_colour());
    html.raw("</th><th scope=\"col\" class=\"count\">").text(words_of::column_stitches());
    html.raw("</th><th scope=\"col\" class=\"count\">").text(words_of::column_yarn()).raw("</th></tr></thead>");
    for of in rows.chunk_by(|a, b| a.part == b.part) {
        html.raw("<tbody>");
        for (i, row) in of.iter().enumerate() {
            let head = (i == 0).then_some((row.part_name, of.len()));
            let stitches = row.stitches.map_or_else(|| "–".to_owned(), |n| n.to_string());
            line(&mut html, head, row.colour, names, hexes, &[stitches, figures::yarn_fine(row.length, units)]);
        }
        html.raw("</tbody>");
    }
    html.raw("<tfoot>");
    let used: Vec<_> = shown.hat.yarn.iter().filter(|need| need.length > YarnLength::default()).collect();
    for (i, need) in used.iter().enumerate() {
        let head = (i == 0).then_some((words_of::all_of_it(), used.len()));
        let stitches: u64 = rows.iter().filter(|row| row.colour == need.colour).filter_map(|row| row.stitches).sum();
        line(&mut html, head, need.colour, names, hexes, &[stitches.to_string(), figures::yarn_fine(need.length, units)]);
    }
    html.raw("</tfoot>");
    html.done()
}

/// A row of the table; `head` names what it and so many below belong to.
fn line(html: &mut Html, head: Option<(&str, usize)>, colour: Colour, names: &[&str], hexes: &[&str], numbers: &[String; 2]) {
    html.raw("<tr>");
    if let Some((name, rows)) = head {
        html.raw("<th scope=\"rowgroup\" rowspan=\"").number(rows as u32).raw("\">").text(name).raw("</th>");
    }
    let i = usize::from(colour.0);
    let of = |all: &[&str]| all.get(i).copied().unwrap_or_default().to_owned();
    html.raw("<th scope=\"row\"><span class=\"of\">").chip(&of(hexes)).raw("<span>");
    html.text(&[&letter(i).to_string(), " · ", &of(names)].concat()).raw("</span></span></th>");
    for number in numbers {
        html.raw("<td class=\"count\">").text(number).raw("</td>");
    }
    html.raw("</tr>");
}
