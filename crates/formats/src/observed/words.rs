//! The words and signs of what people tell, in every language that is spoken; whichever is spoken, all are read.

use super::KINDS;
use blind::kind_named;
use cube::Orbit;

/// What a sign or a word is, before it is known what stands beside it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(super) enum Mark {
    Word(String),
    /// From one place to the next.
    Arrow,
    /// Between two that are exchanged.
    Both,
    /// Between things of one list.
    Comma,
    /// Between colours of a piece; elsewhere as a comma.
    Slash,
    /// Between items.
    Stop,
    Colon,
    Query,
    Open,
    Close,
    /// Anything else.
    Other(char),
}

/// A sign or a word with its column, from 1.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(super) struct Token {
    pub(super) column: usize,
    pub(super) mark: Mark,
}

/// What a known word says.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Meaning {
    /// Nothing of its own.
    Filler,
    /// "a": one, before a kind.
    Article,
    And,
    To,
    Swapped,
    Cycle,
    Flipped,
    Twisted,
    /// Flipped or twisted, as the piece is.
    Turned,
    Clockwise,
    /// The other way than the word after it.
    Against,
    Counter,
    Unsolved,
    Solved,
    Not,
    Looked,
    Unknown,
    Only,
    Rest,
    Nothing,
    Number(usize),
    Kind(Orbit),
}

use Meaning as M;

/// English and German words by what they say.
const WORDS: &[(Meaning, &[&str])] = &[
    (
        M::Filler,
        &[
            "the",
            "is",
            "are",
            "was",
            "were",
            "in",
            "at",
            "of",
            "each",
            "piece",
            "pieces",
            "sticker",
            "stickers",
            "goes",
            "go",
            "belongs",
            "belong",
            "these",
            "everything",
            "all",
            "it",
            "been",
            "has",
            "have",
            "still",
            "way",
            "round",
            "der",
            "die",
            "das",
            "den",
            "dem",
            "des",
            "ist",
            "sind",
            "war",
            "waren",
            "im",
            "bei",
            "am",
            "stein",
            "steine",
            "steinen",
            "geht",
            "gehen",
            "gehört",
            "gehören",
            "diese",
            "alles",
            "sich",
            "wurde",
            "wurden",
            "noch",
            "miteinander",
            "herum",
            "my",
            "meine",
            "letter",
            "letters",
            "buchstabe",
            "buchstaben",
        ],
    ),
    (M::Article, &["a", "an", "ein", "eine", "einen", "einer", "einem"]),
    (M::And, &["and", "with", "plus", "und", "mit", "sowie"]),
    (M::To, &["to", "nach", "zu"]),
    (
        M::Swapped,
        &["swapped", "exchanged", "switched", "swap", "vertauscht", "getauscht", "vertauschte", "tausch"],
    ),
    (
        M::Cycle,
        &[
            "cycle",
            "cycled",
            "cyclic",
            "zyklus",
            "kreis",
            "zyklisch",
            "dreierzyklus",
            "3-cycle",
            "three-cycle",
        ],
    ),
    (M::Flipped, &["flipped", "flip", "gekippt", "geflippt", "kippt", "gekippte"]),
    (M::Twisted, &["twisted", "twist", "verdreht", "verdrehte"]),
    (M::Turned, &["turned", "rotated", "misoriented", "gedreht", "gedrehte"]),
    (M::Clockwise, &["clockwise", "cw", "uhrzeigersinn"]),
    (M::Against, &["counter", "anti", "against", "gegen"]),
    (
        M::Counter,
        &[
            "counter-clockwise",
            "counterclockwise",
            "anti-clockwise",
            "anticlockwise",
            "ccw",
            "gegenuhrzeigersinn",
        ],
    ),
    (
        M::Unsolved,
        &[
            "unsolved",
            "wrong",
            "incorrect",
            "ungelöst",
            "falsch",
            "ungelöste",
            "ungelösten",
            "falsche",
            "falschen",
        ],
    ),
    (M::Solved, &["solved", "right", "correct", "ok", "fine", "gelöst", "richtig", "korrekt"]),
    (M::Not, &["not", "nicht"]),
    (
        M::Looked,
        &[
            "looked",
            "seen",
            "checked",
            "noticed",
            "angesehen",
            "angeschaut",
            "gesehen",
            "nachgesehen",
            "geprüft",
        ],
    ),
    (M::Unknown, &["unknown", "unseen", "unbekannt"]),
    (M::Only, &["only", "just", "nur"]),
    (
        M::Rest,
        &[
            "rest",
            "else",
            "other",
            "others",
            "remaining",
            "sonst",
            "andere",
            "anderen",
            "anderes",
            "übrige",
            "übrigen",
        ],
    ),
    (M::Nothing, &["nothing", "no", "none", "nichts", "kein", "keine", "keinen"]),
    (M::Number(0), &["zero", "null"]),
    (M::Number(1), &["one", "eins"]),
    (M::Number(2), &["two", "zwei", "zwo"]),
    (M::Number(3), &["three", "drei"]),
    (M::Number(4), &["four", "vier"]),
    (M::Number(5), &["five", "fünf"]),
    (M::Number(6), &["six", "sechs"]),
    (M::Number(7), &["seven", "sieben"]),
    (M::Number(8), &["eight", "acht"]),
    (M::Number(9), &["nine", "neun"]),
    (M::Number(10), &["ten", "zehn"]),
    (M::Number(11), &["eleven", "elf"]),
    (M::Number(12), &["twelve", "zwölf"]),
    (M::Kind(Orbit::Corner), &["ecke", "ecken", "eckstein", "ecksteine"]),
    (M::Kind(Orbit::Midge), &["midge", "midges", "kante", "kanten", "kantenstein", "kantensteine"]),
];

/// A word as it is compared: small, `ü` also where it is written in two signs.
pub(super) fn small(word: &str) -> String {
    let small = word.to_lowercase();
    [("a\u{308}", "ä"), ("o\u{308}", "ö"), ("u\u{308}", "ü")]
        .iter()
        .fold(small, |text, (apart, sign)| text.replace(apart, sign))
}

/// What a word says, if it is known.
pub(super) fn meaning(word: &str) -> Option<Meaning> {
    let word = small(word);
    if word.bytes().all(|byte| byte.is_ascii_digit()) {
        return word.parse().ok().map(M::Number);
    }
    let kind = kind_named(word.strip_suffix('s').unwrap_or(&word)).filter(|orbit| KINDS.contains(orbit));
    if let Some(orbit) = kind {
        return Some(M::Kind(orbit));
    }
    let spelled = |known: &&str| {
        **known == word || known.replace('ä', "ae").replace('ö', "oe").replace('ü', "ue") == word
    };
    WORDS.iter().find(|(_, words)| words.iter().any(spelled)).map(|&(meaning, _)| meaning)
}

const fn is_hyphen(sign: char) -> bool {
    matches!(sign, '-' | '\u{2010}' | '\u{2011}')
}

const fn is_dash(sign: char) -> bool {
    is_hyphen(sign) || matches!(sign, '–' | '—' | '−' | '=')
}

fn mark(sign: char) -> Option<Mark> {
    Some(match sign {
        ',' | '&' | '+' | '|' => Mark::Comma,
        '/' => Mark::Slash,
        ';' | '.' | '!' => Mark::Stop,
        ':' => Mark::Colon,
        '?' => Mark::Query,
        '(' | '[' | '{' => Mark::Open,
        ')' | ']' | '}' => Mark::Close,
        '>' | '→' | '⇒' | '➔' | '➜' | '➝' | '➞' | '⟶' | '⟹' | '»' | '›' => Mark::Arrow,
        '↔' | '⇔' | '⇄' | '⇆' | '⟷' => Mark::Both,
        '<' | '←' | '"' | '“' | '”' | '„' => Mark::Other(sign),
        _ => return None,
    })
}

/// The signs and words of a text.
pub(super) fn tokens(text: &str) -> Vec<Token> {
    let signs: Vec<char> = text.chars().collect();
    let mut tokens: Vec<Token> = Vec::new();
    let mut at = 0;
    while let Some(&sign) = signs.get(at) {
        let column = at + 1;
        let mut push = |mark: Mark| tokens.push(Token { column, mark });
        at += 1;
        if sign == '\n' {
            push(Mark::Stop);
            continue;
        }
        if sign.is_whitespace() || sign.is_control() {
            continue;
        }
        // Arrows of several signs: ->, =>, <->.
        let from = if sign == '<' { at } else { at - 1 };
        let head = from + signs[from..].iter().take_while(|&&sign| is_dash(sign)).count();
        if (head > from || sign == '<') && signs.get(head) == Some(&'>') {
            push(if sign == '<' { Mark::Both } else { Mark::Arrow });
            at = head + 1;
            continue;
        }
        if is_dash(sign) {
            push(Mark::Comma);
            continue;
        }
        if let Some(mark) = mark(sign) {
            push(mark);
            continue;
        }
        let within = |at: usize| {
            signs.get(at).is_some_and(|&sign| {
                !sign.is_whitespace() && !sign.is_control() && !is_dash(sign) && mark(sign).is_none()
            })
        };
        // A hyphen between two words is part of one.
        while within(at) || (signs.get(at).is_some_and(|&sign| is_hyphen(sign)) && within(at + 1)) {
            at += 1;
        }
        let word = signs[column - 1..at].iter().map(|&sign| if is_hyphen(sign) { '-' } else { sign });
        push(Mark::Word(word.collect()));
    }
    tokens
}
