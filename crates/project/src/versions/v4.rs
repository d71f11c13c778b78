//! Form 4: the current one, so its structs are the crate's own.
//!
//! The form is fixed by `samples/v4`, which are never written anew: a change that makes one of them unreadable, or written back
//! with another meaning, is a change of form, and then:
//!
//! 1. Copy [`Project`] and what changes below it (of the sizing crate's spec too) as they were into this module, private, with their
//!    `serde` attributes; `Document` names the copy. Form 3 shows how.
//! 2. Write `migrate` here as a pure function from the copy to the structs of form 5, total: a hat that opened before still opens.
//! 3. Add `v5` with its own `Document` and `migrate`, raise `SCHEMA`, and give `read` its arms.
//! 4. Add `samples/v5`; the checks of the older samples stay.
//! 5. Links have a version of their own: see [`crate::link`].

use crate::Project;

/// The form's document.
pub(super) type Document = Project;

/// To the current form.
pub(super) fn migrate(document: Document) -> Project {
    document
}
