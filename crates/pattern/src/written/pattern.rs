//! The pattern as numbers and operation trees, before any words.

use super::lines::{decrease_line, pick_up_line};
use super::ops::{Op, Place, Stitch, makes};
use hatwright_sizing::{Colour, Hat, HatSpec, Round, RoundKind};

/// A hat's pattern: what is worked, in order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pattern {
    /// The parts that are worked, in order.
    pub parts: Vec<Part>,
    /// Rows of the band after which its stripes begin again; as many as the band has where they never do.
    pub stripe_rows: u32,
    /// Whether band and body use more than one colour, so that every line names its own.
    pub coloured: bool,
}

/// A part of the hat.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// Which.
    pub kind: PartKind,
    /// Its lines, in order.
    pub lines: Vec<Line>,
}

/// Which part of a hat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PartKind {
    /// The band: rows back and forth, joined into a ring.
    Band,
    /// The rounds from the band to the first decrease.
    Body,
    /// The rounds from the first decrease on.
    Crown,
    /// Drawing up the top.
    Closing,
}

/// A line of the pattern: one row or round, or several that are worked alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// Which rows or rounds.
    pub label: Label,
    /// What is done.
    pub ops: Vec<Op>,
    /// Stitches when it is done. For the foundation, its chains; for the closing, nothing.
    pub total: u32,
    /// Its colour; `None` where the rows of the line go on in the band's stripes.
    pub colour: Option<Colour>,
    /// Decreases in it.
    pub decreases: u32,
    /// What the round does; absent for everything that is no round.
    pub kind: Option<RoundKind>,
}

/// What a line is called. Numbers count from 1, first and last included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Label {
    /// The chain that the band begins with.
    Foundation,
    /// Rows of the band.
    Row(u32, u32),
    /// Rounds above it.
    Round(u32, u32),
    /// After the last round.
    Closing,
}

/// Writes a hat's pattern.
///
/// Consecutive rounds that are worked alike in one colour become one line. A band of many stripes is written out for its first
/// repeat; the rows after it, up to the last, become one line.
pub fn write(hat: &Hat, spec: &HatSpec) -> Pattern {
    let first_decrease = hat.rounds.iter().position(|r| r.decreases.get() > 0).unwrap_or(hat.rounds.len());
    let (body, crown) = hat.rounds.split_at(first_decrease);
    let stripe_rows = repeat_length(&hat.band_rows);
    let mut parts = vec![
        Part { kind: PartKind::Band, lines: band_lines(&hat.band_rows, stripe_rows, spec.band.height.get()) },
        Part { kind: PartKind::Body, lines: round_lines(body) },
    ];
    if !crown.is_empty() {
        parts.push(Part { kind: PartKind::Crown, lines: round_lines(crown) });
    }
    let ops = vec![Op::FastenOff, Op::Gather(hat.top.stitches.get())];
    let colour = hat.rounds.last().map(|r| r.colour);
    parts.push(Part {
        kind: PartKind::Closing,
        lines: vec![Line { label: Label::Closing, ops, total: 0, colour, decreases: 0, kind: None }],
    });
    let mut used = hat.band_rows.iter().copied().chain(hat.rounds.iter().map(|r| r.colour));
    let first = used.next();
    Pattern { parts, stripe_rows, coloured: used.any(|c| Some(c) != first) }
}

/// The fewest rows after which the colours begin again and which divide the band.
fn repeat_length(rows: &[Colour]) -> u32 {
    let whole = rows.len();
    let repeats = |len: usize| whole.is_multiple_of(len) && rows.iter().zip(&rows[len..]).all(|(a, b)| a == b);
    (1..whole).find(|len| repeats(*len)).unwrap_or(whole) as u32
}

fn row(from: u32, to: u32, ops: Vec<Op>, colour: Option<Colour>) -> Line {
    Line { label: Label::Row(from, to), total: makes(&ops), ops, colour, decreases: 0, kind: None }
}

/// More stripes than this are not written out one by one where they repeat.
const MOST_STRIPES_WRITTEN: usize = 6;

fn band_lines(rows: &[Colour], repeat: u32, height: u32) -> Vec<Line> {
    let stitch = Stitch::Single;
    let into = |place| Op::Every { stitch, count: height, place };
    let back = |place| vec![Op::Chain(1), Op::Turn, into(place)];
    let (Some(first), Some(join)) = (rows.first().copied(), rows.last().copied()) else { return Vec::new() };
    let last = rows.len() as u32;
    let foundation = vec![Op::FoundationChain(height + 1)];
    let mut lines = vec![
        Line { label: Label::Foundation, ops: foundation, total: height + 1, colour: Some(first), decreases: 0, kind: None },
        row(1, 1, vec![into(Place::FoundationChain)], Some(first)),
    ];
    let mut stripes: Vec<(u32, u32, Colour)> = Vec::new();
    for (number, colour) in (2..last).zip(rows.iter().skip(1)) {
        match stripes.last_mut() {
            Some((_, to, same)) if same == colour => *to = number,
            _ => stripes.push((number, number, *colour)),
        }
    }
    let told = if stripes.len() > MOST_STRIPES_WRITTEN && repeat < last { repeat } else { last };
    for (from, to, colour) in stripes {
        if from <= told {
            lines.push(row(from, to.min(told), back(Place::BackLoop), Some(colour)));
        }
    }
    if told + 1 < last {
        lines.push(row(told + 1, last - 1, back(Place::BackLoop), None));
    }
    if last > 1 {
        lines.push(row(last, last, back(Place::BackLoopAndFoundation), Some(join)));
    }
    lines
}

fn round_lines(rounds: &[Round]) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    for round in rounds {
        let total = round.after.get();
        let decreases = round.decreases.get();
        if let Some(last) = lines.last_mut() {
            let alike = round.kind == RoundKind::Plain && last.kind == Some(RoundKind::Plain);
            if let (Label::Round(from, _), true) = (last.label, alike && last.colour == Some(round.colour) && last.total == total)
            {
                last.label = Label::Round(from, round.number);
                continue;
            }
        }
        let ops = match round.kind {
            RoundKind::PickUp => pick_up_line(total, round.before),
            _ => decrease_line(round.before, decreases, round.lead.get()),
        };
        let label = Label::Round(round.number, round.number);
        lines.push(Line { label, ops, total, colour: Some(round.colour), decreases, kind: Some(round.kind) });
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::super::ops::uses;
    use super::super::sample;
    use super::*;
    use hatwright_sizing::{BandSwatch, Closing, Count, Head, Layout, Length, Ratio, Rows, Stitches, Swatch};
    use proptest::prelude::*;

    #[test]
    fn every_line_uses_up_the_one_below_and_leaves_its_total() {
        check(&sample::hat(), &sample::spec());
    }

    fn check(hat: &Hat, spec: &HatSpec) {
        let pattern = write(hat, spec);
        let mut below = hat.size.rows.get();
        let mut number = 0;
        for line in pattern.parts.iter().flat_map(|p| &p.lines) {
            let Label::Round(from, to) = line.label else { continue };
            assert_eq!(from, number + 1);
            number = to;
            assert_eq!(uses(&line.ops), below);
            assert_eq!(makes(&line.ops), line.total);
            below = line.total;
        }
        assert_eq!(number, hat.round_count().get());
        assert_eq!(below, hat.top.stitches.get());
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(150))]
        #[test]
        fn any_planned_hat_is_written_exactly(
            head in 34_000..62_000_i32, ease in 0..800_i32, stitches in 8_00..30_00_i32, rounds in 9_00..36_00_i32,
            rows in 9_00..36_00_i32, wedges in 3..10_u32, gather in 12..80_u32, odd in 1..4_u32,
        ) {
            let mut spec = sample::spec();
            let ten = Length::from_cm(10.0);
            spec.head = Head::Measured(Length::from_ticks(head));
            spec.ease = Ratio::from_ticks(ease);
            let (stitches, rounds) = (Count::from_ticks(stitches), Count::from_ticks(rounds));
            spec.swatch = Swatch::Counted { stitches, width: ten, rounds, height: ten };
            spec.band.swatch = Some(BandSwatch { stitches, width: ten, rows: Count::from_ticks(rows), length: ten });
            spec.band.stripes[1].rows = Rows::new(odd);
            spec.layout = if wedges < 4 { Layout::Spread } else { Layout::Wedges(wedges) };
            spec.closing = if gather < 20 { Closing::Drawn } else { Closing::Gathered(Stitches::new(gather)) };
            let Ok(hat) = hatwright_sizing::plan(&spec) else { return Err(TestCaseError::reject("no hat")) };
            check(&hat, &spec);
            for round in &hat.rounds {
                let plain = round.before.saturating_sub(2 * round.decreases.get());
                prop_assert!(round.lead.get() <= plain.div_ceil(round.decreases.get().max(1)), "no room for the lead of {:?}", round);
            }
        }
    }

    #[test]
    fn rows_are_told_once_each() {
        let spec = sample::spec();
        for rows in 2..40_u32 {
            for repeat in 1..9_u32 {
                let colours: Vec<Colour> = (0..rows).map(|r| Colour((r % repeat).min(3) as u8)).collect();
                let mut hat = sample::hat();
                hat.band_rows.clone_from(&colours);
                let pattern = write(&hat, &spec);
                let mut number = 0;
                for line in &pattern.parts[0].lines {
                    let Label::Row(from, to) = line.label else { continue };
                    assert_eq!(from, number + 1);
                    assert_eq!(line.total, 10);
                    if let Some(colour) = line.colour {
                        assert!(colours[from as usize - 1..to as usize].iter().all(|c| *c == colour));
                    }
                    number = to;
                }
                assert_eq!(number, rows);
            }
        }
    }

    #[test]
    fn a_long_striped_band_is_told_by_its_repeat() {
        let pattern = write(&sample::hat(), &sample::spec());
        let labels: Vec<Label> = pattern.parts[0].lines.iter().map(|l| l.label).collect();
        let rows = [Label::Row(1, 1), Label::Row(2, 2), Label::Row(3, 4), Label::Row(5, 55), Label::Row(56, 56)];
        assert_eq!(labels[0], Label::Foundation);
        assert_eq!(labels[1..], rows);
        assert_eq!(pattern.stripe_rows, 4);
        assert!(pattern.coloured);
    }
}
