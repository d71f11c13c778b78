//! What the list of materials says, read back from its text: the hat's own numbers, rounded no more than is shown.

use super::{NAMES, YARNS, ensure, print};
use hatwright_pattern::figures::Units;
use hatwright_pattern::written::Terms;
use hatwright_sizing::{Hat, HatSpec, TopperKind};
use hatwright_tests::practice::{Sizes, known, sizes, stitch};
use hatwright_tests::random::random_hats;

const HATS: usize = 3_000;

/// Units by their definitions: a yard is 0.9144 m, an inch 2.54 cm, an ounce 28.349 523 125 g.
struct Printed {
    metre: f64,
    yarn: &'static str,
    gram: f64,
    mass: &'static str,
    cm: f64,
    length: &'static str,
}

const METRIC: Printed = Printed { metre: 1.0, yarn: "m", gram: 1.0, mass: "g", cm: 1.0, length: "cm" };
const IMPERIAL: Printed =
    Printed { metre: 1.0 / 0.9144, yarn: "yd", gram: 1.0 / 28.349_523_125, mass: "oz", cm: 1.0 / 2.54, length: "in" };

/// A number, and what one of its last digit is worth.
fn number(text: &str) -> Result<(f64, f64), String> {
    let value = text.parse::<f64>().map_err(|_| format!("{text:?} is no number"))?;
    let decimals = text.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    Ok((value, 0.1_f64.powi(decimals as i32)))
}

/// Whether a number that is told is a length, weight or share to its last digit. What it rounds is whole itself: millimetres, or hundredths of a gram.
fn is(told: &str, value: f64, own: f64) -> Result<(), String> {
    let (number, digit) = number(told)?;
    ensure((number - value).abs() <= digit / 2.0 + own, || format!("{told} for {value}"))
}

fn after<'a>(text: &mut &'a str, until: &str) -> Result<&'a str, String> {
    let (before, rest) = text.split_once(until).ok_or_else(|| format!("no {until:?} in {text:?}"))?;
    *text = rest;
    Ok(before)
}

/// "Indigo: about 71 m (54 to 89), 45 g; 2 balls of Boathouse wool, weight 5, 50 g = 80 m."
fn yarn_line(line: &str, i: usize, spec: &HatSpec, hat: &Hat, units: &Printed) -> Result<(), String> {
    let (need, ball) = (&hat.yarn[i], &spec.balls[i]);
    let mut rest = line;
    let name = after(&mut rest, ": about ")?;
    ensure(name.to_lowercase() == NAMES[i], || format!("{name:?} for {}", NAMES[i]))?;
    let metres = |metres: f64| metres * units.metre;
    is(after(&mut rest, &format!(" {} (", units.yarn))?, metres(need.length.metres()), 1e-9)?;
    is(after(&mut rest, " to ")?, metres(need.low.metres()), 1e-9)?;
    is(after(&mut rest, ")")?, metres(need.high.metres()), 1e-9)?;
    let grams = after(&mut rest, "; ")?;
    match ball.grams {
        Some(of_ball) => {
            let told = grams.strip_prefix(", ").and_then(|g| g.strip_suffix(&format!(" {}", units.mass))).ok_or("no grams")?;
            is(told, of_ball.grams() * need.length.metres() / ball.yarn.value() * units.gram, 0.006)?;
        }
        None => ensure(grams.is_empty(), || format!("{grams:?}"))?,
    }
    let balls = after(&mut rest, " of ")?;
    let noun = if need.balls == 1 { "ball" } else { "balls" };
    ensure(balls == format!("{} {noun}", need.balls), || format!("{balls:?} for {}", need.balls))?;
    if let Some(yarn) = YARNS.get(i).filter(|yarn| !yarn.is_empty()) {
        rest =
            rest.strip_prefix(yarn).and_then(|rest| rest.strip_prefix(", ")).ok_or_else(|| format!("no {yarn:?} in {rest:?}"))?;
    }
    if let Some(weight) = ball.weight {
        let told = after(&mut rest, ", ")?;
        ensure(told == format!("weight {}", weight.number()), || told.to_owned())?;
    }
    if let Some(of_ball) = ball.grams {
        is(after(&mut rest, &format!(" {} = ", units.mass))?, of_ball.grams() * units.gram, 1e-9)?;
    }
    is(after(&mut rest, &format!(" {}.", units.yarn))?, metres(ball.yarn.value()), 1e-9)?;
    ensure(rest.is_empty(), || format!("and {rest:?}"))
}

/// "The lengths rest on 6.4 cm of yarn a stitch, from unravelled stitches, right to 7 % either way, 9 times in 10; …"
fn rate_line(line: &str, spec: &HatSpec, units: &Printed) -> Result<(), String> {
    let mut rest = line.strip_prefix("The lengths rest on ").ok_or("no rate")?;
    let (known, Sizes { w, band_w, .. }) = (known(spec), sizes(spec));
    let each = after(&mut rest, &format!(" {} of ", units.length))?;
    let of = after(&mut rest, " a stitch")?;
    let strands = if spec.strands > 1 { format!("each of {} strands", spec.strands) } else { "yarn".into() };
    ensure(of == strands, || format!("{of:?}"))?;
    let band = rest.starts_with(" of the band");
    let cm = known.factor * if band { stitch(spec.band_fabric()) * band_w } else { stitch(spec.fabric) * w };
    is(each, cm * units.cm, 0.001)?;
    after(&mut rest, ", right to ")?;
    let share = after(&mut rest, " % either way")?;
    is(share, known.metres[0].min(known.metres[1]) * 100.0, 0.006)?;
    ensure(rest.ends_with(", and a swatch.") == spec.yarn_use.swatch_kept, || rest.to_owned())
}

/// "The balls hold at least 5 to 9 % more than the estimate, …": of the colour with least, and of that with most.
fn margin_line(line: &str, hat: &Hat) -> Result<(), String> {
    let mut rest = line.strip_prefix("The balls hold at least ").ok_or("no margin")?;
    let told = after(&mut rest, " % more than the estimate")?;
    let (least, most) = told.split_once(" to ").unwrap_or((told, told));
    let used = hat.yarn.iter().filter(|need| need.length.millimetres() > 0);
    let over: Vec<f64> = used.map(|need| (need.safe.metres() / need.length.metres() - 1.0) * 100.0).collect();
    is(least, over.iter().copied().fold(f64::MAX, f64::min), 1e-6)?;
    is(most, over.iter().copied().fold(0.0, f64::max), 1e-6)
}

/// "Wind 108 wraps around a stiff card or form 6.0 cm wide, 54 of each colour: …"
fn topper_line(line: &str, spec: &HatSpec, hat: &Hat, units: &Printed) -> Result<(), String> {
    let (topper, w) = (spec.wears().ok_or("nothing is wound")?, sizes(spec).w);
    let usual = match topper.kind {
        TopperKind::PomPom => 15.0 * topper.size.cm() / w,
        TopperKind::Tassel => 30.0 / w,
    };
    let wraps = (usual * topper.fullness.value() - 1e-9).ceil().clamp(1.0, 2_000.0);
    let mut rest = line.strip_prefix("1. Wind ").ok_or("no winding")?;
    is(after(&mut rest, if wraps > 1.5 { " wraps " } else { " wrap " })?, wraps, -0.4)?;
    rest = rest.strip_prefix("around a stiff card or form ").ok_or("no form")?;
    is(after(&mut rest, &format!(" {} wide", units.length))?, topper.size.cm() * units.cm, 1e-9)?;
    let (colours, how) = (hat.colours(), rest.strip_suffix('.').unwrap_or(rest));
    match topper.colour {
        Some(colour) => ensure(how == format!(", in {}", NAMES[usize::from(colour.0)]), || how.to_owned()),
        None if colours.len() == 1 => ensure(how.is_empty(), || how.to_owned()),
        None => {
            let (each, names) = how.split_once(" of each colour: ").ok_or("no share")?;
            let each = each.trim_start_matches(", ").trim_start_matches("about ");
            is(each, wraps / colours.len() as f64, 0.5)?;
            let all: Vec<&str> = colours.iter().map(|colour| NAMES[usize::from(colour.0)]).collect();
            ensure(names == all.join(", "), || names.to_owned())
        }
    }
}

fn check(spec: &HatSpec, hat: &Hat, units: Units, printed: &Printed) -> Result<(), String> {
    let text = print(spec, hat, Terms::Us, units);
    let mut lines = text.lines().skip_while(|line| *line != "Materials").skip(2).take_while(|line| !line.is_empty());
    let mut next = || lines.next().ok_or("no more materials");
    for (i, _) in hat.yarn.iter().enumerate().filter(|(_, need)| need.length.millimetres() > 0) {
        let line = next()?;
        yarn_line(line, i, spec, hat, printed).map_err(|why| format!("{why} in {line:?}"))?;
    }
    for check in [&|line: &str| rate_line(line, spec, printed), &|line: &str| margin_line(line, hat)] as [&dyn Fn(&str) -> _; 2] {
        let line = next()?;
        check(line).map_err(|why: String| format!("{why} in {line:?}"))?;
    }
    match text.lines().find(|line| line.starts_with("1. Wind ")) {
        Some(line) => topper_line(line, spec, hat, printed).map_err(|why| format!("{why} in {line:?}")),
        None => ensure(hat.topper.is_none(), || "a topper that is never wound".into()),
    }
}

#[test]
fn materials_are_the_hats_own_numbers() {
    let mut failures = Vec::new();
    let (mut wound, mut colours) = (0, 0);
    for (seed, spec, hat) in random_hats(HATS) {
        for (units, printed) in [(Units::Centimetres, &METRIC), (Units::Inches, &IMPERIAL)] {
            failures.extend(check(&spec, &hat, units, printed).err().map(|why| format!("seed {seed}: {why}\n  {spec:?}")));
        }
        wound += u32::from(hat.topper.is_some());
        colours += u32::from(hat.colours().len() > 1);
    }
    let shown = failures.iter().take(3).cloned().collect::<Vec<_>>().join("\n");
    assert!(failures.is_empty(), "{} lists are not those of their hats:\n{shown}", failures.len());
    assert!(wound > 500 && colours > 500, "{wound} {colours}");
}

/// A number that is off by one of its last digit is noticed, wherever it stands.
#[test]
fn another_number_is_not_the_hats() {
    let (_, spec, hat) = random_hats(500).find(|(_, spec, _)| spec.balls[0].grams.is_some()).expect("a ball that was weighed");
    let (need, ball) = (hat.yarn[0], &spec.balls[0]);
    let grams = ball.grams.expect("as sought").grams();
    let line = |length: f64, high: f64, weight: f64, balls: u32, one: f64| {
        let number = ball.weight.map_or_else(String::new, |weight| format!("weight {}, ", weight.number()));
        let all = weight * grams * need.length.metres() / ball.yarn.value();
        let all = if all < 9.95 { format!("{all:.1}") } else { format!("{all:.0}") };
        let low = need.low.metres();
        let noun = if balls == 1 { "ball" } else { "balls" };
        let text =
            format!("Indigo: about {length:.0} m ({low:.0} to {high:.0}), {all} g; {balls} {noun} of {}, {number}", YARNS[0]);
        yarn_line(&format!("{text}{grams} g = {one} m."), 0, &spec, &hat, &METRIC)
    };
    let (length, high, one) = (need.length.metres(), need.high.metres(), ball.yarn.value());
    assert_eq!(line(length, high, 1.0, need.balls, one), Ok(()));
    for damaged in [
        line(length + 1.0, high, 1.0, need.balls, one),
        line(length, high - 1.0, 1.0, need.balls, one),
        line(length, high, 1.2, need.balls, one),
        line(length, high, 1.0, need.balls + 1, one),
        line(length, high, 1.0, need.balls, one + 0.01),
    ] {
        assert!(damaged.is_err());
    }
}
