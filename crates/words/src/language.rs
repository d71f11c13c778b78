//! Which language is spoken.

use core::cell::Cell;

/// A language that the program speaks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Language {
    /// English, with the trade's US or UK terms.
    #[default]
    English,
    /// Spanish, with the terms of Spain's trade.
    Spanish,
}

impl Language {
    /// Every language, in the order in which they are offered.
    pub const ALL: [Self; 2] = [Self::English, Self::Spanish];

    /// Its tag (BCP 47), for the page's `lang`: `es`.
    pub const fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::Spanish => "es",
        }
    }

    /// Its name in itself, as those who speak it look for it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::Spanish => "Español",
        }
    }

    /// The language of a tag, whatever its region.
    ///
    /// ```
    /// use hatwright_words::Language;
    /// assert_eq!(Language::of_tag("es-MX"), Some(Language::Spanish));
    /// assert_eq!(Language::of_tag("EN"), Some(Language::English));
    /// assert_eq!(Language::of_tag("est"), None);
    /// ```
    pub fn of_tag(tag: &str) -> Option<Self> {
        let own = tag.split(['-', '_']).next().unwrap_or_default();
        Self::ALL.into_iter().find(|language| language.tag().eq_ignore_ascii_case(own))
    }

    /// The first of a person's languages that is spoken here, or English.
    ///
    /// ```
    /// use hatwright_words::Language;
    /// assert_eq!(Language::of_tags(["ca", "es-ES", "en"]), Language::Spanish);
    /// assert_eq!(Language::of_tags(["nb"]), Language::English);
    /// ```
    pub fn of_tags<'a>(tags: impl IntoIterator<Item = &'a str>) -> Self {
        tags.into_iter().find_map(Self::of_tag).unwrap_or_default()
    }
}

thread_local! {
    static SPOKEN: Cell<Language> = const { Cell::new(Language::English) };
}

/// The language that this thread speaks.
pub fn spoken() -> Language {
    SPOKEN.get()
}

/// Makes this thread speak a language from now on.
pub fn speak(language: Language) {
    SPOKEN.set(language);
}

/// Says something in a language, and speaks the one from before again, even where saying it panics.
///
/// ```
/// use hatwright_words::{Language, in_language, spoken};
/// assert_eq!(in_language(Language::Spanish, spoken), Language::Spanish);
/// assert_eq!(spoken(), Language::English);
/// ```
pub fn in_language<T>(language: Language, say: impl FnOnce() -> T) -> T {
    struct Back(Language);
    impl Drop for Back {
        fn drop(&mut self) {
            speak(self.0);
        }
    }
    let _back = Back(spoken());
    speak(language);
    say()
}
