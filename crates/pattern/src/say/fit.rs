//! Whom a hat fits, and why it has the count that it has.

use super::refusals::plural_stitches;
use crate::figures::{Units, age_span, length, length_span, lengths_apart, percent};
use hatwright_sizing::{Hat, Length, Ratio, Remark, Size};

/// Which heads a hat serves, and at which ages.
pub fn fit_sentence(hat: &Hat, units: Units) -> String {
    let mut text = ["Fits heads of ", &length_span(hat.fit.least, hat.fit.most, units), ". "].concat();
    match hat.fit.ages {
        Some(ages) => text.push_str(&["By our tables of heads that is ", &eight_in_ten(ages), "."].concat()),
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
    text.push_str(&hat.fit.ages.map_or_else(nobody, eight_in_ten));
    text.push_str("; of the same girth in rib throughout, it would fit ");
    text.push_str(&hat.fit.ribbed_ages.map_or_else(nobody, eight_in_ten));
    text.push('.');
    text
}

fn nobody() -> String {
    "no age as well as 8 in 10".into()
}

fn eight_in_ten((from, to): (f64, f64)) -> String {
    let span = age_span(from, to);
    let who = match () {
        () if from >= 18.0 => return "8 in 10 adults".into(),
        () if to < 2.0 => "8 in 10 babies ",
        () if to < 18.0 => "8 in 10 children ",
        () => "8 in 10 people ",
    };
    [who, &span].concat()
}

/// Why the hat has this count and no other.
///
/// 56 stitches where 55 would come nearest: `56 stitches rather than 55: the band's stripes close only on multiples of 4 rows.
/// That makes the hat 0.4 cm larger than asked for.`
pub fn why_this_count(hat: &Hat, units: Units) -> String {
    let moved = hat.remarks.iter().find_map(|r| match r {
        Remark::StripesMoved { nearest, repeat } => Some((nearest, repeat.get())),
        _ => None,
    });
    let wedges = hat.remarks.iter().find_map(|r| match r {
        Remark::WedgesMoved { nearest, wedges } => Some((nearest, *wedges)),
        _ => None,
    });
    let mut text = plural_stitches(hat.size.stitches.get());
    let difference = hat.size.girth.ticks().saturating_sub(hat.wanted_girth.ticks());
    let off = length(Length::from_ticks(difference.saturating_abs()), units);
    let way = if difference < 0 { " smaller than asked for." } else { " larger than asked for." };
    match (moved, wedges) {
        // The stripes alone would have moved it to yet another count.
        (Some((nearest, repeat)), Some((closing, wedges))) => {
            text.push_str(&[" rather than ", &nearest.to_string(), ", or ", &closing.to_string()].concat());
            text.push_str(&[" where ", &closes(repeat), &wedges_moved(wedges, hat), " That makes the hat ", &off, way].concat());
        }
        (None, Some((nearest, wedges))) => {
            text.push_str(&[" rather than ", &nearest.to_string(), &wedges_moved(wedges, hat)].concat());
            text.push_str(&[" That makes the hat ", &off, way].concat());
        }
        (Some((nearest, repeat)), None) => {
            text.push_str(&[" rather than ", &nearest.to_string(), ": "].concat());
            text.push_str(&[&*closes(repeat), ". That makes the hat ", &off, way].concat());
        }
        (None, None) if difference.abs() < 50 => text.push_str(" give just the girth that was asked for."),
        // Another count may be nearer where wedges or the pick-up decide, or a person chose; then nothing is claimed.
        (None, None) if 2 * difference.abs() <= hat.gauge.stitch.ticks() => {
            text.push_str(
                &[" come nearest to the girth that was asked for: ", &off, way.trim_end_matches(" than asked for."), "."]
                    .concat(),
            );
        }
        (None, None) => text.push_str(&[" make the hat ", &off, way].concat()),
    }
    text
}

fn closes(repeat: u32) -> String {
    if repeat == 2 {
        return "a sideways band needs an even number of rows".into();
    }
    ["the band's stripes close only on multiples of ", &repeat.to_string(), " rows"].concat()
}

/// `: 8 wedges divide them evenly, without an adjustment round.`
pub(super) fn wedges_moved(wedges: u32, hat: &Hat) -> String {
    let wedges = wedges.to_string();
    if hat.size.adjustment.get() == 0 {
        [": ", &wedges, " wedges divide them evenly, without an adjustment round."].concat()
    } else {
        [": of the counts that suit the rest, it comes nearest to what ", &wedges, " wedges divide."].concat()
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
    fn the_count_is_explained() {
        let mut hat = sample::hat();
        assert_eq!(
            why_this_count(&hat, CM),
            "56 stitches rather than 55: the band's stripes close only on multiples of 4 rows. \
             That makes the hat 0.4 cm larger than asked for."
        );
        hat.remarks.clear();
        assert_eq!(why_this_count(&hat, CM), "56 stitches come nearest to the girth that was asked for: 0.4 cm larger.");
    }

    #[test]
    fn wedges_are_blamed_for_what_they_do() {
        let mut hat = sample::hat();
        let wedges = Remark::WedgesMoved { nearest: hatwright_sizing::Stitches::new(54), wedges: 8 };
        hat.remarks = vec![wedges];
        assert_eq!(
            why_this_count(&hat, CM),
            "56 stitches rather than 54: 8 wedges divide them evenly, without an adjustment round. That makes the hat 0.4 cm larger \
             than asked for."
        );
        hat.remarks = vec![sample::hat().remarks[1], wedges];
        assert_eq!(
            why_this_count(&hat, CM),
            "56 stitches rather than 55, or 54 where the band's stripes close only on multiples of 4 rows: 8 wedges divide them \
             evenly, without an adjustment round. That makes the hat 0.4 cm larger than asked for."
        );
    }

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
}
