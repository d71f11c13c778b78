//! What can be made of the yarn that is owned.

use crate::figures::{Units, length, yarn};
use crate::say::why::counted;
use hatwright_sizing::{BandKind, Colour, Hat, Offer, OfferKind, Style, TopperKind, YarnLength};
use hatwright_words::{count, yarn as words};

/// An offer in a few words, as a heading: `Head up to 47.5 cm`, `Stripes of 4 rounds in Weld`. `now` is the hat as it is, `names` the names
/// of its colours.
pub fn offer(offer: &Offer, now: &Hat, names: &[&str], units: Units) -> String {
    let is_tassel = |hat: &Hat| hat.topper.is_some_and(|topper| topper.kind == TopperKind::Tassel);
    match offer.kind {
        OfferKind::LargestHead { girth } => words::head_up_to(&length(girth, units)),
        OfferKind::LongestTail { tail } => words::tail_of(&length(tail, units)),
        OfferKind::WidestStripes { colour } => words::stripes_of(&widest(offer, colour), &name(colour, names)),
        OfferKind::NoTopper if is_tassel(now) => words::no_tassel().into(),
        OfferKind::NoTopper => words::no_pompom().into(),
        OfferKind::SmallerTopper { size } if is_tassel(&offer.hat) => words::tassel_of(&length(size, units)),
        OfferKind::SmallerTopper { size } => words::pompom_of(&length(size, units)),
        OfferKind::LowerBand { stitches } => {
            let around = offer.hat.band == BandKind::Around;
            words::band_of(&if around { count::rounds(stitches.get()) } else { count::stitches(stitches.get()) })
        }
        OfferKind::OneColour { colour } => words::all_in(&name(colour, names)),
    }
}

/// What an offer comes to: `52 stitches, 71 m + 20 m`, a length for each colour in their order.
pub fn offer_numbers(offer: &Offer, units: Units) -> String {
    let hat = &offer.hat;
    let around = counted(&hat.size, hat);
    let used = hat.yarn.iter().filter(|need| need.length > YarnLength::default());
    let lengths: Vec<String> = used.map(|need| yarn(need.length, units)).collect();
    [&*around, ", ", &lengths.join(" + ")].concat()
}

/// The widest stripe of a colour: of the body, or of the band where the body has none.
fn widest(offer: &Offer, colour: Colour) -> String {
    let spec = &offer.spec;
    let bodied = spec.style != Style::EarWarmer;
    let body = spec.body_stripes.iter().filter(|s| s.colour == colour && bodied).map(|s| s.rounds.get()).max();
    let band = spec.band.stripes.iter().filter(|s| s.colour == colour).map(|s| s.rows.get()).max();
    match body {
        Some(rows) if spec.style == Style::Sideways => count::rows(rows),
        Some(rounds) => count::rounds(rounds),
        None if spec.band_kind() == BandKind::Around => count::rounds(band.unwrap_or(0)),
        None => count::rows(band.unwrap_or(0)),
    }
}

fn name(colour: Colour, names: &[&str]) -> String {
    match names.get(usize::from(colour.0)).map(|name| name.trim()) {
        Some(name) if !name.is_empty() => name.to_owned(),
        _ => words::colour(u32::from(colour.0) + 1),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::{Count, HatSpec, Length, Stitches, only_this_much, plan};
    use hatwright_words::{Language, in_language};

    const CM: Units = Units::Centimetres;
    const NAMES: [&str; 2] = ["Indigo", "Weld"];

    fn told(kind: OfferKind, spec: &HatSpec) -> String {
        let hat = plan(spec).unwrap();
        let offer = Offer { kind, spec: spec.clone(), hat: hat.clone() };
        super::offer(&offer, &hat, &NAMES, CM)
    }

    #[test]
    fn every_kind_of_offer_is_told() {
        let spec = HatSpec::default();
        let cm = Length::from_cm;
        for (kind, text) in [
            (OfferKind::LargestHead { girth: cm(47.5) }, "Head up to 47.5 cm"),
            (OfferKind::LongestTail { tail: cm(24.0) }, "Tail of 24.0 cm"),
            (OfferKind::WidestStripes { colour: Colour(1) }, "Stripes of 2 rounds in Weld"),
            (OfferKind::NoTopper, "No pom-pom"),
            (OfferKind::SmallerTopper { size: cm(4.5) }, "Pom-pom of 4.5 cm"),
            (OfferKind::LowerBand { stitches: Stitches::new(6) }, "Band of 6 stitches"),
            (OfferKind::OneColour { colour: Colour(4) }, "All in colour 5"),
        ] {
            assert_eq!(told(kind, &spec), text);
        }
        let mut around = spec.clone();
        (around.band.kind, around.body_stripes[0].colour) = (BandKind::Around, Colour(1));
        assert_eq!(told(OfferKind::LowerBand { stitches: Stitches::new(1) }, &around), "Band of 1 round");
        assert!(told(OfferKind::WidestStripes { colour: Colour(1) }, &around).ends_with("in Weld"));
    }

    /// What is found for a real shortage is told with numbers that are the hat's.
    #[test]
    fn found_offers_have_their_numbers() {
        let mut spec = HatSpec::default();
        spec.balls.iter_mut().for_each(|ball| ball.owned = Count::whole(1));
        let hat = plan(&spec).unwrap();
        let offers = only_this_much(&spec).offers;
        assert!(!offers.is_empty());
        for offer in offers {
            let numbers = offer_numbers(&offer, CM);
            assert!(numbers.starts_with(&[&*offer.hat.stitches().to_string(), " stitches, "].concat()), "{numbers}");
            let used = offer.hat.yarn.iter().filter(|need| need.length > YarnLength::default());
            assert_eq!(numbers.matches(" m").count(), used.count(), "{numbers}");
            assert!(!super::offer(&offer, &hat, &NAMES, CM).is_empty());
        }
    }

    #[test]
    fn offers_are_told_in_spanish() {
        let spec = HatSpec::default();
        in_language(Language::Spanish, || {
            for (kind, text) in [
                (OfferKind::LargestHead { girth: Length::from_cm(47.5) }, "Cabeza de hasta 47,5 cm"),
                (OfferKind::WidestStripes { colour: Colour(1) }, "Rayas de 2 vueltas en Weld"),
                (OfferKind::NoTopper, "Sin pompón"),
                (OfferKind::OneColour { colour: Colour(4) }, "Todo en color 5"),
            ] {
                assert_eq!(told(kind, &spec), text);
            }
        });
    }
}
