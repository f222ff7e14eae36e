//! The files of the site: which one is asked for, and in which form it is given.

use std::sync::Arc;

use axum::Router;
use axum::body::{Body, HttpBody};
use axum::extract::Request;
use axum::http::{HeaderMap, Method, Response, StatusCode, header};
use axum::response::IntoResponse;
use rust_embed::{EmbeddedFile, RustEmbed};
use voice::Voice;

use crate::encoding::Coding;
use crate::selected::{Selected, list};
use crate::sentence::{not_built, sentence};

/// The built site.
#[derive(RustEmbed)]
#[folder = "../../out/site"]
#[allow_missing = true]
pub(crate) struct Site;

/// All files of a site.
pub(crate) fn router<S: RustEmbed + 'static>(voice: Arc<Voice>) -> Router {
    Router::new().fallback(move |request: Request| {
        let voice = Arc::clone(&voice);
        async move { answer::<S>(&request, &voice) }
    })
}

/// The content of a request is never read: after an answer the server closes a connection on which it still comes.
fn answer<S: RustEmbed>(request: &Request, voice: &Voice) -> Response<Body> {
    match *request.method() {
        Method::GET | Method::HEAD if request.body().is_end_stream() => file_or_note::<S>(request, voice),
        Method::GET | Method::HEAD => {
            let close = [(header::CONNECTION, "close")];
            (close, sentence(voice, StatusCode::PAYLOAD_TOO_LARGE, "serve-no-content", &[])).into_response()
        }
        _ => {
            let allowed = [(header::ALLOW, "GET, HEAD")];
            (allowed, sentence(voice, StatusCode::METHOD_NOT_ALLOWED, "serve-only-files", &[]))
                .into_response()
        }
    }
}

fn file_or_note<S: RustEmbed>(request: &Request, voice: &Voice) -> Response<Body> {
    let not_found = || sentence(voice, StatusCode::NOT_FOUND, "serve-no-file", &[]);
    let name = match request.uri().path().trim_start_matches('/') {
        "" => "index.html",
        name => name,
    };
    if S::get("index.html").is_none() {
        return if name == "index.html" { not_built(voice) } else { not_found() };
    }
    // Names are looked up among the stored ones, letter by letter: nothing outside of them can be reached. The stored
    // copies are forms of a file, not files of the site.
    let is_copy = Coding::ALL.iter().any(|coding| name.ends_with(coding.ending()));
    match S::get(name) {
        Some(file) if !is_copy => {
            select::<S>(name, file, request.headers()).answer(request.method(), request.headers(), voice)
        }
        _ => not_found(),
    }
}

fn select<S: RustEmbed>(name: &str, file: EmbeddedFile, headers: &HeaderMap) -> Selected {
    let tag = format!("{:032x}", u128::from_be_bytes(first_16(&file.metadata.sha256_hash())));
    let accepted = list(headers, &header::ACCEPT_ENCODING).unwrap_or_default();
    let copy = Coding::ALL
        .into_iter()
        .filter(|coding| coding.allowed_by(&accepted))
        .find_map(|coding| Some((coding, S::get(&format!("{name}{}", coding.ending()))?)));
    let (tag, coding, bytes) = match copy {
        Some((coding, copy)) => (format!("{tag}-{}", coding.token()), Some(coding), copy.data),
        None => (tag, None, file.data),
    };
    Selected { bytes, tag, coding, kind: kind(name), keeping: keeping(name) }
}

/// Half of a hash tells the versions of one file apart.
fn first_16(hash: &[u8; 32]) -> [u8; 16] {
    std::array::from_fn(|index| hash[index])
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
    use crate::sample::{Sample, ask, asked, head, line, now, text};
    use axum::http::HeaderName;
    use axum::http::header::{
        ACCEPT_ENCODING, ACCEPT_RANGES, ALLOW, CACHE_CONTROL, CONTENT_ENCODING, CONTENT_LENGTH,
        CONTENT_RANGE, CONTENT_SECURITY_POLICY, CONTENT_TYPE, ETAG, IF_MATCH, IF_NONE_MATCH, IF_RANGE, RANGE,
    };

    const DIGITS: &str = "/digits.txt";

    #[test]
    fn the_front_page_is_html_with_the_policy_and_is_asked_for_again() {
        now(async {
            let response = ask::<Sample>("/", &[]).await;
            assert_eq!(response.status(), StatusCode::OK);
            assert_eq!(line(&response, &CONTENT_TYPE), "text/html; charset=utf-8");
            assert!(line(&response, &CONTENT_SECURITY_POLICY).contains("frame-ancestors 'none'"));
            assert!(line(&response, &CACHE_CONTROL).starts_with("no-"));
        });
    }

    #[test]
    fn no_path_leads_out_of_the_site() {
        now(async {
            for path in
                ["/../Cargo.toml", "/..%2f..%2fCargo.toml", "/assets/../../Cargo.toml", "//etc/passwd", "/x"]
            {
                assert_eq!(ask::<Sample>(path, &[]).await.status(), StatusCode::NOT_FOUND, "{path}");
            }
        });
    }

    /// Source: RFC 9110, section 15.5.6: the answer names the methods that are allowed.
    #[test]
    fn only_reading_is_allowed() {
        now(async {
            for method in ["POST", "PUT", "DELETE", "OPTIONS", "TRACE", "PATCH", "INVENTED", "get"] {
                let response = asked::<Sample>(head(method, "/").body("content".into()).unwrap()).await;
                assert_eq!(response.status(), StatusCode::METHOD_NOT_ALLOWED, "{method}");
                assert_eq!(line(&response, &ALLOW), "GET, HEAD", "{method}");
            }
        });
    }

    /// Source: RFC 9110, section 9.3.1: content in a GET has no meaning and may be refused; section 15.5.14.
    #[test]
    fn a_request_with_content_is_refused() {
        now(async {
            let response = asked::<Sample>(head("GET", "/").body("content".into()).unwrap()).await;
            assert_eq!(response.status(), StatusCode::PAYLOAD_TOO_LARGE);
            assert_eq!(line(&response, &header::CONNECTION), "close");
        });
    }

    /// Source: RFC 9110, section 9.3.2: the lines of GET, and no content.
    #[test]
    fn head_has_the_lines_of_get() {
        now(async {
            let lines = [(ACCEPT_ENCODING, "br")];
            let whole = ask::<Sample>("/assets/sample.js", &lines).await;
            let mut request = head("HEAD", "/assets/sample.js");
            request = request.header(ACCEPT_ENCODING, "br");
            let short = asked::<Sample>(request.body(Body::empty()).unwrap()).await;
            assert_eq!(whole.headers(), short.headers());
            assert_eq!(line(&short, &CONTENT_LENGTH), text(whole).await.len().to_string());
            assert_eq!(text(short).await, "");
        });
    }

    /// Source: RFC 9110, section 13.1.2 (weak comparison, `*`) and section 15.4.5 (what a 304 carries); section 8.6: a
    /// length in a 304 is that of the file.
    #[test]
    fn a_version_that_is_known_is_not_sent_again() {
        now(async {
            let whole = ask::<Sample>(DIGITS, &[]).await;
            let tag = line(&whole, &ETAG);
            assert!(tag.starts_with('"') && tag.ends_with('"'), "{tag} is a strong one");
            for known in
                ["*".to_owned(), tag.clone(), format!("W/{tag}"), format!("\"other,\", W/{tag}, \"third\"")]
            {
                let response = ask::<Sample>(DIGITS, &[(IF_NONE_MATCH, &known)]).await;
                assert_eq!(response.status(), StatusCode::NOT_MODIFIED, "{known}");
                for name in [ETAG, CACHE_CONTROL, header::VARY, CONTENT_LENGTH] {
                    assert_eq!(line(&response, &name), line(&whole, &name), "{known}: {name}");
                }
                assert_eq!(text(response).await, "", "{known}");
            }
            for unknown in ["\"other\"", "W/\"\"", "", tag.trim_matches('"'), "\"*\""] {
                let response = ask::<Sample>(DIGITS, &[(IF_NONE_MATCH, unknown)]).await;
                assert_eq!(response.status(), StatusCode::OK, "{unknown}");
            }
        });
    }

    /// Source: RFC 9110, section 13.1.1: strong comparison; section 15.5.13. Section 13.2.2: it is asked first.
    #[test]
    fn a_version_that_is_not_there_cannot_be_asked_for() {
        now(async {
            let tag = line(&ask::<Sample>(DIGITS, &[]).await, &ETAG);
            for (wanted, status) in [
                ("*".to_owned(), StatusCode::OK),
                (tag.clone(), StatusCode::OK),
                (format!("W/{tag}"), StatusCode::PRECONDITION_FAILED),
                ("\"other\"".to_owned(), StatusCode::PRECONDITION_FAILED),
            ] {
                let response = ask::<Sample>(DIGITS, &[(IF_MATCH, &wanted)]).await;
                assert_eq!(response.status(), status, "{wanted}");
            }
            let both = ask::<Sample>(DIGITS, &[(IF_NONE_MATCH, "*"), (IF_MATCH, "\"other\"")]).await;
            assert_eq!(both.status(), StatusCode::PRECONDITION_FAILED);
        });
    }

    /// Source: RFC 9110, sections 14.2 to 14.4, 15.3.7 and 15.5.17. The file has nine digits and a line end.
    #[test]
    fn a_part_of_a_file_can_be_asked_for() {
        now(async {
            let whole = ask::<Sample>(DIGITS, &[]).await;
            assert_eq!(line(&whole, &ACCEPT_RANGES), "bytes");
            for (range, place, content) in [
                ("bytes=0-0", "bytes 0-0/10", "0"),
                ("bytes=2-4", "bytes 2-4/10", "234"),
                ("bytes=7-", "bytes 7-9/10", "78\n"),
                ("bytes=-2", "bytes 8-9/10", "8\n"),
            ] {
                let response = ask::<Sample>(DIGITS, &[(RANGE, range)]).await;
                assert_eq!(response.status(), StatusCode::PARTIAL_CONTENT, "{range}");
                assert_eq!(line(&response, &CONTENT_RANGE), place, "{range}");
                assert_eq!(line(&response, &CONTENT_LENGTH), content.len().to_string(), "{range}");
                for name in [ETAG, CACHE_CONTROL, header::VARY, CONTENT_TYPE] {
                    assert_eq!(line(&response, &name), line(&whole, &name), "{range}: {name}");
                }
                assert_eq!(text(response).await, content, "{range}");
            }
            let outside = ask::<Sample>(DIGITS, &[(RANGE, "bytes=10-")]).await;
            assert_eq!(outside.status(), StatusCode::RANGE_NOT_SATISFIABLE);
            assert_eq!(line(&outside, &CONTENT_RANGE), "bytes */10");
            assert_eq!(line(&outside, &ETAG), "");
            let several = ask::<Sample>(DIGITS, &[(RANGE, "bytes=0-1,3-4")]).await;
            assert_eq!(several.status(), StatusCode::OK);
        });
    }

    /// Source: RFC 9110, section 14.1 and 8.8.3.3: a part is one of the form that is sent.
    #[test]
    fn a_part_is_cut_from_the_form_that_is_sent() {
        now(async {
            let lines = [(ACCEPT_ENCODING, "br"), (RANGE, "bytes=0-7")];
            let part = ask::<Sample>("/assets/sample.js", &lines).await;
            assert_eq!(part.status(), StatusCode::PARTIAL_CONTENT);
            assert_eq!(line(&part, &CONTENT_ENCODING), "br");
            let form = Sample::get("assets/sample.js.br").unwrap().data;
            assert_eq!(line(&part, &CONTENT_RANGE), format!("bytes 0-7/{}", form.len()));
            assert_eq!(text(part).await.as_bytes(), &form[..8]);
        });
    }

    /// Source: RFC 9110, section 13.1.5 (strong comparison; a date that is not ours does not match), section 14.2
    /// (other methods than GET ignore a range), section 13.2.2 (what is known is said first).
    #[test]
    fn a_part_of_another_version_is_never_sent() {
        now(async {
            let tag = line(&ask::<Sample>(DIGITS, &[]).await, &ETAG);
            for (version, status) in [
                (tag.clone(), StatusCode::PARTIAL_CONTENT),
                (format!("W/{tag}"), StatusCode::OK),
                ("\"other\"".to_owned(), StatusCode::OK),
                (format!("{tag}, \"other\""), StatusCode::OK),
                ("*".to_owned(), StatusCode::OK),
                ("Sat, 29 Oct 1994 19:43:31 GMT".to_owned(), StatusCode::OK),
            ] {
                let response = ask::<Sample>(DIGITS, &[(RANGE, "bytes=1-2"), (IF_RANGE, &version)]).await;
                assert_eq!(response.status(), status, "{version}");
            }
            let request = head("HEAD", DIGITS).header(RANGE, "bytes=1-2").body(Body::empty()).unwrap();
            assert_eq!(asked::<Sample>(request).await.status(), StatusCode::OK);
            let known = ask::<Sample>(DIGITS, &[(RANGE, "bytes=1-2"), (IF_NONE_MATCH, &tag)]).await;
            assert_eq!(known.status(), StatusCode::NOT_MODIFIED);
        });
    }

    async fn comes_with_its_kind_its_tag_and_its_smallest_form<S: RustEmbed + 'static>() {
        let is_plain = |name: &String| ![".br", ".gz"].iter().any(|ending| name.ends_with(ending));
        for name in S::iter().map(String::from).filter(is_plain) {
            let path = format!("/{name}");
            let plain = ask::<S>(&path, &[]).await;
            assert_eq!(plain.status(), StatusCode::OK, "{name}");
            assert_eq!(line(&plain, &CONTENT_ENCODING), "", "{name}");
            let tag = line(&plain, &ETAG);
            let again = ask::<S>(&path, &[(IF_NONE_MATCH, &tag)]).await;
            assert_eq!(again.status(), StatusCode::NOT_MODIFIED, "{name}");
            let small = ask::<S>(&path, &[(ACCEPT_ENCODING, "gzip, br")]).await;
            let has_copy = S::get(&format!("{name}.br")).is_some();
            assert_eq!(line(&small, &CONTENT_ENCODING) == "br", has_copy, "{name}");
            assert_eq!(line(&small, &ETAG) == tag, !has_copy, "{name}");
            let copy = ask::<S>(&format!("{path}.br"), &[]).await;
            assert_eq!(copy.status(), StatusCode::NOT_FOUND, "{name}");
        }
    }

    /// Of the built site too, whatever it holds; where there is none, there is nothing to ask for.
    #[test]
    fn every_file_comes_with_its_kind_its_tag_and_its_smallest_form() {
        assert!(Sample::get("assets/sample.js.br").is_some());
        now(async {
            comes_with_its_kind_its_tag_and_its_smallest_form::<Sample>().await;
            comes_with_its_kind_its_tag_and_its_smallest_form::<Site>().await;
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
    fn what_is_not_valid_in_a_line_is_as_if_it_were_not_there() {
        now(async {
            for name in [IF_MATCH, IF_NONE_MATCH, IF_RANGE, RANGE, ACCEPT_ENCODING] {
                let name: HeaderName = name;
                let request =
                    head("GET", DIGITS).header(&name, &b"\xff\xfe"[..]).body(Body::empty()).unwrap();
                assert_eq!(asked::<Sample>(request).await.status(), StatusCode::OK, "{name}");
            }
        });
    }
}
