//! What is said of changes of colour.

use super::Job;
use hatwright_sizing::{Change, Colour, Quantity, Start, Way};
use hatwright_words::making as say;

/// `Stripes: 2 rows indigo, 2 rows weld; these 4 rows are worked 14 times in all, 56 rows with the joining row.`
pub(super) fn rows_stripes(rows: &[Colour], job: &Job<'_>) -> String {
    let count = rows.len() as u32;
    let repeat = job.pattern.stripe_rows.min(count);
    let mut runs: Vec<(Colour, u32)> = Vec::new();
    for colour in &rows[..repeat as usize] {
        match runs.last_mut() {
            Some((same, count)) if same == colour => *count += 1,
            _ => runs.push((*colour, 1)),
        }
    }
    let told: Vec<String> = runs.iter().map(|(c, n)| say::stripe(*n, &job.about.colour(*c))).collect();
    let told = told.join(", ");
    if repeat >= count {
        return say::stripes_once(&told);
    }
    let over = if job.hat.panel.is_some() { say::stripes_over } else { say::stripes_over_joining };
    over(&told, repeat, count / repeat, count)
}

/// Rows and rounds past which a colour is cut.
fn within() -> u32 {
    Quantity::CarryPast.row().usual.unsigned_abs()
}

/// Even rows end where the foundation chain ended, which is the edge that the body is worked on.
pub(super) fn rows_change(job: &Job<'_>) -> String {
    let mut text = vec![say::change_row(job.words().yarn_over)];
    if job.hat.panel.is_some() {
        text.extend([say::carry_panel().into(), say::cut_elsewhere().into()]);
        return text.join(" ");
    }
    let all = job.hat.changes();
    let carried = carried(all.iter().filter(|change| change.in_band));
    // An ear warmer is all there is: nothing covers its strands.
    let alone = job.hat.rounds.is_empty();
    match (carried, alone) {
        (Carried::Never, _) => text.push(say::cut_there().into()),
        (Carried::Always, false) => text.push(say::carry_rows(within())),
        (Carried::Always, true) => text.push(say::carry_rows_alone(within())),
        (Carried::Sometimes, false) => text.push(say::carry_some_rows(within())),
        (Carried::Sometimes, true) => text.push(say::carry_some_rows_alone(within())),
    }
    if carried != Carried::Never && !alone {
        text.push(if job.begun_at_crown() { say::joining_hides() } else { say::body_covers() }.into());
    }
    if carried == Carried::Sometimes {
        text.push(say::cut_elsewhere().into());
    }
    text.join(" ")
}

/// Whether colours that come again are carried.
#[derive(Clone, Copy, PartialEq)]
enum Carried {
    Never,
    Sometimes,
    Always,
}

fn carried<'a>(changes: impl Iterator<Item = &'a Change>) -> Carried {
    let (mut waited, mut anew) = (false, false);
    for change in changes {
        waited |= change.waits || matches!(change.start, Start::Waited { .. });
        anew |= change.start == Start::Anew || change.is_odd();
    }
    match (waited, anew) {
        (false, _) => Carried::Never,
        (true, true) => Carried::Sometimes,
        (true, false) => Carried::Always,
    }
}

/// Between a sideways band and the round that is picked up along it.
pub(super) fn after_band(job: &Job<'_>) -> Option<String> {
    let new = job.hat.rounds.first()?.colour;
    if job.hat.band_rows.last() == Some(&new) {
        return None;
    }
    let text = say::change_after_band(&job.about.colour(new), job.words().yarn_over);
    let cut = job.hat.changes().iter().any(|change| !change.in_band && change.after == 0 && !change.waits);
    Some(if cut { [&*text, " ", say::cut_old()].concat() } else { text })
}

/// How colours change from round to round, where they do.
pub(super) fn rounds(job: &Job<'_>) -> Option<String> {
    let mut pairs = job.hat.rounds.windows(2);
    if !job.pattern.coloured || !pairs.any(|pair| pair[0].colour != pair[1].colour) {
        return None;
    }
    let changes = job.hat.changes();
    let waits = match carried(changes.iter().filter(|change| !change.in_band && change.after > 0)) {
        Carried::Never => say::cut_there().into(),
        Carried::Always => say::carry_rounds(within()),
        Carried::Sometimes => say::carry_some_rounds(within()),
    };
    Some(match job.spec.goes() {
        Way::Spiral => [&*say::change_round(job.words().yarn_over), &waits, say::soften_jog()].join(" "),
        Way::Joined => [say::change_round_joined(), &waits].join(" "),
    })
}
