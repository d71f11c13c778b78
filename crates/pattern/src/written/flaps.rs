//! Rows of an ear flap.

use super::lines::{decrease_line, increase_line, pick_up_line, push_plain};
use super::ops::{Op, Place};
use super::pattern::{Label, Line};
use hatwright_sizing::{Fabric, FlapRow, Flaps, Loops};

/// One flap, from the hat's edge to its tip, and its tie. `on_rows`: the edge is one of row ends.
pub(super) fn flap_lines(flaps: &Flaps, fabric: Fabric, on_rows: bool) -> Vec<Line> {
    let mut lines: Vec<Line> = Vec::new();
    for (number, row) in (1..).zip(&flaps.rows) {
        let total = row.after.get();
        let ops = if number == 1 { first(row, fabric, on_rows) } else { later(row, fabric) };
        if let Some(last) = lines.last_mut()
            && let Label::Row(from, _) = last.label
            && last.ops == ops
            && last.total == total
        {
            last.label = Label::Row(from, number);
            continue;
        }
        let line = Line::of(Label::Row(number, number), ops, total, Some(flaps.colour));
        lines.push(Line { decreases: row.decreases.get(), ..line });
    }
    let chains = flaps.tie_chains.get();
    if chains > 0 {
        lines.push(Line::of(Label::Tie, vec![Op::Chain(chains), Op::FastenOff], chains, Some(flaps.colour)));
    }
    lines
}

fn first(row: &FlapRow, fabric: Fabric, on_rows: bool) -> Vec<Op> {
    let (stitch, before, after) = (fabric.row().stitch, row.before, row.after.get());
    match (on_rows, after.cmp(&before)) {
        (true, core::cmp::Ordering::Equal) => vec![Op::Work { stitch, count: after, place: Place::EdgeRowEnd }],
        (false, core::cmp::Ordering::Equal) => vec![Op::Work { stitch, count: after, place: Place::Edge }],
        (true, _) => pick_up_line(stitch, after, before),
        (false, core::cmp::Ordering::Less) => decrease_line(stitch, before, before - after, 0),
        (false, core::cmp::Ordering::Greater) => increase_line(stitch, before, after - before, 0),
    }
}

fn later(row: &FlapRow, fabric: Fabric) -> Vec<Op> {
    let stitch = fabric.row().stitch;
    let decreases = row.decreases.get();
    let plain = row.before.saturating_sub(2 * decreases);
    let mut ops = vec![Op::Chain(fabric.row().chain), Op::Turn];
    if decreases == 0 {
        ops.push(Op::Every { stitch, each: 1, count: plain, place: Place::Row(Loops::Both) });
        return ops;
    }
    let together = Op::Together { stitch, of: 2 };
    ops.push(together.clone());
    push_plain(&mut ops, stitch, plain);
    if decreases > 1 {
        ops.push(together);
    }
    ops
}
