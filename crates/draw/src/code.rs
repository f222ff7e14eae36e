//! A text as a code that a phone's camera reads (QR, ISO/IEC 18004), as one picture.

use crate::svg::{Caption, Markup, Svg};
use qrcodegen::{QrCode, QrCodeEcc};
use std::fmt::Write;

/// Empty modules around the code, as the standard asks.
const QUIET: i32 = 4;

/// The most bytes of a text that becomes a code: of more a phone does not read it off a screen.
pub const LONGEST_CODE: usize = 1200;

/// The code of a text, dark on light whatever the page is, since cameras want that; nothing for a text of more than
/// [`LONGEST_CODE`] bytes. `title` says what it is for.
///
/// ```
/// assert!(draw::code("https://example.org/#/trace", "Link").is_some());
/// assert!(draw::code(&"x".repeat(draw::LONGEST_CODE + 1), "Link").is_none());
/// ```
pub fn code(text: &str, title: &str) -> Option<Svg> {
    let short = (text.len() <= LONGEST_CODE).then_some(text)?;
    let code = QrCode::encode_text(short, QrCodeEcc::Low).ok()?;
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let run = (x..code.size()).take_while(|&at| code.get_module(at, y)).count() as i32;
            if run > 0 {
                // Writing to a string cannot fail.
                let _ = write!(path, "M{} {}h{run}v1h-{run}z", x + QUIET, y + QUIET);
            }
            x += run.max(1);
        }
    }
    let side = f64::from(code.size() + 2 * QUIET);
    let mut markup = Markup::picture(&Caption::new(title), [0.0, 0.0, side, side], 4.0);
    markup.tag("rect").with("width", side).with("height", side).with("fill", "#fff").empty();
    markup.tag("path").with("d", path).with("fill", "#000").with("shape-rendering", "crispEdges").empty();
    Some(markup.finish())
}
