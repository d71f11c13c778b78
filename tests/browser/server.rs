//! The built page on a server of its own, below a path as deep as any host may put it.

use std::fs;
use std::path::PathBuf;

use xtask::Server;

use crate::driver::{Folder, variable};

/// The page is never at the top of the server: an address that is not relative cannot work.
const BELOW: &str = "/some/folder";

/// The built page, served.
pub struct Site {
    server: Server,
    _copy: Option<Folder>,
}

impl Site {
    /// All of it.
    pub fn whole() -> Self {
        Self { server: serve(&dist()), _copy: None }
    }

    /// All but the WebAssembly, which is answered with 404.
    pub fn without_wasm() -> Self {
        let copy = Folder::new("site");
        for entry in fs::read_dir(dist()).expect("the folder of the built page") {
            let path = entry.expect("a file of the built page").path();
            let name = path.file_name().expect("a name");
            if path.is_file() && path.extension().is_none_or(|e| e != "wasm") {
                fs::copy(&path, copy.path().join(name)).expect("copying a file of the built page");
            }
        }
        Self { server: serve(copy.path()), _copy: Some(copy) }
    }

    /// The page's address, with a slash at its end.
    pub fn url(&self) -> String {
        self.server.url()
    }
}

fn serve(folder: &std::path::Path) -> Server {
    Server::start(folder, BELOW, 0).expect("a free port of this machine")
}

fn dist() -> PathBuf {
    let dist = PathBuf::from(variable("HATWRIGHT_DIST"));
    assert!(dist.join("index.html").is_file(), "there is no built page in {}", dist.display());
    dist
}
