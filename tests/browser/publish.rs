//! Publishing: the designer's words and photographs, sizes, charts, paper and files.

use std::fs;

use hatwright_pattern::out::{OneSize, PaperSize, Publication, full_sheet, html, markdown, publish, rounds_csv, text};
use hatwright_pattern::sizes::size_name;
use hatwright_pattern::written::{About, Designer};
use hatwright_project::{Project, SizeOf, from_link, to_link};
use hatwright_sizing::{Age, Build, Count, Head, Length, Sex, plan};
use serde_json::{Value, json};

use crate::access::Found;
use crate::driver::Folder;
use crate::expected::{example, units};
use crate::page::{Page, Screen};
use crate::stage::{on_page, on_two};

fn grown(build: Build) -> Head {
    Head::ByAge { age: Age::Years(Count::whole(30)), sex: Sex::Unknown, build }
}

/// What is published of a project, worked out natively.
fn published(project: &Project, link: &str) -> Publication {
    let units = units(project);
    let own = OneSize { name: size_name(&project.spec.head, units), spec: project.spec.clone() };
    let named = |(name, spec): (String, hatwright_sizing::HatSpec)| {
        let name = if name.is_empty() { size_name(&spec.head, units) } else { name };
        OneSize { name, spec }
    };
    let sizes: Vec<OneSize> = [own].into_iter().chain(project.sized().into_iter().map(named)).collect();
    let names: Vec<&str> = project.colours.iter().map(|c| &*c.name).collect();
    let yarns: Vec<&str> = project.colours.iter().map(|c| &*c.yarn).collect();
    let d = &project.designer;
    let about = About {
        title: &project.name,
        colour_names: &names,
        yarn_names: &yarns,
        terms: project.terms.written(),
        units,
        version: env!("CARGO_PKG_VERSION"),
        hand: project.hand.written(),
        designer: Designer {
            introduction: &d.introduction,
            credit: &d.credit,
            edition: &d.edition,
            date: &d.date,
            tested: &d.tested,
            care: &d.care,
        },
    };
    let mut all = publish(&sizes, &about).expect("a hat that can be made");
    link.clone_into(&mut all.link);
    all
}

#[track_caller]
fn open(page: &Page, view: usize) {
    if page.js("return document.getElementById('publish').open") == json!(false) {
        page.click("#open-publish");
        page.until("the screen", "document.getElementById('publish').open");
    }
    page.click(&format!("#publish-tab-{view}"));
    let mark = ["#publish-introduction", "#size-own", ".chart-card", "#publish-print", "#save-text"][view];
    page.until("the view", &format!("!!document.querySelector('{mark}')"));
}

/// The link that the page's own pattern carries.
fn link(page: &Page) -> String {
    page.click("#publish-close");
    page.click("#copy-link");
    page.until("the link", "document.getElementById('share-link').value.includes('#')");
    let link = page.value("share-link");
    page.js("document.getElementById('share').close()");
    link
}

#[test]
fn the_designers_words_go_into_pattern_and_link() {
    on_two(Screen::DESK, |page, friend| {
        page.open();
        open(page, 0);
        page.fill("publish-introduction", "For cold mornings on the water.");
        page.fill("publish-credit", "The club's hat bench");
        page.fill("publish-edition", "2");
        // What is being typed stays while the page saves what was typed before.
        page.type_into("publish-tested", "Row 3: three of us");
        page.is_saved();
        page.keys(" made it.");
        page.keys(thirtyfour::Key::Tab);
        page.choose("hand", 1);
        page.is_saved();
        open(page, 3);
        let shown = page.text(".preview-sheet");
        for words in ["For cold mornings on the water.", "The club's hat bench", "three of us made it"] {
            assert!(shown.contains(words), "{words}: {shown}");
        }
        let link = link(page);
        let kept = page.kept_hats().pop().expect("a hat");
        assert_eq!(kept.designer.introduction, "For cold mornings on the water.");
        assert_eq!(kept.hand, hatwright_project::Hand::Left);
        let lines = page.js("return [...document.querySelectorAll('#pattern-text .lines li')].map(li => li.textContent)");
        assert!(!lines.to_string().contains("three of us"), "a tester's note is no line of work");
        // Closed in the middle of a word, nothing is lost.
        open(page, 0);
        page.type_into("publish-care", "By hand, cold");
        page.keys(thirtyfour::Key::Escape);
        page.until("the screen to close", "!document.getElementById('publish').open");
        page.until("the text", "document.getElementById('pattern-text').textContent.includes('By hand, cold')");
        page.is_saved();
        page.reload();
        open(page, 0);
        assert_eq!(page.value("publish-credit"), "The club's hat bench");
        assert_eq!(page.value("publish-care"), "By hand, cold");

        let fragment = link.split_once('#').expect("a fragment").1;
        friend.open_at(&format!("#{fragment}"));
        let text = friend.text("#pattern-text");
        assert!(text.contains("For cold mornings on the water.") && text.contains("The club's hat bench"), "{text}");
    });
}

#[test]
fn sizes_stand_side_by_side() {
    on_page(Screen::DESK, |page| {
        page.open();
        open(page, 1);
        page.click("#size-child-2");
        page.click("#size-adult-1");
        page.until("three sizes", "document.querySelectorAll('#size-table thead th').length === 4");
        let mut project = example();
        let child = |years| Head::ByAge { age: Age::Years(Count::whole(years)), sex: Sex::Unknown, build: Build::Average };
        project.sizes = [child(6), grown(Build::Average)].map(|head| SizeOf { name: String::new(), head }).to_vec();
        let all = published(&project, "");
        let rows: Value = json!(all.measures.rows);
        let shown = page.js(
            "return [...document.querySelectorAll('#size-table tbody tr')].map(tr => [...tr.children].map(c => c.textContent))",
        );
        assert_eq!(shown, rows);

        // A head of its own, with a name; nonsense keeps what was typed.
        page.fill("size-girth", "cap");
        page.click("#size-add");
        page.until("a sentence", "document.getElementById('size-says').textContent.length > 20");
        assert_eq!(page.value("size-girth"), "cap");
        page.fill("size-girth", "60");
        page.fill("size-name", "Cox");
        page.click("#size-add");
        page.until("four sizes", "document.querySelectorAll('#size-table thead th').length === 5");
        project.sizes.push(SizeOf { name: "Cox".to_owned(), head: Head::Measured(Length::from_cm(60.0)) });
        let all = published(&project, "");
        let head = page.js("return [...document.querySelectorAll('#size-table thead th')].map(c => c.textContent)");
        assert_eq!(head, json!(all.measures.head));

        // On paper: brackets, with one size pointed out; and that size alone.
        page.select("point-out", "2");
        open(page, 3);
        let sheet = |all: &Publication| {
            let start = full_sheet(all);
            let mut text = String::new();
            let mut inside = false;
            for c in start.chars() {
                match c {
                    '<' => inside = true,
                    '>' => inside = false,
                    c if !inside => text.push(c),
                    _ => {}
                }
            }
            text.replace("&#39;", "'").replace("&quot;", "\"").replace("&amp;", "&")
        };
        page.click("#with-charts");
        page.until("no charts", "!document.querySelector('.preview-sheet .charts')");
        let shown = page.js("const sheet = document.querySelector('.preview-sheet').cloneNode(true); sheet.querySelector('.code')?.remove(); return sheet.textContent");
        assert_eq!(shown, json!(sheet(&all)));
        assert!(page.has(".preview-sheet mark"), "the size is pointed out");
        page.select("paper-for", "3");
        page.until("one size", "!document.querySelector('.preview-sheet mark')");
        let shown = page.text(".preview-sheet");
        let cox = &all.hats[3];
        assert!(shown.contains(&format!("({})", cox.rounds[0].after)), "{shown}");

        // Taken out again by their own ways.
        open(page, 1);
        page.click("#size-child-2");
        page.click(".size-list .drop");
        page.until("two sizes", "document.querySelectorAll('#size-table thead th').length === 3");
        page.is_saved();
        let kept = page.kept_hats().pop().expect("a hat");
        assert_eq!(kept.sizes, [SizeOf { name: String::new(), head: grown(Build::Average) }]);
    });
}

#[test]
fn files_hold_what_was_published() {
    on_page(Screen::DESK, |page| {
        let mut project = example();
        project.sizes = [Build::Small, Build::Large].map(|build| SizeOf { name: String::new(), head: grown(build) }).to_vec();
        page.open_at(&format!("#{}", to_link(&project)));
        open(page, 4);
        let get = |name: &str, id: &str| page.download(name, || page.click(id));
        let plain = get("hat-pattern.txt", "#save-text");
        let link = plain.lines().last().and_then(|line| line.split_once(": ")).expect("a link").1.to_owned();
        let fragment = link.split_once('#').expect("a fragment").1;
        let opened = from_link(fragment).expect("the link opens");
        assert_eq!(opened.sizes, project.sizes);
        let mut all = published(&project, &link);
        assert_eq!(plain, text(&all));
        assert_eq!(get("hat-rounds.csv", "#save-csv"), rounds_csv(&all));
        // Charts come with Markdown and the page.
        let md = get("hat-pattern.md", "#save-markdown");
        assert!(md.starts_with(&markdown(&all)[..400]) && md.contains("| --- |"), "{md}");
        let page_file = get("hat-pattern.html", "#save-html");
        all.highlight = None;
        let (head, _) = page_file.split_once("<section class=\"charts\">").expect("charts");
        assert!(html(&all, PaperSize::A4).starts_with(head.trim_end()) || head.contains("class=\"qr\""), "{head}");
        assert!(page_file.contains("class=\"sym-sc\"") && page_file.contains(&format!("href=\"{link}\"")));
        let plan_file: Value = serde_json::from_str(&get("hat-plan.json", "#save-json")).expect("JSON");
        assert_eq!(plan_file["sizes"].as_array().map(Vec::len), Some(3));
        let stitches = plan(&project.spec).expect("a hat").size.stitches.get();
        assert_eq!(plan_file["sizes"][0]["hat"]["stitches"], json!(stitches));
    });
}

#[test]
fn a_saved_page_stands_alone() {
    on_page(Screen::DESK, |page| {
        page.open();
        open(page, 4);
        let file = page.download("hat-pattern.html", || page.click("#save-html"));
        // Nothing in it asks for anything else: no script, no address but data and the link that a person follows.
        assert!(file.starts_with("<!doctype html>\n<html lang=\"en\""), "{}", &file[..60]);
        for asks in ["<script", "<link", "<iframe", "<object", "<image", "@import", "url(http", "src=\"http", "srcset"] {
            assert!(!file.contains(asks), "{asks}");
        }
        let (_, charts) = file.split_once("<section class=\"charts\">").expect("charts");
        let (charts, twins) = charts.split_once("<section class=\"twins\">").expect("tables");
        assert_eq!((charts.matches("<svg").count(), twins.matches("<table").count()), (4, 4));
        assert!(file.matches("<li>").count() > 10);
    });
}

#[test]
fn charts_are_seen_and_saved() {
    on_page(Screen::DESK, |page| {
        page.open();
        open(page, 2);
        let ids = page.js("return [...document.querySelectorAll('.chart-card')].map(c => c.id)");
        assert_eq!(ids, json!(["chart-flat", "chart-rows", "chart-crown", "chart-rounds"]));
        let width = "document.querySelector('#chart-crown svg').getBoundingClientRect().width";
        let before = page.js(&format!("return {width}")).as_f64().expect("a width");
        page.click("#zoom-in");
        page.until("a larger chart", &format!("{width} > {before} * 1.3"));
        let hat = plan(&example().spec).expect("a hat");
        let table = page.js("return [...document.querySelectorAll('#chart-crown tbody tr')].map(tr => [tr.firstChild.textContent, tr.lastChild.textContent])");
        for row in table.as_array().expect("rows") {
            // Rounds worked alike share a line: "9–10".
            let number = row[0].as_str().and_then(|n| n.split('–').next_back()).expect("a number");
            let number: usize = number.parse().expect("a number");
            assert_eq!(row[1], json!(hat.rounds[number - 1].after.to_string()));
        }
        let svg = page.download("hat-crown.svg", || page.click("#chart-crown .save-svg"));
        assert!(svg.starts_with("<svg xmlns") && svg.contains("class=\"sym-sc\""), "{}", &svg[..200]);
        // The picture in dots: as many as it should have, and not of one colour.
        page.js("window.saved = null; HTMLAnchorElement.prototype.click = function () { window.saved = this.href }");
        page.click("#chart-crown .save-png");
        page.until("a picture", "window.saved?.startsWith('data:image/png')");
        let dots = page.js_later(
            "const done = arguments[0], image = new Image();
             image.onload = () => {
               const canvas = document.createElement('canvas'); canvas.width = image.width; canvas.height = image.height;
               const context = canvas.getContext('2d'); context.drawImage(image, 0, 0);
               const data = context.getImageData(0, 0, image.width, image.height).data, seen = new Set();
               for (let i = 0; i < data.length; i += 4 * 97) seen.add(data[i] << 16 | data[i + 1] << 8 | data[i + 2]);
               done([Math.max(image.width, image.height), seen.size]);
             };
             image.src = window.saved;",
        );
        assert_eq!(dots[0], json!(2400));
        assert!(dots[1].as_u64() > Some(8), "{dots}");
    });
}

#[test]
fn pages_of_paper_have_the_chosen_size() {
    on_page(Screen::DESK, |page| {
        page.before_every_page("window.print = () => { window.printed = true }");
        page.open();
        let pages = |page: &Page| {
            let pdf = page.command("Page.printToPDF", json!({ "printBackground": true, "preferCSSPageSize": true }));
            let bytes = data_encoding_of(pdf["data"].as_str().expect("a file"));
            let text = String::from_utf8_lossy(&bytes).into_owned();
            let count = text.matches("/Type /Page\n").count()
                + text.matches("/Type /Page ").count()
                + text.matches("/Type /Page/").count();
            (count, text)
        };
        for (which, size) in [(0, "594.9"), (1, "612 792")] {
            open(page, 3);
            page.choose("paper-size", which);
            page.choose("paper-what", 0);
            page.click("#publish-print");
            page.until("the browser to be asked to print", "window.printed");
            let (full, text) = pages(page);
            assert!(full >= 3, "the full pattern has {full} pages");
            assert!(text.contains(size), "the pages are {size}");
            page.js("window.printed = false; dispatchEvent(new Event('afterprint'))");
            page.choose("paper-what", 1);
            page.click("#publish-print");
            page.until("the browser to be asked to print", "window.printed");
            let (one, _) = pages(page);
            assert_eq!(one, 1, "the working sheet is one page");
            page.js("window.printed = false; dispatchEvent(new Event('afterprint'))");
        }
        // The sheet is remembered.
        page.reload();
        open(page, 3);
        page.until("the kept choice", "document.getElementById('paper-size-1').checked");
    });
}

/// Bytes of base64, which the browser's protocol sends files in.
fn data_encoding_of(text: &str) -> Vec<u8> {
    const DIGITS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut bytes = Vec::new();
    let (mut held, mut bits) = (0_u32, 0);
    for digit in text.bytes().filter_map(|b| DIGITS.iter().position(|d| *d == b)) {
        held = held << 6 | digit as u32;
        bits += 6;
        if bits >= 8 {
            bits -= 8;
            bytes.push((held >> bits) as u8);
        }
    }
    bytes
}

#[test]
fn photographs_stay_on_the_device() {
    on_page(Screen::DESK, |page| {
        let folder = Folder::new("photographs");
        let (good, bad) = (folder.path().join("cap.png"), folder.path().join("notes.txt"));
        fs::write(&bad, "no picture").expect("a file");
        page.open();
        open(page, 0);
        // A picture that the browser made itself, so that the test has no file of its own to trust.
        let drawn =
            page.js("const c = document.createElement('canvas'); c.width = 2000; c.height = 1000; const x = c.getContext('2d');
             x.fillStyle = '#34516f'; x.fillRect(0, 0, 2000, 1000); x.fillStyle = '#c79a2b'; x.fillRect(0, 0, 1000, 1000);
             return c.toDataURL('image/png').split(',')[1]");
        fs::write(&good, data_encoding_of(drawn.as_str().expect("a picture"))).expect("a file");
        page.give_file("photo-add", &good);
        page.until("a photograph", "document.querySelectorAll('.photo-list img').length === 1");
        page.fill("photo-1", "The cap on a wooden oar");
        page.give_file("photo-add", &bad);
        page.until("a sentence", "document.getElementById('photo-says').textContent.includes('notes.txt')");
        let size = page.js_later("const done = arguments[0], i = new Image(); i.onload = () => done([i.width, i.height]); i.src = document.querySelector('.photo-list img').src");
        assert_eq!(size, json!([1280, 640]));

        page.reload();
        open(page, 0);
        page.until("the photograph again", "document.querySelectorAll('.photo-list img').length === 1");
        page.until_is("what it shows", "document.getElementById('photo-1').value", &json!("The cap on a wooden oar"));
        open(page, 3);
        page.until("it on paper", "document.querySelector('.preview-sheet .photos img')?.alt === 'The cap on a wooden oar'");
        open(page, 4);
        let file = page.download("hat-pattern.html", || page.click("#save-html"));
        assert!(file.contains("src=\"data:image/jpeg;base64,"), "the saved page has it");
        for (_, text) in page.kept() {
            assert!(!text.contains("data:image"), "no document has it");
        }
        assert!(link(page).len() < 400, "no link has it");

        open(page, 0);
        page.click(".photo-list .drop");
        page.until("none", "document.querySelectorAll('.photo-list img').length === 0");
        page.reload();
        open(page, 0);
        assert!(!page.has(".photo-list img"));
    });
}

#[test]
fn a_browser_without_a_database_says_so() {
    on_page(Screen::DESK, |page| {
        page.before_every_page("Object.defineProperty(window, 'indexedDB', { value: undefined })");
        page.open();
        open(page, 0);
        page.until("a sentence", "document.getElementById('photo-says').textContent.includes('gone when it is closed')");
        // Everything else is there.
        open(page, 4);
        assert!(page.download("hat-pattern.txt", || page.click("#save-text")).contains("Rowing club"));
    });
}

#[test]
fn the_publishing_screen_is_accessible() {
    on_page(Screen::PHONE, |page| {
        let mut found = Found::default();
        let mut project = example();
        project.sizes = vec![SizeOf { name: "Cox".to_owned(), head: grown(Build::Small) }];
        page.open_at(&format!("#{}", to_link(&project)));
        for view in 0..5 {
            open(page, view);
            page.js("document.querySelectorAll('#publish details').forEach(d => d.open = true)");
            found.look(page, &format!("view {view}"));
        }
        found.is_nothing();
        // What is pressed by a finger is large enough for one.
        for view in 0..5 {
            open(page, view);
            let small = page.js(
                "return [...document.querySelectorAll('#publish :is(button, summary, select, input:not([type=radio], [type=checkbox], [type=file]), label.button, .tag label)')]
                   .filter(e => e.checkVisibility()).map(e => [e.id || e.textContent, e.getBoundingClientRect()])
                   .filter(([, r]) => r.height < 43.9 || r.width < 43.9).map(([name, r]) => `${name}: ${r.width} × ${r.height}`)",
            );
            assert_eq!(small, json!([]), "view {view}");
            let wide = page
                .js("return document.getElementById('publish').scrollWidth <= document.getElementById('publish').clientWidth");
            assert_eq!(wide, json!(true), "view {view} is as wide as the phone");
        }
    });
}

#[test]
fn no_sheet_is_wider_than_its_paper() {
    on_page(Screen::DESK, |page| {
        let mut project = example();
        project.units = hatwright_project::Units::Both;
        project.designer.tested = "x".repeat(2_000);
        let by_age = |months| Head::ByAge { age: Age::Months(Count::whole(months)), sex: Sex::Unknown, build: Build::Average };
        project.sizes =
            (1..=12).map(|n| SizeOf { name: format!("Number {n}, with a long name"), head: by_age(n * 9 + 6) }).collect();
        page.open_at(&format!("#{}", to_link(&project)));
        open(page, 3);
        page.until("thirteen sizes", "document.querySelectorAll('.preview-sheet .all-sizes tbody tr').length === 13");
        page.js("window.print = () => { window.printed = true }");
        page.click("#publish-print");
        page.until("the browser to be asked to print", "window.printed");
        page.media("print", &[]);
        // As wide as A4 between its margins: 182 mm.
        page.js("document.getElementById('sheet').style.width = '182mm'");
        let wide = page.js("const sheet = document.getElementById('sheet').getBoundingClientRect().right + 1;
             return [...document.querySelectorAll('#sheet :is(p, li, td, th, h1, h2, h3, table, svg)')]
               .filter(e => e.getBoundingClientRect().right > sheet).map(e => e.outerHTML.slice(0, 80)).slice(0, 5)");
        assert_eq!(wide, json!([]));
        // The headline keeps to one unit, on a phone too.
        page.media("screen", &[]);
        page.click("#publish-close");
        page.resize(Screen::PHONE);
        page.until("a page as wide as the phone", "document.documentElement.scrollWidth <= innerWidth");
        assert!(!page.text("#answer-yarn").contains('('), "{}", page.text("#answer-yarn"));
    });
}
