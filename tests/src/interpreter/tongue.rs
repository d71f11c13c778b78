//! The words of a printed pattern, language by language: written down here from the grammar, not taken from the program.
//!
//! `{}` in a phrase is a gap, which is never empty.

use super::hands::Place;
use super::{Loops, Part};

/// A language's words.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Tongue {
    pub headings: [(&'static str, Place); 11],
    /// One and many.
    pub row: [&'static str; 2],
    pub round: [&'static str; 2],
    pub row_end: [&'static str; 2],
    pub stitch: [&'static str; 2],
    pub foundation: &'static str,
    pub join_label: &'static str,
    pub seam_label: &'static str,
    pub tie_label: &'static str,
    pub last: &'static str,
    pub same_stripes: &'static str,
    /// Of what a section says of all its lines: how it begins, and the loops.
    pub every_stitch: &'static str,
    pub loop_only: [(Loops, &'static str); 2],
    pub stripes: &'static str,
    pub stripes_to: &'static str,
    pub first_flap: &'static str,
    /// Foundations, and how a hat ends.
    pub chain: &'static str,
    pub loose_ring: &'static str,
    pub foundation_round: &'static str,
    pub ring: &'static str,
    pub gather: &'static str,
    pub tie: &'static str,
    pub seam: &'static str,
    /// A round's chain and join.
    pub begun: &'static str,
    pub joined: &'static str,
    /// Steps.
    pub decrease: &'static str,
    pub front_post: &'static str,
    pub back_post: &'static str,
    pub into: &'static str,
    pub through: &'static str,
    pub next_one: &'static str,
    pub next_many: &'static str,
    pub of_edge: &'static str,
    pub stitches_around: &'static str,
    pub row_ends_around: &'static str,
    pub chains_around: &'static str,
    pub edge_around: &'static str,
    /// Rows.
    pub turned: &'static str,
    pub first_row: &'static str,
    pub nths: [&'static str; 3],
    pub again: &'static str,
    pub across: &'static str,
    pub closing: &'static str,
    pub leave: &'static str,
    /// Loops before what they are the loops of, and what that then began with.
    pub loops: &'static [(Loops, &'static str, &'static str)],
}

pub(super) static ENGLISH: Tongue = Tongue {
    headings: [
        ("Band", Place::Rounds(Part::Band)),
        ("Body", Place::Rounds(Part::Body)),
        ("Underside", Place::Rounds(Part::Underside)),
        ("Crown", Place::Rounds(Part::Crown)),
        ("Tail", Place::Rounds(Part::Tail)),
        ("Brim", Place::Rounds(Part::Brim)),
        ("Joining the band", Place::Joining),
        ("Hat", Place::Hat),
        ("Seam", Place::Seam),
        ("Closing the top", Place::Closing),
        ("Ear flaps", Place::Flaps),
    ],
    row: ["Row", "Rows"],
    round: ["Round", "Rounds"],
    row_end: ["row end", "row ends"],
    stitch: ["st", "sts"],
    foundation: "Foundation",
    join_label: "Join",
    seam_label: "Seam",
    tie_label: "Tie",
    last: "Last",
    same_stripes: "in the same stripes",
    every_stitch: "Work every stitch ",
    loop_only: [(Loops::Back, " in the back loop only"), (Loops::Front, " in the front loop only")],
    stripes: "Stripes: rounds {}–{}",
    stripes_to: "{}, over and over, to round {}.",
    first_flap: " for the first flap",
    chain: "ch {}",
    loose_ring: "ch {} with a larger hook, join into a ring",
    foundation_round: "{} foundation {}, join into a ring",
    ring: "{} in an adjustable ring",
    gather: "fasten off, gather {}",
    tie: "ch {}, fasten off",
    seam: "turn, {}",
    begun: "ch {}, {}",
    joined: "{}, join",
    decrease: "{}2tog",
    front_post: "fp{}",
    back_post: "bp{}",
    into: " in {}",
    through: " through {}",
    next_one: "next {}",
    next_many: "each of next {}",
    of_edge: "{} of the edge",
    stitches_around: "{} in each st around",
    row_ends_around: "{} in each row end around",
    chains_around: "{} in each ch around",
    edge_around: "{} in each st of the foundation edge around",
    turned: "ch {}, turn, {}",
    first_row: " in {} ch from hook and in each ch across",
    nths: ["2nd", "3rd", "4th"],
    again: "as rows 2–{}, over and over",
    across: "each st across",
    closing: "each st and the foundation edge together across",
    leave: "{}, leave the rest",
    loops: &[(Loops::Back, "back loop of ", ""), (Loops::Front, "front loop of ", "")],
};

pub(super) static SPANISH: Tongue = Tongue {
    headings: [
        ("Banda", Place::Rounds(Part::Band)),
        ("Cuerpo", Place::Rounds(Part::Body)),
        ("Cara inferior", Place::Rounds(Part::Underside)),
        ("Copa", Place::Rounds(Part::Crown)),
        ("Cola", Place::Rounds(Part::Tail)),
        ("Ala", Place::Rounds(Part::Brim)),
        ("Unir la banda", Place::Joining),
        ("Gorro", Place::Hat),
        ("Costura", Place::Seam),
        ("Cierre superior", Place::Closing),
        ("Orejeras", Place::Flaps),
    ],
    row: ["Hilera", "Hileras"],
    round: ["Vuelta", "Vueltas"],
    row_end: ["extremo de hilera", "extremos de hilera"],
    stitch: ["p", "ps"],
    foundation: "Base",
    join_label: "Unión",
    seam_label: "Costura",
    tie_label: "Cordón",
    last: "Final",
    same_stripes: "con las mismas rayas",
    every_stitch: "Teje todos los puntos ",
    loop_only: [(Loops::Back, " solo en la hebra trasera"), (Loops::Front, " solo en la hebra delantera")],
    stripes: "Rayas: vueltas {}–{}",
    stripes_to: "{}, una y otra vez, hasta la vuelta {}.",
    first_flap: " para la primera orejera",
    chain: "{} cad",
    loose_ring: "{} cad con una aguja más gruesa, unir en anillo",
    foundation_round: "{} {} de base, unir en anillo",
    ring: "{} en un anillo ajustable",
    gather: "cortar el hilo y rematar, fruncir {}",
    tie: "{} cad, cortar el hilo y rematar",
    seam: "girar, {}",
    begun: "{} cad, {}",
    joined: "{}, unir",
    decrease: "{}2jun",
    front_post: "{}rd",
    back_post: "{}rt",
    into: " en {}",
    through: " a través de {}",
    next_one: "el {} siguiente",
    next_many: "cada uno de los {} siguientes",
    of_edge: "{} del borde",
    stitches_around: "{} en cada p alrededor",
    row_ends_around: "{} en cada extremo de hilera alrededor",
    chains_around: "{} en cada cad alrededor",
    edge_around: "{} en cada p del borde de la base alrededor",
    turned: "{} cad, girar, {}",
    first_row: " en la {} cad desde la aguja y en cada cad hasta el final",
    nths: ["2.ª", "3.ª", "4.ª"],
    again: "como las hileras 2–{}, una y otra vez",
    across: "cada p hasta el final",
    closing: "cada p y del borde de la base a la vez hasta el final",
    leave: "{}, dejar el resto sin tejer",
    // "De" and "el" are one word.
    loops: &[
        (Loops::Back, "la hebra trasera de ", ""),
        (Loops::Front, "la hebra delantera de ", ""),
        (Loops::Back, "la hebra trasera del ", "el "),
        (Loops::Front, "la hebra delantera del ", "el "),
    ],
};

/// What stands in the one gap of a phrase.
pub(super) fn gap<'a>(text: &'a str, phrase: &str) -> Option<&'a str> {
    let (before, after) = phrase.split_once("{}")?;
    text.strip_prefix(before)?.strip_suffix(after).filter(|gap| !gap.is_empty())
}

/// What stands in the two gaps of a phrase; the first is as short as can be.
pub(super) fn gaps<'a>(text: &'a str, phrase: &str) -> Option<(&'a str, &'a str)> {
    let (before, rest) = phrase.split_once("{}")?;
    let (between, after) = rest.split_once("{}")?;
    let (first, second) = text.strip_prefix(before)?.strip_suffix(after)?.split_once(between)?;
    (!first.is_empty() && !second.is_empty()).then_some((first, second))
}
