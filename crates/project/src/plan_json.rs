//! A plan as JSON, for people who script.
//!
//! [`PlanFile`] is the whole of it. Its form is stable: fields may come to it, but none changes its meaning without [`PlanFile::form`]
//! rising. It is told in English whatever language is spoken, but for names that a person gave and sentences of refusal.
//!
//! - Lengths are millimetres (`_mm`), yarn is metres (`_m`), shares are of 1, ages are years; all to two decimals or four (shares).
//! - Colours are places in `colours`, from 0; rows, rounds and their labels count from 1, the last one included.
//! - What is called by a word (`Single`, `Crown`) has the word that a saved hat has for it.
//!
//! ```json
//! {
//!   "hatwright": "plan", "form": 1, "planner": 3, "name": "Rowing club, junior cap", "style": "Fitted", "begun": "Band",
//!   "way": "Spiral", "hand": "Right",
//!   "colours": [{"name": "Indigo", "hex": "#34516f", "yarn": "Boathouse wool", "lot": ""}, …],
//!   "sizes": [{
//!     "name": "4 years", "head_mm": 497.64, "refused": null,
//!     "hat": {
//!       "stitches": 56, "rows": 56, "girth_mm": 466.67, …,
//!       "parts": [{"kind": "Band", "fabric": "SingleBack", "lines": [
//!         {"label": "Foundation", "first": null, "last": null, "colour": 0, "ops": [{"op": "FoundationChain", "count": 11}], "total": 11, …},
//!         …]}, …],
//!       "rounds": [{"number": 1, "before": 56, "after": 56, "kind": "PickUp", "zone": "Body", "colour": 0, …}, …],
//!       "yarn": [{"colour": 0, "length_m": 68.21, …}, …]
//!     }
//!   }, …]
//! }
//! ```

mod made;
mod ops;

pub use made::{PlanFit, PlanGauge, PlanHat, PlanLine, PlanPart, PlanRound, PlanTop, PlanTopper, PlanYarn};
pub use ops::{PlanAt, PlanOp};

use crate::{ColourName, Hand, Project};
use hatwright_pattern::say;
use hatwright_pattern::written::{Pattern, write};
use hatwright_sizing::{Begun, Hat, HatSpec, Head, PLANNER, Style, Way, head_size, plan};
use made::millimetres;
use serde::{Deserialize, Serialize};

/// A hat's plan in all the sizes of its pattern.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanFile {
    /// What this is: `plan`.
    pub hatwright: String,
    /// The form of the file: 1.
    pub form: u32,
    /// The planner's version.
    pub planner: u32,
    /// The hat's name.
    pub name: String,
    /// Which kind of hat.
    pub style: Style,
    /// Where the work begins.
    pub begun: Begun,
    /// How rounds follow one another.
    pub way: Way,
    /// Which hand holds the hook: a left-handed round runs the other way.
    pub hand: Hand,
    /// Its colours.
    pub colours: Vec<ColourName>,
    /// The hat itself, and then the other sizes in the order in which they were chosen.
    pub sizes: Vec<PlanSize>,
}

/// A size: either `hat` or `refused` is there.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlanSize {
    /// What it is called.
    pub name: String,
    /// Girth of the head.
    pub head_mm: f64,
    /// The hat for that head.
    pub hat: Option<PlanHat>,
    /// Why there is none, as a sentence.
    pub refused: Option<String>,
}

/// A plan as indented JSON: of the hat that `hat` and `written` are of, and of the project's other sizes, which are planned for it.
///
/// ```
/// use hatwright_pattern::written::write;
/// use hatwright_project::{ProjectId, example, plan_json::{PlanFile, plan_json}};
/// let project = example(ProjectId::from_bits(1));
/// let hat = hatwright_sizing::plan(&project.spec).unwrap();
/// let text = plan_json(&project, &hat, &write(&hat, &project.spec));
/// let read: PlanFile = serde_json::from_str(&text).unwrap();
/// let cap = read.sizes[0].hat.as_ref().unwrap();
/// assert_eq!((cap.stitches, cap.rounds.len()), (hat.stitches().get(), hat.rounds.len()));
/// ```
pub fn plan_json(project: &Project, hat: &Hat, written: &Pattern) -> String {
    serde_json::to_string_pretty(&plan_file(project, hat, written)).unwrap_or_default()
}

/// The same before it is text.
pub fn plan_file(project: &Project, hat: &Hat, written: &Pattern) -> PlanFile {
    let of = |name: &str, head: &Head, hat: Result<PlanHat, String>| {
        let (hat, refused) = match hat {
            Ok(hat) => (Some(hat), None),
            Err(why) => (None, Some(why)),
        };
        PlanSize { name: name.to_owned(), head_mm: millimetres(head_size(head).girth), hat, refused }
    };
    let units = project.units.figures();
    let planned = |spec: &HatSpec| match plan(spec) {
        Ok(hat) => Ok(PlanHat::of(&hat, &write(&hat, spec))),
        Err(refusal) => Err(say::refusal(&refusal, units)),
    };
    let all = project.every_size();
    let sizes = all.iter().enumerate().map(|(at, size)| {
        let made = if at == 0 { Ok(PlanHat::of(hat, written)) } else { planned(&size.spec) };
        of(&size.name, &size.spec.head, made)
    });
    let sizes = sizes.collect();
    PlanFile {
        hatwright: "plan".to_owned(),
        form: 1,
        planner: PLANNER,
        name: project.name.clone(),
        style: hat.style,
        begun: hat.begun,
        way: project.spec.goes(),
        hand: project.hand,
        colours: project.colours.clone(),
        sizes,
    }
}
