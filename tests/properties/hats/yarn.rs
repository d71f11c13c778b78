//! Yarn: every stitch and end of it, and balls enough.

use crate::planned::{Planned, Sizes, ensure, every_hat, near, sizes};
use hatwright_sizing::{
    BandKind, Begun, Colour, Edge, Fabric, Hat, HatSpec, Operation, RoundKind, Stitch, TopKind, Way, Zone, operations,
};

const END: f64 = 15.0;
const CHAIN: f64 = 3.3;
const SLIP: f64 = 3.5;

/// Common practice, no source: yarn in a stitch, in stitch widths.
fn stitch(fabric: Fabric) -> f64 {
    match (fabric.row().stitch, fabric) {
        (_, Fabric::PostRib) => 13.5,
        (Stitch::Slip, _) => SLIP,
        (Stitch::Single, _) => 7.0,
        (Stitch::HalfDouble, _) => 9.5,
        (Stitch::Double, _) => 12.5,
    }
}

/// Chains of a turn: 1 for single crochet, 2 for half double and around posts, 3 for double.
fn turn(fabric: Fabric) -> f64 {
    match (fabric.row().stitch, fabric) {
        (Stitch::HalfDouble, _) | (_, Fabric::PostRib) => 2.0,
        (Stitch::Double, _) => 3.0,
        _ => 1.0,
    }
}

/// Yarn in cm by colour, stitch by stitch: common practice, no source, for what each takes in stitch widths; 15 cm for every end.
struct Tally<'a> {
    spec: &'a HatSpec,
    hat: &'a Hat,
    cm: Vec<f64>,
}

impl Tally<'_> {
    fn add(&mut self, colour: Colour, cm: f64) {
        self.cm[usize::from(colour.0)] += cm;
    }

    fn rows(&mut self) {
        let Sizes { w, band_w, .. } = sizes(self.spec);
        let b = self.spec.band.height.get();
        let (mut fabric, mut wide) = (self.spec.band_fabric(), band_w);
        let mut rows: Vec<(Colour, u32)> = self.hat.band_rows.iter().map(|colour| (*colour, b)).collect();
        if let Some(panel) = &self.hat.panel {
            (fabric, wide) = (self.spec.fabric, w);
            rows = panel.rows.iter().map(|r| (r.colour, r.stitches.get())).collect();
        }
        for (i, (colour, stitches)) in rows.iter().enumerate() {
            // Each row has its turn; the first one's chains stand beside those of the foundation.
            self.add(*colour, (f64::from(*stitches) * stitch(fabric) + turn(fabric) * CHAIN) * wide);
            if i == 0 {
                self.add(*colour, f64::from(*stitches) * CHAIN * wide);
            }
        }
        if let (Some(panel), Some((last, _))) = (&self.hat.panel, rows.last()) {
            self.add(*last, f64::from(panel.stitches.get()) * SLIP * wide);
        }
    }

    fn rounds(&mut self) {
        let Sizes { w, band_w, .. } = sizes(self.spec);
        for round in &self.hat.rounds {
            let band = round.zone == Zone::Band;
            let (fabric, wide) = if band { (self.spec.band_fabric(), band_w) } else { (self.spec.fabric, w) };
            let n = f64::from(round.after.get());
            let d = f64::from(round.decreases.get());
            let mut widths = (n - d + 1.6 * d) * stitch(fabric);
            let mut joined = self.spec.goes() == Way::Joined;
            if round.kind == RoundKind::Foundation {
                // Plain, whatever comes around its posts; on a chain, or with a chain in every stitch. Both are joined into a ring.
                let plain = if fabric == Fabric::PostRib { 12.5 } else { stitch(fabric) };
                widths = n * (plain + CHAIN) + SLIP;
                joined &= self.spec.band.edge == Edge::LooseChain;
            }
            if joined {
                widths += SLIP + if round.kind == RoundKind::Ring { 0.0 } else { turn(fabric) * CHAIN };
            }
            self.add(round.colour, widths * wide);
        }
        if self.hat.begun == Begun::Crown && self.hat.band == BandKind::Sideways {
            let (Some(last), Some(row)) = (self.hat.rounds.last(), self.hat.band_rows.last()) else { return };
            self.add(*row, f64::from(last.after.get()) * SLIP * w);
        }
    }

    fn flaps(&mut self) {
        let w = sizes(self.spec).w;
        let Some(flaps) = &self.hat.flaps else { return };
        let fabric = self.spec.fabric;
        let mut widths = f64::from(flaps.tie_chains.get()) * CHAIN;
        for (i, row) in flaps.rows.iter().enumerate() {
            let d = f64::from(row.decreases.get());
            widths += (f64::from(row.after.get()) - d + 1.6 * d) * stitch(fabric);
            widths += if i == 0 { 0.0 } else { turn(fabric) * CHAIN };
        }
        self.add(flaps.colour, 2.0 * widths * w + 4.0 * END);
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
            for colour in 0..self.cm.len() as u8 {
                let cm = ends(Colour(colour), rows, rounds, band_row);
                self.add(Colour(colour), cm);
            }
        }
        let Some(top) = self.hat.top else { return };
        let n = f64::from(top.stitches.get());
        let (rows, rounds) = &pieces[0];
        let last = rounds.last().map(|(colour, _)| *colour).or(rows.last().copied());
        let first = rows.first().copied().or(rounds.first().map(|(colour, _)| *colour));
        // In place of the last end comes the one that closes the top; a ring is drawn up by an end of its own.
        match (top.kind, first, last) {
            (TopKind::Ring, Some(first), _) => self.add(first, END),
            (TopKind::RowEnds, _, Some(last)) => self.add(last, 2.0 * n * h + END),
            (_, _, Some(last)) => self.add(last, 2.0 * n * w + END),
            _ => {}
        }
    }

    fn pom_pom(&mut self) {
        let Some(pom) = self.spec.wears() else { return };
        let wraps = (15.0 * pom.diameter.cm() / sizes(self.spec).w).ceil().clamp(1.0, 2_000.0);
        let wound = wraps * 2.0 * pom.diameter.cm() + 2.0 * END;
        let colours = pom.colour.map_or_else(|| self.hat.colours(), |colour| vec![colour]);
        for colour in &colours {
            self.add(*colour, wound / colours.len() as f64);
        }
    }
}

fn yarn(spec: &HatSpec, hat: &Hat) -> Vec<f64> {
    let mut tally = Tally { spec, hat, cm: vec![0.0; spec.balls.len()] };
    tally.rows();
    tally.rounds();
    tally.flaps();
    tally.ends();
    // Strands held together multiply all of it, but what is wound for a pom-pom is wound of all of them too.
    tally.pom_pom();
    tally.cm.iter().map(|cm| cm * f64::from(spec.strands)).collect()
}

/// Ends of a colour's yarn in a piece, and the strands that wait past others. Common practice, no source: it waits past at most six rows
/// and rounds, at the edge where even rows end and on the inside of the body; otherwise it is cut.
fn ends(colour: Colour, rows: &[Colour], rounds: &[(Colour, f64)], band_row: f64) -> f64 {
    let all: Vec<(Colour, f64)> = rows.iter().map(|colour| (*colour, band_row)).chain(rounds.iter().copied()).collect();
    let at: Vec<usize> = (0..all.len()).filter(|i| all[*i].0 == colour).collect();
    let mut cm = if at.is_empty() { 0.0 } else { 2.0 * END };
    for pair in at.windows(2) {
        let between = pair[0] + 1..pair[1];
        let edge = |i: usize| i >= rows.len() || i.is_multiple_of(2);
        if between.is_empty() {
            continue;
        }
        cm += if between.len() <= 6 && edge(between.start) && edge(between.end) {
            between.map(|i| all[i].1).sum()
        } else {
            2.0 * END
        };
    }
    cm
}

#[test]
fn yarn_is_every_stitch_and_end() {
    every_hat(|Planned { hat, spec, .. }| {
        let ours = yarn(spec, hat);
        ensure(hat.yarn.len() == ours.len(), || format!("{:?}", hat.yarn))?;
        for (need, cm) in hat.yarn.iter().zip(ours) {
            let at = || format!("{need:?}, recounted {} m", cm / 100.0);
            // A closing strand is rounded to a hundredth of a millimetre before the strands multiply it.
            ensure(near(need.length.metres(), cm / 100.0, 0.002), at)?;
            let (low, high) = (need.low.metres(), need.high.metres());
            ensure(near(low, 0.75 * cm / 100.0, 0.002) && near(high, 1.25 * cm / 100.0, 0.002), at)?;
        }
        Ok(())
    });
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

#[test]
fn balls_are_enough_and_not_one_too_many() {
    every_hat(|Planned { hat, spec, .. }| {
        for (need, ball) in hat.yarn.iter().zip(&spec.balls) {
            let at = || format!("{need:?} in balls of {} m", ball.yarn.value());
            ensure(need.length.millimetres() >= 0, at)?;
            // A need is rounded to the millimetre, the balls are not.
            let (wanted, doubt) = (need.length.metres() * (1.0 + spec.margin.value()), 0.001);
            let balls = f64::from(need.balls);
            ensure(balls * ball.yarn.value() >= wanted - doubt, at)?;
            ensure(need.balls == 0 || (balls - 1.0) * ball.yarn.value() < wanted + doubt, at)?;
        }
        Ok(())
    });
}
