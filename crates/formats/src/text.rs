//! From bytes to text, as programs for tables and old systems write it.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;

/// How a text was written.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Written {
    /// UTF-8, with its mark or without.
    Utf8,
    /// UTF-16, either byte first, with its mark; or without, where every other byte tells.
    Utf16,
    /// One byte a sign: Windows-1252, which has Latin-1 in it.
    Windows1252,
}

/// What Windows-1252 has where Latin-1 has control signs, from 0x80. The five that it leaves open are the control signs.
///
/// Source: WHATWG Encoding Standard, index windows-1252.
const HIGH: [char; 32] = [
    '€', '\u{81}', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\u{8d}', 'Ž', '\u{8f}', '\u{90}',
    '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', '\u{9d}', 'ž', 'Ÿ',
];

/// The text of some bytes, without the mark at its beginning, and how it was written; `None` for what is no text: half a sign of
/// UTF-16, or signs that no text has.
///
/// ```
/// use formats::text::{Written, read};
/// assert_eq!(read(b"\xff\xfeR\0'\0"), Some(("R'".to_owned(), Written::Utf16)));
/// assert_eq!(read(b"Z\xfcge \x92"), Some(("Züge ’".to_owned(), Written::Windows1252)));
/// assert_eq!(read(b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR"), None);
/// ```
pub fn read(bytes: &[u8]) -> Option<(String, Written)> {
    let found = if let Some(rest) = bytes.strip_prefix(b"\xef\xbb\xbf") {
        (String::from_utf8(rest.to_vec()).ok()?, Written::Utf8)
    } else if let Some(rest) = bytes.strip_prefix(b"\xff\xfe") {
        (utf16(rest, u16::from_le_bytes)?, Written::Utf16)
    } else if let Some(rest) = bytes.strip_prefix(b"\xfe\xff") {
        (utf16(rest, u16::from_be_bytes)?, Written::Utf16)
    } else if let Some(order) = without_mark(bytes) {
        (utf16(bytes, order)?, Written::Utf16)
    } else {
        match std::str::from_utf8(bytes) {
            Ok(text) => (text.to_owned(), Written::Utf8),
            Err(_) => (bytes.iter().map(|&byte| windows_1252(byte)).collect(), Written::Windows1252),
        }
    };
    let no_text = |sign: char| sign < ' ' && !matches!(sign, '\t' | '\n' | '\r' | '\u{b}' | '\u{c}');
    (!found.0.contains(no_text)).then_some(found)
}

/// The bytes that a text in base64 stands for, as addresses of data have them; `None` where it is none.
pub fn from_base64(text: &str) -> Option<Vec<u8>> {
    STANDARD.decode(text).ok()
}

const fn windows_1252(byte: u8) -> char {
    match byte {
        0x80..=0x9f => HIGH[byte as usize - 0x80],
        _ => byte as char,
    }
}

fn utf16(bytes: &[u8], order: fn([u8; 2]) -> u16) -> Option<String> {
    let (units, rest) = bytes.as_chunks::<2>();
    let units = units.iter().map(|&unit| order(unit));
    rest.is_empty().then(|| char::decode_utf16(units).collect::<Result<_, _>>().ok())?
}

/// UTF-16 without its mark: signs of ASCII for the most part, every other byte of which is nothing.
fn without_mark(bytes: &[u8]) -> Option<fn([u8; 2]) -> u16> {
    let seen = &bytes[..bytes.len().min(1 << 10)];
    let (pairs, _) = seen.as_chunks::<2>();
    let most = |at: usize| {
        let nothing = pairs.iter().filter(|pair| pair[at] == 0 && pair[1 - at] != 0).count();
        !pairs.is_empty() && nothing * 4 >= pairs.len() * 3
    };
    match (most(1), most(0)) {
        (true, false) => Some(u16::from_le_bytes),
        (false, true) => Some(u16::from_be_bytes),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// Judged by `encoding_rs`, which follows the WHATWG Encoding Standard.
        #[test]
        fn texts_are_read_as_they_were_written(text in "[ -~\\n€ü’„R]{1,40}") {
            let (bytes, _, lost) = encoding_rs::WINDOWS_1252.encode(&text);
            prop_assert!(!lost);
            let read_back = read(&bytes).unwrap();
            // Bytes that are UTF-8 by chance are taken for it.
            let expected = std::str::from_utf8(&bytes).map_or(text.clone(), str::to_owned);
            prop_assert_eq!(read_back.0, expected);
            for (order, mark) in [(u16::to_le_bytes as fn(u16) -> [u8; 2], b"\xff\xfe"), (u16::to_be_bytes, b"\xfe\xff")] {
                let units: Vec<u8> = text.encode_utf16().flat_map(order).collect();
                let with_mark = [&mark[..], &units].concat();
                let judged = encoding_rs::Encoding::for_bom(&with_mark).unwrap().0.decode(&with_mark).0.into_owned();
                prop_assert_eq!(read(&with_mark), Some((judged, Written::Utf16)));
            }
        }

        #[test]
        fn any_bytes_are_text_or_none(bytes in prop::collection::vec(any::<u8>(), 0..60)) {
            let _ = read(&bytes);
        }

        /// Judged by `encoding_rs`.
        #[test]
        fn every_byte_has_its_sign(byte in 0x80u8..) {
            let judged = encoding_rs::WINDOWS_1252.decode(&[byte]).0.into_owned();
            prop_assert_eq!(windows_1252(byte).to_string(), judged);
        }
    }
}
