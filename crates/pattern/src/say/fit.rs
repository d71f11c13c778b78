//! Whom a hat fits, and what other counts do to the fit.

use super::refusals::plural_stitches;
use super::why::counts_rows;
use crate::figures::{Units, age, age_span, length, length_span, lengths_apart, percent, plural};
use hatwright_sizing::{FitRow, Growing, Hat, Length, Ratio, Sex, Size};

/// Which heads a hat serves, and at which ages.
pub fn fit_sentence(hat: &Hat, units: Units) -> String {
    let mut text = ["Fits heads of ", &length_span(hat.fit.least, hat.fit.most, units), ". "].concat();
    match hat.fit.ages {
        Some(ages) => text.push_str(&["By our tables of heads that is ", &who_is_served(ages), "."].concat()),
        None => text.push_str("By our tables of heads there is no age at which that is as many as 8 in 10."),
    }
    text
}

/// What the numbers make of the ages for which such hats are offered: for the hat as it is, and ribbed throughout.
///
/// That they are offered for 1 to 10 years is common practice, with no published source; it is mentioned only for a hat that a
/// child of those ages may wear.
pub fn ribbed_sentence(hat: &Hat) -> String {
    let spans = |ages: Option<(f64, f64)>| ages.is_some_and(|(from, to)| from < 10.0 && to > 1.0);
    let mut text = String::new();
    if spans(hat.fit.ages) || spans(hat.fit.ribbed_ages) {
        text.push_str("Hats of this kind are often offered for 1 to 10 years (common practice). ");
    }
    text.push_str("By our tables of heads this one, with its plain body, fits ");
    text.push_str(&hat.fit.ages.map_or_else(nobody, who_is_served));
    text.push_str("; of the same girth in rib throughout, it would fit ");
    text.push_str(&hat.fit.ribbed_ages.map_or_else(nobody, who_is_served));
    text.push('.');
    text
}

fn nobody() -> String {
    "no age as well as 8 in 10".into()
}

/// Of whom 8 in 10 are served: `8 in 10 children from 20 months to 3 years`, `8 in 10 adults`.
pub fn who_is_served((from, to): (f64, f64)) -> String {
    let span = age_span(from, to);
    let who = match () {
        () if from >= 18.0 => return "8 in 10 adults".into(),
        () if to < 2.0 => "8 in 10 babies ",
        () if to < 18.0 => "8 in 10 children ",
        () => "8 in 10 people ",
    };
    [who, &span].concat()
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
        ..0.005 => "hardly any".into(),
        0.995.. => "nearly all".into(),
        ..0.1 => "fewer than 1 in 10".into(),
        _ => [&((share * 10.0 + 1e-9) as u32).to_string(), " in 10"].concat(),
    }
}

/// A row of the table of whom a hat fits: who, and how many of them. `("4 years", "9 in 10")`, `("women", "3 in 10")`.
pub fn fit_row(row: &FitRow) -> (String, String) {
    let who = match (row.years >= 18.0, row.sex) {
        (true, Sex::Female) => "women".into(),
        (true, Sex::Male) => "men".into(),
        (true, Sex::Unknown) => "adults".into(),
        (false, _) => age(row.years),
    };
    (who, in_ten(row.share))
}

/// The count that serves a child for longest, if there is one: `58 stitches: 48.3 cm, from 4 to 8 years instead of to 4 years 5 months.`
///
/// `own` is the hat as the planner sizes it.
pub fn growing_sentence(larger: &Growing, own: &Hat, units: Units) -> String {
    let count =
        if counts_rows(own) { plural(larger.chosen.rows.get(), "row") } else { plural_stitches(larger.chosen.stitches.get()) };
    let mut text = [&*count, ": ", &length(larger.girth, units), ", ", &age_span(larger.ages.0, larger.ages.1)].concat();
    match larger.instead_to {
        // The own hat begins and ends within the month.
        Some(to) if age(to) == age(larger.ages.0) => text.push_str(" instead of only then"),
        Some(to) => text.push_str(&[" instead of to ", &age(to)].concat()),
        None => text.push_str("; the hat as it is fits fewer than 8 in 10 at that age"),
    }
    text.push('.');
    text
}

/// What a count does to the fit, against the girth that was asked for, in few enough letters for a phone.
///
/// With 46.3 cm asked for on a head of 49.8 cm, 56 stitches of 46.7 cm are `0.4 cm looser`; 52, which stretch to 47.7 cm, are
/// `too tight: reaches 47.7 cm`; 60, at 50.0 cm, are larger than the head: `loose by 0.2 cm`.
pub fn size_effect(size: &Size, hat: &Hat, units: Units) -> String {
    let (girth, head) = (size.girth.ticks(), hat.head.girth.ticks());
    let against = |ticks: i32| length(Length::from_ticks(ticks.saturating_abs()), units);
    if !size.reaches {
        return ["too tight: reaches ", &lengths_apart(size.reach, hat.head.girth, units).0].concat();
    }
    if girth > head {
        return ["loose by ", &lengths_apart(Length::from_ticks(girth - head), Length::ZERO, units).0].concat();
    }
    let more = girth - hat.wanted_girth.ticks();
    let off = against(more);
    match more {
        _ if off.starts_with("0.0 ") => "as asked for".into(),
        ..0 => [&off, " tighter"].concat(),
        _ => [&off, " looser"].concat(),
    }
}

/// Another count, with what it does to the fit: `52 stitches, 43.3 cm: reaches only 47.7 cm, too tight for this head`.
pub fn size_line(size: &Size, hat: &Hat, units: Units) -> String {
    let mut text = plural_stitches(size.stitches.get());
    if size.rows.get() != size.stitches.get() {
        text.push_str(&[" on ", &size.rows.to_string(), " rows of band"].concat());
    }
    text.push_str(&[", ", &length(size.girth, units), ": "].concat());
    let larger = size.girth.ticks() - hat.head.girth.ticks();
    if !size.reaches {
        text.push_str(&["reaches only ", &length(size.reach, units), ", too tight for this head"].concat());
    } else if larger > 0 {
        text.push_str(&[&*length(Length::from_ticks(larger), units), " larger than the head, loose"].concat());
    } else {
        // Practice, no source: 5 to 9 % is usual for plain fabric, 0 to 3 % for a bare or tender head.
        let fit = match size.ease.ticks() {
            ..=299 => "relaxed",
            300..=599 => "easy",
            600..=899 => "close",
            _ => "tight",
        };
        text.push_str(&[&*percent(Ratio::from_ticks(size.ease.ticks())), " smaller than the head, ", fit].concat());
    }
    if size.adjustment.get() > 0 {
        text.push_str(&["; needs an adjustment of ", &plural_stitches(size.adjustment.get()), " below the crown"].concat());
    }
    text
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
