//! Links of version 4: the current ones.
//!
//! As version 3, and at the end what there is to tell of the pattern: which hand, which sizes, what its designer says. A hat that is
//! made by one person for another has none of these, and pays one character for that.

use super::v2::Girth;
use super::v3::{Fact, Spec, facts, girth, hat, known, spec};
use super::{Linked, named};
use crate::document::sizes;
use crate::text::{COLOUR, NAME};
use crate::{Designer, Hand, Project, SizeOf, Terms, Units};
use hatwright_sizing::PLANNER;
use serde::{Deserialize, Serialize};

#[derive(Serialize, Deserialize)]
pub(super) struct Link {
    planner: u32,
    name: String,
    units: Units,
    terms: Terms,
    colours: Vec<(String, [u8; 3])>,
    spec: Spec,
    facts: Vec<(u8, Fact)>,
    told: Vec<Told>,
}

/// Something of a pattern that most hats have nothing to say of.
#[derive(PartialEq, Serialize, Deserialize)]
enum Told {
    LeftHand,
    Sizes(Vec<(String, Girth)>),
    Introduction(String),
    Credit(String),
    Edition(String),
    Date(String),
    Tested(String),
    Care(String),
}

impl Link {
    /// A hat's link.
    pub(super) fn of(project: &Project) -> Self {
        Self {
            planner: PLANNER,
            name: NAME.tidy(&project.name),
            units: project.units,
            terms: project.terms,
            colours: project.colours.iter().map(|c| (COLOUR.tidy(&c.name), c.hex.channels())).collect(),
            spec: spec(&project.spec),
            facts: facts(&project.colours, &project.spec.balls),
            told: told(project.hand, sizes::tidy(project.sizes.clone()), project.designer.clone().tidy()),
        }
    }

    /// The hat as it is now; `None` where something stands in no place, twice, or without need.
    pub(super) fn migrate(self) -> Option<Linked> {
        let Self { planner, name, units, terms, colours, spec, facts, told } = self;
        let (colours, spec) = known(named(colours), hat(spec)?, &facts)?;
        let mut linked = Linked::plain(planner, name, (units, terms), colours, spec);
        for one in &told {
            linked.hear(one);
        }
        // One hat has one link.
        let Linked { hand, sizes, designer, .. } = &linked;
        (self::told(*hand, sizes.clone(), designer.clone()) == told).then_some(linked)
    }
}

impl Linked {
    fn hear(&mut self, told: &Told) {
        let designer = &mut self.designer;
        match told {
            Told::LeftHand => self.hand = Hand::Left,
            Told::Sizes(sizes) => {
                self.sizes = sizes.iter().map(|(name, girth)| SizeOf { name: name.clone(), head: girth.head() }).collect();
            }
            Told::Introduction(text) => designer.introduction.clone_from(text),
            Told::Credit(text) => designer.credit.clone_from(text),
            Told::Edition(text) => designer.edition.clone_from(text),
            Told::Date(text) => designer.date.clone_from(text),
            Told::Tested(text) => designer.tested.clone_from(text),
            Told::Care(text) => designer.care.clone_from(text),
        }
    }
}

/// What there is to tell, in order.
fn told(hand: Hand, sizes: Vec<SizeOf>, designer: Designer) -> Vec<Told> {
    let Designer { introduction, credit, edition, date, tested, care } = designer;
    let sizes: Vec<_> = sizes.into_iter().map(|SizeOf { name, head }| (name, girth(&head))).collect();
    let text = |told: fn(String) -> Told, text: String| (!text.is_empty()).then(|| told(text));
    let all = [
        (hand == Hand::Left).then_some(Told::LeftHand),
        (!sizes.is_empty()).then_some(Told::Sizes(sizes)),
        text(Told::Introduction, introduction),
        text(Told::Credit, credit),
        text(Told::Edition, edition),
        text(Told::Date, date),
        text(Told::Tested, tested),
        text(Told::Care, care),
    ];
    all.into_iter().flatten().collect()
}
