//! What there is to make: the rounds as bars, the written pattern.

use crate::ask::letter;
use crate::bench::{Bench, Shown};
use crate::choice::{Choice, choice};
use crate::dom;
use crate::erase::{flag, memo, part_if, words};
use crate::html::Html;
use crate::made_rows::{self, Line, Part};
use crate::see::stale;
use hatwright_pattern::written::{self, Sheet};
use hatwright_project::{Project, Terms, Units};
use hatwright_sizing::HatSpec;
use hatwright_words::{Language, made as say, spoken};
use leptos::prelude::*;

/// The version that every pattern carries.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");

/// The pattern of the hat that is shown, laid out.
pub fn sheet(bench: Bench) -> Memo<Sheet> {
    // Words are the document's own business: they change without a new plan.
    let told = memo(move || {
        let bare =
            |p: &Project| Project { spec: HatSpec::default(), notes: String::new(), revision: 0, changed_ms: 0, ..p.clone() };
        bench.project.with(bare)
    });
    memo(move || {
        told.with(|p| {
            bench.shown.with(|s| p.about(|about| written::lay_out(&written::write(&s.hat, &s.spec), &s.hat, &s.spec, about)))
        })
    })
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
        if flat { say::row_by_row() } else { say::round_by_round() }.to_owned()
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
    html.raw("<thead><tr><th scope=\"col\">").text(if mixed { say::round() } else { say::row() });
    html.raw("</th><th scope=\"col\" class=\"strips\"><span class=\"hidden\">").text(say::picture());
    html.raw("</span></th><th scope=\"col\" class=\"total\">").text(say::stitches());
    html.raw("</th><th scope=\"col\" class=\"work\">").text(say::work()).raw("</th></tr></thead>");
    for part in &parts {
        html.raw("<tbody><tr class=\"zone\"><th scope=\"rowgroup\" colspan=\"4\">").text(part.name);
        // Rows have numbers of their own, beside those of the rounds.
        let rows = mixed && part.lines.iter().all(|l| l.rows);
        if rows {
            html.raw(" ").element("small", say::in_rows());
        }
        html.raw("</th></tr>");
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
    html.text(&together(&line.work(part, sheet)));
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

/// The work with what stays together at the end of a line: a repeat and how often it is worked, a stitch and its bracket.
fn together(work: &str) -> String {
    const ENDS: [&str; 8] = ["sc]", "hdc]", "dc]", "htr]", "tr]", "pb]", "mpa]", "pa]"];
    let work = work.replace("] × ", "]\u{a0}×\u{a0}");
    let work = ENDS.iter().fold(work, |text, end| text.replace(&[" ", *end].concat(), &["\u{a0}", *end].concat()));
    if spoken() == Language::English {
        return work;
    }
    // Two letters alone at the head of a line are hard to read.
    let mut told = String::with_capacity(work.len() + 8);
    for word in work.split(' ') {
        if !told.is_empty() {
            told.push(if told.ends_with(|c: char| c.is_ascii_digit()) { '\u{a0}' } else { ' ' });
        }
        told.push_str(word);
    }
    told
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
    legend: say::terms,
    name: "terms",
    options: &[say::us_terms, say::uk_terms],
    get: |p| usize::from(p.terms == Terms::Uk),
    set: |bench, i| bench.change(|p| p.terms = [Terms::Us, Terms::Uk][i]),
};

const ALL_UNITS: [Units; 3] = [Units::Centimetres, Units::Inches, Units::Both];

/// Units of the whole page.
pub const UNITS: Choice = Choice {
    legend: say::units,
    name: "units",
    options: &[say::centimetres, say::inches, say::both],
    get: |p| ALL_UNITS.iter().position(|units| *units == p.units).unwrap_or(ALL_UNITS.len()),
    set: |bench, i| {
        // What was typed in the old unit and could be used stands in the document; the fields show it in the new one. What could not
        // be used is read anew.
        bench.typed.update(|all| all.retain(|_, t| t.error.is_some()));
        bench.change(|p| p.units = ALL_UNITS[i]);
        bench.reread();
    },
};

/// The written pattern.
pub fn pattern(bench: Bench, sheet: Memo<Sheet>) -> AnyView {
    let copied = RwSignal::new("");
    let copy = move |_| {
        dom::copy(&plain(bench, sheet), move |done| {
            copied.set(if done { say::copied() } else { say::not_copied() });
        });
    };
    let save = move |_| dom::download("hat-pattern.txt", &plain(bench, sheet), "text/plain;charset=utf-8");
    let text = memo(move || sheet.with(text));
    view! {
        <article class="pattern card" aria-labelledby="pattern-title" id="pattern" tabindex="-1" class:stale=flag(move || stale(bench))>
            <header>
                <h2 id="pattern-title">{say::pattern()}</h2>
                {(spoken() == Language::English).then(|| choice(bench, TERMS))}
                <div class="quick">
                    <button type="button" id="copy-pattern" on:click=copy>{say::copy()}</button>
                    <button type="button" on:click=save>{say::save()}</button>
                    <button type="button" id="open-publish" class="go" on:click=|_| crate::publish::show()>{hatwright_words::publish::open()}</button>
                    <span role="status">{words(move || copied.get().to_owned())}</span>
                </div>
            </header>
            {part_if(move || stale(bench), || view! { <p class="old">{say::old()}</p> }.into_any())}
            <div id="pattern-text" inner_html=words(move || text.get())></div>
        </article>
    }
    .into_any()
}

/// The pattern as plain text.
fn plain(bench: Bench, sheet: Memo<Sheet>) -> String {
    let text = sheet.with_untracked(Sheet::text);
    if untrack(|| stale(bench)) { [say::old(), "\n\n", &text].concat() } else { text }
}

fn text(sheet: &Sheet) -> String {
    let mut html = Html::new();
    html.raw("<p class=\"title\">").text(&sheet.title).raw("</p>");
    for notice in sheet.notices() {
        html.raw("<p class=\"terms\">").text(&notice).raw("</p>");
    }
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

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_words::in_language;

    #[test]
    fn what_belongs_together_stays_on_a_line() {
        assert_eq!(together("2 sc, [sc2tog, 5 sc] × 6, 4 sc"), "2 sc, [sc2tog, 5\u{a0}sc]\u{a0}×\u{a0}6, 4 sc");
        in_language(Language::Spanish, || {
            assert_eq!(together("2 pb, [pb2jun, pb] × 6, 4 pb"), "2\u{a0}pb, [pb2jun,\u{a0}pb]\u{a0}×\u{a0}6, 4\u{a0}pb");
        });
    }
}
