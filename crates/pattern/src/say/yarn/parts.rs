//! What the parts of a hat are called where its yarn is told.

use hatwright_sizing::{Hat, Part, Style, TopperKind};

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
        (Part::Foundation, _) => "Foundation chain",
        (Part::Band, _) => "Band",
        (Part::Seam, _) => "Seam",
        (Part::Body, Style::Sideways) => "Hat, in rows",
        (Part::Body, Style::Tam) => "Underside",
        (Part::Body, _) => "Body",
        (Part::Crown, _) => "Crown",
        (Part::Tail, _) => "Tail",
        (Part::Brim, _) => "Brim",
        (Part::Flaps, _) => "Ear flaps",
        (Part::Ties, _) => "Ties",
        (Part::Ends, _) if hat.top.is_some() => "Ends, closing the top",
        (Part::Ends, _) => "Ends",
        (Part::Carried, _) => "Strands led up",
        (Part::Topper, _) => hat.topper.map_or("Top", |topper| part_of_topper(topper.kind)),
        (Part::Swatch, _) => "Swatch",
    }
}

/// What is on the top, as a heading.
pub const fn part_of_topper(kind: TopperKind) -> &'static str {
    match kind {
        TopperKind::PomPom => "Pom-pom",
        TopperKind::Tassel => "Tassel",
    }
}

/// The same inside a sentence.
pub const fn topper_name(kind: TopperKind) -> &'static str {
    match kind {
        TopperKind::PomPom => "pom-pom",
        TopperKind::Tassel => "tassel",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::written::sample;

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
}
