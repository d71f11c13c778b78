//! Why the hat has these numbers and no others: its count, its pick-up, its shaping, its depth.

use super::fit::size_effect;
use super::refusals::plural_stitches;
use crate::figures::{Units, length, percent, plural, show};
use hatwright_sizing::{
    BandKind, Begun, Coverage, Hat, HatSpec, Layout, Length, Loops, Quantity, Ratio, Remark, Round, RoundKind, SideTop, Size,
    Style, Unit, Zone,
};

/// Everything that a maker may ask "why" about, a sentence or two each: count, other counts, pick-up, each shaped part, depth.
///
/// What the numbers are is taken from the hat, so that no reason is given for what it does not do.
pub fn reasons(hat: &Hat, spec: &HatSpec, units: Units) -> Vec<String> {
    let mut all = vec![why_this_count(hat, units)];
    all.extend(why_not_others(hat, units));
    all.extend(why_this_band(hat, spec, units));
    all.extend(why_this_shaping(hat, spec, units));
    all.push(why_this_depth(hat, spec, units));
    all
}

/// A count with what it counts: rows where the whole hat, or all there is of it, is worked sideways.
pub(super) fn counted(size: &Size, hat: &Hat) -> String {
    if counts_rows(hat) { plural(size.rows.get(), "row") } else { plural_stitches(size.stitches.get()) }
}

/// Whether rows alone go around the head.
pub(super) fn counts_rows(hat: &Hat) -> bool {
    hat.style == Style::Sideways || (hat.style == Style::EarWarmer && hat.band == BandKind::Sideways)
}

/// Why the hat has this count and no other.
///
/// 56 stitches where 55 would come nearest: `56 stitches rather than 55: the band's stripes close only on multiples of 4 rows.
/// That makes the hat 0.4 cm larger than asked for.`
pub fn why_this_count(hat: &Hat, units: Units) -> String {
    let moved = hat.remarks.iter().find_map(|r| match r {
        Remark::StripesMoved { nearest, repeat } => Some((nearest, repeat.get())),
        _ => None,
    });
    let wedges = hat.remarks.iter().find_map(|r| match r {
        Remark::WedgesMoved { nearest, wedges } => Some((nearest, *wedges)),
        _ => None,
    });
    let mut text = counted(&hat.size, hat);
    let difference = hat.size.girth.ticks().saturating_sub(hat.wanted_girth.ticks());
    let off = length(Length::from_ticks(difference.saturating_abs()), units);
    let way = if difference < 0 { " smaller than asked for." } else { " larger than asked for." };
    match (moved, wedges) {
        // The stripes alone would have moved it to yet another count.
        (Some((nearest, repeat)), Some((closing, wedges))) => {
            text.push_str(&[" rather than ", &nearest.to_string(), ", or ", &closing.to_string()].concat());
            text.push_str(
                &[" where ", &closes(repeat, hat), &wedges_moved(wedges, hat), " That makes the hat ", &off, way].concat(),
            );
        }
        (None, Some((nearest, wedges))) => {
            text.push_str(&[" rather than ", &nearest.to_string(), &wedges_moved(wedges, hat)].concat());
            text.push_str(&[" That makes the hat ", &off, way].concat());
        }
        (Some((nearest, repeat)), None) => {
            text.push_str(&[" rather than ", &nearest.to_string(), ": "].concat());
            text.push_str(&[&*closes(repeat, hat), ". That makes the hat ", &off, way].concat());
        }
        (None, None) if difference.abs() < 50 => text.push_str(" give just the girth that was asked for."),
        // Another count may be nearer where wedges or the pick-up decide, or a person chose; then nothing is claimed.
        (None, None) if 2 * difference.abs() <= hat.gauge.stitch.ticks() => {
            text.push_str(
                &[" come nearest to the girth that was asked for: ", &off, way.trim_end_matches(" than asked for."), "."]
                    .concat(),
            );
        }
        (None, None) => text.push_str(&[" make the hat ", &off, way].concat()),
    }
    text
}

fn closes(repeat: u32, hat: &Hat) -> String {
    let multiples = |what: &str| [what, " only on multiples of ", &repeat.to_string(), " rows"].concat();
    match (hat.style, hat.band, repeat) {
        (Style::Sideways, _, 2) => "a rib worked sideways needs an even number of rows".into(),
        (Style::Sideways, ..) => multiples("the stripes close"),
        (_, BandKind::Sideways, 2) => "a sideways band needs an even number of rows".into(),
        (_, BandKind::Sideways, _) => multiples("the band's stripes close"),
        _ => "a rib of front and back posts in turn needs an even number of stitches".into(),
    }
}

/// `: 8 wedges divide them evenly, without an adjustment round.`
pub(super) fn wedges_moved(wedges: u32, hat: &Hat) -> String {
    let wedges = wedges.to_string();
    if hat.size.adjustment.get() == 0 {
        [": ", &wedges, " wedges divide them evenly, without an adjustment round."].concat()
    } else {
        [": of the counts that suit the rest, it comes nearest to what ", &wedges, " wedges divide."].concat()
    }
}

/// What the nearest other counts would do: `The nearest others: 52, 3.3 cm smaller (too tight: reaches 47.7 cm); 60, 3.3 cm larger
/// (loose by 0.2 cm).`
pub fn why_not_others(hat: &Hat, units: Units) -> Option<String> {
    let girth = hat.size.girth;
    let smaller = hat.neighbours.iter().rev().find(|n| n.girth < girth);
    let larger = hat.neighbours.iter().find(|n| n.girth > girth);
    let told = |size: &Size, way: &str| {
        let count = if counts_rows(hat) { size.rows.get() } else { size.stitches.get() };
        let by = Length::from_ticks((size.girth.ticks() - girth.ticks()).saturating_abs());
        [&*count.to_string(), ", ", &length(by, units), way, &size_effect(size, hat, units), ")"].concat()
    };
    let list: Vec<String> =
        smaller.map(|s| told(s, " smaller (")).into_iter().chain(larger.map(|l| told(l, " larger ("))).collect();
    (!list.is_empty()).then(|| ["The nearest others: ", &list.join("; "), "."].concat())
}

/// Why so many stitches stand on the band: nothing for a hat without one, or that is nothing else.
///
/// `One stitch in each of the band's 56 row ends: the band is 46.7 cm around, the body 46.7 cm.`
pub fn why_this_band(hat: &Hat, spec: &HatSpec, units: Units) -> Option<String> {
    if hat.style == Style::EarWarmer {
        return None;
    }
    match hat.band {
        BandKind::None => None,
        BandKind::Around => {
            let even = if spec.band_fabric().row().loops == Loops::Posts {
                " Front and back posts take turns, so it is even."
            } else {
                ""
            };
            Some(
                [
                    "The band is worked on the body's own ",
                    &plural_stitches(hat.size.stitches.get()),
                    ", so nothing is picked up.",
                    even,
                ]
                .concat(),
            )
        }
        BandKind::Sideways => {
            let (pick, every) = hat.size.pick_up();
            let rows = hat.size.rows.to_string();
            let mut text = match (pick, every) {
                (1, 1) => ["One stitch in each of the band's ", &rows, " row ends"].concat(),
                (_, 1) => [&*pick.to_string(), " stitches in each of the band's ", &rows, " row ends"].concat(),
                _ => [&*plural_stitches(pick), " in every ", &every.to_string(), " of the band's ", &rows, " row ends"].concat(),
            };
            let (band, body) = (length(hat.size.band_girth, units), length(hat.size.girth, units));
            text.push_str(&[": the band is ", &band, " around, the body ", &body, "."].concat());
            Some(text)
        }
    }
}

/// Stitches that a flat disc of the body's fabric grows by in a round, in hundredths: 2π × the height of a round ÷ the width of a stitch.
fn flat_rate(hat: &Hat) -> i32 {
    let rate = core::f64::consts::TAU * hat.gauge.round.cm() / hat.gauge.stitch.cm().max(0.001);
    libm::round(rate * 100.0) as i32
}

/// Hundredths as a figure to a tenth.
fn tenth(hundredths: i32) -> String {
    show((hundredths + 5) / 10 * 10, Unit::Count, Units::Centimetres)
}

/// Why each part of the hat that is shaped is shaped so: one sentence or two for a slouch's widening, a tam's underside, the crown, a
/// straight tail, a brim; for a hat worked sideways, how it closes.
pub fn why_this_shaping(hat: &Hat, spec: &HatSpec, units: Units) -> Vec<String> {
    if let Some(panel) = &hat.panel {
        return vec![match panel.top {
            SideTop::Gathered => {
                [&*plural(panel.rows.len() as u32, "row"), " run up to the crown: the row ends there are gathered."].concat()
            }
            SideTop::ShortRows => {
                let wedges = panel.rows.len() as u32 / panel.wedge.get().max(1);
                [&*plural(wedges, "wedge"), " of short rows leave the crown narrow, so that little is left to gather."].concat()
            }
        }];
    }
    let zone = |zone: Zone| hat.rounds.iter().filter(move |r| r.zone == zone);
    let mut all = Vec::new();
    if hat.style == Style::Slouch
        && let Some(step) = zone(Zone::Body).find(|r| r.increases.get() + r.decreases.get() > 0)
    {
        let narrow = f64::from(step.before.min(step.after.get()).max(1));
        let more = Ratio::of(f64::from(step.before.max(step.after.get())) / narrow - 1.0);
        all.push(
            ["One round next to the band makes the step between them: the body is ", &percent(more), " wider than the band."]
                .concat(),
        );
    }
    all.extend(rate(zone(Zone::Under), "The underside of the disc", hat).map(|told| told.text));
    all.extend(crown(hat, spec));
    let tail = zone(Zone::Tail).count() as u32;
    if tail > 0 {
        let stitches = plural_stitches(spec.shape.tail_stitches.get());
        let long = Length::from_cm(f64::from(tail) * hat.gauge.round.cm());
        all.push(
            ["The tail stays ", &*stitches, " around for ", &length(long, units), ": it is as narrow as it is to be."].concat(),
        );
    }
    if let Some(told) = rate(zone(Zone::Brim), "The brim", hat) {
        let flare = spec.shape.flare;
        let why = match told.flat {
            true if flare.ticks() >= 10_000 => " It is always about that number, never a share of the stitches.".into(),
            _ if flare.ticks() < 10_000 => [" It has ", &*percent(flare), " of what lies flat, so it turns down."].concat(),
            _ => String::new(),
        };
        all.push([told.text, why].concat());
    }
    all
}

/// A part that grows or narrows steadily, told.
struct Rate {
    text: String,
    /// Within a tenth of a flat disc.
    flat: bool,
}

/// `The brim grows by 55 stitches in 10 rounds, 5.5 a round; a flat disc of this fabric changes by 5.5 (2π × the height of a round ÷ the
/// width of a stitch), so it lies flat.` Nothing where there are no such rounds.
fn rate<'a>(rounds: impl Iterator<Item = &'a Round>, part: &str, hat: &Hat) -> Option<Rate> {
    let begins = |r: &&Round| !matches!(r.kind, RoundKind::Foundation | RoundKind::PickUp | RoundKind::Ring);
    let (mut count, mut up, mut down) = (0, 0, 0);
    for round in rounds.filter(begins) {
        (count, up, down) = (count + 1, up + round.increases.get(), down + round.decreases.get());
    }
    let all = up.abs_diff(down);
    if all == 0 {
        return None;
    }
    let way = if up > down { " grows by " } else { " narrows by " };
    let (mean, disc) = ((all * 100 / count) as i32, flat_rate(hat));
    let flat = (mean - disc).abs() * 10 <= disc;
    let mut text = [part, way, &*plural_stitches(all), " in ", &plural(count, "round")].concat();
    text.push_str(&[", ", &*tenth(mean), " a round; a flat disc of this fabric changes by ", &tenth(disc)].concat());
    text.push_str(" (2π × the height of a round ÷ the width of a stitch)");
    text.push_str(if flat { ", so it lies flat." } else { "." });
    Some(Rate { text, flat })
}

/// Why the crown takes off, or puts on, what it does.
fn crown(hat: &Hat, spec: &HatSpec) -> Option<String> {
    let top = hat.top?;
    let shaped: Vec<&Round> = hat.rounds.iter().filter(|r| r.zone == Zone::Crown).collect();
    let change = |r: &Round| r.decreases.get() + r.increases.get();
    let steps: Vec<u32> = shaped.iter().filter(|r| r.kind != RoundKind::Adjust).map(|r| change(r)).filter(|n| *n > 0).collect();
    let Some((least, most)) = steps.iter().min().zip(steps.iter().max()) else {
        return Some(["Nothing is decreased: all ", &*plural_stitches(top.stitches.get()), " are gathered."].concat());
    };
    let (part, verb) = match (hat.style, hat.begun) {
        (Style::Stocking, Begun::Band) => ("The cone", "narrows"),
        (Style::Stocking, Begun::Crown) => ("The cone", "widens"),
        (Style::Tam, Begun::Band) => ("The disc", "narrows"),
        (Style::Tam, Begun::Crown) => ("The disc", "widens"),
        (_, Begun::Band) => ("The crown", "narrows"),
        (_, Begun::Crown) => ("The crown", "widens"),
    };
    let work = if hat.begun == Begun::Band { "decrease" } else { "increase" };
    let number = if least == most { plural(*most, work) } else { [&*least.to_string(), " to ", &plural(*most, work)].concat() };
    let mut text =
        [part, " ", verb, " in ", &*steps.len().to_string(), " of its ", &plural(shaped.len() as u32, "round")].concat();
    text.push_str(&[", with ", &*number, " in each"].concat());
    match hat.lays(spec) {
        Layout::Wedges(k) if *least == k && *most == k => text.push_str(": one in every wedge."),
        _ => text.push('.'),
    }
    if let Some(adjust) = shaped.iter().find(|r| r.kind == RoundKind::Adjust) {
        let (from, to) = (adjust.before.to_string(), adjust.after.to_string());
        text.push_str(&[" One round before them takes ", &*from, " to ", &to, ", which the wedges divide."].concat());
    }
    let flat = flat_rate(hat);
    let mean = steps.iter().sum::<u32>() * 100 / (shaped.len() as u32).max(1);
    let why = match hat.style {
        Style::Stocking => "; a cone is far from flat, so it takes few.",
        // What is more than a flat disc's is no reason.
        _ if f64::from(mean) < 0.85 * f64::from(flat) => "; a crown that rises with the head takes fewer.",
        _ if f64::from(mean) < 1.1 * f64::from(flat) => ", and this one about as many.",
        _ => ".",
    };
    let about = tenth(mean as i32);
    text.push_str(
        &[" That is ", &*about, " a round on the average. A flat disc of this fabric takes ", &tenth(flat), why].concat(),
    );
    Some(text)
}

/// Why the hat is as deep as it is.
///
/// `To cover the ears, a hat reaches 0.395 of the head's girth down from the middle of the crown (common practice): 19.7 cm. In whole
/// rounds it comes to 19.4 cm.`
pub fn why_this_depth(hat: &Hat, spec: &HatSpec, units: Units) -> String {
    let l = |length_of: Length| length(length_of, units);
    let promised = l(hat.depth.promised);
    let more = match hat.style {
        Style::EarWarmer => return ["It is as tall as its band: ", &*promised, "."].concat(),
        Style::Tam => {
            let across = l(spec.shape.tam_across);
            let parts = ["Half of a disc ", &*across, " across, and the underside that leads back from its edge"].concat();
            let band = if hat.band == BandKind::None { "" } else { " to the band" };
            return [&*parts, band, ": ", &promised, " from the middle of the crown to the edge."].concat();
        }
        Style::Slouch => Some((spec.shape.slouch_longer, " more for the slouch")),
        Style::Stocking => Some((spec.shape.tail, " more to the tip of the tail")),
        _ => None,
    };
    // Flaps begin at the tops of the ears, whatever else the hat covers.
    let coverage = if hat.style == Style::EarFlap { Coverage::EarTops } else { spec.coverage };
    let (way, share, source) = told(coverage);
    let base = Length::from_ticks(hat.depth.wanted.ticks() - more.map_or(0, |(by, _)| by.ticks()));
    let share = show(share.row().usual, Unit::Factor, units);
    let mut text = [way, ", a hat reaches ", &*share, " of the head's girth"].concat();
    text.push_str(if spec.lining.ticks() > 0 { ", hair or lining included," } else { "" });
    text.push_str(&[" down from the middle of the crown (", source, ")"].concat());
    if let Some(over) = spec.over_top {
        let canals = show(Quantity::CoverCanals.row().usual, Unit::Factor, units);
        text.push_str(&["; half of the ", &*l(over), " over the top takes the place of ", &canals, " in that"].concat());
    }
    text.push_str(&[": ", &*l(base)].concat());
    if let Some((by, what)) = more {
        text.push_str(&[", and ", &*l(by), what].concat());
    }
    let rows = if hat.style == Style::Sideways { "stitches" } else { "rounds" };
    text.push_str(&[". In whole ", rows, " it comes to ", &*promised, "."].concat());
    text
}

/// How a coverage is told, its share of the girth, and who says so.
const fn told(coverage: Coverage) -> (&'static str, Quantity, &'static str) {
    match coverage {
        Coverage::EarTops => ("To leave the ears free", Quantity::CoverTops, "common practice"),
        Coverage::EarCanals => {
            ("To the ear canals", Quantity::CoverCanals, "means of adults, ANSUR I 1988 and NIOSH 2003; children's are derived")
        }
        Coverage::EarLobes => ("To the ear lobes", Quantity::CoverLobes, "means of adults, ANSUR I 1988"),
        Coverage::OverEars => ("To cover the ears", Quantity::CoverEars, "common practice"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::written::sample;
    use hatwright_sizing::{Rounds, Rows, Stitches};

    const CM: Units = Units::Centimetres;

    #[test]
    fn the_count_is_explained() {
        let mut hat = sample::hat();
        assert_eq!(
            why_this_count(&hat, CM),
            "56 stitches rather than 55: the band's stripes close only on multiples of 4 rows. \
             That makes the hat 0.4 cm larger than asked for."
        );
        hat.remarks.clear();
        assert_eq!(why_this_count(&hat, CM), "56 stitches come nearest to the girth that was asked for: 0.4 cm larger.");
    }

    #[test]
    fn wedges_are_blamed_for_what_they_do() {
        let mut hat = sample::hat();
        let wedges = Remark::WedgesMoved { nearest: Stitches::new(54), wedges: 8 };
        hat.remarks = vec![wedges];
        assert_eq!(
            why_this_count(&hat, CM),
            "56 stitches rather than 54: 8 wedges divide them evenly, without an adjustment round. That makes the hat 0.4 cm larger \
             than asked for."
        );
        hat.remarks = vec![sample::hat().remarks[1], wedges];
        assert_eq!(
            why_this_count(&hat, CM),
            "56 stitches rather than 55, or 54 where the band's stripes close only on multiples of 4 rows: 8 wedges divide them \
             evenly, without an adjustment round. That makes the hat 0.4 cm larger than asked for."
        );
    }

    #[test]
    fn what_must_divide_is_named_for_every_kind_of_hat() {
        let mut hat = sample::hat();
        let mut moved = |style, band, repeat| {
            (hat.style, hat.band) = (style, band);
            hat.remarks = vec![Remark::StripesMoved { nearest: Stitches::new(55), repeat: Rows::new(repeat) }];
            why_this_count(&hat, CM).split(" That").next().unwrap().to_owned()
        };
        assert_eq!(
            moved(Style::Fitted, BandKind::Around, 2),
            "56 stitches rather than 55: a rib of front and back posts in turn needs an even number of stitches."
        );
        assert_eq!(
            moved(Style::Sideways, BandKind::None, 2),
            "56 rows rather than 55: a rib worked sideways needs an even number of rows."
        );
        assert_eq!(
            moved(Style::Sideways, BandKind::None, 4),
            "56 rows rather than 55: the stripes close only on multiples of 4 rows."
        );
        assert_eq!(
            moved(Style::EarWarmer, BandKind::Sideways, 2),
            "56 rows rather than 55: a sideways band needs an even number of rows."
        );
    }

    #[test]
    fn others_are_told_with_what_they_do() {
        let hat = sample::hat();
        assert_eq!(
            why_not_others(&hat, CM).unwrap(),
            "The nearest others: 52, 3.3 cm smaller (too tight: reaches 47.7 cm); 60, 3.3 cm larger (loose by 0.2 cm)."
        );
        let alone = Hat { neighbours: Vec::new(), ..hat };
        assert_eq!(why_not_others(&alone, CM), None);
    }

    #[test]
    fn the_pick_up_is_the_girths() {
        let (mut hat, spec) = (sample::hat(), sample::spec());
        let told = |hat: &Hat| why_this_band(hat, &spec, CM);
        assert_eq!(
            told(&hat).unwrap(),
            "One stitch in each of the band's 56 row ends: the band is 46.7 cm around, the body 46.7 cm."
        );
        hat.size.rows = Rows::new(64);
        assert!(told(&hat).unwrap().starts_with("7 stitches in every 8 of the band's 64 row ends: "));
        hat.size.rows = Rows::new(28);
        assert!(told(&hat).unwrap().starts_with("2 stitches in each of the band's 28 row ends: "));
        hat.band = BandKind::Around;
        assert_eq!(told(&hat).unwrap(), "The band is worked on the body's own 56 stitches, so nothing is picked up.");
        hat.band = BandKind::None;
        assert_eq!(told(&hat), None);
    }

    #[test]
    fn the_crown_is_explained_by_its_own_rounds() {
        let (mut hat, mut spec) = (sample::hat(), sample::spec());
        assert_eq!(
            why_this_shaping(&hat, &spec, CM),
            [
                "The crown narrows in 6 of its 7 rounds, with 6 to 9 decreases in each. That is 6.7 a round on the average. A flat disc of \
              this fabric takes 5."
            ]
        );
        hat.rounds.truncate(10);
        spec.layout = Layout::Wedges(6);
        hat.rounds[8].zone = Zone::Crown;
        assert_eq!(
            why_this_shaping(&hat, &spec, CM),
            [
                "The crown narrows in 1 of its 2 rounds, with 6 decreases in each: one in every wedge. That is 3 a round on the average. A \
              flat disc of this fabric takes 5; a crown that rises with the head takes fewer."
            ]
        );
        hat.rounds[8].kind = RoundKind::Adjust;
        assert!(
            why_this_shaping(&hat, &spec, CM)[0].contains(" One round before them takes 56 to 56, which the wedges divide. ")
        );
        hat.rounds.truncate(8);
        hat.depth.straight = Rounds::new(8);
        assert_eq!(why_this_shaping(&hat, &spec, CM), ["Nothing is decreased: all 9 stitches are gathered."]);
        hat.top = None;
        assert!(why_this_shaping(&hat, &spec, CM).is_empty());
    }

    /// A flat brim at 14 × 16 to 10 cm from 78 stitches, 10 rounds to 133 (geometry): 5.5 a round.
    #[test]
    fn a_flat_brim_grows_by_the_flat_rate() {
        let (mut hat, mut spec) = (sample::hat(), sample::spec());
        (hat.gauge.stitch, hat.gauge.round) = (Length::from_cm(10.0 / 14.0), Length::from_cm(10.0 / 16.0));
        let round = hat.rounds[2];
        hat.top = None;
        hat.rounds = (0..10)
            .map(|i| {
                let (before, after) = (78 + i * 55 / 10, 78 + (i + 1) * 55 / 10);
                Round {
                    zone: Zone::Brim,
                    before,
                    after: Stitches::new(after),
                    increases: Stitches::new(after - before),
                    kind: RoundKind::Increase,
                    ..round
                }
            })
            .collect();
        assert_eq!(
            why_this_shaping(&hat, &spec, CM),
            [
                "The brim grows by 55 stitches in 10 rounds, 5.5 a round; a flat disc of this fabric changes by 5.5 (2π × the height of a round \
              ÷ the width of a stitch), so it lies flat. It is always about that number, never a share of the stitches."
            ]
        );
        spec.shape.flare = Ratio::of(0.6);
        assert!(why_this_shaping(&hat, &spec, CM)[0].ends_with(" It has 60.0 % of what lies flat, so it turns down."));
    }

    #[test]
    fn the_depth_is_explained_by_what_is_covered() {
        let (mut hat, mut spec) = (sample::hat(), sample::spec());
        assert_eq!(
            why_this_depth(&hat, &spec, CM),
            "To cover the ears, a hat reaches 0.395 of the head's girth down from the middle of the crown (common practice): 19.7 cm. In \
             whole rounds it comes to 19.4 cm."
        );
        (spec.over_top, spec.lining) = (Some(Length::from_cm(31.0)), Length::from_cm(0.5));
        assert_eq!(
            why_this_depth(&hat, &spec, CM),
            "To cover the ears, a hat reaches 0.395 of the head's girth, hair or lining included, down from the middle of the crown (common \
             practice); half of the 31.0 cm over the top takes the place of 0.308 in that: 19.7 cm. In whole rounds it comes to 19.4 cm."
        );
        (spec.over_top, spec.lining, hat.style) = (None, Length::ZERO, Style::Slouch);
        hat.depth.wanted = Length::from_cm(24.7);
        assert!(why_this_depth(&hat, &spec, CM).contains(": 19.7 cm, and 5.0 cm more for the slouch. "));
        hat.style = Style::EarFlap;
        assert!(why_this_depth(&hat, &spec, CM).starts_with("To leave the ears free, a hat reaches 0.26 of "));
        hat.style = Style::Tam;
        assert!(why_this_depth(&hat, &spec, CM).starts_with("Half of a disc 24.5 cm across, "));
        hat.style = Style::EarWarmer;
        assert_eq!(why_this_depth(&hat, &spec, CM), "It is as tall as its band: 19.4 cm.");
    }

    /// What the sentence says of real hats is what they are: the share of the girth that it names makes the length that it names.
    #[test]
    fn the_depth_that_is_told_is_the_plans() {
        for style in [Style::Fitted, Style::Slouch, Style::Stocking, Style::EarFlap, Style::Brimmed, Style::Sideways] {
            for coverage in [Coverage::EarCanals, Coverage::EarLobes, Coverage::OverEars] {
                let mut spec = HatSpec { style, coverage, ..HatSpec::default() };
                spec.band.kind = BandKind::None;
                spec.band.fold = Length::ZERO;
                let hat = hatwright_sizing::plan(&spec).unwrap_or_else(|why| panic!("{style:?}: {why:?}"));
                let (_, share, _) = told(if style == Style::EarFlap { Coverage::EarTops } else { coverage });
                let base = Length::from_cm(hat.head.girth.cm() * share.row().usual_value());
                let text = why_this_depth(&hat, &spec, CM);
                assert!(text.contains(&[": ", &*length(base, CM)].concat()), "{style:?}: {text}");
            }
        }
    }

    #[test]
    fn all_reasons_are_sentences() {
        let all = reasons(&sample::hat(), &sample::spec(), CM);
        assert_eq!(all.len(), 5);
        assert!(all.iter().all(|text| text.ends_with('.') && !text.contains("  ")));
    }
}
