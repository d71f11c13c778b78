//! Yarn: every stitch and end of it, by part and colour.

use crate::planned::{Planned, Sizes, ensure, every_hat, near, sizes};
use hatwright_sizing::{
    BandKind, Begun, Colour, Edge, Fabric, Hat, HatSpec, Operation, Part, RoundKind, Stitch, Style, TopKind, TopperKind, Way,
    Zone, operations,
};
use hatwright_tests::practice::{CHAIN, END, SLIP, TOGETHER, is_worked, known, root, stitch, tall, turn};
use std::collections::BTreeMap;

/// Yarn in cm by part, fabric and colour, stitch by stitch: common practice, no source, for what each takes in stitch widths; 15 cm for every end.
struct Tally<'a> {
    spec: &'a HatSpec,
    hat: &'a Hat,
    cm: BTreeMap<(Part, bool, Colour), f64>,
}

impl Tally<'_> {
    fn add(&mut self, part: Part, band: bool, colour: Colour, cm: f64) {
        *self.cm.entry((part, band, colour)).or_default() += cm;
    }

    fn rows(&mut self) {
        let Sizes { w, band_w, .. } = sizes(self.spec);
        let b = self.spec.band.height.get();
        let (mut part, mut fabric, mut wide) = (Part::Band, self.spec.band_fabric(), band_w);
        let mut rows: Vec<(Colour, u32)> = self.hat.band_rows.iter().map(|colour| (*colour, b)).collect();
        if let Some(panel) = &self.hat.panel {
            (part, fabric, wide) = (Part::Body, self.spec.fabric, w);
            rows = panel.rows.iter().map(|r| (r.colour, r.stitches.get())).collect();
        }
        let band = part == Part::Band;
        for (i, (colour, stitches)) in rows.iter().enumerate() {
            // Each row has its turn; the first one's chains stand beside those of the foundation.
            self.add(part, band, *colour, (f64::from(*stitches) * stitch(fabric) + turn(fabric) * CHAIN) * wide);
            if i == 0 {
                self.add(Part::Foundation, band, *colour, f64::from(*stitches) * CHAIN * wide);
            }
        }
        if let (Some(panel), Some((last, _))) = (&self.hat.panel, rows.last()) {
            self.add(Part::Seam, false, *last, f64::from(panel.stitches.get()) * SLIP * wide);
        }
    }

    fn rounds(&mut self) {
        let Sizes { w, band_w, .. } = sizes(self.spec);
        for round in &self.hat.rounds {
            let band = round.zone == Zone::Band;
            let (fabric, wide) = if band { (self.spec.band_fabric(), band_w) } else { (self.spec.fabric, w) };
            let n = f64::from(round.after.get());
            let d = f64::from(round.decreases.get());
            let mut widths = (n - d + TOGETHER * d) * stitch(fabric);
            let mut joined = self.spec.goes() == Way::Joined;
            if round.kind == RoundKind::Foundation {
                // Plain, whatever comes around its posts; on a chain, or with a chain in every stitch. Both are joined into a ring.
                let plain = if fabric == Fabric::PostRib { tall(Stitch::Double) } else { stitch(fabric) };
                let chain = n * CHAIN;
                widths = n * plain + SLIP;
                if self.spec.band.edge == Edge::LooseChain {
                    self.add(Part::Foundation, band, round.colour, chain * wide);
                } else {
                    widths += chain;
                    joined = false;
                }
            }
            if joined {
                widths += SLIP + if round.kind == RoundKind::Ring { 0.0 } else { turn(fabric) * CHAIN };
            }
            let part = match round.zone {
                Zone::Band => Part::Band,
                Zone::Body | Zone::Under => Part::Body,
                Zone::Crown => Part::Crown,
                Zone::Tail => Part::Tail,
                Zone::Brim => Part::Brim,
            };
            self.add(part, band, round.colour, widths * wide);
        }
        if self.hat.begun == Begun::Crown && self.hat.band == BandKind::Sideways {
            let (Some(last), Some(row)) = (self.hat.rounds.last(), self.hat.band_rows.last()) else { return };
            self.add(Part::Seam, false, *row, f64::from(last.after.get()) * SLIP * w);
        }
    }

    fn flaps(&mut self) {
        let w = sizes(self.spec).w;
        let Some(flaps) = &self.hat.flaps else { return };
        let fabric = self.spec.fabric;
        self.add(Part::Ties, false, flaps.colour, 2.0 * f64::from(flaps.tie_chains.get()) * CHAIN * w);
        let mut widths = 0.0;
        for (i, row) in flaps.rows.iter().enumerate() {
            let d = f64::from(row.decreases.get());
            widths += (f64::from(row.after.get()) - d + TOGETHER * d) * stitch(fabric);
            widths += if i == 0 { 0.0 } else { turn(fabric) * CHAIN };
        }
        self.add(Part::Flaps, false, flaps.colour, 2.0 * widths * w);
        self.add(Part::Ends, false, flaps.colour, 4.0 * END);
    }

    /// Ends: each piece of the work has its own, and what closes the top is longer.
    fn ends(&mut self) {
        let Sizes { w, h, band_row, .. } = sizes(self.spec);
        let rows: Vec<Colour> = match &self.hat.panel {
            Some(panel) => panel.rows.iter().map(|r| r.colour).collect(),
            None => self.hat.band_rows.clone(),
        };
        let rounds: Vec<(Colour, f64)> =
            self.hat.rounds.iter().map(|r| (r.colour, if r.zone == Zone::Band { band_row } else { h })).collect();
        let edge = self.hat.rounds.iter().position(|r| r.kind == RoundKind::Edge).unwrap_or(rounds.len());
        let pieces = match self.hat.begun {
            Begun::Crown => vec![(Vec::new(), rounds), (rows, Vec::new())],
            Begun::Band => vec![(rows, rounds[..edge].to_vec()), (Vec::new(), rounds[edge..].to_vec())],
        };
        for (rows, rounds) in &pieces {
            for colour in (0..self.spec.balls.len() as u8).map(Colour) {
                let (cut, carried) = ends(colour, rows, rounds, band_row);
                self.add(Part::Ends, false, colour, cut);
                self.add(Part::Carried, false, colour, carried);
            }
        }
        let Some(top) = self.hat.top else { return };
        let n = f64::from(top.stitches.get());
        let (rows, rounds) = &pieces[0];
        let last = rounds.last().map(|(colour, _)| *colour).or(rows.last().copied());
        let first = rows.first().copied().or(rounds.first().map(|(colour, _)| *colour));
        // In place of the last end comes the one that closes the top; a ring is drawn up by an end of its own.
        match (top.kind, first, last) {
            (TopKind::Ring, Some(first), _) => self.add(Part::Ends, false, first, END),
            (TopKind::RowEnds, _, Some(last)) => self.add(Part::Ends, false, last, 2.0 * n * h + END),
            (_, _, Some(last)) => self.add(Part::Ends, false, last, 2.0 * n * w + END),
            _ => {}
        }
    }

    /// Common practice, no source: 15 wraps of a pom-pom for each stitch width across it, 30 ÷ the width in cm of a tassel.
    fn topper(&mut self) {
        let Some(topper) = self.spec.wears() else { return };
        let (w, size) = (sizes(self.spec).w, topper.size.cm());
        let usual = match topper.kind {
            TopperKind::PomPom => 15.0 * size / w,
            TopperKind::Tassel => 30.0 / w,
        };
        let wraps = (usual * topper.fullness.value() - 1e-9).ceil().clamp(1.0, 2_000.0);
        let wound = wraps * 2.0 * size + 2.0 * END;
        let colours = topper.colour.map_or_else(|| self.hat.colours(), |colour| vec![colour]);
        for colour in &colours {
            self.add(Part::Topper, false, *colour, wound / colours.len() as f64);
        }
    }

    /// A swatch of 15 × 15 cm, where it is kept.
    fn swatch(&mut self) {
        if !self.spec.yarn_use.swatch_kept {
            return;
        }
        let Sizes { w, h, band_w, band_row } = sizes(self.spec);
        let band = self.spec.style == Style::EarWarmer;
        let (fabric, w, h) = if band { (self.spec.band_fabric(), band_w, band_row) } else { (self.spec.fabric, w, h) };
        let stitches = (15.0 / w - 1e-9).ceil() * (15.0 / h - 1e-9).ceil();
        let first = self.hat.colours().first().copied().unwrap_or_default();
        let colour = self.spec.yarn_use.weighed.map_or(first, |weighed| weighed.colour);
        self.add(Part::Swatch, band, colour, stitches * stitch(fabric) * w);
    }
}

/// Metres by part, fabric and colour.
fn yarn(spec: &HatSpec, hat: &Hat) -> BTreeMap<(Part, bool, Colour), f64> {
    let mut tally = Tally { spec, hat, cm: BTreeMap::new() };
    tally.rows();
    tally.rounds();
    tally.flaps();
    tally.ends();
    tally.topper();
    tally.swatch();
    let factor = known(spec).factor;
    // Strands held together multiply all of it: what is wound is wound of all of them too.
    let strands = f64::from(spec.strands) / 100.0;
    tally.cm.retain(|_, cm| *cm > 0.0);
    tally.cm.iter().map(|(of, cm)| (*of, cm * strands * if is_worked(of.0) { factor } else { 1.0 })).collect()
}

/// Ends of a colour's yarn in a piece, and its strands that wait past others, in cm. Common practice, no source: it waits past at most six rows
/// and rounds, at the edge where even rows end and on the inside of the body; otherwise it is cut.
fn ends(colour: Colour, rows: &[Colour], rounds: &[(Colour, f64)], band_row: f64) -> (f64, f64) {
    let all: Vec<(Colour, f64)> = rows.iter().map(|colour| (*colour, band_row)).chain(rounds.iter().copied()).collect();
    let at: Vec<usize> = (0..all.len()).filter(|i| all[*i].0 == colour).collect();
    let (mut cut, mut carried) = (if at.is_empty() { 0.0 } else { 2.0 * END }, 0.0);
    for pair in at.windows(2) {
        let between = pair[0] + 1..pair[1];
        let edge = |i: usize| i >= rows.len() || i.is_multiple_of(2);
        if between.is_empty() {
            continue;
        }
        if between.len() <= 6 && edge(between.start) && edge(between.end) {
            carried += between.map(|i| all[i].1).sum::<f64>();
        } else {
            cut += 2.0 * END;
        }
    }
    (cut, carried)
}

/// Every part that has yarn is told, and none else; a colour's need is the exact sum of its parts; its range is that of one error of all
/// stitches and another of all that is cut or wound (10 %: common practice, no source).
#[test]
fn yarn_is_every_stitch_and_end_by_part() {
    let mut parts_seen = BTreeMap::<Part, u32>::new();
    let mut ways = [0_u32; 2];
    for planned in crate::planned::PLANNED.iter() {
        planned.hat.yarn_parts.iter().for_each(|part| *parts_seen.entry(part.part).or_default() += 1);
        ways[usize::from(known(&planned.spec).factor.to_bits() != 1.0_f64.to_bits())] += 1;
    }
    assert!(Part::ALL.iter().all(|part| parts_seen.get(part).is_some_and(|n| *n > 50)), "{parts_seen:?}");
    assert!(ways.iter().all(|n| *n > 1_000), "estimated and measured: {ways:?}");
    every_hat(|Planned { hat, spec, .. }| {
        let (ours, known) = (yarn(spec, hat), known(spec));
        ensure(ours.keys().eq(ordered(hat).keys()), || format!("{:?}\n{ours:?}", hat.yarn_parts))?;
        for (of, metres) in ordered(hat) {
            // A closing strand is rounded to a hundredth of a millimetre before the strands multiply it.
            ensure(near(metres, ours[&of], 0.002 + 1e-6 * metres), || format!("{of:?}: {metres} m, recounted {} m", ours[&of]))?;
        }
        for need in &hat.yarn {
            let mine = || hat.yarn_parts.iter().filter(|part| part.colour == need.colour);
            let sum: i64 = mine().map(|part| part.length.millimetres()).sum();
            ensure(sum == need.length.millimetres(), || format!("{need:?} is not the sum of its parts, {sum} mm"))?;
            let half = |doubts: [f64; 2]| {
                let stitches: f64 =
                    mine().filter(|p| is_worked(p.part)).map(|p| p.length.metres() * doubts[usize::from(p.band)]).sum();
                let other: f64 = mine().filter(|p| !is_worked(p.part)).map(|p| p.length.metres() * 0.10).sum();
                root(&[stitches, other])
            };
            let (length, metres) = (need.length.metres(), half(known.metres));
            let at = || format!("{need:?}, ± {metres} m");
            ensure(near(need.low.metres(), (length - metres).max(0.0), 0.002), at)?;
            ensure(near(need.high.metres(), length + metres, 0.002), at)?;
            // A normal distribution has 90 % within 1.6449 standard deviations.
            ensure(near(need.deviation.metres() * 1.644_854, half(known.balls), 0.004), at)?;
        }
        Ok(())
    });
}

/// The parts as the program tells them, by part, fabric and colour.
fn ordered(hat: &Hat) -> BTreeMap<(Part, bool, Colour), f64> {
    hat.yarn_parts.iter().map(|part| ((part.part, part.band, part.colour), part.length.metres())).collect()
}

/// The tally of operations has every stitch of every round, row and flap, and uses up what each is worked into.
#[test]
fn operations_are_all_of_the_work() {
    every_hat(|Planned { hat, spec, .. }| {
        let all = operations(hat, spec);
        let count = |of: &dyn Fn(Operation) -> u64| all.iter().map(|w| of(w.operation) * w.count).sum::<u64>();
        let made = count(&|op| u64::from(matches!(op, Operation::Foundation(_) | Operation::Plain(_) | Operation::Together(_))));
        let together = count(&|op| u64::from(matches!(op, Operation::Together(_))));
        let u = |n: u32| u64::from(n);
        let flaps = hat.flaps.iter().flat_map(|f| &f.rows);
        let rows = u64::from(spec.band.height.get()) * hat.band_rows.len() as u64
            + hat.panel.iter().flat_map(|p| &p.rows).map(|r| u(r.stitches.get())).sum::<u64>();
        let rounds: u64 = hat.rounds.iter().map(|r| u(r.after.get())).sum();
        let expected = rows + rounds + flaps.clone().map(|r| 2 * u(r.after.get())).sum::<u64>();
        ensure(made == expected, || format!("{made} stitches of {expected}"))?;
        let decreases =
            hat.rounds.iter().map(|r| u(r.decreases.get())).sum::<u64>() + flaps.map(|r| 2 * u(r.decreases.get())).sum::<u64>();
        ensure(together == decreases, || format!("{together} decreases of {decreases}"))
    });
}
