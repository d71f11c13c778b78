//! What is said around the lines of each part.

mod band;
mod checks;
mod colours;
mod crown;
mod edge;
mod flaps;
mod sideways;
mod way;

use super::about::About;
use super::pattern::{Label, Part, PartKind, Pattern};
use super::terms::Words;
use crate::figures::{Units, amount, length};
use hatwright_sizing::{BandKind, Begun, Hat, HatSpec, Length, Loops, Style, Unit};
use hatwright_words::making as say;

pub(super) use band::hides_its_outside;
pub(super) use way::named;

/// Everything that the words of a part rest on.
#[derive(Clone, Copy)]
pub(super) struct Job<'a> {
    pub pattern: &'a Pattern,
    pub hat: &'a Hat,
    pub spec: &'a HatSpec,
    pub about: &'a About<'a>,
}

impl Job<'_> {
    pub fn words(&self) -> Words {
        self.about.terms.words()
    }

    pub const fn units(&self) -> Units {
        self.about.units
    }

    pub fn length(&self, l: Length) -> String {
        length(l, self.about.units)
    }

    pub fn begun_at_crown(&self) -> bool {
        self.hat.begun == Begun::Crown
    }

    /// The first part that is worked in rounds: what holds for all of them is said there.
    fn opens_rounds(&self, part: &Part) -> bool {
        let first = self.pattern.parts.iter().find(|p| rounds_of(p).is_some());
        first.is_some_and(|p| core::ptr::eq(p, part))
    }

    /// The last part that is worked in rounds.
    fn ends_rounds(&self, part: &Part) -> bool {
        let last = self.pattern.parts.iter().rfind(|p| rounds_of(p).is_some());
        last.is_some_and(|p| core::ptr::eq(p, part))
    }

    /// The part that is worked before this one.
    fn part_before(&self, part: &Part) -> Option<&Part> {
        let at = self.pattern.parts.iter().position(|p| core::ptr::eq(p, part))?;
        at.checked_sub(1).and_then(|before| self.pattern.parts.get(before))
    }

    /// The part that is worked after this one.
    fn part_after(&self, part: &Part) -> Option<&Part> {
        let at = self.pattern.parts.iter().position(|p| core::ptr::eq(p, part))?;
        self.pattern.parts.get(at + 1)
    }

    /// Which hook the band is worked with: `with the 5 mm hook`, or with that of its swatch; `None` where one that is not known does for all.
    fn band_hook(&self) -> Option<String> {
        Self::with_hook(self.spec.band.hook).or_else(|| self.told_apart().then(|| say::with_band_hook().into()))
    }

    /// The same for everything but the band.
    fn body_hook(&self) -> Option<String> {
        Self::with_hook(self.spec.hook).or_else(|| self.told_apart().then(|| say::with_body_hook().into()))
    }

    /// Whether band and body have hooks to be told apart though one or both are not known: one that is, or a swatch for each.
    fn told_apart(&self) -> bool {
        let two = self.hat.band != BandKind::None && self.hat.style != Style::EarWarmer;
        two && (self.spec.hook.is_some() || self.spec.band.hook.is_some() || !self.hat.gauge.band_assumed)
    }

    fn with_hook(hook: Option<Length>) -> Option<String> {
        hook.map(|hook| say::with_hook(&amount(hook.ticks(), Unit::Hook, Units::Centimetres)))
    }
}

pub(super) fn before(part: &Part, job: &Job<'_>) -> Vec<String> {
    let in_rounds = rounds_of(part).is_some();
    let mut list = match part.kind {
        PartKind::BandAround => band::around(part, job),
        PartKind::Brim => edge::brim(part, job),
        _ if in_rounds => edge::opening(part, job),
        _ => Vec::new(),
    };
    if job.opens_rounds(part) {
        list.extend(way::rounds(part, job));
        list.extend(colours::rounds(job));
    } else if in_rounds {
        list.extend(way::taller(part, job));
    }
    let introduced = !list.is_empty() || part.kind == PartKind::Brim;
    list.extend(loops(part, job).filter(|_| introduced));
    list.extend(match part.kind {
        PartKind::Band => band::sideways(part, job),
        PartKind::Joining => band::joining(job),
        PartKind::Body => edge::widened(part, job).into_iter().collect(),
        PartKind::Under => crown::under(job),
        PartKind::Crown => crown::crown(part, job),
        PartKind::Tail => crown::tail(part, job).into_iter().collect(),
        PartKind::Panel => sideways::panel(part, job),
        PartKind::Seam => sideways::seam(job),
        PartKind::Flaps => flaps::flaps(job),
        PartKind::BandAround | PartKind::Brim | PartKind::Closing => Vec::new(),
    });
    list.extend(stripes_again(part));
    list
}

pub(super) fn after(part: &Part, job: &Job<'_>) -> Vec<String> {
    let mut list: Vec<String> = checks::check(part, job).into_iter().collect();
    if part.kind == PartKind::Closing {
        list.extend(super::finishing::closing(job));
    }
    let next = job.part_after(part);
    list.extend(next.and_then(|next| way::lower(part, next, job)));
    // What is drawn up needs no end of its own.
    if job.ends_rounds(part) && next.is_none_or(|next| next.kind != PartKind::Closing) {
        list.push(way::end(part, job));
    }
    match part.kind {
        PartKind::Band if job.hat.style == Style::EarWarmer => list.push(say::warmer_done().into()),
        PartKind::Joining => list.push(say::joined_inside().into()),
        _ => {}
    }
    list
}

/// First and last round of a part.
fn rounds_of(part: &Part) -> Option<(u32, u32)> {
    let mut numbers =
        part.lines.iter().filter_map(|line| if let Label::Round(from, to) = line.label { Some((from, to)) } else { None });
    let (from, to) = numbers.next()?;
    Some((from, numbers.next_back().map_or(to, |(_, to)| to)))
}

/// Which loops the hook goes under, in a part that is worked in rounds: both are said once, and again where they follow others.
fn loops(part: &Part, job: &Job<'_>) -> Option<String> {
    rounds_of(part)?;
    let own = part.fabric.row().loops;
    let before = job.part_before(part).filter(|before| rounds_of(before).is_some()).map(|before| before.fabric.row().loops);
    match own {
        Loops::Back => Some(say::loops_back().into()),
        Loops::Front => Some(say::loops_front().into()),
        Loops::Both => (before != Some(own)).then(|| say::loops_both().into()),
        Loops::Posts => None,
    }
}

/// Where rounds of many stripes are told by their repeat: which rounds come again.
fn stripes_again(part: &Part) -> Option<String> {
    let again = part.lines.iter().find(|line| line.colour.is_none())?;
    let Label::Round(first, last) = again.label else { return None };
    let plain = |line: &super::Line| line.kind == Some(hatwright_sizing::RoundKind::Plain) && line.total == again.total;
    let alike = |line: &&super::Line| matches!(line.label, Label::Round(_, to) if to < first) && plain(line);
    let run = part.lines.iter().rev().skip_while(|line| line.label != again.label).skip(1).take_while(|line| alike(line));
    let begins = run.filter_map(|line| if let Label::Round(from, _) = line.label { Some(from) } else { None }).min()?;
    Some(say::stripes_rounds(begins, first - 1, last))
}

const fn half(l: Length) -> Length {
    Length::from_ticks(l.ticks() / 2)
}

fn times(l: Length, count: u32) -> Length {
    Length::from_ticks((i64::from(l.ticks()) * i64::from(count)).min(i64::from(i32::MAX)) as i32)
}
