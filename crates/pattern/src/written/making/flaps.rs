//! Ear flaps: where they are joined, and their ties.

use super::{Job, edge};
use hatwright_sizing::{BandKind, Length};
use hatwright_words::{count, making as say};

pub(super) fn flaps(job: &Job<'_>) -> Vec<String> {
    let Some(flaps) = &job.hat.flaps else { return Vec::new() };
    let on_rows = job.hat.band == BandKind::Sideways;
    let told = |n: u32| if on_rows { count::row_ends(n) } else { count::stitches(n) };
    let wide = told(flaps.rows.first().map_or(0, |row| row.before));
    let back = flaps.back.get();
    let (first, front, last) = (told(back / 2), told(flaps.front.get()), told(back - back / 2));
    let parted = if on_rows { say::flaps_from_join } else { say::flaps_from_start };
    let long = job.length(flaps.length);
    let mut text = if on_rows { say::flaps_rows(&long) } else { say::flaps_stitches(&long) };
    if !on_rows && !job.begun_at_crown() {
        text = [&*text, " ", edge::foot(job)].concat();
    }
    if let Some(with) = job.body_hook().filter(|_| job.band_hook() != job.body_hook()) {
        text = [&*text, " ", &say::flaps_with(&with)].concat();
    }
    let mut list = vec![parted(&first, &wide, &front, &last), text];
    list.push(if flaps.tie > Length::ZERO { say::tie(&job.length(flaps.tie)) } else { say::flaps_end().into() });
    list
}
