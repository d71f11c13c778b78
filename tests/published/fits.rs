//! Whom a hat fits, against the tables of heads that are published, and the labels and measures that follow from a girth.

use hatwright_sizing::{Age, Build, Count, Head};
use hatwright_sizing::{Length, Quantity, Sex, Shape, fit_table, hat_labels, head_size, heads_at, normal_share_below, stand_in};
use hatwright_tests::table::{Row, Table};

/// Share of heads between two girths by WHO's own M and S (its L is 1 throughout).
fn share_by_lms(row: &Row<'_>, least: f64, most: f64) -> f64 {
    let (median, s) = (row.number("M_cm"), row.number("S"));
    let below = |girth: f64| normal_share_below((girth / median - 1.0) / s);
    below(most) - below(least)
}

/// WHO Child Growth Standards, head circumference-for-age, 2007: the table's rows from birth to 4 years, boys and girls alike, within
/// half a hundredth (the table's means are whole hundredths of a cm).
#[test]
fn the_table_of_whom_it_fits_is_whos() {
    let table = Table::published("who2006_hc_monthly_lms.csv");
    let mut compared = 0;
    for (least, most) in [(32.0, 38.0), (38.0, 44.0), (42.0, 48.0), (45.7, 51.3), (49.0, 55.0)] {
        for row in &fit_table(Length::from_cm(least), Length::from_cm(most))[..7] {
            let months = (row.years * 12.0).round();
            let rows: Vec<_> = table.rows().filter(|r| (r.number("age_months") - months).abs() < 1e-9).collect();
            assert_eq!(rows.len(), 2, "{months} months");
            let theirs = rows.iter().map(|r| share_by_lms(r, least, most)).sum::<f64>() / 2.0;
            assert!((row.share - theirs).abs() < 0.005, "{least} to {most} at {months} months: {} and {theirs}", row.share);
            compared += 1;
        }
    }
    assert_eq!(compared, 35);
}

/// NIOSH 2003 and ANSUR II 2012, people counted: between the tenth and the ninetieth percentile of a survey's heads there are 8 in 10
/// of them. The table says 0.79 of NIOSH's men and 0.77 of its women (whose longer upper tail a normal curve does not have), and 0.76
/// of ANSUR II's soldiers, who spread less.
#[test]
fn adults_are_served_as_they_were_counted() {
    let table = Table::published("adult_head_summary_mm.csv");
    for (survey, sex, share) in
        [("niosh2003", "M", 0.790), ("niosh2003", "F", 0.773), ("ansur2_2012", "M", 0.755), ("ansur2_2012", "F", 0.757)]
    {
        let rows = table.rows_where("dimension", "head_circumference");
        let row = rows.iter().find(|row| row.text("source_key") == survey && row.text("sex") == sex).expect("the survey");
        let girth = |column: &str| Length::from_cm(row.number(column) / 10.0);
        let served = fit_table(girth("p10_mm"), girth("p90_mm"));
        let ours = served.iter().find(|r| r.sex == if sex == "M" { Sex::Male } else { Sex::Female }).expect("adults").share;
        assert!((ours - share).abs() < 0.0006, "{survey} {sex}: {ours}");
    }
}

/// Common practice of the trade, no source, from memory: girth in cm, US size and UK size in eighths.
#[test]
fn labels_are_the_trades() {
    for (cm, us, uk) in [(57.0, 57, 56), (58.0, 58, 57), (60.0, 60, 59)] {
        let labels = hat_labels(Length::from_cm(cm));
        assert_eq!((labels.us_eighths, labels.uk_eighths), (us, uk), "{cm} cm");
        assert!((f64::from(labels.cm) - cm).abs() < 0.5);
    }
}

/// Geometry: what has the stand-in's diameter has the head's girth, to the rounding.
#[test]
fn a_stand_in_has_the_heads_girth() {
    for tenths in 220..=750 {
        let girth = Length::from_cm(f64::from(tenths) / 10.0);
        let around = stand_in(girth).cm() * core::f64::consts::PI;
        assert!((around - girth.cm()).abs() < 0.0016, "{tenths}");
    }
}

/// Common practice, no source: a tam is 25 to 28 cm across for adults, about half the head's girth; flaps reach from the tops of the
/// ears past the lobes.
#[test]
fn usual_measures_are_the_trades() {
    let head = |years, sex| head_size(&Head::ByAge { age: Age::Years(Count::whole(years)), sex, build: Build::Average }).girth;
    for sex in [Sex::Female, Sex::Male] {
        let shape = Shape::for_head(head(30, sex));
        assert!((25.0..=28.5).contains(&shape.tam_across.cm()), "{sex:?}: {:?}", shape.tam_across);
        assert!((4.0..=8.0).contains(&shape.slouch_longer.cm()));
    }
    for years in 0..18 {
        let girth = head(years, Sex::Unknown);
        let shape = Shape::for_head(girth);
        assert!((0.46..=0.53).contains(&(shape.tam_across.cm() / girth.cm())), "{years}");
        let to_lobes = (Quantity::CoverLobes.row().usual_value() - Quantity::CoverTops.row().usual_value())
            * heads_at(f64::from(years), Sex::Unknown).mean_cm;
        assert!(shape.flap_length.cm() > to_lobes, "{years}: {:?} and {to_lobes}", shape.flap_length);
    }
}
