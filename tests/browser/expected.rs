//! What the page should show of a hat, worked out natively, against what it does show.

use std::time::Instant;

use hatwright_pattern::figures::{self, Units};
use hatwright_pattern::say;
use hatwright_pattern::written::{self, About};
use hatwright_project::{Project, ProjectId, Terms};
use hatwright_sizing::{Begun, Buy, Colour, Hat, Head, Length, Mass, Shape, Size, Style, Unit, YarnLength, Zone, plan, shop};
use serde_json::{Value, json};

use crate::page::Page;

/// The hat of a first visit.
pub fn example() -> Project {
    hatwright_project::example(ProjectId::from_bits(0))
}

/// Gives a hat a head by tape: the measures of its shape, which nobody has changed, are the usual ones of that head.
pub fn measured(project: &mut Project, ticks: i32) {
    let girth = Length::from_ticks(ticks);
    project.spec.head = Head::Measured(girth);
    project.spec.shape = Shape::for_head(girth);
}

/// The units that a project is shown in.
pub fn units(project: &Project) -> Units {
    match project.units {
        hatwright_project::Units::Centimetres => Units::Centimetres,
        hatwright_project::Units::Inches => Units::Inches,
        hatwright_project::Units::Both => Units::Both,
    }
}

/// A project's pattern as plain text.
pub fn pattern(project: &Project, hat: &Hat) -> String {
    let names: Vec<&str> = project.colours.iter().map(|c| &*c.name).collect();
    let yarns: Vec<&str> = project.colours.iter().map(|c| &*c.yarn).collect();
    let about = About {
        title: if project.name.is_empty() { "A hat" } else { &project.name },
        colour_names: &names,
        yarn_names: &yarns,
        terms: if project.terms == Terms::Uk { written::Terms::Uk } else { written::Terms::Us },
        units: units(project),
        version: env!("CARGO_PKG_VERSION"),
        ..About::default()
    };
    written::print(hat, &project.spec, &about)
}

/// Before the page's own script: the timer that saves after the last keystroke never comes, so only leaving can save.
pub const BY_LEAVING_ONLY: &str = "
    const timeout = window.setTimeout;
    window.setTimeout = (run, ms, ...rest) => ms >= 200 && ms <= 2000 ? 0 : timeout(run, ms, ...rest);";

/// Reads from the page what [`expected`] gives.
const SHOWN: &str = r"
    const text = css => document.querySelector(css)?.textContent ?? 'missing: ' + css;
    const all = (css, of) => [...document.querySelectorAll(css)].map(of);
    const rounds = [];
    for (const row of document.querySelectorAll('#rounds tbody tr:not(.zone)')) {
      const [from, to = from] = row.querySelector('th').textContent.split('–').map(Number);
      const bars = [...row.querySelectorAll('rect')];
      const change = row.querySelector('.fewer, .more-st')?.textContent ?? 'none';
      const part = row.parentElement.querySelector('.zone th').textContent;
      for (let n = from; n <= to; n++) {
        // Rows of one colour are one strip, and of very many rounds only some are drawn.
        const fill = bars.length === to - from + 1 ? bars[n - from].getAttribute('fill') : 'several';
        const flap = part.startsWith('Ear flaps');
        // A flap has one colour.
        rounds.push(`${part} ${n}: ${row.querySelector('.total').textContent}, ${change}, ${flap ? 'flap' : fill}`);
      }
    }
    return {
      name: document.getElementById('hat-name')?.value,
      stitches: text('#answer-stitches'),
      rounds: text('#answer-rounds'),
      yarn: text('#answer-yarn'),
      ages: text('#answer-ages'),
      head: text('#answer-head'),
      words: all('.answer small', s => s.textContent).slice(0, 2),
      bar: all('.bar .numbers b', b => b.textContent),
      sizes: all('.sizes .size', s => s.dataset.stitches + (s.getAttribute('aria-pressed') === 'true' ? ' taken' : '')),
      table: rounds,
      yarns: all('#yarn-rows tr', row => ['.of > span', '.length', '.grams', '.range', '.balls', '.holds', '.owned', '.price', '.left', '.left-grams', '.chance']
        .map(css => row.querySelector(css)?.textContent ?? '')),
      fit: text('#fit-sentence'),
      girth: all('#facts dd', dd => dd.textContent)[0],
      pattern: all('#pattern-text :is(p, h3, li)', line => line.textContent),
      stale: all('.stale', s => s.className),
      wrong: all('[aria-invalid=true]', field => field.id),
    }";

/// What the page should show of a hat that can be made.
pub fn expected(project: &Project) -> Value {
    let hat = plan(&project.spec).expect("a hat that can be made");
    let units = units(project);
    let [(first, around), (second, along)] = headline(project, &hat);
    let yarn = figures::yarn(hat.yarn.iter().map(|y| y.length).sum(), units);
    let table = table(project, &hat);
    let shop = shop(&hat, &project.spec);
    let yarns = shop.lines.iter().map(|line| to_buy(project, line, units));
    json!({
        "name": project.name,
        "stitches": first.to_string(),
        "rounds": second.to_string(),
        "words": [around, along],
        "yarn": yarn,
        "ages": others(&hat, units),
        "head": format!("fits {} head", figures::with_article(&figures::length(hat.head.girth, units))),
        "bar": [first.to_string(), second.to_string(), yarn],
        "sizes": sizes(&hat),
        "table": table,
        "yarns": yarns.collect::<Vec<_>>(),
        "fit": say::fit_sentence(&hat, units),
        "girth": girth(&hat, units),
        "pattern": lines(&pattern(project, &hat)),
        "stale": [],
        "wrong": [],
    })
}

/// A colour's row of the yarn: who it is, what it takes, what there is to buy, what is left, and how often it is enough.
fn to_buy(project: &Project, line: &Buy, units: Units) -> [String; 11] {
    let i = usize::from(line.colour.0);
    let (colour, ball) = (&project.colours[i], &project.spec.balls[i]);
    let called = if colour.yarn.is_empty() { String::new() } else { format!(" {}", colour.yarn) };
    let size = |y: YarnLength| figures::yarn(YarnLength::from_metres(y.metres().abs()), units);
    let grams = |g: Option<Mass>| g.map(|g| figures::mass(Mass::from_ticks(g.ticks().abs()), units)).unwrap_or_default();
    let word = if line.left < YarnLength::default() { " short" } else { "" };
    let owned = figures::show(ball.owned.ticks(), Unit::Count, units);
    [
        format!("{} · {}{called}", char::from(b'A' + line.colour.0), colour.name),
        size(line.need.length),
        grams(line.grams),
        format!("{}–{}", figures::yarn_bare(line.need.low, units), figures::yarn(line.need.high, units)),
        hatwright_words::count::balls(line.balls),
        format!("of {}", size(YarnLength::from_metres(ball.metres()))),
        if ball.owned.ticks() > 0 { format!("beside {owned} owned") } else { String::new() },
        line.price.filter(|_| line.balls > 0).map(figures::money).unwrap_or_default(),
        format!("{}{word}", size(line.left)),
        grams(line.left_grams),
        say::chance(line.chance),
    ]
}

/// The two numbers that answer the question, and what they are called.
fn headline(project: &Project, hat: &Hat) -> [(u32, &'static str); 2] {
    if let Some(panel) = &hat.panel {
        return [(panel.rows.len() as u32, "rows around"), (panel.stitches.get(), "stitches from edge to crown")];
    }
    let sideways = !hat.band_rows.is_empty();
    if hat.style == Style::EarWarmer && sideways {
        return [(hat.size.rows.get(), "rows around"), (project.spec.band.height.get(), "stitches tall")];
    }
    let rounds = match (hat.style, sideways) {
        (Style::EarWarmer, _) => "rounds tall",
        (_, true) => "rounds above the band",
        (_, false) => "rounds in all",
    };
    [(hat.stitches().get(), "stitches around"), (hat.round_count().get(), rounds)]
}

/// Rounds of which the page draws each.
const DRAWN: usize = 12;

/// Every row and round, in the order of work.
fn table(project: &Project, hat: &Hat) -> Vec<String> {
    let hex = |colour: Colour| project.colours[usize::from(colour.0)].hex.to_string();
    let sign = |less: u32, more: u32| match (less, more) {
        (0, 0) => "none".to_owned(),
        (0, more) => format!("+{more}"),
        (less, _) => format!("−{less}"),
    };
    let mut table = Vec::new();
    let strip = |table: &mut Vec<String>, part: &str, stitches: u32, colours: &[Colour]| {
        let striped = colours.len() <= DRAWN || colours.chunk_by(|a, b| a == b).count() == colours.len();
        table.extend(
            (1..)
                .zip(colours)
                .map(|(n, c)| format!("{part} {n}: {stitches}, none, {}", if striped { hex(*c) } else { "several".to_owned() })),
        );
    };
    let band = |table: &mut Vec<String>| {
        let part = if hat.rounds.is_empty() { "Band" } else { "Band in rows" };
        strip(table, part, project.spec.band.height.get(), &hat.band_rows);
    };
    if hat.begun == Begun::Band {
        band(&mut table);
    }
    if let Some(panel) = &hat.panel {
        // Short rows are told for one wedge, and then that the same is worked again.
        let short = panel.rows.iter().any(|r| r.stitches != panel.stitches);
        let wedge = if short { panel.wedge.get() as usize } else { panel.rows.len() };
        let (told, again) = panel.rows.split_at(wedge.min(panel.rows.len()));
        let mut number = 1;
        for rows in told.chunk_by(|a, b| a.stitches == b.stitches).chain((!again.is_empty()).then_some(again)) {
            let stitches = if number > wedge { panel.stitches } else { rows[0].stitches };
            for row in rows {
                let striped = rows.len() <= DRAWN || rows.chunk_by(|a, b| a.colour == b.colour).count() == rows.len();
                let fill = if striped && number <= wedge { hex(row.colour) } else { "several".to_owned() };
                table.push(format!("Hat {number}: {stitches}, none, {fill}"));
                number += 1;
            }
        }
    }
    for rounds in hat.rounds.chunk_by(|a, b| {
        (a.after, a.decreases, a.increases, a.kind, a.zone) == (b.after, b.decreases, b.increases, b.kind, b.zone)
    }) {
        for round in rounds {
            let part = match (round.zone, hat.style) {
                (Zone::Band, _) => "Band",
                (Zone::Body, _) => "Body",
                (Zone::Under, _) => "Underside",
                (Zone::Crown, Style::Tam) => "Disc",
                (Zone::Crown, _) => "Crown",
                (Zone::Tail, _) => "Tail",
                (Zone::Brim, _) => "Brim",
            };
            let fill = if rounds.len() > DRAWN { "several".to_owned() } else { hex(round.colour) };
            let change = sign(round.decreases.get(), round.increases.get());
            table.push(format!("{part} {}: {}, {change}, {fill}", round.number, round.after));
        }
    }
    if hat.begun == Begun::Crown {
        band(&mut table);
    }
    if let Some(flaps) = &hat.flaps {
        for (n, row) in (1..).zip(&flaps.rows) {
            let change = sign(row.decreases.get(), 0);
            table.push(format!("Ear flaps in rows {n}: {}, {change}, flap", row.after));
        }
    }
    table
}

/// The counts that can be taken, in order of size.
fn sizes(hat: &Hat) -> Vec<String> {
    let mut all: Vec<(Size, &str)> = hat.neighbours.iter().map(|size| (*size, "")).collect();
    all.push((hat.size, " taken"));
    all.sort_by_key(|(size, _)| size.girth);
    all.iter().map(|(size, taken)| format!("{}{taken}", size.stitches)).collect()
}

/// Whom else it fits.
fn others(hat: &Hat, units: Units) -> String {
    let heads = format!("heads {}", figures::length_span(hat.fit.least, hat.fit.most, units));
    match hat.fit.ages {
        None => heads,
        Some((from, _)) if from >= 18.0 => format!("{heads}; 8 in 10 adults"),
        Some((from, to)) => format!("{heads}; 8 in 10 at {}", figures::age_range(from, to)),
    }
}

fn girth(hat: &Hat, units: Units) -> String {
    let ease = match hat.size.ease {
        ease if ease.ticks() < 0 => "larger than the head".to_owned(),
        ease => format!("{} smaller than the head", figures::percent(ease)),
    };
    format!("{} relaxed, {ease}", figures::length(hat.size.girth, units))
}

/// The lines of a pattern as the page has them: the version last, no empty lines, headings without their underlines.
fn lines(text: &str) -> Vec<String> {
    let mut lines: Vec<String> =
        text.lines().filter(|l| !l.is_empty() && !l.chars().all(|c| c == '-')).map(str::to_owned).collect();
    let version = lines.remove(2);
    lines.push(version);
    lines
}

impl Page {
    /// What the page shows now.
    pub fn shown(&self) -> Value {
        self.js(SHOWN)
    }

    /// Waits until the page shows a hat: its numbers, every round, the yarn, every line of the pattern.
    #[track_caller]
    pub fn shows(&self, project: &Project) {
        let expected = expected(project);
        let begun = Instant::now();
        loop {
            let shown = self.shown();
            if shown == expected {
                return;
            }
            self.pause(begun, || difference(&expected, &shown));
        }
    }
}

/// The first places where the page shows something else.
fn difference(expected: &Value, shown: &Value) -> String {
    let mut lines = vec!["the page shows another hat than the planner gives:".to_owned()];
    for (key, wanted) in expected.as_object().expect("an object") {
        let found = &shown[key];
        if found == wanted {
            continue;
        }
        if let (Value::Array(wanted), Value::Array(found)) = (wanted, found) {
            let at = (0..wanted.len().max(found.len())).find(|&i| wanted.get(i) != found.get(i)).unwrap_or(0);
            let [wanted, found] = [wanted, found].map(|list| list.get(at).unwrap_or(&Value::Null));
            lines.push(format!("{key} {at} should be {wanted}\n  but is {found}"));
        } else {
            lines.push(format!("{key} should be {wanted}\n  but is {found}"));
        }
    }
    lines.join("\n")
}
