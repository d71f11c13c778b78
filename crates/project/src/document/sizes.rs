//! The other sizes that a pattern is written in.

use crate::Project;
use crate::text::SIZE;
use hatwright_sizing::{HatSpec, Head, YarnUse, head_size};
use serde::{Deserialize, Serialize};

/// A size of a pattern beside the hat's own.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct SizeOf {
    /// What it is called, by the rule [`SIZE`]; empty where its head says enough.
    pub name: String,
    /// Whom it is for: the ranges are those of the hat's own head.
    pub head: Head,
}

impl Project {
    /// The most sizes beside the hat's own.
    pub const MOST_SIZES: usize = 12;

    /// The sizes that the pattern is written in, in their order, each by its name with what is planned for it: the same hat for that
    /// head. The counts that were chosen, the rounds that were begun and the weight of the finished hat are the own hat's alone; so is
    /// what was measured over the top, but for a head of the same girth. Measures of the shape that are usual for the own head become
    /// the usual ones of the other.
    ///
    /// ```
    /// use hatwright_project::{ProjectId, SizeOf, example};
    /// use hatwright_sizing::{Head, Length, plan};
    /// let mut cap = example(ProjectId::from_bits(1));
    /// assert!(cap.sized().is_empty());
    /// let head = Head::Measured(Length::from_cm(57.0));
    /// cap.sizes = vec![SizeOf { name: "Crew".to_owned(), head }];
    /// let (name, spec) = &cap.sized()[0];
    /// assert_eq!((name.as_str(), spec.head), ("Crew", head));
    /// assert!(plan(spec).unwrap().size.stitches > plan(&cap.spec).unwrap().size.stitches);
    /// ```
    pub fn sized(&self) -> Vec<(String, HatSpec)> {
        let of = |size: &SizeOf| (size.name.clone(), self.spec_for(&size.head));
        self.sizes.iter().map(of).collect()
    }

    fn spec_for(&self, head: &Head) -> HatSpec {
        let (own, girth) = (head_size(&self.spec.head).girth, head_size(head).girth);
        HatSpec {
            head: *head,
            over_top: self.spec.over_top.filter(|_| own == girth),
            shape: self.spec.shape.followed(own, girth),
            yarn_use: YarnUse { hat: None, ..self.spec.yarn_use },
            chosen: None,
            kept: None,
            ..self.spec.clone()
        }
    }
}

/// The same sizes with every name held to its rule, and no more of them than there may be.
pub(crate) fn tidy(mut sizes: Vec<SizeOf>) -> Vec<SizeOf> {
    sizes.truncate(Project::MOST_SIZES);
    for size in &mut sizes {
        size.name = SIZE.tidy(&size.name);
    }
    sizes
}

/// Whether every name holds to its rule, and there are no more of them than there may be.
pub(crate) fn hold(sizes: &[SizeOf]) -> bool {
    sizes.len() <= Project::MOST_SIZES && sizes.iter().all(|size| SIZE.holds(&size.name))
}
