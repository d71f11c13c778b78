//! Whom a hat fits, and what other counts do to the fit.

use super::why::counted_as;
use crate::figures::{Units, age, age_span, length, length_span, lengths_apart, percent};
use hatwright_sizing::{FitRow, Growing, Hat, Length, Ratio, Sex, Size};
use hatwright_words::fit as words;

/// Which heads a hat serves, and at which ages.
pub fn fit_sentence(hat: &Hat, units: Units) -> String {
    let heads = words::heads(&length_span(hat.fit.least, hat.fit.most, units));
    let ages = hat.fit.ages.map_or_else(|| words::no_age().into(), |ages| words::ages(&who_is_served(ages)));
    [&*heads, " ", &ages].concat()
}

/// What the numbers make of the ages for which such hats are offered: for the hat as it is, and ribbed throughout.
///
/// That they are offered for 1 to 10 years is common practice, with no published source; it is mentioned only for a hat that a
/// child of those ages may wear.
pub fn ribbed_sentence(hat: &Hat) -> String {
    let spans = |ages: Option<(f64, f64)>| ages.is_some_and(|(from, to)| from < 10.0 && to > 1.0);
    let who = |ages: Option<(f64, f64)>| ages.map_or_else(|| words::nobody().into(), who_is_served);
    let told = words::ribbed(&who(hat.fit.ages), &who(hat.fit.ribbed_ages));
    let offered = spans(hat.fit.ages) || spans(hat.fit.ribbed_ages);
    if offered { [words::offered(), " ", &told].concat() } else { told }
}

/// Of whom 8 in 10 are served: `8 in 10 children from 20 months to 3 years`, `8 in 10 adults`.
pub fn who_is_served((from, to): (f64, f64)) -> String {
    let span = age_span(from, to);
    match () {
        () if from >= 18.0 => words::adults().into(),
        () if to < 2.0 => words::babies(&span),
        () if to < 18.0 => words::children(&span),
        () => words::people(&span),
    }
}

/// A share of heads in whole tenths that are no more than it: `9 in 10`. What is said to be 8 in 10 is so by the sentence of ages too.
///
/// ```
/// use hatwright_pattern::say::in_ten;
/// assert_eq!(in_ten(0.8), "8 in 10");
/// assert_eq!(in_ten(0.79), "7 in 10");
/// assert_eq!(in_ten(0.03), "fewer than 1 in 10");
/// ```
pub fn in_ten(share: f64) -> String {
    // Hardly one in two hundred, on either side: nobody is not said of a share of a survey.
    match share {
        ..0.005 => words::hardly_any().into(),
        0.995.. => words::nearly_all().into(),
        ..0.1 => words::fewer_than_one().into(),
        _ => words::in_ten((share * 10.0 + 1e-9) as u32),
    }
}

/// A row of the table of whom a hat fits: who, and how many of them. `("4 years", "9 in 10")`, `("women", "3 in 10")`.
pub fn fit_row(row: &FitRow) -> (String, String) {
    let who = match (row.years >= 18.0, row.sex) {
        (true, Sex::Female) => words::women().into(),
        (true, Sex::Male) => words::men().into(),
        (true, Sex::Unknown) => words::grown().into(),
        (false, _) => age(row.years),
    };
    (who, in_ten(row.share))
}

/// The count that serves a child for longest, if there is one: `58 stitches: 48.3 cm, from 4 to 8 years instead of to 4 years 5 months.`
///
/// `own` is the hat as the planner sizes it.
pub fn growing_sentence(larger: &Growing, own: &Hat, units: Units) -> String {
    let count = counted_as(larger.chosen.rows, larger.chosen.stitches, own);
    let (girth, ages) = (length(larger.girth, units), age_span(larger.ages.0, larger.ages.1));
    match larger.instead_to {
        // The own hat begins and ends within the month.
        Some(to) if age(to) == age(larger.ages.0) => words::growing_from_then(&count, &girth, &ages),
        Some(to) => words::growing(&count, &girth, &ages, &age(to)),
        None => words::growing_else_few(&count, &girth, &ages),
    }
}

/// What a count does to the fit, against the girth that was asked for, in few enough letters for a phone.
///
/// With 46.3 cm asked for on a head of 49.8 cm, 56 stitches of 46.7 cm are `0.4 cm looser`; 52, which stretch to 47.7 cm, are
/// `too tight: reaches 47.7 cm`; 60, at 50.0 cm, are larger than the head: `loose by 0.2 cm`.
pub fn size_effect(size: &Size, hat: &Hat, units: Units) -> String {
    let (girth, head) = (size.girth.ticks(), hat.head.girth.ticks());
    let against = |ticks: i32| length(Length::from_ticks(ticks.saturating_abs()), units);
    if !size.reaches {
        return words::too_tight(&lengths_apart(size.reach, hat.head.girth, units).0);
    }
    if girth > head {
        return words::loose_by(&lengths_apart(Length::from_ticks(girth - head), Length::ZERO, units).0);
    }
    let more = girth - hat.wanted_girth.ticks();
    let off = against(more);
    match more {
        _ if off == against(0) => words::as_asked().into(),
        ..0 => words::tighter(&off),
        _ => words::looser(&off),
    }
}

/// Another count, with what it does to the fit: `52 stitches, 43.3 cm: reaches only 47.7 cm, too tight for this head`.
pub fn size_line(size: &Size, hat: &Hat, units: Units) -> String {
    let larger = size.girth.ticks() - hat.head.girth.ticks();
    let fit = if !size.reaches {
        words::line_too_tight(&length(size.reach, units))
    } else if larger > 0 {
        words::line_loose(&length(Length::from_ticks(larger), units))
    } else {
        // Practice, no source: 5 to 9 % is usual for plain fabric, 0 to 3 % for a bare or tender head.
        let told = match size.ease.ticks() {
            ..=299 => words::line_relaxed,
            300..=599 => words::line_easy,
            600..=899 => words::line_close,
            _ => words::line_tight,
        };
        told(&percent(Ratio::from_ticks(size.ease.ticks())))
    };
    let (rows, stitches, girth) = (size.rows.get(), size.stitches.get(), length(size.girth, units));
    let line =
        if rows == stitches { words::line(stitches, &girth, &fit) } else { words::line_on_rows(stitches, rows, &girth, &fit) };
    match size.adjustment.get() {
        0 => line,
        n => words::line_adjusted(&line, n),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::written::sample;

    const CM: Units = Units::Centimetres;

    #[test]
    fn neighbours_say_in_short_what_they_cost() {
        let hat = sample::hat();
        let mut close = sample::size(56);
        for (size, text) in [
            (sample::size(48), "too tight: reaches 44.0 cm"),
            (sample::size(52), "too tight: reaches 47.7 cm"),
            (sample::size(56), "0.4 cm looser"),
            (sample::size(59), "2.9 cm looser"),
            (sample::size(60), "loose by 0.2 cm"),
            (sample::size(64), "loose by 3.5 cm"),
        ] {
            assert_eq!(size_effect(&size, &hat, CM), text);
            assert!(size_effect(&size, &hat, CM).chars().count() <= 26 && size_effect(&size, &hat, Units::Inches).len() <= 26);
        }
        close.girth = Length::from_cm(46.31);
        assert_eq!(size_effect(&close, &hat, CM), "as asked for");
        close.girth = Length::from_cm(45.8);
        assert_eq!(size_effect(&close, &hat, CM), "0.5 cm tighter");
        close.girth = Length::from_cm(49.82);
        assert_eq!(size_effect(&close, &hat, CM), "loose by 0.02 cm");
        (close.reach, close.reaches) = (Length::from_cm(49.79), false);
        assert_eq!(size_effect(&close, &hat, CM), "too tight: reaches 49.79 cm");
    }

    /// The neighbours of the worked example: head 49.8, stretch 1.10, 12 stitches to 10 cm.
    #[test]
    fn neighbours_say_what_they_cost() {
        let hat = sample::hat();
        let line = |stitches| size_line(&sample::size(stitches), &hat, CM);
        assert_eq!(line(52), "52 stitches, 43.3 cm: reaches only 47.7 cm, too tight for this head");
        assert_eq!(line(56), "56 stitches, 46.7 cm: 6.3 % smaller than the head, close");
        assert_eq!(line(60), "60 stitches, 50.0 cm: 0.2 cm larger than the head, loose");
    }

    #[test]
    fn ages_are_told_honestly() {
        let mut hat = sample::hat();
        assert_eq!(
            fit_sentence(&hat, CM),
            "Fits heads of 45.7 to 51.3 cm. By our tables of heads that is 8 in 10 children from 20 months to 4 years 6 months."
        );
        assert_eq!(
            ribbed_sentence(&hat),
            "Hats of this kind are often offered for 1 to 10 years (common practice). By our tables of heads this one, with its \
             plain body, fits 8 in 10 children from 20 months to 4 years 6 months; of the same girth in rib throughout, it would \
             fit 8 in 10 people from 20 months up."
        );
        hat.fit.ages = None;
        hat.fit.ribbed_ages = Some((18.0, 110.0));
        assert!(fit_sentence(&hat, CM).ends_with("as many as 8 in 10."));
        assert_eq!(
            ribbed_sentence(&hat),
            "By our tables of heads this one, with its plain body, fits no age as well as 8 in 10; of the same girth in rib \
             throughout, it would fit 8 in 10 adults."
        );
    }

    #[test]
    fn a_table_of_whom_it_fits_reads_well() {
        let hat = sample::hat();
        let rows = hatwright_sizing::fit_table(hat.fit.least, hat.fit.most).map(|row| fit_row(&row));
        let told: Vec<String> = rows.iter().map(|(who, share)| [who, ": ", share].concat()).collect();
        assert_eq!(told[..3], ["newborn: hardly any", "3 months: hardly any", "6 months: fewer than 1 in 10"]);
        assert_eq!(told[4..7], ["2 years: 9 in 10", "3 years: 9 in 10", "4 years: 8 in 10"]);
        assert_eq!(told[12..], ["women: fewer than 1 in 10", "men: hardly any"]);
    }

    /// What the table says and what the sentence of ages says never differ: 8 in 10 is 8 in 10.
    #[test]
    fn the_table_agrees_with_the_sentence() {
        for tenths in 330..600 {
            let (least, most) = (Length::from_ticks(tenths * 100), Length::from_ticks(tenths * 110));
            let Some((from, to)) = hatwright_sizing::ages_served(least, most, 0.8) else { continue };
            for row in &hatwright_sizing::fit_table(least, most)[..12] {
                let enough = ["8 in 10", "9 in 10", "nearly all"].contains(&&*in_ten(row.share));
                assert!(enough || !(from..=to).contains(&row.years), "{tenths}: {row:?}");
            }
        }
    }

    #[test]
    fn room_to_grow_is_told_against_the_own_hat() {
        let hat = sample::hat();
        let chosen =
            hatwright_sizing::Chosen { rows: hatwright_sizing::Rows::new(58), stitches: hatwright_sizing::Stitches::new(58) };
        let girth = Length::from_cm(48.3);
        let mut larger = Growing { chosen, girth, ages: (4.0, 8.0), instead_to: Some(53.0 / 12.0) };
        assert_eq!(
            growing_sentence(&larger, &hat, CM),
            "58 stitches: 48.3 cm, from 4 to 8 years instead of to 4 years 5 months."
        );
        larger.instead_to = None;
        assert_eq!(
            growing_sentence(&larger, &hat, CM),
            "58 stitches: 48.3 cm, from 4 to 8 years; the hat as it is fits fewer than 8 in 10 at that age."
        );
        (larger.ages, larger.instead_to) = ((4.0, 110.0), Some(4.0));
        assert_eq!(growing_sentence(&larger, &hat, CM), "58 stitches: 48.3 cm, from 4 years up instead of only then.");
    }
}
