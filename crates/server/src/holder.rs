//! Who listens on a port that is taken: the name that every answer of this server carries, and the question for it.

use std::io;
use std::net::SocketAddr;
use std::time::Duration;

use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::TcpStream;
use tokio::time::timeout;

/// The line `Server` of every answer. Source: RFC 9110, section 10.2.4.
pub(crate) const NAME: &str = concat!("Hoodwink/", env!("CARGO_PKG_VERSION"));

/// How the name starts, whichever the version.
const PRODUCT: &str = "Hoodwink/";

/// Another program may take the connection and never answer.
const PATIENCE: Duration = Duration::from_secs(1);

/// The most bytes of an answer that are read, and the most lines.
const LONGEST_ANSWER: u64 = 16 << 10;
const MOST_LINES: usize = 64;

/// Who listens on a port.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Holder {
    /// Another run of this program.
    Hoodwink,
    /// Some other program, or nobody who answers.
    Other,
}

/// Asks whoever listens there.
pub(crate) async fn holder(address: SocketAddr) -> Holder {
    match timeout(PATIENCE, answer(address)).await {
        Ok(Ok(answer)) => named(&answer),
        Ok(Err(_)) | Err(_) => Holder::Other,
    }
}

async fn answer(address: SocketAddr) -> io::Result<Vec<u8>> {
    let mut stream = TcpStream::connect(address).await?;
    let question = format!("HEAD / HTTP/1.1\r\nHost: {address}\r\nConnection: close\r\n\r\n");
    stream.write_all(question.as_bytes()).await?;
    let mut answer = Vec::new();
    stream.take(LONGEST_ANSWER).read_to_end(&mut answer).await?;
    Ok(answer)
}

fn named(answer: &[u8]) -> Holder {
    let mut lines = [httparse::EMPTY_HEADER; MOST_LINES];
    let mut head = httparse::Response::new(&mut lines);
    let ours = head.parse(answer).is_ok_and(|parsed| parsed.is_complete())
        && head.headers.iter().any(|line| {
            line.name.eq_ignore_ascii_case("server") && line.value.starts_with(PRODUCT.as_bytes())
        });
    if ours { Holder::Hoodwink } else { Holder::Other }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_name_tells_whose_answer_it_is() {
        for (answer, holder) in [
            ("HTTP/1.1 200 OK\r\nserver: Hoodwink/0.1.0\r\n\r\n", Holder::Hoodwink),
            ("HTTP/1.1 421 Misdirected Request\r\nSERVER: Hoodwink/7.0.0\r\n\r\n", Holder::Hoodwink),
            ("HTTP/1.1 200 OK\r\nserver: Invented/1.0\r\n\r\nServer: Hoodwink/0.1.0\r\n\r\n", Holder::Other),
            ("HTTP/1.1 200 OK\r\nvia: Hoodwink/0.1.0\r\n\r\n", Holder::Other),
            ("HTTP/1.1 200 OK\r\nserver: Hoodwink/0.1.0\r\n", Holder::Other),
            ("220 invented mail server Hoodwink/0.1.0\r\n", Holder::Other),
            ("\0\u{7f}", Holder::Other),
            ("", Holder::Other),
        ] {
            assert_eq!(named(answer.as_bytes()), holder, "{answer:?}");
        }
        assert!(NAME.starts_with(PRODUCT));
    }
}
