//! Ear flaps: where they are joined, and their ties.

use super::{Job, edge};
use crate::figures::plural;
use crate::say::plural_stitches;
use hatwright_sizing::{BandKind, Length};

pub(super) fn flaps(job: &Job<'_>) -> Vec<String> {
    let Some(flaps) = &job.hat.flaps else { return Vec::new() };
    let on_rows = job.hat.band == BandKind::Sideways;
    let count = |n: u32| if on_rows { plural(n, "row end") } else { plural_stitches(n) };
    let wide = flaps.rows.first().map_or(0, |row| row.before);
    let back = flaps.back.get();
    let (first, last) = (back / 2, back - back / 2);
    let start = if on_rows { "the join of the band" } else { "the place where rounds begin" };
    let mut text = [
        "Two flaps, alike, worked one after the other in rows from the hat's lower edge. Lay the hat with ",
        start,
        " at the middle of the back",
    ]
    .concat();
    text.push_str(" and mark the edge, from there on, with the outside towards you: ");
    text.push_str(&[&count(first), " free, ", &count(wide), " for the first flap, "].concat());
    text.push_str(&[&count(flaps.front.get()), " free for the forehead, ", &count(wide), " for the second flap, and "].concat());
    text.push_str(&[&count(last), " free, which brings you back to where you began."].concat());
    let mut list = vec![text];
    let mut text = String::from("For each flap, join the yarn with a slip stitch to the first of its ");
    text.push_str(if on_rows { "row ends" } else { "stitches" });
    text.push_str(
        ", with the outside towards you, and work the rows below. Every stitch goes through both loops. The chains that turn a row are not \
         counted.",
    );
    text.push_str(&[" A flap is ", &job.length(flaps.length), " long."].concat());
    if !on_rows && !job.begun_at_crown() {
        text.push_str(&[" ", edge::foot(job)].concat());
    }
    list.push(text);
    if flaps.tie > Length::ZERO {
        let mut text = [
            "A tie is a chain of ",
            &job.length(flaps.tie),
            " at the tip of each flap: after the last row, slip stitch to its middle, ",
        ]
        .concat();
        text.push_str("work the chain from there, fasten off, and knot the end.");
        list.push(text);
    }
    list
}
