//! What comes before the first stitch: introduction, size, materials, gauge, swatch, abbreviations.

use super::abbreviations::{Spoken, abbreviations};
use super::about::{About, paragraphs};
use super::making::{Job, named};
use super::sheet::Section;
use super::terms::{Terms, Words};
use crate::figures::{self, Units, amount, either, length, length_span, mass, percent, show, with_article, yarn_about};
use crate::hooks::labels;
use crate::say::{fit_sentence, margin_sentence, rate_of_strands};
use hatwright_sizing::{
    Ball, BandKind, Begun, Edge, Fabric, Hat, HatSpec, Length, Loops, Mass, Ratio, RoundKind, Style, Swatch, TopKind, TopperKind,
    Unit, Way, YarnLength, YarnNeed, yarn_rates,
};
use hatwright_words::{count, lines, start as say};

pub(super) fn sections(job: &Job<'_>) -> Vec<Section> {
    let (hat, spec, about) = (job.hat, job.spec, job.about);
    let work: Vec<_> = job.pattern.parts.iter().flat_map(|part| &part.lines).map(|line| &*line.ops).collect();
    let section = |heading, before| Section { heading, before, ..Section::default() };
    let mut list = Vec::new();
    let introduction = paragraphs(about.designer.introduction);
    if !introduction.is_empty() {
        list.push(section(lines::heading_introduction(), introduction));
    }
    let spoken = Spoken { stitches: named(job), loops: speaks_of_loops(job) };
    let short = abbreviations(&work, &spoken, spec.goes(), spec.fabric.row().chain, (about.terms, about.hand));
    list.extend([
        section(lines::heading_size(), size(job)),
        section(lines::heading_materials(), materials(hat, spec, about)),
        section(about.terms.words().gauge, gauge(hat, spec, about)),
        section(lines::heading_abbreviations(), short),
    ]);
    list
}

/// Whether the back or the front loop is spoken of: a fabric that is worked in one, or a hole that is drawn up by the front loops.
fn speaks_of_loops(job: &Job<'_>) -> bool {
    let drawn = job.hat.top.is_some_and(|top| top.kind == TopKind::Drawn);
    drawn || job.pattern.parts.iter().any(|part| matches!(part.fabric.row().loops, Loops::Back | Loops::Front))
}

/// A fabric in words: `half double crochet in the back loops`.
fn fabric_name(fabric: Fabric, words: &Words) -> String {
    let row = fabric.row();
    let name = words.name(row.stitch);
    match row.loops {
        Loops::Both => name.into(),
        Loops::Back => say::fabric_back(name),
        Loops::Front => say::fabric_front(name),
        Loops::Posts => say::fabric_posts(name),
    }
}

/// How to make a swatch that tells the truth, one step to a sentence.
pub fn swatch_advice(spec: &HatSpec, terms: Terms) -> Vec<String> {
    let words = terms.words();
    let (body, band) = (fabric_name(spec.fabric, &words), fabric_name(spec.band_fabric(), &words));
    let mut list = vec![match spec.strands {
        ..=1 => say::swatch_width().into(),
        strands => say::swatch_width_strands(strands),
    }];
    let rounds = |fabric: &str| match spec.goes() {
        Way::Spiral => say::swatch_spiral(fabric),
        Way::Joined => say::swatch_joined(fabric),
    };
    match (spec.style, spec.band_kind()) {
        (Style::EarWarmer, BandKind::Around) => list.push(rounds(&band)),
        (Style::EarWarmer, _) => list.push(say::swatch_rows(&band)),
        (Style::Sideways, _) => list.push(say::swatch_rows(&body)),
        (_, kind) => {
            list.push(rounds(&body));
            if kind == BandKind::Sideways {
                list.push(say::swatch_band_rows(&band));
            } else if kind != BandKind::None && spec.band_fabric() != spec.fabric {
                list.push(say::swatch_band_rounds(&band));
            }
        }
    }
    list.extend([say::swatch_wash(), say::swatch_count(), say::swatch_stretch()].map(Into::into));
    list
}

fn size(job: &Job<'_>) -> Vec<String> {
    let (hat, units) = (job.hat, job.units());
    let size = &hat.size;
    let ease = percent(Ratio::from_ticks(size.ease.ticks().saturating_abs()));
    let head = either(units, |units| length(hat.head.girth, units));
    let (girth, reach) = (length(size.girth, units), length(size.reach, units));
    let around = match size.ease.ticks() {
        // What would read as 0.0 %.
        -4..=4 => say::around_alike(&girth, &head, &reach),
        ..=-5 => say::around_larger(&girth, &ease, &head, &reach),
        _ => say::around_smaller(&girth, &ease, &head, &reach),
    };
    let mut list = vec![around, depth(job)];
    let shape = &job.spec.shape;
    list.extend(match (hat.style, &hat.flaps) {
        (Style::Tam, _) => Some(say::tam_across(&length(shape.tam_across, units))),
        (Style::Brimmed, _) => Some(say::brim_wide(&length(shape.brim, units))),
        (_, Some(flaps)) => Some(say::flaps_long(&length(flaps.length, units))),
        _ => None,
    });
    list.push(fit_sentence(hat, units));
    list.extend(hat.girth_range.map(|(least, most)| say::how_sure(&length_span(least, most, units))));
    list
}

/// From the top to the edge as worn, or what there is instead of it.
fn depth(job: &Job<'_>) -> String {
    let hat = job.hat;
    let what = match hat.style {
        Style::EarWarmer => say::height,
        Style::Stocking => say::length_from_tip,
        Style::Slouch | Style::Tam => say::from_crown_along,
        _ => say::depth,
    };
    let deep = what(&job.length(hat.depth.promised));
    if hat.depth.fold.ticks() <= 0 {
        return say::unfolded(&deep);
    }
    let fold = job.length(hat.depth.fold);
    if hat.band == BandKind::None { say::folded_hat(&deep, &fold) } else { say::folded_band(&deep, &fold) }
}

fn materials(hat: &Hat, spec: &HatSpec, about: &About<'_>) -> Vec<String> {
    let used = hat.yarn.iter().filter(|need| need.length > YarnLength::default());
    let mut list: Vec<String> = used.map(|need| yarn_line(need, spec, about)).collect();
    if let Some(rate) = yarn_rates(spec).first() {
        let known = rate_of_strands(spec, rate, about.units);
        list.push(if spec.yarn_use.swatch_kept { say::rests_swatch(&known) } else { say::rests(&known) });
    }
    list.push(say::one_lot(&margin_sentence(spec.extra, hat)));
    if spec.strands > 1 {
        list.push(say::strands(spec.strands));
    }
    let (hooks, which) = hooks(hat, spec);
    list.push(match &hat.topper {
        None => say::tools(&hooks),
        Some(topper) => {
            let wide = length(topper.size, about.units);
            match topper.kind {
                TopperKind::PomPom => say::tools_pompom(&hooks, &wide),
                TopperKind::Tassel => say::tools_tassel(&hooks, &wide),
            }
        }
    });
    list.extend(which);
    list
}

/// A hook's millimetres, and its labels where it has any: `a 5 mm hook (US H-8, old UK 6)`.
fn hook(hook: Length) -> String {
    let told = say::hook(&with_article(&millimetres(hook)));
    match labels(hook).map(|labels| (labels.us, labels.uk_old)) {
        Some((Some(us), Some(uk))) => say::hook_us_uk(&told, us, uk),
        Some((Some(us), None)) => say::hook_us(&told, us),
        Some((None, Some(uk))) => say::hook_uk(&told, uk),
        Some((None, None)) | None => told,
    }
}

fn millimetres(hook: Length) -> String {
    amount(hook.ticks(), Unit::Hook, Units::Centimetres)
}

/// The hooks that are known, and the larger one that a loose chain takes; and which is for what, where two are.
fn hooks(hat: &Hat, spec: &HatSpec) -> (String, Option<String>) {
    let banded = spec.band_kind() != BandKind::None;
    let bodied = spec.style != Style::EarWarmer;
    let (body, band) = (spec.hook.filter(|_| bodied), spec.band.hook.filter(|_| banded));
    let mut which = None;
    let mut known = match (body, band) {
        (Some(body), Some(band)) if body == band => vec![hook(body)],
        (Some(body), Some(band)) => {
            let told = if hat.begun == Begun::Band { say::hooks_band_first } else { say::hooks_body_first };
            // Both messages name the band's and the body's in the order in which they are taken up.
            let (first, second) = if hat.begun == Begun::Band { (band, body) } else { (body, band) };
            which = Some(told(&millimetres(first), &millimetres(second)));
            vec![say::for_body(&hook(body)), say::for_band(&hook(band))]
        }
        // A part whose hook is not known takes the one that made its swatch.
        (Some(body), None) if banded => vec![say::for_body(&hook(body)), say::other_swatch_hook().into()],
        (None, Some(band)) if bodied => vec![say::for_band(&hook(band)), say::other_swatch_hook().into()],
        (Some(one), None) | (None, Some(one)) => vec![hook(one)],
        (None, None) => vec![say::swatch_hook().into()],
    };
    if spec.band.edge == Edge::LooseChain && hat.rounds.iter().any(|r| r.kind == RoundKind::Foundation) {
        known.push(say::larger_hook().into());
    }
    (capital(&known.join(", ")), which)
}

fn yarn_line(need: &YarnNeed, spec: &HatSpec, about: &About<'_>) -> String {
    let units = about.units;
    let colour = capital(&about.colour(need.colour));
    let mut text = say::yarn(&colour, &yarn_about(need.length, need.low, need.high, units));
    let ball = spec.balls.get(usize::from(need.colour.0));
    if let Some(per_gram) = ball.and_then(Ball::metres_per_gram) {
        text = say::yarn_weighed(&text, &mass(Mass::from_grams(need.length.metres() / per_gram), units));
    }
    let balls = count::balls(need.balls);
    let Some(ball) = ball else { return say::yarn_balls(&text, &balls) };
    // What it is called and how thick it is, before what the band says of a ball.
    let name = about.yarn(need.colour);
    let weight = ball.weight.map(|weight| say::thickness(&weight.number().to_string()));
    let what: Vec<String> = name.into_iter().chain(weight).chain([figures::ball(ball, units)]).collect();
    say::yarn_balls_of(&text, &balls, &what.join(", "))
}

fn gauge(hat: &Hat, spec: &HatSpec, about: &About<'_>) -> Vec<String> {
    let words = about.terms.words();
    let (over, over_text) = match about.units {
        Units::Centimetres => (10_000, say::ten_centimetres()),
        Units::Inches => (10_160, say::four_inches()),
        Units::Both => (10_000, say::ten_both()),
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
    let mut list = Vec::new();
    if spec.style != Style::EarWarmer {
        let told = match (spec.style == Style::Sideways, spec.goes()) {
            (true, _) => say::gauge_hat_rows,
            (false, Way::Spiral) => say::gauge_spiral,
            (false, Way::Joined) => say::gauge_joined,
        };
        let body = told(&stitches, &rounds, over_text, &fabric_name(spec.fabric, &words));
        list.push(if hat.gauge.estimated { say::gauge_estimated(&body) } else { say::gauge_known(&body) });
    }
    let kind = spec.band_kind();
    if kind != BandKind::None {
        let stitches = figure(counted(100, hat.gauge.band_stitch));
        let rows = figure(counted(100, hat.gauge.band_row));
        let told = if kind == BandKind::Sideways { say::gauge_band_rows } else { say::gauge_band_around };
        let band = told(&stitches, &rows, over_text, &fabric_name(spec.band_fabric(), &words));
        list.push(match (hat.gauge.band_assumed, kind) {
            (false, _) => say::gauge_known(&band),
            (true, BandKind::Sideways) => say::gauge_assumed_rows(&band),
            (true, _) => say::gauge_assumed(&band),
        });
    }
    list.push(say::swatch(&swatch_advice(spec, about.terms).join(" ")));
    list
}

/// `count` hundredths over a `width`, as hundredths over the length `over`.
fn hundredths(count: i32, over: i64, width: i32) -> i32 {
    let width = i64::from(width.max(1));
    ((i64::from(count) * over + width / 2) / width).min(i64::from(i32::MAX)) as i32
}

/// A text with its first letter large, where that is one of the 26; the tables for all the others weigh more than they are worth.
pub(super) fn capital(text: &str) -> String {
    let mut text = text.to_owned();
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    text
}
