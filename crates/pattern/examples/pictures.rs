//! Writes pictures of a rowing club's winter caps, as SVG files, into the folder named on the command line: every style, and odd ones.

use hatwright_pattern::figures::Units;
use hatwright_pattern::picture::{
    Charted, CrownView, HatLabels, charts, hat_picture, hat_silhouette, round_wheel, style_icon, to_svg, yarn_picture,
};
use hatwright_pattern::written::{Hand, Terms, write as write_pattern};
use hatwright_sizing::{
    BandKind, BandSpec, Begun, Closing, Colour, Count, Coverage, Fabric, HatSpec, Head, Layout, Length, Ratio, RoundStripe,
    Rounds, RowStripe, Rows, Shape, SideTop, Stitches, Style, Swatch, Topper, TopperKind, plan,
};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

const NAMES: [&str; 6] = ["Indigo", "Weld", "Madder", "Walnut", "Undyed", "Moss"];
/// Their values on a screen.
const YARN: [&str; 6] = ["#34516f", "#c79a2b", "#a4402f", "#6b4a2f", "#e3d6bd", "#5c6b45"];

fn main() -> ExitCode {
    let Some(folder) = std::env::args_os().nth(1).map(PathBuf::from) else {
        eprintln!("Name a folder.");
        return ExitCode::FAILURE;
    };
    match write_all(&folder) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn write_all(folder: &Path) -> Result<(), String> {
    let write = |name: String, text: String| std::fs::write(folder.join(&name), text).map_err(|e| format!("{name}: {e}"));
    for (name, spec) in caps() {
        let hat = plan(&spec).map_err(|refusal| format!("{name}: {refusal:?}"))?;
        let labels = HatLabels::of(&hat, &spec, Units::Centimetres);
        write(format!("{name}.svg"), to_svg(&hat_picture(&hat, &spec, &labels), &YARN))?;
        write(format!("{name}-wheel.svg"), to_svg(&round_wheel(&hat), &YARN))?;
        write(format!("{name}-small.svg"), to_svg(&hat_silhouette(&hat), &YARN))?;
        write(format!("{name}-yarn.svg"), to_svg(&yarn_picture(&hat, &NAMES, Units::Centimetres), &YARN))?;
        let (pattern, colours) = (write_pattern(&hat, &spec), NAMES.map(str::to_owned));
        for (hand, view, kind) in [(Hand::Right, CrownView::Whole, ""), (Hand::Left, CrownView::Wedge, "-left")] {
            let (terms, units) = (Terms::Us, Units::Centimetres);
            let of = Charted { hat: &hat, spec: &spec, pattern: &pattern, colours: &colours, hand, terms, units };
            for chart in charts(&of, view) {
                write(format!("{name}-chart-{}{kind}.svg", chart.id), to_svg(&chart.picture, &YARN))?;
            }
        }
    }
    for style in Style::ALL {
        write(format!("icon-{style:?}.svg").to_lowercase(), to_svg(&style_icon(style), &[]))?;
    }
    Ok(())
}

fn rows(all: &[(u8, u32)]) -> Vec<RowStripe> {
    all.iter().map(|(c, n)| RowStripe { colour: Colour(*c), rows: Rows::new(*n) }).collect()
}

fn rounds(all: &[(u8, u32)]) -> Vec<RoundStripe> {
    all.iter().map(|(c, n)| RoundStripe { colour: Colour(*c), rounds: Rounds::new(*n) }).collect()
}

fn gauge(stitches: i32, rounds: i32) -> Swatch {
    Swatch::Counted {
        stitches: Count::whole(stitches),
        width: Length::from_cm(10.0),
        rounds: Count::whole(rounds),
        height: Length::from_cm(10.0),
    }
}

fn pom(cm: f64, colour: u8) -> Topper {
    Topper::usual(TopperKind::PomPom).sized(Length::from_cm(cm)).coloured(Colour(colour))
}

fn tassel(cm: f64, colour: Option<Colour>) -> Topper {
    Topper { colour, ..Topper::usual(TopperKind::Tassel).sized(Length::from_cm(cm)) }
}

/// A cap with six colours to choose from.
fn cap() -> HatSpec {
    let usual = HatSpec::default();
    HatSpec { balls: vec![usual.balls[0]; 6], ..usual }
}

fn head(cm: f64) -> Head {
    Head::Measured(Length::from_cm(cm))
}

fn band(height: u32, fold: f64, stripes: Vec<RowStripe>) -> BandSpec {
    BandSpec { height: Stitches::new(height), fold: Length::from_cm(fold), stripes, ..cap().band }
}

fn around(fabric: Fabric, count: u32, fold: f64, stripes: Vec<RowStripe>) -> BandSpec {
    BandSpec { kind: BandKind::Around, fabric, rounds: Rounds::new(count), ..band(10, fold, stripes) }
}

fn caps() -> Vec<(&'static str, HatSpec)> {
    let mut all = fitted();
    all.extend(loose());
    all.extend(sided());
    all
}

fn fitted() -> Vec<(&'static str, HatSpec)> {
    vec![
        ("junior", cap()),
        ("junior-tassel", HatSpec { topper: Some(tassel(10.0, None)), ..cap() }),
        ("junior-tassel-long", HatSpec { topper: Some(tassel(30.0, Some(Colour(2)))), ..cap() }),
        ("junior-down", HatSpec { begun: Begun::Crown, ..cap() }),
        (
            "newborn",
            HatSpec {
                head: head(33.0),
                swatch: gauge(20, 23),
                band: band(8, 0.0, rows(&[(4, 2)])),
                body_stripes: rounds(&[(5, 1), (4, 3)]),
                topper: None,
                ..cap()
            },
        ),
        (
            "cox",
            HatSpec {
                head: head(56.0),
                coverage: Coverage::EarTops,
                band: band(5, 0.0, rows(&[(2, 2)])),
                body_stripes: rounds(&[(2, 4), (4, 1)]),
                layout: Layout::Wedges(8),
                topper: None,
                ..cap()
            },
        ),
        (
            "stroke",
            HatSpec {
                head: head(75.0),
                swatch: gauge(27, 31),
                band: band(34, 6.0, rows(&[(3, 4), (4, 2)])),
                body_stripes: rounds(&[(3, 9), (1, 1), (4, 2), (1, 1)]),
                layout: Layout::Wedges(6),
                topper: Some(pom(9.0, 4)),
                ..cap()
            },
        ),
        (
            "gathered",
            HatSpec {
                head: head(57.0),
                band: band(12, 5.0, rows(&[(5, 2)])),
                body_stripes: rounds(&[(5, 1)]),
                closing: Closing::Gathered(Stitches::new(400)),
                topper: Some(pom(8.0, 4)),
                ..cap()
            },
        ),
        (
            "double",
            HatSpec {
                head: head(57.0),
                fabric: Fabric::Double,
                swatch: gauge(13, 7),
                band: around(Fabric::PostRib, 6, 0.0, rows(&[(5, 1)])),
                body_stripes: rounds(&[(5, 3), (4, 1)]),
                topper: None,
                ..cap()
            },
        ),
        (
            "post-rib-fold",
            HatSpec {
                head: head(57.0),
                fabric: Fabric::HalfDoubleBack,
                swatch: gauge(13, 10),
                band: around(Fabric::PostRib, 9, 5.0, rows(&[(2, 2), (4, 1)])),
                body_stripes: rounds(&[(2, 3), (4, 1)]),
                ..cap()
            },
        ),
        ("plain-rounds", HatSpec { band: around(Fabric::Single, 8, 0.0, rows(&[(0, 1), (4, 1)])), topper: None, ..cap() }),
        ("no-band", HatSpec { band: BandSpec { kind: BandKind::None, ..cap().band }, topper: None, ..cap() }),
        ("huge-fold", HatSpec { head: head(56.0), band: band(30, 20.0, rows(&[(0, 2), (1, 2)])), ..cap() }),
    ]
}

fn loose() -> Vec<(&'static str, HatSpec)> {
    let slouch = HatSpec { style: Style::Slouch, topper: None, ..cap() };
    let stocking = HatSpec { style: Style::Stocking, ..cap() };
    let tam = HatSpec { style: Style::Tam, band: band(4, 0.0, rows(&[(0, 2), (1, 2)])), ..cap() };
    let long = |cm: f64| Shape { tail: Length::from_cm(cm), ..Shape::default() };
    vec![
        ("slouch", slouch.clone()),
        ("slouch-down", HatSpec { begun: Begun::Crown, ..slouch.clone() }),
        (
            "slouch-grown",
            HatSpec {
                head: head(57.0),
                swatch: gauge(18, 20),
                shape: Shape { slouch_longer: Length::from_cm(10.0), slouch_wider: Ratio::of(0.3), ..Shape::default() },
                band: band(9, 0.0, rows(&[(5, 2)])),
                body_stripes: rounds(&[(5, 5), (4, 2)]),
                ..slouch
            },
        ),
        ("stocking", stocking.clone()),
        ("stocking-tassel", HatSpec { topper: Some(tassel(10.0, Some(Colour(1)))), ..stocking.clone() }),
        ("stocking-down", HatSpec { begun: Begun::Crown, ..stocking.clone() }),
        ("stocking-short", HatSpec { shape: long(8.0), ..stocking.clone() }),
        ("stocking-1m", HatSpec { shape: long(100.0), ..stocking.clone() }),
        ("stocking-5m", HatSpec { shape: long(500.0), head: head(57.0), ..stocking.clone() }),
        (
            "stocking-baby",
            HatSpec {
                head: head(38.0),
                swatch: gauge(24, 28),
                band: band(8, 0.0, rows(&[(2, 2)])),
                body_stripes: rounds(&[(2, 4), (4, 4)]),
                topper: Some(pom(3.0, 4)),
                ..stocking
            },
        ),
        ("tam", tam.clone()),
        ("tam-tassel", HatSpec { topper: Some(tassel(12.0, Some(Colour(1)))), ..tam.clone() }),
        ("tam-down", HatSpec { begun: Begun::Crown, ..tam.clone() }),
        (
            "tam-grown",
            HatSpec {
                head: head(57.0),
                swatch: gauge(18, 20),
                shape: Shape { tam_across: Length::from_cm(28.0), ..Shape::default() },
                layout: Layout::Wedges(6),
                band: around(Fabric::PostRib, 4, 0.0, rows(&[(2, 1)])),
                body_stripes: rounds(&[(2, 1)]),
                topper: Some(pom(4.0, 2)),
                ..tam
            },
        ),
    ]
}

fn sided() -> Vec<(&'static str, HatSpec)> {
    let warmer = HatSpec { style: Style::EarWarmer, topper: None, ..cap() };
    let flaps = HatSpec { style: Style::EarFlap, band: band(3, 0.0, rows(&[(0, 2), (1, 2)])), ..cap() };
    let brim = HatSpec { style: Style::Brimmed, topper: None, ..cap() };
    let side = HatSpec { style: Style::Sideways, fabric: Fabric::SingleBack, body_stripes: rounds(&[(0, 2), (1, 2)]), ..cap() };
    vec![
        ("warmer", warmer.clone()),
        ("warmer-around", HatSpec { head: head(56.0), band: around(Fabric::PostRib, 6, 0.0, rows(&[(2, 2), (4, 1)])), ..warmer }),
        ("flaps", flaps.clone()),
        (
            "flaps-ties",
            HatSpec {
                head: head(56.0),
                begun: Begun::Crown,
                swatch: gauge(16, 18),
                shape: Shape { flap_tie: Length::from_cm(30.0), flap_length: Length::from_cm(10.0), ..Shape::default() },
                band: BandSpec { kind: BandKind::None, ..cap().band },
                body_stripes: rounds(&[(2, 4), (4, 1), (3, 1), (4, 1)]),
                ..flaps
            },
        ),
        ("brim", brim.clone()),
        ("brim-down", HatSpec { begun: Begun::Crown, ..brim.clone() }),
        (
            "brim-flare",
            HatSpec {
                head: head(57.0),
                swatch: gauge(18, 20),
                shape: Shape { brim: Length::from_cm(9.0), flare: Ratio::of(0.5), ..Shape::default() },
                body_stripes: rounds(&[(4, 6), (1, 1)]),
                ..brim
            },
        ),
        ("sideways", side.clone()),
        (
            "sideways-short",
            HatSpec {
                head: head(57.0),
                swatch: gauge(16, 16),
                shape: Shape { side_top: SideTop::ShortRows, ..Shape::default() },
                body_stripes: rounds(&[(2, 4), (4, 2)]),
                band: band(10, 0.0, rows(&[(0, 2)])),
                topper: None,
                ..side
            },
        ),
    ]
}
