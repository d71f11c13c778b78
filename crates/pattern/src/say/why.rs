//! Why the hat has these numbers and no others: its count, its pick-up, its shaping, its depth.

use super::fit::size_effect;
use crate::figures::{Units, length, percent, show};
use hatwright_sizing::{
    BandKind, Begun, Coverage, Hat, HatSpec, Layout, Length, Loops, Quantity, Ratio, Remark, Round, RoundKind, Rows, SideTop,
    Size, Stitches, Style, Unit, Zone,
};
use hatwright_words::{count, why as words};

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
    counted_as(size.rows, size.stitches, hat)
}

/// The same of rows and stitches that no size has yet.
pub(super) fn counted_as(rows: Rows, stitches: Stitches, hat: &Hat) -> String {
    if counts_rows(hat) { count::rows(rows.get()) } else { count::stitches(stitches.get()) }
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
        Remark::StripesMoved { nearest, repeat } => Some((nearest.get(), repeat.get())),
        _ => None,
    });
    let wedges = hat.remarks.iter().find_map(|r| match r {
        Remark::WedgesMoved { nearest, wedges } => Some((nearest.get(), *wedges)),
        _ => None,
    });
    let count = counted(&hat.size, hat);
    let difference = hat.size.girth.ticks().saturating_sub(hat.wanted_girth.ticks());
    let off = length(Length::from_ticks(difference.saturating_abs()), units);
    let smaller = difference < 0;
    let moved = match (moved, wedges) {
        // The stripes alone would have moved it to yet another count.
        (Some((nearest, repeat)), Some((closing, wedges))) => {
            words::moved_twice(&count, nearest, closing, &closes(repeat, hat), &wedges_moved(wedges, hat))
        }
        (None, Some((nearest, wedges))) => words::moved(&count, nearest, &wedges_moved(wedges, hat)),
        (Some((nearest, repeat)), None) => words::moved(&count, nearest, &closes(repeat, hat)),
        (None, None) if difference.abs() < 50 => return words::just(&count),
        // Another count may be nearer where wedges or the pick-up decide, or a person chose; then nothing is claimed.
        (None, None) if 2 * difference.abs() <= hat.gauge.stitch.ticks() => {
            return if smaller { words::nearest_smaller(&count, &off) } else { words::nearest_larger(&count, &off) };
        }
        (None, None) => return if smaller { words::smaller(&count, &off) } else { words::larger(&count, &off) },
    };
    let makes = if smaller { words::makes_smaller(&off) } else { words::makes_larger(&off) };
    [&*moved, " ", &makes].concat()
}

/// Which counts the stripes or the rib take: a clause.
fn closes(repeat: u32, hat: &Hat) -> String {
    match (hat.style, hat.band, repeat) {
        (Style::Sideways, _, 2) => words::rib_rows().into(),
        (Style::Sideways, ..) => words::stripes_close(repeat),
        (_, BandKind::Sideways, 2) => words::band_rows().into(),
        (_, BandKind::Sideways, _) => words::band_stripes_close(repeat),
        _ => words::post_stitches().into(),
    }
}

/// `8 wedges divide them evenly, without an adjustment round`: a clause.
pub(super) fn wedges_moved(wedges: u32, hat: &Hat) -> String {
    if hat.size.adjustment.get() == 0 { words::wedges_divide(wedges) } else { words::wedges_nearest(wedges) }
}

/// What the nearest other counts would do: `The nearest others: 52, 3.3 cm smaller (too tight: reaches 47.7 cm); 60, 3.3 cm larger
/// (loose by 0.2 cm).`
pub fn why_not_others(hat: &Hat, units: Units) -> Option<String> {
    let girth = hat.size.girth;
    let told = |size: &Size| {
        let count = if counts_rows(hat) { size.rows.get() } else { size.stitches.get() };
        let by = length(Length::from_ticks((size.girth.ticks() - girth.ticks()).saturating_abs()), units);
        let effect = size_effect(size, hat, units);
        if size.girth < girth { words::other_smaller(count, &by, &effect) } else { words::other_larger(count, &by, &effect) }
    };
    let smaller = hat.neighbours.iter().rev().find(|n| n.girth < girth).map(told);
    let larger = hat.neighbours.iter().find(|n| n.girth > girth).map(told);
    match (smaller, larger) {
        (Some(smaller), Some(larger)) => Some(words::others(&smaller, &larger)),
        (Some(other), None) | (None, Some(other)) => Some(words::other(&other)),
        (None, None) => None,
    }
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
            let text = words::band_around(hat.size.stitches.get());
            let posts = spec.band_fabric().row().loops == Loops::Posts;
            Some(if posts { [&*text, " ", words::posts_even()].concat() } else { text })
        }
        BandKind::Sideways => {
            let rows = hat.size.rows.get();
            let (band, body) = (length(hat.size.band_girth, units), length(hat.size.girth, units));
            Some(match hat.size.pick_up() {
                (1, 1) => words::pick_one(rows, &band, &body),
                (pick, 1) => words::pick_in_each(pick, rows, &band, &body),
                (pick, every) => words::pick_in_every(pick, every, rows, &band, &body),
            })
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
        let rows = panel.rows.len() as u32;
        return vec![match panel.top {
            SideTop::Gathered => words::side_gathered(rows),
            SideTop::ShortRows => words::side_short_rows(rows / panel.wedge.get().max(1)),
        }];
    }
    let zone = |zone: Zone| hat.rounds.iter().filter(move |r| r.zone == zone);
    let mut all = Vec::new();
    if hat.style == Style::Slouch
        && let Some(step) = zone(Zone::Body).find(|r| r.increases.get() + r.decreases.get() > 0)
    {
        let narrow = f64::from(step.before.min(step.after.get()).max(1));
        let more = Ratio::of(f64::from(step.before.max(step.after.get())) / narrow - 1.0);
        all.push(words::slouch_step(&percent(more)));
    }
    if let Some(steady) = Steady::of(zone(Zone::Under), hat) {
        all.push(steady.told(words::under_grows, words::under_narrows));
    }
    all.extend(crown(hat, spec));
    let tail = zone(Zone::Tail).count() as u32;
    if tail > 0 {
        let long = Length::from_cm(f64::from(tail) * hat.gauge.round.cm());
        all.push(words::tail(spec.shape.tail_stitches.get(), &length(long, units)));
    }
    if let Some(steady) = Steady::of(zone(Zone::Brim), hat) {
        let told = steady.told(words::brim_grows, words::brim_narrows);
        let flare = spec.shape.flare;
        all.push(match steady.flat {
            true if flare.ticks() >= 10_000 => [&*told, " ", words::brim_always()].concat(),
            _ if flare.ticks() < 10_000 => [&*told, " ", &words::brim_turns_down(&percent(flare))].concat(),
            _ => told,
        });
    }
    all
}

/// A part that grows or narrows steadily.
struct Steady {
    stitches: u32,
    rounds: u32,
    grows: bool,
    /// Stitches a round, and those of a flat disc, in hundredths.
    mean: i32,
    disc: i32,
    /// Within a tenth of a flat disc.
    flat: bool,
}

impl Steady {
    /// Nothing where no stitches are won or lost.
    fn of<'a>(rounds: impl Iterator<Item = &'a Round>, hat: &Hat) -> Option<Self> {
        let begins = |r: &&Round| !matches!(r.kind, RoundKind::Foundation | RoundKind::PickUp | RoundKind::Ring);
        let (mut count, mut up, mut down) = (0, 0, 0);
        for round in rounds.filter(begins) {
            (count, up, down) = (count + 1, up + round.increases.get(), down + round.decreases.get());
        }
        let stitches = up.abs_diff(down);
        if stitches == 0 {
            return None;
        }
        let (mean, disc) = ((stitches * 100 / count) as i32, flat_rate(hat));
        let flat = (mean - disc).abs() * 10 <= disc;
        Some(Self { stitches, rounds: count, grows: up > down, mean, disc, flat })
    }

    /// `The brim grows by 55 stitches in 10 rounds, 5.5 a round; a flat disc of this fabric changes by 5.5 (2π × the height of a round ÷
    /// the width of a stitch), so it lies flat.` The messages are those of the part, growing and narrowing.
    fn told(&self, grows: fn(u32, u32, &str) -> String, narrows: fn(u32, u32, &str) -> String) -> String {
        let part = if self.grows { grows } else { narrows };
        let part = part(self.stitches, self.rounds, &tenth(self.mean));
        if self.flat { words::rate_flat(&part, &tenth(self.disc)) } else { words::rate(&part, &tenth(self.disc)) }
    }
}

/// Why the crown takes off, or puts on, what it does.
fn crown(hat: &Hat, spec: &HatSpec) -> Option<String> {
    let top = hat.top?;
    let shaped: Vec<&Round> = hat.rounds.iter().filter(|r| r.zone == Zone::Crown).collect();
    let change = |r: &Round| r.decreases.get() + r.increases.get();
    let steps: Vec<u32> = shaped.iter().filter(|r| r.kind != RoundKind::Adjust).map(|r| change(r)).filter(|n| *n > 0).collect();
    let Some((&least, &most)) = steps.iter().min().zip(steps.iter().max()) else {
        return Some(words::all_gathered(top.stitches.get()));
    };
    let number = match (hat.begun, least == most) {
        (Begun::Band, true) => words::decreases(most),
        (Begun::Band, false) => words::decreases_from_to(least, most),
        (Begun::Crown, true) => words::increases(most),
        (Begun::Crown, false) => words::increases_from_to(least, most),
    };
    let part = match (hat.style, hat.begun) {
        (Style::Stocking, Begun::Band) => words::cone_narrows,
        (Style::Stocking, Begun::Crown) => words::cone_widens,
        (Style::Tam, Begun::Band) => words::disc_narrows,
        (Style::Tam, Begun::Crown) => words::disc_widens,
        (_, Begun::Band) => words::crown_narrows,
        (_, Begun::Crown) => words::crown_widens,
    };
    let part = part(steps.len() as u32, shaped.len() as u32, &number);
    let part = match (hat.lays(spec), hat.begun) {
        (Layout::Wedges(k), Begun::Band) if least == k && most == k => words::decreases_in_wedges(&part),
        (Layout::Wedges(k), Begun::Crown) if least == k && most == k => words::increases_in_wedges(&part),
        _ => words::spread(&part),
    };
    let adjusted = shaped.iter().find(|r| r.kind == RoundKind::Adjust).map(|r| words::adjusted(r.before, r.after.get()));
    let flat = flat_rate(hat);
    let mean = steps.iter().sum::<u32>() * 100 / (shaped.len() as u32).max(1);
    let on_average = match hat.style {
        Style::Stocking => words::mean_cone,
        // What is more than a flat disc's is no reason.
        _ if f64::from(mean) < 0.85 * f64::from(flat) => words::mean_fewer,
        _ if f64::from(mean) < 1.1 * f64::from(flat) => words::mean_alike,
        _ => words::mean,
    };
    let on_average = on_average(&tenth(mean as i32), &tenth(flat));
    let sentences: Vec<String> = [Some(part), adjusted, Some(on_average)].into_iter().flatten().collect();
    Some(sentences.join(" "))
}

/// Why the hat is as deep as it is.
///
/// `To cover the ears, a hat reaches 0.395 of the head's girth down from the middle of the crown (common practice): 19.7 cm. In whole
/// rounds it comes to 19.4 cm.`
pub fn why_this_depth(hat: &Hat, spec: &HatSpec, units: Units) -> String {
    let l = |length_of: Length| length(length_of, units);
    let promised = l(hat.depth.promised);
    let more = match hat.style {
        Style::EarWarmer => return words::warmer(&promised),
        Style::Tam if hat.band == BandKind::None => return words::tam(&l(spec.shape.tam_across), &promised),
        Style::Tam => return words::tam_to_band(&l(spec.shape.tam_across), &promised),
        Style::Slouch => spec.shape.slouch_longer,
        Style::Stocking => spec.shape.tail,
        _ => Length::ZERO,
    };
    // Flaps begin at the tops of the ears, whatever else the hat covers.
    let coverage = if hat.style == Style::EarFlap { Coverage::EarTops } else { spec.coverage };
    let base = l(Length::from_ticks(hat.depth.wanted.ticks() - more.ticks()));
    let share = show(share_of(coverage).row().usual, Unit::Factor, units);
    let girth = if spec.lining.ticks() > 0 { words::girth_lined() } else { words::girth() };
    let mut reaches = match coverage {
        Coverage::EarTops => words::ears_free(&share, girth),
        Coverage::EarCanals => words::to_canals(&share, girth),
        Coverage::EarLobes => words::to_lobes(&share, girth),
        Coverage::OverEars => words::ears_covered(&share, girth),
    };
    if let Some(over) = spec.over_top {
        let canals = show(Quantity::CoverCanals.row().usual, Unit::Factor, units);
        reaches = words::over_top(&reaches, &l(over), &canals);
    }
    let depth = match hat.style {
        Style::Slouch => words::depth_slouch(&reaches, &base, &l(more)),
        Style::Stocking => words::depth_tail(&reaches, &base, &l(more)),
        _ => words::depth(&reaches, &base),
    };
    let whole = if hat.style == Style::Sideways { words::whole_stitches(&promised) } else { words::whole_rounds(&promised) };
    [&*depth, " ", &whole].concat()
}

/// The share of the head's girth that a coverage takes.
const fn share_of(coverage: Coverage) -> Quantity {
    match coverage {
        Coverage::EarTops => Quantity::CoverTops,
        Coverage::EarCanals => Quantity::CoverCanals,
        Coverage::EarLobes => Quantity::CoverLobes,
        Coverage::OverEars => Quantity::CoverEars,
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
                let share = share_of(if style == Style::EarFlap { Coverage::EarTops } else { coverage });
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
