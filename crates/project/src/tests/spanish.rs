//! What is said in Spanish.

use super::id;
use crate::storage::Memory;
use crate::{
    BadLink, Project, ProjectId, SAMPLES, SayBreach, Shelf, ShelfError, StoreError, Unreadable, example, from_link, open,
    samples, to_json, to_link,
};
use hatwright_sizing::{Breach, Length, Quantity};
use hatwright_words::{Language, in_language};

fn spanish<T>(say: impl FnOnce() -> T) -> T {
    in_language(Language::Spanish, say)
}

#[test]
fn numbers_have_a_comma() {
    let said = |q, ticks| spanish(|| SayBreach(Breach::OutOfRange(q, ticks)).to_string());
    assert_eq!(
        said(Quantity::HeadGirth, 80_550),
        "el dato «contorno de la cabeza» es 80,55 cm, y debería estar entre 22 y 75 cm"
    );
    assert_eq!(said(Quantity::Hook, 2_600), "el dato «aguja de ganchillo» es 26 mm, y debería estar entre 0,5 y 25 mm");
    assert_eq!(said(Quantity::Ease, -50), "el dato «holgura» es −0,5 %, y debería estar entre 0 y 30 %");
}

#[test]
fn errors_are_whole_sentences() {
    let mut absurd = example(id("rowingclub01"));
    absurd.spec.band.fold = Length::from_cm(-1.0);
    let (json, link) = (to_json(&absurd), to_link(&absurd));
    assert_eq!(
        spanish(|| open(&json).unwrap_err().to_string()),
        "Este gorro está dañado: el dato «doblez» es −1 cm, y debería estar entre 0 y 40 cm. Se queda como está y no se le ha \
         quitado nada."
    );
    assert_eq!(
        spanish(|| from_link(&link).unwrap_err().to_string()),
        "Este enlace está entero, pero no existe tal gorro: el dato «doblez» es −1 cm, y debería estar entre 0 y 40 cm."
    );
    let newer = r#"{"hatwright":"hat","schema":9}"#;
    assert_eq!(
        spanish(|| open(newer).unwrap_err().to_string()),
        "Este gorro lo guardó un Hatwright más nuevo (formato 9; esta página conoce hasta el 4). Se queda como está: recarga la página \
         para tener la última versión y ábrelo de nuevo."
    );
    let store = Memory::default();
    let shelf = Shelf::new(&store);
    let mut hat = example(id("rowingclub01"));
    shelf.save(&mut hat).unwrap();
    shelf.save(&mut hat).unwrap();
    hat.revision = 1;
    let conflict = shelf.save(&mut hat).unwrap_err();
    assert_eq!(
        spanish(|| conflict.to_string()),
        "Otra ventana guardó este gorro entretanto (cambio 2, frente al 1 de aquí). No se ha sobrescrito nada: guarda el tuyo como \
         copia, o abre el otro."
    );
}

/// Every error in both languages, none of them the same.
#[test]
fn every_error_has_its_own_words_in_each_language() {
    let all: Vec<Box<dyn Fn() -> String>> = vec![
        Box::new(|| BadLink::Empty.to_string()),
        Box::new(|| BadLink::NotOurs.to_string()),
        Box::new(|| BadLink::Damaged.to_string()),
        Box::new(|| BadLink::Newer.to_string()),
        Box::new(|| BadLink::OutOfRange(Breach::Dates).to_string()),
        Box::new(|| Unreadable::NotJson.to_string()),
        Box::new(|| Unreadable::NotOurs.to_string()),
        Box::new(|| Unreadable::Newer { schema: 9 }.to_string()),
        Box::new(|| StoreError::Absent.to_string()),
        Box::new(|| StoreError::Full.to_string()),
        Box::new(|| StoreError::Other("?".to_owned()).to_string()),
        Box::new(|| ShelfError::Absent.to_string()),
        Box::new(|| ShelfError::Deleted.to_string()),
        Box::new(|| ShelfError::Taken.to_string()),
        Box::new(|| ShelfError::NotKept.to_string()),
        Box::new(|| ShelfError::Adrift(String::new()).to_string()),
        Box::new(|| ShelfError::WouldHarm(Unreadable::NotJson).to_string()),
        Box::new(|| ShelfError::Unsound(Unreadable::NotJson).to_string()),
    ];
    for say in all {
        let (english, spanish) = (say(), spanish(&say));
        assert_ne!(english, spanish);
        assert!(spanish.ends_with('.') && !spanish.contains("  ") && !spanish.contains('{'), "{spanish}");
    }
    for breach in [Breach::WrongCount, Breach::NoSuchColour(hatwright_sizing::Colour(2)), Breach::Dates, Breach::UnfitFabric] {
        assert_ne!(SayBreach(breach).to_string(), spanish(|| SayBreach(breach).to_string()));
    }
}

/// The club's hats are named in the language in which they are made, and are the same hats but for the words.
#[test]
fn the_clubs_hats_have_spanish_names() {
    let all = || {
        let ids: [ProjectId; SAMPLES] = core::array::from_fn(|i| ProjectId::from_bits(i as u64));
        [vec![example(id("rowingclub01"))], samples(ids).to_vec()].concat()
    };
    let (english, spanish) = (all(), spanish(all));
    assert_eq!(spanish[0].name, "Club de remo, gorro infantil");
    assert_eq!(spanish[0].colours.iter().map(|c| &*c.name).collect::<Vec<_>>(), ["Índigo", "Gualda"]);
    for (one, other) in english.into_iter().zip(&spanish) {
        assert_ne!(one.name, other.name);
        assert_eq!(other.clone().tidy(), *other);
        let mut colours = one.colours.clone();
        colours.iter_mut().zip(&other.colours).for_each(|(colour, told)| colour.name.clone_from(&told.name));
        assert_eq!(&Project { name: other.name.clone(), colours, ..one }, other);
    }
    assert!(spanish.iter().all(|hat| hat.name.starts_with("Club de remo, ")));
}
