//! What to buy: whole balls after what is owned, and how often they are enough.

use crate::{Colour, Hat, HatSpec, Mass, Money, Ratio, YarnLength, YarnNeed, normal_share_below};

/// What to buy of one colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Buy {
    /// The colour.
    pub colour: Colour,
    /// What the hat takes.
    pub need: YarnNeed,
    /// The same in grams, where a ball's weight is known.
    pub grams: Option<Mass>,
    /// Yarn that is owned already.
    pub owned: YarnLength,
    /// Whole balls to buy.
    pub balls: u32,
    /// How often what is owned and bought is enough.
    pub chance: Ratio,
    /// What is left over of it, by the estimate; below zero is what is short.
    pub left: YarnLength,
    /// The same in grams.
    pub left_grams: Option<Mass>,
    /// What the balls cost, where the price is known.
    pub price: Option<Money>,
}

/// What to buy for one hat.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shop {
    /// Each colour that the hat uses.
    pub lines: Vec<Buy>,
    /// How often all of it is enough: as often as the least sure colour, since all stitches share one error.
    pub chance: Ratio,
    /// What it costs; absent where a colour to buy has no price.
    pub price: Option<Money>,
}

/// What to buy for a hat, of the colours that it uses.
///
/// The example's first colour takes 68 m, enough 19 times in 20 with 83.4 m: two balls of 80 m. One that is owned already leaves one to buy.
///
/// ```
/// use hatwright_sizing::{Count, HatSpec, plan, shop};
/// let mut spec = HatSpec::default();
/// spec.balls[0].owned = Count::whole(1);
/// let shop = shop(&plan(&spec).unwrap(), &spec);
/// assert_eq!((shop.lines[0].need.balls, shop.lines[0].balls), (2, 1));
/// assert!(shop.chance.value() >= 0.95);
/// ```
pub fn shop(hat: &Hat, spec: &HatSpec) -> Shop {
    let used = hat.yarn.iter().filter(|need| need.length > YarnLength::default());
    let lines: Vec<Buy> = used.filter_map(|need| Some(buy(need, spec.balls.get(usize::from(need.colour.0))?))).collect();
    let chance = lines.iter().map(|line| line.chance).min().unwrap_or(Ratio::of(1.0));
    let prices = lines.iter().filter(|line| line.balls > 0).map(|line| line.price);
    Shop { price: prices.sum(), chance, lines }
}

/// What to buy for a need, in whole balls after what is owned.
pub fn buy(need: &YarnNeed, ball: &crate::Ball) -> Buy {
    let owned = ball.owned_yarn();
    let missing = YarnLength::from_metres(need.safe.metres() - owned.metres());
    let balls = crate::yarn::whole_balls(missing, ball.yarn);
    let have = YarnLength::from_metres(owned.metres() + f64::from(balls) * ball.metres());
    let left = YarnLength::from_metres(have.metres() - need.length.metres());
    let grams = |length: YarnLength| ball.metres_per_gram().map(|per| Mass::from_grams(length.metres() / per));
    Buy {
        colour: need.colour,
        need: *need,
        grams: grams(need.length),
        owned,
        balls,
        chance: chance_of(need, have),
        left,
        left_grams: grams(left),
        price: ball.price.map(|price| price.times(balls)),
    }
}

/// How often a length of yarn is enough for a need: the share of its normal distribution that lies below.
///
/// ```
/// use hatwright_sizing::{HatSpec, chance_of, plan};
/// let need = plan(&HatSpec::default()).unwrap().yarn[0];
/// assert!((chance_of(&need, need.safe).value() - 0.95).abs() < 0.001);
/// assert!((chance_of(&need, need.length).value() - 0.5).abs() < 0.001);
/// ```
pub fn chance_of(need: &YarnNeed, have: YarnLength) -> Ratio {
    let over = have.metres() - need.length.metres();
    let deviation = need.deviation.metres();
    if deviation > 0.0 { Ratio::of(normal_share_below(over / deviation)) } else { Ratio::of(if over >= 0.0 { 1.0 } else { 0.0 }) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Ball, Count, Extra, Quantity, Topper, TopperKind, plan};

    fn metres(spec: &HatSpec, i: usize) -> f64 {
        plan(spec).unwrap().yarn[i].safe.metres()
    }

    /// Whatever is owned, what is owned and bought holds what is safe, one ball less does not, and none is bought for nothing.
    #[test]
    fn balls_hold_what_is_safe_and_no_ball_more() {
        let mut bought = 0;
        for chance in [5_000, 8_000, 9_500, 9_990] {
            for owned in [0, 25, 50, 99, 100, 133, 250, 900] {
                for yarn in [500, 3_333, 8_000, 200_000] {
                    let mut spec = HatSpec { extra: Extra::Chance(Ratio::from_ticks(chance)), ..HatSpec::default() };
                    spec.balls = vec![Ball { owned: Count::from_ticks(owned), ..Ball::of(Count::from_ticks(yarn)) }; 2];
                    let hat = plan(&spec).unwrap();
                    let shop = shop(&hat, &spec);
                    for line in &shop.lines {
                        let has = line.owned.millimetres() + i64::from(line.balls) * i64::from(yarn) * 10;
                        let safe = line.need.safe.millimetres();
                        assert!(has >= safe, "{chance} {owned} {yarn}");
                        assert!(line.balls == 0 || has - i64::from(yarn) * 10 < safe, "{chance} {owned} {yarn}");
                        assert_eq!(line.left.millimetres(), has - line.need.length.millimetres());
                        assert!(line.chance.ticks() + 1 >= chance && line.chance >= shop.chance);
                        bought += line.balls;
                    }
                }
            }
        }
        assert!(bought > 100);
    }

    /// Half a ball that is left over from another hat counts as half: 83.4 m in balls of 80 m are two, and one less with 40 m in the house.
    #[test]
    fn parts_of_balls_count() {
        let mut spec = HatSpec::default();
        let lacks = metres(&spec, 0) - 80.0;
        assert!((3.0..40.0).contains(&lacks), "{lacks}");
        let balls = |owned: f64| {
            let mut spec = spec.clone();
            spec.balls[0].owned = Count::from_ticks((owned * 100.0) as i32);
            shop(&plan(&spec).unwrap(), &spec).lines[0].balls
        };
        assert_eq!((balls(0.0), balls(0.03), balls(0.5), balls(1.0), balls(1.5)), (2, 2, 1, 1, 0));
        spec.balls[0].owned = Count::whole(999);
        let line = shop(&plan(&spec).unwrap(), &spec).lines[0];
        assert_eq!((line.balls, line.chance), (0, Ratio::of(1.0)));
    }

    #[test]
    fn more_yarn_is_enough_more_often() {
        let need = plan(&HatSpec::default()).unwrap().yarn[0];
        let chances: Vec<Ratio> = (0..200).map(|m| chance_of(&need, YarnLength::from_metres(f64::from(m)))).collect();
        assert!(chances.is_sorted() && chances[0] < Ratio::of(0.001) && chances[199] > Ratio::of(0.999));
        // And what is surer asks for more.
        let safe = |chance| metres(&HatSpec { extra: Extra::Chance(Ratio::of(chance)), ..HatSpec::default() }, 0);
        let all: Vec<f64> = [0.5, 0.6, 0.8, 0.9, 0.95, 0.99, 0.999].map(safe).to_vec();
        assert!(all.is_sorted_by(|a, b| a < b), "{all:?}");
    }

    /// A share by hand is a share, and its chance follows from how sure the estimate is: a quarter more of stitches that are known to a
    /// quarter, 19 times in 20.
    #[test]
    fn a_share_by_hand_has_its_chance() {
        let spec = HatSpec { extra: Extra::Share(Ratio::of(0.25)), topper: None, ..HatSpec::default() };
        let need = plan(&spec).unwrap().yarn[0];
        assert_eq!(need.safe, YarnLength::from_metres(need.length.metres() * 1.25));
        let chance = chance_of(&need, need.safe);
        // Ends are surer than stitches.
        assert!((0.95..0.96).contains(&chance.value()), "{chance:?}");
    }

    #[test]
    fn nothing_uncertain_is_enough_or_is_not() {
        let need = YarnNeed { deviation: YarnLength::default(), ..plan(&HatSpec::default()).unwrap().yarn[0] };
        let short = YarnLength::from_metres(need.length.metres() - 0.01);
        assert_eq!((chance_of(&need, need.length), chance_of(&need, short)), (Ratio::of(1.0), Ratio::of(0.0)));
    }

    /// Two balls at 4.50 and one at 6.00 are 15.00; a colour without a price leaves the sum open, unless none of it is bought.
    #[test]
    fn the_price_is_of_what_is_bought() {
        let mut spec = HatSpec::default();
        spec.balls[0].price = Some(Money::from_ticks(450));
        let price = |spec: &HatSpec| shop(&plan(spec).unwrap(), spec).price;
        assert_eq!(price(&spec), None);
        spec.balls[1].price = Some(Money::from_ticks(600));
        assert_eq!(price(&spec), Some(Money::from_ticks(1_500)));
        (spec.balls[1].price, spec.balls[1].owned) = (None, Count::whole(5));
        assert_eq!(price(&spec), Some(Money::from_ticks(900)));
        spec.balls[0].owned = Count::whole(5);
        assert_eq!(price(&spec), Some(Money::from_ticks(0)));
    }

    /// 80 m of 50 g: metres ÷ 1.6.
    #[test]
    fn grams_are_metres_of_the_band() {
        let mut spec = HatSpec::default();
        spec.balls[0].grams = Some(Mass::from_grams(50.0));
        let shop = shop(&plan(&spec).unwrap(), &spec);
        let line = shop.lines[0];
        assert_eq!(line.grams, Some(Mass::from_grams(line.need.length.metres() / 1.6)));
        assert_eq!(line.left_grams, Some(Mass::from_grams(line.left.metres() / 1.6)));
        assert_eq!((shop.lines[1].grams, shop.lines[1].left_grams), (None, None));
    }

    /// Only what is used is bought; a colour of the pom-pom alone is used.
    #[test]
    fn a_colour_that_is_not_used_is_not_bought() {
        let mut spec = HatSpec { topper: None, ..HatSpec::default() };
        spec.balls.push(Ball::of(Count::from_ticks(Quantity::BallYarn.row().usual)));
        let lines = |spec: &HatSpec| shop(&plan(spec).unwrap(), spec).lines.len();
        assert_eq!(lines(&spec), 2);
        spec.topper = Some(Topper::usual(TopperKind::Tassel).coloured(Colour(2)));
        assert_eq!(lines(&spec), 3);
    }
}
