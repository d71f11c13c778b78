//! The designer's own photographs. They are made smaller, so that a hat's are a megabyte and not thirty, and are kept in the browser's
//! database beside the hats: they are no part of a document, and no link ever has them.

mod store;

use super::Desk;
use crate::dom;
use crate::erase::{part, words};
use hatwright_pattern::out::Photo;
use hatwright_project::ProjectId;
use hatwright_words::publish as told;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

/// Photographs that a pattern holds.
const MOST: usize = 6;
/// The longer side of what is kept, in dots: 8 cm on paper at 400 dots to the inch.
const LONGEST: f64 = 1_280.0;
/// The most letters of what it shows.
const SHOWS: usize = 200;

/// A photograph of a hat.
#[derive(Clone, Debug, PartialEq)]
pub struct Kept {
    /// Its own number among the hat's.
    number: u32,
    /// JPEG, as a `data:` address.
    data: String,
    /// What it shows, in the designer's words.
    shows: String,
}

impl Kept {
    /// For a pattern; one that nothing is said of is called by its number.
    pub fn photo(&self) -> Photo {
        let shows = if self.shows.trim().is_empty() { told::photo_number(self.number) } else { self.shows.clone() };
        Photo { source: self.data.clone(), shows }
    }
}

fn project(desk: Desk) -> ProjectId {
    desk.bench.project.with_untracked(|p| p.id.clone())
}

/// Reads the photographs of the hat on the bench.
pub fn load(desk: Desk) {
    let id = project(desk);
    spawn_local(async move {
        let read = store::all(id.as_str()).await;
        // Meanwhile another hat may lie there.
        if project(desk) == id {
            match read {
                Ok(photos) => desk.photos.set(photos),
                Err(_) => desk.said.set(told::photo_nowhere().to_owned()),
            }
        }
    });
}

/// The photographs with what they show, and a way to add more.
pub fn photos(desk: Desk) -> AnyView {
    let add = move |event: web_sys::Event| {
        let Some(input) = event.target().and_then(|t| t.dyn_into::<web_sys::HtmlInputElement>().ok()) else { return };
        let Some(files) = input.files() else { return };
        let files: Vec<web_sys::File> = (0..files.length()).filter_map(|i| files.item(i)).collect();
        // The same file can be chosen again.
        input.set_value("");
        spawn_local(take(desk, files));
    };
    let list = part(move || desk.photos.get().into_iter().map(|photo| row(desk, &photo)).collect_view().into_any());
    view! {
        <fieldset class="photos-of" id="photos">
            <legend>{told::photos()}</legend>
            <p class="note">{told::photos_note()}</p>
            <ul class="photo-list">{list}</ul>
            <label class="button" for="photo-add">{told::photo_add()}</label>
            <input class="hidden" type="file" id="photo-add" accept="image/*" multiple on:change=add />
            <p class="says" role="status" id="photo-says">{words(move || desk.said.get())}</p>
        </fieldset>
    }
    .into_any()
}

fn row(desk: Desk, photo: &Kept) -> AnyView {
    let number = photo.number;
    let id = ["photo-", &number.to_string()].concat();
    let shows = photo.shows.clone();
    let tell = move |event: web_sys::Event| {
        let text: String = event_target_value(&event).chars().filter(|c| !c.is_control()).take(SHOWS).collect();
        // The row is not drawn anew for it: the keyboard is on its way to the next field.
        desk.photos.update_untracked(|photos| {
            if let Some(photo) = photos.iter_mut().find(|photo| photo.number == number) {
                photo.shows = text;
            }
        });
        keep(desk, number);
    };
    let drop = move |_| {
        desk.photos.update(|photos| photos.retain(|photo| photo.number != number));
        let id = project(desk);
        spawn_local(async move {
            if let Err(why) = store::remove(id.as_str(), number).await {
                desk.said.set(told::photo_failed(&why));
            }
        });
        dom::refocus("#photo-add");
    };
    view! {
        <li>
            <img src=photo.data.clone() alt=photo.photo().shows />
            <div class="number">
                <label for=id.clone()>{told::photo_shows()}</label>
                <input class="box" id=id type="text" autocomplete="off" maxlength=SHOWS.to_string() prop:value=shows on:change=tell />
            </div>
            <button type="button" class="drop" aria-label=told::photo_remove() on:click=drop>"×"</button>
        </li>
    }
    .into_any()
}

/// Writes one photograph down.
fn keep(desk: Desk, number: u32) {
    let id = project(desk);
    let Some(photo) = desk.photos.with_untracked(|photos| photos.iter().find(|photo| photo.number == number).cloned()) else {
        return;
    };
    spawn_local(async move {
        if let Err(why) = store::put(id.as_str(), &photo).await {
            desk.said.set(told::photo_failed(&why));
        }
    });
}

/// Takes files, as many as there is room for.
async fn take(desk: Desk, files: Vec<web_sys::File>) {
    desk.said.set(String::new());
    let id = project(desk);
    for file in files {
        if desk.photos.with_untracked(Vec::len) >= MOST {
            desk.said.set(told::photo_full(MOST as u32));
            return;
        }
        let Some(data) = smaller(&file).await else {
            desk.said.set(told::photo_bad(&file.name()));
            continue;
        };
        if project(desk) != id {
            return;
        }
        let number = desk.photos.with_untracked(|photos| photos.iter().map(|photo| photo.number).max().unwrap_or(0)) + 1;
        desk.photos.update(|photos| photos.push(Kept { number, data, shows: String::new() }));
        // A hat that has a photograph is kept: an example that nobody changed is another one next time.
        desk.bench.change(|_| {});
        keep(desk, number);
    }
}

/// A picture no larger than it need be, without whatever the camera wrote into the file; nothing if it is none.
async fn smaller(file: &web_sys::File) -> Option<String> {
    let window = dom::window();
    let bitmap = JsFuture::from(window.create_image_bitmap_with_blob(file).ok()?).await.ok()?;
    let bitmap: web_sys::ImageBitmap = bitmap.dyn_into().ok()?;
    let (wide, high) = (f64::from(bitmap.width()), f64::from(bitmap.height()));
    let scale = (LONGEST / wide.max(high).max(1.0)).min(1.0);
    let (wide, high) = ((wide * scale).round().max(1.0), (high * scale).round().max(1.0));
    let canvas: web_sys::HtmlCanvasElement = window.document()?.create_element("canvas").ok()?.dyn_into().ok()?;
    canvas.set_width(wide as u32);
    canvas.set_height(high as u32);
    let context: web_sys::CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    // What is transparent is white on paper.
    context.set_fill_style_str("#fff");
    context.fill_rect(0.0, 0.0, wide, high);
    context.draw_image_with_image_bitmap_and_dw_and_dh(&bitmap, 0.0, 0.0, wide, high).ok()?;
    bitmap.close();
    let data = canvas.to_data_url_with_type_and_encoder_options("image/jpeg", &JsValue::from_f64(0.85)).ok()?;
    data.starts_with("data:image/jpeg").then_some(data)
}
