//! Charts: drawn from the lines of work, each with its table, to look at closely and to save.

use super::{Desk, shown};
use crate::dom;
use crate::erase::{flag, memo, part, words};
use crate::html::Html;
use crate::pick::{option, pick};
use hatwright_pattern::out::{Figure, chart_figures, table_markup};
use hatwright_pattern::picture::CrownView;
use hatwright_sizing::plan;
use hatwright_words::publish as told;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;

/// Zoom in quarters of the natural size: a quarter to five times.
const ZOOM: (u8, u8) = (2, 20);
/// Dots of a saved picture's longer side.
const DOTS: f64 = 2_400.0;

/// The charts of one size by its place among them, or of the hat that is shown.
pub fn figures(desk: Desk, size: Option<usize>) -> Vec<Figure> {
    let view = desk.options.with(|o| o.crown);
    let name = size.and_then(|size| desk.names().into_iter().nth(size));
    let project = shown(desk.bench);
    let sizes = project.every_size();
    let Some(one) = name.and_then(|name| sizes.iter().find(|size| size.name == name)).or(sizes.first()) else {
        return Vec::new();
    };
    let Ok(hat) = plan(&one.spec) else { return Vec::new() };
    let hexes = desk.hexes();
    let hexes: Vec<&str> = hexes.iter().map(String::as_str).collect();
    project.about(|about| chart_figures(&hat, &one.spec, about, &hexes, view))
}

/// The view.
pub fn charts(desk: Desk) -> AnyView {
    let found = memo(move || {
        desk.ready.track();
        Drawn(figures(desk, desk.one.get()))
    });
    let several = memo(move || desk.names().len() > 1);
    let wedge = flag(move || desk.options.with(|o| o.crown == CrownView::Wedge));
    let whole = flag(move || desk.options.with(|o| o.crown == CrownView::Whole));
    view! {
        <p class="note">{told::charts_intro()}</p>
        <div class="chart-acts">
            {part(move || if several.get() { which(desk) } else { ().into_any() })}
            <fieldset class="choice">
                <legend class="hidden">{told::whole()}</legend>
                <div class="tags">
                    <span class="tag"><input type="radio" name="crown-view" id="crown-view-0" prop:checked=whole on:change=move |_| desk.change(|o| o.crown = CrownView::Whole) /><label for="crown-view-0">{told::whole()}</label></span>
                    <span class="tag"><input type="radio" name="crown-view" id="crown-view-1" prop:checked=wedge on:change=move |_| desk.change(|o| o.crown = CrownView::Wedge) /><label for="crown-view-1">{told::wedge()}</label></span>
                </div>
            </fieldset>
            <div class="quick">
                <button type="button" id="zoom-out" on:click=move |_| zoom(desk, false)>{told::zoom_out()}</button>
                <button type="button" id="zoom-in" on:click=move |_| zoom(desk, true)>{told::zoom_in()}</button>
            </div>
        </div>
        {part(move || found.get().0.into_iter().map(|figure| chart(desk, figure)).collect_view().into_any())}
    }
    .into_any()
}

/// Charts, compared by their markup.
#[derive(Clone)]
struct Drawn(Vec<Figure>);

impl PartialEq for Drawn {
    fn eq(&self, other: &Self) -> bool {
        self.0 == other.0
    }
}

fn zoom(desk: Desk, nearer: bool) {
    desk.change(|o| o.zoom = if nearer { o.zoom + 2 } else { o.zoom.saturating_sub(2) }.clamp(ZOOM.0, ZOOM.1));
}

fn chart(desk: Desk, figure: Figure) -> AnyView {
    let Figure { id, title, svg, markup, table: twin } = figure;
    let said = RwSignal::new("");
    let (vector, name) = (svg.clone(), ["hat-", id].concat());
    let png_name = [&name, ".png"].concat();
    let save = move |_| dom::download(&[&name, ".svg"].concat(), &vector, "image/svg+xml");
    let save_png = move |_| {
        let (svg, name) = (svg.clone(), png_name.clone());
        spawn_local(async move {
            let drawn = png(&svg).await;
            said.set(if drawn.is_some() { "" } else { told::png_failed() });
            if let Some(address) = drawn {
                dom::offer(&name, &address);
            }
        });
    };
    let scale = words(move || ["chart zoom-", &desk.options.with(|o| o.zoom).to_string()].concat());
    let label = title.clone();
    let twin_label = hatwright_words::out::table_of(&title);
    view! {
        <figure class="chart-card" id=["chart-", id].concat()>
            <figcaption>{title}</figcaption>
            <div class=scale tabindex="0" role="region" aria-label=label inner_html=markup></div>
            <div class="quick">
                <button type="button" class="save-svg" on:click=save>{told::save_svg()}</button>
                <button type="button" class="save-png" on:click=save_png>{told::save_png()}</button>
                <span role="status">{words(move || said.get().to_owned())}</span>
            </div>
            <details><summary>{told::as_table()}</summary><div class="twin-box" tabindex="0" role="region" aria-label=twin_label inner_html=table_markup(&twin)></div></details>
        </figure>
    }
    .into_any()
}

/// Which size's charts.
fn which(desk: Desk) -> AnyView {
    let options = words(move || {
        let mut html = Html::new();
        for (i, name) in desk.names().iter().enumerate() {
            option(&mut html, &i.to_string(), name, desk.one.get() == Some(i));
        }
        html.done()
    });
    pick("charts-for".to_owned(), told::charts_of(), options, move |value| desk.one.set(value.parse().ok()))
}

/// The chart as dots: the address of a PNG.
async fn png(svg: &str) -> Option<String> {
    let (wide, high) = measure(svg)?;
    let scale = DOTS / wide.max(high).max(1.0);
    let (wide, high) = ((wide * scale).round(), (high * scale).round());
    // Without a width and a height of its own, not every browser gives a picture its size.
    let sized = svg.replacen("<svg ", &format!("<svg width=\"{wide}\" height=\"{high}\" "), 1);
    let document = dom::window().document()?;
    let image: web_sys::HtmlImageElement = document.create_element("img").ok()?.dyn_into().ok()?;
    let coded = String::from(web_sys::js_sys::encode_uri_component(&sized));
    image.set_src(&["data:image/svg+xml;charset=utf-8,", &coded].concat());
    JsFuture::from(image.decode()).await.ok()?;
    let canvas: web_sys::HtmlCanvasElement = document.create_element("canvas").ok()?.dyn_into().ok()?;
    canvas.set_width(wide as u32);
    canvas.set_height(high as u32);
    let context: web_sys::CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    context.set_fill_style_str("#fff");
    context.fill_rect(0.0, 0.0, wide, high);
    context.draw_image_with_html_image_element_and_dw_and_dh(&image, 0.0, 0.0, wide, high).ok()?;
    let address = canvas.to_data_url_with_type("image/png").ok()?;
    address.starts_with("data:image/png").then_some(address)
}

/// Width and height of a picture's box.
fn measure(svg: &str) -> Option<(f64, f64)> {
    let (_, rest) = svg.split_once("viewBox=\"")?;
    let (numbers, _) = rest.split_once('"')?;
    let mut numbers = numbers.split(' ').skip(2).map(str::parse::<f64>);
    Some((numbers.next()?.ok()?, numbers.next()?.ok()?))
}
