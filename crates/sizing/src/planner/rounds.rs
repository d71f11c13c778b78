//! Counts as rounds: what each does, which part of the hat it belongs to, its colour.

use crate::{BandKind, Begun, Colour, HatSpec, Layout, Round, RoundKind, Rows, Stitches, Style, Zone};

/// The counts of all rounds in working order, with what of them is no body.
pub(super) struct Counts {
    pub all: Vec<u32>,
    /// Rounds of a band worked around.
    pub band: usize,
    /// Rounds of a brim, last.
    pub brim: usize,
    /// Stitches of the tail of a stocking cap.
    pub narrow: u32,
}

impl Counts {
    /// The body's rounds, among all.
    pub fn body(&self, begun: Begun) -> core::ops::Range<usize> {
        let end = self.all.len() - self.brim;
        match begun {
            Begun::Band => self.band.min(end)..end,
            Begun::Crown => 0..end - self.band.min(end),
        }
    }
}

/// The rounds of a hat of so many stitches on so many rows. `leads` are those of rounds that were planned before.
pub(super) fn rounds(spec: &HatSpec, rows: Rows, stitches: u32, counts: &Counts, leads: Option<&[u32]>) -> Vec<Round> {
    let begun = spec.begins();
    let zones = zones(spec, counts);
    let (body, band) = (stripes_of_body(spec), stripes_of_band(spec));
    let (mut shaped, mut in_body, mut in_band) = (0, 0, 0);
    let mut out: Vec<Round> = Vec::with_capacity(counts.all.len());
    for (i, (&after, &zone)) in counts.all.iter().zip(&zones).enumerate() {
        let last = i.checked_sub(1).map(|i| counts.all[i]);
        let edge = zone == Zone::Brim && begun == Begun::Band && zones[i - 1] != Zone::Brim;
        let (kind, before) = match last {
            None if begun == Begun::Crown => (RoundKind::Ring, 0),
            None if spec.band_kind() == BandKind::Sideways => (RoundKind::PickUp, rows.get()),
            None => (RoundKind::Foundation, after),
            Some(_) if edge => (RoundKind::Edge, stitches),
            Some(before) => (shaping(spec, before, after), before),
        };
        let first = matches!(kind, RoundKind::PickUp | RoundKind::Ring);
        let (decreases, increases) = if first { (0, 0) } else { (before.saturating_sub(after), after.saturating_sub(before)) };
        let moves = decreases + increases > 0 && zone != Zone::Body && !stacked(spec, before, after);
        let lead = match leads {
            Some(leads) => leads[i],
            None if moves => offset(shaped, before, decreases, increases),
            None => 0,
        };
        shaped += u32::from(moves);
        let colour = if zone == Zone::Band {
            in_band += 1;
            stripe(&band, in_band - 1)
        } else {
            in_body += 1;
            stripe(&body, in_body - 1)
        };
        out.push(Round {
            number: i as u32 + 1,
            before,
            after: Stitches::new(after),
            decreases: Stitches::new(decreases),
            increases: Stitches::new(increases),
            lead: Stitches::new(lead),
            kind,
            zone,
            colour,
        });
    }
    out
}

fn shaping(spec: &HatSpec, before: u32, after: u32) -> RoundKind {
    let wide = before.max(after);
    match spec.lays() {
        _ if before == after => RoundKind::Plain,
        Layout::Wedges(k) if !wide.is_multiple_of(k) && before.abs_diff(after) == wide % k => RoundKind::Adjust,
        _ if after > before => RoundKind::Increase,
        _ => RoundKind::Decrease,
    }
}

/// Whether a round of a crown keeps to the wedges that the spec asks for.
pub(super) fn is_stacked(spec: &HatSpec, round: &Round) -> bool {
    let (before, after) = (round.before, round.after.get());
    round.kind == RoundKind::Ring || before == after || stacked(spec, before, after)
}

/// Whether a round's decreases or increases stand in the wedges, or bring its count to them.
fn stacked(spec: &HatSpec, before: u32, after: u32) -> bool {
    let wide = before.max(after);
    match spec.lays() {
        Layout::Spread => false,
        Layout::Wedges(k) if wide.is_multiple_of(k) => before.abs_diff(after).is_multiple_of(k),
        Layout::Wedges(k) => before.abs_diff(after) == wide % k,
    }
}

/// The leads of rounds to come, after so many that were shaped, from so many stitches on.
pub(crate) fn leads(spec: &HatSpec, mut shaped: u32, stitches: u32, counts: &[u32]) -> Vec<u32> {
    let mut before = stitches;
    let mut lead = |after: u32| {
        let (fewer, more) = (before.saturating_sub(after), after.saturating_sub(before));
        // What no round can make of the one before is worked into an edge.
        let worked = after <= 2 * before && before <= 2 * after;
        let moves = fewer + more > 0 && worked && !stacked(spec, before, after);
        let lead = if moves { offset(shaped, before, fewer, more) } else { 0 };
        shaped += u32::from(moves);
        before = after;
        lead
    };
    counts.iter().map(|after| lead(*after)).collect()
}

/// Plain stitches before the first decrease or increase: none, half, a quarter, three quarters of the gap between two, over and over.
fn offset(shaped: u32, before: u32, decreases: u32, increases: u32) -> u32 {
    let gap = (before - 2 * decreases - increases) / (decreases + increases).max(1);
    let quarters = [0, 2, 1, 3][shaped as usize % 4];
    quarters * (gap + 1) / 4
}

/// Which part of the hat each round belongs to: from the counts alone, so that rounds kept from an older plan have the same.
fn zones(spec: &HatSpec, counts: &Counts) -> Vec<Zone> {
    let begun = spec.begins();
    let body = counts.body(begun);
    let mut zones = vec![Zone::Band; body.start];
    let n = body.clone().count();
    let here = &counts.all[body];
    let most = here.iter().copied().max().unwrap_or(0);
    let widest = here.iter().position(|count| *count == most).unwrap_or(0);
    let narrower = here.windows(2).position(|pair| pair[1] < pair[0]).map_or(n, |i| i + 1);
    let last_narrower = here.windows(2).rposition(|pair| pair[1] < pair[0]).map_or(n, |i| i + 1);
    let last_wider = here.windows(2).rposition(|pair| pair[1] > pair[0]).map_or(0, |i| i + 1);
    let in_tail = here.iter().take_while(|count| **count <= counts.narrow).count();
    // A count next to the band, or the ring, may be the only one.
    zones.extend((0..n).map(|i| match (spec.style, begun) {
        (Style::Tam, Begun::Band) => {
            if i <= widest {
                Zone::Under
            } else {
                Zone::Crown
            }
        }
        (Style::Tam, Begun::Crown) => {
            if i <= widest {
                Zone::Crown
            } else {
                Zone::Under
            }
        }
        (Style::Stocking, Begun::Band) if i > last_narrower => Zone::Tail,
        (Style::Stocking, Begun::Crown) if in_tail < n && i < in_tail => Zone::Tail,
        (_, Begun::Band) => {
            if i < narrower {
                Zone::Body
            } else {
                Zone::Crown
            }
        }
        (_, Begun::Crown) => {
            if i > last_wider {
                Zone::Body
            } else {
                Zone::Crown
            }
        }
    }));
    if begun == Begun::Crown {
        zones.extend(core::iter::repeat_n(Zone::Band, counts.band));
    }
    zones.extend(core::iter::repeat_n(Zone::Brim, counts.brim));
    zones
}

/// The stripes of the body, one after another.
pub(super) fn stripes_of_body(spec: &HatSpec) -> Vec<(Colour, u32)> {
    spec.body_stripes.iter().map(|s| (s.colour, s.rounds.get())).collect()
}

/// The stripes of the band.
pub(super) fn stripes_of_band(spec: &HatSpec) -> Vec<(Colour, u32)> {
    spec.band.stripes.iter().map(|s| (s.colour, s.rows.get())).collect()
}

/// The colour of a row or round, counted from 0, in stripes that go on over and over.
pub(super) fn stripe(stripes: &[(Colour, u32)], index: u32) -> Colour {
    let repeat: u32 = stripes.iter().map(|(_, many)| many).sum();
    let mut at = index % repeat.max(1);
    for (colour, many) in stripes {
        if at < *many {
            return *colour;
        }
        at -= many;
    }
    Colour::default()
}
