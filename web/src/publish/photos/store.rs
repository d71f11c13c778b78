//! The browser's database (`IndexedDB`), as far as photographs need it: one store, a key `hat/number`, a record of two texts.

use super::Kept;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::js_sys::{Array, Function, Promise};
use web_sys::{IdbDatabase, IdbKeyRange, IdbObjectStore, IdbRequest, IdbTransactionMode};

const NAME: &str = "hatwright-photos";
const STORE: &str = "photos";

/// All photographs of a hat, in their order.
pub async fn all(hat: &str) -> Result<Vec<Kept>, String> {
    let store = store(IdbTransactionMode::Readonly).await?;
    let range = of_hat(hat)?;
    let keys = done(&store.get_all_keys_with_key(&range).map_err(|e| text(&e))?).await?;
    let records = done(&store.get_all_with_key(&range).map_err(|e| text(&e))?).await?;
    let (keys, records) = (Array::from(&keys), Array::from(&records));
    let mut all: Vec<Kept> = keys
        .iter()
        .zip(records.iter())
        .filter_map(|(key, record)| {
            let number = key.as_string()?.rsplit('/').next()?.parse().ok()?;
            let record: Array = record.dyn_into().ok()?;
            let data = record.get(0).as_string().filter(|data| data.starts_with("data:image/"))?;
            Some(Kept { number, data, shows: record.get(1).as_string().unwrap_or_default() })
        })
        .collect();
    all.sort_by_key(|photo| photo.number);
    Ok(all)
}

/// Writes a photograph; done when the database says so.
pub async fn put(hat: &str, photo: &Kept) -> Result<(), String> {
    let store = store(IdbTransactionMode::Readwrite).await?;
    let record = Array::of2(&JsValue::from_str(&photo.data), &JsValue::from_str(&photo.shows));
    let request = store.put_with_key(&record, &key(hat, photo.number)).map_err(|e| text(&e))?;
    done(&request).await.map(|_| ())
}

/// Removes a photograph.
pub async fn remove(hat: &str, number: u32) -> Result<(), String> {
    let store = store(IdbTransactionMode::Readwrite).await?;
    done(&store.delete(&key(hat, number)).map_err(|e| text(&e))?).await.map(|_| ())
}

fn key(hat: &str, number: u32) -> JsValue {
    JsValue::from_str(&[hat, "/", &number.to_string()].concat())
}

/// Every key of a hat: `0` is the character after `/`.
fn of_hat(hat: &str) -> Result<IdbKeyRange, String> {
    let (from, to) = ([hat, "/"].concat(), [hat, "0"].concat());
    IdbKeyRange::bound(&JsValue::from_str(&from), &JsValue::from_str(&to)).map_err(|e| text(&e))
}

async fn store(mode: IdbTransactionMode) -> Result<IdbObjectStore, String> {
    let factory = crate::dom::window().indexed_db().map_err(|e| text(&e))?.ok_or("no IndexedDB")?;
    let request = factory.open_with_u32(NAME, 1).map_err(|e| text(&e))?;
    let opening = request.clone();
    let make = Closure::once_into_js(move || {
        if let Some(database) = opening.result().ok().and_then(|result| result.dyn_into::<IdbDatabase>().ok()) {
            let _ = database.create_object_store(STORE);
        }
    });
    request.set_onupgradeneeded(Some(make.unchecked_ref()));
    let database: IdbDatabase = done(&request).await?.dyn_into().map_err(|e| text(&e))?;
    let transaction = database.transaction_with_str_and_mode(STORE, mode).map_err(|e| text(&e))?;
    transaction.object_store(STORE).map_err(|e| text(&e))
}

/// What a request gives in the end.
async fn done(request: &IdbRequest) -> Result<JsValue, String> {
    let promise = Promise::new(&mut |resolve: Function, reject: Function| {
        let answered = request.clone();
        let good = Closure::once_into_js(move || {
            let _ = resolve.call1(&JsValue::NULL, &answered.result().unwrap_or(JsValue::UNDEFINED));
        });
        let failed = request.clone();
        let bad = Closure::once_into_js(move || {
            let why = failed.error().ok().flatten().map(|e| e.message()).unwrap_or_default();
            let _ = reject.call1(&JsValue::NULL, &JsValue::from_str(&why));
        });
        request.set_onsuccess(Some(good.unchecked_ref()));
        request.set_onerror(Some(bad.unchecked_ref()));
    });
    JsFuture::from(promise).await.map_err(|e| text(&e))
}

fn text(error: &JsValue) -> String {
    error.as_string().unwrap_or_else(|| {
        let name = web_sys::js_sys::Reflect::get(error, &JsValue::from_str("name"));
        name.ok().and_then(|n| n.as_string()).unwrap_or_default()
    })
}
