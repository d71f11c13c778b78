//! What kind of file a name stands for, and how long a browser may keep it.

/// The media type that a browser needs to be told. WebAssembly is compiled while it streams in only under its own type.
pub fn media_type(name: &str) -> &'static str {
    match name.rsplit_once('.').map_or("", |(_, extension)| extension) {
        "html" => "text/html; charset=utf-8",
        "js" | "mjs" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

/// A file whose name carries a hash of its contents never changes; everything else is asked for again.
pub fn cache_control(name: &str) -> &'static str {
    if has_hash(name) { "public, max-age=31536000, immutable" } else { "no-cache" }
}

/// Whether the name has a part like `-1f2e3d4c5b6a7988`, as the build gives to files by content.
fn has_hash(name: &str) -> bool {
    name.split(['-', '_', '.']).any(|part| part.len() >= 14 && part.bytes().all(|digit| digit.is_ascii_hexdigit()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn types_follow_the_extension() {
        assert_eq!(media_type("a-1_bg.wasm"), "application/wasm");
        assert_eq!(media_type("a.js"), "text/javascript; charset=utf-8");
        assert_eq!(media_type("site.webmanifest"), "application/manifest+json");
        assert_eq!(media_type("LICENSE"), "application/octet-stream");
    }

    #[test]
    fn only_hashed_names_are_kept() {
        for hashed in ["style-1f2e3d4c5b6a7988.css", "hatwright-web-1f2e3d4c5b6a7988_bg.wasm", "icon-f2e3d4c5b6a7988.svg"] {
            assert!(cache_control(hashed).contains("immutable"), "{hashed}");
        }
        for plain in ["index.html", "sw.js", "icon.svg", "decade.html"] {
            assert_eq!(cache_control(plain), "no-cache", "{plain}");
        }
    }
}
