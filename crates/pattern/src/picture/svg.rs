//! A picture as SVG text that stands on its own, for export, print and tests.

use super::pen::push_whole;
use super::shape::{Paint, Picture, ShapeKind};

/// The gradients that [`Paint::Gradient`] names: once into the page, inside a `<defs>`. Light and dark alone, so that they lie over
/// any yarn.
pub const GRADIENTS: &str = concat!(
    r##"<linearGradient id="hat-shade"><stop offset="0" stop-color="#000" stop-opacity=".3"/>"##,
    r##"<stop offset=".13" stop-color="#000" stop-opacity=".09"/><stop offset=".24" stop-color="#fff" stop-opacity=".07"/>"##,
    r##"<stop offset=".36" stop-color="#fff" stop-opacity=".13"/><stop offset=".5" stop-color="#fff" stop-opacity=".03"/>"##,
    r##"<stop offset=".68" stop-color="#000" stop-opacity=".08"/><stop offset=".88" stop-color="#000" stop-opacity=".3"/>"##,
    r##"<stop offset="1" stop-color="#000" stop-opacity=".5"/></linearGradient>"##,
    r##"<linearGradient id="brim-shade"><stop offset="0" stop-color="#000" stop-opacity=".16"/>"##,
    r##"<stop offset=".3" stop-color="#fff" stop-opacity=".1"/><stop offset=".55" stop-color="#000" stop-opacity=".03"/>"##,
    r##"<stop offset="1" stop-color="#000" stop-opacity=".28"/></linearGradient>"##,
);

/// What each class of [`Paint::Class`] looks like in light mode. In dark mode only the head form, the labels and the lines change.
pub const CLASSES: &str = "\
.head,.ear{fill:#e4d5c0}.ear,.ear-line{stroke:#cdb99c;stroke-width:1}.ear-line{fill:none}.head-shadow{fill:#4b3118;fill-opacity:.12}\
.inside{fill:#000;fill-opacity:.42}.shadow{fill:#000;fill-opacity:.06}\
.stitch-light,.ridge{fill:#fff;fill-opacity:.13}.stitch-dark{fill:#000;fill-opacity:.13}.rib-stitch{fill:#000;fill-opacity:.12}\
.loop-line{fill:none;stroke:#fff;stroke-opacity:.2;stroke-width:1.4}.post-line{fill:none;stroke:#000;stroke-opacity:.12;stroke-width:.8}\
.underside{fill:#000;fill-opacity:.34}.tube-light{fill:#fff;fill-opacity:.045}.tube-shade{fill:#000;fill-opacity:.075}\
.small-edge{fill:none;stroke:#6a5f52;stroke-opacity:.6;stroke-width:1.6;stroke-linejoin:round}\
.icon{fill:currentColor}.icon-light{fill:color-mix(in srgb,currentColor 45%,#fffaf0)}\
.wheel-line{fill:none;stroke:#000;stroke-opacity:.25;stroke-width:.6}.wheel-zone{fill:none;stroke:#29231d;stroke-width:1.8}\
.wheel-mark{fill:#fffaf0;stroke:#29231d;stroke-width:.7}.wheel-start{fill:#a4402f}\
.hair{fill:#b9a07e}.hair-line{fill:none;stroke:#8f7757;stroke-opacity:.5;stroke-width:1}\
.flap-edge{fill:none;stroke:#fff;stroke-opacity:.35;stroke-width:1}.break{fill:none;stroke:#6a5f52;stroke-width:1.6}\
.round-line{fill:none;stroke:#000;stroke-opacity:.22;stroke-width:.8}\
.decrease{fill:#000;fill-opacity:.2}.gather{fill:#000;fill-opacity:.24}.groove{fill:#000;fill-opacity:.34}\
.rim{fill:none;stroke:#fff;stroke-opacity:.5;stroke-width:1.2;stroke-linejoin:round}\
.strand-shade{fill:#000;fill-opacity:.2}.strand-light{fill:#fff;fill-opacity:.22}\
.dimension{fill:none;stroke:#6a5f52;stroke-width:1}\
text{font:14px ui-sans-serif,system-ui,sans-serif;font-variant-numeric:tabular-nums}.label{fill:#29231d}\
.notch{fill:#fffaf0}.bar-edge{fill:none;stroke:#6a5f52;stroke-opacity:.45;stroke-width:.7}\
.chart-number,.chart-letter,.chart-total,.chart-decrease{font-size:11px;fill:#6a5f52}\
.chart-total{font-weight:700;fill:#29231d}.chart-decrease{fill:#a4402f}\
.fit-area{fill:#34516f;fill-opacity:.26}.fit-line{fill:none;stroke:#34516f;stroke-width:2;stroke-linejoin:round}\
.fit-axis,.fit-limit{fill:none;stroke:#6a5f52;stroke-width:1}.fit-limit{stroke-dasharray:5 4}\
.fit-span{fill:none;stroke:#a4402f;stroke-width:4}.fit-wearer{fill:none;stroke:#29231d;stroke-width:1.5}.fit-dot{fill:#29231d}";

/// Writes a picture as an SVG element for a page that has the classes in its own style sheet: no style element, no style attribute,
/// title and description as its label.
pub fn to_markup(picture: &Picture, yarn: &[&str]) -> String {
    let mut out = String::from(r#"<svg viewBox="0 0 "#);
    whole(&mut out, picture.width);
    out.push(' ');
    whole(&mut out, picture.height);
    out.push_str(r#"" role="img" aria-label=""#);
    escape(&mut out, &picture.title);
    out.push_str(". ");
    escape(&mut out, &picture.description);
    out.push_str("\">");
    // A page with several pictures must not hold one id twice.
    if picture.shapes.iter().any(|shape| matches!(shape.paint, Paint::Gradient(_))) {
        out.push_str("<defs>");
        out.push_str(GRADIENTS);
        out.push_str("</defs>");
    }
    elements(&mut out, picture, yarn);
    out.push_str("</svg>");
    out
}

/// Writes a picture as a complete SVG document. `yarn` holds the colours' values in the order of their indices; a colour beyond
/// them is drawn in grey.
///
/// ```
/// use hatwright_pattern::picture::{Anchor, Paint, Picture, Shape, ShapeKind, to_svg};
/// let text = ShapeKind::Text { x: 1, y: 9, anchor: Anchor::Start, text: "2 < 3".into() };
/// let shapes = vec![Shape { kind: text, paint: Paint::Class("label") }];
/// let picture = Picture { width: 20, height: 10, title: "T".into(), description: "D".into(), shapes };
/// assert!(to_svg(&picture, &[]).ends_with(r#"<text x="1" y="9" text-anchor="start" class="label">2 &lt; 3</text></svg>"#));
/// ```
pub fn to_svg(picture: &Picture, yarn: &[&str]) -> String {
    let mut out = String::from(r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 "#);
    whole(&mut out, picture.width);
    out.push(' ');
    whole(&mut out, picture.height);
    out.push_str(r#"" role="img"><title>"#);
    escape(&mut out, &picture.title);
    out.push_str("</title><desc>");
    escape(&mut out, &picture.description);
    out.push_str("</desc><style>");
    out.push_str(CLASSES);
    out.push_str("</style>");
    defs(&mut out, picture);
    elements(&mut out, picture, yarn);
    out.push_str("</svg>");
    out
}

/// The gradients, where any is used: small pictures have none.
fn defs(out: &mut String, picture: &Picture) {
    if picture.shapes.iter().any(|s| matches!(s.paint, Paint::Gradient(_))) {
        out.push_str("<defs>");
        out.push_str(GRADIENTS);
        out.push_str("</defs>");
    }
}

fn elements(out: &mut String, picture: &Picture, yarn: &[&str]) {
    for shape in &picture.shapes {
        match &shape.kind {
            ShapeKind::Path(data) => {
                out.push_str(r#"<path d=""#);
                escape(out, data);
                out.push('"');
                paint(out, shape.paint, yarn);
                out.push_str("/>");
            }
            ShapeKind::Text { x, y, anchor, text } => {
                out.push_str(r#"<text x=""#);
                whole(out, *x);
                out.push_str(r#"" y=""#);
                whole(out, *y);
                out.push_str(r#"" text-anchor=""#);
                out.push_str(anchor.name());
                out.push('"');
                paint(out, shape.paint, yarn);
                out.push('>');
                escape(out, text);
                out.push_str("</text>");
            }
        }
    }
}

fn paint(out: &mut String, paint: Paint, yarn: &[&str]) {
    match paint {
        Paint::Yarn(colour) => {
            out.push_str(r#" fill=""#);
            escape(out, yarn.get(usize::from(colour.0)).copied().unwrap_or("#888"));
        }
        Paint::Class(class) => {
            out.push_str(r#" class=""#);
            out.push_str(class);
        }
        Paint::Gradient(id) => {
            out.push_str(r#" fill="url(#"#);
            out.push_str(id);
            out.push(')');
        }
    }
    out.push('"');
}

fn whole(out: &mut String, n: i32) {
    if n < 0 {
        out.push('-');
    }
    push_whole(out, n.unsigned_abs());
}

/// Text for element content and for attributes. Characters that XML 1.0 (section 2.2) does not allow at all are left out.
fn escape(out: &mut String, text: &str) {
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\t' | '\n' | '\r' => out.push(c),
            '\u{fffe}' | '\u{ffff}' => {}
            c if c < ' ' => {}
            c => out.push(c),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::{HatLabels, hat_picture, hat_silhouette, round_chart, round_wheel, sample};
    use super::*;

    #[test]
    fn what_is_written_is_xml_and_says_what_was_said() {
        let labels = HatLabels { depth: "<19\" & \u{1}up>".into(), girth: "23 \u{b7} 46".into(), part: None };
        for (name, spec, hat) in sample::all() {
            let picture = hat_picture(&hat, &spec, &labels);
            let svg = to_svg(&picture, &["#34516f", "\"><script>"]);
            let document = roxmltree::Document::parse(&svg).unwrap_or_else(|e| panic!("{name}: {e}"));
            assert!(!document.descendants().any(|n| n.has_tag_name("script")), "{name}");
            let texts: Vec<&str> = document.descendants().filter(|n| n.has_tag_name("text")).filter_map(|n| n.text()).collect();
            assert_eq!(&texts[..2], ["<19\" & up>", "23 \u{b7} 46"], "{name}");
            let drawn = document.descendants().filter(|n| n.has_tag_name("path")).count();
            assert_eq!(drawn + texts.len(), picture.shapes.len(), "{name}");
            for other in [hat_silhouette(&hat), round_chart(&hat), round_wheel(&hat)] {
                assert!(!other.title.is_empty() && !other.description.is_empty(), "{name}");
                for text in [to_svg(&other, &[]), to_markup(&other, &[])] {
                    roxmltree::Document::parse(&text).unwrap_or_else(|e| panic!("{name}: {e}"));
                }
            }
        }
    }

    #[test]
    fn every_class_and_gradient_is_defined_and_nothing_is_styled_in_place() {
        for (name, spec, hat) in sample::all() {
            let labels = HatLabels { depth: "19 cm".into(), girth: "47 cm".into(), part: None };
            for picture in [hat_picture(&hat, &spec, &labels), round_chart(&hat), round_wheel(&hat), hat_silhouette(&hat)] {
                for shape in &picture.shapes {
                    match shape.paint {
                        Paint::Class(class) => {
                            let rule = [",", "{"].map(|end| format!(".{class}{end}"));
                            assert!(rule.iter().any(|r| CLASSES.contains(r.as_str())), "{name}: {class}");
                        }
                        Paint::Gradient(id) => assert!(GRADIENTS.contains(&format!("id=\"{id}\"")), "{name}: {id}"),
                        Paint::Yarn(colour) => assert!(usize::from(colour.0) < hat.yarn.len(), "{name}: {colour:?}"),
                    }
                }
                assert!(!to_svg(&picture, &[]).contains("style="), "{name}");
            }
        }
    }
}
