//! Every round as a bar: as data for the page's table, and as one picture for print and export.

use super::fabric::put;
use super::pen::{At, Pen};
use super::shape::{Anchor, Paint, Picture, Shape};
use hatwright_sizing::{Colour, Hat, RoundKind, Zone};
use hatwright_words::pictures as words;

/// One round, or in a [`BarGroup`] a run of rounds of one colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bar {
    /// The first round, counted from 1.
    pub from: u32,
    /// The last round.
    pub to: u32,
    /// Stitches that each of them leaves.
    pub stitches: u32,
    /// The bar's length: those stitches in thousandths of the hat's widest round.
    pub share_permille: u32,
    /// The yarn.
    pub colour: Colour,
    /// Decreases in each of them.
    pub decreases: u32,
    /// Increases in each of them.
    pub increases: u32,
    /// The part of the hat that they belong to.
    pub zone: Zone,
    /// What each of them does.
    pub kind: RoundKind,
}

impl Bar {
    /// How many rounds it stands for.
    pub const fn rounds(&self) -> u32 {
        self.to - self.from + 1
    }
}

/// Consecutive rounds with the same work and the same total, whatever their colours.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BarGroup {
    /// The first round.
    pub from: u32,
    /// The last round.
    pub to: u32,
    /// Stitches that each of them leaves.
    pub stitches: u32,
    /// Decreases in each of them.
    pub decreases: u32,
    /// Increases in each of them.
    pub increases: u32,
    /// The part of the hat that they belong to.
    pub zone: Zone,
    /// What each of them does.
    pub kind: RoundKind,
    /// The runs of one colour, in order: rounds 1–5 in one yarn are one bar that stands for five.
    pub bars: Vec<Bar>,
}

/// One bar a round, from the pick-up round up.
pub fn bars(hat: &Hat) -> Vec<Bar> {
    let widest = hat.rounds.iter().map(|r| r.after.get()).max().unwrap_or(1).max(1);
    let bar = |r: &hatwright_sizing::Round| Bar {
        from: r.number,
        to: r.number,
        stitches: r.after.get(),
        share_permille: (r.after.get() * 1000 + widest / 2) / widest,
        colour: r.colour,
        decreases: r.decreases.get(),
        increases: r.increases.get(),
        zone: r.zone,
        kind: r.kind,
    };
    hat.rounds.iter().map(bar).collect()
}

/// The bars, with consecutive rounds of the same work and total together.
pub fn grouped(hat: &Hat) -> Vec<BarGroup> {
    let mut groups: Vec<BarGroup> = Vec::new();
    for bar in bars(hat) {
        let Bar { from, to, stitches, decreases, increases, zone, kind, .. } = bar;
        match groups.last_mut() {
            Some(g) if (g.stitches, g.decreases, g.increases, g.zone, g.kind) == (stitches, decreases, increases, zone, kind) => {
                g.to = to;
                match g.bars.last_mut() {
                    Some(run) if run.colour == bar.colour => run.to = to,
                    _ => g.bars.push(bar),
                }
            }
            _ => groups.push(BarGroup { from, to, stitches, decreases, increases, zone, kind, bars: vec![bar] }),
        }
    }
    groups
}

/// The letter that stands for a colour wherever colours cannot be seen: A, B, C…
///
/// ```
/// use hatwright_pattern::picture::colour_letter;
/// use hatwright_sizing::Colour;
/// assert_eq!(colour_letter(Colour(1)), 'B');
/// ```
pub const fn colour_letter(colour: Colour) -> char {
    (b'A' + colour.0 % 26) as char
}

const WIDTH: i32 = 400;
/// Height of a round's line.
const LINE: i32 = 14;
const THICK: f64 = 9.0;
const TOP: i32 = 6;
/// Where the round's number ends, its letter stands, and its bar begins.
const NUMBER: i32 = 58;
const LETTER: i32 = 70;
const LEFT: f64 = 80.0;
/// The longest bar.
const LONGEST: f64 = 240.0;

/// The most colours that are shown of many like rounds on one line.
const MOST_RUNS: usize = 8;
/// Up to so many rounds, every round has a line of its own.
const MOST_LINES: usize = 160;

/// All rounds as one picture, in working order from the top: number, colour letter, a bar in its yarn with a notch at each decrease or
/// increase, the total, and what was lost or gained. In a hat of more than 160 rounds, like ones that follow one another share a line.
pub fn round_chart(hat: &Hat) -> Picture {
    let lines = lines(hat);
    let mut shapes = Vec::with_capacity(lines.len() * 3 + 16);
    let mut yarns: Vec<(Colour, Pen)> = Vec::new();
    let (mut outlines, mut notches) = (Pen::new(), Pen::new());
    let mut texts = Vec::with_capacity(lines.len() * 4);
    for (i, runs) in lines.iter().enumerate() {
        let (Some(bar), Some(end)) = (runs.first(), runs.last()) else { continue };
        let line = TOP + LINE * i as i32;
        let (top, foot) = (f64::from(line) + 2.0, line + 11);
        let long = (f64::from(bar.share_permille) * LONGEST / 1000.0).max(2.0);
        for (k, run) in runs.iter().take(MOST_RUNS).enumerate() {
            let known = yarns.iter().position(|y| y.0 == run.colour).unwrap_or_else(|| {
                yarns.push((run.colour, Pen::new()));
                yarns.len() - 1
            });
            // Colours of one line stand side by side.
            let part = long / runs.len().min(MOST_RUNS) as f64;
            rounded(&mut yarns[known].1, LEFT + part * k as f64, top, part);
        }
        rounded(&mut outlines, LEFT, top, long);
        let lead = hat.rounds.get(bar.from as usize - 1).map_or(0, |r| r.lead.get());
        let shaped = bar.decreases + bar.increases;
        for k in 0..shaped.min(long as u32) {
            let wide = (long / f64::from(bar.stitches.max(1))).min(5.0);
            notch(&mut notches, LEFT + long * place(k, bar, lead), top, wide);
        }
        let numbers = if end.to > bar.from { format!("{}\u{2013}{}", bar.from, end.to) } else { bar.from.to_string() };
        texts.push(Shape::text(NUMBER, foot, Anchor::End, numbers, "chart-number"));
        let letter = if runs.len() > 1 { String::from("\u{2026}") } else { colour_letter(bar.colour).to_string() };
        texts.push(Shape::text(LETTER, foot, Anchor::Middle, letter, "chart-letter"));
        let at = libm::round(LEFT + long) as i32 + 6;
        texts.push(Shape::text(at, foot, Anchor::Start, bar.stitches.to_string(), "chart-total"));
        if shaped > 0 {
            let sign = if bar.decreases > 0 { '\u{2212}' } else { '+' };
            texts.push(Shape::text(WIDTH - 6, foot, Anchor::End, format!("{sign}{shaped}"), "chart-decrease"));
        }
    }
    shapes.extend(yarns.into_iter().map(|(colour, pen)| Shape::path(pen.finish(), Paint::Yarn(colour))));
    put(&mut shapes, notches, "notch");
    // A yarn may be as pale, or as dark, as the page.
    put(&mut shapes, outlines, "bar-edge");
    shapes.extend(texts);
    let total = |round: Option<&hatwright_sizing::Round>| round.map_or(0, |r| r.after.get());
    Picture {
        width: WIDTH,
        height: TOP * 2 + LINE * lines.len().max(1) as i32,
        title: words::every_round().to_owned(),
        description: words::every_round_about(hat.rounds.len() as u32, total(hat.rounds.first()), total(hat.rounds.last())),
        shapes,
    }
}

/// What stands on each line of the chart: a round, or the runs of colour of like rounds.
fn lines(hat: &Hat) -> Vec<Vec<Bar>> {
    if hat.rounds.len() <= MOST_LINES {
        return bars(hat).into_iter().map(|bar| vec![bar]).collect();
    }
    let groups = grouped(hat);
    if groups.iter().map(|g| g.bars.len()).sum::<usize>() <= MOST_LINES {
        return groups.into_iter().flat_map(|g| g.bars).map(|bar| vec![bar]).collect();
    }
    groups.into_iter().map(|g| g.bars).collect()
}

/// Where along its round a decrease or an increase lies, as a share of the round: after the lead, then evenly.
fn place(k: u32, bar: &Bar, lead: u32) -> f64 {
    let stitches = f64::from(bar.stitches.max(1));
    let along = f64::from(lead) + 0.5 + f64::from(k) * stitches / f64::from((bar.decreases + bar.increases).max(1));
    (along / stitches) % 1.0
}

fn rounded(pen: &mut Pen, left: f64, top: f64, long: f64) {
    let (r, right, foot) = (2.5_f64.min(long / 2.0), left + long, top + THICK);
    pen.go(At::new(left + r, top));
    pen.line(At::new(right - r, top));
    pen.curve(At::new(right, top), At::new(right, top + r));
    pen.line(At::new(right, foot - r));
    pen.curve(At::new(right, foot), At::new(right - r, foot));
    pen.line(At::new(left + r, foot));
    pen.curve(At::new(left, foot), At::new(left, foot - r));
    pen.line(At::new(left, top + r));
    pen.curve(At::new(left, top), At::new(left + r, top));
    pen.close();
}

/// A V cut into the upper side.
fn notch(pen: &mut Pen, middle: f64, top: f64, wide: f64) {
    let half = (wide * 0.6).max(0.7);
    pen.polygon(&[At::new(middle - half, top - 0.4), At::new(middle, top + THICK * 0.55), At::new(middle + half, top - 0.4)]);
}

#[cfg(test)]
mod tests {
    use super::super::sample;
    use super::*;

    #[test]
    fn there_is_a_bar_for_every_round_and_its_length_is_its_stitches() {
        for (name, hat) in sample::hats() {
            let bars = bars(&hat);
            assert_eq!(bars.len(), hat.rounds.len(), "{name}");
            let widest = hat.rounds.iter().map(|r| r.after.get()).max().unwrap();
            let stitches: u32 = bars.iter().map(|b| b.stitches).sum();
            let shares: u32 = bars.iter().map(|b| b.share_permille).sum();
            let exact = f64::from(stitches) * 1000.0 / f64::from(widest);
            assert!((f64::from(shares) - exact).abs() <= 0.5 * bars.len() as f64, "{name}: {shares} for {exact}");
            assert_eq!(bars.iter().map(|b| b.share_permille).max(), Some(1000), "{name}");
        }
    }

    #[test]
    fn groups_hold_every_round_once_and_only_like_rounds() {
        for (name, hat) in sample::hats() {
            let groups = grouped(&hat);
            let mut next = 1;
            for group in &groups {
                assert_eq!(group.from, next, "{name}");
                for bar in &group.bars {
                    assert_eq!(bar.from, next, "{name}");
                    for number in bar.from..=bar.to {
                        let round = &hat.rounds[number as usize - 1];
                        assert_eq!(
                            (round.after.get(), round.colour, round.kind),
                            (group.stitches, bar.colour, group.kind),
                            "{name} {number}"
                        );
                    }
                    next = bar.to + 1;
                }
                assert_eq!(group.to + 1, next, "{name}");
            }
            assert_eq!(next as usize, hat.rounds.len() + 1, "{name}");
            assert!(
                groups
                    .windows(2)
                    .all(|g| (g[0].stitches, g[0].decreases, g[0].kind) != (g[1].stitches, g[1].decreases, g[1].kind))
            );
        }
    }

    #[test]
    fn the_chart_says_every_total_and_every_colour_by_letter() {
        for (name, hat) in sample::hats() {
            let chart = round_chart(&hat);
            let said = |class: &str| -> Vec<String> {
                let of = |s: &Shape| match (&s.kind, s.paint) {
                    (super::super::ShapeKind::Text { text, .. }, Paint::Class(c)) if c == class => Some(text.clone()),
                    _ => None,
                };
                chart.shapes.iter().filter_map(of).collect()
            };
            // Where rounds share a line, the line says their total once.
            let firsts: Vec<Bar> = lines(&hat).iter().map(|line| line[0]).collect();
            assert!(hat.rounds.len() > MOST_LINES || firsts.len() == hat.rounds.len(), "{name}");
            let totals: Vec<String> = firsts.iter().map(|r| r.stitches.to_string()).collect();
            let letters: Vec<String> = lines(&hat)
                .iter()
                .map(|line| if line.len() > 1 { String::from("\u{2026}") } else { colour_letter(line[0].colour).to_string() })
                .collect();
            assert_eq!(said("chart-total"), totals, "{name}");
            assert_eq!(said("chart-letter"), letters, "{name}");
            assert_eq!(said("chart-decrease").len(), hat.rounds.iter().filter(|r| r.decreases.get() > 0).count(), "{name}");
        }
    }

    #[test]
    fn decreases_in_a_bar_keep_their_places() {
        let bar = Bar {
            from: 6,
            to: 6,
            stitches: 52,
            share_permille: 929,
            colour: Colour(0),
            decreases: 4,
            increases: 0,
            zone: Zone::Crown,
            kind: RoundKind::Decrease,
        };
        let places: Vec<f64> = (0..4).map(|k| place(k, &bar, 6) * 52.0).collect();
        assert_eq!(places, [6.5, 19.5, 32.5, 45.5]);
    }
}
