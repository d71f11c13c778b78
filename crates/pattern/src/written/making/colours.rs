//! What is said of changes of colour.

use super::Job;
use crate::figures::plural;
use hatwright_sizing::{Change, Colour, Quantity, Start, Way};

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
    let told: Vec<String> = runs.iter().map(|(c, n)| [&*plural(*n, "row"), " ", &job.about.colour(*c)].concat()).collect();
    let mut text = ["Stripes: ", &told.join(", ")].concat();
    if repeat < count {
        let times = (count / repeat).to_string();
        text.push_str(
            &["; these ", &plural(repeat, "row"), " are worked ", &times, " times in all, ", &count.to_string(), " rows"]
                .concat(),
        );
        text.push_str(if job.hat.panel.is_some() { "" } else { " with the joining row" });
    }
    text.push('.');
    text
}

/// Even rows end where the foundation chain ended, which is the edge that the body is worked on.
pub(super) fn rows_change(job: &Job<'_>) -> String {
    let mut text = ["Change colour on the last ", job.words().yarn_over, " of the row before the new colour. "].concat();
    if job.hat.panel.is_some() {
        text.push_str("Do not cut a colour that comes again soon after an even row: lead its yarn loosely up the lower edge. Everywhere else cut it");
        text.push_str(FRESH);
        return text;
    }
    let all = job.hat.changes();
    let within = Quantity::CarryPast.row().usual.to_string();
    let led_up = if job.hat.rounds.is_empty() {
        LED_UP_ALONE
    } else if job.begun_at_crown() {
        LED_UP_APART
    } else {
        LED_UP
    };
    text.push_str(&match carried(all.iter().filter(|change| change.in_band)) {
        Carried::Never => ["Cut the old colour there", FRESH].concat(),
        Carried::Always => ["Do not cut a colour that comes again within ", &within, led_up].concat(),
        Carried::Sometimes => [
            "Where a colour is left after an even row and comes again after another, at most ",
            &within,
            " rows later, do not cut it",
            &led_up[" rows".len()..],
            " Everywhere else cut it",
            FRESH,
        ]
        .concat(),
    });
    text
}

const LED_UP: &str = " rows: lead its yarn loosely up the edge where even rows end. The body is worked on that edge and covers the \
     strands.";
const LED_UP_APART: &str = " rows: lead its yarn loosely up the edge where even rows end. The band is joined to the hat along that edge, which \
     hides the strands.";
const LED_UP_ALONE: &str = " rows: lead its yarn loosely up the edge where even rows end, on the side that will be inside.";
const FRESH: &str = ", and begin the new one with a fresh end, 15 cm (6 in) each.";

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
    let mut text = ["Change to ", &job.about.colour(new), " on the last ", job.words().yarn_over, " of the band."].concat();
    if job.hat.changes().iter().any(|change| !change.in_band && change.after == 0 && !change.waits) {
        text.push_str(" Cut the old colour, leaving 15 cm (6 in).");
    }
    Some(text)
}

/// How colours change from round to round, where they do.
pub(super) fn rounds(job: &Job<'_>) -> Option<String> {
    let mut pairs = job.hat.rounds.windows(2);
    if !job.pattern.coloured || !pairs.any(|pair| pair[0].colour != pair[1].colour) {
        return None;
    }
    let words = job.words();
    let within = Quantity::CarryPast.row().usual.to_string();
    let changes = job.hat.changes();
    let waits = match carried(changes.iter().filter(|change| !change.in_band && change.after > 0)) {
        Carried::Never => [" Cut the old colour there", FRESH].concat(),
        Carried::Always => {
            [" Do not cut a colour that comes again within ", &within, " rounds: lead its yarn loosely up the inside."].concat()
        }
        Carried::Sometimes => [
            " Where a colour comes again within ",
            &within,
            " rounds, lead its yarn loosely up the inside. Otherwise cut it",
            FRESH,
        ]
        .concat(),
    };
    Some(match job.spec.goes() {
        Way::Spiral => [
            "Change colour on the last ",
            words.yarn_over,
            " of the round before.",
            &waits,
            " A spiral makes a small step where the colour changes. To soften it where the new colour begins with a plain stitch, work \
             that stitch as a ",
            words.name(hatwright_sizing::Stitch::Slip),
            ": it counts like any other, and the next round works into it (common practice).",
        ]
        .concat(),
        Way::Joined => ["Change colour on the slip stitch that closes the round before: draw it through in the new colour.", &waits].concat(),
    })
}
