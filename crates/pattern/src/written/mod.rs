//! The written pattern: operation trees, their lines in US, UK or Spanish terms, and the whole sheet as text.
//!
//! [`write()`] makes a [`Pattern`] of numbers and operation trees; [`lay_out`] puts it in words, section by section, as a
//! [`Sheet`] for the page; [`Sheet::text`] is the same as plain text, and [`print()`] does all of it at once.
//!
//! # How a line is written
//!
//! A printed line is a label, the colour where the hat has more than one, the work, and the total in parentheses:
//!
//! ```text
//! Row 1, indigo: sc in 2nd ch from hook and in each ch across. (10)
//! Rounds 2–5, weld: sc in each st around. (56)
//! Round 6: [sc2tog, 5 sc] × 6, sc2tog, 6 sc. (43)
//! ```
//!
//! Only such lines begin with `Row`, `Rows`, `Round` or `Rounds`. Lines labelled `Foundation`, `Join`, `Seam`, `Tie` and `Last` are work
//! too, without a number; of these only `Join` has a total. Every other line of a section is prose. Sections stand in working order
//! under the headings `Band`, `Joining the band`, `Body`, `Underside`, `Crown`, `Tail`, `Brim`, `Hat` (worked sideways), `Seam`,
//! `Closing the top` and `Ear flaps`; rounds are numbered on through all of them, rows from 1 in `Band`, `Hat` and `Ear flaps`.
//!
//! `ST` is the stitch of the section's fabric, one and the same in all of its lines: `sc`, `hdc`, `dc` or (in rows) `sl st`; in UK terms
//! `dc`, `htr`, `tr`, `sl st`. `ST2tog` is `sc2tog`, `hdc2tog`, `dc2tog`. In UK terms `skip` is `miss`; nothing else differs. Where a
//! section is worked in back or front loops only, its introduction says so, and its lines of rounds do not; the lines of rows do.
//!
//! # Rounds
//!
//! ```text
//! round   := work                                  in a spiral
//!          | "ch " C ", " work ", join"            joined: C is the fabric's turning chain, and not a stitch; "join" is a slip stitch in
//!                                                  the first stitch, and not a stitch either
//!          | ring | ring ", join" | foundation     the first of these in a spiral, the second joined; a foundation in both
//! ring       := N " ST in an adjustable ring"
//! foundation := N " foundation ST, join into a ring"
//! work    := item (", " item)*
//! item    := step | "[" step (", " step)* "] × " N
//!          | "ST in each st around" | "2 ST in each st around" | "ST in each row end around" | "ST in each ch around"
//!          | "ST in each st of the foundation edge around" | "[fpST, bpST] × " N
//! step    := "ST" | N " ST" | "ST2tog"
//!          | "2 ST in next st"       | "2 ST in each of next " N " sts"
//!          | "ST in next row end"    | "ST in each of next " N " row ends"
//!          | N " ST in next row end" | N " ST in each of next " N " row ends"
//!          | "skip 1 row end"        | "skip " N " row ends"
//! ```
//!
//! Repeats are never nested, `× N` means N times in all (2 or more), and `ST` alone is one stitch. A line uses up exactly the
//! stitches of the one below: in a pick-up round the row ends of the band; in a ring and a foundation nothing; in `each ch` the chains of
//! the line `Foundation: ch N with a larger hook, join into a ring.` before it; in the first round of a brim that is worked from `the
//! foundation edge`, the stitches of round 1. Rounds alike are one line. A line of rounds labelled `in the same stripes` follows a
//! paragraph `Stripes: rounds A–B, over and over, to round Z.` in its section: round r has the colour of round A + (r − A) mod (B − A + 1).
//!
//! # Rows
//!
//! ```text
//! Foundation: ch b + C.                            b stitches and the turning chain
//! Row 1: ST in Kth ch from hook and in each ch across. (b)                                    K = C + 1: 2nd, 3rd, 4th
//! Row n: ch C, turn, ST in back loop of each st across. (b)                                   "front loop of each st", "each st"
//! Row R: ch C, turn, ST through back loop of each st and the foundation edge together across. (b)       the last row of a band
//! ```
//!
//! A line of rows of a band or a gathered hat that is labelled `in the same stripes` goes on with the colours of the rows that are told so
//! far, over and over. A hat worked sideways by short rows has besides, with S stitches in its foundation:
//!
//! ```text
//! Row n: ch C, turn, ST in back loop of each of next N sts, leave the rest. (N)               n odd: N of S, whatever the row before left
//! Row n: ch C, turn, ST in back loop of each st across. (N)                                   n even: back over the row before; n odd: all S
//! Rows a–z: as rows 2–m, over and over. (N)                                                   row r is as row 2 + (r − a) mod (m − 1)
//! Seam: turn, sl st through back loop of each st and the foundation edge together across.     all S; no row
//! ```
//!
//! Where such a line `Rows a–z` is labelled `in the same stripes`, the colours too are those of the rows that it repeats.
//!
//! # Joining, flaps, closing
//!
//! ```text
//! Join: [sl st in each of next 7 row ends, skip 1 row end] × 8. (56)       a band made apart: uses its row ends; each slip stitch
//!                                                                          takes one stitch of the last round too
//! Row 1: ST in each of next N sts of the edge. (N)                         a flap; on a sideways band "row ends of the edge", or steps into
//!                                                                          row ends where a row end takes more or less than one stitch
//! Row 2: ch C, turn, ST2tog, M ST, ST2tog. (N − 2)                         one ST2tog only where one is lost; M left out where it is 0
//! Rows a–b: ch C, turn, ST in each st across. (N)
//! Tie: ch N, fasten off.
//! Last: fasten off, gather N sts.                                          or "N row ends"
//! ```
//!
//! A hat begun in a ring has no line `Last`.
//!
//! What a designer typed stands in the sections `Introduction` and `Tested`: a paragraph of theirs that begins with the word of a label, or
//! that is a rule of hyphens, is led by a dash, so that none of it can be taken for a line of work.
//!
//! # In Spanish
//!
//! The same lines in the terms of Spain, which are from memory, no source: `pr` punto raso (slip stitch), `pb` punto bajo, `mpa` medio punto
//! alto, `pa` punto alto, `p` and `ps` punto and puntos, `cad` cadena and cadenas. The numbers mean what they mean in English, and whatever
//! is counted or repeated is in the same place; what is done is told in the infinitive, as Spanish patterns do.
//!
//! ```text
//! Base, índigo: 11 cad.
//! Hilera 1, índigo: pb en la 2.ª cad desde la aguja y en cada cad hasta el final. (10)
//! Vueltas 2–5, gualda: pb en cada p alrededor. (56)
//! Vuelta 6: [pb2jun, 5 pb] × 6, pb2jun, 6 pb. (43)
//! ```
//!
//! Labels are `Hilera`, `Hileras`, `Vuelta`, `Vueltas`; `Base` (Foundation), `Unión` (Join), `Costura` (Seam), `Cordón` (Tie), `Final` (Last);
//! `con las mismas rayas` is `in the same stripes`. Headings are `Banda`, `Unir la banda`, `Cuerpo`, `Cara inferior`, `Copa`, `Cola`, `Ala`,
//! `Gorro`, `Costura`, `Cierre superior` and `Orejeras`. `ST` is `pb`, `mpa`, `pa` or `pr`; no step has a comma inside, so that commas part steps
//! here too, and what follows a stitch always begins with `en`, `a través de` or `de base`.
//!
//! ```text
//! round   := work | C " cad, " work ", unir"
//!          | ring | ring ", unir" | foundation
//! ring       := N " ST en un anillo ajustable"
//! foundation := N " ST de base, unir en anillo"                  after "Base: N cad con una aguja más gruesa, unir en anillo." a round of chain
//! work    := item (", " item)*
//! item    := step | "[" step (", " step)* "] × " N
//!          | "ST en cada p alrededor" | "2 ST en cada p alrededor" | "ST en cada extremo de hilera alrededor" | "ST en cada cad alrededor"
//!          | "ST en cada p del borde de la base alrededor" | "[STrd, STrt] × " N                  rd, rt: around the post, from the front, the back
//! step    := "ST" | N " ST" | "ST2jun"
//!          | "2 ST en el p siguiente"                | "2 ST en cada uno de los " N " ps siguientes"
//!          | "ST en el extremo de hilera siguiente"  | "ST en cada uno de los " N " extremos de hilera siguientes"     also with N before ST
//!          | "saltar 1 extremo de hilera"            | "saltar " N " extremos de hilera"
//!
//! Base: b + C cad.
//! Hilera 1: ST en la K.ª cad desde la aguja y en cada cad hasta el final. (b)
//! Hilera n: C cad, girar, ST en la hebra trasera de cada p hasta el final. (b)         "la hebra delantera de cada p", "cada p"
//! Hilera R: C cad, girar, ST a través de la hebra trasera de cada p y del borde de la base a la vez hasta el final. (b)
//! Hilera n: C cad, girar, ST en la hebra trasera de cada uno de los N ps siguientes, dejar el resto sin tejer. (N)
//! Hileras a–z: como las hileras 2–m, una y otra vez. (N)
//! Costura: girar, pr a través de la hebra trasera de cada p y del borde de la base a la vez hasta el final.
//! Unión: [pr en cada uno de los 7 extremos de hilera siguientes, saltar 1 extremo de hilera] × 8. (56)
//! Hilera 1: ST en cada uno de los N ps siguientes del borde. (N)                       or "extremos de hilera siguientes del borde"
//! Hilera 2: C cad, girar, ST2jun, M ST, ST2jun. (N − 2)
//! Cordón: N cad, cortar el hilo y rematar.
//! Final: cortar el hilo y rematar, fruncir N ps.                                        "1 p", or "N extremos de hilera"
//! ```
//!
//! A stripe's paragraph is `Rayas: vueltas A–B, una y otra vez, hasta la vuelta Z.`

mod abbreviations;
mod about;
#[cfg(test)]
mod every_hat;
mod finishing;
mod flaps;
mod groups;
mod lines;
mod making;
mod ops;
mod pattern;
mod rounds;
mod rows;
#[cfg(test)]
pub(crate) mod sample;
mod sheet;
mod start;
mod terms;
mod words;

pub use about::{About, Designer, Hand};
pub use lines::{decrease_line, increase_line, pick_up_line};
pub use ops::{Op, Place, makes, uses};
pub use pattern::{Label, Line, Part, PartKind, Pattern, write};
pub use sheet::{Section, Sheet, WrittenLine, lay_out, print};
pub use start::swatch_advice;
pub use terms::{Terms, Words};
pub use words::{compact_text, work_text};
