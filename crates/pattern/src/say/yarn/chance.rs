//! How often something is enough, in words that never promise more than the number.

use crate::figures::{percent, span, with_unit};
use hatwright_sizing::{Extra, Hat, Ratio, YarnLength, chance_of};
use hatwright_words::{figures, yarn as words};

/// Ways of telling a share, least first: so many times in so many.
const TIMES: [(u32, u32); 22] = [
    (1, 20),
    (1, 10),
    (1, 5),
    (1, 4),
    (1, 3),
    (2, 5),
    (1, 2),
    (3, 5),
    (2, 3),
    (7, 10),
    (3, 4),
    (4, 5),
    (5, 6),
    (9, 10),
    (19, 20),
    (29, 30),
    (39, 40),
    (49, 50),
    (99, 100),
    (199, 200),
    (499, 500),
    (999, 1000),
];

/// A share is a rounded number: one that falls short by so many of its ten-thousandths is still told.
const ROUNDED: i32 = 2;

/// How often something is enough, in words: the number itself, or the next lower one that has words.
///
/// ```
/// use hatwright_pattern::say::chance;
/// use hatwright_sizing::Ratio;
/// assert_eq!(chance(Ratio::of(0.95)), "enough 19 times in 20");
/// assert_eq!(chance(Ratio::of(0.992)), "enough 99 times in 100");
/// assert_eq!(chance(Ratio::of(0.9995)), "practically always enough");
/// ```
pub fn chance(chance: Ratio) -> String {
    let ticks = chance.ticks();
    if ticks > 9_990 {
        return words::always_enough().into();
    }
    let reached = |(times, of): &&(u32, u32)| i64::from(ticks + ROUNDED) * i64::from(*of) >= i64::from(*times) * 10_000;
    match TIMES.iter().rev().find(reached) {
        Some((times, of)) => words::enough(*times, *of),
        None => words::hardly_enough().into(),
    }
}

/// The same with its number: `enough 19 times in 20 (95.3 %)`. What is as good as certain has none.
pub fn chance_full(chance: Ratio) -> String {
    let words = self::chance(chance);
    if chance.ticks() > 9_990 { words } else { figures::beside(&words, &percent(chance)) }
}

/// What is bought over the estimate, and why.
///
/// `The balls hold at least 22 % more than the estimate, to be enough 19 times in 20.`
pub fn margin_sentence(extra: Extra, hat: &Hat) -> String {
    let used = || hat.yarn.iter().filter(|need| need.length > YarnLength::default());
    let over: Vec<i32> = used().map(|need| whole_percent(need.safe.metres() / need.length.metres() - 1.0)).collect();
    let (least, most) = (over.iter().min().copied().unwrap_or(0), over.iter().max().copied().unwrap_or(0));
    let more = if most > least { span(&least.to_string(), &told_percent(most)) } else { told_percent(least) };
    match extra {
        Extra::Chance(chance) => words::margin_by_chance(&more, &self::chance(chance)),
        Extra::Share(_) => {
            let least = used().map(|need| chance_of(need, need.safe)).min().unwrap_or(Ratio::of(1.0));
            words::margin_by_hand(&more, &self::chance(least))
        }
    }
}

/// A share in whole per cent.
pub(super) fn whole_percent(share: f64) -> i32 {
    libm::round(share * 100.0) as i32
}

/// Whole per cent with their sign: `7 %`.
pub(super) fn told_percent(whole: i32) -> String {
    with_unit(whole.to_string(), "%")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::written::sample;
    use hatwright_sizing::{HatSpec, plan};
    use hatwright_words::{Language, in_language};

    #[test]
    fn words_follow_the_number() {
        for (ticks, words) in [
            (0, "hardly ever enough"),
            (1_000, "enough 1 time in 10"),
            (4_998, "enough 1 time in 2"),
            (5_000, "enough 1 time in 2"),
            (6_666, "enough 2 times in 3"),
            (8_000, "enough 4 times in 5"),
            (8_999, "enough 9 times in 10"),
            (9_490, "enough 9 times in 10"),
            (9_499, "enough 19 times in 20"),
            (9_747, "enough 29 times in 30"),
            (9_750, "enough 39 times in 40"),
            (9_899, "enough 99 times in 100"),
            (9_950, "enough 199 times in 200"),
            (9_990, "enough 999 times in 1000"),
            (9_991, "practically always enough"),
            (10_000, "practically always enough"),
        ] {
            assert_eq!(chance(Ratio::from_ticks(ticks)), words, "{ticks}");
        }
    }

    /// The words are a share, and it is not above the number by more than its rounding, nor far below.
    #[test]
    fn words_never_promise_more() {
        let told = |ticks: i32| {
            let words = chance(Ratio::from_ticks(ticks));
            let mut numbers = words.split(' ').filter_map(|word| word.parse::<f64>().ok());
            numbers.next().zip(numbers.next()).map(|(times, of)| times / of * 10_000.0)
        };
        let mut before = 0.0;
        for ticks in 500..=9_990 {
            let share = told(ticks).unwrap();
            assert!(share <= f64::from(ticks + ROUNDED) + 1e-9, "{ticks}: {share}");
            assert!(share >= before && f64::from(ticks) - share < 1_000.0, "{ticks}: {share}");
            before = share;
        }
    }

    #[test]
    fn the_margin_is_told_with_its_reason() {
        let hat = sample::hat();
        assert_eq!(
            margin_sentence(Extra::Chance(Ratio::of(0.95)), &hat),
            "The balls hold at least 20 % more than the estimate, to be enough 19 times in 20."
        );
        let spec = HatSpec { extra: Extra::Share(Ratio::of(0.3)), ..HatSpec::default() };
        assert_eq!(
            margin_sentence(spec.extra, &plan(&spec).unwrap()),
            "The balls hold at least 30 % more than the estimate, as was set by hand: enough 49 times in 50."
        );
        assert_eq!(chance_full(Ratio::of(0.953)), "enough 19 times in 20 (95.3 %)");
        assert_eq!(chance_full(Ratio::of(1.0)), "practically always enough");
    }

    #[test]
    fn chances_are_told_in_spanish() {
        in_language(Language::Spanish, || {
            assert_eq!(chance_full(Ratio::of(0.953)), "alcanza 19 de cada 20 veces (95,3\u{a0}%)");
            assert_eq!(chance(Ratio::of(0.1)), "alcanza 1 de cada 10 veces");
            assert_eq!(
                margin_sentence(Extra::Chance(Ratio::of(0.95)), &sample::hat()),
                "El margen de los ovillos sobre lo estimado es de 20\u{a0}% como mínimo: así alcanza 19 de cada 20 veces."
            );
        });
    }
}
