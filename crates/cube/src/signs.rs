//! Signs that are written in more than one way.

/// A full-width sign as the plain one, a wide blank as a blank; any other sign as it is.
///
/// Unicode, Halfwidth and Fullwidth Forms: U+FF01 to U+FF5E in the order of ASCII; U+3000 is the wide blank.
///
/// ```
/// use cube::plain_sign;
/// assert_eq!("Ｒ２＇　é".chars().map(plain_sign).collect::<String>(), "R2' é");
/// ```
pub const fn plain_sign(sign: char) -> char {
    match sign {
        '\u{ff01}'..='\u{ff5e}' => (sign as u32 - 0xff01 + 0x21) as u8 as char,
        '\u{3000}' => ' ',
        _ => sign,
    }
}

/// Whether a sign is written for a prime (common practice, no source: what keyboards and programs make of an apostrophe).
pub const fn is_prime(sign: char) -> bool {
    matches!(
        plain_sign(sign),
        '\'' | '’' | '‘' | '‛' | '′' | '‵' | 'ʹ' | 'ʼ' | 'ʻ' | 'ˈ' | '´' | '`' | '\u{301}' | '\u{300}'
    )
}
