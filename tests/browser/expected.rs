//! What the page should show of a hat, worked out natively, against what it does show.

use std::time::Instant;

use hatwright_pattern::figures::{self, Units};
use hatwright_pattern::say;
use hatwright_pattern::written::{self, About};
use hatwright_project::{Project, ProjectId, Terms};
use hatwright_sizing::{Hat, Size, YarnLength, plan};
use serde_json::{Value, json};

use crate::page::Page;

/// The hat of a first visit.
pub fn example() -> Project {
    hatwright_project::example(ProjectId::from_bits(0))
}

/// The units that a project is shown in.
pub fn units(project: &Project) -> Units {
    match project.units {
        hatwright_project::Units::Centimetres => Units::Centimetres,
        hatwright_project::Units::Inches => Units::Inches,
    }
}

/// A project's pattern as plain text.
pub fn pattern(project: &Project, hat: &Hat) -> String {
    let names: Vec<&str> = project.colours.iter().map(|c| &*c.name).collect();
    let about = About {
        title: if project.name.is_empty() { "A hat" } else { &project.name },
        colour_names: &names,
        terms: if project.terms == Terms::Uk { written::Terms::Uk } else { written::Terms::Us },
        units: units(project),
        version: env!("CARGO_PKG_VERSION"),
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
    for (const row of document.querySelectorAll('#rounds tr')) {
      const [from, to] = row.querySelector('th').textContent.split('–').map(Number);
      const bars = [...row.querySelectorAll('rect')];
      const fewer = row.querySelector('.fewer')?.textContent ?? 'none';
      for (let n = from; n <= (to ?? from); n++) {
        const bar = bars[n - from];
        rounds.push(`${n}: ${row.querySelector('.total').textContent}, ${fewer} fewer, ${bar?.getAttribute('fill')}`);
      }
    }
    return {
      name: document.getElementById('hat-name')?.value,
      stitches: text('#answer-stitches'),
      rounds: text('#answer-rounds'),
      yarn: text('#answer-yarn'),
      ages: text('#answer-ages'),
      head: text('#answer-head'),
      bar: all('.bar .numbers b', b => b.textContent),
      sizes: all('.sizes .size', s => s.dataset.stitches + (s.getAttribute('aria-pressed') === 'true' ? ' taken' : '')),
      table: rounds,
      yarns: all('#yarn-rows tr', row => [...row.children].map(cell => cell.textContent)),
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
    let count = |n: u32| json!(n.to_string());
    let yarn = figures::yarn(hat.yarn.iter().map(|y| y.length).sum(), units);
    let table = hat.rounds.iter().map(|round| {
        let fewer = match round.decreases.get() {
            0 => "none".to_owned(),
            n => format!("−{n}"),
        };
        let hex = project.colours[usize::from(round.colour.0)].hex;
        format!("{}: {}, {fewer} fewer, {hex}", round.number, round.after)
    });
    let yarns = hat.yarn.iter().filter(|need| need.balls > 0).map(|need| {
        let i = usize::from(need.colour.0);
        let ball = YarnLength::from_metres(project.spec.balls[i].yarn.value());
        [
            format!("{} · {}", char::from(b'A' + need.colour.0), project.colours[i].name),
            figures::yarn(need.length, units),
            format!("{}–{}", figures::yarn_bare(need.low, units), figures::yarn(need.high, units)),
            format!("{} ball{} of {}", need.balls, if need.balls == 1 { "" } else { "s" }, figures::yarn(ball, units)),
        ]
    });
    json!({
        "name": project.name,
        "stitches": count(hat.stitches().get()),
        "rounds": count(hat.round_count().get()),
        "yarn": yarn,
        "ages": others(&hat, units),
        "head": format!("fits a {} head", figures::length(hat.head.girth, units)),
        "bar": [count(hat.stitches().get()), count(hat.round_count().get()), json!(yarn)],
        "sizes": sizes(&hat),
        "table": table.collect::<Vec<_>>(),
        "yarns": yarns.collect::<Vec<_>>(),
        "fit": say::fit_sentence(&hat, units),
        "girth": girth(&hat, units),
        "pattern": lines(&pattern(project, &hat)),
        "stale": [],
        "wrong": [],
    })
}

/// The counts that can be taken, in order of size.
fn sizes(hat: &Hat) -> Vec<String> {
    let mut all: Vec<(Size, &str)> = hat.neighbours.iter().map(|size| (*size, "")).collect();
    all.push((hat.size, " taken"));
    all.sort_by_key(|(size, _)| (size.rows, size.stitches));
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
