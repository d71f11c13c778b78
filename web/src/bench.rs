//! The state of the page: one hat being decided, what was typed, and the last hat that could be planned.

use hatwright_pattern::figures;
use hatwright_pattern::say;
use hatwright_project::{Project, Terms, Units, example};
use hatwright_sizing::{Hat, HatSpec, Head, Quantity, Refusal, Swatch, plan};
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
    /// The head by the way that is not chosen.
    pub head: Option<Head>,
    /// The counted swatch while there is a yarn weight, or the other way round.
    pub swatch: Option<Swatch>,
    /// The band's own swatch.
    pub band_swatch: Option<hatwright_sizing::BandSwatch>,
    /// The pom-pom.
    pub pom_pom: Option<hatwright_sizing::PomPom>,
    /// Wedges.
    pub wedges: Option<u32>,
    /// Measured stretches of body and band.
    pub stretches: [Option<hatwright_sizing::Ratio>; 2],
    /// The gathered count.
    pub gathered: Option<hatwright_sizing::Stitches>,
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
    /// Counts changes that a person made to the document; 0 while it only was opened.
    pub edits: RwSignal<u64>,
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
            edits: RwSignal::new(0),
        }
    }

    /// Puts another hat on the bench; nothing of the one before stays.
    pub fn open(&self, project: Project) {
        self.typed.update(BTreeMap::clear);
        self.aside.set_value(Aside::default());
        self.edits.set(0);
        self.project.set(project);
    }

    /// Changes the document, by a person's hand.
    pub fn change(&self, with: impl FnOnce(&mut Project)) {
        self.project.update(with);
        // What was typed into a field that is gone goes with it.
        let gone = |(q, index): &Place| self.project.with_untracked(|p| p.spec.number(*q, *index).is_none());
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
            if now.is_some_and(|now| now != ticks) {
                self.shape(|spec| {
                    spec.set_number(q, index, ticks);
                });
            }
        };
        let error = match figures::parse_for(q, &text, units) {
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
    }

    /// A field was left: a number that was taken is shown as the document has it.
    pub fn settle(&self, place: Place) {
        let taken = self.typed.with_untracked(|all| all.get(&place).is_some_and(|t| t.error.is_none()));
        if taken {
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
            let units = self.figure_units();
            let here = place.1 == 0;
            self.shown.with(|s| s.refusal.as_ref().filter(|r| here && r.field() == place.0).map(|r| say::refusal(r, units)))
        })
    }
}

/// The pattern crate's units.
pub fn figure_units(units: Units) -> figures::Units {
    match units {
        Units::Centimetres => figures::Units::Centimetres,
        Units::Inches => figures::Units::Inches,
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
