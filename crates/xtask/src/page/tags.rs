//! A reader for the start tags of one HTML page, just exact enough for the policy and the checks.

/// A start tag.
#[derive(Debug, PartialEq, Eq)]
pub struct Tag<'a> {
    /// As written; the build's minifier leaves names in lower case.
    pub name: &'a str,
    /// Name and value of each attribute, in order; a value that is not given is empty.
    pub attributes: Vec<(&'a str, &'a str)>,
    /// The text of a script or style element, to the byte.
    pub text: Option<&'a str>,
    /// Byte offset just after the tag's `>`.
    pub end: usize,
}

impl<'a> Tag<'a> {
    /// The value of an attribute, if it is there.
    pub fn attribute(&self, name: &str) -> Option<&'a str> {
        self.attributes.iter().find(|(known, _)| known.eq_ignore_ascii_case(name)).map(|(_, value)| *value)
    }
}

/// Every start tag of the page in order, comments and the texts of scripts and styles left out.
pub fn tags(html: &str) -> Vec<Tag<'_>> {
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(offset) = html[at..].find('<') {
        let open = at + offset;
        let rest = &html[open..];
        if rest.starts_with("<!--") {
            at = rest.find("-->").map_or(html.len(), |end| open + end + 3);
        } else if rest[1..].starts_with(|next: char| next.is_ascii_alphabetic()) {
            let mut tag = start_tag(html, open + 1);
            at = tag.end;
            if ["script", "style"].iter().any(|raw| tag.name.eq_ignore_ascii_case(raw)) {
                let length = html[at..].find("</").map_or(html.len() - at, |_| end_of_raw(&html[at..], tag.name));
                tag.text = Some(&html[at..at + length]);
                at += length;
            }
            found.push(tag);
        } else {
            at = open + 1;
        }
    }
    found
}

/// How many bytes of `rest` come before the end tag of a raw text element.
fn end_of_raw(rest: &str, name: &str) -> usize {
    rest.match_indices("</")
        .find(|(at, _)| rest[at + 2..].get(..name.len()).is_some_and(|tag| tag.eq_ignore_ascii_case(name)))
        .map_or(rest.len(), |(at, _)| at)
}

fn start_tag(html: &str, begin: usize) -> Tag<'_> {
    let ends_name = |letter: char| letter.is_ascii_whitespace() || letter == '>' || letter == '/';
    let mut at = html[begin..].find(ends_name).map_or(html.len(), |length| begin + length);
    let name = &html[begin..at];
    let mut attributes = Vec::new();
    loop {
        at += html[at..].find(|letter: char| !letter.is_ascii_whitespace() && letter != '/').unwrap_or(html.len() - at);
        if at >= html.len() || html[at..].starts_with('>') {
            let end = (at + 1).min(html.len());
            return Tag { name, attributes, text: None, end };
        }
        let length = html[at..]
            .find(|letter: char| letter.is_ascii_whitespace() || letter == '>' || letter == '=')
            .unwrap_or(html.len() - at);
        let key = html[at..at + length].trim_end_matches('/');
        at += length.max(1);
        let mut value = "";
        if length > 0 && html[at..].trim_start().starts_with('=') {
            at += html[at..].find('=').unwrap_or(0) + 1;
            at += html[at..].find(|letter: char| !letter.is_ascii_whitespace()).unwrap_or(html.len() - at);
            let quote = html[at..].chars().next().filter(|first| matches!(first, '"' | '\''));
            let length = if let Some(quote) = quote {
                at += 1;
                html[at..].find(quote)
            } else {
                html[at..].find(|letter: char| letter.is_ascii_whitespace() || letter == '>')
            };
            let length = length.unwrap_or(html.len() - at);
            value = &html[at..at + length];
            at += length + usize::from(quote.is_some());
        }
        attributes.push((key, value));
        at = at.min(html.len());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn attributes_are_read_quoted_bare_and_without_value() {
        let tags = tags("<!doctype html><p>1 < 2</p><input class=\"a > b\" value=x disabled data-y = 'z'/><br/>");
        let names: Vec<_> = tags.iter().map(|tag| tag.name).collect();
        assert_eq!(names, ["p", "input", "br"]);
        assert_eq!(tags[1].attributes, [("class", "a > b"), ("value", "x"), ("disabled", ""), ("data-y", "z")]);
    }

    #[test]
    fn texts_of_scripts_and_styles_are_kept_to_the_byte_and_not_read_as_tags() {
        let tags = tags("<script>if (a</b/.test(c)) d('<p style=x>')</script><style>p{}\n</style><i>");
        let texts: Vec<_> = tags.iter().map(|tag| tag.text).collect();
        assert_eq!(texts, [Some("if (a</b/.test(c)) d('<p style=x>')"), Some("p{}\n"), None]);
    }

    #[test]
    fn comments_hide_what_is_in_them() {
        assert_eq!(tags("<!-- <meta charset=utf-8> --><b>").len(), 1);
    }

    #[test]
    fn a_page_cut_short_anywhere_is_read_without_a_panic() {
        let page = "<meta charset=utf-8><p class='é' data-a = \"ü\"><script src=x>é</script><style>a</style>";
        for (end, _) in page.char_indices() {
            tags(&page[..end]);
        }
    }
}
