//! A hat worked sideways: one piece of rows, its seam, and how its crown closes.

use super::Job;
use super::band::turning;
use super::colours::{rows_change, rows_stripes};
use crate::figures::plural;
use crate::written::ops::Op;
use crate::written::pattern::Part;
use hatwright_sizing::{Colour, SideTop, Stitch};

pub(super) fn panel(part: &Part, job: &Job<'_>) -> Vec<String> {
    let Some(panel) = &job.hat.panel else { return Vec::new() };
    let row = part.fabric.row();
    let rows = panel.rows.len() as u32;
    let mut text = String::new();
    if let Some(hook) = Job::with_hook(job.spec.hook) {
        text.push_str(&["Work ", &hook, ". "].concat());
    }
    text.push_str(
        &["The whole hat is one piece of ", &plural(rows, "row"), ", back and forth between the lower edge and the crown. "]
            .concat(),
    );
    text.push_str("The foundation chain begins at the crown and ends at the lower edge: odd rows run to the crown, even rows back to the edge. ");
    text.push_str("Put a marker at the lower edge. ");
    text.push_str(turning(row.chain));
    let mut list = vec![text];
    if row.stitch == Stitch::Slip {
        list.push("Slip stitches tighten easily: work them loosely, each drawn up to the thickness of the hook.".into());
    }
    if panel.top == SideTop::ShortRows {
        let wedges = rows / panel.wedge.get().max(1);
        let mut text = [
            "The crown is shaped by short rows, in ",
            &wedges.to_string(),
            " wedges of ",
            &plural(panel.wedge.get(), "row"),
            ": ",
        ]
        .concat();
        text.push_str("a short row stops before the crown, leaves the rest, and is turned there. Where a longer row comes to stitches that were left, it works on over them, and takes up the turning chain with the first of them so that no hole stays.");
        let again = part.lines.last().filter(|line| matches!(line.ops.as_slice(), [Op::AsRows { .. }]));
        if let (Some(_), first) = (again, panel.wedge.get() + 1) {
            text.push_str(
                &[
                    " Row ",
                    &first.to_string(),
                    " begins the second wedge. The last line works the rows of a wedge over and over, row for row",
                ]
                .concat(),
            );
            text.push_str(&[", until ", &wedges.to_string(), " wedges are done, with row ", &rows.to_string(), "."].concat());
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
    let mut text = String::from(
        "Do not cut the yarn: after the last row it is at the lower edge. Fold the piece so that the foundation edge lies behind the last row, \
         with the side that you like better as the outside between them, and slip stitch the two together from the lower edge to the crown, \
         not tightly.",
    );
    if job.hat.panel.as_ref().is_some_and(|panel| panel.top == SideTop::ShortRows) {
        text.push_str(" Where the last row ends before the crown, go on over the stitches that were left.");
    }
    vec![text]
}
