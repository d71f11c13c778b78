//! Bands: sideways, around, and made apart.

use super::colours::{rows_change, rows_stripes};
use super::{Job, edge};
use crate::figures::plural;
use crate::written::pattern::Part;
use hatwright_sizing::{Hat, Loops, RoundKind, Stitch, Style};

/// Whether the fold hides all of the band's outer face: that of the part that is folded up lies against the rest, and covers it.
pub(in crate::written) fn hides_its_outside(hat: &Hat) -> bool {
    // Nobody folds to the millimetre: half of 8.33 cm, typed or rounded down, is half.
    const MILLIMETRE: i32 = 100;
    hat.depth.fold.ticks() > 0 && 2 * hat.depth.fold.ticks() + MILLIMETRE >= hat.depth.band.ticks()
}

/// A band of rows: how they lie, their stripes, and how the last one closes the ring.
pub(super) fn sideways(part: &Part, job: &Job<'_>) -> Vec<String> {
    let (hat, row) = (job.hat, part.fabric.row());
    let rows = hat.band_rows.len() as u32;
    let mut text = String::new();
    if job.begun_at_crown() {
        text.push_str("The band is made apart and joined to the hat when it is done. ");
    }
    if let Some(hook) = Job::with_hook(job.spec.band.hook) {
        text.push_str(&["Work it ", &hook, ". "].concat());
    }
    let ribs = if row.loops == Loops::Both { "" } else { " as ribs" };
    let folding = if hat.depth.fold.ticks() > 0 { " before folding" } else { "" };
    text.push_str(&["Worked sideways: short rows of ", &job.spec.band.height.get().to_string()].concat());
    text.push_str(
        &[" stitches, back and forth, which stand upright in the band", ribs, ". It has ", &plural(rows, "row")].concat(),
    );
    text.push_str(&[" and is ", &job.length(hat.depth.band), " tall", folding, ". "].concat());
    text.push_str(turning(row.chain));
    let mut list = vec![text];
    if row.stitch == Stitch::Slip {
        list.push(SLIP.into());
    }
    if hat.band_rows.windows(2).any(|pair| pair[0] != pair[1]) {
        list.push(rows_stripes(&hat.band_rows, job));
        list.push(rows_change(job));
    }
    list.push(last_row(part, rows, job));
    list
}

pub(super) const fn turning(chain: u32) -> &'static str {
    if chain == 1 {
        "The chain that turns a row is not counted as a stitch."
    } else {
        "The chains that turn a row are not counted as a stitch: the first stitch goes into the first stitch of the row below."
    }
}

/// After an ear warmer's band.
pub(super) const WARMER_DONE: &str =
    "That is the whole ear warmer. Fasten off; wear it with the side of the join that you like less inside.";

const SLIP: &str = "Slip stitches tighten easily: work them loosely, each drawn up to the thickness of the hook, or nobody will find the \
     back loops again.";

fn last_row(part: &Part, rows: u32, job: &Job<'_>) -> String {
    let (last, below) = (rows.to_string(), rows.saturating_sub(1).to_string());
    let row = part.fabric.row();
    let over = job.words().yarn_over;
    let loop_of = match row.loops {
        Loops::Back => "the back loop of row ",
        Loops::Front => "the front loop of row ",
        Loops::Both | Loops::Posts => "row ",
    };
    let mut text =
        ["The last row closes the ring. When row ", &below, " is done, bring the foundation edge up behind the work"].concat();
    let finish = match row.stitch {
        Stitch::Slip | Stitch::Single => {
            text.push_str(
                &[", so that its chains lie behind the stitches, and work each stitch of the last row through ", loop_of]
                    .concat(),
            );
            text.push_str(&[&below, " and the chain behind it, both at once"].concat());
            None
        }
        Stitch::HalfDouble => Some("until three loops are on the hook"),
        Stitch::Double => Some("until two loops are on the hook"),
    };
    if let Some(until) = finish {
        // A tall stitch put through both edges at its foot would stand up as a fin, and add nothing to the girth.
        text.push_str(
            &[", one chain for each stitch. Work each stitch of the last row into ", loop_of, &below, " ", until].concat(),
        );
        text.push_str(
            &["; then put the hook through the chain at the same height, ", over, ", and pull through it and all the loops"]
                .concat(),
        );
        text.push_str(". So the stitches of this row reach across to the foundation");
    }
    text.push_str(&[". This is row ", &last, "; there is no other seam."].concat());
    text
}

/// A band of rounds.
pub(super) fn around(part: &Part, job: &Job<'_>) -> Vec<String> {
    let mut list = Vec::new();
    let (hat, row) = (job.hat, part.fabric.row());
    let mut text = String::new();
    let opens = job.opens_rounds(part);
    if let Some(hook) = Job::with_hook(job.spec.band.hook) {
        text.push_str(&["Work the band ", &hook, ". "].concat());
    }
    let folding = if hat.depth.fold.ticks() > 0 { " before folding" } else { "" };
    text.push_str(&["Worked around, ", &job.length(hat.depth.band), " tall", folding, "."].concat());
    if !opens {
        text.push_str(" Go on from the body without cutting.");
    }
    list.push(text);
    if !opens && hides_its_outside(hat) && row.loops != Loops::Posts {
        list.push(TURN_FOR_FOLD.into());
    }
    if hat.rounds.iter().any(|r| r.kind == RoundKind::Foundation) {
        list.push(edge::foundation(part, job));
    }
    if row.loops == Loops::Posts {
        let mut text = String::from("The rib: stitches around the post, from the front and from the back in turn. ");
        text.push_str(if opens { "The first round is plain, so that there are posts to work around. " } else { "" });
        text.push_str(
            "After its first round work each stitch like the one below it: those that stand forward from the front, those that lie back \
             from the back.",
        );
        list.push(text);
    }
    list
}

/// Before or after a band that is folded up to show its other face.
pub(super) const TURN_FOR_FOLD: &str = "Folded up, the band would show its inside. So turn the work here, once: chain 1, turn, and go around the \
     other way, with what was the inside towards you. The step that this leaves is hidden by the fold (common practice).";

/// Joining a band that was made apart to the last round of the body.
pub(super) fn joining(job: &Job<'_>) -> Vec<String> {
    let hat = job.hat;
    let (picked, of) = hat.size.pick_up();
    let ridge = if hides_its_outside(hat) {
        "with the ridge of its join towards the hat"
    } else {
        "with the ridge of its join away from the hat"
    };
    let mut text = String::from("Do not cut the band's yarn. Turn the hat inside out and slip the ring inside it, ");
    text.push_str(&[ridge, ", the edge where the yarn is along the hat's last round. Slip stitch the two together, "].concat());
    text.push_str("not tightly: each slip stitch goes through a stitch of the last round and a row end of the band at once");
    if picked == of {
        text.push_str(", one row end for each stitch.");
    } else {
        text.push_str(&[". For ", &picked.to_string(), " stitches there are ", &plural(of, "row end"), ": "].concat());
        text.push_str(if picked < of {
            "leave row ends out, never stitches, as written."
        } else {
            "some row ends take two stitches, as written."
        });
    }
    let mut list = vec![text];
    if hat.style == Style::EarFlap {
        list.push("The flaps are worked from the band's other edge.".into());
    }
    list
}
