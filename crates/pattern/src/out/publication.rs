//! All that a published pattern has in it, before it takes a form.

use crate::say;
use crate::sizes::{Graded, Table, grade, size_table};
use crate::written::{About, Sheet, lay_out, write};
use hatwright_sizing::{Hat, HatSpec, Refusal, plan};

/// A size of a pattern: what it is called, and the hat that is asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct OneSize {
    /// Its name: `4 years`, `M`.
    pub name: String,
    /// What is asked for.
    pub spec: HatSpec,
}

/// A photograph of the designer's own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Photo {
    /// Where it is: a `data:` or `blob:` address.
    pub source: String,
    /// What it shows, for those who cannot see it.
    pub shows: String,
}

/// A chart as markup, with its twin for those who read it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Figure {
    /// Which: a name for files and places on a page.
    pub id: &'static str,
    /// Its title.
    pub title: String,
    /// A whole SVG document, which needs no style sheet but its own.
    pub svg: String,
    /// The same as an element for a page whose style sheet has the pictures' classes.
    pub markup: String,
    /// The same in words and figures.
    pub table: Table,
}

/// A pattern to publish.
#[derive(Clone, Debug, PartialEq)]
pub struct Publication {
    /// Its words, in every size.
    pub graded: Graded,
    /// The hats, in the order of the sizes.
    pub hats: Vec<Hat>,
    /// Finished measurements by size.
    pub measures: Table,
    /// Sizes that were asked for but cannot be made: the name, and why.
    pub refused: Vec<(String, String)>,
    /// Charts.
    pub figures: Vec<Figure>,
    /// Photographs.
    pub photos: Vec<Photo>,
    /// The address that opens the hat again; empty for none.
    pub link: String,
    /// The address in the square code: the same, or a shorter one where the link is too long to be read from paper.
    pub code: String,
    /// The size to point out, by its place.
    pub highlight: Option<usize>,
}

/// Plans and writes a pattern in some sizes, smallest head first. A size of which no hat can be made is left out, and told.
///
/// # Errors
/// Why the only, or the last, size is refused: then there is no pattern.
pub fn publish(sizes: &[OneSize], about: &About<'_>) -> Result<Publication, Refusal> {
    let mut made: Vec<(&OneSize, Hat)> = Vec::new();
    let mut refused = Vec::new();
    let mut last = None;
    for size in sizes {
        match plan(&size.spec) {
            Ok(hat) => made.push((size, hat)),
            Err(why) => {
                refused.push((size.name.clone(), say::refusal(&why, about.units)));
                last = Some(why);
            }
        }
    }
    if let (true, Some(why)) = (made.is_empty(), last) {
        return Err(why);
    }
    made.sort_by_key(|(_, hat)| hat.head.girth);
    let names: Vec<String> = made.iter().map(|(size, _)| size.name.clone()).collect();
    let sheets: Vec<Sheet> = made.iter().map(|(size, hat)| lay_out(&write(hat, &size.spec), hat, &size.spec, about)).collect();
    let graded = grade(&names, &sheets);
    let hats: Vec<Hat> = made.into_iter().map(|(_, hat)| hat).collect();
    let measures = size_table(&graded, &hats.iter().collect::<Vec<_>>(), about);
    Ok(Publication {
        graded,
        hats,
        measures,
        refused,
        figures: Vec::new(),
        photos: Vec::new(),
        link: String::new(),
        code: String::new(),
        highlight: None,
    })
}

impl Publication {
    /// Whether it is in more than one size.
    pub fn several(&self) -> bool {
        self.graded.names.len() > 1
    }
}
