//! Where a test plays: a server, a driver and a browser that nothing was done with before, and that are all gone after.

use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::rc::Rc;

use tokio::runtime::Builder;

use crate::driver::Driver;
use crate::page::{Page, Screen};
use crate::server::Site;

/// Runs a test on the page in a fresh browser.
#[track_caller]
pub fn on_page<T: FnOnce(&mut Page)>(screen: Screen, test: T) {
    let name = std::any::type_name::<T>();
    run(name, &Site::whole(), screen, |[page]| test(page));
}

/// Runs a test on the page in two browsers that have nothing in common.
#[track_caller]
pub fn on_two<T: FnOnce(&mut Page, &mut Page)>(screen: Screen, test: T) {
    let name = std::any::type_name::<T>();
    run(name, &Site::whole(), screen, |[mine, theirs]| test(mine, theirs));
}

/// Runs a test on a page of its own choice.
#[track_caller]
pub fn on_site<T: FnOnce(&mut Page)>(site: &Site, screen: Screen, test: T) {
    let name = std::any::type_name::<T>();
    run(name, site, screen, |[page]| test(page));
}

fn run<const N: usize>(test: &str, site: &Site, screen: Screen, act: impl FnOnce(&mut [Page; N])) {
    let runtime = Rc::new(Builder::new_current_thread().enable_all().build().expect("a runtime"));
    let driver = Rc::new(Driver::start());
    let mut pages = std::array::from_fn(|_| Page::new(&runtime, &driver, site.url(), screen));
    let outcome = catch_unwind(AssertUnwindSafe(|| {
        act(&mut pages);
        for page in &mut pages {
            page.has_no_complaint();
        }
    }));
    if outcome.is_err() {
        let name = test.trim_end_matches("::{{closure}}").replace("::", "-");
        for (i, page) in pages.iter_mut().enumerate() {
            page.picture(&format!("{name}-{i}.png"));
        }
    }
    for page in pages {
        page.close();
    }
    if let Err(failure) = outcome {
        resume_unwind(failure);
    }
}
