//! The steps of a round, from its words.

use super::tongue::gap;
use super::words::{Stitch, Vocabulary, count, plural};

/// One step of a round.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// A plain stitch in the next stitch (or chain, or stitch of an edge).
    Stitch,
    /// The next two stitches worked into one.
    Decrease,
    /// Two stitches in the next.
    Increase,
    /// So many stitches in the next row end; none where it is skipped.
    RowEnd(u32),
    /// A stitch around the post of the next stitch, from the front.
    FrontPost,
    /// A stitch around the post of the next stitch, from the back.
    BackPost,
}

impl Step {
    pub(super) const fn makes(self) -> u32 {
        match self {
            Self::Stitch | Self::Decrease | Self::FrontPost | Self::BackPost => 1,
            Self::Increase => 2,
            Self::RowEnd(stitches) => stitches,
        }
    }

    pub(super) const fn uses(self) -> u32 {
        match self {
            Self::Decrease => 2,
            _ => 1,
        }
    }
}

/// What a round is worked into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Below {
    /// So many row ends of the band.
    RowEnds(u32),
    /// So many chains, joined into a ring.
    Chains(u32),
    /// So many stitches of the edge that the hat was begun at.
    Edge(u32),
    /// So many stitches of the round below.
    Stitches(u32),
}

/// Does a round's work, without its label, its chain and join, and its total.
///
/// # Errors
/// What is wrong, in words.
///
/// ```
/// use hatwright_tests::interpreter::{Below, Vocabulary, work_round};
/// let round = work_round("[sc2tog, 5 sc] × 6, sc2tog, 6 sc", Vocabulary::US, Below::Stitches(50)).unwrap();
/// assert_eq!(round.len(), 43);
/// assert!(work_round("[sc2tog, 5 sc] × 7", Vocabulary::US, Below::Stitches(50)).is_err());
/// assert_eq!(work_round("[2 htr in next st, 5 htr] × 6", Vocabulary::UK, Below::Stitches(36)).unwrap().len(), 36);
/// assert_eq!(work_round("[2 mpa en el p siguiente, 5 mpa] × 6", Vocabulary::SPAIN, Below::Stitches(36)).unwrap().len(), 36);
/// ```
pub fn work_round(work: &str, words: Vocabulary, below: Below) -> Result<Vec<Step>, String> {
    steps(work, words, None, below).map(|(_, steps)| steps)
}

/// The stitch of a work and its steps. A section's stitch is known from its first line on; the first line tells it.
pub(super) fn steps(work: &str, words: Vocabulary, stitch: Option<Stitch>, below: Below) -> Result<(Stitch, Vec<Step>), String> {
    if let Some(stitch) = stitch {
        return of_stitch(work, words, stitch, below).map(|steps| (stitch, steps));
    }
    let all = Stitch::ALL.map(|stitch| of_stitch(work, words, stitch, below).map(|steps| (stitch, steps)));
    // Of four complaints, that of the stitch which the line does name is the one to hear.
    let named = all.iter().find(|tried| matches!(tried, Err(why) if !why.starts_with(NO_STEP))).cloned();
    all.into_iter().find(Result::is_ok).or(named).unwrap_or_else(|| Err(format!("{NO_STEP}: {work:?}")))
}

const NO_STEP: &str = "no such step";

fn of_stitch(work: &str, words: Vocabulary, stitch: Stitch, below: Below) -> Result<Vec<Step>, String> {
    let (name, tongue) = (words.name(stitch), words.tongue);
    let whole = |all: &str| gap(work, all).is_some_and(|what| what == name);
    let twice = || gap(work, tongue.stitches_around).and_then(|what| what.strip_prefix("2 ")) == Some(name);
    let (steps, there) = match below {
        Below::Stitches(n) if whole(tongue.stitches_around) => (vec![Step::Stitch; n as usize], n),
        Below::Stitches(n) if twice() => (vec![Step::Increase; n as usize], n),
        Below::RowEnds(n) if whole(tongue.row_ends_around) => (vec![Step::RowEnd(1); n as usize], n),
        Below::Chains(n) if whole(tongue.chains_around) => (vec![Step::Stitch; n as usize], n),
        Below::Edge(n) if whole(tongue.edge_around) => (vec![Step::Stitch; n as usize], n),
        Below::Chains(_) | Below::Edge(_) => return Err(format!("{NO_STEP} into a chain or an edge: {work:?}")),
        Below::RowEnds(n) | Below::Stitches(n) => {
            let mut steps = Vec::new();
            read_items(work, words, stitch, &mut steps)?;
            let ends = matches!(below, Below::RowEnds(_));
            if let Some(step) = steps.iter().find(|step| matches!(step, Step::RowEnd(_)) != ends) {
                return Err(format!("{step:?} is not worked into {below:?}"));
            }
            (steps, n)
        }
    };
    posts(&steps)?;
    let used: u32 = steps.iter().map(|step| step.uses()).sum();
    if used == there { Ok(steps) } else { Err(format!("uses {used} of {there}")) }
}

/// A rib goes around in pairs, front and back, or it does not meet itself.
fn posts(steps: &[Step]) -> Result<(), String> {
    let post = |step: &Step| matches!(step, Step::FrontPost | Step::BackPost);
    if !steps.iter().any(post) {
        return Ok(());
    }
    let pairs = steps.chunks(2).all(|pair| pair == [Step::FrontPost, Step::BackPost]);
    if pairs { Ok(()) } else { Err("a rib that does not go around in pairs".into()) }
}

/// Items with commas between them, brackets kept whole.
pub(super) fn read_items(text: &str, words: Vocabulary, stitch: Stitch, steps: &mut Vec<Step>) -> Result<(), String> {
    let mut rest = text;
    loop {
        rest = if let Some(inside) = rest.strip_prefix('[') {
            let (inside, after) = inside.split_once(']').ok_or("a bracket that does not close")?;
            let after = after.strip_prefix(" × ").ok_or("a bracket without × and a number")?;
            let (times, after) = after.find(", ").map_or((after, ""), |at| after.split_at(at));
            let times = count(times)?;
            if inside.contains('[') || times < 2 {
                return Err(format!("a bracket worked {times} times, or inside another"));
            }
            let from = steps.len();
            for item in inside.split(", ") {
                read_item(item, words, stitch, steps)?;
            }
            let once = steps[from..].to_vec();
            (1..times).for_each(|_| steps.extend_from_slice(&once));
            after
        } else {
            let (item, after) = rest.find(", ").map_or((rest, ""), |at| rest.split_at(at));
            read_item(item, words, stitch, steps)?;
            after
        };
        if rest.is_empty() {
            return Ok(());
        }
        rest = rest.strip_prefix(", ").ok_or_else(|| format!("what is {rest:?}?"))?;
    }
}

fn read_item(item: &str, words: Vocabulary, stitch: Stitch, steps: &mut Vec<Step>) -> Result<(), String> {
    let unknown = || format!("{NO_STEP}: {item:?}");
    let (name, tongue) = (words.name(stitch), words.tongue);
    if stitch != Stitch::Slip && gap(item, tongue.decrease) == Some(name) {
        steps.push(Step::Decrease);
        return Ok(());
    }
    if let Some(ends) = item.strip_prefix(words.skip).and_then(|rest| rest.strip_prefix(' ')) {
        steps.extend(vec![Step::RowEnd(0); plural(ends, tongue.row_end)? as usize]);
        return Ok(());
    }
    for (phrase, step) in [(tongue.front_post, Step::FrontPost), (tongue.back_post, Step::BackPost)] {
        if gap(item, phrase) == Some(name) {
            steps.push(step);
            return Ok(());
        }
    }
    // "sc" and "3 sc" are stitches; what follows them says where else they go.
    let (number, rest) = match item.split_once(' ') {
        Some((number, rest)) if number.starts_with(|c: char| c.is_ascii_digit()) => (Some(count(number)?), rest),
        _ => (None, item),
    };
    let rest = rest.strip_prefix(name).ok_or_else(unknown)?;
    if number.is_some_and(|each| each < 2) {
        return Err(format!("one is told without its number: {item:?}"));
    }
    let each = number.unwrap_or(1);
    if rest.is_empty() {
        steps.extend(vec![Step::Stitch; each as usize]);
        return Ok(());
    }
    let place = gap(rest, tongue.into).ok_or_else(unknown)?;
    if let Some(ends) = tongue.next(place, tongue.row_end) {
        steps.extend(vec![Step::RowEnd(each); ends? as usize]);
    } else if let (Some(stitches), 2) = (tongue.next(place, tongue.stitch), each) {
        steps.extend(vec![Step::Increase; stitches? as usize]);
    } else {
        return Err(unknown());
    }
    Ok(())
}
