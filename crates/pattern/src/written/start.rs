//! What comes before the first stitch: size, materials, gauge, swatch, abbreviations.

use super::abbreviations::abbreviations;
use super::about::About;
use super::making::{Job, named};
use super::sheet::Section;
use super::terms::{Terms, Words};
use crate::figures::{self, Units, amount, length, length_span, mass, percent, plural, show, with_article, yarn, yarn_bare};
use crate::say::{fit_sentence, margin_sentence, rate_of_strands, topper_name};
use hatwright_sizing::{
    Ball, BandKind, Edge, Fabric, Hat, HatSpec, Length, Loops, Mass, Ratio, RoundKind, Style, Swatch, Unit, Way, YarnLength,
    YarnNeed, yarn_rates,
};

pub(super) fn sections(job: &Job<'_>) -> Vec<Section> {
    let (hat, spec, about) = (job.hat, job.spec, job.about);
    let lines: Vec<_> = job.pattern.parts.iter().flat_map(|part| &part.lines).map(|line| &*line.ops).collect();
    let section = |heading, before| Section { heading, before, ..Section::default() };
    vec![
        section("Size", size(job)),
        section("Materials", materials(hat, spec, about)),
        section(about.terms.words().gauge, gauge(hat, spec, about)),
        section("Abbreviations", abbreviations(&lines, &named(job), spec.goes(), spec.fabric.row().chain, about.terms)),
    ]
}

/// A fabric in words: `half double crochet in the back loops`.
fn fabric_name(fabric: Fabric, words: &Words) -> String {
    let row = fabric.row();
    let name = words.name(row.stitch);
    match row.loops {
        Loops::Both => name.into(),
        Loops::Back => [name, " in the back loops"].concat(),
        Loops::Front => [name, " in the front loops"].concat(),
        Loops::Posts => ["front and back post ", name, " in turn"].concat(),
    }
}

/// How to make a swatch that tells the truth, one step to a sentence.
pub fn swatch_advice(spec: &HatSpec, terms: Terms) -> Vec<String> {
    let words = terms.words();
    let (body, band) = (fabric_name(spec.fabric, words), fabric_name(spec.band_fabric(), words));
    let mut first = String::from("Make it with the hook and the yarn of the hat, ");
    if spec.strands > 1 {
        first.push_str(&[&spec.strands.to_string(), " strands held together, "].concat());
    }
    first.push_str("wider than 15 cm (6 in).");
    let mut list = vec![first];
    let rows = |name: &str| ["Work it as the hat will be worked: in ", name, ", in rows, back and forth."].concat();
    let rounds = |name: &str| {
        let mut text =
            ["Work it as the hat will be worked: in ", name, ", every round from the same side and never turned"].concat();
        if spec.goes() == Way::Joined {
            text.push_str(", and each begun with its chain");
        }
        text.push_str(
            ". Worked flat, that means cutting the yarn at the end of each round, or leading it loosely back behind the work.",
        );
        text
    };
    match (spec.style, spec.band_kind()) {
        (Style::EarWarmer, BandKind::Around) => list.push(rounds(&band)),
        (Style::EarWarmer, _) => list.push(rows(&band)),
        (Style::Sideways, _) => list.push(rows(&body)),
        (_, kind) => {
            list.push(rounds(&body));
            if kind != BandKind::None && spec.band_fabric() != spec.fabric || kind == BandKind::Sideways {
                let how = if kind == BandKind::Sideways { ", in rows, back and forth" } else { ", worked like the body's" };
                list.push(["The band has a swatch of its own, with its own hook: in ", &band, how, "."].concat());
            }
        }
    }
    list.extend([
        "Wash and dry it as the hat will be washed.".into(),
        "Let it rest, lay it flat without pulling, and count in the middle, away from the edges.".into(),
        "Then stretch it as far as is comfortable and measure again: that width divided by the resting width is its stretch."
            .into(),
    ]);
    list
}

fn size(job: &Job<'_>) -> Vec<String> {
    let (hat, units) = (job.hat, job.units());
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
    let mut list = vec![around, depth(job)];
    let shape = &job.spec.shape;
    let told = |what: &str, l: Length| Some([what, &length(l, units), "."].concat());
    list.extend(match (hat.style, &hat.flaps) {
        (Style::Tam, _) => told("Across the disc, laid flat: about ", shape.tam_across),
        (Style::Brimmed, _) => told("Width of the brim: about ", shape.brim),
        (_, Some(flaps)) => told("Length of the flaps, besides: ", flaps.length),
        _ => None,
    });
    list.push(fit_sentence(hat, units));
    if let Some((least, most)) = hat.girth_range {
        let range = length_span(least, most, units);
        let sure =
            ["How sure: with the swatch counted half a stitch too low or too high, the hat comes out ", &range, " around. "];
        list.push([&sure.concat(), "A wider swatch narrows that."].concat());
    }
    list
}

/// From the top to the edge as worn, or what there is instead of it.
fn depth(job: &Job<'_>) -> String {
    let hat = job.hat;
    let what = match hat.style {
        Style::EarWarmer => "Height: ",
        Style::Stocking => "Length, from the tip to the edge as worn, along the fabric: ",
        Style::Slouch | Style::Tam => "From the middle of the crown to the edge as worn, along the fabric: ",
        _ => "Depth, from the middle of the crown to the edge as worn: ",
    };
    let mut text = [what, &job.length(hat.depth.promised)].concat();
    if hat.depth.fold.ticks() > 0 {
        let of = if hat.band == BandKind::None { " of it folded up" } else { " of the band folded up" };
        text.push_str(&[", with ", &job.length(hat.depth.fold), of].concat());
    }
    text.push('.');
    text
}

fn materials(hat: &Hat, spec: &HatSpec, about: &About<'_>) -> Vec<String> {
    let used = hat.yarn.iter().filter(|need| need.length > YarnLength::default());
    let mut list: Vec<String> = used.map(|need| yarn_line(need, spec, about)).collect();
    if let Some(rate) = yarn_rates(spec).first() {
        let known = rate_of_strands(spec, rate, about.units);
        let swatch = if spec.yarn_use.swatch_kept { ", and a swatch" } else { "" };
        list.push(["The lengths rest on ", &*known, "; ends and joins are in them", swatch, "."].concat());
    }
    list.push([&*margin_sentence(spec.extra, hat), " Buy each colour in one dye lot."].concat());
    if spec.strands > 1 {
        let mut text =
            ["Hold ", &spec.strands.to_string(), " strands together throughout; the lengths are those of all of them. "].concat();
        text.push_str("Take each strand from a ball of its own, or from the two ends of one.");
        list.push(text);
    }
    let mut tools = hooks(hat, spec);
    tools.push_str(", a stitch marker, a yarn needle, scissors");
    if let Some(topper) = &hat.topper {
        let (wide, name) = (length(topper.size, about.units), topper_name(topper.kind));
        tools.push_str(&[", a stiff card or form ", &*wide, " wide for the ", name].concat());
    }
    tools.push('.');
    list.push(tools);
    list
}

/// The hooks that are known, and the larger one that a loose chain takes.
fn hooks(hat: &Hat, spec: &HatSpec) -> String {
    let told = |hook: Length, of: &str| {
        let size = amount(hook.ticks(), Unit::Hook, Units::Centimetres);
        [&*with_article(&size), " hook", of].concat()
    };
    let banded = spec.band_kind() != BandKind::None;
    let bodied = spec.style != Style::EarWarmer;
    let body = spec.hook.filter(|_| bodied).map(|hook| told(hook, if banded { " for the body" } else { "" }));
    let band = spec.band.hook.filter(|_| banded).map(|hook| told(hook, if bodied { " for the band" } else { "" }));
    let mut known: Vec<String> = body.into_iter().chain(band).collect();
    // A part whose hook is not known takes the one that made its swatch.
    if usize::from(banded) + usize::from(bodied) > known.len() {
        known.push(if known.is_empty() {
            "the hook that made the swatch".into()
        } else {
            "the hook that made the other part's swatch".into()
        });
    }
    if spec.band.edge == Edge::LooseChain && hat.rounds.iter().any(|r| r.kind == RoundKind::Foundation) {
        known.push("a hook one or two sizes larger for the foundation chain".into());
    }
    capital(&known.join(", "))
}

fn yarn_line(need: &YarnNeed, spec: &HatSpec, about: &About<'_>) -> String {
    let units = about.units;
    let mut text = capital(&about.colour(need.colour));
    text.push_str(&[": about ", &yarn(need.length, units), " (", &yarn_bare(need.low, units), " to "].concat());
    text.push_str(&[&*yarn_bare(need.high, units), ")"].concat());
    let ball = spec.balls.get(usize::from(need.colour.0));
    if let Some(per_gram) = ball.and_then(Ball::metres_per_gram) {
        text.push_str(&[", ", &*mass(Mass::from_grams(need.length.metres() / per_gram), units)].concat());
    }
    text.push_str(&["; ", &*plural(need.balls, "ball")].concat());
    if let Some(ball) = ball {
        text.push_str(" of ");
        // What it is called and how thick it is, before what the band says of a ball.
        if let Some(name) = about.yarn(need.colour) {
            text.push_str(&[&*name, ", "].concat());
        }
        if let Some(weight) = ball.weight {
            text.push_str(&["weight ", &*weight.number().to_string(), ", "].concat());
        }
        text.push_str(&figures::ball(ball, units));
    }
    text.push('.');
    text
}

fn gauge(hat: &Hat, spec: &HatSpec, about: &About<'_>) -> Vec<String> {
    let words = about.terms.words();
    let (over, over_text) = match about.units {
        Units::Centimetres | Units::Both => (10_000, "10 cm"),
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
    let sideways = spec.style == Style::Sideways;
    let mut list = Vec::new();
    if spec.style != Style::EarWarmer {
        let (noun, how) = match (sideways, spec.goes()) {
            (true, _) => (" rows to ", ", worked back and forth"),
            (false, Way::Spiral) => (" rounds to ", ", worked in the round"),
            (false, Way::Joined) => (" rounds to ", ", worked in joined rounds"),
        };
        let what = if sideways { "Hat: " } else { "Body: " };
        let mut body =
            [what, &stitches, " stitches and ", &rounds, noun, over_text, " in ", &fabric_name(spec.fabric, words), how].concat();
        body.push_str(if hat.gauge.estimated { ": an estimate from the yarn's weight. Make a swatch first." } else { "." });
        list.push(body);
    }
    let kind = spec.band_kind();
    if kind != BandKind::None {
        let stitches = figure(counted(100, hat.gauge.band_stitch));
        let rows = figure(counted(100, hat.gauge.band_row));
        let (noun, how) = if kind == BandKind::Sideways {
            (" rows to ", ", worked back and forth")
        } else {
            (" rounds to ", ", worked around")
        };
        let mut band = ["Band: ", &stitches, " stitches and ", &rows, noun, over_text, " in "].concat();
        band.push_str(&[&fabric_name(spec.band_fabric(), words), how].concat());
        band.push_str(match (hat.gauge.band_assumed, kind) {
            (false, _) => ".",
            (true, BandKind::Sideways) => ": assumed from the body. Measure it after 10 rows.",
            (true, _) => ": assumed from the body. Measure it when the band is done.",
        });
        list.push(band);
    }
    let mut swatch = String::from("A swatch that tells the truth:");
    for step in swatch_advice(spec, about.terms) {
        swatch.push(' ');
        swatch.push_str(&step);
    }
    list.push(swatch);
    list
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
