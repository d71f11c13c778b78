//! What is printed is what was planned: over 10,000 random hats, in US and in UK terms, the interpreter works the whole printed
//! pattern and ends with the planned hat, stitch for stitch.

use hatwright_pattern::figures::Units;
use hatwright_pattern::written::{About, Terms, lay_out, write};
use hatwright_sizing::{Colour, Hat, HatSpec, Layout, RoundKind};
use hatwright_tests::interpreter::{Step, Worked, work};
use hatwright_tests::random::random_hats;
use std::thread;

const HATS: usize = 10_000;
const NAMES: [&str; 3] = ["indigo", "weld", "undyed, washed twice"];

/// Works a hat's printed pattern and compares what comes of it with the plan.
fn check(spec: &HatSpec, hat: &Hat) -> Result<(), String> {
    let pattern = write(hat, spec);
    let print = |terms, units| {
        let about = About { title: "Rowing club cap", colour_names: &NAMES, terms, units, version: "0.1.0" };
        lay_out(&pattern, hat, spec, &about).text()
    };
    let us = work(&print(Terms::Us, Units::Centimetres)).map_err(|fault| fault.to_string())?;
    let uk = work(&print(Terms::Uk, Units::Inches)).map_err(|fault| fault.to_string())?;
    if us != uk {
        return Err("US and UK terms make two different hats".into());
    }
    as_planned(&us, spec, hat)
}

fn as_planned(worked: &Worked, spec: &HatSpec, hat: &Hat) -> Result<(), String> {
    let used = hat.band_rows.iter().chain(hat.rounds.iter().map(|r| &r.colour));
    let coloured = used.clone().any(|c| Some(c) != used.clone().next());
    let name = |colour: Colour| coloured.then(|| NAMES[usize::from(colour.0)]);
    if worked.rows.len() != hat.band_rows.len() || worked.rounds.len() != hat.rounds.len() {
        return Err(format!("{} rows and {} rounds", worked.rows.len(), worked.rounds.len()));
    }
    for (i, (row, colour)) in worked.rows.iter().zip(&hat.band_rows).enumerate() {
        if row.colour.as_deref() != name(*colour) || row.stitches != spec.band.height.get() {
            return Err(format!("row {}: {row:?}", i + 1));
        }
    }
    for (made, round) in worked.rounds.iter().zip(&hat.rounds) {
        let same = made.stitches() == round.after.get() && made.decreases() == round.decreases.get();
        if !same || made.colour.as_deref() != name(round.colour) {
            return Err(format!("round {}: {made:?}", round.number));
        }
        let lead = made.steps.iter().take_while(|step| **step == Step::Stitch).count();
        if made.decreases() > 0 {
            if lead != round.lead.get() as usize {
                return Err(format!("round {} leads in with {lead} stitches, not {}", round.number, round.lead));
            }
            let gaps = gaps(&made.steps);
            let apart = gaps.iter().max().unwrap_or(&0) - gaps.iter().min().unwrap_or(&0);
            // Wedges are all alike.
            let alike = matches!(spec.layout, Layout::Wedges(k) if round.kind == RoundKind::Decrease && made.decreases() == k);
            if apart > u32::from(!alike) {
                return Err(format!("round {} has gaps of {gaps:?}", round.number));
            }
        }
    }
    if worked.gathered == hat.top.stitches.get() { Ok(()) } else { Err(format!("{} gathered", worked.gathered)) }
}

/// Plain stitches after each decrease, those of the last going on around to the first.
fn gaps(steps: &[Step]) -> Vec<u32> {
    let lead = steps.iter().take_while(|step| **step == Step::Stitch).count();
    let mut gaps = Vec::new();
    for step in steps[lead..].iter().chain(&steps[..lead]) {
        match (step, gaps.last_mut()) {
            (Step::Decrease, _) => gaps.push(0),
            (_, Some(gap)) => *gap += 1,
            (_, None) => {}
        }
    }
    gaps
}

#[test]
fn every_printed_pattern_makes_its_hat() {
    let hats: Vec<_> = random_hats(HATS).collect();
    let workers = thread::available_parallelism().map_or(2, usize::from);
    let failures: Vec<String> = thread::scope(|scope| {
        let part = |hats: &[(u64, HatSpec, Hat)]| {
            let failed = |(seed, spec, hat): &(u64, HatSpec, Hat)| {
                check(spec, hat).err().map(|why| format!("seed {seed}: {why}\n  {spec:?}"))
            };
            hats.iter().filter_map(failed).collect::<Vec<_>>()
        };
        let parts: Vec<_> = hats.chunks(HATS.div_ceil(workers)).map(|chunk| scope.spawn(move || part(chunk))).collect();
        parts.into_iter().flat_map(|worker| worker.join().unwrap_or_else(|_| vec!["a panic".into()])).collect()
    });
    let shown = failures.iter().take(3).cloned().collect::<Vec<_>>().join("\n");
    assert!(failures.is_empty(), "{} of {HATS} patterns do not make their hats:\n{shown}", failures.len());
    assert_eq!(hats.len(), HATS);
}
