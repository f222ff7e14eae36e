//! Connections, and what each may take: bytes, time, places.

use std::convert::Infallible;
use std::pin::pin;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::serve::Listener;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use tokio::io::{AsyncRead, AsyncWrite};
use tokio::sync::Semaphore;
use tokio::time::timeout;

/// What connections may take.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Limits {
    /// Connections at the same time; further ones wait until one has ended.
    pub(crate) connections: usize,
    /// Bytes before the content of a request: its first line and its header lines.
    pub(crate) head_bytes: usize,
    /// Header lines of a request.
    pub(crate) head_lines: usize,
    /// Time for all of these to come; also how long a connection may stay open between two requests.
    pub(crate) head_time: Duration,
    /// Time until a connection takes no further requests.
    pub(crate) open_time: Duration,
    /// Time after that to fetch what was still asked for.
    pub(crate) last_time: Duration,
}

impl Limits {
    /// A browser opens six connections to a host and sends less than 2 KB before the content (common practice, no
    /// source); the largest file takes far less than a second on loopback.
    pub(crate) const USUAL: Self = Self {
        connections: 128,
        head_bytes: 16 << 10,
        head_lines: 64,
        head_time: Duration::from_secs(10),
        open_time: Duration::from_mins(5),
        last_time: Duration::from_secs(30),
    };
}

/// Answers all connections, each in a task of its own, so that none ends another.
pub(crate) async fn answer_all(mut listener: impl Listener, app: Router, limits: Limits) -> Infallible {
    let places = Arc::new(Semaphore::new(limits.connections));
    loop {
        // An error would mean that the places were closed, which nobody does.
        let place = Arc::clone(&places).acquire_owned().await;
        let (stream, _) = listener.accept().await;
        let app = app.clone();
        tokio::spawn(async move {
            converse(stream, app, limits).await;
            drop(place);
        });
    }
}

/// Answers one connection until either side ends it. How it ended is nobody's concern.
async fn converse(stream: impl AsyncRead + AsyncWrite + Unpin + Send + 'static, app: Router, limits: Limits) {
    let conversation = http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(limits.head_time)
        .max_header_size(limits.head_bytes)
        .max_headers(limits.head_lines)
        .serve_connection(TokioIo::new(stream), TowerToHyperService::new(app));
    let mut conversation = pin!(conversation);
    if timeout(limits.open_time, conversation.as_mut()).await.is_err() {
        conversation.as_mut().graceful_shutdown();
        let _ = timeout(limits.last_time, conversation).await;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample::{ADDRESS, Sample, now, site};
    use axum::routing::get;
    use std::io;
    use tokio::io::{AsyncReadExt, AsyncWriteExt, DuplexStream, duplex};
    use tokio::sync::mpsc::{UnboundedReceiver, UnboundedSender, unbounded_channel};
    use tokio::time::sleep;
    use voice::Language;

    /// Longer than anything that a test waits for, on a clock that passes such times at once.
    const FOR_EVER: Duration = Duration::from_hours(1000);

    /// The usual limits, but for the time that a connection may stay.
    const LIMITS: Limits = Limits { open_time: FOR_EVER, ..Limits::USUAL };

    /// Takes connections that are no sockets.
    struct Door(UnboundedReceiver<DuplexStream>);

    impl Listener for Door {
        type Io = DuplexStream;
        type Addr = ();

        async fn accept(&mut self) -> (DuplexStream, ()) {
            match self.0.recv().await {
                Some(stream) => (stream, ()),
                None => std::future::pending().await,
            }
        }

        fn local_addr(&self) -> io::Result<()> {
            Ok(())
        }
    }

    struct Running(UnboundedSender<DuplexStream>);

    impl Running {
        fn start(app: Router, limits: Limits) -> Self {
            let (sender, receiver) = unbounded_channel();
            tokio::spawn(answer_all(Door(receiver), app, limits));
            Self(sender)
        }

        fn site(limits: Limits) -> Self {
            Self::start(site::<Sample>(Language::English), limits)
        }

        fn connect(&self) -> DuplexStream {
            let (ours, theirs) = duplex(64 << 10);
            self.0.send(theirs).unwrap();
            ours
        }
    }

    /// All that comes until the server ends the connection, which it must do.
    async fn rest(stream: &mut DuplexStream) -> String {
        let mut bytes = Vec::new();
        timeout(FOR_EVER / 2, stream.read_to_end(&mut bytes)).await.expect("it ends").unwrap();
        String::from_utf8(bytes).unwrap()
    }

    async fn answer_to(running: &Running, request: &str) -> String {
        let mut stream = running.connect();
        stream.write_all(request.as_bytes()).await.unwrap();
        rest(&mut stream).await
    }

    fn request(path: &str, more: &str) -> String {
        format!("GET {path} HTTP/1.1\r\nHost: {ADDRESS}\r\n{more}\r\n")
    }

    #[test]
    fn a_head_that_is_never_finished_ends() {
        now(async {
            let running = Running::site(LIMITS);
            for half in
                ["", "GET", "GET / HTTP/1.1\r\nHost: 127", "GET / HTTP/1.1\r\nHost: 127.0.0.1:4170\r\n"]
            {
                assert_eq!(answer_to(&running, half).await, "", "{half:?}");
            }
        });
    }

    #[test]
    fn a_head_that_comes_by_drops_ends() {
        now(async {
            let running = Running::site(LIMITS);
            let mut stream = running.connect();
            stream.write_all(b"GET / HTTP/1.1\r\nHost: ").await.unwrap();
            let mut drops = 0;
            while drops < 1000 && stream.write_all(b"x").await.is_ok() {
                sleep(LIMITS.head_time / 10).await;
                drops += 1;
            }
            assert!(drops < 1000, "the server still listens");
        });
    }

    #[test]
    fn a_connection_without_a_further_request_ends() {
        now(async {
            let said = answer_to(&Running::site(LIMITS), &request("/digits.txt", "")).await;
            assert!(
                said.starts_with("HTTP/1.1 200 OK\r\n") && said.ends_with("\r\n\r\n012345678\n"),
                "{said}"
            );
        });
    }

    /// Source: RFC 6585, section 5 (431).
    #[test]
    fn a_head_that_is_too_long_is_refused() {
        now(async {
            let running = Running::site(LIMITS);
            let long = format!("Invented: {}\r\n", "x".repeat(LIMITS.head_bytes));
            let many = "Invented: x\r\n".repeat(LIMITS.head_lines);
            for more in [long, many] {
                let said = answer_to(&running, &request("/", &more)).await;
                assert!(said.starts_with("HTTP/1.1 431 "), "{said}");
            }
            let just = "Invented: x\r\n".repeat(LIMITS.head_lines - 1);
            let said = answer_to(&running, &request("/", &just)).await;
            assert!(said.starts_with("HTTP/1.1 200 "), "{said}");
        });
    }

    #[test]
    fn what_is_no_http_is_refused_and_the_next_one_answered() {
        now(async {
            let running = Running::site(LIMITS);
            for nonsense in
                ["\0\r\n\r\n", "GET\r\n\r\n", "PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n", "\u{16}\u{3}\u{1}"]
            {
                let said = answer_to(&running, nonsense).await;
                assert!(said.is_empty() || said.starts_with("HTTP/1.1 400 "), "{nonsense:?}: {said}");
            }
            assert!(answer_to(&running, &request("/", "")).await.starts_with("HTTP/1.1 200 "));
        });
    }

    #[test]
    fn a_further_connection_waits_until_one_has_ended() {
        now(async {
            let running = Running::site(Limits { connections: 2, ..LIMITS });
            let mut first = running.connect();
            let mut second = running.connect();
            let said = answer_to(&running, &request("/", "Connection: close\r\n")).await;
            assert!(said.starts_with("HTTP/1.1 200 "), "{said}");
            // The clock has passed the time of the first two, which is the only way to a place.
            let one = [first.write_all(b"x").await, second.write_all(b"x").await];
            assert!(one.iter().any(Result::is_err), "three at once");
        });
    }

    #[test]
    fn who_does_not_fetch_the_answer_is_left() {
        now(async {
            let large = "x".repeat(1 << 20);
            let app = Router::new().route("/", get(move || async move { large }));
            let running = Running::start(app, Limits::USUAL);
            let mut stream = running.connect();
            stream.write_all(request("/", "").as_bytes()).await.unwrap();
            sleep(FOR_EVER / 2).await;
            let said = rest(&mut stream).await;
            assert!(said.len() < 1 << 20, "all of it was sent after all");
        });
    }

    /// On one connection: an answer whose length and content did not go together would spoil those behind it.
    #[test]
    fn answers_follow_each_other_on_one_connection() {
        now(async {
            let running = Running::site(LIMITS);
            let tagged = answer_to(&running, &request("/digits.txt", "")).await;
            let tag = tagged.lines().find_map(|line| line.strip_prefix("etag: ")).unwrap().to_owned();
            let requests = [
                request("/digits.txt", "").replace("GET", "HEAD"),
                request("/digits.txt", &format!("If-None-Match: W/{tag}\r\n")),
                request("/digits.txt", "Range: bytes=3-5\r\n"),
                request("/digits.txt", "Range: bytes=30-50\r\n"),
                request("/digits.txt", "").replace("GET", "INVENTED"),
                request("/digits.txt", ""),
            ];
            let said = answer_to(&running, &requests.concat()).await;
            let statuses: Vec<_> =
                said.split("HTTP/1.1 ").skip(1).map(|answer| answer.split(' ').next().unwrap()).collect();
            assert_eq!(statuses, ["200", "304", "206", "416", "405", "200"], "{said}");
            assert_eq!(said.matches("content-length: 10\r\n").count(), 2, "{said}");
            assert!(!said.contains("content-length: 0"), "a 304 does not say that the file is empty: {said}");
            assert_eq!(said.matches("\r\n\r\nHTTP/1.1 ").count(), 2, "the first two have no content: {said}");
            assert!(said.contains("\r\n\r\n345HTTP/1.1 416"), "{said}");
        });
    }

    #[test]
    fn content_is_refused_without_being_waited_for() {
        now(async {
            let running = Running::site(LIMITS);
            for more in ["Content-Length: 1000000000\r\n", "Transfer-Encoding: chunked\r\n"] {
                let said = answer_to(&running, &request("/", more)).await;
                assert!(said.starts_with("HTTP/1.1 413 "), "{more}{said}");
            }
        });
    }
}
