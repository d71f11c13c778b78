//! Every round as a bar, with the same as a table.

use super::super::rounds::{grouped, round_chart};
use super::{Chart, Charted, span};
use crate::picture::{BarGroup, wheel::zone_name};
use crate::sizes::Table;
use hatwright_words::charts as words;

/// The bars, with a table of the same rounds; absent for a hat without rounds.
pub(super) fn bars(of: &Charted<'_>) -> Option<Chart> {
    let groups = grouped(of.hat);
    if groups.is_empty() {
        return None;
    }
    let picture = round_chart(of.hat);
    let head = [
        words::head_round(),
        words::head_part(),
        words::head_colour(),
        words::head_stitches(),
        words::head_decreases(),
        words::head_increases(),
    ];
    let row = |group: &BarGroup| {
        let mut colours: Vec<String> = group.bars.iter().map(|bar| of.told_colour(Some(bar.colour))).collect();
        colours.sort_unstable();
        colours.dedup();
        vec![
            span(group.from, group.to),
            zone_name(group.zone).to_owned(),
            colours.join("; "),
            group.stitches.to_string(),
            group.decreases.to_string(),
            group.increases.to_string(),
        ]
    };
    let table =
        Table { caption: picture.title.clone(), head: head.map(str::to_owned).to_vec(), rows: groups.iter().map(row).collect() };
    Some(Chart { id: "rounds", picture, table })
}
