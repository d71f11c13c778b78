//! What comes after the last round: closing, pom-pom or tassel, ends, care, and what should be known about this hat.

use super::about::About;
use super::making::{Job, hides_its_outside};
use super::sheet::Section;
use crate::figures::{Units, length};
use crate::say::{cautions, part_of_topper, remark, topper_name};
use hatwright_sizing::{BandKind, Hat, Length, Remark, Style, TopKind, TopperKind, TopperPlan};

pub(super) fn sections(job: &Job<'_>) -> Vec<Section> {
    let (hat, about) = (job.hat, job.about);
    let section = |heading, before| Section { heading, before, ..Section::default() };
    let mut list = Vec::new();
    if let Some(topper) = &hat.topper {
        list.push(section(part_of_topper(topper.kind), topper_work(topper, hat, about)));
    }
    list.push(section("Finishing", finishing(job)));
    let known: Vec<String> = hat
        .remarks
        .iter()
        .filter(|r| !matches!(r, Remark::SmallParts | Remark::BabySleep | Remark::LongParts))
        .map(|r| remark(r, hat, about.units))
        .collect();
    if !known.is_empty() {
        list.push(section("Good to know", known));
    }
    let care: Vec<String> = cautions(hat, hat.topper.is_some())
        .into_iter()
        .map(|caution| [&caution.text, " (Source: ", caution.source, ".)"].concat())
        .collect();
    if !care.is_empty() {
        list.push(section("For babies and small children", care));
    }
    list
}

/// How the top is drawn up.
pub(super) fn closing(job: &Job<'_>) -> Vec<String> {
    let Some(top) = job.hat.top else { return Vec::new() };
    let stitches = top.stitches.to_string();
    let left = strand(top.strand, job.units());
    let mut text =
        ["Cut the yarn, leaving ", &left, ", and draw it through the last stitch. Thread the needle with it and "].concat();
    match top.kind {
        TopKind::Gathered => {
            text.push_str(
                &["pass it through the top of all ", &stitches, " stitches, twice around. Draw up as tight as it goes; "]
                    .concat(),
            );
            text.push_str(&["the bundle is about ", &job.length(top.bundle), " across. "].concat());
            text.push_str(SEWN);
        }
        TopKind::RowEnds => {
            text.push_str(
                &["pass it along the crown edge, through the ends of the ", &stitches, " rows that reach it, twice around. "]
                    .concat(),
            );
            text.push_str(
                &["Draw up as tight as it goes; the bundle is about ", &job.length(top.bundle), " across. ", SEWN].concat(),
            );
        }
        TopKind::Drawn | TopKind::Ring => {
            text.push_str(
                &["pass it through the front loop of each of the ", &stitches, " stitches that are left, in order. "].concat(),
            );
            text.push_str("Draw up until the hole is closed, pull the end through it to the inside and fasten it there.");
        }
    }
    if let Some(topper) = &job.hat.topper {
        let name = topper_name(topper.kind);
        text.push_str(&[" Leave the hole just wide enough for the needle: the ", name, " is tied through it."].concat());
    }
    vec![text]
}

const SEWN: &str = "Sew across it a few times, pull the end to the inside and fasten it there.";

/// A strand to cut: up to a whole 5 cm, or a whole inch.
fn strand(l: Length, units: Units) -> String {
    let (step, each, unit) = match units {
        Units::Centimetres | Units::Both => (5_000, 5, " cm"),
        Units::Inches => (2_540, 1, " in"),
    };
    let steps = l.ticks().max(0).unsigned_abs().div_ceil(step);
    [&(steps * each).to_string(), unit].concat()
}

/// How a pom-pom or a tassel is wound, tied, cut and sewn on.
fn topper_work(topper: &TopperPlan, hat: &Hat, about: &About<'_>) -> Vec<String> {
    let size = length(topper.size, about.units);
    let wraps = if topper.wraps == 1 { " wrap" } else { " wraps" };
    let mut text = ["Wind ", &topper.wraps.to_string(), wraps, " around a stiff card or form ", &size, " wide"].concat();
    let used = hat.colours();
    let colours = used.len() as u32;
    match topper.colour {
        Some(colour) => text.push_str(&[", in ", &about.colour(colour)].concat()),
        None if colours > 1 => {
            let names: Vec<String> = used.iter().map(|colour| about.colour(*colour)).collect();
            let each = (topper.wraps / colours).to_string();
            let nearly = if topper.wraps.is_multiple_of(colours) { "" } else { "about " };
            text.push_str(&[", ", nearly, &each, " of each colour: ", &names.join(", ")].concat());
        }
        None => {}
    }
    match topper.kind {
        TopperKind::PomPom => {
            text.push_str(
                ". Slide them off, tie them around the middle as tightly as you can with a doubled strand of 40 cm (16 in), and cut the ",
            );
            text.push_str(
                &["loops at both ends. Shake it out and trim it to a ball ", &size, " across; keep the ends of the tie long."]
                    .concat(),
            );
        }
        TopperKind::Tassel => {
            text.push_str(
                ". Pass a strand of 30 cm (12 in) under all of them at one edge and knot it as tightly as you can, its ends long. \
                 Slide them off and cut the loops at the other edge. ",
            );
            text.push_str(
                "Wind one end of the tie twice around all strands a fifth of the way down, knot it, and lead it back up through \
                 the middle with the needle. ",
            );
            text.push_str(&["Comb the strands straight and trim their ends even, ", &size, " from the tie."].concat());
        }
    }
    vec![
        text,
        "Take both ends of the tie through the top of the hat, a stitch apart, and knot them inside over a few stitches. Tug to test.".into(),
    ]
}

fn finishing(job: &Job<'_>) -> Vec<String> {
    let hat = job.hat;
    let mut list = Vec::new();
    let mut ends = String::from("Weave in every end on the inside, back and forth through a few stitches of its own colour");
    ends.push_str(match (hat.depth.fold.ticks(), hat.band) {
        (..=0, _) => ". ",
        (_, BandKind::None) => "; where the edge is folded up, on the face that the fold hides. ",
        _ if hides_its_outside(hat) => "; in the band, on the face that the fold hides. ",
        _ => "; in the part of the band that is folded up, on the face that the fold hides. ",
    });
    if hat.style == Style::Tam {
        let plate = job.length(job.spec.shape.tam_across);
        ends.push_str(
            &["Wash the tam, and while it is wet stretch it over a plate about ", &plate, " across, the band around its back, "]
                .concat(),
        );
        ends.push_str(
            "undisturbed until it is quite dry: that sets the sharp edge (common practice). The band itself is not stretched.",
        );
    } else {
        ends.push_str("Wash the hat and let it dry flat.");
    }
    list.push(ends);
    if hat.depth.fold.ticks() > 0 {
        let of = if hat.band == BandKind::None { " of the hat" } else { " of the band" };
        list.push(["Fold the lower ", &job.length(hat.depth.fold), of, " up to the outside."].concat());
    }
    list
}
