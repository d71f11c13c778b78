//! The content security policy, written into the page after the build because it holds a hash of what the build made.
use base64::prelude::{BASE64_STANDARD, Engine};
use sha2::{Digest, Sha256};

use super::tags::{Tag, tags};
use crate::outcome::{Failure, Outcome};

/// The page with its policy right after `<meta charset>`, before anything that the policy governs.
///
/// A page that already has a policy, or has no single place for one, is refused: a silent miss would ship a page
/// without protection.
pub fn insert_policy(html: &str) -> Outcome<String> {
    if html.contains('\r') {
        return Err(Failure::new("the page has carriage returns, which browsers drop before they hash a script"));
    }
    let before = tags(html);
    if before.iter().any(is_policy) {
        return Err(Failure::new("the page has a content security policy before one was inserted"));
    }
    let charsets: Vec<&Tag<'_>> = before.iter().filter(|tag| tag.name == "meta" && tag.attribute("charset").is_some()).collect();
    let [charset] = charsets[..] else {
        return Err(Failure::new(format!("the page has {} `<meta charset>` instead of one", charsets.len())));
    };
    let meta = format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{}\">", policy(&before));
    let page = format!("{}{meta}{}", &html[..charset.end], &html[charset.end..]);
    match count_policies(&page) {
        1 => Ok(page),
        other => Err(Failure::new(format!("the page has {other} content security policies instead of one"))),
    }
}

/// How many policies a page carries.
pub fn count_policies(html: &str) -> usize {
    tags(html).iter().filter(|tag| is_policy(tag)).count()
}

fn is_policy(tag: &Tag<'_>) -> bool {
    tag.attribute("http-equiv").is_some_and(|kind| kind.eq_ignore_ascii_case("content-security-policy"))
}

fn policy(tags: &[Tag<'_>]) -> String {
    let hashes = |name: &str| -> String {
        let inline = tags.iter().filter(|tag| tag.name == name && tag.attribute("src").is_none());
        let mut sources: Vec<String> =
            inline.filter_map(|tag| tag.text).map(|text| format!(" 'sha256-{}'", hash(text))).collect();
        sources.sort();
        sources.dedup();
        sources.concat()
    };
    // 'wasm-unsafe-eval' allows compiling WebAssembly and nothing else.
    [
        "default-src 'none'".to_owned(),
        format!("script-src 'self' 'wasm-unsafe-eval'{}", hashes("script")),
        format!("style-src 'self'{}", hashes("style")),
        // The arrow of a select box is an image in the style sheet itself.
        "img-src 'self' data:".to_owned(),
        "connect-src 'self'".to_owned(),
        "base-uri 'none'".to_owned(),
        "form-action 'none'".to_owned(),
    ]
    .join("; ")
}

fn hash(text: &str) -> String {
    BASE64_STANDARD.encode(Sha256::digest(text))
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "<!doctype html><html><head><meta charset=utf-8><title>x</title>\
                        <style>p{color:red}</style><script src=./a.js></script></head>\
                        <body><script>alert('Hello, world.');</script></body></html>";

    #[test]
    fn the_policy_comes_right_after_the_charset() {
        let page = insert_policy(PAGE).unwrap();
        assert!(page.contains("<meta charset=utf-8><meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "));
        assert_eq!(count_policies(&page), 1);
    }

    #[test]
    fn inline_scripts_and_styles_are_hashed_and_linked_ones_are_not() {
        let page = insert_policy(PAGE).unwrap();
        // The script and its hash are the example of the W3C's Content Security Policy Level 2, section 7.17.1.
        assert!(page.contains("script-src 'self' 'wasm-unsafe-eval' 'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='; "));
        assert_eq!(page.matches("sha256-").count(), 2);
        assert!(page.contains(&format!("style-src 'self' 'sha256-{}'; ", hash("p{color:red}"))));
    }

    #[test]
    fn a_page_without_one_place_for_it_is_refused() {
        for (page, why) in [
            ("<title>x</title>", "0 `<meta charset>`"),
            ("<!-- <meta charset=utf-8> --><title>x</title>", "0 `<meta charset>`"),
            ("<meta charset=utf-8><meta charset=utf-8>", "2 `<meta charset>`"),
            ("<meta charset=utf-8>\r\n", "carriage returns"),
        ] {
            let failure = insert_policy(page).unwrap_err().to_string();
            assert!(failure.contains(why), "{failure}");
        }
        let once = insert_policy(PAGE).unwrap();
        assert!(insert_policy(&once).unwrap_err().to_string().contains("before one was inserted"));
    }
}
