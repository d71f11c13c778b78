//! One number for many plans, to compare what different processors make of the same specs.

use std::fmt::{self, Write};

use hatwright_sizing::plan;

use crate::random::random_spec;

/// Sixteen hexadecimal digits over everything in the plans of the first `count` random hats that can be made, and in the
/// refusals of those between them that cannot.
///
/// A plan goes in as its debug text, which holds every field and writes a fraction so that it reads back to the same
/// bits. The hash is FNV-1a of 64 bits (Fowler, Noll and Vo).
///
/// ```
/// use hatwright_tests::digest::digest;
/// assert_eq!(digest(0), "cbf29ce484222325"); // nothing hashed: the offset basis
/// assert_ne!(digest(1), digest(2));
/// ```
pub fn digest(count: u32) -> String {
    let mut hash = Fnv::default();
    let mut made = 0;
    for seed in 0.. {
        if made == count {
            break;
        }
        let outcome = plan(&random_spec(seed));
        made += u32::from(outcome.is_ok());
        // The hash takes any text.
        let _ = writeln!(hash, "{outcome:?}");
    }
    format!("{:016x}", hash.0)
}

struct Fnv(u64);

impl Default for Fnv {
    fn default() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }
}

impl Write for Fnv {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        for byte in text.bytes() {
            self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3);
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use hatwright_sizing::PLANNER;

    /// A shared link carries the planner's version, so that a hat planned otherwise than when it was shared can say so.
    #[test]
    fn plans_are_those_of_this_planner() {
        let pinned = (3, "f6724115c598804e");
        assert_eq!((PLANNER, &*digest(200)), pinned, "plans changed: raise PLANNER and store the new digest here");
    }

    /// The published test vectors of FNV-1a with 64 bits.
    #[test]
    fn the_hash_is_the_published_one() {
        for (text, expected) in [("", 0xcbf2_9ce4_8422_2325), ("a", 0xaf63_dc4c_8601_ec8c), ("foobar", 0x8594_4171_f739_67e8)] {
            let mut hash = Fnv::default();
            hash.write_str(text).unwrap();
            assert_eq!(hash.0, expected, "{text:?}");
        }
    }
}
