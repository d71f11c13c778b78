//! The head: measured, or looked up by age; how far down the hat comes and how closely it sits.

use crate::bench::Bench;
use crate::choice::{Choice, choice};
use crate::erase::{memo, part, words};
use crate::field::number;
use crate::html::Html;
use crate::pick::{option, pick};
use hatwright_pattern::figures;
use hatwright_project::Project;
use hatwright_sizing::{Age, Build, Count, Coverage, Head, HeadBasis, Length, Quantity, Ratio, Sex};
use leptos::prelude::*;

const WAY: Choice = Choice {
    legend: "How is the head known?",
    name: "head-way",
    options: &["By age", "Measured"],
    get: |p| usize::from(matches!(p.spec.head, Head::Measured(_))),
    set: |bench, i| {
        let now = bench.project.with_untracked(|p| p.spec.head);
        let measured = matches!(now, Head::Measured(_));
        if measured == (i == 1) {
            return;
        }
        let other = bench.aside.with_value(|a| a.head);
        let fresh = if measured {
            Head::ByAge { age: Age::Years(Count::whole(4)), sex: Sex::Unknown, build: Build::Average }
        } else {
            // The looked-up girth is the best first guess for a tape that is not at hand.
            let girth = hatwright_sizing::head_size(&now).girth.ticks();
            Head::Measured(Length::from_ticks((girth + 50) / 100 * 100))
        };
        bench.aside.update_value(|a| a.head = Some(now));
        bench.shape(|s| s.head = other.unwrap_or(fresh));
    },
};

const BUILD: Choice = Choice {
    legend: "The head, for that age",
    name: "build",
    options: &["Small", "Average", "Large"],
    get: |p| match p.spec.head {
        Head::ByAge { build, .. } => build as usize,
        Head::Measured(_) => 1,
    },
    set: |bench, i| {
        bench.shape(|s| {
            if let Head::ByAge { build, .. } = &mut s.head {
                *build = [Build::Small, Build::Average, Build::Large][i];
            }
        });
    },
};

const SEX: Choice = Choice {
    legend: "Sex, if known",
    name: "sex",
    options: &["Not known", "Female", "Male"],
    get: |p| match p.spec.head {
        Head::ByAge { sex, .. } => sex as usize,
        Head::Measured(_) => 0,
    },
    set: |bench, i| {
        bench.shape(|s| {
            if let Head::ByAge { sex, .. } = &mut s.head {
                *sex = [Sex::Unknown, Sex::Female, Sex::Male][i];
            }
        });
    },
};

const COVERAGE: Choice = Choice {
    legend: "It comes down",
    name: "coverage",
    options: &["over the ears", "to the lobes", "to mid-ear", "above the ears"],
    get: |p| match p.spec.coverage {
        Coverage::OverEars => 0,
        Coverage::EarLobes => 1,
        Coverage::EarCanals => 2,
        Coverage::EarTops => 3,
    },
    set: |bench, i| {
        let coverage = [Coverage::OverEars, Coverage::EarLobes, Coverage::EarCanals, Coverage::EarTops][i];
        bench.shape(|s| s.coverage = coverage);
    },
};

/// Eases with a name (practice: 5–9 % for a hat that stays on, 0–3 % for a bare or tender head), in the order of the tags.
const EASES: [i32; 4] = [900, 700, 500, 200];

const EASE: Choice = Choice {
    legend: "It sits",
    name: "sits",
    options: &["snug 9 %", "classic 7 %", "relaxed 5 %", "tender 2 %"],
    get: |p| EASES.iter().position(|e| *e == p.spec.ease.ticks()).unwrap_or(EASES.len()),
    set: |bench, i| {
        bench.forget(&[Quantity::Ease]);
        bench.shape(|s| s.ease = Ratio::from_ticks(EASES[i]));
    },
};

/// The section.
pub fn head(bench: Bench) -> AnyView {
    let measured = memo(move || bench.project.with(|p| matches!(p.spec.head, Head::Measured(_))));
    view! {
        <section aria-labelledby="head-title">
            <h2 id="head-title">"Head"</h2>
            {choice(bench, WAY)}
            {part(move || if measured.get() { tape(bench) } else { by_age(bench) })}
            <p class="note">{words(move || stand_in(bench))}</p>
            {choice(bench, COVERAGE)}
            {choice(bench, EASE)}
            {number(bench, Quantity::Ease, 0, "% smaller")}
        </section>
    }
    .into_any()
}

fn tape(bench: Bench) -> AnyView {
    view! {
        {number(bench, Quantity::HeadGirth, 0, "")}
        <p class="note">"Level, just above the brows and over the widest part behind; hair as it will be worn."</p>
    }
    .into_any()
}

fn by_age(bench: Bench) -> AnyView {
    let unit = memo(move || bench.project.with(age_unit));
    let field = part(move || number(bench, AGES[unit.get()], 0, " "));
    let options = words(move || {
        let mut html = Html::new();
        for (i, name) in AGE_UNITS.iter().enumerate() {
            option(&mut html, name, name, i == unit.get());
        }
        html.done()
    });
    let set = move |picked: String| recount(bench, AGE_UNITS.iter().position(|o| *o == picked).unwrap_or(2));
    view! {
        <div class="pair">{field}{pick("age-unit".to_owned(), "Counted in", options, set)}</div>
        <div class="quick">
            <button type="button" id="newborn" on:click=move |_| set_age(bench, Age::Weeks(Count::whole(0)))>"Newborn"</button>
            <button type="button" id="adult" on:click=move |_| set_age(bench, Age::Years(Count::whole(18)))>"Adult, 18 and over"</button>
        </div>
        {choice(bench, BUILD)}
        {choice(bench, SEX)}
    }
    .into_any()
}

const AGES: [Quantity; 3] = [Quantity::AgeWeeks, Quantity::AgeMonths, Quantity::AgeYears];
const AGE_UNITS: [&str; 3] = ["weeks", "months", "years"];

fn age_unit(p: &Project) -> usize {
    match p.spec.head {
        Head::ByAge { age: Age::Weeks(_), .. } => 0,
        Head::ByAge { age: Age::Months(_), .. } => 1,
        _ => 2,
    }
}

fn set_age(bench: Bench, to: Age) {
    bench.forget(&AGES);
    bench.shape(|s| {
        if let Head::ByAge { age, .. } = &mut s.head {
            *age = to;
        }
    });
}

/// The same number in another unit, within that unit's range: who types 18 and then chooses months means 18 months.
fn recount(bench: Bench, to: usize) {
    let held = |q: Quantity, n: Count| Count::from_ticks(n.ticks().min(q.row().most));
    bench.forget(&AGES);
    bench.shape(|s| {
        if let Head::ByAge { age, .. } = &mut s.head {
            let (Age::Weeks(n) | Age::Months(n) | Age::Years(n)) = *age;
            *age = match to {
                0 => Age::Weeks(held(Quantity::AgeWeeks, n)),
                1 => Age::Months(held(Quantity::AgeMonths, n)),
                _ => Age::Years(held(Quantity::AgeYears, n)),
            };
        }
    });
}

fn stand_in(bench: Bench) -> String {
    let units = bench.figure_units();
    let head = bench.project.with(|p| hatwright_sizing::head_size(&p.spec.head));
    let across = Length::from_cm(head.girth.cm() / core::f64::consts::PI);
    let bowl = format!("A bowl {} across stands in for this head.", figures::length(across, units));
    let basis = match head.basis {
        HeadBasis::Measured => return bowl,
        HeadBasis::Who => "WHO Child Growth Standards",
        HeadBasis::Snyder => "Snyder and others 1977, joined to WHO",
        HeadBasis::Niosh => "NIOSH 2003, adults",
    };
    format!("{} around ({basis}). {bowl}", figures::length(head.girth, units))
}
