//! Writes pictures of a rowing club's winter caps, as SVG files, into the folder named on the command line.

use hatwright_pattern::picture::{HatLabels, hat_picture, round_chart, to_svg};
use hatwright_sizing::{
    Age, Ball, BandSpec, Build, Closing, Colour, Count, Coverage, HatSpec, Head, Layout, Length, PomPom, Ratio, RoundStripe,
    Rounds, RowStripe, Rows, Sex, Stitches, Stretch, Swatch, plan,
};
use std::path::PathBuf;
use std::process::ExitCode;

/// Indigo, weld, madder, walnut, undyed, moss.
const YARN: [&str; 6] = ["#34516f", "#c79a2b", "#a4402f", "#6b4a2f", "#e3d6bd", "#5c6b45"];

fn main() -> ExitCode {
    let Some(folder) = std::env::args_os().nth(1).map(PathBuf::from) else {
        eprintln!("Name a folder.");
        return ExitCode::FAILURE;
    };
    for (name, spec) in caps() {
        let hat = match plan(&spec) {
            Ok(hat) => hat,
            Err(refusal) => {
                eprintln!("{name}: {refusal:?}");
                return ExitCode::FAILURE;
            }
        };
        let girth = hat.size.girth.cm();
        let labels = HatLabels {
            depth: format!("{:.1} cm", hat.depth.promised.cm()),
            girth: format!("{:.1} cm flat · {girth:.1} cm around", girth / 2.0),
        };
        for (end, picture) in [("", hat_picture(&hat, &labels)), ("-rounds", round_chart(&hat))] {
            if let Err(error) = std::fs::write(folder.join(format!("{name}{end}.svg")), to_svg(&picture, &YARN)) {
                eprintln!("{name}: {error}");
                return ExitCode::FAILURE;
            }
        }
    }
    ExitCode::SUCCESS
}

fn caps() -> Vec<(&'static str, HatSpec)> {
    let rows =
        |all: &[(u8, u32)]| all.iter().map(|(c, n)| RowStripe { colour: Colour(*c), rows: Rows::new(*n) }).collect::<Vec<_>>();
    let rounds = |all: &[(u8, u32)]| {
        all.iter().map(|(c, n)| RoundStripe { colour: Colour(*c), rounds: Rounds::new(*n) }).collect::<Vec<_>>()
    };
    let balls = |n: usize| vec![Ball { yarn: Count::whole(80) }; n];
    let gauge = |stitches: i32, rounds: i32| Swatch::Counted {
        stitches: Count::whole(stitches),
        width: Length::from_cm(10.0),
        rounds: Count::whole(rounds),
        height: Length::from_cm(10.0),
    };
    let pom = |cm: f64, colour: Option<u8>| Some(PomPom { diameter: Length::from_cm(cm), colour: colour.map(Colour) });

    let junior = HatSpec {
        head: Head::ByAge { age: Age::Years(Count::whole(4)), sex: Sex::Unknown, build: Build::Average },
        swatch: gauge(12, 15),
        body_stretch: Stretch::Usual,
        ease: Ratio::of(0.07),
        coverage: Coverage::OverEars,
        band: BandSpec {
            height: Stitches::new(10),
            fold: Length::from_cm(4.2),
            swatch: None,
            stretch: Stretch::Usual,
            stripes: rows(&[(0, 2), (1, 2)]),
        },
        body_stripes: rounds(&[(0, 6), (1, 2)]),
        layout: Layout::Spread,
        closing: Closing::Drawn,
        pom_pom: pom(6.0, None),
        balls: balls(2),
        margin: Ratio::of(0.25),
        chosen: None,
    };
    let band = |height: u32, fold: f64, stripes: Vec<RowStripe>| BandSpec {
        height: Stitches::new(height),
        fold: Length::from_cm(fold),
        stripes,
        ..junior.band.clone()
    };
    vec![
        ("junior", junior.clone()),
        (
            "newborn",
            HatSpec {
                head: Head::Measured(Length::from_cm(33.0)),
                swatch: gauge(20, 23),
                band: band(8, 0.0, rows(&[(4, 2)])),
                body_stripes: rounds(&[(5, 1), (4, 3)]),
                pom_pom: None,
                balls: balls(6),
                ..junior.clone()
            },
        ),
        (
            "cox",
            HatSpec {
                head: Head::Measured(Length::from_cm(56.0)),
                coverage: Coverage::EarTops,
                band: band(5, 0.0, rows(&[(2, 2)])),
                body_stripes: rounds(&[(2, 4), (4, 1)]),
                layout: Layout::Wedges(8),
                pom_pom: None,
                balls: balls(5),
                ..junior.clone()
            },
        ),
        (
            "stroke",
            HatSpec {
                head: Head::Measured(Length::from_cm(75.0)),
                swatch: gauge(27, 31),
                band: band(34, 6.0, rows(&[(3, 4), (4, 2)])),
                body_stripes: rounds(&[(3, 9), (1, 1), (4, 2), (1, 1)]),
                layout: Layout::Wedges(6),
                pom_pom: pom(9.0, Some(4)),
                balls: balls(5),
                ..junior.clone()
            },
        ),
        (
            "gathered",
            HatSpec {
                head: Head::Measured(Length::from_cm(57.0)),
                band: band(12, 5.0, rows(&[(5, 2)])),
                body_stripes: rounds(&[(5, 1)]),
                closing: Closing::Gathered(Stitches::new(400)),
                pom_pom: pom(8.0, Some(4)),
                balls: balls(6),
                ..junior.clone()
            },
        ),
        (
            "tall-band",
            HatSpec {
                head: Head::Measured(Length::from_cm(54.0)),
                coverage: Coverage::EarLobes,
                band: band(9, 0.0, rows(&[(0, 2), (4, 2), (2, 2), (4, 2)])),
                body_stripes: rounds(&[(0, 2), (2, 2)]),
                pom_pom: None,
                balls: balls(5),
                ..junior
            },
        ),
    ]
}
