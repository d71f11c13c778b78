//! One shopping list for several hats, by yarn and colour.

use crate::known::plain;
use crate::{ColourName, Project, ProjectId, Rgb};
use core::cmp::Reverse;
use hatwright_sizing::{Ball, Buy, Count, Hat, Mass, Money, Ratio, YarnLength, YarnNeed, buy, plan, whole_balls};

/// The most copies of one hat.
pub const MOST_COPIES: u32 = 99;

/// A hat, so many times.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Copies {
    /// The hat.
    pub project: Project,
    /// How often, 1 to [`MOST_COPIES`]; more are taken as that.
    pub copies: u32,
}

/// What to buy of one colour of one yarn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListLine {
    /// What the yarn is called.
    pub yarn: String,
    /// What the colour is called.
    pub colour: String,
    /// How the screen shows it.
    pub hex: Rgb,
    /// A ball; what is owned is the most that any of the hats says, since they are the same balls.
    pub ball: Ball,
    /// Dye lots of what is owned, each once.
    pub lots: Vec<String>,
    /// What to buy: the sums of the hats' needs before rounding, in whole balls.
    pub buy: Buy,
    /// The hats that need it, the one that was changed last first: name, copies, and what all copies of it take.
    pub hats: Vec<(String, u32, YarnLength)>,
}

/// A list for several hats.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ShoppingList {
    /// Its lines, by yarn and colour.
    pub lines: Vec<ListLine>,
    /// Hats that cannot be planned, and so are not on it.
    pub left_out: Vec<(ProjectId, String)>,
    /// How often all of it is enough: as often as the least sure line.
    pub chance: Option<Ratio>,
    /// What it costs; absent where a colour to buy has no price.
    pub price: Option<Money>,
}

/// What tells one line from another.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
struct Key {
    yarn: String,
    colour: String,
    hex: [u8; 3],
    metres: i32,
    grams: i32,
}

impl Key {
    fn of(colour: &ColourName, ball: &Ball) -> Self {
        let (yarn, name) = (plain(&colour.yarn), plain(&colour.name));
        // A colour with a name is the same whatever screen it was chosen on.
        let hex = if name.is_empty() { colour.hex.channels() } else { [0; 3] };
        Self { yarn, colour: name, hex, metres: ball.yarn.ticks(), grams: ball.grams.map_or(0, Mass::ticks) }
    }
}

/// One list for several hats: the same colour of the same yarn, in the same balls, is one line.
///
/// Lengths, with what is bought over them, are added before anything is rounded to balls, and so are their doubts: one hand makes all the
/// hats, so that its error does not average out. Together they never take more balls than apart.
///
/// Two junior caps take one list of two colours, each twice as long:
///
/// ```
/// use hatwright_project::{Copies, ProjectId, example, shopping_list};
/// let project = example(ProjectId::from_bits(1));
/// let of = |copies| shopping_list(&[Copies { project: project.clone(), copies }]);
/// let (one, two) = (of(1), of(2));
/// assert_eq!((one.lines.len(), two.lines.len()), (2, 2));
/// assert_eq!(two.lines[0].buy.need.length.millimetres(), 2 * one.lines[0].buy.need.length.millimetres());
/// assert!(two.lines[0].buy.balls <= 2 * one.lines[0].buy.balls);
/// ```
pub fn shopping_list(hats: &[Copies]) -> ShoppingList {
    shopping_list_of(hats, &mut |project| plan(&project.spec).ok())
}

/// The same from hats that are planned already, or were found impossible: `planned` gives them, and need not plan them anew for every
/// copy more.
pub fn shopping_list_of(hats: &[Copies], planned: &mut dyn FnMut(&Project) -> Option<Hat>) -> ShoppingList {
    let mut list = ShoppingList::default();
    let mut lines: Vec<(Key, ListLine)> = Vec::new();
    // Whatever the order in which they were ticked, names are spelled and colours shown as the hat has them that was changed last.
    let mut hats: Vec<&Copies> = hats.iter().collect();
    hats.sort_by_cached_key(|of| (Reverse(of.project.changed_ms), of.project.id.clone(), of.copies));
    for Copies { project, copies } in hats {
        let copies = (*copies).clamp(1, MOST_COPIES);
        let Some(hat) = planned(project) else {
            list.left_out.push((project.id.clone(), project.name.clone()));
            continue;
        };
        for need in hat.yarn.iter().filter(|need| need.length > YarnLength::default()) {
            let i = usize::from(need.colour.0);
            let (Some(colour), Some(ball)) = (project.colours.get(i), project.spec.balls.get(i)) else { continue };
            let need = times(need, copies);
            let key = Key::of(colour, ball);
            let at = lines.binary_search_by(|(other, _)| other.cmp(&key)).unwrap_or_else(|at| {
                lines.insert(at, (key, line(colour, ball, &need)));
                at
            });
            join(&mut lines[at].1, colour, ball, &need, (&project.name, copies));
        }
    }
    list.lines = lines.into_iter().map(|(_, line)| ListLine { buy: buy(&line.buy.need, &line.ball), ..line }).collect();
    list.chance = list.lines.iter().map(|line| line.buy.chance).min();
    list.price = list.lines.iter().filter(|line| line.buy.balls > 0).map(|line| line.buy.price).sum();
    list
}

fn times(need: &YarnNeed, copies: u32) -> YarnNeed {
    let all = |length: YarnLength| core::iter::repeat_n(length, copies as usize).sum();
    YarnNeed {
        length: all(need.length),
        low: all(need.low),
        high: all(need.high),
        safe: all(need.safe),
        deviation: all(need.deviation),
        ..*need
    }
}

/// A line that nothing is on yet.
fn line(colour: &ColourName, ball: &Ball, need: &YarnNeed) -> ListLine {
    let none = YarnLength::default();
    let need = YarnNeed { length: none, low: none, high: none, safe: none, deviation: none, ..*need };
    ListLine {
        yarn: colour.yarn.trim().to_owned(),
        colour: colour.name.trim().to_owned(),
        hex: colour.hex,
        ball: Ball { owned: Count::from_ticks(0), price: None, ..*ball },
        lots: Vec::new(),
        buy: buy(&need, ball),
        hats: Vec::new(),
    }
}

fn join(line: &mut ListLine, colour: &ColourName, ball: &Ball, need: &YarnNeed, hat: (&str, u32)) {
    let sum = |a: YarnLength, b: YarnLength| [a, b].into_iter().sum();
    let now = &line.buy.need;
    line.buy.need = YarnNeed {
        length: sum(now.length, need.length),
        low: sum(now.low, need.low),
        high: sum(now.high, need.high),
        safe: sum(now.safe, need.safe),
        deviation: sum(now.deviation, need.deviation),
        ..*now
    };
    line.buy.need.balls = whole_balls(line.buy.need.safe, ball.yarn);
    line.ball.owned = line.ball.owned.max(ball.owned);
    line.ball.price = line.ball.price.max(ball.price);
    let lot = colour.lot.trim();
    if !lot.is_empty() && !line.lots.iter().any(|known| known == lot) {
        line.lots.push(lot.to_owned());
        line.lots.sort_unstable();
    }
    line.hats.push((hat.0.to_owned(), hat.1, need.length));
}
