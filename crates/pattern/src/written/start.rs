//! What comes before the first stitch: size, materials, gauge, swatch, abbreviations.

use super::pattern::Pattern;
use super::sheet::{About, Section};
use super::words::{Terms, abbreviations};
use crate::figures::{Units, amount, length, length_span, percent, show, yarn, yarn_bare};
use crate::say::fit_sentence;
use hatwright_sizing::{Hat, HatSpec, Length, Ratio, Swatch, Unit, YarnLength, YarnNeed};

pub(super) fn sections(pattern: &Pattern, hat: &Hat, spec: &HatSpec, about: &About<'_>) -> Vec<Section> {
    let lines: Vec<_> = pattern.parts.iter().flat_map(|part| &part.lines).map(|line| &*line.ops).collect();
    let section = |heading, before| Section { heading, before, ..Section::default() };
    vec![
        section("Size", size(hat, about.units)),
        section("Materials", materials(hat, spec, about)),
        section(about.terms.words().gauge, gauge(hat, spec, about)),
        section("Abbreviations", abbreviations(&lines, about.terms)),
    ]
}

/// How to make a swatch that tells the truth, one step to a sentence.
pub fn swatch_advice(terms: Terms) -> Vec<String> {
    let stitch = terms.words().single_name;
    vec![
        "Make it with the hook and the yarn of the hat, wider than 15 cm (6 in).".into(),
        [
            "Work it as the hat will be worked: in ",
            stitch,
            ", every round from the same side and never turned. Worked flat, that means cutting the yarn at the end of each round, or \
             leading it loosely back behind the work.",
        ]
        .concat(),
        "Wash and dry it as the hat will be washed.".into(),
        "Let it rest, lay it flat without pulling, and count in the middle, away from the edges.".into(),
        "Then stretch it as far as is comfortable and measure again: that width divided by the resting width is its stretch.".into(),
    ]
}

fn size(hat: &Hat, units: Units) -> Vec<String> {
    let size = &hat.size;
    let ease = percent(Ratio::from_ticks(size.ease.ticks().saturating_abs()));
    let head = length(hat.head.girth, units);
    let against = match size.ease.ticks() {
        // What would read as 0.0 %.
        -4..=4 => ["as large as the ", &head, " head"].concat(),
        ..=-5 => [&ease, " larger than the ", &head, " head"].concat(),
        _ => [&ease, " smaller than the ", &head, " head"].concat(),
    };
    let mut around = ["Around, relaxed: ", &length(size.girth, units), " (", &against, "). "].concat();
    around.push_str(&["Stretched, it reaches a head of ", &length(size.reach, units), "."].concat());
    let mut depth = ["Depth, from the middle of the crown to the edge as worn: ", &length(hat.depth.promised, units)].concat();
    if hat.depth.fold.ticks() > 0 {
        depth.push_str(&[", with ", &length(hat.depth.fold, units), " of the band folded up"].concat());
    }
    depth.push('.');
    let mut list = vec![around, depth, fit_sentence(hat, units)];
    if let Some((least, most)) = hat.girth_range {
        let range = length_span(least, most, units);
        let sure =
            ["How sure: with the swatch counted half a stitch too low or too high, the hat comes out ", &range, " around. "];
        list.push([&sure.concat(), "A wider swatch narrows that."].concat());
    }
    list
}

fn materials(hat: &Hat, spec: &HatSpec, about: &About<'_>) -> Vec<String> {
    let used = hat.yarn.iter().filter(|need| need.balls > 0);
    let mut list: Vec<String> = used.map(|need| yarn_line(need, spec, about)).collect();
    let margin = amount(spec.margin.ticks(), Unit::Percent, about.units);
    let mut buying = ["Lengths are estimates, tails and joins included; the balls include ", &margin, " extra. "].concat();
    buying.push_str("Buy each colour in one dye lot.");
    list.push(buying);
    let mut tools = String::from("The hook that made the swatch, a stitch marker, a yarn needle, scissors");
    if let Some(pom) = &hat.pom_pom {
        tools.push_str(&[", a stiff card or form ", &length(pom.diameter, about.units), " wide for the pom-pom"].concat());
    }
    tools.push('.');
    list.push(tools);
    list
}

fn yarn_line(need: &YarnNeed, spec: &HatSpec, about: &About<'_>) -> String {
    let units = about.units;
    let mut text = capital(&about.colour(need.colour));
    text.push_str(&[": about ", &yarn(need.length, units), " (", &yarn_bare(need.low, units), " to "].concat());
    text.push_str(&[&yarn_bare(need.high, units), "); ", &need.balls.to_string()].concat());
    text.push_str(if need.balls == 1 { " ball" } else { " balls" });
    if let Some(ball) = spec.balls.get(usize::from(need.colour.0)) {
        // A ball of 80 m is no round number of yards: 87 yd says enough.
        let size = match units {
            Units::Centimetres => amount(ball.yarn.ticks(), Unit::Yarn, units),
            Units::Inches => yarn(YarnLength::from_metres(ball.yarn.value()), units),
        };
        text.push_str(&[" of ", &size].concat());
    }
    text.push('.');
    text
}

fn gauge(hat: &Hat, spec: &HatSpec, about: &About<'_>) -> Vec<String> {
    let words = about.terms.words();
    let (over, over_text) = match about.units {
        Units::Centimetres => (10_000, "10 cm"),
        Units::Inches => (10_160, "4 in"),
    };
    // What was counted is told from the count itself; a stitch's width is already rounded.
    let counted = |count: i32, width: Length| hundredths(count, over, width.ticks());
    let (stitches, rounds) = match spec.swatch {
        Swatch::Counted { stitches, width, rounds, height } => {
            (counted(stitches.ticks(), width), counted(rounds.ticks(), height))
        }
        Swatch::YarnWeight(_) => (counted(100, hat.gauge.stitch), counted(100, hat.gauge.round)),
    };
    let figure = |hundredths: i32| show(hundredths.saturating_add(5) / 10 * 10, Unit::Count, about.units);
    let (stitches, rounds) = (figure(stitches), figure(rounds));
    let mut body = ["Body: ", &stitches, " stitches and ", &rounds, " rounds to ", over_text, " in ", words.single_name].concat();
    body.push_str(" worked in the round");
    body.push_str(if hat.gauge.estimated { ": an estimate from the yarn's weight. Make a swatch first." } else { "." });
    let stitches = figure(counted(100, hat.gauge.band_stitch));
    let rows = figure(counted(100, hat.gauge.band_row));
    let mut band = ["Band: ", &stitches, " stitches and ", &rows, " rows to ", over_text, " in ", words.single_name].concat();
    band.push_str(" in the back loops, worked back and forth");
    band.push_str(if hat.gauge.band_assumed { ": assumed from the body. Measure it after 10 rows." } else { "." });
    let mut swatch = String::from("A swatch that tells the truth:");
    for step in swatch_advice(about.terms) {
        swatch.push(' ');
        swatch.push_str(&step);
    }
    vec![body, band, swatch]
}

/// `count` hundredths over a `width`, as hundredths over the length `over`.
fn hundredths(count: i32, over: i64, width: i32) -> i32 {
    let width = i64::from(width.max(1));
    ((i64::from(count) * over + width / 2) / width).min(i64::from(i32::MAX)) as i32
}

/// A text with its first letter large, where that is one of the 26; the tables for all the others weigh more than they are worth.
fn capital(text: &str) -> String {
    let mut text = text.to_owned();
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    text
}
