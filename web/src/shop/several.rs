//! Several hats, one list: which of the hats that are kept, how many of each, and the yarn for all of them.

use super::paper::{self, Entry, Paper};
use super::parts::{self, Field};
use super::{Counter, this};
use crate::erase::{flag, memo, part_if, words};
use crate::html::{Html, marked};
use crate::keep::Browser;
use hatwright_pattern::say::ListedYarn;
use hatwright_pattern::{figures, say};
use hatwright_project::shopping::MOST_COPIES;
use hatwright_project::{Copies, ListLine, Project, ProjectId, Shelf, ShoppingList, shopping_list_of};
use hatwright_sizing::{Hat, Unit, plan};
use hatwright_words::{count as counts, shop as words_of};
use leptos::prelude::*;
use std::collections::BTreeMap;

/// What is decided of one hat.
#[derive(Clone, PartialEq)]
struct Pick {
    ticked: bool,
    copies: u32,
    /// What stands in the field of copies while it is no number of them.
    wrong: Option<String>,
}

/// The hats that there are, and what is decided of each.
#[derive(Clone, Copy)]
struct Rows {
    hats: StoredValue<Vec<Project>>,
    picks: RwSignal<Vec<Pick>>,
    /// Each hat is planned once, however often the list changes; nothing for one that cannot be made.
    plans: StoredValue<BTreeMap<ProjectId, Option<Hat>>>,
}

/// The view.
pub fn several(counter: Counter) -> AnyView {
    let rows = Rows::read(counter);
    let count = rows.hats.with_value(Vec::len);
    let picked = memo(move || rows.picked());
    let list = memo(move || picked.with(|picked| rows.list(picked)));
    let any = memo(move || picked.with(|picked| !picked.is_empty()));
    let told = memo(move || {
        let units = counter.bench.figure_units();
        list.with(|list| lines(list, units))
    });
    let sum = memo(move || list.with(sum));
    let chosen = words(move || words_of::on_list(picked.with(Vec::len) as u32, count as u32));
    let hats = (0..count).map(|i| row(rows, i)).collect_view();
    view! {
        <div class="shop-scroll" tabindex="-1">
            <h3 id="several-title">{chosen}</h3>
            <ul id="several" class="several" aria-labelledby="several-title">{hats}</ul>
            {part_if(move || !any.get(), || parts::line("several-how", "note", words(|| words_of::several_how().to_owned())))}
            {parts::markup("list", "", told)}
        </div>
        {part_if(move || any.get(), move || view! {
            <div class="shop-foot">
                <p id="list-sum" class="shop-sum" role="status" inner_html=words(move || sum.get())></p>
                {paper::acts(counter, "list", move || paper(&list.get(), &rows.named(&picked.get()), counter.bench.figure_units()))}
            </div>
        }.into_any())}
    }
    .into_any()
}

impl Rows {
    /// The hats that are kept, and the one on the bench as it is now, with what was ticked the last time.
    fn read(counter: Counter) -> Self {
        // What was changed a moment ago should be on the list, too.
        untrack(|| counter.keeper.get_value().flush());
        let here = counter.bench.project.get_untracked();
        let shelf = Shelf::new(&Browser);
        let listed = shelf.list().map(|listing| listing.projects).unwrap_or_default();
        let kept = listed.iter().filter(|summary| summary.id != here.id).filter_map(|summary| shelf.load(&summary.id).ok());
        let hats: Vec<Project> = core::iter::once(here.clone()).chain(kept).collect();
        let ticked = shelf.settings().list;
        let pick = |hat: &Project| {
            let copies = ticked.iter().find(|(id, _)| *id == hat.id).map(|(_, copies)| *copies);
            Pick { ticked: copies.is_some(), copies: copies.unwrap_or(1).clamp(1, MOST_COPIES), wrong: None }
        };
        let picks = hats.iter().map(pick).collect();
        Self { hats: StoredValue::new(hats), picks: RwSignal::new(picks), plans: StoredValue::new(BTreeMap::new()) }
    }

    /// The hats on the list, by their places, with the copies of each.
    fn picked(self) -> Vec<(usize, u32)> {
        self.picks
            .with(|picks| picks.iter().enumerate().filter(|(_, pick)| pick.ticked).map(|(i, pick)| (i, pick.copies)).collect())
    }

    /// Names and copies of the hats on the list.
    fn named(self, picked: &[(usize, u32)]) -> Vec<(String, u32)> {
        self.hats.with_value(|hats| picked.iter().filter_map(|(i, copies)| Some((hats.get(*i)?.name.clone(), *copies))).collect())
    }

    /// The list for some hats.
    fn list(self, picked: &[(usize, u32)]) -> ShoppingList {
        let mut planned = |hat: &Project| {
            let known = self.plans.with_value(|plans| plans.get(&hat.id).cloned());
            known.unwrap_or_else(|| {
                let planned = plan(&hat.spec).ok();
                self.plans.update_value(|plans| {
                    plans.insert(hat.id.clone(), planned.clone());
                });
                planned
            })
        };
        let of = |(i, copies): &(usize, u32)| {
            Some(Copies { project: self.hats.with_value(|hats| hats.get(*i).cloned())?, copies: *copies })
        };
        shopping_list_of(&picked.iter().filter_map(of).collect::<Vec<_>>(), &mut planned)
    }

    /// Changes what is decided of a hat, and remembers it for the next time.
    fn change(self, i: usize, with: impl FnOnce(&mut Pick)) {
        let before = untrack(|| self.picked());
        self.picks.update(|picks| {
            if let Some(pick) = picks.get_mut(i) {
                with(pick);
            }
        });
        let after = untrack(|| self.picked());
        if before == after {
            return;
        }
        let shelf = Shelf::new(&Browser);
        let mut settings = shelf.settings();
        settings.list = self.hats.with_value(|hats| after.iter().map(|(i, copies)| (hats[*i].id.clone(), *copies)).collect());
        // Not being able to remember it loses nothing that was made.
        let _ = shelf.put_settings(&settings);
    }
}

/// One hat to tick, and its copies.
fn row(rows: Rows, i: usize) -> AnyView {
    let (id, name, here) = rows.hats.with_value(|hats| {
        let name = hats[i].name.trim();
        (hats[i].id.to_string(), if name.is_empty() { words_of::unnamed_hat() } else { name }.to_owned(), i == 0)
    });
    let pick = memo(move || rows.picks.with(|picks| picks[i].clone()));
    let mut label = Html::new();
    label.raw("<span>").text(&name);
    if here {
        label.raw(" ").element("small", words_of::on_bench());
    }
    label.raw("</span>");
    let checked = flag(move || pick.with(|pick| pick.ticked));
    let ticked = move |on| rows.change(i, |pick| pick.ticked = on);
    let typed = move |text: String| {
        rows.change(i, |pick| match read_copies(&text) {
            Some(copies) => (pick.copies, pick.wrong) = (copies, None),
            None => pick.wrong = Some(text),
        });
    };
    let copies = Field {
        id: ["copies-", &id].concat(),
        class: "number copies",
        label: words(move || {
            let mut html = Html::new();
            html.text(&words_of::copies_of(&name));
            html.done()
        }),
        text: words(move || pick.with(|pick| pick.wrong.clone().unwrap_or(pick.copies.to_string()))),
        unit: words(|| "×".to_owned()),
        says: memo(move || if pick.with(|pick| pick.wrong.is_some()) { words_of::copies_wrong() } else { "" }.to_owned()),
        data: id.clone(),
        typed: Box::new(typed),
    };
    view! {
        <li>
            {parts::tick(["several-", &id].concat(), "", id, label.done(), checked, Box::new(ticked))}
            {parts::field(copies)}
        </li>
    }
    .into_any()
}

/// Copies from what was typed.
fn read_copies(text: &str) -> Option<u32> {
    let copies = figures::parse(text, Unit::Whole, figures::Units::Centimetres).ok()?.unsigned_abs();
    (1..=MOST_COPIES).contains(&copies).then_some(copies)
}

/// The list: a row for each colour of each yarn, and the hats that are not on it.
fn lines(list: &ShoppingList, units: figures::Units) -> String {
    let mut html = Html::new();
    if !list.lines.is_empty() {
        html.element("h3", words_of::list_title()).raw("<ul class=\"list\">");
    }
    for line in &list.lines {
        html.raw("<li><span class=\"who\">")
            .chip(&line.hex.to_string())
            .raw("<span class=\"name\">")
            .text(called(line))
            .raw("</span>");
        if !line.yarn.is_empty() && !line.colour.is_empty() {
            html.raw(" ").element("small", &line.yarn);
        }
        html.raw("</span><span class=\"price\">");
        html.text(&line.buy.price.filter(|_| line.buy.balls > 0).map(figures::money).unwrap_or_default());
        html.raw("</span><b class=\"balls\">").text(&counts::balls(line.buy.balls)).raw("</b>");
        html.raw("<small>");
        for (i, part) in numbers(line, units).iter().enumerate() {
            html.raw(if i == 0 { "" } else { " · " }).element("span", part);
        }
        html.raw("</small>").element("small", &of_hats(line, units)).raw("</li>");
    }
    if !list.lines.is_empty() {
        html.raw("</ul>");
    }
    if let Some(text) = left_out(list) {
        html.raw("<p class=\"left-out\">").text(&text).raw("</p>");
    }
    html.done()
}

/// The hats that cannot be planned, by their names.
fn left_out(list: &ShoppingList) -> Option<String> {
    let names: Vec<String> = list.left_out.iter().map(|(_, name)| named(name)).collect();
    (!names.is_empty()).then(|| words_of::left_out(&names.join(", ")))
}

/// What a line is called: its colour, or its yarn where the colour has no name.
fn called(line: &ListLine) -> &str {
    [&*line.colour, &*line.yarn].into_iter().find(|name| !name.is_empty()).unwrap_or(words_of::unnamed_yarn())
}

fn named(name: &str) -> String {
    if name.trim().is_empty() { words_of::unnamed_hat_inside() } else { name.trim() }.to_owned()
}

/// `balls of 50 g = 80 m · takes 158 m · 99 g · 1 owned, lot 2214 · 81 m left over`.
fn numbers(line: &ListLine, units: figures::Units) -> Vec<String> {
    let mut all = vec![
        words_of::in_balls_of(&figures::ball(&line.ball, units)),
        this::need(&line.buy, units),
        this::left(&line.buy, units),
    ];
    if line.ball.owned.ticks() > 0 {
        all.push(words_of::amount_owned(&figures::show(line.ball.owned.ticks(), Unit::Count, units)));
    }
    match &*line.lots {
        [] => {}
        [lot] => all.push(words_of::lot(lot)),
        lots => all.push(words_of::lots(&lots.join(", "))),
    }
    all
}

/// Which hats a line is for, and what they take of it.
fn of_hats(line: &ListLine, units: figures::Units) -> String {
    let hat = |(name, copies, length): &(String, u32, hatwright_sizing::YarnLength)| {
        let times = if *copies == 1 { String::new() } else { [" × ", &copies.to_string()].concat() };
        [&named(name), &times, " (", &figures::yarn(*length, units), ")"].concat()
    };
    words_of::for_hats(&line.hats.iter().map(hat).collect::<Vec<_>>().join(", "))
}

/// All balls of the list, what they cost, and how often they are enough.
fn sum(list: &ShoppingList) -> String {
    let balls: u32 = list.lines.iter().map(|line| line.buy.balls).sum();
    let mut html = Html::new();
    html.raw(&words_of::to_buy(&marked("b", "balls", &counts::balls(balls)))).raw(" ");
    if balls > 0
        && let Some(price) = list.price
    {
        html.raw("<b class=\"price\">").text(&figures::money(price)).raw("</b> ");
    }
    if let Some(chance) = list.chance {
        html.raw("<span class=\"odds\">").text(&words_of::enough(&say::chance_full(chance))).raw("</span>");
    }
    html.done()
}

/// The list to take along.
fn paper(list: &ShoppingList, hats: &[(String, u32)], units: figures::Units) -> Paper {
    let entry = |line: &ListLine| {
        let mut name: Vec<&str> = vec![called(line)];
        name.extend(Some(&*line.yarn).filter(|yarn| !yarn.is_empty() && *yarn != called(line)));
        let lots: Vec<&str> = line.lots.iter().map(String::as_str).collect();
        let mut notes = vec![numbers(line, units).join(" · "), of_hats(line, units)];
        notes.extend(say::lot_advice(&line.buy, called(line), &lots));
        Entry::of(line.buy.balls, &line.ball, line.buy.price, name.join(" · "), notes, units)
    };
    let entries: Vec<Entry> = list.lines.iter().map(entry).collect();
    let count = hats.iter().map(|(_, copies)| copies).sum();
    let balls = list.lines.iter().map(|line| line.buy.balls).sum();
    let mut after = this::all_of(balls, list.price, list.chance).to_vec();
    after.extend(left_out(list));
    Paper::of(&words_of::yarn_for_hats(count), &entries, &after, text(list, hats, units))
}

/// The list as a message.
fn text(list: &ShoppingList, hats: &[(String, u32)], units: figures::Units) -> String {
    let hats: Vec<(&str, u32)> = hats.iter().map(|(name, copies)| (name.as_str(), *copies)).collect();
    let lines: Vec<ListedYarn<'_>> = list.lines.iter().map(listed).collect();
    let left_out: Vec<&str> = list.left_out.iter().map(|(_, name)| name.as_str()).collect();
    say::list_text(&hats, &lines, &left_out, list.chance, list.price, units)
}

fn listed(line: &ListLine) -> ListedYarn<'_> {
    ListedYarn {
        colour: &line.colour,
        yarn: &line.yarn,
        lots: line.lots.iter().map(String::as_str).collect(),
        ball: line.ball,
        buy: line.buy,
        hats: line.hats.iter().map(|(name, copies, length)| (name.as_str(), *copies, *length)).collect(),
    }
}
