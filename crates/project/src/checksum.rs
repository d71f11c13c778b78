//! Whether a document or a link is whole.

use crc::{CRC_32_ISO_HDLC, Crc};

/// CRC-32 as in Ethernet and zip (ISO-HDLC): any change within 32 neighbouring bits is found for certain, so any one changed
/// character is, and any other damage but for one case in four thousand million.
///
/// It says whether a text is as it was written; it is no protection from a person who changes it on purpose.
pub(crate) fn checksum(parts: &[&[u8]]) -> u32 {
    static CRC: Crc<u32> = Crc::<u32>::new(&CRC_32_ISO_HDLC);
    let mut digest = CRC.digest();
    for part in parts {
        digest.update(part);
    }
    digest.finalize()
}

#[cfg(test)]
mod tests {
    /// Source: the check value of CRC-32/ISO-HDLC in Greg Cook's catalogue of parametrised CRC algorithms.
    #[test]
    fn published_check_value() {
        assert_eq!(super::checksum(&[b"1234", b"56789"]), 0xcbf4_3926);
    }
}
