//! Whole-number helpers.

/// Greatest common divisor; `gcd(0, n)` is `n`.
///
/// ```
/// use hatwright_sizing::{gcd, lcm};
/// assert_eq!((gcd(56, 64), lcm(4, 6)), (8, 12));
/// ```
pub const fn gcd(mut a: u32, mut b: u32) -> u32 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}

/// Least common multiple of two positive numbers; 0 where either is 0.
pub const fn lcm(a: u32, b: u32) -> u32 {
    match gcd(a, b) {
        0 => 0,
        g => (a / g).saturating_mul(b),
    }
}
