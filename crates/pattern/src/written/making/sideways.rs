//! A hat worked sideways: one piece of rows, its seam, and how its crown closes.

use super::Job;
use super::band::turning;
use super::colours::{rows_change, rows_stripes};
use crate::written::ops::Op;
use crate::written::pattern::Part;
use hatwright_sizing::{Colour, Loops, SideTop, Stitch};
use hatwright_words::making as say;

pub(super) fn panel(part: &Part, job: &Job<'_>) -> Vec<String> {
    let Some(panel) = &job.hat.panel else { return Vec::new() };
    let row = part.fabric.row();
    let rows = panel.rows.len() as u32;
    let with = job.body_hook().map(|with| say::work_with(&with));
    let both = if row.loops == Loops::Both { Some(say::loops_both().into()) } else { None };
    let text: Vec<String> = with.into_iter().chain([say::panel(rows), turning(row.chain).into()]).chain(both).collect();
    let mut list = vec![text.join(" ")];
    if row.stitch == Stitch::Slip {
        list.push(say::slip_loosely().into());
    }
    if panel.top == SideTop::ShortRows {
        let wedges = rows / panel.wedge.get().max(1);
        let mut text = say::short_rows(wedges, panel.wedge.get());
        if part.lines.last().is_some_and(|line| matches!(line.ops.as_slice(), [Op::AsRows { .. }])) {
            text = [&*text, " ", &say::second_wedge(panel.wedge.get() + 1, wedges, rows)].concat();
        }
        list.push(text);
    }
    let colours: Vec<Colour> = panel.rows.iter().map(|row| row.colour).collect();
    if colours.windows(2).any(|pair| pair[0] != pair[1]) {
        list.push(rows_stripes(&colours, job));
        list.push(rows_change(job));
    }
    list
}

pub(super) fn seam(job: &Job<'_>) -> Vec<String> {
    let short = job.hat.panel.as_ref().is_some_and(|panel| panel.top == SideTop::ShortRows);
    vec![if short { [say::seam(), " ", say::seam_short_rows()].concat() } else { say::seam().into() }]
}
