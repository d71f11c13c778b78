//! A small server of static files for trying the page and for the browser tests.
//!
//! Each connection carries one request, so that a server that was stopped is gone for its clients at once: the tests
//! of the page without a network rely on that.
mod files;
mod mime;
mod request;

use std::io::{self, ErrorKind};
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread::{self, JoinHandle};

use files::Site;

/// Serves one folder on 127.0.0.1 until it is dropped.
///
/// ```
/// # fn main() -> std::io::Result<()> {
/// use std::io::{Read, Write};
/// let folder = std::env::temp_dir().join(format!("xtask-doc-{}", std::process::id()));
/// std::fs::create_dir_all(&folder)?;
/// std::fs::write(folder.join("index.html"), "<title>hat</title>")?;
///
/// let server = xtask::Server::start(&folder, "/caps", 0)?;
/// let mut stream = std::net::TcpStream::connect(server.address())?;
/// stream.write_all(b"GET /caps/ HTTP/1.1\r\nHost: x\r\n\r\n")?;
/// let mut answer = String::new();
/// stream.read_to_string(&mut answer)?;
/// assert!(answer.ends_with("<title>hat</title>"));
/// # std::fs::remove_dir_all(&folder)
/// # }
/// ```
#[derive(Debug)]
pub struct Server {
    address: SocketAddr,
    prefix: String,
    stopping: Arc<AtomicBool>,
    acceptor: Option<JoinHandle<()>>,
}

impl Server {
    /// Serves `folder` below the path `prefix` (empty for the top, else as in `/caps`) on `port`; port 0 takes any that
    /// is free.
    ///
    /// # Errors
    /// The port is taken ([`ErrorKind::AddrInUse`]) or may not be used.
    pub fn start(folder: &Path, prefix: &str, port: u16) -> io::Result<Self> {
        let listener = TcpListener::bind(("127.0.0.1", port))?;
        let address = listener.local_addr()?;
        let prefix = prefix.trim_end_matches('/').to_owned();
        let site = Arc::new(Site::new(folder, &prefix));
        let stopping = Arc::new(AtomicBool::new(false));
        let stop = Arc::clone(&stopping);
        let acceptor = thread::spawn(move || {
            for client in listener.incoming() {
                if stop.load(Ordering::SeqCst) {
                    return;
                }
                let site = Arc::clone(&site);
                // A client that goes away while it is answered is its own affair.
                thread::spawn(move || client.and_then(|stream| site.answer(stream)));
            }
        });
        Ok(Self { address, prefix, stopping, acceptor: Some(acceptor) })
    }

    /// Serves on `port` or the next one that is free, trying twenty.
    ///
    /// # Errors
    /// All twenty are taken, or a port may not be used.
    pub fn start_near(folder: &Path, prefix: &str, port: u16) -> io::Result<Self> {
        let mut taken = io::Error::from(ErrorKind::AddrInUse);
        for port in port..=port.saturating_add(19) {
            match Self::start(folder, prefix, port) {
                Err(error) if error.kind() == ErrorKind::AddrInUse => taken = error,
                other => return other,
            }
        }
        Err(taken)
    }

    /// Where it listens.
    pub fn address(&self) -> SocketAddr {
        self.address
    }

    /// The page's address, with a slash at its end.
    pub fn url(&self) -> String {
        format!("http://{}{}/", self.address, self.prefix)
    }

    /// Serves until the process ends.
    pub fn wait(mut self) {
        if let Some(acceptor) = self.acceptor.take() {
            // It ends only by a panic, which has been printed.
            let _ = acceptor.join();
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.stopping.store(true, Ordering::SeqCst);
        if let Some(acceptor) = self.acceptor.take() {
            // Wakes the acceptor, which closes the port as it leaves.
            if TcpStream::connect(self.address).is_ok() {
                let _ = acceptor.join();
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use std::io::{Read, Write};
    use std::net::TcpStream;
    use std::{env, fs, process};

    use super::*;

    fn get(server: &Server, path: &str) -> String {
        let mut stream = TcpStream::connect(server.address()).unwrap();
        write!(stream, "GET {path} HTTP/1.1\r\nHost: x\r\n\r\n").unwrap();
        let mut answer = String::new();
        stream.read_to_string(&mut answer).unwrap();
        answer
    }

    #[test]
    fn files_come_with_their_type_and_their_rule_for_keeping() {
        let folder = env::temp_dir().join(format!("xtask-server-{}", process::id()));
        fs::create_dir_all(folder.join("words")).unwrap();
        fs::write(folder.join("index.html"), "page").unwrap();
        fs::write(folder.join("web-0123456789abcdef_bg.wasm"), "wasm").unwrap();
        fs::write(folder.join("words/en.json"), "{}").unwrap();
        let server = Server::start(&folder, "/any/folder", 0).unwrap();

        let page = get(&server, "/any/folder/");
        assert!(page.starts_with("HTTP/1.1 200") && page.ends_with("page"), "{page}");
        assert!(page.contains("Content-Type: text/html; charset=utf-8") && page.contains("Cache-Control: no-cache"), "{page}");
        let wasm = get(&server, "/any/folder/web-0123456789abcdef_bg.wasm?v=1");
        assert!(wasm.contains("Content-Type: application/wasm") && wasm.contains("immutable"), "{wasm}");
        assert!(get(&server, "/any/folder/words/en.json").contains("Content-Type: application/json"));

        assert!(get(&server, "/any/folder").contains("Location: /any/folder/"), "the page needs its closing slash");
        for missing in ["/", "/any/folder/none", "/any/folder/words", "/any/folder/../../etc/hosts", "/any/folder//etc/hosts"] {
            assert!(get(&server, missing).starts_with("HTTP/1.1 404"), "{missing}");
        }

        let address = server.address();
        drop(server);
        assert!(TcpStream::connect(address).is_err(), "a dropped server answers no more");
        fs::remove_dir_all(&folder).unwrap();
    }

    #[test]
    fn a_port_that_is_taken_is_said_to_be_so() {
        let first = Server::start(Path::new("."), "", 0).unwrap();
        let second = Server::start(Path::new("."), "", first.address().port()).unwrap_err();
        assert_eq!(second.kind(), ErrorKind::AddrInUse);
        let next = Server::start_near(Path::new("."), "", first.address().port()).unwrap();
        assert!(next.address().port() > first.address().port());
    }
}
