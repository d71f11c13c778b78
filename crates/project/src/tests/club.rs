//! The hats to begin with.

use super::id;
use crate::{ProjectId, SAMPLES, example, open, samples, to_json};
use hatwright_sizing::{Begun, Remark, Style, Way, plan};

fn all() -> Vec<crate::Project> {
    let ids: [ProjectId; SAMPLES] = core::array::from_fn(|i| ProjectId::from_bits(i as u64));
    [vec![example(id("rowingclub01"))], samples(ids).to_vec()].concat()
}

#[test]
fn they_can_be_kept() {
    for hat in all() {
        assert_eq!(hat.check(), Ok(()));
        assert_eq!(hat.clone().tidy(), hat);
        assert_eq!(open(&to_json(&hat)).unwrap(), hat);
    }
}

/// And made, without anything that a maker would have to be warned of at a first glance.
#[test]
fn they_can_be_made() {
    for hat in all() {
        let planned = plan(&hat.spec).unwrap_or_else(|refusal| panic!("{}: {refusal:?}", hat.name));
        assert!(planned.size.reaches, "{}", hat.name);
        let warned = planned.remarks.iter().any(|r| {
            matches!(r, Remark::LooserThanHead | Remark::UnusualStitch(_) | Remark::UnusualGauge | Remark::FoldAboveCrown(_))
        });
        assert!(!warned, "{}: {:?}", hat.name, planned.remarks);
    }
}

#[test]
fn they_show_every_style_and_both_directions() {
    let hats = all();
    for style in Style::ALL {
        assert!(hats.iter().any(|hat| hat.spec.style == style), "{style:?}");
    }
    assert!(hats.iter().any(|hat| hat.spec.begins() == Begun::Crown) && hats.iter().any(|hat| hat.spec.goes() == Way::Joined));
    let mut names: Vec<&str> = hats.iter().map(|hat| hat.name.as_str()).collect();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), hats.len());
}
