//! Moves among words: what of a cell is an algorithm, and what is a remark.

use super::table::Line;
use cube::{Algorithm, Orbit, plain_sign};
use sheet::{MOST_TURNS, SIZE};

/// Fewer turns than these are a letter, a sticker or a sign for something else.
const FEW: usize = 4;

/// How many algorithms are applied to tell a kind.
const APPLIED: usize = 200;

/// Brackets that a remark may stand in.
const BRACKETS: [(char, char); 3] = [('(', ')'), ('[', ']'), ('{', '}')];

/// Whatever kind it is for: the largest size has every turn.
fn parses(text: &str) -> Option<usize> {
    blind::sizeless(text).ok().map(|read| read.len()).filter(|&length| length > 0)
}

/// Whether a text names stickers and nothing else; such names are turns as well.
pub(super) fn names_only(text: &str) -> bool {
    let mut words = text.split(|sign: char| !sign.is_alphabetic()).filter(|word| !word.is_empty()).peekable();
    let is_name = |word: &str| {
        let word = word.to_uppercase();
        Orbit::of(SIZE).iter().any(|orbit| orbit.sticker(&word).is_some())
    };
    words.peek().is_some() && words.all(is_name) && !text.contains(['\'', '’', '[', '2'])
}

/// Whether there are words in a text that are no moves.
pub(super) fn has_words(text: &str) -> bool {
    let mut words = text.split(|sign: char| !sign.is_alphabetic());
    words.any(|word| word.chars().count() > 2 && parses(word).is_none())
}

/// Whether a cell has an algorithm in it, the first where there are several.
pub(super) fn is_algorithm(text: &str) -> bool {
    let first = text.lines().next().unwrap_or_default();
    let first = first.split("//").next().unwrap_or_default().split(" / ").next().unwrap_or_default().trim();
    let long = |text: &str| parses(text).is_some_and(|length| length >= FEW);
    !names_only(first) && (long(first) || moves_and_note(first).is_some_and(|(moves, _)| long(&moves)))
}

/// The kind of piece that most algorithms of a table cycle.
pub(super) fn kind_by_algorithms(lines: &[Line]) -> Option<Orbit> {
    let cells = lines.iter().flat_map(|(_, cells)| cells).filter_map(|cell| cell.lines().next());
    let algorithms = cells.filter(|cell| !names_only(cell)).filter_map(|cell| {
        let read = Algorithm::parse(cell, SIZE).ok()?;
        (FEW..=MOST_TURNS).contains(&read.len()).then_some(read)
    });
    sheet::kind_cycled(algorithms.take(APPLIED))
}

/// What of a text is moves, and what is a remark, where it is not moves as a whole: a number before them, a word and a colon,
/// what stands in brackets and is no moves, or words behind. `None` where it is moves as a whole, or where none are found.
pub(super) fn moves_and_note(text: &str) -> Option<(String, String)> {
    // What is that long is no algorithm with a remark.
    if text.len() > 2000 || parses(text).is_some() {
        return None;
    }
    let mut notes: Vec<String> = Vec::new();
    let mut rest = text.trim().to_owned();
    if let Some((number, after)) = numbered(&rest) {
        notes.push(number.to_owned());
        rest = after.to_owned();
    }
    // A word and a colon that is not that of a bracket.
    if let Some((word, after)) = rest.split_once([':', '：'])
        && !word.contains(['[', '［'])
        && parses(word).is_none()
        && word.chars().filter(|sign| sign.is_alphabetic()).count() > 1
    {
        notes.push(word.trim().to_owned());
        rest = after.trim().to_owned();
    }
    while parses(&rest).is_none() {
        let Some((remark, without)) = bracketed(&rest) else { break };
        notes.push(remark);
        rest = without;
    }
    if parses(&rest).is_none() {
        // Words behind: the longest beginning, up to a blank, that is moves.
        let ends: Vec<usize> = rest.match_indices(char::is_whitespace).map(|(at, _)| at).collect();
        let end = ends.into_iter().rev().take(60).find(|&end| {
            let behind = rest[end..].trim_start_matches([' ', '-', '–', '—', '#', ';', ',']);
            let word: String = behind.chars().take_while(|sign| sign.is_alphabetic()).collect();
            word.chars().count() > 1 && parses(&word).is_none() && parses(&rest[..end]).is_some()
        })?;
        notes.push(rest[end..].trim().to_owned());
        rest.truncate(end);
    }
    let moves = rest.trim().to_owned();
    (!notes.is_empty() && parses(&moves).is_some()).then(|| (moves, notes.join("; ")))
}

/// A number with a point, a colon or a bracket behind it, and the rest: `1.`, `2)`, `#3`, `(4)`.
fn numbered(text: &str) -> Option<(&str, &str)> {
    let start = text.trim_start_matches(['#', '(']);
    let lead = text.len() - start.len();
    let digits = start.chars().take_while(char::is_ascii_digit).count();
    let behind = &start[digits..];
    let sign = behind.chars().next()?;
    let ends = matches!(plain_sign(sign), '.' | ')' | ':') || (lead > 0 && sign.is_whitespace());
    if digits == 0 || digits > 4 || !ends {
        return None;
    }
    let end = lead + digits + sign.len_utf8();
    Some((text[..end].trim(), text[end..].trim()))
}

/// The first remark in brackets, and the text without it.
fn bracketed(text: &str) -> Option<(String, String)> {
    for (at, open) in text.char_indices() {
        let Some((_, close)) = BRACKETS.into_iter().find(|(sign, _)| *sign == plain_sign(open)) else {
            continue;
        };
        let inside = &text[at + open.len_utf8()..];
        let Some((end, sign)) = inside.char_indices().find(|(_, sign)| plain_sign(*sign) == close) else {
            continue;
        };
        let remark = inside[..end].trim();
        let is_words = remark.chars().filter(|sign| sign.is_alphanumeric()).count() > 0
            && parses(remark).is_none()
            && parses(&format!("[{remark}]")).is_none();
        if is_words {
            let behind = &inside[end + sign.len_utf8()..];
            return Some((remark.to_owned(), format!("{} {}", &text[..at], behind).trim().to_owned()));
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn moves_are_found_among_words() {
        for (text, moves, note) in [
            ("1. R U R' U'", "R U R' U'", "1."),
            ("(2) R U R' U'", "R U R' U'", "(2)"),
            ("Lefty: R U R' U'", "R U R' U'", "Lefty"),
            ("R U R' U' (nice one)", "R U R' U'", "nice one"),
            ("[R' D' R, U] {old}", "[R' D' R, U]", "old"),
            ("3) easy: [R' D' R, U] (my best)", "[R' D' R, U]", "3); easy; my best"),
            ("R U R' U' - from the left", "R U R' U'", "- from the left"),
            ("R U R' U' wrist", "R U R' U'", "wrist"),
        ] {
            assert_eq!(moves_and_note(text), Some((moves.to_owned(), note.to_owned())), "{text}");
        }
        // Moves as a whole, and what has none.
        for text in ["R U R' U'", "(R U)2", "[R: U]", "", "nothing", "to do", "R U K", "12", "[R' D' R, U"] {
            assert_eq!(moves_and_note(text), None, "{text}");
        }
    }

    #[test]
    fn names_are_no_algorithms() {
        for (text, is) in [
            ("UFR RDF", false),
            ("UFR-RDF", false),
            ("R U R' U'", true),
            ("R U", false),
            ("x", false),
            ("1. [R' D' R, U]", true),
        ] {
            assert_eq!(is_algorithm(text), is, "{text}");
        }
    }
}
