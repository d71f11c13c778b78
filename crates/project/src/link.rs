//! A hat in the fragment of a web address: everything that determines its numbers and its pattern, and nothing about its owner.
//!
//! A version digit, then in base64url (RFC 4648 §5, no padding) the hat in postcard, then the CRC-32 of the digit and the hat,
//! low byte first. Digit, base64url and checksum are the same in all versions to come, so that a link from a newer version is
//! told from a damaged one. What a version holds is fixed by the links in `samples`. When a struct below `v3`'s changes, its old
//! shape moves in there, private, as version 3's, with a function to the new one; version 4 gets digit 4 and an arm in
//! [`from_link`].

mod v1;
mod v2;
mod v3;

use crate::checksum::checksum;
use crate::document::check;
use crate::text::{COLOUR, LOT, NAME, YARN};
use crate::{ColourName, Project, ProjectId, Rgb, SayBreach, Terms, Units};
use core::fmt;
use data_encoding::BASE64URL_NOPAD;
use hatwright_sizing::{Breach, HatSpec};
use serde::de::DeserializeOwned;

const VERSION: u8 = b'3';
/// The longest fragment that is looked at. The longest hat makes a link of under 6000 characters.
pub const LONGEST_LINK: usize = 8192;

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
    /// Its colours.
    pub colours: Vec<ColourName>,
    /// The hat itself, with the counts that were taken by hand.
    pub spec: HatSpec,
}

impl Linked {
    /// The hat as a project of this device, not saved yet.
    pub fn into_project(self, id: ProjectId, changed_ms: u64) -> Project {
        let Self { planner: _, name, units, terms, colours, spec } = self;
        Project { id, revision: 0, name, units, terms, colours, notes: String::new(), spec, changed_ms }
    }
}

/// The link of a hat, without the `#`. Notes, identity, revision and time are left out, and so are the rounds of a hat in progress;
/// days of birth and wearing become the girth that they give. The yarn's names, lots and balls go with the hat: it is the way to the
/// phone in the shop.
///
/// ```
/// use hatwright_project::{ProjectId, example, from_link, to_link};
/// let hat = example(ProjectId::from_bits(1));
/// let link = to_link(&hat);
/// assert!(link.len() <= 200);
/// assert_eq!(from_link(&link).unwrap().spec, hat.spec);
/// ```
pub fn to_link(project: &Project) -> String {
    let mut bytes = postcard::to_allocvec(&v3::Link::of(project)).unwrap_or_default();
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
        VERSION => checked(parse::<v3::Link>(hat)?.migrate().ok_or(BadLink::Damaged)?),
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
    let named = |c: &ColourName| COLOUR.holds(&c.name) && YARN.holds(&c.yarn) && LOT.holds(&c.lot);
    if !NAME.holds(&linked.name) || !linked.colours.iter().all(named) {
        return Err(BadLink::Damaged);
    }
    check(&linked.spec, linked.colours.len()).map_err(BadLink::OutOfRange)?;
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
            Self::Empty => f.write_str("This link holds no hat."),
            Self::NotOurs => f.write_str("This is not a link to a hat. Ask for it again, and copy all of it."),
            Self::Damaged => {
                f.write_str("This link is damaged: a letter is missing or changed. Ask for it again, and copy all of it.")
            }
            Self::Newer => {
                f.write_str("A newer Hatwright made this link. Reload the page for the newest version, then open it again.")
            }
            Self::OutOfRange(breach) => write!(f, "This link is whole, but there is no such hat: {}.", SayBreach(*breach)),
        }
    }
}

impl core::error::Error for BadLink {}
