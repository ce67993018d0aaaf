//! A small static file server on loopback, which can stop and come back on the same port.
//!
//! It serves a folder under any path, as a static host would, and counts what it was asked for.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, Shutdown, SocketAddr, TcpListener, TcpStream};
use std::path::{Component, Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread::JoinHandle;
use std::time::Duration;

/// A folder handed out on 127.0.0.1.
pub struct Site {
    shared: Arc<Shared>,
    address: SocketAddr,
    running: Option<JoinHandle<()>>,
}

struct Shared {
    dir: PathBuf,
    base: String,
    stop: AtomicBool,
    asked: Mutex<Vec<String>>,
}

impl Site {
    /// Serves `dir` under the path `base` ("/" or "/some/folder/") on `port`; port 0 takes a free one.
    pub fn start(dir: &Path, base: &str, port: u16) -> std::io::Result<Self> {
        let shared = Shared {
            dir: dir.to_path_buf(),
            base: base.to_owned(),
            stop: AtomicBool::new(false),
            asked: Mutex::new(Vec::new()),
        };
        let address = SocketAddr::from((Ipv4Addr::LOCALHOST, port));
        let mut site = Self {
            shared: Arc::new(shared),
            address,
            running: None,
        };
        site.listen()?;
        Ok(site)
    }

    /// The site's address, ending in a slash.
    #[must_use]
    pub fn url(&self) -> String {
        format!("http://{}{}", self.address, self.shared.base)
    }

    /// The paths asked for so far, in order.
    #[must_use]
    pub fn asked(&self) -> Vec<String> {
        self.shared.asked.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// Stops answering: from now on a connection is refused, as when the network is gone.
    pub fn stop(&mut self) {
        if let Some(thread) = self.running.take() {
            self.shared.stop.store(true, Ordering::SeqCst);
            // Wakes the listener, which then sees that it is to stop.
            let _ = TcpStream::connect(self.address);
            let _ = thread.join();
        }
    }

    /// Answers again, on the same port.
    pub fn restart(&mut self) -> std::io::Result<()> {
        self.stop();
        self.listen()
    }

    /// Stays until the server ends, which it does only with the program.
    pub fn wait(mut self) {
        if let Some(thread) = self.running.take() {
            let _ = thread.join();
        }
    }

    fn listen(&mut self) -> std::io::Result<()> {
        let listener = TcpListener::bind(self.address)?;
        self.address = listener.local_addr()?;
        self.shared.stop.store(false, Ordering::SeqCst);
        let shared = Arc::clone(&self.shared);
        self.running = Some(std::thread::spawn(move || {
            for stream in listener.incoming().flatten() {
                if shared.stop.load(Ordering::SeqCst) {
                    break;
                }
                let shared = Arc::clone(&shared);
                std::thread::spawn(move || {
                    // A browser that hangs up in the middle harms nobody.
                    let _ = shared.answer(&stream);
                    let _ = stream.shutdown(Shutdown::Both);
                });
            }
        }));
        Ok(())
    }
}

impl Drop for Site {
    fn drop(&mut self) {
        self.stop();
    }
}

impl Shared {
    fn answer(&self, stream: &TcpStream) -> std::io::Result<()> {
        stream.set_read_timeout(Some(Duration::from_secs(10)))?;
        let mut reader = BufReader::new(stream.take(64 * 1024));
        let mut request = String::new();
        reader.read_line(&mut request)?;
        let mut header = String::new();
        while reader.read_line(&mut header)? > 2 {
            header.clear();
        }
        let mut words = request.split_whitespace();
        let (method, target) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
        let path = target.split(['?', '#']).next().unwrap_or_default();
        self.asked
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .push(path.to_owned());
        if !matches!(method, "GET" | "HEAD") {
            return respond(
                stream,
                "405 Method Not Allowed",
                "text/plain",
                b"only GET and HEAD",
                true,
            );
        }
        match self
            .file(path)
            .and_then(|file| Some((std::fs::read(&file).ok()?, file)))
        {
            Some((body, file)) => respond(stream, "200 OK", media_type(&file), &body, method == "GET"),
            None => respond(stream, "404 Not Found", "text/plain", b"not found", method == "GET"),
        }
    }

    /// The file behind a path; nothing outside the folder can be named.
    fn file(&self, path: &str) -> Option<PathBuf> {
        let inside = Path::new(path.strip_prefix(&self.base)?);
        let tame = inside.components().all(|part| matches!(part, Component::Normal(_)));
        let file = self.dir.join(inside);
        tame.then(|| if file.is_dir() { file.join("index.html") } else { file })
    }
}

fn respond(mut stream: &TcpStream, status: &str, media: &str, body: &[u8], with_body: bool) -> std::io::Result<()> {
    let head = format!(
        "HTTP/1.1 {status}\r\nContent-Type: {media}\r\nContent-Length: {}\r\nCache-Control: no-cache\r\n\
         X-Content-Type-Options: nosniff\r\nReferrer-Policy: no-referrer\r\nConnection: close\r\n\r\n",
        body.len()
    );
    stream.write_all(head.as_bytes())?;
    if with_body {
        stream.write_all(body)?;
    }
    stream.flush()
}

fn media_type(file: &Path) -> &'static str {
    match file.extension().and_then(std::ffi::OsStr::to_str).unwrap_or_default() {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "woff2" => "font/woff2",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn get(site: &Site, path: &str) -> std::io::Result<String> {
        let mut stream = TcpStream::connect(site.address)?;
        write!(stream, "GET {path} HTTP/1.1\r\nHost: x\r\n\r\n")?;
        let mut answer = String::new();
        stream.read_to_string(&mut answer)?;
        Ok(answer)
    }

    #[test]
    fn serves_its_folder_and_nothing_beside_it() {
        let dir = std::env::temp_dir().join(format!("panward-site-{}", std::process::id()));
        std::fs::create_dir_all(dir.join("in")).unwrap();
        std::fs::write(dir.join("in/index.html"), "front page").unwrap();
        std::fs::write(dir.join("secret.txt"), "secret").unwrap();
        let mut site = Site::start(&dir.join("in"), "/pan/", 0).unwrap();
        assert!(get(&site, "/pan/").unwrap().ends_with("front page"));
        assert!(get(&site, "/pan/?a=1").unwrap().contains("text/html"));
        for outside in ["/pan/../secret.txt", "/pan//etc/passwd", "/", "/pan/none"] {
            assert!(get(&site, outside).unwrap().starts_with("HTTP/1.1 404"), "{outside}");
        }
        site.stop();
        assert!(get(&site, "/pan/").is_err());
        site.restart().unwrap();
        assert!(get(&site, "/pan/").unwrap().ends_with("front page"));
        std::fs::remove_dir_all(&dir).unwrap();
    }
}
