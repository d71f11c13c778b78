//! What there is to make: the rounds as bars, the yarn to buy, the written pattern.

use crate::ask::letter;
use crate::bench::{Bench, Shown, figure_units};
use crate::choice::{Choice, choice};
use crate::dom;
use crate::erase::{flag, memo, part_if, words};
use crate::field::number;
use crate::html::Html;
use crate::see::stale;
use hatwright_pattern::figures;
use hatwright_pattern::picture::grouped;
use hatwright_pattern::written::{self, About, Sheet};
use hatwright_project::{ColourName, Project, Terms, Units};
use hatwright_sizing::{Colour, Quantity, RoundKind, YarnLength};
use leptos::prelude::*;

/// The version that every pattern carries.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");

/// The pattern of the hat that is shown, laid out.
pub fn sheet(bench: Bench) -> Memo<Sheet> {
    // Names are the document's own business: they change without a new plan.
    let named = memo(move || bench.project.with(|p| (p.name.clone(), yarn_names(&p.colours), p.terms, p.units)));
    memo(move || {
        named.with(|(name, colours, terms, units)| {
            let mut names: Vec<&str> = colours.iter().map(String::as_str).collect();
            bench.shown.with(|s| {
                // While a refused hat has fewer colours than the last good one, the missing names stay empty.
                names.resize(names.len().max(s.spec.balls.len()), "");
                let about = About {
                    title: if name.trim().is_empty() { "A hat" } else { name },
                    colour_names: &names,
                    terms: written_terms(*terms),
                    units: figure_units(*units),
                    version: VERSION,
                };
                written::lay_out(&written::write(&s.hat, &s.spec), &s.hat, &s.spec, &about)
            })
        })
    })
}

/// What the pattern calls the yarns: two of one name, or without one, are told apart by their letters.
fn yarn_names(colours: &[ColourName]) -> Vec<String> {
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

fn hexes(project: &Project) -> Vec<String> {
    project.colours.iter().map(|c| c.hex.to_string()).collect()
}

/// One bar a round, as long as its stitches, in its yarn; a table for those who hear it.
pub fn rounds(bench: Bench, sheet: Memo<Sheet>) -> AnyView {
    let rows = memo(move || {
        let hexes = bench.project.with(hexes);
        bench.shown.with(|s| sheet.with(|sheet| bars(s, sheet, &hexes)))
    });
    view! {
        <section class="rounds card" aria-labelledby="rounds-title" class:stale=flag(move || stale(bench))>
            <h2 id="rounds-title">"Round by round"</h2>
            <table>
                <thead>
                    <tr>
                        <th scope="col">"Round"</th>
                        <th scope="col" class="strips"><span class="hidden">"Picture"</span></th>
                        <th scope="col" class="total">"Stitches"</th>
                        <th scope="col" class="work">"Work"</th>
                    </tr>
                </thead>
                <tbody id="rounds" inner_html=words(move || rows.get())></tbody>
            </table>
        </section>
    }
    .into_any()
}

fn bars(shown: &Shown, sheet: &Sheet, hexes: &[String]) -> String {
    let mut html = Html::new();
    for group in grouped(&shown.hat) {
        html.raw(if group.decreases > 0 { "<tr class=\"shapes\"><th scope=\"row\">" } else { "<tr><th scope=\"row\">" });
        html.number(group.from);
        if group.to > group.from {
            html.raw("–").number(group.to);
        }
        let high = (group.to - group.from + 1) * 15;
        html.raw("</th><td class=\"strips\"><svg aria-hidden=\"true\" width=\"100%\" height=\"").number(high).raw("\">");
        for bar in &group.bars {
            let hex = hexes.get(usize::from(bar.colour.0)).map_or("", String::as_str);
            for round in bar.from..=bar.to {
                html.raw("<rect rx=\"3\" height=\"11\" y=\"").number((round - group.from) * 15 + 2).raw("\" width=\"");
                html.number(bar.share_permille / 10)
                    .raw(".")
                    .number(bar.share_permille % 10)
                    .raw("%\" fill=\"")
                    .text(hex)
                    .raw("\"/>");
            }
        }
        for notch in 0..group.decreases {
            let at = group.bars.first().map_or(0, |b| b.share_permille) * (2 * notch + 1) / (2 * group.decreases);
            html.raw("<circle class=\"notch\" r=\"2\" cy=\"7.5\" cx=\"").number(at / 10).raw(".").number(at % 10).raw("%\"/>");
        }
        html.raw("</svg></td><td class=\"total\">").number(group.stitches).raw("</td><td class=\"work\">");
        // A repeat and how often it is worked stay together at the end of a line.
        html.text(
            &compact(sheet, group.from)
                .unwrap_or_default()
                .replace("] × ", "]\u{a0}×\u{a0}")
                .replace(" sc]", "\u{a0}sc]")
                .replace(" dc]", "\u{a0}dc]"),
        );
        if group.decreases > 0 {
            html.raw(" <b class=\"fewer\">−").number(group.decreases).raw("</b>");
        }
        if group.kind == RoundKind::Adjust {
            html.raw(" <small>to the wedges’ count</small>");
        }
        if hexes.len() > 1 {
            html.raw(" <small class=\"letters\">").text(&runs(group.bars.iter().map(|b| (b.colour, b.rounds())))).raw("</small>");
        }
        html.raw("</td></tr>");
    }
    html.done()
}

/// The short form of the work of a round.
fn compact(sheet: &Sheet, round: u32) -> Option<String> {
    let lines = sheet.sections.iter().flat_map(|s| &s.lines);
    let mut lines = lines.filter(|l| matches!(l.numbers, written::Label::Round(from, to) if (from..=to).contains(&round)));
    lines.next().map(|l| l.compact.clone())
}

/// Colours as letters with their rounds: "5 × A, 2 × B".
fn runs(colours: impl Iterator<Item = (Colour, u32)>) -> String {
    let mut runs: Vec<(Colour, u32)> = Vec::new();
    for (colour, count) in colours {
        match runs.last_mut() {
            Some((last, n)) if *last == colour => *n += count,
            _ => runs.push((colour, count)),
        }
    }
    let one = runs.len() == 1 && runs[0].1 == 1;
    let each = runs.iter().map(|(c, n)| {
        let letter = letter(usize::from(c.0)).to_string();
        if one { letter } else { [&n.to_string(), "\u{a0}×\u{a0}", &letter].concat() }
    });
    each.collect::<Vec<_>>().join(", ")
}

/// Yarn by colour: metres, their range, whole balls.
pub fn yarn(bench: Bench) -> AnyView {
    let rows = memo(move || {
        let units = bench.figure_units();
        let names = bench.project.with(|p| p.colours.clone());
        bench.shown.with(|s| needs(s, &names, units))
    });
    view! {
        <section class="yarns card" aria-labelledby="yarn-title" id="yarn" tabindex="-1" class:stale=flag(move || stale(bench))>
            <h2 id="yarn-title">"Yarn"</h2>
            <table>
                <thead>
                    <tr>
                        <th scope="col">"Colour"</th>
                        <th scope="col">"About"</th>
                        <th scope="col">"9 times in 10"</th>
                        <th scope="col">"Buy"</th>
                    </tr>
                </thead>
                <tbody id="yarn-rows" inner_html=words(move || rows.get())></tbody>
            </table>
            <p class="note">
                "Estimated from the gauge: chain, stitches, decreases, pom-pom, closing strand and ends; right to a quarter either way, for \
                 all colours at once. Buy balls of one dye lot."
            </p>
            {number(bench, Quantity::Margin, 0, "% over")}
        </section>
    }
    .into_any()
}

fn needs(shown: &Shown, colours: &[ColourName], units: figures::Units) -> String {
    let mut html = Html::new();
    // A colour that is in no stripe takes no yarn.
    for need in shown.hat.yarn.iter().filter(|need| need.balls > 0) {
        let i = usize::from(need.colour.0);
        html.raw("<tr><th scope=\"row\">");
        if let Some(colour) = colours.get(i) {
            html.chip(&colour.hex.to_string()).text(&letter(i).to_string()).raw(" · ").text(&colour.name);
        }
        let ball = shown.spec.balls.get(i).map_or(0.0, |b| b.yarn.value());
        html.raw("</th><td class=\"length\">").text(&figures::yarn(need.length, units)).raw("</td><td class=\"range\">");
        html.text(&figures::yarn_bare(need.low, units))
            .raw("–")
            .text(&figures::yarn(need.high, units))
            .raw("</td><td class=\"balls\">");
        html.number(need.balls).raw(if need.balls == 1 { " ball of " } else { " balls of " });
        html.text(&figures::yarn(YarnLength::from_metres(ball), units)).raw("</td></tr>");
    }
    html.done()
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
    html.raw("<p class=\"title\">").text(&sheet.title).raw("</p><p class=\"terms\">").text(sheet.terms).raw("</p>");
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
