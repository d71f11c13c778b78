//! The shelf, rule by rule.

use super::id;
use crate::storage::{Memory, SETTINGS_KEY, gone_key, id_of_gone_key, id_of_key, key};
use crate::{
    Paper, Project, ProjectId, Settings, Shelf, ShelfError, Store, StoreError, Terms, Units, Unreadable, example, open, to_json,
};
use core::cell::Cell;
use hatwright_sizing::Ratio;

const NEWER: &str = r#"{"hatwright":"hat","schema":9,"brim":"wide"}"#;

#[test]
fn what_was_saved_is_listed_and_loaded() {
    let store = Memory::default();
    let shelf = Shelf::new(&store);
    store.put("theme", "dark").unwrap();
    store.put(SETTINGS_KEY, "{}").unwrap();
    let mut hats = ["capnumber3", "capnumber1", "capnumber2"].map(|text| hat(text, "Cap"));
    hats[0].name = "Brim".to_owned();
    for hat in &mut hats {
        shelf.save(hat).unwrap();
        assert_eq!(hat.revision, 1);
        assert_eq!(shelf.load(&hat.id).as_ref(), Ok(&*hat));
    }
    let listing = shelf.list().unwrap();
    let order: Vec<&str> = listing.projects.iter().map(|line| line.id.as_str()).collect();
    assert_eq!(order, ["capnumber3", "capnumber1", "capnumber2"], "by name, then by id");
    assert_eq!((listing.gone.len(), listing.set_aside.len()), (0, 0));
    assert_eq!(shelf.load(&id("capnumber4")), Err(ShelfError::Absent));
}

#[test]
fn an_older_window_overwrites_nothing() {
    let store = Memory::default();
    let shelf = Shelf::new(&store);
    let mut first = hat("clubcap01", "Cap");
    shelf.save(&mut first).unwrap();
    let mut second = shelf.load(&first.id).unwrap();
    first.spec.ease = Ratio::of(0.05);
    shelf.save(&mut first).unwrap();
    second.spec.ease = Ratio::of(0.01);
    let before = second.clone();
    assert_eq!(shelf.save(&mut second), Err(ShelfError::Conflict { kept: 2, ours: 1 }));
    assert_eq!(second, before, "what is on screen is untouched");
    assert_eq!(shelf.load(&first.id), Ok(first));
}

#[test]
fn a_revision_that_the_storage_lost_is_written_again() {
    let store = Memory::default();
    let shelf = Shelf::new(&store);
    let mut ours = Project { revision: 7, ..hat("clubcap01", "Cap") };
    let mut flushed = hat("clubcap01", "Cap");
    shelf.save(&mut flushed).unwrap();
    shelf.save(&mut ours).unwrap();
    assert_eq!(shelf.load(&ours.id).unwrap().revision, 8);
}

#[test]
fn what_cannot_be_read_is_never_touched() {
    let whole = to_json(&hat("clubcap01", "Cap"));
    let texts = [NEWER, "", &whole[..whole.len() / 2], "null", &to_json(&hat("clubcap02", "Another's")), "not a hat"];
    for text in texts {
        let store = Memory::default();
        let shelf = Shelf::new(&store);
        let mut mine = Project { revision: 99, ..hat("clubcap01", "Cap") };
        for place in [key(&mine.id), gone_key(&mine.id)] {
            store.put(&place, text).unwrap();
        }
        assert!(matches!(shelf.save(&mut mine), Err(ShelfError::WouldHarm(_))));
        assert_eq!(shelf.add(&mut mine), Err(ShelfError::Taken));
        assert!(matches!(shelf.load(&mine.id), Err(ShelfError::Unreadable(_))));
        assert!(matches!(shelf.rename(&mine.id, "Cap", 1), Err(ShelfError::Unreadable(_))));
        assert!(matches!(shelf.copy(&mine.id, id("clubcap09"), "Cap", 1), Err(ShelfError::Unreadable(_))));
        assert!(matches!(shelf.delete(&mine.id), Err(ShelfError::WouldHarm(_))));
        assert!(matches!(shelf.restore(&mine.id), Err(ShelfError::WouldHarm(_))));
        assert!(matches!(shelf.forget(&mine.id), Err(ShelfError::WouldHarm(_))));
        let listing = shelf.list().unwrap();
        assert_eq!((listing.projects.len(), listing.gone.len()), (0, 0));
        let aside: Vec<&str> = listing.set_aside.iter().map(|(place, _)| place.as_str()).collect();
        assert_eq!(aside, [gone_key(&mine.id), key(&mine.id)]);
        for place in aside {
            assert_eq!(store.get(place).unwrap().as_deref(), Some(text));
        }
    }
}

#[test]
fn a_readable_hat_does_not_replace_an_unreadable_deleted_one() {
    let store = Memory::default();
    let shelf = Shelf::new(&store);
    let mut mine = hat("clubcap01", "Cap");
    shelf.save(&mut mine).unwrap();
    store.put(&gone_key(&mine.id), NEWER).unwrap();
    assert_eq!(shelf.delete(&mine.id), Err(ShelfError::WouldHarm(Unreadable::Newer { schema: 9 })));
    assert_eq!(shelf.load(&mine.id), Ok(mine));
}

#[test]
fn a_deleted_hat_is_listed_though_its_place_holds_what_cannot_be_read() {
    let store = Memory::default();
    let shelf = Shelf::new(&store);
    let mut mine = hat("clubcap01", "Cap");
    shelf.save(&mut mine).unwrap();
    shelf.delete(&mine.id).unwrap();
    store.put(&key(&mine.id), NEWER).unwrap();
    let listing = shelf.list().unwrap();
    assert_eq!((listing.gone.len(), listing.set_aside.len()), (1, 1));
    assert_eq!(shelf.restore(&mine.id), Err(ShelfError::Taken));
}

#[test]
fn deleted_hats_come_back() {
    let store = Memory::default();
    let shelf = Shelf::new(&store);
    let mut mine = hat("clubcap01", "Cap");
    shelf.save(&mut mine).unwrap();
    shelf.delete(&mine.id).unwrap();
    assert_eq!(shelf.load(&mine.id), Err(ShelfError::Absent));
    assert_eq!(shelf.delete(&mine.id), Err(ShelfError::Absent));
    let listing = shelf.list().unwrap();
    assert_eq!((listing.projects.len(), listing.gone.len()), (0, 1));
    assert_eq!(shelf.save(&mut mine), Err(ShelfError::Deleted), "another window does not bring it back by itself");
    assert_eq!(shelf.add(&mut mine), Err(ShelfError::Taken));
    assert_eq!(shelf.restore(&mine.id).as_ref(), Ok(&mine));
    assert_eq!(shelf.load(&mine.id).as_ref(), Ok(&mine));
    assert_eq!(shelf.restore(&mine.id), Err(ShelfError::Absent));
    assert_eq!(shelf.forget(&mine.id), Err(ShelfError::Absent), "only a deleted hat can be dropped");
    shelf.save(&mut mine).unwrap();
    shelf.delete(&mine.id).unwrap();
    shelf.forget(&mine.id).unwrap();
    assert_eq!(store.keys().unwrap(), Vec::<String>::new());
}

#[test]
fn copies_and_new_names() {
    let store = Memory::default();
    let shelf = Shelf::new(&store);
    let mut mine = hat("clubcap01", "Cap");
    shelf.save(&mut mine).unwrap();
    let renamed = shelf.rename(&mine.id, "Cap,\nsecond eight", 5).unwrap();
    assert_eq!((renamed.name.as_str(), renamed.revision, renamed.changed_ms), ("Cap, second eight", 2, 5));
    assert_eq!(shelf.load(&mine.id), Ok(renamed.clone()));
    let copy = shelf.copy(&mine.id, id("clubcap02"), "Copy", 6).unwrap();
    let expected = Project { id: id("clubcap02"), name: "Copy".to_owned(), revision: 1, changed_ms: 6, ..renamed.clone() };
    assert_eq!(copy, expected);
    assert_eq!(shelf.load(&copy.id), Ok(expected));
    assert_eq!(shelf.copy(&mine.id, copy.id, "Copy", 7), Err(ShelfError::Taken));
    assert_eq!(shelf.copy(&id("clubcap07"), id("clubcap08"), "Copy", 7), Err(ShelfError::Absent));
    assert_eq!(shelf.load(&mine.id), Ok(renamed));
}

#[test]
fn a_full_storage_is_said_and_loses_nothing() {
    let store = Memory::default();
    let shelf = Shelf::new(&store);
    let mut mine = hat("clubcap01", "Cap");
    shelf.save(&mut mine).unwrap();
    let kept = mine.clone();
    store.set_room(store.used());
    mine.notes = "Much longer than before".to_owned();
    assert_eq!(shelf.save(&mut mine), Err(ShelfError::Store(StoreError::Full)));
    assert_eq!((mine.revision, mine.notes.as_str()), (1, "Much longer than before"));
    assert_eq!(shelf.load(&mine.id).as_ref(), Ok(&kept));
    assert_eq!(shelf.copy(&mine.id, id("clubcap02"), "Copy", 1), Err(ShelfError::Store(StoreError::Full)));
    shelf.delete(&mine.id).expect("there is no room for two, but for one");
    assert_eq!(shelf.restore(&mine.id), Ok(kept));
    store.set_room(0);
    assert_eq!(shelf.delete(&mine.id), Err(ShelfError::Adrift(store_text(&mine))));
}

fn store_text(mine: &Project) -> String {
    to_json(&Project { notes: String::new(), ..mine.clone() })
}

#[test]
fn a_hat_that_could_not_be_opened_again_is_not_saved() {
    let store = Memory::default();
    let shelf = Shelf::new(&store);
    let mut mine = hat("clubcap01", "Cap");
    shelf.save(&mut mine).unwrap();
    let kept = mine.clone();
    mine.spec.ease = Ratio::of(4.0);
    assert!(matches!(shelf.save(&mut mine), Err(ShelfError::Unsound(_))));
    mine = Project { revision: u64::MAX, ..kept.clone() };
    assert!(matches!(shelf.save(&mut mine), Err(ShelfError::Unsound(_))));
    assert_eq!(shelf.load(&mine.id), Ok(kept));
}

#[test]
fn settings_never_fail() {
    let store = Memory::default();
    let shelf = Shelf::new(&store);
    assert_eq!(shelf.settings(), Settings::default());
    let list = vec![(id("clubcap01"), 3), (id("clubcap02"), 1)];
    let (language, paper) = (Some("es".to_owned()), Some(Paper::Letter));
    let settings = Settings { open: Some(id("clubcap01")), units: Units::Inches, terms: Terms::Uk, list, language, paper };
    shelf.put_settings(&settings).unwrap();
    assert_eq!(shelf.settings(), settings);
    for text in ["", "null", "[1]", "{\"open\":7}", "{\"units\":\"Cubits\"}", "\u{0}"] {
        store.put(SETTINGS_KEY, text).unwrap();
        assert_eq!(shelf.settings(), Settings::default(), "{text}");
    }
}

/// Settings of before there were lists, and lists that somebody else wrote.
#[test]
fn a_list_is_read_entry_by_entry() {
    let read = |list: &str| Settings::parse(&format!(r#"{{"open":"clubcap01","units":"Inches","terms":"Uk"{list}}}"#));
    let (language, paper) = (None, None);
    let old = Settings { open: Some(id("clubcap01")), units: Units::Inches, terms: Terms::Uk, list: Vec::new(), language, paper };
    for nothing in ["", r#","list":null"#, r#","list":7"#, r#","list":{"clubcap01":3}"#, r#","list":["clubcap01",3]"#] {
        assert_eq!(read(nothing), old, "{nothing}");
    }
    let odd = r#","list":[["clubcap01",0],["Cap",2],["clubcap02",1000],["clubcap03",-1],["clubcap02",4],["clubcap04",12]]"#;
    let list = vec![(id("clubcap01"), 1), (id("clubcap02"), 99), (id("clubcap04"), 12)];
    assert_eq!(read(odd), Settings { list, ..old });
}

/// Settings of before there were languages and papers, and what cannot be one.
#[test]
fn a_language_and_a_paper_are_read_for_themselves() {
    let read = |more: &str| Settings::parse(&format!(r#"{{"units":"Both"{more}}}"#));
    let units = Units::Both;
    assert_eq!(read(""), Settings { units, ..Settings::default() });
    for tag in ["es", "es-MX", "zh-Hant-TW", "x"] {
        let language = Some(tag.to_owned());
        assert_eq!(
            read(&format!(r#","language":"{tag}","paper":"Letter""#)),
            Settings { units, language, paper: Some(Paper::Letter), ..Settings::default() }
        );
    }
    for none in [r#""""#, r#""e s""#, r#""es_MX""#, r#""español""#, r#""abcdefghijklmnopq""#, "7", "null", r#"["es"]"#] {
        assert_eq!(read(&format!(r#","language":{none},"paper":"A5""#)), Settings { units, ..Settings::default() }, "{none}");
    }
}

#[test]
fn keys_name_their_hats() {
    let mine = id("clubcap01");
    assert_eq!(id_of_key(&key(&mine)), Some(mine.clone()));
    assert_eq!(id_of_gone_key(&gone_key(&mine)), Some(mine.clone()));
    for other in [gone_key(&mine), SETTINGS_KEY.to_owned(), "hatwright.project.".to_owned(), "hatwright.project.Cap".to_owned()] {
        assert_eq!(id_of_key(&other), None, "{other}");
    }
    let store = Memory::default();
    store.put("hatwright.project.Cap", &to_json(&hat("clubcap01", "Cap"))).unwrap();
    assert_eq!(Shelf::new(&store).list().unwrap().set_aside.len(), 1, "a hat under no hat's key is shown, not hidden");
}

/// A storage that fails: as a whole, at removing, or by forgetting what it took.
struct Failing {
    inner: Memory,
    fault: Cell<Fault>,
}

#[derive(Clone, Copy, PartialEq)]
enum Fault {
    None,
    Absent,
    Removing,
    Forgetting,
}

impl Failing {
    fn at(&self, fault: Fault) -> Result<(), StoreError> {
        match self.fault.get() {
            Fault::Absent => Err(StoreError::Absent),
            now if now == fault => Err(StoreError::Other("the disk is gone".to_owned())),
            _ => Ok(()),
        }
    }
}

impl Store for Failing {
    fn get(&self, key: &str) -> Result<Option<String>, StoreError> {
        self.at(Fault::Absent)?;
        self.inner.get(key)
    }

    fn put(&self, key: &str, text: &str) -> Result<(), StoreError> {
        self.at(Fault::Absent)?;
        if self.fault.get() == Fault::Forgetting { Ok(()) } else { self.inner.put(key, text) }
    }

    fn remove(&self, key: &str) -> Result<(), StoreError> {
        self.at(Fault::Removing)?;
        self.inner.remove(key)
    }

    fn keys(&self) -> Result<Vec<String>, StoreError> {
        self.at(Fault::Absent)?;
        self.inner.keys()
    }
}

#[test]
fn a_failing_storage_is_said() {
    let store = Failing { inner: Memory::default(), fault: Cell::new(Fault::None) };
    let shelf = Shelf::new(&store);
    let mut mine = hat("clubcap01", "Cap");
    shelf.save(&mut mine).unwrap();
    store.fault.set(Fault::Forgetting);
    assert_eq!(shelf.save(&mut mine), Err(ShelfError::NotKept));
    assert_eq!(mine.revision, 1);
    store.fault.set(Fault::Absent);
    let absent = ShelfError::Store(StoreError::Absent);
    assert_eq!(shelf.save(&mut mine), Err(absent.clone()));
    assert_eq!(shelf.list(), Err(absent.clone()));
    assert_eq!(shelf.delete(&mine.id), Err(absent));
    assert_eq!(shelf.settings(), Settings::default());
    store.fault.set(Fault::None);
    assert_eq!(shelf.load(&mine.id), Ok(mine));
}

#[test]
fn an_interrupted_move_leaves_one_hat() {
    let store = Failing { inner: Memory::default(), fault: Cell::new(Fault::None) };
    let shelf = Shelf::new(&store);
    let mut mine = hat("clubcap01", "Cap");
    shelf.save(&mut mine).unwrap();
    store.fault.set(Fault::Removing);
    let error = shelf.delete(&mine.id).unwrap_err();
    assert!(error.to_string().contains("the disk is gone"), "{error}");
    store.fault.set(Fault::None);
    let listing = shelf.list().unwrap();
    assert_eq!((listing.projects.len(), listing.gone.len()), (1, 0));
    mine.notes = "Edited after that".to_owned();
    shelf.save(&mut mine).unwrap();
    assert_eq!(shelf.restore(&mine.id), Err(ShelfError::Taken), "the older copy does not come over the newer");
    shelf.delete(&mine.id).unwrap();
    assert_eq!(shelf.restore(&mine.id), Ok(mine));
}

#[test]
fn a_later_revision_among_the_deleted_is_not_replaced() {
    let store = Memory::default();
    let shelf = Shelf::new(&store);
    let mut mine = hat("clubcap01", "Cap");
    shelf.save(&mut mine).unwrap();
    let later = to_json(&Project { revision: 8, ..mine.clone() });
    store.put(&gone_key(&mine.id), &later).unwrap();
    assert_eq!(shelf.delete(&mine.id), Err(ShelfError::Conflict { kept: 8, ours: 1 }));
    assert_eq!(store.get(&gone_key(&mine.id)).unwrap(), Some(later));
}

#[test]
fn every_error_is_a_sentence() {
    let unreadable = open("").unwrap_err();
    let errors = [
        ShelfError::Store(StoreError::Absent),
        ShelfError::Store(StoreError::Full),
        ShelfError::Store(StoreError::Other("no disk".to_owned())),
        ShelfError::Absent,
        ShelfError::Unreadable(unreadable.clone()),
        ShelfError::Conflict { kept: 4, ours: 2 },
        ShelfError::WouldHarm(unreadable.clone()),
        ShelfError::Deleted,
        ShelfError::Taken,
        ShelfError::Unsound(unreadable),
        ShelfError::NotKept,
        ShelfError::Adrift(String::new()),
    ];
    for error in errors {
        let said = error.to_string();
        assert!(said.starts_with(char::is_uppercase) && said.ends_with('.'), "{said}");
        assert!(!said.contains("  ") && !said.contains('{'), "{said}");
    }
}

fn hat(text: &str, name: &str) -> Project {
    let id: ProjectId = id(text);
    Project { name: name.to_owned(), ..example(id) }
}
