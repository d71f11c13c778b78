//! What comes after the last round: closing, pom-pom or tassel, ends, care, and what should be known about this hat.

use super::about::{About, paragraphs};
use super::making::{Job, hides_its_outside};
use super::sheet::Section;
use crate::figures::{Units, length, unit_label};
use crate::say::{cautions, part_of_topper, remark};
use hatwright_sizing::{BandKind, Hat, Length, Loops, Remark, Style, TopKind, TopperKind, TopperPlan, Unit, YarnLength};
use hatwright_words::finish as say;

pub(super) fn sections(job: &Job<'_>) -> Vec<Section> {
    let (hat, about) = (job.hat, job.about);
    let section = |heading, before| Section { heading, before, ..Section::default() };
    let mut list = Vec::new();
    list.push(section(say::heading(), finishing(job)));
    if let Some(topper) = &hat.topper {
        list.push(section(part_of_topper(topper.kind), topper_work(topper, hat, about)));
    }
    list.push(section(say::care(), care(job)));
    let known: Vec<String> = hat
        .remarks
        .iter()
        .filter(|r| !matches!(r, Remark::SmallParts | Remark::BabySleep | Remark::LongParts))
        .map(|r| remark(r, hat, about.units))
        .collect();
    if !known.is_empty() {
        list.push(section(say::good_to_know(), known));
    }
    let cautions = cautions(hat, hat.topper.is_some());
    if !cautions.is_empty() {
        let told = cautions.iter().map(|caution| say::sourced(&caution.text, caution.source)).collect();
        list.push(section(say::for_small(), told));
    }
    list
}

/// How the top is drawn up.
pub(super) fn closing(job: &Job<'_>) -> Vec<String> {
    let Some(top) = job.hat.top else { return Vec::new() };
    let stitches = top.stitches.get();
    let (pass, draw) = match top.kind {
        TopKind::Gathered => (say::pass_gathered(stitches), say::draw_tight(&job.length(top.bundle))),
        TopKind::RowEnds => (say::pass_row_ends(stitches), say::draw_tight(&job.length(top.bundle))),
        TopKind::Drawn | TopKind::Ring => (say::pass_drawn(stitches), say::draw_closed().into()),
    };
    let draw = match job.hat.topper.map(|topper| topper.kind) {
        None => draw,
        Some(TopperKind::PomPom) => [&*draw, " ", say::hole_for_pompom()].concat(),
        Some(TopperKind::Tassel) => [&*draw, " ", say::hole_for_tassel()].concat(),
    };
    steps(vec![say::cut(&strand(top.strand, job.units())), pass, draw])
}

/// Steps in working order, numbered from 1.
fn steps(list: Vec<String>) -> Vec<String> {
    (1..).zip(list).map(|(n, what)| say::step(n, &what)).collect()
}

/// A strand to cut: up to a whole 5 cm, or a whole inch.
fn strand(l: Length, units: Units) -> String {
    let told = |step: u32, each: u32, units| {
        let steps = l.ticks().max(0).unsigned_abs().div_ceil(step);
        [&(steps * each).to_string(), " ", unit_label(Unit::Length, units)].concat()
    };
    let (cm, inches) = (told(5_000, 5, Units::Centimetres), told(2_540, 1, Units::Inches));
    match units {
        Units::Centimetres => cm,
        Units::Inches => inches,
        Units::Both => [&*cm, " (", &inches, ")"].concat(),
    }
}

/// How a pom-pom or a tassel is wound, tied, cut and sewn on.
fn topper_work(topper: &TopperPlan, hat: &Hat, about: &About<'_>) -> Vec<String> {
    let size = length(topper.size, about.units);
    let mut list = vec![winding(topper, &size, hat, about)];
    list.extend(match topper.kind {
        TopperKind::PomPom => vec![say::pompom_tie().into(), say::pompom_trim(&size)],
        TopperKind::Tassel => vec![say::tassel_tie().into(), say::tassel_neck().into(), say::tassel_trim(&size)],
    });
    let on = if hat.style == Style::Stocking { say::tie_on_tip() } else { say::tie_on() };
    list.extend([on.into(), say::tug().into()]);
    steps(list)
}

fn winding(topper: &TopperPlan, size: &str, hat: &Hat, about: &About<'_>) -> String {
    let used = hat.colours();
    let colours = used.len() as u32;
    match topper.colour {
        Some(colour) => say::wind_in(topper.wraps, size, &about.colour(colour)),
        None if colours > 1 => {
            let names: Vec<String> = used.iter().map(|colour| about.colour(*colour)).collect();
            let told = if topper.wraps.is_multiple_of(colours) { say::wind_each } else { say::wind_about_each };
            told(topper.wraps, size, topper.wraps / colours, &names.join(", "))
        }
        None => say::wind(topper.wraps, size),
    }
}

fn finishing(job: &Job<'_>) -> Vec<String> {
    let hat = job.hat;
    let weave = match (hat.depth.fold.ticks(), hat.band) {
        (..=0, _) => say::weave(),
        (_, BandKind::None) => say::weave_edge(),
        _ if hides_its_outside(hat) => say::weave_band(),
        _ => say::weave_part(),
    };
    let wash = if hat.style == Style::Tam {
        say::tam_plate(say::care(), &job.length(job.spec.shape.tam_across))
    } else {
        say::wash(say::care())
    };
    let mut list = vec![[weave, " ", say::cut_close()].concat(), wash];
    if hat.depth.fold.ticks() > 0 {
        let told = if hat.band == BandKind::None { say::fold_hat } else { say::fold_band };
        let fold = told(&job.length(hat.depth.fold));
        list.push(if shows_its_inside(job) { [&*fold, " ", say::inside_shows()].concat() } else { fold });
    }
    list.extend(hat.topper.map(|topper| match topper.kind {
        TopperKind::PomPom => say::then_pompom().into(),
        TopperKind::Tassel => say::then_tassel().into(),
    }));
    steps(list)
}

/// Whether the fold shows the inside of rounds. Rows and ribs are alike on both sides, and a band that is folded in half was turned for it.
fn shows_its_inside(job: &Job<'_>) -> bool {
    match job.hat.band {
        BandKind::Sideways => false,
        BandKind::Around => !hides_its_outside(job.hat) && job.spec.band_fabric().row().loops != Loops::Posts,
        BandKind::None => job.hat.panel.is_none(),
    }
}

/// How the hat is washed: what its designer says of that, or the usual advice.
fn care(job: &Job<'_>) -> Vec<String> {
    let own = paragraphs(job.about.designer.care);
    if !own.is_empty() {
        return own;
    }
    let hat = job.hat;
    let topper = hat.topper.map(|topper| topper.kind);
    let yarns = hat.yarn.iter().filter(|need| need.length > YarnLength::default()).count();
    let wash = match (yarns, topper) {
        (..=1, _) => say::care_one_yarn(),
        (_, None) => say::care_yarns(),
        (_, Some(TopperKind::PomPom)) => say::care_yarns_pompom(),
        (_, Some(TopperKind::Tassel)) => say::care_yarns_tassel(),
    };
    let dry = if hat.style == Style::Tam { say::care_dry_tam() } else { say::care_dry() };
    let shake = topper.map(|kind| match kind {
        TopperKind::PomPom => say::care_pompom(),
        TopperKind::Tassel => say::care_tassel(),
    });
    [Some(wash), Some(dry), shake].into_iter().flatten().map(Into::into).collect()
}

#[cfg(test)]
mod tests {
    use crate::figures::Units;
    use crate::written::{About, Designer, Terms, print, sample};
    use hatwright_sizing::{BandKind, Hat, Length};
    use hatwright_words::{Language, in_language};

    fn told(hat: &Hat, about: &About<'_>) -> String {
        print(hat, &sample::spec(), &About { title: "Cap", colour_names: &["indigo", "weld"], version: "0.1.0", ..*about })
    }

    fn section<'a>(text: &'a str, heading: &str) -> &'a str {
        let under = ["\n", heading, "\n", &"-".repeat(heading.chars().count()), "\n"].concat();
        text.split_once(&under).unwrap().1.split("\n\n").next().unwrap().trim_end()
    }

    #[test]
    fn finishing_goes_step_by_step() {
        let text = told(&sample::hat(), &About::default());
        assert_eq!(
            section(&text, "Finishing").lines().map(|line| &line[..18]).collect::<Vec<_>>(),
            ["1. Weave in every ", "2. Wash the hat as", "3. Fold the lower ", "4. When the hat is"]
        );
        let topper = section(&text, "Pom-pom");
        let steps: Vec<&str> = topper.lines().filter_map(|line| line.split_once(' ').map(|(number, _)| number)).collect();
        assert_eq!(steps, ["1.", "2.", "3.", "4.", "5."]);
        let at = |what: &str| text.find(what).unwrap();
        assert!(at("\nClosing the top\n") < at("\nFinishing\n") && at("\nFinishing\n") < at("\nPom-pom\n"));
        assert!(at("\nPom-pom\n") < at("\nCare\n"));
    }

    #[test]
    fn care_is_the_designers_or_the_usual() {
        let mut hat = sample::hat();
        assert_eq!(
            section(&told(&hat, &About::default()), "Care"),
            "Wash the hat as the ball bands say, by hand where they say nothing; where the yarns differ, the pom-pom's among them, as the most \
             delicate of them asks.\nDo not wring it: press the water out in a towel, pull it into shape and let it dry flat, away from sun and \
             heat (common practice).\nWhen it is dry, shake the pom-pom out and tug at it: tie it on anew if it gives."
        );
        hat.yarn.truncate(1);
        hat.topper = None;
        assert!(
            section(&told(&hat, &About::default()), "Care").starts_with("Wash the hat as the ball band says, by hand where it")
        );
        let own = About { designer: Designer { care: "Cold water.\n\nNo machine.", ..Designer::default() }, ..About::default() };
        assert_eq!(section(&told(&hat, &own), "Care"), "Cold water.\nNo machine.");
    }

    /// A rib and rows are alike on both sides; rounds are not, and a fold shows the other one.
    #[test]
    fn a_fold_says_where_it_shows_the_inside() {
        let mut hat = sample::hat();
        hat.depth.fold = Length::from_cm(2.0);
        let shows = |hat: &Hat| {
            section(&told(hat, &About::default()), "Finishing").contains("What shows there is the inside of the fabric.")
        };
        assert!(!shows(&hat));
        hat.band = BandKind::None;
        assert!(shows(&hat));
    }

    #[test]
    fn spanish_finishes_in_spanish() {
        in_language(Language::Spanish, || {
            let about = About { terms: Terms::Spanish, units: Units::Both, ..About::default() };
            let text = told(&sample::hat(), &about);
            let closing = section(&text, "Cierre superior");
            assert!(closing.contains("\n1. Corta el hilo dejando "), "{closing}");
            assert!(
                closing.contains("\n2. Enhébralo en la aguja lanera y pásalo por la hebra delantera de cada uno de los 9 puntos"),
                "{closing}"
            );
            let last = section(&text, "Acabado");
            assert!(last.starts_with("1. Esconde todos los cabos por el interior"), "{last}");
            assert!(
                last.ends_with("4. Cuando el gorro esté seco, haz el pompón y átalo, como se dice a continuación."),
                "{last}"
            );
            assert!(section(&text, "Cuidados").contains("No lo retuerzas"), "{text}");
        });
    }
}
