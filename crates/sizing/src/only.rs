//! "I have only this much": the hats that can be made of the yarn that is owned.

mod other;

use crate::instead::is_dropped;
use crate::{Ball, BandKind, Colour, Hat, HatSpec, Length, Quantity, Refusal, Stitches, Style, YarnLength, plan};
use other::{Stripes, all_in, for_head, lower_band};

/// Whether the yarn that is owned is enough, and what could be made of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Only {
    /// Whether the hat as it is fits.
    pub enough: bool,
    /// What each colour lacks of what is safe, in the order of the hat's colours; none where it is enough.
    pub short: Vec<(Colour, YarnLength)>,
    /// Hats that fit, at most one of a kind.
    pub offers: Vec<Offer>,
}

/// A hat for which the yarn that is owned is enough.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// In what it differs from the hat as it is.
    pub kind: OfferKind,
    /// Its decisions: what is taken if it is taken.
    pub spec: HatSpec,
    /// The hat that they make.
    pub hat: Hat,
}

/// In what an offer differs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OfferKind {
    /// For the largest head.
    LargestHead {
        /// Its girth, in whole half centimetres.
        girth: Length,
    },
    /// With the longest tail.
    LongestTail {
        /// Its length, in whole centimetres.
        tail: Length,
    },
    /// With the widest stripes of a colour.
    WidestStripes {
        /// The colour.
        colour: Colour,
    },
    /// Without pom-pom or tassel.
    NoTopper,
    /// With the largest pom-pom or tassel.
    SmallerTopper {
        /// Its size, in whole half centimetres.
        size: Length,
    },
    /// With a lower band.
    LowerBand {
        /// Stitches of its rows, or rounds of a band worked around.
        stitches: Stitches,
    },
    /// All in one colour.
    OneColour {
        /// The colour.
        colour: Colour,
    },
}

impl Ball {
    /// Yarn that is owned of it: two and a half balls of 80 m are 200 m.
    ///
    /// ```
    /// use hatwright_sizing::{Ball, Count, YarnLength};
    /// let ball = Ball { owned: Count::from_ticks(250), ..Ball::of(Count::whole(80)) };
    /// assert_eq!(ball.owned_yarn(), YarnLength::from_metres(200.0));
    /// ```
    pub fn owned_yarn(&self) -> YarnLength {
        YarnLength::from_metres(self.owned.value() * self.metres())
    }
}

/// How many stitches, or rounds, a band is made lower by, at the most.
const MOST_LOWER: usize = 40;

/// How far above the most that was found a larger one is still looked for, and how many that are refused are passed over: a round more or
/// less makes it not quite even.
const NEAR: i32 = 3;

/// The same of a tail, in cm, whose cone has a round more or less besides; and of one in stripes, where what it does not end in takes less.
const NEAR_IN_TAILS: i32 = 12;
const NEAR_IN_STRIPES: i32 = 40;

/// How many are looked at one by one, at the most.
const MOST_FURTHER: i32 = 120;

/// What can be made of the yarn that is owned: balls to be bought count as none.
///
/// A hat fits where each colour that it uses has what is safe at the stated chance or share ([`YarnNeed::safe`](crate::YarnNeed)). Every
/// offer changes one thing and fits; all others of its kind that are larger do not. Where the hat as it is fits, what is left makes a
/// larger head, a longer tail, or wider stripes of the colour that has most to spare; where it does not, all the ways of less are tried:
///
/// - the largest head in half centimetres: measures that were the usual ones of the head follow it, and the way over its top in
///   proportion; counts taken by hand are dropped;
/// - the longest tail of a stocking cap, in whole centimetres (one of stripes may take less than a shorter one: longer ones are looked at
///   up to 40 cm further, and not more than 120 of them);
/// - for each colour that is short, the widest stripes of it in band and body, all in proportion, pairs of rows staying pairs, and no
///   colour losing its last stripe;
/// - no pom-pom or tassel, or the largest in half centimetres;
/// - a band of the fewest stitches less, folded up in proportion;
/// - all in the colour of which most is owned.
///
/// Of a hat that is begun no round is changed, so that only pom-pom or tassel is offered; what is in the work counts as owned.
///
/// Where nothing is owned of a colour that rows or rounds are of, only another colour can do. No more than 400 hats are planned: most
/// often about 30, and 1 ms. A spec that is refused has no hat: nothing is enough, short or offered.
///
/// The example's first colour takes 68.2 m and is safe with 83.4 m. With one ball of 80 m of each, 3.4 m are lacking:
///
/// ```
/// use hatwright_sizing::{Count, HatSpec, OfferKind, only_this_much};
/// let mut spec = HatSpec::default();
/// for ball in &mut spec.balls {
///     ball.owned = Count::whole(1);
/// }
/// let only = only_this_much(&spec);
/// assert!(!only.enough && only.short.len() == 1);
/// assert!((only.short[0].1.metres() - 3.4).abs() < 0.05);
/// assert!(only.offers.iter().any(|offer| offer.kind == OfferKind::NoTopper));
/// ```
pub fn only_this_much(spec: &HatSpec) -> Only {
    let Ok(hat) = plan(spec) else { return Only { enough: false, short: Vec::new(), offers: Vec::new() } };
    search(spec, hat).0
}

/// The answer, and how many hats were planned for it.
fn search(spec: &HatSpec, hat: Hat) -> (Only, u32) {
    let short = lacking(spec, &hat);
    let enough = short.is_empty();
    let mut search = Search { spec, hat, enough, plans: 1, offers: Vec::new() };
    // Of a colour of which there is nothing, no stripe can be made, however narrow.
    let all_there = search.hat.colours().into_iter().all(|colour| owned(spec, colour) > 0);
    let new = spec.kept.is_none();
    if new && all_there {
        search.heads();
        search.tails();
        search.stripes(&short);
    }
    if !enough && all_there {
        search.toppers();
    }
    if !enough && new && all_there {
        search.bands();
    }
    if !enough && new {
        search.colours();
    }
    (Only { enough, short, offers: search.offers }, search.plans)
}

/// What each colour of a hat lacks of what is safe.
fn lacking(spec: &HatSpec, hat: &Hat) -> Vec<(Colour, YarnLength)> {
    let used = hat.yarn.iter().filter(|need| need.length > YarnLength::default());
    let lacks = used.map(|need| (need.colour, need.safe.millimetres() - owned(spec, need.colour)));
    lacks.filter(|(_, lack)| *lack > 0).map(|(colour, lack)| (colour, YarnLength::from_metres(lack as f64 / 1000.0))).collect()
}

/// Millimetres that are owned of a colour.
fn owned(spec: &HatSpec, colour: Colour) -> i64 {
    spec.balls.get(usize::from(colour.0)).map_or(0, |ball| ball.owned_yarn().millimetres())
}

/// How a hat turns out.
enum Tried {
    Fits(Box<(HatSpec, Hat)>),
    TooMuch,
    /// There is no such hat.
    Refused,
}

impl Tried {
    fn fits(self) -> Option<(HatSpec, Hat)> {
        match self {
            Self::Fits(found) => Some(*found),
            _ => None,
        }
    }
}

struct Search<'a> {
    spec: &'a HatSpec,
    /// The hat as it is.
    hat: Hat,
    enough: bool,
    plans: u32,
    offers: Vec<Offer>,
}

impl Search<'_> {
    fn try_out(&mut self, spec: HatSpec) -> Tried {
        self.plans += 1;
        match plan(&spec) {
            Ok(hat) if lacking(&spec, &hat).is_empty() => Tried::Fits(Box::new((spec, hat))),
            Ok(_) | Err(Refusal::TooLong { .. }) => Tried::TooMuch,
            Err(_) => Tried::Refused,
        }
    }

    /// Offers what was found, unless it takes the very yarn that the hat as it is takes: then it is that.
    fn offer(&mut self, kind: OfferKind, found: Option<(HatSpec, Hat)>) {
        let Some((mut spec, mut hat)) = found else { return };
        if hat.yarn_parts == self.hat.yarn_parts {
            return;
        }
        let planned = Ok(hat);
        if is_dropped(&planned) {
            // Counts that do not hold in it are not kept for it.
            spec.chosen = None;
            self.plans += 1;
            let Ok(again) = plan(&spec) else { return };
            hat = again;
        } else {
            let Ok(same) = planned else { return };
            hat = same;
        }
        self.offers.push(Offer { kind, spec, hat });
    }

    fn heads(&mut self) {
        let (from, row) = (self.hat.head.girth, Quantity::HeadGirth.row());
        let half = |girth: i32| girth / 500;
        let all = if self.enough { half(from.ticks()) + 1..=half(row.most) } else { half(row.least)..=half(from.ticks() - 1) };
        let found = all.rev().map(|halves| Length::from_ticks(halves * 500)).find_map(|girth| {
            let found = self.try_out(for_head(self.spec, from, girth)).fits();
            found.map(|found| (girth, found))
        });
        if let Some((girth, found)) = found {
            self.offer(OfferKind::LargestHead { girth }, Some(found));
        }
    }

    fn tails(&mut self) {
        if self.spec.style != Style::Stocking {
            return;
        }
        let (now, row) = (self.spec.shape.tail.ticks(), Quantity::Tail.row());
        let whole = |ticks: i32| ticks / 1000;
        let (least, most) = if self.enough { (whole(now) + 1, whole(row.most)) } else { (whole(row.least), whole(now - 1)) };
        let striped = self.spec.body_stripes.iter().any(|stripe| stripe.colour != self.spec.body_stripes[0].colour);
        let above = if striped { NEAR_IN_STRIPES } else { NEAR_IN_TAILS };
        let found = most_that_fits(least, most, above, |cm| {
            let mut spec = self.spec.clone();
            spec.shape.tail = Length::from_ticks(cm * 1000);
            self.try_out(spec)
        });
        if let Some((spec, hat)) = found {
            self.offer(OfferKind::LongestTail { tail: spec.shape.tail }, Some((spec, hat)));
        }
    }

    fn stripes(&mut self, short: &[(Colour, YarnLength)]) {
        let used = self.hat.colours();
        if used.len() < 2 {
            return;
        }
        let spare = |need: &&crate::YarnNeed| owned(self.spec, need.colour) - need.safe.millimetres();
        // Of equals, the first.
        let most =
            self.hat.yarn.iter().filter(|need| used.contains(&need.colour)).rev().max_by_key(spare).map(|need| need.colour);
        let colours: Vec<Colour> = if self.enough { most.into_iter().collect() } else { short.iter().map(|(c, _)| *c).collect() };
        for colour in colours.into_iter().filter(|colour| used.contains(colour)) {
            let stripes = Stripes::of(self.spec, colour);
            let found = stripes.widths(self.enough).into_iter().find_map(|width| {
                let spec = stripes.scaled(self.spec, width)?;
                self.try_out(spec).fits().filter(|(_, hat)| hat.colours() == used)
            });
            self.offer(OfferKind::WidestStripes { colour }, found);
        }
    }

    fn toppers(&mut self) {
        let Some(topper) = self.spec.wears() else { return };
        let without = self.try_out(HatSpec { topper: None, ..self.spec.clone() }).fits();
        // Where the hat without it does not fit, none with it does.
        let fits = without.is_some();
        self.offer(OfferKind::NoTopper, without);
        if !fits {
            return;
        }
        let half = |ticks: i32| ticks / 500;
        let (least, most) = (half(topper.kind.quantity().row().least), half(topper.size.ticks() - 1));
        let found = most_that_fits(least, most, NEAR, |halves| {
            let topper = Some(topper.sized(Length::from_ticks(halves * 500)));
            self.try_out(HatSpec { topper, ..self.spec.clone() })
        });
        if let Some(size) = found.as_ref().and_then(|(spec, _)| spec.topper).map(|topper| topper.size) {
            self.offer(OfferKind::SmallerTopper { size }, found);
        }
    }

    fn bands(&mut self) {
        let (now, row) = match self.spec.band_kind() {
            BandKind::Sideways => (self.spec.band.height.get(), Quantity::BandHeight.row()),
            BandKind::Around => (self.spec.band.rounds.get(), Quantity::BandRounds.row()),
            BandKind::None => return,
        };
        let mut lower = (row.least.unsigned_abs()..now).rev().take(MOST_LOWER);
        let found = lower.find_map(|count| {
            let found = self.try_out(lower_band(self.spec, now, count)).fits();
            found.map(|found| (count, found))
        });
        if let Some((count, found)) = found {
            self.offer(OfferKind::LowerBand { stitches: Stitches::new(count) }, Some(found));
        }
    }

    fn colours(&mut self) {
        if self.hat.yarn.iter().filter(|need| need.length > YarnLength::default()).count() < 2 {
            return;
        }
        let mut all: Vec<Colour> = (0..self.spec.balls.len()).map(|i| Colour(i as u8)).collect();
        all.sort_by_key(|colour| -owned(self.spec, *colour));
        let found = all.into_iter().find_map(|colour| {
            let found = self.try_out(all_in(self.spec, colour)).fits();
            found.map(|found| (colour, found))
        });
        if let Some((colour, found)) = found {
            self.offer(OfferKind::OneColour { colour }, Some(found));
        }
    }
}

/// The most of a range that fits, where less takes less: by doubled steps, then by halves, then looked at one by one as far as so much
/// above it, since a round more or less makes it not quite so. What is refused is as what comes next after it.
fn most_that_fits(least: i32, most: i32, above: i32, mut try_out: impl FnMut(i32) -> Tried) -> Option<(HatSpec, Hat)> {
    let mut best: Option<(i32, (HatSpec, Hat))> = None;
    let (mut low, mut high, mut step) = (least, most, Some(1));
    while low <= high {
        let at = step.map_or_else(|| i32::midpoint(low, high), |step: i32| (low + step - 1).min(high));
        step = step.map(|step| step * 2);
        let reach = high.min(at + NEAR);
        let mut beside = (at..=reach).map(|at| (at, try_out(at)));
        match beside.find(|(_, tried)| !matches!(tried, Tried::Refused)) {
            Some((at, Tried::Fits(found))) => {
                best = Some((at, *found));
                low = at + 1;
            }
            Some(_) => (high, step) = (at - 1, None),
            None => low = reach + 1,
        }
    }
    let mut next = best.as_ref().map_or(least, |(at, _)| at + 1);
    let mut looks = MOST_FURTHER;
    while next <= most.min(high + above) && looks > 0 {
        let top = most.min(high + above).min(next + looks - 1);
        looks -= top - next + 1;
        let further = (next..=top).rev().find_map(|at| try_out(at).fits().map(|found| (at, found)));
        next = top + 1;
        let Some((at, found)) = further else { break };
        best = Some((at, found));
        high = at;
    }
    best.map(|(_, found)| found)
}

#[cfg(test)]
mod tests;
