//! What a hook of so many millimetres is called in the United States, and what the old British series called it.
//!
//! Source of the US labels: Craft Yarn Council's www.YarnStandards.com, its table of hooks. The labels of 3.125, 5.75, 7, 11.5, 15, 16, 19,
//! 25 and 30 mm, and all old UK numbers, are from memory, no source: makers differ there, so a pattern says millimetres first.

use hatwright_sizing::Length;

/// A hook's labels beside its millimetres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HookLabels {
    /// The label of the United States: `H-8`. Absent where that size has none.
    pub us: Option<&'static str>,
    /// The number of the old British series: `6`. Absent where that size has none.
    pub uk_old: Option<&'static str>,
}

/// The labels of a hook, by its millimetres; `None` for a size that is not made, or not by that name.
///
/// ```
/// use hatwright_pattern::hooks::labels;
/// use hatwright_sizing::Length;
/// let hook = labels(Length::from_cm(0.5)).unwrap();
/// assert_eq!((hook.us, hook.uk_old), (Some("H-8"), Some("6")));
/// assert_eq!(labels(Length::from_cm(0.51)), None);
/// ```
pub fn labels(hook: Length) -> Option<HookLabels> {
    let row = SIZES.iter().find(|(ticks, ..)| *ticks == hook.ticks())?;
    let label = |text: &'static str| Some(text).filter(|text| !text.is_empty());
    Some(HookLabels { us: label(row.1), uk_old: label(row.2) })
}

/// Hundredths of a millimetre, US label, old UK number; 3.125 mm is rounded as a typed number is.
const SIZES: [(i32, &str, &str); 29] = [
    (200, "", "14"),
    (225, "B-1", "13"),
    (250, "", "12"),
    (275, "C-2", ""),
    (300, "", "11"),
    (313, "D", ""),
    (325, "D-3", "10"),
    (350, "E-4", "9"),
    (375, "F-5", ""),
    (400, "G-6", "8"),
    (425, "G", ""),
    (450, "7", "7"),
    (500, "H-8", "6"),
    (525, "I", ""),
    (550, "I-9", "5"),
    (575, "J", ""),
    (600, "J-10", "4"),
    (650, "K-10 1/2", "3"),
    (700, "", "2"),
    (800, "L-11", "0"),
    (900, "M/N-13", "00"),
    (1000, "N/P-15", "000"),
    (1150, "P-16", ""),
    (1200, "", ""),
    (1500, "P/Q", ""),
    (1600, "Q", ""),
    (1900, "S", ""),
    (2500, "T/U/X", ""),
    (3000, "T/X", ""),
];
