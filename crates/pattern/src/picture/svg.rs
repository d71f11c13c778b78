//! A picture as SVG text that stands on its own, for export, print and tests.

use super::pen::push_whole;
use super::shape::{Paint, Picture, ShapeKind};

/// A tile of lines as a pattern.
macro_rules! hatch {
    ($id:literal, $lines:literal) => {
        concat!(
            r#"<pattern id=""#,
            $id,
            r#"" width="8" height="8" patternUnits="userSpaceOnUse"><path d=""#,
            $lines,
            r##"" fill="none" stroke="#29231d" stroke-width=".9" stroke-opacity=".75" stroke-linecap="round"/></pattern>"##
        )
    };
}

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

/// The hatchings that [`Paint::Hatch`] names, for the colours in order: dots, rising lines, level lines, falling lines, upright lines, a
/// net. A seventh colour has the first again. They are dark in every mode, as the cells that they fill are light.
pub const HATCHES: [&str; 6] = [
    hatch!("hatch-0", "M1.5 2h1M5.5 6h1"),
    hatch!("hatch-1", "M-2 2l4 -4M-2 10l12 -12M6 10l4 -4"),
    hatch!("hatch-2", "M0 2h8M0 6h8"),
    hatch!("hatch-3", "M-2 6l4 4M-2 -2l12 12M6 -2l4 4"),
    hatch!("hatch-4", "M2 0v8M6 0v8"),
    hatch!("hatch-5", "M-2 6l4 4M-2 -2l12 12M6 -2l4 4M-2 2l4 -4M-2 10l12 -12M6 10l4 -4"),
];

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
.fit-span{fill:none;stroke:#a4402f;stroke-width:4}.fit-wearer{fill:none;stroke:#29231d;stroke-width:1.5}.fit-dot{fill:#29231d}\
.chart-round,.chart-key{fill:none;stroke:none}.chart-text{font-size:12px;fill:#29231d}.chart-ring{fill:#d9c4a0;fill-opacity:.24}\
.chart-edge,.chart-gather{fill:none;stroke:#6a5f52;stroke-width:.9}.chart-gather{stroke-dasharray:3 2.4}\
.chart-begin{fill:#a4402f}.chart-way{fill:none;stroke:#a4402f;stroke-width:1.5;stroke-linecap:round;stroke-linejoin:round}\
.chart-cut{fill:none;stroke:#6a5f52;stroke-width:.9;stroke-dasharray:5 3}\
.chart-veil{fill:#fffaf0;fill-opacity:.6}.chart-grid{fill:none;stroke:#29231d;stroke-opacity:.7;stroke-width:.7}\
.chart-plate{fill:#fffaf0;fill-opacity:.9}.chart-cell{font-size:10px;font-weight:600;fill:#29231d}\
.flat-hat{fill:#efe6d4;stroke:#29231d;stroke-width:1.5;stroke-linejoin:round}.flat-part{fill:none;stroke:#29231d;stroke-width:.9;stroke-dasharray:5 4}\
.flat-line{fill:none;stroke:#29231d;stroke-width:1.5;stroke-linecap:round}\
.sym-sc,.sym-hdc,.sym-dc,.sym-sl,.sym-ch,.sym-join,.sym-ring,\
.sym-sc-tog,.sym-hdc-tog,.sym-dc-tog,.sym-sl-tog,.sym-sc-inc,.sym-hdc-inc,.sym-dc-inc,.sym-sl-inc\
{fill:none;stroke:#29231d;stroke-width:1.2;stroke-linecap:round;stroke-linejoin:round}\
.sym-sc-tog,.sym-hdc-tog,.sym-dc-tog,.sym-sl-tog,.sym-sc-inc,.sym-hdc-inc,.sym-dc-inc,.sym-sl-inc\
{stroke:#a4402f;stroke-width:1.7}.sym-sl,.sym-join{fill:#29231d}.sym-ch{stroke-width:1}";

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
    defs(&mut out, picture);
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

/// The gradients and hatchings that are used: most pictures have none.
fn defs(out: &mut String, picture: &Picture) {
    let gradients = picture.shapes.iter().any(|s| matches!(s.paint, Paint::Gradient(_)));
    let hatched = |i: usize| picture.shapes.iter().any(|s| matches!(s.paint, Paint::Hatch(c) if hatch_of(c.0) == i));
    let hatches: Vec<&str> = HATCHES.iter().enumerate().filter(|(i, _)| hatched(*i)).map(|(_, hatch)| *hatch).collect();
    if gradients || !hatches.is_empty() {
        out.push_str("<defs>");
        out.push_str(if gradients { GRADIENTS } else { "" });
        out.push_str(&hatches.concat());
        out.push_str("</defs>");
    }
}

/// Which hatching stands for a colour.
fn hatch_of(colour: u8) -> usize {
    usize::from(colour) % HATCHES.len()
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
            ShapeKind::Open(title) => {
                out.push_str("<g");
                paint(out, shape.paint, yarn);
                out.push_str("><title>");
                escape(out, title);
                out.push_str("</title>");
            }
            ShapeKind::Close => out.push_str("</g>"),
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
        Paint::Hatch(colour) => {
            out.push_str(r#" class="hatch" fill="url(#hatch-"#);
            push_whole(out, hatch_of(colour.0) as u32);
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
                        Paint::Yarn(colour) | Paint::Hatch(colour) => {
                            assert!(usize::from(colour.0) < hat.yarn.len(), "{name}: {colour:?}");
                        }
                    }
                }
                assert!(!to_svg(&picture, &[]).contains("style="), "{name}");
            }
        }
    }
}
