//! The answer for one file in the form that was selected: conditions, parts, and the header lines that go with them.

use std::borrow::Cow;
use std::ops::Range;

use axum::body::Body;
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, Response, StatusCode, header};
use axum::response::IntoResponse;
use voice::Voice;

use crate::encoding::Coding;
use crate::range::{Part, part};
use crate::sentence::sentence;
use crate::tags::{Named, Tag};

/// A file in the form that the browser can read best.
pub(crate) struct Selected {
    /// The bytes, in this form.
    pub(crate) bytes: Cow<'static, [u8]>,
    /// Tells the versions and forms of the file apart; without quotation marks.
    pub(crate) tag: String,
    /// The form, if it is not the plain one.
    pub(crate) coding: Option<Coding>,
    /// The media type of the plain form.
    pub(crate) kind: String,
    /// How long a browser keeps it.
    pub(crate) keeping: &'static str,
}

impl Selected {
    /// The answer to a request for this file. The conditions are asked in the order of RFC 9110, section 13.2.2; those
    /// by date are ignored, since no dates are kept (sections 13.1.3 and 13.1.4).
    pub(crate) fn answer(self, method: &Method, headers: &HeaderMap, voice: &Voice) -> Response<Body> {
        let tag = Tag { weak: false, text: &self.tag };
        if list(headers, &header::IF_MATCH)
            .is_some_and(|line| !Named::read(&line).contains(|known| known.same_bytes(tag)))
        {
            return sentence(voice, StatusCode::PRECONDITION_FAILED, "serve-other-version", &[]);
        }
        if list(headers, &header::IF_NONE_MATCH)
            .is_some_and(|line| Named::read(&line).contains(|known| known.as_good(tag)))
        {
            return self.not_modified();
        }
        match self.part(method, headers) {
            Part::Whole => self.whole(),
            Part::Bytes(range) => self.some(range),
            Part::Outside => self.outside(voice),
        }
    }

    /// Which part is asked for. Parts are defined for GET alone (RFC 9110, section 14.2), and `If-Range` must name
    /// these bytes (section 13.1.5).
    fn part(&self, method: &Method, headers: &HeaderMap) -> Part {
        let tag = Tag { weak: false, text: &self.tag };
        let other_version = list(headers, &header::IF_RANGE).is_some_and(|line| match Named::read(&line) {
            Named::Tags(named) => !matches!(named[..], [named] if named.same_bytes(tag)),
            Named::Any => true,
        });
        match list(headers, &header::RANGE) {
            Some(line) if *method == Method::GET && !other_version => part(&line, self.bytes.len()),
            Some(_) | None => Part::Whole,
        }
    }

    fn whole(self) -> Response<Body> {
        let lines = self.lines();
        (lines, self.content_lines(), Body::from(self.bytes)).into_response()
    }

    /// Source: RFC 9110, section 15.3.7.
    fn some(self, range: Range<usize>) -> Response<Body> {
        let place = format!("bytes {}-{}/{}", range.start, range.end - 1, self.bytes.len());
        let (lines, content_lines) = (self.lines(), self.content_lines());
        let bytes: Cow<'static, [u8]> = match self.bytes {
            Cow::Borrowed(bytes) => bytes.get(range).unwrap_or_default().into(),
            Cow::Owned(bytes) => bytes.get(range).unwrap_or_default().to_vec().into(),
        };
        let place = [(header::CONTENT_RANGE, place)];
        (StatusCode::PARTIAL_CONTENT, lines, content_lines, place, Body::from(bytes)).into_response()
    }

    /// Source: RFC 9110, section 15.5.17.
    fn outside(&self, voice: &Voice) -> Response<Body> {
        let length = self.bytes.len().to_string();
        let place = [(header::CONTENT_RANGE, format!("bytes */{length}"))];
        let said =
            sentence(voice, StatusCode::RANGE_NOT_SATISFIABLE, "serve-outside", &[("length", &length)]);
        (place, said).into_response()
    }

    /// Source: RFC 9110, section 15.4.5. The length, if it is named, is that of the file (section 8.6); without this
    /// line the router would name the nothing that is sent.
    fn not_modified(&self) -> Response<Body> {
        let length = [(header::CONTENT_LENGTH, self.bytes.len().to_string())];
        (StatusCode::NOT_MODIFIED, self.lines(), length).into_response()
    }

    /// What is said of the file in every answer about it.
    fn lines(&self) -> [(HeaderName, String); 4] {
        [
            (header::ETAG, format!("\"{}\"", self.tag)),
            (header::CACHE_CONTROL, self.keeping.to_owned()),
            (header::VARY, "accept-encoding".to_owned()),
            (header::ACCEPT_RANGES, "bytes".to_owned()),
        ]
    }

    /// What is said of the content where it follows.
    fn content_lines(&self) -> HeaderMap {
        let kind = HeaderValue::from_str(&self.kind).ok().map(|kind| (header::CONTENT_TYPE, kind));
        let coding = self.coding.map(|coding| HeaderValue::from_static(coding.token()));
        kind.into_iter().chain(coding.map(|coding| (header::CONTENT_ENCODING, coding))).collect()
    }
}

/// All lines of a name as one list; `None` without any, or with signs that no such line has.
pub(crate) fn list(headers: &HeaderMap, name: &HeaderName) -> Option<String> {
    let lines: Result<Vec<_>, _> = headers.get_all(name).iter().map(HeaderValue::to_str).collect();
    lines.ok().filter(|lines| !lines.is_empty()).map(|lines| lines.join(", "))
}
