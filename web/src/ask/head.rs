//! The head: measured, or looked up by age; how far down the hat comes and how closely it sits.

use crate::bench::{Bench, Seat};
use crate::choice::{Choice, choice};
use crate::dom;
use crate::erase::{flag, memo, part, part_if, words};
use crate::field::number;
use crate::html::Html;
use crate::pick::{option, pick};
use hatwright_pattern::{figures, say};
use hatwright_project::Project;
use hatwright_sizing::{Age, Build, Count, Coverage, Day, Head, HeadBasis, Length, Quantity, Ratio, Sex, Style};
use hatwright_words::ask;
use leptos::prelude::*;

const WAY: Choice = Choice {
    legend: ask::head_way,
    name: "head-way",
    options: &[ask::by_age, ask::measured_head, ask::by_dates],
    get: |p| way(&p.spec.head),
    set: |bench, i| {
        let now = bench.project.with_untracked(|p| p.spec.head);
        let was = way(&now);
        if was == i {
            return;
        }
        bench.aside.update_value(|a| a.heads[was] = Some(now));
        let head = bench.aside.with_value(|a| a.heads[i]).unwrap_or_else(|| fresh(&now, i));
        bench.forget(&[Quantity::Percentile]);
        bench.shape(|s| s.head = head);
    },
};

fn way(head: &Head) -> usize {
    match head {
        Head::ByAge { .. } => 0,
        Head::Measured(_) => 1,
        Head::ByDates { .. } => 2,
    }
}

/// The same head, as nearly as another way of knowing it can tell.
fn fresh(now: &Head, way: usize) -> Head {
    let years = now.age_years().unwrap_or(4.0);
    let (sex, build) = who(now);
    match way {
        0 => Head::ByAge { age: Age::Years(Count::whole(years as i32)), sex, build },
        // The looked-up girth is the best first guess for a tape that is not at hand.
        1 => Head::Measured(Length::from_ticks((hatwright_sizing::head_size(now).girth.ticks() + 50) / 100 * 100)),
        _ => {
            let worn = dom::today();
            Head::ByDates { born: Day(worn.0 - (years * 365.25) as i32), worn, sex, build }
        }
    }
}

fn who(head: &Head) -> (Sex, Build) {
    match *head {
        Head::ByAge { sex, build, .. } | Head::ByDates { sex, build, .. } => (sex, build),
        Head::Measured(_) => (Sex::Unknown, Build::Average),
    }
}

fn put_who(bench: Bench, with: impl FnOnce(&mut Sex, &mut Build)) {
    bench.shape(|s| {
        if let Head::ByAge { sex, build, .. } | Head::ByDates { sex, build, .. } = &mut s.head {
            with(sex, build);
        }
    });
}

const BUILD: Choice = Choice {
    legend: ask::build,
    name: "build",
    options: &[ask::small, ask::average, ask::large, ask::percentile],
    get: |p| match who(&p.spec.head).1 {
        Build::Small => 0,
        Build::Average => 1,
        Build::Large => 2,
        Build::Percentile(_) => 3,
    },
    set: |bench, i| {
        let now = bench.project.with_untracked(|p| who(&p.spec.head).1);
        if matches!(now, Build::Percentile(_)) {
            bench.aside.update_value(|a| a.build = Some(now));
        }
        let kept = bench.aside.with_value(|a| a.build).unwrap_or(Build::Percentile(Ratio::of(now.share())));
        bench.forget(&[Quantity::Percentile]);
        put_who(bench, |_, build| *build = [Build::Small, Build::Average, Build::Large, kept][i]);
    },
};

const SEX: Choice = Choice {
    legend: ask::sex,
    name: "sex",
    options: &[ask::not_known, ask::female, ask::male],
    get: |p| who(&p.spec.head).0 as usize,
    set: |bench, i| put_who(bench, |sex, _| *sex = [Sex::Unknown, Sex::Female, Sex::Male][i]),
};

const COVERAGE: Choice = Choice {
    legend: ask::coverage,
    name: "coverage",
    options: &[ask::over_ears, ask::to_lobes, ask::to_mid_ear, ask::above_ears],
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
    legend: ask::sits,
    name: "sits",
    options: &[ask::snug, ask::classic, ask::relaxed, ask::tender],
    get: |p| EASES.iter().position(|e| *e == p.spec.ease.ticks()).unwrap_or(EASES.len()),
    set: |bench, i| {
        bench.forget(&[Quantity::Ease]);
        bench.shape(|s| s.ease = Ratio::from_ticks(EASES[i]));
    },
};

/// Whether the hat comes down the head as far as is asked: a tam sits on top, flaps hang from the tops of the ears, and an ear warmer
/// is as tall as its band.
fn comes_down(p: &Project) -> bool {
    !matches!(p.spec.style, Style::EarWarmer | Style::Tam | Style::EarFlap)
}

/// The section.
pub fn head(bench: Bench) -> AnyView {
    let known = memo(move || bench.project.with(|p| way(&p.spec.head)));
    let deep = memo(move || bench.project.with(comes_down));
    let topped = memo(move || bench.project.with(|p| p.spec.asks(Quantity::OverTop)));
    view! {
        <section aria-labelledby="head-title">
            <h2 id="head-title">{ask::head_title()}</h2>
            {choice(bench, WAY)}
            {part(move || match known.get() {
                0 => by_age(bench),
                1 => tape(bench),
                _ => by_dates(bench),
            })}
            {part_if(move || known.get() != 1, move || who_wears(bench))}
            <p class="note" id="stand-in">{words(move || around(bench))}</p>
            {part_if(move || deep.get(), move || choice(bench, COVERAGE))}
            {choice(bench, EASE)}
            {number(bench, Quantity::Ease, 0, ask::percent_smaller())}
            <details>
                <summary>{words(move || if topped.get() { ask::over_top_hair() } else { ask::hair() }.to_owned())}</summary>
                <div class="pair">
                    {part_if(move || topped.get(), move || number(bench, Quantity::OverTop, 0, ""))}
                    {number(bench, Quantity::Lining, 0, "")}
                </div>
                {part_if(move || topped.get(), || view! {
                    <p class="note">{ask::over_top_note()}</p>
                }.into_any())}
                <p class="note">{ask::lining_note()}</p>
            </details>
        </section>
    }
    .into_any()
}

fn who_wears(bench: Bench) -> AnyView {
    let exact = memo(move || bench.project.with(|p| matches!(who(&p.spec.head).1, Build::Percentile(_))));
    view! {
        {choice(bench, BUILD)}
        {part_if(move || exact.get(), move || view! {
            {number(bench, Quantity::Percentile, 0, ask::of_hundred())}
        }.into_any())}
        {choice(bench, SEX)}
    }
    .into_any()
}

fn by_dates(bench: Bench) -> AnyView {
    let wrong = memo(move || match bench.refused() {
        Some((Seat::Days, why)) => why,
        _ => String::new(),
    });
    let day = |id: &'static str, label: &'static str, get: fn(Day, Day) -> Day, set: fn(&mut Day, &mut Day, Day)| {
        let text = memo(move || {
            bench.project.with(|p| match p.spec.head {
                Head::ByDates { born, worn, .. } => figures::date(get(born, worn)),
                _ => String::new(),
            })
        });
        let take = move |event: web_sys::Event| {
            // A day that is being typed is not whole: the one before stays.
            let Some(day) = figures::day(&event_target_value(&event)) else { return };
            bench.shape(|s| {
                if let Head::ByDates { born, worn, .. } = &mut s.head {
                    set(born, worn, day);
                }
            });
        };
        view! {
            <div class="number" class:wrong=flag(move || wrong.with(|w| !w.is_empty()))>
                <label for=id>{label}</label>
                <input
                    class="box"
                    type="date"
                    id=id
                    aria-describedby="days-say"
                    aria-invalid=words(move || wrong.with(|w| !w.is_empty()).to_string())
                    prop:value=words(move || text.get())
                    on:change=take
                />
            </div>
        }
        .into_any()
    };
    view! {
        <div class="pair">
            {day("born", ask::born(), |born, _| born, |born, _, day| *born = day)}
            {day("worn", ask::worn(), |_, worn| worn, |_, worn, day| *worn = day)}
        </div>
        <p class="says" id="days-say">{words(move || wrong.get())}</p>
        <p class="note" id="days-tell">{words(move || bench.project.with(|p| match p.spec.head {
            Head::ByDates { born, worn, .. } => say::dates_sentence(born, worn),
            _ => String::new(),
        }))}</p>
        <p class="note">{ask::days_note()}</p>
    }
    .into_any()
}

fn tape(bench: Bench) -> AnyView {
    view! {
        {number(bench, Quantity::HeadGirth, 0, "")}
        <p class="note">{ask::tape_note()}</p>
    }
    .into_any()
}

fn by_age(bench: Bench) -> AnyView {
    let unit = memo(move || bench.project.with(age_unit));
    let field = part(move || number(bench, AGES[unit.get()], 0, " "));
    let options = words(move || {
        let mut html = Html::new();
        for (i, (value, name)) in AGE_UNITS.iter().zip([ask::weeks(), ask::months(), ask::years()]).enumerate() {
            option(&mut html, value, name, i == unit.get());
        }
        html.done()
    });
    let young = memo(move || bench.project.with(|p| p.spec.head.age_years().is_some_and(|years| years < 0.25)));
    let set = move |picked: String| recount(bench, AGE_UNITS.iter().position(|o| *o == picked).unwrap_or(2));
    view! {
        <div class="pair">{field}{pick("age-unit".to_owned(), ask::counted_in(), options, set)}</div>
        <div class="quick">
            <button type="button" id="newborn" on:click=move |_| set_age(bench, Age::Weeks(Count::whole(0)))>{ask::newborn()}</button>
            <button type="button" id="adult" on:click=move |_| set_age(bench, Age::Years(Count::whole(18)))>{ask::adult()}</button>
        </div>
        {part_if(move || young.get(), || view! {
            <p class="note">{ask::early_note()}</p>
        }.into_any())}
    }
    .into_any()
}

const AGES: [Quantity; 3] = [Quantity::AgeWeeks, Quantity::AgeMonths, Quantity::AgeYears];
/// What the list of units tells by, in any language.
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

/// The head's girth among others of its age, where that comes from, and what stands in for it.
fn around(bench: Bench) -> String {
    let units = bench.figure_units();
    bench.project.with(|p| {
        let head = hatwright_sizing::head_size(&p.spec.head);
        let place = say::percentile_sentence(&p.spec.head, &head, units).unwrap_or_default();
        let (place, stand_in) = (place.trim_end_matches('.'), say::stand_in_sentence(head.girth, units));
        match head.basis {
            HeadBasis::Measured => stand_in,
            HeadBasis::Who => ask::place_who(place, &stand_in),
            HeadBasis::Snyder => ask::place_snyder(place, &stand_in),
            HeadBasis::Niosh => ask::place_niosh(place, &stand_in),
        }
    })
}
