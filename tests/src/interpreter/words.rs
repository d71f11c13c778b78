//! The two sets of words, and numbers.

use super::Fault;

/// A stitch, whatever it is called.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stitch {
    /// Slip stitch.
    Slip,
    /// US single crochet, UK double crochet.
    Single,
    /// US half double crochet, UK half treble crochet.
    HalfDouble,
    /// US double crochet, UK treble crochet.
    Double,
}

impl Stitch {
    pub(super) const ALL: [Self; 4] = [Self::Slip, Self::Single, Self::HalfDouble, Self::Double];

    /// Chains that reach its height, as the trade teaches: 1 for single, 2 for half double, 3 for double crochet.
    pub(super) const fn chains(self) -> u32 {
        match self {
            Self::Slip | Self::Single => 1,
            Self::HalfDouble => 2,
            Self::Double => 3,
        }
    }
}

/// Whose words a pattern uses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Vocabulary {
    stitches: [&'static str; 4],
    pub(super) skip: &'static str,
}

impl Vocabulary {
    /// United States: sc, hdc, dc, skip.
    pub const US: Self = Self { stitches: ["sl st", "sc", "hdc", "dc"], skip: "skip" };
    /// United Kingdom: dc, htr, tr, miss.
    pub const UK: Self = Self { stitches: ["sl st", "dc", "htr", "tr"], skip: "miss" };

    /// What a stitch is called.
    pub(super) const fn name(&self, stitch: Stitch) -> &'static str {
        self.stitches[stitch as usize]
    }

    /// By the line in which a pattern says whose terms it is written in.
    pub(super) fn of(text: &str) -> Result<Self, Fault> {
        let says = |terms: &str| text.lines().any(|line| line.starts_with(&format!("Written in {terms} crochet terms")));
        match (says("US"), says("UK")) {
            (true, false) => Ok(Self::US),
            (false, true) => Ok(Self::UK),
            _ => Err(Fault {
                line: text.lines().next().unwrap_or_default().into(),
                why: "no word of whose terms these are".into(),
            }),
        }
    }
}

/// A whole number of at least 1, in digits and nothing else.
pub(super) fn count(text: &str) -> Result<u32, String> {
    let digits = text.bytes().all(|b| b.is_ascii_digit()) && !text.starts_with('0');
    text.parse().ok().filter(|_| digits).ok_or_else(|| format!("{text:?} is no number"))
}

/// "1 row end", "7 row ends".
pub(super) fn plural(text: &str, noun: &str) -> Result<u32, String> {
    let (number, named) = text.split_once(' ').ok_or_else(|| format!("no number in {text:?}"))?;
    let number = count(number)?;
    let holds = if number == 1 { named == noun } else { named.strip_suffix('s') == Some(noun) };
    if holds { Ok(number) } else { Err(format!("{text:?} are no {noun}s")) }
}

/// " in next st", " in each of next 7 sts": how many, where it is told so.
pub(super) fn next(text: &str, noun: &str) -> Option<Result<u32, String>> {
    if let Some(one) = text.strip_prefix("next ") {
        return (one == noun).then_some(Ok(1));
    }
    let many = text.strip_prefix("each of next ")?;
    let many = many.contains(noun).then(|| plural(many, noun))?;
    Some(many.and_then(|n| if n > 1 { Ok(n) } else { Err(format!("one is told as many: {text:?}")) }))
}
