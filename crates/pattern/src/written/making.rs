//! What is said around the lines of band, body, crown and closing.

use super::pattern::{Label, Part, PartKind, Pattern};
use super::sheet::About;
use crate::figures::{Units, length, plural};
use hatwright_sizing::{Change, Colour, Hat, HatSpec, Layout, Length, Quantity, RoundKind, Start};

pub(super) fn before(part: &Part, pattern: &Pattern, hat: &Hat, spec: &HatSpec, about: &About<'_>) -> Vec<String> {
    match part.kind {
        PartKind::Band => band(pattern, hat, spec, about),
        PartKind::Body => body(part, pattern, hat, about),
        PartKind::Crown => crown(part, hat, spec),
        PartKind::Closing => Vec::new(),
    }
}

pub(super) fn after(part: &Part, hat: &Hat, spec: &HatSpec, about: &About<'_>) -> Vec<String> {
    let units = about.units;
    match part.kind {
        PartKind::Band => vec![band_check(hat, units)],
        PartKind::Body => vec![body_check(part, hat, units)],
        PartKind::Crown => vec![crown_check(hat, units)],
        PartKind::Closing => super::finishing::closing(hat, spec, units),
    }
}

fn band(pattern: &Pattern, hat: &Hat, spec: &HatSpec, about: &About<'_>) -> Vec<String> {
    let height = spec.band.height.get().to_string();
    let rows = hat.band_rows.len() as u32;
    let mut list = vec![
        [
            "Worked sideways: short rows of ",
            &height,
            " stitches, back and forth, which stand upright in the band as ribs. It has ",
            &plural(rows, "row"),
            " and is ",
            &length(hat.depth.band, about.units),
            " tall before folding. The chain that turns a row is not counted as a stitch.",
        ]
        .concat(),
    ];
    let striped = hat.band_rows.windows(2).any(|pair| pair[0] != pair[1]);
    if striped {
        list.push(stripes(pattern, hat, about));
        list.push(changes(hat, about));
    }
    let (last, below) = (rows.to_string(), rows.saturating_sub(1).to_string());
    list.push(
        [
            "The last row closes the ring. When row ",
            &below,
            " is done, bring the foundation edge up behind the work, so that its chains lie behind the stitches, and work each stitch \
             of the last row through the back loop of row ",
            &below,
            " and the chain behind it, both at once. This is row ",
            &last,
            "; there is no other seam.",
        ]
        .concat(),
    );
    list
}

fn stripes(pattern: &Pattern, hat: &Hat, about: &About<'_>) -> String {
    let rows = hat.band_rows.len() as u32;
    let repeat = pattern.stripe_rows.min(rows);
    let mut runs: Vec<(Colour, u32)> = Vec::new();
    for colour in &hat.band_rows[..repeat as usize] {
        match runs.last_mut() {
            Some((same, count)) if same == colour => *count += 1,
            _ => runs.push((*colour, 1)),
        }
    }
    let told: Vec<String> = runs.iter().map(|(c, n)| [&*plural(*n, "row"), " ", &about.colour(*c)].concat()).collect();
    let mut text = ["Stripes: ", &told.join(", ")].concat();
    if repeat < rows {
        let times = (rows / repeat).to_string();
        text.push_str(
            &["; these ", &plural(repeat, "row"), " are worked ", &times, " times in all, ", &rows.to_string()].concat(),
        );
        text.push_str(" rows with the joining row");
    }
    text.push('.');
    text
}

/// Even rows end where the foundation chain ended, which is the edge that the body is worked on.
fn changes(hat: &Hat, about: &About<'_>) -> String {
    let mut text = ["Change colour on the last ", about.terms.words().yarn_over, " of the row before the new colour. "].concat();
    let all = hat.changes();
    let within = Quantity::CarryPast.row().usual.to_string();
    text.push_str(&match carried(all.iter().filter(|change| change.in_band)) {
        Carried::Never => ["Cut the old colour there", FRESH].concat(),
        Carried::Always => ["Do not cut a colour that comes again within ", &within, LED_UP].concat(),
        Carried::Sometimes => [
            "Where a colour is left after an even row and comes again after another, at most ",
            &within,
            " rows later, do not cut it",
            &LED_UP[" rows".len()..],
            " Everywhere else cut it",
            FRESH,
        ]
        .concat(),
    });
    text
}

const LED_UP: &str = " rows: lead its yarn loosely up the edge where even rows end. The body is worked on that edge and covers the \
     strands.";
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

/// Whether the fold hides all of the band's outer face: that of the part that is folded up lies against the rest, and covers it.
pub(super) fn hides_its_outside(hat: &Hat) -> bool {
    // Nobody folds to the millimetre: half of 8.33 cm, typed or rounded down, is half.
    const MILLIMETRE: i32 = 100;
    hat.depth.fold.ticks() > 0 && 2 * hat.depth.fold.ticks() + MILLIMETRE >= hat.depth.band.ticks()
}

fn band_check(hat: &Hat, units: Units) -> String {
    let half = half(hat.size.band_girth);
    [
        "Check: lay the ring flat, without pulling. It should be ",
        &length(half, units),
        " across, ",
        &length(hat.size.band_girth, units),
    ]
    .concat()
        + " around. If it is not, your rows are taller or shorter than planned: measure them and work the hat out again."
}

fn body(part: &Part, pattern: &Pattern, hat: &Hat, about: &About<'_>) -> Vec<String> {
    let (stitches, rows) = (hat.size.stitches.get(), hat.size.rows.get());
    let mut list = Vec::new();
    if hides_its_outside(hat) {
        list.push(
            "Do not fasten off, and leave the ring as it is, the ridge of the join on the outside, towards you: folding the band up \
             hides it. Work along the edge where the yarn is."
                .into(),
        );
    } else {
        let mut text = String::from(
            "Do not fasten off. Turn the ring inside out, so that the ridge of the join is inside, and work along the edge where the \
             yarn is, with the outside towards you.",
        );
        if hat.depth.fold.ticks() > 0 {
            text.push_str(" Less than half of the band is folded up: the ridge shows only on that part.");
        }
        list.push(text);
    }
    let (picked, of) = hat.size.pick_up();
    let mut text = if stitches == rows {
        String::from("Pick up one stitch in the end of each row. ")
    } else {
        ["Pick up ", &picked.to_string(), " stitches in every ", &plural(of, "row end"), ", spread as written. "].concat()
    };
    text.push_str(
        "Then go on in a spiral: never turn, and do not close the rounds. Put the marker in the first stitch of each round and move \
         it up as you come to it.",
    );
    list.push(text);
    let colour = part.lines.first().and_then(|line| line.colour);
    let last = hat.band_rows.last().copied();
    if let (Some(new), true) = (colour, colour != last) {
        let over = about.terms.words().yarn_over;
        let mut text = ["Change to ", &about.colour(new), " on the last ", over, " of the band."].concat();
        if hat.changes().iter().any(|change| !change.in_band && change.after == 0 && !change.waits) {
            text.push_str(" Cut the old colour, leaving 15 cm (6 in).");
        }
        list.push(text);
    }
    let mut pairs = hat.rounds.windows(2);
    if pattern.coloured && pairs.any(|pair| pair[0].colour != pair[1].colour) {
        let words = about.terms.words();
        let within = Quantity::CarryPast.row().usual.to_string();
        let waits = match carried(hat.changes().iter().filter(|change| !change.in_band)) {
            Carried::Never => [" Cut the old colour there", FRESH].concat(),
            Carried::Always => {
                [" Do not cut a colour that comes again within ", &within, " rounds: lead its yarn loosely up the inside."]
                    .concat()
            }
            Carried::Sometimes => [
                " Where a colour comes again within ",
                &within,
                " rounds, lead its yarn loosely up the inside. Otherwise cut it",
                FRESH,
            ]
            .concat(),
        };
        list.push(
            [
                "Change colour on the last ",
                words.yarn_over,
                " of the round before.",
                &waits,
                " A spiral makes a small step where the colour changes. To soften it where the new colour begins with a plain stitch, work that stitch as a ",
                words.slip_name,
                ": it counts like any other, and the next round works into it (common practice).",
            ]
            .concat(),
        );
    }
    list
}

fn body_check(part: &Part, hat: &Hat, units: Units) -> String {
    let rounds = part.lines.iter().filter_map(|line| if let Label::Round(_, to) = line.label { Some(to) } else { None });
    let rounds = rounds.max().unwrap_or(0);
    let across = length(half(hat.size.girth), units);
    let high = length(times(hat.gauge.round, rounds), units);
    let mut text = ["Check: laid flat, the body should be ", &across, " across, ", &length(hat.size.girth, units)].concat();
    text.push_str(&[" around, and ", &high, " high above the band. If it is not, measure a stitch and a round in it"].concat());
    text.push_str(" and work the hat out again.");
    text
}

fn crown(part: &Part, hat: &Hat, spec: &HatSpec) -> Vec<String> {
    let mut list = Vec::new();
    if let Some(round) = hat.rounds.iter().find(|r| r.kind == RoundKind::Adjust) {
        let mut text = ["The adjustment comes first, in round ", &round.number.to_string(), ": it takes the "].concat();
        text.push_str(&[&round.before.to_string(), " stitches to ", &round.after.to_string()].concat());
        if let Layout::Wedges(wedges) = spec.layout {
            text.push_str(&[", which ", &wedges.to_string(), " wedges divide evenly"].concat());
        }
        text.push('.');
        list.push(text);
    }
    list.push(
        match spec.layout {
            Layout::Wedges(_) => {
                "Decreases stand above each other and draw a star. Where a round does not divide evenly, the groups differ \
                                  by one stitch: work them as written."
            }
            Layout::Spread => {
                "Decreases are spread, for a smooth crown: some rounds begin with plain stitches so that the decreases do not \
                               stand above each other. Groups in a round may differ by one stitch: work them as written."
            }
        }
        .into(),
    );
    if part.lines.len() > 1 {
        list.push("Count each round against its total before you begin the next.".into());
    }
    list
}

fn crown_check(hat: &Hat, units: Units) -> String {
    let mut text = ["Check: from the band to the top, along the fabric, ", &length(hat.depth.above_band, units)].concat();
    text.push_str(
        &[" when the top is closed. The opening that is left is about ", &length(hat.top.opening, units), " across."].concat(),
    );
    text
}

fn half(l: Length) -> Length {
    Length::from_ticks(l.ticks() / 2)
}

fn times(l: Length, count: u32) -> Length {
    Length::from_ticks((i64::from(l.ticks()) * i64::from(count)).min(i64::from(i32::MAX)) as i32)
}
