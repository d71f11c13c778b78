//! Answering a request with a file of one folder, or with a plain refusal.
use std::fmt::Write as _;
use std::fs;
use std::io::{self, Write};
use std::net::TcpStream;
use std::path::{Component, Path, PathBuf};
use std::time::Duration;

use super::mime::{cache_control, media_type};
use super::request::read_request;

/// Browsers open connections ahead of need; one that stays silent this long is closed.
const PATIENCE: Duration = Duration::from_secs(30);

/// A folder below a path of the server.
#[derive(Debug)]
pub struct Site {
    folder: PathBuf,
    prefix: String,
}

impl Site {
    /// `prefix` has no slash at its end.
    pub fn new(folder: &Path, prefix: &str) -> Self {
        Self { folder: folder.to_owned(), prefix: prefix.to_owned() }
    }

    /// Sends the file, a redirect to the folder's own address, or 404, and closes the connection.
    pub fn answer(&self, mut client: TcpStream) -> io::Result<()> {
        client.set_read_timeout(Some(PATIENCE))?;
        let Some(request) = read_request(&mut client)? else {
            return send(&mut client, "405 Method Not Allowed", &[("Allow", "GET, HEAD")], b"", false);
        };
        let path = request.path;
        if path == self.prefix {
            return send(&mut client, "308 Permanent Redirect", &[("Location", &format!("{path}/"))], b"", false);
        }
        match self.open(&path) {
            Some((name, bytes)) => {
                let headers = [("Content-Type", media_type(&name)), ("Cache-Control", cache_control(&name))];
                send(&mut client, "200 OK", &headers, &bytes, request.with_body)
            }
            None => send(&mut client, "404 Not Found", &[], b"", false),
        }
    }

    /// The file that a path names. Names that a build can make need no percent sign, so such a path names nothing.
    fn open(&self, path: &str) -> Option<(String, Vec<u8>)> {
        let name = path.strip_prefix(&self.prefix)?.strip_prefix('/')?;
        let name = if name.is_empty() { "index.html" } else { name };
        let stays_inside = Path::new(name).components().all(|part| matches!(part, Component::Normal(_)));
        let bytes = stays_inside.then(|| fs::read(self.folder.join(name)).ok())??;
        Some((name.to_owned(), bytes))
    }
}

fn send(client: &mut TcpStream, status: &str, headers: &[(&str, &str)], body: &[u8], with_body: bool) -> io::Result<()> {
    let mut head = format!("HTTP/1.1 {status}\r\nContent-Length: {}\r\n", body.len());
    for (name, value) in headers.iter().chain(&[("X-Content-Type-Options", "nosniff"), ("Connection", "close")]) {
        // Writing into a string does not fail.
        let _ = write!(head, "{name}: {value}\r\n");
    }
    client.write_all(format!("{head}\r\n").as_bytes())?;
    client.write_all(if with_body { body } else { b"" })?;
    client.flush()
}
