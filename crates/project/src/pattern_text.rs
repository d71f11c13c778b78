//! A saved hat's pattern as text, and the pattern crate's words for a document's choices.

use crate::{Hand, Project, Terms, Units};
use hatwright_pattern::out::{OneSize, Publication, publish, text};
use hatwright_pattern::picture::colour_letter;
use hatwright_pattern::sizes::size_name;
use hatwright_pattern::{figures, written};
use hatwright_sizing::{Colour, HatSpec, Refusal};
use hatwright_words::{Language, document as words, spoken};

impl Units {
    /// The pattern crate's units.
    pub const fn figures(self) -> figures::Units {
        match self {
            Self::Centimetres => figures::Units::Centimetres,
            Self::Inches => figures::Units::Inches,
            Self::Both => figures::Units::Both,
        }
    }
}

impl Terms {
    /// The pattern crate's terms: Spanish has its own, whatever the document says.
    ///
    /// ```
    /// use hatwright_pattern::written;
    /// use hatwright_project::Terms;
    /// use hatwright_words::{Language, in_language};
    /// assert_eq!(Terms::Uk.written(), written::Terms::Uk);
    /// assert_eq!(in_language(Language::Spanish, || Terms::Uk.written()), written::Terms::Spanish);
    /// ```
    pub fn written(self) -> written::Terms {
        match (spoken(), self) {
            (Language::Spanish, _) => written::Terms::Spanish,
            (Language::English, Self::Us) => written::Terms::Us,
            (Language::English, Self::Uk) => written::Terms::Uk,
        }
    }
}

impl Hand {
    /// The pattern crate's hand.
    pub const fn written(self) -> written::Hand {
        match self {
            Self::Right => written::Hand::Right,
            Self::Left => written::Hand::Left,
        }
    }
}

impl Project {
    /// The hat itself and then its other sizes, in the order in which they were chosen. One without a name is called by its head, and two
    /// of one name are told apart by a number.
    ///
    /// ```
    /// use hatwright_project::{ProjectId, SizeOf, example};
    /// let mut cap = example(ProjectId::from_bits(1));
    /// cap.sizes = vec![SizeOf { name: String::new(), head: cap.spec.head }];
    /// let names: Vec<String> = cap.every_size().into_iter().map(|size| size.name).collect();
    /// assert_eq!(names, ["4 years", "4 years 2"]);
    /// ```
    pub fn every_size(&self) -> Vec<OneSize> {
        let named = |(name, spec): (String, HatSpec)| match name.trim() {
            "" => OneSize { name: size_name(&spec.head, self.units.figures()), spec },
            name => OneSize { name: name.to_owned(), spec },
        };
        let own = (String::new(), self.spec.clone());
        let mut all: Vec<OneSize> = [own].into_iter().chain(self.sized()).map(named).collect();
        let given: Vec<String> = all.iter().map(|size| size.name.clone()).collect();
        for (at, size) in all.iter_mut().enumerate() {
            let twins = given[..at].iter().filter(|before| **before == given[at]).count();
            if twins > 0 {
                size.name = [&*size.name, " ", &(twins + 1).to_string()].concat();
            }
        }
        all
    }

    /// The hat in one of its sizes alone, counted from 1: the first is the hat itself, the others those of [`Project::sized`]. `None`
    /// where there are not so many.
    ///
    /// ```
    /// use hatwright_project::{ProjectId, SizeOf, example};
    /// use hatwright_sizing::{Head, Length};
    /// let mut cap = example(ProjectId::from_bits(1));
    /// let head = Head::Measured(Length::from_cm(57.0));
    /// cap.sizes = vec![SizeOf { name: String::new(), head }];
    /// assert_eq!(cap.in_size(1).unwrap().spec, cap.spec);
    /// assert_eq!(cap.in_size(2).unwrap().spec.head, head);
    /// assert_eq!(cap.in_size(3), None);
    /// ```
    #[must_use]
    pub fn in_size(&self, number: usize) -> Option<Self> {
        let size = self.every_size().into_iter().nth(number.checked_sub(1)?)?;
        // Of several sizes, the pattern of one says in its name which it is.
        let named = !self.sizes.is_empty();
        let name = if named { crate::text::NAME.tidy(&[&*self.name, ", ", &size.name].concat()) } else { self.name.clone() };
        Some(Self { name, spec: size.spec, sizes: Vec::new(), ..self.clone() })
    }

    /// What a pattern calls the colours: one without a name, and two of one name, by their letters.
    pub fn told_colours(&self) -> Vec<String> {
        let twin =
            |i: usize| self.colours.iter().enumerate().any(|(j, c)| j != i && c.name.trim() == self.colours[i].name.trim());
        let name = |i: usize| {
            let letter = colour_letter(Colour(i as u8)).to_string();
            match self.colours[i].name.trim() {
                "" => words::colour_of(&letter),
                name if twin(i) => [name, " ", &letter].concat(),
                name => name.to_owned(),
            }
        };
        (0..self.colours.len()).map(name).collect()
    }

    /// What the pattern is told by; `with` gets it while what it borrows is there.
    pub fn about<T>(&self, with: impl FnOnce(&written::About<'_>) -> T) -> T {
        let colours = self.told_colours();
        let colour_names: Vec<&str> = colours.iter().map(String::as_str).collect();
        let yarn_names: Vec<&str> = self.colours.iter().map(|colour| &*colour.yarn).collect();
        let designer = &self.designer;
        with(&written::About {
            title: if self.name.trim().is_empty() { words::nameless() } else { &self.name },
            colour_names: &colour_names,
            yarn_names: &yarn_names,
            terms: self.terms.written(),
            units: self.units.figures(),
            version: env!("CARGO_PKG_VERSION"),
            hand: self.hand.written(),
            designer: written::Designer {
                introduction: &designer.introduction,
                credit: &designer.credit,
                edition: &designer.edition,
                date: &designer.date,
                tested: &designer.tested,
                care: &designer.care,
            },
        })
    }

    /// The pattern in all its sizes, smallest head first, in the language that is spoken; without charts, photographs and a link.
    ///
    /// # Errors
    /// Why there is no hat, where none can be made in any of them.
    pub fn published(&self) -> Result<Publication, Refusal> {
        self.about(|about| publish(&self.every_size(), about))
    }

    /// The same as plain text.
    ///
    /// # Errors
    /// As for [`Project::published`].
    ///
    /// ```
    /// use hatwright_project::{ProjectId, example};
    /// let text = example(ProjectId::from_bits(1)).pattern_text().unwrap();
    /// assert!(text.starts_with("Rowing club, junior cap\n"));
    /// assert!(text.contains("\nRound 1, "));
    /// ```
    pub fn pattern_text(&self) -> Result<String, Refusal> {
        Ok(text(&self.published()?))
    }
}
