//! Markup of what is only read: tables and text are written as one string, which is faster to redraw and far fewer bytes of program
//! than a tree of typed views. Everything that came from a person goes through [`Html::text`].

/// Markup in the making.
#[derive(Default)]
pub struct Html(String);

impl Html {
    /// Nothing yet.
    pub fn new() -> Self {
        Self::default()
    }

    /// Markup of the program's own.
    pub fn raw(&mut self, markup: &str) -> &mut Self {
        self.0.push_str(markup);
        self
    }

    /// Text, escaped.
    pub fn text(&mut self, text: &str) -> &mut Self {
        for c in text.chars() {
            match c {
                '&' => self.0.push_str("&amp;"),
                '<' => self.0.push_str("&lt;"),
                '>' => self.0.push_str("&gt;"),
                '"' => self.0.push_str("&quot;"),
                c => self.0.push(c),
            }
        }
        self
    }

    /// A text in an element without attributes.
    pub fn element(&mut self, tag: &str, text: &str) -> &mut Self {
        self.raw("<").raw(tag).raw(">").text(text).raw("</").raw(tag).raw(">")
    }

    /// A whole number.
    pub fn number(&mut self, n: u32) -> &mut Self {
        self.raw(&n.to_string())
    }

    /// A round patch of a yarn's colour. An SVG, because the page's policy forbids style attributes.
    pub fn chip(&mut self, hex: &str) -> &mut Self {
        self.raw(r#"<svg class="chip" viewBox="0 0 2 2" aria-hidden="true"><circle cx="1" cy="1" r="1" fill=""#)
            .text(hex)
            .raw(r#""/></svg>"#)
    }

    /// The markup.
    pub fn done(self) -> String {
        self.0
    }
}

/// Markup of a text with a class, to be put into a message that has no markup of its own.
pub fn marked(tag: &str, class: &str, text: &str) -> String {
    let mut html = Html::new();
    html.raw("<").raw(tag).raw(" class=\"").raw(class).raw("\">").text(text).raw("</").raw(tag).raw(">");
    html.done()
}
