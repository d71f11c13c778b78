//! Hook labels against the copied table.
//!
//! Source: Craft Yarn Council's www.YarnStandards.com, table of hooks, in the rows that say "published table"; the other US labels and all
//! old UK numbers are from memory, and checked only for being those that were written down.

use hatwright_pattern::hooks::labels;
use hatwright_sizing::Length;
use hatwright_tests::table::Table;

#[test]
fn labels_are_those_of_the_table() {
    let table = Table::published("hook_sizes.csv");
    let (mut published, mut seen) = (0, 0);
    for row in table.rows() {
        let mm = row.number("mm");
        let told = labels(Length::from_cm(mm / 10.0)).unwrap_or_else(|| panic!("no {mm} mm"));
        assert_eq!(told.us.unwrap_or_default(), row.text("us_label"), "{mm} mm");
        assert_eq!(told.uk_old.unwrap_or_default(), row.text("uk_old_number_from_memory"), "{mm} mm");
        published += u32::from(row.text("us_label_status") == "published table");
        seen += 1;
    }
    assert_eq!((published, seen), (16, 29));
    // What is between two sizes has no name of its own.
    for hundredths in [0, 199, 201, 501, 3_001] {
        assert_eq!(labels(Length::from_ticks(hundredths)), None);
    }
}
