//! Random patterns about a hat: units and terms, hand, sizes, a designer's words.

use super::{head, text};
use crate::{Designer, Hand, Project, SizeOf, Terms, Units};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;

pub(super) fn units() -> BoxedStrategy<Units> {
    prop_oneof![Just(Units::Centimetres), Just(Units::Inches), Just(Units::Both)].boxed()
}

pub(super) fn terms() -> BoxedStrategy<Terms> {
    prop_oneof![Just(Terms::Us), Just(Terms::Uk)].boxed()
}

pub(super) fn hand() -> BoxedStrategy<Hand> {
    prop_oneof![Just(Hand::Right), Just(Hand::Left)].boxed()
}

/// Most hats have none.
pub(super) fn designer() -> BoxedStrategy<Designer> {
    // Long texts are tried by the tests of links and documents: here they would take most of the time.
    let texts = (text(80), text(80), text(24), text(24), text(80), text(80));
    let designer = texts.prop_map(|(introduction, credit, edition, date, tested, care)| Designer {
        introduction,
        credit,
        edition,
        date,
        tested,
        care,
    });
    option::weighted(0.2, designer).prop_map(Option::unwrap_or_default).boxed()
}

/// Most hats have none.
pub(super) fn sizes() -> BoxedStrategy<Vec<SizeOf>> {
    let size = (text(24), head()).prop_map(|(name, head)| SizeOf { name, head });
    option::weighted(0.2, vec(size, 0..=Project::MOST_SIZES)).prop_map(Option::unwrap_or_default).boxed()
}
