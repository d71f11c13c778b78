//! The page put together, and what is on the bench when it opens.

use crate::bench::Bench;
use crate::erase::{flag, memo, part, part_if, words};
use crate::keep::{Browser, Coming, Keeper, Standing, fresh_id};
use crate::{ask, choose, dom, facts, fits, made, publish, see, share, shelf, shop, yarn};
use hatwright_project::{Project, Settings, Shelf, ShelfError, Store, example, from_link, text};
use hatwright_sizing::{Chosen, HatSpec, PLANNER, plan};
use hatwright_words::page as say;
use leptos::prelude::*;
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// Something to say once, in whatever language is spoken when it is looked at.
type Notice = Arc<dyn Fn() -> String + Send + Sync>;

/// What the page begins with.
struct Start {
    project: Project,
    coming: Coming,
    /// What to say about it.
    notice: Option<Notice>,
}

fn start() -> Start {
    let fragment = dom::window().location().hash().unwrap_or_default();
    let mut notice: Option<Notice> = None;
    if fragment.len() > 1 {
        match linked(&fragment) {
            Ok((project, said)) => return Start { project, coming: Coming::ByLink, notice: Some(said) },
            Err(said) => notice = said,
        }
    }
    let shelf = Shelf::new(&Browser);
    let Settings { open, units, terms, .. } = shelf.settings();
    let last = open.map(|id| shelf.load(&id));
    if let Some(Err(why)) = &last
        && !matches!(why, ShelfError::Absent | ShelfError::Deleted)
    {
        let why = why.clone();
        notice = Some(Arc::new(move || why.to_string()));
    }
    match last.and_then(Result::ok).or_else(shelf::latest) {
        Some(project) => Start { project, coming: Coming::Kept, notice },
        None => Start { project: Project { units, terms, ..example(fresh_id()) }, coming: Coming::Fresh, notice },
    }
}

/// The hat of a link, and what to say about it; `Err(None)` for a fragment that only names a place on the page.
fn linked(fragment: &str) -> Result<(Project, Notice), Option<Notice>> {
    let bare = fragment.trim_start_matches('#');
    if dom::element(bare).is_some() || bare == "pattern" || bare == "yarn" || bare == "answer" {
        return Err(None);
    }
    match from_link(bare) {
        Err(why) => Err(Some(Arc::new(move || why.to_string()))),
        Ok(mut hat) => {
            // A link fixes its counts, in case another planner would choose otherwise. Where this one chooses the same, they need not
            // be fixed, and follow when a number is changed.
            let free = HatSpec { chosen: None, ..hat.spec.clone() };
            let counts = plan(&free).map(|h| Chosen { rows: h.size.rows, stitches: h.size.stitches });
            if counts.is_ok_and(|counts| hat.spec.chosen == Some(counts)) {
                hat.spec.chosen = None;
            }
            let other = hat.planner != PLANNER;
            let said = move || {
                let other = other.then(say::other_planner);
                core::iter::once(say::by_link()).chain(other).collect::<Vec<_>>().join(" ")
            };
            Ok((hat.into_project(fresh_id(), dom::now_ms()), Arc::new(said)))
        }
    }
}

/// What outlives a change of the language: the page is drawn anew around it.
#[derive(Clone, Copy)]
struct Page {
    bench: Bench,
    keeper: Keeper,
    counter: shop::Counter,
    desk: publish::Desk,
    notice: RwSignal<Option<Notice>>,
    looks: RwSignal<u32>,
    link: RwSignal<String>,
    said: RwSignal<&'static str>,
}

/// The page.
pub fn app() -> AnyView {
    let Start { project, coming, notice } = start();
    let bench = Bench::new(project);
    let keeper = Keeper::new(bench, coming);
    let counter = shop::Counter::new(bench, keeper);
    let desk = publish::desk(bench);
    publish::begin(desk);
    let notice = RwSignal::new(notice);
    let (link, said) = (RwSignal::new(String::new()), RwSignal::new(""));
    let page = Page { bench, keeper, counter, desk, notice, looks: RwSignal::new(0), link, said };
    dom::listen(&dom::window(), "hashchange", move |_| {
        let fragment = dom::window().location().hash().unwrap_or_default();
        match linked(&fragment) {
            Ok((project, said)) => {
                let opened = keeper.open(project, Coming::ByLink);
                notice.set(Some(opened.map_or_else(|why| -> Notice { Arc::new(move || why.to_owned()) }, |()| said)));
            }
            Err(Some(why)) => notice.set(Some(why)),
            Err(None) => {}
        }
    });
    Effect::new(move |_| {
        // Tabs and printed files are told apart by it.
        let name = bench.project.with(|p| p.name.trim().to_owned());
        if let Some(document) = dom::window().document() {
            document.set_title(&if name.is_empty() { "Hatwright".to_owned() } else { [&name, " · Hatwright"].concat() });
        }
    });
    part(move || {
        bench.language.track();
        drawn(&page)
    })
    .into_any()
}

/// The page in the language that is spoken.
fn drawn(page: &Page) -> AnyView {
    let Page { bench, keeper, counter, desk, notice, looks, link, said } = *page;
    let sheet = made::sheet(bench);
    view! {
        <header class="top">
            <h1 class="name">"Hatwright"</h1>
            <p class="purpose">{say::purpose()}</p>
            <div class="acts">
                <button type="button" id="open-shelf" on:click=move |_| shelf::show(looks)>{say::hats()}</button>
                <button type="button" id="copy-link" on:click=move |_| share::share(bench, link, said)>{say::copy_link()}</button>
                <button type="button" id="print" class="go" on:click=move |_| publish::print(desk, false)>{say::print()}</button>
            </div>
        </header>
        <main class="plan">
            {title(bench, keeper, notice)}
            {ask::ask(bench)}
            <div class="out">
                {see::answer(bench)}
                {see::picture(bench)}
                {choose::choose(bench)}
                {made::rounds(bench, sheet)}
                <div class="more">
                    {fits::fits(bench)}
                    {facts::facts(bench)}
                    {yarn::yarn(bench)}
                    {made::pattern(bench, sheet)}
                </div>
            </div>
        </main>
        <footer class="foot">
            <p>{say::foot(made::VERSION, PLANNER)}</p>
            <p>{say::sources()}</p>
        </footer>
        {bar(bench)}
        {shelf::shelf(bench, keeper, looks)}
        {share::sheet(link, said)}
        {shop::shop(counter)}
        {publish::screen(desk)}
    }
    .into_any()
}

/// The hat's name, where it stands with the storage, and what there is to say.
fn title(bench: Bench, keeper: Keeper, notice: RwSignal<Option<Notice>>) -> AnyView {
    let name = memo(move || bench.project.with(|p| p.name.clone()));
    let rename = move |event| {
        let typed = text::NAME.tidy(&event_target_value(&event));
        bench.change(|p| p.name = typed);
    };
    let standing = keeper.standing;
    // A browser that keeps nothing should not be promised for.
    let can_keep = Browser.keys().is_ok();
    let stands = words(move || {
        let text = match standing.get() {
            Standing::Fresh if !can_keep => say::keeps_nothing(),
            Standing::Fresh => say::fresh(),
            Standing::Waiting => say::saving(),
            Standing::Kept => say::saved(),
            Standing::Trouble(_) => say::not_saved(),
        };
        text.to_owned()
    });
    let trouble = part(move || {
        let Standing::Trouble(why) = standing.get() else { return ().into_any() };
        let other =
            matches!(why, ShelfError::Conflict { .. } | ShelfError::Deleted | ShelfError::WouldHarm(_) | ShelfError::Taken);
        view! {
            <div class="notice wrong" role="alert" id="storage-trouble">
                <p>{why.to_string()}</p>
                <div class="quick">
                    <button type="button" on:click=move |_| shelf::rescue(bench)>{say::save_file()}</button>
                    {if other {
                        view! { <button type="button" on:click=move |_| keeper.save_as_copy()>{say::keep_copy()}</button> }.into_any()
                    } else {
                        view! { <button type="button" on:click=move |_| keeper.save()>{say::try_again()}</button> }.into_any()
                    }}
                </div>
            </div>
        }
        .into_any()
    });
    let said = part(move || {
        let Some(say_it) = notice.get() else { return ().into_any() };
        view! {
                <div class="notice" role="status" id="notice">
                    <p>{say_it()}</p>
                    <div class="quick">
                        {part_if(move || standing.get() == Standing::Fresh && keeper.is_from_link(), move || view! {
                            <button type="button" id="keep-now" on:click=move |_| { keeper.save(); notice.set(None); }>{say::keep_hat()}</button>
                        }.into_any())}
                        <button type="button" on:click=move |_| notice.set(None)>{say::understood()}</button>
                    </div>
                </div>
            }
            .into_any()
    });
    view! {
        <div class="title">
            <label class="hidden" for="hat-name">{say::hat_name()}</label>
            <input id="hat-name" type="text" maxlength="80" autocomplete="off" placeholder=say::name_hint() prop:value=name on:input=rename />
            <span class="standing" role="status" id="standing">{stands}</span>
            {crate::language::choice(bench)}
            {crate::choice::choice(bench, made::UNITS)}
            {said}
            {trouble}
            {see::last_good(bench)}
        </div>
    }
    .into_any()
}

/// The answer, always in sight on a phone, with ways to the parts of the page.
fn bar(bench: Bench) -> AnyView {
    // The address may carry a hat: a way to a part of the page leaves it alone.
    let go = move |event: web_sys::MouseEvent| {
        let link = event.target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()).and_then(|e| e.closest("a").ok().flatten());
        let id = link.and_then(|a| a.get_attribute("href")).unwrap_or_default();
        if let Some(there) = dom::element(id.trim_start_matches('#')) {
            event.prevent_default();
            there.scroll_into_view();
            let _ = there.focus();
        }
    };
    let unit = move |which| [" ", see::figure(bench, which).short, " "].concat();
    view! {
        <nav class="bar" on:click=go aria-label=say::parts() class:stale=flag(move || see::stale(bench))>
            <a class="numbers" href="#answer">
                <b>{words(move || see::figure(bench, 0).count.to_string())}</b><span>{words(move || unit(0))}</span>
                <b>{words(move || see::figure(bench, 1).count.to_string())}</b><span>{words(move || unit(1))}</span>
                <b>{words(move || see::yarn(bench))}</b>
            </a>
            {part_if(
                move || see::stale(bench),
                || view! { <a class="fix" href="#stuck-on">{say::last_good()}</a> }.into_any(),
            )}
            <button type="button" id="bar-shop" on:click=|_| crate::shop::show()>{say::shop()}</button>
            <a href="#pattern">{say::pattern()}</a>
        </nav>
    }
    .into_any()
}
