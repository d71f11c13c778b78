//! Every line is exact: it uses up what the one below left, and leaves its total.

use super::super::ops::{makes, uses};
use super::super::sample;
use super::*;
use hatwright_sizing::{
    BandSwatch, Closing, Count, Edge, Head, Layout, Length, Ratio, Rows, SideTop, Stitches, Style, Swatch, Way, plan,
};
use proptest::prelude::*;

#[test]
fn the_sample_is_exact() {
    check(&sample::hat(), &sample::spec());
}

/// Works through a pattern by counts alone.
fn check(hat: &Hat, spec: &HatSpec) {
    let pattern = write(hat, spec);
    let mut below = 0;
    let mut number = 0;
    for part in &pattern.parts {
        match part.kind {
            PartKind::Band => rows(part, &vec![spec.band.height.get(); hat.band_rows.len()], true),
            PartKind::Panel => {
                let panel = hat.panel.as_ref().unwrap();
                rows(part, &panel.rows.iter().map(|row| row.stitches.get()).collect::<Vec<_>>(), false);
            }
            PartKind::Flaps => flaps(part, hat),
            PartKind::Seam => assert_eq!(uses(&part.lines[0].ops), hat.panel.as_ref().unwrap().stitches.get()),
            PartKind::Joining => {
                assert_eq!(uses(&part.lines[0].ops), hat.band_rows.len() as u32);
                assert_eq!((makes(&part.lines[0].ops), part.lines[0].total), (below, below));
            }
            PartKind::Closing => {
                let top = hat.top.unwrap();
                assert_eq!(uses(&part.lines[0].ops), top.stitches.get());
                if top.kind != TopKind::RowEnds {
                    assert_eq!(below, top.stitches.get());
                }
            }
            _ => {
                for line in &part.lines {
                    let Label::Round(from, to) = line.label else {
                        assert_eq!((line.label, line.kind), (Label::Foundation, None));
                        below = line.total;
                        continue;
                    };
                    assert_eq!(from, number + 1);
                    let round = &hat.rounds[from as usize - 1];
                    assert!(hat.rounds[from as usize - 1..to as usize].iter().all(|r| r.after.get() == line.total));
                    let used = uses(&line.ops);
                    match round.kind {
                        RoundKind::PickUp => assert_eq!(used, hat.band_rows.len() as u32),
                        RoundKind::Ring => assert_eq!((used, below), (0, 0)),
                        RoundKind::Edge => assert_eq!(used, round.before),
                        RoundKind::Foundation if spec.band.edge == Edge::Chainless => assert_eq!(used, 0),
                        _ => assert_eq!(used, below, "{} {:?}", round.number, line),
                    }
                    assert_eq!(makes(&line.ops), line.total, "{line:?}");
                    assert_eq!((line.decreases, line.increases), (round.decreases.get(), round.increases.get()));
                    (number, below) = (to, line.total);
                }
            }
        }
    }
    assert_eq!(number, hat.round_count().get());
    assert_eq!(pattern.coloured, hat.colours().len() > 1);
}

/// Rows numbered on from 1, each of its width; `closed` where the last one makes a ring.
fn rows(part: &Part, widths: &[u32], closed: bool) {
    let (mut number, mut told) = (0, Vec::new());
    let full = widths[0];
    for line in &part.lines {
        let Label::Row(from, to) = line.label else {
            assert_eq!(line.ops, [Op::FoundationChain(full + part.fabric.row().chain)]);
            continue;
        };
        assert_eq!(from, number + 1);
        for row in from..=to {
            let again = match line.ops.as_slice() {
                [Op::AsRows { from: first, to: last }] => Some((row - from) % (last - first + 1) + first),
                _ => None,
            };
            let made = again.map_or_else(|| makes(&line.ops), |row| told[row as usize - 1]);
            assert_eq!(made, widths[row as usize - 1], "row {row}");
            if again.is_none() && row > 1 {
                // Odd rows run over all there is; even rows go back over the one before.
                let there = if row % 2 == 0 && !closed { widths[row as usize - 2] } else { full };
                assert_eq!(uses(&line.ops), there, "row {row}");
            }
            told.push(made);
        }
        assert_eq!(line.total, *told.last().unwrap());
        number = to;
    }
    assert_eq!(number as usize, widths.len());
}

fn flaps(part: &Part, hat: &Hat) {
    let flaps = hat.flaps.as_ref().unwrap();
    let mut number = 0;
    for line in &part.lines {
        let Label::Row(from, to) = line.label else {
            assert_eq!((line.label, line.total), (Label::Tie, flaps.tie_chains.get()));
            continue;
        };
        assert_eq!(from, number + 1);
        for row in &flaps.rows[from as usize - 1..to as usize] {
            assert_eq!((uses(&line.ops), makes(&line.ops)), (row.before, row.after.get()));
            assert_eq!(line.total, row.after.get());
        }
        number = to;
    }
    assert_eq!(number as usize, flaps.rows.len());
}

/// A style, a direction, a band, a way and a fabric, by number.
fn settled(spec: &mut HatSpec, choice: (usize, bool, usize, bool, usize, usize, bool)) {
    let (style, crown, band, joined, fabric, band_fabric, loose) = choice;
    spec.style = Style::ALL[style];
    spec.begun = if crown { Begun::Crown } else { Begun::Band };
    spec.band.kind = [BandKind::Sideways, BandKind::Around, BandKind::None][band];
    spec.way = if joined { Way::Joined } else { Way::Spiral };
    spec.fabric = Fabric::ALL[fabric];
    spec.band.fabric = Fabric::ALL[band_fabric];
    spec.band.edge = if loose { Edge::LooseChain } else { Edge::Chainless };
}

proptest! {
    #![proptest_config(ProptestConfig { max_global_rejects: 100_000, ..ProptestConfig::with_cases(400) })]
    #[test]
    fn any_planned_hat_is_written_exactly(
        head in 34_000..62_000_i32, ease in 0..800_i32, stitches in 8_00..30_00_i32, rounds in 9_00..36_00_i32,
        rows in 9_00..36_00_i32, wedges in 3..10_u32, gather in 12..80_u32, odd in 1..4_u32,
        choice in (0..8_usize, any::<bool>(), 0..3_usize, any::<bool>(), 0..11_usize, 0..11_usize, any::<bool>()),
        short in any::<bool>(), tie in 0..40_000_i32,
    ) {
        let mut spec = sample::spec();
        settled(&mut spec, choice);
        let ten = Length::from_cm(10.0);
        spec.head = Head::Measured(Length::from_ticks(head));
        spec.ease = Ratio::from_ticks(ease);
        let (stitches, rounds) = (Count::from_ticks(stitches), Count::from_ticks(rounds));
        spec.swatch = Swatch::Counted { stitches, width: ten, rounds, height: ten };
        spec.band.swatch = Some(BandSwatch { stitches, width: ten, rows: Count::from_ticks(rows), length: ten });
        spec.band.stripes[1].rows = Rows::new(odd);
        spec.layout = if wedges < 4 { Layout::Spread } else { Layout::Wedges(wedges) };
        spec.closing = if gather < 20 { Closing::Drawn } else { Closing::Gathered(Stitches::new(gather)) };
        spec.shape.side_top = if short { SideTop::ShortRows } else { SideTop::Gathered };
        spec.shape.flap_tie = Length::from_ticks(tie);
        let Ok(hat) = plan(&spec) else { return Err(TestCaseError::reject("no hat")) };
        check(&hat, &spec);
        for round in hat.rounds.iter().filter(|r| r.decreases.get() > 0) {
            let plain = round.before.saturating_sub(2 * round.decreases.get());
            prop_assert!(round.lead.get() <= plain.div_ceil(round.decreases.get()), "no room for the lead of {:?}", round);
        }
        for round in hat.rounds.iter().filter(|r| r.increases.get() > 0) {
            let plain = round.before.saturating_sub(round.increases.get());
            prop_assert!(round.lead.get() <= plain.div_ceil(round.increases.get()), "no room for the lead of {:?}", round);
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

#[test]
fn a_long_striped_tail_is_told_by_its_repeat() {
    let mut hat = sample::hat();
    let last = *hat.rounds.last().unwrap();
    for number in 17..=4_000 {
        let round = Round { number, before: 9, kind: RoundKind::Plain, decreases: Stitches::new(0), ..last };
        let (zone, colour) = (Zone::Tail, Colour((number % 5 / 3) as u8));
        hat.rounds.push(Round { lead: Stitches::new(0), zone, colour, ..round });
    }
    let pattern = write(&hat, &sample::spec());
    let tail = pattern.parts.iter().find(|part| part.kind == PartKind::Tail).unwrap();
    assert!(tail.lines.len() < 9, "{}", tail.lines.len());
    let again = tail.lines.last().unwrap();
    assert_eq!((again.label, again.colour), (Label::Round(22, 4_000), None));
    check(&hat, &sample::spec());
}
