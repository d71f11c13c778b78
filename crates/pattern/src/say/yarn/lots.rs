//! Dye lots: what differs in shade is seen side by side.

use hatwright_sizing::{Buy, YarnLength};

/// What holds for every colour.
pub const ONE_LOT: &str = "Take all balls of a colour from one dye lot.";

/// What to do about lots of one colour; `None` where [`ONE_LOT`] is all there is to say. `lots` are those of the balls that are owned.
///
/// `Indigo: look for lot 4711, which you own. If there is none, …`
pub fn lot_advice(buy: &Buy, colour: &str, lots: &[&str]) -> Option<String> {
    let lots: Vec<&str> = lots.iter().map(|lot| lot.trim()).filter(|lot| !lot.is_empty()).collect();
    let owns = buy.owned > YarnLength::default();
    match *lots {
        _ if !owns => None,
        [] | [_] if buy.balls == 0 => None,
        [] => Some([colour, ": take one of your own balls along: new ones may differ in shade. ", APART].concat()),
        [lot] => Some([colour, ": look for lot ", lot, ", which you own. If there is none: ", APART_LOW].concat()),
        _ => Some([colour, ": your balls are of lots ", &lots.join(" and "), ", which may differ in shade. ", APART].concat()),
    }
}

const APART: &str = "Keep each lot to a part of its own, such as the band, or change balls every round where they meet.";
const APART_LOW: &str = "keep each lot to a part of its own, such as the band, or change balls every round where they meet.";

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{Count, HatSpec, plan, shop};

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
}
