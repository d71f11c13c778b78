//! The three sets of stitches' names, and numbers.

use super::Fault;
use super::tongue::{ENGLISH, SPANISH, Tongue, gap};

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
    pub(super) tongue: &'static Tongue,
}

impl Vocabulary {
    /// United States: sc, hdc, dc, skip.
    pub const US: Self = Self { stitches: ["sl st", "sc", "hdc", "dc"], skip: "skip", tongue: &ENGLISH };
    /// United Kingdom: dc, htr, tr, miss.
    pub const UK: Self = Self { stitches: ["sl st", "dc", "htr", "tr"], skip: "miss", tongue: &ENGLISH };
    /// Spain: pb, mpa, pa, saltar. From memory, no source.
    pub const SPAIN: Self = Self { stitches: ["pr", "pb", "mpa", "pa"], skip: "saltar", tongue: &SPANISH };

    /// What a stitch is called.
    pub(super) const fn name(&self, stitch: Stitch) -> &'static str {
        self.stitches[stitch as usize]
    }

    /// By the line at the top of a pattern that says whose terms it is written in.
    pub(super) fn of(text: &str) -> Result<Self, Fault> {
        const SAID: [(&str, Vocabulary); 3] = [
            ("Written in US crochet terms: ", Vocabulary::US),
            ("Written in UK crochet terms: ", Vocabulary::UK),
            ("Escrito con los términos de ganchillo de España: ", Vocabulary::SPAIN),
        ];
        let top = || text.lines().skip(1).take_while(|line| !line.is_empty());
        let said: Vec<Self> =
            SAID.iter().filter(|(says, _)| top().any(|line| line.starts_with(says))).map(|(_, words)| *words).collect();
        match said[..] {
            [words] => Ok(words),
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
pub(super) fn plural(text: &str, [one, many]: [&str; 2]) -> Result<u32, String> {
    let (number, named) = text.split_once(' ').ok_or_else(|| format!("no number in {text:?}"))?;
    let number = count(number)?;
    if named == if number == 1 { one } else { many } { Ok(number) } else { Err(format!("{text:?} are no {many}")) }
}

impl Tongue {
    /// "next st", "each of next 7 sts": how many, where it is told so.
    pub(super) fn next(&self, text: &str, noun: [&str; 2]) -> Option<Result<u32, String>> {
        if let Some(one) = gap(text, self.next_one) {
            return (one == noun[0]).then_some(Ok(1));
        }
        let many = gap(text, self.next_many)?;
        let many = noun.iter().any(|noun| many.ends_with(noun)).then(|| plural(many, noun))?;
        Some(many.and_then(|n| if n > 1 { Ok(n) } else { Err(format!("one is told as many: {text:?}")) }))
    }
}
