//! The page's lengths are those of the stitches that are printed: the interpreter works the pattern, and what it did is counted by part and
//! colour, with the yarn that practice gives a stitch. Ends, strands that wait and what is wound are no stitches: of them
//! `properties/hats/yarn.rs` keeps account.

use super::{NAMES, ensure, print};
use hatwright_pattern::figures::Units;
use hatwright_pattern::written::Terms;
use hatwright_sizing::{Begun, Colour, Hat, HatSpec, Part, Style};
use hatwright_tests::interpreter::{self, Into, Round, Step, Stitch, Worked, work};
use hatwright_tests::practice::{CHAIN, SLIP, Sizes, TOGETHER, is_worked, known, sizes, tall};
use hatwright_tests::random::random_hats;
use std::collections::BTreeMap;
use std::sync::Arc;

const HATS: usize = 3_000;

type Of = (Part, bool, Colour);

/// What was done, and its yarn in stitch widths.
struct Count<'a> {
    hat: &'a Hat,
    all: BTreeMap<Of, (u64, f64)>,
}

/// Common practice, no source.
fn widths(stitch: Stitch) -> f64 {
    use hatwright_sizing::Stitch as Of;
    tall(match stitch {
        Stitch::Slip => Of::Slip,
        Stitch::Single => Of::Single,
        Stitch::HalfDouble => Of::HalfDouble,
        Stitch::Double => Of::Double,
    })
}

impl Count<'_> {
    fn add(&mut self, part: Part, band: bool, colour: Option<&Arc<str>>, times: u32, each: f64) -> Result<(), String> {
        if times == 0 {
            return Ok(());
        }
        let colour = match colour {
            Some(name) => NAMES.iter().position(|known| **known == **name).map(|i| Colour(i as u8)),
            None => self.hat.colours().first().copied(),
        };
        let colour = colour.ok_or("a colour that the hat does not have")?;
        let (count, sum) = self.all.entry((part, band, colour)).or_default();
        *count += u64::from(times);
        *sum += f64::from(times) * each;
        Ok(())
    }

    fn rows(&mut self, worked: &Worked) -> Result<(), String> {
        let band = !worked.seamed;
        let part = if band { Part::Band } else { Part::Body };
        for (i, row) in worked.rows.iter().enumerate() {
            let colour = row.colour.as_ref();
            if i == 0 {
                // The foundation has a chain for every stitch; those that are passed over are the first row's turn.
                self.add(Part::Foundation, band, worked.colours.foundation.as_ref(), row.stitches, CHAIN)?;
            }
            self.add(part, band, colour, row.chain, CHAIN)?;
            self.add(part, band, colour, row.stitches, widths(row.stitch))?;
        }
        if worked.seamed {
            let longest = worked.rows.iter().map(|row| row.stitches).max().unwrap_or(0);
            self.add(Part::Seam, false, worked.colours.seam.as_ref(), longest, SLIP)?;
        }
        if let Some(join) = &worked.band_join {
            let ends = |step: &Step| if let Step::RowEnd(slips) = step { *slips } else { 0 };
            self.add(Part::Seam, false, worked.colours.join.as_ref(), join.iter().map(ends).sum(), SLIP)?;
        }
        Ok(())
    }

    fn round(&mut self, round: &Round, joined: bool, foundation: Option<&Arc<str>>) -> Result<(), String> {
        let band = round.part == interpreter::Part::Band;
        let part = match round.part {
            interpreter::Part::Band => Part::Band,
            interpreter::Part::Body | interpreter::Part::Underside => Part::Body,
            interpreter::Part::Crown => Part::Crown,
            interpreter::Part::Tail => Part::Tail,
            interpreter::Part::Brim => Part::Brim,
        };
        let (colour, each) = (round.colour.as_ref(), widths(round.stitch));
        for step in &*round.steps {
            let (times, each) = match step {
                // A chain at its own foot.
                Step::Stitch if round.into == Into::Foundation => (1, CHAIN + each),
                Step::Stitch => (1, each),
                Step::Increase => (2, each),
                Step::Decrease => (1, TOGETHER * each),
                Step::RowEnd(stitches) => (*stitches, each),
                // Around the post is one stitch width further.
                Step::FrontPost | Step::BackPost => (1, each + 1.0),
            };
            self.add(part, band, colour, times, each)?;
        }
        self.add(part, band, colour, round.chain, CHAIN)?;
        if round.into == Into::Chain {
            self.add(Part::Foundation, band, foundation, round.used(), CHAIN)?;
        }
        // A ring of chain is joined before the round that goes into it, a foundation after it, and a joined round at its end.
        let rings = u32::from(matches!(round.into, Into::Chain | Into::Foundation));
        let ends = u32::from(joined && round.into != Into::Foundation);
        self.add(part, band, colour, rings + ends, SLIP)
    }

    /// Both flaps, in the stitch of the hat that they are worked on.
    fn flaps(&mut self, worked: &Worked) -> Result<(), String> {
        let body = worked.rounds.iter().find(|round| round.part != interpreter::Part::Band);
        let Some(stitch) = body.map(|round| round.stitch).filter(|_| !worked.flap.is_empty()) else { return Ok(()) };
        let chains = match stitch {
            Stitch::Slip | Stitch::Single => 1,
            Stitch::HalfDouble => 2,
            Stitch::Double => 3,
        };
        let colour = worked.colours.flaps.as_ref();
        for (i, row) in worked.flap.iter().enumerate() {
            let plain = row.stitches - row.decreases;
            self.add(Part::Flaps, false, colour, 2 * plain, widths(stitch))?;
            self.add(Part::Flaps, false, colour, 2 * row.decreases, TOGETHER * widths(stitch))?;
            self.add(Part::Flaps, false, colour, if i == 0 { 0 } else { 2 * chains }, CHAIN)?;
        }
        self.add(Part::Ties, false, worked.colours.tie.as_ref(), 2 * worked.tie, CHAIN)
    }
}

/// Compares the lengths of a hat's worked parts with what its printed pattern takes.
fn check(spec: &HatSpec, hat: &Hat) -> Result<(), String> {
    let worked = work(&print(spec, hat, Terms::Us, Units::Centimetres)).map_err(|fault| fault.to_string())?;
    let mut count = Count { hat, all: BTreeMap::new() };
    count.rows(&worked)?;
    for round in &worked.rounds {
        count.round(round, worked.joined == Some(true), worked.colours.foundation.as_ref())?;
    }
    count.flaps(&worked)?;
    let told: BTreeMap<Of, (u64, f64)> = hat
        .yarn_parts
        .iter()
        .filter(|part| is_worked(part.part) && part.part != Part::Swatch)
        .map(|part| ((part.part, part.band, part.colour), (part.stitches, part.length.metres())))
        .collect();
    ensure(count.all.keys().eq(told.keys()), || format!("{told:?}, printed {:?}", count.all))?;
    let (Sizes { w, band_w, .. }, factor) = (sizes(spec), known(spec).factor);
    for (of, (stitches, metres)) in told {
        let (printed, widths) = count.all[&of];
        ensure(printed == stitches, || format!("{of:?}: {stitches} stitches, printed {printed}"))?;
        let wide = if of.1 { band_w } else { w };
        let length = widths * wide * factor * f64::from(spec.strands) / 100.0;
        ensure((length - metres).abs() <= 0.002 + 1e-6 * length, || format!("{of:?}: {metres} m, printed {length} m"))?;
    }
    Ok(())
}

#[test]
fn lengths_are_those_of_the_printed_stitches() {
    let mut parts: BTreeMap<Part, u32> = BTreeMap::new();
    let mut failures = Vec::new();
    let (mut flapped, mut made_apart) = (0, 0);
    for (seed, spec, hat) in random_hats(HATS) {
        failures.extend(check(&spec, &hat).err().map(|why| format!("seed {seed}: {why}\n  {spec:?}")));
        hat.yarn_parts.iter().for_each(|part| *parts.entry(part.part).or_default() += 1);
        flapped += u32::from(spec.style == Style::EarFlap);
        made_apart += u32::from(hat.begun == Begun::Crown && !hat.band_rows.is_empty());
    }
    let shown = failures.iter().take(3).cloned().collect::<Vec<_>>().join("\n");
    assert!(failures.is_empty(), "{} of {HATS} hats take other yarn than is printed:\n{shown}", failures.len());
    assert!(Part::ALL.iter().all(|part| parts.get(part).is_some_and(|hats| *hats >= 30)), "{parts:?}");
    assert!(flapped >= 30 && made_apart >= 30, "{flapped} {made_apart}");
}

/// A stitch more or less on the page is noticed.
#[test]
fn another_count_is_not_what_is_printed() {
    let mut noticed = 0;
    for (_, spec, hat) in random_hats(60) {
        for i in 0..hat.yarn_parts.len() {
            if !is_worked(hat.yarn_parts[i].part) || hat.yarn_parts[i].part == Part::Swatch {
                continue;
            }
            let mut other = hat.clone();
            other.yarn_parts[i].stitches += 1;
            assert!(check(&spec, &other).is_err(), "{:?}", other.yarn_parts[i]);
            other = hat.clone();
            let length = &mut other.yarn_parts[i].length;
            *length = hatwright_sizing::YarnLength::from_metres(length.metres() * 1.000_1 + 0.003);
            assert!(check(&spec, &other).is_err(), "{:?}", other.yarn_parts[i]);
            noticed += 1;
        }
    }
    assert!(noticed > 150, "{noticed}");
}
