//! What a picture is made of.

use hatwright_sizing::Colour;

/// A picture: shapes in the order in which they are painted, in a box that begins at 0, 0.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// Width of the box in user units.
    pub width: i32,
    /// Height of the box in user units.
    pub height: i32,
    /// A short name, for people who hear the picture.
    pub title: String,
    /// What it shows, in a sentence.
    pub description: String,
    /// The shapes, from the back to the front.
    pub shapes: Vec<Shape>,
}

/// One element of a picture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shape {
    /// Its outline or its letters.
    pub kind: ShapeKind,
    /// Its paint.
    pub paint: Paint,
}

impl Shape {
    /// A path.
    pub(super) fn path(data: String, paint: Paint) -> Self {
        Self { kind: ShapeKind::Path(data), paint }
    }

    /// A text in a class.
    pub(super) fn text(x: i32, y: i32, anchor: Anchor, text: String, class: &'static str) -> Self {
        Self { kind: ShapeKind::Text { x, y, anchor, text }, paint: Paint::Class(class) }
    }

    /// The beginning of a group of shapes, with a title.
    pub(super) const fn open(title: String, class: &'static str) -> Self {
        Self { kind: ShapeKind::Open(title), paint: Paint::Class(class) }
    }

    /// The end of the group that was opened last.
    pub(super) const fn close() -> Self {
        Self { kind: ShapeKind::Close, paint: Paint::Class("") }
    }
}

/// The form of a shape.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ShapeKind {
    /// SVG path data, in user units with at most one decimal.
    Path(String),
    /// Letters on a baseline.
    Text {
        /// The anchor's place across, in user units.
        x: i32,
        /// The baseline, in user units from the top.
        y: i32,
        /// Which end of the text stands at `x`.
        anchor: Anchor,
        /// The letters, not escaped.
        text: String,
    },
    /// What follows, up to its [`Close`](ShapeKind::Close), is a group with this title: a round of a chart.
    Open(String),
    /// The end of a group; it has no paint of its own.
    Close,
}

/// Which part of a text stands at its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Its beginning.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

impl Anchor {
    /// The value of SVG's `text-anchor`.
    ///
    /// ```
    /// use hatwright_pattern::picture::Anchor;
    /// assert_eq!(Anchor::Middle.name(), "middle");
    /// ```
    pub const fn name(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// What a shape is painted with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paint {
    /// Filled with a yarn of the hat.
    Yarn(Colour),
    /// As the style sheet says; every class stands in [`super::CLASSES`].
    Class(&'static str),
    /// Filled with the gradient of this id. An attribute rather than a class, because a `url(#…)` in a style sheet of its own is
    /// looked up in that sheet by some browsers; the gradients stand in [`super::GRADIENTS`].
    Gradient(&'static str),
    /// Filled with the hatching that stands for a yarn where colours cannot be seen; it stands in [`super::HATCHES`].
    Hatch(Colour),
}
