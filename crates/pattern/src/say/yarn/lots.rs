//! Dye lots: what differs in shade is seen side by side.

use hatwright_sizing::{Buy, YarnLength};
use hatwright_words::yarn as words;

/// What holds for every colour: all its balls are to be of one dye lot.
pub fn one_lot() -> &'static str {
    words::one_lot()
}

/// What to do about lots of one colour; `None` where [`one_lot`] is all there is to say. `lots` are those of the balls that are owned.
///
/// `Indigo: look for lot 4711, which you own. If there is none, …`
pub fn lot_advice(buy: &Buy, colour: &str, lots: &[&str]) -> Option<String> {
    let lots: Vec<&str> = lots.iter().map(|lot| lot.trim()).filter(|lot| !lot.is_empty()).collect();
    let owns = buy.owned > YarnLength::default();
    match *lots {
        _ if !owns => None,
        [] | [_] if buy.balls == 0 => None,
        [] => Some(words::own_ball(colour)),
        [lot] => Some(words::look_for_lot(colour, lot)),
        _ => Some(words::own_lots(colour, &and(&lots))),
    }
}

/// Things in a row: `4711 and 4712`.
pub(super) fn and<T: AsRef<str>>(all: &[T]) -> String {
    let mut all = all.iter().map(AsRef::as_ref);
    let first = all.next().unwrap_or_default().to_owned();
    all.fold(first, |told, next| words::and(&told, next))
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{Count, HatSpec, plan, shop};
    use hatwright_words::{Language, in_language};

    #[test]
    fn lots_that_may_differ_are_told() {
        let told = |owned: i32, lots: &[&str]| {
            let mut spec = HatSpec::default();
            spec.balls[0].owned = Count::whole(owned);
            lot_advice(&shop(&plan(&spec).unwrap(), &spec).lines[0], "Indigo", lots)
        };
        assert_eq!((told(0, &[]), told(0, &["4"]), told(5, &["4"]), told(5, &[" "])), (None, None, None, None));
        assert!(told(1, &[]).unwrap().starts_with("Indigo: take one of your own balls along"));
        assert!(told(1, &["4"]).unwrap().starts_with("Indigo: look for lot 4, which you own."));
        let both = told(5, &["4", "", "7"]).unwrap();
        assert!(both.starts_with("Indigo: your balls are of lots 4 and 7, ") && both.ends_with("where they meet."));
    }

    #[test]
    fn lots_are_told_in_spanish() {
        let mut spec = HatSpec::default();
        spec.balls[0].owned = Count::whole(1);
        let buy = shop(&plan(&spec).unwrap(), &spec).lines[0];
        in_language(Language::Spanish, || {
            assert!(
                lot_advice(&buy, "Añil", &["4", "7"])
                    .unwrap()
                    .starts_with("Añil: tus ovillos son de los lotes 4 y 7, que pueden")
            );
            assert_eq!(one_lot(), "Compra todos los ovillos de un color del mismo baño de tinte.");
        });
    }
}
