//! The state of the page: one hat being decided, what was typed, and the last hat that could be planned.

use hatwright_pattern::figures;
use hatwright_pattern::say;
use hatwright_project::{Project, Terms, Units, example};
use hatwright_sizing::{
    Breach, Build, Colour, Extra, Fabric, Hat, HatSpec, Head, Length, Quantity, Refusal, Rounds, Stitches, Swatch, Topper,
    Unravelled, WeighedSwatch, head_size, plan,
};
use hatwright_words::{Language, spoken};
use leptos::prelude::*;
use std::collections::BTreeMap;

/// A number's place on the page.
pub type Place = (Quantity, usize);

/// What stands in a field while it differs from the document: being typed, or not a number that can be used.
#[derive(Clone, Debug, PartialEq)]
pub struct Typed {
    /// As it was typed.
    pub text: String,
    /// What is wrong with it.
    pub error: Option<String>,
    /// The document's number when the typing began: half a number on the way to one that cannot be used is not what was meant.
    pub before: Option<i32>,
}

/// What stands in the field for a colour's number, and the colours that the hat had then and before that.
#[derive(Clone)]
pub struct TypedHex {
    /// As it was typed.
    pub text: String,
    /// The hat's colour after it was typed: another one since, chosen by eye, is what counts.
    pub then: String,
    /// The hat's colour when the typing began.
    pub before: String,
}

/// What the page shows: the last hat that could be planned, and what it was planned from.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    /// Its input.
    pub spec: HatSpec,
    /// The hat.
    pub hat: Hat,
    /// Why the input on the page is not this hat's.
    pub refusal: Option<Refusal>,
}

/// Answers that a choice puts aside, so that going back finds them as they were.
#[derive(Clone, Default)]
pub struct Aside {
    /// The head by each way of knowing it.
    pub heads: [Option<Head>; 3],
    /// The percentile.
    pub build: Option<Build>,
    /// The body's fabric of a hat in rounds, and of one worked sideways.
    pub fabrics: [Option<Fabric>; 2],
    /// The band's stitches and rounds where some of it may be folded up, and where none is.
    pub bands: [Option<(Stitches, Rounds)>; 2],
    /// The band's fabric, worked sideways and around.
    pub band_fabrics: [Option<Fabric>; 2],
    /// The counted swatch while there is a yarn weight, or the other way round.
    pub swatch: Option<Swatch>,
    /// The band's own swatch.
    pub band_swatch: Option<hatwright_sizing::BandSwatch>,
    /// The pom-pom, and the tassel.
    pub toppers: [Option<Topper>; 2],
    /// What is bought over the estimate, by chance and by share.
    pub extras: [Option<Extra>; 2],
    /// A swatch on the scale.
    pub weighed: Option<WeighedSwatch>,
    /// Stitches that were unravelled.
    pub unravelled: Option<Unravelled>,
    /// Wedges.
    pub wedges: Option<u32>,
    /// Measured stretches of body and band.
    pub stretches: [Option<hatwright_sizing::Ratio>; 2],
    /// The gathered count.
    pub gathered: Option<hatwright_sizing::Stitches>,
}

/// A measurement of yarn that is being typed: nothing is made up for the half that is not typed yet.
#[derive(Clone, Copy, Default, PartialEq)]
pub struct Draft {
    /// Whether its fields are open.
    pub open: bool,
    /// The colour that was weighed.
    pub colour: Colour,
    /// Whether it is of the band's fabric.
    pub band: bool,
}

/// The page's state, one copyable handle.
#[derive(Clone, Copy)]
pub struct Bench {
    /// The document.
    pub project: RwSignal<Project>,
    /// Fields whose text is not the document's.
    pub typed: RwSignal<BTreeMap<Place, Typed>>,
    /// The last good hat.
    pub shown: Memo<Shown>,
    /// Units of the document.
    pub units: Memo<Units>,
    /// Terms of the document.
    pub terms: Memo<Terms>,
    /// Answers put aside.
    pub aside: StoredValue<Aside>,
    /// The swatch that is weighed, and the stitches that are unravelled, before all of their numbers are there.
    pub drafts: RwSignal<[Draft; 2]>,
    /// Counts changes that a person made to the document; 0 while it only was opened.
    pub edits: RwSignal<u64>,
    /// What stands in the fields for a colour's number, by the colour's place.
    pub hexes: RwSignal<BTreeMap<usize, TypedHex>>,
    /// The language that the page was last drawn in.
    pub language: RwSignal<Language>,
}

impl Bench {
    /// A bench with a hat on it.
    pub fn new(project: Project) -> Self {
        let project = RwSignal::new(project);
        let spec = Memo::new(move |_| project.with(|p| p.spec.clone()));
        let shown = Memo::new(move |last: Option<&Shown>| spec.with(|spec| show(spec, last)));
        Self {
            project,
            typed: RwSignal::default(),
            shown,
            units: Memo::new(move |_| project.with(|p| p.units)),
            terms: Memo::new(move |_| project.with(|p| p.terms)),
            aside: StoredValue::new(Aside::default()),
            drafts: RwSignal::default(),
            edits: RwSignal::new(0),
            hexes: RwSignal::default(),
            language: RwSignal::new(spoken()),
        }
    }

    /// Puts another hat on the bench; nothing of the one before stays.
    pub fn open(&self, project: Project) {
        self.typed.update(BTreeMap::clear);
        self.hexes.update(BTreeMap::clear);
        self.aside.set_value(Aside::default());
        self.drafts.set(Default::default());
        self.edits.set(0);
        self.project.set(project);
    }

    /// Changes the document, by a person's hand.
    pub fn change(&self, with: impl FnOnce(&mut Project)) {
        self.project.update(|p| {
            let before = head_size(&p.spec.head).girth;
            with(p);
            p.spec.shape = p.spec.shape.followed(before, head_size(&p.spec.head).girth);
        });
        // What was typed into a field that is gone goes with it.
        let drafted = |q| draft_of(q).is_some_and(|which| self.drafts.with_untracked(|drafts| drafts[which].open));
        let gone = |(q, index): &Place| {
            let there =
                |s: &HatSpec| s.asks(*q) && (drafted(*q) || is_blank_there(s, *q, *index) || s.number(*q, *index).is_some());
            !self.project.with_untracked(|p| there(&p.spec))
        };
        if self.typed.with_untracked(|all| all.keys().any(gone)) {
            self.typed.update(|all| all.retain(|place, _| !gone(place)));
        }
        self.edits.update(|n| *n += 1);
    }

    /// Changes the hat's numbers.
    pub fn shape(&self, with: impl FnOnce(&mut HatSpec)) {
        self.change(|p| with(&mut p.spec));
    }

    /// The figure units of the document.
    pub fn figure_units(&self) -> figures::Units {
        figure_units(self.units.get())
    }

    /// Takes what was typed into a field: a number that can be used goes into the document, anything else stays in the field with
    /// its sentence.
    pub fn take(&self, place: Place, text: String) {
        let (q, index) = place;
        let units = figure_units(self.units.get_untracked());
        let now = self.project.with_untracked(|p| p.spec.number(q, index));
        let before = self.typed.with_untracked(|all| all.get(&place).map_or(now, |typed| typed.before));
        let put = |ticks: i32| {
            if may_be_blank(q) && now.is_none() {
                self.shape(|spec| fill(spec, q, index, Some(ticks)));
            } else if now.is_some_and(|now| now != ticks) {
                self.shape(|spec| {
                    spec.set_number(q, index, ticks);
                });
            }
        };
        let error = match figures::parse_for(q, &text, units) {
            Err(_) if may_be_blank(q) && text.trim().is_empty() => {
                if now.is_some() {
                    self.shape(|spec| fill(spec, q, index, None));
                }
                None
            }
            Err(misread) => Some(say::misread(q, &misread, &text, units)),
            Ok(ticks) if !q.row().holds(ticks) => Some(say::out_of_range(q, ticks, units)),
            Ok(ticks) => {
                put(ticks);
                None
            }
        };
        if let (Some(_), Some(before)) = (&error, before) {
            put(before);
        }
        self.typed.update(|all| {
            all.insert(place, Typed { text, error, before });
        });
        if draft_of(q).is_some() {
            self.complete();
        }
    }

    /// Reads again what could not be used, after something that its sentence is told by has changed: the units, or the language.
    pub fn reread(&self) {
        for (place, typed) in self.typed.get_untracked() {
            if typed.error.is_some() {
                self.take(place, typed.text);
            }
        }
    }

    /// Takes a measurement of yarn whose numbers are all typed by now.
    fn complete(&self) {
        let units = figure_units(self.units.get_untracked());
        let typed = |q: Quantity| {
            let text = self.typed.with_untracked(|all| all.get(&(q, 0)).filter(|t| t.error.is_none()).map(|t| t.text.clone()))?;
            figures::parse_for(q, &text, units).ok().filter(|ticks| q.row().holds(*ticks))
        };
        let used = self.project.with_untracked(|p| p.spec.yarn_use);
        let drafts = self.drafts.get_untracked();
        let stitches = |ticks: i32| Stitches::new(ticks.unsigned_abs());
        if used.weighed.is_none()
            && let (Some(count), Some(grams)) = (typed(Quantity::WeighedStitches), typed(Quantity::WeighedGrams))
        {
            let Draft { colour, band, .. } = drafts[0];
            let grams = hatwright_sizing::Mass::from_ticks(grams);
            self.shape(|s| s.yarn_use.weighed = Some(WeighedSwatch { colour, band, stitches: stitches(count), grams }));
        }
        if used.unravelled.is_none()
            && let (Some(count), Some(length)) = (typed(Quantity::UnravelledStitches), typed(Quantity::UnravelledLength))
        {
            let (band, length) = (drafts[1].band, Length::from_ticks(length));
            self.shape(|s| s.yarn_use.unravelled = Some(Unravelled { band, stitches: stitches(count), length }));
        }
    }

    /// A field was left: a number that was taken is shown as the document has it.
    pub fn settle(&self, place: Place) {
        let taken = self.typed.with_untracked(|all| all.get(&place).is_some_and(|t| t.error.is_none()));
        // Half a measurement stands nowhere but in its field.
        let held = draft_of(place.0).is_none() || self.project.with_untracked(|p| p.spec.number(place.0, place.1).is_some());
        if taken && held {
            self.typed.update(|all| {
                all.remove(&place);
            });
        }
    }

    /// Forgets what stands in fields that are gone, such as those of a stripe that was removed.
    pub fn forget(&self, gone: &[Quantity]) {
        self.typed.update(|all| all.retain(|(q, _), _| !gone.contains(q)));
    }

    /// The text of a field.
    pub fn text(&self, place: Place) -> String {
        let typed = self.typed.with(|all| all.get(&place).map(|t| t.text.clone()));
        let units = self.figure_units();
        typed.unwrap_or_else(|| {
            let ticks = self.project.with(|p| p.spec.number(place.0, place.1));
            ticks.map(|t| figures::show(t, place.0.row().unit, units)).unwrap_or_default()
        })
    }

    /// The sentence beside a field: what is wrong with what was typed, or why the hat cannot be planned, if that belongs here.
    pub fn trouble(&self, place: Place) -> Option<String> {
        let typed = self.typed.with(|all| all.get(&place).and_then(|t| t.error.clone()));
        typed.or_else(|| {
            let here = |seat| place.1 == 0 && seat == Seat::Number(place.0);
            self.refused().filter(|(seat, _)| here(*seat)).map(|(_, why)| why)
        })
    }

    /// Why the hat cannot be planned, and where that belongs.
    pub fn refused(&self) -> Option<(Seat, String)> {
        let units = self.figure_units();
        self.shown.with(|s| {
            let refusal = s.refusal.as_ref()?;
            Some((self.project.with(|p| seat(refusal, &p.spec)), say::refusal(refusal, units)))
        })
    }
}

/// What a refusal stands beside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seat {
    /// A number's field.
    Number(Quantity),
    /// The two days of a head by dates.
    Days,
    /// The list of fabrics.
    Fabric,
}

impl Seat {
    /// The id of the element that can be gone to.
    pub fn id(self) -> &'static str {
        match self {
            Self::Number(q) => q.row().key,
            Self::Days => "born",
            Self::Fabric => "fabric",
        }
    }
}

/// Where a refusal belongs on a page that asks only what matters: beside its own field, or the next to it that there is.
fn seat(refusal: &Refusal, spec: &HatSpec) -> Seat {
    use Quantity as Q;
    match refusal {
        Refusal::Breach(Breach::Dates) => return Seat::Days,
        Refusal::Breach(Breach::UnfitFabric) => return Seat::Fabric,
        _ => {}
    }
    let there = |q: &Q| spec.asks(*q) && spec.number(*q, 0).is_some();
    let next = match refusal.field() {
        Q::StripeRows => [Q::StripeRows, Q::StripeRounds],
        Q::BandHeight => [Q::BandHeight, Q::BandRounds],
        Q::BandSwatchStitches => [Q::BandSwatchStitches, Q::SwatchStitches],
        Q::BandSwatchRows => [Q::BandSwatchRows, Q::SwatchRounds],
        own => [own, own],
    };
    Seat::Number(next.into_iter().find(there).unwrap_or(Q::Ease))
}

/// Whether nothing is an answer: an empty field of these is no mistake.
pub fn may_be_blank(q: Quantity) -> bool {
    use Quantity as Q;
    matches!(q, Q::OverTop | Q::Hook | Q::BandHook | Q::BallGrams | Q::BallPrice | Q::HatGrams | Q::InsteadGrams)
}

/// Whether a field that may be blank is on the page: those of a ball go with the ball.
fn is_blank_there(spec: &HatSpec, q: Quantity, index: usize) -> bool {
    may_be_blank(q)
        && match q {
            Quantity::BallGrams | Quantity::BallPrice => index < spec.balls.len(),
            Quantity::InsteadGrams => spec.instead.is_some(),
            _ => true,
        }
}

/// Which measurement of yarn a number belongs to: 0 for a swatch on the scale, 1 for unravelled stitches.
fn draft_of(q: Quantity) -> Option<usize> {
    match q {
        Quantity::WeighedStitches | Quantity::WeighedGrams => Some(0),
        Quantity::UnravelledStitches | Quantity::UnravelledLength => Some(1),
        _ => None,
    }
}

/// Puts a number, or nothing, where nothing is an answer.
fn fill(spec: &mut HatSpec, q: Quantity, index: usize, ticks: Option<i32>) {
    use hatwright_sizing::{Mass, Money};
    let (length, mass) = (ticks.map(Length::from_ticks), ticks.map(Mass::from_ticks));
    match q {
        Quantity::OverTop => spec.over_top = length,
        Quantity::Hook => spec.hook = length,
        Quantity::BandHook => spec.band.hook = length,
        Quantity::HatGrams => spec.yarn_use.hat = mass,
        Quantity::InsteadGrams => {
            if let Some(instead) = &mut spec.instead {
                instead.grams = mass;
            }
        }
        _ => {
            if let Some(ball) = spec.balls.get_mut(index) {
                match q {
                    Quantity::BallGrams => ball.grams = mass,
                    _ => ball.price = ticks.map(|ticks| Money::from_ticks(ticks.into())),
                }
            }
        }
    }
}

/// The pattern crate's units.
pub fn figure_units(units: Units) -> figures::Units {
    match units {
        Units::Centimetres => figures::Units::Centimetres,
        Units::Inches => figures::Units::Inches,
        Units::Both => figures::Units::Both,
    }
}

fn show(spec: &HatSpec, last: Option<&Shown>) -> Shown {
    let refusal = match plan(spec) {
        Ok(hat) => return Shown { spec: spec.clone(), hat, refusal: None },
        Err(refusal) => refusal,
    };
    if let Some(last) = last {
        return Shown { refusal: Some(refusal), ..last.clone() };
    }
    // A kept hat that this version refuses: the example stands in for it, and the page says why.
    let stand_in = example(hatwright_project::ProjectId::from_bits(0)).spec;
    match plan(&stand_in) {
        Ok(hat) => Shown { spec: stand_in, hat, refusal: Some(refusal) },
        Err(_) => unreachable!("the example is planned in the tests"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{BandKind, Style};

    #[test]
    fn a_refusal_never_stands_beside_a_field_that_is_not_asked_for() {
        use Quantity as Q;
        let mut spec = HatSpec { style: Style::Brimmed, ..HatSpec::default() };
        let stripes = Refusal::Breach(Breach::WrongCount);
        assert_eq!(seat(&stripes, &spec), Seat::Number(Q::StripeRounds));
        spec.style = Style::Fitted;
        assert_eq!(seat(&stripes, &spec), Seat::Number(Q::StripeRows));
        let tall =
            Refusal::BandTooTall { band: hatwright_sizing::BandKind::Sideways, left: Length::ZERO, fold: None, tallest: None };
        assert_eq!(seat(&tall, &spec), Seat::Number(Q::BandHeight));
        spec.band.kind = BandKind::Around;
        assert_eq!(seat(&tall, &spec), Seat::Number(Q::BandRounds));
        assert_eq!(seat(&Refusal::Breach(Breach::Dates), &spec), Seat::Days);
    }
}
