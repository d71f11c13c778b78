//! The page put together, and what is on the bench when it opens.

use crate::bench::Bench;
use crate::erase::{flag, memo, part, part_if, words};
use crate::keep::{Browser, Coming, Keeper, Standing, fresh_id};
use crate::{ask, choose, dom, facts, fits, made, see, share, shelf, shop, yarn};
use hatwright_project::{Project, Settings, Shelf, ShelfError, Store, example, from_link, text};
use hatwright_sizing::{Chosen, HatSpec, PLANNER, plan};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// What the page begins with.
struct Start {
    project: Project,
    coming: Coming,
    /// What to say about it.
    notice: Option<String>,
}

fn start() -> Start {
    let fragment = dom::window().location().hash().unwrap_or_default();
    let mut notice = None;
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
        notice = Some(why.to_string());
    }
    match last.and_then(Result::ok).or_else(shelf::latest) {
        Some(project) => Start { project, coming: Coming::Kept, notice },
        None => Start { project: Project { units, terms, ..example(fresh_id()) }, coming: Coming::Fresh, notice },
    }
}

/// The hat of a link, and what to say about it; `Err(None)` for a fragment that only names a place on the page.
fn linked(fragment: &str) -> Result<(Project, String), Option<String>> {
    let bare = fragment.trim_start_matches('#');
    if dom::element(bare).is_some() || bare == "pattern" || bare == "yarn" || bare == "answer" {
        return Err(None);
    }
    match from_link(bare) {
        Err(why) => Err(Some(why.to_string())),
        Ok(mut hat) => {
            // A link fixes its counts, in case another planner would choose otherwise. Where this one chooses the same, they need not
            // be fixed, and follow when a number is changed.
            let free = HatSpec { chosen: None, ..hat.spec.clone() };
            let counts = plan(&free).map(|h| Chosen { rows: h.size.rows, stitches: h.size.stitches });
            if counts.is_ok_and(|counts| hat.spec.chosen == Some(counts)) {
                hat.spec.chosen = None;
            }
            let mut said =
                "This hat came by a link. It is kept here as soon as you change something; nothing of yours was overwritten."
                    .to_owned();
            if hat.planner != PLANNER {
                said.push_str(
                    " The link was made by another version of the planner, so some rounds may differ; the counts are the link’s.",
                );
            }
            Ok((hat.into_project(fresh_id(), dom::now_ms()), said))
        }
    }
}

/// The page.
pub fn app() -> AnyView {
    let Start { project, coming, notice } = start();
    let bench = Bench::new(project);
    let keeper = Keeper::new(bench, coming);
    let notice = RwSignal::new(notice);
    let looks = RwSignal::new(0);
    let (link, said) = (RwSignal::new(String::new()), RwSignal::new(""));
    dom::listen(&dom::window(), "hashchange", move |_| {
        let fragment = dom::window().location().hash().unwrap_or_default();
        match linked(&fragment) {
            Ok((project, text)) => {
                let opened = keeper.open(project, Coming::ByLink);
                notice.set(Some(opened.map_or_else(str::to_owned, |()| text)));
            }
            Err(Some(why)) => notice.set(Some(why)),
            Err(None) => {}
        }
    });
    let sheet = made::sheet(bench);
    Effect::new(move |_| {
        // Tabs and printed files are told apart by it.
        let name = bench.project.with(|p| p.name.trim().to_owned());
        if let Some(document) = dom::window().document() {
            document.set_title(&if name.is_empty() { "Hatwright".to_owned() } else { [&name, " · Hatwright"].concat() });
        }
    });
    view! {
        <header class="top">
            <h1 class="name">"Hatwright"</h1>
            <p class="purpose">"From a head and a crochet swatch to a hat that fits: every round, every stitch, every ball of yarn."</p>
            <div class="acts">
                <button type="button" id="open-shelf" on:click=move |_| shelf::show(looks)>"Hats"</button>
                <button type="button" id="copy-link" on:click=move |_| share::share(bench, link, said)>"Copy link"</button>
                <button type="button" id="print" class="go" on:click=|_| { let _ = dom::window().print(); }>"Print"</button>
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
            <p>{format!("Hatwright {}, planner {PLANNER}. ", made::VERSION)}
                "Everything happens in this browser: no account, no server, no other site. Works in Chrome and Edge 104, Firefox 102, Safari 16.4 and newer."
            </p>
            <p>"Head tables: WHO Child Growth Standards (credited, not endorsing), Snyder and others 1977, NIOSH 2003. Yarn weights: Craft Yarn Council’s www.YarnStandards.com. What is marked as practice has no published source."</p>
        </footer>
        {bar(bench)}
        {shelf::shelf(bench, keeper, looks)}
        {share::sheet(link, said)}
        {shop::shop(bench, keeper)}
    }
    .into_any()
}

/// The hat's name, where it stands with the storage, and what there is to say.
fn title(bench: Bench, keeper: Keeper, notice: RwSignal<Option<String>>) -> AnyView {
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
            Standing::Fresh if !can_keep => "This browser keeps nothing for this page",
            Standing::Fresh => "Kept once you change something",
            Standing::Waiting => "Saving …",
            Standing::Kept => "Saved on this device",
            Standing::Trouble(_) => "Not saved",
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
                    <button type="button" on:click=move |_| shelf::rescue(bench)>"Save the hat as a file"</button>
                    {if other {
                        view! { <button type="button" on:click=move |_| keeper.save_as_copy()>"Keep mine as a copy"</button> }.into_any()
                    } else {
                        view! { <button type="button" on:click=move |_| keeper.save()>"Try again"</button> }.into_any()
                    }}
                </div>
            </div>
        }
        .into_any()
    });
    let said = part(move || {
        let Some(text) = notice.get() else { return ().into_any() };
        view! {
                <div class="notice" role="status" id="notice">
                    <p>{text}</p>
                    <div class="quick">
                        {part_if(move || standing.get() == Standing::Fresh && keeper.is_from_link(), move || view! {
                            <button type="button" id="keep-now" on:click=move |_| { keeper.save(); notice.set(None); }>"Keep this hat"</button>
                        }.into_any())}
                        <button type="button" on:click=move |_| notice.set(None)>"Understood"</button>
                    </div>
                </div>
            }
            .into_any()
    });
    view! {
        <div class="title">
            <label class="hidden" for="hat-name">"Name of the hat"</label>
            <input id="hat-name" type="text" maxlength="80" autocomplete="off" placeholder="Name this hat" prop:value=name on:input=rename />
            <span class="standing" role="status" id="standing">{stands}</span>
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
        <nav class="bar" on:click=go aria-label="Parts of the page" class:stale=flag(move || see::stale(bench))>
            <a class="numbers" href="#answer">
                <b>{words(move || see::figure(bench, 0).count.to_string())}</b><span>{words(move || unit(0))}</span>
                <b>{words(move || see::figure(bench, 1).count.to_string())}</b><span>{words(move || unit(1))}</span>
                <b>{words(move || see::yarn(bench))}</b>
            </a>
            {part_if(
                move || see::stale(bench),
                || view! { <a class="fix" href="#stuck-on">"▲ last good"</a> }.into_any(),
            )}
            <button type="button" id="bar-shop" on:click=|_| crate::shop::show()>"Shop"</button>
            <a href="#pattern">"Pattern"</a>
        </nav>
    }
    .into_any()
}
