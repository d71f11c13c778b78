//! What looks like chance in a picture, and is the same every time it is drawn.

/// Numbers from 0 to 1 that look like chance and are not.
pub(super) struct Chance(pub u32);

impl Chance {
    pub fn next(&mut self) -> f64 {
        // Marsaglia, Xorshift RNGs, Journal of Statistical Software 8 (14), 2003: the triple 13, 17, 5.
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 17;
        self.0 ^= self.0 << 5;
        f64::from(self.0 >> 8) / f64::from(1 << 24)
    }
}
