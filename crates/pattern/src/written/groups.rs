//! Groups as even as whole stitches allow, told in the fewest words.
//!
//! A round that treats `total` plain stitches in `groups` groups gives each group `q` or `q + 1` of them. Where the longer ones
//! fall is a balanced word (each stretch of it holds as many longer groups as any other stretch of its length, give or take
//! one); any rotation of that word is as even as any other, so the one that reads shortest is taken.

/// A stretch of groups: `len` groups from `start`, worked `times` times.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Segment {
    pub start: usize,
    pub len: usize,
    pub times: usize,
}

/// Groups in order, and how to say them.
pub(super) struct Arrangement {
    pub sizes: Vec<u32>,
    pub segments: Vec<Segment>,
}

/// Repeats of more groups than this are no easier to follow than the groups written out.
const LONGEST_REPEAT: usize = 8;

/// Parts `total` into `groups` (1 or more) and takes `lead` from the last of them, which the caller has put in front of the
/// first. `weight` is the length of a group's text.
pub(super) fn arrange(total: u32, groups: u32, lead: u32, weight: &dyn Fn(u32) -> usize) -> Arrangement {
    let word = balanced(total, groups);
    let longest = word.last().copied().unwrap_or(0);
    let mut best: Option<((usize, bool), Arrangement)> = None;
    let period = word.len() / hatwright_sizing::gcd(total % groups, groups) as usize;
    for turn in 0..period {
        let mut sizes = word.clone();
        sizes.rotate_left(turn);
        if sizes.last().is_none_or(|last| *last < lead.min(longest)) {
            continue;
        }
        if let Some(last) = sizes.last_mut() {
            *last -= lead.min(*last);
        }
        let (cost, segments) = shortest(&sizes, weight);
        // Of two that are as short, one that begins with its repeat; and the unturned word puts longer groups as late as can be, so that
        // any other tie leaves it in place.
        let cost = (cost, segments.first().is_some_and(|first| first.times == 1));
        if best.as_ref().is_none_or(|(least, _)| cost < *least) {
            best = Some((cost, Arrangement { sizes, segments }));
        }
    }
    best.map_or(Arrangement { sizes: Vec::new(), segments: Vec::new() }, |(_, a)| a)
}

/// The balanced word that puts its longer groups as late as it can: 0 0 1 for 1 in 3.
fn balanced(total: u32, groups: u32) -> Vec<u32> {
    let upto = |i: u32| (u64::from(i) * u64::from(total) / u64::from(groups)) as u32;
    (0..groups).map(|i| upto(i + 1) - upto(i)).collect()
}

/// The cheapest way to tell a sequence in groups and repeats of groups, with the length of its text.
pub(super) fn shortest(sizes: &[u32], weight: &dyn Fn(u32) -> usize) -> (usize, Vec<Segment>) {
    const COMMA: usize = 2;
    let n = sizes.len();
    let mut upto = vec![0];
    for size in sizes {
        upto.push(upto[upto.len() - 1] + weight(*size) + COMMA);
    }
    let longest = LONGEST_REPEAT.min(n / 2);
    // same[l - 1] counts how far the sequence from here equals itself l groups later.
    let mut same = vec![vec![0_usize; n + 1]; longest];
    for (l, same) in same.iter_mut().enumerate() {
        for i in (0..n.saturating_sub(l + 1)).rev() {
            same[i] = if sizes[i] == sizes[i + l + 1] { same[i + 1] + 1 } else { 0 };
        }
    }
    let mut best = vec![(0, Segment { start: n, len: 0, times: 0 }); n + 1];
    for start in (0..n).rev() {
        let single = upto[start + 1] - upto[start];
        best[start] = (single + best[start + 1].0, Segment { start, len: 1, times: 1 });
        for len in 1..=longest.min((n - start) / 2) {
            let inner = upto[start + len] - upto[start];
            for times in (2..=same[len - 1][start] / len + 1).rev() {
                let cost = inner + 5 + digits(times as u32) + best[start + len * times].0;
                // As short as single groups is better: what repeats is then told first, what is left over last.
                if cost < best[start].0 || (cost == best[start].0 && best[start].1.times == 1) {
                    best[start] = (cost, Segment { start, len, times });
                }
            }
        }
    }
    let (mut segments, mut at) = (Vec::new(), 0);
    while at < n {
        let segment = best[at].1;
        at += segment.len * segment.times;
        segments.push(segment);
    }
    (best[0].0.saturating_sub(COMMA), segments)
}

/// Digits of a count.
pub(super) const fn digits(count: u32) -> usize {
    match count {
        ..10 => 1,
        10..100 => 2,
        100..1000 => 3,
        _ => 4,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rebuilt(a: &Arrangement) -> Vec<u32> {
        let of = |s: &Segment| a.sizes[s.start..s.start + s.len].repeat(s.times);
        a.segments.iter().flat_map(of).collect()
    }

    #[test]
    fn segments_tell_the_whole_sequence() {
        for groups in 1..60 {
            for total in 0..3 * groups {
                let a = arrange(total, groups, 0, &|_| 10);
                assert_eq!(rebuilt(&a), a.sizes);
                assert_eq!(a.sizes.iter().sum::<u32>(), total);
                assert_eq!(a.sizes.len(), groups as usize);
            }
        }
    }

    /// Balance, checked from its definition: stretches of one length differ by at most one in their sum, around the circle.
    #[test]
    fn groups_are_balanced_around_the_circle() {
        for groups in 1..24 {
            for total in 0..2 * groups {
                let a = arrange(total, groups, 0, &|_| 10);
                let twice = a.sizes.repeat(2);
                for len in 1..=groups as usize {
                    let sums: Vec<u32> = (0..groups as usize).map(|i| twice[i..i + len].iter().sum()).collect();
                    let (least, most) = (sums.iter().min().unwrap(), sums.iter().max().unwrap());
                    assert!(most - least <= 1, "{total} in {groups}: {:?}", a.sizes);
                }
            }
        }
    }
}
