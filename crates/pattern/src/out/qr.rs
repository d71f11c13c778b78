//! A link as a square code (QR, ISO/IEC 18004) that a telephone reads from paper.

use qrcode::{Color, EcLevel, QrCode};

/// Empty modules around the code, by the standard.
const QUIET: usize = 4;

/// The code of a link as a complete SVG document, black on white; `None` where the link is longer than a code holds (2,953 bytes) or empty.
///
/// Medium correction, a seventh of it may be spoilt; the low one where the link is too long for that.
pub fn qr_svg(link: &str) -> Option<String> {
    if link.is_empty() {
        return None;
    }
    let levels = [EcLevel::M, EcLevel::L];
    let code = levels.into_iter().find_map(|level| QrCode::with_error_correction_level(link, level).ok())?;
    let side = code.width();
    let colours = code.to_colors();
    let whole = (side + 2 * QUIET).to_string();
    let mut path = String::new();
    for (y, row) in colours.chunks(side).enumerate() {
        let mut x = 0;
        while x < side {
            let run = row[x..].iter().take_while(|colour| **colour == Color::Dark).count();
            if run > 0 {
                let (at, down, long) = ((x + QUIET).to_string(), (y + QUIET).to_string(), run.to_string());
                path.push_str(&["M", &at, " ", &down, "h", &long, "v1H", &at, "z"].concat());
            }
            x += run.max(1);
        }
    }
    Some(
        [
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ",
            &whole,
            " ",
            &whole,
            "\" class=\"qr\" role=\"img\" shape-rendering=\"crispEdges\"><title>",
            hatwright_words::out::qr_shows(),
            "</title><rect width=\"",
            &whole,
            "\" height=\"",
            &whole,
            "\" fill=\"#fff\"/><path fill=\"#000\" d=\"",
            &path,
            "\"/></svg>",
        ]
        .concat(),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Draws the SVG's path on a grid of dots and has another library read it.
    fn read_back(svg: &str) -> String {
        const DOTS: usize = 4;
        let document = roxmltree::Document::parse(svg).unwrap();
        let side: usize = document.root_element().attribute("viewBox").unwrap().rsplit(' ').next().unwrap().parse().unwrap();
        let data = document.descendants().find_map(|node| node.attribute("d")).unwrap().to_owned();
        let mut dark = vec![false; side * side];
        for run in data.split('z').filter(|run| !run.is_empty()) {
            let (x, rest) = run.trim_start_matches('M').split_once(' ').unwrap();
            let (y, rest) = rest.split_once('h').unwrap();
            let (long, _) = rest.split_once('v').unwrap();
            let (x, y, long): (usize, usize, usize) = (x.parse().unwrap(), y.parse().unwrap(), long.parse().unwrap());
            dark[y * side + x..][..long].fill(true);
        }
        let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side * DOTS, side * DOTS, |x, y| {
            if dark[y / DOTS * side + x / DOTS] { 0 } else { 255 }
        });
        let grids = picture.detect_grids();
        assert_eq!(grids.len(), 1);
        grids[0].decode().unwrap().1
    }

    /// Read back by `rqrr`, which shares no code with the library that writes the codes.
    #[test]
    fn another_library_reads_the_link() {
        for length in [1, 40, 195, 600, 1_500] {
            let link = ["https://hat.example/#4", &"Ab3-_".repeat(length / 5)].concat();
            assert_eq!(read_back(&qr_svg(&link).unwrap()), link, "{length}");
        }
        let spanish = "https://hat.example/#gorro-ñandú";
        assert_eq!(read_back(&qr_svg(spanish).unwrap()), spanish);
    }

    #[test]
    fn what_no_code_holds_has_none() {
        assert_eq!(qr_svg(""), None);
        assert!(qr_svg(&"x".repeat(2_953)).is_some());
        assert_eq!(qr_svg(&"x".repeat(2_954)), None);
    }
}
