//! For the tests: an invented site, and requests to it that need no socket.

use std::sync::Arc;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::extract::Request;
use axum::http::request::Builder;
use axum::http::{HeaderName, Response, header};
use rust_embed::RustEmbed;
use tower::ServiceExt;
use voice::{Language, Voice};

use crate::files::router;
use crate::guard::{Served, guarded};

/// The invented site.
#[derive(RustEmbed)]
#[folder = "tests/site"]
pub(crate) struct Sample;

/// Where it is served, as far as it knows.
pub(crate) const ADDRESS: &str = "127.0.0.1:4170";

/// All that a request meets.
pub(crate) fn site<S: RustEmbed + 'static>(language: Language) -> Router {
    let voice = Arc::new(Voice::new(language));
    guarded(router::<S>(Arc::clone(&voice)), Served::at(ADDRESS.parse().unwrap()), voice)
}

pub(crate) fn head(method: &str, path: &str) -> Builder {
    Request::builder().method(method).uri(path).header(header::HOST, ADDRESS)
}

pub(crate) async fn asked<S: RustEmbed + 'static>(request: Request) -> Response<Body> {
    site::<S>(Language::English).oneshot(request).await.unwrap()
}

pub(crate) async fn ask<S: RustEmbed + 'static>(path: &str, lines: &[(HeaderName, &str)]) -> Response<Body> {
    let mut request = head("GET", path);
    for (name, value) in lines {
        request = request.header(name, *value);
    }
    asked::<S>(request.body(Body::empty()).unwrap()).await
}

/// A line of an answer, empty if it is not there.
pub(crate) fn line(response: &Response<Body>, name: &HeaderName) -> String {
    response.headers().get(name).map(|value| value.to_str().unwrap().to_owned()).unwrap_or_default()
}

pub(crate) async fn text(response: Response<Body>) -> String {
    let bytes = to_bytes(response.into_body(), usize::MAX).await.unwrap();
    String::from_utf8(bytes.to_vec()).unwrap()
}

/// Runs to the end. The clock is not that of the wall: where all wait for a time, it comes at once.
pub(crate) fn now<T>(work: impl Future<Output = T>) -> T {
    let mut runtime = tokio::runtime::Builder::new_current_thread();
    runtime.enable_time().start_paused(true).build().unwrap().block_on(work)
}
