//! Patterns that can be worked, and the same ones damaged.

use super::*;

const HAT: &str = "A cap\nWritten in US crochet terms: single crochet (sc) here is what UK patterns call double crochet (dc).\n\nBand\n----\n\
    Foundation, indigo: ch 4.\nRow 1, indigo: sc in 2nd ch from hook and in each ch across. (3)\n\
    Row 2, weld: ch 1, turn, sc in back loop of each st across. (3)\n\
    Rows 3–7, in the same stripes: ch 1, turn, sc in back loop of each st across. (3)\n\
    Row 8, weld: ch 1, turn, sc through back loop of each st and the foundation edge together across. (3)\n\
    \nBody\n----\nWork sc in every row end: one each.\n\
    Round 1, indigo: [sc in each of next 3 row ends, 2 sc in next row end] × 2. (10)\n\
    Rounds 2–4, indigo: sc in each st around. (10)\n\nCrown\n-----\nRound 5, weld: sc, [sc2tog, sc] × 2, sc2tog, sc. (7)\n\
    \nClosing the top\n---------------\nLast: fasten off, gather 7 sts.\n";

/// Begun in a ring, in joined rounds; a back-loop band around; two flaps.
const DOWN: &str = "A cap\nWritten in US crochet terms: half double crochet (hdc) here is what UK patterns call half treble crochet (htr).\n\
    \nCrown\n-----\nRound 1: 6 hdc in an adjustable ring, join. (6)\nRound 2: ch 2, 2 hdc in each st around, join. (12)\n\
    Round 3: ch 2, hdc, [2 hdc in next st, hdc] × 5, 2 hdc in next st, join. (18)\n\
    Round 4: ch 2, [2 hdc in each of next 2 sts, hdc] × 6, join. (30)\n\
    \nTail\n----\nStripes: rounds 5–6, over and over, to round 9.\nRound 5: ch 2, hdc in each st around, join. (30)\n\
    Round 6: ch 2, hdc in each st around, join. (30)\nRounds 7–9, in the same stripes: ch 2, hdc in each st around, join. (30)\n\
    \nBand\n----\nWork every stitch of these rounds in the back loop only.\nRounds 10–11: ch 1, sc in each st around, join. (30)\n\
    \nEar flaps\n---------\nMark the edge: 3 sts free, 5 sts for the first flap, 14 sts free, 5 sts for the second flap, and 3 sts free.\n\
    Row 1: hdc in each of next 5 sts of the edge. (5)\nRow 2: ch 2, turn, hdc2tog, hdc, hdc2tog. (3)\n\
    Rows 3–4: ch 2, turn, hdc in each st across. (3)\nRow 5: ch 2, turn, hdc2tog, hdc. (2)\nTie: ch 40, fasten off.\n";

/// A post rib on a loose chain, closed above, and a brim from the edge.
const BRIM: &str = "A hat\nWritten in UK crochet terms: treble crochet (tr) here is what US patterns call double crochet (dc).\n\
    \nBand\n----\nFoundation: ch 12 with a larger hook, join into a ring.\nRound 1: tr in each ch around. (12)\n\
    Rounds 2–3: [fptr, bptr] × 6. (12)\n\nCrown\n-----\nRound 4: [dc2tog] × 6. (6)\n\
    \nClosing the top\n---------------\nLast: fasten off, gather 6 sts.\n\nBrim\n----\nRound 5: dc in each st of the foundation edge around. (12)\n\
    Round 6: [2 dc in next st, dc] × 6. (18)\n";

const SIDEWAYS: &str = "A hat\nWritten in US crochet terms: double crochet (dc) here is what UK patterns call treble crochet (tr).\n\
    \nHat\n---\nFoundation: ch 13.\nRow 1: dc in 4th ch from hook and in each ch across. (10)\n\
    Row 2: ch 3, turn, dc in back loop of each st across. (10)\n\
    Row 3: ch 3, turn, dc in back loop of each of next 8 sts, leave the rest. (8)\n\
    Row 4: ch 3, turn, dc in back loop of each st across. (8)\nRow 5: ch 3, turn, dc in back loop of each st across. (10)\n\
    Rows 6–12: as rows 2–5, over and over. (8)\n\
    \nSeam\n----\nSeam: turn, sl st through back loop of each st and the foundation edge together across.\n\
    \nClosing the top\n---------------\nLast: fasten off, gather 6 row ends.\n";

/// Made apart and joined.
const APART: &str = "A cap\nWritten in US crochet terms: single crochet (sc) here is what UK patterns call double crochet (dc).\n\
    \nCrown\n-----\nRound 1: 6 sc in an adjustable ring. (6)\n\
    \nBand\n----\nFoundation: ch 4.\nRow 1: sc in 2nd ch from hook and in each ch across. (3)\n\
    Rows 2–7: ch 1, turn, sc in front loop of each st across. (3)\n\
    Row 8: ch 1, turn, sc through front loop of each st and the foundation edge together across. (3)\n\
    \nJoining the band\n----------------\nJoin: [sl st in each of next 3 row ends, skip 1 row end] × 2. (6)\n";

/// The cap of `HAT` in Spanish.
const GORRO: &str = "Un gorro\nEscrito con los términos de ganchillo de España: punto bajo (pb).\n\nBanda\n-----\n\
    Base, indigo: 4 cad.\nHilera 1, indigo: pb en la 2.ª cad desde la aguja y en cada cad hasta el final. (3)\n\
    Hilera 2, weld: 1 cad, girar, pb en la hebra trasera de cada p hasta el final. (3)\n\
    Hileras 3–7, con las mismas rayas: 1 cad, girar, pb en la hebra trasera de cada p hasta el final. (3)\n\
    Hilera 8, weld: 1 cad, girar, pb a través de la hebra trasera de cada p y del borde de la base a la vez hasta el final. (3)\n\
    \nCuerpo\n------\nTeje un pb en cada extremo: uno por hilera.\n\
    Vuelta 1, indigo: [pb en cada uno de los 3 extremos de hilera siguientes, 2 pb en el extremo de hilera siguiente] × 2. (10)\n\
    Vueltas 2–4, indigo: pb en cada p alrededor. (10)\n\nCopa\n----\nVuelta 5, weld: pb, [pb2jun, pb] × 2, pb2jun, pb. (7)\n\
    \nCierre superior\n---------------\nFinal: cortar el hilo y rematar, fruncir 7 ps.\n";

/// `DOWN` in Spanish.
const ABAJO: &str = "Un gorro\nEscrito con los términos de ganchillo de España: medio punto alto (mpa).\n\
    \nCopa\n----\nVuelta 1: 6 mpa en un anillo ajustable, unir. (6)\nVuelta 2: 2 cad, 2 mpa en cada p alrededor, unir. (12)\n\
    Vuelta 3: 2 cad, mpa, [2 mpa en el p siguiente, mpa] × 5, 2 mpa en el p siguiente, unir. (18)\n\
    Vuelta 4: 2 cad, [2 mpa en cada uno de los 2 ps siguientes, mpa] × 6, unir. (30)\n\
    \nCola\n----\nRayas: vueltas 5–6, una y otra vez, hasta la vuelta 9.\nVuelta 5: 2 cad, mpa en cada p alrededor, unir. (30)\n\
    Vuelta 6: 2 cad, mpa en cada p alrededor, unir. (30)\nVueltas 7–9, con las mismas rayas: 2 cad, mpa en cada p alrededor, unir. (30)\n\
    \nBanda\n-----\nTeje todos los puntos de estas vueltas solo en la hebra trasera.\n\
    Vueltas 10–11: 1 cad, pb en cada p alrededor, unir. (30)\n\
    \nOrejeras\n--------\nMarca el borde: 3 ps libres, 5 ps para la primera orejera, 14 ps, 5 ps para la segunda y 3 ps.\n\
    Hilera 1: mpa en cada uno de los 5 ps siguientes del borde. (5)\nHilera 2: 2 cad, girar, mpa2jun, mpa, mpa2jun. (3)\n\
    Hileras 3–4: 2 cad, girar, mpa en cada p hasta el final. (3)\nHilera 5: 2 cad, girar, mpa2jun, mpa. (2)\n\
    Cordón: 40 cad, cortar el hilo y rematar.\n";

/// `BRIM` in Spanish.
const ALA: &str = "Un gorro\nEscrito con los términos de ganchillo de España: punto alto (pa).\n\
    \nBanda\n-----\nBase: 12 cad con una aguja más gruesa, unir en anillo.\nVuelta 1: pa en cada cad alrededor. (12)\n\
    Vueltas 2–3: [pard, part] × 6. (12)\n\nCopa\n----\nVuelta 4: [pb2jun] × 6. (6)\n\
    \nCierre superior\n---------------\nFinal: cortar el hilo y rematar, fruncir 6 ps.\n\
    \nAla\n---\nVuelta 5: pb en cada p del borde de la base alrededor. (12)\nVuelta 6: [2 pb en el p siguiente, pb] × 6. (18)\n";

/// `SIDEWAYS` in Spanish.
const DE_LADO: &str = "Un gorro\nEscrito con los términos de ganchillo de España: punto alto (pa).\n\
    \nGorro\n-----\nBase: 13 cad.\nHilera 1: pa en la 4.ª cad desde la aguja y en cada cad hasta el final. (10)\n\
    Hilera 2: 3 cad, girar, pa en la hebra trasera de cada p hasta el final. (10)\n\
    Hilera 3: 3 cad, girar, pa en la hebra trasera de cada uno de los 8 ps siguientes, dejar el resto sin tejer. (8)\n\
    Hilera 4: 3 cad, girar, pa en la hebra trasera de cada p hasta el final. (8)\n\
    Hilera 5: 3 cad, girar, pa en la hebra trasera de cada p hasta el final. (10)\n\
    Hileras 6–12: como las hileras 2–5, una y otra vez. (8)\n\
    \nCostura\n-------\nCostura: girar, pr a través de la hebra trasera de cada p y del borde de la base a la vez hasta el final.\n\
    \nCierre superior\n---------------\nFinal: cortar el hilo y rematar, fruncir 6 extremos de hilera.\n";

/// `APART` in Spanish.
const APARTE: &str = "Un gorro\nEscrito con los términos de ganchillo de España: punto bajo (pb).\n\
    \nCopa\n----\nVuelta 1: 6 pb en un anillo ajustable. (6)\n\
    \nBanda\n-----\nBase: 4 cad.\nHilera 1: pb en la 2.ª cad desde la aguja y en cada cad hasta el final. (3)\n\
    Hileras 2–7: 1 cad, girar, pb en la hebra delantera de cada p hasta el final. (3)\n\
    Hilera 8: 1 cad, girar, pb a través de la hebra delantera de cada p y del borde de la base a la vez hasta el final. (3)\n\
    \nUnir la banda\n-------------\n\
    Unión: [pr en cada uno de los 3 extremos de hilera siguientes, saltar 1 extremo de hilera] × 2. (6)\n";

#[test]
fn spanish_patterns_make_the_same_hats() {
    for (english, spanish) in [(HAT, GORRO), (DOWN, ABAJO), (BRIM, ALA), (SIDEWAYS, DE_LADO), (APART, APARTE)] {
        assert_eq!(work(spanish).unwrap(), work(english).unwrap());
    }
    // One stitch is told with its article and the preposition in one word.
    let one = DE_LADO.replace(
        "de cada uno de los 8 ps siguientes, dejar el resto sin tejer. (8)",
        "del p siguiente, dejar el resto sin tejer. (1)",
    );
    let one = one.replace("cada p hasta el final. (8)", "cada p hasta el final. (1)").replace("vez. (8)", "vez. (1)");
    assert_eq!(work(&one).unwrap().rows[2].stitches, 1);
}

#[test]
fn what_is_no_line_of_work_is_not_worked() {
    let told = "\nIntroduction\n------------\nWork every stitch in the back loop only, they say.\n— Row 3: is none.\n\nBand\n";
    let text = HAT.replacen("\nBand\n", told, 1).replacen("A cap", "Round 3 cap", 1);
    assert_eq!(work(&text).unwrap(), work(HAT).unwrap());
    assert!(work(&text.replace("— Row 3", "Row 3")).is_err());
}

#[test]
fn a_pattern_is_worked_stitch_by_stitch() {
    let worked = work(HAT).unwrap();
    let colours: Vec<&str> = worked.rows.iter().filter_map(|row| row.colour.as_deref()).collect();
    assert_eq!(colours, ["indigo", "weld", "indigo", "weld", "indigo", "weld", "indigo", "weld"]);
    let rounds: Vec<(u32, u32, u32)> = worked.rounds.iter().map(|r| (r.used(), r.stitches(), r.decreases())).collect();
    assert_eq!(rounds, [(8, 10, 0), (10, 10, 0), (10, 10, 0), (10, 10, 0), (10, 7, 3)]);
    assert_eq!((worked.gathered, worked.joined), (Some(Gathered::Stitches(7)), Some(false)));
    let colours = Colours { foundation: Some("indigo".into()), ..Colours::default() };
    assert_eq!(worked.colours, colours);
    let uk = HAT.replace("sc2tog", "dc2tog").replace("sc", "dc").replace("US", "UK");
    assert_eq!(work(&uk).unwrap(), worked);
}

#[test]
fn a_hat_begun_in_a_ring_grows() {
    let worked = work(DOWN).unwrap();
    let rounds: Vec<(u32, u32)> = worked.rounds.iter().map(|r| (r.stitches(), r.increases())).collect();
    let tail = [(30, 0); 7];
    assert_eq!(rounds, [&[(6, 0), (12, 6), (18, 6), (30, 12)], &tail[..]].concat());
    assert_eq!((worked.joined, worked.gathered, worked.between, worked.tie), (Some(true), None, Some((6, 14)), 40));
    assert_eq!(worked.rounds[10].loops, Loops::Back);
    let flap: Vec<(u32, u32)> = worked.flap.iter().map(|row| (row.stitches, row.decreases)).collect();
    assert_eq!(flap, [(5, 0), (3, 2), (3, 0), (3, 0), (2, 1)]);
}

#[test]
fn brims_panels_and_bands_made_apart_are_worked() {
    let brim = work(BRIM).unwrap();
    let into: Vec<Into> = brim.rounds.iter().map(|r| r.into).collect();
    assert_eq!(into, [Into::Chain, Into::Round, Into::Round, Into::Round, Into::Edge, Into::Round]);
    assert_eq!(brim.rounds.last().unwrap().stitches(), 18);
    let hat = work(SIDEWAYS).unwrap();
    let rows: Vec<u32> = hat.rows.iter().map(|row| row.stitches).collect();
    assert_eq!(rows, [10, 10, 8, 8, 10, 10, 8, 8, 10, 10, 8, 8]);
    assert_eq!((hat.seamed, hat.gathered), (true, Some(Gathered::RowEnds(6))));
    let odd = SIDEWAYS.replace("6–12: as rows 2–5, over and over. (8)", "6–11: as rows 2–5, over and over. (8)");
    assert!(work(&odd).is_err(), "after an odd row the yarn is at the crown, where no seam begins");
    let apart = work(APART).unwrap();
    assert_eq!(apart.band_join.unwrap().len(), 8);
}

/// Every small damage to the text is noticed, and the damaged line is quoted.
#[test]
fn a_damaged_pattern_cannot_be_worked() {
    for (text, sound, damaged) in [
        (HAT, "ch 4.", "ch 5."),
        (HAT, "× 2, sc2tog", "× 3, sc2tog"),
        (HAT, "(7)", "(8)"),
        (HAT, "sc, [sc2tog, sc]", "2 sc, [sc2tog, sc]"),
        (HAT, "[sc2tog, sc]", "[sc2tog, 1 sc]"),
        (HAT, "[sc2tog, sc]", "[sc2tog, dc]"),
        (HAT, "[sc2tog, sc]", "[sc2tog, sc"),
        (HAT, "[sc2tog, sc]", "[sc2tog; sc]"),
        (HAT, "[sc2tog, sc]", "[[sc2tog, sc]"),
        (HAT, "sc, [sc2tog, sc] × 2, sc2tog, sc.", "hdc, [hdc2tog, hdc] × 2, hdc2tog, hdc."),
        (HAT, "Rounds 2–4", "Rounds 2–5"),
        (HAT, "Rounds 2–4", "Rounds 3–4"),
        (HAT, "Rows 3–7", "Rows 3–6"),
        (HAT, "Rows 3–7", "Rows 7–3"),
        (HAT, "2 sc in next row end", "2 sc in next st"),
        (HAT, "in each st around", "in each row end around"),
        (HAT, "sc in each of next 3 row ends", "sc in each of next 3 row end"),
        (HAT, "sc in each of next 3 row ends", "3 sc"),
        (HAT, "sc in each of next 3 row ends", "skip 3 row ends"),
        (HAT, "through back loop of each st and the foundation edge together", "in back loop of each st"),
        (HAT, "through back loop", "through front loop"),
        (HAT, "Row 2, weld: ch 1", "Row 2, weld: ch 2"),
        (HAT, "gather 7 sts", "gather 8 sts"),
        (HAT, "gather 7 sts", "gather 7 row ends"),
        (DOWN, "2 hdc in each st around", "hdc in each st around"),
        (DOWN, "hdc, [2 hdc in next st, hdc]", "hdc, [2 hdc in next st, 2 hdc]"),
        (DOWN, "2 hdc in each of next 2 sts", "2 hdc in each of next 1 sts"),
        (DOWN, "2 hdc in each of next 2 sts", "3 hdc in each of next 2 sts"),
        (DOWN, "Round 2: ch 2, ", "Round 2: "),
        (DOWN, "Round 2: ch 2", "Round 2: ch 3"),
        (DOWN, "around, join. (12)", "around. (12)"),
        (DOWN, "6 hdc in an adjustable ring, join", "6 hdc in an adjustable ring"),
        (DOWN, "6 hdc in an adjustable ring, join", "ch 2, 6 hdc in an adjustable ring, join"),
        (DOWN, "6 hdc in an adjustable ring", "6 sc in an adjustable ring"),
        (DOWN, "to round 9", "to round 8"),
        (DOWN, "rounds 5–6, over", "rounds 5–7, over"),
        (DOWN, "14 sts free", "13 sts free"),
        (DOWN, "next 5 sts of the edge. (5)", "next 6 sts of the edge. (6)"),
        (DOWN, "hdc2tog, hdc, hdc2tog", "hdc2tog, 2 hdc, hdc2tog"),
        (DOWN, "hdc2tog, hdc, hdc2tog", "hdc, hdc2tog, hdc2tog"),
        (DOWN, "Tie: ch 40, fasten off", "Tie: ch 40"),
        (DOWN, "Row 2: ch 2, turn", "Row 2, weld: ch 2, turn"),
        (DOWN, "back loop only", "other loop only"),
        (BRIM, "[fptr, bptr] × 6", "[fptr, bptr] × 5"),
        (BRIM, "[fptr, bptr]", "[bptr, fptr]"),
        (BRIM, "tr in each ch around", "tr in each st around"),
        (BRIM, "in each st of the foundation edge around. (12)", "in each st around. (12)"),
        (BRIM, "[2 dc in next st, dc] × 6. (18)", "[2 tr in next st, tr] × 6. (18)"),
        (SIDEWAYS, "4th ch", "3rd ch"),
        (SIDEWAYS, "next 8 sts, leave the rest", "next 8 sts"),
        (SIDEWAYS, "next 8 sts, leave the rest. (8)", "next 10 sts, leave the rest. (10)"),
        (SIDEWAYS, "as rows 2–5", "as rows 2–4"),
        (SIDEWAYS, "gather 6 row ends", "gather 12 row ends"),
        (SIDEWAYS, "sl st through back loop", "sc through back loop"),
        (APART, "skip 1 row end", "skip 2 row ends"),
        (APART, "sl st in each", "sc in each"),
        (APART, "(6)\n\nBand", "(7)\n\nBand"),
        (GORRO, "4 cad.", "5 cad."),
        (GORRO, "[pb2jun, pb]", "[pb2jun, pa]"),
        (GORRO, "[pb2jun, pb]", "[pb2tog, pb]"),
        (GORRO, "Vueltas 2–4", "Vuelta 2–4"),
        (GORRO, "Vueltas 2–4", "Rounds 2–4"),
        (GORRO, "2.ª cad", "3.ª cad"),
        (GORRO, "3 extremos de hilera siguientes", "3 ps siguientes"),
        (GORRO, "3 extremos de hilera siguientes", "3 extremo de hilera siguientes"),
        (GORRO, "fruncir 7 ps", "fruncir 7 p"),
        (GORRO, "fruncir 7 ps", "fruncir 8 ps"),
        (GORRO, "Hilera 2, weld: 1 cad", "Hilera 2, weld: 2 cad"),
        (ABAJO, "hasta la vuelta 9", "hasta la vuelta 8"),
        (ABAJO, "14 ps", "13 ps"),
        (ABAJO, "Vuelta 2: 2 cad, ", "Vuelta 2: "),
        (ABAJO, "solo en la hebra trasera", "solo en la hebra"),
        (ABAJO, "alrededor, unir. (12)", "alrededor. (12)"),
        (ALA, "[pard, part]", "[part, pard]"),
        (ALA, "en cada cad alrededor", "en cada p alrededor"),
        (DE_LADO, "como las hileras 2–5", "como las hileras 2–4"),
        (DE_LADO, "de cada uno de los 8 ps", "delantera de cada uno de los 8 ps"),
        (DE_LADO, "pr a través", "pb a través"),
        (APARTE, "saltar 1 extremo de hilera", "saltar 2 extremos de hilera"),
        (APARTE, "saltar 1 extremo de hilera", "skip 1 row end"),
    ] {
        assert!(text.contains(sound), "{sound}");
        let text = text.replacen(sound, damaged, 1);
        let fault = work(&text).expect_err(damaged);
        let quoted = text.lines().any(|line| line == fault.line);
        assert!(quoted && fault.to_string().contains(&fault.why), "{fault}");
    }
    assert!(work(&HAT.replace("Written in US", "Written in")).is_err());
    assert!(work(&HAT.replace("Last: fasten off, gather 7 sts.\n", "")).is_err());
    assert!(work(&SIDEWAYS.replace("Seam: turn", "Turn")).is_err());
    assert!(work(&APART.replace("Join: [sl st", "Then: [sl st")).is_err());
}
