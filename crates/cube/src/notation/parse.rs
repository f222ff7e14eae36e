//! Reading algorithms. The reader keeps its own stack, so that no text can exhaust the program's.

use super::{Algorithm, Form, MAX_DEPTH, MAX_MOVES, MAX_TEXT, Node};
use crate::signs::{is_prime, plain_sign as plain};
use crate::{Amount, Axis, Block, Face, NoSuchTurn, Size, Slice, Turn};
use std::fmt;
use thiserror::Error;

/// What would have been right at a place.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Expected {
    /// A turn or an opening bracket.
    Turn,
    /// A turn, or the bracket that closes a group.
    TurnOrClose,
    /// A comma or colon, which a square bracket needs between its two parts.
    Separator,
    /// The square bracket that closes a conjugate or commutator.
    CloseSquare,
    /// After a number of layers: a face.
    Face,
    /// A number of layers between 2 and what a cube may have.
    Layers,
    /// A space between a prime and a number, which would else be taken for an amount or for repeats.
    Space,
    /// A number of quarter turns of 1 to 3.
    Quarters,
    /// A number of repeats of 1 or more.
    Repeats,
}

impl fmt::Display for Expected {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Turn => "a turn (U L F R B D, wide, M E S, x y z) or an opening bracket",
            Self::TurnOrClose => "a turn or `)`",
            Self::Separator => "`,` or `:` between the two parts of a square bracket",
            Self::CloseSquare => "a turn or `]`",
            Self::Face => "a face after a number of layers (as 2R, 2-3R, 3Rw)",
            Self::Layers => "a number of layers, 2 or more (as 2R, 2-3R, 3Rw)",
            Self::Space => "a space between a prime and a number of layers (`R' 2U`; a half turn is `R2'`)",
            Self::Quarters => "an amount of 1, 2 or 3 quarter turns",
            Self::Repeats => "a number of repeats, 1 or more",
        })
    }
}

/// What is wrong with a text.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum ParseErrorKind {
    /// More than [`MAX_TEXT`] bytes.
    #[error("the text is {0} bytes long; at most {MAX_TEXT} are read")]
    TooLong(usize),
    /// More than [`MAX_MOVES`] turns.
    #[error("this stands for more than {MAX_MOVES} turns")]
    TooManyTurns,
    /// More than [`MAX_DEPTH`] brackets in one another.
    #[error("brackets are nested more than {MAX_DEPTH} deep")]
    TooDeep,
    /// Something else was expected.
    #[error("{}, but {expected} was expected", found.map_or("the text ends".to_owned(), |c| format!("`{c}` stands here")))]
    Unexpected {
        /// What stands there; `None` at the end of the text.
        found: Option<char>,
        /// What would do.
        expected: Expected,
    },
    /// An amount, or a number of repeats, behind a prime.
    #[error("the number stands before the prime: `{rather}`")]
    NumberAfterPrime {
        /// How it is written.
        rather: String,
    },
    /// A letter in the wrong case for what it seems to mean.
    #[error("`{found}` is no turn; `{rather}` is")]
    WrongCase {
        /// What stands there.
        found: char,
        /// The same letter as it is written.
        rather: char,
    },
    /// A turn that this size does not have.
    #[error(transparent)]
    NoSuchTurn(NoSuchTurn),
}

/// What a lower-case face letter stands for.
///
/// The notation of the standard has none. Most write `r` for `Rw`; some who solve bigger puzzles write it for the inner
/// layer alone (both common practice, no source).
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub enum LowerCase {
    /// `r` is `Rw`, `3r` is `3Rw`.
    #[default]
    Wide,
    /// `r` is `2R`, `3r` is `3R`, `2-3r` is `2-3R`, on sizes of 4 and more.
    ///
    /// A 3x3 has one inner layer, which M, E and S name, and a 2x2 none; there `r` is `Rw` as always.
    Inner,
}

impl LowerCase {
    /// Both ways.
    pub const ALL: [Self; 2] = [Self::Wide, Self::Inner];

    /// Its name in files.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Wide => "wide",
            Self::Inner => "inner",
        }
    }

    /// Whether a lower-case letter stands for inner layers on a size.
    pub const fn is_inner(self, size: Size) -> bool {
        match self {
            Self::Wide => false,
            Self::Inner => size.layers() > 3,
        }
    }
}

/// What is wrong with a text, and where.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[error("line {line}, column {column}: {kind}")]
pub struct ParseError {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// Bytes of the text before the place.
    pub offset: usize,
    /// What is wrong.
    pub kind: ParseErrorKind,
}

impl Algorithm {
    /// Reads an algorithm for a cube of this size.
    ///
    /// Turns may stand with or without spaces; a prime is `'`, `’`, `‘`, `′`, `ʹ`, `´` or `` ` ``; `//` begins a comment that
    /// goes on to the end of the line. `2R` is one inner layer, `2-3R` a block of them, `3Rw` the three outer ones. A
    /// lower-case face is a wide turn of two layers; [`Algorithm::parse_as`] reads it otherwise. Full-width signs are read
    /// as plain ones.
    ///
    /// A number that stands directly after a turn is its amount, and one directly after a closing bracket says how often the
    /// bracket is made; with a space between, it counts the layers of the next turn. So `(R U)2R` is `R U R U R`, and
    /// `(R U) 2R` is R, U, and then the second layer from R. After a prime a number needs the space.
    ///
    /// # Errors
    /// [`ParseError`] with line and column: the first place where the text is no algorithm, asks for a turn that
    /// the size does not have, or passes [`MAX_TEXT`], [`MAX_MOVES`] or [`MAX_DEPTH`].
    ///
    /// ```
    /// use cube::{Algorithm, Size, display_turns};
    /// let error = Algorithm::parse("R U\nF K", Size::THREE).unwrap_err();
    /// assert_eq!((error.line, error.column), (2, 3));
    /// let four = Size::new(4).unwrap();
    /// let turns = |text| display_turns(&Algorithm::parse(text, four).unwrap().flatten()).to_string();
    /// assert_eq!(turns("(R U)2R"), "R U R U R");
    /// assert_eq!(turns("(R U) 2R"), "R U 2R");
    /// ```
    pub fn parse(text: &str, size: Size) -> Result<Self, ParseError> {
        Self::parse_as(text, size, LowerCase::Wide)
    }

    /// As [`Algorithm::parse`], where it is said what a lower-case face letter stands for.
    ///
    /// # Errors
    /// As [`Algorithm::parse`].
    ///
    /// ```
    /// use cube::{Algorithm, LowerCase, Size};
    /// let four = Size::new(4).unwrap();
    /// let read = |size, lower_case| Algorithm::parse_as("r U2 r'", size, lower_case).unwrap().to_string();
    /// assert_eq!(read(four, LowerCase::Wide), "Rw U2 Rw'");
    /// assert_eq!(read(four, LowerCase::Inner), "2R U2 2R'");
    /// assert_eq!(read(Size::THREE, LowerCase::Inner), "Rw U2 Rw'");
    /// ```
    pub fn parse_as(text: &str, size: Size, lower_case: LowerCase) -> Result<Self, ParseError> {
        if text.len() > MAX_TEXT {
            return Err(ParseError {
                line: 1,
                column: 1,
                offset: 0,
                kind: ParseErrorKind::TooLong(text.len()),
            });
        }
        let mut reader = Reader::new(text, lower_case.is_inner(size));
        let nodes = reader.sequence(size)?;
        Ok(Self { size, nodes })
    }
}

impl Block {
    /// The block that a text names, as it stands in algorithms: `R`, `Rw` or `r`, `3Rw`, `2R`, `2-3R`, `M`, `x`.
    ///
    /// ```
    /// use cube::{Block, Face};
    /// assert_eq!(Block::parse("2-3R"), Some(Block::Inner { face: Face::R, first: 2, last: 3 }));
    /// assert_eq!(Block::parse("R2"), None);
    /// ```
    pub fn parse(text: &str) -> Option<Self> {
        let mut reader = Reader::new(text, false);
        let block = reader.block(Expected::Turn).ok()?;
        reader.peek().is_none().then_some(block)
    }
}

/// A bracket that is still open.
struct Open {
    at: usize,
    square: bool,
    /// The part before the separator, once that was read.
    first: Option<(Vec<Node>, bool)>,
    nodes: Vec<Node>,
    turns: usize,
    /// Turns of the part before the separator.
    turns_before: usize,
}

struct Reader {
    letters: Vec<char>,
    at: usize,
    /// Whether a lower-case face is an inner layer.
    lower_is_inner: bool,
}

/// The layers that stand before a face.
#[derive(Clone, Copy)]
enum Layers {
    Unsaid,
    One(u8),
    Range(u8, u8),
}

impl Reader {
    fn new(text: &str, lower_is_inner: bool) -> Self {
        Self { letters: text.chars().collect(), at: 0, lower_is_inner }
    }

    fn error(&self, at: usize, kind: ParseErrorKind) -> ParseError {
        let before = &self.letters[..at.min(self.letters.len())];
        let line = before.iter().filter(|&&letter| letter == '\n').count() + 1;
        let column = before.iter().rev().take_while(|&&letter| letter != '\n').count() + 1;
        let offset = before.iter().map(|letter| letter.len_utf8()).sum();
        ParseError { line, column, offset, kind }
    }

    fn unexpected(&self, expected: Expected) -> ParseError {
        let found = self.letters.get(self.at).copied();
        self.error(self.at, ParseErrorKind::Unexpected { found, expected })
    }

    fn peek(&self) -> Option<char> {
        self.letters.get(self.at).copied().map(plain)
    }

    fn skip_blank(&mut self) {
        while let Some(letter) = self.peek() {
            if letter.is_whitespace() {
                self.at += 1;
            } else if letter == '/' && self.letters.get(self.at + 1).copied().map(plain) == Some('/') {
                while self.peek().is_some_and(|letter| letter != '\n') {
                    self.at += 1;
                }
            } else {
                break;
            }
        }
    }

    fn sequence(&mut self, size: Size) -> Result<Vec<Node>, ParseError> {
        let mut open: Vec<Open> = Vec::new();
        let mut nodes = Vec::new();
        let mut turns = 0usize;
        loop {
            self.skip_blank();
            let start = self.at;
            let Some(letter) = self.peek() else { break };
            match letter {
                '(' | '[' => {
                    if open.len() >= MAX_DEPTH {
                        return Err(self.error(start, ParseErrorKind::TooDeep));
                    }
                    self.at += 1;
                    open.push(Open {
                        at: start,
                        square: letter == '[',
                        first: None,
                        nodes: std::mem::take(&mut nodes),
                        turns: std::mem::take(&mut turns),
                        turns_before: 0,
                    });
                }
                ',' | ':' => match open.last_mut() {
                    Some(bracket) if bracket.square && bracket.first.is_none() => {
                        self.at += 1;
                        bracket.first = Some((std::mem::take(&mut nodes), letter == ','));
                        bracket.turns_before = std::mem::take(&mut turns);
                    }
                    _ => return Err(self.unexpected(Self::expected(&open))),
                },
                ')' | ']' => {
                    let closes = open.last().is_some_and(|bracket| {
                        bracket.square == (letter == ']') && (!bracket.square || bracket.first.is_some())
                    });
                    let Some(bracket) = open.pop_if(|_| closes) else {
                        return Err(self.unexpected(Self::expected(&open)));
                    };
                    self.at += 1;
                    let body = std::mem::replace(&mut nodes, bracket.nodes);
                    let commutator = matches!(bracket.first, Some((_, true)));
                    let form = match bracket.first {
                        None => Form::Group(body),
                        Some((first, true)) => Form::Commutator(first, body),
                        Some((first, false)) => Form::Conjugate(first, body),
                    };
                    let (times, inverse) = self.repeats()?;
                    let once = if bracket.square {
                        let doubled = if commutator { turns } else { 0 };
                        bracket.turns_before.saturating_mul(2).saturating_add(turns).saturating_add(doubled)
                    } else {
                        turns
                    };
                    let length = once.saturating_mul(times as usize);
                    turns = bracket.turns.saturating_add(length);
                    if turns > MAX_MOVES {
                        return Err(self.error(bracket.at, ParseErrorKind::TooManyTurns));
                    }
                    nodes.push(Node::Bracket { form, times, inverse });
                }
                _ => {
                    let turn = self.turn(Self::expected(&open))?;
                    turn.check(size).map_err(|no| self.error(start, ParseErrorKind::NoSuchTurn(no)))?;
                    nodes.push(Node::Turn(turn));
                    turns += 1;
                    if turns > MAX_MOVES {
                        return Err(self.error(start, ParseErrorKind::TooManyTurns));
                    }
                }
            }
        }
        if open.is_empty() { Ok(nodes) } else { Err(self.unexpected(Self::expected(&open))) }
    }

    /// What would be right where something else stands.
    fn expected(open: &[Open]) -> Expected {
        match open.last() {
            None => Expected::Turn,
            Some(Open { square: false, .. }) => Expected::TurnOrClose,
            Some(Open { first: None, .. }) => Expected::Separator,
            Some(_) => Expected::CloseSquare,
        }
    }

    fn number(&mut self) -> Option<u32> {
        let start = self.at;
        let mut number = 0u32;
        while let Some(digit) = self.peek().and_then(|letter| letter.to_digit(10)) {
            number = number.saturating_mul(10).saturating_add(digit);
            self.at += 1;
        }
        (self.at > start).then_some(number)
    }

    /// A prime, if one stands here; `what` it is made of, for the one who put a number behind it.
    fn prime(&mut self, what: &str) -> Result<bool, ParseError> {
        let found = self.peek().is_some_and(is_prime);
        if found {
            self.at += 1;
            let at = self.at;
            if let Some(number) = self.number() {
                // A face or a range goes on from a number of layers.
                let goes_on = self.peek().is_some_and(|next| next.is_ascii_alphabetic() || next == '-');
                self.at = at;
                return Err(if goes_on {
                    self.unexpected(Expected::Space)
                } else {
                    let rather = format!("{what}{number}'");
                    self.error(at, ParseErrorKind::NumberAfterPrime { rather })
                });
            }
        }
        Ok(found)
    }

    fn repeats(&mut self) -> Result<(u32, bool), ParseError> {
        let start = self.at;
        let times = self.number().unwrap_or(1);
        if times == 0 {
            self.at = start;
            return Err(self.unexpected(Expected::Repeats));
        }
        Ok((times, self.prime("(…)")?))
    }

    /// A number of layers, or the number of a layer, if one stands here.
    fn layer(&mut self) -> Result<Option<u8>, ParseError> {
        let start = self.at;
        match self.number().map(u8::try_from) {
            None => Ok(None),
            Some(Ok(number)) => Ok(Some(number)),
            Some(Err(_)) => {
                self.at = start;
                Err(self.unexpected(Expected::Layers))
            }
        }
    }

    fn layers(&mut self) -> Result<Layers, ParseError> {
        let Some(first) = self.layer()? else { return Ok(Layers::Unsaid) };
        if !self.peek().is_some_and(|letter| matches!(letter, '-' | '‐' | '‑' | '–')) {
            return Ok(Layers::One(first));
        }
        self.at += 1;
        let last = self.layer()?.ok_or_else(|| self.unexpected(Expected::Layers))?;
        Ok(Layers::Range(first, last))
    }

    /// What turns; where nothing of the sort stands, `expected` would be right.
    fn block(&mut self, expected: Expected) -> Result<Block, ParseError> {
        let start = self.at;
        let layers = self.layers()?;
        let letter = self.peek();
        if let Some(face) = letter.and_then(|letter| Face::from_letter(letter.to_ascii_uppercase())) {
            return self.block_of_face(start, layers, face);
        }
        if !matches!(layers, Layers::Unsaid) {
            return Err(self.unexpected(Expected::Face));
        }
        let block = match letter {
            Some('M') => Block::Slice(Slice::M),
            Some('E') => Block::Slice(Slice::E),
            Some('S') => Block::Slice(Slice::S),
            Some('x') => Block::Whole(Axis::X),
            Some('y') => Block::Whole(Axis::Y),
            Some('z') => Block::Whole(Axis::Z),
            Some(found @ ('m' | 'e' | 's')) => {
                let rather = found.to_ascii_uppercase();
                return Err(self.error(start, ParseErrorKind::WrongCase { found, rather }));
            }
            Some(found @ ('X' | 'Y' | 'Z')) => {
                let rather = found.to_ascii_lowercase();
                return Err(self.error(start, ParseErrorKind::WrongCase { found, rather }));
            }
            _ => return Err(self.unexpected(expected)),
        };
        self.at += 1;
        Ok(block)
    }

    /// The block of a face that stands here, after the layers that stand at `start`.
    fn block_of_face(&mut self, start: usize, layers: Layers, face: Face) -> Result<Block, ParseError> {
        let lower = self.peek().is_some_and(|letter| letter.is_ascii_lowercase());
        let letter_at = self.at;
        self.at += 1;
        let inner = |first, last| Ok(Block::Inner { face, first, last });
        if lower && self.lower_is_inner {
            return match layers {
                Layers::Unsaid => inner(2, 2),
                Layers::One(layer) => inner(layer, layer),
                Layers::Range(first, last) => inner(first, last),
            };
        }
        let mut wide = lower;
        if !lower && self.peek() == Some('w') && !matches!(layers, Layers::Range(..)) {
            self.at += 1;
            wide = true;
        }
        match layers {
            Layers::Unsaid => Ok(Block::Outer { face, depth: if wide { 2 } else { 1 } }),
            Layers::One(layer) if !wide => inner(layer, layer),
            Layers::One(depth) if depth >= 2 => Ok(Block::Outer { face, depth }),
            Layers::One(_) => {
                self.at = start;
                Err(self.unexpected(Expected::Layers))
            }
            Layers::Range(..) if wide => {
                self.at = letter_at;
                Err(self.unexpected(Expected::Face))
            }
            Layers::Range(first, last) => inner(first, last),
        }
    }

    fn turn(&mut self, expected: Expected) -> Result<Turn, ParseError> {
        let start = self.at;
        let block = self.block(expected)?;
        let written: String = self.letters[start..self.at].iter().copied().map(plain).collect();
        let amount_at = self.at;
        let quarters = self.number().unwrap_or(1);
        let amount = if quarters <= 3 { Amount::from_quarters(i64::from(quarters)) } else { None };
        let Some(amount) = amount else {
            self.at = amount_at;
            return Err(self.unexpected(Expected::Quarters));
        };
        let amount = if self.prime(&written)? { amount.inverse() } else { amount };
        Ok(Turn::new(block, amount))
    }
}
