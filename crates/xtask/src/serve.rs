//! Serving `dist` for a person.
use std::path::Path;

use crate::outcome::{At, Failure, Outcome};
use crate::repo::Repo;
use crate::server::Server;

/// The port that is tried first.
pub const PORT: u16 = 8717;

/// Serves `dist` until it is stopped from the keyboard.
pub fn serve(repo: &Repo, port: u16) -> Outcome {
    let dist = repo.dist();
    if !dist.join("index.html").is_file() {
        return Err(Failure::new("there is no page in dist/ yet: leave out --no-build"));
    }
    let server = Server::start_near(&dist, "", port).at("serving", Path::new(&format!("on port {port}")))?;
    println!("Hatwright is at {} (Ctrl-C stops it).", server.url());
    server.wait();
    Ok(())
}
