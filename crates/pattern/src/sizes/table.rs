//! The finished measurements of every size, as a table.

use super::Graded;
use crate::figures::{Units, length, length_span, yarn};
use crate::written::About;
use hatwright_sizing::{BandKind, Hat, Style};
use hatwright_words::sizes as words;

/// A table: a caption, its columns' headings, and its rows, of which each begins with what it is about.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Table {
    /// What it shows.
    pub caption: String,
    /// Headings of the columns.
    pub head: Vec<String>,
    /// Rows of as many cells.
    pub rows: Vec<Vec<String>>,
}

impl Table {
    /// Columns besides the first that find room on a sheet of paper side by side, each as wide as a length in two units.
    const MOST_COLUMNS: usize = 6;

    /// The table as it fits a sheet: one of more columns than that is turned, its rows become columns.
    ///
    /// ```
    /// use hatwright_pattern::sizes::Table;
    /// let words = |words: &str| words.split(' ').map(str::to_owned).collect::<Vec<_>>();
    /// let table = Table { caption: String::new(), head: words("Size 1 2 3 4 5 6 7"), rows: vec![words("Head a b c d e f g")] };
    /// let turned = table.fitted();
    /// assert_eq!((turned.head, turned.rows[6].clone()), (words("Size Head"), words("7 g")));
    /// ```
    #[must_use]
    pub fn fitted(&self) -> Self {
        if !self.is_wide() {
            return self.clone();
        }
        let column = |at: usize| [&self.head].into_iter().chain(&self.rows).filter_map(|row| row.get(at).cloned()).collect();
        let rows = (1..self.head.len()).map(column).collect();
        Self { caption: self.caption.clone(), head: column(0), rows }
    }

    /// Whether [`Table::fitted`] turns it.
    pub(crate) fn is_wide(&self) -> bool {
        self.head.len() > Self::MOST_COLUMNS + 1
    }
}

/// Finished measurements by size: a row each for head, girth, reach, depth, counts and yarn, a column a size.
pub fn size_table(graded: &Graded, hats: &[&Hat], about: &About<'_>) -> Table {
    let units: Units = about.units;
    let mut head = vec![words::size().to_owned()];
    head.extend(graded.names.iter().cloned());
    let mut rows: Vec<Vec<String>> = Vec::new();
    let mut row = |name: String, cell: &dyn Fn(&Hat) -> String| {
        let mut cells = vec![name];
        cells.extend(hats.iter().map(|hat| cell(hat)));
        rows.push(cells);
    };
    row(words::head().into(), &|hat| length(hat.head.girth, units));
    row(words::fits().into(), &|hat| length_span(hat.fit.least, hat.fit.most, units));
    row(words::around().into(), &|hat| length(hat.size.girth, units));
    let warm = hats.first().is_some_and(|hat| hat.style == Style::EarWarmer);
    let sideways = hats.iter().all(|hat| hat.style == Style::Sideways || (warm && hat.band == BandKind::Sideways));
    if !warm {
        row(words::depth().into(), &|hat| length(hat.depth.promised, units));
    }
    if sideways {
        row(words::rows().into(), &|hat| hat.size.rows.to_string());
    } else {
        row(words::stitches().into(), &|hat| hat.size.stitches.to_string());
        row(words::rounds().into(), &|hat| hat.rounds.len().to_string());
    }
    let colours = hats.iter().map(|hat| hat.yarn.len()).max().unwrap_or_default();
    for at in 0..colours {
        let Some(colour) = hats.iter().find_map(|hat| hat.yarn.get(at)).map(|need| need.colour) else { continue };
        let used = |hat: &Hat| hat.yarn.get(at).is_some_and(|need| need.length.metres() > 0.0);
        if hats.iter().any(|hat| used(hat)) {
            row(words::yarn_of(&about.colour(colour)), &|hat| {
                hat.yarn.get(at).map_or_else(String::new, |need| yarn(need.length, units))
            });
        }
    }
    Table { caption: words::caption().into(), head, rows }
}
