//! Executes a printed pattern, stitch by stitch, as a person with a hook would: from the text alone, sharing no code with its writer.
//!
//! [`work`] takes a whole printed pattern in US or UK terms and does its lines of work in order. A line must use up exactly what
//! the one before it left (for the first round, the row ends of the band) and leave exactly the total that it states; anything else, a
//! word that the grammar does not have included, is a [`Fault`] that quotes the line.

use std::fmt;

/// What a pattern's work comes to.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Worked {
    /// Rows of the band, in order.
    pub rows: Vec<Row>,
    /// Rounds above it, in order.
    pub rounds: Vec<Round>,
    /// Stitches gathered at the end.
    pub gathered: u32,
}

/// A row of the band.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// Its colour's name; absent in a hat of one colour.
    pub colour: Option<String>,
    /// Its stitches.
    pub stitches: u32,
}

/// A round.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Round {
    /// Its colour's name; absent in a hat of one colour.
    pub colour: Option<String>,
    /// What was done, in order.
    pub steps: Vec<Step>,
}

impl Round {
    /// Stitches that it leaves.
    pub fn stitches(&self) -> u32 {
        self.steps.iter().map(|step| step.makes()).sum()
    }

    /// Decreases in it.
    pub fn decreases(&self) -> u32 {
        self.steps.iter().filter(|step| **step == Step::Decrease).count() as u32
    }
}

/// One step of a round.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// A plain stitch in the next stitch.
    Stitch,
    /// The next two stitches worked into one.
    Decrease,
    /// So many stitches in the next row end; none where it is skipped.
    RowEnd(u32),
}

impl Step {
    const fn makes(self) -> u32 {
        match self {
            Self::Stitch | Self::Decrease => 1,
            Self::RowEnd(stitches) => stitches,
        }
    }

    const fn uses(self) -> u32 {
        match self {
            Self::Decrease => 2,
            Self::Stitch | Self::RowEnd(_) => 1,
        }
    }
}

/// A line that cannot be worked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The line as it is printed.
    pub line: String,
    /// What is wrong with it.
    pub why: String,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {:?}", self.why, self.line)
    }
}

impl std::error::Error for Fault {}

/// Whose words a pattern uses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Vocabulary {
    single: &'static str,
    decrease: &'static str,
    skip: &'static str,
}

impl Vocabulary {
    /// United States: sc, sc2tog, skip.
    pub const US: Self = Self { single: "sc", decrease: "sc2tog", skip: "skip" };
    /// United Kingdom: dc, dc2tog, miss.
    pub const UK: Self = Self { single: "dc", decrease: "dc2tog", skip: "miss" };

    /// By the line in which a pattern says whose terms it is written in.
    fn of(text: &str) -> Result<Self, Fault> {
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

/// What a round is worked into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Below {
    /// So many row ends of the band.
    RowEnds(u32),
    /// So many stitches.
    Stitches(u32),
}

/// Does a round's work, without its label and total.
///
/// # Errors
/// What is wrong, in words.
///
/// ```
/// use hatwright_tests::interpreter::{Below, Vocabulary, work_round};
/// let round = work_round("[sc2tog, 5 sc] × 6, sc2tog, 6 sc", Vocabulary::US, Below::Stitches(50)).unwrap();
/// assert_eq!(round.len(), 43);
/// assert!(work_round("[sc2tog, 5 sc] × 7", Vocabulary::US, Below::Stitches(50)).is_err());
/// ```
pub fn work_round(work: &str, words: Vocabulary, below: Below) -> Result<Vec<Step>, String> {
    let (name, count) = match below {
        Below::RowEnds(count) => ("row end", count),
        Below::Stitches(count) => ("st", count),
    };
    let steps = if work == format!("{} in each {name} around", words.single) {
        let step = if name == "st" { Step::Stitch } else { Step::RowEnd(1) };
        vec![step; count as usize]
    } else {
        let mut steps = Vec::new();
        read_items(work, words, &mut steps)?;
        steps
    };
    if let Some(step) = steps.iter().find(|step| matches!(step, Step::RowEnd(_)) != (name == "row end")) {
        return Err(format!("{step:?} is not worked into a {name}"));
    }
    let used: u32 = steps.iter().map(|step| step.uses()).sum();
    if used == count { Ok(steps) } else { Err(format!("uses {used} of {count}")) }
}

/// Items with commas between them, brackets kept whole.
fn read_items(text: &str, words: Vocabulary, steps: &mut Vec<Step>) -> Result<(), String> {
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
                read_item(item, words, steps)?;
            }
            let once = steps[from..].to_vec();
            (1..times).for_each(|_| steps.extend_from_slice(&once));
            after
        } else {
            let (item, after) = rest.find(", ").map_or((rest, ""), |at| rest.split_at(at));
            read_item(item, words, steps)?;
            after
        };
        if rest.is_empty() {
            return Ok(());
        }
        rest = rest.strip_prefix(", ").ok_or_else(|| format!("what is {rest:?}?"))?;
    }
}

fn read_item(item: &str, words: Vocabulary, steps: &mut Vec<Step>) -> Result<(), String> {
    if item == words.decrease {
        steps.push(Step::Decrease);
        return Ok(());
    }
    if let Some(ends) = item.strip_prefix(words.skip).and_then(|rest| rest.strip_prefix(' ')) {
        steps.extend(vec![Step::RowEnd(0); plural(ends, "row end")? as usize]);
        return Ok(());
    }
    // "sc" and "3 sc" are stitches; what follows them says that they go into row ends.
    let (number, rest) = match item.split_once(' ') {
        Some((number, rest)) if number != words.single => (Some(number), rest),
        _ => (None, item),
    };
    let each = number.map_or(Ok(1), count)?;
    let rest = rest.strip_prefix(words.single).ok_or_else(|| format!("no such step: {item:?}"))?;
    if number.is_some() && each < 2 {
        return Err(format!("one is told without its number: {item:?}"));
    }
    if rest.is_empty() {
        steps.extend(vec![Step::Stitch; each as usize]);
    } else if rest == " in next row end" {
        steps.push(Step::RowEnd(each));
    } else if let Some(ends) = rest.strip_prefix(" in each of next ") {
        let ends = plural(ends, "row end")?;
        steps.extend(vec![Step::RowEnd(each); ends as usize]);
    } else {
        return Err(format!("no such step: {item:?}"));
    }
    Ok(())
}

/// "1 row end", "7 row ends".
fn plural(text: &str, noun: &str) -> Result<u32, String> {
    let (number, named) = text.split_once(' ').ok_or_else(|| format!("no number in {text:?}"))?;
    let number = count(number)?;
    let holds = if number == 1 { named == noun } else { named.strip_suffix('s') == Some(noun) };
    if holds { Ok(number) } else { Err(format!("{text:?} are no {noun}s")) }
}

/// A whole number of at least 1, in digits and nothing else.
fn count(text: &str) -> Result<u32, String> {
    let digits = text.bytes().all(|b| b.is_ascii_digit()) && !text.starts_with('0');
    text.parse().ok().filter(|_| digits).ok_or_else(|| format!("{text:?} is no number"))
}

/// Does all the work of a printed pattern.
///
/// # Errors
/// The first line that cannot be worked as it stands.
pub fn work(text: &str) -> Result<Worked, Fault> {
    let mut hands = Hands { words: Vocabulary::of(text)?, ..Hands::default() };
    for line in text.lines() {
        hands.line(line).map_err(|why| Fault { line: line.into(), why })?;
    }
    if hands.worked.gathered == 0 {
        return Err(Fault { line: text.lines().last().unwrap_or_default().into(), why: "the top is never gathered".into() });
    }
    Ok(hands.worked)
}

/// What is on the hook.
#[derive(Default)]
struct Hands {
    words: Vocabulary,
    /// Chains of the foundation, the turning chain included.
    chain: u32,
    /// The band is a ring.
    joined: bool,
    worked: Worked,
}

impl Default for Vocabulary {
    fn default() -> Self {
        Self::US
    }
}

/// A line's label.
struct Label<'a> {
    from: u32,
    to: u32,
    colour: Option<&'a str>,
}

impl Hands {
    /// Does a line, if it is a line of work.
    fn line(&mut self, line: &str) -> Result<(), String> {
        let Some((label, work)) = line.split_once(": ") else {
            let numbered = ["Row ", "Rows ", "Round ", "Rounds "].iter().any(|noun| line.starts_with(noun));
            return if numbered { Err("a line of work without any".into()) } else { Ok(()) };
        };
        let (place, colour) = label.split_once(", ").map_or((label, None), |(place, colour)| (place, Some(colour)));
        match place {
            "Foundation" => return self.foundation(work),
            "Last" => return self.last(work),
            _ => {}
        }
        let Some((noun, numbers)) = place.split_once(' ') else { return Ok(()) };
        let many = match noun {
            "Row" | "Round" => false,
            "Rows" | "Rounds" => true,
            _ => return Ok(()),
        };
        let (from, to) =
            if many { numbers.split_once('–').ok_or("rows or rounds without an end")? } else { (numbers, numbers) };
        let label = Label { from: count(from)?, to: count(to)?, colour };
        if many && label.to <= label.from {
            return Err("no range".into());
        }
        let (work, total) = work.rsplit_once(". (").ok_or("no total")?;
        let total = count(total.strip_suffix(')').ok_or("no total")?)?;
        if self.worked.gathered > 0 || self.chain == 0 {
            return Err("not in its place".into());
        }
        if noun.starts_with("Row") { self.rows(&label, work, total) } else { self.rounds(&label, work, total) }
    }

    fn foundation(&mut self, work: &str) -> Result<(), String> {
        let chains = work.strip_prefix("ch ").and_then(|rest| rest.strip_suffix('.')).ok_or("no foundation chain")?;
        if self.chain > 0 {
            return Err("a second foundation".into());
        }
        self.chain = count(chains)?;
        Ok(())
    }

    fn rows(&mut self, label: &Label<'_>, work: &str, total: u32) -> Result<(), String> {
        let single = self.words.single;
        let done = self.worked.rows.len() as u32;
        if self.joined || !self.worked.rounds.is_empty() || label.from != done + 1 {
            return Err(format!("row {} after row {done}", label.from));
        }
        let first = format!("{single} in 2nd ch from hook and in each ch across");
        let plain = format!("ch 1, turn, {single} in back loop of each st across");
        let closing = format!("ch 1, turn, {single} through back loop of each st and the foundation edge together across");
        let below = self.worked.rows.last().map_or(0, |row| row.stitches);
        let stitches = if work == first && label.to == 1 {
            // The chain next to the hook is the turning chain.
            self.chain - 1
        } else if work == plain && done > 0 {
            below
        } else if work == closing && done > 0 && label.from == label.to {
            if below != self.chain - 1 {
                return Err(format!("{below} stitches do not match a foundation edge of {}", self.chain - 1));
            }
            self.joined = true;
            below
        } else {
            return Err("no such row".into());
        };
        if stitches != total {
            return Err(format!("leaves {stitches}"));
        }
        for number in label.from..=label.to {
            let colour = match label.colour {
                // The rows told so far are one repeat.
                Some("in the same stripes") => {
                    let again = self.worked.rows.get(((number - 1) % done.max(1)) as usize);
                    again.ok_or("stripes that were never begun")?.colour.clone()
                }
                named => named.map(str::to_owned),
            };
            self.worked.rows.push(Row { colour, stitches });
        }
        Ok(())
    }

    fn rounds(&mut self, label: &Label<'_>, work: &str, total: u32) -> Result<(), String> {
        if !self.joined {
            return Err("a round on a band that is no ring".into());
        }
        let mut done = self.worked.rounds.len() as u32;
        if label.from != done + 1 {
            return Err(format!("round {} after round {done}", label.from));
        }
        while done < label.to {
            let below = match self.worked.rounds.last() {
                None => Below::RowEnds(self.worked.rows.len() as u32),
                Some(round) => Below::Stitches(round.stitches()),
            };
            let round = Round { colour: label.colour.map(str::to_owned), steps: work_round(work, self.words, below)? };
            if round.stitches() != total {
                return Err(format!("leaves {}", round.stitches()));
            }
            self.worked.rounds.push(round);
            done += 1;
        }
        Ok(())
    }

    fn last(&mut self, work: &str) -> Result<(), String> {
        let gathered =
            work.strip_prefix("fasten off, gather ").and_then(|rest| rest.strip_suffix('.')).ok_or("no such closing")?;
        let gathered = plural(gathered, "st")?;
        let left = self.worked.rounds.last().map_or(0, Round::stitches);
        if gathered != left || self.worked.gathered > 0 {
            return Err(format!("{left} are left"));
        }
        self.worked.gathered = gathered;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const HAT: &str = "A cap\nWritten in US crochet terms: single crochet (sc) here is what UK patterns call double crochet (dc).\n\
        Foundation, indigo: ch 4.\nRow 1, indigo: sc in 2nd ch from hook and in each ch across. (3)\n\
        Row 2, weld: ch 1, turn, sc in back loop of each st across. (3)\n\
        Rows 3–7, in the same stripes: ch 1, turn, sc in back loop of each st across. (3)\n\
        Row 8, weld: ch 1, turn, sc through back loop of each st and the foundation edge together across. (3)\n\
        Work sc in every row end: one each.\n\
        Round 1, indigo: [sc in each of next 3 row ends, 2 sc in next row end] × 2. (10)\n\
        Rounds 2–4, indigo: sc in each st around. (10)\nRound 5, weld: sc, [sc2tog, sc] × 2, sc2tog, sc. (7)\n\
        Last: fasten off, gather 7 sts.\n";

    #[test]
    fn a_pattern_is_worked_stitch_by_stitch() {
        let worked = work(HAT).unwrap();
        let colours: Vec<&str> = worked.rows.iter().filter_map(|row| row.colour.as_deref()).collect();
        assert_eq!(colours, ["indigo", "weld", "indigo", "weld", "indigo", "weld", "indigo", "weld"]);
        let rounds: Vec<(u32, u32)> = worked.rounds.iter().map(|r| (r.stitches(), r.decreases())).collect();
        assert_eq!(rounds, [(10, 0), (10, 0), (10, 0), (10, 0), (7, 3)]);
        assert_eq!(worked.gathered, 7);
        let uk = HAT.replace("sc2tog", "dc2tog").replace("sc", "dc").replace("US", "UK");
        assert_eq!(work(&uk).unwrap(), worked);
    }

    /// Every small damage to the text is noticed, and the damaged line is quoted.
    #[test]
    fn a_damaged_pattern_cannot_be_worked() {
        for (sound, damaged) in [
            ("ch 4.", "ch 5."),
            ("× 2, sc2tog", "× 3, sc2tog"),
            ("(7)", "(8)"),
            ("sc, [sc2tog, sc]", "2 sc, [sc2tog, sc]"),
            ("[sc2tog, sc]", "[sc2tog, 1 sc]"),
            ("[sc2tog, sc]", "[sc2tog, dc]"),
            ("[sc2tog, sc]", "[sc2tog, sc"),
            ("[sc2tog, sc]", "[sc2tog; sc]"),
            ("[sc2tog, sc]", "[[sc2tog, sc]"),
            ("Rounds 2–4", "Rounds 2–5"),
            ("Rounds 2–4", "Rounds 3–4"),
            ("Rows 3–7", "Rows 3–6"),
            ("Rows 3–7", "Rows 7–3"),
            ("2 sc in next row end", "2 sc in next st"),
            ("in each st around", "in each row end around"),
            ("sc in each of next 3 row ends", "sc in each of next 3 row end"),
            ("sc in each of next 3 row ends", "3 sc"),
            ("sc in each of next 3 row ends", "skip 3 row ends"),
            ("through back loop of each st and the foundation edge together", "in back loop of each st"),
            ("gather 7 sts", "gather 8 sts"),
        ] {
            assert!(HAT.contains(sound), "{sound}");
            let fault = work(&HAT.replacen(sound, damaged, 1)).expect_err(damaged);
            let quoted = HAT.replacen(sound, damaged, 1).lines().any(|line| line == fault.line);
            assert!(quoted && fault.to_string().contains(&fault.why), "{fault}");
        }
        assert!(work(&HAT.replace("Written in US", "Written in")).is_err());
        assert!(work(&HAT.replace("Last: fasten off, gather 7 sts.\n", "")).is_err());
    }
}
