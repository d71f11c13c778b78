//! What is printed is what was planned: over 10,000 random hats of every style, in US and in UK terms, the interpreter works the whole
//! printed pattern and ends with the planned hat, stitch for stitch.

mod materials;
mod yarn;

use hatwright_pattern::figures::Units;
use hatwright_pattern::written::{self, About, Terms};
use hatwright_sizing::{
    BandKind, Begun, Colour, Edge, Fabric, Hat, HatSpec, Layout, Round, RoundKind, Style, Top, TopKind, Way, Zone, plan,
};
use hatwright_tests::interpreter::{self, Gathered, Into, Part, Row, Step, Worked, work};
use hatwright_tests::random::random_hats;
use std::collections::BTreeMap;
use std::thread;

const HATS: usize = 10_000;
const NAMES: [&str; 3] = ["indigo", "weld", "undyed, washed twice"];
const YARNS: [&str; 2] = ["Boathouse wool, 4 ply", ""];

/// The whole printed pattern. Not every colour's yarn has a name.
fn print(spec: &HatSpec, hat: &Hat, terms: Terms, units: Units) -> String {
    let yarn_names = &YARNS;
    let about =
        About { title: "Rowing club cap", colour_names: &NAMES, yarn_names, terms, units, version: "0.1.0", ..About::default() };
    written::print(hat, spec, &about)
}

/// Works a hat's printed pattern and compares what comes of it with the plan.
fn check(spec: &HatSpec, hat: &Hat) -> Result<(), String> {
    let us = work(&print(spec, hat, Terms::Us, Units::Centimetres)).map_err(|fault| fault.to_string())?;
    let uk = work(&print(spec, hat, Terms::Uk, Units::Inches)).map_err(|fault| fault.to_string())?;
    if us != uk {
        return Err("US and UK terms make two different hats".into());
    }
    let compare = Compare { spec, hat, worked: &us };
    compare.rows()?;
    compare.rounds()?;
    compare.rest()
}

struct Compare<'a> {
    spec: &'a HatSpec,
    hat: &'a Hat,
    worked: &'a Worked,
}

fn ensure(holds: bool, why: impl FnOnce() -> String) -> Result<(), String> {
    if holds { Ok(()) } else { Err(why()) }
}

/// The stitch of a fabric, by its name in the trade, and where it goes.
fn stitch(fabric: Fabric) -> (interpreter::Stitch, interpreter::Loops) {
    use interpreter::{Loops, Stitch};
    let key = fabric.row().key;
    let stitch = match key {
        "slip-rib" => Stitch::Slip,
        "post-rib" => Stitch::Double,
        _ if key.starts_with("single") => Stitch::Single,
        _ if key.starts_with("half-double") => Stitch::HalfDouble,
        _ => Stitch::Double,
    };
    let loops = match key {
        "slip-rib" => Loops::Back,
        _ if key.ends_with("-back") => Loops::Back,
        _ if key.ends_with("-front") => Loops::Front,
        _ => Loops::Both,
    };
    (stitch, loops)
}

impl Compare<'_> {
    fn name(&self, colour: Colour) -> Option<&'static str> {
        (self.hat.colours().len() > 1).then(|| NAMES[usize::from(colour.0)])
    }

    fn rows(&self) -> Result<(), String> {
        let Self { spec, hat, worked } = self;
        let (fabric, planned): (Fabric, Vec<(u32, Colour)>) = match &hat.panel {
            Some(panel) => (spec.fabric, panel.rows.iter().map(|row| (row.stitches.get(), row.colour)).collect()),
            None => (spec.band_fabric(), hat.band_rows.iter().map(|colour| (spec.band.height.get(), *colour)).collect()),
        };
        ensure(worked.rows.len() == planned.len(), || format!("{} rows, not {}", worked.rows.len(), planned.len()))?;
        let (of, loops) = stitch(fabric);
        for (i, (row, (stitches, colour))) in worked.rows.iter().zip(planned).enumerate() {
            let Row { colour: made, stitch, loops: into, chain, stitches: left } = row;
            let same = made.as_deref() == self.name(colour) && *stitch == of && *left == stitches;
            let turned = *chain == fabric.row().chain && (i == 0 || *into == loops);
            ensure(same && turned, || format!("row {}: {row:?}", i + 1))?;
        }
        Ok(())
    }

    fn rounds(&self) -> Result<(), String> {
        let Self { spec, hat, worked } = self;
        ensure(worked.rounds.len() == hat.rounds.len(), || format!("{} rounds, not {}", worked.rounds.len(), hat.rounds.len()))?;
        for (made, round) in worked.rounds.iter().zip(&hat.rounds) {
            let told = (made.part, made.into, made.stitch, made.loops, made.chain, made.colour.as_deref());
            let counts = (made.used(), made.stitches(), made.decreases(), made.increases());
            let at = || format!("round {}: {told:?} {counts:?} for {round:?}", round.number);
            let part = match round.zone {
                Zone::Band => Part::Band,
                Zone::Body => Part::Body,
                Zone::Under => Part::Underside,
                Zone::Crown => Part::Crown,
                Zone::Tail => Part::Tail,
                Zone::Brim => Part::Brim,
            };
            let into = match round.kind {
                RoundKind::PickUp => Into::RowEnds,
                RoundKind::Foundation if spec.band.edge == Edge::LooseChain => Into::Chain,
                RoundKind::Foundation => Into::Foundation,
                RoundKind::Ring => Into::Ring,
                RoundKind::Edge => Into::Edge,
                _ => Into::Round,
            };
            ensure(made.part == part && made.into == into && made.colour.as_deref() == self.name(round.colour), at)?;
            let used = if into == Into::Foundation { 0 } else { round.before };
            let same = made.used() == used
                && made.stitches() == round.after.get()
                && (made.decreases(), made.increases()) == (round.decreases.get(), round.increases.get());
            ensure(same, at)?;
            let fabric = if round.zone == Zone::Band { spec.band_fabric() } else { spec.fabric };
            let (of, loops) = stitch(fabric);
            let chain = match (spec.goes(), into) {
                (Way::Spiral, _) | (_, Into::Ring | Into::Foundation) => 0,
                (Way::Joined, _) => fabric.row().chain,
            };
            ensure((made.stitch, made.loops, made.chain) == (of, loops, chain), at)?;
            let posts = made.steps.contains(&Step::FrontPost);
            ensure(posts == (fabric == Fabric::PostRib && round.kind == RoundKind::Plain), at)?;
            self.spread(made, round).map_err(|why| format!("{why} in {}", at()))?;
        }
        let way = worked.rounds.iter().any(|r| r.into != Into::Foundation).then_some(spec.goes() == Way::Joined);
        ensure(worked.joined == way, || format!("joined: {:?}", worked.joined))
    }

    /// Decreases and increases begin where they are planned to and are spread as evenly as whole stitches allow.
    fn spread(&self, made: &interpreter::Round, round: &Round) -> Result<(), String> {
        let changes = made.decreases() + made.increases();
        if changes == 0 {
            return Ok(());
        }
        let lead = made.steps.iter().take_while(|step| **step == Step::Stitch).count();
        // Where all stitches are taken double there are none to lead in with.
        ensure(lead == round.lead.get() as usize, || format!("leads in with {lead} stitches, not {}", round.lead))?;
        let gaps = gaps(&made.steps);
        let apart = gaps.iter().max().unwrap_or(&0) - gaps.iter().min().unwrap_or(&0);
        // Wedges are all alike.
        let wedge = |k: u32| round.kind != RoundKind::Adjust && changes == k && round.before.is_multiple_of(k);
        let alike = matches!(self.spec.lays(), Layout::Wedges(k) if wedge(k));
        ensure(apart <= u32::from(!alike), || format!("has gaps of {gaps:?}"))
    }

    fn rest(&self) -> Result<(), String> {
        let Self { spec, hat, worked } = self;
        let apart = hat.begun == Begun::Crown && hat.band == BandKind::Sideways;
        ensure(worked.band_join.is_some() == apart, || format!("band joined: {:?}", worked.band_join))?;
        ensure(worked.seamed == hat.panel.is_some(), || format!("seamed: {}", worked.seamed))?;
        let flaps: Vec<(u32, u32, u32)> = worked.flap.iter().map(|r| (r.used, r.stitches, r.decreases)).collect();
        let planned = hat.flaps.as_ref().map(|f| {
            let rows: Vec<_> = f.rows.iter().map(|r| (r.before, r.after.get(), r.decreases.get())).collect();
            (rows, (f.back.get(), f.front.get()), f.tie_chains.get())
        });
        match planned {
            Some((rows, between, tie)) => {
                ensure(rows == flaps && worked.between == Some(between) && worked.tie == tie, || {
                    format!("{flaps:?}, {:?}, {} for {rows:?}, {between:?}, {tie}", worked.between, worked.tie)
                })?;
                let edge = if hat.band == BandKind::Sideways { hat.size.rows.get() } else { hat.size.stitches.get() };
                ensure(2 * flaps[0].0 + between.0 + between.1 == edge, || format!("{flaps:?} and {between:?} of {edge}"))?;
            }
            None => ensure(flaps.is_empty() && worked.tie == 0, || format!("{flaps:?}"))?,
        }
        let gathered = match hat.top {
            None | Some(Top { kind: TopKind::Ring, .. }) => None,
            Some(Top { kind: TopKind::RowEnds, stitches, .. }) => Some(Gathered::RowEnds(stitches.get())),
            Some(top) => Some(Gathered::Stitches(top.stitches.get())),
        };
        ensure(worked.gathered == gathered, || format!("{:?} for {gathered:?}", worked.gathered))?;
        ensure((spec.style == Style::EarWarmer) == hat.top.is_none(), || format!("{:?}", hat.top))
    }
}

/// Plain stitches after each decrease or increase, those of the last going on around to the first.
fn gaps(steps: &[Step]) -> Vec<u32> {
    let lead = steps.iter().take_while(|step| **step == Step::Stitch).count();
    let mut gaps = Vec::new();
    for step in steps[lead..].iter().chain(&steps[..lead]) {
        match (step, gaps.last_mut()) {
            (Step::Decrease | Step::Increase, _) => gaps.push(0),
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
    let mut failures: Vec<String> = thread::scope(|scope| {
        let part = |hats: &[(u64, HatSpec, Hat)]| {
            let failed = |(seed, spec, hat): &(u64, HatSpec, Hat)| {
                check(spec, hat).err().map(|why| format!("seed {seed}: {why}\n  {spec:?}"))
            };
            hats.iter().filter_map(failed).collect::<Vec<_>>()
        };
        let parts: Vec<_> = hats.chunks(HATS.div_ceil(workers)).map(|chunk| scope.spawn(move || part(chunk))).collect();
        parts.into_iter().flat_map(|worker| worker.join().unwrap_or_else(|_| vec!["a panic".into()])).collect()
    });
    // The shortest stories are the easiest to read.
    failures.sort_by_key(String::len);
    let shown = failures.iter().take(3).cloned().collect::<Vec<_>>().join("\n");
    assert!(failures.is_empty(), "{} of {HATS} patterns do not make their hats:\n{shown}", failures.len());
    assert_eq!(hats.len(), HATS);
    // All that there is was among them: every style, begun at both ends, in both ways.
    let mut kinds: BTreeMap<String, u32> = BTreeMap::new();
    for (_, spec, _) in &hats {
        *kinds.entry(format!("{:?} {:?} {:?} {:?}", spec.style, spec.begins(), spec.goes(), spec.band_kind())).or_default() += 1;
    }
    let round = [Style::Fitted, Style::Slouch, Style::Stocking, Style::Tam, Style::EarFlap, Style::Brimmed];
    for (style, begun) in round.into_iter().flat_map(|style| [(style, Begun::Band), (style, Begun::Crown)]) {
        for way in [Way::Spiral, Way::Joined] {
            let of = format!("{style:?} {begun:?} {way:?} ");
            let made: u32 = kinds.iter().filter(|(kind, _)| kind.starts_with(&of)).map(|(_, n)| n).sum();
            assert!(made >= 20, "{of}: {made} of {kinds:?}");
        }
    }
}

/// Kept apart from the random hats: the hats to begin with, as anybody sees them first.
#[test]
fn the_clubs_patterns_make_their_hats() {
    let ids = core::array::from_fn(|i| hatwright_project::ProjectId::from_bits(i as u64));
    for project in hatwright_project::samples(ids) {
        let hat = plan(&project.spec).unwrap_or_else(|refusal| panic!("{}: {refusal:?}", project.name));
        check(&project.spec, &hat).unwrap_or_else(|why| panic!("{}: {why}", project.name));
    }
}
