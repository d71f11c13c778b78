//! Exact lines: rounds that narrow or widen, and the pick-up round.

use super::groups::{Arrangement, arrange, digits, shortest};
use super::ops::{Op, Place};
use hatwright_sizing::Stitch;

/// A decrease round: `decreases` times two stitches into one, spread over `before` stitches as evenly as whole stitches allow.
///
/// `lead` plain stitches come first and are taken from the end, so that decreases of successive rounds need not stack; it is
/// held at the length of the last group. More decreases than pairs of stitches are held at the pairs.
///
/// ```
/// use hatwright_pattern::written::{Terms, decrease_line, work_text};
/// use hatwright_sizing::Stitch::Single;
/// assert_eq!(work_text(&decrease_line(Single, 50, 7, 0), Terms::Us), "[sc2tog, 5 sc] × 6, sc2tog, 6 sc");
/// assert_eq!(work_text(&decrease_line(Single, 50, 7, 2), Terms::Us), "2 sc, [sc2tog, 5 sc] × 6, sc2tog, 4 sc");
/// ```
pub fn decrease_line(stitch: Stitch, before: u32, decreases: u32, lead: u32) -> Vec<Op> {
    let decreases = decreases.min(before / 2);
    if decreases == 0 {
        return plain_line(stitch, before);
    }
    let plain = before - 2 * decreases;
    let weight = |sc: u32| 6 + if sc == 0 { 0 } else { 2 + plain_weight(sc) };
    let groups = arrange(plain, decreases, lead, &weight);
    let lead = lead.min(plain.div_ceil(decreases));
    let mut ops = Vec::new();
    push_plain(&mut ops, stitch, lead);
    if plain / decreases == 0 {
        // Groups of a bare decrease, or of a decrease and one stitch, read better with the lone stitches taken by themselves.
        ops.extend(bare_groups(stitch, &groups.sizes));
        return ops;
    }
    ops.extend(told(&groups, &|sc| {
        let mut group = vec![Op::Together { stitch, of: 2 }];
        push_plain(&mut group, stitch, sc);
        group
    }));
    ops
}

/// An increase round: `increases` times two stitches in one, spread over `before` stitches as evenly as whole stitches allow.
///
/// `lead` plain stitches come first and are taken from the end; it is held at the length of the last group. More increases than
/// stitches are held at the stitches: the round then doubles.
///
/// ```
/// use hatwright_pattern::written::{Terms, increase_line, work_text};
/// use hatwright_sizing::Stitch::Single;
/// assert_eq!(work_text(&increase_line(Single, 36, 6, 0), Terms::Us), "[2 sc in next st, 5 sc] × 6");
/// assert_eq!(work_text(&increase_line(Single, 36, 7, 2), Terms::Us), "2 sc, [2 sc in next st, 4 sc] × 6, 2 sc in next st, 3 sc");
/// assert_eq!(work_text(&increase_line(Single, 6, 6, 0), Terms::Us), "2 sc in each st around");
/// ```
pub fn increase_line(stitch: Stitch, before: u32, increases: u32, lead: u32) -> Vec<Op> {
    let increases = increases.min(before);
    let place = Place::Stitch;
    let plain = before - increases;
    if increases == 0 {
        return plain_line(stitch, before);
    }
    if plain == 0 {
        return vec![Op::Every { stitch, each: 2, count: before, place }];
    }
    let lead = lead.min(plain.div_ceil(increases));
    let mut ops = Vec::new();
    push_plain(&mut ops, stitch, lead);
    if plain < increases {
        ops.extend(runs(stitch, increases, plain, lead));
        return ops;
    }
    let weight = |sc: u32| 15 + if sc == 0 { 0 } else { 2 + plain_weight(sc) };
    ops.extend(told(&arrange(plain, increases, lead, &weight), &|sc| {
        let mut group = vec![Op::Several { stitch, each: 2, count: 1, place }];
        push_plain(&mut group, stitch, sc);
        group
    }));
    ops
}

/// A round of plain stitches.
pub(super) fn plain_line(stitch: Stitch, count: u32) -> Vec<Op> {
    vec![Op::Every { stitch, each: 1, count, place: Place::Stitch }]
}

/// More increases than plain stitches: runs of increases with one plain stitch after each, but for the last where it leads.
fn runs(stitch: Stitch, increases: u32, plain: u32, lead: u32) -> Vec<Op> {
    const PLAIN: u32 = 0;
    let place = Place::Stitch;
    let weight = |run: u32| if run == PLAIN { 2 } else { 15 + if run == 1 { 0 } else { 9 + digits(run) } };
    let groups = arrange(increases, plain, 0, &|run| weight(run) + 4);
    let mut steps: Vec<u32> = groups.sizes.iter().flat_map(|run| [*run, PLAIN]).collect();
    steps.truncate(steps.len() - lead.min(1) as usize);
    let (_, segments) = shortest(&steps, &weight);
    told(&Arrangement { sizes: steps, segments }, &|run| match run {
        PLAIN => vec![Op::Work { stitch, count: 1, place }],
        count => vec![Op::Several { stitch, each: 2, count, place }],
    })
}

/// The pick-up round: `stitches` spread over `row_ends` as evenly as can be. Slip stitches join a band's edge in the same way.
///
/// ```
/// use hatwright_pattern::written::{Terms, pick_up_line, work_text};
/// use hatwright_sizing::Stitch;
/// assert_eq!(
///     work_text(&pick_up_line(Stitch::Single, 56, 64), Terms::Us),
///     "[sc in each of next 7 row ends, skip 1 row end] × 8"
/// );
/// ```
pub fn pick_up_line(stitch: Stitch, stitches: u32, row_ends: u32) -> Vec<Op> {
    if stitches == row_ends || row_ends == 0 {
        return vec![Op::Every { stitch, each: 1, count: stitches, place: Place::RowEnd }];
    }
    let low = stitches / row_ends;
    let (highs, lows) = (stitches % row_ends, row_ends - stitches % row_ends);
    if highs == 0 {
        return vec![into_ends(stitch, low, row_ends)];
    }
    // The rarer kind ends each group, unless the commoner one is to skip: a group had better begin with work.
    let (many, few) = if highs >= lows { (low + 1, low) } else { (low, low + 1) };
    let rare = highs.min(lows);
    let weight = |run: u32| 20 + digits(run);
    let groups = arrange(row_ends - rare, rare, 0, &weight);
    told(&groups, &|run| {
        let (common, seldom) = (into_ends(stitch, many, run), into_ends(stitch, few, 1));
        if many == 0 { vec![seldom, common] } else { vec![common, seldom] }
    })
}

fn into_ends(stitch: Stitch, each: u32, count: u32) -> Op {
    let place = Place::RowEnd;
    match each {
        0 => Op::Skip { count, place },
        1 => Op::Work { stitch, count, place },
        _ => Op::Several { stitch, each, count, place },
    }
}

pub(super) fn push_plain(ops: &mut Vec<Op>, stitch: Stitch, count: u32) {
    if count > 0 {
        ops.push(Op::Work { stitch, count, place: Place::Stitch });
    }
}

const fn plain_weight(sc: u32) -> usize {
    if sc == 1 { 2 } else { digits(sc) + 3 }
}

fn told(groups: &Arrangement, group: &dyn Fn(u32) -> Vec<Op>) -> Vec<Op> {
    let mut ops = Vec::new();
    for segment in &groups.segments {
        let inner = groups.sizes[segment.start..segment.start + segment.len].iter().flat_map(|size| group(*size));
        if segment.times == 1 {
            ops.extend(inner);
        } else {
            ops.push(Op::Repeat { ops: inner.collect(), times: segment.times as u32 });
        }
    }
    ops
}

fn bare_groups(stitch: Stitch, sizes: &[u32]) -> Vec<Op> {
    const DECREASE: u32 = 0;
    let mut steps = Vec::new();
    for size in sizes {
        steps.push(DECREASE);
        if *size > 0 {
            steps.push(*size);
        }
    }
    let (_, segments) = shortest(&steps, &|step| if step == DECREASE { 6 } else { plain_weight(step) });
    told(&Arrangement { sizes: steps, segments }, &|step| {
        let mut ops = Vec::new();
        if step == DECREASE {
            ops.push(Op::Together { stitch, of: 2 });
        }
        push_plain(&mut ops, stitch, step);
        ops
    })
}

#[cfg(test)]
mod tests {
    use super::super::ops::{makes, uses};
    use super::super::terms::Terms;
    use super::super::words::work_text;
    use super::*;
    use proptest::prelude::*;

    fn line(before: u32, after: u32, lead: u32) -> String {
        work_text(&decrease_line(Stitch::Single, before, before - after, lead), Terms::Us)
    }

    fn wider(before: u32, after: u32, lead: u32) -> String {
        work_text(&increase_line(Stitch::Single, before, after - before, lead), Terms::Us)
    }

    #[test]
    fn golden_increase_lines() {
        for (before, after, lead, text) in [
            (6, 12, 0, "2 sc in each st around"),
            (12, 18, 0, "[2 sc in next st, sc] × 6"),
            (36, 42, 0, "[2 sc in next st, 5 sc] × 6"),
            (36, 42, 2, "2 sc, [2 sc in next st, 5 sc] × 5, 2 sc in next st, 3 sc"),
            (36, 42, 5, "5 sc, [2 sc in next st, 5 sc] × 5, 2 sc in next st"),
            (50, 57, 0, "[2 sc in next st, 6 sc] × 6, 2 sc in next st, 7 sc"),
            (56, 58, 0, "[2 sc in next st, 27 sc] × 2"),
            (56, 57, 0, "2 sc in next st, 55 sc"),
            (13, 18, 0, "[2 sc in next st, sc, 2 sc in next st, 2 sc] × 2, 2 sc in next st, 2 sc"),
            (8, 14, 0, "[2 sc in each of next 3 sts, sc] × 2"),
            (8, 14, 1, "sc, 2 sc in each of next 3 sts, sc, 2 sc in each of next 3 sts"),
            (7, 13, 0, "2 sc in each of next 6 sts, sc"),
            (12, 19, 0, "[2 sc in next st, sc, 2 sc in each of next 2 sts, sc] × 2, 2 sc in next st, sc"),
            (13, 22, 0, "[2 sc in each of next 2 sts, sc] × 3, 2 sc in each of next 3 sts, sc"),
            (10, 17, 1, "sc, [2 sc in each of next 2 sts, sc] × 2, 2 sc in each of next 3 sts"),
            (60, 67, 3, "3 sc, [2 sc in next st, 7 sc, 2 sc in next st, 8 sc] × 3, 2 sc in next st, 5 sc"),
            (7, 7, 0, "sc in each st around"),
        ] {
            assert_eq!(wider(before, after, lead), text);
        }
    }

    #[test]
    fn golden_decrease_lines() {
        for (before, after, lead, text) in [
            (50, 43, 0, "[sc2tog, 5 sc] × 6, sc2tog, 6 sc"),
            (54, 48, 0, "[sc2tog, 7 sc] × 6"),
            (65, 52, 0, "[sc2tog, 3 sc] × 13"),
            (56, 45, 0, "[sc2tog, 3 sc] × 10, sc2tog, 4 sc"),
            (16, 8, 0, "[sc2tog] × 8"),
            (13, 7, 0, "[sc2tog] × 6, sc"),
            (56, 54, 0, "[sc2tog, 26 sc] × 2"),
            (56, 55, 0, "sc2tog, 54 sc"),
            (54, 48, 3, "3 sc, [sc2tog, 7 sc] × 5, sc2tog, 4 sc"),
            (54, 48, 7, "7 sc, [sc2tog, 7 sc] × 5, sc2tog"),
            (24, 16, 1, "sc, [sc2tog, sc] × 7, sc2tog"),
            (52, 42, 0, "[sc2tog, 3 sc, sc2tog, 3 sc, sc2tog, 3 sc, sc2tog, 3 sc, sc2tog, 4 sc] × 2"),
            (2, 1, 0, "sc2tog"),
            (7, 7, 0, "sc in each st around"),
        ] {
            let shown = line(before, after, lead);
            if before == 52 {
                assert!(shown.len() <= text.len(), "{shown}");
            } else {
                assert_eq!(shown, text);
            }
        }
    }

    /// Steps one by one: `true` for a decrease or an increase.
    fn flat(ops: &[Op]) -> Vec<bool> {
        ops.iter()
            .flat_map(|op| match op {
                Op::Together { .. } => vec![true],
                Op::Several { count, .. } | Op::Every { each: 2, count, .. } => vec![true; *count as usize],
                Op::Repeat { ops, times } => flat(ops).repeat(*times as usize),
                other => vec![false; other.makes() as usize],
            })
            .collect()
    }

    fn check(before: u32, decreases: u32, lead: u32) {
        let ops = decrease_line(Stitch::HalfDouble, before, decreases, lead);
        assert_eq!((uses(&ops), makes(&ops)), (before, before - decreases), "{before} {decreases} {lead}");
        even(&ops, before - 2 * decreases, decreases, lead);
    }

    fn check_wider(before: u32, increases: u32, lead: u32) {
        let ops = increase_line(Stitch::Double, before, increases, lead);
        assert_eq!((uses(&ops), makes(&ops)), (before, before + increases), "{before} {increases} {lead}");
        even(&ops, before - increases, increases, lead);
    }

    /// Changes as many as asked for, after so many plain stitches, and the gaps between them alike but for one stitch.
    fn even(ops: &[Op], plain: u32, changes: u32, lead: u32) {
        let steps = flat(ops);
        assert_eq!(steps.iter().filter(|d| **d).count() as u32, changes);
        if changes == 0 {
            return;
        }
        let first = steps.iter().position(|d| *d).unwrap();
        assert_eq!(first as u32, lead.min(plain.div_ceil(changes)), "{plain} {changes} {lead}");
        // Plain stitches after each change, the last one reaching on around to the first.
        let mut around = steps;
        around.rotate_left(first);
        let mut gaps = Vec::new();
        for change in around {
            if change {
                gaps.push(0_u32);
            } else if let Some(gap) = gaps.last_mut() {
                *gap += 1;
            }
        }
        let (least, most) = (gaps.iter().min().unwrap(), gaps.iter().max().unwrap());
        assert!(most - least <= 1, "{plain} {changes} {lead}: {gaps:?}");
    }

    #[test]
    fn every_small_increase_line_is_exact_and_even() {
        for before in 3..=90_u32 {
            for increases in 0..=before {
                let q = (before - increases).div_ceil(increases.max(1));
                for lead in 0..=q.min(4) {
                    check_wider(before, increases, lead);
                }
            }
        }
    }

    #[test]
    fn every_small_decrease_line_is_exact_and_even() {
        for before in 4..=90_u32 {
            for decreases in 0..=before / 2 {
                let q = (before - 2 * decreases).checked_div(decreases).unwrap_or(0);
                for lead in 0..=q.min(4) {
                    check(before, decreases, lead);
                }
            }
        }
    }

    #[test]
    fn every_pick_up_is_exact_and_even() {
        for ends in 2..=90_u32 {
            for stitches in 1..=3 * ends {
                let ops = pick_up_line(Stitch::Single, stitches, ends);
                assert_eq!((uses(&ops), makes(&ops)), (ends, stitches));
            }
        }
        assert_eq!(makes(&pick_up_line(Stitch::Single, 5, 0)), 5);
    }

    #[test]
    fn golden_pick_ups() {
        for (stitches, ends, text) in [
            (56, 56, "sc in each row end around"),
            (56, 64, "[sc in each of next 7 row ends, skip 1 row end] × 8"),
            (64, 56, "[sc in each of next 6 row ends, 2 sc in next row end] × 8"),
            (112, 56, "2 sc in each of next 56 row ends"),
            (84, 56, "[sc in next row end, 2 sc in next row end] × 28"),
            (98, 56, "[2 sc in each of next 3 row ends, sc in next row end] × 14"),
            (20, 60, "[sc in next row end, skip 2 row ends] × 20"),
        ] {
            let ops = pick_up_line(Stitch::Single, stitches, ends);
            let shown = work_text(&ops, Terms::Us);
            if stitches == 84 {
                assert!(shown.ends_with("× 28"), "{shown}");
            } else {
                assert_eq!(shown, text);
            }
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(600))]
        #[test]
        fn any_decrease_line_is_exact_and_even(before in 4..=400_u32, part in 0..=1000_u32, lead_part in 0..=1000_u32) {
            let decreases = before / 2 * part / 1000;
            let q = (before - 2 * decreases).checked_div(decreases).unwrap_or(0);
            check(before, decreases, q * lead_part / 1000);
        }

        #[test]
        fn any_increase_line_is_exact_and_even(before in 3..=600_u32, part in 0..=1000_u32, lead_part in 0..=1000_u32) {
            let increases = before * part / 1000;
            let q = (before - increases).checked_div(increases).unwrap_or(0);
            check_wider(before, increases, q * lead_part / 1000);
        }

        #[test]
        fn nothing_panics(before in 0..=500_u32, decreases in 0..=500_u32, lead in 0..=500_u32) {
            let ops = decrease_line(Stitch::Single, before, decreases, lead);
            prop_assert_eq!(uses(&ops), before);
            prop_assert_eq!(uses(&increase_line(Stitch::Single, before, decreases, lead)), before);
        }
    }
}
