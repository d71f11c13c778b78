//! What there is to make: the rounds as bars, the written pattern.

use crate::ask::letter;
use crate::bench::{Bench, Shown, figure_units};
use crate::choice::{Choice, choice};
use crate::dom;
use crate::erase::{flag, memo, part_if, words};
use crate::html::Html;
use crate::made_rows::{self, Line, Part};
use crate::see::stale;
use hatwright_pattern::written::{self, About, Sheet};
use hatwright_project::{ColourName, Project, Terms, Units};
use leptos::prelude::*;

/// The version that every pattern carries.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");

/// The pattern of the hat that is shown, laid out.
pub fn sheet(bench: Bench) -> Memo<Sheet> {
    // Names are the document's own business: they change without a new plan.
    let named = memo(move || {
        bench.project.with(|p| {
            let yarns: Vec<String> = p.colours.iter().map(|c| c.yarn.clone()).collect();
            (p.name.clone(), yarn_names(&p.colours), yarns, p.terms, p.units)
        })
    });
    memo(move || {
        named.with(|(name, colours, yarns, terms, units)| {
            let yarns: Vec<&str> = yarns.iter().map(String::as_str).collect();
            let mut names: Vec<&str> = colours.iter().map(String::as_str).collect();
            bench.shown.with(|s| {
                // While a refused hat has fewer colours than the last good one, the missing names stay empty.
                names.resize(names.len().max(s.spec.balls.len()), "");
                let about = About {
                    title: if name.trim().is_empty() { "A hat" } else { name },
                    colour_names: &names,
                    yarn_names: &yarns,
                    terms: written_terms(*terms),
                    units: figure_units(*units),
                    version: VERSION,
                    ..About::default()
                };
                written::lay_out(&written::write(&s.hat, &s.spec), &s.hat, &s.spec, &about)
            })
        })
    })
}

/// What the pattern calls the yarns: two of one name, or without one, are told apart by their letters.
pub fn yarn_names(colours: &[ColourName]) -> Vec<String> {
    let twin = |i: usize| colours.iter().enumerate().any(|(j, c)| j != i && c.name.trim() == colours[i].name.trim());
    let name = |(i, c): (usize, &ColourName)| match c.name.trim() {
        "" => ["colour ", &letter(i).to_string()].concat(),
        name if twin(i) => [name, " ", &letter(i).to_string()].concat(),
        name => name.to_owned(),
    };
    colours.iter().enumerate().map(name).collect()
}

/// The pattern crate's terms.
pub fn written_terms(terms: Terms) -> written::Terms {
    match terms {
        Terms::Us => written::Terms::Us,
        Terms::Uk => written::Terms::Uk,
    }
}

/// The colours of a document as the screen shows them.
pub fn hexes(project: &Project) -> Vec<String> {
    project.colours.iter().map(|c| c.hex.to_string()).collect()
}

/// One bar a round, as long as its stitches, in its yarn; a table for those who hear it.
pub fn rounds(bench: Bench, sheet: Memo<Sheet>) -> AnyView {
    let table = memo(move || {
        let hexes = bench.project.with(hexes);
        bench.shown.with(|s| sheet.with(|sheet| table(s, sheet, &hexes)))
    });
    let title = words(move || {
        let flat = bench.shown.with(|s| s.hat.rounds.is_empty());
        if flat { "Row by row" } else { "Round by round" }.to_owned()
    });
    view! {
        <section class="rounds card" aria-labelledby="rounds-title" class:stale=flag(move || stale(bench))>
            <h2 id="rounds-title">{title}</h2>
            <table id="rounds" inner_html=words(move || table.get())></table>
            {crate::begin::begin(bench)}
        </section>
    }
    .into_any()
}

fn table(shown: &Shown, sheet: &Sheet, hexes: &[String]) -> String {
    let parts = made_rows::parts(&shown.hat);
    let widest = made_rows::widest(parts.iter().flat_map(|p| &p.lines), false);
    let mixed = !shown.hat.rounds.is_empty();
    let mut html = Html::new();
    html.raw("<thead><tr><th scope=\"col\">").raw(if mixed { "Round" } else { "Row" });
    html.raw(
        "</th><th scope=\"col\" class=\"strips\"><span class=\"hidden\">Picture</span></th><th scope=\"col\" class=\"total\">\
         Stitches</th><th scope=\"col\" class=\"work\">Work</th></tr></thead>",
    );
    for part in &parts {
        html.raw("<tbody><tr class=\"zone\"><th scope=\"rowgroup\" colspan=\"4\">").text(part.name);
        // Rows have numbers of their own, beside those of the rounds.
        let rows = mixed && part.lines.iter().all(|l| l.rows);
        html.raw(if rows { " <small>in rows</small></th></tr>" } else { "</th></tr>" });
        for line in &part.lines {
            let widest = if line.rows { made_rows::widest(part.lines.iter(), true) } else { widest };
            row(&mut html, part, line, widest, sheet, hexes);
        }
        html.raw("</tbody>");
    }
    html.done()
}

fn row(html: &mut Html, part: &Part, line: &Line, widest: u32, sheet: &Sheet, hexes: &[String]) {
    html.raw(if line.change == 0 { "<tr><th scope=\"row\">" } else { "<tr class=\"shapes\"><th scope=\"row\">" });
    html.text(&made_rows::label(line)).raw("</th><td class=\"strips\">");
    if line.rows && line.count() > MOST_BARS {
        side_by_side(html, line, hexes);
    } else {
        bars(html, line, widest, hexes);
    }
    html.raw("</td><td class=\"total\">").number(line.stitches).raw("</td><td class=\"work\">");
    // A repeat and how often it is worked stay together at the end of a line, and so do a stitch and its bracket.
    let work = line.work(part, sheet).replace("] × ", "]\u{a0}×\u{a0}");
    html.text(
        &["sc]", "hdc]", "dc]", "htr]", "tr]"]
            .iter()
            .fold(work, |text, end| text.replace(&[" ", *end].concat(), &["\u{a0}", *end].concat())),
    );
    if line.change != 0 {
        html.raw(if line.change < 0 { " <b class=\"fewer\">" } else { " <b class=\"more-st\">" });
        html.raw(&made_rows::signed(line.change)).raw("</b>");
    }
    if !line.note.is_empty() {
        html.raw(" ").element("small", line.note);
    }
    if hexes.len() > 1 {
        let letters = made_rows::runs(&line.colours, |c| letter(usize::from(c.0)));
        html.raw(" <small class=\"letters\">").text(&letters).raw("</small>");
    }
    html.raw("</td></tr>");
}

/// Rounds that are drawn one by one; of more, the first and the last.
const MOST_BARS: u32 = 12;

/// A bar for each round, and a notch for each stitch more or less.
fn bars(html: &mut Html, line: &Line, widest: u32, hexes: &[String]) {
    let many = line.count() > MOST_BARS;
    let drawn = line.count().min(MOST_BARS);
    let tall = (drawn + u32::from(many)) * 15;
    html.raw("<svg aria-hidden=\"true\" width=\"100%\" height=\"").number(tall).raw("\">");
    let share = (line.stitches * 1000 + widest / 2) / widest;
    let each = line.colours.iter().flat_map(|(c, n)| core::iter::repeat_n(*c, *n as usize));
    let last = MOST_BARS / 2;
    for (i, colour) in (0_u32..).zip(each) {
        let left = line.count() - i;
        if many && i >= MOST_BARS - last && left > last {
            continue;
        }
        // What is left out is a gap of one bar.
        let place = if many && left <= last { drawn + 1 - left } else { i };
        html.raw("<rect rx=\"3\" height=\"11\" y=\"").number(place * 15 + 2).raw("\" width=\"");
        permille(html, share).raw("\" fill=\"").text(hexes.get(usize::from(colour.0)).map_or("", String::as_str)).raw("\"/>");
    }
    if many {
        let middle = (MOST_BARS - last) * 15 + 7;
        for dot in [0, 6, 12] {
            html.raw("<circle class=\"gap\" r=\"1.6\" cy=\"").number(middle).raw("\" cx=\"").number(6 + dot).raw("\"/>");
        }
    }
    let notches = line.change.unsigned_abs();
    for notch in 0..notches {
        html.raw("<circle class=\"notch\" r=\"2\" cy=\"7.5\" cx=\"");
        permille(html, share * (2 * notch + 1) / (2 * notches)).raw("\"/>");
    }
    html.raw("</svg>");
}

/// Rows stand side by side around the head: a strip of their colours.
fn side_by_side(html: &mut Html, line: &Line, hexes: &[String]) {
    html.raw("<svg aria-hidden=\"true\" width=\"100%\" height=\"24\">");
    let all = line.count();
    let mut at = 0;
    for (colour, rows) in &line.colours {
        html.raw("<rect height=\"20\" y=\"2\" x=\"");
        permille(html, at * 1000 / all).raw("\" width=\"");
        permille(html, rows * 1000 / all).raw("\" fill=\"");
        html.text(hexes.get(usize::from(colour.0)).map_or("", String::as_str)).raw("\"/>");
        at += rows;
    }
    html.raw("</svg>");
}

fn permille(html: &mut Html, share: u32) -> &mut Html {
    html.number(share / 10).raw(".").number(share % 10).raw("%")
}

const TERMS: Choice = Choice {
    legend: "Words",
    name: "terms",
    options: &["US terms", "UK terms"],
    get: |p| usize::from(p.terms == Terms::Uk),
    set: |bench, i| bench.change(|p| p.terms = [Terms::Us, Terms::Uk][i]),
};

/// Units of the whole page.
pub const UNITS: Choice = Choice {
    legend: "Lengths",
    name: "units",
    options: &["cm", "inches"],
    get: |p| usize::from(p.units == Units::Inches),
    set: |bench, i| {
        // What was typed in the old unit and could be used stands in the document; the fields show it in the new one. What could not
        // be used is read anew.
        bench.typed.update(|all| all.retain(|_, t| t.error.is_some()));
        bench.change(|p| p.units = [Units::Centimetres, Units::Inches][i]);
        for (place, typed) in bench.typed.get_untracked() {
            bench.take(place, typed.text);
        }
    },
};

/// The written pattern.
pub fn pattern(bench: Bench, sheet: Memo<Sheet>) -> AnyView {
    let copied = RwSignal::new("");
    let copy = move |_| {
        dom::copy(&plain(bench, sheet), move |done| {
            copied.set(if done { "Copied." } else { "This browser did not let the page copy; save it as text instead." });
        });
    };
    let save = move |_| dom::download("hat-pattern.txt", &plain(bench, sheet), "text/plain;charset=utf-8");
    let text = memo(move || sheet.with(text));
    view! {
        <article class="pattern card" aria-labelledby="pattern-title" id="pattern" tabindex="-1" class:stale=flag(move || stale(bench))>
            <header>
                <h2 id="pattern-title">"Pattern"</h2>
                {choice(bench, TERMS)}
                <div class="quick">
                    <button type="button" id="copy-pattern" on:click=copy>"Copy the text"</button>
                    <button type="button" on:click=save>"Save as text"</button>
                    <span role="status">{words(move || copied.get().to_owned())}</span>
                </div>
            </header>
            {part_if(move || stale(bench), || view! { <p class="old">{OLD}</p> }.into_any())}
            <div id="pattern-text" inner_html=words(move || text.get())></div>
        </article>
    }
    .into_any()
}

/// Said of a pattern while the numbers on the page are not its own.
const OLD: &str = "This is the last hat that worked, not the numbers that stand in the fields now.";

/// The pattern as plain text.
fn plain(bench: Bench, sheet: Memo<Sheet>) -> String {
    let text = sheet.with_untracked(Sheet::text);
    if untrack(|| stale(bench)) { [OLD, "\n\n", &text].concat() } else { text }
}

fn text(sheet: &Sheet) -> String {
    let mut html = Html::new();
    html.raw("<p class=\"title\">").text(&sheet.title).raw("</p><p class=\"terms\">").text(&sheet.terms).raw("</p>");
    for section in &sheet.sections {
        html.raw("<section>").element("h3", section.heading);
        for paragraph in &section.before {
            html.element("p", paragraph);
        }
        if !section.lines.is_empty() {
            html.raw("<ol class=\"lines\">");
            for line in &section.lines {
                html.raw("<li>").element("b", &line.label);
                if let Some(colour) = &line.colour_name {
                    html.raw("<span class=\"in\">, ").text(colour).raw("</span>");
                }
                html.raw(": ").text(&line.text).raw(".");
                if let Some(total) = line.total {
                    html.raw(" <b class=\"total\">(").number(total).raw(")</b>");
                }
                html.raw("</li>");
            }
            html.raw("</ol>");
        }
        for paragraph in &section.after {
            html.element("p", paragraph);
        }
        html.raw("</section>");
    }
    html.raw("<p class=\"version\">").text(&sheet.version).raw("</p>");
    html.done()
}
