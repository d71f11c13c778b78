//! How large the page may be. This is the one place for these numbers.

/// A limit for one kind of file.
#[derive(Debug)]
pub struct Budget {
    /// What it is about, as the table prints it.
    pub name: &'static str,
    /// How the names of the files end that count towards it.
    pub ending: &'static str,
    /// Most bytes after gzip (many hosts compress no better).
    pub gzip: usize,
    /// Most bytes after brotli.
    pub brotli: usize,
}

impl Budget {
    /// The one that a file counts towards.
    pub fn of(file: &str) -> Option<&'static Self> {
        BUDGETS.iter().find(|budget| file.ends_with(budget.ending))
    }
}

const KB: usize = 1024;

/// Every file belongs to the first of these that its name fits; a file of no kind is a failure, so that nothing grows unseen.
pub const BUDGETS: &[Budget] = &[
    // What a first round trip of a connection brings: the first screen must be in it.
    Budget { name: "first screen", ending: "index.html", gzip: 13 * KB, brotli: 13 * KB },
    // What eight kinds of hat, eleven fabrics, their patterns in two languages, pictures, charts, yarn, the shop and publishing take, and
    // 3 %. One program does all at once; to cut it down, it has to be loaded in parts.
    Budget { name: "wasm", ending: ".wasm", gzip: 880 * KB, brotli: 680 * KB },
    Budget { name: "script", ending: ".js", gzip: 12 * KB, brotli: 11 * KB },
    Budget { name: "style", ending: ".css", gzip: 12 * KB, brotli: 11 * KB },
    Budget { name: "pictures", ending: ".svg", gzip: 2 * KB, brotli: 2 * KB },
];

/// All files together: what a first visit loads.
pub const TOTAL: Budget = Budget { name: "everything", ending: "", gzip: 905 * KB, brotli: 702 * KB };

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_kind_of_file_of_a_build_has_its_budget() {
        let budget = |file: &str| Budget::of(file).map(|budget| budget.name);
        assert_eq!(budget("index.html"), Some("first screen"));
        assert_eq!(budget("hatwright-web-0123456789abcdef_bg.wasm"), Some("wasm"));
        assert_eq!(budget("style-0123456789abcdef.css"), Some("style"));
        assert_eq!(budget("movie.mp4"), None);
    }

    #[test]
    fn the_first_screen_is_held_to_its_promise() {
        assert_eq!((BUDGETS[0].gzip, BUDGETS[0].brotli), (13_312, 13_312));
    }
}
