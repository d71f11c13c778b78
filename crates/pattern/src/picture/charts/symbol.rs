//! The common crochet symbols, each as one path of thin lines.
//!
//! Common practice, no source: a cross for a single crochet, a T for a half double, a T with a bar for a double, legs that meet for stitches
//! worked together, legs that part for stitches in one place, an oval for a chain, a dot for a slip stitch. A cup under the foot is the
//! back loop, a cap over it the front loop; a hook at the foot goes around the post.

use super::super::pen::{At, Pen};
use super::super::shape::{Paint, Shape};
use hatwright_sizing::Stitch;

/// What the hook takes of the stitch below.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Hold {
    Both,
    Back,
    Front,
    FrontPost,
    BackPost,
}

/// How many of the round below become how many.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Form {
    /// One of one.
    One,
    /// Several into one.
    Together,
    /// Two in one place.
    Two,
}

/// A symbol, wherever it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Symbol {
    pub stitch: Stitch,
    pub form: Form,
    pub hold: Hold,
}

/// Half a crossbar.
const BAR: f64 = 4.0;
/// Half a cup under a foot.
const CUP: f64 = 3.2;

/// How tall a stitch's symbol is at least.
pub(super) const fn height(stitch: Stitch) -> f64 {
    match stitch {
        Stitch::Slip => 9.0,
        Stitch::Single => 12.0,
        Stitch::HalfDouble => 16.0,
        Stitch::Double => 21.0,
    }
}

macro_rules! held {
    ($hold:expr, $($part:literal),*) => {
        match $hold {
            Hold::Both => concat!("sym-", $($part),*),
            Hold::Back => concat!("sym-", $($part,)* " sym-back"),
            Hold::Front => concat!("sym-", $($part,)* " sym-front"),
            Hold::FrontPost => concat!("sym-", $($part,)* " sym-front-post"),
            Hold::BackPost => concat!("sym-", $($part,)* " sym-back-post"),
        }
    };
}

macro_rules! class {
    ($symbol:expr, $($stitch:ident $short:literal),*) => {
        match ($symbol.stitch, $symbol.form) {
            $(
                (Stitch::$stitch, Form::One) => held!($symbol.hold, $short),
                (Stitch::$stitch, Form::Together) => held!($symbol.hold, $short, "-tog"),
                (Stitch::$stitch, Form::Two) => held!($symbol.hold, $short, "-inc"),
            )*
        }
    };
}

impl Symbol {
    /// `sym-sc`, `sym-hdc-tog`, `sym-dc-inc sym-back`: what a style sheet and a test know it by.
    pub const fn class(self) -> &'static str {
        class!(self, Slip "sl", Single "sc", HalfDouble "hdc", Double "dc")
    }
}

/// Draws a symbol from its feet to its heads; `side` is 1, or −1 where all is mirrored.
pub(super) fn draw(symbol: Symbol, feet: &[At], heads: &[At], side: f64) -> Shape {
    let mut pen = Pen::new();
    let legs: Vec<(At, At)> = match (feet, heads) {
        ([foot], heads) => heads.iter().map(|head| (*foot, *head)).collect(),
        (feet, [head]) => feet.iter().map(|foot| (*foot, *head)).collect(),
        (feet, heads) => feet.iter().copied().zip(heads.iter().copied()).collect(),
    };
    for (foot, head) in &legs {
        leg(&mut pen, symbol.stitch, *foot, *head, side);
    }
    if matches!(symbol.stitch, Stitch::HalfDouble | Stitch::Double) {
        for head in heads {
            let middle = mean(feet);
            bar(&mut pen, *head, across(middle, *head), BAR);
        }
    }
    for foot in feet {
        under(&mut pen, symbol.hold, *foot, mean(heads), side);
    }
    Shape::path(pen.finish(), Paint::Class(symbol.class()))
}

/// A stem, with the bar that its stitch has.
fn leg(pen: &mut Pen, stitch: Stitch, foot: At, head: At, mirror: f64) {
    if stitch == Stitch::Slip {
        pen.ellipse(foot.toward(head, 0.5), 2.4, 2.4, true);
        return;
    }
    pen.go(foot);
    pen.line(head);
    let side = across(foot, head);
    match stitch {
        Stitch::Single => bar(pen, foot.toward(head, 0.5), side, BAR),
        // Aslant, so that it is no second cap.
        Stitch::Double => {
            let middle = foot.toward(head, 0.52);
            let along = unit(foot, head);
            let (over, up) = (0.85 * mirror, 0.5);
            let slant = At::new(side.x * over + along.x * up, side.y * over + along.y * up);
            bar(pen, middle, slant, BAR * 0.85);
        }
        Stitch::Slip | Stitch::HalfDouble => {}
    }
}

/// What shows at a foot that does not take both loops.
fn under(pen: &mut Pen, hold: Hold, foot: At, head: At, side: f64) {
    let (along, out) = (unit(foot, head), across(foot, head));
    let place =
        |sideways: f64, up: f64| At::new(foot.x + out.x * sideways + along.x * up, foot.y + out.y * sideways + along.y * up);
    match hold {
        Hold::Both => {}
        Hold::Back => {
            pen.go(place(-CUP, 1.2));
            pen.curve(place(0.0, -3.2), place(CUP, 1.2));
        }
        Hold::Front => {
            pen.go(place(-CUP, -1.8));
            pen.curve(place(0.0, 2.6), place(CUP, -1.8));
        }
        Hold::FrontPost | Hold::BackPost => {
            let turn = if hold == Hold::FrontPost { side } else { -side };
            pen.go(foot);
            pen.curve(place(0.0, -3.4), place(2.4 * turn, -3.2));
            pen.curve(place(4.6 * turn, -3.0), place(4.2 * turn, -0.4));
        }
    }
}

/// A chain, from one place to another.
pub(super) fn chain(pen: &mut Pen, from: At, to: At) {
    let (along, side) = (unit(from, to), across(from, to));
    let long = libm::hypot(to.x - from.x, to.y - from.y);
    let middle = from.toward(to, 0.5);
    let wide = (long * 0.32).min(2.6);
    let at = |a: f64, s: f64| At::new(middle.x + along.x * a + side.x * s, middle.y + along.y * a + side.y * s);
    pen.go(at(-long / 2.0, 0.0));
    pen.curve(at(-long / 2.0, wide), at(0.0, wide));
    pen.curve(at(long / 2.0, wide), at(long / 2.0, 0.0));
    pen.curve(at(long / 2.0, -wide), at(0.0, -wide));
    pen.curve(at(-long / 2.0, -wide), at(-long / 2.0, 0.0));
    pen.close();
}

fn bar(pen: &mut Pen, middle: At, side: At, half: f64) {
    pen.go(At::new(middle.x - side.x * half, middle.y - side.y * half));
    pen.line(At::new(middle.x + side.x * half, middle.y + side.y * half));
}

fn unit(from: At, to: At) -> At {
    let long = libm::hypot(to.x - from.x, to.y - from.y).max(1e-6);
    At::new((to.x - from.x) / long, (to.y - from.y) / long)
}

/// A step to the side of the way from foot to head.
fn across(from: At, to: At) -> At {
    let along = unit(from, to);
    At::new(-along.y, along.x)
}

fn mean(places: &[At]) -> At {
    let all = places.len().max(1) as f64;
    At::new(places.iter().map(|p| p.x).sum::<f64>() / all, places.iter().map(|p| p.y).sum::<f64>() / all)
}
