//! What the hook does, counted: one tally for the yarn sum and for whoever compares it with the printed pattern.

use crate::{BandKind, Begun, Colour, Edge, Fabric, Hat, HatSpec, Loops, Quantity, Round, RoundKind, Way, Zone};

/// One thing that a hook does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Operation {
    /// A chain: of a foundation, of a turn, of the start of a joined round, of a tie.
    Chain,
    /// A slip stitch that joins: a ring, a round, a band to the body.
    Join,
    /// A chainless foundation stitch: a chain and a stitch in one.
    Foundation(Fabric),
    /// A stitch. An increase is two of them.
    Plain(Fabric),
    /// A decrease: two stitches worked together.
    Together(Fabric),
}

/// A part of a hat, as its yarn is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Part {
    /// The chain that rows or a round begin on.
    Foundation,
    /// The band, sideways or around.
    Band,
    /// A slip-stitch seam: of a sideways hat, or of a band made apart.
    Seam,
    /// The body, around the head; all the rows of a hat worked sideways.
    Body,
    /// What is shaped to close, or to open from a ring.
    Crown,
    /// The straight tail.
    Tail,
    /// The brim.
    Brim,
    /// Both ear flaps.
    Flaps,
    /// Both ties.
    Ties,
    /// Ends to weave in, and the strand that closes the top.
    Ends,
    /// Strands that are led up past other stripes.
    Carried,
    /// The pom-pom or the tassel.
    Topper,
    /// A swatch that is kept.
    Swatch,
}

impl Part {
    /// Every part, in the order of telling.
    pub const ALL: [Self; 13] = [
        Self::Foundation,
        Self::Band,
        Self::Seam,
        Self::Body,
        Self::Crown,
        Self::Tail,
        Self::Brim,
        Self::Flaps,
        Self::Ties,
        Self::Ends,
        Self::Carried,
        Self::Topper,
        Self::Swatch,
    ];

    /// Whether it is made of stitches; otherwise its yarn is cut or wound.
    pub const fn is_worked(self) -> bool {
        !matches!(self, Self::Ends | Self::Carried | Self::Topper)
    }

    const fn of(zone: Zone) -> Self {
        match zone {
            Zone::Band => Self::Band,
            Zone::Body | Zone::Under => Self::Body,
            Zone::Crown => Self::Crown,
            Zone::Tail => Self::Tail,
            Zone::Brim => Self::Brim,
        }
    }
}

impl Operation {
    /// Yarn in it, in stitch widths. Practice, no source: chain 3.3, slip stitch 3.5, single crochet 7, a decrease 1.6 of its stitch.
    ///
    /// ```
    /// use hatwright_sizing::{Fabric, Operation};
    /// assert!((Operation::Together(Fabric::Single).yarn() - 11.2).abs() < 1e-9);
    /// assert!((Operation::Foundation(Fabric::Single).yarn() - 10.3).abs() < 1e-9);
    /// ```
    pub fn yarn(self) -> f64 {
        let chain = Quantity::YarnChain.row().usual_value();
        match self {
            Self::Chain => chain,
            Self::Join => Fabric::SlipRib.yarn(),
            Self::Foundation(fabric) => chain + fabric.yarn(),
            Self::Plain(fabric) => fabric.yarn(),
            Self::Together(fabric) => Quantity::YarnDecrease.row().usual_value() * fabric.yarn(),
        }
    }
}

/// So many of one operation, in one colour and one gauge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Worked {
    /// The part of the hat.
    pub part: Part,
    /// The colour of the yarn.
    pub colour: Colour,
    /// Whether it is worked in the band's gauge; otherwise in the body's.
    pub band: bool,
    /// What is done.
    pub operation: Operation,
    /// How often.
    pub count: u64,
}

/// Everything that the hook does for a hat, alike things together, in the order in which they first come.
///
/// A cap of 56 rows of 10 on a chain of 11: a turning chain for every row but the first, which works into the chain beside the 10.
///
/// ```
/// use hatwright_sizing::{Fabric, HatSpec, Head, Length, Operation, operations, plan};
/// let spec = HatSpec { head: Head::Measured(Length::from_cm(49.8)), ..HatSpec::default() };
/// let all = operations(&plan(&spec).unwrap(), &spec);
/// let of = |operation| all.iter().filter(|w| w.band && w.operation == operation).map(|w| w.count).sum::<u64>();
/// assert_eq!((of(Operation::Plain(Fabric::SingleBack)), of(Operation::Chain)), (560, 11 + 55));
/// ```
pub fn operations(hat: &Hat, spec: &HatSpec) -> Vec<Worked> {
    let mut tally = Tally { all: Vec::new() };
    if hat.begun == Begun::Band {
        band_rows(hat, spec, &mut tally);
    }
    panel(hat, spec, &mut tally);
    for round in &hat.rounds {
        self::round(round, spec, &mut tally);
    }
    if hat.begun == Begun::Crown {
        band_rows(hat, spec, &mut tally);
        joined_band(hat, &mut tally);
    }
    flaps(hat, spec, &mut tally);
    tally.all.retain(|worked| worked.count > 0);
    tally.all
}

struct Tally {
    all: Vec<Worked>,
}

impl Tally {
    fn add(&mut self, of: Of, operation: Operation, count: u32) {
        let Of { part, colour, band } = of;
        let same = |w: &&mut Worked| w.part == part && w.colour == colour && w.band == band && w.operation == operation;
        match self.all.iter_mut().find(same) {
            Some(worked) => worked.count += u64::from(count),
            None => self.all.push(Worked { part, colour, band, operation, count: u64::from(count) }),
        }
    }

    /// Rows back and forth on a chain: the first works into it, so it has no turning chain beside the one of the foundation.
    fn rows(&mut self, of: Of, fabric: Fabric, foundation: u32, rows: impl Iterator<Item = (Colour, u32)>) {
        for (i, (colour, stitches)) in rows.enumerate() {
            let of = Of { colour, ..of };
            if i == 0 {
                self.add(Of { part: Part::Foundation, ..of }, Operation::Chain, foundation);
            }
            self.add(of, Operation::Chain, fabric.row().chain);
            self.add(of, Operation::Plain(fabric), stitches);
        }
    }
}

/// Where something is worked.
#[derive(Clone, Copy)]
struct Of {
    part: Part,
    colour: Colour,
    band: bool,
}

/// A sideways band. Its last row joins it into a ring: there is no other seam.
fn band_rows(hat: &Hat, spec: &HatSpec, tally: &mut Tally) {
    let height = spec.band.height.get();
    let of = Of { part: Part::Band, colour: Colour(0), band: true };
    tally.rows(of, spec.band_fabric(), height, hat.band_rows.iter().map(|colour| (*colour, height)));
}

/// A hat worked sideways. A slip-stitch seam joins its last row to the foundation edge: a seam is no row, so the rows stay even.
fn panel(hat: &Hat, spec: &HatSpec, tally: &mut Tally) {
    if let Some(panel) = &hat.panel {
        let of = Of { part: Part::Body, colour: Colour(0), band: false };
        tally.rows(of, spec.fabric, panel.stitches.get(), panel.rows.iter().map(|row| (row.colour, row.stitches.get())));
        if let Some(last) = panel.rows.last() {
            tally.add(Of { part: Part::Seam, colour: last.colour, band: false }, Operation::Join, panel.stitches.get());
        }
    }
}

fn round(round: &Round, spec: &HatSpec, tally: &mut Tally) {
    let band = round.zone == Zone::Band;
    let fabric = if band { spec.band_fabric() } else { spec.fabric };
    let (after, decreases) = (round.after.get(), round.decreases.get());
    let joined = spec.goes() == Way::Joined;
    let (mut chains, mut joins) = if joined { (fabric.row().chain, 1) } else { (0, 0) };
    let of = Of { part: Part::of(round.zone), colour: round.colour, band };
    match (round.kind, spec.band.edge) {
        (RoundKind::Foundation, Edge::Chainless) => {
            tally.add(of, Operation::Foundation(plain(fabric)), after);
            (chains, joins) = (0, 1);
        }
        (RoundKind::Foundation, Edge::LooseChain) => {
            tally.add(Of { part: Part::Foundation, ..of }, Operation::Chain, after);
            tally.add(of, Operation::Plain(plain(fabric)), after);
            joins += 1;
        }
        (kind, _) => {
            tally.add(of, Operation::Plain(fabric), after.saturating_sub(decreases));
            tally.add(of, Operation::Together(fabric), decreases);
            if kind == RoundKind::Ring {
                chains = 0;
            }
        }
    }
    tally.add(of, Operation::Chain, chains);
    tally.add(of, Operation::Join, joins);
}

/// A round that others go around the posts of is itself plain.
fn plain(fabric: Fabric) -> Fabric {
    let row = fabric.row();
    if row.loops != Loops::Posts {
        return fabric;
    }
    let same = |other: &&Fabric| other.row().stitch == row.stitch && other.row().loops == Loops::Both;
    Fabric::ALL.iter().find(same).copied().unwrap_or(fabric)
}

/// A sideways band that was made apart is joined to a hat begun at the crown with a slip stitch in each stitch of the hat.
fn joined_band(hat: &Hat, tally: &mut Tally) {
    // The band's own yarn does it: that of the hat is cut by then.
    if let (BandKind::Sideways, Some(last), Some(colour)) = (hat.band, hat.rounds.last(), hat.band_rows.last()) {
        tally.add(Of { part: Part::Seam, colour: *colour, band: false }, Operation::Join, last.after.get());
    }
}

/// Both flaps, in the body's fabric, each with its tie.
fn flaps(hat: &Hat, spec: &HatSpec, tally: &mut Tally) {
    let Some(flaps) = &hat.flaps else { return };
    let of = Of { part: Part::Flaps, colour: flaps.colour, band: false };
    for (i, row) in flaps.rows.iter().enumerate() {
        let turn = if i == 0 { 0 } else { spec.fabric.row().chain };
        let decreases = row.decreases.get();
        tally.add(of, Operation::Chain, 2 * turn);
        tally.add(of, Operation::Plain(spec.fabric), 2 * row.after.get().saturating_sub(decreases));
        tally.add(of, Operation::Together(spec.fabric), 2 * decreases);
    }
    tally.add(Of { part: Part::Ties, ..of }, Operation::Chain, 2 * flaps.tie_chains.get());
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{FlapRow, Flaps, Length, Panel, PanelRow, Rows, SideTop, Stitches, plan};

    fn count(all: &[Worked], of: impl Fn(&Worked) -> bool) -> u64 {
        all.iter().filter(|w| of(w)).map(|w| w.count).sum()
    }

    fn hat() -> (Hat, HatSpec) {
        let spec = HatSpec::default();
        (plan(&spec).unwrap(), spec)
    }

    /// Every stitch of a round is worked by a plain stitch or a decrease, and every stitch of the round below is used up by them.
    #[test]
    fn stitches_are_conserved() {
        let (hat, spec) = hat();
        let all = operations(&hat, &spec);
        let of = |operation| count(&all, |w| !w.band && w.operation == operation);
        let (plain, together) = (of(Operation::Plain(Fabric::Single)), of(Operation::Together(Fabric::Single)));
        let made: u64 = hat.rounds.iter().map(|r| u64::from(r.after.get())).sum();
        let used: u64 = hat.rounds.iter().map(|r| u64::from(r.before)).sum();
        assert_eq!((plain + together, plain + 2 * together), (made, used));
        assert!(together > 20);
        for colour in hat.colours() {
            let made: u64 = hat.rounds.iter().filter(|r| r.colour == colour).map(|r| u64::from(r.after.get())).sum();
            let worked = count(&all, |w| w.colour == colour && !w.band);
            assert_eq!(worked, made, "{colour:?}");
        }
        assert_eq!(of(Operation::Join) + of(Operation::Chain), 0);
    }

    #[test]
    fn an_increase_is_two_stitches() {
        let (mut hat, spec) = hat();
        let round = hat.rounds[0];
        let increase =
            Round { kind: RoundKind::Increase, before: 50, after: Stitches::new(57), increases: Stitches::new(7), ..round };
        let before = count(&operations(&hat, &spec), |w| !w.band);
        hat.rounds.push(increase);
        assert_eq!(count(&operations(&hat, &spec), |w| !w.band), before + 57);
    }

    #[test]
    fn joined_rounds_have_a_chain_and_a_join_each() {
        let (mut hat, mut spec) = hat();
        (spec.way, spec.fabric) = (Way::Joined, Fabric::Double);
        let rounds = hat.rounds.len() as u64;
        let tally = |hat: &Hat, operation| count(&operations(hat, &spec), |w| !w.band && w.operation == operation);
        assert_eq!((tally(&hat, Operation::Chain), tally(&hat, Operation::Join)), (3 * rounds, rounds));
        // A ring begins with no chain, and no more does a foundation made in one.
        hat.rounds[0].kind = RoundKind::Ring;
        assert_eq!((tally(&hat, Operation::Chain), tally(&hat, Operation::Join)), (3 * (rounds - 1), rounds));
        hat.rounds[0].kind = RoundKind::Foundation;
        assert_eq!((tally(&hat, Operation::Chain), tally(&hat, Operation::Join)), (3 * (rounds - 1), rounds));
        let first = u64::from(hat.rounds[0].after.get());
        assert_eq!(tally(&hat, Operation::Foundation(Fabric::Double)), first);
        spec.band.edge = Edge::LooseChain;
        let tally = |hat: &Hat, operation| count(&operations(hat, &spec), |w| !w.band && w.operation == operation);
        assert_eq!((tally(&hat, Operation::Chain), tally(&hat, Operation::Join)), (3 * rounds + first, rounds + 1));
    }

    #[test]
    fn a_post_rib_begins_with_a_plain_round() {
        let (mut hat, mut spec) = hat();
        (spec.band.kind, spec.band.fabric) = (BandKind::Around, Fabric::PostRib);
        hat.band_rows.clear();
        let rib = Round { zone: Zone::Band, kind: RoundKind::Plain, ..hat.rounds[0] };
        hat.rounds = vec![Round { kind: RoundKind::Foundation, ..rib }, rib];
        let n = u64::from(rib.after.get());
        let all = operations(&hat, &spec);
        assert!(all.iter().all(|w| w.band));
        assert_eq!(count(&all, |w| w.operation == Operation::Foundation(Fabric::Double)), n);
        assert_eq!(count(&all, |w| w.operation == Operation::Plain(Fabric::PostRib)), n);
    }

    #[test]
    fn a_band_made_apart_is_joined_stitch_by_stitch() {
        let (mut hat, spec) = hat();
        assert_eq!(count(&operations(&hat, &spec), |w| w.operation == Operation::Join), 0);
        hat.begun = Begun::Crown;
        let last = hat.rounds.last().map_or(0, |r| u64::from(r.after.get()));
        assert_eq!(count(&operations(&hat, &spec), |w| w.operation == Operation::Join), last);
    }

    #[test]
    fn flaps_are_two_and_a_panel_is_seamed() {
        let (mut hat, spec) = hat();
        (hat.rounds, hat.band_rows) = (Vec::new(), Vec::new());
        let row =
            |before, after: u32, decreases| FlapRow { before, after: Stitches::new(after), decreases: Stitches::new(decreases) };
        let colour = Colour(1);
        let rows = vec![row(10, 10, 0), row(10, 8, 2), row(8, 8, 0)];
        let (back, front, length) = (Stitches::new(14), Stitches::new(22), Length::from_cm(2.0));
        hat.flaps = Some(Flaps { rows, back, front, length, tie: length, tie_chains: Stitches::new(30), colour });
        let all = operations(&hat, &spec);
        assert!(all.iter().all(|w| w.colour == colour && !w.band));
        let of = |all: &[Worked], operation| count(all, |w| w.operation == operation);
        assert_eq!(of(&all, Operation::Plain(Fabric::Single)), 2 * (10 + 6 + 8));
        assert_eq!((of(&all, Operation::Together(Fabric::Single)), of(&all, Operation::Chain)), (4, 2 * (2 + 30)));
        hat.flaps = None;
        let rows: Vec<PanelRow> = [20, 20, 15, 15].map(|n| PanelRow { stitches: Stitches::new(n), colour }).to_vec();
        hat.panel = Some(Panel { rows, stitches: Stitches::new(20), wedge: Rows::new(4), top: SideTop::ShortRows });
        let all = operations(&hat, &spec);
        assert_eq!(of(&all, Operation::Plain(Fabric::Single)), 70);
        assert_eq!((of(&all, Operation::Join), of(&all, Operation::Chain)), (20, 20 + 4));
    }
}
