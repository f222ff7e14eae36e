//! What stands before the files: whom the server answers, and what every answer carries.

use std::net::SocketAddr;
use std::sync::Arc;

use axum::Router;
use axum::body::Body;
use axum::extract::{Request, State};
use axum::http::{HeaderValue, Response, StatusCode, header};
use axum::middleware::{Next, from_fn, from_fn_with_state};
use voice::Voice;

use crate::holder::NAME;
use crate::sentence::sentence;

/// What the pages may do: files of their own origin only, no script in the page's text, wasm allowed. The page says
/// the same of itself, for hosts that cannot be told to send headers; only `frame-ancestors` works in a header alone.
const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
    img-src 'self' data: blob:; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; \
    form-action 'none'";

/// The names that the server answers to, as they stand in a line `Host`.
#[derive(Clone, Debug)]
pub(crate) struct Served(Vec<String>);

impl Served {
    /// Those of a server that listens on an address of loopback.
    pub(crate) fn at(address: SocketAddr) -> Self {
        let names = [address.ip().to_string(), "localhost".to_owned()];
        let mut served: Vec<_> = names.iter().map(|name| format!("{name}:{}", address.port())).collect();
        // The port that is meant where none is named.
        if address.port() == 80 {
            served.extend(names);
        }
        Self(served)
    }

    fn has(&self, name: &str) -> bool {
        self.0.iter().any(|served| served.eq_ignore_ascii_case(name))
    }

    /// Where a person finds the pages.
    fn address(&self) -> String {
        self.0.first().map(|name| format!("http://{name}/")).unwrap_or_default()
    }
}

struct Guard {
    served: Served,
    voice: Arc<Voice>,
}

/// Puts the guard before `inner`.
pub(crate) fn guarded(inner: Router, served: Served, voice: Arc<Voice>) -> Router {
    let guard = Arc::new(Guard { served, voice });
    // The last layer is the first that a request meets.
    inner
        .layer(from_fn_with_state(Arc::clone(&guard), admit))
        .layer(from_fn_with_state(guard, outlive))
        .layer(from_fn(with_common_lines))
}

/// A request runs in a task of its own, so that a panic ends that task and nothing else.
async fn outlive(State(guard): State<Arc<Guard>>, request: Request, next: Next) -> Response<Body> {
    match tokio::spawn(next.run(request)).await {
        Ok(response) => response,
        Err(_) => sentence(&guard.voice, StatusCode::INTERNAL_SERVER_ERROR, "serve-fault", &[]),
    }
}

async fn admit(State(guard): State<Arc<Guard>>, request: Request, next: Next) -> Response<Body> {
    match guard.refusal(&request) {
        Some(refusal) => refusal,
        None => next.run(request).await,
    }
}

impl Guard {
    /// Why a request is not answered. A name of another site can be made to lead to this machine, and then that
    /// site's pages could read all that is served here; the line `Host` gives them away.
    fn refusal(&self, request: &Request) -> Option<Response<Body>> {
        let address = self.served.address();
        let say = |status, message| sentence(&self.voice, status, message, &[("address", &address)]);
        // A name in the request's first line goes before the line (RFC 9112, section 3.2.2); without either, or with
        // several, the request is faulty (section 3.2).
        let mut hosts = request.headers().get_all(header::HOST).iter();
        let host = match (request.uri().authority(), hosts.next(), hosts.next()) {
            (Some(authority), ..) => Some(authority.as_str()),
            (None, Some(host), None) => host.to_str().ok(),
            (None, ..) => return Some(say(StatusCode::BAD_REQUEST, "serve-no-host")),
        };
        if !host.is_some_and(|host| self.served.has(host)) {
            return Some(say(StatusCode::MISDIRECTED_REQUEST, "serve-other-host"));
        }
        let is_ours = |origin: &HeaderValue| {
            let name = origin.to_str().ok().and_then(|origin| origin.strip_prefix("http://"));
            name.is_some_and(|name| self.served.has(name))
        };
        if !request.headers().get_all(header::ORIGIN).iter().all(is_ours) {
            return Some(say(StatusCode::FORBIDDEN, "serve-other-origin"));
        }
        None
    }
}

async fn with_common_lines(request: Request, next: Next) -> Response<Body> {
    let mut response = next.run(request).await;
    let headers = response.headers_mut();
    let policy = format!("{POLICY}; frame-ancestors 'none'");
    for (name, value) in [
        (header::CONTENT_SECURITY_POLICY, policy.as_str()),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "no-referrer"),
        (header::SERVER, NAME),
    ] {
        if let Ok(value) = HeaderValue::from_str(value) {
            headers.insert(name, value);
        }
    }
    response
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::files::router;
    use crate::sample::{ADDRESS, Sample, line, now, site, text};
    use axum::routing::get;
    use tower::ServiceExt;
    use voice::Language;

    async fn status(lines: &[(&str, &str)], uri: &str, port: u16) -> StatusCode {
        let voice = Arc::new(Voice::new(Language::English));
        let served = Served::at(SocketAddr::from(([127, 0, 0, 1], port)));
        let mut request = Request::builder().uri(uri);
        for (name, value) in lines {
            request = request.header(*name, *value);
        }
        let app = guarded(router::<Sample>(Arc::clone(&voice)), served, voice);
        app.oneshot(request.body(Body::empty()).unwrap()).await.unwrap().status()
    }

    /// Source: RFC 9110, section 7.2 and section 15.5.20 (421); RFC 9112, section 3.2 (no line or several: 400) and
    /// section 3.2.2 (a name in the first line goes before); RFC 3986, section 3.2.2 (capitals do not matter).
    #[test]
    fn only_the_names_that_are_served_are_answered() {
        now(async {
            let other = StatusCode::MISDIRECTED_REQUEST;
            for (host, wanted) in [
                ("127.0.0.1:4170", StatusCode::OK),
                ("localhost:4170", StatusCode::OK),
                ("LocalHost:4170", StatusCode::OK),
                ("127.0.0.1", other),
                ("127.0.0.1:80", other),
                ("127.0.0.1:4171", other),
                ("club.example:4170", other),
                ("localhost.club.example:4170", other),
                ("localhost:4170.club.example", other),
                ("somebody@localhost:4170", other),
                ("127.0.0.1:4170, club.example", other),
                ("[::1]:4170", other),
                ("0.0.0.0:4170", other),
                ("", other),
            ] {
                assert_eq!(status(&[("host", host)], "/", 4170).await, wanted, "{host}");
            }
            let ours = ("host", "localhost:4170");
            let theirs = ("host", "club.example");
            assert_eq!(status(&[], "/", 4170).await, StatusCode::BAD_REQUEST);
            assert_eq!(status(&[ours, ours], "/", 4170).await, StatusCode::BAD_REQUEST);
            assert_eq!(status(&[theirs], "http://localhost:4170/", 4170).await, StatusCode::OK);
            assert_eq!(status(&[ours], "http://club.example/", 4170).await, other);
            assert_eq!(status(&[("host", "localhost")], "/", 80).await, StatusCode::OK);
        });
    }

    /// Source: RFC 6454, section 7 (scheme, host and port, or `null`); WHATWG Fetch says when browsers send it.
    #[test]
    fn pages_of_other_sites_get_no_answer() {
        now(async {
            for (origin, wanted) in [
                ("http://127.0.0.1:4170", StatusCode::OK),
                ("http://localhost:4170", StatusCode::OK),
                ("https://127.0.0.1:4170", StatusCode::FORBIDDEN),
                ("http://127.0.0.1:4171", StatusCode::FORBIDDEN),
                ("http://127.0.0.1", StatusCode::FORBIDDEN),
                ("http://club.example", StatusCode::FORBIDDEN),
                ("http://localhost:4170.club.example", StatusCode::FORBIDDEN),
                ("null", StatusCode::FORBIDDEN),
                ("", StatusCode::FORBIDDEN),
            ] {
                let lines = [("host", "localhost:4170"), ("origin", origin)];
                assert_eq!(status(&lines, "/", 4170).await, wanted, "{origin}");
            }
            let ours = ("origin", "http://localhost:4170");
            let theirs = ("origin", "http://club.example");
            let lines = [("host", "localhost:4170"), ours, theirs];
            assert_eq!(status(&lines, "/", 4170).await, StatusCode::FORBIDDEN);
        });
    }

    /// No answer repeats what was sent.
    #[test]
    fn a_refusal_is_a_sentence_in_the_language_of_the_server() {
        now(async {
            for (language, word) in
                [(Language::English, "no other name"), (Language::German, "keinen anderen")]
            {
                let request = Request::builder().uri("/").header(header::HOST, "club.example");
                let app = site::<Sample>(language);
                let response = app.oneshot(request.body(Body::empty()).unwrap()).await.unwrap();
                assert_eq!(line(&response, &header::CONTENT_LANGUAGE), language.tag());
                assert_eq!(line(&response, &header::SERVER), NAME);
                let said = text(response).await;
                assert!(said.contains(word), "{said}");
                assert!(said.contains(&format!("http://{ADDRESS}/")), "{said}");
                assert!(!said.contains("club.example"), "{said}");
            }
        });
    }

    #[test]
    fn a_request_that_panics_is_answered_and_the_next_one_too() {
        now(async {
            let voice = Arc::new(Voice::new(Language::German));
            let faulty = router::<Sample>(Arc::clone(&voice)).route("/fault", get(|| async { broken() }));
            let app = guarded(faulty, Served::at(ADDRESS.parse().unwrap()), voice);
            for (path, wanted) in [
                ("/fault", StatusCode::INTERNAL_SERVER_ERROR),
                ("/", StatusCode::OK),
                ("/fault", StatusCode::INTERNAL_SERVER_ERROR),
                ("/digits.txt", StatusCode::OK),
            ] {
                let request = Request::builder().uri(path).header(header::HOST, ADDRESS);
                let response = app.clone().oneshot(request.body(Body::empty()).unwrap()).await.unwrap();
                assert_eq!(response.status(), wanted, "{path}");
                assert_eq!(line(&response, &header::X_CONTENT_TYPE_OPTIONS), "nosniff", "{path}");
                if wanted != StatusCode::OK {
                    assert!(text(response).await.contains("Der Server läuft weiter"));
                }
            }
        });
    }

    fn broken() -> StatusCode {
        panic!("a fault made by a test")
    }

    #[test]
    fn the_page_says_the_same_policy_of_itself() {
        let page = include_str!("../../../web/index.html");
        let page: String = page.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(page.contains(POLICY), "web/index.html and POLICY differ");
    }
}
