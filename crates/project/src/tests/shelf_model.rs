//! The shelf against a model, under any sequence of what two windows, a newer version and a full disk do to it: nothing that was
//! saved is ever lost or changed but by its own later save.

use crate::storage::{Memory, gone_key, key};
use crate::{Project, ProjectId, Shelf, ShelfError, Store, StoreError, example};
use proptest::collection::vec;
use proptest::prelude::*;
use std::collections::BTreeMap;

#[derive(Clone, Debug)]
enum Step {
    Open { window: usize, hat: u64 },
    Edit { window: usize, notes: usize },
    Save { window: usize },
    Add { window: usize },
    Rename { hat: u64 },
    Copy { hat: u64, to: u64 },
    Delete { hat: u64 },
    Restore { hat: u64 },
    Foreign { hat: u64, gone: bool },
    Room { spare: usize },
}

const HATS: u64 = 4;

fn step() -> impl Strategy<Value = Step> {
    let window = 0..2_usize;
    let hat = 0..HATS;
    prop_oneof![
        4 => (window.clone(), hat.clone()).prop_map(|(window, hat)| Step::Open { window, hat }),
        4 => (window.clone(), 0..400_usize).prop_map(|(window, notes)| Step::Edit { window, notes }),
        6 => window.clone().prop_map(|window| Step::Save { window }),
        1 => window.prop_map(|window| Step::Add { window }),
        1 => hat.clone().prop_map(|hat| Step::Rename { hat }),
        1 => (hat.clone(), 0..HATS).prop_map(|(hat, to)| Step::Copy { hat, to }),
        3 => hat.clone().prop_map(|hat| Step::Delete { hat }),
        3 => hat.clone().prop_map(|hat| Step::Restore { hat }),
        1 => (hat, any::<bool>()).prop_map(|(hat, gone)| Step::Foreign { hat, gone }),
        1 => prop_oneof![Just(0), 0..3_000_usize, Just(1_000_000)].prop_map(|spare| Step::Room { spare }),
    ]
}

/// What must be there.
#[derive(Default)]
struct Model {
    live: BTreeMap<ProjectId, Project>,
    gone: BTreeMap<ProjectId, Project>,
    foreign: BTreeMap<String, String>,
}

impl Model {
    fn knows(&self, id: &ProjectId) -> bool {
        self.live.contains_key(id)
            || self.gone.contains_key(id)
            || [key(id), gone_key(id)].iter().any(|k| self.foreign.contains_key(k))
    }

    /// Takes a save that succeeded; it must have had the right to.
    fn saved(&mut self, before: &Project, after: &Project) {
        assert!(!self.gone.contains_key(&after.id), "saved over a deletion");
        assert!(!self.foreign.contains_key(&key(&after.id)), "saved over what cannot be read");
        if let Some(kept) = self.live.get(&after.id) {
            assert!(kept.revision <= before.revision, "saved over a later revision");
        }
        assert_eq!(after.revision, before.revision + 1);
        self.live.insert(after.id.clone(), after.clone());
    }
}

proptest! {
    #[test]
    fn nothing_that_was_saved_is_lost(steps in vec(step(), 1..60)) {
        let store = Memory::default();
        let shelf = Shelf::new(&store);
        let mut model = Model::default();
        let mut windows = [example(ProjectId::from_bits(0)), example(ProjectId::from_bits(1))];
        for (time, step) in (0_u64..).zip(steps) {
            let said = take(&step, time, &shelf, &store, &mut model, &mut windows);
            prop_assert!(!matches!(said, Err(ShelfError::Adrift(_) | ShelfError::NotKept | ShelfError::Unsound(_))), "{:?}", said);
            let listing = shelf.list().unwrap();
            prop_assert_eq!(listing.projects.len(), model.live.len());
            prop_assert_eq!(listing.gone.len(), model.gone.len());
            prop_assert_eq!(listing.set_aside.len(), model.foreign.len());
            for (id, hat) in &model.live {
                prop_assert_eq!(&shelf.load(id).unwrap(), hat);
            }
            for (key, text) in &model.foreign {
                prop_assert_eq!(store.get(key), Ok(Some(text.clone())));
            }
        }
        store.set_room(usize::MAX);
        for (id, hat) in model.gone {
            if !model.foreign.contains_key(&key(&id)) {
                prop_assert_eq!(shelf.restore(&id), Ok(hat));
            }
        }
    }
}

fn take(
    step: &Step,
    time: u64,
    shelf: &Shelf<'_>,
    store: &Memory,
    model: &mut Model,
    windows: &mut [Project; 2],
) -> Result<(), ShelfError> {
    match *step {
        Step::Open { window, hat } => {
            let id = ProjectId::from_bits(hat);
            windows[window] = shelf.load(&id).unwrap_or_else(|_| example(id));
        }
        Step::Edit { window, notes } => windows[window].notes = "m".repeat(notes),
        Step::Save { window } => {
            let before = windows[window].clone();
            let said = shelf.save(&mut windows[window]);
            if said.is_err() {
                assert_eq!(before, windows[window]);
                return said;
            }
            model.saved(&before, &windows[window]);
        }
        Step::Add { window } => {
            let before = windows[window].clone();
            let known = model.knows(&before.id);
            shelf.add(&mut windows[window])?;
            assert!(!known, "added over another hat");
            model.saved(&before, &windows[window]);
        }
        Step::Rename { hat } => {
            let id = ProjectId::from_bits(hat);
            let renamed = shelf.rename(&id, &format!("Cap {time}"), time)?;
            let before = model.live[&id].clone();
            model.saved(&before, &renamed);
        }
        Step::Copy { hat, to } => {
            let id = ProjectId::from_bits(to);
            let known = model.knows(&id);
            let copy = shelf.copy(&ProjectId::from_bits(hat), id, "Copy", time)?;
            assert!(!known, "copied over another hat");
            model.saved(&Project { revision: 0, ..copy.clone() }, &copy);
        }
        Step::Delete { hat } => {
            let id = ProjectId::from_bits(hat);
            shelf.delete(&id)?;
            assert!(!model.foreign.contains_key(&gone_key(&id)), "deleted over what cannot be read");
            let deleted = model.live.remove(&id).expect("only what is kept can be deleted");
            assert!(model.gone.insert(id, deleted).is_none());
        }
        Step::Restore { hat } => {
            let id = ProjectId::from_bits(hat);
            let restored = shelf.restore(&id)?;
            assert!(!model.foreign.contains_key(&key(&id)), "restored over what cannot be read");
            assert_eq!(model.gone.remove(&id).as_ref(), Some(&restored));
            assert!(model.live.insert(id, restored).is_none());
        }
        Step::Foreign { hat, gone } => {
            let id = ProjectId::from_bits(hat);
            let place = if gone { gone_key(&id) } else { key(&id) };
            // A newer version of the page puts its own there; it too overwrites no one.
            if store.get(&place)?.is_none() {
                let text = format!(r#"{{"hatwright":"hat","schema":99,"time":{time}}}"#);
                match store.put(&place, &text) {
                    Ok(()) => drop(model.foreign.insert(place, text)),
                    Err(error) => assert_eq!(error, StoreError::Full),
                }
            }
        }
        Step::Room { spare } => store.set_room(store.used() + spare),
    }
    Ok(())
}
