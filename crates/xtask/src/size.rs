//! The table of bytes, held against the budgets.
use std::fmt::Write as _;
use std::fs;
use std::io::{self, Write};

use flate2::Compression;
use flate2::write::GzEncoder;

use crate::budget::{BUDGETS, Budget, TOTAL};
use crate::build::BuildRecord;
use crate::outcome::{At, Failure, Outcome};
use crate::page::files;
use crate::repo::Repo;

/// Bytes of one file or of several together.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
struct Bytes {
    raw: usize,
    gzip: usize,
    brotli: usize,
}

impl std::ops::Add for Bytes {
    type Output = Self;

    fn add(self, more: Self) -> Self {
        Self { raw: self.raw + more.raw, gzip: self.gzip + more.gzip, brotli: self.brotli + more.brotli }
    }
}

/// Prints the table for `dist` and fails over budget, or where the figures would not be those of a real build.
pub fn size(repo: &Repo) -> Outcome {
    let dist = repo.dist();
    let mut sizes = Vec::new();
    for name in files(&dist)? {
        let path = dist.join(&name);
        let bytes = fs::read(&path).at("reading", &path)?;
        let compressed = measure(&bytes).at("compressing", &path)?;
        sizes.push((name, compressed));
    }
    let (table, faults) = judge(&sizes);
    println!("{table}");
    match BuildRecord::of(repo)?.wasm_opt {
        None => Err(Failure::new(
            "this page was built without wasm-opt, so its size says nothing: `cargo xtask setup` says how to get it",
        )),
        Some(_) if !faults.is_empty() => Err(Failure::new(format!("over budget:\n  {}", faults.join("\n  ")))),
        Some(_) => Ok(()),
    }
}

fn measure(bytes: &[u8]) -> io::Result<Bytes> {
    let mut gzip = GzEncoder::new(Vec::new(), Compression::best());
    gzip.write_all(bytes)?;
    let mut brotli = Vec::new();
    // Quality 11 and a window of 4 MB, as hosts do it that compress ahead of time.
    brotli::CompressorWriter::new(&mut brotli, 4096, 11, 22).write_all(bytes)?;
    Ok(Bytes { raw: bytes.len(), gzip: gzip.finish()?.len(), brotli: brotli.len() })
}

/// The table and what is over budget in it.
fn judge(sizes: &[(String, Bytes)]) -> (String, Vec<String>) {
    let mut table = String::new();
    let mut faults = Vec::new();
    let mut row = |name: &str, bytes: Bytes, note: &str| {
        // Writing into a string does not fail.
        let _ = writeln!(table, "{name:<44}{:>9}{:>9}{:>9}  {note}", bytes.raw, bytes.gzip, bytes.brotli);
    };
    for (name, bytes) in sizes {
        let kind = Budget::of(name);
        if kind.is_none() {
            faults.push(format!("{name} belongs to no budget"));
        }
        row(name, *bytes, kind.map_or("no budget", |budget| budget.name));
    }
    for budget in BUDGETS.iter().chain([&TOTAL]) {
        let is_its_own = |file: &str| Budget::of(file).is_some_and(|known| known.name == budget.name);
        let members = sizes.iter().filter(|(name, _)| budget.name == TOTAL.name || is_its_own(name));
        let sum = members.fold(Bytes::default(), |sum, (_, bytes)| sum + *bytes);
        let over = overrun(budget, sum);
        let state = if over.is_empty() { "fits" } else { "OVER" };
        row(&format!("= {}", budget.name), sum, &format!("{state} gzip {}, brotli {}", budget.gzip, budget.brotli));
        faults.extend(over);
    }
    let title = format!("{:<44}{:>9}{:>9}{:>9}\n", "bytes", "raw", "gzip", "brotli");
    (title + table.trim_end(), faults)
}

fn overrun(budget: &Budget, sum: Bytes) -> Vec<String> {
    let kinds = [("gzip", sum.gzip, budget.gzip), ("brotli", sum.brotli, budget.brotli)];
    let over = kinds.iter().filter(|(_, bytes, most)| bytes > most);
    over.map(|(kind, bytes, most)| format!("{}: {bytes} bytes in {kind}, {most} allowed", budget.name)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sized(name: &str, gzip: usize, brotli: usize) -> (String, Bytes) {
        (name.to_owned(), Bytes { raw: 4 * brotli, gzip, brotli })
    }

    #[test]
    fn compressed_bytes_are_fewer_for_text_and_the_raw_count_is_exact() {
        let text = "sc around, ".repeat(1000);
        let bytes = measure(text.as_bytes()).unwrap();
        assert_eq!(bytes.raw, 11_000);
        assert!(bytes.brotli < bytes.gzip && bytes.gzip < 200, "{bytes:?}");
    }

    #[test]
    fn files_of_a_kind_count_together() {
        let half = BUDGETS[1].brotli / 2;
        assert_eq!(judge(&[sized("a.wasm", 0, half), sized("index.html", 0, 9)]).1, Vec::<String>::new());
        let faults = judge(&[sized("a.wasm", 0, half), sized("b.wasm", 0, half + 1)]).1;
        assert_eq!(faults, [format!("wasm: {} bytes in brotli, {} allowed", 2 * half + 1, BUDGETS[1].brotli)]);
    }

    #[test]
    fn the_page_itself_is_held_to_both_compressions() {
        assert_eq!(judge(&[sized("index.html", 13_313, 13_312)]).1, ["first screen: 13313 bytes in gzip, 13312 allowed"]);
    }

    #[test]
    fn a_file_that_nobody_planned_for_is_a_fault() {
        assert_eq!(judge(&[sized("movie.mp4", 1, 1)]).1, ["movie.mp4 belongs to no budget"]);
    }
}
