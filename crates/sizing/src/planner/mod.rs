//! From a specification to a hat.

mod body;
mod brim;
mod fitted;
mod flaps;
mod ground;
mod hat;
mod miss;
mod panel;
mod refuse;
mod remarks;
mod rest;
mod rounds;
mod slouch;
mod stocking;
mod tam;

pub use hat::plan;
pub(crate) use hat::{Left, left};
pub(crate) use rest::Here;
pub(crate) use rounds::leads;

use crate::crown::{Schedule, Task};

/// The best schedule of a task. Where its ends are fixed and its wedges do not lead from one to the other, without them: a hat with a few
/// decreases out of their wedges is better than none.
fn solve(task: &Task) -> Option<Schedule> {
    task.schedule().or_else(|| spread(task)?.schedule())
}

/// Whether [`solve`] finds anything, without the trouble of finding the best.
fn is_possible(task: &Task) -> bool {
    task.possible() || spread(task).is_some_and(|task| task.possible())
}

/// A task between two fixed counts, with its wedges given up.
fn spread(task: &Task) -> Option<Task> {
    let fixed = matches!(task.close, crate::crown::Close::To { .. });
    (fixed && task.wedges.is_some()).then_some(Task { wedges: None, ..*task })
}
