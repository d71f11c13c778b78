//! What the parts of a hat are called where its yarn is told.

use hatwright_sizing::{Hat, Part, Style, TopperKind};
use hatwright_words::yarn as words;

/// A part's name: `Foundation chain`, `Band`, `Pom-pom`.
///
/// ```
/// use hatwright_pattern::say::part;
/// use hatwright_sizing::{HatSpec, Part, plan};
/// let hat = plan(&HatSpec::default()).unwrap();
/// assert_eq!((part(Part::Topper, &hat), part(Part::Ends, &hat)), ("Pom-pom", "Ends, closing the top"));
/// ```
pub fn part(part: Part, hat: &Hat) -> &'static str {
    match (part, hat.style) {
        (Part::Foundation, _) => words::part_foundation(),
        (Part::Band, _) => words::part_band(),
        (Part::Seam, _) => words::part_seam(),
        (Part::Body, Style::Sideways) => words::part_rows(),
        (Part::Body, Style::Tam) => words::part_underside(),
        (Part::Body, _) => words::part_body(),
        (Part::Crown, _) => words::part_crown(),
        (Part::Tail, _) => words::part_tail(),
        (Part::Brim, _) => words::part_brim(),
        (Part::Flaps, _) => words::part_flaps(),
        (Part::Ties, _) => words::part_ties(),
        (Part::Ends, _) if hat.top.is_some() => words::part_ends_top(),
        (Part::Ends, _) => words::part_ends(),
        (Part::Carried, _) => words::part_carried(),
        (Part::Topper, _) => hat.topper.map_or_else(words::part_top, |topper| part_of_topper(topper.kind)),
        (Part::Swatch, _) => words::part_swatch(),
    }
}

/// What is on the top, as a heading.
pub fn part_of_topper(kind: TopperKind) -> &'static str {
    match kind {
        TopperKind::PomPom => words::part_pompom(),
        TopperKind::Tassel => words::part_tassel(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::written::sample;
    use hatwright_words::{Language, in_language};

    #[test]
    fn every_part_of_a_style_has_a_name_of_its_own() {
        let mut hat = sample::hat();
        for style in Style::ALL {
            hat.style = style;
            let mut names: Vec<_> = Part::ALL.iter().map(|p| part(*p, &hat)).collect();
            names.sort_unstable();
            names.dedup();
            assert_eq!(names.len(), Part::ALL.len(), "{style:?}");
        }
        hat.top = None;
        assert_eq!(part(Part::Ends, &hat), "Ends");
        hat.topper = hat.topper.map(|t| hatwright_sizing::TopperPlan { kind: TopperKind::Tassel, ..t });
        assert_eq!(part(Part::Topper, &hat), "Tassel");
    }

    #[test]
    fn every_part_of_a_style_has_a_name_of_its_own_in_spanish() {
        in_language(Language::Spanish, || {
            let mut hat = sample::hat();
            for style in Style::ALL {
                hat.style = style;
                let names: std::collections::BTreeSet<_> = Part::ALL.iter().map(|p| part(*p, &hat)).collect();
                assert_eq!(names.len(), Part::ALL.len(), "{style:?}");
            }
            assert_eq!((part(Part::Brim, &hat), part(Part::Topper, &hat)), ("Ala", "Pompón"));
        });
    }
}
