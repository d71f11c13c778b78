//! What the example `plan` does with a file, for people who script: everything but reading it.

use crate::plan_json::plan_json;
use crate::{Project, Terms, open};
use hatwright_pattern::say;
use hatwright_pattern::written::write;
use hatwright_sizing::plan;
use hatwright_words::{Language, document as words, in_language};

/// What is asked of a saved hat.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Ask {
    /// The file.
    pub file: String,
    /// The plan as JSON; otherwise the pattern as text.
    pub json: bool,
    /// In which language.
    pub language: Language,
    /// In whose terms, where not in the hat's own.
    pub terms: Option<Terms>,
    /// In this size alone, counted from 1, the hat's own first; otherwise in all.
    pub size: Option<usize>,
}

impl Ask {
    /// Reads the words after the program's name: a file, and any of `--json`, `--size N`, `--language en|es`, `--terms us|uk`.
    ///
    /// # Errors
    /// A sentence about the word that is not understood, or the file that is missing, and how it is used.
    ///
    /// ```
    /// use hatwright_project::{Terms, script::Ask};
    /// let ask = Ask::read(["cap.json", "--terms", "uk", "--size", "2"]).unwrap();
    /// assert_eq!((ask.file.as_str(), ask.terms, ask.size, ask.json), ("cap.json", Some(Terms::Uk), Some(2), false));
    /// assert!(Ask::read(["--json"]).unwrap_err().starts_with("No file was named.\n"));
    /// ```
    pub fn read<'a>(typed: impl IntoIterator<Item = &'a str>) -> Result<Self, String> {
        let (mut ask, mut rest, mut file) = (Self::default(), typed.into_iter(), None);
        let mut unknown = None;
        while let Some(word) = rest.next() {
            let mut value = "";
            let mut next = || {
                value = rest.next().unwrap_or_default();
                value
            };
            let known = match word {
                "--json" => {
                    ask.json = true;
                    Some(())
                }
                "--size" => next().parse().ok().filter(|n| *n > 0).map(|n| ask.size = Some(n)),
                "--language" => Language::of_tag(next()).map(|language| ask.language = language),
                "--terms" => terms(next()).map(|terms| ask.terms = Some(terms)),
                option if option.starts_with("--") => None,
                path if file.is_none() => {
                    file = Some(path.to_owned());
                    Some(())
                }
                _ => None,
            };
            if known.is_none() && unknown.is_none() {
                // What follows an option is what is wrong with it.
                unknown = Some(if value.is_empty() { word.to_owned() } else { [word, " ", value].concat() });
            }
        }
        // Whatever the order of the words, it is said in the language that they ask for.
        in_language(ask.language, || {
            let wrong = match (unknown, file) {
                (Some(word), _) => words::script_unknown(&word),
                (None, None) => words::script_no_file().to_owned(),
                (None, Some(file)) => return Ok(Self { file, ..ask }),
            };
            Err([&wrong, "\n", words::script_usage()].concat())
        })
    }

    /// What is to be printed of the file's text.
    ///
    /// # Errors
    /// A sentence: that it is no hat, that the hat has no such size, or why no hat can be made of it.
    pub fn answer(&self, text: &str) -> Result<String, String> {
        in_language(self.language, || {
            let project = self.asked(open(text).map_err(|why| why.to_string())?)?;
            let refused = |refusal| say::refusal(&refusal, project.units.figures());
            if self.json {
                let hat = plan(&project.spec).map_err(refused)?;
                let json = plan_json(&project, &hat, &write(&hat, &project.spec));
                return Ok(json + "\n");
            }
            project.pattern_text().map_err(refused)
        })
    }

    /// A sentence about a file that could not be read.
    pub fn unread(&self, why: &str) -> String {
        in_language(self.language, || words::script_unread(&self.file, why))
    }

    fn asked(&self, project: Project) -> Result<Project, String> {
        let project = Project { terms: self.terms.unwrap_or(project.terms), ..project };
        let Some(size) = self.size else { return Ok(project) };
        let most = project.sizes.len() as u32 + 1;
        project.in_size(size).ok_or_else(|| words::script_no_size(&size.to_string(), most))
    }
}

fn terms(word: &str) -> Option<Terms> {
    match word {
        "us" | "US" => Some(Terms::Us),
        "uk" | "UK" => Some(Terms::Uk),
        _ => None,
    }
}
