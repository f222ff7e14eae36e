//! Answers in words: what is said where no file is given.

use axum::body::Body;
use axum::http::{HeaderValue, Response, StatusCode, header};
use axum::response::IntoResponse;
use maud::{DOCTYPE, html};
use voice::Voice;

/// A sentence of the catalogues as plain text.
pub(crate) fn sentence(
    voice: &Voice,
    status: StatusCode,
    message: &str,
    blanks: &[(&str, &str)],
) -> Response<Body> {
    let blanks: Vec<_> = blanks.iter().map(|(name, text)| (*name, (*text).into())).collect();
    let text = voice.say(message, &blanks) + "\n";
    let kind = HeaderValue::from_static("text/plain; charset=utf-8");
    (status, [(header::CONTENT_TYPE, kind), language(voice), not_kept()], text).into_response()
}

/// The page that a program serves which was built without the site.
pub(crate) fn not_built(voice: &Voice) -> Response<Body> {
    let page = html! {
        (DOCTYPE)
        html lang=(voice.language().tag()) {
            meta charset="utf-8";
            meta name="viewport" content="width=device-width, initial-scale=1";
            title { (voice.word("not-built-title")) }
            h1 { (voice.word("not-built-heading")) }
            p { (voice.word("not-built-before")) }
            pre { "cargo xtask start" }
            p { (voice.word("not-built-after")) }
            p { (voice.word("not-built-alone")) }
            pre { "cargo xtask site" }
        }
    };
    let kind = HeaderValue::from_static("text/html; charset=utf-8");
    ([(header::CONTENT_TYPE, kind), language(voice), not_kept()], page.into_string()).into_response()
}

fn language(voice: &Voice) -> (header::HeaderName, HeaderValue) {
    (header::CONTENT_LANGUAGE, HeaderValue::from_static(voice.language().tag()))
}

/// What is true now need not be true at the next start.
fn not_kept() -> (header::HeaderName, HeaderValue) {
    (header::CACHE_CONTROL, HeaderValue::from_static("no-store"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample::{line, now, text};
    use voice::Language;

    #[test]
    fn the_page_of_a_program_without_screens_says_how_to_get_them() {
        now(async {
            for (language, word) in [(Language::English, "not built"), (Language::German, "nicht gebaut")] {
                let page = not_built(&Voice::new(language));
                assert_eq!(line(&page, &header::CONTENT_TYPE), "text/html; charset=utf-8");
                let page = text(page).await;
                assert!(page.starts_with("<!DOCTYPE html>"), "{page}");
                assert!(page.contains(&format!("lang=\"{}\"", language.tag())), "{page}");
                for part in [word, "Hoodwink", "<pre>cargo xtask start</pre>", "<pre>cargo xtask site</pre>"]
                {
                    assert!(page.contains(part), "{part} in {page}");
                }
            }
        });
    }
}
