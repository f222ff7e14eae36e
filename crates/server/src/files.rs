//! The files of the site and the headers that go with them.

use axum::Router;
use axum::body::Body;
use axum::extract::Request;
use axum::http::{HeaderMap, HeaderValue, Method, Response, StatusCode, header};
use axum::response::IntoResponse;
use rust_embed::{EmbeddedFile, RustEmbed};

use crate::encoding::Coding;

#[derive(RustEmbed)]
#[folder = "../../out/site"]
#[allow_missing = true]
struct Site;

/// What the pages may do: files of their own origin only, no script in the page's text, wasm allowed. The page says
/// the same of itself, for hosts that cannot be told to send headers; only `frame-ancestors` works in a header alone.
pub const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
    img-src 'self' data: blob:; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; \
    form-action 'none'";

const NOT_BUILT: &str = include_str!("not_built.html");

/// All files of the site, to be served or mounted in a larger server.
pub fn router() -> Router {
    Router::new().fallback(answer)
}

async fn answer(request: Request) -> Response<Body> {
    let response = match *request.method() {
        Method::GET | Method::HEAD => file_or_note(request.uri().path(), request.headers()),
        _ => (StatusCode::METHOD_NOT_ALLOWED, [(header::ALLOW, "GET, HEAD")]).into_response(),
    };
    with_common_headers(response)
}

fn with_common_headers(mut response: Response<Body>) -> Response<Body> {
    let headers = response.headers_mut();
    let policy = format!("{POLICY}; frame-ancestors 'none'");
    for (name, value) in [
        (header::CONTENT_SECURITY_POLICY, policy.as_str()),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "no-referrer"),
    ] {
        if let Ok(value) = HeaderValue::from_str(value) {
            headers.insert(name, value);
        }
    }
    response
}

fn file_or_note(path: &str, headers: &HeaderMap) -> Response<Body> {
    let name = match path.trim_start_matches('/') {
        "" => "index.html",
        name => name,
    };
    if Site::get("index.html").is_none() {
        return match name {
            "index.html" => (
                [(header::CONTENT_TYPE, "text/html; charset=utf-8"), (header::CACHE_CONTROL, "no-store")],
                NOT_BUILT,
            )
                .into_response(),
            _ => not_found(),
        };
    }
    // Names are looked up among the stored ones, letter by letter: nothing outside of them can be reached. The stored
    // copies are forms of a file, not files of the site.
    let is_copy = Coding::ALL.iter().any(|coding| name.ends_with(coding.ending()));
    match Site::get(name) {
        Some(file) if !is_copy => stored(name, file, headers),
        _ => not_found(),
    }
}

fn not_found() -> Response<Body> {
    (StatusCode::NOT_FOUND, "There is no such file here.\n").into_response()
}

fn stored(name: &str, file: EmbeddedFile, headers: &HeaderMap) -> Response<Body> {
    let tag = format!("{:032x}", u128::from_be_bytes(first_16(&file.metadata.sha256_hash())));
    let accepted = header_text(headers, header::ACCEPT_ENCODING);
    let copy = Coding::ALL
        .into_iter()
        .filter(|coding| coding.allowed_by(accepted))
        .find_map(|coding| Some((coding, Site::get(&format!("{name}{}", coding.ending()))?)));
    let (tag, coding, file) = match copy {
        Some((coding, copy)) => (format!("\"{tag}-{}\"", coding.token()), Some(coding), copy),
        None => (format!("\"{tag}\""), None, file),
    };
    let known = header_text(headers, header::IF_NONE_MATCH).split(',').any(|known| known.trim() == tag);
    let mut response =
        if known { StatusCode::NOT_MODIFIED.into_response() } else { Body::from(file.data).into_response() };
    let headers = response.headers_mut();
    if let Ok(tag) = HeaderValue::from_str(&tag) {
        headers.insert(header::ETAG, tag);
    }
    headers.insert(header::CACHE_CONTROL, HeaderValue::from_static(keeping(name)));
    headers.insert(header::VARY, HeaderValue::from_static("accept-encoding"));
    if !known {
        if let Ok(kind) = HeaderValue::from_str(&kind(name)) {
            headers.insert(header::CONTENT_TYPE, kind);
        }
        if let Some(coding) = coding {
            headers.insert(header::CONTENT_ENCODING, HeaderValue::from_static(coding.token()));
        }
    }
    response
}

/// Half of a hash tells the versions of one file apart.
fn first_16(hash: &[u8; 32]) -> [u8; 16] {
    std::array::from_fn(|index| hash[index])
}

fn header_text(headers: &HeaderMap, name: header::HeaderName) -> &str {
    headers.get(name).and_then(|value| value.to_str().ok()).unwrap_or_default()
}

/// How long a browser keeps a file: those with a hash of their content in the name for good, the others until it has
/// asked again.
fn keeping(name: &str) -> &'static str {
    if name.starts_with("assets/") { "public, max-age=31536000, immutable" } else { "no-cache" }
}

fn kind(name: &str) -> String {
    let kind = mime_guess::from_path(name).first_or_octet_stream();
    if kind.type_() == "text" { format!("{kind}; charset=utf-8") } else { kind.to_string() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tower::ServiceExt;

    async fn ask(path: &str, lines: &[(header::HeaderName, &str)]) -> Response<Body> {
        let mut request = Request::builder().uri(path);
        for (name, value) in lines {
            request = request.header(name, *value);
        }
        router().oneshot(request.body(Body::empty()).unwrap()).await.unwrap()
    }

    fn line(response: &Response<Body>, name: header::HeaderName) -> String {
        response.headers().get(name).map(|value| value.to_str().unwrap().to_owned()).unwrap_or_default()
    }

    fn now<T>(work: impl Future<Output = T>) -> T {
        tokio::runtime::Builder::new_current_thread().build().unwrap().block_on(work)
    }

    #[test]
    fn the_front_page_is_html_with_the_policy_and_is_asked_for_again() {
        now(async {
            let response = ask("/", &[]).await;
            assert_eq!(response.status(), StatusCode::OK);
            assert_eq!(line(&response, header::CONTENT_TYPE), "text/html; charset=utf-8");
            assert!(line(&response, header::CONTENT_SECURITY_POLICY).contains("frame-ancestors 'none'"));
            assert!(line(&response, header::CACHE_CONTROL).starts_with("no-"));
        });
    }

    #[test]
    fn no_path_leads_out_of_the_site() {
        now(async {
            for path in
                ["/../Cargo.toml", "/..%2f..%2fCargo.toml", "/assets/../../Cargo.toml", "//etc/passwd", "/x"]
            {
                assert_eq!(ask(path, &[]).await.status(), StatusCode::NOT_FOUND, "{path}");
            }
        });
    }

    #[test]
    fn only_reading_is_allowed() {
        now(async {
            let request = Request::builder().method("POST").uri("/").body(Body::empty()).unwrap();
            let response = router().oneshot(request).await.unwrap();
            assert_eq!(response.status(), StatusCode::METHOD_NOT_ALLOWED);
        });
    }

    /// Holds for whatever site was built; without one there is nothing to ask for.
    #[test]
    fn every_stored_file_comes_with_its_kind_its_tag_and_its_smallest_form() {
        now(async {
            for name in Site::iter().filter(|name| !name.ends_with(".br") && !name.ends_with(".gz")) {
                let path = format!("/{name}");
                let plain = ask(&path, &[]).await;
                assert_eq!(plain.status(), StatusCode::OK, "{name}");
                assert_eq!(line(&plain, header::CONTENT_ENCODING), "", "{name}");
                let tag = line(&plain, header::ETAG);
                let again = ask(&path, &[(header::IF_NONE_MATCH, &tag)]).await;
                assert_eq!(again.status(), StatusCode::NOT_MODIFIED, "{name}");
                let small = ask(&path, &[(header::ACCEPT_ENCODING, "gzip, br")]).await;
                let has_copy = Site::get(&format!("{name}.br")).is_some();
                assert_eq!(line(&small, header::CONTENT_ENCODING) == "br", has_copy, "{name}");
                let copy = ask(&format!("{path}.br"), &[]).await;
                assert_eq!(copy.status(), StatusCode::NOT_FOUND, "{name}");
            }
        });
    }

    /// Source: WHATWG HTML and the IANA registry of media types (module scripts must be JavaScript, wasm is compiled
    /// while it loads only as application/wasm).
    #[test]
    fn kinds_are_those_that_browsers_insist_on() {
        assert_eq!(kind("assets/index.js"), "text/javascript; charset=utf-8");
        assert_eq!(kind("assets/wasm_bg.wasm"), "application/wasm");
        assert_eq!(kind("manifest.webmanifest"), "application/manifest+json");
        assert_eq!(kind("icon.svg"), "image/svg+xml");
        assert_eq!(kind("icon-192.png"), "image/png");
        assert_eq!(kind("assets/index.css"), "text/css; charset=utf-8");
    }

    #[test]
    fn the_page_says_the_same_policy_of_itself() {
        let page = include_str!("../../../web/index.html");
        let page: String = page.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(page.contains(POLICY), "web/index.html and POLICY differ");
    }
}
