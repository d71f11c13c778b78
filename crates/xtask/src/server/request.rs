//! The first line of a request, which is all that a server of static files has to understand.
use std::io::{self, ErrorKind, Read};

/// More than any browser sends; a client that goes on longer is cut off.
const LONGEST_HEAD: usize = 64 * 1024;

/// What a client asks for.
#[derive(Debug, PartialEq, Eq)]
pub struct Request {
    /// Whether the answer's contents are wanted, too (GET), or only its head (HEAD).
    pub with_body: bool,
    /// The path without query.
    pub path: String,
}

/// Reads a request's head. `Ok(None)` is a method that static files do not have.
pub fn read_request(client: &mut impl Read) -> io::Result<Option<Request>> {
    let mut head = Vec::new();
    let mut chunk = [0; 4096];
    // The whole head is read even though one line counts: closing a socket with unread bytes resets the connection.
    while !head.windows(4).any(|end| end == b"\r\n\r\n") {
        let length = client.read(&mut chunk)?;
        if length == 0 || head.len() > LONGEST_HEAD {
            return Err(ErrorKind::InvalidData.into());
        }
        head.extend_from_slice(&chunk[..length]);
    }
    let line = String::from_utf8_lossy(&head);
    let mut words = line.lines().next().unwrap_or_default().split(' ');
    let (Some(method), Some(address)) = (words.next(), words.next()) else { return Err(ErrorKind::InvalidData.into()) };
    if !["GET", "HEAD"].contains(&method) {
        return Ok(None);
    }
    let path = address.split(['?', '#']).next().unwrap_or_default().to_owned();
    Ok(Some(Request { with_body: method == "GET", path }))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> io::Result<Option<Request>> {
        read_request(&mut text.as_bytes())
    }

    #[test]
    fn the_query_is_no_part_of_the_path() {
        let asked = read("GET /a/b.js?v=1 HTTP/1.1\r\nHost: x\r\n\r\n").unwrap().unwrap();
        assert_eq!(asked, Request { with_body: true, path: "/a/b.js".to_owned() });
        assert!(!read("HEAD / HTTP/1.1\r\n\r\n").unwrap().unwrap().with_body);
    }

    #[test]
    fn what_is_no_request_for_a_file_is_refused() {
        assert_eq!(read("POST / HTTP/1.1\r\n\r\n").unwrap(), None);
        for broken in ["", "GET / HTTP/1.1\r\n", "GET\r\n\r\n"] {
            assert!(read(broken).is_err(), "{broken:?}");
        }
        assert!(read(&"x".repeat(2 * LONGEST_HEAD)).is_err());
    }
}
