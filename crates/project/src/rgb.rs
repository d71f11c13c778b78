//! A colour of yarn, as the screen shows it.

use core::fmt;
use hatwright_words::document as words;
use serde::{Deserialize, Serialize};

/// Red, green and blue, written `#rrggbb` as in CSS.
///
/// ```
/// use hatwright_project::Rgb;
/// let indigo = Rgb::parse("#34516F").unwrap();
/// assert_eq!(indigo, Rgb::new(0x34, 0x51, 0x6f));
/// assert_eq!(indigo.to_string(), "#34516f");
/// assert!(Rgb::parse("34516f").is_err());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Rgb([u8; 3]);

impl Rgb {
    /// A colour of so much red, green and blue, 0 to 255 each.
    pub const fn new(red: u8, green: u8, blue: u8) -> Self {
        Self([red, green, blue])
    }

    /// A colour from `#rrggbb`, in either case.
    ///
    /// # Errors
    /// [`BadRgb`] for anything else.
    pub fn parse(text: &str) -> Result<Self, BadRgb> {
        let digits = text.strip_prefix('#').filter(|d| d.len() == 6 && d.bytes().all(|b| b.is_ascii_hexdigit())).ok_or(BadRgb)?;
        let number = u32::from_str_radix(digits, 16).map_err(|_| BadRgb)?;
        let [_, red, green, blue] = number.to_be_bytes();
        Ok(Self::new(red, green, blue))
    }

    /// Red, green and blue, 0 to 255 each.
    pub const fn channels(self) -> [u8; 3] {
        self.0
    }
}

impl fmt::Display for Rgb {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [red, green, blue] = self.0;
        write!(f, "#{red:02x}{green:02x}{blue:02x}")
    }
}

impl TryFrom<String> for Rgb {
    type Error = BadRgb;

    fn try_from(text: String) -> Result<Self, BadRgb> {
        Self::parse(&text)
    }
}

impl From<Rgb> for String {
    fn from(rgb: Rgb) -> Self {
        rgb.to_string()
    }
}

/// Not a colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BadRgb;

impl fmt::Display for BadRgb {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(words::bad_rgb())
    }
}

impl core::error::Error for BadRgb {}
