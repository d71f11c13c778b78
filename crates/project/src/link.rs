//! A hat in the fragment of a web address: everything that determines its numbers and its pattern, and nothing about its owner.
//!
//! A version digit, then in base64url (RFC 4648 §5, no padding) the hat in postcard, then the CRC-32 of the digit and the hat,
//! low byte first. Digit, base64url and checksum are the same in all versions to come, so that a link from a newer version is
//! told from a damaged one. What a version holds is fixed by the links in `samples`. When a struct below `v4`'s changes, its old
//! shape moves in there, private, as version 4's, with a function to the new one; version 5 gets digit 5 and an arm in
//! [`from_link`].

mod v1;
mod v2;
mod v3;
mod v4;

use crate::checksum::checksum;
use crate::document::{check, texts_hold};
use crate::{ColourName, Designer, Hand, Project, ProjectId, Rgb, SayBreach, SizeOf, Terms, Units};
use core::fmt;
use data_encoding::BASE64URL_NOPAD;
use hatwright_sizing::{Breach, HatSpec};
use hatwright_words::document as words;
use serde::de::DeserializeOwned;

const VERSION: u8 = b'4';
/// The longest fragment that is looked at. The longest hat makes a link of under 6000 characters, and of under 31,000 with the longest
/// words of its designer.
pub const LONGEST_LINK: usize = 1 << 15;

/// A hat that came by link: a [`Project`] but for what stays with its owner.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Linked {
    /// The planner's version where the link was made: another one may count otherwise.
    pub planner: u32,
    /// The hat's name.
    pub name: String,
    /// Its units on screen.
    pub units: Units,
    /// The words of its pattern.
    pub terms: Terms,
    /// Which hand holds its hook.
    pub hand: Hand,
    /// Its colours.
    pub colours: Vec<ColourName>,
    /// What its designer says.
    pub designer: Designer,
    /// The other sizes of its pattern.
    pub sizes: Vec<SizeOf>,
    /// The hat itself, with the counts that were taken by hand.
    pub spec: HatSpec,
}

impl Linked {
    /// The hat as a project of this device, not saved yet.
    pub fn into_project(self, id: ProjectId, changed_ms: u64) -> Project {
        let Self { planner: _, name, units, terms, hand, colours, designer, sizes, spec } = self;
        Project { id, revision: 0, name, units, terms, hand, colours, notes: String::new(), designer, sizes, spec, changed_ms }
    }

    /// A hat without anything to tell of its pattern.
    fn plain(planner: u32, name: String, words: (Units, Terms), colours: Vec<ColourName>, spec: HatSpec) -> Self {
        let (units, terms) = words;
        let (hand, designer, sizes) = (Hand::Right, Designer::default(), Vec::new());
        Self { planner, name, units, terms, hand, colours, designer, sizes, spec }
    }
}

/// The link of a hat, without the `#`. Notes, identity, revision and time are left out, and so are the rounds of a hat in progress;
/// days of birth and wearing become the girth that they give. The yarn's names, lots and balls go with the hat: it is the way to the
/// phone in the shop. So do the designer's words, as far as there are any: it is the way to those who make the hat too.
///
/// ```
/// use hatwright_project::{ProjectId, example, from_link, to_link};
/// let hat = example(ProjectId::from_bits(1));
/// let link = to_link(&hat);
/// assert!(link.len() <= 200);
/// assert_eq!(from_link(&link).unwrap().spec, hat.spec);
/// ```
pub fn to_link(project: &Project) -> String {
    let mut bytes = postcard::to_allocvec(&v4::Link::of(project)).unwrap_or_default();
    bytes.extend(checksum(&[&[VERSION], &bytes]).to_le_bytes());
    let mut text = String::from(char::from(VERSION));
    BASE64URL_NOPAD.encode_append(&bytes, &mut text);
    text
}

/// Reads a link's fragment. Space around it, a leading `#` and the punctuation or bracket that a sentence ends with are passed
/// over: no link has such characters, and the checksum finds what is missing.
///
/// # Errors
/// [`BadLink`]; any text gives one or a hat that passes its check.
pub fn from_link(fragment: &str) -> Result<Linked, BadLink> {
    let body = fragment.trim();
    let body = body.strip_prefix('#').unwrap_or(body);
    let body = body.trim_end_matches(|c: char| c.is_whitespace() || ".,;:!?)]}>\"'”’»…".contains(c));
    let Some((&version, code)) = body.as_bytes().split_first() else { return Err(BadLink::Empty) };
    if body.len() > LONGEST_LINK || !version.is_ascii_digit() {
        return Err(BadLink::NotOurs);
    }
    let bytes = BASE64URL_NOPAD.decode(code).map_err(|_| BadLink::Damaged)?;
    let (hat, sum) = bytes.split_last_chunk::<4>().ok_or(BadLink::Damaged)?;
    if checksum(&[&[version], hat]) != u32::from_le_bytes(*sum) {
        return Err(BadLink::Damaged);
    }
    match version {
        b'1' => checked(parse::<v1::Link>(hat)?.migrate()),
        b'2' => checked(parse::<v2::Link>(hat)?.migrate().ok_or(BadLink::Damaged)?),
        b'3' => checked(parse::<v3::Link>(hat)?.migrate().ok_or(BadLink::Damaged)?),
        VERSION => checked(parse::<v4::Link>(hat)?.migrate().ok_or(BadLink::Damaged)?),
        _ => Err(BadLink::Newer),
    }
}

/// A version's own structs, and nothing after them.
fn parse<T: DeserializeOwned>(hat: &[u8]) -> Result<T, BadLink> {
    match postcard::take_from_bytes(hat) {
        Ok((link, [])) => Ok(link),
        _ => Err(BadLink::Damaged),
    }
}

fn checked(linked: Linked) -> Result<Linked, BadLink> {
    let Linked { name, colours, sizes, designer, spec, .. } = &linked;
    if !texts_hold(name, colours, sizes, designer) {
        return Err(BadLink::Damaged);
    }
    check(spec, colours.len(), sizes).map_err(BadLink::OutOfRange)?;
    Ok(linked)
}

fn named(colours: Vec<(String, [u8; 3])>) -> Vec<ColourName> {
    colours.into_iter().map(|(name, [r, g, b])| ColourName::new(name, Rgb::new(r, g, b))).collect()
}

/// Why a fragment is not a hat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BadLink {
    /// Nothing there.
    Empty,
    /// Something else, such as the name of a place in the page.
    NotOurs,
    /// A hat's link with letters missing or changed.
    Damaged,
    /// A whole link in a form that only a newer version knows.
    Newer,
    /// A whole link to a hat that breaks a rule.
    OutOfRange(Breach),
}

impl fmt::Display for BadLink {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str(words::link_empty()),
            Self::NotOurs => f.write_str(words::link_not_ours()),
            Self::Damaged => f.write_str(words::link_damaged()),
            Self::Newer => f.write_str(words::link_newer()),
            Self::OutOfRange(breach) => f.write_str(&words::link_no_such(&SayBreach(*breach).to_string())),
        }
    }
}

impl core::error::Error for BadLink {}
